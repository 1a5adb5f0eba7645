//! Futures of one batch: what losses, growth, feed conversion and prices may do together, and what each future earns.
//!
//! A future is a pure function of (seed, its number, the batch), so any part of them can be worked out anywhere, and two
//! batches run with one seed meet the same luck.

use std::ops::Range;

use quantity::Status;
use thiserror::Error;

use crate::chance::Draw;

/// The number of standard deviations from the middle of a normal law to the end of its 90 % range.
pub const SIGMAS_IN_90: f64 = 1.644_853_626_951_472_7;

/// The usual value, taken while the grower's own batches tell no better, and how far it can be trusted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// What it is worth.
    pub value: f64,
    /// How far it can be trusted.
    pub status: Status,
}

/// Losses between batches: standard deviation of ln(losses / (1 - losses)).
///
/// Our judgement: at a mean of 4 % nine batches in ten lose 1.0 to 9.6 %. Eight published batches of one farm in Accra
/// (Kondo et al. 2015, livability 70.6 to 99.2 %) give 1.08, and 0.67 without the one that failed (derived).
pub const LOSSES_SPREAD: Usual = Usual { value: 0.7, status: Status::OurJudgement };

/// Coefficient of variation of mean weight between batches: the open-house curve's 13 % either way (1.77 to 2.30 kg at 42 days, published), read as
/// the range of nine batches in ten, which is our judgement.
pub const WEIGHT_SPREAD: Usual = Usual { value: 0.13 / SIGMAS_IN_90, status: Status::OurJudgement };

/// Coefficient of variation of feed conversion between batches. Our judgement: nine batches in ten within 10 % of the mean.
pub const FCR_SPREAD: Usual = Usual { value: 0.06, status: Status::OurJudgement };

/// Coefficient of variation of the feed price from the day of the plan to the days of buying. Our judgement.
pub const FEED_PRICE_SPREAD: Usual = Usual { value: 0.05, status: Status::OurJudgement };

/// Coefficient of variation of the sale price from the day of the plan to the days of sale. Our judgement.
pub const SALE_PRICE_SPREAD: Usual = Usual { value: 0.08, status: Status::OurJudgement };

/// Correlation of the logarithms of weight and feed conversion: birds that grow badly also convert badly. Our judgement.
pub const WEIGHT_WITH_FCR: Usual = Usual { value: -0.5, status: Status::OurJudgement };

/// Feed that a bird lost ate, as a share of what a bird sold eats. Our judgement: more birds die young than evenly over
/// the batch, and feed eaten to half-way is a quarter of the whole.
pub const LOST_BIRD_FEED: Usual = Usual { value: 0.3, status: Status::OurJudgement };

/// What the sale price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoldBy {
    /// A kilogram live.
    Kilogram,
    /// A bird, whatever it weighs.
    Head,
}

/// A batch as planned, and how far each thing may stray. Money is in one currency's main unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batch {
    /// Chicks placed and paid.
    pub chicks: f64,
    /// Price of a chick.
    pub chick_cost: f64,
    /// All costs that no future changes: litter, heat, medicine, labour, transport, wear.
    pub fixed_cost: f64,
    /// Mean feed price a kg.
    pub feed_price: f64,
    /// Its coefficient of variation, a share.
    pub feed_price_cv: f64,
    /// Mean sale price, for what `sold_by` says.
    pub sale_price: f64,
    /// Its coefficient of variation, a share.
    pub sale_price_cv: f64,
    /// What the sale price is for.
    pub sold_by: SoldBy,
    /// Mean share of the chicks placed that are not sold.
    pub losses: f64,
    /// Standard deviation of ln(losses / (1 - losses)); for small losses about their coefficient of variation.
    pub losses_spread: f64,
    /// Mean live weight at sale, kg.
    pub weight_kg: f64,
    /// Its coefficient of variation between batches (not between birds), a share.
    pub weight_cv: f64,
    /// Mean feed eaten for each kg sold, at the mean losses.
    pub fcr: f64,
    /// Its coefficient of variation, a share.
    pub fcr_cv: f64,
    /// Correlation of the logarithms of weight and feed conversion, -1 to 1.
    pub weight_fcr_correlation: f64,
    /// Feed that a bird lost ate, as a share of what a bird sold eats.
    pub lost_bird_feed: f64,
}

