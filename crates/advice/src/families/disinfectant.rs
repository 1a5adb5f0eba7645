//! Disinfectant: areas, mix, tankfuls, and what "a little more" really was.

use model::disinfectant::{self, Room};
use quantity::{Answers, Area, Coverage, Dilution, Length, RatioMeaning, Status, Unit, Volume};

use super::Family;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: SUMS, series: &[], shapes: &[] };

static SUMS: &[Sum] = &[Sum {
    name: "dilution",
    inputs: &[
        asks("ratio", RATIO),
        asks("tank_l", TANK),
        may_ask("means", MEANS),
        may_ask("measure_ml", "disinfectant.measure_ml"),
        may_ask("poured_ml", "disinfectant.poured_ml"),
    ],
    figures: &[
        "disinfectant.product_per_load",
        "disinfectant.strength",
        "disinfectant.product_other_meaning",
        "disinfectant.measures_per_load",
        "disinfectant.true_ratio",
        "disinfectant.times_label",
    ],
    caution: Some("sum-dilution-caution"),
}];

const RATIO: &str = "disinfectant.ratio";
const MEANS: &str = "disinfectant.ratio_means";
const TANK: &str = "disinfectant.sprayer_l";
const POURED: &str = "disinfectant.poured_ml";

static FIGURES: &[FigureSpec] = &[
    area(
        "disinfectant.floor_area",
        &[exact("floor-face", "L * W", FLAT, |x| Some(room(x).floor().in_square_metres()))],
    ),
    area(
        "disinfectant.half_wall_area",
        &[exact(
            "half-wall-face",
            "2 * (L + W) * m",
            &[field("L", "house.length_m"), field("W", "house.width_m"), field("m", "house.half_wall_m")],
            |x| Some(Room { half_wall: Length::metres(x[2]), ..room(x) }.half_walls().in_square_metres()),
        )],
    ),
    area(
        "disinfectant.curtain_area",
        &[exact(
            "curtain-face",
            "2 * (L + W) * (h - m)",
            &[
                field("L", "house.length_m"),
                field("W", "house.width_m"),
                field("h", "house.eave_height_m"),
                field("m", "house.half_wall_m"),
            ],
            |x| {
                let house = Room { eave: Length::metres(x[2]), half_wall: Length::metres(x[3]), ..room(x) };
                Some(house.curtain_face().in_square_metres())
            },
        )],
    ),
    area(
        "disinfectant.wall_area",
        &[exact(
            "wall-faces",
            "2 * (L + W) * h",
            &[field("L", "house.length_m"), field("W", "house.width_m"), field("h", "house.eave_height_m")],
            |x| Some(Room { eave: Length::metres(x[2]), ..room(x) }.walls().in_square_metres()),
        )],
    ),
    area(
        "disinfectant.gable_area",
        &[exact(
            "gable-faces",
            "W * (r - h)",
            &[
                field("W", "house.width_m"),
                field("h", "house.eave_height_m"),
                field("r", "house.ridge_height_m"),
            ],
            |x| Some(ridged(x[0], x[0], x[1], x[2]).gables().in_square_metres()),
        )],
    ),
    area(
        "disinfectant.roof_area",
        &[exact(
            "roof-slope",
            "L * W * sqrt(1 + ((r - h) / (W / 2)) ^ 2)",
            &[
                field("L", "house.length_m"),
                field("W", "house.width_m"),
                field("h", "house.eave_height_m"),
                field("r", "house.ridge_height_m"),
            ],
            |x| Some(ridged(x[0], x[1], x[2], x[3]).roof().in_square_metres()),
        )],
    ),
    FigureSpec {
        id: "disinfectant.area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact(
            "treated-area",
            "(F + H + G + C + R + U) * (1 + k * e / 100)",
            &[
                if_chosen("F", "floor", "disinfectant.floor_area"),
                if_chosen("H", "walls", "disinfectant.wall_area"),
                if_chosen("G", "gables", "disinfectant.gable_area"),
                if_chosen("C", "ceiling", "disinfectant.floor_area"),
                if_chosen("R", "roof", "disinfectant.roof_area"),
                if_chosen("U", "curtains", "disinfectant.curtain_area"),
                chosen("k", "equipment"),
                field("e", "disinfectant.equipment_percent"),
            ],
            |x| Some(x[..6].iter().sum::<f64>() * (1.0 + x[6] * x[7] / 100.0)),
        )],
    },
    FigureSpec {
        id: "disinfectant.solution",
        unit: Unit::Litre,
        decimals: 1,
        rules: &[exact(
            "mix-for-area",
            "round(A * v) / 1000",
            &[figure("A", "disinfectant.area"), field("v", "disinfectant.coverage_ml_per_m2")],
            |x| {
                let coverage = Coverage::millilitres_per_square_metre(x[1]);
                Some(disinfectant::solution(Area::square_metres(x[0]), coverage).in_litres())
            },
        )
        .from("label", Status::Derived)],
    },
    FigureSpec {
        id: "disinfectant.strength",
        unit: Unit::MillilitrePerLitre,
        decimals: 2,
        rules: &[
            of_total("strength-total", "1000 / N", &[field("N", RATIO)], |x| dose_ml(1.0, x[0], TOTAL)),
            of_water("strength-water", "1000 / (N + 1)", &[field("N", RATIO)], |x| dose_ml(1.0, x[0], WATER)),
        ],
    },
    FigureSpec {
        id: "disinfectant.product",
        unit: Unit::Millilitre,
        decimals: 0,
        rules: &[
            of_total("product-total", "S * 1000 / N", IN_ALL, |x| dose_ml(x[0], x[1], TOTAL)),
            of_water("product-water", "S * 1000 / (N + 1)", IN_ALL, |x| dose_ml(x[0], x[1], WATER)),
        ],
    },
    FigureSpec {
        id: "disinfectant.loads",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact("loads", "ceil(S / T)", LOADS, |x| {
            Some(disinfectant::loads(Volume::litres(x[0]), Volume::litres(x[1])).count)
        })],
    },
    FigureSpec {
        id: "disinfectant.full_loads",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact("full-loads", "floor(S / T)", LOADS, |x| {
            Some(disinfectant::loads(Volume::litres(x[0]), Volume::litres(x[1])).full)
        })],
    },
    FigureSpec {
        id: "disinfectant.last_load",
        unit: Unit::Litre,
        decimals: 2,
        rules: &[exact("last-load", "S - T * floor(S / T)", LOADS, |x| {
            Some(disinfectant::loads(Volume::litres(x[0]), Volume::litres(x[1])).last.in_litres())
        })],
    },
    FigureSpec {
        id: "disinfectant.product_per_load",
        unit: Unit::Millilitre,
        decimals: 1,
        rules: &[
            of_total("load-total", "T * 1000 / N", IN_LOAD, |x| dose_ml(x[0], x[1], TOTAL)),
            of_water("load-water", "T * 1000 / (N + 1)", IN_LOAD, |x| dose_ml(x[0], x[1], WATER)),
        ],
    },
    FigureSpec {
        id: "disinfectant.product_last_load",
        unit: Unit::Millilitre,
        decimals: 1,
        rules: &[
            of_total("last-load-total", "V * 1000 / N", IN_LAST, |x| dose_ml(x[0], x[1], TOTAL)),
            of_water("last-load-water", "V * 1000 / (N + 1)", IN_LAST, |x| dose_ml(x[0], x[1], WATER)),
        ],
    },
    FigureSpec {
        id: "disinfectant.product_other_meaning",
        unit: Unit::Millilitre,
        decimals: 1,
        rules: &[
            exact("other-meaning-water", "T * 1000 / (N + 1)", IN_LOAD, |x| dose_ml(x[0], x[1], WATER))
                .when(|answers| meaning_matters(answers) && means_total(answers)),
            exact("other-meaning-total", "T * 1000 / N", IN_LOAD, |x| dose_ml(x[0], x[1], TOTAL))
                .when(|answers| meaning_matters(answers) && !means_total(answers)),
        ],
    },
    FigureSpec {
        id: "disinfectant.measures_per_load",
        unit: Unit::One,
        decimals: 1,
        rules: &[exact(
            "measures-per-load",
            "P / c",
            &[figure("P", "disinfectant.product_per_load"), field("c", "disinfectant.measure_ml")],
            |x| Some(x[0] / x[1]),
        )],
    },
    FigureSpec {
        id: "disinfectant.true_ratio",
        unit: Unit::One,
        decimals: 1,
        rules: &[
            of_total("true-ratio-total", "T * 1000 / q", POURED_IN, |x| true_parts(x, TOTAL)),
            of_water("true-ratio-water", "(T * 1000 - q) / q", POURED_IN, |x| true_parts(x, WATER)),
        ],
    },
    FigureSpec {
        id: "disinfectant.times_label",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "times-label",
            "q / P",
            &[field("q", POURED), figure("P", "disinfectant.product_per_load")],
            |x| Some(x[0] / x[1]),
        )],
    },
    FigureSpec {
        id: "disinfectant.to_buy",
        unit: Unit::Millilitre,
        decimals: 0,
        rules: &[
            exact(
                "to-buy-with-tub",
                "2 * Q + B",
                &[figure("Q", "disinfectant.product"), figure("B", "disinfectant.soak_product")],
                |x| Some(2.0 * x[0] + x[1]),
            )
            .when(|answers| answers.number("disinfectant.soak_l").is_some())
            .from("common-practice", Status::CommonPractice),
            exact("to-buy", "2 * Q", &[figure("Q", "disinfectant.product")], |x| Some(2.0 * x[0]))
                .from("common-practice", Status::CommonPractice),
        ],
    },
    FigureSpec {
        id: "disinfectant.extra_cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "extra-cost",
            "max(0, q / P - 1) * Q / 1000 * p",
            &[
                field("q", POURED),
                figure("P", "disinfectant.product_per_load"),
                figure("Q", "disinfectant.product"),
                field("p", "prices.disinfectant_per_l"),
            ],
            |x| Some((x[0] / x[1] - 1.0).max(0.0) * x[2] / 1000.0 * x[3]),
        )],
    },
    FigureSpec {
        id: "disinfectant.cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "disinfectant-cost",
            "Q / 1000 * p",
            &[figure("Q", "disinfectant.to_buy"), field("p", "prices.disinfectant_per_l")],
            |x| Some(x[0] / 1000.0 * x[1]),
        )],
    },
    FigureSpec {
        id: "disinfectant.soak_product",
        unit: Unit::Millilitre,
        decimals: 0,
        rules: &[
            of_total("soak-total", "B * 1000 / N", IN_TUB, |x| dose_ml(x[0], x[1], TOTAL)),
            of_water("soak-water", "B * 1000 / (N + 1)", IN_TUB, |x| dose_ml(x[0], x[1], WATER)),
        ],
    },
];

