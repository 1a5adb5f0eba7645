//! A weighing as it was done: birds one by one, crates, spots, cocks and hens; and what it says of the flock.
//!
//! One weighing can hold entries of several persons and both birds weighed alone and crates: whatever is written about one
//! day is read together.

use std::collections::BTreeMap;

use model::weighing::slips;
use quantity::{Answers, Checked, CivilDay, Value};

use crate::diary::{Diary, Noted, set};
use crate::families::growing;
use crate::families::weighing as asked;
use crate::families::weighing_spots::SPOT_OF;
use crate::findings;
use crate::outcome::Outcome;
use crate::record;
use crate::sums::SumResult;

pub use model::weighing::slips::{Odd, Slip};

/// Something weighed at once.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reading {
    /// What the scale showed, g, without what the birds were weighed in.
    pub grams: f64,
    /// Birds weighed together; 1 of a single bird.
    pub birds: u32,
    /// The spot in the house; empty where nobody said.
    pub spot: String,
    /// Whether it is a cock; `None` where nobody said, and of groups.
    pub is_cock: Option<bool>,
}

impl Reading {
    /// A bird of which only the weight is known.
    pub fn of_bird(grams: f64) -> Reading {
        Reading { grams, birds: 1, ..Reading::default() }
    }
}

/// What was weighed on one day.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Weighing {
    /// In the order of weighing.
    pub readings: Vec<Reading>,
    /// From one mark of the scale to the next, g; of several scales the coarsest.
    pub scale_step_g: Option<f64>,
    /// Birds alive, of which these were weighed; `None` for so many that it does not matter.
    pub flock: Option<f64>,
}

/// What a weighing is held against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// How far off the mean may be either way, percent.
    pub error_percent: f64,
    /// Day of age.
    pub age_d: Option<i32>,
    /// What a bird should weigh, g.
    pub expected_g: Option<f64>,
    /// The curve to read that off where it is not told; one of [`STANDARDS`].
    pub standard: Option<&'static str>,
}

/// Curves of weight by age that the program holds.
pub const STANDARDS: [&str; 3] = ["fast", "open-house", "slow"];

/// The error of the mean where nobody says another: near enough for feed and sale (our judgement).
pub const ERROR_PERCENT: f64 = 3.0;

impl Default for Aim {
    fn default() -> Self {
        Aim { error_percent: ERROR_PERCENT, age_d: None, expected_g: None, standard: None }
    }
}

impl Aim {
    /// What the adopted plan of a batch expects of a day.
    pub fn on(diary: &Diary, day: CivilDay) -> Aim {
        let age = diary.age(day);
        let expected = diary.answers.by_day(growing::EXPECTED_WEIGHT);
        let expected_g = expected.and_then(|days| days.get(&age?).copied());
        Aim { age_d: age, expected_g, ..Aim::default() }
    }
}

/// Spread of birds taken for the range of a weighing too small to tell its own: what is fair still in a flock of both sexes
/// (from memory, two breeders' guides).
const USUAL_VARIATION: f64 = 0.12;

/// The point of a bell curve that leaves one in forty above.
const NINETEEN_IN_TWENTY: f64 = 1.96;

impl Weighing {
    /// Birds weighed one by one at no spot in particular.
    pub fn of_weights(weights: &[f64]) -> Weighing {
        Weighing {
            readings: weights.iter().map(|grams| Reading::of_bird(*grams)).collect(),
            ..Weighing::default()
        }
    }

    /// All that was weighed on a day of a batch, of the birds alive when the day began.
    pub fn on(diary: &Diary, day: CivilDay) -> Weighing {
        let flock = record::alive_before(diary, day).filter(|alive| *alive >= 1.0);
        Weighing { flock, ..Weighing::of(diary.on_day("weighing", day)) }
    }

    /// The last day on which something was weighed.
    pub fn last_day(diary: &Diary) -> Option<CivilDay> {
        diary.of_kind("weighing").map(|note| note.day).max()
    }

