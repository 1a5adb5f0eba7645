//! Families of figures: one file a phenomenon, declaring its figures, its own input fields and its quick sums.

use std::collections::HashMap;
use std::sync::OnceLock;

use quantity::{Answers, Asked, Field};

use crate::procedure::Simulation;
use crate::rule::FigureSpec;
use crate::series::SeriesSpec;
use crate::sums::Sum;
use crate::verify::Shape;

mod air;
pub mod air_day;
pub(crate) mod burning;
mod buying;
mod catching;
pub(crate) mod chicks;
pub(crate) mod closing;
pub(crate) mod course;
mod disinfectant;
mod drying;
pub(crate) mod equipment;
pub(crate) mod feed;
mod flock;
pub(crate) mod fuel;
pub(crate) mod growing;
pub(crate) mod growth;
pub(crate) mod guard;
pub(crate) mod heat;
pub(crate) mod heat_index;
pub(crate) mod hours_of_air;
mod hours_of_heat;
mod house_balance;
mod light;
mod litter;
pub(crate) mod medicine;
pub(crate) mod moist_air;
pub(crate) mod money;
pub mod outlook;
pub(crate) mod performance;
pub(crate) mod ring_heat;
pub mod risk;
pub(crate) mod second_brooder;
pub mod selling;
pub(crate) mod shell;
pub(crate) mod space;
mod statistics;
pub(crate) mod store;
pub(crate) mod turnaround;
mod usual_weather;
pub(crate) mod vaccine;
pub(crate) mod watch;
mod water;
pub(crate) mod weighing;
mod weighing_sexes;
pub(crate) mod weighing_spots;

/// What one phenomenon brings.
pub struct Family {
    /// Its figures, in the order in which people read them.
    pub figures: &'static [FigureSpec],
    /// Input fields that only its quick sums ask for; those a plan shares stand in `quantity::fields`.
    pub fields: &'static [Field],
    /// Its quick sums.
    pub sums: &'static [Sum],
    /// Its figures by day.
    pub series: &'static [SeriesSpec],
    /// The tables of check values that its models can work out.
    pub shapes: &'static [Shape],
}

/// All families, in the order in which people read them.
pub static FAMILIES: &[&Family] = &[
    &space::FAMILY,
    &flock::FAMILY,
    &growth::FAMILY,
    &equipment::FAMILY,
    &guard::FAMILY,
    &shell::FAMILY,
    &heat::FAMILY,
    &hours_of_heat::FAMILY,
    &fuel::FAMILY,
    &second_brooder::FAMILY,
    &ring_heat::FAMILY,
    &burning::FAMILY,
    &disinfectant::FAMILY,
    &litter::FAMILY,
    &drying::FAMILY,
    &turnaround::FAMILY,
    &feed::FAMILY,
    &water::FAMILY,
    &light::FAMILY,
    &air::FAMILY,
    &air_day::FAMILY,
    &moist_air::FAMILY,
    &heat_index::FAMILY,
    &money::FAMILY,
    &vaccine::FAMILY,
    &medicine::LIQUIDS,
    &medicine::POWDERS,
    &medicine::FAMILY,
    &weighing::FAMILY,
    &weighing_sexes::FAMILY,
    &weighing_spots::FAMILY,
    &growing::FAMILY,
    &course::FAMILY,
    &watch::FAMILY,
    &chicks::FAMILY,
    &store::FAMILY,
    &buying::FAMILY,
    &closing::FAMILY,
    &performance::FAMILY,
    &statistics::FAMILY,
    &outlook::FAMILY,
    &selling::FAMILY,
    &catching::FAMILY,
];

/// All simulations: procedures that give several figures at once.
pub static SIMULATIONS: &[&Simulation] = &[
    &risk::SIMULATION,
    &buying::SIMULATION,
    &outlook::SIMULATION,
    &selling::SIMULATION,
    &weighing_spots::SIMULATION,
    &hours_of_air::SIMULATION,
    &air_day::SIMULATION,
    &usual_weather::SIMULATION,
];

/// Simulations that give figures of others where they apply. Figures with rules of their own keep those where it has no answer.
pub static INSTEAD: &[&Simulation] = &[&selling::RISK, &hours_of_heat::BY_THE_HOUR];

/// Every figure there is.
pub fn figures() -> impl Iterator<Item = &'static FigureSpec> {
    let simulated = SIMULATIONS.iter().flat_map(|simulation| simulation.figures);
    FAMILIES.iter().flat_map(|family| family.figures).chain(simulated)
}

/// The simulation that gives a figure by these answers; `None` for figures that a rule gives.
pub fn simulation_of(id: &str, answers: &Answers) -> Option<&'static Simulation> {
    let gives = |simulation: &&Simulation| simulation.figures.iter().any(|spec| spec.id == id);
    let all = INSTEAD.iter().chain(SIMULATIONS).copied();
    all.filter(gives).find(|simulation| (simulation.applies)(answers))
}

/// Whether a figure comes out of a simulation.
pub fn is_simulated(id: &str) -> bool {
    SIMULATIONS.iter().any(|simulation| simulation.figures.iter().any(|spec| spec.id == id))
}

/// Every figure by day there is.
pub fn series() -> impl Iterator<Item = &'static SeriesSpec> {
    FAMILIES.iter().flat_map(|family| family.series)
}

/// The declaration of a figure by day.
pub fn series_named(id: &str) -> Option<&'static SeriesSpec> {
    static BY_ID: OnceLock<HashMap<&'static str, &'static SeriesSpec>> = OnceLock::new();
    BY_ID.get_or_init(|| series().map(|spec| (spec.id, spec)).collect()).get(id).copied()
}

/// Every quick sum there is.
pub fn sums() -> impl Iterator<Item = &'static Sum> {
    FAMILIES.iter().flat_map(|family| family.sums)
}

/// Every shape of check table there is.
pub fn shapes() -> impl Iterator<Item = &'static Shape> {
    FAMILIES.iter().flat_map(|family| family.shapes)
}

/// Every input field there is: the shared tables, then those of the families' own.
pub fn fields() -> impl Iterator<Item = &'static Field> {
    let shared = quantity::fields::FIELDS.iter().chain(quantity::records::RECORD_FIELDS);
    shared.chain(FAMILIES.iter().flat_map(|family| family.fields))
}

/// The declaration of a figure.
pub fn figure(id: &str) -> Option<&'static FigureSpec> {
    static BY_ID: OnceLock<HashMap<&'static str, &'static FigureSpec>> = OnceLock::new();
    BY_ID.get_or_init(|| figures().map(|spec| (spec.id, spec)).collect()).get(id).copied()
}

/// The input field of a key.
pub fn field(key: &str) -> Option<&'static Field> {
    static BY_KEY: OnceLock<HashMap<&'static str, &'static Field>> = OnceLock::new();
    BY_KEY.get_or_init(|| fields().map(|field| (field.key, field)).collect()).get(key).copied()
}

/// The sections of a plan, in the order a grower would tell them.
pub const PLAN_SECTIONS: &[&str] = &[
    "farm",
    "house",
    "batch",
    "sale",
    "weather",
    "space",
    "equipment",
    "guard",
    "brooding",
    "disinfectant",
    "litter",
    "feed",
    "water",
    "costs",
    "cash",
    "prices",
    "settings",
];

/// What a plan file or the plan form asks, in the order of the table.
pub fn plan_fields() -> Vec<Asked> {
    quantity::fields::of_sections(PLAN_SECTIONS)
}
