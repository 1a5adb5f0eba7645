//! What the house needs by the hourly balance of its air.

use model::air::stress::Band as Heat;
use quantity::{Band, BandKind, Status, Unit};

use crate::air::{Guess, PlannedAir};
use crate::procedure::{Accuracy, Procedure, Simulation};
use crate::rule::{FigureSpec, Input, field};

/// The balance run through the plan.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "hours-of-air", source: "cigr-2002", status: Status::FromMemory },
    inputs: INPUTS,
    figures: &[
        FigureSpec { id: "air.heat_short", unit: Unit::Kilowatt, decimals: 1, rules: &[] },
        FigureSpec { id: "air.hot_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
        FigureSpec { id: "brooding.preheat_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
    ],
    run: |answers, _, drawn| {
        let told = drawn.keep_air(PlannedAir::of(answers, Guess::AS_TOLD, None).ok()?);
        let [tight, leaky] = Guess::ENDS.map(|guess| figures_of(&PlannedAir::of(answers, guess, None).ok()?));
        let ends = tight?.into_iter().zip(leaky?);
        let figure = |(value, (tight, leaky)): (Option<f64>, (Option<f64>, Option<f64>))| {
            let value = value?;
            let band = tight.zip(leaky).and_then(|(tight, leaky)| between(value, tight, leaky));
            Some((value, band, Accuracy::Residual(value * told.residual)))
        };
        Some(figures_of(told)?.into_iter().zip(ends).map(figure).collect())
    },
    applies: |_| true,
};

/// What a plan must tell for it, and what it hangs on most.
static INPUTS: &[Input] = &[
    field("L", "house.length_m"),
    field("W", "house.width_m"),
    field("N", "batch.chicks"),
    field("c", "weather.coldest_night_c"),
    field("h", "weather.hottest_day_c"),
    field("d", "brooding.days_d"),
    field("b", "brooding.brooders"),
    field("a", "house.air_changes_per_h"),
    field("f", "farm.latitude_deg"),
];

/// From the least to the greatest of a house as told, a tight and a leaky one; `None` where all say the same.
pub(super) fn between(told: f64, tight: f64, leaky: f64) -> Option<Band> {
    let (low, high) = (tight.min(leaky).min(told), tight.max(leaky).max(told));
    (low < high).then_some(Band { low, high, kind: BandKind::RangeOfSources })
}

/// The figures in their order; `None` for what there is none of.
fn figures_of(air: &PlannedAir) -> Option<Vec<Option<f64>>> {
    let last = air.last_day()?;
    Some(vec![
        Some(air.heat_short_kw()),
        Some(air.hours_at_least(last, Heat::Alert)),
        air.preheat_h.map(|hours| hours as f64),
    ])
}
