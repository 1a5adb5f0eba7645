//! A batch as its book has it: birds alive and lost, feed and water a bird, weight. What was not written on a day is a gap
//! and never a nothing.

use quantity::fields::{count, field as asked};
use quantity::{Field, Kind, Need, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Origin, Over, exact, field, figure, of_known_days, on_day};
use crate::series::{
    DayInput, DayOrigin, First, SeriesSpec, Until, Way, before, if_recorded, recorded, same,
};

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: FIELDS, sums: &[], series: SERIES, shapes: &[] };

/// The last day of age that is counted: whoever looks at a batch years later sees it as it ended.
pub(crate) const OLDEST_D: i32 = 120;
/// The day of age that the book is asked about.
pub(crate) const TODAY: &str = "book.today_d";
/// Live chicks placed.
pub(crate) const PLACED: &str = "book.placed";
/// Birds found dead and culled, by day.
pub(crate) const LOST: &str = "book.lost";
/// Birds that left alive: sold, eaten at home, given, stolen, by day.
pub(crate) const LEFT: &str = "book.left";
/// Feed given, by day.
pub(crate) const FEED: &str = "book.feed_kg";
/// Water drunk, by day.
pub(crate) const WATER: &str = "book.water_l";
/// Coldest and warmest in the house, by day.
pub(crate) const COLDEST: &str = "book.coldest_c";
pub(crate) const WARMEST: &str = "book.warmest_c";
/// Mean weight by day of weighing, with the ends of its interval.
pub(crate) const WEIGHT: &str = "book.weight_g";
pub(crate) const WEIGHT_LOW: &str = "book.weight_low_g";
pub(crate) const WEIGHT_HIGH: &str = "book.weight_high_g";
/// What the adopted plan expected, by day.
pub(crate) const EXPECTED_FEED: &str = "expected.feed_a_bird_g";
pub(crate) const EXPECTED_WATER: &str = "expected.water_l";
pub(crate) const EXPECTED_ALIVE: &str = "expected.alive";
pub(crate) const EXPECTED_LOST: &str = "expected.lost";
pub(crate) const EXPECTED_WEIGHT: &str = "expected.weight_g";
pub(crate) const EXPECTED_TEMPERATURE: &str = "expected.temperature_c";
pub(crate) const EXPECTED_LIGHT: &str = "expected.light_h";

pub(crate) const fn by_day(key: &'static str, unit: Unit) -> Field {
    asked(key, Kind::ByDay { unit }, Need::Optional)
}

