//! What happens from day to day: birds, weight, feed, water, warmth, light, room.

use quantity::{DayOfAge, Unit};

use super::{Shown, waiting};
use crate::document::{Align, Block, Table};
use crate::{say, show, working};

/// A column of the table by day: its title, and the figure by day it shows.
const COLUMNS: &[(&str, &str, Unit, u8)] = &[
    ("column-alive", "batch.birds_alive", Unit::One, 0),
    ("column-weight", "growth.weight", Unit::Gram, 0),
    ("column-feed-a-bird", "feed.per_bird_by_day", Unit::Gram, 0),
    ("column-feed-day", "feed.by_day", Unit::Kilogram, 0),
    ("column-water-day", "water.by_day", Unit::Litre, 0),
    ("column-temperature", "brooding.temperature_by_day", Unit::Celsius, 0),
    ("column-light", "light.hours_by_day", Unit::Hour, 0),
    ("column-on-floor", "space.density_by_day", Unit::KilogramPerSquareMetre, 1),
];

/// Figures by day of pieces needed, with the key that says what one serves.
const EQUIPMENT: &[(&str, &str)] = &[
    ("space.chick_feeders_by_day", "equipment.chick_feeder_serves"),
    ("space.chick_drinkers_by_day", "equipment.chick_drinker_serves"),
    ("space.feeders_by_day", "equipment.feeder_serves"),
    ("space.drinkers_by_day", "equipment.drinker_serves"),
];

