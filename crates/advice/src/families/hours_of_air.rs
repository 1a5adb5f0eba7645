//! What the house is like by the hourly balance of its air.

use model::air::litter_water;
use model::air::stress::Band as Heat;
use quantity::{Band, BandKind, Status, Unit};

use crate::air::{Guess, PlannedAir, with_ends};
use crate::procedure::{Accuracy, Procedure, Simulated, Simulation};
use crate::rule::{FigureSpec, Input, field};

/// The balance run through the plan.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "hours-of-air", source: "cigr-2002", status: Status::FromMemory },
    inputs: INPUTS,
    figures: &[
        FigureSpec { id: "air.hot_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
        FigureSpec { id: "air.litter_at_sale", unit: Unit::Percent, decimals: 0, rules: &[] },
        FigureSpec { id: "air.litter_wet_from", unit: Unit::Day, decimals: 0, rules: &[] },
    ],
    run: |answers, _, drawn| {
        let as_told = || match drawn.heat() {
            Some(needed) => PlannedAir::as_told(answers, needed.clone()),
            None => PlannedAir::of(answers, Guess::AS_TOLD, None),
        };
        // Litter hangs on what birds drink more than on the walls.
        let (told, others) = match Guess::of_thirst(answers) {
            Some(ends) => {
                let (told, litter) = with_ends(ends, |guess| PlannedAir::litter(answers, guess), as_told);
                (told, litter.into_iter().collect::<Result<Vec<_>, _>>().ok()?)
            }
            None => (as_told(), Vec::new()),
        };
        let told = drawn.keep_air(told.ok()?);
        let figure = |value: f64, band: Option<Band>| -> Simulated {
            (value, band, Accuracy::Residual(value * told.residual))
        };
        let litter = told.litter_by_day();
        let of_litter = |of: OfLitter| {
            let value = of(&litter)?;
            let ends: Option<Vec<f64>> = others.iter().map(|days| of(days)).collect();
            Some(figure(value, ends.and_then(|ends| between(value, &ends))))
        };
        Some(vec![
            Some(figure(told.hours_at_least(told.last_day()?, Heat::Alert), None)),
            of_litter(|days| days.last().map(|(_, share)| 100.0 * share)),
            of_litter(|days| {
                days.iter().find(|(_, share)| *share >= litter_water::WET).map(|(day, _)| f64::from(*day))
            }),
        ])
    },
    applies: |_| true,
};

/// What a plan must tell for it, and what it hangs on most.
pub(super) static INPUTS: &[Input] = &[
    field("L", "house.length_m"),
    field("W", "house.width_m"),
    field("N", "batch.chicks"),
    field("c", "weather.coldest_night_c"),
    field("h", "weather.hottest_day_c"),
    field("d", "brooding.days_d"),
    field("a", "house.air_changes_per_h"),
    field("f", "farm.latitude_deg"),
];

/// What is told of litter by day.
type OfLitter = fn(&[(i32, f64)]) -> Option<f64>;

/// From the least to the greatest of a house as told and others; `None` where all say the same.
pub(super) fn between(told: f64, others: &[f64]) -> Option<Band> {
    let low = others.iter().copied().fold(told, f64::min);
    let high = others.iter().copied().fold(told, f64::max);
    (low < high).then_some(Band { low, high, kind: BandKind::RangeOfSources })
}
