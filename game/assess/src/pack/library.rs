//! The library: everything under `assets/` and `scenarios/`, read and checked on demand.

use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use sim_core::air::Day;
use sim_core::car::{Car, Spare};
use sim_core::instrument::InstrumentCard;

use super::bounds;
use super::check_bench;
use super::check_car;
use super::check_catalogue;
use super::check_diagram;
use super::check_instrument;
use super::check_job::{self, Around, Pack};
use super::check_plan;
use super::check_room;
use super::check_tests;
use super::checker::{is_short_name, known_for};
use super::error::{BadName, Named, PackError, PackErrors, Unread};
use super::grown;
use super::raw::{
    RawBench, RawDiagram, RawInstrument, RawJob, RawPack, RawPlan, RawRoom, RawSpares, RawTests, RawVehicle,
};
use super::read;
use super::trial;
use crate::diagram::Diagram;
use crate::locale::quote;
use crate::pack::job::{Job, ReferencePlan, SCHEME};
use crate::plan::test::Test;
use crate::room::Room;
use crate::sentence;
use crate::speed::Bench;

/// The tests of a car with the text of their file.
type TestsAndText = (Arc<Vec<Test>>, String);

/// Data files of one root folder.
#[derive(Clone, Debug)]
pub struct Library {
    root: PathBuf,
    /// Where that really is: nothing outside of it is read.
    real: PathBuf,
    kit: Arc<Vec<InstrumentCard>>,
    /// Text of each instrument file, same order as `kit`.
    kit_texts: Vec<String>,
}

impl Library {
    /// Opens the library whose root holds `assets/` and `scenarios/`, and checks the instruments.
    ///
    /// # Errors
    /// A missing folder, and every fault of every instrument file.
    pub fn open(root: &Path) -> Result<Self, PackErrors> {
        let real = root.canonicalize().map_err(|source| unread(root, source))?;
        let mut library =
            Self { root: root.to_owned(), real, kit: Arc::new(Vec::new()), kit_texts: Vec::new() };
        let (mut cards, mut errors) = (Vec::new(), Vec::new());
        for id in library.ids("assets/instruments", bounds::TOOLS)? {
            let file = format!("assets/instruments/{id}.ron");
            match library.read::<RawInstrument>(&file) {
                Ok((text, raw)) => match check_instrument::card(raw, &id, &file) {
                    Ok(card) => {
                        cards.push(card);
                        library.kit_texts.push(text);
                    }
                    Err(e) => errors.extend(e),
                },
                Err(e) => errors.extend(e.0),
            }
        }
        if errors.is_empty() {
            library.kit = Arc::new(cards);
            Ok(library)
        } else {
            Err(PackErrors(errors))
        }
    }

    /// The root folder.
    #[must_use]
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// Every instrument, sorted by short name.
    #[must_use]
    pub fn kit(&self) -> &Arc<Vec<InstrumentCard>> {
        &self.kit
    }

    /// Short names of the cars.
    ///
    /// # Errors
    /// The folder cannot be read.
    pub fn cars(&self) -> Result<Vec<String>, PackErrors> {
        self.ids("assets/vehicles", bounds::CARS)
    }

    /// A car.
    ///
    /// # Errors
    /// No such car, or every fault of its file.
    pub fn car(&self, id: &str) -> Result<Arc<Car>, PackErrors> {
        self.car_and_text(id).map(|(car, _)| car)
    }

    /// The spares for a car.
    ///
    /// # Errors
    /// As [`Library::car`], and every fault of the file of spares.
    pub fn spares(&self, car: &Car) -> Result<Arc<Vec<Spare>>, PackErrors> {
        self.spares_and_text(car).map(|(spares, _)| Arc::new(spares))
    }

    /// What can be tried at a car, with all instruments that there are; nothing when nobody has written it down.
    ///
    /// # Errors
    /// As [`Library::spares`], and every fault of the file of tests.
    pub fn tests(&self, car: &Car) -> Result<Arc<Vec<Test>>, PackErrors> {
        let (spares, _) = self.spares_and_text(car)?;
        Ok(self.tests_and_text(car, &spares)?.map(|(tests, _)| tests).unwrap_or_default())
    }

    /// Where the parts of a car stand on its line diagram: as drawn, or in rows when nobody has drawn it.
    ///
    /// # Errors
    /// Every fault of the file, if there is one.
    pub fn diagram(&self, car: &Car) -> Result<Diagram, PackErrors> {
        let file = format!("assets/diagrams/{}.ron", car.id);
        if self.lacks(&file) {
            return check_diagram::in_rows(car, &file).map_err(PackErrors);
        }
        let (_, raw) = self.read::<RawDiagram>(&file)?;
        check_diagram::diagram(raw, &car.id, car, &file).map_err(PackErrors)
    }

