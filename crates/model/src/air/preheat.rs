//! How long a house is heated before chicks come.

use super::{AirFault, Flock, Hour, House, Management, run};

/// The longest heating that is tried, hours.
const LONGEST: usize = 96;

/// Hours of full heat in steady weather until the litter stands within `near_k` of the target; `None` where 96 hours do not do
/// it: then the brooders are too small or the house too open, and [`HouseHour::shortfall_kw`](super::HouseHour) says by how much.
///
/// # Errors
/// The first figure out of range.
pub fn hours(
    house: &House,
    flock: &Flock,
    management: &Management,
    outside: &Hour,
    near_k: f64,
) -> Result<Option<usize>, AirFault> {
    let before = Management {
        first_day: -(LONGEST as i32) / 24,
        first_hour: 0,
        preheat_hours: LONGEST as f64,
        ..management.clone()
    };
    // The ring stands over its own floor; without it the air of the house would not warm that floor.
    let run = run(&House { zone: None, ..*house }, flock, &before, &[*outside; LONGEST])?;
    let warm = run.hours.iter().position(|hour| {
        hour.target_c.is_some_and(|target| hour.mass_c >= target - near_k && hour.inside_c >= target - near_k)
    });
    Ok(warm.map(|after| after + 1))
}
