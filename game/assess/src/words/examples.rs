//! Examples with names of the car at hand: what a help text writes as `<hose>` is a hose of this car.
//!
//! A car that has no such thing gets the kind's word instead (`relay`), which says what is meant.

use sim_core::assembly::Assembly;
use sim_core::car::{Car, Spare};
use sim_core::parts::{Domain, PartKind};

/// A token of the help texts and what stands for it.
#[derive(Clone, Debug)]
pub(super) struct Examples(Vec<(&'static str, String)>);

/// The first name that is found, or the word of the kind.
fn or(found: Option<String>, word: &str) -> String {
    found.unwrap_or_else(|| word.to_owned())
}

impl Examples {
    /// Names of a car and its spares.
    pub(super) fn of(car: &Car, spares: &[Spare]) -> Self {
        let assembly = &car.assembly;
        let index = |kind: fn(&PartKind) -> bool| assembly.parts.iter().position(|p| kind(&p.kind));
        let part = |kind: fn(&PartKind) -> bool| index(kind).map(|i| assembly.parts[i].id.clone());
        let port = |kind: fn(&PartKind) -> bool, end: &str| part(kind).map(|id| format!("{id}.{end}"));
        let unit_of = |i: u16| car.units.iter().position(|u| u.parts.contains(&i));
        // A hose that can be reached without work, and one whose bend may have moved.
        let reached = |i: &usize| car.stands[*i].behind.is_none();
        let hoses = || (0..assembly.parts.len()).filter(|i| assembly.parts[*i].kind.hose().is_some());
        let hose = hoses().find(reached).or_else(|| hoses().next());
        let hose_id = or(hose.map(|i| assembly.parts[i].id.clone()), "hose");
        let unit = hose.and_then(|i| unit_of(i as u16));
        let spare = unit.and_then(|u| spares.iter().find(|s| usize::from(s.unit) == u));
        let bend = car.units.iter().find(|u| u.reforms).map(|u| u.id.clone());
        let cleaned = car.units.iter().find(|u| !u.cleans.is_empty()).map(|u| u.id.clone());
        let is_wire = |k: &PartKind| matches!(k, PartKind::Wire(_));
        let is_tee = |k: &PartKind| matches!(k, PartKind::Tee(_));
        let is_relay = |k: &PartKind| matches!(k, PartKind::Relay(_));
        let is_pump = |k: &PartKind| matches!(k, PartKind::VacuumPump(_) | PartKind::EnginePump(_));
        let in_line =
            |end| port(is_tee, end).or_else(|| port(|k| matches!(k, PartKind::CheckValve(_)), "store"));
        let live = port(is_relay, "87").or_else(|| port(|k| matches!(k, PartKind::KeySwitch(_)), "15"));
        let coil = port(is_relay, "85").or_else(|| port(|k| matches!(k, PartKind::Engine(_)), "ground"));
        Self(vec![
            ("<cover>", or(car.covers.first().map(|c| c.id.clone()), "cover")),
            ("<joint>", or(hose.and_then(|i| joint_at(assembly, i as u16)), "joint")),
            ("<plug>", or(wired_joint(assembly), "joint")),
            ("<spare>", or(spare.map(|s| s.id.clone()), "spare")),
            ("<unit>", or(unit.map(|u| car.units[u].id.clone()), "hose")),
            ("<hose>", hose_id),
            ("<bend>", or(bend, "hose")),
            ("<cleaned>", or(cleaned, "unit")),
            ("<wire>", or(part(is_wire), "wire")),
            ("<pump>", or(part(is_pump), "pump")),
            ("<branch>", or(in_line("2"), "tee.2")),
            ("<branch_3>", or(in_line("3"), "tee.3")),
            ("<booster>", or(port(|k| matches!(k, PartKind::Booster(_)), "vacuum"), "booster.vacuum")),
            ("<plus>", or(port(|k| matches!(k, PartKind::Battery(_)), "plus"), "battery.plus")),
            ("<live>", or(live, "relay.87")),
            ("<coil>", or(coil, "relay.85")),
            ("<earth>", or(port(|k| matches!(k, PartKind::Body(_)), "31a"), "body.31a")),
        ])
    }

    /// A text with its names filled in; explanations that stand in columns keep them.
    pub(super) fn fill(&self, text: &str) -> String {
        let lines = text.split('\n').map(|line| self.fill_line(line));
        lines.collect::<Vec<_>>().join("\n")
    }

    fn fill_line(&self, line: &str) -> String {
        let mut out = String::new();
        let mut rest = line;
        // How much wider the names have made the column so far.
        let mut wider = 0_isize;
        while !rest.is_empty() {
            if let Some((token, name)) = self.0.iter().find(|(token, _)| rest.starts_with(token)) {
                out.push_str(name);
                wider += name.chars().count() as isize - token.len() as isize;
                rest = &rest[token.len()..];
                continue;
            }
            let blanks = rest.len() - rest.trim_start_matches(' ').len();
            if 2 < blanks && !out.trim().is_empty() {
                out.push_str(&" ".repeat((blanks as isize - wider).max(2) as usize));
                wider = 0;
                rest = &rest[blanks..];
                continue;
            }
            let next = rest.chars().next().map_or(1, char::len_utf8);
            out.push_str(&rest[..next]);
            rest = &rest[next..];
        }
        out
    }
}

/// The first joint of a part.
fn joint_at(assembly: &Assembly, part: u16) -> Option<String> {
    assembly.joints.iter().find(|j| j.a.part == part || j.b.part == part).map(|j| j.id.clone())
}

/// A joint of a wire at what has air and current: a connector that halves the circuit.
fn wired_joint(assembly: &Assembly) -> Option<String> {
    let both = |part: u16| {
        let ports = assembly.parts[usize::from(part)].kind.ports();
        let has = |domain| ports.iter().any(|d| d.domain == domain);
        has(Domain::Pneumatic) && has(Domain::Electrical)
    };
    let wired = assembly.joints.iter().filter(|j| assembly.domain(j.a) == Domain::Electrical);
    wired.into_iter().find(|j| both(j.a.part) || both(j.b.part)).map(|j| j.id.clone())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pack::Library;

    fn of(car: &str) -> Examples {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let library = Library::open(&root).unwrap();
        let car = library.car(car).unwrap();
        let spares = library.spares(&car).unwrap();
        Examples::of(&car, &spares)
    }

    #[test]
    fn names_are_those_of_the_car_at_hand() {
        assert_eq!(of("alder").fill("swap <unit> with <spare>"), "swap hose_m with hose_m_new");
        assert_eq!(of("birch").fill("swap <unit> with <spare>"), "swap hose_t with hose_t_new");
        assert_eq!(of("birch").fill("fit gauge <branch>"), "fit gauge valve_b.store");
    }

    #[test]
    fn columns_stay() {
        let (alder, birch) = (of("alder"), of("birch"));
        for text in ["  fit gauge <branch>          tees in", "  a <live> <earth>          it   and  more"] {
            let column = |e: &Examples| e.fill(text).find("tees").or_else(|| e.fill(text).find("it"));
            assert_eq!(column(&alder), column(&birch), "{text}");
        }
    }
}
