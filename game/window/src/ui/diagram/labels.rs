//! Names of parts and numbers of terminals: what is written where. The same boxes are drawn and tested.

use assess::diagram::{Diagram, Origin, Side};
use egui::{Align, Align2, Pos2, Rect, Vec2, vec2};
use sim_core::car::Car;

use super::bodies::{Body, Spot};
use super::grid::STEP;
use super::layout::{BORDER, Outline, Plan};
use super::symbols;

/// Size of a part's name, sheet points.
pub const NAME: f32 = 13.0;
/// Size of a terminal's number.
pub const NUMBER: f32 = 11.0;
/// Size of a sheet's title.
const TITLE: f32 = 11.5;
/// From the sheet's edge to its title.
const INDENT: f32 = 10.0;
/// How many times four points a title gives way downwards.
const LOWEST: u32 = 30;
/// A name longer than this is broken in two lines, sheet points.
const LONGEST: f32 = 118.0;
/// The same in the corner of a branching symbol.
const LONGEST_IN_CORNER: f32 = 90.0;
/// Between symbol and name.
const GAP: f32 = 1.0;

/// How far from its symbol a name may stand that has to look for its place, half steps.
const FARTHEST: usize = 8;
/// Room that the mark of a joint takes.
const JOINT: f32 = 12.0;

/// From the middle of a branching symbol to a name in its corner.
const ASIDE: f32 = 7.0;

/// A text on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// The text, with its line breaks.
    pub text: String,
    /// Size of the letters, sheet points.
    pub size: f32,
    /// What it covers.
    pub rect: Rect,
    /// Less weight than a name.
    pub faint: bool,
    /// How several lines stand under each other.
    pub align: Align,
}

/// Where words and their sizes come from.
pub struct Say<'a> {
    /// A part's short words, by its short name and the data's own word.
    pub part: &'a dyn Fn(&str, &str) -> String,
    /// A cover's, likewise.
    pub cover: &'a dyn Fn(&str, &str) -> String,
    /// A number as the language writes it.
    pub number: &'a dyn Fn(f64) -> String,
    /// Room that a text of a size needs.
    pub measure: &'a dyn Fn(&str, f32) -> Vec2,
}

/// Everything written on a sheet, and the outlines that go round what is written.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    /// Texts.
    pub texts: Vec<Text>,
    /// Outlines of covers, round the names of what they bar.
    pub outlines: Vec<Outline>,
    /// The sheet of paper: symbols, lines, texts, border.
    pub rect: Rect,
}

/// Writes a sheet.
pub fn write(car: &Car, diagram: &Diagram, plan: &Plan, say: &Say<'_>) -> Written {
    let mut out = Vec::new();
    let mut outlines = plan.outlines.clone();
    let terminals = terminals(car, plan, say.measure);
    for (part, text) in &terminals {
        for outline in outlines.iter_mut().filter(|o| o.parts.contains(part)) {
            outline.rect = outline.rect.union(text.rect.expand(4.0));
        }
    }
    // What a cover bars first: its outline grows by their names, and no other name may be on its edge.
    let barred = |body: &&Body| plan.outlines.iter().any(|o| o.parts.contains(&body.part));
    let (inside, outside): (Vec<&Body>, Vec<&Body>) = plan.bodies.iter().partition(barred);
    for body in inside.into_iter().chain(outside) {
        let place = &diagram.places[body.place];
        let id = &car.assembly.parts[usize::from(body.part)].id;
        let words = (say.part)(id, &place.label);
        // Nobody has looked at the sheet of a car that is placed in rows: each text looks for its place.
        let put = |texts: [&[Text]; 2], text: &dyn Fn(Side) -> Text| match diagram.origin {
            Origin::Drawn => text(place.side),
            Origin::Rows => {
                let keeps_out = |rect: Rect| {
                    let strange = outlines.iter().filter(|o| !o.parts.contains(&body.part));
                    strange.into_iter().all(|o| !o.rect.expand(2.0).intersects(rect))
                };
                where_free(plan, &terminals, texts, place.side, text, &keeps_out)
            }
        };
        let mut own = vec![put([&out, &[]], &|side| name(body, side, &words, say.measure))];
        let kind = &car.assembly.parts[usize::from(body.part)].kind;
        if let Some((value, unit)) = symbols::size(kind, plan.sheet) {
            let size = format!("{} {unit}", (say.number)(value));
            own.push(put([&out, &own], &|side| size_text(body, side, &size, say.measure)));
        }
        for outline in outlines.iter_mut().filter(|o| o.parts.contains(&body.part)) {
            for text in &own {
                outline.rect = outline.rect.union(text.rect.expand(4.0));
            }
        }
        out.append(&mut own);
    }
    out.extend(terminals.into_iter().map(|(_, text)| text));
    for outline in &outlines {
        let cover = &car.covers[usize::from(outline.cover)];
        let text = (say.cover)(&cover.id, &cover.name);
        let size = (say.measure)(&text, NUMBER);
        if let Some(rect) = beside_outline(plan, &outlines, outline.rect, &out, size) {
            out.push(Text { text, size: NUMBER, rect, faint: true, align: Align::Center });
        }
    }
    let mut rect = plan.rect;
    for r in out.iter().map(|t| t.rect).chain(outlines.iter().map(|o| o.rect)) {
        rect = rect.union(r.expand(BORDER * 0.5));
    }
    Written { texts: out, outlines, rect }
}

