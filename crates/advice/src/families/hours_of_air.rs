//! What the house needs by the hourly balance of its air.

use model::air::litter_water;
use model::air::stress::Band as Heat;
use quantity::{Band, BandKind, Status, Unit};

use crate::air::{Guess, PlannedAir};
use crate::procedure::{Accuracy, Procedure, Simulation};
use crate::rule::{FigureSpec, field};

/// The balance run through the plan.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "hours-of-air", source: "cigr-2002", status: Status::FromMemory },
    inputs: &[
        field("L", "house.length_m"),
        field("W", "house.width_m"),
        field("N", "batch.chicks"),
        field("c", "weather.coldest_night_c"),
        field("h", "weather.hottest_day_c"),
        field("d", "brooding.days_d"),
        field("b", "brooding.brooders"),
        field("a", "house.air_changes_per_h"),
        field("f", "farm.latitude_deg"),
    ],
    figures: &[
        FigureSpec { id: "air.heat_peak", unit: Unit::Kilowatt, decimals: 1, rules: &[] },
        FigureSpec { id: "air.heat_short", unit: Unit::Kilowatt, decimals: 1, rules: &[] },
        FigureSpec { id: "air.heat_first_day", unit: Unit::KilowattHour, decimals: 0, rules: &[] },
        FigureSpec { id: "air.heat_in_all", unit: Unit::KilowattHour, decimals: 0, rules: &[] },
        FigureSpec { id: "air.fuel_first_day", unit: Unit::Kilogram, decimals: 0, rules: &[] },
        FigureSpec { id: "air.fuel_in_all", unit: Unit::Kilogram, decimals: 0, rules: &[] },
        FigureSpec { id: "air.hot_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
        FigureSpec { id: "air.preheat_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
        FigureSpec { id: "air.litter_at_sale", unit: Unit::Percent, decimals: 0, rules: &[] },
        FigureSpec { id: "air.litter_wet_from", unit: Unit::Day, decimals: 0, rules: &[] },
    ],
    run: |answers, _, drawn| {
        let told = drawn.keep_air(PlannedAir::of(answers, Guess::AS_TOLD, None).ok()?);
        // Litter hangs on what birds drink more than on the walls.
        let thirst = Guess::of_thirst(answers).into_iter().flatten();
        let ends = Guess::ENDS
            .into_iter()
            .chain(thirst)
            .map(|guess| figures_of(&PlannedAir::of(answers, guess, None).ok()?));
        let ends: Vec<Vec<Option<f64>>> = ends.collect::<Option<_>>()?;
        let figure = |(at, value): (usize, Option<f64>)| {
            let value = value?;
            let others: Option<Vec<f64>> = ends.iter().map(|figures| figures[at]).collect();
            let band = others.and_then(|others| between(value, &others));
            Some((value, band, Accuracy::Residual(value * told.residual)))
        };
        Some(figures_of(told)?.into_iter().enumerate().map(figure).collect())
    },
    applies: |_| true,
};

/// From the least to the greatest of a house as told and others; `None` where all say the same.
fn between(told: f64, others: &[f64]) -> Option<Band> {
    let low = others.iter().copied().fold(told, f64::min);
    let high = others.iter().copied().fold(told, f64::max);
    (low < high).then_some(Band { low, high, kind: BandKind::RangeOfSources })
}

/// The figures in their order; `None` for what there is none of.
fn figures_of(air: &PlannedAir) -> Option<Vec<Option<f64>>> {
    let last = air.last_day()?;
    let (first_day, in_all) = (air.heat_of_day_kwh(0), air.heat_kwh());
    Some(vec![
        Some(air.heat_peak_kw),
        Some(air.heat_short_kw()),
        Some(first_day),
        Some(in_all),
        air.fuel_kg(first_day),
        air.fuel_kg(in_all),
        Some(air.hours_at_least(last, Heat::Alert)),
        air.preheat_h.map(|hours| hours as f64),
        air.litter_by_day().last().map(|(_, share)| 100.0 * share),
        air.litter_at_least(litter_water::WET).map(f64::from),
    ])
}
