//! The table of steady balances of a house, every step by name.

use std::collections::BTreeMap;

use model::air::opening;
use model::air::steady::{Balanced, Moment, after_hours, time_constant_h};
use serde_json::{Number, Value};

use crate::verify::{Row, Shape, TableOutputs, VerifyFault};

/// One row a step: what is told of a house and what follows from it stand below each other.
pub(super) const SHAPE: Shape = Shape {
    name: "house_balance",
    inputs: &["case", "name", "value", "unit"],
    outputs: &["value"],
    work_out: balances,
};

/// What is told of a house, with its range.
const TOLD: [(&str, f64, f64); 13] = [
    ("birds", 0.0, 1e6),
    ("weight", 0.01, 10.0),
    ("inside", -30.0, 55.0),
    ("inside_humidity_limit", 0.001, 1.0),
    ("outside", -30.0, 55.0),
    ("outside_humidity", 0.001, 1.0),
    ("pressure", 20_000.0, 120_000.0),
    ("length", 1.0, 1_000.0),
    ("width", 1.0, 1_000.0),
    ("wind", 0.0, 60.0),
    ("co2_limit", 0.0005, 0.1),
    ("co2_outside", 0.0, 0.1),
    ("sun_gain", -1e6, 1e6),
];

/// The house of the table: eaves of 2.2 m, half-walls of 0.6 m and curtains of 1.6 m on the long sides, gables of 2.5 m.
const ROOF_OVER_FLOOR: f64 = 1.06;
const CURTAIN_M: f64 = 1.6;
const HALF_WALL_M: f64 = 0.6;
const GABLE_M: f64 = 2.5;
/// Iron under a mat ceiling, one sheet, hollow block, W/m2K; bare slab edge, W/mK.
const ROOF_U: f64 = 2.0;
const CURTAIN_U: f64 = 5.9;
const BLOCK_U: f64 = 3.1;
const EDGE_U: f64 = 1.26;
/// Of the wind square on.
const EFFECTIVENESS: f64 = 0.5;
/// From the opening to where nothing flows, m.
const HALF_HEIGHT_M: f64 = 0.8;
/// The table rounds gravity to 9.81 m/s2; a speed by warmth goes with its root.
const GRAVITY_ROUNDED: f64 = 9.81 / 9.806_65;
/// Litter, air and slab, J/K, and the cooling that is asked of them.
const HELD_J_PER_K: f64 = 3.5e6;
const COOLING: (f64, f64, f64) = (24.0, 2000.0, 3.0);

/// Steps by name; a step that does not exist in this case (an opening without wind) has no value.
type Steps = BTreeMap<&'static str, Option<f64>>;

fn balances(rows: &[Row]) -> TableOutputs {
    let mut cases: BTreeMap<&str, Steps> = BTreeMap::new();
    for row in rows {
        if !cases.contains_key(row.cells[0].text) {
            let case: Vec<&Row> =
                rows.iter().filter(|other| other.cells[0].text == row.cells[0].text).collect();
            cases.insert(row.cells[0].text, steps(&told(&case)?));
        }
    }
    rows.iter()
        .map(|row| {
            let step = cases.get(row.cells[0].text).and_then(|steps| steps.get(row.cells[1].text));
            let value = step.ok_or_else(|| fault(row, row.cells[1].fault(names())))?;
            Ok(vec![value.and_then(Number::from_f64).map_or(Value::Null, Value::Number)])
        })
        .collect()
}

fn fault(row: &Row, fault: crate::verify::CellFault) -> VerifyFault {
    VerifyFault::Cell { row: row.number, fault }
}

/// What a case must tell.
fn names() -> String {
    TOLD.map(|(name, _, _)| name).join(", ")
}

/// What a case tells: each of it once.
fn told(case: &[&Row]) -> Result<BTreeMap<&'static str, f64>, VerifyFault> {
    let mut told = BTreeMap::new();
    for (name, low, high) in TOLD {
        let mut rows = case.iter().filter(|row| row.cells[1].text == name);
        let row = rows.next().ok_or_else(|| fault(case[0], case[0].cells[0].fault(names())))?;
        if let Some(again) = rows.next() {
            return Err(fault(again, again.cells[1].fault(format!("{name} × 1"))));
        }
        told.insert(name, row.cells[2].number(low, high).map_err(|found| fault(row, found))?);
    }
    Ok(told)
}

