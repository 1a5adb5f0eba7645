//! Invented batches on which nothing is wrong, or on which something goes wrong on a known day: to measure a watch with.
//!
//! They are rougher than what the watch believes: batches differ in how noisy they are, days hang together, some days are
//! wild, and one day in ten is not written down. How much is our judgement.

use std::collections::BTreeMap;

use crate::chance::Draw;
use crate::counts::Law;
use crate::deaths::{Level, USUAL, Watch};
use crate::quantile::normal_share_below;
use crate::surprise::Seen;
use crate::watching::{self, FEED, WATCHED, WATER, WATER_TO_FEED, Watched};

/// Which batch of which set.
#[derive(Clone, Copy, Debug)]
pub struct Drill {
    /// Names the set.
    pub seed: u64,
    /// The batch.
    pub batch: u32,
    /// What is drawn: no two signals share their luck.
    pub stream: u32,
}

/// A change that stays.
#[derive(Clone, Copy, Debug)]
pub struct Change {
    /// The first day of it.
    pub from: i32,
    /// By how much, in the signal's own unit.
    pub by: f64,
}

/// The noise of batches differs by this much (standard deviation of its logarithm).
const NOISE_DIFFERS: f64 = 0.3;
/// What of one day's noise is still there on the next, and how much of the noise is of that kind.
const HANGS_ON: f64 = 0.6;
const HANGING_SHARE: f64 = 0.3;
/// Degrees of freedom of a day's noise: so few have wild days.
const FREEDOM: u32 = 5;
/// A standard normal draw below this is a day that was not written: one in ten.
const NOT_WRITTEN: f64 = -1.281_551_565_544_6;
/// Where a tuning allows its batches no level of their own, they still have some of their noise.
const LEAST_LEVEL: f64 = 0.3;

impl Drill {
    fn normal(self, day: u32, n: u32) -> f64 {
        Draw { seed: self.seed, scenario: self.batch, stream: self.stream, day, n }.normal()
    }

    /// A number with wild days, of standard deviation 1.
    fn wild(self, day: u32) -> f64 {
        let squares: f64 = (2..2 + FREEDOM).map(|n| self.normal(day, n).powi(2)).sum();
        let freedom = f64::from(FREEDOM);
        self.normal(day, 1) / (squares / freedom).sqrt() * ((freedom - 2.0) / freedom).sqrt()
    }

    /// What is measured of a batch over so many days.
    pub fn seen(self, watched: &Watched, days: i32, change: Option<Change>) -> Vec<Seen> {
        let tuning = &watched.tuning;
        let level = tuning.expected + self.normal(0, 10) * tuning.start.max(LEAST_LEVEL * tuning.noise);
        let noise = tuning.noise * (NOISE_DIFFERS * self.normal(0, 11)).exp();
        let (mut moved, mut hanging) = (0.0, 0.0);
        let mut seen = Vec::new();
        for day in (0..days).map(|day| day as u32) {
            moved += tuning.drift * self.normal(day, 12);
            let fresh = (1.0 - HANGS_ON * HANGS_ON).sqrt() * self.normal(day, 13);
            hanging = HANGS_ON * hanging + fresh;
            let own = HANGING_SHARE.sqrt() * hanging + (1.0 - HANGING_SHARE).sqrt() * self.wild(day);
            let error = watched.error.sqrt() * self.normal(day, 14);
            let by = change.filter(|change| day as i32 >= change.from).map_or(0.0, |change| change.by);
            let is_written = day as i32 % watched.every_d == watched.every_d - 1
                && (watched.every_d > 1 || self.normal(day, 15) > NOT_WRITTEN);
            if is_written {
                let value = level + moved + noise * own + error + by;
                seen.push(Seen { day: day as i32, value, error: watched.error });
            }
        }
        seen
    }

    /// Deaths of days by their laws; none on days that were not written.
    pub fn deaths(self, expected: &[f64], size: Option<f64>) -> Vec<Option<u32>> {
        let of_day = |(day, mean): (u32, &f64)| {
            let share = normal_share_below(self.normal(day, 0));
            let count = Law::of(*mean, size).quantile(share)?;
            u32::try_from(count).ok().filter(|_| self.normal(day, 15) > NOT_WRITTEN)
        };
        (0..).zip(expected).map(of_day).collect()
    }
}

/// What steady batches measure of one of [`WATCHED`], by its place there; water to feed comes of their water and their feed.
pub fn steady(seed: u64, batch: u32, at: usize, days: i32) -> Vec<Seen> {
    let drill = |at: usize| Drill { seed, batch, stream: at as u32 + 1 };
    let of = |watched: &Watched| WATCHED.iter().position(|one| one.name == watched.name);
    let (true, Some(water), Some(feed)) = (WATCHED[at].name == WATER_TO_FEED.name, of(&WATER), of(&FEED))
    else {
        return drill(at).seen(WATCHED[at], days, None);
    };
    let feed = drill(feed).seen(&FEED, days, None);
    let feed: BTreeMap<i32, f64> = feed.iter().map(|seen| (seen.day, seen.value)).collect();
    let ratio = |seen: &Seen| Some(Seen { value: seen.value - feed.get(&seen.day)?, ..*seen });
    drill(water).seen(&WATER, days, None).iter().filter_map(ratio).collect()
}

