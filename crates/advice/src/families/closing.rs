//! A batch closed: what it came to in birds, kilograms and money, as its book has it.

use model::performance;
use quantity::fields::{count, field as asked, number};
use quantity::{Answers, Field, Mass, Need, Status, Unit};

use super::performance::{NEAR_1500_G, NEAR_2500_G};
use super::{Family, course};
use crate::rule::{FigureSpec, Input, Rule, exact, field, figure, if_told};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: &[], series: &[], shapes: &[] };

/// Birds sold.
pub(crate) const SOLD: &str = "account.birds_sold";
/// Birds that left alive and were not sold.
pub(crate) const TAKEN: &str = "account.birds_taken";
/// Birds of the sales that were weighed, and their kilograms.
pub(crate) const WEIGHED_BIRDS: &str = "account.birds_weighed";
pub(crate) const WEIGHED_KG: &str = "account.live_weighed_kg";
/// Days of age of all birds that left alive, added up bird by bird.
pub(crate) const BIRD_DAYS: &str = "account.bird_days_d";
/// Day of age of the last sale.
pub(crate) const LAST_AGE: &str = "account.last_sale_d";
/// What birds and litter brought.
pub(crate) const INCOME_BIRDS: &str = "account.income_birds";
pub(crate) const INCOME_LITTER: &str = "account.income_litter";
/// What is still to be paid, and to be received.
pub(crate) const OWED: &str = "account.owed";
pub(crate) const OWING: &str = "account.owing";
/// What was spent, in the order of [`crate::account::Head::ALL`].
pub(crate) const SPENT: [&str; 15] = [
    "account.spent_chicks",
    "account.spent_feed",
    "account.spent_litter",
    "account.spent_fuel",
    "account.spent_disinfectant",
    "account.spent_vaccines",
    "account.spent_medicine",
    "account.spent_equipment",
    "account.spent_labour",
    "account.spent_own_labour",
    "account.spent_transport",
    "account.spent_power",
    "account.spent_house",
    "account.spent_interest",
    "account.spent_other",
];

const fn money_field(key: &'static str) -> Field {
    asked(key, number(Unit::Money, -1e12, 1e12), Need::Optional)
}

static FIELDS: &[Field] = &[
    asked(SOLD, count(Unit::Birds, 1.0, 60_000.0), Need::Optional),
    asked(TAKEN, count(Unit::Birds, 0.0, 60_000.0), Need::Optional),
    asked(WEIGHED_BIRDS, count(Unit::Birds, 1.0, 60_000.0), Need::Optional),
    asked(WEIGHED_KG, number(Unit::Kilogram, 0.0, 1e6), Need::Optional),
    asked(BIRD_DAYS, number(Unit::Day, 0.0, 1e8), Need::Optional),
    asked(LAST_AGE, count(Unit::Day, 0.0, 200.0), Need::Optional),
    money_field(INCOME_BIRDS),
    money_field(INCOME_LITTER),
    money_field(OWED),
    money_field(OWING),
    money_field(SPENT[0]),
    money_field(SPENT[1]),
    money_field(SPENT[2]),
    money_field(SPENT[3]),
    money_field(SPENT[4]),
    money_field(SPENT[5]),
    money_field(SPENT[6]),
    money_field(SPENT[7]),
    money_field(SPENT[8]),
    money_field(SPENT[9]),
    money_field(SPENT[10]),
    money_field(SPENT[11]),
    money_field(SPENT[12]),
    money_field(SPENT[13]),
    money_field(SPENT[14]),
];

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

fn each(x: &[f64]) -> Option<f64> {
    model::budget::per(x[0], x[1])
}

const fn money(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Money, decimals: 2, rules }
}

