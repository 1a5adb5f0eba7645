//! A night and a day of a house: where the curtain stands at which hour, which hours are hard on the birds, and what it would
//! change to shade the roof, wet it, move the air, feed at night, or keep fewer birds.

use model::air::stress;
use model::air::weather::Day as WeatherDay;
use model::air::{self, Flock, House};
use model::curtain::{self, Wanted};
use quantity::{Answers, Checked, Raw, Source, Value};

use super::{AirHour, Band, CannotRun, DAYS_BEFORE, Guess, Part, Read};
use crate::check;
use crate::diary::set;
use crate::families::air_day::{AGE, CLEAR, COLDEST, FAN, FEWER, MARK, NIGHT_FEED, ROOF, SKY, WARMEST, WIND};
use crate::families::{self, air_day};
use crate::outcome::Outcome;

/// The hour by the sun at which a night is begun: time to set the curtain for it (our judgement).
pub const BEGINS_H: u32 = 16;
/// Somebody is awake to move a curtain from one hour to another (our judgement).
const AWAKE: std::ops::RangeInclusive<u32> = 5..=21;
/// The most settings of a curtain in a day and a night, the one it begins with counted: one helper, many other jobs.
const MOST_SETTINGS: usize = 4;
/// What a curtain is set by where it has no marks: the width of a hand, cm (common practice).
const HAND_CM: f64 = 10.0;
/// A curtain nearer to all the way down than this goes all the way (our judgement).
const MUCH: f64 = 0.8;
/// A gap at the top stays, day and night (common practice): half a mark.
const GAP: f64 = 0.5;
/// Sunshine that limewash or shade lets a roof take up: 0.20 to 0.30 (from memory).
const SHADED: f64 = 0.25;
/// Air at the birds in front of a fan, m/s (common practice).
const FAN_M_PER_S: f64 = 1.0;
/// Birds that eat in the night give their most heat then and their least at the hottest hour, by so much of the mean: our
/// judgement.
const NIGHT_FEED_DIFFERS: f64 = 0.12;
const NIGHT_FEED_STILLEST_H: f64 = 14.0;
/// From this day of age on heat is known to take the appetite by the day's mean (from memory).
const EATS_LESS_FROM_D: i32 = 21;

/// A night and the day after it.
#[derive(Clone, Debug, PartialEq)]
pub struct AirDay {
    /// Day of age on which it begins.
    pub age_d: i32,
    /// What was asked of the weather.
    pub weather: WeatherDay,
    /// With the curtain moved every hour, as the house and its birds are.
    pub as_it_is: DayRun,
    /// The same with what was asked to be changed; `None` where nothing was.
    pub changed: Option<DayRun>,
    /// What each thing that helps against heat would do alone.
    pub helps: Vec<(Help, DayRun)>,
    /// Where to set the curtain, with what was asked to be changed: hour of the day and marks. Empty where nothing opens.
    pub settings: Vec<Setting>,
    /// The same by the hour of the day, in marks; 0 where nothing opens.
    pub marks: [f64; 24],
    /// The house by those settings; `None` where nothing opens.
    pub by_hand: Option<DayRun>,
    /// How far the curtain comes down in all, in marks.
    pub most_marks: f64,
    /// A mark, cm.
    pub mark_cm: f64,
    /// What it opens on each side, m2.
    pub mark_m2: f64,
}

/// Something that helps against heat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Help {
    /// Shade or limewash over the roof.
    Shade,
    /// Water kept running over it.
    WetRoof,
    /// Air moved at the birds.
    Fan,
    /// Feed in the night, none in the heat.
    NightFeed,
    /// A quarter fewer birds.
    QuarterFewer,
}

impl Help {
    /// All of them.
    pub const ALL: [Help; 5] = [Help::Shade, Help::WetRoof, Help::Fan, Help::NightFeed, Help::QuarterFewer];

    /// The stable name.
    pub fn name(self) -> &'static str {
        match self {
            Help::Shade => "shade",
            Help::WetRoof => "wet-roof",
            Help::Fan => "fan",
            Help::NightFeed => "night-feed",
            Help::QuarterFewer => "quarter-fewer",
        }
    }

    /// The field and the word that ask for it.
    fn answer(self) -> (&'static str, Value) {
        match self {
            Help::Shade => (ROOF, Value::Choice("shaded")),
            Help::WetRoof => (ROOF, Value::Choice("wet")),
            Help::Fan => (FAN, Value::Choice("yes")),
            Help::NightFeed => (NIGHT_FEED, Value::Choice("yes")),
            Help::QuarterFewer => (FEWER, Value::Number(25.0)),
        }
    }
}