/// One future of a batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scenario {
    /// Share of the chicks placed that are not sold, before whole birds are counted.
    pub losses: f64,
    /// Whole birds sold.
    pub birds_sold: f64,
    /// Mean live weight at sale, kg.
    pub weight_kg: f64,
    /// Live weight sold, kg.
    pub kg_sold: f64,
    /// Feed eaten, that of birds lost included, kg.
    pub feed_kg: f64,
    /// Feed price a kg.
    pub feed_price: f64,
    /// Sale price, a kg or a bird.
    pub sale_price: f64,
    /// All costs.
    pub cost: f64,
    /// Income from birds.
    pub income: f64,
    /// Income less cost.
    pub profit: f64,
}

impl Scenario {
    /// Feed eaten for each kg sold; `None` where nothing is sold.
    pub fn fcr(&self) -> Option<f64> {
        crate::budget::per(self.feed_kg, self.kg_sold)
    }
}

/// An input of a batch that no batch can have.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[error("{input} is {value}, outside {low} to {high}")]
pub struct OutOfRange {
    /// The field of [`Batch`].
    pub input: &'static str,
    /// What it was.
    pub value: f64,
    /// The least it can be.
    pub low: f64,
    /// The most it can be.
    pub high: f64,
}

/// The first `count` futures of a batch.
///
/// # Errors
/// [`OutOfRange`] for an input that no batch can have.
pub fn run(seed: u64, count: u32, batch: &Batch) -> Result<Vec<Scenario>, OutOfRange> {
    part(seed, 0..count, batch)
}

/// Some of the futures of a batch, by their numbers; parts worked out apart join to the whole.
///
/// # Errors
/// [`OutOfRange`] for an input that no batch can have.
pub fn part(seed: u64, numbers: Range<u32>, batch: &Batch) -> Result<Vec<Scenario>, OutOfRange> {
    let laws = Laws::of(batch)?;
    Ok(numbers.map(|number| laws.scenario(seed, number)).collect())
}

/// What the draws of a batch are for. A stream's number is never reused, so that a new one leaves the others' luck alone.
#[derive(Clone, Copy)]
enum Stream {
    Losses = 0,
    Weight = 1,
    Fcr = 2,
    FeedPrice = 3,
    SalePrice = 4,
}

/// The laws of a batch, made ready once for all its futures.
struct Laws<'a> {
    batch: &'a Batch,
    losses: LogitNormal,
    weight: LogNormal,
    fcr: LogNormal,
    feed_price: LogNormal,
    sale_price: LogNormal,
    /// The part of the feed conversion's luck that is not the weight's.
    fcr_alone: f64,
    /// Feed of a bird sold for each kg of it, as a share of the feed conversion: the rest was eaten by birds lost.
    own_feed: f64,
}

impl<'a> Laws<'a> {
    fn of(batch: &'a Batch) -> Result<Self, OutOfRange> {
        check(batch)?;
        let sold = 1.0 - batch.losses;
        Ok(Self {
            batch,
            losses: LogitNormal::of(batch.losses, batch.losses_spread),
            weight: LogNormal::of(batch.weight_kg, batch.weight_cv),
            fcr: LogNormal::of(batch.fcr, batch.fcr_cv),
            feed_price: LogNormal::of(batch.feed_price, batch.feed_price_cv),
            sale_price: LogNormal::of(batch.sale_price, batch.sale_price_cv),
            fcr_alone: (1.0 - batch.weight_fcr_correlation.powi(2)).sqrt(),
            own_feed: sold / (sold + batch.lost_bird_feed * batch.losses),
        })
    }

