//! A night and a day of a house: where the curtain stands, which hours are hard on the birds, and what helps.

use advice::air::day::{AirDay, Answered, BEGINS_H, DayRun, Setting};
use advice::air::{AirHour, Band};
use advice::families::air_day;
use advice::walk::Walk;
use quantity::{Answers, Unit};
use schemars::JsonSchema;
use serde::Serialize;

use crate::document::{Align, Block, Caution, Document, Drawing, Level, Steps, Table};
use crate::plan::air::{AirHourJson, cannot_run, hour_json, warmth};
use crate::plan::figure_row;
use crate::scene::chart::{Chart, ChartWords, Series, Stroke};
use crate::viewer::Viewer;
use crate::words::Words;
use crate::{fault, say, show};

/// Chicks younger than this have no moving air at the floor, days (common practice).
const NO_DRAUGHT_UNTIL_D: i32 = 14;
/// The usual mark: the width of a hand, cm.
const HAND_CM: f64 = 10.0;
/// The steps of what to do with a curtain, and of a hot day.
const CURTAIN_STEPS: usize = 4;
const HEAT_STEPS: usize = 5;

/// A setting of the curtain.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SettingJson {
    /// Hour of the day by the sun, 0 to 23.
    pub hour: u32,
    /// How far it is let down on each side, in marks.
    pub marks: f64,
    /// The same, cm.
    pub cm: f64,
}

/// How a day goes.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct DayJson {
    /// The coldest hour inside, °C.
    pub coldest_c: f64,
    /// The warmest, °C.
    pub warmest_c: f64,
    /// The worst of the index of heat, °C.
    pub heat_index_c: f64,
    /// Hours that are an alert or worse.
    pub alert_hours: f64,
    /// Hours that are a danger or worse.
    pub danger_hours: f64,
    /// The most carbon dioxide, parts in a million.
    pub co2_ppm: f64,
    /// Heat that heaters give, kWh.
    pub heat_kwh: f64,
}

/// What one thing would do.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HelpJson {
    /// It: shade, wet-roof, fan, night-feed or quarter-fewer.
    pub help: &'static str,
    /// The day with it.
    #[serde(flatten)]
    pub day: DayJson,
}

/// A night and a day of a house.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AirDayView {
    /// Day of age on which it begins.
    pub age_d: i32,
    /// Where to set the curtain; empty where nothing opens.
    pub settings: Vec<SettingJson>,
    /// Every hour by those settings.
    pub hours: Vec<AirHourJson>,
    /// As the house is, the curtain moved every hour.
    pub as_it_is: DayJson,
    /// The same with what was asked to be changed; absent where nothing was.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub changed: Option<DayJson>,
    /// By the settings, with what was asked to be changed.
    pub likely: DayJson,
    /// What each thing would do alone.
    pub helps: Vec<HelpJson>,
    /// The worst that heat, water and carbon dioxide leave over in an hour, as a share of what moved.
    pub residual: f64,
}

fn day_json(run: &DayRun) -> DayJson {
    DayJson {
        coldest_c: run.coldest_c(),
        warmest_c: run.warmest_c(),
        heat_index_c: run.heat_index_c(),
        alert_hours: run.hours_at_least(Band::Alert),
        danger_hours: run.hours_at_least(Band::Danger),
        co2_ppm: run.stale_ppm(),
        heat_kwh: run.heat_kwh(),
    }
}

/// A night and a day as JSON.
pub fn view(day: &AirDay) -> AirDayView {
    let setting =
        |set: &Setting| SettingJson { hour: set.hour, marks: set.marks, cm: set.marks * day.mark_cm };
    AirDayView {
        age_d: day.age_d,
        settings: day.settings.iter().map(setting).collect(),
        hours: day.likely().hours.iter().map(hour_json).collect(),
        as_it_is: day_json(&day.as_it_is),
        changed: day.changed.as_ref().map(day_json),
        likely: day_json(day.likely()),
        helps: day
            .helps
            .iter()
            .map(|(help, run)| HelpJson { help: help.name(), day: day_json(run) })
            .collect(),
        residual: day.likely().residual,
    }
}

/// What an answer that cannot be given waits for: faults of what was typed, or a field that the plan does not tell.
pub fn why_not(answered: &Answered, viewer: &Viewer) -> Option<String> {
    let wrong = answered.checked.problems.first().map(|problem| fault::sentence(problem, viewer));
    let missing = || {
        let cannot = answered.cannot.as_ref()?;
        Some(say!(viewer.words(), "air-day-waiting", field = cannot_run(cannot, viewer)))
    };
    wrong.or_else(missing)
}

