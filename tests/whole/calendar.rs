//! The calendar file, read back by a reader that shares no code with its writer.

use std::collections::BTreeMap;

use advice::tasks::{Remind, Task};
use icalendar::parser::{self, Component};
use present::Viewer;
use present::calendar::{Event, When, Written, write};
use present::plan::Shown;
use proptest::prelude::*;
use quantity::CivilDay;

use crate::sample;

const WRITTEN: Written = Written { at_millis: 1_810_000_000_000, sequence: Some(7) };

fn file(text: &str) -> String {
    let plan = sample::plan(text);
    Shown::new(&plan, &Viewer::plain()).calendar("batch-1", WRITTEN)
}

/// The events of a file by UID, each as its properties.
fn read(text: &str) -> BTreeMap<String, BTreeMap<String, String>> {
    let unfolded = parser::unfold(text);
    let calendar = parser::read_calendar(&unfolded).expect("a calendar");
    let events = calendar.components.iter().map(|event| {
        let properties = properties(event);
        (properties["UID"].clone(), properties)
    });
    events.collect()
}

/// Properties by name, texts without their marks, an alarm's behind `VALARM.`, parameters behind the name.
fn properties(event: &Component) -> BTreeMap<String, String> {
    assert_eq!(event.name.as_str(), "VEVENT");
    let mut found = BTreeMap::new();
    for (prefix, part) in
        std::iter::once(("", event)).chain(event.components.iter().map(|one| ("VALARM.", one)))
    {
        for property in &part.properties {
            let mut name = format!("{prefix}{}", property.name.as_str());
            for parameter in &property.params {
                let value = parameter.val.as_ref().map_or("", |value| value.as_str());
                name.push_str(&format!(";{}={value}", parameter.key.as_str()));
            }
            let old = found.insert(name.clone(), property.val.as_str().to_owned());
            assert!(old.is_none(), "{name} twice");
        }
    }
    found
}

/// TEXT without its marks, by the letter of RFC 5545, 3.3.11.
fn plain(text: &str) -> String {
    let mut out = String::new();
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        match (c, c == '\\') {
            (_, true) => match chars.next().expect("something behind the mark") {
                'n' | 'N' => out.push('\n'),
                marked => out.push(marked),
            },
            _ => out.push(c),
        }
    }
    out
}

fn ical(day: CivilDay) -> String {
    day.to_string().replace('-', "")
}

fn uids(task: &Task) -> Vec<String> {
    match task.remind {
        Remind::Rounds(rounds) => rounds
            .iter()
            .map(|round| format!("{}-{}-{}.batch-1", task.name, task.ordinal, round.hour))
            .collect(),
        _ => vec![format!("{}-{}.batch-1", task.name, task.ordinal)],
    }
}

#[test]
fn every_job_comes_back_as_its_event() {
    let plan = sample::plan(&sample::complete());
    let viewer = Viewer::plain();
    let shown = Shown::new(&plan, &viewer);
    let mut events = read(&shown.calendar("batch-1", WRITTEN));
    for task in &plan.tasks {
        let (title, why) = shown.job(task);
        let last = task.until.unwrap_or(task.day);
        for (at, uid) in uids(task).iter().enumerate() {
            let event = events.remove(uid).unwrap_or_else(|| panic!("no {uid}"));
            assert_eq!(event["SUMMARY"], title);
            assert!(event["DESCRIPTION"].starts_with(&format!("{why}\n")), "{event:?}");
            assert_eq!((event["SEQUENCE"].as_str(), event["DTSTAMP"].as_str()), ("7", "20270511T014640Z"));
            let trigger = event.get("VALARM.TRIGGER").map(String::as_str);
            match task.remind {
                Remind::Rounds(rounds) => {
                    let night = task.day.plus_days(rounds[at].past_midnight.into());
                    assert_eq!(event["DTSTART"], format!("{}T{:02}0000", ical(night), rounds[at].hour));
                    let times = last.days_since(task.day) + 1;
                    assert_eq!(event["RRULE"], format!("FREQ=DAILY;COUNT={times}"));
                    assert_eq!(trigger, Some("-PT10M"));
                }
                Remind::Quiet | Remind::AtHour(_) => {
                    assert_eq!(event["DTSTART;VALUE=DATE"], ical(task.day));
                    assert_eq!(event["DTEND;VALUE=DATE"], ical(last.plus_days(1)));
                    assert_eq!(trigger.is_some(), task.remind != Remind::Quiet);
                }
            }
        }
    }
    let left: Vec<&String> = events.keys().filter(|uid| !uid.starts_with("feed-order-")).collect();
    assert!(left.is_empty(), "events of no job: {left:?}");
}

