//! Heat before the chicks come: what goes out of the heated part, what the chicks give, what brooders must give.

use model::bird_heat;
use model::heat::{self, Balance};
use model::moist_air;
use quantity::{Answers, Mass, Series, Status, Temperature, Unit};

use super::shell::{EAVE, HALF_WALL, LENGTH, RIDGE, WIDTH, is_covered, loss, part};
use super::{Family, fuel, space};
use crate::outcome::Outcome;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure, if_known, if_told};
use crate::series::{DayInput, DayOrigin, SeriesSpec, Until, Way};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: SUMS, series: SERIES, shapes: &[] };

static SUMS: &[Sum] = &[Sum {
    name: "brooding",
    inputs: &[
        asks("length_m", LENGTH),
        asks("width_m", WIDTH),
        asks("eave_height_m", EAVE),
        asks("ridge_height_m", RIDGE),
        asks("half_wall_m", HALF_WALL),
        asks("coldest_night_c", COLDEST),
        asks("chicks", CHICKS),
        may_ask("heated_length_m", "brooding.heated_length_m"),
        may_ask("wall", "house.wall"),
        may_ask("roof", "house.roof"),
        may_ask("ceiling", "house.ceiling"),
        may_ask("curtain", "house.curtain"),
        may_ask("air_changes_per_h", AIR_CHANGES),
        may_ask("humidity_percent", HUMIDITY),
        may_ask("brooder", "brooding.brooder"),
        may_ask("brooder_kw", OWN_KW),
        may_ask("brooders", BROODERS),
        may_ask("fuel", fuel::FUEL),
        may_ask("days_d", DAYS),
        may_ask("hours_per_day_h", HOURS),
        may_ask("cylinder_kg", "brooding.cylinder_kg"),
        may_ask("sack_kg", "brooding.sack_kg"),
    ],
    figures: &[
        "brooding.heat",
        "brooding.heat_whole_house",
        "brooding.design",
        "brooding.brooders_needed",
        "brooding.power_short",
        "brooding.coldest_air",
        "brooding.fuel_day",
        "brooding.fuel_total",
        "brooding.cylinders",
        "brooding.sacks",
        "brooding.spare",
        "brooding.saving",
        "brooding.air_for_fire",
        "brooding.carbon_monoxide",
    ],
    caution: Some("caution-heat-sum"),
}];

const AIR_CHANGES: &str = "house.air_changes_per_h";
const ALTITUDE: &str = "farm.altitude_m";
const CHICKS: &str = "batch.chicks";
const COLDEST: &str = "weather.coldest_night_c";
const HUMIDITY: &str = "weather.humidity_percent";
const OWN_KW: &str = "brooding.brooder_kw";
const BROODERS: &str = "brooding.brooders";
const DAYS: &str = "brooding.days_d";
const HOURS: &str = "brooding.hours_per_day_h";

