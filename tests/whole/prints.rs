//! Sheets to print: dates, expected values and sums on paper are those of the plan.

use advice::door_sheet::{self, Todo};
use advice::exercise;
use advice::outcome::Outcome;
use advice::past::{Past, PastBatch};
use advice::purchases;
use present::document::{Align, Block, DayGrid, Document, Fill, Table};
use present::plan::{SHEETS, Shown};
use present::{Viewer, show};
use quantity::{CivilDay, Unit};

use crate::sample;

fn grid(document: &Document) -> &DayGrid {
    document
        .blocks
        .iter()
        .find_map(|block| match block {
            Block::DayGrid(grid) => Some(grid),
            _ => None,
        })
        .expect("a week")
}

fn table(block: &Block) -> Option<&Table> {
    match block {
        Block::Table(table) => Some(table),
        _ => None,
    }
}

fn tables(document: &Document) -> Vec<&Table> {
    document.blocks.iter().filter_map(table).collect()
}

#[test]
fn every_day_stands_on_a_wall_sheet_under_its_date() {
    let plan = sample::plan(&sample::complete());
    let weeks = door_sheet::weeks(&plan, None);
    let placement = plan.answers.day("batch.placement").unwrap();
    assert_eq!(placement, CivilDay::new(2027, 9, 14).unwrap());
    assert_eq!(weeks.len(), 7, "44 days of age end in the seventh week");
    for (at, day) in weeks.iter().flatten().enumerate() {
        assert_eq!(day.age, at as i32);
        assert_eq!(day.date.unwrap().days_since(placement), day.age);
        assert!(day.expected.is_some(), "day {at}");
    }
    let shown = Shown::new(&plan, &Viewer::of(&plan.answers)).wall_sheets();
    let titles = |week: usize| grid(&shown[week]).days.clone();
    assert_eq!(titles(0)[0], ("Tue 14 Sep".to_owned(), "day 0".to_owned()));
    assert_eq!(titles(2)[3], ("Fri 1 Oct".to_owned(), "day 17".to_owned()));
    // Nobody is asked to fill in days on which no bird is left; the room beside them says what it is for.
    assert_eq!(weeks.iter().flatten().count(), 45);
    assert_eq!(titles(6).last(), Some(&("Thu 28 Oct".to_owned(), "day 44".to_owned())));
    assert!(grid(&shown[6]).rest.contains("Thu 28 Oct") && grid(&shown[5]).rest.is_empty());
}

#[test]
fn a_wall_sheet_expects_what_the_plan_expects() {
    let plan = sample::plan(&sample::complete());
    let on = |series: &str, day: i32| plan.outcome.on_day(series, day);
    for day in door_sheet::weeks(&plan, None).iter().flatten() {
        let Some(expected) = day.expected else { continue };
        assert_eq!(Some(expected.alive), on("batch.birds_alive", day.age));
        assert_eq!(expected.feed_kg, on("feed.by_day", day.age));
        assert_eq!(expected.water_l, on("water.by_day", day.age));
        assert_eq!(expected.warmth_c, on("brooding.temperature_by_day", day.age));
        assert_eq!(expected.light_h, on("light.hours_by_day", day.age));
        for (packs, each, all) in [
            (expected.feed_bags, 50.0, expected.feed_kg),
            (expected.feed_tins, 1.6, expected.feed_kg),
            (expected.water_cans, 20.0, expected.water_l),
        ] {
            assert!((packs.unwrap() * each - all.unwrap()).abs() < 1e-9);
        }
        let losses = on("batch.losses_by_day", day.age).unwrap();
        assert!(expected.call_at > 3.0 * losses && expected.call_at >= 0.005 * expected.alive);
        assert_eq!(expected.call_at.fract(), 0.0, "a count of birds");
    }
    let viewer = Viewer::of(&plan.answers);
    let sheets = Shown::new(&plan, &viewer).wall_sheets();
    let feed = &grid(&sheets[3]).rows[1];
    for (cell, day) in feed.cells.iter().zip(21..) {
        let kilograms = show::quantity(on("feed.by_day", day).unwrap(), Unit::Kilogram, 0, &viewer);
        assert!(cell.starts_with(&kilograms), "{cell} on day {day}");
    }
}

