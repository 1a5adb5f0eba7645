//! Feeders and drinkers: how many the birds need at each age, and what runs short.

use quantity::{Answers, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Input, Origin, Over, Rule, exact, field, figure, of_days, on_day};
use crate::series::{DayInput, DayOrigin, DayRule, SeriesSpec, Until, Way, age, given, same};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: SERIES, shapes: &[] };

/// The day of age on which the large feeders and drinkers take over; both stand together for two or three days before.
const CHANGE_OVER: f64 = 7.0;

/// Days before it on which large feeders and drinkers are hung beside the small ones.
const BESIDE_D: f64 = 2.0;

const fn serves(kind: &'static str, read: fn() -> Option<f64>) -> Input {
    Input {
        symbol: "s",
        origin: Origin::Table { table: "equipment_serves", point: kind, unit: Unit::Birds, read },
    }
}

fn low(kind: &str) -> Option<f64> {
    Some(reference::equipment::serves(kind).ok()??.low)
}

fn pieces(x: &[f64]) -> Option<f64> {
    Some(model::space::pieces(x[0], x[1], 1.0))
}

fn pieces_in_heat(x: &[f64]) -> Option<f64> {
    Some(model::space::pieces(x[0], x[1], x[2]))
}

const fn needed(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "ceil(n / s)", inputs, pieces).from("equipment-serves", Status::CommonPractice)
}

const fn needed_in_heat(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "ceil(n * h / s)", inputs, pieces_in_heat).from("equipment-serves", Status::CommonPractice)
}

/// The most that are needed on any day, where what one serves was told by age.
const fn most(name: &'static str, days: &'static [Input], told: fn(&Answers) -> bool) -> Rule {
    exact(name, "n", days, |x| Some(x[0])).when(told)
}

/// Pieces needed on a day: birds, birds that one serves, the day of age, the last day of the small ones.
const fn small(name: &'static str, inputs: &'static [DayInput], told: fn(&Answers) -> bool) -> DayRule {
    exact(name, "at_least(c, d) * ceil(n / s)", inputs, |x| {
        Some(if x[3] >= x[2] { model::space::pieces(x[0], x[1], 1.0) } else { 0.0 })
    })
    .when(told)
}

const fn large(name: &'static str, inputs: &'static [DayInput], told: fn(&Answers) -> bool) -> DayRule {
    exact(name, "at_least(d, c) * ceil(n / s)", inputs, |x| {
        Some(if x[2] >= x[3] { model::space::pieces(x[0], x[1], 1.0) } else { 0.0 })
    })
    .when(told)
}

const fn small_in_heat(
    name: &'static str,
    inputs: &'static [DayInput],
    told: fn(&Answers) -> bool,
) -> DayRule {
    exact(name, "at_least(c, d) * ceil(n * h / s)", inputs, |x| {
        Some(if x[3] >= x[2] { model::space::pieces(x[0], x[1], x[4]) } else { 0.0 })
    })
    .when(told)
}

const fn large_in_heat(
    name: &'static str,
    inputs: &'static [DayInput],
    told: fn(&Answers) -> bool,
) -> DayRule {
    exact(name, "at_least(d, c) * ceil(n * h / s)", inputs, |x| {
        Some(if x[2] >= x[3] { model::space::pieces(x[0], x[1], x[4]) } else { 0.0 })
    })
    .when(told)
}

const BIRDS: DayInput = same("n", "batch.birds_alive");
const DAY: DayInput = age("d");
const CHANGE: DayInput = given("c", "space.change_over");
const HEAT: DayInput = given("h", "space.more_drinkers");

const fn holding(key: &'static str) -> DayInput {
    DayInput { symbol: "s", origin: DayOrigin::Holding(key) }
}

const CHICK_FEEDER_SERVES: &str = "equipment.chick_feeder_serves";
const CHICK_DRINKER_SERVES: &str = "equipment.chick_drinker_serves";
const FEEDER_SERVES: &str = "equipment.feeder_serves";
const DRINKER_SERVES: &str = "equipment.drinker_serves";

const fn by_day(id: &'static str, rules: &'static [DayRule]) -> SeriesSpec {
    SeriesSpec {
        id,
        unit: Unit::Pieces,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(rules),
    }
}

const CHICKS: Input = field("n", "batch.chicks");
const GROWN: Input = on_day("n", "batch.birds_alive", "space.change_over");
const MORE: Input = figure("h", "space.more_drinkers");

fn kind(answers: &Answers, key: &str, wanted: &str) -> bool {
    answers.choice(key) == Some(wanted)
}

const fn count(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Pieces, decimals: 0, rules }
}

const fn short(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "max(0, n - h)", inputs, |x| Some((x[0] - x[1]).max(0.0)))
}

/// What is too few, at its price.
const fn cost(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Money, decimals: 2, rules }
}

