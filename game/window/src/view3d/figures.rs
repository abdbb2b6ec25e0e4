//! Figures and units for the dials in the room, and the letters of a meter's knob, as strokes: a drawn picture of a
//! typeface would blur at the distance from which a gauge is seen.

use bevy::math::Vec2;

use super::shapes::{Geo, ribbon};

/// Width of a figure for a height of 1.
const WIDE: f32 = 0.56;
/// From one figure to the next, for a height of 1.
const STEP: f32 = 0.80;
/// Width of a stroke, for a height of 1.
const STROKE: f32 = 0.165;

/// An arc about `(x, y)` from angle `a` to `b`, degrees, anticlockwise from the right.
fn arc(line: &mut Vec<Vec2>, (x, y): (f32, f32), (rx, ry): (f32, f32), a: f32, b: f32) {
    const STEPS: u8 = 8;
    line.extend((0..=STEPS).map(|i| {
        let (sin, cos) = (a + (b - a) * f32::from(i) / f32::from(STEPS)).to_radians().sin_cos();
        Vec2::new(x + rx * cos, y + ry * sin)
    }));
}

/// The strokes of a sign, 1 high and [`WIDE`] wide from the lower left; none for a sign not known.
#[expect(clippy::too_many_lines, reason = "a flat table: an arm a sign")]
fn strokes(sign: char) -> Vec<Vec<Vec2>> {
    let (w, m) = (WIDE, WIDE * 0.5);
    let straight = |points: &[(f32, f32)]| points.iter().map(|(x, y)| Vec2::new(*x, *y)).collect::<Vec<_>>();
    let mut line = Vec::new();
    match sign {
        '0' => {
            arc(&mut line, (m, 0.68), (m, 0.32), 0.0, 180.0);
            arc(&mut line, (m, 0.32), (m, 0.32), 180.0, 360.0);
            line.push(line[0]);
        }
        '1' => line = straight(&[(0.10, 0.74), (0.36, 1.0), (0.36, 0.0)]),
        '2' => {
            arc(&mut line, (m, 0.70), (m, 0.30), 165.0, -40.0);
            line.extend(straight(&[(0.0, 0.0), (w, 0.0)]));
        }
        '3' => {
            arc(&mut line, (m, 0.75), (m * 0.88, 0.25), 150.0, -80.0);
            arc(&mut line, (m, 0.27), (m, 0.27), 80.0, -150.0);
        }
        '4' => line = straight(&[(0.44, 0.0), (0.44, 1.0), (0.0, 0.30), (w, 0.30)]),
        '5' => {
            line = straight(&[(0.52, 1.0), (0.10, 1.0), (0.05, 0.54)]);
            arc(&mut line, (m, 0.32), (m, 0.32), 125.0, -150.0);
        }
        '6' => {
            line = straight(&[(0.46, 0.97)]);
            arc(&mut line, (m, 0.31), (m, 0.31), 165.0, 525.0);
        }
        '7' => line = straight(&[(0.0, 1.0), (w, 1.0), (0.18, 0.0)]),
        '8' => {
            arc(&mut line, (m, 0.76), (m * 0.86, 0.24), -90.0, 270.0);
            arc(&mut line, (m, 0.26), (m, 0.26), 90.0, -270.0);
        }
        '9' => {
            line = straight(&[(0.10, 0.03)]);
            arc(&mut line, (m, 0.69), (m, 0.31), -15.0, 345.0);
        }
        '\u{2212}' => line = straight(&[(0.04, 0.48), (w - 0.04, 0.48)]),
        '.' => line = straight(&[(m - 0.07, 0.03), (m + 0.07, 0.03)]),
        'V' => line = straight(&[(0.0, 1.0), (m, 0.04), (w, 1.0)]),
        'A' => {
            return vec![
                straight(&[(0.0, 0.0), (m, 0.96), (w, 0.0)]),
                straight(&[(0.10, 0.34), (w - 0.10, 0.34)]),
            ];
        }
        'Ω' => {
            line = straight(&[(-0.04, 0.0), (0.18, 0.0)]);
            arc(&mut line, (m, 0.62), (m, 0.38), 245.0, -65.0);
            line.extend(straight(&[(w - 0.18, 0.0), (w + 0.04, 0.0)]));
        }
        '°' => {
            arc(&mut line, (0.20, 0.84), (0.15, 0.15), 0.0, 360.0);
        }
        'C' => arc(&mut line, (m, 0.5), (m, 0.5), 50.0, 310.0),
        'H' => {
            return vec![
                straight(&[(0.04, 0.0), (0.04, 1.0)]),
                straight(&[(w - 0.04, 0.0), (w - 0.04, 1.0)]),
                straight(&[(0.04, 0.52), (w - 0.04, 0.52)]),
            ];
        }
        'P' => {
            line = straight(&[(0.06, 0.0), (0.06, 0.98)]);
            arc(&mut line, (0.28, 0.72), (0.26, 0.26), 90.0, -90.0);
            line.push(Vec2::new(0.06, 0.46));
        }
        'a' | 'b' | 'g' => {
            arc(&mut line, (m, 0.30), (0.22, 0.30), 0.0, 360.0);
            let stem = match sign {
                'a' => straight(&[(0.50, 0.62), (0.50, 0.0)]),
                'b' => straight(&[(0.06, 1.0), (0.06, 0.0)]),
                _ => straight(&[(0.50, 0.62), (0.50, -0.22), (0.12, -0.30)]),
            };
            return vec![line, stem];
        }
        'i' => return vec![straight(&[(m, 0.60), (m, 0.0)]), straight(&[(m, 0.82), (m, 0.96)])],
        'k' => {
            return vec![
                straight(&[(0.06, 1.0), (0.06, 0.0)]),
                straight(&[(0.48, 0.62), (0.08, 0.28)]),
                straight(&[(0.22, 0.42), (0.52, 0.0)]),
            ];
        }
        'm' => {
            return vec![
                straight(&[(-0.04, 0.62), (-0.04, 0.0)]),
                straight(&[(-0.04, 0.58), (m, 0.58), (m, 0.0)]),
                straight(&[(m, 0.58), (w + 0.04, 0.58), (w + 0.04, 0.0)]),
            ];
        }
        'n' | 'r' => {
            let mut over = Vec::new();
            arc(&mut over, (m, 0.36), (0.22, 0.24), 180.0, if sign == 'n' { 0.0 } else { 40.0 });
            if sign == 'n' {
                over.push(Vec2::new(0.50, 0.0));
            }
            return vec![straight(&[(0.06, 0.62), (0.06, 0.0)]), over];
        }
        _ => return Vec::new(),
    }
    vec![line]
}

