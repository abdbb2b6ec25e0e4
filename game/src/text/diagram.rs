//! The car as a line diagram in text: chains of parts from joint to joint, air first, then wiring.

use std::io::{self, Write};

use sim_core::assembly::{Assembly, Joint, PortRef};
use sim_core::car::Car;
use sim_core::parts::Domain;
use sim_core::workshop::View;

use super::show::{hanging, place};

/// Joints in the order in which a hand would follow them: along each part with two ports, a new chain
/// at each branch. Each joint comes once; `true` begins a new chain.
fn chains(assembly: &Assembly, domain: Domain) -> Vec<(bool, &Joint, PortRef, PortRef)> {
    let joints: Vec<&Joint> = assembly.joints.iter().filter(|j| assembly.domain(j.a) == domain).collect();
    let mut used = vec![false; joints.len()];
    let mut out = Vec::new();
    let degree = |part: u16| joints.iter().filter(|j| j.a.part == part || j.b.part == part).count();
    while let Some(first) = used.iter().position(|u| !u) {
        let (mut at, mut from, mut to) = (first, joints[first].a, joints[first].b);
        let mut new_chain = true;
        loop {
            used[at] = true;
            out.push((new_chain, joints[at], from, to));
            new_chain = false;
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

/// Draws the car as it stands.
pub(super) fn car(out: &mut dyn Write, car: &Car, view: &View) -> io::Result<()> {
    let assembly = &car.assembly;
    for (title, domain) in [("Air", Domain::Pneumatic), ("Wiring", Domain::Electrical)] {
        writeln!(out, "{title}: port ── joint ── port")?;
        for (new_chain, joint, from, to) in chains(assembly, domain) {
            let lead = if new_chain { "•" } else { "│" };
            let open = view.joints_open.contains(&joint.id);
            let (left, right) = if open { ("─┤ ", " ├─") } else { ("── ", " ──") };
            let stop = |port: PortRef| {
                let name = assembly.port_name(port);
                match view.stops.iter().find(|(p, _)| *p == name) {
                    Some((_, sim_core::assembly::Stop::Plug)) => " [plug]",
                    Some((_, sim_core::assembly::Stop::Clamp)) => " [clamp]",
                    None => "",
                }
            };
            let name = |port: PortRef| format!("{}{}", assembly.port_name(port), stop(port));
            writeln!(
                out,
                "  {lead} {:<18} {left}{:<15}{right} {}{}",
                name(from),
                joint.id,
                name(to),
                if open { "   open" } else { "" }
            )?;
        }
    }
    writeln!(out, "Parts, and where to stand")?;
    for (part, standing) in assembly.parts.iter().zip(&car.stands) {
        let behind = match &standing.behind {
            Some(cover) if !view.covers_off.contains(cover) => format!(", behind {cover}"),
            _ => String::new(),
        };
        let rubber = if standing.rubber { ", rubber" } else { "" };
        let text = format!("{} ({}{behind}{rubber})", standing.name, place(standing.station));
        hanging(out, &part.id, &text)?;
    }
    if !car.covers.is_empty() {
        writeln!(out, "Covers")?;
        for cover in &car.covers {
            let off = if view.covers_off.contains(&cover.id) { "  (off)" } else { "" };
            let (min, back) = (cover.off_min, cover.on_min);
            writeln!(out, "  {:<12} {}, {min} min off, {back} on{off}", cover.id, cover.name)?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_joint_is_drawn_once() {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
        let car = assess::pack::Library::open(&root).unwrap().car("alder").unwrap();
        for domain in [Domain::Pneumatic, Domain::Electrical] {
            let mut drawn: Vec<&str> =
                chains(&car.assembly, domain).iter().map(|(_, j, ..)| j.id.as_str()).collect();
            drawn.sort_unstable();
            let mut all: Vec<&str> = car
                .assembly
                .joints
                .iter()
                .filter(|j| car.assembly.domain(j.a) == domain)
                .map(|j| j.id.as_str())
                .collect();
            all.sort_unstable();
            assert_eq!(drawn, all);
        }
    }
}
