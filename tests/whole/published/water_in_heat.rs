//! Water in heat, by the sources that the middle, the low and the high end come from.

use model::water;

/// A breeders' handbook (from memory): 6.5 % a degree above 21. 290 L on a mild day are 478.5 L at 31 degrees.
#[test]
fn breeders_handbook() {
    assert!((290.0 * water::heat_factor(31.0) - 478.5).abs() < 0.5);
}

/// An Indian water article: 4 % a degree above 24. 290 L are 371 L at 31 degrees.
#[test]
fn indian_article() {
    assert!((290.0 * water::heat_factor_low(31.0) - 371.0).abs() < 1.0);
}

/// Poultry CRC (Australia): 30 to 50 % more at 32 than at 21 degrees: the low and the middle line stand around it.
#[test]
fn poultry_crc() {
    assert!(water::heat_factor_low(32.0) <= 1.5 && water::heat_factor(32.0) >= 1.5);
    assert!(water::heat_factor_low(32.0) >= 1.3);
    // "In the tropics prolonged heat doubles": the high line.
    assert!((water::heat_factor_high(32.0) - 2.1).abs() < 0.01);
}

/// Household bleach in lines, University of Georgia Extension (C. Ritz): 0.73 mL a litre of a 5.25 % product is about
/// 38 mg/L. The arithmetic only: no dose is shipped.
#[test]
fn milligrams_a_litre() {
    assert!((water::sanitiser_ml(38.3, 1.0, 5.25) - 0.73).abs() < 0.01);
}
