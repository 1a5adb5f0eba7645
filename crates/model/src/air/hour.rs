//! One hour after the other.

use quantity::{Mass, Temperature};

use super::litter_water::{self, Intake};
use super::{
    AirFault, Binding, Flock, HeatFlows, Hour, House, HouseHour, Management, Residual, Run, check, opening,
    sol_air,
};
use crate::heat::CO2_OUTSIDE;
use crate::moist_air::{self, MoistAir};
use crate::{bird_heat, heat};

const SECONDS: f64 = 3600.0;
/// Oxygen outside, a share.
const OXYGEN_OUTSIDE: f64 = 0.2095;
/// Carbon dioxide breathed out for oxygen taken in, 0.9 to 1.0 (from memory).
const RESPIRATORY_QUOTIENT: f64 = 0.95;
/// Chicks younger than this are not yet warm-blooded in full, days (our judgement).
const WARM_BLOODED_DAY: i32 = 10;
/// Air drier than wanted by less than this cannot carry water away in any amount that a house could take, kg/kg (our judgement).
const LEAST_DRYING: f64 = 0.0005;
/// How much damper than outside air a house is kept that cannot be as dry as wanted, and the dampest, shares; our judgement.
const DAMPER: f64 = 0.1;
const DAMPEST: f64 = 0.95;
/// Birds that are too warm are given moving air even where it warms the house by up to so much, K; our judgement.
const MOVING_AIR_K: f64 = 1.0;
/// Passes are done when the temperature moves by less, K.
const SETTLED_K: f64 = 1e-7;
const MOST_PASSES: usize = 60;

/// What a house remembers.
#[derive(Clone, Copy)]
struct State {
    air_c: f64,
    mass_c: f64,
    humidity_ratio: f64,
    co2: f64,
    oxygen_used: f64,
    litter_water_kg: f64,
    litter_dry_kg: f64,
}

/// A linear pair of bodies over an hour: the air and the mass, at the end and in the mean.
#[derive(Clone, Copy)]
struct Course {
    air_end: f64,
    mass_end: f64,
    air: f64,
    mass: f64,
    /// Where the birds are, mean.
    birds: f64,
}

/// (e^z − 1 − z) / z².
fn second(z: f64) -> f64 {
    if z.abs() < 1e-2 {
        0.5 + z / 6.0 * (1.0 + z / 4.0 * (1.0 + z / 5.0 * (1.0 + z / 6.0)))
    } else {
        (z.exp_m1() - z) / (z * z)
    }
}

/// One body of a store filled at `inflow` and emptied at `rate` times its level: end and mean over an hour.
fn store(start: f64, inflow: f64, rate: f64) -> (f64, f64) {
    let slope = inflow - rate * start;
    let mean = start + SECONDS * second(-rate * SECONDS) * slope;
    (start + SECONDS * (inflow - rate * mean), mean)
}

/// What is fixed through a run by how high the house stands and how much air it holds.
#[derive(Clone, Copy)]
struct Site {
    /// Where no pressure is told, Pa.
    pressure: f64,
    /// The mass of dry air in the house, kg: taken as that at 20 °C, so that stores carry over from hour to hour.
    held_kg: f64,
}

impl Site {
    fn of(house: &House) -> Site {
        let pressure = moist_air::pressure_at(house.altitude_m);
        let held_kg = house.air_m3() * moist_air::dry_density(Temperature::celsius(20.0), pressure);
        Site { pressure, held_kg }
    }
}

/// All that is fixed within an hour but the ventilation, the heater and what the passes look for.
struct Fixed<'a> {
    house: &'a House,
    outside_c: f64,
    sun_k: f64,
    air_heat_capacity: f64,
    state: State,
    /// One over what the ring lets through, K/W; 0 without one.
    ring: f64,
}

