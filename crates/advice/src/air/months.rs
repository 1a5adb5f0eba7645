//! The usual weather of a place, month by month, and the air of a plan through it.

use model::air::weather::Day as WeatherDay;
use model::moist_air::{self, MoistAir};
use quantity::{Answers, CivilDay, Temperature};

use super::{CannotRun, Guess, InAll, PlannedAir, WIND_M_PER_S, with_ends};

/// The fields of a year of months.
pub(crate) const COLDEST: &str = "weather.months_coldest_c";
pub(crate) const WARMEST: &str = "weather.months_warmest_c";
const HUMIDITY: &str = "weather.months_humidity_percent";
const WIND: &str = "weather.months_wind_m_per_s";

/// Share of the sky in cloud where only temperatures are told: the sun of a usual day is three quarters of a clear one's (our
/// judgement).
const USUAL_CLOUD: f64 = 0.5;
/// How far below the coldest dew would begin where no humidity is told, K.
const DEW_BELOW_K: f64 = 2.0;
/// Dew lies so far below the coldest at the most, K: drier air is not found over land (our judgement).
const DRIEST_K: f64 = 30.0;

/// A year of months: the mean of the days' coldest and warmest, and what else is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Months {
    coldest_c: [f64; 12],
    warmest_c: [f64; 12],
    humidity: Option<[f64; 12]>,
    wind_m_per_s: Option<[f64; 12]>,
    latitude_deg: f64,
    altitude_m: f64,
}

impl Months {
    /// As a plan tells them; `None` unless it tells coldest and warmest of every month, and its latitude.
    pub fn of(answers: &Answers) -> Option<Months> {
        let year = |key: &str| <[f64; 12]>::try_from(answers.numbers(key)).ok();
        Some(Months {
            coldest_c: year(COLDEST)?,
            warmest_c: year(WARMEST)?,
            humidity: year(HUMIDITY).map(|year| year.map(|percent| percent / 100.0)),
            wind_m_per_s: year(WIND),
            latitude_deg: answers.number("farm.latitude_deg")?,
            altitude_m: answers.number("farm.altitude_m").unwrap_or(0.0),
        })
    }

    /// A usual day: between the middles of months everything changes evenly.
    pub fn day(&self, day: CivilDay) -> WeatherDay {
        let length = f64::from(days_of_month(day));
        let at = f64::from(day.month()) - 1.0 + (f64::from(day.day()) - 0.5) / length - 0.5;
        let before = at.floor();
        let (low, high) = (before.rem_euclid(12.0) as usize, (before + 1.0).rem_euclid(12.0) as usize);
        let between = |year: &[f64; 12]| year[low] + (at - before) * (year[high] - year[low]);
        let (coldest_c, warmest_c) = (between(&self.coldest_c), between(&self.warmest_c));
        let dew_below_k = self.humidity.as_ref().map_or(DEW_BELOW_K, |year| {
            self.dew_below(coldest_c, f64::midpoint(coldest_c, warmest_c), between(year))
        });
        WeatherDay {
            coldest_c,
            warmest_c: warmest_c.max(coldest_c),
            dew_below_k,
            wind_m_per_s: self.wind_m_per_s.as_ref().map_or(WIND_M_PER_S, between),
            cloud: USUAL_CLOUD,
            latitude_deg: self.latitude_deg,
            day_of_year: f64::from(day.day_of_year()),
        }
    }

    /// The mean humidity is that of the day's mean temperature.
    fn dew_below(&self, coldest_c: f64, mean_c: f64, humidity: f64) -> f64 {
        let pressure = moist_air::pressure_at(self.altitude_m);
        let air = MoistAir::new(Temperature::celsius(mean_c), humidity, pressure);
        air.map_or(DEW_BELOW_K, |air| (coldest_c - air.dew_point().in_celsius()).clamp(0.0, DRIEST_K))
    }
}

fn days_of_month(day: CivilDay) -> i32 {
    let first = day.plus_days(1 - i32::from(day.day()));
    // The 32nd day after the first is always in the next month.
    let next = first.plus_days(31);
    next.plus_days(1 - i32::from(next.day())).days_since(first)
}

impl PlannedAir {
    /// The air of a plan through the usual weather of its months, with what a tight and a leaky house would come to; `None` where
    /// they are not told.
    ///
    /// # Errors
    /// [`CannotRun`] with the first field that is missing or cannot be.
    pub fn of_usual_weather(answers: &Answers) -> Option<Result<(PlannedAir, [InAll; 2]), CannotRun>> {
        let months = Months::of(answers)?;
        let usual = |day: CivilDay| Some(months.day(day).hours());
        let (told, [tight, leaky]) = with_ends(
            Guess::ENDS,
            |guess| PlannedAir::in_all_of(answers, guess, Some(&usual)),
            || PlannedAir::of(answers, Guess::AS_TOLD, Some(&usual)),
        );
        let all = || Ok((told?, [tight?, leaky?]));
        Some(all())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn months() -> Months {
        Months {
            coldest_c: [18.0, 18.0, 17.0, 15.0, 12.0, 9.0, 9.0, 11.0, 15.0, 18.0, 19.0, 18.0],
            warmest_c: [28.0, 28.0, 28.0, 28.0, 27.0, 25.0, 25.0, 28.0, 32.0, 34.0, 31.0, 29.0],
            humidity: Some([0.6; 12]),
            wind_m_per_s: None,
            latitude_deg: -13.6,
            altitude_m: 1100.0,
        }
    }

    fn on(year: i16, month: i8, day: i8) -> WeatherDay {
        months().day(CivilDay::new(year, month, day).unwrap())
    }

    #[test]
    fn middles_of_months_are_theirs_and_all_else_lies_between() {
        // The middle of a month of 30 days is the midnight after the 15th.
        assert!((on(2027, 9, 15).coldest_c - (15.0 - 0.5 / 30.0 * 4.0)).abs() < 1e-9);
        assert!((on(2027, 9, 16).coldest_c - (15.0 + 0.5 / 30.0 * 3.0)).abs() < 1e-9);
        let new_year = on(2027, 1, 1).warmest_c;
        assert!(28.0 < new_year && new_year < 29.0, "{new_year}");
        // No step over the end of a month or a year, leap or not.
        let mut day = CivilDay::new(2028, 1, 1).unwrap();
        for _ in 0..400 {
            let next = day.plus_days(1);
            assert!((months().day(next).warmest_c - months().day(day).warmest_c).abs() < 0.2, "{day:?}");
            day = next;
        }
    }

    #[test]
    fn the_mean_humidity_is_kept() {
        let day = on(2027, 9, 16);
        let hours = day.hours();
        let mean = f64::midpoint(day.coldest_c, day.warmest_c);
        let near =
            hours.iter().min_by(|a, b| (a.outside_c - mean).abs().total_cmp(&(b.outside_c - mean).abs()));
        let near = near.unwrap();
        assert!((near.humidity - 0.6).abs() < 0.05, "{near:?}");
    }
}
