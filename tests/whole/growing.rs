//! A running batch: its figures against their formula texts, its pages, and what it is held against.

use std::collections::{BTreeSet, HashMap};

use advice::families;
use advice::past::Past;
use advice::procedure::By;
use advice::series::{Until, Way};
use advice::walk::Walk;
use advice::working::working;
use present::{Block, Document, Locale, Viewer, batch, html, text};

use crate::evaluator::{evaluate, evaluate_over};
use crate::running::{self, LAST, Pen, RUNNING};
use crate::words::{visible, words_in};

/// The figures that only a running batch has.
const OF_A_BATCH: [&str; 5] = ["growing.", "walk.", "store.", "chicks.", "outlook."];

/// Feeds that the running batch is done with: what is left of them is never eaten.
const DONE_WITH: [&str; 2] = ["outlook.starter_left_day", "outlook.grower_left_day"];

fn is_of_a_batch(id: &str) -> bool {
    OF_A_BATCH.iter().any(|section| id.starts_with(section)) && !DONE_WITH.contains(&id)
}

fn pages(walk: &Walk, past: &Past, viewer: &Viewer) -> Vec<Document> {
    vec![batch::growing(walk, past, viewer), batch::store(walk, viewer), batch::brooding(walk, viewer)]
}

fn on(walk: &Walk, id: &str, day: i32) -> f64 {
    walk.plan.outcome.on_day(id, day).unwrap_or_else(|| panic!("{id} on day {day}"))
}

fn number(walk: &Walk, id: &str) -> f64 {
    walk.plan.outcome.number(id).unwrap_or_else(|| panic!("{id}"))
}

#[test]
fn every_figure_of_a_batch_is_worked_out_as_its_formula_says() {
    let (walk, _) = running::walk();
    for spec in families::figures().filter(|spec| is_of_a_batch(spec.id)) {
        let working = working(&walk.plan.answers, &walk.plan.outcome, spec.id);
        let working = working.unwrap_or_else(|| panic!("{} is not worked out", spec.id));
        let By::Rule(rule) = &working.worked.by else { continue };
        let inputs: HashMap<&str, f64> =
            working.inputs.iter().map(|input| (input.symbol, input.resolved.value)).collect();
        let lists = working.inputs.iter().filter(|input| !input.list.is_empty());
        let lists: Vec<_> = lists.map(|input| (input.symbol, input.list.as_slice())).collect();
        let by_text = evaluate_over(rule.formula, &inputs, &lists).unwrap();
        let value = working.worked.figure.value.number();
        assert!((by_text - value).abs() <= 1e-9 * value.abs().max(1.0), "{}: {value} {by_text}", spec.id);
    }
}

#[test]
fn every_day_of_a_batch_is_what_its_formula_says() {
    let (walk, _) = running::walk();
    let age = walk.diary.age_today().unwrap();
    for spec in families::series().filter(|spec| spec.until == Until::Today) {
        // The house's air has a page of its own.
        if ["growing.coldest_by_day", "growing.warmest_by_day"].contains(&spec.id) {
            continue;
        }
        let Way::Rules(_) = &spec.way else { continue };
        let mut known = 0;
        for day in 0..=age {
            let Some((rule, resolved)) = walk.plan.outcome.day_inputs(&walk.plan.answers, spec, day) else {
                continue;
            };
            let inputs: HashMap<&str, f64> =
                rule.inputs.iter().zip(&resolved).map(|(input, value)| (input.symbol, value.value)).collect();
            let (by_text, value) = (evaluate(rule.formula, &inputs).unwrap(), on(&walk, spec.id, day));
            assert!((by_text - value).abs() <= 1e-9 * value.abs().max(1.0), "{} day {day}", spec.id);
            known += 1;
        }
        assert!(known > 0, "{} is known on no day", spec.id);
    }
}

