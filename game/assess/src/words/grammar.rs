//! The words themselves, as clap sees them: one line typed in the workshop is one small command line.
//!
//! What each word means for the car is decided in `resolve.rs`; here is only its shape and its help.

use clap::{Parser, Subcommand, ValueEnum};

/// One line, without a program name in front.
#[derive(Parser)]
#[command(no_binary_name = true, disable_help_flag = true, disable_help_subcommand = true)]
pub(super) struct Line {
    /// The word.
    #[command(subcommand)]
    pub(super) word: Word,
}

/// On or off, in the words people use.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum OnOff {
    #[value(alias = "in", alias = "yes", alias = "fitted", alias = "put")]
    On,
    #[value(alias = "out", alias = "no", alias = "away")]
    Off,
}

/// What the engine can be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum EngineWord {
    /// Warm idle (starts the engine when it stands)
    #[value(alias = "start", alias = "on", alias = "warm", alias = "run")]
    Idle,
    /// Fast idle of a cold engine
    #[value(alias = "cold-idle", alias = "fast")]
    Cold,
    /// Steady speed, light throttle
    Cruise,
    /// Throttle closed at speed
    Overrun,
    /// Throttle wide open
    #[value(alias = "wide-open", alias = "wide", alias = "full")]
    Open,
    /// Engine off
    #[value(alias = "off", alias = "stopped")]
    Stop,
}

/// Settings of a multimeter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum MeterWord {
    #[value(alias = "v", alias = "volts", alias = "voltage", alias = "dcv")]
    Volt,
    #[value(alias = "ohms", alias = "r", alias = "resistance", alias = "continuity")]
    Ohm,
    /// Amperes through the fused socket
    #[value(alias = "amps", alias = "a", alias = "ampere", alias = "current")]
    Amp,
    Off,
}

/// What the stopwatch times.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum TimeWord {
    /// From now (or the next start) until the pump stops
    #[value(alias = "running", alias = "pump-run")]
    Run,
    /// From now (or the next stop) until the pump starts again
    #[value(alias = "resting", alias = "pump-rest", alias = "pause")]
    Rest,
}

/// What a foot feels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum FeelWord {
    /// How far down the held pedal stands
    #[value(alias = "travel")]
    Pedal,
    /// How the held pedal moved when the engine was last started or stopped
    #[value(alias = "drop", alias = "rise", alias = "movement")]
    Moved,
    /// How many assisted applications the last pumping gave
    #[value(alias = "assist", alias = "reserve", alias = "count")]
    Applications,
}

/// Every word of the workshop.
#[derive(Subcommand)]
pub(super) enum Word {
    // ---- paper -------------------------------------------------------------------------------------
    /// Read the job card: what the customer said, and the cautions
    #[command(alias = "job", after_help = "Example: card")]
    Card,
    /// Read the car's data sheet: limits, switching points, altitude note
    #[command(alias = "limits", alias = "data", after_help = "Example: sheet")]
    Sheet,

