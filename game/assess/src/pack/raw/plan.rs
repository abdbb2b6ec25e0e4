//! A reference plan as written.

raw! {
    /// The reference plan of a job: `scenarios/<pack>/plans/<job>.ron`, written by `pinhole prove`. A job may have none;
    /// one of other files or of another scheme is not used.
    struct RawPlan = "Plan" {
        /// Version of the format: 1.
        schema: u32,
        /// Digest of the job's files, hexadecimal.
        digest: String,
        /// Scheme of the marks.
        scheme: String,
        /// The tests, in their order.
        tests: Vec<RawPlanTest>,
    }
}

raw! {
    /// A test of a reference plan, as it went in a car with every tolerance in the middle; in `Plan.tests`.
    struct RawPlanTest = "PlanTest" {
        /// Short name of the test in the car's list.
        test: String,
        /// What it adds to the work.
        worked_min: f64 [-600.0, 6000.0, InName],
        /// What it adds to the waiting.
        waited_min: f64 [-600.0, 60000.0, InName],
        /// Probability of what is true after it.
        p_true: f64 [0.0, 1.0, InName],
    }
}
