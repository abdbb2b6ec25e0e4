//! Laws of the evidence: what tells nothing changes nothing, whatever the order.

use assess::infer::evidence::{Followed, follow, follow_in};
use assess::infer::guests::{Asked, Guest, Guests, Simulated};
use assess::infer::hypotheses::{Class, Hypotheses, PAIRS};
use assess::infer::rows::{self, Car};
use assess::play::course::{Course, Worth};

use super::attempts::{course, course_in, job, play, play_in};

/// Sums of exponentials in another order.
const ROUNDING: f64 = 1e-9;
/// What a note that tells nothing may move (issue's law).
const NOTHING: f64 = 1e-6;

/// Four hypotheses are enough for a law about one.
fn few() -> Hypotheses {
    let mut few = Hypotheses::of(&job().car);
    let other = few.list.pop().expect("the last is *other*");
    few.list.truncate(3);
    few.list.push(other);
    few
}

fn followed(course: &Course) -> Followed {
    follow(&job(), &few(), course, course.deeds.len(), |_| false)
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
/// after what tells something, it moves nothing.
#[test]
fn inv_a_note_that_tells_nothing_changes_nothing_wherever_it_stands() {
    let tells = ["hum\nnote\n", "key on\nwait 61\nhum\nnote\n", "key off\nbrakes\nnote\n"];
    // With the pedal pressed in between each is a look of its own; unwritten it takes as long.
    let look = |written: &str, n: usize| {
        format!("pedal press 20\npedal release\nwait 61\nread barometer\n{written}\n").repeat(n)
    };
    for (before, between, after) in [(1, 0, 0), (0, 1, 0), (0, 0, 1), (4, 3, 3)] {
        let text = |written: &str| {
            let (a, b, c) = (look(written, before), look(written, between), look(written, after));
            format!("{a}{}{b}{}{}{c}", tells[0], tells[1], tells[2])
        };
        let (with, without) = (course(&play(&text("note shown"))), course(&play(&text("wait 5"))));
        let counted = with.notes.iter().filter(|note| note.worth == Worth::Counts).count();
        assert_eq!(counted, 3 + before + between + after);
        let (with, without) = (followed(&with), followed(&without));
        let (told, plain) = (with.end().classes(), without.end().classes());
        assert!(apart(&told, &plain) < NOTHING, "{told:?} and {plain:?}");
        let silent = with.links.iter().filter(|link| link.gain == 0.0).count();
        assert!(before + between + after <= silent, "each of them by itself");
        assert!(1e-3 < apart(&plain, &with.start.classes()), "and the others told something");
    }
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

/// Cars in which everything was done before anybody asks, and of which only what they showed is kept.
struct Kept<'a>(&'a Course);

impl Guests for Kept<'_> {
    fn bring_in(&mut self, asked: &[Asked]) -> Vec<Guest> {
        let mut guests = Simulated(&job()).bring_in(asked);
        let mut cars: Vec<&mut Car> = guests.iter_mut().map(|guest| &mut guest.car).collect();
        rows::advance(self.0, &mut cars, self.0.deeds.len());
        let kept = |guest: Guest| Guest { car: Car::of_record(guest.car.shows, guest.car.told), ..guest };
        guests.into_iter().map(kept).collect()
    }
}

/// What `calibrate within` says of the marker is true of the marker.
#[test]
fn inv_a_table_of_what_cars_showed_is_believed_like_the_cars() {
    let course =
        course(&play("hum\nnote\nkey on\nwait 61\nhum\nnote\nkey off\nread barometer\nnote shown\n"));
    let from_table = follow_in(&job(), &few(), &course, course.deeds.len(), |_| false, &mut Kept(&course));
    assert_eq!(followed(&course).links, from_table.links);
}

/// The relay's weld and a leak back through the engine's check valve, found one after the other: the ear at the relay, the
/// meter at its contact; the store that loses its vacuum, and holds it with the engine's hose clamped.
const BOTH: &str = "chocks on\nextraction on\nhum\nnote\npull relay\nhum\nnote\nmeter ohm\n\
    fit meter red=relay.30 black=relay.87\nread meter\nnote shown\ntake meter\nmeter off\npedal pump 12 200\n\
    fit gauge valve_m.store\nkey on\nengine idle\nwait 30\nkey off\nwait 60\nread gauge\nnote shown\nwait 600\n\
    read gauge\nnote shown\npedal pump 12 200\nkey on\nengine idle\nwait 30\nclamp hose_m.a\nkey off\nwait 60\n\
    read gauge\nnote shown\nwait 600\nread gauge\nnote shown\nfree hose_m.a\n\
    pedal pump 12 200\ntake gauge\npush relay\nextraction off\nchocks off\nfinding relay valve_m sure 0.95\n";

