//! Weighings read out of the book, and what is said of them.

use advice::diary::Diary;
use advice::procedure::By;
use advice::record;
use advice::weighing::{Aim, Weighing};
use quantity::{Raw, Source};

use crate::running::{self, Pen, RUNNING};

/// What entries about day 14 say together, and the diary they stand in.
fn day_14(entries: &[&[(&str, &str)]]) -> (Weighing, Diary) {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let day = running::placed().plus_days(14);
    for entry in entries {
        let typed: Vec<(&str, String)> = entry.iter().map(|(key, text)| (*key, (*text).to_owned())).collect();
        pen.note(RUNNING, day, "weighing", &typed);
    }
    let diary = Diary::read(&pen.fold(), RUNNING, day);
    (Weighing::on(&diary, day), diary)
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
    assert_eq!((apart.readings.len(), apart), (8, together));
    assert_eq!(weight_on_14(&by_two), weight_on_14(&by_one));
}

/// Derived: mean ± t(7) sd √(1 - 8 / N) / √8, with the birds that were alive that morning.
#[test]
fn the_range_knows_how_many_are_alive() {
    let (weighing, diary) = day_14(&[&[("weights_g", DOOR)], &[("weights_g", MIDDLE)]]);
    let alive = record::alive_before(&diary, diary.on).unwrap();
    let weights = weighing.weights();
    let sd = model::weighing::standard_deviation(&weights).unwrap();
    let (low, high) = model::weighing::mean_interval(8.0, 397.5, sd, Some(alive), 0.95).unwrap();
    near(weight_on_14(&diary), [low, 397.5, high]);
    let aim = Aim::on(&diary, diary.on);
    assert!(aim.expected_g.is_some() && aim.age_d == Some(14) && weighing.flock == Some(alive));
}

/// Fewer alive than were weighed cannot be: the range is then that of a flock without end, never a nothing.
#[test]
fn a_flock_smaller_than_what_was_weighed_is_not_believed() {
    let weights = [1900.0, 2000.0, 2100.0, 2050.0];
    let of = |flock| Weighing { flock, ..Weighing::of_weights(&weights) }.mean_and_range();
    assert_eq!(of(Some(3.0)), of(None));
    assert_ne!(of(Some(5.0)), of(None));
}

/// Three spots that differ: their range is by spots (derived: mean ± t(2) × standard error of the ratio), and far wider.
#[test]
fn spots_are_counted_and_not_their_birds() {
    let all = format!("{DOOR} {MIDDLE} {END}");
    let spots = "door,door,door,Door,middle,middle,middle,middle,end,end,end,end";
    let (unnamed, by_birds) = day_14(&[&[("weights_g", &all)]]);
    let (named, by_spots) = day_14(&[&[("weights_g", &all), ("spots", spots)]]);
    let of = model::weighing::groups::of_groups(&[1660.0, 1520.0, 1800.0], &[4.0; 3]).unwrap();
    let (low, high) = of.mean_interval(0.95).unwrap();
    near(weight_on_14(&by_spots), [low, 415.0, high]);
    let width = |[low, _, high]: [f64; 3]| high - low;
    assert!(width(weight_on_14(&by_spots)) > 3.0 * width(weight_on_14(&by_birds)));
    // Two spots are too few to tell by.
    let two = spots.replace("end", "middle");
    let (_, by_two) = day_14(&[&[("weights_g", &all), ("spots", &two)]]);
    assert_eq!(weight_on_14(&by_two), weight_on_14(&by_birds));
    let parts = |weighing: &Weighing| {
        let outcome = weighing.held_against(&Aim::default()).outcome;
        ["weighing.between_spots", "weighing.within_spots"].map(|id| outcome.number(id).is_some())
    };
    assert_eq!(parts(&named), [true; 2]);
    assert_eq!(parts(&unnamed), [false; 2], "no spot, no parts");
    let outcome = named.held_against(&Aim::default()).outcome;
    let between = outcome.get("weighing.between_spots").unwrap();
    let By::Procedure(run) = &between.by else { panic!("a formula") };
    assert_eq!(run.seed, None, "nothing is left to chance");
    assert!(run.accuracy.size() < 1e-9 * between.figure.value.number(), "{:?}", run.accuracy);
}

/// Crates, with a bird weighing alone as a crate of one (derived by the ratio of totals).
#[test]
fn crates_have_a_mean_and_no_evenness() {
    let (weighing, diary) = day_14(&[&[
        ("group_weights_g", "4100 3900 4050"),
        ("group_birds", "10 10 10"),
        ("weights_g", "420"),
    ]]);
    let of = model::weighing::groups::of_groups(&[4100.0, 3900.0, 4050.0, 420.0], &[10.0, 10.0, 10.0, 1.0])
        .unwrap();
    let (low, high) = of.mean_interval(0.95).unwrap();
    near(weight_on_14(&diary), [low, of.mean, high]);
    let outcome = weighing.held_against(&Aim::on(&diary, diary.on)).outcome;
    assert_eq!(outcome.number("weighing.n"), Some(31.0));
    let readings = weighing.readings.into_iter().filter(|one| one.birds > 1).collect();
    let crates = Weighing { readings, scale_step_g: None, flock: None };
    let outcome = crates.held_against(&Aim::default()).outcome;
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
    assert_eq!(faults(&[("hour_h", "7")]).len(), 1, "nothing was weighing");
}

