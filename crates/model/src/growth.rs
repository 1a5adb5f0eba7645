//! A growth curve led through a weight that the grower expects.

/// A value of the curve at a share `part` of the way from placement to sale, when at sale it is `ratio` times the curve.
///
/// The gap opens evenly in logarithms, as it does for birds that grow a steady share slower or faster than the curve: our
/// judgement. Chicks arrive as they are, whatever they will weigh.
pub fn through(curve: f64, ratio: f64, part: f64) -> f64 {
    curve * ratio.powf(part)
}

/// The last day of age on which warmth takes nothing: until then birds are kept warm on purpose, and the trial that the loss
/// is taken from begins with it.
const WARM_UNTIL_D: f64 = 21.0;

/// The share of a day's feed or growth that is left when heat takes the share `lost`, 0 to 1, from grown birds.
pub fn kept_in_heat(lost: f64, age_d: f64) -> f64 {
    if age_d > WARM_UNTIL_D { 1.0 - lost } else { 1.0 }
}

/// The weight of a chick, g, out of boxes weighed with their chicks in: their mean, less an empty box, shared by the chicks
/// in one. `None` where no box was weighed.
pub fn chick_in_boxes(full_g: &[f64], empty_g: f64, chicks: f64) -> Option<f64> {
    Some((crate::weighing::mean(full_g)? - empty_g) / chicks)
}

/// A value on a day between two days that it is known for, on a straight line between them; `None` before the first and
/// after the last. The days ascend.
pub fn between(known: &[(i32, f64)], day: i32) -> Option<f64> {
    let after = known.iter().position(|(at, _)| *at >= day)?;
    let (to, high) = known[after];
    if to == day {
        return Some(high);
    }
    let (from, low) = *known.get(after.checked_sub(1)?)?;
    Some(low + (high - low) * f64::from(day - from) / f64::from(to - from))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chick_is_what_its_box_weighs_more_than_empty() {
        assert_eq!(chick_in_boxes(&[4_700.0, 4_500.0], 400.0, 100.0), Some(42.0));
        assert_eq!(chick_in_boxes(&[], 400.0, 100.0), None);
    }

    #[test]
    fn between_is_on_the_line_and_never_beyond_it() {
        let known = [(0, 40.0), (7, 180.0), (14, 460.0)];
        let at = |day| between(&known, day);
        assert_eq!([at(0), at(7), at(10), at(14)], [Some(40.0), Some(180.0), Some(300.0), Some(460.0)]);
        assert_eq!([at(-1), at(15), between(&[], 3)], [None, None, None]);
    }

    #[test]
    fn heat_takes_nothing_from_chicks() {
        assert_eq!((kept_in_heat(0.2, 21.0), kept_in_heat(0.2, 22.0)), (1.0, 0.8));
    }

    #[test]
    fn it_starts_on_the_curve_and_ends_where_told() {
        assert_eq!(through(42.0, 0.8, 0.0), 42.0);
        assert!((through(2000.0, 0.8, 1.0) - 1600.0).abs() < 1e-9);
    }
}
