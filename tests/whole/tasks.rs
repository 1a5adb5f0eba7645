//! The crew's calendar: what must come before what, in any batch.

use std::collections::{BTreeMap, BTreeSet};

use advice::outcome::Outcome;
use advice::plan;
use advice::tasks::{self, Stage, Task, table};
use present::plan::Shown;
use present::{Locale, Viewer, Words};
use proptest::prelude::*;
use quantity::{Answers, CivilDay, Given, Value};

use crate::sample;

/// A plan file with some answers in place of others, whatever the sample said.
fn with(changed: &[(&str, Value)]) -> Answers {
    changed.iter().fold(sample::answers(&sample::complete()), |mut answers, (key, value)| {
        let field = advice::families::field(key).expect(key);
        let given = Given { typed: String::new(), value: value.clone(), line: None, usual: None };
        answers.set(field, given);
        answers
    })
}

fn day(text: &str) -> CivilDay {
    CivilDay::parse(text).expect(text)
}

fn named<'a>(tasks: &'a [Task], name: &str) -> Vec<&'a Task> {
    tasks.iter().filter(|task| task.name == name).collect()
}

fn one<'a>(tasks: &'a [Task], name: &str) -> &'a Task {
    named(tasks, name).first().copied().unwrap_or_else(|| panic!("no {name}"))
}

/// What has to be over, on its last day, before what begins; the first of a pair is at the latest on the second's day.
const IN_ORDER: &[&str] = &[
    "birds-out",
    "litter-out",
    "brush-down",
    "wash",
    "dry-and-mend",
    "disinfect-first",
    "dry-day",
    "equipment-in",
    "disinfect-second",
    "air",
    "litter-in",
    "guard-set",
    "warming",
    "water-in",
    "feed-on-paper",
    "boxes-counted",
    "crops-first",
    "crops-day",
];

/// Never on one day: each needs the night between.
const A_DAY_APART: &[(&str, &str)] = &[
    ("litter-out", "wash"),
    ("wash", "dry-and-mend"),
    ("dry-and-mend", "disinfect-first"),
    ("disinfect-first", "disinfect-second"),
    ("disinfect-second", "air"),
    ("air", "litter-in"),
    ("withdrawal-checked", "sale"),
    ("sale", "litter-sold"),
    ("litter-sold", "next-chicks"),
];

fn last_day(task: &Task) -> CivilDay {
    task.until.unwrap_or(task.day)
}

fn place(tasks: &[Task], name: &str) -> usize {
    tasks.iter().position(|task| task.name == name).unwrap_or_else(|| panic!("no {name}"))
}

/// The figures that the days of tasks are counted from. Working out those alone keeps thousands of batches quick.
const COUNTED_FROM: [&str; 10] = [
    "space.floor_area",
    "guard.rings",
    "house.empty_from",
    "litter.spread_date",
    "batch.next_placement",
    "sale.first_age",
    "sale.last_age",
    "feed.starter_until",
    "feed.grower_until",
    "feed.finisher_until",
];

fn laid_out(answers: &Answers) -> Vec<Task> {
    tasks::tasks(answers, &Outcome::of(answers, COUNTED_FROM))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, rng_seed: proptest::test_runner::RngSeed::Fixed(31), ..ProptestConfig::default() })]

    #[test]
    fn work_comes_in_its_order(
        placement in 0i32..60_000, spread in 0u8..=30, downtime in 0u8..=180, sale in 14u8..=84,
        window in 0u8..=21,
    ) {
        let tasks = laid_out(&with(&[
            ("batch.placement", Value::Day(CivilDay::from_number(placement))),
            ("litter.spread_days_before_d", Value::Number(spread.into())),
            ("house.downtime_d", Value::Number(downtime.into())),
            ("batch.sale_age_d", Value::Number(sale.into())),
            ("sale.first_age_d", Value::Number(sale.into())),
            ("sale.last_age_d", Value::Number((sale + window).into())),
        ]));
        for pair in IN_ORDER.windows(2) {
            let (before, after) = (one(&tasks, pair[0]), one(&tasks, pair[1]));
            prop_assert!(last_day(before) <= after.day, "{} {}", pair[0], pair[1]);
            prop_assert!(place(&tasks, pair[0]) < place(&tasks, pair[1]), "{} {}", pair[0], pair[1]);
        }
        for (before, after) in A_DAY_APART {
            prop_assert!(last_day(one(&tasks, before)) < one(&tasks, after).day, "{before} {after}");
        }
        prop_assert!(tasks.windows(2).all(|pair| pair[0].day <= pair[1].day));
        for task in &tasks {
            prop_assert_eq!(task.day.days_since(CivilDay::from_number(placement)), task.age_d);
            prop_assert!(task.until.is_none_or(|until| until > task.day), "{}", task.name);
            let sold = CivilDay::from_number(placement + i32::from(sale));
            let with_birds = matches!(task.stage, Stage::Brooding | Stage::Growing);
            prop_assert!(!with_birds || (task.age_d >= 0 && last_day(task) < sold), "{}", task.name);
        }
        let next = one(&tasks, "next-chicks").day;
        let rest = next.days_since(last_day(named(&tasks, "sale").last().expect("a sale")));
        prop_assert!(rest >= i32::from(downtime) && rest >= 10 + i32::from(spread));
    }

    /// A batch that slips takes every job along. (Seasons are held still: the grower's own months of heat are far away.)
    #[test]
    fn a_batch_that_slips_takes_its_jobs_along(placement in 0i32..60_000, slip in -400i32..400) {
        let at = |day: i32| laid_out(&with(&[
            ("batch.placement", Value::Day(CivilDay::from_number(day))),
            ("farm.hottest_months", Value::Months(Vec::new())),
        ]));
        let (once, moved) = (at(placement), at(placement + slip));
        prop_assert_eq!(once.len(), moved.len());
        for (one, other) in once.iter().zip(&moved) {
            prop_assert_eq!((one.name, one.ordinal, one.age_d), (other.name, other.ordinal, other.age_d));
            prop_assert_eq!(other.day.days_since(one.day), slip);
            prop_assert_eq!(last_day(other).days_since(last_day(one)), slip);
        }
    }
}

