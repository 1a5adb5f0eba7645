//! What the house needs by the hourly balance of its air.

use model::air::stress::Band as Heat;
use quantity::{Status, Unit};

use crate::air::{Guess, PlannedAir};
use crate::procedure::{Accuracy, Procedure, Simulation};
use crate::rule::{FigureSpec, Input, field};

/// The balance run through the plan.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "hours-of-air", source: "cigr-2002", status: Status::FromMemory },
    inputs: INPUTS,
    figures: &[FigureSpec { id: "air.hot_hours", unit: Unit::Hour, decimals: 0, rules: &[] }],
    run: |answers, _, drawn| {
        let air = drawn.keep_air(PlannedAir::of(answers, Guess::AS_TOLD, None).ok()?);
        let hours = air.hours_at_least(air.last_day()?, Heat::Alert);
        Some(vec![Some((hours, None, Accuracy::Residual(hours * air.residual)))])
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
    field("a", "house.air_changes_per_h"),
    field("f", "farm.latitude_deg"),
];
