//! Medicine: the arithmetic of a label, and the clock that starts with the last dose.
//!
//! Nothing here knows a drug or a dose. Every number comes from the label or the veterinarian, who go before any sum.

use quantity::CivilDay;
use quantity::physical::round_up;

/// How many times the smaller amount the greater may be where a label can be worked out in two ways: 20 % more.
///
/// Our judgement: labels round, scales and water meters stray; beyond it a unit or a strength was mistaken.
pub const MOST_APART: f64 = 1.2;

/// From this many degrees warmer than the day the water was measured, birds drink so much more that a mix by the
/// litre overdoses them. Our judgement: 3 degrees are some 10 to 20 % more water.
pub const HOTTER_C: f64 = 3.0;

/// Active substance for one day, mg: the label's mg for a kilogram of bird, times the kilograms.
pub fn active_mg(dose_mg_per_kg: f64, live_kg: f64) -> f64 {
    dose_mg_per_kg * live_kg
}

/// Product for one day by the weight of the birds, in mL or g.
///
/// - `active_mg`: active for the day, mg; `strength`: mg of active in one mL or one g of product, above 0
pub fn product_of_active(active_mg: f64, strength: f64) -> f64 {
    active_mg / strength
}

/// How many times the smaller of two amounts the greater is; both above 0.
pub fn times_apart(one: f64, other: f64) -> f64 {
    one.max(other) / one.min(other)
}

/// Whether two ways to work out one day's product agree well enough to pour it; see [`MOST_APART`].
pub fn agree(by_weight: f64, by_water: f64) -> bool {
    // The slack keeps exactly 20 % on this side whatever the arithmetic's last digit.
    times_apart(by_weight, by_water) <= MOST_APART * (1.0 + 1e-9)
}

/// Bottles for a whole course: all days together, rounded up.
pub fn bottles(product_a_day: f64, days: f64, bottle: f64) -> f64 {
    round_up(product_a_day * days / bottle)
}

/// Sachets for a whole course: each day's rounded up, since an open sachet is not kept for the next day.
pub fn sachets(product_a_day: f64, days: f64, sachet: f64) -> f64 {
    days * round_up(product_a_day / sachet)
}

/// The last hour of a day, and the hour that counts where nobody wrote one down.
const DAY_END_H: u8 = 24;

/// A treatment, or a feed, that keeps birds from being eaten for a while.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Withdrawal {
    /// What was given, as the grower calls it.
    pub product: String,
    /// The day on which the last medicated water or feed was gone and the lines were flushed.
    pub last: CivilDay,
    /// The hour of that day by which it was gone, 0 to 24, rounded up; unknown counts as the day's end.
    pub hour: Option<u8>,
    /// The label's days, or the veterinarian's; `None` where nobody knows, which is never taken for 0.
    pub days: Option<u16>,
}

/// When a withdrawal is over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clear {
    /// From this hour, 0 to 23, of this day.
    On {
        /// The day.
        day: CivilDay,
        /// The hour.
        hour: u8,
    },
    /// Nobody knows: only a veterinarian can say.
    Unknown,
}

impl Withdrawal {
    /// The withdrawal of a feed: the last day on which any of it was fed counts, days of mixing included, to its end.
    pub fn of_feed(product: String, last_fed: CivilDay, days: Option<u16>) -> Withdrawal {
        Withdrawal { product, last: last_fed, hour: None, days }
    }

    /// When it is over: whole periods of 24 hours from the last hour.
    ///
    /// An hour past 24 counts as the day's end.
    pub fn clear(&self) -> Clear {
        let Some(days) = self.days else { return Clear::Unknown };
        let hour = self.hour.unwrap_or(DAY_END_H).min(DAY_END_H);
        let day = self.last.plus_days(i32::from(days) + i32::from(hour / DAY_END_H));
        Clear::On { day, hour: hour % DAY_END_H }
    }

    /// Whether birds may not be sold, eaten at home, given away or culled for food on a day.
    pub fn holds_on(&self, day: CivilDay) -> bool {
        self.clear().earliest_day().is_none_or(|earliest| day < earliest)
    }
}

