//! pvlib 0.16.1, an open library of solar energy: sun positions by the algorithm of NREL, clear skies by Haurwitz. The file
//! carries its own header.
//!
//! Tolerance: half a degree, as the header asks of a series of the year; of the azimuth as an arc on the sky, since it turns at
//! once where the sun stands overhead. The clear sky within 12 W/m2: what half a degree moves a low sun by.

use advice::verify::verify;

const TABLE: &str = include_str!("../tables/sunposition.csv");

#[test]
fn the_sun_stands_where_the_library_has_it() {
    let expected = reference::Table::read("sunposition", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!(rows.len(), 64);
    for (row, want) in rows.iter().zip(&expected.rows) {
        let want = |column: &str| expected.number(want, column).unwrap().unwrap();
        let got = |column: &str| row[column].as_f64().unwrap();
        for column in ["zenith_true_deg", "zenith_apparent_deg"] {
            assert!((got(column) - want(column)).abs() < 0.5, "{column}: {} {}", got(column), want(column));
        }
        let azimuth = "azimuth_deg_from_north";
        let turned = (got(azimuth) - want(azimuth) + 540.0).rem_euclid(360.0) - 180.0;
        let arc = turned * want("zenith_true_deg").to_radians().sin();
        assert!(arc.abs() < 0.5, "{azimuth}: {} {}", got(azimuth), want(azimuth));
        let sky = "clear_sky_ghi_haurwitz_w_per_m2";
        assert!((got(sky) - want(sky)).abs() < 12.0, "{sky}: {} {}", got(sky), want(sky));
    }
}

#[test]
fn an_instant_that_cannot_be_is_named() {
    let table = |instant: &str| format!("latitude_deg,longitude_deg,instant_utc\n-13.6,30,{instant}\n");
    for wrong in ["2025-02-30 12:00", "2025-03-21", "2025-03-21 24:00", "2025-03-21 12:60", "noon"] {
        assert!(verify(&table(wrong)).unwrap_err().to_string().contains("instant_utc"), "{wrong}");
    }
    assert!(verify(&table("2025-03-21 12:00")).is_ok());
}
