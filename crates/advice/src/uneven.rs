//! Why the birds of a batch weigh so unlike: how much lies between spots and within them, and which causes the book speaks of.

use std::collections::BTreeMap;

pub use model::uneven::{Cause, Evenness, Ranked};
use model::uneven::{Evidence, Spread, evenness, named, ranked};
use model::variance::{self, Components};
use quantity::{Answers, CivilDay};

use crate::diary::{Diary, Noted};
use crate::outcome::Outcome;
use crate::tasks::Task;
use crate::walk::{Walk, job_key};
use crate::watch::{Watch, grade_of};
use crate::weighing::{Weighing, spot_key};

/// What the last weighing by spots says, and what the book says of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Uneven {
    /// The day of the weighing.
    pub weighed_on: CivilDay,
    /// How even the flock is.
    pub evenness: Evenness,
    /// The parts of the spread; `None` where nothing can be said of them.
    pub parts: Option<Components>,
    /// Every cause that the book speaks of, the strongest first.
    pub ranked: Vec<Ranked>,
    /// Those that are likely.
    pub named: Vec<Ranked>,
}

/// What works on birds longer ago has grown out, or been told at an earlier weighing.
const LOOKED_BACK_D: i32 = 21;
/// Litter dries and wets sooner.
const LITTER_BACK_D: i32 = 14;

impl Uneven {
    /// By the last weighing bird by bird in which every bird's spot is named; `None` where there is none.
    pub fn of(walk: &Walk) -> Option<Uneven> {
        let watch = Watch::of(walk)?;
        let (weighed_on, spots) = last_by_spots(&walk.diary)?;
        let weights: Vec<Vec<f64>> = spots.values().cloned().collect();
        let parts = variance::components(&weights);
        let book = Book { walk, watch: &watch, age: walk.diary.age(weighed_on)? };
        let evidence = book.evidence(&spots);
        let (evenness, ranked) =
            (parts.as_ref().map_or(Evenness::NotEnoughWeighed, evenness), ranked(&evidence));
        let named = named(evenness, &ranked);
        Some(Uneven { weighed_on, evenness, parts, ranked, named })
    }
}

/// Weights by spot.
type Spots = BTreeMap<String, Vec<f64>>;

fn last_by_spots(diary: &Diary) -> Option<(CivilDay, Spots)> {
    let mut days: Vec<CivilDay> = diary.of_kind("weighing").map(|note| note.day).collect();
    days.dedup();
    days.into_iter().rev().find_map(|day| Some((day, Weighing::on(diary, day).birds_by_spot()?)))
}

/// The book up to a weighing.
struct Book<'a> {
    walk: &'a Walk,
    watch: &'a Watch,
    age: i32,
}

impl Book<'_> {
    fn evidence(&self, spots: &Spots) -> Evidence {
        let (answers, outcome) = (&self.walk.plan.answers, &self.walk.plan.outcome);
        Evidence {
            arrival: self.arrival(),
            feeders_short: self.short(answers, outcome, &FEEDERS),
            drinkers_short: self.short(answers, outcome, &DRINKERS),
            guard_late_d: self.guard_late(),
            swings: self.memory("swing", |signal| signal.look),
            deaths: self.memory("deaths", |signal| signal.act),
            litter: self.litter(),
            lightest: lightest(spots),
        }
    }

    /// Chicks weighed one by one on the day they came. Boxes do not tell it: one chick more in one of them outweighs what their
    /// means differ by.
    fn arrival(&self) -> Option<Spread> {
        let diary = &self.walk.diary;
        let chicks: Vec<f64> =
            diary.on_day("weighing", diary.placement?).flat_map(|note| note.numbers("weights_g")).collect();
        let variation = model::weighing::variation(&chicks)?;
        Some(Spread { variation, n: chicks.len() as f64 })
    }

    /// The share lacking of those the plan needs, on each day up to the weighing; empty where nobody said how many there are.
    fn short(&self, answers: &Answers, outcome: &Outcome, of: &Equipment) -> Vec<f64> {
        let change = outcome.number("space.change_over").unwrap_or(f64::INFINITY) as i32;
        let lacking = |(needed, have): (&str, &str)| {
            let needed = outcome.number(needed).filter(|needed| *needed > 0.0)?;
            Some((1.0 - answers.number(have)? / needed).max(0.0))
        };
        let (small, large) = (lacking(of.small), lacking(of.large));
        let first = (self.age - LOOKED_BACK_D).max(0);
        (first..self.age).filter_map(|day| if day < change { small } else { large }).collect()
    }

    /// By how many days the latest of the guard's jobs was ticked off late; what was not ticked says nothing.
    fn guard_late(&self) -> Option<f64> {
        let late = |task: &Task| {
            let key = job_key(task);
            let mut ticks =
                self.walk.diary.of_kind("task-done").filter(|note| note.text("task") == Some(&key));
            Some(ticks.next()?.day.days_since(task.day).max(0))
        };
        let jobs = self.walk.plan.tasks.iter().filter(|task| GUARD_JOBS.contains(&task.name));
        jobs.filter_map(late).max().map(f64::from)
    }

    /// The highest memory of a signal before the weighing, over one of its lines.
    fn memory(&self, name: &str, line: fn(&crate::watch::Watched) -> f64) -> Option<f64> {
        let signal = self.watch.signal(name)?;
        let days = signal.days.iter().filter(|day| (self.age - LOOKED_BACK_D..=self.age).contains(&day.day));
        let most = days
            .map(|day| day.memory)
            .fold(None, |most: Option<f64>, one| Some(most.unwrap_or(0.0).max(one)));
        most.filter(|_| line(signal) > 0.0).map(|most| most / line(signal))
    }

    fn litter(&self) -> Vec<(String, f64)> {
        let diary = &self.walk.diary;
        let is_recent = |note: &&Noted| {
            let age = diary.age(note.day);
            age.is_some_and(|age| (self.age - LITTER_BACK_D..=self.age).contains(&age))
        };
        let handful = |note: &Noted| Some((spot_key(note.text("spot")?), grade_of(note.text("handful")?)?));
        diary.of_kind("litter-check").filter(is_recent).filter_map(handful).collect()
    }
}

/// Figures of what is needed and fields of what there is, of chicks and of grown birds.
struct Equipment {
    small: (&'static str, &'static str),
    large: (&'static str, &'static str),
}

const FEEDERS: Equipment = Equipment {
    small: ("space.chick_feeders", "equipment.chick_feeders"),
    large: ("space.feeders", "equipment.feeders"),
};
const DRINKERS: Equipment = Equipment {
    small: ("space.chick_drinkers", "equipment.chick_drinkers"),
    large: ("space.drinkers", "equipment.drinkers"),
};

/// The jobs by which the guard gives the birds more room.
const GUARD_JOBS: [&str; 2] = ["rings-widened", "guards-out"];

fn lightest(spots: &Spots) -> Option<String> {
    let means = spots.iter().filter_map(|(spot, weights)| Some((model::weighing::mean(weights)?, spot)));
    means.min_by(|one, other| one.0.total_cmp(&other.0)).map(|(_, spot)| spot.clone())
}
