//! The line diagram: the car's circuits in the standards' symbols, drawn as the car stands now.
//!
//! Air in the symbols of ISO 1219-1, current in those of IEC 60617 with the terminal numbers of DIN 72552.
//! Where parts stand is data ([`assess::diagram`]); geometry ([`layout`], [`wires`], [`labels`],
//! [`fitted`]) knows no screen; [`live`] draws; here are the widgets. Everything that can be done in the
//! room can be done here, by mouse and by keyboard. It shows nothing that has not passed an instrument or
//! a sense.

mod bodies;
pub mod camera;
pub mod fitted;
mod grid;
pub mod labels;
pub mod layout;
mod legend;
mod live;
pub mod pen;
pub mod state;
mod strip;
pub mod symbols;
pub mod targets;
#[cfg(test)]
mod tests;
pub mod wires;

use assess::diagram::{Diagram, Origin, Sheet};
use egui::{Align2, FontId, Key, Modifiers, Pos2, Rect, Sense, Stroke, StrokeKind, vec2};
use egui::{WidgetInfo, WidgetType};
use sim_core::car::Car;
use sim_core::workshop::View;

use self::camera::{Camera, Paper, board, extent};
use self::labels::Written;
use self::layout::Plan;
use self::pen::Pen;
use self::state::{Drawn, State};
use self::targets::{Target, targets};
use super::super::shown::Middle;
use super::super::state::Ui;
use super::super::theme;
use front::hands::{Thing, can_take};
use front::shop::Shop;
use front::words::Words;

/// Height of the bar over and the strip under the board.
const BAR: f32 = 31.0;
/// Height kept under the strip for the bar that scrolls it.
const FOOT_BAR: f32 = 7.0;
/// A board lower than this keeps its room for itself: beside the room, the strip's things are in the room.
const LOW: f32 = 460.0;
/// Room at the head of a sheet for the words that nobody has drawn this car.
const ROWS_NOTE: f32 = 18.0;

/// Shows it.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(car) = shop.car() else { return };
    let mut state = std::mem::take(&mut ui.diagram);
    let known = match &state.drawn {
        Some(Ok(drawn)) => drawn.car == car.id,
        Some(Err((id, _))) => *id == car.id,
        None => false,
    };
    if !known {
        state.drawn = Some(draw_up(shop, words));
        state.camera = Camera::default();
        state.places.clear();
    }
    // The half beside the room reports more than can be seen of it.
    let whole = root.available_rect_before_wrap().intersect(root.clip_rect());
    root.painter().rect_filled(whole, 0.0, theme::BENCH);
    let bar = Rect::from_min_size(whole.min, vec2(whole.width(), BAR));
    let has_foot = ui.middle == Middle::Diagram || LOW <= whole.height();
    let foot_height = if has_foot { BAR + FOOT_BAR } else { 0.0 };
    let foot = Rect::from_min_max(Pos2::new(whole.min.x, whole.max.y - foot_height), whole.max);
    let canvas = Rect::from_min_max(bar.left_bottom(), foot.right_top());
    strip::bar(&mut root.new_child(egui::UiBuilder::new().max_rect(bar)), words, &mut state);
    match state.drawn.take() {
        Some(Ok(drawn)) => {
            let mut child = root.new_child(egui::UiBuilder::new().max_rect(canvas).id_salt("diagram-board"));
            child.set_clip_rect(canvas);
            paper(&mut child, canvas, shop, words, ui, &drawn, &mut state);
            state.drawn = Some(Ok(drawn));
        }
        Some(Err((id, why))) => {
            let mut child = root.new_child(egui::UiBuilder::new().max_rect(canvas.shrink(8.0)));
            strip::without(&mut child, shop, words, ui, &why);
            state.drawn = Some(Err((id, why)));
        }
        None => {}
    }
    if has_foot {
        strip::foot(&mut root.new_child(egui::UiBuilder::new().max_rect(foot)), shop, words, ui);
    }
    if state.legend {
        legend::show(root.ctx(), canvas, shop, words, &mut state.legend);
    }
    ui.diagram = state;
    root.advance_cursor_after_rect(whole);
}

