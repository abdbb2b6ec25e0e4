//! How much a file may hold: entries of every list, characters of every text.
//!
//! Without them a file of two megabytes loads well and then costs gigabytes or hours: every fault is a
//! hypothesis that each reading is weighed against, every name is looked up in every list. They are checked
//! before anything is computed from a list, are several times what our own files need, and stand in
//! `assets/KEYS.md`. A test asks that every list and every text of every block has one.

/// Longest list of faults in one answer of the checker; how many more there are is said.
pub(crate) const MOST_ERRORS: usize = 20;

/// Parts of a car. States and ports are limited besides by what can be computed.
pub(crate) const PARTS: usize = 200;
/// Joints of a car: every part has two ends, some have more.
pub(crate) const JOINTS: usize = 400;
/// Tolerances: each is drawn anew for every hypothesis.
pub(crate) const TOLERANCES: usize = 400;
/// Covers of a car.
pub(crate) const COVERS: usize = 40;
/// Repair units: each is a class of finding, a line of the chart on the sheet.
pub(crate) const UNITS_OF_CAR: usize = 100;
/// Parts of one repair unit.
pub(crate) const UNIT_PARTS: usize = 50;
/// Numbers that cleaning one unit sets back.
pub(crate) const UNIT_CLEANS: usize = 50;
/// Faults of a car: each is two hypotheses with some dozen draws, each of which is a car that is run through
/// the whole attempt when it is marked.
pub(crate) const FAULTS: usize = 200;
/// Lines of a data sheet: one has to find them.
pub(crate) const LIMITS: usize = 100;
/// Lines of the record: one has to fill them.
pub(crate) const RECORD: usize = 60;
/// Sentences of caution on a data sheet or a job card: nobody heeds more.
pub(crate) const CAUTIONS: usize = 30;
/// Places on a diagram: every part on two sheets.
pub(crate) const PLACES: usize = 400;
/// Earth points of a car body.
pub(crate) const POINTS: usize = 50;
/// Ways in a room: every hose and wire, every joint.
pub(crate) const WAYS: usize = PARTS + JOINTS;
/// Points of a way: a wire from nose to cab has ten.
pub(crate) const WAY_POINTS: usize = 60;
/// What else stands in a car.
pub(crate) const FIXTURES: usize = 100;
/// Ports of a part: its kind has six at most.
pub(crate) const PORTS: usize = 20;
/// Spares for a car.
pub(crate) const SPARES: usize = 400;
/// Numbers of a used spare.
pub(crate) const SPARE_PARAMS: usize = 50;
/// Tests of a car: each is run in many cars when one is chosen.
pub(crate) const TESTS: usize = 150;
/// Lines of one part of a test: nobody does more without a thought in between.
pub(crate) const TEST_LINES: usize = 60;
/// Instruments there are, are in a pack, are allowed in a job: the tool board shows them all.
pub(crate) const TOOLS: usize = 60;
/// Competences of a pack.
pub(crate) const COMPETENCES: usize = 60;
/// Jobs of a pack: the front desk reads them all.
pub(crate) const JOBS: usize = 100;
/// Paragraphs of a complaint or a debrief: a page.
pub(crate) const PARAGRAPHS: usize = 40;
/// Hidden faults of a job.
pub(crate) const HIDDEN: usize = 8;
/// Lines of what is measured: each is done in every car of every hypothesis.
pub(crate) const BENCH_LINES: usize = 100;
/// Packs in a data folder: the front desk reads them all.
pub(crate) const PACKS: usize = 200;
/// Cars in a data folder.
pub(crate) const CARS: usize = 200;

/// Characters of a name: it has to fit a line.
pub(crate) const NAME: usize = 120;
/// Characters of a sentence.
pub(crate) const SENTENCE: usize = 600;
/// Characters of a paragraph: most of a page.
pub(crate) const PARAGRAPH: usize = 4_000;
/// Characters of a short name, and of a name made of two (`part.param`).
pub(crate) const SHORT_NAME: usize = 60;
pub(crate) const SHORT_NAMES: usize = 2 * SHORT_NAME + 1;

