use proptest::prelude::*;

use super::litter_water::Intake;
use super::*;
use crate::bird_heat;
use quantity::{Mass, Temperature};

/// The house of the worked cool night (a table of worked houses): 15 m × 8 m, block, curtain, iron with a mat ceiling.
fn house() -> House {
    House {
        length_m: 15.0,
        width_m: 8.0,
        mean_height_m: 2.8,
        walls_w_per_k: 179.8,
        curtain_w_per_k: 283.2,
        roof_w_per_k: 254.4,
        roof_absorptance: 0.7,
        roof_is_wet: false,
        roof_emittance: 0.0,
        perimeter_w_per_k: 57.96,
        ground_w_per_k: 0.0,
        ground_c: 20.0,
        opening_m2: 20.0,
        opening_height_m: 0.8,
        wind_effectiveness: 0.5,
        leakage_per_h: 0.5,
        mass_j_per_k: 15e6,
        mass_w_per_k: 720.0,
        litter_dry_kg: 600.0,
        litter_water_kg: 100.0,
        altitude_m: 1000.0,
        latitude_deg: -13.6,
        zone: None,
    }
}

fn flock(birds: f64, kg: f64) -> Flock {
    Flock {
        birds,
        mass_kg: vec![kg],
        intake: vec![Intake { feed_kg: 0.12, water_kg: 0.22, gain_kg: 0.07 }],
        heat_factor: 1.0,
        to_litter: 0.3,
        activity: 0.0,
        stillest_h: 2.0,
    }
}

fn management(target: f64, heater_kw: f64) -> Management {
    Management {
        first_day: 30,
        first_hour: 0,
        preheat_hours: 48.0,
        target_c: vec![target],
        band_k: 1.0,
        humidity_most: 0.7,
        co2_most_ppm: 3000.0,
        minimum_m3_h: 0.2,
        heater_kw,
        fuel: Fuel::ELECTRICITY,
        opening_least_m2: 0.0,
        opening_most_m2: 20.0,
        held_m2: None,
    }
}

fn weather(outside_c: f64, hours: usize) -> Vec<Hour> {
    let hour =
        Hour { outside_c, humidity: 0.6, wind_m_s: 1.0, sun_w_per_m2: 0.0, pressure_pa: Some(90_000.0) };
    vec![hour; hours]
}

/// Without birds, with a fixed opening: for cases with an exact answer.
fn empty(opening: f64) -> Management {
    let fixed = Management { opening_least_m2: opening, opening_most_m2: opening, ..management(24.0, 0.0) };
    Management { preheat_hours: 0.0, first_day: -365, ..fixed }
}

#[test]
fn nothing_inside_follows_outside() {
    let run = run(&house(), &flock(800.0, 1.2), &empty(1.0), &weather(18.0, 24)).unwrap();
    for hour in &run.hours {
        assert!((hour.inside_c - 18.0).abs() < 0.3, "{hour:?}");
    }
    let dry = House { litter_water_kg: 0.0, ..house() };
    let run = super::run(&dry, &flock(800.0, 1.2), &empty(1.0), &weather(18.0, 2000)).unwrap();
    let last = run.hours.last().unwrap();
    assert!((last.inside_c - 18.0).abs() < 0.3 && last.heater_needed_kw == 0.0);
}

/// An empty dry house with a shut curtain whose air and mass hardly part: t = to + (t0 − to) e^(−x/τ), τ = C/H, exact for one
/// lump. The air's own heat is part of the lump.
#[test]
fn one_lump_cools_as_the_exact_answer() {
    let lump = House { mass_w_per_k: 1e7, litter_water_kg: 0.0, leakage_per_h: 0.01, ..house() };
    let mut cold = weather(14.0, 12);
    cold[0].outside_c = 24.0;
    for hour in &mut cold {
        // No water to take up, so that none of its heat is in the case.
        hour.humidity = 0.0;
    }
    let run = run(&lump, &flock(0.0, 1.2), &empty(0.0), &cold).unwrap();
    let held = lump.mass_j_per_k + 1200.0 * lump.air_m3();
    let volume = 287.042 * (14.0 + 273.15) / 90_000.0;
    let flow = lump.air_m3() * 0.01 / 3600.0 / volume;
    let loss = 179.8 + 283.2 + 254.4 + 57.96 + flow * 1006.0;
    for (after, hour) in run.hours.iter().enumerate().skip(1) {
        // Mean of an exponential over the hour from `after − 1` to `after`.
        let rate = loss / held * 3600.0;
        let start = 10.0 * (-rate * (after as f64 - 1.0)).exp();
        let mean = 14.0 + start * (1.0 - (-rate).exp()) / rate;
        assert!((hour.mass_c - mean).abs() < 1e-3, "{after}: {} {mean}", hour.mass_c);
    }
}

