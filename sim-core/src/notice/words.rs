//! Words that stand in gaps.

use super::table::words;

words! {
    /// A state of something.
    pub enum Word {
        /// On.
        On => "on",
        /// Off.
        Off => "off",
        /// Open.
        Open => "open",
        /// Made.
        Made => "made",
        /// Somebody undid it.
        Undid => "undid",
        /// Pulled out.
        PulledOut => "pulled-out",
        /// In place.
        InPlace => "in-place",
        /// A plug.
        Plug => "plug",
        /// A clamp.
        Clamp => "clamp",
        /// Of a meter: volts.
        Volts => "volts",
        /// Of a meter: ohms.
        Ohms => "ohms",
        /// Of a meter: amperes.
        Amperes => "amperes",
    }
}

words! {
    /// A sort of thing that a name was looked up among.
    pub enum Sort {
        /// Parts.
        Part => "sort-part",
        /// Parts that have ports.
        PartWithPorts => "sort-part-with-ports",
        /// Ports.
        Port => "sort-port",
        /// Joints.
        Joint => "sort-joint",
        /// Instruments.
        Instrument => "sort-instrument",
        /// Repair units.
        Unit => "sort-repair-unit",
        /// Covers.
        Cover => "sort-cover",
        /// Spares.
        Spare => "sort-spare",
        /// Lines of the record.
        RecordLine => "sort-record-line",
    }
}

words! {
    /// A number that an action takes.
    pub enum Quantity {
        /// Strokes of the hand pump.
        Strokes => "number-of-strokes",
        /// Force on the pedal, N.
        PedalForce => "pedal-force-in-n",
        /// Applications of the brake.
        Applications => "number-of-applications",
        /// Longest wait, s.
        LongestWait => "longest-time-to-wait-in-s",
        /// Wait, s.
        Wait => "time-to-wait-in-s",
    }
}

words! {
    /// A tool that an action needs.
    pub enum Tool {
        /// Rubber plugs.
        Plug => "rubber-plug",
        /// Hose clamps.
        Clamp => "hose-clamp",
        /// The pedal prop.
        Prop => "pedal-prop",
        /// A stopwatch.
        Stopwatch => "stopwatch",
    }
}
