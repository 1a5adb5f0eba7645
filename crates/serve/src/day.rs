//! Instants as days and hours at the farm.

use advice::{body, plan};
use book::BookState;
use quantity::{Answers, CivilDay, Source};

const MILLIS_A_MINUTE: i64 = 60_000;
const MINUTES_A_DAY: i64 = 24 * 60;

/// Hours ahead of UTC at the farm: the sun's own time from longitude, to the hour; 0 while that is not known.
///
/// Time zones by name need a table of zones, which is not shipped. For a civil day the sun's time is near enough.
pub fn offset_hours(answers: &Answers) -> i64 {
    answers.number("farm.longitude_deg").map_or(0, |degrees| (degrees / 15.0).round() as i64)
}

/// The same, for the farm of a book.
pub fn offset_of(state: &BookState) -> i64 {
    offset_hours(&plan::read(&body::raws(state, &["farm"]), Source::Hand, false).answers)
}

/// The day and the time of day, hours and minutes, at an offset from UTC.
pub fn local(millis: i64, offset_hours: i64) -> (CivilDay, String) {
    let minutes = millis.div_euclid(MILLIS_A_MINUTE) + offset_hours * 60;
    let day = i32::try_from(minutes.div_euclid(MINUTES_A_DAY)).unwrap_or_default();
    let minute = minutes.rem_euclid(MINUTES_A_DAY);
    (CivilDay::from_number(day), format!("{:02}:{:02}", minute / 60, minute % 60))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn late_evening_in_london_is_the_next_day_in_the_east() {
        let late = (20_000 * MINUTES_A_DAY + 23 * 60 + 5) * MILLIS_A_MINUTE;
        assert_eq!(local(late, 0), (CivilDay::from_number(20_000), "23:05".to_owned()));
        assert_eq!(local(late, 2), (CivilDay::from_number(20_001), "01:05".to_owned()));
        assert_eq!(local(-MILLIS_A_MINUTE, 0), (CivilDay::from_number(-1), "23:59".to_owned()));
    }
}
