//! Ways of buying that need no search, to hold the cheapest against.

use super::{Buying, Part};

/// Each bag on the last day it may come; `None` where it then finds no room.
pub fn just_in_time(buying: &Buying) -> Option<Vec<Part>> {
    let last = |needed: usize| (0..=needed).rev().find(|period| buying.fee[*period].is_finite());
    let mut parts = Vec::new();
    for (feed, one) in buying.feeds.iter().enumerate() {
        for bag in &one.bags {
            parts.push(Part { period: last(bag.needed)?, feed, bags: 1 });
        }
    }
    checked(buying, parts)
}

/// All that keeps and finds room, as soon as anything may come; again whenever a bag would be missing.
pub fn as_much_as_possible(buying: &Buying) -> Option<Vec<Part>> {
    let mut come = vec![0; buying.feeds.len()];
    let mut parts = Vec::new();
    let first = (0..buying.periods()).find(|period| buying.fee[*period].is_finite())?;
    for period in first..buying.periods() {
        let next = (period + 1..buying.periods()).find(|period| buying.fee[*period].is_finite());
        let missing = |feed: usize, come: usize| {
            let bag = buying.feeds[feed].bags.get(come);
            bag.is_some_and(|bag| next.is_none_or(|next| bag.needed < next))
        };
        let goes = period == first || (0..come.len()).any(|feed| missing(feed, come[feed]));
        if goes && buying.fee[period].is_finite() {
            fill(buying, period, &mut come, &mut parts);
        }
    }
    checked(buying, parts)
}

/// Takes bags in the order in which they are needed, until one is not fresh enough or finds no room.
fn fill(buying: &Buying, period: usize, come: &mut [usize], parts: &mut Vec<Part>) {
    let standing = |come: &[usize]| {
        let bags = buying.feeds.iter().zip(come).flat_map(|(feed, come)| &feed.bags[..*come]);
        bags.filter(|bag| bag.finished > period).count() + buying.in_hand(period)
    };
    loop {
        let next = |feed: usize| buying.feeds[feed].bags.get(come[feed]).map(|bag| (bag.needed, feed));
        let Some((_, feed)) = (0..come.len()).filter_map(next).min() else { return };
        let bag = buying.feeds[feed].bags[come[feed]];
        let stays = usize::from(bag.finished > period);
        let full = buying.room.is_some_and(|room| standing(come) + stays > room);
        if bag.finished >= period + buying.keeps || full {
            return;
        }
        come[feed] += 1;
        parts.push(Part { period, feed, bags: 1 });
    }
}

/// The parts put together by period and feed, where they keep all conditions.
fn checked(buying: &Buying, mut parts: Vec<Part>) -> Option<Vec<Part>> {
    parts.sort();
    let same = |one: &Part, other: &Part| (one.period, one.feed) == (other.period, other.feed);
    let sum = |some: &[Part]| Part { bags: some.iter().map(|part| part.bags).sum(), ..some[0] };
    let parts: Vec<Part> = parts.chunk_by(same).map(sum).collect();
    super::cost(buying, &parts).map(|_| parts)
}
