//! The air of a planned batch by the hour: a house and its birds read out of the answers, run through hours of weather.
//!
//! While chicks are brooded the heated part is run, from then on the whole house. Without weather by the hour, every day is one
//! that has both the coldest night and the hottest afternoon of the plan: what heaters and curtains must be able to do.

pub mod day;
pub mod fitted;
pub mod many;
pub mod months;

use std::thread;

pub use model::air::HeatFlows;
use model::air::ensemble::Perturbation;
use model::air::litter_water::Intake;
pub use model::air::litter_water::{DUSTY as DUSTY_LITTER, WET as WET_LITTER};
use model::air::stress;
pub use model::air::stress::Band;
use model::air::weather::Day as WeatherDay;
use model::air::{self, AirFault, BroodingZone, Flock, Fuel, Hour, House, HouseHour, Management, preheat};
use model::{moist_air, water};
use quantity::{Answers, CivilDay, Value};

use crate::diary::set;
use crate::families;
use crate::families::shell::is_covered;
use crate::outcome::Outcome;

/// An hour of a planned batch.
#[derive(Clone, Debug, PartialEq)]
pub struct AirHour {
    /// The weather.
    pub outside: Hour,
    /// What the balance gives.
    pub house: HouseHour,
    /// Whether chicks are brooded.
    pub is_brooding: bool,
    /// The index of heat, °C.
    pub heat_index: f64,
    /// How hard that is on birds of this age.
    pub heat: Band,
}

/// The air of a planned batch.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedAir {
    /// Every hour from the chick day to sale.
    pub hours: Vec<AirHour>,
    /// Hours to warm the empty house before the chicks come; `None` where the heaters never do, or where none are told.
    pub preheat_h: Option<usize>,
    /// What it takes to hold the target, with enough of them.
    pub needed: HeatNeeded,
    /// What the heaters give at most, kW.
    pub heaters_kw: f64,
    /// Useful heat of a kilogram of fuel, MJ; `None` for a wire or where no fuel is told.
    pub useful_mj_per_kg: Option<f64>,
    /// The worst that heat, water and carbon dioxide leave over in an hour, as a share of the largest part of each.
    pub residual: f64,
    /// The highest figure for the carbon monoxide of the fuel over the middle one, with which the hours are followed.
    gas_over_middle: f64,
}

/// What the hours of a planned batch come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InAll {
    /// Heat that heaters give, kWh.
    pub heat_kwh: f64,
    /// Hours that are an alert or worse for the birds of their day.
    pub alert_hours: f64,
    /// Those of them that are dangerous or worse.
    pub danger_hours: f64,
}

impl InAll {
    fn of(hours: &[AirHour]) -> InAll {
        let at_least = |heat: Band| hours.iter().filter(|hour| hour.heat >= heat).count() as f64;
        InAll {
            heat_kwh: hours.iter().filter(|hour| hour.is_brooding).map(|hour| hour.house.heater_kw).sum(),
            alert_hours: at_least(Band::Alert),
            danger_hours: at_least(Band::Danger),
        }
    }
}

/// What heaters must give to hold the target through the brooding days, with enough of them.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatNeeded {
    /// The hours of those days.
    hours: Vec<HouseHour>,
    /// The worst that a balance leaves over in an hour, as a share of its largest part.
    pub residual: f64,
}

/// What is heated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    /// What the plan says: covered rings, one end behind a partition, or all of it.
    Heated,
    /// All of the house, whatever the plan says.
    WholeHouse,
}

/// What the brooding of a plan takes.
#[derive(Clone, Debug, PartialEq)]
pub struct BroodingHeat {
    /// For the part that is heated.
    pub part: HeatNeeded,
    /// For the whole house, to compare.
    pub whole: HeatNeeded,
    /// The coldest that chicks have it on their first day by the heaters that are there, °C; `None` where none are told.
    pub coldest_c: Option<f64>,
    /// Hours to warm the empty house before the chicks come; `None` where the heaters never do, or where none are told.
    pub preheat_h: Option<usize>,
}