mod in_words {
    use advice::weigh_file;
    use advice::weighing::{Aim, Weighing};
    use present::document::Align;
    use present::weighing::{Slip, document, file_fault, running, slip};
    use present::{Block, Document, Locale, Units, Viewer, html, text, view};

    fn viewer(locale: Locale) -> Viewer {
        Viewer { locale, ..Viewer::plain() }
    }

    fn flock(birds: u32) -> Weighing {
        let weight = |n: u32| {
            let z = model::chance::Draw { seed: 11, scenario: 0, stream: 0, day: 0, n }.normal();
            (2000.0 * (1.0 + 0.1 * z)).round()
        };
        let weights: Vec<f64> = (0..birds).map(weight).collect();
        Weighing { flock: Some(1500.0), ..Weighing::of_weights(&weights) }
    }

    fn said(weighing: &Weighing, aim: &Aim) -> String {
        let result = weighing.held_against(aim);
        let plain = viewer(Locale::English);
        text::write(&document(weighing, &result, "Mango Ridge", &plain), &plain, true)
    }

    /// Everything a weighing can say, in every language, has words.
    #[test]
    fn nothing_shows_through() {
        let spots =
            "weight_g,spot,sex\n1820,a,m\n1900,a,f\n1700,b,m\n1950,b,f\n2100,c,m\n2000,c,f\n9195,c,f\n";
        let crates = "group_weight_g,birds,spot\n18200,10,a\n19100,10,b\n";
        let of_file = |text: &str| weigh_file::read(text).unwrap();
        let many = [flock(60), flock(7), of_file(spots), of_file(crates), of_file("weight_g\n1820\n")];
        let told = Aim { expected_g: Some(2050.0), ..Aim::default() };
        let by_age = Aim { age_d: Some(35), standard: Some("open-house"), ..Aim::default() };
        for (weighing, aim) in many.iter().flat_map(|one| [(one, &told), (one, &by_age)]) {
            let result = weighing.held_against(aim);
            for locale in Locale::ALL {
                let viewer = viewer(locale);
                let whole = document(weighing, &result, "", &viewer);
                let short = Document { blocks: running(weighing, &result, &viewer), ..Document::default() };
                for document in [whole, short, slip(&paper(), &viewer)] {
                    let text = text::write(&document, &viewer, true);
                    assert!(!text.contains("{$") && !text.contains('['), "{text}");
                    assert!(!html::blocks(&document, &viewer).into_string().is_empty());
                }
            }
        }
    }

    #[test]
    fn it_says_when_it_is_enough() {
        let aim = Aim::default();
        let few = said(&flock(20), &aim);
        assert!(few.contains("Weigh about ") && few.contains(" more to know the mean to 3 %"), "{few}");
        let many = said(&flock(90), &aim);
        assert!(many.contains("Enough: the mean is known to 3 % either way."), "{many}");
        let short = running(&flock(20), &flock(20).held_against(&aim), &viewer(Locale::English));
        assert!(matches!(&short[0], Block::Lead { label, .. } if label.contains("20 birds")), "{short:?}");
        assert_eq!(
            running(&Weighing::default(), &Weighing::default().held_against(&aim), &Viewer::plain()),
            []
        );
    }

    /// Spots far apart are not weighed away with more birds, and no range goes below nothing.
    #[test]
    fn more_spots_are_wanted_where_spots_differ() {
        let spots = "weight_g,spot\n430,a\n452,a\n475,b\n390,b\n900,c\n940,c\n";
        let weighing = Weighing { flock: Some(900.0), ..weigh_file::read(spots).unwrap() };
        let text = said(&weighing, &Aim::default());
        assert!(text.contains("weigh some at other spots") && !text.contains("Weigh about"), "{text}");
        let outcome = weighing.held_against(&Aim::default()).outcome;
        assert_eq!(outcome.number("weighing.birds_wanted"), Some(900.0));
        assert_eq!(outcome.get("weighing.mean").unwrap().figure.band.unwrap().low, 0.0);
    }

    /// A mean is called low only where its range lies below what was expected.
    #[test]
    fn luck_of_the_draw_is_not_called_a_lag() {
        let of = |expected_g: f64| said(&flock(60), &Aim { expected_g: Some(expected_g), ..Aim::default() });
        assert!(of(2500.0).contains("below the 2\u{a0}500 g expected"), "{}", of(2500.0));
        assert!(of(1500.0).contains("above the 1\u{a0}500 g expected"));
        assert!(of(2010.0).contains("the flock can be on it"));
    }

