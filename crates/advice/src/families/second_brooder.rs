//! Brooders of a second kind beside the first: their heat, their share of it, their fuel and its cost, and their gas.
//!
//! Heat is shared out as the heat of all brooders is: where a house has 5 kW of gas and 5 kW of charcoal, each burns half.

use model::heat;
use quantity::{Answers, Status, Unit};

use super::Family;
use super::fuel::{
    co_high, co_low, co2, constant, cost, half_kilograms, high, kilograms, low, net, packs_besides, useful,
    whole,
};
use super::guard::{rated, rating};
use super::heat::{power, rated_power, useful_kw};
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };

const KIND: &str = "brooding.second_brooder";
const COUNT: &str = "brooding.second_brooders";
const RATED: &str = "brooding.second_brooder_chicks";
const OWN_KW: &str = "brooding.second_brooder_kw";
/// Its fuel, where it is told.
pub(crate) const FUEL: &str = "brooding.second_fuel";

static FIGURES: &[FigureSpec] = &[
    power(
        "brooding.second_power",
        &[
            exact("second-power-told", "p", &[field("p", OWN_KW)], |x| Some(x[0]))
                .when(|answers| answers.number(OWN_KW).is_some())
                .from("label", Status::Told),
            exact(
                "second-power-charcoal-pot",
                "p",
                &[rated_power("charcoal-pot-heat", || useful_kw("charcoal-pot"))],
                |x| Some(x[0]),
            )
            .when(|answers| answers.choice(KIND) == Some("charcoal-pot"))
            .from("brooder-ratings", Status::FromMemory),
            exact(
                "second-power-gas-hover",
                "p",
                &[rated_power("gas-hover-heat", || useful_kw("gas-hover"))],
                |x| Some(x[0]),
            )
            .when(|answers| answers.choice(KIND) == Some("gas-hover"))
            .from("brooder-ratings", Status::FromMemory),
        ],
    ),
    power(
        "brooding.second_heat",
        &[exact("second-heat", "b * p", &[field("b", COUNT), figure("p", "brooding.second_power")], |x| {
            Some(x[0] * x[1])
        })],
    ),
    FigureSpec {
        id: "brooding.second_share",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "second-share",
            "q / g",
            &[figure("q", "brooding.second_heat"), figure("g", "brooding.heat_installed")],
            |x| Some(x[0] / x[1]),
        )
        .from("our-judgement", Status::OurJudgement)],
    },
    FigureSpec {
        id: "guard.second_rating",
        unit: Unit::Chicks,
        decimals: 0,
        rules: &[
            exact("second-rating-told", "r", &[field("r", RATED)], |x| Some(x[0]))
                .when(|answers| answers.number(RATED).is_some())
                .from("label", Status::Told),
            exact(
                "second-rating-charcoal-pot",
                "r",
                &[rating("charcoal-pot", || rated("charcoal-pot"))],
                |x| Some(x[0]),
            )
            .when(|answers| answers.choice(KIND) == Some("charcoal-pot"))
            .from("brooder-ratings", Status::Published),
            exact("second-rating-gas-hover", "r", &[rating("gas-hover", || rated("gas-hover"))], |x| {
                Some(x[0])
            })
            .when(|answers| answers.choice(KIND) == Some("gas-hover"))
            .from("brooder-ratings", Status::FromMemory),
        ],
    },
    FigureSpec {
        id: "brooding.second_fuel_useful",
        unit: Unit::MegajoulePerKilogram,
        decimals: 1,
        rules: &[
            useful(
                "second-useful-of-fuel",
                &[
                    of_fuel("q", "net", Unit::MegajoulePerKilogram, net),
                    of_fuel("e1", "low", Unit::One, low),
                    of_fuel("e2", "high", Unit::One, high),
                ],
            )
            .when(told),
            useful(
                "second-useful-of-charcoal-pot",
                &[
                    constant("q", "charcoal-net", Unit::MegajoulePerKilogram, || net("charcoal")),
                    constant("e1", "charcoal-low", Unit::One, || low("charcoal")),
                    constant("e2", "charcoal-high", Unit::One, || high("charcoal")),
                ],
            )
            .when(is_charcoal),
            useful(
                "second-useful-of-gas-hover",
                &[
                    constant("q", "lpg-net", Unit::MegajoulePerKilogram, || net("lpg")),
                    constant("e1", "lpg-low", Unit::One, || low("lpg")),
                    constant("e2", "lpg-high", Unit::One, || high("lpg")),
                ],
            )
            .when(is_gas),
        ],
    },
    FigureSpec {
        id: "brooding.second_fuel_rate",
        unit: Unit::KilogramPerHour,
        decimals: 2,
        rules: &[exact(
            "second-fuel-rate",
            "3.6 * h * s / j",
            &[figure("h", "brooding.heat"), SHARE, USEFUL],
            share_burnt,
        )],
    },
    FigureSpec {
        id: "brooding.second_fuel_day",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact(
            "second-fuel-of-first-day",
            "3.6 * e * s / j",
            &[figure("e", "brooding.heat_first_day"), SHARE, USEFUL],
            share_burnt,
        )],
    },
    kilograms(
        "brooding.second_fuel_total",
        &[exact(
            "second-fuel-over-days",
            "3.6 * e * s / j + f",
            &[figure("e", "brooding.heat_over_days"), SHARE, USEFUL, figure("f", "brooding.second_fuel_day")],
            |x| Some(heat::fuel(x[0] * x[1], x[2]) + x[3]),
        )],
    ),
    FigureSpec {
        id: "brooding.second_cylinders",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[whole("second-cylinders", &[TOTAL, CYLINDER]).when(is_gas)],
    },
    FigureSpec {
        id: "brooding.second_sacks",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[whole("second-sacks", &[TOTAL, SACK]).when(is_charcoal)],
    },
    half_kilograms(
        "brooding.second_spare",
        &[
            exact("second-spare-cylinder", "c", &[CYLINDER], |x| Some(x[0]))
                .when(is_gas)
                .from("common-practice", Status::CommonPractice),
            exact("second-spare-two-nights", "2 * f", &[figure("f", "brooding.second_fuel_day")], |x| {
                Some(2.0 * x[0])
            })
            .from("common-practice", Status::CommonPractice),
        ],
    ),
    FigureSpec {
        id: "brooding.second_fuel_cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[
            cost("cost-of-second-cylinders", &[figure("n", "brooding.second_cylinders"), CYLINDER_PRICE])
                .when(is_gas),
            cost("cost-of-second-sacks", &[figure("n", "brooding.second_sacks"), SACK_PRICE])
                .when(is_charcoal),
        ],
    },
    FigureSpec {
        id: "brooding.second_spare_packs",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[
            packs_besides(
                "second-spare-cylinders",
                &[TOTAL, SPARE, CYLINDER, figure("n", "brooding.second_cylinders")],
            )
            .when(is_gas),
            packs_besides("second-spare-sacks", &[TOTAL, SPARE, SACK, figure("n", "brooding.second_sacks")])
                .when(is_charcoal),
        ],
    },
    FigureSpec {
        id: "brooding.second_spare_cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[
            cost(
                "cost-of-second-spare-cylinders",
                &[figure("n", "brooding.second_spare_packs"), CYLINDER_PRICE],
            )
            .when(is_gas),
            cost("cost-of-second-spare-sacks", &[figure("n", "brooding.second_spare_packs"), SACK_PRICE])
                .when(is_charcoal),
        ],
    },
    FigureSpec {
        id: "brooding.second_stale_air",
        unit: Unit::KilogramPerHour,
        decimals: 2,
        rules: &[
            stale(
                "second-stale-air-of-fuel",
                &[figure("f", "brooding.second_fuel_rate"), of_fuel("c", "co2", Unit::One, co2)],
            )
            .when(told),
            stale(
                "second-stale-air-of-charcoal-pot",
                &[
                    figure("f", "brooding.second_fuel_rate"),
                    constant("c", "charcoal-co2", Unit::One, || co2("charcoal")),
                ],
            )
            .when(is_charcoal),
            stale(
                "second-stale-air-of-gas-hover",
                &[
                    figure("f", "brooding.second_fuel_rate"),
                    constant("c", "lpg-co2", Unit::One, || co2("lpg")),
                ],
            )
            .when(is_gas),
        ],
    },
    gas(
        "brooding.second_gas_low",
        &[
            gas_given(
                "second-gas-low-of-fuel",
                &[HEAT, USEFUL, of_fuel("g", "co-low", Unit::GramPerKilogram, co_low)],
            )
            .when(told),
            gas_given(
                "second-gas-low-of-charcoal-pot",
                &[
                    HEAT,
                    USEFUL,
                    constant("g", "charcoal-co-low", Unit::GramPerKilogram, || co_low("charcoal")),
                ],
            )
            .when(is_charcoal),
            gas_given(
                "second-gas-low-of-gas-hover",
                &[HEAT, USEFUL, constant("g", "lpg-co-low", Unit::GramPerKilogram, || co_low("lpg"))],
            )
            .when(is_gas),
        ],
    ),
    gas(
        "brooding.second_gas_high",
        &[
            gas_given(
                "second-gas-high-of-fuel",
                &[HEAT, USEFUL, of_fuel("g", "co-high", Unit::GramPerKilogram, co_high)],
            )
            .when(told),
            gas_given(
                "second-gas-high-of-charcoal-pot",
                &[
                    HEAT,
                    USEFUL,
                    constant("g", "charcoal-co-high", Unit::GramPerKilogram, || co_high("charcoal")),
                ],
            )
            .when(is_charcoal),
            gas_given(
                "second-gas-high-of-gas-hover",
                &[HEAT, USEFUL, constant("g", "lpg-co-high", Unit::GramPerKilogram, || co_high("lpg"))],
            )
            .when(is_gas),
        ],
    ),
];