fn draw_up(shop: &Shop, words: &Words) -> Result<Drawn, (String, String)> {
    let Some(car) = shop.car() else { return Err((String::new(), String::new())) };
    let diagram = shop.library().diagram(car).map_err(|e| (car.id.clone(), words.sentence(&e.in_one())))?;
    let plans = Sheet::ALL.map(|sheet| Plan::new(car, &diagram, sheet)).into();
    Ok(Drawn { car: car.id.clone(), diagram, plans })
}

/// Everything written on a sheet.
#[must_use]
pub fn written(
    ctx: &egui::Context,
    car: &Car,
    view: &View,
    words: &Words,
    diagram: &Diagram,
    plan: &Plan,
) -> Written {
    let short = |id: &str, label: &str| {
        words.say_or(&format!("{}-short-{id}", car.id), &named(car, words, diagram.origin, id, label))
    };
    // On the wiring sheet the engine is its alternator.
    let say = |id: &str, label: &str| match plan.sheet {
        Sheet::Air => short(id, label),
        Sheet::Wiring => words.say_or(&format!("{}-short-{id}-wiring", car.id), &short(id, label)),
    };
    let part = |id: &str, label: &str| {
        let short = say(id, label);
        let out = car.assembly.part_index(id).is_some_and(|p| live::is_pulled(car, view, p));
        if out { words.say_with("diagram-pulled", &[("part", short.into())]) } else { short }
    };
    let off = |cover: &str| view.covers_off.iter().any(|c| c == cover);
    let cover = |id: &str, name: &str| {
        let key = if off(id) { "diagram-outline-off" } else { "diagram-outline-on" };
        let long = words.say_or(&format!("{}-cover-{id}", car.id), name);
        let short = words.say_or(&format!("{}-short-{id}", car.id), &long);
        words.say_with(key, &[("cover", short.into())])
    };
    let number = |value: f64| words.plain(value);
    let measure = |text: &str, size: f32| {
        ctx.fonts_mut(|f| {
            let font = FontId::proportional(size);
            f.layout_no_wrap(text.to_owned(), font, theme::INK).size()
        })
    };
    let say = labels::Say { part: &part, cover: &cover, number: &number, measure: &measure };
    let mut written = labels::write(car, diagram, plan, &say);
    let (title, note) = match plan.sheet {
        Sheet::Air => ("diagram-title-air", None),
        Sheet::Wiring => ("diagram-title-wiring", Some(words.say("diagram-drawn"))),
    };
    labels::entitle(&mut written, plan, &words.say(title), note.as_deref(), &measure);
    if diagram.origin == Origin::Rows {
        written.rect.min.y -= ROWS_NOTE;
    }
    written
}

/// What a part without short words is called on a sheet. In rows that may be what is swapped, where that is this
/// part alone: whichever is shorter.
fn named(car: &Car, words: &Words, origin: Origin, id: &str, label: &str) -> String {
    let Some(part) = car.assembly.part_index(id).filter(|_| origin == Origin::Rows) else {
        return label.to_owned();
    };
    let own = words.say_or(&format!("{}-part-{id}", car.id), label);
    let swapped = car.units.iter().find(|u| u.parts == [part]);
    let swapped = swapped.map(|u| words.say_or(&format!("{}-unit-{}", car.id, u.id), &u.name));
    swapped.filter(|name| name.chars().count() < own.chars().count()).unwrap_or(own)
}