static FIELDS: &[Field] = &[
    asked(TODAY, count(Unit::Day, -120.0, OLDEST_D as f64), Need::Optional),
    asked(PLACED, count(Unit::Chicks, 1.0, 60_000.0), Need::Optional),
    by_day(LOST, Unit::Birds),
    by_day(LEFT, Unit::Birds),
    by_day(FEED, Unit::Kilogram),
    by_day(WATER, Unit::Litre),
    by_day(COLDEST, Unit::Celsius),
    by_day(WARMEST, Unit::Celsius),
    by_day(WEIGHT, Unit::Gram),
    by_day(WEIGHT_LOW, Unit::Gram),
    by_day(WEIGHT_HIGH, Unit::Gram),
    by_day(EXPECTED_FEED, Unit::Gram),
    by_day(EXPECTED_WATER, Unit::Litre),
    by_day(EXPECTED_ALIVE, Unit::Birds),
    by_day(EXPECTED_LOST, Unit::Birds),
    by_day(EXPECTED_WEIGHT, Unit::Gram),
    by_day(EXPECTED_TEMPERATURE, Unit::Celsius),
    by_day(EXPECTED_LIGHT, Unit::Hour),
];

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "growing.alive",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact("alive-today", "N", &[on_day("N", "growing.alive_by_day", TODAY)], as_is)],
    },
    FigureSpec {
        id: "growing.lost",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact("lost-so-far", "L", &[of_known_days("L", Over::Sum, "growing.lost_by_day")], as_is)],
    },
    FigureSpec {
        id: "growing.losses",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "losses-so-far",
            "100 * L / P",
            &[figure("L", "growing.lost"), field("P", PLACED)],
            |x| Some(100.0 * x[0] / x[1]),
        )
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "growing.last_weighed",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "last-weighed",
            "d",
            &[of_known_days("d", Over::DayOfLast, "growing.weight_by_day")],
            as_is,
        )],
    },
    FigureSpec {
        id: "growing.weight",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[exact(
            "weight-last-weighed",
            "w",
            &[of_known_days("w", Over::Last, "growing.weight_by_day")],
            as_is,
        )],
    },
    FigureSpec {
        id: "walk.feed_expected",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact(
            "feed-expected-today",
            "e * N / 1000",
            &[on_day("e", "expected.feed_a_bird_by_day", TODAY), on_day("N", "growing.alive_at_dawn", TODAY)],
            |x| Some(x[0] * x[1] / 1000.0),
        )],
    },
    FigureSpec {
        id: "walk.water_expected",
        unit: Unit::Litre,
        decimals: 0,
        rules: &[exact(
            "water-expected-today",
            "W * N / E",
            &[
                on_day("W", "expected.water_by_day", TODAY),
                on_day("N", "growing.alive_at_dawn", TODAY),
                on_day("E", "expected.alive_by_day", TODAY),
            ],
            |x| (x[2] > 0.0).then(|| x[0] * x[1] / x[2]),
        )],
    },
    FigureSpec {
        id: "walk.deaths_expected",
        unit: Unit::Birds,
        decimals: 1,
        rules: &[exact(
            "deaths-expected-today",
            "L * N / E",
            &[
                on_day("L", "expected.lost_by_day", TODAY),
                on_day("N", "growing.alive_at_dawn", TODAY),
                on_day("E", "expected.alive_by_day", TODAY),
            ],
            |x| (x[2] > 0.0).then(|| x[0] * x[1] / x[2]),
        )],
    },
    FigureSpec {
        id: "walk.weight_expected",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[exact("weight-expected-today", "w", &[on_day("w", "expected.weight_by_day", TODAY)], as_is)],
    },
    FigureSpec {
        id: "walk.temperature_target",
        unit: Unit::Celsius,
        decimals: 0,
        rules: &[exact(
            "temperature-wanted-today",
            "t",
            &[on_day("t", "expected.temperature_by_day", TODAY)],
            as_is,
        )],
    },
    FigureSpec {
        id: "walk.light_hours",
        unit: Unit::Hour,
        decimals: 1,
        rules: &[exact("light-wanted-today", "h", &[on_day("h", "expected.light_by_day", TODAY)], as_is)],
    },
];

/// A figure by day that only says what was written, or what the adopted plan expected.
const fn told(
    id: &'static str,
    unit: Unit,
    decimals: u8,
    rules: &'static [crate::series::DayRule],
) -> SeriesSpec {
    SeriesSpec { id, unit, decimals, first_day: 0, until: Until::Today, way: Way::Rules(rules) }
}

