//! Three houses worked step by step (derived; moist air from PsychroLib 2.5.0): a cool night with 800 birds, chicks in a dry
//! season, a warm afternoon. The file carries its own header.
//!
//! Tolerance: 1e-6 of the value.

use std::collections::HashMap;

use advice::verify::verify;
use model::air::opening;
use model::bird_heat;
use model::heat::{self, Balance};
use model::moist_air::MoistAir;
use quantity::{Mass, Temperature};

const TABLE: &str = include_str!("../tables/house_balance.csv");

struct House(HashMap<String, f64>);

impl House {
    fn of(case: &str) -> House {
        let table = reference::Table::read("house_balance", TABLE).unwrap();
        let rows = table.rows.iter().filter(|row| row[0] == case);
        House(rows.map(|row| (row[1].clone(), row[2].parse().unwrap())).collect())
    }

    fn get(&self, name: &str) -> f64 {
        *self.0.get(name).unwrap_or_else(|| panic!("{name}"))
    }

    fn celsius(&self, name: &str) -> Temperature {
        Temperature::celsius(self.get(name))
    }

    fn holds(&self, name: &str, got: f64) {
        let want = self.get(name);
        assert!((got - want).abs() <= 1e-6 * want.abs().max(1e-9), "{name}: {got}, worked {want}");
    }

    fn air(&self, temperature: &str, humidity: &str) -> MoistAir {
        MoistAir::new(self.celsius(temperature), self.get(humidity), self.get("pressure")).unwrap()
    }
}

/// Heat of the birds, moisture, carbon dioxide, air, the flow that carries the breath away, and the heater that is left.
fn step_by_step(case: &str) {
    let house = House::of(case);
    let (inside, outside) = (house.celsius("inside"), house.celsius("outside"));
    let at_20c = house.get("birds") * bird_heat::total_at_20c(Mass::kilograms(house.get("weight")));
    let correction = bird_heat::correction(inside);
    let (total, sensible) = (at_20c * correction, at_20c * bird_heat::sensible_share(inside, correction));
    house.holds("heat_total", total);
    house.holds("heat_sensible", sensible);
    house.holds("heat_latent", total - sensible);
    house.holds("moisture", bird_heat::moisture_g_per_h(total - sensible) / 3.6e6);
    house.holds("co2", bird_heat::carbon_dioxide_m3_per_h(total) / 3600.0);
    let (within, fresh) =
        (house.air("inside", "inside_humidity_limit"), house.air("outside", "outside_humidity"));
    house.holds("humidity_ratio_inside", within.humidity_ratio());
    house.holds("humidity_ratio_outside", fresh.humidity_ratio());
    house.holds("specific_volume_inside", within.specific_volume());
    house.holds("specific_volume_outside", fresh.specific_volume());
    house.holds("air_heat_capacity", fresh.heat_capacity());
    house.holds("mass_flow_by_co2", heat::air_to_breathe(total) / 3600.0 / within.specific_volume());
    let through: f64 = [("roof_area", 2.0), ("curtain_area", 5.9), ("block_area", 3.1)]
        .map(|(area, u)| house.get(area) * u)
        .iter()
        .sum();
    let through = through + house.get("ua_perimeter");
    house.holds("ua_total", through);
    let with_air = house.get("mass_flow_needed") * fresh.heat_capacity();
    let balance = Balance { through, with_air, animals: sensible + house.get("sun_gain") };
    house.holds("heater_at_needed_flow", balance.heat_to_put_in(inside, outside));
}

