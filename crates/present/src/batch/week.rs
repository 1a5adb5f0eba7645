//! The last seven days for the owner: what was written beside what was planned, the jobs, the money, and what comes.

use advice::account::{self, KindSum};
use advice::tasks::Task;
use advice::walk;
use quantity::{CivilDay, Unit};

use super::Page;
use crate::document::{Align, Block, Steps, Table};
use crate::entry::kind_name;
use crate::plan::Shown;
use crate::{say, show};

/// Days of a week's summary.
const DAYS: i32 = 7;
/// Jobs that were not ticked, as far as a sheet of paper names them.
const NAMED: usize = 5;

impl Page<'_> {
    /// The last seven days for the owner, and what comes in the next.
    pub(super) fn week(&self) -> Vec<Block> {
        let mut blocks = vec![Block::Table(self.days_of_the_week())];
        blocks.push(self.figures(&[
            "growing.alive",
            "growing.lost",
            "growing.losses",
            "growing.weight",
            "walk.weight_expected",
        ]));
        blocks.extend(self.jobs_of_the_week());
        blocks.extend(self.money_of_the_week().map(Block::Table));
        let next = self.next_jobs();
        if !next.items.is_empty() {
            blocks.extend([self.title("week-next"), Block::Steps(next)]);
        }
        blocks.push(self.blanks(&[("week-remarks", 100), ("week-who", 50), ("week-date", 50)]));
        blocks
    }

    fn days_of_the_week(&self) -> Table {
        let columns = [
            self.words.plain("week-day"),
            self.words.plain("week-lost"),
            self.words.plain("week-alive"),
            self.unit_title("week-feed", Unit::Kilogram),
            self.unit_title("week-water", Unit::Litre),
            self.unit_title("week-air", Unit::Celsius),
        ];
        let today = self.walk.diary.on;
        let rows = (0..DAYS).rev().map(|back| self.day_row(today.plus_days(-back))).collect();
        let align = |at: usize| if at == 0 { Align::Start } else { Align::End };
        Table {
            caption: self.words.plain("week-caption"),
            columns: columns.into_iter().enumerate().map(|(at, title)| (title, align(at))).collect(),
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    /// A day as it was written; what was not written says so and is no nothing.
    fn day_row(&self, day: CivilDay) -> Vec<String> {
        let age = self.walk.diary.age(day);
        let gap = || self.words.plain("week-gap");
        let of = |series: &str| age.and_then(|age| self.walk.plan.outcome.on_day(series, age));
        // A whole number of birds or a kilogram with a decimal; a plan's birds are an average and keep one.
        let told = |series: &str, unit: Unit| {
            let decimals = u8::from(unit != Unit::Birds);
            of(series).map_or_else(gap, |value| show::bare(value, unit, decimals, self.viewer))
        };
        let beside = |series: &str, planned: &str, unit: Unit| {
            let Some(planned) = of(planned) else { return told(series, unit) };
            let planned = show::bare(planned, unit, 1, self.viewer);
            say!(self.words, "week-beside", told = told(series, unit), planned = planned)
        };
        let air = match (of("growing.coldest_by_day"), of("growing.warmest_by_day")) {
            (None, None) => gap(),
            (low, high) => {
                let degrees = |value| show::bare(value, Unit::Celsius, 1, self.viewer);
                let end = |value: Option<f64>| value.map_or_else(gap, degrees);
                say!(self.words, "week-from-to", low = end(low), high = end(high))
            }
        };
        vec![
            show::day_short(day, self.viewer),
            beside("growing.lost_by_day", "batch.losses_by_day", Unit::Birds),
            told("growing.alive_by_day", Unit::Birds),
            beside("growing.feed_by_day", "feed.by_day", Unit::Kilogram),
            beside("growing.water_by_day", "water.by_day", Unit::Litre),
            air,
        ]
    }

    fn first_day(&self) -> CivilDay {
        self.walk.diary.on.plus_days(1 - DAYS)
    }

    /// How many jobs were ticked, and which were not.
    fn jobs_of_the_week(&self) -> Vec<Block> {
        let all = walk::jobs_between(&self.walk.diary, &self.walk.plan, self.first_day(), self.walk.diary.on);
        let (due, done) = all.iter().fold((0, 0), |(due, done), one| (due + one.due_d, done + one.done_d));
        if due == 0 {
            return Vec::new();
        }
        let mut blocks = vec![
            self.title("week-jobs"),
            Block::Paragraph(say!(
                self.words,
                "week-jobs-done",
                done = done.to_string(),
                due = due.to_string()
            )),
        ];
        let plan = Shown::new(&self.walk.plan, self.viewer);
        let open: Vec<_> = all.iter().filter(|one| one.done_d < one.due_d).collect();
        let row = |one: &&walk::Due| {
            let day = show::day_short(one.task.day.max(self.first_day()), self.viewer);
            let (text, _) = plan.job(&one.task);
            let missed = (one.due_d - one.done_d).to_string();
            let key = if one.due_d == 1 { "week-job" } else { "week-job-missed" };
            (
                self.words.say(key, &[("day", day.into()), ("text", text.into()), ("n", missed.into())]),
                String::new(),
            )
        };
        if !open.is_empty() {
            let items = open.iter().take(NAMED).map(row).collect();
            blocks.push(Block::Steps(Steps { ordered: false, ticks: true, items }));
        }
        if open.len() > NAMED {
            let more = (open.len() - NAMED).to_string();
            blocks.push(Block::Note(say!(self.words, "week-jobs-more", n = more)));
        }
        blocks
    }

    /// What was spent and what came in; `None` where nothing was.
    fn money_of_the_week(&self) -> Option<Table> {
        let (diary, from, to) = (&self.walk.diary, self.first_day(), self.walk.diary.on);
        let (spent, received) =
            (account::spent_between(diary, from, to), account::sold_between(diary, from, to));
        if spent.is_empty() && received.is_empty() {
            return None;
        }
        let mut rows: Vec<Vec<String>> = spent.iter().map(|sum| self.money_row(sum)).collect();
        let total: f64 = spent.iter().map(|sum| sum.amount).sum();
        let emphasis = if spent.len() > 1 { vec![rows.len()] } else { Vec::new() };
        if spent.len() > 1 {
            rows.push(vec![self.words.plain("week-spent"), show::money(total, self.viewer), String::new()]);
        }
        rows.extend(received.iter().map(|sum| self.money_row(sum)));
        Some(Table {
            caption: self.words.plain("week-money"),
            columns: vec![
                (self.words.plain("column-what"), Align::Start),
                (self.words.plain("week-amount"), Align::End),
                (self.words.plain("week-of-it"), Align::Start),
            ],
            rows,
            emphasis,
            explained_by: Vec::new(),
        })
    }

    fn money_row(&self, sum: &KindSum) -> Vec<String> {
        let owed = (sum.later > 0.0)
            .then(|| say!(self.words, "week-owed", amount = show::money(sum.later, self.viewer)));
        let unpriced =
            (sum.unpriced > 0).then(|| say!(self.words, "week-unpriced", n = sum.unpriced.to_string()));
        let beside: Vec<String> = owed.into_iter().chain(unpriced).collect();
        vec![kind_name(sum.kind, self.viewer), show::money(sum.amount, self.viewer), beside.join(", ")]
    }

    fn next_jobs(&self) -> Steps {
        let (today, plan) = (self.walk.diary.on, Shown::new(&self.walk.plan, self.viewer));
        let next = |day: CivilDay| day > today && day <= today.plus_days(DAYS);
        let job = |task: &Task| {
            let (text, _) = plan.job(task);
            (
                say!(self.words, "week-job", day = show::day_short(task.day, self.viewer), text = text),
                String::new(),
            )
        };
        let tasks = self.walk.plan.tasks.iter().filter(|task| next(task.day));
        Steps { ordered: false, ticks: true, items: tasks.map(job).collect() }
    }
}
