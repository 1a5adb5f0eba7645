//! Unevenness by spot: how much of the spread of weights lies between spots of the house, and how much between the birds of
//! one spot.
//!
//! A nested one-way layout with unlike numbers of birds: weight = mean + what the spot does + what the bird does. Two ways:
//! analysis of variance (method of moments), and restricted maximum likelihood (REML), whose profile is in one number, the
//! ratio of the two variances. Variances are in the square of the weight's unit.
//!
//! Source: [searle-1992], chapters 3 and 6.

use crate::quantile;
use crate::search::{crossing, highest_between};
use crate::weighing::Interval;

/// Spread between spots and within spots.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Variances {
    /// Between the true means of spots.
    pub between: f64,
    /// Between birds of one spot.
    pub within: f64,
}

/// What the weights of birds, spot by spot, say of unevenness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Components {
    /// The mean, each spot counting by what it tells (REML).
    pub mean: f64,
    /// Spots with at least one bird.
    pub spots: usize,
    /// The fewest birds of a spot.
    pub fewest_birds: usize,
    /// By the method of moments. `between` is below 0 where spots differ less than their birds would make them.
    pub anova: Variances,
    /// By restricted maximum likelihood; never below 0.
    pub reml: Variances,
    /// What the search leaves of the deviance's slope, by a relative change of the ratio of both variances; 0 where the ratio is.
    pub left_over: f64,
    /// 95 % interval of the variance between spots, by profile of the restricted likelihood.
    pub between_interval: Interval,
    /// 95 % interval of the variance within spots, by chi-square on birds less spots.
    pub within_interval: Interval,
}

/// Whether the part between spots can be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It can.
    Told,
    /// Fewer than 3 spots.
    TooFewSpots,
    /// A spot with fewer than 5 birds.
    TooFewBirds,
    /// It may be none, and may be more than the spread within spots.
    CouldBeAnything,
}

impl Components {
    /// Whether the part between spots can be told. The limits are our judgement.
    pub fn verdict(&self) -> Verdict {
        let (low, high) = self.between_interval;
        if self.spots < 3 {
            Verdict::TooFewSpots
        } else if self.fewest_birds < 5 {
            Verdict::TooFewBirds
        } else if low == 0.0 && high > self.reml.within {
            Verdict::CouldBeAnything
        } else {
            Verdict::Told
        }
    }

    /// Coefficient of variation between spots and its interval, shares of the mean.
    pub fn between_variation(&self) -> Option<(f64, Interval)> {
        self.variation(self.reml.between, self.between_interval)
    }

    /// Coefficient of variation within spots and its interval, shares of the mean.
    pub fn within_variation(&self) -> Option<(f64, Interval)> {
        self.variation(self.reml.within, self.within_interval)
    }

    fn variation(&self, variance: f64, (low, high): Interval) -> Option<(f64, Interval)> {
        let share = |variance: f64| variance.sqrt() / self.mean;
        (self.mean > 0.0).then(|| (share(variance), (share(low), share(high))))
    }
}

/// A spot: its birds and their mean.
struct Spot {
    birds: f64,
    mean: f64,
}

/// Spots with their birds' spread around their own spot.
struct Layout {
    spots: Vec<Spot>,
    /// All birds.
    birds: f64,
    /// Sum of squares within spots.
    within: f64,
}

impl Layout {
    fn of(spots: &[Vec<f64>]) -> Layout {
        let mut layout = Layout { spots: Vec::new(), birds: 0.0, within: 0.0 };
        for weights in spots.iter().filter(|weights| !weights.is_empty()) {
            let birds = weights.len() as f64;
            let mean = weights.iter().sum::<f64>() / birds;
            layout.within += weights.iter().map(|weight| (weight - mean).powi(2)).sum::<f64>();
            layout.birds += birds;
            layout.spots.push(Spot { birds, mean });
        }
        layout
    }

    /// Degrees of freedom within spots.
    fn freedom_within(&self) -> f64 {
        self.birds - self.spots.len() as f64
    }

    fn sum(&self, of: impl Fn(&Spot) -> f64) -> f64 {
        self.spots.iter().map(of).sum()
    }

    /// The mean of spots that count by `weight`.
    fn mean(&self, weight: impl Fn(&Spot) -> f64) -> f64 {
        self.sum(|spot| weight(spot) * spot.mean) / self.sum(weight)
    }