    fn scenario(&self, seed: u64, number: u32) -> Scenario {
        let normal =
            |stream: Stream| Draw { seed, scenario: number, stream: stream as u32, day: 0, n: 0 }.normal();
        let batch = self.batch;
        let growth = normal(Stream::Weight);
        let conversion = batch.weight_fcr_correlation * growth + self.fcr_alone * normal(Stream::Fcr);
        let losses = self.losses.at(normal(Stream::Losses));
        let (weight_kg, fcr) = (self.weight.at(growth), self.fcr.at(conversion));
        let feed_price = self.feed_price.at(normal(Stream::FeedPrice));
        let sale_price = self.sale_price.at(normal(Stream::SalePrice));

        let birds_sold = (batch.chicks * (1.0 - losses)).round();
        let fed = birds_sold + batch.lost_bird_feed * (batch.chicks - birds_sold);
        let (kg_sold, feed_kg) = (birds_sold * weight_kg, fcr * self.own_feed * weight_kg * fed);
        let cost = batch.chicks * batch.chick_cost + batch.fixed_cost + feed_kg * feed_price;
        let income = sale_price
            * match batch.sold_by {
                SoldBy::Kilogram => kg_sold,
                SoldBy::Head => birds_sold,
            };
        let profit = income - cost;
        Scenario {
            losses,
            birds_sold,
            weight_kg,
            kg_sold,
            feed_kg,
            feed_price,
            sale_price,
            cost,
            income,
            profit,
        }
    }
}

/// Refuses what no batch can have; not a number is outside every range.
fn check(batch: &Batch) -> Result<(), OutOfRange> {
    /// Beyond any price, and far from where binary fractions lose a coin.
    const ANY: f64 = 1e12;
    let ranges = [
        ("chicks", batch.chicks, 0.0, 1e9),
        ("chick_cost", batch.chick_cost, 0.0, ANY),
        ("fixed_cost", batch.fixed_cost, 0.0, ANY),
        ("feed_price", batch.feed_price, 0.0, ANY),
        ("feed_price_cv", batch.feed_price_cv, 0.0, 2.0),
        ("sale_price", batch.sale_price, 0.0, ANY),
        ("sale_price_cv", batch.sale_price_cv, 0.0, 2.0),
        ("losses", batch.losses, 0.0, 1.0),
        ("losses_spread", batch.losses_spread, 0.0, 3.0),
        ("weight_kg", batch.weight_kg, 0.0, 20.0),
        ("weight_cv", batch.weight_cv, 0.0, 2.0),
        ("fcr", batch.fcr, 0.0, 20.0),
        ("fcr_cv", batch.fcr_cv, 0.0, 2.0),
        ("weight_fcr_correlation", batch.weight_fcr_correlation, -1.0, 1.0),
        ("lost_bird_feed", batch.lost_bird_feed, 0.0, 1.0),
    ];
    match ranges.into_iter().find(|(_, value, low, high)| !(low..=high).contains(&value)) {
        Some((input, value, low, high)) => Err(OutOfRange { input, value, low, high }),
        None => Ok(()),
    }
}

/// A lognormal law by its mean and coefficient of variation: sigma² = ln(1 + cv²), median = mean × exp(-sigma² / 2).
struct LogNormal {
    median: f64,
    sigma: f64,
}

impl LogNormal {
    fn of(mean: f64, cv: f64) -> Self {
        let variance = cv.mul_add(cv, 1.0).ln();
        Self { median: mean * (-variance / 2.0).exp(), sigma: variance.sqrt() }
    }

    fn at(&self, normal: f64) -> f64 {
        self.median * (self.sigma * normal).exp()
    }
}

/// A share whose ln(share / (1 - share)) is normal, by the mean of the share itself: never below 0 or above 1.
struct LogitNormal {
    middle: f64,
    sigma: f64,
}

impl LogitNormal {
    /// The middle has no closed form: it is found by halving, from bounds that the mean of a lognormal law gives.
    fn of(mean: f64, sigma: f64) -> Self {
        let logit = (mean / (1.0 - mean)).ln();
        if !logit.is_finite() || sigma == 0.0 {
            return Self { middle: logit, sigma: 0.0 };
        }
        let reach = 1.0 + sigma * sigma / 2.0;
        let (mut low, mut high) = (logit - reach, logit + reach);
        for _ in 0..50 {
            let middle = (low + high) / 2.0;
            let bound = if (Self { middle, sigma }).mean() < mean { &mut low } else { &mut high };
            *bound = middle;
        }
        Self { middle: (low + high) / 2.0, sigma }
    }

