//! Which circuits differ in numbers only.

use std::collections::BTreeMap;

use super::super::super::compile::Net;
use super::super::Circuit;

/// All shapes seen so far, numbered; and which is whose (by key: changes so far, number), so that a circuit is looked
/// at again only when something was changed.
#[derive(Debug, Default)]
pub(super) struct Shapes {
    seen: Vec<Net>,
    whose: BTreeMap<usize, (u64, usize)>,
}

impl Shapes {
    pub(super) fn number_of(&mut self, key: usize, circuit: &Circuit) -> usize {
        if let Some((_, number)) = self.whose.get(&key).filter(|(changes, _)| *changes == circuit.changes) {
            return *number;
        }
        let at = self.seen.iter().rposition(|seen| seen.has_shape_of(&circuit.net));
        let number = at.unwrap_or_else(|| {
            self.seen.push(circuit.net.clone());
            self.seen.len() - 1
        });
        self.whose.insert(key, (circuit.changes, number));
        number
    }
}
