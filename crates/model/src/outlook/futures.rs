//! Futures of a batch that is on its way: growth, losses, feed and prices day by day.
//!
//! A future is a pure function of (seed, its number, what is known today), so any part of them can be worked out anywhere.

use std::ops::Range;

use super::filter::{Law, State};
use super::hazard::{self, Hazard};
use super::spread::Spread;
use crate::chance::{Draw, bell_points};
use crate::scenarios::{FEED_PRICE_SPREAD, SALE_PRICE_SPREAD};
use crate::water;

/// Feeds that are kept apart in the store room.
pub const FEEDS: usize = 4;

/// Birds off the standard weight eat off the planned feed by this power of it. Our judgement: the power of metabolic weight.
pub const FEED_WITH_WEIGHT: f64 = 0.75;
/// Share of feed that birds leave for each degree that it is too hot: 12 % less at 27.8 °C than at 20 °C (growth_tropical, T07).
pub const FEED_LEFT_A_DEGREE: f64 = 0.015;
/// Deviation of a day's feed about what growth and heat make of it, a share. Our judgement.
pub const FEED_OF_A_DAY: f64 = 0.05;
/// Days after which half of what is unusual about a flock's appetite is gone. Our judgement. What comes in its place is drawn with
/// the day's feed: of a day on which they eat more, a part stays for the next.
pub const APPETITE_HALVES_D: f64 = 10.0;
/// Correlation of a day's luck in growth and in feed. Our judgement.
pub const GROWTH_WITH_FEED: f64 = 0.5;
/// Correlation of feed price and sale price. Our judgement: where maize is dear, birds are.
pub const PRICES_TOGETHER: f64 = 0.3;
/// How far heat ahead strays from heat of late, °C. Our judgement.
pub const HEAT_STRAYS_C: f64 = 1.5;

/// What a day to come is held against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Day {
    /// The standard weight, g.
    pub standard_g: f64,
    /// What a bird of that weight is planned to eat, g.
    pub feed_g: f64,
    /// The share of the birds alive that the plan expects to lose.
    pub lost_share: f64,
    /// Which feed.
    pub feed: usize,
    /// Litres that are planned to be drunk for a kilogram eaten where it is not too hot; `None` where nobody planned it.
    pub water_l_a_kg: Option<f64>,
}

/// Prices today, in the currency's main unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// A kilogram of feed.
    pub feed_kg: f64,
    /// A kilogram alive.
    pub live_kg: f64,
}

/// What is known today.
#[derive(Clone, Debug, PartialEq)]
pub struct Now {
    /// How the flock stands.
    pub state: State,
    /// How it goes on.
    pub law: Law,
    /// Birds alive.
    pub alive: f64,
    /// What the batch tells of its losses.
    pub hazard: Hazard,
    /// ln of what birds ate of what growth and heat make of what is expected, and its deviation.
    pub appetite: (f64, f64),
    /// The deviation of the same far ahead, when what was seen of it has faded.
    pub appetite_ahead: f64,
    /// ln of what birds drank of what their feed and the heat make of the plan, and its deviation.
    pub thirst: (f64, f64),
    /// How far the birds differ.
    pub spread: Spread,
    /// By how much it was too hot of late, °C.
    pub too_hot_c: f64,
    /// Feed on hand, kg.
    pub store_kg: [f64; FEEDS],
    /// Today, where today's feed is still to be given.
    pub unfed: Option<Day>,
    /// The day of age of the first day to come.
    pub first_day: i32,
    /// The days to come.
    pub days: Vec<Day>,
    /// Prices, where they are known.
    pub prices: Option<Prices>,
}

impl Now {
    /// What is left of an appetite the next day, and the deviation of what comes in its place: such that it comes to
    /// `appetite_ahead` in the end.
    fn appetite_fades(&self) -> (f64, f64) {
        let kept = 0.5f64.powf(1.0 / APPETITE_HALVES_D);
        (kept, self.appetite_ahead * (1.0 - kept * kept).sqrt())
    }
}

