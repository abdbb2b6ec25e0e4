//! The displays of meters in the room: what the instrument shows, in seven segments, and nothing when it
//! shows nothing.

use bevy::prelude::*;
use sim_core::instrument::Measured;
use sim_core::workshop::View;

use super::super::resources::{Drawn, ShopRes};
use super::super::ui::dial::display::{characters, segments};
use super::super::ui::dial::timed;
use super::shapes::{Geo, bevel_box};
use front::prefs::Quality;
use front::shop::Shop;

/// The display of an instrument, as a component of what its digits are drawn with.
#[derive(Component, Clone, Copy, Debug, PartialEq)]
pub(super) struct Display {
    /// Card of the instrument.
    pub(super) card: usize,
    /// Height of a digit, m.
    pub(super) height: f32,
    /// Digits it has room for.
    pub(super) digits: usize,
}

/// What a display was last drawn with.
#[derive(Component, Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Shows(Option<String>);

/// Width of a digit over its height, and from one to the next.
const WIDE: f32 = 0.50;
const STEP: f32 = 0.72;
/// Width of a segment over the height of a digit.
const THICK: f32 = 0.13;
/// Width of the gap that a point has to itself, over the height of a digit.
const POINT: f32 = 0.24;
/// How long a display in the room keeps its digits at least where a processor draws it, s: the tray's
/// display, which is to be read, changes as often as the instrument does.
const KEEPS_S: f32 = 1.0;

/// Digits in the plane z = 0, right-aligned about the origin like any display, seen from +z.
#[must_use]
pub(super) fn digits(text: &str, room: usize, height: f32) -> Geo {
    let mut geo = Geo::default();
    let mut bar = |x: f32, y: f32, w: f32, h: f32| {
        geo.push(&bevel_box(w * height, h * height, 0.0008, 0.0001).at(x * height, y * height, 0.0));
    };
    let mut right = (room as f32 * STEP + POINT) * 0.5;
    for c in text.chars().rev() {
        if c == '.' {
            right -= POINT;
            bar(right + POINT * 0.5 - 0.02, -0.5 + THICK * 0.5, THICK, THICK);
            continue;
        }
        let middle = right - STEP * 0.5;
        right -= STEP;
        let lit = segments(c).unwrap_or(0);
        let (half, quarter) = (WIDE * 0.5, 0.25);
        let lies: [(f32, f32); 3] = [(0.0, 0.5), (0.0, -0.5), (0.0, 0.0)];
        let stands = [(half, quarter), (half, -quarter), (-half, -quarter), (-half, quarter)];
        // Bits a to g: above, right above, right below, below, left below, left above, middle.
        let [a, d, g] = lies;
        let [b, c, e, f] = stands;
        for (bit, (x, y)) in [a, b, c, d, e, f, g].into_iter().enumerate() {
            if lit >> bit & 1 == 1 {
                let (w, h) = if matches!(bit, 0 | 3 | 6) { (WIDE, THICK) } else { (THICK, 0.5) };
                let inset = y.signum() * if y.abs() == 0.5 { THICK * 0.5 } else { 0.0 };
                bar(middle + x, y - inset, w, h);
            }
        }
    }
    geo
}

/// What an instrument's display shows now; a stopwatch its last time, as in the tray.
fn shown(shop: &Shop, view: &View, card: usize) -> Option<String> {
    let c = shop.session()?.workshop().setup().kit.get(card)?;
    let i = view.instruments.get(card)?;
    if let Measured::Time { .. } = c.kind.nature().measured {
        return timed(shop, c, i).map(|timed| timed.digits);
    }
    characters(i.shown, i.scale.as_ref())
}

/// Draws the displays anew whose digits have changed.
pub(super) fn show(
    shop: Res<ShopRes>,
    drawn: Res<Drawn>,
    time: Res<Time<Real>>,
    mut kept_s: Local<f32>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut all: Query<(&Display, &mut Shows, &mut Mesh3d, &mut Visibility)>,
) {
    let Some(view) = shop.0.view() else { return };
    *kept_s += time.delta_secs();
    if drawn.0 == Quality::Low && *kept_s < KEEPS_S {
        return;
    }
    for (display, mut shows, mut mesh, mut visibility) in &mut all {
        let now = shown(&shop.0, view, display.card);
        if shows.0 == now {
            continue;
        }
        *kept_s = 0.0;
        *visibility = if now.is_some() { Visibility::Inherited } else { Visibility::Hidden };
        if let Some(text) = &now {
            mesh.0 = meshes.add(digits(text, display.digits, display.height).mesh());
        }
        shows.0 = now;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_display_shows_as_many_segments_as_its_digits_have_and_stays_inside() {
        let one = bevel_box(1.0, 1.0, 0.0008, 0.0001).triangles();
        for (text, lit) in [("8", 7), ("1", 2), ("-OL", 1 + 6 + 3), ("12.45", 2 + 5 + 1 + 4 + 5)] {
            let geo = digits(text, 5, 2.0);
            assert_eq!(geo.triangles() / one, lit, "{text}");
            let (low, high) = geo.bounds();
            let half = (5.0 * STEP + POINT) * 0.5 * 2.0;
            assert!(
                -half <= low.x && high.x <= half && -1.05 < low.y && high.y < 1.05,
                "{text}: {low} {high}"
            );
        }
    }
}
