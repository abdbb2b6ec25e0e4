//! What is written on paper: headings, rules, boxes, the buttons one is meant to find.

use egui::{Button, Color32, FontId, Frame, Margin, RichText, Shape, Stroke, vec2};

use super::super::shown::Page;
use super::super::theme;

/// Whether `page` is shown in this frame and was not in the last: then the first button takes the focus,
/// once.
pub fn entered(ctx: &egui::Context, page: Page) -> bool {
    let frame = ctx.cumulative_frame_nr();
    let id = egui::Id::new("page-last-drawn");
    let last = ctx.data(|d| d.get_temp::<(Page, u64)>(id));
    ctx.data_mut(|d| d.insert_temp(id, (page, frame)));
    !last.is_some_and(|(last, at)| last == page && frame <= at + 1)
}

/// A title with a rule under it.
pub fn heading(ui: &mut egui::Ui, text: impl Into<String>) {
    ui.add_space(6.0);
    ui.label(RichText::new(text).size(17.0).color(theme::ACCENT));
    rule(ui);
}

/// A small title.
pub fn small_heading(ui: &mut egui::Ui, text: impl Into<String>) {
    ui.add_space(8.0);
    ui.label(RichText::new(text).size(15.0).color(theme::ACCENT));
}

/// A fine line across the paper.
pub fn rule(ui: &mut egui::Ui) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 5.0), egui::Sense::hover());
    ui.painter().hline(rect.x_range(), rect.top() + 1.0, Stroke::new(1.0, theme::RULE));
}

/// Text of less weight.
pub fn faint(ui: &mut egui::Ui, text: impl Into<String>) -> egui::Response {
    ui.label(RichText::new(text).color(theme::INK_FAINT))
}

/// Something written by hand.
pub fn by_hand(text: impl Into<String>) -> RichText {
    RichText::new(text).color(theme::PEN).italics()
}

/// A point of a list.
pub fn point(ui: &mut egui::Ui, text: impl Into<String>) {
    ui.horizontal_top(|row| {
        row.label("•");
        row.add(egui::Label::new(RichText::new(text)).wrap());
    });
}

/// A caution: a sign, its own ground, the words.
pub fn caution(ui: &mut egui::Ui, title: &str, lines: &[String]) {
    boxed(ui, theme::CAUTION, |inner| {
        inner.horizontal(|row| {
            warning_sign(row);
            row.label(RichText::new(title).size(15.0));
        });
        for line in lines {
            inner.add(egui::Label::new(line).wrap());
        }
    });
}

/// Trouble with the machine or the files, in words.
pub fn trouble(ui: &mut egui::Ui, title: &str, text: &str) {
    let frame = Frame::new()
        .fill(theme::FIELD)
        .stroke(Stroke::new(2.0, theme::BREACH))
        .inner_margin(Margin::same(10))
        .corner_radius(3);
    frame.show(ui, |inner| {
        inner.set_min_width(inner.available_width());
        inner.label(RichText::new(title).color(theme::BREACH).size(15.0));
        inner.add(egui::Label::new(RichText::new(text).color(theme::BREACH)).wrap());
    });
}

/// A box on a ground of its own.
pub fn boxed(ui: &mut egui::Ui, fill: Color32, add: impl FnOnce(&mut egui::Ui)) {
    let frame = Frame::new()
        .fill(fill)
        .stroke(Stroke::new(1.0, theme::RULE))
        .inner_margin(Margin::same(10))
        .corner_radius(3);
    frame.show(ui, |inner| {
        inner.set_min_width(inner.available_width());
        add(inner);
    });
}

/// The triangle with the mark of exclamation, drawn.
fn warning_sign(ui: &mut egui::Ui) {
    let (rect, _) = ui.allocate_exact_size(vec2(22.0, 20.0), egui::Sense::hover());
    let corners = vec![rect.center_top(), rect.right_bottom(), rect.left_bottom()];
    let painter = ui.painter();
    painter.add(Shape::convex_polygon(corners, theme::FIELD, Stroke::new(2.0, theme::INK)));
    let x = rect.center().x;
    painter.line_segment(
        [egui::pos2(x, rect.top() + 7.5), egui::pos2(x, rect.top() + 13.5)],
        Stroke::new(2.0, theme::INK),
    );
    painter.circle_filled(egui::pos2(x, rect.top() + 16.5), 1.3, theme::INK);
}

/// The button one is meant to find.
pub fn main_button(text: impl Into<String>) -> Button<'static> {
    Button::new(RichText::new(text).color(theme::PAPER))
        .fill(theme::ACCENT)
        .min_size(vec2(0.0, theme::TARGET + 4.0))
}

/// Another button.
pub fn button(text: impl Into<String>) -> Button<'static> {
    Button::new(text.into()).min_size(vec2(0.0, theme::TARGET))
}

/// One of several choices in a row; its frame tells that it can be chosen.
pub fn choice<'a>(on: bool, text: impl egui::IntoAtoms<'a>) -> Button<'a> {
    Button::selectable(on, text).frame_when_inactive(true).min_size(vec2(0.0, theme::TARGET))
}

/// A card that is one button: a title, lines under it, and in its corner what a click does. At least `height`
/// points high, so that cards in a row end together; written from the top, so that they begin together.
pub fn card(
    ui: &mut egui::Ui,
    title: &str,
    lines: &[(String, Color32)],
    does: &str,
    height: f32,
) -> egui::Response {
    let mut job = egui::text::LayoutJob::default();
    job.append(title, 0.0, egui::TextFormat::simple(FontId::proportional(16.5), theme::INK));
    for (line, colour) in lines {
        job.append("\n", 0.0, egui::TextFormat::simple(FontId::proportional(14.0), *colour));
        job.append(line, 0.0, egui::TextFormat::simple(FontId::proportional(14.0), *colour));
    }
    let (width, pad) = (ui.available_width(), vec2(14.0, 12.0));
    job.wrap.max_width = width - 2.0 * pad.x;
    let text = ui.fonts_mut(|fonts| fonts.layout_job(job));
    let does = ui.painter().layout_no_wrap(format!("{does}  ▸"), FontId::proportional(14.5), theme::PAPER);
    let corner = does.size() + vec2(20.0, 10.0);
    let height = height.max(text.size().y + 2.0 * pad.y + corner.y);
    let button = Button::new("").fill(theme::FIELD).corner_radius(4).min_size(vec2(width, height));
    let response = ui.add(button);
    let painter = ui.painter();
    painter.galley(response.rect.min + pad, text, theme::INK);
    let tab = egui::Rect::from_min_size(response.rect.max - corner - vec2(8.0, 8.0), corner);
    painter.rect_filled(tab, 4.0, theme::ACCENT);
    painter.galley(tab.min + vec2(10.0, 5.0), does, theme::PAPER);
    let name = std::iter::once(title).chain(lines.iter().map(|(line, _)| line.as_str()));
    let name = name.collect::<Vec<_>>().join("\n");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, &name));
    response
}