/// Guesses that the passes better.
#[derive(Clone, Copy)]
struct Guess {
    /// What the birds warm the air with: `at + slope × temperature`, W.
    birds_at: f64,
    birds_slope: f64,
    /// What they warm the litter with, W.
    litter_w: f64,
    evaporation_w: f64,
}

impl Fixed<'_> {
    /// The hour with a ventilation in kg of dry air a second and a heater in W.
    fn course(&self, guess: Guess, flow: f64, heater: f64) -> Course {
        let (house, state) = (self.house, self.state);
        let shared = 1.0 / (1.0 - self.ring * guess.birds_slope);
        let air_store = house.air_m3() * AIR_J_PER_M3K;
        let outer =
            house.walls_w_per_k + house.curtain_w_per_k + house.perimeter_w_per_k + house.roof_w_per_k;
        let with_air = flow * self.air_heat_capacity;
        let a11 = -(outer + with_air + house.mass_w_per_k - shared * guess.birds_slope) / air_store;
        let a12 = house.mass_w_per_k / air_store;
        let a21 = house.mass_w_per_k / house.mass_j_per_k;
        let a22 = -(house.mass_w_per_k + house.ground_w_per_k) / house.mass_j_per_k;
        let into_air = shared * (guess.birds_at + heater)
            + (outer + with_air) * self.outside_c
            + house.roof_w_per_k * self.sun_k;
        let into_mass = house.ground_w_per_k * house.ground_c + guess.litter_w - guess.evaporation_w;
        let slope_air = a11 * state.air_c + a12 * state.mass_c + into_air / air_store;
        let slope_mass = a21 * state.air_c + a22 * state.mass_c + into_mass / house.mass_j_per_k;
        // Heat passes between the two alike in both directions, so both rates are real.
        let middle = (a11 + a22) / 2.0;
        let apart = (((a11 - a22) / 2.0).powi(2) + a12 * a21).sqrt().max(1e-12);
        let (fast, slow) = (middle - apart, middle + apart);
        let (of_fast, of_slow) = (second(fast * SECONDS), second(slow * SECONDS));
        let per = 1.0 / (slow - fast);
        let all = (slow * of_fast - fast * of_slow) * per;
        let each = (of_slow - of_fast) * per;
        let air = state.air_c + SECONDS * (all * slope_air + each * (a11 * slope_air + a12 * slope_mass));
        let mass = state.mass_c + SECONDS * (all * slope_mass + each * (a21 * slope_air + a22 * slope_mass));
        Course {
            air_end: state.air_c + SECONDS * (a11 * air + a12 * mass + into_air / air_store),
            mass_end: state.mass_c + SECONDS * (a21 * air + a22 * mass + into_mass / house.mass_j_per_k),
            air,
            mass,
            birds: shared * (air + self.ring * (guess.birds_at + heater)),
        }
    }
}

/// Heat that air holds, J/m3K.
const AIR_J_PER_M3K: f64 = 1200.0;

fn by_day<T: Copy>(values: &[T], day: i32) -> T {
    values[(day.max(0) as usize).min(values.len() - 1)]
}

/// Runs a house through hours of weather. It begins at the temperature, humidity and air of outside.
///
/// # Errors
/// The first figure out of range, see [`check`].
pub fn run(house: &House, flock: &Flock, management: &Management, weather: &[Hour]) -> Result<Run, AirFault> {
    check(house, flock, management, weather)?;
    let mut residual = Residual::default();
    let mut hours = Vec::with_capacity(weather.len());
    let Some(first) = weather.first() else { return Ok(Run { hours, residual }) };
    let site = Site::of(house);
    let mut state = State {
        air_c: first.outside_c,
        mass_c: first.outside_c,
        humidity_ratio: outside_air(site, first).0,
        co2: CO2_OUTSIDE,
        oxygen_used: 0.0,
        litter_water_kg: house.litter_water_kg,
        litter_dry_kg: house.litter_dry_kg,
    };
    for (at, weather) in weather.iter().enumerate() {
        let since = management.first_hour as usize + at;
        let clock = Clock { day: management.first_day + (since / 24) as i32, hour: (since % 24) as u32 };
        let (hour, next, off) = step(house, site, flock, management, weather, clock, state);
        residual.heat = residual.heat.max(off.heat);
        residual.water = residual.water.max(off.water);
        residual.co2 = residual.co2.max(off.co2);
        hours.push(hour);
        state = next;
    }
    Ok(Run { hours, residual })
}

