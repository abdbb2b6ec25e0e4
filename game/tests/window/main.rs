//! The window as a hand uses it: a virtual display, the real program, a pointer and a keyboard.
//!
//! Whole jobs are done here, by mouse and by keyboard, in the room and in the line diagram. What must be there:
//! Xvfb, xdotool, and a graphics adapter (Mesa's software Vulkan will do). Where one of them is missing the tests
//! say *skipped* and how many; `.ci/run` fails on any skip.

#![expect(clippy::unwrap_used, reason = "a test says what went wrong by stopping there")]

mod jobs;
mod keyboard;
mod kills;
mod mouse;
mod plan;
mod screen;
mod sizes;
mod soak;
