//! pvlib 0.16.1: sunrise, sunset and transit by the NREL solar position algorithm; declination, equation of time and
//! sunshine above the air by Spencer's series. The file carries its own header.
//!
//! Tolerance: 1e-6 for the series, whose text is the same; 1 minute against the almanac, which is its rounding.

use advice::verify::verify;
use serde_json::Value;

use super::{near, sum};

const TABLE: &str = include_str!("../../data/daylength.csv");

#[test]
fn every_row_of_the_almanac_comes_out() {
    let expected = reference::Table::read("daylength", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!(rows.len(), 50);
    let minute = 1.0 / 60.0;
    let columns = [
        ("sunrise_utc_h", minute),
        ("sunset_utc_h", minute),
        ("transit_utc_h", minute),
        ("daylength_spa_h", minute),
        ("declination_spencer_deg", 1e-6),
        ("daylength_spencer_horizon_0_833_h", 1e-6),
        ("daylength_spencer_horizon_0_h", 1e-6),
        ("equation_of_time_spencer_min", 1e-6),
        ("extraterrestrial_spencer_w_per_m2", 1e-6),
        ("day_of_year", 0.0),
    ];
    for (row, want) in rows.iter().zip(&expected.rows) {
        for (column, tolerance) in columns {
            let want = expected.number(want, column).unwrap().unwrap();
            let got = row[column].as_f64().unwrap_or(f64::NAN);
            assert!(
                (got - want).abs() <= tolerance,
                "{column}: {got}, almanac {want}, row {:?}",
                Value::Object(row.clone())
            );
        }
    }
}

#[test]
fn expected_columns_may_be_empty_or_absent() {
    let only_inputs: String = TABLE
        .lines()
        .filter(|line| !line.starts_with('#'))
        .map(|line| line.split(',').take(3).collect::<Vec<_>>().join(",") + "\n")
        .collect();
    assert_eq!(verify(&only_inputs).unwrap()[7]["sunset_utc_h"], verify(TABLE).unwrap()[7]["sunset_utc_h"]);
}

/// The quick sum is the series of the table, typed by hand. Tolerance: 1e-6, the same text.
#[test]
fn the_quick_sum_gives_the_same_day() {
    let expected = reference::Table::read("daylength", TABLE).unwrap();
    for row in &expected.rows {
        let sum = sum("daylength", &[("latitude_deg", &row[0]), ("date", &row[2])]);
        let want = expected.number(row, "daylength_spencer_horizon_0_833_h").unwrap().unwrap();
        near(sum.outcome.number("light.daylength").unwrap(), want, 1e-6);
    }
}
