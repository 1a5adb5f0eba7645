//! Space: do the chicks fit the house, now and at sale?

use model::space;
use quantity::{Answers, Area, DayOfAge, Length, Mass, Schedule, Status, StockingDensity, Unit, Value};
use reference::growth::Standard;
use reference::stocking::{self, House};

use super::Family;
use super::growth::has_own;
use crate::diary::set;
use crate::halving;
use crate::outcome::Outcome;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure, on_day};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: SUMS, series: &[], shapes: &[] };

static SUMS: &[Sum] = &[Sum {
    name: "space",
    inputs: &[
        asks("length_m", "house.length_m"),
        asks("width_m", "house.width_m"),
        may_ask("usable_floor_percent", "house.usable_floor_percent"),
        asks("weight_kg", "batch.sale_weight_kg"),
        asks("limit_kg_m2", "space.limit_kg_m2"),
        may_ask("chicks", "batch.chicks"),
        may_ask("expected_losses_percent", "batch.expected_losses_percent"),
    ],
    figures: &[
        "space.birds_allowed",
        "space.floor_area",
        "space.chicks_to_order",
        "space.birds_at_sale",
        "space.density_at_sale",
    ],
    caution: None,
}];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "batch.sale_date",
        unit: Unit::Date,
        decimals: 0,
        rules: &[exact(
            "sale-date",
            "p + a",
            &[field("p", "batch.placement"), field("a", "batch.sale_age_d")],
            |x| Some(x[0] + x[1]),
        )],
    },
    FigureSpec {
        id: "space.floor_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact(
            "usable-floor",
            "L * W * u / 100",
            &[
                field("L", "house.length_m"),
                field("W", "house.width_m"),
                field("u", "house.usable_floor_percent"),
            ],
            |x| {
                let floor = space::usable_floor(Length::metres(x[0]), Length::metres(x[1]), x[2] / 100.0);
                Some(floor.in_square_metres())
            },
        )],
    },
    FigureSpec {
        id: "space.weight_at_sale",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[
            exact("weight-own", "w", &[field("w", "batch.sale_weight_kg")], |x| Some(x[0]))
                .when(|answers| answers.number("batch.sale_weight_kg").is_some())
                .from("grower", Status::Told),
            exact(
                "weight-at-sale-in-heat",
                "w / 1000",
                &[on_day("w", "growth.weight", "batch.sale_age_d")],
                |x| Some(x[0] / 1000.0),
            )
            .when(super::growth::slowed_by_heat)
            .from("growth-in-heat", Status::Published),
            exact("weight-fast", "growth_fast(a) / 1000", AGE, |x| weight_kg(Standard::Fast, x[0]))
                .when(|answers| uses(answers, Standard::Fast))
                .from("growth-fast", Status::FromMemory)
                .between(|x| weight_range(Standard::Fast, x[0])),
            exact("weight-slow", "growth_slow(a) / 1000", AGE, |x| weight_kg(Standard::Slow, x[0]))
                .when(|answers| uses(answers, Standard::Slow))
                .from("growth-slow", Status::Interpolated),
            exact("weight-own-curve", "g / 1000", &[on_day("g", "growth.curve", "batch.sale_age_d")], |x| {
                Some(x[0] / 1000.0)
            })
            .when(has_own)
            .from("grower", Status::Told),
            WEIGHT_OPEN_HOUSE,
        ],
    },
    FigureSpec {
        id: "space.limit",
        unit: Unit::KilogramPerSquareMetre,
        decimals: 1,
        rules: &[
            exact("limit-own", "k", &[field("k", "space.limit_kg_m2")], |x| Some(x[0]))
                .when(|answers| answers.number("space.limit_kg_m2").is_some())
                .from("grower", Status::Told),
            advised_limit(
                "limit-hottest-quarter",
                &[
                    limit_end("k1", "OPEN_peak_heat", || limit(House::HottestQuarter).map(|l| l.low)),
                    limit_end("k2", "OPEN_peak_heat", || limit(House::HottestQuarter).map(|l| l.high)),
                ],
            )
            .when(|answers| sold_in_hottest_quarter(answers) == Some(true)),
            advised_limit(
                "limit-season-not-known",
                &[
                    limit_end("k1", "OPEN_peak_heat", || limit(House::HottestQuarter).map(|l| l.low)),
                    limit_end("k2", "OPEN_sided", || limit(House::OpenSided).map(|l| l.high)),
                ],
            )
            .when(|answers| sold_in_hottest_quarter(answers).is_none()),
            advised_limit(
                "limit-open-with-fans",
                &[
                    limit_end("k1", "OPEN_sided", || limit(House::OpenSidedWithFans).map(|l| l.low)),
                    limit_end("k2", "OPEN_sided", || limit(House::OpenSidedWithFans).map(|l| l.high)),
                ],
            )
            .when(|answers| answers.choice("house.fans") == Some("yes")),
            exact(
                "limit-open",
                "k",
                &[limit_end("k", "OPEN_sided", || limit(House::OpenSided).map(|l| l.kg_m2))],
                |x| Some(x[0]),
            )
            .from("ross-hot-climate", Status::FromMemory),
        ],
    },
    FigureSpec {
        id: "space.birds_at_sale",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact(
            "birds-left",
            "floor(c * (1 - q / 100))",
            &[field("c", "batch.chicks"), field("q", "batch.expected_losses_percent")],
            |x| Some(space::birds_left(x[0], x[1] / 100.0)),
        )],
    },
    FigureSpec {
        id: "space.birds_allowed",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact(
            "birds-allowed",
            "floor(k * A / w)",
            &[
                figure("k", "space.limit"),
                figure("A", "space.floor_area"),
                figure("w", "space.weight_at_sale"),
            ],
            |x| Some(space::birds_allowed(limit_of(x[0]), Area::square_metres(x[1]), Mass::kilograms(x[2]))),
        )],
    },
    FigureSpec {
        id: "space.chicks_to_order",
        unit: Unit::Chicks,
        decimals: 0,
        rules: &[exact(
            "chicks-to-order",
            "floor(b / (1 - q / 100))",
            &[figure("b", "space.birds_allowed"), field("q", "batch.expected_losses_percent")],
            |x| Some(space::chicks_to_order(x[0], x[1] / 100.0)),
        )],
    },
    FigureSpec {
        id: "space.density_at_sale",
        unit: Unit::KilogramPerSquareMetre,
        decimals: 1,
        rules: &[exact(
            "density",
            "n * w / A",
            &[
                figure("n", "space.birds_at_sale"),
                figure("w", "space.weight_at_sale"),
                figure("A", "space.floor_area"),
            ],
            |x| {
                let density = space::density(x[0], Mass::kilograms(x[1]), Area::square_metres(x[2]));
                Some(density.in_kilograms_per_square_metre())
            },
        )],
    },
    FigureSpec {
        id: "space.last_day_that_fits",
        unit: Unit::Day,
        decimals: 0,
        rules: &[
            exact("last-day-fast", "last(d, 0, a, k - n * growth_fast(d) / 1000 / A)", FIT, |x| {
                last_day(Standard::Fast, x)
            })
            .when(|answers| follows(answers, Standard::Fast))
            .from("growth-fast", Status::FromMemory),
            exact("last-day-slow", "last(d, 0, a, k - n * growth_slow(d) / 1000 / A)", FIT, |x| {
                last_day(Standard::Slow, x)
            })
            .when(|answers| follows(answers, Standard::Slow))
            .from("growth-slow", Status::Interpolated),
            exact(
                "last-day-open-house",
                "last(d, 0, a, k - n * growth_open_house(d) / 1000 / A)",
                FIT,
                |x| last_day(Standard::OpenHouse, x),
            )
            .when(|answers| follows(answers, Standard::OpenHouse) && !has_own(answers))
            .from("growth-open-house", Status::Modelled),
        ],
    },
    FigureSpec {
        id: "space.birds_to_sell_early",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact(
            "sell-early",
            "max(0, n - b)",
            &[figure("n", "space.birds_at_sale"), figure("b", "space.birds_allowed")],
            |x| Some(space::birds_to_sell_early(x[0], x[1])),
        )],
    },
    FigureSpec {
        id: "space.weight_open_house",
        unit: Unit::Kilogram,
        decimals: 2,
        rules: &[Rule { name: "weight-open-house-beside", ..WEIGHT_OPEN_HOUSE }],
    },
    FigureSpec {
        id: "space.birds_allowed_open_house",
        unit: Unit::Birds,
        decimals: 0,
        rules: &[exact(
            "birds-allowed-open-house",
            "floor(k * A / w)",
            &[
                figure("k", "space.limit"),
                figure("A", "space.floor_area"),
                figure("w", "space.weight_open_house"),
            ],
            |x| Some(space::birds_allowed(limit_of(x[0]), Area::square_metres(x[1]), Mass::kilograms(x[2]))),
        )],
    },
];