/// A day of a future, at its end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Mean weight, g.
    pub weight_g: f64,
    /// Birds alive.
    pub birds: f64,
    /// Feed eaten on the day, kg.
    pub eaten_kg: f64,
    /// Feed left of what is on hand today, kg; below 0 for what must be bought.
    pub left_kg: [f64; FEEDS],
}

impl Point {
    /// All feed left, kg; below 0 for what must be bought.
    pub fn all_left_kg(&self) -> f64 {
        self.left_kg.iter().sum()
    }
}

/// A future.
#[derive(Clone, Debug, PartialEq)]
pub struct Future {
    /// Its days.
    pub days: Vec<Point>,
    /// Its prices.
    pub prices: Option<Prices>,
    /// Coefficient of variation of the birds' weights, a share.
    pub cv: f64,
    /// So many times the planned water is drunk for a kilogram eaten.
    pub thirst: f64,
}

impl Future {
    /// Water drunk on one of the days to come, litres; `None` where none is planned.
    pub fn water_l(&self, now: &Now, at: usize) -> Option<f64> {
        Some(now.days.get(at)?.water_l_a_kg? * self.days.get(at)?.eaten_kg * self.thirst)
    }
}

/// What draws are for. A stream's number is never reused.
#[derive(Clone, Copy)]
enum Stream {
    /// Level, slope, appetite, hazard.
    Start = 16,
    /// Feed price, sale price, heat.
    Prices = 17,
    /// Level, slope, feed, deaths.
    Day = 18,
    /// How far birds differ, thirst.
    Birds = 19,
}

/// The first `count` futures.
pub fn run(seed: u64, count: u32, now: &Now) -> Vec<Future> {
    part(seed, 0..count, now)
}

/// Some of the futures, by their numbers; parts worked out apart join to the whole.
pub fn part(seed: u64, numbers: Range<u32>, now: &Now) -> Vec<Future> {
    let mut all = Vec::with_capacity(numbers.len());
    let mut next = numbers.start;
    while numbers.end - next >= SIDE_BY_SIDE as u32 {
        all.extend(futures::<SIDE_BY_SIDE>(seed, next, now));
        next += SIDE_BY_SIDE as u32;
    }
    all.extend((next..numbers.end).flat_map(|number| futures::<1>(seed, number, now)));
    all
}

/// Futures are played side by side, since a processor works on several numbers at once where none waits for another. Each is
/// the same as if played alone.
const SIDE_BY_SIDE: usize = 8;

/// Futures on their way, side by side.
struct Walk<const N: usize> {
    level: [f64; N],
    slope: [f64; N],
    /// Deviation of the factor of losses from its middle.
    losses: [f64; N],
    /// ln of what birds eat of what is expected.
    appetite: [f64; N],
    /// The share eaten in the heat.
    cooler: [f64; N],
    birds: [f64; N],
    left_kg: [[f64; FEEDS]; N],
}

/// What a future's luck is of. Each group of draws is of one kind, and no draw is in two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Luck {
    /// How the flock stands and how it goes on growing.
    Growth,
    /// How many are lost.
    Losses,
    /// How much they eat, and how hot it gets.
    Appetite,
    /// What feed costs, and of the price of birds what goes with it.
    FeedPrice,
    /// What birds bring, apart from what goes with feed.
    SalePrice,
}

impl Luck {
    /// All of them.
    pub const ALL: [Luck; 5] = [Luck::Growth, Luck::Losses, Luck::Appetite, Luck::FeedPrice, Luck::SalePrice];

    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Luck::Growth => "growth",
            Luck::Losses => "losses",
            Luck::Appetite => "appetite",
            Luck::FeedPrice => "feed-price",
            Luck::SalePrice => "sale-price",
        }
    }

    /// The places of its draws among the four of a stream.
    fn places(self, stream: Stream) -> [bool; 4] {
        let at = |places: &[usize]| std::array::from_fn(|place| places.contains(&place));
        match (self, stream) {
            (Luck::Growth, Stream::Start | Stream::Day) => at(&[0, 1]),
            (Luck::Losses, Stream::Start | Stream::Day) => at(&[3]),
            (Luck::Appetite, Stream::Start | Stream::Day | Stream::Prices) => at(&[2]),
            (Luck::FeedPrice, Stream::Prices) => at(&[0]),
            (Luck::SalePrice, Stream::Prices) => at(&[1]),
            _ => at(&[]),
        }
    }
}

