//! The sheet at the house door: what each day is expected to bring, and what there is to do that day.
//!
//! Made from a plan before any record exists. Nothing is worked out twice: every expected number is a figure by day of
//! the plan, but for the two rules below, which stand on no other page.

use quantity::CivilDay;

use crate::past::PastBatch;
use crate::plan::{Plan, Standing};
use crate::store_room::Phase;
use crate::tasks::{self, Task};

/// Days on a sheet.
pub const DAYS: i32 = 7;

/// Weeks that there are sheets for while the sale is not known: birds are seldom kept longer (our judgement).
const WEEKS_WITHOUT_SALE: i32 = 6;

/// A day on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct DoorDay {
    /// The day of age; the day of placement is day 0.
    pub age: i32,
    /// The day itself; `None` while the chick day is not known.
    pub date: Option<CivilDay>,
    /// What is expected; `None` where the days are not known.
    pub expected: Option<Expected>,
    /// Whether there is heat for chicks to lie round.
    pub is_brooding: bool,
    /// What the last batch of the house had on this day.
    pub before: Before,
    /// What there is to do, in the order of the day.
    pub todo: Vec<Todo>,
}

/// What a day is expected to bring; what could not be worked out is `None`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// Birds alive in the morning.
    pub alive: f64,
    /// Feed, kg.
    pub feed_kg: Option<f64>,
    /// The same in bags.
    pub feed_bags: Option<f64>,
    /// The same in tins.
    pub feed_tins: Option<f64>,
    /// Water, L.
    pub water_l: Option<f64>,
    /// The same in cans.
    pub water_cans: Option<f64>,
    /// Warmth at chick height, °C.
    pub warmth_c: Option<f64>,
    /// Light, h.
    pub light_h: Option<f64>,
    /// So many deaths in a day are a reason to call.
    pub call_at: f64,
}

/// What the last batch of the house had on a day of age, for as many birds as this batch has then; what was not written is
/// `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Before {
    /// Feed, kg.
    pub feed_kg: Option<f64>,
    /// Dead and culled.
    pub deaths: Option<f64>,
    /// Mean weight, g; on a straight line between two weighings.
    pub weight_g: Option<f64>,
}

impl Before {
    /// - `alive`: birds of this batch in the morning
    /// - `chicks`: live chicks of this batch at the start, of whom losses are counted
    fn on(past: &PastBatch, age: i32, alive: f64, chicks: f64) -> Before {
        let at =
            |days: &[(i32, f64)], age: i32| days.iter().find(|(day, _)| *day == age).map(|(_, value)| *value);
        let losses = |age: i32| at(&past.losses_percent, age);
        let lost_percent = match age {
            0 => losses(0),
            _ => losses(age).zip(losses(age - 1)).map(|(until, before)| until - before),
        };
        Before {
            feed_kg: at(&past.feed_g, age).map(|grams| grams * alive / 1000.0),
            deaths: lost_percent.map(|percent| percent / 100.0 * chicks),
            weight_g: model::growth::between(&past.weight_g, age),
        }
    }
}