/// A day-old chick, kg.
const DAY_OLD_KG: f64 = 0.044;
/// How far a guess at leakage can lie off, as a factor: our judgement.
const LEAKAGE_FACTOR: f64 = 2.0;
/// What is added to the need of the coldest night for gusts, dirt and a brooder that fails: common practice.
const DESIGN_MARGIN: f64 = 1.25;

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "brooding.target_temperature",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact("target-first-day", "brooding_temperature(0, r)", &[field("r", HUMIDITY)], |x| {
            reference::temperature::target(0.0, x[0])
        })
        .from("brooding-temperature", Status::FromMemory)],
    },
    FigureSpec {
        id: "brooding.air_to_breathe",
        unit: Unit::CubicMetrePerHour,
        decimals: 0,
        rules: &[exact(
            "air-to-breathe",
            "0.185 * n * 10.62 * 0.044 ^ 0.75 * (1 + 0.02 * (20 - t)) / 1000 / (0.003 - 0.00042)",
            &[field("n", CHICKS), figure("t", "brooding.target_temperature")],
            |x| {
                let each =
                    bird_heat::total_at_20c(day_old()) * bird_heat::correction(Temperature::celsius(x[1]));
                Some(heat::air_to_breathe(x[0] * each))
            },
        )
        .from("cigr-2002", Status::FromMemory)],
    },
    FigureSpec {
        id: "brooding.fresh_air",
        unit: Unit::CubicMetrePerHour,
        decimals: 0,
        rules: &[
            exact(
                "air-of-covered-rings",
                "max(a * r * A * b, q)",
                &[
                    field("a", AIR_CHANGES),
                    figure("r", "guard.rings"),
                    figure("A", "guard.ring_area"),
                    figure("b", "guard.strip_height"),
                    figure("q", "brooding.air_to_breathe"),
                ],
                |x| Some(fresh_air(x[0] * x[1] * x[2] * x[3], x[4])),
            )
            .when(is_covered)
            .from("our-judgement", Status::OurJudgement)
            .between(|x| leaks(x[0] * x[1] * x[2] * x[3], x[4])),
            exact(
                "air-of-heated-part",
                "max(a * V, q)",
                &[
                    field("a", AIR_CHANGES),
                    figure("V", "brooding.air_volume"),
                    figure("q", "brooding.air_to_breathe"),
                ],
                |x| Some(fresh_air(x[0] * x[1], x[2])),
            )
            .from("our-judgement", Status::OurJudgement)
            .between(|x| leaks(x[0] * x[1], x[2])),
        ],
    },
    FigureSpec {
        id: "brooding.fresh_air_whole_house",
        unit: Unit::CubicMetrePerHour,
        decimals: 0,
        rules: &[exact(
            "air-of-whole-house",
            "max(a * L * W * (h + r) / 2, q)",
            &[
                field("a", AIR_CHANGES),
                field("L", LENGTH),
                field("W", WIDTH),
                field("h", EAVE),
                field("r", RIDGE),
                figure("q", "brooding.air_to_breathe"),
            ],
            |x| Some(fresh_air(x[0] * part(&x[1..5]).air().in_cubic_metres(), x[5])),
        )
        .from("our-judgement", Status::OurJudgement)
        .between(|x| leaks(x[0] * part(&x[1..5]).air().in_cubic_metres(), x[5]))],
    },
    FigureSpec {
        id: "brooding.air_heat",
        unit: Unit::WattHourPerCubicMetreKelvin,
        decimals: 3,
        rules: &[
            exact(
                "air-heat-at-height",
                "1006 * 101325 * (1 - 2.25577 * z / 100000) ^ 5.2559 / (287.042 * (o + 273.15)) / 3600",
                &[field("z", ALTITUDE), field("o", COLDEST)],
                |x| Some(heat::heat_of_air(Temperature::celsius(x[1]), moist_air::pressure_at(x[0]))),
            )
            .when(|answers| answers.number(ALTITUDE).is_some())
            .from("ashrae-2017", Status::FromMemory),
            exact(
                "air-heat-at-sea",
                "1006 * 101325 / (287.042 * (o + 273.15)) / 3600",
                &[field("o", COLDEST)],
                |x| Some(heat::heat_of_air(Temperature::celsius(x[0]), moist_air::pressure_at(0.0))),
            )
            .from("ashrae-2017", Status::FromMemory),
        ],
    },
    loss(
        "brooding.air_change_loss",
        &[exact(
            "with-the-air",
            "q * c",
            &[figure("q", "brooding.fresh_air"), figure("c", "brooding.air_heat")],
            |x| Some(x[0] * x[1]),
        )],
    ),
    loss(
        "brooding.loss",
        &[exact(
            "loss-of-heated-part",
            "k + a",
            &[figure("k", "brooding.ua_heated"), figure("a", "brooding.air_change_loss")],
            |x| Some(x[0] + x[1]),
        )],
    ),
    loss(
        "brooding.loss_whole_house",
        &[exact(
            "loss-of-whole-house",
            "k + q * c",
            &[
                figure("k", "brooding.ua"),
                figure("q", "brooding.fresh_air_whole_house"),
                figure("c", "brooding.air_heat"),
            ],
            |x| Some(x[0] + x[1] * x[2]),
        )],
    ),
    power(
        "brooding.chick_heat",
        &[exact(
            "heat-of-chicks",
            "n * 10.62 * 0.044 ^ 0.75 * max(0, 0.61 * (1000 + 20 * (20 - t)) - 0.228 * t ^ 2) / 1000000",
            &[field("n", CHICKS), figure("t", "brooding.target_temperature")],
            |x| Some(chick_heat_kw(x)),
        )
        .from("cigr-2002", Status::FromMemory)
        .between(|x| Some((0.9 * chick_heat_kw(x), 1.25 * chick_heat_kw(x))))],
    ),
    power(
        "brooding.heat_steady",
        &[needed(
            "heat-steady",
            &[
                figure("H", "brooding.loss"),
                figure("t", "brooding.target_temperature"),
                field("o", COLDEST),
                figure("s", "brooding.chick_heat"),
            ],
        )],
    ),
    power(
        "brooding.design",
        &[exact("design-heat", "1.25 * h", &[figure("h", "brooding.heat")], |x| Some(DESIGN_MARGIN * x[0]))
            .from("common-practice", Status::CommonPractice)],
    ),
    power(
        "brooding.brooder_power",
        &[
            exact("power-told", "p", &[field("p", OWN_KW)], |x| Some(x[0]))
                .when(|answers| answers.number(OWN_KW).is_some())
                .from("label", Status::Told),
            exact(
                "power-charcoal-pot",
                "p",
                &[rated_power("charcoal-pot-heat", || useful_kw("charcoal-pot"))],
                |x| Some(x[0]),
            )
            .when(|answers| answers.choice("brooding.brooder") == Some("charcoal-pot"))
            .from("brooder-ratings", Status::FromMemory),
            exact("power-gas-hover", "p", &[rated_power("gas-hover-heat", || useful_kw("gas-hover"))], |x| {
                Some(x[0])
            })
            .when(|answers| answers.choice("brooding.brooder") == Some("gas-hover"))
            .from("brooder-ratings", Status::FromMemory),
        ],
    ),
    power(
        "brooding.heat_installed",
        &[exact(
            "heat-installed",
            "b * p + q",
            &[
                field("b", BROODERS),
                figure("p", "brooding.brooder_power"),
                if_known("q", "brooding.second_heat"),
            ],
            |x| Some(x[0] * x[1] + x[2]),
        )],
    ),
    FigureSpec {
        id: "brooding.brooders_needed",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "brooders-needed",
            "max(max(0, r - e), ceil(max(0, d - q) / p))",
            &[
                figure("d", "brooding.design"),
                figure("p", "brooding.brooder_power"),
                if_known("r", "guard.rings"),
                if_known("q", "brooding.second_heat"),
                if_told("e", "brooding.second_brooders"),
            ],
            |x| {
                let for_heat = quantity::physical::round_up((x[0] - x[3]).max(0.0) / x[1]);
                Some(for_heat.max(x[2] - x[4]).max(0.0))
            },
        )],
    },
    power(
        "brooding.power_short",
        &[exact(
            "power-short",
            "max(0, d - g)",
            &[figure("d", "brooding.design"), figure("g", "brooding.heat_installed")],
            |x| Some((x[0] - x[1]).max(0.0)),
        )],
    ),
    power(
        "air.heat_short",
        &[exact(
            "heat-short",
            "max(0, h - g)",
            &[figure("h", "brooding.heat"), figure("g", "brooding.heat_installed")],
            |x| Some((x[0] - x[1]).max(0.0)),
        )],
    ),
];

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "brooding.heat_by_day",
        unit: Unit::Kilowatt,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Procedure {
            made_from: &[
                "brooding.loss",
                "brooding.target_temperature",
                "brooding.chick_heat",
                "brooding.heat",
            ],
            source: "brooding-temperature",
            status: Status::Derived,
            work_out: heat_by_day,
        },
    },
    SeriesSpec {
        id: "brooding.temperature_by_day",
        unit: Unit::Celsius,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "temperature-by-day",
            "t",
            &[
                wanted("t", "target", |answers, day| {
                    reference::temperature::target(day, answers.number(HUMIDITY)?)
                }),
                wanted("a", "lowest", |answers, day| Some(guides(answers, day)?.0)),
                wanted("b", "highest", |answers, day| Some(guides(answers, day)?.1)),
            ],
            |x| Some(x[0]),
        )
        .between(|x| Some((x[1], x[2])))
        .from("brooding-temperature", Status::FromMemory)]),
    },
];

