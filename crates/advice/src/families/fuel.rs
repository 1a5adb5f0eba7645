//! Fuel for the brooders: how much, in cylinders and sacks, what a partition saves, and the gas that comes with it.

use model::heat::{self, Balance};
use quantity::physical::round_up;
use quantity::{Answers, DayOfAge, Mass, Status, Temperature, Unit};
use reference::growth::Standard;

use super::{Family, second_brooder};
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure, if_known};

/// The family. Its quick sum is that of the heat.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };

/// The fuel, where it is told.
pub(crate) const FUEL: &str = "brooding.fuel";

/// How far a saving can lie off, as a share: the same walls and the same burner stand on both sides of it, so most of what
/// is not known falls on both. Our judgement.
const SAVING_SPREAD: f64 = 0.25;

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "brooding.fuel_useful",
        unit: Unit::MegajoulePerKilogram,
        decimals: 1,
        rules: &[
            useful(
                "useful-of-fuel",
                &[
                    of_fuel("q", "net", Unit::MegajoulePerKilogram, net),
                    of_fuel("e1", "low", Unit::One, low),
                    of_fuel("e2", "high", Unit::One, high),
                ],
            )
            .when(|answers| answers.choice(FUEL).is_some()),
            useful(
                "useful-of-charcoal-pot",
                &[
                    constant("q", "charcoal-net", Unit::MegajoulePerKilogram, || net("charcoal")),
                    constant("e1", "charcoal-low", Unit::One, || low("charcoal")),
                    constant("e2", "charcoal-high", Unit::One, || high("charcoal")),
                ],
            )
            .when(|answers| fuel(answers) == Some("charcoal")),
            useful(
                "useful-of-gas-hover",
                &[
                    constant("q", "lpg-net", Unit::MegajoulePerKilogram, || net("lpg")),
                    constant("e1", "lpg-low", Unit::One, || low("lpg")),
                    constant("e2", "lpg-high", Unit::One, || high("lpg")),
                ],
            )
            .when(|answers| fuel(answers) == Some("lpg")),
        ],
    },
    FigureSpec {
        id: "brooding.fuel_rate",
        unit: Unit::KilogramPerHour,
        decimals: 2,
        rules: &[exact(
            "fuel-rate",
            "3.6 * h * (1 - s) / j",
            &[figure("h", "brooding.heat"), SECOND, figure("j", "brooding.fuel_useful")],
            first_burns,
        )],
    },
    FigureSpec {
        id: "brooding.fuel_day",
        unit: Unit::Kilogram,
        decimals: 1,
        rules: &[exact(
            "fuel-of-first-day",
            "3.6 * e * (1 - s) / j",
            &[figure("e", "brooding.heat_first_day"), SECOND, figure("j", "brooding.fuel_useful")],
            first_burns,
        )],
    },
    kilograms(
        "brooding.fuel_total",
        &[exact(
            "fuel-over-days",
            "3.6 * e * (1 - s) / j + f",
            &[
                figure("e", "brooding.heat_over_days"),
                SECOND,
                figure("j", "brooding.fuel_useful"),
                figure("f", "brooding.fuel_day"),
            ],
            |x| Some(first_burns(x)? + x[3]),
        )],
    ),
    kilograms(
        "brooding.saving",
        &[exact(
            "fuel-saved",
            "max(0, 3.6 * (w - e) * (1 - s) / j)",
            &[
                figure("w", "brooding.heat_over_days_whole_house"),
                figure("e", "brooding.heat_over_days"),
                SECOND,
                figure("j", "brooding.fuel_useful"),
            ],
            |x| Some(saving(x)),
        )
        .from("our-judgement", Status::OurJudgement)
        .between(|x| Some((saving(x) * (1.0 - SAVING_SPREAD), saving(x) * (1.0 + SAVING_SPREAD))))],
    ),
    FigureSpec {
        id: "brooding.cylinders",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[whole(
            "cylinders",
            &[figure("f", "brooding.fuel_total"), field("c", "brooding.cylinder_kg")],
        )
        .when(is_gas)],
    },
    FigureSpec {
        id: "brooding.sacks",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[whole("sacks", &[figure("f", "brooding.fuel_total"), field("c", "brooding.sack_kg")])
            .when(is_charcoal)],
    },
    FigureSpec {
        id: "brooding.cylinders_saved",
        unit: Unit::Pieces,
        decimals: 1,
        rules: &[part_of(
            "cylinders-saved",
            &[figure("s", "brooding.saving"), field("c", "brooding.cylinder_kg")],
        )
        .when(is_gas)],
    },
    FigureSpec {
        id: "brooding.sacks_saved",
        unit: Unit::Pieces,
        decimals: 1,
        rules: &[part_of("sacks-saved", &[figure("s", "brooding.saving"), field("c", "brooding.sack_kg")])
            .when(is_charcoal)],
    },
    half_kilograms(
        "brooding.spare",
        &[
            exact("spare-cylinder", "c", &[field("c", "brooding.cylinder_kg")], |x| Some(x[0]))
                .when(is_gas)
                .from("common-practice", Status::CommonPractice),
            exact("spare-two-nights", "2 * f", &[figure("f", "brooding.fuel_day")], |x| Some(2.0 * x[0]))
                .from("common-practice", Status::CommonPractice),
        ],
    ),
    FigureSpec {
        id: "brooding.fuel_cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[
            cost(
                "cost-of-cylinders",
                &[figure("n", "brooding.cylinders"), field("p", "prices.gas_cylinder_each")],
            )
            .when(is_gas),
            cost("cost-of-sacks", &[figure("n", "brooding.sacks"), field("p", "prices.charcoal_sack_each")])
                .when(is_charcoal),
        ],
    },
    FigureSpec {
        id: "brooding.spare_packs",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[
            packs_besides(
                "spare-cylinders",
                &[
                    figure("f", "brooding.fuel_total"),
                    figure("s", "brooding.spare"),
                    field("c", "brooding.cylinder_kg"),
                    figure("n", "brooding.cylinders"),
                ],
            )
            .when(is_gas),
            packs_besides(
                "spare-sacks",
                &[
                    figure("f", "brooding.fuel_total"),
                    figure("s", "brooding.spare"),
                    field("c", "brooding.sack_kg"),
                    figure("n", "brooding.sacks"),
                ],
            )
            .when(is_charcoal),
        ],
    },
    FigureSpec {
        id: "brooding.spare_cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[
            cost(
                "cost-of-spare-cylinders",
                &[figure("n", "brooding.spare_packs"), field("p", "prices.gas_cylinder_each")],
            )
            .when(is_gas),
            cost(
                "cost-of-spare-sacks",
                &[figure("n", "brooding.spare_packs"), field("p", "prices.charcoal_sack_each")],
            )
            .when(is_charcoal),
        ],
    },
    FigureSpec {
        id: "brooding.air_for_fire",
        unit: Unit::CubicMetrePerHour,
        decimals: 0,
        rules: &[
            exact(
                "air-for-second-fire",
                "e / 1.83 / (0.003 - 0.00042) + q",
                &[SECOND_STALE, figure("q", "brooding.air_to_breathe")],
                |x| Some(heat::air_for_fire(x[0]) + x[1]),
            )
            .when(only_second_burns)
            .from("fuels", Status::FromMemory),
            fire(
                "air-for-fuel",
                &[
                    figure("f", "brooding.fuel_rate"),
                    of_fuel("c", "co2", Unit::One, co2),
                    SECOND_STALE,
                    figure("q", "brooding.air_to_breathe"),
                ],
            )
            .when(|answers| answers.choice(FUEL).is_some()),
            fire(
                "air-for-charcoal-pot",
                &[
                    figure("f", "brooding.fuel_rate"),
                    constant("c", "charcoal-co2", Unit::One, || co2("charcoal")),
                    SECOND_STALE,
                    figure("q", "brooding.air_to_breathe"),
                ],
            )
            .when(is_charcoal),
            fire(
                "air-for-gas-hover",
                &[
                    figure("f", "brooding.fuel_rate"),
                    constant("c", "lpg-co2", Unit::One, || co2("lpg")),
                    SECOND_STALE,
                    figure("q", "brooding.air_to_breathe"),
                ],
            )
            .when(is_gas),
        ],
    },
    FigureSpec {
        id: "brooding.carbon_monoxide",
        unit: Unit::PartsPerMillion,
        decimals: 0,
        rules: &[
            exact(
                "gas-of-second-fire",
                "max(9, 1000000 * 1000 * (l + u) / 2 / 1165 / (a * V))",
                &[
                    SECOND_LOW,
                    SECOND_HIGH,
                    field("a", "house.air_changes_per_h"),
                    figure("V", "brooding.air_volume"),
                ],
                |x| Some(ppm_of(1000.0 * (x[0] + x[1]) / 2.0, x[2] * x[3])),
            )
            .when(only_second_burns)
            .from("fuels", Status::FromMemory)
            .between(|x| {
                Some((ppm_of(1000.0 * x[0], 2.0 * x[2] * x[3]), ppm_of(1000.0 * x[1], 0.5 * x[2] * x[3])))
            }),
            monoxide(
                "gas-of-fuel",
                &[
                    field("b", "brooding.brooders"),
                    figure("p", "brooding.brooder_power"),
                    figure("j", "brooding.fuel_useful"),
                    field("a", "house.air_changes_per_h"),
                    figure("V", "brooding.air_volume"),
                    of_fuel("g1", "co-low", Unit::GramPerKilogram, co_low),
                    of_fuel("g2", "co-high", Unit::GramPerKilogram, co_high),
                    SECOND_LOW,
                    SECOND_HIGH,
                ],
            )
            .when(|answers| answers.choice(FUEL).is_some()),
            monoxide(
                "gas-of-charcoal-pot",
                &[
                    field("b", "brooding.brooders"),
                    figure("p", "brooding.brooder_power"),
                    figure("j", "brooding.fuel_useful"),
                    field("a", "house.air_changes_per_h"),
                    figure("V", "brooding.air_volume"),
                    constant("g1", "charcoal-co-low", Unit::GramPerKilogram, || co_low("charcoal")),
                    constant("g2", "charcoal-co-high", Unit::GramPerKilogram, || co_high("charcoal")),
                    SECOND_LOW,
                    SECOND_HIGH,
                ],
            )
            .when(is_charcoal),
            monoxide(
                "gas-of-gas-hover",
                &[
                    field("b", "brooding.brooders"),
                    figure("p", "brooding.brooder_power"),
                    figure("j", "brooding.fuel_useful"),
                    field("a", "house.air_changes_per_h"),
                    figure("V", "brooding.air_volume"),
                    constant("g1", "lpg-co-low", Unit::GramPerKilogram, || co_low("lpg")),
                    constant("g2", "lpg-co-high", Unit::GramPerKilogram, || co_high("lpg")),
                    SECOND_LOW,
                    SECOND_HIGH,
                ],
            )
            .when(is_gas),
        ],
    },
];

