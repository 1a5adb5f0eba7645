//! The air of an open house by the hour: heat, water and carbon dioxide that birds, brooder, sun, walls, floor and curtains bring
//! and take, how far the curtain must stand open, and what the brooder must give.
//!
//! Two bodies of heat: the air with what is light in the house, and floor with litter below it. Every step is implicit, so that
//! what goes in, goes out and stays closes, whatever the step. The birds' heat is split at house level, which pays for the
//! water that litter gives up; the litter's own water is not followed.

pub mod opening;
pub mod weather;

use quantity::{Mass, Temperature};

use crate::bird_heat;
use crate::moist_air::{self, MoistAir, WATER_TO_AIR};
use opening::Drive;
pub use weather::Hour;

/// A house, or the part of it that is closed off and heated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct House {
    /// Through walls and their doors, W/K.
    pub walls_w_per_k: f64,
    /// Through closed curtains and gables, W/K.
    pub curtain_w_per_k: f64,
    /// Through the edge of the slab, W/K.
    pub edge_w_per_k: f64,
    /// The roof, m2.
    pub roof_m2: f64,
    /// Through the roof and its ceiling with heat going up, W/m2K.
    pub roof_w_per_m2k: f64,
    /// Share of the sun that the roof takes up, 0 to 1.
    pub roof_absorbs: f64,
    /// What the roof loses to a clear sky, W/m2.
    pub roof_to_sky_w_per_m2: f64,
    /// Heat that the air and what is light in the house take for each degree, J/K; above 0.
    pub light_j_per_k: f64,
    /// The same of litter and the upper floor, J/K; above 0.
    pub floor_j_per_k: f64,
    /// Between air and floor, W/K.
    pub floor_w_per_k: f64,
    /// From the floor to deep ground, W/K.
    pub ground_w_per_k: f64,
    /// Deep ground, °C: the yearly mean of the air.
    pub ground_c: f64,
    /// Air inside, m3; above 0.
    pub air_m3: f64,
    /// What leaks with everything closed, m3/h.
    pub leaks_m3_per_h: f64,
    /// Most that can be opened on each long side, m2.
    pub opens_m2: f64,
    /// Over so long, m.
    pub opens_over_m: f64,
    /// Air pressure, Pa.
    pub pressure_pa: f64,
}

/// The birds of an hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flock {
    /// How many.
    pub birds: f64,
    /// What one weighs, kg.
    pub each_kg: f64,
    /// Heat against that of the tables: modern birds give off more, 1.0 to 1.25.
    pub more: f64,
    /// Below this, °C, birds cannot burn more to keep warm: the comfort of chicks of under ten days. `None` for feathered birds.
    pub cold_below_c: Option<f64>,
}

/// What an hour is run to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// As warm as this, °C.
    pub target_c: f64,
    /// Curtains are opened above target by so much, K.
    pub open_above_k: f64,
    /// Dampest air wanted, 0 to 1.
    pub humidity_most: f64,
    /// Most carbon dioxide wanted, share.
    pub co2_most: f64,
    /// Fresh air that is kept up in any case, m3/h.
    pub least_m3_per_h: f64,
    /// What the heaters give at most, W.
    pub heaters_w: f64,
    /// What their flames give off inside.
    pub flame: Flame,
}

/// What a flame gives off inside for each kWh of its heat; all 0 for a flue or a wire.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flame {
    /// Carbon dioxide, m3/kWh.
    pub co2_m3_per_kwh: f64,
    /// Water, kg/kWh.
    pub water_kg_per_kwh: f64,
}

/// Carbon dioxide outside, share.
pub const CO2_OUTSIDE: f64 = 0.000_42;

/// How a house stands at a moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Air, °C.
    pub air_c: f64,
    /// Floor and litter, °C.
    pub floor_c: f64,
    /// Water, kg for each kg of dry air.
    pub water: f64,
    /// Carbon dioxide, share.
    pub co2: f64,
}

impl State {
    /// A house that stood empty and open: as the air outside, the floor as the ground.
    pub fn empty(house: &House, outside: &Hour) -> Option<State> {
        let air = MoistAir::new(Temperature::celsius(outside.air_c), outside.humidity, house.pressure_pa)?;
        Some(State {
            air_c: outside.air_c,
            floor_c: house.ground_c,
            water: air.humidity_ratio(),
            co2: CO2_OUTSIDE,
        })
    }
}