/// Chicks lie round the heat as long as there is heat, and each drawing stands in the week's data.
#[test]
fn how_chicks_lie_is_drawn_while_there_is_heat() {
    let plan = sample::plan(&sample::complete());
    let heated = plan.answers.number("brooding.days_d").unwrap() as usize;
    let viewer = Viewer::of(&plan.answers);
    let sheets = Shown::new(&plan, &viewer).wall_sheets();
    let pictured: usize = sheets.iter().flat_map(|sheet| &grid(sheet).rows).map(|row| row.pictured).sum();
    assert_eq!(pictured, heated);
    let warmth = &grid(&sheets[0]).rows[3];
    assert_eq!(warmth.pictures.len(), 4);
    let print = present::print::write(&sheets, present::print::Paper::A4, &viewer);
    for picture in &warmth.pictures {
        assert_eq!(print.drawings[&format!("{}.svg", picture.name)], picture.svg);
    }
}

/// The last batch of the house beside the plan, for as many birds as are there now: checked by head.
#[test]
fn the_last_batch_stands_beside_what_is_expected() {
    let plan = sample::plan(&sample::complete());
    let last = PastBatch {
        batch: book::BatchId(uuid::Uuid::nil()),
        name: None,
        placement: CivilDay::new(2027, 6, 1).unwrap(),
        weight_g: vec![(5, 150.0), (9, 250.0)],
        losses_percent: vec![(0, 0.5), (1, 0.75), (3, 1.0)],
        feed_g: vec![(3, 20.0)],
        water_ml: Vec::new(),
    };
    let past = Past { batches: vec![last] };
    let days: Vec<_> = door_sheet::weeks(&plan, past.batches.first()).into_iter().flatten().collect();
    let chicks = plan.outcome.on_day("batch.birds_alive", 0).unwrap();
    let near = |value: Option<f64>, wanted: f64| (value.unwrap() - wanted).abs() < 1e-9;
    assert!(near(days[0].before.deaths, 0.005 * chicks));
    assert!(near(days[1].before.deaths, 0.0025 * chicks));
    // Day 2 was not written, so nobody knows on which of two days the birds of day 3 died.
    assert_eq!((days[2].before.deaths, days[3].before.deaths), (None, None));
    assert!(near(days[3].before.feed_kg, 0.02 * days[3].expected.unwrap().alive));
    // Halfway between two weighings, half of what was gained.
    assert!(near(days[7].before.weight_g, 200.0));
    let viewer = Viewer::of(&plan.answers);
    let sheet = |shown: Shown| present::text::write(&shown.wall_sheets()[1], &viewer, false);
    assert!(sheet(Shown::new(&plan, &viewer).beside(&past)).contains("Last batch 200 g."));
    assert!(!sheet(Shown::new(&plan, &viewer)).contains("ast batch"), "nothing is invented without a book");
}

#[test]
fn what_there_is_to_do_stands_on_its_day() {
    let plan = sample::plan(&sample::complete());
    let days: Vec<_> = door_sheet::weeks(&plan, None).into_iter().flatten().collect();
    let at = |wanted: &dyn Fn(&Todo) -> bool| -> Vec<i32> {
        days.iter().filter(|day| day.todo.iter().any(wanted)).map(|day| day.age).collect()
    };
    let widened: Vec<i32> = plan.widening.iter().map(|step| step.from_day).collect();
    assert_eq!(at(&|todo| matches!(todo, Todo::Guard(_))), widened);
    // Four feeds: starter to day 11, grower to 25, finisher to 36; three days to change each.
    let mixed = at(&|todo| matches!(todo, Todo::Mix { .. }));
    assert_eq!(mixed, [12, 13, 14, 26, 27, 28, 37, 38, 39]);
    assert_eq!(
        at(&|todo| matches!(todo, Todo::Weigh { .. })),
        [7, 14, 21, 28, 35],
        "not once birds are sold"
    );
    let change_over = plan.outcome.number("space.change_over").unwrap() as i32;
    // Small and large stand side by side two or three days (growers' practice).
    assert_eq!(at(&|todo| *todo == Todo::LargeBesideSmall), [change_over - 2]);
    assert_eq!(at(&|todo| *todo == Todo::SmallOut), [change_over]);
    let hung = plan.tasks.iter().find(|task| task.name == "large-equipment").unwrap();
    let placement = plan.answers.day("batch.placement").unwrap();
    assert_eq!((hung.age_d, hung.until.unwrap().days_since(placement)), (change_over - 2, change_over));
    let come = at(&|todo| matches!(todo, Todo::Delivery { .. }));
    assert!(!come.is_empty() && come.iter().all(|day| plan.deliveries.iter().any(|one| one.day == *day)));
}

