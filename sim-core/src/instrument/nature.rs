//! What each kind of instrument says of itself: ends, where it goes, what it measures, what hands do to it.
//!
//! One line a kind. Workshop, words and packs ask here and know no kind by themselves; the display, which has
//! numbers of its own, stands in [`super::display`].

use super::kind::InstrumentKind;

/// How an instrument is put to what it measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// Nowhere: it is used where it lies.
    Nowhere,
    /// Its stem on a vacuum line; stays there.
    OnLine,
    /// Its leads on electrical ports.
    OnWires,
    /// Around the wire at an electrical port.
    AroundWire,
    /// Pointed at a part.
    AtPart,
    /// Laid on a hose.
    OnHose,
}

/// Where one stands to read it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadFrom {
    /// At any of its ends; in the hand while it is nowhere.
    ItsEnds,
    /// From bench or desk: it hangs on the wall.
    Wall,
    /// From the driver's seat.
    Cab,
}

/// What it measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measured {
    /// Nothing.
    Nothing,
    /// The gauge pressure at its stem, by its own pointer, kPa.
    Pointer,
    /// What its dial is set to, between its leads: V, Ω or A.
    Meter,
    /// The current in a wire, A.
    Current,
    /// The radiation of a surface, °C: as if it had the emissivity set, and what bright metal really has.
    Radiation {
        /// Emissivity set on the instrument.
        set: f64,
        /// Emissivity of bright metal.
        metal: f64,
    },
    /// The pressure of the day, kPa absolute.
    Day,
    /// The temperature of the room, °C.
    Room,
    /// The angle of a hose's bend, degrees.
    Bend,
    /// The travel of the pedal, mm.
    PedalTravel,
    /// Whether its filament glows; that is seen, not read.
    Glow,
    /// The time between two events, s; that is timed, not read. Scatter of the hand, s.
    Time {
        /// One standard deviation of a reaction, s.
        reaction_s: f64,
    },
}

/// What hands do to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worked {
    /// Nothing.
    Not,
    /// A dial is set.
    Set,
    /// A button is pressed.
    Pressed,
    /// It is stroked, and has a lever that lets air in.
    Stroked,
}

impl Worked {
    /// Whether there is a button or a lever to hold down.
    #[must_use]
    pub fn is_pressed(self) -> bool {
        matches!(self, Self::Pressed | Self::Stroked)
    }
}

/// What a kind of instrument says of itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nature {
    /// The kind's name, as a file writes it.
    pub name: &'static str,
    /// The kind of part that the circuit feels of it, as a file writes it.
    pub part: Option<&'static str>,
    /// Names of its ends, in the order in which they are said; those of its part's ports, if it has a part.
    pub ends: &'static [&'static str],
    /// How it is put to what it measures.
    pub held: Held,
    /// Where one stands to read it.
    pub read_from: ReadFrom,
    /// What it measures.
    pub measured: Measured,
    /// What hands do to it.
    pub worked: Worked,
    /// What else the trade calls it: small letters, nothing between them.
    pub also: &'static [&'static str],
}

impl InstrumentKind {
    /// What the kind says of itself.
    #[must_use]
    pub fn nature(&self) -> Nature {
        use Held::{AroundWire, AtPart, Nowhere, OnHose, OnLine, OnWires};
        use ReadFrom::{Cab, ItsEnds, Wall};
        use Worked::{Not, Pressed, Set, Stroked};
        let of = |name, part, (ends, held), (measured, read_from), worked, also| Nature {
            name,
            part,
            ends,
            held,
            read_from,
            measured,
            worked,
            also,
        };
        let stem: (&'static [&'static str], _) = (&["stem"], OnLine);
        let leads: (&'static [&'static str], _) = (&["a", "b"], OnWires);
        let none: (&'static [&'static str], _) = (&[], Nowhere);
        let nothing = (Measured::Nothing, ItsEnds);
        match *self {
            Self::Gauge { .. } => of(
                "Gauge",
                Some("VacuumGauge"),
                stem,
                (Measured::Pointer, ItsEnds),
                Not,
                &["vacuumgauge", "teegauge"],
            ),
            Self::HandPump { .. } => of(
                "HandPump",
                Some("HandPump"),
                stem,
                (Measured::Pointer, ItsEnds),
                Stroked,
                &["vacuumpump", "pump"],
            ),
            Self::Lamp => {
                of("Lamp", Some("TestLamp"), leads, (Measured::Glow, ItsEnds), Not, &["testlamp", "light"])
            }
            Self::Multimeter { .. } => of(
                "Multimeter",
                Some("Multimeter"),
                (&["v_ohm", "com"], OnWires),
                (Measured::Meter, ItsEnds),
                Set,
                &["multimeter", "voltmeter", "ohmmeter", "ammeter"],
            ),
            Self::ClampAmmeter { .. } => of(
                "ClampAmmeter",
                None,
                (&["jaw"], AroundWire),
                (Measured::Current, ItsEnds),
                Not,
                &["ampclamp", "clamp", "clampammeter"],
            ),
            Self::PushLead => of(
                "PushLead",
                Some("PushLead"),
                leads,
                nothing,
                Pressed,
                &["lead", "pushlead", "jumper", "pushbutton"],
            ),
            Self::IrThermometer { emissivity_set: set, emissivity_metal: metal, .. } => of(
                "IrThermometer",
                None,
                (&["beam"], AtPart),
                (Measured::Radiation { set, metal }, ItsEnds),
                Not,
                &["ir", "infraredthermometer", "irthermometer"],
            ),
            Self::Stopwatch { reaction_s, .. } => {
                of("Stopwatch", None, none, (Measured::Time { reaction_s }, ItsEnds), Not, &["stopwatch"])
            }
            Self::Barometer { .. } => of("Barometer", None, none, (Measured::Day, Wall), Not, &["baro"]),
            Self::WallThermometer { .. } => {
                of("WallThermometer", None, none, (Measured::Room, Wall), Not, &["wallthermometer"])
            }
            Self::AngleFinder { .. } => of(
                "AngleFinder",
                None,
                (&["arm"], OnHose),
                (Measured::Bend, ItsEnds),
                Not,
                &["anglefinder", "protractor"],
            ),
            Self::PedalRule { .. } => {
                of("PedalRule", None, none, (Measured::PedalTravel, Cab), Not, &["ruler", "pedalrule"])
            }
            Self::PedalProp => of("PedalProp", None, none, nothing, Not, &["pedalprop"]),
            Self::Plugs => of("Plugs", None, none, nothing, Not, &["plug"]),
            Self::Clamps => of("Clamps", None, none, nothing, Not, &["hoseclamp", "hoseclamps"]),
            Self::ListeningTube => of("ListeningTube", None, none, nothing, Not, &["listeningtube"]),
        }
    }
}
