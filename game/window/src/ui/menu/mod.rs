//! The menu at a thing: what hands can do with it.
//!
//! It opens beside the thing and never over it. Lines are chosen by pointer, by their key (1 to 9, then
//! letters), or with the arrows and Return; Escape closes it and the focus goes back where it was.

mod form;
mod note;
pub mod state;

use egui::{Align2, EventFilter, Id, Key, Modifiers, Order, Pos2, Rect, RichText, WidgetInfo, WidgetType};

use super::super::state::{Menu, Ui};
use super::super::theme;
pub use form::{action as form_action, open as open_form};
use front::ask::Ask;
use front::hands::{Form, Offer, Then, Thing, can_take, offers};
use front::shop::Shop;
use front::words::Words;

/// Widest a menu gets, points.
const WIDTH: f32 = 320.0;
/// What of the window's height the list leaves for the menu's title and frame, points.
const AROUND: f32 = 90.0;
/// Highest the list of lines gets before it scrolls, points.
const HEIGHT: f32 = 420.0;
/// How far beside its thing a menu opens.
const BESIDE: f32 = 22.0;

/// Opens the menu of `thing` with one of its lists of further lines open.
pub fn open_further(ui: &mut Ui, thing: Thing, at: Pos2, key: &'static str) {
    ui.menus.wanted = Some(key);
    ui.open_menu(thing, at);
}

/// Does what an offer says, where it is shown without a menu: a button of the tray, a key. `at` is where
/// a form or a refusal then appears.
pub fn act(shop: &Shop, ui: &mut Ui, thing: Thing, at: Pos2, then: Then) {
    let menu = Menu { thing, at, form: None, fresh: true, neutral: false };
    take(shop, ui, menu, then, None);
}

/// Where something at most `width` wide stands beside `at` without covering it, and how wide it gets there.
pub(super) fn beside(screen: Rect, at: Pos2, width: f32) -> (Pos2, Align2, f32) {
    /// What a frame adds on both sides, and a little air.
    const FRAME: f32 = 24.0;
    /// Narrower than this no line can be read.
    const NARROWEST: f32 = 160.0;
    let right = screen.right() - at.x - BESIDE - FRAME;
    let left = at.x - screen.left() - BESIDE - FRAME;
    if width <= right || left <= right {
        (at + egui::vec2(BESIDE, 0.0), Align2::LEFT_CENTER, width.min(right.max(NARROWEST)))
    } else {
        (at - egui::vec2(BESIDE, 0.0), Align2::RIGHT_CENTER, width.min(left.max(NARROWEST)))
    }
}

/// The lines of the open menu: of its thing, or of the list of further lines that is open.
fn lines(shop: &Shop, ui: &Ui, thing: Thing) -> Vec<Offer> {
    let all = offers(shop, ui.carrying.as_ref(), thing);
    let Some(key) = ui.menus.further else { return all };
    let further = all.iter().find(|o| o.key == key);
    match further.map(|o| &o.then) {
        Some(Then::More(lines)) => lines.clone(),
        _ => all,
    }
}

