use super::*;

fn house() -> House {
    House {
        walls_w_per_k: 180.0,
        curtain_w_per_k: 283.0,
        edge_w_per_k: 58.0,
        roof_m2: 127.0,
        roof_w_per_m2k: 2.0,
        roof_absorbs: 0.7,
        roof_to_sky_w_per_m2: 0.0,
        light_j_per_k: 1.0e6,
        floor_j_per_k: 120.0 * 125_000.0,
        floor_w_per_k: 120.0 * 6.0,
        ground_w_per_k: 120.0 * 0.4,
        ground_c: 22.0,
        air_m3: 360.0,
        leaks_m3_per_h: 360.0,
        opens_m2: 24.0,
        opens_over_m: 15.0,
        pressure_pa: 90_000.0,
    }
}

fn night() -> Hour {
    Hour { air_c: 14.0, humidity: 0.8, wind_m_per_s: 0.5, sun_w_per_m2: 0.0 }
}

fn noon() -> Hour {
    Hour { air_c: 33.0, humidity: 0.35, wind_m_per_s: 2.0, sun_w_per_m2: 950.0 }
}

fn flock(birds: f64, each_kg: f64) -> Flock {
    Flock { birds, each_kg, more: 1.0, cold_below_c: None }
}

fn wish(target_c: f64, heaters_w: f64) -> Wish {
    Wish {
        target_c,
        open_above_k: 1.0,
        humidity_most: 0.7,
        co2_most: 0.003,
        least_m3_per_h: 0.0,
        heaters_w,
        flame: Flame { co2_m3_per_kwh: 0.14, water_kg_per_kwh: 0.13 },
    }
}

/// The same hour over and over.
fn settled(house: &House, outside: Hour, flock: Flock, wish: Wish) -> HouseHour {
    let start = State::empty(house, &outside).unwrap();
    *run(house, start, std::iter::repeat_n((outside, flock, wish), 400)).unwrap().0.last().unwrap()
}

/// Without sun, birds and heaters the inside follows outside and ground.
#[test]
fn an_empty_house_is_as_outside() {
    let house = House { ground_c: 14.0, ..house() };
    let hour = settled(&house, night(), flock(0.0, 1.0), wish(14.0, 0.0));
    assert!((hour.inside_c - 14.0).abs() < 1e-9 && (hour.floor_c - 14.0).abs() < 1e-9, "{hour:?}");
    assert!((hour.co2 - CO2_OUTSIDE).abs() < 1e-12 && (hour.humidity - 0.8).abs() < 1e-9);
}

/// A steady night solved by hand: heaters are what goes out less what the birds give, at the flow that the water asks for.
#[test]
fn a_steady_night_balances_by_hand() {
    let still = House { ground_w_per_k: 0.0, leaks_m3_per_h: 0.0, ..house() };
    let dry = Wish { flame: Flame::default(), ..wish(24.0, 50_000.0) };
    let hour = settled(&still, night(), flock(800.0, 1.2), dry);
    // 800 birds of 1.2 kg at 24 °C: 4187 W that warm, 1.950 g/s of water; air at 0.7 holds 0.014783, outside 0.008965 kg/kg.
    let flow = 1.950e-3 / (0.014_783 - 0.008_965);
    let ua = 180.0 + 283.0 + 58.0 + 127.0 * 2.0;
    let by_hand = (ua + flow * 1022.7) * 10.0 - 4187.0;
    assert!((hour.heaters_w - by_hand).abs() < 0.005 * by_hand, "{} {by_hand}", hour.heaters_w);
    assert_eq!(hour.binding, Binding::Moisture);
    assert!((hour.humidity - 0.7).abs() < 1e-3 && (hour.inside_c - 24.0).abs() < 1e-6);
}

/// One body of heat that cools: an exponential, exactly known.
#[test]
fn a_closed_house_cools_by_its_own_time() {
    let bare = House {
        floor_w_per_k: 0.0,
        ground_w_per_k: 0.0,
        light_j_per_k: 4.0e7,
        leaks_m3_per_h: 0.0,
        ..house()
    };
    let start = State { air_c: 30.0, ..State::empty(&bare, &night()).unwrap() };
    let hours =
        run(&bare, start, std::iter::repeat_n((night(), flock(0.0, 1.0), wish(40.0, 0.0)), 24)).unwrap().0;
    let loss = 180.0 + 283.0 + 58.0 + 127.0 * 2.0;
    for (at, hour) in hours.iter().enumerate() {
        let middle_s = (at as f64 + 0.5) * 3600.0;
        let exact = 14.0 + 16.0 * (-loss * middle_s / 4.0e7).exp();
        assert!((hour.inside_c - exact).abs() < 0.1, "{at}: {} {exact}", hour.inside_c);
    }
}

