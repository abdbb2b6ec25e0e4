//! Where slopes stand among the entries of a model's [`Plan`], looked up once when a circuit is compiled.

use super::linear::Plan;
use super::machines::Follower;
use super::model::{From, Model, N_LEDGERS};

/// Of a way's four rows over one state variable: mass at a and b, enthalpy at a and b.
pub(super) type WayPlaces = [u32; 4];

/// Of a pump's rotor, each named row by column.
#[derive(Clone, Copy, Debug)]
pub(super) struct RotorPlaces {
    pub(super) speed_by_speed: u32,
    pub(super) speed_by_energy: u32,
    pub(super) winding_by_speed: u32,
    pub(super) winding_by_winding: u32,
    pub(super) winding_by_case: u32,
    pub(super) case_by_speed: u32,
    pub(super) case_by_winding: u32,
    pub(super) case_by_case: u32,
    pub(super) case_by_room: u32,
}

/// Of everything but the ways for air, which keep their own.
#[derive(Clone, Debug, Default)]
pub(super) struct OtherPlaces {
    /// Per volume, of its energy and of the heat taken: over the room's temperature, mass, energy.
    pub(super) walls: Vec<[[u32; 3]; 2]>,
    /// Per booster, over the energies of front and rear and over travel: of travel, both energies, work.
    pub(super) pistons: Vec<[[u32; 4]; 3]>,
    /// Per pump.
    pub(super) rotors: Vec<RotorPlaces>,
    /// Per follower, over itself, and over the energy of the air it follows (itself where it follows none).
    pub(super) followers: Vec<[u32; 2]>,
}

impl Model {
    /// Lists every place at which a slope is written, lays out the plan for them, and turns each place
    /// (row · n + column, as which the ways' come in) into the number of its entry.
    pub(super) fn find_places(&mut self) {
        let n = self.n;
        let at = |row: usize, column: usize| (row * n + column) as u32;
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
        self.for_each_place(|place| written.push((*place as usize / n, *place as usize % n)));
        let plan = Plan::of(n, &written);
        let mut entries = vec![None; (n + N_LEDGERS) * n];
        for entry in 0..plan.n_written() {
            let (row, column) = plan.place(entry);
            entries[row * n + column] = Some(entry as u32);
        }
        self.for_each_place(|place| match entries[*place as usize] {
            Some(entry) => *place = entry,
            None => unreachable!("a place that was listed has an entry"),
        });
        self.plan = plan;
    }

    fn for_each_place(&mut self, mut of: impl FnMut(&mut u32)) {
        for end in self.ends.iter_mut().flatten() {
            match &mut end.from {
                From::Volume { by_mass, by_energy, by_travel, .. } => {
                    by_mass
                        .iter_mut()
                        .chain(by_energy)
                        .chain(by_travel.iter_mut().flatten())
                        .for_each(&mut of);
                }
                From::Room(by_room) => by_room.iter_mut().for_each(&mut of),
                From::Manifold { by_room, by_pressure, .. } => {
                    by_room.iter_mut().chain(by_pressure).for_each(&mut of);
                }
            }
        }
        self.by_state.iter_mut().flatten().flatten().for_each(&mut of);
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
