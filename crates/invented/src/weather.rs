//! The days outside, by the seasons of the invented farm at 13.6° S and 1 100 m: a cool dry season, a hot one before the
//! rains, the rains. Months are invented in the manner of such places.

use quantity::CivilDay;

use crate::luck::Luck;
use crate::scenario::Event;

/// A day outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outside {
    /// Coldest of the night, °C.
    pub coldest_c: f64,
    /// Warmest of the day, °C.
    pub warmest_c: f64,
    /// Least relative humidity, %.
    pub driest_percent: f64,
    /// Greatest, %.
    pub dampest_percent: f64,
}

/// By month: coldest, warmest, driest, dampest in the middle of it.
const MONTHS: [[f64; 4]; 12] = [
    [17.5, 26.5, 60.0, 92.0],
    [17.5, 26.5, 60.0, 92.0],
    [17.0, 27.0, 55.0, 92.0],
    [15.5, 27.0, 48.0, 90.0],
    [12.5, 26.0, 40.0, 86.0],
    [10.0, 24.5, 38.0, 82.0],
    [9.5, 24.5, 34.0, 78.0],
    [11.5, 27.0, 28.0, 70.0],
    [14.5, 30.5, 24.0, 62.0],
    [17.5, 32.5, 26.0, 60.0],
    [18.5, 30.5, 38.0, 75.0],
    [18.0, 27.5, 56.0, 90.0],
];

/// How much hotter a hot spell is, °C.
const HOT_SPELL_C: f64 = 4.0;

/// What stays of a warm day on the next.
const STAYS: f64 = 0.65;

/// So many days from a day on. Warm days follow warm days.
pub(crate) fn days(from: CivilDay, count: i32, events: &[Event], luck: &mut Luck) -> Vec<Outside> {
    let mut warmer = 1.4 * luck.normal();
    let day = |age: i32| {
        warmer = STAYS * warmer + 1.1 * luck.normal();
        let [coldest, warmest, driest, dampest] = usual(from.plus_days(age));
        let hot = if is_hot(events, age) { HOT_SPELL_C } else { 0.0 };
        let damper = 5.0 * luck.normal() - 2.0 * warmer - 1.5 * hot;
        let dampest_percent = (dampest + damper).clamp(35.0, 98.0);
        Outside {
            coldest_c: coldest + 0.7 * warmer + 0.8 * luck.normal() + 0.5 * hot,
            warmest_c: warmest + warmer + 0.5 * luck.normal() + hot,
            driest_percent: (driest + damper).clamp(12.0, dampest_percent - 5.0),
            dampest_percent,
        }
    };
    (0..count).map(day).collect()
}

/// Whether a hot spell is on.
pub(crate) fn is_hot(events: &[Event], age: i32) -> bool {
    events.iter().any(|event| match *event {
        Event::HotSpell { first, days } => (first..first + days).contains(&age),
        _ => false,
    })
}

/// The usual day of the season, between the middles of two months.
fn usual(day: CivilDay) -> [f64; 4] {
    let since_middle = f64::from(day.day()) - 15.0;
    let month = usize::try_from(day.month() - 1).unwrap_or_default();
    let other = if since_middle < 0.0 { (month + 11) % 12 } else { (month + 1) % 12 };
    let share = since_middle.abs() / 30.5;
    std::array::from_fn(|at| (1.0 - share) * MONTHS[month][at] + share * MONTHS[other][at])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mean_warmest(month: i8, events: &[Event]) -> f64 {
        let from = CivilDay::new(2027, month, 1).unwrap();
        let year: Vec<f64> = (0..40)
            .flat_map(|seed| days(from, 28, events, &mut Luck::of(seed, 1)))
            .map(|day| day.warmest_c)
            .collect();
        year.iter().sum::<f64>() / year.len() as f64
    }

    #[test]
    fn october_is_hot_july_is_not_and_a_hot_spell_shows() {
        let (july, october) = (mean_warmest(7, &[]), mean_warmest(10, &[]));
        assert!((23.0..26.0).contains(&july) && (31.0..33.5).contains(&october), "{july} {october}");
        let hot = mean_warmest(10, &[Event::HotSpell { first: 0, days: 28 }]);
        assert!((hot - october - HOT_SPELL_C).abs() < 1e-9);
    }

    #[test]
    fn seasons_have_no_steps() {
        let first = CivilDay::new(2027, 1, 1).unwrap();
        for day in 0..365 {
            let (one, next) = (usual(first.plus_days(day)), usual(first.plus_days(day + 1)));
            assert!((one[1] - next[1]).abs() < 0.2, "day {day}");
        }
    }
}
