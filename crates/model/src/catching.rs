//! Birds into crates: how many fit one, by what they weigh, and when feed goes away.

/// Hours without feed before slaughter, catching, road and waiting counted with them: 8 to 12.
///
/// Source: [cervantes-feed-off] (published); 12 at most by [eu-2007-43].
pub const FEED_OFF_H: (i32, i32) = (8, 12);

/// Birds that one crate takes.
///
/// - `floor_cm2`: of the crate
/// - `fewer`: share left out in heat, 0 to 1
/// - `cm2_a_kg`, `kg`: floor for a kilogram, and a bird's weight, above 0: 180 to 200 cm² for birds under 1.6 kg, 160 under 3, 115
///   under 5, 105 above ([eu-2005-1], from memory)
///
/// Whole birds. `None` for a bird without weight.
pub fn birds_a_crate(floor_cm2: f64, fewer: f64, cm2_a_kg: f64, kg: f64) -> Option<f64> {
    let birds = crate::budget::per(floor_cm2 * (1.0 - fewer), cm2_a_kg * kg)?;
    Some(birds.floor().max(0.0))
}

/// Crates for some birds; `None` where a crate takes none.
pub fn crates(birds: f64, birds_a_crate: f64) -> Option<f64> {
    crate::budget::per(birds, birds_a_crate).map(quantity::physical::round_up)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heat_leaves_places_empty() {
        assert_eq!(birds_a_crate(4_000.0, 0.0, 160.0, 2.1), Some(11.0));
        assert_eq!(birds_a_crate(4_000.0, 0.2, 160.0, 2.1), Some(9.0));
        assert_eq!(birds_a_crate(4_000.0, 0.0, 160.0, 0.0), None);
        assert_eq!((crates(100.0, 9.0), crates(0.0, 9.0), crates(5.0, 0.0)), (Some(12.0), Some(0.0), None));
    }
}
