//! What the usual weather of its months asks of a planned house.

use quantity::{Band, Status, Unit};

use super::hours_of_air::between;
use crate::air::months::{COLDEST, WARMEST};
use crate::air::{InAll, PlannedAir};
use crate::procedure::{Accuracy, Procedure, Simulated, Simulation};
use crate::rule::{FigureSpec, field, list};

/// The balance run through the usual days of the plan's months.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "usual-months", source: "cigr-2002", status: Status::FromMemory },
    inputs: &[
        list("c", COLDEST),
        list("h", WARMEST),
        field("L", "house.length_m"),
        field("W", "house.width_m"),
        field("N", "batch.chicks"),
        field("d", "brooding.days_d"),
        field("a", "house.air_changes_per_h"),
        field("f", "farm.latitude_deg"),
    ],
    figures: &[
        FigureSpec { id: "air.usual_heat", unit: Unit::KilowattHour, decimals: 0, rules: &[] },
        FigureSpec { id: "air.usual_fuel", unit: Unit::Kilogram, decimals: 0, rules: &[] },
        FigureSpec { id: "air.usual_hot_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
        FigureSpec { id: "air.usual_dangerous_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
    ],
    applies: |_| true,
    run: |answers, _, drawn| {
        let (told, ends) = PlannedAir::of_usual_weather(answers)?.ok()?;
        let told = drawn.keep_usual_air(told);
        let figures_of = |all: InAll| {
            [Some(all.heat_kwh), told.fuel_kg(all.heat_kwh), Some(all.alert_hours), Some(all.danger_hours)]
        };
        let ends = ends.map(figures_of);
        let figure = |value: f64, band: Option<Band>| -> Simulated {
            (value, band, Accuracy::Residual(value * told.residual))
        };
        let all = figures_of(told.in_all()).into_iter().enumerate().map(|(at, value)| {
            let value = value?;
            let others: Option<Vec<f64>> = ends.iter().map(|figures| figures[at]).collect();
            Some(figure(value, others.and_then(|others| between(value, &others))))
        });
        Some(all.collect())
    },
};
