//! Worked values of brooding handbooks, extension pages and geometry, for guard, dilution, areas and litter.
//! Each line names its source and status. Tolerances are the rounding of the printed value.

use advice::sums::{self, SumResult};
use model::disinfectant::{self, Room};
use model::{guard, litter};
use quantity::{Area, Coverage, Dilution, Length, RatioMeaning, Raw, Unit, Volume};

pub fn sum(name: &str, inputs: &[(&str, &str)]) -> SumResult {
    let raws: Vec<Raw> = inputs
        .iter()
        .map(|(key, text)| Raw { key: (*key).to_owned(), text: vec![(*text).to_owned()], line: None })
        .collect();
    let result = sums::by_name(name).expect(name).work_out(&raws, true);
    assert!(result.checked.problems.is_empty(), "{:?}", result.checked.problems);
    result
}

fn near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{got}, wanted {want} within {tolerance}");
}

/// Geometry, derived: 500 chicks at 50/m2 need 10.0 m2: a ring 3.57 m across, a guard of 11.2 m.
#[test]
fn five_hundred_chicks_at_fifty() {
    let area = guard::asked_area(500.0, 50.0);
    near(area.in_square_metres(), 10.0, 0.0);
    near(guard::circumference(area).in_metres() / std::f64::consts::PI, 3.57, 0.02);
    near(guard::circumference(area).in_metres(), 11.2, 0.1);
}

/// Geometry, derived: 300 chicks at 40/m2 need 7.5 m2, 3.09 m across; a ring of 3.0 m holds 7.07 m2.
#[test]
fn three_hundred_chicks_at_forty() {
    let area = guard::asked_area(300.0, 40.0);
    near(area.in_square_metres(), 7.5, 0.0);
    near(guard::circumference(area).in_metres() / std::f64::consts::PI, 3.09, 0.02);
    let three_metres = Length::metres(3.0 * std::f64::consts::PI);
    near(guard::ring_area(1.0, three_metres, guard::Shape::Circle).in_square_metres(), 7.07, 0.01);
}

/// Govt of India CPDO Mumbai FAQ, published: 0.25 ft2 a chick is 43.1 chicks/m2.
#[test]
fn a_quarter_square_foot_a_chick() {
    near(Unit::PerSquareFoot.convert(4.0, Unit::PerSquareMetre).unwrap(), 43.1, 0.1);
}

/// Rule of the two meanings, derived: 1:10 in a litre is 90.9 mL (parts of water) or 100 mL (parts in all).
#[test]
fn one_to_ten_both_ways() {
    let water = sum("dilution", &[("ratio", "1:10"), ("tank_l", "1"), ("means", "parts-water")]);
    near(water.outcome.number("disinfectant.product_per_load").unwrap(), 90.9, 0.1);
    near(water.outcome.number("disinfectant.product_other_meaning").unwrap(), 100.0, 0.1);
    let total = sum("dilution", &[("ratio", "1:10"), ("tank_l", "1"), ("means", "parts-total")]);
    near(total.outcome.number("disinfectant.product_per_load").unwrap(), 100.0, 0.1);
}

/// Infection-control formula c/d - 1 (published health sheet): 3.5 % to 0.5 % is 1 part and 6 of water; 5 % to 0.1 % is
/// 1 and 49. Read backwards through the same kernel: that many parts of water bring the strength down by that factor.
#[test]
fn parts_of_water_for_a_strength() {
    for (concentrate, wanted, parts) in [(3.5, 0.5, 6.0), (5.0, 0.1, 49.0)] {
        let dilution = Dilution::new(parts, RatioMeaning::PartsWater).unwrap();
        let product = disinfectant::product(Volume::litres(1.0), dilution);
        near(concentrate * product.in_litres(), wanted, 1e-12);
    }
}

/// eXtension poultry course, published: 3/4 US cup (177 mL) in a US gallon (3.785 L) is 46.8 mL/L, about 1:21, not the
/// 1:10 that the same leaflet prints beside it.
#[test]
fn a_leaflet_that_disagrees_with_itself() {
    let poured = sum(
        "dilution",
        &[("ratio", "1:10"), ("tank_l", "3.785"), ("means", "parts-total"), ("poured_ml", "177")],
    );
    near(177.0 / 3.785, 46.8, 0.5);
    near(poured.outcome.number("disinfectant.true_ratio").unwrap(), 21.4, 0.5);
    assert!(poured.outcome.number("disinfectant.times_label").unwrap() < 0.5);
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