/// A helper writes little: what is asked a day stays within eight blanks and a few ticks, and a hidden purse stays hidden.
#[test]
fn a_wall_sheet_asks_little() {
    let plan = sample::plan(&sample::complete());
    let viewer = Viewer::of(&plan.answers);
    let shut = Viewer { money_shown: false, ..viewer.clone() };
    let sheets = Shown::new(&plan, &viewer).wall_sheets();
    let blanks = |fill: &Fill| match fill {
        Fill::Read => 0,
        Fill::Box => 1,
        Fill::Parts(parts) => parts.len(),
        Fill::Ticks(_) => 1,
    };
    let asked: usize = grid(&sheets[0]).rows.iter().map(|row| blanks(&row.fill)).sum();
    let rows = grid(&sheets[0]).rows.iter().filter(|row| row.fill != Fill::Read).count();
    assert!(rows <= 7 && asked <= 9, "{rows} rows, {asked} blanks");
    let text =
        |viewer: &Viewer| present::text::write(&Shown::new(&plan, viewer).wall_sheets()[0], viewer, false);
    assert!(text(&viewer).contains("Money spent") && !text(&shut).contains("Money spent"));
}

#[test]
fn the_shopping_list_adds_up_to_the_purchases() {
    let plan = sample::plan(&sample::complete());
    let weeks = purchases::by_week(&plan.purchases);
    let listed: usize = weeks.iter().map(|week| week.purchases.len()).sum();
    assert_eq!(listed, plan.purchases.len());
    let all: f64 = plan.purchases.iter().filter_map(|one| one.cost).sum();
    let last = weeks.last().unwrap();
    assert!((last.until_then - all).abs() < 0.005, "{} against {all}", last.until_then);
    for week in &weeks {
        assert!(week.purchases.iter().all(|one| (0..7).contains(&(one.day - week.first_day()))));
    }
    let viewer = Viewer::of(&plan.answers);
    let list = Shown::new(&plan, &viewer).shopping_list();
    let total = show::money(all, &viewer);
    assert!(list.blocks.iter().any(|block| matches!(block, Block::Lead { value, .. } if *value == total)));
    let table = tables(&list)[0];
    assert_eq!(table.rows.len(), listed + weeks.len());
    assert_eq!(table.rows.iter().filter(|row| !row[4].is_empty() && row[5].is_empty()).count(), listed);
    let fills = |align| table.columns.iter().filter(|(_, other)| *other == align).count();
    assert_eq!((fills(Align::Tick), fills(Align::Line)), (1, 1));
}

#[test]
fn a_shopping_list_without_money_shows_none() {
    let plan = sample::plan(&sample::complete());
    let viewer = Viewer { money_shown: false, ..Viewer::of(&plan.answers) };
    let list = Shown::new(&plan, &viewer).shopping_list();
    assert!(!list.blocks.iter().any(|block| matches!(block, Block::Lead { .. })));
    let table = tables(&list)[0];
    assert_eq!(table.columns.len(), 5);
    assert!(table.rows.iter().flatten().all(|cell| !cell.contains("612") && !cell.contains("XTS")));
}

#[test]
fn a_handout_works_out_the_figure_of_the_plan() {
    let plan = sample::plan(&sample::complete());
    let viewer = Viewer::of(&plan.answers);
    let shown = Shown::new(&plan, &viewer);
    for id in
        ["guard.true_density", "guard.overlap_asked", "feed.bags", "space.birds_allowed", "money.cost_per_kg"]
    {
        let handout = shown.handout(id).unwrap();
        let worked = plan.outcome.get(id).unwrap();
        let value = show::figure(&worked.figure, worked.spec, &viewer);
        let first = handout.blocks.iter().find_map(|block| match block {
            Block::Working(view) => Some(view),
            _ => None,
        });
        assert_eq!(first.unwrap().result, value, "{id}");
        for one in exercise::exercises(&plan.answers, &plan.outcome, worked.spec.id) {
            assert!(one.to == 2.0 * one.from || one.to == 0.5 * one.from);
            let text = sample_with(&plan.answers, one.key, one.to);
            let again = Outcome::of(&text, [worked.spec.id]).number(id).unwrap();
            assert_eq!(one.answer, again, "{id} with {} {}", one.key, one.to);
            assert_ne!(Some(one.answer), plan.outcome.number(id), "{id}: an exercise that changes nothing");
        }
    }
    assert!(shown.handout("guard.no_such_figure").is_none());
    assert!(shown.sheet("handout", Some("guard.no_such_figure")).is_none());
}

