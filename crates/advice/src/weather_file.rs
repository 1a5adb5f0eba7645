//! Hours of weather out of a file's lines, checked: every hour once, in order, in the units its columns name.
//!
//! Two open formats: EPW (EnergyPlus Auxiliary Programs, "Weather file data dictionary": columns and missing-value
//! marks from memory), and comma-separated lines headed `time,temperature_c,humidity_pct,wind_m_s` with ISO 8601 times.

use std::ops::RangeInclusive;

/// Weather of one hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeatherHour {
    /// Calendar year. An EPW file of a typical year may take each month from another year.
    pub year: i32,
    /// 1 to 12.
    pub month: u8,
    /// 1 to 31.
    pub day: u8,
    /// The hour's start, 0 to 23, in the file's own civil time.
    pub hour: u8,
    /// Air temperature, °C, -60 to 60.
    pub temperature_c: f64,
    /// Relative humidity, percent, 2 to 110 (sensors overshoot).
    pub humidity_pct: f64,
    /// Wind speed, m/s, 0 to 60.
    pub wind_m_s: f64,
}

/// What is wrong with a weather file. `line` and `column` count from 1; a column is a field between commas.
#[derive(Clone, Debug, PartialEq)]
pub enum WeatherFault {
    /// No hour in it.
    Empty,
    /// The first lines are not those of the format.
    Header {
        /// The line.
        line: usize,
    },
    /// A line ends before its last column.
    ShortLine {
        /// The line.
        line: usize,
        /// Columns found.
        found: usize,
        /// Columns needed.
        needed: usize,
    },
    /// Not a number, or not a time.
    Unreadable {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// What stands there.
        text: String,
    },
    /// No such day or hour, as 29 February outside a leap year.
    NoSuchHour {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// What stands there.
        text: String,
    },
    /// A mark for a missing value, as -999.
    Missing {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
    },
    /// Outside what weather can be: perhaps another unit (°F, kelvin, a share for percent).
    OutOfRange {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// What stands there.
        value: f64,
        /// The least that can be.
        low: f64,
        /// The most that can be.
        high: f64,
    },
    /// Hours are missing before this line.
    Gap {
        /// The line.
        line: usize,
        /// How many hours are missing.
        hours: i64,
    },
    /// An hour comes again, or an earlier one after a later.
    Repeated {
        /// The line.
        line: usize,
    },
    /// Clock ahead of Greenwich by other minutes than the farm's.
    OtherZone {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// Minutes ahead of Greenwich in the file.
        found_min: i32,
        /// Minutes ahead of Greenwich at the farm.
        expected_min: i32,
    },
}

const TEMPERATURE: RangeInclusive<f64> = -60.0..=60.0;
const HUMIDITY: RangeInclusive<f64> = 2.0..=110.0;
const WIND: RangeInclusive<f64> = 0.0..=60.0;
const EPW_HEADER_LINES: usize = 8;

/// Reads an EPW file line by line.
///
/// - `zone_min`: the farm's clock ahead of Greenwich, minutes
///
/// # Errors
/// The first [`WeatherFault`] met.
pub fn read_epw<'a>(
    lines: impl Iterator<Item = &'a str>,
    zone_min: i32,
) -> Result<Vec<WeatherHour>, WeatherFault> {
    let mut hours: Vec<WeatherHour> = Vec::new();
    for (index, text) in lines.enumerate() {
        let line = index + 1;
        let row = Row::new(line, text);
        if line == 1 {
            if row.cells[0] != "LOCATION" {
                return Err(WeatherFault::Header { line });
            }
            row.needs(9)?;
            row.in_zone(9, (row.number(9)? * 60.0).round() as i32, zone_min)?;
        }
        if line <= EPW_HEADER_LINES || text.trim().is_empty() {
            continue;
        }
        row.needs(22)?;
        let hour = WeatherHour {
            year: row.whole(1, 1..=9999)?,
            month: row.whole(2, 1..=12)? as u8,
            day: row.whole(3, 1..=31)? as u8,
            hour: (row.whole(4, 1..=24)? - 1) as u8,
            temperature_c: row.measured(7, 99.9, TEMPERATURE)?,
            humidity_pct: row.measured(9, 999.0, HUMIDITY)?,
            wind_m_s: row.measured(22, 999.0, WIND)?,
        };
        row.dated(3, &hour)?;
        if let Some(last) = hours.last() {
            // Each month may come from another year, so hours are counted within one made-up year.
            let year_end = (last.month, last.day, last.hour) == (12, 31, 23);
            let leap = (last.month, last.day) == (2, 29) || (hour.month, hour.day) == (2, 29);
            let year = if leap { 2000 } else { 2001 };
            let from = hours_from_1970(year, last);
            let to = hours_from_1970(if year_end { year + 1 } else { year }, &hour);
            row.follows(to - from)?;
        }
        hours.push(hour);
    }
    if hours.is_empty() { Err(WeatherFault::Empty) } else { Ok(hours) }
}

