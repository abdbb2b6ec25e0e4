//! From an action to what a hand does for it: which thing, which lines of its menu, which numbers.
//!
//! The offers are asked of a shop of the test's own, in which the same job is done beside the window.

use front::hands::{Carry, Form, Offer, Then, Thing, all_things, fits as end_fits, offers};
use front::shop::Shop;
use front::words::Words;
use sim_core::action::{Action, PedalHold};

use super::jobs::Where;

/// A step of the hand.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Step {
    /// Open the menu of this thing.
    Open(Thing),
    /// Take the line with these words, the so-manieth of the menu (from 0).
    Take(String, usize),
    /// Write these numbers into the form's fields, top to bottom, and do it.
    Fill(Vec<u32>),
}

/// The way to an action, and the action as the menus make it (ends may stand in another order). A joint is a
/// thing of its own in the line diagram only; in the room one takes hold of its ends.
pub(crate) fn way(shop: &Shop, words: &Words, wanted: &Action, place: Where) -> Option<(Vec<Step>, Action)> {
    let likely = |thing: &Thing| match wanted {
        // Nearer ways first: the thing itself, not a menu that leads to it.
        Action::OpenJoint { .. } | Action::MakeJoint { .. } => !matches!(thing, Thing::Joint(_)),
        Action::Swap { .. } => !matches!(thing, Thing::Part(_)),
        _ => false,
    };
    let mut things = all_things(shop);
    things.retain(|thing| place == Where::Diagram || !matches!(thing, Thing::Joint(_)));
    things.sort_by_key(likely);
    for thing in things {
        let list = offers(shop, None, thing);
        if let Some((steps, action)) = among(shop, words, &list, wanted, 0) {
            let mut all = vec![Step::Open(thing)];
            all.extend(steps);
            return Some((all, action));
        }
    }
    None
}

fn among(
    shop: &Shop,
    words: &Words,
    list: &[Offer],
    wanted: &Action,
    depth: u32,
) -> Option<(Vec<Step>, Action)> {
    for (i, offer) in list.iter().enumerate() {
        let take = Step::Take(words.offer(shop, offer), i);
        match &offer.then {
            Then::Do(action) if same(action, wanted) => return Some((vec![take], action.clone())),
            Then::Form(form) => {
                if let Some(numbers) = numbers(shop, *form, wanted) {
                    return Some((vec![take, Step::Fill(numbers)], wanted.clone()));
                }
            }
            Then::Carry(carry) if matches!(wanted, Action::Fit { .. }) && fits(shop, carry, wanted) => {
                if let Some((steps, action)) = carried(shop, words, carry, wanted) {
                    let mut all = vec![take];
                    all.extend(steps);
                    return Some((all, action));
                }
            }
            Then::More(more) if depth < 2 => {
                if let Some((steps, action)) = among(shop, words, more, wanted, depth + 1) {
                    let mut all = vec![take];
                    all.extend(steps);
                    return Some((all, action));
                }
            }
            _ => {}
        }
    }
    None
}

/// The rest of the way with an instrument in the hand.
fn carried(shop: &Shop, words: &Words, carry: &Carry, wanted: &Action) -> Option<(Vec<Step>, Action)> {
    // The list of things offers the very ends that what is in the hand goes on, so these come first.
    let mut things = all_things(shop);
    things.retain(|t| matches!(t, Thing::Port(_) | Thing::Part(_)));
    things.sort_by_key(|thing| end_fits(shop, carry, *thing).is_err());
    for thing in things {
        let list = offers(shop, Some(carry), thing);
        for (i, offer) in list.iter().enumerate() {
            let mut steps = vec![Step::Open(thing), Step::Take(words.offer(shop, offer), i)];
            match &offer.then {
                Then::Do(action) if same(action, wanted) => return Some((steps, action.clone())),
                Then::Carry(next) if fits(shop, next, wanted) => {
                    let (rest, action) = carried(shop, words, next, wanted)?;
                    steps.extend(rest);
                    return Some((steps, action));
                }
                _ => {}
            }
        }
    }
    None
}

/// Whether what is in the hand, so far, is on the way to `wanted`.
fn fits(shop: &Shop, carry: &Carry, wanted: &Action) -> bool {
    let Action::Fit { instrument, ends } = wanted else { return false };
    let kit = &shop.session().unwrap().workshop().setup().kit;
    kit[usize::from(carry.card)].id == *instrument && carry.placed.iter().all(|end| ends.contains(end))
}

fn same(a: &Action, b: &Action) -> bool {
    match (a, b) {
        (Action::Fit { instrument: a, ends: x }, Action::Fit { instrument: b, ends: y }) => {
            let sorted = |ends: &[(String, String)]| {
                let mut ends = ends.to_vec();
                ends.sort();
                ends
            };
            a == b && sorted(x) == sorted(y)
        }
        _ => a == b,
    }
}

/// The numbers that make a form ask for `wanted`, in the order of its fields.
fn numbers(shop: &Shop, form: Form, wanted: &Action) -> Option<Vec<u32>> {
    let whole = |v: f64| v as u32;
    let time = |s: u32| vec![s / 60, s % 60];
    Some(match (form, wanted) {
        (Form::HoldByFoot, Action::Pedal(PedalHold::Foot { force_n })) => vec![whole(*force_n)],
        (Form::HoldByProp, Action::Pedal(PedalHold::Prop { force_n })) => vec![whole(*force_n)],
        (Form::PumpPedal, Action::PumpPedal { times, force_n }) => vec![*times, whole(*force_n)],
        (Form::Stroke(card), Action::Stroke { instrument, times }) => {
            let kit = &shop.session()?.workshop().setup().kit;
            (kit[usize::from(card)].id == *instrument).then(|| vec![*times])?
        }
        (Form::Wait, Action::Wait { s }) => time(*s),
        (Form::WaitUntil(cue), Action::WaitUntil { cue: wanted, max_s }) if cue == *wanted => time(*max_s),
        (Form::Time(cycle), Action::Time { cycle: wanted, max_s }) if cycle == *wanted => time(*max_s),
        (Form::Overnight, Action::Overnight) => Vec::new(),
        _ => return None,
    })
}
