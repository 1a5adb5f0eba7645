//! Drying of a washed floor and of spread litter, before chicks come.

use model::drying;
use model::moist_air::{self, MoistAir};
use quantity::fields::{asked_outside, field as asked, number};
use quantity::{Field, Need, Status, Temperature, Unit};

use super::Family;
use super::litter::{bulk, density};
use super::moist_air::{ALTITUDE, DRY_BULB, HUMIDITY};
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure, if_known};
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

/// Sides down by day: our judgement, m/s.
const AIRED_M_PER_S: f64 = 0.5;
/// Air is as damp as if dew began so far below the coldest night, K: FAO-56, dry months, from memory.
const DEW_BELOW_K: f64 = 2.0;
const MEAN: &str = "weather.mean_c";
const COLDEST: &str = "weather.coldest_night_c";
const ABOVE_SEA: Input = Input { symbol: "z", origin: Origin::IfTold("farm.altitude_m") };

/// Water of air with a vapour pressure at the height of the farm.
macro_rules! water_of {
    ($vapour:literal) => {
        concat!("(0.621945 * ", $vapour, " / (101325 * (1 - 2.25577 * z / 100000) ^ 5.2559 - ", $vapour, "))")
    };
}

/// Whether a wet bulb can stand at 0 °C or above; else it is iced.
macro_rules! wet_at_all {
    () => {
        concat!(
            "at_least(",
            water_of!("saturation_pressure(min(c - 2, t))"),
            ", (2501 * ",
            water_of!("saturation_pressure(0)"),
            " - 1.006 * t) / (2501 + 1.86 * t))"
        )
    };
}

const WET_BULB_OF_WEATHER: &str = concat!(
    wet_at_all!(),
    " * root(b, 0, t, ((2501 - 2.326 * b) * ",
    water_of!("saturation_pressure(b)"),
    " - 1.006 * (t - b)) / (2501 + 1.86 * t - 4.186 * b) - ",
    water_of!("saturation_pressure(min(c - 2, t))"),
    ") + (1 - ",
    wet_at_all!(),
    ") * root(b, 0 - 100, min(t, 0), ((2830 - 0.24 * b) * ",
    water_of!("saturation_pressure(b)"),
    " - 1.006 * (t - b)) / (2830 + 1.86 * t - 2.1 * b) - ",
    water_of!("saturation_pressure(min(c - 2, t))"),
    ")"
);

const RATE_OF_WEATHER: &str = concat!(
    "3600000 * 5.9 / 1006 * max(0, ",
    water_of!("saturation_pressure(min(b, t))"),
    " - ",
    water_of!("saturation_pressure(min(c - 2, t))"),
    ")"
);

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "disinfectant.drying",
        unit: Unit::Hour,
        decimals: 0,
        rules: &[exact(
            "sprayed-floor-dries",
            "w / e",
            &[field("w", "disinfectant.coverage_ml_per_m2"), figure("e", "disinfectant.drying_rate")],
            |x| hours(x[0], x[1]),
        )],
    },
    FigureSpec {
        id: "disinfectant.drying_rate",
        unit: Unit::GramPerSquareMetreHour,
        decimals: 0,
        rules: &[exact(
            "drying-in-weather",
            RATE_OF_WEATHER,
            &[field("t", MEAN), field("c", COLDEST), ABOVE_SEA, figure("b", "disinfectant.drying_wet_bulb")],
            |x| Some(rate_of_weather(x, x[3])),
        )
        .from("our-judgement", Status::OurJudgement)
        .between(|x| Some((rate_of_weather(x, x[3]), rate_of_weather(x, x[0]))))],
    },
    FigureSpec {
        id: "disinfectant.drying_wet_bulb",
        unit: Unit::Celsius,
        decimals: 0,
        rules: &[exact(
            "wet-bulb-of-weather",
            WET_BULB_OF_WEATHER,
            &[field("t", MEAN), field("c", COLDEST), ABOVE_SEA],
            |x| {
                let (mean, dew) = mean_and_dew(x);
                let share = moist_air::saturation_pressure(dew) / moist_air::saturation_pressure(mean);
                let air = MoistAir::new(mean, share.min(1.0), moist_air::pressure_at(x[2]))?;
                Some(air.wet_bulb().in_celsius())
            },
        )
        .from("fao-56-1998", Status::FromMemory)],
    },
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

/// Mean of the day and coldest night: the mean, and the dew point, never above it.
fn mean_and_dew(x: &[f64]) -> (Temperature, Temperature) {
    (Temperature::celsius(x[0]), Temperature::celsius((x[1] - DEW_BELOW_K).min(x[0])))
}

/// Mean, coldest night, height above the sea; the temperature of the wet face.
fn rate_of_weather(x: &[f64], face_c: f64) -> f64 {
    let (_, dew) = mean_and_dew(x);
    let face = Temperature::celsius(face_c.min(x[0]));
    drying::from_face(face, dew, moist_air::pressure_at(x[2]), AIRED_M_PER_S)
}

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
