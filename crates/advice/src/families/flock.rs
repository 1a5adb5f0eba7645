//! The birds of a batch by day: alive, lost, sold.

use model::flock;
use quantity::{Answers, Status, Unit};

use super::Family;
use crate::rule::{End, FigureSpec, Input, Origin, Over, Rule, exact, field, figure, of_days};
use crate::series::{
    DayInput, DayOrigin, First, SeriesSpec, Until, Way, age, before, every_day, given, same,
};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: SERIES, shapes: &[] };

/// When birds are sold: as scheduled, else between the ages told, else all on one day.
const fn sale_age(scheduled: Rule, told: Rule, single: Rule) -> [Rule; 3] {
    [scheduled, told, single]
}

static FIRST_AGE: [Rule; 3] = sale_age(
    exact(
        "first-age-scheduled",
        "d",
        &[Input { symbol: "d", origin: Origin::EndOf(DAYS, End::First) }],
        as_is,
    )
    .when(scheduled)
    .from("grower", Status::Told),
    exact("first-age-told", "d", &[field("d", "sale.first_age_d")], as_is)
        .when(|answers| answers.number("sale.first_age_d").is_some())
        .from("grower", Status::Told),
    exact("first-age-single", "d", &[field("d", "batch.sale_age_d")], as_is).from("grower", Status::Told),
);

static LAST_AGE: [Rule; 3] = sale_age(
    exact("last-age-scheduled", "d", &[Input { symbol: "d", origin: Origin::EndOf(DAYS, End::Last) }], as_is)
        .when(scheduled)
        .from("grower", Status::Told),
    exact("last-age-told", "d", &[field("d", "sale.last_age_d")], as_is)
        .when(|answers| answers.number("sale.last_age_d").is_some())
        .from("grower", Status::Told),
    exact("last-age-single", "d", &[field("d", "batch.sale_age_d")], as_is).from("grower", Status::Told),
);

const DAYS: &str = "sale.days";

fn as_is(x: &[f64]) -> Option<f64> {
    Some(x[0])
}

fn scheduled(answers: &Answers) -> bool {
    answers.schedule(DAYS).is_some()
}

