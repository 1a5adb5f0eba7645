//! When to sell: what the batch earns by the day its birds go, counted from the futures of the outlook.

use std::collections::BTreeMap;

pub use model::outlook::futures::Luck;
use model::outlook::futures::{self, Future, Now};
use model::scenarios::SoldBy;
pub use model::selling::{SaleDay, Step};
use model::selling::{Sales, Terms, profit_on, to_thin};
use model::sensitivity;
pub use model::sensitivity::Share;
use quantity::fields::{count, field as asked, number};
use quantity::{Answers, Band, BandKind, Field, Need, Series, Status, Unit};

use super::growing::by_day;
use super::money::by_head;
use super::{Family, outlook, risk};
use crate::outcome::Outcome;
use crate::procedure::{Accuracy, Drawn, Procedure, Simulated, Simulation};
use crate::rule::{FigureSpec, Input, exact, field, figure, if_known, if_told};
use crate::series::{SeriesSpec, Until, Way};

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: FIELDS, sums: &[], series: SERIES, shapes: &[] };

/// What the batch has cost or will cost whatever the day, all feed that came with it.
pub(crate) const SPENT: &str = "selling.spent";
/// What it has brought.
pub(crate) const GOT: &str = "selling.got";
/// What a kilogram of the feed on hand cost.
pub(crate) const STOCK_PRICE: &str = "selling.stock_price_kg";
/// Money in hand.
pub(crate) const CASH: &str = "selling.cash";
/// The price that was seen last, in what birds are sold by.
pub(crate) const SEEN_PRICE: &str = "selling.seen_price";
/// The day of age on which the plan sells its last bird.
pub(crate) const PLANNED_D: &str = "selling.planned_d";
/// 1 on days on which a wait after a medicine, vaccine or feed holds the birds back.
pub(crate) const BLOCKED: &str = "selling.blocked";
/// What the floor may carry on each day.
pub(crate) const LIMIT: &str = "selling.limit_kg_m2";

const fn money_field(key: &'static str) -> Field {
    asked(key, number(Unit::Money, -1e12, 1e12), Need::Optional)
}

static FIELDS: &[Field] = &[
    money_field(SPENT),
    money_field(GOT),
    money_field(STOCK_PRICE),
    money_field(CASH),
    asked(SEEN_PRICE, number(Unit::Money, 0.01, 1e9), Need::Optional),
    asked(PLANNED_D, count(Unit::Day, 1.0, 200.0), Need::Optional),
    by_day(BLOCKED, Unit::One),
    by_day(LIMIT, Unit::KilogramPerSquareMetre),
];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "sale.price",
        unit: Unit::Money,
        decimals: 2,
        rules: &[
            exact("price-seen-last", "p", &[field("p", SEEN_PRICE)], |x| Some(x[0]))
                .when(|answers| answers.number(SEEN_PRICE).is_some())
                .from("grower", Status::Told),
            exact("price-of-a-bird-planned", "p", &[field("p", "prices.sale_per_bird")], |x| Some(x[0]))
                .when(|answers| is_on_its_way(answers) && by_head(answers))
                .from("grower", Status::Told),
            exact("price-of-a-kilogram-planned", "p", &[field("p", "prices.sale_per_kg")], |x| Some(x[0]))
                .when(is_on_its_way)
                .from("grower", Status::Told),
        ],
    },
    FigureSpec {
        id: "sale.day_cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "cost-of-a-day",
            "(l + w + e) / max(1, a)",
            &[
                if_told("l", "costs.labour"),
                if_told("w", "costs.own_labour"),
                if_told("e", "costs.power"),
                field("a", PLANNED_D),
            ],
            |x| model::budget::per(x[0] + x[1] + x[2], x[3].max(1.0)),
        )],
    },
];

/// The profit by day of sale.
pub const PROFIT: &str = "sale.profit_by_day";

