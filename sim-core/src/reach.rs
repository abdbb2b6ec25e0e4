//! From where one gets at a part, a port, a joint of a car. Workshop, hands and pictures ask here.
//!
//! A hose or wire has no place of its own at its ends, nor has the sheet of the body: its end is where the part is that
//! it is joined to.

use crate::action::Station;
use crate::assembly::PortRef;
use crate::car::Car;
use crate::parts::elements::Lies;

/// Where something can be reached, and the cover (index into [`Car::covers`]) that bars it there.
pub type Place = (Station, Option<usize>);

impl Car {
    /// Places from which a part can be reached; none for a part that the car does not have.
    #[must_use]
    pub fn places_of_part(&self, part: u16) -> Vec<Place> {
        let place = self.stands.get(usize::from(part)).map(|standing| {
            let cover = standing.behind.as_ref().and_then(|id| self.covers.iter().position(|c| c.id == *id));
            (standing.station, cover)
        });
        place.into_iter().collect()
    }

    /// Places from which a joint (index into the assembly's) can be reached; none for one that the car does not have.
    #[must_use]
    pub fn places_of_joint(&self, joint: usize) -> Vec<Place> {
        let Some(j) = self.assembly.joints.get(joint) else { return Vec::new() };
        let both = [j.a.part, j.b.part];
        let fixed: Vec<u16> = both.into_iter().filter(|p| !self.runs(*p)).collect();
        let parts = if fixed.is_empty() { both.to_vec() } else { fixed };
        parts.into_iter().flat_map(|p| self.places_of_part(p)).collect()
    }

    /// Places from which a port can be reached; none for one that the car does not have.
    #[must_use]
    pub fn places_of_port(&self, port: PortRef) -> Vec<Place> {
        let joint = || self.assembly.joints.iter().position(|j| j.a == port || j.b == port);
        match self.runs(port.part).then(joint).flatten() {
            Some(joint) => self.places_of_joint(joint),
            None => self.places_of_part(port.part),
        }
    }

    /// Whether a part runs from one place to another rather than standing in one.
    fn runs(&self, part: u16) -> bool {
        let part = self.assembly.parts.get(usize::from(part));
        part.is_some_and(|p| p.kind.seen().lies != Lies::InOnePlace)
    }
}