/// The board with its sheets.
fn paper(
    root: &mut egui::Ui,
    canvas: Rect,
    shop: &Shop,
    words: &Words,
    ui: &mut Ui,
    drawn: &Drawn,
    state: &mut State,
) {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return };
    let write = |plan: &Plan| written(root.ctx(), car, view, words, &drawn.diagram, plan);
    let papers: Vec<Paper> = drawn.plans.iter().map(|p| (p.clone(), write(p))).collect();
    let sheets = board(&papers, state.shown, canvas.size());
    state.laid = sheets.len();
    let all = extent(&sheets);
    state.needs = all.height() + 2.0 * BAR + 2.0;
    if !state.camera.moved {
        state.camera.fit(
            all,
            canvas.size(),
            camera::least(state.shown, ui.middle == Middle::Both, root.ctx().zoom_factor()),
        );
    }
    let listens = ui.menu.is_none() && !ui.pages.is_open();
    move_about(root, canvas, all, listens, state);
    let origin = state.camera.origin(canvas);
    let zoom = state.camera.zoom;
    let painter = root.painter().clone();
    for ((plan, written), at) in sheets {
        let pen =
            Pen { painter: &painter, origin: origin + at * zoom, zoom, ink: theme::INK, paper: theme::FIELD };
        sheet_of_paper(&pen, written.rect);
        if drawn.diagram.origin == Origin::Rows {
            in_rows(root, &pen, words, plan.sheet, written.rect);
        }
        let boxes: Vec<Rect> = written.texts.iter().map(|t| t.rect).collect();
        // What is written moves when a part is pulled or a cover taken off.
        let at: Vec<_> = view.instruments.iter().map(|i| &i.at).collect();
        let sought = format!("{at:?} {:?} {:?} {}", view.pulled, view.covers_off, words.tag());
        let kept = state.places.remove(&plan.sheet).filter(|(for_what, _)| *for_what == sought);
        let (sought, fitted) = kept.unwrap_or_else(|| (sought, fitted::place(car, plan, &boxes, view)));
        live::draw(&pen, shop, words, plan, written, &fitted);
        for target in targets(car, plan, &fitted) {
            widget(root, canvas, shop, words, ui, state, &pen, plan.sheet, target);
        }
        state.places.insert(plan.sheet, (sought, fitted));
    }
    let lies = Rect::from_min_max(pen_at(origin, all.min, zoom), pen_at(origin, all.max, zoom));
    state.board = Some((canvas, lies));
    bars(&painter, canvas, lies);
}

/// Where a point of the board is on the screen.
fn pen_at(origin: Pos2, at: Pos2, zoom: f32) -> Pos2 {
    origin + at.to_vec2() * zoom
}

/// Width of the bars that say how much of the board is seen, points.
const SEEN_BAR: f32 = 6.0;

/// How much of the board is seen, and which part of it, at the right and the lower edge: only where it goes
/// on beyond them. It is moved by drag and wheel.
fn bars(painter: &egui::Painter, canvas: Rect, all: Rect) {
    let bar = |from: f32, to: f32, min: f32, max: f32| {
        let length = (max - min).max(1.0);
        let share = |v: f32| ((v - min) / length).clamp(0.0, 1.0);
        (min < from - 2.0 || to + 2.0 < max).then(|| (share(from), share(to)))
    };
    let draw = |rect: Rect, thumb: Rect| {
        painter.rect_filled(rect, SEEN_BAR * 0.5, theme::RULE.gamma_multiply(0.5));
        painter.rect_filled(thumb, SEEN_BAR * 0.5, theme::INK_FAINT);
    };
    if let Some((from, to)) = bar(canvas.top(), canvas.bottom(), all.top(), all.bottom()) {
        let rect = Rect::from_min_max(
            canvas.right_top() - vec2(SEEN_BAR + 2.0, -2.0),
            canvas.right_bottom() - vec2(2.0, 2.0),
        );
        let y = |t: f32| rect.top() + rect.height() * t;
        draw(rect, Rect::from_x_y_ranges(rect.x_range(), y(from)..=y(to)));
    }
    if let Some((from, to)) = bar(canvas.left(), canvas.right(), all.left(), all.right()) {
        let rect = Rect::from_min_max(
            canvas.left_bottom() - vec2(-2.0, SEEN_BAR + 2.0),
            canvas.right_bottom() - vec2(SEEN_BAR + 4.0, 2.0),
        );
        let x = |t: f32| rect.left() + rect.width() * t;
        draw(rect, Rect::from_x_y_ranges(x(from)..=x(to), rect.y_range()));
    }
}

/// White paper with a frame.
fn sheet_of_paper(pen: &Pen<'_>, rect: Rect) {
    pen.painter.rect(pen.rect_at(rect), 2.0, pen.paper, Stroke::new(1.0, theme::RULE), StrokeKind::Inside);
}