/// When an hour is.
#[derive(Clone, Copy)]
struct Clock {
    day: i32,
    hour: u32,
}

/// Humidity ratio, volume of a kg of dry air and pressure outside.
fn outside_air(site: Site, hour: &Hour) -> (f64, f64, f64) {
    let pressure = hour.pressure_pa.unwrap_or(site.pressure);
    let temperature = Temperature::celsius(hour.outside_c);
    match MoistAir::new(temperature, hour.humidity, pressure) {
        Some(air) => (air.humidity_ratio(), air.specific_volume(), pressure),
        // Not within the checked ranges: vapour at 55 °C is far below the least pressure.
        None => (0.0, 1.0 / moist_air::dry_density(temperature, pressure), pressure),
    }
}

fn step(
    house: &House,
    site: Site,
    flock: &Flock,
    management: &Management,
    weather: &Hour,
    clock: Clock,
    state: State,
) -> (HouseHour, State, Residual) {
    let (outside_w, outside_volume, pressure) = outside_air(site, weather);
    let (volume, held_kg) = (house.air_m3(), site.held_kg);
    let film = sol_air::outer_film(weather.wind_m_s);
    let dry_k = sol_air::sun_above_air(house.roof_absorptance, weather.sun_w_per_m2, film)
        - sol_air::sky_below_air(house.roof_emittance, sol_air::CLEAR_SKY_W_PER_M2, film);
    let sun_k = match house.roof_is_wet {
        true => sol_air::wet_above_air(dry_k, weather.outside_c, outside_w, pressure),
        false => dry_k,
    };
    let placed = clock.day >= 0;
    let birds = if placed { flock.birds } else { 0.0 };
    let bird = Mass::kilograms(by_day(&flock.mass_kg, clock.day));
    let intake = by_day(&flock.intake, clock.day);
    let hour_middle = f64::from(clock.hour) + 0.5;
    let at_20c = birds
        * bird_heat::total_at_20c(bird)
        * flock.heat_factor
        * bird_heat::activity(hour_middle, flock.activity, flock.stillest_h);
    let to_placing = -f64::from(clock.day) * 24.0 - f64::from(clock.hour);
    let target =
        (placed || to_placing <= management.preheat_hours).then(|| by_day(&management.target_c, clock.day));
    let correction = |c: f64| {
        let cold_chick = clock.day < WARM_BLOODED_DAY && target.is_some_and(|target| c < target);
        if cold_chick {
            bird_heat::CORRECTION_OF_COLD_CHICKS
                .min(bird_heat::correction(Temperature::celsius(target.unwrap_or(c))))
        } else {
            bird_heat::correction(Temperature::celsius(c))
        }
    };
    let sensible = |c: f64| {
        at_20c * bird_heat::sensible_share_of_bird_alone(Temperature::celsius(c), correction(c)).max(0.0)
    };
    let zone = house.zone.filter(|zone| clock.day < zone.until_day);
    let fixed = Fixed {
        house,
        outside_c: weather.outside_c,
        sun_k,
        air_heat_capacity: 1006.0 + 1860.0 * outside_w,
        state,
        ring: zone.map_or(0.0, |zone| 1.0 / zone.loss_w_per_k),
    };
    let leak = volume * house.leakage_per_h / SECONDS / outside_volume;
    let live_weight = birds * bird.in_kilograms().powf(0.75);
    let minimum = management.minimum_m3_h * live_weight / SECONDS / outside_volume;
    let speed_at = |air_c: f64| {
        let stack = opening::stack_speed(air_c, weather.outside_c, house.opening_height_m);
        opening::speed(house.wind_effectiveness, weather.wind_m_s, stack)
    };

    let mut birds_c = target.unwrap_or(state.air_c);
    let mut house_c = state.air_c;
    let mut mass_c = state.mass_c;
    let mut inside_w = state.humidity_ratio;
    let mut evaporation = 0.0;
    let mut heater_w = 0.0_f64;
    // What the pass before found is near what the next one looks for.
    let mut flow_before = None;
    let mut pass = 0;
    let done = loop {
        pass += 1;
        let into_air = 1.0 - flock.to_litter;
        let birds_slope = if at_20c > 0.0 {
            into_air * ((sensible(birds_c + 0.05) - sensible(birds_c - 0.05)) / 0.1).min(0.0)
        } else {
            0.0
        };
        let guess = Guess {
            birds_at: into_air * sensible(birds_c) - birds_slope * birds_c,
            birds_slope,
            litter_w: flock.to_litter * sensible(birds_c),
            evaporation_w: evaporation * moist_air::evaporation_heat(Temperature::celsius(mass_c)),
        };
        let total = at_20c * correction(birds_c);
        let breath = bird_heat::moisture_g_per_h(total - sensible(birds_c)) / 3.6e6;
        let fire = management.fuel.fire(heater_w / 1000.0);
        let vapour = breath + fire.water_kg_h / SECONDS;
        let co2 = bird_heat::carbon_dioxide_m3_per_h(total) / SECONDS;
        let oxygen = co2 / RESPIRATORY_QUOTIENT + fire.oxygen_m3_h / SECONDS;
        let co2 = co2 + fire.co2_m3_h / SECONDS;

        // Ventilation wanted for water and for carbon dioxide.
        let warm = Temperature::celsius(birds_c);
        let at_humidity =
            |share: f64| moist_air::humidity_ratio(share * moist_air::saturation_pressure(warm), pressure);
        let cannot_dry = at_humidity(management.humidity_most) - outside_w < LEAST_DRYING;
        // Where it cannot be as dry as wanted it is kept a little damper than the air outside is once warmed, not shut up wet.
        let outside_share = outside_w / at_humidity(1.0);
        let wanted_w = at_humidity(management.humidity_most.max(outside_share + DAMPER).min(DAMPEST));
        let by_moisture = if wanted_w - outside_w < LEAST_DRYING || !placed {
            0.0
        } else {
            (vapour + evaporation).max(0.0) / (wanted_w - outside_w)
        };
        let inside_volume =
            (1.0 + 1.607_858 * inside_w) / moist_air::dry_density(Temperature::celsius(house_c), pressure);
        let by_co2 = co2 / (management.co2_most_ppm / 1e6 - CO2_OUTSIDE) / inside_volume;
        let speed = speed_at(house_c);
        let (narrowest, widest) = match management.held_m2 {
            Some(held) => (held[clock.hour as usize], held[clock.hour as usize]),
            None => (management.opening_least_m2, management.opening_most_m2),
        };
        let least = leak + narrowest * speed / outside_volume;
        let most = leak + widest * speed / outside_volume;
        let (wanted, mut binding) = [
            (least.max(minimum), Binding::Minimum),
            (by_moisture, Binding::Moisture),
            (by_co2, Binding::CarbonDioxide),
        ]
        .into_iter()
        .fold((0.0, Binding::Minimum), |most, next| if next.0 > most.0 { next } else { most });
        let mut flow = wanted.min(most);
        if wanted > most {
            binding = Binding::Wind;
        }
        let mut needed_w = 0.0;
        let mut course = fixed.course(guess, flow, 0.0);
        heater_w = 0.0;
        if let Some(target) = target {
            let open_from = target + management.band_k;
            if course.birds < target {
                // Straight in the heat.
                let with = fixed.course(guess, flow, 1000.0);
                needed_w = 1000.0 * (target - course.birds) / (with.birds - course.birds);
                heater_w = needed_w.min(1000.0 * management.heater_kw);
                course = fixed.course(guess, flow, heater_w);
            } else if course.birds > open_from {
                let open = fixed.course(guess, most, 0.0);
                if open.birds >= open_from && open.birds < course.birds + MOVING_AIR_K {
                    (flow, course, binding) = (most, open, Binding::Wind);
                } else if open.birds < open_from {
                    let ends = [(flow, course.birds), (most, open.birds)];
                    flow =
                        flow_for(open_from, ends, flow_before, |flow| fixed.course(guess, flow, 0.0).birds);
                    flow_before = Some(flow);
                    (course, binding) = (fixed.course(guess, flow, 0.0), Binding::Heat);
                }
            }
        }

        // Warmth comes before dryness: what heaters cannot make good is not aired away for damp, only for breath.
        if let (Some(target), Binding::Moisture) = (target, binding) {
            let coldest = target - management.band_k;
            let breath_alone = least.max(minimum).max(by_co2).min(most);
            if course.birds < coldest && breath_alone < flow {
                let closer = fixed.course(guess, breath_alone, heater_w);
                (flow, course) = if closer.birds <= coldest {
                    (breath_alone, closer)
                } else {
                    let ends = [(breath_alone, closer.birds), (flow, course.birds)];
                    let flow = flow_for(coldest, ends, flow_before, |flow| {
                        fixed.course(guess, flow, heater_w).birds
                    });
                    flow_before = Some(flow);
                    (flow, fixed.course(guess, flow, heater_w))
                };
            }
        }

        // Water: what leaves the litter is held through the hour, found from the mean humidity it leads to.
        let ventilated_m3_s = flow * outside_volume;
        let air_speed = ventilated_m3_s / (house.length_m * house.mean_height_m);
        let moisture = litter_water::moisture(state.litter_water_kg, state.litter_dry_kg);
        let face = moist_air::humidity_ratio(
            moist_air::saturation_pressure(Temperature::celsius(course.mass)),
            pressure,
        ) * litter_water::water_activity(moisture);
        let conductance = litter_water::conductance(house.floor_m2(), air_speed);
        let (_, with_litter) = store(
            state.humidity_ratio,
            (vapour + conductance * face + flow * outside_w) / held_kg,
            (conductance + flow) / held_kg,
        );
        let next_evaporation = (conductance * (face - with_litter)).min(state.litter_water_kg / SECONDS);
        let moved = (course.birds - birds_c).abs().max((course.air - house_c).abs());
        // After a few passes steps are halved, so that two regimes that hand over to each other settle between.
        let share = if pass < 8 { 1.0 } else { 0.5 };
        birds_c += share * (course.birds - birds_c);
        house_c += share * (course.air - house_c);
        mass_c = course.mass;
        inside_w = with_litter;
        if (moved < SETTLED_K && pass > 2) || pass == MOST_PASSES {
            break Done {
                guess,
                course,
                evaporation,
                flow,
                binding,
                cannot_dry,
                needed_w,
                vapour,
                breath,
                co2,
                oxygen,
                inside_volume,
                air_speed,
                speed,
            };
        }
        evaporation += share * (next_evaporation - evaporation);
    };
    finish(
        &fixed,
        management,
        clock,
        target,
        &done,
        heater_w,
        Surroundings { outside_w, outside_volume, pressure, held_kg, birds, intake },
    )
}

