//! *Did it pay?*: the accounts of a batch in words, a drawing from plan to result, and tables.

mod beside;
mod sheets;

use std::collections::BTreeMap;

use advice::account::CashLine;
use advice::closing::{Cause, Closing, HeadRow};
use quantity::Unit;
use schemars::JsonSchema;
use serde::Serialize;

use crate::batch::Page;
use crate::document::{Align, Block, Caution, Document, Drawing, Level, Table};
use crate::entry::kind_name;
use crate::scene::bars::{Bar, Bars, BarsWords};
use crate::view::{self, FigureView};
use crate::viewer::Viewer;
use crate::{say, show};
pub use sheets::{lender, wall};

/// The figures of a closed batch, in the order in which they are read.
const BIRDS: &[&str] = &[
    "growing.lost",
    "closing.birds_out",
    "closing.livability",
    "closing.sold_kg",
    "closing.mean_weight",
    "closing.age",
    "closing.daily_gain",
    "growing.feed",
    "closing.fcr",
    "closing.fcr_at_2500",
    "closing.fcr_at_1500",
    "closing.epef",
];
const MONEY: &[&str] = &[
    "closing.income",
    "closing.cost",
    "closing.profit",
    "closing.profit_with_own_work",
    "closing.price_per_kg",
    "closing.cost_per_kg",
    "closing.profit_per_kg",
    "closing.cost_per_bird",
    "closing.profit_per_bird",
    "closing.profit_per_m2",
    "closing.house_days",
    "closing.profit_per_house_day",
    "closing.owed",
    "closing.owing",
];

/// Causes that are one number each, with the unit it is shown in; the others are money.
const MEASURED: [(&str, Unit, u8); 5] = [
    ("chicks-placed", Unit::Chicks, 0),
    ("survival", Unit::Percent, 1),
    ("weight", Unit::Kilogram, 2),
    ("feed-amount", Unit::Kilogram, 2),
    ("sale-price", Unit::MoneyPerKilogram, 2),
];

/// A reason why the profit is another than planned.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct CauseJson {
    /// Which.
    pub cause: &'static str,
    /// What it did to the profit, in the farm's money; below nothing where it cost.
    pub amount: f64,
}

/// The accounts of a batch.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ClosingView {
    /// The batch.
    pub batch: String,
    /// The day they are drawn up on, YYYY-MM-DD.
    pub day: String,
    /// Whether the batch is closed.
    pub is_closed: bool,
    /// The figures by name.
    pub figures: BTreeMap<&'static str, FigureView>,
    /// Why the profit is another than the adopted plan's; they add up to the difference. Empty while one of the two is not known.
    pub causes: Vec<CauseJson>,
}

/// The accounts as JSON.
pub fn view(closing: &Closing, viewer: &Viewer) -> ClosingView {
    let diary = &closing.walk.diary;
    let money_is_shown = viewer.money_shown;
    let ids = BIRDS.iter().chain(MONEY).copied();
    ClosingView {
        batch: diary.batch.0.to_string(),
        day: diary.on.to_string(),
        is_closed: diary.is_closed,
        figures: view::chosen(&closing.walk.plan.outcome, ids, viewer),
        causes: closing
            .causes
            .iter()
            .filter(|_| money_is_shown)
            .map(|cause| CauseJson { cause: cause.name, amount: cause.amount })
            .collect(),
    }
}

/// The accounts as a page.
pub fn document(closing: &Closing, viewer: &Viewer) -> Document {
    let page = Page::new(&closing.walk, viewer);
    page.document("page-closing", page.closing(closing))
}