#[test]
fn too_small_a_heater_says_by_how_much() {
    let weak = settled(&house(), night(), flock(500.0, 0.05), wish(32.0, 4_000.0));
    let strong = settled(&house(), night(), flock(500.0, 0.05), wish(32.0, 60_000.0));
    assert!((strong.inside_c - 32.0).abs() < 1e-6 && strong.short_w == 0.0);
    assert!(weak.inside_c < 25.0 && weak.short_w > 5_000.0, "{weak:?}");
}

#[test]
fn heat_opens_and_no_opening_cooks() {
    let big = flock(800.0, 2.2);
    let warm = Hour { air_c: 27.0, sun_w_per_m2: 300.0, wind_m_per_s: 1.5, ..noon() };
    let open = settled(&house(), warm, big, wish(29.0, 0.0));
    assert_eq!(open.binding, Binding::Heat);
    assert!(
        open.opening_m2 > 1.0 && open.opening_m2 < 24.0 && (open.inside_c - 30.0).abs() < 0.5,
        "{open:?}"
    );
    let shut = settled(&House { opens_m2: 0.0, ..house() }, warm, big, wish(29.0, 0.0));
    assert_eq!(shut.binding, Binding::Opening);
    assert!(shut.inside_c > open.inside_c + 2.0);
}

/// A lit flame in a closed house: its own gas, and the air that carries it off.
#[test]
fn a_flame_is_in_the_balance() {
    let without = Wish { flame: Flame::default(), ..wish(32.0, 60_000.0) };
    let clean = settled(&house(), night(), flock(100.0, 0.05), without);
    let burnt = settled(&house(), night(), flock(100.0, 0.05), wish(32.0, 60_000.0));
    assert!(burnt.co2 > clean.co2 + 0.001 && burnt.humidity > clean.humidity);
}

/// Litter follows the air by hours; a stronger heater and a longer time never leave it colder.
#[test]
fn heaters_warm_floor_and_litter() {
    let after =
        |hours: usize, heaters_w| warmed(&house(), &vec![night(); hours], &wish(32.0, heaters_w)).unwrap();
    assert!(after(48, 30_000.0).floor_c > after(12, 30_000.0).floor_c);
    assert!(after(24, 60_000.0).floor_c >= after(24, 20_000.0).floor_c);
    assert!(after(2, 60_000.0).floor_c < 26.0 && after(48, 60_000.0).floor_c > 28.0);
    assert!(warmed(&house(), &[], &wish(32.0, 1.0)).is_none());
}

/// Fog outside: the house is let grow no damper than needs be, and never drips because the curtain was shut.
#[test]
fn damp_air_outside_still_dries() {
    let fog = Hour { air_c: 18.0, humidity: 0.98, wind_m_per_s: 1.0, sun_w_per_m2: 0.0 };
    let hour = settled(&house(), fog, flock(1_200.0, 2.0), wish(20.0, 0.0));
    assert_eq!(hour.binding, Binding::Moisture);
    assert!(hour.opening_m2 > 1.0 && hour.humidity < 0.97, "{hour:?}");
}

mod properties {
    use proptest::prelude::*;

    use super::*;

    fn hours() -> impl Strategy<Value = Vec<Hour>> {
        let hour = (-5.0..45.0, 0.05..1.0, 0.0..8.0, 0.0..1100.0).prop_map(|(air_c, humidity, wind, sun)| {
            Hour { air_c, humidity, wind_m_per_s: wind, sun_w_per_m2: sun }
        });
        proptest::collection::vec(hour, 1..72)
    }

    proptest! {
        /// Heat, water and carbon dioxide close in every hour of any weather.
        #[test]
        fn everything_closes(hours in hours(), birds in 0.0..3_000.0, kg in 0.04..3.0, heaters in 0.0..60_000.0) {
            let house = house();
            let start = State::empty(&house, &hours[0]).unwrap();
            let days = hours.iter().map(|hour| (*hour, flock(birds, kg), wish(28.0, heaters)));
            for hour in run(&house, start, days).unwrap().0 {
                prop_assert!(hour.residual < 1e-9, "{hour:?}");
                let sum: f64 = hour.flows.parts().iter().map(|(_, part)| part).sum();
                let moved: f64 = hour.flows.parts().iter().map(|(_, part)| part.abs()).sum();
                prop_assert!(sum.abs() <= 1e-9 * moved.max(1.0), "{hour:?}");
                prop_assert!(hour.inside_c.is_finite() && (0.0..=1.0 + 1e-9).contains(&hour.humidity));
            }
        }

        /// More curtain never warms a house that is warmer than outside.
        #[test]
        fn more_opening_never_warms(outside in 10.0..34.0, sun in 0.0..1000.0, wind in 0.0..4.0, opens in 1.0..20.0) {
            let hour = Hour { air_c: outside, humidity: 0.5, wind_m_per_s: wind, sun_w_per_m2: sun };
            let of = |opens_m2| {
                settled(&House { opens_m2, ..house() }, hour, flock(800.0, 2.0), wish(24.0, 0.0)).inside_c
            };
            prop_assert!(of(opens * 1.5) <= of(opens) + 1e-6);
        }
    }
}
