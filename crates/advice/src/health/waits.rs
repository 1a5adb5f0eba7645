//! What keeps birds from being eaten for a while: medicines, vaccines and medicated feed that were written down.

use model::medicine::Withdrawal;
use quantity::{CivilDay, Raw};

use crate::diary::{Diary, Noted};
use crate::store_room::Phase;
use crate::sums::{self, SumResult};

/// What a wait comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// A medicine.
    Medicine,
    /// A vaccine. Its label has a number of days too, if only 0.
    Vaccine,
    /// A feed that has to be off some days before slaughter.
    Feed,
}

impl Cause {
    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Cause::Medicine => "medicine",
            Cause::Vaccine => "vaccine",
            Cause::Feed => "feed",
        }
    }
}

/// Something that was given, and how long birds have to wait for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wait {
    /// What it comes from.
    pub cause: Cause,
    /// The first day it was given; sales before that day were free.
    pub first: CivilDay,
    /// The clock that starts with the last of it. The product of a feed is the name of its phase.
    pub withdrawal: Withdrawal,
}

impl Wait {
    /// Whether birds may not be sold, eaten, given away or culled for food on a day.
    pub fn holds_on(&self, day: CivilDay) -> bool {
        day >= self.first && self.withdrawal.holds_on(day)
    }

    /// The wait worked out, with its workings: the quick sum `withdrawal` over what was written.
    pub fn worked_out(&self) -> Option<SumResult> {
        let raw = |key: &str, text: String| Raw { key: key.to_owned(), text: vec![text], line: None };
        let mut raws = vec![raw("last", self.withdrawal.last.to_string())];
        raws.extend(self.withdrawal.hour.map(|hour| raw("hour_h", hour.to_string())));
        raws.extend(self.withdrawal.days.map(|days| raw("days_d", days.to_string())));
        Some(sums::by_name("withdrawal")?.work_out(&raws, true))
    }
}

/// Every wait in a batch's book, in the order it was given.
pub fn all(diary: &Diary) -> Vec<Wait> {
    let medicines = diary.of_kind("medicine-given").map(medicine);
    let vaccines = diary.of_kind("vaccine-given").map(vaccine);
    let feeds = Phase::ALL.iter().filter_map(|phase| feed(diary, phase.name()));
    let mut waits: Vec<Wait> = medicines.chain(vaccines).chain(feeds).collect();
    waits.sort_by_key(|wait| (wait.first, wait.withdrawal.last));
    waits
}

fn medicine(note: &Noted) -> Wait {
    let last = note.text("last_day").and_then(CivilDay::parse);
    // A last day before the day it is written about is a slip; the later of both is the safe one.
    let last = last.map_or(note.day, |last| last.max(note.day));
    given(note, Cause::Medicine, "medicine", last)
}

fn vaccine(note: &Noted) -> Wait {
    given(note, Cause::Vaccine, "vaccine", note.day)
}

fn given(note: &Noted, cause: Cause, product: &str, last: CivilDay) -> Wait {
    let whole = |key: &str| note.number(key).filter(|number| *number >= 0.0);
    let withdrawal = Withdrawal {
        product: note.text(product).unwrap_or_default().to_owned(),
        last,
        hour: whole("hour_h").map(|hour| hour.ceil() as u8),
        days: whole("withdrawal_d").map(|days| days.ceil() as u16),
    };
    Wait { cause, first: note.day, withdrawal }
}

/// The wait after a feed of a phase of which some delivery has to be off before slaughter, by the longest of them: bags
/// of one phase are not told apart once they stand in the store.
fn feed(diary: &Diary, phase: &str) -> Option<Wait> {
    let of_phase = |note: &&Noted| note.text("phase") == Some(phase);
    let medicated = |note: &&Noted| of_phase(note) && withdrawal_d(note) > 0.0;
    let first = diary.of_kind("feed-delivered").filter(medicated).map(|note| note.day).min()?;
    let longest = diary.of_kind("feed-delivered").filter(medicated).map(withdrawal_d).fold(0.0, f64::max);
    let fed: Vec<&Noted> = diary.notes.iter().filter(|note| is_fed(note) && note.day >= first).collect();
    // Where nobody writes down what is fed since it came, it counts as fed until today.
    let last = if fed.is_empty() {
        diary.on
    } else {
        fed.into_iter().filter(of_phase).map(|note| note.day).max()?
    };
    let withdrawal = Withdrawal::of_feed(phase.to_owned(), last, Some(longest.ceil() as u16));
    Some(Wait { cause: Cause::Feed, first, withdrawal })
}

fn withdrawal_d(note: &Noted) -> f64 {
    note.number("withdrawal_d").unwrap_or_default()
}

