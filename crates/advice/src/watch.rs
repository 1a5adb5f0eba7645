//! The watch: every signal of a running batch against what was expected of it, each steady, to be looked at or to be acted on,
//! and beside them the fixed rules of authorities and of the trade.
//!
//! A day that was not written adds nothing to any signal and breaks the fixed rules of several days: it is never taken for a
//! day without deaths, water or feed.

use std::collections::BTreeMap;

use model::counts::Law;
use model::cusum::{POINTS_PER_LOG_UNIT, Score};
pub use model::deaths::Level;
use model::deaths::{self, USUAL};
pub use model::triggers::Call;
use model::triggers::{self, BatchDay, Trigger};
use model::watching;
use quantity::{Answers, CivilDay};

use crate::diary::{Diary, Noted, set_days};
use crate::families::watch::{self as family, SIGNALS, Signal};
use crate::families::{course, growing};
use crate::outcome::Outcome;
use crate::walk::Walk;

/// Puts what only the watch goes by among a diary's answers.
pub(crate) fn write(diary: &mut Diary) {
    let dampest = |note: &Noted| (note.kind == "house-air").then(|| note.number("dampest_percent"))?;
    let dampest = diary.by_day(dampest, f64::max);
    set_days(&mut diary.answers, family::DAMPEST, dampest);
    let litter = diary.by_day(litter_grade, f64::max);
    set_days(&mut diary.answers, family::LITTER, litter);
    write_spread(diary);
    write_expected_before(diary);
}

/// Beside each weighing what the plan expected on the day of the one before; before the first, the chicks as they came.
fn write_expected_before(diary: &mut Diary) {
    let days = |key: &str| diary.answers.by_day(key);
    let (Some(before), Some(expected)) = (days(course::WEIGHED_BEFORE), days(growing::EXPECTED_WEIGHT))
    else {
        return;
    };
    let arrival = days(course::WEIGHT_BEFORE).and_then(|weights| weights.values().next());
    let on = |day: i32| if day == 0 { arrival.or_else(|| expected.get(&0)) } else { expected.get(&day) };
    let known = before.iter().filter_map(|(age, day)| Some((*age, *on(*day as i32)?)));
    let known = known.collect();
    set_days(&mut diary.answers, family::EXPECTED_BEFORE, known);
}

/// A handful of litter as it was felt, at a spot or on the walk: 0 falls apart or is dust, 1 holds together, 2 cakes.
fn litter_grade(note: &Noted) -> Option<f64> {
    grade_of(matches!(note.kind, "litter-check" | "look").then(|| note.text("handful"))??)
}

/// The grade of a handful by its word.
pub(crate) fn grade_of(handful: &str) -> Option<f64> {
    match handful {
        "falls-apart" | "dust" => Some(0.0),
        "holds-together" => Some(1.0),
        "cakes" => Some(2.0),
        _ => None,
    }
}

/// Fewer birds tell nothing of how uneven a flock is.
const SPREAD_OF_BIRDS: usize = 10;

/// The spread of each day's weights, of days on which enough were weighed bird by bird.
fn write_spread(diary: &mut Diary) {
    let mut weights: BTreeMap<i32, Vec<f64>> = BTreeMap::new();
    for note in diary.of_kind("weighing") {
        if let Some(age) = diary.age(note.day) {
            weights.entry(age).or_default().extend(note.numbers("weights_g"));
        }
    }
    weights.retain(|_, weights| weights.len() >= SPREAD_OF_BIRDS);
    let percent = |weights: &Vec<f64>| Some(100.0 * model::weighing::variation(weights)?);
    let spread = weights.iter().filter_map(|(age, weights)| Some((*age, percent(weights)?))).collect();
    let birds = weights.iter().map(|(age, weights)| (*age, weights.len() as f64)).collect();
    set_days(&mut diary.answers, family::SPREAD, spread);
    set_days(&mut diary.answers, family::SPREAD_BIRDS, birds);
}

