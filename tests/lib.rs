//! Shared helpers of the outside tests.

pub mod attacks;
