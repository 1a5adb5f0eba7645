//! How much heat and fuel?

use advice::air::{HeatFlows, HeatNeeded};

use super::*;
use crate::scene::bars::{Bar, Bars, BarsWords};

/// One way out for the heat: its words and its figure in W/K.
type Part = (&'static str, &'static str);

const OF_HOUSE: &[Part] = &[
    ("heat-part-walls", "brooding.ua_walls"),
    ("heat-part-curtain", "brooding.ua_curtain"),
    ("heat-part-ends", "brooding.ua_ends"),
    ("heat-part-roof", "brooding.ua_roof"),
    ("heat-part-floor", "brooding.ua_floor"),
    AIR,
];
const OF_COVERED_RINGS: &[Part] = &[
    ("heat-part-cover", "brooding.ua_cover"),
    ("heat-part-guard", "brooding.ua_guard"),
    ("heat-part-ground", "brooding.ua_ground"),
    AIR,
];
const AIR: Part = ("heat-part-air", "brooding.air_change_loss");

/// A part with its heat, kW; less than 0 where it brings some.
struct Going {
    part: &'static str,
    kw: f64,
}

/// Where heat goes: in the hardest hour of the brooding days where they were followed, else on one steady night.
struct Balance {
    goings: Vec<Going>,
    chicks_kw: f64,
    brooders_kw: f64,
    is_of_hour: bool,
    explained_by: Vec<&'static str>,
}

impl Balance {
    /// All that goes out, kW.
    fn all(&self) -> f64 {
        self.goings.iter().map(|going| going.kw).sum()
    }
}

/// The flows of an hour by part: what they warm the house with counts above 0 there, what goes out here.
fn of_hour(flows: &HeatFlows) -> Balance {
    let out = |part, w: f64| Going { part, kw: w / 1000.0 };
    Balance {
        goings: vec![
            out("heat-part-air", -flows.ventilation),
            out("heat-part-roof-and-sky", -flows.roof - flows.sun),
            out("heat-part-walls-and-edge", -flows.walls),
            out("heat-part-curtain-and-ends", -flows.curtain),
            out("heat-part-deep-ground", -flows.floor),
            out("heat-part-drying", -flows.evaporation),
            out("heat-part-stored", flows.stored),
        ],
        chicks_kw: flows.birds / 1000.0,
        brooders_kw: flows.heater / 1000.0,
        is_of_hour: true,
        explained_by: vec!["brooding.heat"],
    }
}

