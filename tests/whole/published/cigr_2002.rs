//! Pedersen and Sällvik (eds.), 4th report of the CIGR working group, 2002 (coefficients from memory), and Pedersen and
//! Thomsen 2000: arithmetic on the same equations by other hands. It catches slips, it does not prove the coefficients.
//!
//! Tolerance: 1e-10 of the value, the digits of the table.

use advice::verify::verify;

const TABLE: &str = include_str!("../tables/bird_heat.csv");

#[test]
fn every_row_of_bird_heat_comes_out() {
    let expected = reference::Table::read("bird_heat", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!(rows.len(), 42);
    for (row, want) in rows.iter().zip(&expected.rows) {
        for column in &expected.columns[2..] {
            let want = expected.number(want, column).unwrap().unwrap();
            let got = row[column.as_str()].as_f64().unwrap_or(f64::NAN);
            let tolerance = 1e-10 * want.abs().max(1.0);
            assert!((got - want).abs() <= tolerance, "{column}: {got}, table {want}, row {row:?}");
        }
    }
}
