//! Catching: how many birds a crate takes, how many crates, and what birds lose on an empty gut.

use quantity::fields::{count, field as asked, number};
use quantity::{Answers, Field, Need, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Rule, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

const WEIGHT: &str = "catching.weight_kg";

static FIELDS: &[Field] = &[
    asked("catching.birds", count(Unit::Birds, 1.0, 60_000.0), Need::Optional),
    asked(WEIGHT, number(Unit::Kilogram, 0.3, 10.0), Need::Optional),
    asked(
        "catching.crate_length_cm",
        number(Unit::Centimetre, 20.0, 250.0),
        Need::Usual("80", Status::CommonPractice),
    ),
    asked(
        "catching.crate_width_cm",
        number(Unit::Centimetre, 20.0, 150.0),
        Need::Usual("50", Status::CommonPractice),
    ),
    asked("catching.fewer_percent", number(Unit::Percent, 0.0, 60.0), Need::Usual("0", Status::Assumed)),
    asked("catching.without_feed_h", number(Unit::Hour, 0.0, 24.0), Need::Optional),
];

static SUMS: &[Sum] = &[Sum {
    name: "catching",
    inputs: &[
        asks("birds", "catching.birds"),
        asks("weight_kg", WEIGHT),
        may_ask("crate_length_cm", "catching.crate_length_cm"),
        may_ask("crate_width_cm", "catching.crate_width_cm"),
        may_ask("fewer_percent", "catching.fewer_percent"),
        may_ask("without_feed_h", "catching.without_feed_h"),
    ],
    figures: &["catching.crates", "catching.birds_a_crate", "catching.weight_after"],
    caution: Some("sum-catching-caution"),
}];

fn weighs(answers: &Answers, from: f64, to: f64) -> bool {
    answers.number(WEIGHT).is_some_and(|kg| (from..to).contains(&kg))
}

macro_rules! crated {
    ($name:literal, $formula:literal, $area:literal) => {
        exact(
            $name,
            $formula,
            &[
                field("l", "catching.crate_length_cm"),
                field("w", "catching.crate_width_cm"),
                field("h", "catching.fewer_percent"),
                field("k", WEIGHT),
            ],
            |x| model::catching::birds_a_crate(x[0] * x[1], x[2] / 100.0, $area, x[3]),
        )
        .from("eu-2005-1", Status::FromMemory)
    };
}

const LIGHT: Rule = crated!("crate-of-light-birds", "floor(l * w * (1 - h / 100) / (190 * k))", 190.0);
const USUAL: Rule = crated!("crate-of-birds", "floor(l * w * (1 - h / 100) / (160 * k))", 160.0);
const HEAVY: Rule = crated!("crate-of-heavy-birds", "floor(l * w * (1 - h / 100) / (115 * k))", 115.0);
const HEAVIEST: Rule = crated!("crate-of-heaviest-birds", "floor(l * w * (1 - h / 100) / (105 * k))", 105.0);

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "catching.birds_a_crate",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[
            LIGHT.when(|answers| weighs(answers, 0.0, 1.6)),
            USUAL.when(|answers| weighs(answers, 1.6, 3.0)),
            HEAVY.when(|answers| weighs(answers, 3.0, 5.0)),
            HEAVIEST,
        ],
    },
    FigureSpec {
        id: "catching.crates",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "crates",
            "ceil(n / max(1, b))",
            &[field("n", "catching.birds"), figure("b", "catching.birds_a_crate")],
            |x| model::catching::crates(x[0], x[1].max(1.0)),
        )],
    },
    FigureSpec {
        id: "catching.weight_after",
        unit: Unit::Kilogram,
        decimals: 3,
        rules: &[exact(
            "weight-without-feed",
            "k * (1 - 0.00305 * h)",
            &[field("k", WEIGHT), field("h", "catching.without_feed_h")],
            |x| Some(x[0] * (1.0 - 0.00305 * x[1])),
        )
        .from("feed-off-review", Status::Published)
        .between(|x| Some((x[0] * (1.0 - 0.0043 * x[1]), x[0] * (1.0 - 0.0018 * x[1]))))],
    },
];
