//! The invented farm's book.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::sync::OnceLock;

use advice::closing::Closing;
use advice::diary::Diary;
use advice::past::Past;
use advice::side_by_side::SideBySide;
use advice::walk::Walk;
use advice::writing::{Seen, Writing};
use advice::{body, plan, record};
use book::{
    Access, BatchId, BookState, DeviceId, Entry, FarmId, PersonId, Role, Slot, StoredEntry, Subject, compose,
    fold,
};
use demo::{Farm, NOW_MILLIS};
use quantity::{CivilDay, Source};
use uuid::Uuid;

mod watch;

const FARM: FarmId = FarmId(Uuid::from_u128(1));

fn access() -> Access {
    Access::granted(FARM, PersonId(Uuid::from_u128(2)), DeviceId(Uuid::from_u128(3)), Role::Owner)
}

fn entries() -> &'static [StoredEntry] {
    static ENTRIES: OnceLock<Vec<StoredEntry>> = OnceLock::new();
    ENTRIES.get_or_init(|| Farm::mango_ridge().unwrap().entries(&access()).unwrap())
}

fn state() -> &'static BookState {
    static STATE: OnceLock<BookState> = OnceLock::new();
    STATE.get_or_init(|| fold(FARM, entries().iter().cloned()))
}

fn today() -> CivilDay {
    CivilDay::new(2027, 10, 8).unwrap()
}

/// The batches in the order of their plans.
fn batches() -> Vec<BatchId> {
    let adopted = |entry: &StoredEntry| match entry.entry.subject {
        Subject::Batch(batch) if entry.entry.kind == "plan-adopted" => Some(batch),
        _ => None,
    };
    entries().iter().filter_map(adopted).collect()
}

fn running() -> BatchId {
    *batches().last().unwrap()
}

#[test]
fn the_book_folds_without_findings_faults_or_conflicts() {
    assert_eq!(state().findings(), []);
    assert_eq!(state().faults(), []);
    assert_eq!(state().conflicts(), []);
}

#[test]
fn every_start_gives_the_same_bytes() {
    let again = Farm::mango_ridge().unwrap().entries(&access()).unwrap();
    assert!(again.iter().map(|entry| &entry.bytes).eq(entries().iter().map(|entry| &entry.bytes)));
}

#[test]
fn four_batches_are_over_and_one_is_on_day_24() {
    let diaries: Vec<Diary> =
        batches().into_iter().map(|batch| Diary::read(state(), batch, today())).collect();
    let closed: Vec<bool> = diaries.iter().map(|diary| diary.is_closed).collect();
    assert_eq!(closed, [true, true, true, true, false]);
    assert_eq!(diaries[4].age_today(), Some(24));
    for diary in &diaries[..4] {
        let alive = record::alive_before(diary, today()).unwrap();
        assert_eq!(alive, 0.0, "all birds of a closed batch are accounted for");
    }
}

/// Every bird and every cent: causes add up to the difference from the plan, and what is in hand at the end is the profit less what
/// is still owed and owing.
#[test]
fn the_four_batches_that_are_over_close_to_the_cent() {
    for batch in &batches()[..4] {
        let closing = Closing::read(state(), *batch, today());
        let number = |id: &str| closing.walk.plan.outcome.number(id).unwrap_or_else(|| panic!("{id}"));
        let cents = |amount: f64| (100.0 * amount).round() as i64;
        assert_eq!(closing.birds_unaccounted(), 0.0);
        let profit = number("closing.profit");
        assert_eq!(cents(profit), cents(number("closing.income")) - cents(number("closing.cost")));
        let planned = closing.planned.as_ref().unwrap().outcome.number("money.profit").unwrap();
        let causes: i64 = closing.causes.iter().map(|cause| cause.units).sum();
        assert_eq!(causes, cents(profit) - cents(planned));
        let in_hand: f64 = closing.cash_book().iter().map(|line| line.paid).sum();
        let open = number("closing.owing") - number("closing.owed");
        assert_eq!(cents(in_hand + open), cents(profit), "{in_hand} {open} {profit}");
    }
}

