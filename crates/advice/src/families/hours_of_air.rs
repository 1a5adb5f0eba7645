//! What the house needs by the hourly balance of its air.

use model::air::stress::Band as Heat;
use quantity::{Band, BandKind, Status, Unit};

use crate::air::{self, PlannedAir};
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
    ],
    run: |answers, _, _| {
        let (figures, residual) = air::figures(answers)?;
        let figure = |[low, value, high]: [f64; 3]| {
            let band = Band { low, high, kind: BandKind::RangeOfSources };
            let band = (low.is_finite() && high.is_finite()).then_some(band);
            value.is_finite().then_some((value, band, Accuracy::Residual(value * residual)))
        };
        Some(figures.into_iter().map(figure).collect())
    },
    applies: |_| true,
};

/// The figures in their order; what there is none of is no number.
pub(crate) fn figures_of(air: &PlannedAir) -> Option<Vec<f64>> {
    let last = air.last_day()?;
    let (first_day, in_all) = (air.heat_of_day_kwh(0), air.heat_kwh());
    Some(vec![
        air.heat_peak_kw,
        air.heat_short_kw(),
        first_day,
        in_all,
        air.fuel_kg(first_day).unwrap_or(f64::NAN),
        air.fuel_kg(in_all).unwrap_or(f64::NAN),
        air.hours_at_least(last, Heat::Alert),
        air.preheat_h.map_or(f64::NAN, |hours| hours as f64),
    ])
}
