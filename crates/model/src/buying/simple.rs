//! Ways of buying that need no search, to hold the cheapest against.

use super::{Buying, Part, lines};

/// Each bag, of the smallest there are, on the last day it may come; `None` where it then finds no room.
pub fn just_in_time(buying: &Buying) -> Option<Vec<Part>> {
    let last = |needed: usize| (0..=needed).rev().find(|period| buying.fee[*period].is_finite());
    let mut parts = Vec::new();
    for (feed, one) in buying.feeds.iter().enumerate() {
        let (size, smallest) = one.sizes.iter().enumerate().min_by_key(|(_, size)| size.measures)?;
        for measure in one.measures.iter().step_by(smallest.measures) {
            parts.push(Part { period: last(measure.needed)?, feed, size, bags: 1 });
        }
    }
    checked(buying, parts)
}

/// All that keeps and finds room, as soon as anything may come, in the bags that hold most for their money; again whenever a
/// bag would be missing.
pub fn as_much_as_possible(buying: &Buying) -> Option<Vec<Part>> {
    let mut come = vec![0; buying.feeds.len()];
    let mut parts = Vec::new();
    let first = (0..buying.periods()).find(|period| buying.fee[*period].is_finite())?;
    for period in first..buying.periods() {
        let next = (period + 1..buying.periods()).find(|period| buying.fee[*period].is_finite());
        let missing = |feed: usize, come: usize| {
            let measure = buying.feeds[feed].measures.get(come);
            measure.is_some_and(|measure| next.is_none_or(|next| measure.needed < next))
        };
        let goes = period == first || (0..come.len()).any(|feed| missing(feed, come[feed]));
        if goes && buying.fee[period].is_finite() {
            fill(buying, period, &mut come, &mut parts);
        }
    }
    checked(buying, parts)
}

/// Takes bags in the order in which they are needed, until none is fresh enough or finds room.
fn fill(buying: &Buying, period: usize, come: &mut [usize], parts: &mut Vec<Part>) {
    let standing = |come: &[usize]| {
        let all = buying.feeds.iter().zip(come).flat_map(|(feed, come)| &feed.measures[..*come]);
        all.filter(|measure| measure.finished > period).count() + buying.in_hand(period)
    };
    loop {
        let next =
            |feed: usize| buying.feeds[feed].measures.get(come[feed]).map(|measure| (measure.needed, feed));
        let Some((_, feed)) = (0..come.len()).filter_map(next).min() else { return };
        let one = &buying.feeds[feed];
        let mut sizes: Vec<usize> = (0..one.sizes.len()).collect();
        let each = |size: usize| one.sizes[size].price[period] / one.sizes[size].measures as f64;
        sizes.sort_by(|size, other| each(*size).total_cmp(&each(*other)));
        let fits = |size: &usize| {
            let mut after = come.to_vec();
            after[feed] = (come[feed] + one.sizes[*size].measures).min(one.measures.len());
            let brought = &one.measures[come[feed]..after[feed]];
            let keeps = brought.iter().all(|measure| measure.finished < period + buying.keeps);
            let stays = brought.iter().any(|measure| measure.finished > period);
            let has_room = buying.room.is_none_or(|room| !stays || standing(&after) <= room);
            (keeps && has_room).then_some((*size, after[feed]))
        };
        let Some((size, after)) = sizes.iter().find_map(fits) else { return };
        come[feed] = after;
        parts.push(Part { period, feed, size, bags: 1 });
    }
}

/// The parts put together by period, feed and size, where they keep all conditions.
fn checked(buying: &Buying, parts: Vec<Part>) -> Option<Vec<Part>> {
    let parts = lines::together(parts);
    super::cost(buying, &parts).map(|_| parts)
}
