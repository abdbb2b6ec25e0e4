//! A pack that has grown: the text of its file as it was before jobs were added at the end of its list.
//!
//! An attempt is bound to the bytes of the files it was made with. A school that adds a job to a pack has changed
//! nothing for the jobs before it, so what was made with the shorter list stays valid: the list is cut behind
//! each job in turn, and the text without the rest, comments between included, is the text of that time.

/// A pack file's text as it was when its list ended behind job number `kept` (1 and up); `None` when the list is
/// written in a way that is not followed here.
pub(crate) fn ended_behind(text: &str, jobs: &[String], kept: usize) -> Option<String> {
    let listed = names(text)?;
    let as_read = listed.iter().map(|(start, end)| &text[start + 1..end - 1]);
    if !as_read.eq(jobs.iter().map(String::as_str)) {
        return None;
    }
    let (cut, end) = (listed.get(kept.checked_sub(1)?)?.1, listed.last()?.1);
    Some(format!("{}{}", &text[..cut], &text[end..]))
}

/// A word, a string or a sign of RON, with where it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Token {
    Word(usize, usize),
    Text(usize, usize),
    Sign(u8),
}

/// Where the names in the list `jobs` stand, quotes included.
fn names(text: &str) -> Option<Vec<(usize, usize)>> {
    let tokens = tokens(text)?;
    let begins = tokens.windows(3).position(|w| match w {
        [Token::Word(a, b), Token::Sign(b':'), Token::Sign(b'[')] => &text[*a..*b] == "jobs",
        _ => false,
    })?;
    let mut out = Vec::new();
    for token in &tokens[begins + 3..] {
        match token {
            Token::Text(a, b) => out.push((*a, *b)),
            Token::Sign(b',') => {}
            Token::Sign(b']') => return Some(out),
            Token::Sign(_) | Token::Word(..) => return None,
        }
    }
    None
}

/// Tokens without comments; `None` where a string has escapes or a raw string stands.
fn tokens(text: &str) -> Option<Vec<Token>> {
    let bytes = text.as_bytes();
    let mut out = Vec::new();
    let mut at = 0;
    while at < bytes.len() {
        let rest = &text[at..];
        let length = if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if rest.starts_with("/*") {
            rest.find("*/")? + 2
        } else if let Some(inside) = rest.strip_prefix('"') {
            let length = inside.find('"')? + 2;
            if rest[..length].contains('\\') {
                return None;
            }
            out.push(Token::Text(at, at + length));
            length
        } else if rest.starts_with("r#") || rest.starts_with("r\"") {
            return None;
        } else {
            let word = rest.find(|c: char| !c.is_ascii_alphanumeric() && c != '_').unwrap_or(rest.len());
            let length = word.max(rest.chars().next().map_or(1, char::len_utf8));
            if 0 < word {
                out.push(Token::Word(at, at + word));
            } else if !rest.starts_with(char::is_whitespace) {
                out.push(Token::Sign(bytes[at]));
            }
            length
        };
        at += length;
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    const FIRST: &str = "// \"jobs\": [ \"no\" ]\nPack(title: \"jobs: [\", jobs: [\"a\", \"b\"],\n)\n";
    const GROWN: &str = "// \"jobs\": [ \"no\" ]\nPack(title: \"jobs: [\", jobs: [\"a\", \"b\",\n  // later: \"x\"\n  \"c\", /* ] */ \"d\"],\n)\n";

    fn jobs(names: &str) -> Vec<String> {
        names.chars().map(String::from).collect()
    }

    #[test]
    fn a_grown_list_is_cut_to_the_bytes_of_its_time() {
        assert_eq!(ended_behind(GROWN, &jobs("abcd"), 2).as_deref(), Some(FIRST));
        assert_eq!(ended_behind(GROWN, &jobs("abcd"), 4).as_deref(), Some(GROWN));
        assert_eq!(ended_behind(FIRST, &jobs("ab"), 2).as_deref(), Some(FIRST));
    }

    #[test]
    fn what_is_not_followed_gives_nothing() {
        for (text, names) in [
            (GROWN, "abc"),
            ("Pack(jobs: [\"a\\n\"])", "a"),
            ("Pack(jobs: [r#\"a\"#])", "a"),
            ("Pack(jobs: [\"a\"", "a"),
            ("Pack(jobs: a)", "a"),
            ("", ""),
        ] {
            assert_eq!(ended_behind(text, &jobs(names), 1), None, "{text}");
        }
        assert_eq!(ended_behind(GROWN, &jobs("abcd"), 0), None);
        assert_eq!(ended_behind(GROWN, &jobs("abcd"), 5), None);
    }
}
