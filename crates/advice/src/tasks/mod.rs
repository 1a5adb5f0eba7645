//! The crew's calendar: what is done on which day, from emptying the house to the day it can be filled again.
//!
//! A task is declared once, in [`table`], under a stable name that is never reused; its text and its reason are
//! messages. Days are counted in days of age (the day of placement is day 0), so that a batch that slips takes every
//! task along.

use quantity::{Answers, CivilDay, Unit};

use crate::finding::Detail;
use crate::outcome::Outcome;
use crate::store_room;

mod frame;
pub mod table;
mod when;

pub use when::{Anchor, When};

use frame::Frame;

/// A part of the work, in the order in which a crew lives it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// The old birds and all that was theirs go out.
    Empty,
    /// Washed, mended, disinfected a first time.
    Clean,
    /// Dried, disinfected a second time, aired, left alone.
    Rest,
    /// Ordered, brought in, built and tried.
    Ready,
    /// The day the chicks come.
    ChickDay,
    /// The first weeks, under heat.
    Brooding,
    /// From the heat to the sale.
    Growing,
    /// Sold and caught.
    Sale,
    /// After the last bird.
    After,
}

impl Stage {
    /// Whether its work is done with birds in the house that are not sold yet.
    fn needs_birds(self) -> bool {
        matches!(self, Stage::Brooding | Stage::Growing)
    }
}

/// How a phone reminds of a task.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remind {
    /// It only stands in the calendar.
    Quiet,
    /// It calls, so many hours after the first day begins; before it where negative.
    AtHour(i32),
    /// It calls at each of these times, every day from the first to the last.
    Rounds(&'static [Round]),
}

/// A time of day at which somebody goes and looks. It is the clock on the wall of the farm, whatever its zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Round {
    /// The hour, 0 to 23.
    pub hour: u8,
    /// Whether it is past midnight, in the night that began on the task's day.
    pub past_midnight: bool,
}

/// Where a number in a task's sentence comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Told {
    /// A figure of the plan.
    Figure(&'static str),
    /// An answer of the grower that is a number.
    Field(&'static str),
    /// Of the day itself: which of the numbers that its rule fills in.
    Run(usize),
    /// The bags of feed that come that day, by what each holds.
    BagsThatDay,
}

/// One line of the table of tasks. Anybody of the crew may do it.
pub struct TaskSpec {
    /// Its stable name, which is that of its message too.
    pub name: &'static str,
    /// The part of the work it belongs to.
    pub stage: Stage,
    /// On which days.
    pub when: When,
    /// Whether this batch has it at all.
    pub applies: fn(&Answers, &Outcome) -> bool,
    /// How a phone reminds of it.
    pub remind: Remind,
    /// The numbers of its sentence, by the message's argument. While one of them is not known, the message's attribute
    /// `unknown` is said instead.
    pub details: &'static [(&'static str, Told)],
}

/// A task with its day.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// Its declaration.
    pub name: &'static str,
    /// The part of the work.
    pub stage: Stage,
    /// Which one of its name it is, from 0, whatever the day.
    pub ordinal: usize,
    /// Its (first) day.
    pub day: CivilDay,
    /// That day as day of age; the day of placement is day 0.
    pub age_d: i32,
    /// Its last day, where it goes on for several.
    pub until: Option<CivilDay>,
    /// How a phone reminds of it.
    pub remind: Remind,
    /// The numbers of its sentence; `None` while one of them is not known.
    pub details: Option<Vec<(&'static str, Detail)>>,
}

/// The task of ordering feed: what it says is told by the deliveries of the plan.
pub const FEED_ORDER: &str = "feed-order";

/// Every task whose day is known, by day and then by order of work; none while the chick day is not known.
pub fn tasks(answers: &Answers, outcome: &Outcome) -> Vec<Task> {
    let Some(placement) = answers.day("batch.placement") else { return Vec::new() };
    let frame = Frame::of(answers, outcome);
    let applying = table::all().filter(|spec| (spec.applies)(answers, outcome));
    let mut tasks: Vec<Task> =
        applying.flat_map(|spec| spec.on_days(&frame, placement, answers, outcome)).collect();
    // The sort keeps the order of the table, which is that of the work.
    tasks.sort_by_key(|task| task.day);
    tasks
}

impl TaskSpec {
    fn on_days(&self, frame: &Frame, placement: CivilDay, answers: &Answers, outcome: &Outcome) -> Vec<Task> {
        let mut runs = self.when.runs(frame);
        if let Some(sale) = frame.age(Anchor::Sale).filter(|_| self.stage.needs_birds()) {
            runs.retain(|run| run.first < sale);
            runs.iter_mut().for_each(|run| run.last = run.last.min(sale - 1));
        }
        let task = |(ordinal, run): (usize, when::Run)| Task {
            name: self.name,
            stage: self.stage,
            ordinal,
            day: placement.plus_days(run.first),
            age_d: run.first,
            until: (run.last > run.first).then(|| placement.plus_days(run.last)),
            remind: self.remind,
            details: self.told(&run, answers, outcome),
        };
        runs.into_iter().enumerate().map(task).collect()
    }

    fn told(
        &self,
        run: &when::Run,
        answers: &Answers,
        outcome: &Outcome,
    ) -> Option<Vec<(&'static str, Detail)>> {
        let detail = |told: Told| match told {
            Told::Figure(id) => outcome.get(id).map(|_| Detail::Figure(id)),
            Told::Field(key) => {
                let unit = crate::families::field(key)?.unit()?;
                Some(Detail::Number { value: answers.number(key)?, unit, decimals: 0 })
            }
            Told::BagsThatDay => {
                let bags = store_room::bags_by_size(answers, outcome, Some(run.first));
                (!bags.is_empty()).then_some(Detail::Bags(bags))
            }
            Told::Run(at) => {
                let (value, unit) = run.details.get(at).copied()?;
                Some(Detail::Number { value, unit, decimals: 0 })
            }
        };
        self.details.iter().map(|(argument, told)| Some((*argument, detail(*told)?))).collect()
    }
}

/// How many birds a weighing needs: 1 % of the flock but at least 100 (a breeders' handbook, published); of a flock
/// under 1 000, 50; of one under 500, a tenth but at least 30 (common practice).
pub fn birds_to_weigh(flock: f64) -> f64 {
    let wanted = match flock {
        flock if flock < 500.0 => (flock / 10.0).max(30.0),
        flock if flock < 1_000.0 => 50.0,
        flock => (flock / 100.0).max(100.0),
    };
    wanted.ceil().min(flock.floor())
}

/// A detail of a run: a number and its unit.
type RunDetail = (f64, Unit);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_weighing_is_never_more_than_the_flock() {
        for (flock, birds) in
            [(20.0, 20.0), (100.0, 30.0), (499.0, 50.0), (800.0, 50.0), (1_600.0, 100.0), (20_050.0, 201.0)]
        {
            assert_eq!(birds_to_weigh(flock), birds, "{flock}");
        }
    }

    #[test]
    fn without_a_chick_day_there_are_no_tasks() {
        let answers = Answers::default();
        assert!(tasks(&answers, &Outcome::of(&answers, [])).is_empty());
    }
}
