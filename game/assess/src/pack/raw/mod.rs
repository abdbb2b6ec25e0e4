//! Files exactly as written: strings and bare numbers, unknown keys refused.
//!
//! The macro gives each struct its file name and a table of its keys with their ranges. The checker
//! reads ranges from that table and the reference page is printed from it, so that neither can drift.

/// Version of the form of every file.
pub(crate) const SCHEMA: u32 = 1;

macro_rules! raw {
    (@range) => { None };
    (@range $min:literal, $max:literal, $unit:ident) => { Some($crate::pack::range::Range::new($min, $max, $crate::pack::range::Unit::$unit)) };
    (
        $(#[doc = $doc:literal])+
        struct $name:ident = $file:literal {
            $(
                $(#[doc = $fdoc:literal])+
                $(#[serde($attr:ident)])?
                $field:ident: $ty:ty $([$min:literal, $max:literal, $unit:ident])?,
            )*
        }
    ) => {
        $(#[doc = $doc])+
        #[derive(Debug, serde::Deserialize)]
        #[serde(rename = $file, deny_unknown_fields)]
        pub(crate) struct $name {
            $( $(#[doc = $fdoc])+ $(#[serde($attr)])? pub(crate) $field: $ty, )*
        }

        impl $crate::pack::block::Block for $name {
            const NAME: &'static str = $file;
            const DOC: &'static str = concat!($($doc),+);
            const KEYS: &'static [$crate::pack::block::KeyDef] = &[
                $( $crate::pack::block::KeyDef {
                    name: stringify!($field),
                    form: stringify!($ty),
                    range: raw!(@range $($min, $max, $unit)?),
                    doc: concat!($($fdoc),+),
                }, )*
            ];
        }
    };
}

mod car;
mod catalogue;
mod diagram;
mod instrument;
mod job;
mod plan;
pub(crate) mod ranges;
mod room;
mod test;

pub(crate) use car::{RawCover, RawJoint, RawPart, RawVehicle};
pub(crate) use catalogue::{
    RawFault, RawLimit, RawParam, RawRecord, RawSpare, RawSpares, RawThinAir, RawTolerance, RawUnit,
};
pub(crate) use diagram::{RawDiagram, RawPlace};
pub(crate) use instrument::RawInstrument;
pub(crate) use job::{RawBench, RawCompetence, RawHidden, RawJob, RawPack, RawWeights};
pub(crate) use plan::{RawPlan, RawPlanTest};
pub(crate) use room::{RawCoverStand, RawFixture, RawMouth, RawRoom, RawSpot, RawStand, RawWay};
pub(crate) use test::{RawTest, RawTests};
