//! Where slopes stand among the entries of a model's [`Plan`], looked up once.

use super::unsound::Unsound;
use crate::circuit::solve::linear::Plan;
use crate::circuit::solve::{Follower, From, Model, OtherPlaces, Place, RotorPlaces, at_first};

/// Lists every place at which a slope is written, lays out the plan for them, and turns each place
/// (row · n + column, as which the flow paths' come in) into the number of its entry.
pub(super) fn find_places(model: &mut Model) -> Result<(), Unsound> {
    let n = model.n;
    let at = |row, column| at_first(n, row, column);
    let (heat, work) = (n + 2, n + 3);
    let walls = model.mass_at.iter().map(|m| [m + 1, heat].map(|row| [0, *m, m + 1].map(|c| at(row, c))));
    let pistons = model.pistons.iter().map(|b| {
        let [front, rear] = [b.front, b.rear].map(|k| model.mass_at[k] + 1);
        [front, rear, b.travel].map(|column| [b.travel, front, rear, work].map(|row| at(row, column)))
    });
    let rotors = model.rotors.iter().map(|p| RotorPlaces {
        speed_by_speed: at(p.speed, p.speed),
        speed_by_energy: at(p.speed, model.mass_at[p.inlet] + 1),
        winding_by_speed: at(p.winding, p.speed),
        winding_by_winding: at(p.winding, p.winding),
        winding_by_case: at(p.winding, p.case),
        case_by_speed: at(p.case, p.speed),
        case_by_winding: at(p.case, p.winding),
        case_by_case: at(p.case, p.case),
        case_by_room: at(p.case, 0),
    });
    let followers = model.followers.iter().map(|(row, follower)| {
        let energy = match follower {
            Follower::Pressure { volume, .. } => model.mass_at[*volume] + 1,
            Follower::Surroundings
            | Follower::Engine { .. }
            | Follower::RunTime { .. }
            | Follower::Filament { .. }
            | Follower::Charge { .. }
            | Follower::FuseHeat { .. } => *row,
        };
        [at(*row, *row), at(*row, energy)]
    });
    model.places = OtherPlaces {
        walls: walls.collect(),
        pistons: pistons.collect(),
        rotors: rotors.collect(),
        followers: followers.collect(),
    };
    let mut written = Vec::new();
    for_each_place(model, |place| written.push((usize::from(*place) / n, usize::from(*place) % n)));
    let (plan, entries) = Plan::of(n, &written).ok_or(Unsound::TooMuch)?;
    // The same places in the same order.
    let mut entries = written.iter().map(|(row, column)| entries.entry(*row, *column));
    let mut all = Some(());
    for_each_place(model, |place| {
        all = entries.next().flatten().map(|entry| *place = entry as Place).and(all);
    });
    all.ok_or(Unsound::TooMuch)?;
    model.plan = plan;
    Ok(())
}

fn for_each_place(model: &mut Model, mut of: impl FnMut(&mut Place)) {
    for end in model.flow_paths.iter_mut().flat_map(|path| &mut path.ends) {
        match &mut end.from {
            From::Volume { by_mass, by_energy, travel, .. } => {
                by_mass
                    .iter_mut()
                    .chain(by_energy)
                    .chain(travel.iter_mut().flat_map(|(_, by_travel)| by_travel))
                    .for_each(&mut of);
            }
            From::Room(by_room) => by_room.iter_mut().for_each(&mut of),
            From::Manifold { by_room, by_pressure, .. } => {
                by_room.iter_mut().chain(by_pressure).for_each(&mut of);
            }
        }
    }
    let by_state = model.flow_paths.iter_mut().filter_map(|path| path.state.as_mut());
    by_state.flat_map(|(_, places)| places).for_each(&mut of);
    let OtherPlaces { walls, pistons, rotors, followers } = &mut model.places;
    walls.iter_mut().flatten().flatten().for_each(&mut of);
    pistons.iter_mut().flatten().flatten().for_each(&mut of);
    for rotor in rotors {
        let RotorPlaces {
            speed_by_speed,
            speed_by_energy,
            winding_by_speed,
            winding_by_winding,
            winding_by_case,
            case_by_speed,
            case_by_winding,
            case_by_case,
            case_by_room,
        } = rotor;
        [speed_by_speed, speed_by_energy, winding_by_speed, winding_by_winding, winding_by_case]
            .into_iter()
            .chain([case_by_speed, case_by_winding, case_by_case, case_by_room])
            .for_each(&mut of);
    }
    followers.iter_mut().flatten().for_each(&mut of);
}
