//! Laws of a day's count, such as the deaths of a day, and what day counts say about their rate and their clumping.
//!
//! Deaths come in clumps: one night's cold or one bad bag of feed takes several. The Poisson law holds for deaths that know
//! nothing of each other; the negative binomial law adds clumping; the beta-binomial law adds a share that is itself
//! uncertain. Shares are 0 to 1.

use crate::quantile;
use crate::search::{crossing, highest_between};
use crate::weighing::Interval;

/// A law of a whole number of cases.
///
/// Every law here is worked out from the chance of no case upwards, each chance from the one before. Where the chance of
/// no case is too small to be held (a Poisson mean above about 690), there is no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law {
    /// Cases that know nothing of each other.
    Poisson {
        /// Cases expected, from 0.
        mean: f64,
    },
    /// Cases in clumps: the variance is mean + mean² / size.
    NegativeBinomial {
        /// Cases expected, from 0.
        mean: f64,
        /// The smaller, the more clumped; above 0. From 2 to 6 for a day's deaths (our judgement).
        size: f64,
    },
    /// Cases among `birds` whose share is uncertain: beta with `alpha` and `beta`, so that alpha / (alpha + beta) is
    /// expected, with the weight of alpha + beta birds.
    BetaBinomial {
        /// Birds that can be a case.
        birds: u32,
        /// Above 0.
        alpha: f64,
        /// Above 0.
        beta: f64,
    },
}

impl Law {
    /// The law of a mean: clumped with a size, else Poisson.
    pub fn of(mean: f64, size: Option<f64>) -> Law {
        size.map_or(Law::Poisson { mean }, |size| Law::NegativeBinomial { mean, size })
    }

    /// Beta-binomial from a share expected and the bird-days it was learnt from.
    pub fn of_uncertain_share(birds: u32, share: f64, weight: f64) -> Law {
        Law::BetaBinomial { birds, alpha: share * weight, beta: (1.0 - share) * weight }
    }

    /// Cases expected.
    pub fn mean(self) -> f64 {
        match self {
            Law::Poisson { mean } | Law::NegativeBinomial { mean, .. } => mean,
            Law::BetaBinomial { birds, alpha, beta } => f64::from(birds) * alpha / (alpha + beta),
        }
    }

    /// Variance of the count.
    pub fn variance(self) -> f64 {
        match self {
            Law::Poisson { mean } => mean,
            Law::NegativeBinomial { mean, size } => mean + mean * mean / size,
            Law::BetaBinomial { birds, alpha, beta } => {
                let (birds, weight) = (f64::from(birds), alpha + beta);
                let share = alpha / weight;
                birds * share * (1.0 - share) * (weight + birds) / (weight + 1.0)
            }
        }
    }

    /// The chances of 0, 1, 2 … cases, without end (zeros once none is left).
    ///
    /// `None` for parameters outside their ranges, and where the chance of no case cannot be held.
    pub fn chances(self) -> Option<impl Iterator<Item = f64>> {
        let none = self.chance_of_none().filter(|chance| *chance > 1e-300)?;
        Some((0u32..).scan(none, move |chance, cases| {
            let this = *chance;
            *chance *= self.ratio(f64::from(cases));
            Some(this)
        }))
    }

    /// The chance of exactly so many.
    pub fn chance_of(self, cases: u32) -> Option<f64> {
        self.chances()?.nth(cases as usize)
    }

    /// The chance of so many or fewer.
    pub fn at_most(self, cases: u32) -> Option<f64> {
        Some(self.chances()?.take(cases as usize + 1).sum::<f64>().min(1.0))
    }

    /// The chance of so many or more, with its digits kept however small it is.
    pub fn at_least(self, cases: u32) -> Option<f64> {
        if f64::from(cases) <= self.mean() {
            let fewer: f64 = self.chances()?.take(cases as usize).sum();
            return Some(1.0 - fewer);
        }
        let mut total = 0.0;
        for chance in self.chances()?.skip(cases as usize) {
            total += chance;
            if chance <= 1e-18 * total {
                break;
            }
        }
        Some(total)
    }

    /// The fewest cases that are not exceeded with at least the chance `share`, 0 to 1, both left out.
    pub fn quantile(self, share: f64) -> Option<u32> {
        let chances = self.chances().filter(|_| share > 0.0 && share < 1.0)?;
        let (mut total, mean) = (0.0, self.mean());
        for (cases, chance) in (0u32..).zip(chances) {
            total += chance;
            let exhausted = f64::from(cases) > mean && chance < 1e-18;
            if total >= share || exhausted {
                return Some(cases);
            }
        }
        None
    }