/// A future whose luck is that of one number, but of one kind that of another: what tells how much that kind matters.
pub fn with_luck_of(seed: u64, number: u32, other: u32, luck: Luck, now: &Now) -> Future {
    let [future] = played(now, |stream, day| {
        let (own, places) = (draws::<1>(seed, number, stream, day), luck.places(stream));
        if !places.contains(&true) {
            return own;
        }
        let theirs = draws::<1>(seed, other, stream, day);
        std::array::from_fn(|at| if places[at] { theirs[at] } else { own[at] })
    });
    future
}

/// What some futures, from one on, hang on.
fn draws<const N: usize>(seed: u64, first: u32, stream: Stream, day: u32) -> [[f64; N]; 4] {
    Draw { seed, scenario: first, stream: stream as u32, day, n: 0 }.units_side_by_side()
}

fn futures<const N: usize>(seed: u64, first: u32, now: &Now) -> [Future; N] {
    played(now, |stream, day| draws(seed, first, stream, day))
}

/// Futures out of their draws.
fn played<const N: usize>(now: &Now, draws: impl Fn(Stream, u32) -> [[f64; N]; 4]) -> [Future; N] {
    let [feed_price, sale_price, heat, _] = draws(Stream::Prices, 0).map(bell_points);
    let [spread, thirst, _, _] = draws(Stream::Birds, 0).map(bell_points);
    let heat = heat.map(|heat| (now.too_hot_c + HEAT_STRAYS_C * heat).max(0.0));
    let mut walk = Walk::start(now, draws(Stream::Start, 0).map(bell_points), heat);
    let noise = (now.law.level_noise.sqrt(), now.law.slope_noise.sqrt());
    let prices = |at: usize| now.prices.map(|prices| prices.strayed(feed_price[at], sale_price[at]));
    let mut futures: [Future; N] = std::array::from_fn(|at| Future {
        days: Vec::with_capacity(now.days.len()),
        prices: prices(at),
        cv: now.spread.at(spread[at]),
        thirst: (now.thirst.0 + now.thirst.1 * thirst[at]).exp() * thirst_in_heat(heat[at]),
    });
    let mut hazard = now.hazard;
    for (day, ahead) in now.days.iter().zip(1u32..) {
        hazard = hazard.forget();
        let points = walk.day(day, now, (noise, hazard.points()), draws(Stream::Day, ahead));
        for (future, point) in futures.iter_mut().zip(points) {
            future.days.push(point);
        }
    }
    futures
}

/// The share of feed that is still eaten while it is too hot by so many degrees.
pub fn eaten_in_heat(too_hot_c: f64) -> f64 {
    (1.0 - FEED_LEFT_A_DEGREE * too_hot_c).max(0.3)
}

/// So many times the water is drunk for a kilogram eaten while it is too hot by so many degrees: birds drink more, and eat less.
pub fn thirst_in_heat(too_hot_c: f64) -> f64 {
    water::heat_factor(21.0 + too_hot_c) / eaten_in_heat(too_hot_c)
}

impl<const N: usize> Walk<N> {
    /// - `too_hot`: by how much it is too hot in each future, °C
    fn start(now: &Now, [level, slope, appetite, hazard]: [[f64; N]; 4], too_hot: [f64; N]) -> Walk<N> {
        let state = &now.state;
        let level_off = state.level_variance.max(0.0).sqrt();
        let with_level = if level_off > 0.0 { state.covariance / level_off } else { 0.0 };
        let alone = (state.slope_variance - with_level * with_level).max(0.0).sqrt();
        let mut walk = Walk {
            level: level.map(|level| state.level + level_off * level),
            slope: std::array::from_fn(|at| state.slope + with_level * level[at] + alone * slope[at]),
            losses: hazard,
            appetite: appetite.map(|appetite| now.appetite.0 + now.appetite.1 * appetite),
            cooler: too_hot.map(eaten_in_heat),
            birds: [now.alive; N],
            left_kg: [now.store_kg; N],
        };
        if let Some(today) = &now.unfed {
            for at in 0..N {
                let more = (FEED_WITH_WEIGHT * walk.level[at]).exp();
                let eaten = walk.eaten_kg(at, today, more);
                walk.left_kg[at][today.feed] -= eaten;
            }
        }
        walk
    }

