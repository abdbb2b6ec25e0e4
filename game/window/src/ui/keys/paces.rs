//! The keys of the time.

use egui::Key;

use front::ask::Pace;

/// Keys of the pace, with the name that is shown beside it.
pub const PACES: [(Key, Pace); 4] =
    [(Key::F5, Pace::Hold), (Key::F6, Pace::Live), (Key::F7, Pace::Ten), (Key::F8, Pace::Sixty)];
