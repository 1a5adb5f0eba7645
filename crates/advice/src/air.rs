//! The air of a planned batch by the hour: a house and its birds read out of the answers, run through hours of weather.
//!
//! While chicks are brooded the heated part is run, from then on the whole house. Without weather by the hour, every day is one
//! that has both the coldest night and the hottest afternoon of the plan: what heaters and curtains must be able to do.

use model::air::weather::Day as WeatherDay;
use model::air::{self, Flame, Flock, Hour, House, HouseHour, State, Wish};
use model::heat_stress::{self, Band};
use model::moist_air;
use quantity::{Answers, CivilDay, Value};

use crate::diary::set;
use crate::families::{self, hours_of_air as family};
use crate::outcome::Outcome;

/// An hour of a planned batch.
#[derive(Clone, Debug, PartialEq)]
pub struct AirHour {
    /// Day of age.
    pub age_d: i32,
    /// Hour of the day by the sun, 0 to 23.
    pub hour: usize,
    /// How warm it should be, °C.
    pub target_c: f64,
    /// Whether chicks are brooded.
    pub is_brooding: bool,
    /// What the balance gives.
    pub house: HouseHour,
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
    /// The most that heaters must give in an hour to hold the target, with enough of them, kW.
    pub heat_peak_kw: f64,
    /// What the heaters give at most, kW.
    pub heaters_kw: f64,
    /// Fresh air of that hour, m3/h.
    pub fresh_air_at_peak_m3_per_h: f64,
    /// Useful heat of a kilogram of fuel, MJ; `None` for a wire or where no fuel is told.
    pub useful_mj_per_kg: Option<f64>,
}

/// By how much what is not known of a house may lie off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Guess {
    /// Against what the tables say that walls and roof let through.
    pub walls: f64,
    /// Against the leaks told or assumed.
    pub leaks: f64,
}

impl Guess {
    /// As told.
    pub const AS_TOLD: Guess = Guess { walls: 1.0, leaks: 1.0 };
    /// A tight house and a leaky one: our judgement.
    pub const ENDS: [Guess; 2] = [Guess { walls: 0.8, leaks: 0.5 }, Guess { walls: 1.2, leaks: 2.0 }];
}

/// Weather by the hour: of a civil day and an hour of it, 0 to 23; `None` to go by the plan's own days.
pub type Outside<'a> = Option<&'a dyn Fn(CivilDay, usize) -> Option<Hour>>;

/// Why the air of a plan cannot be run: a field that is not told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotTold(pub &'static str);

/// A heater that is never the limit, W.
const MORE_THAN_ANY_W: f64 = 1e7;
/// Hours by which a house is warmed before chicks come at most.
const PREHEAT_MOST_H: usize = 96;
/// The hour of the day at which chicks come: our judgement.
const ARRIVAL_H: usize = 10;
/// As warm as litter must be when chicks come, °C: 28 to 30 (common practice).
const LITTER_C: f64 = 28.0;
/// Curtains are opened from so much above target, K: our judgement.
const OPEN_ABOVE_K: f64 = 1.5;
/// Dampest air wanted: Directive 2007/43/EC, Annex II, for cold weather.
const HUMIDITY_MOST: f64 = 0.7;
/// Most carbon dioxide: the same.
const CO2_MOST: f64 = 0.003;
/// Modern birds give off more than those of the tables: 1.0 to 1.25 (from memory).
const MODERN_BIRDS: f64 = 1.1;
/// Feathered enough to burn more when it is cold, from this day on: our judgement.
const FEATHERED_D: i32 = 10;
/// Wind at the opening where nobody measured: our judgement.
pub(crate) const WIND_M_PER_S: f64 = 1.5;
/// Weathered sheet, tile and thatch alike: from memory.
const ROOF_ABSORBS: f64 = 0.7;
/// A flat roof under a clear sky: ASHRAE, from memory, at an emittance of 0.9.
const ROOF_TO_SKY_W_PER_M2: f64 = 0.9 * 63.0;
/// Litter and the upper slab, kJ/m2K, and how they hand heat to the air and the ground, W/m2K: from usual densities, from memory.
const FLOOR_J_PER_M2K: f64 = 120_000.0;
const FLOOR_W_PER_M2K: f64 = 6.0;
const GROUND_W_PER_M2K: f64 = 0.4;
/// Air, birds and equipment: J/K for each m3 of air and each m2 of floor. Our judgement.
const AIR_J_PER_M3K: f64 = 1_200.0;
const LIGHT_J_PER_M2K: f64 = 5_000.0;
/// Mass of a cubic metre of carbon dioxide, kg.
const CO2_KG_PER_M3: f64 = 1.83;