impl Shown<'_> {
    pub(super) fn heat(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-heat")];
        let Some(lead) = self.heat_lead() else {
            blocks.push(self.waiting("waiting-heat", &waiting::HEAT));
            return blocks;
        };
        blocks.push(lead);
        blocks.extend(self.heat_saving());
        blocks.push(Block::Caution(self.caution("heat", Level::Danger, 7)));
        blocks.extend(self.findings(&[
            "weather",
            "brooding.brooder_kw",
            "brooding.heated_length_m",
            "brooding.fuel",
            "brooding.second_fuel",
            "brooding.cover",
        ]));
        blocks.extend(self.heat_drawing());
        blocks.extend(self.where_heat_goes().map(Block::Table));
        blocks.extend(self.heat_by_the_hour());
        blocks.push(Block::Note(self.words.plain("heat-air-not-spot")));
        blocks.extend(self.fold("all-figures", self.rows(ROWS).into_iter().collect()));
        blocks.extend(self.heat_notes());
        blocks.extend(self.heat_by_day().map(Block::Table));
        blocks.push(self.air());
        blocks
    }

    fn heat_lead(&self) -> Option<Block> {
        let (heat, whole) = (self.number("brooding.heat")?, self.number("brooding.heat_whole_house")?);
        let (lead, note) = if heat <= 0.0 {
            ("heat-lead-none", "heat-lead-note-none")
        } else if heat < whole {
            ("heat-lead", "heat-lead-note")
        } else {
            ("heat-lead-whole", "heat-lead-note-whole")
        };
        let value = |id: &str| self.value(id).unwrap_or_default();
        Some(Block::Lead {
            label: self.words.plain("heat-lead-label"),
            value: say!(self.words, lead, heat = value("brooding.heat")),
            note: say!(
                self.words,
                note,
                whole = value("brooding.heat_whole_house"),
                design = value("brooding.design"),
            ),
        })
    }

    /// Why the hardest hour takes another heat than a steady night.
    fn heat_by_the_hour(&self) -> Option<Block> {
        let air = self.plan.outcome.drawn().heat()?.fresh_air_at_peak_m3_per_h();
        let air = show::quantity(air, Unit::CubicMetrePerHour, 0, self.viewer);
        let steady = self.value("brooding.heat_steady")?;
        Some(Block::Note(say!(self.words, "heat-more-by-the-hour", steady = steady, air = air)))
    }

    /// What is saved by not heating the whole house: in what the grower buys, else as fuel, else as heat.
    fn heat_saving(&self) -> Option<Block> {
        let (part, whole) =
            (self.number("brooding.heat_over_days")?, self.number("brooding.heat_over_days_whole_house")?);
        let days = self.plan.answers.number("brooding.days_d")?;
        let days = show::quantity(days, Unit::Day, 0, self.viewer);
        let kilowatt_hours = || show::quantity(whole - part, Unit::KilowattHour, 0, self.viewer);
        let (value, kg) = match (
            self.value("brooding.cylinders_saved"),
            self.value("brooding.sacks_saved"),
            self.value("brooding.saving"),
        ) {
            (Some(cylinders), _, kg) => {
                (say!(self.words, "heat-saving-cylinders", cylinders = cylinders), kg)
            }
            (_, Some(sacks), kg) => (say!(self.words, "heat-saving-sacks", sacks = sacks), kg),
            (_, _, Some(kg)) => (say!(self.words, "heat-saving-fuel", fuel = kg), None),
            _ => (say!(self.words, "heat-saving-heat", heat = kilowatt_hours()), None),
        };
        let note = match kg {
            Some(kg) => say!(self.words, "heat-saving-note", days = days, kg = kg),
            None => say!(self.words, "heat-saving-note-days", days = days),
        };
        let label = self.words.plain("heat-saving-label");
        (part < whole).then_some(Block::Lead { label, value, note })
    }

    /// Every way the heat goes: that of the hardest hour adds up to the heat asked for.
    fn heat_balance(&self) -> Option<Balance> {
        match self.plan.outcome.drawn().heat().and_then(HeatNeeded::hardest) {
            Some(hour) => Some(of_hour(&hour.heat)),
            None => self.of_steady_night(),
        }
    }

    fn of_steady_night(&self) -> Option<Balance> {
        let target = self.number("brooding.target_temperature")?;
        let warmer = (target - self.plan.answers.number("weather.coldest_night_c")?).max(0.0);
        let covered = self.number("brooding.ua_cover").is_some();
        let parts = if covered { OF_COVERED_RINGS } else { OF_HOUSE };
        let kw = |figure| Some(self.number(figure)? * warmer / 1000.0);
        let goings = parts.iter().map(|&(part, figure)| Some(Going { part, kw: kw(figure)? }));
        let goings: Vec<Going> = goings.collect::<Option<_>>()?;
        let all: f64 = goings.iter().map(|going| going.kw).sum();
        let of_parts = parts.iter().map(|&(_, figure)| figure);
        Some(Balance {
            goings,
            chicks_kw: self.number("brooding.chick_heat")?.min(all),
            brooders_kw: self.number("brooding.heat_steady")?,
            is_of_hour: false,
            explained_by: of_parts.chain(["brooding.chick_heat", "brooding.heat_steady"]).collect(),
        })
    }

    fn where_heat_goes(&self) -> Option<Table> {
        let balance = self.heat_balance()?;
        let all = balance.all();
        let bare = |kw: f64| show::bare(kw, Unit::Kilowatt, 2, self.viewer);
        let share = |kw: f64| show::quantity(100.0 * kw / all.max(1e-9), Unit::Percent, 0, self.viewer);
        let row = |part: &str, kw: f64| vec![self.words.plain(part), bare(kw), share(kw)];
        let mut rows: Vec<Vec<String>> =
            balance.goings.iter().map(|going| row(going.part, going.kw)).collect();
        rows.push(row("heat-part-chicks", -balance.chicks_kw));
        rows.push(row("heat-part-brooders", balance.brooders_kw));
        let caption = if balance.is_of_hour { "heat-goes-caption-hour" } else { "heat-goes-caption" };
        Some(Table {
            caption: self.words.plain(caption),
            columns: vec![
                (self.words.plain("column-part"), Align::Start),
                (self.unit_title("column-heat", Unit::Kilowatt), Align::End),
                (self.words.plain("column-share"), Align::End),
            ],
            emphasis: vec![rows.len() - 1],
            rows,
            explained_by: balance.explained_by,
        })
    }

    fn heat_drawing(&self) -> Option<Block> {
        let Balance { mut goings, is_of_hour, explained_by, .. } = self.heat_balance()?;
        // What brings heat is in the table; a bar has no length below nothing.
        goings.retain(|going| going.kw > 0.0);
        goings.sort_by(|one, other| other.kw.total_cmp(&one.kw));
        let kilowatts = |kw| show::quantity(kw, Unit::Kilowatt, 1, self.viewer);
        let bars: Vec<Bar> = goings
            .iter()
            .map(|going| Bar {
                label: self.words.plain(going.part),
                value: going.kw,
                start: 0.0,
                shown: kilowatts(going.kw),
                total: false,
            })
            .collect();
        let named = bars
            .iter()
            .map(|bar| say!(self.words, "drawing-heat-part", part = &bar.label, heat = &bar.shown));
        let alternative = say!(
            self.words,
            if is_of_hour { "drawing-heat-hour" } else { "drawing-heat" },
            heat = kilowatts(goings.iter().map(|going| going.kw).sum()),
            parts = named.collect::<Vec<_>>().join(", "),
        );
        Some(Block::Drawing(Drawing {
            name: "heat",
            svg: Bars { bars }.draw(&BarsWords { title: String::new(), alternative: alternative.clone() }),
            caption: self.words.plain("drawing-heat-caption"),
            alternative,
            data: self.drawing_data(&explained_by),
            width_percent: 60,
        }))
    }

    fn heat_notes(&self) -> Vec<Block> {
        let hours = self.plan.answers.number("brooding.hours_per_day_h");
        let days = self.plan.answers.number("brooding.days_d");
        let counted = hours.zip(days).filter(|_| self.counts_hours_a_day()).map(|(hours, days)| {
            let hours = show::quantity_short(hours, Unit::Hour, self.viewer);
            say!(
                self.words,
                "heat-hours-note",
                hours = hours,
                days = show::quantity(days, Unit::Day, 0, self.viewer)
            )
        });
        let gas = self.number("brooding.carbon_monoxide").map(|_| self.words.plain("gas-is-no-target"));
        [gas, counted].into_iter().flatten().map(Block::Note).collect()
    }

    /// Whether fuel is counted by hours a day at full heat, since the balance by the hour could not be run.
    fn counts_hours_a_day(&self) -> bool {
        self.number("brooding.fuel_total").is_some() && self.plan.outcome.drawn().heat().is_none()
    }

    /// Every third day and the last.
    fn heat_by_day(&self) -> Option<Table> {
        let series = self.plan.series.iter().find(|series| series.id == "brooding.heat_by_day")?;
        let last = series.index.len().checked_sub(1)?;
        let rows = series.index.iter().zip(&series.values).enumerate();
        let rows = rows.filter(|(at, _)| at % 3 == 0 || *at == last).map(|(_, (day, kw))| {
            let day = say!(self.words, "day-of-age", day = show::number(*day, 0));
            vec![day, show::bare(*kw, Unit::Kilowatt, 1, self.viewer)]
        });
        Some(Table {
            caption: self.words.plain("heat-by-day-caption"),
            columns: vec![
                (self.words.plain("column-from-day"), Align::Start),
                (self.unit_title("column-heat", Unit::Kilowatt), Align::End),
            ],
            rows: rows.collect(),
            emphasis: Vec::new(),
            explained_by: vec!["brooding.heat"],
        })
    }
}