/// Figures, a minus and the letters of units in the plane z = 0, `height` high, about the origin, seen from +z.
#[must_use]
pub(super) fn figures(text: &str, height: f32) -> Geo {
    let mut geo = Geo::default();
    let wide = text.chars().count() as f32 * STEP - (STEP - WIDE);
    for (i, sign) in text.chars().enumerate() {
        let corner = Vec2::new(i as f32 * STEP - wide * 0.5, -0.5);
        for stroke in strokes(sign) {
            let line: Vec<Vec2> = stroke.into_iter().map(|p| (p + corner) * height).collect();
            geo.push(&ribbon(&line, height * STROKE));
        }
    }
    geo
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sign_of_a_dial_is_drawn_within_its_height() {
        // All but the g, which hangs down.
        for sign in "0123456789\u{2212}.VAΩ°CHPabikmnr".chars() {
            let geo = figures(&sign.to_string(), 2.0);
            let (low, high) = geo.bounds();
            // Half a stroke stands out at either end, a little more at a slant.
            let most = 1.0 + 1.2 * STROKE;
            assert!(0 < geo.triangles(), "{sign} is not drawn");
            assert!(-most < low.y && high.y < most, "{sign}: {low} to {high}");
        }
    }

    #[test]
    fn a_number_is_centred() {
        let (low, high) = figures("\u{2212}80", 1.0).bounds();
        // The minus is a stroke narrower than a figure.
        assert!((low.x + high.x).abs() < STROKE, "{low} to {high}");
    }
}
