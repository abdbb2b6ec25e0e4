//! What each part does in a circuit, seen from outside: pressures, pedal, terminals.

mod booster;
mod electric;
mod engine_pump;
mod hose;
mod sensor;
