//! Medicine in water by its label, worked out in two ways where the label allows it, and the withdrawal after it.
//!
//! No drug and no dose is known here: each number is typed from the label or from the veterinarian's paper.

use model::medicine::{self, Withdrawal};
use quantity::fields::{asked_outside, count, field as asked, inert, number};
use quantity::{Answers, CivilDay, Field, Kind, Need, Status, Unit};

use super::Family;
use crate::outcome::Outcome;
use crate::rule::{FigureSpec, Input, exact, field, figure};
use crate::sums::{Sum, SumInput, asks, may_ask};

/// What a liquid and a powder share.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

const BIRDS: &str = "medicine.birds";
const WEIGHT: &str = "medicine.weight_kg";
pub(crate) const DRUNK: &str = "medicine.drunk_l";
pub(crate) const DOSE: &str = "medicine.dose_mg_per_kg";
const DAYS: &str = "medicine.days_d";
pub(crate) const YESTERDAY: &str = "medicine.yesterday_c";
pub(crate) const TOMORROW: &str = "medicine.tomorrow_c";
pub(crate) const LAST: &str = "withdrawal.last";
pub(crate) const HOUR: &str = "withdrawal.hour_h";
pub(crate) const WITHDRAWAL: &str = "withdrawal.days_d";

const WARNS: &str = "only warns that birds drink more on a hotter day";

static FIELDS: &[Field] = &[
    asked(BIRDS, count(Unit::Birds, 1.0, 100_000.0), Need::Optional),
    asked(WEIGHT, asked_outside(number(Unit::Kilogram, 0.03, 8.0), 0.04, 4.0), Need::Optional),
    asked(DRUNK, number(Unit::Litre, 0.05, 100_000.0), Need::Optional),
    asked(DOSE, asked_outside(number(Unit::MilligramPerKilogram, 0.01, 2_000.0), 0.5, 200.0), Need::Optional),
    asked(DAYS, asked_outside(count(Unit::Day, 1.0, 30.0), 1.0, 7.0), Need::Optional),
    inert(YESTERDAY, number(Unit::Celsius, -20.0, 55.0), Need::Optional, WARNS),
    inert(TOMORROW, number(Unit::Celsius, -20.0, 55.0), Need::Optional, WARNS),
    asked(LIQUID.strength, number(Unit::MilligramPerMillilitre, 0.01, 1_000.0), Need::Optional),
    asked(LIQUID.by_kg, number(Unit::MillilitrePerKilogram, 0.000_1, 20.0), Need::Optional),
    asked(LIQUID.by_litre, number(Unit::MillilitrePerLitre, 0.001, 50.0), Need::Optional),
    asked(LIQUID.pack, number(Unit::Millilitre, 0.5, 25_000.0), Need::Optional),
    asked(POWDER.strength, number(Unit::MilligramPerGram, 0.01, 1_000.0), Need::Optional),
    asked(POWDER.by_kg, number(Unit::GramPerKilogram, 0.000_1, 20.0), Need::Optional),
    asked(POWDER.by_litre, number(Unit::GramPerLitre, 0.001, 50.0), Need::Optional),
    asked(POWDER.pack, number(Unit::Gram, 0.5, 25_000.0), Need::Optional),
    asked(LAST, Kind::Day, Need::Optional),
    asked(HOUR, count(Unit::Hour, 0.0, 24.0), Need::Usual("24", Status::Assumed)),
    asked(WITHDRAWAL, asked_outside(count(Unit::Day, 0.0, 365.0), 0.0, 60.0), Need::Optional),
];

/// A liquid, told in mL, or a powder, told in g: the fields of its label and the figures of its dose.
pub(crate) struct Form {
    /// Field: active in a mL or g of product.
    pub strength: &'static str,
    /// Field: product for a kg of bird.
    pub by_kg: &'static str,
    /// Field: product for a litre of water.
    pub by_litre: &'static str,
    /// Field: product in a bottle or sachet.
    pub pack: &'static str,
    /// Figure: product a day by the weight of the birds.
    pub by_weight: &'static str,
    /// Figure: product a day by the water they drink.
    pub by_water: &'static str,
    /// Figure: the second as a share of the first.
    pub agreement: &'static str,
    /// Figure: product a day, silent where the two do not agree.
    pub product: &'static str,
}

/// A liquid.
pub(crate) const LIQUID: Form = Form {
    strength: "medicine.strength_mg_per_ml",
    by_kg: "medicine.product_ml_per_kg",
    by_litre: "medicine.label_ml_per_l",
    pack: "medicine.pack_ml",
    by_weight: "medicine.by_weight_ml",
    by_water: "medicine.by_water_ml",
    agreement: "medicine.agreement_ml",
    product: "medicine.product_ml",
};

