//! Weather by the hour out of a file, read line by line: EPW, the open format of building simulation, or a table of
//! comma-separated values as a sensor or a spreadsheet saves it.
//!
//! A table has a heading: `time` and `temperature_c`, and where told `humidity_pct`, `wind_m_s` at the height of the curtains and
//! `sun_w_m2` on flat ground. A row tells the hour that begins at its time, `2027-09-14 05:00`, by one clock all through.
//! A file with a gap, an hour told twice, a reading that stands for none, a number in another unit or a clock of another place is
//! refused with its line and column: a house must not be run through weather that never was.

mod epw;
mod table;

use std::collections::BTreeMap;

use model::air::Hour;
use model::air::weather::Day as TypicalDay;
use model::moist_air::saturation_pressure;
use quantity::{CivilDay, Temperature};

pub use table::columns;

/// The longest line read, bytes: a line of EPW has about 200.
pub const LONGEST_LINE: usize = 4_096;
/// The most hours read: thirty years.
const MOST_HOURS: usize = 30 * 8_784;
/// A year that has a 29 February, for weather that belongs to no year.
const NO_YEAR: i16 = 2000;
/// Dew begins so far below the coldest of a day where nobody measured damp, K: FAO-56, from memory.
const DEW_BELOW_K: f64 = 2.0;
/// The sun is highest between these hours of any clock in use: our judgement.
const SUN_HIGHEST_H: std::ops::RangeInclusive<f64> = 9.5..=15.5;

/// Why a file of weather cannot be used. Lines count from 1.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WeatherFault {
    /// There is no hour in it.
    #[error("no hour of weather")]
    Nothing,
    /// A line is longer than any line of weather.
    #[error("line {line} is longer than any of weather")]
    LongLine {
        /// The line.
        line: usize,
    },
    /// More hours than are read.
    #[error("line {line}: more than {most} hours")]
    TooMany {
        /// The line.
        line: usize,
        /// The most that are read.
        most: usize,
    },
    /// The heading lacks a column, or there is no heading.
    #[error("line {line}: no column {column}")]
    NoColumn {
        /// The line of the heading.
        line: usize,
        /// The column.
        column: &'static str,
    },
    /// A column that is most likely a misspelt one.
    #[error("line {line}: column {typed}, perhaps {nearest}")]
    Column {
        /// The line of the heading.
        line: usize,
        /// The heading as typed.
        typed: String,
        /// What was perhaps meant.
        nearest: &'static str,
    },
    /// The head of an EPW file is not as the format has it.
    #[error("line {line}: no head of EPW")]
    Head {
        /// The line.
        line: usize,
    },
    /// An EPW file that has several rows an hour.
    #[error("line {line}: {rows} rows an hour")]
    RowsAnHour {
        /// The line.
        line: usize,
        /// How many.
        rows: u32,
    },
    /// The clock an EPW file names is not that of its place.
    #[error("line {line}: clock {zone_h} h at {longitude_deg} degrees east")]
    ZoneOfPlace {
        /// The line.
        line: usize,
        /// Hours before universal time.
        zone_h: f64,
        /// Longitude, east positive.
        longitude_deg: f64,
    },
    /// A row with fewer or more cells than it must have: half a line, or decimal commas.
    #[error("line {line} has {found} cells of {wanted}")]
    Cells {
        /// The line.
        line: usize,
        /// Cells found.
        found: usize,
        /// Cells wanted.
        wanted: usize,
    },
    /// A cell that is no time.
    #[error("line {line}, {column}: {cell} is no time")]
    NotATime {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The cell.
        cell: String,
    },
    /// A day that is not in the calendar, such as 29 February of a common year.
    #[error("line {line}, {column}: there is no day {cell}")]
    NoSuchDay {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The cell.
        cell: String,
    },
    /// A time that is not on the hour.
    #[error("line {line}, {column}: {cell} is not on the hour")]
    NotOnTheHour {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The cell.
        cell: String,
    },
    /// The clock changes within the file: summer time, or two loggers.
    #[error("line {line}: clock {zone} after {before}")]
    ClockChanges {
        /// The line.
        line: usize,
        /// The clock of this row.
        zone: String,
        /// The clock of the rows before.
        before: String,
    },
    /// A cell that is no number.
    #[error("line {line}, {column}: {cell} is no number")]
    NotANumber {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The cell.
        cell: String,
    },
    /// A cell that is empty, or holds what loggers write for no reading: -999, or the nines of EPW.
    #[error("line {line}, {column}: {cell} stands for no reading")]
    NoReading {
        /// The line.
        line: usize,
        /// The column.
        column: &'static str,
        /// The cell.
        cell: String,
    },
    /// A number that no weather has.
    #[error("line {line}, {column}: {value} is outside {low} to {high}")]
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
        /// The unit it was perhaps read in.
        perhaps: Option<OtherUnit>,
    },
    /// A whole column that looks as if it were in another unit.
    #[error("{column}: {greatest} at most")]
    ColumnUnit {
        /// The column.
        column: &'static str,
        /// The greatest number in it.
        greatest: f64,
        /// The unit it was perhaps read in.
        perhaps: OtherUnit,
    },
    /// Hours are missing before a row.
    #[error("line {line}: {hours} hours are missing after {after}")]
    Gap {
        /// The line.
        line: usize,
        /// The hour before.
        after: Stamp,
        /// How many are missing.
        hours: u32,
    },
    /// An hour is told a second time.
    #[error("line {line} tells {hour} again, after line {first}")]
    Twice {
        /// The line.
        line: usize,
        /// The hour.
        hour: Stamp,
        /// The line that told it first.
        first: usize,
    },
    /// A row goes back in time, to no hour that was told.
    #[error("line {line}: {hour} comes after {after}")]
    Back {
        /// The line.
        line: usize,
        /// Its hour.
        hour: Stamp,
        /// The hour before.
        after: Stamp,
    },
    /// The sun is highest at night: the clock is that of another place.
    #[error("the sun is highest at {hour} h")]
    Clock {
        /// The hour about which the sun lies.
        hour: f64,
    },
}

