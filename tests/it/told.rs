//! What the program tells, in its own English.

use assess::locale::{Locale, Naming, Speech};
use assess::marks::Evaluation;
use assess::marks::sheet::MarkSheet;
use sim_core::notice::Told;
use sim_core::workshop::Workshop;

/// The English that is in the program.
pub(crate) fn english() -> Locale {
    Locale::built_in()
}

/// The mark sheet in English, as other programs get it.
pub(crate) fn sheet(evaluation: Evaluation) -> MarkSheet {
    evaluation.sheet(&english(), Naming::Typed)
}

/// A notice in English, things named as they are typed.
pub(crate) fn said(workshop: &Workshop, told: &dyn Told) -> String {
    Speech::at(&english(), workshop.setup(), Naming::Typed).tell(told)
}