    /// All that some entries of weighings say.
    pub fn of<'a>(notes: impl Iterator<Item = &'a Noted>) -> Weighing {
        let mut all = Weighing::default();
        for note in notes {
            all.readings.extend(readings(note));
            all.scale_step_g =
                all.scale_step_g.into_iter().chain(note.number("scale_step_g")).reduce(f64::max);
        }
        all
    }

    /// Whether nothing was weighed.
    pub fn is_empty(&self) -> bool {
        self.readings.is_empty()
    }

    /// Birds weighed, alone and in crates.
    pub fn birds_weighed(&self) -> f64 {
        self.readings.iter().map(|one| f64::from(one.birds)).sum()
    }

    fn birds(&self) -> impl Iterator<Item = &Reading> {
        self.readings.iter().filter(|one| one.birds == 1)
    }

    /// Weights of the birds weighed alone, in their order.
    pub fn weights(&self) -> Vec<f64> {
        self.birds().map(|bird| bird.grams).collect()
    }

    /// Weights that stand far from the others, each with the slips that would explain it. A reason to ask, never to drop.
    pub fn odd(&self) -> Vec<Odd> {
        slips::suspects(&self.weights())
    }

    /// The weighing worked out: how many birds, mean, CV, evenness, each with its range, and whether it is enough. `None` of
    /// nothing.
    pub fn worked_out(&self) -> Option<SumResult> {
        (!self.is_empty()).then(|| self.held_against(&Aim::default()))
    }

    /// The same beside what was aimed at.
    pub fn held_against(&self, aim: &Aim) -> SumResult {
        let answers = self.answers(aim);
        let outcome = Outcome::of(&answers, asked::OF_A_WEIGHING.iter().copied());
        let findings = findings::all(&answers, &outcome);
        SumResult { checked: Checked { answers, ..Checked::default() }, outcome, findings }
    }

    /// Lower end, mean and upper end of a bird's weight in the flock, g; `None` where nothing was weighed.
    ///
    /// Of a single bird or a single crate, which cannot tell how far it may be off, the range is that of birds that differ
    /// as they usually do: nothing that was weighed is passed over in silence.
    pub fn mean_and_range(&self) -> Option<[f64; 3]> {
        let outcome = Outcome::of(&self.answers(&Aim::default()), ["weighing.mean"]);
        let figure = outcome.get("weighing.mean")?.figure;
        let mean = figure.value.number();
        if let [one] = self.readings.as_slice() {
            let half = NINETEEN_IN_TWENTY * USUAL_VARIATION * mean / f64::from(one.birds).sqrt();
            return Some([mean - half, mean, mean + half]);
        }
        Some(figure.band.map_or([mean; 3], |band| [band.low, mean, band.high]))
    }

    /// The fields that the figures of a weighing rest on.
    fn answers(&self, aim: &Aim) -> Answers {
        let mut answers = Answers::default();
        let mut put = |key: &'static str, value: Option<Value>| {
            if let Some(value) = value {
                set(&mut answers, key, value);
            }
        };
        let list = |numbers: Vec<f64>| (!numbers.is_empty()).then_some(Value::Numbers(numbers));
        put(asked::WEIGHTS, list(self.weights()));
        let (totals, counts) = self.groups();
        put(asked::GROUPS, list(totals));
        put(asked::GROUP_BIRDS, list(counts));
        let (totals, counts) = self.spots();
        put(asked::SPOTS, list(totals));
        put(asked::SPOT_BIRDS, list(counts));
        put(asked::COCKS, list(self.cocks()));
        put(SPOT_OF, list(self.spot_of()));
        let number = |number: Option<f64>| number.map(Value::Number);
        put(asked::STEP, number(self.scale_step_g));
        // Of fewer alive than were weighed something is written wrong: the range then takes no part of the flock for known.
        put(asked::FLOCK, number(self.flock.filter(|alive| *alive >= self.birds_weighed())));
        put(asked::ERROR, number(Some(aim.error_percent)));
        put(asked::AGE, number(aim.age_d.map(f64::from)));
        put(asked::TARGET, number(aim.expected_g));
        put(asked::STANDARD, aim.standard.map(Value::Choice));
        answers
    }

    /// Weight and birds of each group, a bird weighed alone being a group of one; none where all were weighed alone.
    fn groups(&self) -> (Vec<f64>, Vec<f64>) {
        if self.readings.iter().all(|one| one.birds == 1) {
            return (Vec::new(), Vec::new());
        }
        self.readings.iter().map(|one| (one.grams, f64::from(one.birds))).unzip()
    }

    /// Weight and birds of each spot, in the order of their names; none where no spot was named. What was weighed at no
    /// named spot counts as one more.
    fn spots(&self) -> (Vec<f64>, Vec<f64>) {
        let mut spots: BTreeMap<String, (f64, f64)> = BTreeMap::new();
        for one in &self.readings {
            let sum = spots.entry(spot_key(&one.spot)).or_default();
            *sum = (sum.0 + one.grams, sum.1 + f64::from(one.birds));
        }
        if spots.keys().all(String::is_empty) {
            return (Vec::new(), Vec::new());
        }
        spots.into_values().unzip()
    }

    /// The weights of single birds by the spot they were weighed at; `None` unless every reading is of one bird at a named spot,
    /// and there are two spots or more.
    pub fn birds_by_spot(&self) -> Option<BTreeMap<String, Vec<f64>>> {
        let mut spots: BTreeMap<String, Vec<f64>> = BTreeMap::new();
        for one in &self.readings {
            let spot = spot_key(&one.spot);
            if one.birds != 1 || spot.is_empty() {
                return None;
            }
            spots.entry(spot).or_default().push(one.grams);
        }
        (spots.len() > 1).then_some(spots)
    }

    /// The number of each single bird's spot, in the order of their names from 1; none where [`Self::birds_by_spot`] is.
    fn spot_of(&self) -> Vec<f64> {
        let Some(spots) = self.birds_by_spot() else { return Vec::new() };
        let number =
            |bird: &Reading| Some(spots.keys().position(|spot| *spot == spot_key(&bird.spot))? as f64 + 1.0);
        self.birds().filter_map(number).collect()
    }

    /// 1 for a cock and 0 for a hen; none unless every bird was looked at.
    fn cocks(&self) -> Vec<f64> {
        let one = |bird: &Reading| bird.is_cock.map(|is_cock| f64::from(u8::from(is_cock)));
        self.birds().map(one).collect::<Option<_>>().unwrap_or_default()
    }
}

