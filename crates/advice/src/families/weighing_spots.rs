//! Weighing by spots: how much of the birds' spread lies between the spots of the house, and how much within them.

use model::variance::{self, Components};
use model::weighing::Interval;
use quantity::{Answers, Band, BandKind, Field, Kind, Need, Status, Unit};

use super::Family;
use super::weighing::WEIGHTS;
use crate::procedure::{Accuracy, Procedure, Simulated, Simulation};
use crate::rule::{FigureSpec, always, list};

/// The family.
pub static FAMILY: Family = Family { figures: &[], fields: FIELDS, sums: &[], series: &[], shapes: &[] };

/// The number of the spot each single bird was weighed at, bird by bird.
pub(crate) const SPOT_OF: &str = "weighing.spot_of";

static FIELDS: &[Field] = &[quantity::fields::field(
    SPOT_OF,
    Kind::Numbers { unit: Unit::One, low: 1.0, high: 200.0, at_least: 2, at_most: 2_000 },
    Need::Optional,
)];

/// Restricted maximum likelihood of the two parts.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "parts-by-spots", source: "searle-1992", status: Status::FromMemory },
    inputs: &[list("w", WEIGHTS), list("s", SPOT_OF)],
    figures: &[
        FigureSpec { id: "weighing.between_spots", unit: Unit::Percent, decimals: 1, rules: &[] },
        FigureSpec { id: "weighing.within_spots", unit: Unit::Percent, decimals: 1, rules: &[] },
    ],
    applies: always,
    run: |answers, _, _| {
        let parts = variance::components(&by_spot(answers)?)?;
        Some(vec![part(parts.between_variation(), &parts), part(parts.within_variation(), &parts)])
    },
};

/// Weights spot by spot; `None` unless every bird's spot is known.
fn by_spot(answers: &Answers) -> Option<Vec<Vec<f64>>> {
    let (weights, spots) = (answers.numbers(WEIGHTS), answers.numbers(SPOT_OF));
    let last = spots.iter().copied().fold(0.0, f64::max) as usize;
    let mut all = vec![Vec::new(); last];
    for (weight, spot) in weights.iter().zip(spots) {
        all.get_mut((*spot as usize).checked_sub(1)?)?.push(*weight);
    }
    (weights.len() == spots.len()).then_some(all)
}

/// A share as percent with its interval. What the search leaves over of the ratio of both parts is the accuracy.
fn part(share: Option<(f64, Interval)>, parts: &Components) -> Option<Simulated> {
    let (share, (low, high)) = share?;
    let band = Band { low: 100.0 * low, high: 100.0 * high, kind: BandKind::Confidence95 };
    Some((100.0 * share, Some(band), Accuracy::Residual(100.0 * share * parts.left_over)))
}
