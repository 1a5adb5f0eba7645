//! What feed costs when it is bought on the cheapest days, and what the days it is bought on add to its first price.

use model::buying::{Buying, Feed, Measure, Part};
use quantity::{Status, Unit};
use serde_json::Value;

use super::Family;
use crate::buying;
use crate::procedure::{Accuracy, Procedure, Simulated, Simulation};
use crate::purchases;
use crate::rule::{FigureSpec, Over, always, exact, field, figure, if_told, of_days};
use crate::series::{DayInput, DayOrigin, SeriesSpec, Until, Way};
use crate::verify::{CellFault, Row, Shape, TableOutputs, VerifyFault};

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: &[], sums: &[], series: SERIES, shapes: SHAPES };

/// The cheapest way to buy.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "cheapest-buying", source: "wagner-whitin", status: Status::Exact },
    inputs: &[
        figure("n", "feed.bags"),
        figure("f", "feed.bags_cost"),
        figure("k", "feed.keeps"),
        field("h", "feed.on_hand_before_d"),
        field("c", "feed.on_hand_days_d"),
        field("a", "feed.ahead_d"),
        if_told("e", "costs.feed_delivery_each"),
        if_told("x", "prices.feed_rise_percent"),
        if_told("r", "cash.interest_percent"),
        if_told("l", "cash.credit_limit"),
        if_told("b", "feed.other_bag_kg"),
    ],
    figures: &[
        FigureSpec { id: "purchases.cost", unit: Unit::Money, decimals: 2, rules: &[] },
        FigureSpec { id: "purchases.lower_bound", unit: Unit::Money, decimals: 2, rules: &[] },
    ],
    applies: always,
    run: |answers, _, drawn| {
        let cheapest = buying::of_plan(answers).ok()?;
        drawn.deliveries(|| Some(cheapest.deliveries()));
        let cost = cheapest.cost.total();
        let gap = Accuracy::Bound(cost - cheapest.lower_bound);
        let bound: Simulated = (cheapest.lower_bound, None, Accuracy::Bound(0.0));
        Some(vec![Some((cost, cheapest.band, gap)), Some(bound)])
    },
};

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "feed.rise_and_deliveries",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "feed-rise-and-deliveries",
            "p - f",
            &[of_days("p", Over::Sum, "feed.paid_by_day"), figure("f", "feed.bags_cost")],
            |x| Some(x[0] - x[1]),
        )
        // What is paid strays with the bags, so that what is added to them does not stray as they do.
        .between(|_| None)],
    },
    FigureSpec {
        id: "feed.order_by",
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact(
            "order-by",
            "d - l",
            &[figure("d", "feed.first_delivery"), field("l", "feed.lead_d")],
            |x| Some(x[0] - x[1]),
        )],
    },
];

static SERIES: &[SeriesSpec] = &[SeriesSpec {
    id: "feed.paid_by_day",
    unit: Unit::Money,
    decimals: 2,
    first_day: purchases::FIRST_DAY,
    until: Until::Sale,
    way: Way::Rules(&[exact(
        "feed-paid-by-day",
        "s",
        &[DayInput {
            symbol: "s",
            origin: DayOrigin::Listed {
                list: "feed-paid",
                unit: Unit::Money,
                needs: FEED_PAID,
                make: purchases::paid_for_feed,
            },
        }],
        |x| Some(x[0]),
    )]),
}];

/// The figures that what is paid for feed is made from.
const FEED_PAID: &[&str] = &[
    "feed.bags_cost",
    "feed.bags_starter",
    "feed.bags_grower",
    "feed.bags_finisher",
    "feed.bags_last",
    "feed.total",
    "feed.keeps",
    "feed.grower_price",
    "feed.last_price",
    "sale.last_age",
];

/// Purchases of one thing with a shelf life: rows of one plan hang together.
static SHAPES: &[Shape] = &[Shape {
    name: "lot-sizing",
    inputs: &[
        "instance",
        "period",
        "demand_bags",
        "order_cost",
        "price_per_bag",
        "holding_cost_per_bag_period",
        "shelf_life_periods",
        "storage_cap_bags",
        "first_stock_bags",
    ],
    outputs: &["optimal_order_bags", "optimal_cost"],
    work_out: |rows| {
        let instances = rows.chunk_by(|one, other| one.cells[0].text == other.cells[0].text);
        Ok(instances.map(lot_sizes).collect::<Result<Vec<_>, _>>()?.concat())
    },
}];

/// The bags of each row and the cost of all; both empty where nothing satisfies the conditions.
fn lot_sizes(rows: &[Row]) -> TableOutputs {
    let buying = lot_sizing(rows)?;
    let best = buying.best().ok();
    let bags = |period: usize| -> usize {
        let parts = best.iter().flat_map(|best| &best.parts);
        parts.filter(|part: &&Part| part.period == period).map(|part| part.bags).sum()
    };
    let known = |value: Value| if best.is_some() { value } else { Value::Null };
    let cost = best.as_ref().map_or(Value::Null, |best| Value::from(best.cost.total()));
    Ok((0..rows.len()).map(|period| vec![known(Value::from(bags(period))), cost.clone()]).collect())
}

fn lot_sizing(rows: &[Row]) -> Result<Buying, VerifyFault> {
    let number = |row: &Row, at: usize, high: f64| {
        row.cells[at]
            .number(0.0, high)
            .map_err(|fault: CellFault| VerifyFault::Cell { row: row.number, fault })
    };
    let column =
        |at: usize, high: f64| rows.iter().map(|row| number(row, at, high)).collect::<Result<Vec<f64>, _>>();
    let of_all = |at: usize, high: f64| number(&rows[0], at, high);
    let mut bags: Vec<Measure> = Vec::new();
    for (period, demand) in column(2, 10_000.0)?.into_iter().enumerate() {
        bags.extend(vec![Measure { needed: period, finished: period }; demand as usize]);
    }
    let in_hand = (of_all(8, 10_000.0)? as usize).min(bags.len());
    let to_buy = bags.split_off(in_hand);
    Ok(Buying {
        feeds: vec![Feed::in_bags(to_buy, column(4, 1e9)?)],
        fee: column(3, 1e9)?,
        holding: of_all(5, 1e9)?,
        keeps: of_all(6, 10_000.0)? as usize,
        room: Some(of_all(7, 100_000.0)? as usize),
        stock: bags.into_iter().map(|bag| bag.finished).collect(),
        credit: None,
    })
}