static SERIES: &[SeriesSpec] = &[SeriesSpec {
    id: PROFIT,
    unit: Unit::Money,
    decimals: 0,
    first_day: 0,
    until: Until::Sale,
    way: Way::Procedure {
        made_from: &["sale.price", "sale.day_cost"],
        source: "perrin-1972",
        status: Status::OurJudgement,
        work_out: |_, outcome| profit_by_day(outcome),
    },
}];

/// Every day of the futures as a day of sale.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "day-of-sale", source: "perrin-1972", status: Status::OurJudgement },
    inputs: INPUTS,
    figures: SIMULATED,
    applies: is_on_its_way,
    run: |answers, numbers, drawn| {
        let selling = drawn.keep_selling(Selling::of(answers, numbers, drawn)?);
        Some(selling.figures())
    },
};

/// What is told of the profits on the best day, in place of those of the plan.
pub static RISK: Simulation = Simulation {
    procedure: Procedure { name: "futures-on-best-day", source: "perrin-1972", status: Status::OurJudgement },
    inputs: &[
        figure("d", "sale.best_day_batch"),
        field("z", "settings.seed"),
        field("m", "settings.futures"),
    ],
    figures: risk::FIGURES,
    applies: is_on_its_way,
    run: |_, numbers, drawn| risk::answer(drawn.selling()?.sales.profits(numbers[0] as i32)?),
};

fn is_on_its_way(answers: &Answers) -> bool {
    answers.number(SPENT).is_some()
}

static SIMULATED: &[FigureSpec] = &[
    FigureSpec { id: "sale.best_day_batch", unit: Unit::Day, decimals: 0, rules: &[] },
    FigureSpec { id: "sale.best_day_house", unit: Unit::Day, decimals: 0, rules: &[] },
    FigureSpec { id: "sale.profit_best", unit: Unit::Money, decimals: 0, rules: &[] },
    FigureSpec { id: "sale.profit_best_house", unit: Unit::Money, decimals: 0, rules: &[] },
    FigureSpec { id: "sale.cash_low_point", unit: Unit::Money, decimals: 0, rules: &[] },
];

/// The order that [`Selling::of`] takes them in. The first draws the futures.
static INPUTS: &[Input] = &[
    if_known("N", "outlook.birds_at_sale"),
    figure("p", "sale.price"),
    field("S", SPENT),
    field("G", GOT),
    field("c", STOCK_PRICE),
    if_known("w", "sale.day_cost"),
    field("C", CASH),
    if_told("r", "cash.interest_percent"),
    if_known("D", "house.empty_days"),
    if_known("A", "space.floor_area"),
    field("z", "settings.seed"),
    field("m", "settings.futures"),
];

/// Pairs of futures that tell what matters most.
const PAIRS: usize = 500;

/// Every day of the futures as a day of sale, with what is chosen of it.
pub struct Selling {
    /// The days.
    pub sales: Sales,
    /// The money it goes by.
    pub terms: Terms,
    /// The usable floor, m²; 0 where it is not known.
    pub floor_m2: f64,
    /// What the floor may carry on each day, kg/m².
    pub limits: BTreeMap<i32, f64>,
    /// Days on which a wait holds the birds back.
    pub blocked: Vec<i32>,
    /// What matters most for the profit on the best day, with its shares, the greatest first; empty where no day is allowed.
    pub matters: Vec<(Luck, Share)>,
    /// Whether no day that is free of waits keeps within the limit of the floor.
    pub is_full: bool,
}

/// Birds to sell before the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thinning {
    /// So many.
    pub birds: f64,
    /// The day of age by whose end they go.
    pub on: i32,
    /// The day of age until which the others fit.
    pub until: i32,
}

