//! Sheets of plans that lack answers, of an earth floor, of a sale over several days: no half sentence, and on every paper the
//! same job on the same day.

use advice::door_sheet::{self, Todo};
use advice::exercise;
use advice::plan::{self, Plan};
use present::document::{Block, DayGrid, Document, Fill};
use present::plan::Shown;
use present::{Viewer, text};

use crate::sample;

/// As little as a grower may have told: the house, how many chicks, the day.
const BARE: &str = "
[house]
length_m = 12
width_m = 6
eave_height_m = 2.4
ridge_height_m = 3.2
[batch]
chicks = 500
placement = 2027-07-05
";

fn worked_out(file: &str) -> Plan {
    let raws = advice::plan_file::read(file).unwrap();
    plan::work_out(plan::read(&raws, quantity::Source::Hand, false).answers)
}

fn words(documents: &[Document], viewer: &Viewer) -> String {
    let text: Vec<String> = documents.iter().map(|one| text::write(one, viewer, false)).collect();
    text.join(" ").split_whitespace().collect::<Vec<_>>().join(" ")
}

fn sheet(plan: &Plan, name: &str) -> String {
    let viewer = Viewer::of(&plan.answers);
    words(&Shown::new(plan, &viewer).sheet(name, None).unwrap(), &viewer)
}

fn grid(document: &Document) -> &DayGrid {
    let of = |block: &'_ Block| matches!(block, Block::DayGrid(_));
    match document.blocks.iter().find(|block| of(block)) {
        Some(Block::DayGrid(grid)) => grid,
        _ => panic!("no week"),
    }
}

#[test]
fn sheets_of_an_almost_empty_plan_ask_instead_of_stammering() {
    let plan = worked_out(BARE);
    for (name, asked) in [
        ("cutting", "Length of a sheet"),
        ("mixing", "Dilution on the label"),
        ("shopping", "A bag holds"),
        ("booklet", "Age at sale"),
        ("countdown", "Age at sale"),
        ("wall", "Age at sale"),
    ] {
        let said = sheet(&plan, name);
        assert!(said.contains(asked), "{name}: {said}");
        for broken in ["label says high", "label says strips", "tank of with", "line of ,", "overlap of and"]
        {
            assert!(!said.contains(broken), "{name} says “{broken}”");
        }
    }
    assert!(!sheet(&plan, "shopping").contains("0.00"), "nothing has a price");
    assert!(!sheet(&plan, "booklet").contains("stands against this plan"), "nothing was checked");
    assert!(!sheet(&plan, "countdown").contains("to the next chicks"));
    // No second page without anything on it.
    let viewer = Viewer::of(&plan.answers);
    let cutting = Shown::new(&plan, &viewer).cutting_sheet();
    assert!(!cutting.blocks.contains(&Block::PageBreak));
}

/// What was answered is not asked again.
#[test]
fn only_what_is_missing_is_asked_for() {
    let said = sheet(&worked_out(&sample::complete().replace("sprayer_l = 10", "")), "mixing");
    assert!(said.contains("Sprayer tank") && !said.contains("Dilution on the label"), "{said}");
    let asked = |figures: &[&'static str], file: &str| {
        let plan = worked_out(file);
        advice::unanswered::questions(&plan.answers, &plan.outcome, figures)
    };
    let unsold = sample::MANGO_RIDGE.replace("sale_age_d = 42\n", "");
    assert_eq!(asked(&["batch.birds_alive", "growth.weight"], &unsold), ["batch.sale_age_d"]);
    assert_eq!(asked(&["space.birds_allowed", "feed.bags"], sample::MANGO_RIDGE), [""; 0]);
    // Who tells the days of sale is not asked for an age beside them, and reads whether they fit.
    let in_parts = format!("{unsold}[sale]\ndays = \"36: 500, 42: rest\"\n");
    let said = sheet(&worked_out(&in_parts), "booklet");
    assert!(!said.contains("Age at sale") && said.contains("On the fullest day"), "{said}");
}

