//! The heat chicks need before they come: faces of the heated part, what goes out through them and with the air, what the
//! chicks give themselves, and the fuel for the rest.
//!
//! A steady balance: heat in = (UA + air) × (inside − outside). Nothing is credited to warm litter or floor, nor to the
//! warm spot under a hot brooder.

use quantity::{Area, Length, Mass, Temperature, Volume};

use crate::bird_heat::{self, CORRECTION_OF_COLD_CHICKS};
use crate::disinfectant::Room;

/// The part of a house that is heated: all of it, or one end behind a partition.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatedPart {
    /// Its measures; `length` is that of the heated part.
    pub room: Room,
    /// Whether a partition closes it off from the rest of the house.
    pub partitioned: bool,
}

impl HeatedPart {
    /// The way round it along outer walls: a partition stands on no outer wall.
    pub fn way_round(self) -> Length {
        let ends = if self.partitioned { 1.0 } else { 2.0 };
        self.room.length * 2.0 + self.room.width * ends
    }

    /// Gables above the eave; behind a partition one gable, and the partition from floor to roof.
    pub fn ends(self) -> Area {
        if self.partitioned { self.room.gables() * 0.5 + self.cross_section() } else { self.room.gables() }
    }

    /// Its air, up to the roof.
    pub fn air(self) -> Volume {
        self.cross_section() * self.room.length
    }

    fn cross_section(self) -> Area {
        self.room.width * ((self.room.eave + self.room.ridge) * 0.5)
    }
}

/// What a roof lets through with a ceiling below it, W/m2K, from what the bare roof lets through and what the ceiling and
/// the still air above it resist, m2K/W.
pub fn under_ceiling(bare_roof_w_per_m2k: f64, ceiling_m2k_per_w: f64) -> f64 {
    1.0 / (1.0 / bare_roof_w_per_m2k + ceiling_m2k_per_w)
}

/// Heat of dry outside air, Wh for each m3 and degree, at a pressure in Pa; 1006 J/kg K.
pub fn heat_of_air(outside: Temperature, pressure_pa: f64) -> f64 {
    1006.0 * crate::moist_air::dry_density(outside, pressure_pa) / 3600.0
}

/// Most carbon dioxide at the chicks' height, share: 3000 ppm, Directive 2007/43/EC, Annex II.
const CO2_LIMIT: f64 = 0.003;
/// Carbon dioxide outside, share.
pub(crate) const CO2_OUTSIDE: f64 = 0.00042;

/// Mass of a cubic metre of carbon dioxide at 20 °C, kg.
pub(crate) const CO2_KG_PER_M3: f64 = 1.83;

/// Outside air that keeps the breath of animals giving off `total_w` of heat below 3000 ppm of carbon dioxide, m3/h.
/// Burners that burn inside need their own air on top.
pub fn air_to_breathe(total_w: f64) -> f64 {
    bird_heat::carbon_dioxide_m3_per_h(total_w) / (CO2_LIMIT - CO2_OUTSIDE)
}

/// Outside air that carries the carbon dioxide of a fire inside, kg/h, away below the same limit, m3/h.
pub fn air_for_fire(co2_kg_per_h: f64) -> f64 {
    co2_kg_per_h / CO2_KG_PER_M3 / (CO2_LIMIT - CO2_OUTSIDE)
}

/// A steady balance of a room.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance {
    /// Through walls, roof, floor, W/K.
    pub through: f64,
    /// With the air, W/K.
    pub with_air: f64,
    /// Sensible heat of the animals, W.
    pub animals: f64,
}

impl Balance {
    /// Heat to put in so that the inside holds its temperature, W; 0 where the animals or the weather do it alone.
    pub fn heat_to_put_in(self, inside: Temperature, outside: Temperature) -> f64 {
        let warmer = (inside.in_celsius() - outside.in_celsius()).max(0.0);
        ((self.through + self.with_air) * warmer - self.animals).max(0.0)
    }
}

/// Sensible heat of chicks at their comfort temperature, W.
pub fn chicks(count: f64, each: Mass, comfort: Temperature) -> f64 {
    count * bird_heat::total_at_20c(each) * bird_heat::sensible_share(comfort, bird_heat::correction(comfort))
}

/// Where the air settles when heaters of `heaters` W run full: the root of
/// (UA + air) (t − outside) = heaters + chicks(t), the chicks below their comfort temperature.
///
/// - `loss`: UA and air together, W/K
/// - `at_20c`: total heat of all chicks in air of 20 °C, W
///
/// `None` where no temperature balances.
pub fn settles_at(loss: f64, heaters: f64, at_20c: f64, outside: Temperature) -> Option<Temperature> {
    // Cold chicks give at_20c (0.61 − 0.000228 t²): a quadratic in t, of which the upper root is the warm one.
    let square = 0.000_228 * at_20c;
    let at_freezing = bird_heat::sensible_share(Temperature::celsius(0.0), CORRECTION_OF_COLD_CHICKS);
    let constant = heaters + at_freezing * at_20c + loss * outside.in_celsius();
    let discriminant = loss * loss + 4.0 * square * constant;
    let root = (discriminant.sqrt() - loss) / (2.0 * square);
    root.is_finite().then(|| Temperature::celsius(root))
}

