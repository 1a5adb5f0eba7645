//! Feed by day, by phase and by bag: how much, opened when, eaten before it is too old.

use quantity::{Answers, DayOfAge, Mass, Status, Unit};
use reference::growth::Standard;

use super::Family;
use super::growth::{OWN_CURVE, curve, has_own, heat_trial, trial};
use super::space::standard;
use crate::rule::{
    FigureSpec, Input, Origin, Over, Rule, exact, field, figure, if_known, of_days, sum_of_days,
};
use crate::series::{DayInput, DayOrigin, First, SeriesSpec, Until, Way, age, every_day, given, same};
use crate::store_room;
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: SUMS, series: SERIES, shapes: &[] };

static SUMS: &[Sum] = &[Sum {
    name: "feed",
    inputs: &[
        asks("chicks", "batch.chicks"),
        asks("sale_age_d", "batch.sale_age_d"),
        may_ask("standard", "batch.standard"),
        may_ask("own_curve", OWN_CURVE),
        may_ask("expected_losses_percent", "batch.expected_losses_percent"),
        may_ask("phases", "feed.phases"),
        asks("bag_kg", "feed.bag_kg"),
        may_ask("starter_bag_price", "prices.starter_bag_each"),
        may_ask("grower_bag_price", "prices.grower_bag_each"),
        may_ask("finisher_bag_price", "prices.finisher_bag_each"),
    ],
    figures: &[
        "feed.total",
        "feed.bags",
        "feed.bags_starter",
        "feed.bags_grower",
        "feed.bags_finisher",
        "feed.per_bird",
        "feed.bags_per_hundred",
        "feed.conversion",
        "feed.cost",
    ],
    caution: None,
}];

/// Whether the feed is sold in this many kinds.
fn phases(answers: &Answers, wanted: &str) -> bool {
    answers.choice("feed.phases") == Some(wanted)
}

fn two(answers: &Answers) -> bool {
    phases(answers, "starter-finisher")
}

fn four(answers: &Answers) -> bool {
    phases(answers, "four")
}

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

fn told(key: &'static str) -> impl Fn(&Answers) -> bool {
    move |answers| answers.number(key).is_some()
}

const LAST: &[Input] = &[figure("l", "sale.last_age")];

/// The last day of a phase, but never after the last bird is sold.
const fn until(name: &'static str, formula: &'static str, compute: fn(&[f64]) -> Option<f64>) -> Rule {
    exact(name, formula, LAST, compute).from("common-practice", Status::CommonPractice)
}

const fn until_told(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "min(u, l)", inputs, |x| Some(x[0].min(x[1]))).from("grower", Status::Told)
}

const fn bags(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "ceil(F / b)", inputs, |x| {
        Some(model::feed::bags(Mass::kilograms(x[0]), Mass::kilograms(x[1])))
    })
}

const fn opens(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "p + u + 1", inputs, |x| Some(x[0] + x[1] + 1.0))
}

const fn kg(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Kilogram, decimals: 0, rules }
}

const fn pieces(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Pieces, decimals: 0, rules }
}

const fn day(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Day, decimals: 0, rules }
}

const fn date(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Date, decimals: 0, rules }
}

const fn money(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Money, decimals: 2, rules }
}

const BAG: Input = field("b", "feed.bag_kg");

