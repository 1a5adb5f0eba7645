//! scipy 1.17.1 and statsmodels 0.15.0: quantiles, intervals of mean, sd, CV and shares, sample sizes, laws of counts, evenness by the
//! bell curve, summaries of weights. The file carries its own header.
//!
//! Tolerance: exact for whole numbers, else 1e-8 of the value, which is less than the twelve digits printed allow and
//! better than the 1e-6 that the header asks of quantiles. The upper tail of a beta-binomial law is held to 1e-7: the
//! library takes it as 1 less the rest, which by exact fractions costs it 3e-8; ours keeps all digits (tested beside the law).

use std::collections::BTreeMap;

use advice::verify::verify;

const TABLE: &str = include_str!("../tables/statistics.csv");

/// How many rows of each kind the models here work out; all others of the table are of no model yet.
const WORKED_OUT: &[(&str, usize)] = &[
    ("counts", 143),
    ("cv_interval", 24),
    ("mean_interval", 24),
    ("poisson_rate", 8),
    ("proportion", 28),
    ("quantiles", 126),
    ("robust", 14),
    ("sample_size", 72),
    ("sd_interval", 8),
    ("special_functions", 9),
    ("uniformity_normal", 10),
];

#[test]
fn every_row_that_a_model_works_out_agrees() {
    let expected = reference::Table::read("statistics", TABLE).unwrap();
    let mut counted: BTreeMap<String, usize> = BTreeMap::new();
    for (row, want) in verify(TABLE).unwrap().iter().zip(&expected.rows) {
        let Some(got) = row["value"].as_f64() else { continue };
        let want = expected.number(want, "value").unwrap().unwrap();
        let text = |column: &str| row[column].as_str().unwrap_or_default().to_owned();
        let tail = text("inputs").contains("beta_binomial") && text("output") == "upper_tail_at_least";
        let tolerance = if tail { 1e-7 } else { 1e-8 };
        let close = (got - want).abs() <= tolerance * want.abs() + 1e-12;
        assert!(close, "{got}, wanted {want}: {row:?}");
        *counted.entry(row["kind"].as_str().unwrap_or_default().to_owned()).or_default() += 1;
    }
    let wanted: BTreeMap<String, usize> =
        WORKED_OUT.iter().map(|(kind, rows)| ((*kind).to_owned(), *rows)).collect();
    assert_eq!(counted, wanted);
}

/// The exact interval of a CV inverts the noncentral t; ours is the modified McKay. They agree within 0.005 % of the
/// value, from 10 birds on.
#[test]
fn the_interval_of_a_cv_is_next_to_exact() {
    let expected = reference::Table::read("statistics", TABLE).unwrap();
    let mut rows = 0;
    for row in expected.rows.iter().filter(|row| row[0] == "cv_interval_exact") {
        let named = |name: &str| -> f64 {
            let pairs = row[1].split(';').filter_map(|pair| pair.split_once('='));
            pairs.into_iter().find(|(key, _)| *key == name).unwrap().1.parse().unwrap()
        };
        let (n, cv) = (named("n"), named("cv"));
        let (low, high) = model::weighing::variation_interval(n, cv, named("confidence")).unwrap();
        let got = if row[2] == "low" { low } else { high };
        let want = expected.number(row, "value").unwrap().unwrap();
        let off = (got / want - 1.0).abs();
        assert!(off <= 5e-5, "{got}, exact {want}, off by {off}: {row:?}");
        rows += 1;
    }
    assert_eq!(rows, 20);
}

#[test]
fn inputs_that_cannot_be_are_named() {
    for (inputs, allowed) in [
        ("n=10;mean=180;confidence=0.9", "sd=…"),
        ("n=ten;mean=180;sd=15;confidence=0.9", "n=0.5"),
        ("n=10;mean=180;sd=15;confidence=1", "0 < confidence < 1"),
    ] {
        let table = format!("kind,inputs,output\nmean_interval,{inputs},low\n");
        let fault = verify(&table).unwrap_err().to_string();
        assert!(fault.contains(allowed) && fault.contains("row 1"), "{fault}");
    }
}
