//! Lines between ports: horizontal and vertical, as few corners as can be, round every symbol.
//!
//! The cheapest way over the grid, joint after joint, by Dijkstra's algorithm: a step costs, a corner
//! costs more, to cross another line costs most; to run along a line of the same port is nearly free, so
//! that lines of one terminal share a trunk and part at a dot.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet, BinaryHeap};

use egui::{Pos2, Vec2, pos2, vec2};
use sim_core::assembly::PortRef;
use sim_core::car::Car;

use super::bodies::{Body, Spot};
use super::grid::STEP;

/// The line of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The joint.
    pub joint: u16,
    /// From port `a` to port `b`: corners.
    pub path: Vec<Pos2>,
    /// Where the joint is hit, and where it gapes when open.
    pub mid: Pos2,
    /// Along which way it gapes, a unit step.
    pub along: Vec2,
}

type Node = (i32, i32);
/// Right, down, left, up.
const WAYS: [Node; 4] = [(1, 0), (0, 1), (-1, 0), (0, -1)];

const STEP_COST: u32 = 10;
const SHARED_COST: u32 = 2;
const CORNER_COST: u32 = 45;
const CROSSING_COST: u32 = 120;
/// Close by a symbol or beside another line.
const TIGHT_COST: u32 = 25;
/// Over the target of a port that is not its own.
const TARGET_COST: u32 = 400;
/// How far round everything a line may go, steps.
const ROUND: i32 = 3;

struct Field<'a> {
    bodies: &'a [Body],
    spots: &'a [Spot],
    min: Node,
    max: Node,
    /// Stubs between symbols and their ports.
    stubs: BTreeSet<Node>,
    /// Lines so far: node, which way they pass, and the ports at their ends.
    taken: BTreeMap<Node, Vec<(bool, [PortRef; 2])>>,
}

fn node(p: Pos2) -> Node {
    ((p.x / STEP).round() as i32, (p.y / STEP).round() as i32)
}

fn point((x, y): Node) -> Pos2 {
    pos2(x as f32 * STEP, y as f32 * STEP)
}

fn step(v: Vec2) -> Node {
    (v.x.round() as i32, v.y.round() as i32)
}

/// Finds the line of every joint both of whose ports are on the sheet, and the dots where lines part.
#[must_use]
pub(super) fn route(car: &Car, bodies: &[Body], spots: &[Spot]) -> (Vec<Line>, Vec<Pos2>) {
    let find = |port: PortRef| spots.iter().find(|s| s.port == port);
    let mut joints: Vec<(u16, Spot, Spot)> = Vec::new();
    for (i, j) in car.assembly.joints.iter().enumerate() {
        if let (Some(a), Some(b)) = (find(j.a), find(j.b)) {
            joints.push((i as u16, *a, *b));
        }
    }
    let mut field = Field::new(bodies, spots);
    // Short ways first: they have the least choice.
    let mut order: Vec<usize> = (0..joints.len()).collect();
    order.sort_by_key(|&k| {
        let (_, a, b) = joints[k];
        let d = b.at - a.at;
        ((d.x.abs() + d.y.abs()).round() as i64, k)
    });
    let mut ways: BTreeMap<usize, Vec<Node>> = BTreeMap::new();
    for k in order {
        let (_, a, b) = &joints[k];
        let way = field.way(a, b).unwrap_or_else(|| vec![node(a.at), node(b.at)]);
        field.take(&way, [a.port, b.port]);
        ways.insert(k, way);
    }
    let mut mids: Vec<Pos2> = Vec::new();
    let mut lines = Vec::new();
    for (k, (joint, a, b)) in joints.iter().enumerate() {
        let others: Vec<&Vec<Node>> = ways
            .iter()
            .filter(|(o, _)| **o != k && shares(&joints[**o], [a.port, b.port]))
            .map(|(_, w)| w)
            .collect();
        let (mid, along) = middle(&ways[&k], &others, spots, &mids);
        mids.push(mid);
        lines.push(Line { joint: *joint, path: corners(&ways[&k]), mid, along });
    }
    (lines, field.dots(spots))
}

