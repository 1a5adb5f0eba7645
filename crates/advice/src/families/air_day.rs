//! What is asked of a night and a day of a house, and what the hourly balance says of them.

use model::air::stress::Band as Heat;
use quantity::fields::{count, field as asked, number};
use quantity::{Answers, Asked, Band, BandKind, Field, Kind, Need, Raw, Status, Unit};

use super::Family;
use crate::air::day::{AirDay, DayRun};
use crate::procedure::{Accuracy, Procedure, Simulation};
use crate::rule::{FigureSpec, field};

/// The family.
pub static FAMILY: Family = Family { figures: &[], fields: FIELDS, sums: &[], series: &[], shapes: &[] };

/// Day of age on which the night begins.
pub const AGE: &str = "air_day.age_d";
/// Coldest of the night.
pub const COLDEST: &str = "air_day.coldest_c";
/// Warmest of the day after it.
pub const WARMEST: &str = "air_day.warmest_c";
/// Wind, in words.
pub const WIND: &str = "air_day.wind";
/// Sky, in words.
pub const SKY: &str = "air_day.sky";
/// What might be done to the roof.
pub const ROOF: &str = "air_day.roof";
/// Whether a fan moves the air at the birds.
pub const FAN: &str = "air_day.fan";
/// Whether they are fed in the night and not in the heat.
pub const NIGHT_FEED: &str = "air_day.night_feeding";
/// By how much fewer birds there would be.
pub const FEWER: &str = "air_day.fewer_birds_percent";
/// A mark on the curtain's rope or post.
pub const MARK: &str = "house.curtain_mark_cm";

/// A roof as it is.
pub(crate) const CLEAR: &str = "as-it-is";
const NO_OR_YES: Kind = Kind::Choice(&["no", "yes"]);
const OURS: Status = Status::Assumed;

static FIELDS: &[Field] = &[
    asked(AGE, count(Unit::Day, 0.0, 84.0), Need::Optional),
    asked(COLDEST, number(Unit::Celsius, -20.0, 35.0), Need::Optional),
    asked(WARMEST, number(Unit::Celsius, -10.0, 50.0), Need::Optional),
    asked(WIND, Kind::Choice(&["still", "light", "windy"]), Need::Usual("light", OURS)),
    asked(SKY, Kind::Choice(&["clear", "cloudy", "overcast"]), Need::Usual("clear", OURS)),
    asked(ROOF, Kind::Choice(&[CLEAR, "shaded", "wet"]), Need::Usual(CLEAR, OURS)),
    asked(FAN, NO_OR_YES, Need::Usual("no", OURS)),
    asked(NIGHT_FEED, NO_OR_YES, Need::Usual("no", OURS)),
    asked(FEWER, number(Unit::Percent, 0.0, 90.0), Need::Usual("0", OURS)),
];

/// The fields as a form or a command asks them, each under a short key.
pub fn form() -> Vec<Asked> {
    FIELDS.iter().map(|field| Asked { key: short(field.key), field, need: field.need }).collect()
}

fn short(key: &'static str) -> &'static str {
    key.strip_prefix("air_day.").unwrap_or(key)
}

/// What was typed, and for what was not, what the plan says: its own coldest night and hottest afternoon.
pub fn with_the_plans(plan: &Answers, age_d: Option<i32>, typed: Vec<Raw>) -> Vec<Raw> {
    let told = |key: &str| plan.number(key).map(|number| number.to_string());
    let said = [
        (AGE, age_d.map(|age| age.to_string()).or_else(|| told("batch.sale_age_d"))),
        (COLDEST, told("weather.coldest_night_c")),
        (WARMEST, told("weather.hottest_day_c")),
    ];
    let mut raws = typed;
    for (key, text) in said {
        // In whatever unit it was typed.
        let stem = short(key).trim_end_matches("_c");
        if let Some(text) = text.filter(|_| !raws.iter().any(|raw| raw.key.starts_with(stem))) {
            raws.push(Raw { key: short(key).to_owned(), text: vec![text], line: None });
        }
    }
    raws
}

/// The balance of such a night and day.
pub static SIMULATION: Simulation = Simulation {
    procedure: Procedure { name: "day-of-air", source: "cigr-2002", status: Status::FromMemory },
    inputs: &[
        field("d", AGE),
        field("c", COLDEST),
        field("h", WARMEST),
        field("L", "house.length_m"),
        field("W", "house.width_m"),
        field("a", "house.air_changes_per_h"),
        field("f", "farm.latitude_deg"),
    ],
    figures: &[
        FigureSpec { id: "air_day.coldest", unit: Unit::Celsius, decimals: 1, rules: &[] },
        FigureSpec { id: "air_day.warmest", unit: Unit::Celsius, decimals: 1, rules: &[] },
        FigureSpec { id: "air_day.heat_index", unit: Unit::Celsius, decimals: 1, rules: &[] },
        FigureSpec { id: "air_day.hot_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
        FigureSpec { id: "air_day.dangerous_hours", unit: Unit::Hour, decimals: 0, rules: &[] },
        FigureSpec { id: "air_day.stale_air", unit: Unit::PartsPerMillion, decimals: 0, rules: &[] },
        FigureSpec { id: "air_day.heat", unit: Unit::KilowattHour, decimals: 0, rules: &[] },
        FigureSpec { id: "air_day.feed_left", unit: Unit::Percent, decimals: 0, rules: &[] },
    ],
    applies: |_| true,
    run: |answers, _, drawn| {
        let day = drawn.keep_air_day(AirDay::of(answers).ok()?);
        let run = day.likely();
        let figure = |value: f64| Some((value, None, Accuracy::Residual(value.abs() * run.residual)));
        let mut figures: Vec<_> = numbers(run).into_iter().map(figure).collect();
        // Less than half a percent nobody sees in a bag.
        figures.push(run.feed_left_percent().filter(|(_, high)| *high >= 0.5).map(|(low, high)| {
            let band = (low < high).then_some(Band { low, high, kind: BandKind::RangeOfSources });
            (f64::midpoint(low, high), band, Accuracy::Residual(high * run.residual))
        }));
        Some(figures)
    },
};

fn numbers(run: &DayRun) -> [f64; 7] {
    [
        run.coldest_c(),
        run.warmest_c(),
        run.heat_index_c(),
        run.hours_at_least(Heat::Alert),
        run.hours_at_least(Heat::Danger),
        run.stale_ppm(),
        run.heat_kwh(),
    ]
}