/// What of the plan's figures a house is made of.
const OF_A_HOUSE: [&str; 9] = [
    "brooding.ua_walls",
    "brooding.ua_curtain",
    "brooding.ua_ends",
    "brooding.ua_floor",
    "brooding.roof_area",
    "brooding.roof_with_ceiling",
    "brooding.air_volume",
    "brooding.heated_length",
    "brooding.fuel_useful",
];

impl PlannedAir {
    /// Runs a plan through the weather given for the hours of its days, or through its own coldest and hottest.
    ///
    /// - `weather`: the hour of a day, 0 to 23, of a civil day; `None` where it holds none
    ///
    /// # Errors
    /// [`NotTold`] with the first field that is missing.
    pub fn of(answers: &Answers, guess: Guess, weather: Outside) -> Result<PlannedAir, NotTold> {
        let plan = Read::of(answers)?;
        let whole = plan.house(answers, true, guess)?;
        let part = plan.house(answers, false, guess)?;
        let preheat_h = plan.preheat(&part);
        let hours = plan.run(&part, &whole, plan.last_d, &weather)?;
        // With heaters that can do whatever is asked of them: what it takes.
        let heaters_kw = plan.heaters_w / 1000.0;
        let able = Read { heaters_w: MORE_THAN_ANY_W, ..plan };
        let brooding_d = (able.brooding_d.ceil() as i32 - 1).min(able.last_d);
        let needed = able.run(&part, &whole, brooding_d, &weather)?;
        let brooding = needed.iter().filter(|hour| hour.is_brooding);
        let peak = brooding.max_by(|one, other| one.house.heaters_w.total_cmp(&other.house.heaters_w));
        Ok(PlannedAir {
            hours,
            preheat_h,
            heaters_kw,
            heat_peak_kw: peak.map_or(0.0, |hour| hour.house.heaters_w / 1000.0),
            fresh_air_at_peak_m3_per_h: peak.map_or(0.0, |hour| hour.house.fresh_air_m3_per_h),
            useful_mj_per_kg: able.useful_mj_per_kg,
        })
    }

    /// The days that a plan is run through: the chick day and the last.
    ///
    /// # Errors
    /// [`NotTold`] with the first field that is missing.
    pub fn days(answers: &Answers) -> Result<(CivilDay, CivilDay), NotTold> {
        let plan = Read::of(answers)?;
        Ok((plan.placement, plan.placement.plus_days(plan.last_d)))
    }

    /// What the heaters lack of that, kW.
    pub fn heat_short_kw(&self) -> f64 {
        (self.heat_peak_kw - self.heaters_kw).max(0.0)
    }

    /// Heat that heaters give, kWh, on a day of age.
    pub fn heat_of_day_kwh(&self, age_d: i32) -> f64 {
        self.brooding().filter(|hour| hour.age_d == age_d).map(|hour| hour.house.heaters_w / 1000.0).sum()
    }

    /// Heat that heaters give in all, kWh.
    pub fn heat_kwh(&self) -> f64 {
        self.brooding().map(|hour| hour.house.heaters_w / 1000.0).sum()
    }

    /// Fuel for so much heat, kg.
    pub fn fuel_kg(&self, heat_kwh: f64) -> Option<f64> {
        Some(model::heat::fuel(heat_kwh, self.useful_mj_per_kg?))
    }

