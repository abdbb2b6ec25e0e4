//! Forms of what has air and current: one on each sheet.

use sim_core::parts::engine::Engine;
use sim_core::parts::vacuum_pump::VacuumPump;
use sim_core::parts::vacuum_sensor::VacuumSensor;
use sim_core::parts::vacuum_switch::VacuumSwitch;

use super::Way::{Down, Left, Right, Up};
use super::{Area, Formed, Outline};

impl Formed for VacuumSwitch {
    const AIR: Option<Outline> =
        Some(Outline::new(&[("vacuum", (0, 3), Down)], Area::new(-2.2, -2.0, 2.2, 2.0)));
    const WIRING: Option<Outline> =
        Some(Outline::new(&[("p", (0, -3), Up), ("com", (0, 3), Down)], Area::new(-5.8, -1.6, 1.3, 1.6)));
}

impl Formed for VacuumSensor {
    const AIR: Option<Outline> =
        Some(Outline::new(&[("vacuum", (0, 3), Down)], Area::new(-2.2, -2.0, 2.2, 2.0)));
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("plus", (0, -4), Up), ("signal", (4, 0), Right), ("minus", (0, 4), Down)],
        Area::new(-5.8, -2.4, 1.3, 2.4),
    ));
}

impl Formed for VacuumPump {
    const AIR: Option<Outline> = Some(
        Outline::new(&[("inlet", (-5, 0), Left)], Area::new(-3.4, -2.2, 5.2, 3.4))
            .picked(Area::new(-3.4, -2.1, 4.8, 2.1)),
    );
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("plus", (0, -4), Up), ("minus", (0, 4), Down)],
        Area::new(-2.0, -2.0, 2.6, 2.0),
    ));
}

impl Formed for Engine {
    const AIR: Option<Outline> = Some(
        Outline::new(&[("manifold", (-5, 0), Left)], Area::new(-4.0, -5.5, 4.2, 3.2))
            .picked(Area::new(-4.0, -3.2, 4.2, 3.2)),
    );
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("b_plus", (0, -3), Up), ("ground", (0, 3), Down)],
        Area::new(-1.7, -1.7, 1.7, 1.7),
    ));
}
