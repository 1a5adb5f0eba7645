//! A growth curve typed or pasted as CSV: one row a day of age, or one a week with the days between filled in.

/// A row of a growth curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurvePoint {
    /// Day of age; the day of placement is day 0.
    pub age_d: i32,
    /// Live weight of one bird, g.
    pub weight_g: f64,
    /// Feed eaten by one bird from placement to this day, g, where the curve tells it.
    pub feed_to_date_g: Option<f64>,
    /// Feed eaten on this day, g, where the curve tells it; else 0.
    pub daily_feed_g: f64,
}

/// Why a text is no growth curve. Lines count from 1 with the header as the first line read.
#[derive(Clone, Debug, PartialEq)]
pub enum CurveFault {
    /// A column that must be there is not.
    NoColumn {
        /// Its name.
        column: &'static str,
    },
    /// A cell is no number.
    NotANumber {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The cell.
        cell: String,
    },
    /// A number that no bird can have.
    OutOfRange {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The number.
        value: f64,
        /// Least possible.
        low: f64,
        /// Greatest possible.
        high: f64,
    },
    /// A number is less than the one before it: days do not ascend, birds shrink, or feed is given back.
    Falls {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The number.
        value: f64,
        /// The one before.
        before: f64,
    },
    /// A row has more cells than the header: a decimal comma, perhaps.
    TooManyCells {
        /// The line.
        line: usize,
    },
    /// Fewer than two rows, or it does not start on day 0.
    TooShort,
}

const AGE: &str = "age_d";
const WEIGHT: &str = "body_weight_g";
const FEED: &str = "cum_feed_g";
const DAILY: &str = "daily_feed_g";

/// The greatest curve read, rows.
const MOST_ROWS: usize = 200;

/// Reads a growth curve: columns `age_d` and `body_weight_g`, and either `cum_feed_g` or `daily_feed_g` where feed is told.
/// Cells are parted by comma, semicolon or tab; lines that start with `#` are skipped.
///
/// # Errors
/// [`CurveFault`] with line and column.
pub fn parse(text: &str) -> Result<Vec<CurvePoint>, CurveFault> {
    let mut lines = text
        .lines()
        .enumerate()
        .map(|(at, line)| (at + 1, line.trim()))
        .filter(|(_, line)| !line.is_empty() && !line.starts_with('#'));
    let (_, header) = lines.next().ok_or(CurveFault::NoColumn { column: AGE })?;
    let columns = Columns::of(header)?;
    let mut points: Vec<CurvePoint> = Vec::new();
    for (line, row) in lines.take(MOST_ROWS) {
        let point = columns.point(line, &cells(row), points.last())?;
        points.push(point);
    }
    if points.len() < 2 || points.first().is_none_or(|first| first.age_d != 0) {
        return Err(CurveFault::TooShort);
    }
    Ok(points)
}

fn cells(row: &str) -> Vec<&str> {
    row.split([',', ';', '\t']).map(|cell| cell.trim().trim_matches('"')).collect()
}

struct Columns {
    count: usize,
    age: usize,
    weight: usize,
    feed: Option<usize>,
    daily: Option<usize>,
}

impl Columns {
    fn of(header: &str) -> Result<Columns, CurveFault> {
        let names = cells(header);
        let at = |column: &str| names.iter().position(|name| name.eq_ignore_ascii_case(column));
        Ok(Columns {
            count: names.len(),
            age: at(AGE).ok_or(CurveFault::NoColumn { column: AGE })?,
            weight: at(WEIGHT).ok_or(CurveFault::NoColumn { column: WEIGHT })?,
            feed: at(FEED),
            daily: at(DAILY),
        })
    }

    fn point(
        &self,
        line: usize,
        cells: &[&str],
        before: Option<&CurvePoint>,
    ) -> Result<CurvePoint, CurveFault> {
        if cells.len() > self.count {
            return Err(CurveFault::TooManyCells { line });
        }
        let cell = |at: usize| cells.get(at).copied().unwrap_or_default();
        let age = number(line, AGE, cell(self.age), 0.0, 120.0)?;
        let weight_g = number(line, WEIGHT, cell(self.weight), 20.0, 8_000.0)?;
        if let Some(before) = before {
            rises(line, AGE, age, f64::from(before.age_d), true)?;
            rises(line, WEIGHT, weight_g, before.weight_g, false)?;
        }
        let feed_to_date_g = self.feed_to_date(line, age, &cell, before)?;
        let daily_feed_g = match self.daily {
            Some(at) if !cell(at).is_empty() => number(line, DAILY, cell(at), 0.0, 500.0)?,
            _ => 0.0,
        };
        Ok(CurvePoint { age_d: age as i32, weight_g, feed_to_date_g, daily_feed_g })
    }