    /// Hours of a day of age that are at least so hot for its birds.
    pub fn hours_at_least(&self, age_d: i32, heat: Band) -> f64 {
        self.hours.iter().filter(|hour| hour.age_d == age_d && hour.heat >= heat).count() as f64
    }

    /// Hours of all days that are hot or worse for the birds of their day.
    pub fn hot_hours(&self) -> f64 {
        self.hours.iter().filter(|hour| hour.heat >= Band::Hot).count() as f64
    }

    /// Those of them that are dangerous or worse.
    pub fn danger_hours(&self) -> f64 {
        self.hours.iter().filter(|hour| hour.heat >= Band::Danger).count() as f64
    }

    /// The last day of age that was run.
    pub fn last_day(&self) -> Option<i32> {
        Some(self.hours.last()?.age_d)
    }

    /// The worst that heat, water and carbon dioxide leave over in an hour, as a share of what moved.
    pub fn residual(&self) -> f64 {
        self.hours.iter().map(|hour| hour.house.residual).fold(0.0, f64::max)
    }

    fn brooding(&self) -> impl Iterator<Item = &AirHour> {
        self.hours.iter().filter(|hour| hour.is_brooding)
    }
}

/// What a plan says of its air.
struct Read {
    placement: CivilDay,
    last_d: i32,
    brooding_d: f64,
    coldest_c: f64,
    hottest_c: f64,
    mean_c: f64,
    latitude_deg: f64,
    pressure_pa: f64,
    length_m: f64,
    eave_m: f64,
    opens_m: f64,
    air_changes_per_h: f64,
    heaters_w: f64,
    flame: Flame,
    useful_mj_per_kg: Option<f64>,
    birds: Vec<f64>,
    grams: Vec<f64>,
    targets: Vec<f64>,
}

