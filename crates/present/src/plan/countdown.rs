//! What is done on which day?

use advice::tasks::{FEED_ORDER, Remind, Round, Stage, Task};
use quantity::{CivilDay, DayOfAge};

use super::*;
use crate::calendar::{self, Event, When, Written};
use crate::ordering;
use crate::scene::timeline::{Due, Phase, Tick, Timeline, TimelineWords};

/// The phone calls so many minutes before a round through the house.
const BEFORE_ROUND_MIN: i32 = 10;

/// Jobs that stand for the whole on the line of days, and whether they must not slip.
const LANDMARKS: &[(&str, bool)] = &[
    ("birds-out", false),
    ("disinfect-first", false),
    ("disinfect-second", false),
    ("chicks-booked", true),
    ("feed-in", true),
    ("litter-in", false),
    ("warming", true),
    ("boxes-counted", true),
    ("guards-out", false),
    ("withdrawal-checked", true),
    ("sale", true),
    ("next-chicks", false),
];

impl Shown<'_> {
    pub(super) fn countdown(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-countdown")];
        let Some(lead) = self.countdown_lead() else {
            blocks.push(self.waiting("waiting-countdown", &waiting::COUNTDOWN));
            return blocks;
        };
        blocks.push(lead);
        blocks.extend(self.draw_countdown());
        blocks.extend(self.rows(&["house.empty_from", "house.empty_days", "batch.next_placement"]));
        let mut weeks = Vec::new();
        for jobs in self.plan.tasks.chunk_by(|one, next| week(one) == week(next)) {
            let title = jobs.first().map_or_else(String::new, |job| self.week_title(week(job)));
            weeks.push(Block::Paragraph(title));
            weeks.push(Block::Steps(self.jobs(jobs.iter(), false)));
        }
        blocks.push(Block::Apart { page: "jobs", title: self.words.plain("every-job"), blocks: weeks });
        blocks
    }

    /// The days that must not slip, on a line from the empty house to the next chicks.
    fn draw_countdown(&self) -> Option<Block> {
        let placement = self.plan.answers.day("batch.placement")?;
        let tasks = &self.plan.tasks;
        let (first, last) = (tasks.first()?.age_d, tasks.last()?.age_d);
        let of_day = |day: i32| show::day_short(DayOfAge(day).date(placement), self.viewer);
        let ticks: Vec<Tick> = (first.div_euclid(WEEK_D)..=last.div_euclid(WEEK_D))
            .map(|week| Tick { day: week * WEEK_D, label: of_day(week * WEEK_D) })
            .collect();
        let due: Vec<Due> = LANDMARKS
            .iter()
            .filter_map(|(name, firm)| {
                let task = tasks.iter().find(|task| task.name == *name)?;
                let label = self.words.attribute(&format!("task-{name}"), "short", &[])?;
                Some(Due { day: task.age_d, label, firm: *firm })
            })
            .collect();
        let phase = |stages: &[Stage], key: &str| {
            let of: Vec<&Task> = tasks.iter().filter(|task| stages.contains(&task.stage)).collect();
            let from = of.iter().map(|task| task.age_d).min()?;
            let to =
                of.iter().map(|task| task.until.map_or(task.age_d, |day| day.days_since(placement))).max()?;
            Some(Phase { from, to, label: self.words.plain(key) })
        };
        let phases = [
            phase(&[Stage::Empty, Stage::Clean, Stage::Rest], "phase-house"),
            phase(&[Stage::Brooding], "phase-brooding"),
            phase(&[Stage::Growing], "phase-growing"),
            phase(&[Stage::After], "phase-after"),
        ];
        let listed = due.iter().map(|due| format!("{} {}", of_day(due.day), due.label));
        let alternative = say!(self.words, "drawing-countdown", days = listed.collect::<Vec<_>>().join(", "));
        let rows = due.iter().map(|due| vec![of_day(due.day), due.day.to_string(), due.label.clone()]);
        let data = Table {
            caption: String::new(),
            columns: self.columns(&["column-date", "column-day", "column-what"]),
            rows: rows.collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        };
        let timeline = Timeline { ticks, due, phases: phases.into_iter().flatten().collect() };
        Some(Block::Drawing(Drawing {
            name: "countdown",
            svg: timeline.draw(&TimelineWords { alternative: alternative.clone() }),
            caption: self.words.plain(match self.number("sale.first_age") {
                Some(_) => "drawing-countdown-caption",
                None => "drawing-countdown-caption-no-sale",
            }),
            alternative,
            data,
            width_percent: 45,
        }))
    }

    /// Every job to tick, in the order of their days.
    pub fn countdown_checklist(&self) -> Document {
        let sale = self.number("sale.first_age").is_none() && !self.plan.tasks.is_empty();
        let no_sale = sale.then(|| Block::Note(self.sale_not_known()));
        let mut blocks: Vec<Block> = no_sale.into_iter().collect();
        blocks.extend([
            Block::Paragraph(self.words.plain("checklist-age")),
            // Whom to call stands where it is seen first; behind the jobs it would often be a page of its own.
            Block::Blanks(self.blanks(&[
                ("wall-vet", 25),
                ("wall-hatchery", 25),
                ("wall-feed-shop", 25),
                ("wall-owner", 25),
            ])),
            Block::Caution(self.caution("guard", Level::Danger, 4)),
        ]);
        for jobs in self.plan.tasks.chunk_by(|one, next| week(one) == week(next)) {
            let text = jobs.first().map_or_else(String::new, |job| self.week_title(week(job)));
            blocks.push(Block::Heading { level: 3, text, anchor: "every-job" });
            blocks.push(Block::Steps(self.jobs(jobs.iter(), true)));
        }
        if self.plan.tasks.is_empty() {
            blocks.push(self.waiting("waiting-countdown", &waiting::COUNTDOWN));
        }
        Document { title: self.words.plain("sheet-countdown"), subtitle: self.subtitle(), blocks }
    }

    /// What a task says, and why.
    pub fn job(&self, task: &Task) -> (String, String) {
        if let Some(order) = self.order_of(task) {
            return order;
        }
        let key = format!("task-{}", task.name);
        let on_earth = self.words.attribute(&key, "earth", &[]).filter(|_| self.is_on_earth());
        let text = match &task.details {
            _ if on_earth.is_some() => on_earth.unwrap_or_default(),
            Some(details) => {
                let arguments = finding::arguments(details, &self.plan.outcome, self.viewer);
                self.words.say(&key, &finding::borrowed(&arguments))
            }
            None => self.words.attribute(&key, "unknown", &[]).unwrap_or_default(),
        };
        (text, self.words.attribute(&key, "why", &[]).unwrap_or_default())
    }

    /// What to order on the day of a task that orders feed, and by when it comes.
    fn order_of(&self, task: &Task) -> Option<(String, String)> {
        let lead_d = self.plan.answers.number("feed.lead_d").filter(|_| task.name == FEED_ORDER)? as i32;
        let comes = task.age_d + lead_d;
        let feeds: Vec<_> = self.plan.deliveries.iter().filter(|one| one.day == comes).copied().collect();
        let day = task.day.plus_days(lead_d);
        Some((ordering::summary(&feeds, self.viewer), ordering::why(day, lead_d, self.viewer)))
    }

    /// The jobs as a calendar file. `batch` names the batch for ever: the same jobs of the same batch keep their names in
    /// the phone whatever day they move to.
    pub fn calendar(&self, batch: &str, written: Written) -> String {
        calendar::write(&self.all_events(batch, |_| true), written)
    }

    /// Those jobs that are wanted as events, likewise.
    pub(crate) fn all_events(&self, batch: &str, is_wanted: impl Fn(&Task) -> bool) -> Vec<Event> {
        let wanted = self.plan.tasks.iter().filter(|task| is_wanted(task));
        wanted.flat_map(|task| self.events(task, batch)).collect()
    }

    fn countdown_lead(&self) -> Option<Block> {
        let (first, last) = (self.plan.tasks.first()?, self.plan.tasks.last()?);
        let day = |task: &Task| show::day(task.day, self.viewer);
        let count = show::number(self.plan.tasks.len() as f64, 0);
        let is_whole = self.number("sale.first_age").is_some();
        let label = if is_whole { "days-lead-label" } else { "days-lead-label-no-sale" };
        let note = say!(self.words, "days-lead-note", count = count);
        let note = match is_whole {
            true => note,
            false => format!("{} {note}", self.sale_not_known()),
        };
        Some(Block::Lead {
            label: self.words.plain(label),
            value: say!(self.words, "days-lead", first = day(first), last = day(last)),
            note,
        })
    }

    /// That the jobs end too early, and what to answer.
    fn sale_not_known(&self) -> String {
        let questions = self.unanswered(&waiting::COUNTDOWN).join("; ");
        say!(self.words, "countdown-no-sale", questions = questions)
    }

    fn week_title(&self, week: i32) -> String {
        let (from, to) = (week * WEEK_D, week * WEEK_D + WEEK_D - 1);
        let key = match week {
            0.. => "days-week",
            -1 => "days-before-week",
            _ => "days-weeks-before",
        };
        let number = |number: i32| show::number(number.into(), 0);
        let weeks = if week < 0 { -week } else { week + 1 };
        say!(self.words, key, week = number(weeks), from = number(from), to = number(to))
    }

    fn jobs<'t>(&self, tasks: impl Iterator<Item = &'t Task>, ticks: bool) -> Steps {
        Steps { ordered: false, ticks, items: tasks.map(|task| self.dated(task)).collect() }
    }

    fn dated(&self, task: &Task) -> (String, String) {
        let (text, why) = self.job(task);
        let day = show::day(task.day, self.viewer);
        let when = match task.until {
            Some(until) => say!(self.words, "date-to-date", from = day, to = show::day(until, self.viewer)),
            None => day,
        };
        let age = say!(self.words, "day-of-age", day = show::number(task.age_d.into(), 0));
        (say!(self.words, "checklist-item", when = when, age = age, text = text), why)
    }

    fn events(&self, task: &Task, batch: &str) -> Vec<Event> {
        let (summary, why) = self.job(task);
        let age = say!(self.words, "calendar-age", age = show::number(task.age_d.into(), 0));
        let about = [why, age, self.subtitle()];
        let description = about.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join("\n");
        let last = task.until.unwrap_or(task.day);
        let event = |name: String, when: When, alarm_min: Option<i32>| Event {
            uid: format!("{}-{name}.{batch}", task.name),
            when,
            summary: summary.clone(),
            description: description.clone(),
            alarm_min,
        };
        let all_day = When::Days { first: task.day, last };
        match task.remind {
            Remind::Quiet => vec![event(task.ordinal.to_string(), all_day, None)],
            Remind::AtHour(hour) => vec![event(task.ordinal.to_string(), all_day, Some(hour * 60))],
            Remind::Rounds(rounds) => {
                let round = |round: &Round| {
                    let name = format!("{}-{}", task.ordinal, round.hour);
                    event(name, daily(round, task.day, last), Some(-BEFORE_ROUND_MIN))
                };
                rounds.iter().map(round).collect()
            }
        }
    }
}

const WEEK_D: i32 = 7;

/// The week of age, 0 for the first; before the chicks below zero.
fn week(task: &Task) -> i32 {
    task.age_d.div_euclid(WEEK_D)
}

fn daily(round: &Round, first: CivilDay, last: CivilDay) -> When {
    let times = last.days_since(first) + 1;
    When::Daily { first: first.plus_days(round.past_midnight.into()), hour: round.hour, times }
}
