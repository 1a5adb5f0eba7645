//! Light: the sun over the year.

use model::light;
use quantity::fields::field as asked;
use quantity::{CivilDay, Field, Kind, Need, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Origin, exact, field};
use crate::series::{DayInput, DayOrigin, SeriesSpec, Until, Way, same};
use crate::sums::{Sum, asks};
use crate::verify::{Cell, RowOutputs, Shape, each};

/// The family.
pub static FAMILY: Family =
    Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: SERIES, shapes: SHAPES };

static SERIES: &[SeriesSpec] = &[
    SeriesSpec {
        id: "light.hours_by_day",
        unit: Unit::Hour,
        decimals: 0,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "light-hours",
            "max(h, L)",
            &[
                DayInput {
                    symbol: "h",
                    origin: DayOrigin::Table {
                        table: "light_programme",
                        point: "hours",
                        unit: Unit::Hour,
                        read: |_, day| reference::light::programme_h(day).ok()?,
                    },
                },
                same("L", "light.sun_by_day"),
            ],
            |x| Some(x[0].max(x[1])),
        )
        .from("light-programme", Status::CommonPractice)]),
    },
    SeriesSpec {
        id: "light.sun_by_day",
        unit: Unit::Hour,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "sun-by-day",
            "daylength(f, p + d)",
            &[
                DayInput { symbol: "f", origin: DayOrigin::Fixed(Origin::Field("farm.latitude_deg")) },
                DayInput { symbol: "p", origin: DayOrigin::Fixed(Origin::Field("batch.placement")) },
                DayInput { symbol: "d", origin: DayOrigin::Age },
            ],
            |x| Some(model::light::daylength_on(x[0], x[1] + x[2])),
        )
        .from("spencer-1971", Status::Published)]),
    },
    SeriesSpec {
        id: "light.lamps_by_day",
        unit: Unit::Hour,
        decimals: 1,
        first_day: 0,
        until: Until::Sale,
        way: Way::Rules(&[exact(
            "lamp-hours",
            "h - L",
            &[same("h", "light.hours_by_day"), same("L", "light.sun_by_day")],
            |x| Some(x[0] - x[1]),
        )]),
    },
];

static FIELDS: &[Field] = &[asked("light.date", Kind::Day, Need::Optional)];

static SUMS: &[Sum] = &[Sum {
    name: "daylength",
    inputs: &[asks("latitude_deg", "farm.latitude_deg"), asks("date", "light.date")],
    figures: &["light.daylength"],
    caution: None,
}];

static FIGURES: &[FigureSpec] = &[FigureSpec {
    id: "light.daylength",
    unit: Unit::Hour,
    decimals: 1,
    rules: &[exact(
        "daylength",
        "24 / pi * acos(max(0 - 1, min(1, (0 - sin(0.8333 * pi / 180) - sin(f * pi / 180) * sin(declination(p))) \
         / (cos(f * pi / 180) * cos(declination(p))))))",
        &[field("f", "farm.latitude_deg"), field("p", "light.date")],
        |x| {
            let day = CivilDay::from_number(x[1] as i32);
            Some(light::daylength_h(x[0], f64::from(day.day_of_year()), light::UPPER_LIMB_DEG))
        },
    )
    .from("spencer-1971", Status::Published)],
}];

static SHAPES: &[Shape] = &[Shape {
    name: "daylength",
    inputs: &["latitude_deg", "longitude_deg", "date"],
    outputs: &[
        "day_of_year",
        "sunrise_utc_h",
        "sunset_utc_h",
        "transit_utc_h",
        "daylength_spa_h",
        "declination_spencer_deg",
        "daylength_spencer_horizon_0_833_h",
        "daylength_spencer_horizon_0_h",
        "equation_of_time_spencer_min",
        "extraterrestrial_spencer_w_per_m2",
    ],
    work_out: |rows| each(rows, daylength),
}];

fn daylength(cells: &[Cell]) -> RowOutputs {
    let latitude = cells[0].number(-90.0, 90.0)?;
    let longitude = cells[1].number(-180.0, 180.0)?;
    let day = cells[2].day()?;
    let of_year = f64::from(day.day_of_year());
    let sun = light::sun_times(latitude, longitude, day);
    Ok(vec![
        Some(of_year),
        sun.map(|sun| sun.sunrise_utc_h),
        sun.map(|sun| sun.sunset_utc_h),
        sun.map(|sun| sun.transit_utc_h),
        sun.map(|sun| sun.daylength_h()),
        Some(light::declination_deg(of_year)),
        Some(light::daylength_h(latitude, of_year, light::UPPER_LIMB_DEG)),
        Some(light::daylength_h(latitude, of_year, 0.0)),
        Some(light::equation_of_time_min(of_year)),
        Some(light::extraterrestrial_w_per_m2(of_year)),
    ])
}
