//! The least cost, state by state.
//!
//! A state is how many bags of each line have come. The states of an evening are a box: of each line from what is needed by
//! then to what is fresh enough. A delivery may raise any of the counts, and what it costs is the fee and a sum over the
//! lines, so the best state before it is found along each line in turn, count by count, each from the counts that one bag less
//! leads from: the work is the number of states times the lines and sizes, whatever the number of ways.

use super::lines::{self, Line, Moves};
use super::{Buying, BuyingFault, Part};

/// Costs are counted in whole steps, so that sums of the same amounts in another order are equal and ties are seen.
/// Below the money stand the deliveries, and below these the evenings that bags wait: of equal costs the fewest trips, then
/// the freshest feed.
pub(super) type Steps = i128;

pub(super) const TRIP: Steps = 1 << 32;
pub(super) const MONEY: Steps = 1 << 44;
const NEVER: Steps = Steps::MAX / 4;

/// States over all evenings that are looked at, at most: some twenty megabytes, some twenty milliseconds.
pub(super) const MOST_STATES: usize = 1_000_000;

/// The cheapest parts of some lines; money paid in a period counts `weight` times.
///
/// # Errors
/// [`BuyingFault::NoWay`].
pub(super) fn cheapest(
    buying: &Buying,
    lines: &[Line],
    weight: &[f64],
    with_room: bool,
) -> Result<Vec<Part>, BuyingFault> {
    let scale = Scale::of(buying, weight);
    let room = buying.room.filter(|_| with_room);
    let mut evenings: Vec<Evening> = Vec::with_capacity(buying.periods());
    let mut all_moves: Vec<Vec<Moves>> = Vec::with_capacity(buying.periods());
    let mut before = Evening::start(lines.len());
    for (period, &weight) in weight.iter().enumerate() {
        let shape = Shape::of(lines, period, buying.keeps).ok_or(BuyingFault::NoWay)?;
        let moves: Vec<Moves> = lines
            .iter()
            .map(|line| {
                line.moves(buying, period, |feed, size| {
                    scale.steps(buying.feeds[feed].sizes[size].price[period] * weight)
                })
            })
            .collect();
        let mut evening = before.without_delivery(&shape);
        if buying.fee[period].is_finite() {
            let fee = scale.steps(buying.fee[period] * weight) * MONEY + TRIP;
            evening.improve(&before.with_delivery(&shape, &moves, scale.steps(buying.holding), fee));
        }
        if let Some(room) = room {
            evening.keep_room(lines, buying, period, room);
        }
        before.cost = Vec::new();
        evenings.push(std::mem::replace(&mut before, evening));
        all_moves.push(moves);
    }
    evenings.push(before);
    trace(&evenings, lines, &all_moves)
}

/// States over all evenings.
pub(super) fn states(lines: &[Line], buying: &Buying) -> usize {
    let of = |period| Shape::of(lines, period, buying.keeps).map_or(0, |shape| shape.size());
    (0..buying.periods()).map(of).fold(0, usize::saturating_add)
}

/// How much money a step is.
pub(super) struct Scale {
    step: f64,
}

impl Scale {
    /// A step so small that all steps together still fit.
    pub(super) fn of(buying: &Buying, weight: &[f64]) -> Scale {
        let heaviest = weight.iter().copied().fold(1.0, f64::max);
        let dearest =
            |prices: &[f64]| prices.iter().copied().filter(|price| price.is_finite()).fold(0.0, f64::max);
        let of_feed = |feed: &super::Feed| {
            let bag = feed.sizes.iter().map(|size| dearest(&size.price)).fold(0.0, f64::max);
            feed.measures.len() as f64 * bag
        };
        let bags: f64 = buying.feeds.iter().map(of_feed).sum();
        let count: usize = buying.feeds.iter().map(|feed| feed.measures.len()).sum();
        let periods = buying.periods() as f64 + buying.keeps as f64;
        let fees = dearest(&buying.fee) * buying.periods() as f64;
        let most = heaviest * (bags + fees) + buying.holding.abs() * count as f64 * periods;
        Scale { step: most.max(1e-9) / 2f64.powi(60) }
    }

