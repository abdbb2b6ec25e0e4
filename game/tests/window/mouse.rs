//! A hand on the pointer: everything by clicks, numbers and text typed where a field asks for them.

use front::hands::{Thing, station_of};
use front::shop::Shop;
use front::words::Words;
use sim_core::action::{Station, Written};
use window::tree::Node;

use super::jobs::{Hands, Where};
use super::plan::Step;
use super::screen::Screen;

/// Clicks.
#[derive(Debug, Default)]
pub(crate) struct Mouse {
    middle: Option<Where>,
    wall: bool,
}

/// Right edge of the clipboard, px.
const CLIPBOARD: f64 = 348.0;

/// The middle of something.
fn middle(node: &Node) -> (f64, f64) {
    let [x0, y0, x1, y1] = node.at;
    (f64::midpoint(x0, x1), f64::midpoint(y0, y1))
}

/// The button of a thing: by its name, or by its name and the state it is in.
fn called<'n>(nodes: &'n [Node], name: &str) -> Option<&'n Node> {
    let with_state = format!("{name}: ");
    let button = |n: &&Node| n.role == "Button" && !n.disabled;
    let exactly = nodes.iter().filter(button).find(|n| n.name == name);
    exactly.or_else(|| nodes.iter().filter(button).find(|n| n.name.starts_with(&with_state)))
}

impl Mouse {
    fn click(screen: &mut Screen, name: &str) {
        let node = screen.find(name);
        let (x, y) = middle(&node);
        screen.click_at(x, y);
    }

    fn click_button(screen: &mut Screen, name: &str) {
        let is = |n: &Node| n.name == name && n.role == "Button" && !n.disabled;
        let nodes = screen.until(&format!("the button {name:?}"), |nodes| nodes.iter().any(is));
        let (x, y) = middle(nodes.iter().rfind(|n| is(n)).unwrap());
        screen.click_at(x, y);
    }

    /// Brings something on the clipboard into view by the wheel, and clicks it.
    fn click_scrolled(screen: &mut Screen, name: &str) {
        // A thing of the car may be called the same as its box on the clipboard.
        let is = |n: &&Node| n.name == name && !n.disabled && n.at[2] <= CLIPBOARD;
        for _ in 0..60 {
            let nodes =
                screen.until(&format!("{name:?} on the clipboard"), |nodes| nodes.iter().any(|n| is(&n)));
            let node = nodes.iter().rfind(is).unwrap().clone();
            let (x, y) = middle(&node);
            let top = 150.0;
            let bottom = f64::from(super::screen::SIZE.1) - 40.0;
            if (top..bottom).contains(&y) {
                // The list may still glide, and a busy machine may show no new frame for a while; click only what stands.
                std::thread::sleep(std::time::Duration::from_millis(600));
                if screen.nodes().iter().rfind(is).is_some_and(|n| n.at == node.at) {
                    screen.click_at(x, y);
                    return;
                }
                continue;
            }
            screen.wheel_at(160.0, 400.0, y < top);
        }
        panic!("{name:?} does not come into view");
    }

    fn open(&mut self, screen: &mut Screen, shop: &Shop, words: &Words, thing: Thing, first: &str) -> bool {
        let name = words.name(shop, thing);
        match thing {
            Thing::Clock => {
                let key = if first == words.say("offer-wait") {
                    "time-wait"
                } else if first == words.say("offer-overnight") {
                    "time-overnight"
                } else if first == words.say("offer-stopwatch") {
                    "time-watch"
                } else {
                    "time-until"
                };
                Self::click(screen, &words.say(key));
                // The button has taken the first line already.
                true
            }
            Thing::Instrument(card) => {
                let kit = &shop.session().unwrap().workshop().setup().kit;
                let kind = &kit[usize::from(card)].kind;
                use sim_core::instrument::InstrumentKind as Kind;
                let on_wall = matches!(kind, Kind::Barometer { .. } | Kind::WallThermometer { .. });
                if on_wall != self.wall {
                    Self::click(screen, &words.say("tray-wall"));
                    self.wall = on_wall;
                }
                // A setting is called by what the meter then measures.
                let setting = ["off", "volt", "ohm", "ampere"]
                    .into_iter()
                    .find(|m| words.say(&format!("offer-meter-{m}")) == first)
                    .map(|m| words.say(&format!("meter-{m}")));
                let button = format!("{name}: {}", setting.as_deref().unwrap_or(first));
                let (x, y) = middle(&screen.find(&button));
                screen.click_at(x, y);
                true
            }
            _ => {
                if self.middle == Some(Where::Room) {
                    // Things of the yard and the paper lie at the desk.
                    let at = station_of(shop, thing).unwrap_or(Station::Desk);
                    let station = words.say(front::words::station_key(at));
                    let tab = screen.find(&station);
                    if !tab.on {
                        let (x, y) = middle(&tab);
                        // Settled is what came of it when the eye has arrived.
                        screen.click_at(x, y);
                    }
                }
                // It may be on the other sheet of the line diagram.
                for sheet in ["diagram-sheet-wiring", "diagram-sheet-air"] {
                    if self.middle == Some(Where::Diagram) && called(&screen.nodes(), &name).is_none() {
                        Self::click(screen, &words.say(sheet));
                    }
                }
                let nodes = screen.until(&format!("{name:?} in the {:?}", self.middle), |nodes| {
                    called(nodes, &name).is_some()
                });
                let (x, y) = middle(called(&nodes, &name).unwrap());
                screen.click_at(x, y);
                false
            }
        }
    }
}

