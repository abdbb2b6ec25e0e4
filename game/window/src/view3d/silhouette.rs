//! The outline of a thing as lines over the picture: where a processor draws the room, a hull in the room
//! would have all of it drawn again for every thing that is pointed at.
//!
//! The thing's triangles are projected onto a mask of the screen; the edge of the mask, walked round and
//! smoothed, is the outline. What stands before the thing is not asked: one sees through to it.

use std::collections::BTreeMap;

use bevy::math::{Affine3A, Vec3};
use egui::{Pos2, Rect};

use super::camera::Lens;
use super::shapes::Geo;

/// Size of the mask's cells, points.
const CELL: f32 = 1.5;
/// How far outside the thing the outline runs, cells.
const OUTSIDE: i32 = 1;
/// Times that the line is smoothed.
const SMOOTH: usize = 2;
/// Shorter lines round specks are left out, cells.
const SHORTEST: usize = 10;

/// Cells of the screen that a thing covers.
struct Mask {
    wide: i32,
    high: i32,
    cells: Vec<bool>,
}

impl Mask {
    fn new(wide: i32, high: i32) -> Self {
        Self { wide, high, cells: vec![false; (wide * high) as usize] }
    }

    fn is(&self, x: i32, y: i32) -> bool {
        (0..self.wide).contains(&x) && (0..self.high).contains(&y) && self.cells[(y * self.wide + x) as usize]
    }

    fn set(&mut self, x: i32, y: i32) {
        if (0..self.wide).contains(&x) && (0..self.high).contains(&y) {
            self.cells[(y * self.wide + x) as usize] = true;
        }
    }

    /// Fills a triangle, its corners in cells; one smaller than a cell fills the cell it is in.
    fn fill(&mut self, [a, b, c]: [Pos2; 3]) {
        let low = |v: [f32; 3], most: i32| (v[0].min(v[1]).min(v[2]).floor() as i32).clamp(0, most);
        let top = |v: [f32; 3], most: i32| (v[0].max(v[1]).max(v[2]).ceil() as i32).clamp(0, most);
        let (xs, ys) = ([a.x, b.x, c.x], [a.y, b.y, c.y]);
        let area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        if area.abs() < 1.0 {
            self.set(a.x.floor() as i32, a.y.floor() as i32);
            self.set(((a.x + b.x + c.x) / 3.0).floor() as i32, ((a.y + b.y + c.y) / 3.0).floor() as i32);
        }
        let side =
            |p: Pos2, q: Pos2, x: f32, y: f32| ((q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x)) * area;
        for y in low(ys, self.high)..top(ys, self.high) {
            for x in low(xs, self.wide)..top(xs, self.wide) {
                let (mx, my) = (x as f32 + 0.5, y as f32 + 0.5);
                if 0.0 <= side(a, b, mx, my) && 0.0 <= side(b, c, mx, my) && 0.0 <= side(c, a, mx, my) {
                    self.set(x, y);
                }
            }
        }
    }

    /// The same, grown on all sides.
    fn grown(&self, by: i32) -> Self {
        let mut out = Self::new(self.wide, self.high);
        for y in 0..self.high {
            for x in (0..self.wide).filter(|x| self.is(*x, y)) {
                for dy in -by..=by {
                    for dx in -by..=by {
                        out.set(x + dx, y + dy);
                    }
                }
            }
        }
        out
    }

    /// The edges between cells that are covered and cells that are not, as closed lines through corners.
    fn edges(&self) -> Vec<Vec<(i32, i32)>> {
        // Each edge runs with the covered cell on its right. Two may leave a corner where cells meet crosswise.
        let mut next: BTreeMap<(i32, i32), Vec<(i32, i32)>> = BTreeMap::new();
        let mut edge = |from, to| next.entry(from).or_default().push(to);
        for y in 0..self.high {
            for x in (0..self.wide).filter(|x| self.is(*x, y)) {
                if !self.is(x, y - 1) {
                    edge((x, y), (x + 1, y));
                }
                if !self.is(x + 1, y) {
                    edge((x + 1, y), (x + 1, y + 1));
                }
                if !self.is(x, y + 1) {
                    edge((x + 1, y + 1), (x, y + 1));
                }
                if !self.is(x - 1, y) {
                    edge((x, y + 1), (x, y));
                }
            }
        }
        let mut out = Vec::new();
        while let Some((start, _)) = next.first_key_value() {
            let (start, mut line) = (*start, Vec::new());
            let mut here = start;
            while let Some(ways) = next.get_mut(&here) {
                line.push(here);
                let to = ways.pop();
                if ways.is_empty() {
                    next.remove(&here);
                }
                let Some(to) = to.filter(|to| *to != start) else { break };
                here = to;
            }
            out.push(line);
        }
        out
    }
}

