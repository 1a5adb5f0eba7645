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
use crate::findings;
use crate::outcome::Outcome;
use crate::record;
use crate::sums::SumResult;

pub use model::weighing::slips::{Odd, Slip};

/// A bird weighed alone.
#[derive(Clone, Debug, PartialEq)]
pub struct Bird {
    /// Its weight, g.
    pub grams: f64,
    /// Where in the house; empty where nobody said.
    pub spot: String,
    /// Whether it is a cock, where somebody looked.
    pub is_cock: Option<bool>,
}

/// Birds weighed at once: in a crate, a bucket or a sack.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Their weight together, g, without what they are weighed in.
    pub grams: f64,
    /// How many they are, above 0.
    pub birds: f64,
    /// Where in the house; empty where nobody said.
    pub spot: String,
}

/// What was weighed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Weighed {
    /// Birds weighed alone, in their order.
    pub birds: Vec<Bird>,
    /// Groups, in their order.
    pub groups: Vec<Group>,
    /// The step of the scale, g, where it is known; of several scales the coarsest.
    pub scale_step_g: Option<f64>,
}

/// What is known about the flock beside its weights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Around {
    /// Birds in the flock; `None` for so many that it does not matter.
    pub flock: Option<f64>,
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

/// Near enough for feed and sale: our judgement.
pub const ERROR_PERCENT: f64 = 3.0;

impl Default for Around {
    fn default() -> Self {
        Around { flock: None, error_percent: ERROR_PERCENT, age_d: None, expected_g: None, standard: None }
    }
}

impl Around {
    /// What the book says of a batch on a day: birds alive when it began, and what the adopted plan expects them to weigh.
    pub fn of_day(diary: &Diary, day: CivilDay) -> Around {
        let age = diary.age(day);
        let expected = diary.answers.by_day(growing::EXPECTED_WEIGHT);
        Around {
            flock: record::alive_before(diary, day).filter(|alive| *alive >= 1.0),
            age_d: age,
            expected_g: expected.and_then(|days| days.get(&age?).copied()),
            ..Around::default()
        }
    }
}

/// All that a weighing answers, the most wanted first.
const FIGURES: &[&str] = &[
    "weighing.mean",
    "weighing.n",
    "weighing.cv",
    "weighing.uniformity",
    "weighing.more_birds",
    "weighing.off_target",
    "weighing.target",
    "weighing.uniformity_normal",
    "weighing.sd",
    "weighing.mean_within",
    "weighing.scale_error",
    "weighing.birds_wanted",
    "weighing.mean_cocks",
    "weighing.mean_hens",
    "weighing.sex_gap",
    "weighing.cv_cocks",
    "weighing.cv_hens",
    "weighing.cv_within_sex",
];

/// Spread of birds taken for the range of a weighing too small to tell its own: what is fair still in a flock of both sexes
/// (from memory, two breeders' guides).
const USUAL_VARIATION: f64 = 0.12;

/// The point of a bell curve that leaves one in forty above.
const NINETEEN_IN_TWENTY: f64 = 1.96;

impl Weighed {
    /// Birds weighed one by one at no spot in particular.
    pub fn of_weights(weights: &[f64]) -> Weighed {
        let bird = |grams: &f64| Bird { grams: *grams, spot: String::new(), is_cock: None };
        Weighed { birds: weights.iter().map(bird).collect(), ..Weighed::default() }
    }

    /// All that is written about a day of weighing, whoever wrote it.
    pub fn of_day(diary: &Diary, day: CivilDay) -> Weighed {
        let mut all = Weighed::default();
        diary.on_day("weighing", day).for_each(|note| all.add(note));
        all
    }

    /// What one entry holds. Words stand one a reading, birds before groups.
    fn add(&mut self, note: &Noted) {
        let (weights, spots) = (note.numbers("weights_g"), note.words("spots"));
        let sexes = note.words("sexes");
        let word = |words: &[String], at: usize| words.get(at).cloned().unwrap_or_default();
        self.birds.extend(weights.iter().enumerate().map(|(at, grams)| Bird {
            grams: *grams,
            spot: word(&spots, at),
            is_cock: is_cock(&word(&sexes, at)),
        }));
        let groups = note.numbers("group_weights_g").into_iter().zip(note.numbers("group_birds"));
        self.groups.extend(groups.enumerate().map(|(at, (grams, birds))| Group {
            grams,
            birds,
            spot: word(&spots, weights.len() + at),
        }));
        let coarsest = self.scale_step_g.into_iter().chain(note.number("scale_step_g")).reduce(f64::max);
        self.scale_step_g = coarsest;
    }

    /// Whether nothing was weighed.
    pub fn is_empty(&self) -> bool {
        self.birds.is_empty() && self.groups.is_empty()
    }

    /// Weights of the birds weighed alone.
    pub fn weights(&self) -> Vec<f64> {
        self.birds.iter().map(|bird| bird.grams).collect()
    }