/// Worked by hand from what was written.
#[test]
fn the_figures_are_those_of_a_pencil() {
    let (walk, _) = running::walk();
    // Boxes of 4620, 4580 and 4650 g, 380 g empty, 102 chicks: 4616.67 - 380 = 4236.67, a hundred-and-second of it.
    assert!((number(&walk, "growing.arrival_weight") - 4236.0 / 102.0 - 0.006536).abs() < 1e-5);
    // Lost on days 0 to 6: 3 + 4 + 3 + 2 + 2 + 1 + 1 = 16 of 1630.
    assert!((number(&walk, "growing.first_week_losses") - 1600.0 / 1630.0).abs() < 1e-9);
    // Day 9 was not written.
    assert_eq!(number(&walk, "growing.feed_unwritten"), 1.0);
    assert!(walk.plan.outcome.on_day("growing.water_to_feed_by_day", 9).is_none());
    // From 1 000-odd grams on one weighing to the next, by the day.
    let gain = (on(&walk, "growing.weight_by_day", 28) - on(&walk, "growing.weight_by_day", 21)) / 7.0;
    assert!((number(&walk, "growing.gain") - gain).abs() < 1e-9);
    // Three birds were eaten on day 24, at the weight of day 21.
    let eaten = 3.0 * on(&walk, "growing.weight_by_day", 21) / 1000.0;
    assert!((on(&walk, "growing.left_kg_to_date", 28) - eaten).abs() < 1e-9);
    let live = on(&walk, "growing.alive_by_day", 28) * on(&walk, "growing.weight_by_day", 28) / 1000.0;
    let fcr = number(&walk, "growing.feed") / (live + eaten);
    assert!((number(&walk, "growing.fcr") - fcr).abs() < 1e-9, "{fcr}");
    assert!((1.0..2.5).contains(&fcr), "{fcr}");
}

/// Of two weighings with the same error, the difference is off by the square root of two as much.
#[test]
fn a_gain_is_off_by_both_weighings() {
    let (walk, _) = running::walk();
    let half = |series: &quantity::Series, day: f64| {
        let at = series.index.iter().position(|index| *index == day).unwrap();
        (series.high[at] - series.low[at]) / 2.0
    };
    let series = |id: &str| walk.plan.series(id).unwrap();
    let weights = series("growing.weight_by_day");
    let both = half(weights, 21.0).hypot(half(weights, 28.0)) / 7.0;
    assert!((half(series("growing.gain_by_day"), 28.0) - both).abs() < 1e-9);
}

#[test]
fn every_figure_of_growth_stands_on_a_page() {
    let (walk, past) = running::walk();
    let shown: BTreeSet<&str> = pages(&walk, &past, &Viewer::plain())
        .iter()
        .flat_map(|page| page.every_block().into_iter().cloned().collect::<Vec<_>>())
        .flat_map(|block| match block {
            Block::Figures(rows) => rows.iter().map(|row| row.id).collect(),
            _ => Vec::new(),
        })
        .collect();
    let figures = families::figures().map(|spec| spec.id).filter(|id| is_of_a_batch(id));
    // These two belong to the walk of the day.
    let elsewhere = ["walk.temperature_target", "walk.light_hours"];
    let hidden: Vec<&str> = figures.filter(|id| !shown.contains(id) && !elsewhere.contains(id)).collect();
    assert!(hidden.is_empty(), "{hidden:?} are shown nowhere");
}

#[test]
fn no_key_shows_through_and_no_word_is_left_in_code() {
    let state = running::state();
    for days in [-10, 0, 3, 7, 12, 28, 40] {
        let (walk, past) = running::walk_on(&state, running::placed().plus_days(days));
        for page in pages(&walk, &past, &Viewer::plain()) {
            let text = text::write(&page, &Viewer::plain(), true);
            assert!(!text.contains('[') && !text.contains("{$"), "day {days}: {text}");
        }
        let viewer = Viewer { locale: Locale::PseudoLong, ..Viewer::plain() };
        let mut allowed: BTreeSet<String> =
            ["Mango", "Ridge", "charcoal", "rice", "husk", "vitamins"].map(str::to_owned).into();
        for work in reference::bibliography::works().unwrap() {
            let texts = [work.authors, work.title, work.published];
            allowed.extend(texts.iter().flat_map(|text| words_in(text)));
        }
        for page in pages(&walk, &past, &viewer) {
            let page = visible(&html::blocks(&page, &viewer).into_string());
            let left: BTreeSet<String> =
                words_in(&page).into_iter().filter(|word| !allowed.contains(word)).collect();
            assert!(left.is_empty(), "day {days}: words that are no message: {left:?}");
        }
    }
}

/// A row about a day leads to what was written about it.
#[test]
fn rows_lead_to_their_days() {
    let (walk, past) = running::walk();
    let viewer = Viewer::plain();
    let page = html::blocks_of_plan(&batch::growing(&walk, &past, &viewer), &viewer, "/batch/b");
    let page = page.into_string();
    for address in ["/batch/b/day/2027-09-22", "/batch/b/day/2027-10-13", "/batch/b/working/growing.fcr"] {
        assert!(page.contains(&format!("href=\"{address}\"")), "{address}");
    }
    // Where the book is a file on a command line there is nowhere to lead to.
    assert!(!html::blocks(&batch::growing(&walk, &past, &viewer), &viewer).into_string().contains("/day/"));
}