    /// What is measured when the model's speed is measured.
    ///
    /// # Errors
    /// No such file, or every fault of it.
    pub fn bench(&self) -> Result<Bench, PackErrors> {
        let file = "assets/bench.ron";
        let (_, raw) = self.read::<RawBench>(file)?;
        check_bench::bench(raw, file).map_err(PackErrors)
    }

    /// Where a car stands in the room.
    ///
    /// # Errors
    /// No such file, or every fault of it.
    pub fn room(&self, car: &Car) -> Result<Room, PackErrors> {
        let file = format!("assets/rooms/{}.ron", car.id);
        let (_, raw) = self.read::<RawRoom>(&file)?;
        check_room::room(raw, car, &file).map_err(PackErrors)
    }

    /// Whether a car has its room. The window finds a place for the parts of one without.
    #[must_use]
    pub fn has_room(&self, car: &str) -> bool {
        self.root.join(format!("assets/rooms/{car}.ron")).is_file()
    }

    /// Short names of the packs.
    ///
    /// # Errors
    /// The folder cannot be read.
    pub fn pack_ids(&self) -> Result<Vec<String>, PackErrors> {
        let folder = "scenarios";
        let mut ids = Vec::new();
        for name in self.entries(folder)? {
            if self.root.join(folder).join(&name).join("pack.ron").is_file() {
                ids.push(name);
            }
        }
        match ids.len() {
            count if count <= bounds::PACKS => Ok(ids),
            count => {
                let too_many = Unread::TooManyPacks { count, max: bounds::PACKS };
                Err(PackError::new(folder, too_many).into())
            }
        }
    }

    /// Every pack.
    ///
    /// # Errors
    /// Every fault of every pack file.
    pub fn packs(&self) -> Result<Vec<Pack>, PackErrors> {
        let (mut packs, mut errors) = (Vec::new(), Vec::new());
        for id in self.pack_ids()? {
            match self.pack(&id) {
                Ok(pack) => packs.push(pack),
                Err(e) => errors.extend(e.0),
            }
        }
        if errors.is_empty() { Ok(packs) } else { Err(PackErrors(errors)) }
    }

    /// A pack.
    ///
    /// # Errors
    /// No such pack, or every fault of its file.
    pub fn pack(&self, id: &str) -> Result<Pack, PackErrors> {
        self.pack_and_text(id).map(|(pack, _)| pack)
    }

    /// A job by `pack/job`.
    ///
    /// # Errors
    /// No such pack or job, or every fault of the files behind it.
    pub fn job(&self, name: &str) -> Result<Job, PackErrors> {
        let (pack_id, job_id) = name.split_once('/').unwrap_or((name, ""));
        let (pack, pack_text) = self.pack_and_text(pack_id)?;
        if !pack.jobs.iter().any(|j| j == job_id) {
            let known: Vec<String> = pack.jobs.iter().map(|j| format!("{pack_id}/{j}")).collect();
            let unknown = BadName::Unknown {
                path: "jobs".into(),
                what: Named::Job,
                name: name.to_owned(),
                known: known_for(name, known.iter().map(String::as_str)),
            };
            return Err(PackError::new(&format!("scenarios/{pack_id}/pack.ron"), unknown).into());
        }
        let file = format!("scenarios/{pack_id}/jobs/{job_id}.ron");
        let (job_text, raw) = self.read::<RawJob>(&file)?;
        let cars = self.cars()?;
        if !cars.contains(&raw.vehicle) {
            let unknown = BadName::Unknown {
                path: "vehicle".into(),
                what: Named::Car,
                known: known_for(&raw.vehicle, cars.iter().map(String::as_str)),
                name: raw.vehicle,
            };
            return Err(PackError::new(&file, unknown).into());
        }
        let vehicle = raw.vehicle.clone();
        let script = raw.reference.clone();
        let (car, car_text) = self.car_and_text(&vehicle)?;
        let (spares, spares_text) = self.spares_and_text(&car)?;
        let around = Around { pack: &pack, car: &car, kit: &self.kit, spares: &spares };
        let mut job = check_job::job(raw, job_id, &around, &file).map_err(PackErrors)?;
        let mut assembly = car.assembly.clone();
        for (fault, severity) in job.answer() {
            assembly.set_param(&car.faults[usize::from(*fault)].param, *severity);
        }
        if let Some(trouble) = trial::of(&assembly, job.day, &file, "hidden, day") {
            return Err(trouble.into());
        }

        let script = format!("scenarios/{pack_id}/reference/{script}");
        if self.root.join(&script).exists() {
            job.reference = Some(read::text(&self.real, &self.root.join(&script), &script)?);
        }
        let mut files = vec![("job", job_text.as_str()), ("pack", &pack_text), ("vehicle", &car_text)];
        for (card, text) in self.kit.iter().zip(&self.kit_texts) {
            if job.kit.iter().any(|c| c.id == card.id) {
                files.push((&card.id, text));
            }
        }
        files.push(("spares", &spares_text));
        files.push(("reference", job.reference.as_deref().unwrap_or_default()));
        // Tests make the plan that an attempt is held against. What happens in the car they do not touch: what was made
        // before the car had any stays valid.
        let tests = self.tests_and_text(&car, &spares)?;
        let without_tests = files.clone();
        if let Some((_, text)) = &tests {
            files.push(("tests", text));
        }
        let digest = digest(&files);
        // What was made while the pack ended at this job, or between it and its end today, stays valid.
        let own = pack.jobs.iter().position(|j| j == job_id).unwrap_or(pack.jobs.len());
        let shorter =
            (own + 1..pack.jobs.len()).filter_map(|n| grown::ended_behind(&pack_text, &pack.jobs, n));
        let mut before: Vec<[u8; 32]> = tests.iter().map(|_| self::digest(&without_tests)).collect();
        for text in shorter {
            for files in std::iter::once(&files).chain(tests.is_some().then_some(&without_tests)) {
                let mut files = files.clone();
                files[1].1 = &text;
                before.push(self::digest(&files));
            }
        }
        (job.digest, job.digests_before) = (digest, before);
        job.tests = tests.map(|(tests, _)| tests).unwrap_or_default();
        job.plan = self.plan(&job)?;
        Ok(job)
    }

