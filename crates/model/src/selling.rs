//! When to sell: what a batch has earned if its birds go on a day, over its futures, and on which day that is most for the batch
//! and for the house.
//!
//! The house earns most where another day brings what a day of the house is worth: Faustmann's condition, for stock that is
//! followed by the next stock ([perrin-1972], from memory). On whole days that is the day of the greatest profit a house-day.

use crate::budget::per;
use crate::outlook::futures::{Future, Now, Point, Prices};
use crate::risk;
use crate::scenarios::SoldBy;

/// Days whose profit a house-day is within this share of the best are as good as the best: the top is flat (common practice).
pub const AS_GOOD: f64 = 0.02;

const DAYS_OF_A_YEAR: f64 = 365.0;

/// What is known of the money of a batch on its way, in the currency's main unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Terms {
    /// What the price is for.
    pub sold_by: SoldBy,
    /// The price of a kilogram alive or of a bird, today.
    pub price: f64,
    /// What the batch has cost or will cost whatever the day of sale is, the feed on hand not counted.
    pub spent: f64,
    /// What it has brought.
    pub got: f64,
    /// A kilogram of the feed on hand, at what it cost. What is left is worth as much.
    pub stock_price: f64,
    /// What another day costs beside feed: work, power.
    pub day_cost: f64,
    /// Money in hand today; below 0 what is owed.
    pub cash: f64,
    /// Interest on what is owed, a share a year.
    pub interest: f64,
    /// Days the house stands empty between batches.
    pub empty_days: f64,
}

/// What one more day did.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Step {
    /// The gain of the birds alive on the day, at the price. Nothing where birds are sold by the bird.
    pub gain: f64,
    /// What those that died on the day were worth the day before.
    pub deaths: f64,
    /// The feed eaten on the day.
    pub feed: f64,
    /// Work and power.
    pub day_cost: f64,
    /// Interest of a day on what is owed.
    pub interest: f64,
}

impl Step {
    /// What the day brought in all; below 0 where it cost.
    pub fn worth(&self) -> f64 {
        self.gain - self.deaths - self.feed - self.day_cost - self.interest
    }

    fn add(&mut self, other: &Step, share: f64) {
        self.gain += share * other.gain;
        self.deaths += share * other.deaths;
        self.feed += share * other.feed;
        self.day_cost += share * other.day_cost;
        self.interest += share * other.interest;
    }
}

/// A day of a future, if all birds go at its end.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Sold {
    profit: f64,
    /// Money in hand before the birds are paid.
    cash: f64,
    /// What one more day did; `None` for the first day, whose day before is not known.
    step: Option<Step>,
}

/// What birds are worth.
fn worth(point: &Point, price: f64, sold_by: SoldBy) -> f64 {
    match sold_by {
        SoldBy::Kilogram => point.birds * point.weight_g / 1000.0 * price,
        SoldBy::Head => point.birds * price,
    }
}

/// The cost of feed that is taken from the stock first and bought where that is not enough.
fn feed_cost(eaten_before: f64, eaten: f64, stock_kg: f64, stock_price: f64, price: f64) -> f64 {
    let from_stock = (stock_kg - eaten_before).clamp(0.0, eaten);
    from_stock * stock_price + (eaten - from_stock) * price
}

/// A future being followed.
struct Way<'a> {
    terms: &'a Terms,
    now: &'a Now,
    prices: Prices,
    sale_price: f64,
    eaten: f64,
    spent: f64,
    cash: f64,
    before: Option<&'a Point>,
}

