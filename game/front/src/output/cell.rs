//! A cell of a table.

use assess::locale::quote;

/// A text in a cell of a table, harmless: spreadsheets take what begins with `=`, `+`, `-`, `@`, a tab or a line
/// end for a formula and run it, so an apostrophe goes in front, as OWASP advises on CSV injection; controls are
/// written as escapes. Numbers of ours are not texts and stay as they are.
pub fn cell(text: &str) -> String {
    let plain = quote::escaped(text).replace('\n', "\\n");
    let first = text.trim_start_matches(' ').chars().next();
    // The wide forms are folded to the others by some.
    let dangerous =
        matches!(first, Some('=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '＝' | '＋' | '－' | '＠'));
    if dangerous { format!("'{plain}") } else { plain }
}
