//! The watch over a batch as a command shows it.

use std::collections::BTreeMap;

use advice::uneven::Uneven;
use advice::walk::Walk;
use advice::watch::{Call, Level, Ruled, Watch, Watched, WatchedDay, asked};
use schemars::JsonSchema;
use serde::Serialize;

use crate::batch;
use crate::document::Document;
use crate::uneven::{self, UnevenJson};
use crate::viewer::Viewer;

/// A day of a signal, in the signal's unit.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct DayJson {
    /// Day of age.
    pub age_d: i32,
    /// What was written.
    pub seen: f64,
    /// What was likely by the plan and the batch's own days before.
    pub likely: f64,
    /// Nine days of ten lie between these.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// The alarm's memory: what does not fit, added up.
    pub memory: f64,
    /// steady, look or act.
    pub state: &'static str,
}

/// A signal.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SignalJson {
    /// steady, look or act; absent where nothing was written lately.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub state: Option<&'static str>,
    /// The unit of what was seen.
    pub unit: &'static str,
    /// The figure by day that is seen, by whose name its working is asked for.
    pub seen: &'static str,
    /// The figure by day that the plan expects, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expected: Option<&'static str>,
    /// The memory from which on to look.
    pub look_at: f64,
    /// The memory from which on to act.
    pub act_at: f64,
    /// What to check with one's own hands.
    pub check: String,
    /// The days that were written.
    pub days: Vec<DayJson>,
}

/// A fixed rule.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RuleJson {
    /// What it says.
    pub text: String,
    /// What it asks: note, look or act.
    pub asks: &'static str,
    /// Where it is from, by its key in the bibliography.
    pub source: &'static str,
    /// Whether it holds now.
    pub holds: bool,
    /// Days of age on which it held.
    pub days: Vec<i32>,
}

/// Something that stood out on a day.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ToldJson {
    /// Day of age.
    pub age_d: i32,
    /// The signal or the rule.
    pub name: &'static str,
    /// look or act.
    pub state: &'static str,
}

/// The watch over a batch.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WatchView {
    /// The batch.
    pub batch: String,
    /// The day, YYYY-MM-DD.
    pub day: String,
    /// That day as day of age; absent until chicks came.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub age_d: Option<i32>,
    /// The highest of all states; absent where nothing was written lately.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub state: Option<&'static str>,
    /// The signals, by name.
    pub signals: BTreeMap<&'static str, SignalJson>,
    /// The fixed rules, by name.
    pub rules: BTreeMap<&'static str, RuleJson>,
    /// All that stood out since the chicks came.
    pub told: Vec<ToldJson>,
    /// Why the birds grow unevenly; absent until birds were weighed with their spots.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uneven: Option<UnevenJson>,
    /// The version of the rules that gave these figures.
    pub rules_version: u32,
}

/// The watch as JSON.
pub fn view(walk: &Walk, viewer: &Viewer) -> WatchView {
    let watch = Watch::of(walk);
    let signals = watch.iter().flat_map(|watch| &watch.signals);
    let rules = watch.iter().flat_map(|watch| &watch.rules);
    let told = watch.iter().flat_map(Watch::told);
    WatchView {
        batch: walk.diary.batch.0.to_string(),
        day: walk.diary.on.to_string(),
        age_d: watch.as_ref().map(|watch| watch.age),
        state: watch.as_ref().and_then(Watch::state).map(name_of),
        signals: signals.map(|signal| (signal.name, signal_json(signal, viewer))).collect(),
        rules: rules.map(|rule| (rule.name, rule_json(rule, viewer))).collect(),
        told: told
            .map(|told| ToldJson { age_d: told.day, name: told.name, state: name_of(told.level) })
            .collect(),
        uneven: Uneven::of(walk).map(|uneven| uneven::view(&uneven, viewer)),
        rules_version: advice::RULES_VERSION,
    }
}

fn name_of(level: Level) -> &'static str {
    batch::state_name(Some(level))
}

fn signal_json(signal: &Watched, viewer: &Viewer) -> SignalJson {
    let spec = advice::families::series_named(signal.seen);
    SignalJson {
        state: signal.state.map(name_of),
        unit: spec.map_or("", |spec| spec.unit.name()),
        seen: signal.seen,
        expected: signal.expected,
        look_at: signal.look,
        act_at: signal.act,
        check: viewer.words().plain(&format!("watch-check-{}", signal.name)),
        days: signal.days.iter().map(day_json).collect(),
    }
}

fn day_json(day: &WatchedDay) -> DayJson {
    DayJson {
        age_d: day.day,
        seen: day.seen,
        likely: day.likely,
        low: day.low,
        high: day.high,
        memory: day.memory,
        state: name_of(day.level),
    }
}

fn rule_json(rule: &Ruled, viewer: &Viewer) -> RuleJson {
    RuleJson {
        text: viewer.words().plain(&format!("watch-rule-{}", rule.name)),
        asks: asks(rule.call),
        source: rule.source,
        holds: rule.holds,
        days: rule.days.clone(),
    }
}

fn asks(call: Call) -> &'static str {
    asked(call).map_or("note", name_of)
}

/// The watch as a document, for a terminal: what its page shows.
pub fn document(walk: &Walk, viewer: &Viewer) -> Document {
    batch::watch(walk, viewer)
}
