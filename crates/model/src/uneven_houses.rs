//! Invented houses with one planted cause of unevenness, or none: to measure with how often the book points at the true one.
//!
//! What a planted cause does to birds and to the book is our judgement, as rough as what growers write: half of the litter
//! goes unchecked, ticks come late without harm, boxes are few. It shows how the ranking works, not how causes share out.

use crate::chance::Draw;
use crate::deaths::{USUAL, Watch};
use crate::drill::{Change, Drill, deaths_by_age, steady};
use crate::uneven::{Cause, Evenness, Evidence, Ranked, Spread, evenness, named, ranked};
use crate::variance::components;
use crate::watching::{SWING, WATCHED};

/// A house.
#[derive(Clone, Copy, Debug)]
pub struct House {
    /// Names the set.
    pub seed: u64,
    /// The house.
    pub number: u32,
    /// What is planted.
    pub planted: Option<Cause>,
}

/// Spots, and birds weighed at each.
const SPOTS: [&str; 3] = ["door", "middle", "end"];
const BIRDS: u32 = 25;
/// The day of age of the weighing, and that from which on what is planted works.
const WEIGHED_D: i32 = 28;
const FROM_D: i32 = 14;
/// The usual spread within a spot, how houses differ in it (logarithm), and the usual spread between spots.
const WITHIN: f64 = 0.095;
const WITHIN_DIFFERS: f64 = 0.12;
const BETWEEN: f64 = 0.012;
/// A planted cause makes the spread within spots so much wider, or its spot so much lighter.
const WIDER: f64 = 1.5;
const LIGHTER: f64 = 0.12;
/// Deaths expected a day.
const DEATHS: f64 = 2.0;

/// What a house's book comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// How even the flock is.
    pub evenness: Evenness,
    /// The causes that the book speaks of.
    pub ranked: Vec<Ranked>,
    /// The causes named.
    pub named: Vec<Ranked>,
}

impl House {
    fn normal(self, day: u32, n: u32) -> f64 {
        Draw { seed: self.seed, scenario: self.number, stream: 40, day, n }.normal()
    }

    fn is(self, cause: Cause) -> bool {
        self.planted == Some(cause)
    }

    /// The spot that a local cause works at.
    fn spot(self) -> usize {
        self.number as usize % SPOTS.len()
    }

    /// Weights by spot.
    fn weights(self) -> Vec<Vec<f64>> {
        let is_everywhere = self.planted.is_some_and(|cause| cause != Cause::WetSpot);
        let within =
            WITHIN * (WITHIN_DIFFERS * self.normal(0, 0)).exp() * if is_everywhere { WIDER } else { 1.0 };
        let of_spot = |spot: usize| {
            let lighter = if self.is(Cause::WetSpot) && spot == self.spot() { LIGHTER } else { 0.0 };
            let mean = 1500.0 * (1.0 - lighter + BETWEEN * self.normal(1, spot as u32));
            (0..BIRDS).map(|bird| mean * (1.0 + within * self.normal(2 + spot as u32, bird))).collect()
        };
        (0..SPOTS.len()).map(of_spot).collect()
    }

    /// What was written.
    fn evidence(self, weights: &[Vec<f64>]) -> Evidence {
        Evidence {
            arrival: Some(self.arrival()),
            feeders_short: self.short(Cause::FeederSpace, 10),
            drinkers_short: self.short(Cause::DrinkerSpace, 11),
            guard_late_d: Some(self.guard_late()),
            swings: Some(self.swings()),
            deaths: self.deaths(),
            litter: self.litter(),
            lightest: lightest(weights),
        }
    }

    /// Forty chicks weighed as they came.
    fn arrival(self) -> Spread {
        let wider = if self.is(Cause::Arrival) { WIDER } else { 1.0 };
        let chicks: Vec<f64> =
            (0..40).map(|chick| 42.0 * (1.0 + 0.08 * wider * self.normal(20, chick))).collect();
        Spread { variation: crate::weighing::variation(&chicks).unwrap_or_default(), n: 40.0 }
    }

