//! Sheets of the sale: the catching day, and a delivery note for each order.

use advice::catching::{crates, feed_off};
use advice::families::selling::SaleDay;
use advice::orders::{Filled, Orders};
use advice::sale::Sale;

use crate::batch::Page;
use crate::document::{Align, Blank, Block, Caution, Document, Level, Steps, Table};
use crate::viewer::Viewer;
use crate::{health, say, show, sum};

/// Hours of slaughter that a catching sheet has a line for.
const SLAUGHTER_H: [i32; 3] = [4, 6, 8];
/// Lines of a delivery note for crates that are weighed.
const CRATE_LINES: usize = 7;

/// The sheet of the catching day.
pub fn catching(sale: &Sale, viewer: &Viewer) -> Document {
    let page = Page::new(&sale.walk, viewer);
    page.document("sheet-catching", page.catching(sale))
}

/// A delivery note for each order that gets birds; one to fill in where there is none.
pub fn delivery(sale: &Sale, viewer: &Viewer) -> Vec<Document> {
    let page = Page::new(&sale.walk, viewer);
    let orders = Orders::of(sale);
    let filled = orders.iter().flat_map(|orders| &orders.orders).filter(|order| order.birds > 0);
    let mut notes: Vec<Document> =
        filled.map(|order| page.document("sheet-delivery", page.delivery_note(sale, Some(order)))).collect();
    if notes.is_empty() {
        notes.push(page.document("sheet-delivery", page.delivery_note(sale, None)));
    }
    notes
}

