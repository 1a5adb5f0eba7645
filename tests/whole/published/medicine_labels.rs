//! UK NOAH Compendium product entry for amprolium in drinking water (published), and the formula that labels print:
//! product by the weight of the birds, spread over the water they drink.

use super::{near, sum};

/// NOAH: 20 mg of amprolium a kg is 0.05 mL of product a kg. 1 000 birds of 0.8 kg that drink 150 L take 40 mL a day
/// (exact) and 0.267 mL in a litre, within 0.002.
#[test]
fn eight_hundred_kilograms_take_forty_millilitres() {
    let flock = [("birds", "1000"), ("weight_kg", "0.8"), ("drunk_l", "150")];
    let by_product = sum("dose", &[&flock[..], &[("product_ml_per_kg", "0.05")]].concat());
    // 20 mg in 0.05 mL are 400 mg in a mL.
    let active = [("dose_mg_per_kg", "20"), ("strength_mg_per_ml", "400")];
    let by_active = sum("dose", &[&flock[..], &active].concat());
    for sum in [by_product, by_active] {
        near(sum.outcome.number("medicine.product_ml").unwrap(), 40.0, 1e-12);
        near(sum.outcome.number("medicine.per_litre_ml").unwrap(), 0.267, 0.002);
    }
}

/// Label formula: 1 000 birds of 1.5 kg, 10 mg a kg of a product with 100 mg in a mL, take 150 mL. Exact.
#[test]
fn ten_milligrams_of_a_hundred_a_millilitre() {
    let typed =
        [("birds", "1000"), ("weight_kg", "1.5"), ("dose_mg_per_kg", "10"), ("strength_mg_per_ml", "100")];
    near(sum("dose", &typed).outcome.number("medicine.product_ml").unwrap(), 150.0, 0.0);
}
