//! A finding half made up.

use std::collections::BTreeSet;

/// A finding being made up. Nothing that is ticked is lost by ticking something else.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FindingForm {
    /// Units ticked; with `sound` or `refer` they are kept, but do not count.
    pub(super) units: BTreeSet<String>,
    /// Everything is inside its limits.
    pub(super) sound: bool,
    /// Not found, refer on.
    pub(super) refer: bool,
    /// Certainty.
    pub(super) certainty: Option<f64>,
    /// It is being asked whether to write it down.
    pub(super) confirming: bool,
}

impl FindingForm {
    /// Units and certainty, when it is complete; else the key of what is missing. `fixed` is the certainty that the school
    /// fixes, if it does.
    pub(super) fn complete(&self, fixed: Option<f64>) -> Result<(Vec<String>, f64), &'static str> {
        if self.refer {
            return Ok((Vec::new(), 0.0));
        }
        if self.units.is_empty() && !self.sound {
            return Err("finding-no-unit");
        }
        let certainty = fixed.or(self.certainty).ok_or("finding-no-certainty")?;
        let units = if self.sound { Vec::new() } else { self.units.iter().cloned().collect() };
        Ok((units, certainty))
    }

    /// What stands in the line kept for it: what is missing, or what does not count.
    pub(super) fn hint(&self, fixed: Option<f64>) -> Option<&'static str> {
        match self.complete(fixed) {
            Err(missing) => Some(missing),
            Ok(_) if (self.sound || self.refer) && !self.units.is_empty() => Some("finding-kept"),
            Ok(_) => None,
        }
    }
}
