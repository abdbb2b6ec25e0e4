//! What things are made of: few materials, shared by everything. Orange is not among them.

use bevy::asset::{Assets, Handle};
use bevy::color::{Color, LinearRgba};
use bevy::ecs::resource::Resource;
use bevy::pbr::StandardMaterial;
use bevy::render::render_resource::Face;

use super::shapes::Geo;

macro_rules! mats {
    ($( $(#[doc = $doc:literal])+ $name:ident: ($r:literal, $g:literal, $b:literal), $metal:literal, $rough:literal; )*) => {
        /// A material by what it is.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub(super) enum Mat { $( $(#[doc = $doc])+ $name, )* }

        /// Name, linear base colour, metallic, roughness.
        const TABLE: &[(Mat, [f32; 3], f32, f32)] = &[ $( (Mat::$name, [$r, $g, $b], $metal, $rough), )* ];
    };
}

mats! {
    /// Black paint of booster and pump head.
    Paint: (0.075, 0.085, 0.095), 0.2, 0.38;
    /// Zinc-plated steel.
    Zinc: (0.72, 0.71, 0.66), 1.0, 0.32;
    /// Brass.
    Brass: (0.80, 0.60, 0.28), 1.0, 0.30;
    /// Rubber.
    Rubber: (0.036, 0.036, 0.037), 0.0, 0.72;
    /// Black nylon.
    Nylon: (0.10, 0.10, 0.105), 0.0, 0.45;
    /// Grey nylon: boxes and brackets.
    GreyNylon: (0.23, 0.24, 0.245), 0.0, 0.5;
    /// White nylon: fluid tank, connectors.
    WhiteNylon: (0.78, 0.77, 0.70), 0.0, 0.42;
    /// Oak.
    Oak: (0.50, 0.34, 0.19), 0.0, 0.6;
    /// Oak's end and edges.
    OakDark: (0.34, 0.22, 0.12), 0.0, 0.7;
    /// Wall.
    Wall: (0.72, 0.71, 0.66), 0.0, 0.9;
    /// Wall below, washable.
    Dado: (0.42, 0.46, 0.45), 0.0, 0.7;
    /// Tool board.
    Board: (0.20, 0.28, 0.30), 0.0, 0.8;
    /// Painted floor.
    Floor: (0.30, 0.305, 0.30), 0.0, 0.62;
    /// Marking on the floor.
    Marking: (0.74, 0.72, 0.62), 0.0, 0.7;
    /// The car's paint.
    CarPaint: (0.115, 0.17, 0.25), 0.25, 0.36;
    /// Inside of the bay, primed.
    Primer: (0.30, 0.33, 0.36), 0.0, 0.6;
    /// Cut faces of the section.
    Section: (0.70, 0.66, 0.55), 0.0, 0.8;
    /// Cast aluminium.
    Cast: (0.50, 0.50, 0.49), 0.85, 0.55;
    /// Cast iron and blackened steel.
    Iron: (0.13, 0.125, 0.12), 0.6, 0.6;
    /// Bright steel.
    Steel: (0.60, 0.61, 0.62), 1.0, 0.25;
    /// Carpet and seat.
    Cloth: (0.14, 0.15, 0.17), 0.0, 0.95;
    /// Face of a dial, paper.
    Face: (0.86, 0.85, 0.80), 0.0, 0.6;
    /// Marks on a dial, needle.
    Ink: (0.012, 0.012, 0.014), 0.0, 0.5;
    /// Paper.
    Paper: (0.84, 0.81, 0.70), 0.0, 0.85;
    /// Lines on paper.
    Pencil: (0.28, 0.30, 0.33), 0.0, 0.9;
    /// Red insulation: plus.
    Red: (0.42, 0.015, 0.018), 0.0, 0.5;
    /// Black insulation.
    Black: (0.02, 0.02, 0.022), 0.0, 0.5;
    /// Brown insulation: earth.
    Brown: (0.10, 0.045, 0.022), 0.0, 0.55;
    /// Green insulation: control wire.
    Green: (0.05, 0.17, 0.06), 0.0, 0.55;
    /// What the trainee carries: gauge hose, plugs, clamps.
    Accent: (0.02, 0.50, 0.47), 0.0, 0.45;
    /// Case of a meter.
    Case: (0.33, 0.35, 0.36), 0.0, 0.55;
    /// A display that is off.
    Display: (0.20, 0.235, 0.20), 0.0, 0.3;
    /// A rag.
    Rag: (0.22, 0.30, 0.42), 0.0, 0.95;
    /// A fuse of 30 A.
    FuseGreen: (0.10, 0.42, 0.14), 0.0, 0.35;
    /// Copper and braid.
    Copper: (0.50, 0.27, 0.17), 1.0, 0.45;
    /// Glass.
    Glass: (0.55, 0.60, 0.62), 0.1, 0.08;
    /// Brake fluid in the tank.
    Fluid: (0.50, 0.40, 0.16), 0.0, 0.3;
    /// Cardboard.
    Card: (0.36, 0.26, 0.16), 0.0, 0.9;
    /// A lamp of the room.
    Tube: (0.9, 0.9, 0.88), 0.0, 0.5;
    /// Blue insulation.
    Blue: (0.03, 0.08, 0.24), 0.0, 0.5;
    /// Yellow insulation, a fuse of 20 A.
    Yellow: (0.46, 0.38, 0.04), 0.0, 0.45;
    /// The paint of another car.
    PalePaint: (0.235, 0.265, 0.235), 0.25, 0.38;
}

/// The materials as the renderer knows them.
#[derive(Resource, Debug)]
pub(super) struct Palette {
    handles: Vec<Handle<StandardMaterial>>,
    /// Inside out and unlit: the outline of what is picked.
    pub(super) outline: Handle<StandardMaterial>,
}

impl Palette {
    /// Makes every material.
    pub(super) fn new(assets: &mut Assets<StandardMaterial>) -> Self {
        let handles = TABLE
            .iter()
            .map(|(mat, [r, g, b], metallic, rough)| {
                let glows = matches!(mat, Mat::Tube);
                assets.add(StandardMaterial {
                    base_color: Color::linear_rgb(*r, *g, *b),
                    metallic: *metallic,
                    perceptual_roughness: *rough,
                    reflectance: if matches!(mat, Mat::Cloth | Mat::Rag | Mat::Wall) { 0.2 } else { 0.5 },
                    emissive: if glows { LinearRgba::rgb(900.0, 890.0, 860.0) } else { LinearRgba::BLACK },
                    ..Default::default()
                })
            })
            .collect();
        let outline = assets.add(StandardMaterial {
            base_color: Color::linear_rgb(0.03, 0.62, 0.58),
            unlit: true,
            cull_mode: Some(Face::Front),
            ..Default::default()
        });
        Self { handles, outline }
    }

    /// The handle of a material.
    #[must_use]
    pub(super) fn of(&self, mat: Mat) -> Handle<StandardMaterial> {
        self.handles[mat as usize].clone()
    }
}

/// Shapes by material: one thing while it is built.
#[derive(Clone, Debug, Default)]
pub(super) struct Sculpt {
    /// Material and everything made of it.
    pub(super) made_of: Vec<(Mat, Geo)>,
}

impl Sculpt {
    /// Adds a shape.
    pub(super) fn add(&mut self, mat: Mat, geo: Geo) -> &mut Self {
        match self.made_of.iter_mut().find(|(m, _)| *m == mat) {
            Some((_, all)) => all.push(&geo),
            None => self.made_of.push((mat, geo)),
        }
        self
    }

    /// Adds everything of another, moved.
    pub(super) fn join(&mut self, other: &Self, to: bevy::transform::components::Transform) -> &mut Self {
        for (mat, geo) in &other.made_of {
            self.add(*mat, geo.clone().moved(to));
        }
        self
    }

    /// All of it as one shape, to pick and to outline.
    #[must_use]
    pub(super) fn whole(&self) -> Geo {
        let mut whole = Geo::default();
        for (_, geo) in &self.made_of {
            whole.push(geo);
        }
        whole
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Orange means high-voltage cable; Alder has none. Orange: red well above green, green well above
    /// blue, and bright.
    #[test]
    fn nothing_is_orange() {
        for (mat, [r, g, b], metallic, _) in TABLE {
            let coloured = 0.5 < *r && *g < 0.62 * r && *b < 0.35 * g && *metallic < 0.5;
            assert!(!coloured, "{mat:?} looks orange");
        }
    }

    #[test]
    fn the_table_is_in_the_order_of_the_names() {
        for (i, (mat, ..)) in TABLE.iter().enumerate() {
            assert_eq!(*mat as usize, i);
        }
    }
}
