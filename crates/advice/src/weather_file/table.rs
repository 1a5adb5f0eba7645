//! Weather as a table of comma-separated values.

use quantity::CivilDay;

use super::{Cell, Names, Reading, Stamp, WeatherFault};

/// The columns that are read.
pub(super) const NAMES: Names =
    Names { air: "temperature_c", humidity: "humidity_pct", wind: "wind_m_s", sun: "sun_w_m2" };
const TIME: &str = "time";
/// The air in the unit of another country, read as told.
const AIR_F: &str = "temperature_f";

/// The names of the columns that are read.
pub fn columns() -> impl Iterator<Item = &'static str> {
    [TIME, NAMES.air, AIR_F, NAMES.humidity, NAMES.wind, NAMES.sun].into_iter()
}

/// How the rows are to be read.
#[derive(Debug)]
pub(super) struct Sheet {
    mark: char,
    count: usize,
    time: usize,
    air: usize,
    is_fahrenheit: bool,
    humidity: Option<usize>,
    wind: Option<usize>,
    sun: Option<usize>,
    zone: Option<String>,
    /// Hours that its clock is ahead of universal time, where a row told it.
    pub(super) ahead_h: Option<f64>,
}

impl Sheet {
    /// Reads the heading. A tab or a semicolon sets cells apart where the heading has one, and a decimal comma is read then.
    pub(super) fn of(line: usize, text: &str) -> Result<Sheet, WeatherFault> {
        let mark = ['\t', ';'].into_iter().find(|mark| text.contains(*mark)).unwrap_or(',');
        let names: Vec<String> = cells(text, mark).map(str::to_lowercase).collect();
        let at = |column: &str| names.iter().position(|name| name == column);
        let is_told = |column: &&'static str| at(column).is_some();
        for typed in names.iter().filter(|name| !columns().any(|column| column == name.as_str())) {
            let nearest = quantity::field::nearest(typed, columns().filter(|column| !is_told(column)));
            if let Some(nearest) = nearest.and_then(|near| columns().find(|column| *column == near)) {
                return Err(WeatherFault::Column { line, typed: typed.clone(), nearest });
            }
        }
        let no = |column| WeatherFault::NoColumn { line, column };
        let (celsius, fahrenheit) = (at(NAMES.air), at(AIR_F));
        Ok(Sheet {
            mark,
            count: names.len(),
            time: at(TIME).ok_or_else(|| no(TIME))?,
            air: celsius.or(fahrenheit).ok_or_else(|| no(NAMES.air))?,
            is_fahrenheit: celsius.is_none(),
            humidity: at(NAMES.humidity),
            wind: at(NAMES.wind),
            sun: at(NAMES.sun),
            zone: None,
            ahead_h: None,
        })
    }

    /// What a line tells; nothing of a remark.
    pub(super) fn row(&mut self, line: usize, text: &str) -> Result<Option<(Stamp, Reading)>, WeatherFault> {
        if text.starts_with('#') {
            return Ok(None);
        }
        let cells: Vec<String> = cells(text, self.mark)
            .map(|cell| if self.mark == ',' { cell.to_owned() } else { cell.replace(',', ".") })
            .collect();
        if cells.len() != self.count {
            return Err(WeatherFault::Cells { line, found: cells.len(), wanted: self.count });
        }
        let stamp = self.stamp(line, &cells[self.time])?;
        let cell = |at: usize, column| Cell { line, column, text: &cells[at] };
        let air_c = if self.is_fahrenheit {
            let air = cell(self.air, AIR_F);
            (air.within(air.number()?, (-76.0, 140.0), |_| None)? - 32.0) / 1.8
        } else {
            cell(self.air, NAMES.air).air_c()?
        };
        let reading = Reading {
            air_c,
            humidity: self.humidity.map(|at| cell(at, NAMES.humidity).humidity()).transpose()?,
            wind_m_per_s: self.wind.map(|at| cell(at, NAMES.wind).wind()).transpose()?,
            sun_w_per_m2: self.sun.map(|at| cell(at, NAMES.sun).sun()).transpose()?,
        };
        Ok(Some((stamp, reading)))
    }

    /// A time as `2027-09-14 05:00`, with seconds and a clock (`Z`, `+02:00`) where told, which must be the same all through.
    fn stamp(&mut self, line: usize, cell: &str) -> Result<Stamp, WeatherFault> {
        let not = || WeatherFault::NotATime { line, column: TIME, cell: cell.to_owned() };
        let (date, time) = cell.split_once(['T', ' ']).ok_or_else(not)?;
        let zone_at = time.find(['Z', '+', '-']).unwrap_or(time.len());
        let (clock, zone) = (time[..zone_at].trim(), time[zone_at..].trim());
        let day = CivilDay::parse(date).ok_or_else(|| {
            if is_written_as_a_day(date) {
                WeatherFault::NoSuchDay { line, column: TIME, cell: cell.to_owned() }
            } else {
                not()
            }
        })?;
        let two = |part: &str| (part.len() == 2).then(|| part.parse::<u8>().ok()).flatten();
        let parts: Option<Vec<u8>> = clock.split(':').map(two).collect();
        let hour = match parts.as_deref() {
            Some([hour @ 0..=23, 0] | [hour @ 0..=23, 0, 0]) => *hour,
            Some([0..=23, 0..=59] | [0..=23, 0..=59, 0..=59]) => {
                return Err(WeatherFault::NotOnTheHour { line, column: TIME, cell: cell.to_owned() });
            }
            _ => return Err(not()),
        };
        let zone_h = hours_ahead(zone).ok_or_else(not)?;
        match &self.zone {
            Some(before) if before != zone => {
                let (zone, before) = (zone.to_owned(), before.clone());
                return Err(WeatherFault::ClockChanges { line, zone, before });
            }
            Some(_) => {}
            None => {
                self.zone = Some(zone.to_owned());
                self.ahead_h = zone_h;
            }
        }
        Ok(Stamp { day, hour })
    }
}

/// `Z`, `+02:00`, `-0330` or nothing; the outer `None` for what is no clock.
fn hours_ahead(zone: &str) -> Option<Option<f64>> {
    match zone.chars().next() {
        None => return Some(None),
        Some('Z') if zone.len() == 1 => return Some(Some(0.0)),
        _ => {}
    }
    let (is_behind, digits) = match zone.split_at_checked(1)? {
        ("+", digits) => (false, digits.replace(':', "")),
        ("-", digits) => (true, digits.replace(':', "")),
        _ => return None,
    };
    if digits.len() != 4 || !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let number: u16 = digits.parse().ok()?;
    let (hours, minutes) = (number / 100, number % 100);
    let ahead_h = f64::from(hours) + f64::from(minutes) / 60.0;
    (hours <= 14 && minutes < 60).then_some(Some(if is_behind { -ahead_h } else { ahead_h }))
}

fn is_written_as_a_day(date: &str) -> bool {
    let digits = |part: &str, count| part.len() == count && part.bytes().all(|byte| byte.is_ascii_digit());
    let parts: Vec<&str> = date.split('-').collect();
    matches!(parts[..], [year, month, day] if digits(year, 4) && digits(month, 2) && digits(day, 2))
}

fn cells(text: &str, mark: char) -> impl Iterator<Item = &str> {
    text.split(mark).map(|cell| cell.trim().trim_matches('"').trim())
}
