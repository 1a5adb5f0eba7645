//! scipy 1.17.1, solve_ivp: three days of a house by an adaptive stiff solver (`benches/peers/house_air.py`), which takes bird
//! heat and natural flow at every instant where the program holds the flow over an hour. The file carries its own header.
//!
//! Tolerance: 0.1 K, as the header asks.

use model::air::litter_water::Intake;
use model::air::{Flock, Fuel, Hour, House, Management, run};

const TABLE: &str = include_str!("../tables/house_air.csv");

#[test]
fn three_days_agree_hour_by_hour() {
    let table = reference::Table::read("house_air", TABLE).unwrap();
    let house = House {
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
        ground_w_per_k: 48.0,
        ground_c: 20.0,
        opening_m2: 0.6,
        opening_height_m: 0.8,
        wind_effectiveness: 0.5,
        leakage_per_h: 0.5,
        mass_j_per_k: 15e6,
        mass_w_per_k: 720.0,
        litter_dry_kg: 1e6,
        litter_water_kg: 0.12e6,
        altitude_m: 1000.0,
        latitude_deg: -13.6,
        zone: None,
    };
    for (case, birds, kg, heater_kw, target) in
        [("empty", 0.0, 1.2, 0.0, 0.0), ("birds", 800.0, 1.2, 0.0, 0.0), ("heated", 400.0, 2.0, 6.0, 45.0)]
    {
        let flock = Flock {
            birds,
            mass_kg: vec![kg],
            intake: vec![Intake { feed_kg: 0.0, water_kg: 0.0, gain_kg: 0.0 }],
            heat_factor: 1.0,
            // The solver hands all their heat to the air.
            to_litter: 0.0,
            activity: 0.0,
            stillest_h: 2.0,
        };
        let management = Management {
            first_day: 30,
            first_hour: 0,
            preheat_hours: 0.0,
            target_c: vec![target],
            band_k: 1.0,
            humidity_most: 1.0,
            co2_most_ppm: 100_000.0,
            minimum_m3_h: 0.0,
            heater_kw,
            fuel: Fuel::ELECTRICITY,
            opening_least_m2: 0.6,
            opening_most_m2: 0.6,
            held_m2: None,
        };
        let rows: Vec<_> = table.rows.iter().filter(|row| row[0] == case).collect();
        let number = |row: &[String], column| table.number(row, column).unwrap().unwrap();
        let weather: Vec<Hour> = rows
            .iter()
            .map(|row| Hour {
                outside_c: number(row, "outside_c"),
                humidity: 0.0,
                wind_m_s: number(row, "wind_m_s"),
                sun_w_per_m2: number(row, "sun_w_per_m2"),
                pressure_pa: Some(90_000.0),
            })
            .collect();
        let run = run(&house, &flock, &management, &weather).unwrap();
        assert_eq!(run.hours.len(), 24);
        for (hour, row) in run.hours.iter().zip(rows) {
            let off = |got: f64, column| (got - number(row, column)).abs();
            assert!(off(hour.house_c, "air_c") < 0.1, "{case}: {} {row:?}", hour.house_c);
            assert!(off(hour.mass_c, "mass_c") < 0.1, "{case}: {} {row:?}", hour.mass_c);
        }
    }
}
