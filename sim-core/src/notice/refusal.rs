//! Why an action cannot be done now, and what to do instead.

use super::names::{Card, Cover, End, Joint, Port, TheCover, TheTool, Unit};
use super::table::told;
use super::words::{Quantity, Sort, Tool, Word};
use super::{InGap as _, Telling, Told};
use crate::action::Station;

/// A refusal: nothing has changed, no time has passed.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Refusal {
    /// There is no such thing.
    Unknown {
        /// What was looked for.
        kind: Sort,
        /// The name given.
        name: String,
        /// Names that exist, or the closest few.
        known: String,
    },
    /// A number outside its range.
    Range {
        /// Which.
        what: Quantity,
        /// Smallest value.
        min: f64,
        /// Largest value.
        max: f64,
    },
    /// Hands, feet, covers, states: cannot be done as things stand.
    Cannot(Reason),
}

impl Refusal {
    /// Keys of its own sentences with their gaps; what cannot be done has those of its reason.
    pub const KEYS: &'static [(&'static str, &'static [&'static str])] =
        &[("told-unknown", &["kind", "name", "known"]), ("told-range", &["what", "min", "max"])];
}

impl Told for Refusal {
    fn telling(&self) -> Telling {
        match self {
            Self::Unknown { kind, name, known } => Telling {
                key: "told-unknown",
                gaps: vec![("kind", kind.gap()), ("name", name.gap()), ("known", known.gap())],
            },
            Self::Range { what, min, max } => Telling {
                key: "told-range",
                gaps: vec![("what", what.gap()), ("min", min.gap()), ("max", max.gap())],
            },
            Self::Cannot(why) => why.telling(),
        }
    }
}

impl From<Reason> for Refusal {
    fn from(why: Reason) -> Self {
        Self::Cannot(why)
    }
}