    /// The reference plan of a job, which is no part of its digest: it says what can be done, not what is so.
    fn plan(&self, job: &Job) -> Result<ReferencePlan, PackErrors> {
        let file = plan_file(job);
        if self.lacks(&file) {
            return Ok(ReferencePlan::Missing);
        }
        let (_, raw) = self.read::<RawPlan>(&file)?;
        check_plan::plan(raw, job, SCHEME, &file).map_err(PackErrors)
    }

    /// Reads and checks everything there is.
    ///
    /// # Errors
    /// Every fault of every file.
    pub fn check_all(&self) -> Result<Vec<Job>, PackErrors> {
        let (mut jobs, mut errors) = (Vec::new(), Vec::new());
        let mut broken_cars = Vec::new();
        for id in self.cars()? {
            if let Err(e) = self.car(&id).and_then(|car| self.around(&car)) {
                errors.extend(e.0);
                broken_cars.push(id);
            }
        }
        for id in self.pack_ids()? {
            match self.pack(&id) {
                Ok(pack) if broken_cars.is_empty() => {
                    for job in &pack.jobs {
                        match self.job(&format!("{id}/{job}")) {
                            Ok(job) => jobs.push(job),
                            Err(e) => errors.extend(e.0),
                        }
                    }
                }
                Ok(_) => {}
                Err(e) => errors.extend(e.0),
            }
        }
        if errors.is_empty() { Ok(jobs) } else { Err(PackErrors(errors)) }
    }

    /// Checks spares, tests, line diagram and room of a car, those of them that there are.
    fn around(&self, car: &Car) -> Result<(), PackErrors> {
        let mut errors = Vec::new();
        let mut hear = |e: Option<PackErrors>| errors.extend(e.into_iter().flat_map(|e| e.0));
        match self.spares(car) {
            Ok(spares) => hear(self.tests_and_text(car, &spares).err()),
            Err(e) => hear(Some(e)),
        }
        hear(self.diagram(car).err());
        if self.has_room(&car.id) {
            hear(self.room(car).err());
        }
        if errors.is_empty() { Ok(()) } else { Err(PackErrors(errors)) }
    }

    fn car_and_text(&self, id: &str) -> Result<(Arc<Car>, String), PackErrors> {
        self.known("assets/vehicles", Named::Car, id, &self.cars()?)?;
        let file = format!("assets/vehicles/{id}.ron");
        let (text, raw) = self.read::<RawVehicle>(&file)?;
        let car = check_car::car(raw, id, &file).map_err(PackErrors)?;
        if let Some(trouble) = trial::of(&car.assembly, Day::STANDARD, &file, "parts") {
            return Err(trouble.into());
        }
        for low in [true, false] {
            let mut used = car.assembly.clone();
            for t in &car.tolerances {
                used.set_param(&t.param, if low { t.serviceable.0 } else { t.serviceable.1 });
            }
            let path = match low {
                true => sentence!("data-all-low", "tolerances, every serviceable at its low end"),
                false => sentence!("data-all-high", "tolerances, every serviceable at its high end"),
            };
            if let Some(trouble) = trial::of(&used, Day::STANDARD, &file, path) {
                return Err(trouble.into());
            }
        }
        Ok((Arc::new(car), text))
    }

