//! The bags in lines: of each line, bags come one after the other.

use super::{Bag, Buying};

/// Bags that come in this order.
pub(super) struct Line {
    /// The feed of each, and when it is due.
    pub(super) bags: Vec<(usize, Bag)>,
    /// The counts that are tried, from none to all.
    pub(super) counts: Vec<usize>,
}

/// A line a feed. Where there is room for all, only counts at which a feed's next bag has other days to come on than the bag
/// before: bags of the same days come on the same day, since all of them find the same day cheapest.
pub(super) fn by_feed(buying: &Buying, every_count: bool) -> Vec<Line> {
    let of = |feed: usize| {
        let bags: Vec<(usize, Bag)> = buying.feeds[feed].bags.iter().map(|bag| (feed, *bag)).collect();
        let differs = |count: &usize| {
            let (before, next) = (bags.get(count.wrapping_sub(1)), bags.get(*count));
            every_count || before != next
        };
        Line { counts: (0..=bags.len()).filter(differs).collect(), bags }
    };
    (0..buying.feeds.len()).filter(|feed| !buying.feeds[*feed].bags.is_empty()).map(of).collect()
}

/// All bags in one line, in the order in which they are needed. Ways in which a later feed comes before an earlier one are
/// lost.
pub(super) fn in_one(buying: &Buying) -> Vec<Line> {
    let bags = in_turn(buying);
    vec![Line { counts: (0..=bags.len()).collect(), bags }]
}

/// All bags in the order in which they are needed.
pub(super) fn in_turn(buying: &Buying) -> Vec<(usize, Bag)> {
    let of =
        |(feed, one): (usize, &super::Feed)| one.bags.iter().map(move |bag| (feed, *bag)).collect::<Vec<_>>();
    let mut bags: Vec<(usize, Bag)> = buying.feeds.iter().enumerate().flat_map(of).collect();
    bags.sort_by_key(|(feed, bag)| (bag.needed, bag.finished, *feed));
    bags
}

impl Line {
    /// The places in `counts` that are possible in the evening of a period: from what is needed by then to what is fresh.
    pub(super) fn range(&self, period: usize, keeps: usize) -> (usize, usize) {
        let needed = self.bags.iter().take_while(|(_, bag)| bag.needed <= period).count();
        let fresh = self.bags.iter().take_while(|(_, bag)| bag.finished < period + keeps).count();
        let low = self.counts.partition_point(|count| *count < needed);
        let high = self.counts.partition_point(|count| *count <= fresh).saturating_sub(1);
        (low, high)
    }
}
