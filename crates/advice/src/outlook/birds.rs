//! How far the birds differ, by the weighings in which they were weighed one by one.

use std::collections::BTreeSet;

use model::outlook::spread::{SpreadSeen, follow};
use quantity::CivilDay;

use crate::diary::{Diary, set_number};
use crate::families::outlook as keys;
use crate::weighing::Weighing;

/// Fewer birds tell nothing of how far a flock differs.
const FEWEST: usize = 10;

/// Flocks that differ less or more than this, as shares, were not weighed as they should be.
const BELIEVED: (f64, f64) = (0.04, 0.30);

pub(super) fn write_spread(diary: &mut Diary, today: i32) {
    let days: BTreeSet<CivilDay> = diary.of_kind("weighing").map(|note| note.day).collect();
    let weighed = |day: CivilDay| {
        let weights = Weighing::on(diary, day).weights();
        let cv = model::weighing::variation(&weights).filter(|_| weights.len() >= FEWEST)?;
        let cv = cv.clamp(BELIEVED.0, BELIEVED.1);
        Some(SpreadSeen { day: diary.age(day)?, cv, count: weights.len() as f64 })
    };
    let seen: Vec<SpreadSeen> = days.into_iter().filter_map(weighed).collect();
    let known = follow(&seen, today);
    set_number(&mut diary.answers, keys::CV, 100.0 * known.at(0.0));
    set_number(&mut diary.answers, keys::CV_OFF, 100.0 * known.variance.sqrt());
    if let Some(last) = seen.last() {
        set_number(&mut diary.answers, keys::CV_SEEN, f64::from(last.day));
    }
}