/// A unit that a number was perhaps given in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OtherUnit {
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Kelvin.
    Kelvin,
    /// Tenths of a degree.
    Tenths,
    /// A share from 0 to 1.
    Share,
    /// Kilowatts or megajoules a square metre.
    Thousands,
    /// Joules or kilojoules a square metre.
    Joules,
    /// Kilometres an hour.
    KilometresPerHour,
}

impl OtherUnit {
    /// The stable name.
    pub fn name(self) -> &'static str {
        match self {
            OtherUnit::Fahrenheit => "fahrenheit",
            OtherUnit::Kelvin => "kelvin",
            OtherUnit::Tenths => "tenths",
            OtherUnit::Share => "share",
            OtherUnit::Thousands => "thousands",
            OtherUnit::Joules => "joules",
            OtherUnit::KilometresPerHour => "kilometres-per-hour",
        }
    }
}

/// An hour of the calendar: the one that begins then, by the clock of the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stamp {
    /// The day.
    pub day: CivilDay,
    /// 0 to 23.
    pub hour: u8,
}

impl std::fmt::Display for Stamp {
    fn fmt(&self, to: &mut std::fmt::Formatter) -> std::fmt::Result {
        write!(to, "{} {:02}:00", self.day, self.hour)
    }
}

impl Stamp {
    fn number(self) -> i64 {
        i64::from(self.day.number()) * 24 + i64::from(self.hour)
    }
}

/// Where a file says its weather was.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Its name.
    pub name: String,
    /// Degrees, north positive.
    pub latitude_deg: f64,
    /// Degrees, east positive.
    pub longitude_deg: f64,
    /// Height above the sea, m.
    pub altitude_m: f64,
}

/// What a row tells; what it does not is filled in from the day.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Reading {
    air_c: f64,
    humidity: Option<f64>,
    wind_m_per_s: Option<f64>,
    sun_w_per_m2: Option<f64>,
}

/// Weather by the hour, without a gap.
#[derive(Clone, Debug, PartialEq)]
pub struct Weather {
    /// Where it was, if the file says so.
    pub place: Option<Place>,
    /// Hours that its clock is ahead of universal time, if its times say so.
    pub ahead_h: Option<f64>,
    /// Whether it is a year put together out of many, or of no year.
    pub is_of_no_year: bool,
    days: BTreeMap<CivilDay, Vec<Reading>>,
}