static SERIES: &[SeriesSpec] = &[
    told("growing.lost_by_day", Unit::Birds, 0, &[as_written("lost-written", &[recorded("n", LOST)])]),
    told("growing.left_by_day", Unit::Birds, 0, &[as_written("left-written", &[recorded("n", LEFT)])]),
    told("growing.feed_by_day", Unit::Kilogram, 1, &[as_written("feed-written", &[recorded("n", FEED)])]),
    told("growing.water_by_day", Unit::Litre, 0, &[as_written("water-written", &[recorded("n", WATER)])]),
    told(
        "growing.coldest_by_day",
        Unit::Celsius,
        1,
        &[as_written("coldest-written", &[recorded("n", COLDEST)])],
    ),
    told(
        "growing.warmest_by_day",
        Unit::Celsius,
        1,
        &[as_written("warmest-written", &[recorded("n", WARMEST)])],
    ),
    told(
        "growing.weight_by_day",
        Unit::Gram,
        0,
        &[exact(
            "weight-weighed",
            "w + 0 * (low + high)",
            &[recorded("w", WEIGHT), recorded("low", WEIGHT_LOW), recorded("high", WEIGHT_HIGH)],
            as_is,
        )
        .from("grower", Status::Told)
        .confident(|x| Some((x[1], x[2])))],
    ),
    told(
        "growing.alive_at_dawn",
        Unit::Birds,
        0,
        &[exact(
            "alive-at-dawn",
            "N",
            &[DayInput {
                symbol: "N",
                origin: DayOrigin::Before { series: "growing.alive_by_day", first: First::Field(PLACED) },
            }],
            as_is,
        )],
    ),
    told(
        "growing.alive_by_day",
        Unit::Birds,
        0,
        &[exact(
            "alive-by-book",
            "N - L - S",
            &[same("N", "growing.alive_at_dawn"), if_recorded("L", LOST), if_recorded("S", LEFT)],
            |x| Some(x[0] - x[1] - x[2]),
        )],
    ),
    told(
        "growing.feed_a_bird_by_day",
        Unit::Gram,
        0,
        &[exact(
            "feed-a-bird-written",
            "1000 * F / N",
            &[same("F", "growing.feed_by_day"), same("N", "growing.alive_at_dawn")],
            per_bird,
        )],
    ),
    told(
        "growing.water_a_bird_by_day",
        Unit::Millilitre,
        0,
        &[exact(
            "water-a-bird-written",
            "1000 * W / N",
            &[same("W", "growing.water_by_day"), same("N", "growing.alive_at_dawn")],
            per_bird,
        )],
    ),
    told(
        "growing.losses_by_day",
        Unit::Percent,
        2,
        &[exact(
            "losses-to-date",
            "l + 100 * L / P",
            &[
                before("l", "growing.losses_by_day", 0.0),
                if_recorded("L", LOST),
                DayInput { symbol: "P", origin: DayOrigin::Fixed(Origin::Field(PLACED)) },
            ],
            |x| Some(x[0] + 100.0 * x[1] / x[2]),
        )],
    ),
    told(
        "expected.feed_a_bird_by_day",
        Unit::Gram,
        0,
        &[by_plan("feed-by-plan", &[recorded("n", EXPECTED_FEED)])],
    ),
    told(
        "expected.water_by_day",
        Unit::Litre,
        0,
        &[by_plan("water-by-plan", &[recorded("n", EXPECTED_WATER)])],
    ),
    told(
        "expected.alive_by_day",
        Unit::Birds,
        0,
        &[by_plan("alive-by-plan", &[recorded("n", EXPECTED_ALIVE)])],
    ),
    told("expected.lost_by_day", Unit::Birds, 2, &[by_plan("lost-by-plan", &[recorded("n", EXPECTED_LOST)])]),
    told(
        "expected.weight_by_day",
        Unit::Gram,
        0,
        &[by_plan("weight-by-plan", &[recorded("n", EXPECTED_WEIGHT)])],
    ),
    told(
        "expected.temperature_by_day",
        Unit::Celsius,
        0,
        &[by_plan("temperature-by-plan", &[recorded("n", EXPECTED_TEMPERATURE)])],
    ),
    told(
        "expected.light_by_day",
        Unit::Hour,
        1,
        &[by_plan("light-by-plan", &[recorded("n", EXPECTED_LIGHT)])],
    ),
];

const fn as_written(name: &'static str, inputs: &'static [DayInput]) -> crate::series::DayRule {
    exact(name, "n", inputs, as_is).from("grower", Status::Told)
}

const fn by_plan(name: &'static str, inputs: &'static [DayInput]) -> crate::series::DayRule {
    exact(name, "n", inputs, as_is).from("adopted-plan", Status::Derived)
}

fn per_bird(x: &[f64]) -> Option<f64> {
    (x[1] > 0.0).then(|| 1000.0 * x[0] / x[1])
}
