//! Drying of a washed floor and of spread litter, before chicks come.

use model::drying;
use quantity::fields::{asked_outside, field as asked, number};
use quantity::{Field, Need, Status, Unit};

use super::Family;
use super::litter::{bulk, density};
use super::moist_air::{ALTITUDE, DRY_BULB, HUMIDITY};
use crate::rule::{FigureSpec, Input, Rule, exact, field, figure, if_known};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

const WATER: &str = "drying.water_ml_per_m2";
const SPEED: &str = "drying.speed_m_per_s";
const FROM: &str = "drying.litter_from_percent";
const TO: &str = "drying.litter_to_percent";
const DEPTH: &str = "litter.depth_cm";
const KIND: &str = "litter.kind";

static FIELDS: &[Field] = &[
    asked(
        WATER,
        asked_outside(number(Unit::MillilitrePerSquareMetre, 1.0, 20_000.0), 50.0, 2_000.0),
        Need::Optional,
    ),
    asked(SPEED, number(Unit::MetrePerSecond, 0.0, 10.0), Need::Usual("0.2", Status::Assumed)),
    asked(FROM, number(Unit::Percent, 10.0, 60.0), Need::Optional),
    asked(TO, number(Unit::Percent, 10.0, 40.0), Need::Usual("15", Status::OurJudgement)),
];

static SUMS: &[Sum] = &[Sum {
    name: "drying",
    inputs: &[
        asks("dry_bulb_c", DRY_BULB),
        asks("humidity_percent", HUMIDITY),
        asks("water_ml_per_m2", WATER),
        may_ask("speed_m_per_s", SPEED),
        may_ask("altitude_m", ALTITUDE),
        may_ask("depth_cm", DEPTH),
        may_ask("kind", KIND),
        may_ask("litter_from_percent", FROM),
        may_ask("litter_to_percent", TO),
    ],
    figures: &[
        "drying.floor",
        "drying.litter",
        "drying.litter_water",
        "drying.rate",
        "drying.rate_of_warm_floor",
        "moist_air.wet_bulb",
    ],
    caution: Some("caution-drying"),
}];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "drying.rate",
        unit: Unit::GramPerSquareMetreHour,
        decimals: 0,
        rules: &[exact(
            "drying-by-air",
            "3600000 * (4 + 3.8 * v) * max(0, t - b) / (2501000 - 2361 * b)",
            &[field("t", DRY_BULB), figure("b", "moist_air.wet_bulb"), field("v", SPEED)],
            |x| Some(drying::from_cooled_face(x[0], x[1], x[2])),
        )
        .from("our-judgement", Status::OurJudgement)],
    },
    FigureSpec {
        id: "drying.rate_of_warm_floor",
        unit: Unit::GramPerSquareMetreHour,
        decimals: 0,
        rules: &[exact(
            "drying-of-warm-floor",
            "3600000 * (4 + 3.8 * v) / 1006 * (0.621945 * saturation_pressure(t) / (1000 * p - saturation_pressure(t)) \
             - 0.621945 * saturation_pressure(t) * r / 100 / (1000 * p - saturation_pressure(t) * r / 100))",
            &[
                field("t", DRY_BULB),
                field("r", HUMIDITY),
                figure("p", "moist_air.pressure"),
                field("v", SPEED),
            ],
            |x| drying::from_warm_face(x[0], x[1] / 100.0, 1000.0 * x[2], x[3]),
        )
        .from("our-judgement", Status::OurJudgement)],
    },
    FigureSpec {
        id: "drying.floor",
        unit: Unit::Hour,
        decimals: 0,
        rules: &[exact(
            "floor-dries",
            "w / e",
            &[field("w", WATER), figure("e", "drying.rate"), if_known("f", "drying.rate_of_warm_floor")],
            |x| hours(x[0], x[1]),
        )
        .from("our-judgement", Status::OurJudgement)
        .between(|x| Some((hours(x[0], x[2].max(x[1]))?, hours(x[0], x[1])?)))],
    },
    FigureSpec {
        id: "drying.litter_water",
        unit: Unit::KilogramPerSquareMetre,
        decimals: 2,
        rules: &[
            water(
                "water-of-shavings",
                &[
                    field("d", DEPTH),
                    field("m1", FROM),
                    field("m2", TO),
                    bulk("b1", "wood-shavings", || density("wood-shavings").map(|range| range.0)),
                    bulk("b2", "wood-shavings", || density("wood-shavings").map(|range| range.1)),
                ],
            )
            .when(|answers| answers.choice(KIND) == Some("wood-shavings")),
            water(
                "water-of-husk",
                &[
                    field("d", DEPTH),
                    field("m1", FROM),
                    field("m2", TO),
                    bulk("b1", "rice-husk", || density("rice-husk").map(|range| range.0)),
                    bulk("b2", "rice-husk", || density("rice-husk").map(|range| range.1)),
                ],
            )
            .when(|answers| answers.choice(KIND) == Some("rice-husk")),
        ],
    },
    FigureSpec {
        id: "drying.litter",
        unit: Unit::Hour,
        decimals: 0,
        rules: &[exact(
            "litter-dries",
            "1000 * l / (e * 0.4 * min(1, min(min(0.45 + 5 * (m / 100 - 0.1), 0.7 + 3 * (m / 100 - 0.15)), min(0.85 + 1.6 * (m / 100 - 0.2), min(0.93 + 0.8 * (m / 100 - 0.25), 0.97 + 0.6 * (m / 100 - 0.3))))))",
            &[
                figure("l", "drying.litter_water"),
                figure("e", "drying.rate"),
                field("m", TO),
                if_known("f", "drying.rate_of_warm_floor"),
            ],
            |x| litter_hours(x[0], x[1], x[2]),
        )
        .from("our-judgement", Status::OurJudgement)
        .between(|x| Some((litter_hours(x[0], x[3].max(x[1]), x[2])?, litter_hours(x[0], x[1], x[2])?)))],
    },
];

/// Grams on a square metre, grams an hour; `None` where nothing dries.
fn hours(grams: f64, grams_per_h: f64) -> Option<f64> {
    (grams_per_h > 0.0).then(|| grams / grams_per_h)
}

/// Water to lose, kg/m2, what a free face gives, g/m2h, and the moisture at the end, percent.
fn litter_hours(water: f64, free: f64, to_percent: f64) -> Option<f64> {
    hours(1000.0 * water, free * drying::share_of_free(to_percent / 100.0))
}

/// Depth in cm, moisture before and after in percent, least and greatest density.
const fn water(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "max(0, d / 100 * (b1 + b2) / 2 * (m1 - m2) / 100 / (1 - m2 / 100))", inputs, |x| {
        Some(lost(x, (x[3] + x[4]) / 2.0))
    })
    .from("litter-density", Status::CommonPractice)
    .between(|x| Some((lost(x, x[3]), lost(x, x[4]))))
}

fn lost(x: &[f64], density: f64) -> f64 {
    drying::water_to_lose(x[0] / 100.0 * density, x[1] / 100.0, x[2] / 100.0)
}
