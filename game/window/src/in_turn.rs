//! Pointer events in turn, however slow a frame is.
//!
//! egui asks what lies under the pointer once a frame, where the pointer is at its end. When a frame takes
//! a third of a second (rendering in software), a click followed by a quick move, or a move followed by a
//! quick click, falls into one frame, and the click goes to where the pointer ended up. So a frame is given
//! either moves or buttons; what comes after waits for the next one, and nothing overtakes it. The focus,
//! too, goes on by one a frame at most: each Tab has a frame of its own.

use std::collections::VecDeque;

use bevy::prelude::*;
use bevy::window::RequestRedraw;
use bevy_egui::{EguiInputSet, input::EguiInputEvent};
use egui::Event;

/// Events that wait for their frame.
#[derive(Resource, Default)]
pub(super) struct Waiting(VecDeque<EguiInputEvent>);

impl Waiting {
    /// Nothing waits.
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

/// Puts the events of the panels in turn.
pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Waiting>().add_systems(
        PreUpdate,
        (
            deliver.after(EguiInputSet::ReadBevyMessages).before(EguiInputSet::WriteEguiEvents),
            forget.after(EguiInputSet::WriteEguiEvents),
        ),
    );
}

/// What a frame was given is not given again.
fn forget(mut events: ResMut<Messages<EguiInputEvent>>) {
    events.clear();
}

fn deliver(
    mut events: ResMut<Messages<EguiInputEvent>>,
    mut waiting: ResMut<Waiting>,
    mut redraw: MessageWriter<RequestRedraw>,
) {
    if events.is_empty() && waiting.is_empty() {
        return;
    }
    waiting.0.extend(events.drain());
    let now = batch(waiting.0.iter().map(|e| &e.event));
    events.write_batch(waiting.0.drain(..now));
    if !waiting.is_empty() {
        redraw.write(RequestRedraw);
    }
}

/// How many of these events one frame is given.
fn batch<'e>(events: impl Iterator<Item = &'e Event>) -> usize {
    let (mut moved, mut pushed, mut tabbed, mut n) = (false, false, false, 0);
    for event in events {
        match event {
            Event::PointerMoved(_) | Event::PointerGone if pushed => break,
            Event::PointerButton { .. } if moved => break,
            Event::Key { key: egui::Key::Tab, pressed: true, .. } if tabbed => break,
            Event::Key { key: egui::Key::Tab, pressed: true, .. } => tabbed = true,
            Event::PointerMoved(_) | Event::PointerGone => moved = true,
            Event::PointerButton { .. } => pushed = true,
            _ => {}
        }
        n += 1;
    }
    n
}

#[cfg(test)]
mod tests {
    use super::*;

    fn frames(mut events: &[Event]) -> Vec<usize> {
        let mut out = Vec::new();
        while !events.is_empty() {
            let n = batch(events.iter());
            out.push(n);
            events = &events[n..];
        }
        out
    }

    fn at(x: f32) -> Event {
        Event::PointerMoved(egui::pos2(x, 0.0))
    }

    fn button(pressed: bool) -> Event {
        Event::PointerButton {
            pos: egui::pos2(1.0, 0.0),
            button: egui::PointerButton::Primary,
            pressed,
            modifiers: egui::Modifiers::NONE,
        }
    }

    #[test]
    fn a_click_between_two_moves_has_a_frame_of_its_own() {
        let quick = [at(0.0), at(1.0), button(true), button(false), at(2.0), at(3.0)];
        assert_eq!(frames(&quick), [2, 2, 2]);
    }

    #[test]
    fn each_tab_has_a_frame_of_its_own() {
        let tab = |pressed| Event::Key {
            key: egui::Key::Tab,
            physical_key: None,
            pressed,
            repeat: false,
            modifiers: egui::Modifiers::NONE,
        };
        let three = [tab(true), tab(false), tab(true), tab(false), tab(true), tab(false)];
        assert_eq!(frames(&three), [2, 2, 2]);
    }

    #[derive(Resource, Default)]
    struct Given(Vec<Vec<Event>>);

    fn collect(mut given: ResMut<Given>, mut events: MessageReader<EguiInputEvent>) {
        given.0.push(events.read().map(|e| e.event.clone()).collect());
    }

    #[test]
    fn every_event_is_given_once_and_in_order() {
        let mut app = App::new();
        app.add_message::<EguiInputEvent>().add_message::<RequestRedraw>().init_resource::<Given>();
        app.add_plugins(plugin).add_systems(PreUpdate, collect.in_set(EguiInputSet::WriteEguiEvents));
        let quick = [at(0.0), button(true), button(false), at(1.0), button(true), button(false)];
        for event in quick.clone() {
            app.world_mut().write_message(EguiInputEvent { context: Entity::PLACEHOLDER, event });
        }
        for _ in 0..6 {
            app.update();
        }
        let given = &app.world().resource::<Given>().0;
        let sizes: Vec<usize> = given.iter().map(Vec::len).collect();
        assert_eq!(sizes, [1, 2, 1, 2, 0, 0]);
        assert_eq!(given.concat(), quick);
        assert!(app.world().resource::<Waiting>().is_empty());
    }

    #[test]
    fn moves_never_pile_up() {
        let moves: Vec<Event> = (0..100).map(|i| at(i as f32)).collect();
        assert_eq!(frames(&moves), [100]);
    }

    #[test]
    fn what_is_typed_after_a_click_does_not_overtake_it() {
        let typed = [at(0.0), button(true), button(false), Event::Text("5".into())];
        assert_eq!(frames(&typed), [1, 3]);
    }
}