    /// The mean by the trapezoid rule over eight standard deviations either way, exact to 1e-12.
    fn mean(&self) -> f64 {
        let steps = (-32..=32).map(|step| f64::from(step) / 4.0);
        let weighted = steps.map(|z| {
            let weight = (-z * z / 2.0).exp();
            (weight * self.at(z), weight)
        });
        let (sum, weights) = weighted.fold((0.0, 0.0), |(sum, weights), (x, w)| (sum + x, weights + w));
        sum / weights
    }

    fn at(&self, normal: f64) -> f64 {
        1.0 / (1.0 + (-(self.middle + self.sigma * normal)).exp())
    }
}

#[cfg(test)]
mod tests {
    use std::thread;

    use super::*;
    use crate::risk;

    /// The worked flock of 500 chicks, with our usual spreads.
    const BATCH: Batch = Batch {
        chicks: 500.0,
        chick_cost: 7.0,
        fixed_cost: 2950.0,
        feed_price: 5.2,
        feed_price_cv: FEED_PRICE_SPREAD.value,
        sale_price: 17.0,
        sale_price_cv: SALE_PRICE_SPREAD.value,
        sold_by: SoldBy::Kilogram,
        losses: 0.044,
        losses_spread: LOSSES_SPREAD.value,
        weight_kg: 2.05,
        weight_cv: WEIGHT_SPREAD.value,
        fcr: 1.825,
        fcr_cv: FCR_SPREAD.value,
        weight_fcr_correlation: WEIGHT_WITH_FCR.value,
        lost_bird_feed: LOST_BIRD_FEED.value,
    };

    /// A batch that nothing can move.
    const CERTAIN: Batch = Batch {
        feed_price_cv: 0.0,
        sale_price_cv: 0.0,
        losses_spread: 0.0,
        weight_cv: 0.0,
        fcr_cv: 0.0,
        ..BATCH
    };

    const COUNT: u32 = 10_000;

    type Read = fn(&Scenario) -> f64;

    fn bytes(scenarios: &[Scenario]) -> Vec<u64> {
        let numbers = |s: &Scenario| {
            [s.losses, s.birds_sold, s.weight_kg, s.kg_sold, s.feed_kg, s.feed_price, s.sale_price, s.profit]
        };
        scenarios.iter().flat_map(numbers).map(f64::to_bits).collect()
    }

    fn column(batch: &Batch, read: Read) -> Vec<f64> {
        run(11, COUNT, batch).unwrap().iter().map(read).collect()
    }

    fn mean_and_cv(values: &[f64]) -> (f64, f64) {
        let mean = risk::mean(values).unwrap();
        let squares: f64 = values.iter().map(|value| (value - mean).powi(2)).sum();
        (mean, (squares / (values.len() - 1) as f64).sqrt() / mean)
    }

    fn near(got: f64, want: f64, tolerance: f64) {
        assert!((got - want).abs() <= tolerance, "{got}, wanted {want} within {tolerance}");
    }

    #[test]
    fn one_seed_one_future() {
        let once = bytes(&run(1, COUNT, &BATCH).unwrap());
        assert_eq!(once, bytes(&run(1, COUNT, &BATCH).unwrap()));
        let other = bytes(&run(2, COUNT, &BATCH).unwrap());
        assert!(once.iter().zip(&other).filter(|(a, b)| a == b).count() < once.len() / 20);
        assert_eq!(once[..800], bytes(&run(1, 100, &BATCH).unwrap()), "more futures do not change the first");
    }

    #[test]
    fn any_number_of_threads_gives_the_same_bytes() {
        let alone = bytes(&run(1, COUNT, &BATCH).unwrap());
        for threads in [1, 2, 7] {
            let share = COUNT.div_ceil(threads);
            let parts: Vec<Scenario> = thread::scope(|scope| {
                let range = |i: u32| i * share..((i + 1) * share).min(COUNT);
                let work = |i| scope.spawn(move || part(1, range(i), &BATCH).unwrap());
                let running: Vec<_> = (0..threads).map(work).collect();
                running.into_iter().flat_map(|thread| thread.join().unwrap()).collect()
            });
            assert_eq!(alone, bytes(&parts), "{threads} threads");
        }
    }