/// One name for a spot however it was typed.
pub(crate) fn spot_key(typed: &str) -> String {
    typed.trim().to_lowercase()
}

/// What one entry says: single birds first, then groups; spots in the same order, sexes of the single birds.
fn readings(note: &Noted) -> Vec<Reading> {
    let (singles, spots, sexes) = (note.numbers("weights_g"), note.words("spots"), note.words("sexes"));
    let spot = |at: usize| spots.get(at).cloned().unwrap_or_default();
    let bird = |(at, grams): (usize, &f64)| Reading {
        grams: *grams,
        birds: 1,
        spot: spot(at),
        is_cock: sexes.get(at).and_then(|word| is_cock(word)),
    };
    let groups = note.numbers("group_weights_g").into_iter().zip(note.numbers("group_birds"));
    let group = |(at, (grams, birds)): (usize, (f64, f64))| Reading {
        grams,
        birds: birds as u32,
        spot: spot(singles.len() + at),
        is_cock: None,
    };
    singles.iter().enumerate().map(bird).chain(groups.enumerate().map(group)).collect()
}

/// The word for a sex in the book and in files.
pub fn sex_name(is_cock: bool) -> &'static str {
    if is_cock { "cock" } else { "hen" }
}

/// Whether a word says cock or hen; `None` for any other.
pub fn is_cock(word: &str) -> Option<bool> {
    match word.trim().to_lowercase().as_str() {
        "cock" | "c" | "male" | "m" | "rooster" => Some(true),
        "hen" | "h" | "female" | "f" | "pullet" => Some(false),
        _ => None,
    }
}
