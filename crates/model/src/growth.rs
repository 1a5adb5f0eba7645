//! A growth curve led through a weight that the grower expects.

/// A value of the curve at a share `part` of the way from placement to sale, when at sale it is `ratio` times the curve.
///
/// The gap opens evenly in logarithms, as it does for birds that grow a steady share slower or faster than the curve: our
/// judgement. Chicks arrive as they are, whatever they will weigh.
pub fn through(curve: f64, ratio: f64, part: f64) -> f64 {
    curve * ratio.powf(part)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_starts_on_the_curve_and_ends_where_told() {
        assert_eq!(through(42.0, 0.8, 0.0), 42.0);
        assert!((through(2000.0, 0.8, 1.0) - 1600.0).abs() < 1e-9);
    }
}
