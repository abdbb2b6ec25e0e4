//! The car as a line diagram in text: chains of parts from joint to joint, air first, then wiring.

use std::io::{self, Write};

use assess::diagram::{Link, chains};
use front::words::Words;
use sim_core::assembly::{PortRef, Stop};
use sim_core::car::Car;
use sim_core::parts::Domain;
use sim_core::workshop::View;

use super::called;
use super::show::{hanging, place};
use crate::tongue::{decimal, say};

/// Draws the car as it stands.
pub(super) fn car(out: &mut dyn Write, words: &Words, car: &Car, view: &View) -> io::Result<()> {
    let assembly = &car.assembly;
    for (title, domain) in [("bench-car-air", Domain::Pneumatic), ("bench-car-wiring", Domain::Electrical)] {
        writeln!(out, "{}", words.say(title))?;
        for Link { begins: new_chain, joint, from, to } in chains(assembly, domain) {
            let lead = if new_chain { "•" } else { "│" };
            let open = view.joints_open.contains(&joint.id);
            let (left, right) = if open { ("─┤ ", " ├─") } else { ("── ", " ──") };
            let stop = |port: PortRef| {
                let name = assembly.port_name(port);
                match view.stops.iter().find(|(p, _)| *p == name) {
                    Some((_, Stop::Plug)) => format!(" {}", words.say("bench-car-plug")),
                    Some((_, Stop::Clamp)) => format!(" {}", words.say("bench-car-clamp")),
                    None => String::new(),
                }
            };
            let name = |port: PortRef| format!("{}{}", assembly.port_name(port), stop(port));
            let open = if open { format!("   {}", words.say("bench-car-open")) } else { String::new() };
            writeln!(out, "  {lead} {:<18} {left}{:<15}{right} {}{open}", name(from), joint.id, name(to))?;
        }
    }
    writeln!(out, "{}", words.say("bench-car-parts"))?;
    for (part, standing) in assembly.parts.iter().zip(&car.stands) {
        let behind = match &standing.behind {
            Some(cover) if !view.covers_off.contains(cover) => {
                format!(", {}", say!(words, "bench-car-behind", cover = cover))
            }
            _ => String::new(),
        };
        let rubber =
            if standing.rubber { format!(", {}", words.say("bench-car-rubber")) } else { String::new() };
        let name = called::part(words, car, &part.id, &standing.name);
        let text = format!("{name} ({}{behind}{rubber})", place(words, standing.station));
        hanging(out, &part.id, &text)?;
    }
    if !car.covers.is_empty() {
        writeln!(out, "{}", words.say("bench-car-covers"))?;
        for cover in &car.covers {
            let off = match view.covers_off.contains(&cover.id) {
                true => format!("  {}", words.say("bench-car-cover-off")),
                false => String::new(),
            };
            let min = |min: f64| decimal(words, min);
            let text = say!(
                words,
                "bench-car-cover",
                name = called::cover(words, car, cover),
                off = min(cover.off_min),
                on = min(cover.on_min)
            );
            writeln!(out, "  {:<12} {text}{off}", cover.id)?;
        }
    }
    Ok(())
}
