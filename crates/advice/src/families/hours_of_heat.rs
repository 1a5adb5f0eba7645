//! What heaters must give, out of the hourly balance of the heated part where a plan tells all that it needs; else out of the
//! balance of one night that stays as cold as the coldest.

use model::bird_heat;
use model::heat;
use quantity::{Answers, DayOfAge, Status, Temperature, Unit};
use reference::growth::Standard;

use super::fuel::Need;
use super::heat::{day_old, needed, power};
use super::{Family, hours_of_air, space};
use crate::air::BroodingHeat;
use crate::procedure::{Accuracy, AllSimulated, Drawn, Procedure, Simulation};
use crate::rule::{FigureSpec, Input, Rule, exact, field, figure};

/// The family; the first of its rules stand in where the balance by the hour cannot be run.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };

const HOURS: &str = "brooding.hours_per_day_h";

/// The same figures by the hour.
pub static BY_THE_HOUR: Simulation = Simulation {
    procedure: Procedure { name: "hours-of-heat", source: "cigr-2002", status: Status::FromMemory },
    inputs: hours_of_air::INPUTS,
    figures: FIGURES,
    applies: |_| true,
    run: by_the_hour,
};

static FIGURES: &[FigureSpec] = &[
    power(
        "brooding.heat",
        &[exact("heat-of-steady-night", "h", &[figure("h", "brooding.heat_steady")], |x| Some(x[0]))],
    ),
    power(
        "brooding.heat_whole_house",
        &[needed(
            "heat-whole-house",
            &[
                figure("H", "brooding.loss_whole_house"),
                figure("t", "brooding.target_temperature"),
                field("o", "weather.coldest_night_c"),
                figure("s", "brooding.chick_heat"),
            ],
        )],
    ),
    energy(
        "brooding.heat_first_day",
        &[exact(
            "heat-of-first-day",
            "h * u",
            &[figure("h", "brooding.heat_steady"), field("u", HOURS)],
            |x| Some(x[0] * x[1]),
        )
        .from("our-judgement", Status::OurJudgement)],
    ),
    energy(
        "brooding.heat_over_days",
        &[
            over_days("heat-over-days-fast", FAST, HEATED_DAYS, |x| over(Standard::Fast, x)).when(is_fast),
            over_days("heat-over-days-slow", SLOW, HEATED_DAYS, |x| over(Standard::Slow, x)).when(is_slow),
            over_days("heat-over-days-open-house", OPEN_HOUSE, HEATED_DAYS, |x| over(Standard::OpenHouse, x)),
        ],
    ),
    energy(
        "brooding.heat_over_days_whole_house",
        &[
            over_days("whole-house-days-fast", FAST, WHOLE_DAYS, |x| over(Standard::Fast, x)).when(is_fast),
            over_days("whole-house-days-slow", SLOW, WHOLE_DAYS, |x| over(Standard::Slow, x)).when(is_slow),
            over_days("whole-house-days-open-house", OPEN_HOUSE, WHOLE_DAYS, |x| {
                over(Standard::OpenHouse, x)
            }),
        ],
    ),
    FigureSpec {
        id: "brooding.coldest_air",
        unit: Unit::Celsius,
        decimals: 0,
        rules: &[exact(
            "air-settles",
            "min(t, (sqrt(H ^ 2 + 4 * 0.000228 * n * 10.62 * 0.044 ^ 0.75 * (1000 * g + 0.61 * n * 10.62 * 0.044 ^ 0.75 + H * o)) - H) / (2 * 0.000228 * n * 10.62 * 0.044 ^ 0.75))",
            &[
                figure("t", "brooding.target_temperature"),
                figure("H", "brooding.loss"),
                field("n", "batch.chicks"),
                figure("g", "brooding.heat_installed"),
                field("o", "weather.coldest_night_c"),
            ],
            coldest_air,
        )
        .from("cigr-2002", Status::FromMemory)],
    },
    FigureSpec { id: "brooding.preheat_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
];

/// For a house as told, with the range from a tight to a leaky one.
fn by_the_hour(answers: &Answers, _: &[f64], drawn: &Drawn) -> AllSimulated {
    let [told, tight, leaky] = BroodingHeat::of(answers).ok()?;
    let ends = figures_of(&tight).into_iter().zip(figures_of(&leaky));
    let figure = |(value, (tight, leaky)): (Option<f64>, (Option<f64>, Option<f64>))| {
        let value = value?;
        let band = tight.zip(leaky).and_then(|(tight, leaky)| hours_of_air::between(value, &[tight, leaky]));
        Some((value, band, Accuracy::Residual(value * told.part.residual)))
    };
    let figures = figures_of(&told).into_iter().zip(ends).map(figure).collect();
    drawn.keep_heat(told.part);
    Some(figures)
}

/// The figures in their order; `None` for what there is none of.
fn figures_of(heat: &BroodingHeat) -> [Option<f64>; 7] {
    [
        Some(heat.part.peak_kw()),
        Some(heat.whole.peak_kw()),
        Some(heat.part.of_day_kwh(0)),
        Some(heat.part.in_all_kwh()),
        Some(heat.whole.in_all_kwh()),
        heat.coldest_c,
        heat.preheat_h.map(|hours| hours as f64),
    ]
}

const FAST: &str = "add(d, 0, n - 1, max(0, H * max(0, brooding_temperature(d, r) - o) - c * 10.62 * (growth_fast(d) / 1000) ^ 0.75 * max(0, 0.61 * (1000 + 20 * (20 - brooding_temperature(d, r))) - 0.228 * brooding_temperature(d, r) ^ 2) / 1000)) * u / 1000";
const SLOW: &str = "add(d, 0, n - 1, max(0, H * max(0, brooding_temperature(d, r) - o) - c * 10.62 * (growth_slow(d) / 1000) ^ 0.75 * max(0, 0.61 * (1000 + 20 * (20 - brooding_temperature(d, r))) - 0.228 * brooding_temperature(d, r) ^ 2) / 1000)) * u / 1000";
const OPEN_HOUSE: &str = "add(d, 0, n - 1, max(0, H * max(0, brooding_temperature(d, r) - o) - c * 10.62 * (growth_open_house(d) / 1000) ^ 0.75 * max(0, 0.61 * (1000 + 20 * (20 - brooding_temperature(d, r))) - 0.228 * brooding_temperature(d, r) ^ 2) / 1000)) * u / 1000";

const HEATED_DAYS: &[Input] = &[
    figure("H", "brooding.loss"),
    field("n", "brooding.days_d"),
    field("r", "weather.humidity_percent"),
    field("o", "weather.coldest_night_c"),
    field("c", "batch.chicks"),
    field("u", HOURS),
];
const WHOLE_DAYS: &[Input] = &[
    figure("H", "brooding.loss_whole_house"),
    field("n", "brooding.days_d"),
    field("r", "weather.humidity_percent"),
    field("o", "weather.coldest_night_c"),
    field("c", "batch.chicks"),
    field("u", HOURS),
];

/// Loss, days, humidity, outside, chicks, hours: kWh over the brooding days.
fn over(standard: Standard, x: &[f64]) -> Option<f64> {
    let need = Need { loss: x[0], humidity: x[2], coldest: x[3], chicks: x[4] };
    let curve = standard.curve().ok()?;
    let mut kwh = 0.0;
    for day in 0..x[1] as i32 {
        let target = Temperature::celsius(reference::temperature::target(f64::from(day), x[2])?);
        kwh += need.at(target, curve.weight(DayOfAge(day))?) * x[5];
    }
    Some(kwh)
}

fn is_fast(answers: &Answers) -> bool {
    space::standard(answers) == Standard::Fast
}

fn is_slow(answers: &Answers) -> bool {
    space::standard(answers) == Standard::Slow
}

const fn energy(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::KilowattHour, decimals: 0, rules }
}

const fn over_days(
    name: &'static str,
    formula: &'static str,
    inputs: &'static [Input],
    compute: fn(&[f64]) -> Option<f64>,
) -> Rule {
    exact(name, formula, inputs, compute).from("brooding-temperature", Status::Modelled)
}

/// Target, loss, chicks, heat of all brooders, outside.
fn coldest_air(x: &[f64]) -> Option<f64> {
    let at_20c = x[2] * bird_heat::total_at_20c(day_old());
    let settled = heat::settles_at(x[1], 1000.0 * x[3], at_20c, Temperature::celsius(x[4]))?;
    Some(settled.in_celsius().min(x[0]))
}