const TOTAL: Input = figure("f", "brooding.second_fuel_total");
const SPARE: Input = figure("s", "brooding.second_spare");
const HEAT: Input = figure("q", "brooding.second_heat");
const USEFUL: Input = figure("j", "brooding.second_fuel_useful");
const CYLINDER: Input = field("c", "brooding.cylinder_kg");
const SACK: Input = field("c", "brooding.sack_kg");
const CYLINDER_PRICE: Input = field("p", "prices.gas_cylinder_each");
const SACK_PRICE: Input = field("p", "prices.charcoal_sack_each");

const SHARE: Input = figure("s", "brooding.second_share");

/// Heat, share, useful heat of a kilogram.
fn share_burnt(x: &[f64]) -> Option<f64> {
    Some(heat::fuel(x[0] * x[1], x[2]))
}

const fn stale(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "f * c", inputs, |x| Some(x[0] * x[1])).from("fuels", Status::FromMemory)
}

/// Carbon monoxide: so many decimals that the little a good burner gives off does not read as none.
const fn gas(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::KilogramPerHour, decimals: 5, rules }
}

/// Heat of all of them, useful heat of a kilogram, grams of gas from it: kilograms an hour at full heat.
const fn gas_given(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "3.6 * q / j * g / 1000", inputs, |x| Some(heat::fuel(x[0], x[1]) * x[2] / 1000.0))
        .from("fuels", Status::FromMemory)
}