/// Every bag of the plan is ordered in an event that ends on its own day, as many days before it comes as it takes.
#[test]
fn all_feed_is_ordered_in_time() {
    for buying in ["by-phase", "cheapest", "all-at-once"] {
        let text = sample::complete().replace("\"by-phase\"", &format!("\"{buying}\""));
        let plan = sample::plan(&text);
        let lead = plan.answers.number("feed.lead_d").unwrap() as i32;
        let events = read(&file(&text));
        let orders: Vec<_> = events.iter().filter(|(uid, _)| uid.starts_with("feed-order-")).collect();
        let days: std::collections::BTreeSet<i32> = plan.deliveries.iter().map(|one| one.day).collect();
        assert_eq!(orders.len(), days.len(), "{buying}");
        for (number, day) in days.into_iter().enumerate() {
            let event = &events[&format!("feed-order-{number}.batch-1")];
            let by = plan.answers.day("batch.placement").unwrap().plus_days(day - lead);
            assert_eq!(event["DTSTART;VALUE=DATE"], ical(by), "{buying}");
            assert_eq!(event["DTEND;VALUE=DATE"], ical(by.plus_days(1)));
            assert_eq!(event["VALARM.TRIGGER"], "PT8H");
            for one in plan.deliveries.iter().filter(|one| one.day == day) {
                let bags = format!("{} bags of ", one.bags);
                assert!(event["SUMMARY"].contains(&bags), "{bags}: {}", event["SUMMARY"]);
            }
        }
    }
}

/// The chicks come at the earliest on day 0, so the first night's round at 02:00 is on the day after.
#[test]
fn night_rounds_are_three_nights_by_the_clock() {
    let events = read(&file(&sample::complete()));
    let start = |hour: u8| events[&format!("night-rounds-0-{hour}.batch-1")]["DTSTART"].clone();
    assert_eq!([22, 2, 5].map(start), ["20270914T220000", "20270915T020000", "20270915T050000"]);
}

#[test]
fn a_batch_that_slips_moves_its_events_and_makes_none_anew() {
    let before = read(&file(&sample::complete()));
    let after = read(&file(&sample::complete().replace("2027-09-14", "2027-09-17")));
    assert!(before.keys().eq(after.keys()));
    for (uid, event) in &before {
        let moved = &after[uid];
        let start = |event: &BTreeMap<String, String>| {
            event.get("DTSTART").or(event.get("DTSTART;VALUE=DATE")).unwrap()[..8].to_owned()
        };
        let day = |text: String| {
            CivilDay::parse(&format!("{}-{}-{}", &text[..4], &text[4..6], &text[6..])).unwrap()
        };
        assert_eq!(day(start(moved)).days_since(day(start(event))), 3, "{uid}");
    }
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    assert_eq!(file(&sample::complete()), file(&sample::complete()));
    let other = file(&sample::complete().replace("\"Mango Ridge\"", "'Hill, \"Side\"; \\o/'"));
    assert!(read(&other).values().all(|event| event["DESCRIPTION"].contains("Hill, \"Side\"; \\o/")));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, failure_persistence: None, rng_seed: proptest::test_runner::RngSeed::Fixed(55), ..ProptestConfig::default() })]

    /// Whatever is typed comes back, no line is longer than 75 bytes, and none is cut inside a letter.
    #[test]
    fn any_text_folds_and_comes_back(summary in ".{0,200}", description in "(?s).{0,300}") {
        let day = CivilDay::new(2027, 9, 14).unwrap();
        let event = Event {
            uid: "one".into(),
            when: When::Days { first: day, last: day },
            summary: summary.clone(),
            description: description.clone(),
            alarm_min: Some(360),
        };
        let text = write(&[event], WRITTEN);
        prop_assert!(text.ends_with("\r\n"));
        for line in text.split("\r\n") {
            prop_assert!(line.len() <= 75, "{} bytes", line.len());
            prop_assert!(!line.contains(['\r', '\n']));
        }
        // By hand, as the RFC says: first unfold, then take the marks away.
        let unfolded = text.replace("\r\n ", "");
        let value = |name: &str| {
            let line = unfolded.split("\r\n").find_map(|line| line.strip_prefix(name));
            plain(line.unwrap())
        };
        let kept = |text: &str| -> String {
            text.chars().filter(|c| !c.is_control() || matches!(c, '\t' | '\n')).collect()
        };
        prop_assert_eq!(value("SUMMARY:"), kept(&summary));
        prop_assert_eq!(value("DESCRIPTION:"), kept(&description));
        // And by the reader's own rules.
        let event = &read(&text)["one"];
        prop_assert_eq!(&event["SUMMARY"], &kept(&summary));
        prop_assert_eq!(&event["DESCRIPTION"], &kept(&description));
    }
}
