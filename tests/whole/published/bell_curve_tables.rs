//! Tables of the bell curve shipped with the program: evenness by CV to two decimals, and birds to weigh by the short
//! formula with 1.96 (both exact mathematics; breeders' guides print the same but for CV 12 and 14).

use super::{near, sum};

/// Tolerance: half of the last printed place.
#[test]
fn every_cv_of_the_table() {
    let table = reference::Table::shipped("uniformity").unwrap();
    for row in table.rows.iter().filter(|row| row[0] == "cv_to_within") {
        let cv = table.number(row, "cv_pct").unwrap().unwrap();
        let sum = sum("uniformity", &[("cv_percent", &cv.to_string())]);
        let want = table.number(row, "exact_within_10").unwrap().unwrap();
        near(sum.outcome.number("weighing.uniformity_normal").unwrap(), want, 0.0051);
    }
}

/// Exact. By Student's t it is at least as many, and never more than 3 above.
#[test]
fn every_sample_size_of_the_table() {
    let table = reference::Table::shipped("uniformity_samples").unwrap();
    let mut rows = 0;
    for row in table.rows.iter().filter(|row| row[0] == "sample_size") {
        let (cv, error) = (&row[1], &row[2]);
        let sum = sum("sample-size", &[("cv_percent", cv), ("error_percent", error)]);
        let by_curve = sum.outcome.number("weighing.sample_size_normal").unwrap();
        near(by_curve, table.number(row, "value").unwrap().unwrap(), 0.0);
        let by_student = sum.outcome.number("weighing.sample_size").unwrap();
        assert!((by_curve..=by_curve + 3.0).contains(&by_student), "{by_student} against {by_curve}");
        rows += 1;
    }
    assert_eq!(rows, 20);
}
