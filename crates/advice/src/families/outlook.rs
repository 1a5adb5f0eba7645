//! What is likely from here: how heavy, when heavy enough, how many, and how long the feed on hand lasts.

mod birds;
mod shapes;
mod water;

use std::collections::BTreeMap;

use model::outlook::filter::{Law, State};
use model::outlook::futures::{self, Day, FEEDS, Future, Now, Point, Prices};
use model::outlook::hazard::Hazard;
use model::outlook::spread::Spread;
use model::risk;
use quantity::fields::{count, field as asked, number};
use quantity::{Answers, Band, BandKind, Field, Need, Series, Status, Unit};

pub use birds::{HEAVY, LIGHT};
pub use water::WATER;

use super::growing::{TODAY, by_day};
use super::{Family, store};
use crate::outcome::Outcome;
use crate::procedure::{Accuracy, Procedure, Simulated, Simulation};
use crate::rule::{FigureSpec, Input, Origin, always, exact, field, figure, if_known};
use crate::series::{SeriesSpec, Until, Way, recorded};
use crate::store_room::Phase;

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: FIELDS, sums: &[], series: SERIES, shapes: shapes::SHAPES };

/// Where the filter sees the flock beside its standard: level, slope a day, their deviations in percent, and their
/// correlation.
pub(crate) const LEVEL: &str = "ahead.level_percent";
pub(crate) const LEVEL_OFF: &str = "ahead.level_off_percent";
pub(crate) const SLOPE: &str = "ahead.slope_percent";
pub(crate) const SLOPE_OFF: &str = "ahead.slope_off_percent";
pub(crate) const TOGETHER: &str = "ahead.level_with_slope";
/// How level and slope go on.
pub(crate) const DAMPING: &str = "ahead.damping";
pub(crate) const LEVEL_NOISE: &str = "ahead.level_noise_percent";
pub(crate) const SLOPE_NOISE: &str = "ahead.slope_noise_percent";
/// Earlier batches that taught it.
pub(crate) const TAUGHT: &str = "ahead.taught_by";
/// What the batch tells of its losses.
pub(crate) const HAZARD_SHAPE: &str = "ahead.losses_shape";
pub(crate) const HAZARD_RATE: &str = "ahead.losses_rate";
/// What it tells of its appetite, and of heat.
pub(crate) const APPETITE: &str = "ahead.appetite_percent";
pub(crate) const APPETITE_OFF: &str = "ahead.appetite_off_percent";
pub(crate) const APPETITE_AHEAD: &str = "ahead.appetite_far_off_percent";
pub(crate) const TOO_HOT: &str = "ahead.too_hot";
/// What it tells of thirst, and how far its birds differ.
pub(crate) const THIRST: &str = "ahead.thirst_percent";
pub(crate) const THIRST_OFF: &str = "ahead.thirst_off_percent";
pub(crate) const CV: &str = "ahead.cv_percent";
pub(crate) const CV_OFF: &str = "ahead.cv_off_percent";
/// The last day on which enough birds were weighed one by one to tell how far they differ.
pub(crate) const CV_SEEN: &str = "ahead.cv_seen_d";
/// Weights between which a buyer takes a bird.
const LEAST: &str = "sale.bird_least_kg";
const MOST: &str = "sale.bird_most_kg";
/// 1 where today's feed is still to be given, else 0.
pub(crate) const UNFED: &str = "ahead.unfed";
/// What each day from today on is held against.
pub(crate) const STANDARD: &str = "ahead.standard_g";
pub(crate) const FEED_AHEAD: &str = "ahead.feed_a_bird_g";
pub(crate) const LOST_AHEAD: &str = "ahead.lost_percent";
pub(crate) const WATER_AHEAD: &str = "ahead.water_l_per_kg";
/// How far each weighing was believed, percent, and how many deviations it lay from what was expected.
pub(crate) const BELIEVED: &str = "ahead.believed_percent";
pub(crate) const SURPRISE: &str = "ahead.surprise";

