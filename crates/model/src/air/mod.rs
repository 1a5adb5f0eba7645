//! The air of an open-sided house, hour by hour: heat, water and carbon dioxide that come in, go out and stay.
//!
//! Two bodies hold heat (the air; litter with the top of the slab), one holds carbon dioxide (the air), two hold water (the
//! air, the litter). Birds may live in a covered ring of their own, whose air is warmer than that of the house by what the
//! cover holds back; a ring stores no heat. Within an hour the weather, the ventilation and the heater are held, and the
//! balances are solved exactly, so nothing depends on the length of a step.

pub mod ensemble;
pub mod fire;
pub mod fit;
mod hour;
pub mod litter_water;
pub mod opening;
pub mod preheat;
pub mod sol_air;
pub mod steady;
pub mod stress;
pub mod weather;

pub use fire::Fuel;
pub use hour::run;
use litter_water::Intake;

/// The weather of an hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hour {
    /// Air, °C; -30 to 55.
    pub outside_c: f64,
    /// Relative humidity, share; 0 to 1.
    pub humidity: f64,
    /// Wind at the height of the openings, m/s; 0 to 30.
    pub wind_m_s: f64,
    /// Sun on level ground, W/m2; 0 to 1500.
    pub sun_w_per_m2: f64,
    /// Pressure, Pa; `None` for that of the house's height above the sea.
    pub pressure_pa: Option<f64>,
}

/// A covered ring in which chicks live at first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BroodingZone {
    /// What its cover and sides let through to the house, leaks included, W/K; above 0.
    pub loss_w_per_k: f64,
    /// It is taken away at this day of age.
    pub until_day: i32,
}

/// A house: everything its air meets. All figures of the whole house.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct House {
    /// Floor inside, m; 1 to 200.
    pub length_m: f64,
    /// Floor inside, m; 1 to 50.
    pub width_m: f64,
    /// Mean height of the air, floor to roof, m; 1 to 10.
    pub mean_height_m: f64,
    /// Solid walls and gables, W/K: sum of area × U.
    pub walls_w_per_k: f64,
    /// Curtains, closed, W/K. An open one is counted as much: it holds back no more.
    pub curtain_w_per_k: f64,
    /// Roof, W/K: area × U.
    pub roof_w_per_k: f64,
    /// Share of sunshine that the roof takes up, 0 to 1.
    pub roof_absorptance: f64,
    /// Whether water is kept running over the roof, see [`sol_air::wet_above_air`].
    pub roof_is_wet: bool,
    /// What the roof radiates, 0 to 1: 0.25 bright metal, 0.9 nearly all else; 0 leaves the sky out.
    pub roof_emittance: f64,
    /// Edge of the floor, W/K: 1.26 W/m K of bare slab edge times the way round.
    pub perimeter_w_per_k: f64,
    /// Middle of the floor to deep ground, W/K: 0.3 to 0.5 W/m2K (from memory).
    pub ground_w_per_k: f64,
    /// Deep ground, °C: the mean of the year outside.
    pub ground_c: f64,
    /// Free inlet of one side with the curtain fully open, m2, as much outlet on the other; 0 for none.
    pub opening_m2: f64,
    /// From the middle of the low opening to the level where nothing flows, m.
    pub opening_height_m: f64,
    /// Share of the wind that enters, see [`opening::effectiveness_at`]; times 0.8 for wire, 0.3 to 0.6 for insect net.
    pub wind_effectiveness: f64,
    /// Air changes an hour with all closed; 0.5 to 3 in a small farm house, up to 10 in wind (our judgement).
    pub leakage_per_h: f64,
    /// Heat held by litter and the top of the slab, J/K; above 0: 18 to 25 and 100 kJ/m2K.
    pub mass_j_per_k: f64,
    /// Between that mass and the air, W/K: 5 to 8 W/m2K.
    pub mass_w_per_k: f64,
    /// Dry matter of the litter at the start, kg; above 0.
    pub litter_dry_kg: f64,
    /// Water in it at the start, kg.
    pub litter_water_kg: f64,
    /// Above the sea, m.
    pub altitude_m: f64,
    /// North positive, degrees.
    pub latitude_deg: f64,
    /// The ring, where there is one.
    pub zone: Option<BroodingZone>,
}

