//! The kinds of instruments, and the cards that say which one hangs on the board.

use crate::parts::PartKind;

/// A range of a digital display: error = percent of reading + counts of the last digit.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DigitalRange {
    /// Largest magnitude shown; above it the display reads OL.
    pub max: f64,
    /// Value of the last digit.
    pub resolution: f64,
    /// Error, percent of reading.
    pub percent: f64,
    /// Error, counts of the last digit.
    pub counts: f64,
}

/// A dial: error = class, in percent of the span (EN 837-1).
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dial {
    /// Lower end of the scale.
    pub min: f64,
    /// Upper end of the scale.
    pub max: f64,
    /// Accuracy class, percent of span.
    pub class: f64,
    /// Value of one division; read by eye to half of it.
    pub division: f64,
}

macro_rules! kinds {
    ($(
        $(#[doc = $doc:literal])+
        $kind:ident $({ $( $(#[doc = $about:literal])+ $field:ident: $of:ty, )+ })?,
    )+) => {
        /// What kind of instrument it is, with its display.
        #[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        pub enum InstrumentKind {
            $( $(#[doc = $doc])+ $kind $({ $( $(#[doc = $about])+ $field: $of, )+ })?, )+
        }

        impl InstrumentKind {
            /// Every kind as a file writes it, with the names of what it is written with: for the reference page.
            pub const WRITTEN: &'static [(&'static str, &'static [&'static str])] =
                &[$( (stringify!($kind), &[$( $( stringify!($field) ),+ )?]), )+];
        }
    };
}

kinds! {
    /// Dial gauge that tees into a joint or sits on an open port; end `stem`. Dial in kPa gauge.
    Gauge {
        /// The dial.
        dial: Dial,
    },
    /// Hand pump with dial gauge; end `stem`. Dial in kPa gauge.
    HandPump {
        /// The dial.
        dial: Dial,
    },
    /// Test lamp with two leads; ends `a`, `b`.
    Lamp,
    /// Multimeter; ends `v_ohm`, `com`.
    Multimeter {
        /// Volts.
        volt: DigitalRange,
        /// Ohms.
        ohm: DigitalRange,
        /// Amperes.
        ampere: DigitalRange,
    },
    /// Clamp ammeter around a wire; end `jaw` → an electrical port.
    ClampAmmeter {
        /// Amperes.
        ampere: DigitalRange,
    },
    /// Push-button lead, fused; ends `a`, `b`.
    PushLead,
    /// Infrared thermometer pointed at a part; end `beam` → part. °C.
    IrThermometer {
        /// °C.
        celsius: DigitalRange,
        /// Emissivity set on the instrument.
        emissivity_set: f64,
        /// Emissivity of bright metal, which makes it read low.
        emissivity_metal: f64,
    },
    /// Stopwatch; used by `Action::Time`. s.
    Stopwatch {
        /// s.
        second: DigitalRange,
        /// Scatter of the hand, s (one standard deviation).
        reaction_s: f64,
    },
    /// Barometer on the wall. kPa absolute.
    Barometer {
        /// The dial.
        dial: Dial,
    },
    /// Thermometer on the wall. °C.
    WallThermometer {
        /// The dial.
        dial: Dial,
    },
    /// Angle finder laid on a hose; end `arm` → part. Degrees.
    AngleFinder {
        /// The dial.
        dial: Dial,
    },
    /// Rule for pedal travel, mm.
    PedalRule {
        /// The dial.
        dial: Dial,
    },
    /// Prop that holds the pedal.
    PedalProp,
    /// Set of rubber plugs.
    Plugs,
    /// Hose clamps for rubber hose.
    Clamps,
    /// Listening tube.
    ListeningTube,
}

/// An instrument on the tool board.
#[derive(Clone, Debug, PartialEq)]
pub struct InstrumentCard {
    /// Short name: `gauge`, `meter`.
    pub id: String,
    /// Name in words.
    pub name: String,
    /// Kind and display.
    pub kind: InstrumentKind,
    /// What the circuit feels of it, if anything.
    pub part: Option<PartKind>,
    /// Minutes to connect it.
    pub fit_min: f64,
    /// One sentence about what it is for and what it cannot do.
    pub help: String,
}
