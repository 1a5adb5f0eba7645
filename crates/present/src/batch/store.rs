//! What is in the store room?

use advice::stock::{Bought, Burnt, bought, burnt};
use quantity::Unit;

use super::Page;
use super::lines::{Columns, Lines};
use crate::document::{Align, Block, Level, Table};
use crate::scene::chart::Stroke;
use crate::{buying, say, show};

/// The feeds as entries and figures name them.
const FEEDS: [&str; 4] = ["starter", "grower", "finisher", "last"];

/// The figures that explain a feed's row.
const EXPLAINED: &[&str] = &[
    "store.starter_left",
    "store.starter_bags_left",
    "store.starter_lasts",
    "store.grower_left",
    "store.grower_bags_left",
    "store.grower_lasts",
    "store.finisher_left",
    "store.finisher_bags_left",
    "store.finisher_lasts",
    "store.last_left",
    "store.last_bags_left",
    "store.last_lasts",
];

/// All feed left, evening by evening.
const LEFT: Lines =
    Lines { name: "store-left", lines: &[("store.feed_by_day", Stroke::Solid)], from_zero: true };

/// The same with what was given.
const LEFT_BY_DAY: Columns = Columns {
    caption: "table-store-left",
    columns: &["store.feed_by_day", "growing.feed_by_day"],
    every_day: true,
};

