//! Why a result is not the one that was planned: a difference of products split into what each factor did to it.

/// What each factor did to a product on its way from `before` to `after`, in the order of the factors.
///
/// A factor's share is the mean of what its change does, over all orders in which the factors can be changed one by one
/// (Shapley's value). So no order is preferred, a factor that did not change has no share, and the shares add up to the whole
/// difference. Empty where the two do not have the same number of factors, at most [`FACTORS_MAX`].
///
/// Source: [shapley-1953]; of products of several factors, [sun-1998].
pub fn shares(before: &[f64], after: &[f64]) -> Vec<f64> {
    let count = before.len();
    if count != after.len() || count > FACTORS_MAX {
        return Vec::new();
    }
    let product = |changed: usize| -> f64 {
        (0..count).map(|at| if changed >> at & 1 == 1 { after[at] } else { before[at] }).product()
    };
    let share = |factor: usize| -> f64 {
        let without = (0..1_usize << count).filter(|changed| changed >> factor & 1 == 0);
        without
            .map(|changed| {
                let first = changed.count_ones() as usize;
                let orders = factorial(first) * factorial(count - 1 - first) / factorial(count);
                orders * (product(changed | 1 << factor) - product(changed))
            })
            .sum()
    };
    (0..count).map(share).collect()
}

/// The most factors that are told apart: the work doubles with each.
pub const FACTORS_MAX: usize = 8;

fn factorial(number: usize) -> f64 {
    (1..=number).map(|one| one as f64).product()
}

/// Amounts as whole smallest units of money that add up to a total, each rounded down or up: the largest remainders are
/// rounded up. Where the total is further off than rounding explains, the last bit goes round once more.
///
/// - `amounts`: in the money itself
/// - `digits`: decimals of the money
/// - `total`: what they are to add up to, in smallest units
pub fn in_whole_units(amounts: &[f64], digits: u8, total: i64) -> Vec<i64> {
    let unit = 10_f64.powi(i32::from(digits));
    let scaled: Vec<f64> = amounts.iter().map(|amount| amount * unit).collect();
    let mut whole: Vec<i64> = scaled.iter().map(|amount| amount.floor() as i64).collect();
    let short = total - whole.iter().sum::<i64>();
    let mut by_rest: Vec<usize> = (0..whole.len()).collect();
    let rest = |at: usize| scaled[at] - scaled[at].floor();
    by_rest.sort_by(|one, other| rest(*other).total_cmp(&rest(*one)));
    for at in by_rest.into_iter().cycle().take(usize::try_from(short.abs()).unwrap_or(0)) {
        whole[at] += short.signum();
    }
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two factors: half of the joint change each, worked by hand. 10 × 2 becomes 12 × 3.
    #[test]
    fn two_factors_share_what_they_did_together() {
        assert_eq!(shares(&[10.0, 2.0], &[12.0, 3.0]), [5.0, 11.0]);
    }

    #[test]
    fn shares_add_up_and_who_stood_still_has_none() {
        let (before, after) = ([1000.0, 0.95, 2.1, 3.2, 1.7], [1010.0, 0.91, 1.9, 3.2, 1.9]);
        let split = shares(&before, &after);
        let product = |factors: &[f64]| factors.iter().product::<f64>();
        assert!((split.iter().sum::<f64>() - (product(&after) - product(&before))).abs() < 1e-9);
        assert!(split[3].abs() < 1e-9);
        assert!(split[0] > 0.0 && split[1] < 0.0 && split[2] < 0.0 && split[4] > 0.0);
    }

    #[test]
    fn what_cannot_be_split_is_not() {
        assert!(shares(&[1.0], &[1.0, 2.0]).is_empty());
        assert!(shares(&[1.0; 9], &[2.0; 9]).is_empty());
        assert!(shares(&[], &[]).is_empty());
    }

    #[test]
    fn whole_units_add_up_to_the_cent() {
        let thirds = [10.0 / 3.0, 10.0 / 3.0, 10.0 / 3.0];
        assert_eq!(in_whole_units(&thirds, 2, 1000), [334, 333, 333]);
        assert_eq!(in_whole_units(&[-0.005, 0.015], 2, 1), [0, 1]);
        assert_eq!(in_whole_units(&[-7.2, 3.2], 0, -5), [-8, 3]);
        assert!(in_whole_units(&[], 2, 5).is_empty());
    }
}