/// Every figure of the section, the wanted ones first.
const ROWS: &[&str] = &[
    "brooding.heat",
    "brooding.heat_whole_house",
    "brooding.design",
    "brooding.brooders_needed",
    "brooding.brooder_power",
    "brooding.second_power",
    "brooding.second_heat",
    "brooding.heat_installed",
    "brooding.second_share",
    "brooding.power_short",
    "brooding.coldest_air",
    "brooding.target_temperature",
    "brooding.preheat_hours",
    "brooding.fuel_day",
    "brooding.fuel_rate",
    "brooding.fuel_total",
    "brooding.cylinders",
    "brooding.sacks",
    "brooding.spare",
    "brooding.saving",
    "brooding.cylinders_saved",
    "brooding.sacks_saved",
    "brooding.fuel_cost",
    "brooding.spare_packs",
    "brooding.spare_cost",
    "brooding.second_fuel_day",
    "brooding.second_fuel_rate",
    "brooding.second_fuel_total",
    "brooding.second_cylinders",
    "brooding.second_sacks",
    "brooding.second_spare",
    "brooding.second_spare_packs",
    "brooding.second_fuel_cost",
    "brooding.second_spare_cost",
    "brooding.carbon_monoxide",
    "brooding.second_gas_low",
    "brooding.second_gas_high",
    "brooding.second_stale_air",
    "brooding.second_fuel_useful",
    "brooding.fuel_useful",
    "brooding.heat_first_day",
    "brooding.heat_over_days",
    "brooding.heat_over_days_whole_house",
    "brooding.heat_steady",
    "brooding.chick_heat",
    "brooding.loss",
    "brooding.loss_whole_house",
    "brooding.ua_heated",
    "brooding.ua",
    "brooding.air_change_loss",
    "brooding.ua_walls",
    "brooding.ua_curtain",
    "brooding.ua_ends",
    "brooding.ua_roof",
    "brooding.ua_floor",
    "brooding.ua_cover",
    "brooding.ua_guard",
    "brooding.ua_ground",
    "brooding.roof_with_ceiling",
    "brooding.fresh_air",
    "brooding.fresh_air_whole_house",
    "brooding.air_to_breathe",
    "brooding.air_for_fire",
    "brooding.air_heat",
    "brooding.air_volume",
    "brooding.heated_length",
    "brooding.way_round",
    "brooding.wall_area",
    "brooding.curtain_area",
    "brooding.end_area",
    "brooding.roof_area",
];