/// What was foretold of each day after the weighing before it, with nine of ten weighings.
pub(crate) const SAID: &str = "ahead.said_g";
pub(crate) const SAID_LOW: &str = "ahead.said_low_g";
pub(crate) const SAID_HIGH: &str = "ahead.said_high_g";

const fn any(key: &'static str, unit: Unit, low: f64, high: f64) -> Field {
    asked(key, number(unit, low, high), Need::Optional)
}

static FIELDS: &[Field] = &[
    any(LEVEL, Unit::Percent, -500.0, 500.0),
    any(LEVEL_OFF, Unit::Percent, 0.0, 100.0),
    any(SLOPE, Unit::Percent, -50.0, 50.0),
    any(SLOPE_OFF, Unit::Percent, 0.0, 50.0),
    any(TOGETHER, Unit::One, -1.0, 1.0),
    any(DAMPING, Unit::One, 0.0, 1.0),
    any(LEVEL_NOISE, Unit::Percent, 0.0, 50.0),
    any(SLOPE_NOISE, Unit::Percent, 0.0, 50.0),
    asked(TAUGHT, count(Unit::One, 0.0, 100.0), Need::Optional),
    any(HAZARD_SHAPE, Unit::One, 0.1, 1e6),
    any(HAZARD_RATE, Unit::One, 0.1, 1e6),
    any(APPETITE, Unit::Percent, -100.0, 100.0),
    any(APPETITE_OFF, Unit::Percent, 0.0, 100.0),
    any(APPETITE_AHEAD, Unit::Percent, 0.0, 100.0),
    any(THIRST, Unit::Percent, -100.0, 100.0),
    any(THIRST_OFF, Unit::Percent, 0.0, 100.0),
    any(CV, Unit::Percent, 0.1, 100.0),
    any(CV_OFF, Unit::Percent, 0.0, 100.0),
    asked(CV_SEEN, count(Unit::Day, 0.0, 120.0), Need::Optional),
    any(TOO_HOT, Unit::One, -40.0, 40.0),
    asked(UNFED, count(Unit::One, 0.0, 1.0), Need::Optional),
    by_day(STANDARD, Unit::Gram),
    by_day(FEED_AHEAD, Unit::Gram),
    by_day(LOST_AHEAD, Unit::Percent),
    by_day(WATER_AHEAD, Unit::One),
    by_day(BELIEVED, Unit::Percent),
    by_day(SURPRISE, Unit::One),
    by_day(SAID, Unit::Gram),
    by_day(SAID_LOW, Unit::Gram),
    by_day(SAID_HIGH, Unit::Gram),
];

static FIGURES: &[FigureSpec] = &[FigureSpec {
    id: "outlook.tank_days",
    unit: Unit::Day,
    decimals: 1,
    rules: &[exact(
        "tank-days-ahead",
        "s / W",
        &[field("s", "water.storage_l"), figure("W", "outlook.water_peak")],
        |x| (x[1] > 0.0).then(|| x[0] / x[1]),
    )],
}];

/// A figure by day out of the futures.
const fn ahead(
    id: &'static str,
    unit: Unit,
    source: &'static str,
    made_from: &'static [&'static str],
    work_out: fn(&Answers, &Outcome) -> Option<Series>,
) -> SeriesSpec {
    let way = Way::Procedure { made_from, source, status: Status::OurJudgement, work_out };
    SeriesSpec { id, unit, decimals: 0, first_day: 0, until: Until::Sale, way }
}

const WEIGHED: &[&str] = &["growing.weight", "growing.last_weighed"];