/// Reads comma-separated lines. Times are as `2026-09-01T13:00+02:00`, on the hour.
///
/// - `zone_min`: the farm's clock ahead of Greenwich, minutes
///
/// # Errors
/// The first [`WeatherFault`] met.
pub fn read_csv<'a>(
    lines: impl Iterator<Item = &'a str>,
    zone_min: i32,
) -> Result<Vec<WeatherHour>, WeatherFault> {
    let mut hours: Vec<WeatherHour> = Vec::new();
    for (index, text) in lines.enumerate() {
        let line = index + 1;
        let row = Row::new(line, text);
        if line == 1 {
            if row.cells != ["time", "temperature_c", "humidity_pct", "wind_m_s"] {
                return Err(WeatherFault::Header { line });
            }
            continue;
        }
        if text.trim().is_empty() {
            continue;
        }
        row.needs(4)?;
        let (mut hour, zone) = row.time()?;
        row.dated(1, &hour)?;
        row.in_zone(1, zone, zone_min)?;
        hour.temperature_c = row.measured(2, -999.0, TEMPERATURE)?;
        hour.humidity_pct = row.measured(3, -999.0, HUMIDITY)?;
        hour.wind_m_s = row.measured(4, -999.0, WIND)?;
        if let Some(last) = hours.last() {
            row.follows(hours_from_1970(hour.year, &hour) - hours_from_1970(last.year, last))?;
        }
        hours.push(hour);
    }
    if hours.is_empty() { Err(WeatherFault::Empty) } else { Ok(hours) }
}

struct Row<'a> {
    line: usize,
    cells: Vec<&'a str>,
}

