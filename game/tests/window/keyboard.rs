//! A hand on the keys alone: the list of things, the keys of the menus, Tab on the clipboard.

use front::hands::Thing;
use front::shop::Shop;
use front::words::Words;
use sim_core::action::Written;
use window::tree::Node;

use super::jobs::{Hands, Where};
use super::plan::Step;
use super::screen::Screen;

/// Keys.
#[derive(Debug, Default)]
pub(crate) struct Keyboard;

/// Roles of what Tab stops at.
const STOPS: [&str; 6] = ["Button", "CheckBox", "RadioButton", "ComboBox", "TextInput", "Slider"];

/// Writes numbers into the fields of an open form: the first has the focus and its number is marked. A form that
/// was come to by keys begins at its title: one step leads to its first field, or to what does it.
pub(crate) fn fill(screen: &mut Screen, words: &Words, numbers: &[u32]) {
    screen.find(&words.say("form-do"));
    let how = words.say("menu-neutral");
    if screen.nodes().iter().any(|n| n.focused && n.name.ends_with(&how)) {
        screen.key("Tab");
    }
    for (i, number) in numbers.iter().enumerate() {
        if 0 < i {
            // What a field held is marked when it gets the focus.
            screen.key("Tab");
        }
        let typed = number.to_string();
        // Whoever types looks at what came of it.
        for again in 0..3 {
            screen.type_in(&typed);
            let field = screen.nodes().into_iter().find(|n| n.focused);
            if field.as_ref().and_then(|n| n.value.as_deref()) == Some(typed.as_str()) {
                break;
            }
            println!("typed {typed} ({again}), the field shows {field:?}");
            screen.key("End");
            for _ in 0..field.and_then(|n| n.value).map_or(0, |v| v.chars().count()) {
                screen.key("BackSpace");
            }
        }
    }
}

/// The key that chooses line `i` of a menu, as the menu shows it.
fn line_key(i: usize) -> String {
    if i < 9 { (i + 1).to_string() } else { char::from(b'a' + (i - 9) as u8).to_string() }
}

impl Keyboard {
    fn open(screen: &mut Screen, shop: &Shop, words: &Words, thing: Thing) {
        let name = words.name(shop, thing);
        screen.key("f");
        screen.until("the list of things", |nodes| {
            nodes.iter().any(|n| n.focused && n.role.contains("TextInput"))
        });
        // Words of plain letters are enough to find it, and typed as they are on any keyboard.
        let plain: Vec<&str> = name.split(' ').filter(|w| w.is_ascii()).collect();
        screen.type_in(&plain.join(" "));
        let typed = plain.join(" ");
        screen.until("what was typed", |nodes| {
            nodes.iter().any(|n| n.value.as_deref() == Some(typed.as_str()))
        });
        let is = |n: &Node| n.name == name && n.role != "Label";
        let nodes = screen.until(&format!("{name:?} in the list"), |nodes| nodes.iter().any(is));
        // Names may begin alike; go down to the one.
        let row = nodes.iter().rfind(|n| is(n)).unwrap().role.clone();
        let rows: Vec<&Node> = nodes.iter().filter(|n| n.name.contains(&name) && n.role == row).collect();
        let at = rows.iter().rposition(|n| n.name == name).unwrap();
        let first = rows.iter().position(|n| n.on).unwrap_or(0);
        for _ in first..at {
            screen.key("Down");
        }
        screen.key("Return");
    }

    /// Tab until something of this name has the focus that is `so`: many at once while it is far, as a hand
    /// does, one by one when it is near.
    fn tab_until(screen: &mut Screen, what: &str, so: impl Fn(&Node) -> bool) {
        for _ in 0..400 {
            let nodes = screen.nodes();
            let here = nodes.iter().position(|n| n.focused);
            if here.is_some_and(|i| so(&nodes[i])) {
                return;
            }
            let between = match (here, nodes.iter().rposition(&so)) {
                (Some(here), Some(there)) if here < there => &nodes[here + 1..there],
                // Round by the end.
                (Some(here), _) => &nodes[here + 1..],
                (None, there) => &nodes[..there.unwrap_or(0)],
            };
            let stops = between.iter().filter(|n| !n.disabled && STOPS.contains(&n.role.as_str())).count();
            // Not all of them need be stops: rather too few.
            screen.key_times("Tab", (stops * 3 / 4).clamp(1, 12));
        }
        panic!("Tab never comes to {what}:\n{}", screen.names());
    }

