//! Birds with growth of their own, on a clock that the house slows down.
//!
//! Each bird follows a Gompertz curve with its own hatch weight, end weight and rate. The clock of a spot in the house goes
//! on by a day a day where nothing is amiss, and by less where the birds were thirsty, hungry, hot or sick, so that what was
//! missed is not caught up.

use crate::luck::Luck;

/// The spots of a house, by how a grower calls them.
pub(crate) const SPOTS: [&str; 3] = ["by the door", "middle", "far end"];

/// End weights of cocks and hens, g, and their rates a day.
const SEXES: [(f64, f64); 2] = [(5_600.0, 0.0405), (4_650.0, 0.0412)];

/// Spread of end weights between birds of a sex, of rates, and of hatch weights, as shares.
const SPREADS: [f64; 3] = [0.07, 0.025, 0.08];

/// A bird's own curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Bird {
    hatch_g: f64,
    end_g: f64,
    rate: f64,
}

impl Bird {
    /// Weight, g, at a time of the spot's clock, days.
    pub(crate) fn weight_g(&self, clock: f64) -> f64 {
        let left = (-self.rate * clock).exp();
        // The Gompertz curve through the hatch weight, as a mean of logarithms.
        (left * self.hatch_g.ln() + (1.0 - left) * self.end_g.ln()).exp()
    }
}

/// What the birds of a batch have in common.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Brood {
    hatch_g: f64,
    vigour: f64,
    pace: f64,
    typical: Vec<Bird>,
}

/// Where the middles of four equal parts of the bell curve lie, and of two.
const QUARTERS: [f64; 4] = [-1.150, -0.319, 0.319, 1.150];
const HALVES: [f64; 2] = [-0.8, 0.8];

impl Brood {
    /// Chicks of parents of some age, weeks: young parents lay small eggs.
    pub(crate) fn of(parent_weeks: f64, luck: &mut Luck) -> Brood {
        let hatch_g = 36.0 + 0.18 * (parent_weeks - 25.0).clamp(0.0, 30.0) + 0.5 * luck.normal();
        let mut brood =
            Brood { hatch_g, vigour: luck.factor(0.05), pace: luck.factor(0.02), typical: Vec::new() };
        let both = |sex| QUARTERS.iter().flat_map(move |end| HALVES.map(|rate| (sex, *end, rate)));
        brood.typical =
            (0..2).flat_map(both).map(|(sex, end, rate)| brood.bird(sex, [end, rate, 0.0])).collect();
        brood
    }

    /// Mean weight of a hatched chick, g.
    pub(crate) fn hatch_g(&self) -> f64 {
        self.hatch_g
    }

    fn bird(&self, sex: usize, off: [f64; 3]) -> Bird {
        let (end_g, rate) = SEXES[sex];
        Bird {
            hatch_g: self.hatch_g * (SPREADS[2] * off[2]).exp(),
            end_g: end_g * self.vigour * (SPREADS[0] * off[0]).exp(),
            rate: rate * self.pace * (SPREADS[1] * off[1]).exp(),
        }
    }

    /// Some bird of the flock, and whether it is a hen.
    pub(crate) fn any(&self, luck: &mut Luck) -> (Bird, bool) {
        let is_hen = luck.happens(0.5);
        let sex = usize::from(is_hen);
        (self.bird(sex, [luck.normal(), luck.normal(), luck.normal()]), is_hen)
    }

    /// Mean weight, g, of a flock on a clock: of typical birds, which stand for equal parts of the flock.
    pub(crate) fn mean_g(&self, clock: f64) -> f64 {
        self.typical.iter().map(|bird| bird.weight_g(clock)).sum::<f64>() / self.typical.len() as f64
    }
}

/// Feed to stay as heavy as a bird is, kg a day at 1 kg, by metabolic weight.
const TO_STAY: f64 = 0.036;

/// Feed for a gram of gain, g.
const TO_GAIN: f64 = 1.25;

/// What is on a bird's mind today.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Mood {
    /// Degrees by which it is too hot.
    pub(crate) too_hot_c: f64,
    /// Share of its appetite that sickness and thirst leave.
    pub(crate) appetite: f64,
}