/// The watch over a batch, as of the day of its walk.
#[derive(Clone, Debug, PartialEq)]
pub struct Watch {
    /// The day of age.
    pub age: i32,
    /// Every signal, whether anything is known of it or not.
    pub signals: Vec<Watched>,
    /// Every fixed rule.
    pub rules: Vec<Ruled>,
}

/// A signal as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Watched {
    /// Its stable name.
    pub name: &'static str,
    /// How it stands; `None` while nothing was written, or nothing lately.
    pub state: Option<Level>,
    /// The figure by day that is seen.
    pub seen: &'static str,
    /// The figure by day of what is expected by plan, where there is one.
    pub expected: Option<&'static str>,
    /// The alarm's memory from which on to look.
    pub look: f64,
    /// The alarm's memory from which on to act.
    pub act: f64,
    /// Every day of which something is known.
    pub days: Vec<WatchedDay>,
}

/// The names of all signals, in the order in which they are shown.
pub fn names() -> impl Iterator<Item = &'static str> {
    ["deaths", "losses"].into_iter().chain(SIGNALS.iter().map(|signal| signal.watched.name))
}

/// A day of a signal, in the unit of what is seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WatchedDay {
    /// Day of age.
    pub day: i32,
    /// What was seen.
    pub seen: f64,
    /// What was likely.
    pub likely: f64,
    /// Nine days of ten lie between these.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// The alarm's memory: what does not fit, added up.
    pub memory: f64,
    /// How the day stands.
    pub level: Level,
}

/// A fixed rule as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Ruled {
    /// Its stable name.
    pub name: &'static str,
    /// The bibliography key.
    pub source: &'static str,
    /// What it asks.
    pub call: Call,
    /// Whether it holds now: on the last day that was written, today or yesterday.
    pub holds: bool,
    /// The days on which it held.
    pub days: Vec<i32>,
}

/// Something that a grower was told on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Told {
    /// Day of age.
    pub day: i32,
    /// The signal or the rule.
    pub name: &'static str,
    /// What it asked.
    pub level: Level,
}

/// A signal of every day that was not written for longer is not known any more.
const DAILY_KNOWN_D: i32 = 2;
/// A signal of every weighing likewise.
const WEIGHED_KNOWN_D: i32 = 9;

impl Watch {
    /// The watch over the batch of a walk; `None` until chicks came.
    pub fn of(walk: &Walk) -> Option<Watch> {
        let age = walk.diary.counted_age().filter(|age| *age >= 0 && walk.diary.is_placed)?;
        let (answers, outcome) = (&walk.plan.answers, &walk.plan.outcome);
        let mut signals: Vec<Watched> = lost(answers, outcome, age);
        signals.extend(SIGNALS.iter().map(|signal| surprised(signal, answers, outcome)));
        for signal in &mut signals {
            signal.state = signal.state_on(age);
        }
        Some(Watch { age, signals, rules: rules(&walk.diary, outcome, age) })
    }

    /// The highest of all states and of the rules that hold; `None` where nothing was written lately.
    pub fn state(&self) -> Option<Level> {
        let states = self.signals.iter().filter_map(|signal| signal.state);
        let rules = self.rules.iter().filter(|rule| rule.holds).filter_map(|rule| asked(rule.call));
        states.chain(rules).max()
    }

    /// A signal.
    pub fn signal(&self, name: &str) -> Option<&Watched> {
        self.signals.iter().find(|signal| signal.name == name)
    }

    /// All that was to be looked at or acted on since the chicks came, each on the first of the days it lasted.
    pub fn told(&self) -> Vec<Told> {
        let signals = self.signals.iter().flat_map(Watched::told);
        let mut all: Vec<Told> = signals.chain(self.rules.iter().flat_map(Ruled::told)).collect();
        all.sort_unstable();
        all
    }
}