/// Writes the sheet's title at its foot, on the left, and what is drawn and what is not, on the right: under each
/// other where the sheet is narrow, and lower where something else stands there.
pub fn entitle(
    written: &mut Written,
    plan: &Plan,
    title: &str,
    note: Option<&str>,
    measure: &dyn Fn(&str, f32) -> Vec2,
) {
    let wide = |text: &str| measure(text, TITLE);
    let (size, below) = (wide(title), note.map(wide));
    let widest = size.x.max(below.map_or(0.0, |n| n.x)) + 2.0 * INDENT;
    written.rect.max.x = written.rect.max.x.max(written.rect.min.x + widest);
    let beside = below.is_none_or(|n| size.x + n.x + 3.0 * INDENT <= written.rect.width());
    let mut texts = Vec::new();
    // At most as low as there is anything.
    for _ in 0..LOWEST {
        let foot = written.rect;
        texts.clear();
        let lift = if beside { 0.0 } else { size.y };
        let at = foot.left_bottom() + vec2(INDENT, -6.0 - lift);
        texts.push((title, Align2::LEFT_BOTTOM.anchor_size(at, size), Align::Min));
        if let (Some(note), Some(size)) = (note, below) {
            let at = if beside {
                Align2::RIGHT_BOTTOM.anchor_size(foot.right_bottom() + vec2(-INDENT, -4.0), size)
            } else {
                Align2::LEFT_BOTTOM.anchor_size(foot.left_bottom() + vec2(INDENT, -4.0), size)
            };
            texts.push((note, at, if beside { Align::Max } else { Align::Min }));
        }
        let free = |rect: &Rect| {
            let rect = rect.shrink(0.5);
            is_free(plan, rect)
                && !on_joint(plan, rect)
                && !on_edge(&written.outlines, rect)
                && !written.texts.iter().any(|t| t.rect.intersects(rect))
        };
        if texts.iter().all(|(_, rect, _)| free(rect)) {
            break;
        }
        written.rect.max.y += 4.0;
    }
    let faint = texts.into_iter().map(|(text, rect, align)| Text {
        text: text.to_owned(),
        size: TITLE,
        rect,
        faint: true,
        align,
    });
    written.texts.extend(faint);
}

/// What a printed plan writes at each terminal, and the part it belongs to.
fn terminals(car: &Car, plan: &Plan, measure: &dyn Fn(&str, f32) -> Vec2) -> Vec<(u16, Text)> {
    let mut out = Vec::new();
    for spot in &plan.spots {
        let kind = &car.assembly.parts[usize::from(spot.port.part)].kind;
        let port = kind.ports()[usize::from(spot.port.port)].name;
        if let Some(text) = symbols::terminal(kind, port) {
            let (at, anchor) = beside(spot);
            let rect = anchor.anchor_size(at, measure(text, NUMBER));
            let text = Text { text: text.to_owned(), size: NUMBER, rect, faint: true, align: Align::Center };
            out.push((spot.port.part, text));
        }
    }
    out
}

