//! What is bought, in lines: of each line, measures come one after the other.

use super::search::Steps;
use super::{Buying, Measure, Part};

/// Measures that come in this order.
pub(super) struct Line {
    /// The feed of each, and when it is due.
    pub(super) measures: Vec<(usize, Measure)>,
    /// The counts that are tried, from none to all.
    pub(super) counts: Vec<usize>,
}

/// A step along a line: bags of one size that lead from one of its counts to a later one.
#[derive(Clone, Copy)]
pub(super) struct Move {
    /// The place in the line's counts it starts from.
    pub(super) from: usize,
    feed: usize,
    size: usize,
    bags: usize,
    /// What the bags cost.
    pub(super) price: Steps,
    /// The evenings that what they bring waits, over all its measures.
    pub(super) evenings: Steps,
}

/// Of each place of a line, the moves that lead to it in some period.
pub(super) type Moves = Vec<Vec<Move>>;

/// A line a feed. Where there is room for all and a feed is sold in one size, only counts at which its next bag has other days to
/// come on than the bag before: bags of the same days come on the same day, since all of them find the same day cheapest.
pub(super) fn by_feed(buying: &Buying, every_count: bool) -> Vec<Line> {
    let of = |feed: usize| {
        let measures: Vec<(usize, Measure)> =
            buying.feeds[feed].measures.iter().map(|measure| (feed, *measure)).collect();
        let differs = |count: &usize| {
            let (before, next) = (measures.get(count.wrapping_sub(1)), measures.get(*count));
            every_count || before != next
        };
        Line { counts: (0..=measures.len()).filter(differs).collect(), measures }
    };
    (0..buying.feeds.len()).filter(|feed| !buying.feeds[*feed].measures.is_empty()).map(of).collect()
}

/// All measures in one line, in the order in which they are needed. Ways in which a later feed comes before an earlier one are
/// lost. Where bags hold several measures and these of another feed lie between them, a line a feed.
pub(super) fn in_one(buying: &Buying) -> Vec<Line> {
    if buying.has_sizes() && !are_in_turn(buying) {
        return by_feed(buying, true);
    }
    let measures = in_turn(buying);
    vec![Line { counts: (0..=measures.len()).collect(), measures }]
}

/// All measures in the order in which they are needed.
pub(super) fn in_turn(buying: &Buying) -> Vec<(usize, Measure)> {
    let of = |(feed, one): (usize, &super::Feed)| {
        one.measures.iter().map(move |measure| (feed, *measure)).collect::<Vec<_>>()
    };
    let mut measures: Vec<(usize, Measure)> = buying.feeds.iter().enumerate().flat_map(of).collect();
    measures.sort_by_key(|(feed, measure)| (measure.needed, measure.finished, *feed));
    measures
}

/// Whether the feeds are eaten one after the other, none of one among another.
pub(super) fn are_in_turn(buying: &Buying) -> bool {
    let measures = in_turn(buying);
    let changes = measures.windows(2).filter(|pair| pair[0].0 != pair[1].0).count();
    let feeds = buying.feeds.iter().filter(|feed| !feed.measures.is_empty()).count();
    changes + 1 == feeds.max(1) && measures.windows(2).all(|pair| pair[0].1.finished <= pair[1].1.finished)
}

impl Line {
    /// The places in `counts` that are possible in the evening of a period: from what is needed by then to what is fresh.
    pub(super) fn range(&self, period: usize, keeps: usize) -> (usize, usize) {
        let needed = self.measures.iter().take_while(|(_, measure)| measure.needed <= period).count();
        let fresh = self.measures.iter().take_while(|(_, measure)| measure.finished < period + keeps).count();
        let low = self.counts.partition_point(|count| *count < needed);
        let high = self.counts.partition_point(|count| *count <= fresh).saturating_sub(1);
        (low, high)
    }

    /// The moves of a period, where `price` tells what a bag of a feed and size costs. Bags of several measures go from any count
    /// of a feed to one further on, at most to its end; a line that leaves out counts has one size of one measure.
    pub(super) fn moves(
        &self,
        buying: &Buying,
        period: usize,
        price: impl Fn(usize, usize) -> Steps,
    ) -> Moves {
        let mut waits = vec![0; self.measures.len() + 1];
        for (at, (_, measure)) in self.measures.iter().enumerate() {
            waits[at + 1] = waits[at] + measure.finished as Steps - period as Steps;
        }
        let mut moves: Moves = vec![Vec::new(); self.counts.len()];
        let mut ends: Vec<usize> = (1..=self.measures.len()).collect();
        for at in (1..self.measures.len()).rev() {
            if self.measures[at - 1].0 == self.measures[at].0 {
                ends[at - 1] = ends[at];
            }
        }
        for (from, pair) in self.counts.windows(2).enumerate() {
            let (count, next) = (pair[0], pair[1]);
            let feed = self.measures[count].0;
            for (size, one) in buying.feeds[feed].sizes.iter().enumerate() {
                let (reach, bags) = match one.measures {
                    1 => (next, next - count),
                    several => ((count + several).min(ends[count]), 1),
                };
                let to = from + self.counts[from..].partition_point(|count| *count < reach);
                let price = price(feed, size) * bags as Steps;
                moves[to].push(Move { from, feed, size, bags, price, evenings: waits[reach] - waits[count] });
            }
        }
        moves
    }
}

/// The bags that lead from one place of a line to another at the least price, by period, feed and size: of equal prices the
/// fewest.
pub(super) fn parts(moves: &Moves, (from, to): (usize, usize), period: usize) -> Vec<Part> {
    let mut least: Vec<Option<(Steps, usize, Option<Move>)>> = vec![None; to - from + 1];
    least[0] = Some((0, 0, None));
    for place in from + 1..=to {
        let reached = moves[place].iter().filter(|one| one.from >= from).filter_map(|one| {
            let (price, bags, _) = least[one.from - from]?;
            Some((price + one.price, bags + one.bags, Some(*one)))
        });
        least[place - from] = reached.min_by_key(|(price, bags, _)| (*price, *bags));
    }
    let mut parts: Vec<Part> = Vec::new();
    let mut place = to;
    while let Some((_, _, Some(one))) = least[place - from] {
        parts.push(Part { period, feed: one.feed, size: one.size, bags: one.bags });
        place = one.from;
    }
    together(parts)
}

/// Parts of the same period, feed and size as one.
pub(super) fn together(mut parts: Vec<Part>) -> Vec<Part> {
    parts.sort();
    let same =
        |one: &Part, other: &Part| (one.period, one.feed, one.size) == (other.period, other.feed, other.size);
    let sum = |some: &[Part]| Part { bags: some.iter().map(|part| part.bags).sum(), ..some[0] };
    parts.chunk_by(same).map(sum).collect()
}
