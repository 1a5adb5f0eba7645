//! What the batch costs, what it brings, and when the money is there.

use quantity::{Answers, Status, Unit};

use super::Family;
use crate::purchases;
use crate::rule::{FigureSpec, Input, Origin, Over, Rule, exact, field, figure, if_known, if_told, of_days};
use crate::series::{DayInput, DayOrigin, First, SeriesSpec, Until, Way, every_day, same};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: SERIES, shapes: &[] };

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

fn share(x: &[f64]) -> Option<f64> {
    model::budget::per(100.0 * x[0], x[1])
}

fn each(x: &[f64]) -> Option<f64> {
    model::budget::per(x[0], x[1])
}

/// Whether birds are sold by the bird, whatever they weigh.
pub fn by_head(answers: &Answers) -> bool {
    answers.number("prices.sale_per_bird").is_some() && answers.number("prices.sale_per_kg").is_none()
}

/// Whether birds bring anything: at a price of 0 no feed pays.
pub(crate) fn sells_for_something(answers: &Answers) -> bool {
    let key = if by_head(answers) { "prices.sale_per_bird" } else { "prices.sale_per_kg" };
    answers.number(key) != Some(0.0)
}

const fn money(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Money, decimals: 2, rules }
}

const fn percent(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Percent, decimals: 0, rules }
}

const COST: Input = figure("C", "money.cost_total");
const BIRDS: Input = figure("n", "sale.birds");
const LITTER: Input = if_told("l", "prices.litter_sold");
const KG: Input = figure("K", "sale.live_kg");
const PRICE: Input = figure("p", "money.price_per_kg");