/// A text where no line and no other word is, as near to its side as can be; at its side when there is none.
fn where_free(
    plan: &Plan,
    terminals: &[(u16, Text)],
    texts: [&[Text]; 2],
    first: Side,
    at: &dyn Fn(Side) -> Text,
    may_be: &dyn Fn(Rect) -> bool,
) -> Text {
    let sides = [first, Side::Above, Side::BelowLeft, Side::BelowRight, Side::AboveLeft, Side::AboveRight];
    let free = |text: &Text| {
        let over = |other: Rect| other.intersects(text.rect);
        is_free(plan, text.rect.expand(1.0))
            && may_be(text.rect)
            && !texts.iter().any(|some| some.iter().any(|t| over(t.rect)))
            && !terminals.iter().any(|(_, t)| over(t.rect))
            && !on_joint(plan, text.rect)
    };
    let farther = (0..=FARTHEST).flat_map(|far| sides.map(|side| (side, far as f32 * STEP * 0.5)));
    let mut places = farther.map(|(side, far)| {
        let mut text = at(side);
        let up = matches!(side, Side::Above | Side::AboveLeft | Side::AboveRight);
        text.rect = text.rect.translate(vec2(0.0, if up { -far } else { far }));
        text
    });
    places.find(free).unwrap_or_else(|| at(first))
}

/// A free place for a cover's name: inside the outline's corners, else outside along its edges.
fn beside_outline(plan: &Plan, outlines: &[Outline], r: Rect, texts: &[Text], size: Vec2) -> Option<Rect> {
    let inside = r.shrink2(vec2(5.0, 3.0));
    let corners = [Align2::LEFT_TOP, Align2::RIGHT_TOP, Align2::LEFT_BOTTOM, Align2::RIGHT_BOTTOM];
    let within = corners.map(|a| a.align_size_within_rect(size, inside));
    let around = [
        Align2::LEFT_BOTTOM.anchor_size(r.left_top() - vec2(0.0, 2.0), size),
        Align2::RIGHT_BOTTOM.anchor_size(r.right_top() - vec2(0.0, 2.0), size),
        Align2::LEFT_TOP.anchor_size(r.left_bottom() + vec2(0.0, 2.0), size),
        Align2::RIGHT_TOP.anchor_size(r.right_bottom() + vec2(0.0, 2.0), size),
        Align2::RIGHT_TOP.anchor_size(r.left_top() - vec2(5.0, 0.0), size),
        Align2::LEFT_TOP.anchor_size(r.right_top() + vec2(5.0, 0.0), size),
    ];
    let mut all = within.into_iter().filter(|t| inside.contains_rect(*t)).chain(around);
    all.find(|t| {
        plan.rect.contains_rect(*t)
            && is_free(plan, *t)
            && !on_edge(outlines, *t)
            && !on_joint(plan, *t)
            && !texts.iter().any(|o| o.rect.intersects(*t))
    })
}

/// Whether a text may stand there: no symbol, no line, no port beneath it.
#[must_use]
pub fn is_free(plan: &Plan, rect: Rect) -> bool {
    let on_line = |a: Pos2, b: Pos2| Rect::from_two_pos(a, b).expand(1.5).intersects(rect);
    !plan.bodies.iter().any(|b| b.rect.intersects(rect))
        && !plan.spots.iter().any(|s| Rect::from_center_size(s.at, Vec2::splat(10.0)).intersects(rect))
        && !plan.lines.iter().any(|l| l.path.windows(2).any(|w| on_line(w[0], w[1])))
        && !plan.stubs.iter().any(|(a, b)| on_line(*a, *b))
        && !plan.feet.iter().any(|f| f.intersects(rect))
}

/// Whether a text lies on the mark of a joint.
fn on_joint(plan: &Plan, rect: Rect) -> bool {
    plan.lines.iter().any(|l| Rect::from_center_size(l.mid, Vec2::splat(JOINT)).intersects(rect))
}

/// Whether a text lies on an outline's edge.
#[must_use]
pub fn on_edge(outlines: &[Outline], rect: Rect) -> bool {
    let edge = rect.expand(1.0);
    outlines.iter().any(|o| o.rect.intersects(edge) && !o.rect.contains_rect(edge))
}

