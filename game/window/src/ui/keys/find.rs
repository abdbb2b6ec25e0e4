//! The list of things: type part of a name, choose, and its menu opens. So everything that a pointer can
//! reach in the room can be reached by typing.

use std::collections::BTreeMap;

use egui::{Key, Modifiers, RichText, TextEdit, WidgetInfo, WidgetType};

use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::menu;
use super::page::page;
use front::hands::{self, Misfit, Thing};
use front::shop::Shop;
use front::words::Words;

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

/// What was found: things with their names, best first; and, with a tool in the hand, how many more of that name
/// do not go with it, by the reason.
pub(super) struct Found {
    pub(super) list: Vec<(Thing, String)>,
    pub(super) others: BTreeMap<Misfit, usize>,
}

/// Things whose name has every word that was typed, best match first. With a tool in the hand only the ends it
/// goes on.
pub(super) fn found(shop: &Shop, words: &Words, ui: &Ui, typed: &str) -> Found {
    let typed = typed.trim().to_lowercase();
    let wanted: Vec<&str> = typed.split_whitespace().collect();
    let mut others: BTreeMap<Misfit, usize> = BTreeMap::new();
    let mut list = Vec::new();
    for thing in hands::all_things(shop) {
        let name = words.name(shop, thing);
        let low = name.to_lowercase();
        if !wanted.iter().all(|w| low.contains(w)) {
            continue;
        }
        match ui.carrying.as_ref().map_or(Ok(()), |carry| hands::fits(shop, carry, thing)) {
            Ok(()) => list.push((thing, name)),
            Err(misfit) => *others.entry(misfit).or_default() += 1,
        }
    }
    if !wanted.is_empty() {
        list.sort_by_key(|(_, name)| {
            let name = name.to_lowercase();
            let begun = |w: &&&str| name.split([' ', ':', '-', '(']).any(|word| word.starts_with(**w));
            let inside = wanted.len() - wanted.iter().filter(begun).count();
            (name != typed, !name.starts_with(typed.as_str()), inside, name.chars().count())
        });
    }
    Found { list, others }
}

/// Lines kept for what does not go with the tool in the hand.
const OTHERS_LINES: f32 = 2.0;

/// Says how many more there are and why they are not in the list; in a place that is kept for it.
fn others_ui(inner: &mut egui::Ui, words: &Words, others: &BTreeMap<Misfit, usize>) {
    let room =
        egui::vec2(inner.available_width(), OTHERS_LINES * inner.text_style_height(&egui::TextStyle::Small));
    let (rect, _) = inner.allocate_exact_size(room, egui::Sense::hover());
    let n: usize = others.values().sum();
    if n == 0 {
        return;
    }
    // What is most in the way is named first.
    let mut why: Vec<(&Misfit, &usize)> = others.iter().collect();
    why.sort_by_key(|(misfit, n)| (std::cmp::Reverse(**n), **misfit));
    let why = why.into_iter().map(|(misfit, n)| words.say_with(misfit.key(), &[("n", (*n).into())]));
    let why = why.collect::<Vec<_>>().join(", ");
    let text = words.say_with("find-others", &[("n", n.into()), ("why", why.into())]);
    let mut lines = inner.new_child(egui::UiBuilder::new().max_rect(rect).id_salt("others"));
    lines.add(egui::Label::new(RichText::new(text).small().color(theme::INK_FAINT)).wrap());
}

/// Shows the list, if it is open.
pub(super) fn show(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(mut find) = ui.pages.find.take() else { return };
    if !find.begun {
        find.focus = menu::focused(ctx);
    }
    let pressed = |key| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    let Found { list, others } = found(shop, words, ui, &find.typed);
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
    find.moved |= moved;
    // Return takes the first of what was looked for; with nothing looked for it takes nothing.
    let meant = find.moved || !find.typed.trim().is_empty();
    let entered = find.begun && pressed(Key::Enter) && meant;
    let mut taken = entered.then(|| list.get(find.chosen).map(|(t, _)| *t)).flatten();
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
        // As high as it opened, however few are left: a list that shrinks under the pointer is missed.
        let height = (ctx.content_rect().height() - 200.0).clamp(80.0, 380.0);
        let room = egui::vec2(inner.available_width(), height);
        let (rect, _) = inner.allocate_exact_size(room, egui::Sense::hover());
        let mut held = inner.new_child(egui::UiBuilder::new().max_rect(rect).id_salt("found"));
        egui::ScrollArea::vertical().auto_shrink([false, false]).show(&mut held, |rows| {
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
        if ui.carrying.is_some() {
            others_ui(inner, words, &others);
        }
    });
    find.begun = true;
    close |= area.should_close();
    if taken.is_some() || close {
        menu::refocus(ctx, find.focus);
    }
    if let Some(thing) = taken {
        super::look_at(shop, ui, thing);
        super::open_at(ctx, ui, thing);
        // Return has found it; what is done with it is another key.
        ui.begin_at_title();
    } else if !close {
        ui.pages.find = Some(find);
    }
}
