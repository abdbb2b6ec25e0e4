//! Flow paths looked up once, and where slopes stand among the entries of a model's plan.

use super::linear::MOST;

/// Where a slope stands: at first row · n + column, in the end its entry of the plan.
pub(crate) type Place = u16;

/// The place to begin with of a slope in `row` over state variable `column`, of `n`. As many rows as a plan may have
/// ([`MOST`](super::linear::MOST)) have no place beyond.
pub(crate) fn at_first(n: usize, row: usize, column: usize) -> Place {
    const { assert!(MOST * MOST - 1 <= Place::MAX as usize) };
    (row * n + column) as Place
}

/// Of a flow path's four rows over one state variable: mass at a and b, enthalpy at a and b.
pub(crate) type FlowPathPlaces = [Place; 4];

/// A flow path, looked up once. Small numbers: all flow paths together are run through four times a step.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FlowPathAt {
    /// Ends a and b.
    pub(crate) ends: [End; 2],
    /// The state (travel or speed) it depends on besides the air, and where the slopes over it stand.
    pub(crate) state: Option<(u8, FlowPathPlaces)>,
    /// Which of the model's soft ends are its own, if they are soft.
    pub(crate) soft: Option<u8>,
    /// Which hands work it, if any do.
    pub(crate) hand: Option<u8>,
    /// Which piston lifts it, if one does.
    pub(crate) piston: Option<u8>,
}

/// One end of a flow path.
#[derive(Clone, Copy, Debug)]
pub(crate) struct End {
    /// Its air, by its number among all gases.
    pub(crate) gas: u8,
    /// Row that the mass comes from or goes to, and that of the enthalpy: a volume's or a balance's.
    pub(crate) mass: u8,
    pub(crate) enthalpy: u8,
    /// State that the air's pressure and temperature follow from.
    pub(crate) from: From,
}

/// What the air at an end follows from.
#[derive(Clone, Copy, Debug)]
pub(crate) enum From {
    /// The volume of this number, its mass at this index: mass, energy, and the travel that moves its wall.
    Volume {
        k: u8,
        mass: u8,
        travel: Option<(u8, FlowPathPlaces)>,
        by_mass: FlowPathPlaces,
        by_energy: FlowPathPlaces,
    },
    /// The room's temperature.
    Room(FlowPathPlaces),
    /// The room's temperature and the manifold pressure.
    Manifold { pressure: u8, by_room: FlowPathPlaces, by_pressure: FlowPathPlaces },
}

/// Of a motor's rotor, each named row by column.
#[derive(Clone, Copy, Debug)]
pub(crate) struct RotorPlaces {
    pub(crate) speed_by_speed: Place,
    pub(crate) speed_by_energy: Place,
    pub(crate) winding_by_speed: Place,
    pub(crate) winding_by_winding: Place,
    pub(crate) winding_by_case: Place,
    pub(crate) case_by_speed: Place,
    pub(crate) case_by_winding: Place,
    pub(crate) case_by_case: Place,
    pub(crate) case_by_room: Place,
}

/// Of everything but the flow paths, which keep their own.
#[derive(Clone, Debug, Default)]
pub(crate) struct OtherPlaces {
    /// Per volume, of its energy and of the heat taken: over the room's temperature, mass, energy.
    pub(crate) walls: Vec<[[Place; 3]; 2]>,
    /// Per piston, over the energies of front and rear and over travel: of travel, both energies, work.
    pub(crate) pistons: Vec<[[Place; 4]; 3]>,
    /// Per rotor.
    pub(crate) rotors: Vec<RotorPlaces>,
    /// Per follower, over itself, and over the energy of the air it follows (itself where it follows none).
    pub(crate) followers: Vec<[Place; 2]>,
}