/// Two faults that a job hides are found as two.
#[test]
fn inv_two_faults_that_are_hidden_are_found_as_two() {
    let mut two = (*job()).clone();
    let fault =
        |id: &str| two.car.faults.iter().position(|fault| fault.id == id).expect("it is known") as u16;
    let hidden = vec![(fault("relay_welded"), 60.0), (fault("valve_m_leaks_back"), 0.3)];
    let unit = |id: &str| two.car.units.iter().position(|unit| unit.id == id).expect("it is there") as u16;
    let pair = Class::Pair(unit("valve_m").min(unit("relay")), unit("valve_m").max(unit("relay")));
    two.set_answer(hidden);
    let two = std::sync::Arc::new(two);
    let course = course_in(&two, &play_in(&two, BOTH, 0x5eed));
    assert_eq!(course.faulty_at_start.len(), 2);
    let followed = follow(&two, &Hypotheses::of(&two.car), &course, course.deeds.len(), |_| false);
    let class = followed.hypotheses.classes.iter().position(|class| *class == pair).expect("it is tried");
    let (start, end) = (followed.start.classes()[class], followed.end().classes()[class]);
    assert!(start < PAIRS, "on the complaint alone {start}");
    assert!(0.9 < end, "{end}");
    // The notes themselves call for two, also when nobody says that there are.
    let mut untold = course;
    untold.faulty_at_start.truncate(1);
    let followed = follow(&two, &Hypotheses::of(&two.car), &untold, untold.deeds.len(), |_| false);
    let class = followed.hypotheses.classes.iter().position(|class| *class == pair).expect("it is tried");
    assert!(0.9 < followed.end().classes()[class], "{:?}", followed.end().classes());
}

/// Where one fault explains everything no pair is laid out.
#[test]
fn a_single_fault_that_explains_the_notes_is_alone() {
    let course = course(&play("hum\nnote\npull relay\nhum\nnote\nfinding relay sure 0.8\n"));
    let all = Hypotheses::of(&job().car);
    let followed = follow(&job(), &all, &course, course.deeds.len(), |_| false);
    assert_eq!(followed.hypotheses, all);
    let pairs = Hypotheses::pairs(&job().car);
    let sum: f64 = pairs.iter().map(|(_, weight)| weight).sum();
    assert!(500 < pairs.len() && (sum - PAIRS).abs() < ROUNDING, "{} pairs, {sum}", pairs.len());
}

/// The store is empty, and the gauge says so again and again. That it is empty tells much; that it still is tells nothing, also
/// of faults that empty it in some cars only.
#[test]
fn inv_the_same_nought_again_and_again_tells_once() {
    /// Each look is another look of another car: what is left of the first's probabilities after six, as a ratio.
    const NEARLY: f64 = 1.5;
    let mut hidden = (*job()).clone();
    let fault = |id: &str| hidden.car.faults.iter().position(|f| f.id == id).expect("it is known") as u16;
    let (pinhole, wanted) = (
        fault("hose_b_pinhole"),
        ["booster_rim", "hose_b_pinhole", "switch_diaphragm", "tee_crack"].map(fault),
    );
    hidden.set_answer(vec![(pinhole, hidden.car.faults[usize::from(pinhole)].severity_max)]);
    let hidden = std::sync::Arc::new(hidden);
    let mut few = Hypotheses::of(&hidden.car);
    few.list.retain(|entry| entry.fault().is_none_or(|fault| wanted.contains(&fault)));
    let look = "pedal press 20\npedal release\nwait 30\nread gauge\nnote shown\n";
    let fill =
        "pedal pump 12 200\nfit gauge valve_m.store\nkey on\nengine idle\nwait 30\nkey off\nwait 600\n";
    let course = course_in(&hidden, &play_in(&hidden, &format!("{fill}{}", look.repeat(6)), 0x5eed));
    let followed = follow(&hidden, &few, &course, course.deeds.len(), |_| false);
    let (first, last) = (followed.links[0].belief.classes(), followed.end().classes());
    assert_eq!(followed.links.len(), 6);
    assert!(0.05 < apart(&first, &followed.start.classes()), "the first look tells: {first:?}");
    // Of *other* nothing is known, also not that it would show the same again.
    let of_faults = |classes: &[f64]| -> Vec<f64> {
        let named = followed.hypotheses.classes.iter().zip(classes);
        let units = named.filter(|(class, p)| matches!(class, Class::Unit(_)) && 0.0 < **p);
        let units: Vec<f64> = units.map(|(_, p)| *p).collect();
        units.iter().map(|p| p / units.iter().sum::<f64>()).collect()
    };
    let (first, last) = (of_faults(&first), of_faults(&last));
    assert_eq!((first.len(), last.len()), (4, 4));
    for (first, last) in first.iter().zip(&last) {
        assert!(first / last < NEARLY && last / first < NEARLY, "{first} then {last}");
    }
}
