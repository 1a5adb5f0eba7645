//! The air of a planned house through weather out of a file, and what is wrong with such a file, in words.

use advice::air::{CannotRun, PlannedAir};
use advice::weather_file::{self, Stamp, Weather, WeatherFault};
use advice::years_of_air::{NoYears, YearsOfAir};
use quantity::Unit;
use schemars::JsonSchema;
use serde::Serialize;

use super::Shown;
use super::air::{self, AirView};
use crate::document::{Align, Block, Document, Table};
use crate::viewer::Viewer;
use crate::words::Words;
use crate::{say, show};

/// A year of weather and what it would ask of the house.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AirYearJson {
    /// The year of the weather in which the house is warmed; absent for weather that belongs to no year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub year: Option<i16>,
    /// The most that heaters must give in an hour, kW.
    pub heat_peak_kw: f64,
    /// Heat of the heaters in all, kWh.
    pub heat_kwh: f64,
    /// Fuel for that, kg; absent where no fuel is told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fuel_kg: Option<f64>,
    /// Hours of all days that are an alert or worse for the birds of their day.
    pub alert_hours: f64,
    /// Those of them that are dangerous or worse.
    pub danger_hours: f64,
    /// The worst that heat, water and carbon dioxide leave over in an hour, as a share of what moved.
    pub residual: f64,
}

/// The air of a planned house through weather of a file: the hours are those of the year that takes the middlemost heat.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AirOfWeatherView {
    /// That year, as without a file; hours to warm the empty house are by the plan's own days.
    #[serde(flatten)]
    pub air: AirView,
    /// Where the weather was, if the file says so.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// Every year of the file that holds all days of the plan.
    pub years: Vec<AirYearJson>,
}

/// What is told of each year.
struct Asked {
    title: &'static str,
    unit: Unit,
    decimals: u8,
    of: fn(&PlannedAir) -> Option<f64>,
}

static ASKED: [Asked; 5] = [
    Asked {
        title: "weather-column-peak",
        unit: Unit::Kilowatt,
        decimals: 1,
        of: |air| Some(air.needed.peak_kw()),
    },
    Asked {
        title: "weather-column-heat",
        unit: Unit::KilowattHour,
        decimals: 0,
        of: |air| Some(air.in_all().heat_kwh),
    },
    Asked {
        title: "weather-column-fuel",
        unit: Unit::Kilogram,
        decimals: 0,
        of: |air| air.fuel_kg(air.in_all().heat_kwh),
    },
    Asked {
        title: "weather-column-alert",
        unit: Unit::Hour,
        decimals: 0,
        of: |air| Some(air.in_all().alert_hours),
    },
    Asked {
        title: "weather-column-danger",
        unit: Unit::Hour,
        decimals: 0,
        of: |air| Some(air.in_all().danger_hours),
    },
];

/// The same as JSON.
pub fn view(years: &YearsOfAir, weather: &Weather) -> AirOfWeatherView {
    let year = |(year, air): &(i16, PlannedAir)| AirYearJson {
        year: (!weather.is_of_no_year).then_some(*year),
        heat_peak_kw: air.needed.peak_kw(),
        heat_kwh: air.in_all().heat_kwh,
        fuel_kg: air.fuel_kg(air.in_all().heat_kwh),
        alert_hours: air.in_all().alert_hours,
        danger_hours: air.in_all().danger_hours,
        residual: air.residual,
    };
    AirOfWeatherView {
        air: air::view(&years.middle().1),
        place: weather.place.as_ref().map(|place| place.name.clone()),
        years: years.runs().iter().map(year).collect(),
    }
}

