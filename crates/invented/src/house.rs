//! The air inside: outside, roof, brooders and the birds' own heat.

use crate::luck::Luck;
use crate::scenario::{Heat, House};
use crate::weather::Outside;

/// The air inside on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Inside {
    /// Coldest, °C.
    pub(crate) coldest_c: f64,
    /// Warmest, °C.
    pub(crate) warmest_c: f64,
    /// Least relative humidity, %.
    pub(crate) driest_percent: f64,
    /// Greatest, %.
    pub(crate) dampest_percent: f64,
    /// Fuel burnt, kg.
    pub(crate) fuel_kg: f64,
}

/// The last day of age with a fire.
const FIRE_UNTIL: i32 = 16;

/// What chicks want at their backs, °C, and what is enough for older birds.
pub(crate) fn wanted_c(age: i32) -> f64 {
    (32.5 - 0.42 * f64::from(age)).max(20.0)
}

/// The air on a day, for so many birds of a weight.
pub(crate) fn air(house: &House, outside: &Outside, age: i32, flock_kg: f64, luck: &mut Luck) -> Inside {
    // Birds warm a house with its curtains up by a degree or four at night.
    let by_birds_c = (4.0 * flock_kg / (16.0 * house.floor_m2)).min(4.0);
    let cold_c = outside.coldest_c + 1.5 + by_birds_c;
    let is_warmed = age <= FIRE_UNTIL;
    let slip_c = (1.6 + 0.7 * luck.normal()).max(0.2);
    let coldest_c = if is_warmed { cold_c.max(wanted_c(age) - slip_c) } else { cold_c };
    let by_day_c = outside.warmest_c + house.roof_c + 0.3 * by_birds_c;
    let warmest_c = if is_warmed { by_day_c.max(wanted_c(age) + 1.0) } else { by_day_c };
    let lifted = (wanted_c(age) - cold_c).max(0.0);
    let damp_by_birds = 2.0 * by_birds_c;
    Inside {
        coldest_c,
        warmest_c: warmest_c.max(coldest_c + 1.0),
        driest_percent: (outside.driest_percent + damp_by_birds).min(88.0),
        dampest_percent: (outside.dampest_percent * 0.9 + damp_by_birds).clamp(45.0, 95.0),
        fuel_kg: if is_warmed { fuel_kg(house, lifted, luck) } else { 0.0 },
    }
}

/// Fuel of a night, kg, for so many degrees in a house with a partition.
fn fuel_kg(house: &House, lifted_c: f64, luck: &mut Luck) -> f64 {
    let a_degree_and_m2 = match house.heat {
        Heat::Charcoal => 0.022,
        Heat::Gas => 0.008,
    };
    a_degree_and_m2 * house.floor_m2 * lifted_c * luck.factor(0.12)
}

/// Degrees by which it is too hot for birds of an age, over a day that is warm for longer than it is cool.
pub(crate) fn too_hot_c(inside: &Inside, age: i32) -> f64 {
    let felt_c = 0.75 * inside.warmest_c + 0.25 * inside.coldest_c;
    (felt_c - (35.0 - 0.34 * f64::from(age)).max(25.5)).max(0.0)
}
