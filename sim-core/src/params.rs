//! Parts as named numbers: one macro gives a part its struct, its file form and its table.
//!
//! A fault is a part with other numbers, a tolerance is a range of a number, a "what if" is a changed
//! number. All three therefore speak of a *parameter of a part* by name (`"hose.pinhole_mm"`).
//! Units are the last word of a name. Parameters in the `faults` block are zero in a sound part and
//! may be left out of a file.

/// One parameter of a kind of part: its name (unit last), range and meaning.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParamDef {
    /// Name with the unit as its last word.
    pub name: &'static str,
    /// Smallest value allowed.
    pub min: f64,
    /// Largest value allowed.
    pub max: f64,
    /// Whether the parameter is zero in a sound part and may be left out of a file.
    pub fault: bool,
    /// One sentence, as in the reference page.
    pub doc: &'static str,
}

/// Access to a part's numbers by name.
pub trait Params {
    /// All parameters in declared order.
    fn table(&self) -> &'static [ParamDef];
    /// The value of parameter `name`, if the part has it.
    fn get(&self, name: &str) -> Option<f64>;
    /// Sets parameter `name`; `false` when the part has no such parameter.
    fn set(&mut self, name: &str, value: f64) -> bool;
}

/// Declares a part. See the module comment.
macro_rules! part_params {
    (
        $(#[$meta:meta])*
        pub struct $name:ident {
            $( $(#[doc = $doc:literal])+ $field:ident: $min:literal ..= $max:literal, )*
            faults {
                $( $(#[doc = $fdoc:literal])+ $ffield:ident: $fmin:literal ..= $fmax:literal, )*
            }
        }
    ) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name {
            $( $(#[doc = $doc])+ pub $field: f64, )*
            $( $(#[doc = $fdoc])+ #[serde(default)] pub $ffield: f64, )*
        }

        impl $name {
            /// Every parameter with its range, in declared order.
            pub const TABLE: &'static [crate::params::ParamDef] = &[
                $( crate::params::ParamDef {
                    name: stringify!($field), min: $min, max: $max, fault: false,
                    doc: concat!($($doc),+),
                }, )*
                $( crate::params::ParamDef {
                    name: stringify!($ffield), min: $fmin, max: $fmax, fault: true,
                    doc: concat!($($fdoc),+),
                }, )*
            ];
        }

        impl crate::params::Params for $name {
            fn table(&self) -> &'static [crate::params::ParamDef] {
                Self::TABLE
            }
            fn get(&self, name: &str) -> Option<f64> {
                match name {
                    $( stringify!($field) => Some(self.$field), )*
                    $( stringify!($ffield) => Some(self.$ffield), )*
                    _ => None,
                }
            }
            fn set(&mut self, name: &str, value: f64) -> bool {
                match name {
                    $( stringify!($field) => self.$field = value, )*
                    $( stringify!($ffield) => self.$ffield = value, )*
                    _ => return false,
                }
                true
            }
        }
    };
}
pub(crate) use part_params;
