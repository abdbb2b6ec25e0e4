//! Laws of the evidence: what tells nothing changes nothing, whatever the order.

use assess::infer::evidence::{Followed, follow};
use assess::infer::hypotheses::Hypotheses;
use assess::play::course::{Course, Worth};

use super::attempts::{course, job, play};

/// Sums of exponentials in another order.
const ROUNDING: f64 = 1e-9;
/// What a note that tells nothing may move (issue's law).
const NOTHING: f64 = 1e-6;

/// Four hypotheses are enough for a law about one.
fn followed(course: &Course) -> Followed {
    let mut few = Hypotheses::of(&job().car);
    let other = few.list.pop().expect("the last is *other*");
    few.list.truncate(3);
    few.list.push(other);
    follow(&job(), &few, course, course.deeds.len(), |_| false)
}

fn apart(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max)
}

#[test]
fn inv_a_reading_repeated_in_an_unchanged_state_adds_nothing() {
    let once = course(&play("read barometer\nnote shown\nhum\nnote\nfinding relay sure 0.4\n"));
    let text = "read barometer\nnote shown\nread barometer\nnote shown\nhum\nnote\nhum\nnote\n";
    let twice = course(&play(text));
    let worth: Vec<Worth> = twice.notes.iter().map(|note| note.worth).collect();
    assert_eq!(worth, [Worth::Counts, Worth::Repeat(0), Worth::Counts, Worth::Repeat(2)]);
    let (once, twice) = (followed(&once), followed(&twice));
    assert_eq!((once.links.len(), twice.links.len()), (2, 2));
    assert!(apart(&once.end().classes(), &twice.end().classes()) < NOTHING);
}

/// The barometer shows the same in every car. Noted again and again with something done in between, before, among and
/// after what tells something, it moves nothing; and the same note in the first place is a note that counts.
#[test]
fn inv_a_note_that_tells_nothing_changes_nothing_wherever_it_stands() {
    let tells = ["hum\nnote\n", "key on\nhum\nnote\n", "key off\nbrakes\nnote\n"];
    let idle = "read barometer\nnote shown\n";
    let plain = followed(&course(&play(&tells.concat())));
    for (before, between, after) in [(1, 0, 0), (0, 1, 0), (0, 0, 1), (4, 3, 3)] {
        // With the pedal pressed in between each is a look of its own.
        let again = |n: usize| format!("pedal 20\npedal 0\nwait 61\n{idle}").repeat(n);
        let text =
            format!("{}{}{}{}{}", again(before), tells[0], again(between), tells[1..].concat(), again(after));
        let with = course(&play(&text));
        let counted = with.notes.iter().filter(|note| note.worth == Worth::Counts).count();
        let with = followed(&with);
        assert_eq!(with.links.len(), counted);
        let barometer: Vec<&assess::infer::evidence::Link> = with.links.iter().collect();
        assert!(barometer.iter().any(|link| link.gain.abs() < NOTHING), "some note told nothing");
    }
    let only = followed(&course(&play(&idle.repeat(1))));
    assert!(apart(&only.start.classes(), &only.end().classes()) < NOTHING);
    assert!(1e-3 < apart(&plain.start.classes(), &plain.end().classes()), "and the others told something");
}

#[test]
fn inv_the_order_of_notes_in_an_unchanged_state_changes_nothing() {
    // Looked at in one order, written in two.
    let looks = "hum\nread barometer\nbrakes\n";
    let written = |order: [u32; 3]| {
        let notes: String = order.iter().map(|n| format!("note {n} shown\n")).collect();
        followed(&course(&play(&format!("{looks}{notes}"))))
    };
    let (a, b) = (written([1, 2, 3]), written([3, 1, 2]));
    assert!(apart(&a.end().classes(), &b.end().classes()) < ROUNDING);
}

/// The same car and the same deeds, the same bits.
#[test]
fn inv_other_scatter_is_drawn_for_the_same_work() {
    let followed = followed(&course(&play("hum\nnote\nread barometer\nnote shown\n")));
    let told = vec![None; followed.links.len()];
    let kit = vec![0.0; job().kit.len()];
    let same = followed.with_other_scatter(&told, &kit, &vec![0.0; told.len()]);
    // Where nothing is told of what else could have been shown, it is what was shown.
    assert!(apart(&same.last().expect("a belief").classes(), &followed.end().classes()) < ROUNDING);
}
