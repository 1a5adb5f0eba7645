//! Litter: how much, in bags, and when to spread it so that it dries.

use quantity::{Area, Length, Status, Unit, Volume};

use super::Family;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: SUMS, series: &[], shapes: &[] };

static SUMS: &[Sum] = &[Sum {
    name: "litter",
    inputs: &[
        asks("length_m", "house.length_m"),
        asks("width_m", "house.width_m"),
        may_ask("usable_floor_percent", "house.usable_floor_percent"),
        asks("depth_cm", "litter.depth_cm"),
        asks("bag_l", "litter.bag_l"),
        may_ask("kind", "litter.kind"),
        may_ask("bag_price", "prices.litter_bag_each"),
    ],
    figures: &["litter.bags", "litter.volume", "litter.mass", "litter.cost"],
    caution: None,
}];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "litter.volume",
        unit: Unit::CubicMetre,
        decimals: 2,
        rules: &[exact(
            "litter-volume",
            "A * d / 100",
            &[figure("A", "space.floor_area"), field("d", "litter.depth_cm")],
            |x| {
                let volume = model::litter::volume(Area::square_metres(x[0]), Length::centimetres(x[1]));
                Some(volume.in_cubic_metres())
            },
        )],
    },
    FigureSpec {
        id: "litter.bags",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "litter-bags",
            "ceil(V * 1000 / b)",
            &[figure("V", "litter.volume"), field("b", "litter.bag_l")],
            |x| Some(model::litter::bags(Volume::cubic_metres(x[0]), Volume::litres(x[1]))),
        )],
    },
    FigureSpec {
        id: "litter.mass",
        unit: Unit::Kilogram,
        decimals: 0,
        rules: &[
            mass(
                "litter-mass-shavings",
                &[
                    figure("V", "litter.volume"),
                    bulk("b1", "wood-shavings", || density("wood-shavings").map(|range| range.0)),
                    bulk("b2", "wood-shavings", || density("wood-shavings").map(|range| range.1)),
                ],
            )
            .when(|answers| answers.choice("litter.kind") == Some("wood-shavings")),
            mass(
                "litter-mass-husk",
                &[
                    figure("V", "litter.volume"),
                    bulk("b1", "rice-husk", || density("rice-husk").map(|range| range.0)),
                    bulk("b2", "rice-husk", || density("rice-husk").map(|range| range.1)),
                ],
            )
            .when(|answers| answers.choice("litter.kind") == Some("rice-husk")),
        ],
    },
    FigureSpec {
        id: "litter.spread_date",
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact(
            "spread-date",
            "p - s",
            &[field("p", "batch.placement"), field("s", "litter.spread_days_before_d")],
            |x| Some(x[0] - x[1]),
        )
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "litter.cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "litter-cost",
            "b * p",
            &[figure("b", "litter.bags"), field("p", "prices.litter_bag_each")],
            |x| Some(x[0] * x[1]),
        )],
    },
];

const fn mass(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "V * (b1 + b2) / 2", inputs, |x| Some(x[0] * (x[1] + x[2]) / 2.0))
        .from("litter-density", Status::CommonPractice)
        .between(|x| Some((x[0] * x[1], x[0] * x[2])))
}

pub(super) const fn bulk(symbol: &'static str, litter: &'static str, read: fn() -> Option<f64>) -> Input {
    let unit = Unit::KilogramPerCubicMetre;
    Input { symbol, origin: Origin::Table { table: "litter_density", point: litter, unit, read } }
}

pub(super) fn density(litter: &str) -> Option<(f64, f64)> {
    reference::litter::bulk_density(litter).ok()?
}