static FIGURES: &[FigureSpec] = &[
    FigureSpec { id: "sale.first_age", unit: Unit::Day, decimals: 0, rules: &FIRST_AGE },
    FigureSpec { id: "sale.last_age", unit: Unit::Day, decimals: 0, rules: &LAST_AGE },
    FigureSpec {
        id: "sale.first_date",
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact(
            "first-sale-date",
            "p + a",
            &[field("p", "batch.placement"), figure("a", "sale.first_age")],
            |x| Some(x[0] + x[1]),
        )],
    },
    FigureSpec {
        id: "sale.last_date",
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact(
            "last-sale-date",
            "p + a",
            &[field("p", "batch.placement"), figure("a", "sale.last_age")],
            |x| Some(x[0] + x[1]),
        )],
    },
    FigureSpec {
        id: "batch.loss_shape",
        unit: Unit::One,
        decimals: 2,
        rules: &[exact(
            "loss-shape-at-sale",
            "W",
            &[Input {
                symbol: "W",
                origin: Origin::TableAt {
                    table: "loss_shape",
                    point: "to-date",
                    unit: Unit::One,
                    at: "sale.last_age",
                    read: |_, day| before_day(day),
                },
            }],
            as_is,
        )
        .from("loss-shape", Status::CommonPractice)],
    },
    FigureSpec {
        id: "batch.losses_first_week",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact(
            "losses-first-week",
            "c * (1 - (1 - q / 100) ^ (V / W))",
            &[
                field("c", "batch.chicks"),
                field("q", "batch.expected_losses_percent"),
                Input {
                    symbol: "V",
                    origin: Origin::Table {
                        table: "loss_shape",
                        point: "day-6",
                        unit: Unit::One,
                        read: || loss_shape(6.0),
                    },
                },
                figure("W", "batch.loss_shape"),
            ],
            |x| Some(x[0] * (1.0 - flock::survival(x[1] / 100.0, x[2] / x[3]))),
        )
        .from("loss-shape", Status::CommonPractice)],
    },
    FigureSpec {
        id: "sale.birds",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact("birds-sold", "S", &[of_days("S", Over::Sum, "sale.birds_by_day")], as_is)],
    },
    FigureSpec {
        id: "sale.live_kg",
        unit: Unit::Kilogram,
        decimals: 0,
        rules: &[exact("live-kg-sold", "S", &[of_days("S", Over::Sum, "sale.kg_by_day")], as_is)],
    },
    FigureSpec {
        id: "sale.mean_age",
        unit: Unit::Day,
        decimals: 1,
        rules: &[exact(
            "mean-age-sold",
            "S / n",
            &[of_days("S", Over::Sum, "sale.bird_days_by_day"), figure("n", "sale.birds")],
            |x| (x[1] > 0.0).then(|| x[0] / x[1]),
        )],
    },
    FigureSpec {
        id: "sale.mean_weight",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[exact(
            "mean-weight-of-sale",
            "S / n",
            &[figure("S", "sale.live_kg"), figure("n", "sale.birds")],
            |x| (x[1] > 0.0).then(|| x[0] / x[1]),
        )],
    },
];

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "batch.survival",
        unit: Unit::Percent,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "survival-by-day",
            "100 * (1 - q / 100) ^ (V / W)",
            &[
                every_day("q", "batch.expected_losses_percent"),
                DayInput {
                    symbol: "V",
                    origin: DayOrigin::Table {
                        table: "loss_shape",
                        point: "to-date",
                        unit: Unit::One,
                        read: |_, day| before_day(day),
                    },
                },
                given("W", "batch.loss_shape"),
            ],
            |x| Some(100.0 * flock::survival(x[0] / 100.0, x[1] / x[2])),
        )
        .from("loss-shape", Status::CommonPractice)]),
    },
    SeriesSpec {
        id: "batch.birds_expected",
        unit: Unit::Birds,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "birds-expected",
            "max(0, b - s) * v / u",
            &[
                DayInput {
                    symbol: "b",
                    origin: DayOrigin::Before {
                        series: "batch.birds_expected",
                        first: First::Field("batch.chicks"),
                    },
                },
                before("s", "sale.birds_by_day", 0.0),
                same("v", "batch.survival"),
                before("u", "batch.survival", 100.0),
            ],
            |x| Some((x[0] - x[1]).max(0.0) * x[2] / x[3]),
        )]),
    },
    SeriesSpec {
        id: "batch.birds_alive",
        unit: Unit::Birds,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact("birds-alive", "floor(b)", &[same("b", "batch.birds_expected")], |x| {
            Some(flock::whole_birds(x[0]))
        })]),
    },
    SeriesSpec {
        id: "batch.losses_by_day",
        unit: Unit::Birds,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "losses-by-day",
            "max(0, b - s) * (1 - (1 - q / 100) ^ (w / W))",
            &[
                same("b", "batch.birds_expected"),
                same("s", "sale.birds_by_day"),
                every_day("q", "batch.expected_losses_percent"),
                DayInput {
                    symbol: "w",
                    origin: DayOrigin::Table {
                        table: "loss_shape",
                        point: "that-day",
                        unit: Unit::One,
                        read: |_, day| Some(loss_shape(day)? - before_day(day)?),
                    },
                },
                given("W", "batch.loss_shape"),
            ],
            |x| Some((x[0] - x[1]).max(0.0) * (1.0 - flock::survival(x[2] / 100.0, x[3] / x[4]))),
        )
        .from("loss-shape", Status::CommonPractice)]),
    },
    SeriesSpec {
        id: "sale.birds_by_day",
        unit: Unit::Birds,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[
            exact(
                "sold-as-scheduled",
                "min(s, a)",
                &[
                    DayInput { symbol: "s", origin: DayOrigin::Scheduled(DAYS) },
                    same("a", "batch.birds_alive"),
                ],
                |x| Some(x[0].min(x[1])),
            )
            .when(scheduled)
            .from("grower", Status::Told),
            exact(
                "sold-evenly",
                "floor(a / (l - d + 1)) * at_least(d, f)",
                &[
                    same("a", "batch.birds_alive"),
                    given("l", "sale.last_age"),
                    age("d"),
                    given("f", "sale.first_age"),
                ],
                |x| Some(flock::sold_evenly(x[0], x[1], x[2], x[3])),
            ),
        ]),
    },
    SeriesSpec {
        id: "sale.kg_by_day",
        unit: Unit::Kilogram,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "kg-sold",
            "s * w / 1000",
            &[same("s", "sale.birds_by_day"), same("w", "growth.weight")],
            |x| Some(x[0] * x[1] / 1000.0),
        )]),
    },
    SeriesSpec {
        id: "sale.bird_days_by_day",
        unit: Unit::One,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact("bird-days", "s * d", &[same("s", "sale.birds_by_day"), age("d")], |x| {
            Some(x[0] * x[1])
        })]),
    },
];

/// What was met by the morning of a day: birds are counted in the morning, and all are alive on the chick day.
fn before_day(day: f64) -> Option<f64> {
    if day < 1.0 { Some(0.0) } else { loss_shape(day - 1.0) }
}

fn loss_shape(day: f64) -> Option<f64> {
    reference::losses::to_date(day).ok()?
}