/// What the need of a day hangs on beside the day.
#[derive(Clone, Copy)]
pub(crate) struct Need {
    /// Through walls and with the air, W/K.
    pub loss: f64,
    /// Outside, °C.
    pub coldest: f64,
    /// Relative humidity at the chicks, percent.
    pub humidity: f64,
    /// How many.
    pub chicks: f64,
}

impl Need {
    /// Heat to put in on a day of age, kW; `None` beyond the curve of weights.
    pub(crate) fn on_day(self, day: f64, standard: Standard) -> Option<f64> {
        let target = Temperature::celsius(reference::temperature::target(day, self.humidity)?);
        let weight = standard.curve().ok()?.weight(DayOfAge(day as i32))?;
        Some(self.at(target, weight))
    }

    pub(crate) fn at(self, target: Temperature, each: Mass) -> f64 {
        let animals = heat::chicks(self.chicks, each, target);
        let balance = Balance { through: self.loss, with_air: 0.0, animals };
        balance.heat_to_put_in(target, Temperature::celsius(self.coldest)) / 1000.0
    }
}

/// The share of the heat that brooders of a second kind give.
const SECOND: Input = if_known("s", "brooding.second_share");

/// Heat, share of the second kind, useful heat of a kilogram.
fn first_burns(x: &[f64]) -> Option<f64> {
    Some(heat::fuel(x[0] * (1.0 - x[1]), x[2]))
}

