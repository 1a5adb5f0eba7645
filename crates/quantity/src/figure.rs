//! A figure: one number or day of the answer, under a stable name, with how sure it is.

use crate::day::CivilDay;

/// What a figure says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FigureValue {
    /// A number in the figure's unit.
    Number(f64),
    /// A civil day.
    Day(CivilDay),
}

impl FigureValue {
    /// As a number; a day counts as days since 1970-01-01.
    pub fn number(self) -> f64 {
        match self {
            FigureValue::Number(number) => number,
            FigureValue::Day(day) => f64::from(day.number()),
        }
    }
}

/// What a likely range means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BandKind {
    /// A confidence interval that covers the truth in 95 samples of 100.
    Confidence95,
    /// Half of the futures lie inside.
    Prediction50,
    /// Nine futures of ten lie inside.
    Prediction90,
    /// Sources disagree; this is from the lowest to the highest of them.
    RangeOfSources,
    /// Choices of which none is worse than the best by more than is worth a thought.
    AsGood,
}

impl BandKind {
    /// The stable name used in JSON and message keys.
    pub fn name(self) -> &'static str {
        match self {
            BandKind::Confidence95 => "confidence-95",
            BandKind::Prediction50 => "prediction-50",
            BandKind::Prediction90 => "prediction-90",
            BandKind::RangeOfSources => "range-of-sources",
            BandKind::AsGood => "as-good",
        }
    }
}

/// The likely range around a figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// What the range means.
    pub kind: BandKind,
}

/// One number or day of the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// The stable dotted name; its unit, decimals and rules are declared once in `advice`.
    pub id: &'static str,
    /// What it says.
    pub value: FigureValue,
    /// How sure it is, where that is known.
    pub band: Option<Band>,
}

/// A figure by day, age, ring or whatever the index counts.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    /// The stable dotted name.
    pub id: &'static str,
    /// The index, ascending.
    pub index: Vec<f64>,
    /// One value an index.
    pub values: Vec<f64>,
    /// Lower ends, as long as `values`, or empty.
    pub low: Vec<f64>,
    /// Upper ends, as long as `values`, or empty.
    pub high: Vec<f64>,
    /// What `low` and `high` mean.
    pub kind: Option<BandKind>,
}
