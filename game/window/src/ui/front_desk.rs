//! The front desk: what this is, the cautions, attempts to carry on, packs with their jobs.

use egui::{Align2, Color32, Frame, Margin, RichText, Stroke, pos2, vec2};

use super::super::shown::Page;
use super::super::state::Ui;
use super::super::theme;
use super::paper;
use front::ask::Ask;
use front::places::Unfinished;
use front::shop::{OfferedPack, RemarkKind, Shop};
use front::words::Words;

/// Widest the page gets, points.
const WIDTH: f32 = 1_000.0;
/// From this width on the cards stand in two columns.
const TWO_COLUMNS: f32 = 700.0;
/// Height of the card of a job, which has up to seven lines, points.
const JOB_CARD: f32 = 174.0;
/// And of an unfinished attempt's.
const ATTEMPT_CARD: f32 = 100.0;
/// Unfinished attempts shown.
const SHOWN: usize = 4;

/// Shows it.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let mut focus = paper::entered(root.ctx(), Page::FrontDesk);
    sign(root, words, ui);
    egui::CentralPanel::no_frame().frame(Frame::new().fill(theme::PAPER)).show(root, |page| {
        egui::ScrollArea::vertical().auto_shrink(false).show(page, |page| {
            let side = ((page.available_width() - WIDTH) * 0.5).max(20.0);
            let frame = Frame::new().inner_margin(Margin {
                left: side as i8,
                right: side as i8,
                top: 10,
                bottom: 20,
            });
            let frame =
                if side <= 120.0 { frame } else { Frame::new().inner_margin(Margin::symmetric(0, 10)) };
            page.horizontal_top(|row| {
                if 120.0 < side {
                    row.add_space(side);
                }
                row.vertical(|column| {
                    if 120.0 < side {
                        column.set_max_width(WIDTH);
                    }
                    frame.show(column, |inner| body(inner, shop, words, ui, &mut focus));
                });
            });
        });
    });
}

/// The band at the top: name, one sentence, the way to the settings and out.
fn sign(root: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    let frame = Frame::new().fill(theme::BENCH).inner_margin(Margin::symmetric(20, 12));
    egui::Panel::top("sign").frame(frame).show_separator_line(false).show(root, |band| {
        let narrow = band.available_width() < TWO_COLUMNS;
        band.horizontal(|row| {
            if !narrow {
                emblem(row);
                row.add_space(10.0);
            }
            row.vertical(|text| {
                let room = if narrow { 0.0 } else { 310.0 };
                text.set_max_width((text.available_width() - room).max(160.0));
                text.label(RichText::new(words.say("desk-title")).size(30.0).color(theme::ON_BENCH));
                let what = RichText::new(words.say("desk-what")).size(15.5).color(theme::ON_BENCH_FAINT);
                text.add(egui::Label::new(what).wrap());
                if narrow {
                    text.horizontal(|row| {
                        settings(row, words, ui);
                        leave(row, words, ui);
                    });
                }
            });
            if !narrow {
                // From the right: the same order to the eye as in a narrow window.
                row.with_layout(egui::Layout::right_to_left(egui::Align::Center), |right| {
                    leave(right, words, ui);
                    settings(right, words, ui);
                });
            }
        });
    });
}

fn leave(row: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    if row.add(paper::button(words.say("desk-leave"))).clicked() {
        ui.quit = true;
    }
}

fn settings(row: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    if row.add(paper::button(words.say("bar-settings"))).clicked() {
        ui.back_to = Page::FrontDesk;
        ui.page = Page::Settings;
    }
}

/// A vacuum gauge, drawn.
fn emblem(ui: &mut egui::Ui) {
    let (rect, _) = ui.allocate_exact_size(vec2(72.0, 72.0), egui::Sense::hover());
    let painter = ui.painter();
    let (c, r) = (rect.center(), rect.width() * 0.5 - 1.0);
    painter.circle(c, r, theme::FIELD, Stroke::new(3.0, theme::ON_BENCH_FAINT));
    let at = |share: f32, radius: f32| {
        // 270° of scale, open at the bottom, as dial gauges have it.
        let angle = (225.0 - 270.0 * share).to_radians();
        pos2(c.x + radius * angle.cos(), c.y - radius * angle.sin())
    };
    for i in 0..=20_u8 {
        let share = f32::from(i) / 20.0;
        let long = i % 5 == 0;
        let inner = if long { r - 10.0 } else { r - 7.0 };
        let width = if long { 2.0 } else { 1.0 };
        painter.line_segment([at(share, r - 4.0), at(share, inner)], Stroke::new(width, theme::INK));
    }
    painter.line_segment([at(0.42, -8.0), at(0.42, r - 9.0)], Stroke::new(2.5, theme::ACCENT));
    painter.circle_filled(c, 4.0, theme::INK);
    let font = egui::FontId::proportional(10.0);
    painter.text(pos2(c.x, c.y + r * 0.62), Align2::CENTER_CENTER, "kPa", font, theme::INK_FAINT);
}

