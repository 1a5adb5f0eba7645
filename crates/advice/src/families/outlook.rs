//! What is likely from here.

mod shapes;

use super::Family;

/// The family.
pub static FAMILY: Family =
    Family { figures: &[], fields: &[], sums: &[], series: &[], shapes: shapes::SHAPES };