/// Fuel for a heat, kg: 3.6 MJ in a kWh.
///
/// - `useful_mj_per_kg`: net heat of the fuel times the share that stays in the house
pub fn fuel(heat_kwh: f64, useful_mj_per_kg: f64) -> f64 {
    3.6 * heat_kwh / useful_mj_per_kg
}

/// Mass of a cubic metre of carbon monoxide at 20 °C, g.
const CO_G_PER_M3: f64 = 1165.0;

/// Carbon monoxide in the air, parts in a million, once what is burnt and what is carried out are even.
///
/// An estimate for a warning. Whatever it comes to, it is no amount to stay in.
pub fn carbon_monoxide_ppm(g_per_h: f64, air_m3_per_h: f64) -> f64 {
    1e6 * g_per_h / CO_G_PER_M3 / air_m3_per_h
}

#[cfg(test)]
mod tests {
    use super::*;

    fn house(length: f64, partitioned: bool) -> HeatedPart {
        let metres = Length::metres;
        let room = Room {
            length: metres(length),
            width: metres(9.0),
            eave: metres(2.4),
            ridge: metres(3.6),
            half_wall: metres(0.6),
        };
        HeatedPart { room, partitioned }
    }

    #[test]
    fn a_partition_stands_in_for_one_end() {
        let (whole, end) = (house(18.0, false), house(9.0, true));
        assert_eq!(whole.way_round().in_metres(), 54.0);
        assert_eq!(end.way_round().in_metres(), 27.0);
        assert!((whole.ends().in_square_metres() - 10.8).abs() < 1e-12);
        assert!((end.ends().in_square_metres() - (5.4 + 27.0)).abs() < 1e-12);
        assert!((whole.air().in_cubic_metres() - 486.0).abs() < 1e-9);
    }

    /// Pots in 486 m3 (derived): one pot of 60 g an hour at a fifth of an air change is about 530 ppm.
    #[test]
    fn one_pot_in_a_shut_house_kills() {
        let ppm = carbon_monoxide_ppm(60.0, 486.0 * 0.2);
        assert!((ppm - 530.0).abs() < 1.0, "{ppm}");
        assert!((carbon_monoxide_ppm(4.0 * 60.0, 486.0 * 0.2) - 2119.0).abs() < 1.0);
        // 0.3 kg/h at 200 g/kg into 100 m3/h: 515 ppm.
        assert!((carbon_monoxide_ppm(60.0, 100.0) - 515.0).abs() < 0.5);
    }

    /// 6995 W of LPG at 46 MJ/kg, 95 %: 0.58 kg an hour. 5 kW full on for 24 h at 46.1 MJ/kg: 9.4 kg. 2 kg of charcoal
    /// over 16 h at 29 MJ/kg: 1.01 kW. All derived; tolerances are the rounding of the printed values.
    #[test]
    fn fuel_by_hand() {
        assert!((fuel(6.995, 46.0 * 0.95) - 0.58).abs() < 0.005);
        assert!((fuel(5.0 * 24.0, 46.1) - 9.4).abs() < 0.05);
        assert!((fuel(1.01 * 16.0, 29.0) - 2.0).abs() < 0.01);
    }

    /// 0.58 kg of LPG an hour gives 1.74 kg of carbon dioxide, 0.95 m3 (derived), which asks for 369 m3 of air.
    #[test]
    fn a_fire_breathes_too() {
        assert!((air_for_fire(0.58 * 3.0) * (CO2_LIMIT - CO2_OUTSIDE) - 0.95).abs() < 0.005);
        assert!((air_for_fire(1.74) - 368.5).abs() < 0.5);
    }

    /// With just the heat that the balance asks for at a temperature below comfort, the air settles there.
    #[test]
    fn settling_undoes_the_balance() {
        let (outside, inside) = (Temperature::celsius(12.0), Temperature::celsius(24.0));
        let at_20c = 1600.0 * bird_heat::total_at_20c(Mass::grams(44.0));
        let animals = at_20c * bird_heat::sensible_share(inside, CORRECTION_OF_COLD_CHICKS);
        let balance = Balance { through: 420.0, with_air: 80.0, animals };
        let heat = balance.heat_to_put_in(inside, outside);
        let settled = settles_at(500.0, heat, at_20c, outside).unwrap();
        assert!((settled.in_celsius() - 24.0).abs() < 1e-9);
    }

    #[test]
    fn nothing_is_asked_of_a_warm_night() {
        let balance = Balance { through: 500.0, with_air: 100.0, animals: 300.0 };
        assert_eq!(balance.heat_to_put_in(Temperature::celsius(30.0), Temperature::celsius(31.0)), 0.0);
        assert_eq!(balance.heat_to_put_in(Temperature::celsius(30.0), Temperature::celsius(29.9)), 0.0);
        let ten = balance.heat_to_put_in(Temperature::celsius(30.0), Temperature::celsius(20.0));
        assert_eq!(ten, 5700.0);
    }
}
