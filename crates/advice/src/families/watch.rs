//! What a running batch is watched by: what is expected of a day for age, birds and heat, the likely range around it, and the
//! alarm's memory.

use model::surprise::{Seen, Step};
use model::watching::{self, Watched};
use quantity::{Answers, BandKind, Field, Series, Status, Unit};

use super::Family;
use super::growing::by_day;
use crate::outcome::Outcome;
use crate::rule::exact;
use crate::series::{DayInput, DayOrigin, DayRule, SeriesSpec, Until, Way, age, given, recorded, same};

/// The family.
pub static FAMILY: Family = Family { figures: &[], fields: FIELDS, sums: &[], series: SERIES, shapes: &[] };

/// The dampest air of a day.
pub(crate) const DAMPEST: &str = "book.dampest_percent";
/// The wettest handful of litter of a day: 0 falls apart or is dust, 1 holds together, 2 cakes.
pub(crate) const LITTER: &str = "book.litter_grade";
/// The spread of weights of a weighing bird by bird, with how many birds it is of.
pub(crate) const SPREAD: &str = "book.spread_percent";
pub(crate) const SPREAD_BIRDS: &str = "book.spread_birds";
/// The weight that the plan expected on the day of the weighing before, by day of weighing.
pub(crate) const EXPECTED_BEFORE: &str = "expected.weight_before_g";

static FIELDS: &[Field] = &[
    by_day(DAMPEST, Unit::Percent),
    by_day(LITTER, Unit::One),
    by_day(SPREAD, Unit::Percent),
    by_day(SPREAD_BIRDS, Unit::Birds),
    by_day(EXPECTED_BEFORE, Unit::Gram),
];

/// How something seen is held against what is expected of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Scale {
    /// By how many times as much it is: its logarithm counts.
    Times,
    /// By the difference.
    Apart,
}

/// A signal that is watched by its surprise: what is seen, what is expected, and the figures that come of it.
pub struct Signal {
    /// How it is watched; names it.
    pub watched: &'static Watched,
    /// The figure by day that is seen.
    pub seen: &'static str,
    /// The figure by day that is expected by plan; `None` where a batch is held against a usual value and itself.
    pub expected: Option<&'static str>,
    /// The figure by day of what is likely.
    pub likely: &'static str,
    /// The figure by day of the alarm's memory.
    pub memory: &'static str,
    scale: Scale,
    /// What a value is divided by before it is taken: 100 for percent that are watched as shares.
    divisor: f64,
    /// The first day of age that counts: on the day they come chicks eat and drink for a part of the day only.
    first_day: i32,
}

/// The signals in the order of [`watching::WATCHED`].
pub static SIGNALS: [Signal; 11] = [
    times(
        &watching::WATER,
        "growing.water_by_day",
        "watch.water_expected_by_day",
        "watch.water_likely_by_day",
        "watch.water_memory_by_day",
    ),
    times(
        &watching::FEED,
        "growing.feed_by_day",
        "watch.feed_expected_by_day",
        "watch.feed_likely_by_day",
        "watch.feed_memory_by_day",
    ),
    times(
        &watching::WATER_TO_FEED,
        "growing.water_to_feed_by_day",
        "watch.water_to_feed_expected_by_day",
        "watch.water_to_feed_likely_by_day",
        "watch.water_to_feed_memory_by_day",
    ),
    apart(
        &watching::COLD,
        "growing.coldest_by_day",
        Some("expected.temperature_by_day"),
        "watch.cold_likely_by_day",
        "watch.cold_memory_by_day",
    ),
    apart(
        &watching::WARM,
        "growing.warmest_by_day",
        Some("expected.temperature_by_day"),
        "watch.warm_likely_by_day",
        "watch.warm_memory_by_day",
    ),
    apart(
        &watching::SWING,
        "watch.swing_by_day",
        None,
        "watch.swing_likely_by_day",
        "watch.swing_memory_by_day",
    ),
    apart(
        &watching::HUMIDITY,
        "watch.dampest_by_day",
        None,
        "watch.dampest_likely_by_day",
        "watch.dampest_memory_by_day",
    ),
    times(
        &watching::WEIGHT,
        "growing.weight_by_day",
        "expected.weight_by_day",
        "watch.weight_likely_by_day",
        "watch.weight_memory_by_day",
    ),
    times(
        &watching::GAIN,
        "growing.gain_by_day",
        "watch.gain_expected_by_day",
        "watch.gain_likely_by_day",
        "watch.gain_memory_by_day",
    ),
    Signal {
        expected: None,
        divisor: 100.0,
        ..times(
            &watching::UNEVENNESS,
            "watch.spread_by_day",
            "",
            "watch.spread_likely_by_day",
            "watch.spread_memory_by_day",
        )
    },
    apart(
        &watching::LITTER,
        "watch.litter_by_day",
        None,
        "watch.litter_likely_by_day",
        "watch.litter_memory_by_day",
    ),
];

