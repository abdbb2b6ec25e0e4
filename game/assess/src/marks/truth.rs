//! What was really wrong, as classes of the belief.

use crate::infer::belief::Belief;
use crate::infer::hypotheses::{Class, Hypotheses};
use crate::play::course::Course;

/// Probability that what is wrong is exactly what is wrong: mass of the true classes.
pub(crate) fn p_true(hypotheses: &Hypotheses, course: &Course, belief: &Belief) -> f64 {
    let truth = true_classes(hypotheses, course);
    belief.mass_where(|cell| truth.contains(&belief.class_of()[cell]))
}

/// Classes of what was outside limits when the car came in.
pub(super) fn true_classes(hypotheses: &Hypotheses, course: &Course) -> Vec<usize> {
    let classes = hypotheses.classes.iter().enumerate();
    let is_true = |class: &Class| class.is_exactly(&course.faulty_at_start);
    classes.filter(|(_, class)| is_true(class)).map(|(index, _)| index).collect()
}
