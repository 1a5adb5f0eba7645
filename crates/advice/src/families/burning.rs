//! Fuel for a heat, and how long cylinders of gas last.

use model::{cylinder, heat};
use quantity::fields::{asked_outside, count, field as asked, number};
use quantity::physical::round_up;
use quantity::{Answers, Field, Kind, Need, Status, Unit};

use super::Family;
use super::fuel::{FUEL, constant, high, is_charcoal, is_gas, low, net};
use crate::rule::{FigureSpec, Input, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

const HEAT: &str = "burning.heat_kw";
const HOURS: &str = "burning.hours_h";
const BURNER: &str = "burning.burner_kw";
const BURNERS: &str = "burning.burners";
pub(crate) const CYLINDERS: &str = "burning.cylinders";
pub(crate) const JOINED: &str = "burning.joined";
const DAILY: &str = "burning.hours_per_day_h";
const CYLINDER_KG: &str = "brooding.cylinder_kg";
const SACK_KG: &str = "brooding.sack_kg";
/// The coldest that air gets around the cylinders.
pub(crate) const COLDEST: &str = "weather.coldest_night_c";
const GAS: &str = "burning.gas";

static FIELDS: &[Field] = &[
    asked(HEAT, asked_outside(number(Unit::Kilowatt, 0.01, 1_000.0), 0.2, 100.0), Need::Optional),
    asked(HOURS, asked_outside(number(Unit::Hour, 0.1, 10_000.0), 1.0, 1_000.0), Need::Optional),
    asked(BURNER, asked_outside(number(Unit::Kilowatt, 0.05, 100.0), 0.2, 15.0), Need::Optional),
    asked(BURNERS, count(Unit::Pieces, 1.0, 100.0), Need::Usual("1", Status::Assumed)),
    asked(CYLINDERS, count(Unit::Pieces, 1.0, 100.0), Need::Usual("1", Status::Assumed)),
    asked(JOINED, count(Unit::Pieces, 1.0, 100.0), Need::Usual("1", Status::Assumed)),
    asked(DAILY, number(Unit::Hour, 0.5, 24.0), Need::Usual("14", Status::OurJudgement)),
    asked(GAS, Kind::Choice(&["propane", "butane", "mixed"]), Need::Usual("mixed", Status::Assumed)),
];

static SUMS: &[Sum] = &[
    Sum {
        name: "fuel",
        inputs: &[
            asks("heat_kw", HEAT),
            asks("hours_h", HOURS),
            asks("fuel", FUEL),
            may_ask("cylinder_kg", CYLINDER_KG),
            may_ask("sack_kg", SACK_KG),
        ],
        figures: &[
            "burning.fuel",
            "burning.rate",
            "burning.heat",
            "burning.cylinders_needed",
            "burning.sacks_needed",
            "brooding.fuel_useful",
        ],
        caution: Some("caution-heat-sum"),
    },
    Sum {
        name: "cylinder-life",
        inputs: &[
            asks("cylinder_kg", CYLINDER_KG),
            asks("burner_kw", BURNER),
            may_ask("burners", BURNERS),
            may_ask("cylinders", CYLINDERS),
            may_ask("joined", JOINED),
            may_ask("hours_per_day_h", DAILY),
            may_ask("coldest_night_c", COLDEST),
            may_ask("gas", GAS),
        ],
        figures: &["burning.lasts", "burning.lasts_days", "burning.gas_rate", "burning.steady_gas"],
        caution: Some("caution-cylinder"),
    },
];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "burning.heat",
        unit: Unit::KilowattHour,
        decimals: 1,
        rules: &[exact("heat-for-hours", "k * u", &[field("k", HEAT), field("u", HOURS)], |x| {
            Some(x[0] * x[1])
        })],
    },
    FigureSpec {
        id: "burning.fuel",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact(
            "fuel-for-heat",
            "3.6 * e / j",
            &[figure("e", "burning.heat"), figure("j", "brooding.fuel_useful")],
            |x| Some(heat::fuel(x[0], x[1])),
        )],
    },
    FigureSpec {
        id: "burning.rate",
        unit: Unit::KilogramPerHour,
        decimals: 2,
        rules: &[exact(
            "fuel-an-hour",
            "3.6 * k / j",
            &[field("k", HEAT), figure("j", "brooding.fuel_useful")],
            |x| Some(heat::fuel(x[0], x[1])),
        )],
    },
    FigureSpec {
        id: "burning.cylinders_needed",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "cylinders-for-heat",
            "ceil(f / c)",
            &[figure("f", "burning.fuel"), field("c", CYLINDER_KG)],
            |x| Some(round_up(x[0] / x[1])),
        )
        .when(is_gas)],
    },
    FigureSpec {
        id: "burning.sacks_needed",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "sacks-for-heat",
            "ceil(f / c)",
            &[figure("f", "burning.fuel"), field("c", SACK_KG)],
            |x| Some(round_up(x[0] / x[1])),
        )
        .when(is_charcoal)],
    },
    FigureSpec {
        id: "burning.gas_rate",
        unit: Unit::KilogramPerHour,
        decimals: 2,
        rules: &[exact(
            "gas-an-hour",
            "3.6 * b * k / (q * (e1 + e2) / 2)",
            &[
                field("b", BURNERS),
                field("k", BURNER),
                constant("q", "lpg-net", Unit::MegajoulePerKilogram, || net("lpg")),
                constant("e1", "lpg-low", Unit::One, || low("lpg")),
                constant("e2", "lpg-high", Unit::One, || high("lpg")),
            ],
            |x| Some(heat::fuel(x[0] * x[1], x[2] * (x[3] + x[4]) / 2.0)),
        )
        .from("fuels", Status::FromMemory)
        .between(|x| Some((heat::fuel(x[0] * x[1], x[2] * x[4]), heat::fuel(x[0] * x[1], x[2] * x[3]))))],
    },
    FigureSpec {
        id: "burning.lasts",
        unit: Unit::Hour,
        decimals: 0,
        rules: &[exact(
            "cylinders-last",
            "n * c / g",
            &[field("n", CYLINDERS), field("c", CYLINDER_KG), figure("g", "burning.gas_rate")],
            |x| Some(cylinder::hours(x[0], x[1], x[2])),
        )],
    },
    FigureSpec {
        id: "burning.lasts_days",
        unit: Unit::Day,
        decimals: 1,
        rules: &[exact(
            "days-cylinders-last",
            "h / u",
            &[figure("h", "burning.lasts"), field("u", DAILY)],
            |x| Some(x[0] / x[1]),
        )],
    },
    FigureSpec {
        id: "burning.steady_gas",
        unit: Unit::KilogramPerHour,
        decimals: 2,
        rules: &[
            exact(
                "steady-propane",
                "j * 3.6 * 10 * 0.24 * (c / 13) ^ (2 / 3) * max(0, o + 30) / 380",
                COLD,
                |x| steady(x, -30.0),
            )
            .when(|answers| answers.choice(GAS) == Some("propane"))
            .from("our-judgement", Status::OurJudgement)
            .between(|x| wide(steady(x, -30.0)?)),
            exact(
                "steady-butane",
                "j * 3.6 * 10 * 0.24 * (c / 13) ^ (2 / 3) * max(0, o - 2) / 380",
                COLD,
                |x| steady(x, 2.0),
            )
            .when(|answers| answers.choice(GAS) == Some("butane"))
            .from("our-judgement", Status::OurJudgement)
            .between(|x| wide(steady(x, 2.0)?)),
            exact(
                "steady-mixed",
                "j * 3.6 * 10 * 0.24 * (c / 13) ^ (2 / 3) * max(0, o + 10) / 380",
                COLD,
                |x| steady(x, -10.0),
            )
            .from("our-judgement", Status::OurJudgement)
            .between(|x| wide(steady(x, -10.0)?)),
        ],
    },
];

const COLD: &[Input] = &[field("j", JOINED), field("c", CYLINDER_KG), field("o", COLDEST)];

/// Joined cylinders, what one holds, air around them; the coldest the gas may get.
fn steady(x: &[f64], coldest_gas_c: f64) -> Option<f64> {
    Some(cylinder::steady_kg_per_h(x[0], x[1], x[2], coldest_gas_c))
}

/// How full the cylinders are and how the air stands around them halves or doubles it: our judgement.
fn wide(kg_per_h: f64) -> Option<(f64, f64)> {
    Some((kg_per_h / 2.0, kg_per_h * 2.0))
}

/// Whether gas of the kind told is all butane.
pub(crate) fn is_butane(answers: &Answers) -> bool {
    answers.choice(GAS) == Some("butane")
}
