//! The table of tasks, one file a time of the batch, in order of work.

use quantity::Answers;

use super::{Anchor, Remind, Round, Stage, TaskSpec, Told, When};
use crate::outcome::Outcome;

mod chicks;
mod growing;
mod house;
mod ready;
mod sale;

/// Every task there is, in order of work.
pub fn all() -> impl Iterator<Item = &'static TaskSpec> {
    [house::TASKS, ready::TASKS, chicks::TASKS, growing::TASKS, sale::TASKS].into_iter().flatten()
}

/// A task that every batch has, that calls for nobody and says no number; the others are changed from this one.
const fn task(name: &'static str, stage: Stage, when: When) -> TaskSpec {
    TaskSpec { name, stage, when, applies: always, remind: Remind::Quiet, details: &[] }
}

fn always(_: &Answers, _: &Outcome) -> bool {
    true
}

/// The hour of the morning at which a phone calls for a day's work.
const MORNING: Remind = Remind::AtHour(6);
/// The evening before, for what begins in the night or at first light.
const EVENING_BEFORE: Remind = Remind::AtHour(-6);
/// Office hours, for what is ordered or asked.
const OFFICE: Remind = Remind::AtHour(9);

impl TaskSpec {
    const fn calls(mut self, remind: Remind) -> TaskSpec {
        self.remind = remind;
        self
    }

    const fn says(mut self, details: &'static [(&'static str, Told)]) -> TaskSpec {
        self.details = details;
        self
    }

    const fn only(mut self, applies: fn(&Answers, &Outcome) -> bool) -> TaskSpec {
        self.applies = applies;
        self
    }
}