const AGE: &[Input] = &[field("a", "batch.sale_age_d")];

const FIT: &[Input] = &[
    field("a", "batch.sale_age_d"),
    figure("k", "space.limit"),
    field("n", "batch.chicks"),
    figure("A", "space.floor_area"),
];

const WEIGHT_OPEN_HOUSE: Rule =
    exact("weight-open-house", "growth_open_house(a) / 1000", AGE, |x| weight_kg(Standard::OpenHouse, x[0]))
        .from("growth-open-house", Status::Modelled)
        .between(|x| weight_range(Standard::OpenHouse, x[0]));

const fn limit_end(symbol: &'static str, point: &'static str, read: fn() -> Option<f64>) -> Input {
    Input {
        symbol,
        origin: Origin::Table { table: "density", point, unit: Unit::KilogramPerSquareMetre, read },
    }
}

/// The middle of an advised range, with the range itself as its band.
const fn advised_limit(name: &'static str, ends: &'static [Input]) -> Rule {
    exact(name, "(k1 + k2) / 2", ends, |x| Some((x[0] + x[1]) / 2.0))
        .from("ross-hot-climate", Status::FromMemory)
        .between(|x| Some((x[0], x[1])))
}

fn limit(house: House) -> Option<stocking::StockingLimit> {
    stocking::limit(house).ok()
}

