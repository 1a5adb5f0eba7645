//! The air itself and what birds give off into it: the tables of check values that these models can work out.

use model::bird_heat;
use model::light;
use model::moist_air::{self, MoistAir};
use quantity::{CivilDay, Mass, Temperature};

use super::{Family, house_balance};
use crate::verify::{Cell, RowOutputs, Shape, each};

/// The family.
pub static FAMILY: Family = Family { figures: &[], fields: &[], sums: &[], series: &[], shapes: SHAPES };

static SHAPES: &[Shape] = &[
    Shape {
        name: "psychrometrics",
        inputs: &["dry_bulb_c", "relative_humidity_share", "pressure_pa"],
        outputs: &[
            "saturation_pressure_pa",
            "vapour_pressure_pa",
            "humidity_ratio_kg_per_kg",
            "wet_bulb_c",
            "dew_point_c",
            "enthalpy_j_per_kg_dry_air",
            "specific_volume_m3_per_kg_dry_air",
            "density_kg_per_m3",
        ],
        work_out: |rows| each(rows, psychrometrics),
    },
    Shape {
        name: "bird_heat",
        inputs: &["body_weight_kg", "air_c"],
        outputs: &[
            "total_w_at_20c",
            "total_w",
            "sensible_w_house",
            "latent_w_house",
            "moisture_g_per_h_house",
            "sensible_w_animal",
            "latent_w_animal",
            "sensible_w_broiler_straw",
            "co2_l_per_h",
        ],
        work_out: |rows| each(rows, birds),
    },
    Shape {
        name: "sunposition",
        inputs: &["latitude_deg", "longitude_deg", "instant_utc"],
        outputs: &["zenith_true_deg", "azimuth_deg_from_north", "clear_sky_ghi_haurwitz_w_per_m2"],
        work_out: |rows| each(rows, sun),
    },
    house_balance::SHAPE,
];

/// `YYYY-MM-DD HH:MM`.
fn instant(cell: &Cell) -> Option<(CivilDay, f64)> {
    let (day, clock) = cell.text.split_once(' ')?;
    let (hour, minute) = clock.split_once(':')?;
    let (hour, minute): (u32, u32) = (hour.parse().ok()?, minute.parse().ok()?);
    let within = hour < 24 && minute < 60;
    Some((CivilDay::parse(day).filter(|_| within)?, f64::from(hour) + f64::from(minute) / 60.0))
}

fn sun(cells: &[Cell]) -> RowOutputs {
    let (latitude, longitude) = (cells[0].number(-90.0, 90.0)?, cells[1].number(-180.0, 180.0)?);
    let (day, hour) = instant(&cells[2]).ok_or_else(|| cells[2].fault("YYYY-MM-DD HH:MM".to_owned()))?;
    let sun = light::sun_position(latitude, longitude, f64::from(day.day_of_year()), hour);
    let clear = light::clear_sky_w_per_m2(sun.zenith_deg);
    Ok(vec![Some(sun.zenith_deg), Some(sun.azimuth_deg), Some(clear)])
}

/// Air that cannot be (vapour alone above the whole pressure) has no outputs but the pressure of saturation.
fn psychrometrics(cells: &[Cell]) -> RowOutputs {
    let air = Temperature::celsius(cells[0].number(-60.0, 150.0)?);
    let humidity = cells[1].number(0.001, 1.0)?;
    let moist = MoistAir::new(air, humidity, cells[2].number(20_000.0, 120_000.0)?);
    Ok(vec![
        Some(moist_air::saturation_pressure(air)),
        moist.map(MoistAir::vapour_pressure),
        moist.map(MoistAir::humidity_ratio),
        moist.map(|moist| moist.wet_bulb().in_celsius()),
        moist.map(|moist| moist.dew_point().in_celsius()),
        moist.map(MoistAir::enthalpy),
        moist.map(MoistAir::specific_volume),
        moist.map(MoistAir::density),
    ])
}

fn birds(cells: &[Cell]) -> RowOutputs {
    let bird = Mass::kilograms(cells[0].number(0.01, 10.0)?);
    let air = Temperature::celsius(cells[1].number(-10.0, 50.0)?);
    let at_20c = bird_heat::total_at_20c(bird);
    let total = at_20c * bird_heat::correction(air);
    let house = at_20c * bird_heat::sensible_share(air, bird_heat::correction(air));
    let alone = bird_heat::sensible_of_bird_alone(bird, air);
    let outputs = [
        at_20c,
        total,
        house,
        total - house,
        bird_heat::moisture_g_per_h(total - house),
        alone,
        total - alone,
        bird_heat::sensible_on_straw(bird, air),
        1000.0 * bird_heat::carbon_dioxide_m3_per_h(total),
    ];
    Ok(outputs.into_iter().map(Some).collect())
}
