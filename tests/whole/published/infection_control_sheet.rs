//! A public health sheet on chlorine dilutions for infection control (undated; published): parts of water = c/d − 1.
//! Tolerances are the rounding of the printed value.

use model::disinfectant;
use quantity::{Dilution, RatioMeaning, Volume};

use super::near;

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
