//! Do the chicks fit?

use advice::houses::HouseChoice;
use advice::plan::sold_in_parts;
use quantity::Unit;

use super::{Shown, waiting};
use crate::document::{Block, Table};
use crate::{say, show, working};

/// The figures where all birds leave on one day.
const AT_ONCE: &[&str] = &[
    "space.birds_allowed",
    "space.chicks_to_order",
    "space.density_at_sale",
    "space.limit",
    "space.birds_at_sale",
    "space.weight_at_sale",
    "batch.sale_date",
    "space.last_day_that_fits",
    "space.first_day_over",
    "space.birds_to_sell_early",
    "space.floor_area",
    "space.weight_open_house",
    "space.birds_allowed_open_house",
];

/// The figures where they leave over several days: what counts is the fullest of them.
const IN_PARTS: &[&str] = &[
    "space.fullest_density",
    "space.fullest_day",
    "space.fullest_birds",
    "sale.first_date",
    "sale.last_date",
];

impl Shown<'_> {
    /// Whether birds leave over several days.
    fn is_sold_in_parts(&self) -> bool {
        sold_in_parts(&self.plan.answers)
    }

    /// What has to be known before it can be said whether they fit.
    pub(super) fn space_part(&self) -> &'static waiting::Part {
        if self.is_sold_in_parts() { &waiting::SPACE_IN_PARTS } else { &waiting::SPACE }
    }

    pub(super) fn space(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-fit")];
        blocks.push(self.space_lead().unwrap_or_else(|| self.waiting("waiting-space", self.space_part())));
        blocks.extend(self.findings(&["farm", "batch", "space"]));
        blocks.extend(self.houses().map(Block::Table));
        let mut figures = Vec::new();
        if self.is_sold_in_parts() {
            figures.extend(self.rows(IN_PARTS));
            figures.push(Block::Note(self.words.plain("space-were-all-sold-at-once")));
        }
        figures.extend(self.rows(AT_ONCE));
        blocks.extend(self.fold("all-figures", figures));
        blocks
    }

    /// Several houses side by side.
    fn houses(&self) -> Option<Table> {
        let square_metres = |value| show::quantity(value, Unit::SquareMetre, 0, self.viewer);
        let row = |house: &HouseChoice| {
            let name = match house.name.as_str() {
                "" => self.words.plain("house-unnamed"),
                name => name.to_owned(),
            };
            let name = if house.chosen { say!(self.words, "house-of-plan", name = name) } else { name };
            let verdict = if house.fits { "house-fits" } else { "house-does-not-fit" };
            vec![
                name,
                square_metres(house.floor_m2),
                show::quantity(house.birds_allowed, Unit::Birds, 0, self.viewer),
                show::quantity(house.chicks_to_order, Unit::Chicks, 0, self.viewer),
                self.words.plain(verdict),
            ]
        };
        let columns = ["column-house", "column-floor", "column-carries", "column-order", "column-verdict"];
        (!self.plan.houses.is_empty()).then(|| Table {
            caption: self.words.plain("houses-caption"),
            columns: self.columns(&columns),
            rows: self.plan.houses.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: vec!["space.birds_allowed"],
        })
    }

    /// The verdict where birds leave over several days: that of the fullest.
    fn space_lead_in_parts(&self) -> Option<Block> {
        let fits = self.number("space.fullest_density")? <= self.number("space.limit")?;
        let (verdict, key) = match fits {
            true => ("verdict-fits", "space-fits-in-parts"),
            false => ("verdict-does-not-fit", "space-does-not-fit-in-parts"),
        };
        let note = say!(
            self.words,
            key,
            day = self.value("space.fullest_day").unwrap_or_default(),
            birds = self.value("space.fullest_birds").unwrap_or_default(),
            density = self.value("space.fullest_density").unwrap_or_default(),
            limit = self.value("space.limit").unwrap_or_default(),
        );
        let label = self.words.plain("verdict-label-in-parts");
        Some(Block::Lead { label, value: self.words.plain(verdict), note })
    }

    /// The verdict first, in words; the number of birds alone while the batch is not told.
    fn space_lead(&self) -> Option<Block> {
        if self.is_sold_in_parts() {
            return self.space_lead_in_parts();
        }
        let allowed = self.number("space.birds_allowed")?;
        let label = working::label("space.birds_allowed", self.viewer);
        let value = self.value("space.birds_allowed")?;
        let Some(birds) = self.number("space.birds_at_sale") else {
            return Some(Block::Lead { label, value, note: String::new() });
        };
        let (verdict, key) = if birds <= allowed {
            ("verdict-fits", "space-fits")
        } else {
            ("verdict-does-not-fit", "space-does-not-fit")
        };
        let note = say!(
            self.words,
            key,
            birds = self.value("space.birds_at_sale").unwrap_or_default(),
            density = self.value("space.density_at_sale").unwrap_or_default(),
            limit = self.value("space.limit").unwrap_or_default(),
            allowed = value,
        );
        let label = self.words.plain("verdict-label");
        Some(Block::Lead { label, value: self.words.plain(verdict), note })
    }
}
