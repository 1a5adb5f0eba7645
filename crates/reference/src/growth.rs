//! Live weight and feed by day of age: the curves a plan can be held against.

use std::sync::OnceLock;

use quantity::{CurvePoint, DayOfAge, Mass, Status};

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

    /// The curve, read once and kept.
    ///
    /// # Errors
    /// [`TableError`] when the table does not hold what it should.
    pub fn curve(self) -> Result<&'static GrowthCurve, TableError> {
        static READ: [OnceLock<Result<GrowthCurve, TableError>>; 3] = [const { OnceLock::new() }; 3];
        READ[self as usize].get_or_init(|| self.read()).as_ref().map_err(Clone::clone)
    }

    fn read(self) -> Result<GrowthCurve, TableError> {
        let (table, kind_column, kind, feed_column) = match self {
            Standard::Fast => ("growth_fast", None, "", "cum_feed_g"),
            Standard::OpenHouse => ("growth_tropical", Some("id"), "T_curve", "feed_g"),
            Standard::Slow => ("growth_slow", Some("dataset"), "S1_slow63", "cum_feed_g"),
        };
        let table = Table::shipped(table)?;
        let kind_at = kind_column.map(|column| table.column(column)).transpose()?;
        let mut points = Vec::new();
        for row in table.rows.iter().filter(|row| kind_at.is_none_or(|at| row[at] == kind)) {
            let age = table.number(row, "age_d")?;
            let weight = table.number(row, "body_weight_g")?;
            if let (Some(age), Some(weight)) = (age, weight) {
                let feed = table.number(row, feed_column)?.map(Mass::grams);
                points.push(Point { age: age as i32, weight: Mass::grams(weight), feed });
            }
        }
        Ok(GrowthCurve { points })
    }
}

/// Live weight of one bird and the feed it has eaten, one point a day of age.
#[derive(Clone, Debug, PartialEq)]
pub struct GrowthCurve {
    points: Vec<Point>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Point {
    age: i32,
    weight: Mass,
    /// Eaten from placement to this day.
    feed: Option<Mass>,
}

impl GrowthCurve {
    /// The weight on a day of age; `None` outside the table: a curve is never stretched.
    pub fn weight(&self, age: DayOfAge) -> Option<Mass> {
        self.point(age).map(|point| point.weight)
    }

    /// Feed eaten by one bird from placement to the end of a day of age; `None` outside the table or where the curve
    /// does not tell it.
    pub fn feed_to_date(&self, age: DayOfAge) -> Option<Mass> {
        self.point(age)?.feed
    }

    /// Feed eaten on one day of age. The tables count the first day of eating as day 1, so day 0 has none.
    pub fn feed_on(&self, age: DayOfAge) -> Option<Mass> {
        let to_date = self.feed_to_date(age)?.in_grams();
        let before = if age.0 == 0 { 0.0 } else { self.feed_to_date(DayOfAge(age.0 - 1))?.in_grams() };
        Some(Mass::grams(to_date - before))
    }

    /// Feed that a bird of this curve has eaten when it reaches a weight, by a straight line between two days; above the
    /// curve's greatest weight, as much for each gram as on its last day. `None` where the curve tells no feed.
    pub fn feed_to_weight(&self, weight: Mass) -> Option<Mass> {
        let wanted = weight.in_grams();
        let ends = |pair: &[Point]| -> Option<[f64; 4]> {
            let [one, two] = [pair.first()?, pair.get(1)?];
            Some([one.weight.in_grams(), two.weight.in_grams(), one.feed?.in_grams(), two.feed?.in_grams()])
        };
        let pairs = || self.points.windows(2).filter(|pair| pair[1].weight > pair[0].weight);
        let pair =
            pairs().find(|pair| wanted <= pair[1].weight.in_grams()).or_else(|| pairs().next_back())?;
        let [from, to, eaten_from, eaten_to] = ends(pair)?;
        let eaten = eaten_from + (eaten_to - eaten_from) * (wanted - from) / (to - from);
        Some(Mass::grams(eaten.max(0.0)))
    }

