//! Heat before the chicks come: what goes out of the heated part, what the chicks give, what brooders must give.

use model::bird_heat;
use model::disinfectant::Room;
use model::heat::{self, Balance, HeatedPart};
use model::moist_air;
use quantity::{Answers, Length, Mass, Series, Status, Temperature, Unit};

use super::{Family, fuel, space};
use crate::outcome::Outcome;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure};
use crate::series::{DayInput, DayOrigin, SeriesSpec, Way, daily};
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
        may_ask("heated_length_m", HEATED),
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
        may_ask("hours_per_day", HOURS),
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
        "brooding.fuel_per_day",
        "brooding.fuel",
        "brooding.cylinders",
        "brooding.sacks",
        "brooding.spare",
        "brooding.saving",
        "brooding.carbon_monoxide",
    ],
    caution: Some("caution-heat-sum"),
}];

const LENGTH: &str = "house.length_m";
const WIDTH: &str = "house.width_m";
const EAVE: &str = "house.eave_height_m";
const RIDGE: &str = "house.ridge_height_m";
const HALF_WALL: &str = "house.half_wall_m";
const AIR_CHANGES: &str = "house.air_changes_per_h";
const ALTITUDE: &str = "farm.altitude_m";
const CHICKS: &str = "batch.chicks";
const COLDEST: &str = "weather.coldest_night_c";
const HUMIDITY: &str = "weather.humidity_percent";
const HEATED: &str = "brooding.heated_length_m";
const OWN_KW: &str = "brooding.brooder_kw";
const BROODERS: &str = "brooding.brooders";
const DAYS: &str = "brooding.days_d";
const HOURS: &str = "brooding.hours_per_day";

