//! A weighing: what was put on the scale, bird after bird or in groups, and how it becomes the sum of a weighing.

use std::collections::BTreeMap;

use quantity::{CivilDay, Raw};

use crate::diary::{Diary, Noted};
use crate::families::weighing::SPOTS_ENOUGH;
use crate::sums::{self, SumResult};

/// The error of the mean that a weighing is held against where nobody says another, percent.
pub const ERROR_PERCENT: f64 = 3.0;

/// Something weighed at once.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reading {
    /// What the scale showed, g.
    pub grams: f64,
    /// Birds weighed together; 1 of a single bird.
    pub birds: u32,
    /// The spot in the house; empty where nobody said.
    pub spot: String,
    /// Whether it is a cock; `None` where nobody said, and of groups.
    pub is_cock: Option<bool>,
}

/// What was weighed on one day.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Weighing {
    /// In the order of weighing.
    pub readings: Vec<Reading>,
    /// From one mark of the scale to the next, g.
    pub scale_step_g: Option<f64>,
    /// Birds alive, of which these were weighed.
    pub flock: Option<f64>,
}

impl Weighing {
    /// All that was weighed on a day of a batch.
    pub fn on(diary: &Diary, day: CivilDay) -> Weighing {
        Weighing::of(diary.on_day("weighing", day))
    }

    /// All that some entries of weighings say.
    pub fn of<'a>(notes: impl Iterator<Item = &'a Noted>) -> Weighing {
        let mut weighing = Weighing::default();
        for note in notes {
            weighing.readings.extend(readings(note));
            weighing.scale_step_g = note.number("scale_step_g").or(weighing.scale_step_g);
        }
        weighing
    }

    /// The weighing worked out: how many birds, mean, CV, evenness, each with its range, and whether it is enough.
    pub fn worked_out(&self) -> Option<SumResult> {
        Some(sums::by_name("weighing")?.work_out(&self.raws(), true))
    }

    /// As the sum asks for it. With groups, single birds are groups of one: then no evenness can be told. With birds from
    /// three spots or more, each named, the range is by spots.
    pub fn raws(&self) -> Vec<Raw> {
        let mut raws = Vec::new();
        let mut say = |key: &str, numbers: Vec<f64>| {
            let text: Vec<String> = numbers.iter().map(ToString::to_string).collect();
            if !text.is_empty() {
                raws.push(Raw { key: key.to_owned(), text: vec![text.join(" ")], line: None });
            }
        };
        let grams = || self.readings.iter().map(|one| one.grams).collect::<Vec<f64>>();
        if self.readings.iter().any(|one| one.birds > 1) {
            say("group_weights", grams());
            say("group_birds", self.readings.iter().map(|one| f64::from(one.birds)).collect());
        } else {
            say("weights", grams());
            let (totals, birds) = self.by_spot();
            say("spot_weights", totals);
            say("spot_birds", birds);
            let cocks: Option<Vec<f64>> =
                self.readings.iter().map(|one| one.is_cock.map(|cock| f64::from(u8::from(cock)))).collect();
            say(
                "cocks",
                cocks.filter(|cocks| cocks.contains(&1.0) && cocks.contains(&0.0)).unwrap_or_default(),
            );
        }
        say("scale_step_g", self.scale_step_g.into_iter().collect());
        say("birds", self.flock.into_iter().collect());
        say("error_percent", vec![ERROR_PERCENT]);
        raws
    }

    /// Weight and birds of each spot; nothing unless every bird's spot is named and they are enough.
    fn by_spot(&self) -> (Vec<f64>, Vec<f64>) {
        let mut spots: BTreeMap<&str, (f64, f64)> = BTreeMap::new();
        for one in &self.readings {
            let spot = spots.entry(one.spot.as_str()).or_default();
            *spot = (spot.0 + one.grams, spot.1 + 1.0);
        }
        let is_told = !spots.contains_key("") && spots.len() >= SPOTS_ENOUGH;
        if is_told { spots.into_values().unzip() } else { (Vec::new(), Vec::new()) }
    }
}

/// What one entry says: single birds first, then groups; spots in the same order, sexes of the single birds.
fn readings(note: &Noted) -> Vec<Reading> {
    let (singles, groups, birds) =
        (note.numbers("weights_g"), note.numbers("group_weights_g"), note.numbers("group_birds"));
    let (spots, sexes) = (note.words("spots"), note.words("sexes"));
    let spot = |at: usize| spots.get(at).cloned().unwrap_or_default();
    let sex = |at: usize| sexes.get(at).and_then(|word| is_cock(word));
    let one =
        |(at, grams): (usize, &f64)| Reading { grams: *grams, birds: 1, spot: spot(at), is_cock: sex(at) };
    let mut readings: Vec<Reading> = singles.iter().enumerate().map(one).collect();
    for (at, (grams, birds)) in groups.iter().zip(&birds).enumerate() {
        let spot = spot(singles.len() + at);
        readings.push(Reading { grams: *grams, birds: *birds as u32, spot, is_cock: None });
    }
    readings
}

/// Cock or hen by the words in use; `None` of another word.
pub fn is_cock(word: &str) -> Option<bool> {
    match word.trim().to_lowercase().as_str() {
        "cock" | "male" | "m" => Some(true),
        "hen" | "female" | "f" => Some(false),
        _ => None,
    }
}

/// Why a line of a table of weights cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RowFault {
    /// No weight, or what stands there is no number of grams that a bird or a crate of them has.
    NoWeight {
        /// What stands there.
        typed: String,
    },
    /// No number of birds of a group.
    NoBirds {
        /// What stands there.
        typed: String,
    },
    /// It is neither cock nor hen.
    NoSex {
        /// What stands there.
        typed: String,
    },
    /// The line cannot be split into cells.
    Broken,
}