/// A steady cool night by hand: after many hours the heater covers what leaves less what 800 birds give, by the bird-level
/// split, and the litter's evaporation is paid from the same heat.
#[test]
fn a_steady_night_by_hand() {
    let run = run(&house(), &flock(800.0, 1.2), &management(24.0, 60.0), &weather(14.0, 240)).unwrap();
    let last = run.hours.last().unwrap();
    assert!((last.inside_c - 24.0).abs() < 1e-5, "{last:?}");
    let air = Temperature::celsius(24.0);
    let birds = 800.0 * bird_heat::sensible_of_bird_alone(Mass::kilograms(1.2), air);
    let outside = crate::moist_air::MoistAir::new(Temperature::celsius(14.0), 0.6, 90_000.0).unwrap();
    let flow = last.ventilation_m3_h / 3600.0 / outside.specific_volume();
    let loss = (775.36 + flow * outside.heat_capacity()) * 10.0;
    let evaporation = last.evaporated_kg / 3600.0 * (2_501_000.0 - 2361.0 * last.mass_c);
    let heater = (loss + evaporation - birds) / 1000.0;
    assert!((last.heater_kw - heater).abs() < 0.05, "{} by hand {heater}", last.heater_kw);
    assert_eq!(last.binding, Binding::Moisture);
    assert!((last.humidity - 0.70).abs() < 0.005, "{}", last.humidity);
}

#[test]
fn a_brooder_too_small_says_by_how_much() {
    let run = run(&house(), &flock(800.0, 1.2), &management(24.0, 2.0), &weather(10.0, 48)).unwrap();
    let last = run.hours.last().unwrap();
    assert!(last.inside_c < 23.0 && last.heater_kw == 2.0);
    assert!((last.heater_needed_kw - 2.0 - last.shortfall_kw).abs() < 1e-9 && last.shortfall_kw > 1.0);
}

/// Four days of hot afternoons.
fn hot_days(coldest_c: f64) -> Vec<Hour> {
    let day = weather::Day {
        coldest_c,
        warmest_c: 34.0,
        dew_below_k: 2.0,
        wind_m_per_s: 1.5,
        cloud: 0.0,
        latitude_deg: -13.6,
        day_of_year: 299.0,
    };
    std::iter::repeat_n(day.hours(), 4).flatten().collect()
}

/// Grown birds without heaters on a cold night after a hot day: the house is not aired for damp until it is cold.
#[test]
fn warmth_comes_before_dryness() {
    let open = House { roof_emittance: 0.9, ..house() };
    let unheated = Management { first_day: 40, ..management(20.0, 0.0) };
    let run = run(&open, &flock(900.0, 1.8), &unheated, &hot_days(13.0)).unwrap();
    for hour in &run.hours[24..] {
        assert!(hour.inside_c > 20.0 - unheated.band_k - 0.1, "{hour:?}");
        assert!(hour.co2_ppm < unheated.co2_most_ppm + 50.0, "{hour:?}");
    }
    assert!(
        run.hours.iter().any(|hour| hour.humidity > unheated.humidity_most + 0.02),
        "at the price of damp"
    );
}

