//! What the line diagram remembers.

use std::collections::BTreeMap;

use assess::diagram::{Diagram, Sheet};
use egui::Rect;

use super::camera::{Camera, Shown};
use super::fitted::Fitted;
use super::layout::Plan;

/// A car's diagram, laid out.
#[derive(Debug)]
pub struct Drawn {
    /// Short name of the car.
    pub(super) car: String,
    pub(super) diagram: Diagram,
    pub(super) plans: Vec<Plan>,
}

/// State of the panel.
#[derive(Debug, Default)]
pub struct State {
    /// Laid out once a car; or why it cannot be.
    pub(super) drawn: Option<Result<Drawn, (String, String)>>,
    /// What lies on the board.
    pub shown: Shown,
    /// Where the eye is.
    pub camera: Camera,
    /// How many sheets lay on the board in the last frame.
    pub(super) laid: usize,
    /// The legend is open.
    pub legend: bool,
    /// Where the bar over the board is free, from the left, points.
    pub bar_free: f32,
    /// Height at which the board need not be cut, bars included, points.
    pub needs: f32,
    /// The board on the screen in the last frame: what is left for it, and what lies on it.
    pub board: Option<(Rect, Rect)>,
    /// Places of fitted instruments, kept while nothing is moved: what they were found for, and they.
    pub(super) places: BTreeMap<Sheet, (String, Vec<Fitted>)>,
}
