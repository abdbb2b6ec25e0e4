//! A test: what technicians think in, and a planner plans in.

use sim_core::action::{Action, Sense};
use sim_core::instrument::InstrumentCard;
use sim_core::notice::Tool;

use crate::words;

/// What a test is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename = "TestKind", rename_all = "snake_case")]
pub enum Kind {
    /// The day, and what the customer would notice: pedal, assist, reserve.
    Condition,
    /// Pressures of air, and times.
    Air,
    /// Volts, amperes, ohms; the pump with this or that unplugged.
    Electric,
    /// Heard.
    ByEar,
    /// Looked at.
    ByEye,
}

impl Kind {
    /// All of them, in the order in which they are listed.
    pub const ALL: [Self; 5] = [Self::Condition, Self::Air, Self::Electric, Self::ByEar, Self::ByEye];
}

/// Part of a test.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    /// What has to be so before.
    SetUp,
    /// What is done to the car.
    Stimulus,
    /// What is looked at, and noted.
    Readings,
    /// What makes the car as it was.
    Undo,
}

impl Phase {
    /// In the order in which they come.
    pub const ALL: [Self; 4] = [Self::SetUp, Self::Stimulus, Self::Readings, Self::Undo];

    /// Its key in the file.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::SetUp => "set_up",
            Self::Stimulus => "stimulus",
            Self::Readings => "readings",
            Self::Undo => "undo",
        }
    }
}

/// What one line of a test does.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    /// Something in the workshop; never a note.
    Do(Action),
    /// A reading is noted as it was shown.
    Note {
        /// Which: the readings of the test are numbered from 1.
        reading: u32,
        /// For this line of the record.
        record: Option<String>,
    },
}

/// A line of a test.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What it does.
    pub step: Step,
    /// It may be refused (`try …`), by something that only the car knows; a note, because what it notes may be.
    pub may_be_refused: bool,
}

impl Line {
    /// As it is written in a script of the test alone.
    #[must_use]
    pub fn text(&self) -> String {
        self.text_after(0)
    }

    /// As it is written in a script in which so many readings were taken before the test.
    #[must_use]
    pub fn text_after(&self, readings: u32) -> String {
        let line = match &self.step {
            Step::Do(action) => words::say(action),
            Step::Note { reading, record: None } => format!("note {} shown", readings + reading),
            Step::Note { reading, record: Some(record) } => {
                format!("note {} shown for {record}", readings + reading)
            }
        };
        if self.may_be_refused { format!("try {line}") } else { line }
    }

    /// Whether it gives a reading, if it is not refused.
    #[must_use]
    pub fn reads(&self) -> bool {
        matches!(&self.step, Step::Do(Action::Read { .. } | Action::Sense(_) | Action::Time { .. }))
    }
}

/// What a test needs of car and tool board, besides what it looks at.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Access {
    /// Covers that come off.
    pub covers: Vec<String>,
    /// Joints that are opened.
    pub joints: Vec<String>,
    /// Units that are pulled.
    pub units: Vec<String>,
    /// Instruments that are fitted, read or worked.
    pub instruments: Vec<String>,
    /// Tools of which any will do.
    pub tools: Vec<Tool>,
}

