//! Every size, scale and language: nothing vanishes, nothing lies over anything else, everything in its order.

use egui::Rect;
use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};

use super::bench::{Bench, nodes, window_scaled};
use crate::shown::{Middle, Page};

const SIZES: [(f32, f32); 2] = [(1280.0, 720.0), (1920.0, 1080.0)];
const SCALES: [f32; 4] = [1.0, 1.25, 1.5, 2.0];
const LANGUAGES: [&str; 2] = ["en", "de"];
/// With a dial and a display in use.
const AT_WORK: &str = "chocks on\nfit gauge valve_m.store\nfit meter battery.plus battery.minus\nmeter volt";

/// Least face of an instrument that can be read, pixels; and what rounding takes of it.
const FACE_PX: f32 = 150.0 - 1.0;
/// Least share of the window's height for the sheets of the line diagram, alone (under bar and strip, over a tray in
/// which a needle can be read) and beside the room.
const SHEETS: f32 = 0.44;
const SHEETS_BESIDE: f32 = 0.24;
/// Least share of the sheets that is seen without moving them, alone and beside the room.
const WHOLE: f32 = 0.99;
const NEARLY: f32 = 0.85;

type Window = Harness<'static, Bench>;

fn all(mut each: impl FnMut(&str, (f32, f32), f32, &str)) {
    for size in SIZES {
        for scale in SCALES {
            for lang in LANGUAGES {
                each(&format!("{} × {} at {scale}, {lang}", size.0, size.1), size, scale, lang);
            }
        }
    }
}

fn at_work(lang: &str, size: (f32, f32), scale: f32, middle: Middle) -> Window {
    window_scaled(Page::Workshop, lang, size, scale, |bench| {
        bench.shop.play(AT_WORK).unwrap();
        bench.ui.middle = middle;
        bench.ui.remarks.let_go(&bench.shop);
    })
}

fn say(window: &Window, key: &str) -> String {
    window.state().words.say(key)
}

/// Where what is called so is, if it is there.
fn place(window: &Window, label: &str) -> Option<Rect> {
    let found = window.query_all_by_label(label).next()?;
    Some(found.rect())
}

/// Where these are, each inside the window and after the one before it.
fn in_a_row(window: &Window, case: &str, labels: &[String]) -> Vec<Rect> {
    let whole = window.ctx.content_rect().expand(0.5);
    let mut row: Vec<Rect> = Vec::new();
    for label in labels {
        let rect = place(window, label).unwrap_or_else(|| panic!("{case}: {label:?} is not there"));
        assert!(whole.contains_rect(rect), "{case}: {label:?} at {rect} is not in {whole}");
        if let Some(before) = row.last() {
            assert!(before.right() <= rect.left() + 0.5, "{case}: {label:?} at {rect}, {before} before it");
        }
        row.push(rect);
    }
    row
}

/// Opens a menu by its button and checks that what is in it is in the window, one under the other.
fn in_a_menu(window: &mut Window, case: &str, button: &str, labels: &[String]) {
    window.get_all_by_label(button).next().unwrap().click();
    window.run_steps(4);
    let whole = window.ctx.content_rect().expand(0.5);
    let mut last = f32::NEG_INFINITY;
    for label in labels {
        let rect = window.query_all_by_label(label).last().map(|n| n.rect());
        let rect = rect.unwrap_or_else(|| panic!("{case}: {label:?} is not in the menu {button:?}"));
        assert!(whole.contains_rect(rect), "{case}: {label:?} at {rect} is not in {whole}");
        assert!(last < rect.top(), "{case}: {label:?} is out of order");
        last = rect.top();
    }
    window.key_press(egui::Key::Escape);
    window.run_steps(4);
}

