//! The table of a set of notices: variant, key, gaps. One line says all three, so none can be forgotten.

/// Makes an enum whose variants are told. Each line: key, variant, fields; a field's name is its gap's name.
macro_rules! told {
    (
        $(#[$doc:meta])*
        pub enum $name:ident {
            $(
                $(#[$about:meta])*
                $variant:ident $({ $( $(#[$of:meta])* $field:ident : $kind:ty ),+ $(,)? })? => $key:literal
            ),+ $(,)?
        }
    ) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
        #[serde(rename_all = "snake_case", deny_unknown_fields)]
        pub enum $name {
            $(
                $(#[$about])*
                $variant $({ $( $(#[$of])* $field : $kind ),+ })?
            ),+
        }

        impl $name {
            /// Every key with the names of its gaps.
            pub const KEYS: &'static [(&'static str, &'static [&'static str])] =
                &[$( ($key, &[$($( stringify!($field) ),+)?]) ),+];
        }

        impl $crate::notice::Told for $name {
            fn telling(&self) -> $crate::notice::Telling {
                match self {
                    $(
                        Self::$variant $({ $( $field ),+ })? => $crate::notice::Telling {
                            key: $key,
                            gaps: vec![$($(
                                (stringify!($field), $crate::notice::InGap::gap($field))
                            ),+)?],
                        }
                    ),+
                }
            }
        }
    };
}

/// Makes an enum of words that stand in gaps: variant and key, without `word-`.
macro_rules! words {
    (
        $(#[$doc:meta])*
        pub enum $name:ident { $( $(#[$about:meta])* $variant:ident => $key:literal ),+ $(,)? }
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum $name { $( $(#[$about])* $variant ),+ }

        impl $name {
            /// Key of every one, without `word-`.
            pub const KEYS: &'static [&'static str] = &[$( $key ),+];

            /// Its key, without `word-`.
            #[must_use]
            pub fn key(self) -> &'static str {
                match self { $( Self::$variant => $key ),+ }
            }
        }

        impl $crate::notice::InGap for $name {
            fn gap(&self) -> $crate::notice::Gap {
                $crate::notice::Gap::Word(self.key())
            }
        }
    };
}

pub(crate) use {told, words};