    fn chance_of_none(self) -> Option<f64> {
        let positive = |number: f64| number > 0.0 && number.is_finite();
        let mean_holds = |mean: f64| (0.0..1e6).contains(&mean);
        match self {
            Law::Poisson { mean } => mean_holds(mean).then(|| (-mean).exp()),
            Law::NegativeBinomial { mean, size } => {
                (mean_holds(mean) && positive(size)).then(|| (-size * (mean / size).ln_1p()).exp())
            }
            Law::BetaBinomial { birds, alpha, beta } => (positive(alpha) && positive(beta)).then(|| {
                let spared = |bird: u32| (-alpha / (alpha + beta + f64::from(bird))).ln_1p();
                (0..birds).map(spared).sum::<f64>().exp()
            }),
        }
    }

    /// The chance of one case more, over the chance of `cases`.
    fn ratio(self, cases: f64) -> f64 {
        let next = cases + 1.0;
        match self {
            Law::Poisson { mean } => mean / next,
            Law::NegativeBinomial { mean, size } => (cases + size) / next * mean / (size + mean),
            Law::BetaBinomial { birds, alpha, beta } => {
                let left = f64::from(birds) - cases;
                if left < 1.0 { 0.0 } else { left * (cases + alpha) / (next * (left - 1.0 + beta)) }
            }
        }
    }
}

/// What a single day's count is held against.
///
/// These are limits of one day: of 42 steady days about one is beyond `usual_high` by chance alone. The chance that a batch
/// rings falsely is [`crate::cusum`]'s matter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DayBand {
    /// 2.5 % of days are lower.
    pub usual_low: u32,
    /// The middle.
    pub middle: u32,
    /// 97.5 % of days have at most so many. More: look.
    pub usual_high: u32,
    /// 99 % of days have at most so many. More: act.
    pub look_high: u32,
}

/// The band of a law: its quantiles at 2.5, 50, 97.5 and 99 % (our judgement).
pub fn day_band(law: Law) -> Option<DayBand> {
    Some(DayBand {
        usual_low: law.quantile(0.025)?,
        middle: law.quantile(0.5)?,
        usual_high: law.quantile(0.975)?,
        look_high: law.quantile(0.99)?,
    })
}

/// What is known of a rate, cases a bird-day: a gamma law worth `cases` seen in `bird_days`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rate {
    /// Cases that the knowledge is worth, above 0.
    pub cases: f64,
    /// Bird-days that the knowledge is worth, above 0.
    pub bird_days: f64,
}

impl Rate {
    /// With further cases seen in further bird-days.
    ///
    /// Source: the gamma law is conjugate to the Poisson law (exact).
    pub fn with(self, cases: u32, bird_days: f64) -> Rate {
        Rate { cases: self.cases + f64::from(cases), bird_days: self.bird_days + bird_days }
    }

    /// Cases a bird-day.
    pub fn mean(self) -> f64 {
        self.cases / self.bird_days
    }

    /// The law of the next cases among so many bird-days.
    pub fn predict(self, bird_days: f64) -> Law {
        Law::NegativeBinomial { mean: self.mean() * bird_days, size: self.cases }
    }
}

/// Interval of a rate from `cases` in `exposure` (bird-days): exact for Poisson counts, too short for clumped ones.
///
/// Source: [garwood-1936]. `None` for an exposure of 0 and a confidence outside 0 to 1.
pub fn rate_interval(cases: u32, exposure: f64, confidence: f64) -> Option<Interval> {
    if exposure <= 0.0 || exposure.is_nan() {
        return None;
    }
    let tail = 0.5 - confidence / 2.0;
    let end = |share, cases: u32| Some(quantile::chi_square(share, 2.0 * f64::from(cases))? / 2.0 / exposure);
    let low = if cases == 0 { Some(0.0) } else { end(tail, cases) };
    Some((low?, end(1.0 - tail, cases + 1)?))
}

/// A day's count and what was expected of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Counted {
    /// Cases.
    pub cases: u32,
    /// Cases expected, above 0.
    pub expected: f64,
}

