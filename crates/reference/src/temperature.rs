//! The air temperature chicks want, by age and humidity.

use std::sync::OnceLock;

use crate::table::{Table, TableError};

/// Temperatures wanted on one day of age.
struct Day {
    age_d: f64,
    /// Relative humidity in percent and dry-bulb temperature in °C, driest first.
    by_humidity: Vec<(f64, f64)>,
}

/// Dry-bulb temperature wanted at the chicks' height, °C, at an age in days (the chick day is day 0) and a relative
/// humidity in percent. What the chicks do goes before it: heaped up they are cold, panting they are hot.
///
/// Straight lines between the table's days and humidities. Outside it the nearest end is taken: below 40 % the driest
/// column, above 70 % the dampest, after day 27 the last row. `None` for numbers that are none.
///
/// Source: guide B of the table `temperature`, a breeder's handbook from memory.
pub fn target(age_d: f64, rh_percent: f64) -> Option<f64> {
    static DAYS: OnceLock<Option<Vec<Day>>> = OnceLock::new();
    let days = DAYS.get_or_init(|| days().ok()).as_ref()?;
    let on_days: Vec<(f64, f64)> =
        days.iter().filter_map(|day| Some((day.age_d, between(&day.by_humidity, rh_percent)?))).collect();
    between(&on_days, age_d)
}

/// The lowest and the highest temperature that the guides of the table want at an age, humidity left to each of them, °C.
///
/// Guides A, B at the humidity given, C and D; the guide for chicks of young parents is not counted. Beyond a guide's last
/// day that day holds.
pub fn spread(age_d: f64, rh_percent: f64) -> Option<(f64, f64)> {
    static OTHERS: OnceLock<Vec<Vec<(f64, f64)>>> = OnceLock::new();
    let guides =
        OTHERS.get_or_init(|| ["A", "C", "D"].into_iter().filter_map(|guide| plain(guide).ok()).collect());
    let others = guides.iter().filter_map(|points| between(points, age_d));
    let all: Vec<f64> = others.chain(target(age_d, rh_percent)).collect();
    let low = all.iter().copied().reduce(f64::min)?;
    Some((low, all.iter().copied().reduce(f64::max)?))
}

/// Age and temperature of a guide that gives one for every humidity.
fn plain(guide: &str) -> Result<Vec<(f64, f64)>, TableError> {
    let table = Table::shipped("temperature")?;
    let at = table.column("guide")?;
    let mut points = Vec::new();
    for row in table.rows.iter().filter(|row| row[at] == guide) {
        points.extend(table.number(row, "age_d")?.zip(table.number(row, "temp_C")?));
    }
    Ok(points)
}

fn days() -> Result<Vec<Day>, TableError> {
    let table = Table::shipped("temperature")?;
    let guide = table.column("guide")?;
    let mut days: Vec<Day> = Vec::new();
    for row in table.rows.iter().filter(|row| row[guide] == "B") {
        let number = |column| table.number(row, column);
        let Some(((age_d, humidity), celsius)) =
            number("age_d")?.zip(number("rh_pct")?).zip(number("temp_C")?)
        else {
            continue;
        };
        match days.last_mut().filter(|day| day.age_d == age_d) {
            Some(day) => day.by_humidity.push((humidity, celsius)),
            None => days.push(Day { age_d, by_humidity: vec![(humidity, celsius)] }),
        }
    }
    Ok(days)
}

/// The value at `x` on straight lines through points of rising x; beyond them that of the nearest.
fn between(points: &[(f64, f64)], x: f64) -> Option<f64> {
    let (first, last) = (points.first()?, points.last()?);
    if x.is_nan() {
        return None;
    }
    let x = x.clamp(first.0, last.0);
    let pair = points.windows(2).find(|pair| x <= pair[1].0)?;
    let (from, to) = (pair[0], pair[1]);
    Some(from.1 + (to.1 - from.1) * (x - from.0) / (to.0 - from.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(age_d: f64, rh_percent: f64, wanted: f64) {
        let got = target(age_d, rh_percent).unwrap();
        assert!((got - wanted).abs() < 1e-9, "day {age_d}, {rh_percent} %: {got}, wanted {wanted}");
    }

    #[test]
    fn points_of_the_table_and_between_them() {
        near(0.0, 50.0, 33.2);
        near(6.0, 60.0, 27.7);
        near(21.0, 70.0, 21.3);
        near(0.0, 65.0, 30.0);
        // A day between rows, in both directions at once: the mean of four corners' means.
        near(1.5, 45.0, (36.0 + 33.2 + 33.7 + 31.2) / 4.0);
    }

    #[test]
    fn outside_the_table_the_nearest_end_holds() {
        near(0.0, 20.0, 36.0);
        near(0.0, 90.0, 29.2);
        near(60.0, 70.0, 19.3);
        near(-3.0, 70.0, 29.2);
        assert_eq!(target(f64::NAN, 60.0), None);
    }

    #[test]
    fn guides_differ_by_some_degrees() {
        for day in 0..=42 {
            let (low, high) = spread(f64::from(day), 65.0).unwrap();
            let wanted = target(f64::from(day), 65.0).unwrap();
            assert!(low <= wanted && wanted <= high && high - low < 9.0, "day {day}: {low} {wanted} {high}");
        }
        assert!(spread(0.0, 65.0).unwrap().1 >= 33.0);
    }

    #[test]
    fn it_only_ever_falls_with_age_and_with_damp() {
        for step in 0..60 {
            let age = f64::from(step) / 2.0;
            assert!(target(age + 0.5, 65.0) <= target(age, 65.0));
            let damp = 40.0 + f64::from(step) / 2.0;
            assert!(target(5.0, damp + 0.5) <= target(5.0, damp));
        }
    }
}