static SERIES: &[SeriesSpec] = &[
    ahead(MEAN_WEIGHT, Unit::Gram, "harvey-1989", WEIGHED, mean_weight),
    ahead(LIGHT, Unit::Gram, "limpert-2001", WEIGHED, birds::light),
    ahead(HEAVY, Unit::Gram, "limpert-2001", WEIGHED, birds::heavy),
    ahead(WATER, Unit::Litre, "water-in-heat", &["growing.water_to_feed"], water::by_day),
    SeriesSpec {
        id: "outlook.said_by_day",
        unit: Unit::Gram,
        decimals: 0,
        first_day: 0,
        until: Until::Today,
        way: Way::Rules(&[exact(
            "weight-foretold",
            "w + 0 * (low + high)",
            &[recorded("w", SAID), recorded("low", SAID_LOW), recorded("high", SAID_HIGH)],
            |x| Some(x[0]),
        )
        .from("harvey-1989", Status::OurJudgement)
        .foretelling(|x| Some((x[1], x[2])))]),
    },
    SeriesSpec {
        id: "outlook.surprise_by_day",
        unit: Unit::One,
        decimals: 1,
        first_day: 0,
        until: Until::Today,
        way: Way::Rules(&[exact("surprise-of-weighing", "n", &[recorded("n", SURPRISE)], |x| Some(x[0]))
            .from("harvey-1989", Status::OurJudgement)]),
    },
    SeriesSpec {
        id: "outlook.believed_by_day",
        unit: Unit::Percent,
        decimals: 0,
        first_day: 0,
        until: Until::Today,
        way: Way::Rules(&[exact("believed-by-filter", "n", &[recorded("n", BELIEVED)], |x| Some(x[0]))
            .from("harvey-1989", Status::OurJudgement)]),
    },
];

/// The mean weight on each day to come.
pub const MEAN_WEIGHT: &str = "outlook.mean_weight";

/// The simulation of a batch on its way.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "days-ahead", source: "harvey-1989", status: Status::OurJudgement },
    inputs: INPUTS,
    figures: SIMULATED,
    applies: always,
    run: |answers, numbers, drawn| {
        let (now, futures) = drawn.keep_futures(futures(answers, numbers)?);
        Some(answer(answers, numbers, now, futures))
    },
};

const fn days_ahead(id: &'static str) -> FigureSpec {
    FigureSpec { id, unit: Unit::Day, decimals: 0, rules: &[] }
}

const fn grams(id: &'static str) -> FigureSpec {
    FigureSpec { id, unit: Unit::Gram, decimals: 0, rules: &[] }
}

static SIMULATED: &[FigureSpec] = &[
    days_ahead("outlook.day_of_target"),
    days_ahead("outlook.feed_left_day"),
    days_ahead("outlook.starter_left_day"),
    days_ahead("outlook.grower_left_day"),
    days_ahead("outlook.finisher_left_day"),
    days_ahead("outlook.last_left_day"),
    FigureSpec { id: "outlook.birds_at_sale", unit: Unit::Birds, decimals: 0, rules: &[] },
    FigureSpec { id: "outlook.weight_at_sale", unit: Unit::Gram, decimals: 0, rules: &[] },
    FigureSpec { id: "outlook.feed_to_sale", unit: Unit::Kilogram, decimals: 0, rules: &[] },
    FigureSpec { id: "outlook.birds_cv", unit: Unit::Percent, decimals: 1, rules: &[] },
    grams("outlook.light_at_sale"),
    grams("outlook.heavy_at_sale"),
    grams("outlook.light_at_target"),
    grams("outlook.heavy_at_target"),
    FigureSpec { id: "outlook.birds_taken", unit: Unit::Percent, decimals: 0, rules: &[] },
    FigureSpec { id: "outlook.water_peak", unit: Unit::Litre, decimals: 0, rules: &[] },
    days_ahead("outlook.tank_short_day"),
];

