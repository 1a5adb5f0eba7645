//! Why birds grow unevenly, as JSON.

use advice::uneven::{Evenness, Ranked, Uneven};
use schemars::JsonSchema;
use serde::Serialize;

use crate::viewer::Viewer;

/// A spread, percent of the mean, with the interval that covers the truth in 95 samples of 100.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PartJson {
    /// The spread.
    pub percent: f64,
    /// Its lower end.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
}

/// A cause that the book speaks of.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct CauseJson {
    /// Its name.
    pub name: &'static str,
    /// How strongly the book speaks for it; from 1 on it is a likely cause of an uneven flock.
    pub strength: f64,
    /// Whether it is named as likely.
    pub is_likely: bool,
    /// What to check with one's own hands.
    pub check: String,
}

/// Why birds grow unevenly.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct UnevenJson {
    /// The day of the weighing, YYYY-MM-DD.
    pub weighed_on: String,
    /// not-enough-weighed, even, within-spots or between-spots.
    pub evenness: &'static str,
    /// Spread between the spots.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub between: Option<PartJson>,
    /// Spread within the spots.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub within: Option<PartJson>,
    /// The causes that the book speaks of, the strongest first.
    pub causes: Vec<CauseJson>,
}

/// The stable name of how even a flock is.
pub(crate) fn evenness_name(evenness: Evenness) -> &'static str {
    match evenness {
        Evenness::NotEnoughWeighed => "not-enough-weighed",
        Evenness::Even => "even",
        Evenness::WithinSpots => "within-spots",
        Evenness::BetweenSpots => "between-spots",
    }
}

/// Why birds grow unevenly, as JSON.
pub fn view(uneven: &Uneven, viewer: &Viewer) -> UnevenJson {
    let parts = uneven.parts.as_ref();
    let part = |(share, (low, high)): (f64, (f64, f64))| PartJson {
        percent: 100.0 * share,
        low: 100.0 * low,
        high: 100.0 * high,
    };
    let cause = |one: &Ranked| CauseJson {
        name: one.cause.name(),
        strength: one.strength,
        is_likely: uneven.named.contains(one),
        check: viewer.words().plain(&format!("uneven-check-{}", one.cause.name())),
    };
    UnevenJson {
        weighed_on: uneven.weighed_on.to_string(),
        evenness: evenness_name(uneven.evenness),
        between: parts.and_then(|parts| parts.between_variation()).map(part),
        within: parts.and_then(|parts| parts.within_variation()).map(part),
        causes: uneven.ranked.iter().map(cause).collect(),
    }
}
