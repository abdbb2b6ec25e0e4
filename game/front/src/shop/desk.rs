//! The front desk: which jobs there are.

use assess::locale::sentence::Sentence;
use assess::pack::Library;

/// A job as the front desk lists it: what is on the card, nothing hidden.
#[derive(Clone, Debug, PartialEq)]
pub struct Offered {
    /// `pack/job`.
    pub name: String,
    /// Title on the card.
    pub title: String,
    /// Short name of the car.
    pub car_id: String,
    /// The car in words.
    pub car: String,
    /// The first thing the customer says.
    pub says: String,
    /// Minutes of work the job allows.
    pub time_limit_min: f64,
}

/// A pack as the front desk lists it.
#[derive(Clone, Debug, PartialEq)]
pub struct OfferedPack {
    /// Short name.
    pub id: String,
    /// In words.
    pub title: String,
    /// Its jobs; or why it cannot be used.
    pub jobs: Result<Vec<Offered>, Sentence>,
}

/// All packs with their jobs.
///
/// # Errors
/// The folder of packs cannot be read.
pub(super) fn offered(library: &Library) -> anyhow::Result<Vec<OfferedPack>> {
    let mut packs = Vec::new();
    for id in library.pack_ids()? {
        let (title, jobs) = match library.pack(&id) {
            Ok(pack) => {
                let names = pack.jobs.iter().map(|j| format!("{id}/{j}"));
                let jobs = names.map(|name| offered_job(library, &name)).collect();
                (pack.title.clone(), jobs)
            }
            // A broken pack must not keep a school from its other packs.
            Err(errors) => (id.clone(), Err(errors.in_one())),
        };
        packs.push(OfferedPack { id, title, jobs });
    }
    Ok(packs)
}

/// A job as the desk offers it.
fn offered_job(library: &Library, name: &str) -> Result<Offered, Sentence> {
    let job = library.job(name).map_err(|e| e.in_one())?;
    Ok(Offered {
        name: name.to_owned(),
        title: job.title.clone(),
        car_id: job.car.id.clone(),
        car: job.car.name.clone(),
        says: job.customer_says().next().unwrap_or_default().to_owned(),
        time_limit_min: job.time_limit_min,
    })
}
