//! What stands behind a figure: the kinds of entries whose numbers went into it.

use std::collections::BTreeSet;

use crate::families::{self, growing};
use crate::series::{SeriesSpec, Way};

/// The kinds of entries that a figure, or a figure by day, is read from, whatever rule gives it; empty for a name that is
/// neither.
pub fn kinds(id: &str) -> BTreeSet<&'static str> {
    let mut search = Search::default();
    search.name(id);
    search.keys.iter().flat_map(|key| of_key(key)).copied().collect()
}

/// The kinds that a field is read from. All that was planned stands in the adopted plan.
fn of_key(key: &str) -> &'static [&'static str] {
    match key {
        growing::TODAY => &[],
        growing::PLACED => &["chicks-placed"],
        growing::LOST => &["deaths"],
        growing::LEFT => &["sale", "birds-out"],
        growing::FEED => &["feed-given"],
        growing::WATER => &["water"],
        growing::COLDEST | growing::WARMEST => &["house-air"],
        growing::WEIGHT | growing::WEIGHT_LOW | growing::WEIGHT_HIGH => &["weighing"],
        _ => &["plan-adopted"],
    }
}

/// Walks from a figure to the fields it rests on.
#[derive(Default)]
struct Search {
    seen: BTreeSet<&'static str>,
    keys: BTreeSet<&'static str>,
}

impl Search {
    /// A figure, a figure by day or a field.
    fn name(&mut self, name: &str) {
        if let Some(spec) = families::figure(name) {
            if self.seen.insert(spec.id) {
                let inputs = spec.rules.iter().flat_map(|rule| rule.inputs);
                inputs.flat_map(|input| input.origin.names().all()).for_each(|name| self.name(name));
            }
        } else if let Some(spec) = families::series_named(name) {
            self.series(spec);
        } else if let Some(field) = families::field(name) {
            self.keys.insert(field.key);
        }
    }

    fn series(&mut self, spec: &'static SeriesSpec) {
        if !self.seen.insert(spec.id) {
            return;
        }
        match &spec.way {
            Way::Rules(rules) => {
                let inputs = rules.iter().flat_map(|rule| rule.inputs);
                inputs.flat_map(|input| input.origin.names().all()).for_each(|name| self.name(name));
            }
            // A procedure draws from the plan alone.
            Way::Procedure { .. } => {
                self.keys.insert("batch.chicks");
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn birds_alive_rest_on_those_that_came_and_went() {
        let expected = BTreeSet::from(["chicks-placed", "deaths", "sale", "birds-out"]);
        assert_eq!(kinds("growing.alive"), expected);
        assert_eq!(kinds("growing.alive_by_day"), expected);
        assert_eq!(kinds("walk.light_hours"), BTreeSet::from(["plan-adopted"]));
        assert_eq!(kinds("growing.moon"), BTreeSet::new());
    }
}
