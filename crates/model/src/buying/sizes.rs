//! Feed that is sold in bags of several sizes.
//!
//! Counts are of measures, of which every bag holds a whole number, and a bag leads from one count to another. Where the prices of
//! all feeds and sizes rise and fall alike, keeping costs nothing and there is room, feed may as well come in the order in which
//! it is eaten: of two bags that come the other way round, either the later one may come with the earlier, or the earlier
//! with the later, at no more cost, in time and fresh. So one line is exact (our derivation, held against trying every plan).
//! Where the store is full on some day, every count of every feed is tried as long as there are not too many, and else the
//! bound is that of feed sold loose at the lowest price a measure.

use super::{Buying, BuyingFault, Feed, Part, Size, common, cost, credit, lines, search};

/// The cheapest parts when money is weighted, and what no parts undercut then.
pub(super) fn of_weights(
    buying: &Buying,
    dearer: &[f64],
    most: usize,
) -> Result<(Vec<Part>, f64), BuyingFault> {
    let bound_of = |parts: &[Part]| credit::weighted(buying, parts, dearer).ok_or(BuyingFault::NoWay);
    let one = lines::in_one(buying);
    let mut bound = loose_bound(buying, dearer);
    if buying.holding == 0.0 && lines::are_in_turn(buying) && rise_alike(buying) {
        let free = search::cheapest(buying, &one, dearer, false)?;
        bound = bound.max(bound_of(&free)?);
        if buying.room.is_none() || cost(buying, &free).is_some() {
            return Ok((free, bound));
        }
    }
    let every = lines::by_feed(buying, true);
    if search::states(&every, buying) <= most {
        let parts = search::cheapest(buying, &every, dearer, true)?;
        let bound = bound_of(&parts)?;
        return Ok((parts, bound));
    }
    let parts = search::cheapest(buying, &one, dearer, true)?;
    Ok((parts, bound))
}

/// Whether the prices of all sizes of all feeds rise and fall by the same share.
fn rise_alike(buying: &Buying) -> bool {
    let mut sizes = buying.feeds.iter().flat_map(|feed| &feed.sizes);
    let Some(first) = sizes.next() else { return true };
    let alike = |one: &Size| {
        one.price.iter().zip(&first.price).all(|(price, other)| {
            let (left, right) = (price * first.price[0], other * one.price[0]);
            (left - right).abs() <= 1e-12 * left.abs().max(right.abs())
        })
    };
    sizes.all(alike)
}

/// What no way undercuts if feed could be had by the measure, each at the lowest price of a measure in any bag.
fn loose_bound(buying: &Buying, dearer: &[f64]) -> f64 {
    let lowest = |feed: &Feed, period: usize| {
        let each = feed.sizes.iter().map(|size| size.price[period] / size.measures as f64);
        each.fold(f64::INFINITY, f64::min)
    };
    let loose = |feed: &Feed| {
        Feed::in_bags(
            feed.measures.clone(),
            (0..buying.periods()).map(|period| lowest(feed, period)).collect(),
        )
    };
    let loose = Buying { feeds: buying.feeds.iter().map(loose).collect(), ..buying.clone() };
    let free = search::cheapest(&loose, &lines::by_feed(&loose, false), dearer, false).ok();
    let free = free.and_then(|parts| credit::weighted(&loose, &parts, dearer));
    let common = buying.room.map_or(f64::NEG_INFINITY, |_| common::bound(&loose, dearer));
    free.map_or(common, |free| free.max(common))
}
