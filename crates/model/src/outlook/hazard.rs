//! How many of the birds alive are lost on a day: the plan's own hazard by age, times a factor that this batch tells.
//!
//! The factor's law is a gamma law, updated by what was lost against what was expected. Deaths clump, so a day with many
//! expected tells less than as many days with one; and what the first week told is half forgotten a fortnight later. On days to come it goes on being forgotten.
//!
//! Source: [west-harrison-1997] (discounting, from memory).

/// What is known of the factor between this batch's hazard and the plan's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hazard {
    /// Shape of its gamma law.
    pub shape: f64,
    /// Rate of its gamma law; the factor's mean is shape / rate.
    pub rate: f64,
}

/// Size of the negative binomial law of a day's deaths: variance = mean + mean² / 4. Our judgement, within the usual 2 to 6.
pub const CLUMPING: f64 = 4.0;

/// What is left of all that was learnt, after a day. Our judgement: half is left after a fortnight.
const KEPT: f64 = 0.95;

impl Hazard {
    /// Before anything is seen: the plan's own hazard, as unsure as losses are between batches.
    ///
    /// A gamma law of mean 1 with the coefficient of variation of a lognormal law of deviation
    /// [`crate::scenarios::LOSSES_SPREAD`].
    pub fn before() -> Hazard {
        let spread = crate::scenarios::LOSSES_SPREAD.value;
        let shape = 1.0 / (spread * spread).exp_m1();
        Hazard { shape, rate: shape }
    }

    /// The mean of the factor.
    pub fn mean(self) -> f64 {
        self.shape / self.rate
    }

    /// After a day on which `lost` were lost where the plan expected `expected`, above 0, of the birds alive.
    pub fn see(self, lost: f64, expected: f64) -> Hazard {
        let told = 1.0 / (1.0 + expected / CLUMPING);
        let kept = self.forget();
        Hazard { shape: kept.shape + told * lost, rate: kept.rate + told * expected }
    }

    /// After a day on which nothing was written: what was learnt fades towards what stood before.
    pub fn forget(self) -> Hazard {
        let before = Hazard::before();
        let fade = |now: f64, before: f64| before + KEPT * (now - before);
        Hazard { shape: fade(self.shape, before.shape), rate: fade(self.rate, before.rate) }
    }

    /// The points of its law.
    pub fn points(self) -> Points {
        let ninth = 1.0 / (9.0 * self.shape);
        Points { mean: self.mean(), middle: 1.0 - ninth, deviation: ninth.sqrt() }
    }
}

/// The points of the law of the factor.
///
/// Source: [wilson-hilferty-1931]: the cube root of a gamma law is next to a bell curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Points {
    mean: f64,
    middle: f64,
    deviation: f64,
}

impl Points {
    /// The factor below which lies the share of a bell curve that `z` deviations leave below.
    pub fn at(self, z: f64) -> f64 {
        let root = (self.middle + z * self.deviation).max(0.0);
        self.mean * root * root * root
    }
}

/// (count + size) / (count + 1) of the first counts: the law goes from one to the next by it.
const STEPS: [f64; 6] = [4.0, 5.0 / 2.0, 6.0 / 3.0, 7.0 / 4.0, 8.0 / 5.0, 9.0 / 6.0];

/// How many are lost on a day, out of one number between 0 and 1, by the clumped law of deaths.
///
/// - `expected`: mean of the law, 0 or more
/// - `alive`: no more than so many
pub fn lost(expected: f64, share: f64, alive: f64) -> f64 {
    let fresh = CLUMPING / (CLUMPING + expected);
    // To the power of the size, which is 4.
    let mut chance = (fresh * fresh) * (fresh * fresh);
    let (mut below, mut count, again) = (chance, 0.0, 1.0 - fresh);
    for step in STEPS {
        if below >= share || count >= alive {
            return count;
        }
        chance *= step * again;
        below += chance;
        count += 1.0;
    }
    while below < share && count < alive && chance > 1e-12 {
        chance *= (count + CLUMPING) / (count + 1.0) * again;
        below += chance;
        count += 1.0;
    }
    count
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::counts::Law;
    use crate::quantile;

    #[test]
    fn the_batch_tells_its_own_hazard() {
        let many = (0..20).fold(Hazard::before(), |known, _| known.see(3.0, 1.0));
        assert!(many.mean() > 2.0 && many.mean() < 3.0, "{}", many.mean());
        let few = (0..20).fold(Hazard::before(), |known, _| known.see(0.0, 1.0));
        assert!(few.mean() < 0.3);
        let faded = (0..200).fold(many, |known, _| known.forget());
        assert!((faded.mean() - 1.0).abs() < 0.001, "{}", faded.mean());
        assert_eq!(Hazard::before().mean(), 1.0);
    }

    /// One day of many expected says less than many days of one.
    #[test]
    fn a_clump_tells_less() {
        let spread = |known: Hazard| 1.0 / known.shape;
        let clump = Hazard::before().see(20.0, 20.0);
        let days = (0..20).fold(Hazard::before(), |known, _| known.see(1.0, 1.0));
        assert!(spread(clump) > spread(days));
    }

    #[test]
    fn counts_follow_the_law_of_clumped_deaths() {
        let law = Law::NegativeBinomial { mean: 2.5, size: CLUMPING };
        for share in [0.05, 0.3, 0.5, 0.77, 0.95, 0.999] {
            assert_eq!(lost(2.5, share, 1e6), law.quantile(share).unwrap() as f64, "{share}");
        }
        assert_eq!((lost(0.0, 0.99, 50.0), lost(40.0, 0.999, 5.0)), (0.0, 5.0));
    }

    /// Against the library's points of the gamma law.
    #[test]
    fn the_cube_root_is_next_to_a_bell_curve() {
        let known = Hazard { shape: 8.0, rate: 4.0 };
        for z in [-1.645, 0.0, 1.645] {
            let exact = quantile::gamma(quantile::normal_share_below(z), 8.0).unwrap() / 4.0;
            assert!((known.points().at(z) / exact - 1.0).abs() < 0.005, "{z}");
        }
    }
}
