//! The air of a plan through the usual weather of its months, week by week.

use advice::air::{AirHour, Band, PlannedAir};
use quantity::Unit;

use super::Shown;
use crate::document::{Align, Block, Table};
use crate::{say, show};

/// The figures of the section.
const ROWS: &[&str] =
    &["air.usual_fuel", "air.usual_heat", "air.usual_hot_hours", "air.usual_dangerous_hours"];

impl Shown<'_> {
    /// The usual weather, where a plan tells its months; nothing else.
    pub(super) fn air_usual(&self) -> Vec<Block> {
        let Some(air) = self.plan.outcome.drawn().usual_air() else { return Vec::new() };
        let text = self.words.plain("air-usual");
        let mut blocks = vec![Block::Heading { level: 2, text, anchor: "air-usual" }];
        let (label, usual, coldest) = match self.value("air.usual_fuel") {
            Some(fuel) => ("air-usual-label", Some(fuel), self.value("brooding.fuel_total")),
            None => {
                ("air-usual-label-heat", self.value("air.usual_heat"), self.value("brooding.heat_over_days"))
            }
        };
        blocks.extend(usual.map(|value| {
            Block::Lead {
                label: self.words.plain(label),
                value,
                note: coldest.map_or_else(String::new, |coldest| {
                    say!(self.words, "air-usual-note", coldest = coldest)
                }),
            }
        }));
        blocks.push(Block::Table(self.weeks(air)));
        blocks.extend(self.rows(ROWS));
        blocks
    }

    fn weeks(&self, air: &PlannedAir) -> Table {
        let weeks: Vec<&[AirHour]> = air
            .hours
            .chunk_by(|one, other| one.house.day.div_euclid(7) == other.house.day.div_euclid(7))
            .collect();
        let bare = |value: f64, unit: Unit| show::bare(value, unit, 0, self.viewer);
        let burns = air.fuel_kg(1.0).is_some();
        let row = |(at, hours): (usize, &&[AirHour])| {
            let ends = hours.iter().map(|hour| hour.outside.outside_c);
            let (low, high) =
                ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), c| (low.min(c), high.max(c)));
            let kwh: f64 =
                hours.iter().filter(|hour| hour.is_brooding).map(|hour| hour.house.heater_kw).sum();
            let at_least = |heat: Band| hours.iter().filter(|hour| hour.heat >= heat).count() as f64;
            vec![
                (at + 1).to_string(),
                say!(
                    self.words,
                    "air-day-from-to",
                    low = bare(low, Unit::Celsius),
                    high = bare(high, Unit::Celsius)
                ),
                match air.fuel_kg(kwh) {
                    Some(kg) => bare(kg, Unit::Kilogram),
                    None => bare(kwh, Unit::KilowattHour),
                },
                bare(at_least(Band::Alert), Unit::Hour),
                bare(at_least(Band::Danger), Unit::Hour),
            ]
        };
        let burnt = match burns {
            true => self.unit_title("air-usual-column-fuel", Unit::Kilogram),
            false => self.unit_title("air-usual-column-heat", Unit::KilowattHour),
        };
        Table {
            caption: self.words.plain("air-usual-caption"),
            columns: vec![
                (self.words.plain("air-usual-column-week"), Align::Start),
                (self.unit_title("air-usual-column-outside", Unit::Celsius), Align::End),
                (burnt, Align::End),
                (self.unit_title("air-usual-column-hot", Unit::Hour), Align::End),
                (self.unit_title("air-usual-column-danger", Unit::Hour), Align::End),
            ],
            rows: weeks.iter().enumerate().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }
}