impl Watched {
    fn state_on(&self, age: i32) -> Option<Level> {
        let last = self.days.last()?;
        let is_weighed =
            SIGNALS.iter().any(|signal| signal.watched.name == self.name && signal.watched.every_d > 1);
        let known = if is_weighed { WEIGHED_KNOWN_D } else { DAILY_KNOWN_D };
        (age - last.day <= known).then_some(last.level)
    }

    /// Whenever its state rose.
    fn told(&self) -> Vec<Told> {
        let before = std::iter::once(Level::Steady).chain(self.days.iter().map(|day| day.level));
        let rose = self.days.iter().zip(before).filter(|(day, before)| day.level > *before);
        rose.map(|(day, _)| Told { day: day.day, name: self.name, level: day.level }).collect()
    }
}

impl Ruled {
    /// The first day of every run of days on which it held.
    fn told(&self) -> Vec<Told> {
        let Some(level) = asked(self.call) else { return Vec::new() };
        let first = self.days.iter().filter(|day| !self.days.contains(&(**day - 1)));
        first.map(|day| Told { day: *day, name: self.name, level }).collect()
    }
}

/// What a rule asks, where it asks anything.
pub fn asked(call: Call) -> Option<Level> {
    match call {
        Call::Note => None,
        Call::Look => Some(Level::Look),
        Call::Act => Some(Level::Act),
    }
}

fn surprised(signal: &Signal, answers: &Answers, outcome: &Outcome) -> Watched {
    let day = |one: family::SignalDay| WatchedDay {
        day: one.day,
        seen: one.seen,
        likely: one.likely,
        low: one.low,
        high: one.high,
        memory: one.step.sum,
        level: one.step.level,
    };
    Watched {
        name: signal.watched.name,
        state: None,
        seen: signal.seen,
        expected: signal.expected,
        look: signal.watched.tuning.look,
        act: signal.watched.tuning.act,
        days: signal.days(answers, outcome).into_iter().map(day).collect(),
    }
}

/// A day with what is expected of its deaths.
struct LostDay {
    day: i32,
    expected: f64,
    lost: Option<u32>,
}

/// Deaths of the day, and all losses up to it.
fn lost(answers: &Answers, outcome: &Outcome, age: i32) -> Vec<Watched> {
    let day = |day: i32| {
        let expected =
            outcome.on_day("watch.deaths_expected_by_day", day).filter(|expected| *expected > 0.0)?;
        let lost = outcome.on_day("growing.lost_by_day", day).map(|lost| lost as u32);
        Some(LostDay { day, expected, lost })
    };
    let days: Vec<LostDay> = (0..=age).filter_map(day).collect();
    vec![deaths_of_days(answers, &days), losses(answers, &days)]
}

/// The deaths that the adopted plan expected on every day, for as many chicks as came: thresholds hang on the whole batch and
/// so stay where they are from day to day.
fn planned_deaths(answers: &Answers) -> Option<Vec<f64>> {
    let planned = answers.by_day(growing::EXPECTED_LOST)?;
    let first =
        answers.by_day(growing::EXPECTED_ALIVE)?.values().next().copied().filter(|first| *first > 0.0)?;
    let many = answers.number(growing::PLACED)? / first;
    Some(planned.values().map(|deaths| deaths * many).filter(|deaths| *deaths > 0.0).collect())
}