impl<'a> Row<'a> {
    fn new(line: usize, text: &'a str) -> Row<'a> {
        let text = text.trim_start_matches('\u{feff}');
        Row { line, cells: text.split(',').map(str::trim).collect() }
    }

    fn needs(&self, needed: usize) -> Result<(), WeatherFault> {
        let found = self.cells.len();
        if found < needed { Err(WeatherFault::ShortLine { line: self.line, found, needed }) } else { Ok(()) }
    }

    fn unreadable(&self, column: usize) -> WeatherFault {
        WeatherFault::Unreadable { line: self.line, column, text: self.cells[column - 1].to_owned() }
    }

    fn no_such_hour(&self, column: usize) -> WeatherFault {
        WeatherFault::NoSuchHour { line: self.line, column, text: self.cells[column - 1].to_owned() }
    }

    fn number(&self, column: usize) -> Result<f64, WeatherFault> {
        let value = self.cells[column - 1].parse::<f64>().ok().filter(|value| value.is_finite());
        value.ok_or_else(|| self.unreadable(column))
    }

    fn whole(&self, column: usize, range: RangeInclusive<i32>) -> Result<i32, WeatherFault> {
        let value = self.cells[column - 1].parse::<i32>().map_err(|_| self.unreadable(column))?;
        if range.contains(&value) { Ok(value) } else { Err(self.no_such_hour(column)) }
    }

    fn measured(&self, column: usize, missing: f64, range: RangeInclusive<f64>) -> Result<f64, WeatherFault> {
        let line = self.line;
        if self.cells[column - 1].is_empty() {
            return Err(WeatherFault::Missing { line, column });
        }
        let value = self.number(column)?;
        if value == missing || value <= -999.0 {
            return Err(WeatherFault::Missing { line, column });
        }
        let (low, high) = (*range.start(), *range.end());
        if range.contains(&value) {
            Ok(value)
        } else {
            Err(WeatherFault::OutOfRange { line, column, value, low, high })
        }
    }

    fn time(&self) -> Result<(WeatherHour, i32), WeatherFault> {
        let text = self.cells[0];
        let part = |from: usize, to: usize| {
            let digits = text.get(from..to).filter(|part| part.bytes().all(|byte| byte.is_ascii_digit()));
            digits.and_then(|part| part.parse::<i32>().ok()).ok_or_else(|| self.unreadable(1))
        };
        let mark = |at: usize| text.as_bytes().get(at).copied();
        let marks = [4, 7, 10, 13].map(mark) == [Some(b'-'), Some(b'-'), Some(b'T'), Some(b':')];
        if !marks {
            return Err(self.unreadable(1));
        }
        let zone = match (mark(16), text.len()) {
            (Some(b'Z'), 17) => 0,
            (Some(sign @ (b'+' | b'-')), 22) if mark(19) == Some(b':') => {
                let minutes = part(17, 19)? * 60 + part(20, 22)?;
                if sign == b'-' { -minutes } else { minutes }
            }
            _ => return Err(self.unreadable(1)),
        };
        let (month, day, hour) = (part(5, 7)?, part(8, 10)?, part(11, 13)?);
        if part(14, 16)? != 0 || hour > 23 {
            return Err(self.no_such_hour(1));
        }
        let (month, day, hour) = (month as u8, day as u8, hour as u8);
        let none = 0.0;
        let year = part(0, 4)?;
        Ok((
            WeatherHour { year, month, day, hour, temperature_c: none, humidity_pct: none, wind_m_s: none },
            zone,
        ))
    }

    fn dated(&self, column: usize, hour: &WeatherHour) -> Result<(), WeatherFault> {
        let leap = hour.year % 4 == 0 && (hour.year % 100 != 0 || hour.year % 400 == 0);
        let days = match hour.month {
            1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            _ => 0,
        };
        if (1..=days).contains(&hour.day) { Ok(()) } else { Err(self.no_such_hour(column)) }
    }

    fn in_zone(&self, column: usize, found_min: i32, expected_min: i32) -> Result<(), WeatherFault> {
        let line = self.line;
        if found_min == expected_min {
            Ok(())
        } else {
            Err(WeatherFault::OtherZone { line, column, found_min, expected_min })
        }
    }

    fn follows(&self, step: i64) -> Result<(), WeatherFault> {
        let line = self.line;
        match step {
            1 => Ok(()),
            step if step < 1 => Err(WeatherFault::Repeated { line }),
            step => Err(WeatherFault::Gap { line, hours: step - 1 }),
        }
    }
}

/// Hours since the start of 1970 in the proleptic Gregorian calendar.
fn hours_from_1970(year: i32, at: &WeatherHour) -> i64 {
    let (month, day) = (i64::from(at.month), i64::from(at.day));
    // Years begin in March here, so that a leap day falls at a year's end.
    let year = i64::from(year) - i64::from(month <= 2);
    let in_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    let days =
        year * 365 + year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400) + in_year - 719_468;
    days * 24 + i64::from(at.hour)
}

#[cfg(test)]
mod tests {
    use super::*;

    const HEAD: &str = "time,temperature_c,humidity_pct,wind_m_s";

    fn csv(rows: &[&str]) -> Result<Vec<WeatherHour>, WeatherFault> {
        read_csv([HEAD].into_iter().chain(rows.iter().copied()), 120)
    }