/// What decides how much air goes through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Binding {
    /// Nothing needs more than leaks in or is kept up in any case.
    Least,
    /// Water must go out.
    Moisture,
    /// Carbon dioxide must go out.
    CarbonDioxide,
    /// Heat must go out.
    Heat,
    /// More is needed than the opening lets through.
    Opening,
}

impl Binding {
    /// The stable name.
    pub fn name(self) -> &'static str {
        match self {
            Binding::Least => "least",
            Binding::Moisture => "moisture",
            Binding::CarbonDioxide => "carbon-dioxide",
            Binding::Heat => "heat",
            Binding::Opening => "opening",
        }
    }
}

/// Heat into the air over an hour, mean W; what goes out is below 0.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flows {
    /// From birds.
    pub birds: f64,
    /// From heaters.
    pub heaters: f64,
    /// Through the roof because of sun and sky.
    pub sun: f64,
    /// Through the roof beside that.
    pub roof: f64,
    /// Through walls.
    pub walls: f64,
    /// Through curtains and gables.
    pub curtain: f64,
    /// Through the edge of the floor.
    pub edge: f64,
    /// With fresh air.
    pub fresh_air: f64,
    /// From floor and litter.
    pub floor: f64,
    /// Taken up by the air and light things.
    pub stored: f64,
}

impl Flows {
    /// All of them with their stable names, in the order they are drawn.
    pub fn parts(&self) -> [(&'static str, f64); 10] {
        [
            ("birds", self.birds),
            ("heaters", self.heaters),
            ("sun", self.sun),
            ("roof", self.roof),
            ("walls", self.walls),
            ("curtain", self.curtain),
            ("edge", self.edge),
            ("fresh-air", self.fresh_air),
            ("floor", self.floor),
            ("stored", self.stored),
        ]
    }

    fn add(&mut self, other: &Flows, share: f64) {
        let all = [
            (&mut self.birds, other.birds),
            (&mut self.heaters, other.heaters),
            (&mut self.sun, other.sun),
            (&mut self.roof, other.roof),
            (&mut self.walls, other.walls),
            (&mut self.curtain, other.curtain),
            (&mut self.edge, other.edge),
            (&mut self.fresh_air, other.fresh_air),
            (&mut self.floor, other.floor),
            (&mut self.stored, other.stored),
        ];
        for (sum, part) in all {
            *sum += share * part;
        }
    }
}

/// An hour in the house: means over the hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HouseHour {
    /// The weather.
    pub outside: Hour,
    /// Air, °C.
    pub inside_c: f64,
    /// Floor and litter, °C.
    pub floor_c: f64,
    /// Relative humidity, 0 to 1.
    pub humidity: f64,
    /// Carbon dioxide, share.
    pub co2: f64,
    /// Fresh air, m3/h of outside air.
    pub fresh_air_m3_per_h: f64,
    /// What decides that.
    pub binding: Binding,
    /// What heaters gave, W.
    pub heaters_w: f64,
    /// What more they would have had to give to hold the target, W.
    pub short_w: f64,
    /// Open on each long side, m2.
    pub opening_m2: f64,
    /// Heat.
    pub flows: Flows,
    /// What heat, water and carbon dioxide leave over, the worst of the three, as a share of what moved.
    pub residual: f64,
}

/// Steps of an hour.
const STEPS: usize = 12;
const STEP_S: f64 = 3600.0 / STEPS as f64;

/// How much damper than outside air a house is kept where it cannot be as dry as wanted, and the dampest; our judgement.
const DAMPER: f64 = 0.1;
const DAMPEST: f64 = 0.95;

/// Rest of a sky and sun through a roof: what it resists less where heat goes down, m2K/W (ISO 6946: 0.17 less 0.10).
const DOWNWARDS_M2K_PER_W: f64 = 0.07;

/// Runs a house through hours, and gives each of them and how it stands at the end; `None` for weather or a state that cannot be.
pub fn run(
    house: &House,
    start: State,
    hours: impl IntoIterator<Item = (Hour, Flock, Wish)>,
) -> Option<(Vec<HouseHour>, State)> {
    let mut state = start;
    let ran = hours.into_iter().map(|(outside, flock, wish)| hour(house, &mut state, outside, &flock, &wish));
    Some((ran.collect::<Option<_>>()?, state))
}

