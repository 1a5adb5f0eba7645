//! How much feed, when it comes, whether it keeps and finds room; and water beside it.

use advice::store_room::{self, Delivery};
use quantity::{DayOfAge, Unit};

use super::{Shown, waiting};
use crate::document::{Align, Block, Level, Table};
use crate::{say, show};

impl Shown<'_> {
    /// Feed.
    pub(super) fn feed(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-feed")];
        let lead = self.feed_lead();
        blocks.push(lead.unwrap_or_else(|| self.waiting("waiting-feed", &waiting::FEED)));
        let note = self.first_size().map(|size| say!(self.words, "feed-sizes-note", size = size));
        blocks.extend(note.map(Block::Note));
        blocks.extend(self.findings(&["feed"]));
        blocks.extend(self.deliveries().map(Block::Table));
        blocks.extend(self.draw_feed());
        blocks.extend(self.draw_store().map(|drawing| Block::Apart {
            page: "store",
            title: self.words.plain("store-by-day"),
            blocks: vec![drawing],
        }));
        if self.number("feed.bags").is_some() {
            blocks.push(Block::Note(self.words.plain("feed-mixing-note")));
            blocks.push(Block::Note(self.words.plain("feed-day-zero-note")));
            blocks.push(Block::Note(self.words.plain("two-limits-note")));
        }
        let rows = self.rows(&[
            "feed.total",
            "feed.per_bird",
            "feed.conversion",
            "feed.bags",
            "feed.bags_starter",
            "feed.bags_grower",
            "feed.bags_finisher",
            "feed.bags_last",
            "feed.bags_per_hundred",
            "feed.left_over",
            "feed.peak_tins",
            "feed.cost",
            "feed.bags_cost",
            "feed.rise_and_deliveries",
            "feed.cost_per_kg",
            "purchases.cost",
            "purchases.lower_bound",
            "feed.grower_price",
            "feed.last_price",
            "feed.starter",
            "feed.grower",
            "feed.finisher",
            "feed.last",
            "feed.starter_until",
            "feed.grower_until",
            "feed.finisher_until",
            "feed.grower_opens",
            "feed.finisher_opens",
            "feed.last_opens",
            "feed.first_delivery",
            "feed.order_by",
            "feed.first_bought_eaten",
            "feed.keeps",
            "feed.milled_not_before",
            "feed.good_until",
            "feed.too_old_by",
            "feed.store_peak",
            "feed.store_peak_day",
            "feed.store_room",
            "feed.store_short",
        ]);
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
        blocks.push(Block::Caution(self.caution("feed", Level::Care, 3)));
        blocks
    }

    /// The bags that are bought, by size; `None` where feed comes in bags of one size.
    fn bags_of_sizes(&self) -> Option<String> {
        let sizes = store_room::bags_by_size(&self.plan.answers, &self.plan.outcome, None);
        let bags = |(count, size): &(f64, Option<f64>)| {
            size.is_some().then(|| show::bags(*count, *size, self.viewer))
        };
        let named: Option<Vec<String>> = sizes.iter().map(bags).collect();
        named.filter(|named| !named.is_empty()).map(|named| named.join(", "))
    }

    /// The size that bags are counted in, where two are bought.
    fn first_size(&self) -> Option<String> {
        let size = self.plan.answers.number("feed.bag_kg").filter(|_| self.bags_of_sizes().is_some())?;
        Some(show::quantity(size, Unit::Kilogram, u8::from(size.fract() != 0.0), self.viewer))
    }

    /// That the bags of each feed are counted in that size; else nothing.
    fn in_first_size(&self) -> String {
        let said = self.first_size().map(|size| say!(self.words, "feed-lead-first-size", size = size) + " ");
        said.unwrap_or_default()
    }

    fn feed_lead(&self) -> Option<Block> {
        let bags = |phase: &str| self.value(&format!("feed.bags_{phase}")).unwrap_or_default();
        let key = match self.plan.answers.choice("feed.phases") {
            Some("starter-finisher") => "feed-lead-note-two",
            Some("four") => "feed-lead-note-four",
            _ => "feed-lead-note",
        };
        Some(Block::Lead {
            label: self.words.plain("feed-lead-label"),
            value: match self.bags_of_sizes() {
                Some(bags) => {
                    say!(self.words, "feed-lead-sizes", bags = bags, total = self.value("feed.total")?)
                }
                None => say!(
                    self.words,
                    "feed-lead",
                    count = self.number("feed.bags")?,
                    bags = self.value("feed.bags")?,
                    total = self.value("feed.total")?,
                ),
            },
            note: self.in_first_size()
                + &say!(
                    self.words,
                    key,
                    starter = bags("starter"),
                    grower = bags("grower"),
                    finisher = bags("finisher"),
                    last = bags("last"),
                    each = self.value("feed.per_bird").unwrap_or_default(),
                    fcr = self.value("feed.conversion").unwrap_or_default(),
                ),
        })
    }

    /// What comes when, how long it must keep.
    pub(super) fn deliveries(&self) -> Option<Table> {
        let placement = self.plan.answers.day("batch.placement")?;
        let keeps = self.number("feed.keeps")? as i32;
        let date = |day: i32| show::day(DayOfAge(day).date(placement), self.viewer);
        let row = |one: &Delivery| {
            vec![
                self.words.plain(&format!("phase-{}", one.phase.name())),
                show::bags(one.bags, one.size_kg, self.viewer),
                date(one.day),
                say!(
                    self.words,
                    "eaten-from-to",
                    from = one.eaten_from.to_string(),
                    to = one.eaten_until.to_string(),
                ),
                date(one.eaten_until - keeps),
            ]
        };
        let columns =
            ["column-feed-kind", "column-bags", "column-comes", "column-eaten", "column-milled-from"];
        let align = |at: usize| if at == 1 { Align::End } else { Align::Start };
        (!self.plan.deliveries.is_empty()).then(|| Table {
            caption: self.words.plain("deliveries-caption"),
            columns: columns.iter().enumerate().map(|(at, key)| (self.words.plain(key), align(at))).collect(),
            rows: self.plan.deliveries.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: vec!["feed.keeps", "feed.bags"],
        })
    }

    /// Water that carries a vaccine, week by week, as long as no bird is sold.
    fn vaccine_water(&self) -> Option<Table> {
        let last = self.number("sale.first_age")? as i32 - 1;
        let litres = |day: i32| self.plan.outcome.on_day("vaccine.water_by_day", day);
        let rows: Vec<Vec<String>> = (7..=last)
            .step_by(7)
            .filter_map(|day| {
                Some(vec![day.to_string(), show::quantity(litres(day)?, Unit::Litre, 1, self.viewer)])
            })
            .collect();
        (!rows.is_empty()).then(|| Table {
            caption: self.words.plain("vaccine-water-caption"),
            columns: vec![
                (self.words.plain("column-day"), Align::End),
                (self.words.plain("column-water"), Align::End),
            ],
            rows,
            emphasis: Vec::new(),
            explained_by: vec!["vaccine.water_by_day"],
        })
    }

    /// Water.
    pub(super) fn water(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-water")];
        let Some(litres) = self.value("water.peak_day") else {
            blocks.push(self.waiting("waiting-water", &waiting::WATER));
            return blocks;
        };
        let can = self
            .plan
            .answers
            .number("water.can_l")
            .map_or_else(String::new, |litres| show::quantity_short(litres, Unit::Litre, self.viewer));
        blocks.push(Block::Lead {
            label: self.words.plain("water-lead-label"),
            value: say!(
                self.words,
                "water-lead",
                litres = litres,
                cans = self.number("water.cans").map_or_else(String::new, |cans| show::number(cans, 0)),
                can = can,
            ),
            note: say!(
                self.words,
                "water-lead-note",
                usual = self.value("water.peak_usual").unwrap_or_default(),
            ),
        });
        blocks.extend(self.findings(&["water", "weather"]));
        let rows = self.rows(&[
            "water.peak_day",
            "water.peak_usual",
            "water.cans",
            "water.total",
            "water.storage_days",
            "water.off_need",
            "water.sanitiser",
            "water.line_volume",
            "water.line_mix",
            "water.line_product",
            "water.heat_factor",
            "water.hot_factor",
        ]);
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
        blocks.extend(self.line_lead());
        if let Some(table) = self.vaccine_water() {
            blocks.push(Block::Table(table));
            blocks.push(Block::Note(self.words.plain("sum-vaccine-water-caution-2")));
        }
        blocks.push(Block::Caution(self.caution("water", Level::Care, 3)));
        blocks
    }

    /// What cleans the drinker lines; nothing while length, diameter or label are not told.
    pub(super) fn line_lead(&self) -> Option<Block> {
        Some(Block::Lead {
            label: self.words.plain("line-lead-label"),
            value: say!(
                self.words,
                "line-lead",
                product = self.value("water.line_product")?,
                mix = self.value("water.line_mix")?,
            ),
            note: say!(self.words, "line-lead-note", volume = self.value("water.line_volume")?),
        })
    }
}