impl<'a> Way<'a> {
    fn start(future: &Future, now: &'a Now, terms: &'a Terms) -> Option<Way<'a>> {
        let (prices, today) = (future.prices?, now.prices?);
        let strayed = per(prices.live_kg, today.live_kg)?;
        let mut way = Way {
            terms,
            now,
            prices,
            sale_price: terms.price * strayed,
            eaten: 0.0,
            spent: terms.spent,
            cash: terms.cash,
            before: None,
        };
        // What is still to be fed today is eaten before the first day, out of what is on hand.
        let eaten_today =
            future.days.first().map(|point| way.stock_kg() - point.all_left_kg() - point.eaten_kg);
        way.feed(eaten_today?.max(0.0), 1.0);
        Some(way)
    }

    fn stock_kg(&self) -> f64 {
        self.now.store_kg.iter().sum()
    }

    /// Feeds a share of the birds: what it cost.
    fn feed(&mut self, eaten: f64, share: f64) -> f64 {
        let eaten = eaten * share;
        let stock = self.stock_kg();
        let cost = feed_cost(self.eaten, eaten, stock, self.terms.stock_price, self.prices.feed_kg);
        let bought = (self.eaten + eaten - stock).clamp(0.0, eaten) * self.prices.feed_kg;
        self.eaten += eaten;
        self.spent += cost;
        self.cash -= bought;
        cost
    }

    /// Goes on by a day with a share of the birds.
    fn day(&mut self, point: &'a Point, share: f64) -> Option<Step> {
        let feed = self.feed(point.eaten_kg, share);
        let day_cost = if share > 0.0 { self.terms.day_cost } else { 0.0 };
        let interest = (-self.cash).max(0.0) * self.terms.interest / DAYS_OF_A_YEAR;
        self.spent += day_cost + interest;
        self.cash -= day_cost + interest;
        let before = self.before.replace(point);
        before.map(|before| {
            let price = self.sale_price;
            let lost = Point { birds: before.birds - point.birds, ..*before };
            let gained = Point { weight_g: point.weight_g - before.weight_g, ..*point };
            let gain = match self.terms.sold_by {
                SoldBy::Kilogram => worth(&gained, price, SoldBy::Kilogram),
                SoldBy::Head => 0.0,
            };
            Step {
                gain: share * gain,
                deaths: share * worth(&lost, price, self.terms.sold_by),
                feed,
                day_cost,
                interest,
            }
        })
    }

    fn income(&self, point: &Point) -> f64 {
        worth(point, self.sale_price, self.terms.sold_by)
    }
}

/// Every day of a future; `None` without prices.
fn sold(future: &Future, now: &Now, terms: &Terms) -> Option<Vec<Sold>> {
    let mut way = Way::start(future, now, terms)?;
    let mut days = Vec::with_capacity(future.days.len());
    for point in &future.days {
        let step = way.day(point, 1.0);
        let profit = terms.got + way.income(point) - way.spent;
        days.push(Sold { profit, cash: way.cash, step });
    }
    Some(days)
}

/// What a future earns if all birds go at the end of one of its days, counted from 0; `None` without prices or such a day.
pub fn profit_on(future: &Future, at: usize, now: &Now, terms: &Terms) -> Option<f64> {
    profit_of_parts(future, &[(at, 1.0)], now, terms)
}

/// What a future earns if birds go in parts.
///
/// - `parts`: days counted from 0, ascending, each with the share of the flock that goes on it; what is left after the last stays
///   unsold and is worth nothing. Those that stay go on as the whole flock would have.
///
/// `None` without prices or without such a day.
pub fn profit_of_parts(future: &Future, parts: &[(usize, f64)], now: &Now, terms: &Terms) -> Option<f64> {
    let mut way = Way::start(future, now, terms)?;
    let (mut left, mut got) = (1.0, terms.got);
    let last = parts.last()?.0;
    for (at, point) in future.days.get(..=last)?.iter().enumerate() {
        way.day(point, left);
        for (_, share) in parts.iter().filter(|part| part.0 == at) {
            let income = share * way.income(point);
            got += income;
            way.cash += income;
            left -= share;
        }
    }
    Some(got - way.spent)
}

/// What all futures say of one day of sale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SaleDay {
    /// Day of age at whose end the birds go.
    pub day: i32,
    /// The mean profit.
    pub mean: f64,
    /// How far another seed would move it.
    pub standard_error: f64,
    /// Nine futures in ten earn between this and `high`.
    pub low: f64,
    /// One future in ten earns less.
    pub tenth: f64,
    /// The upper end.
    pub high: f64,
    /// The mean birds alive.
    pub birds: f64,
    /// Their mean weight, g.
    pub weight_g: f64,
    /// What the day did, on average; `None` for the first.
    pub step: Option<Step>,
}

impl SaleDay {
    /// The profit a day of the house, from the chicks to the next chicks.
    pub fn a_house_day(&self, empty_days: f64) -> Option<f64> {
        per(self.mean, f64::from(self.day) + empty_days)
    }
}