    pub(super) fn steps(&self, money: f64) -> Steps {
        (money / self.step).round() as Steps
    }

    /// How much money a step is.
    pub(super) fn step(&self) -> f64 {
        self.step
    }
}

/// The box of an evening's states: of each line, the first and the last place in its counts.
#[derive(Clone)]
pub(super) struct Shape {
    ranges: Vec<(usize, usize)>,
}

impl Shape {
    /// Before the first period nothing has come.
    pub(super) fn start(lines: usize) -> Shape {
        Shape { ranges: vec![(0, 0); lines] }
    }

    /// The first and the last place of a line.
    pub(super) fn range(&self, line: usize) -> (usize, usize) {
        self.ranges[line]
    }

    pub(super) fn set_range(&mut self, line: usize, range: (usize, usize)) {
        self.ranges[line] = range;
    }

    /// States of all lines behind one.
    pub(super) fn inner(&self, line: usize) -> usize {
        self.ranges[line + 1..].iter().map(|(low, high)| high - low + 1).product()
    }

    /// Whether its last state is that everything has come.
    pub(super) fn ends_with_all(&self, lines: &[Line]) -> bool {
        lines.iter().zip(&self.ranges).all(|(line, range)| range.1 + 1 == line.counts.len())
    }

    /// `None` where nothing that is needed is fresh.
    pub(super) fn of(lines: &[Line], period: usize, keeps: usize) -> Option<Shape> {
        let ranges: Vec<(usize, usize)> = lines.iter().map(|line| line.range(period, keeps)).collect();
        ranges.iter().all(|(low, high)| low <= high).then_some(Shape { ranges })
    }

    pub(super) fn size(&self) -> usize {
        self.ranges.iter().map(|(low, high)| high - low + 1).fold(1, usize::saturating_mul)
    }

    /// The places of a state, the last line fastest.
    pub(super) fn places(&self, mut at: usize) -> Vec<usize> {
        let mut places = vec![0; self.ranges.len()];
        for (place, (low, high)) in places.iter_mut().zip(&self.ranges).rev() {
            let length = high - low + 1;
            *place = low + at % length;
            at /= length;
        }
        places
    }

    /// Calls with every state and the sum over its lines of a number at its place.
    pub(super) fn each_sum(&self, numbers: &[Vec<Steps>], mut call: impl FnMut(usize, Steps)) {
        let mut sums = vec![0];
        for ((low, high), numbers) in self.ranges.iter().zip(numbers) {
            let further =
                |sum: &Steps| numbers[*low..=*high].iter().map(|number| *sum + *number).collect::<Vec<_>>();
            sums = sums.iter().flat_map(further).collect();
        }
        sums.into_iter().enumerate().for_each(|(at, sum)| call(at, sum));
    }
}

/// The states of an evening.
struct Evening {
    shape: Shape,
    cost: Vec<Steps>,
    /// The state of the evening before.
    from: Vec<u32>,
}

impl Evening {
    /// Before the first period nothing has come.
    fn start(lines: usize) -> Evening {
        Evening { shape: Shape::start(lines), cost: vec![0], from: vec![0] }
    }

    /// The states that go on as they are.
    fn without_delivery(&self, shape: &Shape) -> Evening {
        let sources = (0..self.cost.len() as u32).collect();
        let same = Evening { shape: self.shape.clone(), cost: self.cost.clone(), from: sources };
        (0..shape.ranges.len()).fold(same, |states, line| states.along(line, shape.ranges[line], None))
    }

    /// The states after a delivery.
    fn with_delivery(&self, shape: &Shape, moves: &[Moves], holding: Steps, fee: Steps) -> Evening {
        let sources = (0..self.cost.len() as u32).collect();
        let before = Evening { shape: self.shape.clone(), cost: self.cost.clone(), from: sources };
        let along = |states: Evening, line: usize| {
            states.along(line, shape.ranges[line], Some((&moves[line], holding)))
        };
        let mut after = (0..shape.ranges.len()).fold(before, along);
        after.cost.iter_mut().filter(|cost| **cost < NEVER).for_each(|cost| *cost += fee);
        after
    }