/// A powder.
pub(crate) const POWDER: Form = Form {
    strength: "medicine.strength_mg_per_g",
    by_kg: "medicine.product_g_per_kg",
    by_litre: "medicine.label_g_per_l",
    pack: "medicine.pack_g",
    by_weight: "medicine.by_weight_g",
    by_water: "medicine.by_water_g",
    agreement: "medicine.agreement_g",
    product: "medicine.product_g",
};

impl Form {
    /// Both ways to a day's product, as far as the label can be worked out: by weight, by water.
    pub(crate) fn ways(&self, answers: &Answers) -> (Option<f64>, Option<f64>) {
        let outcome = Outcome::of(answers, [self.by_weight, self.by_water]);
        (outcome.number(self.by_weight), outcome.number(self.by_water))
    }

    /// The weight of the birds goes first, unless the water contradicts it.
    fn weight_counts(&self, answers: &Answers) -> bool {
        match self.ways(answers) {
            (Some(by_weight), Some(by_water)) => medicine::agree(by_weight, by_water),
            (by_weight, _) => by_weight.is_some(),
        }
    }

    fn only_water(&self, answers: &Answers) -> bool {
        self.ways(answers).0.is_none()
    }
}

// The active is shown in the workings only: beside a refused dose its grams could be taken for grams to pour.
static SUMS: &[Sum] = &[
    Sum {
        name: "dose",
        inputs: LIQUID_ASKS,
        figures: &[
            LIQUID.product,
            "medicine.per_litre_ml",
            "medicine.bottles",
            LIQUID.agreement,
            "medicine.live_weight",
        ],
        caution: Some("sum-dose-caution"),
    },
    Sum {
        name: "dose-powder",
        inputs: POWDER_ASKS,
        figures: &[
            POWDER.product,
            "medicine.per_litre_g",
            "medicine.sachets",
            POWDER.agreement,
            "medicine.live_weight",
        ],
        caution: Some("sum-dose-caution"),
    },
    Sum {
        name: "withdrawal",
        inputs: &[asks("last", LAST), may_ask("hour_h", HOUR), may_ask("days_d", WITHDRAWAL)],
        figures: &["withdrawal.earliest_day", "withdrawal.clear_day", "withdrawal.clear_hour"],
        caution: Some("sum-withdrawal-caution"),
    },
];

const LIQUID_ASKS: &[SumInput] = &[
    asks("birds", BIRDS),
    asks("weight_kg", WEIGHT),
    may_ask("drunk_l", DRUNK),
    may_ask("dose_mg_per_kg", DOSE),
    may_ask("strength_mg_per_ml", LIQUID.strength),
    may_ask("product_ml_per_kg", LIQUID.by_kg),
    may_ask("label_ml_per_l", LIQUID.by_litre),
    may_ask("days_d", DAYS),
    may_ask("pack_ml", LIQUID.pack),
    may_ask("yesterday_c", YESTERDAY),
    may_ask("tomorrow_c", TOMORROW),
];

const POWDER_ASKS: &[SumInput] = &[
    asks("birds", BIRDS),
    asks("weight_kg", WEIGHT),
    may_ask("drunk_l", DRUNK),
    may_ask("dose_mg_per_kg", DOSE),
    may_ask("strength_mg_per_g", POWDER.strength),
    may_ask("product_g_per_kg", POWDER.by_kg),
    may_ask("label_g_per_l", POWDER.by_litre),
    may_ask("days_d", DAYS),
    may_ask("pack_g", POWDER.pack),
    may_ask("yesterday_c", YESTERDAY),
    may_ask("tomorrow_c", TOMORROW),
];

