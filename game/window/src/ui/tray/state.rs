//! What the tray remembers, and which instruments it therefore shows.

use std::collections::{BTreeMap, BTreeSet};

use egui::{Pos2, Rect};
use sim_core::instrument::{Measured, ReadFrom, Worked};
use sim_core::observe::Observed;
use sim_core::workshop::View;

use super::super::super::shown::Middle;
use front::shop::Shop;

/// What the tray shows beside the time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Page {
    InUse,
    Board,
}

/// State of the panel.
#[derive(Debug, Default)]
pub struct State {
    /// Chosen page; `None`: the board as long as nothing is in use.
    pub(super) page: Option<Page>,
    /// The drawer of a low window, opened or shut by hand.
    pub(super) open: Option<bool>,
    /// Instruments on the wall are shown.
    pub wall: bool,
    /// Tools without ends that lie in the tray (stopwatch, rule), by index into the kit.
    pub(super) laid: BTreeSet<u16>,
    /// What was connected when the tray was last drawn: something new is brought into view.
    pub(super) connected: Vec<u16>,
    /// Where each card is on the screen.
    pub(super) cards: BTreeMap<u16, Rect>,
    /// Where the time's menus open.
    pub clock_at: Option<Pos2>,
    /// What the tray leaves between the bars: room, diagram or both. Banner and captions stand in it.
    pub middle: Option<Rect>,
    /// The reading that shall be noted: the clipboard takes it.
    pub to_note: Option<u32>,
}

impl State {
    /// Turns from the instruments to the board and back.
    pub fn turn_page(&mut self, shop: &Shop) {
        let now = self.shown(shop);
        self.page = Some(if now == Page::Board { Page::InUse } else { Page::Board });
        self.open = Some(true);
    }

    /// Where the card of an instrument is, for menus and notes.
    #[must_use]
    pub fn card_at(&self, card: u16) -> Option<Pos2> {
        self.cards.get(&card).map(Rect::center_top)
    }

    pub(super) fn is_open(&self, middle: Middle) -> bool {
        self.open.unwrap_or(middle == Middle::Room)
    }

    pub(super) fn shown(&self, shop: &Shop) -> Page {
        let any = !in_use(shop, self).is_empty();
        self.page.unwrap_or(if any { Page::InUse } else { Page::Board })
    }
}

/// Instruments that have a card in the tray, in kit order: what is connected first.
pub(super) fn in_use(shop: &Shop, state: &State) -> Vec<u16> {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return Vec::new() };
    let kit = &session.workshop().setup().kit;
    let connected = connected(view);
    let mut out = connected.clone();
    for (i, c) in kit.iter().enumerate() {
        let card = i as u16;
        let nature = c.kind.nature();
        let wanted = if nature.read_from == ReadFrom::Wall {
            state.wall
        } else if let Measured::Time { .. } = nature.measured {
            // A stopwatch that has timed something shows it.
            state.laid.contains(&card)
                || view.readings.iter().any(|r| matches!(r.what, Observed::Interval { .. }))
        } else if nature.worked == Worked::Set {
            // A meter that is switched on is in use, its leads on or off.
            view.instruments.get(i).is_some_and(|v| v.mode.is_some_and(|m| m != Default::default()))
        } else {
            state.laid.contains(&card)
        };
        if wanted && !connected.contains(&card) {
            out.push(card);
        }
    }
    out
}

pub(super) fn connected(view: &View) -> Vec<u16> {
    view.instruments.iter().enumerate().filter(|(_, i)| !i.at.is_empty()).map(|(i, _)| i as u16).collect()
}