const fn times(
    watched: &'static Watched,
    seen: &'static str,
    expected: &'static str,
    likely: &'static str,
    memory: &'static str,
) -> Signal {
    Signal {
        watched,
        seen,
        expected: Some(expected),
        likely,
        memory,
        scale: Scale::Times,
        divisor: 1.0,
        first_day: 1,
    }
}

const fn apart(
    watched: &'static Watched,
    seen: &'static str,
    expected: Option<&'static str>,
    likely: &'static str,
    memory: &'static str,
) -> Signal {
    Signal { watched, seen, expected, likely, memory, scale: Scale::Apart, divisor: 1.0, first_day: 0 }
}

/// A day of a signal, in the unit of what is seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SignalDay {
    /// Day of age.
    pub day: i32,
    /// What was seen.
    pub seen: f64,
    /// What was likely by the plan and by the batch's own days before.
    pub likely: f64,
    /// Nine days of ten lie between these.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// How the surprise and its sum stand.
    pub step: Step,
}

/// So many standard deviations to either side hold nine days of ten of a bell curve.
const NINE_OF_TEN: f64 = 1.644_853_626_951_5;

impl Signal {
    /// Every day on which it was seen and something was expected.
    pub fn days(&self, answers: &Answers, outcome: &Outcome) -> Vec<SignalDay> {
        let today = answers.number(super::growing::TODAY).unwrap_or(-1.0) as i32;
        let base = |day: i32| self.base(outcome, day);
        let seen: Vec<Seen> = (self.first_day..=today)
            .filter_map(|day| {
                let value = self.onto_scale(outcome.on_day(self.seen, day)?, base(day)?)?;
                Some(Seen { day, value, error: self.error(answers, outcome, day) })
            })
            .collect();
        let steps = self.watched.tuning.follow(&seen);
        steps.into_iter().filter_map(|step| self.day(step, base(step.seen.day)?)).collect()
    }

    /// What the value is held against: what is expected of the day, else the unit.
    fn base(&self, outcome: &Outcome, day: i32) -> Option<f64> {
        match (self.expected, self.scale) {
            (Some(id), _) => outcome.on_day(id, day),
            (None, Scale::Times) => Some(self.divisor),
            (None, Scale::Apart) => Some(0.0),
        }
    }

    fn onto_scale(&self, seen: f64, base: f64) -> Option<f64> {
        match self.scale {
            Scale::Times => (seen > 0.0 && base > 0.0).then(|| (seen / base).ln()),
            Scale::Apart => Some(seen - base),
        }
    }

    fn off_scale(&self, value: f64, base: f64) -> f64 {
        match self.scale {
            Scale::Times => base * value.exp(),
            Scale::Apart => base + value,
        }
    }

