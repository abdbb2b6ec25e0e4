//! Check values as data: what a source prints, in which unit, how near the code must come, and why that near.
//!
//! A module of this folder begins with one table, `checks! { … }`. An entry is a test: through what it goes, the
//! numbers it allows with the reason above each, and the figures by source:
//!
//! ```ignore
//! val_open_circuit_voltage through Law(Battery::open_circuit_v) {
//!     /// The row states it.
//!     STATED = 0.02;
//!     "6.7" of "battery maker's table 6, 12 V flooded, 26.7 °C" => [
//!         series("charge {}", "V", &[(1.0, 12.65), (0.5, 12.24)], abs(STATED)),
//!     ];
//! }
//! ```
//!
//! The test's body is the function of that name, `fn val_open_circuit_voltage(t: &mut Table)`, and says by the
//! figure's name what the code gives for it: `t.series("charge {}", Battery::open_circuit_v)`. The macro makes
//! the test and the entry of the page. So a figure stands in one place; one that the body does not ask for
//! fails the test, and so does a name that is in no table. A number without a reason does not compile.

/// What a test calls of the circuit's step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Through {
    /// It runs a circuit. (Held: the rig counts.)
    Step,
    /// It calls the laws named, which the circuit's right-hand side or its making calls.
    Law,
    /// A formula of its own, or code that the step does not call.
    Own,
}

/// One test: what it holds.
pub(crate) struct Check {
    /// Name of the test and of its body.
    pub(crate) test: &'static str,
    pub(crate) through: Through,
    /// The laws it calls, where it goes through laws.
    pub(crate) laws: &'static [&'static str],
    pub(crate) sources: &'static [Source],
}

/// What one source prints.
pub(crate) struct Source {
    /// Rows of the handbook of check values: `6.22, 6.23 with 6.24`. What stands behind "with" helps and is not
    /// counted.
    pub(crate) rows: &'static str,
    /// The issuing body and its document.
    pub(crate) body: &'static str,
    pub(crate) figures: &'static [Figure],
}

/// A number that a test allows, with its name and its reason.
#[derive(Clone, Copy)]
pub(crate) struct Tolerance {
    pub(crate) name: &'static str,
    /// As it is written in the table.
    pub(crate) written: &'static str,
    pub(crate) amount: f64,
    pub(crate) reason: &'static str,
}

impl Tolerance {
    /// # Panics
    /// When the reason holds no word; in a table that is an error of compilation.
    pub(crate) const fn new(
        name: &'static str,
        written: &'static str,
        amount: f64,
        reason: &'static str,
    ) -> Self {
        let (bytes, mut i, mut letters) = (reason.as_bytes(), 0, 0);
        while i < bytes.len() {
            if bytes[i].is_ascii_alphabetic() {
                letters += 1;
            }
            i += 1;
        }
        assert!(5 < letters, "a tolerance needs its reason, in words, above it");
        Self { name, written, amount, reason }
    }
}

/// How far from the figure the code may be.
#[derive(Clone, Copy)]
pub(crate) enum Margin {
    /// Either way, in the figure's unit.
    Abs(Tolerance),
    /// Either way, as a share of the figure.
    Rel(Tolerance),
    /// In the figure's unit, and a share of the figure on top.
    AbsAndRel(Tolerance, Tolerance),
    /// Half a unit in the last of so many printed decimals.
    HalfDigit(u32),
    /// The figure is a band; the reason for one of its ends where the row does not give it.
    Band(Option<Tolerance>),
}

impl Margin {
    /// Either way from `figure`, in its unit.
    pub(crate) fn of(self, figure: f64) -> f64 {
        match self {
            Self::Abs(t) => t.amount,
            Self::Rel(t) => t.amount * figure.abs(),
            Self::AbsAndRel(a, r) => a.amount + r.amount * figure.abs(),
            Self::HalfDigit(decimals) => 0.5 / f64::from(10_u32.pow(decimals)),
            Self::Band(_) => 0.0,
        }
    }

    /// The numbers with a reason in it.
    pub(crate) fn named(self) -> Vec<Tolerance> {
        match self {
            Self::Abs(t) | Self::Rel(t) | Self::Band(Some(t)) => vec![t],
            Self::AbsAndRel(a, r) => vec![a, r],
            Self::HalfDigit(_) | Self::Band(None) => Vec::new(),
        }
    }
}