const BAGS_BY_PHASE: &[Input] = &[
    figure("s", "feed.bags_starter"),
    figure("g", "feed.bags_grower"),
    figure("f", "feed.bags_finisher"),
    figure("l", "feed.bags_last"),
];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: HEAT_LOST,
        unit: Unit::Percent,
        decimals: 0,
        rules: &[exact(
            "feed-lost-in-heat",
            "50 * ((1 - F / f) / (c - k) * max(0, t - k) + 0.0125 * max(0, t - 25))",
            &[
                heat_trial("f", "feed_cool_g", Unit::Gram, || trial("feed_cool_g")),
                heat_trial("F", "feed_warm_g", Unit::Gram, || trial("feed_warm_g")),
                heat_trial("k", "cool_c", Unit::Celsius, || trial("cool_c")),
                heat_trial("c", "warm_c", Unit::Celsius, || trial("warm_c")),
                field("t", "weather.mean_c"),
            ],
            |x| {
                let (trial, memory) = lost_by(x, 25.0, 0.0125);
                Some((trial + memory) / 2.0)
            },
        )
        .when(super::growth::slowed_by_heat)
        .from("feed-in-heat", Status::FromMemory)
        .between(|x| {
            let (trial, mild) = lost_by(x, 26.0, 0.01);
            let (_, strong) = lost_by(x, 24.0, 0.015);
            Some((mild.min(trial), trial.max(strong)))
        })],
    },
    kg("feed.total", &[exact("feed-total", "F", &[of_days("F", Over::Sum, "feed.by_day")], as_is)]),
    FigureSpec {
        id: "feed.per_bird",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[exact(
            "feed-per-bird",
            "F / n",
            &[figure("F", "feed.total"), figure("n", "sale.birds")],
            |x| (x[1] > 0.0).then(|| x[0] / x[1]),
        )],
    },
    FigureSpec {
        id: "feed.conversion",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "feed-conversion-planned",
            "F / K",
            &[figure("F", "feed.total"), figure("K", "sale.live_kg")],
            |x| (x[1] > 0.0).then(|| x[0] / x[1]),
        )
        .together()],
    },
    day(
        "feed.starter_until",
        &[
            until_told(
                "starter-until-told",
                &[field("u", "feed.starter_until_d"), figure("l", "sale.last_age")],
            )
            .when(|answers| told("feed.starter_until_d")(answers)),
            until("starter-until-two", "min(21, l)", |x| Some(x[0].min(21.0))).when(two),
            until("starter-until-usual", "min(10, l)", |x| Some(x[0].min(10.0))),
        ],
    ),
    day(
        "feed.grower_until",
        &[
            exact("grower-none", "s", &[figure("s", "feed.starter_until")], as_is).when(two),
            until_told(
                "grower-until-told",
                &[field("u", "feed.grower_until_d"), figure("l", "sale.last_age")],
            )
            .when(|answers| told("feed.grower_until_d")(answers)),
            until("grower-until-usual", "min(24, l)", |x| Some(x[0].min(24.0))),
        ],
    ),
    day(
        "feed.finisher_until",
        &[
            until_told(
                "finisher-until-told",
                &[field("u", "feed.finisher_until_d"), figure("l", "sale.last_age")],
            )
            .when(|answers| four(answers) && told("feed.finisher_until_d")(answers)),
            until("finisher-until-usual", "min(35, l)", |x| Some(x[0].min(35.0))).when(four),
            exact("finisher-to-the-end", "l", &[figure("l", "sale.last_age")], as_is),
        ],
    ),
    kg(
        "feed.starter",
        &[exact("feed-starter", "F", &[sum_of_days("F", BY_DAY, None, "feed.starter_until")], as_is)],
    ),
    kg(
        "feed.grower",
        &[exact(
            "feed-grower",
            "F",
            &[sum_of_days("F", BY_DAY, Some("feed.starter_until"), "feed.grower_until")],
            as_is,
        )],
    ),
    kg(
        "feed.finisher",
        &[exact(
            "feed-finisher",
            "F",
            &[sum_of_days("F", BY_DAY, Some("feed.grower_until"), "feed.finisher_until")],
            as_is,
        )],
    ),
    kg(
        "feed.last",
        &[exact(
            "feed-last",
            "F",
            &[sum_of_days("F", BY_DAY, Some("feed.finisher_until"), "sale.last_age")],
            as_is,
        )],
    ),
    pieces("feed.bags_starter", &[bags("bags-starter", &[figure("F", "feed.starter"), BAG])]),
    pieces("feed.bags_grower", &[bags("bags-grower", &[figure("F", "feed.grower"), BAG])]),
    pieces("feed.bags_finisher", &[bags("bags-finisher", &[figure("F", "feed.finisher"), BAG])]),
    pieces("feed.bags_last", &[bags("bags-last", &[figure("F", "feed.last"), BAG])]),
    pieces(
        "feed.bags",
        &[
            exact("bags-all-of-first-size", "s + g + f + l", BAGS_BY_PHASE, |x| Some(x.iter().sum()))
                .when(store_room::in_two_sizes),
            exact("bags-all", "s + g + f + l", BAGS_BY_PHASE, |x| Some(x.iter().sum())),
        ],
    ),
    kg(
        "feed.left_over",
        &[
            exact("feed-left-over-of-sizes", "s", &[of_days("s", Over::Last, "feed.in_store")], as_is)
                .when(store_room::in_two_sizes)
                .between(|_| None),
            exact(
                "feed-left-over",
                "n * b - F",
                &[figure("n", "feed.bags"), BAG, figure("F", "feed.total")],
                |x| Some(x[0] * x[1] - x[2]),
            )
            // Bags and feed stray together, so that what is left does not stray as they do.
            .between(|_| None),
        ],
    ),
    FigureSpec {
        id: "feed.bags_per_hundred",
        unit: Unit::Pieces,
        decimals: 1,
        rules: &[exact(
            "bags-per-hundred",
            "100 * F / b / n",
            &[figure("F", "feed.total"), BAG, figure("n", "sale.birds")],
            |x| (x[2] > 0.0).then(|| 100.0 * x[0] / x[1] / x[2]),
        )],
    },
    FigureSpec {
        id: "feed.peak_tins",
        unit: Unit::Pieces,
        decimals: 1,
        rules: &[exact(
            "tins-on-the-greatest-day",
            "F / t",
            &[of_days("F", Over::Most, "feed.by_day"), field("t", "feed.tin_kg")],
            |x| Some(x[0] / x[1]),
        )],
    },
    date(
        "feed.grower_opens",
        &[opens("grower-opens", &[field("p", "batch.placement"), figure("u", "feed.starter_until")])
            .when(|answers| !two(answers))],
    ),
    date(
        "feed.finisher_opens",
        &[opens("finisher-opens", &[field("p", "batch.placement"), figure("u", "feed.grower_until")])],
    ),
    date(
        "feed.last_opens",
        &[opens("last-feed-opens", &[field("p", "batch.placement"), figure("u", "feed.finisher_until")])
            .when(four)],
    ),
    date(
        "feed.first_delivery",
        &[exact(
            "first-delivery",
            "p - h",
            &[field("p", "batch.placement"), field("h", "feed.on_hand_before_d")],
            |x| Some(x[0] - x[1]),
        )
        .from("common-practice", Status::CommonPractice)],
    ),
    day(
        "feed.keeps",
        &[
            exact(
                "keeps-by-label",
                "min(m, k)",
                &[field("m", "feed.label_keeps_d"), field("k", "feed.hot_store_keeps_d")],
                |x| Some(x[0].min(x[1])),
            )
            .when(|answers| told("feed.label_keeps_d")(answers))
            .from("label", Status::Derived),
            exact("keeps-in-hot-store", "k", &[field("k", "feed.hot_store_keeps_d")], as_is)
                .from("common-practice", Status::CommonPractice),
        ],
    ),
    date(
        "feed.first_bought_eaten",
        &[exact(
            "first-bags-eaten",
            "p + d",
            &[
                field("p", "batch.placement"),
                Input {
                    symbol: "d",
                    origin: Origin::Listed {
                        list: "first-delivery",
                        unit: Unit::Day,
                        needs: store_room::NEEDS,
                        read: store_room::first_eaten_until,
                    },
                },
            ],
            |x| Some(x[0] + x[1]),
        )],
    ),
    date(
        "feed.milled_not_before",
        &[exact(
            "milled-not-before",
            "e - k",
            &[figure("e", "feed.first_bought_eaten"), figure("k", "feed.keeps")],
            |x| Some(x[0] - x[1]),
        )],
    ),
    date(
        "feed.good_until",
        &[exact("feed-good-until", "m + k", &[field("m", "feed.milled"), figure("k", "feed.keeps")], |x| {
            Some(x[0] + x[1])
        })],
    ),
    day(
        "feed.too_old_by",
        &[exact(
            "feed-too-old-by",
            "max(0, e - g)",
            &[figure("e", "feed.first_bought_eaten"), figure("g", "feed.good_until")],
            |x| Some((x[0] - x[1]).max(0.0)),
        )],
    ),
    pieces(
        "feed.store_room",
        &[
            exact("store-room-told", "n", &[field("n", "feed.store_bags")], as_is)
                .when(|answers| told("feed.store_bags")(answers))
                .from("grower", Status::Told),
            exact("store-room-by-floor", "floor(0.6 * A / 0.4) * 8", &[field("A", "feed.store_m2")], |x| {
                Some(model::feed::bags_on_floor(quantity::Area::square_metres(x[0])))
            })
            .from("common-practice", Status::CommonPractice),
        ],
    ),
    pieces(
        "feed.store_peak",
        &[exact("store-peak", "ceil(S / b)", &[of_days("S", Over::Most, "feed.in_store"), BAG], |x| {
            Some(model::feed::bags(Mass::kilograms(x[0]), Mass::kilograms(x[1])))
        })],
    ),
    day(
        "feed.store_peak_day",
        &[exact("store-peak-day", "d", &[of_days("d", Over::DayOfMost, "feed.in_store")], as_is)],
    ),
    pieces(
        "feed.store_short",
        &[exact(
            "store-short",
            "max(0, n - r)",
            &[figure("n", "feed.store_peak"), figure("r", "feed.store_room")],
            |x| Some((x[0] - x[1]).max(0.0)),
        )],
    ),
    money(
        "feed.cost",
        &[exact(
            "feed-cost",
            "f + x",
            &[figure("f", "feed.bags_cost"), if_known("x", "feed.rise_and_deliveries")],
            |x| Some(x[0] + x[1]),
        )],
    ),
    money(
        "feed.bags_cost",
        &[exact(
            "feed-bags-cost",
            "s * P + g * Q + f * R + l * T",
            &[
                figure("s", "feed.bags_starter"),
                figure("g", "feed.bags_grower"),
                figure("f", "feed.bags_finisher"),
                figure("l", "feed.bags_last"),
                field("P", "prices.starter_bag_each"),
                figure("Q", "feed.grower_price"),
                field("R", "prices.finisher_bag_each"),
                if_known("T", "feed.last_price"),
            ],
            |x| Some(x[0] * x[4] + x[1] * x[5] + x[2] * x[6] + x[3] * x[7]),
        )],
    ),
    money(
        "feed.grower_price",
        &[
            exact("grower-price", "P", &[field("P", "prices.grower_bag_each")], as_is)
                .when(|answers| told("prices.grower_bag_each")(answers))
                .from("grower", Status::Told),
            // With two kinds of feed there is no grower feed to price.
            exact("grower-price-none", "0 * P", &[field("P", "prices.starter_bag_each")], |x| {
                Some(0.0 * x[0])
            })
            .when(two),
        ],
    ),
    money(
        "feed.last_price",
        &[
            exact("last-price", "P", &[field("P", "prices.last_bag_each")], as_is)
                .when(|answers| four(answers) && told("prices.last_bag_each")(answers))
                .from("grower", Status::Told),
            exact("last-price-as-finisher", "P", &[field("P", "prices.finisher_bag_each")], as_is).when(four),
        ],
    ),
    money(
        "feed.cost_per_kg",
        &[exact(
            "feed-cost-per-kg",
            "C / (F + l)",
            &[figure("C", "feed.cost"), figure("F", "feed.total"), figure("l", "feed.left_over")],
            |x| model::budget::per(x[0], x[1] + x[2]),
        )
        // What is paid strays with what is bought.
        .between(|_| None)],
    ),
];

