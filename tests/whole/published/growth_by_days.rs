//! statsmodels 0.15.0: a filter followed day by day; scipy 1.17.1: Gompertz curves through the weights of ChickWeight. The
//! files carry their own headers.

use advice::verify::verify;
use reference::Table;
use serde_json::Value;

const FILTER: &str = include_str!("../tables/kalman.csv");
const CURVES: &str = include_str!("../tables/gompertz_fits.csv");

/// Tolerance of the header: 1e-9, or 1e-7 of the value.
#[test]
fn the_filter_agrees_day_by_day() {
    let expected = Table::read("kalman", FILTER).unwrap();
    let rows = verify(FILTER).unwrap();
    let outputs = &expected.columns[4..];
    assert_eq!((rows.len(), outputs.len()), (128, 8));
    for (row, cells) in rows.iter().zip(&expected.rows) {
        for name in outputs {
            let (got, want) =
                (row[name.as_str()].as_f64().unwrap(), expected.number(cells, name).unwrap().unwrap());
            assert!((got - want).abs() <= 1e-9 + 1e-7 * want.abs(), "{name}: {got}, wanted {want}: {row:?}");
        }
    }
}

/// Tolerances of the header: 1e-5 of the sum of squares everywhere, 1e-3 of the rest where it is well determined. Whether a
/// value lies on a bound, and is determined, is the same everywhere.
#[test]
fn the_curves_agree() {
    let expected = Table::read("gompertz_fits", CURVES).unwrap();
    let rows = verify(CURVES).unwrap();
    assert_eq!(rows.len(), 36);
    for (row, cells) in rows.iter().zip(&expected.rows) {
        let want = |name: &str| expected.number(cells, name).unwrap().unwrap();
        let off = |name: &str| (row[name].as_f64().unwrap() / want(name) - 1.0).abs();
        assert!(off("rss_g2") <= 1e-5, "{row:?}, wanted {}", want("rss_g2"));
        for name in ["at_bound", "well_determined"] {
            let at = expected.column(name).unwrap();
            assert_eq!(row[name], Value::Bool(cells[at] == "true"), "{name}: {row:?}");
        }
        if row["well_determined"] == Value::Bool(true) {
            let parameters = ["asymptote_g", "rate_per_day", "inflection_day"];
            let errors = ["se_asymptote_g", "se_rate_per_day", "se_inflection_day"];
            for name in parameters.into_iter().chain(errors) {
                assert!(off(name) <= 1e-3, "{name}: {row:?}, wanted {}", want(name));
            }
        }
    }
}