/// All days of all futures.
#[derive(Clone, Debug, PartialEq)]
pub struct Sales {
    /// What is said of each day.
    pub days: Vec<SaleDay>,
    /// The profits of each day, in the order of the futures.
    profits: Vec<Vec<f64>>,
    /// Money in hand on each day before birds are paid, likewise.
    cash: Vec<Vec<f64>>,
    first: i32,
}

impl Sales {
    /// Every day of every future as a day of sale; `None` without futures, days or prices.
    pub fn of(futures: &[Future], now: &Now, terms: &Terms) -> Option<Sales> {
        let count = futures.len();
        let days = now.days.len();
        let column = || vec![Vec::with_capacity(count); days];
        let (mut profits, mut cash) = (column(), column());
        let mut steps = vec![Step::default(); days];
        let (mut birds, mut grams) = (vec![0.0; days], vec![0.0; days]);
        let share = per(1.0, count as f64)?;
        for future in futures {
            for (at, (sold, point)) in sold(future, now, terms)?.iter().zip(&future.days).enumerate() {
                profits.get_mut(at)?.push(sold.profit);
                cash[at].push(sold.cash);
                birds[at] += share * point.birds;
                grams[at] += share * point.weight_g;
                if let Some(step) = &sold.step {
                    steps[at].add(step, share);
                }
            }
        }
        let said = (0..days).map(|at| {
            let summary = Ends::of(&profits[at])?;
            Some(SaleDay {
                day: now.first_day + at as i32,
                mean: summary.mean,
                standard_error: summary.standard_error,
                low: summary.low,
                tenth: summary.tenth,
                high: summary.high,
                birds: birds[at],
                weight_g: grams[at],
                step: (at > 0).then(|| steps[at]),
            })
        });
        let said: Vec<SaleDay> = said.collect::<Option<_>>()?;
        (!said.is_empty()).then_some(Sales { days: said, profits, cash, first: now.first_day })
    }

    /// What is said of a day of age.
    pub fn on(&self, day: i32) -> Option<&SaleDay> {
        self.days.get(self.place(day)?)
    }

    /// The profits of a day of age, in the order of the futures.
    pub fn profits(&self, day: i32) -> Option<&[f64]> {
        self.profits.get(self.place(day)?).map(Vec::as_slice)
    }

    /// Money in hand on a day of age before the birds are paid, in the order of the futures: the lowest of all days before, as
    /// nothing comes in.
    pub fn cash(&self, day: i32) -> Option<&[f64]> {
        self.cash.get(self.place(day)?).map(Vec::as_slice)
    }

    fn place(&self, day: i32) -> Option<usize> {
        usize::try_from(day - self.first).ok()
    }

    /// The day of the greatest mean of those that are allowed, the earliest of equal days; `None` where none is.
    pub fn best(&self, allowed: impl Fn(i32) -> bool) -> Option<&SaleDay> {
        self.greatest(&allowed, |day| Some(day.mean))
    }

    /// The day of the greatest profit a house-day, likewise.
    pub fn best_for_house(&self, empty_days: f64, allowed: impl Fn(i32) -> bool) -> Option<&SaleDay> {
        self.greatest(&allowed, |day| day.a_house_day(empty_days))
    }

    /// The allowed days whose profit a house-day is within [`AS_GOOD`] of the best.
    pub fn as_good_for_house(&self, empty_days: f64, allowed: impl Fn(i32) -> bool) -> Vec<i32> {
        let a_day = |day: &SaleDay| day.a_house_day(empty_days);
        let Some(best) = self.best_for_house(empty_days, &allowed).and_then(a_day) else { return Vec::new() };
        let is_as_good = |day: &&SaleDay| {
            allowed(day.day) && a_day(day).is_some_and(|rate| best - rate <= AS_GOOD * best.abs())
        };
        self.days.iter().filter(is_as_good).map(|day| day.day).collect()
    }

