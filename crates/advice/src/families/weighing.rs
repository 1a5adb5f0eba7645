//! Weighing: how many birds to weigh, and what the weights say about mean and evenness.

use model::weighing::{self, Wanted};
use quantity::fields::{asked_outside, count, field as asked, number};
use quantity::{Answers, Field, Kind, Need, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Input, Rule, exact, field, figure, list};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

pub(crate) const WEIGHTS: &str = "weighing.weights_g";
pub(crate) const CV: &str = "weighing.cv_percent";
const ERROR: &str = "weighing.error_percent";
const FLOCK: &str = "weighing.birds";
const WEIGHED: &str = "weighing.weighed";

/// All intervals here cover the truth in 95 samples of 100.
const CONFIDENCE: f64 = 0.95;

static FIELDS: &[Field] = &[
    asked(
        WEIGHTS,
        Kind::Numbers { unit: Unit::Gram, low: 20.0, high: 10_000.0, at_least: 2, at_most: 500 },
        Need::Optional,
    ),
    asked(CV, asked_outside(number(Unit::Percent, 0.5, 60.0), 5.0, 20.0), Need::Optional),
    asked(ERROR, asked_outside(number(Unit::Percent, 0.2, 20.0), 1.0, 5.0), Need::Optional),
    asked(FLOCK, count(Unit::Birds, 10.0, 100_000.0), Need::Optional),
    asked(WEIGHED, asked_outside(count(Unit::Birds, 2.0, 1_000.0), 20.0, 300.0), Need::Optional),
];

