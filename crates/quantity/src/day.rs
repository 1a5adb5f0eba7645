//! Civil days and days of age. A day belongs to the place where the birds are.

use std::fmt;

/// A day of the calendar at the farm, without a time and without a zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CivilDay(jiff::civil::Date);

/// A number of days since placement. The day of placement is day 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DayOfAge(pub i32);

impl CivilDay {
    /// From year, month 1 to 12 and day of the month; `None` when there is no such day.
    pub fn new(year: i16, month: i8, day: i8) -> Option<Self> {
        jiff::civil::Date::new(year, month, day).ok().map(Self)
    }

    /// Reads `YYYY-MM-DD` (ISO 8601), nothing else: 03/04 is two different days in two countries.
    pub fn parse(text: &str) -> Option<Self> {
        let mut parts = text.trim().splitn(3, '-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        if year.len() != 4 || month.len() != 2 || day.len() != 2 {
            return None;
        }
        Self::new(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?)
    }

    /// So many days later, earlier where negative. Stops at the calendar's ends (years -9999 and 9999).
    pub fn plus_days(self, days: i32) -> Self {
        Self(self.0.saturating_add(jiff::Span::new().days(days.clamp(-3_000_000, 3_000_000))))
    }

    /// Whole days from `earlier` to this day.
    pub fn days_since(self, earlier: CivilDay) -> i32 {
        self.number() - earlier.number()
    }

    /// Days since 1970-01-01, so that a day can stand in a formula.
    pub fn number(self) -> i32 {
        let epoch = jiff::civil::Date::constant(1970, 1, 1);
        self.0.since(epoch).map(|span| span.get_days()).unwrap_or_default()
    }

    /// The inverse of [`CivilDay::number`].
    pub fn from_number(number: i32) -> Self {
        Self(jiff::civil::Date::constant(1970, 1, 1)).plus_days(number)
    }

    /// The year.
    pub fn year(self) -> i16 {
        self.0.year()
    }

    /// The month, 1 to 12.
    pub fn month(self) -> i8 {
        self.0.month()
    }

    /// The day of the month.
    pub fn day(self) -> i8 {
        self.0.day()
    }

    /// The day of the week, 1 for Monday to 7 for Sunday (ISO 8601).
    pub fn weekday(self) -> i8 {
        self.0.weekday().to_monday_one_offset()
    }

    /// The day of the year, 1 to 366.
    pub fn day_of_year(self) -> i16 {
        self.0.day_of_year()
    }
}

impl fmt::Display for CivilDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year(), self.month(), self.day())
    }
}

impl serde::Serialize for CivilDay {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for CivilDay {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        Self::parse(&text).ok_or_else(|| serde::de::Error::custom(format!("{text} is no day YYYY-MM-DD")))
    }
}

impl DayOfAge {
    /// The age on a day, for a batch placed on `placement`.
    pub fn on(day: CivilDay, placement: CivilDay) -> Self {
        Self(day.days_since(placement))
    }

    /// The day on which a batch placed on `placement` reaches this age.
    pub fn date(self, placement: CivilDay) -> CivilDay {
        placement.plus_days(self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn forty_two_days_after_mid_september() {
        let placement = CivilDay::new(2027, 9, 14).unwrap();
        assert_eq!(DayOfAge(42).date(placement).to_string(), "2027-10-26");
        assert_eq!(placement.weekday(), 2, "a Tuesday");
        assert_eq!(DayOfAge::on(placement, placement), DayOfAge(0));
    }

    #[test]
    fn numbers_come_back_over_leap_years() {
        for number in [-25567, 0, 11016, 21092, 47541] {
            assert_eq!(CivilDay::from_number(number).number(), number);
        }
        assert_eq!(CivilDay::new(2000, 3, 1).unwrap().number(), 11017);
    }

    #[test]
    fn only_iso_days_are_read() {
        assert!(CivilDay::parse("2027-09-14").is_some());
        for bad in ["14/09/2027", "2027-9-14", "2027-02-29", "2027-13-01", "", "soon"] {
            assert!(CivilDay::parse(bad).is_none(), "{bad}");
        }
    }
}
