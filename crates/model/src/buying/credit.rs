//! Money that costs interest only while it is borrowed.
//!
//! Whether a day is in debt hangs on all that was bought before, so that interest is no sum over bags. It is never less than a
//! straight line below it: for any weights *w* from 0 to 1, the interest of an evening is at least *w* times the rate times
//! what is spent beyond the purse. With the weights fixed, money spent early simply costs more, which [`search`] solves
//! exactly, and the answer bounds every way of buying from below (the dual of the debt; Bertsekas, Nonlinear Programming,
//! 1999, from memory). Where the weights are 1 in the evenings that are in debt and 0 in those that are not, bound and cost
//! meet, and the way found is proven best. Otherwise the weights follow the debt of the ways found so far, and what they leave open
//! is closed by `limit`, which keeps of each state all that was paid, where there are not too many states.

use super::limit::{self, Aim};
use super::lines::{self, Line};
use super::search;
use super::{Bought, Buying, BuyingFault, Credit, Part, common, cost, sizes};

/// Weights that are tried, at most.
const ROUNDS: usize = 40;

/// The cheapest way that owes no more than is lent, as far as it can be proven by looking at so many states at a time.
///
/// Most credits are never used up: the cheapest way without a limit is then the answer. What it costs undercuts every way.
pub(super) fn best_within(buying: &Buying, most: usize) -> Result<Bought, BuyingFault> {
    let Some((credit, limit)) = buying.credit.as_ref().and_then(|credit| Some((credit, credit.limit?)))
    else {
        return Ok(within_states(buying, best(buying, most)?, most));
    };
    let free = Buying { credit: Some(Credit { limit: None, ..credit.clone() }), ..buying.clone() };
    let free = best(&free, most)?;
    if cost(buying, &free.parts).is_some() {
        return Ok(free);
    }
    let every = lines::by_feed(buying, true);
    let whole = (most > 0 && search::states(&every, buying) <= limit::MOST_STATES).then_some(&every);
    let one = lines::in_one(buying);
    let found = match whole.map(|lines| limit::best(buying, lines, Aim::Cost)) {
        Some(Ok(Some((parts, _)))) => Some((parts, true)),
        Some(Err(_)) => None,
        _ => limit::best(buying, &one, Aim::Cost).ok().flatten().map(|(parts, _)| (parts, false)),
    };
    match found.and_then(|(parts, is_whole)| Some((cost(buying, &parts)?, parts, is_whole))) {
        Some((cost, parts, is_whole)) => {
            let lower_bound = if is_whole { cost.total() } else { free.lower_bound };
            Ok(Bought { lower_bound: lower_bound.min(cost.total()), parts, cost })
        }
        None => Err(too_little(buying, whole.unwrap_or(&one), limit)),
    }
}

/// The cheapest way with interest beyond doubt, where weights did not prove it and there are not too many states.
fn within_states(buying: &Buying, found: Bought, most: usize) -> Bought {
    let every = lines::by_feed(buying, true);
    if found.is_proven() || most == 0 || search::states(&every, buying) > limit::MOST_STATES {
        return found;
    }
    let exact = limit::best(buying, &every, Aim::Cost).ok().flatten();
    let exact = exact.and_then(|(parts, _)| Some((cost(buying, &parts)?, parts)));
    exact.map_or(found, |(cost, parts)| Bought { lower_bound: cost.total(), parts, cost })
}

/// Why nothing can be bought within a limit: what would have to be lent.
fn too_little(buying: &Buying, lines: &[Line], limit: f64) -> BuyingFault {
    let Ok(Some((parts, needed))) = limit::best(buying, lines, Aim::Credit) else {
        return BuyingFault::NoWay;
    };
    let money = buying.credit.iter().flat_map(|credit| &credit.money);
    let owed = cost::paid_by(buying, &parts).into_iter().zip(money).map(|(paid, money)| paid - money);
    let worst = owed.enumerate().reduce(|worst, one| if one.1 > worst.1 + 1e-9 { one } else { worst });
    BuyingFault::CreditTooSmall { period: worst.map_or(0, |(period, _)| period), limit, needed }
}

/// The cheapest way, as far as it can be proven by looking at so many states at a time.
///
/// Weights are found by ways that need few states. Only with the last of them, and with those of the highest bound, as many states
/// are looked at as may be.
pub(super) fn best(buying: &Buying, most: usize) -> Result<Bought, BuyingFault> {
    let mut weights = vec![1.0; buying.periods()];
    if buying.credit.is_none() {
        return round(buying, &weights, most);
    }
    let mut best = round(buying, &weights, 0)?;
    let mut highest = (best.lower_bound, weights.clone());
    for done in 1..ROUNDS {
        let before = weights.clone();
        follow(&mut weights, &in_debt(buying, &best.parts), done);
        if best.is_proven() || weights == before {
            break;
        }
        let next = round(buying, &weights, 0)?;
        if next.lower_bound > highest.0 {
            highest = (next.lower_bound, weights.clone());
        }
        best = better(best, next);
    }
    for _ in 0..LAST_ROUNDS {
        if best.is_proven() || most == 0 || !round_needs_states(buying) {
            break;
        }
        best = better(best, round(buying, &highest.1, most)?);
        highest.1 = in_debt(buying, &best.parts).into_iter().map(|debt| f64::from(u8::from(debt))).collect();
    }
    Ok(best)
}