impl Selling {
    fn of(answers: &Answers, x: &[f64], drawn: &Drawn) -> Option<Selling> {
        let [_, price, spent, got, stock_price, day_cost, cash, interest, empty_days, floor_m2, seed, _] = *x
        else {
            return None;
        };
        let (now, futures) = drawn.futures()?;
        let sold_by = if by_head(answers) { SoldBy::Head } else { SoldBy::Kilogram };
        let stock_kg: f64 = now.store_kg.iter().sum();
        let terms = Terms {
            sold_by,
            price,
            spent: spent - stock_kg * stock_price,
            got,
            stock_price,
            day_cost,
            cash,
            interest: interest / 100.0,
            empty_days,
        };
        let sales = Sales::of(futures, now, &terms)?;
        let table = |key: &str| answers.by_day(key).cloned().unwrap_or_default();
        let blocked =
            table(BLOCKED).into_iter().filter(|(_, held)| *held > 0.0).map(|(day, _)| day).collect();
        let mut selling = Selling {
            sales,
            terms,
            floor_m2,
            limits: table(LIMIT),
            blocked,
            matters: Vec::new(),
            is_full: false,
        };
        let free = |day: &&SaleDay| !selling.is_blocked(day.day);
        selling.is_full = !selling.sales.days.iter().filter(free).any(|day| selling.fits(day));
        selling.matters = selling.what_matters(seed as u64, now, futures).unwrap_or_default();
        Some(selling)
    }

    /// Whether birds may not be sold on a day of age because of something that was given.
    pub fn is_blocked(&self, day: i32) -> bool {
        self.blocked.contains(&day)
    }

    /// What the floor carries on a day, kg/m²; `None` while the floor is not known.
    pub fn density(&self, day: &SaleDay) -> Option<f64> {
        model::budget::per(day.birds * day.weight_g / 1000.0, self.floor_m2)
    }

    /// Whether the birds that are likely on a day still fit.
    pub fn fits(&self, day: &SaleDay) -> bool {
        let density = self.density(day).zip(self.limits.get(&day.day));
        density.is_none_or(|(density, limit)| density <= *limit)
    }

    /// Whether a day may be chosen: free of waits, and within the limit of the floor. Where no such day is left, the first that
    /// is free of waits: they must not grow further past the limit.
    pub fn may_be_chosen(&self, day: i32) -> bool {
        if self.is_blocked(day) {
            return false;
        }
        if self.is_full {
            return self
                .sales
                .days
                .iter()
                .find(|one| !self.is_blocked(one.day))
                .is_some_and(|one| one.day == day);
        }
        self.sales.on(day).is_some_and(|day| self.fits(day))
    }

    /// The best day of those that may be chosen.
    pub fn best(&self) -> Option<&SaleDay> {
        self.sales.best(|day| self.may_be_chosen(day))
    }

    /// The best day for the house; `None` while nobody knows how long it stands empty.
    pub fn best_for_house(&self) -> Option<&SaleDay> {
        let empty_days = Some(self.terms.empty_days).filter(|days| *days > 0.0)?;
        self.sales.best_for_house(empty_days, |day| self.may_be_chosen(day))
    }

    /// The days that are as good for the house as the best.
    pub fn as_good_for_house(&self) -> Vec<i32> {
        self.sales.as_good_for_house(self.terms.empty_days, |day| self.may_be_chosen(day))
    }

    /// The best day for the house, the floor left out of it: as if birds could be thinned.
    fn best_on_any_floor(&self) -> Option<&SaleDay> {
        self.sales.best_for_house(self.terms.empty_days, |day| !self.is_blocked(day))
    }

