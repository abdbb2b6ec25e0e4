//! Every car's drawing, measured in both languages.

use std::collections::BTreeMap;
use std::sync::Arc;

use assess::attempt::Seed;
use assess::diagram::form::form;
use assess::diagram::{Origin, Sheet};
use assess::play::{Begin, Session};
use egui::{Rect, Vec2};
use egui_kittest::kittest::Queryable as _;
use sim_core::params::ParamDef;
use sim_core::parts::{ALL_TABLES, PartKind};

use super::super::labels::{Written, is_free, on_edge};
use super::super::layout::Plan;
use super::super::pen::{Pen, Sym};
use super::super::symbols::{self, Now};
use super::super::targets::targets;
use super::super::written;
use super::{harness, window};

/// Least side of a target, and least distance of two ports (WCAG 2.2: 24 px).
const LEAST: f32 = 24.0;

/// Every car of the library, drawn or in rows, with its sheets.
fn drawings() -> Vec<(std::sync::Arc<sim_core::car::Car>, Vec<Plan>)> {
    let library = assess::pack::Library::open(&super::root()).unwrap();
    let cars = library.cars().unwrap();
    assert!(!cars.is_empty());
    cars.iter()
        .map(|id| {
            let car = library.car(id).unwrap();
            let diagram = library.diagram(&car).unwrap_or_else(|e| panic!("{e}"));
            let plans = Sheet::ALL.map(|sheet| Plan::new(&car, &diagram, sheet)).into();
            (car, plans)
        })
        .collect()
}

#[test]
fn every_part_port_and_joint_is_drawn_once() {
    for (car, plans) in drawings() {
        let mut ports = BTreeMap::new();
        for plan in &plans {
            for spot in &plan.spots {
                assert_eq!(car.assembly.domain(spot.port), plan.sheet.domain());
                *ports.entry(spot.port).or_insert(0) += 1;
            }
        }
        for port in car.assembly.ports() {
            assert_eq!(ports.get(&port), Some(&1), "{}: {}", car.id, car.assembly.port_name(port));
        }
        for i in 0..car.assembly.parts.len() {
            assert!(plans.iter().any(|p| p.body(i as u16).is_some()), "{}", car.assembly.parts[i].id);
        }
        for (i, joint) in car.assembly.joints.iter().enumerate() {
            let lines = plans.iter().flat_map(|p| &p.lines).filter(|l| usize::from(l.joint) == i);
            assert_eq!(lines.count(), 1, "{}", joint.id);
        }
    }
}

#[test]
fn symbols_do_not_overlap_and_ports_are_free() {
    for (car, plans) in drawings() {
        let id = |part: u16| &car.assembly.parts[usize::from(part)].id;
        for plan in &plans {
            for (i, a) in plan.bodies.iter().enumerate() {
                for b in &plan.bodies[i + 1..] {
                    assert!(!a.rect.intersects(b.rect), "{} lies over {}", id(a.part), id(b.part));
                }
                for spot in &plan.spots {
                    let port = car.assembly.port_name(spot.port);
                    assert!(!a.rect.shrink(0.1).contains(spot.at), "{} lies over {port}", id(a.part));
                }
            }
        }
    }
}

#[test]
fn every_target_can_be_hit_by_itself() {
    for (car, plans) in drawings() {
        for plan in &plans {
            let all = targets(&car, plan, &[]);
            for (i, a) in all.iter().enumerate() {
                let size = a.rect.size();
                assert!(LEAST <= size.x && LEAST <= size.y, "{:?} is {size:?}", a.thing);
                for b in &all[i + 1..] {
                    let shared = a.rect.intersect(b.rect);
                    let over = shared.width().min(shared.height());
                    assert!(over <= 0.5, "{:?} and {:?} share {over} points", a.thing, b.thing);
                }
            }
            for (i, a) in plan.spots.iter().enumerate() {
                for b in &plan.spots[i + 1..] {
                    let apart = (a.at - b.at).abs().max_elem();
                    assert!(
                        LEAST <= apart,
                        "{} and {} are {apart} points apart",
                        car.assembly.port_name(a.port),
                        car.assembly.port_name(b.port)
                    );
                }
            }
        }
    }
}

