//! `next`: which test would tell most now. It is worked out from what was noted, written down, and counts.

use std::io::Write;

use assess::attempt::hint_line::Advice;
use assess::locale::test_name;
use assess::marks::score::HINT_POINTS;
use assess::planner::hint;
use assess::play::{Session, SessionError};

use super::show;
use crate::tongue::say;
use front::words::Words;

/// Works out a hint, writes it down and says it; or says why there is none.
pub(super) fn next(out: &mut dyn Write, words: &Words, session: &mut Session) -> anyhow::Result<()> {
    if let Some(advice) = session.standing_hint() {
        show::wrapped(out, "  ", &in_words(words, session, advice))?;
        show::wrapped(out, "  ", &words.say("bench-next-again"))?;
        return Ok(());
    }
    match session.may_ask() {
        Ok(()) => {}
        Err(why @ (SessionError::NoHint(_) | SessionError::Over)) => {
            show::wrapped(out, "  ", &words.sentence(&why.sentence()))?;
            return Ok(());
        }
        Err(error) => return Err(error.into()),
    }
    show::wrapped(out, "  ", &words.say("bench-next-working"))?;
    out.flush()?;
    let advice = hint::advice(session.attempt(), session.job(), |_, _| true)?;
    let Some(advice) = advice else { return Ok(()) };
    session.hint(advice.clone())?;
    show::wrapped(out, "  ", &in_words(words, session, &advice))?;
    let points = words.number(HINT_POINTS, 0);
    let counted = say!(words, "bench-next-counted", points = points, left = session.hints_left());
    show::wrapped(out, "  ", &counted)?;
    Ok(())
}

fn in_words(words: &Words, session: &Session, advice: &Advice) -> String {
    match advice {
        Advice::Test(id) => say!(words, "bench-next-test", test = test_name(session.job(), id, words)),
        Advice::Enough => words.say("bench-next-enough"),
        Advice::Nothing => words.say("bench-next-nothing"),
    }
}