/// The answer as a document.
///
/// - `subtitle`: whose house and when
pub fn document(answered: &Answered, subtitle: String, viewer: &Viewer) -> Document {
    let title = viewer.words().plain("page-air");
    let blocks = match answered.outcome.drawn().air_day() {
        Some(day) => DayShown { day, answers: &answered.answers, viewer }.blocks(answered),
        None => why_not(answered, viewer).map(Block::Note).into_iter().collect(),
    };
    Document { title, subtitle, blocks }
}

/// What a running batch is asked: tonight, by the plan's own coldest night and hottest afternoon.
pub fn tonight(walk: &Walk) -> Option<Answered> {
    let diary = &walk.diary;
    let age_d = diary.age_today().filter(|age| *age >= 0 && !diary.is_closed)?;
    Some(advice::air::day::answer(&walk.plan.answers, Some(age_d), Vec::new()))
}

/// The sheet for the house: where the curtain stands through a night and a day.
pub fn sheet(answered: &Answered, subtitle: String, viewer: &Viewer) -> Document {
    let title = viewer.words().plain("sheet-curtain");
    let blocks = match answered.outcome.drawn().air_day() {
        Some(day) => {
            let shown = DayShown { day, answers: &answered.answers, viewer };
            let (left, right) = (shown.curtain(), shown.against_heat());
            left.into_iter().chain(right).collect()
        }
        None => why_not(answered, viewer).map(Block::Note).into_iter().collect(),
    };
    Document { title, subtitle, blocks }
}

/// The curtain tonight and the heat tomorrow in a few lines, for the page of the day and the watch; empty where it cannot be
/// told.
pub fn in_short(answered: &Answered, viewer: &Viewer) -> Vec<Block> {
    let Some(day) = answered.outcome.drawn().air_day() else { return Vec::new() };
    let shown = DayShown { day, answers: &answered.answers, viewer };
    shown.curtain_lead().into_iter().chain(shown.heat_lead(true)).collect()
}

/// Where the curtain stands on a day of a plan, in a line; `None` where it cannot be told.
///
/// - `age_d`: the last day of the plan where it is not given
pub fn curtain_of_plan(plan: &Answers, age_d: Option<i32>, viewer: &Viewer) -> Option<Block> {
    let answered = advice::air::day::answer(plan, age_d, Vec::new());
    let day = answered.outcome.drawn().air_day()?;
    DayShown { day, answers: &answered.answers, viewer }.curtain_lead()
}

/// The heat tomorrow alone; empty where no hour of it is hot.
pub fn heat_in_short(answered: &Answered, viewer: &Viewer) -> Vec<Block> {
    let Some(day) = answered.outcome.drawn().air_day() else { return Vec::new() };
    let shown = DayShown { day, answers: &answered.answers, viewer };
    let lead = shown.heat_lead(true);
    let note = lead.is_some().then(|| Block::Note(viewer.words().plain("air-day-if-hottest")));
    lead.into_iter().chain(note).collect()
}

struct DayShown<'a> {
    day: &'a AirDay,
    answers: &'a Answers,
    viewer: &'a Viewer,
}

