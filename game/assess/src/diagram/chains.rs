//! The circuit as a hand follows it: joints in chains, along each part with two ports.

use sim_core::assembly::{Assembly, Joint, PortRef};
use sim_core::parts::Domain;

/// A joint on the way along a chain.
#[derive(Clone, Copy, Debug)]
pub struct Link<'a> {
    /// It begins a new chain.
    pub begins: bool,
    /// The joint.
    pub joint: &'a Joint,
    /// The port it is reached by.
    pub from: PortRef,
    /// The port behind it.
    pub to: PortRef,
}

/// Joints in the order in which a hand would follow them: along each part with two joints, a new chain at each
/// branch. Each joint of the domain comes once.
#[must_use]
pub fn chains(assembly: &Assembly, domain: Domain) -> Vec<Link<'_>> {
    let joints: Vec<&Joint> = assembly.joints.iter().filter(|j| assembly.domain(j.a) == domain).collect();
    let mut used = vec![false; joints.len()];
    let mut out = Vec::new();
    let degree = |part: u16| joints.iter().filter(|j| j.a.part == part || j.b.part == part).count();
    while let Some(first) = used.iter().position(|u| !u) {
        let (mut at, mut from, mut to) = (first, joints[first].a, joints[first].b);
        let mut begins = true;
        loop {
            used[at] = true;
            out.push(Link { begins, joint: joints[at], from, to });
            begins = false;
            // Go on only where the part has just one other joint.
            if degree(to.part) != 2 {
                break;
            }
            let next = joints
                .iter()
                .enumerate()
                .position(|(i, j)| !used[i] && (j.a.part == to.part || j.b.part == to.part));
            let Some(next) = next else { break };
            at = next;
            let joint = joints[next];
            (from, to) = if joint.a.part == to.part { (joint.a, joint.b) } else { (joint.b, joint.a) };
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_joint_of_every_car_comes_once() {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let library = crate::pack::Library::open(&root).unwrap();
        for car in library.cars().unwrap() {
            let car = library.car(&car).unwrap();
            for domain in [Domain::Pneumatic, Domain::Electrical] {
                let mut drawn: Vec<&str> =
                    chains(&car.assembly, domain).iter().map(|l| l.joint.id.as_str()).collect();
                drawn.sort_unstable();
                let all = car.assembly.joints.iter().filter(|j| car.assembly.domain(j.a) == domain);
                let mut all: Vec<&str> = all.map(|j| j.id.as_str()).collect();
                all.sort_unstable();
                assert_eq!(drawn, all, "{}", car.id);
            }
        }
    }
}