impl House {
    /// Floor, m2.
    pub fn floor_m2(&self) -> f64 {
        self.length_m * self.width_m
    }

    /// Air, m3.
    pub fn air_m3(&self) -> f64 {
        self.floor_m2() * self.mean_height_m
    }
}

/// Birds by day of age from day 0; the last value holds on.
#[derive(Clone, Debug, PartialEq)]
pub struct Flock {
    /// How many.
    pub birds: f64,
    /// One bird, kg, by day.
    pub mass_kg: Vec<f64>,
    /// What one takes in, by day.
    pub intake: Vec<Intake>,
    /// Heat of these birds over that of the birds of 2002: 1.1, from 1.0 to 1.25 (from memory).
    pub heat_factor: f64,
    /// Share of what they give to the house that goes straight into the litter under them, 0 to 0.9: 0.3. In still air 0.6 of
    /// the sensible heat of people is radiant (ASHRAE Fundamentals 2017, chapter 18, from memory), and a lying bird radiates
    /// half of it downwards.
    pub to_litter: f64,
    /// How much the hours of the day differ, see [`crate::bird_heat::activity`].
    pub activity: f64,
    /// The stillest hour of the day.
    pub stillest_h: f64,
}

/// How the house is run.
#[derive(Clone, Debug, PartialEq)]
pub struct Management {
    /// Day of age in the first hour; negative before placement.
    pub first_day: i32,
    /// Hour of the day of the first hour, 0 to 23.
    pub first_hour: u32,
    /// Hours before placement in which the house is already held warm.
    pub preheat_hours: f64,
    /// Wanted temperature by day of age from day 0, °C; the last value holds on.
    pub target_c: Vec<f64>,
    /// How far above that the house may go before it is opened for heat, and how far below it is let cool for the sake of dry
    /// air, K; above 0.
    pub band_k: f64,
    /// Most relative humidity wanted, share; 0.1 to 1.
    pub humidity_most: f64,
    /// Most carbon dioxide wanted, parts in a million; above 500.
    pub co2_most_ppm: f64,
    /// Least ventilation, m3/h for each kg^0.75 of live weight.
    pub minimum_m3_h: f64,
    /// All brooders, kW.
    pub heater_kw: f64,
    /// What they run on.
    pub fuel: Fuel,
    /// Least opening, m2.
    pub opening_least_m2: f64,
    /// Most opening, m2, at most that of the house.
    pub opening_most_m2: f64,
    /// Opening by the hour of the day where somebody has set it by hand, m2, at most that of the house: then it follows nothing
    /// else. `None` where it follows what is wanted.
    pub held_m2: Option<[f64; 24]>,
}

/// What sets the ventilation of an hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Binding {
    /// The house would be too warm.
    Heat,
    /// It would be too damp.
    Moisture,
    /// Too much carbon dioxide would gather.
    CarbonDioxide,
    /// The least ventilation, or what leaks in or the least opening lets in anyway.
    Minimum,
    /// More is wanted than wind and warmth drive through the widest opening.
    Wind,
}

impl Binding {
    /// The stable name.
    pub fn name(self) -> &'static str {
        match self {
            Binding::Heat => "heat",
            Binding::Moisture => "moisture",
            Binding::CarbonDioxide => "carbon-dioxide",
            Binding::Minimum => "minimum",
            Binding::Wind => "wind",
        }
    }
}

/// Heat of an hour by way, W, mean of the hour; what warms the house counts above 0. They sum to `stored`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HeatFlows {
    /// Birds, sensible.
    pub birds: f64,
    /// Brooders.
    pub heater: f64,
    /// Sun on the roof, less what the sky takes.
    pub sun: f64,
    /// Walls and the edge of the floor.
    pub walls: f64,
    /// Curtains.
    pub curtain: f64,
    /// Roof, as if without sun.
    pub roof: f64,
    /// Deep ground.
    pub floor: f64,
    /// Air that comes and goes.
    pub ventilation: f64,
    /// Taken by water that leaves the litter.
    pub evaporation: f64,
    /// Gone into air and mass.
    pub stored: f64,
}

