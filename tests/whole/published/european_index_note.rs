//! An industry note on the European Broiler Index (published): 2.257 kg in 37 days is 61 g a day; with 96 % and 1.62 the
//! index is 361. Tolerance: the printed rounding.

use super::{near, sum};

#[test]
fn the_index_and_the_gain_with_the_whole_weight() {
    let inputs = [("weight_kg", "2.257"), ("livability", "96"), ("age_d", "37"), ("fcr", "1.62")];
    let index = sum("index", &inputs);
    near(index.outcome.number("performance.epef").unwrap(), 361.5, 0.1);
    near(index.outcome.number("performance.daily_gain").unwrap(), 61.0, 0.05);
}
