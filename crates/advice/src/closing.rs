//! The accounts of a batch: what it came to, and why that is not what the adopted plan expected.

use book::{BatchId, BookState, Slot, Subject};
use model::causes::{in_whole_units, shares};
use quantity::{Answers, CivilDay, Currency, Money};

use crate::account::{self, CashLine, Head};
use crate::diary::planned;
use crate::families::{closing as fields, growing, store};
use crate::outcome::Outcome;
use crate::plan::{self, Plan};
use crate::side_by_side::SideBySide;
use crate::walk::Walk;

/// The accounts of a batch, as the book has them on a day.
pub struct Closing {
    /// The batch's book, with its figures.
    pub walk: Walk,
    /// The plan as it was adopted; `None` where none was.
    pub planned: Option<Plan>,
    /// Why the profit is another than planned, the largest first; empty while one of the two is not known.
    pub causes: Vec<Cause>,
    /// This batch and those before it in its house.
    pub beside: SideBySide,
}

/// One reason for the difference.
#[derive(Clone, Debug, PartialEq)]
pub struct Cause {
    /// Which; names a message.
    pub name: &'static str,
    /// What it did to the profit, in whole smallest units of the farm's money; below nothing where it cost.
    pub units: i64,
    /// The same in the farm's money.
    pub amount: f64,
    /// What it was by the plan and what it became, where it is one number.
    pub from_to: Option<(f64, f64)>,
}

/// A head of the accounts, planned and as it came.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadRow {
    /// The head.
    pub head: Head,
    /// By the plan; `None` where it planned nothing.
    pub planned: Option<f64>,
    /// As it came; `None` where nothing was written.
    pub spent: Option<f64>,
}

impl Closing {
    /// Reads a batch's accounts.
    pub fn read(state: &BookState, batch: BatchId, on: CivilDay) -> Closing {
        let walk = Walk::read(state, batch, on);
        let adopted = state.on_day(on, batch);
        let body = adopted.answers(&Slot::of("plan-adopted", Subject::Batch(batch)));
        let planned = body.map(|body| plan::of_book(planned(body)));
        let causes = planned.as_ref().map_or_else(Vec::new, |planned| causes(&walk, planned));
        let beside = SideBySide::read(state, batch, on);
        Closing { walk, planned, causes, beside }
    }

    /// What was planned and spent under each head, of those that have either.
    pub fn heads(&self) -> Vec<HeadRow> {
        let row = |head: Head| HeadRow {
            head,
            planned: self.planned.as_ref().and_then(|plan| planned_cost(plan, head)),
            spent: account::spent_on(&self.walk.diary, head),
        };
        let has_some = |row: &HeadRow| row.planned.is_some() || row.spent.is_some();
        Head::ALL.into_iter().map(row).filter(has_some).collect()
    }

    /// Everything that moved money, in the order of days.
    pub fn cash_book(&self) -> Vec<CashLine<'_>> {
        self.walk.diary.notes.iter().filter_map(account::cash_line).collect()
    }

    /// Days up to the last sale on which no feed was written, that day apart; `None` while nothing was sold.
    pub fn feed_unwritten(&self) -> Option<usize> {
        let answers = &self.walk.diary.answers;
        let last = answers.number(fields::LAST_AGE)? as i32;
        let written = answers.by_day(growing::FEED);
        let is_gap = |age: &i32| written.is_none_or(|days| !days.contains_key(age));
        Some((0..last).filter(is_gap).count())
    }

    /// Birds that are still there by the book, though the batch is closed or all are said to be sold.
    pub fn birds_unaccounted(&self) -> f64 {
        self.walk.plan.outcome.number("growing.alive").unwrap_or_default()
    }
}

/// What a plan spends under a head; the same amounts that its total cost adds up.
fn planned_cost(plan: &Plan, head: Head) -> Option<f64> {
    planned_for(&plan.answers, &plan.outcome, head)
}

