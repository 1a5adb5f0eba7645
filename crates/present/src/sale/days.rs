//! The profit by day of sale: drawn, in a table, and one more day worked through.

use advice::families::selling::{PROFIT, SaleDay, Selling, Step};
use quantity::Unit;

use super::round_money;
use crate::batch::Page;
use crate::document::{Align, Block, Drawing, Table};
use crate::scene::chart::{Band, Chart, ChartWords, Limit, Mark, Stroke};
use crate::{by_day, say, show};

impl Page<'_> {
    /// The curve with its likely range, the best days marked.
    pub(super) fn profit_by_day(&self, selling: &Selling) -> Vec<Block> {
        let Some(series) = self.walk.plan.series(PROFIT).filter(|_| self.viewer.money_shown) else {
            return Vec::new();
        };
        let mark = |day: Option<&SaleDay>, key: &str| {
            let day = f64::from(day?.day);
            Some(Mark { day, label: self.words.plain(key) })
        };
        let (house, batch) = (selling.best_for_house(), selling.best());
        let is_one = house.map(|day| day.day) == batch.map(|day| day.day);
        let marks = match is_one {
            true => vec![mark(batch, "sale-mark-both")],
            false => vec![mark(house, "sale-mark-house"), mark(batch, "sale-mark-batch")],
        };
        let label = self.words.plain("sale-range");
        let chart = Chart {
            series: vec![by_day::line(series, Stroke::Solid, self.viewer)],
            band: by_day::ends(series).map(|points| Band { label, points }),
            marks: marks.into_iter().flatten().collect(),
            limit: Some(Limit { label: self.words.plain("sale-nothing-earned"), value: 0.0 }),
            from_zero: false,
        };
        let alternative = by_day::in_words(series, Unit::Money, 0, self.viewer).unwrap_or_default();
        let up = self.words.plain("sale-axis-profit");
        let words = ChartWords {
            up: by_day::axis(&up, Unit::Money, self.viewer),
            across: self.words.plain("drawing-days"),
            alternative: alternative.clone(),
        };
        vec![
            self.heading("sale-by-day"),
            Block::Drawing(Drawing {
                name: "sale-profit",
                svg: chart.draw_with(&words, None),
                caption: self.words.plain("sale-by-day-caption"),
                alternative,
                // The numbers stand in the table of all days.
                data: crate::batch::no_data(),
                width_percent: 70,
            }),
        ]
    }

    /// What one more day brings and costs: the first that can be judged, and the one after the best.
    pub(super) fn one_more_day(&self, selling: &Selling) -> Vec<Block> {
        if !self.viewer.money_shown {
            return Vec::new();
        }
        let chosen = selling.best_for_house().or_else(|| selling.best());
        let next = selling.sales.days.first().and_then(|first| selling.sales.on(first.day + 1));
        let after = chosen.and_then(|day| selling.sales.on(day.day + 1));
        let mut days: Vec<&SaleDay> = [next, after].into_iter().flatten().collect();
        days.dedup_by_key(|day| day.day);
        let steps: Vec<(&SaleDay, &Step)> =
            days.into_iter().filter_map(|day| Some((day, day.step.as_ref()?))).collect();
        let Some((_, last)) = steps.last() else { return Vec::new() };
        let mut blocks = vec![self.heading("sale-one-more-day"), Block::Table(self.steps_table(&steps))];
        let rate = chosen.and_then(|day| day.a_house_day(selling.terms.empty_days));
        if let Some(rate) = rate.filter(|_| selling.terms.empty_days > 0.0) {
            let key = if last.worth() < rate { "sale-day-below-house" } else { "sale-day-above-house" };
            blocks.push(Block::Paragraph(say!(
                self.words,
                key,
                worth = self.whole(last.worth()),
                rate = self.whole(rate),
                days = show::quantity(selling.terms.empty_days, Unit::Day, 0, self.viewer)
            )));
        }
        blocks.extend(self.a_bird_left(selling, &steps));
        blocks
    }

    /// Money without cents: a day's worth is not known to the cent.
    fn whole(&self, amount: f64) -> String {
        show::about_money(amount, self.viewer)
    }

    fn steps_table(&self, steps: &[(&SaleDay, &Step)]) -> Table {
        type Line = (&'static str, fn(&Step) -> f64);
        let lines: [Line; 6] = [
            ("sale-step-gain", |step| step.gain),
            ("sale-step-deaths", |step| -step.deaths),
            ("sale-step-feed", |step| -step.feed),
            ("sale-step-work", |step| -step.day_cost),
            ("sale-step-interest", |step| -step.interest),
            ("sale-step-left", Step::worth),
        ];
        let bare = |amount: f64| show::number(amount.round(), 0);
        let row = |(key, of): &Line| {
            let amounts = steps.iter().map(|(_, step)| bare(of(step)));
            [self.words.plain(key)].into_iter().chain(amounts).collect::<Vec<String>>()
        };
        let is_some = |(key, of): &&Line| {
            *key == "sale-step-left" || steps.iter().any(|(_, step)| of(step).abs() >= 0.5)
        };
        let rows: Vec<Vec<String>> = lines.iter().filter(is_some).map(row).collect();
        let title = |day: &SaleDay| {
            let (from, to) = (show::short(f64::from(day.day - 1), 0), show::short(f64::from(day.day), 0));
            say!(self.words, "sale-from-to", from = from, to = to)
        };
        let columns = steps.iter().map(|(day, _)| (title(day), Align::End));
        Table {
            caption: say!(
                self.words,
                "sale-one-more-caption",
                unit = show::unit_label(Unit::Money, self.viewer)
            ),
            columns: [(self.words.plain("column-what"), Align::Start)].into_iter().chain(columns).collect(),
            emphasis: vec![rows.len() - 1],
            rows,
            explained_by: Vec::new(),
        }
    }

    /// A bird that waits, and what it costs.
    fn a_bird_left(&self, selling: &Selling, steps: &[(&SaleDay, &Step)]) -> Option<Block> {
        let cost = show::money(selling.cost_of_waiting(steps.first()?.0)?, self.viewer);
        Some(Block::Note(say!(self.words, "sale-a-bird-left", cost = cost)))
    }

    /// How many to sell while they fit, so that the others may stay until the day that is best without the limit.
    pub(super) fn thinning(&self, selling: &Selling) -> Option<String> {
        let thinning = selling.thinning()?;
        Some(say!(
            self.words,
            "sale-thin",
            birds = show::quantity(thinning.birds, Unit::Birds, 0, self.viewer),
            day = self.sale_day(thinning.on),
            until = self.sale_day(thinning.until)
        ))
    }

    /// Every day in a table, folded away.
    pub(super) fn all_days(&self, selling: &Selling) -> Option<Block> {
        let money = |day: &SaleDay, amount: f64| match self.viewer.money_shown {
            true => show::number(round_money(amount, day.standard_error), 0),
            false => String::new(),
        };
        let row = |day: &SaleDay| {
            let density = selling.density(day).map(|value| show::number(value, 1)).unwrap_or_default();
            let date = self.date_of(day.day).map(|date| show::day_short(date, self.viewer));
            vec![
                show::short(f64::from(day.day), 0),
                date.unwrap_or_default(),
                show::bare(day.weight_g, Unit::Gram, 0, self.viewer),
                density,
                money(day, day.low),
                money(day, day.mean),
                money(day, day.high),
                self.stands(selling, day),
            ]
        };
        let days = &selling.sales.days;
        let unit = show::unit_label(Unit::Money, self.viewer);
        let end = |key: &str| (say!(self.words, key, unit = unit.clone()), Align::End);
        let title = self.words.plain("sale-all-days");
        let best = selling.best_for_house().or_else(|| selling.best()).map(|day| day.day);
        let table = Table {
            caption: title.clone(),
            columns: vec![
                (self.words.plain("column-day"), Align::End),
                (self.words.plain("column-date"), Align::Start),
                (self.unit_title("sale-column-weight", Unit::Gram), Align::End),
                (self.unit_title("sale-column-density", Unit::KilogramPerSquareMetre), Align::End),
                end("sale-column-low"),
                end("sale-column-mean"),
                end("sale-column-high"),
                (self.words.plain("sale-column-stands"), Align::Start),
            ],
            rows: days.iter().map(row).collect(),
            emphasis: days.iter().position(|day| Some(day.day) == best).into_iter().collect(),
            explained_by: vec!["sale.profit_best"],
        };
        Some(Block::Fold { title, blocks: vec![Block::Table(table)] })
    }

    fn stands(&self, selling: &Selling, day: &SaleDay) -> String {
        let key = match (selling.is_blocked(day.day), selling.fits(day)) {
            (true, _) => "sale-day-blocked",
            (_, false) => "sale-day-crowded",
            _ => return String::new(),
        };
        self.words.plain(key)
    }
}
