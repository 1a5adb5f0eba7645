//! Weighing: how many birds to weigh, and what the weights say about mean and evenness.

use model::weighing::groups::{self, OfGroups};
use model::weighing::{self, Interval, Wanted, scale, stopping};
use quantity::fields::{asked_outside, count, field as asked, number};
use quantity::{Answers, DayOfAge, Field, Kind, Need, Status, Unit};
use reference::growth::Standard;

use super::Family;
use super::weighing_spots::SPOT_OF;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure, if_known, list};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

pub(crate) const WEIGHTS: &str = "weighing.weights_g";
pub(crate) const CV: &str = "weighing.cv_percent";
pub(crate) const ERROR: &str = "weighing.error_percent";
pub(crate) const FLOCK: &str = "weighing.birds";
const WEIGHED: &str = "weighing.weighed";
/// Weight of each group weighed at once: a crate, a bucket, a sack.
pub(crate) const GROUPS: &str = "weighing.group_weights_g";
/// Birds in each of those.
pub(crate) const GROUP_BIRDS: &str = "weighing.group_birds";
/// Weight of all birds of each spot.
pub(crate) const SPOTS: &str = "weighing.spot_weights_g";
/// Birds of each spot.
pub(crate) const SPOT_BIRDS: &str = "weighing.spot_birds";
/// 1 for a cock and 0 for a hen, bird by bird.
pub(crate) const COCKS: &str = "weighing.cocks";
pub(crate) const AGE: &str = "weighing.age_d";
pub(crate) const STANDARD: &str = "weighing.standard";
pub(crate) const TARGET: &str = "weighing.target_g";
pub(crate) const STEP: &str = "weighing.scale_step_g";
const TEST: &str = "weighing.test_weight_g";
const TEST_SHOWN: &str = "weighing.test_shown_g";
pub(crate) const CORRECT: &str = "weighing.correct_scale";

/// All intervals here cover the truth in 95 samples of 100.
pub(super) const CONFIDENCE: f64 = 0.95;

/// Spots from which on the birds of a spot count as one: with two there is next to nothing to tell their error by.
pub(crate) const SPOTS_ENOUGH: usize = 3;

const fn numbers(unit: Unit, low: f64, high: f64, at_least: usize) -> Kind {
    Kind::Numbers { unit, low, high, at_least, at_most: 2_000 }
}

static FIELDS: &[Field] = &[
    asked(WEIGHTS, numbers(Unit::Gram, 20.0, 10_000.0, 2), Need::Optional),
    asked(CV, asked_outside(number(Unit::Percent, 0.5, 60.0), 5.0, 20.0), Need::Optional),
    asked(ERROR, asked_outside(number(Unit::Percent, 0.2, 20.0), 1.0, 5.0), Need::Optional),
    asked(FLOCK, count(Unit::Birds, 10.0, 100_000.0), Need::Optional),
    asked(WEIGHED, asked_outside(count(Unit::Birds, 2.0, 1_000.0), 20.0, 300.0), Need::Optional),
    asked(GROUPS, numbers(Unit::Gram, 20.0, 200_000.0, 1), Need::Optional),
    asked(GROUP_BIRDS, numbers(Unit::Birds, 1.0, 200.0, 1), Need::Optional),
    asked(SPOTS, numbers(Unit::Gram, 20.0, 10_000_000.0, SPOTS_ENOUGH), Need::Optional),
    asked(SPOT_BIRDS, numbers(Unit::Birds, 1.0, 1_000.0, SPOTS_ENOUGH), Need::Optional),
    asked(COCKS, numbers(Unit::One, 0.0, 1.0, 2), Need::Optional),
    asked(AGE, count(Unit::Day, 0.0, 70.0), Need::Optional),
    asked(STANDARD, Kind::Choice(&crate::weighing::STANDARDS), Need::Optional),
    asked(TARGET, number(Unit::Gram, 20.0, 10_000.0), Need::Optional),
    asked(STEP, asked_outside(number(Unit::Gram, 0.1, 500.0), 0.5, 100.0), Need::Optional),
    asked(TEST, number(Unit::Gram, 50.0, 50_000.0), Need::Optional),
    asked(TEST_SHOWN, number(Unit::Gram, 50.0, 50_000.0), Need::Optional),
    asked(CORRECT, Kind::Choice(&["no", "yes"]), Need::Optional),
];

