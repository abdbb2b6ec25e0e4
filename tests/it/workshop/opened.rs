//! What is true under the hood is told of a car whose numbers one has brought along, or once it is handed back.

use std::marker::PhantomData;
use std::ops::DerefMut;

use assess::attempt::Seed;
use assess::play::script;
use assess::play::{self, Begin, Session};
use sim_core::workshop::Workshop;

use super::*;

const JOB: &str = "first-shift/hum-at-the-lights";

/// Whether a type can do something, asked of the compiler.
struct Can<T>(PhantomData<T>);

trait Otherwise {
    const CLONE: bool = false;
    const LEND: bool = false;
}

impl<T> Otherwise for Can<T> {}

impl<T: Clone> Can<T> {
    const CLONE: bool = true;
}

impl<T: DerefMut<Target = Workshop>> Can<T> {
    const LEND: bool = true;
}

// A workshop cannot be copied, nor put under an open hood: else this does not compile.
const _: () = {
    // The question can be answered with yes.
    assert!(Can::<Opened>::CLONE && Can::<Box<Workshop>>::LEND);
    assert!(!Can::<Workshop>::CLONE, "a copy could be handed back");
    assert!(!Can::<Opened>::LEND, "somebody's workshop could be put in its place");
};

#[test]
fn inv_the_hood_opens_when_the_car_is_handed_back_and_not_before() {
    let job = Arc::new(LIBRARY.job(JOB).unwrap());
    let begin = Begin::rehearsal(Seed(0x5eed));
    let mut s = Session::rehearse(Arc::clone(&job), &begin);
    script::play(&mut s, &job.reference.clone().unwrap(), |_, _, _, _| {}).unwrap();
    let whole = s.into_attempt();
    let mut part = whole.clone();
    let last = part.steps.pop().unwrap();
    assert_eq!(last.action, Action::HandBack);
    let at_work = play::replay(&part, &job).unwrap();
    assert!(Opened::after(at_work).is_none());
    let opened = Opened::after(play::replay(&whole, &job).unwrap()).unwrap();
    let (fault, severity) = job.answer()[0];
    let param = &job.car.faults[usize::from(fault)].param;
    assert_eq!(opened.world().params.last(), Some(&(param.clone(), severity)));
    assert_eq!(opened.world().instrument_errors.len(), job.kit.len());
}

#[test]
fn inv_what_is_brought_along_is_told_and_an_open_hood_changes_no_bit() {
    let (setup, world) = setup(JOB, &[("relay_welded", 50.0)]);
    let mut opened = Opened::of(setup.clone(), world.clone());
    let mut shut = Workshop::new(setup, world.clone());
    assert_eq!(*opened.world(), world);
    let relay = opened.setup().car.units.iter().position(|u| u.id == "relay").unwrap() as u16;
    assert_eq!(opened.units_outside_limits(), [relay]);
    for action in [Action::Key(true), Action::Wait { s: 30 }, read("barometer"), Action::Wait { s: 5 }] {
        let (a, b) = (opened.act(&action), shut.act(&action));
        assert_eq!(a, b);
        assert_eq!(opened.predicted().is_some(), a.reading.is_some(), "{action:?}");
        assert_eq!(opened.digest(), shut.digest());
    }
    let mut other = opened.clone();
    assert_eq!(other.act(&Action::Key(false)), opened.act(&Action::Key(false)));
    assert_eq!(opened.shut().digest(), other.digest());
}

#[test]
fn inv_printing_tells_nothing_hidden() {
    let printed = |faults: &[(&str, f64)], seed: u128| {
        let mut job = LIBRARY.job(JOB).unwrap();
        let known = |id: &str| job.car.faults.iter().position(|f| f.id == id).unwrap() as u16;
        let faults = faults.iter().map(|(id, severity)| (known(id), *severity)).collect();
        job.set_answer(faults);
        let workshop = play::workshop(&job, Seed(seed));
        format!("{workshop:?} {job:?}")
    };
    let sound = printed(&[], 1);
    assert!(sound.contains("Workshop"), "{sound:.200}");
    assert_eq!(sound, printed(&[("relay_welded", 50.0)], 1));
    assert_eq!(sound, printed(&[("valve_m_leaks_back", 0.25)], 2));
}
