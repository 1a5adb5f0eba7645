//! How much water the days to come take, and whether the tank holds it.

use advice::families::outlook::WATER;
use quantity::{Series as Days, Unit};

use super::super::Page;
use super::super::lines::empty;
use crate::document::{Block, Drawing};
use crate::scene::chart::{Band, Chart, ChartWords, Limit, Stroke};
use crate::{by_day, say, show};

impl Page<'_> {
    /// Empty where the plan does not say how much water goes with feed.
    pub(super) fn water_ahead(&self) -> Vec<Block> {
        let Some(ahead) = self.walk.plan.series(WATER) else { return Vec::new() };
        let said = [self.litres(ahead), self.tank(ahead)];
        let text = said.into_iter().flatten().collect::<Vec<String>>().join(" ");
        let table = self.days_ahead(ahead, Unit::Litre, "table-ahead-water");
        [Some(Block::Paragraph(text)), self.draw_water(ahead), table].into_iter().flatten().collect()
    }

    fn litres(&self, ahead: &Days) -> Option<String> {
        let litres = |value: Option<&f64>| Some(show::quantity(*value?, Unit::Litre, 0, self.viewer));
        let (low, high) = (litres(ahead.low.first())?, litres(ahead.high.first())?);
        Some(say!(
            self.words,
            "ahead-water",
            tomorrow = litres(ahead.values.first())?,
            tomorrow_range = say!(self.words, "ahead-likely", low = low, high = high),
            most = self.value("outlook.water_peak")?,
            most_range = self.likely("outlook.water_peak"),
        ))
    }

    /// What the tank holds of it, where the plan tells how large it is.
    fn tank(&self, ahead: &Days) -> Option<String> {
        let tank = self.walk.diary.answers.number("water.storage_l")?;
        let holds = say!(
            self.words,
            "ahead-water-tank",
            tank = show::quantity(tank, Unit::Litre, 0, self.viewer),
            days = self.value("outlook.tank_days")?,
        );
        let sale = self.number("sale.first_age")?;
        let until_sale = ahead.index.iter().zip(&ahead.high).filter(|(day, _)| **day <= sale);
        let is_tight = until_sale.into_iter().any(|(_, high)| *high > tank);
        let short = self.number("outlook.tank_short_day").filter(|day| *day <= sale);
        let more = match short {
            Some(day) => Some(say!(
                self.words,
                "ahead-water-tank-short",
                day = self.dated(day),
                between = self.between_days("outlook.tank_short_day").unwrap_or_default(),
            )),
            None => is_tight.then(|| self.words.plain("ahead-water-tank-tight")),
        };
        Some([Some(holds), more].into_iter().flatten().collect::<Vec<String>>().join(" "))
    }

    fn draw_water(&self, ahead: &Days) -> Option<Block> {
        let written = self.walk.plan.series("growing.water_by_day");
        let lines = [(written, Stroke::Dots), (Some(ahead), Stroke::Dashed)];
        let found: Vec<(&Days, Stroke)> =
            lines.into_iter().filter_map(|(series, stroke)| Some((series?, stroke))).collect();
        let tank = self.walk.diary.answers.number("water.storage_l");
        let chart = Chart {
            series: found.iter().map(|(series, stroke)| by_day::line(series, *stroke, self.viewer)).collect(),
            band: Some(Band {
                label: self.words.plain("drawing-water-likely"),
                points: by_day::ends(ahead)?,
            }),
            limit: tank.map(|value| Limit { label: self.words.plain("drawing-tank"), value }),
            from_zero: true,
            ..Chart::default()
        };
        let said =
            found.iter().filter_map(|(series, _)| by_day::in_words(series, Unit::Litre, 0, self.viewer));
        let alternative = said.collect::<Vec<String>>().join(" ");
        let words = ChartWords {
            up: by_day::axis(&self.words.plain("drawing-water-up"), Unit::Litre, self.viewer),
            across: self.words.plain("drawing-days"),
            alternative: alternative.clone(),
        };
        Some(Block::Drawing(Drawing {
            name: "ahead-water",
            svg: chart.draw_with(&words, None),
            caption: self.words.plain("drawing-ahead-water-caption"),
            alternative,
            // The numbers stand in the table below.
            data: empty(),
            width_percent: 70,
        }))
    }
}