const fn cost_of_short(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "n * p", inputs, |x| Some(x[0] * x[1]))
}

/// Chicks in a box that they come in, whose lid is a feeder for the first days: common practice.
pub(crate) const CHICKS_A_BOX: f64 = 100.0;

/// Whether chicks are first fed from the lids of their boxes.
pub(crate) fn fed_from_lids(answers: &Answers) -> bool {
    kind(answers, "equipment.chick_feeder_kind", "box-lid")
}

/// What grown birds drink from.
pub(crate) const DRINKER_KIND: &str = "equipment.drinker_kind";

/// Whether grown birds drink from nipples.
pub(crate) fn has_nipples(answers: &Answers) -> bool {
    kind(answers, DRINKER_KIND, "nipple")
}

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "space.change_over",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact("change-over", "min(7, l)", &[figure("l", "sale.last_age")], |x| {
            Some(x[0].min(CHANGE_OVER))
        })
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "space.large_from",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact("large-beside-small", "max(0, c - 2)", &[figure("c", "space.change_over")], |x| {
            Some((x[0] - BESIDE_D).max(0.0))
        })
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "space.more_drinkers",
        unit: Unit::One,
        decimals: 2,
        rules: &[
            exact(
                "more-drinkers-in-heat",
                "1 + 0.25 * at_least(t, 30)",
                &[field("t", "weather.hottest_day_c")],
                |x| Some(model::space::more_drinkers(x[0])),
            )
            .when(|answers| answers.number("weather.hottest_day_c").is_some())
            .from("common-practice", Status::CommonPractice),
            exact("more-drinkers-to-be-safe", "1.25", &[], |_| Some(1.25))
                .from("common-practice", Status::CommonPractice),
        ],
    },
    count(
        "space.chick_feeders",
        &[
            most(
                "chick-feeders-as-told",
                &[of_days("n", Over::Most, "space.chick_feeders_by_day")],
                |answers| answers.schedule(CHICK_FEEDER_SERVES).is_some(),
            ),
            needed("chick-feeders-box-lid", &[CHICKS, serves("box-lid", || low("box-lid"))])
                .when(fed_from_lids),
            needed("chick-feeders-small-trough", &[CHICKS, serves("small-trough", || low("small-trough"))])
                .when(|answers| kind(answers, "equipment.chick_feeder_kind", "small-trough")),
            needed("chick-feeders", &[CHICKS, serves("tray", || low("tray"))]),
        ],
    ),
    count(
        "space.chick_drinkers",
        &[
            most(
                "chick-drinkers-as-told",
                &[of_days("n", Over::Most, "space.chick_drinkers_by_day")],
                |answers| answers.schedule(CHICK_DRINKER_SERVES).is_some(),
            ),
            needed_in_heat("chick-drinkers", &[CHICKS, serves("fount", || low("fount")), MORE]),
        ],
    ),
    count(
        "space.feeders",
        &[
            most("feeders-as-told", &[of_days("n", Over::Most, "space.feeders_by_day")], |answers| {
                answers.schedule(FEEDER_SERVES).is_some()
            }),
            needed("feeders-pan", &[GROWN, serves("pan", || low("pan"))])
                .when(|answers| kind(answers, "equipment.feeder_kind", "pan")),
            needed("feeders-hanging-tube", &[GROWN, serves("hanging-tube", || low("hanging-tube"))]),
        ],
    ),
    count(
        "space.drinkers",
        &[
            most("drinkers-as-told", &[of_days("n", Over::Most, "space.drinkers_by_day")], |answers| {
                answers.schedule(DRINKER_SERVES).is_some()
            }),
            needed_in_heat("drinkers-nipple", &[GROWN, serves("nipple", || low("nipple")), MORE])
                .when(|answers| kind(answers, "equipment.drinker_kind", "nipple")),
            needed_in_heat(
                "drinkers-large-fount",
                &[GROWN, serves("large-fount", || low("large-fount")), MORE],
            )
            .when(|answers| kind(answers, "equipment.drinker_kind", "large-fount")),
            needed_in_heat("drinkers-bell", &[GROWN, serves("bell", || low("bell")), MORE]),
        ],
    ),
    count(
        "space.box_lids",
        &[exact("box-lids", "ceil(c / 100)", &[field("c", "batch.chicks")], |x| {
            Some((x[0] / CHICKS_A_BOX).ceil())
        })
        .when(fed_from_lids)
        .from("common-practice", Status::CommonPractice)],
    ),
    count(
        "space.chick_feeders_short",
        &[
            exact(
                "chick-feeders-beside-lids-short",
                "max(0, n - h - l)",
                &[
                    figure("n", "space.chick_feeders"),
                    field("h", "equipment.chick_feeders"),
                    figure("l", "space.box_lids"),
                ],
                |x| Some((x[0] - x[1] - x[2]).max(0.0)),
            )
            .when(fed_from_lids),
            short(
                "chick-feeders-short",
                &[figure("n", "space.chick_feeders"), field("h", "equipment.chick_feeders")],
            ),
        ],
    ),
    count(
        "space.chick_drinkers_short",
        &[short(
            "chick-drinkers-short",
            &[figure("n", "space.chick_drinkers"), field("h", "equipment.chick_drinkers")],
        )],
    ),
    count(
        "space.feeders_short",
        &[short("feeders-short", &[figure("n", "space.feeders"), field("h", "equipment.feeders")])],
    ),
    count(
        "space.drinkers_short",
        &[short("drinkers-short", &[figure("n", "space.drinkers"), field("h", "equipment.drinkers")])],
    ),
    cost(
        "space.chick_feeders_cost",
        &[cost_of_short(
            "chick-feeders-cost",
            &[figure("n", "space.chick_feeders_short"), field("p", "prices.chick_feeder_each")],
        )],
    ),
    cost(
        "space.chick_drinkers_cost",
        &[cost_of_short(
            "chick-drinkers-cost",
            &[figure("n", "space.chick_drinkers_short"), field("p", "prices.chick_drinker_each")],
        )],
    ),
    cost(
        "space.feeders_cost",
        &[cost_of_short(
            "feeders-cost",
            &[figure("n", "space.feeders_short"), field("p", "prices.feeder_each")],
        )],
    ),
    cost(
        "space.drinkers_cost",
        &[cost_of_short(
            "drinkers-cost",
            &[figure("n", "space.drinkers_short"), field("p", "prices.drinker_each")],
        )],
    ),
    FigureSpec {
        id: "space.fullest_density",
        unit: Unit::KilogramPerSquareMetre,
        decimals: 1,
        rules: &[exact("fullest-density", "k", &[of_days("k", Over::Most, ON_THE_FLOOR)], |x| Some(x[0]))],
    },
    FigureSpec {
        id: "space.fullest_day",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact("fullest-day", "d", &[of_days("d", Over::DayOfMost, ON_THE_FLOOR)], |x| Some(x[0]))],
    },
    FigureSpec {
        id: "space.fullest_birds",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact(
            "fullest-birds",
            "n",
            &[on_day("n", "batch.birds_alive", "space.fullest_day")],
            |x| Some(x[0]),
        )],
    },
    FigureSpec {
        id: "space.first_day_over",
        unit: Unit::Day,
        decimals: 0,
        rules: &[exact(
            "first-day-over",
            "d",
            &[Input {
                symbol: "d",
                origin: Origin::FirstDayOver { series: ON_THE_FLOOR, limit: Some("space.limit") },
            }],
            |x| Some(x[0]),
        )],
    },
];