    /// Along one line, the states from `low` to `high`, each the least of those it may come from: the one of the same count and,
    /// where something comes, those from which a bag leads to it.
    fn along(&self, line: usize, (low, high): (usize, usize), comes: Option<(&Moves, Steps)>) -> Evening {
        let (first, last) = self.shape.ranges[line];
        let inner = self.shape.inner(line);
        let mut shape = self.shape.clone();
        shape.ranges[line] = (low, high);
        let mut after =
            Evening { cost: Vec::with_capacity(shape.size()), from: Vec::with_capacity(shape.size()), shape };
        let start = first.min(low);
        let mut rows: Vec<(Steps, u32)> = Vec::with_capacity((high + 1 - start) * inner);
        for block in (0..self.cost.len()).step_by((last - first + 1) * inner) {
            rows.clear();
            for place in start..=high {
                let row = rows.len();
                if (first..=last).contains(&place) {
                    let own = block + (place - first) * inner..block + (place - first + 1) * inner;
                    let own = self.cost[own.clone()].iter().zip(&self.from[own]);
                    rows.extend(own.map(|(cost, from)| (*cost, *from)));
                } else {
                    rows.resize(row + inner, (NEVER, 0));
                }
                let (earlier, least) = rows.split_at_mut(row);
                let moves = comes.map_or(&[][..], |(moves, _)| &moves[place]);
                for one in moves.iter().filter(|one| one.from >= start) {
                    let holding = comes.map_or(0, |(_, holding)| holding);
                    let price = (one.price + holding * one.evenings) * MONEY + one.evenings;
                    let from = &earlier[(one.from - start) * inner..][..inner];
                    lower(least, from, price);
                }
                if place >= low {
                    after.cost.extend(least.iter().map(|least| least.0));
                    after.from.extend(least.iter().map(|least| least.1));
                }
            }
        }
        after
    }

    /// Takes what is cheaper in other states of the same evening.
    fn improve(&mut self, other: &Evening) {
        for at in 0..self.cost.len() {
            if other.cost[at] < self.cost[at] {
                self.cost[at] = other.cost[at];
                self.from[at] = other.from[at];
            }
        }
    }

    /// Rules out what does not find room. What is in hand may stand there without it as long as nothing more comes.
    fn keep_room(&mut self, lines: &[Line], buying: &Buying, period: usize, room: usize) {
        let all = lines.iter().flat_map(|line| &line.measures);
        let eaten = all.filter(|(_, measure)| measure.finished <= period).count() as Steps;
        let counts: Vec<Vec<Steps>> =
            lines.iter().map(|line| line.counts.iter().map(|count| *count as Steps).collect()).collect();
        let free = room as Steps - buying.in_hand(period) as Steps;
        let cost = &mut self.cost;
        self.shape.each_sum(&counts, |at, come| {
            if come > eaten && come - eaten > free {
                cost[at] = NEVER;
            }
        });
    }
}

/// Takes what is less in a row of states, at a price more.
fn lower(least: &mut [(Steps, u32)], row: &[(Steps, u32)], price: Steps) {
    for (least, (cost, from)) in least.iter_mut().zip(row) {
        if *cost + price < least.0 {
            *least = (*cost + price, *from);
        }
    }
}

/// What came when, from the last evening back.
fn trace(evenings: &[Evening], lines: &[Line], moves: &[Vec<Moves>]) -> Result<Vec<Part>, BuyingFault> {
    let last = evenings.last().ok_or(BuyingFault::NoWay)?;
    let everything = last.shape.ends_with_all(lines);
    let mut at = last.shape.size() - 1;
    if !everything || last.cost[at] >= NEVER {
        return Err(BuyingFault::NoWay);
    }
    let mut parts = Vec::new();
    for period in (0..evenings.len() - 1).rev() {
        let (evening, before) = (&evenings[period + 1], &evenings[period]);
        let after = evening.shape.places(at);
        at = evening.from[at] as usize;
        for ((moves, from), to) in moves[period].iter().zip(before.shape.places(at)).zip(after) {
            parts.extend(lines::parts(moves, (from, to), period));
        }
    }
    parts.sort();
    Ok(parts)
}