fn shares(joint: &(u16, Spot, Spot), ports: [PortRef; 2]) -> bool {
    ports.contains(&joint.1.port) || ports.contains(&joint.2.port)
}

impl<'a> Field<'a> {
    fn new(bodies: &'a [Body], spots: &'a [Spot]) -> Self {
        let (mut min, mut max) = ((i32::MAX, i32::MAX), (i32::MIN, i32::MIN));
        let corners = bodies.iter().flat_map(|b| [b.rect.min, b.rect.max]);
        for p in corners.chain(spots.iter().map(|s| s.at)) {
            let (x, y) = node(p);
            min = (min.0.min(x - ROUND), min.1.min(y - ROUND));
            max = (max.0.max(x + ROUND), max.1.max(y + ROUND));
        }
        let mut stubs = BTreeSet::new();
        for spot in spots {
            let Some(body) = bodies.iter().find(|b| b.part == spot.port.part) else { continue };
            let mut at = spot.at - spot.out * STEP;
            while !body.rect.contains(at) && (at - spot.at).length() < 12.0 * STEP {
                stubs.insert(node(at));
                at -= spot.out * STEP;
            }
        }
        Self { bodies, spots, min, max, stubs, taken: BTreeMap::new() }
    }

    fn free(&self, n: Node) -> bool {
        let inside = self.min.0 <= n.0 && n.0 <= self.max.0 && self.min.1 <= n.1 && n.1 <= self.max.1;
        inside
            && !self.stubs.contains(&n)
            && !self.bodies.iter().any(|b| b.rect.expand(STEP * 0.4).contains(point(n)))
    }

    fn cost(&self, n: Node, across: bool, ports: [PortRef; 2]) -> u32 {
        let mut cost = STEP_COST;
        let at = point(n);
        for spot in self.spots.iter().filter(|s| !ports.contains(&s.port)) {
            if (spot.at - at).abs().max_elem() < STEP * 1.9 {
                cost += TARGET_COST;
            }
        }
        if self.bodies.iter().any(|b| b.rect.expand(STEP * 1.4).contains(at)) {
            cost += TIGHT_COST;
        }
        for (way, ends) in self.taken.get(&n).into_iter().flatten() {
            let same = ends.iter().any(|e| ports.contains(e));
            if same && *way == across {
                return SHARED_COST;
            }
            if !same {
                cost += if *way == across { TARGET_COST } else { CROSSING_COST };
            }
        }
        let beside = WAYS.iter().any(|w| {
            let there = self.taken.get(&(n.0 + w.0, n.1 + w.1));
            there.into_iter().flatten().any(|(way, e)| *way == across && !e.iter().any(|p| ports.contains(p)))
        });
        if beside {
            cost += TIGHT_COST;
        }
        cost
    }

    /// The cheapest way from port to port; leaves and arrives along the ports' own directions.
    fn way(&self, a: &Spot, b: &Spot) -> Option<Vec<Node>> {
        let (from, to) = (node(a.at), node(b.at));
        let ports = [a.port, b.port];
        let arrive = step(-b.out);
        let first = WAYS.iter().position(|w| *w == step(a.out))?;
        let mut best: BTreeMap<(Node, usize), (u32, Option<(Node, usize)>)> = BTreeMap::new();
        let mut open = BinaryHeap::new();
        best.insert((from, first), (0, None));
        open.push(Reverse((0u32, from, first)));
        while let Some(Reverse((cost, n, way))) = open.pop() {
            if best.get(&(n, way)).is_some_and(|(c, _)| *c < cost) {
                continue;
            }
            if n == to && WAYS[way] == arrive {
                return Some(traced(&best, (n, way)));
            }
            for (next_way, w) in WAYS.iter().enumerate() {
                // No turning back; the first step goes straight out of the port.
                if next_way == (way + 2) % 4 || (n == from && next_way != way) {
                    continue;
                }
                let next = (n.0 + w.0, n.1 + w.1);
                if next != to && !self.free(next) {
                    continue;
                }
                let corner = if next_way == way { 0 } else { CORNER_COST };
                let total = cost + corner + self.cost(next, w.1 == 0, ports);
                let known = best.get(&(next, next_way)).map_or(u32::MAX, |(c, _)| *c);
                if total < known {
                    best.insert((next, next_way), (total, Some((n, way))));
                    open.push(Reverse((total, next, next_way)));
                }
            }
        }
        None
    }

