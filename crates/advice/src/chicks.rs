//! Checks on chicks under the brooder, out of the book.

use std::collections::BTreeMap;

use quantity::Band;

use crate::diary::{Diary, Noted, set_days, set_number};
use crate::families::chicks::{CROPS, VENT};
use crate::growing::Standing;

/// Vent temperature of a comfortable chick, °C. Source: [vent-temperature].
pub const VENT_C: (f64, f64) = (39.4, 40.5);

/// Puts them among the answers.
pub(crate) fn write(diary: &mut Diary) {
    let felt: Vec<(usize, f64, f64)> = diary.of_kind("crop-fill").filter_map(crop).collect();
    for (at, felt, full) in felt {
        set_number(&mut diary.answers, CROPS[at].felt, felt);
        set_number(&mut diary.answers, CROPS[at].full, full);
    }
    let vent = |note: &Noted| (note.kind == "chick-check").then(|| note.number("vent_c"))?;
    let sums = diary.by_day(vent, |sum, more| sum + more);
    let counts = diary.by_day(|note| vent(note).map(|_| 1.0), |sum, more| sum + more);
    let means: BTreeMap<i32, f64> =
        sums.into_iter().filter_map(|(age, sum)| Some((age, sum / counts.get(&age)?))).collect();
    set_days(&mut diary.answers, VENT, means);
}

/// Which of the usual checks an entry stands for, chicks felt and chicks full. An odd hour counts as the usual one before it;
/// before the second hour nobody can tell.
fn crop(note: &Noted) -> Option<(usize, f64, f64)> {
    let hours = note.number("hours_h")?;
    let at = CROPS.iter().rposition(|check| check.hours <= hours)?;
    Some((at, note.number("felt")?, note.number("full")?))
}

/// A usual check of crops.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CropTarget {
    /// Hours after the chicks came.
    pub hours: f64,
    /// The figure of the share that was full.
    pub figure: &'static str,
    /// The field of how many were felt.
    pub felt: &'static str,
    /// The share that should be full, percent.
    pub wanted_percent: f64,
}

/// The usual checks of crops, the first first.
pub fn crop_targets() -> impl Iterator<Item = CropTarget> {
    CROPS.iter().filter_map(|check| {
        let wanted_percent = reference::crop::full_percent(check.hours).ok().flatten()?;
        Some(CropTarget { hours: check.hours, figure: check.figure, felt: check.felt, wanted_percent })
    })
}

/// How a share of full crops stands: good from the target on; behind where so few chicks were felt that all of them may still
/// reach it; else something is wrong now.
pub fn crop_standing(share_percent: f64, band: Option<Band>, wanted_percent: f64) -> Standing {
    if share_percent >= wanted_percent {
        Standing::Good
    } else if band.is_none_or(|band| band.high >= wanted_percent) {
        Standing::Behind
    } else {
        Standing::Act
    }
}

/// What a vent temperature says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Warmth {
    /// The chick is cold.
    Cold,
    /// It is right.
    Right,
    /// The chick is hot.
    Hot,
}

impl Warmth {
    /// What a vent temperature says, °C.
    pub fn of(vent_c: f64) -> Warmth {
        match vent_c {
            vent if vent < VENT_C.0 => Warmth::Cold,
            vent if vent > VENT_C.1 => Warmth::Hot,
            _ => Warmth::Right,
        }
    }

    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Warmth::Cold => "cold",
            Warmth::Right => "right",
            Warmth::Hot => "hot",
        }
    }
}

#[cfg(test)]
mod tests {
    use quantity::BandKind;

    use super::*;

    #[test]
    fn few_chicks_leave_a_doubt_and_many_do_not() {
        let band = |low, high| Some(Band { low, high, kind: BandKind::Confidence95 });
        let standing = |share, band| crop_standing(share, band, 80.0);
        assert_eq!(standing(80.0, band(65.0, 90.0)), Standing::Good);
        assert_eq!(standing(72.0, band(57.0, 84.0)), Standing::Behind);
        assert_eq!(standing(50.0, band(35.0, 65.0)), Standing::Act);
    }

    /// Published: below 39.4 chicks huddle, above 40.5 they pant.
    #[test]
    fn warmth_is_read_at_the_vent() {
        assert_eq!([39.2, 40.0, 40.8].map(Warmth::of), [Warmth::Cold, Warmth::Right, Warmth::Hot]);
    }
}
