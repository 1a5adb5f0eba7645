//! A house fitted to temperatures that were read in it, beside the weather of the same hours.

pub use model::air::fit::Factor;
use model::air::fit::{self, Fit, Reading};
use quantity::Answers;

use super::{CannotRun, DAYS_BEFORE, Guess, Part, PlannedAir, Read, WIND_M_PER_S};
use crate::weather_file::{Fill, Weather};

/// Why a house cannot be fitted.
#[derive(Clone, Debug, PartialEq)]
pub enum CannotFit {
    /// The plan does not tell something, or something cannot be.
    CannotRun(CannotRun),
    /// No day of the plan has both weather and readings for all its hours, with two days of weather before the first.
    NoDays,
}

impl From<CannotRun> for CannotFit {
    fn from(cannot: CannotRun) -> CannotFit {
        CannotFit::CannotRun(cannot)
    }
}

/// What readings say of a house.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedHouse {
    /// Leaks, sun on the roof, walls: each with its range, and how far off the house was before and after.
    pub fit: Fit,
    /// Days of age that were read.
    pub days: Vec<i32>,
    /// Whether it is the part that is heated while chicks are brooded, and not the whole house.
    pub is_of_brooding: bool,
    /// The most that heaters must give in an hour by the house as told, kW, and by the house as fitted.
    pub heat_peak_kw: (f64, f64),
}

impl FittedHouse {
    /// Fits leaks, sun on the roof and walls. Of readings in brooding and after it the more numerous count.
    ///
    /// - `weather`, `readings`: of the plan's own dates; hours by the same clock
    ///
    /// # Errors
    /// [`CannotFit`].
    pub fn of(answers: &Answers, weather: &Weather, readings: &Weather) -> Result<FittedHouse, CannotFit> {
        let plan = Read::of(answers)?;
        let fill = Fill { latitude_deg: plan.latitude_deg, wind_m_per_s: WIND_M_PER_S };
        let on = |file: &Weather, age_d: i32| file.hours(plan.placement.plus_days(age_d), 0, &fill);
        let read: Vec<i32> = (0..=plan.last_d).filter(|age| on(readings, *age).is_some()).collect();
        let (brooded, grown): (Vec<i32>, Vec<i32>) =
            read.into_iter().partition(|age| *age < plan.brooded_d());
        let is_of_brooding = brooded.len() >= grown.len();
        let days = if is_of_brooding { brooded } else { grown };
        let (Some(&first), Some(&last)) = (days.first(), days.last()) else { return Err(CannotFit::NoDays) };
        let first = first - DAYS_BEFORE;
        // Weather without a gap from two days before the first reading; what is read beyond a gap is left out.
        let outside: Vec<_> = (first..=last).map_while(|age| on(weather, age)).collect();
        let days: Vec<i32> = days
            .into_iter()
            .filter(|age| usize::try_from(age - first).is_ok_and(|at| at < outside.len()))
            .collect();
        if days.is_empty() {
            return Err(CannotFit::NoDays);
        }
        let part = if is_of_brooding { Part::Heated } else { Part::WholeHouse };
        let house = plan.house(answers, part, Guess::AS_TOLD)?;
        let before = plan.follow(answers, Guess::AS_TOLD, first.max(0), None)?;
        let house = plan.with_litter_of(&house, &before, first.max(0), house);
        let heater_kw = if is_of_brooding { plan.heaters_kw } else { 0.0 };
        let readings: Vec<Reading> = days
            .iter()
            .flat_map(|age| {
                let hours = on(readings, *age).into_iter().flatten();
                let from = usize::try_from(age - first).unwrap_or_default() * 24;
                hours
                    .into_iter()
                    .enumerate()
                    .map(move |(at, hour)| Reading { hour: from + at, inside_c: hour.outside_c })
            })
            .collect();
        let fit = fit::fit(
            &house,
            &plan.flock(first.max(0)),
            &plan.management(&house, first, heater_kw),
            &outside.concat(),
            &readings,
        )
        .map_err(CannotRun::Fault)?;
        let peak =
            |guess: Guess| Ok::<f64, CannotFit>(PlannedAir::of(answers, guess, None)?.needed.peak_kw());
        let fitted = Guess { walls: fit.through.best, leaks: fit.leakage.best, ..Guess::AS_TOLD };
        Ok(FittedHouse { fit, days, is_of_brooding, heat_peak_kw: (peak(Guess::AS_TOLD)?, peak(fitted)?) })
    }
}