    /// What the birds of a future eat that want `more` times the planned feed.
    fn eaten_kg(&self, at: usize, day: &Day, more: f64) -> f64 {
        let appetite = self.appetite[at].exp() * self.cooler[at];
        self.birds[at] * day.feed_g * more * appetite * 0.001
    }

    fn day(
        &mut self,
        day: &Day,
        now: &Now,
        (noise, losses): ((f64, f64), hazard::Points),
        units: [[f64; N]; 4],
    ) -> [Point; N] {
        const ALONE: f64 = 0.866_025_403_784_438_6;
        let [growth, slope, feed] = [units[0], units[1], units[2]].map(bell_points);
        let (kept, fresh) = now.appetite_fades();
        let mut quarter = [0.0; N];
        for at in 0..N {
            self.level[at] += self.slope[at] + noise.0 * growth[at];
            self.slope[at] = now.law.damping * self.slope[at] + noise.1 * slope[at];
            self.appetite[at] = kept * self.appetite[at] + fresh * feed[at];
            // One power for both: the fourth part of the level, three times for feed and four times for weight.
            quarter[at] = (0.25 * self.level[at]).exp();
        }
        std::array::from_fn(|at| {
            let luck = 1.0 + FEED_OF_A_DAY * (GROWTH_WITH_FEED * growth[at] + ALONE * feed[at]);
            let heavier = quarter[at] * quarter[at] * quarter[at];
            let eaten_kg = self.eaten_kg(at, day, heavier * luck.max(0.0));
            self.left_kg[at][day.feed] -= eaten_kg;
            let alive = self.birds[at];
            self.birds[at] -= {
                let factor = losses.at(self.losses[at]);
                hazard::lost(alive * day.lost_share * factor, units[3][at], alive)
            };
            Point {
                weight_g: day.standard_g * heavier * quarter[at],
                birds: self.birds[at],
                eaten_kg,
                left_kg: self.left_kg[at],
            }
        })
    }
}

impl Prices {
    fn strayed(self, feed: f64, sale: f64) -> Prices {
        let alone = (1.0 - PRICES_TOGETHER * PRICES_TOGETHER).sqrt();
        let sale = PRICES_TOGETHER * feed + alone * sale;
        let times = |spread: f64, z: f64| (spread * z - spread * spread / 2.0).exp();
        Prices {
            feed_kg: self.feed_kg * times(FEED_PRICE_SPREAD.value, feed),
            live_kg: self.live_kg * times(SALE_PRICE_SPREAD.value, sale),
        }
    }
}

/// The day of age on which something first holds in a future; the day after the last where it does not within the days looked
/// at.
pub fn first_day(first: i32, future: &Future, holds: impl Fn(&Point) -> bool) -> f64 {
    let at = future.days.iter().position(holds).unwrap_or(future.days.len());
    f64::from(first) + at as f64
}

#[cfg(test)]
mod tests {
    use std::thread;

    use super::*;
    use crate::risk;

    fn now() -> Now {
        let day = |ahead: i32| Day {
            standard_g: 800.0 + 60.0 * f64::from(ahead),
            feed_g: 100.0 + 3.0 * f64::from(ahead),
            lost_share: 0.001,
            feed: usize::from(ahead > 7),
            water_l_a_kg: Some(1.8),
        };
        Now {
            state: State {
                level: -0.05,
                slope: -0.001,
                level_variance: 4e-4,
                covariance: 1e-6,
                slope_variance: 1e-6,
            },
            law: Law { damping: 0.95, level_noise: 1e-4, slope_noise: 1e-8 },
            alive: 1_000.0,
            hazard: Hazard::before().see(2.0, 2.0),
            appetite: (-0.02, 0.03),
            appetite_ahead: 0.08,
            thirst: (0.0, 0.1),
            spread: Spread::before(),
            too_hot_c: 2.0,
            store_kg: [900.0, 1_500.0, 0.0, 0.0],
            unfed: None,
            first_day: 22,
            days: (1..=25).map(day).collect(),
            prices: Some(Prices { feed_kg: 12.0, live_kg: 60.0 }),
        }
    }