/// Outside air as it is used in an hour.
struct Outside {
    air_c: f64,
    water: f64,
    /// J for each kg of dry air and K.
    heat: f64,
    /// m3 for each kg of dry air.
    volume: f64,
}

/// What is the same throughout an hour.
struct Setting<'a> {
    house: &'a House,
    outside: Outside,
    /// The roof as sun and sky make it feel, °C.
    roof_feels_c: f64,
    roof_w_per_k: f64,
    flock: &'a Flock,
    wish: &'a Wish,
}

impl Flock {
    /// Total heat, heat that warms the house, W; water, kg/s; carbon dioxide, m3/s.
    fn gives(&self, air_c: f64) -> (f64, f64, f64) {
        let air = Temperature::celsius(air_c);
        let at_20c = self.birds * self.more * bird_heat::total_at_20c(Mass::kilograms(self.each_kg));
        let is_cold = self.cold_below_c.is_some_and(|comfort| air_c < comfort);
        let correction =
            if is_cold { bird_heat::CORRECTION_OF_COLD_CHICKS } else { bird_heat::correction(air).max(0.0) };
        let total = at_20c * correction;
        let sensible = at_20c * bird_heat::sensible_share(air, correction).min(correction);
        let water = bird_heat::moisture_g_per_h(total - sensible) / 3.6e6;
        (sensible, water, bird_heat::carbon_dioxide_m3_per_h(total) / 3600.0)
    }
}

impl Setting<'_> {
    fn outer_w_per_k(&self) -> f64 {
        self.house.walls_w_per_k + self.house.curtain_w_per_k + self.house.edge_w_per_k
    }

    /// Heat that must be put in, W, to hold the air at a temperature over a floor; below 0 for what must go out.
    fn wanted(&self, air_c: f64, floor_c: f64, flow_kg_per_s: f64) -> f64 {
        let outside = self.outside.air_c;
        (self.outer_w_per_k() + flow_kg_per_s * self.outside.heat) * (air_c - outside)
            + self.roof_w_per_k * (air_c - self.roof_feels_c)
            + self.house.floor_w_per_k * (air_c - floor_c)
            - self.flock.gives(air_c).0
    }

    /// Fresh air for water and carbon dioxide at target with so much heat from flames, kg/s.
    ///
    /// Where outside air is as damp as wanted once it is warmed, it is kept a little damper than that: it cannot be drier.
    fn for_gases(&self, heaters_w: f64) -> Option<(f64, f64)> {
        let wish = self.wish;
        let (_, water, co2) = self.flock.gives(wish.target_c);
        let kwh_per_s = heaters_w / 3.6e6;
        let water = water + kwh_per_s * wish.flame.water_kg_per_kwh;
        let co2 = co2 + kwh_per_s * wish.flame.co2_m3_per_kwh;
        let of_outside = self.humidity(self.outside.water, wish.target_c);
        let humidity = wish.humidity_most.max(of_outside + DAMPER).min(DAMPEST);
        let inside = MoistAir::new(Temperature::celsius(wish.target_c), humidity, self.house.pressure_pa)?;
        let drier = inside.humidity_ratio() - self.outside.water;
        // Fog as warm as the house wants to be dries nothing: then the gases alone decide.
        let for_water = if drier > 0.0 { water / drier } else { 0.0 };
        let for_co2 = co2 / (wish.co2_most - CO2_OUTSIDE) / inside.specific_volume();
        Some((for_water, for_co2))
    }

    /// Fresh air of the hour, kg/s, what decides it, and how far the curtains are open, m2.
    fn fresh_air(&self, floor_c: f64, wind_m_per_s: f64) -> Option<(f64, Binding, f64)> {
        let (house, wish) = (self.house, self.wish);
        let mass = |m3_per_h: f64| m3_per_h / 3600.0 / self.outside.volume;
        let leaks = mass(house.leaks_m3_per_h);
        let least = leaks.max(mass(wish.least_m3_per_h));
        let decided = |heaters_w: f64| {
            let (water, co2) = self.for_gases(heaters_w)?;
            Some(if water >= co2 && water > least {
                (water, Binding::Moisture)
            } else if co2 > least {
                (co2, Binding::CarbonDioxide)
            } else {
                (least, Binding::Least)
            })
        };
        let (mut flow, mut binding) = decided(0.0)?;
        // What flames give off hangs on how long they burn, and that on the air: twice round is near enough for a curtain.
        for _ in 0..2 {
            let heaters = self.wanted(wish.target_c, floor_c, flow).clamp(0.0, wish.heaters_w);
            (flow, binding) = decided(heaters)?;
        }
        let limit_c = wish.target_c + wish.open_above_k;
        let surplus = -self.wanted(limit_c, floor_c, flow);
        if surplus > 0.0 {
            let colder = limit_c - self.outside.air_c;
            let more = if colder > 0.05 { surplus / (self.outside.heat * colder) } else { f64::INFINITY };
            (flow, binding) = (flow + more, Binding::Heat);
        }
        let drive =
            Drive { wind_m_per_s, warmer_k: (limit_c - self.outside.air_c).max(0.0), inside_c: limit_c };
        let most = leaks + drive.flow(house.opens_m2, house.opens_over_m) / self.outside.volume;
        if flow > most {
            // Heat that no opening could carry off is the opening's limit; with nothing that could, it stands wide open.
            return Some((most.max(least), Binding::Opening, house.opens_m2));
        }
        let through = (flow - leaks).max(0.0) * self.outside.volume;
        Some((flow, binding, drive.area_for(through, house.opens_over_m, house.opens_m2)))
    }
}

