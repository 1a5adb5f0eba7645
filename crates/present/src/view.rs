//! What the program sends as JSON: view types, fixed by name and unit, never by language or locale.

use std::collections::BTreeMap;

use advice::outcome::{Outcome, Worked};
use advice::plan::{Plan, Standing};
use advice::procedure::By;
use advice::sums::SumResult;
use advice::tasks::Task;
use advice::working::working;
use quantity::{DayOfAge, FigureValue, Series, Unit};
use schemars::JsonSchema;
use serde::Serialize;

use crate::document::FindingView;
use crate::finding;
use crate::plan::Shown;
use crate::viewer::Viewer;

/// A number or a day.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum ValueView {
    /// A number in the figure's unit.
    Number(f64),
    /// A day, YYYY-MM-DD.
    Day(String),
}

/// A figure.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FigureView {
    /// What it says.
    pub value: ValueView,
    /// Its unit.
    pub unit: &'static str,
    /// The lower end of its likely range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// The upper end of its likely range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
    /// What the range means.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub band: Option<&'static str>,
}

/// A figure by day, or by whatever its index counts.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SeriesView {
    /// The unit of the values.
    pub unit: &'static str,
    /// The unit of the index.
    pub index_unit: &'static str,
    /// The index, ascending.
    pub index: Vec<f64>,
    /// One value an index.
    pub values: Vec<f64>,
    /// The lower ends of the likely range.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub low: Vec<f64>,
    /// The upper ends of the likely range.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub high: Vec<f64>,
    /// What the range means.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub band: Option<&'static str>,
}

/// A finding.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FindingJson {
    /// Its stable name.
    pub name: &'static str,
    /// note, look or problem.
    pub weight: &'static str,
    /// What it says, in the viewer's language.
    pub text: String,
    /// Ways out, in the viewer's language.
    pub ways_out: Vec<String>,
    /// The key to change.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub key: Option<&'static str>,
}

/// A count of rings and what it takes.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct LayoutJson {
    /// Rings.
    pub rings: f64,
    /// Chicks in the fullest ring, which is what its brooder must keep warm.
    pub chicks_in_ring: f64,
    /// Strips in a ring.
    pub strips_per_ring: f64,
    /// Sheets in all.
    pub sheets: f64,
    /// Across a ring, m.
    pub diameter_m: f64,
    /// Chicks a square metre of ring.
    pub true_density_per_m2: f64,
}

/// A step of widening.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WideningJson {
    /// First day of age; the day of placement is day 0.
    pub from_age_d: i32,
    /// Rings joined into one; absent when the guards are gone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rings_joined: Option<f64>,
    /// Overlap at each join, m; absent when the guards are gone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub overlap_m: Option<f64>,
    /// Chicks a square metre of ring, or of the whole floor.
    pub chicks_per_m2: f64,
}

/// Something to do on a day.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TaskJson {
    /// Its stable name; several tasks can have one, such as the weighings.
    pub name: &'static str,
    /// Its (first) day, YYYY-MM-DD.
    pub date: String,
    /// Its last day, where it goes on for several.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<String>,
    /// That (first) day as day of age; the day of placement is day 0.
    pub age_d: i32,
    /// What to do, in the viewer's language.
    pub title: String,
    /// Why, in the viewer's language.
    pub why: String,
}

/// A usual value taken because nothing was said.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AssumedJson {
    /// The key.
    pub key: &'static str,
    /// How the value is backed.
    pub status: &'static str,
}

/// A working.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WorkingJson {
    /// The rule's name.
    pub rule: &'static str,
    /// The formula as the project writes it; absent for a procedure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub formula: Option<&'static str>,
    /// Symbol, value and unit of what goes in.
    pub inputs: Vec<WorkingInputJson>,
    /// The bibliography key.
    pub source: &'static str,
    /// How far the rule can be trusted.
    pub status: &'static str,
    /// What a procedure's chance hung on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seed: Option<u64>,
    /// How many futures a procedure drew.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub count: Option<u64>,
    /// How far a procedure's answer may be off by its own doing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub accuracy: Option<AccuracyJson>,
}

/// How far a procedure's answer may be off by its own doing.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AccuracyJson {
    /// standard-error, residual or bound.
    pub kind: &'static str,
    /// In the figure's unit.
    pub size: f64,
}

