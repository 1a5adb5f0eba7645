//! Why birds of a house weigh so unlike: what the book says for each cause that is known, brought to one scale.
//!
//! A strength of 1 is as much as a cause needs to be named; none is named of a flock that is even. All limits are our
//! judgement; how often the true cause comes first is told by `cargo run --example uneven_houses -p model`.

use crate::variance::{Components, Verdict};
use crate::weighing;

/// A cause of unevenness that leaves a trace in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cause {
    /// Chicks came in unlike weights.
    Arrival,
    /// Too few feeders for the birds.
    FeederSpace,
    /// Too few drinkers.
    DrinkerSpace,
    /// The guard was widened late.
    GuardLate,
    /// Cold nights after hot days.
    Swings,
    /// Litter wet at one spot.
    WetSpot,
    /// A spell with many deaths.
    SickSpell,
}

impl Cause {
    /// All.
    pub const ALL: [Cause; 7] = [
        Cause::Arrival,
        Cause::FeederSpace,
        Cause::DrinkerSpace,
        Cause::GuardLate,
        Cause::Swings,
        Cause::WetSpot,
        Cause::SickSpell,
    ];

    /// The stable name used in JSON and message keys.
    pub fn name(self) -> &'static str {
        match self {
            Cause::Arrival => "arrival",
            Cause::FeederSpace => "feeder-space",
            Cause::DrinkerSpace => "drinker-space",
            Cause::GuardLate => "guard-late",
            Cause::Swings => "swings",
            Cause::WetSpot => "wet-spot",
            Cause::SickSpell => "sick-spell",
        }
    }
}

/// How many birds or boxes a spread is of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Coefficient of variation, a share.
    pub variation: f64,
    /// What it is of.
    pub n: f64,
}

/// What the book holds up to a weighing. What was not written is none, or an empty list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Evidence {
    /// The spread of single chicks as they came.
    pub arrival: Option<Spread>,
    /// By day, the share of the feeders that were lacking.
    pub feeders_short: Vec<f64>,
    /// By day, the share of the drinkers that were lacking.
    pub drinkers_short: Vec<f64>,
    /// Days by which the guard was widened late.
    pub guard_late_d: Option<f64>,
    /// The highest memory of the watch over swings, over its line of looking.
    pub swings: Option<f64>,
    /// The highest memory of the watch over deaths, over its line of acting.
    pub deaths: Option<f64>,
    /// Handfuls of litter of the last two weeks by spot: 0 falls apart, 1 holds together, 2 cakes.
    pub litter: Vec<(String, f64)>,
    /// The spot whose birds are lightest.
    pub lightest: Option<String>,
}

/// What is usual of chicks as they come.
const ARRIVAL_USUAL: f64 = 0.08;
/// So much wider than usual, as a share of usual, is enough.
const ARRIVAL_WIDER: f64 = 0.35;
/// A spread has to be so many standard errors wider than usual.
const ERRORS: f64 = 2.0;
/// A tenth lacking is within what counting and growing birds make of any house.
const SHORT_USUAL: f64 = 0.1;
/// Days on which all would lack.
const SHORT_DAYS: f64 = 1.0;
/// Days late.
const LATE_DAYS: f64 = 2.0;
/// Of the line of acting over deaths.
const DEATHS_OF_ACT: f64 = 0.8;
/// Grades by which one spot is wetter than the others.
const WETTER: f64 = 0.8;
/// A handful differs from the next by this much.
const HANDFUL: f64 = 0.5;

impl Evidence {
    /// How strongly the book speaks for a cause; `None` where it says nothing about it.
    pub fn strength(&self, cause: Cause) -> Option<f64> {
        match cause {
            Cause::Arrival => self.arrival.map(arrival),
            Cause::FeederSpace => short(&self.feeders_short),
            Cause::DrinkerSpace => short(&self.drinkers_short),
            Cause::GuardLate => self.guard_late_d.map(|days| days / LATE_DAYS),
            Cause::Swings => self.swings,
            Cause::WetSpot => self.wet_spot(),
            Cause::SickSpell => self.deaths.map(|memory| memory / DEATHS_OF_ACT),
        }
    }

