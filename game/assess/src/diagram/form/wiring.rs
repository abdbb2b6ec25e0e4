//! Forms of the electrical symbols.

use sim_core::parts::PartKind;

use super::Way::{Down, Left, Right, Up};
use super::{Area, Form};

/// The form of a kind on the sheet of wiring.
pub(super) fn form(kind: &PartKind) -> Option<Form> {
    let area = Area::new;
    let (ports, body, pick): (&[_], _, _) = match kind {
        PartKind::Battery(_) | PartKind::Supply(_) => {
            let body = area(-1.6, -1.5, 1.6, 1.5);
            (&[("plus", (0, -3), Up), ("minus", (0, 3), Down)], body, body)
        }
        PartKind::Wire(_) | PartKind::Fuse(_) => {
            let body = area(-1.6, -1.0, 1.6, 1.0);
            (&[("a", (-3, 0), Left), ("b", (3, 0), Right)], body, body)
        }
        PartKind::TestLamp(_) => {
            let body = area(-1.4, -1.4, 1.4, 1.4);
            (&[("a", (-3, 0), Left), ("b", (3, 0), Right)], body, body)
        }
        PartKind::PushLead(_) => {
            let body = area(-1.6, -2.2, 1.6, 0.6);
            (&[("a", (-3, 0), Left), ("b", (3, 0), Right)], body, area(-1.6, -2.2, 1.6, 0.6))
        }
        PartKind::Multimeter(_) => {
            let body = area(-1.7, -1.7, 1.7, 1.7);
            (&[("v_ohm", (-3, 0), Left), ("com", (3, 0), Right)], body, body)
        }
        PartKind::Relay(_) => {
            let body = area(-2.8, -4.4, 2.8, 4.4);
            let ports = &[
                ("30", (-4, -3), Left),
                ("87", (4, -3), Right),
                ("86", (-4, 3), Left),
                ("85", (4, 3), Right),
            ];
            (ports, body, body)
        }
        PartKind::KeySwitch(_) => (
            &[("30", (-3, 0), Left), ("15", (3, 0), Right)],
            area(-1.9, -1.9, 1.9, 3.2),
            area(-1.7, -1.3, 1.7, 1.0),
        ),
        PartKind::VacuumSwitch(_) => {
            let body = area(-5.8, -1.6, 1.3, 1.6);
            (&[("p", (0, -3), Up), ("com", (0, 3), Down)], body, body)
        }
        PartKind::VacuumSensor(_) => {
            let body = area(-5.8, -2.4, 1.3, 2.4);
            (&[("plus", (0, -4), Up), ("signal", (4, 0), Right), ("minus", (0, 4), Down)], body, body)
        }
        PartKind::Controller(_) => {
            let body = area(-3.6, -5.6, 3.6, 5.6);
            let ports = &[
                ("15", (-5, -4), Left),
                ("out", (-5, 0), Left),
                ("31", (-5, 4), Left),
                ("feed", (5, -4), Right),
                ("signal", (5, 0), Right),
                ("ground", (5, 4), Right),
            ];
            (ports, body, body)
        }
        PartKind::VacuumPump(_) => {
            let body = area(-2.0, -2.0, 2.6, 2.0);
            (&[("plus", (0, -4), Up), ("minus", (0, 4), Down)], body, body)
        }
        PartKind::Engine(_) => {
            let body = area(-1.7, -1.7, 1.7, 1.7);
            (&[("b_plus", (0, -3), Up), ("ground", (0, 3), Down)], body, body)
        }
        PartKind::Body(_) => {
            let body = area(-1.5, -1.0, 1.5, 1.0);
            (&[], body, body)
        }
        PartKind::Hose(_)
        | PartKind::Tee(_)
        | PartKind::CheckValve(_)
        | PartKind::Booster(_)
        | PartKind::Reservoir(_)
        | PartKind::EnginePump(_)
        | PartKind::VacuumGauge(_)
        | PartKind::HandPump(_) => return None,
    };
    Some(Form::new(ports, body, pick))
}