fn name(body: &Body, side: Side, text: &str, measure: &dyn Fn(&str, f32) -> Vec2) -> Text {
    let longest = match side {
        Side::AboveLeft | Side::AboveRight | Side::BelowLeft | Side::BelowRight => LONGEST_IN_CORNER,
        _ => LONGEST,
    };
    let wide = |line: &str| measure(line, NAME).x;
    let text = if wide(text) <= longest { text.to_owned() } else { broken(text, longest, &wide) };
    let (rect, align) = at_side(body, side, measure(&text, NAME));
    Text { text, size: NAME, rect, faint: false, align }
}

/// What is printed on a part (cross-section, rating), on the side away from its name.
fn size_text(body: &Body, side: Side, text: &str, measure: &dyn Fn(&str, f32) -> Vec2) -> Text {
    let other = match side {
        Side::Above | Side::AboveLeft | Side::AboveRight => Side::Below,
        Side::Below | Side::BelowLeft | Side::BelowRight => Side::Above,
        Side::Left => Side::Right,
        Side::Right => Side::Left,
    };
    let (rect, align) = at_side(body, other, measure(text, NUMBER));
    Text { text: text.to_owned(), size: NUMBER, rect, faint: true, align }
}

/// Where a text stands beside a symbol, and how its lines stand.
fn at_side(body: &Body, side: Side, size: Vec2) -> (Rect, Align) {
    let r = body.rect;
    let c = body.pick.center();
    let (at, anchor) = match side {
        Side::Above => (Pos2::new(c.x, r.min.y - GAP), Align2::CENTER_BOTTOM),
        Side::Below => (Pos2::new(c.x, r.max.y + GAP), Align2::CENTER_TOP),
        Side::Left => (Pos2::new(r.min.x - ASIDE, c.y), Align2::RIGHT_CENTER),
        Side::Right => (Pos2::new(r.max.x + ASIDE, c.y), Align2::LEFT_CENTER),
        Side::AboveLeft => (c + vec2(-ASIDE, -ASIDE), Align2::RIGHT_BOTTOM),
        Side::AboveRight => (c + vec2(ASIDE, -ASIDE), Align2::LEFT_BOTTOM),
        Side::BelowLeft => (c + vec2(-ASIDE, ASIDE), Align2::RIGHT_TOP),
        Side::BelowRight => (c + vec2(ASIDE, ASIDE), Align2::LEFT_TOP),
    };
    (anchor.anchor_size(at, size), anchor.x())
}

/// Broken at the space or hyphen nearest to its middle; into more lines when that is not enough.
fn broken(text: &str, longest: f32, wide: &dyn Fn(&str) -> f32) -> String {
    let half = text.len() / 2;
    let breaks = text.char_indices().filter(|(i, c)| (*c == ' ' || *c == '-') && *i != 0);
    let (first, second) = match breaks.min_by_key(|(i, _)| i.abs_diff(half)) {
        Some((i, ' ')) => (&text[..i], &text[i + 1..]),
        Some((i, c)) => text.split_at(i + c.len_utf8()),
        None => return text.to_owned(),
    };
    if wide(first).max(wide(second)) <= longest || text.matches([' ', '-']).count() == 1 {
        return format!("{first}\n{second}");
    }
    let filled = |most: f32| {
        let mut lines: Vec<String> = Vec::new();
        for word in text.split(' ') {
            match lines.last_mut() {
                Some(line) if wide(&format!("{line} {word}")) <= most => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.push(word.to_owned()),
            }
        }
        lines
    };
    // As few lines as can be, and these alike: as narrow as that many lines allow.
    let mut lines = filled(longest);
    for tenths in (3..10u8).rev() {
        let narrower = filled(longest * f32::from(tenths) * 0.1);
        if lines.len() < narrower.len() {
            break;
        }
        lines = narrower;
    }
    lines.join("\n")
}

/// Where a terminal's number stands: over a line that goes across, right of one that goes up or down.
fn beside(spot: &Spot) -> (Pos2, Align2) {
    if spot.out.x.abs() < 0.5 {
        (spot.at + vec2(9.0, 0.0), Align2::LEFT_CENTER)
    } else {
        (spot.at - vec2(0.0, 7.0), Align2::CENTER_BOTTOM)
    }
}
