//! A number pad on the screen, so that every number can be given with the mouse alone: digits, sign, the
//! language's decimal mark, and a key that takes the last one back.
//!
//! It changes text or a whole number that a field shows; the field itself can be typed in as well.

use egui::{Button, WidgetInfo, WidgetType, vec2};

use super::super::theme;
use front::words::Words;

/// A key of the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PadKey {
    /// 0 to 9.
    Digit(u8),
    /// The decimal mark.
    Mark,
    /// Plus to minus and back.
    Sign,
    /// Takes the last character back.
    Back,
}

/// Which keys a number needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Needs {
    /// A whole number without a sign: strokes, minutes, newtons.
    Whole,
    /// A number as an instrument shows it: with a sign and decimals.
    Signed,
}

/// Width of a key, points.
const WIDE: f32 = 32.0;
/// Between two keys, points.
const GAP: f32 = 3.0;
/// Width of the pad, points.
pub const WIDTH: f32 = 4.0 * WIDE + 3.0 * GAP;

/// Shows the pad; the key that was pressed in this frame, if any.
pub fn show(ui: &mut egui::Ui, words: &Words, needs: Needs) -> Option<PadKey> {
    use PadKey::{Back, Digit, Mark, Sign};
    let rows: [&[PadKey]; 4] = match needs {
        Needs::Signed => [
            &[Digit(7), Digit(8), Digit(9), Back],
            &[Digit(4), Digit(5), Digit(6), Sign],
            &[Digit(1), Digit(2), Digit(3), Mark],
            &[Digit(0)],
        ],
        Needs::Whole => [
            &[Digit(7), Digit(8), Digit(9), Back],
            &[Digit(4), Digit(5), Digit(6)],
            &[Digit(1), Digit(2), Digit(3)],
            &[Digit(0)],
        ],
    };
    let mut pressed = None;
    ui.vertical(|column| {
        column.spacing_mut().item_spacing = vec2(GAP, GAP);
        column.spacing_mut().button_padding = vec2(2.0, 2.0);
        for row in rows {
            column.horizontal(|line| {
                for key in row {
                    let wide = if *key == Digit(0) { 3.0 * WIDE + 2.0 * GAP } else { WIDE };
                    let (sign, name) = face(*key, words);
                    let button = line.add(Button::new(sign).min_size(vec2(wide, theme::TARGET)));
                    button.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
                    if button.clicked() {
                        pressed = Some(*key);
                    }
                }
            });
        }
    });
    pressed
}

/// What stands on a key, and what it is called.
fn face(key: PadKey, words: &Words) -> (String, String) {
    let (sign, name) = match key {
        PadKey::Digit(d) => return (d.to_string(), d.to_string()),
        PadKey::Mark => (words.say("decimal-mark"), "pad-mark"),
        PadKey::Sign => ("±".to_owned(), "pad-sign"),
        PadKey::Back => ("←".to_owned(), "pad-back"),
    };
    (sign, words.say(name))
}

/// What a field holds after a key: the number at its beginning is changed, a unit typed behind it stays.
pub fn into_text(text: &mut String, key: PadKey, mark: &str) {
    let end = text
        .char_indices()
        .find(|(_, c)| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '−' | '–' | '+')))
        .map_or(text.len(), |(i, _)| i);
    let (number, rest) = text.split_at(end);
    let mut number = number.to_owned();
    match key {
        PadKey::Digit(d) => number.push_str(&d.to_string()),
        PadKey::Mark if number.contains(['.', ',']) => {}
        PadKey::Mark => number.push_str(mark),
        PadKey::Sign => {
            number = match number.strip_prefix(['-', '−', '–']) {
                Some(plain) => plain.to_owned(),
                None => format!("−{}", number.trim_start_matches('+')),
            };
        }
        PadKey::Back => {
            number.pop();
        }
    }
    *text = format!("{number}{rest}");
}

/// What a whole number becomes; `begun`: digits go on behind those that stand there, else the first replaces them.
pub fn into_whole(value: &mut f64, begun: &mut bool, key: PadKey, most: f64) {
    match key {
        PadKey::Digit(d) => {
            let before = if *begun { value.trunc() * 10.0 } else { 0.0 };
            *value = (before + f64::from(d)).min(most);
            *begun = true;
        }
        PadKey::Back => {
            *value = (*value / 10.0).trunc();
            // What is left of nothing is replaced by the next digit.
            *begun = 1.0 <= *value;
        }
        PadKey::Mark | PadKey::Sign => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_make_a_number_as_hands_type_it() {
        let mut text = String::new();
        for key in [
            PadKey::Digit(1),
            PadKey::Digit(2),
            PadKey::Mark,
            PadKey::Mark,
            PadKey::Digit(6),
            PadKey::Digit(9),
            PadKey::Back,
            PadKey::Sign,
        ] {
            into_text(&mut text, key, ",");
        }
        assert_eq!(text, "−12,6");
        into_text(&mut text, PadKey::Sign, ",");
        assert_eq!(text, "12,6");
        let mut with_unit = "-58 kPa".to_owned();
        into_text(&mut with_unit, PadKey::Back, ".");
        into_text(&mut with_unit, PadKey::Digit(6), ".");
        assert_eq!(with_unit, "-56 kPa");
    }

    #[test]
    fn a_whole_number_is_replaced_by_its_first_digit_and_stays_in_its_range() {
        let (mut value, mut begun) = (100.0, false);
        for d in [2, 5, 0] {
            into_whole(&mut value, &mut begun, PadKey::Digit(d), 700.0);
        }
        assert!((value - 250.0).abs() < 1e-9);
        into_whole(&mut value, &mut begun, PadKey::Digit(9), 700.0);
        assert!((value - 700.0).abs() < 1e-9, "{value}");
        into_whole(&mut value, &mut begun, PadKey::Back, 700.0);
        assert!((value - 70.0).abs() < 1e-9);
        for _ in 0..2 {
            into_whole(&mut value, &mut begun, PadKey::Back, 700.0);
        }
        assert!(!begun);
    }
}