/// A point of the temperature table at the day's age.
const fn wanted(
    symbol: &'static str,
    point: &'static str,
    read: fn(&Answers, f64) -> Option<f64>,
) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Table { table: "temperature", point, unit: Unit::Celsius, read } }
}

fn guides(answers: &Answers, day: f64) -> Option<(f64, f64)> {
    reference::temperature::spread(day, answers.number(HUMIDITY)?)
}

/// The need of each brooding day on a night as cold as the coldest, as chicks grow and want less heat: the hardest hour where
/// the balance by the hour was run.
fn heat_by_day(answers: &Answers, outcome: &Outcome) -> Option<Series> {
    let values = match outcome.drawn().heat() {
        Some(heat) => heat.peaks_kw(),
        None => steady_by_day(answers, outcome)?,
    };
    Some(Series {
        id: "brooding.heat_by_day",
        index: (0..values.len()).map(|day| day as f64).collect(),
        values,
        low: Vec::new(),
        high: Vec::new(),
        kind: None,
    })
}

fn steady_by_day(answers: &Answers, outcome: &Outcome) -> Option<Vec<f64>> {
    let days = answers.number(DAYS)?;
    let need = fuel::Need {
        loss: outcome.number("brooding.loss")?,
        coldest: answers.number(COLDEST)?,
        humidity: answers.number(HUMIDITY)?,
        chicks: answers.number(CHICKS)?,
    };
    (0..days as i32).map(|day| need.on_day(f64::from(day), space::standard(answers))).collect()
}