/// Grown birds through a damp night: where air outside is too damp for what is wanted the house is aired all the
/// same and never drips.
#[test]
fn a_damp_night_is_aired() {
    let unheated = Management { first_day: 40, ..management(20.0, 0.0) };
    // A bare iron roof.
    let open = House { roof_emittance: 0.9, roof_w_per_k: 900.0, ..house() };
    let run = run(&open, &flock(800.0, 1.9), &unheated, &hot_days(17.0)).unwrap();
    assert!(run.hours[24..].iter().any(|hour| hour.cannot_dry && hour.inside_c < 21.0), "a damp night");
    for hour in &run.hours[24..] {
        assert!(hour.humidity < 0.95 && hour.condensed_kg == 0.0, "{hour:?}");
    }
}

/// An evening a little warmer than the cool slab makes the house: birds that are too warm are not shut up in still air for it.
#[test]
fn too_warm_birds_get_moving_air() {
    let cool = House { ground_w_per_k: 1500.0, ground_c: 21.5, ..house() };
    let unheated = Management { first_day: 40, ..management(20.0, 0.0) };
    let run = run(&cool, &flock(60.0, 2.0), &unheated, &weather(24.0, 24)).unwrap();
    for hour in &run.hours[12..] {
        assert!(hour.inside_c > 21.5 && hour.opening_m2 > 0.999 * cool.opening_m2, "{hour:?}");
    }
}

#[test]
fn charcoal_in_a_closed_house_is_a_danger() {
    let coal = Management { fuel: named("charcoal"), first_day: 1, ..management(32.0, 20.0) };
    let run = run(&house(), &flock(800.0, 0.06), &coal, &weather(12.0, 24)).unwrap();
    let last = run.hours.last().unwrap();
    assert!(last.fire_in_closed_house && last.carbon_monoxide_ppm > 100.0, "{last:?}");
    assert!(last.oxygen < 0.2095);
    let wire = Management { fuel: Fuel::ELECTRICITY, ..coal };
    let run = super::run(&house(), &flock(800.0, 0.06), &wire, &weather(12.0, 24)).unwrap();
    assert!(run.hours.iter().all(|hour| !hour.fire_in_closed_house && hour.carbon_monoxide_ppm == 0.0));
}

#[test]
fn a_covered_ring_asks_for_less() {
    let chicks = flock(500.0, 0.06);
    let warm = Management { first_day: 1, ..management(32.0, 60.0) };
    let zone = Some(BroodingZone { loss_w_per_k: 60.0, until_day: 14 });
    let whole = run(&house(), &chicks, &warm, &weather(16.0, 48)).unwrap();
    let ring = run(&House { zone, ..house() }, &chicks, &warm, &weather(16.0, 48)).unwrap();
    let (whole, ring) = (whole.hours[47], ring.hours[47]);
    assert!((ring.inside_c - 32.0).abs() < 1e-5 && ring.house_c < 20.0);
    assert!(ring.heater_kw < whole.heater_kw / 4.0, "{} {}", ring.heater_kw, whole.heater_kw);
}

/// Before placement, litter warms more slowly than air, and a brooder that is too small never gets there.
#[test]
fn litter_takes_its_time() {
    let (chicks, cold) = (flock(500.0, 0.04), weather(14.0, 1)[0]);
    let dry = House { litter_water_kg: 60.0, ..house() };
    let at = |kw| preheat::hours(&dry, &chicks, &management(32.0, kw), &cold, 3.0).unwrap();
    let (strong, weak) = (at(60.0).unwrap(), at(19.0).unwrap());
    assert!((6..48).contains(&strong) && weak > strong, "{strong} {weak}");
    assert_eq!(at(5.0), None);
}

/// A member at the middle of every law is the run itself; warmer weather and a tighter house ask for less heat.
#[test]
fn the_middle_member_is_the_run() {
    let (birds, warm, cool) = (flock(800.0, 0.3), management(28.0, 40.0), weather(12.0, 48));
    let whole = run(&house(), &birds, &warm, &cool).unwrap();
    let at = |normal| ensemble::Perturbation::at(normal).run(&house(), &birds, &warm, &cool).unwrap();
    assert_eq!(at([0.0; 6]), whole);
    let heat = |run: &Run| run.hours.iter().map(|hour| hour.heater_kw).sum::<f64>();
    assert!(heat(&at([0.0, 0.0, 0.0, 0.0, 0.0, 1.0])) < heat(&whole));
    assert!(heat(&at([0.0, -1.0, 0.0, 0.0, 0.0, 0.0])) < heat(&whole));
}

