//! Forms of the pneumatic symbols.

use sim_core::parts::booster::Booster;
use sim_core::parts::check_valve::CheckValve;
use sim_core::parts::engine_pump::EnginePump;
use sim_core::parts::hose::Hose;
use sim_core::parts::instruments::{HandPump, VacuumGauge};
use sim_core::parts::reservoir::Reservoir;
use sim_core::parts::tee::Tee;

use super::Way::{Down, Left, Right, Up};
use super::{Area, Formed, Outline};

impl Formed for Booster {
    const AIR: Option<Outline> = Some(
        Outline::new(&[("vacuum", (6, -2), Right)], Area::new(-9.2, -4.0, 5.2, 4.0))
            .picked(Area::new(-4.2, -3.6, 4.2, 3.6)),
    );
}

impl Formed for Hose {
    const AIR: Option<Outline> =
        Some(Outline::new(&[("a", (-4, 0), Left), ("b", (4, 0), Right)], Area::new(-2.6, -1.1, 2.6, 1.6)));
}

impl Formed for Tee {
    const AIR: Option<Outline> = Some(
        Outline::new(
            &[("1", (-3, 0), Left), ("2", (0, -3), Up), ("3", (3, 0), Right), ("4", (0, 3), Down)],
            Area::new(-0.45, -0.45, 0.45, 0.45),
        )
        .picked(Area::new(-1.1, -1.1, 1.1, 1.1)),
    );
}

impl Formed for CheckValve {
    const AIR: Option<Outline> = Some(
        Outline::new(&[("store", (-3, 0), Left), ("source", (3, 0), Right)], Area::new(-1.4, -1.4, 1.4, 2.4))
            .picked(Area::new(-1.4, -1.4, 1.4, 1.4)),
    );
}

impl Formed for Reservoir {
    const AIR: Option<Outline> =
        Some(Outline::new(&[("1", (-4, 0), Left), ("2", (4, 0), Right)], Area::new(-2.8, -1.4, 2.8, 1.4)));
}

impl Formed for EnginePump {
    const AIR: Option<Outline> = Some(
        Outline::new(&[("inlet", (-5, 0), Left)], Area::new(-3.4, -2.2, 5.2, 3.4))
            .picked(Area::new(-3.4, -2.1, 4.8, 2.1)),
    );
}

impl Formed for VacuumGauge {
    const AIR: Option<Outline> =
        Some(Outline::new(&[("stem", (0, 3), Down)], Area::new(-1.7, -1.7, 1.7, 1.7)));
}

impl Formed for HandPump {
    const AIR: Option<Outline> = Some(
        Outline::new(&[("stem", (-4, 0), Left)], Area::new(-2.1, -3.4, 3.4, 3.4))
            .picked(Area::new(-2.1, -2.1, 2.1, 2.1)),
    );
}