    fn day(&self, step: Step, base: f64) -> Option<SignalDay> {
        let at = |deviations: f64| self.off_scale(step.expected + deviations * step.deviation, base);
        let seen = self.off_scale(step.seen.value, base);
        let (low, high) = (at(-NINE_OF_TEN), at(NINE_OF_TEN));
        Some(SignalDay { day: step.seen.day, seen, likely: at(0.0), low, high, step })
    }

    /// The variance of what was seen that is known beforehand: never less than a usual one, more where few birds were weighed.
    fn error(&self, answers: &Answers, outcome: &Outcome, day: i32) -> f64 {
        let on = |key: &str| answers.by_day(key).and_then(|days| days.get(&day)).copied();
        let told = match self.watched.name {
            "weight" => weight_error(on(super::growing::WEIGHT_LOW), on(super::growing::WEIGHT_HIGH)),
            "unevenness" => on(SPREAD_BIRDS).map(|birds| 0.5 / birds),
            "gain" => gain_error(outcome, day),
            _ => None,
        };
        told.unwrap_or_default().max(self.watched.error)
    }
}

/// Half of an interval of 95 % in standard deviations.
const HALF_OF_95: f64 = 1.959_963_984_540_1;

/// The variance of the logarithm of a mean weight from the ends of its interval.
fn weight_error(low: Option<f64>, high: Option<f64>) -> Option<f64> {
    let (low, high) = low.zip(high).filter(|(low, high)| *low > 0.0 && *high > 0.0)?;
    Some(((high / low).ln() / (2.0 * HALF_OF_95)).powi(2))
}

fn gain_error(outcome: &Outcome, day: i32) -> Option<f64> {
    let series = outcome.series(super::series_named("growing.gain_by_day")?)?;
    let at = series.index.iter().position(|index| *index as i32 == day)?;
    let (low, high) = (*series.low.get(at)?, *series.high.get(at)?);
    weight_error(Some(low), Some(high))
}

/// Every day of a signal as the figure by day of what is likely.
fn likely<const AT: usize>(answers: &Answers, outcome: &Outcome) -> Option<Series> {
    let signal = &SIGNALS[AT];
    let days = signal.days(answers, outcome);
    let each = |of: fn(&SignalDay) -> f64| days.iter().map(of).collect::<Vec<f64>>();
    (!days.is_empty()).then(|| Series {
        id: signal.likely,
        index: each(|day| f64::from(day.day)),
        values: each(|day| day.likely),
        low: each(|day| day.low),
        high: each(|day| day.high),
        kind: Some(BandKind::Prediction90),
    })
}

/// The same as the figure by day of the alarm's memory.
fn memory<const AT: usize>(answers: &Answers, outcome: &Outcome) -> Option<Series> {
    let signal = &SIGNALS[AT];
    let days = signal.days(answers, outcome);
    (!days.is_empty()).then(|| Series {
        id: signal.memory,
        index: days.iter().map(|day| f64::from(day.day)).collect(),
        values: days.iter().map(|day| day.step.sum).collect(),
        low: Vec::new(),
        high: Vec::new(),
        kind: None,
    })
}

const fn told(id: &'static str, unit: Unit, decimals: u8, rules: &'static [DayRule]) -> SeriesSpec {
    SeriesSpec { id, unit, decimals, first_day: 0, until: Until::Today, way: Way::Rules(rules) }
}

const fn followed(
    id: &'static str,
    unit: Unit,
    decimals: u8,
    made_from: &'static [&'static str],
    work_out: fn(&Answers, &Outcome) -> Option<Series>,
) -> SeriesSpec {
    let way = Way::Procedure { made_from, source: "page-1954", status: Status::OurJudgement, work_out };
    SeriesSpec { id, unit, decimals, first_day: 0, until: Until::Today, way }
}

/// Another figure by day, 0 on days on which it is not known.
const fn if_known(symbol: &'static str, id: &'static str) -> DayInput {
    DayInput { symbol, origin: DayOrigin::SameIfAny(id) }
}

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

