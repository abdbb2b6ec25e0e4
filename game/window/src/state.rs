//! What the window remembers that is no part of the workshop: which page is open, where the eye stands,
//! what is picked. Losing it loses nothing.

use egui::{Pos2, Rect};
use sim_core::action::Station;

use super::marks::Marks;
use super::shown::{Middle, Page, Placing, RoomSeen};
use super::ui::clipboard::state::State as Clipboard;
use super::ui::diagram::state::State as Board;
use super::ui::hotspots::state::State as Hotspots;
use super::ui::keys::state::State as Pages;
use super::ui::mark_sheet::state::State as Sheet;
use super::ui::menu::state::State as Menus;
use super::ui::remarks::state::State as Remarks;
use super::ui::settings::state::State as Settings;
use super::ui::tray::state::State as Tray;
use front::ask::Ask;
use front::hands::{Carry, Form, Thing};
use front::prefs::Prefs;

/// A menu at a thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Menu {
    /// What it is about.
    pub thing: Thing,
    /// Where it opened.
    pub at: Pos2,
    /// A number is asked for.
    pub form: Option<OpenForm>,
    /// It opened in this frame; a click that opened it must not close it.
    pub fresh: bool,
    /// A letter opened it: the focus rests on its title, and Return does nothing before one has gone to a
    /// line or a field.
    pub neutral: bool,
}

/// A form with its numbers so far.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OpenForm {
    /// What is asked.
    pub form: Form,
    /// First number: force in N, strokes, minutes.
    pub first: f64,
    /// Second number: times, seconds.
    pub second: f64,
    /// The field that the number pad writes into, 0 the one on top.
    pub field: usize,
    /// The pad has begun a number there: further digits go behind it.
    pub begun: bool,
}

/// What the window remembers.
#[derive(Debug, Default)]
pub struct Ui {
    /// Page.
    pub page: Page,
    /// Page to go back to from the settings.
    pub back_to: Page,
    /// Middle of the workshop.
    pub middle: Middle,
    /// Station the eye is at; follows the trainee when an action walks, and can look elsewhere.
    pub eye: Station,
    /// What the pointer or the focus is on.
    pub hover: Option<Thing>,
    /// Open menu.
    pub menu: Option<Menu>,
    /// Instrument in the hand.
    pub carrying: Option<Carry>,
    /// Where things are on the screen: written by room and diagram, read by the tray (lines to where the
    /// ends are) and by the keyboard (where a menu opens).
    pub marks: Marks,
    /// Closed lines round what is pointed at in the room, where they are laid over its picture.
    pub outline: Vec<Vec<Pos2>>,
    /// What the panels leave of the window: the room, and its picking.
    pub scene: Option<Rect>,
    /// The picture of the room that belongs there, when one has been drawn.
    pub room_picture: Option<egui::TextureId>,
    /// How much of the room that picture shows.
    pub room_seen: RoomSeen,
    /// How the car in it got its places.
    pub room_placing: Placing,
    /// What room and hotspots tell each other.
    pub hotspots: Hotspots,
    /// Settings.
    pub prefs: Prefs,
    /// What is asked for in this frame.
    pub asks: Vec<Ask>,
    /// State of the clipboard.
    pub clipboard: Clipboard,
    /// State of the tray and time control.
    pub tray: Tray,
    /// State of the line diagram.
    pub diagram: Board,
    /// State of the mark sheet.
    pub mark_sheet: Sheet,
    /// What the menus remember: chosen line, refusal, where the focus was.
    pub menus: Menus,
    /// Pages that a key opens: list of things, keys.
    pub pages: Pages,
    /// Which remarks have been seen, and for how long.
    pub remarks: Remarks,
    /// State of the settings.
    pub settings: Settings,
    /// The settings were changed: keep them.
    pub save_prefs: bool,
    /// The language was changed: read the words anew.
    pub reload_words: bool,
    /// A file that shall be shown by the program that the system has for it.
    pub open_file: Option<std::path::PathBuf>,
    /// Leave the program.
    pub quit: bool,
}

impl Ui {
    /// Opens the menu of `thing` at a place on the screen.
    pub fn open_menu(&mut self, thing: Thing, at: Pos2) {
        self.menu = Some(Menu { thing, at, form: None, fresh: true, neutral: false });
    }

    /// Lets the menu that was opened in this frame begin at its title: a letter opened it.
    pub fn begin_at_title(&mut self) {
        if let Some(menu) = &mut self.menu {
            menu.neutral = true;
        }
    }

    /// Asks for something.
    pub fn ask(&mut self, ask: Ask) {
        self.asks.push(ask);
    }
}