impl BroodingHeat {
    /// For the house as told, a tight and a leaky one, through the plan's own days.
    ///
    /// # Errors
    /// [`CannotRun`] with the first field that is missing or cannot be.
    pub fn of(answers: &Answers) -> Result<[BroodingHeat; 3], CannotRun> {
        let plan = Read::of(answers)?;
        let heat = |guess| plan.brooding_heat(answers, guess);
        let (told, [tight, leaky]) = with_ends(Guess::ENDS, heat, || heat(Guess::AS_TOLD));
        Ok([told?, tight?, leaky?])
    }
}

impl HeatNeeded {
    /// The hour that takes the most.
    pub fn hardest(&self) -> Option<&HouseHour> {
        self.hours.iter().max_by(|one, other| one.heater_kw.total_cmp(&other.heater_kw))
    }

    /// The most in an hour, kW.
    pub fn peak_kw(&self) -> f64 {
        self.hardest().map_or(0.0, |hour| hour.heater_kw)
    }

    /// Fresh air of that hour, m3/h.
    pub fn fresh_air_at_peak_m3_per_h(&self) -> f64 {
        self.hardest().map_or(0.0, |hour| hour.ventilation_m3_h)
    }

    /// The most in an hour of each day of age from 0, kW.
    pub fn peaks_kw(&self) -> Vec<f64> {
        let days = self.hours.chunk_by(|one, other| one.day == other.day);
        days.map(|day| day.iter().map(|hour| hour.heater_kw).fold(0.0, f64::max)).collect()
    }

    /// On a day of age, kWh.
    pub fn of_day_kwh(&self, age_d: i32) -> f64 {
        self.hours.iter().filter(|hour| hour.day == age_d).map(|hour| hour.heater_kw).sum()
    }

    /// On all brooding days, kWh.
    pub fn in_all_kwh(&self) -> f64 {
        self.hours.iter().map(|hour| hour.heater_kw).sum()
    }
}

/// By how much what is not known of a house may lie off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Guess {
    /// Against what the tables say that walls and roof let through.
    pub walls: f64,
    /// Against the leaks told or assumed.
    pub leaks: f64,
    /// Against what the plan says that birds drink.
    pub water: f64,
}

impl Guess {
    /// As told.
    pub const AS_TOLD: Guess = Guess { walls: 1.0, leaks: 1.0, water: 1.0 };
    /// A tight house and a leaky one: our judgement.
    pub const ENDS: [Guess; 2] =
        [Guess { walls: 0.8, leaks: 0.5, water: 1.0 }, Guess { walls: 1.2, leaks: 2.0, water: 1.0 }];

    /// As little and as much as sources say that birds drink in such warmth.
    pub fn of_thirst(answers: &Answers) -> Option<[Guess; 2]> {
        let mean_c = answers.number("weather.mean_c")?;
        let told = water::heat_factor(mean_c);
        let ends = [water::heat_factor_low(mean_c), water::heat_factor_high(mean_c)];
        Some(ends.map(|end| Guess { water: end / told, ..Guess::AS_TOLD }))
    }
}

/// Weather by the hour: all hours of a civil day, where there are any; `None` to go by the plan's own days.
pub type Outside<'a> = Option<&'a dyn Fn(CivilDay) -> Option<[Hour; 24]>>;