/// A day-old chick, kg.
const DAY_OLD_KG: f64 = 0.044;
/// Heat through the edge of a slab for each metre of outer wall, W/mK: ASHRAE, uninsulated, from memory.
const EDGE_W_PER_MK: f64 = 1.26;
/// How far a heat loss worked out from a table of walls can lie off, as a share: our judgement.
const UA_SPREAD: f64 = 0.2;
/// How far a guess at leakage can lie off, as a factor: our judgement.
const LEAKAGE_FACTOR: f64 = 2.0;
/// What is added to the need of the coldest night for gusts, dirt and a brooder that fails: common practice.
pub(crate) const DESIGN_MARGIN: f64 = 1.25;

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
        id: "brooding.heated_length",
        unit: Unit::Metre,
        decimals: 1,
        rules: &[
            exact("heated-end", "min(l, L)", &[field("l", HEATED), field("L", LENGTH)], |x| {
                Some(x[0].min(x[1]))
            })
            .when(heats_an_end),
            exact("heated-whole", "L", &[field("L", LENGTH)], |x| Some(x[0])),
        ],
    },
    FigureSpec {
        id: "brooding.way_round",
        unit: Unit::Metre,
        decimals: 1,
        rules: &[
            exact("way-round-end", "2 * l + W", ROUND, |x| Some(flat(x, true).way_round().in_metres()))
                .when(heats_an_end),
            exact("way-round-whole", "2 * (l + W)", ROUND, |x| Some(flat(x, false).way_round().in_metres())),
        ],
    },
    FigureSpec {
        id: "brooding.wall_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact(
            "heated-walls",
            "o * m",
            &[figure("o", "brooding.way_round"), field("m", HALF_WALL)],
            |x| Some(x[0] * x[1]),
        )],
    },
    FigureSpec {
        id: "brooding.curtain_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact(
            "heated-curtain",
            "o * (h - m)",
            &[figure("o", "brooding.way_round"), field("h", EAVE), field("m", HALF_WALL)],
            |x| Some(x[0] * (x[1] - x[2])),
        )],
    },
    FigureSpec {
        id: "brooding.end_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[
            exact("ends-with-partition", "W * (r - h) / 2 + W * (h + r) / 2", RISE, |x| {
                Some(across(x, true).ends().in_square_metres())
            })
            .when(heats_an_end),
            exact("ends-gables", "W * (r - h)", RISE, |x| Some(across(x, false).ends().in_square_metres())),
        ],
    },
    FigureSpec {
        id: "brooding.roof_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact("heated-roof", "l * W * sqrt(1 + ((r - h) / (W / 2)) ^ 2)", PART, |x| {
            Some(part(x).room.roof().in_square_metres())
        })],
    },
    FigureSpec {
        id: "brooding.air_volume",
        unit: Unit::CubicMetre,
        decimals: 0,
        rules: &[exact("heated-air", "l * W * (h + r) / 2", PART, |x| Some(part(x).air().in_cubic_metres()))],
    },
    FigureSpec {
        id: "brooding.roof_with_ceiling",
        unit: Unit::WattPerSquareMetreKelvin,
        decimals: 2,
        rules: &[
            exact(
                "roof-under-ceiling",
                "1 / (1 / u + R)",
                &[let_through("u", "roof", "house.roof", roof), ceiling("R")],
                |x| Some(heat::under_ceiling(x[0], x[1])),
            )
            .when(|answers| answers.choice("house.ceiling").is_some())
            .from("heat-loss", Status::Derived),
            exact("roof-bare", "u", &[let_through("u", "roof", "house.roof", roof)], |x| Some(x[0]))
                .from("heat-loss", Status::Derived),
        ],
    },
    loss(
        "brooding.ua_walls",
        &[through("through-walls", &[figure("A", "brooding.wall_area"), let_through("u", "wall", "house.wall", wall)])],
    ),
    loss(
        "brooding.ua_curtain",
        &[through(
            "through-curtain",
            &[figure("A", "brooding.curtain_area"), let_through("u", "curtain", "house.curtain", curtain)],
        )],
    ),
    loss(
        "brooding.ua_ends",
        &[through("through-ends", &[figure("A", "brooding.end_area"), fixed("u", "curtain-single", || curtain("single"))])],
    ),
    loss(
        "brooding.ua_roof",
        &[through("through-roof", &[figure("A", "brooding.roof_area"), figure("u", "brooding.roof_with_ceiling")])],
    ),
    loss(
        "brooding.ua_floor",
        &[exact("through-floor-edge", "1.26 * o", &[figure("o", "brooding.way_round")], |x| {
            Some(EDGE_W_PER_MK * x[0])
        })
        .from("ashrae-2017", Status::FromMemory)],
    ),
    loss(
        "brooding.ua",
        &[exact(
            "through-whole-house",
            "2 * (L + W) * (m * u1 + (h - m) * u2 + 1.26) + W * (r - h) * u3 + L * W * sqrt(1 + ((r - h) / (W / 2)) ^ 2) * u4",
            &[
                field("L", LENGTH),
                field("W", WIDTH),
                field("h", EAVE),
                field("r", RIDGE),
                field("m", HALF_WALL),
                let_through("u1", "wall", "house.wall", wall),
                let_through("u2", "curtain", "house.curtain", curtain),
                fixed("u3", "curtain-single", || curtain("single")),
                figure("u4", "brooding.roof_with_ceiling"),
            ],
            |x| Some(whole_house_ua(x)),
        )
        .from("heat-loss", Status::Derived)
        .between(|x| spread(whole_house_ua(x)))],
    ),
    loss(
        "brooding.ua_cover",
        &[exact(
            "through-cover",
            "r * A * u",
            &[
                figure("r", "guard.rings"),
                figure("A", "guard.ring_area"),
                fixed("u", "curtain-single", || curtain("single")),
            ],
            |x| Some(x[0] * x[1] * x[2]),
        )
        .when(is_covered)
        .from("heat-loss", Status::Derived)],
    ),
    loss(
        "brooding.ua_guard",
        &[exact(
            "through-guard",
            "n * s * b * u",
            &[
                figure("n", "guard.strips"),
                figure("s", "guard.strip_net"),
                figure("b", "guard.strip_height"),
                fixed("u", "wall-plywood", || wall("plywood")),
            ],
            |x| Some(x.iter().product()),
        )
        .when(is_covered)
        .from("heat-loss", Status::Derived)],
    ),
    loss(
        "brooding.ua_ground",
        &[exact(
            "through-ground",
            "r * A * u",
            &[
                figure("r", "guard.rings"),
                figure("A", "guard.ring_area"),
                fixed("u", "floor-middle", || transmittance("floor", "middle")),
            ],
            |x| Some(x[0] * x[1] * x[2]),
        )
        .when(is_covered)
        .from("heat-loss", Status::FromMemory)],
    ),
    loss(
        "brooding.ua_heated",
        &[
            exact(
                "through-covered-rings",
                "c + g + f",
                &[
                    figure("c", "brooding.ua_cover"),
                    figure("g", "brooding.ua_guard"),
                    figure("f", "brooding.ua_ground"),
                ],
                |x| Some(x.iter().sum()),
            )
            .when(is_covered)
            .from("our-judgement", Status::OurJudgement)
            .between(|x| spread(x.iter().sum())),
            exact(
                "through-heated-part",
                "w + c + e + r + f",
                &[
                    figure("w", "brooding.ua_walls"),
                    figure("c", "brooding.ua_curtain"),
                    figure("e", "brooding.ua_ends"),
                    figure("r", "brooding.ua_roof"),
                    figure("f", "brooding.ua_floor"),
                ],
                |x| Some(x.iter().sum()),
            )
            .between(|x| spread(x.iter().sum())),
        ],
    ),
    FigureSpec {
        id: "brooding.air_to_breathe",
        unit: Unit::CubicMetrePerHour,
        decimals: 0,
        rules: &[exact(
            "air-to-breathe",
            "0.185 * n * 10.62 * 0.044 ^ 0.75 * (1 + 0.02 * (20 - t)) / 1000 / (0.003 - 0.00042)",
            &[field("n", CHICKS), figure("t", "brooding.target_temperature")],
            |x| {
                let each = bird_heat::total_at_20c(day_old()) * bird_heat::correction(Temperature::celsius(x[1]));
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
        "brooding.heat",
        &[needed(
            "heat-needed",
            &[
                figure("H", "brooding.loss"),
                figure("t", "brooding.target_temperature"),
                field("o", COLDEST),
                figure("s", "brooding.chick_heat"),
            ],
        )],
    ),
    power(
        "brooding.heat_whole_house",
        &[needed(
            "heat-whole-house",
            &[
                figure("H", "brooding.loss_whole_house"),
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
            exact("power-charcoal-pot", "p", &[rated("charcoal-pot-heat", || useful_kw("charcoal-pot"))], |x| Some(x[0]))
                .when(|answers| answers.choice("brooding.brooder") == Some("charcoal-pot"))
                .from("brooder-ratings", Status::FromMemory),
            exact("power-gas-hover", "p", &[rated("gas-hover-heat", || useful_kw("gas-hover"))], |x| Some(x[0]))
                .when(|answers| answers.choice("brooding.brooder") == Some("gas-hover"))
                .from("brooder-ratings", Status::FromMemory),
        ],
    ),
    FigureSpec {
        id: "brooding.brooders_needed",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "brooders-needed",
            "ceil(d / p)",
            &[figure("d", "brooding.design"), figure("p", "brooding.brooder_power")],
            |x| Some(quantity::physical::round_up(x[0] / x[1])),
        )],
    },
    power(
        "brooding.power_short",
        &[exact(
            "power-short",
            "max(0, d - b * p)",
            &[
                figure("d", "brooding.design"),
                field("b", BROODERS),
                figure("p", "brooding.brooder_power"),
            ],
            |x| Some((x[0] - x[1] * x[2]).max(0.0)),
        )],
    ),
    FigureSpec {
        id: "brooding.coldest_air",
        unit: Unit::Celsius,
        decimals: 0,
        rules: &[exact(
            "air-settles",
            "min(t, (sqrt(H ^ 2 + 4 * 0.000228 * n * 10.62 * 0.044 ^ 0.75 * (1000 * b * p + 0.61 * n * 10.62 * 0.044 ^ 0.75 + H * o)) - H) / (2 * 0.000228 * n * 10.62 * 0.044 ^ 0.75))",
            &[
                figure("t", "brooding.target_temperature"),
                figure("H", "brooding.loss"),
                field("n", CHICKS),
                field("b", BROODERS),
                figure("p", "brooding.brooder_power"),
                field("o", COLDEST),
            ],
            coldest_air,
        )
        .from("cigr-2002", Status::FromMemory)],
    },
];

const ROUND: &[Input] = &[figure("l", "brooding.heated_length"), field("W", WIDTH)];
const RISE: &[Input] = &[field("W", WIDTH), field("h", EAVE), field("r", RIDGE)];
const PART: &[Input] =
    &[figure("l", "brooding.heated_length"), field("W", WIDTH), field("h", EAVE), field("r", RIDGE)];

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "brooding.heat_by_day",
        unit: Unit::Kilowatt,
        decimals: 1,
        first_day: 0,
        way: Way::Procedure {
            made_from: &["brooding.loss", "brooding.target_temperature", "brooding.chick_heat"],
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
        way: Way::Rules(&[daily(
            "temperature-by-day",
            "t",
            &[DayInput {
                symbol: "t",
                origin: DayOrigin::Table {
                    table: "temperature",
                    point: "target",
                    unit: Unit::Celsius,
                    read: |answers, day| reference::temperature::target(day, answers.number(HUMIDITY)?),
                },
            }],
            |x| Some(x[0]),
        )
        .from("brooding-temperature", Status::FromMemory)]),
    },
];

/// The need of each brooding day on a night as cold as the coldest, as chicks grow and want less heat.
fn heat_by_day(answers: &Answers, outcome: &Outcome) -> Option<Series> {
    let days = answers.number(DAYS)?;
    let need = fuel::Need {
        loss: outcome.number("brooding.loss")?,
        coldest: answers.number(COLDEST)?,
        humidity: answers.number(HUMIDITY)?,
        chicks: answers.number(CHICKS)?,
    };
    let index: Vec<f64> = (0..days as i32).map(f64::from).collect();
    let values = index.iter().map(|&day| need.on_day(day, space::standard(answers)));
    Some(Series {
        id: "brooding.heat_by_day",
        values: values.collect::<Option<Vec<f64>>>()?,
        index,
        low: Vec::new(),
        high: Vec::new(),
        kind: None,
    })
}

/// Whether one end is closed off: its length is told, it is less than the house, and nobody said there is no partition.
pub(crate) fn heats_an_end(answers: &Answers) -> bool {
    let shorter = answers.number(HEATED).zip(answers.number(LENGTH)).is_some_and(|(end, house)| end < house);
    shorter && answers.choice("brooding.partition") != Some("no")
}

/// Whether the rings are covered.
pub(crate) fn is_covered(answers: &Answers) -> bool {
    answers.choice("brooding.cover") == Some("yes")
}

const fn loss(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::WattPerKelvin, decimals: 0, rules }
}