impl Read {
    fn of(answers: &Answers) -> Result<Read, NotTold> {
        let number = |key: &'static str| answers.number(key).ok_or(NotTold(key));
        let mut outcome = Outcome::of(answers, ["brooding.brooder_power", "brooding.fuel_useful"]);
        let wanted = ["batch.birds_expected", "growth.weight", "brooding.temperature_by_day"];
        outcome.days_of(answers, families::series().filter(|spec| wanted.contains(&spec.id)));
        let days = |id: &'static str| {
            let series = families::series_named(id).and_then(|spec| outcome.series(spec));
            series.map(|series| series.values).ok_or(NotTold(id))
        };
        let (birds, grams, targets) = (days(wanted[0])?, days(wanted[1])?, days(wanted[2])?);
        let heaters = answers.number("brooding.brooders").zip(outcome.number("brooding.brooder_power"));
        let coldest_c = number("weather.coldest_night_c")?;
        let hottest_c = number("weather.hottest_day_c")?;
        Ok(Read {
            placement: answers.day("batch.placement").ok_or(NotTold("batch.placement"))?,
            last_d: birds.len().min(grams.len()).min(targets.len()) as i32 - 1,
            brooding_d: number("brooding.days_d")?,
            coldest_c,
            hottest_c: hottest_c.max(coldest_c),
            mean_c: answers.number("weather.mean_c").unwrap_or(f64::midpoint(coldest_c, hottest_c)),
            latitude_deg: number("farm.latitude_deg")?,
            pressure_pa: moist_air::pressure_at(answers.number("farm.altitude_m").unwrap_or(0.0)),
            length_m: number("house.length_m")?,
            eave_m: number("house.eave_height_m")?,
            opens_m: (number("house.eave_height_m")? - number("house.half_wall_m")?).max(0.0),
            air_changes_per_h: number("house.air_changes_per_h")?,
            heaters_w: heaters.map_or(0.0, |(brooders, kw)| brooders * kw * 1000.0),
            flame: flame(answers, outcome.number("brooding.fuel_useful")),
            useful_mj_per_kg: outcome.number("brooding.fuel_useful"),
            birds,
            grams,
            targets,
        })
    }

    /// The whole house, or the part that is heated.
    fn house(&self, answers: &Answers, is_whole: bool, guess: Guess) -> Result<House, NotTold> {
        let mut answers = answers.clone();
        if is_whole {
            set(&mut answers, "brooding.heated_length_m", Value::Number(self.length_m));
        }
        let outcome = Outcome::of(&answers, OF_A_HOUSE);
        let figure = |id: &'static str| outcome.number(id).ok_or(NotTold(id));
        let width_m = answers.number("house.width_m").ok_or(NotTold("house.width_m"))?;
        let (length_m, air_m3) = (figure("brooding.heated_length")?, figure("brooding.air_volume")?);
        let floor_m2 = length_m * width_m;
        Ok(House {
            walls_w_per_k: guess.walls * figure("brooding.ua_walls")?,
            curtain_w_per_k: guess.walls * (figure("brooding.ua_curtain")? + figure("brooding.ua_ends")?),
            edge_w_per_k: guess.walls * figure("brooding.ua_floor")?,
            roof_m2: figure("brooding.roof_area")?,
            roof_w_per_m2k: guess.walls * figure("brooding.roof_with_ceiling")?,
            roof_absorbs: ROOF_ABSORBS,
            roof_to_sky_w_per_m2: ROOF_TO_SKY_W_PER_M2,
            light_j_per_k: AIR_J_PER_M3K * air_m3 + LIGHT_J_PER_M2K * floor_m2,
            floor_j_per_k: FLOOR_J_PER_M2K * floor_m2,
            floor_w_per_k: FLOOR_W_PER_M2K * floor_m2,
            ground_w_per_k: GROUND_W_PER_M2K * floor_m2,
            ground_c: self.mean_c,
            air_m3,
            leaks_m3_per_h: guess.leaks * self.air_changes_per_h * air_m3,
            opens_m2: length_m * self.opens_m,
            opens_over_m: length_m,
            pressure_pa: self.pressure_pa,
        })
    }

    /// Every hour from the chick day to a day of age.
    fn run(
        &self,
        part: &House,
        whole: &House,
        last_d: i32,
        outside: &Outside,
    ) -> Result<Vec<AirHour>, NotTold> {
        let mut hours = Vec::new();
        let mut state: Option<State> = None;
        for age_d in 0..=last_d {
            let is_brooding = f64::from(age_d) < self.brooding_d;
            let house = if is_brooding { part } else { whole };
            let (Some(flock), Some(target_c)) = (self.flock(age_d), self.target(age_d)) else { break };
            let wish = self.wish(target_c, is_brooding);
            let day = self.placement.plus_days(age_d);
            let at = |hour: usize| {
                outside.map_or_else(|| self.typical(day).hours().get(hour).copied(), |given| given(day, hour))
            };
            let Some(weather) = (0..24).map(at).collect::<Option<Vec<Hour>>>() else { break };
            // Chicks come into a house that was warmed.
            let empty = State::empty(house, &weather[0]).ok_or(NotTold("weather.coldest_night_c"))?;
            let warmed = State { air_c: target_c, floor_c: LITTER_C, ..empty };
            let day_ran =
                air::run(house, state.unwrap_or(warmed), weather.iter().map(|hour| (*hour, flock, wish)));
            let (day_ran, end) = day_ran.ok_or(NotTold("weather.coldest_night_c"))?;
            state = Some(end);
            for (hour, ran) in day_ran.into_iter().enumerate() {
                hours.push(self.hour(age_d, hour, target_c, is_brooding, house, ran));
            }
        }
        Ok(hours)
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

    fn target(&self, age_d: i32) -> Option<f64> {
        self.targets.get(usize::try_from(age_d).ok()?).copied()
    }

    fn flock(&self, age_d: i32) -> Option<Flock> {
        let at = usize::try_from(age_d).ok()?;
        Some(Flock {
            birds: *self.birds.get(at)?,
            each_kg: self.grams.get(at)? / 1000.0,
            more: MODERN_BIRDS,
            cold_below_c: (age_d < FEATHERED_D).then(|| self.targets.get(at).copied()).flatten(),
        })
    }

    fn wish(&self, target_c: f64, is_brooding: bool) -> Wish {
        Wish {
            target_c,
            open_above_k: OPEN_ABOVE_K,
            humidity_most: HUMIDITY_MOST,
            co2_most: CO2_MOST,
            least_m3_per_h: 0.0,
            heaters_w: if is_brooding { self.heaters_w } else { 0.0 },
            flame: self.flame,
        }
    }

    /// The hours by which heaters must be lit before chicks come on the hour of [`ARRIVAL_H`], each day being the plan's own.
    fn preheat(&self, part: &House) -> Option<usize> {
        let wish = self.wish(self.target(0)?, true);
        let hours = self.typical(self.placement).hours();
        let before = |hours_before: usize| -> Vec<Hour> {
            let first = ARRIVAL_H + 24 * PREHEAT_MOST_H - hours_before;
            (0..hours_before).map(|at| hours[(first + at) % 24]).collect()
        };
        let is_warm = |hours_before: &usize| {
            let ready = air::warmed(part, &before(*hours_before), &wish);
            ready.is_some_and(|ready| ready.floor_c >= LITTER_C && ready.air_c >= wish.target_c - 0.5)
        };
        (wish.heaters_w > 0.0).then(|| (3..=PREHEAT_MOST_H).step_by(3).find(is_warm)).flatten()
    }

    fn hour(
        &self,
        age_d: i32,
        hour: usize,
        target_c: f64,
        is_brooding: bool,
        house: &House,
        ran: HouseHour,
    ) -> AirHour {
        // Air over the birds: what goes through, over the section it goes through.
        let speed = ran.fresh_air_m3_per_h / 3600.0 / (house.opens_over_m * self.eave_m);
        // Air whose water cannot be was refused by the run.
        let index = heat_stress::index(ran.inside_c, ran.humidity.min(1.0), house.pressure_pa, speed)
            .unwrap_or(ran.inside_c);
        // Where no heater is meant to burn, none lacks anything.
        let short_w = if is_brooding { ran.short_w } else { 0.0 };
        AirHour {
            age_d,
            hour,
            target_c,
            is_brooding,
            heat_index: index,
            heat: heat_stress::band(index, target_c),
            house: HouseHour { short_w, ..ran },
        }
    }
}

