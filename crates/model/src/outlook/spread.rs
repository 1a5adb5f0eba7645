//! How far the birds of a flock differ in weight, and between which weights they lie.
//!
//! What is known is a bell curve of ln(coefficient of variation): a weighing of many birds pulls it to what was seen, time adds
//! doubt. In a flock the weights of birds follow a lognormal law, as their growth by shares would have it ([limpert-2001],
//! from memory).

use crate::quantile;

/// What is known of the coefficient of variation of the birds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// The logarithm of its middle, of a share.
    pub ln_cv: f64,
    /// Variance of that logarithm.
    pub variance: f64,
}

/// A weighing of single birds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpreadSeen {
    /// Day of age.
    pub day: i32,
    /// Coefficient of variation, a share above 0.
    pub cv: f64,
    /// Birds, or crates of as many birds each, at least 2.
    pub count: f64,
}

/// The middle before any bird is weighed (common practice), and how far flocks differ: nine in ten lie between 7 and 15 %
/// (our judgement).
const USUAL_CV: f64 = 0.10;
const FLOCKS_DIFFER: f64 = 0.25;
/// What the way of catching adds to a weighing: who is caught near the door is not like who hides. Our judgement.
const WAY_OF_CATCHING: f64 = 0.10;
/// What a week adds: late birds fall behind or catch up. Our judgement.
const OF_A_WEEK: f64 = 0.07;

impl Spread {
    /// Before any bird is weighed.
    pub fn before() -> Spread {
        Spread { ln_cv: USUAL_CV.ln(), variance: FLOCKS_DIFFER * FLOCKS_DIFFER }
    }

    /// So many days later; never less sure than before any weighing.
    pub fn later(self, days: i32) -> Spread {
        let more = OF_A_WEEK * OF_A_WEEK * f64::from(days.max(0)) / 7.0;
        let most = Spread::before().variance.max(self.variance);
        Spread { variance: (self.variance + more).min(most), ..self }
    }

    /// After a weighing. The logarithm of a standard deviation of n is next to a bell curve of variance 1 / (2 (n − 1)).
    pub fn see(self, cv: f64, count: f64) -> Spread {
        let of_weighing = 0.5 / (count - 1.0).max(1.0) + WAY_OF_CATCHING * WAY_OF_CATCHING;
        let gain = self.variance / (self.variance + of_weighing);
        let off = cv.ln() - self.ln_cv;
        Spread { ln_cv: self.ln_cv + gain * off, variance: (1.0 - gain) * self.variance }
    }

    /// The coefficient of variation below which lies the share of a bell curve that `z` deviations leave below.
    pub fn at(self, z: f64) -> f64 {
        (self.ln_cv + z * self.variance.max(0.0).sqrt()).exp()
    }
}

/// What weighings tell of a day, in the order of their days. Those after the day, of a bird alone, and of birds all alike are not
/// looked at.
pub fn follow(seen: &[SpreadSeen], to: i32) -> Spread {
    let tells = |one: &&SpreadSeen| one.day <= to && one.count >= 2.0 && one.cv > 0.0;
    let (mut known, mut day) = (Spread::before(), None);
    for one in seen.iter().filter(tells) {
        known = known.later(day.map_or(0, |before| one.day - before)).see(one.cv, one.count);
        day = Some(one.day);
    }
    known.later(day.map_or(0, |before| to - before))
}

/// The weights of the birds of a flock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Birds {
    /// So many times the mean weigh the birds in the middle.
    middle: f64,
    /// Standard deviation of the logarithm of weight.
    deviation: f64,
}

impl Birds {
    /// Birds of a coefficient of variation, a share of 0 or more.
    pub fn of(cv: f64) -> Birds {
        let variance = (cv * cv).ln_1p();
        Birds { middle: (-variance / 2.0).exp(), deviation: variance.sqrt() }
    }

    /// So many times the mean weighs the bird that `z` deviations of a bell curve lie below or above the middle.
    pub fn at(self, z: f64) -> f64 {
        self.middle * (z * self.deviation).exp()
    }

    /// The share of birds from one weight to another, both as so many times the mean; 0 and infinity are no limits.
    pub fn between(self, least: f64, most: f64) -> f64 {
        if self.deviation == 0.0 {
            return f64::from(u8::from((least..=most).contains(&self.middle)));
        }
        let below =
            |times: f64| quantile::normal_share_below((times / self.middle).max(0.0).ln() / self.deviation);
        (below(most) - below(least)).max(0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Points of chi-square with 49 degrees: 33.930 and 66.339 (NIST/SEMATECH e-Handbook, table 1.3.6.7.4, from memory): nine of
    /// ten standard deviations of 50 birds lie between 0.832 and 1.164 of the truth.
    #[test]
    fn a_weighing_tells_what_its_birds_can() {
        let ends = [33.930f64, 66.339].map(|point| (point / 49.0).sqrt());
        let half = 1.645 * (0.5f64 / 49.0).sqrt();
        for (z, end) in [(-1.0, ends[0]), (1.0, ends[1])] {
            assert!(((z * half).exp() / end - 1.0).abs() < 0.02);
        }
        let known = Spread { ln_cv: 0.1f64.ln(), variance: 1e6 }.see(0.14, 50.0);
        assert!((known.at(0.0) - 0.14).abs() < 1e-6);
        assert!((known.variance - (0.5 / 49.0 + 0.01)).abs() < 1e-6);
    }

    #[test]
    fn weighings_make_it_surer_and_time_less_so() {
        let seen = |day: i32, cv: f64| SpreadSeen { day, cv, count: 50.0 };
        let one = follow(&[seen(14, 0.14)], 14);
        let two = follow(&[seen(14, 0.14), seen(21, 0.14)], 21);
        assert!(one.at(0.0) > 0.12 && two.at(0.0) > one.at(0.0) && two.at(0.0) < 0.14);
        assert!(two.variance < one.variance && one.variance < Spread::before().variance);
        assert!(follow(&[seen(14, 0.14)], 28).variance > one.variance);
        assert_eq!(follow(&[seen(30, 0.3)], 28), Spread::before());
        assert!(follow(&[seen(1, 0.14)], 4_000).variance <= Spread::before().variance);
    }

    /// From a table of the bell curve: 5 % lie below −1.645, 68.27 % within one deviation.
    #[test]
    fn birds_lie_where_a_lognormal_law_has_them() {
        let birds = Birds::of(0.10);
        assert!((birds.between(0.0, birds.at(-1.645)) - 0.05).abs() < 1e-4);
        assert!((birds.between(birds.at(-1.0), birds.at(1.0)) - 0.6827).abs() < 1e-4);
        assert!((birds.between(0.0, f64::INFINITY) - 1.0).abs() < 1e-12);
        assert!(birds.at(-1.645) > 0.84 && birds.at(1.645) < 1.18);
        let alike = Birds::of(0.0);
        assert_eq!((alike.between(0.9, 1.1), alike.between(1.1, 1.2)), (1.0, 0.0));
        assert_eq!(alike.at(2.0), 1.0);
        assert_eq!(birds.between(1.2, 1.1), 0.0);
    }
}