/// Something to do on a day.
#[derive(Clone, Debug, PartialEq)]
pub enum Todo {
    /// Set the guard so.
    Guard(Standing),
    /// Bags come.
    Delivery {
        /// Of which feed.
        phase: Phase,
        /// How many.
        bags: f64,
        /// What each holds, kg, where there are several sizes.
        size_kg: Option<f64>,
    },
    /// Begin a new feed, so many parts of four; the rest is still the old one.
    Mix {
        /// The new feed.
        phase: Phase,
        /// Parts of four.
        parts_of_four: u8,
    },
    /// Large feeders and drinkers are hung beside the small ones.
    LargeBesideSmall,
    /// The small ones go out in the evening.
    SmallOut,
    /// Count and weigh boxes of chicks as they come.
    Boxes,
    /// Weigh birds one by one.
    Weigh {
        /// How many, where that is known.
        birds: Option<f64>,
        /// Their target weight, g.
        target_g: Option<f64>,
    },
    /// Sell birds.
    Sell {
        /// How many, where that is known.
        birds: Option<f64>,
        /// Whether they are the last.
        are_last: bool,
    },
    /// A job of the countdown, by its name.
    Job(&'static str),
}

/// Deaths in a day that are a reason to call: the greater of three times what is expected, rounded up, and one more,
/// and half a percent of the birds alive, rounded up.
///
/// Common practice, no source.
pub fn call_at(expected_deaths: f64, alive: f64) -> f64 {
    const HAIR: f64 = 1e-9;
    let by_plan = (3.0 * expected_deaths - HAIR).ceil().max(0.0) + 1.0;
    by_plan.max((0.005 * alive - HAIR).ceil())
}

/// The batch week by week, seven days each, from day 0 until the last birds are sold; the last week ends with them. While the
/// sale is not known, so many weeks as birds are usually kept; what is not known is left to the pencil.
///
/// - `past`: the last batch of the house, where a book has one
pub fn weeks(plan: &Plan, past: Option<&PastBatch>) -> Vec<Vec<DoorDay>> {
    let last = plan.outcome.last_day().unwrap_or(WEEKS_WITHOUT_SALE * DAYS - 1);
    let placement = plan.answers.day("batch.placement");
    let chicks = plan.outcome.on_day("batch.birds_alive", 0);
    let brooding_d = plan.answers.number("brooding.days_d").map_or(0, |days| days as i32);
    let before = |age: i32| {
        let alive = plan.outcome.on_day("batch.birds_alive", age)?;
        Some(Before::on(past?, age, alive, chicks?))
    };
    let day = |age: i32| DoorDay {
        age,
        date: placement.map(|day| day.plus_days(age)),
        expected: expected(plan, age),
        is_brooding: age < brooding_d,
        before: before(age).unwrap_or_default(),
        todo: todo(plan, age),
    };
    let week = |first: i32| (first..=last.min(first + DAYS - 1)).map(day).collect();
    (0..=last / DAYS).map(|number| week(DAYS * number)).collect()
}

fn expected(plan: &Plan, age: i32) -> Option<Expected> {
    let on = |series: &str| plan.outcome.on_day(series, age);
    let by =
        |amount: Option<f64>, key: &str| Some(amount? / plan.answers.number(key).filter(|each| *each > 0.0)?);
    let alive = on("batch.birds_alive")?;
    let (feed_kg, water_l) = (on("feed.by_day"), on("water.by_day"));
    Some(Expected {
        alive,
        feed_kg,
        feed_bags: by(feed_kg, "feed.bag_kg"),
        feed_tins: by(feed_kg, "feed.tin_kg"),
        water_l,
        water_cans: by(water_l, "water.can_l"),
        warmth_c: on("brooding.temperature_by_day"),
        light_h: on("light.hours_by_day"),
        call_at: call_at(on("batch.losses_by_day").unwrap_or(0.0), alive),
    })
}

fn todo(plan: &Plan, age: i32) -> Vec<Todo> {
    let mut list: Vec<Todo> = sale(plan, age).into_iter().collect();
    list.extend(jobs(plan, age, FIRST_OF_THE_DAY));
    list.extend(
        plan.widening.iter().filter(|step| step.from_day == age).map(|step| Todo::Guard(step.standing)),
    );
    list.extend(mixes(plan, age));
    let is_day = |figure: &str| plan.outcome.number(figure).is_some_and(|day| day as i32 == age);
    list.extend(is_day("space.large_from").then_some(Todo::LargeBesideSmall));
    list.extend(is_day("space.change_over").then_some(Todo::SmallOut));
    list.extend(weighing(plan, age));
    let deliveries = plan.deliveries.iter().filter(|one| one.day == age);
    list.extend(deliveries.map(|one| Todo::Delivery {
        phase: one.phase,
        bags: one.bags,
        size_kg: one.size_kg,
    }));
    list.extend(jobs(plan, age, LAST_OF_THE_DAY));
    list
}

/// On which days of a job its words stand.
#[derive(Clone, Copy, PartialEq)]
enum On {
    FirstDay,
    EveryDay,
}

/// Jobs of the countdown that must not be forgotten for want of a phone: what is done by daylight.
const FIRST_OF_THE_DAY: &[(&str, On)] = &[
    ("withdrawal-checked", On::FirstDay),
    ("medicine-stopped", On::FirstDay),
    ("curtains-in-heat", On::FirstDay),
];

/// Likewise what is done in the evening and by night.
const LAST_OF_THE_DAY: &[(&str, On)] = &[
    ("feed-off", On::EveryDay),
    ("feed-stays", On::EveryDay),
    ("feed-asked", On::EveryDay),
    ("dark-taught", On::EveryDay),
    ("heat-ends", On::FirstDay),
    ("night-rounds", On::EveryDay),
    ("dusk-and-dawn", On::FirstDay),
];

/// The task of a name on a day of age.
fn task<'a>(plan: &'a Plan, name: &str, age: i32, on: On) -> Option<&'a Task> {
    let falls = |task: &&Task| {
        let goes_on_d = task.until.map_or(0, |until| until.days_since(task.day));
        let last = if on == On::FirstDay { task.age_d } else { task.age_d + goes_on_d };
        task.name == name && (task.age_d..=last).contains(&age)
    };
    plan.tasks.iter().find(falls)
}

fn jobs(plan: &Plan, age: i32, names: &[(&str, On)]) -> Vec<Todo> {
    let jobs = names.iter().filter_map(|(name, on)| task(plan, name, age, *on));
    jobs.map(|task| Todo::Job(task.name)).collect()
}

fn sale(plan: &Plan, age: i32) -> Option<Todo> {
    task(plan, "sale", age, On::EveryDay)?;
    let birds = plan.outcome.on_day("sale.birds_by_day", age).map(f64::round);
    Some(Todo::Sell { birds, are_last: plan.outcome.last_day() == Some(age) })
}

/// On day 0 by the box, then as the countdown has it.
fn weighing(plan: &Plan, age: i32) -> Option<Todo> {
    if age == 0 {
        return Some(Todo::Boxes);
    }
    task(plan, "weighing", age, On::FirstDay)?;
    let birds = plan.outcome.on_day("batch.birds_alive", age).map(tasks::birds_to_weigh);
    Some(Todo::Weigh { birds, target_g: plan.outcome.on_day("growth.weight", age) })
}

/// Feeds that are begun on this day or were in the two days before: a quarter, half and three quarters of the new one.
fn mixes(plan: &Plan, age: i32) -> Vec<Todo> {
    let begun = |pair: &[Phase]| {
        let opens = plan.outcome.number(pair[0].last_day_figure())? as i32 + 1;
        let eaten = plan.outcome.number(&format!("feed.bags_{}", pair[1].name()))? > 0.0;
        let parts_of_four =
            u8::try_from(age - opens + 1).ok().filter(|parts| eaten && (1..=3).contains(parts))?;
        Some(Todo::Mix { phase: pair[1], parts_of_four })
    };
    Phase::ALL.windows(2).filter_map(begun).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_call_is_counted_in_birds() {
        // Half a percent of 1600 is 8; three times 4.2 is 12.6, rounded up 13, and one more.
        assert_eq!(call_at(0.5, 1600.0), 8.0);
        assert_eq!(call_at(4.2, 1600.0), 14.0);
        assert_eq!(call_at(0.0, 90.0), 1.0);
        assert_eq!(call_at(1.0, 0.0), 4.0);
    }
}
