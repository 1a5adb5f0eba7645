//! Moist air: what an instrument's two numbers say of dew, wet bulb and water in the air.

use model::moist_air::{self, MoistAir};
use quantity::fields::{asked_outside, field as asked, number};
use quantity::{Field, Need, Status, Temperature, Unit};

use super::Family;
use crate::rule::{FigureSpec, Input, exact, field, figure};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: FIELDS, sums: SUMS, series: &[], shapes: &[] };

pub(crate) const DRY_BULB: &str = "moist_air.dry_bulb_c";
pub(super) const HUMIDITY: &str = "moist_air.humidity_percent";
pub(super) const ALTITUDE: &str = "moist_air.altitude_m";

static FIELDS: &[Field] = &[
    asked(DRY_BULB, asked_outside(number(Unit::Celsius, -40.0, 60.0), -5.0, 45.0), Need::Optional),
    asked(HUMIDITY, asked_outside(number(Unit::Percent, 1.0, 100.0), 10.0, 100.0), Need::Optional),
    asked(ALTITUDE, number(Unit::Metre, -430.0, 5500.0), Need::Usual("0", Status::Assumed)),
];

static SUMS: &[Sum] = &[Sum {
    name: "moist-air",
    inputs: &[
        asks("dry_bulb_c", DRY_BULB),
        asks("humidity_percent", HUMIDITY),
        may_ask("altitude_m", ALTITUDE),
    ],
    figures: &[
        "moist_air.dew_point",
        "moist_air.wet_bulb",
        "moist_air.humidity_ratio",
        "moist_air.vapour_pressure",
        "moist_air.saturation_pressure",
        "moist_air.pressure",
        "moist_air.enthalpy",
        "moist_air.density",
    ],
    caution: None,
}];

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "moist_air.pressure",
        unit: Unit::Kilopascal,
        decimals: 1,
        rules: &[exact(
            "pressure-of-air",
            "101.325 * (1 - 2.25577 * z / 100000) ^ 5.2559",
            &[field("z", ALTITUDE)],
            |x| Some(moist_air::pressure_at(x[0]) / 1000.0),
        )
        .from("ashrae-2017", Status::FromMemory)],
    },
    FigureSpec {
        id: "moist_air.saturation_pressure",
        unit: Unit::Kilopascal,
        decimals: 2,
        rules: &[exact("pressure-of-saturation", SATURATION, &[field("t", DRY_BULB)], |x| {
            Some(moist_air::saturation_pressure(Temperature::celsius(x[0])) / 1000.0)
        })
        .from("ashrae-2017", Status::FromMemory)],
    },
    FigureSpec {
        id: "moist_air.vapour_pressure",
        unit: Unit::Kilopascal,
        decimals: 2,
        rules: &[exact(
            "pressure-of-vapour",
            "s * r / 100",
            &[figure("s", "moist_air.saturation_pressure"), field("r", HUMIDITY)],
            |x| Some(x[0] * x[1] / 100.0),
        )],
    },
    FigureSpec {
        id: "moist_air.humidity_ratio",
        unit: Unit::GramPerKilogram,
        decimals: 1,
        rules: &[exact(
            "water-in-air",
            "621.945 * saturation_pressure(t) * r / 100 / (1000 * p - saturation_pressure(t) * r / 100)",
            STATE,
            |x| Some(1000.0 * air(x)?.humidity_ratio()),
        )
        .from("ashrae-2017", Status::FromMemory)],
    },
    FigureSpec {
        id: "moist_air.dew_point",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact(
            "dew-point",
            "root(d, 0 - 100, t, saturation_pressure(d) - saturation_pressure(t) * r / 100)",
            &[field("t", DRY_BULB), field("r", HUMIDITY)],
            |x| Some(air(&[x[0], x[1], 101.325])?.dew_point().in_celsius()),
        )
        .from("ashrae-2017", Status::FromMemory)],
    },
    FigureSpec {
        id: "moist_air.wet_bulb",
        unit: Unit::Celsius,
        decimals: 1,
        rules: &[exact("wet-bulb", WET_BULB, STATE, |x| Some(air(x)?.wet_bulb().in_celsius()))
            .from("ashrae-2017", Status::FromMemory)],
    },
    FigureSpec {
        id: "moist_air.enthalpy",
        unit: Unit::KilojoulePerKilogram,
        decimals: 1,
        rules: &[exact(
            "heat-in-air",
            "1.006 * t + w / 1000 * (2501 + 1.86 * t)",
            &[field("t", DRY_BULB), figure("w", "moist_air.humidity_ratio")],
            |x| Some(1.006 * x[0] + x[1] / 1000.0 * (2501.0 + 1.86 * x[0])),
        )
        .from("ashrae-2017", Status::FromMemory)],
    },
    FigureSpec {
        id: "moist_air.density",
        unit: Unit::KilogramPerCubicMetre,
        decimals: 3,
        rules: &[exact(
            "density-of-air",
            "1000 * p * (1 + w / 1000) / (287.042 * (t + 273.15) * (1 + 1.607858 * w / 1000))",
            &[
                field("t", DRY_BULB),
                figure("w", "moist_air.humidity_ratio"),
                figure("p", "moist_air.pressure"),
            ],
            |x| {
                let dry = moist_air::dry_density(Temperature::celsius(x[0]), 1000.0 * x[2]);
                Some(dry * (1.0 + x[1] / 1000.0) / (1.0 + 1.607_858 * x[1] / 1000.0))
            },
        )
        .from("ashrae-2017", Status::FromMemory)],
    },
];