const fn power(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Kilowatt, decimals: 1, rules }
}

const fn through(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "A * u", inputs, |x| Some(x[0] * x[1])).from("heat-loss", Status::Derived)
}

/// The balance over loss, inside, outside and chicks.
const fn needed(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "max(0, H * max(0, t - o) - 1000 * s) / 1000", inputs, |x| {
        let balance = Balance { through: x[0], with_air: 0.0, animals: 1000.0 * x[3] };
        Some(balance.heat_to_put_in(Temperature::celsius(x[1]), Temperature::celsius(x[2])) / 1000.0)
    })
    .from("ashrae-2017", Status::Derived)
}

const fn let_through(
    symbol: &'static str,
    point: &'static str,
    field: &'static str,
    read: fn(&str) -> Option<f64>,
) -> Input {
    let unit = Unit::WattPerSquareMetreKelvin;
    Input { symbol, origin: Origin::TableBy { table: "heat_loss", point, unit, field, read } }
}

const fn fixed(symbol: &'static str, point: &'static str, read: fn() -> Option<f64>) -> Input {
    let unit = Unit::WattPerSquareMetreKelvin;
    Input { symbol, origin: Origin::Table { table: "heat_loss", point, unit, read } }
}

const fn ceiling(symbol: &'static str) -> Input {
    let (table, point, unit) = ("heat_loss", "ceiling", Unit::SquareMetreKelvinPerWatt);
    Input { symbol, origin: Origin::TableBy { table, point, unit, field: "house.ceiling", read: resistance } }
}

