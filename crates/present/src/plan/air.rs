//! The air they breathe: what the hourly balance of a planned house says, drawn and in numbers.

use advice::air::{AirHour, CannotRun, Guess, PlannedAir};
use quantity::Unit;
use schemars::JsonSchema;
use serde::Serialize;

use super::Shown;
use crate::document::{Align, Block, Caution, Document, Drawing, Level, Table};
use crate::scene::chart::{Chart, ChartWords, Series, Stroke};
use crate::viewer::Viewer;
use crate::{air_day, say, show, working};

/// The figures of the section, the wanted ones first.
const ROWS: &[&str] = &[
    "brooding.heat",
    "air.heat_short",
    "brooding.preheat_hours",
    "brooding.fuel_day",
    "brooding.fuel_total",
    "brooding.heat_first_day",
    "brooding.heat_over_days",
    "air.hot_hours",
];

/// An hour of a planned house.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AirHourJson {
    /// Day of age.
    pub day: i32,
    /// Hour of the day, 0 to 23.
    pub hour: u32,
    /// Air outside, °C.
    pub outside_c: f64,
    /// Air inside, °C.
    pub inside_c: f64,
    /// Relative humidity inside, percent.
    pub humidity_pct: f64,
    /// Carbon dioxide inside, parts in a million.
    pub co2_ppm: f64,
    /// Fresh air, m3/h.
    pub ventilation_m3_h: f64,
    /// What decides how much of it: minimum, moisture, carbon-dioxide, heat or wind.
    pub binding: &'static str,
    /// What heaters give, kW.
    pub heater_kw: f64,
    /// What they lack, kW.
    pub short_kw: f64,
    /// Open on each long side, m2.
    pub opening_m2: f64,
    /// The index of heat, °C.
    pub heat_index_c: f64,
    /// Carbon monoxide that the fire would even out at, parts in a million: a warning, never an all-clear.
    pub co_ppm: f64,
    /// Moisture of the litter, percent on a wet basis.
    pub litter_pct: f64,
    /// How hard that is: comfort, warm, alert, danger or emergency.
    pub heat: &'static str,
}

/// The air of a planned house.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AirView {
    /// Every hour from the chick day on.
    pub hours: Vec<AirHourJson>,
    /// The worst that heat, water and carbon dioxide leave over in an hour, as a share of what moved.
    pub residual: f64,
    /// The most that heaters must give in an hour, kW.
    pub heat_peak_kw: f64,
    /// The most that they lack, kW.
    pub heat_short_kw: f64,
    /// Hours to warm the empty house; absent where the heaters never do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub preheat_hours: Option<usize>,
    /// Heat of the heaters in all, kWh.
    pub heat_kwh: f64,
    /// Fuel for that, kg; absent where no fuel is told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fuel_kg: Option<f64>,
}

pub(crate) fn hour_json(one: &AirHour) -> AirHourJson {
    AirHourJson {
        day: one.house.day,
        hour: one.house.hour,
        outside_c: one.outside.outside_c,
        inside_c: one.house.inside_c,
        humidity_pct: 100.0 * one.house.humidity,
        co2_ppm: one.house.co2_ppm,
        ventilation_m3_h: one.house.ventilation_m3_h,
        binding: one.house.binding.name(),
        heater_kw: one.house.heater_kw,
        short_kw: if one.is_brooding { one.house.shortfall_kw } else { 0.0 },
        opening_m2: one.house.opening_m2,
        heat_index_c: one.heat_index,
        co_ppm: one.house.carbon_monoxide_ppm,
        litter_pct: 100.0 * one.house.litter_moisture,
        heat: one.heat.name(),
    }
}

/// The air of a planned house as JSON.
pub fn view(air: &PlannedAir) -> AirView {
    AirView {
        hours: air.hours.iter().map(hour_json).collect(),
        residual: air.residual,
        heat_peak_kw: air.needed.peak_kw(),
        heat_short_kw: air.heat_short_kw(),
        preheat_hours: air.preheat_h,
        heat_kwh: air.in_all().heat_kwh,
        fuel_kg: air.fuel_kg(air.in_all().heat_kwh),
    }
}

/// Every hour as a table of comma-separated values.
pub fn csv(air: &PlannedAir) -> String {
    let head = "day,hour,outside_c,inside_c,humidity_pct,co2_ppm,ventilation_m3_h,binding,heater_kw,short_kw,opening_m2,heat_index_c,co_ppm,litter_pct,heat\n";
    let row = |one: AirHourJson| {
        format!(
            "{},{},{:.2},{:.2},{:.1},{:.0},{:.0},{},{:.3},{:.3},{:.2},{:.2},{:.0},{:.1},{}\n",
            one.day,
            one.hour,
            one.outside_c,
            one.inside_c,
            one.humidity_pct,
            one.co2_ppm,
            one.ventilation_m3_h,
            one.binding,
            one.heater_kw,
            one.short_kw,
            one.opening_m2,
            one.heat_index_c,
            one.co_ppm,
            one.litter_pct,
            one.heat,
        )
    };
    head.to_owned() + &air.hours.iter().map(|hour| row(hour_json(hour))).collect::<String>()
}

