//! What the workshop and the marker say, in the language shown.
//!
//! Both say it in English, and attempts keep it so: a file must read the same wherever it is opened. Here an
//! English sentence is recognised by the pattern it was made from (`told-…` in the English files), what was put
//! into it is named anew, and it is said by the same key in the language shown. What is not recognised is
//! said as it stands. A test holds the patterns against the sources of the workshop.

use fluent_bundle::FluentValue;

use super::names::key_part;
use super::{FALLBACK, Words};
use crate::hands::Thing;
use crate::shop::Shop;

/// A piece of a pattern.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Piece {
    Text(String),
    Value(String),
}

/// A sentence with gaps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pattern {
    key: String,
    pieces: Vec<Piece>,
}

impl Pattern {
    /// Reads `told-key = text { $value } text`.
    fn parse(line: &str) -> Option<Self> {
        let (key, mut rest) = line.split_once(" = ").filter(|(key, _)| key.starts_with("told-"))?;
        let mut pieces = Vec::new();
        while let Some((text, more)) = rest.split_once("{ $") {
            let (value, after) = more.split_once(" }")?;
            if !text.is_empty() {
                pieces.push(Piece::Text(text.to_owned()));
            }
            pieces.push(Piece::Value(value.to_owned()));
            rest = after;
        }
        if !rest.is_empty() {
            pieces.push(Piece::Text(rest.to_owned()));
        }
        Some(Self { key: key.to_owned(), pieces })
    }

    /// Whether it has a gap of this name.
    fn has_gap(&self, name: &str) -> bool {
        self.pieces.iter().any(|p| matches!(p, Piece::Value(value) if value == name))
    }

    /// How much of it is fixed text: the more, the surer it is that a sentence was made from it.
    fn fixed(&self) -> usize {
        let length = |p: &Piece| if let Piece::Text(text) = p { text.len() } else { 0 };
        self.pieces.iter().map(length).sum()
    }

    /// What stands in the gaps, if `text` was made from this pattern.
    fn read<'t>(&self, text: &'t str) -> Option<Vec<(&str, &'t str)>> {
        /// A gap holds something, and never more than one sentence.
        fn fits(gap: &str) -> bool {
            !gap.is_empty() && !gap.contains(". ")
        }
        fn go<'p, 't>(pieces: &'p [Piece], text: &'t str, out: &mut Vec<(&'p str, &'t str)>) -> bool {
            match pieces {
                [] => text.is_empty(),
                [Piece::Text(fixed), rest @ ..] => {
                    text.strip_prefix(fixed.as_str()).is_some_and(|text| go(rest, text, out))
                }
                [Piece::Value(name)] => {
                    out.push((name, text));
                    fits(text)
                }
                [Piece::Value(name), rest @ ..] => {
                    let Some(Piece::Text(next)) = rest.first() else { return false };
                    let before = out.len();
                    for (at, _) in text.match_indices(next.as_str()).filter(|(at, _)| fits(&text[..*at])) {
                        out.push((name, &text[..at]));
                        if go(rest, &text[at..], out) {
                            return true;
                        }
                        out.truncate(before);
                    }
                    false
                }
            }
        }
        let mut out = Vec::new();
        go(&self.pieces, text, &mut out).then_some(out)
    }
}

/// The patterns of a file's text, the surest first.
pub(super) fn patterns(text: &str) -> Vec<Pattern> {
    let mut all: Vec<Pattern> = text.lines().filter_map(Pattern::parse).collect();
    all.sort_by(|a, b| b.fixed().cmp(&a.fixed()).then(a.key.cmp(&b.key)));
    all
}

/// A number and its sign of per cent stay on one line.
fn unbroken(text: &str) -> String {
    text.replace(" %", "\u{a0}%")
}

impl Words {
    /// A sentence of the workshop or the marker in the language shown.
    #[must_use]
    pub fn sentence(&self, shop: &Shop, english: &str) -> String {
        if english.is_empty() {
            return String::new();
        }
        if let Some(said) = self.whole(shop, english).or_else(|| self.printed(shop, english)) {
            return said;
        }
        // Several sentences: the first that is recognised, then the rest.
        for (at, _) in english.match_indices(". ") {
            if let Some(first) = self.whole(shop, &english[..=at]) {
                return format!("{first} {}", self.sentence(shop, &english[at + 2..]));
            }
        }
        // In English the first stands as it is; the rest may still hold what is said otherwise.
        if self.tag() == FALLBACK
            && let Some((first, rest)) = english.split_once(". ")
        {
            return format!("{}. {}", unbroken(first), self.sentence(shop, rest));
        }
        unbroken(english)
    }

    /// A line of the papers that the workshop reads out: of the data sheet, or the program's own caution.
    fn printed(&self, shop: &Shop, english: &str) -> Option<String> {
        if english.strip_prefix(assess::job::CAUTION).is_some_and(|l| l == assess::job::DEFER) {
            return Some(self.say("card-defer"));
        }
        let car = shop.car().filter(|_| self.tag() != FALLBACK)?;
        if let Some(limit) = car.limits.iter().find(|l| l.text == english) {
            return Some(self.limit(&car.id, &limit.id, &limit.text));
        }
        let n = car.cautions.iter().position(|c| c == english)?;
        Some(self.caution(&car.id, n, english))
    }