impl Clear {
    /// The first day that lies behind it from its first hour on: nobody watches the clock at the knife.
    /// `None` where nobody knows.
    pub fn earliest_day(self) -> Option<CivilDay> {
        match self {
            Clear::On { day, hour } => Some(day.plus_days(i32::from(hour > 0))),
            Clear::Unknown => None,
        }
    }
}

/// The withdrawals that keep birds from being sold, eaten, given away or culled for food on a day, in their order;
/// empty where none does.
pub fn blocks(day: CivilDay, withdrawals: &[Withdrawal]) -> Vec<&Withdrawal> {
    withdrawals.iter().filter(|withdrawal| withdrawal.holds_on(day)).collect()
}

/// When birds under several withdrawals are clear: the latest rules, and one that nobody knows rules them all.
/// `None` where there is no withdrawal.
pub fn clear_of_all(withdrawals: &[Withdrawal]) -> Option<Clear> {
    withdrawals.iter().map(Withdrawal::clear).reduce(|one, other| match (one, other) {
        (Clear::On { day: a, hour: h }, Clear::On { day: b, hour: k }) => {
            if (a, h) >= (b, k) {
                one
            } else {
                other
            }
        }
        _ => Clear::Unknown,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(number: u8) -> CivilDay {
        CivilDay::parse(&format!("2027-03-{number:02}")).unwrap()
    }

    fn given(last: u8, hour: Option<u8>, days: Option<u16>) -> Withdrawal {
        Withdrawal { product: "coccidiosis water".to_owned(), last: day(last), hour, days }
    }

    #[test]
    fn an_unknown_hour_is_the_days_end() {
        let untold = given(3, None, Some(7));
        assert_eq!(untold.clear(), given(3, Some(24), Some(7)).clear());
        assert_eq!(untold.clear(), Clear::On { day: day(11), hour: 0 });
        assert_eq!(untold.clear().earliest_day(), Some(day(11)));
        assert_eq!(Withdrawal::of_feed("grower".to_owned(), day(3), Some(7)).clear(), untold.clear());
    }

    #[test]
    fn midnight_clears_the_day_that_begins() {
        assert_eq!(given(3, Some(0), Some(2)).clear().earliest_day(), Some(day(5)));
        assert_eq!(given(3, Some(1), Some(2)).clear().earliest_day(), Some(day(6)));
    }

    /// A label that says 0 days clears at the last hour; a label that says nothing never does.
    #[test]
    fn nothing_is_not_zero() {
        assert_eq!(given(3, Some(9), Some(0)).clear(), Clear::On { day: day(3), hour: 9 });
        let unknown = given(3, Some(9), None);
        assert_eq!(unknown.clear(), Clear::Unknown);
        assert!(unknown.holds_on(day(3)) && unknown.holds_on(day(3).plus_days(4000)));
    }

    #[test]
    fn the_latest_rules_and_one_unknown_rules_all() {
        let mut treatments = vec![given(3, Some(18), Some(7)), given(6, None, Some(2))];
        assert_eq!(clear_of_all(&treatments), Some(Clear::On { day: day(10), hour: 18 }));
        assert_eq!(blocks(day(10), &treatments), [&treatments[0]]);
        assert!(blocks(day(11), &treatments).is_empty());
        treatments.push(given(1, None, None));
        assert_eq!(clear_of_all(&treatments), Some(Clear::Unknown));
        assert_eq!(blocks(day(31), &treatments).len(), 1);
        assert_eq!(clear_of_all(&[]), None);
    }

    #[test]
    fn a_fifth_apart_still_agrees() {
        assert!(agree(100.0, 120.0) && agree(120.0, 100.0) && agree(0.36, 0.3));
        assert!(!agree(100.0, 121.0) && !agree(121.0, 100.0));
    }

    #[test]
    fn an_open_sachet_is_not_kept() {
        assert_eq!(bottles(40.0, 5.0, 100.0), 2.0);
        assert_eq!(sachets(40.0, 5.0, 100.0), 5.0);
        assert_eq!(sachets(200.0, 5.0, 100.0), 10.0);
    }
}