    /// Section by section: 500 chicks, 22 lost, 979.9 kg, 15 810 - 9360 + 1788.3 × 5.2.
    #[test]
    fn without_spread_every_future_is_the_plan() {
        let futures = run(3, 5, &CERTAIN).unwrap();
        let plan = futures[0];
        near(plan.birds_sold, 478.0, 0.0);
        near(plan.kg_sold, 979.9, 1e-9);
        near(plan.feed_kg, 979.9 * 1.825, 1e-9);
        near(plan.fcr().unwrap(), 1.825, 1e-12);
        near(plan.cost, 3500.0 + 2950.0 + 979.9 * 1.825 * 5.2, 1e-9);
        near(plan.profit, 979.9 * 17.0 - plan.cost, 1e-9);
        assert!(futures.iter().all(|future| *future == plan));
    }

    /// Means and coefficients of variation of lognormal laws, wide enough for a median in place of the mean to be seen: the
    /// mean within four standard errors, the cv within six.
    #[test]
    fn each_law_has_its_mean_and_spread() {
        let wide = Batch {
            losses: 0.0,
            weight_cv: 0.3,
            fcr_cv: 0.25,
            feed_price_cv: 0.2,
            sale_price_cv: 0.35,
            ..BATCH
        };
        let checks: [(Read, f64, f64); 4] = [
            (|s| s.weight_kg, wide.weight_kg, wide.weight_cv),
            (|s| s.feed_kg / s.kg_sold, wide.fcr, wide.fcr_cv),
            (|s| s.feed_price, wide.feed_price, wide.feed_price_cv),
            (|s| s.sale_price, wide.sale_price, wide.sale_price_cv),
        ];
        let root = f64::from(COUNT).sqrt();
        for (read, mean, cv) in checks {
            let (got_mean, got_cv) = mean_and_cv(&column(&wide, read));
            near(got_mean, mean, 4.0 * cv * mean / root);
            near(got_cv, cv, 4.0 * cv / root);
        }
    }

    /// The mean is the one asked for, and the logit is normal around the middle found.
    #[test]
    fn losses_keep_their_mean_and_their_law() {
        for (mean, spread) in [(0.04, 0.7), (0.3, 1.1), (0.5, 3.0), (0.9, 0.4)] {
            near(LogitNormal::of(mean, spread).mean(), mean, 1e-10);
            let losses = column(&Batch { losses: mean, losses_spread: spread, ..BATCH }, |s| s.losses);
            near(risk::mean(&losses).unwrap(), mean, 4.0 * mean_and_cv(&losses).1 * mean / 100.0);
            let logits: Vec<f64> = losses.iter().map(|share| (share / (1.0 - share)).ln()).collect();
            let (middle, cv) = mean_and_cv(&logits);
            near((cv * middle).abs(), spread, 4.0 * spread / 2f64.sqrt() / 100.0);
        }
        assert!(column(&Batch { losses: 0.0, ..BATCH }, |s| s.losses).iter().all(|share| *share == 0.0));
        assert!(column(&Batch { losses: 1.0, ..BATCH }, |s| s.birds_sold).iter().all(|birds| *birds == 0.0));
    }

    /// What the page says of the usual spread: 1.0 to 9.6 % in nine batches of ten.
    #[test]
    fn the_usual_losses_reach_as_far_as_told() {
        let law = LogitNormal::of(0.04, LOSSES_SPREAD.value);
        near(law.at(-SIGMAS_IN_90), 0.010, 0.0005);
        near(law.at(SIGMAS_IN_90), 0.096, 0.0005);
    }

    /// The correlation of the logarithms, within four standard errors; without losses, so that the feed conversion is its own.
    #[test]
    fn bad_growth_goes_with_bad_conversion_and_with_nothing_else() {
        let lossless = Batch { losses: 0.0, ..BATCH };
        let logs = |batch: &Batch, read: Read| column(batch, read).iter().map(|x| x.ln()).collect::<Vec<_>>();
        let laws = [
            logs(&lossless, |s| s.weight_kg),
            logs(&lossless, |s| s.feed_kg / s.kg_sold),
            logs(&lossless, |s| s.feed_price),
            logs(&lossless, |s| s.sale_price),
            logs(&BATCH, |s| s.losses),
        ];
        for (i, one) in laws.iter().enumerate() {
            for (j, other) in laws.iter().enumerate().skip(i + 1) {
                let want = if (i, j) == (0, 1) { -0.5 } else { 0.0 };
                near(correlation(one, other), want, 4.0 / f64::from(COUNT).sqrt());
            }
        }
    }

