//! How a running batch goes beyond what was written of the day: gain, feed conversion, water to feed, the first week,
//! and the same from the adopted plan and from this house's earlier batches.

use quantity::fields::{count, field as asked, number};
use quantity::{Field, Need, Status, Unit};

use super::Family;
use super::growing::{EXPECTED_FEED, EXPECTED_LOST, FEED, TODAY, WEIGHT_HIGH, WEIGHT_LOW, by_day};
use crate::rule::{FigureSpec, Over, exact, field, figure, list, of_known_days, on_day};
use crate::series::{
    DayInput, DayOrigin, DayRule, First, SeriesSpec, Until, Way, age, before, if_recorded, recorded, same,
};

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: FIELDS, sums: &[], series: SERIES, shapes: &[] };

/// Live weight of birds that left, by day.
pub(crate) const LEFT_KG: &str = "book.left_kg";
/// The weight at the weighing before, by day of weighing; first the chicks' on arrival.
pub(crate) const WEIGHT_BEFORE: &str = "book.weight_before_g";
/// How far that weight may be off, by day of weighing.
pub(crate) const BEFORE_OFF: &str = "book.weight_before_off_g";
/// The day of the weighing before, by day of weighing.
pub(crate) const WEIGHED_BEFORE: &str = "book.weighed_before_d";
/// Chicks weighed on the day they came, as far as no boxes were.
pub(crate) const ARRIVAL: &str = "book.arrival_g";
/// The day of weighing that stands for the end of the first week.
pub(crate) const WEEK_WEIGHED: &str = "book.week_weighed_d";
/// Boxes weighed with their chicks in.
pub(crate) const BOXES: &str = "placed.box_weights_g";
/// An empty box.
pub(crate) const EMPTY_BOX: &str = "placed.box_empty_g";
/// Chicks in a weighed box.
pub(crate) const IN_A_BOX: &str = "placed.chicks_per_box";
/// How many earlier batches there are.
pub(crate) const PAST_BATCHES: &str = "past.batches";
/// Their weight, losses, feed and water, by day.
pub(crate) const PAST_WEIGHT: &str = "past.weight_g";
pub(crate) const PAST_LOSSES: &str = "past.losses_percent";
pub(crate) const PAST_FEED: &str = "past.feed_a_bird_g";
pub(crate) const PAST_WATER: &str = "past.water_a_bird_ml";

/// The last day of the first week; the day of placement is day 0.
const FIRST_WEEK_ENDS: f64 = 6.0;