/// What the air of a plan waits for: a field that is not told, or one that cannot be.
pub fn cannot_run(cannot: &CannotRun, viewer: &Viewer) -> String {
    match cannot {
        CannotRun::NotTold(key) => working::named(key, viewer),
        CannotRun::Fault(fault) => say!(
            viewer.words(),
            "air-fault",
            field = fault.field,
            value = show::number(fault.value, 1),
            low = show::number(fault.low, 1),
            high = show::number(fault.high, 1),
        ),
    }
}

/// Air inside, outside and as wanted through the hours of a day, drawn.
pub(crate) fn warmth(hours: &[&AirHour], alternative: &str, viewer: &Viewer) -> String {
    let words = viewer.words();
    let line = |key: &str, stroke: Stroke, of: fn(&AirHour) -> f64| Series {
        label: words.plain(key),
        stroke,
        stepped: false,
        points: hours.iter().map(|hour| [f64::from(hour.house.hour), of(hour)]).collect(),
    };
    let chart = Chart {
        series: vec![
            line("air-inside", Stroke::Solid, |hour| hour.house.inside_c),
            line("air-outside", Stroke::Dashed, |hour| hour.outside.outside_c),
            line("air-wanted", Stroke::Dotted, |hour| hour.house.target_c.unwrap_or(f64::NAN)),
        ],
        ..Chart::default()
    };
    chart.draw_by_hour(&ChartWords {
        up: crate::by_day::axis(&words.plain("air-axis"), Unit::Celsius, viewer),
        across: words.plain("air-axis-hours"),
        alternative: alternative.to_owned(),
    })
}