/// How all signals of a steady batch stand from day to day: deaths, losses, then [`WATCHED`].
///
/// - `expected`: deaths expected each day, which the watch is over; `size`: how they are truly clumped
pub fn steady_levels(
    seed: u64,
    batch: u32,
    watch: &Watch,
    expected: &[f64],
    size: Option<f64>,
) -> Vec<Vec<Level>> {
    let found = Drill { seed, batch, stream: 0 }.deaths(expected, size);
    let deaths: Vec<Level> = watch.sums(&found).into_iter().map(|sum| watch.level(sum)).collect();
    let days: Vec<(Option<u32>, f64)> = found.into_iter().zip(expected.iter().copied()).collect();
    let losses = watching::losses(&days, USUAL.size).iter().map(|day| day.level).collect();
    let others = WATCHED.iter().enumerate().map(|(at, watched)| {
        let steps = watched.tuning.follow(&steady(seed, batch, at, expected.len() as i32));
        steps.iter().map(|step| step.level).collect()
    });
    [deaths, losses].into_iter().chain(others).collect()
}

/// How often a level, or a higher one, is entered.
pub fn entered(levels: &[Level], wanted: Level) -> u32 {
    let is_in = |at: usize| levels[at] >= wanted;
    (0..levels.len()).filter(|at| is_in(*at) && (*at == 0 || !is_in(at - 1))).count() as u32
}

/// Expected deaths a day by age: three times as many in the first week, then falling to half and rising to one and a half;
/// scaled to a mean.
pub fn deaths_by_age(mean: f64, days: usize) -> Vec<f64> {
    let shape = |age: usize| if age < 7 { 3.0 } else { 0.5 + (age - 7) as f64 / 34.0 };
    let total: f64 = (0..days).map(shape).sum();
    (0..days).map(|age| mean * shape(age) * days as f64 / total).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::watching::WEIGHT;

    #[test]
    fn batches_are_as_rough_as_said() {
        let drill = |batch| Drill { seed: 5, batch, stream: 1 };
        let days: Vec<f64> =
            (0..400).flat_map(|batch| drill(batch).seen(&WATER, 42, None)).map(|seen| seen.value).collect();
        let written = days.len() as f64 / (400.0 * 42.0);
        assert!((written - 0.9).abs() < 0.01, "{written}");
        let mean = days.iter().sum::<f64>() / days.len() as f64;
        let spread = (days.iter().map(|day| (day - mean).powi(2)).sum::<f64>() / days.len() as f64).sqrt();
        assert!(mean.abs() < 0.03 && (0.15..0.21).contains(&spread), "{mean} {spread}");
        assert_eq!(drill(1).seen(&WEIGHT, 42, None).len(), 6);
    }

    #[test]
    fn a_change_begins_on_its_day() {
        let drill = Drill { seed: 5, batch: 0, stream: 1 };
        let (steady, changed) =
            (drill.seen(&WATER, 42, None), drill.seen(&WATER, 42, Some(Change { from: 20, by: -0.2 })));
        for (one, other) in steady.iter().zip(&changed) {
            let by = if one.day < 20 { 0.0 } else { -0.2 };
            assert!((other.value - one.value - by).abs() < 1e-12);
        }
    }

    #[test]
    fn deaths_come_as_expected() {
        let expected = deaths_by_age(2.0, 42);
        assert!((expected.iter().sum::<f64>() - 84.0).abs() < 1e-9);
        let found: Vec<u32> = (0..200)
            .flat_map(|batch| Drill { seed: 5, batch, stream: 0 }.deaths(&expected, Some(2.0)))
            .flatten()
            .collect();
        let mean = found.iter().map(|found| f64::from(*found)).sum::<f64>() / found.len() as f64;
        assert!((mean - 2.0).abs() < 0.1, "{mean}");
    }

    #[test]
    fn a_level_is_entered_once_however_long_it_lasts() {
        use Level::{Act, Look, Steady};
        let levels = [Look, Act, Look, Steady, Look, Look, Steady, Act];
        assert_eq!((entered(&levels, Look), entered(&levels, Act)), (3, 2));
        assert_eq!(entered(&[], Look), 0);
    }

    /// The false alarms of all signals together, on fewer batches than the harness draws they stay below one look a
    /// batch and one act in 20.
    #[test]
    fn steady_batches_keep_the_budget() {
        let expected = deaths_by_age(2.0, 42);
        let watch = Watch::over(&expected, USUAL).unwrap();
        let batches = 1500;
        let (mut looks, mut acts) = (0, 0);
        for batch in 0..batches {
            let levels = steady_levels(21, batch, &watch, &expected, Some(2.0));
            looks += levels.iter().map(|levels| entered(levels, Level::Look)).sum::<u32>();
            acts += u32::from(levels.iter().any(|levels| entered(levels, Level::Act) > 0));
        }
        let (looks, acts) = (f64::from(looks) / f64::from(batches), f64::from(acts) / f64::from(batches));
        assert!(looks < 1.0 && looks > 0.5, "{looks} false looks a batch");
        assert!(acts < 0.05 && acts > 0.01, "{acts} batches with a false act");
    }
}
