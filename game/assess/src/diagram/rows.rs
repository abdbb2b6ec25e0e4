//! A diagram for a car that nobody has drawn yet: parts in rows, in the order in which a hand follows them.
//!
//! Four steps between ports, so that both ports and the joint between them can be hit; a chain that does not
//! fit into what is left of a row begins the next one. A symbol with two ports is turned so that its neighbour in
//! the row is beside it. Earth points stand along the foot, under what is joined to them.

use std::collections::BTreeMap;

use sim_core::assembly::{Assembly, PortRef};
use sim_core::car::Car;
use sim_core::parts::{Domain, PartKind};

use super::chains::chains;
use super::form::{Area, Form, Way, form, turned};
use super::{Sheet, Side};

/// Between two ports that stand beside each other, and between two symbols.
const GAP: i32 = 4;
/// The least width of a symbol and its name.
const LEAST_WIDTH: i32 = 8;
/// A row is no longer than this.
const ROW: i32 = 76;
/// Between two rows: names of three lines, and lines.
const BETWEEN_ROWS: i32 = 8;

/// A part as placed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Placed {
    pub(crate) part: u16,
    pub(crate) sheet: Sheet,
    pub(crate) at: (i32, i32),
    pub(crate) turn: u8,
    pub(crate) side: Side,
    /// Earth points of a car body: port and place.
    pub(crate) points: Vec<(u8, (i32, i32))>,
}

/// A part on its way into a row.
struct Cell {
    part: u16,
    turn: u8,
    /// Grid steps from its middle, ports and symbol.
    left: i32,
    right: i32,
    up: i32,
    down: i32,
}

/// Places every part of a car on each sheet it belongs to.
pub(crate) fn places(car: &Car) -> Vec<Placed> {
    Sheet::ALL.into_iter().flat_map(|sheet| on_sheet(&car.assembly, sheet)).collect()
}

fn on_sheet(assembly: &Assembly, sheet: Sheet) -> Vec<Placed> {
    let mut out = Vec::new();
    let mut top = 2;
    for row in rows(assembly, sheet) {
        let up = row.iter().map(|c| c.up).max().unwrap_or(0);
        let down = row.iter().map(|c| c.down).max().unwrap_or(0);
        let (mut x, y) = (2, top + up);
        for cell in row {
            let at = (x + cell.left, y);
            x = at.0 + cell.right + GAP;
            out.push(Placed {
                part: cell.part,
                sheet,
                at,
                turn: cell.turn,
                side: Side::Below,
                points: vec![],
            });
        }
        top = y + down + BETWEEN_ROWS;
    }
    for (part, kind) in assembly.parts.iter().map(|p| &p.kind).enumerate() {
        if matches!(kind, PartKind::Body(_)) && sheet.domain() == Domain::Electrical {
            let earth = earth(assembly, part as u16, top, &out);
            top += BETWEEN_ROWS;
            out.push(earth);
        }
    }
    out
}

/// Parts of a sheet in rows: chain after chain, then what is joined to nothing; car bodies left out.
fn rows(assembly: &Assembly, sheet: Sheet) -> Vec<Vec<Cell>> {
    let mut chained: Vec<Vec<Cell>> = Vec::new();
    let mut seen = vec![false; assembly.parts.len()];
    let mut put = |chained: &mut Vec<Vec<Cell>>, part: u16, entry: Option<u8>, exit: Option<u8>| {
        let index = usize::from(part);
        if !std::mem::replace(&mut seen[index], true)
            && let Some(cell) = cell(&assembly.parts[index].kind, sheet, part, entry, exit)
            && let Some(chain) = chained.last_mut()
        {
            chain.push(cell);
        }
    };
    for link in chains(assembly, sheet.domain()) {
        if link.begins {
            chained.push(Vec::new());
        }
        put(&mut chained, link.from.part, None, Some(link.from.port));
        put(&mut chained, link.to.part, Some(link.to.port), None);
    }
    chained.push(Vec::new());
    for part in 0..assembly.parts.len() {
        put(&mut chained, part as u16, None, None);
    }
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    let mut used = ROW;
    for chain in chained {
        let width = |cells: &[Cell]| cells.iter().map(|c| c.left + c.right + GAP).sum::<i32>();
        if ROW < used + width(&chain) && !chain.is_empty() {
            rows.push(Vec::new());
            used = 0;
        }
        for cell in chain {
            let needs = width(std::slice::from_ref(&cell));
            if ROW < used + needs {
                rows.push(Vec::new());
                used = 0;
            }
            used += needs;
            if let Some(row) = rows.last_mut() {
                row.push(cell);
            }
        }
    }
    rows.retain(|row| !row.is_empty());
    rows
}

/// Turned so that the port it is entered by looks back along the row, else so that the one it is left by looks
/// ahead.
fn cell(kind: &PartKind, sheet: Sheet, part: u16, entry: Option<u8>, exit: Option<u8>) -> Option<Cell> {
    if matches!(kind, PartKind::Body(_)) {
        return None;
    }
    let form = form(kind, sheet)?;
    let faces = |port: Option<u8>, wanted: Way| {
        let name = kind.ports().get(usize::from(port?))?.name;
        let out = form.ports.iter().find(|p| p.name == name)?.out;
        (0..4).find(|turn| out.turned(*turn) == wanted)
    };
    // Always drawn upright: hands find pedal, starter and key at one side of it.
    let turn = if kind.seen().by_hand.is_some() {
        0
    } else {
        faces(entry, Way::Left).or_else(|| faces(exit, Way::Right)).unwrap_or(0)
    };
    Some(sized(&form, part, turn))
}