impl Shown<'_> {
    /// The air of the plan through weather of a file as a document of its own.
    ///
    /// - `file`: its name
    pub fn air_of_weather(&self, years: &YearsOfAir, weather: &Weather, file: &str) -> Document {
        let (_, air) = years.middle();
        let mut blocks = self.air_heaters(air);
        blocks.push(Block::Note(self.which_weather(years, weather, file)));
        blocks.extend(self.air_with_fire(air));
        blocks.push(Block::Table(self.years_table(years, weather)));
        blocks.extend(self.air_days(air));
        Document { title: self.words.plain("page-air"), subtitle: self.subtitle(), blocks }
    }

    fn which_weather(&self, years: &YearsOfAir, weather: &Weather, file: &str) -> String {
        let place = weather.place.as_ref().map(|place| {
            say!(
                self.words,
                "weather-place",
                name = place.name.clone(),
                latitude = show::number(place.latitude_deg, 1),
                longitude = show::number(place.longitude_deg, 1),
                altitude = show::quantity(place.altitude_m, Unit::Metre, 0, self.viewer),
            )
        });
        let file = match place {
            Some(place) => say!(self.words, "weather-file-of", file = file, place = place),
            None => say!(self.words, "weather-file-named", file = file),
        };
        let (year, _) = years.middle();
        let count = years.runs().len();
        if weather.is_of_no_year {
            say!(self.words, "weather-of-no-year", file = file)
        } else if count == 1 {
            say!(self.words, "weather-of-one-year", file = file, year = year.to_string())
        } else {
            let count = count as f64;
            say!(self.words, "weather-of-years", file = file, count = count, year = year.to_string())
        }
    }

    /// A row a year, and what lies between the least and the greatest of several.
    fn years_table(&self, years: &YearsOfAir, weather: &Weather) -> Table {
        let (_, middle) = years.middle();
        let asked: Vec<&Asked> = ASKED.iter().filter(|asked| (asked.of)(middle).is_some()).collect();
        let bare = |value: f64, asked: &Asked| show::bare(value, asked.unit, asked.decimals, self.viewer);
        let of = |asked: &Asked, air: &PlannedAir| (asked.of)(air).unwrap_or(f64::NAN);
        let name = |year: i16| {
            if weather.is_of_no_year { self.words.plain("weather-typical") } else { year.to_string() }
        };
        let row = |(year, air): &(i16, PlannedAir)| -> Vec<String> {
            let cells = asked.iter().map(|asked| bare(of(asked, air), asked));
            std::iter::once(name(*year)).chain(cells).collect()
        };
        let mut rows: Vec<Vec<String>> = years.runs().iter().map(row).collect();
        let mut emphasis = Vec::new();
        if rows.len() > 1 {
            let between = |asked: &&Asked| {
                let (low, high) = years.between(|air| of(asked, air));
                say!(self.words, "weather-between", low = bare(low, asked), high = bare(high, asked))
            };
            emphasis.push(rows.len());
            let all = self.words.plain("weather-all-years");
            rows.push(std::iter::once(all).chain(asked.iter().map(between)).collect());
        }
        let titles = asked.iter().map(|asked| (self.unit_title(asked.title, asked.unit), Align::End));
        let first = (self.words.plain("weather-column-year"), Align::Start);
        Table {
            caption: self.words.plain("weather-table-caption"),
            columns: std::iter::once(first).chain(titles).collect(),
            rows,
            emphasis,
            explained_by: Vec::new(),
        }
    }
}

/// Why a plan cannot be run through a file of weather.
pub fn no_years(why: &NoYears, viewer: &Viewer) -> String {
    let words = viewer.words();
    match why {
        NoYears::CannotRun(cannot) => {
            let key = if let CannotRun::NotTold(key) = cannot { key } else { "" };
            say!(words, "command-no-air", field = air::cannot_run(cannot, viewer), key = key)
        }
        NoYears::NotHeld { wanted, held } => say!(
            words,
            "weather-not-held",
            first = show::day(wanted.0, viewer),
            last = show::day(wanted.1, viewer),
            from = show::day(held.0, viewer),
            to = show::day(held.1, viewer),
        ),
        NoYears::OtherClock { ahead_h, sun_h } => {
            say!(words, "weather-other-clock", ahead = show::short(*ahead_h, 2), sun = show::short(*sun_h, 1),)
        }
        NoYears::OtherPlace { farm_deg, file_deg } => say!(
            words,
            "weather-other-place",
            farm = show::number(*farm_deg, 1),
            file = show::number(*file_deg, 1),
        ),
    }
}