/// All that a weighing answers, the most wanted first.
pub(crate) const OF_A_WEIGHING: &[&str] = &[
    "weighing.mean",
    "weighing.n",
    "weighing.cv",
    "weighing.uniformity",
    "weighing.more_birds",
    "weighing.off_target",
    "weighing.target",
    "weighing.uniformity_normal",
    "weighing.birds_wanted",
    "weighing.mean_within",
    "weighing.sd",
    "weighing.scale_error",
    "weighing.mean_cocks",
    "weighing.mean_hens",
    "weighing.sex_gap",
    "weighing.cv_cocks",
    "weighing.cv_hens",
    "weighing.cv_within_sex",
    "weighing.between_spots",
    "weighing.within_spots",
];

static SUMS: &[Sum] = &[
    Sum {
        name: "weighing",
        inputs: &[
            may_ask("weights", WEIGHTS),
            may_ask("group_weights", GROUPS),
            may_ask("group_birds", GROUP_BIRDS),
            may_ask("spot_weights", SPOTS),
            may_ask("spot_birds", SPOT_BIRDS),
            may_ask("cocks", COCKS),
            may_ask("spot_of", SPOT_OF),
            may_ask("birds", FLOCK),
            may_ask("error_percent", ERROR),
            may_ask("scale_step_g", STEP),
        ],
        figures: OF_A_WEIGHING,
        caution: None,
    },
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
            "weighing.n",
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
        id: "weighing.n",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[
            exact("groups-counted", "sum(n)", &[list("n", GROUP_BIRDS)], |x| Some(x.iter().sum()))
                .when(by_groups),
            exact("birds-weighed", "count(w)", BIRDS, |x| Some(x.len() as f64)),
        ],
    },
    FigureSpec {
        id: "weighing.scale_bias",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact("scale-bias", "100 * (s - t) / t", &[field("s", TEST_SHOWN), field("t", TEST)], |x| {
            Some(100.0 * (scale::bias(x[1], x[0])? - 1.0))
        })],
    },
    FigureSpec {
        id: "weighing.bias_taken_off",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "bias-taken-off",
            "b * c",
            &[figure("b", "weighing.scale_bias"), Input { symbol: "c", origin: Origin::Chosen(CORRECT, "yes") }],
            |x| Some(x[0] * x[1]),
        )],
    },
    FigureSpec {
        id: "weighing.scale_error",
        unit: Unit::Gram,
        decimals: 1,
        rules: &[
            exact(
                "scale-error-of-groups-corrected",
                "1.959963984540054 * d / sqrt(12) * sqrt((count(T) / sum(n)) ^ 2 + (sum(T) / sum(n) / t) ^ 2)",
                &[field("d", STEP), field("t", TEST), list("T", GROUPS), list("n", GROUP_BIRDS)],
                |x| {
                    let (totals, counts) = halves(&x[2..]);
                    let readings = totals.len() as f64 / counts.iter().sum::<f64>();
                    scale_error_corrected(x[0], readings, groups::ratio_mean(totals, counts)? / x[1])
                },
            )
            .from("our-judgement", Status::OurJudgement)
            .when(|answers| by_groups(answers) && corrected(answers)),
            exact(
                "scale-error-of-groups",
                "1.959963984540054 * d / sqrt(12) * count(n) / sum(n)",
                &[field("d", STEP), list("n", GROUP_BIRDS)],
                |x| {
                    let readings = (x.len() - 1) as f64 / x[1..].iter().sum::<f64>();
                    scale::step_error(x[0], readings, CONFIDENCE)
                },
            )
            .from("our-judgement", Status::OurJudgement)
            .when(by_groups),
            exact(
                "scale-error-corrected",
                "1.959963984540054 * d / sqrt(12) * sqrt(1 + (mean(w) / t) ^ 2)",
                &[field("d", STEP), field("t", TEST), list("w", WEIGHTS)],
                |x| scale_error_corrected(x[0], 1.0, weighing::mean(&x[2..])? / x[1]),
            )
            .from("our-judgement", Status::OurJudgement)
            .when(corrected),
            exact("scale-error", "1.959963984540054 * d / sqrt(12)", &[field("d", STEP)], |x| {
                scale::step_error(x[0], 1.0, CONFIDENCE)
            })
            .from("our-judgement", Status::OurJudgement),
        ],
    },
    FigureSpec {
        id: "weighing.mean_within",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[
            within_groups(
                "within-by-spots",
                &[SCALE_ERROR, TAKEN_OFF, list("T", SPOTS), list("n", SPOT_BIRDS)],
            )
            .when(by_spots),
            within_groups(
                "within-by-groups",
                &[SCALE_ERROR, TAKEN_OFF, list("T", GROUPS), list("n", GROUP_BIRDS)],
            )
            .when(by_groups),
            exact(
                "within-of-flock",
                "sqrt(t95(count(w) - 1) ^ 2 * sum((w - mean(w)) ^ 2) / (count(w) - 1) / count(w) * (1 - count(w) / max(N, count(w))) + s ^ 2) / (1 + b / 100)",
                &[SCALE_ERROR, TAKEN_OFF, field("N", FLOCK), list("w", WEIGHTS)],
                |x| within(x, birds_error(&x[3..], Some(x[2]))?),
            )
            .from("student-1908", Status::FromMemory)
            .when(flock_known),
            exact(
                "within",
                "sqrt(t95(count(w) - 1) ^ 2 * sum((w - mean(w)) ^ 2) / (count(w) - 1) / count(w) + s ^ 2) / (1 + b / 100)",
                &[SCALE_ERROR, TAKEN_OFF, list("w", WEIGHTS)],
                |x| within(x, birds_error(&x[2..], None)?),
            )
            .from("student-1908", Status::FromMemory),
        ],
    },
    FigureSpec {
        id: "weighing.mean",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[
            mean_of_groups("spots-mean", &[WITHIN, TAKEN_OFF, list("T", SPOTS), list("n", SPOT_BIRDS)])
                .when(by_spots),
            mean_of_groups(
                "groups-mean",
                &[WITHIN, TAKEN_OFF, list("T", GROUPS), list("n", GROUP_BIRDS)],
            )
            .when(by_groups),
            exact(
                "weights-mean",
                "sum(w) / count(w) / (1 + b / 100)",
                &[WITHIN, TAKEN_OFF, list("w", WEIGHTS)],
                |x| Some(weighing::mean(&x[2..])? / taken_off(x[1])),
            )
            .from("student-1908", Status::FromMemory)
            .confident(|x| around(weighing::mean(&x[2..])? / taken_off(x[1]), x[0])),
        ],
    },
    FigureSpec {
        id: "weighing.sd",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[
            exact(
                "groups-sd",
                "sqrt(sum((T - sum(T) / sum(n) * n) ^ 2 / n) / (count(T) - 1))",
                &[list("T", GROUPS), list("n", GROUP_BIRDS)],
                |x| Some(told_groups(x)?.bird_sd),
            )
            .from("cochran-1977", Status::FromMemory)
            .confident(|x| told_groups(x)?.sd_interval(CONFIDENCE))
            .when(by_groups),
            from_weights(
                "weights-sd",
                "sqrt(sum((w - mean(w)) ^ 2) / (count(w) - 1))",
                weighing::standard_deviation,
            )
            .confident(|x| {
                weighing::deviation_interval(x.len() as f64, weighing::standard_deviation(x)?, CONFIDENCE)
            }),
        ],
    },
    FigureSpec {
        id: "weighing.cv",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[
            exact(
                "groups-cv",
                "100 * sqrt(sum((T - sum(T) / sum(n) * n) ^ 2 / n) / (count(T) - 1)) / (sum(T) / sum(n))",
                &[list("T", GROUPS), list("n", GROUP_BIRDS)],
                |x| told_groups(x).map(|of| 100.0 * of.bird_sd / of.mean),
            )
            .from("cochran-1977", Status::FromMemory)
            .confident(|x| {
                let of = told_groups(x)?;
                percents(of.sd_interval(CONFIDENCE).map(|(low, high)| (low / of.mean, high / of.mean)))
            })
            .when(by_groups),
            from_weights(
                "weights-cv",
                "100 * sqrt(sum((w - mean(w)) ^ 2) / (count(w) - 1)) / mean(w)",
                |x| percent(weighing::variation(x)),
            )
            .from("vangel-1996", Status::Published)
            .confident(|x| cv_interval(x.len() as f64, weighing::variation(x)?))
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
            |x| percent(weighing::uniformity(x).filter(|_| x.len() > 1)),
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
    FigureSpec {
        id: "weighing.birds_wanted",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[
            exact(
                "birds-wanted-together-of-flock",
                "min(N, ceil(n * max(1, (h / (e / 100 * m)) ^ 2)))",
                &[
                    figure("n", "weighing.n"),
                    figure("h", "weighing.mean_within"),
                    field("e", ERROR),
                    figure("m", "weighing.mean"),
                    field("N", FLOCK),
                ],
                |x| Some(stopping::clustered_birds_wanted(x[0], x[1], x[2] / 100.0 * x[3])?.min(x[4])),
            )
            .from("our-judgement", Status::OurJudgement)
            .when(|answers| (by_groups(answers) || by_spots(answers)) && flock_known(answers)),
            exact(
                "birds-wanted-together",
                "ceil(n * max(1, (h / (e / 100 * m)) ^ 2))",
                &[
                    figure("n", "weighing.n"),
                    figure("h", "weighing.mean_within"),
                    field("e", ERROR),
                    figure("m", "weighing.mean"),
                ],
                |x| stopping::clustered_birds_wanted(x[0], x[1], x[2] / 100.0 * x[3]),
            )
            .from("our-judgement", Status::OurJudgement)
            .when(|answers| by_groups(answers) || by_spots(answers)),
            exact(
                "birds-wanted-of-flock",
                "least(m, min(ceil(max(n, 30)), N), e * sqrt(m) - t95(m - 1) * k * sqrt((1 + 4 / m) * (1 - m / N)))",
                &[
                    figure("k", "weighing.cv"),
                    field("e", ERROR),
                    figure("n", "weighing.n"),
                    field("N", FLOCK),
                ],
                |x| stopping::birds_wanted(wanted(x[0], x[1], Some(x[3])), x[2]),
            )
            .from("our-judgement", Status::OurJudgement)
            .when(flock_known),
            exact(
                "birds-wanted",
                "least(m, ceil(max(n, 30)), e * sqrt(m) - t95(m - 1) * k * sqrt(1 + 4 / m))",
                &[figure("k", "weighing.cv"), field("e", ERROR), figure("n", "weighing.n")],
                |x| stopping::birds_wanted(wanted(x[0], x[1], None), x[2]),
            )
            .from("our-judgement", Status::OurJudgement),
        ],
    },
    FigureSpec {
        id: "weighing.more_birds",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact(
            "more-birds",
            "max(a - n, 0)",
            &[figure("a", "weighing.birds_wanted"), figure("n", "weighing.n")],
            |x| Some((x[0] - x[1]).max(0.0)),
        )],
    },
    FigureSpec {
        id: "weighing.target",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[
            exact("target-told", "g", &[field("g", TARGET)], |x| Some(x[0]))
                .from("grower", Status::Told)
                .when(|answers| answers.number(TARGET).is_some()),
            exact("target-fast", "growth_fast(a)", AT_AGE, |x| standard_weight(Standard::Fast, x[0]))
                .from("growth-fast", Status::FromMemory)
                .when(|answers| answers.choice(STANDARD) == Some("fast")),
            exact("target-slow", "growth_slow(a)", AT_AGE, |x| standard_weight(Standard::Slow, x[0]))
                .from("growth-slow", Status::Interpolated)
                .when(|answers| answers.choice(STANDARD) == Some("slow")),
            exact("target-open-house", "growth_open_house(a)", AT_AGE, |x| {
                standard_weight(Standard::OpenHouse, x[0])
            })
            .from("growth-open-house", Status::Modelled)
            .when(|answers| answers.choice(STANDARD) == Some("open-house")),
        ],
    },
    FigureSpec {
        id: "weighing.off_target",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "off-target",
            "100 * (m - g) / g",
            &[figure("m", "weighing.mean"), figure("g", "weighing.target")],
            |x| Some(100.0 * (x[0] - x[1]) / x[1]),
        )],
    },
];

