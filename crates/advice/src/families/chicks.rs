//! Checks on chicks under the brooder: how many have eaten and drunk, and how warm they are.

use quantity::fields::{field as asked, number};
use quantity::{Field, Need, Status, Unit};

use super::Family;
use super::growing::by_day;
use crate::rule::{FigureSpec, Over, exact, field, of_known_days};
use crate::series::{SeriesSpec, Until, Way, recorded};

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: FIELDS, sums: &[], series: SERIES, shapes: &[] };

/// Mean vent temperature of the checks of a day.
pub(crate) const VENT: &str = "chicks.vent_c";

/// A usual check of crops: its hour after the chicks came, chicks felt, chicks full, and the figure it makes.
pub(crate) struct CropCheck {
    /// Hours after the chicks came.
    pub(crate) hours: f64,
    /// The field of chicks felt.
    pub(crate) felt: &'static str,
    /// The field of those with a full crop.
    pub(crate) full: &'static str,
    /// The figure.
    pub(crate) figure: &'static str,
}

macro_rules! crop_checks {
    ($($hours:literal),*) => {
        /// The usual checks of crops, the first first.
        pub(crate) static CROPS: &[CropCheck] = &[$(CropCheck {
            hours: $hours as f64,
            felt: concat!("chicks.crop_", $hours, "h_felt"),
            full: concat!("chicks.crop_", $hours, "h_full"),
            figure: concat!("chicks.crop_", $hours, "h"),
        }),*];

        static FIELDS: &[Field] = &[
            by_day(VENT, Unit::Celsius),
            $(
                asked(
                    concat!("chicks.crop_", $hours, "h_felt"),
                    number(Unit::Chicks, 1.0, 2_000.0),
                    Need::Optional,
                ),
                asked(
                    concat!("chicks.crop_", $hours, "h_full"),
                    number(Unit::Chicks, 0.0, 2_000.0),
                    Need::Optional,
                ),
            )*
        ];

        static FIGURES: &[FigureSpec] = &[
            $(FigureSpec {
                id: concat!("chicks.crop_", $hours, "h"),
                unit: Unit::Percent,
                decimals: 0,
                rules: &[exact(
                    concat!("crops-full-", $hours),
                    "100 * k / n",
                    &[
                        field("k", concat!("chicks.crop_", $hours, "h_full")),
                        field("n", concat!("chicks.crop_", $hours, "h_felt")),
                    ],
                    |x| Some(100.0 * x[0] / x[1]),
                )
                .from("wilson-1927", Status::FromMemory)
                .confident(share_ends)],
            },)*
            FigureSpec {
                id: "chicks.vent",
                unit: Unit::Celsius,
                decimals: 1,
                rules: &[exact(
                    "vent-last",
                    "v",
                    &[of_known_days("v", Over::Last, "chicks.vent_by_day")],
                    |x| Some(x[0]),
                )],
            },
        ];
    };
}

crop_checks!(2, 4, 8, 12, 24, 48);

static SERIES: &[SeriesSpec] = &[SeriesSpec {
    id: "chicks.vent_by_day",
    unit: Unit::Celsius,
    decimals: 1,
    first_day: 0,
    until: Until::Today,
    way: Way::Rules(&[
        exact("vent-written", "n", &[recorded("n", VENT)], |x| Some(x[0])).from("grower", Status::Told)
    ]),
}];

/// What so many chicks felt say about all of them.
fn share_ends(x: &[f64]) -> Option<(f64, f64)> {
    let (low, high) = model::weighing::share_interval(x[0], x[1], 0.95)?;
    Some((100.0 * low, 100.0 * high))
}