/// The order that [`known`] and [`At`] take them in.
static INPUTS: &[Input] = &[
    field("d", TODAY),
    figure("N", "growing.alive"),
    figure("t", "space.weight_at_sale"),
    figure("e", "sale.first_age"),
    field("x", LEVEL),
    field("X", LEVEL_OFF),
    field("v", SLOPE),
    field("V", SLOPE_OFF),
    field("r", TOGETHER),
    field("f", DAMPING),
    field("q", LEVEL_NOISE),
    field("Q", SLOPE_NOISE),
    field("a", HAZARD_SHAPE),
    field("b", HAZARD_RATE),
    field("g", APPETITE),
    field("G", APPETITE_OFF),
    field("h", TOO_HOT),
    field("u", UNFED),
    if_known("S", "store.starter_left"),
    if_known("R", "store.grower_left"),
    if_known("F", "store.finisher_left"),
    if_known("L", "store.last_left"),
    Input { symbol: "c", origin: Origin::IfKnown("feed.cost") },
    Input { symbol: "C", origin: Origin::IfKnown("feed.total") },
    Input { symbol: "p", origin: Origin::IfKnown("money.sales") },
    Input { symbol: "P", origin: Origin::IfKnown("sale.live_kg") },
    field("z", "settings.seed"),
    field("m", "settings.futures"),
    field("i", THIRST),
    field("I", THIRST_OFF),
    field("k", CV),
    field("K", CV_OFF),
    field("w", APPETITE_AHEAD),
    Input { symbol: "l", origin: Origin::IfTold(LEAST) },
    Input { symbol: "M", origin: Origin::IfTold(MOST) },
    Input { symbol: "s", origin: Origin::IfTold("water.storage_l") },
];

/// Places among the inputs.
struct At;

impl At {
    const WANTED_KG: usize = 2;
    const SALE: usize = 3;
    const SEED: usize = 26;
    const COUNT: usize = 27;
    const LEAST_KG: usize = 33;
    const MOST_KG: usize = 34;
    const TANK_L: usize = 35;
}

/// What is known, out of the inputs and the days ahead. Days of which anything is missing end it.
fn known(answers: &Answers, x: &[f64]) -> Option<Now> {
    let [today, alive, _, _, level, level_off, slope, slope_off, together, damping, level_noise, slope_noise] =
        *x.first_chunk()?;
    let [shape, rate, appetite, appetite_off, too_hot_c, unfed] = *x.get(12..)?.first_chunk()?;
    let left: [f64; FEEDS] = *x.get(18..)?.first_chunk()?;
    let [feed_cost, feed, sales, live_kg] = *x.get(22..)?.first_chunk()?;
    let [thirst, thirst_off, cv, cv_off, appetite_ahead] = *x.get(28..)?.first_chunk()?;
    let share = |percent: f64| percent / 100.0;
    let (level_off, slope_off) = (share(level_off), share(slope_off));
    let days = days(answers);
    let after: Vec<Day> = days.range(today as i32 + 1..).map(|(_, day)| *day).collect();
    let is_priced = feed > 0.0 && live_kg > 0.0 && feed_cost > 0.0 && sales > 0.0;
    (!after.is_empty() && alive > 0.0).then(|| Now {
        state: State {
            level: share(level),
            slope: share(slope),
            level_variance: level_off * level_off,
            covariance: together * level_off * slope_off,
            slope_variance: slope_off * slope_off,
        },
        law: Law {
            damping,
            level_noise: share(level_noise).powi(2),
            slope_noise: share(slope_noise).powi(2),
        },
        alive,
        hazard: Hazard { shape, rate },
        appetite: (share(appetite), share(appetite_off)),
        appetite_ahead: share(appetite_ahead),
        thirst: (share(thirst), share(thirst_off)),
        spread: Spread { ln_cv: share(cv).ln(), variance: share(cv_off).powi(2) },
        too_hot_c,
        // More given than ever came is feed that nobody wrote down: there is none of it.
        store_kg: left.map(|left| left.max(0.0)),
        unfed: days.get(&(today as i32)).copied().filter(|_| unfed > 0.0),
        first_day: today as i32 + 1,
        days: after,
        prices: is_priced.then(|| Prices { feed_kg: feed_cost / feed, live_kg: sales / live_kg }),
    })
}