fn sized(form: &Form, part: u16, turn: u8) -> Cell {
    let Area { left, top, right, bottom } = form.body.turned(turn);
    let out = |steps: f32| steps.ceil() as i32;
    let mut cell = Cell { part, turn, left: out(-left), right: out(right), up: out(-top), down: out(bottom) };
    for port in &form.ports {
        let (x, y) = turned(port.at, turn);
        cell.left = cell.left.max(-x);
        cell.right = cell.right.max(x);
        cell.up = cell.up.max(-y);
        cell.down = cell.down.max(y);
    }
    let narrow = (LEAST_WIDTH - cell.left - cell.right).max(0);
    cell.left += narrow / 2;
    cell.right += narrow - narrow / 2;
    cell
}

/// A car body along the foot of the sheet: each earth point under what is joined to it.
fn earth(assembly: &Assembly, part: u16, top: i32, placed: &[Placed]) -> Placed {
    let wanted = |port: PortRef| {
        let joint = assembly.joints.iter().find(|j| j.a == port || j.b == port)?;
        let other = if joint.a == port { joint.b } else { joint.a };
        placed.iter().find(|p| p.part == other.part).map(|p| p.at.0)
    };
    let mut points: BTreeMap<(i32, u8), u8> = BTreeMap::new();
    for port in 0..assembly.parts[usize::from(part)].kind.ports().len() as u8 {
        points.insert((wanted(PortRef { part, port }).unwrap_or(i32::MAX), port), port);
    }
    let mut x = 0;
    let mut placed = Vec::new();
    for ((wanted, _), port) in points {
        x = if wanted == i32::MAX { x + GAP } else { wanted.max(x + GAP) };
        placed.push((port, (x, top)));
    }
    Placed {
        part,
        sheet: Sheet::Wiring,
        at: (x + 2 * GAP, top + 1),
        turn: 0,
        side: Side::Right,
        points: placed,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pack::Library;

    fn cars() -> Vec<std::sync::Arc<Car>> {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let library = Library::open(&root).unwrap();
        library.cars().unwrap().iter().map(|id| library.car(id).unwrap()).collect()
    }

    /// Where a placed symbol's ports are.
    fn ports(car: &Car, placed: &Placed) -> Vec<(i32, i32)> {
        let form = form(&car.assembly.parts[usize::from(placed.part)].kind, placed.sheet).unwrap();
        let own = form.ports.iter().map(|p| {
            let (x, y) = turned(p.at, placed.turn);
            (placed.at.0 + x, placed.at.1 + y)
        });
        own.chain(placed.points.iter().map(|(_, at)| *at)).collect()
    }

    #[test]
    fn ports_of_two_parts_are_four_steps_apart_and_symbols_keep_clear_of_each_other() {
        for car in cars() {
            let all = places(&car);
            for (i, a) in all.iter().enumerate() {
                for b in all[i + 1..].iter().filter(|b| b.sheet == a.sheet) {
                    for p in ports(&car, a) {
                        for q in ports(&car, b) {
                            let apart = (p.0 - q.0).abs().max((p.1 - q.1).abs());
                            assert!(
                                GAP <= apart,
                                "{}: {apart} between parts {} and {}",
                                car.id,
                                a.part,
                                b.part
                            );
                        }
                    }
                    let area = |p: &Placed| {
                        let kind = &car.assembly.parts[usize::from(p.part)].kind;
                        let body = form(kind, p.sheet).unwrap().body.turned(p.turn);
                        let (x, y) = (p.at.0 as f32, p.at.1 as f32);
                        (x + body.left, y + body.top, x + body.right, y + body.bottom)
                    };
                    let (m, n) = (area(a), area(b));
                    let over = m.0 < n.2 && n.0 < m.2 && m.1 < n.3 && n.1 < m.3;
                    assert!(!over, "{}: parts {} and {} lie over each other", car.id, a.part, b.part);
                }
            }
        }
    }

    #[test]
    fn parts_that_are_joined_and_stand_beside_each_other_face_each_other() {
        for car in cars() {
            let mut faced = 0;
            for pair in places(&car).windows(2).filter(|w| w[0].sheet == w[1].sheet && w[0].at.1 == w[1].at.1)
            {
                let at = |port: PortRef| {
                    let placed = pair.iter().find(|p| p.part == port.part)?;
                    let kind = &car.assembly.parts[usize::from(port.part)].kind;
                    let name = kind.ports()[usize::from(port.port)].name;
                    let it = form(kind, placed.sheet)?.ports.into_iter().find(|p| p.name == name)?;
                    let (x, y) = turned(it.at, placed.turn);
                    Some((placed.at.0 + x, placed.at.1 + y, port.part))
                };
                let joined = car.assembly.joints.iter().filter_map(|j| Some((at(j.a)?, at(j.b)?)));
                let beside = |(a, b): &((i32, i32, u16), (i32, i32, u16))| {
                    a.2 != b.2 && a.1 == b.1 && (GAP..=GAP + 2).contains(&(a.0 - b.0).abs())
                };
                faced += joined.filter(beside).count();
            }
            // At the least the joints of a hose between two others, on each sheet.
            assert!(6 <= faced, "{}: {faced}", car.id);
        }
    }
}