const fn rated(point: &'static str, read: fn() -> Option<f64>) -> Input {
    let (table, unit) = ("brooder_chicks", Unit::Kilowatt);
    Input { symbol: "p", origin: Origin::Table { table, point, unit, read } }
}

fn transmittance(element: &str, name: &str) -> Option<f64> {
    reference::heat_loss::transmittance(element, name).ok()?
}

fn resistance(ceiling: &str) -> Option<f64> {
    reference::heat_loss::resistance_of_ceiling(ceiling).ok()?
}

fn wall(name: &str) -> Option<f64> {
    transmittance("wall", name)
}

fn roof(name: &str) -> Option<f64> {
    transmittance("roof", name)
}

fn curtain(name: &str) -> Option<f64> {
    transmittance("curtain", name)
}

/// Heat one brooder of a kind gives, kW.
pub(crate) fn useful_kw(brooder: &str) -> Option<f64> {
    reference::brooder::useful_kw(brooder).ok()?
}

/// Length and width alone, for what hangs on the plan of the house only.
fn flat(x: &[f64], partitioned: bool) -> HeatedPart {
    HeatedPart { partitioned, ..part(&[x[0], x[1], 0.0, 0.0]) }
}

/// Width, eave and ridge alone, for what hangs on the cross-section only.
fn across(x: &[f64], partitioned: bool) -> HeatedPart {
    HeatedPart { partitioned, ..part(&[0.0, x[0], x[1], x[2]]) }
}