const BIRDS: &[Input] = &[list("w", WEIGHTS)];
const AT_AGE: &[Input] = &[field("a", AGE)];

/// How far off the scale alone can put the mean.
const SCALE_ERROR: Input = if_known("s", "weighing.scale_error");
/// What the scale shows too much, where it is to be taken off, %.
pub(super) const TAKEN_OFF: Input = if_known("b", "weighing.bias_taken_off");
/// How far off the mean may be: its range alone.
const WITHIN: Input = if_known("h", "weighing.mean_within");

const fn from_weights(name: &'static str, formula: &'static str, compute: fn(&[f64]) -> Option<f64>) -> Rule {
    exact(name, formula, BIRDS, compute)
}

/// By crates and by spots alike: what hangs together is counted as one.
const fn within_groups(name: &'static str, inputs: &'static [Input]) -> Rule {
    let formula = "sqrt(t95(count(T) - 1) ^ 2 * count(T) / (count(T) - 1) * sum((T - sum(T) / sum(n) * n) ^ 2) \
                   / sum(n) ^ 2 + s ^ 2) / (1 + b / 100)";
    let compute = |x: &[f64]| within(x, told_groups(&x[2..])?.mean_error(CONFIDENCE)?);
    exact(name, formula, inputs, compute).from("cochran-1977", Status::FromMemory)
}

