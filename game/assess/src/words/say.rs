//! An action in words, so that it can be typed again: for journals and mark sheets.

use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense};
use sim_core::assembly::Stop;
use sim_core::parts::engine::EngineState;
use sim_core::parts::instruments::MeterMode;

fn on_off(on: bool) -> &'static str {
    if on { "on" } else { "off" }
}

/// Free text in quotes, so that it comes back as it was.
fn quoted(text: &str) -> String {
    shlex::try_quote(text).map_or_else(|_| format!("{text:?}"), |q| q.into_owned())
}

/// The line that means `action`.
#[must_use]
#[expect(clippy::too_many_lines, reason = "a flat table: an arm an action")]
pub fn say(action: &Action) -> String {
    match action {
        Action::ReadCard => "card".to_owned(),
        Action::ReadSheet => "sheet".to_owned(),
        Action::Chocks(on) => format!("chocks {}", on_off(*on)),
        Action::Extraction(on) => format!("extraction {}", on_off(*on)),
        Action::Key(on) => format!("key {}", on_off(*on)),
        Action::Engine(state) => format!(
            "engine {}",
            match state {
                EngineState::Stopped => "stop",
                EngineState::ColdIdle => "cold",
                EngineState::WarmIdle => "idle",
                EngineState::Cruise => "cruise",
                EngineState::Overrun => "overrun",
                EngineState::WideOpen => "open",
            }
        ),
        Action::Pedal(PedalHold::Released) => "pedal release".to_owned(),
        Action::Pedal(PedalHold::Foot { force_n }) => format!("pedal press {force_n}"),
        Action::Pedal(PedalHold::Prop { force_n }) => format!("pedal prop {force_n}"),
        Action::PumpPedal { times, force_n } => format!("pedal pump {times} {force_n}"),
        Action::Cover { cover, off } => format!("cover {cover} {}", on_off(!off)),
        Action::OpenJoint { joint } => format!("open {joint}"),
        Action::MakeJoint { joint } => format!("join {joint}"),
        Action::SetStop { port, stop: Some(Stop::Plug) } => format!("plug {port}"),
        Action::SetStop { port, stop: Some(Stop::Clamp) } => format!("clamp {port}"),
        Action::SetStop { port, stop: None } => format!("free {port}"),
        Action::PullUnit { unit } => format!("pull {unit}"),
        Action::PushUnit { unit } => format!("push {unit}"),
        Action::Fit { instrument, ends } => {
            let mut line = format!("fit {instrument}");
            for (end, target) in ends {
                let end = match end.as_str() {
                    "v_ohm" => "red",
                    "com" => "black",
                    other => other,
                };
                if ends.len() == 1 && matches!(end, "stem" | "jaw" | "beam" | "arm") {
                    line.push_str(&format!(" {target}"));
                } else {
                    line.push_str(&format!(" {end}={target}"));
                }
            }
            line
        }
        Action::Unfit { instrument } => format!("take {instrument}"),
        Action::SetMeter { instrument, mode } => format!(
            "meter {} {instrument}",
            match mode {
                MeterMode::Off => "off",
                MeterMode::Volt => "volt",
                MeterMode::Ohm => "ohm",
                MeterMode::Ampere => "amp",
            }
        ),
        Action::Press { instrument, down: true } => format!("press {instrument}"),
        Action::Press { instrument, down: false } => format!("let {instrument}"),
        Action::Stroke { instrument, times } => format!("stroke {instrument} {times}"),
        Action::Swap { unit, spare } => format!("swap {unit} with {spare}"),
        Action::Clean { unit } => format!("clean {unit}"),
        Action::Reform { unit } => format!("reform {unit}"),
        Action::Read { instrument } => format!("read {instrument}"),
        Action::Sense(sense) => match sense {
            Sense::Hiss { part } => format!("hiss {part}"),
            Sense::Hum => "hum".to_owned(),
            Sense::Touch { part } => format!("touch {part}"),
            Sense::PedalTravel => "feel pedal".to_owned(),
            Sense::PedalMoved => "feel moved".to_owned(),
            Sense::Applications => "feel applications".to_owned(),
            Sense::Lamp { instrument } => format!("look {instrument}"),
            Sense::BaseBrakes => "brakes".to_owned(),
            Sense::YardDrive => "drive".to_owned(),
        },
        Action::Time { cycle: Cycle::PumpRun, max_s } => format!("time run {max_s}"),
        Action::Time { cycle: Cycle::PumpRest, max_s } => format!("time rest {max_s}"),
        Action::Wait { s } => format!("wait {s}"),
        Action::WaitUntil { cue, max_s } => format!(
            "wait until {} {max_s}",
            match cue {
                Cue::PumpStarts => "pump starts",
                Cue::PumpStops => "pump stops",
                Cue::LampOut => "lamp out",
                Cue::LampOn => "lamp on",
            }
        ),
        Action::Overnight => "overnight".to_owned(),
        Action::Note { reading, written, record } => {
            let mut line = format!("note {reading}");
            if let Some(w) = written {
                line.push_str(&format!(" {} {}", w.value, w.unit));
            }
            if let Some(record) = record {
                line.push_str(&format!(" for {record}"));
            }
            line
        }
        Action::Suspect { text } => format!("suspect {}", quoted(text)),
        Action::Finding { certainty, .. } if *certainty <= 0.0 => "finding unknown".to_owned(),
        Action::Finding { units, certainty } if units.is_empty() => {
            format!("finding none sure {certainty:.2}")
        }
        Action::Finding { units, certainty } => format!("finding {} sure {certainty:.2}", units.join(" ")),
        Action::HandBack => "hand back".to_owned(),
    }
}