#[test]
fn inv_the_top_bar_has_all_its_buttons_in_order_at_every_size() {
    all(|case, size, scale, lang| {
        let mut window = at_work(lang, size, scale, Middle::Room);
        let of = |keys: &[&str]| keys.iter().map(|key| say(&window, key)).collect::<Vec<_>>();
        let stations = of(&["station-desk", "station-cab", "station-bay", "station-front", "station-bench"]);
        let middles = of(&["middle-room", "middle-diagram", "middle-both"]);
        let outs = of(&["bar-hand-back", "bar-settings", "bar-leave"]);
        let menu = say(&window, "bar-menu");
        let eye = window.state().ui.eye;
        let here = say(&window, front::words::station_key(eye));
        let folded = window.state().words.say_with("bar-station", &[("station", here.into())]);
        let has = |label: &str| place(&window, label).is_some();
        let (few_stations, few_outs) = (has(&folded), has(&menu));
        let mut row = if few_stations { vec![folded.clone()] } else { stations.clone() };
        row.extend(middles);
        row.extend(if few_outs { vec![menu.clone()] } else { outs.clone() });
        in_a_row(&window, case, &row);
        if few_stations {
            in_a_menu(&mut window, case, &folded, &stations);
        }
        if few_outs {
            in_a_menu(&mut window, case, &menu, &outs);
        }
    });
}

#[test]
fn inv_the_ways_out_of_the_front_desk_stand_in_one_order_at_every_size() {
    all(|case, size, scale, lang| {
        let window = window_scaled(Page::FrontDesk, lang, size, scale, |_| {});
        let outs = ["bar-settings", "desk-leave"].map(|key| say(&window, key));
        in_a_row(&window, case, &outs);
    });
}

#[test]
fn inv_clock_pace_tools_and_clipboard_are_at_hand_at_every_size() {
    all(|case, size, scale, lang| {
        for middle in [Middle::Room, Middle::Diagram, Middle::Both] {
            let case = format!("{case}, {middle:?}");
            let mut window = at_work(lang, size, scale, middle);
            let whole = window.ctx.content_rect().expand(0.5);
            let time = super::super::remarks::clock(window.state().shop.view().unwrap().tick);
            let clock = window.state().words.say_with("clock-name", &[("time", time.into())]);
            let paces = ["pace-hold", "pace-live", "pace-ten", "pace-sixty"].map(|key| {
                let pace = say(&window, key);
                window.state().words.say_with("pace-name", &[("pace", pace.into())])
            });
            in_a_row(&window, &case, &[clock]);
            in_a_row(&window, &case, &paces);
            // The clipboard: open, or the button that opens it.
            let (tab, open) = (say(&window, "leaf-finding"), say(&window, "clipboard-open"));
            let clipboard = place(&window, &open).or_else(|| place(&window, &tab));
            let clipboard = clipboard.unwrap_or_else(|| panic!("{case}: no clipboard"));
            assert!(whole.contains_rect(clipboard), "{case}: clipboard at {clipboard}");
            // The tray: its pages, and a whole instrument that can be read, after a click at most.
            let (n, board) = (("n", 2.into()), say(&window, "tray-board"));
            let in_use = window.state().words.say_with("tray-in-use", &[n]);
            in_a_row(&window, &case, &[in_use.clone(), board]);
            let face = |window: &Window| {
                nodes(window)
                    .iter()
                    .filter(|n| n.accesskit_node().role() == Role::Image)
                    .map(egui_kittest::Node::rect)
                    .find(|rect| {
                        whole.contains_rect(*rect) && FACE_PX <= rect.width().min(rect.height()) * scale
                    })
            };
            if face(&window).is_none() {
                window.get_by_label(&in_use).click();
                window.run_steps(4);
            }
            assert!(face(&window).is_some(), "{case}: no instrument can be read");
        }
    });
}

#[test]
fn inv_nothing_moves_when_a_reading_waits_to_be_noted() {
    all(|case, size, scale, lang| {
        let mut window = at_work(lang, size, scale, Middle::Room);
        let board = say(&window, "tray-board");
        let (before, scene) = (place(&window, &board), window.state().ui.scene);
        window.state_mut().shop.play("read gauge").unwrap();
        window.run_steps(4);
        let note = say(&window, "tray-note-it");
        in_a_row(&window, case, &[board.clone(), note]);
        assert_eq!((place(&window, &board), window.state().ui.scene), (before, scene), "{case}");
    });
}