    fn bytes(futures: &[Future]) -> Vec<u64> {
        let of = |future: &Future| {
            let points = future.days.iter().flat_map(|point| {
                [point.weight_g, point.birds, point.eaten_kg, point.all_left_kg()].map(f64::to_bits)
            });
            let prices = future.prices.iter().flat_map(|prices| [prices.feed_kg, prices.live_kg]);
            let birds = [future.cv, future.thirst].map(f64::to_bits);
            points.chain(prices.map(f64::to_bits)).chain(birds).collect::<Vec<u64>>()
        };
        futures.iter().flat_map(of).collect()
    }

    #[test]
    fn any_number_of_threads_gives_the_same_bytes() {
        let (now, whole) = (now(), bytes(&run(9, 700, &now())));
        for threads in [1u32, 2, 7] {
            let part_of = |at: u32| 700 * at / threads..700 * (at + 1) / threads;
            let parts: Vec<Vec<Future>> = thread::scope(|scope| {
                let now = &now;
                let started: Vec<_> =
                    (0..threads).map(|at| scope.spawn(move || part(9, part_of(at), now))).collect();
                started.into_iter().map(|thread| thread.join().unwrap()).collect()
            });
            assert_eq!(bytes(&parts.concat()), whole, "{threads} threads");
        }
        assert_ne!(bytes(&run(10, 700, &now)), whole);
    }

    /// The filter's own forecast is what the futures' weights must have.
    #[test]
    fn weights_are_those_of_the_filter() {
        let (now, futures) = (now(), run(1, 20_000, &now()));
        for ahead in [1usize, 10, 25] {
            let logs: Vec<f64> = futures
                .iter()
                .map(|future| (future.days[ahead - 1].weight_g / now.days[ahead - 1].standard_g).ln())
                .collect();
            let state = now.state.ahead(&now.law, ahead as u32);
            let mean = risk::mean(&logs).unwrap();
            let variance =
                risk::mean(&logs.iter().map(|log| (log - mean).powi(2)).collect::<Vec<_>>()).unwrap();
            assert!((mean - state.level).abs() < 4.0 * (state.level_variance / 20_000.0).sqrt());
            assert!((variance / state.level_variance - 1.0).abs() < 0.04, "{ahead}");
        }
    }

    /// A future with all kinds of luck of another, one after the other, is the other in each kind that was changed alone.
    #[test]
    fn one_kind_of_luck_moves_what_hangs_on_it_alone() {
        let now = now();
        let [own, other] = futures::<2>(1, 3, &now);
        let mixed = |luck| with_luck_of(1, 3, 4, luck, &now);
        assert_eq!(mixed(Luck::Growth).prices, own.prices);
        assert_eq!(mixed(Luck::Growth).days[9].weight_g, other.days[9].weight_g);
        assert_eq!(mixed(Luck::Losses).days[9].birds, other.days[9].birds);
        assert_eq!(mixed(Luck::Losses).days[9].weight_g, own.days[9].weight_g);
        assert_ne!(mixed(Luck::Appetite).days[9].eaten_kg, own.days[9].eaten_kg);
        assert_eq!(mixed(Luck::Appetite).days[9].birds, own.days[9].birds);
        let price = |future: &Future| future.prices.unwrap();
        assert_eq!(price(&mixed(Luck::FeedPrice)).feed_kg, price(&other).feed_kg);
        assert_eq!(price(&mixed(Luck::SalePrice)).feed_kg, price(&own).feed_kg);
        assert_ne!(price(&mixed(Luck::SalePrice)).live_kg, price(&own).live_kg);
        assert_eq!(with_luck_of(1, 3, 3, Luck::Growth, &now), own);
    }