const BY_DAY: &str = "feed.by_day";

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "feed.curve",
        unit: Unit::GramPerBird,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[
            exact("feed-curve-fast", "f", &[read_at("growth_fast")], as_is)
                .when(|answers| !has_own(answers) && standard(answers) == Standard::Fast)
                .from("growth-fast", Status::FromMemory),
            exact("feed-curve-slow", "f", &[read_at("growth_slow")], as_is)
                .when(|answers| !has_own(answers) && standard(answers) == Standard::Slow)
                .from("growth-slow", Status::Interpolated),
            exact(
                "feed-curve-own-estimated",
                "f",
                &[
                    estimated("f", "feed-to-weight", |answers, day| {
                        Some(feeds_for_own_gain(answers, day)?[1])
                    }),
                    estimated("a", "least-feed-to-weight", |answers, day| {
                        feeds_for_own_gain(answers, day)
                            .map(|feeds| feeds.into_iter().fold(f64::INFINITY, f64::min))
                    }),
                    estimated("b", "most-feed-to-weight", |answers, day| {
                        feeds_for_own_gain(answers, day).map(|feeds| feeds.into_iter().fold(0.0, f64::max))
                    }),
                ],
                as_is,
            )
            .when(own_tells_no_feed)
            .from("growth-open-house", Status::OurJudgement)
            .between(|x| Some((x[1], x[2]))),
            exact("feed-curve-own", "f", &[read_at("own_curve")], as_is)
                .when(has_own)
                .from("grower", Status::Told),
            exact("feed-curve-open-house", "f", &[read_at("growth_tropical")], as_is)
                .from("growth-open-house", Status::Modelled)
                .between(|x| Some((x[0] * 0.87, x[0] * 1.13))),
        ]),
    },
    SeriesSpec {
        id: "feed.per_bird_by_day",
        unit: Unit::GramPerBird,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[
            exact(
                "feed-through-own-sale-weight",
                "f * (1000 * w / G) ^ (d / a)",
                &[
                    same("f", "feed.curve"),
                    every_day("w", "batch.sale_weight_kg"),
                    given("G", "growth.curve_at_sale"),
                    age("d"),
                    every_day("a", "batch.sale_age_d"),
                ],
                |x| Some(model::growth::through(x[0], 1000.0 * x[1] / x[2], x[3] / x[4])),
            )
            .when(|answers| answers.number("batch.sale_weight_kg").is_some())
            .from("our-judgement", Status::OurJudgement),
            exact(
                "feed-in-heat",
                "f * (1 - q / 100 * at_least(d, 22))",
                &[same("f", "feed.curve"), given("q", HEAT_LOST), age("d")],
                |x| Some(x[0] * model::growth::kept_in_heat(x[1] / 100.0, x[2])),
            )
            .when(super::growth::slowed_by_heat)
            .from("feed-in-heat", Status::FromMemory),
            exact("feed-off-curve", "f", &[same("f", "feed.curve")], as_is),
        ]),
    },
    SeriesSpec {
        id: "feed.by_day",
        unit: Unit::Kilogram,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "feed-by-day",
            "n * f / 1000",
            &[same("n", "batch.birds_alive"), same("f", "feed.per_bird_by_day")],
            |x| Some(x[0] * x[1] / 1000.0),
        )]),
    },
    SeriesSpec {
        id: "feed.to_date",
        unit: Unit::Kilogram,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "feed-to-date",
            "F + k",
            &[
                DayInput {
                    symbol: "F",
                    origin: DayOrigin::Before { series: "feed.to_date", first: First::Number(0.0) },
                },
                same("k", "feed.by_day"),
            ],
            |x| Some(x[0] + x[1]),
        )]),
    },
    SeriesSpec {
        id: "feed.in_store",
        unit: Unit::Kilogram,
        decimals: 0,
        first_day: -60,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "feed-in-store",
            "s + d - k",
            &[
                DayInput {
                    symbol: "s",
                    origin: DayOrigin::Before { series: "feed.in_store", first: First::Number(0.0) },
                },
                DayInput {
                    symbol: "d",
                    origin: DayOrigin::Listed {
                        list: "feed-delivered",
                        unit: Unit::Kilogram,
                        needs: store_room::NEEDS,
                        make: store_room::delivered_kg,
                    },
                },
                DayInput { symbol: "k", origin: DayOrigin::SameIfAny("feed.by_day") },
            ],
            |x| Some(x[0] + x[1] - x[2]),
        )]),
    },
];

