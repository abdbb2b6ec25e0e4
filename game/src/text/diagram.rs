//! The car as a line diagram in text: chains of parts from joint to joint, air first, then wiring.

use std::io::{self, Write};

use assess::diagram::{Link, chains};
use sim_core::assembly::PortRef;
use sim_core::car::Car;
use sim_core::parts::Domain;
use sim_core::workshop::View;

use super::show::{hanging, place};

/// Draws the car as it stands.
pub(super) fn car(out: &mut dyn Write, car: &Car, view: &View) -> io::Result<()> {
    let assembly = &car.assembly;
    for (title, domain) in [("Air", Domain::Pneumatic), ("Wiring", Domain::Electrical)] {
        writeln!(out, "{title}: port ── joint ── port")?;
        for Link { begins, joint, from, to } in chains(assembly, domain) {
            let lead = if begins { "•" } else { "│" };
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