impl Page<'_> {
    fn catching(&self, sale: &Sale) -> Vec<Block> {
        let mut blocks = Vec::new();
        let grave = !sale.held_by.is_empty();
        if grave {
            blocks.push(self.held(sale));
        }
        blocks.extend(self.held_back(sale));
        let advised = sale.may_be_advised();
        let day = advised.and_then(|selling| selling.best_for_house().or_else(|| selling.best()));
        if let Some(day) = day {
            blocks.push(self.catching_lead(day));
            blocks.extend(self.crates(sale, day));
        }
        let caution = Block::Caution(Caution {
            level: Level::Danger,
            title: self.words.plain("catching-caution"),
            items: sum::cautions("sum-catching-caution", self.words),
        });
        blocks.push(caution);
        // Beside each other, so that the day is one sheet.
        let mut feed = self.feed_off();
        feed.push(self.blanks_of(&[
            ("catching-caught", 23),
            ("catching-crates-used", 23),
            ("catching-left-at", 23),
            ("catching-name", 23),
        ]));
        blocks.push(Block::Beside(vec![(43, feed), (57, self.catching_work())]));
        blocks.extend(self.for_whom(sale));
        blocks
    }

    fn catching_work(&self) -> Vec<Block> {
        let step = |at: usize| (self.words.plain(&format!("catching-step-{at}")), String::new());
        let steps = Steps { ordered: true, ticks: true, items: (1..=9).map(step).collect() };
        vec![self.heading("catching-work"), Block::Steps(steps)]
    }

    fn blanks_of(&self, blanks: &[(&str, u8)]) -> Block {
        let blank = |(key, width_percent): &(&str, u8)| Blank {
            label: self.words.plain(key),
            width_percent: *width_percent,
        };
        Block::Blanks(blanks.iter().map(blank).collect())
    }

    fn catching_lead(&self, day: &SaleDay) -> Block {
        let birds = show::quantity(day.birds, quantity::Unit::Birds, 0, self.viewer);
        let weight = show::quantity(day.weight_g, quantity::Unit::Gram, 0, self.viewer);
        Block::Lead {
            label: self.words.plain("catching-on"),
            value: self.sale_day(day.day),
            note: say!(self.words, "catching-birds", birds = birds, weight = weight),
        }
    }

    fn crates(&self, sale: &Sale, day: &SaleDay) -> Option<Block> {
        let sum = crates(sale, day)?;
        let shown = |id: &str| {
            let worked = sum.outcome.get(id)?;
            Some(show::figure(&worked.figure, worked.spec, self.viewer))
        };
        let fewer = sum.checked.answers.number("catching.fewer_percent").unwrap_or_default();
        let key = if fewer > 0.0 { "catching-crates-hot" } else { "catching-crates" };
        Some(Block::Paragraph(say!(
            self.words,
            key,
            each = shown("catching.birds_a_crate")?,
            crates = shown("catching.crates")?,
            fewer = show::number(fewer, 0)
        )))
    }

    /// When feed goes away: for slaughter by the hour of the knife, for birds sold alive never.
    fn feed_off(&self) -> Vec<Block> {
        let kind = self.walk.plan.answers.choice("sale.kind");
        let mut blocks = vec![self.heading("catching-feed")];
        let key = match kind {
            Some("live") => "catching-feed-stays",
            Some("slaughter") => "catching-feed-off",
            _ => "catching-feed-ask",
        };
        blocks.push(Block::Paragraph(self.words.plain(key)));
        if kind != Some("live") {
            blocks.push(self.feed_off_hours());
        }
        blocks
    }

    /// By the hour of slaughter.
    fn feed_off_hours(&self) -> Block {
        let clock = |(hour, is_before): (i32, bool)| {
            let key = if is_before { "catching-hour-before" } else { "catching-hour" };
            say!(self.words, key, hour = format!("{hour:02}"))
        };
        let line = |slaughter: &i32| {
            let [first, last] = feed_off(*slaughter);
            let at = clock((*slaughter, false));
            (
                say!(self.words, "catching-off", at = at, first = clock(first), last = clock(last)),
                String::new(),
            )
        };
        Block::Steps(Steps { ordered: false, ticks: false, items: SLAUGHTER_H.iter().map(line).collect() })
    }

    fn for_whom(&self, sale: &Sale) -> Option<Block> {
        let orders = Orders::of(sale)?;
        let row = |order: &Filled| {
            let day = order.day.and_then(|day| self.date_of(day));
            vec![
                order.wanted.buyer.clone(),
                day.map_or_else(String::new, |day| show::day_short(day, self.viewer)),
                show::number(f64::from(order.birds), 0),
                self.weight_band(&order.wanted),
                String::new(),
            ]
        };
        Some(Block::Table(Table {
            caption: self.words.plain("catching-for-whom"),
            columns: vec![
                (self.words.plain("sale-orders-buyer"), Align::Start),
                (self.words.plain("column-date"), Align::Start),
                (self.words.plain("sale-orders-birds"), Align::End),
                (self.unit_title("sale-orders-band", quantity::Unit::Kilogram), Align::Start),
                (self.words.plain("catching-loaded"), Align::Tick),
            ],
            rows: orders.orders.iter().filter(|order| order.birds > 0).map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }))
    }

    fn delivery_note(&self, sale: &Sale, order: Option<&Filled>) -> Vec<Block> {
        let mut blocks = vec![self.blanks_of(&[("delivery-number", 45), ("delivery-day", 45)])];
        match order {
            Some(order) => blocks.extend(self.delivered(order)),
            None => blocks.push(self.blanks_of(&[("delivery-buyer", 100)])),
        }
        blocks.push(self.free_of_waits(sale));
        let line = |at: usize| [(at + 1).to_string()].into_iter().chain(vec![String::new(); 3]).collect();
        blocks.push(Block::Table(Table {
            caption: self.words.plain("delivery-crates"),
            columns: vec![
                (self.words.plain("delivery-crate"), Align::End),
                (self.words.plain("sale-orders-birds"), Align::Line),
                (self.unit_title("delivery-full", quantity::Unit::Kilogram), Align::Line),
                (self.unit_title("delivery-empty", quantity::Unit::Kilogram), Align::Line),
            ],
            rows: (0..CRATE_LINES).map(line).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }));
        blocks.push(self.blanks_of(&[
            ("delivery-birds", 30),
            ("delivery-kilograms", 30),
            ("delivery-price", 30),
            ("delivery-amount", 30),
            ("delivery-paid", 30),
            ("delivery-due", 30),
            ("delivery-whose-scale", 100),
            ("delivery-gave", 45),
            ("delivery-took", 45),
        ]));
        blocks.push(self.note("delivery-note-text"));
        blocks
    }

    fn delivered(&self, order: &Filled) -> Option<Block> {
        let wanted = &order.wanted;
        let day = order.day.and_then(|day| self.date_of(day))?;
        Some(Block::Lead {
            label: self.words.plain("delivery-for"),
            value: wanted.buyer.clone(),
            note: say!(
                self.words,
                "delivery-of",
                birds = show::quantity(f64::from(order.birds), quantity::Unit::Birds, 0, self.viewer),
                band = self.weight_in_words(wanted),
                day = show::day(day, self.viewer)
            ),
        })
    }

    /// Whether what was given keeps the birds back: the buyer reads it.
    fn free_of_waits(&self, sale: &Sale) -> Block {
        match health::lead(&sale.health, self.viewer) {
            Block::Lead { label, value, note } => Block::Paragraph(say!(
                self.words,
                "adviser-withdrawal",
                label = label,
                value = value,
                note = note
            )),
            other => other,
        }
    }
}