pub(super) const STATE: &[Input] =
    &[field("t", DRY_BULB), field("r", HUMIDITY), figure("p", "moist_air.pressure")];

/// Powers of e and of T stand for the exponentials and logarithms of the printed equations; ice below 0.01 °C.
const SATURATION: &str = "(1 - at_least(t, 0.01)) / 1000 * 2.718281828459045 ^ (0 - 5674.5359 / (t + 273.15) + 6.3925247 - 0.009677843 * (t + 273.15) + 0.00000062215701 * (t + 273.15) ^ 2 + 0.0000000020747825 * (t + 273.15) ^ 3 - 0.00000000000094840240 * (t + 273.15) ^ 4) * (t + 273.15) ^ 4.1635019 \
     + at_least(t, 0.01) / 1000 * 2.718281828459045 ^ (0 - 5800.2206 / (t + 273.15) + 1.3914993 - 0.048640239 * (t + 273.15) + 0.000041764768 * (t + 273.15) ^ 2 - 0.000000014452093 * (t + 273.15) ^ 3) * (t + 273.15) ^ 6.5459673";

/// The wet bulb where one can stand at 0 °C or above, else the iced one.
const WET_BULB: &str = "at_least(0.621945 * saturation_pressure(t) * r / 100 / (1000 * p - saturation_pressure(t) * r / 100), (2501 * 0.621945 * saturation_pressure(0) / (1000 * p - saturation_pressure(0)) - 1.006 * t) / (2501 + 1.86 * t)) \
     * root(b, 0, t, ((2501 - 2.326 * b) * 0.621945 * saturation_pressure(b) / (1000 * p - saturation_pressure(b)) - 1.006 * (t - b)) / (2501 + 1.86 * t - 4.186 * b) \
     - 0.621945 * saturation_pressure(t) * r / 100 / (1000 * p - saturation_pressure(t) * r / 100)) \
     + (1 - at_least(0.621945 * saturation_pressure(t) * r / 100 / (1000 * p - saturation_pressure(t) * r / 100), (2501 * 0.621945 * saturation_pressure(0) / (1000 * p - saturation_pressure(0)) - 1.006 * t) / (2501 + 1.86 * t))) \
     * root(b, 0 - 100, min(t, 0), ((2830 - 0.24 * b) * 0.621945 * saturation_pressure(b) / (1000 * p - saturation_pressure(b)) - 1.006 * (t - b)) / (2830 + 1.86 * t - 2.1 * b) \
     - 0.621945 * saturation_pressure(t) * r / 100 / (1000 * p - saturation_pressure(t) * r / 100))";

/// Dry bulb, humidity in percent, pressure in kPa.
fn air(x: &[f64]) -> Option<MoistAir> {
    MoistAir::new(Temperature::celsius(x[0]), x[1] / 100.0, 1000.0 * x[2])
}
