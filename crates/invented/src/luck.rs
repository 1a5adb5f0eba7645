//! Draws from a seed, one after the other. Each matter has a stream of its own, so that a drinker line that fails changes
//! nothing of the weather.

use std::f64::consts::TAU;

/// A stream of draws.
#[derive(Clone, Debug)]
pub(crate) struct Luck(u64);

impl Luck {
    /// The stream of a matter.
    pub(crate) fn of(seed: u64, matter: u64) -> Luck {
        let mut mixed = Luck(seed ^ matter.wrapping_mul(0xD6E8_FEB8_6659_FD93));
        Luck(mixed.bits())
    }

    /// 64 random bits: SplitMix64.
    ///
    /// Source: Steele, Lea and Flood, Fast splittable pseudorandom number generators (2014), constants from memory.
    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// Between 0 and 1, neither of them.
    pub(crate) fn unit(&mut self) -> f64 {
        ((self.bits() >> 12) as f64 + 0.5) / (1u64 << 52) as f64
    }

    /// Between two numbers.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// A whole number from `low` to `high`, both included.
    pub(crate) fn whole(&mut self, low: i32, high: i32) -> i32 {
        low + (self.unit() * f64::from(high - low + 1)) as i32
    }

    /// Whether something with this chance happens.
    pub(crate) fn happens(&mut self, chance: f64) -> bool {
        self.unit() < chance
    }

    /// A standard normal number, by the transform of Box and Muller 1958.
    pub(crate) fn normal(&mut self) -> f64 {
        let (radius, turn) = (self.unit(), self.unit());
        (-2.0 * radius.ln()).sqrt() * (TAU * turn).cos()
    }

    /// A factor around 1 whose logarithm is normal with this spread; its mean is 1.
    pub(crate) fn factor(&mut self, spread: f64) -> f64 {
        (spread * self.normal() - 0.5 * spread * spread).exp()
    }

    /// How often something rare happens: Poisson, for means of a few dozen at most, by Knuth's product of draws.
    pub(crate) fn times(&mut self, mean: f64) -> u32 {
        let floor = (-mean.clamp(0.0, 100.0)).exp();
        let (mut product, mut count) = (self.unit(), 0);
        while product > floor {
            product *= self.unit();
            count += 1;
        }
        count
    }

    /// Of so many, for how many something with this chance happens.
    pub(crate) fn of_many(&mut self, many: u32, chance: f64) -> u32 {
        (0..many).filter(|_| self.happens(chance)).count() as u32
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Within four standard errors.
    fn near(found: f64, want: f64, spread: f64, draws: u32) {
        let error = 4.0 * spread / f64::from(draws).sqrt();
        assert!((found - want).abs() < error, "{found} is not {want}");
    }

    #[test]
    fn draws_have_their_means_and_spreads() {
        let mut luck = Luck::of(1, 2);
        let draws = 40_000;
        let mut mean = |draw: &mut dyn FnMut(&mut Luck) -> f64| {
            (0..draws).map(|_| draw(&mut luck)).sum::<f64>() / f64::from(draws)
        };
        near(mean(&mut |luck| luck.unit()), 0.5, 0.29, draws);
        near(mean(&mut Luck::normal), 0.0, 1.0, draws);
        near(mean(&mut |luck| luck.normal().powi(2)), 1.0, 2f64.sqrt(), draws);
        near(mean(&mut |luck| luck.factor(0.5)), 1.0, 0.54, draws);
        near(mean(&mut |luck| f64::from(luck.times(3.0))), 3.0, 3f64.sqrt(), draws);
        near(mean(&mut |luck| f64::from(luck.of_many(20, 0.3))), 6.0, 4.2f64.sqrt(), draws);
        near(mean(&mut |luck| f64::from(luck.whole(1, 6))), 3.5, 1.71, draws);
    }

    #[test]
    fn seeds_and_matters_have_their_own_luck() {
        let first = |seed, matter| Luck::of(seed, matter).bits();
        assert_eq!(first(1, 1), first(1, 1));
        assert_ne!(first(1, 1), first(1, 2));
        assert_ne!(first(1, 1), first(2, 1));
    }
}
