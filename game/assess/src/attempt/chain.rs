//! The chain: each line ends with the hash of itself and of the chain up to it.

use super::error::AttemptError;

/// A body as JSON with its place in the chain as the last key, and the new end of the chain.
pub(super) fn chained<T: serde::Serialize>(
    body: &T,
    chain: &blake3::Hash,
) -> Result<(String, blake3::Hash), AttemptError> {
    let mut text = serde_json::to_string(body).map_err(|source| AttemptError::Form { source })?;
    let next = link(chain, &text);
    // `body` is a struct with at least one field, so the text ends with a brace after a value.
    text.pop();
    text.push_str(&format!("{CHAIN_KEY}{}\"}}\n", next.to_hex()));
    Ok((text, next))
}

/// How the chain begins in a line: its last key.
pub(super) const CHAIN_KEY: &str = ",\"chain\":\"";

/// The chain's next hash.
pub(super) fn link(chain: &blake3::Hash, body: &str) -> blake3::Hash {
    let mut hasher = blake3::Hasher::new();
    hasher.update(chain.as_bytes());
    hasher.update(body.as_bytes());
    hasher.finalize()
}