    /// A grower's own curve. Days between its rows are filled in: weight by an even share of growth a day (a straight
    /// line of logarithms), feed by a straight line.
    pub fn of_points(rows: &[CurvePoint]) -> GrowthCurve {
        let mut points: Vec<Point> = rows.windows(2).flat_map(between).collect();
        points.extend(rows.last().map(|row| Point::on(row.age_d, row.weight_g, row.feed_to_date_g)));
        GrowthCurve { points }
    }

    fn point(&self, age: DayOfAge) -> Option<&Point> {
        // Days follow each other without a gap.
        let first = self.points.first()?.age;
        self.points.get(usize::try_from(age.0 - first).ok()?)
    }

    /// First and last day of age.
    pub fn span(&self) -> Option<(DayOfAge, DayOfAge)> {
        Some((DayOfAge(self.points.first()?.age), DayOfAge(self.points.last()?.age)))
    }

    /// Every day and its weight.
    pub fn points(&self) -> impl Iterator<Item = (DayOfAge, Mass)> + '_ {
        self.points.iter().map(|point| (DayOfAge(point.age), point.weight))
    }
}

impl Point {
    fn on(age: i32, weight_g: f64, feed_g: Option<f64>) -> Point {
        Point { age, weight: Mass::grams(weight_g), feed: feed_g.map(Mass::grams) }
    }
}

/// The days from one row up to, not including, the next.
fn between(rows: &[CurvePoint]) -> Vec<Point> {
    let (from, to) = (rows[0], rows[1]);
    let span = f64::from(to.age_d - from.age_d);
    let day = |age: i32| {
        let part = f64::from(age - from.age_d) / span;
        let weight = from.weight_g * (to.weight_g / from.weight_g).powf(part);
        let feed = from.feed_to_date_g.zip(to.feed_to_date_g).map(|(one, two)| one + (two - one) * part);
        Point::on(age, weight, feed)
    };
    (from.age_d..to.age_d).map(day).collect()
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
    fn feed_of_the_days_adds_up_to_the_feed_to_date() {
        for standard in Standard::ALL {
            let curve = standard.curve().unwrap();
            let days = (0..=42).map(|day| curve.feed_on(DayOfAge(day)).unwrap().in_grams());
            let to_date = curve.feed_to_date(DayOfAge(42)).unwrap().in_grams();
            assert!((days.sum::<f64>() - to_date).abs() < 1e-9, "{standard:?}");
            assert!((0..=42).all(|day| curve.feed_on(DayOfAge(day)).unwrap().in_grams() >= 0.0));
        }
    }

    #[test]
    fn a_weight_of_a_day_has_eaten_the_feed_of_the_day() {
        for standard in Standard::ALL {
            let curve = standard.curve().unwrap();
            for day in [0, 7, 21, 42] {
                let day = DayOfAge(day);
                let eaten = curve.feed_to_weight(curve.weight(day).unwrap()).unwrap().in_grams();
                assert!((eaten - curve.feed_to_date(day).unwrap().in_grams()).abs() < 1e-9, "{standard:?}");
            }
            let grams = [10.0, 500.0, 501.0, 2500.0, 6000.0, 6001.0];
            let eaten = grams.map(|grams| curve.feed_to_weight(Mass::grams(grams)).unwrap().in_grams());
            assert!(eaten.windows(2).all(|pair| pair[0] <= pair[1]), "{standard:?} {eaten:?}");
        }
    }

    #[test]
    fn an_own_curve_by_the_week_has_every_day() {
        let row = |age_d, weight_g, feed| CurvePoint {
            age_d,
            weight_g,
            feed_to_date_g: Some(feed),
            daily_feed_g: 0.0,
        };
        let curve = GrowthCurve::of_points(&[row(0, 40.0, 0.0), row(7, 160.0, 140.0), row(14, 400.0, 500.0)]);
        assert_eq!(curve.points().count(), 15);
        assert!((curve.feed_on(DayOfAge(5)).unwrap().in_grams() - 20.0).abs() < 1e-9);
        let halfway = curve.weight(DayOfAge(7)).unwrap().in_grams();
        assert!((halfway - 160.0).abs() < 1e-9);
        // Twice the doubling in seven days: each day grows by the seventh root of four.
        let day = curve.weight(DayOfAge(1)).unwrap().in_grams();
        assert!((day - 40.0 * 4.0f64.powf(1.0 / 7.0)).abs() < 1e-9);
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
