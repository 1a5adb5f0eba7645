//! Orders against the weights that are likely.

use advice::orders::{Filled, Orders, Wanted};
use quantity::Unit;

use crate::batch::Page;
use crate::document::{Align, Block, Drawing, Table};
use crate::scene::histogram::{Histogram, HistogramWords};
use crate::{say, show};

impl Page<'_> {
    /// Who gets which birds; empty without orders.
    pub(super) fn orders(&self, orders: Option<&Orders>) -> Vec<Block> {
        let Some(orders) = orders else { return Vec::new() };
        let mut blocks = vec![self.heading("sale-orders")];
        blocks.push(self.weights(orders));
        blocks.push(Block::Table(self.orders_table(orders)));
        let short = orders.orders.iter().filter_map(|order| self.short(order));
        blocks.extend(short.map(Block::Paragraph));
        if orders.left > 0 && orders.left_kg > 0.0 {
            blocks.push(Block::Note(say!(
                self.words,
                "sale-orders-left",
                birds = show::quantity(f64::from(orders.left), Unit::Birds, 0, self.viewer),
                left = self.kilograms(orders.left_kg),
                flock = self.kilograms(orders.flock_kg)
            )));
        }
        let key = if orders.cv_is_weighed { "sale-orders-cv-weighed" } else { "sale-orders-cv-usual" };
        let cv = show::quantity(100.0 * orders.cv, Unit::Percent, 0, self.viewer);
        blocks.push(Block::Note(say!(self.words, key, cv = cv)));
        blocks
    }

    fn kilograms(&self, kg: f64) -> String {
        show::quantity(kg, Unit::Kilogram, 2, self.viewer)
    }

    fn weights(&self, orders: &Orders) -> Block {
        let of = |(kg, birds): &(f64, u32)| std::iter::repeat_n(*kg, *birds as usize);
        let chart = Histogram {
            values: orders.classes.iter().flat_map(of).collect(),
            mean: Some(orders.flock_kg),
            near: None,
            expected: None,
        };
        let day = self.sale_day(orders.day);
        let alternative = say!(
            self.words,
            "sale-orders-drawing",
            day = day.clone(),
            mean = self.kilograms(orders.flock_kg)
        );
        let words = HistogramWords {
            up: self.words.plain("sale-orders-birds"),
            across: self.unit_title("sale-orders-weight", Unit::Kilogram),
            mean: self.words.plain("sale-orders-mean"),
            near: String::new(),
            expected: String::new(),
            alternative: alternative.clone(),
        };
        let columns = chart.columns();
        let row = |(from, to, birds): &(f64, f64, usize)| {
            vec![show::number(*from, 2), show::number(*to, 2), show::number(*birds as f64, 0)]
        };
        let caption = say!(self.words, "sale-orders-caption", day = day);
        Block::Drawing(Drawing {
            name: "sale-weights",
            svg: chart.draw(&words),
            caption: caption.clone(),
            alternative,
            data: Table {
                caption,
                columns: vec![
                    (self.unit_title("sale-orders-from", Unit::Kilogram), Align::End),
                    (self.unit_title("sale-orders-to", Unit::Kilogram), Align::End),
                    (self.words.plain("sale-orders-birds"), Align::End),
                ],
                rows: columns.iter().map(row).collect(),
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            },
            width_percent: 60,
        })
    }

    fn orders_table(&self, orders: &Orders) -> Table {
        let row = |order: &Filled| {
            let wanted = &order.wanted;
            let day = order.day.and_then(|day| self.date_of(day));
            let pays = show::number(order.pays, 0);
            let some = |text: String| if order.birds > 0 { text } else { String::new() };
            vec![
                wanted.buyer.clone(),
                show::number(f64::from(wanted.birds), 0),
                self.weight_band(wanted),
                day.map_or_else(String::new, |day| show::day_short(day, self.viewer)),
                show::number(f64::from(order.birds), 0),
                some(show::number(order.mean_kg, 2)),
                some(if self.viewer.money_shown { pays } else { String::new() }),
                order.chance.map_or_else(String::new, |share| show::number((100.0 * share).round(), 0)),
            ]
        };
        let column = |key: &str, align: Align| (self.words.plain(key), align);
        let money = show::unit_label(Unit::Money, self.viewer);
        Table {
            caption: self.words.plain("sale-orders-table"),
            columns: vec![
                column("sale-orders-buyer", Align::Start),
                column("sale-orders-wants", Align::End),
                (self.unit_title("sale-orders-band", Unit::Kilogram), Align::Start),
                column("column-date", Align::Start),
                column("sale-orders-gets", Align::End),
                (self.unit_title("sale-orders-each", Unit::Kilogram), Align::End),
                (say!(self.words, "sale-orders-pays", unit = money), Align::End),
                column("sale-orders-chance", Align::End),
            ],
            rows: orders.orders.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    pub(super) fn weight_band(&self, wanted: &Wanted) -> String {
        let kg = |kg: f64| show::number(kg, 2);
        match (wanted.least_kg, wanted.most_kg) {
            (Some(least), Some(most)) => {
                say!(self.words, "sale-orders-between", least = kg(least), most = kg(most))
            }
            (Some(least), None) => say!(self.words, "sale-orders-least", least = kg(least)),
            (None, Some(most)) => say!(self.words, "sale-orders-most", most = kg(most)),
            (None, None) => self.words.plain("sale-orders-any"),
        }
    }

    /// The same with its unit, as it stands in a sentence.
    pub(super) fn weight_in_words(&self, wanted: &Wanted) -> String {
        if wanted.least_kg.is_none() && wanted.most_kg.is_none() {
            return self.words.plain("sale-orders-any-weight");
        }
        say!(self.words, "sale-orders-kilograms", band = self.weight_band(wanted))
    }

    /// Why an order gets fewer than it asks.
    fn short(&self, order: &Filled) -> Option<String> {
        let key = format!("sale-short-{}", order.short?.name());
        let missing = f64::from(order.wanted.birds - order.birds);
        let latest = order.wanted.latest.map(|day| show::day(day, self.viewer)).unwrap_or_default();
        Some(say!(
            self.words,
            &key,
            buyer = &order.wanted.buyer,
            missing = show::quantity(missing, Unit::Birds, 0, self.viewer),
            band = self.weight_in_words(&order.wanted),
            latest = latest
        ))
    }
}
