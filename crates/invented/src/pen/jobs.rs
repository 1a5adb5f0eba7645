//! Work that is ticked off, or was forgotten.

use super::{Pen, text};

/// The chance that a job is not done, or not ticked.
const FORGOTTEN: f64 = 0.03;

/// The hour at which the grower sits down and ticks.
const HOUR: i32 = 19;

impl Pen<'_> {
    pub(super) fn jobs(&mut self) {
        let scenario = self.scenario;
        for job in &scenario.jobs {
            for age in job.first..=job.last {
                if job.is_never_forgotten || !self.luck.happens(FORGOTTEN) {
                    self.write(age, HOUR, "task-done", vec![("task", text(&job.key))]);
                }
            }
        }
    }
}
