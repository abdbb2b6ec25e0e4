//! What each kind of instrument says of itself: ends, where it goes, what it measures, what hands do to it.
//!
//! One entry a kind. Workshop, words and packs ask here and know no kind by themselves.

use super::display::Display;
use super::held::Held;
use super::kind::InstrumentKind;
use crate::parts::elements::MeterMode;

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
pub struct Nature<'a> {
    /// The kind's name, as a file writes it.
    pub name: &'static str,
    /// The kind of part that the circuit feels of it, as a file writes it.
    pub part: Option<&'static str>,
    /// Names of its ends, in the order in which they are said; those of its part's ports, if it has a part.
    pub ends: &'static [&'static str],
    /// How it is put to what it measures, or works on.
    pub held: Held,
    /// Where one stands to read it.
    pub read_from: ReadFrom,
    /// What it measures.
    pub measured: Measured,
    /// What hands do to it.
    pub worked: Worked,
    /// What it shows its value on, each by the name that a file gives it; that of a meter in the order of its modes.
    displays: [Option<(&'static str, Display<'a>)>; 3],
    /// What else the trade calls it: small letters, nothing between them.
    pub also: &'static [&'static str],
}

impl<'a> Nature<'a> {
    /// All its displays, each by the name that a file gives it; none for what shows nothing to be read.
    pub fn displays(&self) -> impl Iterator<Item = (&'static str, Display<'a>)> {
        self.displays.into_iter().flatten()
    }

    /// The one that shows a value while the dial of a meter is set to `mode`; others have one at most.
    #[must_use]
    pub fn display(&self, mode: Option<MeterMode>) -> Option<Display<'a>> {
        let is_meter = self.measured == Measured::Meter;
        let at = match mode.unwrap_or_default() {
            MeterMode::Ohm if is_meter => 1,
            MeterMode::Ampere if is_meter => 2,
            MeterMode::Off | MeterMode::Volt | MeterMode::Ohm | MeterMode::Ampere => 0,
        };
        self.displays().nth(at).map(|(_, display)| display)
    }
}

/// Names of ends and how they are held.
type Ends = (&'static [&'static str], Held);

const STEM: Ends = (&["stem"], Held::OnLine);
const LEADS: Ends = (&["a", "b"], Held::OnWires);
const NO_ENDS: Ends = (&[], Held::Nowhere);

impl InstrumentKind {
    /// What the kind says of itself.
    #[must_use]
    #[expect(clippy::too_many_lines, reason = "a flat table: an arm a kind")]
    pub fn nature(&self) -> Nature<'_> {
        use Display::{Dial, Signed, Unsigned};
        use ReadFrom::{Cab, ItsEnds, Wall};
        use Worked::{Not, Pressed, Set, Stroked};
        let of = |name, part, (ends, held): Ends, (measured, read_from), worked, displays, also| Nature {
            name,
            part,
            ends,
            held,
            read_from,
            measured,
            worked,
            displays,
            also,
        };
        let tool = |name, held, also| {
            of(name, None, (&[], held), (Measured::Nothing, ItsEnds), Not, [None; 3], also)
        };
        let one = |name, display| [Some((name, display)), None, None];
        match self {
            Self::Gauge { dial } => of(
                "Gauge",
                Some("VacuumGauge"),
                STEM,
                (Measured::Pointer, ItsEnds),
                Not,
                one("dial", Dial("kPa", dial)),
                &["vacuumgauge", "teegauge"],
            ),
            Self::HandPump { dial } => of(
                "HandPump",
                Some("HandPump"),
                STEM,
                (Measured::Pointer, ItsEnds),
                Stroked,
                one("dial", Dial("kPa", dial)),
                &["vacuumpump", "pump"],
            ),
            Self::Lamp => of(
                "Lamp",
                Some("TestLamp"),
                LEADS,
                (Measured::Glow, ItsEnds),
                Not,
                [None; 3],
                &["testlamp", "light"],
            ),
            Self::Multimeter { volt, ohm, ampere } => of(
                "Multimeter",
                Some("Multimeter"),
                (&["v_ohm", "com"], Held::OnWires),
                (Measured::Meter, ItsEnds),
                Set,
                [
                    Some(("volt", Signed("V", volt))),
                    Some(("ohm", Unsigned("ohm", ohm))),
                    Some(("ampere", Signed("A", ampere))),
                ],
                &["multimeter", "voltmeter", "ohmmeter", "ammeter"],
            ),
            Self::ClampAmmeter { ampere } => of(
                "ClampAmmeter",
                None,
                (&["jaw"], Held::AroundWire),
                (Measured::Current, ItsEnds),
                Not,
                one("ampere", Signed("A", ampere)),
                &["ampclamp", "clamp", "clampammeter"],
            ),
            Self::PushLead => of(
                "PushLead",
                Some("PushLead"),
                LEADS,
                (Measured::Nothing, ItsEnds),
                Pressed,
                [None; 3],
                &["lead", "pushlead", "jumper", "pushbutton"],
            ),
            Self::IrThermometer { celsius, emissivity_set: set, emissivity_metal: metal } => of(
                "IrThermometer",
                None,
                (&["beam"], Held::AtPart),
                (Measured::Radiation { set: *set, metal: *metal }, ItsEnds),
                Not,
                one("celsius", Signed("C", celsius)),
                &["ir", "infraredthermometer", "irthermometer"],
            ),
            Self::Stopwatch { second, reaction_s } => of(
                "Stopwatch",
                None,
                NO_ENDS,
                (Measured::Time { reaction_s: *reaction_s }, ItsEnds),
                Not,
                one("second", Unsigned("s", second)),
                &["stopwatch"],
            ),
            Self::Barometer { dial } => of(
                "Barometer",
                None,
                NO_ENDS,
                (Measured::Day, Wall),
                Not,
                one("dial", Dial("kPa", dial)),
                &["baro"],
            ),
            Self::WallThermometer { dial } => of(
                "WallThermometer",
                None,
                NO_ENDS,
                (Measured::Room, Wall),
                Not,
                one("dial", Dial("C", dial)),
                &["wallthermometer"],
            ),
            Self::AngleFinder { dial } => of(
                "AngleFinder",
                None,
                (&["arm"], Held::OnHose),
                (Measured::Bend, ItsEnds),
                Not,
                one("dial", Dial("deg", dial)),
                &["anglefinder", "protractor"],
            ),
            Self::PedalRule { dial } => of(
                "PedalRule",
                None,
                NO_ENDS,
                (Measured::PedalTravel, Cab),
                Not,
                one("dial", Dial("mm", dial)),
                &["ruler", "pedalrule"],
            ),
            Self::PedalProp => tool("PedalProp", Held::OnPedal, &["pedalprop"]),
            Self::Plugs => tool("Plugs", Held::InOpening, &["plug"]),
            Self::Clamps => tool("Clamps", Held::OverHose, &["hoseclamp", "hoseclamps"]),
            Self::ListeningTube => tool("ListeningTube", Held::AtEar, &["listeningtube"]),
        }
    }

    /// Its dial, if it has one to be read by eye.
    #[must_use]
    pub fn dial(&self) -> Option<super::kind::Dial> {
        match self.nature().display(None)? {
            Display::Dial(_, dial) => Some(*dial),
            Display::Signed(..) | Display::Unsigned(..) => None,
        }
    }
}
