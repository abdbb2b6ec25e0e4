//! One possible state of affairs: which faults, which tolerances, which instrument errors.
//!
//! The truth of an attempt and every hypothesis of the marker are made by the same function,
//! [`World::draw`]; only the source of the uniform numbers differs.

use crate::car::Car;
use crate::instrument::InstrumentCard;

/// The hidden numbers behind an attempt (or behind a hypothesis).
#[derive(Clone, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct World {
    /// Parameter values that differ from the vehicle file's new car (`part.param`, value), in the order
    /// they are set: tolerances first, then faults.
    pub params: Vec<(String, f64)>,
    /// Per instrument card, its constant error as a share (−1 to 1) of what its class allows.
    pub instrument_errors: Vec<f64>,
}

impl World {
    /// Draws a world. `faults` are indices into `car.faults` with a severity each; `u` gives numbers
    /// from 0 up to 1 and is asked in a fixed order: once per tolerance of the car, once per card of
    /// the kit, never for a fault.
    ///
    /// Sound parts are spread evenly over *serviceable*, instrument errors evenly over their class.
    /// A fault whose index the car does not have is left out.
    pub fn draw(
        car: &Car,
        kit: &[InstrumentCard],
        faults: &[(u16, f64)],
        u: &mut dyn FnMut() -> f64,
    ) -> Self {
        let mut params: Vec<(String, f64)> = car
            .tolerances
            .iter()
            .map(|t| {
                let (low, high) = t.serviceable;
                (t.param.clone(), low + (high - low) * u())
            })
            .collect();
        let instrument_errors = kit.iter().map(|_| 2.0 * u() - 1.0).collect();
        params.extend(faults.iter().filter_map(|(fault, severity)| {
            car.faults.get(usize::from(*fault)).map(|f| (f.param.clone(), *severity))
        }));
        Self { params, instrument_errors }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::car::{FaultDef, Tolerance};
    use crate::instrument::{InstrumentCard, InstrumentKind};

    fn car() -> Car {
        let tolerance = |param: &str, low, high| Tolerance {
            param: param.into(),
            new: low,
            serviceable: (low, high),
            limit: (low, high),
        };
        Car {
            id: "test".into(),
            name: "test".into(),
            assembly: crate::assembly::Assembly::default(),
            stands: vec![],
            tolerances: vec![tolerance("a.x", 0.0, 10.0), tolerance("b.y", -2.0, 2.0)],
            units: vec![],
            faults: vec![FaultDef {
                id: "f".into(),
                name: "f".into(),
                unit: 0,
                param: "a.x".into(),
                severity_min: 20.0,
                severity_max: 30.0,
                commonness: 1.0,
            }],
            covers: vec![],
            limits: vec![],
            record: vec![],
            altitude_limit_m: 0.0,
            cautions: vec![],
        }
    }

    #[test]
    fn numbers_are_used_once_per_tolerance_then_once_per_card_and_faults_come_last() {
        let card = InstrumentCard {
            id: "plugs".into(),
            name: "plugs".into(),
            kind: InstrumentKind::Plugs,
            part: None,
            fit_min: 0.0,
            help: String::new(),
        };
        let mut asked = 0;
        let mut u = || {
            asked += 1;
            f64::from(asked) * 0.25
        };
        let world = World::draw(&car(), &[card], &[(0, 25.0), (7, 1.0)], &mut u);
        let params = [("a.x", 2.5), ("b.y", 0.0), ("a.x", 25.0)].map(|(p, v)| (p.to_owned(), v));
        assert_eq!(world.params, params);
        assert_eq!(world.instrument_errors, [0.5]);
        assert_eq!(asked, 3);
    }
}