const WATER: RatioMeaning = RatioMeaning::PartsWater;
const TOTAL: RatioMeaning = RatioMeaning::PartsTotal;

const FLAT: &[Input] = &[field("L", "house.length_m"), field("W", "house.width_m")];
const LOADS: &[Input] = &[figure("S", "disinfectant.solution"), field("T", TANK)];
const IN_ALL: &[Input] = &[figure("S", "disinfectant.solution"), field("N", RATIO)];
const IN_LOAD: &[Input] = &[field("T", TANK), field("N", RATIO)];
const IN_LAST: &[Input] = &[figure("V", "disinfectant.last_load"), field("N", RATIO)];
const IN_TUB: &[Input] = &[field("B", "disinfectant.soak_l"), field("N", RATIO)];
const POURED_IN: &[Input] = &[field("T", TANK), field("q", POURED)];

const fn area(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::SquareMetre, decimals: 1, rules }
}

const fn if_chosen(symbol: &'static str, word: &'static str, figure: &'static str) -> Input {
    Input { symbol, origin: Origin::IfChosen { field: "disinfectant.surfaces", word, figure } }
}

const fn chosen(symbol: &'static str, surface: &'static str) -> Input {
    Input { symbol, origin: Origin::Chosen("disinfectant.surfaces", surface) }
}