/// A setting of the curtain that holds until the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// Hour of the day, 0 to 23.
    pub hour: u32,
    /// How far it is let down from the top on each side, in marks.
    pub marks: f64,
}

/// 24 hours of a house.
#[derive(Clone, Debug, PartialEq)]
pub struct DayRun {
    /// From [`BEGINS_H`] on.
    pub hours: Vec<AirHour>,
    /// The worst that a balance leaves over in an hour, as a share of its largest part.
    pub residual: f64,
}

impl DayRun {
    fn most(&self, of: impl Fn(&AirHour) -> f64) -> f64 {
        self.hours.iter().map(of).fold(f64::NEG_INFINITY, f64::max)
    }

    /// The opening of a side by the hour of the day, m2, at most what the house has: worked back from what flows through it.
    fn openings(&self, most_m2: f64) -> [f64; 24] {
        let mut openings = [0.0; 24];
        for hour in &self.hours {
            openings[hour.house.hour as usize % 24] = hour.house.opening_m2.min(most_m2);
        }
        openings
    }

    /// The warmest hour, °C.
    pub fn warmest_c(&self) -> f64 {
        self.most(|hour| hour.house.inside_c)
    }

    /// The coldest hour, °C.
    pub fn coldest_c(&self) -> f64 {
        -self.most(|hour| -hour.house.inside_c)
    }

    /// The worst of the index of heat, °C.
    pub fn heat_index_c(&self) -> f64 {
        self.most(|hour| hour.heat_index)
    }

    /// Hours that are at least so hard.
    pub fn hours_at_least(&self, heat: Band) -> f64 {
        self.hours.iter().filter(|hour| hour.heat >= heat).count() as f64
    }

    /// The most stale air in an hour, parts in a million.
    pub fn stale_ppm(&self) -> f64 {
        self.most(|hour| hour.house.co2_ppm)
    }

    /// Heat that heaters give, kWh.
    pub fn heat_kwh(&self) -> f64 {
        self.hours.iter().map(|hour| hour.house.heater_kw).sum()
    }

    /// What heat takes of the day's feed, low and high, percent; `None` for birds too young to tell.
    pub fn feed_left_percent(&self) -> Option<(f64, f64)> {
        let age_d = self.hours.first()?.house.day;
        let mean = self.hours.iter().map(|hour| hour.house.inside_c).sum::<f64>() / self.hours.len() as f64;
        let (low, high) = stress::feed_left(mean);
        (age_d >= EATS_LESS_FROM_D).then_some((100.0 * low, 100.0 * high))
    }
}

impl AirDay {
    /// Runs a plan, or the plan of a running batch, through the night and day that the answers ask for, or through its own
    /// coldest night and hottest afternoon on its last day.
    ///
    /// # Errors
    /// [`CannotRun`] with the first field that is missing or cannot be.
    pub fn of(answers: &Answers) -> Result<AirDay, CannotRun> {
        let plan = Read::of(answers)?;
        let number = |key: &'static str| answers.number(key);
        let age_d = number(AGE).map_or(plan.last_d, |age| age as i32).clamp(0, plan.last_d);
        let coldest_c = number(COLDEST).unwrap_or(plan.coldest_c);
        let weather = WeatherDay {
            coldest_c,
            warmest_c: number(WARMEST).unwrap_or(plan.hottest_c).max(coldest_c),
            wind_m_per_s: wind(answers.choice(WIND)),
            cloud: cloud(answers.choice(SKY)),
            ..plan.typical(plan.placement.plus_days(age_d))
        };
        let is_brooding = f64::from(age_d) < plan.brooding_d;
        let part = if is_brooding { Part::Heated } else { Part::WholeHouse };
        let house = plan.house(answers, part, Guess::AS_TOLD)?;
        let before = plan.follow(answers, Guess::AS_TOLD, age_d, None)?;
        // The litter as damp as birds have made it by then, through the plan's own days.
        let house = plan.with_litter_of(&house, &before, age_d, house);
        let flock = as_the_book_has_it(plan.flock(age_d), answers);
        let case = |house: &House, flock: &Flock, fan: bool, held: Option<[f64; 24]>| {
            plan.a_day(house, flock, age_d, &weather, Ways { fan, held })
        };
        let as_it_is = case(&house, &flock, false, None)?;
        let (new_house, new_flock, fan) = with_changes(answers, house, flock.clone());
        let changed = match is_changed(answers) {
            true => Some(case(&new_house, &new_flock, fan, None)?),
            false => None,
        };
        let helps = Help::ALL.into_iter().map(|help| {
            let mut alone = Answers::default();
            let (key, value) = help.answer();
            set(&mut alone, key, value);
            let (house, flock, fan) = with_changes(&alone, house, flock.clone());
            // The curtain as it would be without, so that one thing alone is changed.
            Ok((help, case(&house, &flock, fan, Some(as_it_is.openings(house.opening_m2)))?))
        });
        let helps = helps.collect::<Result<Vec<_>, CannotRun>>()?;
        let mark_cm = number(MARK).unwrap_or(HAND_CM);
        let mark_m2 = house.length_m * mark_cm / 100.0;
        let most_marks = house.opening_m2 / mark_m2;
        let set = settings(changed.as_ref().unwrap_or(&as_it_is), mark_m2, most_marks);
        let marks = by_hour_of_day(&set);
        let held = marks.map(|marks| (marks * mark_m2).min(house.opening_m2));
        let by_hand = match set.is_empty() {
            true => None,
            false => Some(case(&new_house, &new_flock, fan, Some(held))?),
        };
        let settings =
            set.iter().map(|one| Setting { hour: hour_of_day(one.from), marks: one.steps }).collect();
        Ok(AirDay {
            age_d,
            weather,
            as_it_is,
            changed,
            helps,
            settings,
            marks,
            by_hand,
            most_marks,
            mark_cm,
            mark_m2,
        })
    }

