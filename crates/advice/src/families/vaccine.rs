//! Water to carry a vaccine that is drunk, and the milk powder that guards it.

use model::vaccine;
use quantity::fields::{asked_outside, count, field as asked, number};
use quantity::{Field, Need, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Input, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

const BIRDS: &str = "vaccine.birds";
const AGE: &str = "vaccine.age_d";
const DOSES: &str = "vaccine.doses_per_vial";
pub(crate) const MEASURED: &str = "vaccine.measured_2h_l";

static FIELDS: &[Field] = &[
    asked(BIRDS, count(Unit::Birds, 10.0, 100_000.0), Need::Optional),
    asked(AGE, asked_outside(count(Unit::Day, 1.0, 84.0), 5.0, 42.0), Need::Optional),
    asked(DOSES, count(Unit::One, 1.0, 50_000.0), Need::Optional),
    asked(MEASURED, number(Unit::Litre, 0.1, 10_000.0), Need::Optional),
];

static SUMS: &[Sum] = &[Sum {
    name: "vaccine-water",
    inputs: &[
        asks("birds", BIRDS),
        asks("age_d", AGE),
        may_ask("measured_2h_l", MEASURED),
        may_ask("doses_per_vial", DOSES),
    ],
    figures: &["vaccine.water", "vaccine.water_by_age", "vaccine.milk_powder", "vaccine.vials"],
    caution: Some("sum-vaccine-water-caution"),
}];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "vaccine.water_by_age",
        unit: Unit::Litre,
        decimals: 1,
        rules: &[exact("vaccine-water-by-age", "min(d, 40) * n / 1000", FLOCK, |x| {
            Some(vaccine::water_by_age(x[0], x[1]).in_litres())
        })
        .from("vaccine-water", Status::Published)],
    },
    FigureSpec {
        id: "vaccine.water",
        unit: Unit::Litre,
        decimals: 1,
        rules: &[
            exact("vaccine-water-measured", "V", &[field("V", MEASURED)], |x| Some(x[0]))
                .from("grower", Status::Told)
                .when(|answers| answers.number(MEASURED).is_some()),
            exact("vaccine-water-as-by-age", "V", &[figure("V", "vaccine.water_by_age")], |x| Some(x[0]))
                .from("vaccine-water", Status::Published),
        ],
    },
    FigureSpec {
        id: "vaccine.milk_powder",
        unit: Unit::Gram,
        decimals: 0,
        rules: &[exact("milk-powder", "V * (2 + 4) / 2", &[figure("V", "vaccine.water")], |x| {
            let (least, most) = vaccine::milk_powder_g(x[0]);
            Some((least + most) / 2.0)
        })
        .from("vaccine-water", Status::Published)
        .between(|x| Some(vaccine::milk_powder_g(x[0])))],
    },
    FigureSpec {
        id: "vaccine.vials",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact("vaccine-vials", "ceil(n / D)", &[field("n", BIRDS), field("D", DOSES)], |x| {
            Some(vaccine::vials(x[0], x[1]))
        })
        .from("vaccine-water", Status::Published)],
    },
];

const FLOCK: &[Input] = &[field("n", BIRDS), field("d", AGE)];
