//! The least of a function of several numbers, by a simplex that walks downhill.
//!
//! Source: [nelder-mead-1965] (from memory).

/// Where a function is least, near `start`.
///
/// - `step`: how far the first corners lie from `start`
/// - `most`: values looked at before it stops
///
/// It stops when its corners agree to 1e-9. A value that is no number counts as beyond all others.
pub(crate) fn least<const N: usize>(
    start: [f64; N],
    step: f64,
    most: usize,
    function: impl Fn(&[f64; N]) -> f64,
) -> [f64; N] {
    let value = |at: [f64; N]| {
        let value = function(&at);
        (if value.is_nan() { f64::INFINITY } else { value }, at)
    };
    let mut corners: Vec<(f64, [f64; N])> = vec![value(start)];
    for axis in 0..N {
        let mut at = start;
        at[axis] += step;
        corners.push(value(at));
    }
    let mut looked = corners.len();
    while looked < most {
        corners.sort_by(|one, other| one.0.total_cmp(&other.0));
        if corners[N].0 - corners[0].0 < 1e-9 {
            break;
        }
        looked += walk(&mut corners, value);
    }
    corners.sort_by(|one, other| one.0.total_cmp(&other.0));
    corners[0].1
}

/// Moves the worst corner, or all towards the best; says how many values it looked at.
fn walk<const N: usize>(
    corners: &mut [(f64, [f64; N])],
    value: impl Fn([f64; N]) -> (f64, [f64; N]),
) -> usize {
    let (best, second_worst, worst) = (corners[0], corners[N - 1], corners[N]);
    let middle: [f64; N] =
        std::array::from_fn(|axis| corners[..N].iter().map(|(_, at)| at[axis]).sum::<f64>() / N as f64);
    let beyond =
        |times: f64| value(std::array::from_fn(|at| middle[at] + times * (middle[at] - worst.1[at])));
    let mirrored = beyond(1.0);
    if mirrored.0 < best.0 {
        let further = beyond(2.0);
        corners[N] = if further.0 < mirrored.0 { further } else { mirrored };
        return 2;
    }
    if mirrored.0 < second_worst.0 {
        corners[N] = mirrored;
        return 1;
    }
    let nearer = if mirrored.0 < worst.0 { beyond(0.5) } else { beyond(-0.5) };
    if nearer.0 < worst.0.min(mirrored.0) {
        corners[N] = nearer;
        return 2;
    }
    for corner in &mut corners[1..] {
        *corner = value(std::array::from_fn(|axis| f64::midpoint(best.1[axis], corner.1[axis])));
    }
    2 + N
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The curved valley of Rosenbrock 1960, whose least is at (1, 1).
    #[test]
    fn it_walks_down_a_curved_valley() {
        let valley = |at: &[f64; 2]| 100.0 * (at[1] - at[0] * at[0]).powi(2) + (1.0 - at[0]).powi(2);
        let [x, y] = least([-1.2, 1.0], 0.5, 1_000, valley);
        assert!((x - 1.0).abs() < 1e-3 && (y - 1.0).abs() < 1e-3, "{x} {y}");
    }

    #[test]
    fn what_is_no_number_is_not_taken() {
        let [x] = least([4.0], 1.0, 200, |at| at[0].ln() * at[0].ln());
        assert!((x - 1.0).abs() < 1e-3);
    }
}