/// Whether the two meanings differ by over 2 %, which is below 1:50: above that the question only worries people.
fn meaning_matters(answers: &Answers) -> bool {
    answers.number(RATIO).is_some_and(|parts| disinfectant::meaning_gap(parts) > 0.02)
}

fn means_total(answers: &Answers) -> bool {
    answers.choice(MEANS) == Some("parts-total")
}

const fn of_total(
    name: &'static str,
    formula: &'static str,
    inputs: &'static [Input],
    compute: fn(&[f64]) -> Option<f64>,
) -> Rule {
    exact(name, formula, inputs, compute).when(means_total).from("label", Status::Derived)
}

const fn of_water(
    name: &'static str,
    formula: &'static str,
    inputs: &'static [Input],
    compute: fn(&[f64]) -> Option<f64>,
) -> Rule {
    exact(name, formula, inputs, compute).from("label", Status::Derived)
}

fn dose_ml(mix_l: f64, parts: f64, meaning: RatioMeaning) -> Option<f64> {
    let dilution = Dilution::new(parts, meaning)?;
    Some(disinfectant::product(Volume::litres(mix_l), dilution).in_millilitres())
}

fn true_parts(x: &[f64], meaning: RatioMeaning) -> Option<f64> {
    disinfectant::true_parts(Volume::litres(x[0]), Volume::millilitres(x[1]), meaning)
}

/// A room of which only length and width count yet.
fn room(x: &[f64]) -> Room {
    let none = Length::metres(0.0);
    Room {
        length: Length::metres(x[0]),
        width: Length::metres(x[1]),
        eave: none,
        ridge: none,
        half_wall: none,
    }
}

fn ridged(length: f64, width: f64, eave: f64, ridge: f64) -> Room {
    Room { eave: Length::metres(eave), ridge: Length::metres(ridge), ..room(&[length, width]) }
}
