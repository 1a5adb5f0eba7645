//! S. Shane, What's your PEF? (published, late 1990s): the European production efficiency factor.

use super::{near, sum};

/// 1.85 kg, 95 %, 44 days, 1.88: prints 212, which is 212.5 cut short. Tolerance: the printed rounding.
#[test]
fn the_worked_index() {
    let index =
        sum("index", &[("weight_kg", "1.85"), ("livability", "95"), ("age_d", "44"), ("fcr", "1.88")]);
    near(index.outcome.number("performance.epef").unwrap(), 212.5, 0.1);
    assert!(index.findings.iter().any(|finding| finding.name == "epef-scale"));
}
