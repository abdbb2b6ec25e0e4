//! The tool board as a list: what is on it, what it is for, and one click to take it in the hand.

use egui::{RichText, WidgetInfo, WidgetType, vec2};

use super::super::super::shown::Middle;
use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::menu;
use super::super::space::Space;
use front::hands::{Then, Thing, offers};
use front::shop::Shop;
use front::words::Words;

/// Height kept for the sentence about a tool, points: two lines of it, whatever there is to say.
const HELP: f32 = 30.0;

/// Shows the board.
pub(super) fn show(column: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return };
    let kit = session.workshop().setup().kit.clone();
    let mut about: Option<usize> = ui.carrying.as_ref().map(|c| usize::from(c.card));
    column.spacing_mut().item_spacing.y = 0.0;
    // In a drawer, and under the line diagram, every line is needed for tools; what one is for is then told beside it.
    let low = Space::of(column.ctx(), ui.middle).low || ui.middle == Middle::Diagram;
    let height = (column.available_height() - if low { 0.0 } else { HELP }).max(60.0);
    egui::ScrollArea::vertical().id_salt("board").max_height(height).auto_shrink([false, false]).show(
        column,
        |area| {
            // Six rows, as the longer words of some languages need, stand in the tray's height.
            area.spacing_mut().item_spacing = vec2(5.0, 2.0);
            area.spacing_mut().button_padding.y = 1.0;
            area.horizontal_wrapped(|tools| {
                for (i, c) in kit.iter().enumerate() {
                    let card = i as u16;
                    let thing = Thing::Instrument(card);
                    let name = words.name(shop, thing);
                    let used = view.instruments.get(i).is_some_and(|v| !v.at.is_empty());
                    let held = ui.carrying.as_ref().is_some_and(|carry| carry.card == card);
                    let button = egui::Button::new(&name).selected(held).min_size(vec2(0.0, theme::TARGET));
                    let response = tools.add(button);
                    if used {
                        tick(tools, response.rect);
                    }
                    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
                    if response.hovered() || response.has_focus() {
                        about = Some(i);
                        ui.hover = Some(thing);
                    }
                    let help = words.say_or(&format!("instrument-{}-help", c.id), &c.help);
                    tools
                        .ctx()
                        .accesskit_node_builder(response.id, |node| node.set_description(help.clone()));
                    let response = if low { response.on_hover_text(help) } else { response };
                    if response.clicked() {
                        take(shop, ui, card, response.rect.center_top());
                    }
                }
            });
        },
    );
    if low {
        return;
    }
    let text = match about.and_then(|i| kit.get(i)) {
        Some(c) => {
            let help = words.say_or(&format!("instrument-{}-help", c.id), &c.help);
            // What is in the hand: where its next end goes.
            let end = ui.carrying.as_ref().and_then(|carry| carry.left.first());
            let place = end.map(|end| words.say_or(&format!("place-{end}"), "")).unwrap_or_default();
            format!("{place} {help}").trim().to_owned()
        }
        None => words.say("board-hint"),
    };
    let (rect, place) =
        column.allocate_exact_size(vec2(column.available_width(), HELP), egui::Sense::hover());
    let mut help = column.new_child(egui::UiBuilder::new().max_rect(rect));
    help.set_clip_rect(rect.intersect(column.clip_rect()));
    help.add(egui::Label::new(RichText::new(&text).small().color(theme::ON_BENCH)).wrap());
    if rect.height() < help.min_rect().height() {
        place.on_hover_text(text);
    }
}

/// A tool that is in use is ticked, inside its button: the tools behind it keep their places.
fn tick(tools: &egui::Ui, button: egui::Rect) {
    let at = |x: f32, y: f32| button.left_top() + vec2(x, y);
    let points = vec![at(3.0, 6.5), at(5.5, 9.5), at(10.0, 3.0)];
    tools.painter().add(egui::Shape::line(points, egui::Stroke::new(2.2, theme::ACCENT)));
}

/// Takes a tool from the board: into the hand if it has ends, into the tray if it is used where it lies.
fn take(shop: &Shop, ui: &mut Ui, card: u16, at: egui::Pos2) {
    let thing = Thing::Instrument(card);
    let list = offers(shop, None, thing);
    let take = list.iter().find(|o| o.key == "offer-take").map(|o| o.then.clone());
    match take {
        Some(carry @ Then::Carry(_)) => menu::act(shop, ui, thing, at, carry),
        _ => {
            ui.carrying = None;
            ui.tray.laid.insert(card);
            ui.open_menu(thing, at);
        }
    }
}
