//! A day of the air drawn: what brings heat and what takes it, the house cut across, and dampness, stale and fresh air by
//! the hour.

use advice::air::{AirHour, CO2_MOST_PPM, HUMIDITY_MOST};
use quantity::Unit;

use super::Shown;
use crate::document::{Align, Block, Drawing, Table};
use crate::scene::chart::{Chart, ChartWords, Limit, Mark, Series, Stroke};
use crate::scene::heat_balance::{HeatBalance, HeatBalanceWords, Way};
use crate::scene::section::{Section, SectionWords};
use crate::{say, show};

/// Stable names of the drawings of a day.
struct Names {
    flows: &'static str,
    section: &'static str,
    damp: &'static str,
    stale: &'static str,
    fresh: &'static str,
}

const FIRST: Names = Names {
    flows: "air-first-flows",
    section: "air-first-section",
    damp: "air-first-damp",
    stale: "air-first-stale",
    fresh: "air-first-fresh",
};
const LAST: Names = Names {
    flows: "air-last-flows",
    section: "air-last-section",
    damp: "air-last-damp",
    stale: "air-last-stale",
    fresh: "air-last-fresh",
};

/// A bird of a kilogram is about so wide lying down, m, and others by the cube root of what they weigh (our judgement).
const BIRD_M: f64 = 0.15;