static SUMS: &[Sum] = &[
    Sum {
        name: "sample-size",
        inputs: &[
            asks("cv_percent", CV),
            asks("error_percent", ERROR),
            may_ask("birds", FLOCK),
            may_ask("weighed", WEIGHED),
        ],
        figures: &["weighing.sample_size", "weighing.sample_size_normal", "weighing.mean_error"],
        caution: None,
    },
    Sum {
        name: "uniformity",
        inputs: &[may_ask("weights", WEIGHTS), may_ask("cv_percent", CV)],
        figures: &[
            "weighing.uniformity",
            "weighing.uniformity_normal",
            "weighing.cv",
            "weighing.mean",
            "weighing.sd",
            "weighing.birds_weighed",
        ],
        caution: None,
    },
];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "weighing.sample_size_normal",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[
            exact(
                "sample-normal-of-flock",
                "ceil((1.959963984540054 * k / e) ^ 2 / (1 + (1.959963984540054 * k / e) ^ 2 / N))",
                &[field("k", CV), field("e", ERROR), field("N", FLOCK)],
                |x| weighing::sample_size_by_bell_curve(wanted(x[0], x[1], Some(x[2]))),
            )
            .from("cochran-1977", Status::FromMemory)
            .when(flock_known),
            exact(
                "sample-normal",
                "ceil((1.959963984540054 * k / e) ^ 2)",
                &[field("k", CV), field("e", ERROR)],
                |x| weighing::sample_size_by_bell_curve(wanted(x[0], x[1], None)),
            )
            .from("cochran-1977", Status::FromMemory),
        ],
    },
    FigureSpec {
        id: "weighing.sample_size",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[
            exact(
                "sample-of-flock",
                "least(n, max(ceil(n0), 2), e * sqrt(n) - t95(n - 1) * k * sqrt(1 - n / N))",
                &[
                    field("k", CV),
                    field("e", ERROR),
                    field("N", FLOCK),
                    figure("n0", "weighing.sample_size_normal"),
                ],
                |x| weighing::sample_size(wanted(x[0], x[1], Some(x[2])), x[3]),
            )
            .from("cochran-1977", Status::FromMemory)
            .when(flock_known),
            exact(
                "sample",
                "least(n, max(ceil(n0), 2), e * sqrt(n) - t95(n - 1) * k)",
                &[field("k", CV), field("e", ERROR), figure("n0", "weighing.sample_size_normal")],
                |x| weighing::sample_size(wanted(x[0], x[1], None), x[2]),
            )
            .from("cochran-1977", Status::FromMemory),
        ],
    },
    FigureSpec {
        id: "weighing.mean_error",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[
            exact(
                "mean-error-of-flock",
                "t95(n - 1) * k * sqrt(1 - n / N) / sqrt(n)",
                &[field("k", CV), field("n", WEIGHED), field("N", FLOCK)],
                |x| weighing::mean_error(x[0], x[1], Some(x[2]), CONFIDENCE),
            )
            .from("student-1908", Status::FromMemory)
            .when(flock_known),
            exact("mean-error", "t95(n - 1) * k / sqrt(n)", &[field("k", CV), field("n", WEIGHED)], |x| {
                weighing::mean_error(x[0], x[1], None, CONFIDENCE)
            })
            .from("student-1908", Status::FromMemory),
        ],
    },
    FigureSpec {
        id: "weighing.birds_weighed",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact("birds-weighed", "count(w)", BIRDS, |x| Some(x.len() as f64))],
    },
    FigureSpec {
        id: "weighing.mean",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[from_weights("weights-mean", "sum(w) / count(w)", weighing::mean)
            .from("student-1908", Status::FromMemory)
            .confident(|x| {
                let (n, sd) = (x.len() as f64, weighing::standard_deviation(x)?);
                weighing::mean_interval(n, weighing::mean(x)?, sd, None, CONFIDENCE)
            })],
    },
    FigureSpec {
        id: "weighing.sd",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[from_weights(
            "weights-sd",
            "sqrt(sum((w - mean(w)) ^ 2) / (count(w) - 1))",
            weighing::standard_deviation,
        )
        .confident(|x| {
            weighing::deviation_interval(x.len() as f64, weighing::standard_deviation(x)?, CONFIDENCE)
        })],
    },
    FigureSpec {
        id: "weighing.cv",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[
            from_weights(
                "weights-cv",
                "100 * sqrt(sum((w - mean(w)) ^ 2) / (count(w) - 1)) / mean(w)",
                |x| percent(weighing::variation(x)),
            )
            .from("vangel-1996", Status::Published)
            .confident(|x| {
                let (n, cv) = (x.len() as f64, weighing::variation(x)?);
                percents(weighing::variation_interval(n, cv, CONFIDENCE))
            })
            .when(|answers| !answers.numbers(WEIGHTS).is_empty()),
            exact("cv-told", "k", &[field("k", CV)], |x| Some(x[0])).from("grower", Status::Told),
        ],
    },
    FigureSpec {
        id: "weighing.uniformity",
        unit: Unit::Percent,
        decimals: 0,
        rules: &[from_weights(
            "weights-uniformity",
            "100 * count_between(w, 0.9 * mean(w), 1.1 * mean(w)) / count(w)",
            |x| percent(weighing::uniformity(x)),
        )
        .from("uniformity-guides", Status::Published)
        .confident(|x| {
            let n = x.len() as f64;
            percents(weighing::share_interval(weighing::uniformity(x)? * n, n, CONFIDENCE))
        })],
    },
    FigureSpec {
        id: "weighing.uniformity_normal",
        unit: Unit::Percent,
        decimals: 0,
        rules: &[exact(
            "uniformity-of-bell-curve",
            "100 * (2 * phi(10 / k) - 1)",
            &[figure("k", "weighing.cv")],
            |x| percent(weighing::uniformity_of_bell_curve(x[0] / 100.0, 0.1)),
        )
        .from("bell-curve", Status::Exact)],
    },
];

const BIRDS: &[Input] = &[list("w", WEIGHTS)];

const fn from_weights(name: &'static str, formula: &'static str, compute: fn(&[f64]) -> Option<f64>) -> Rule {
    exact(name, formula, BIRDS, compute)
}

fn wanted(cv_percent: f64, error_percent: f64, flock: Option<f64>) -> Wanted {
    let (variation, error) = (cv_percent / 100.0, error_percent / 100.0);
    Wanted { variation, error, flock, confidence: CONFIDENCE }
}

fn flock_known(answers: &Answers) -> bool {
    answers.number(FLOCK).is_some()
}

fn percent(share: Option<f64>) -> Option<f64> {
    share.map(|share| share * 100.0)
}

fn percents(ends: Option<weighing::Interval>) -> Option<weighing::Interval> {
    ends.map(|(low, high)| (low * 100.0, high * 100.0))
}