#[test]
fn a_week_can_be_written_in_before_the_sale_is_known() {
    let viewer = Viewer::plain();
    let weeks = |file: &str| {
        let plan = worked_out(file);
        let sheets = Shown::new(&plan, &viewer).wall_sheets();
        sheets.iter().map(|one| grid(one).days.clone()).collect::<Vec<_>>()
    };
    let dated = weeks(BARE);
    assert_eq!((dated.len(), dated[0].len()), (6, 7));
    assert_eq!(dated[5][6], ("Sun 15 Aug".to_owned(), "day 41".to_owned()));
    let undated = weeks(&BARE.replace("placement = 2027-07-05\n", ""));
    assert_eq!(undated.len(), 6);
    assert!(undated.iter().flatten().all(|(date, _)| date == "Date:"));
}

/// Eight boxes to write in a day, ticks apart, and one of them for who wrote.
#[test]
fn a_day_has_eight_boxes() {
    let plan = sample::plan(&sample::complete());
    let viewer = Viewer::of(&plan.answers);
    for sheet in Shown::new(&plan, &viewer).wall_sheets() {
        let boxes = |fill: &Fill| match fill {
            Fill::Read | Fill::Ticks(_) => 0,
            Fill::Box => 1,
            Fill::Parts(parts) => parts.len(),
        };
        let grid = grid(&sheet);
        assert_eq!(grid.rows.iter().map(|row| boxes(&row.fill)).sum::<usize>(), 8);
        let named = |part: &String| part == "initials";
        assert!(
            grid.rows.iter().any(|row| matches!(&row.fill, Fill::Parts(parts) if parts.iter().any(named)))
        );
    }
}

const SOLD: &str = "days = [\"40: 400\", \"42: 600\", \"45: rest\"]";

fn sold_over_days() -> Plan {
    sample::plan(&sample::complete().replace("first_age_d = 40\nlast_age_d = 44", SOLD))
}

/// The sheet at the door has what must not be forgotten, on the days of the countdown.
#[test]
fn the_door_tells_what_the_countdown_tells() {
    for plan in [sold_over_days(), sample::plan(&sample::complete()), sample::plan(sample::MANGO_RIDGE)] {
        let days: Vec<_> = door_sheet::weeks(&plan, None).into_iter().flatten().collect();
        let on = |wanted: &dyn Fn(&Todo) -> bool| -> Vec<i32> {
            days.iter().filter(|day| day.todo.iter().any(wanted)).map(|day| day.age).collect()
        };
        let placement = plan.answers.day("batch.placement").unwrap();
        let of_task = |name: &str, every: bool| -> Vec<i32> {
            let tasks = plan.tasks.iter().filter(|task| task.name == name);
            let last = |task: &advice::tasks::Task| match task.until {
                Some(until) if every => until.days_since(placement),
                _ => task.age_d,
            };
            tasks.flat_map(|task| task.age_d..=last(task)).collect()
        };
        assert_eq!(on(&|todo| matches!(todo, Todo::Sell { .. })), of_task("sale", true));
        assert_eq!(on(&|todo| matches!(todo, Todo::Weigh { .. })), of_task("weighing", false));
        for (name, every) in [
            ("withdrawal-checked", false),
            ("feed-stays", true),
            ("feed-asked", true),
            ("night-rounds", true),
            ("dark-taught", true),
            ("heat-ends", false),
            ("curtains-in-heat", false),
        ] {
            assert_eq!(on(&|todo| *todo == Todo::Job(name)), of_task(name, every), "{name}");
        }
        let sold: f64 = days
            .iter()
            .flat_map(|day| &day.todo)
            .filter_map(|todo| if let Todo::Sell { birds, .. } = todo { *birds } else { None })
            .sum();
        let all = plan.outcome.number("sale.birds").unwrap();
        assert!((sold - all).abs() <= 5.0, "{sold} of {all}");
    }
    assert_eq!(sheet(&sold_over_days(), "wall").matches("SELL 400 birds.").count(), 1);
}