impl DayShown<'_> {
    fn words(&self) -> &'static Words {
        self.viewer.words()
    }

    fn blocks(&self, answered: &Answered) -> Vec<Block> {
        let mut blocks = self.curtain();
        blocks.extend(self.against_heat());
        blocks.extend(self.before_and_after().map(Block::Table));
        blocks.push(self.heading("air-day-hours"));
        blocks.push(self.drawing());
        blocks.push(Block::Table(self.hours_table()));
        let rows = answered.outcome.figures();
        let rows = rows.map(|worked| figure_row(&answered.answers, &answered.outcome, worked, self.viewer));
        blocks.push(Block::Figures(rows.collect()));
        blocks.push(Block::Note(self.words().plain("air-not-in-it")));
        blocks
    }

    fn heading(&self, key: &'static str) -> Block {
        Block::Heading { level: 2, text: self.words().plain(key), anchor: key }
    }

    fn hour(&self, hour: u32) -> String {
        format!("{hour:02}:00")
    }

    /// So many marks as a hand would do it.
    fn let_down(&self, marks: f64) -> String {
        let is_hand = (self.day.mark_cm - HAND_CM).abs() < 1e-9;
        let way = |key: &str| format!("air-day-{}-{key}", if is_hand { "hands" } else { "marks" });
        if marks >= self.day.most_marks - 1e-9 {
            return self.words().plain("air-day-all-the-way");
        }
        let key = match marks {
            marks if marks < 0.75 => way("half"),
            marks if (marks - 1.0).abs() < 1e-9 => way("one"),
            _ => return say!(self.words(), &way("more"), marks = show::short(marks, 1)),
        };
        self.words().plain(&key)
    }

    /// The first setting large, with those that follow beside it.
    fn curtain_lead(&self) -> Option<Block> {
        let (first, later) = self.day.settings.split_first()?;
        let later: Vec<String> = later
            .iter()
            .map(|set| {
                say!(
                    self.words(),
                    "air-day-then",
                    hour = self.hour(set.hour),
                    open = self.let_down(set.marks)
                )
            })
            .collect();
        Some(Block::Lead {
            label: say!(self.words(), "air-day-curtain-at", hour = self.hour(first.hour)),
            value: self.let_down(first.marks),
            note: if later.is_empty() { self.words().plain("air-day-stays") } else { later.join(" ") },
        })
    }

    fn curtain(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("air-day-curtain")];
        let Some(lead) = self.curtain_lead() else {
            blocks.push(Block::Note(self.words().plain("air-day-nothing-opens")));
            return blocks;
        };
        blocks.push(lead);
        blocks.push(Block::Table(self.settings_table()));
        blocks.push(self.curtain_drawing());
        if self.answers.choice("house.curtain_opens") == Some("from-the-bottom") && self.is_young() {
            blocks.push(Block::Caution(Caution {
                level: Level::Care,
                title: self.words().plain("air-day-from-below"),
                items: vec![self.words().plain("air-day-from-below-1")],
            }));
        }
        let step = |key: String| (self.words().plain(&key), String::new());
        let items = (1..=CURTAIN_STEPS).map(|at| step(format!("air-day-step-{at}")));
        let young = self.is_young().then(|| step("air-day-step-young".to_owned()));
        let items = items.chain(young).collect();
        blocks.push(Block::Steps(Steps { ordered: false, ticks: false, items }));
        blocks
    }

    fn is_young(&self) -> bool {
        self.day.age_d < NO_DRAUGHT_UNTIL_D
    }

    fn settings_table(&self) -> Table {
        let run = self.day.likely();
        let until = |at: usize| self.day.settings.get(at + 1).map_or(BEGINS_H, |next| next.hour);
        let row = |(at, set): (usize, &Setting)| {
            let hours: Vec<&AirHour> = between(run, set.hour, until(at));
            let ends = |of: fn(&AirHour) -> f64| {
                let (low, high) =
                    hours.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), hour| {
                        (low.min(of(hour)), high.max(of(hour)))
                    });
                (low, high)
            };
            let (coldest, warmest) = ends(|hour| hour.house.inside_c);
            let bare = |celsius: f64| show::bare(celsius, Unit::Celsius, 0, self.viewer);
            vec![
                self.hour(set.hour),
                self.let_down(set.marks),
                show::bare(set.marks * self.day.mark_cm, Unit::Centimetre, 0, self.viewer),
                say!(self.words(), "air-day-from-to", low = bare(coldest), high = bare(warmest)),
            ]
        };
        Table {
            caption: self.words().plain("air-day-settings-caption"),
            columns: vec![
                (self.words().plain("air-column-hour"), Align::Start),
                (self.words().plain("air-day-column-open"), Align::Start),
                (self.unit_title("air-day-column-size", Unit::Centimetre), Align::End),
                (self.unit_title("air-day-column-then", Unit::Celsius), Align::End),
            ],
            rows: self.day.settings.iter().enumerate().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    fn unit_title(&self, key: &str, unit: Unit) -> String {
        say!(self.words(), key, unit = show::viewers_unit_label(unit, self.viewer))
    }

    /// What is wanted of the curtain and where it is set, by the hour.
    fn curtain_drawing(&self) -> Block {
        let words = self.words();
        let marks = |run: &DayRun| {
            let mark_m2 = self.day.mark_m2;
            by_hour(run, |hour| hour.house.opening_m2 / mark_m2)
        };
        let asked = marks(self.day.changed.as_ref().unwrap_or(&self.day.as_it_is));
        let held = self.day.marks.iter().enumerate().map(|(hour, marks)| [hour as f64, *marks]).collect();
        let line = |key: &str, stroke: Stroke, stepped: bool, points: Vec<[f64; 2]>| Series {
            label: words.plain(key),
            stroke,
            stepped,
            points,
        };
        let chart = Chart {
            series: vec![
                line("air-day-set", Stroke::Solid, true, held),
                line("air-day-asked", Stroke::Dotted, false, asked),
            ],
            from_zero: true,
            ..Chart::default()
        };
        let moves = self.day.settings.iter().map(|set| {
            say!(words, "air-day-then", hour = self.hour(set.hour), open = self.let_down(set.marks))
        });
        let alternative = moves.collect::<Vec<_>>().join(" ");
        let is_hand = (self.day.mark_cm - HAND_CM).abs() < 1e-9;
        let up = words.plain(if is_hand { "air-day-axis-hands" } else { "air-day-axis-marks" });
        let drawn =
            ChartWords { up, across: words.plain("air-axis-hours"), alternative: alternative.clone() };
        Block::Drawing(Drawing {
            name: "curtain",
            svg: chart.draw_by_hour(&drawn),
            caption: words.plain("air-day-curtain-caption"),
            alternative,
            data: self.settings_table(),
            width_percent: 70,
        })
    }

    /// How hard the day is on them, and how much of the feed they leave.
    fn heat_lead(&self, only_if_hot: bool) -> Option<Block> {
        let run = self.day.likely();
        let (alert, danger) = (run.hours_at_least(Band::Alert), run.hours_at_least(Band::Danger));
        let hours = |hours: f64| show::quantity(hours, Unit::Hour, 0, self.viewer);
        // From midnight on, since heat is of the day.
        let mut hot: Vec<u32> =
            run.hours.iter().filter(|hour| hour.heat >= Band::Alert).map(|hour| hour.house.hour).collect();
        hot.sort_unstable();
        let (Some(first), Some(last)) = (hot.first(), hot.last()) else {
            return (!only_if_hot).then(|| Block::Note(self.words().plain("air-day-not-hot")));
        };
        let mut note = vec![say!(
            self.words(),
            "air-day-hot-from",
            from = self.hour(*first),
            to = self.hour((last + 1) % 24)
        )];
        if danger > 0.0 {
            note.push(say!(self.words(), "air-day-dangerous", hours = hours(danger)));
        }
        if let Some((low, high)) = run.feed_left_percent().filter(|(_, high)| *high >= 1.0) {
            let percent = |share: f64| show::bare(share, Unit::Percent, 0, self.viewer);
            let high = show::quantity(high, Unit::Percent, 0, self.viewer);
            note.push(say!(self.words(), "air-day-feed-left", low = percent(low), high = high));
        }
        Some(Block::Lead {
            label: self.words().plain("air-day-hot"),
            value: hours(alert),
            note: note.join(" "),
        })
    }

    /// The hot hours and what helps; a note where there are none.
    fn against_heat(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("air-day-heat")];
        blocks.extend(self.heat_lead(false));
        let hard = |run: &DayRun| run.hours_at_least(Band::Alert) > 0.0;
        if !hard(self.day.likely()) && !hard(&self.day.as_it_is) {
            return blocks;
        }
        let mut rows = vec![self.help_row(self.words().plain("air-day-as-it-is"), &self.day.as_it_is)];
        rows.extend(self.day.helps.iter().map(|(help, run)| {
            self.help_row(self.words().plain(&format!("air-day-help-{}", help.name())), run)
        }));
        blocks.push(Block::Table(Table {
            caption: self.words().plain("air-day-helps-caption"),
            columns: self.day_columns("air-day-column-help"),
            rows,
            emphasis: vec![0],
            explained_by: Vec::new(),
        }));
        blocks.push(Block::Note(self.words().plain("air-day-helps-note")));
        let items = (1..=HEAT_STEPS).map(|at| self.words().plain(&format!("air-day-hot-{at}"))).collect();
        let title = self.words().plain("air-day-hot-title");
        blocks.push(Block::Caution(Caution { level: Level::Danger, title, items }));
        blocks
    }

    fn day_columns(&self, first: &str) -> Vec<(String, Align)> {
        vec![
            (self.words().plain(first), Align::Start),
            (self.unit_title("air-day-column-warmest", Unit::Celsius), Align::End),
            (self.unit_title("air-day-column-index", Unit::Celsius), Align::End),
            (self.unit_title("air-day-column-danger", Unit::Hour), Align::End),
        ]
    }

    fn help_row(&self, name: String, run: &DayRun) -> Vec<String> {
        vec![
            name,
            show::bare(run.warmest_c(), Unit::Celsius, 1, self.viewer),
            show::bare(run.heat_index_c(), Unit::Celsius, 1, self.viewer),
            show::bare(run.hours_at_least(Band::Danger), Unit::Hour, 0, self.viewer),
        ]
    }

    /// What was asked to be changed, beside the house as it is and by the settings.
    fn before_and_after(&self) -> Option<Table> {
        let changed = self.day.changed.as_ref()?;
        let mut rows = vec![
            self.help_row(self.words().plain("air-day-as-it-is"), &self.day.as_it_is),
            self.help_row(self.words().plain("air-day-as-asked"), changed),
        ];
        let by_hand = self.day.by_hand.as_ref();
        rows.extend(by_hand.map(|run| self.help_row(self.words().plain("air-day-by-settings"), run)));
        Some(Table {
            caption: self.words().plain("air-day-changed-caption"),
            columns: self.day_columns("air-day-column-house"),
            rows,
            emphasis: vec![1],
            explained_by: Vec::new(),
        })
    }

    fn drawing(&self) -> Block {
        let (words, run) = (self.words(), self.day.likely());
        let celsius = |degrees: f64| show::quantity(degrees, Unit::Celsius, 1, self.viewer);
        let alternative = say!(
            words,
            "air-day-drawn",
            low = celsius(run.coldest_c()),
            high = celsius(run.warmest_c()),
            outside_low = celsius(self.day.weather.coldest_c),
            outside_high = celsius(self.day.weather.warmest_c),
        );
        let mut hours: Vec<&AirHour> = run.hours.iter().collect();
        hours.sort_by_key(|hour| hour.house.hour);
        Block::Drawing(Drawing {
            name: "air-day",
            svg: warmth(&hours, &alternative, self.viewer),
            caption: words.plain("air-day-caption"),
            alternative,
            data: self.hours_table(),
            width_percent: 70,
        })
    }

    /// Every second hour.
    fn hours_table(&self) -> Table {
        let bare = |value: f64, unit: Unit| show::bare(value, unit, 0, self.viewer);
        let row = |one: &AirHour| {
            vec![
                self.hour(one.house.hour),
                bare(one.outside.outside_c, Unit::Celsius),
                bare(one.house.inside_c, Unit::Celsius),
                bare(100.0 * one.house.humidity, Unit::Percent),
                bare(one.house.co2_ppm, Unit::PartsPerMillion),
                self.words().plain(&format!("air-day-heat-{}", one.heat.name())),
            ]
        };
        Table {
            caption: self.words().plain("air-day-table-caption"),
            columns: vec![
                (self.words().plain("air-column-hour"), Align::Start),
                (self.unit_title("air-day-column-outside", Unit::Celsius), Align::End),
                (self.unit_title("air-column-inside", Unit::Celsius), Align::End),
                (self.unit_title("air-column-humidity", Unit::Percent), Align::End),
                (self.unit_title("air-day-column-stale", Unit::PartsPerMillion), Align::End),
                (self.words().plain("air-day-column-heat"), Align::Start),
            ],
            rows: self.day.likely().hours.iter().step_by(2).map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }
}

/// The hours of a run from one hour of the day to another.
fn between(run: &DayRun, from: u32, until: u32) -> Vec<&AirHour> {
    let length = (until + 24 - from) % 24;
    let length = if length == 0 { 24 } else { length };
    run.hours.iter().filter(|hour| (hour.house.hour + 24 - from) % 24 < length).collect()
}

/// A value by the hour of the day, from midnight on.
fn by_hour(run: &DayRun, of: impl Fn(&AirHour) -> f64) -> Vec<[f64; 2]> {
    let mut points: Vec<[f64; 2]> =
        run.hours.iter().map(|hour| [f64::from(hour.house.hour), of(hour)]).collect();
    points.sort_by(|one, other| one[0].total_cmp(&other[0]));
    points
}

/// The inputs of the form, filled with what was typed or what the plan says.
pub fn inputs(answered: &Answered, viewer: &Viewer) -> Vec<crate::form::Input> {
    crate::form::inputs(&air_day::form(), &answered.raws, &answered.checked.problems, viewer)
}