/// Shows the open menu, if one is, and the note of a refusal.
pub fn show(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    note::settle(shop, ui);
    let Some(mut menu) = ui.menu.take() else {
        ui.menus.trail.clear();
        note::show(ctx, shop, words, ui);
        return;
    };
    if menu.fresh {
        ui.menus.note = None;
        ui.menus.further = ui.menus.wanted.take();
        if ui.menus.focus.is_none() {
            ui.menus.focus = Some(focused(ctx));
        }
    }
    let list = lines(shop, ui, menu.thing);
    let over = shop.view().is_some_and(|v| v.handed_back);
    if list.is_empty() && !over {
        give_back_focus(ctx, ui);
        return;
    }
    let mut taken: Option<(Then, Option<&'static str>)> = None;
    let mut close = !menu.fresh && ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
    let title = words.name(shop, menu.thing);
    let (pos, pivot, width) = beside(ctx.content_rect(), menu.at, WIDTH);
    let area = egui::Area::new("thing-menu".into())
        .order(Order::Foreground)
        .fixed_pos(pos)
        .pivot(pivot)
        .constrain(true)
        .show(ctx, |area| {
            egui::Frame::menu(area.style()).stroke(egui::Stroke::new(1.5, theme::ACCENT)).show(
                area,
                |inner| {
                    inner.set_width(width);
                    let heading = inner.add(egui::Label::new(RichText::new(&title).strong()).wrap());
                    let begins = menu.neutral.then(|| rest(inner, words, &heading, &title, menu.fresh));
                    inner.separator();
                    match &mut menu.form {
                        Some(open) => match form::show(inner, shop, words, open, menu.fresh, begins) {
                            form::Filled::Yes(action) => taken = Some((Then::Do(action), None)),
                            form::Filled::Leave => close = true,
                            form::Filled::No => {}
                        },
                        // After the hand-back one can still look, and is told that this is all.
                        None if list.is_empty() => {
                            inner.add(egui::Label::new(words.say("menu-over")).wrap());
                        }
                        None => taken = list_ui(inner, shop, words, &list, menu.fresh, begins),
                    }
                },
            );
        });
    let elsewhere = ctx.input(|i| i.pointer.any_pressed()) && !area.response.contains_pointer();
    if elsewhere && !menu.fresh {
        close = true;
    }
    let back = menu.form.is_none()
        && !menu.fresh
        && ctx.input_mut(|i| {
            i.consume_key(Modifiers::NONE, Key::Backspace) || i.consume_key(Modifiers::NONE, Key::ArrowLeft)
        });
    menu.fresh = false;
    match taken {
        Some((then, key)) => {
            take(shop, ui, menu, then, key);
            if ui.menu.is_none() {
                give_back_focus(ctx, ui);
            }
        }
        None if close => give_back_focus(ctx, ui),
        None if back => go_back(ui, menu),
        None => ui.menu = Some(menu),
    }
}

fn give_back_focus(ctx: &egui::Context, ui: &mut Ui) {
    ui.menus.trail.clear();
    ui.menus.further = None;
    if let Some(id) = ui.menus.focus.take() {
        refocus(ctx, id);
    }
}

/// What has the focus now: only what was on the screen in the last frame, and so will be again.
pub(super) fn focused(ctx: &egui::Context) -> Option<Id> {
    ctx.memory(|m| m.focused()).filter(|id| ctx.read_response(*id).is_some())
}

/// Gives the focus back to what had it before something opened over it. What is no longer there does not
/// get it: a focus on nothing is an error to screen readers.
pub(super) fn refocus(ctx: &egui::Context, id: Option<Id>) {
    ctx.memory_mut(|m| {
        if let Some(now) = m.focused() {
            m.surrender_focus(now);
        }
    });
    if let Some(id) = id.filter(|id| ctx.read_response(*id).is_some()) {
        ctx.memory_mut(|m| m.request_focus(id));
    }
}

/// One step back: out of a list of further lines, or to the thing one came from.
fn go_back(ui: &mut Ui, menu: Menu) {
    if ui.menus.further.take().is_some() {
        ui.menu = Some(Menu { fresh: true, ..menu });
    } else if let Some(thing) = ui.menus.trail.pop() {
        ui.menu = Some(Menu { thing, fresh: true, ..menu });
    } else {
        ui.menu = Some(menu);
    }
}

/// The key that chooses line `i`.
fn line_key(i: usize) -> Option<Key> {
    const KEYS: [Key; 9] =
        [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7, Key::Num8, Key::Num9];
    const LETTERS: [Key; 12] =
        [Key::A, Key::B, Key::C, Key::D, Key::E, Key::F, Key::G, Key::H, Key::I, Key::J, Key::K, Key::L];
    KEYS.iter().chain(&LETTERS).nth(i).copied()
}

fn list_ui(
    inner: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    list: &[Offer],
    fresh: bool,
    begins: Option<Id>,
) -> Option<(Then, Option<&'static str>)> {
    let mut taken = None;
    let mut ids = Vec::new();
    // An area offers no more height than it had when it was last open: a long list would stay as low as the
    // short one before it.
    let height = HEIGHT.min(inner.ctx().content_rect().height() - AROUND);
    egui::ScrollArea::vertical().max_height(height).min_scrolled_height(height).show(inner, |inner| {
        inner.spacing_mut().item_spacing.y = 3.0;
        inner.with_layout(egui::Layout::top_down_justified(egui::Align::LEFT), |inner| {
            for (i, offer) in list.iter().enumerate() {
                if 0 < i && list[i - 1].group != offer.group {
                    inner.add(egui::Separator::default().spacing(5.0));
                }
                let response = line_ui(inner, shop, words, offer, i);
                ids.push(response.id);
                let by_key = !fresh
                    && line_key(i)
                        .is_some_and(|key| inner.input_mut(|input| input.consume_key(Modifiers::NONE, key)));
                if response.clicked() || by_key {
                    taken = Some((offer.then.clone(), Some(offer.key)));
                }
            }
        });
    });
    steer(inner.ctx(), &ids, fresh, begins);
    taken
}

fn line_ui(inner: &mut egui::Ui, shop: &Shop, words: &Words, offer: &Offer, i: usize) -> egui::Response {
    let name = words.offer(shop, offer);
    let opens = matches!(offer.then, Then::Turn(_) | Then::Form(_) | Then::More(_));
    let text = if opens { format!("{name} …") } else { name.clone() };
    let mut button = egui::Button::new(text).wrap().min_size(egui::vec2(0.0, theme::TARGET));
    if let Some(key) = line_key(i) {
        button = button.shortcut_text(RichText::new(key.name()).small().color(theme::INK_FAINT));
    }
    let response = inner.add(button);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
    response
}

/// The place where the focus rests in a menu that a letter opened: its title, with a word on how to go on.
/// Return and the space bar do nothing there.
fn rest(inner: &mut egui::Ui, words: &Words, heading: &egui::Response, title: &str, fresh: bool) -> Id {
    let place =
        inner.interact(heading.rect, heading.id.with("rest"), egui::Sense::focusable_noninteractive());
    let how = words.say("menu-neutral");
    let spoken = format!("{title}. {how}");
    place.widget_info(|| WidgetInfo::labeled(WidgetType::Label, true, &spoken));
    inner.add(egui::Label::new(RichText::new(how).small().color(theme::INK_FAINT)).wrap());
    if fresh {
        place.request_focus();
    } else if place.has_focus() {
        inner.painter().rect_stroke(
            place.rect.expand(2.0),
            2.0,
            egui::Stroke::new(1.5, theme::ACCENT),
            egui::StrokeKind::Outside,
        );
        inner.input_mut(|i| {
            i.consume_key(Modifiers::NONE, Key::Enter);
            i.consume_key(Modifiers::NONE, Key::Space);
        });
    }
    place.id
}

/// Arrows and Tab go through the lines and stay among them. `begins`: where the focus rests at first, if that
/// is not the first line.
fn steer(ctx: &egui::Context, ids: &[Id], fresh: bool, begins: Option<Id>) {
    let focused = ctx.memory(|m| m.focused());
    let here = focused.and_then(|id| ids.iter().position(|i| *i == id));
    if let (Some(begins), None) = (begins, here) {
        let filter = EventFilter { tab: true, vertical_arrows: true, horizontal_arrows: true, escape: true };
        ctx.memory_mut(|m| {
            m.request_focus(begins);
            m.set_focus_lock_filter(begins, filter);
        });
        let pressed = |modifiers, key| ctx.input_mut(|i| i.consume_key(modifiers, key));
        let up = pressed(Modifiers::SHIFT, Key::Tab)
            || pressed(Modifiers::NONE, Key::ArrowUp)
            || pressed(Modifiers::NONE, Key::End);
        let down = pressed(Modifiers::NONE, Key::Tab)
            || pressed(Modifiers::NONE, Key::ArrowDown)
            || pressed(Modifiers::NONE, Key::Home);
        let to = if up { ids.last() } else { ids.first().filter(|_| down) };
        if let Some(to) = to.filter(|_| !fresh) {
            ctx.memory_mut(|m| m.request_focus(*to));
        }
        return;
    }
    let Some(here) = here.filter(|_| !fresh) else {
        // Opened just now, or the focus strayed: begin at the first line.
        if let Some(first) = ids.first() {
            ctx.memory_mut(|m| m.request_focus(*first));
        }
        return;
    };
    let filter = EventFilter { tab: true, vertical_arrows: true, horizontal_arrows: true, escape: true };
    ctx.memory_mut(|m| m.set_focus_lock_filter(ids[here], filter));
    let pressed = |modifiers, key| ctx.input_mut(|i| i.consume_key(modifiers, key));
    let n = ids.len();
    let up = pressed(Modifiers::SHIFT, Key::Tab) || pressed(Modifiers::NONE, Key::ArrowUp);
    let down = pressed(Modifiers::NONE, Key::Tab) || pressed(Modifiers::NONE, Key::ArrowDown);
    let to = if pressed(Modifiers::NONE, Key::Home) {
        0
    } else if pressed(Modifiers::NONE, Key::End) {
        n - 1
    } else if up {
        (here + n - 1) % n
    } else if down {
        (here + 1) % n
    } else {
        return;
    };
    ctx.memory_mut(|m| m.request_focus(ids[to]));
}

/// Does what was taken.
fn take(shop: &Shop, ui: &mut Ui, menu: Menu, then: Then, key: Option<&'static str>) {
    match then {
        Then::Do(action) => {
            wait_for_answer(shop, ui, &menu);
            ui.ask(Ask::Do(action));
        }
        Then::DoAll(actions) => {
            wait_for_answer(shop, ui, &menu);
            ui.ask(Ask::DoAll(actions));
        }
        Then::Carry(carry) => ui.carrying = Some(carry),
        Then::PutBack => ui.carrying = None,
        // The clipboard says what is still missing on paper, and asks.
        Then::Form(Form::HandBack) => ui.clipboard.ask_hand_back(),
        Then::Form(form) => {
            // The night has no number to think about: its form always waits.
            let neutral = menu.neutral || form == Form::Overnight;
            ui.menu = Some(Menu { form: Some(open_form(form)), fresh: true, neutral, ..menu });
        }
        Then::Pace(pace) => ui.ask(Ask::Pace(pace)),
        Then::Turn(thing) => {
            ui.menus.trail.push(menu.thing);
            ui.menu = Some(Menu { thing, fresh: true, form: None, ..menu });
        }
        Then::More(_) => {
            ui.menus.wanted = key;
            ui.menu = Some(Menu { fresh: true, form: None, ..menu });
        }
    }
}

/// Remembers where the hands were, so that a refusal can say why, there.
fn wait_for_answer(shop: &Shop, ui: &mut Ui, menu: &Menu) {
    ui.menus.note = None;
    ui.menus.waiting = Some(state::Waiting {
        thing: menu.thing,
        at: menu.at,
        after: shop.remarks().last().map_or(0, |r| r.n),
        // A tool that was put somewhere has left the hand; one that was only held meanwhile has not.
        carry: ui.carrying.take_if(|carry| can_take(shop, carry, menu.thing)),
    });
}

/// Puts the note of a refusal away; whether there was one.
pub(super) fn dismiss_note(ui: &mut Ui) -> bool {
    ui.menus.note.take().is_some()
}

#[cfg(test)]
mod tests;