impl Shown<'_> {
    /// The drawings of a day: of its coldest hour where it is the first, of its hottest where it is the last.
    pub(super) fn air_drawn(&self, hours: &[&AirHour], is_first: bool, day: &str) -> Vec<Block> {
        let names = if is_first { &FIRST } else { &LAST };
        let by_outside =
            |one: &&&AirHour, other: &&&AirHour| one.outside.outside_c.total_cmp(&other.outside.outside_c);
        let hour = if is_first { hours.iter().min_by(by_outside) } else { hours.iter().max_by(by_outside) };
        let Some(hour) = hour else { return Vec::new() };
        let at = say!(
            self.words,
            if is_first { "air-coldest-hour" } else { "air-hottest-hour" },
            day = day.to_owned(),
            hour = format!("{:02}:00", hour.house.hour),
        );
        let section = self.section_drawing(names.section, hour, &at);
        let drawings = [
            Some(self.flows_drawing(names.flows, hour, &at)),
            section,
            Some(self.damp_drawing(names.damp, hours, day)),
            Some(self.stale_drawing(names.stale, hours, day)),
            Some(self.fresh_drawing(names.fresh, hours, day)),
        ];
        drawings.into_iter().flatten().map(Block::Drawing).collect()
    }

    /// Every way of heat of an hour, those that bring it and those that take it.
    fn ways(&self, hour: &AirHour) -> HeatBalance {
        let flows = hour.house.heat;
        let said = |kw: f64| show::quantity(kw, Unit::Kilowatt, 1, self.viewer);
        // Stored heat has gone out of the air: what others bring, it takes.
        let all = [
            ("birds", flows.birds),
            ("heater", flows.heater),
            ("sun", flows.sun),
            ("walls", flows.walls),
            ("curtain", flows.curtain),
            ("roof", flows.roof),
            ("ground", flows.floor),
            ("fresh", flows.ventilation),
            ("litter", flows.evaporation),
            ("stored", -flows.stored),
        ];
        let way = |key: &str, side: &str, watts: f64| Way {
            label: self.words.plain(&format!("heat-{side}-{key}")),
            amount: watts / 1000.0,
            said: said(watts / 1000.0),
        };
        let brings = all.iter().filter(|(_, watts)| *watts > 0.0).map(|(key, watts)| way(key, "in", *watts));
        let takes = all.iter().filter(|(_, watts)| *watts < 0.0).map(|(key, watts)| way(key, "out", -watts));
        HeatBalance::of(brings.collect(), takes.collect(), &self.words.plain("heat-little"), said)
    }

    fn flows_drawing(&self, name: &'static str, hour: &AirHour, at: &str) -> Drawing {
        let balance = self.ways(hour);
        let sum = |ways: &[Way]| {
            let kw = ways.iter().map(|way| way.amount).sum::<f64>();
            show::quantity(kw, Unit::Kilowatt, 1, self.viewer)
        };
        let (brings, takes) = (sum(&balance.brings), sum(&balance.takes));
        let list = |ways: &[Way]| {
            let each = ways
                .iter()
                .map(|way| say!(self.words, "heat-way", what = way.label.clone(), kw = way.said.clone()));
            each.collect::<Vec<_>>().join("; ")
        };
        let alternative = say!(
            self.words,
            "heat-drawn",
            hour = at.to_owned(),
            sum = brings.clone(),
            brings = list(&balance.brings),
            takes = list(&balance.takes),
        );
        let words = HeatBalanceWords {
            brings: say!(self.words, "heat-brings", kw = brings.clone()),
            takes: say!(self.words, "heat-takes", kw = takes),
            scale: say!(self.words, "heat-scale", kw = brings),
            alternative: alternative.clone(),
        };
        let row = |side: &str, way: &Way| vec![self.words.plain(side), way.label.clone(), way.said.clone()];
        let rows = balance.brings.iter().map(|way| row("heat-side-brings", way));
        let rows = rows.chain(balance.takes.iter().map(|way| row("heat-side-takes", way)));
        Drawing {
            name,
            svg: balance.draw(&words),
            caption: say!(self.words, "heat-caption", hour = at.to_owned()),
            alternative,
            data: Table {
                caption: say!(self.words, "heat-caption", hour = at.to_owned()),
                columns: vec![
                    (self.words.plain("heat-column-side"), Align::Start),
                    (self.words.plain("heat-column-what"), Align::Start),
                    (self.words.plain("heat-column-kw"), Align::End),
                ],
                rows: rows.collect(),
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            },
            width_percent: 70,
        }
    }

    /// The house cut across in an hour; `None` where its measures are not told.
    fn section_drawing(&self, name: &'static str, hour: &AirHour, at: &str) -> Option<Drawing> {
        let number = |key: &str| self.plan.answers.number(key);
        let (width_m, eave_m) = (number("house.width_m")?, number("house.eave_height_m")?);
        let length_m = match hour.is_brooding {
            true => self.plan.outcome.number("brooding.heated_length")?,
            false => number("house.length_m")?,
        };
        let open_m = hour.house.opening_m2 / length_m;
        let kg = self.plan.outcome.on_day("growth.weight", hour.house.day).unwrap_or(44.0) / 1000.0;
        let birds = self.plan.outcome.on_day("batch.birds_expected", hour.house.day).unwrap_or(0.0);
        let section = Section {
            width_m,
            eave_m,
            ridge_m: number("house.ridge_height_m")?,
            half_wall_m: number("house.half_wall_m")?,
            open_m,
            bird_m: BIRD_M * kg.cbrt(),
            birds_per_m: birds / (length_m * width_m),
            sun: hour.outside.sun_w_per_m2 > 0.0,
            heats: hour.house.heater_kw > 0.05,
            wind: hour.outside.wind_m_s > 0.0,
        };
        let celsius = |degrees: f64| show::quantity(degrees, Unit::Celsius, 0, self.viewer);
        let speed = show::quantity(hour.outside.wind_m_s, Unit::MetrePerSecond, 1, self.viewer);
        let open = show::quantity(open_m, Unit::Metre, 2, self.viewer);
        let open = if open_m < 0.005 {
            self.words.plain("cut-across-shut")
        } else {
            say!(self.words, "cut-across-open", open = open)
        };
        let inside = say!(
            self.words,
            "cut-across-inside",
            air = celsius(hour.house.inside_c),
            damp = show::quantity(100.0 * hour.house.humidity, Unit::Percent, 0, self.viewer),
            litter = celsius(hour.house.mass_c),
        );
        let outside = celsius(hour.outside.outside_c);
        let alternative = say!(
            self.words,
            "cut-across-drawn",
            hour = at.to_owned(),
            outside = outside.clone(),
            inside = inside.clone(),
            open = open.clone(),
        );
        let words = SectionWords {
            outside: vec![self.words.plain("cut-across-wind-side"), outside, speed],
            inside: vec![inside],
            lee: vec![self.words.plain("cut-across-lee-side")],
            open: open.clone(),
            width: show::quantity(width_m, Unit::Metre, 2, self.viewer),
            alternative: alternative.clone(),
        };
        let told = |label: &str, value: String| vec![self.words.plain(label), value];
        let kilowatts = |kw: f64| show::quantity(kw, Unit::Kilowatt, 1, self.viewer);
        Some(Drawing {
            name,
            svg: section.draw(&words),
            caption: say!(self.words, "cut-across-caption", hour = at.to_owned()),
            alternative,
            data: Table {
                caption: say!(self.words, "cut-across-caption", hour = at.to_owned()),
                columns: vec![
                    (self.words.plain("cut-across-column-what"), Align::Start),
                    (self.words.plain("cut-across-column-value"), Align::End),
                ],
                rows: vec![
                    told("air-outside", celsius(hour.outside.outside_c)),
                    told("air-inside", celsius(hour.house.inside_c)),
                    told("cut-across-litter", celsius(hour.house.mass_c)),
                    told("cut-across-curtain", open),
                    told(
                        "cut-across-fresh",
                        show::quantity(hour.house.ventilation_m3_h, Unit::CubicMetrePerHour, 0, self.viewer),
                    ),
                    told("cut-across-heaters", kilowatts(hour.house.heater_kw)),
                ],
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            },
            width_percent: 70,
        })
    }

    fn damp_drawing(&self, name: &'static str, hours: &[&AirHour], day: &str) -> Drawing {
        let chart = Chart {
            series: vec![
                self.line("air-inside", Stroke::Solid, hours, |hour| 100.0 * hour.house.humidity),
                self.line("air-outside", Stroke::Dashed, hours, |hour| 100.0 * hour.outside.humidity),
            ],
            limit: Some(Limit { label: self.words.plain("air-damp-most"), value: 100.0 * HUMIDITY_MOST }),
            from_zero: true,
            ..Chart::default()
        };
        let of = |hour: &AirHour| 100.0 * hour.house.humidity;
        self.by_hour(name, "damp", &chart, hours, day, (Unit::Percent, of))
    }

    fn stale_drawing(&self, name: &'static str, hours: &[&AirHour], day: &str) -> Drawing {
        let chart = Chart {
            series: vec![self.line("air-inside", Stroke::Solid, hours, |hour| hour.house.co2_ppm)],
            limit: Some(Limit { label: self.words.plain("air-stale-most"), value: CO2_MOST_PPM }),
            from_zero: true,
            ..Chart::default()
        };
        self.by_hour(name, "stale", &chart, hours, day, (Unit::PartsPerMillion, |hour| hour.house.co2_ppm))
    }

    /// Fresh air, marked where another reason sets it.
    fn fresh_drawing(&self, name: &'static str, hours: &[&AirHour], day: &str) -> Drawing {
        let before = std::iter::once(None).chain(hours.iter().map(|hour| Some(hour.house.binding)));
        let changes = hours.iter().zip(before).filter(|(hour, before)| Some(hour.house.binding) != *before);
        let marks = changes.map(|(hour, _)| Mark {
            day: f64::from(hour.house.hour),
            label: self.words.plain(&format!("air-binding-{}", hour.house.binding.name())),
        });
        let flow = |hour: &AirHour| hour.house.ventilation_m3_h;
        let line = self.line("air-fresh-line", Stroke::Solid, hours, flow);
        let chart = Chart {
            series: vec![Series { stepped: true, ..line }],
            marks: marks.collect(),
            from_zero: true,
            ..Chart::default()
        };
        self.by_hour(name, "fresh", &chart, hours, day, (Unit::CubicMetrePerHour, flow))
    }

    fn line(&self, key: &str, stroke: Stroke, hours: &[&AirHour], of: fn(&AirHour) -> f64) -> Series {
        let points = hours.iter().map(|hour| [f64::from(hour.house.hour), of(hour)]);
        Series { label: self.words.plain(key), stroke, stepped: false, points: points.collect() }
    }

    /// A chart by the hour with its words; `what` says which.
    fn by_hour(
        &self,
        name: &'static str,
        what: &str,
        chart: &Chart,
        hours: &[&AirHour],
        day: &str,
        (unit, of): (Unit, fn(&AirHour) -> f64),
    ) -> Drawing {
        let shown = |value: f64| show::quantity(value, unit, 0, self.viewer);
        let values = || hours.iter().map(|hour| of(hour));
        let alternative = say!(
            self.words,
            &format!("air-{what}-drawn"),
            day = day.to_owned(),
            low = shown(values().fold(f64::INFINITY, f64::min)),
            high = shown(values().fold(f64::NEG_INFINITY, f64::max)),
        );
        let words = ChartWords {
            up: crate::by_day::axis(&self.words.plain(&format!("air-{what}-axis")), unit, self.viewer),
            across: self.words.plain("air-axis-hours"),
            alternative: alternative.clone(),
        };
        Drawing {
            name,
            svg: chart.draw_by_hour(&words),
            caption: say!(self.words, &format!("air-{what}-caption"), day = day.to_owned()),
            alternative,
            data: self.breath_table(hours, day),
            width_percent: 50,
        }
    }

    /// Every second hour.
    fn breath_table(&self, hours: &[&AirHour], day: &str) -> Table {
        let bare = |value: f64, unit: Unit| show::bare(value, unit, 0, self.viewer);
        let row = |one: &&AirHour| {
            vec![
                format!("{:02}:00", one.house.hour),
                bare(100.0 * one.house.humidity, Unit::Percent),
                bare(one.house.co2_ppm, Unit::PartsPerMillion),
                bare(one.house.ventilation_m3_h, Unit::CubicMetrePerHour),
                self.words.plain(&format!("air-binding-{}", one.house.binding.name())),
            ]
        };
        Table {
            caption: say!(self.words, "air-breath-table", day = day.to_owned()),
            columns: vec![
                (self.words.plain("air-column-hour"), Align::Start),
                (self.unit_title("air-column-humidity", Unit::Percent), Align::End),
                (self.unit_title("air-column-stale", Unit::PartsPerMillion), Align::End),
                (self.unit_title("air-column-fresh", Unit::CubicMetrePerHour), Align::End),
                (self.words.plain("air-column-binding"), Align::Start),
            ],
            rows: hours.iter().step_by(2).map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }
}