impl Access {
    /// Takes down what an action needs.
    pub(crate) fn needs(&mut self, action: &Action) {
        fn put<T: PartialEq>(list: &mut Vec<T>, it: T) {
            if !list.contains(&it) {
                list.push(it);
            }
        }
        match action {
            Action::Cover { cover, off: true } => put(&mut self.covers, cover.clone()),
            Action::OpenJoint { joint } => put(&mut self.joints, joint.clone()),
            Action::PullUnit { unit } => put(&mut self.units, unit.clone()),
            Action::SetStop { stop: Some(stop), .. } => put(
                &mut self.tools,
                match stop {
                    sim_core::assembly::Stop::Plug => Tool::Plug,
                    sim_core::assembly::Stop::Clamp => Tool::Clamp,
                },
            ),
            Action::Pedal(sim_core::action::PedalHold::Prop { .. }) => put(&mut self.tools, Tool::Prop),
            Action::Time { .. } => put(&mut self.tools, Tool::Stopwatch),
            Action::Fit { instrument, .. }
            | Action::Read { instrument }
            | Action::Stroke { instrument, .. }
            | Action::Press { instrument, .. }
            | Action::SetMeter { instrument, .. }
            | Action::Sense(Sense::Lamp { instrument }) => put(&mut self.instruments, instrument.clone()),
            Action::ReadCard
            | Action::ReadSheet
            | Action::Chocks(_)
            | Action::Extraction(_)
            | Action::Key(_)
            | Action::Engine(_)
            | Action::Pedal(_)
            | Action::PumpPedal { .. }
            | Action::Cover { .. }
            | Action::MakeJoint { .. }
            | Action::SetStop { .. }
            | Action::PushUnit { .. }
            | Action::Unfit { .. }
            | Action::Swap { .. }
            | Action::Clean { .. }
            | Action::Reform { .. }
            | Action::Sense(_)
            | Action::Wait { .. }
            | Action::WaitUntil { .. }
            | Action::Overnight
            | Action::Note { .. }
            | Action::Suspect { .. }
            | Action::Finding { .. }
            | Action::HandBack => {}
        }
    }

    /// What a tool board lacks for it: instruments by short name, then tools.
    #[must_use]
    pub fn lacks(&self, kit: &[InstrumentCard]) -> (Vec<String>, Vec<Tool>) {
        let there = |id: &&String| !kit.iter().any(|card| card.id == **id);
        let any = |tool: &&Tool| card_for(kit, **tool).is_none();
        (
            self.instruments.iter().filter(there).cloned().collect(),
            self.tools.iter().filter(any).copied().collect(),
        )
    }
}

/// The instrument of a tool board that does for a tool.
#[must_use]
pub fn card_for(kit: &[InstrumentCard], tool: Tool) -> Option<&InstrumentCard> {
    use sim_core::instrument::{Held, Measured};
    kit.iter().find(|card| {
        let nature = card.kind.nature();
        match tool {
            Tool::Plug => nature.held == Held::InOpening,
            Tool::Clamp => nature.held == Held::OverHose,
            Tool::Prop => nature.held == Held::OnPedal,
            Tool::Stopwatch => matches!(nature.measured, Measured::Time { .. }),
        }
    })
}

/// A test of a car. Checked: done by itself in a car as it came in, it leaves that car as it was.
#[derive(Clone, Debug, PartialEq)]
pub struct Test {
    /// Short name, unique in the car.
    pub id: String,
    /// Name in words.
    pub name: String,
    /// What it is about.
    pub kind: Kind,
    /// What has to be so before.
    pub set_up: Vec<Line>,
    /// What is done to the car.
    pub stimulus: Vec<Line>,
    /// What is looked at and noted; one note at least.
    pub readings: Vec<Line>,
    /// What makes the car as it was.
    pub undo: Vec<Line>,
    /// What it needs, taken from its lines.
    pub access: Access,
}

impl Test {
    /// The lines of a part of it.
    #[must_use]
    pub fn lines_of(&self, phase: Phase) -> &[Line] {
        match phase {
            Phase::SetUp => &self.set_up,
            Phase::Stimulus => &self.stimulus,
            Phase::Readings => &self.readings,
            Phase::Undo => &self.undo,
        }
    }

    /// All its lines, each with the part of the test that it belongs to.
    pub fn lines(&self) -> impl Iterator<Item = (Phase, &Line)> {
        Phase::ALL.into_iter().flat_map(|phase| self.lines_of(phase).iter().map(move |line| (phase, line)))
    }

    /// Whether a tool board has all that it needs.
    #[must_use]
    pub fn fits(&self, kit: &[InstrumentCard]) -> bool {
        let (instruments, tools) = self.access.lacks(kit);
        instruments.is_empty() && tools.is_empty()
    }

    /// The lines as a script.
    #[must_use]
    pub fn script(&self) -> String {
        self.lines().fold(String::new(), |script, (_, line)| script + &line.text() + "\n")
    }
}