told! {
    /// Why something cannot be done as things stand.
    pub enum Reason {
        // Reach.
        /// The tool board of this job lacks the tool.
        NoTool {
            /// The tool.
            tool: Tool,
        } => "told-no-tool",
        /// From nowhere.
        Unreachable => "told-unreachable",
        /// A cover bars it.
        CoverInTheWay {
            /// The cover.
            cover: TheCover,
            /// The same, to be typed.
            id: Cover,
        } => "told-cover-in-the-way",
        /// The foot holds the pedal.
        FootBinds {
            /// Where one wanted to go.
            to: Station,
        } => "told-foot-binds",
        /// The hand is on a button somewhere else.
        HandBindsThere {
            /// On this.
            tool: TheTool,
            /// Where one wanted to go.
            to: Station,
        } => "told-hand-binds-there",
        /// The hand is on a button, and both are needed.
        HandBinds {
            /// On this.
            tool: TheTool,
        } => "told-hand-binds",
        /// The car has been handed back.
        Over => "told-over",
        // Deciding.
        /// Engine or ignition is on before a night.
        HomeOff => "told-home-off",
        /// A foot is on the pedal.
        FootOnPedal => "told-foot-on-pedal",
        /// No certainty that can be stated.
        Certainty => "told-certainty",
        /// Engine or ignition is on before the hand-back.
        BackOff => "told-back-off",
        /// The extraction still hangs on the exhaust before the hand-back.
        BackExtraction => "told-back-extraction",
        /// No finding yet.
        BackFinding => "told-back-finding",
        // Fitting.
        /// The jaw goes around a wire.
        NoCurrent {
            /// Not here.
            at: Port,
        } => "told-no-current",
        /// The angle finder goes on a hose.
        NoHoseAngle {
            /// Not here.
            at: super::Part,
        } => "told-no-hose-angle",
        /// An instrument on itself.
        ToItself => "told-to-itself",
        /// Air on current, or the other way round.
        WrongKind {
            /// The end.
            end: End,
            /// The port.
            at: Port,
        } => "told-wrong-kind",
        /// A plug is in the port.
        PlugInIt {
            /// The port.
            at: Port,
        } => "told-plug-in-it",
        /// An instrument without ends.
        UsedInPlace {
            /// Which.
            tool: TheTool,
        } => "told-used-in-place",
        /// Connected already.
        Connected {
            /// Which.
            tool: TheTool,
        } => "told-connected",
        /// Ends missing or named twice.
        Ends {
            /// Whose.
            tool: Card,
            /// Its ends.
            known: String,
        } => "told-ends",
        /// Not connected.
        NotConnected {
            /// Which.
            tool: TheTool,
        } => "told-not-connected",
        /// No dial to set.
        NoDial {
            /// Which.
            tool: TheTool,
        } => "told-no-dial",
        /// No button to press.
        NoButton {
            /// Which.
            tool: TheTool,
        } => "told-no-button",
        /// Held down already.
        HeldDown => "told-held-down",
        /// Nobody presses it.
        NotPressed => "told-not-pressed",
        /// Nothing to stroke.
        NoStrokes {
            /// Which.
            tool: TheTool,
        } => "told-no-strokes",
        /// Stroked before it is connected.
        FitFirst {
            /// Which.
            tool: TheTool,
        } => "told-fit-first",
        // Lasting states.
        /// The extraction hangs on the exhaust already.
        ExtractionOn => "told-extraction-on",
        /// The extraction hangs on the wall.
        ExtractionOff => "told-extraction-off",
        /// The extraction hangs on the exhaust before a drive.
        DriveExtraction => "told-drive-extraction",
        /// Chocks are in place already.
        ChocksSet => "told-chocks-set",
        /// There are no chocks to take away.
        ChocksNone => "told-chocks-none",
        /// The cover is so already.
        CoverAlready {
            /// Which.
            cover: Cover,
            /// On or off.
            state: Word,
        } => "told-cover-already",
        /// The ignition is so already.
        IgnitionAlready {
            /// On or off.
            state: Word,
        } => "told-ignition-already",
        /// The engine does that already.
        EngineAlready => "told-engine-already",
        /// The engine needs the ignition first.
        IgnitionFirst => "told-ignition-first",
        /// Too little voltage for the starter.
        StarterClicks => "told-starter-clicks",
        /// Nobody holds the pedal.
        PedalFree => "told-pedal-free",
        /// The prop holds the pedal.
        PropHolds => "told-prop-holds",
        /// Chocks are in place before a drive.
        DriveChocks => "told-drive-chocks",
        /// The prop holds the pedal before a drive.
        DriveProp => "told-drive-prop",
        // Joints and stops.
        /// The joint is so already.
        JointAlready {
            /// Which.
            joint: Joint,
            /// Open or made.
            state: Word,
        } => "told-joint-already",
        /// The joint belongs to a unit that is pulled out.
        JointPulled {
            /// Which.
            joint: Joint,
        } => "told-joint-pulled",
        /// An instrument sits on the open end.
        ToolOnEnd {
            /// Which.
            tool: TheTool,
        } => "told-tool-on-end",
        /// A stop on an instrument.
        StopOnTool {
            /// Where.
            at: Port,
        } => "told-stop-on-tool",
        /// A stop on a terminal.
        StopElectrical {
            /// Where.
            at: Port,
        } => "told-stop-electrical",
        /// There is a stop already.
        StopAlready {
            /// Where.
            at: Port,
        } => "told-stop-already",
        /// There is no stop to take away.
        NoStop {
            /// Where.
            at: Port,
        } => "told-no-stop",
        /// A plug on a joined port.
        PlugJoined {
            /// Where.
            at: Port,
        } => "told-plug-joined",
        /// A clamp on what is no hose.
        ClampNoHose {
            /// Where.
            at: Port,
        } => "told-clamp-no-hose",
        /// A clamp on hard pipe.
        ClampHard => "told-clamp-hard",
        // The notebook.
        /// Nothing has been read yet.
        NoReadingYet {
            /// What was asked for.
            reading: u32,
        } => "told-no-reading-yet",
        /// There is no such reading.
        NoReading {
            /// What was asked for.
            reading: u32,
            /// The last there is.
            last: u32,
        } => "told-no-reading",
        /// A number must be written.
        WriteNumber => "told-write-number",
        /// Not a number.
        Finite => "told-finite",
        // Units and spares.
        /// Not a plug-in unit.
        NoPlugIn {
            /// Which.
            unit: Unit,
        } => "told-no-plug-in",
        /// The unit is so already.
        UnitAlready {
            /// Which.
            unit: Unit,
            /// Pulled out or in place.
            state: Word,
        } => "told-unit-already",
        /// An instrument is connected to the unit.
        ToolOnUnit {
            /// Which instrument.
            tool: TheTool,
        } => "told-tool-on-unit",
        /// A stop sits on the unit.
        StopOnUnit {
            /// Where.
            at: Port,
        } => "told-stop-on-unit",
        /// The engine runs.
        RepairEngine => "told-repair-engine",
        /// The spare is for another unit.
        WrongSpare {
            /// Not for this one.
            unit: Unit,
            /// For this one.
            other: Unit,
        } => "told-wrong-spare",
        /// The spare has been built in.
        SpareUsed => "told-spare-used",
        /// Cleaning mends nothing.
        NoCleaning {
            /// Here.
            unit: Unit,
        } => "told-no-cleaning",
        /// Heat re-forms nothing.
        NoReform {
            /// Here.
            unit: Unit,
        } => "told-no-reform",
        // Readings and senses.
        /// The stopwatch by itself.
        WatchAlone => "told-watch-alone",
        /// Nothing to read.
        ShowsNothing {
            /// Which.
            tool: TheTool,
        } => "told-shows-nothing",
        /// Still on the board.
        OnBoard {
            /// Which.
            tool: TheTool,
        } => "told-on-board",
        /// It cannot be read from where one stands or may go.
        NotFromHere {
            /// Which.
            tool: TheTool,
            /// Why not.
            why: Box<Reason>,
        } => "told-not-from-here",
        /// A travel felt with no foot on the pedal.
        PedalFirst => "told-pedal-first",
        /// The pedal was not held over the engine's start or stop.
        PedalHeldOn => "told-pedal-held-on",
        /// The pedal was not pumped.
        PumpPedalFirst => "told-pump-pedal-first",
        /// Not a lamp.
        NoLamp {
            /// Which.
            tool: Card,
        } => "told-no-lamp",
        /// No electric pump to time.
        NoPumpToTime => "told-no-pump-to-time",
        /// No lamp to watch.
        NoLampConnected => "told-no-lamp-connected",
        /// No electric pump to listen to.
        NoPump => "told-no-pump",
    }
}