/// Birds of one spot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spot {
    /// Its clock, days.
    pub(crate) clock: f64,
    /// How well it does beside the other spots.
    pub(crate) better: f64,
}

/// What a bird of a spot would eat on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Hunger {
    to_stay_kg: f64,
    to_gain_kg: f64,
    too_hot_c: f64,
    /// What it wants, kg.
    pub(crate) wants_kg: f64,
    /// What it weighs, g.
    pub(crate) weight_g: f64,
}

impl Spot {
    /// What a mean bird here wants.
    pub(crate) fn hunger(&self, brood: &Brood, mood: Mood) -> Hunger {
        let weight_g = brood.mean_g(self.clock);
        let gain_g = brood.mean_g(self.clock + self.better) - weight_g;
        let to_stay_kg = TO_STAY * (weight_g / 1000.0).powf(0.75);
        let to_gain_kg = TO_GAIN * gain_g / 1000.0;
        let heat = (1.0 - 0.012 * mood.too_hot_c).max(0.4);
        let wants_kg = (to_stay_kg + to_gain_kg) * heat * mood.appetite;
        Hunger { to_stay_kg, to_gain_kg, too_hot_c: mood.too_hot_c, wants_kg, weight_g }
    }

    /// Goes on by what was eaten: what is left after staying alive becomes growth, less of it in heat.
    pub(crate) fn live_on(&mut self, hunger: &Hunger, eaten_kg: f64) {
        let share = (eaten_kg - hunger.to_stay_kg) / hunger.to_gain_kg.max(1e-9);
        let in_heat = (1.0 - 0.008 * hunger.too_hot_c).max(0.5);
        self.clock += (self.better * share * in_heat).clamp(0.0, 1.1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CALM: Mood = Mood { too_hot_c: 0.0, appetite: 1.0 };

    fn after(days: i32, mood: Mood) -> (f64, f64) {
        let mut brood = Brood::of(40.0, &mut Luck::of(1, 1));
        (brood.vigour, brood.pace) = (1.0, 1.0);
        brood.typical.clear();
        brood.typical.push(brood.bird(0, [0.0; 3]));
        brood.typical.push(brood.bird(1, [0.0; 3]));
        let mut spot = Spot { clock: 0.0, better: 1.0 };
        let mut eaten = 0.0;
        for _ in 0..days {
            let hunger = spot.hunger(&brood, mood);
            spot.live_on(&hunger, hunger.wants_kg);
            eaten += hunger.wants_kg;
        }
        (brood.mean_g(spot.clock), eaten * 1000.0)
    }

    #[test]
    fn a_calm_batch_weighs_and_eats_what_such_birds_do() {
        let (weight, feed) = after(42, CALM);
        assert!((2_000.0..2_350.0).contains(&weight), "{weight}");
        let conversion = feed / weight;
        assert!((1.6..1.95).contains(&conversion), "{conversion}");
    }

    #[test]
    fn heat_costs_more_growth_than_feed() {
        let (calm, calm_feed) = after(42, CALM);
        let (hot, hot_feed) = after(42, Mood { too_hot_c: 5.0, ..CALM });
        assert!(hot / calm < hot_feed / calm_feed && hot_feed < calm_feed);
    }

    #[test]
    fn who_eats_nothing_grows_nothing() {
        let brood = Brood::of(40.0, &mut Luck::of(1, 1));
        let mut spot = Spot { clock: 20.0, better: 1.0 };
        let hunger = spot.hunger(&brood, CALM);
        spot.live_on(&hunger, 0.0);
        assert_eq!(spot.clock, 20.0);
    }

    #[test]
    fn typical_birds_stand_for_the_flock() {
        let brood = Brood::of(40.0, &mut Luck::of(3, 1));
        let mut luck = Luck::of(4, 1);
        let birds = 20_000;
        let mean = (0..birds).map(|_| brood.any(&mut luck).0.weight_g(35.0)).sum::<f64>() / f64::from(birds);
        assert!((mean / brood.mean_g(35.0) - 1.0).abs() < 0.01, "{mean} {}", brood.mean_g(35.0));
    }
}
