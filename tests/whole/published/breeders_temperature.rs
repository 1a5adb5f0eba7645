//! A breeder's handbook, dry-bulb temperature by age and humidity (from memory, well recalled). These test the reading and
//! the straight lines between, not the truth of the table. Tolerance: 0.1 °C, its rounding.

use super::near;

#[test]
fn four_points() {
    let target = |day, humidity| reference::temperature::target(day, humidity).unwrap();
    near(target(0.0, 50.0), 33.2, 0.1);
    near(target(6.0, 60.0), 27.7, 0.1);
    near(target(21.0, 70.0), 21.3, 0.1);
    near(target(0.0, 65.0), 30.0, 0.1);
}