/// What the passes came to.
struct Done {
    guess: Guess,
    course: Course,
    evaporation: f64,
    flow: f64,
    binding: Binding,
    cannot_dry: bool,
    needed_w: f64,
    vapour: f64,
    breath: f64,
    co2: f64,
    oxygen: f64,
    inside_volume: f64,
    air_speed: f64,
    speed: f64,
}

struct Surroundings {
    outside_w: f64,
    outside_volume: f64,
    pressure: f64,
    held_kg: f64,
    birds: f64,
    intake: Intake,
}

fn finish(
    fixed: &Fixed,
    management: &Management,
    clock: Clock,
    target: Option<f64>,
    done: &Done,
    heater_w: f64,
    around: Surroundings,
) -> (HouseHour, State, Residual) {
    let Surroundings { outside_w, outside_volume, pressure, held_kg, birds, intake } = around;
    let (house, state, course, flow) = (fixed.house, fixed.state, done.course, done.flow);
    let colder = fixed.outside_c - course.air;
    let air_store = house.air_m3() * AIR_J_PER_M3K;
    let flows = HeatFlows {
        birds: done.guess.birds_at + done.guess.birds_slope * course.birds + done.guess.litter_w,
        heater: heater_w,
        sun: house.roof_w_per_k * fixed.sun_k,
        walls: (house.walls_w_per_k + house.perimeter_w_per_k) * colder,
        curtain: house.curtain_w_per_k * colder,
        roof: house.roof_w_per_k * colder,
        floor: house.ground_w_per_k * (house.ground_c - course.mass),
        ventilation: flow * fixed.air_heat_capacity * colder,
        evaporation: -done.guess.evaporation_w,
        stored: (air_store * (course.air_end - state.air_c)
            + house.mass_j_per_k * (course.mass_end - state.mass_c))
            / SECONDS,
    };

    // Water of the air; what saturated air cannot hold runs off the cold roof, and its heat goes out through it.
    let rate = flow / held_kg;
    let inflow = (done.vapour + done.evaporation + flow * outside_w) / held_kg;
    let saturated =
        |c: f64| moist_air::humidity_ratio(moist_air::saturation_pressure(Temperature::celsius(c)), pressure);
    let most = saturated(course.air);
    let (_, free_mean) = store(state.humidity_ratio, inflow, rate);
    let per_inflow = SECONDS * second(-rate * SECONDS);
    let condensing = ((free_mean - most) / per_inflow).max(0.0);
    let (water_end, water_mean) = store(state.humidity_ratio, inflow - condensing, rate);
    let condensed = condensing * held_kg;
    let breathed = done.breath * SECONDS;
    let into_litter = birds * intake.water_to_lose() / 24.0 - breathed;
    let evaporated = done.evaporation * SECONDS;
    let litter_end = state.litter_water_kg + into_litter + condensed * SECONDS - evaporated;
    // A bird that breathes out more than the day's water brought draws on its body, not on the litter.
    let (litter_end, into_litter) =
        if litter_end < 0.0 { (0.0, into_litter - litter_end) } else { (litter_end, into_litter) };
    let dry_end = state.litter_dry_kg + birds * intake.dry_droppings() / 24.0;

    let exchange = flow * done.inside_volume / house.air_m3();
    let (co2_end, co2_mean) = store(state.co2, done.co2 / house.air_m3() + exchange * CO2_OUTSIDE, exchange);
    let (oxygen_end, oxygen_mean) = store(state.oxygen_used, done.oxygen / house.air_m3(), exchange);

    let residual = Residual {
        heat: off(
            &[
                flows.birds,
                flows.heater,
                flows.sun,
                flows.walls,
                flows.curtain,
                flows.roof,
                flows.floor,
                flows.ventilation,
                flows.evaporation,
                -flows.stored,
            ],
            1.0,
        ),
        water: off(
            &[
                (done.vapour - done.breath) * SECONDS,
                breathed,
                into_litter,
                flow * outside_w * SECONDS,
                -flow * water_mean * SECONDS,
                -held_kg * (water_end - state.humidity_ratio),
                -(litter_end - state.litter_water_kg),
            ],
            1e-3,
        ),
        co2: off(
            &[
                done.co2 * SECONDS,
                exchange * house.air_m3() * (CO2_OUTSIDE - co2_mean) * SECONDS,
                -house.air_m3() * (co2_end - state.co2),
            ],
            1e-3,
        ),
    };
    let fire = management.fuel.fire(heater_w / 1000.0);
    let ventilation_m3_h = flow * outside_volume * SECONDS;
    let leak_m3_s = house.air_m3() * house.leakage_per_h / SECONDS;
    let opening_m2 = opening::area_for(flow * outside_volume - leak_m3_s, done.speed).unwrap_or(0.0);
    let carbon_monoxide_ppm = if fire.carbon_monoxide_g_h > 0.0 {
        heat::carbon_monoxide_ppm(fire.carbon_monoxide_g_h, ventilation_m3_h)
    } else {
        0.0
    };
    let burning = management.fuel.burns && heater_w > 0.0;
    let hour = HouseHour {
        day: clock.day,
        hour: clock.hour,
        target_c: target,
        inside_c: course.birds,
        house_c: course.air,
        mass_c: course.mass,
        humidity: moist_air::relative_humidity(Temperature::celsius(course.birds), water_mean, pressure)
            .min(1.0),
        co2_ppm: 1e6 * co2_mean,
        ventilation_m3_h,
        binding: done.binding,
        cannot_dry: done.cannot_dry,
        heater_needed_kw: done.needed_w / 1000.0,
        heater_kw: heater_w / 1000.0,
        shortfall_kw: (done.needed_w - heater_w).max(0.0) / 1000.0,
        fuel: fire.fuel_per_h,
        opening_m2,
        air_speed_m_s: done.air_speed,
        heat: flows,
        condensed_kg: condensed * SECONDS,
        evaporated_kg: evaporated,
        litter_moisture: litter_water::moisture(litter_end, dry_end),
        oxygen: OXYGEN_OUTSIDE - oxygen_mean,
        carbon_monoxide_ppm,
        fire_in_closed_house: burning
            && (opening_m2 < 0.005 * house.floor_m2() || carbon_monoxide_ppm >= 9.0),
    };
    let next = State {
        air_c: course.air_end,
        mass_c: course.mass_end,
        humidity_ratio: water_end,
        co2: co2_end,
        oxygen_used: oxygen_end,
        litter_water_kg: litter_end,
        litter_dry_kg: dry_end,
    };
    (hour, next, residual)
}