const fn of_fuel(
    symbol: &'static str,
    point: &'static str,
    unit: Unit,
    read: fn(&str) -> Option<f64>,
) -> Input {
    Input { symbol, origin: Origin::TableBy { table: "fuels", point, unit, field: FUEL, read } }
}

fn told(answers: &Answers) -> bool {
    answers.choice(FUEL).is_some()
}

/// Whether there is any brooder of a second kind.
pub(crate) fn any(answers: &Answers) -> bool {
    answers.number(COUNT).is_some_and(|count| count > 0.0)
}

/// The fuel told, or that of the kind told; `None` where no such brooder stands.
pub(crate) fn fuel(answers: &Answers) -> Option<&'static str> {
    answers.choice(FUEL).or_else(|| super::fuel::of_kind(answers.choice(KIND)?)).filter(|_| any(answers))
}

/// The fuel that its kind says.
pub(crate) fn of_brooder(answers: &Answers) -> Option<&'static str> {
    super::fuel::of_kind(answers.choice(KIND)?)
}

fn is_charcoal(answers: &Answers) -> bool {
    fuel(answers) == Some("charcoal")
}

/// Whether it is gas in cylinders.
pub(crate) fn is_gas(answers: &Answers) -> bool {
    fuel(answers) == Some("lpg")
}