/// What stands on the floor, kg/m2.
const ON_THE_FLOOR: &str = "space.density_by_day";

static SERIES: &[SeriesSpec] = &[
    by_day(
        "space.chick_feeders_by_day",
        &[small("chick-feeders-by-day", &[BIRDS, holding(CHICK_FEEDER_SERVES), DAY, CHANGE], |answers| {
            answers.schedule(CHICK_FEEDER_SERVES).is_some()
        })],
    ),
    by_day(
        "space.chick_drinkers_by_day",
        &[small_in_heat(
            "chick-drinkers-by-day",
            &[BIRDS, holding(CHICK_DRINKER_SERVES), DAY, CHANGE, HEAT],
            |answers| answers.schedule(CHICK_DRINKER_SERVES).is_some(),
        )],
    ),
    by_day(
        "space.feeders_by_day",
        &[large("feeders-by-day", &[BIRDS, holding(FEEDER_SERVES), DAY, CHANGE], |answers| {
            answers.schedule(FEEDER_SERVES).is_some()
        })],
    ),
    by_day(
        "space.drinkers_by_day",
        &[large_in_heat(
            "drinkers-by-day",
            &[BIRDS, holding(DRINKER_SERVES), DAY, CHANGE, HEAT],
            |answers| answers.schedule(DRINKER_SERVES).is_some(),
        )],
    ),
    SeriesSpec {
        id: ON_THE_FLOOR,
        unit: Unit::KilogramPerSquareMetre,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "density-by-day",
            "n * w / 1000 / A",
            &[same("n", "batch.birds_alive"), same("w", "growth.weight"), given("A", "space.floor_area")],
            |x| Some(x[0] * x[1] / 1000.0 / x[2]),
        )]),
    },
    SeriesSpec {
        id: "space.birds_by_day",
        unit: Unit::PerSquareMetre,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "birds-per-square-metre",
            "n / A",
            &[same("n", "batch.birds_alive"), given("A", "space.floor_area")],
            |x| Some(x[0] / x[1]),
        )]),
    },
];
