//! What hands can do with a thing: the offers of its menu.
//!
//! One place for the room, the line diagram, the tray and the keyboard: whatever can be picked is a
//! [`Thing`], and [`offers`] says what can be asked of it now. Nothing is left out because it would be
//! refused: the workshop says why, and that is how one learns it. Left out is only what makes no sense (to
//! take off a cover that is off).

mod car;
mod fits;
mod tools;

use sim_core::action::{Action, Cue, Cycle, Station};
use sim_core::assembly::PortRef;

use crate::ask::Pace;
use crate::shop::Shop;
pub use fits::{Misfit, fits};
pub use tools::{can_take, place};

/// Something that can be picked. Numbers are indices into the car, the kit, the spares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Thing {
    /// A part of the car.
    Part(u16),
    /// A port of a part of the car.
    Port(PortRef),
    /// A joint of the car.
    Joint(u16),
    /// A cover of the car.
    Cover(u16),
    /// An instrument of the kit.
    Instrument(u16),
    /// A spare on the shelf.
    Spare(u16),
    /// The ignition key.
    Key,
    /// The accelerator and starter: what makes the engine run.
    Starter,
    /// The brake pedal.
    Pedal,
    /// The wheel chocks.
    Chocks,
    /// The exhaust extraction: on its hook, or on the tail pipe.
    Extraction,
    /// The job card on the desk.
    JobCard,
    /// The car's data sheet on the desk.
    DataSheet,
    /// The whole car: base brakes, yard drive, hand back.
    Car,
    /// The clock of the workshop: waiting, timing, overnight.
    Clock,
}

/// An instrument or tool in the hand, some of its ends placed already.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Carry {
    /// Index into the kit.
    pub card: u16,
    /// Ends that have a place: end, port or part.
    pub placed: Vec<(String, String)>,
    /// Ends that have none yet; the first is the one in the hand.
    pub left: Vec<String>,
}

/// Numbers, or a second thought, that are asked for before the deed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Hold the pedal by foot: force.
    HoldByFoot,
    /// Hold the pedal by prop: force.
    HoldByProp,
    /// Pump the pedal: times, force.
    PumpPedal,
    /// Stroke a hand pump (index into the kit): times.
    Stroke(u16),
    /// Wait: minutes and seconds.
    Wait,
    /// Wait until something can be perceived: the longest wait.
    WaitUntil(Cue),
    /// Time the pump with the stopwatch: the longest wait.
    Time(Cycle),
    /// Leave the car overnight: twelve hours, so it is asked twice.
    Overnight,
    /// Hand the car back: it ends the attempt, so it is asked twice.
    HandBack,
}

/// What happens when an offer is taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Then {
    /// Do it.
    Do(Action),
    /// Do these one after the other; stop at the first that is refused.
    DoAll(Vec<Action>),
    /// Take an instrument in the hand.
    Carry(Carry),
    /// Ask for numbers first.
    Form(Form),
    /// Show what can be done with this.
    Turn(Thing),
    /// Show these lines.
    More(Vec<Offer>),
    /// Put the instrument in the hand back.
    PutBack,
    /// Let time run at this pace.
    Pace(Pace),
}

/// What kind of offer it is; a menu draws a line between kinds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// What one came for.
    #[default]
    First,
    /// Where else to go from here: ports, the part.
    Ends,
    /// Looking, listening, touching.
    Sense,
    /// Opening, closing, pulling.
    Work,
    /// Cleaning, replacing.
    Repair,
    /// Taking off, putting back.
    Away,
}

/// A line of a menu.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// Key of its words in the locale files, `offer-…`.
    pub key: &'static str,
    /// What the words are about, named by [`crate::words::Words::name`] as `$it`.
    pub it: Option<Thing>,
    /// A second name, as `$end`: an instrument's end.
    pub end: Option<String>,
    /// What kind of offer it is.
    pub group: Group,
    /// What then.
    pub then: Then,
}

impl Offer {
    fn group(mut self, group: Group) -> Self {
        self.group = group;
        self
    }
}

fn offer(key: &'static str, then: Then) -> Offer {
    Offer { key, it: None, end: None, group: Group::First, then }
}

fn about(key: &'static str, it: Thing, then: Then) -> Offer {
    Offer { key, it: Some(it), end: None, group: Group::First, then }
}

/// What can be done with `thing` now, likeliest first. Empty when no job is open or the car has been
/// handed back.
#[must_use]
pub fn offers(shop: &Shop, carrying: Option<&Carry>, thing: Thing) -> Vec<Offer> {
    let (Some(_), Some(view)) = (shop.car(), shop.view()) else { return Vec::new() };
    if view.handed_back {
        return Vec::new();
    }
    let mut out = Vec::new();
    // Time goes on with full hands too.
    if thing == Thing::Clock {
        clock_offers(&mut out);
        return out;
    }
    if let Some(carry) = carrying {
        out.extend(tools::places_for(shop, carry, thing));
        let back = about("offer-put-back", Thing::Instrument(carry.card), Then::PutBack);
        out.push(back.group(Group::Away));
        return out;
    }
    match thing {
        Thing::Part(part) => car::part_offers(shop, part, &mut out),
        Thing::Port(port) => car::port_offers(shop, port, &mut out),
        Thing::Joint(joint) => car::joint_offers(shop, joint, &mut out),
        Thing::Cover(cover) => car::cover_offers(shop, cover, &mut out),
        Thing::Instrument(card) => tools::instrument_offers(shop, card, &mut out),
        Thing::Spare(spare) => car::spare_offers(shop, spare, &mut out),
        Thing::Key => car::key_offers(view.key_on, &mut out),
        Thing::Starter => car::starter_offers(view.engine, &mut out),
        Thing::Pedal => car::pedal_offers(view.pedal, &mut out),
        Thing::Chocks => out.push(if view.chocked {
            offer("offer-chocks-away", Then::Do(Action::Chocks(false)))
        } else {
            offer("offer-chocks-set", Then::Do(Action::Chocks(true)))
        }),
        Thing::Extraction => out.push(if view.extracted {
            offer("offer-extraction-off", Then::Do(Action::Extraction(false)))
        } else {
            offer("offer-extraction-on", Then::Do(Action::Extraction(true)))
        }),
        Thing::JobCard => out.push(offer("offer-read-card", Then::Do(Action::ReadCard))),
        Thing::DataSheet => out.push(offer("offer-read-sheet", Then::Do(Action::ReadSheet))),
        Thing::Car => car::car_offers(&mut out),
        Thing::Clock => {}
    }
    out
}