fn deaths_of_days(answers: &Answers, days: &[LostDay]) -> Watched {
    let thresholds = planned_deaths(answers).and_then(|planned| deaths::Watch::over(&planned, USUAL));
    let scores = days.iter().map(|day| Score::likelihood_ratio(day.expected, USUAL.tuned_to, USUAL.size));
    let watch = thresholds.zip(scores.collect()).map(|(over, scores)| deaths::Watch { scores, ..over });
    let points = |points: u32| f64::from(points) / POINTS_PER_LOG_UNIT;
    let found: Vec<Option<u32>> = days.iter().map(|day| day.lost).collect();
    let sums = watch.as_ref().map_or_else(Vec::new, |watch| watch.sums(&found));
    let written = days.iter().zip(sums).filter_map(|(day, sum)| {
        let law = Law::of(day.expected, USUAL.size);
        let end = |share: f64| law.quantile(share).map(|count| count as f64);
        Some(WatchedDay {
            day: day.day,
            seen: f64::from(day.lost?),
            likely: day.expected,
            low: end(0.05)?,
            high: end(0.95)?,
            memory: points(sum),
            level: watch.as_ref()?.level(sum),
        })
    });
    Watched {
        name: "deaths",
        state: None,
        seen: "growing.lost_by_day",
        expected: Some("watch.deaths_expected_by_day"),
        look: watch.as_ref().map_or(0.0, |watch| points(watch.look)),
        act: watch.as_ref().map_or(0.0, |watch| points(watch.act)),
        days: written.collect(),
    }
}

/// All losses, in percent of the live chicks placed, on the days that were written.
fn losses(answers: &Answers, days: &[LostDay]) -> Watched {
    let counted: Vec<(Option<u32>, f64)> = days.iter().map(|day| (day.lost, day.expected)).collect();
    let placed = answers.number(growing::PLACED).filter(|placed| *placed > 0.0);
    let percent = |birds: f64| placed.map(|placed| 100.0 * birds / placed);
    let steps = watching::losses(&counted, USUAL.size);
    let written = days.iter().zip(steps).filter(|(day, _)| day.lost.is_some()).filter_map(|(day, step)| {
        let deviation = step.deviation;
        Some(WatchedDay {
            day: day.day,
            seen: percent(step.lost)?,
            likely: percent(step.expected)?,
            low: percent((step.expected - 1.645 * deviation).max(0.0))?,
            high: percent(step.expected + 1.645 * deviation)?,
            memory: step.surprise.max(0.0),
            level: step.level,
        })
    });
    Watched {
        name: "losses",
        state: None,
        seen: "growing.losses_by_day",
        expected: Some("expected.losses_by_day"),
        look: watching::LOSSES_LOOK,
        act: watching::LOSSES_ACT,
        days: written.collect(),
    }
}

/// Every fixed rule with the days on which it held.
fn rules(diary: &Diary, outcome: &Outcome, age: i32) -> Vec<Ruled> {
    let days: Vec<BatchDay> = (0..=age).map_while(|age| batch_day(diary, outcome, age)).collect();
    let is_written = |day: &BatchDay| day.dead.is_some() || day.water_l.is_some() || day.feed_kg.is_some();
    let last = days.iter().rposition(is_written).map(|at| at as i32).filter(|last| age - last <= 1);
    let held = |trigger: &Trigger| {
        let holds = |until: &usize| (trigger.holds)(&days[..=*until]);
        (0..days.len()).filter(holds).map(|at| at as i32).collect::<Vec<i32>>()
    };
    let ruled = |trigger: &Trigger| {
        let days = held(trigger);
        let holds = last.is_some_and(|last| days.contains(&last));
        Ruled { name: trigger.name, source: trigger.source, call: trigger.call, holds, days }
    };
    triggers::TRIGGERS.iter().map(ruled).collect()
}

fn batch_day(diary: &Diary, outcome: &Outcome, age: i32) -> Option<BatchDay> {
    let day: CivilDay = diary.placement?.plus_days(age);
    let told = |key: &str| {
        let numbers = diary.on_day("deaths", day).filter_map(|note| note.number(key));
        numbers.map(|number| number as u32).reduce(|sum, more| sum + more)
    };
    let on = |id: &str| outcome.on_day(id, age);
    Some(BatchDay {
        age_d: u32::try_from(age).ok()?,
        birds: on("growing.alive_at_dawn")? as u32,
        dead: told("dead"),
        sudden: told("sudden"),
        normal_dead: on("watch.deaths_expected_by_day"),
        water_l: on("growing.water_by_day"),
        feed_kg: on("growing.feed_by_day"),
        hottest_c: on("growing.warmest_by_day"),
    })
}