    // ---- states that last --------------------------------------------------------------------------
    /// Put the wheel chocks, or take them away
    #[command(alias = "chock", after_help = "Examples: chocks on · chocks off")]
    Chocks {
        /// on or off
        #[arg(default_value = "on")]
        state: OnOff,
    },
    /// Hang the exhaust extraction on the tail pipe, or back on the wall
    #[command(
        alias = "exhaust",
        alias = "extractor",
        after_help = "Examples: extraction on · extraction off\nBefore an engine runs indoors; off before you drive."
    )]
    Extraction {
        /// on or off
        #[arg(default_value = "on")]
        state: OnOff,
    },
    /// Turn the ignition key (on = position 15, the engine need not run)
    #[command(alias = "ignition", after_help = "Examples: key on · key off")]
    Key {
        /// on or off
        state: OnOff,
    },
    /// Start, run or stop the engine
    #[command(after_help = "Examples: engine idle · engine stop\nNeeds the key on.")]
    Engine {
        /// idle (warm), cold, cruise, overrun, open, stop
        state: EngineWord,
    },
    /// Press, prop, release or pump the brake pedal
    #[command(
        alias = "brake",
        after_help = "Examples:\n  pedal press 200     hold it down by foot with 200 N (you stay in the seat)\n  \
                      pedal prop 150      hold it with the prop, so that you can walk away\n  \
                      pedal release\n  pedal pump 5        five applications of 120 N, a firm stop\n  pedal pump 5 300    five of 300 N"
    )]
    Pedal {
        /// press, prop, release, pump
        what: PedalWord,
        /// Force in N; for pump: how many times, then the force
        #[arg(allow_hyphen_values = true)]
        numbers: Vec<String>,
    },

    // ---- hands on the car --------------------------------------------------------------------------
    /// Take a cover off or put it back
    #[command(alias = "covers", after_help = "Examples: cover <cover> off · cover <cover> on")]
    Cover {
        /// The cover, then on or off
        #[arg(required = true)]
        words: Vec<String>,
    },
    /// Open a joint: pull a hose off, unplug a connector, undo a terminal
    #[command(
        alias = "disconnect",
        alias = "undo",
        alias = "unjoin",
        after_help = "Examples: open <joint> · open <hose>.b\nThe word car shows all joints. Pump the pedal empty \
                      before you open an air joint."
    )]
    Open {
        /// A joint, or a port that belongs to just one joint
        joint: String,
    },
    /// Make a joint again
    #[command(
        alias = "make",
        alias = "connect",
        alias = "reconnect",
        alias = "close",
        after_help = "Example: join <joint>"
    )]
    Join {
        /// A joint, or a port that belongs to just one joint
        #[arg(required = true)]
        words: Vec<String>,
    },
    /// Put a rubber plug on an open port
    #[command(after_help = "Example: plug <branch_3>   (after opening its joint)")]
    Plug {
        /// The port: part.port
        port: String,
    },
    /// Squeeze a rubber hose shut beside a port with a hose clamp
    #[command(after_help = "Example: clamp <hose>.a\nRubber only: a clamp cracks hard pipe.")]
    Clamp {
        /// The port: part.port
        port: String,
    },
    /// Take a plug or a clamp away
    #[command(alias = "unclamp", alias = "unstop", after_help = "Example: free <hose>.a")]
    Free {
        /// The port: part.port
        port: String,
    },
    /// Unplug a connector (like open), or take a plug out of a port (like free)
    #[command(after_help = "Examples: unplug <plug> · unplug <branch_3>")]
    Unplug {
        /// A joint or a plugged port
        name: String,
    },
    /// Pull a plug-in unit (relay, fuse) out of its socket
    #[command(after_help = "Examples: pull relay · pull fuse")]
    Pull {
        /// The unit
        unit: String,
    },
    /// Push a plug-in unit (relay, fuse) back into its socket
    #[command(alias = "insert", after_help = "Example: push relay")]
    Push {
        /// The unit
        unit: String,
    },
    /// Replace a unit with a spare from the store
    #[command(
        alias = "replace",
        alias = "change",
        after_help = "Examples: swap <unit> with <spare> · swap <unit>\nThe word store shows the spares \
                      and their prices. A part you throw away costs, also when it was good."
    )]
    Swap {
        /// The unit, then (with) the spare
        #[arg(required = true)]
        words: Vec<String>,
    },
    /// Clean a unit: contacts, earth points, valve seats
    #[command(after_help = "Example: clean <cleaned>")]
    Clean {
        /// The unit
        unit: String,
    },
    /// Re-form a hose with hot air so that its bend fits again (a makeshift)
    #[command(alias = "re-form", after_help = "Example: reform <bend>")]
    Reform {
        /// The hose unit
        unit: String,
    },

    // ---- instruments -------------------------------------------------------------------------------
    /// Connect an instrument
    #[command(
        alias = "attach",
        alias = "refit",
        after_help = "Examples:\n  fit gauge <branch>                      tees in beside a joint, or sits on an open port\n  \
                      fit handpump <booster>\n  fit meter red=<live> black=<earth>    or: fit meter <live> <earth>\n  \
                      fit lamp <plus> <coil>\n  fit infrared <pump>                     point the infrared thermometer\n\
                      The word tools shows the instruments, the word car shows the ports."
    )]
    Fit {
        /// The instrument, then where its ends go
        #[arg(required = true)]
        words: Vec<String>,
    },
    /// Take an instrument off and put it back on the board
    #[command(
        alias = "unfit",
        alias = "detach",
        alias = "remove",
        after_help = "Examples: take gauge · take meter off"
    )]
    Take {
        /// The instrument
        #[arg(required = true)]
        words: Vec<String>,
    },
    /// Set the multimeter: volt, ohm (dead circuits only), amp (through its fuse), off
    #[command(after_help = "Examples: meter volt · meter ohm · meter amp · meter off")]
    Meter {
        /// volt, ohm, amp, off
        mode: MeterWord,
        /// Which meter, if there are several
        instrument: Option<String>,
    },
    /// Hold down the button of the push-button lead, or the release lever of the hand pump
    #[command(
        alias = "hold",
        after_help = "Examples: press button · press handpump (air goes in slowly)\nFor the brake pedal say: pedal press 200."
    )]
    Press {
        /// The instrument
        instrument: String,
    },
    /// Let go of the button or the release lever
    #[command(alias = "letgo", alias = "let-go", after_help = "Example: let button")]
    Let {
        /// The instrument
        #[arg(required = true)]
        words: Vec<String>,
    },
    /// Stroke the hand pump
    #[command(alias = "strokes", after_help = "Example: stroke handpump 10")]
    Stroke {
        /// The instrument and the number of strokes
        #[arg(required = true, allow_hyphen_values = true)]
        words: Vec<String>,
    },
    /// Read an instrument: a dial, a display, the barometer on the wall
    #[command(
        after_help = "Examples: read gauge · read meter · read barometer\nA reading counts only when you note it."
    )]
    Read {
        /// The instrument
        instrument: String,
    },

    // ---- senses ------------------------------------------------------------------------------------
    /// Listen for a hiss at a part through the listening tube
    #[command(
        after_help = "Example: hiss <hose>\n\nA hiss is air going in from the room: it needs vacuum in the store and a \
                      hole\nthat is not too small, and air that goes from one part to another inside is not heard.\n\
                      Nothing heard is therefore weak evidence."
    )]
    Hiss {
        /// The part
        part: String,
    },
    /// Listen whether the pump runs
    #[command(alias = "listen", after_help = "Example: hum")]
    Hum,
    /// Touch a part and feel how warm it is
    #[command(after_help = "Example: touch <pump>")]
    Touch {
        /// The part
        part: String,
    },
    /// Feel the brake pedal
    #[command(
        after_help = "Examples:\n  feel pedal           how far down the held pedal stands\n  feel moved           how it \
                      moved when the engine was last started or stopped\n  feel applications    how many assisted \
                      applications the last pumping gave"
    )]
    Feel {
        /// pedal, moved, applications
        what: FeelWord,
    },
    /// Look around; or look at a part, a lamp, or over the base brakes
    #[command(
        after_help = "Examples:\n  look           what is open, fitted and switched on (free)\n  look <hose>    where it \
                      is, what it is made of and joined to (free)\n  look lamp      does it glow?\n  look brakes    fluid level, hoses, discs and pads, firmness without assist"
    )]
    Look {
        /// Nothing, a part, a lamp, or brakes
        what: Option<String>,
    },
    /// Look over the base brakes: fluid, hoses, discs, pads, firmness without assist
    #[command(alias = "base-brakes", alias = "fluid", after_help = "Example: brakes")]
    Brakes,
    /// Drive slowly in the yard and brake
    #[command(
        alias = "yard",
        after_help = "Example: drive   (chocks away, engine idling, everything joined)"
    )]
    Drive,

    // ---- time --------------------------------------------------------------------------------------
    /// Time the pump with the stopwatch; you may give the longest time you will wait, in seconds
    #[command(alias = "stopwatch", after_help = "Examples: time run 120 · time rest 900 · time rest 30min")]
    Time {
        /// run or rest
        what: TimeWord,
        /// Longest time to wait
        #[arg(allow_hyphen_values = true)]
        max: Option<String>,
    },
    /// Wait a while, or until something can be heard or seen
    #[command(
        after_help = "Examples:\n  wait 30\n  wait 10min\n  wait until pump stops 120     give up after 120 s\n  \
                      wait until pump starts\n  wait until lamp out"
    )]
    Wait {
        /// A time; or until, what, and the longest time
        #[arg(required = true, allow_hyphen_values = true)]
        words: Vec<String>,
    },
    /// Leave the car standing overnight: 12 hours, key and engine off
    #[command(alias = "night", after_help = "Example: overnight")]
    Overnight,

    // ---- paper again -------------------------------------------------------------------------------
    /// Write a reading into the notebook: only what is noted counts
    #[command(
        after_help = "Examples:\n  note -58 kPa                  the last reading, with its unit and sign\n  \
                      note 7 100.6 kPa for day       reading 7, for the line day of the record\n  \
                      note                          the last reading, when it was felt, heard or seen\n  \
                      note for drop                 the same, for a line of the record\n\
                      The word list shows what you have not noted, the word record shows the lines.\n\
                      In scripts: note shown [for LINE] writes what was shown."
    )]
    Note {
        /// Number of the reading, value with unit, for line
        #[arg(allow_hyphen_values = true, trailing_var_arg = true)]
        words: Vec<String>,
    },
    /// Note a suspicion in your own words (never marked)
    #[command(after_help = "Example: suspect \"a leak at the booster\"")]
    Suspect {
        /// The text
        #[arg(required = true, allow_hyphen_values = true, trailing_var_arg = true)]
        words: Vec<String>,
    },
    /// Say what is wrong and how sure you are. The first finding is locked by the first repair
    #[command(
        alias = "find",
        after_help = "Examples:\n  finding <unit> sure 0.80\n  finding pump strap sure 0.60    both are outside their \
                      limits\n  finding none sure 0.80           everything is inside its limits\n  \
                      finding unknown                  not found: the car stays and is referred on\n\
                      Sure is 0.40, 0.60, 0.80 or 0.95. A wrong finding said too surely costs most.\n\
                      Where the school fixes how sure, leave it out."
    )]
    Finding {
        /// Units, then sure and a number
        #[arg(required = true)]
        words: Vec<String>,
    },
    /// Hand the car back to the customer: the job is over
    #[command(name = "hand", after_help = "Example: hand back   (after the release checks)")]
    Hand {
        /// back
        back: BackWord,
    },
    /// The same as hand back
    #[command(name = "handback", alias = "hand-back", hide = true)]
    HandBack,

    // ---- free of time ------------------------------------------------------------------------------
    /// Show the car: parts, ports and joints
    #[command(
        alias = "parts",
        alias = "ports",
        alias = "joints",
        alias = "diagram",
        after_help = "Example: car"
    )]
    Car,
    /// Show the instruments on the tool board
    #[command(alias = "board", alias = "instruments", after_help = "Examples: tools · tools gauge")]
    Tools {
        /// One of them
        instrument: Option<String>,
    },
    /// Show the spares in the store, and what can be cleaned or re-formed
    #[command(alias = "spares", alias = "units", after_help = "Example: store")]
    Store,
    /// Show the notebook
    #[command(alias = "notes", after_help = "Example: notebook")]
    Notebook,
    /// List the readings that are not in the notebook yet
    #[command(alias = "readings", after_help = "Example: list")]
    List,
    /// Show the lines of the record and which are filled
    #[command(after_help = "Example: record")]
    Record,
    /// Ask which test would tell most now; each time costs points
    #[command(alias = "hint", after_help = "Example: next")]
    Next,
    /// Show the mark sheet, after hand back
    #[command(after_help = "Example: mark")]
    Mark,
    /// Leave the workshop; the attempt is kept and can be carried on
    #[command(alias = "exit", alias = "bye", alias = "leave", after_help = "Example: quit")]
    Quit,
}

/// The one word that follows `hand`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum BackWord {
    #[value(alias = "over")]
    Back,
}

/// What a foot can do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum PedalWord {
    #[value(alias = "hold", alias = "down", alias = "foot")]
    Press,
    Prop,
    #[value(alias = "up", alias = "let", alias = "off")]
    Release,
    #[value(alias = "empty")]
    Pump,
}