impl Shown<'_> {
    /// The batch by the week, and every day folded away.
    pub(super) fn days(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-days")];
        let Some(last) = self.plan.outcome.last_day() else {
            blocks.push(self.waiting("waiting-days", &waiting::DAYS));
            return blocks;
        };
        blocks.extend(self.standards_note().map(Block::Note));
        let weeks = (0..=last).filter(|day| day % 7 == 0 || *day == last || *day == 3);
        blocks.extend(self.days_table("days-caption", weeks).map(Block::Table));
        blocks.extend(self.draw_density());
        let every = self.days_table("days-caption-all", 0..=last).map(Block::Table);
        let rows = self.rows(&[
            "sale.first_age",
            "sale.last_age",
            "sale.first_date",
            "sale.last_date",
            "sale.birds",
            "sale.live_kg",
            "sale.mean_age",
            "sale.mean_weight",
            "batch.losses_first_week",
            "batch.loss_shape",
            "growth.curve_at_sale",
            "growth.fast_at_sale",
            "growth.share_of_fast",
            "feed.heat_lost",
            "growth.heat_lost",
        ]);
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
        let drawn = [self.draw_weight(), self.draw_warmth()].into_iter().flatten();
        blocks.push(Block::Apart {
            page: "days",
            title: self.words.plain("all-days"),
            blocks: drawn.chain(every).chain([self.day_workings(last)]).collect(),
        });
        blocks
    }

    /// The workings of every column on the last day, which stand for those of any other.
    fn day_workings(&self, day: i32) -> Block {
        let views = COLUMNS.iter().filter_map(|(_, id, ..)| self.day_working(id, day));
        Block::Fold {
            title: say!(self.words, "day-workings", day = day.to_string()),
            blocks: views.map(Block::Working).collect(),
        }
    }

    /// Content folded away under a title; nothing where there is none.
    pub(super) fn fold(&self, title: &str, blocks: Vec<Block>) -> Option<Block> {
        (!blocks.is_empty()).then(|| Block::Fold { title: self.words.plain(title), blocks })
    }

    /// The plan's weight beside the fast curve's, said before anybody is put to shame by it.
    fn standards_note(&self) -> Option<String> {
        let age = self.plan.answers.number("batch.sale_age_d")?;
        Some(say!(
            self.words,
            "standards-note",
            age = show::quantity(age, Unit::Day, 0, self.viewer),
            weight = self.value("space.weight_at_sale")?,
            fast = self.value("growth.fast_at_sale")?,
        ))
    }

    /// Some days of the batch, one row each, with the columns that are known.
    pub(super) fn days_table(&self, caption: &str, days: impl Iterator<Item = i32>) -> Option<Table> {
        let on = |id: &str, day: i32| self.plan.outcome.on_day(id, day);
        let known: Vec<_> = COLUMNS.iter().filter(|column| on(column.1, 0).is_some()).collect();
        let placement = self.plan.answers.day("batch.placement");
        let row = |day: i32| {
            let cells = known.iter().map(|(_, id, unit, decimals)| {
                on(id, day).map_or_else(String::new, |value| show::bare(value, *unit, *decimals, self.viewer))
            });
            let date = placement.map(|placement| show::day_short(DayOfAge(day).date(placement), self.viewer));
            [day.to_string()].into_iter().chain(date).chain(cells).collect()
        };
        let titles = known.iter().map(|(title, _, unit, _)| match unit {
            Unit::One => (self.words.plain(title), Align::End),
            unit => (self.unit_title(title, *unit), Align::End),
        });
        let first = [(self.words.plain("column-day"), Align::End)];
        let date = placement.map(|_| (self.words.plain("column-date"), Align::Start));
        (!known.is_empty()).then(|| Table {
            caption: self.words.plain(caption),
            columns: first.into_iter().chain(date).chain(titles).collect(),
            rows: days.map(row).collect(),
            emphasis: Vec::new(),
            explained_by: known.iter().map(|column| column.1).collect(),
        })
    }

    /// Feeders and drinkers.
    pub(super) fn equipment(&self) -> Vec<Block> {
        let value = |id: &str| self.value(id).unwrap_or_default();
        let mut blocks = vec![self.heading("question-equipment")];
        if self.value("space.drinkers").is_none() {
            blocks.push(self.waiting("waiting-equipment", &waiting::EQUIPMENT));
            return blocks;
        }
        blocks.push(Block::Lead {
            label: self.words.plain("equipment-lead-label"),
            value: say!(
                self.words,
                "equipment-lead",
                trays = value("space.chick_feeders"),
                founts = value("space.chick_drinkers"),
                feeders = value("space.feeders"),
                drinkers = value("space.drinkers"),
            ),
            note: say!(
                self.words,
                "equipment-note",
                from = self.number("space.large_from").map_or_else(String::new, |day| show::short(day, 0)),
                day = self.number("space.change_over").map_or_else(String::new, |day| show::short(day, 0)),
            ),
        });
        blocks.extend(self.findings(&["equipment", "sale"]));
        blocks.extend(self.equipment_by_age().map(Block::Table));
        let rows = self.rows(&[
            "space.chick_feeders",
            "space.box_lids",
            "space.chick_feeders_short",
            "space.chick_feeders_cost",
            "space.chick_drinkers",
            "space.chick_drinkers_short",
            "space.chick_drinkers_cost",
            "space.feeders",
            "space.feeders_short",
            "space.feeders_cost",
            "space.drinkers",
            "space.drinkers_short",
            "space.drinkers_cost",
            "space.large_from",
            "space.change_over",
            "space.more_drinkers",
        ]);
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
        blocks
    }

    /// What is needed from which age on, where what one piece serves was told by age: a row where a need changes by more
    /// than losses lower it.
    fn equipment_by_age(&self) -> Option<Table> {
        let on = |id: &str, day: i32| self.plan.outcome.on_day(id, day);
        let told: Vec<_> = EQUIPMENT.iter().filter(|(id, _)| on(id, 0).is_some()).copied().collect();
        let last = self.plan.outcome.last_day()?;
        let changes = |day: &i32| {
            let changed = |(id, key): &(&str, &str)| {
                let holds = |day| self.plan.answers.schedule(key).and_then(|steps| steps.holding(day));
                let stands = |day| on(id, day).is_some_and(|needed| needed > 0.0);
                holds(*day) != holds(day - 1) || stands(*day) != stands(day - 1)
            };
            *day == 0 || told.iter().any(changed)
        };
        let row = |day: i32| {
            let cells = told.iter().map(|(id, _)| match on(id, day) {
                Some(needed) if needed > 0.0 => show::short(needed, 0),
                _ => self.words.plain("none-stand"),
            });
            [day.to_string()].into_iter().chain(cells).collect()
        };
        let titles = told.iter().map(|(id, _)| (working::label(id, self.viewer), Align::End));
        (!told.is_empty()).then(|| Table {
            caption: self.words.plain("equipment-by-age"),
            columns: [(self.words.plain("column-from-age"), Align::End)].into_iter().chain(titles).collect(),
            rows: (0..=last).filter(changes).map(row).collect(),
            emphasis: Vec::new(),
            explained_by: told.iter().map(|(id, _)| *id).collect(),
        })
    }

    /// Light by age.
    pub(super) fn light(&self) -> Vec<Block> {
        let hours = |id: &str, day: i32| {
            let value = self.plan.outcome.on_day(id, day);
            value.map(|value| show::quantity(value, Unit::Hour, 1, self.viewer))
        };
        let Some((first, later)) = hours("light.hours_by_day", 0).zip(hours("light.hours_by_day", 7)) else {
            return Vec::new();
        };
        let lamps = hours("light.lamps_by_day", 7).unwrap_or_default();
        vec![
            self.heading("question-light"),
            Block::Lead {
                label: self.words.plain("light-lead-label"),
                value: say!(self.words, "light-lead", first = first, later = later),
                note: say!(self.words, "light-note", lamps = lamps),
            },
            Block::Note(self.words.plain("light-heat-note")),
        ]
        .into_iter()
        .chain(self.draw_light())
        .collect()
    }

    /// How a figure by day is worked out, on one day.
    pub fn day_working(&self, id: &str, day: i32) -> Option<crate::document::WorkingView> {
        working::of_day(&self.plan.answers, &self.plan.outcome, id, day, self.viewer)
    }
}