/// Something bought for the batch.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PurchaseJson {
    /// What.
    pub what: &'static str,
    /// Day of age it is paid on; negative before placement.
    pub age_d: i32,
    /// The date, YYYY-MM-DD.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// How much; absent for a lump sum.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quantity: Option<f64>,
    /// The unit of the quantity.
    pub unit: &'static str,
    /// What each bag of feed holds, kg, where it is to be had in several sizes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bag_kg: Option<f64>,
    /// What it costs; absent while its price is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
}

/// One thing that goes into a working.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WorkingInputJson {
    /// Its symbol.
    pub symbol: &'static str,
    /// Its value; of a list, how many numbers it has.
    pub value: f64,
    /// The numbers of a list.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub list: Vec<f64>,
    /// Its unit.
    pub unit: &'static str,
}

/// One day of a batch, as planned. What is not known is left out.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct DayJson {
    /// Day of age; the day of placement is day 0.
    pub age_d: i32,
    /// The date, YYYY-MM-DD.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// Target weight of one bird, g.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub body_weight_g: Option<f64>,
    /// Feed eaten by one bird on that day, g.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub feed_g_per_bird: Option<f64>,
    /// Feed eaten by all on that day, kg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub feed_kg: Option<f64>,
    /// Water drunk by all on that day, L.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water_l: Option<f64>,
    /// Air temperature wanted at the height of the chicks, C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<f64>,
    /// Hours of light.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub light_h: Option<f64>,
    /// Birds expected alive, before any are sold that day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub birds_alive: Option<f64>,
    /// Live weight on the floor the birds can use, kg/m2.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub density_kg_m2: Option<f64>,
}

/// A delivery of feed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct DeliveryJson {
    /// starter, grower, finisher or last.
    pub phase: &'static str,
    /// Day of age it comes on; negative before placement.
    pub age_d: i32,
    /// The date, YYYY-MM-DD.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// Bags.
    pub bags: f64,
    /// What a bag holds, kg, where feed is to be had in several sizes; else it is the plan's own bag.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bag_kg: Option<f64>,
    /// First day of age it is eaten.
    pub eaten_from_age_d: i32,
    /// Last day of age it is eaten.
    pub eaten_until_age_d: i32,
}

/// A plan.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PlanView {
    /// Figures by name.
    pub figures: BTreeMap<&'static str, FigureView>,
    /// The currency of amounts in the unit "money", by its ISO 4217 code; absent while it is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
    /// What the plan has to say about itself, the weightiest first.
    pub findings: Vec<FindingJson>,
    /// Ring counts side by side.
    pub layouts: Vec<LayoutJson>,
    /// How the rings widen.
    pub widening: Vec<WideningJson>,
    /// The batch by day of age.
    pub days: Vec<DayJson>,
    /// Feed by delivery, in the order in which it is eaten.
    pub deliveries: Vec<DeliveryJson>,
    /// What is bought, by the day it is paid.
    pub purchases: Vec<PurchaseJson>,
    /// What is done on which day, by day and then by order of work.
    pub tasks: Vec<TaskJson>,
    /// Figures by day, by name.
    pub series: BTreeMap<&'static str, SeriesView>,
    /// Usual values taken.
    pub assumed: Vec<AssumedJson>,
    /// Workings by figure, where asked for.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub workings: BTreeMap<&'static str, WorkingJson>,
    /// The version of the rules that gave these figures.
    pub rules_version: u32,
}

/// The figures of a quick sum.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SumView {
    /// Figures by name.
    pub figures: BTreeMap<&'static str, FigureView>,
    /// What the answer has to say about itself, the weightiest first.
    pub findings: Vec<FindingJson>,
    /// Workings by figure, where asked for.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub workings: BTreeMap<&'static str, WorkingJson>,
}

/// The rows of a table of check values, worked out.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct VerifyView {
    /// A row a row, computed columns filled in.
    pub rows: Vec<serde_json::Map<String, serde_json::Value>>,
}

/// A figure as JSON.
pub(crate) fn figure(worked: &Worked) -> FigureView {
    let value = match worked.figure.value {
        FigureValue::Number(number) => ValueView::Number(number),
        FigureValue::Day(day) => ValueView::Day(day.to_string()),
    };
    let band = worked.figure.band;
    FigureView {
        value,
        unit: worked.spec.unit.name(),
        low: band.map(|band| band.low),
        high: band.map(|band| band.high),
        band: band.map(|band| band.kind.name()),
    }
}

