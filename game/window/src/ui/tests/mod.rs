//! The panels, by role and label, without Bevy: what a person does with keys, pointer or a screen reader.

pub(crate) mod bench;
mod clipboard;
mod desk;
mod held;
mod layouts;
mod looks;
mod mark;
mod secrets;
mod steady;
mod told;