#[test]
fn the_invented_farm_has_its_days() {
    let plan = sample::plan(&sample::complete());
    let days: BTreeMap<&str, String> =
        plan.tasks.iter().rev().map(|task| (task.name, task.day.to_string())).collect();
    for (name, expected) in [
        ("chicks-booked", "2027-08-24"),
        ("birds-out", "2027-08-31"),
        ("disinfect-first", "2027-09-04"),
        ("disinfect-second", "2027-09-06"),
        ("litter-in", "2027-09-11"),
        ("guard-set", "2027-09-12"),
        ("warming", "2027-09-13"),
        ("water-in", "2027-09-14"),
        ("weighing", "2027-09-21"),
        ("sale", "2027-10-24"),
        ("next-chicks", "2027-11-11"),
    ] {
        assert_eq!(days.get(name).map(String::as_str), Some(expected), "{name}");
    }
    assert_eq!(named(&plan.tasks, "weighing").len(), 5, "days 7, 14, 21, 28, 35");
    let widened: Vec<i32> = named(&plan.tasks, "rings-widened").iter().map(|task| task.age_d).collect();
    let steps: Vec<i32> = plan
        .widening
        .iter()
        .filter(|step| step.from_day > 0 && matches!(step.standing, plan::Standing::Rings { .. }))
        .map(|step| step.from_day)
        .collect();
    assert_eq!(widened, steps);
    assert!(!steps.is_empty());
}

#[test]
fn leap_years_and_year_ends_are_counted() {
    for (placement, name, expected) in [
        ("2028-03-01", "warming", "2028-02-28"),
        ("2028-03-01", "thermometer", "2028-02-23"),
        ("2027-03-01", "thermometer", "2027-02-22"),
        ("2100-03-01", "thermometer", "2100-02-22"),
        ("2028-01-03", "birds-out", "2027-12-20"),
        ("2027-12-20", "sale", "2028-01-29"),
        ("2028-01-18", "weighing", "2028-01-25"),
        ("2028-01-20", "sale", "2028-02-29"),
    ] {
        let plan = plan::work_out(with(&[("batch.placement", Value::Day(day(placement)))]));
        assert_eq!(one(&plan.tasks, name).day, day(expected), "{placement} {name}");
    }
}

/// Half a year from the hottest months warming takes two days.
#[test]
fn warming_begins_a_day_earlier_in_the_cold_season() {
    for (placement, age) in [("2027-09-14", -1), ("2027-04-14", -2), ("2027-06-14", -1)] {
        let plan = plan::work_out(with(&[("batch.placement", Value::Day(day(placement)))]));
        assert_eq!(one(&plan.tasks, "warming").age_d, age, "{placement}");
    }
}

/// Feed off is for slaughter only, and is asked about while nobody said how birds are sold.
#[test]
fn only_birds_for_slaughter_go_without_feed() {
    let all = ["feed-off", "feed-stays", "feed-asked"];
    for (file, name) in [
        (sample::complete().replace("kind = \"live\"", "kind = \"slaughter\""), "feed-off"),
        (sample::complete(), "feed-stays"),
        (sample::MANGO_RIDGE.to_owned(), "feed-asked"),
    ] {
        let plan = sample::plan(&file);
        let found: Vec<&str> = all.into_iter().filter(|name| !named(&plan.tasks, name).is_empty()).collect();
        assert_eq!(found, [name]);
    }
}