/// An hour of a house. Means of the hour where nothing else is said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HouseHour {
    /// Day of age.
    pub day: i32,
    /// Hour of the day.
    pub hour: u32,
    /// Wanted, °C; `None` before pre-heating.
    pub target_c: Option<f64>,
    /// Where the birds are, °C: in the ring, where there is one.
    pub inside_c: f64,
    /// The house around the ring, °C.
    pub house_c: f64,
    /// Litter and slab, °C.
    pub mass_c: f64,
    /// Where the birds are, share.
    pub humidity: f64,
    /// Parts in a million.
    pub co2_ppm: f64,
    /// Outside air, m3/h, leaks included.
    pub ventilation_m3_h: f64,
    /// What sets it.
    pub binding: Binding,
    /// Outside air is too damp for the wanted humidity, however much of it comes in.
    pub cannot_dry: bool,
    /// Heat that would hold the wanted temperature, kW.
    pub heater_needed_kw: f64,
    /// Heat given, kW.
    pub heater_kw: f64,
    /// What the brooders are too small by, kW.
    pub shortfall_kw: f64,
    /// Fuel, kg; kWh of electricity.
    pub fuel: f64,
    /// Opening of one side, m2.
    pub opening_m2: f64,
    /// Speed of the air over the birds, m/s: the flow over the long section of the house.
    pub air_speed_m_s: f64,
    /// Heat by way.
    pub heat: HeatFlows,
    /// Water that dripped from the roof, kg.
    pub condensed_kg: f64,
    /// Water that left the litter, kg; below 0 where it took some up.
    pub evaporated_kg: f64,
    /// Moisture of the litter at the end, share on a wet basis.
    pub litter_moisture: f64,
    /// Oxygen, share of dry air.
    pub oxygen: f64,
    /// Carbon monoxide that the fire would even out at, parts in a million: an estimate for a warning, never an all-clear.
    pub carbon_monoxide_ppm: f64,
    /// A fire burns in a house whose opening is below half a hundredth of the floor (our judgement), or its carbon monoxide
    /// passes 9 parts in a million (WHO 2010, 8 hours, from memory).
    pub fire_in_closed_house: bool,
}

/// How far balances are from closing, of the largest part of each, in the worst hour.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Residual {
    /// Heat.
    pub heat: f64,
    /// Water of air and litter.
    pub water: f64,
    /// Carbon dioxide.
    pub co2: f64,
}

/// A house through its weather.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// One for each hour of weather.
    pub hours: Vec<HouseHour>,
    /// How well the balances close.
    pub residual: Residual,
}

/// A figure that cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{field} is {value}, not {low} … {high}")]
pub struct AirFault {
    /// Its name.
    pub field: &'static str,
    /// What was given.
    pub value: f64,
    /// The least allowed.
    pub low: f64,
    /// The most allowed.
    pub high: f64,
    /// The hour of weather it is in, from 0.
    pub hour: Option<usize>,
}