#[test]
fn inv_the_sheets_have_their_share_and_are_not_cut_at_any_size() {
    all(|case, size, scale, lang| {
        for (middle, share, seen) in [(Middle::Diagram, SHEETS, WHOLE), (Middle::Both, SHEETS_BESIDE, NEARLY)]
        {
            let window = at_work(lang, size, scale, middle);
            let whole = window.ctx.content_rect();
            let (canvas, lies) = window.state().ui.diagram.board.unwrap();
            let got = canvas.height() / whole.height();
            assert!(share <= got, "{case}, {middle:?}: the sheets have {got:.2} of the height");
            let part = canvas.intersect(lies).area() / lies.area();
            assert!(seen <= part, "{case}, {middle:?}: {part:.2} of the sheets is seen: {lies} in {canvas}");
        }
    });
}

#[test]
fn inv_both_sheets_are_both_seen_at_every_size() {
    all(|case, size, scale, lang| {
        let mut window = at_work(lang, size, scale, Middle::Diagram);
        let both = say(&window, "diagram-sheet-both");
        window.get_by_label(&both).click();
        window.run_steps(4);
        let (canvas, lies) = window.state().ui.diagram.board.unwrap();
        let part = canvas.intersect(lies).area() / lies.area();
        assert!(NEARLY <= part, "{case}: {part:.2} of both sheets is seen: {lies} in {canvas}");
    });
}

#[test]
fn inv_no_two_widgets_of_the_panels_lie_over_each_other_at_any_size() {
    const KEYS: [&str; 18] = [
        "middle-room",
        "middle-diagram",
        "middle-both",
        "bar-menu",
        "bar-hand-back",
        "bar-settings",
        "bar-leave",
        "time-menu",
        "tray-board",
        "tray-wall",
        "clipboard-open",
        "clipboard-fold",
        "leaf-card",
        "leaf-finding",
        "diagram-sheet-air",
        "diagram-fit",
        "diagram-legend",
        "room-names",
    ];
    all(|case, size, scale, lang| {
        for middle in [Middle::Room, Middle::Diagram, Middle::Both] {
            let window = at_work(lang, size, scale, middle);
            let found: Vec<(&str, Rect)> =
                KEYS.iter().filter_map(|key| Some((*key, place(&window, &say(&window, key))?))).collect();
            assert!(8 < found.len(), "{case}: {found:?}");
            for (i, (a, at)) in found.iter().enumerate() {
                for (b, other) in &found[i + 1..] {
                    let over = at.shrink(1.0).intersect(other.shrink(1.0));
                    assert!(!over.is_positive(), "{case}, {middle:?}: {a} at {at} and {b} at {other}");
                }
            }
        }
    });
}

#[test]
fn inv_what_belongs_to_the_room_is_drawn_nowhere_else() {
    use crate::marks::RoomMarks;
    use front::hands::Thing;
    all(|case, size, scale, lang| {
        for middle in [Middle::Room, Middle::Both] {
            let mut window = at_work(lang, size, scale, middle);
            let (at, scene) = (window.state().ui.eye, window.state().ui.scene.expect("the room is shown"));
            // Larger than the room on every side: a thing that is seen in part.
            let beyond = scene.expand(40.0);
            let line =
                vec![beyond.left_top(), beyond.right_top(), beyond.right_bottom(), beyond.left_bottom()];
            let (spot, home) = (scene.center_bottom() - egui::vec2(0.0, 20.0), beyond.center_bottom());
            let marks = RoomMarks {
                at,
                scene,
                spots: [(Thing::Key, spot)].into(),
                homes: [(Thing::Key, home)].into(),
            };
            let ui = &mut window.state_mut().ui;
            ui.outline = vec![line.clone()];
            ui.marks.set_room(Some(marks));
            window.run_steps(2);
            let scene = window.state().ui.scene.expect("the room is shown").expand(0.5);
            let mut seen = [0; 2];
            for drawn in &window.output().shapes {
                let which = match &drawn.shape {
                    egui::Shape::Path(path) if path.points == line => 0,
                    egui::Shape::LineSegment { points, .. } if points[1] == home => 1,
                    _ => continue,
                };
                seen[which] += 1;
                assert!(scene.contains_rect(drawn.clip_rect), "{case}: {} over {scene}", drawn.clip_rect);
            }
            assert!(seen.iter().all(|n| 0 < *n), "{case}: outline and lines of marks drawn {seen:?} times");
        }
    });
}