/// Heat over the days in the whole house and in the heated part, share of the second kind, useful heat of a kilogram.
fn saving(x: &[f64]) -> f64 {
    heat::fuel((x[0] - x[1]) * (1.0 - x[2]), x[3]).max(0.0)
}

/// The fuel told, or that of the brooder told.
pub(crate) fn fuel(answers: &Answers) -> Option<&'static str> {
    answers.choice(FUEL).or_else(|| of_brooder(answers))
}

/// The fuel that the kind of brooder says.
pub(crate) fn of_brooder(answers: &Answers) -> Option<&'static str> {
    of_kind(answers.choice("brooding.brooder")?)
}

/// The fuel of a kind of brooder.
pub(super) fn of_kind(kind: &str) -> Option<&'static str> {
    match kind {
        "charcoal-pot" => Some("charcoal"),
        "gas-hover" => Some("lpg"),
        _ => None,
    }
}

pub(crate) fn is_charcoal(answers: &Answers) -> bool {
    fuel(answers) == Some("charcoal")
}

pub(crate) fn is_gas(answers: &Answers) -> bool {
    fuel(answers) == Some("lpg")
}

/// The fuels of all brooders.
pub(crate) fn all_fuels(answers: &Answers) -> impl Iterator<Item = &'static str> {
    fuel(answers).into_iter().chain(second_brooder::fuel(answers))
}