/// The figures that [`planned_for`] reads.
pub(crate) const PLANNED: [&str; 11] = [
    "money.chicks",
    "feed.cost",
    "litter.cost",
    "brooding.fuel_cost",
    "brooding.spare_cost",
    "brooding.second_fuel_cost",
    "brooding.second_spare_cost",
    "disinfectant.cost",
    "guard.cost",
    "money.equipment",
    "money.interest",
];

/// The same, of a plan's answers and figures.
pub(crate) fn planned_for(answers: &Answers, outcome: &Outcome, head: Head) -> Option<f64> {
    let cost = match head {
        Head::Chicks => outcome.number("money.chicks"),
        Head::Feed => outcome.number("feed.cost"),
        Head::Litter => outcome.number("litter.cost"),
        Head::Fuel => {
            let besides = ["brooding.spare_cost", "brooding.second_fuel_cost", "brooding.second_spare_cost"];
            let besides: f64 = besides.iter().filter_map(|id| outcome.number(id)).sum();
            outcome.number("brooding.fuel_cost").map(|fuel| fuel + besides)
        }
        Head::Disinfectant => outcome.number("disinfectant.cost"),
        Head::Equipment => {
            let bought = ["guard.cost", "money.equipment"];
            Some(bought.iter().filter_map(|id| outcome.number(id)).sum())
        }
        Head::Interest => outcome.number("money.interest"),
        Head::Vaccines => answers.number("costs.vaccines"),
        Head::Medicine => answers.number("costs.medicine"),
        Head::Labour => answers.number("costs.labour"),
        Head::OwnLabour => answers.number("costs.own_labour"),
        Head::Transport => answers.number("costs.transport"),
        Head::Power => answers.number("costs.power"),
        Head::House => answers.number("costs.house"),
        Head::Other => answers.number("costs.other"),
    };
    cost.filter(|cost| *cost > 0.0)
}

/// The factors of income and of the cost of chicks and feed: income is chicks × survival × weight × price, feed is chicks ×
/// survival × weight × feed a kilogram × its price, chicks are chicks × price of one.
#[derive(Clone, Copy)]
struct Factors {
    chicks: f64,
    survival: f64,
    weight_kg: f64,
    sale_price: f64,
    feed_a_kg: f64,
    feed_price: f64,
    chick_price: f64,
    litter: f64,
}

impl Factors {
    fn planned(plan: &Plan) -> Option<Factors> {
        let of = |id: &str| plan.outcome.number(id).filter(|number| *number > 0.0);
        let chicks = plan.answers.number("batch.chicks")?;
        let (birds, live_kg, feed_kg) = (of("sale.birds")?, of("sale.live_kg")?, of("feed.total")?);
        let litter = plan.answers.number("prices.litter_sold").unwrap_or_default();
        Some(Factors {
            chicks,
            survival: birds / chicks,
            weight_kg: live_kg / birds,
            sale_price: (plan.outcome.number("money.income")? - litter) / live_kg,
            feed_a_kg: feed_kg / live_kg,
            feed_price: of("feed.cost")? / feed_kg,
            chick_price: of("money.chicks")? / chicks,
            litter,
        })
    }

    fn of_book(walk: &Walk) -> Option<Factors> {
        let answers = &walk.diary.answers;
        let of = |key: &str| answers.number(key).filter(|number| *number > 0.0);
        let (chicks, birds) = (of(growing::PLACED)?, of(fields::SOLD)?);
        let live_kg = walk.plan.outcome.number("closing.sold_kg").filter(|kg| *kg > 0.0)?;
        let feed_kg: f64 = store::FEEDS.iter().filter_map(|feed| answers.number(feed.came)).sum();
        let feed = account::spent_on(&walk.diary, Head::Feed).filter(|_| feed_kg > 0.0)?;
        Some(Factors {
            chicks,
            survival: birds / chicks,
            weight_kg: live_kg / birds,
            sale_price: answers.number(fields::INCOME_BIRDS)? / live_kg,
            feed_a_kg: feed_kg / live_kg,
            feed_price: feed / feed_kg,
            chick_price: account::spent_on(&walk.diary, Head::Chicks)? / chicks,
            litter: answers.number(fields::INCOME_LITTER).unwrap_or_default(),
        })
    }

