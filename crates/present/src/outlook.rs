//! What is likely from here, as a command shows it.

use std::collections::BTreeMap;

use advice::walk::Walk;
use schemars::JsonSchema;
use serde::Serialize;

use crate::view::{self, SeriesView};
use crate::viewer::Viewer;
use crate::walk::{self, WorkedJson};
use crate::{batch, text as writer};

/// What is likely from a day on.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OutlookView {
    /// The batch.
    pub batch: String,
    /// Its name; absent where the plan gives it none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// The day, YYYY-MM-DD.
    pub day: String,
    /// That day as day of age; absent while nobody knows when the chicks come.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub age_d: Option<i32>,
    /// What is likely, by name; a figure that is not known, or lies beyond the days looked at, is not there.
    pub figures: BTreeMap<&'static str, WorkedJson>,
    /// What is likely by day, by name.
    pub series: BTreeMap<&'static str, SeriesView>,
    /// The version of the rules that gave these figures.
    pub rules_version: u32,
}

/// What the figures of the outlook begin with.
const AHEAD: &str = "outlook.";

/// What is likely from here as JSON.
pub fn view(walk: &Walk) -> OutlookView {
    let diary = &walk.diary;
    let ours = walk.plan.series.iter().filter(|series| series.id.starts_with(AHEAD));
    OutlookView {
        batch: diary.batch.0.to_string(),
        name: walk::name(walk),
        day: diary.on.to_string(),
        age_d: diary.age_today(),
        figures: walk::figures(walk, AHEAD),
        series: ours.filter_map(view::series).collect(),
        rules_version: advice::RULES_VERSION,
    }
}

/// What is likely from here as text.
pub fn text(walk: &Walk, viewer: &Viewer) -> String {
    writer::write(&batch::ahead(walk, viewer), viewer, false)
}