    /// One spot wetter than all others together; it counts half where the birds of another spot are lightest.
    fn wet_spot(&self) -> Option<f64> {
        let spots: std::collections::BTreeSet<&str> =
            self.litter.iter().map(|(spot, _)| spot.as_str()).collect();
        let worst = spots
            .iter()
            .filter_map(|spot| Some((self.wetter(spot)?, *spot)))
            .max_by(|one, other| one.0.total_cmp(&other.0))?;
        let is_elsewhere = self.lightest.as_deref().is_some_and(|lightest| lightest != worst.1);
        Some(worst.0 * if is_elsewhere { 0.5 } else { 1.0 })
    }

    fn wetter(&self, spot: &str) -> Option<f64> {
        let of = |here: bool| -> Vec<f64> {
            self.litter.iter().filter(|(one, _)| (one == spot) == here).map(|(_, grade)| *grade).collect()
        };
        let (here, there) = (of(true), of(false));
        let by = weighing::mean(&here)? - weighing::mean(&there)?;
        let error = HANDFUL * (1.0 / here.len() as f64 + 1.0 / there.len() as f64).sqrt();
        Some((by / WETTER).min(by / error / ERRORS))
    }
}

fn arrival(spread: Spread) -> f64 {
    let wider = spread.variation / ARRIVAL_USUAL;
    let error = (0.5 / (spread.n - 1.0).max(1.0)).sqrt();
    ((wider - 1.0) / ARRIVAL_WIDER).min(wider.ln() / error / ERRORS)
}

fn short(days: &[f64]) -> Option<f64> {
    let lacking: f64 = days.iter().map(|share| (share - SHORT_USUAL).max(0.0)).sum();
    (!days.is_empty()).then_some(lacking / SHORT_DAYS)
}

/// A cause that the book speaks of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ranked {
    /// Which.
    pub cause: Cause,
    /// How strongly; from 1 on it is named as a likely cause.
    pub strength: f64,
}

/// The causes that the book speaks of, the strongest first.
pub fn ranked(evidence: &Evidence) -> Vec<Ranked> {
    let strength = |cause: Cause| Some(Ranked { cause, strength: evidence.strength(cause)? });
    let mut all: Vec<Ranked> = Cause::ALL.into_iter().filter_map(strength).collect();
    all.sort_by(|one, other| other.strength.total_cmp(&one.strength));
    all
}

/// How even a flock is, by what was weighed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Evenness {
    /// Too little was weighed.
    NotEnoughWeighed,
    /// As even as most.
    Even,
    /// Birds differ within every spot.
    WithinSpots,
    /// Spots differ from each other.
    BetweenSpots,
}

/// A spread of all birds from which on a flock is uneven (common practice: 10 % is good, 12 % is not).
const UNEVEN_FROM: f64 = 0.12;
/// A spread between spots from which on they differ by more than a grower would shrug at.
const SPOTS_DIFFER_FROM: f64 = 0.04;

/// How even a flock is.
pub fn evenness(parts: &Components) -> Evenness {
    let Some(((between, _), (within, _))) = parts.between_variation().zip(parts.within_variation()) else {
        return Evenness::NotEnoughWeighed;
    };
    let is_told_apart = parts.between_interval.0 > 0.0 && between >= SPOTS_DIFFER_FROM;
    match parts.verdict() {
        Verdict::TooFewSpots | Verdict::TooFewBirds => Evenness::NotEnoughWeighed,
        _ if is_told_apart => Evenness::BetweenSpots,
        // How far spots differ may be anybody's guess, and the birds uneven all the same.
        _ if between.hypot(within) >= UNEVEN_FROM => Evenness::WithinSpots,
        Verdict::CouldBeAnything => Evenness::NotEnoughWeighed,
        Verdict::Told => Evenness::Even,
    }
}

