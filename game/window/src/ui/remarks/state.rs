//! Which remarks have been seen.

use std::collections::BTreeMap;

use front::shop::Shop;

/// Since when each remark has been on the screen.
#[derive(Debug, Default)]
pub struct State {
    pub(super) since: BTreeMap<u64, f64>,
}

impl State {
    /// What was said so far has been seen: nothing of it is shown any more.
    pub fn let_go(&mut self, shop: &Shop) {
        self.since.extend(shop.remarks().iter().map(|remark| (remark.n, f64::NEG_INFINITY)));
    }
}
