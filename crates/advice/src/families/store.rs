//! What is in the store room by the book: feed that came, was given and spoiled, by phase, and how long it lasts.

use quantity::fields::{field as asked, number};
use quantity::{Field, Kind, Need, Status, Unit};

use super::Family;
use super::growing::{FEED, by_day};
use crate::rule::{FigureSpec, exact, field, figure, if_known, if_told, list};
use crate::series::{SeriesSpec, Until, Way, before, if_recorded};

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: FIELDS, sums: &[], series: SERIES, shapes: &[] };

/// What all feeds together are eaten at on each day to come.
pub(crate) const AHEAD: &str = "stock.ahead_kg";

/// Feed that came, by day; what came before the chicks counts on day 0.
pub(crate) const CAME: &str = "stock.came_by_day_kg";
/// Feed that spoiled, by day, likewise.
pub(crate) const SPOILED: &str = "stock.spoiled_by_day_kg";

/// The fields of one feed, as entries add up.
pub(crate) struct FeedFields {
    /// Feed that came, kg.
    pub(crate) came: &'static str,
    /// Bags that came.
    pub(crate) bags: &'static str,
    /// Bags opened.
    pub(crate) opened: &'static str,
    /// Feed given, kg.
    pub(crate) given: &'static str,
    /// Feed spoiled, kg.
    pub(crate) spoiled: &'static str,
    /// Weight of a bag that came last, kg.
    pub(crate) bag: &'static str,
    /// What is eaten of it on each day to come.
    pub(crate) ahead: &'static str,
}

macro_rules! fields_of {
    ($feed:literal) => {
        FeedFields {
            came: concat!("stock.", $feed, "_came_kg"),
            bags: concat!("stock.", $feed, "_bags"),
            opened: concat!("stock.", $feed, "_opened"),
            given: concat!("stock.", $feed, "_given_kg"),
            spoiled: concat!("stock.", $feed, "_spoiled_kg"),
            bag: concat!("stock.", $feed, "_bag_kg"),
            ahead: concat!("stock.", $feed, "_ahead_kg"),
        }
    };
}

/// The fields of each feed, in the order of [`book::tally::PHASES`].
pub(crate) static FEEDS: [FeedFields; 4] =
    [fields_of!("starter"), fields_of!("grower"), fields_of!("finisher"), fields_of!("last")];

/// What was not written adds nothing.
const fn kilograms(key: &'static str) -> Field {
    asked(key, number(Unit::Kilogram, 0.0, 1e6), Need::Optional)
}

const fn bags(key: &'static str) -> Field {
    asked(key, number(Unit::Pieces, 0.0, 1e5), Need::Optional)
}

const fn ahead(key: &'static str) -> Field {
    let kind = Kind::Numbers { unit: Unit::Kilogram, low: 0.0, high: 1e5, at_least: 1, at_most: 150 };
    asked(key, kind, Need::Optional)
}

macro_rules! table_of_fields {
    ($($feed:literal),*) => {
        &[
            ahead(AHEAD),
            by_day(CAME, Unit::Kilogram),
            by_day(SPOILED, Unit::Kilogram),
            $(
                kilograms(concat!("stock.", $feed, "_came_kg")),
                bags(concat!("stock.", $feed, "_bags")),
                bags(concat!("stock.", $feed, "_opened")),
                kilograms(concat!("stock.", $feed, "_given_kg")),
                kilograms(concat!("stock.", $feed, "_spoiled_kg")),
                kilograms(concat!("stock.", $feed, "_bag_kg")),
                ahead(concat!("stock.", $feed, "_ahead_kg")),
            )*
        ]
    };
}

static FIELDS: &[Field] = table_of_fields!("starter", "grower", "finisher", "last");

/// What is left of a feed, in kilograms, in bags and in days.
macro_rules! table_of_figures {
    ($($feed:literal),*) => {
        &[
            $(
                FigureSpec {
                    id: concat!("store.", $feed, "_left"),
                    unit: Unit::Kilogram,
                    decimals: 0,
                    rules: &[exact(
                        concat!("store-left-", $feed),
                        "D - G - S",
                        &[
                            field("D", concat!("stock.", $feed, "_came_kg")),
                            if_told("G", concat!("stock.", $feed, "_given_kg")),
                            if_told("S", concat!("stock.", $feed, "_spoiled_kg")),
                        ],
                        |x| Some(x[0] - x[1] - x[2]),
                    )],
                },
                FigureSpec {
                    id: concat!("store.", $feed, "_bags_left"),
                    unit: Unit::Pieces,
                    decimals: 1,
                    rules: &[exact(
                        concat!("store-bags-left-", $feed),
                        "L / b",
                        &[
                            figure("L", concat!("store.", $feed, "_left")),
                            field("b", concat!("stock.", $feed, "_bag_kg")),
                        ],
                        |x| Some(x[0] / x[1]),
                    )],
                },
                FigureSpec {
                    id: concat!("store.", $feed, "_lasts"),
                    unit: Unit::Day,
                    decimals: 1,
                    rules: &[exact(
                        concat!("store-lasts-", $feed),
                        "lasts(w, L)",
                        &[
                            figure("L", concat!("store.", $feed, "_left")),
                            list("w", concat!("stock.", $feed, "_ahead_kg")),
                        ],
                        lasting,
                    )
                    .from("adopted-plan", Status::Derived)],
                },
            )*
            FigureSpec {
                id: "store.feed_left",
                unit: Unit::Kilogram,
                decimals: 0,
                rules: &[exact(
                    "store-left-all",
                    "a + b + c + d",
                    &[
                        if_known("a", "store.starter_left"),
                        if_known("b", "store.grower_left"),
                        if_known("c", "store.finisher_left"),
                        if_known("d", "store.last_left"),
                    ],
                    |x| Some(x.iter().sum()),
                )
                .when(|answers| FEEDS.iter().any(|feed| answers.number(feed.came).is_some()))],
            },
            FigureSpec {
                id: "store.feed_lasts",
                unit: Unit::Day,
                decimals: 1,
                rules: &[exact(
                    "store-lasts-all",
                    "lasts(w, L)",
                    &[figure("L", "store.feed_left"), list("w", AHEAD)],
                    lasting,
                )
                .from("adopted-plan", Status::Derived)],
            },
        ]
    };
}

static FIGURES: &[FigureSpec] = table_of_figures!("starter", "grower", "finisher", "last");

static SERIES: &[SeriesSpec] = &[SeriesSpec {
    id: "store.feed_by_day",
    unit: Unit::Kilogram,
    decimals: 0,
    first_day: 0,
    until: Until::Today,
    way: Way::Rules(&[exact(
        "store-by-day",
        "s + D - G - S",
        &[
            before("s", "store.feed_by_day", 0.0),
            if_recorded("D", CAME),
            if_recorded("G", FEED),
            if_recorded("S", SPOILED),
        ],
        |x| Some(x[0] + x[1] - x[2] - x[3]),
    )
    .when(|answers| answers.by_day(CAME).is_some())]),
}];

fn lasting(x: &[f64]) -> Option<f64> {
    Some(model::feed::days_lasting(x[0], &x[1..]))
}