    /// Nothing strays: 1 000 birds at a bell's middle eat the plan.
    #[test]
    fn without_doubt_the_plan_comes_true() {
        let still =
            State { level: 0.0, slope: 0.0, level_variance: 0.0, covariance: 0.0, slope_variance: 0.0 };
        let plan = Now {
            state: still,
            law: Law { damping: 1.0, level_noise: 0.0, slope_noise: 0.0 },
            appetite: (0.0, 0.0),
            appetite_ahead: 0.0,
            too_hot_c: -20.0,
            unfed: Some(Day {
                standard_g: 800.0,
                feed_g: 100.0,
                lost_share: 0.0,
                feed: 0,
                water_l_a_kg: None,
            }),
            days: now().days.into_iter().map(|day| Day { lost_share: 0.0, ..day }).collect(),
            ..now()
        };
        let futures = run(1, 2_000, &plan);
        assert!(futures.iter().all(|future| future.days[4].weight_g == 1_100.0));
        assert!(futures.iter().all(|future| future.days[24].birds == 1_000.0));
        let left: Vec<f64> = futures.iter().map(|future| future.days[4].left_kg[0]).collect();
        assert!((risk::mean(&left).unwrap() - (900.0 - 100.0 - 545.0)).abs() < 1.0);
        assert_eq!(first_day(22, &futures[0], |point| point.weight_g >= 1_100.0), 26.0);
        assert_eq!(first_day(22, &futures[0], |point| point.weight_g >= 9_000.0), 47.0);
    }

    /// Spread and thirst have the laws that are known of them, and water follows feed and heat: at 2 °C too hot, 6.5 % more for
    /// each degree on feed that is 3 % less.
    #[test]
    fn birds_differ_and_drink_by_what_is_known() {
        let still = Now { too_hot_c: -20.0, ..now() };
        let futures = run(1, 20_000, &still);
        let logs = |read: &dyn Fn(&Future) -> f64| {
            let logs: Vec<f64> = futures.iter().map(|future| read(future).ln()).collect();
            let mean = risk::mean(&logs).unwrap();
            let squares: Vec<f64> = logs.iter().map(|log| (log - mean).powi(2)).collect();
            (mean, risk::mean(&squares).unwrap().sqrt())
        };
        let (mean, deviation) = logs(&|future| future.cv);
        assert!((mean - 0.1f64.ln()).abs() < 0.008 && (deviation - 0.25).abs() < 0.006, "{mean} {deviation}");
        let (mean, deviation) = logs(&|future| future.thirst);
        assert!(mean.abs() < 0.003 && (deviation - 0.1).abs() < 0.003, "{mean} {deviation}");
        assert!((thirst_in_heat(2.0) - 1.13 / 0.97).abs() < 1e-12);
        let point = futures[0].days[3];
        assert_eq!(futures[0].water_l(&still, 3), Some(1.8 * point.eaten_kg * futures[0].thirst));
        let hot = Now { too_hot_c: 12.0, ..now() };
        let water = |now: &Now| {
            let litres: Vec<f64> =
                run(1, 2_000, now).iter().map(|future| future.water_l(now, 10).unwrap()).collect();
            risk::mean(&litres).unwrap()
        };
        let more = water(&hot) / water(&still);
        assert!((more / water::heat_factor(33.0) - 1.0).abs() < 0.02, "{more}");
        let dry = Now {
            days: now().days.into_iter().map(|day| Day { water_l_a_kg: None, ..day }).collect(),
            ..now()
        };
        assert_eq!(run(1, 1, &dry)[0].water_l(&dry, 3), None);
        assert_eq!(futures[0].water_l(&still, 25), None);
    }

    #[test]
    fn more_heat_and_less_appetite_leave_more_feed() {
        let left = |now: &Now| {
            let futures = run(3, 500, now);
            risk::mean(&futures.iter().map(|future| future.days[20].all_left_kg()).collect::<Vec<_>>())
                .unwrap()
        };
        let usual = left(&now());
        assert!(left(&Now { too_hot_c: 8.0, ..now() }) > usual);
        assert!(left(&Now { appetite: (-0.2, 0.03), ..now() }) > usual);
        assert!(left(&Now { state: State { level: 0.1, ..now().state }, ..now() }) < usual);
    }
}