/// Batches side by side: four that are over teach the next plan's losses, less than their own mean and more than nothing.
#[test]
fn four_batches_move_the_next_plan_part_of_the_way() {
    let beside = SideBySide::read(state(), batches()[3], today());
    assert_eq!(beside.batches.len(), 4);
    assert_eq!(beside.starts.len(), 3);
    for start in &beside.starts {
        let (low, high) = (start.usual.min(start.own), start.usual.max(start.own));
        assert!((low..=high).contains(&start.expected.value), "{start:?}");
        assert!(start.expected.own_share > 0.25 && start.expected.own_share < 0.6, "{start:?}");
    }
}

/// What the house-door sheet of a batch puts beside the plan: the batch before it in the same house, and nobody's where the
/// house had none.
#[test]
fn the_last_batch_of_a_house_is_the_one_placed_before_it() {
    let house = "019d0000-0000-7000-8000-000000000001";
    let placed = |batch: &BatchId| Diary::read(state(), *batch, today()).placement.unwrap();
    for pair in batches().windows(2) {
        let past = Past::of_house(state(), house, placed(&pair[1]));
        assert_eq!(past.batches.first().map(|one| one.batch), Some(pair[0]));
    }
    assert!(Past::of_house(state(), house, placed(&batches()[0])).batches.is_empty());
    let other = "019d0000-0000-7000-8000-000000000002";
    assert!(Past::of_house(state(), other, placed(&running())).batches.is_empty());
}

#[test]
fn the_running_batch_lacks_what_is_written_in_the_evening() {
    let walk = Walk::read(state(), running(), today());
    for kind in ["deaths", "look"] {
        assert_eq!(walk.written(kind).len(), 1, "{kind}");
    }
    for kind in ["feed-given", "water", "house-air"] {
        assert!(walk.written(kind).is_empty(), "{kind}");
    }
    assert!(walk.unwritten.len() <= 2, "{:?}", walk.unwritten);
}

#[test]
fn most_work_was_ticked_off() {
    let placed = Diary::read(state(), running(), today()).placement.unwrap();
    let jobs = (0..=21).flat_map(|age| Walk::read(state(), running(), placed.plus_days(age)).jobs);
    let (done, open): (Vec<_>, Vec<_>) =
        jobs.filter(|job| job.late_d == 0).partition(|job| job.done.is_some());
    assert!(done.len() > 40 && open.len() * 10 < done.len(), "{} done, {} open", done.len(), open.len());
}

/// The plan that the book would make again is the one adopted, so that pages do not say it was changed.
#[test]
fn plans_stand_as_they_were_adopted() {
    let kept = ["farm", "settings", "prices", "equipment"];
    for batch in batches() {
        let adopted = state().answers(&Slot::of("plan-adopted", Subject::Batch(batch))).unwrap();
        let answers = plan::read(&body::raws(state(), &kept), Source::Hand, false).answers;
        for (key, given) in answers.iter().filter(|(_, given)| given.usual.is_none()) {
            assert_eq!(adopted[key].value, body::answer(given).value, "{key}");
        }
    }
}

/// Each entry of the first batch and of the running one, filled into a page that knows what was written before.
#[test]
fn what_a_page_would_ask_about_is_rare_and_planned() {
    let looked_at = [batches()[0], running()];
    let mut state = BookState::new(FARM);
    let mut asked = Vec::new();
    for entry in entries() {
        if let Subject::Batch(batch) = entry.entry.subject
            && looked_at.contains(&batch)
            && entry.entry.kind != "plan-adopted"
        {
            asked.extend(doubts(&state, batch, &entry.entry));
        }
        state.append(entry.clone());
    }
    assert!(!asked.is_empty() && asked.len() <= 6, "{asked:?}");
}