    /// On which allowed day each future earns most, in the order of the futures; empty where no day is allowed.
    pub fn own_best_days(&self, allowed: impl Fn(i32) -> bool) -> Vec<f64> {
        let mut best: Vec<(f64, f64)> = Vec::new();
        for (day, profits) in self.days.iter().zip(&self.profits).filter(|(day, _)| allowed(day.day)) {
            if best.is_empty() {
                best = profits.iter().map(|profit| (f64::from(day.day), *profit)).collect();
                continue;
            }
            for (best, profit) in best.iter_mut().zip(profits) {
                if *profit > best.1 {
                    *best = (f64::from(day.day), *profit);
                }
            }
        }
        best.into_iter().map(|(day, _)| day).collect()
    }

    fn greatest(
        &self,
        allowed: &impl Fn(i32) -> bool,
        of: impl Fn(&SaleDay) -> Option<f64>,
    ) -> Option<&SaleDay> {
        let days = self.days.iter().filter(|day| allowed(day.day));
        let valued = days.filter_map(|day| Some((day, of(day)?)));
        valued.reduce(|best, day| if day.1 > best.1 { day } else { best }).map(|(day, _)| day)
    }
}

/// What is told of a column; only its ends are put in order.
struct Ends {
    mean: f64,
    standard_error: f64,
    low: f64,
    tenth: f64,
    high: f64,
}

impl Ends {
    fn of(column: &[f64]) -> Option<Ends> {
        let count = column.len() as f64;
        let mean = risk::mean(column)?;
        let squares: f64 = column.iter().map(|value| (value - mean).powi(2)).sum();
        let mut values = column.to_vec();
        Some(Ends {
            mean,
            standard_error: (squares / (count - 1.0).max(1.0) / count).sqrt(),
            high: quantile(&mut values, 0.95)?,
            tenth: quantile(&mut values, 0.1)?,
            low: quantile(&mut values, 0.05)?,
        })
    }
}

/// [`risk::quantile`] of values in any order, without putting all of them in order.
fn quantile(values: &mut [f64], p: f64) -> Option<f64> {
    let place = p * values.len().checked_sub(1)? as f64;
    let (_, below, rest) = values.select_nth_unstable_by(place.floor() as usize, f64::total_cmp);
    let above = rest.iter().copied().fold(f64::INFINITY, f64::min);
    let step = if place.fract() > 0.0 { above - *below } else { 0.0 };
    Some(*below + step * place.fract())
}