/// Whether the fuel of any brooder burns in the house without a flue.
pub(crate) fn burns_inside(answers: &Answers) -> bool {
    all_fuels(answers).any(has_no_flue)
}

/// Whether it is told of every brooder that nothing burns in the house, or only with a flue.
pub(crate) fn nothing_burns(answers: &Answers) -> bool {
    let told =
        fuel(answers).is_some() && (!second_brooder::any(answers) || second_brooder::fuel(answers).is_some());
    told && !burns_inside(answers)
}

/// Whether charcoal burns in any brooder.
pub(crate) fn any_charcoal(answers: &Answers) -> bool {
    all_fuels(answers).any(|fuel| fuel == "charcoal")
}

fn has_no_flue(fuel: &str) -> bool {
    of(fuel).is_some_and(|fuel| fuel.co_g_per_kg.is_some())
}

/// Whether brooders of the second kind burn in the house, and those of the first do not.
fn only_second_burns(answers: &Answers) -> bool {
    let first = fuel(answers).is_some_and(|fuel| !has_no_flue(fuel));
    first && second_brooder::fuel(answers).is_some_and(has_no_flue)
}

/// To the half kilogram that a cylinder is filled by.
pub(super) const fn half_kilograms(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Kilogram, decimals: 1, rules }
}

pub(super) const fn kilograms(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::Kilogram, decimals: 0, rules }
}

/// Net heat times the middle of what stays in the house.
pub(super) const fn useful(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "q * (e1 + e2) / 2", inputs, |x| Some(x[0] * (x[1] + x[2]) / 2.0))
        .from("fuels", Status::FromMemory)
        .between(|x| Some((x[0] * x[1], x[0] * x[2])))
}

pub(super) const fn whole(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "ceil(f / c)", inputs, |x| Some(round_up(x[0] / x[1])))
}

/// Packs for the days and the spare together, less those for the days alone.
pub(super) const fn packs_besides(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "ceil((f + s) / c) - n", inputs, |x| Some(round_up((x[0] + x[1]) / x[2]) - x[3]))
        // Both stray together, so that what is bought besides does not stray as they do.
        .between(|_| None)
}

const fn part_of(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "s / c", inputs, |x| Some(x[0] / x[1]))
}

