//! How a batch stands beside its standard, day by day: a level and a slope of ln(weight / standard).
//!
//! From one day to the next the level goes on by the slope, the slope is damped, and both stray a little; a weighing pulls
//! them to what was seen, by how sure it is. Days without a weighing only add doubt.
//!
//! Source: [harvey-1989], [durbin-koopman-2012] (from memory); equal to statsmodels day by day.

/// What is known of the level and the slope on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// ln(weight / standard).
    pub level: f64,
    /// Its change a day.
    pub slope: f64,
    /// Variance of the level.
    pub level_variance: f64,
    /// Covariance of level and slope.
    pub covariance: f64,
    /// Variance of the slope.
    pub slope_variance: f64,
}

/// How level and slope go on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Law {
    /// What is left of a slope on the next day, 0 to 1.
    pub damping: f64,
    /// Variance that a day adds to the level.
    pub level_noise: f64,
    /// Variance that a day adds to the slope.
    pub slope_noise: f64,
}

/// A weighing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// Day of age.
    pub day: i32,
    /// ln(mean weight / standard).
    pub log_ratio: f64,
    /// Its variance: that of the mean weighed, and that of the scale.
    pub variance: f64,
}

/// What a weighing did.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Update {
    /// What is known after it.
    pub state: State,
    /// How many standard deviations it lay from what was expected; negative for lighter.
    pub surprise: f64,
    /// The part of its weight that it was given, 0 to 1: 1 for one that is believed whole.
    pub believed: f64,
    /// ln of its density before it was seen.
    pub log_likelihood: f64,
}

/// A weighing that lies further than so many standard deviations from what was expected is believed in part, and the less
/// the further off it lies. Our judgement: one honest weighing in eighty lies there.
pub const BELIEVED_WITHIN: f64 = 2.5;

impl State {
    /// The next day, before anything is seen of it.
    pub fn next(self, law: &Law) -> State {
        let State { level, slope, level_variance, covariance, slope_variance } = self;
        State {
            level: level + slope,
            slope: law.damping * slope,
            level_variance: level_variance + 2.0 * covariance + slope_variance + law.level_noise,
            covariance: law.damping * (covariance + slope_variance),
            slope_variance: law.damping * law.damping * slope_variance + law.slope_noise,
        }
    }

    /// So many days on, if nothing is seen of them.
    pub fn ahead(self, law: &Law, days: u32) -> State {
        (0..days).fold(self, |state, _| state.next(law))
    }

    /// After a weighing that is believed whole.
    pub fn see(self, log_ratio: f64, variance: f64) -> Update {
        self.pulled(log_ratio, variance, 1.0)
    }

    /// After a weighing that may be a slip: one far from what was expected counts as if it were as unsure as it takes to lie
    /// [`BELIEVED_WITHIN`] deviations away, so that its pull shrinks with its distance.
    pub fn see_with_doubt(self, log_ratio: f64, variance: f64) -> Update {
        let known = self.level_variance + variance;
        let surprise = (log_ratio - self.level) / known.sqrt();
        let wider = (surprise / BELIEVED_WITHIN).powi(2).max(1.0);
        self.pulled(log_ratio, variance, wider)
    }

    /// The update of the filter, with the variance of what is seen widened by a factor; in the form that keeps it symmetric.
    fn pulled(self, log_ratio: f64, variance: f64, wider: f64) -> Update {
        let off = log_ratio - self.level;
        let known = self.level_variance + variance;
        let total = known * wider;
        let gains = (self.level_variance / total, self.covariance / total);
        // The widened whole is the level's own doubt and the weighing's.
        let doubt = total - self.level_variance;
        let (left, a) = (1.0 - gains.0, gains.1);
        let State { level, slope, level_variance, covariance, slope_variance } = self;
        let state = State {
            level: level + gains.0 * off,
            slope: slope + gains.1 * off,
            level_variance: left * left * level_variance + gains.0 * gains.0 * doubt,
            covariance: left * (covariance - a * level_variance) + gains.0 * gains.1 * doubt,
            slope_variance: slope_variance - 2.0 * a * covariance + a * a * level_variance + a * a * doubt,
        };
        Update {
            state,
            surprise: off / known.sqrt(),
            believed: 1.0 / wider,
            log_likelihood: -0.5 * ((std::f64::consts::TAU * total).ln() + off * off / total),
        }
    }
}

/// A batch followed to a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Followed {
    /// What is known on that day.
    pub state: State,
    /// What each weighing did, in their order.
    pub updates: Vec<(Seen, Update)>,
}

/// Follows a batch from what is known of its first day to a day, over its weighings in the order of their days. Weighings
/// before the first day and after the last are not looked at.
///
/// A weighing is doubted once: when the next one lies as far off on the same side, both are believed whole.
pub fn follow(first: State, law: &Law, seen: &[Seen], from: i32, to: i32) -> Followed {
    let mut course = Course { law, state: first, day: from, updates: Vec::new(), doubted: None };
    for one in seen.iter().filter(|one| (from..=to).contains(&one.day)) {
        course.weigh(*one);
    }
    course.go_on(to);
    Followed { state: course.state, updates: course.updates }
}

/// A batch on its way.
struct Course<'a> {
    law: &'a Law,
    state: State,
    day: i32,
    updates: Vec<(Seen, Update)>,
    /// What was known before the last weighing, where that was doubted.
    doubted: Option<State>,
}

