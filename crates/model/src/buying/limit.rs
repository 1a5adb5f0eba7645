//! Money that nobody lends beyond a limit.
//!
//! What is left of a credit hangs on all that was paid before, and the cheapest way to some bags need not be the one that has paid
//! least so far: interest, or a price that rises, may make a way cheaper that pays more early. So of each state all ways are
//! kept that no other way undercuts in both, what was paid and what it costs (a shortest path with a resource, [irnich-2005],
//! from memory). What is paid never gets less, and interest and the limit only look at what is paid, so whatever a way that is
//! left out could still do, the way that undercuts it does too, at no more cost: what is found is the least.

use super::lines::{self, Line, Move, Moves};
use super::search::{MONEY, Scale, Shape, Steps, TRIP};
use super::{Buying, BuyingFault, Part};

/// States over all evenings that are looked at, at most: ways are kept beside each other in each.
pub(super) const MOST_STATES: usize = 125_000;

/// Ways that are kept over all states of an evening, at most.
const MOST_WAYS: usize = 100_000;

/// What is paid is a sum of numbers that were rounded, so that what just reaches the limit may seem to pass it: by less than this, of
/// the 2⁶⁰ steps that all money is.
const ROUNDING: Steps = 1 << 20;

/// What is sought.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Aim {
    /// The least cost within the limit.
    Cost,
    /// The least that must be owed on the worst evening, whatever it costs.
    Credit,
}

/// A way to a state.
#[derive(Clone, Copy)]
struct Way {
    paid: Steps,
    /// What is sought, so far; below a cost stand trips and waiting, so that ties are seen.
    so_far: Steps,
    /// The way of the evening before that it comes from.
    from: u32,
}

/// Ways of which none undercuts another: what was paid rises, what is sought falls.
type Front = Vec<Way>;

/// The best parts of some lines within the limit, and what was sought: for [`Aim::Credit`] in money. `None` where there are too
/// many ways to keep.
///
/// # Errors
/// [`BuyingFault::NoWay`].
pub(super) fn best(
    buying: &Buying,
    lines: &[Line],
    aim: Aim,
) -> Result<Option<(Vec<Part>, f64)>, BuyingFault> {
    let once = vec![1.0; buying.periods()];
    let scale = Scale::of(buying, &once);
    let mut shape = Shape::start(lines.len());
    let mut fronts = vec![vec![Way { paid: 0, so_far: 0, from: 0 }]];
    let mut evenings: Vec<Vec<(u32, u32)>> = Vec::with_capacity(buying.periods());
    let mut shapes = Vec::with_capacity(buying.periods());
    let mut all_moves: Vec<Vec<Moves>> = Vec::with_capacity(buying.periods());
    for period in 0..buying.periods() {
        let next = Shape::of(lines, period, buying.keeps).ok_or(BuyingFault::NoWay)?;
        let price = |feed: usize, size: usize| scale.steps(buying.feeds[feed].sizes[size].price[period]);
        let moves = lines.iter().map(|line| line.moves(buying, period, price)).collect();
        let day = Day { buying, lines, scale: &scale, moves, period, aim };
        let mut after = day.along_all(&shape, fronts.clone(), &next, false);
        if buying.fee[period].is_finite() {
            let with = day.along_all(&shape, fronts, &next, true);
            after = after.into_iter().zip(with).map(|(one, other)| merged(&one, &other)).collect();
        }
        day.evening(&next, &mut after);
        let mut kept = Vec::new();
        for (state, front) in after.iter_mut().enumerate() {
            for way in front {
                kept.push((state as u32, way.from));
                way.from = kept.len() as u32 - 1;
            }
        }
        if kept.is_empty() {
            return Err(BuyingFault::NoWay);
        }
        if kept.len() > MOST_WAYS {
            return Ok(None);
        }
        evenings.push(kept);
        all_moves.push(day.moves);
        (shape, fronts) = (next.clone(), after);
        shapes.push(next);
    }
    let everything = shape.ends_with_all(lines);
    let last =
        fronts.last().filter(|_| everything).and_then(|front| front.last()).ok_or(BuyingFault::NoWay)?;
    let sought = last.so_far as f64 * scale.step();
    Ok(Some((trace(&evenings, &shapes, &all_moves, last.from), sought)))
}

/// A period on which something may come.
struct Day<'a> {
    buying: &'a Buying,
    lines: &'a [Line],
    scale: &'a Scale,
    moves: Vec<Moves>,
    period: usize,
    aim: Aim,
}