/// What a page asks about an entry, with the day of age.
fn doubts(state: &BookState, batch: BatchId, entry: &Entry) -> Vec<(String, i32)> {
    let diary = Diary::read(state, batch, entry.day);
    let writing = Writing { state, diary: &diary, today: entry.day, reason: None, seen: Seen::Nothing };
    let kind = record::kind(&entry.kind).unwrap();
    let raws = record::raws_of(kind, &entry.body);
    let judged = writing.judge(entry.id, kind, entry.day, &raws, Source::Hand);
    assert_eq!(judged.problems, []);
    assert!(!judged.needs_reason, "{entry:?}");
    assert_eq!(judged.draft.unwrap().body, entry.body);
    let asks = judged.asks.into_iter().map(|ask| ask.name.to_owned());
    let questions = judged.questions.into_iter().map(|question| question.key.to_owned());
    let age = diary.age(entry.day).unwrap();
    asks.chain(questions).map(|name| (name, age)).collect()
}

#[test]
fn the_planned_mishaps_stand_in_the_book_of_the_running_batch() {
    let diary = Diary::read(state(), running(), today());
    let of = |kind: &str, age: i32, key: &str| -> f64 {
        let day = diary.placement.unwrap().plus_days(age);
        diary.on_day(kind, day).filter_map(|note| note.number(key)).sum()
    };
    let fed = |age| of("feed-given", age, "feed_kg");
    assert!(fed(12) < 0.5 * fed(10), "the cart is late: {} {}", fed(12), fed(10));
    let a_kg = |age: i32| of("water", age, "water_l") / of("feed-given", age, "feed_kg");
    assert!(of("water", 16, "water_l") < 0.85 * of("water", 15, "water_l"));
    assert!(a_kg(21) > 1.05 * a_kg(9), "hot birds drink more: {} {}", a_kg(21), a_kg(9));
    assert!(of("house-air", 19, "warmest_c") > of("house-air", 18, "warmest_c") + 2.0);
    let notes: Vec<&str> = diary.of_kind("note").filter_map(|note| note.text("text")).collect();
    assert!(notes.iter().any(|note| note.contains("days late")), "{notes:?}");
}

/// The next plan is saved as the book opens: a price or a piece of equipment that it alone told would make every adopted plan read
/// as changed.
#[test]
fn the_next_plan_tells_the_farm_nothing_that_adopted_plans_do_not_say() {
    let next = plan::read(&Farm::mango_ridge().unwrap().next, Source::Hand, false).answers;
    let of_farm = |key: &str| matches!(body::kept_in(key), Some("farm" | "prices" | "equipment"));
    let told: Vec<_> = next.iter().filter(|(key, given)| of_farm(key) && given.usual.is_none()).collect();
    assert!(told.len() > 20, "{}", told.len());
    for batch in batches() {
        let adopted = state().answers(&Slot::of("plan-adopted", Subject::Batch(batch))).unwrap();
        for (key, given) in &told {
            let said = adopted.get(*key).map(|answer| &answer.value);
            assert_eq!(said, Some(&body::canonical(&given.value)), "{key} of {batch:?}");
        }
    }
}

#[test]
fn the_next_batch_is_typed_and_not_adopted() {
    let farm = Farm::mango_ridge().unwrap();
    let answers = plan::read(&farm.next, Source::Hand, false);
    assert_eq!(answers.problems, []);
    assert!(answers.answers.day("batch.placement").unwrap() > today());
    assert!(state().has_house(farm.next_house));
    assert!(entries().last().unwrap().entry.clock.millis <= NOW_MILLIS);
}

/// A page can write on: the series goes on from where the demo ends.
#[test]
fn the_series_goes_on() {
    let last = entries().last().unwrap();
    let draft = book::Draft::new(
        book::EntryId(Uuid::from_u128(9)),
        "deaths",
        Subject::Batch(running()),
        today(),
        book::Body::from([("dead".to_owned(), book::Answer { typed: None, value: body::number_json(1.0) })]),
    );
    let end = Some(book::SeriesEnd::at(last));
    let next = compose(&access(), end, draft, &state().sight(NOW_MILLIS), NOW_MILLIS).unwrap();
    assert_eq!(next.entry.sequence, last.entry.sequence + 1);
}
