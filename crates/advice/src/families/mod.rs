//! Families of figures: one file a phenomenon, declaring its figures, its own input fields and its quick sums.

use quantity::{Asked, Field};

use crate::rule::FigureSpec;
use crate::series::SeriesSpec;
use crate::sums::Sum;
use crate::verify::Shape;

mod disinfectant;
pub(crate) mod guard;
mod light;
mod litter;
pub(crate) mod space;
pub(crate) mod turnaround;

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
    &guard::FAMILY,
    &disinfectant::FAMILY,
    &litter::FAMILY,
    &turnaround::FAMILY,
    &light::FAMILY,
];

/// Every figure there is.
pub fn figures() -> impl Iterator<Item = &'static FigureSpec> {
    FAMILIES.iter().flat_map(|family| family.figures)
}

/// Every figure by day there is.
pub fn series() -> impl Iterator<Item = &'static SeriesSpec> {
    FAMILIES.iter().flat_map(|family| family.series)
}

/// Every quick sum there is.
pub fn sums() -> impl Iterator<Item = &'static Sum> {
    FAMILIES.iter().flat_map(|family| family.sums)
}

/// Every shape of check table there is.
pub fn shapes() -> impl Iterator<Item = &'static Shape> {
    FAMILIES.iter().flat_map(|family| family.shapes)
}

/// Every input field there is: the shared table, then those of the families' own.
pub fn fields() -> impl Iterator<Item = &'static Field> {
    quantity::fields::FIELDS.iter().chain(FAMILIES.iter().flat_map(|family| family.fields))
}

/// The declaration of a figure.
pub fn figure(id: &str) -> Option<&'static FigureSpec> {
    figures().find(|spec| spec.id == id)
}

/// The input field of a key.
pub fn field(key: &str) -> Option<&'static Field> {
    fields().find(|field| field.key == key)
}

/// The sections of a plan, in the order a grower would tell them.
pub const PLAN_SECTIONS: &[&str] = &[
    "farm",
    "house",
    "batch",
    "space",
    "guard",
    "brooding",
    "disinfectant",
    "litter",
    "feed",
    "sale",
    "prices",
    "settings",
];

/// What a plan file or the plan form asks, in the order of the table.
pub fn plan_fields() -> Vec<Asked> {
    quantity::fields::of_sections(PLAN_SECTIONS)
}
