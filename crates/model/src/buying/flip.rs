//! What the answer hangs on.

use super::{Bought, Buying, BuyingFault, cost};

/// Where another way of buying becomes the cheapest.
#[derive(Clone, Debug, PartialEq)]
pub struct Flip {
    /// The value at which both cost the same.
    pub at: f64,
    /// The way that is cheapest beyond it.
    pub then: Bought,
}

/// Tries before giving up; a handful is usual.
const TRIES: usize = 40;

/// The value between `told` and `far` at which the way found ceases to be the cheapest; `None` where it stays so.
///
/// Costs of one way are a straight line in the value (a price that rises by so much a day), so the cheapest way at the far end
/// says where the way in hand loses to it; whatever is cheaper still at that point moves the point nearer, until nothing is.
/// Where money is borrowed only ways are held against it that need few states to be found, so that the point may lie a little
/// nearer than is said.
///
/// # Errors
/// [`BuyingFault`] where a value makes no sense.
pub fn flips(
    in_hand: &Bought,
    told: f64,
    far: f64,
    with: impl Fn(f64) -> Buying,
) -> Result<Option<Flip>, BuyingFault> {
    let loss = |value: f64, other: &Bought| {
        let buying = with(value);
        let of = |bought: &Bought| cost(&buying, &bought.parts).map(|cost| cost.total());
        Some(of(in_hand)? - of(other)?)
    };
    // Beyond where money is no longer lent for it, the way in hand is none.
    let fits = |value: f64| cost(&with(value), &in_hand.parts).is_some();
    let edge = last_fit(told, far, fits);
    let (mut at, mut then) = (edge, None);
    if edge != far {
        then = with(far).nearly_best().ok().map(|then| Flip { at: edge, then });
    }
    for _ in 0..TRIES {
        let other = with(at).nearly_best()?;
        let (Some(here), Some(there)) = (loss(told, &other), loss(at, &other)) else { break };
        let size = other.cost.total().abs().max(1e-9);
        if there <= 1e-9 * size {
            break;
        }
        let share = (-here).max(0.0) / (there + (-here).max(0.0));
        let next = told + share * (at - told);
        then = Some(Flip { at: next, then: other });
        if (next - at).abs() <= 1e-9 * (far - told).abs() {
            break;
        }
        at = next;
    }
    Ok(then)
}

/// The value furthest from the one told that still fits, as far as halving finds it.
fn last_fit(told: f64, far: f64, fits: impl Fn(f64) -> bool) -> f64 {
    if fits(far) {
        return far;
    }
    let (mut near, mut beyond) = (told, far);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(near, beyond);
        if fits(middle) {
            near = middle;
        } else {
            beyond = middle;
        }
    }
    near
}

/// Halvings of the way to where nothing fits any more: a thousand-millionth of it is left.
const HALVINGS: usize = 30;