    /// How many to sell while all fit, or else at once, so that the others may stay until the day that would be best if the floor
    /// carried all; `None` where that needs no thinning, or the floor is not known.
    pub fn thinning(&self) -> Option<Thinning> {
        let free = |day: &&SaleDay| !self.is_blocked(day.day);
        let days = || self.sales.days.iter().filter(free);
        let on = days().take_while(|day| self.fits(day)).last().or_else(|| days().next())?;
        let until = self.best_on_any_floor().filter(|until| until.day > on.day)?;
        let kept = model::budget::per(until.birds, on.birds)?;
        let limit = *self.limits.get(&until.day)?;
        let floor_m2 = Some(self.floor_m2).filter(|floor| *floor > 0.0)?;
        let birds = to_thin(on.birds, kept, until.weight_g / 1000.0, limit, floor_m2)?;
        (birds > 0.0 && birds < on.birds).then_some(Thinning { birds, on: on.day, until: until.day })
    }

    /// What a bird that waits costs on average over a day: feed, work and power, interest; `None` for a day without a day before.
    pub fn cost_of_waiting(&self, day: &SaleDay) -> Option<f64> {
        let step = day.step?;
        model::budget::per(step.feed + step.day_cost + step.interest, day.birds)
    }

    /// The figures in their order.
    fn figures(&self) -> Vec<Option<Simulated>> {
        let (batch, house) = (self.best(), self.best_for_house());
        let own_days = self.sales.own_best_days(|day| self.may_be_chosen(day));
        let own = batch.and_then(|_| outlook::middle(&own_days, None));
        let day = |day: &SaleDay| {
            let (_, band, _) = own?;
            Some((f64::from(day.day), band, Accuracy::Bound(0.0)))
        };
        let profit = |day: &SaleDay| {
            let band = Band { low: day.low, high: day.high, kind: BandKind::Prediction90 };
            (day.mean, (day.low < day.high).then_some(band), Accuracy::StandardError(day.standard_error))
        };
        let cash = batch.and_then(|day| outlook::middle(self.sales.cash(day.day)?, None));
        vec![
            batch.and_then(day),
            house.map(|day| (f64::from(day.day), self.as_good(), Accuracy::Bound(0.0))),
            batch.map(profit),
            house.map(profit),
            cash,
        ]
    }

    /// From the first to the last of the days that are as good for the house.
    fn as_good(&self) -> Option<Band> {
        let days = self.as_good_for_house();
        let (low, high) = (f64::from(*days.first()?), f64::from(*days.last()?));
        (low < high).then_some(Band { low, high, kind: BandKind::AsGood })
    }

    fn what_matters(&self, seed: u64, now: &Now, futures: &[Future]) -> Option<Vec<(Luck, Share)>> {
        let day = self.best()?.day;
        let at = usize::try_from(day - now.first_day).ok()?;
        let pairs = PAIRS.min(futures.len() / 2);
        let (first, rest) = self.sales.profits(day)?.split_at_checked(pairs)?;
        let second = rest.get(..pairs)?;
        let until = Now { days: now.days.get(..=at)?.to_vec(), ..now.clone() };
        let mixed = |luck: Luck| -> Option<Vec<f64>> {
            let of = |number: u32| {
                let future = futures::with_luck_of(seed, number, number + pairs as u32, luck, &until);
                profit_on(&future, at, &until, &self.terms)
            };
            (0..pairs as u32).map(of).collect()
        };
        let share = |luck: Luck| {
            let mixed = mixed(luck)?;
            Some((luck, sensitivity::Answers { first, second, mixed: &mixed }.share()?))
        };
        let mut shares: Vec<(Luck, Share)> = Luck::ALL.into_iter().filter_map(share).collect();
        shares.sort_by(|one, other| other.1.with_others.total_cmp(&one.1.with_others));
        Some(shares)
    }
}

fn profit_by_day(outcome: &Outcome) -> Option<Series> {
    let days = &outcome.drawn().selling()?.sales.days;
    let of = |read: fn(&SaleDay) -> f64| days.iter().map(read).collect::<Vec<f64>>();
    Some(Series {
        id: PROFIT,
        index: of(|day| f64::from(day.day)),
        values: of(|day| day.mean),
        low: of(|day| day.low),
        high: of(|day| day.high),
        kind: Some(BandKind::Prediction90),
    })
}