    /// Mean squares set equal to what is expected of them: within σ²w, between σ²w + n₀ σ²b,
    /// n₀ = (N - Σn² / N) / (spots - 1).
    fn anova(&self) -> Variances {
        let mean = self.mean(|spot| spot.birds);
        let freedom = self.spots.len() as f64 - 1.0;
        let between = self.sum(|spot| spot.birds * (spot.mean - mean).powi(2)) / freedom;
        let within = self.within / self.freedom_within();
        let like = (self.birds - self.sum(|spot| spot.birds.powi(2)) / self.birds) / freedom;
        Variances { between: (between - within) / like, within }
    }

    /// What a spot counts at a ratio of the variances: n / (1 + n × ratio).
    fn weight(ratio: f64) -> impl Fn(&Spot) -> f64 + Copy {
        move |spot| spot.birds / (1.0 + ratio * spot.birds)
    }

    /// The sum of squares left at a ratio.
    fn squares(&self, ratio: f64) -> f64 {
        let weight = Self::weight(ratio);
        let mean = self.mean(weight);
        self.within + self.sum(|spot| weight(spot) * (spot.mean - mean).powi(2))
    }

    /// -2 log restricted likelihood at a ratio, profiled over the variance within, without constants:
    /// (N - 1) ln S + Σ ln(1 + n × ratio) + ln Σ weights.
    fn deviance(&self, ratio: f64) -> f64 {
        (self.birds - 1.0) * self.squares(ratio).ln()
            + self.sum(|spot| (ratio * spot.birds).ln_1p())
            + self.sum(Self::weight(ratio)).ln()
    }

    /// Its slope. The mean is the best at each ratio, so its own move adds nothing.
    fn slope(&self, ratio: f64) -> f64 {
        let weight = Self::weight(ratio);
        let mean = self.mean(weight);
        let falling = self.sum(|spot| (weight(spot) * (spot.mean - mean)).powi(2));
        self.sum(weight)
            - self.sum(|spot| weight(spot).powi(2)) / self.sum(weight)
            - (self.birds - 1.0) * falling / self.squares(ratio)
    }

    /// The ratio of least deviance: the best of a grid, then where the slope crosses 0.
    fn best_ratio(&self) -> f64 {
        const STEPS: i32 = 96;
        let at = |step: i32| if step == 0 { 0.0 } else { 10f64.powf(f64::from(step) / 8.0 - 6.0) };
        let lower = |a: &i32, b: &i32| self.deviance(at(*a)).total_cmp(&self.deviance(at(*b)));
        let step = (0..=STEPS).min_by(lower).unwrap_or(0);
        let (low, high) = (at((step - 1).max(0)), at(step + 1));
        if self.slope(low) >= 0.0 { low } else { crossing(|ratio| self.slope(ratio), low, high) }
    }

    /// -2 log restricted likelihood at two variances, without constants.
    fn deviance_at(&self, at: Variances) -> f64 {
        let spread = |spot: &Spot| at.within + spot.birds * at.between;
        let weight = |spot: &Spot| spot.birds / spread(spot);
        let mean = self.mean(weight);
        self.freedom_within() * at.within.ln()
            + self.sum(|spot| spread(spot).ln())
            + self.sum(weight).ln()
            + self.within / at.within
            + self.sum(|spot| weight(spot) * (spot.mean - mean).powi(2))
    }

    /// The least deviance at a variance between, over the variance within.
    fn profile(&self, between: f64, near: f64) -> f64 {
        let deviance = |log: f64| self.deviance_at(Variances { between, within: log.exp() });
        deviance(highest_between(|log| -deviance(log), near.ln() - 5.0, near.ln() + 5.0))
    }

    fn between_interval(&self, reml: Variances) -> Option<Interval> {
        let least = self.deviance_at(reml);
        let limit = quantile::chi_square(0.95, 1.0)?;
        let beyond = |between: f64| self.profile(between, reml.within) - least - limit;
        let low = if beyond(0.0) <= 0.0 { 0.0 } else { crossing(beyond, reml.between, 0.0) };
        let mut outside = reml.between.max(reml.within);
        while beyond(outside) <= 0.0 {
            outside = Some(outside * 4.0).filter(|outside| outside.is_finite())?;
        }
        Some((low, crossing(beyond, reml.between, outside)))
    }
}