/// Whether a feed was given or a bag of it opened.
fn is_fed(note: &Noted) -> bool {
    let some = |key: &str| note.number(key).is_some_and(|amount| amount > 0.0);
    (note.kind == "feed-given" && some("feed_kg")) || (note.kind == "feed-opened" && some("bags"))
}

#[cfg(test)]
mod tests {
    use model::medicine::Clear;
    use serde_json::json;

    use super::super::make::{day, diary, noted};
    use super::*;

    fn one(notes: Vec<Noted>, on: i32) -> Wait {
        let waits = all(&diary(on, notes));
        assert_eq!(waits.len(), 1, "{waits:?}");
        waits[0].clone()
    }

    #[test]
    fn the_clock_starts_with_the_last_day_and_its_hour() {
        let note = noted(
            "medicine-given",
            10,
            &[
                ("medicine", json!("powder")),
                ("last_day", json!(day(14).to_string())),
                ("hour_h", json!(18)),
                ("withdrawal_d", json!(7)),
            ],
        );
        let wait = one(vec![note], 12);
        assert_eq!(wait.withdrawal.clear(), Clear::On { day: day(21), hour: 18 });
        assert!(!wait.holds_on(day(9)), "it was not given yet");
        assert!(wait.holds_on(day(10)) && wait.holds_on(day(21)) && !wait.holds_on(day(22)));
    }

    #[test]
    fn an_untold_hour_is_the_days_end_and_untold_days_are_never_none() {
        let told = noted("vaccine-given", 10, &[("vaccine", json!("drops")), ("withdrawal_d", json!(0))]);
        let wait = one(vec![told], 10);
        assert!(wait.holds_on(day(10)) && !wait.holds_on(day(11)));
        let untold = noted("vaccine-given", 10, &[("vaccine", json!("drops"))]);
        assert!(one(vec![untold], 10).holds_on(day(400)));
    }

    #[test]
    fn a_last_day_before_the_first_is_not_believed() {
        let slip = noted(
            "medicine-given",
            10,
            &[
                ("medicine", json!("powder")),
                ("last_day", json!(day(3).to_string())),
                ("withdrawal_d", json!(5)),
            ],
        );
        assert_eq!(one(vec![slip], 10).withdrawal.last, day(10));
    }

    fn delivered(on: i32, phase: &str, days: Option<i32>) -> Noted {
        let mut body = vec![("phase", json!(phase))];
        body.extend(days.map(|days| ("withdrawal_d", json!(days))));
        noted("feed-delivered", on, &body)
    }

    fn fed(on: i32, phase: &str, feed_kg: f64) -> Noted {
        noted("feed-given", on, &[("phase", json!(phase)), ("feed_kg", json!(feed_kg))])
    }

    #[test]
    fn a_feed_counts_from_the_last_day_it_was_fed() {
        let notes = vec![
            delivered(1, "grower", Some(3)),
            delivered(5, "grower", Some(5)),
            fed(20, "grower", 80.0),
            fed(21, "grower", 10.0),
            fed(21, "finisher", 70.0),
            fed(22, "grower", 0.0),
            fed(22, "finisher", 80.0),
        ];
        let wait = one(notes, 24);
        assert_eq!((wait.cause, wait.withdrawal.last, wait.withdrawal.days), (Cause::Feed, day(21), Some(5)));
        assert!(wait.holds_on(day(26)) && !wait.holds_on(day(27)));
    }

    #[test]
    fn a_feed_that_stands_unopened_holds_nothing_back() {
        let notes = vec![delivered(10, "last", Some(5)), fed(11, "grower", 50.0)];
        assert!(all(&diary(20, notes)).is_empty());
        assert!(
            all(&diary(20, vec![delivered(10, "last", Some(0)), delivered(10, "last", None)])).is_empty()
        );
    }

    #[test]
    fn a_feed_counts_as_fed_where_nobody_writes_what_is_fed() {
        let wait = one(vec![delivered(10, "grower", Some(5)), fed(9, "starter", 50.0)], 20);
        assert_eq!(wait.withdrawal.last, day(20));
    }

    #[test]
    fn the_sum_and_the_wait_say_the_same() {
        let note = noted(
            "medicine-given",
            10,
            &[("medicine", json!("powder")), ("hour_h", json!(23)), ("withdrawal_d", json!(7))],
        );
        let wait = one(vec![note], 12);
        let result = wait.worked_out().unwrap();
        let earliest = result.outcome.number("withdrawal.earliest_day").unwrap() as i32;
        assert_eq!(Some(CivilDay::from_number(earliest)), wait.withdrawal.clear().earliest_day());
    }
}