#[test]
fn a_job_that_only_some_houses_have_is_left_to_them() {
    let file = sample::complete().replace("\"concrete\"", "\"earth\"").replace("wood-shavings", "rice-husk");
    let (plain, husk) = (sample::plan(&sample::complete()), sample::plan(&file));
    for name in ["earth-floor", "earth-limed", "husk-paper"] {
        assert!(named(&plain.tasks, name).is_empty());
        assert_eq!(named(&husk.tasks, name).len(), 1);
    }
}

/// The feed's own day in the store, and the days of heat, once a plan knows them.
#[test]
fn days_that_other_parts_of_a_plan_know_are_taken_from_them() {
    let usual = sample::plan(&sample::complete());
    assert_eq!(one(&usual.tasks, "feed-in").age_d, -12);
    assert_eq!(one(&usual.tasks, "heat-ends").age_d, 14);
    assert_eq!(
        named(&usual.tasks, "feed-mixed").iter().map(|task| task.age_d).collect::<Vec<_>>(),
        [12, 26, 37]
    );
    assert_eq!(one(&usual.tasks, "sale").age_d, 40);
    let mut answers = usual.answers;
    for (key, days) in [("feed.on_hand_before_d", 5.0), ("brooding.days_d", 20.0)] {
        let field = quantity::fields::by_key(key).unwrap();
        let given = Given { typed: String::new(), value: Value::Number(days), line: None, usual: None };
        answers.set(field, given);
    }
    let told = plan::work_out(answers);
    assert_eq!(one(&told.tasks, "feed-in").age_d, -5);
    assert_eq!(one(&told.tasks, "heat-ends").age_d, 19);
    assert_eq!(one(&told.tasks, "dusk-and-dawn").until, Some(one(&told.tasks, "heat-ends").day));
}

#[test]
fn what_is_not_known_yet_leaves_the_rest_standing() {
    let file = sample::MANGO_RIDGE.replace("sale_age_d = 42\n", "").replace("bag_l = 120\n", "");
    let raws = advice::plan_file::read(&file).unwrap();
    let plan = plan::work_out(plan::read(&raws, quantity::Source::Hand, false).answers);
    let names: BTreeSet<&str> = plan.tasks.iter().map(|task| task.name).collect();
    for there in ["wash", "litter-in", "boxes-counted", "guards-out"] {
        assert!(names.contains(there), "{there}");
    }
    for missing in ["sale", "weighing", "next-chicks"] {
        assert!(!names.contains(missing), "{missing}");
    }
    let viewer = Viewer::plain();
    let (text, _) = Shown::new(&plan, &viewer).job(one(&plan.tasks, "litter-in"));
    assert_eq!(text, "Litter in, dry");
}

#[test]
fn names_are_given_once() {
    let mut names = BTreeSet::new();
    for spec in table::all() {
        assert!(names.insert(spec.name), "{} twice", spec.name);
    }
    let plan = sample::plan(&sample::complete());
    let mut seen = BTreeSet::new();
    assert!(plan.tasks.iter().all(|task| seen.insert((task.name, task.ordinal))));
}

/// Every job has its text, its reason and, where it says numbers, words for when they are not known; all short enough
/// for a phone and a tick list.
#[test]
fn every_job_is_worded_shortly() {
    let words = Words::of(Locale::English);
    for spec in table::all() {
        let key = format!("task-{}", spec.name);
        let why = words.attribute(&key, "why", &[]).unwrap_or_default();
        assert!((10..160).contains(&why.chars().count()), "{key}: {why}");
        let unknown = words.attribute(&key, "unknown", &[]);
        assert_eq!(unknown.is_some(), !spec.details.is_empty(), "{key}");
        assert!(unknown.is_none_or(|text| text.chars().count() < 90), "{key}");
    }
    let viewer = Viewer::plain();
    for file in [sample::complete(), sample::MANGO_RIDGE.replace("18.0", "180.0").replace("1600", "49999")] {
        let raws = advice::plan_file::read(&file).unwrap();
        let plan = plan::work_out(plan::read(&raws, quantity::Source::Hand, false).answers);
        for task in &plan.tasks {
            let (text, _) = Shown::new(&plan, &viewer).job(task);
            assert!((5..90).contains(&text.chars().count()), "{}: {text}", task.name);
            assert!(!text.contains("{$"), "{text}");
        }
    }
}