#[test]
fn lines_are_square_and_keep_off_symbols_and_each_other() {
    for (car, plans) in drawings() {
        for plan in &plans {
            for line in &plan.lines {
                let joint = &car.assembly.joints[usize::from(line.joint)];
                for w in line.path.windows(2) {
                    let d = w[1] - w[0];
                    assert!(d.x.abs() < 0.1 || d.y.abs() < 0.1, "{} runs aslant", joint.id);
                    let r = Rect::from_two_pos(w[0], w[1]);
                    for body in &plan.bodies {
                        let id = &car.assembly.parts[usize::from(body.part)].id;
                        assert!(!body.rect.shrink(0.1).intersects(r), "{} crosses {id}", joint.id);
                    }
                    for other in &plan.lines {
                        let o = &car.assembly.joints[usize::from(other.joint)];
                        if [o.a, o.b].iter().any(|p| [joint.a, joint.b].contains(p)) {
                            continue;
                        }
                        for v in other.path.windows(2) {
                            let shared = r.intersect(Rect::from_two_pos(v[0], v[1]));
                            let long = shared.size().max_elem();
                            let runs =
                                shared.min.x <= shared.max.x && shared.min.y <= shared.max.y && 1.0 < long;
                            assert!(!runs, "{} runs along {}", joint.id, o.id);
                        }
                    }
                }
            }
        }
    }
}

/// A sheet of a car as the window writes it, nothing done yet.
struct Sheeted {
    car: String,
    origin: Origin,
    plan: Plan,
    written: Written,
}

/// Every sheet of every car.
fn sheets(lang: &'static str) -> Vec<Sheeted> {
    let mut w = harness(window(lang), (1280.0, 720.0));
    w.run_steps(3);
    let (state, ctx) = (w.state(), w.ctx.clone());
    let library = state.shop.library();
    let mut out = Vec::new();
    for id in library.cars().unwrap() {
        let car = library.car(&id).unwrap();
        let diagram = library.diagram(&car).unwrap();
        let mut job = library.job("first-shift/hum-at-the-lights").unwrap();
        job.spares = library.spares(&car).unwrap();
        job.car = Arc::clone(&car);
        job.set_answer(Vec::new());
        let session = Session::rehearse(Arc::new(job), &Begin::rehearsal(Seed(1)));
        let view = session.workshop().view();
        for sheet in Sheet::ALL {
            let plan = Plan::new(&car, &diagram, sheet);
            let written = written(&ctx, &car, &view, &state.words, &diagram, &plan);
            out.push(Sheeted { car: id.clone(), origin: diagram.origin, plan, written });
        }
    }
    out
}

#[test]
fn words_keep_off_symbols_lines_edges_and_each_other() {
    for lang in ["en", "de"] {
        for Sheeted { car, plan, written, .. } in sheets(lang) {
            let lang = format!("{lang}, {car}, {:?}", plan.sheet);
            for (i, text) in written.texts.iter().enumerate() {
                let inner = text.rect.shrink(0.5);
                assert!(is_free(&plan, inner), "{lang}: {:?} lies over a line or a symbol", text.text);
                let edges = on_edge(&written.outlines, inner.shrink(1.0));
                assert!(!edges, "{lang}: {:?} lies over a cover's edge", text.text);
                assert!(written.rect.contains_rect(inner), "{lang}: {:?} leaves the sheet", text.text);
                for line in &plan.lines {
                    let mark = Rect::from_center_size(line.mid, Vec2::splat(10.0));
                    assert!(!mark.intersects(inner), "{lang}: {:?} lies over a joint", text.text);
                }
                for other in &written.texts[i + 1..] {
                    let both = (&text.text, &other.text);
                    assert!(!other.rect.shrink(0.5).intersects(inner), "{lang}: {both:?} overlap");
                }
            }
        }
    }
}

#[test]
fn covers_are_named_at_their_outlines() {
    for lang in ["en", "de"] {
        let drawn = sheets(lang).into_iter().filter(|s| s.origin == Origin::Drawn);
        for Sheeted { car, plan, written, .. } in drawn {
            let barred = written.outlines.len();
            let names = written
                .texts
                .iter()
                .filter(|t| t.text.contains(if lang == "en" { "behind" } else { "unter:" }));
            assert_eq!(names.count(), barred, "{lang}, {car}: {:?}", plan.sheet);
        }
    }
}

#[test]
fn sheets_fit_the_middle_of_the_smallest_window_across() {
    for lang in ["en", "de"] {
        let drawn = sheets(lang).into_iter().filter(|s| s.origin == Origin::Drawn);
        for Sheeted { plan, written, .. } in drawn {
            let size = written.rect.size();
            assert!(size.x <= 960.0 && size.y <= 400.0, "{lang}: {:?} is {size:?}", plan.sheet);
        }
    }
}