    /// What lacks: a tenth here and there, three in ten for ten days where it is planted.
    fn short(self, cause: Cause, stream: u32) -> Vec<f64> {
        let planted = |day: i32| if self.is(cause) && day >= FROM_D { 0.3 } else { 0.0 };
        let noise = |day: i32| 0.06 * self.normal(100 + day as u32, stream);
        (0..WEIGHED_D).map(|day| (planted(day) + noise(day)).clamp(0.0, 1.0)).collect()
    }

    /// Ticks come up to a day late without harm.
    fn guard_late(self) -> f64 {
        let planted = if self.is(Cause::GuardLate) { 4.0 } else { 0.0 };
        (planted + 0.8 * self.normal(30, 0)).max(0.0).round()
    }

    fn swings(self) -> f64 {
        let at = WATCHED.iter().position(|one| one.name == SWING.name).unwrap_or_default();
        let days = match self.is(Cause::Swings) {
            true => {
                let change = Some(Change { from: FROM_D, by: 9.0 });
                Drill { seed: self.seed, batch: self.number, stream: at as u32 + 1 }
                    .seen(&SWING, WEIGHED_D, change)
            }
            false => steady(self.seed, self.number, at, WEIGHED_D),
        };
        let steps = SWING.tuning.follow(&days);
        steps.iter().map(|step| step.sum / SWING.tuning.look).fold(0.0, f64::max)
    }

    fn deaths(self) -> Option<f64> {
        let expected = deaths_by_age(DEATHS, 42);
        let watch = Watch::over(&expected, USUAL)?;
        let risen = |(day, mean): (usize, &f64)| {
            let sick = self.is(Cause::SickSpell) && (FROM_D..FROM_D + 7).contains(&(day as i32));
            mean * if sick { 5.0 } else { 1.0 }
        };
        let means: Vec<f64> = expected.iter().enumerate().map(risen).collect();
        let found = Drill { seed: self.seed, batch: self.number, stream: 0 }.deaths(&means, Some(3.0));
        let sums = watch.sums(&found[..WEIGHED_D as usize]);
        sums.iter().max().map(|most| f64::from(*most) / f64::from(watch.act))
    }

    /// A handful at each spot every third day of the last two weeks, one in three forgotten.
    fn litter(self) -> Vec<(String, f64)> {
        let handful = |day: i32, spot: usize| {
            let wet = if self.is(Cause::WetSpot) && spot == self.spot() { 1.5 } else { 0.3 };
            let n = 50 + spot as u32;
            let is_felt = self.normal(day as u32, n) > -0.43;
            let grade = (wet + 0.5 * self.normal(day as u32, n + 10)).round().clamp(0.0, 2.0);
            is_felt.then(|| (SPOTS[spot].to_owned(), grade))
        };
        (0..WEIGHED_D)
            .step_by(3)
            .flat_map(|day| (0..SPOTS.len()).filter_map(move |spot| handful(day, spot)))
            .collect()
    }

    /// What its book comes to; `None` where nothing can be said of its weights.
    pub fn found(self) -> Option<Found> {
        let weights = self.weights();
        let evenness = evenness(&components(&weights)?);
        let ranked = ranked(&self.evidence(&weights));
        let named = named(evenness, &ranked);
        Some(Found { evenness, ranked, named })
    }
}

fn lightest(weights: &[Vec<f64>]) -> Option<String> {
    let mean = |spot: &Vec<f64>| crate::weighing::mean(spot).unwrap_or_default();
    let at =
        (0..weights.len()).min_by(|one, other| mean(&weights[*one]).total_cmp(&mean(&weights[*other])))?;
    Some(SPOTS[at].to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn share(planted: Option<Cause>, holds: impl Fn(&Found) -> bool) -> f64 {
        let houses = 100;
        let found = (0..houses).filter_map(|number| House { seed: 11, number, planted }.found());
        found.filter(holds).count() as f64 / f64::from(houses)
    }

    #[test]
    fn none_is_named_where_none_is_planted() {
        let named = share(None, |found| !found.named.is_empty());
        assert!(named <= 0.08, "{named}");
    }

    #[test]
    fn what_is_planted_comes_first() {
        for cause in Cause::ALL {
            let first = share(Some(cause), |found| found.ranked.first().map(|one| one.cause) == Some(cause));
            assert!(first >= 0.7, "{cause:?} {first}");
        }
    }
}