impl Page<'_> {
    fn closing(&self, closing: &Closing) -> Vec<Block> {
        let mut blocks = vec![self.profit_lead(closing)];
        blocks.extend(self.not_all_in(closing).map(Block::Caution));
        blocks.extend(self.why(closing));
        blocks.push(self.heading("closing-birds"));
        blocks.push(self.figures(BIRDS));
        blocks.push(self.heading("closing-money"));
        blocks.push(self.figures(MONEY));
        blocks.extend(self.heads(closing).map(Block::Table));
        blocks.extend(self.cash_book(closing));
        blocks.extend(self.side_by_side(&closing.beside));
        blocks
    }

    /// What it earned, and against the plan.
    fn profit_lead(&self, closing: &Closing) -> Block {
        let label = self.words.plain("closing-profit-label");
        let Some(profit) = self.number("closing.profit") else {
            let (value, note) = ("closing-not-known", "closing-not-known-note");
            return Block::Lead { label, value: self.words.plain(value), note: self.words.plain(note) };
        };
        let planned = closing.planned.as_ref().and_then(|plan| plan.outcome.number("money.profit"));
        let note =
            planned.map_or_else(String::new, |planned| self.against_the_plan(closing, profit, planned));
        Block::Lead { label, value: show::money(profit, self.viewer), note }
    }

    /// In plain words: so much less than planned, most of it because of this and that.
    fn against_the_plan(&self, closing: &Closing, profit: f64, planned: f64) -> String {
        let key = if profit < planned { "closing-less" } else { "closing-more" };
        let by = show::money((profit - planned).abs(), self.viewer);
        let pulls = |cause: &&Cause| (cause.amount < 0.0) == (profit < planned);
        let most: Vec<String> =
            closing.causes.iter().filter(pulls).take(2).map(|cause| self.because(cause)).collect();
        if most.is_empty() {
            return say!(self.words, key, by = by);
        }
        let said = say!(self.words, key, by = by);
        let why = say!(self.words, "closing-most-because", causes = most.join(", "));
        format!("{said} {why}")
    }

    fn because(&self, cause: &Cause) -> String {
        let name = self.cause_name(cause);
        say!(self.words, "closing-because", cause = name, amount = self.signed(cause.amount))
    }

    fn cause_name(&self, cause: &Cause) -> String {
        let rose = cause.from_to.is_some_and(|(planned, came)| came > planned);
        let way = if rose { "more" } else { "less" };
        self.words.say(&format!("cause-{}", cause.name), &[("way", way.into())])
    }

    fn signed(&self, amount: f64) -> String {
        let shown = show::money(amount.abs(), self.viewer);
        say!(self.words, if amount < 0.0 { "amount-below" } else { "amount-above" }, amount = shown)
    }

    /// What keeps the accounts from being whole.
    fn not_all_in(&self, closing: &Closing) -> Option<Caution> {
        let diary = &closing.walk.diary;
        let left = closing.birds_unaccounted();
        let unpriced = advice::account::unpriced(diary);
        let mut items = Vec::new();
        if left > 0.5 {
            let key = if diary.is_closed { "closing-birds-left-closed" } else { "closing-birds-left" };
            items.push(say!(self.words, key, birds = show::quantity(left, Unit::Birds, 0, self.viewer)));
        }
        if !unpriced.is_empty() {
            let days: Vec<String> = unpriced
                .iter()
                .map(|note| {
                    let kind = kind_name(note.kind, self.viewer);
                    say!(
                        self.words,
                        "closing-unpriced-one",
                        day = show::day_short(note.day, self.viewer),
                        kind = kind
                    )
                })
                .collect();
            items.push(say!(self.words, "closing-unpriced", entries = days.join(", ")));
        }
        if let Some(days) = closing.feed_unwritten().filter(|days| *days > 0) {
            let days = show::quantity(days as f64, Unit::Day, 0, self.viewer);
            items.push(say!(self.words, "closing-feed-unwritten", days = days));
        }
        let heads = closing.heads();
        let unwritten = heads.iter().filter(|row| row.planned.is_some() && row.spent.is_none());
        let names: Vec<String> = unwritten.map(|row| self.head_name(row)).collect();
        if !names.is_empty() {
            items.push(say!(self.words, "closing-head-unwritten", heads = names.join(", ")));
        }
        (!items.is_empty()).then(|| Caution {
            level: Level::Care,
            title: self.words.plain("closing-not-whole"),
            items,
        })
    }

    /// From the planned profit to the one that came, cause by cause.
    fn why(&self, closing: &Closing) -> Vec<Block> {
        let planned = closing.planned.as_ref().and_then(|plan| plan.outcome.number("money.profit"));
        let (Some(planned), Some(profit)) = (planned, self.number("closing.profit")) else {
            return Vec::new();
        };
        if closing.causes.is_empty() || !self.viewer.money_shown {
            return Vec::new();
        }
        let table = self.causes_table(closing, planned, profit);
        let alternative = say!(
            self.words,
            "closing-drawing",
            planned = show::money(planned, self.viewer),
            profit = show::money(profit, self.viewer),
            count = closing.causes.len().to_string()
        );
        let words = BarsWords { title: String::new(), alternative: alternative.clone() };
        vec![
            self.heading("closing-why"),
            Block::Drawing(Drawing {
                name: "profit-from-plan",
                svg: Bars { bars: self.steps(closing, planned, profit) }.draw(&words),
                caption: self.words.plain("closing-why-caption"),
                alternative,
                data: table,
                width_percent: 60,
            }),
            self.note("closing-why-note"),
        ]
    }

    fn steps(&self, closing: &Closing, planned: f64, profit: f64) -> Vec<Bar> {
        let total = |key: &str, value: f64| Bar {
            label: self.words.plain(key),
            value,
            start: 0.0,
            shown: show::money(value, self.viewer),
            total: true,
        };
        let mut at = planned;
        let mut bars = vec![total("closing-planned", planned)];
        for cause in &closing.causes {
            bars.push(Bar {
                label: self.cause_name(cause),
                value: cause.amount,
                start: at,
                shown: self.signed(cause.amount),
                total: false,
            });
            at += cause.amount;
        }
        bars.push(total("closing-came", profit));
        bars
    }

    fn causes_table(&self, closing: &Closing, planned: f64, profit: f64) -> Table {
        let total = |key: &str, value: f64| {
            let empty = || String::new();
            vec![self.words.plain(key), show::money(value, self.viewer), empty(), empty()]
        };
        let mut rows = vec![total("closing-planned", planned)];
        rows.extend(closing.causes.iter().map(|cause| self.cause_row(cause)));
        rows.push(total("closing-came", profit));
        Table {
            caption: self.words.plain("closing-why-caption"),
            columns: vec![
                (self.words.plain("column-cause"), Align::Start),
                (self.words.plain("column-did"), Align::End),
                (self.words.plain("column-by-plan"), Align::End),
                (self.words.plain("column-it-was"), Align::End),
            ],
            emphasis: vec![0, rows.len() - 1],
            rows,
            explained_by: vec!["closing.profit"],
        }
    }

    fn cause_row(&self, cause: &Cause) -> Vec<String> {
        let measure = MEASURED.iter().find(|(name, ..)| *name == cause.name);
        let number = |value: f64| match measure {
            Some((_, unit, decimals)) => show::quantity(value, *unit, *decimals, self.viewer),
            None => show::money(value, self.viewer),
        };
        let (from, to) = cause.from_to.map_or_else(Default::default, |(from, to)| (number(from), number(to)));
        vec![self.cause_name(cause), self.signed(cause.amount), from, to]
    }

    fn heads(&self, closing: &Closing) -> Option<Table> {
        let row = |row: &HeadRow| vec![self.head_name(row), self.bare(row.planned), self.bare(row.spent)];
        let rows: Vec<Vec<String>> = closing.heads().iter().map(row).collect();
        (self.viewer.money_shown && !rows.is_empty()).then(|| Table {
            caption: self.words.plain("closing-heads"),
            columns: vec![
                (self.words.plain("column-head"), Align::Start),
                (self.money_title("column-head-planned"), Align::End),
                (self.money_title("column-head-came"), Align::End),
            ],
            rows,
            emphasis: Vec::new(),
            explained_by: vec!["closing.cost"],
        })
    }

    /// An amount without its currency, for a column whose title says it; nothing where there is none.
    fn bare(&self, amount: Option<f64>) -> String {
        amount.map_or_else(String::new, |amount| show::number(amount, self.viewer.currency_exponent))
    }

    fn money_title(&self, key: &str) -> String {
        say!(self.words, key, unit = show::unit_label(Unit::Money, self.viewer))
    }

    fn head_name(&self, row: &HeadRow) -> String {
        self.words.plain(&format!("head-{}", row.head.name()))
    }

    /// Every entry that moved money, with what was in hand after it.
    fn cash_book(&self, closing: &Closing) -> Option<Block> {
        let mut balance = 0.0;
        let lines = closing.cash_book();
        let mut row = |line: &CashLine| {
            balance += line.paid;
            let shown = |amount: f64| self.bare(Some(amount).filter(|amount| *amount != 0.0));
            let (came, went) = (line.paid.max(0.0), (-line.paid).max(0.0));
            vec![
                show::day_short(line.note.day, self.viewer),
                kind_name(line.note.kind, self.viewer),
                shown(came),
                shown(went),
                shown(line.later()),
                self.bare(Some(balance)),
            ]
        };
        let rows: Vec<Vec<String>> = lines.iter().map(&mut row).collect();
        let days = lines.iter().map(|line| Some(line.note.day)).collect();
        let columns = [
            "column-day",
            "column-what",
            "column-came-in",
            "column-went-out",
            "column-later",
            "column-in-hand",
        ];
        let align = |at: usize| if at < 2 { Align::Start } else { Align::End };
        (self.viewer.money_shown && !rows.is_empty()).then(|| Block::Fold {
            title: self.words.plain("closing-cash-book"),
            blocks: vec![Block::DayTable {
                table: Table {
                    caption: self.money_title("closing-cash-book-in"),
                    columns: columns
                        .iter()
                        .enumerate()
                        .map(|(at, key)| (self.words.plain(key), align(at)))
                        .collect(),
                    rows,
                    emphasis: Vec::new(),
                    explained_by: Vec::new(),
                },
                days,
            }],
        })
    }
}
