//! Figures by day as drawings need them: points, ends of ranges, the title of an axis, and the same in a sentence.

use quantity::{Series, Unit};

use crate::scene::chart::{Series as Line, Stroke};
use crate::viewer::Viewer;
use crate::{say, show, working};

/// Day and value.
pub(crate) fn points(series: &Series) -> Vec<[f64; 2]> {
    series.index.iter().zip(&series.values).map(|(day, value)| [*day, *value]).collect()
}

/// A line of a chart, named as the figure is.
pub(crate) fn line(series: &Series, stroke: Stroke, viewer: &Viewer) -> Line {
    Line { label: working::label(series.id, viewer), stroke, stepped: false, points: points(series) }
}

/// Day, lower and upper end; `None` for a figure without a range.
pub(crate) fn ends(series: &Series) -> Option<Vec<[f64; 3]>> {
    let ends = series.low.iter().zip(&series.high);
    let points: Vec<[f64; 3]> =
        series.index.iter().zip(ends).map(|(day, (low, high))| [*day, *low, *high]).collect();
    (!points.is_empty()).then_some(points)
}

/// The title of an upright axis, with its unit where it has one.
pub(crate) fn axis(label: &str, unit: Unit, viewer: &Viewer) -> String {
    let unit = match unit {
        Unit::Money => viewer.currency.clone().unwrap_or_default(),
        unit => show::viewers_unit_label(unit, viewer),
    };
    if unit.is_empty() {
        label.to_owned()
    } else {
        say!(viewer.words(), "drawing-axis", what = label, unit = unit)
    }
}

/// First, greatest or least, and last of a figure by day, in a sentence; `None` for one without days.
pub(crate) fn in_words(series: &Series, unit: Unit, decimals: u8, viewer: &Viewer) -> Option<String> {
    let value = |at: usize| show::quantity(series.values[at], unit, decimals, viewer);
    let at = |day: usize| show::short(series.index[day], 0);
    let last = series.values.len().checked_sub(1)?;
    let order = |one: &usize, other: &usize| series.values[*one].total_cmp(&series.values[*other]);
    let most = (0..=last).max_by(order)?;
    let least = (0..=last).min_by(order)?;
    Some(say!(
        viewer.words(),
        "drawing-by-day",
        what = working::label(series.id, viewer),
        first_day = at(0),
        first = value(0),
        last_day = at(last),
        last = value(last),
        most_day = at(most),
        most = value(most),
        least_day = at(least),
        least = value(least),
    ))
}