fn hour(house: &House, state: &mut State, outside: Hour, flock: &Flock, wish: &Wish) -> Option<HouseHour> {
    let air = MoistAir::new(Temperature::celsius(outside.air_c), outside.humidity, house.pressure_pa)?;
    // Outside film of the roof: McAdams, to 5 m/s.
    let film = 5.7 + 3.8 * outside.wind_m_per_s.min(5.0);
    let roof_feels_c =
        outside.air_c + (house.roof_absorbs * outside.sun_w_per_m2 - house.roof_to_sky_w_per_m2) / film;
    let is_down = roof_feels_c > state.air_c;
    let resists = 1.0 / house.roof_w_per_m2k + if is_down { DOWNWARDS_M2K_PER_W } else { 0.0 };
    let setting = Setting {
        house,
        outside: Outside {
            air_c: outside.air_c,
            water: air.humidity_ratio(),
            heat: air.heat_capacity(),
            volume: air.specific_volume(),
        },
        roof_feels_c,
        roof_w_per_k: house.roof_m2 / resists,
        flock,
        wish,
    };
    let (flow, binding, opening_m2) = setting.fresh_air(state.floor_c, outside.wind_m_per_s)?;
    let mut sums = Sums::default();
    for _ in 0..STEPS {
        setting.step(state, flow, &mut sums);
    }
    let share = 1.0 / STEPS as f64;
    Some(HouseHour {
        outside,
        inside_c: sums.air_c * share,
        floor_c: sums.floor_c * share,
        humidity: sums.humidity * share,
        co2: sums.co2 * share,
        fresh_air_m3_per_h: flow * setting.outside.volume * 3600.0,
        binding,
        heaters_w: sums.flows.heaters,
        short_w: sums.short_w * share,
        opening_m2,
        flows: sums.flows,
        residual: sums.residual,
    })
}

fn saturated_water(air_c: f64, pressure_pa: f64) -> f64 {
    let pressure = moist_air::saturation_pressure(Temperature::celsius(air_c));
    WATER_TO_AIR * pressure / (pressure_pa - pressure)
}

#[derive(Default)]
struct Sums {
    air_c: f64,
    floor_c: f64,
    humidity: f64,
    co2: f64,
    short_w: f64,
    flows: Flows,
    residual: f64,
}

