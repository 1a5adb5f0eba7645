//! Figures of a running batch by day, drawn and as tables whose rows lead to what was written about their day.

use quantity::{DayOfAge, Series as Days};

use super::Page;
use crate::document::{Align, Block, Drawing, Table};
use crate::scene::chart::{Chart, ChartWords, Spans, Stroke};
use crate::{by_day, show, working};

/// A drawing of some figures by day; those that are not known are left out.
pub(super) struct Lines {
    /// Its name, and the message of its caption behind `drawing-`.
    pub(super) name: &'static str,
    /// The figures by day; the first was written, and names the upright axis.
    pub(super) lines: &'static [(&'static str, Stroke)],
    /// Whether the upright axis begins at zero.
    pub(super) from_zero: bool,
}

/// A table of figures by day.
pub(super) struct Columns {
    /// The message of its caption.
    pub(super) caption: &'static str,
    /// The figures by day.
    pub(super) columns: &'static [&'static str],
    /// Whether every day since the chicks came has a row, or only days on which the first figure is known.
    pub(super) every_day: bool,
}

impl Page<'_> {
    /// A drawing; `None` while nothing of its first figure was written.
    pub(super) fn draw(&self, drawn: &Lines) -> Option<Block> {
        let known = |(id, stroke): &(&'static str, Stroke)| Some((self.walk.plan.series(id)?, *stroke));
        let found: Vec<(&Days, Stroke)> = drawn.lines.iter().filter_map(known).collect();
        let (first, _) = *found.first().filter(|(series, _)| series.id == drawn.lines[0].0)?;
        let spec = advice::families::series_named(first.id)?;
        let said = found
            .iter()
            .filter_map(|(series, _)| by_day::in_words(series, spec.unit, spec.decimals, self.viewer));
        let alternative = said.collect::<Vec<String>>().join(" ");
        let line = |(series, stroke): &(&Days, Stroke)| by_day::line(series, *stroke, self.viewer);
        let chart = Chart {
            series: found.iter().map(line).collect(),
            from_zero: drawn.from_zero,
            ..Chart::default()
        };
        let words = ChartWords {
            up: by_day::axis(&working::label(first.id, self.viewer), spec.unit, self.viewer),
            across: self.words.plain("drawing-days"),
            alternative: alternative.clone(),
        };
        let spans = by_day::ends(first)
            .map(|points| Spans { label: self.words.plain("drawing-likely-range"), points });
        Some(Block::Drawing(Drawing {
            name: drawn.name,
            svg: chart.draw_with(&words, spans.as_ref()),
            caption: self.words.plain(&format!("drawing-{}-caption", drawn.name)),
            alternative,
            // The numbers stand in the table below, whose rows lead to their days.
            data: empty(),
            width_percent: 70,
        }))
    }

    /// A table by day, folded away; `None` where it has no rows.
    pub(super) fn days_table(&self, drawn: &Columns) -> Option<Block> {
        let placement = self.walk.diary.placement?;
        let today = self.walk.diary.age_today()?;
        let on = |id: &str, day: i32| self.walk.plan.outcome.on_day(id, day);
        let is_known = |id: &&&str| (0..=today).any(|day| on(id, day).is_some());
        let known: Vec<&str> = drawn.columns.iter().filter(is_known).copied().collect();
        let first = *known.first()?;
        let days: Vec<i32> = (0..=today).filter(|day| drawn.every_day || on(first, *day).is_some()).collect();
        let date = |day: i32| DayOfAge(day).date(placement);
        let row = |day: &i32| {
            let cells = known.iter().map(|id| self.cell(id, *day, drawn.every_day));
            let head = [day.to_string(), show::day_short(date(*day), self.viewer)];
            head.into_iter().chain(cells).collect()
        };
        let table = Table {
            caption: self.words.plain(drawn.caption),
            columns: self.titles(&known),
            rows: days.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: drawn.columns.to_vec(),
        };
        let days = days.iter().map(|day| Some(date(*day))).collect();
        let title = self.words.plain(drawn.caption);
        Some(Block::Fold { title, blocks: vec![Block::DayTable { table, days }] })
    }

    fn titles(&self, ids: &[&str]) -> Vec<(String, Align)> {
        let title = |id: &&str| {
            let unit = advice::families::series_named(id).map(|spec| spec.unit);
            let label = working::label(id, self.viewer);
            let title = unit.map(|unit| by_day::axis(&label, unit, self.viewer));
            (title.unwrap_or(label), Align::End)
        };
        let day = (self.words.plain("column-day"), Align::End);
        let date = (self.words.plain("column-date"), Align::Start);
        [day, date].into_iter().chain(ids.iter().map(title)).collect()
    }

    /// What was not written on a day that has a row of its own is said to be missing: an empty box looks like nothing.
    fn cell(&self, id: &str, day: i32, says_missing: bool) -> String {
        let spec = advice::families::series_named(id);
        let value = self.walk.plan.outcome.on_day(id, day).zip(spec);
        match value {
            Some((value, spec)) => show::bare(value, spec.unit, spec.decimals, self.viewer),
            None if says_missing && id.starts_with("growing.") => self.words.plain("cell-not-written"),
            None => String::new(),
        }
    }
}

/// A table of nothing, for a drawing whose numbers stand elsewhere.
pub(crate) fn empty() -> Table {
    Table {
        caption: String::new(),
        columns: Vec::new(),
        rows: Vec::new(),
        emphasis: Vec::new(),
        explained_by: Vec::new(),
    }
}