/// What is taken where a file does not tell it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// Of the farm, degrees, north positive: for the sun.
    pub latitude_deg: f64,
    /// Wind at the curtains, m/s.
    pub wind_m_per_s: f64,
}

impl Weather {
    /// The first day and the last that are told with all of their hours.
    pub fn whole_days(&self) -> Option<(CivilDay, CivilDay)> {
        let mut whole = self.days.iter().filter(|(_, hours)| hours.len() == 24).map(|(day, _)| *day);
        let first = whole.next()?;
        Some((first, whole.next_back().unwrap_or(first)))
    }

    /// The years whose weather holds every day from one to another, each as what it lies off the year of the first.
    pub fn years(&self, first: CivilDay, last: CivilDay) -> Vec<i16> {
        let whole = |years: i16| {
            (0..=last.days_since(first)).all(|d| self.whole(first.plus_days(d), years).is_some())
        };
        if self.is_of_no_year {
            return if whole(0) { vec![0] } else { Vec::new() };
        }
        let Some((from, to)) = self.whole_days() else { return Vec::new() };
        (from.year()..=to.year()).map(|year| year - first.year()).filter(|years| whole(*years)).collect()
    }

    /// The hours of a day, by the weather of so many years later; `None` where the file does not hold them all.
    pub fn hours(&self, day: CivilDay, years: i16, fill: &Fill) -> Option<[Hour; 24]> {
        let told: &[Reading; 24] = self.whole(day, years)?.as_slice().try_into().ok()?;
        let typical = TypicalDay {
            coldest_c: told.iter().map(|reading| reading.air_c).fold(f64::INFINITY, f64::min),
            warmest_c: told.iter().map(|reading| reading.air_c).fold(f64::NEG_INFINITY, f64::max),
            dew_below_k: DEW_BELOW_K,
            wind_m_per_s: fill.wind_m_per_s,
            cloud: 0.0,
            latitude_deg: fill.latitude_deg,
            day_of_year: f64::from(day.day_of_year()),
        };
        let pressure = |air_c: f64| saturation_pressure(Temperature::celsius(air_c));
        let dew = pressure(typical.coldest_c - DEW_BELOW_K);
        let mut hours = typical.hours();
        for (hour, reading) in hours.iter_mut().zip(told) {
            *hour = Hour {
                outside_c: reading.air_c,
                humidity: reading.humidity.unwrap_or_else(|| (dew / pressure(reading.air_c)).min(1.0)),
                // The most that the balance is made for.
                wind_m_s: reading.wind_m_per_s.unwrap_or(hour.wind_m_s).min(30.0),
                sun_w_per_m2: reading.sun_w_per_m2.unwrap_or(hour.sun_w_per_m2),
                pressure_pa: None,
            };
        }
        Some(hours)
    }

    fn whole(&self, day: CivilDay, years: i16) -> Option<&Vec<Reading>> {
        let year = if self.is_of_no_year { NO_YEAR } else { day.year().checked_add(years)? };
        let there = |of_month| self.days.get(&CivilDay::new(year, day.month(), of_month)?);
        // A year without a 29 February has its 28th for it.
        let told =
            there(day.day()).or_else(|| if (day.month(), day.day()) == (2, 29) { there(28) } else { None });
        told.filter(|hours| hours.len() == 24)
    }
}

/// Reads a file of weather, line by line as they come.
#[derive(Debug, Default)]
pub struct Reader {
    line: usize,
    form: Form,
    place: Option<Place>,
    days: BTreeMap<CivilDay, Vec<Reading>>,
    lines: BTreeMap<Stamp, usize>,
    last: Option<Stamp>,
}

#[derive(Debug, Default)]
enum Form {
    #[default]
    Unknown,
    Epw(epw::Head),
    Table(table::Sheet),
}