/// Closed lines round what these shapes, each standing in its place, cover of the scene.
#[must_use]
pub(super) fn outline(shapes: &[(&Geo, Affine3A)], lens: &Lens, scene: Rect) -> Vec<Vec<Pos2>> {
    let cell = |p: Pos2| ((p - scene.min) / CELL).to_pos2();
    let size = (scene.size() / CELL).ceil();
    let mut mask = Mask::new(size.x as i32, size.y as i32);
    for (geo, place) in shapes {
        let seen: Vec<Option<Pos2>> =
            geo.positions.iter().map(|p| lens.see_beyond(place.transform_point3(*p)).map(cell)).collect();
        for t in geo.indices.chunks_exact(3) {
            let [a, b, c] = [t[0], t[1], t[2]].map(|i| seen[i as usize]);
            if let (Some(a), Some(b), Some(c)) = (a, b, c) {
                mask.fill([a, b, c]);
            }
        }
    }
    let lines = mask.grown(OUTSIDE).edges();
    lines.into_iter().filter(|line| SHORTEST <= line.len()).map(|line| smooth(&line, scene)).collect()
}

/// The line on the screen, its steps rounded off.
fn smooth(line: &[(i32, i32)], scene: Rect) -> Vec<Pos2> {
    let mut points: Vec<Pos2> =
        line.iter().map(|(x, y)| scene.min + egui::vec2(*x as f32, *y as f32) * CELL).collect();
    for _ in 0..SMOOTH {
        let n = points.len();
        points = (0..n)
            .map(|i| {
                let (a, b, c) = (points[(i + n - 1) % n], points[i], points[(i + 1) % n]);
                (((a.to_vec2() + c.to_vec2()) * 0.25) + b.to_vec2() * 0.5).to_pos2()
            })
            .collect();
    }
    // Every other point is enough now.
    points.into_iter().step_by(2).collect()
}

/// Whether two outlines are asked for the same thing in the same place.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Asked {
    /// What is outlined, with the places of its shapes.
    pub(super) places: Vec<Affine3A>,
    /// From where it is seen: the eye's place, what it looks at, its field of view.
    pub(super) eye: (Vec3, Vec3, f32),
    /// Where the picture is.
    pub(super) scene: Rect,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lengths(mask: &Mask) -> Vec<usize> {
        mask.edges().iter().map(Vec::len).collect()
    }

    #[test]
    fn a_line_runs_round_a_block_and_another_round_its_hole() {
        let mut mask = Mask::new(9, 9);
        for y in 1..8 {
            for x in 1..8 {
                if (x, y) != (4, 4) {
                    mask.set(x, y);
                }
            }
        }
        assert_eq!(lengths(&mask), [28, 4]);
    }

    #[test]
    fn cells_that_touch_at_a_corner_only_are_walked_round_once_each_way() {
        let mut mask = Mask::new(4, 4);
        mask.set(1, 1);
        mask.set(2, 2);
        assert_eq!(lengths(&mask).iter().sum::<usize>(), 8);
    }

    #[test]
    fn a_triangle_covers_half_of_its_square() {
        let mut mask = Mask::new(40, 40);
        mask.fill([Pos2::new(2.0, 2.0), Pos2::new(34.0, 2.0), Pos2::new(2.0, 34.0)]);
        let covered = mask.cells.iter().filter(|c| **c).count();
        // Cells on the long side count by their middle: half a row of them either way.
        assert!((496..=544).contains(&covered), "{covered} cells");
    }
}
