//! From one batch to the next: how long the house stands empty, from when, and when chicks can come again.

use quantity::{Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, exact, field, figure};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };

/// Days that emptying, washing, drying, two disinfections and airing take, one after the other, before litter comes
/// in. Our judgement, from the usual order of work: two days to empty, two to wash and dry, three to disinfect twice
/// with a day to dry in between, three to air.
pub(crate) const CLEANING_DAYS: i32 = 10;

/// The figure of the days empty, and the day from which.
pub(crate) const EMPTY_DAYS: &str = "house.empty_days";
pub(crate) const EMPTY_FROM: &str = "house.empty_from";
/// The figure of the earliest next chick day.
pub(crate) const NEXT_PLACEMENT: &str = "batch.next_placement";

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: EMPTY_DAYS,
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "house-empty-days",
            "max(d, 10 + s)",
            &[field("d", "house.downtime_d"), field("s", "litter.spread_days_before_d")],
            |x| Some(x[0].max(f64::from(CLEANING_DAYS) + x[1])),
        )
        .from("downtime-2025", Status::OurJudgement)],
    },
    FigureSpec {
        id: EMPTY_FROM,
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact(
            "house-empty-from",
            "p - e",
            &[field("p", "batch.placement"), figure("e", EMPTY_DAYS)],
            |x| Some(x[0] - x[1]),
        )],
    },
    FigureSpec {
        id: NEXT_PLACEMENT,
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact(
            "next-placement",
            "p + a + e",
            &[field("p", "batch.placement"), figure("a", "sale.last_age"), figure("e", EMPTY_DAYS)],
            |x| Some(x[0] + x[1] + x[2]),
        )],
    },
];