impl Page<'_> {
    pub(super) fn store(&self) -> Vec<Block> {
        self.feed()
            .into_iter()
            .chain(self.to_buy())
            .chain(self.deliveries())
            .chain(self.other_goods())
            .collect()
    }

    /// What to buy when, as long as something is still eaten.
    fn to_buy(&self) -> Vec<Block> {
        if self.walk.diary.is_closed {
            return Vec::new();
        }
        let found = advice::buying::of_book(self.walk);
        let blocks = buying::blocks(&found, self.walk.diary.placement, self.viewer);
        [self.heading("buying")].into_iter().chain(blocks).collect()
    }

    fn feed(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("store-feed")];
        if self.value("store.feed_left").is_none() {
            blocks.push(self.note("waiting-feed-delivered"));
            return blocks;
        }
        blocks.extend(self.feed_lead());
        blocks.extend(self.more_given_than_came());
        blocks.extend(self.feed_table());
        blocks.extend(self.draw(&LEFT));
        blocks.extend(self.days_table(&LEFT_BY_DAY));
        blocks.push(self.note("store-by-book"));
        blocks.push(self.caution("feed", Level::Care, 3));
        let ids: Vec<&'static str> =
            EXPLAINED.iter().chain(&["store.feed_left", "store.feed_lasts"]).copied().collect();
        blocks.extend(self.rows(&ids));
        blocks
    }

    /// How long all feed lasts, and the feed of the day alone.
    fn feed_lead(&self) -> Option<Block> {
        let left = self.value("store.feed_left")?;
        let label = self.words.plain("store-feed-label");
        let Some(days) = self.number("store.feed_lasts") else {
            return Some(Block::Lead { label, value: left, note: self.words.plain("store-no-plan") });
        };
        let notes = self.walk.feeds.iter().filter_map(|phase| self.feed_of_day_lasts(phase.name()));
        let all = self.lasts_until(&left, days);
        Some(Block::Lead {
            label,
            value: say!(self.words, "store-feed-lasts", days = show::number(days, 1), count = days),
            note: [all].into_iter().chain(notes).collect::<Vec<_>>().join(" "),
        })
    }

    fn lasts_until(&self, left: &str, days: f64) -> String {
        let planned = self.walk.diary.answers.numbers("stock.ahead_kg").len() as f64;
        if days >= planned {
            return say!(self.words, "store-feed-to-the-end", left = left);
        }
        let whole = days.floor();
        if whole < 1.0 {
            return say!(self.words, "store-feed-under-a-day", left = left);
        }
        // While today's feed is not written, today is the first of the days.
        let first = if self.walk.written("feed-given").is_empty() { 0 } else { 1 };
        let last = self.walk.diary.on.plus_days(first + whole as i32 - 1);
        say!(self.words, "store-feed-until", left = left, day = show::day(last, self.viewer), count = whole)
    }

    fn feed_of_day_lasts(&self, feed: &str) -> Option<String> {
        let days = self.number(&format!("store.{feed}_lasts"))?;
        let name = self.words.plain(&format!("phase-{feed}"));
        Some(say!(self.words, "store-phase-lasts", feed = name, days = show::number(days, 1), count = days))
    }

    /// A delivery that was not written shows as feed that never came.
    fn more_given_than_came(&self) -> Vec<Block> {
        let short = |feed: &&str| {
            self.number(&format!("store.{feed}_left")).is_some_and(|left| left < -0.5)
                || self.stock(feed, "came_kg").is_none() && self.stock(feed, "given_kg").is_some()
        };
        let said = |feed: &str| {
            let name = self.words.plain(&format!("phase-{feed}"));
            Block::Note(say!(self.words, "store-more-given", feed = name))
        };
        FEEDS.into_iter().filter(short).map(said).collect()
    }

    /// What entries of one feed add up to.
    fn stock(&self, feed: &str, what: &str) -> Option<f64> {
        self.walk.diary.answers.number(&format!("stock.{feed}_{what}"))
    }

    fn feed_table(&self) -> Option<Block> {
        let told = |feed: &&str| ["came_kg", "given_kg"].iter().any(|what| self.stock(feed, what).is_some());
        let rows: Vec<Vec<String>> = FEEDS.into_iter().filter(told).map(|feed| self.feed_row(feed)).collect();
        let kilograms = |key| (self.unit_title(key, Unit::Kilogram), Align::End);
        let plain = |key: &str| (self.words.plain(key), Align::End);
        let columns = vec![
            (self.words.plain("column-feed"), Align::Start),
            plain("column-bags-came"),
            plain("column-bags-opened"),
            kilograms("column-given"),
            kilograms("column-spoiled"),
            kilograms("column-left"),
            plain("column-bags-left"),
            plain("column-days-left"),
        ];
        (!rows.is_empty()).then(|| {
            Block::Table(Table {
                caption: self.words.plain("store-feed-caption"),
                columns,
                rows,
                emphasis: Vec::new(),
                explained_by: EXPLAINED.to_vec(),
            })
        })
    }

    fn feed_row(&self, feed: &str) -> Vec<String> {
        let kilograms = |value: Option<f64>| {
            let text = value.map(|value| show::bare(value, Unit::Kilogram, 0, self.viewer));
            text.unwrap_or_else(|| self.words.plain("cell-not-written"))
        };
        let bags = |value: Option<f64>| {
            let text = value.map(|value| show::short(value, 1));
            text.unwrap_or_else(|| self.words.plain("cell-not-written"))
        };
        let figure = |what: &str| self.number(&format!("store.{feed}_{what}"));
        let lasts = figure("lasts").map_or_else(String::new, |days| show::number(days, 1));
        vec![
            self.words.plain(&format!("phase-{feed}")),
            bags(self.stock(feed, "bags")),
            bags(self.stock(feed, "opened")),
            kilograms(self.stock(feed, "given_kg")),
            kilograms(self.stock(feed, "spoiled_kg")),
            kilograms(figure("left")),
            bags(figure("bags_left")),
            lasts,
        ]
    }

    /// Each delivery, leading to its day.
    fn deliveries(&self) -> Option<Block> {
        let notes: Vec<_> = self.walk.diary.of_kind("feed-delivered").collect();
        let row = |note: &&advice::diary::Noted| {
            let milled = note.text("milled").and_then(quantity::CivilDay::parse);
            let feed = note.text("phase").unwrap_or_default();
            let bag = note.number("bag_kg").unwrap_or_default();
            vec![
                show::day_short(note.day, self.viewer),
                self.words.plain(&format!("phase-{feed}")),
                show::short(note.number("bags").unwrap_or_default(), 1),
                show::quantity_short(bag, Unit::Kilogram, self.viewer),
                milled.map_or_else(
                    || self.words.plain("cell-not-written"),
                    |day| show::day_short(day, self.viewer),
                ),
            ]
        };
        let table = Table {
            caption: self.words.plain("store-deliveries"),
            columns: vec![
                (self.words.plain("column-date"), Align::Start),
                (self.words.plain("column-feed"), Align::Start),
                (self.words.plain("column-bags-came"), Align::End),
                (self.words.plain("column-bag-weight"), Align::End),
                (self.words.plain("column-milled"), Align::Start),
            ],
            rows: notes.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        };
        let days = notes.iter().map(|note| Some(note.day)).collect();
        let title = table.caption.clone();
        (!notes.is_empty()).then(|| Block::Fold { title, blocks: vec![Block::DayTable { table, days }] })
    }

    /// Litter, fuel, medicine: what was bought, and what fuel was burnt.
    fn other_goods(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("store-other")];
        let (bought, burnt) = (bought(&self.walk.diary), burnt(&self.walk.diary));
        if bought.is_empty() && burnt.is_empty() {
            blocks.push(self.note("waiting-bought"));
            return blocks;
        }
        blocks.extend(self.bought_table(&bought));
        blocks.extend(self.burnt_table(&burnt));
        blocks.push(self.note("store-count-what-stands"));
        blocks.extend(self.medicines());
        blocks
    }

    fn bought_table(&self, bought: &[Bought]) -> Option<Block> {
        let row = |one: &Bought| {
            let amount = match (one.amount, &one.unit) {
                (Some(amount), Some(unit)) => {
                    let unit = self.words.plain(&format!("choice-purchase-unit-{unit}"));
                    say!(self.words, "amount-of", amount = show::short(amount, 2), unit = unit)
                }
                (Some(amount), None) => show::short(amount, 2),
                (None, _) => self.words.plain("cell-not-written"),
            };
            vec![
                self.words.plain(&format!("choice-purchase-what-{}", one.what)),
                one.name.clone().unwrap_or_default(),
                amount,
                show::day_short(one.last, self.viewer),
            ]
        };
        let keys = ["column-what", "column-name", "column-bought", "column-last-bought"];
        let rows = bought.iter().map(row).collect();
        self.goods(keys.as_slice(), "store-bought", rows, bought.iter().map(|one| Some(one.last)).collect())
    }

    fn burnt_table(&self, burnt: &[Burnt]) -> Option<Block> {
        let row = |one: &Burnt| {
            let kilograms = |value| show::quantity(value, Unit::Kilogram, 1, self.viewer);
            vec![
                self.words.plain(&format!("choice-fuel-burnt-fuel-{}", one.fuel)),
                kilograms(one.amount_kg),
                one.days.to_string(),
                kilograms(one.amount_kg / one.days as f64),
                show::day_short(one.last, self.viewer),
            ]
        };
        let keys = ["column-fuel", "column-burnt", "column-days-burnt", "column-a-day", "column-last-burnt"];
        let rows = burnt.iter().map(row).collect();
        self.goods(keys.as_slice(), "store-burnt", rows, burnt.iter().map(|one| Some(one.last)).collect())
    }

    /// Medicines that were given, each leading to its day.
    fn medicines(&self) -> Option<Block> {
        let notes: Vec<_> = self.walk.diary.of_kind("medicine-given").collect();
        let row = |note: &&advice::diary::Noted| {
            let text = |key: &str| note.text(key).unwrap_or_default().to_owned();
            vec![show::day_short(note.day, self.viewer), text("medicine"), text("amount")]
        };
        let keys = ["column-date", "column-medicine", "column-amount"];
        let rows = notes.iter().map(row).collect();
        self.goods(keys.as_slice(), "store-medicine", rows, notes.iter().map(|note| Some(note.day)).collect())
    }

    fn goods(
        &self,
        keys: &[&str],
        caption: &str,
        rows: Vec<Vec<String>>,
        days: Vec<Option<quantity::CivilDay>>,
    ) -> Option<Block> {
        let table = Table {
            caption: self.words.plain(caption),
            columns: keys.iter().map(|key| (self.words.plain(key), Align::Start)).collect(),
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        };
        (!table.rows.is_empty()).then_some(Block::DayTable { table, days })
    }
}
