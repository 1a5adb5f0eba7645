//! A planned house fitted to temperatures read in it: made with known leaks and walls, so that the answer is known.

use advice::air::fitted::{CannotFit, FittedHouse};
use advice::air::{Guess, PlannedAir};
use advice::weather_file::{self, Weather};
use quantity::CivilDay;

use crate::sample;

/// The plan in one heated end, without covers.
fn plan() -> String {
    sample::complete()
}

fn placement() -> CivilDay {
    CivilDay::new(2027, 9, 14).unwrap()
}

/// Days of weather from some days before the chicks come; the nights get colder and warmer by turns.
fn weather_of(days: std::ops::Range<i32>) -> Weather {
    let hour = |day: i32, hour: i32| {
        let sun = (std::f64::consts::PI * f64::from(hour - 6) / 12.0).sin().max(0.0);
        let air = 12.0 + f64::from(day.rem_euclid(3)) * 2.0 + 14.0 * sun;
        let (date, humidity) = (placement().plus_days(day), 80.0 - 45.0 * sun);
        format!("{date} {hour:02}:00,{air:.2},{humidity:.0},{:.1},{:.0}", 1.0 + 1.5 * sun, 800.0 * sun)
    };
    let rows = days.flat_map(|day| (0..24).map(move |at| (day, at))).map(|(day, at)| hour(day, at));
    table("time,temperature_c,humidity_pct,wind_m_s,sun_w_m2", rows)
}

fn table(head: &str, rows: impl Iterator<Item = String>) -> Weather {
    let lines: Vec<String> = std::iter::once(head.to_owned()).chain(rows).collect();
    weather_file::read(&lines.join("\n")).unwrap()
}

/// What a thermometer reads in a house with such leaks and walls, on days of age.
fn read_in(guess: Guess, weather: &Weather, days: std::ops::Range<i32>) -> Weather {
    let answers = sample::answers(&plan());
    let fill = weather_file::Fill { latitude_deg: -13.6, wind_m_per_s: 1.5 };
    let outside = |day: CivilDay| weather.hours(day, 0, &fill);
    let air = PlannedAir::of(&answers, guess, Some(&outside)).unwrap();
    let hours = air.hours.iter().filter(|hour| days.contains(&hour.house.day));
    let row = |hour: &advice::air::AirHour| {
        let date = placement().plus_days(hour.house.day);
        format!("{date} {:02}:00,{:.2}", hour.house.hour, hour.house.inside_c)
    };
    table("time,temperature_c", hours.map(row))
}

#[test]
fn a_leaky_house_is_found_out() {
    let answers = sample::answers(&plan());
    let weather = weather_of(-3..14);
    let true_house = Guess { walls: 1.3, leaks: 1.0, ..Guess::AS_TOLD };
    let readings = read_in(true_house, &weather, 0..12);
    let fitted = FittedHouse::of(&answers, &weather, &readings).unwrap();
    assert_eq!((fitted.days.len(), fitted.is_of_brooding), (12, true));
    let walls = fitted.fit.through;
    assert!(walls.low < 1.3 && 1.3 < walls.high, "{walls:?}");
    assert!(walls.best > 1.08 && walls.left_of_prior < 0.9, "{walls:?}");
    assert!(fitted.fit.after_k < 0.7 * fitted.fit.before_k, "{:?}", fitted.fit);
    assert!(fitted.heat_peak_kw.1 > fitted.heat_peak_kw.0 + 0.5, "{:?}", fitted.heat_peak_kw);
}

#[test]
fn two_days_leave_the_guess_nearly_as_it_was() {
    let answers = sample::answers(&plan());
    let weather = weather_of(-3..14);
    let readings = read_in(Guess { walls: 1.3, ..Guess::AS_TOLD }, &weather, 3..5);
    let fitted = FittedHouse::of(&answers, &weather, &readings).unwrap();
    assert_eq!(fitted.days, [3, 4]);
    for factor in [fitted.fit.leakage, fitted.fit.sun] {
        assert!(factor.left_of_prior > 0.9, "{factor:?}");
    }
    let said = present::text::write(
        &present::fitted::document(&fitted, String::new(), &present::Viewer::plain()),
        &present::Viewer::plain(),
        false,
    );
    assert!(said.contains("little"), "{said}");
}

/// Readings of other dates, or without weather two days before them, fit nothing.
#[test]
fn files_of_other_dates_are_refused() {
    let answers = sample::answers(&plan());
    let weather = weather_of(-3..6);
    let of_next_year = read_in(Guess::AS_TOLD, &weather, 0..3);
    let short = weather_of(4..6);
    assert_eq!(FittedHouse::of(&answers, &short, &of_next_year).unwrap_err(), CannotFit::NoDays);
    assert_eq!(FittedHouse::of(&answers, &weather, &weather_of(60..62)).unwrap_err(), CannotFit::NoDays);
}