/// The causes named: those that reach 1, of a flock that is uneven in the way they make it. What works on the whole house does
/// not make spots differ.
pub fn named(evenness: Evenness, ranked: &[Ranked]) -> Vec<Ranked> {
    let fits = |cause: Cause| match evenness {
        Evenness::NotEnoughWeighed | Evenness::Even => false,
        Evenness::WithinSpots => cause != Cause::WetSpot,
        Evenness::BetweenSpots => !matches!(cause, Cause::Arrival | Cause::Swings | Cause::SickSpell),
    };
    ranked.iter().filter(|one| one.strength >= 1.0 && fits(one.cause)).copied().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn strength(cause: Cause, evidence: Evidence) -> f64 {
        evidence.strength(cause).unwrap()
    }

    #[test]
    fn the_book_says_nothing_of_what_was_not_written() {
        assert!(ranked(&Evidence::default()).is_empty());
    }

    #[test]
    fn each_cause_reaches_1_where_it_should() {
        let late =
            |days| strength(Cause::GuardLate, Evidence { guard_late_d: Some(days), ..Evidence::default() });
        assert_eq!((late(1.0), late(2.0)), (0.5, 1.0));
        let short = |share: f64, days| {
            strength(Cause::FeederSpace, Evidence { feeders_short: vec![share; days], ..Evidence::default() })
        };
        assert!(short(0.1, 40) < 1e-9 && (short(0.3, 5) - 1.0).abs() < 1e-9);
        let came = |variation, n| {
            strength(
                Cause::Arrival,
                Evidence { arrival: Some(Spread { variation, n }), ..Evidence::default() },
            )
        };
        assert!(came(0.08, 100.0).abs() < 1e-12);
        assert!((came(0.108, 100.0) - 1.0).abs() < 1e-9 && came(0.108, 5.0) < 1.0, "few boxes tell little");
    }

    #[test]
    fn a_wet_spot_counts_where_the_light_birds_are() {
        let litter = |wet: f64| {
            let spot = |name: &str, grade| vec![(name.to_owned(), grade); 6];
            [spot("door", wet), spot("middle", 0.0), spot("end", 0.0)].concat()
        };
        let of = |wet, lightest: &str| {
            let lightest = Some(lightest.to_owned());
            strength(Cause::WetSpot, Evidence { litter: litter(wet), lightest, ..Evidence::default() })
        };
        assert!(of(2.0, "door") > 1.0 && of(2.0, "end") == of(2.0, "door") / 2.0 && of(0.0, "door") <= 0.0);
    }

    #[test]
    fn an_even_flock_has_no_cause() {
        let strong = [Ranked { cause: Cause::Swings, strength: 3.0 }];
        assert!(
            named(Evenness::Even, &strong).is_empty()
                && named(Evenness::NotEnoughWeighed, &strong).is_empty()
        );
        assert_eq!(named(Evenness::WithinSpots, &strong).len(), 1);
        assert!(named(Evenness::BetweenSpots, &strong).is_empty(), "a cold night is cold for all spots");
        let wet = [Ranked { cause: Cause::WetSpot, strength: 3.0 }];
        assert!(
            named(Evenness::WithinSpots, &wet).is_empty() && named(Evenness::BetweenSpots, &wet).len() == 1
        );
    }

    #[test]
    fn evenness_by_what_was_weighed() {
        let spot = |mean: f64, cv: f64| -> Vec<f64> {
            (0..12).map(|at| mean * (1.0 + cv * (f64::from(at) - 5.5) / 3.6)).collect()
        };
        let of = |spots: &[Vec<f64>]| evenness(&crate::variance::components(spots).unwrap());
        assert_eq!(of(&[spot(1000.0, 0.08), spot(1000.0, 0.08), spot(1005.0, 0.08)]), Evenness::Even);
        assert_eq!(of(&[spot(1000.0, 0.16), spot(1000.0, 0.16), spot(1005.0, 0.16)]), Evenness::WithinSpots);
        assert_eq!(of(&[spot(1000.0, 0.08), spot(1010.0, 0.08), spot(800.0, 0.08)]), Evenness::BetweenSpots);
        assert_eq!(of(&[spot(1000.0, 0.08), spot(1010.0, 0.08)]), Evenness::NotEnoughWeighed);
    }
}