/// Each day of sale is a job of its own with its birds, and feed is seen to on the evening before each.
#[test]
fn a_sale_over_several_days_names_the_birds_of_each() {
    let plan = sold_over_days();
    let viewer = Viewer::plain();
    let shown = Shown::new(&plan, &viewer);
    let of = |name: &str| plan.tasks.iter().filter(move |task| task.name == name).collect::<Vec<_>>();
    let sales: Vec<(i32, bool, String)> =
        of("sale").iter().map(|task| (task.age_d, task.until.is_none(), shown.job(task).0)).collect();
    assert_eq!(
        sales.iter().map(|(age, alone, _)| (*age, *alone)).collect::<Vec<_>>(),
        [(40, true), (42, true), (45, true)]
    );
    assert!(sales[0].2.contains("400 birds") && sales[1].2.contains("600 birds"), "{sales:?}");
    assert_eq!(of("feed-stays").iter().map(|task| task.age_d).collect::<Vec<_>>(), [39, 41, 44]);
    let calendar = shown.calendar("b", present::calendar::Written { at_millis: 0, sequence: None });
    assert_eq!(calendar.matches("UID:sale-").count(), 3);
    // Without a schedule they go evenly: one job with how many a day.
    let even = sample::plan(&sample::complete());
    let sales: Vec<_> = even.tasks.iter().filter(|task| task.name == "sale").collect();
    assert_eq!(sales.len(), 1);
    assert!(Shown::new(&even, &viewer).job(sales[0]).0.contains("birds a day"));
}

/// Feed is ordered in the countdown on the days on which the phone calls for it, and on the shopping list.
#[test]
fn feed_is_ordered_on_every_paper() {
    let plan = sample::plan(&sample::complete());
    let lead = plan.answers.number("feed.lead_d").unwrap() as i32;
    let viewer = Viewer::plain();
    let shown = Shown::new(&plan, &viewer);
    let orders: Vec<_> = plan.tasks.iter().filter(|task| task.name == "feed-order").collect();
    let mut comes: Vec<i32> = plan.deliveries.iter().map(|one| one.day).collect();
    comes.sort_unstable();
    comes.dedup();
    assert_eq!(orders.iter().map(|task| task.age_d + lead).collect::<Vec<_>>(), comes);
    let calendar = shown.calendar("b", present::calendar::Written { at_millis: 0, sequence: None });
    assert_eq!(calendar.matches("UID:feed-order-").count(), orders.len());
    let list = sheet(&plan, "shopping");
    let feeds = plan.purchases.iter().filter(|one| one.what.starts_with("feed-") && one.quantity.is_some());
    assert_eq!(list.matches(", order by ").count(), feeds.count());
}

/// Widening says how: which overlap, and when rings are joined.
#[test]
fn widening_says_overlap_and_joining() {
    let plan = sample::plan(sample::MANGO_RIDGE);
    let viewer = Viewer::plain();
    let shown = Shown::new(&plan, &viewer);
    let jobs: Vec<(i32, String)> = plan
        .tasks
        .iter()
        .filter(|task| task.name == "rings-widened")
        .map(|task| (task.age_d, shown.job(task).0))
        .collect();
    let mut joined = 0;
    for (age, said) in jobs {
        let step = plan.widening.iter().find(|step| step.from_day == age).unwrap();
        let plan::Standing::Rings { joined: rings, overlap, .. } = step.standing else { panic!("{said}") };
        let overlap = format!("overlap {} cm", (overlap.in_centimetres() + 1e-6).floor());
        assert!(said.replace("an overlap of", "overlap").contains(&overlap), "{said}");
        assert_eq!(said.contains(&format!("Join {rings} rings into one")), rings > 1.0, "{said}");
        joined += u8::from(rings > 1.0);
    }
    assert!(joined > 0);
}

