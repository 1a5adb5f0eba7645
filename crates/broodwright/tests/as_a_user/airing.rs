use super::Farm;

/// Three years of invented weather, each 3 K warmer than the one before, from a first of September to an end of October.
fn weather() -> String {
    let mut text = String::from("time,temperature_c,humidity_pct,wind_m_s,sun_w_m2\n");
    for (year, mean) in [(2021, 17.0), (2022, 20.0), (2023, 23.0)] {
        for month in 1..=12 {
            let days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
            for (day, hour) in (1..=days).flat_map(|day| (0..24).map(move |hour| (day, hour))) {
                let turn = f64::from(hour - 14) / 24.0 * std::f64::consts::TAU;
                let sun = (900 - 150 * (hour - 12_i32).abs()).max(0);
                let air = mean + 8.0 * turn.cos();
                text += &format!("{year}-{month:02}-{day:02} {hour:02}:00,{air:.2},60,1.5,{sun}\n");
            }
        }
    }
    text
}

#[test]
fn a_house_is_run_through_every_year_of_a_file() {
    let farm = Farm::new("air-weather");
    farm.write("weather.csv", &weather());
    let json = farm.json("air plan.toml --weather weather.csv --json --csv hours.csv");
    let years = json["years"].as_array().unwrap();
    let of = |key: &str| years.iter().map(|year| year[key].as_f64().unwrap()).collect::<Vec<_>>();
    assert_eq!(of("year"), [2021.0, 2022.0, 2023.0]);
    let (heat, hot) = (of("heat_kwh"), of("alert_hours"));
    assert!(heat[0] > heat[1] && heat[1] > heat[2] && heat[2] > 0.0, "colder years take more: {heat:?}");
    assert!(hot[0] <= hot[1] && hot[1] < hot[2], "{hot:?}");
    assert!(of("residual").iter().all(|residual| *residual < 1e-9));
    // By the hour it is the middlemost year, with the weather of the file on the chick day.
    assert_eq!(json["heat_kwh"], years[1]["heat_kwh"]);
    let hour = &json["hours"][14];
    assert_eq!((hour["hour"].as_u64(), hour["outside_c"].as_f64()), (Some(14), Some(28.0)));
    assert_eq!(json["hours"].as_array().unwrap().len(), farm.read("hours.csv").lines().count() - 1);
    let told = farm.good("air plan.toml --weather weather.csv");
    for said in ["3 years of weather in weather.csv", "2022", "middlemost", "Charcoal gas has no smell"] {
        assert!(told.contains(said), "{said}: {told}");
    }
}

#[test]
fn bad_weather_is_told_with_its_line_and_the_way_out() {
    let farm = Farm::new("air-bad-weather");
    let good = weather();
    let told = |name: &str, text: &str, said: &[&str]| {
        farm.write(name, text);
        let told = farm.bad(&format!("air plan.toml --weather {name}"));
        for said in said {
            assert!(told.contains(said), "{said}: {told}");
        }
    };
    let lines: Vec<&str> = good.lines().collect();
    let without = |from: usize, count: usize| [&lines[..from], &lines[from + count..]].concat().join("\n");
    told("gap.csv", &without(99, 1), &["Line 100: an hour is missing after", "Fill them in"]);
    told("gaps.csv", &without(99, 5), &["Line 100: 5 hours are missing"]);
    let changed = |from: &str, to: &str| good.replacen(from, to, 1);
    told("twice.csv", &changed("01-01 05:00", "01-01 04:00"), &["Line 7", "again, after line 6"]);
    told("none.csv", &changed(",60,", ",-999,"), &["Line 2, column humidity_pct", "no reading"]);
    told("leap.csv", &changed("2021-03-01 00", "2021-02-29 00"), &["no day “2021-02-29 00:00”"]);
    told("unit.csv", &changed("14:00,25.00", "14:00,77.0"), &["Line 16", "−60 to 60", "Fahrenheit"]);
    told("half.csv", &good[..good.len() - 9], &["cells, not 5", "half a line"]);
    told("other.csv", "day,dead\n1,2\n", &["no column time", "temperature_c"]);
    told("short.csv", &lines[..500].join("\n"), &["No year of the weather holds", "12 September 2025"]);
    told("empty.csv", "", &["no whole day of weather"]);
    let epw = "LOCATION,Far North,-,XX,none,0,60.0,25.0,2.0,10\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n";
    let row = |hour: i32| {
        let sun = (900 - 150 * (hour - 12).abs()).max(0);
        format!("2001,1,1,{hour},0,x,20,12,60,90000,0,0,0,{sun},0,0,0,0,0,0,90,3,5,5\n")
    };
    let day: String = (1..=24).map(row).collect();
    told("far.epw", &(epw.to_owned() + &day), &["latitude 60.0°", "the farm lies at −13.6°"]);
    let zone = |zone: &str| good.replace(":00,", &format!(":00{zone},"));
    told("clock.csv", &zone("Z"), &["0 h ahead of universal time", "the clock of the farm"]);
    farm.write("clock.csv", &zone("+02:00"));
    farm.good("air plan.toml --weather clock.csv --json");
    assert!(farm.bad("air plan.toml --weather nowhere.csv").contains("cannot be read"));
}

#[test]
fn a_curtain_is_set_for_a_plan_and_what_is_asked_wrongly_is_told() {
    let farm = Farm::new("curtain");
    let told = farm.good("curtain plan.toml --ask age_d=30 warmest_c=36 wind=still roof=wet");
    for said in ["Curtain at 16:00", "Hot or worse", "as you ask", "roof kept wet", "On a hot day"] {
        assert!(told.contains(said), "{said}: {told}");
    }
    let json = farm.json("curtain plan.toml --ask age_d=30 --json");
    assert_eq!(json["hours"].as_array().unwrap().len(), 24);
    assert_eq!(json["settings"][0]["hour"].as_u64(), Some(16));
    assert!(json["residual"].as_f64().unwrap() < 1e-9);
    assert!(farm.bad("curtain plan.toml --ask cold=9").contains("coldest_c"));
    assert!(farm.bad("curtain plan.toml --ask age_d=900").contains("84"));
    assert!(farm.bad("curtain plan.toml --ask warmest_c=1e999").contains("warmest_c"));
    assert!(farm.bad("curtain nothing.toml").contains("nothing.toml"));
}

#[test]
fn many_houses_and_a_thermometer_inside() {
    let farm = Farm::new("many-houses");
    let json = farm.json("air plan.toml --members 12 --json");
    let heat = &json["likely"]["heat-peak"];
    let of = |end: &str| heat[end].as_f64().unwrap();
    assert!(0.0 < of("low") && of("low") < of("middle") && of("middle") < of("high"), "{heat}");
    assert!(farm.bad("air plan.toml --members 3").contains("10..=20000"));
    // Weather of other years than the plan's, and the same as if read inside: no day of the plan has both.
    farm.write("weather.csv", &weather());
    let told = farm.bad("air plan.toml --weather weather.csv --readings weather.csv");
    assert!(told.contains("same dates"), "{told}");
    assert!(farm.bad("air plan.toml --readings weather.csv").contains("--weather"));
}