pub(super) const fn cost(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "n * p", inputs, |x| Some(x[0] * x[1]))
}

/// Fuel an hour, carbon dioxide of a kilogram, carbon dioxide an hour of a second kind, air the chicks breathe.
const fn fire(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "(f * c + e) / 1.83 / (0.003 - 0.00042) + q", inputs, |x| {
        Some(heat::air_for_fire(x[0] * x[1] + x[2]) + x[3])
    })
    .from("fuels", Status::FromMemory)
}

/// Brooders, power, useful heat, air changes, air, lowest and highest grams, kilograms an hour of a second kind, lowest and
/// highest.
const fn monoxide(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(
        name,
        "max(9, 1000000 * ((3.6 * b * p / j) * (g1 + g2) / 2 + 1000 * (l + u) / 2) / 1165 / (a * V))",
        inputs,
        |x| Some(ppm(x, (x[5] + x[6]) / 2.0, (x[7] + x[8]) / 2.0, 1.0)),
    )
    .from("fuels", Status::FromMemory)
    // The lowest gas into twice the air, the highest into half of it.
    .between(|x| Some((ppm(x, x[5], x[7], 2.0), ppm(x, x[6], x[8], 0.5))))
}

/// People's guide for eight hours, ppm: World Health Organization 2010, from memory. No estimate as rough as this one may
/// read as lower, so none is shown below it.
const PEOPLES_GUIDE_PPM: f64 = 9.0;

fn ppm(x: &[f64], g_per_kg: f64, second_kg_per_h: f64, times_air: f64) -> f64 {
    let g_per_h = heat::fuel(x[0] * x[1], x[2]) * g_per_kg + 1000.0 * second_kg_per_h;
    ppm_of(g_per_h, times_air * x[3] * x[4])
}

fn ppm_of(g_per_h: f64, air_m3_per_h: f64) -> f64 {
    heat::carbon_monoxide_ppm(g_per_h, air_m3_per_h).max(PEOPLES_GUIDE_PPM)
}

const SECOND_STALE: Input = if_known("e", "brooding.second_stale_air");
const SECOND_LOW: Input = if_known("l", "brooding.second_gas_low");
const SECOND_HIGH: Input = if_known("u", "brooding.second_gas_high");

const fn of_fuel(
    symbol: &'static str,
    point: &'static str,
    unit: Unit,
    read: fn(&str) -> Option<f64>,
) -> Input {
    Input { symbol, origin: Origin::TableBy { table: "fuels", point, unit, field: FUEL, read } }
}

pub(super) const fn constant(
    symbol: &'static str,
    point: &'static str,
    unit: Unit,
    read: fn() -> Option<f64>,
) -> Input {
    Input { symbol, origin: Origin::Table { table: "fuels", point, unit, read } }
}

fn of(name: &str) -> Option<reference::fuel::Fuel> {
    reference::fuel::fuel(name).ok()?
}

pub(super) fn net(name: &str) -> Option<f64> {
    of(name)?.net_mj_per_kg
}

pub(super) fn low(name: &str) -> Option<f64> {
    of(name).map(|fuel| fuel.efficiency.0)
}

pub(super) fn high(name: &str) -> Option<f64> {
    of(name).map(|fuel| fuel.efficiency.1)
}

pub(super) fn co_low(name: &str) -> Option<f64> {
    of(name)?.co_g_per_kg.map(|grams| grams.0)
}

pub(super) fn co_high(name: &str) -> Option<f64> {
    of(name)?.co_g_per_kg.map(|grams| grams.1)
}

/// The highest figure for the carbon monoxide of what burns inside over the middle of its range: of two fuels the wider.
pub(crate) fn most_gas_over_middle(answers: &Answers) -> f64 {
    let over = |fuel| Some(co_high(fuel)? / f64::midpoint(co_low(fuel)?, co_high(fuel)?));
    all_fuels(answers).filter_map(over).fold(1.0, f64::max)
}

pub(super) fn co2(name: &str) -> Option<f64> {
    of(name)?.co2_kg_per_kg
}
