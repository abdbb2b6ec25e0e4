//! FNV-1a over 64-bit words in declared order: the fingerprint of a state.
//!
//! Never fed with `usize`, NaN or anything whose order is not declared.

/// A running FNV-1a digest.
#[derive(Clone, Copy, Debug)]
pub struct Fnv(u64);

impl Default for Fnv {
    fn default() -> Self {
        Self::new()
    }
}

impl Fnv {
    /// The empty digest (FNV offset basis).
    #[must_use]
    pub fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }
    /// Adds a byte.
    pub fn byte(&mut self, b: u8) {
        self.0 = (self.0 ^ u64::from(b)).wrapping_mul(0x0000_0100_0000_01b3);
    }
    /// Adds a word, low byte first.
    pub fn u64(&mut self, v: u64) {
        for b in v.to_le_bytes() {
            self.byte(b);
        }
    }
    /// Adds a number by its bits; −0 counts as 0.
    pub fn f64(&mut self, v: f64) {
        self.u64((v + 0.0).to_bits());
    }
    /// Adds a text with its length.
    pub fn str(&mut self, s: &str) {
        self.u64(s.len() as u64);
        for b in s.bytes() {
            self.byte(b);
        }
    }
    /// The digest.
    #[must_use]
    pub fn finish(self) -> u64 {
        self.0
    }
}
