//! The air of a planned house through weather that was: a run for every year of a file, so that what one year was like is not
//! taken for what the next will be.

use quantity::{Answers, CivilDay};

use crate::air::{CannotRun, Guess, PlannedAir, WIND_M_PER_S};
use crate::weather_file::{Fill, Weather};

/// Weather of a place so many degrees further north or south has other seasons or another sun: our judgement.
const LATITUDE_OFF_DEG: f64 = 10.0;

/// Clocks lie so far off the sun at the most, h, but for a few countries, which leave the clock out of their times: our judgement.
const CLOCK_OFF_H: f64 = 1.75;

/// Why a plan cannot be run through a file of weather.
#[derive(Clone, Debug, PartialEq)]
pub enum NoYears {
    /// The plan does not tell something, or something in it or in the weather cannot be.
    CannotRun(CannotRun),
    /// No year of the file holds every day of the plan.
    NotHeld {
        /// The days of the plan, first and last.
        wanted: (CivilDay, CivilDay),
        /// Those of the file.
        held: (CivilDay, CivilDay),
    },
    /// The file is of a place far north or south of the farm.
    OtherPlace {
        /// Of the farm, degrees, north positive.
        farm_deg: f64,
        /// Of the file.
        file_deg: f64,
    },
    /// The clock of the file is not one by which a farm of that longitude could live.
    OtherClock {
        /// Hours that it is ahead of universal time.
        ahead_h: f64,
        /// Hours that the sun of the farm is.
        sun_h: f64,
    },
}

/// A plan run through each year of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct YearsOfAir {
    /// The year in which the weather of the first day was, and the run; in the order of years, at least one.
    runs: Vec<(i16, PlannedAir)>,
    middle: usize,
}

impl YearsOfAir {
    /// Runs a plan through every year of a file that holds all of its days.
    ///
    /// # Errors
    /// [`NoYears`].
    pub fn of(answers: &Answers, weather: &Weather) -> Result<YearsOfAir, NoYears> {
        let latitude_deg = answers
            .number("farm.latitude_deg")
            .ok_or(NoYears::CannotRun(CannotRun::NotTold("farm.latitude_deg")))?;
        if let Some(place) = &weather.place
            && (place.latitude_deg - latitude_deg).abs() > LATITUDE_OFF_DEG
        {
            return Err(NoYears::OtherPlace { farm_deg: latitude_deg, file_deg: place.latitude_deg });
        }
        let sun_h = answers.number("farm.longitude_deg").map(|longitude_deg| longitude_deg / 15.0);
        if let Some((ahead_h, sun_h)) = weather.ahead_h.zip(sun_h)
            && (ahead_h - sun_h).abs() > CLOCK_OFF_H
        {
            return Err(NoYears::OtherClock { ahead_h, sun_h });
        }
        let (first, last) = PlannedAir::days(answers).map_err(NoYears::CannotRun)?;
        let fill = Fill { latitude_deg, wind_m_per_s: WIND_M_PER_S };
        let mut runs = Vec::new();
        for years in weather.years(first, last) {
            let outside = |day: CivilDay| weather.hours(day, years, &fill);
            let air = PlannedAir::of(answers, Guess::AS_TOLD, Some(&outside)).map_err(NoYears::CannotRun)?;
            runs.push((first.year().saturating_add(years), air));
        }
        let mut by_heat: Vec<usize> = (0..runs.len()).collect();
        by_heat.sort_by(|one, other| {
            runs[*one].1.in_all().heat_kwh.total_cmp(&runs[*other].1.in_all().heat_kwh)
        });
        let held = weather.whole_days().unwrap_or((first, last));
        let middle = *by_heat.get(runs.len() / 2).ok_or(NoYears::NotHeld { wanted: (first, last), held })?;
        Ok(YearsOfAir { runs, middle })
    }

    /// The years in their order.
    pub fn runs(&self) -> &[(i16, PlannedAir)] {
        &self.runs
    }

    /// The year that takes the middlemost heat, and its run.
    pub fn middle(&self) -> &(i16, PlannedAir) {
        &self.runs[self.middle]
    }

    /// The least and the greatest of the years.
    pub fn between(&self, of: impl Fn(&PlannedAir) -> f64) -> (f64, f64) {
        let all = self.runs.iter().map(|(_, air)| of(air));
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| (low.min(one), high.max(one)))
    }
}