    fn correlation(one: &[f64], other: &[f64]) -> f64 {
        let ((mean, cv), (other_mean, other_cv)) = (mean_and_cv(one), mean_and_cv(other));
        let product: f64 = one.iter().zip(other).map(|(a, b)| (a - mean) * (b - other_mean)).sum();
        product / one.len() as f64 / (cv * mean * other_cv * other_mean)
    }

    #[test]
    fn no_future_is_another_again() {
        let mut weights = column(&BATCH, |s| s.weight_kg);
        weights.sort_by(f64::total_cmp);
        weights.dedup();
        assert_eq!(weights.len(), COUNT as usize);
    }

    /// Only the sale price is free: a loss when it falls under the break-even price, so when the normal number falls under
    /// (ln(break-even / mean) + sigma² / 2) / sigma. The price is set so that this is -1, of probability 0.158 655.
    #[test]
    fn the_chance_of_loss_is_the_closed_form() {
        let plan = run(1, 1, &CERTAIN).unwrap()[0];
        let cv: f64 = 0.08;
        let variance = (1.0 + cv * cv).ln();
        let mean = plan.cost / plan.kg_sold * (variance.sqrt() + variance / 2.0).exp();
        let batch = Batch { sale_price: mean, sale_price_cv: cv, ..CERTAIN };
        let loss = risk::chance_of_loss(&column(&batch, |s| s.profit)).unwrap();
        near(loss.share, 0.158_655, 4.0 * loss.standard_error);
        near(loss.standard_error, 0.003_653, 0.000_15);
    }

    #[test]
    fn dearer_feed_costs_each_future_what_it_eats() {
        let dear = Batch { feed_price: 2.0 * BATCH.feed_price, ..BATCH };
        let futures = run(5, COUNT, &BATCH).unwrap();
        for (cheap, dear) in futures.iter().zip(run(5, COUNT, &dear).unwrap()) {
            assert_eq!(cheap.feed_kg, dear.feed_kg);
            assert_eq!(2.0 * cheap.feed_price, dear.feed_price);
            near(cheap.profit - dear.profit, cheap.feed_kg * cheap.feed_price, 1e-10 * cheap.cost);
        }
    }

    #[test]
    fn a_price_a_head_does_not_see_the_weight() {
        let heavy = Batch { weight_kg: 3.0, ..BATCH };
        let head = |batch: Batch| column(&Batch { sold_by: SoldBy::Head, ..batch }, |s| s.income);
        assert_eq!(head(BATCH), head(heavy));
        assert_ne!(column(&BATCH, |s| s.income), column(&heavy, |s| s.income));
    }

    /// Feed already eaten is not saved by a death: with more losses the feed for each kg sold rises.
    #[test]
    fn lost_birds_ate_too() {
        let wild = Batch { losses_spread: 1.1, fcr_cv: 0.0, weight_cv: 0.0, ..BATCH };
        for future in run(5, 1000, &wild).unwrap() {
            let worse = future.birds_sold < 477.0;
            let better = future.birds_sold > 479.0;
            let fcr = future.fcr().unwrap();
            assert!((!worse || fcr > BATCH.fcr) && (!better || fcr < BATCH.fcr), "{future:?}");
        }
    }

    #[test]
    fn what_no_batch_can_have_is_refused() {
        let refused = |batch: Batch| run(1, 1, &batch).unwrap_err().input;
        assert_eq!(refused(Batch { losses: 1.1, ..BATCH }), "losses");
        assert_eq!(refused(Batch { fcr_cv: -0.1, ..BATCH }), "fcr_cv");
        assert_eq!(refused(Batch { weight_fcr_correlation: f64::NAN, ..BATCH }), "weight_fcr_correlation");
        assert_eq!(refused(Batch { sale_price: f64::INFINITY, ..BATCH }), "sale_price");
    }
}