    fn whole(&self, shop: &Shop, english: &str) -> Option<String> {
        // In English a sentence stands as it is, unless a gap of it holds what people would say otherwise.
        let said = |p: &&Pattern| {
            self.tag() != FALLBACK || ["sure", "looked", "list"].iter().any(|gap| p.has_gap(gap))
        };
        let (pattern, found) = self.patterns.iter().filter(said).find_map(|p| Some((p, p.read(english)?)))?;
        let n = found.iter().find(|(name, _)| *name == "n").and_then(|(_, n)| n.parse::<u32>().ok());
        let said = |name: &str, text: &str| match name {
            "looked" => self.looked(shop, n, text),
            _ => self.value(shop, name, text),
        };
        let values: Vec<(&str, FluentValue<'_>)> =
            found.iter().map(|(name, text)| (*name, said(name, text).into())).collect();
        Some(self.say_with(&pattern.key, &values))
    }

    /// What stands in a gap, named anew.
    fn value(&self, shop: &Shop, name: &str, text: &str) -> String {
        match name {
            "thing" | "other" => self.called(shop, text),
            "end" => self.say_or(&format!("lead-{text}"), text),
            "word" => self.word(text),
            "list" => text.split("; ").map(|t| self.sentence(shop, t)).collect::<Vec<_>>().join("; "),
            "text" => self.sentence(shop, text),
            "units" | "truth" => self.unit_list(shop, text),
            "lines" => text.split("), ").map(|t| self.missing_line(shop, t)).collect::<Vec<_>>().join(", "),
            "sure" => text.parse::<f64>().map_or_else(
                |_| text.to_owned(),
                |share| unbroken(&format!("{} %", self.number(share * 100.0, 0))),
            ),
            "ruled" | "left" | "raised" => self.moves(shop, text),
            "id" | "name" | "known" | "kind" | "what" => text.to_owned(),
            _ => self.amount(text),
        }
    }

    /// What reading `n` was of, what was plugged and clamped for it, and what it showed, as the marker says it:
    /// `gauge at valve_m.store with a clamp at hose_m.a, -58 kPa`.
    fn looked(&self, shop: &Shop, n: Option<u32>, text: &str) -> String {
        let (what, shown) = text.rsplit_once(", ").map_or((text, None), |(what, shown)| (what, Some(shown)));
        let (what, with) = what.split_once(" with ").map_or((what, None), |(what, with)| (what, Some(with)));
        let readings = shop.view().map(|v| v.readings.as_slice()).unwrap_or_default();
        let reading = readings.iter().find(|r| Some(r.id) == n);
        let mut said = match (reading, what.split_once(" at ")) {
            (Some(reading), _) => self.observed(shop, &reading.what),
            (None, Some((instrument, places))) => {
                let instrument =
                    instrument.split_once(" on ").map_or(instrument, |(instrument, _)| instrument);
                let places: Vec<String> = places.split(" and ").map(|p| self.called(shop, p)).collect();
                format!("{}: {}", self.called(shop, instrument), places.join(" – "))
            }
            (None, None) => self.called(shop, what),
        };
        if let Some(with) = with {
            let with: Vec<&str> = with.split(" and ").collect();
            said = format!("{said}; {}", self.stops(shop, &with));
        }
        let shown = shown
            .map(|shown| reading.and_then(|r| self.shown(shop, r)).unwrap_or_else(|| self.amount(shown)));
        shown.map_or(said.clone(), |shown| format!("{said}, {shown}"))
    }

    /// Plugs and clamps as the marker names them: `a clamp at hose_m.a`.
    #[must_use]
    pub fn stops(&self, shop: &Shop, stops: &[impl AsRef<str>]) -> String {
        // In English the workshop's words name ports by their short names, which people do not.
        let stop = |text: &str| match text.strip_prefix("a ").and_then(|t| t.split_once(" at ")) {
            Some((word, port)) => self.say_with(
                "told-left-stop",
                &[("word", self.word(word).into()), ("thing", self.place(shop, port).into())],
            ),
            None => text.to_owned(),
        };
        stops.iter().map(|s| stop(s.as_ref())).collect::<Vec<_>>().join("; ")
    }

    /// What a reading did to possibilities: `“the pump” (41 % → 3 %), “the tee” (20 % → 1 %) and 3 others`.
    fn moves(&self, shop: &Shop, text: &str) -> String {
        let mut items = Vec::new();
        let mut rest = text;
        while let Some((name, more)) = rest.split_once('“').and_then(|(_, after)| after.split_once('”')) {
            let name = self.say_with("card-quote", &[("text", self.class(shop, name).into())]);
            let (moved, after) = more.split_once(')').unwrap_or((more, ""));
            items.push(format!("{name} {})", self.amounts(moved.trim_start())));
            rest = after;
        }
        if let Some(n) = rest.strip_prefix(" and ").and_then(|r| r.split(' ').next()?.parse::<u32>().ok()) {
            items.push(self.say_with("mark-others", &[("n", n.into())]));
        }
        match items.as_slice() {
            [head @ .., last] if !head.is_empty() => {
                format!("{} {} {last}", head.join(", "), self.say("word-and"))
            }
            _ => items.concat(),
        }
    }

    /// Percentages before and after, kept on one line: `(41 % → <1 %`.
    fn amounts(&self, text: &str) -> String {
        let mark = self.say("decimal-mark");
        unbroken(&text.replace('.', &mark).replace(" → ", "\u{a0}→\u{a0}"))
    }

    /// A word that stands inside a sentence.
    #[must_use]
    pub fn word(&self, english: &str) -> String {
        self.say_or(&format!("word-{}", key_part(english)), english)
    }

    /// A number or a percentage: `under 0.1 %`, `−90.3 %`.
    fn amount(&self, text: &str) -> String {
        let mark = self.say("decimal-mark");
        let words = text.split(' ').map(|w| {
            let number = w.replace('−', "-");
            if number.parse::<f64>().is_ok() {
                number.replace('.', &mark).replace('-', "−")
            } else {
                self.word(w)
            }
        });
        unbroken(&words.collect::<Vec<_>>().join(" "))
    }

    /// `run (not noted`: a line of the record with what is missing.
    fn missing_line(&self, shop: &Shop, text: &str) -> String {
        match text.trim_end_matches(')').split_once(" (") {
            Some((line, why)) => {
                format!("{} ({})", self.record_short(shop, line), self.missing_why(shop, why))
            }
            None => text.to_owned(),
        }
    }

    /// What is missing for a line of the record: a few words of the marker, or the condition that was not met.
    #[must_use]
    pub fn missing_why(&self, shop: &Shop, english: &str) -> String {
        let word = format!("word-{}", key_part(english));
        self.find(&word, &[]).unwrap_or_else(|| self.sentence(shop, english))
    }

    /// Units as the marker lists them: `the pump, the relay and the earth`.
    fn unit_list(&self, shop: &Shop, text: &str) -> String {
        if text == "everything inside its limits" {
            return self.say("finding-sound");
        }
        let Some(car) = shop.car() else { return text.to_owned() };
        let mut units: Vec<_> = car.units.iter().collect();
        units.sort_by_key(|u| std::cmp::Reverse(u.name.len()));
        let mut said = String::new();
        let mut rest = text;
        while !rest.is_empty() {
            if let Some(unit) = units.iter().find(|u| rest.starts_with(&u.name)) {
                said.push_str(&self.unit(shop, &unit.id));
                rest = &rest[unit.name.len()..];
            } else if let Some(more) = rest.strip_prefix(" and ") {
                said.push_str(&format!(" {} ", self.say("word-and")));
                rest = more;
            } else {
                let first = rest.chars().next().map_or(1, char::len_utf8);
                said.push_str(&rest[..first]);
                rest = &rest[first..];
            }
        }
        said
    }

    /// A thing by its English name or its short name.
    pub(super) fn called(&self, shop: &Shop, text: &str) -> String {
        let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return text.to_owned() };
        let setup = session.workshop().setup();
        if let Some(unit) = car.units.iter().find(|u| u.name == text) {
            return self.unit(shop, &unit.id);
        }
        let at = |i: Option<usize>| i.and_then(|i| u16::try_from(i).ok());
        let thing = at(setup.kit.iter().position(|c| c.name == text || c.id == text))
            .map(Thing::Instrument)
            .or_else(|| at(car.covers.iter().position(|c| c.name == text || c.id == text)).map(Thing::Cover))
            .or_else(|| at(car.stands.iter().position(|s| s.name == text)).map(Thing::Part))
            .or_else(|| at(car.assembly.joints.iter().position(|j| j.id == text)).map(Thing::Joint))
            .or_else(|| at(setup.spares.iter().position(|s| s.id == text)).map(Thing::Spare));
        if let Some(thing) = thing {
            return self.name(shop, thing);
        }
        if car.units.iter().any(|u| u.id == text) {
            return self.unit(shop, text);
        }
        self.place(shop, text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(line: &str, text: &str) -> Option<Vec<(String, String)>> {
        let pattern = Pattern::parse(line).unwrap();
        let found = pattern.read(text)?;
        Some(found.into_iter().map(|(a, b)| (a.to_owned(), b.to_owned())).collect())
    }

    #[test]
    fn a_sentence_is_recognised_by_its_pattern() {
        let line = "told-x = the { $thing } is in the way: take it off first (cover { $id })";
        let found = read(line, "the scuttle is in the way: take it off first (cover scuttle)").unwrap();
        assert_eq!(found, [("thing".into(), "scuttle".into()), ("id".into(), "scuttle".into())]);
        assert_eq!(read(line, "the scuttle is in the way"), None);
        // A name may hold what stands between the gaps.
        let line = "told-y = { $a } is { $b } already";
        let found = read(line, "what is open is shut already").unwrap();
        assert_eq!(found, [("a".into(), "what".into()), ("b".into(), "open is shut".into())]);
    }
}