/// Everything a run needs is in range.
///
/// # Errors
/// The first figure that is not.
pub fn check(
    house: &House,
    flock: &Flock,
    management: &Management,
    weather: &[Hour],
) -> Result<(), AirFault> {
    const MUCH: f64 = 1e9;
    const TINY: f64 = 1e-6;
    let zone = house.zone.map_or(1.0, |zone| zone.loss_w_per_k);
    let m = management;
    let mut figures = vec![
        ("length_m", house.length_m, 1.0, 200.0),
        ("width_m", house.width_m, 1.0, 50.0),
        ("mean_height_m", house.mean_height_m, 1.0, 10.0),
        ("walls_w_per_k", house.walls_w_per_k, 0.0, MUCH),
        ("curtain_w_per_k", house.curtain_w_per_k, 0.0, MUCH),
        ("roof_w_per_k", house.roof_w_per_k, 0.0, MUCH),
        ("roof_absorptance", house.roof_absorptance, 0.0, 1.0),
        ("roof_emittance", house.roof_emittance, 0.0, 1.0),
        ("perimeter_w_per_k", house.perimeter_w_per_k, 0.0, MUCH),
        ("ground_w_per_k", house.ground_w_per_k, 0.0, MUCH),
        ("ground_c", house.ground_c, -30.0, 55.0),
        ("opening_m2", house.opening_m2, 0.0, MUCH),
        ("opening_height_m", house.opening_height_m, 0.0, 10.0),
        ("wind_effectiveness", house.wind_effectiveness, 0.0, 1.0),
        ("leakage_per_h", house.leakage_per_h, 0.01, 100.0),
        ("mass_j_per_k", house.mass_j_per_k, 1.0, 1e12),
        ("mass_w_per_k", house.mass_w_per_k, 0.0, MUCH),
        ("litter_dry_kg", house.litter_dry_kg, TINY, MUCH),
        ("litter_water_kg", house.litter_water_kg, 0.0, MUCH),
        ("altitude_m", house.altitude_m, -500.0, 6000.0),
        ("latitude_deg", house.latitude_deg, -90.0, 90.0),
        ("zone.loss_w_per_k", zone, TINY, MUCH),
        ("birds", flock.birds, 0.0, MUCH),
        ("heat_factor", flock.heat_factor, 0.5, 2.0),
        ("to_litter", flock.to_litter, 0.0, 0.9),
        ("activity", flock.activity, 0.0, 0.9),
        ("stillest_h", flock.stillest_h, 0.0, 24.0),
        ("mass_kg (days)", flock.mass_kg.len() as f64, 1.0, MUCH),
        ("intake (days)", flock.intake.len() as f64, 1.0, MUCH),
        ("target_c (days)", m.target_c.len() as f64, 1.0, MUCH),
        ("preheat_hours", m.preheat_hours, 0.0, 1000.0),
        ("band_k", m.band_k, 0.01, 20.0),
        ("humidity_most", m.humidity_most, 0.1, 1.0),
        ("co2_most_ppm", m.co2_most_ppm, 500.0, 1e5),
        ("minimum_m3_h", m.minimum_m3_h, 0.0, 100.0),
        ("heater_kw", m.heater_kw, 0.0, 1e5),
        ("opening_most_m2", m.opening_most_m2, 0.0, house.opening_m2),
        ("opening_least_m2", m.opening_least_m2, 0.0, m.opening_most_m2),
    ];
    let held = m.held_m2.iter().flatten();
    figures.extend(held.map(|&opening| ("held_m2", opening, 0.0, house.opening_m2)));
    figures.extend(flock.mass_kg.iter().map(|&kg| ("mass_kg", kg, 0.01, 10.0)));
    figures.extend(m.target_c.iter().map(|&c| ("target_c", c, 0.0, 45.0)));
    for day in &flock.intake {
        figures.push(("feed_kg", day.feed_kg, 0.0, 2.0));
        figures.push(("water_kg", day.water_kg, 0.0, 5.0));
        figures.push(("gain_kg", day.gain_kg, -1.0, 1.0));
    }
    let within = |figures: &[(&'static str, f64, f64, f64)], hour| {
        let wrong = figures.iter().find(|(_, value, low, high)| !(*low..=*high).contains(value));
        wrong.map_or(Ok(()), |&(field, value, low, high)| Err(AirFault { field, value, low, high, hour }))
    };
    within(&figures, None)?;
    for (at, hour) in weather.iter().enumerate() {
        let figures = [
            ("outside_c", hour.outside_c, -30.0, 55.0),
            ("humidity", hour.humidity, 0.0, 1.0),
            ("wind_m_s", hour.wind_m_s, 0.0, 30.0),
            ("sun_w_per_m2", hour.sun_w_per_m2, 0.0, 1500.0),
            ("pressure_pa", hour.pressure_pa.unwrap_or(101_325.0), 45_000.0, 110_000.0),
        ];
        within(&figures, Some(at))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests;
