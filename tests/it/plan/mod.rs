//! Tests of the cars as data and as work: played, shared, undone, told.

mod played;