/// The figures of one form: what is asked and answered is the same, but for mL or g and the names of rules.
macro_rules! figures_of {
    ($form:ident, $a_day:expr, $a_litre:expr, $per_litre:literal, $packs:literal,
     rules $active:literal, $product:literal, $water:literal, $agreement:literal, $weighed:literal, $drunk:literal,
     $litre:literal, $pack:literal = $pack_formula:literal by $pack_kernel:path) => {
        [
            FigureSpec {
                id: $form.by_weight,
                unit: $a_day,
                decimals: 1,
                rules: &[
                    exact(
                        $product,
                        "d * W",
                        &[field("d", $form.by_kg), figure("W", "medicine.live_weight")],
                        |x| Some(x[0] * x[1]),
                    )
                    .from("label", Status::Derived)
                    .when(|answers| answers.number($form.by_kg).is_some()),
                    exact(
                        $active,
                        "A * 1000 / s",
                        &[figure("A", "medicine.active"), field("s", $form.strength)],
                        |x| Some(medicine::product_of_active(x[0] * 1000.0, x[1])),
                    )
                    .from("label", Status::Derived),
                ],
            },
            FigureSpec {
                id: $form.by_water,
                unit: $a_day,
                decimals: 1,
                rules: &[exact($water, "m * V", &[field("m", $form.by_litre), field("V", DRUNK)], |x| {
                    Some(x[0] * x[1])
                })
                .from("label", Status::Derived)],
            },
            FigureSpec {
                id: $form.agreement,
                unit: Unit::Percent,
                decimals: 0,
                rules: &[exact(
                    $agreement,
                    "100 * B / A",
                    &[figure("A", $form.by_weight), figure("B", $form.by_water)],
                    |x| Some(100.0 * x[1] / x[0]),
                )],
            },
            FigureSpec {
                id: $form.product,
                unit: $a_day,
                decimals: 1,
                rules: &[
                    exact($weighed, "A", &[figure("A", $form.by_weight)], |x| Some(x[0]))
                        .from("label", Status::Derived)
                        .when(|answers| $form.weight_counts(answers)),
                    exact($drunk, "B", &[figure("B", $form.by_water)], |x| Some(x[0]))
                        .from("label", Status::Derived)
                        .when(|answers| $form.only_water(answers)),
                ],
            },
            FigureSpec {
                id: $per_litre,
                unit: $a_litre,
                decimals: 3,
                rules: &[exact($litre, "P / V", &[figure("P", $form.product), field("V", DRUNK)], |x| {
                    Some(x[0] / x[1])
                })],
            },
            FigureSpec {
                id: $packs,
                unit: Unit::Pieces,
                decimals: 0,
                rules: &[exact(
                    $pack,
                    $pack_formula,
                    &[figure("P", $form.product), field("t", DAYS), field("B", $form.pack)],
                    |x| Some($pack_kernel(x[0], x[1], x[2])),
                )],
            },
        ]
    };
}

/// Liquids and powders; a bottle lasts over days, a sachet does not.
pub static LIQUIDS: Family =
    Family { figures: LIQUID_FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };
/// See [`LIQUIDS`].
pub static POWDERS: Family =
    Family { figures: POWDER_FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };

static LIQUID_FIGURES: &[FigureSpec] = &figures_of!(
    LIQUID, Unit::MillilitrePerDay, Unit::MillilitrePerLitre, "medicine.per_litre_ml", "medicine.bottles",
    rules "liquid-by-active", "liquid-by-product", "liquid-by-water", "liquid-agreement", "liquid-weighed",
    "liquid-drunk", "liquid-per-litre", "bottles" = "ceil(P * t / B)" by medicine::bottles
);

static POWDER_FIGURES: &[FigureSpec] = &figures_of!(
    POWDER, Unit::GramPerDay, Unit::GramPerLitre, "medicine.per_litre_g", "medicine.sachets",
    rules "powder-by-active", "powder-by-product", "powder-by-water", "powder-agreement", "powder-weighed",
    "powder-drunk", "powder-per-litre", "sachets" = "t * ceil(P / B)" by medicine::sachets
);

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "medicine.live_weight",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact("medicine-live-weight", "n * w", &[field("n", BIRDS), field("w", WEIGHT)], |x| {
            Some(x[0] * x[1])
        })],
    },
    FigureSpec {
        id: "medicine.active",
        unit: Unit::GramPerDay,
        decimals: 2,
        rules: &[exact(
            "medicine-active",
            "D * W / 1000",
            &[field("D", DOSE), figure("W", "medicine.live_weight")],
            |x| Some(medicine::active_mg(x[0], x[1]) / 1000.0),
        )
        .from("label", Status::Derived)],
    },
    FigureSpec {
        id: "withdrawal.earliest_day",
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact("withdrawal-earliest-day", "p + d + ceil(h / 24)", GIVEN, |x| {
            given(x).clear().earliest_day().map(|day| f64::from(day.number()))
        })
        .from("our-judgement", Status::OurJudgement)],
    },
    FigureSpec {
        id: "withdrawal.clear_day",
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact("withdrawal-clear-day", "p + d + floor(h / 24)", GIVEN, |x| {
            cleared(x).map(|(day, _)| f64::from(day.number()))
        })
        .from("label", Status::Derived)],
    },
    FigureSpec {
        id: "withdrawal.clear_hour",
        unit: Unit::Hour,
        decimals: 0,
        rules: &[exact("withdrawal-clear-hour", "h - 24 * floor(h / 24)", &[field("h", HOUR)], |x| {
            cleared(&[0.0, 0.0, x[0]]).map(|(_, hour)| f64::from(hour))
        })
        .from("label", Status::Derived)
        .when(|answers| answers.number(WITHDRAWAL).is_some())],
    },
];

const GIVEN: &[Input] = &[field("p", LAST), field("d", WITHDRAWAL), field("h", HOUR)];

fn given(x: &[f64]) -> Withdrawal {
    Withdrawal {
        product: String::new(),
        last: CivilDay::from_number(x[0] as i32),
        hour: Some(x[2] as u8),
        days: Some(x[1] as u16),
    }
}

fn cleared(x: &[f64]) -> Option<(CivilDay, u8)> {
    match given(x).clear() {
        medicine::Clear::On { day, hour } => Some((day, hour)),
        medicine::Clear::Unknown => None,
    }
}
