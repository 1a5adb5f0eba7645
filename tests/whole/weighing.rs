//! Weighings read out of the book, and what is said of them.

use advice::diary::Diary;
use advice::record;
use advice::weighed::{Around, Weighed};
use quantity::{Raw, Source};

use crate::running::{self, Pen, RUNNING};

/// What entries about day 14 say together, and the diary they stand in.
fn day_14(entries: &[&[(&str, &str)]]) -> (Weighed, Diary) {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let day = running::placed().plus_days(14);
    for entry in entries {
        let typed: Vec<(&str, String)> = entry.iter().map(|(key, text)| (*key, (*text).to_owned())).collect();
        pen.note(RUNNING, day, "weighing", &typed);
    }
    let diary = Diary::read(&pen.fold(), RUNNING, day);
    (Weighed::of_day(&diary, day), diary)
}

fn weight_on_14(diary: &Diary) -> [f64; 3] {
    ["book.weight_low_g", "book.weight_g", "book.weight_high_g"]
        .map(|key| diary.answers.by_day(key).unwrap()[&14])
}

fn near(got: [f64; 3], want: [f64; 3]) {
    let close = got.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-6 * want);
    assert!(close, "{got:?}, wanted {want:?}");
}

const DOOR: &str = "400 410 420 430";
const MIDDLE: &str = "380 370 390 380";
const END: &str = "450 460 440 450";

#[test]
fn entries_of_one_day_are_read_together() {
    let (apart, by_two) = day_14(&[&[("weights_g", DOOR)], &[("weights_g", MIDDLE)]]);
    let both = format!("{DOOR} {MIDDLE}");
    let (together, by_one) = day_14(&[&[("weights_g", &both)]]);
    assert_eq!((apart.birds.len(), apart), (8, together));
    assert_eq!(weight_on_14(&by_two), weight_on_14(&by_one));
}

/// Derived: mean ± t(7) sd √(1 - 8 / N) / √8, with the birds that were alive that morning.
#[test]
fn the_range_knows_how_many_are_alive() {
    let (weighed, diary) = day_14(&[&[("weights_g", DOOR)], &[("weights_g", MIDDLE)]]);
    let alive = record::alive_before(&diary, diary.on).unwrap();
    let weights = weighed.weights();
    let sd = model::weighing::standard_deviation(&weights).unwrap();
    let (low, high) = model::weighing::mean_interval(8.0, 397.5, sd, Some(alive), 0.95).unwrap();
    near(weight_on_14(&diary), [low, 397.5, high]);
    let around = Around::of_day(&diary, diary.on);
    assert!(around.expected_g.is_some() && around.age_d == Some(14) && around.flock == Some(alive));
}

/// Three spots that differ: their range is by spots (derived: mean ± t(2) × standard error of the ratio), and far wider.
#[test]
fn spots_are_counted_and_not_their_birds() {
    let all = format!("{DOOR} {MIDDLE} {END}");
    let spots = "door,door,door,Door,middle,middle,middle,middle,end,end,end,end";
    let (_, by_birds) = day_14(&[&[("weights_g", &all)]]);
    let (_, by_spots) = day_14(&[&[("weights_g", &all), ("spots", spots)]]);
    let of = model::weighing::groups::of_groups(&[1660.0, 1520.0, 1800.0], &[4.0; 3]).unwrap();
    let (low, high) = of.mean_interval(0.95).unwrap();
    near(weight_on_14(&by_spots), [low, 415.0, high]);
    let width = |[low, _, high]: [f64; 3]| high - low;
    assert!(width(weight_on_14(&by_spots)) > 3.0 * width(weight_on_14(&by_birds)));
    // Two spots are too few to tell by.
    let two = spots.replace("end", "middle");
    let (_, by_two) = day_14(&[&[("weights_g", &all), ("spots", &two)]]);
    assert_eq!(weight_on_14(&by_two), weight_on_14(&by_birds));
}

/// Crates, with a bird weighed alone as a crate of one (derived by the ratio of totals).
#[test]
fn crates_have_a_mean_and_no_evenness() {
    let (weighed, diary) = day_14(&[&[
        ("group_weights_g", "4100 3900 4050"),
        ("group_birds", "10 10 10"),
        ("weights_g", "420"),
    ]]);
    let of = model::weighing::groups::of_groups(&[4100.0, 3900.0, 4050.0, 420.0], &[10.0, 10.0, 10.0, 1.0])
        .unwrap();
    let (low, high) = of.mean_interval(0.95).unwrap();
    near(weight_on_14(&diary), [low, of.mean, high]);
    let outcome = weighed.result(&Around::of_day(&diary, diary.on)).outcome;
    assert_eq!(outcome.number("weighing.n"), Some(31.0));
    let crates = Weighed { birds: Vec::new(), ..weighed };
    let outcome = crates.result(&Around::default()).outcome;
    assert!(outcome.get("weighing.uniformity").is_none() && outcome.get("weighing.cv").is_some());
}

/// A single crate or bird cannot tell its own error; its range is that of a usual flock, and it is not passed over.
#[test]
fn one_crate_counts_with_a_wide_range() {
    let (_, of_crate) = day_14(&[&[("group_weights_g", "4000"), ("group_birds", "10")]]);
    let half = 1.96 * 0.12 * 400.0 / 10f64.sqrt();
    near(weight_on_14(&of_crate), [400.0 - half, 400.0, 400.0 + half]);
    let (_, of_bird) = day_14(&[&[("weights_g", "400")]]);
    near(weight_on_14(&of_bird), [400.0 * (1.0 - 0.2352), 400.0, 400.0 * 1.2352]);
}

#[test]
fn lists_of_an_entry_go_side_by_side() {
    let faults = |typed: &[(&str, &str)]| {
        let raw = |(key, text): &(&str, &str)| Raw {
            key: (*key).to_owned(),
            text: vec![(*text).to_owned()],
            line: None,
        };
        let raws: Vec<Raw> = typed.iter().map(raw).collect();
        let checked = record::check(record::kind("weighing").unwrap(), &raws, Source::Hand);
        let words = checked.problems.iter();
        words.map(|problem| present::fault::sentence(problem, &present::Viewer::plain())).collect::<Vec<_>>()
    };
    let spots = faults(&[("weights_g", DOOR), ("spots", "door,door")]);
    assert_eq!(spots, ["spots: one is wanted for each of weighed.weights_g, 4 in all."]);
    assert_eq!(faults(&[("group_weights_g", "4000 4100"), ("group_birds", "10")]).len(), 1);
    assert_eq!(faults(&[("group_weights_g", "4000 4100")]).len(), 1);
    assert_eq!(faults(&[("weights_g", DOOR), ("sexes", "cock,hen,hen,cock")]), Vec::<String>::new());
    assert_eq!(faults(&[("hour_h", "7")]).len(), 1, "nothing was weighed");
}