/// Says on the sheet that nobody has drawn this car.
fn in_rows(root: &egui::Ui, pen: &Pen<'_>, words: &Words, sheet: Sheet, rect: Rect) {
    let text = words.say("diagram-in-rows");
    let at = rect.left_top() + vec2(10.0, 6.0);
    let lies = pen.with(theme::INK_FAINT).text(at, Align2::LEFT_TOP, &text, 11.5);
    let note = root.interact(lies, root.id().with(("diagram-in-rows", sheet)), Sense::hover());
    note.widget_info(|| WidgetInfo::labeled(WidgetType::Label, true, &text));
}

/// Wheel magnifies, drag moves; keys for those who have no wheel.
fn move_about(root: &mut egui::Ui, canvas: Rect, all: Rect, listens: bool, state: &mut State) {
    let ground = root.interact(canvas, root.id().with("ground"), Sense::DRAG);
    if ground.dragged() {
        state.camera.pan(ground.drag_delta(), all);
    }
    let ctx = root.ctx().clone();
    if let Some(pointer) = ctx.pointer_hover_pos().filter(|p| canvas.contains(*p))
        && ctx.layer_id_at(pointer).is_none_or(|l| l == root.layer_id())
    {
        let (scroll, pinch) = ctx.input(|i| (i.smooth_scroll_delta, i.zoom_delta()));
        if pinch != 1.0 {
            state.camera.magnify(pinch, pointer, canvas);
        } else if scroll.y != 0.0 {
            state.camera.magnify((scroll.y * 0.0035).exp(), pointer, canvas);
        }
        if scroll.x != 0.0 {
            state.camera.pan(vec2(scroll.x, 0.0), all);
        }
    }
    if listens && !ctx.text_edit_focused() {
        let pressed = |key| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, key));
        if pressed(Key::Plus) || pressed(Key::Equals) {
            state.camera.magnify(1.25, canvas.center(), canvas);
        }
        if pressed(Key::Minus) {
            state.camera.magnify(0.8, canvas.center(), canvas);
        }
        if pressed(Key::Num0) {
            state.camera.moved = false;
        }
        if pressed(Key::D) {
            state.shown = state.shown.next();
            state.camera.moved = false;
        }
        if pressed(Key::I) {
            state.legend = !state.legend;
        }
    }
}

/// A target as a widget: name, focus, click, highlight.
fn widget(
    root: &mut egui::Ui,
    canvas: Rect,
    shop: &Shop,
    words: &Words,
    ui: &mut Ui,
    state: &mut State,
    pen: &Pen<'_>,
    sheet: Sheet,
    target: Target,
) {
    let rect = pen.rect_at(target.rect);
    let thing = target.thing;
    let response = root.interact(rect, root.id().with((sheet, thing)), Sense::click());
    let name = words.name(shop, thing);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
    let radius = if matches!(thing, Thing::Part(_) | Thing::Pedal | Thing::Starter | Thing::Key) {
        4.0
    } else {
        rect.width() * 0.5
    };
    if let Some(carry) = &ui.carrying
        && matches!(thing, Thing::Port(_))
        && can_take(shop, carry, thing)
    {
        let ring = rect.expand(1.0);
        pen.painter.rect_stroke(ring, radius, Stroke::new(2.0, theme::ACCENT), StrokeKind::Outside);
    }
    if response.hovered() || response.has_focus() {
        ui.hover = Some(thing);
    }
    // Also what the tray points at.
    if ui.hover == Some(thing) {
        let fill = theme::ACCENT.gamma_multiply(0.12);
        pen.painter.rect(rect, radius, fill, Stroke::new(2.5, theme::ACCENT), StrokeKind::Outside);
    }
    if response.gained_focus() {
        state.camera.reveal(rect, canvas);
    }
    if response.clicked() {
        ui.open_menu(thing, rect.center() + vec2(rect.width().min(40.0) * 0.5, 0.0));
    }
    if canvas.contains(rect.center()) {
        ui.marks.put_on_sheet(thing, rect.center());
    }
    if response.hovered() && ui.menu.is_none() {
        response.on_hover_text_at_pointer(name);
    }
}