/// Why the air of a plan cannot be run.
#[derive(Clone, Debug, PartialEq)]
pub enum CannotRun {
    /// A field that is not told, or a figure that cannot be worked out.
    NotTold(&'static str),
    /// Something that cannot be.
    Fault(AirFault),
}

impl From<AirFault> for CannotRun {
    fn from(fault: AirFault) -> CannotRun {
        CannotRun::Fault(fault)
    }
}

/// A heater that is never the limit, kW.
const MORE_THAN_ANY_KW: f64 = 1e4;
/// How near to the target litter must be when chicks come, K: 28 °C and more (common practice).
const LITTER_NEAR_K: f64 = 3.0;
/// Curtains are opened from so much above target, K: our judgement.
const OPEN_ABOVE_K: f64 = 1.5;
/// Dampest air wanted: Directive 2007/43/EC, Annex II, for cold weather.
pub const HUMIDITY_MOST: f64 = 0.7;
/// Most carbon dioxide, parts in a million: the same.
pub const CO2_MOST_PPM: f64 = 3000.0;
/// Over the limit by this factor, it is said: the curtain is set by the hour, and not to the last part.
const STALE: f64 = 1.1;
/// Modern birds give off more than those of the tables: 1.0 to 1.25 (from memory).
const MODERN_BIRDS: f64 = 1.1;
/// Of what they warm the house with, the share that goes down into the litter: half of the radiant 0.6 (from memory).
const TO_LITTER: f64 = 0.3;
/// How much the hours of the day differ under near-continuous light, and the stillest of them: from memory.
const ACTIVITY: f64 = 0.08;
const STILLEST_H: f64 = 2.0;
/// Wind at the opening where nobody measured, m/s: our judgement.
pub(crate) const WIND_M_PER_S: f64 = 1.5;
/// Share of a slanting wind that enters: 0.25 to 0.6 (from memory).
const WIND_THROUGH: f64 = 0.4;
/// Weathered sheet, tile and thatch alike: from memory.
const ROOF_ABSORBS: f64 = 0.7;
const ROOF_EMITS: f64 = 0.9;
/// Litter and the upper slab, J/m2K, and how they hand heat to the air and the ground, W/m2K: from usual densities, from memory.
const FLOOR_J_PER_M2K: f64 = 120_000.0;
const FLOOR_W_PER_M2K: f64 = 6.0;
const GROUND_W_PER_M2K: f64 = 0.4;
/// Fresh litter: its depth where nobody told it, m, its weight, kg/m3, and how damp it is, a share. From memory.
const LITTER_DEEP_M: f64 = 0.07;
const LITTER_KG_PER_M3: f64 = 115.0;
const LITTER_DAMP: f64 = 0.15;
/// Air so warm cools no bird, however it moves, °C (common practice).
const AS_WARM_AS_A_BIRD_C: f64 = 38.0;
/// Days that are run before those that are asked for, so that floor and litter are as they would be.
const DAYS_BEFORE: i32 = 2;

/// What of the plan's figures a house is made of.
const OF_A_HOUSE: [&str; 12] = [
    "brooding.ua_walls",
    "brooding.ua_curtain",
    "brooding.ua_ends",
    "brooding.ua_floor",
    "brooding.roof_area",
    "brooding.roof_with_ceiling",
    "brooding.air_volume",
    "brooding.heated_length",
    "brooding.fuel_useful",
    "brooding.ua_cover",
    "brooding.ua_guard",
    "brooding.air_change_loss",
];

impl PlannedAir {
    /// Runs a plan through the weather given for the hours of its days, or through its own coldest and hottest.
    ///
    /// # Errors
    /// [`CannotRun`] with the first field that is missing or cannot be.
    pub fn of(answers: &Answers, guess: Guess, weather: Outside) -> Result<PlannedAir, CannotRun> {
        let plan = Read::drinking(answers, guess)?;
        let needed = plan.needed(&plan.house(answers, Part::Heated, guess)?, weather)?;
        plan.air(answers, guess, weather, needed)
    }

    /// The house as told through the plan's own days, with what was worked out already of what heaters must give.
    ///
    /// # Errors
    /// [`CannotRun`] with the first field that is missing or cannot be.
    pub(crate) fn as_told(answers: &Answers, needed: HeatNeeded) -> Result<PlannedAir, CannotRun> {
        Read::of(answers)?.air(answers, Guess::AS_TOLD, None, needed)
    }

    /// Moisture of the litter of a house and its birds at the end of each day of age, share on a wet basis, through the plan's
    /// own days.
    ///
    /// # Errors
    /// [`CannotRun`] with the first field that is missing or cannot be.
    pub fn litter(answers: &Answers, guess: Guess) -> Result<Vec<(i32, f64)>, CannotRun> {
        let plan = Read::drinking(answers, guess)?;
        let followed = plan.follow(answers, guess, plan.last_d + 1, None)?;
        Ok(litter_by_day(followed.hours.iter().map(|(house, _)| house)))
    }

