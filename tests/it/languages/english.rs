//! The English that stands in the sources stands in `assets/locales/en` too, for whoever translates.

use std::collections::BTreeMap;
use std::path::Path;

use assess::locale::{FALLBACK, Locale};
use assess::words;

use crate::bench::root;

/// A string literal at the beginning of `code`, and what stands behind it.
fn literal(code: &str) -> Option<(String, &str)> {
    let code = code.trim_start().strip_prefix('"')?;
    let mut text = String::new();
    let mut chars = code.char_indices();
    while let Some((at, c)) = chars.next() {
        match c {
            '"' => return Some((text, &code[at + 1..])),
            '\\' => match chars.next()?.1 {
                'n' => text.push('\n'),
                '\n' => {
                    let rest = &code[at + 2..];
                    let blanks = rest.len() - rest.trim_start().len();
                    for _ in 0..blanks {
                        chars.next();
                    }
                }
                other => text.push(other),
            },
            c => text.push(c),
        }
    }
    None
}

/// Every `sentence!(key, English` below a folder.
fn sentences(folder: &Path, out: &mut BTreeMap<String, String>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sentences(&path, out);
            continue;
        }
        if path.extension().is_none_or(|x| x != "rs") {
            continue;
        }
        let code = std::fs::read_to_string(&path).unwrap();
        let code: String = code
            .lines()
            .filter(|l| !l.trim_start().starts_with("//"))
            .fold(String::new(), |code, line| code + line + "\n");
        for (at, made) in code.match_indices("sentence!(") {
            let read = || {
                let (key, rest) = literal(&code[at + made.len()..])?;
                let (english, _) = literal(rest.trim_start().strip_prefix(',')?)?;
                Some((key, english))
            };
            // The macro's own example in its rule has no literals.
            let Some((key, english)) = read() else { continue };
            if let Some(before) = out.insert(key.clone(), english.clone()) {
                assert_eq!(before, english, "{key} has two texts");
            }
        }
    }
}

/// Names in braces.
fn gaps(english: &str) -> Vec<&str> {
    english.split('{').skip(1).filter_map(|rest| rest.split('}').next()).collect()
}

/// As it is written in a file of words.
fn entry(key: &str, english: &str) -> String {
    let text = english.replace('{', "{ $").replace('}', " }");
    match text.contains('\n') {
        true => text.lines().fold(format!("{key} ="), |all, line| {
            all + "\n" + if line.is_empty() { "" } else { "    " } + line
        }),
        false => format!("{key} = {text}"),
    }
}

#[test]
fn inv_english_in_the_sources_is_english_in_the_files() {
    let mut wanted = BTreeMap::new();
    for folder in ["game/assess/src", "game/front/src", "game/window/src", "game/src"] {
        sentences(&root().join(folder), &mut wanted);
    }
    assert!(100 < wanted.len(), "only {} sentences were found", wanted.len());
    wanted.extend(words::help_keys());
    let locale = Locale::open(&root(), &[FALLBACK.to_owned()]).unwrap();
    let mut wrong = Vec::new();
    for (key, english) in &wanted {
        let values: Vec<_> =
            gaps(english).into_iter().map(|name| (name, format!("{{{name}}}").into())).collect();
        if locale.find(key, &values).as_ref() != Some(english) {
            wrong.push(entry(key, english));
        }
    }
    assert!(wrong.is_empty(), "put this into assets/locales/en/plain-words.ftl:\n{}", wrong.join("\n"));
    let file = std::fs::read_to_string(root().join("assets/locales/en/plain-words.ftl")).unwrap();
    let keys = file.lines().filter(|l| l.starts_with(char::is_alphabetic)).filter_map(|l| l.split_once(" ="));
    let idle: Vec<&str> = keys.map(|(key, _)| key).filter(|key| !wanted.contains_key(*key)).collect();
    assert!(idle.is_empty(), "nobody asks for {idle:?}");
}

#[test]
fn a_literal_is_read_as_the_compiler_reads_it() {
    let code = "  \"a \\\"b\\\" \\\n        c\\nd\", x";
    assert_eq!(literal(code), Some(("a \"b\" c\nd".to_owned(), ", x")));
}