impl Day<'_> {
    /// The ways to the states of the next shape, with a delivery or without.
    fn along_all(&self, shape: &Shape, fronts: Vec<Front>, next: &Shape, comes: bool) -> Vec<Front> {
        let fee = self.scale.steps(self.buying.fee[self.period]);
        let mut fronts = fronts;
        if comes {
            fronts.iter_mut().flatten().for_each(|way| self.pay(way, fee, TRIP));
        }
        let mut shape = shape.clone();
        for line in 0..self.lines.len() {
            let after = self.along(&shape, fronts, line, next.range(line), comes);
            shape.set_range(line, next.range(line));
            fronts = after;
        }
        fronts
    }

    fn pay(&self, way: &mut Way, money: Steps, apart: Steps) {
        way.paid += money;
        if self.aim == Aim::Cost {
            way.so_far += money * MONEY + apart;
        }
    }

    /// Along one line: each state takes the ways of the same count and, with a delivery, of every count from which a bag leads to
    /// it.
    fn along(
        &self,
        shape: &Shape,
        fronts: Vec<Front>,
        line: usize,
        (low, high): (usize, usize),
        comes: bool,
    ) -> Vec<Front> {
        let (first, last) = shape.range(line);
        let inner = shape.inner(line);
        let start = first.min(low);
        let mut after = Vec::new();
        for block in fronts.chunks((last - first + 1) * inner) {
            let mut rows: Vec<Front> = Vec::with_capacity((high + 1 - start) * inner);
            for place in start..=high {
                let own = (first..=last).contains(&place).then(|| &block[(place - first) * inner..][..inner]);
                let moves = self.moves[line][place].iter().filter(|one| comes && one.from >= start);
                let moves: Vec<&Move> = moves.collect();
                for at in 0..inner {
                    let own = own.map_or_else(Vec::new, |own| own[at].clone());
                    let bring = |front: Front, one: &&Move| {
                        merged(&self.brought(&rows[(one.from - start) * inner + at], one), &front)
                    };
                    let front = moves.iter().fold(own, bring);
                    rows.push(front);
                }
            }
            after.extend(rows.drain((low - start) * inner..));
        }
        after
    }

    /// The ways of a front when bags come too.
    fn brought(&self, front: &Front, one: &Move) -> Front {
        let held = self.scale.steps(self.buying.holding) * one.evenings;
        let mut front = front.clone();
        front.iter_mut().for_each(|way| self.pay(way, one.price, held * MONEY + one.evenings));
        front
    }

    /// What the evening owes, and what it does not allow.
    fn evening(&self, shape: &Shape, fronts: &mut [Front]) {
        let Some(credit) = &self.buying.credit else { return };
        let money = self.scale.steps(credit.money[self.period]);
        let owed_anyway = (-money).max(0);
        let most = credit.limit.filter(|_| self.aim == Aim::Cost);
        let most = most.map(|limit| (money + self.scale.steps(limit)).max(0) + ROUNDING);
        let interest = |paid: Steps| {
            let owed = (paid - money).max(0) - owed_anyway;
            (credit.rate * owed as f64).round() as Steps
        };
        let full = self.buying.room.map(|room| self.full(shape, room));
        for (at, front) in fronts.iter_mut().enumerate() {
            if full.as_ref().is_some_and(|full| full[at]) {
                front.clear();
            }
            front.retain(|way| most.is_none_or(|most| way.paid <= most));
            for way in front.iter_mut() {
                match self.aim {
                    Aim::Cost => way.so_far += interest(way.paid) * MONEY,
                    Aim::Credit if way.paid > 0 => way.so_far = way.so_far.max(way.paid - money),
                    Aim::Credit => {}
                }
            }
            undercut(front);
        }
    }

    /// Which states do not find room.
    fn full(&self, shape: &Shape, room: usize) -> Vec<bool> {
        let all = self.lines.iter().flat_map(|line| &line.measures);
        let eaten = all.filter(|(_, measure)| measure.finished <= self.period).count() as Steps;
        let free = room as Steps - self.buying.in_hand(self.period) as Steps;
        let counts: Vec<Vec<Steps>> =
            self.lines.iter().map(|line| line.counts.iter().map(|count| *count as Steps).collect()).collect();
        let mut full = vec![false; shape.size()];
        shape.each_sum(&counts, |at, come| full[at] = come > eaten && come - eaten > free);
        full
    }
}

/// The ways of two fronts that none undercuts.
fn merged(one: &Front, other: &Front) -> Front {
    if one.is_empty() {
        return other.clone();
    }
    if other.is_empty() {
        return one.clone();
    }
    let mut all: Front = Vec::with_capacity(one.len() + other.len());
    let (mut left, mut right) = (one.iter().peekable(), other.iter().peekable());
    while let (Some(first), Some(second)) = (left.peek(), right.peek()) {
        let is_left = (first.paid, first.so_far) <= (second.paid, second.so_far);
        all.extend(if is_left { left.next() } else { right.next() });
    }
    all.extend(left.chain(right));
    undercut(&mut all);
    all
}

/// Leaves out each way that one that paid no more undercuts.
fn undercut(front: &mut Front) {
    let mut least = None;
    front.retain(|way| {
        let is_less = least.is_none_or(|least| way.so_far < least);
        if is_less {
            least = Some(way.so_far);
        }
        is_less
    });
}

/// What came when, from the last evening's way back.
fn trace(evenings: &[Vec<(u32, u32)>], shapes: &[Shape], moves: &[Vec<Moves>], last: u32) -> Vec<Part> {
    let mut way = last as usize;
    let mut parts = Vec::new();
    for period in (0..evenings.len()).rev() {
        let (state, from) = evenings[period][way];
        let after = shapes[period].places(state as usize);
        let before = match period.checked_sub(1) {
            Some(before) => shapes[before].places(evenings[before][from as usize].0 as usize),
            None => vec![0; moves[period].len()],
        };
        for ((moves, from), to) in moves[period].iter().zip(before).zip(after) {
            parts.extend(lines::parts(moves, (from, to), period));
        }
        way = from as usize;
    }
    parts.sort();
    parts
}