    fn income(&self) -> [f64; 4] {
        [self.chicks, self.survival, self.weight_kg, self.sale_price]
    }

    fn feed(&self) -> [f64; 5] {
        [self.chicks, self.survival, self.weight_kg, self.feed_a_kg, self.feed_price]
    }
}

/// The cause that a head of cost is called by; `None` for chicks and feed, which are split into number and price.
fn cause_of(head: Head) -> Option<&'static str> {
    (!matches!(head, Head::Chicks | Head::Feed)).then(|| head.name())
}

fn causes(walk: &Walk, planned: &Plan) -> Vec<Cause> {
    let profits = planned.outcome.number("money.profit").zip(walk.plan.outcome.number("closing.profit"));
    let factors = Factors::planned(planned).zip(Factors::of_book(walk));
    let (Some((before, after)), Some((plan, book))) = (profits, factors) else { return Vec::new() };
    let mut all = of_factors(&plan, &book);
    for head in Head::ALL {
        let (planned, spent) = (planned_cost(planned, head), account::spent_on(&walk.diary, head));
        if let (Some(name), true) = (cause_of(head), planned.is_some() || spent.is_some()) {
            let (planned, spent) = (planned.unwrap_or_default(), spent.unwrap_or_default());
            all.push((name, planned - spent, Some((planned, spent))));
        }
    }
    all.push(("litter-sold", book.litter - plan.litter, Some((plan.litter, book.litter))));
    to_the_cent(all, walk.diary.answers.currency(), before, after)
}

type Unrounded = (&'static str, f64, Option<(f64, f64)>);

fn of_factors(plan: &Factors, book: &Factors) -> Vec<Unrounded> {
    let income = shares(&plan.income(), &book.income());
    let feed = shares(&plan.feed(), &book.feed());
    let chick = shares(&[plan.chicks, plan.chick_price], &[book.chicks, book.chick_price]);
    vec![
        ("chicks-placed", income[0] - feed[0] - chick[0], Some((plan.chicks, book.chicks))),
        ("survival", income[1] - feed[1], Some((100.0 * plan.survival, 100.0 * book.survival))),
        ("weight", income[2] - feed[2], Some((plan.weight_kg, book.weight_kg))),
        ("sale-price", income[3], Some((plan.sale_price, book.sale_price))),
        ("feed-amount", -feed[3], Some((plan.feed_a_kg, book.feed_a_kg))),
        ("feed-price", -feed[4], Some((plan.feed_price, book.feed_price))),
        ("chick-price", -chick[1], Some((plan.chick_price, book.chick_price))),
    ]
}

/// The causes in whole smallest units, the largest first; those that did nothing are left out.
fn to_the_cent(all: Vec<Unrounded>, currency: Currency, before: f64, after: f64) -> Vec<Cause> {
    let units = |amount: f64| Money::nearest(amount, currency).map(|money| money.minor());
    let Some((before, after)) = units(before).zip(units(after)) else { return Vec::new() };
    let amounts: Vec<f64> = all.iter().map(|(_, amount, _)| *amount).collect();
    let whole = in_whole_units(&amounts, currency.exponent(), after - before);
    let unit = 10_f64.powi(i32::from(currency.exponent()));
    let mut causes: Vec<Cause> = all
        .into_iter()
        .zip(whole)
        .map(|((name, _, from_to), units)| Cause { name, units, amount: units as f64 / unit, from_to })
        .filter(|cause| cause.units != 0)
        .collect();
    causes.sort_by_key(|cause| std::cmp::Reverse(cause.units.abs()));
    causes
}