impl Reader {
    /// Takes the next line, without its end.
    ///
    /// # Errors
    /// [`WeatherFault`] with the line and the column.
    pub fn take(&mut self, text: &str) -> Result<(), WeatherFault> {
        self.line += 1;
        let line = self.line;
        if text.len() > LONGEST_LINE {
            return Err(WeatherFault::LongLine { line });
        }
        let text = text.trim_start_matches('\u{feff}').trim();
        let row = match &mut self.form {
            _ if text.is_empty() => return Ok(()),
            Form::Unknown if text.starts_with('#') => return Ok(()),
            Form::Unknown if epw::begins(text) => {
                self.place = Some(epw::place(line, text)?);
                self.form = Form::Epw(epw::Head::default());
                return Ok(());
            }
            Form::Unknown => {
                self.form = Form::Table(table::Sheet::of(line, text)?);
                return Ok(());
            }
            Form::Epw(head) => head.row(line, text)?,
            Form::Table(sheet) => sheet.row(line, text)?,
        };
        row.map_or(Ok(()), |(stamp, reading)| self.add(stamp, reading))
    }

    /// The weather, when there are no more lines.
    ///
    /// # Errors
    /// [`WeatherFault`] of the file as a whole.
    pub fn end(self) -> Result<Weather, WeatherFault> {
        let is_epw = matches!(self.form, Form::Epw(_));
        let ahead_h = if let Form::Table(sheet) = &self.form { sheet.ahead_h } else { None };
        let weather = Weather { place: self.place, ahead_h, is_of_no_year: is_epw, days: self.days };
        if weather.whole_days().is_none() {
            return Err(WeatherFault::Nothing);
        }
        weather.is_in_its_units(is_epw)?;
        weather.has_its_clock()?;
        Ok(weather)
    }

    fn add(&mut self, stamp: Stamp, reading: Reading) -> Result<(), WeatherFault> {
        let line = self.line;
        if let Some(first) = self.lines.insert(stamp, line) {
            return Err(WeatherFault::Twice { line, hour: stamp, first });
        }
        if self.lines.len() > MOST_HOURS {
            return Err(WeatherFault::TooMany { line, most: MOST_HOURS });
        }
        if let Some(after) = self.last {
            let hours = self.between(after, stamp);
            if hours < 0 {
                return Err(WeatherFault::Back { line, hour: stamp, after });
            }
            if hours > 0 {
                return Err(WeatherFault::Gap {
                    line,
                    after,
                    hours: u32::try_from(hours).unwrap_or(u32::MAX),
                });
            }
        }
        self.last = Some(stamp);
        self.days.entry(stamp.day).or_default().push(reading);
        Ok(())
    }

    /// Hours that lie between one row and the next.
    fn between(&self, after: Stamp, stamp: Stamp) -> i64 {
        let hours = stamp.number() - after.number() - 1;
        // A year of no year may or may not have a 29 February.
        let leaps = matches!(self.form, Form::Epw(_))
            && (after.day.month(), after.day.day(), after.hour) == (2, 28, 23)
            && (stamp.day.month(), stamp.day.day()) == (3, 1);
        if leaps { hours - 24 } else { hours }
    }
}

/// Reads a whole text.
///
/// # Errors
/// [`WeatherFault`] with line and column.
pub fn read(text: &str) -> Result<Weather, WeatherFault> {
    let mut reader = Reader::default();
    text.lines().try_for_each(|line| reader.take(line))?;
    reader.end()
}

impl Weather {
    fn readings(&self) -> impl Iterator<Item = &Reading> {
        self.days.values().flatten()
    }

    /// A column that no day of weather could have, though each of its numbers is one that might be.
    fn is_in_its_units(&self, is_epw: bool) -> Result<(), WeatherFault> {
        let greatest = |of: fn(&Reading) -> Option<f64>| {
            self.readings().filter_map(of).fold(f64::NEG_INFINITY, f64::max)
        };
        let mean_c =
            self.readings().map(|reading| reading.air_c).sum::<f64>() / self.readings().count() as f64;
        let (humidity, sun) =
            (greatest(|reading| reading.humidity), greatest(|reading| reading.sun_w_per_m2));
        let names = if is_epw { epw::NAMES } else { table::NAMES };
        let fault = |column, greatest, perhaps| Err(WeatherFault::ColumnUnit { column, greatest, perhaps });
        // The hottest months on record have means of about 40 °C.
        if mean_c > 42.0 {
            return fault(names.air, greatest(|reading| Some(reading.air_c)), OtherUnit::Fahrenheit);
        }
        // Air of 1 % damp at the most has never been measured for a whole day.
        if humidity.is_finite() && humidity <= 0.01 {
            return fault(names.humidity, 100.0 * humidity, OtherUnit::Share);
        }
        if sun > 0.0 && sun < 5.0 {
            return fault(names.sun, sun, OtherUnit::Thousands);
        }
        Ok(())
    }

