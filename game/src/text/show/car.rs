//! What there is to look at: card, data sheet, car, parts, tools, store.

use std::io::{self, Write};

use super::{WIDTH, all_of, capital, place, wrapped};
use crate::text::{called, dial};
use crate::tongue::{decimal, say};
use assess::play::Session;
use front::words::Words;
use sim_core::action::PedalHold;
use sim_core::assembly::Stop;
use sim_core::parts::engine::EngineState;

/// The job card.
pub(in crate::text) fn card(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let job = session.job();
    writeln!(out, "┌─ {} ─ {}", words.job(&job.name(), &job.title), job.name())?;
    for (i, line) in called::card_lines(words, job).iter().enumerate() {
        if i > 0 {
            writeln!(out, "│")?;
        }
        wrapped(out, "│ ", line)?;
    }
    writeln!(out, "└{}", "─".repeat(WIDTH - 1))
}

/// The car's data sheet.
pub(super) fn sheet(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let car = &session.job().car;
    writeln!(out, "┌─ {} ─ {}", words.say("bench-sheet"), words.car(&car.id, &car.name))?;
    for limit in &car.limits {
        wrapped(out, "│ • ", &words.limit(&car.id, &limit.id, &limit.text))?;
    }
    if let Some(m) = car.cut_out_height_m() {
        wrapped(out, "│ ", &say!(words, "bench-sheet-altitude", m = decimal(words, m)))?;
    }
    for (n, caution) in car.cautions.iter().enumerate() {
        wrapped(out, "│ ! ", &words.caution(&car.id, n, caution))?;
    }
    writeln!(out, "└{}", "─".repeat(WIDTH - 1))
}

/// What is open, fitted and on.
pub(in crate::text) fn look(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let view = session.view();
    let engine = words.say(match view.engine {
        EngineState::Stopped => "bench-engine-stopped",
        EngineState::ColdIdle => "bench-engine-cold",
        EngineState::WarmIdle => "bench-engine-warm",
        EngineState::Cruise => "bench-engine-cruise",
        EngineState::Overrun => "bench-engine-overrun",
        EngineState::WideOpen => "bench-engine-open",
    });
    let pedal = match view.pedal {
        PedalHold::Released => words.say("bench-pedal-free"),
        PedalHold::Foot { force_n } => say!(words, "bench-pedal-foot", n = decimal(words, force_n)),
        PedalHold::Prop { force_n } => say!(words, "bench-pedal-prop", n = decimal(words, force_n)),
    };
    let either = |is: bool, yes: &str, no: &str| words.say(if is { yes } else { no });
    let stands = say!(
        words,
        "bench-look",
        place = place(words, view.station),
        key = either(view.key_on, "bench-key-on", "bench-key-off"),
        engine = engine,
        pedal = pedal,
        chocks = either(view.chocked, "bench-chocks-on", "bench-chocks-off"),
        extraction = either(view.extracted, "bench-extraction-on", "bench-extraction-off"),
        hum = either(view.hum, "bench-hum", "bench-no-hum")
    );
    wrapped(out, "  ", &stands)?;
    let mut list = |key: &str, items: &[String]| {
        if items.is_empty() {
            return Ok(());
        }
        wrapped(out, "  ", &words.say_with(key, &[("list", items.join(", ").into())]))
    };
    list("bench-covers-off", &view.covers_off)?;
    list("bench-joints-open", &view.joints_open)?;
    list("bench-pulled", &view.pulled)?;
    let stops: Vec<String> = view
        .stops
        .iter()
        .map(|(port, stop)| match stop {
            Stop::Plug => say!(words, "bench-plug-on", at = port),
            Stop::Clamp => say!(words, "bench-clamp-at", at = port),
        })
        .collect();
    list("bench-stops", &stops)?;
    let fitted: Vec<String> = view
        .instruments
        .iter()
        .filter(|i| !i.at.is_empty())
        .map(|i| {
            let at: Vec<&str> = i.at.iter().map(|(_, port)| port.as_str()).collect();
            say!(words, "bench-fitted-at", it = i.id.as_str(), at = all_of(words, &at))
        })
        .collect();
    list("bench-fitted", &fitted)?;
    let whole = |min: f64| format!("{min:.0}");
    let (worked, waited) = (whole(view.attended_min), whole(view.unattended_min));
    wrapped(out, "  ", &say!(words, "bench-minutes", worked = worked, waited = waited))
}