#[test]
fn every_word_of_the_diagram_is_there_in_both_languages() {
    for lang in ["en", "de"] {
        let mut w = harness(window(lang), (1280.0, 720.0));
        w.state_mut().ui.diagram.legend = true;
        w.run_steps(3);
        let missing: Vec<String> =
            w.state().words.missing().into_iter().filter(|k| k.starts_with("diagram")).collect();
        assert!(missing.is_empty(), "{lang}: {missing:?}");
        let en = std::fs::read_to_string(super::root().join("assets/locales/en/diagram.ftl")).unwrap();
        let own = std::fs::read_to_string(super::root().join(format!("assets/locales/{lang}/diagram.ftl")))
            .unwrap();
        let keys = |text: &str| -> Vec<String> {
            text.lines().filter_map(|l| Some(l.split_once(" = ")?.0.to_owned())).collect()
        };
        assert_eq!(keys(&en), keys(&own), "{lang}");
        // Every kind of part has a sign with words.
        for kind in every_kind() {
            for sheet in Sheet::ALL {
                let key = format!("diagram-sign-{}-{} = ", sheet.name(), kind.name().to_lowercase());
                assert_eq!(form(&kind, sheet).is_some(), own.contains(&key), "{lang}: {key}");
            }
        }
    }
}

/// Every kind of part, its numbers at their least.
fn every_kind() -> Vec<PartKind> {
    let numbers = |table: &[ParamDef]| -> serde_json::Map<_, _> {
        table.iter().map(|d| (d.name.to_owned(), d.min.into())).collect()
    };
    let kind = |(name, table): &(&str, &[ParamDef])| {
        serde_json::from_value(serde_json::json!({ *name: numbers(table) })).unwrap()
    };
    let all: Vec<PartKind> = ALL_TABLES.iter().map(kind).collect();
    assert_eq!(all.len(), PartKind::NAMES.len());
    all
}

#[test]
fn every_kind_has_a_symbol_with_its_own_ports() {
    for kind in every_kind() {
        for sheet in Sheet::ALL {
            let name = kind.name();
            let mut own: Vec<&str> =
                kind.ports().iter().filter(|d| d.domain == sheet.domain()).map(|d| d.name).collect();
            let Some(form) = form(&kind, sheet) else {
                assert_eq!(own, [""; 0], "{name} has no symbol on the sheet of {}", sheet.name());
                continue;
            };
            // A car body's points are the diagram's.
            if !matches!(kind, PartKind::Body(_)) {
                let mut drawn: Vec<&str> = form.ports.iter().map(|p| p.name).collect();
                own.sort_unstable();
                drawn.sort_unstable();
                assert_eq!(own, drawn, "{name} on the sheet of {}", sheet.name());
            }
            let body = form.body;
            for port in &form.ports {
                // Its line leaves away from the symbol.
                let (x, y, out) = (port.at.0 as f32, port.at.1 as f32, port.out.step());
                let beyond = match out {
                    (1, _) => body.right < x,
                    (-1, _) => x < body.left,
                    (_, 1) => body.bottom < y,
                    _ => y < body.top,
                };
                assert!(beyond, "{name}.{} leaves through its own symbol", port.name);
            }
        }
    }
}

/// What a symbol puts on the paper.
fn strokes(kind: &PartKind, sheet: Sheet) -> usize {
    let ctx = egui::Context::default();
    let mut output = ctx.run_ui(egui::RawInput::default(), |root| {
        let painter = root.painter().clone();
        let pen = Pen {
            painter: &painter,
            origin: egui::Pos2::ZERO,
            zoom: 1.0,
            ink: egui::Color32::BLACK,
            paper: egui::Color32::WHITE,
        };
        symbols::draw(kind, sheet, &Sym { pen, at: egui::Pos2::ZERO, turn: 0 }, Now::default());
    });
    output.textures_delta.clear();
    output.shapes.iter().filter(|s| s.shape != egui::Shape::Noop).count()
}

#[test]
fn every_symbol_is_drawn_and_nothing_is_drawn_where_there_is_none() {
    for kind in every_kind() {
        for sheet in Sheet::ALL {
            let has = form(&kind, sheet).is_some() && !matches!(kind, PartKind::Body(_));
            assert_eq!(0 < strokes(&kind, sheet), has, "{} on the sheet of {}", kind.name(), sheet.name());
        }
    }
}

#[test]
fn a_sheet_in_rows_says_so_and_a_drawn_one_does_not() {
    for lang in ["en", "de"] {
        let mut w = harness(window(lang), (1280.0, 720.0));
        w.run_steps(3);
        let note = w.state().words.say("diagram-in-rows");
        assert_eq!(w.query_all_by_label(&note).count(), 0, "{lang}");
        let Some(Ok(drawn)) = &mut w.state_mut().ui.diagram.drawn else { panic!("no drawing") };
        drawn.diagram.origin = Origin::Rows;
        w.run_steps(3);
        assert_eq!(w.query_all_by_label(&note).count(), Sheet::ALL.len(), "{lang}: once on each sheet");
    }
}