/// Why a table of weights cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TableFault {
    /// No column is called `weight_g`, nor `group_weight_g` with `birds`.
    NoWeightColumn,
    /// Lines that cannot be taken, by number.
    Rows(Vec<(u64, RowFault)>),
}

/// The weight of a bird or of a crate of birds, g.
const GRAMS: std::ops::RangeInclusive<f64> = 20.0..=1_000_000.0;
/// A single bird's.
const GRAMS_OF_ONE: std::ops::RangeInclusive<f64> = 20.0..=10_000.0;
/// Birds of a crate.
const BIRDS: std::ops::RangeInclusive<u32> = 1..=500;

/// Reads a table of weights: columns `weight_g`, or `group_weight_g` and `birds`; `spot` and `sex` where they are there.
/// Other columns are passed over, and so are lines that begin with `#`.
///
/// # Errors
///
/// A [`TableFault`] with every line that cannot be taken.
pub fn read_table(text: &str) -> Result<Weighing, TableFault> {
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let names = reader.headers().cloned().unwrap_or_default();
    let place = |name: &str| names.iter().position(|one| one.trim_start_matches('\u{feff}') == name);
    let columns = Columns {
        grams: place("weight_g").or_else(|| place("group_weight_g")).ok_or(TableFault::NoWeightColumn)?,
        birds: if place("weight_g").is_some() {
            None
        } else {
            Some(place("birds").ok_or(TableFault::NoWeightColumn)?)
        },
        spot: place("spot"),
        sex: place("sex"),
    };
    let (mut weighing, mut faults) = (Weighing::default(), Vec::new());
    for record in reader.records() {
        match record {
            Ok(record) => match columns.reading(&record) {
                Ok(reading) => weighing.readings.push(reading),
                Err(why) => faults.push((line_of(record.position(), text), why)),
            },
            Err(error) => faults.push((line_of(error.position(), text), RowFault::Broken)),
        }
    }
    if faults.is_empty() { Ok(weighing) } else { Err(TableFault::Rows(faults)) }
}

/// The line of a record: the reader counts from before the blank lines and remarks that it passed over.
fn line_of(position: Option<&csv::Position>, text: &str) -> u64 {
    let Some(at) = position.and_then(|position| usize::try_from(position.byte()).ok()) else { return 0 };
    let is_passed_over = |line: &&str| line.trim().is_empty() || line.starts_with('#');
    let before = text.get(..at).unwrap_or_default().lines().count();
    let passed = text.get(at..).unwrap_or_default().lines().take_while(is_passed_over).count();
    (before + passed) as u64 + 1
}

struct Columns {
    grams: usize,
    birds: Option<usize>,
    spot: Option<usize>,
    sex: Option<usize>,
}

impl Columns {
    fn reading(&self, record: &csv::StringRecord) -> Result<Reading, RowFault> {
        let cell = |at: usize| record.get(at).unwrap_or_default().to_owned();
        let birds = match self.birds.map(cell) {
            Some(typed) => {
                let birds = typed.parse().ok().filter(|birds| BIRDS.contains(birds));
                birds.ok_or(RowFault::NoBirds { typed })?
            }
            None => 1,
        };
        let range = if birds == 1 { GRAMS_OF_ONE } else { GRAMS };
        let typed = cell(self.grams);
        let grams = quantity::number::parse(&typed).ok().filter(|grams| range.contains(grams));
        let grams = grams.ok_or(RowFault::NoWeight { typed })?;
        let is_cock = match self.sex.map(cell).filter(|word| !word.is_empty()) {
            Some(typed) => Some(is_cock(&typed).ok_or(RowFault::NoSex { typed })?),
            None => None,
        };
        Ok(Reading { grams, birds, spot: self.spot.map(cell).unwrap_or_default(), is_cock })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn number(weighing: &Weighing, id: &str) -> Option<f64> {
        weighing.worked_out().and_then(|result| result.outcome.number(id))
    }

    #[test]
    fn a_table_of_birds_is_worked_out() {
        let weighing = read_table("weight_g,spot\n1000,door\n1100,middle\n900,end\n1000,door\n").unwrap();
        assert_eq!(number(&weighing, "weighing.n"), Some(4.0));
        assert_eq!(number(&weighing, "weighing.mean"), Some(1000.0));
        assert_eq!(number(&weighing, "weighing.uniformity"), Some(100.0));
    }

    #[test]
    fn groups_are_weighed_by_what_they_hold() {
        let weighing = read_table("group_weight_g,birds\n10000,10\n11000,10\n4600,5\n").unwrap();
        assert_eq!(number(&weighing, "weighing.n"), Some(25.0));
        assert_eq!(number(&weighing, "weighing.mean"), Some(1024.0));
        assert_eq!(number(&weighing, "weighing.uniformity"), None);
    }

    #[test]
    fn every_bad_line_is_told() {
        let table = "weight_g,sex\n1000,hen\n\nheavy,cock\n3,hen\n1000,bird\n";
        let Err(TableFault::Rows(faults)) = read_table(table) else { panic!("bad lines were taken") };
        let lines: Vec<u64> = faults.iter().map(|(line, _)| *line).collect();
        assert_eq!(lines, [4, 5, 6]);
        assert_eq!(read_table("grams\n1").unwrap_err(), TableFault::NoWeightColumn);
        assert_eq!(read_table("group_weight_g\n1").unwrap_err(), TableFault::NoWeightColumn);
    }
}
