//! An invented book with two batches that are over and one that runs, for tests of what a book is read for.

use advice::diary::Diary;
use advice::past::Past;
use advice::walk::Walk;
use advice::{adoption, record};
use book::{
    Access, BatchId, BookState, DeviceId, Draft, EntryId, FarmId, HouseId, PersonId, Role, SeriesEnd, Sight,
    StoredEntry, Subject, compose, fold,
};
use quantity::{CivilDay, Raw, Source};
use uuid::Uuid;

use crate::sample;

const FARM: FarmId = FarmId(Uuid::from_u128(0xfa));
const HOUSE: HouseId = HouseId(Uuid::from_u128(0x40));

/// The batch that runs.
pub const RUNNING: BatchId = BatchId(Uuid::from_u128(0xb3));
/// The last batch before it, and the one before that.
pub const LAST: BatchId = BatchId(Uuid::from_u128(0xb2));
pub const FIRST: BatchId = BatchId(Uuid::from_u128(0xb1));

/// The day the chicks of the running batch came: a day late.
pub fn placed() -> CivilDay {
    CivilDay::new(2027, 9, 15).unwrap()
}

/// The day it is looked at: day 28.
pub fn today() -> CivilDay {
    placed().plus_days(28)
}

/// The book.
pub fn state() -> BookState {
    pen().fold()
}

/// All that was written.
pub fn pen() -> Pen {
    let mut pen = Pen::default();
    pen.past(FIRST, CivilDay::new(2027, 3, 2).unwrap(), 0.92);
    pen.past(LAST, CivilDay::new(2027, 6, 8).unwrap(), 1.02);
    // A tank that holds less than a day of grown birds takes.
    pen.adopt(RUNNING, &sample::complete().replace("storage_l = 1000", "storage_l = 500"));
    pen.chicks(RUNNING, placed());
    pen.days(RUNNING, placed(), 28, 1.0);
    pen.store(RUNNING, placed());
    pen.brooding(RUNNING, placed());
    pen.air(RUNNING, placed());
    pen
}

/// The walk of a day, beside the earlier batches.
pub fn walk_on(state: &BookState, on: CivilDay) -> (Walk, Past) {
    let past = Past::read(state, RUNNING, on);
    (Walk::ahead_of(Diary::read(state, RUNNING, on), &past), past)
}

/// The walk of today.
pub fn walk() -> (Walk, Past) {
    walk_on(&state(), today())
}

/// Writes entries one after the other, on one device.
#[derive(Clone, Default)]
pub struct Pen {
    /// What was written.
    pub written: Vec<StoredEntry>,
}

impl Pen {
    /// The book it makes.
    pub fn fold(self) -> BookState {
        fold(FARM, self.written)
    }

    fn put(&mut self, draft: Draft) {
        let someone = Uuid::from_u128(1);
        let access = Access::granted(FARM, PersonId(someone), DeviceId(someone), Role::Owner);
        let end = self.written.last().map(SeriesEnd::at);
        let now = 1_800_000_000_000 + 1_000 * self.written.len() as i64;
        let entry = compose(&access, end, draft, &Sight::default(), now);
        self.written.push(entry.expect("an entry of possible shape"));
    }

    fn next_id(&self) -> EntryId {
        EntryId(Uuid::from_u128(0xe000 + self.written.len() as u128))
    }

    /// Writes down what somebody would type.
    pub fn note(&mut self, batch: BatchId, day: CivilDay, kind: &str, typed: &[(&str, String)]) {
        let raw = |(key, text): &(&str, String)| Raw {
            key: (*key).to_owned(),
            text: vec![text.clone()],
            line: None,
        };
        let kind = record::kind(kind).expect(kind);
        let checked = record::check(kind, &typed.iter().map(raw).collect::<Vec<_>>(), Source::Hand);
        assert!(checked.problems.is_empty(), "{}: {:?}", kind.name, checked.problems);
        self.put(record::draft(self.next_id(), kind, batch, day, &checked.answers));
    }

    /// Air and litter of a week.
    fn air(&mut self, batch: BatchId, placed: CivilDay) {
        for age in 20..27 {
            let day = placed.plus_days(age);
            let air = [("coldest_c", "21.5"), ("warmest_c", "30.5"), ("dampest_percent", "78")];
            self.note(batch, day, "house-air", &air.map(|(name, value)| (name, value.to_owned())));
            self.note(batch, day, "look", &[("handful", "holds-together".to_owned())]);
        }
    }

    /// Adopts a plan.
    pub fn adopt(&mut self, batch: BatchId, plan: &str) {
        let plan = sample::plan(plan);
        let body = adoption::body(&plan, batch, Some(HOUSE));
        let day = plan.answers.day("batch.placement").unwrap().plus_days(-30);
        let draft = Draft::new(self.next_id(), "plan-adopted", Subject::Batch(batch), day, body);
        self.put(draft);
    }

    /// A batch that has just begun.
    pub fn adopt_and_place(&mut self, batch: BatchId) {
        self.adopt(batch, &sample::complete());
        self.chicks(batch, placed());
    }

    fn chicks(&mut self, batch: BatchId, day: CivilDay) {
        self.note(
            batch,
            day,
            "chicks-placed",
            &[
                ("counted", "1640".into()),
                ("dead_on_arrival", "6".into()),
                ("weak_culled", "4".into()),
                ("box_weights_g", "4620, 4580, 4650".into()),
                ("box_empty_g", "380".into()),
                ("chicks_per_box", "102".into()),
            ],
        );
    }

