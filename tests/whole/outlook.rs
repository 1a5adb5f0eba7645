//! What is likely from here: figures against the futures they are counted from, and bad input.

use advice::families::outlook::{MEAN_WEIGHT, SIMULATION, WATER};
use advice::outlook_table;
use advice::walk::Walk;
use model::risk;
use present::{Viewer, batch, outlook, text};
use quantity::{Currency, Series};

use crate::running::{self, Pen, RUNNING};

fn series<'a>(walk: &'a Walk, id: &str) -> &'a Series {
    walk.plan.series(id).unwrap_or_else(|| panic!("{id}"))
}

fn number(walk: &Walk, id: &str) -> Option<f64> {
    walk.plan.outcome.number(id)
}

fn said(walk: &Walk) -> String {
    let page = batch::ahead(walk, &Viewer::plain());
    text::write(&page, &Viewer::plain(), false).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The futures as a spreadsheet has them: a row a future and day.
fn table(walk: &Walk) -> Vec<Vec<f64>> {
    let (now, futures) = walk.plan.outcome.drawn().futures().unwrap();
    let text = outlook_table::csv(now, futures, Currency::UNKNOWN);
    let cells = |line: &str| line.split(',').map(|cell| cell.parse().unwrap_or(f64::NAN)).collect();
    text.lines().skip(1).map(cells).collect()
}

fn middle_and_ends(column: &[f64]) -> [f64; 3] {
    let sorted = risk::sorted(column);
    [0.5, 0.05, 0.95].map(|share| risk::quantile(&sorted, share).unwrap())
}

/// Whoever has the file gets our figures: the middle and nine of ten, of weights by day, of birds at sale, and of the first
/// day on which a row passes a limit.
#[test]
fn figures_are_counted_from_the_file() {
    let (walk, _) = running::walk();
    let rows = table(&walk);
    let weights = series(&walk, MEAN_WEIGHT);
    for (at, day) in weights.index.iter().enumerate() {
        let column: Vec<f64> = rows.iter().filter(|row| row[1] == *day).map(|row| row[2]).collect();
        assert_eq!(column.len(), 2_000);
        assert_eq!(middle_and_ends(&column), [weights.values[at], weights.low[at], weights.high[at]]);
    }
    let figure = |id: &str| {
        let figure = &walk.plan.outcome.get(id).unwrap().figure;
        let band = figure.band.unwrap();
        [figure.value.number(), band.low, band.high]
    };
    let sale = number(&walk, "sale.first_age").unwrap();
    let birds: Vec<f64> = rows.iter().filter(|row| row[1] == sale).map(|row| row[3]).collect();
    assert_eq!(middle_and_ends(&birds), figure("outlook.birds_at_sale"));
    let wanted = 1000.0 * number(&walk, "space.weight_at_sale").unwrap();
    let first = |holds: &dyn Fn(&[f64]) -> bool| {
        let last = weights.index.last().unwrap() + 1.0;
        let day = |number: usize| {
            let own = &rows[number * weights.index.len()..(number + 1) * weights.index.len()];
            own.iter().find(|row| holds(row)).map_or(last, |row| row[1])
        };
        middle_and_ends(&(0..2_000).map(day).collect::<Vec<f64>>())
    };
    assert_eq!(first(&|row| row[2] >= wanted), figure("outlook.day_of_target"));
    assert_eq!(first(&|row| row[9] < 0.0), figure("outlook.feed_left_day"));
}

#[test]
fn one_seed_gives_the_same_and_another_moves_it_by_its_accuracy() {
    let (walk, past) = running::walk();
    let (again, _) = running::walk();
    let mut moved = walk.plan.answers.clone();
    let seed = advice::families::field("settings.seed").unwrap();
    let value = quantity::Value::Number(2.0);
    moved.set(seed, quantity::Given { typed: String::new(), value, line: None, usual: None });
    let moved = advice::plan::of_book_ahead(moved);
    for spec in SIMULATION.figures {
        let Some(worked) = walk.plan.outcome.get(spec.id) else { continue };
        assert_eq!(Some(&worked.figure), again.plan.outcome.get(spec.id).map(|worked| &worked.figure));
        let advice::procedure::By::Procedure(run) = &worked.by else { panic!("{}", spec.id) };
        assert_eq!((run.seed, run.count), (Some(1), 2_000));
        let off = (moved.outcome.number(spec.id).unwrap() - worked.figure.value.number()).abs();
        // Days are whole.
        let whole = f64::from(u8::from(spec.unit == quantity::Unit::Day));
        assert!(off <= whole + 6.0 * run.accuracy.size(), "{}: {off}", spec.id);
    }
    let weights = |plan: &advice::plan::Plan| plan.series(MEAN_WEIGHT).unwrap().values.clone();
    assert_ne!(weights(&moved), weights(&walk.plan));
    assert_eq!(past.batches.len(), 2);
}

/// The middle at the sale of a batch of 2.0 kg birds lies near its curve; the range gets narrower as weighings come.
#[test]
fn the_range_narrows_as_weighings_come() {
    let state = running::state();
    let width = |age: i32| {
        let (walk, _) = running::walk_on(&state, running::placed().plus_days(age));
        let band = walk.plan.outcome.get("outlook.weight_at_sale").unwrap().figure.band.unwrap();
        band.high - band.low
    };
    let widths = [2, 14, 28].map(width);
    assert!(widths.is_sorted_by(|one, other| one > other), "{widths:?}");
}

#[test]
fn without_a_weighing_it_says_how_wide_and_why() {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let (walk, _) = running::walk_on(&pen.fold(), running::placed().plus_days(3));
    let text = said(&walk);
    assert!(text.contains("No bird was weighed yet. So the range is as wide as houses differ: 1"), "{text}");
    assert!(text.contains("No earlier batch of this house is known"), "{text}");
    let (weights, last) = (series(&walk, MEAN_WEIGHT), series(&walk, MEAN_WEIGHT).index.len() - 1);
    let ratio = weights.high[last] / weights.low[last];
    assert!((1.25..1.40).contains(&ratio), "{ratio}");
}

/// Birds of another batch on the scale: shown, hardly believed, and hardly moving anything; a second weighing that agrees
/// is believed.
#[test]
fn a_weighing_of_another_batch_is_doubted_once() {
    let at_sale = |pen: Pen, age: i32| {
        let (walk, _) = running::walk_on(&pen.fold(), running::placed().plus_days(age));
        (number(&walk, "outlook.weight_at_sale").unwrap(), said(&walk))
    };
    let (honest, plain) = at_sale(running::pen(), 30);
    assert!(!plain.contains("Was it another batch"), "{plain}");
    let mut wrong = running::pen();
    wrong.weighing(RUNNING, running::placed().plus_days(30), 650.0);
    let (doubted, text) = at_sale(wrong.clone(), 30);
    assert!(text.contains("The weighing of day 30 is lighter than it should be"), "{text}");
    assert!(text.contains("Was it another batch, or kilograms typed as grams?"), "{text}");
    assert!((doubted / honest - 1.0).abs() < 0.04, "{honest} {doubted}");
    wrong.weighing(RUNNING, running::placed().plus_days(31), 670.0);
    let (believed, _) = at_sale(wrong, 31);
    assert!(believed < 0.75 * honest, "{honest} {believed}");
}

#[test]
fn feed_that_never_came_is_not_counted_on() {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let day = running::placed().plus_days(1);
    let came = [("phase", "starter".into()), ("bags", "1".into()), ("bag_kg", "50".into())];
    pen.note(RUNNING, day, "feed-delivered", &came);
    pen.note(RUNNING, day, "feed-given", &[("phase", "starter".into()), ("feed_kg", "60".into())]);
    let (walk, _) = running::walk_on(&pen.fold(), day);
    assert!(said(&walk).contains("More feed was given than ever came."), "{}", said(&walk));
    assert_eq!(number(&walk, "outlook.feed_left_day"), Some(2.0));
}

/// No delivery written is not the same as no feed.
#[test]
fn a_store_room_that_nobody_wrote_down_is_not_known() {
    let mut pen = Pen::default();
    pen.adopt_and_place(RUNNING);
    let (walk, _) = running::walk_on(&pen.fold(), running::placed().plus_days(3));
    assert_eq!(number(&walk, "outlook.feed_left_day"), None);
    assert!(number(&walk, "outlook.birds_at_sale").is_some());
}

#[test]
fn a_batch_that_has_not_begun_has_nothing_ahead() {
    let (walk, _) = running::walk_on(&running::state(), running::placed().plus_days(-5));
    assert!(said(&walk).contains("Nothing can be said yet"));
    let view = outlook::view(&walk);
    assert!(view.figures.is_empty() && view.series.is_empty());
}

/// Up to today the shaded range is what was foretold then: nine of ten, in grams, about each weighing.
#[test]
fn what_was_foretold_is_kept_beside_the_truth() {
    let (walk, _) = running::walk();
    let (said, weighed) = (series(&walk, "outlook.said_by_day"), series(&walk, "growing.weight_by_day"));
    for (day, weight) in weighed.index.iter().zip(&weighed.values) {
        let at = said.index.iter().position(|index| index == day).unwrap();
        assert!((0.6..1.6).contains(&(weight / said.values[at])), "day {day}");
        assert!(said.low[at] < said.values[at] && said.values[at] < said.high[at]);
    }
    let before = running::walk_on(&running::state(), running::placed().plus_days(27)).0;
    let foretold = series(&before, MEAN_WEIGHT);
    let at = said.index.iter().position(|index| *index == 28.0).unwrap();
    assert!((foretold.values[0] / said.values[at] - 1.0).abs() < 0.005);
}

/// How far the birds differ and how much they drink: counted again from the file, by hand where a bird's weight is asked.
#[test]
fn birds_and_water_are_counted_from_the_file() {
    let (walk, _) = running::walk();
    let rows = table(&walk);
    let figure = |id: &str| {
        let figure = &walk.plan.outcome.get(id).unwrap_or_else(|| panic!("{id}")).figure;
        let band = figure.band.unwrap();
        [figure.value.number(), band.low, band.high]
    };
    let sale = number(&walk, "sale.first_age").unwrap();
    let on_sale: Vec<&Vec<f64>> = rows.iter().filter(|row| row[1] == sale).collect();
    // A lognormal law of mean m and coefficient of variation c: ln of its median is ln m − s² / 2, with s² = ln(1 + c²).
    let law = |row: &[f64]| {
        let variance = ((row[13] / 100.0).powi(2) + 1.0).ln();
        (row[2].ln() - variance / 2.0, variance.sqrt())
    };
    let end = |z: f64| {
        let of = |row: &&Vec<f64>| {
            let (middle, deviation) = law(row);
            (middle + z * deviation).exp()
        };
        middle_and_ends(&on_sale.iter().map(of).collect::<Vec<f64>>())
    };
    // 1.644854: the point of a bell curve that leaves 5 % above.
    let [light, heavy] = [-1.644_853_626_951_472_2, 1.644_853_626_951_472_2].map(end);
    let near = |one: [f64; 3], other: [f64; 3]| {
        assert!(
            one.iter().zip(other).all(|(one, other)| (one / other - 1.0).abs() < 1e-3),
            "{one:?} {other:?}"
        );
    };
    near(light, figure("outlook.light_at_sale"));
    near(heavy, figure("outlook.heavy_at_sale"));
    let taken = |row: &&Vec<f64>| {
        let (middle, deviation) = law(row);
        let below = |grams: f64| share_below((grams.ln() - middle) / deviation);
        100.0 * (below(2_600.0) - below(1_800.0))
    };
    let share = middle_and_ends(&on_sale.iter().map(taken).collect::<Vec<f64>>());
    let told = figure("outlook.birds_taken");
    assert!(share.iter().zip(told).all(|(one, other)| (one - other).abs() < 0.02), "{share:?} {told:?}");
    let water = series(&walk, WATER);
    for (at, day) in water.index.iter().enumerate() {
        let column: Vec<f64> = rows.iter().filter(|row| row[1] == *day).map(|row| row[14]).collect();
        assert_eq!(middle_and_ends(&column), [water.values[at], water.low[at], water.high[at]]);
    }
    let days = water.index.len();
    let most = |number: usize| {
        let own = rows[number * days..(number + 1) * days].iter().filter(|row| row[1] <= sale);
        own.map(|row| row[14]).fold(0.0, f64::max)
    };
    assert_eq!(middle_and_ends(&(0..2_000).map(most).collect::<Vec<f64>>()), figure("outlook.water_peak"));
    let text = said(&walk);
    assert!(text.contains("weigh what the buyer takes on that day: 1.80 kg to 2.60 kg"), "{text}");
    assert!(text.contains("Tomorrow they likely drink"), "{text}");
}

/// The share of a bell curve below a point, by the sum of its series: shares no code with the program's.
fn share_below(x: f64) -> f64 {
    if x.abs() > 8.0 {
        return f64::from(u8::from(x > 0.0));
    }
    let (mut term, mut sum, mut n) = (x, x, 1.0);
    while term.abs() > 1e-16 {
        n += 2.0;
        term *= x * x / n;
        sum += term;
    }
    0.5 + sum * (-x * x / 2.0).exp() / std::f64::consts::TAU.sqrt()
}
