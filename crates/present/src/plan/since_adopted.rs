//! What a plan says otherwise than when it was adopted: answers, and the figures by which it is known again.

use std::collections::BTreeMap;

use advice::adoption;
use advice::families;
use book::Body;
use quantity::Unit;

use super::Shown;
use crate::document::{Align, Block, Table};
use crate::entry::{self, Line};
use crate::{show, working};

/// The kind of entry that a plan is adopted by.
const KIND: &str = "plan-adopted";

/// The figures that are told beside the answers where they moved: what a grower holds a plan by.
const HEADLINES: [&str; 7] = [
    "space.birds_allowed",
    "feed.total",
    "brooding.fuel_total",
    "money.cost_total",
    "money.break_even_price",
    "money.cash_low_point",
    "risk.loss_probability",
];

/// A sum of which cents are no longer told.
const LARGE_SUM: f64 = 1_000.0;

impl Shown<'_> {
    /// What is otherwise than in the plan that was adopted, and a sentence where the program works it out by
    /// other rules, or where no figure moved.
    ///
    /// - `adopted`, `now`: the bodies of the plan then and as it stands
    pub fn since_adopted(&self, adopted: &Body, now: &Body) -> Vec<Block> {
        let figures = HEADLINES.iter().filter_map(|id| Some((*id, self.figure_since(adopted, id)?)));
        let (explained_by, figures): (Vec<&'static str>, Vec<Vec<String>>) = figures.unzip();
        let rows = [self.answers_since(adopted, now), figures].concat();
        let mut blocks = Vec::new();
        if !rows.is_empty() {
            let column = |key: &str, align| (self.words.plain(key), align);
            blocks.push(Block::Table(Table {
                caption: self.words.plain("since-adopted"),
                columns: vec![
                    column("since-adopted-what", Align::Start),
                    column("since-adopted-then", Align::End),
                    column("since-adopted-now", Align::End),
                ],
                rows,
                emphasis: Vec::new(),
                explained_by,
            }));
        }
        let why = [
            (adoption::moves_a_rule(adopted, now), "since-adopted-rules"),
            (!adoption::moves_a_figure(adopted, now), "since-adopted-no-figure"),
        ];
        let said = why.into_iter().filter(|(holds, _)| *holds);
        blocks.extend(said.map(|(_, key)| Block::Note(self.words.plain(key))));
        blocks
    }

    /// A row for each answer that was not the same, in the order in which they are asked.
    fn answers_since(&self, adopted: &Body, now: &Body) -> Vec<Vec<String>> {
        let lines = |body: &Body| -> BTreeMap<&'static str, Line> {
            let told = entry::lines(KIND, body, self.viewer).into_iter();
            told.map(|line| (line.key, line)).collect()
        };
        let (then, now) = (lines(adopted), lines(now));
        let text = |line: Option<&Line>| {
            line.map_or_else(|| self.words.plain("since-adopted-not-said"), |line| line.text.clone())
        };
        let row = |key: &'static str| {
            let (then, now) = (then.get(key), now.get(key));
            let label = then.or(now)?.label.clone();
            let texts = [text(then), text(now)];
            (texts[0] != texts[1]).then(|| [label].into_iter().chain(texts).collect())
        };
        families::plan_fields().into_iter().filter_map(|asked| row(asked.field.key)).collect()
    }

    /// A row for a figure that is read otherwise than it was.
    fn figure_since(&self, adopted: &Body, id: &str) -> Option<Vec<String>> {
        let worked = self
            .plan
            .outcome
            .get(id)
            .filter(|worked| self.viewer.money_shown || !worked.spec.unit.is_money())?;
        let (then, now) = (adopted.get(&format!("{}{id}", adoption::FIGURE))?, worked.figure.value.number());
        let spec = worked.spec;
        let text = |number: f64| match spec.unit {
            // Two large sums to the cent leave no room for their name on a phone.
            Unit::Money if number.abs() >= LARGE_SUM => show::about_money(number, self.viewer),
            unit => show::quantity(number, unit, spec.decimals, self.viewer),
        };
        let [then, now] = [then.value.as_f64()?, now].map(text);
        (then != now).then(|| vec![working::label(id, self.viewer), then, now])
    }
}