#[test]
fn drawings_have_words_and_tell_lines_apart_without_colour() {
    let (walk, past) = running::walk();
    let page = batch::growing(&walk, &past, &Viewer::plain());
    let drawings = page.every_block().into_iter().filter_map(|block| match block {
        Block::Drawing(drawing) => Some(drawing),
        _ => None,
    });
    let drawings: Vec<_> = drawings.collect();
    assert_eq!(drawings.len(), 12);
    let (weights, by_day): (Vec<_>, Vec<_>) =
        drawings.into_iter().partition(|drawing| drawing.name == "weights");
    assert!(weights.len() == 1 && weights[0].svg.contains(">Expected<"), "the last weighing is drawn");
    for drawing in by_day {
        assert!(drawing.alternative.contains("on day"), "{}", drawing.name);
        assert!(drawing.svg.contains("role=\"img\"") && !drawing.svg.contains("NaN"), "{}", drawing.name);
        assert!(drawing.svg.contains("Day of age"), "{}", drawing.name);
    }
}

/// The past is earlier batches of this house, by what was written up to the day looked at.
#[test]
fn the_past_is_earlier_batches_up_to_the_day() {
    let state = running::state();
    let today = running::today();
    let past = Past::read(&state, RUNNING, today);
    assert_eq!(past.batches.iter().map(|one| one.batch).collect::<Vec<_>>(), [LAST, running::FIRST]);
    let weight = |one: &advice::past::PastBatch, day: i32| {
        one.weight_g.iter().find(|(at, _)| *at == day).map(|(_, weight)| *weight)
    };
    let (walk, _) = running::walk();
    // Between the weighings of day 14 and 21 each on its own line, then the mean of the two.
    let between = |one| (weight(one, 14).unwrap() * 4.0 + weight(one, 21).unwrap() * 3.0) / 7.0;
    let mean = (between(&past.batches[0]) + between(&past.batches[1])) / 2.0;
    assert!((on(&walk, "past.weight_by_day", 17) - mean).abs() < 1e-9);
    // Seen from the middle of the last batch, that batch is no past of its own, and its later days are not there.
    let placed = past.batches[0].placement;
    let middle = Past::read(&state, LAST, placed.plus_days(20));
    assert_eq!(middle.batches.iter().map(|one| one.batch).collect::<Vec<_>>(), [running::FIRST]);
    let early = Past::read(&state, RUNNING, running::placed().plus_days(-1));
    assert_eq!(early, Past::default(), "chicks that have not come are held against nothing");
    assert_eq!(Past::read(&state, running::FIRST, today), Past::default());
}

/// What is written about a later day of an earlier batch is not known on the day looked at.
#[test]
fn a_later_day_of_an_earlier_batch_is_not_there() {
    let mut pen = Pen::default();
    let placed = running::placed();
    let chicks = [("counted", "1000".to_owned())];
    pen.note(LAST, placed.plus_days(-10), "chicks-placed", &chicks);
    pen.note(RUNNING, placed, "chicks-placed", &chicks);
    for age in [-1, 5] {
        let weights = [("weights_g", "400 410 420".to_owned())];
        pen.note(LAST, placed.plus_days(age), "weighing", &weights);
    }
    let state = pen.fold();
    let days = |on: i32| {
        let past = Past::read(&state, RUNNING, placed.plus_days(on));
        past.batches[0].weight_g.iter().map(|(day, _)| *day).collect::<Vec<_>>()
    };
    assert_eq!((days(4), days(5)), (vec![9], vec![9, 15]));
}

