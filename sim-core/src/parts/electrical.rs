//! The parts that only carry current, under one name. Terminal names are DIN 72552.

pub use super::battery::Battery;
pub use super::body::Body;
pub use super::elements::{FUSE_MELTS_AT, FUSE_TAU_S};
pub use super::fuse::Fuse;
pub use super::key_switch::KeySwitch;
pub use super::relay::Relay;
pub use super::relay_socket::RelaySocket;
pub use super::supply::Supply;
pub use super::wire::Wire;
