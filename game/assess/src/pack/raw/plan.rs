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
        /// Tests of the car, short names, in their order.
        tests: Vec<String>,
    }
}