/// What day counts say of their clumping. A clumping is 1 / size: 0 is Poisson, 0.25 is a size of 4.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Clumping {
    /// Told.
    Told {
        /// The most likely 1 / size.
        best: f64,
        /// Where the log likelihood is within 1.92 of the best: 95 %, by profile likelihood.
        interval: Interval,
    },
    /// These counts fit no clumping and strong clumping alike: take the usual size.
    NotEnoughToTell,
}

impl Clumping {
    /// The most likely size; `None` where it cannot be told and where the counts are Poisson.
    pub fn size(self) -> Option<f64> {
        match self {
            Clumping::Told { best, .. } if best > 0.0 => Some(1.0 / best),
            _ => None,
        }
    }
}

/// The most clumping that is looked for: a size of 0.2.
const MOST_CLUMPING: f64 = 5.0;
/// Strong clumping: a size of 1. Counts that allow for all from none to this tell nothing.
const STRONG_CLUMPING: f64 = 1.0;
/// Half the 95 % point of chi-square with one degree of freedom.
const HALF_CHI_SQUARE_95: f64 = 1.920_729_410_347_062;

/// The most likely clumping of day counts with given expectations, and how sure it is.
///
/// Maximum likelihood of the negative binomial law over 1 / size from 0 to 5. It takes the expectations as right: where all
/// days run above plan, that reads as clumping too.
///
/// - `days`: days without an expectation above 0 say nothing and are left out
///
/// The rule of "not enough" is our judgement: the 95 % interval reaches from none to a size of 1 or less.
/// Checked against a general optimiser within 1e-6.
pub fn clumping(days: &[Counted]) -> Clumping {
    let told: Vec<Counted> = days.iter().copied().filter(|day| day.expected > 0.0).collect();
    let drop = |clumping: f64| log_likelihood(&told, clumping);
    let best = highest(drop, MOST_CLUMPING);
    let within = |clumping: f64| drop(best) - drop(clumping) - HALF_CHI_SQUARE_95;
    let low = if within(0.0) <= 0.0 { 0.0 } else { crossing(within, best, 0.0) };
    let high =
        if within(MOST_CLUMPING) <= 0.0 { MOST_CLUMPING } else { crossing(within, best, MOST_CLUMPING) };
    if low == 0.0 && high >= STRONG_CLUMPING {
        return Clumping::NotEnoughToTell;
    }
    Clumping::Told { best, interval: (low, high) }
}

/// Log likelihood of a clumping a, without what does not hang on it: Σ over days of
/// Σ_{i < x} ln(1 + a i) - (x + 1/a) ln(1 + a m), whose limit at a = 0 is -m.
fn log_likelihood(days: &[Counted], clumping: f64) -> f64 {
    let of_day = |day: &Counted| {
        let grown: f64 = (0..day.cases).map(|i| (clumping * f64::from(i)).ln_1p()).sum();
        let spread = (clumping * day.expected).ln_1p();
        let by_clumping = if clumping == 0.0 { day.expected } else { spread / clumping };
        grown - f64::from(day.cases) * spread - by_clumping
    };
    days.iter().map(of_day).sum()
}

