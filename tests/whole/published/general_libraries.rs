//! scipy 1.17.1 and statsmodels 0.15.0, through the scripts in `benches/peers`: parts of the spread of weights by spot, and
//! the clumping of day counts. They maximise the likelihoods as they stand; ours are profiled forms of them.
//!
//! Tolerance: 1e-6 of the value, as the headers ask; 1e-5 for a best clumping, whose likelihood is flat there.

use advice::verify::verify;
use advice::weighing::{Aim, Reading, Weighing};

use super::near;

/// Holds every computed column of a table against the file's own.
fn compare(name: &str, table: &str, rows: usize, tolerance: impl Fn(&str) -> f64) {
    let expected = reference::Table::read(name, table).unwrap();
    let got = verify(table).unwrap();
    assert_eq!(got.len(), rows);
    let computed =
        expected.columns.iter().filter(|column| !["spots", "cases", "expected"].contains(&column.as_str()));
    for column in computed {
        for (row, want) in got.iter().zip(&expected.rows) {
            let want = expected.number(want, column).unwrap().unwrap();
            let got = row[column.as_str()].as_f64().unwrap();
            assert!((got - want).abs() <= tolerance(column) * want.abs(), "{column}: {got}, wanted {want}");
        }
    }
}

#[test]
fn parts_of_unevenness_agree_with_mixed_models() {
    compare("spots", include_str!("../tables/spots.csv"), 8, |_| 1e-6);
}

/// The figures of a weighing are the same parts, each as a share of the mean.
#[test]
fn a_weighing_by_spots_tells_the_same_parts() {
    let table = reference::Table::read("spots", include_str!("../tables/spots.csv")).unwrap();
    for row in &table.rows {
        let bird = |spot: usize, grams: &str| Reading {
            spot: format!("{} {spot}", ["Door", "door"][spot % 2]),
            ..Reading::of_bird(grams.parse().unwrap())
        };
        let of_spot = |(at, birds): (usize, &str)| -> Vec<Reading> {
            birds.split(' ').map(|grams| bird(at, grams)).collect()
        };
        let readings = row[0].split(';').enumerate().flat_map(of_spot).collect();
        let result = Weighing { readings, ..Weighing::default() }.held_against(&Aim::default());
        let share = |column: &str| {
            let number = |column: &str| table.number(row, column).unwrap().unwrap();
            100.0 * number(column).sqrt() / number("mean")
        };
        for part in ["between", "within"] {
            let figure = result.outcome.get(&format!("weighing.{part}_spots")).unwrap().figure;
            let band = figure.band.unwrap();
            for (got, column) in [
                (figure.value.number(), format!("reml_{part}")),
                (band.low, format!("{part}_low")),
                (band.high, format!("{part}_high")),
            ] {
                near(got, share(&column), 1e-6 * share(&column));
            }
        }
    }
}

#[test]
fn clumping_agrees_with_a_general_optimiser() {
    let tolerance = |column: &str| if column == "clumping" { 1e-5 } else { 1e-6 };
    compare("clumping", include_str!("../tables/clumping.csv"), 9, tolerance);
}

#[test]
fn what_cannot_be_told_is_empty_and_what_cannot_be_is_named() {
    assert!(verify("spots\n2000 2000;2000 2000\n").unwrap()[0]["mean"].is_null());
    assert!(verify("cases,expected\n1 0 2,0.5 0.5 0.5\n").unwrap()[0]["clumping"].is_null());
    assert!(verify("spots\n2000 heavy;1 2\n").unwrap_err().to_string().contains("spots"));
    assert!(verify("cases,expected\n1 0 2,0.5 0.5\n").unwrap_err().to_string().contains("expected"));
}