const COST: Input = figure("C", "closing.cost");
const PROFIT: Input = figure("P", "closing.profit");
const CORRECTED: &[Input] = &[figure("f", "closing.fcr"), figure("w", "closing.mean_weight")];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "closing.birds_out",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact("birds-left-alive", "n + h", &[field("n", SOLD), if_told("h", TAKEN)], |x| {
            Some(x[0] + x[1])
        })],
    },
    FigureSpec {
        id: "closing.mean_weight",
        unit: Unit::Kilogram,
        decimals: 3,
        rules: &[
            exact(
                "mean-weight-of-sales",
                "K / m",
                &[field("K", WEIGHED_KG), field("m", WEIGHED_BIRDS)],
                each,
            )
            .when(|answers| answers.number(WEIGHED_BIRDS).is_some_and(|birds| birds > 0.0)),
            exact("mean-weight-as-last-weighed", "w / 1000", &[figure("w", "growing.weight")], |x| {
                Some(x[0] / 1000.0)
            }),
        ],
    },
    FigureSpec {
        id: "closing.sold_kg",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact(
            "kilograms-sold",
            "K + (n - m) * w",
            &[
                if_told("K", WEIGHED_KG),
                field("n", SOLD),
                if_told("m", WEIGHED_BIRDS),
                figure("w", "closing.mean_weight"),
            ],
            |x| Some(x[0] + (x[1] - x[2]) * x[3]),
        )
        .together()],
    },
    FigureSpec {
        id: "closing.live_kg",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact(
            "kilograms-left-alive",
            "S + h * w",
            &[figure("S", "closing.sold_kg"), if_told("h", TAKEN), figure("w", "closing.mean_weight")],
            |x| Some(x[0] + x[1] * x[2]),
        )
        .together()],
    },
    FigureSpec {
        id: "closing.age",
        unit: Unit::Day,
        decimals: 1,
        rules: &[exact(
            "mean-age-at-sale",
            "D / n",
            &[field("D", BIRD_DAYS), figure("n", "closing.birds_out")],
            each,
        )
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "closing.livability",
        unit: Unit::Percent,
        decimals: 1,
        rules: &[exact(
            "survival-closed",
            "100 * n / N",
            &[figure("n", "closing.birds_out"), field("N", super::growing::PLACED)],
            |x| performance::livability_percent(x[0], x[1]),
        )
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "closing.fcr",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact(
            "fcr-closed",
            "F / L",
            &[figure("F", "growing.feed"), figure("L", "closing.live_kg")],
            |x| performance::feed_conversion(Mass::kilograms(x[0]), Mass::kilograms(x[1])),
        )
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "closing.fcr_at_2500",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact("fcr-closed-at-2500", "f - 0.02 * (w * 1000 - 2500) / 100", CORRECTED, |x| {
            Some(performance::fcr_at_weight(x[0], Mass::kilograms(x[1]), Mass::grams(2_500.0), 0.02))
        })
        .from("maertens-2016", Status::Published)
        .when(|answers| weighed(answers, NEAR_2500_G))],
    },
    FigureSpec {
        id: "closing.fcr_at_1500",
        unit: Unit::One,
        decimals: 3,
        rules: &[exact("fcr-closed-at-1500", "f - 0.04 * (w * 1000 - 1500) / 100", CORRECTED, |x| {
            Some(performance::fcr_at_weight(x[0], Mass::kilograms(x[1]), Mass::grams(1_500.0), 0.04))
        })
        .from("fcr-correction-old", Status::Published)
        .when(|answers| weighed(answers, NEAR_1500_G))],
    },
    FigureSpec {
        id: "closing.daily_gain",
        unit: Unit::Gram,
        decimals: 1,
        rules: &[
            exact(
                "gain-a-day-closed",
                "(w * 1000 - c) / max(1, d)",
                &[
                    figure("w", "closing.mean_weight"),
                    figure("c", "growing.arrival_weight"),
                    figure("d", "closing.age"),
                ],
                |x| gain_g(x[0], x[1], x[2]),
            )
            .when(arrival_is_known),
            exact(
                "gain-a-day-whole",
                "w * 1000 / max(1, d)",
                &[figure("w", "closing.mean_weight"), figure("d", "closing.age")],
                |x| gain_g(x[0], 0.0, x[1]),
            ),
        ],
    },
    FigureSpec {
        id: "closing.epef",
        unit: Unit::One,
        decimals: 0,
        rules: &[exact(
            "epef-closed",
            "s * w * 100 / (max(1, d) * f)",
            &[
                figure("s", "closing.livability"),
                figure("w", "closing.mean_weight"),
                figure("d", "closing.age"),
                figure("f", "closing.fcr"),
            ],
            |x| performance::epef(x[0], Mass::kilograms(x[1]), x[2].max(1.0), x[3]),
        )
        .from("shane-pef", Status::Published)
        .together()],
    },
    money(
        "closing.income",
        &[exact(
            "income-of-the-batch",
            "b + l",
            &[if_told("b", INCOME_BIRDS), if_told("l", INCOME_LITTER)],
            |x| Some(x[0] + x[1]),
        )
        .when(|answers| answers.number(INCOME_BIRDS).is_some())],
    ),
    money(
        "closing.cost",
        &[exact(
            "cost-of-the-batch",
            "a + b + c + d + e + f + g + h + i + j + k + l + m + n + o",
            &[
                if_told("a", SPENT[0]),
                if_told("b", SPENT[1]),
                if_told("c", SPENT[2]),
                if_told("d", SPENT[3]),
                if_told("e", SPENT[4]),
                if_told("f", SPENT[5]),
                if_told("g", SPENT[6]),
                if_told("h", SPENT[7]),
                if_told("i", SPENT[8]),
                if_told("j", SPENT[9]),
                if_told("k", SPENT[10]),
                if_told("l", SPENT[11]),
                if_told("m", SPENT[12]),
                if_told("n", SPENT[13]),
                if_told("o", SPENT[14]),
            ],
            |x| Some(x.iter().sum()),
        )
        .when(|answers| SPENT.iter().any(|key| answers.number(key).is_some()))],
    ),
    money(
        "closing.profit",
        &[exact("profit-of-the-batch", "I - C", &[figure("I", "closing.income"), COST], |x| {
            Some(x[0] - x[1])
        })],
    ),
    money(
        "closing.profit_with_own_work",
        &[exact("profit-if-own-work-is-free", "P + w", &[PROFIT, if_told("w", SPENT[9])], |x| {
            Some(x[0] + x[1])
        })
        .when(|answers| answers.number(SPENT[9]).is_some_and(|own| own > 0.0))],
    ),
    money(
        "closing.price_per_kg",
        &[exact("price-reached", "b / S", &[field("b", INCOME_BIRDS), figure("S", "closing.sold_kg")], each)],
    ),
    money(
        "closing.cost_per_kg",
        &[exact("cost-a-kilogram", "C / S", &[COST, figure("S", "closing.sold_kg")], each).together()],
    ),
    money("closing.cost_per_bird", &[exact("cost-a-bird", "C / n", &[COST, field("n", SOLD)], each)]),
    money("closing.profit_per_bird", &[exact("profit-a-bird", "P / n", &[PROFIT, field("n", SOLD)], each)]),
    money(
        "closing.profit_per_kg",
        &[exact("profit-a-kilogram", "P / S", &[PROFIT, figure("S", "closing.sold_kg")], each).together()],
    ),
    money(
        "closing.profit_per_m2",
        &[exact("profit-a-square-metre", "P / A", &[PROFIT, figure("A", "space.floor_area")], each)],
    ),
    FigureSpec {
        id: "closing.house_days",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "days-of-the-house",
            "d + 1 + e",
            &[field("d", LAST_AGE), field("e", "house.downtime_d")],
            |x| Some(x[0] + 1.0 + x[1]),
        )],
    },
    money(
        "closing.profit_per_house_day",
        &[exact("profit-a-house-day", "P / max(1, h)", &[PROFIT, figure("h", "closing.house_days")], |x| {
            each(&[x[0], x[1].max(1.0)])
        })],
    ),
    money("closing.owed", &[exact("still-to-pay", "o", &[field("o", OWED)], as_is)]),
    money("closing.owing", &[exact("still-to-receive", "o", &[field("o", OWING)], as_is)]),
];

fn gain_g(weight_kg: f64, chick_g: f64, age_d: f64) -> Option<f64> {
    let gain = performance::daily_gain(Mass::kilograms(weight_kg), Mass::grams(chick_g), age_d.max(1.0))?;
    Some(gain.in_grams())
}

/// Whether the birds sold weighed so much: a correction far from the weight it was made for flatters heavy birds.
fn weighed(answers: &Answers, near: std::ops::RangeInclusive<f64>) -> bool {
    let weight = answers.number(WEIGHED_KG).zip(answers.number(WEIGHED_BIRDS));
    weight.is_some_and(|(kilograms, birds)| near.contains(&(1000.0 * kilograms / birds)))
}

fn arrival_is_known(answers: &Answers) -> bool {
    let known = |key: &str| answers.number(key).is_some();
    known(course::ARRIVAL) || (known(course::EMPTY_BOX) && known(course::IN_A_BOX))
}
