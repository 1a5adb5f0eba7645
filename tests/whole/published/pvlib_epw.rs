//! pvlib 0.16.1, an open library of solar energy: how it reads an EPW file, `iotools.read_epw`. The file is of invented numbers,
//! made so that a column read for another shows; it goes over the end of February of a common year.
//!
//! Exact but for wind, which is brought from 10 m to the curtains by one factor; that factor is ours and not the library's.

use advice::weather_file::{self, Fill};
use quantity::CivilDay;

const FILE: &str = include_str!("../tables/invented_hill.epw");
const READ: &str = include_str!("../tables/invented_hill_read.csv");

#[test]
fn the_library_reads_the_same_hours() {
    let expected = reference::Table::read("invented_hill_read", READ).unwrap();
    let weather = weather_file::read(FILE).unwrap();
    let fill = Fill { latitude_deg: -13.6, wind_m_per_s: 1.5 };
    assert_eq!(expected.rows.len(), 48);
    let mut factors = Vec::new();
    for row in &expected.rows {
        let want = |column: &str| expected.number(row, column).unwrap().unwrap();
        let day = CivilDay::new(2027, want("month") as i8, want("day") as i8).unwrap();
        let hour = weather.hours(day, 0, &fill).unwrap()[want("hour") as usize];
        assert_eq!(hour.outside_c, want("temp_air_c"));
        assert!((100.0 * hour.humidity - want("relative_humidity_pct")).abs() < 1e-9);
        assert_eq!(hour.sun_w_per_m2, want("ghi_w_per_m2"));
        factors.push(hour.wind_m_s / want("wind_speed_10m_m_s"));
    }
    assert!(factors.iter().all(|factor| (factor - factors[0]).abs() < 1e-9));
    // (1.5 / 10)^0.22, the law of wind over scrub.
    assert!((factors[0] - 0.15_f64.powf(0.22)).abs() < 0.005, "{}", factors[0]);
}
