//! From where one gets at a port.

use sim_core::action::Station;
use sim_core::assembly::PortRef;
use sim_core::car::Car;
use sim_core::parts::PartKind;

/// Whether a part is a line (hose, wire) between fittings.
#[must_use]
pub fn is_line(kind: &PartKind) -> bool {
    matches!(kind, PartKind::Hose(_) | PartKind::Wire(_))
}

fn is_spread(kind: &PartKind) -> bool {
    is_line(kind) || matches!(kind, PartKind::Body(_))
}

/// From where a port can be reached, and the cover (index) that bars it there: a line's end is where the
/// thing is that it is joined to, as the workshop counts it.
#[must_use]
pub fn stations_of(car: &Car, port: PortRef) -> Vec<(Station, Option<usize>)> {
    let of_part = |part: u16| {
        let standing = car.stands.get(usize::from(part))?;
        let cover = standing.behind.as_ref().and_then(|id| car.covers.iter().position(|c| c.id == *id));
        Some((standing.station, cover))
    };
    let spread = |part: u16| car.assembly.parts.get(usize::from(part)).is_some_and(|p| is_spread(&p.kind));
    if !spread(port.part) {
        return of_part(port.part).into_iter().collect();
    }
    let Some(joint) = car.assembly.joints.iter().find(|j| j.a == port || j.b == port) else {
        return of_part(port.part).into_iter().collect();
    };
    let both = [joint.a.part, joint.b.part];
    let fixed: Vec<u16> = both.into_iter().filter(|p| !spread(*p)).collect();
    let parts = if fixed.is_empty() { both.to_vec() } else { fixed };
    parts.into_iter().filter_map(of_part).collect()
}