    fn tab_to(screen: &mut Screen, name: &str) {
        Self::tab_until(screen, &format!("{name:?}"), |n| n.name == name && n.role != "Label");
    }

    /// As [`Self::tab_to`], for a box or a choice on the clipboard: a thing of the car may have the same name.
    fn tick(screen: &mut Screen, name: &str) {
        let is = |n: &Node| n.name == name && ["CheckBox", "RadioButton"].contains(&n.role.as_str());
        screen.until(&format!("the box {name:?}"), |nodes| nodes.iter().any(is));
        Self::tab_until(screen, &format!("the box {name:?}"), is);
        screen.key("space");
    }

    fn press(screen: &mut Screen, name: &str) {
        screen.find(name);
        Self::tab_to(screen, name);
        screen.key("Return");
    }
}

impl Hands for Keyboard {
    fn turn_to(&mut self, screen: &mut Screen, words: &Words, to: Where) {
        let key = if to == Where::Room { "middle-room" } else { "middle-diagram" };
        for _ in 0..3 {
            if screen.find(&words.say(key)).on {
                return;
            }
            screen.key("l");
        }
    }

    fn follow(&mut self, screen: &mut Screen, shop: &Shop, words: &Words, steps: &[Step]) {
        for step in steps {
            match step {
                Step::Open(thing) => Self::open(screen, shop, words, *thing),
                Step::Take(line, i) => {
                    let is = |n: &Node| n.name == *line && n.role == "Button";
                    screen.until(&format!("the line {line:?}"), |nodes| nodes.iter().any(is));
                    screen.key(&line_key(*i));
                }
                Step::Fill(numbers) => {
                    fill(screen, words, numbers);
                    screen.key("Return");
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
        let n = [("n", reading.into())];
        let name = match written {
            Some(_) => words.say_with("notebook-note-number", &n),
            None => words.say_with("notebook-note-sense", &n),
        };
        let line_field = words.say_with("note-line", &n);
        // The key notes what was read last; what is older is looked for.
        screen.key("n");
        let there = |nodes: &[Node]| match written {
            Some(_) => nodes.iter().any(|n| n.name == line_field),
            None => nodes.iter().any(|n| n.name == name),
        };
        if !there(&screen.nodes()) {
            if !screen.nodes().iter().any(|n| n.name == name) {
                Self::press(screen, &words.say("leaf-notebook"));
            }
            if written.is_some() {
                Self::press(screen, &name);
            }
        }
        if let Some(line) = record {
            let line = words.record_short(shop, line);
            for again in 0..3 {
                Self::press(screen, &line_field);
                // The list has the focus; the line is a few steps down.
                for _ in 0..40 {
                    if screen.nodes().iter().any(|n| n.focused && n.name == line) {
                        break;
                    }
                    screen.key("Tab");
                }
                screen.key("Return");
                if screen.find(&line_field).value.as_deref() == Some(line.as_str()) {
                    break;
                }
                println!("chose {line} ({again}), {line_field} shows {:?}", screen.find(&line_field).value);
            }
        }
        match written {
            Some(written) => {
                Self::tab_to(screen, &words.say("note-what"));
                screen.type_in(&format!("{} {}", written.value, written.unit));
                screen.key("Return");
            }
            None => Self::press(screen, &name),
        }
    }

    fn finding(&mut self, screen: &mut Screen, shop: &Shop, words: &Words, units: &[String], certainty: f64) {
        Self::press(screen, &words.say("leaf-finding"));
        for unit in units {
            Self::tick(screen, &words.unit(shop, unit));
        }
        if units.is_empty() {
            Self::tick(screen, &words.say("finding-sound"));
        }
        let percent = format!("{} %", words.number(certainty * 100.0, 0));
        Self::tick(screen, &words.say_with("finding-sure", &[("percent", percent.into())]));
        Self::press(screen, &words.say("finding-do"));
        Self::press(screen, &words.say("finding-confirm-do"));
    }

    fn hand_back(&mut self, screen: &mut Screen, words: &Words) {
        Self::press(screen, &words.say("bar-hand-back"));
        Self::press(screen, &words.say("back-do"));
    }
}
