//! EPW: eight lines of head, then a row an hour of 35 cells. Source: the data dictionary of the EnergyPlus weather file format, in
//! the auxiliary programs' document of that open program; from memory.

use quantity::CivilDay;

use super::{Cell, NO_YEAR, Names, Place, Reading, Stamp, WeatherFault};

/// The columns that are read, with their place in a row from 1.
pub(super) const NAMES: Names = Names {
    air: "dry bulb (7)",
    humidity: "relative humidity (9)",
    wind: "wind speed (22)",
    sun: "global horizontal radiation (14)",
};
const DATE: &str = "year, month, day, hour (1 to 4)";

/// Cells of a row up to the last that is read, and of a whole one.
const CELLS_READ: usize = 22;
const CELLS: usize = 35;

/// Wind is told at 10 m over open ground; curtains hang at about 1.5 m among scrub: (1.5 / 10)^0.22, from memory.
const WIND_AT_CURTAINS: f64 = 0.66;
/// Clocks lie so far off the sun at the most, h: our judgement.
const CLOCK_OFF_H: f64 = 3.0;

/// Whether a first line is that of an EPW file.
pub(super) fn begins(text: &str) -> bool {
    text.get(..9).is_some_and(|start| start.eq_ignore_ascii_case("LOCATION,"))
}

/// The place in the first line: `LOCATION,city,region,country,source,station,latitude,longitude,zone,altitude`.
pub(super) fn place(line: usize, text: &str) -> Result<Place, WeatherFault> {
    let cells: Vec<&str> = text.split(',').map(str::trim).collect();
    let number = |at: usize, most: f64| -> Result<f64, WeatherFault> {
        let value = cells.get(at).and_then(|cell| cell.parse::<f64>().ok());
        value.filter(|value| value.abs() <= most).ok_or(WeatherFault::Head { line })
    };
    let (latitude_deg, longitude_deg) = (number(6, 90.0)?, number(7, 180.0)?);
    let (zone_h, altitude_m) = (number(8, 14.0)?, number(9, 9_000.0)?);
    let off_h = (zone_h - longitude_deg / 15.0 + 12.0).rem_euclid(24.0) - 12.0;
    if off_h.abs() > CLOCK_OFF_H {
        return Err(WeatherFault::ZoneOfPlace { line, zone_h, longitude_deg });
    }
    let name = cells.get(1).copied().unwrap_or_default().to_owned();
    Ok(Place { name, latitude_deg, longitude_deg, altitude_m })
}

/// The head as far as it was read.
#[derive(Debug, Default)]
pub(super) struct Head {
    is_over: bool,
    /// Cells of the first row, which all must have: old files lack the last few.
    count: Option<usize>,
}

impl Head {
    /// What a line tells; nothing of a line of the head.
    pub(super) fn row(&mut self, line: usize, text: &str) -> Result<Option<(Stamp, Reading)>, WeatherFault> {
        let cells: Vec<&str> = text.split(',').map(str::trim).collect();
        if !self.is_over {
            self.is_over = of_head(line, &cells)?;
            return Ok(None);
        }
        let (found, wanted) = (cells.len(), self.count.unwrap_or(CELLS));
        if !(CELLS_READ..=CELLS).contains(&found) || self.count.is_some_and(|count| count != found) {
            return Err(WeatherFault::Cells { line, found, wanted });
        }
        self.count = Some(found);
        let stamp = stamp(line, &cells)?;
        let cell = |at: usize, column| Cell { line, column, text: cells[at - 1] };
        let (air, humidity) = (cell(7, NAMES.air), cell(9, NAMES.humidity));
        let (sun, wind) = (cell(14, NAMES.sun), cell(22, NAMES.wind));
        for (cell, nines) in [(&air, 99.9), (&humidity, 999.0), (&wind, 999.0)] {
            if cell.number()? == nines {
                return Err(WeatherFault::NoReading {
                    line,
                    column: cell.column,
                    cell: cell.text.to_owned(),
                });
            }
        }
        let reading = Reading {
            air_c: air.air_c()?,
            humidity: Some(humidity.humidity()?),
            wind_m_per_s: Some(WIND_AT_CURTAINS * wind.wind()?),
            sun_w_per_m2: Some(sun.sun()?),
        };
        Ok(Some((stamp, reading)))
    }
}

/// Whether a line of the head is its last: `DATA PERIODS,periods,rows an hour,...`.
fn of_head(line: usize, cells: &[&str]) -> Result<bool, WeatherFault> {
    let name = cells.first().copied().unwrap_or_default();
    if name.eq_ignore_ascii_case("DATA PERIODS") {
        let rows: u32 = cells.get(2).and_then(|rows| rows.parse().ok()).ok_or(WeatherFault::Head { line })?;
        return if rows == 1 { Ok(true) } else { Err(WeatherFault::RowsAnHour { line, rows }) };
    }
    // Rows of weather begin with a year: the head ended without its last line.
    if name.parse::<f64>().is_ok() { Err(WeatherFault::Head { line }) } else { Ok(false) }
}

/// The hour of a row. Its hours go from 1 to 24 and name their end; its years may be of many different years.
fn stamp(line: usize, cells: &[&str]) -> Result<Stamp, WeatherFault> {
    let date = || cells[..4].join(",");
    let not = || WeatherFault::NotATime { line, column: DATE, cell: date() };
    let number = |at: usize| cells[at].parse::<i16>().map_err(|_| not());
    let small = |at: usize| cells[at].parse::<i8>().map_err(|_| not());
    let (year, month, day, hour) = (number(0)?, small(1)?, small(2)?, small(3)?);
    let hour = u8::try_from(hour - 1).ok().filter(|hour| *hour < 24).ok_or_else(not)?;
    let no_day = || WeatherFault::NoSuchDay { line, column: DATE, cell: date() };
    CivilDay::new(year, month, day).ok_or_else(no_day)?;
    Ok(Stamp { day: CivilDay::new(NO_YEAR, month, day).ok_or_else(no_day)?, hour })
}