/// One part, looked at.
pub(in crate::text) fn part(
    out: &mut dyn Write,
    words: &Words,
    session: &Session,
    id: &str,
) -> io::Result<()> {
    let car = &session.job().car;
    let view = session.view();
    let found = car.assembly.parts.iter().zip(&car.stands).find(|(part, _)| part.id == id);
    let Some((part, stands)) = found else { return Ok(()) };
    let name = capital(&called::part(words, car, id, &stands.name));
    let place = place(words, stands.station);
    let mut text = match &stands.behind {
        Some(cover) if !view.covers_off.contains(cover) => {
            say!(words, "bench-part-behind", name = name, place = place, cover = cover)
        }
        _ => say!(words, "bench-part", name = name, place = place),
    };
    let made_of = match (stands.rubber, stands.bright_metal) {
        (true, _) => Some("bench-part-rubber"),
        (false, true) => Some("bench-part-bright"),
        (false, false) => None,
    };
    if let Some(key) = made_of {
        text = format!("{text} {}", words.say(key));
    }
    wrapped(out, "  ", &text)?;
    for joint in &car.assembly.joints {
        let (a, b) = (car.assembly.port_name(joint.a), car.assembly.port_name(joint.b));
        if [&a, &b].iter().any(|port| port.split('.').next() == Some(id)) {
            let text = match view.joints_open.contains(&joint.id) {
                true => say!(words, "bench-part-joint-open", a = a, b = b),
                false => say!(words, "bench-part-joint", a = a, b = b),
            };
            writeln!(out, "  {:<14} {text}", joint.id)?;
        }
    }
    if let Some(unit) =
        car.units.iter().find(|u| u.parts.iter().any(|p| car.assembly.parts[usize::from(*p)].id == part.id))
    {
        let min = format!("{:.0}", unit.swap_min);
        writeln!(out, "  {}", say!(words, "bench-part-unit", unit = unit.id.as_str(), min = min))?;
    }
    Ok(())
}

/// The tool board, or one tool.
pub(in crate::text) fn tools(
    out: &mut dyn Write,
    words: &Words,
    session: &Session,
    one: Option<&str>,
) -> io::Result<()> {
    let view = session.view();
    for card in session.job().kit.iter().filter(|c| one.is_none_or(|id| c.id == id)) {
        let fitted = match view.instruments.iter().any(|i| i.id == card.id && !i.at.is_empty()) {
            true => format!("  {}", words.say("bench-tool-fitted")),
            false => String::new(),
        };
        let cost = match 0.0 < card.fit_min {
            true => format!(", {}", say!(words, "bench-tool-cost", min = decimal(words, card.fit_min))),
            false => String::new(),
        };
        writeln!(out, "  {:<12} {}{cost}{fitted}", card.id, called::instrument(words, card))?;
        wrapped(out, "               ", &called::instrument_help(words, card))?;
        if one.is_some()
            && let Some(dial) = dial::dial_of(&card.kind)
        {
            let number = |value: f64| decimal(words, value);
            let wrong = format!("{:.1}", dial.class / 100.0 * (dial.max - dial.min));
            let text = say!(
                words,
                "bench-tool-dial",
                min = number(dial.min),
                max = number(dial.max),
                division = number(dial.division),
                class = number(dial.class),
                wrong = decimal(words, wrong)
            );
            wrapped(out, "               ", &text)?;
        }
    }
    Ok(())
}

/// Spares, and what can be mended.
pub(in crate::text) fn store(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let job = session.job();
    let [unit, spare, price, min, what] =
        ["bench-store-unit", "bench-store-spare", "bench-store-price", "bench-store-min", "bench-store-what"]
            .map(|key| words.say(key));
    writeln!(out, "  {unit:<13} {spare:<14} {price:>6} {min:>4}  {what}")?;
    for spare in job.spares.iter() {
        let Some(unit) = job.car.units.get(usize::from(spare.unit)) else { continue };
        let price = decimal(words, format!("{:.2}", spare.price));
        let name = called::spare(words, &job.car, spare);
        writeln!(out, "  {:<13} {:<14} {price:>6} {:>4.0}  {name}", unit.id, spare.id, unit.swap_min)?;
    }
    let names = |can: &dyn Fn(&sim_core::car::RepairUnit) -> bool| {
        job.car.units.iter().filter(|u| can(u)).map(|u| u.id.clone()).collect::<Vec<_>>().join(", ")
    };
    wrapped(out, "  ", &say!(words, "bench-can-clean", list = names(&|u| !u.cleans.is_empty())))?;
    wrapped(out, "  ", &say!(words, "bench-can-reform", list = names(&|u| u.reforms)))?;
    wrapped(out, "  ", &say!(words, "bench-can-pull", list = names(&|u| u.plug_in)))
}