/// For as many birds as are really there.
fn for_birds(x: &[f64]) -> Option<f64> {
    (x[2] > 0.0).then(|| x[0] * x[1] / x[2])
}

const WATER: &[&str] = &["growing.water_by_day", "watch.water_expected_by_day"];
const FEED: &[&str] = &["growing.feed_by_day", "watch.feed_expected_by_day"];
const WATER_TO_FEED: &[&str] = &["growing.water_to_feed_by_day", "watch.water_to_feed_expected_by_day"];
const COLD: &[&str] = &["growing.coldest_by_day", "expected.temperature_by_day"];
const WARM: &[&str] = &["growing.warmest_by_day", "expected.temperature_by_day"];
const SWING: &[&str] = &["watch.swing_by_day"];
const HUMIDITY: &[&str] = &["watch.dampest_by_day"];
const WEIGHT: &[&str] = &["growing.weight_by_day", "expected.weight_by_day"];
const GAIN: &[&str] = &["growing.gain_by_day", "watch.gain_expected_by_day"];
const SPREADS: &[&str] = &["watch.spread_by_day"];
const LITTERS: &[&str] = &["watch.litter_by_day"];

static SERIES: &[SeriesSpec] = &[
    told(
        "watch.deaths_expected_by_day",
        Unit::Birds,
        2,
        &[exact(
            "deaths-expected-for-birds",
            "L * N / E",
            &[
                same("L", "expected.lost_by_day"),
                same("N", "growing.alive_at_dawn"),
                same("E", "expected.alive_by_day"),
            ],
            for_birds,
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "watch.air_by_day",
        Unit::Celsius,
        1,
        &[exact(
            "air-of-the-day",
            "(c + w) / 2",
            &[same("c", "growing.coldest_by_day"), same("w", "growing.warmest_by_day")],
            |x| Some(f64::midpoint(x[0], x[1])),
        )
        .from("common-practice", Status::CommonPractice)],
    ),
    told(
        "watch.swing_by_day",
        Unit::One,
        1,
        &[exact(
            "swing-of-the-day",
            "w - c",
            &[same("c", "growing.coldest_by_day"), same("w", "growing.warmest_by_day")],
            |x| Some(x[1] - x[0]),
        )],
    ),
    told(
        "watch.dampest_by_day",
        Unit::Percent,
        0,
        &[exact("dampest-written", "n", &[recorded("n", DAMPEST)], as_is).from("grower", Status::Told)],
    ),
    told(
        "watch.litter_by_day",
        Unit::One,
        0,
        &[exact("litter-written", "n", &[recorded("n", LITTER)], as_is).from("grower", Status::Told)],
    ),
    told(
        "watch.spread_by_day",
        Unit::Percent,
        1,
        &[exact("spread-weighed", "n", &[recorded("n", SPREAD)], as_is).from("grower", Status::Told)],
    ),
    told(
        "watch.water_more_by_day",
        Unit::One,
        3,
        &[exact(
            "water-for-the-heat-of-the-day",
            "min(2.5, 1 + 0.065 * max(0, t - max(T, 21))) / h - 1",
            &[
                same("t", "watch.air_by_day"),
                same("T", "expected.temperature_by_day"),
                given("h", "water.heat_factor"),
            ],
            |x| Some(model::water::heat_factor(21.0 + x[0] - x[1].max(21.0)) / x[2] - 1.0),
        )
        .from("water-in-heat", Status::Published)],
    ),
    told(
        "watch.water_expected_by_day",
        Unit::Litre,
        0,
        &[exact(
            "water-expected-for-birds-and-heat",
            "W * N / E * (1 + r)",
            &[
                same("W", "expected.water_by_day"),
                same("N", "growing.alive_at_dawn"),
                same("E", "expected.alive_by_day"),
                if_known("r", "watch.water_more_by_day"),
            ],
            |x| Some(for_birds(x)? * (1.0 + x[3])),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "watch.feed_less_by_day",
        Unit::One,
        3,
        &[exact(
            "feed-for-the-heat-of-the-day",
            "0.0125 * max(0, t - max(T, 25))",
            &[same("t", "watch.air_by_day"), same("T", "expected.temperature_by_day")],
            |x| Some(model::feed::lost_in_heat(x[0], x[1].max(25.0), 0.0125)),
        )
        .from("feed-in-heat", Status::FromMemory)],
    ),
    told(
        "watch.feed_expected_by_day",
        Unit::Kilogram,
        1,
        &[exact(
            "feed-expected-for-birds-and-heat",
            "e * N / 1000 * (1 - r)",
            &[
                same("e", "expected.feed_a_bird_by_day"),
                same("N", "growing.alive_at_dawn"),
                if_known("r", "watch.feed_less_by_day"),
            ],
            |x| Some(x[0] * x[1] / 1000.0 * (1.0 - x[2])),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "watch.water_to_feed_expected_by_day",
        Unit::One,
        2,
        &[exact(
            "water-to-feed-expected",
            "W / F",
            &[same("W", "watch.water_expected_by_day"), same("F", "watch.feed_expected_by_day")],
            |x| (x[1] > 0.0).then(|| x[0] / x[1]),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "watch.gain_expected_by_day",
        Unit::Gram,
        1,
        &[exact(
            "gain-expected-between-weighings",
            "(w - v) / (d - e)",
            &[
                same("w", "expected.weight_by_day"),
                recorded("v", EXPECTED_BEFORE),
                age("d"),
                recorded("e", super::course::WEIGHED_BEFORE),
            ],
            |x| Some((x[0] - x[1]) / (x[2] - x[3])),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    followed("watch.water_likely_by_day", Unit::Litre, 0, WATER, likely::<0>),
    followed("watch.feed_likely_by_day", Unit::Kilogram, 1, FEED, likely::<1>),
    followed("watch.water_to_feed_likely_by_day", Unit::One, 2, WATER_TO_FEED, likely::<2>),
    followed("watch.cold_likely_by_day", Unit::Celsius, 1, COLD, likely::<3>),
    followed("watch.warm_likely_by_day", Unit::Celsius, 1, WARM, likely::<4>),
    followed("watch.swing_likely_by_day", Unit::One, 1, SWING, likely::<5>),
    followed("watch.dampest_likely_by_day", Unit::Percent, 0, HUMIDITY, likely::<6>),
    followed("watch.weight_likely_by_day", Unit::Gram, 0, WEIGHT, likely::<7>),
    followed("watch.gain_likely_by_day", Unit::Gram, 1, GAIN, likely::<8>),
    followed("watch.spread_likely_by_day", Unit::Percent, 1, SPREADS, likely::<9>),
    followed("watch.litter_likely_by_day", Unit::One, 1, LITTERS, likely::<10>),
    followed("watch.water_memory_by_day", Unit::One, 1, WATER, memory::<0>),
    followed("watch.feed_memory_by_day", Unit::One, 1, FEED, memory::<1>),
    followed("watch.water_to_feed_memory_by_day", Unit::One, 1, WATER_TO_FEED, memory::<2>),
    followed("watch.cold_memory_by_day", Unit::One, 1, COLD, memory::<3>),
    followed("watch.warm_memory_by_day", Unit::One, 1, WARM, memory::<4>),
    followed("watch.swing_memory_by_day", Unit::One, 1, SWING, memory::<5>),
    followed("watch.dampest_memory_by_day", Unit::One, 1, HUMIDITY, memory::<6>),
    followed("watch.weight_memory_by_day", Unit::One, 1, WEIGHT, memory::<7>),
    followed("watch.gain_memory_by_day", Unit::One, 1, GAIN, memory::<8>),
    followed("watch.spread_memory_by_day", Unit::One, 1, SPREADS, memory::<9>),
    followed("watch.litter_memory_by_day", Unit::One, 1, LITTERS, memory::<10>),
];
