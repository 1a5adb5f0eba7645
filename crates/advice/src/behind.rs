//! What stands behind a figure: the kinds of entries whose numbers went into it.

use std::collections::BTreeSet;

use crate::families::{self, growing};
use crate::rule::Origin;
use crate::series::{DayOrigin, First, SeriesSpec, Way};

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
                spec.rules.iter().flat_map(|rule| rule.inputs).for_each(|input| self.origin(input.origin));
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
                rules.iter().flat_map(|rule| rule.inputs).for_each(|input| self.day_origin(input.origin));
            }
            // A procedure draws from the plan alone.
            Way::Procedure { .. } => {
                self.keys.insert("batch.chicks");
            }
        }
    }

    fn origin(&mut self, origin: Origin) {
        match origin {
            Origin::Field(name)
            | Origin::List(name)
            | Origin::Chosen(name, _)
            | Origin::Figure(name)
            | Origin::IfKnown(name)
            | Origin::IfTold(name)
            | Origin::EndOf(name, _)
            | Origin::OfDays(_, name)
            | Origin::OfKnownDays(_, name)
            | Origin::TableAt { at: name, .. }
            | Origin::TableBy { field: name, .. } => self.name(name),
            Origin::IfChosen { field, figure, .. } => [field, figure].iter().for_each(|name| self.name(name)),
            Origin::OnDay { series, day } => [series, day].iter().for_each(|name| self.name(name)),
            Origin::SumOfDays { series, after, until } => {
                [Some(series), after, Some(until)].iter().flatten().for_each(|name| self.name(name));
            }
            Origin::FirstDayOver { series, limit } => {
                [Some(series), limit].iter().flatten().for_each(|name| self.name(name));
            }
            Origin::Listed { needs, .. } => needs.iter().for_each(|name| self.name(name)),
            Origin::Table { .. } => {}
        }
    }

    fn day_origin(&mut self, origin: DayOrigin) {
        match origin {
            DayOrigin::Fixed(origin) => self.origin(origin),
            DayOrigin::Same(name)
            | DayOrigin::SameIfAny(name)
            | DayOrigin::Recorded(name)
            | DayOrigin::RecordedIfAny(name)
            | DayOrigin::Scheduled(name)
            | DayOrigin::Holding(name) => self.name(name),
            DayOrigin::Before { series, first } => {
                self.name(series);
                if let First::Field(key) = first {
                    self.name(key);
                }
            }
            DayOrigin::Listed { needs, .. } => needs.iter().for_each(|name| self.name(name)),
            DayOrigin::Age | DayOrigin::Table { .. } => {}
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
