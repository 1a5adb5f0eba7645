//! The least cost, state by state.
//!
//! A state is how many bags of each line have come. The states of an evening are a box: of each line from what is needed by
//! then to what is fresh enough. A delivery may raise any of the counts, and what it costs is the fee and a sum over the
//! lines, so the best state before it is found by one running minimum along each line in turn: the work is the number of
//! states times the lines, whatever the number of ways.

use super::lines::Line;
use super::{Bag, Buying, BuyingFault, Part};

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
    let mut before = Evening::start(lines.len());
    for (period, &weight) in weight.iter().enumerate() {
        let shape = Shape::of(lines, period, buying.keeps).ok_or(BuyingFault::NoWay)?;
        let prices = scale.running(buying, lines, period, weight);
        let mut evening = before.without_delivery(&shape);
        if buying.fee[period].is_finite() {
            let fee = scale.steps(buying.fee[period] * weight) * MONEY + TRIP;
            evening.improve(&before.with_delivery(&shape, &prices, fee));
        }
        if let Some(room) = room {
            evening.keep_room(lines, buying, period, room);
        }
        before.cost = Vec::new();
        evenings.push(std::mem::replace(&mut before, evening));
    }
    evenings.push(before);
    trace(&evenings, lines)
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
        let bags: f64 = buying.feeds.iter().map(|feed| feed.bags.len() as f64 * dearest(&feed.price)).sum();
        let count: usize = buying.feeds.iter().map(|feed| feed.bags.len()).sum();
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

    /// Of each line, what its first bags cost together if they come in a period, at each of its counts.
    fn running(&self, buying: &Buying, lines: &[Line], period: usize, weight: f64) -> Vec<Vec<Steps>> {
        let price: Vec<Steps> =
            buying.feeds.iter().map(|feed| self.steps(feed.price[period] * weight)).collect();
        let holding = self.steps(buying.holding);
        let of = |line: &Line| {
            let mut sum = 0;
            let mut running = vec![0];
            running.extend(line.bags.iter().map(|(feed, bag)| {
                let evenings = bag.finished as Steps - period as Steps;
                sum += (price[*feed] + holding * evenings) * MONEY + evenings;
                sum
            }));
            line.counts.iter().map(|count| running[*count]).collect()
        };
        lines.iter().map(of).collect()
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

/// Which states a state may come from, along one line.
#[derive(Clone, Copy, PartialEq)]
enum From {
    /// The same count.
    Same,
    /// The same count or less.
    Less,
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
        same.along_all(shape, From::Same)
    }

    /// The states after a delivery.
    fn with_delivery(&self, shape: &Shape, prices: &[Vec<Steps>], fee: Steps) -> Evening {
        let sources = (0..self.cost.len() as u32).collect();
        let mut after = Evening { shape: self.shape.clone(), cost: self.cost.clone(), from: sources };
        after.add(prices, |sum| -sum);
        let mut after = after.along_all(shape, From::Less);
        after.add(prices, |sum| sum + fee);
        after
    }

    fn add(&mut self, prices: &[Vec<Steps>], amount: impl Fn(Steps) -> Steps) {
        let cost = &mut self.cost;
        self.shape.each_sum(prices, |at, sum| {
            if cost[at] < NEVER {
                cost[at] += amount(sum);
            }
        });
    }

    fn along_all(self, shape: &Shape, from: From) -> Evening {
        (0..shape.ranges.len()).fold(self, |states, line| states.along(line, shape.ranges[line], from))
    }

    /// Along one line, the states from `low` to `high`, each the least of those it may come from.
    fn along(&self, line: usize, (low, high): (usize, usize), from: From) -> Evening {
        let (first, last) = self.shape.ranges[line];
        let inner = self.shape.inner(line);
        let mut shape = self.shape.clone();
        shape.ranges[line] = (low, high);
        let mut after =
            Evening { cost: Vec::with_capacity(shape.size()), from: Vec::with_capacity(shape.size()), shape };
        for block in (0..self.cost.len()).step_by((last - first + 1) * inner) {
            let mut least: Vec<(Steps, u32)> = vec![(NEVER, 0); inner];
            for place in first.min(low)..=high {
                if from == From::Same {
                    least.fill((NEVER, 0));
                }
                if (first..=last).contains(&place) {
                    self.lower(&mut least, block + (place - first) * inner);
                }
                if place >= low {
                    after.cost.extend(least.iter().map(|least| least.0));
                    after.from.extend(least.iter().map(|least| least.1));
                }
            }
        }
        after
    }

    /// Takes what is less in a row of states.
    fn lower(&self, least: &mut [(Steps, u32)], row: usize) {
        let row = self.cost[row..].iter().zip(&self.from[row..]);
        for (least, (cost, from)) in least.iter_mut().zip(row) {
            if *cost < least.0 {
                *least = (*cost, *from);
            }
        }
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
        let bags = lines.iter().flat_map(|line| &line.bags);
        let eaten = bags.filter(|(_, bag)| bag.finished <= period).count() as Steps;
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

/// What came when, from the last evening back.
fn trace(evenings: &[Evening], lines: &[Line]) -> Result<Vec<Part>, BuyingFault> {
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
        for ((line, from), to) in lines.iter().zip(before.shape.places(at)).zip(after) {
            parts.extend(of_feeds(&line.bags[line.counts[from]..line.counts[to]], period));
        }
    }
    parts.sort();
    Ok(parts)
}

/// Bags of one line that come together, by feed.
pub(super) fn of_feeds(bags: &[(usize, Bag)], period: usize) -> Vec<Part> {
    let mut feeds: Vec<usize> = bags.iter().map(|(feed, _)| *feed).collect();
    feeds.sort_unstable();
    let part = |same: &[usize]| Part { period, feed: same[0], bags: same.len() };
    feeds.chunk_by(|one, other| one == other).map(part).collect()
}
