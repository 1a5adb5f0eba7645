//! What is likely from here: the fan of growth with the truth laid over it, the day they are heavy enough, and how long the
//! feed lasts.

mod birds;
mod water;

use advice::families::outlook::MEAN_WEIGHT;
use quantity::{DayOfAge, Series as Days, Unit};

use super::Page;
use crate::document::{Align, Block, Caution, Drawing, Level, Table};
use crate::scene::chart::{Band, Chart, ChartWords, Stroke};
use crate::{by_day, say, show, working};

/// Of so little of its weight a weighing is spoken of.
const DOUBTED_PERCENT: f64 = 50.0;

impl Page<'_> {
    /// Empty where nothing can be said ahead: before the chicks come, after the end, without an adopted plan.
    pub(super) fn ahead(&self) -> Vec<Block> {
        let Some(ahead) = self.walk.plan.series(MEAN_WEIGHT) else { return Vec::new() };
        let mut blocks = vec![self.heading("growing-ahead")];
        blocks.push(self.day_of_target().unwrap_or_else(|| self.note("ahead-no-day")));
        blocks.extend(self.doubted());
        blocks.extend(self.unweighed(ahead));
        blocks.extend(self.taught());
        blocks.push(self.fan(ahead));
        blocks.extend(self.at_sale());
        blocks.extend(self.birds_apart(ahead));
        blocks.extend(self.feed_ahead());
        blocks.extend(self.water_ahead());
        blocks.extend(self.weights_ahead(ahead));
        blocks.extend(self.rows(&[
            "outlook.day_of_target",
            "outlook.weight_at_sale",
            "outlook.birds_at_sale",
            "outlook.feed_to_sale",
            "outlook.feed_left_day",
            "outlook.starter_left_day",
            "outlook.grower_left_day",
            "outlook.finisher_left_day",
            "outlook.last_left_day",
            "outlook.birds_cv",
            "outlook.light_at_sale",
            "outlook.heavy_at_sale",
            "outlook.light_at_target",
            "outlook.heavy_at_target",
            "outlook.birds_taken",
            "outlook.water_peak",
            "outlook.tank_days",
            "outlook.tank_short_day",
        ]));
        blocks
    }

    /// A day of age with its date.
    fn dated(&self, day: f64) -> String {
        let date = self.walk.diary.placement.map(|placement| DayOfAge(day as i32).date(placement));
        let date = date.map_or_else(String::new, |date| show::day_short(date, self.viewer));
        say!(self.words, "ahead-day", day = show::short(day, 0), date = date)
    }

    /// The ends of a likely range of days; the last day looked at stands for all later ones.
    pub(crate) fn between_days(&self, id: &str) -> Option<String> {
        let band = self.walk.plan.outcome.get(id)?.figure.band?;
        let last = self.walk.plan.series(MEAN_WEIGHT)?.index.last().copied()?;
        let key = if band.high > last { "ahead-between-or-later" } else { "ahead-between" };
        let high = self.dated(band.high.min(last));
        Some(say!(self.words, key, low = self.dated(band.low), high = high))
    }

    fn day_of_target(&self) -> Option<Block> {
        let wanted = self.value("space.weight_at_sale")?;
        Some(Block::Lead {
            label: say!(self.words, "ahead-lead-label", weight = wanted),
            value: self.dated(self.number("outlook.day_of_target")?),
            note: self.between_days("outlook.day_of_target").unwrap_or_default(),
        })
    }

    /// The last weighing, where it counts for little.
    fn doubted(&self) -> Option<Block> {
        let day = self.number("growing.last_weighed")?;
        let on = |id| self.walk.plan.outcome.on_day(id, day as i32);
        on("outlook.believed_by_day").filter(|percent| *percent < DOUBTED_PERCENT)?;
        let surprise = on("outlook.surprise_by_day")?;
        let key = if surprise > 0.0 { "ahead-doubted-heavy" } else { "ahead-doubted-light" };
        let said = self.walk.plan.series("outlook.said_by_day")?;
        let at = said.index.iter().position(|index| *index == day)?;
        let grams = |value: f64| show::quantity(value, Unit::Gram, 0, self.viewer);
        let (low, high) = (grams(*said.low.get(at)?), grams(*said.high.get(at)?));
        Some(Block::Caution(Caution {
            level: Level::Care,
            title: say!(self.words, key, day = show::short(day, 0), low = low, high = high),
            items: vec![self.words.plain("ahead-doubted-why"), self.words.plain("ahead-doubted-next")],
        }))
    }

    /// Without a weighing the range is that of houses.
    fn unweighed(&self, ahead: &Days) -> Option<Block> {
        if self.number("growing.last_weighed").is_some_and(|day| day > 0.0) {
            return None;
        }
        let (middle, low, high) = (ahead.values.last()?, ahead.low.last()?, ahead.high.last()?);
        let either_way = 100.0 * (high - low) / 2.0 / middle;
        let percent = show::quantity(either_way, Unit::Percent, 0, self.viewer);
        Some(Block::Note(say!(self.words, "ahead-unweighed", percent = percent)))
    }

    fn taught(&self) -> Option<Block> {
        let batches = self.walk.diary.answers.number("ahead.taught_by")?;
        let shown = show::short(batches, 0);
        Some(Block::Note(say!(self.words, "ahead-taught", count = batches, batches = shown)))
    }

    /// What was foretold of each day so far and of each day to come, with the weighings over it.
    fn fan(&self, ahead: &Days) -> Block {
        let plan = &self.walk.plan;
        let mut points = plan.series("outlook.said_by_day").and_then(by_day::ends).unwrap_or_default();
        points.extend(by_day::ends(ahead).unwrap_or_default());
        let lines = [
            ("growing.weight_by_day", Stroke::Dots),
            (MEAN_WEIGHT, Stroke::Dashed),
            ("expected.weight_by_day", Stroke::Solid),
        ];
        let known = |(id, stroke): &(&'static str, Stroke)| Some((plan.series(id)?, *stroke));
        let found: Vec<(&Days, Stroke)> = lines.iter().filter_map(known).collect();
        let line = |(series, stroke): &(&Days, Stroke)| by_day::line(series, *stroke, self.viewer);
        let chart = Chart {
            series: found.iter().map(line).collect(),
            band: Some(Band { label: self.words.plain("drawing-foretold"), points }),
            from_zero: true,
            ..Chart::default()
        };
        let said =
            found.iter().filter_map(|(series, _)| by_day::in_words(series, Unit::Gram, 0, self.viewer));
        let alternative = said.collect::<Vec<String>>().join(" ");
        let words = ChartWords {
            up: by_day::axis(&working::label(ahead.id, self.viewer), Unit::Gram, self.viewer),
            across: self.words.plain("drawing-days"),
            alternative: alternative.clone(),
        };
        Block::Drawing(Drawing {
            name: "ahead-weight",
            svg: chart.draw_with(&words, None),
            caption: self.words.plain("drawing-ahead-weight-caption"),
            alternative,
            // The numbers stand in the table below.
            data: super::lines::empty(),
            width_percent: 70,
        })
    }

    /// The likely range of a figure, short enough to stand in brackets within a sentence; empty where it has none.
    fn likely(&self, id: &str) -> String {
        let range = || {
            let worked = self.walk.plan.outcome.get(id)?;
            let band = worked.figure.band?;
            let (unit, decimals) = (worked.spec.unit, worked.spec.decimals);
            let low = show::bare(band.low, unit, decimals, self.viewer);
            let high = show::quantity(band.high, unit, decimals, self.viewer);
            Some(say!(self.words, "ahead-likely", low = low, high = high))
        };
        range().unwrap_or_default()
    }

    fn with_range(&self, id: &str) -> Option<String> {
        let (value, range) = (self.value(id)?, self.range(id));
        Some(if range.is_empty() { value } else { format!("{value} ({range})") })
    }

    fn at_sale(&self) -> Option<Block> {
        let text = say!(
            self.words,
            "ahead-at-sale",
            day = self.dated(self.number("sale.first_age")?),
            birds = self.with_range("outlook.birds_at_sale")?,
            weight = self.with_range("outlook.weight_at_sale")?,
            feed = self.with_range("outlook.feed_to_sale")?,
        );
        Some(Block::Paragraph(text))
    }

    /// How long the feed on hand lasts; `None` while no delivery is written.
    fn feed_ahead(&self) -> Option<Block> {
        let left = self.number("store.feed_left")?;
        let text = match self.number("outlook.feed_left_day") {
            _ if left < 0.0 => self.words.plain("ahead-feed-never-came"),
            Some(day) => say!(
                self.words,
                "ahead-feed-lasts",
                day = self.dated(day),
                between = self.between_days("outlook.feed_left_day").unwrap_or_default(),
            ),
            None => self.words.plain("ahead-feed-is-enough"),
        };
        Some(Block::Paragraph(text))
    }

    fn weights_ahead(&self, ahead: &Days) -> Option<Block> {
        self.days_ahead(ahead, Unit::Gram, "table-ahead")
    }

    /// A figure on each day to come with its range, folded away.
    fn days_ahead(&self, ahead: &Days, unit: Unit, title: &str) -> Option<Block> {
        let placement = self.walk.diary.placement?;
        let bare = |value: f64| show::bare(value, unit, 0, self.viewer);
        let rows = (0..ahead.index.len()).filter_map(|at| {
            let day = ahead.index[at];
            let date = show::day_short(DayOfAge(day as i32).date(placement), self.viewer);
            let cells = [*ahead.low.get(at)?, *ahead.values.get(at)?, *ahead.high.get(at)?].map(bare);
            Some([show::short(day, 0), date].into_iter().chain(cells).collect())
        });
        let end = |key: &str| (self.unit_title(key, unit), Align::End);
        let title = self.words.plain(title);
        let table = Table {
            caption: title.clone(),
            columns: vec![
                (self.words.plain("column-day"), Align::End),
                (self.words.plain("column-date"), Align::Start),
                end("column-low"),
                end("column-middle"),
                end("column-high"),
            ],
            rows: rows.collect(),
            emphasis: Vec::new(),
            explained_by: vec![ahead.id],
        };
        Some(Block::Fold { title, blocks: vec![Block::Table(table)] })
    }
}