    /// Whether the sun lies about noon, where it is told.
    fn has_its_clock(&self) -> Result<(), WeatherFault> {
        let whole = self.days.values().filter(|hours| hours.len() == 24);
        let told = whole.flat_map(|hours| hours.iter().enumerate());
        let sun = told.filter_map(|(hour, reading)| Some((hour as f64 + 0.5, reading.sun_w_per_m2?)));
        // The mean direction of the hours on a dial, so that a sun about midnight is not taken for one at noon.
        let turn = std::f64::consts::TAU / 24.0;
        let (east, north) = sun.fold((0.0, 0.0), |(east, north), (hour, sun)| {
            (east + sun * (turn * hour).sin(), north + sun * (turn * hour).cos())
        });
        if east.hypot(north) <= 0.0 {
            return Ok(());
        }
        let hour = (f64::atan2(east, north) / turn).rem_euclid(24.0);
        if SUN_HIGHEST_H.contains(&hour) { Ok(()) } else { Err(WeatherFault::Clock { hour }) }
    }
}

/// What the columns of a form are called.
#[derive(Clone, Copy, Debug)]
struct Names {
    air: &'static str,
    humidity: &'static str,
    wind: &'static str,
    sun: &'static str,
}

/// A number of weather, with the range it can have.
struct Cell<'a> {
    line: usize,
    column: &'static str,
    text: &'a str,
}

impl Cell<'_> {
    fn number(&self) -> Result<f64, WeatherFault> {
        let (line, column, cell) = (self.line, self.column, self.text.to_owned());
        if self.text.is_empty() {
            return Err(WeatherFault::NoReading { line, column, cell });
        }
        let value: f64 = match self.text.parse() {
            Ok(value) if f64::is_finite(value) => value,
            _ => return Err(WeatherFault::NotANumber { line, column, cell }),
        };
        // What loggers write where they have no reading.
        if [-999.0, -9999.0, -99.0, 9999.0, 99999.0, 6999.0].contains(&value) {
            return Err(WeatherFault::NoReading { line, column, cell });
        }
        Ok(value)
    }

    fn within(
        &self,
        value: f64,
        (low, high): (f64, f64),
        perhaps: fn(f64) -> Option<OtherUnit>,
    ) -> Result<f64, WeatherFault> {
        if (low..=high).contains(&value) {
            return Ok(value);
        }
        let (line, column) = (self.line, self.column);
        Err(WeatherFault::OutOfRange { line, column, value, low, high, perhaps: perhaps(value) })
    }

    /// °C: no place has been colder or hotter.
    fn air_c(&self) -> Result<f64, WeatherFault> {
        self.within(self.number()?, (-60.0, 60.0), |value| match value {
            60.0..=140.0 => Some(OtherUnit::Fahrenheit),
            140.0..=230.0 => Some(OtherUnit::Tenths),
            230.0..=330.0 => Some(OtherUnit::Kelvin),
            330.0..=600.0 => Some(OtherUnit::Tenths),
            _ => None,
        })
    }

    /// A share, from percent.
    fn humidity(&self) -> Result<f64, WeatherFault> {
        // Sensors in fog read a little over.
        let percent = self.within(self.number()?, (0.0, 105.0), |_| None)?;
        Ok((percent / 100.0).min(1.0))
    }

    /// m/s, the mean of an hour.
    fn wind(&self) -> Result<f64, WeatherFault> {
        self.within(self.number()?, (0.0, 45.0), |value| {
            (value > 45.0).then_some(OtherUnit::KilometresPerHour)
        })
    }

    /// W/m2.
    fn sun(&self) -> Result<f64, WeatherFault> {
        // Sensors read a little below 0 at night.
        let sun = self.within(self.number()?, (-10.0, 1_500.0), |value| {
            (value > 1_500.0).then_some(OtherUnit::Joules)
        })?;
        Ok(sun.max(0.0))
    }
}

#[cfg(test)]
mod tests;
