//! Shared helpers of the outside tests.
