//! Live weight by day of age: the curves a plan can be held against.

use quantity::{DayOfAge, Mass, Status};

use crate::table::{Table, TableError};

/// A growth curve by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standard {
    /// A present-day fast line under good management: an objective, from memory, within 3 %.
    Fast,
    /// A modelled curve for open-sided houses in the tropics; houses differ by 13 % either way.
    OpenHouse,
    /// A slower-growing commercial line.
    Slow,
}

impl Standard {
    /// All of them.
    pub const ALL: [Standard; 3] = [Standard::Fast, Standard::OpenHouse, Standard::Slow];

    /// The word in a plan file.
    pub fn name(self) -> &'static str {
        match self {
            Standard::Fast => "fast",
            Standard::OpenHouse => "open-house",
            Standard::Slow => "slow",
        }
    }

    /// From the word in a plan file.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|standard| standard.name() == name)
    }

    /// The bibliography key.
    pub fn source(self) -> &'static str {
        match self {
            Standard::Fast => "growth-fast",
            Standard::OpenHouse => "growth-open-house",
            Standard::Slow => "growth-slow",
        }
    }

    /// How far the curve can be trusted.
    pub fn status(self) -> Status {
        match self {
            Standard::Fast => Status::FromMemory,
            Standard::OpenHouse => Status::Modelled,
            Standard::Slow => Status::Interpolated,
        }
    }

    /// How far houses or sources lie from the curve, as a share either way; `None` where nothing is known.
    /// 3 % is the rounding of the fast curve's header, 13 % the published span of 1.77 to 2.30 kg at 42 days.
    pub fn spread(self) -> Option<f64> {
        match self {
            Standard::Fast => Some(0.03),
            Standard::OpenHouse => Some(0.13),
            Standard::Slow => None,
        }
    }

    /// Reads the curve.
    ///
    /// # Errors
    /// [`TableError`] when the table does not hold what it should.
    pub fn curve(self) -> Result<GrowthCurve, TableError> {
        let (table, kind_column, kind) = match self {
            Standard::Fast => ("growth_fast", None, ""),
            Standard::OpenHouse => ("growth_tropical", Some("id"), "T_curve"),
            Standard::Slow => ("growth_slow", Some("dataset"), "S1_slow63"),
        };
        let table = Table::shipped(table)?;
        let kind_at = kind_column.map(|column| table.column(column)).transpose()?;
        let mut points = Vec::new();
        for row in table.rows.iter().filter(|row| kind_at.is_none_or(|at| row[at] == kind)) {
            let age = table.number(row, "age_d")?;
            let weight = table.number(row, "body_weight_g")?;
            if let (Some(age), Some(weight)) = (age, weight) {
                points.push((age as i32, Mass::grams(weight)));
            }
        }
        Ok(GrowthCurve { points })
    }
}

/// Live weight of one bird, one point a day of age.
#[derive(Clone, Debug, PartialEq)]
pub struct GrowthCurve {
    points: Vec<(i32, Mass)>,
}

impl GrowthCurve {
    /// The weight on a day of age; `None` outside the table: a curve is never stretched.
    pub fn weight(&self, age: DayOfAge) -> Option<Mass> {
        self.points.iter().find(|(day, _)| *day == age.0).map(|&(_, weight)| weight)
    }

    /// First and last day of age.
    pub fn span(&self) -> Option<(DayOfAge, DayOfAge)> {
        Some((DayOfAge(self.points.first()?.0), DayOfAge(self.points.last()?.0)))
    }

    /// Every day and its weight.
    pub fn points(&self) -> impl Iterator<Item = (DayOfAge, Mass)> + '_ {
        self.points.iter().map(|&(day, weight)| (DayOfAge(day), weight))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_curves_hold_their_anchors() {
        let grams = |standard: Standard, age| {
            standard.curve().unwrap().weight(DayOfAge(age)).map(|weight| weight.in_grams().round())
        };
        assert_eq!(grams(Standard::Fast, 42), Some(2990.0));
        assert_eq!(grams(Standard::OpenHouse, 42), Some(2035.0));
        assert_eq!(grams(Standard::Slow, 0), Some(40.0));
        assert_eq!(grams(Standard::Fast, 57), None);
    }

    #[test]
    fn no_day_is_skipped_and_no_bird_shrinks() {
        for standard in Standard::ALL {
            let points: Vec<_> = standard.curve().unwrap().points().collect();
            for pair in points.windows(2) {
                assert_eq!(pair[1].0.0, pair[0].0.0 + 1, "{standard:?}");
                assert!(pair[1].1 >= pair[0].1, "{standard:?} {:?}", pair[1].0);
            }
        }
    }
}