/// How much of their feed heat takes from birds past three weeks.
pub(crate) const HEAT_LOST: &str = "feed.heat_lost";

/// The two sources of [`HEAT_LOST`], %, the memory's at its rate above its limit.
fn lost_by(x: &[f64], above: f64, per_degree: f64) -> (f64, f64) {
    let trial = model::feed::lost_in_heat(x[4], x[2], (1.0 - x[1] / x[0]) / (x[3] - x[2]));
    (100.0 * trial, 100.0 * model::feed::lost_in_heat(x[4], above, per_degree))
}

/// Whether the grower's own curve tells weights alone.
pub(crate) fn own_tells_no_feed(answers: &Answers) -> bool {
    let rows = answers.curve(OWN_CURVE).filter(|_| has_own(answers));
    rows.is_some_and(|rows| rows.iter().any(|row| row.feed_to_date_g.is_none()))
}

/// What birds of the shipped curves, in the order of [`Standard::ALL`], eat while they put on what the grower's own put on
/// that day.
fn feeds_for_own_gain(answers: &Answers, day: f64) -> Option<[f64; 3]> {
    let own = curve(answers)?;
    let today = own.weight(DayOfAge(day as i32))?;
    let before = if day < 1.0 { today } else { own.weight(DayOfAge(day as i32 - 1))? };
    let mut feeds = [0.0; 3];
    for (feed, standard) in feeds.iter_mut().zip(Standard::ALL) {
        let shipped = standard.curve().ok()?;
        *feed = shipped.feed_to_weight(today)?.in_grams() - shipped.feed_to_weight(before)?.in_grams();
    }
    Some(feeds)
}

/// What the shipped curves say of the day's gain.
const fn estimated(
    symbol: &'static str,
    point: &'static str,
    read: fn(&Answers, f64) -> Option<f64>,
) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Table { table: "own_curve", point, unit: Unit::GramPerBird, read } }
}

/// What the curve eats on the day's age.
const fn read_at(table: &'static str) -> DayInput {
    DayInput {
        symbol: "f",
        origin: DayOrigin::Table {
            table,
            point: "feed",
            unit: Unit::GramPerBird,
            read: |answers, day| curve(answers)?.feed_on(DayOfAge(day as i32)).map(Mass::in_grams),
        },
    }
}