/// Feed is added up over days: a pupil adds the weeks that the sheet prints, and finds the answers that it prints.
#[test]
fn the_weeks_on_the_sheet_answer_its_questions() {
    for file in [sample::complete(), sample::MANGO_RIDGE.to_owned()] {
        let plan = sample::plan(&file);
        let viewer = Viewer::of(&plan.answers);
        let shown = Shown::new(&plan, &viewer);
        for id in ["feed.total", "water.total"] {
            let handout = shown.handout(id).unwrap();
            let read = |cell: &str| {
                let digits: String = cell.chars().filter(|c| c.is_ascii_digit() || *c == '.').collect();
                digits.parse::<f64>().unwrap()
            };
            let rows: Vec<Vec<f64>> = tables(&handout)[0]
                .rows
                .iter()
                .map(|row| row.iter().map(|cell| read(cell)).collect())
                .collect();
            let spec = plan.outcome.get(id).unwrap();
            let all: f64 = rows.iter().map(|row| row[2]).sum();
            assert!((all - spec.figure.value.number()).abs() <= 0.5 * rows.len() as f64, "{id}: {all}");
            let weeks = exercise::Weeks::of(&plan.outcome, id).unwrap();
            let answers = handout.blocks.iter().find_map(|block| match block {
                Block::Answers(answers) => Some(answers),
                _ => None,
            });
            for (asked, printed) in weeks.asked().into_iter().zip(answers.unwrap()) {
                let by_hand: f64 = match asked {
                    exercise::WeeksAsked::Until(day) => {
                        rows.iter().filter(|row| row[1] <= f64::from(day)).map(|row| row[2]).sum()
                    }
                    exercise::WeeksAsked::From(day) => {
                        rows.iter().filter(|row| row[0] >= f64::from(day)).map(|row| row[2]).sum()
                    }
                };
                let printed = read(printed.split_once(". ").unwrap().1);
                assert!(by_hand > 0.0 && (by_hand - printed).abs() < 0.051, "{id}: {by_hand}, {printed}");
            }
        }
    }
}

/// Twice the chicks in the same ring is twice the chicks a square metre; nothing else of the plan helps here.
#[test]
fn an_exercise_can_be_checked_by_head() {
    let plan = sample::plan(&sample::complete().replace("chicks_per_ring = 400", "chicks_per_ring = 2000"));
    let found = exercise::exercises(&plan.answers, &plan.outcome, "space.birds_at_sale");
    let chicks = found.iter().find(|one| one.key == "batch.chicks").unwrap();
    let usual = plan.outcome.number("space.birds_at_sale").unwrap();
    assert!((chicks.answer - 2.0 * usual).abs() <= 1.0, "{chicks:?} against {usual}");
}

fn sample_with(answers: &quantity::Answers, key: &str, value: f64) -> quantity::Answers {
    let mut answers = answers.clone();
    let field = advice::families::field(key).unwrap();
    let given = quantity::Given {
        typed: value.to_string(),
        value: quantity::Value::Number(value),
        line: None,
        usual: None,
    };
    answers.set(field, given);
    answers
}

#[test]
fn the_booklet_leaves_folds_to_other_sheets_and_names_every_problem() {
    let plan = sample::plan(&sample::complete().replace("store_m2 = 9", "store_m2 = 1"));
    let viewer = Viewer::of(&plan.answers);
    let shown = Shown::new(&plan, &viewer);
    let booklet = shown.booklet();
    assert!(!booklet.blocks.iter().any(|block| matches!(block, Block::Fold { .. } | Block::Figures(_))));
    // Lines are broken anywhere between words.
    let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = words(&present::text::write(&booklet, &viewer, false));
    let problems: Vec<_> = shown
        .finding_views()
        .into_iter()
        .filter(|finding| finding.weight == advice::finding::Weight::Problem)
        .collect();
    assert!(!problems.is_empty());
    // The whole plan: what is bought on which day at what price, and every job.
    let bought = booklet.every_block().into_iter().filter_map(table);
    assert!(bought.into_iter().any(|table| table.rows.len() == plan.purchases.len()
        && table.columns.iter().any(|(title, _)| title.contains("Costs"))));
    for task in &plan.tasks {
        assert!(text.contains(&words(&shown.job(task).0)), "{} is not in the booklet", task.name);
    }
    for problem in problems {
        assert!(text.contains(&words(&problem.text)), "{} is not in the booklet", problem.text);
    }
}

/// A plan that says nothing yet has every sheet, each with a word about what is missing.
#[test]
fn every_sheet_can_be_printed_from_every_plan() {
    let empty = advice::plan::work_out(advice::plan::read(&[], quantity::Source::Hand, false).answers);
    for plan in [empty, sample::plan(sample::MANGO_RIDGE), sample::plan(&sample::complete())] {
        let viewer = Viewer::of(&plan.answers);
        let shown = Shown::new(&plan, &viewer);
        for sheet in SHEETS {
            let documents = shown.sheet(sheet.name, None).unwrap();
            assert!(!documents.is_empty(), "{}", sheet.name);
            let print = present::print::write(&documents, present::print::Paper::A4, &viewer);
            assert!(!print.data["title"].as_str().unwrap().is_empty(), "{}", sheet.name);
        }
    }
}