fn days(answers: &Answers) -> BTreeMap<i32, Day> {
    let outcome = Outcome::of(answers, Phase::ALL.map(Phase::last_day_figure));
    let last = Phase::ALL.map(|phase| outcome.number(phase.last_day_figure()));
    // A feed that the plan does not name has no last day; past the last of all, the last goes on.
    let of = |day: i32| {
        let is_eaten = |last: &Option<f64>| last.is_some_and(|last| f64::from(day) <= last);
        let named = last.iter().rposition(Option::is_some).unwrap_or_default();
        last.iter().position(is_eaten).unwrap_or(named)
    };
    let table = |key: &str| answers.by_day(key).cloned().unwrap_or_default();
    let (feed, lost, water) = (table(FEED_AHEAD), table(LOST_AHEAD), table(WATER_AHEAD));
    let day = |(day, weight): (i32, f64)| {
        let (feed_g, lost) = (*feed.get(&day)?, *lost.get(&day)?);
        let water_l_a_kg = water.get(&day).copied();
        Some((day, Day { standard_g: weight, feed_g, lost_share: lost / 100.0, feed: of(day), water_l_a_kg }))
    };
    table(STANDARD).into_iter().map_while(day).collect()
}

fn futures(answers: &Answers, x: &[f64]) -> Option<(Now, Vec<Future>)> {
    let now = known(answers, x)?;
    let futures = futures::run(*x.get(At::SEED)? as u64, *x.get(At::COUNT)? as u32, &now);
    Some((now, futures))
}

/// The middle of a column of futures with nine of ten; `None` where the middle is beyond the days looked at.
pub(super) fn middle(column: &[f64], beyond: Option<f64>) -> Option<Simulated> {
    let summary = risk::summary(column)?;
    let within = beyond.is_none_or(|beyond| summary.p50 < beyond);
    let (low, high) = (summary.p05, summary.p95);
    let band = (low < high).then_some(Band { low, high, kind: BandKind::Prediction90 });
    within.then_some((summary.p50, band, Accuracy::StandardError(1.25 * summary.mean_standard_error)))
}

fn column(futures: &[Future], read: impl Fn(&Future) -> Option<f64>) -> Vec<f64> {
    futures.iter().filter_map(read).collect()
}

/// The figures in their order.
fn answer(answers: &Answers, x: &[f64], now: &Now, futures: &[Future]) -> Vec<Option<Simulated>> {
    let first = now.first_day;
    let beyond = f64::from(first) + now.days.len() as f64;
    let when = |holds: &dyn Fn(&Point) -> bool| {
        middle(&column(futures, |future| Some(futures::first_day(first, future, holds))), Some(beyond))
    };
    let (wanted_g, sale) = (1000.0 * x[At::WANTED_KG], x[At::SALE] as i32);
    let at_sale = usize::try_from(sale - first).ok();
    let on_sale = |read: &dyn Fn(&Point) -> f64| {
        middle(&column(futures, |future| future.days.get(at_sale?).map(read)), None)
    };
    let came = store::FEEDS.each_ref().map(|feed| answers.number(feed.came).is_some());
    let [starter, grower, finisher, last] =
        [0, 1, 2, 3].map(|at| came[at].then(|| when(&|point: &Point| point.left_kg[at] < 0.0)).flatten());
    let all = came.contains(&true).then(|| when(&|point: &Point| point.all_left_kg() < 0.0)).flatten();
    let eaten =
        |future: &Future| Some(future.days.get(..=at_sale?)?.iter().map(|point| point.eaten_kg).sum::<f64>());
    let asked = birds::Asked { wanted_g, at_sale, least_kg: x[At::LEAST_KG], most_kg: x[At::MOST_KG] };
    let mut said = vec![
        when(&|point| point.weight_g >= wanted_g),
        all,
        starter,
        grower,
        finisher,
        last,
        on_sale(&|point| point.birds),
        on_sale(&|point| point.weight_g),
        middle(&column(futures, eaten), None),
    ];
    said.extend(birds::answer(futures, &asked));
    said.extend(water::answer(now, futures, at_sale, x[At::TANK_L]));
    said
}

/// Only where the futures were asked for: a page that does not look ahead does not pay for them.
fn mean_weight(_: &Answers, outcome: &Outcome) -> Option<Series> {
    let (now, futures) = outcome.drawn().futures()?;
    birds::days(MEAN_WEIGHT, now, |at| column(futures, |future| Some(future.days.get(at)?.weight_g)))
}
