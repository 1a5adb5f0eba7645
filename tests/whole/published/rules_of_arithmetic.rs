//! Worked examples of rules (derived: our arithmetic on the rule as stated).
//! Tolerances are the rounding of the printed value.

use model::disinfectant::{self, Room};
use model::{litter, space};
use quantity::{Area, Coverage, Dilution, Length, Mass, RatioMeaning};

use super::{near, sum};

/// Rule of the two meanings, derived: 1:10 in a litre is 90.9 mL (parts of water) or 100 mL (parts in all).
#[test]
fn one_to_ten_both_ways() {
    let water = sum("dilution", &[("ratio", "1:10"), ("tank_l", "1"), ("means", "parts-water")]);
    near(water.outcome.number("disinfectant.product_per_load").unwrap(), 90.9, 0.1);
    near(water.outcome.number("disinfectant.product_other_meaning").unwrap(), 100.0, 0.1);
    let total = sum("dilution", &[("ratio", "1:10"), ("tank_l", "1"), ("means", "parts-total")]);
    near(total.outcome.number("disinfectant.product_per_load").unwrap(), 100.0, 0.1);
}

/// Rule of areas, derived: a house 20 x 8 x 2.5 m under a flat roof has 460 m2 of floor, four walls and ceiling; at
/// 0.3 L/m2 and 1:200 (parts of water) that is 138 L of mix and 0.687 L of disinfectant.
/// The convention: gables and outer curtain faces are counted only where the grower chooses them.
#[test]
fn a_flat_house_of_460_square_metres() {
    let house = Room {
        length: Length::metres(20.0),
        width: Length::metres(8.0),
        eave: Length::metres(2.5),
        ridge: Length::metres(2.5),
        half_wall: Length::metres(0.0),
    };
    let area = house.floor() * 2.0 + house.walls();
    near(area.in_square_metres(), 460.0, 0.0);
    let mix = disinfectant::solution(area, Coverage::millilitres_per_square_metre(300.0));
    near(mix.in_litres(), 138.0, 1e-9);
    let dilution = Dilution::new(200.0, RatioMeaning::PartsWater).unwrap();
    near(disinfectant::product(mix, dilution).in_litres(), 0.687, 0.005);
}

/// Rule of litter, derived: 160 m2 at 5 cm is 8.0 m3.
#[test]
fn litter_for_160_square_metres() {
    near(litter::volume(Area::square_metres(160.0), Length::centimetres(5.0)).in_cubic_metres(), 8.0, 1e-12);
    let bags = sum("litter", &[("length_m", "20"), ("width_m", "8"), ("depth_cm", "5"), ("bag_l", "100")]);
    near(bags.outcome.number("litter.bags").unwrap(), 80.0, 0.0);
}

/// Rule, derived: 420 birds of 2.1 kg on 40 m2 are 22.05 kg/m2: over 20, under 33.
#[test]
fn four_hundred_and_twenty_birds_on_forty_square_metres() {
    let density = space::density(420.0, Mass::kilograms(2.1), Area::square_metres(40.0));
    near(density.in_kilograms_per_square_metre(), 22.05, 0.01);
}
