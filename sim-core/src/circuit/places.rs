//! Where slopes stand among the entries of a model's [`Plan`], looked up once when a circuit is compiled.

use super::linear::Plan;
use super::machines::Follower;
use super::model::{From, Model};

/// Where a slope stands: at first row · n + column, in the end its entry of the plan.
pub(super) type Place = u16;

/// The place to begin with of a slope in `row` over state variable `column`, of `n`.
pub(super) fn at_first(n: usize, row: usize, column: usize) -> Place {
    let place = row * n + column;
    assert!(place <= usize::from(Place::MAX), "{n} state variables are too many");
    place as Place
}

/// Of a way's four rows over one state variable: mass at a and b, enthalpy at a and b.
pub(super) type WayPlaces = [Place; 4];

/// Of a pump's rotor, each named row by column.
#[derive(Clone, Copy, Debug)]
pub(super) struct RotorPlaces {
    pub(super) speed_by_speed: Place,
    pub(super) speed_by_energy: Place,
    pub(super) winding_by_speed: Place,
    pub(super) winding_by_winding: Place,
    pub(super) winding_by_case: Place,
    pub(super) case_by_speed: Place,
    pub(super) case_by_winding: Place,
    pub(super) case_by_case: Place,
    pub(super) case_by_room: Place,
}

/// Of everything but the ways for air, which keep their own.
#[derive(Clone, Debug, Default)]
pub(super) struct OtherPlaces {
    /// Per volume, of its energy and of the heat taken: over the room's temperature, mass, energy.
    pub(super) walls: Vec<[[Place; 3]; 2]>,
    /// Per booster, over the energies of front and rear and over travel: of travel, both energies, work.
    pub(super) pistons: Vec<[[Place; 4]; 3]>,
    /// Per pump.
    pub(super) rotors: Vec<RotorPlaces>,
    /// Per follower, over itself, and over the energy of the air it follows (itself where it follows none).
    pub(super) followers: Vec<[Place; 2]>,
}

impl Model {
    /// Lists every place at which a slope is written, lays out the plan for them, and turns each place
    /// (row · n + column, as which the ways' come in) into the number of its entry.
    pub(super) fn find_places(&mut self) {
        let n = self.n;
        let at = |row, column| at_first(n, row, column);
        let (heat, work) = (n + 2, n + 3);
        let walls = self.mass_at.iter().map(|m| [m + 1, heat].map(|row| [0, *m, m + 1].map(|c| at(row, c))));
        let pistons = self.boosters.iter().map(|b| {
            let [front, rear] = [b.front, b.rear].map(|k| self.mass_at[k] + 1);
            [front, rear, b.travel].map(|column| [b.travel, front, rear, work].map(|row| at(row, column)))
        });
        let rotors = self.pumps.iter().map(|p| RotorPlaces {
            speed_by_speed: at(p.speed, p.speed),
            speed_by_energy: at(p.speed, self.mass_at[p.inlet] + 1),
            winding_by_speed: at(p.winding, p.speed),
            winding_by_winding: at(p.winding, p.winding),
            winding_by_case: at(p.winding, p.case),
            case_by_speed: at(p.case, p.speed),
            case_by_winding: at(p.case, p.winding),
            case_by_case: at(p.case, p.case),
            case_by_room: at(p.case, 0),
        });
        let followers = self.followers.iter().map(|(row, follower)| {
            let energy = match follower {
                Follower::Pointer { volume, .. } => self.mass_at[*volume] + 1,
                _ => *row,
            };
            [at(*row, *row), at(*row, energy)]
        });
        self.places = OtherPlaces {
            walls: walls.collect(),
            pistons: pistons.collect(),
            rotors: rotors.collect(),
            followers: followers.collect(),
        };
        let mut written = Vec::new();
        self.for_each_place(|place| written.push((usize::from(*place) / n, usize::from(*place) % n)));
        let (plan, entries) = Plan::of(n, &written);
        self.for_each_place(|place| match entries.entry(usize::from(*place) / n, usize::from(*place) % n) {
            Some(entry) => *place = entry as Place,
            None => unreachable!("a place that was listed has an entry"),
        });
        self.plan = plan;
    }

    fn for_each_place(&mut self, mut of: impl FnMut(&mut Place)) {
        for end in self.ways.iter_mut().flat_map(|way| &mut way.ends) {
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
        let by_state = self.ways.iter_mut().filter_map(|way| way.state.as_mut());
        by_state.flat_map(|(_, places)| places).for_each(&mut of);
        let OtherPlaces { walls, pistons, rotors, followers } = &mut self.places;
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
}