    /// The days that a plan is run through: from those in which the house is warmed to the last.
    ///
    /// # Errors
    /// [`CannotRun`] with the first field that is missing.
    pub fn days(answers: &Answers) -> Result<(CivilDay, CivilDay), CannotRun> {
        let plan = Read::of(answers)?;
        Ok((plan.placement.plus_days(-DAYS_BEFORE), plan.placement.plus_days(plan.last_d)))
    }

    /// What the heaters lack of that, kW.
    pub fn heat_short_kw(&self) -> f64 {
        (self.needed.peak_kw() - self.heaters_kw).max(0.0)
    }

    /// What its hours come to.
    pub fn in_all(&self) -> InAll {
        InAll::of(&self.hours)
    }

    /// The same of a house and weather of which nothing else is asked.
    pub(crate) fn in_all_of(answers: &Answers, guess: Guess, weather: Outside) -> Result<InAll, CannotRun> {
        let plan = Read::drinking(answers, guess)?;
        let followed = plan.follow(answers, guess, plan.last_d + 1, weather)?;
        Ok(InAll::of(&plan.judged(followed.hours, 0.0)))
    }

    /// Fuel for so much heat, kg.
    pub fn fuel_kg(&self, heat_kwh: f64) -> Option<f64> {
        Some(model::heat::fuel(heat_kwh, self.useful_mj_per_kg?))
    }

    /// Hours of a day of age that are at least so hot for its birds.
    pub fn hours_at_least(&self, age_d: i32, heat: Band) -> f64 {
        self.hours.iter().filter(|hour| hour.house.day == age_d && hour.heat >= heat).count() as f64
    }

    /// The most carbon dioxide in an hour, parts in a million, where it is more than may be: too little air comes in for birds
    /// and fire, however wide the house is opened.
    pub fn stale_ppm(&self) -> Option<f64> {
        let most = self.hours.iter().map(|hour| hour.house.co2_ppm).fold(0.0, f64::max);
        (most > STALE * CO2_MOST_PPM).then_some(most)
    }

    /// The most carbon monoxide that the fire would even out at, by the highest figure of its fuel, parts in a million; `None`
    /// without a fire inside.
    pub fn carbon_monoxide_ppm(&self) -> Option<f64> {
        let most = self.hours.iter().map(|hour| hour.house.carbon_monoxide_ppm).fold(0.0, f64::max);
        (most > 0.0).then_some(most * self.gas_over_middle)
    }

    /// Moisture of the litter at the end of each day of age, share on a wet basis.
    pub fn litter_by_day(&self) -> Vec<(i32, f64)> {
        litter_by_day(self.hours.iter().map(|hour| &hour.house))
    }

    /// The first day of age at whose end the litter is so damp.
    pub fn litter_at_least(&self, moisture: f64) -> Option<i32> {
        self.litter_by_day().into_iter().find(|(_, share)| *share >= moisture).map(|(day, _)| day)
    }

    /// The last day of age that was run.
    pub fn last_day(&self) -> Option<i32> {
        Some(self.hours.last()?.house.day)
    }
}

fn litter_by_day<'a>(hours: impl Iterator<Item = &'a HouseHour>) -> Vec<(i32, f64)> {
    hours.filter(|hour| hour.hour == 23).map(|hour| (hour.day, hour.litter_moisture)).collect()
}

/// A house as told, with those at the ends of what it may be: each of these is followed on a thread of its own.
pub(crate) fn with_ends<A, B: Send>(
    ends: [Guess; 2],
    of_end: impl Fn(Guess) -> B + Sync,
    as_told: impl FnOnce() -> A,
) -> (A, [B; 2]) {
    thread::scope(|scope| {
        let of_end = &of_end;
        let running = ends.map(|guess| scope.spawn(move || of_end(guess)));
        let told = as_told();
        (told, running.map(|one| one.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))))
    })
}