/// Where a function of 0 to `most` is highest: a grid, finer near 0, then the golden section of the best grid step.
fn highest(function: impl Fn(f64) -> f64, most: f64) -> f64 {
    const STEPS: u32 = 60;
    let at = |step: u32| most * (f64::from(step) / f64::from(STEPS)).powi(3);
    let better = |a: &u32, b: &u32| function(at(*a)).total_cmp(&function(at(*b)));
    // Of equals the last is taken; without any day every clumping is as good.
    let step = (0..=STEPS).max_by(better).unwrap_or(0);
    let (low, high) = (at(step.saturating_sub(1)), at((step + 1).min(STEPS)));
    let inside = highest_between(&function, low, high);
    [0.0, most].into_iter().fold(inside, |best, end| if function(end) >= function(best) { end } else { best })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn laws_close_and_agree_where_they_meet() {
        let laws = [
            Law::Poisson { mean: 2.5 },
            Law::NegativeBinomial { mean: 2.5, size: 3.0 },
            Law::of_uncertain_share(500, 0.005, 1000.0),
        ];
        for law in laws {
            let chances: Vec<f64> = law.chances().unwrap().take(300).collect();
            let moment = |power: i32| -> f64 {
                (0u32..).zip(&chances).map(|(x, p)| f64::from(x).powi(power) * p).sum()
            };
            assert!((moment(0) - 1.0).abs() < 1e-12, "{law:?}");
            assert!((moment(1) - law.mean()).abs() < 1e-10, "{law:?}");
            assert!((moment(2) - moment(1).powi(2) - law.variance()).abs() < 1e-9, "{law:?}");
            assert!((law.at_most(4).unwrap() + law.at_least(5).unwrap() - 1.0).abs() < 1e-12);
        }
        let nearly = Law::NegativeBinomial { mean: 2.5, size: 1e9 };
        assert!((nearly.chance_of(4).unwrap() / laws[0].chance_of(4).unwrap() - 1.0).abs() < 1e-7);
    }

    /// By fractions of whole numbers, exact: product and sum of the law's own terms.
    #[test]
    fn a_small_tail_keeps_its_digits() {
        let law = Law::BetaBinomial { birds: 1600, alpha: 30.0, beta: 19970.0 };
        assert!((law.at_least(9).unwrap() / 0.001_497_733_162_467_939_3 - 1.0).abs() < 1e-12);
    }

    #[test]
    fn laws_that_cannot_be_have_no_chances() {
        for law in [
            Law::Poisson { mean: -1.0 },
            Law::Poisson { mean: f64::NAN },
            Law::Poisson { mean: 800.0 },
            Law::NegativeBinomial { mean: 1.0, size: 0.0 },
            Law::BetaBinomial { birds: 10, alpha: 0.0, beta: 1.0 },
        ] {
            assert_eq!((law.chance_of(1), law.quantile(0.5)), (None, None), "{law:?}");
        }
        assert_eq!(Law::Poisson { mean: 1.0 }.quantile(1.0), None);
        assert_eq!(Law::Poisson { mean: 0.0 }.quantile(0.99), Some(0));
        assert_eq!(Law::BetaBinomial { birds: 2, alpha: 1.0, beta: 1.0 }.chance_of(3), Some(0.0));
    }

    #[test]
    fn the_band_of_two_a_day_widens_with_clumping() {
        let band = |size| day_band(Law::of(2.0, size)).unwrap();
        assert_eq!(band(None), DayBand { usual_low: 0, middle: 2, usual_high: 5, look_high: 6 });
        assert!(band(Some(2.0)).look_high > band(None).look_high);
    }

    /// Derived: no case in B leaves a rate of up to -ln(0.025) / B.
    #[test]
    fn rates_are_learnt() {
        let (low, high) = rate_interval(0, 1000.0, 0.95).unwrap();
        assert!(low == 0.0 && (high * 1000.0 + 0.025f64.ln()).abs() < 1e-6);
        let rate = Rate { cases: 2.0, bird_days: 2000.0 }.with(3, 3000.0);
        assert_eq!((rate.mean(), rate.predict(1000.0)), (0.001, Law::of(1.0, Some(5.0))));
        assert_eq!((rate_interval(1, 0.0, 0.95), rate_interval(1, 10.0, 1.0)), (None, None));
    }

    fn days(cases: &[u32], expected: f64) -> Vec<Counted> {
        cases.iter().map(|&cases| Counted { cases, expected }).collect()
    }

    #[test]
    fn clumped_counts_are_told_from_even_ones() {
        let clumped = clumping(&days(&[0, 3, 6, 0, 1, 1, 9, 0, 2, 5, 0, 0, 1, 0, 7, 2, 0, 2, 0, 1], 2.0));
        let Clumping::Told { best, interval: (low, high) } = clumped else { panic!("{clumped:?}") };
        assert!(low > 0.0 && low < best && best < high, "{clumped:?}");
        assert!(clumped.size().unwrap() < 2.0);
        let even = clumping(&days(&[5; 40], 5.0));
        let Clumping::Told { best, interval: (low, high) } = even else { panic!("{even:?}") };
        assert!((best, low) == (0.0, 0.0) && high < 0.1, "{even:?}");
        assert_eq!(even.size(), None);
    }

    #[test]
    fn few_counts_do_not_tell() {
        assert_eq!(clumping(&[]), Clumping::NotEnoughToTell);
        assert_eq!(clumping(&days(&[1, 0, 2, 0, 1], 0.8)), Clumping::NotEnoughToTell);
        assert_eq!(clumping(&days(&[4, 1, 0], 0.0)), Clumping::NotEnoughToTell);
    }
}