/// New soil is never wetted: what needs water is over before it comes.
#[test]
fn an_earth_floor_is_not_made_to_mud() {
    let plan = sample::plan(&sample::complete().replace("\"concrete\"", "\"earth\""));
    let age = |name: &str| plan.tasks.iter().find(|task| task.name == name).expect(name).age_d;
    let order = ["wash", "earth-floor", "disinfect-first", "disinfect-second", "earth-limed", "litter-in"];
    for pair in order.windows(2) {
        assert!(age(pair[0]) < age(pair[1]), "{} before {}", pair[0], pair[1]);
    }
    let countdown = sheet(&plan, "countdown");
    assert!(countdown.contains("no water on the earth floor") && countdown.contains("not the earth floor"));
    let card = sheet(&plan, "mixing");
    let at = |said: &str| card.find(said).unwrap_or_else(|| panic!("no “{said}”"));
    assert!(at("Wash walls, roof") < at("scrape off") && at("scrape off") < at("second time"));
    assert!(at("second time") < at("Lime the earth floor") && at("Lime the earth floor") < at("Litter in"));
    assert!(!sheet(&sample::plan(&sample::complete()), "mixing").contains("earth"));
}

/// One of a thing is not many, and half a kilogram of gas is not lost.
#[test]
fn small_words_are_right() {
    let file = sample::complete()
        .replace("soak_l = 60", "measure_name = \"spoon\"")
        .replace("measure_ml = 25", "measure_ml = 5");
    let card = sheet(&sample::plan(&file), "mixing");
    assert!(card.contains("Measured with the spoon of 5 mL:"), "{card}");
    assert!(card.contains("To buy for both disinfections:") && !card.contains("the tub"), "{card}");
    let one = sample::complete()
        .replace("chicks = 1600", "chicks = 60")
        .replace("chicks_per_ring = 400", "chicks_per_ring = 60");
    let guard = sheet(&sample::plan(&one), "cutting");
    assert!(guard.contains("1 ring of ") && !guard.contains("1 rings"), "{guard}");
    let plan = sample::plan(&sample::complete().replace("cylinder_kg = 13", "cylinder_kg = 12.5"));
    assert_eq!(plan.outcome.number("brooding.spare"), Some(12.5));
    let list = sheet(&plan, "shopping");
    assert!(list.contains("12.5 kg: 1 cylinder"), "{list}");
}

/// Two exercises are two lessons: their answers are far from the plan's and from each other, as they are printed.
#[test]
fn exercises_have_answers_of_their_own() {
    let plan = sample::plan(&sample::complete());
    for id in [
        "guard.true_density",
        "guard.strips",
        "guard.sheets",
        "litter.bags",
        "disinfectant.product_per_load",
        "disinfectant.solution",
        "space.birds_allowed",
    ] {
        let worked = plan.outcome.get(id).unwrap();
        let found = exercise::exercises(&plan.answers, &plan.outcome, worked.spec.id);
        assert_eq!(found.len(), 2, "{id}");
        let all = [worked.figure.value.number(), found[0].answer, found[1].answer];
        for (one, other) in [(0, 1), (0, 2), (1, 2)] {
            let least = 0.08 * all[one].abs().max(all[other].abs());
            assert!((all[one] - all[other]).abs() > least, "{id}: {all:?}");
        }
    }
}

/// Brooders that miss the need by a hair do not let the air fall to what chicks want.
#[test]
fn a_fall_of_no_degree_is_not_told_as_a_fall() {
    let need = sample::plan(&sample::complete()).outcome.number("brooding.heat").unwrap();
    let told = |share: f64| {
        let each = format!("brooder_kw = {:.3}", share * need / 3.0);
        let plan = sample::plan(&sample::complete().replace("brooder_kw = 2.6", &each));
        let viewer = Viewer::plain();
        let found = Shown::new(&plan, &viewer).finding_views();
        found.into_iter().find(|one| one.name == "brooders-too-weak").unwrap().text
    };
    let (nearly, weak) = (told(0.998), told(0.5));
    assert!(!nearly.contains("fall to about") && nearly.contains("leaves them cold"), "{nearly}");
    assert!(weak.contains("fall to about") && !weak.contains(".0 °C"), "{weak}");
}