/// Amounts of money are left out for a viewer who does not see them.
fn figures(outcome: &Outcome, viewer: &Viewer) -> BTreeMap<&'static str, FigureView> {
    let seen = |worked: &&Worked| viewer.money_shown || !worked.spec.unit.is_money();
    outcome.figures().filter(seen).map(|worked| (worked.figure.id, figure(worked))).collect()
}

/// Some of the figures, of those that are known.
pub(crate) fn chosen(
    outcome: &Outcome,
    ids: impl Iterator<Item = &'static str>,
    viewer: &Viewer,
) -> BTreeMap<&'static str, FigureView> {
    let mut all = figures(outcome, viewer);
    ids.filter_map(|id| all.remove_entry(id)).collect()
}

fn workings(
    answers: &quantity::Answers,
    outcome: &Outcome,
    viewer: &Viewer,
) -> BTreeMap<&'static str, WorkingJson> {
    let view = |worked: &Worked| {
        let working = working(answers, outcome, worked.figure.id)?;
        let money = working.inputs.iter().any(|input| input.resolved.unit.is_money());
        if money && !viewer.money_shown {
            return None;
        }
        let inputs = working.inputs.iter().map(|input| WorkingInputJson {
            symbol: input.symbol,
            value: input.resolved.value,
            list: input.list.clone(),
            unit: input.resolved.unit.name(),
        });
        let mut json = WorkingJson {
            rule: worked.by.name(),
            formula: None,
            inputs: inputs.collect(),
            source: worked.by.source(),
            status: worked.by.status().name(),
            seed: None,
            count: None,
            accuracy: None,
        };
        match &worked.by {
            By::Rule(rule) => json.formula = Some(rule.formula),
            By::Procedure(run) => {
                json.seed = run.seed;
                json.count = Some(run.count);
                json.accuracy = Some(AccuracyJson { kind: run.accuracy.name(), size: run.accuracy.size() });
            }
        }
        Some((worked.figure.id, json))
    };
    outcome.figures().filter_map(view).collect()
}

pub(crate) fn series(series: &Series) -> Option<(&'static str, SeriesView)> {
    let spec = advice::families::series().find(|spec| spec.id == series.id)?;
    let view = SeriesView {
        unit: spec.unit.name(),
        index_unit: Unit::Day.name(),
        index: series.index.clone(),
        values: series.values.clone(),
        low: series.low.clone(),
        high: series.high.clone(),
        band: series.kind.map(quantity::BandKind::name),
    };
    Some((series.id, view))
}

/// The batch by day; none while the days are not known.
fn days(plan: &Plan) -> Vec<DayJson> {
    let Some(last) = plan.outcome.last_day() else { return Vec::new() };
    let day = |age_d: i32| {
        let on = |id: &str| plan.outcome.on_day(id, age_d);
        DayJson {
            age_d,
            date: date_of(plan, age_d),
            body_weight_g: on("growth.weight"),
            feed_g_per_bird: on("feed.per_bird_by_day"),
            feed_kg: on("feed.by_day"),
            water_l: on("water.by_day"),
            temperature_c: on("brooding.temperature_by_day"),
            light_h: on("light.hours_by_day"),
            birds_alive: on("batch.birds_alive"),
            density_kg_m2: on("space.density_by_day"),
        }
    };
    (0..=last).map(day).collect()
}

fn date_of(plan: &Plan, age_d: i32) -> Option<String> {
    Some(DayOfAge(age_d).date(plan.answers.day("batch.placement")?).to_string())
}

fn deliveries(plan: &Plan) -> Vec<DeliveryJson> {
    let delivery = |one: &advice::store_room::Delivery| DeliveryJson {
        phase: one.phase.name(),
        age_d: one.day,
        date: date_of(plan, one.day),
        bags: one.bags,
        bag_kg: one.size_kg,
        eaten_from_age_d: one.eaten_from,
        eaten_until_age_d: one.eaten_until,
    };
    plan.deliveries.iter().map(delivery).collect()
}

/// Purchases without their cost for a viewer who does not see amounts.
fn purchases(plan: &Plan, viewer: &Viewer) -> Vec<PurchaseJson> {
    let purchase = |one: &advice::purchases::Purchase| PurchaseJson {
        what: one.what,
        age_d: one.day,
        date: date_of(plan, one.day),
        quantity: one.quantity,
        unit: one.unit.name(),
        bag_kg: one.size_kg,
        cost: one.cost.filter(|_| viewer.money_shown),
    };
    plan.purchases.iter().map(purchase).collect()
}

fn tasks(plan: &Plan, viewer: &Viewer) -> Vec<TaskJson> {
    let shown = Shown::new(plan, viewer);
    plan.tasks.iter().map(|one| task(one, &shown)).collect()
}

