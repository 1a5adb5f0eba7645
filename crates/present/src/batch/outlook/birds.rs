//! How far the birds differ: between which weights nine in ten lie, and how many a buyer takes.

use advice::families::outlook::{HEAVY, LIGHT};
use quantity::{Series as Days, Unit};

use super::super::Page;
use super::super::lines::empty;
use crate::document::{Block, Drawing};
use crate::scene::chart::{Band, Chart, ChartWords, Series, Stroke};
use crate::{by_day, say, show};

/// What a buyer takes, by the plan, kg.
struct Taken {
    least: Option<f64>,
    most: Option<f64>,
}

impl Page<'_> {
    /// Empty where there is no first day of sale ahead.
    pub(super) fn birds_apart(&self, ahead: &Days) -> Vec<Block> {
        let said = [self.nine_in_ten(), self.when_heavy_enough(), self.how_far_they_differ()];
        let text = said.into_iter().flatten().collect::<Vec<String>>().join(" ");
        if text.is_empty() {
            return Vec::new();
        }
        let taken = self.taken();
        let buyer = self.birds_taken(&taken);
        [Some(Block::Paragraph(text)), Some(buyer), self.draw_birds(ahead, &taken)]
            .into_iter()
            .flatten()
            .collect()
    }

    fn taken(&self) -> Taken {
        let number = |key| self.walk.diary.answers.number(key);
        Taken { least: number("sale.bird_least_kg"), most: number("sale.bird_most_kg") }
    }

    fn nine_in_ten(&self) -> Option<String> {
        Some(say!(
            self.words,
            "ahead-birds",
            day = self.dated(self.number("sale.first_age")?),
            light = self.value("outlook.light_at_sale")?,
            heavy = self.value("outlook.heavy_at_sale")?,
            light_range = self.likely("outlook.light_at_sale"),
            heavy_range = self.likely("outlook.heavy_at_sale"),
        ))
    }

    fn when_heavy_enough(&self) -> Option<String> {
        Some(say!(
            self.words,
            "ahead-birds-at-target",
            weight = self.value("space.weight_at_sale")?,
            light = self.value("outlook.light_at_target")?,
            heavy = self.value("outlook.heavy_at_target")?,
        ))
    }

    fn how_far_they_differ(&self) -> Option<String> {
        let (cv, range) = (self.value("outlook.birds_cv")?, self.likely("outlook.birds_cv"));
        Some(match self.walk.diary.answers.number("ahead.cv_seen_d") {
            Some(day) => {
                say!(self.words, "ahead-birds-cv-weighed", cv = cv, range = range, day = show::short(day, 0))
            }
            None => say!(self.words, "ahead-birds-cv-unweighed", cv = cv, range = range),
        })
    }

    fn birds_taken(&self, taken: &Taken) -> Block {
        let Some(share) = self.value("outlook.birds_taken") else {
            return self.note("ahead-birds-taken-none");
        };
        let kilograms = |kilograms: f64| show::quantity(kilograms, Unit::Kilogram, 2, self.viewer);
        let between = match (taken.least.map(kilograms), taken.most.map(kilograms)) {
            (Some(least), Some(most)) => {
                say!(self.words, "buyer-takes-between", least = least, most = most)
            }
            (Some(least), None) => say!(self.words, "buyer-takes-from", least = least),
            (None, most) => say!(self.words, "buyer-takes-to", most = most.unwrap_or_default()),
        };
        Block::Paragraph(say!(
            self.words,
            "ahead-birds-taken",
            share = share,
            range = self.likely("outlook.birds_taken"),
            between = between,
        ))
    }

    /// The birds of each day as a range about the mean, with what the buyer takes across it.
    fn draw_birds(&self, ahead: &Days, taken: &Taken) -> Option<Block> {
        let (light, heavy) = (self.walk.plan.series(LIGHT)?, self.walk.plan.series(HEAVY)?);
        let ends = light.index.iter().zip(light.values.iter().zip(&heavy.values));
        let points = ends.map(|(day, (light, heavy))| [*day, *light, *heavy]).collect();
        let (first, last) = (*ahead.index.first()?, *ahead.index.last()?);
        let across = |key: &str, kilograms: Option<f64>, stroke: Stroke| {
            let grams = 1000.0 * kilograms?;
            let points = vec![[first, grams], [last, grams]];
            Some(Series { label: self.words.plain(key), stroke, stepped: false, points })
        };
        let limits = [
            across("drawing-buyer-least", taken.least, Stroke::Dotted),
            across("drawing-buyer-most", taken.most, Stroke::Solid),
        ];
        let mean = by_day::line(ahead, Stroke::Dashed, self.viewer);
        let chart = Chart {
            series: std::iter::once(mean).chain(limits.into_iter().flatten()).collect(),
            band: Some(Band { label: self.words.plain("drawing-birds-lie"), points }),
            ..Chart::default()
        };
        let said = [light, ahead, heavy].into_iter();
        let said = said.filter_map(|series| by_day::in_words(series, Unit::Gram, 0, self.viewer));
        let alternative = said.collect::<Vec<String>>().join(" ");
        let words = ChartWords {
            up: by_day::axis(&self.words.plain("drawing-birds-up"), Unit::Gram, self.viewer),
            across: self.words.plain("drawing-days"),
            alternative: alternative.clone(),
        };
        Some(Block::Drawing(Drawing {
            name: "ahead-birds",
            svg: chart.draw_with(&words, None),
            caption: self.words.plain("drawing-ahead-birds-caption"),
            alternative,
            data: empty(),
            width_percent: 70,
        }))
    }
}
