//! The list of things: type part of a name, choose, and its menu opens. So everything that a pointer can
//! reach in the room can be reached by typing.

use egui::{Key, Modifiers, RichText, TextEdit, WidgetInfo, WidgetType};

use super::super::super::hands::{self, Thing};
use super::super::super::shop::Shop;
use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::super::words::Words;
use super::super::menu;
use super::page;

/// The list as it is being searched.
#[derive(Debug, Default)]
pub(super) struct Find {
    typed: String,
    chosen: usize,
    /// Opened already: the field has had its focus.
    begun: bool,
    /// What had the focus before.
    focus: Option<egui::Id>,
}

/// What kind of thing it is, for the right-hand side of the list.
fn kind_key(thing: Thing) -> &'static str {
    match thing {
        Thing::Part(_) => "kind-part",
        Thing::Port(_) => "kind-port",
        Thing::Joint(_) => "kind-joint",
        Thing::Cover(_) => "kind-cover",
        Thing::Instrument(_) => "kind-instrument",
        Thing::Spare(_) => "kind-spare",
        Thing::JobCard | Thing::DataSheet => "kind-paper",
        Thing::Key
        | Thing::Starter
        | Thing::Pedal
        | Thing::Chocks
        | Thing::Extraction
        | Thing::Car
        | Thing::Clock => "kind-other",
    }
}

/// Things whose name has every word that was typed; what begins with it comes first.
pub(super) fn found(shop: &Shop, words: &Words, ui: &Ui, typed: &str) -> Vec<(Thing, String)> {
    let wanted: Vec<String> = typed.split_whitespace().map(str::to_lowercase).collect();
    let mut all: Vec<(Thing, String)> = hands::all_things(shop)
        .into_iter()
        .filter(|thing| ui.carrying.as_ref().is_none_or(|c| hands::can_take(shop, c, *thing)))
        .map(|thing| (thing, words.name(shop, thing)))
        .filter(|(_, name)| {
            let name = name.to_lowercase();
            wanted.iter().all(|w| name.contains(w.as_str()))
        })
        .collect();
    if let Some(first) = wanted.first() {
        all.sort_by_key(|(_, name)| {
            let name = name.to_lowercase();
            let word = name.split(' ').any(|w| w.starts_with(first.as_str()));
            (!name.starts_with(first.as_str()), !word, name.chars().count())
        });
    }
    all
}

/// Shows the list, if it is open.
pub(super) fn show(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(mut find) = ui.pages.find.take() else { return };
    if !find.begun {
        find.focus = menu::focused(ctx);
    }
    let pressed = |key| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    let list = found(shop, words, ui, &find.typed);
    let last = list.len().saturating_sub(1);
    let before = find.chosen;
    if pressed(Key::ArrowDown) {
        find.chosen += 1;
    }
    if pressed(Key::ArrowUp) {
        find.chosen = find.chosen.saturating_sub(1);
    }
    find.chosen = find.chosen.min(last);
    let moved = before != find.chosen;
    let mut taken =
        (find.begun && pressed(Key::Enter)).then(|| list.get(find.chosen).map(|(t, _)| *t)).flatten();
    // The field would keep the key for itself.
    let mut close = find.begun && pressed(Key::Escape);
    let area = page("find", ctx).show(ctx, |inner| {
        inner.set_width(460.0_f32.min(ctx.content_rect().width() - 40.0));
        let heading = if ui.carrying.is_some() { "find-place" } else { "find-title" };
        let label = inner.label(RichText::new(words.say(heading)).strong());
        let field = TextEdit::singleline(&mut find.typed)
            .hint_text(words.say("find-hint"))
            .desired_width(f32::INFINITY)
            .min_size(egui::vec2(0.0, theme::TARGET));
        let response = inner.add(field).labelled_by(label.id);
        if !find.begun {
            response.request_focus();
        }
        if response.changed() {
            find.chosen = 0;
        }
        let height = (ctx.content_rect().height() - 160.0).clamp(80.0, 380.0);
        egui::ScrollArea::vertical().max_height(height).auto_shrink([false, true]).show(inner, |rows| {
            rows.spacing_mut().item_spacing.y = 1.0;
            rows.with_layout(egui::Layout::top_down_justified(egui::Align::LEFT), |rows| {
                for (i, (thing, name)) in list.iter().enumerate() {
                    let kind = RichText::new(words.say(kind_key(*thing))).small().color(theme::INK_FAINT);
                    let row = egui::Button::selectable(i == find.chosen, name.as_str())
                        .truncate()
                        .shortcut_text(kind)
                        .min_size(egui::vec2(0.0, theme::TARGET));
                    let row = rows.add(row);
                    row.widget_info(|| {
                        WidgetInfo::selected(WidgetType::SelectableLabel, true, i == find.chosen, name)
                    });
                    if i == find.chosen && moved {
                        row.scroll_to_me(None);
                    }
                    if row.clicked() {
                        taken = Some(*thing);
                    }
                }
                if list.is_empty() {
                    rows.label(words.say("find-nothing"));
                }
            });
        });
    });
    find.begun = true;
    close |= area.should_close();
    if taken.is_some() || close {
        menu::refocus(ctx, find.focus);
    }
    if let Some(thing) = taken {
        super::look_at(shop, ui, thing);
        super::open_at(ctx, ui, thing);
    } else if !close {
        ui.pages.find = Some(find);
    }
}