/// A first batch says so, and a page without weighings says what is missing.
#[test]
fn what_is_not_known_is_said() {
    let mut pen = Pen::default();
    pen.note(RUNNING, running::placed(), "chicks-placed", &[("counted", "1000".to_owned())]);
    let (walk, past) = running::walk_on(&pen.fold(), running::placed().plus_days(2));
    let text = text::write(&batch::growing(&walk, &past, &Viewer::plain()), &Viewer::plain(), false);
    for said in
        ["No past batch yet", "No bird has been weighed yet", "cannot be said before birds are weighed"]
    {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert!(text.contains("On 3 days no feed is written"), "{text}");
}

/// A weighing that is old is told to be old wherever something rests on it.
#[test]
fn an_old_weighing_is_said_to_be_old() {
    let state = running::state();
    let said = |days: i32| {
        let (walk, past) = running::walk_on(&state, running::placed().plus_days(days));
        text::write(&batch::growing(&walk, &past, &Viewer::plain()), &Viewer::plain(), false)
    };
    let old = "Feed eaten since then is not in this figure";
    let flat = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(!flat(said(28)).contains(old) && flat(said(37)).contains(old));
}

/// Worked by hand from what was written: what came, less given, less spoiled.
#[test]
fn the_store_room_is_that_of_a_pencil() {
    let (walk, _) = running::walk();
    let given = |from: i32, to: i32| -> f64 {
        (from..=to).filter_map(|day| walk.plan.outcome.on_day("growing.feed_by_day", day)).sum()
    };
    let starter = 16.0 * 50.0 - given(0, 11);
    assert!((number(&walk, "store.starter_left") - starter).abs() < 1e-9);
    let grower = 70.0 * 50.0 - given(12, 28) - 12.0;
    assert!((number(&walk, "store.grower_left") - grower).abs() < 1e-9);
    assert!((number(&walk, "store.grower_bags_left") - grower / 50.0).abs() < 1e-9);
    // Today's feed is written, so what is left is eaten from tomorrow on, by the birds alive now.
    let expected = walk.plan.answers.by_day("expected.feed_a_bird_g").unwrap();
    let eaten = |day: i32| expected[&day] * on(&walk, "growing.alive_by_day", 28) / 1000.0;
    let days = number(&walk, "store.grower_lasts");
    let whole = days.floor() as i32;
    let fed: f64 = (29..29 + whole).map(eaten).sum();
    assert!(fed <= grower && fed + eaten(29 + whole) > grower, "{days} days of {grower} kg");
    assert!((days.fract() - (grower - fed) / eaten(29 + whole)).abs() < 1e-9);
    let all =
        ["starter", "grower", "finisher", "last"].map(|feed| number(&walk, &format!("store.{feed}_left")));
    assert!((number(&walk, "store.feed_left") - all.iter().sum::<f64>()).abs() < 1e-9);
    assert!(number(&walk, "store.feed_lasts") > days);
    // Evening by evening it comes to the same.
    assert!((on(&walk, "store.feed_by_day", 28) - number(&walk, "store.feed_left")).abs() < 1e-9);
}

/// While today's feed is not written, today is still to be fed.
#[test]
fn a_day_that_is_not_fed_yet_is_still_to_come() {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let came = [("phase", "starter".into()), ("bags", "4".into()), ("bag_kg", "50".into())];
    pen.note(RUNNING, running::placed(), "feed-delivered", &came);
    let on = running::placed().plus_days(5);
    let ahead = |state: &book::BookState| {
        let (walk, _) = running::walk_on(state, on);
        walk.plan.answers.numbers("stock.ahead_kg").len()
    };
    let until = |state: &book::BookState| {
        let (walk, _) = running::walk_on(state, on);
        said(&batch::store(&walk, &Viewer::plain()))
    };
    let unfed = ahead(&pen.clone().fold());
    // 200 kg: the birds eat 46, 50 and 54 kg on days 5 to 7, and 60 on day 8.
    assert!(until(&pen.clone().fold()).contains("until 22 September 2027"));
    pen.note(RUNNING, on, "feed-given", &[("phase", "starter".into()), ("feed_kg", "40".into())]);
    let fed = pen.fold();
    assert_eq!(unfed, ahead(&fed) + 1);
    // 160 kg: 50 and 54 kg on days 6 and 7, from tomorrow on.
    assert!(until(&fed).contains("until 22 September 2027"), "{}", until(&fed));
}

fn said(page: &Document) -> String {
    let text = text::write(page, &Viewer::plain(), false);
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn feed_that_was_given_and_never_came_is_spoken_of() {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let day = running::placed().plus_days(1);
    pen.note(RUNNING, day, "feed-given", &[("phase", "starter".into()), ("feed_kg", "60".into())]);
    let came = [("phase", "starter".into()), ("bags", "1".into()), ("bag_kg", "50".into())];
    pen.note(RUNNING, day, "feed-delivered", &came);
    let (walk, _) = running::walk_on(&pen.fold(), day);
    let text = said(&batch::store(&walk, &Viewer::plain()));
    assert!(text.contains("Starter: more was given than came"), "{text}");
    assert_eq!(number(&walk, "store.starter_lasts"), 0.0);
}

#[test]
fn what_was_bought_and_burnt_adds_up() {
    let (walk, _) = running::walk();
    let bought = advice::stock::bought(&walk.diary);
    let charcoal = bought.iter().find(|one| one.name.as_deref() == Some("charcoal")).unwrap();
    assert_eq!((charcoal.amount, bought.len()), (Some(8.0), 3));
    let burnt = advice::stock::burnt(&walk.diary);
    assert_eq!((burnt[0].amount_kg, burnt[0].days), (168.0, 12));
    let text = said(&batch::store(&walk, &Viewer::plain()));
    for said in ["8 sacks", "168.0 kg", "14.0 kg", "vitamins"] {
        assert!(text.contains(said), "{said}: {text}");
    }
}

/// Published targets: 75, 80, 80, 85, 95 and 100 % full at 2, 4, 8, 12, 24 and 48 hours.
#[test]
fn crops_are_held_against_their_targets() {
    let targets: Vec<(f64, f64)> =
        advice::chicks::crop_targets().map(|target| (target.hours, target.wanted_percent)).collect();
    let wanted = [(2.0, 75.0), (4.0, 80.0), (8.0, 80.0), (12.0, 85.0), (24.0, 95.0), (48.0, 100.0)];
    assert_eq!(targets, wanted);
    let (walk, _) = running::walk();
    // 29 of 40; the interval by Wilson's score, worked by hand: 57.2 to 83.9 %.
    let crops = walk.plan.outcome.get("chicks.crop_2h").unwrap().figure;
    let band = crops.band.unwrap();
    assert_eq!(crops.value.number(), 72.5);
    assert!((band.low - 57.17).abs() < 0.05 && (band.high - 83.89).abs() < 0.05, "{band:?}");
    // Two of three checks of day 1: 39.5 and 40.8 degrees.
    assert!((on(&walk, "chicks.vent_by_day", 1) - 40.15).abs() < 1e-9);
}

/// An odd hour stands for the usual one before it, and too few full crops are said to be too few.
#[test]
fn few_full_crops_are_acted_on() {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let day = running::placed();
    let felt = [("hours_h", "5".into()), ("felt", "40".into()), ("full", "14".into())];
    pen.note(RUNNING, day, "crop-fill", &felt);
    let early = [("hours_h", "1".into()), ("felt", "40".into()), ("full", "2".into())];
    pen.note(RUNNING, day, "crop-fill", &early);
    let (walk, _) = running::walk_on(&pen.fold(), day);
    let text = said(&batch::brooding(&walk, &Viewer::plain()));
    assert!(text.contains("At 4 hours 35 % of the chicks felt had a full crop; 80 % is wanted"), "{text}");
    assert!(text.contains("is the floor warm"), "{text}");
    assert!(walk.plan.outcome.get("chicks.crop_2h").is_none());
}

/// The page shows how the chicks lay last, and beside it what each way of lying means.
#[test]
fn the_last_look_is_drawn() {
    let (walk, _) = running::walk();
    let page = batch::brooding(&walk, &Viewer::plain());
    let drawn: Vec<&str> = page
        .every_block()
        .into_iter()
        .filter_map(|block| match block {
            Block::Drawing(drawing) => Some(drawing.name),
            _ => None,
        })
        .collect();
    assert_eq!((drawn[0], drawn.len()), ("chicks-panting", 6));
    let text = said(&page);
    assert!(text.contains("17 Sep, 13 h: panting") && text.contains("Nobody sleeps here"), "{text}");
}

/// A page about a day is the same whether or not later days are written by now.
#[test]
fn a_page_knows_nothing_of_later_days() {
    let on = running::placed().plus_days(10);
    let all = running::pen();
    let mut until = all.clone();
    until.written.retain(|stored| stored.entry.day <= on);
    assert!(until.written.len() < all.written.len());
    let read = |state: &book::BookState| {
        let (walk, past) = running::walk_on(state, on);
        pages(&walk, &past, &Viewer::plain())
    };
    assert_eq!(read(&all.fold()), read(&until.fold()));
}

/// On paper each table and drawing stands too.
#[test]
fn the_pages_can_be_printed() {
    let (walk, past) = running::walk();
    let viewer = Viewer::plain();
    let print = present::print::write(&pages(&walk, &past, &viewer), present::print::Paper::A4, &viewer);
    let kinds = |kind: &str| {
        print.data["blocks"].as_array().unwrap().iter().filter(|block| block["kind"] == kind).count()
    };
    assert_eq!((kinds("drawing"), print.drawings.len()), (20, 19));
    assert!(kinds("table") >= 9, "{}", kinds("table"));
}
