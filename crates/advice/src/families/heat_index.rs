//! How hard heat bears on broilers, by the worst of dry bulb, wet bulb and the index of air speed.

use model::air::stress;
use quantity::fields::{field as asked, number};
use quantity::{Field, Need, Status, Unit};

use super::Family;
use super::moist_air::{ALTITUDE, DRY_BULB, HUMIDITY};
use crate::rule::{FigureSpec, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

pub(crate) const SPEED: &str = "heat_index.speed_m_per_s";
pub(crate) const AGE: &str = "heat_index.age_d";

/// The last day of the table of temperatures; older birds like what those like.
const GROWN_D: f64 = 27.0;

static FIELDS: &[Field] = &[
    asked(
        SPEED,
        number(Unit::MetrePerSecond, 0.0, 10.0),
        // Nearly still: nobody feels it.
        Need::Usual("0.2", Status::Assumed),
    ),
    asked(AGE, number(Unit::Day, 0.0, 84.0), Need::Optional),
];

static SUMS: &[Sum] = &[Sum {
    name: "heat-index",
    inputs: &[
        asks("dry_bulb_c", DRY_BULB),
        asks("humidity_percent", HUMIDITY),
        asks("age_d", AGE),
        may_ask("speed_m_per_s", SPEED),
        may_ask("altitude_m", ALTITUDE),
    ],
    figures: &[
        "heat_index.step",
        "heat_index.step_of_dry_bulb",
        "heat_index.step_of_wet_bulb",
        "heat_index.step_of_index",
        "moist_air.wet_bulb",
        "heat_index.still",
        "heat_index.moving",
        "heat_index.liked",
    ],
    caution: Some("caution-heat-index"),
}];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "heat_index.step",
        unit: Unit::One,
        decimals: 0,
        rules: &[exact(
            "worst-of-three",
            "max(d, max(w, i))",
            &[
                figure("d", "heat_index.step_of_dry_bulb"),
                figure("w", "heat_index.step_of_wet_bulb"),
                figure("i", "heat_index.step_of_index"),
            ],
            |x| Some(x[0].max(x[1]).max(x[2])),
        )],
    },
    FigureSpec {
        id: "heat_index.liked",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact("liked-at-age", "brooding_temperature(a, r)", &[field("a", AGE), field("r", HUMIDITY)], |x| {
            reference::temperature::target(x[0], x[1])
        })
        .from("brooding-temperature", Status::FromMemory)],
    },
    FigureSpec {
        id: "heat_index.liked_by_grown",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact("liked-by-grown", "brooding_temperature(27, r)", &[field("r", HUMIDITY)], |x| {
            reference::temperature::target(GROWN_D, x[0])
        })
        .from("brooding-temperature", Status::FromMemory)],
    },
    FigureSpec {
        id: "heat_index.still",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact(
            "index-in-still-air",
            "0.85 * t + 0.15 * b",
            &[field("t", DRY_BULB), figure("b", "moist_air.wet_bulb")],
            |x| Some(0.85 * x[0] + 0.15 * x[1]),
        )
        .from("tao-xin-2003", Status::Published)],
    },
    FigureSpec {
        id: "heat_index.moving",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact(
            "index-with-speed",
            "(0.85 * t + 0.15 * b) * max(0.2, min(1.2, v)) ^ (0 - 0.058)",
            &[field("t", DRY_BULB), figure("b", "moist_air.wet_bulb"), field("v", SPEED)],
            |x| Some(stress::index(x[0], x[1], x[2])),
        )
        .from("tao-xin-2003", Status::Published)],
    },
    FigureSpec {
        id: "heat_index.step_of_dry_bulb",
        unit: Unit::One,
        decimals: 0,
        rules: &[exact(
            "step-of-dry-bulb",
            "at_least(t - max(0, l - g), 28) + at_least(t - max(0, l - g), 32) + 2 * at_least(t - max(0, l - g), 35)",
            &[field("t", DRY_BULB), figure("l", "heat_index.liked"), figure("g", "heat_index.liked_by_grown")],
            |x| Some(stress::step_of_dry_bulb(x[0], (x[1] - x[2]).max(0.0))),
        )
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "heat_index.step_of_wet_bulb",
        unit: Unit::One,
        decimals: 0,
        rules: &[exact(
            "step-of-wet-bulb",
            "at_least(b - min(4, max(0, l - g)), 26) + at_least(b - min(4, max(0, l - g)), 28) + 2 * at_least(b - min(4, max(0, l - g)), 30)",
            &[figure("b", "moist_air.wet_bulb"), figure("l", "heat_index.liked"), figure("g", "heat_index.liked_by_grown")],
            |x| Some(stress::step_of_wet_bulb(x[0], (x[1] - x[2]).max(0.0))),
        )
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "heat_index.step_of_index",
        unit: Unit::One,
        decimals: 0,
        rules: &[exact(
            "step-of-index",
            "at_least(i - max(0, l - g), 27) + at_least(i - max(0, l - g), 30) + at_least(i - max(0, l - g), 33) + at_least(i - max(0, l - g), 36)",
            &[figure("i", "heat_index.moving"), figure("l", "heat_index.liked"), figure("g", "heat_index.liked_by_grown")],
            |x| Some(stress::step_of_index(x[0], (x[1] - x[2]).max(0.0))),
        )
        .from("our-judgement", Status::OurJudgement)],
    },
];