    fn spares_and_text(&self, car: &Car) -> Result<(Vec<Spare>, String), PackErrors> {
        let file = format!("assets/spares/{}.ron", car.id);
        let (text, raw) = self.read::<RawSpares>(&file)?;
        let spares = check_catalogue::spares(raw, &car.id, car, &file).map_err(PackErrors)?;
        Ok((spares, text))
    }

    fn tests_and_text(&self, car: &Car, spares: &[Spare]) -> Result<Option<TestsAndText>, PackErrors> {
        let file = format!("assets/tests/{}.ron", car.id);
        if self.lacks(&file) {
            return Ok(None);
        }
        let (text, raw) = self.read::<RawTests>(&file)?;
        let tests = check_tests::tests(raw, &car.id, (car, &self.kit, spares), &file).map_err(PackErrors)?;
        Ok(Some((tests, text)))
    }

    /// Whether there is nothing by the name of a file.
    fn lacks(&self, file: &str) -> bool {
        matches!(self.root.join(file).symlink_metadata(), Err(e) if e.kind() == ErrorKind::NotFound)
    }

    fn pack_and_text(&self, id: &str) -> Result<(Pack, String), PackErrors> {
        self.known("scenarios", Named::Pack, id, &self.pack_ids()?)?;
        let file = format!("scenarios/{id}/pack.ron");
        let (text, raw) = self.read::<RawPack>(&file)?;
        let job_files = self.ids(&format!("scenarios/{id}/jobs"), bounds::JOBS)?;
        let pack = check_job::pack(raw, id, &self.kit, &job_files, &file).map_err(PackErrors)?;
        Ok((pack, text))
    }

    fn known(&self, folder: &str, what: Named, id: &str, known: &[String]) -> Result<(), PackErrors> {
        if known.iter().any(|k| k == id) && is_short_name(id, '-') {
            return Ok(());
        }
        let unknown = BadName::Unknown {
            path: sentence!("data-file-names", "file names").into(),
            what,
            name: id.to_owned(),
            known: known_for(id, known.iter().map(String::as_str)),
        };
        Err(PackError::new(folder, unknown).into())
    }

    fn read<T: serde::de::DeserializeOwned>(&self, file: &str) -> Result<(String, T), PackErrors> {
        let text = read::text(&self.real, &self.root.join(file), file)?;
        let raw = read::parse(&text, file)?;
        Ok((text, raw))
    }

    /// Names of a folder's entries, sorted; hidden ones left out.
    fn entries(&self, folder: &str) -> Result<Vec<String>, PackErrors> {
        let path = self.root.join(folder);
        let unreadable = |source| PackErrors::from(unread(&path, source));
        let mut names = Vec::new();
        for entry in std::fs::read_dir(&path).map_err(unreadable)? {
            let name = entry.map_err(unreadable)?.file_name();
            let plain = name.to_str().filter(|n| !n.contains(quote::is_unsafe));
            match plain {
                Some(plain) if plain.starts_with('.') => {}
                Some(plain) => names.push(plain.to_owned()),
                None => {
                    let file = quote::path(&Path::new(folder).join(&name)).to_string();
                    return Err(PackError::new(&file, Unread::NotAName).into());
                }
            }
        }
        names.sort_unstable();
        Ok(names)
    }

    /// Stems of a folder's `.ron` files, sorted; an error when they are more than `max`.
    fn ids(&self, folder: &str, max: usize) -> Result<Vec<String>, PackErrors> {
        let mut ids = self.entries(folder)?;
        ids.retain(|name| name.ends_with(".ron"));
        if max < ids.len() {
            let too_many = Unread::TooManyFiles { count: ids.len(), max };
            return Err(PackError::new(folder, too_many).into());
        }
        Ok(ids.iter().map(|name| name.trim_end_matches(".ron").to_owned()).collect())
    }
}

/// Where the reference plan of a job stands in the data folder.
#[must_use]
pub fn plan_file(job: &Job) -> String {
    format!("scenarios/{}/plans/{}.ron", job.pack_id, job.id)
}

/// blake3 over names and texts, each with its length.
fn digest(files: &[(&str, &str)]) -> [u8; 32] {
    let mut hasher = blake3::Hasher::new();
    for bytes in files.iter().flat_map(|(name, text)| [name.as_bytes(), text.as_bytes()]) {
        hasher.update(&(bytes.len() as u64).to_le_bytes());
        hasher.update(bytes);
    }
    *hasher.finalize().as_bytes()
}

/// The system gave no file or folder.
fn unread(path: &Path, source: std::io::Error) -> PackError {
    PackError::new(&quote::path(path).to_string(), Unread::System { source })
}
