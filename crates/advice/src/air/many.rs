//! Many houses that might be this one, each through weather that might come: what is likely of its heat, and what may be.

use std::ops::Range;

use model::air::ensemble::Perturbation;
use model::chance::Draw;
use model::risk;
use quantity::{Answers, CivilDay};

use super::months::Months;
use super::{CannotRun, Guess, HeatNeeded, InAll, Outside, Part, Read};

/// The number of the first of six streams of draws: none of them is used for anything else.
const FIRST_STREAM: u32 = 640;

/// One of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Member {
    /// What it differs by.
    pub perturbation: Perturbation,
    /// The most that heaters must give in an hour, kW.
    pub heat_peak_kw: f64,
    /// Heat over all brooding days to hold what chicks want, kWh.
    pub heat_kwh: f64,
    /// Fuel for that, kg; `None` where no fuel is told.
    pub fuel_kg: Option<f64>,
    /// Hours of the batch that are an alert or worse.
    pub alert_hours: f64,
    /// Hours that are a danger or worse.
    pub danger_hours: f64,
}

/// Some of the members, by their numbers; parts worked out apart join to the whole. They go through the usual weather of the
/// plan's months where it tells them, else through its own days.
///
/// # Errors
/// [`CannotRun`] with the first field that is missing or cannot be.
pub fn part(answers: &Answers, seed: u64, numbers: Range<u32>) -> Result<Vec<Member>, CannotRun> {
    let plan = Read::of(answers)?;
    let months = Months::of(answers);
    numbers.map(|number| plan.member(answers, months.as_ref(), seed, number)).collect()
}

/// The point below which a share of them lies, between the two nearest; `None` where there are none.
pub fn point(members: &[Member], share: f64, of: impl Fn(&Member) -> Option<f64>) -> Option<f64> {
    let values: Vec<f64> = members.iter().map(of).collect::<Option<_>>()?;
    risk::quantile(&risk::sorted(&values), share)
}

impl Read {
    fn member(
        &self,
        answers: &Answers,
        months: Option<&Months>,
        seed: u64,
        number: u32,
    ) -> Result<Member, CannotRun> {
        let normal = |at: usize| {
            Draw { seed, scenario: number, stream: FIRST_STREAM + at as u32, day: 0, n: 0 }.normal()
        };
        let perturbation = Perturbation::at(std::array::from_fn(normal));
        let plan = Read { perturbation: Some(perturbation), ..self.clone() };
        let usual = |day: CivilDay| Some(months?.day(day).hours());
        let outside: Outside = if months.is_some() { Some(&usual) } else { None };
        let followed = plan.follow(answers, Guess::AS_TOLD, plan.last_d + 1, outside)?;
        let hot = InAll::of(&plan.judged(followed.hours, 0.0));
        let needed: HeatNeeded = plan.needed(&plan.house(answers, Part::Heated, Guess::AS_TOLD)?, outside)?;
        let heat_kwh = needed.in_all_kwh();
        Ok(Member {
            perturbation,
            heat_peak_kw: needed.peak_kw(),
            heat_kwh,
            fuel_kg: plan.useful_mj_per_kg.map(|useful| model::heat::fuel(heat_kwh, useful)),
            alert_hours: hot.alert_hours,
            danger_hours: hot.danger_hours,
        })
    }
}