    /// A batch that is over: its plan is the same, moved, and it ends with a sale of all.
    fn past(&mut self, batch: BatchId, day: CivilDay, scale: f64) {
        self.adopt(batch, &sample::complete().replace("2027-09-14", &day.to_string()));
        self.chicks(batch, day);
        self.days(batch, day, 42, scale);
        let end = day.plus_days(43);
        self.note(batch, end, "sale", &[("birds", "1500".into()), ("income", "90000".into())]);
        self.note(batch, end, "batch-closed", &[("birds_left", "0".into())]);
    }

    /// Days of which nothing was written on day 9.
    fn days(&mut self, batch: BatchId, placed: CivilDay, last: i32, scale: f64) {
        for age in (0..=last).filter(|age| *age != 9) {
            let day = placed.plus_days(age);
            let dead = [3, 4, 3, 2, 2, 1, 1].get(age as usize).copied().unwrap_or(age % 3);
            self.note(batch, day, "deaths", &[("dead", dead.to_string()), ("culled", "0".into())]);
            let feed = scale * 1.6 * (13.0 + 4.6 * f64::from(age));
            let phase = if age <= 11 { "starter" } else { "grower" };
            let kg = format!("{feed:.1}");
            self.note(batch, day, "feed-given", &[("phase", phase.into()), ("feed_kg", kg)]);
            let water = format!("{:.0}", feed * (1.7 + 0.01 * f64::from(age % 7)));
            self.note(batch, day, "water", &[("water_l", water)]);
            if age % 7 == 0 && age > 0 {
                self.weighing(batch, day, scale * weight(age));
            }
        }
        let three = [("birds", "3".into()), ("why", "home".into())];
        self.note(batch, placed.plus_days(24), "birds-out", &three);
    }

    /// Twenty-one birds about a mean, g.
    pub fn weighing(&mut self, batch: BatchId, day: CivilDay, mean: f64) {
        let bird = |at: i32| format!("{:.0}", mean * (1.0 + 0.012 * f64::from(at - 10)));
        let weights: Vec<String> = (0..=20).map(bird).collect();
        self.note(batch, day, "weighing", &[("weights_g", weights.join(" "))]);
    }

    fn store(&mut self, batch: BatchId, placed: CivilDay) {
        for (age, phase, bags) in
            [(-2, "starter", "16"), (9, "grower", "70"), (26, "finisher", "30"), (27, "last", "20")]
        {
            let day = placed.plus_days(age);
            let bags = [("phase", phase.into()), ("bags", bags.into()), ("bag_kg", "50".into())];
            self.note(batch, day, "feed-delivered", &bags);
        }
        for (age, bags) in [(12, "4"), (20, "6"), (27, "8")] {
            let opened = [("phase", "grower".into()), ("bags", bags.into())];
            self.note(batch, placed.plus_days(age), "feed-opened", &opened);
        }
        let wet = [("phase", "grower".into()), ("feed_kg", "12".into()), ("why", "roof leaks".into())];
        self.note(batch, placed.plus_days(18), "feed-spoiled", &wet);
        for (what, name, amount, unit, cost) in [
            ("litter", "rice husk", "90", "bag", "1800"),
            ("fuel", "charcoal", "6", "sack", "1560"),
            ("fuel", "charcoal", "2", "sack", "540"),
            ("medicine", "vitamins", "2", "kg", "300"),
        ] {
            let typed = [("what", what), ("name", name), ("amount", amount), ("unit", unit), ("cost", cost)];
            let typed = typed.map(|(key, text)| (key, text.to_owned()));
            self.note(batch, placed.plus_days(1), "purchase", &typed);
        }
        for age in 0..12 {
            let burnt = [("fuel", "charcoal".into()), ("amount_kg", "14".into())];
            self.note(batch, placed.plus_days(age), "fuel-burnt", &burnt);
        }
        let given =
            [("medicine", "vitamins".into()), ("withdrawal_d", "0".into()), ("amount", "1 kg".into())];
        self.note(batch, placed.plus_days(3), "medicine-given", &given);
    }

    fn brooding(&mut self, batch: BatchId, placed: CivilDay) {
        for (hours, felt, full) in [
            ("2", "40", "29"),
            ("4", "40", "33"),
            ("8", "35", "30"),
            ("12", "30", "27"),
            ("24", "40", "39"),
            ("48", "30", "30"),
        ] {
            let day = placed.plus_days(if hours == "2" || hours == "4" || hours == "8" { 0 } else { 1 });
            let typed = [("hours_h", hours), ("felt", felt), ("full", full)];
            self.note(batch, day, "crop-fill", &typed.map(|(key, text)| (key, text.to_owned())));
        }
        for (age, hour, spread, vent) in [
            (0, "14", "even", "40.0"),
            (0, "22", "under-the-heat", "39.2"),
            (1, "5", "to-one-side", "39.5"),
            (1, "13", "away-from-the-heat", "40.8"),
            (2, "13", "panting", "40.9"),
        ] {
            let typed = [("hour_h", hour), ("spread", spread), ("vent_c", vent), ("at_chicks_c", "31")];
            let typed = typed.map(|(key, text)| (key, text.to_owned()));
            self.note(batch, placed.plus_days(age), "chick-check", &typed);
        }
    }
}

/// Invented: a house that grows well under the curve.
fn weight(age: i32) -> f64 {
    let age = f64::from(age);
    42.0 + 9.0 * age + 1.25 * age * age
}