/// Block, key, most entries.
pub(crate) const LISTS: &[(&str, &str, usize)] = &[
    ("Vehicle", "parts", PARTS),
    ("Vehicle", "joints", JOINTS),
    ("Vehicle", "tolerances", TOLERANCES),
    ("Vehicle", "covers", COVERS),
    ("Vehicle", "units", UNITS_OF_CAR),
    ("Vehicle", "faults", FAULTS),
    ("Vehicle", "limits", LIMITS),
    ("Vehicle", "record", RECORD),
    ("Vehicle", "cautions", CAUTIONS),
    ("Unit", "parts", UNIT_PARTS),
    ("Unit", "cleans", UNIT_CLEANS),
    ("Diagram", "places", PLACES),
    ("Place", "points", POINTS),
    ("Room", "parts", PARTS),
    ("Room", "ways", WAYS),
    ("Room", "covers", COVERS),
    ("Room", "fixtures", FIXTURES),
    ("Stand", "ports", PORTS),
    ("Way", "points", WAY_POINTS),
    ("Spares", "spares", SPARES),
    ("Spare", "params", SPARE_PARAMS),
    ("Tests", "tests", TESTS),
    ("Plan", "tests", TESTS),
    ("Test", "set_up", TEST_LINES),
    ("Test", "stimulus", TEST_LINES),
    ("Test", "readings", TEST_LINES),
    ("Test", "undo", TEST_LINES),
    ("Pack", "tools", TOOLS),
    ("Pack", "competences", COMPETENCES),
    ("Pack", "jobs", JOBS),
    ("Job", "complaint", PARAGRAPHS),
    ("Job", "hidden", HIDDEN),
    ("Job", "spares", SPARES),
    ("Job", "tools", TOOLS),
    ("Job", "hazards", CAUTIONS),
    ("Job", "debrief", PARAGRAPHS),
    ("Bench", "connected", BENCH_LINES),
    ("Bench", "attempt", BENCH_LINES),
];

/// Key (of any block), most characters of the text or of each text in the list, and whether it may have
/// several lines.
pub(crate) const TEXTS: &[(&str, usize, bool)] = &[
    ("name", NAME, false),
    ("title", NAME, false),
    ("label", NAME, false),
    ("author", NAME, false),
    ("licence", NAME, false),
    ("language", NAME, false),
    ("framework", NAME, false),
    ("edition", NAME, false),
    ("code", NAME, false),
    ("text", SENTENCE, false),
    ("help", SENTENCE, false),
    ("cautions", SENTENCE, false),
    ("hazards", SENTENCE, false),
    ("complaint", PARAGRAPH, true),
    ("debrief", PARAGRAPH, true),
    ("digest", NAME, false),
    ("scheme", SHORT_NAME, false),
    ("id", SHORT_NAME, false),
    ("test", SHORT_NAME, false),
    ("behind", SHORT_NAME, false),
    ("vehicle", SHORT_NAME, false),
    ("unit", SHORT_NAME, false),
    ("limit", SHORT_NAME, false),
    ("fault", SHORT_NAME, false),
    ("part", SHORT_NAME, false),
    ("port", SHORT_NAME, false),
    ("line", SHORT_NAME, false),
    ("cover", SHORT_NAME, false),
    ("a", SHORT_NAMES, false),
    ("b", SHORT_NAMES, false),
    ("param", SHORT_NAMES, false),
    ("cleans", SHORT_NAMES, false),
    ("parts", SHORT_NAME, false),
    ("points", SHORT_NAME, false),
    ("spares", SHORT_NAME, false),
    ("tools", SHORT_NAME, false),
    ("jobs", SHORT_NAME, false),
    ("reference", SHORT_NAMES, false),
    ("job", SHORT_NAMES, false),
    ("connected", SENTENCE, false),
    ("attempt", SENTENCE, false),
    ("set_up", SENTENCE, false),
    ("stimulus", SENTENCE, false),
    ("readings", SENTENCE, false),
    ("undo", SENTENCE, false),
];

/// Most entries of the list `key` of `block`.
pub(crate) fn of_list(block: &str, key: &str) -> Option<usize> {
    LISTS.iter().find(|(b, k, _)| *b == block && *k == key).map(|(.., most)| *most)
}

/// Most characters of the text `key`, and whether it may have several lines.
pub(crate) fn of_text(key: &str) -> Option<(usize, bool)> {
    TEXTS.iter().find(|(k, ..)| *k == key).map(|(_, most, lines)| (*most, *lines))
}