fn steps(told: &BTreeMap<&'static str, f64>) -> Steps {
    let get = |name: &str| told.get(name).copied().unwrap_or_default();
    let (length, width) = (get("length"), get("width"));
    let roof = length * width * ROOF_OVER_FLOOR;
    let curtain = 2.0 * length * CURTAIN_M;
    let block = 2.0 * length * HALF_WALL_M + 2.0 * width * GABLE_M;
    let edge = EDGE_U * 2.0 * (length + width);
    let through = ROOF_U * roof + CURTAIN_U * curtain + BLOCK_U * block + edge;
    let mut steps: Steps = told.iter().map(|(name, value)| (*name, Some(*value))).collect();
    steps.extend(
        [
            ("roof_area", roof),
            ("curtain_area", curtain),
            ("block_area", block),
            ("ua_roof_metal_with_mat_ceiling", ROOF_U * roof),
            ("ua_curtain", CURTAIN_U * curtain),
            ("ua_block", BLOCK_U * block),
            ("ua_perimeter", edge),
            ("ua_total", through),
            ("heat_capacity_litter_air_slab", HELD_J_PER_K),
        ]
        .map(|(name, value)| (name, Some(value))),
    );
    let moment = Moment {
        birds: get("birds"),
        bird_kg: get("weight"),
        inside_c: get("inside"),
        inside_humidity: get("inside_humidity_limit"),
        outside_c: get("outside"),
        outside_humidity: get("outside_humidity"),
        pressure_pa: get("pressure"),
        through_w_per_k: through,
        sun_w: get("sun_gain"),
        co2_most: get("co2_limit"),
        co2_outside: get("co2_outside"),
    };
    let balanced = moment.balanced();
    let of = |step: fn(&Balanced) -> f64| balanced.as_ref().map(step);
    steps.extend([
        ("heat_total", of(|it| it.total_w)),
        ("heat_sensible", of(|it| it.sensible_w)),
        ("heat_latent", of(|it| it.total_w - it.sensible_w)),
        ("moisture", of(|it| it.moisture_kg_s)),
        ("co2", of(|it| it.co2_m3_s)),
        ("humidity_ratio_inside", of(|it| it.within.humidity_ratio())),
        ("humidity_ratio_outside", of(|it| it.fresh.humidity_ratio())),
        ("specific_volume_inside", of(|it| it.within.specific_volume())),
        ("specific_volume_outside", of(|it| it.fresh.specific_volume())),
        ("air_heat_capacity", of(|it| it.fresh.heat_capacity())),
        ("mass_flow_by_moisture", of(|it| it.by_moisture)),
        ("mass_flow_by_co2", of(|it| it.by_co2)),
        ("mass_flow_by_heat", of(|it| it.by_heat)),
        ("mass_flow_needed", of(|it| it.needed)),
        ("volume_flow_needed", of(|it| 3600.0 * it.volume_m3_s(it.needed))),
        ("volume_flow_by_heat", of(|it| 3600.0 * it.volume_m3_s(it.by_heat))),
        ("heater_at_needed_flow", of(|it| it.heater_w)),
        ("inside_at_needed_flow_without_heater_solved", of(|it| it.settles_c)),
    ]);
    let stack =
        GRAVITY_ROUNDED.sqrt() * opening::stack_speed(moment.inside_c, moment.outside_c, HALF_HEIGHT_M);
    let loss = balanced.map(|it| through + it.needed * it.fresh.heat_capacity());
    let (from, heat, hours) = COOLING;
    steps.extend([
        (
            "inside_at_needed_flow_without_heater_first_pass",
            balanced.zip(loss).map(|(it, loss)| moment.outside_c + (it.sensible_w + moment.sun_w) / loss),
        ),
        (
            "opening_by_wind_effectiveness_0_5",
            balanced.and_then(|it| it.opening_m2(opening::speed(EFFECTIVENESS, get("wind"), 0.0))),
        ),
        ("stack_speed_discharge_0_65_half_height_0_8", Some(stack)),
        ("opening_by_stack", balanced.and_then(|it| it.opening_m2(stack))),
        ("time_constant", loss.map(|loss| time_constant_h(HELD_J_PER_K, loss))),
        (
            "cooling_2000_w_after_3_h_from_24_c",
            loss.map(|loss| after_hours(from, moment.outside_c, heat, loss, HELD_J_PER_K, hours)),
        ),
    ]);
    steps
}