/// Birds to sell at the end of a day so that those that stay fit until another, by what the futures make of them on average.
///
/// - `birds`: alive on the first of the days
/// - `kept`: of so many alive on it, so many live on the other day, a share
/// - `weight_kg`: their mean weight on the other day
/// - `limit_kg_m2`, `floor_m2`: what the floor may carry
///
/// Whole birds; 0 where all fit. `None` where the weight or the share is 0.
pub fn to_thin(birds: f64, kept: f64, weight_kg: f64, limit_kg_m2: f64, floor_m2: f64) -> Option<f64> {
    let may_stay = per(limit_kg_m2 * floor_m2, weight_kg * kept)?;
    Some(quantity::physical::round_up((birds - may_stay).max(0.0)).min(birds))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::outlook::filter::{Law, State};
    use crate::outlook::futures::{self, Day};
    use crate::outlook::hazard::Hazard;
    use crate::outlook::spread::Spread;

    const TERMS: Terms = Terms {
        sold_by: SoldBy::Kilogram,
        price: 17.0,
        spent: 9_000.0,
        got: 0.0,
        stock_price: 5.2,
        day_cost: 40.0,
        cash: -9_000.0,
        interest: 0.2,
        empty_days: 14.0,
    };

    fn now() -> Now {
        let day = |ahead: i32| Day {
            standard_g: 900.0 + 62.0 * f64::from(ahead) - 0.6 * f64::from(ahead * ahead),
            feed_g: 110.0 + 3.0 * f64::from(ahead),
            lost_share: 0.001,
            feed: 0,
            water_l_a_kg: None,
        };
        Now {
            state: State {
                level: -0.02,
                slope: 0.0,
                level_variance: 4e-4,
                covariance: 0.0,
                slope_variance: 1e-7,
            },
            law: Law { damping: 0.95, level_noise: 1e-5, slope_noise: 1e-8 },
            alive: 1_000.0,
            hazard: Hazard::before(),
            appetite: (0.0, 0.03),
            appetite_ahead: 0.03,
            thirst: (0.0, 0.1),
            spread: Spread::before(),
            too_hot_c: 0.0,
            store_kg: [900.0, 0.0, 0.0, 0.0],
            unfed: None,
            first_day: 22,
            days: (1..=40).map(day).collect(),
            prices: Some(Prices { feed_kg: 5.2, live_kg: 17.0 }),
        }
    }

    fn futures() -> Vec<Future> {
        futures::run(3, 400, &now())
    }

    fn close(one: f64, other: f64) {
        assert!((one - other).abs() <= 1e-9 * one.abs().max(1.0), "{one} {other}");
    }

    /// Income less every cost, put together another way for one future.
    #[test]
    fn a_day_earns_what_is_left_of_its_income() {
        let (now, all) = (now(), futures());
        for future in all.iter().take(5) {
            let prices = future.prices.unwrap();
            let at = 19;
            let eaten: f64 = future.days[..=at].iter().map(|point| point.eaten_kg).sum();
            let bought = (eaten - 900.0).max(0.0);
            let feed = (eaten - bought) * 5.2 + bought * prices.feed_kg;
            let terms = Terms { interest: 0.0, ..TERMS };
            let income = future.days[at].birds * future.days[at].weight_g / 1000.0 * prices.live_kg;
            let expected = income - 9_000.0 - feed - 20.0 * 40.0;
            close(profit_on(future, at, &now, &terms).unwrap(), expected);
        }
    }

    #[test]
    fn each_step_is_the_difference_of_two_days() {
        let (now, all) = (now(), futures());
        for terms in [TERMS, Terms { sold_by: SoldBy::Head, price: 40.0, ..TERMS }] {
            let sales = Sales::of(&all, &now, &terms).unwrap();
            for pair in sales.days.windows(2) {
                close(pair[1].step.unwrap().worth(), pair[1].mean - pair[0].mean);
            }
            assert_eq!(sales.days[0].step, None);
        }
    }

    #[test]
    fn all_days_at_once_are_each_day_alone() {
        let (now, all) = (now(), futures());
        let sales = Sales::of(&all, &now, &TERMS).unwrap();
        for day in [22, 40, 61] {
            let alone: Vec<f64> = all
                .iter()
                .map(|future| profit_on(future, usize::try_from(day - 22).unwrap(), &now, &TERMS).unwrap())
                .collect();
            for (one, other) in alone.iter().zip(sales.profits(day).unwrap()) {
                close(*one, *other);
            }
            let sorted = risk::sorted(&alone);
            let said = sales.on(day).unwrap();
            close(said.low, risk::quantile(&sorted, 0.05).unwrap());
            close(said.tenth, risk::quantile(&sorted, 0.1).unwrap());
            close(said.high, risk::quantile(&sorted, 0.95).unwrap());
            close(said.mean, risk::mean(&alone).unwrap());
        }
        assert_eq!((sales.on(21), sales.on(62)), (None, None));
    }

    #[test]
    fn two_parts_on_one_day_are_one() {
        let now = now();
        for future in futures().iter().take(20) {
            let once = profit_on(future, 15, &now, &TERMS).unwrap();
            close(profit_of_parts(future, &[(15, 0.3), (15, 0.7)], &now, &TERMS).unwrap(), once);
            let thinned = profit_of_parts(future, &[(5, 0.3), (15, 0.7)], &now, &TERMS).unwrap();
            assert!((thinned - once).abs() > 1.0);
        }
    }

    /// A tonne more on hand, bought at what it is worth and left at the end.
    #[test]
    fn a_tonne_sold_back_at_cost_changes_nothing() {
        let terms = Terms { interest: 0.0, ..TERMS };
        let plenty = Now { store_kg: [9_000.0, 0.0, 0.0, 0.0], ..now() };
        let less = Now { store_kg: [8_000.0, 0.0, 0.0, 0.0], ..now() };
        let cheaper = Terms { cash: terms.cash + 5_200.0, ..terms };
        let of = |now: &Now, terms: &Terms| Sales::of(&futures::run(3, 100, now), now, terms).unwrap();
        let (one, other) = (of(&plenty, &terms), of(&less, &cheaper));
        for (one, other) in one.days.iter().zip(&other.days) {
            close(one.mean, other.mean);
        }
    }

    #[test]
    fn all_money_times_three_is_all_profit_times_three() {
        let terms = Terms {
            price: 51.0,
            spent: 27_000.0,
            stock_price: 15.6,
            day_cost: 120.0,
            cash: -27_000.0,
            ..TERMS
        };
        let dear = Now { prices: Some(Prices { feed_kg: 15.6, live_kg: 51.0 }), ..now() };
        let once = Sales::of(&futures(), &now(), &TERMS).unwrap();
        let thrice = Sales::of(&futures::run(3, 400, &dear), &dear, &terms).unwrap();
        for (one, other) in once.days.iter().zip(&thrice.days) {
            close(3.0 * one.mean, other.mean);
            close(3.0 * one.low, other.low);
        }
        let all = |_: i32| true;
        assert_eq!(once.best(all).unwrap().day, thrice.best(all).unwrap().day);
        assert_eq!(
            once.best_for_house(14.0, all).unwrap().day,
            thrice.best_for_house(14.0, all).unwrap().day
        );
    }

    /// The closed condition: where profit a house-day is greatest, another day brings just that, so on whole days the day up to
    /// the best brings more than the house-day's worth and the day after it less (Faustmann; Perrin 1972).
    #[test]
    fn the_house_sells_where_a_day_brings_what_the_house_is_worth() {
        let sales = Sales::of(&futures(), &now(), &TERMS).unwrap();
        let all = |_: i32| true;
        let (batch, house) = (sales.best(all).unwrap(), sales.best_for_house(14.0, all).unwrap());
        assert!(house.mean > 0.0 && house.day < batch.day, "{} {}", house.day, batch.day);
        let rate = house.a_house_day(14.0).unwrap();
        assert!(house.step.unwrap().worth() >= rate);
        assert!(sales.on(house.day + 1).unwrap().step.unwrap().worth() <= rate);
        // And the batch alone sells where another day brings nothing.
        assert!(batch.step.unwrap().worth() >= 0.0);
        assert!(sales.on(batch.day + 1).unwrap().step.unwrap().worth() <= 0.0);
        let good = sales.as_good_for_house(14.0, all);
        assert!(good.contains(&house.day) && !good.contains(&22));
    }

    /// A batch that loses money holds the house longer: the loss is spread over more days.
    #[test]
    fn a_losing_house_waits_longer_than_the_batch() {
        let terms = Terms { spent: 60_000.0, ..TERMS };
        let sales = Sales::of(&futures(), &now(), &terms).unwrap();
        let all = |_: i32| true;
        assert!(sales.best(all).unwrap().mean < 0.0);
        assert!(sales.best_for_house(14.0, all).unwrap().day > sales.best(all).unwrap().day);
    }

    #[test]
    fn only_allowed_days_are_chosen() {
        let sales = Sales::of(&futures(), &now(), &TERMS).unwrap();
        let early = |day: i32| day <= 30;
        assert_eq!(sales.best(early).unwrap().day, 30);
        assert_eq!(sales.best(|_| false), None);
        assert!(sales.own_best_days(early).iter().all(|day| *day <= 30.0));
        assert!(
            sales.own_best_days(|_| false).is_empty() && sales.as_good_for_house(14.0, |_| false).is_empty()
        );
        assert_eq!(Sales::of(&[], &now(), &TERMS), None);
        let unpriced = Now { prices: None, ..now() };
        assert_eq!(Sales::of(&futures::run(1, 50, &unpriced), &unpriced, &TERMS), None);
    }

    /// 100 m² at 20 kg/m² carry 1 000 birds of 2 kg.
    #[test]
    fn thinning_leaves_what_fits() {
        assert_eq!(to_thin(1_200.0, 1.0, 2.0, 20.0, 100.0), Some(200.0));
        assert_eq!(to_thin(1_200.0, 0.98, 2.0, 20.0, 100.0), Some(180.0), "of 1 020 a thousand live");
        assert_eq!(to_thin(900.0, 1.0, 2.0, 20.0, 100.0), Some(0.0));
        assert_eq!(to_thin(900.0, 0.0, 2.0, 20.0, 100.0), None);
    }
}
