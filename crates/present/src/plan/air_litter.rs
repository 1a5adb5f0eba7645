//! How damp the litter gets, day by day.

use advice::air::{DUSTY_LITTER as DUSTY, PlannedAir, WET_LITTER as WET};
use quantity::Unit;

use super::Shown;
use crate::document::{Align, Block, Caution, Drawing, Level, Table};
use crate::scene::chart::{Band, Chart, ChartWords, Limit, Series, Stroke};
use crate::{say, show};

/// The figures of the section.
const ROWS: &[&str] = &["air.litter_at_sale", "air.litter_wet_from"];
/// Dampness wanted of used litter, percent: J. Bray, litter seminar report (published).
const WANTED: (f64, f64) = (20.0, 25.0);

impl Shown<'_> {
    /// Moisture of the litter by day, drawn and in numbers, with the day from which it cakes; nothing without days.
    pub(super) fn air_litter(&self, air: &PlannedAir) -> Vec<Block> {
        let days = air.litter_by_day();
        let (Some(first), Some(last)) = (days.first().copied(), days.last().copied()) else {
            return Vec::new();
        };
        let percent = |share: f64| show::quantity(100.0 * share, Unit::Percent, 0, self.viewer);
        let day_of = |day: i32| say!(self.words, "day-of-age", day = show::number(f64::from(day), 0));
        let mut blocks =
            vec![Block::Heading { level: 2, text: self.words.plain("air-litter"), anchor: "air-litter" }];
        let wet_from = air.litter_at_least(WET);
        blocks.push(Block::Lead {
            label: self.words.plain("air-litter-lead"),
            value: percent(last.1),
            note: match wet_from {
                Some(day) => say!(self.words, "air-litter-wet", day = day_of(day), wet = percent(WET)),
                None => say!(self.words, "air-litter-dry", wet = percent(WET)),
            },
        });
        if wet_from.is_some() {
            let items = (1..=4).map(|item| self.words.plain(&format!("air-litter-caution-{item}")));
            let title = self.words.plain("air-litter-caution");
            blocks.push(Block::Caution(Caution { level: Level::Care, title, items: items.collect() }));
        }
        let chart = Chart {
            series: vec![Series {
                label: self.words.plain("air-litter-line"),
                stroke: Stroke::Solid,
                stepped: false,
                points: days.iter().map(|(day, share)| [f64::from(*day), 100.0 * share]).collect(),
            }],
            band: Some(Band {
                label: self.words.plain("air-litter-wanted"),
                points: [first.0, last.0].map(|day| [f64::from(day), WANTED.0, WANTED.1]).into(),
            }),
            limit: Some(Limit { label: self.words.plain("air-litter-cakes"), value: 100.0 * WET }),
            from_zero: true,
            ..Chart::default()
        };
        let alternative = say!(
            self.words,
            "air-litter-drawn",
            first = percent(first.1),
            last = percent(last.1),
            day = day_of(last.0)
        );
        let words = ChartWords {
            up: crate::by_day::axis(&self.words.plain("air-litter-axis"), Unit::Percent, self.viewer),
            across: self.words.plain("symbol-day-of-age"),
            alternative: alternative.clone(),
        };
        blocks.push(Block::Drawing(Drawing {
            name: "air-litter",
            svg: chart.draw(&words),
            caption: self.words.plain("air-litter-caption"),
            alternative,
            data: self.litter_table(&days),
            width_percent: 70,
        }));
        blocks.extend(self.rows(ROWS));
        blocks.push(Block::Note(self.words.plain("air-litter-how")));
        blocks
    }

    /// Each week, and the last day.
    fn litter_table(&self, days: &[(i32, f64)]) -> Table {
        let last = days.len().saturating_sub(1);
        let weekly = days.iter().enumerate().filter(|(at, (day, _))| day % 7 == 0 || *at == last);
        let row = |(_, (day, share)): (usize, &(i32, f64))| {
            let how = match *share {
                share if share >= WET => "air-litter-is-wet",
                share if share < DUSTY => "air-litter-is-dusty",
                _ => "air-litter-is-good",
            };
            vec![
                show::number(f64::from(*day), 0),
                show::bare(100.0 * share, Unit::Percent, 0, self.viewer),
                self.words.plain(how),
            ]
        };
        Table {
            caption: self.words.plain("air-litter-table"),
            columns: vec![
                (self.words.plain("symbol-day-of-age"), Align::End),
                (self.unit_title("air-litter-column", Unit::Percent), Align::End),
                (self.words.plain("air-litter-column-how"), Align::Start),
            ],
            rows: weekly.map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }
}
