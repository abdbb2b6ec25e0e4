//! What came of a deed, in a sentence: what is as it is now, how long it took, where one walked for it.

use assess::locale::{FluentValue, mode_key};
use sim_core::action::{Action, PedalHold};
use sim_core::assembly::Stop;
use sim_core::notice::Thing;
use sim_core::parts::engine::EngineState;

use super::Words;
use super::names::station_key;
use crate::deed::Deed;
use crate::prefs::PressureUnit;
use crate::shop::Shop;

/// Deeds shorter than this do not say how long they took, s.
const WORTH_TELLING_S: u64 = 5;

impl Words {
    /// A stretch of time as people say it: `40 s`, `4 min`, `1 min 20 s`, `12 h`.
    #[must_use]
    pub fn duration(&self, s: u64) -> String {
        let (h, min, s) = (s / 3600, s / 60 % 60, s % 60);
        let parts = [(h, "duration-h"), (min, "duration-min"), (s, "duration-s")];
        let said =
            parts.iter().filter(|(n, _)| 0 < *n).map(|(n, key)| self.say_with(key, &[("n", (*n).into())]));
        let said: Vec<String> = said.take(2).collect();
        if said.is_empty() { self.say_with("duration-s", &[("n", 0.into())]) } else { said.join(" ") }
    }

    /// What came of a deed.
    #[must_use]
    pub fn deed(&self, shop: &Shop, deed: &Deed, pressure: PressureUnit) -> String {
        let what = self.done(shop, deed, pressure);
        let walked = deed
            .walked_to
            .map(|to| self.say_with("done-walked", &[("station", self.say(station_key(to)).into())]));
        let waits = matches!(deed.action, Action::Wait { .. } | Action::WaitUntil { .. } | Action::Overnight);
        let took = (WORTH_TELLING_S <= deed.took_s && !waits)
            .then(|| self.say_with("done-took", &[("time", self.duration(deed.took_s).into())]));
        let parts = [walked, what, took];
        parts.into_iter().flatten().collect::<Vec<_>>().join(" ")
    }

    /// What is as it is now; `None` for what tells itself, as a reading does.
    fn done(&self, shop: &Shop, deed: &Deed, pressure: PressureUnit) -> Option<String> {
        let about = |key: &str, it: String| self.say_with(key, &[("it", it.into())]);
        let force = |key: &str, n: f64| self.say_with(key, &[("n", self.plain(n).into())]);
        Some(match &deed.action {
            Action::ReadCard => self.say("done-read-card"),
            Action::ReadSheet => self.say("done-read-sheet"),
            Action::Chocks(true) => self.say("done-chocks-set"),
            Action::Chocks(false) => self.say("done-chocks-away"),
            Action::Extraction(true) => self.say("done-extraction-on"),
            Action::Extraction(false) => self.say("done-extraction-off"),
            Action::Key(true) => self.say("done-key-on"),
            Action::Key(false) => self.say("done-key-off"),
            Action::Engine(to) if deed.started => about("done-engine-started", self.engine(*to)),
            Action::Engine(EngineState::Stopped) => self.say("done-engine-stopped"),
            Action::Engine(to) => about("done-engine", self.engine(*to)),
            Action::Pedal(PedalHold::Released) => self.say("done-pedal-released"),
            Action::Pedal(PedalHold::Foot { force_n }) => force("done-pedal-foot", *force_n),
            Action::Pedal(PedalHold::Prop { force_n }) => force("done-pedal-prop", *force_n),
            Action::PumpPedal { times, force_n } => {
                let values = [("times", (*times).into()), ("n", self.plain(*force_n).into())];
                self.say_with("done-pedal-pumped", &values)
            }
            Action::Cover { cover, off: true } => {
                about("done-cover-off", self.called(shop, Thing::Cover, cover))
            }
            Action::Cover { cover, off: false } => {
                about("done-cover-on", self.called(shop, Thing::Cover, cover))
            }
            Action::OpenJoint { joint } => about("done-open", self.called(shop, Thing::Joint, joint)),
            Action::MakeJoint { joint } => about("done-make", self.called(shop, Thing::Joint, joint)),
            Action::SetStop { port, stop } => {
                let key = match (stop, deed.was) {
                    (Some(Stop::Plug), _) => "done-plug",
                    (Some(Stop::Clamp), _) => "done-clamp",
                    (None, Some(Stop::Clamp)) => "done-unclamp",
                    (None, _) => "done-unplug",
                };
                about(key, self.place(shop, port))
            }
            Action::PullUnit { unit } => about("done-pull", self.unit(shop, unit)),
            Action::PushUnit { unit } => about("done-push", self.unit(shop, unit)),
            Action::Fit { instrument, ends } => {
                let places = ends.iter().map(|(_, at)| self.place(shop, at)).collect::<Vec<_>>().join(", ");
                let it = self.instrument(shop, instrument);
                self.say_with("done-fit", &[("it", it.into()), ("at", places.into())])
            }
            Action::Unfit { instrument } => about("done-unfit", self.instrument(shop, instrument)),
            Action::SetMeter { instrument, mode } => {
                let values: [(&str, FluentValue<'_>); 2] = [
                    ("it", self.instrument(shop, instrument).into()),
                    ("mode", self.say(mode_key(*mode)).into()),
                ];
                self.say_with("done-meter", &values)
            }
            Action::Press { instrument, down } => {
                let key = if *down { "done-pressed" } else { "done-let-go" };
                about(key, self.instrument(shop, instrument))
            }
            Action::Stroke { instrument, times } => {
                let it = self.instrument(shop, instrument);
                self.say_with("done-stroked", &[("it", it.into()), ("times", (*times).into())])
            }
            Action::Swap { unit, spare } => {
                let values: [(&str, FluentValue<'_>); 2] = [
                    ("it", self.unit(shop, unit).into()),
                    ("spare", self.called(shop, Thing::Spare, spare).into()),
                ];
                self.say_with("done-swap", &values)
            }
            Action::Clean { unit } => about("done-clean", self.unit(shop, unit)),
            Action::Reform { unit } => about("done-reform", self.unit(shop, unit)),
            Action::Wait { .. } | Action::WaitUntil { .. } => {
                self.say_with("done-wait", &[("time", self.duration(deed.took_s).into())])
            }
            Action::Overnight => self.say("done-overnight"),
            Action::Note { reading, written, .. } => {
                let of = deed.of.as_ref();
                let value = match written {
                    Some(written) => self.written(written, pressure),
                    None => of.and_then(|r| self.shown(shop, r)).unwrap_or_default(),
                };
                let what = of.map_or_else(String::new, |r| self.observed(shop, &r.what));
                let values: [(&str, FluentValue<'_>); 3] =
                    [("n", (*reading).into()), ("what", what.into()), ("value", value.into())];
                self.say_with("done-note", &values)
            }
            Action::Suspect { .. } => self.say("done-suspect"),
            Action::Finding { .. } => self.say("done-finding"),
            Action::HandBack => self.say("done-hand-back"),
            Action::Read { .. } | Action::Sense(_) | Action::Time { .. } => return None,
        })
    }

    /// What an engine does.
    #[must_use]
    pub fn engine(&self, state: EngineState) -> String {
        self.say(match state {
            EngineState::Stopped => "engine-stopped",
            EngineState::WarmIdle => "engine-idle",
            EngineState::ColdIdle => "engine-idle-cold",
            EngineState::Cruise => "engine-cruise",
            EngineState::Overrun => "engine-overrun",
            EngineState::WideOpen => "engine-wide-open",
        })
    }
}
