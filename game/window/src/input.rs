//! What of the window's events is a hand at work.

use bevy::window::WindowEvent;

/// What a hand or the window system did.
pub(super) fn is_input(event: &WindowEvent) -> bool {
    !matches!(
        event,
        WindowEvent::RequestRedraw(_) | WindowEvent::AppLifecycle(_) | WindowEvent::MouseMotion(_)
    )
}