/// What is published.
#[derive(Clone, Copy)]
pub(crate) enum Want {
    /// A number.
    Value(f64),
    /// From, to.
    Band(f64, f64),
    /// Numbers by an argument, which stands for `{}` in the figure's name.
    Series(&'static [(f64, f64)]),
    /// Bands by an argument: argument, from, to.
    Bands(&'static [(f64, f64, f64)]),
    /// A formula or a comparison; the test computes its value at the state it finds.
    Formula(&'static str),
}

/// One quantity of a source.
#[derive(Clone, Copy)]
pub(crate) struct Figure {
    /// Its name, by which the test asks for it; `{}` stands for a series' argument or for whom it is asked.
    pub(crate) what: &'static str,
    pub(crate) unit: &'static str,
    pub(crate) want: Want,
    pub(crate) margin: Margin,
}

impl Figure {
    /// The reason for an end of the band.
    pub(crate) const fn because(self, reason: Tolerance) -> Self {
        Self { margin: Margin::Band(Some(reason)), ..self }
    }
}

/// A printed number.
pub(crate) const fn value(what: &'static str, unit: &'static str, printed: f64, margin: Margin) -> Figure {
    Figure { what, unit, want: Want::Value(printed), margin }
}

/// A printed table: (argument, number).
pub(crate) const fn series(
    what: &'static str,
    unit: &'static str,
    printed: &'static [(f64, f64)],
    margin: Margin,
) -> Figure {
    Figure { what, unit, want: Want::Series(printed), margin }
}

/// The row's band.
pub(crate) const fn band(what: &'static str, unit: &'static str, min: f64, max: f64) -> Figure {
    Figure { what, unit, want: Want::Band(min, max), margin: Margin::Band(None) }
}

/// A table of bands: (argument, from, to).
pub(crate) const fn bands(
    what: &'static str,
    unit: &'static str,
    printed: &'static [(f64, f64, f64)],
) -> Figure {
    Figure { what, unit, want: Want::Bands(printed), margin: Margin::Band(None) }
}

/// The row's formula, or what the code must equal.
pub(crate) const fn formula(
    what: &'static str,
    unit: &'static str,
    written: &'static str,
    margin: Margin,
) -> Figure {
    Figure { what, unit, want: Want::Formula(written), margin }
}

/// Within so much of it, in its unit.
pub(crate) const fn abs(tolerance: Tolerance) -> Margin {
    Margin::Abs(tolerance)
}

/// Within this share of it.
pub(crate) const fn rel(tolerance: Tolerance) -> Margin {
    Margin::Rel(tolerance)
}

/// Within so much, and a share on top.
pub(crate) const fn abs_and_rel(tolerance: Tolerance, share: Tolerance) -> Margin {
    Margin::AbsAndRel(tolerance, share)
}

/// Within half a unit of the last of `decimals` printed decimals.
pub(crate) const fn half_digit(decimals: u32) -> Margin {
    Margin::HalfDigit(decimals)
}

/// The table of a module, and its tests (above: how an entry reads).
macro_rules! checks {
    ($(
        $test:ident through $through:ident $(($($law:path),+))? {
            $($(#[doc = $reason:literal])+ $tolerance:ident = $amount:expr;)*
            $($rows:literal of $body:expr => [$($figure:expr),+ $(,)?];)+
        }
    )+) => {
        pub(super) const CHECKS: &[$crate::published::row::Check] = {
            use $crate::published::row::*;
            &[$({
                $(const $tolerance: Tolerance =
                    Tolerance::new(stringify!($tolerance), stringify!($amount), $amount, concat!($($reason),+));)*
                // A law that is not there does not compile.
                $($(_ = $law;)+)?
                Check {
                    test: stringify!($test),
                    through: Through::$through,
                    laws: &[$($(stringify!($law)),+)?],
                    sources: &[$(Source { rows: $rows, body: $body, figures: &[$($figure),+] }),+],
                }
            }),+]
        };

        mod tests {
            $(#[test]
            fn $test() {
                $crate::published::run(module_path!(), stringify!($test), super::$test);
            })+
        }
    };
}
pub(crate) use checks;
