//! What is to say about weighing.

use model::weighing::{self, sexes};
use quantity::{Answers, Unit};

use super::{Check, number};
use crate::families::weighing::{self as asked, SPOTS_ENOUGH, WEIGHTS};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    sample_below_thirty,
    odd_weights,
    few_weighed,
    scale_off,
    few_spots,
    crates_tell_no_evenness,
    counted_by_spots,
    sexes_by_weight,
    uneven,
    cv_scale,
    weigh_all_penned,
];

/// Fewer are never enough, whatever arithmetic says (common practice).
const FEWEST: f64 = 30.0;

/// From fewer the counted evenness strays from the curve by luck alone.
const ENOUGH: f64 = 50.0;

/// Above this coefficient of variation, %, a flock of both sexes is uneven (from memory, two breeders' guides).
const UNEVEN: f64 = 12.0;

/// The share of weights that stand far out above which it is the flock and not the pen that slipped.
const OFTEN_ODD: f64 = 0.05;

fn sample_below_thirty(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let birds = outcome.number("weighing.sample_size")?;
    (birds < FEWEST).then(|| {
        Finding::new("sample-below-thirty", Weight::Look)
            .with("birds", Detail::Figure("weighing.sample_size"))
            .with("fewest", number(FEWEST, Unit::Birds, 0))
    })
}

fn odd_weights(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let weights = answers.numbers(WEIGHTS);
    let odd = weighing::odd_ones(weights);
    let worst = furthest(weights, &odd)?;
    let share = odd.len() as f64 / weights.len() as f64;
    let told = |name| {
        Finding::new(name, Weight::Look).at(WEIGHTS).with("count", number(odd.len() as f64, Unit::Pieces, 0))
    };
    if odd.len() > 1 && share > OFTEN_ODD {
        return Some(told("many-odd-weights").with("of", number(weights.len() as f64, Unit::Pieces, 0)));
    }
    let others: Vec<f64> = weights.iter().filter(|weight| !odd.contains(weight)).copied().collect();
    Some(
        told("odd-weights")
            .with("worst", number(worst, Unit::Gram, 0))
            .with("cv", number(100.0 * weighing::variation(&others)?, Unit::Percent, 1))
            .with("mean", number(weighing::mean(&others)?, Unit::Gram, 0)),
    )
}

/// The odd weight that stands furthest from the middle.
fn furthest(weights: &[f64], odd: &[f64]) -> Option<f64> {
    let middle = weighing::median(weights)?;
    let away = |weight: &f64| (weight - middle).abs();
    odd.iter().copied().max_by(|a, b| away(a).total_cmp(&away(b)))
}

fn few_weighed(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let birds = outcome.number("weighing.n")?;
    (birds < ENOUGH).then(|| {
        Finding::new("few-weighed", Weight::Look)
            .with("birds", Detail::Figure("weighing.n"))
            .with("enough", number(ENOUGH, Unit::Birds, 0))
    })
}

/// Said only where the spread is above the limit beyond doubt, or was told; and not of slips of the pen.
fn uneven(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("weighing.uniformity_normal").filter(|_| odd_weights(answers, outcome).is_none())?;
    let cv = outcome.get("weighing.cv")?.figure;
    let surely = cv.band.map_or(cv.value.number(), |band| band.low);
    (surely > UNEVEN)
        .then(|| Finding::new("uneven", Weight::Look).with("uneven", number(UNEVEN, Unit::Percent, 0)))
}

fn cv_scale(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("weighing.uniformity_normal").filter(|_| uneven(answers, outcome).is_none())?;
    Some(Finding::new("cv-scale", Weight::Note))
}

fn weigh_all_penned(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let weighs = outcome.get("weighing.sample_size").or_else(|| outcome.get("weighing.n"));
    weighs.map(|_| Finding::new("weigh-all-penned", Weight::Note))
}

/// A scale that is off by more than this share of a test weight, %, moves every bird by more than feed or sale should go by
/// (our judgement).
const SCALE_OFF: f64 = 1.0;

fn scale_off(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let bias = outcome.number("weighing.scale_bias")?;
    let is_left = answers.choice(asked::CORRECT) != Some("yes");
    (bias.abs() > SCALE_OFF && is_left).then(|| {
        Finding::new("scale-off", Weight::Look)
            .with("off", number(bias.abs(), Unit::Percent, 1))
            .at(asked::CORRECT)
            .out("check-scale")
    })
}

fn few_spots(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let spots = answers.numbers(asked::SPOTS).len();
    (1..SPOTS_ENOUGH)
        .contains(&spots)
        .then(|| Finding::new("few-spots", Weight::Look).with("spots", number(spots as f64, Unit::Pieces, 0)))
}

fn crates_tell_no_evenness(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let is_so = asked::by_groups(answers) && outcome.get("weighing.uniformity").is_none();
    (is_so && outcome.get("weighing.n").is_some()).then(|| Finding::new("crates-no-evenness", Weight::Note))
}

fn counted_by_spots(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("weighing.mean_within").filter(|_| asked::by_spots(answers))?;
    let spots = answers.numbers(asked::SPOTS).len() as f64;
    Some(Finding::new("counted-by-spots", Weight::Note).with("spots", number(spots, Unit::Pieces, 0)))
}

/// Whether weights alone tell two sexes apart; not asked where somebody looked, and not of so few that nothing could show.
fn sexes_by_weight(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("weighing.n").filter(|_| answers.numbers(asked::COCKS).is_empty())?;
    let weights = answers.numbers(WEIGHTS);
    if (weights.len() as f64) < FEWEST {
        return None;
    }
    let Some(two) = sexes::found_apart(weights) else {
        return Some(Finding::new("sexes-not-told", Weight::Note));
    };
    let found = Finding::new("two-sizes", Weight::Note)
        .with("light", number(two.light, Unit::Gram, 0))
        .with("heavy", number(two.heavy, Unit::Gram, 0))
        .with("share", number(100.0 * two.heavy_share, Unit::Percent, 0))
        .with("cv", number(100.0 * two.variation, Unit::Percent, 1));
    Some(found)
}