static FIELDS: &[Field] = &[
    by_day(LEFT_KG, Unit::Kilogram),
    by_day(WEIGHT_BEFORE, Unit::Gram),
    by_day(BEFORE_OFF, Unit::Gram),
    by_day(WEIGHED_BEFORE, Unit::Day),
    asked(ARRIVAL, number(Unit::Gram, 10.0, 100.0), Need::Optional),
    asked(WEEK_WEIGHED, count(Unit::Day, 6.0, 8.0), Need::Optional),
    asked(PAST_BATCHES, count(Unit::One, 0.0, 1_000.0), Need::Optional),
    by_day(PAST_WEIGHT, Unit::Gram),
    by_day(PAST_LOSSES, Unit::Percent),
    by_day(PAST_FEED, Unit::Gram),
    by_day(PAST_WATER, Unit::Millilitre),
];

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "growing.gain",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[exact(
            "gain-last-weighed",
            "g",
            &[of_known_days("g", Over::Last, "growing.gain_by_day")],
            as_is,
        )],
    },
    FigureSpec {
        id: "growing.against_plan",
        unit: Unit::Percent,
        decimals: 0,
        rules: &[exact(
            "weight-against-plan",
            "100 * w / e",
            &[figure("w", "growing.weight"), on_day("e", "expected.weight_by_day", "growing.last_weighed")],
            percent,
        )],
    },
    FigureSpec {
        id: "growing.against_past",
        unit: Unit::Percent,
        decimals: 0,
        rules: &[exact(
            "weight-against-past",
            "100 * w / p",
            &[figure("w", "growing.weight"), on_day("p", "past.weight_by_day", "growing.last_weighed")],
            percent,
        )],
    },
    FigureSpec {
        id: "growing.weighed_ago",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "weighed-ago",
            "t - d",
            &[field("t", TODAY), figure("d", "growing.last_weighed")],
            |x| Some(x[0] - x[1]),
        )],
    },
    FigureSpec {
        id: "growing.feed",
        unit: Unit::Kilogram,
        decimals: 0,
        rules: &[exact("feed-so-far", "F", &[of_known_days("F", Over::Last, "growing.feed_to_date")], as_is)],
    },
    FigureSpec {
        id: "growing.feed_unwritten",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "days-without-feed",
            "t + 1 - n",
            &[field("t", TODAY), of_known_days("n", Over::Last, "growing.days_fed")],
            |x| Some(x[0] + 1.0 - x[1]),
        )],
    },
    FigureSpec {
        id: "growing.fcr",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "fcr-last-weighed",
            "c",
            &[of_known_days("c", Over::Last, "growing.fcr_by_day")],
            as_is,
        )],
    },
    FigureSpec {
        id: "growing.water_to_feed",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "water-to-feed-last",
            "r",
            &[of_known_days("r", Over::Last, "growing.water_to_feed_by_day")],
            as_is,
        )],
    },
    FigureSpec {
        id: "growing.first_week_end",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact("first-week-so-far", "min(t, 6)", &[field("t", TODAY)], |x| {
            Some(x[0].min(FIRST_WEEK_ENDS))
        })],
    },
    FigureSpec {
        id: "growing.first_week_losses",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "losses-of-first-week",
            "l",
            &[on_day("l", "growing.losses_by_day", "growing.first_week_end")],
            as_is,
        )
        .from("first-week", Status::FromMemory)],
    },
    FigureSpec {
        id: "growing.arrival_weight",
        unit: Unit::Gram,
        decimals: 1,
        rules: &[
            exact(
                "chick-from-boxes",
                "(mean(w) - e) / n",
                &[field("e", EMPTY_BOX), field("n", IN_A_BOX), list("w", BOXES)],
                |x| model::growth::chick_in_boxes(&x[2..], x[0], x[1]),
            )
            .when(|answers| answers.number(EMPTY_BOX).is_some() && answers.number(IN_A_BOX).is_some()),
            exact("chick-weighed", "w", &[field("w", ARRIVAL)], as_is).from("grower", Status::Told),
        ],
    },
    FigureSpec {
        id: "growing.first_week_ratio",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "first-week-times",
            "w / c",
            &[on_day("w", "growing.weight_by_day", WEEK_WEIGHED), figure("c", "growing.arrival_weight")],
            |x| Some(x[0] / x[1]),
        )
        .from("first-week", Status::FromMemory)],
    },
];

fn percent(x: &[f64]) -> Option<f64> {
    Some(100.0 * x[0] / x[1])
}

/// A figure by day of a running batch.
const fn told(id: &'static str, unit: Unit, decimals: u8, rules: &'static [DayRule]) -> SeriesSpec {
    SeriesSpec { id, unit, decimals, first_day: 0, until: Until::Today, way: Way::Rules(rules) }
}

/// What earlier batches had on the day.
const fn of_past(name: &'static str, inputs: &'static [DayInput]) -> DayRule {
    exact(name, "n", inputs, as_is).from("grower", Status::Derived)
}