    fn feed_to_date<'a>(
        &self,
        line: usize,
        age: f64,
        cell: &impl Fn(usize) -> &'a str,
        before: Option<&CurvePoint>,
    ) -> Result<Option<f64>, CurveFault> {
        let eaten = before.and_then(|before| before.feed_to_date_g).unwrap_or(0.0);
        match (self.feed, self.daily) {
            (Some(at), _) => {
                let feed = number(line, FEED, cell(at), 0.0, 30_000.0)?;
                rises(line, FEED, feed, eaten, false)?;
                Ok(Some(feed))
            }
            // Day 0 has no whole day of eating behind it, and booklets leave its cell empty.
            (None, Some(at)) if before.is_none() && cell(at).is_empty() => Ok(Some(0.0)),
            // A rate told for some days holds between them by a straight line.
            (None, Some(at)) => {
                let rate = number(line, DAILY, cell(at), 0.0, 500.0)?;
                let since = before.map_or(0.0, |before| age - f64::from(before.age_d));
                let from = before.map_or(0.0, |before| before.daily_feed_g);
                let step = (rate - from) / since.max(1.0);
                Ok(Some(eaten + since * from + step * since * (since + 1.0) / 2.0))
            }
            (None, None) => Ok(None),
        }
    }
}

fn number(line: usize, column: &'static str, cell: &str, low: f64, high: f64) -> Result<f64, CurveFault> {
    let value: f64 =
        cell.parse().map_err(|_| CurveFault::NotANumber { line, column, cell: cell.to_owned() })?;
    let whole = column != AGE || value.fract() == 0.0;
    if (low..=high).contains(&value) && whole {
        Ok(value)
    } else {
        Err(CurveFault::OutOfRange { line, column, value, low, high })
    }
}

fn rises(
    line: usize,
    column: &'static str,
    value: f64,
    before: f64,
    strictly: bool,
) -> Result<(), CurveFault> {
    let falls = if strictly { value <= before } else { value < before };
    if falls { Err(CurveFault::Falls { line, column, value, before }) } else { Ok(()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pasted_booklet() {
        let points = parse("age_d,body_weight_g,daily_feed_g\n0,42,\n1,56,12\n2,72,16\n").unwrap();
        assert_eq!(
            points[2],
            CurvePoint { age_d: 2, weight_g: 72.0, feed_to_date_g: Some(28.0), daily_feed_g: 16.0 }
        );
        // Day 7 at 35 g from nothing on day 0: 5 + 10 + ... + 35; then 35 to 70 in steps of 5.
        let rates = parse("age_d,body_weight_g,daily_feed_g\n0,42,\n7,150,35\n14,380,70\n").unwrap();
        assert_eq!(rates[1].feed_to_date_g, Some(140.0));
        assert_eq!(rates[2].feed_to_date_g, Some(140.0 + 385.0));
        let weekly = parse("# ours\nAge_d;body_weight_g;cum_feed_g\n0;40;0\n7;180;150").unwrap();
        assert_eq!(weekly[1].feed_to_date_g, Some(150.0));
        assert_eq!(parse("age_d\tbody_weight_g\n0\t40\n7\t180").unwrap()[1].feed_to_date_g, None);
    }

    #[test]
    fn faults_name_line_and_column() {
        let fault = |text: &str| parse(text).unwrap_err();
        assert_eq!(fault(""), CurveFault::NoColumn { column: "age_d" });
        assert_eq!(fault("age_d,weight\n0,40"), CurveFault::NoColumn { column: "body_weight_g" });
        assert_eq!(
            fault("age_d,body_weight_g\n0,40\n7,x"),
            CurveFault::NotANumber { line: 3, column: "body_weight_g", cell: "x".into() }
        );
        assert_eq!(
            fault("age_d,body_weight_g\n0,42\n7,180\n14,150"),
            CurveFault::Falls { line: 4, column: "body_weight_g", value: 150.0, before: 180.0 }
        );
        assert_eq!(
            fault("age_d,body_weight_g\n0,42\n0,43"),
            CurveFault::Falls { line: 3, column: "age_d", value: 0.0, before: 0.0 }
        );
        assert!(matches!(fault("age_d,body_weight_g\n0,9999"), CurveFault::OutOfRange { line: 2, .. }));
        assert!(matches!(fault("age_d,body_weight_g\n0.5,50"), CurveFault::OutOfRange { line: 2, .. }));
        assert_eq!(fault("age_d,body_weight_g\n0,42,5\n7,180"), CurveFault::TooManyCells { line: 2 });
        assert_eq!(fault("age_d,body_weight_g\n1,50\n2,60"), CurveFault::TooShort);
        assert_eq!(fault("age_d,body_weight_g\n0,50"), CurveFault::TooShort);
    }
}