/// What waiting and timing offer.
fn clock_offers(out: &mut Vec<Offer>) {
    out.push(offer("offer-wait", Then::Form(Form::Wait)));
    let cues = [
        ("offer-wait-pump-starts", Cue::PumpStarts),
        ("offer-wait-pump-stops", Cue::PumpStops),
        ("offer-wait-lamp-on", Cue::LampOn),
        ("offer-wait-lamp-out", Cue::LampOut),
    ];
    let cues = cues.map(|(key, cue)| offer(key, Then::Form(Form::WaitUntil(cue))));
    out.push(offer("offer-wait-until", Then::More(cues.to_vec())));
    let cycles = [("offer-time-run", Cycle::PumpRun), ("offer-time-rest", Cycle::PumpRest)];
    let cycles = cycles.map(|(key, cycle)| offer(key, Then::Form(Form::Time(cycle))));
    out.push(offer("offer-stopwatch", Then::More(cycles.to_vec())).group(Group::Sense));
    out.push(
        offer("offer-listen-hum", Then::Do(Action::Sense(sim_core::action::Sense::Hum))).group(Group::Sense),
    );
    out.push(offer("offer-overnight", Then::Form(Form::Overnight)).group(Group::Away));
    let paces = [
        ("offer-pace-live", Pace::Live),
        ("offer-pace-ten", Pace::Ten),
        ("offer-pace-sixty", Pace::Sixty),
        ("offer-pace-hold", Pace::Hold),
    ];
    let paces = paces.map(|(key, pace)| offer(key, Then::Pace(pace)));
    out.push(offer("offer-pace", Then::More(paces.to_vec())).group(Group::Away));
}

/// Joints of the car at `port`, by index.
#[must_use]
pub fn joints_at(shop: &Shop, port: PortRef) -> Vec<u16> {
    let Some(car) = shop.car() else { return Vec::new() };
    let joints = car.assembly.joints.iter().enumerate();
    joints.filter(|(_, j)| j.a == port || j.b == port).map(|(i, _)| i as u16).collect()
}

/// Whether a joint of the car is open.
#[must_use]
pub fn is_open(shop: &Shop, joint: u16) -> bool {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return false };
    car.assembly.joints.get(usize::from(joint)).is_some_and(|j| view.joints_open.contains(&j.id))
}

/// Everything that can be picked in the open job, in a fixed order: for lists and for tests.
#[must_use]
pub fn all_things(shop: &Shop) -> Vec<Thing> {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return Vec::new() };
    let setup = session.workshop().setup();
    let mut all = vec![Thing::Key, Thing::Starter, Thing::Pedal, Thing::Chocks, Thing::Extraction];
    all.extend([Thing::JobCard, Thing::DataSheet, Thing::Car, Thing::Clock]);
    all.extend((0..car.assembly.parts.len()).map(|i| Thing::Part(i as u16)));
    all.extend(car.assembly.ports().map(Thing::Port));
    all.extend((0..car.assembly.joints.len()).map(|i| Thing::Joint(i as u16)));
    all.extend((0..car.covers.len()).map(|i| Thing::Cover(i as u16)));
    all.extend((0..setup.kit.len()).map(|i| Thing::Instrument(i as u16)));
    all.extend((0..setup.spares.len()).map(|i| Thing::Spare(i as u16)));
    all
}

/// Where one stands to see a thing.
#[must_use]
pub fn station_of(shop: &Shop, thing: Thing) -> Option<Station> {
    let car = shop.car()?;
    let of_part = |part: u16| car.stands.get(usize::from(part)).map(|s| s.station);
    match thing {
        Thing::Part(part) => of_part(part),
        Thing::Port(port) => Some(car.places_of_port(port).first()?.0),
        Thing::Joint(joint) => {
            let joint = car.assembly.joints.get(usize::from(joint))?;
            Some(car.places_of_port(joint.a).first()?.0)
        }
        Thing::Cover(cover) => car.covers.get(usize::from(cover)).map(|c| c.station),
        Thing::Instrument(card) => {
            let seen = shop.view()?.instruments.get(usize::from(card))?;
            let at = seen.at.first().and_then(|(_, at)| place(shop, at));
            match at {
                Some(Thing::Instrument(_)) | None => Some(Station::Bench),
                Some(other) => station_of(shop, other),
            }
        }
        Thing::Spare(_) => Some(Station::Bench),
        Thing::Key | Thing::Starter | Thing::Pedal => Some(Station::Cab),
        Thing::Chocks => Some(Station::Front),
        // It hangs at the wall behind the car, which is seen from the desk.
        Thing::JobCard | Thing::DataSheet | Thing::Extraction => Some(Station::Desk),
        Thing::Car | Thing::Clock => None,
    }
}