fn body(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, focus: &mut bool) {
    for remark in shop.remarks().iter().filter(|r| r.kind == RemarkKind::Trouble) {
        paper::trouble(page, &words.say("desk-trouble"), &words.remark(shop, remark));
    }
    paper::caution(
        page,
        &words.say("desk-caution"),
        &[words.say("desk-caution-1"), words.say("desk-caution-2")],
    );
    if !shop.unfinished().is_empty() {
        paper::heading(page, words.say("desk-carry-on"));
        in_columns(page, &shop.unfinished()[..shop.unfinished().len().min(SHOWN)], |column, attempt| {
            let response = unfinished(column, shop, words, attempt);
            first(&response, focus);
            if response.clicked() {
                ui.ask(Ask::CarryOn(attempt.path.clone()));
            }
        });
    }
    for pack in shop.packs() {
        paper::heading(page, words.pack(&pack.id, &pack.title));
        match &pack.jobs {
            Ok(jobs) => in_columns(page, jobs, |column, job| {
                let minutes = job.time_limit_min.round() as u32;
                let says = words.job_says(&job.name, 0, &job.says);
                let lines = [
                    (words.say_with("card-quote", &[("text", says.into())]), theme::PEN),
                    (words.car(&job.car_id, &job.car), theme::INK_FAINT),
                    (words.say_with("desk-minutes", &[("minutes", minutes.into())]), theme::INK_FAINT),
                ];
                let begin = words.say("desk-begin");
                let response =
                    paper::card(column, &words.job(&job.name, &job.title), &lines, &begin, JOB_CARD);
                first(&response, focus);
                if response.clicked() {
                    ui.ask(Ask::Begin(job.name.clone()));
                }
            }),
            Err(why) => paper::trouble(page, &words.say("desk-pack-broken"), &words.sentence(why)),
        }
    }
}

fn unfinished(column: &mut egui::Ui, shop: &Shop, words: &Words, attempt: &Unfinished) -> egui::Response {
    let offered = shop.packs().iter().flat_map(|p: &OfferedPack| p.jobs.iter().flatten());
    let title = offered.clone().find(|j| j.name == attempt.job).map_or(attempt.job.as_str(), |j| &j.title);
    let title = words.job(&attempt.job, title);
    let lines: [(String, Color32); 2] = [
        (words.say_with("desk-actions", &[("n", attempt.actions.into())]), theme::INK_FAINT),
        (which(words, &attempt.path), theme::INK_FAINT),
    ];
    let title = words.say_with("desk-carry-on-this", &[("job", title.into())]);
    paper::card(column, &title, &lines, &words.say("desk-go-on"), ATTEMPT_CARD)
}

/// Which attempt a file is: files that the program named end in a number; of others the name is told.
fn which(words: &Words, path: &std::path::Path) -> String {
    let file = path.file_stem().map(|f| f.to_string_lossy().into_owned()).unwrap_or_default();
    match file.rsplit_once('-').and_then(|(_, n)| n.parse::<u32>().ok()) {
        Some(n) => words.say_with("desk-attempt", &[("n", n.into())]),
        None => file,
    }
}

/// The first card takes the focus when the page opens, so that Enter is enough.
fn first(response: &egui::Response, focus: &mut bool) {
    if std::mem::take(focus) {
        response.request_focus();
    }
}

fn in_columns<T>(page: &mut egui::Ui, items: &[T], mut each: impl FnMut(&mut egui::Ui, &T)) {
    let columns = if page.available_width() < TWO_COLUMNS { 1 } else { 2 };
    for row in items.chunks(columns) {
        page.columns(columns, |cells| {
            for (cell, item) in cells.iter_mut().zip(row) {
                each(cell, item);
            }
        });
        page.add_space(4.0);
    }
}