/// Rounds in which as many states are looked at as may be.
const LAST_ROUNDS: usize = 2;

/// The cheaper way of two, under the higher bound. Of equal costs the later: its weights fit the debt better, and so does its
/// choice among ways that cost the same.
fn better(one: Bought, other: Bought) -> Bought {
    let lower_bound = one.lower_bound.max(other.lower_bound);
    let cheaper = if other.cost.total() <= one.cost.total() * (1.0 + 1e-12) { other } else { one };
    Bought { lower_bound: lower_bound.min(cheaper.cost.total()), ..cheaper }
}

/// Evenings in which more is spent than there was.
fn in_debt(buying: &Buying, parts: &[Part]) -> Vec<bool> {
    let money = buying.credit.iter().flat_map(|credit| &credit.money);
    cost::paid_by(buying, parts).iter().zip(money).map(|(paid, money)| paid > money).collect()
}

/// The first time the weights are the debt itself, then the mean over all rounds.
fn follow(weights: &mut [f64], in_debt: &[bool], done: usize) {
    let share = 1.0 / done as f64;
    for (weight, debt) in weights.iter_mut().zip(in_debt) {
        *weight += share * (f64::from(u8::from(*debt)) - *weight);
    }
}

/// The cheapest way when evenings are weighted, what it costs with true interest, and the bound.
fn round(buying: &Buying, weights: &[f64], most: usize) -> Result<Bought, BuyingFault> {
    let dearer = dearer(buying, weights);
    let (parts, bound) = of_weights(buying, &dearer, most)?;
    let cost = cost(buying, &parts).ok_or(BuyingFault::NoWay)?;
    let lower_bound = (bound - offset(buying, weights)).min(cost.total());
    Ok(Bought { parts, cost, lower_bound })
}

/// How often money paid in a period counts: once, and the interest of all evenings from then on.
fn dearer(buying: &Buying, weights: &[f64]) -> Vec<f64> {
    let rate = buying.credit.as_ref().map_or(0.0, |credit| credit.rate);
    let mut ahead = 0.0;
    let mut dearer: Vec<f64> = weights
        .iter()
        .rev()
        .map(|weight| {
            ahead += weight;
            1.0 + rate * ahead
        })
        .collect();
    dearer.reverse();
    dearer
}

/// What the weighted interest counts too much: the purse of each evening, and what is owed without feed.
fn offset(buying: &Buying, weights: &[f64]) -> f64 {
    let Some(credit) = &buying.credit else { return 0.0 };
    let of = |(weight, money): (&f64, &f64)| weight * money + (-money).max(0.0);
    credit.rate * weights.iter().zip(&credit.money).map(of).sum::<f64>()
}

/// What parts cost when money paid in a period counts as often as said.
pub(super) fn weighted(buying: &Buying, parts: &[Part], dearer: &[f64]) -> Option<f64> {
    let free = Buying { credit: None, room: None, ..buying.clone() };
    let holding = cost(&free, parts)?.holding;
    let mut before = 0.0;
    let paid = cost::paid_by(buying, parts).into_iter().zip(dearer).map(|(paid, dearer)| {
        let now = paid - std::mem::replace(&mut before, paid);
        now * dearer
    });
    Some(paid.sum::<f64>() + holding)
}

/// Whether states may have to be looked at.
fn round_needs_states(buying: &Buying) -> bool {
    buying.room.is_some() || buying.has_sizes()
}

/// The cheapest parts when money is weighted, and what no parts undercut then.
///
/// Where the store is full on some day, every count of every feed has to be tried. Bags in one line, eaten in turn, are solved
/// at once; often the bound proves them, and else they stand in where there are too many states.
fn of_weights(buying: &Buying, dearer: &[f64], most: usize) -> Result<(Vec<Part>, f64), BuyingFault> {
    if buying.has_sizes() {
        return sizes::of_weights(buying, dearer, most);
    }
    let free = search::cheapest(buying, &lines::by_feed(buying, false), dearer, false)?;
    let bound = weighted(buying, &free, dearer).ok_or(BuyingFault::NoWay)?;
    if buying.room.is_none() || cost(buying, &free).is_some() {
        return Ok((free, bound));
    }
    let in_turn = search::cheapest(buying, &lines::in_one(buying), dearer, true);
    let bound = bound.max(common::bound(buying, dearer));
    let reached = in_turn.as_ref().ok().and_then(|parts| weighted(buying, parts, dearer));
    if reached.is_some_and(|reached| reached - bound <= 1e-10 * reached.abs()) {
        return Ok((in_turn?, bound));
    }
    let lines: Vec<Line> = lines::by_feed(buying, true);
    if search::states(&lines, buying) > most {
        return Ok((in_turn?, bound));
    }
    let parts = search::cheapest(buying, &lines, dearer, true)?;
    let bound = weighted(buying, &parts, dearer).ok_or(BuyingFault::NoWay)?;
    Ok((parts, bound))
}
