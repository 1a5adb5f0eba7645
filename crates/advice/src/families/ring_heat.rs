//! Heat for one ring of chicks by itself, covered or open.

use model::heat::{self, Balance};
use model::moist_air;
use model::ring_heat::{OPEN_TOP_W_PER_M2K, Ring};
use quantity::fields::{asked_outside, count, field as asked, number};
use quantity::{Answers, DayOfAge, Field, Kind, Need, Status, Temperature, Unit};
use reference::growth::Standard;

use super::Family;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

pub(crate) const TOP: &str = "ring_heat.top";
const CHICKS: &str = "ring_heat.chicks";
const DIAMETER: &str = "ring_heat.diameter_m";
const HEIGHT: &str = "ring_heat.height_m";
const AGE: &str = "ring_heat.age_d";
const AROUND: &str = "ring_heat.house_c";
const HUMIDITY: &str = "weather.humidity_percent";
const BROODER: &str = "ring_heat.brooder_kw";

static FIELDS: &[Field] = &[
    asked(CHICKS, count(Unit::Chicks, 1.0, 5_000.0), Need::Optional),
    asked(DIAMETER, asked_outside(number(Unit::Metre, 0.3, 20.0), 1.0, 8.0), Need::Optional),
    asked(TOP, Kind::Choice(&["open", "covered"]), Need::Optional),
    asked(AROUND, asked_outside(number(Unit::Celsius, -30.0, 45.0), 0.0, 32.0), Need::Optional),
    asked(
        HEIGHT,
        asked_outside(number(Unit::Metre, 0.1, 2.0), 0.3, 1.0),
        Need::Usual("0.45", Status::CommonPractice),
    ),
    asked(AGE, count(Unit::Day, 0.0, 28.0), Need::Usual("0", Status::Assumed)),
    asked(BROODER, asked_outside(number(Unit::Kilowatt, 0.05, 100.0), 0.2, 15.0), Need::Optional),
];

static SUMS: &[Sum] = &[Sum {
    name: "ring-heat",
    inputs: &[
        asks("chicks", CHICKS),
        asks("diameter_m", DIAMETER),
        asks("top", TOP),
        asks("house_c", AROUND),
        may_ask("height_m", HEIGHT),
        may_ask("age_d", AGE),
        may_ask("humidity_percent", HUMIDITY),
        may_ask("brooder_kw", BROODER),
    ],
    figures: &[
        "ring_heat.design",
        "ring_heat.needed",
        "ring_heat.brooders",
        "ring_heat.if_covered",
        "ring_heat.wanted",
        "ring_heat.loss",
        "ring_heat.fresh_air",
        "ring_heat.chick_heat",
    ],
    caution: Some("caution-heat-sum"),
}];