#[test]
fn a_hot_still_day_is_counted() {
    let hot = Hour { outside_c: 36.0, humidity: 0.5, wind_m_s: 0.3, sun_w_per_m2: 800.0, pressure_pa: None };
    let run = run(&house(), &flock(1200.0, 2.4), &management(21.0, 0.0), &[hot; 12]).unwrap();
    let bands = stress::hours_in_bands(&run.hours, 1000.0);
    assert_eq!(bands.iter().sum::<usize>(), 12);
    assert!(bands[4] >= 6, "{bands:?}");
    assert_eq!(run.hours[6].binding, Binding::Wind);
}

#[test]
fn what_cannot_be_is_named() {
    let open = Management { opening_most_m2: 30.0, ..management(24.0, 0.0) };
    let fault = run(&house(), &flock(8.0, 1.0), &open, &weather(14.0, 2)).unwrap_err();
    assert_eq!(fault.to_string(), "opening_most_m2 is 30, not 0 … 20");
    let mut bad = weather(14.0, 3);
    bad[2].outside_c = f64::NAN;
    let fault = run(&house(), &flock(8.0, 1.0), &management(24.0, 0.0), &bad).unwrap_err();
    assert_eq!((fault.field, fault.hour), ("outside_c", Some(2)));
}

fn any_weather(hours: usize) -> impl Strategy<Value = Vec<Hour>> {
    let hour = (2.0..40.0f64, 0.1..1.0f64, 0.0..6.0f64, 0.0..1000.0f64).prop_map(
        |(outside_c, humidity, wind_m_s, sun_w_per_m2)| Hour {
            outside_c,
            humidity,
            wind_m_s,
            sun_w_per_m2,
            pressure_pa: None,
        },
    );
    proptest::collection::vec(hour, hours)
}

fn named(name: &str) -> Fuel {
    Fuel::named(name).unwrap().unwrap()
}

fn any_fuel() -> impl Strategy<Value = Fuel> {
    proptest::sample::select(vec!["lpg", "firewood", "charcoal", "electricity"]).prop_map(named)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Heat, water and carbon dioxide close in every hour, whatever the weather jumps to.
    #[test]
    fn balances_close(
        weather in any_weather(72), birds in 0.0..2000.0f64, kg in 0.04..3.0f64, kw in 0.0..30.0f64,
        day in -1..40i32, fuel in any_fuel(), ring in proptest::option::of(20.0..200.0f64),
    ) {
        let zone = ring.map(|loss_w_per_k| BroodingZone { loss_w_per_k, until_day: 14 });
        let house = House { zone, ground_w_per_k: 40.0, roof_emittance: 0.9, ..house() };
        let management = Management { first_day: day, fuel, ..management(28.0, kw) };
        let run = run(&house, &flock(birds, kg), &management, &weather).unwrap();
        prop_assert!(run.residual.heat < 1e-9, "{:?}", run.residual);
        prop_assert!(run.residual.water < 1e-9, "{:?}", run.residual);
        prop_assert!(run.residual.co2 < 1e-9, "{:?}", run.residual);
        for hour in &run.hours {
            prop_assert!(hour.inside_c.is_finite() && (0.0..=1.0).contains(&hour.humidity));
            prop_assert!(hour.opening_m2 <= 20.0 + 1e-6 && hour.ventilation_m3_h > 0.0);
        }
    }

    /// More opening never warms a house that is warmer than outside. Litter is dry, so that the air's drying does not pay.
    #[test]
    fn more_opening_never_warms_a_warm_house(
        outside in 5.0..38.0f64, wind in 0.0..5.0f64, sun in 0.0..1000.0f64, birds in 100.0..1500.0f64,
        opening in 0.1..15.0f64, more in 0.1..5.0f64,
    ) {
        let hour = Hour { outside_c: outside, humidity: 0.5, wind_m_s: wind, sun_w_per_m2: sun, pressure_pa: None };
        let house = House { litter_water_kg: 0.0, ..house() };
        let at = |opening: f64| {
            let fixed = Management { opening_least_m2: opening, opening_most_m2: opening, ..management(24.0, 0.0) };
            let still = Flock { intake: vec![Intake { feed_kg: 0.0, water_kg: 0.0, gain_kg: 0.0 }], ..flock(birds, 1.5) };
            run(&house, &still, &fixed, &vec![hour; 12]).unwrap().hours[11].house_c
        };
        let (less, wider) = (at(opening), at(opening + more));
        prop_assert!(less < outside || wider <= less + 1e-4, "{less} {wider} outside {outside}");
    }
}