/// Hours of a house and the weather they had, not yet judged by what they are to the birds.
struct Followed {
    hours: Vec<(HouseHour, Hour)>,
    /// The worst that a balance leaves over in an hour, as a share of its largest part.
    residual: f64,
}

/// What a plan says of its air.
#[derive(Clone)]
struct Read {
    placement: CivilDay,
    last_d: i32,
    brooding_d: f64,
    coldest_c: f64,
    hottest_c: f64,
    mean_c: f64,
    latitude_deg: f64,
    altitude_m: f64,
    length_m: f64,
    width_m: f64,
    opens_m: f64,
    litter_m: f64,
    air_changes_per_h: f64,
    heaters_kw: f64,
    heaters_are_told: bool,
    fuel: Fuel,
    useful_mj_per_kg: Option<f64>,
    birds: Vec<f64>,
    mass_kg: Vec<f64>,
    intake: Vec<Intake>,
    target_c: Vec<f64>,
    /// What house, birds and weather differ by from what is told.
    perturbation: Option<Perturbation>,
}

impl Read {
    fn of(answers: &Answers) -> Result<Read, CannotRun> {
        let number = |key: &'static str| answers.number(key).ok_or(CannotRun::NotTold(key));
        let mut outcome = Outcome::of(answers, ["brooding.heat_installed", "brooding.fuel_useful"])
            .with(answers, ["brooding.second_fuel_useful", "brooding.second_share"]);
        let fuel = burnt(answers, &outcome);
        let wanted = [
            "batch.birds_expected",
            "growth.weight",
            "brooding.temperature_by_day",
            "feed.per_bird_by_day",
            "water.per_bird_by_day",
        ];
        outcome.days_of(answers, families::series().filter(|spec| wanted.contains(&spec.id)));
        let days = |id: &'static str| {
            let series = families::series_named(id).and_then(|spec| outcome.series(spec));
            series.map(|series| series.values).ok_or(CannotRun::NotTold(id))
        };
        let [birds, grams, target_c, feed_g, water_ml] = wanted.map(days);
        let (birds, grams, target_c, feed_g, water_ml) = (birds?, grams?, target_c?, feed_g?, water_ml?);
        let last =
            [&birds, &grams, &target_c, &feed_g, &water_ml].map(Vec::len).into_iter().min().unwrap_or(0);
        let intake = (0..last).map(|day| Intake {
            feed_kg: feed_g[day] / 1000.0,
            water_kg: water_ml[day] / 1000.0,
            gain_kg: (grams[day] - grams[day.saturating_sub(1)]) / 1000.0,
        });
        let heaters_kw = outcome.number("brooding.heat_installed");
        let coldest_c = number("weather.coldest_night_c")?;
        let hottest_c = number("weather.hottest_day_c")?.max(coldest_c);
        let eave_m = number("house.eave_height_m")?;
        Ok(Read {
            placement: answers.day("batch.placement").ok_or(CannotRun::NotTold("batch.placement"))?,
            last_d: last as i32 - 1,
            brooding_d: number("brooding.days_d")?,
            coldest_c,
            hottest_c,
            mean_c: answers.number("weather.mean_c").unwrap_or(f64::midpoint(coldest_c, hottest_c)),
            latitude_deg: number("farm.latitude_deg")?,
            altitude_m: answers.number("farm.altitude_m").unwrap_or(0.0),
            length_m: number("house.length_m")?,
            width_m: number("house.width_m")?,
            opens_m: (eave_m - number("house.half_wall_m")?).max(0.0),
            litter_m: answers.number("litter.depth_cm").map_or(LITTER_DEEP_M, |deep| deep / 100.0),
            air_changes_per_h: number("house.air_changes_per_h")?,
            heaters_are_told: heaters_kw.is_some(),
            heaters_kw: heaters_kw.unwrap_or(0.0),
            fuel,
            useful_mj_per_kg: outcome
                .number("brooding.fuel_useful")
                .filter(|_| families::second_brooder::fuel(answers) != Some("electricity"))
                .map(|_| fuel.useful_mj),
            birds,
            mass_kg: grams.iter().map(|grams| grams / 1000.0).collect(),
            intake: intake.collect(),
            target_c,
            perturbation: None,
        })
    }

    /// The same with birds as thirsty as guessed.
    fn drinking(answers: &Answers, guess: Guess) -> Result<Read, CannotRun> {
        let mut plan = Read::of(answers)?;
        plan.intake.iter_mut().for_each(|day| day.water_kg *= guess.water);
        Ok(plan)
    }

    fn air(
        &self,
        answers: &Answers,
        guess: Guess,
        weather: Outside,
        needed: HeatNeeded,
    ) -> Result<PlannedAir, CannotRun> {
        let part = self.house(answers, Part::Heated, guess)?;
        let followed = self.follow(answers, guess, self.last_d + 1, weather)?;
        Ok(PlannedAir {
            preheat_h: self.preheat(&part)?,
            needed,
            heaters_kw: self.heaters_kw,
            useful_mj_per_kg: self.useful_mj_per_kg,
            residual: followed.residual,
            gas_over_middle: families::fuel::most_gas_over_middle(answers),
            hours: self.judged(followed.hours, 0.0),
        })
    }

    /// The hours of every day of age before one, in the heated part while chicks are brooded and in the whole house from then
    /// on.
    fn follow(
        &self,
        answers: &Answers,
        guess: Guess,
        until_d: i32,
        weather: Outside,
    ) -> Result<Followed, CannotRun> {
        let part = self.house(answers, Part::Heated, guess)?;
        let brooded_d = self.brooded_d().min(until_d);
        let mut followed = self.run(&part, 0..brooded_d, self.heaters_kw, weather)?;
        let whole = self.house(answers, Part::WholeHouse, guess)?;
        let whole = self.with_litter_of(&part, &followed, brooded_d - DAYS_BEFORE, whole);
        let grown = self.run(&whole, brooded_d..until_d, 0.0, weather)?;
        followed.hours.extend(grown.hours);
        followed.residual = followed.residual.max(grown.residual);
        Ok(followed)
    }

    /// Days on which chicks are brooded.
    fn brooded_d(&self) -> i32 {
        (self.brooding_d.ceil() as i32).min(self.last_d + 1)
    }

    /// The brooding days with heaters that are never the limit.
    fn needed(&self, house: &House, outside: Outside) -> Result<HeatNeeded, CannotRun> {
        let Followed { hours, residual } = self.run(house, 0..self.brooded_d(), MORE_THAN_ANY_KW, outside)?;
        Ok(HeatNeeded { hours: hours.into_iter().map(|(house, _)| house).collect(), residual })
    }

    fn brooding_heat(&self, answers: &Answers, guess: Guess) -> Result<BroodingHeat, CannotRun> {
        let part = self.house(answers, Part::Heated, guess)?;
        let whole = self.house(answers, Part::WholeHouse, guess)?;
        let of_part = self.needed(&part, None)?;
        let of_whole = if whole == part { of_part.clone() } else { self.needed(&whole, None)? };
        let coldest_c = match self.heaters_are_told {
            true => {
                let first_day = self.run(&part, 0..1, self.heaters_kw, None)?;
                first_day.hours.iter().map(|(house, _)| house.inside_c).reduce(f64::min)
            }
            false => None,
        };
        Ok(BroodingHeat { part: of_part, whole: of_whole, coldest_c, preheat_h: self.preheat(&part)? })
    }

    /// The whole house, or the part that is heated.
    fn house(&self, answers: &Answers, part: Part, guess: Guess) -> Result<House, CannotRun> {
        let mut answers = answers.clone();
        if part == Part::WholeHouse {
            set(&mut answers, "brooding.heated_length_m", Value::Number(self.length_m));
        }
        let outcome = Outcome::of(&answers, OF_A_HOUSE);
        let figure = |id: &'static str| outcome.number(id).ok_or(CannotRun::NotTold(id));
        let length_m = figure("brooding.heated_length")?;
        let zone = match part {
            Part::Heated if is_covered(&answers) => Some(BroodingZone {
                loss_w_per_k: guess.walls * (figure("brooding.ua_cover")? + figure("brooding.ua_guard")?)
                    + figure("brooding.air_change_loss")?,
                until_day: self.brooded_d(),
            }),
            _ => None,
        };
        let floor_m2 = length_m * self.width_m;
        let litter_kg = floor_m2 * self.litter_m * LITTER_KG_PER_M3;
        Ok(House {
            length_m,
            width_m: self.width_m,
            mean_height_m: figure("brooding.air_volume")? / floor_m2,
            walls_w_per_k: guess.walls * figure("brooding.ua_walls")?,
            curtain_w_per_k: guess.walls * (figure("brooding.ua_curtain")? + figure("brooding.ua_ends")?),
            roof_w_per_k: guess.walls * figure("brooding.roof_area")? * figure("brooding.roof_with_ceiling")?,
            roof_absorptance: ROOF_ABSORBS,
            roof_is_wet: false,
            roof_emittance: ROOF_EMITS,
            perimeter_w_per_k: guess.walls * figure("brooding.ua_floor")?,
            ground_w_per_k: GROUND_W_PER_M2K * floor_m2,
            ground_c: self.mean_c,
            opening_m2: length_m * self.opens_m,
            // From the middle of a slot's lower half to its own middle.
            opening_height_m: self.opens_m / 4.0,
            wind_effectiveness: WIND_THROUGH,
            leakage_per_h: guess.leaks * self.air_changes_per_h,
            mass_j_per_k: FLOOR_J_PER_M2K * floor_m2,
            mass_w_per_k: FLOOR_W_PER_M2K * floor_m2,
            litter_dry_kg: litter_kg * (1.0 - LITTER_DAMP),
            litter_water_kg: litter_kg * LITTER_DAMP,
            altitude_m: self.altitude_m,
            latitude_deg: self.latitude_deg,
            zone,
        })
    }

    /// The whole house with what birds left in the litter of the heated part until they are let out of it; the rest is as it
    /// was spread.
    fn with_litter_of(&self, part: &House, followed: &Followed, until_d: i32, whole: House) -> House {
        let Some((last, _)) = followed.hours.iter().rfind(|(house, _)| house.day < until_d) else {
            return whole;
        };
        let days = usize::try_from(until_d).unwrap_or_default();
        let each: f64 = self.intake.iter().take(days).map(|day| day.dry_droppings()).sum();
        let droppings = self.flock(0).birds * each;
        let moisture = last.litter_moisture;
        let water = (part.litter_dry_kg + droppings) * moisture / (1.0 - moisture);
        House {
            litter_dry_kg: whole.litter_dry_kg + droppings,
            litter_water_kg: whole.litter_water_kg + water - part.litter_water_kg,
            ..whole
        }
    }

    fn typical(&self, day: CivilDay) -> WeatherDay {
        WeatherDay {
            coldest_c: self.coldest_c,
            warmest_c: self.hottest_c,
            dew_below_k: 2.0,
            wind_m_per_s: WIND_M_PER_S,
            cloud: 0.0,
            latitude_deg: self.latitude_deg,
            day_of_year: f64::from(day.day_of_year()),
        }
    }

    /// The birds that are there on a day.
    fn flock(&self, age_d: i32) -> Flock {
        let there = usize::try_from(age_d).ok().and_then(|at| self.birds.get(at).or(self.birds.last()));
        Flock {
            birds: there.copied().unwrap_or(0.0),
            mass_kg: self.mass_kg.clone(),
            intake: self.intake.clone(),
            heat_factor: MODERN_BIRDS,
            to_litter: TO_LITTER,
            activity: ACTIVITY,
            stillest_h: STILLEST_H,
        }
    }

    fn management(&self, house: &House, first_day: i32, heater_kw: f64) -> Management {
        Management {
            first_day,
            first_hour: 0,
            preheat_hours: f64::from(24 * DAYS_BEFORE),
            target_c: self.target_c.clone(),
            band_k: OPEN_ABOVE_K,
            humidity_most: HUMIDITY_MOST,
            co2_most_ppm: CO2_MOST_PPM,
            minimum_m3_h: 0.0,
            heater_kw,
            fuel: self.fuel,
            opening_least_m2: 0.0,
            opening_most_m2: house.opening_m2,
            held_m2: None,
        }
    }

    /// Some days of age; the first day without all its hours of weather ends them.
    fn run(
        &self,
        house: &House,
        ages: std::ops::Range<i32>,
        heater_kw: f64,
        outside: Outside,
    ) -> Result<Followed, CannotRun> {
        let first_d = ages.start - DAYS_BEFORE;
        let of_day = |day: i32| {
            let day = self.placement.plus_days(day);
            match outside {
                None => Some(self.typical(day).hours()),
                Some(given) => given(day),
            }
        };
        let days = if ages.is_empty() { 0..0 } else { first_d..ages.end };
        let weather: Vec<Hour> = days.map_while(of_day).flatten().collect();
        let management = self.management(house, first_d, heater_kw);
        let mut followed = self.balance(house, &self.flock(ages.start), &management, weather)?;
        followed.hours.retain(|(house, _)| house.day >= ages.start);
        Ok(followed)
    }

    /// A house through hours of weather.
    fn balance(
        &self,
        house: &House,
        flock: &Flock,
        management: &Management,
        weather: Vec<Hour>,
    ) -> Result<Followed, CannotRun> {
        let run = match self.perturbation {
            Some(perturbation) => perturbation.run(house, flock, management, &weather)?,
            None => air::run(house, flock, management, &weather)?,
        };
        let residual = run.residual.heat.max(run.residual.water).max(run.residual.co2);
        Ok(Followed { hours: run.hours.into_iter().zip(weather).collect(), residual })
    }

    /// Hours judged by what they are to the birds.
    ///
    /// - `fan_m_per_s`: air that is moved at the birds; 0 without a fan
    fn judged(&self, hours: Vec<(HouseHour, Hour)>, fan_m_per_s: f64) -> Vec<AirHour> {
        let pressure = moist_air::pressure_at(self.altitude_m);
        let hour = |(mut house, outside): (HouseHour, Hour)| {
            if house.inside_c < AS_WARM_AS_A_BIRD_C {
                house.air_speed_m_s = house.air_speed_m_s.max(fan_m_per_s);
            }
            let (heat_index, heat) =
                stress::of_hour(&house, pressure).unwrap_or((house.inside_c, Band::Comfort));
            AirHour { outside, is_brooding: f64::from(house.day) < self.brooding_d, heat_index, heat, house }
        };
        hours.into_iter().map(hour).collect()
    }

    /// By heaters that burn as hard as they can on a day that is all as cool as its mean.
    fn preheat(&self, part: &House) -> Result<Option<usize>, CannotRun> {
        if self.heaters_kw <= 0.0 {
            return Ok(None);
        }
        let outside = Hour {
            outside_c: f64::midpoint(self.coldest_c, self.hottest_c),
            humidity: 0.6,
            wind_m_s: 0.0,
            sun_w_per_m2: 0.0,
            pressure_pa: None,
        };
        let management = self.management(part, 0, self.heaters_kw);
        Ok(preheat::hours(part, &self.flock(0), &management, &outside, LITTER_NEAR_K)?)
    }
}

/// What heaters burn: the fuel told, with the useful heat that the plan counts for it; beside it that of a second kind, by
/// its share of the heat.
fn burnt(answers: &Answers, outcome: &Outcome) -> Fuel {
    let known = |name: Option<&str>, useful_mj: Option<f64>| {
        let fuel = name.and_then(|name| Fuel::named(name).ok()?).unwrap_or(Fuel::ELECTRICITY);
        Fuel { useful_mj: useful_mj.unwrap_or(fuel.useful_mj), ..fuel }
    };
    let first = known(families::fuel::fuel(answers), outcome.number("brooding.fuel_useful"));
    let second = families::second_brooder::fuel(answers);
    match outcome.number("brooding.second_share").filter(|_| second.is_some()) {
        Some(share) => first.beside(known(second, outcome.number("brooding.second_fuel_useful")), share),
        None => first,
    }
}
