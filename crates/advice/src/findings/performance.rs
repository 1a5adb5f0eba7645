//! What is to say about performance.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::families::performance::{CHICKS_WEIGHT, DEAD, FEED, MEAN_WEIGHT, NEAR_1500_G, NEAR_2500_G};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    fcr_hardly_possible,
    correction_misleads,
    gain_needs_both,
    epef_scale,
    sells_at_a_loss,
    nothing_left_for_feed,
    break_even_means,
];

/// Feed conversions of small open houses lie between these (our judgement, wide).
const FCR_CAN_BE: std::ops::RangeInclusive<f64> = 1.1..=4.0;

fn fcr_hardly_possible(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let fcr = outcome.number("performance.fcr_sold")?;
    (!FCR_CAN_BE.contains(&fcr)).then(|| {
        Finding::new("fcr-hardly-possible", Weight::Look)
            .at(FEED)
            .with("fcr", Detail::Figure("performance.fcr_sold"))
    })
}

fn correction_misleads(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("performance.fcr_sold")?;
    let weight = answers.number(MEAN_WEIGHT)?;
    let near = NEAR_2500_G.contains(&weight) || NEAR_1500_G.contains(&weight);
    let grams = |grams| number(grams, Unit::Gram, 0);
    (!near).then(|| {
        Finding::new("correction-misleads", Weight::Look)
            .at(MEAN_WEIGHT)
            .with("weight", grams(weight))
            .with("low_light", grams(*NEAR_1500_G.start()))
            .with("high_light", grams(*NEAR_1500_G.end()))
            .with("low_heavy", grams(*NEAR_2500_G.start()))
            .with("high_heavy", grams(*NEAR_2500_G.end()))
    })
}

fn gain_needs_both(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("performance.fcr_sold")?;
    let missing = match (answers.number(DEAD), answers.number(CHICKS_WEIGHT)) {
        (Some(_), None) => CHICKS_WEIGHT,
        (None, Some(_)) => DEAD,
        _ => return None,
    };
    Some(Finding::new("gain-needs-both", Weight::Note).at(missing))
}

fn epef_scale(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("performance.epef").map(|_| Finding::new("epef-scale", Weight::Note))
}

fn sells_at_a_loss(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let profit = outcome.number("performance.profit")?;
    (profit < 0.0).then(|| {
        Finding::new("sells-at-a-loss", Weight::Look)
            .with("loss", number(-profit, Unit::Money, 2))
            .with("price", Detail::Figure("performance.break_even_price"))
    })
}

fn nothing_left_for_feed(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let free = outcome.number("performance.break_even_fcr")? == 0.0;
    free.then(|| Finding::new("nothing-left-for-feed", Weight::Look))
}

fn break_even_means(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("performance.break_even_price").map(|_| Finding::new("break-even-means", Weight::Note))
}