fn limit_of(kg_m2: f64) -> StockingDensity {
    StockingDensity::kilograms_per_square_metre(kg_m2)
}

/// How full the floor gets, and how many chicks it would carry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Birds on the day that counts: the fullest where birds leave over several days, else that of the sale.
    pub birds: f64,
    /// Birds that would be within the limit on that day.
    pub allowed: f64,
    /// Chicks to order so that no day is over it.
    pub chicks_to_order: f64,
}

impl Fit {
    /// `None` while birds or limit are not known.
    pub fn of(answers: &Answers, outcome: &Outcome) -> Option<Fit> {
        let get = |id| outcome.number(id);
        if !sold_in_parts(answers) {
            return Some(Fit {
                birds: get("space.birds_at_sale")?,
                allowed: get("space.birds_allowed")?,
                chicks_to_order: get("space.chicks_to_order")?,
            });
        }
        let (density, birds) = (get("space.fullest_density")?, get("space.fullest_birds")?);
        let limit = get("space.limit")?;
        let (chicks, fits) = (answers.number("batch.chicks")?, density <= limit);
        Some(Fit {
            birds,
            allowed: (birds * limit / density).floor(),
            chicks_to_order: if fits { chicks } else { most_that_fit(answers, chicks, limit)? },
        })
    }

    /// Whether no day is over the limit.
    pub fn holds(&self) -> bool {
        self.birds <= self.allowed
    }
}

/// The most chicks, fewer than planned, of whom no day of the sale as planned is over the limit: halving, since more chicks fill
/// every day more.
fn most_that_fit(answers: &Answers, planned: f64, limit: f64) -> Option<f64> {
    let fits = |chicks: u32| {
        let mut fewer = answers.clone();
        set(&mut fewer, "batch.chicks", Value::Number(f64::from(chicks)));
        let density = Outcome::of(&fewer, ["space.fullest_density"]).number("space.fullest_density");
        density.is_some_and(|density| density <= limit)
    };
    halving::most(1, planned as u32, fits).map(f64::from)
}

/// The growth curve a plan follows.
pub(crate) fn standard(answers: &Answers) -> Standard {
    answers.choice("batch.standard").and_then(Standard::from_name).unwrap_or(Standard::OpenHouse)
}

fn uses(answers: &Answers, wanted: Standard) -> bool {
    standard(answers) == wanted
}

/// Whether the weight comes off that curve, not from a typed weight.
fn follows(answers: &Answers, wanted: Standard) -> bool {
    uses(answers, wanted) && answers.number("batch.sale_weight_kg").is_none()
}

/// Whether birds leave over several days, so that the floor must be followed from day to day.
pub fn sold_in_parts(answers: &Answers) -> bool {
    answers.schedule("sale.days").is_some()
        || answers.number("sale.first_age_d").is_some()
        || answers.number("sale.last_age_d").is_some()
}

/// The age at which the last birds are to be sold.
fn last_sale_age(answers: &Answers) -> Option<f64> {
    let scheduled = answers.schedule("sale.days").and_then(Schedule::span);
    scheduled
        .map(|(_, last)| f64::from(last))
        .or_else(|| answers.number("sale.last_age_d"))
        .or_else(|| answers.number("batch.sale_age_d"))
}

/// Whether the sale falls into the hottest quarter; `None` while day or place are not known.
pub(crate) fn sold_in_hottest_quarter(answers: &Answers) -> Option<bool> {
    let age = DayOfAge(last_sale_age(answers)? as i32);
    let month = age.date(answers.day("batch.placement")?).month();
    Some(hottest_months(answers)?.contains(&month))
}

/// The grower's own hottest months, else those assumed from latitude; `None` while neither is known.
pub(crate) fn hottest_months(answers: &Answers) -> Option<Vec<i8>> {
    match answers.get("farm.hottest_months").map(|given| &given.value) {
        Some(quantity::Value::Months(months)) => Some(months.clone()),
        _ => Some(space::hottest_months(answers.number("farm.latitude_deg")?).to_vec()),
    }
}

fn weight(standard: Standard, age_d: f64) -> Option<Mass> {
    standard.curve().ok()?.weight(DayOfAge(age_d as i32))
}

fn weight_kg(standard: Standard, age_d: f64) -> Option<f64> {
    // Grams first: a kilogram out of grams is the same number that division of the printed table gives.
    weight(standard, age_d).map(|weight| weight.in_grams() / 1000.0)
}

fn weight_range(standard: Standard, age_d: f64) -> Option<(f64, f64)> {
    let (weight, spread) = (weight_kg(standard, age_d)?, standard.spread()?);
    Some((weight * (1.0 - spread), weight * (1.0 + spread)))
}

fn last_day(standard: Standard, x: &[f64]) -> Option<f64> {
    let curve = standard.curve().ok()?;
    let sale = DayOfAge(x[0] as i32);
    space::last_day_that_fits(limit_of(x[1]), Area::square_metres(x[3]), x[2], curve.points(), sale)
        .map(|day| f64::from(day.0))
}