    fn epw(zone: &str, rows: &[(i32, i32, i32, i32, &str)]) -> Result<Vec<WeatherHour>, WeatherFault> {
        let mut lines = vec![format!("LOCATION,Here,-,-,-,1,0,0,{zone},1200")];
        lines.extend((2..=8).map(|_| "HEADER".to_owned()));
        for (year, month, day, hour, air) in rows {
            lines.push(format!(
                "{year},{month},{day},{hour},0,?,{air},12,80,88000,0,0,0,0,0,0,0,0,0,0,90,2.5"
            ));
        }
        read_epw(lines.iter().map(String::as_str), 120)
    }

    #[test]
    fn reads_good_hours_over_a_leap_day_and_a_year_end() {
        let read = csv(&["2024-02-28T23:00+02:00,14,80,1", "2024-02-29T00:00+02:00,13.5,82,0"]).unwrap();
        assert_eq!((read[1].day, read[1].temperature_c), (29, 13.5));
        assert_eq!(
            csv(&["2025-12-31T23:00+02:00,14,80,1", "2026-01-01T00:00+02:00,13,82,0"]).unwrap().len(),
            2
        );
        assert_eq!(epw("2", &[(1999, 2, 28, 24, "14"), (2004, 3, 1, 1, "13")]).unwrap()[1].hour, 0);
        assert_eq!(epw("2", &[(2004, 2, 28, 24, "14"), (2004, 2, 29, 1, "13")]).unwrap()[1].wind_m_s, 2.5);
        assert_eq!(epw("2", &[(2004, 12, 31, 24, "14"), (2005, 1, 1, 1, "13")]).unwrap().len(), 2);
    }

    #[test]
    fn names_line_and_column_of_what_is_wrong() {
        use WeatherFault::*;
        let first = "2026-09-01T00:00+02:00,14,80,1";
        assert_eq!(csv(&[]), Err(Empty));
        assert_eq!(read_csv(["time,temp"].into_iter(), 0), Err(Header { line: 1 }));
        assert_eq!(read_epw(["", "2004,5,1"].into_iter(), 0), Err(Header { line: 1 }));
        assert_eq!(csv(&[first, first]), Err(Repeated { line: 3 }));
        assert_eq!(csv(&[first, "2026-09-01T04:00+02:00,14,80,1"]), Err(Gap { line: 3, hours: 3 }));
        assert_eq!(csv(&["2026-09-01T00:00+02:00,-999,80,1"]), Err(Missing { line: 2, column: 2 }));
        assert_eq!(csv(&["2026-09-01T00:00+02:00,14,"]), Err(ShortLine { line: 2, found: 3, needed: 4 }));
        let fahrenheit = OutOfRange { line: 2, column: 2, value: 75.0, low: -60.0, high: 60.0 };
        assert_eq!(csv(&["2026-09-01T00:00+02:00,75,80,1"]), Err(fahrenheit));
        let share = OutOfRange { line: 2, column: 3, value: 0.8, low: 2.0, high: 110.0 };
        assert_eq!(csv(&["2026-09-01T00:00+02:00,14,0.8,1"]), Err(share));
        assert!(matches!(
            csv(&["2026-02-29T00:00+02:00,14,80,1"]),
            Err(NoSuchHour { line: 2, column: 1, .. })
        ));
        assert!(matches!(csv(&["2026-09-01T00é00,14,80,1"]), Err(Unreadable { line: 2, column: 1, .. })));
        let zone = OtherZone { line: 2, column: 1, found_min: 0, expected_min: 120 };
        assert_eq!(csv(&["2026-09-01T00:00Z,14,80,1"]), Err(zone));
        assert_eq!(epw("2", &[(2004, 5, 1, 1, "99.9")]), Err(Missing { line: 9, column: 7 }));
        assert_eq!(epw("2", &[(2004, 5, 1, 1, "9"), (2004, 5, 1, 3, "9")]), Err(Gap { line: 10, hours: 1 }));
        let zone = OtherZone { line: 1, column: 9, found_min: -300, expected_min: 120 };
        assert_eq!(epw("-5", &[(2004, 5, 1, 1, "9")]), Err(zone));
    }
}
