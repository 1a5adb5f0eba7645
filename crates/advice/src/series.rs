//! Figures by day of age: declared once like single figures, shown as a table or a line.

use quantity::{Answers, Series, Status, Unit};

use crate::outcome::Outcome;

/// A figure by day (or by whatever its index counts), declared once under a name that is never reused.
pub struct SeriesSpec {
    /// The stable dotted name.
    pub id: &'static str,
    /// The unit of its values, fixed, never by locale.
    pub unit: Unit,
    /// The unit of its index.
    pub index_unit: Unit,
    /// The figures and fields it is made from, for its working.
    pub made_from: &'static [&'static str],
    /// The bibliography key of the procedure.
    pub source: &'static str,
    /// How far the procedure can be trusted.
    pub status: Status,
    /// The procedure. `None` while what it needs is not known.
    pub work_out: fn(&Answers, &Outcome) -> Option<Series>,
}
