//! Published values: one module for each family of sources.
//!
//! Rows are those of `reference/check-values.md`; the issuing body stands beside each. `val_` rows were
//! read in the source (status V) or in somebody's reproduction of it (V2), `reg_` rows were computed
//! (C) or are from memory (M, and marked so). `row.rs` says how a row is written.

mod accuracy;
mod atmosphere;
mod battery_and_wire;
mod booster;
mod circuit_flow;
mod fuse;
mod gas_dynamics;
mod hole_coefficient;
mod instruments;
mod integrator;
mod iso_6358;
mod lamp;
mod leak_rate;
mod motor;
mod page;
mod pump_down;
mod regulations;
mod row;
mod service;
mod table;
mod thermodynamics;
mod trade;
mod units;

use row::{Check, checks};
use table::Table;

/// Every module with a table, in the page's order. (The tests of one that is not here fail.)
const MODULES: &[(&str, &[Check])] = &[
    ("accuracy", accuracy::CHECKS),
    ("atmosphere", atmosphere::CHECKS),
    ("battery_and_wire", battery_and_wire::CHECKS),
    ("booster", booster::CHECKS),
    ("circuit_flow", circuit_flow::CHECKS),
    ("fuse", fuse::CHECKS),
    ("gas_dynamics", gas_dynamics::CHECKS),
    ("hole_coefficient", hole_coefficient::CHECKS),
    ("instruments", instruments::CHECKS),
    ("integrator", integrator::CHECKS),
    ("iso_6358", iso_6358::CHECKS),
    ("lamp", lamp::CHECKS),
    ("leak_rate", leak_rate::CHECKS),
    ("motor", motor::CHECKS),
    ("pump_down", pump_down::CHECKS),
    ("regulations", regulations::CHECKS),
    ("service", service::CHECKS),
    ("thermodynamics", thermodynamics::CHECKS),
    ("trade", trade::CHECKS),
    ("units", units::CHECKS),
];

/// Runs the body of a test on its entry of the table; called by the tests that `checks!` makes.
fn run(path: &str, test: &str, body: fn(&mut Table)) {
    let module = path.trim_end_matches("::tests").rsplit("::").next().unwrap_or(path);
    let checks = MODULES.iter().find(|(name, _)| *name == module).map(|(_, checks)| *checks);
    let checks = checks.unwrap_or_else(|| panic!("{module} does not stand in MODULES (published/mod.rs)"));
    let check = checks.iter().find(|c| c.test == test).unwrap_or_else(|| panic!("no entry of that name"));
    let before = crate::rig::runs();
    let mut table = Table::of(check);
    body(&mut table);
    let faults = table.faults(before < crate::rig::runs());
    assert!(faults.is_empty(), "{module}::{test}: {faults:#?}");
}
