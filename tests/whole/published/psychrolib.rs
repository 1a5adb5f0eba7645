//! PsychroLib 2.5.0, an open library of moist air after ASHRAE Handbook Fundamentals 2017, chapter 1. The file carries its
//! own header.
//!
//! Tolerance: 1e-6 of the value for explicit quantities, whose text is the same; 1e-4 K for wet bulb and dew point, which
//! both sides search for.

use advice::verify::verify;

const TABLE: &str = include_str!("../tables/psychrometrics.csv");

#[test]
fn every_row_of_moist_air_comes_out() {
    let expected = reference::Table::read("psychrometrics", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!(rows.len(), 108);
    for (row, want) in rows.iter().zip(&expected.rows) {
        for column in &expected.columns[3..] {
            let want = expected.number(want, column).unwrap().unwrap();
            let got = row[column.as_str()].as_f64().unwrap_or(f64::NAN);
            let searched = ["wet_bulb_c", "dew_point_c"].contains(&column.as_str());
            let tolerance = if searched { 1e-4 } else { 1e-6 * want.abs() };
            assert!((got - want).abs() <= tolerance, "{column}: {got}, library {want}, row {row:?}");
        }
    }
}

#[test]
fn air_that_cannot_be_has_no_humidity() {
    let row = &verify("dry_bulb_c,relative_humidity_share,pressure_pa\n95,1,70000\n").unwrap()[0];
    assert!(row["humidity_ratio_kg_per_kg"].is_null() && row["wet_bulb_c"].is_null());
    assert!(row["saturation_pressure_pa"].as_f64().unwrap() > 70_000.0);
    assert!(
        verify("dry_bulb_c,relative_humidity_share,pressure_pa\n20,65,101325\n").is_err(),
        "percent, not share"
    );
}
