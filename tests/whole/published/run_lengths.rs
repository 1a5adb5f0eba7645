//! Exact run lengths of running sums of counts by numpy 2.4.6 and scipy 1.17.1: a chain on the quarter grid, there checked
//! by simulation. The file carries its own header.
//!
//! Tolerance: 1e-7 of the value, as the header asks; days exactly.

use advice::verify::verify;

const TABLE: &str = include_str!("../tables/cusum.csv");

#[test]
fn every_run_length_comes_out() {
    let expected = reference::Table::read("cusum", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!(rows.len(), 72);
    for (row, want) in rows.iter().zip(&expected.rows) {
        for (column, tolerance) in
            [("average_run_length", 1e-7), ("signal_probability_42", 1e-7), ("median_run_length", 0.0)]
        {
            let want = expected.number(want, column).unwrap().unwrap();
            let got = row[column].as_f64().unwrap();
            assert!((got - want).abs() <= tolerance * want, "{column}: {got}, wanted {want}, row {row:?}");
        }
    }
}

#[test]
fn sums_that_cannot_be_are_named() {
    let fault =
        |row: &str| verify(&format!("law,size,k,h,start,mean_true\n{row}\n")).unwrap_err().to_string();
    assert!(fault("poisson,0,0.7,5,0,1").contains("0.25"));
    assert!(fault("normal,0,0.75,5,0,1").contains("negative_binomial"));
    let past_the_threshold = &verify("law,size,k,h,start,mean_true\npoisson,0,1,5,5,1\n").unwrap()[0];
    assert!(past_the_threshold["average_run_length"].is_null());
}
