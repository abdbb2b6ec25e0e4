//! Dials and displays as a trainee sees them: a scale with numbers and a needle between them, digits,
//! or words for what is felt and heard. Reading the dial is the trainee's work; no number is given.

use front::words::Words;
use sim_core::instrument::{Dial, InstrumentKind};
use sim_core::observe::{Scale, ShownValue};
use sim_core::parts::instruments::MeterMode;

use crate::tongue::{decimal, say};

/// Columns for one division: a needle can stand on it or half way to the next.
const COLUMNS_PER_DIVISION: usize = 4;
/// Divisions that fit in 80 columns with their numbers.
const DIVISIONS_SHOWN: usize = 17;
const MARGIN: usize = 5;

/// The dial of an instrument, if it has one.
pub(super) fn dial_of(kind: &InstrumentKind) -> Option<Dial> {
    kind.dial()
}

/// Every how many divisions a number is printed.
fn divisions_per_number(division: f64) -> usize {
    // A number is nice when it is 1, 2, 5 or 10 times a power of ten.
    let nice = |step: f64| {
        let mut mantissa = step;
        while mantissa < 1.0 - 1e-9 {
            mantissa *= 10.0;
        }
        while 10.0 - 1e-9 <= mantissa {
            mantissa /= 10.0;
        }
        [1.0, 2.0, 5.0].iter().any(|n| (mantissa - n).abs() < 1e-6)
    };
    [5, 4, 10, 2].into_iter().find(|n| nice(division * *n as f64)).unwrap_or(5)
}

/// Draws the part of a dial round its needle. `value` is where the needle stands; beyond the ends it
/// rests against its stop.
pub(super) fn draw(words: &Words, dial: &Dial, value: f64, unit: &str) -> String {
    let every = divisions_per_number(dial.division);
    let total = ((dial.max - dial.min) / dial.division).round().max(1.0) as usize;
    let place = ((value - dial.min) / dial.division).clamp(0.0, total as f64);
    let shown = DIVISIONS_SHOWN.min(total);
    // The window begins at a numbered mark, with the needle near its middle.
    let wanted = (place as usize).saturating_sub(shown / 2).min(total - shown);
    let first = (wanted + every / 2) / every * every;
    let first = first.min(total - shown);
    let last = first + shown;

    let width = MARGIN + shown * COLUMNS_PER_DIVISION + MARGIN + 4;
    let mut numbers = vec![' '; width];
    let mut marks = vec![' '; width];
    let mut needle = vec![' '; width];
    let column = |division: usize| MARGIN + (division - first) * COLUMNS_PER_DIVISION;
    for division in first..=last {
        let at = column(division);
        if division.is_multiple_of(every) {
            let label = decimal(words, label(dial.min + division as f64 * dial.division));
            let start = at.saturating_sub(label.chars().count() / 2);
            for (i, c) in label.chars().enumerate() {
                if let Some(cell) = numbers.get_mut(start + i) {
                    *cell = c;
                }
            }
            marks[at] = '┃';
        } else {
            marks[at] = '╵';
        }
    }
    let at = MARGIN as f64 + (place - first as f64) * COLUMNS_PER_DIVISION as f64;
    let at = (at.round().max(0.0) as usize).min(width - 1);
    needle[at] = '▲';
    let text = |cells: Vec<char>| cells.into_iter().collect::<String>().trim_end().to_owned();
    let stop = if value < dial.min {
        format!("   {}", words.say("bench-lower-stop"))
    } else if dial.max < value {
        format!("   {}", words.say("bench-upper-stop"))
    } else {
        String::new()
    };
    let division = decimal(words, label(dial.division));
    let one_mark = say!(words, "bench-one-mark", unit = unit, division = division);
    format!("{}\n{}\n{}{stop}\n     {one_mark}\n", text(numbers), text(marks), text(needle))
}

/// A number as it is printed on a dial.
fn label(value: f64) -> String {
    let rounded = (value * 1e6).round() / 1e6;
    let rounded = if rounded == 0.0 { 0.0 } else { rounded };
    format!("{rounded}")
}

/// A digital display.
pub(super) fn display(words: &Words, shown: ShownValue, scale: &Scale) -> String {
    match (scale.characters(shown), scale) {
        (Some(text), Scale::Numeric { unit, .. }) => {
            format!("     [ {} {unit} ]\n", decimal(words, text))
        }
        _ => format!("     [        ]   {}\n", words.say("bench-display-dark")),
    }
}

/// What a person perceives, as a word.
pub(super) fn level(words: &Words, shown: ShownValue, scale: &Scale) -> String {
    match (shown, scale) {
        (ShownValue::Level(n), Scale::Ordinal { levels, .. }) => levels
            .get(usize::from(n))
            .map_or_else(|| words.say("bench-level-unclear"), |l| words.say(&format!("level-{l}"))),
        (ShownValue::Steps(_), Scale::Numeric { unit, .. }) => {
            let number = decimal(words, scale.characters(shown).unwrap_or_default());
            if unit.is_empty() { number } else { format!("{number} {unit}") }
        }
        (ShownValue::Off(true), _) => words.say("bench-level-more"),
        (ShownValue::Off(false), _) => words.say("bench-level-less"),
        _ => words.say("bench-level-none"),
    }
}

/// Setting of a meter in words.
pub(super) fn setting(words: &Words, mode: MeterMode) -> String {
    words.say(match mode {
        MeterMode::Off => "bench-mode-off",
        MeterMode::Volt => "bench-mode-volt",
        MeterMode::Ohm => "bench-mode-ohm",
        MeterMode::Ampere => "bench-mode-ampere",
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Where the needle stands between the numbers, read back from the drawing as a person would.
    fn read_back(drawing: &str, division: f64) -> f64 {
        let lines: Vec<Vec<char>> = drawing.lines().map(|l| l.chars().collect()).collect();
        let major = lines[1].iter().position(|c| *c == '┃').unwrap();
        // The number whose middle is nearest the first long mark.
        let text: String = lines[0].iter().collect();
        let first: f64 = text.split_whitespace().next().unwrap().parse().unwrap();
        let needle = lines[2].iter().position(|c| *c == '▲').unwrap();
        first + (needle as f64 - major as f64) / COLUMNS_PER_DIVISION as f64 * division
    }

    #[test]
    fn a_dial_can_be_read_to_half_a_division() {
        let dials = [
            Dial { min: -100.0, max: 0.0, class: 1.6, division: 2.0 },
            Dial { min: -100.0, max: 0.0, class: 2.5, division: 5.0 },
            Dial { min: 60.0, max: 110.0, class: 0.6, division: 0.5 },
            Dial { min: 0.0, max: 200.0, class: 0.5, division: 1.0 },
        ];
        let words = Words::built_in();
        for dial in dials {
            let mut value = dial.min;
            while value <= dial.max {
                let drawing = draw(&words, &dial, value, "kPa");
                let read = read_back(&drawing, dial.division);
                assert!((read - value).abs() <= dial.division / 4.0, "{value} reads {read}\n{drawing}");
                assert!(drawing.lines().all(|l| l.chars().count() <= 80), "{drawing}");
                value += dial.division / 4.0;
            }
        }
    }
}