    /// A slip of the pen is asked about, and the weight still counts.
    #[test]
    fn an_odd_weight_is_asked_about_and_counts() {
        let mut weighing = flock(40);
        weighing.readings[11].grams = 20_300.0;
        let text = said(&weighing, &Aim::default());
        assert!(text.contains("Weight 12: 20\u{a0}300 g") && text.contains("Then 2\u{a0}030 g"), "{text}");
        let mean = weighing.held_against(&Aim::default()).outcome.number("weighing.mean").unwrap();
        assert!((mean - model::weighing::mean(&weighing.weights()).unwrap()).abs() < 1e-9);
    }

    #[test]
    fn the_drawing_marks_what_was_expected() {
        let weighing = flock(60);
        let aim = Aim { expected_g: Some(2050.0), ..Aim::default() };
        let customary = Viewer { units: Units::Customary, ..Viewer::plain() };
        for (viewer, expected) in [(Viewer::plain(), "Expected were 2\u{a0}050 g"), (customary, "oz")] {
            let document = document(&weighing, &weighing.held_against(&aim), "", &viewer);
            let drawing = document.blocks.iter().find_map(|block| match block {
                Block::Drawing(drawing) => Some(drawing),
                _ => None,
            });
            let drawing = drawing.unwrap();
            assert!(drawing.alternative.contains(expected) || expected == "oz", "{}", drawing.alternative);
            assert!(drawing.svg.contains(">Expected<") && drawing.svg.contains("role=\"img\""));
            let counted: usize = drawing.data.rows.iter().map(|row| row[2].parse::<usize>().unwrap()).sum();
            assert_eq!(counted, 60);
        }
    }

    fn paper() -> Slip<'static> {
        Slip { whose: "Mango Ridge", age_d: Some(21), expected_g: Some(812.0), birds: 100.0, spots: 3 }
    }

    /// Boxes for all birds, and no more than a page holds.
    #[test]
    fn the_slip_has_a_box_a_bird() {
        let rows_and_spots = |birds: f64| {
            let made = slip(&Slip { birds, ..paper() }, &Viewer::plain());
            let table = made.blocks.into_iter().find_map(|block| match block {
                Block::Table(table) => Some(table),
                _ => None,
            });
            let table = table.unwrap();
            (table.rows.len() - 1, table.columns.iter().filter(|(_, align)| *align == Align::Line).count())
        };
        for birds in [30.0, 50.0, 100.0] {
            let (rows, spots) = rows_and_spots(birds);
            assert!(
                (rows * spots) as f64 >= birds && rows <= 12 && (3..=9).contains(&spots),
                "{birds}: {rows} × {spots}"
            );
        }
        assert_eq!(rows_and_spots(4.0), (5, 3));
    }

    #[test]
    fn bad_files_say_line_column_and_the_way_out() {
        let faults = |text: &str| file_fault(&weigh_file::read(text).unwrap_err(), &viewer(Locale::English));
        assert_eq!(
            faults("weight_g,sex\n1820,cock\n18200,\n1 900,cat\n"),
            [
                "line 3: weight_g is 18200, outside 20 g to 10\u{a0}000 g. Did you mean 1\u{a0}820?",
                "line 4: sex is “cat”. It can be: cock, hen.",
            ]
        );
        assert_eq!(
            faults("wieght_g\n1820\n"),
            ["Line 1: column “wieght_g” is not read. Did you mean weight_g?"]
        );
        assert!(faults("").concat().contains("Write a heading such as weight_g"));
        assert!(faults("day,dead\n1,2\n").concat().contains("Line 1: no column of weights."));
        let beside = faults("weight_g,birds\n18200,10\n");
        assert_eq!(beside.len(), 1, "{beside:?}");
    }

    /// What programs read: names, ranges and units.
    #[test]
    fn the_figures_go_out_as_json() {
        let weighing = flock(60);
        let json =
            serde_json::to_value(view::sum(&weighing.held_against(&Aim::default()), &Viewer::plain(), false))
                .unwrap();
        for (name, unit) in
            [("weighing.mean", "g"), ("weighing.cv", "percent"), ("weighing.uniformity", "percent")]
        {
            let figure = &json["figures"][name];
            assert!(figure["low"].as_f64() < figure["value"].as_f64(), "{figure}");
            assert!(figure["high"].as_f64() > figure["value"].as_f64(), "{figure}");
            assert!(figure["unit"].as_str().is_some_and(|own| own == unit || unit == "percent"), "{figure}");
        }
        assert_eq!(json["figures"]["weighing.n"]["value"], 60.0);
    }
}
