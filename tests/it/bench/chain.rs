//! The chain of an attempt's file, a second time: for files that were altered and chained anew by someone who knows how.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use assess::attempt::clock::{By, Clock, Opening};
use assess::attempt::{Attempt, Seed};
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play::script;
use assess::play::{Begin, Session};
use serde_json::Value;

use super::root;

/// A few actions of several kinds, a minute of simulated time.
pub(super) const SHORT: &str = "card\nchocks on\nread barometer\nnote shown for day\nkey on\n\
     wait until pump stops 60\nhum\nnote\nsuspect it may be the valve\npedal press 100\npedal release\nkey off\nwait 5\n";

pub(crate) fn job() -> Arc<Job> {
    Arc::new(Library::open(&root()).unwrap().job("first-shift/hum-at-the-lights").unwrap())
}

/// At 2026-01-02 03:04:05 UTC, and a second later at each look.
pub(super) fn ticking(from_ms: u64, by: By) -> Opening {
    let next = std::sync::atomic::AtomicU64::new(from_ms);
    let clock = Clock::new(move || next.fetch_add(1000, std::sync::atomic::Ordering::Relaxed));
    Opening { by, clock }
}

/// An attempt by script in `home`.
pub(crate) fn made(home: &Path) -> (PathBuf, Attempt) {
    let path = home.join("a.attempt");
    let mut session = Session::start(job(), &Begin::rehearsal(Seed(0x5eed)), &path).unwrap();
    script::play(&mut session, SHORT, |_, _, _, _| {}).unwrap();
    (path, session.into_attempt())
}

/// The lines of a file, without their places in the chain.
pub(crate) fn bodies(bytes: &[u8]) -> Vec<String> {
    let text = std::str::from_utf8(bytes).unwrap();
    text.lines().map(|line| format!("{}}}", line.rsplit_once(",\"chain\":\"").unwrap().0)).collect()
}

/// The bodies as JSON.
pub(crate) fn values(bytes: &[u8]) -> Vec<Value> {
    bodies(bytes).iter().map(|body| serde_json::from_str(body).unwrap()).collect()
}

/// A file of these bodies, chained.
pub(crate) fn chained(bodies: &[String]) -> Vec<u8> {
    let schema = bodies.first().and_then(|body| serde_json::from_str::<Value>(body).ok());
    let schema = schema.as_ref().and_then(|v| v["schema"].as_str()).unwrap_or("pinhole-attempt/2");
    let mut chain = blake3::hash(schema.as_bytes());
    let mut out = Vec::new();
    for body in bodies {
        let mut hasher = blake3::Hasher::new();
        hasher.update(chain.as_bytes());
        hasher.update(body.as_bytes());
        chain = hasher.finalize();
        let open = body.strip_suffix('}').unwrap_or(body);
        out.extend(format!("{open},\"chain\":\"{}\"}}\n", chain.to_hex()).into_bytes());
    }
    out
}

/// As [`chained`], from JSON.
pub(super) fn chained_values(values: &[Value]) -> Vec<u8> {
    chained(&values.iter().map(Value::to_string).collect::<Vec<_>>())
}

#[test]
fn the_second_chain_is_that_of_the_program() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let bytes = std::fs::read(path).unwrap();
    assert_eq!(chained(&bodies(&bytes)), bytes);
}
