//! Symbols of what has air and current: one on each sheet.

use sim_core::parts::engine::Engine;
use sim_core::parts::vacuum_pump::VacuumPump;
use sim_core::parts::vacuum_sensor::VacuumSensor;
use sim_core::parts::vacuum_switch::VacuumSwitch;

use super::super::pen::Sym;
use super::air::{self, Drive};
use super::{Now, Symbol, electric};

impl Symbol for VacuumSwitch {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        air::vacuum_switch(sym);
    }

    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        electric::vacuum_switch(sym);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("p", "p"), ("com", "com")]
    }
}

impl Symbol for VacuumSensor {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        air::sensor(sym);
    }

    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        electric::sensor(sym);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("plus", "5 V"), ("signal", "S"), ("minus", "−")]
    }
}

impl Symbol for VacuumPump {
    fn air(&self, sym: &Sym<'_>, now: Now) {
        air::pump(sym, Drive::Motor { hums: now.hum });
    }

    fn wiring(&self, sym: &Sym<'_>, now: Now) {
        electric::motor(sym, now.hum);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("plus", "+"), ("minus", "31")]
    }
}

impl Symbol for Engine {
    fn air(&self, sym: &Sym<'_>, now: Now) {
        air::engine(sym, now.running);
    }

    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        electric::alternator(sym);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("ground", "31"), ("b_plus", "B+")]
    }
}
