//! Forms of the electrical symbols.

use sim_core::parts::controller::Controller;
use sim_core::parts::electrical::{Battery, Body, Fuse, KeySwitch, Relay, RelaySocket, Supply, Wire};
use sim_core::parts::instruments::{Multimeter, PushLead, TestLamp};

use super::Way::{Down, Left, Right, Up};
use super::{Area, Formed, Outline};

impl Formed for Battery {
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("plus", (0, -3), Up), ("minus", (0, 3), Down)],
        Area::new(-1.6, -1.5, 1.6, 1.5),
    ));
}

impl Formed for Supply {
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("plus", (0, -3), Up), ("minus", (0, 3), Down)],
        Area::new(-1.6, -1.5, 1.6, 1.5),
    ));
}

impl Formed for Wire {
    const WIRING: Option<Outline> =
        Some(Outline::new(&[("a", (-3, 0), Left), ("b", (3, 0), Right)], Area::new(-1.6, -1.0, 1.6, 1.0)));
}

impl Formed for Fuse {
    const WIRING: Option<Outline> =
        Some(Outline::new(&[("a", (-3, 0), Left), ("b", (3, 0), Right)], Area::new(-1.6, -1.0, 1.6, 1.0)));
}

impl Formed for TestLamp {
    const WIRING: Option<Outline> =
        Some(Outline::new(&[("a", (-3, 0), Left), ("b", (3, 0), Right)], Area::new(-1.4, -1.4, 1.4, 1.4)));
}

impl Formed for PushLead {
    const WIRING: Option<Outline> =
        Some(Outline::new(&[("a", (-3, 0), Left), ("b", (3, 0), Right)], Area::new(-1.6, -2.2, 1.6, 0.6)));
}

impl Formed for Multimeter {
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("v_ohm", (-3, 0), Left), ("com", (3, 0), Right)],
        Area::new(-1.7, -1.7, 1.7, 1.7),
    ));
}

impl Formed for Relay {
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("30", (-4, -3), Left), ("87", (4, -3), Right), ("86", (-4, 3), Left), ("85", (4, 3), Right)],
        Area::new(-2.8, -4.4, 2.8, 4.4),
    ));
}

impl Formed for RelaySocket {
    const WIRING: Option<Outline> = Some(Outline::new(
        &[("30", (-4, 0), Left), ("clip", (4, 0), Right), ("87", (0, -3), Up)],
        Area::new(-2.6, -1.6, 2.6, 1.4),
    ));
}

impl Formed for KeySwitch {
    const WIRING: Option<Outline> = Some(
        Outline::new(&[("30", (-3, 0), Left), ("15", (3, 0), Right)], Area::new(-1.9, -1.9, 1.9, 3.2))
            .picked(Area::new(-1.7, -1.3, 1.7, 1.0)),
    );
}

impl Formed for Controller {
    const WIRING: Option<Outline> = Some(Outline::new(
        &[
            ("15", (-5, -4), Left),
            ("out", (-5, 0), Left),
            ("31", (-5, 4), Left),
            ("feed", (5, -4), Right),
            ("signal", (5, 0), Right),
            ("ground", (5, 4), Right),
        ],
        Area::new(-3.6, -5.6, 3.6, 5.6),
    ));
}

impl Formed for Body {
    const WIRING: Option<Outline> = Some(Outline::new(&[], Area::new(-1.5, -1.0, 1.5, 1.0)));
}