const fn mean_of_groups(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "sum(T) / sum(n) / (1 + b / 100)", inputs, groups_mean)
        .from("cochran-1977", Status::FromMemory)
        .confident(|x| around(groups_mean(x)?, x[0]))
}

fn groups_mean(x: &[f64]) -> Option<f64> {
    let (totals, counts) = halves(&x[2..]);
    Some(groups::ratio_mean(totals, counts)? / taken_off(x[1]))
}

/// Two lists that go side by side.
pub(super) fn halves(lists: &[f64]) -> (&[f64], &[f64]) {
    lists.split_at(lists.len() / 2)
}

fn told_groups(lists: &[f64]) -> Option<OfGroups> {
    let (totals, counts) = halves(lists);
    groups::of_groups(totals, counts)
}

/// The error by the birds and that by the scale, the first two of `x` being the scale's and the bias taken off.
fn within(x: &[f64], by_birds: f64) -> Option<f64> {
    Some(scale::together(by_birds, x[0]) / taken_off(x[1]))
}

fn birds_error(weights: &[f64], flock: Option<f64>) -> Option<f64> {
    let (sd, n) = (weighing::standard_deviation(weights)?, weights.len() as f64);
    // A flock that is said to be smaller than what was weighed was weighed whole.
    weighing::mean_error(sd, n, flock.map(|flock| flock.max(n)), CONFIDENCE)
}