/// The opening for the flow that is needed, or for heat where that is more, by wind alone and by warmth alone.
fn openings(case: &str) {
    let house = House::of(case);
    let (within, fresh) =
        (house.air("inside", "inside_humidity_limit"), house.air("outside", "outside_humidity"));
    let drying = within.humidity_ratio() - fresh.humidity_ratio();
    house.holds("mass_flow_by_moisture", house.get("moisture") / drying);
    let flow = house.get("volume_flow_needed").max(house.get("volume_flow_by_heat")) / 3600.0;
    let area = |speed| opening::area_for(flow, speed).unwrap();
    house.holds("opening_by_wind_effectiveness_0_5", area(opening::speed(0.5, house.get("wind"), 0.0)));
    // The table rounds gravity to 9.81 m/s2; the speed goes with its root.
    let rounded = (9.81_f64 / 9.806_65).sqrt();
    let stack = rounded * opening::stack_speed(house.get("inside"), house.get("outside"), 0.8);
    house.holds("stack_speed_discharge_0_65_half_height_0_8", stack);
    house.holds("opening_by_stack", area(opening::speed(0.5, 0.0, stack)));
}

#[test]
fn openings_of_all_three() {
    for case in ["cool_night_800_birds", "chicks_dry_season", "warm_afternoon_800_birds"] {
        openings(case);
    }
}

#[test]
fn a_cool_night() {
    step_by_step("cool_night_800_birds");
}

/// The heater is 5.8 kW, 95 % of what goes out goes through the walls: a covered ring, not a hotter house, is the saving.
#[test]
fn chicks_in_a_dry_season() {
    step_by_step("chicks_dry_season");
}

#[test]
fn a_warm_afternoon() {
    step_by_step("warm_afternoon_800_birds");
}

/// Every row, as `verify` fills it in from what each case tells of its house.
#[test]
fn every_row_of_the_table_is_filled_in() {
    let table = reference::Table::read("house_balance", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!(rows.len(), 138);
    // The same from the told rows alone: no value of a step is read.
    let told =
        ["birds", "weight", "inside", "inside_humidity_limit", "outside", "outside_humidity", "pressure"];
    let told = [&told[..], &["length", "width", "wind", "co2_limit", "co2_outside", "sun_gain"]].concat();
    let bare = |row: &Vec<String>| {
        let value = if told.contains(&row[1].as_str()) { row[2].as_str() } else { "" };
        format!("{},{},{value},{}\n", row[0], row[1], row[3])
    };
    let bared = "case,name,value,unit\n".to_owned() + &table.rows.iter().map(bare).collect::<String>();
    assert_eq!(verify(&bared).unwrap(), rows);
    for (row, want) in rows.iter().zip(&table.rows) {
        let (got, value) = (row["value"].as_f64().unwrap(), want[2].parse::<f64>().unwrap());
        assert!((got - value).abs() <= 1e-6 * value.abs().max(1e-9), "{want:?}: {got}");
    }
}

/// A case that lacks something, tells it twice, tells what cannot be, or asks for a step nobody knows.
#[test]
fn a_case_that_cannot_be_worked_out_is_named() {
    let one =
        TABLE.lines().filter(|line| !line.starts_with('#')).take(47).collect::<Vec<_>>().join("\n") + "\n";
    assert!(verify(&one).is_ok(), "one case alone");
    let said = |table: String| verify(&table).unwrap_err().to_string();
    let lacks = said(one.replace("birds,pressure,90000,Pa\n", "birds,colour,3,1\n"));
    assert!(lacks.contains("row 1") && lacks.contains("pressure"), "{lacks}");
    let twice = said(one.clone() + "cool_night_800_birds,wind,2,m/s\n");
    assert!(twice.contains("row 47") && twice.contains("wind"), "{twice}");
    let cannot = said(one.replace("inside_humidity_limit,0.7,", "inside_humidity_limit,70,"));
    assert!(cannot.contains("row 4") && cannot.contains("70") && cannot.contains("0.001 … 1"), "{cannot}");
    let unknown = said(one + "cool_night_800_birds,colour,3,1\n");
    assert!(unknown.contains("row 47") && unknown.contains("colour"), "{unknown}");
}

/// The edge of the floor is 1.26 W for each metre and degree: 46 m of the first house are 57.96 W/K.
#[test]
fn edges_of_floors() {
    for case in ["cool_night_800_birds", "chicks_dry_season"] {
        let house = House::of(case);
        house.holds("ua_perimeter", 1.26 * 2.0 * (house.get("length") + house.get("width")));
    }
}
