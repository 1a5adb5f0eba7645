//! Two bell curves fitted to invented weights by scipy, climbing the likelihood itself. The file carries its own header.

use model::weighing::sexes;
use reference::Table;

use super::near;

const TABLE: &str = include_str!("../tables/two_sexes.csv");

/// Tolerances of the file: 1e-4 of the value, 1e-6 of the log likelihood.
#[test]
fn every_flock_agrees() {
    let table = Table::read("two_sexes", TABLE).unwrap();
    for row in &table.rows {
        let weights: Vec<f64> = row[0].split(' ').map(|weight| weight.parse().unwrap()).collect();
        let want = |column: &str| table.number(row, column).unwrap().unwrap();
        let two = sexes::two_curves(&weights).unwrap();
        for (got, column) in [
            (two.heavy_share, "heavy_share"),
            (two.light, "light_g"),
            (two.heavy, "heavy_g"),
            (two.variation, "variation"),
        ] {
            near(got, want(column), 1e-4 * want(column));
        }
        near(two.log_likelihood, want("log_likelihood"), 1e-6 * two.log_likelihood.abs());
        let one = sexes::log_likelihood_of_one(&weights).unwrap();
        near(one, want("log_likelihood_of_one"), 1e-6 * one.abs());
    }
    assert_eq!(table.rows.len(), 5);
}