/// A run of normal draws that is the same in every test.
struct Draws(u64);

impl Draws {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64 + 0.5) / (1u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        (-2.0 * self.uniform().ln()).sqrt() * (std::f64::consts::TAU * self.uniform()).cos()
    }
}

fn days(count: usize) -> Vec<Hour> {
    let sun = |hour: usize| (std::f64::consts::PI * (hour as f64 - 6.0) / 12.0).sin().max(0.0);
    let hour = |at: usize| Hour {
        outside_c: 12.0 + 9.0 * sun(at % 24) + (at / 24 % 5) as f64,
        humidity: 0.6,
        wind_m_s: 0.5 + 2.0 * sun(at % 24),
        sun_w_per_m2: 850.0 * sun(at % 24),
        pressure_pa: None,
    };
    (0..24 * count).map(hour).collect()
}

/// Houses drawn from the priors, read with errors that hold half a day: nine tenths of the intervals hold the truth, and
/// within what 3 × 60 such chances can differ by.
#[test]
fn intervals_cover_at_their_rate() {
    let (birds, shut, weather) =
        (flock(500.0, 1.2), Management { opening_most_m2: 0.0, ..management(20.0, 0.0) }, days(14));
    let mut draws = Draws(7);
    let (mut covered, mut moved) = (0, 0.0);
    for _ in 0..60 {
        let truth = [0.69 * draws.normal(), 0.30 * draws.normal(), 0.20 * draws.normal()];
        let base = House { roof_absorptance: 0.4, leakage_per_h: 2.0, ..house() };
        let run = run(&fit::with(&base, truth), &birds, &shut, &weather).unwrap();
        let errors: Vec<f64> = (0..28).map(|_| draws.normal()).collect();
        let read = |(hour, at): (usize, &HouseHour)| fit::Reading {
            hour,
            inside_c: at.inside_c + errors[hour / 12],
        };
        let readings: Vec<_> = run.hours.iter().enumerate().map(read).collect();
        let fitted = fit::fit(&base, &birds, &shut, &weather, &readings).unwrap();
        assert!(fitted.after_k <= fitted.before_k + 0.05 && fitted.compared == 28);
        for (factor, truth) in [fitted.leakage, fitted.sun, fitted.through].iter().zip(truth) {
            covered += i32::from((factor.low..=factor.high).contains(&truth.exp()));
            moved += factor.left_of_prior / 180.0;
        }
    }
    // Binomial, 180 and 0.9: mean 162, standard deviation 4; three of the latter, the parameters of a house being related.
    assert!((150..=174).contains(&covered), "{covered} of 180");
    assert!(moved < 0.9, "{moved}");
}

#[test]
fn two_days_say_little() {
    let (birds, still, weather) = (flock(500.0, 1.2), management(20.0, 0.0), days(2));
    let run = run(&house(), &birds, &still, &weather).unwrap();
    let read = |(hour, at): (usize, &HouseHour)| fit::Reading { hour, inside_c: at.inside_c + 0.5 };
    let readings: Vec<_> = run.hours.iter().enumerate().map(read).collect();
    let fitted = fit::fit(&house(), &birds, &still, &weather, &readings).unwrap();
    for factor in [fitted.leakage, fitted.sun, fitted.through] {
        assert!(factor.left_of_prior > 0.75 && (0.85..1.15).contains(&factor.best), "{fitted:?}");
    }
    assert_eq!(fitted.compared, 4);
    let none = fit::fit(&house(), &birds, &still, &weather, &[]).unwrap();
    assert!((none.leakage.best, none.compared) == (1.0, 0) && (none.sun.left_of_prior - 1.0).abs() < 1e-9);
}
