//! Parts with ports, joined by joints: a car, a bench test and an instrument are all this.
//!
//! Air belongs to parts. A joint is a restriction, never a merging of volumes, so opening and making
//! joints keeps every part's air. An open pneumatic port is open to the air unless it is plugged.

use crate::coefficients::Coefficients;
use crate::params::Params;
use crate::parts::{Domain, PartKind};

/// A part in an assembly, with the name it goes by.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Part {
    /// Short name, unique in the assembly: `pump`.
    pub id: String,
    /// Kind and numbers.
    pub kind: PartKind,
}

/// A port of a part, both by index.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
pub struct PortRef {
    /// Index of the part in [`Assembly::parts`].
    pub part: u16,
    /// Index of the port in [`PartKind::ports`].
    pub port: u8,
}

/// Two ports that belong together.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Joint {
    /// Short name, unique in the assembly.
    pub id: String,
    /// One port.
    pub a: PortRef,
    /// The other port, of the same domain.
    pub b: PortRef,
    /// Whether the joint is made.
    pub made: bool,
}

/// What covers an unjoined pneumatic port or squeezes a joined one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
pub enum Stop {
    /// A rubber plug in the open port.
    Plug,
    /// A hose clamp beside the port.
    Clamp,
}

/// Parts, joints and stops: everything that decides what the circuit is.
#[derive(Clone, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Assembly {
    /// Parts in fixed order; the order is part of the state's layout.
    pub parts: Vec<Part>,
    /// Joints in fixed order.
    pub joints: Vec<Joint>,
    /// Stops, sorted by port.
    pub stops: Vec<(PortRef, Stop)>,
    /// Factors on the model's own coefficients: as built, but for whoever asks what hangs on them.
    #[serde(default, skip_serializing_if = "Coefficients::are_as_built")]
    pub coefficients: Coefficients,
}

impl Assembly {
    /// Index of the part called `id`.
    #[must_use]
    pub fn part_index(&self, id: &str) -> Option<u16> {
        self.parts.iter().position(|p| p.id == id).map(|i| i as u16)
    }

    /// The port called `"part.port"`.
    #[must_use]
    pub fn port(&self, name: &str) -> Option<PortRef> {
        let (part, port) = name.split_once('.')?;
        let part_idx = self.part_index(part)?;
        let port_idx = self.parts[part_idx as usize].kind.ports().iter().position(|d| d.name == port)?;
        Some(PortRef { part: part_idx, port: port_idx as u8 })
    }

    /// The name `"part.port"` of a port.
    #[must_use]
    pub fn port_name(&self, port: PortRef) -> String {
        let part = &self.parts[port.part as usize];
        format!("{}.{}", part.id, part.kind.ports()[port.port as usize].name)
    }

    /// What flows through `port`.
    #[must_use]
    pub fn domain(&self, port: PortRef) -> Domain {
        self.parts[port.part as usize].kind.ports()[port.port as usize].domain
    }

    /// Every port of the assembly in order.
    pub fn ports(&self) -> impl Iterator<Item = PortRef> + '_ {
        self.parts.iter().enumerate().flat_map(|(i, p)| {
            (0..p.kind.ports().len()).map(move |k| PortRef { part: i as u16, port: k as u8 })
        })
    }

    /// The port joined to `port` by a made joint, if any.
    #[must_use]
    pub fn partner(&self, port: PortRef) -> Option<PortRef> {
        self.joints.iter().filter(|j| j.made).find_map(|j| {
            if j.a == port {
                Some(j.b)
            } else if j.b == port {
                Some(j.a)
            } else {
                None
            }
        })
    }

    /// The stop at `port`, if any.
    #[must_use]
    pub fn stop(&self, port: PortRef) -> Option<Stop> {
        self.stops.iter().find(|(p, _)| *p == port).map(|(_, s)| *s)
    }

    /// Sets or takes away the stop at `port`.
    pub fn set_stop(&mut self, port: PortRef, stop: Option<Stop>) {
        self.stops.retain(|(p, _)| *p != port);
        if let Some(s) = stop {
            self.stops.push((port, s));
            self.stops.sort_unstable_by_key(|(p, _)| *p);
        }
    }

    /// The value of the parameter called `"part.param"`.
    #[must_use]
    pub fn param(&self, name: &str) -> Option<f64> {
        let (part, param) = name.split_once('.')?;
        self.parts[self.part_index(part)? as usize].kind.params().get(param)
    }

    /// Sets the parameter called `"part.param"`; `false` when there is none.
    pub fn set_param(&mut self, name: &str, value: f64) -> bool {
        let Some((part, param)) = name.split_once('.') else { return false };
        let Some(i) = self.part_index(part) else { return false };
        let params: &mut dyn Params = self.parts[i as usize].kind.params_mut();
        params.set(param, value)
    }
}