/// A task as JSON.
pub(crate) fn task(task: &Task, shown: &Shown) -> TaskJson {
    let (title, why) = shown.job(task);
    let (date, until) = (task.day.to_string(), task.until.map(|day| day.to_string()));
    TaskJson { name: task.name, date, until, age_d: task.age_d, title, why }
}

/// A plan as JSON.
pub fn plan(plan: &Plan, viewer: &Viewer, with_workings: bool) -> PlanView {
    let findings = Shown::new(plan, viewer).finding_views().into_iter().map(finding_json);
    let layouts = plan.layouts.iter().map(|layout| LayoutJson {
        rings: layout.rings,
        chicks_in_ring: layout.chicks_in_ring,
        strips_per_ring: layout.strips_per_ring,
        sheets: layout.sheets,
        diameter_m: layout.diameter.in_metres(),
        true_density_per_m2: layout.true_density,
    });
    let widening = plan.widening.iter().map(|step| {
        let (rings_joined, overlap_m, chicks_per_m2) = match step.standing {
            Standing::Rings { joined, overlap, chicks_per_m2 } => {
                (Some(joined), Some(overlap.in_metres()), chicks_per_m2)
            }
            Standing::WholeHouse { chicks_per_m2 } => (None, None, chicks_per_m2),
        };
        WideningJson { from_age_d: step.from_day, rings_joined, overlap_m, chicks_per_m2 }
    });
    let usual = plan
        .answers
        .iter()
        .filter_map(|(key, given)| given.usual.map(|status| AssumedJson { key, status: status.name() }));
    PlanView {
        figures: figures(&plan.outcome, viewer),
        currency: viewer.currency.clone(),
        findings: findings.collect(),
        layouts: layouts.collect(),
        widening: widening.collect(),
        days: days(plan),
        deliveries: deliveries(plan),
        purchases: purchases(plan, viewer),
        tasks: tasks(plan, viewer),
        series: plan.series.iter().filter_map(series).collect(),
        assumed: usual.collect(),
        workings: if with_workings {
            workings(&plan.answers, &plan.outcome, viewer)
        } else {
            BTreeMap::new()
        },
        rules_version: advice::RULES_VERSION,
    }
}

/// The answer of a quick sum as JSON.
pub fn sum(result: &SumResult, viewer: &Viewer, with_workings: bool) -> SumView {
    let (answers, outcome) = (&result.checked.answers, &result.outcome);
    let findings = result.findings.iter().map(|found| finding_json(finding::view(found, outcome, viewer)));
    SumView {
        figures: figures(outcome, viewer),
        findings: findings.collect(),
        workings: if with_workings { workings(answers, outcome, viewer) } else { BTreeMap::new() },
    }
}

fn finding_json(finding: FindingView) -> FindingJson {
    FindingJson {
        name: finding.name,
        weight: finding.weight.name(),
        text: finding.text,
        ways_out: finding.ways_out,
        key: finding.field,
    }
}

/// The JSON schema of everything the program sends, and of the plan files it takes, by name.
pub fn schemas() -> BTreeMap<&'static str, serde_json::Value> {
    BTreeMap::from([
        ("closing", schemars::schema_for!(crate::closing::ClosingView).to_value()),
        ("sale", schemars::schema_for!(crate::sale::SaleView).to_value()),
        ("history", schemars::schema_for!(crate::history::HistoryView).to_value()),
        ("purchases", schemars::schema_for!(crate::buying::BuyingView).to_value()),
        ("plan", schemars::schema_for!(PlanView).to_value()),
        ("plan-file", crate::manual::plan_file_schema()),
        ("sum", schemars::schema_for!(SumView).to_value()),
        ("air", schemars::schema_for!(crate::plan::air::AirView).to_value()),
        ("air-day", schemars::schema_for!(crate::air_day::AirDayView).to_value()),
        ("air-fitted", schemars::schema_for!(crate::fitted::FittedView).to_value()),
        ("air-of-many-houses", schemars::schema_for!(crate::many_houses::ManyHousesView).to_value()),
        ("air-of-weather", schemars::schema_for!(crate::plan::weather::AirOfWeatherView).to_value()),
        ("outlook", schemars::schema_for!(crate::outlook::OutlookView).to_value()),
        ("walk", schemars::schema_for!(crate::walk::WalkView).to_value()),
        ("verify", schemars::schema_for!(VerifyView).to_value()),
    ])
}
