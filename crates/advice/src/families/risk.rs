//! What may be earned, over many futures of the batch.

use model::risk::{self, Summary};
use model::scenarios::{self, Batch, Scenario, SoldBy};
use quantity::{Answers, Band, BandKind, Status, Unit};

use super::money::by_head;
use super::space::standard;
use crate::outcome::Outcome;
use crate::procedure::{Accuracy, AllSimulated, Procedure, Simulated, Simulation};
use crate::rule::{FigureSpec, Input, Origin, always, field, figure};

/// The simulation of a batch's profit.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "futures", source: "our-judgement", status: Status::OurJudgement },
    inputs: INPUTS,
    figures: FIGURES,
    applies: always,
    run: |answers, numbers, _| {
        let futures = futures(answers, numbers)?;
        let profits: Vec<f64> = futures.iter().map(|future| future.profit).collect();
        answer(&profits)
    },
};

/// What is told of profits, of a plan and of a batch on its way.
pub(super) static FIGURES: &[FigureSpec] = &[
    FigureSpec { id: "risk.loss_probability", unit: Unit::One, decimals: 3, rules: &[] },
    FigureSpec { id: "risk.profit", unit: Unit::Money, decimals: 0, rules: &[] },
    FigureSpec { id: "risk.profit_tenth", unit: Unit::Money, decimals: 0, rules: &[] },
    FigureSpec { id: "risk.expected_shortfall", unit: Unit::Money, decimals: 0, rules: &[] },
];

static INPUTS: &[Input] = &[
    field("c", "batch.chicks"),
    field("p", "prices.chick_each"),
    figure("C", "money.cost_total"),
    figure("f", "feed.cost"),
    figure("F", "feed.total"),
    figure("n", "sale.birds"),
    figure("w", "sale.mean_weight"),
    figure("K", "sale.live_kg"),
    figure("s", "money.sales"),
    Input { symbol: "l", origin: Origin::IfTold("prices.litter_sold") },
    field("z", "settings.seed"),
    field("m", "settings.futures"),
];

/// The futures that the figures are counted from; `None` while what they need is not known.
pub fn of_plan(answers: &Answers, outcome: &Outcome) -> Option<(Vec<Scenario>, SoldBy)> {
    let worked = outcome.get(FIGURES[0].id)?;
    let numbers: Vec<f64> = worked.inputs.iter().map(|input| input.value).collect();
    Some((futures(answers, &numbers)?, sold_by(answers)))
}

fn sold_by(answers: &Answers) -> SoldBy {
    if by_head(answers) { SoldBy::Head } else { SoldBy::Kilogram }
}

fn futures(answers: &Answers, x: &[f64]) -> Option<Vec<Scenario>> {
    let [chicks, chick_cost, cost, feed_cost, feed, birds, weight, kg, sales, litter, seed, count] = *x
    else {
        return None;
    };
    if birds <= 0.0 || feed <= 0.0 || weight <= 0.0 {
        return None;
    }
    let losses = 1.0 - birds / chicks;
    // Birds nobody buys are no losses: their future is not known.
    let expected = answers.number("batch.expected_losses_percent")? / 100.0;
    if losses > expected + 1.0 / chicks + 1e-9 {
        return None;
    }
    let sold_by = sold_by(answers);
    let batch = Batch {
        chicks,
        chick_cost,
        // Litter sold comes off the costs that no future changes.
        fixed_cost: cost - feed_cost - chicks * chick_cost - litter,
        feed_price: feed_cost / feed,
        feed_price_cv: scenarios::FEED_PRICE_SPREAD.value,
        sale_price: if sold_by == SoldBy::Head { sales / birds } else { sales / kg },
        sale_price_cv: scenarios::SALE_PRICE_SPREAD.value,
        sold_by,
        losses,
        losses_spread: scenarios::LOSSES_SPREAD.value,
        weight_kg: weight,
        weight_cv: weight_spread(answers),
        fcr: feed / kg,
        fcr_cv: scenarios::FCR_SPREAD.value,
        weight_fcr_correlation: scenarios::WEIGHT_WITH_FCR.value,
        lost_bird_feed: scenarios::LOST_BIRD_FEED.value,
    };
    scenarios::run(seed as u64, count as u32, &batch).ok()
}

/// How far weights stray between batches: what is known of the curve, read as nine batches in ten.
fn weight_spread(answers: &Answers) -> f64 {
    let known = standard(answers).spread().filter(|spread| *spread > 0.05);
    known.map_or(scenarios::WEIGHT_SPREAD.value, |spread| spread / scenarios::SIGMAS_IN_90)
}

/// Chance of a loss, profit with nine futures in ten, what one in ten falls short of, and the average of that tenth, each with
/// its accuracy.
pub(super) fn answer(profits: &[f64]) -> AllSimulated {
    let tenth = risk::quantile(&risk::sorted(profits), risk::WORST)?;
    Some(told(&risk::summary(profits)?, tenth).into_iter().map(Some).collect())
}

fn told(summary: &Summary, tenth: f64) -> Vec<Simulated> {
    let loss = summary.loss;
    let error = 1.96 * loss.standard_error;
    let ends = |low: f64, high: f64, kind| (low < high).then_some(Band { low, high, kind });
    vec![
        (
            loss.share,
            ends((loss.share - error).max(0.0), (loss.share + error).min(1.0), BandKind::Confidence95),
            Accuracy::StandardError(loss.standard_error),
        ),
        (
            summary.p50,
            ends(summary.p05, summary.p95, BandKind::Prediction90),
            Accuracy::StandardError(1.25 * summary.mean_standard_error),
        ),
        // Of a bell curve's tenth: sqrt(0.1 × 0.9) over its density there, 0.1755.
        (tenth, None, Accuracy::StandardError(1.71 * summary.mean_standard_error)),
        (summary.worst_tenth_mean, None, Accuracy::StandardError(2.0 * summary.mean_standard_error)),
    ]
}