static SERIES: &[SeriesSpec] = &[
    told(
        "growing.gain_by_day",
        Unit::Gram,
        1,
        &[exact(
            "gain-between-weighings",
            "(w - v) / (d - e) + 0 * (low + high + u)",
            &[
                same("w", "growing.weight_by_day"),
                recorded("v", WEIGHT_BEFORE),
                age("d"),
                recorded("e", WEIGHED_BEFORE),
                recorded("low", WEIGHT_LOW),
                recorded("high", WEIGHT_HIGH),
                recorded("u", BEFORE_OFF),
            ],
            |x| Some((x[0] - x[1]) / (x[2] - x[3])),
        )
        .confident(gain_ends)],
    ),
    told(
        "growing.feed_to_date",
        Unit::Kilogram,
        1,
        &[exact(
            "feed-added-up",
            "f + F",
            &[before("f", "growing.feed_to_date", 0.0), if_recorded("F", FEED)],
            |x| Some(x[0] + x[1]),
        )],
    ),
    told(
        "growing.days_fed",
        Unit::Day,
        0,
        &[exact(
            "days-fed",
            "n + at_least(F, 0.001)",
            &[before("n", "growing.days_fed", 0.0), if_recorded("F", FEED)],
            |x| Some(x[0] + f64::from(u8::from(x[1] >= 0.001))),
        )],
    ),
    told(
        "growing.left_kg_to_date",
        Unit::Kilogram,
        0,
        &[exact(
            "left-added-up",
            "s + S",
            &[before("s", "growing.left_kg_to_date", 0.0), if_recorded("S", LEFT_KG)],
            |x| Some(x[0] + x[1]),
        )],
    ),
    told(
        "growing.fcr_by_day",
        Unit::One,
        2,
        &[exact(
            "fcr-so-far",
            "F / (N * w / 1000 + S)",
            &[
                same("F", "growing.feed_to_date"),
                same("N", "growing.alive_by_day"),
                same("w", "growing.weight_by_day"),
                same("S", "growing.left_kg_to_date"),
            ],
            |x| Some(x[0] / (x[1] * x[2] / 1000.0 + x[3])),
        )
        .from("common-practice", Status::CommonPractice)],
    ),
    told(
        "growing.water_to_feed_by_day",
        Unit::One,
        2,
        &[exact(
            "water-to-feed-written",
            "W / F",
            &[same("W", "growing.water_by_day"), same("F", "growing.feed_by_day")],
            |x| Some(x[0] / x[1]),
        )],
    ),
    told(
        "growing.lost_share_by_day",
        Unit::Percent,
        2,
        &[exact(
            "losses-of-the-day",
            "100 * L / N",
            &[same("L", "growing.lost_by_day"), same("N", "growing.alive_at_dawn")],
            percent,
        )],
    ),
    told(
        "expected.gain_by_day",
        Unit::Gram,
        1,
        &[exact(
            "gain-by-plan",
            "w - v",
            &[
                same("w", "expected.weight_by_day"),
                DayInput {
                    symbol: "v",
                    origin: DayOrigin::Before {
                        series: "expected.weight_by_day",
                        first: First::Field(ARRIVAL),
                    },
                },
            ],
            |x| Some(x[0] - x[1]),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "expected.lost_share_by_day",
        Unit::Percent,
        2,
        &[exact(
            "losses-of-the-day-by-plan",
            "100 * L / E",
            &[recorded("L", EXPECTED_LOST), same("E", "expected.alive_by_day")],
            percent,
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "expected.losses_by_day",
        Unit::Percent,
        2,
        &[exact(
            "losses-to-date-by-plan",
            "l + (100 - l) * L / E",
            &[
                before("l", "expected.losses_by_day", 0.0),
                recorded("L", EXPECTED_LOST),
                same("E", "expected.alive_by_day"),
            ],
            |x| Some(x[0] + (100.0 - x[0]) * x[1] / x[2]),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "expected.water_a_bird_by_day",
        Unit::Millilitre,
        0,
        &[exact(
            "water-a-bird-by-plan",
            "1000 * W / E",
            &[same("W", "expected.water_by_day"), same("E", "expected.alive_by_day")],
            |x| Some(1000.0 * x[0] / x[1]),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "expected.feed_to_date",
        Unit::Gram,
        0,
        &[exact(
            "feed-added-up-by-plan",
            "f + F",
            &[before("f", "expected.feed_to_date", 0.0), recorded("F", EXPECTED_FEED)],
            |x| Some(x[0] + x[1]),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told(
        "expected.fcr_by_day",
        Unit::One,
        2,
        &[exact(
            "fcr-by-plan",
            "F / w",
            &[same("F", "expected.feed_to_date"), same("w", "expected.weight_by_day")],
            |x| Some(x[0] / x[1]),
        )
        .from("adopted-plan", Status::Derived)],
    ),
    told("past.weight_by_day", Unit::Gram, 0, &[of_past("weight-of-past", &[recorded("n", PAST_WEIGHT)])]),
    told("past.losses_by_day", Unit::Percent, 2, &[of_past("losses-of-past", &[recorded("n", PAST_LOSSES)])]),
    told("past.feed_a_bird_by_day", Unit::Gram, 0, &[of_past("feed-of-past", &[recorded("n", PAST_FEED)])]),
    told(
        "past.water_a_bird_by_day",
        Unit::Millilitre,
        0,
        &[of_past("water-of-past", &[recorded("n", PAST_WATER)])],
    ),
];

/// Both weighings are off by chance, so their half widths go together as the sides of a right angle do.
fn gain_ends(x: &[f64]) -> Option<(f64, f64)> {
    let (gain, days) = ((x[0] - x[1]) / (x[2] - x[3]), x[2] - x[3]);
    let off = ((x[5] - x[4]) / 2.0).hypot(x[6]) / days;
    Some((gain - off, gain + off))
}