pub(super) const fn power(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Kilowatt, decimals: 1, rules }
}

/// The balance over loss, inside, outside and chicks.
pub(super) const fn needed(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "max(0, H * max(0, t - o) - 1000 * s) / 1000", inputs, |x| {
        let balance = Balance { through: x[0], with_air: 0.0, animals: 1000.0 * x[3] };
        Some(balance.heat_to_put_in(Temperature::celsius(x[1]), Temperature::celsius(x[2])) / 1000.0)
    })
    .from("ashrae-2017", Status::Derived)
}

pub(super) const fn rated_power(point: &'static str, read: fn() -> Option<f64>) -> Input {
    let (table, unit) = ("brooder_chicks", Unit::Kilowatt);
    Input { symbol: "p", origin: Origin::Table { table, point, unit, read } }
}

/// Heat one brooder of a kind gives, kW.
pub(crate) fn useful_kw(brooder: &str) -> Option<f64> {
    reference::brooder::useful_kw(brooder).ok()?
}

/// What leaks, or what chicks must have to breathe if that is more.
fn fresh_air(leaks: f64, to_breathe: f64) -> f64 {
    leaks.max(to_breathe)
}

fn leaks(guess: f64, to_breathe: f64) -> Option<(f64, f64)> {
    Some((fresh_air(guess / LEAKAGE_FACTOR, to_breathe), fresh_air(guess * LEAKAGE_FACTOR, to_breathe)))
}

pub(super) fn day_old() -> Mass {
    Mass::kilograms(DAY_OLD_KG)
}

/// Chicks and their comfort temperature.
fn chick_heat_kw(x: &[f64]) -> f64 {
    heat::chicks(x[0], day_old(), Temperature::celsius(x[1])) / 1000.0
}
