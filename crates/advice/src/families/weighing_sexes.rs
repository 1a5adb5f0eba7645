//! Cocks and hens weighed together and told apart: mean and spread of each, and what their gap does to the flock's.

use model::weighing;
use quantity::{Status, Unit};

use super::Family;
use super::weighing::{COCKS, CONFIDENCE, TAKEN_OFF, WEIGHTS, cv_interval, halves, percent, taken_off};
use crate::rule::{FigureSpec, Input, exact, figure, list};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };

const BIRDS: &[Input] = &[list("w", WEIGHTS), list("s", COCKS)];
const BIRDS_ON_THE_SCALE: &[Input] = &[TAKEN_OFF, list("w", WEIGHTS), list("s", COCKS)];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "weighing.mean_cocks",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[exact("mean-of-cocks", "sum(s * w) / sum(s) / (1 + b / 100)", BIRDS_ON_THE_SCALE, |x| {
            mean_of(x, true)
        })
        .from("student-1908", Status::FromMemory)
        .confident(|x| mean_interval_of(x, true))],
    },
    FigureSpec {
        id: "weighing.mean_hens",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[exact(
            "mean-of-hens",
            "sum((1 - s) * w) / sum(1 - s) / (1 + b / 100)",
            BIRDS_ON_THE_SCALE,
            |x| mean_of(x, false),
        )
        .from("student-1908", Status::FromMemory)
        .confident(|x| mean_interval_of(x, false))],
    },
    FigureSpec {
        id: "weighing.cv_cocks",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "cv-of-cocks",
            "100 * sqrt(sum(s * (w - sum(s * w) / sum(s)) ^ 2) / (sum(s) - 1)) / (sum(s * w) / sum(s))",
            BIRDS,
            |x| percent(weighing::variation(&of_sex(x, true))),
        )
        .from("vangel-1996", Status::Published)
        .confident(|x| cv_interval_of(x, true))],
    },
    FigureSpec {
        id: "weighing.cv_hens",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "cv-of-hens",
            "100 * sqrt(sum((1 - s) * (w - sum((1 - s) * w) / sum(1 - s)) ^ 2) / (sum(1 - s) - 1)) \
             / (sum((1 - s) * w) / sum(1 - s))",
            BIRDS,
            |x| percent(weighing::variation(&of_sex(x, false))),
        )
        .from("vangel-1996", Status::Published)
        .confident(|x| cv_interval_of(x, false))],
    },
    FigureSpec {
        id: "weighing.sex_gap",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "sex-gap",
            "100 * (sum(s * w) / sum(s) - sum((1 - s) * w) / sum(1 - s)) / mean(w)",
            BIRDS,
            gap,
        )
        .from("student-1908", Status::FromMemory)
        .confident(gap_interval)],
    },
    FigureSpec {
        id: "weighing.cv_within_sex",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "cv-within-sex",
            "100 * sqrt(sum((w - s * (sum(s * w) / sum(s)) - (1 - s) * (sum((1 - s) * w) / sum(1 - s))) ^ 2) \
             / (count(w) - 2)) / mean(w)",
            BIRDS,
            |x| percent(within_sex(x)),
        )
        .from("vangel-1996", Status::Published)
        .confident(|x| cv_interval(halves(x).0.len() as f64 - 1.0, within_sex(x)?))],
    },
    FigureSpec {
        id: "weighing.cv_mixed",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "cv-mixed",
            "sqrt(k ^ 2 + sum(s) / count(s) * (1 - sum(s) / count(s)) * g ^ 2)",
            &[figure("k", "weighing.cv_within_sex"), figure("g", "weighing.sex_gap"), list("s", COCKS)],
            |x| {
                let share = x[2..].iter().sum::<f64>() / (x.len() - 2) as f64;
                Some((x[0] * x[0] + share * (1.0 - share) * x[1] * x[1]).sqrt())
            },
        )],
    },
];

/// The weights of one sex, from the two lists side by side.
fn of_sex(lists: &[f64], cocks: bool) -> Vec<f64> {
    let (weights, sexes) = halves(lists);
    weights.iter().zip(sexes).filter(|(_, sex)| (**sex > 0.5) == cocks).map(|(weight, _)| *weight).collect()
}

fn mean_of(x: &[f64], cocks: bool) -> Option<f64> {
    Some(weighing::mean(&of_sex(&x[1..], cocks))? / taken_off(x[0]))
}

fn mean_interval_of(x: &[f64], cocks: bool) -> Option<weighing::Interval> {
    let weights = of_sex(&x[1..], cocks);
    let sd = weighing::standard_deviation(&weights)? / taken_off(x[0]);
    weighing::mean_interval(weights.len() as f64, mean_of(x, cocks)?, sd, None, CONFIDENCE)
}

fn cv_interval_of(lists: &[f64], cocks: bool) -> Option<weighing::Interval> {
    let weights = of_sex(lists, cocks);
    cv_interval(weights.len() as f64, weighing::variation(&weights)?)
}

/// From the hens' mean to the cocks', in % of the mean of all weighed.
fn gap(lists: &[f64]) -> Option<f64> {
    let (cocks, hens) = (weighing::mean(&of_sex(lists, true))?, weighing::mean(&of_sex(lists, false))?);
    Some(100.0 * (cocks - hens) / weighing::mean(halves(lists).0)?)
}

/// By Student's t on the spread within a sex, which both share.
fn gap_interval(lists: &[f64]) -> Option<weighing::Interval> {
    let (cocks, hens) = (of_sex(lists, true).len() as f64, of_sex(lists, false).len() as f64);
    let spread = percent(within_sex(lists))?;
    let t = model::quantile::student(0.5 + CONFIDENCE / 2.0, cocks + hens - 2.0)?;
    let half = t * spread * (1.0 / cocks + 1.0 / hens).sqrt();
    let gap = gap(lists)?;
    Some((gap - half, gap + half))
}

/// The spread about the mean of the own sex, as a share of the mean of all.
fn within_sex(lists: &[f64]) -> Option<f64> {
    let (weights, _) = halves(lists);
    let squares = |cocks: bool| {
        let weights = of_sex(lists, cocks);
        let mean = weighing::mean(&weights)?;
        Some(weights.iter().map(|weight| (weight - mean).powi(2)).sum::<f64>())
    };
    let freedom = weights.len().checked_sub(2).filter(|freedom| *freedom > 0)? as f64;
    Some(((squares(true)? + squares(false)?) / freedom).sqrt() / weighing::mean(weights)?)
}