/// Length, width, eave, ridge.
fn part(x: &[f64]) -> HeatedPart {
    let metres = Length::metres;
    let room = Room {
        length: metres(x[0]),
        width: metres(x[1]),
        eave: metres(x[2]),
        ridge: metres(x[3]),
        half_wall: metres(0.0),
    };
    HeatedPart { room, partitioned: false }
}

/// Length, width, eave, ridge, half-wall; then what wall, curtain, gable and roof let through.
fn whole_house_ua(x: &[f64]) -> f64 {
    let room = Room { half_wall: Length::metres(x[4]), ..part(x).room };
    let faces = [room.half_walls(), room.curtain_face(), room.gables(), room.roof()];
    let through: f64 = faces.iter().zip(&x[5..]).map(|(face, u)| face.in_square_metres() * u).sum();
    through + EDGE_W_PER_MK * part(x).way_round().in_metres()
}

fn spread(ua: f64) -> Option<(f64, f64)> {
    Some((ua * (1.0 - UA_SPREAD), ua * (1.0 + UA_SPREAD)))
}

/// What leaks, or what chicks must have to breathe if that is more.
fn fresh_air(leaks: f64, to_breathe: f64) -> f64 {
    leaks.max(to_breathe)
}

fn leaks(guess: f64, to_breathe: f64) -> Option<(f64, f64)> {
    Some((fresh_air(guess / LEAKAGE_FACTOR, to_breathe), fresh_air(guess * LEAKAGE_FACTOR, to_breathe)))
}

fn day_old() -> Mass {
    Mass::kilograms(DAY_OLD_KG)
}

/// Chicks and their comfort temperature.
fn chick_heat_kw(x: &[f64]) -> f64 {
    heat::chicks(x[0], day_old(), Temperature::celsius(x[1])) / 1000.0
}

/// Target, loss, chicks, brooders, power of one, outside.
fn coldest_air(x: &[f64]) -> Option<f64> {
    let at_20c = x[2] * bird_heat::total_at_20c(day_old());
    let settled = heat::settles_at(x[1], 1000.0 * x[3] * x[4], at_20c, Temperature::celsius(x[5]))?;
    Some(settled.in_celsius().min(x[0]))
}