static FIGURES: &[FigureSpec] = &[
    money(
        "money.chicks",
        &[exact(
            "chicks-cost",
            "c * p",
            &[field("c", "batch.chicks"), field("p", "prices.chick_each")],
            |x| Some(x[0] * x[1]),
        )],
    ),
    money(
        "money.other",
        &[exact(
            "other-costs",
            "v + m + l + t + e + o + h",
            &[
                if_told("v", "costs.vaccines"),
                if_told("m", "costs.medicine"),
                if_told("l", "costs.labour"),
                if_told("t", "costs.transport"),
                if_told("e", "costs.power"),
                if_told("o", "costs.other"),
                if_told("h", "costs.house"),
            ],
            |x| Some(x.iter().sum()),
        )],
    ),
    money(
        "money.equipment",
        &[exact(
            "equipment-to-buy",
            "f + d + F + D + b",
            &[
                if_known("f", "space.chick_feeders_cost"),
                if_known("d", "space.chick_drinkers_cost"),
                if_known("F", "space.feeders_cost"),
                if_known("D", "space.drinkers_cost"),
                if_known("b", "guard.brooders_cost"),
            ],
            |x| Some(x.iter().sum()),
        )],
    ),
    money(
        "money.cost_total",
        &[exact(
            "cost-total",
            "c + f + l + d + g + e + b + s + k + r + o + w + i",
            &[
                figure("c", "money.chicks"),
                figure("f", "feed.cost"),
                if_known("l", "litter.cost"),
                if_known("d", "disinfectant.cost"),
                if_known("g", "guard.cost"),
                figure("e", "money.equipment"),
                if_known("b", "brooding.fuel_cost"),
                if_known("s", "brooding.spare_cost"),
                if_known("k", "brooding.second_fuel_cost"),
                if_known("r", "brooding.second_spare_cost"),
                figure("o", "money.other"),
                if_told("w", "costs.own_labour"),
                if_known("i", "money.interest"),
            ],
            |x| Some(x.iter().sum()),
        )],
    ),
    money(
        "money.cost_per_chick",
        &[exact("cost-per-chick", "C / c", &[COST, field("c", "batch.chicks")], each)],
    ),
    money("money.cost_per_bird", &[exact("cost-per-bird", "C / n", &[COST, BIRDS], each)]),
    money("money.cost_per_kg", &[exact("cost-per-kg", "C / K", &[COST, KG], each).together()]),
    money(
        "money.break_even_price",
        &[exact("break-even-price-planned", "(C - l) / K", &[COST, LITTER, KG], |x| {
            model::budget::break_even_price(x[0] - x[1], x[2], 0.0)
        })
        .together()],
    ),
    money(
        "money.break_even_price_cash",
        &[exact(
            "break-even-price-cash",
            "(C - l - w) / K",
            &[COST, LITTER, if_told("w", "costs.own_labour"), KG],
            |x| model::budget::cash_break_even_price(x[0] - x[1], 0.0, x[2], x[3]),
        )
        .together()],
    ),
    money(
        "money.break_even_price_bird",
        &[exact("break-even-price-bird", "(C - l) / n", &[COST, LITTER, BIRDS], |x| {
            model::budget::break_even_price(x[0] - x[1], x[2], 0.0)
        })],
    ),
    money(
        "money.price_per_kg",
        &[
            exact(
                "price-of-a-bird-per-kg",
                "b / w",
                &[field("b", "prices.sale_per_bird"), figure("w", "sale.mean_weight")],
                each,
            )
            .when(by_head),
            exact("price-per-kg", "p", &[field("p", "prices.sale_per_kg")], as_is)
                .from("grower", Status::Told),
        ],
    ),
    FigureSpec {
        id: "money.break_even_weight",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[exact(
            "break-even-weight-planned",
            "(C - l) / (p * n)",
            &[COST, LITTER, PRICE, BIRDS],
            |x| model::budget::break_even_weight_kg(x[0] - x[1], x[2], x[3]),
        )],
    },
    FigureSpec {
        id: "money.break_even_fcr",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "break-even-fcr-planned",
            "(p - (C - l - f) / K) / (f / F)",
            &[PRICE, COST, figure("f", "feed.cost"), KG, figure("F", "feed.total"), LITTER],
            |x| {
                let other_per_kg = model::budget::per(x[1] - x[5] - x[2], x[3])?;
                model::budget::break_even_fcr(x[0], other_per_kg, model::budget::per(x[2], x[4])?)
            },
        )
        .when(sells_for_something)
        .together()],
    },
    money(
        "money.sales",
        &[
            exact("sales-by-the-bird", "n * b", &[BIRDS, field("b", "prices.sale_per_bird")], |x| {
                Some(x[0] * x[1])
            })
            .when(by_head),
            exact("sales-by-weight", "K * p", &[KG, field("p", "prices.sale_per_kg")], |x| Some(x[0] * x[1])),
        ],
    ),
    money(
        "money.income",
        &[exact("income", "S + l", &[figure("S", "money.sales"), if_told("l", "prices.litter_sold")], |x| {
            Some(x[0] + x[1])
        })],
    ),
    money(
        "money.profit",
        &[exact("profit-planned", "I - C", &[figure("I", "money.income"), COST], |x| Some(x[0] - x[1]))
            .together()],
    ),
    money(
        "money.profit_with_own_work",
        &[exact(
            "profit-with-own-work",
            "P + w",
            &[figure("P", "money.profit"), if_told("w", "costs.own_labour")],
            |x| Some(x[0] + x[1]),
        )],
    ),
    money(
        "money.profit_per_m2",
        &[exact(
            "profit-per-m2",
            "P / A",
            &[figure("P", "money.profit"), figure("A", "space.floor_area")],
            each,
        )],
    ),
    percent(
        "money.feed_share",
        &[exact("feed-share", "100 * f / C", &[figure("f", "feed.cost"), COST], share).together()],
    ),
    percent(
        "money.chick_share",
        &[exact("chick-share", "100 * c / C", &[figure("c", "money.chicks"), COST], share).together()],
    ),
    money(
        "money.bird_a_day",
        &[exact(
            "a-bird-another-day",
            "k * f / 1000",
            &[
                Input {
                    symbol: "k",
                    origin: Origin::OnDay { series: "feed.per_bird_by_day", day: "sale.last_age" },
                },
                figure("f", "feed.cost_per_kg"),
            ],
            |x| Some(x[0] * x[1] / 1000.0),
        )],
    ),
    money(
        "money.cash_low_point",
        &[exact("cash-low-point", "m", &[of_days("m", Over::Least, "cash.by_day")], as_is)],
    ),
    FigureSpec {
        id: "money.cash_low_day",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact("cash-low-day", "d", &[of_days("d", Over::DayOfLeast, "cash.by_day")], as_is)],
    },
    money(
        "money.cash_short",
        &[exact("cash-short", "max(0, 0 - m)", &[figure("m", "money.cash_low_point")], |x| {
            Some((-x[0]).max(0.0))
        })],
    ),
    money(
        "money.credit",
        &[exact("credit", "l", &[field("l", "cash.credit_limit")], as_is).from("grower", Status::Told)],
    ),
    money(
        "money.beyond_credit",
        &[exact(
            "beyond-credit",
            "max(0, s - l)",
            &[figure("s", "money.cash_short"), figure("l", "money.credit")],
            |x| Some((x[0] - x[1]).max(0.0)),
        )],
    ),
    FigureSpec {
        id: "money.first_day_beyond_credit",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "first-day-beyond-credit",
            "d",
            &[Input {
                symbol: "d",
                origin: Origin::FirstDayOver { series: "cash.debt_by_day", limit: Some("money.credit") },
            }],
            as_is,
        )],
    },
    FigureSpec {
        id: "money.first_day_short",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "first-day-short",
            "d",
            &[Input {
                symbol: "d",
                origin: Origin::FirstDayOver { series: "cash.debt_by_day", limit: None },
            }],
            as_is,
        )],
    },
    money(
        "money.cash_at_end",
        &[exact(
            "cash-at-end",
            "m",
            &[Input { symbol: "m", origin: Origin::OnDay { series: "cash.by_day", day: "sale.last_age" } }],
            as_is,
        )],
    ),
    money(
        "money.interest",
        &[exact(
            "interest",
            "D * r / 100 / 365",
            &[of_days("D", Over::Sum, "cash.debt_by_day"), field("r", "cash.interest_percent")],
            |x| Some(model::budget::simple_interest(x[0], x[1] / 100.0)),
        )],
    ),
    money(
        "money.deposit",
        &[exact(
            "chick-deposit",
            "C * d / 100",
            &[figure("C", "money.chicks"), field("d", "batch.deposit_percent")],
            |x| Some(x[0] * x[1] / 100.0),
        )],
    ),
];

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "cash.spent_by_day",
        unit: Unit::Money,
        decimals: 2,
        first_day: purchases::FIRST_DAY,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "spent-by-day",
            "s",
            &[DayInput {
                symbol: "s",
                origin: DayOrigin::Listed {
                    list: "purchases",
                    unit: Unit::Money,
                    needs: purchases::NEEDS,
                    make: purchases::spent,
                },
            }],
            as_is,
        )]),
    },
    SeriesSpec {
        id: "cash.received_by_day",
        unit: Unit::Money,
        decimals: 2,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[
            exact(
                "received-by-the-bird",
                "n * b",
                &[same("n", "sale.birds_by_day"), every_day("b", "prices.sale_per_bird")],
                |x| Some(x[0] * x[1]),
            )
            .when(by_head),
            exact(
                "received-by-weight",
                "k * p",
                &[same("k", "sale.kg_by_day"), every_day("p", "prices.sale_per_kg")],
                |x| Some(x[0] * x[1]),
            ),
        ]),
    },
    SeriesSpec {
        id: "cash.by_day",
        unit: Unit::Money,
        decimals: 2,
        first_day: purchases::FIRST_DAY,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "cash-by-day",
            "m - s + r",
            &[
                DayInput {
                    symbol: "m",
                    origin: DayOrigin::Before { series: "cash.by_day", first: First::Field("cash.at_start") },
                },
                same("s", "cash.spent_by_day"),
                DayInput { symbol: "r", origin: DayOrigin::SameIfAny("cash.received_by_day") },
            ],
            |x| Some(x[0] - x[1] + x[2]),
        )]),
    },
    SeriesSpec {
        id: "cash.debt_by_day",
        unit: Unit::Money,
        decimals: 2,
        first_day: purchases::FIRST_DAY,
        until: Until::Sale,
        way: Way::Rules(&[exact("debt-by-day", "max(0, 0 - m)", &[same("m", "cash.by_day")], |x| {
            Some((-x[0]).max(0.0))
        })]),
    },
];
