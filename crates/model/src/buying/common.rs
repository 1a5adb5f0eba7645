//! A bound for several feeds that share a store which is full on some day.
//!
//! If all feeds cost the same, bags could as well come in the order in which they are eaten: two that come the other way round
//! change places, which keeps each in time and fresh, leaves as many standing in the store, and pays the same. So with a common
//! price one line is exact. What each feed's price is above or below the common one is paid at the day of its bag's own choice,
//! which no way undercuts.

use super::{Buying, Feed, Measure, credit, lines, search};

/// What no way undercuts when money paid in a period counts as often as said, where each feed is sold in bags of a measure;
/// without end where bags do not go up in turn.
pub(super) fn bound(buying: &Buying, dearer: &[f64]) -> f64 {
    let bags = lines::in_turn(buying);
    let in_turn = bags.windows(2).all(|pair| pair[0].1.finished <= pair[1].1.finished);
    let price = mean_price(buying, &bags);
    let apart: f64 = bags.iter().map(|(feed, bag)| least_apart(buying, &price, dearer, *feed, *bag)).sum();
    let feed = Feed::in_bags(bags.iter().map(|(_, bag)| *bag).collect(), price);
    let common = Buying { feeds: vec![feed], ..buying.clone() };
    let cost = search::cheapest(&common, &lines::in_one(&common), dearer, true).ok();
    let cost = cost.and_then(|parts| credit::weighted(&common, &parts, dearer));
    cost.filter(|_| in_turn).map_or(f64::NEG_INFINITY, |cost| cost + apart)
}

/// The mean of the prices of each period, as many times as there are bags.
fn mean_price(buying: &Buying, bags: &[(usize, Measure)]) -> Vec<f64> {
    let mean = |period: usize| {
        let sum: f64 = bags.iter().map(|(feed, _)| buying.feeds[*feed].sizes[0].price[period]).sum();
        sum / bags.len().max(1) as f64
    };
    (0..buying.periods()).map(mean).collect()
}

/// The least that a bag costs beyond the common price on any day it may come.
fn least_apart(buying: &Buying, common: &[f64], dearer: &[f64], feed: usize, bag: Measure) -> f64 {
    let first = (bag.finished + 1).saturating_sub(buying.keeps);
    let days = (first..=bag.needed).filter(|period| buying.fee[*period].is_finite());
    let apart =
        days.map(|period| (buying.feeds[feed].sizes[0].price[period] - common[period]) * dearer[period]);
    apart.fold(f64::INFINITY, f64::min)
}