/// What is wrong with a file of weather, with its line and column and the way out.
pub fn fault(wrong: &WeatherFault, viewer: &Viewer) -> String {
    use WeatherFault as F;
    let words = viewer.words();
    let known = || weather_file::columns().collect::<Vec<_>>().join(", ");
    let stamp = |stamp: &Stamp| stamp.to_string();
    let at = |line: &usize| line.to_string();
    match wrong {
        F::Nothing => words.plain("weather-fault-nothing"),
        F::LongLine { line } => say!(words, "weather-fault-long-line", line = at(line)),
        F::TooMany { line, most } => {
            say!(words, "weather-fault-too-many", line = at(line), most = most.to_string())
        }
        F::NoColumn { line, column } => {
            say!(words, "weather-fault-no-column", line = at(line), column = *column, known = known())
        }
        F::Column { line, typed, nearest } => {
            say!(words, "weather-fault-column", line = at(line), typed = typed.clone(), nearest = *nearest)
        }
        F::Head { line } => say!(words, "weather-fault-head", line = at(line)),
        F::RowsAnHour { line, rows } => {
            say!(words, "weather-fault-rows-an-hour", line = at(line), rows = rows.to_string())
        }
        F::ZoneOfPlace { line, zone_h, longitude_deg } => say!(
            words,
            "weather-fault-zone",
            line = at(line),
            zone = show::short(*zone_h, 2),
            longitude = show::short(*longitude_deg, 2),
        ),
        F::Cells { line, found, wanted } => say!(
            words,
            "weather-fault-cells",
            line = at(line),
            found = found.to_string(),
            wanted = wanted.to_string()
        ),
        F::NotATime { line, column, cell } => cell_fault(words, "not-a-time", *line, column, cell),
        F::NoSuchDay { line, column, cell } => cell_fault(words, "no-such-day", *line, column, cell),
        F::NotOnTheHour { line, column, cell } => cell_fault(words, "not-on-the-hour", *line, column, cell),
        F::NotANumber { line, column, cell } => cell_fault(words, "not-a-number", *line, column, cell),
        F::NoReading { line, column, cell } => cell_fault(words, "no-reading", *line, column, cell),
        F::ClockChanges { line, zone, before } => say!(
            words,
            "weather-fault-clock-changes",
            line = at(line),
            zone = zone.clone(),
            before = before.clone()
        ),
        F::OutOfRange { line, column, value, low, high, perhaps } => {
            let fault = say!(
                words,
                "weather-fault-out-of-range",
                line = at(line),
                column = *column,
                value = show::short(*value, 2),
                low = show::short(*low, 1),
                high = show::short(*high, 1),
            );
            match perhaps {
                Some(unit) => fault + " " + &words.plain(&format!("weather-perhaps-{}", unit.name())),
                None => fault,
            }
        }
        F::ColumnUnit { column, greatest, perhaps } => {
            let greatest = show::short(*greatest, 2);
            say!(words, "weather-fault-column-unit", column = *column, greatest = greatest)
                + " "
                + &words.plain(&format!("weather-perhaps-{}", perhaps.name()))
        }
        F::Gap { line, after, hours } => {
            let hours = f64::from(*hours);
            say!(words, "weather-fault-gap", line = at(line), after = stamp(after), hours = hours)
        }
        F::Twice { line, hour, first } => {
            say!(words, "weather-fault-twice", line = at(line), hour = stamp(hour), first = at(first))
        }
        F::Back { line, hour, after } => {
            say!(words, "weather-fault-back", line = at(line), hour = stamp(hour), after = stamp(after))
        }
        F::Clock { hour } => {
            let hour = format!("{:02.0}:00", hour.floor());
            say!(words, "weather-fault-clock", hour = hour)
        }
    }
}

fn cell_fault(words: &Words, key: &str, line: usize, column: &'static str, cell: &str) -> String {
    let key = format!("weather-fault-{key}");
    say!(words, &key, line = line.to_string(), column = column, cell = cell.to_owned())
}