/// The parts of the spread of weights, spot by spot.
///
/// - `spots`: the birds of each spot; spots without birds are left out
///
/// `None` with fewer than 2 spots, without a spot of two birds, and where the birds of every spot weigh all the same.
/// The interval between spots takes the restricted likelihood as it is with many spots; with 3 to 5 it is rough.
/// Checked against a general library of mixed models, within 1e-6.
pub fn components(spots: &[Vec<f64>]) -> Option<Components> {
    let layout = Layout::of(spots);
    if layout.spots.len() < 2 || layout.freedom_within() < 1.0 || layout.within <= 0.0 {
        return None;
    }
    let ratio = layout.best_ratio();
    let within = layout.squares(ratio) / (layout.birds - 1.0);
    let reml = Variances { between: ratio * within, within };
    let freedom = layout.freedom_within();
    let end = |share| Some(layout.within / quantile::chi_square(share, freedom)?);
    Some(Components {
        mean: layout.mean(Layout::weight(ratio)),
        spots: layout.spots.len(),
        fewest_birds: layout.spots.iter().map(|spot| spot.birds as usize).min()?,
        anova: layout.anova(),
        reml,
        left_over: (ratio * layout.slope(ratio)).abs(),
        between_interval: layout.between_interval(reml)?,
        within_interval: (end(0.975)?, end(0.025)?),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spot(mean: f64, spread: f64, birds: usize) -> Vec<f64> {
        let place = |bird: usize| 2.0 * bird as f64 / (birds as f64 - 1.0) - 1.0;
        (0..birds).map(|bird| mean + spread * place(bird)).collect()
    }

    /// Derived: with like numbers of birds and spots that differ, both ways give the same.
    #[test]
    fn both_ways_agree_where_spots_are_alike_in_number() {
        let spots =
            [spot(1800.0, 150.0, 8), spot(2000.0, 200.0, 8), spot(2150.0, 180.0, 8), spot(1900.0, 90.0, 8)];
        let parts = components(&spots).unwrap();
        assert!((parts.anova.between / parts.reml.between - 1.0).abs() < 1e-9, "{parts:?}");
        assert!((parts.anova.within / parts.reml.within - 1.0).abs() < 1e-9);
        assert!((parts.mean - 1962.5).abs() < 1e-9);
        assert_eq!(parts.verdict(), Verdict::Told);
        assert!(parts.left_over < 1e-9, "{parts:?}");
        let (variation, (low, high)) = parts.between_variation().unwrap();
        assert!(low < variation && variation < high && low > 0.0, "{low} {variation} {high}");
        assert!((variation - parts.reml.between.sqrt() / 1962.5).abs() < 1e-12);
    }

    #[test]
    fn spots_that_are_alike_have_nothing_between() {
        let spots = vec![spot(2000.0, 200.0, 10); 4];
        let parts = components(&spots).unwrap();
        assert!(parts.anova.between < 0.0);
        assert_eq!((parts.reml.between, parts.between_interval.0), (0.0, 0.0));
        assert_eq!(parts.verdict(), Verdict::Told, "little enough to be told: {parts:?}");
    }

    #[test]
    fn few_spots_and_few_birds_do_not_tell() {
        let verdict = |spots: &[Vec<f64>]| components(spots).unwrap().verdict();
        let (light, heavy) = (spot(1800.0, 150.0, 8), spot(2000.0, 150.0, 8));
        assert_eq!(verdict(&[light.clone(), heavy.clone()]), Verdict::TooFewSpots);
        assert_eq!(verdict(&[light.clone(), heavy.clone(), spot(1900.0, 100.0, 4)]), Verdict::TooFewBirds);
        assert_eq!(
            verdict(&[spot(1900.0, 300.0, 5), spot(2000.0, 300.0, 5), spot(2150.0, 300.0, 5)]),
            Verdict::CouldBeAnything
        );
        assert_eq!(components(&[light.clone(), vec![]]), None);
        assert_eq!(components(&[vec![1.0], vec![2.0]]), None);
        assert_eq!(components(&[vec![1.0; 3], vec![2.0; 3]]), None);
    }

    /// The unit of weight is the grower's.
    #[test]
    fn shares_do_not_hang_on_the_unit() {
        let grams = [spot(1800.0, 150.0, 7), spot(2000.0, 200.0, 12), spot(2150.0, 180.0, 5)];
        let kilos: Vec<Vec<f64>> =
            grams.iter().map(|spot| spot.iter().map(|g| g / 1000.0).collect()).collect();
        let (a, b) = (components(&grams).unwrap(), components(&kilos).unwrap());
        for (a, b) in
            [(a.between_variation(), b.between_variation()), (a.within_variation(), b.within_variation())]
        {
            let ((a, (a_low, a_high)), (b, (b_low, b_high))) = (a.unwrap(), b.unwrap());
            for (a, b) in [(a, b), (a_low, b_low), (a_high, b_high)] {
                assert!((a - b).abs() < 1e-7 * a.max(b), "{a} {b}");
            }
        }
    }
}
