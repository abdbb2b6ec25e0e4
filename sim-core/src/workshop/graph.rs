//! Which ports hang together as things stand: the store, an open manifold, an electrical node.
//!
//! Only what a person can see counts here: joints, stops and kinds of parts, never pressures.

use crate::assembly::{Assembly, PortRef, Stop};
use crate::parts::{Domain, PartKind};

/// Index of the first part of a kind.
pub(super) fn first_part(assembly: &Assembly, is: impl Fn(&PartKind) -> bool) -> Option<u16> {
    assembly.parts.iter().position(|p| is(&p.kind)).map(|i| i as u16)
}

/// The port `name` of part `part`.
pub(super) fn port_of(assembly: &Assembly, part: u16, name: &str) -> Option<PortRef> {
    let port = assembly.parts[usize::from(part)].kind.ports().iter().position(|d| d.name == name)?;
    Some(PortRef { part, port: port as u8 })
}

/// Every port joined to `port` by a made joint.
pub(super) fn joined(assembly: &Assembly, port: PortRef) -> Vec<PortRef> {
    let other = |j: &crate::assembly::Joint| {
        if j.a == port {
            Some(j.b)
        } else if j.b == port {
            Some(j.a)
        } else {
            None
        }
    };
    assembly.joints.iter().filter(|j| j.made).filter_map(other).collect()
}

/// Every pneumatic port that air reaches from `from` without passing a check valve, a clamp, the pump
/// or the engine; in order of discovery.
pub(super) fn air_from(assembly: &Assembly, from: PortRef) -> Vec<PortRef> {
    let mut found = vec![from];
    let mut next = 0;
    while next < found.len() {
        let port = found[next];
        next += 1;
        let mut reached = Vec::new();
        if assembly.stop(port) != Some(Stop::Clamp) {
            reached.extend(joined(assembly, port));
        }
        let kind = &assembly.parts[usize::from(port.part)].kind;
        if kind.seen().joins_air {
            reached.extend((0..kind.ports().len()).map(|k| PortRef { part: port.part, port: k as u8 }));
        }
        for r in reached {
            if assembly.domain(r) == Domain::Pneumatic && !found.contains(&r) {
                found.push(r);
            }
        }
    }
    found
}

/// The ports of the vacuum store: all that air reaches from the booster without passing a check valve.
pub(super) fn store(assembly: &Assembly) -> Vec<PortRef> {
    first_part(assembly, |k| matches!(k, PartKind::Booster(_)))
        .and_then(|b| port_of(assembly, b, "vacuum"))
        .map(|p| air_from(assembly, p))
        .unwrap_or_default()
}

/// Whether `port` is a pneumatic port open to the air.
pub(super) fn is_open(assembly: &Assembly, port: PortRef) -> bool {
    assembly.domain(port) == Domain::Pneumatic
        && assembly.stop(port).is_none()
        && joined(assembly, port).is_empty()
}

/// Whether the engine would draw air through an open end: `Some(true)` at the manifold's own nipple,
/// `Some(false)` through a hose or a piece that hangs on it.
pub(super) fn open_manifold(assembly: &Assembly) -> Option<bool> {
    let engine = first_part(assembly, |k| matches!(k, PartKind::Engine(_)))?;
    let nipple = port_of(assembly, engine, "manifold")?;
    if !assembly.joints.iter().any(|j| j.a == nipple || j.b == nipple) {
        return None; // This car takes nothing from its manifold: the nipple is not there.
    }
    if is_open(assembly, nipple) {
        return Some(true);
    }
    air_from(assembly, nipple).into_iter().any(|p| is_open(assembly, p)).then_some(false)
}

/// Whether two electrical ports are one node through made joints (and the sheet of the body).
pub(super) fn same_node(assembly: &Assembly, a: PortRef, b: PortRef) -> bool {
    let mut found = vec![a];
    let mut next = 0;
    while next < found.len() {
        let port = found[next];
        next += 1;
        let mut reached = joined(assembly, port);
        let kind = &assembly.parts[usize::from(port.part)].kind;
        if kind.seen().joins_current {
            reached.extend((0..kind.ports().len()).map(|k| PortRef { part: port.part, port: k as u8 }));
        }
        for r in reached {
            if !found.contains(&r) {
                found.push(r);
            }
        }
    }
    found.contains(&b)
}