    /// Weights that stand far from the others, each with the slips that would explain it. A reason to ask, never to drop.
    pub fn odd(&self) -> Vec<Odd> {
        slips::suspects(&self.weights())
    }

    /// What the weights say of the flock.
    pub fn result(&self, around: &Around) -> SumResult {
        let answers = self.answers(around);
        let outcome = Outcome::of(&answers, FIGURES.iter().copied());
        let findings = findings::all(&answers, &outcome);
        SumResult { checked: Checked { answers, ..Checked::default() }, outcome, findings }
    }

    /// Lower end, mean and upper end of a bird's weight in the flock, g; `None` where nothing was weighed.
    ///
    /// Of a single bird or a single crate, which cannot tell how far it may be off, the range is that of birds that differ
    /// as they usually do: nothing that was weighed is passed over in silence.
    pub fn mean_and_range(&self, around: &Around) -> Option<[f64; 3]> {
        let outcome = Outcome::of(&self.answers(around), ["weighing.mean"]);
        let figure = outcome.get("weighing.mean")?.figure;
        let mean = figure.value.number();
        let half = || NINETEEN_IN_TWENTY * USUAL_VARIATION * mean / self.count().sqrt();
        let is_one = self.birds.len() + self.groups.len() == 1;
        Some(match figure.band.filter(|_| !is_one) {
            Some(band) => [band.low, mean, band.high],
            None if is_one => [mean - half(), mean, mean + half()],
            None => [mean; 3],
        })
    }

    /// Birds in all.
    fn count(&self) -> f64 {
        self.birds.len() as f64 + self.groups.iter().map(|group| group.birds).sum::<f64>()
    }

    /// The fields that the figures of a weighing rest on.
    fn answers(&self, around: &Around) -> Answers {
        let mut answers = Answers::default();
        let mut put = |key: &'static str, value: Option<Value>| {
            if let Some(value) = value {
                set(&mut answers, key, value);
            }
        };
        let list = |numbers: Vec<f64>| (!numbers.is_empty()).then_some(Value::Numbers(numbers));
        put(asked::WEIGHTS, list(self.weights()));
        let (totals, counts) = self.readings();
        put(asked::GROUPS, list(totals));
        put(asked::GROUP_BIRDS, list(counts));
        let (totals, counts) = self.spots();
        put(asked::SPOTS, list(totals));
        put(asked::SPOT_BIRDS, list(counts));
        put(asked::COCKS, list(self.cocks()));
        let number = |number: Option<f64>| number.map(Value::Number);
        put(asked::STEP, number(self.scale_step_g));
        put(asked::FLOCK, number(around.flock));
        put(asked::ERROR, number(Some(around.error_percent)));
        put(asked::AGE, number(around.age_d.map(f64::from)));
        put(asked::TARGET, number(around.expected_g));
        put(asked::STANDARD, around.standard.map(Value::Choice));
        answers
    }

    /// Weight and birds of each group, a bird weighed alone being a group of one; none where all were weighed alone.
    fn readings(&self) -> (Vec<f64>, Vec<f64>) {
        if self.groups.is_empty() {
            return (Vec::new(), Vec::new());
        }
        let groups = self.groups.iter().map(|group| (group.grams, group.birds));
        groups.chain(self.birds.iter().map(|bird| (bird.grams, 1.0))).unzip()
    }

    /// Weight and birds of each spot, in the order of their names; none where no spot was named. What was weighed at no
    /// named spot counts as one more.
    fn spots(&self) -> (Vec<f64>, Vec<f64>) {
        let birds = self.birds.iter().map(|bird| (&bird.spot, bird.grams, 1.0));
        let groups = self.groups.iter().map(|group| (&group.spot, group.grams, group.birds));
        let mut spots: BTreeMap<String, (f64, f64)> = BTreeMap::new();
        for (spot, grams, birds) in birds.chain(groups) {
            let sum = spots.entry(spot.trim().to_lowercase()).or_default();
            *sum = (sum.0 + grams, sum.1 + birds);
        }
        if spots.keys().all(String::is_empty) {
            return (Vec::new(), Vec::new());
        }
        spots.into_values().unzip()
    }

    /// 1 for a cock and 0 for a hen; none unless every bird was looked at.
    fn cocks(&self) -> Vec<f64> {
        let one = |bird: &Bird| bird.is_cock.map(|is_cock| f64::from(u8::from(is_cock)));
        self.birds.iter().map(one).collect::<Option<_>>().unwrap_or_default()
    }
}

/// Whether a word says cock or hen; `None` for any other.
pub fn is_cock(word: &str) -> Option<bool> {
    match word.trim().to_lowercase().as_str() {
        "cock" | "c" | "male" | "m" | "rooster" => Some(true),
        "hen" | "h" | "female" | "f" | "pullet" => Some(false),
        _ => None,
    }
}
