//! Words typed into no field: somebody means a field that has not the focus. One or two letters are keys; the
//! third of a word makes it a word, and then nothing of it does anything, Return at its end included.

use std::collections::BTreeSet;

use egui::{Context, Event, Key};

/// Letters that follow each other faster than this belong to one word, s.
const GAP_S: f64 = 0.5;
/// How long a word is over after its last letter, s.
const OVER_S: f64 = 0.7;
/// From this many characters on it is a word.
const WORD: usize = 3;
/// With so many different letters in it at least: who turns pages presses the same key several times, who
/// looks round presses digits.
const DIFFERENT: usize = 2;

/// What was typed into no field lately.
#[derive(Debug, Default)]
pub(super) struct Typing {
    characters: usize,
    letters: BTreeSet<Key>,
    /// Time of the last one, s.
    last_s: f64,
    /// It has become a word.
    word: bool,
}

/// Whether a key writes something.
fn writes(key: Key) -> bool {
    key == Key::Space || key.name().chars().count() == 1 || key.symbol_or_name().chars().count() == 1
}

fn is_letter(key: Key) -> bool {
    let name = key.name();
    name.len() == 1 && name.chars().all(|c| c.is_ascii_alphabetic())
}

impl Typing {
    /// A key that writes something came at a time.
    fn hear(&mut self, key: Key, now_s: f64) {
        let gap = if self.word { OVER_S } else { GAP_S };
        if gap < now_s - self.last_s {
            *self = Self::default();
        }
        self.last_s = now_s;
        self.characters += 1;
        if is_letter(key) {
            self.letters.insert(key);
        }
        self.word |= WORD <= self.characters && DIFFERENT <= self.letters.len();
    }

    /// Whether a word is being typed.
    fn is_word(&self, now_s: f64) -> bool {
        self.word && now_s - self.last_s <= OVER_S
    }
}

/// Takes a word that goes to no field out of what the keys have done in this frame; whether there is one.
pub(super) fn swallow(ctx: &Context, typing: &mut Typing) -> bool {
    if ctx.text_edit_focused() {
        *typing = Typing::default();
        return false;
    }
    ctx.input_mut(|input| {
        let now = input.time;
        for event in &input.events {
            if let Event::Key { key, pressed: true, repeat: false, modifiers, .. } = event
                && writes(*key)
                && !(modifiers.ctrl || modifiers.alt || modifiers.command)
            {
                typing.hear(*key, now);
            }
        }
        let word = typing.is_word(now);
        if word {
            input.events.retain(|event| match event {
                Event::Key { key, pressed: true, .. } => !writes(*key) && *key != Key::Enter,
                Event::Text(_) => false,
                _ => true,
            });
        }
        word
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(keys: &[(Key, f64)]) -> bool {
        let mut typing = Typing::default();
        for (key, at) in keys {
            typing.hear(*key, *at);
        }
        keys.last().is_some_and(|(_, at)| typing.is_word(*at))
    }

    #[test]
    fn three_letters_in_a_row_are_a_word() {
        assert!(typed(&[(Key::O, 1.0), (Key::V, 1.2), (Key::E, 1.4)]));
        assert!(typed(&[(Key::O, 1.0), (Key::Space, 1.2), (Key::K, 1.4)]));
    }

    #[test]
    fn keys_pressed_as_keys_are_none() {
        assert!(!typed(&[(Key::U, 1.0), (Key::Num4, 1.2)]), "a letter and the line it takes");
        assert!(!typed(&[(Key::L, 1.0), (Key::L, 1.2), (Key::L, 1.4)]), "one page after the other");
        assert!(!typed(&[(Key::Num1, 1.0), (Key::Num2, 1.2), (Key::Num3, 1.4)]), "one place after the other");
        assert!(!typed(&[(Key::K, 1.0), (Key::P, 2.0), (Key::E, 3.0)]), "slowly");
    }

    #[test]
    fn a_word_is_over_after_a_while() {
        let mut typing = Typing::default();
        for (i, key) in [Key::O, Key::V, Key::E, Key::R].into_iter().enumerate() {
            typing.hear(key, 1.0 + 0.2 * i as f64);
        }
        assert!(typing.is_word(1.6 + OVER_S - 0.01));
        assert!(!typing.is_word(1.6 + OVER_S + 0.01));
        typing.hear(Key::K, 3.0);
        assert!(!typing.is_word(3.0));
    }
}