/// No job names a medicine, and where fire, gas or strong chemicals are near, the reason says what they do to people.
#[test]
fn dangerous_work_says_its_danger() {
    let words = Words::of(Locale::English);
    let why = |name: &str| words.attribute(&format!("task-{name}"), "why", &[]).unwrap();
    for (name, said) in [
        ("disinfect-first", "poison gas"),
        ("disinfect-second", "goggles"),
        ("brooder-trial", "no smell and kills"),
        ("stand-by", "no smell and kills"),
        ("warming", "Nobody sleeps"),
        ("night-rounds", "headache means out"),
        ("earth-limed", "burns eyes"),
        ("dead-pit", "well"),
        ("sale", "call the state vet"),
    ] {
        assert!(why(name).contains(said), "{name}: {}", why(name));
    }
}

/// The page and the tick list show every job once.
#[test]
fn the_page_and_the_tick_list_hold_every_job() {
    let plan = sample::plan(&sample::complete());
    let viewer = Viewer::plain();
    let shown = Shown::new(&plan, &viewer);
    let items = |document: &present::Document, ticks: bool| -> usize {
        document
            .every_block()
            .into_iter()
            .filter_map(|block| match block {
                present::Block::Steps(steps) if steps.ticks == ticks && !steps.ordered => {
                    Some(steps.items.len())
                }
                _ => None,
            })
            .sum()
    };
    assert_eq!(items(&shown.document(), false), plan.tasks.len());
    let checklist = shown.countdown_checklist();
    assert_eq!(items(&checklist, true), plan.tasks.len());
    let headings: Vec<&str> = checklist
        .blocks
        .iter()
        .filter_map(|block| match block {
            present::Block::Heading { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(
        headings,
        [
            "3 weeks before: day −21 to −15",
            "2 weeks before: day −14 to −8",
            "The week before: day −7 to −1",
            "Week 1: day 0 to 6",
            "Week 2: day 7 to 13",
            "Week 3: day 14 to 20",
            "Week 4: day 21 to 27",
            "Week 5: day 28 to 34",
            "Week 6: day 35 to 41",
            "Week 7: day 42 to 48",
            "Week 9: day 56 to 62",
        ]
    );
}

#[test]
fn a_plan_as_data_tells_its_jobs() {
    let plan = sample::plan(&sample::complete());
    let json = serde_json::to_value(present::view::plan(&plan, &Viewer::plain(), false)).unwrap();
    let sent = json["tasks"].as_array().unwrap();
    assert_eq!(sent.len(), plan.tasks.len());
    let air = sent.iter().find(|task| task["name"] == "air").unwrap();
    assert_eq!((air["date"].as_str(), air["until"].as_str()), (Some("2027-09-07"), Some("2027-09-09")));
    assert_eq!(air["age_d"], -7);
    assert!(air["why"].as_str().unwrap().contains("overnight"));
    assert!(sent.iter().find(|task| task["name"] == "wash").unwrap().get("until").is_none());
}

/// Tasks are worked out from what a plan shows, and from nothing else.
#[test]
fn tasks_follow_from_answers_and_figures_alone() {
    let plan = sample::plan(&sample::complete());
    assert_eq!(tasks::tasks(&plan.answers, &plan.outcome), plan.tasks);
}

/// Lines are flushed, filled with sanitiser while no bird is in the house, and rinsed before litter and chicks come in; bleach
/// of about 38 mg in a litre, held for hours to a day: University of Georgia, Cleaning and Disinfection Procedures.
#[test]
fn lines_are_cleaned_while_no_bird_drinks() {
    let plan = sample::plan(&sample::complete());
    let ages = ["birds-out", "flush-lines", "line-clean", "line-rinse", "disinfect-first", "water-in"]
        .map(|name| one(&plan.tasks, name).age_d);
    assert!(ages.is_sorted() && ages[0] < ages[2] && ages[2] < ages[3] && ages[3] < ages[5], "{ages:?}");
    // 40 m of 22 mm hold 15.2 L; a tenth more in whole litres; 3.5 % holds 35 g in a litre.
    let get = |id| crate::sample::number(&plan, id);
    assert!((get("water.line_volume") - 40.0 * std::f64::consts::PI * 0.011 * 0.011 * 1000.0).abs() < 1e-3);
    assert_eq!(get("water.line_mix"), 17.0);
    assert!((get("water.line_product") - 17.0 * 38.0 / 35.0).abs() < 1e-9);
    // Who gives water in founts has no line to clean.
    let founts = sample::complete()
        .replace("drinker_kind = \"bell\"", "drinker_kind = \"large-fount\"")
        .replace("line_length_m = 40\n", "");
    assert!(named(&sample::plan(&founts).tasks, "line-clean").is_empty());
}