/// Water of a kilogram of fuel, kg: exact for propane, the others from memory; nothing of what leaves by a flue.
fn water_kg_per_kg(fuel: &str) -> f64 {
    match fuel {
        "lpg" => 1.6,
        "kerosene" => 1.2,
        "charcoal" => 0.3,
        _ => 0.0,
    }
}

fn flame(answers: &Answers, useful_mj_per_kg: Option<f64>) -> Flame {
    let fuel = families::fuel::fuel(answers);
    let known = fuel.and_then(|name| Some((name, reference::fuel::fuel(name).ok()??)));
    let Some(((name, fuel), useful)) = known.zip(useful_mj_per_kg) else { return Flame::default() };
    let kg_per_kwh = 3.6 / useful;
    Flame {
        co2_m3_per_kwh: fuel.co2_kg_per_kg.unwrap_or(0.0) / CO2_KG_PER_M3 * kg_per_kwh,
        water_kg_per_kwh: water_kg_per_kg(name) * kg_per_kwh,
    }
}

/// The figures of [`family::SIMULATION`], each between what a tight and a leaky house would make of it, and what the balance
/// leaves over, as a share.
pub(crate) fn figures(answers: &Answers) -> Option<(Vec<[f64; 3]>, f64)> {
    let as_told = PlannedAir::of(answers, Guess::AS_TOLD, None).ok()?;
    let of = |guess| family::figures_of(&PlannedAir::of(answers, guess, None).ok()?);
    let (told, ends) = (family::figures_of(&as_told)?, Guess::ENDS.map(of));
    let [Some(tight), Some(leaky)] = ends else { return None };
    let with_ends = |at: usize| {
        [tight[at].min(leaky[at]).min(told[at]), told[at], tight[at].max(leaky[at]).max(told[at])]
    };
    Some(((0..told.len()).map(with_ends).collect(), as_told.residual()))
}