impl Hands for Mouse {
    fn turn_to(&mut self, screen: &mut Screen, words: &Words, to: Where) {
        let key = if to == Where::Room { "middle-room" } else { "middle-diagram" };
        Self::click(screen, &words.say(key));
        self.middle = Some(to);
    }

    fn follow(&mut self, screen: &mut Screen, shop: &Shop, words: &Words, steps: &[Step]) {
        let mut skip = false;
        for (i, step) in steps.iter().enumerate() {
            match step {
                Step::Open(thing) => {
                    let first = match steps.get(i + 1) {
                        Some(Step::Take(words, _)) => words.as_str(),
                        _ => "",
                    };
                    skip = self.open(screen, shop, words, *thing, first);
                }
                Step::Take(..) if std::mem::take(&mut skip) => {}
                Step::Take(line, _) => Self::click_button(screen, line),
                Step::Fill(numbers) => {
                    super::keyboard::fill(screen, words, numbers);
                    Self::click_button(screen, &words.say("form-do"));
                }
            }
        }
    }

    fn note(
        &mut self,
        screen: &mut Screen,
        shop: &Shop,
        words: &Words,
        reading: u32,
        written: Option<&Written>,
        record: Option<&str>,
    ) {
        Self::click(screen, &words.say("leaf-notebook"));
        let n = [("n", reading.into())];
        if written.is_some() {
            Self::click_scrolled(screen, &words.say_with("notebook-note-number", &n));
        }
        if let Some(line) = record {
            let field = words.say_with("note-line", &n);
            let line = words.record_short(shop, line);
            // Whoever chooses looks at what came of it: the list may have moved under the pointer.
            for again in 0..3 {
                Self::click_scrolled(screen, &field);
                Self::click(screen, &line);
                if screen.find(&field).value.as_deref() == Some(line.as_str()) {
                    break;
                }
                println!("chose {line} ({again}), {field} shows {:?}", screen.find(&field).value);
                assert!(again < 2, "{line:?} cannot be chosen:\n{}", screen.names());
            }
        }
        match written {
            Some(written) => {
                let field = words.say("note-what");
                for again in 0..3 {
                    Self::click_scrolled(screen, &field);
                    if screen.nodes().iter().any(|n| n.focused && n.name == field) {
                        break;
                    }
                    println!("clicked {field:?} ({again}), it has not the focus");
                    assert!(again < 2, "{field:?} gets no focus:\n{}", screen.names());
                }
                screen.type_in(&format!("{} {}", written.value, written.unit));
                Self::click_scrolled(screen, &words.say("note-do"));
            }
            None => Self::click_scrolled(screen, &words.say_with("notebook-note-sense", &n)),
        }
    }

    fn finding(&mut self, screen: &mut Screen, shop: &Shop, words: &Words, units: &[String], certainty: f64) {
        Self::click(screen, &words.say("leaf-finding"));
        for unit in units {
            Self::click_scrolled(screen, &words.unit(shop, unit));
        }
        if units.is_empty() {
            Self::click_scrolled(screen, &words.say("finding-sound"));
        }
        let percent = format!("{} %", words.number(certainty * 100.0, 0));
        Self::click_scrolled(screen, &words.say_with("finding-sure", &[("percent", percent.into())]));
        Self::click_scrolled(screen, &words.say("finding-do"));
        Self::click(screen, &words.say("finding-confirm-do"));
    }

    fn hand_back(&mut self, screen: &mut Screen, words: &Words) {
        Self::click(screen, &words.say("bar-hand-back"));
        Self::click(screen, &words.say("back-do"));
    }
}