impl Setting<'_> {
    /// One step: both bodies of heat solved together, implicitly; the heaters give what holds the target, as far as they can.
    fn step(&self, state: &mut State, flow_kg_per_s: f64, sums: &mut Sums) {
        let (house, outside) = (self.house, &self.outside);
        let before_c = state.air_c;
        let (birds, water, co2) = self.flock.gives(before_c);
        let with_air = flow_kg_per_s * outside.heat;
        let (light, heavy) = (house.light_j_per_k / STEP_S, house.floor_j_per_k / STEP_S);
        let floor_holds = heavy + house.floor_w_per_k + house.ground_w_per_k;
        let floor_brings = heavy * state.floor_c + house.ground_w_per_k * house.ground_c;
        let holds = light + self.outer_w_per_k() + with_air + self.roof_w_per_k + house.floor_w_per_k
            - house.floor_w_per_k.powi(2) / floor_holds;
        let brings = light * state.air_c
            + birds
            + (self.outer_w_per_k() + with_air) * outside.air_c
            + self.roof_w_per_k * self.roof_feels_c
            + house.floor_w_per_k * floor_brings / floor_holds;
        let wanted = self.wish.target_c * holds - brings;
        let heaters = wanted.clamp(0.0, self.wish.heaters_w);
        let air_c = (brings + heaters) / holds;
        let floor_c = (floor_brings + house.floor_w_per_k * air_c) / floor_holds;
        let flows = Flows {
            birds,
            heaters,
            sun: self.roof_w_per_k * (self.roof_feels_c - outside.air_c),
            roof: self.roof_w_per_k * (outside.air_c - air_c),
            walls: house.walls_w_per_k * (outside.air_c - air_c),
            curtain: house.curtain_w_per_k * (outside.air_c - air_c),
            edge: house.edge_w_per_k * (outside.air_c - air_c),
            fresh_air: with_air * (outside.air_c - air_c),
            floor: house.floor_w_per_k * (floor_c - air_c),
            stored: light * (state.air_c - air_c),
        };
        let heat_left = closes(&flows.parts().map(|(_, part)| part));
        let (water, water_left) = self.water_after(state.water, water, heaters, flow_kg_per_s, air_c);
        let (co2, co2_left) = self.co2_after(state.co2, co2, heaters, flow_kg_per_s);
        *state = State { air_c, floor_c, water, co2 };
        sums.air_c += air_c;
        sums.floor_c += floor_c;
        sums.humidity += self.humidity(water, air_c);
        sums.co2 += co2;
        // Held at target, light things take nothing up: what they would take on the way there is no lack. Nor is one above it.
        let holding = wanted - light * (self.wish.target_c - before_c);
        if wanted > heaters {
            sums.short_w += (holding - heaters).max(0.0);
        }
        sums.flows.add(&flows, 1.0 / STEPS as f64);
        sums.residual = sums.residual.max(heat_left).max(water_left).max(co2_left);
    }

    /// Water in the air after a step; what is above saturation falls out as dew.
    fn water_after(&self, before: f64, given: f64, heaters_w: f64, flow: f64, air_c: f64) -> (f64, f64) {
        let holds = self.house.air_m3 / self.outside.volume / STEP_S;
        let given = given + heaters_w / 3.6e6 * self.wish.flame.water_kg_per_kwh;
        let after = (holds * before + given + flow * self.outside.water) / (holds + flow);
        let kept = after.min(saturated_water(air_c, self.house.pressure_pa));
        let dew = (holds + flow) * (after - kept);
        (kept, closes(&[holds * (before - kept), given, flow * (self.outside.water - kept), -dew]))
    }

    /// Relative humidity, from water for each kg of air back to pressures.
    fn humidity(&self, water: f64, air_c: f64) -> f64 {
        let vapour = self.house.pressure_pa * water / (WATER_TO_AIR + water);
        vapour / moist_air::saturation_pressure(Temperature::celsius(air_c))
    }

    fn co2_after(&self, before: f64, given: f64, heaters_w: f64, flow: f64) -> (f64, f64) {
        let (holds, through) = (self.house.air_m3 / STEP_S, flow * self.outside.volume);
        let given = given + heaters_w / 3.6e6 * self.wish.flame.co2_m3_per_kwh;
        let after = (holds * before + given + through * CO2_OUTSIDE) / (holds + through);
        (after, closes(&[holds * (before - after), given, through * (CO2_OUTSIDE - after)]))
    }
}

/// What some flows leave over, as a share of all that moved.
fn closes(flows: &[f64]) -> f64 {
    let moved: f64 = flows.iter().map(|flow| flow.abs()).sum();
    if moved > 0.0 { flows.iter().sum::<f64>().abs() / moved } else { 0.0 }
}

/// How a house that stood empty and open stands after hours of weather with its heaters lit; `None` for weather that cannot be.
pub fn warmed(house: &House, hours: &[Hour], wish: &Wish) -> Option<State> {
    let nobody = Flock { birds: 0.0, each_kg: 0.04, more: 1.0, cold_below_c: None };
    let start = State::empty(house, hours.first()?)?;
    run(house, start, hours.iter().map(|hour| (*hour, nobody, *wish))).map(|(_, end)| end)
}

#[cfg(test)]
mod tests;
