//! Functions of the evaluator that no language brings, worked out another way than the models do.

use std::collections::HashMap;
use std::f64::consts::PI;
use std::sync::Mutex;

/// The share of a bell curve below x: half, and the density's series of only positive terms (Abramowitz and Stegun
/// 26.2.11).
pub fn share_below(x: f64) -> f64 {
    if x.abs() > 9.0 {
        return if x > 0.0 { 1.0 } else { 0.0 };
    }
    let (mut term, mut sum, mut odd) = (x, x, 1.0);
    while f64::abs(term) > 1e-17 * f64::abs(sum) {
        odd += 2.0;
        term *= x * x / odd;
        sum += term;
    }
    0.5 + sum * (-x * x / 2.0).exp() / (2.0 * PI).sqrt()
}

/// Student's t that leaves 2.5 % above it, at whole degrees of freedom, by halving over the finite series of the share
/// between -t and t. What was found is kept.
pub fn student_95(freedom: f64) -> Result<f64, String> {
    static KNOWN: Mutex<Option<HashMap<u64, f64>>> = Mutex::new(None);
    if freedom < 1.0 || freedom.fract() != 0.0 {
        return Err(format!("t95 of {freedom}"));
    }
    let mut known = KNOWN.lock().map_err(|error| error.to_string())?;
    let known = known.get_or_insert_with(HashMap::new);
    Ok(*known.entry(freedom as u64).or_insert_with(|| {
        let (mut low, mut high) = (1.9, 13.0);
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if share_between(middle, freedom as u64) < 0.95 { low = middle } else { high = middle }
        }
        (low + high) / 2.0
    }))
}

/// The share of Student's t between -t and t (Abramowitz and Stegun 26.7.3 and 26.7.4).
fn share_between(t: f64, freedom: u64) -> f64 {
    let angle = (t / (freedom as f64).sqrt()).atan();
    let (sine, square) = (angle.sin(), angle.cos().powi(2));
    let even = freedom.is_multiple_of(2);
    let mut term = if even { 1.0 } else { angle.cos() };
    let mut sum = if even || freedom > 1 { term } else { 0.0 };
    let mut k = if even { 1.0 } else { 2.0 };
    while k < freedom as f64 - 2.0 {
        term *= square * k / (k + 1.0);
        sum += term;
        k += 2.0;
    }
    if even { sine * sum } else { 2.0 / PI * (angle + sine * sum) }
}

/// The sun's declination in radians by Spencer's series, on a day counted from 1970-01-01.
pub fn declination(day: f64) -> f64 {
    let b = 2.0 * PI * (day_of_year(day as i64) - 1.0) / 365.0;
    let parts = [(-0.399912, 0.070257), (-0.006758, 0.000907), (-0.002697, 0.00148)];
    let waves = parts.iter().zip(1..).map(|((of_cos, of_sin), n)| {
        let angle = f64::from(n) * b;
        of_cos * angle.cos() + of_sin * angle.sin()
    });
    0.006918 + waves.sum::<f64>()
}

/// The day of its year, counted out a year at a time.
fn day_of_year(mut day: i64) -> f64 {
    let mut year = 1970;
    loop {
        let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        let days = if leap { 366 } else { 365 };
        if day < days {
            return (day + 1) as f64;
        }
        day -= days;
        year += 1;
    }
}

/// Pressure of saturated water vapour, Pa, by the equations of ASHRAE Handbook Fundamentals 2017, chapter 1, written out here
/// as sums over powers; over ice below 0.01 °C.
pub fn saturation_pressure(celsius: f64) -> f64 {
    let kelvin = celsius + 273.15;
    let ice =
        ([-5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13], 4.1635019);
    let water = ([-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0], 6.5459673);
    let (factors, of_logarithm) = if celsius < 0.01 { ice } else { water };
    let powers = (-1..).zip(factors).map(|(power, factor)| factor * kelvin.powi(power));
    (powers.sum::<f64>() + of_logarithm * kelvin.ln()).exp()
}

/// Steam tables (IAPWS, from memory): 259.9 Pa over ice at −10 °C, 2339.3 at 20, 7384.9 at 40, 101 418 at 100. The older
/// equations of the handbook meet them within a thousandth.
#[test]
fn saturation_agrees_with_steam_tables() {
    for (celsius, pascal) in [(-10.0, 259.9), (20.0, 2339.3), (40.0, 7384.9), (100.0, 101_418.0)] {
        let got = saturation_pressure(celsius);
        assert!((got - pascal).abs() < 1e-3 * pascal, "{celsius}: {got}");
    }
}

/// Printed tables (from memory); and 1 March is day 60 of 2026 and day 61 of 2028.
#[test]
fn they_agree_with_printed_tables() {
    for (freedom, t) in [(1.0, 12.7062), (2.0, 4.3027), (9.0, 2.2622), (29.0, 2.0452), (99.0, 1.9842)] {
        assert!((student_95(freedom).unwrap() - t).abs() < 5e-5, "{freedom}");
    }
    assert!((share_below(1.959964) - 0.975).abs() < 1e-7);
    assert_eq!((day_of_year(0), day_of_year(20_513), day_of_year(21_244)), (1.0, 60.0, 61.0));
}
