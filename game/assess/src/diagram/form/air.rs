//! Forms of the pneumatic symbols.

use sim_core::parts::PartKind;

use super::Way::{Down, Left, Right, Up};
use super::{Area, Form};

/// The form of a kind on the sheet of air.
pub(super) fn form(kind: &PartKind) -> Option<Form> {
    let area = Area::new;
    let (ports, body, pick): (&[_], _, _) = match kind {
        PartKind::Booster(_) => {
            (&[("vacuum", (6, -2), Right)], area(-9.2, -4.0, 5.2, 4.0), area(-4.2, -3.6, 4.2, 3.6))
        }
        PartKind::Hose(_) => {
            let body = area(-2.6, -1.1, 2.6, 1.6);
            (&[("a", (-4, 0), Left), ("b", (4, 0), Right)], body, body)
        }
        PartKind::Tee(_) => (
            &[("1", (-3, 0), Left), ("2", (0, -3), Up), ("3", (3, 0), Right), ("4", (0, 3), Down)],
            area(-0.45, -0.45, 0.45, 0.45),
            area(-1.1, -1.1, 1.1, 1.1),
        ),
        PartKind::CheckValve(_) => (
            &[("store", (-3, 0), Left), ("source", (3, 0), Right)],
            area(-1.4, -1.4, 1.4, 2.4),
            area(-1.4, -1.4, 1.4, 1.4),
        ),
        PartKind::Reservoir(_) => {
            let body = area(-2.8, -1.4, 2.8, 1.4);
            (&[("1", (-4, 0), Left), ("2", (4, 0), Right)], body, body)
        }
        PartKind::VacuumSwitch(_) | PartKind::VacuumSensor(_) => {
            let body = area(-2.2, -2.0, 2.2, 2.0);
            (&[("vacuum", (0, 3), Down)], body, body)
        }
        PartKind::Engine(_) => {
            (&[("manifold", (-5, 0), Left)], area(-4.0, -5.5, 4.2, 3.2), area(-4.0, -3.2, 4.2, 3.2))
        }
        PartKind::VacuumPump(_) | PartKind::EnginePump(_) => {
            (&[("inlet", (-5, 0), Left)], area(-3.4, -2.2, 5.2, 3.4), area(-3.4, -2.1, 4.8, 2.1))
        }
        PartKind::VacuumGauge(_) => {
            let body = area(-1.7, -1.7, 1.7, 1.7);
            (&[("stem", (0, 3), Down)], body, body)
        }
        PartKind::HandPump(_) => {
            (&[("stem", (-4, 0), Left)], area(-2.1, -3.4, 3.4, 3.4), area(-2.1, -2.1, 2.1, 2.1))
        }
        PartKind::Controller(_)
        | PartKind::Battery(_)
        | PartKind::Supply(_)
        | PartKind::Fuse(_)
        | PartKind::Relay(_)
        | PartKind::KeySwitch(_)
        | PartKind::Wire(_)
        | PartKind::Body(_)
        | PartKind::TestLamp(_)
        | PartKind::Multimeter(_)
        | PartKind::PushLead(_) => return None,
    };
    Some(Form::new(ports, body, pick))
}