    fn take(&mut self, way: &[Node], ends: [PortRef; 2]) {
        for pair in way.windows(2) {
            let across = pair[0].1 == pair[1].1;
            for n in pair {
                self.taken.entry(*n).or_default().push((across, ends));
            }
        }
    }

    /// Nodes at which lines of one port leave in three or four ways.
    fn dots(&self, spots: &[Spot]) -> Vec<Pos2> {
        let mut out = Vec::new();
        for (n, lines) in &self.taken {
            let mut arms = BTreeSet::new();
            for w in WAYS {
                let there = self.taken.get(&(n.0 + w.0, n.1 + w.1));
                let across = w.1 == 0;
                let joined = lines.iter().any(|(way, ends)| {
                    *way == across && there.into_iter().flatten().any(|(o, e)| *o == across && e == ends)
                });
                if joined {
                    arms.insert(w);
                }
            }
            let first = lines.first().map(|(_, e)| *e);
            let one_net = lines.iter().all(|(_, e)| first.is_some_and(|f| e.iter().any(|p| f.contains(p))));
            let at = point(*n);
            if 3 <= arms.len() && one_net && !spots.iter().any(|s| s.at == at) {
                out.push(at);
            }
        }
        out
    }
}

fn traced(best: &BTreeMap<(Node, usize), (u32, Option<(Node, usize)>)>, end: (Node, usize)) -> Vec<Node> {
    let mut way = vec![end.0];
    let mut at = end;
    while let Some((_, Some(before))) = best.get(&at) {
        way.push(before.0);
        at = *before;
    }
    way.reverse();
    way
}

/// The corners of a way, ends included.
fn corners(way: &[Node]) -> Vec<Pos2> {
    let mut out = Vec::new();
    for (i, n) in way.iter().enumerate() {
        let straight = 0 < i
            && i + 1 < way.len()
            && (n.0 - way[i - 1].0, n.1 - way[i - 1].1) == (way[i + 1].0 - n.0, way[i + 1].1 - n.1);
        if !straight {
            out.push(point(*n));
        }
    }
    out
}

/// The point of a way that is its own and has most room: from ports, from other joints, from corners.
fn middle(way: &[Node], others: &[&Vec<Node>], spots: &[Spot], mids: &[Pos2]) -> (Pos2, Vec2) {
    let half = (way.len() as f32 - 1.0) * 0.5;
    let turns: Vec<f32> = way
        .windows(3)
        .enumerate()
        .filter(|(_, w)| (w[1].0 - w[0].0, w[1].1 - w[0].1) != (w[2].0 - w[1].0, w[2].1 - w[1].1))
        .map(|(i, _)| i as f32 + 1.0)
        .collect();
    let mut best = (f32::MIN, point(way[way.len() / 2]), vec2(1.0, 0.0));
    for (i, pair) in way.windows(2).enumerate() {
        let (a, b) = (point(pair[0]), point(pair[1]));
        for (at, place) in [(a, i as f32), (a + (b - a) * 0.5, i as f32 + 0.5)] {
            let own = !others.iter().any(|o| o.iter().any(|n| (point(*n) - at).length() < STEP * 1.5));
            let room = spots.iter().map(|s| s.at).chain(mids.iter().copied());
            let room = room.map(|p| (p - at).abs().max_elem()).fold(STEP * 3.0, f32::min);
            let corner = turns.iter().map(|t| (*t - place).abs()).fold(2.0, f32::min);
            let score = room + if own { 100.0 } else { 0.0 } + corner * STEP - (place - half).abs() * 0.5;
            if best.0 < score {
                best = (score, at, (b - a) / STEP);
            }
        }
    }
    (best.1, best.2)
}
