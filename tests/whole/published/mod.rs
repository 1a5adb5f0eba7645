//! One file an outside source. Source and status stand beside each value.

use advice::sums::{self, SumResult};
use quantity::Raw;

mod bag_sizes;
mod bell_curve_tables;
mod breeders_temperature;
mod breeders_weighing;
mod catching_and_crates;
mod chick_weighings;
mod cigr_2002;
mod cpdo_mumbai;
mod daylength_almanac;
mod directive_2007_43;
mod european_index_note;
mod extension_poultry_course;
mod feed_conversion_pages;
mod feed_firm_hot_climate;
mod general_libraries;
mod growers_arithmetic;
mod growth_by_days;
mod growth_in_heat;
mod hamra;
mod house_air;
mod infection_control_sheet;
mod kondo;
mod lebanon_rented_farm;
mod lot_sizing;
mod maertens;
mod medicine_labels;
mod mutare_farms;
mod order_filling;
mod pesti_1985;
mod plane_geometry;
mod psychrolib;
mod pvlib_epw;
mod quick_sums_of_air;
mod reporting_rules;
mod rules_of_arithmetic;
mod rules_of_money;
mod run_lengths;
mod scipy_statistics;
mod shane;
mod sun_position;
mod two_sexes;
mod unit_definitions;
mod vaccine_leaflets;
mod water_in_heat;
mod withdrawal_periods;
mod worked_flock;
mod worked_houses;

/// Works a quick sum out as a grower would type it; it must hold.
fn sum(name: &str, inputs: &[(&str, &str)]) -> SumResult {
    let raw = |(key, text): &(&str, &str)| Raw {
        key: (*key).to_owned(),
        text: vec![(*text).to_owned()],
        line: None,
    };
    let raws: Vec<Raw> = inputs.iter().map(raw).collect();
    let result = sums::by_name(name).expect(name).work_out(&raws, true);
    assert!(result.checked.problems.is_empty(), "{:?}", result.checked.problems);
    result
}

fn near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{got}, wanted {want} within {tolerance}");
}