    /// As it is likely to be: by the settings, where there are any.
    pub fn likely(&self) -> &DayRun {
        self.by_hand.as_ref().or(self.changed.as_ref()).unwrap_or(&self.as_it_is)
    }
}

/// The birds as heavy against the plan as they were last weighed, and as many as are alive.
fn as_the_book_has_it(flock: Flock, answers: &Answers) -> Flock {
    let known = Outcome::of(answers, ["growing.against_plan", "growing.alive"]);
    let heavier = known.number("growing.against_plan").map_or(1.0, |percent| percent / 100.0);
    let birds = known.number("growing.alive").unwrap_or(flock.birds);
    Flock { birds, mass_kg: flock.mass_kg.iter().map(|kg| kg * heavier).collect(), ..flock }
}

/// Mean wind at the curtain, m/s; what nobody measured is said in words (our judgement).
fn wind(said: Option<&str>) -> f64 {
    match said {
        Some("still") => 0.5,
        Some("windy") => 3.0,
        _ => super::WIND_M_PER_S,
    }
}

/// Share of the sky in cloud (our judgement).
fn cloud(said: Option<&str>) -> f64 {
    match said {
        Some("cloudy") => 0.6,
        Some("overcast") => 0.95,
        _ => 0.0,
    }
}

fn is_changed(answers: &Answers) -> bool {
    let chosen = |key: &str, usual: &str| answers.choice(key).is_some_and(|said| said != usual);
    chosen(ROOF, CLEAR)
        || chosen(FAN, "no")
        || chosen(NIGHT_FEED, "no")
        || answers.number(FEWER).is_some_and(|fewer| fewer > 0.0)
}

fn with_changes(answers: &Answers, house: House, flock: Flock) -> (House, Flock, bool) {
    let house = match answers.choice(ROOF) {
        Some("shaded") => House { roof_absorptance: SHADED.min(house.roof_absorptance), ..house },
        Some("wet") => House { roof_is_wet: true, ..house },
        _ => house,
    };
    let left = 1.0 - answers.number(FEWER).unwrap_or(0.0) / 100.0;
    let flock = Flock { birds: flock.birds * left, ..flock };
    let flock = match answers.choice(NIGHT_FEED) {
        Some("yes") => Flock { activity: NIGHT_FEED_DIFFERS, stillest_h: NIGHT_FEED_STILLEST_H, ..flock },
        _ => flock,
    };
    (house, flock, answers.choice(FAN) == Some("yes"))
}

