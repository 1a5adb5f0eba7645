//! Search along one number, for models whose answer has no formula.

/// Where a function with one top between `low` and `high` is highest, by the golden section.
///
/// A top is flat: its place is good to about 1e-8 of the range, its height to all digits.
pub(crate) fn highest_between(function: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    for _ in 0..80 {
        let (left, right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
        if function(left) >= function(right) {
            high = right;
        } else {
            low = left;
        }
    }
    (low + high) / 2.0
}

/// Where a function that is at most 0 at `inside` and above 0 at `outside` crosses, by halving.
pub(crate) fn crossing(function: impl Fn(f64) -> f64, mut inside: f64, mut outside: f64) -> f64 {
    for _ in 0..100 {
        let middle = f64::midpoint(inside, outside);
        if function(middle) <= 0.0 {
            inside = middle;
        } else {
            outside = middle;
        }
    }
    f64::midpoint(inside, outside)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tops_and_crossings_are_found_from_either_side() {
        let top = highest_between(|x| -(x - 2.0).powi(2), -1.0, 7.0);
        assert!((top - 2.0).abs() < 1e-7);
        assert!((highest_between(|x| x, 0.0, 3.0) - 3.0).abs() < 1e-9, "a top may lie on the edge");
        let off = |x: f64| x.abs() - 1.5;
        assert!((crossing(off, 0.0, 4.0) - 1.5).abs() < 1e-15);
        assert!((crossing(off, 0.0, -4.0) + 1.5).abs() < 1e-15);
    }
}
