//! pvlib 0.16.1, an open library of sunlight: where the sun stands after the solar position algorithm of NREL, and the clear
//! sky after Haurwitz. The file carries its own header, which suggests 0.5° for a formula of the day of the year.
//!
//! Azimuth is compared as a way along the sky, since near straight up a small step turns it far. The clear sky follows the
//! zenith: half a degree is at most 10 W/m2.

use advice::verify::verify;

const TABLE: &str = include_str!("../tables/sunposition.csv");

#[test]
fn every_row_of_the_sun_comes_out() {
    let expected = reference::Table::read("sunposition", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!(rows.len(), 64);
    for (row, cells) in rows.iter().zip(&expected.rows) {
        let want = |column| expected.number(cells, column).unwrap().unwrap();
        let got = |column: &str| row[column].as_f64().unwrap_or(f64::NAN);
        let off = |column| got(column) - want(column);
        assert!(off("zenith_true_deg").abs() < 0.5, "{row:?} {cells:?}");
        let turned = (off("azimuth_deg_from_north") + 180.0).rem_euclid(360.0) - 180.0;
        let along = turned * want("zenith_true_deg").to_radians().sin();
        assert!(along.abs() < 0.5, "{row:?} {cells:?}");
        assert!(off("clear_sky_ghi_haurwitz_w_per_m2").abs() < 10.0, "{row:?} {cells:?}");
    }
}

#[test]
fn an_instant_that_cannot_be_is_named() {
    let fault = verify("latitude_deg,longitude_deg,instant_utc\n1,2,2025-03-21 24:10\n").unwrap_err();
    assert!(fault.to_string().contains("YYYY-MM-DD HH:MM"));
}