/// How far parts are from summing to nothing, of the largest of them or of `least`.
fn off(parts: &[f64], least: f64) -> f64 {
    let largest = parts.iter().fold(least, |most, part| most.max(part.abs()));
    parts.iter().sum::<f64>().abs() / largest
}

/// The flow at which a falling temperature passes `wanted`, between two flows on either side of it, the smaller first.
///
/// - `near`: where it is tried first, if it lies between
fn flow_for(
    wanted: f64,
    [mut low, mut high]: [(f64, f64); 2],
    near: Option<f64>,
    birds_at: impl Fn(f64) -> f64,
) -> f64 {
    // Temperature above outside goes about as one over flow, so the halving is of one over flow; false position with the
    // stale end pulled in (Illinois).
    let (mut low_off, mut high_off) = (low.1 - wanted, high.1 - wanted);
    let mut near = near.filter(|near| low.0 < *near && *near < high.0);
    for _ in 0..40 {
        let (a, b) = (1.0 / low.0, 1.0 / high.0);
        let flow = near.take().unwrap_or_else(|| 1.0 / (b + (a - b) * (-high_off / (low_off - high_off))));
        let off = birds_at(flow) - wanted;
        if off.abs() < SETTLED_K / 10.0 {
            return flow;
        }
        if off > 0.0 {
            low.0 = flow;
            low_off = off;
            high_off /= 2.0;
        } else {
            high.0 = flow;
            high_off = off;
            low_off /= 2.0;
        }
    }
    high.0
}