/// How far a ring's heat can lie off, as a share: our judgement, as for walls.
const SPREAD: f64 = 0.2;
/// What is added for a gust and a brooder that burns low: common practice, as for a house.
const DESIGN_MARGIN: f64 = 1.25;

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "ring_heat.wanted",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact("wanted-in-ring", "brooding_temperature(a, r)", &[field("a", AGE), field("r", HUMIDITY)], |x| {
            reference::temperature::target(x[0], x[1])
        })
        .from("brooding-temperature", Status::FromMemory)],
    },
    FigureSpec {
        id: "ring_heat.loss",
        unit: Unit::WattPerKelvin,
        decimals: 0,
        rules: &[
            loss(
                "loss-of-covered-ring",
                &[
                    field("D", DIAMETER),
                    field("h", HEIGHT),
                    through("c", "curtain-single", || transmittance("curtain", "single")),
                    through("s", "wall-plywood", || transmittance("wall", "plywood")),
                    through("f", "floor-middle", || transmittance("floor", "middle")),
                ],
            )
            .when(is_covered),
            exact(
                "loss-of-open-ring",
                "pi * D ^ 2 / 4 * (10 + f) + pi * D * h * s",
                &[
                    field("D", DIAMETER),
                    field("h", HEIGHT),
                    through("s", "wall-plywood", || transmittance("wall", "plywood")),
                    through("f", "floor-middle", || transmittance("floor", "middle")),
                ],
                |x| Some(ring(x).loss_w_per_k(OPEN_TOP_W_PER_M2K, x[2], x[3])),
            )
            .from("heat-loss", Status::Derived)
            .between(|x| spread(ring(x).loss_w_per_k(OPEN_TOP_W_PER_M2K, x[2], x[3]))),
        ],
    },
    FigureSpec {
        id: "ring_heat.fresh_air",
        unit: Unit::CubicMetrePerHour,
        decimals: 0,
        rules: &[exact(
            "breath-of-ring",
            "0.185 * n * 10.62 * (growth_open_house(a) / 1000) ^ 0.75 * (1 + 0.02 * (20 - t)) / 1000 / (0.003 - 0.00042)",
            &[field("n", CHICKS), field("a", AGE), figure("t", "ring_heat.wanted")],
            |x| {
                let correction = model::bird_heat::correction(Temperature::celsius(x[2]));
                Some(heat::air_to_breathe(x[0] * model::bird_heat::total_at_20c(chick(x[1])?) * correction))
            },
        )
        .from("cigr-2002", Status::FromMemory)],
    },
    FigureSpec {
        id: "ring_heat.chick_heat",
        unit: Unit::Kilowatt,
        decimals: 2,
        rules: &[exact(
            "heat-of-ring-chicks",
            "n * 10.62 * (growth_open_house(a) / 1000) ^ 0.75 * max(0, 0.61 * (1000 + 20 * (20 - t)) - 0.228 * t ^ 2) / 1000000",
            &[field("n", CHICKS), field("a", AGE), figure("t", "ring_heat.wanted")],
            |x| Some(heat::chicks(x[0], chick(x[1])?, Temperature::celsius(x[2])) / 1000.0),
        )
        .from("cigr-2002", Status::FromMemory)],
    },
    FigureSpec {
        id: "ring_heat.needed",
        unit: Unit::Kilowatt,
        decimals: 2,
        rules: &[exact("heat-of-ring", NEEDED, BALANCE, needed).from("ashrae-2017", Status::Derived)],
    },
    FigureSpec {
        id: "ring_heat.design",
        unit: Unit::Kilowatt,
        decimals: 1,
        rules: &[exact("ring-design", "1.25 * k", &[figure("k", "ring_heat.needed")], |x| Some(DESIGN_MARGIN * x[0]))
            .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "ring_heat.brooders",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "ring-brooders",
            "ceil(k / b)",
            &[figure("k", "ring_heat.design"), field("b", BROODER)],
            |x| Some(quantity::physical::round_up(x[0] / x[1])),
        )],
    },
    FigureSpec {
        id: "ring_heat.loss_if_covered",
        unit: Unit::WattPerKelvin,
        decimals: 0,
        rules: &[loss(
            "loss-if-covered",
            &[
                field("D", DIAMETER),
                field("h", HEIGHT),
                through("c", "curtain-single", || transmittance("curtain", "single")),
                through("s", "wall-plywood", || transmittance("wall", "plywood")),
                through("f", "floor-middle", || transmittance("floor", "middle")),
            ],
        )
        .when(is_open)],
    },
    FigureSpec {
        id: "ring_heat.if_covered",
        unit: Unit::Kilowatt,
        decimals: 2,
        rules: &[exact(
            "heat-if-covered",
            NEEDED,
            &[
                figure("H", "ring_heat.loss_if_covered"),
                figure("q", "ring_heat.fresh_air"),
                field("o", AROUND),
                figure("t", "ring_heat.wanted"),
                figure("s", "ring_heat.chick_heat"),
            ],
            needed,
        )
        .when(is_open)
        .from("ashrae-2017", Status::Derived)],
    },
];

const NEEDED: &str =
    "max(0, (H + q * 1006 * 101325 / (287.042 * (o + 273.15)) / 3600) * max(0, t - o) - 1000 * s) / 1000";

const BALANCE: &[Input] = &[
    figure("H", "ring_heat.loss"),
    figure("q", "ring_heat.fresh_air"),
    field("o", AROUND),
    figure("t", "ring_heat.wanted"),
    figure("s", "ring_heat.chick_heat"),
];

/// Loss, fresh air, around the ring, wanted, chicks: kW.
fn needed(x: &[f64]) -> Option<f64> {
    let around = Temperature::celsius(x[2]);
    let with_air = x[1] * heat::heat_of_air(around, moist_air::pressure_at(0.0));
    let balance = Balance { through: x[0], with_air, animals: 1000.0 * x[4] };
    Some(balance.heat_to_put_in(Temperature::celsius(x[3]), around) / 1000.0)
}

/// Across and high; what top, sheet and floor let through.
const fn loss(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "pi * D ^ 2 / 4 * (c + f) + pi * D * h * s", inputs, |x| {
        Some(ring(x).loss_w_per_k(x[2], x[3], x[4]))
    })
    .from("heat-loss", Status::Derived)
    .between(|x| spread(ring(x).loss_w_per_k(x[2], x[3], x[4])))
}

fn ring(x: &[f64]) -> Ring {
    Ring { diameter_m: x[0], height_m: x[1] }
}

fn spread(loss: f64) -> Option<(f64, f64)> {
    Some((loss * (1.0 - SPREAD), loss * (1.0 + SPREAD)))
}

fn chick(age_d: f64) -> Option<quantity::Mass> {
    Standard::OpenHouse.curve().ok()?.weight(DayOfAge(age_d as i32))
}

fn is_covered(answers: &Answers) -> bool {
    answers.choice(TOP) == Some("covered")
}

fn is_open(answers: &Answers) -> bool {
    answers.choice(TOP) == Some("open")
}

const fn through(symbol: &'static str, point: &'static str, read: fn() -> Option<f64>) -> Input {
    let (table, unit) = ("heat_loss", Unit::WattPerSquareMetreKelvin);
    Input { symbol, origin: Origin::Table { table, point, unit, read } }
}

fn transmittance(element: &str, name: &str) -> Option<f64> {
    reference::heat_loss::transmittance(element, name).ok()?
}