impl Course<'_> {
    fn go_on(&mut self, day: i32) {
        self.state = self.state.ahead(self.law, u32::try_from(day - self.day).unwrap_or_default());
        self.day = self.day.max(day);
    }

    fn weigh(&mut self, seen: Seen) {
        self.go_on(seen.day);
        let before = self.state;
        let mut update = before.see_with_doubt(seen.log_ratio, seen.variance);
        let is_doubted = update.believed < 1.0;
        let last = self.doubted.take().zip(self.updates.last_mut());
        match last.filter(|(_, (_, last))| is_doubted && last.surprise * update.surprise > 0.0) {
            Some((known, (first, last))) => {
                *last = known.see(first.log_ratio, first.variance);
                let days = u32::try_from(seen.day - first.day).unwrap_or_default();
                update = last.state.ahead(self.law, days).see(seen.log_ratio, seen.variance);
            }
            None if is_doubted => self.doubted = Some(before),
            None => {}
        }
        self.state = update.state;
        self.updates.push((seen, update));
    }
}

/// A weight on a day of which only a law is known: its logarithm follows a bell curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weight {
    /// As many lie below as above, g.
    pub median_g: f64,
    /// Variance of its logarithm.
    pub variance: f64,
}

impl Weight {
    /// The mean weight of the birds on a day.
    ///
    /// - `standard_g`: the standard on that day
    pub fn of(state: &State, standard_g: f64) -> Weight {
        Weight { median_g: standard_g * state.level.exp(), variance: state.level_variance }
    }

    /// Any one bird's: the birds' own spread comes on top.
    ///
    /// - `cv`: coefficient of variation of the birds, a share
    pub fn of_a_bird(self, cv: f64) -> Weight {
        Weight { variance: self.variance + (cv * cv).ln_1p(), ..self }
    }

    /// The weight below which lies the share of a bell curve that `z` deviations leave below.
    pub fn at(self, z: f64) -> f64 {
        self.median_g * (z * self.variance.sqrt()).exp()
    }

    /// The mean of the law.
    pub fn mean(self) -> f64 {
        self.median_g * (self.variance / 2.0).exp()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LAW: Law = Law { damping: 0.95, level_noise: 9e-6, slope_noise: 2.5e-7 };
    const FIRST: State =
        State { level: 0.0, slope: 0.0, level_variance: 0.01, covariance: 0.0, slope_variance: 9e-6 };

    fn weekly(ratio: impl Fn(i32) -> f64) -> Vec<Seen> {
        [7, 14, 21, 28].map(|day| Seen { day, log_ratio: ratio(day), variance: 2e-4 }).to_vec()
    }

    #[test]
    fn doubt_grows_with_a_gap_and_shrinks_with_a_weighing() {
        let late = follow(FIRST, &LAW, &weekly(|_| -0.1), 0, 28).state;
        assert!(late.level < -0.08 && late.level_variance < FIRST.level_variance / 20.0);
        let (week, fortnight) = (late.ahead(&LAW, 7), late.ahead(&LAW, 14));
        assert!(late.level_variance < week.level_variance && week.level_variance < fortnight.level_variance);
    }

    /// 1.9 kg typed as 2.9 moves the level less than an honest surprise of a third of that does.
    #[test]
    fn one_bad_weighing_moves_little_and_is_shown() {
        let good = follow(FIRST, &LAW, &weekly(|_| 0.0), 0, 28);
        let slipped = |off: f64| follow(FIRST, &LAW, &weekly(|day| if day == 28 { off } else { 0.0 }), 0, 28);
        let slip = slipped((2.9f64 / 1.9).ln());
        let last = slip.updates.last().unwrap().1;
        assert!(last.surprise > 10.0 && last.believed < 0.1);
        assert!((slip.state.level - good.state.level).abs() < 0.03);
        assert!(slip.state.level < slipped(0.1).state.level);
        assert!(good.updates.iter().all(|(_, update)| update.believed == 1.0));
    }

    #[test]
    fn two_weighings_that_agree_are_believed_in_the_end() {
        let fell = follow(FIRST, &LAW, &weekly(|day| if day > 14 { -0.2 } else { 0.0 }), 0, 28);
        let believed: Vec<f64> = fell.updates.iter().map(|(_, update)| update.believed).collect();
        assert_eq!(believed, [1.0; 4]);
        assert!(fell.state.level < -0.1, "{}", fell.state.level);
        let one = follow(FIRST, &LAW, &weekly(|day| if day > 14 { -0.2 } else { 0.0 }), 0, 27);
        assert!(one.updates[2].1.believed < 0.5 && one.state.level > -0.1);
    }

    /// Derived: median 2000 g and variance 0.01: the upper end of nine tenths is 2000 exp(0.1645), the mean 2000 exp(0.005).
    #[test]
    fn weights_follow_their_law() {
        let weight = Weight { median_g: 2000.0, variance: 0.01 };
        assert!((weight.at(1.645) - 2357.6).abs() < 0.1 && (weight.mean() - 2010.03).abs() < 0.01);
        assert!((weight.of_a_bird(0.1).variance - 0.01 - 1.01f64.ln()).abs() < 1e-12);
    }
}