/// Where to set the curtain so that it comes near to what every hour asks.
fn settings(run: &DayRun, mark_m2: f64, most_marks: f64) -> Vec<curtain::Setting> {
    let wanted: Vec<Wanted> = run
        .hours
        .iter()
        .map(|hour| Wanted {
            steps: hour.house.opening_m2 / mark_m2,
            too_warm: matches!(hour.house.binding, air::Binding::Heat | air::Binding::Wind),
            can_move: AWAKE.contains(&hour.house.hour),
        })
        .collect();
    // Each about half as far again as the one before: finer no air can tell; and all the way down.
    let levels = [GAP, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0, 24.0, 32.0];
    let levels = levels.into_iter().take_while(|level| *level < MUCH * most_marks);
    let levels: Vec<f64> = levels.chain([most_marks]).collect();
    if most_marks < GAP {
        return Vec::new();
    }
    curtain::settings(&wanted, &levels, MOST_SETTINGS)
}

/// The hour of the day, so many after the first.
fn hour_of_day(after: usize) -> u32 {
    (BEGINS_H + after as u32) % 24
}

/// Marks by the hour of the day, from midnight on.
fn by_hour_of_day(set: &[curtain::Setting]) -> [f64; 24] {
    let mut marks = [0.0; 24];
    for (after, steps) in curtain::hour_by_hour(set, curtain::HOURS).into_iter().enumerate() {
        marks[hour_of_day(after) as usize] = steps;
    }
    marks
}

/// How a day is run.
struct Ways {
    fan: bool,
    held: Option<[f64; 24]>,
}

impl Read {
    /// A night and a day from [`BEGINS_H`] on, after some alike that warm floor and litter.
    fn a_day(
        &self,
        house: &House,
        flock: &Flock,
        age_d: i32,
        weather: &WeatherDay,
        ways: Ways,
    ) -> Result<DayRun, CannotRun> {
        let heater_kw = if f64::from(age_d) < self.brooding_d { self.heaters_kw } else { 0.0 };
        let mut management = self.management(house, age_d - DAYS_BEFORE, heater_kw);
        management.first_hour = BEGINS_H;
        management.held_m2 = ways.held;
        // What chicks want they have wanted for long: days before stand for the same age.
        let target_c = self.target_c.get(usize::try_from(age_d).unwrap_or_default()).or(self.target_c.last());
        management.target_c = target_c.copied().into_iter().collect();
        let mut day = weather.hours();
        day.rotate_left(BEGINS_H as usize);
        let fan_m_per_s = if ways.fan { FAN_M_PER_S } else { 0.0 };
        let weather = day.repeat(DAYS_BEFORE as usize + 1);
        let mut followed = self.balance(house, flock, &management, weather)?;
        followed.hours.drain(..24 * DAYS_BEFORE as usize);
        Ok(DayRun { hours: self.judged(followed.hours, fan_m_per_s), residual: followed.residual })
    }
}

/// What was asked of a night and a day, and the answer.
pub struct Answered {
    /// What was typed, with the plan's own where nothing was.
    pub raws: Vec<Raw>,
    /// The same checked.
    pub checked: Checked,
    /// The plan's answers with these.
    pub answers: Answers,
    /// The figures; none where something typed cannot be.
    pub outcome: Outcome,
    /// Why the balance cannot be run; `None` where it was, and where something typed cannot be.
    pub cannot: Option<CannotRun>,
}

/// Answers what is asked of a night and a day of a plan, or of a running batch by the answers of its book.
///
/// - `age_d`: the day where none is typed; the last of the plan where it is not given
pub fn answer(plan: &Answers, age_d: Option<i32>, typed: Vec<Raw>) -> Answered {
    let raws = air_day::with_the_plans(plan, age_d, typed);
    let asked = air_day::form();
    let mut checked = quantity::field::check(&asked, &raws, Source::Hand, false);
    checked.problems.extend(check::together(&checked.answers, &asked));
    let mut answers = plan.clone();
    for asked in &asked {
        if let Some(given) = checked.answers.get(asked.field.key) {
            answers.set(asked.field, given.clone());
        }
    }
    // A plan that tells no weather goes by what is typed.
    for (plans, typed) in [("weather.coldest_night_c", COLDEST), ("weather.hottest_day_c", WARMEST)] {
        if let Some(celsius) = answers.number(typed).filter(|_| answers.number(plans).is_none()) {
            set(&mut answers, plans, Value::Number(celsius));
        }
    }
    let (mut outcome, mut cannot) = (Outcome::default(), None);
    if checked.problems.is_empty() {
        let simulated = families::air_day::SIMULATION.figures.iter().map(|spec| spec.id);
        outcome = Outcome::of(&answers, simulated);
        if outcome.drawn().air_day().is_none() {
            cannot = AirDay::of(&answers).err();
        }
    }
    Answered { raws, checked, answers, outcome, cannot }
}