/// The step stands in the reading of the birds and in that of the test weight.
fn scale_error_corrected(step: f64, readings: f64, mean_by_test: f64) -> Option<f64> {
    Some(scale::together(
        scale::step_error(step, readings, CONFIDENCE)?,
        scale::step_error(step, mean_by_test, CONFIDENCE)?,
    ))
}

/// What a weight is divided by to take off a bias of so many %.
pub(super) fn taken_off(bias_percent: f64) -> f64 {
    1.0 + bias_percent / 100.0
}

/// No bird weighs less than nothing, however little is known.
fn around(value: f64, half: f64) -> Option<Interval> {
    Some(((value - half).max(0.0), value + half))
}

fn standard_weight(standard: Standard, age: f64) -> Option<f64> {
    let curve = standard.curve().ok()?;
    // Tables are in grams; what goes through kilograms and back is the same number to a millionth.
    Some((curve.weight(DayOfAge(age as i32))?.in_grams() * 1e6).round() / 1e6)
}

fn wanted(cv_percent: f64, error_percent: f64, flock: Option<f64>) -> Wanted {
    let (variation, error) = (cv_percent / 100.0, error_percent / 100.0);
    Wanted { variation, error, flock, confidence: CONFIDENCE }
}

fn flock_known(answers: &Answers) -> bool {
    answers.number(FLOCK).is_some()
}

pub(crate) fn by_groups(answers: &Answers) -> bool {
    !answers.numbers(GROUPS).is_empty()
}

pub(crate) fn by_spots(answers: &Answers) -> bool {
    answers.numbers(SPOTS).len() >= SPOTS_ENOUGH
}

fn corrected(answers: &Answers) -> bool {
    answers.choice(CORRECT) == Some("yes") && answers.number(TEST).is_some()
}

pub(super) fn percent(share: Option<f64>) -> Option<f64> {
    share.map(|share| share * 100.0)
}

pub(super) fn percents(ends: Option<Interval>) -> Option<Interval> {
    ends.map(|(low, high)| (low * 100.0, high * 100.0))
}

pub(super) fn cv_interval(n: f64, variation: f64) -> Option<Interval> {
    percents(weighing::variation_interval(n, variation, CONFIDENCE))
}