impl Shown<'_> {
    /// The air of the plan as a document of its own.
    pub fn air_document(&self, air: &PlannedAir) -> Document {
        Document {
            title: self.words.plain("page-air"),
            subtitle: self.subtitle(),
            blocks: self.air_blocks(air),
        }
    }

    /// The air on its own page, behind the heat; or what must be told before it can be worked out.
    pub(super) fn air(&self) -> Block {
        let apart = |air: &PlannedAir| Block::Apart {
            page: "air",
            title: self.words.plain("page-air"),
            blocks: self.air_blocks(air),
        };
        if let Some(air) = self.plan.outcome.drawn().air() {
            return apart(air);
        }
        // Figures want more than the run does, such as how many heaters there are.
        match PlannedAir::of(&self.plan.answers, Guess::AS_TOLD, None) {
            Ok(air) => apart(&air),
            Err(cannot) => {
                Block::Note(say!(self.words, "air-waiting", field = cannot_run(&cannot, self.viewer)))
            }
        }
    }

    fn air_blocks(&self, air: &PlannedAir) -> Vec<Block> {
        let mut blocks = self.air_heaters(air);
        blocks.push(Block::Note(self.words.plain("air-which-day")));
        blocks.extend(self.air_with_fire(air));
        blocks.extend(self.rows(ROWS));
        blocks.extend(self.air_usual());
        blocks.extend(self.air_days(air));
        blocks
    }

    /// What heaters must give, and what kills beside them.
    pub(super) fn air_heaters(&self, air: &PlannedAir) -> Vec<Block> {
        let kilowatts = |kw: f64| show::quantity(kw, Unit::Kilowatt, 1, self.viewer);
        let (peak, short) = (air.needed.peak_kw(), air.heat_short_kw());
        let mut blocks =
            vec![Block::Heading { level: 2, text: self.words.plain("air-heaters"), anchor: "air-heaters" }];
        blocks.push(Block::Lead {
            label: self.words.plain("air-lead-label"),
            value: kilowatts(peak),
            note: if air.stale_ppm().is_some() {
                self.words.plain("air-lead-stale")
            } else if short > 0.05 {
                say!(self.words, "air-lead-short", short = kilowatts(short))
            } else {
                self.words.plain("air-lead-enough")
            },
        });
        if let Some(ppm) = air.stale_ppm() {
            let ppm = show::quantity(ppm, Unit::PartsPerMillion, 0, self.viewer);
            blocks.push(Block::Caution(Caution {
                level: Level::Danger,
                title: self.words.plain("air-stale"),
                items: vec![say!(self.words, "air-stale-1", ppm = ppm), self.words.plain("air-stale-2")],
            }));
        }
        if self.plan.answers.number("brooding.brooders").is_some() {
            blocks.push(Block::Caution(self.caution("heat", Level::Danger, 7)));
        }
        blocks
    }

    /// Fresh air at the peak, and the gas of the fire that it does not make harmless.
    pub(super) fn air_with_fire(&self, air: &PlannedAir) -> Vec<Block> {
        let fresh =
            show::quantity(air.needed.fresh_air_at_peak_m3_per_h(), Unit::CubicMetrePerHour, 0, self.viewer);
        let gas = air.carbon_monoxide_ppm().map(|ppm| {
            let ppm = show::quantity(ppm, Unit::PartsPerMillion, 0, self.viewer);
            // The section of the heat counts with leaks alone.
            let shut = self.gas_of_shut_house();
            let known = if shut.is_some() { "yes" } else { "no" };
            let shut = shut.unwrap_or_default();
            Block::Paragraph(say!(self.words, "air-gas", ppm = ppm, shut = shut, known = known))
        });
        gas.into_iter().chain([Block::Note(say!(self.words, "air-with-fire", air = fresh))]).collect()
    }

    /// From the lowest to the highest of what the gas would come to with no more air than leaks in.
    fn gas_of_shut_house(&self) -> Option<String> {
        let band = self.plan.outcome.get("brooding.carbon_monoxide")?.figure.band?;
        let bare = |ppm| show::bare(ppm, Unit::PartsPerMillion, 0, self.viewer);
        let high = show::quantity(band.high, Unit::PartsPerMillion, 0, self.viewer);
        Some(say!(self.words, "air-day-from-to", low = bare(band.low), high = high))
    }

    /// The first day and the last, drawn and in numbers.
    pub(super) fn air_days(&self, air: &PlannedAir) -> Vec<Block> {
        let (last, mut blocks) = (air.last_day().unwrap_or_default(), Vec::new());
        for (key, age_d) in [("air-first-day", 0), ("air-last-day", last)] {
            let of_day: Vec<&AirHour> = air.hours.iter().filter(|hour| hour.house.day == age_d).collect();
            let day = say!(self.words, "day-of-age", day = show::number(f64::from(age_d), 0));
            blocks.push(Block::Heading {
                level: 2,
                text: say!(self.words, key, day = day.clone()),
                anchor: key,
            });
            blocks.extend(air_day::curtain_of_plan(&self.plan.answers, Some(age_d), self.viewer));
            blocks.push(self.air_drawing(key, &of_day, &day));
            blocks.push(Block::Table(self.air_table(&of_day, &day)));
            blocks.extend(self.air_drawn(&of_day, key == "air-first-day", &day));
        }
        blocks.extend(self.air_litter(air));
        blocks.push(Block::Note(self.words.plain("air-not-in-it")));
        blocks
    }

    fn air_drawing(&self, name: &'static str, hours: &[&AirHour], day: &str) -> Block {
        let celsius = |degrees: f64| show::quantity(degrees, Unit::Celsius, 1, self.viewer);
        let most =
            |of: fn(&AirHour) -> f64| hours.iter().map(|hour| of(hour)).fold(f64::NEG_INFINITY, f64::max);
        let least = |of: fn(&AirHour) -> f64| hours.iter().map(|hour| of(hour)).fold(f64::INFINITY, f64::min);
        let alternative = say!(
            self.words,
            "air-drawn",
            day = day.to_owned(),
            low = celsius(least(|hour| hour.house.inside_c)),
            high = celsius(most(|hour| hour.house.inside_c)),
            outside_low = celsius(least(|hour| hour.outside.outside_c)),
            outside_high = celsius(most(|hour| hour.outside.outside_c)),
        );
        Block::Drawing(Drawing {
            name,
            svg: warmth(hours, &alternative, self.viewer),
            caption: say!(self.words, "air-caption", day = day.to_owned()),
            alternative,
            data: self.air_table(hours, day),
            width_percent: 70,
        })
    }

    /// Every second hour.
    fn air_table(&self, hours: &[&AirHour], day: &str) -> Table {
        let bare = |value: f64, unit: Unit, decimals: u8| show::bare(value, unit, decimals, self.viewer);
        let row = |one: &&AirHour| {
            vec![
                format!("{:02}:00", one.house.hour),
                bare(one.house.inside_c, Unit::Celsius, 0),
                bare(100.0 * one.house.humidity, Unit::Percent, 0),
                bare(one.house.opening_m2, Unit::SquareMetre, 1),
                bare(one.house.heater_kw, Unit::Kilowatt, 1),
                self.words.plain(&format!("air-binding-{}", one.house.binding.name())),
            ]
        };
        Table {
            caption: say!(self.words, "air-table-caption", day = day.to_owned()),
            columns: vec![
                (self.words.plain("air-column-hour"), Align::Start),
                (self.unit_title("air-column-inside", Unit::Celsius), Align::End),
                (self.unit_title("air-column-humidity", Unit::Percent), Align::End),
                (self.unit_title("air-column-opening", Unit::SquareMetre), Align::End),
                (self.unit_title("air-column-heaters", Unit::Kilowatt), Align::End),
                (self.words.plain("air-column-binding"), Align::Start),
            ],
            rows: hours.iter().step_by(2).map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }
}
