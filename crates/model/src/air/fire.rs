//! What a brooder burns, and what its fire leaves in the air.

use reference::TableError;
use reference::fuel::{self, Fuel as OfTable};

use crate::heat;

/// What a brooder runs on, by the kilogram; by the kWh of electricity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fuel {
    /// Heat that stays in the house, MJ; above 0.
    pub useful_mj: f64,
    /// Whether anything burns, in the house or at the foot of a flue.
    pub burns: bool,
    /// Carbon dioxide left in the house, kg.
    pub co2_kg: f64,
    /// Water left in the house, kg.
    pub water_kg: f64,
    /// Carbon monoxide left in the house, g: the middle of what is told.
    pub carbon_monoxide_g: f64,
    /// Oxygen used for each volume of carbon dioxide.
    pub oxygen_per_co2: f64,
}

impl Fuel {
    /// No fire.
    pub const ELECTRICITY: Fuel = Fuel {
        useful_mj: MJ_PER_KWH,
        burns: false,
        co2_kg: 0.0,
        water_kg: 0.0,
        carbon_monoxide_g: 0.0,
        oxygen_per_co2: 0.0,
    };

    /// A fuel named as in a plan file; `None` for one the table does not hold. A flue that draws leaves nothing behind.
    ///
    /// # Errors
    /// [`TableError`] when the table does not hold what it should.
    pub fn named(name: &str) -> Result<Option<Fuel>, TableError> {
        Ok(fuel::fuel(name)?.map(|fuel| Fuel::of(&fuel)))
    }

    fn of(fuel: &OfTable) -> Fuel {
        let Some(net_mj) = fuel.net_mj_per_kg else { return Fuel::ELECTRICITY };
        let middle = |(low, high): (f64, f64)| f64::midpoint(low, high);
        Fuel {
            useful_mj: net_mj * middle(fuel.efficiency),
            burns: true,
            co2_kg: fuel.co2_kg_per_kg.unwrap_or(0.0),
            water_kg: fuel.water_kg_per_kg.unwrap_or(0.0),
            carbon_monoxide_g: fuel.co_g_per_kg.map_or(0.0, middle),
            oxygen_per_co2: fuel.oxygen_per_co2.unwrap_or(0.0),
        }
    }

    /// A kilogram of two fuels burnt side by side, where the other gives a `share` of the heat, 0 to 1; a kWh of electricity
    /// counts as a kilogram.
    pub fn beside(self, other: Fuel, share: f64) -> Fuel {
        let (one, two) = ((1.0 - share) / self.useful_mj, share / other.useful_mj);
        let both = one + two;
        let mixed = |part: fn(&Fuel) -> f64| (one * part(&self) + two * part(&other)) / both;
        let co2_kg = mixed(|fuel| fuel.co2_kg);
        let oxygen = mixed(|fuel| fuel.co2_kg * fuel.oxygen_per_co2);
        Fuel {
            useful_mj: 1.0 / both,
            burns: self.burns || other.burns,
            co2_kg,
            water_kg: mixed(|fuel| fuel.water_kg),
            carbon_monoxide_g: mixed(|fuel| fuel.carbon_monoxide_g),
            oxygen_per_co2: if co2_kg > 0.0 { oxygen / co2_kg } else { 0.0 },
        }
    }

    /// The fire that gives a heat.
    pub fn fire(self, kw: f64) -> Fire {
        let per_h = heat::fuel(kw, self.useful_mj);
        let co2 = per_h * self.co2_kg / heat::CO2_KG_PER_M3;
        Fire {
            fuel_per_h: per_h,
            co2_m3_h: co2,
            oxygen_m3_h: co2 * self.oxygen_per_co2,
            water_kg_h: per_h * self.water_kg,
            carbon_monoxide_g_h: per_h * self.carbon_monoxide_g,
        }
    }
}

const MJ_PER_KWH: f64 = 3.6;

/// What burns in an hour and what it leaves in the air of the house.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fire {
    /// Fuel, kg an hour; kWh an hour of electricity.
    pub fuel_per_h: f64,
    /// Carbon dioxide, m3/h.
    pub co2_m3_h: f64,
    /// Oxygen used, m3/h.
    pub oxygen_m3_h: f64,
    /// Water, kg/h.
    pub water_kg_h: f64,
    /// Carbon monoxide, g/h.
    pub carbon_monoxide_g_h: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(name: &str) -> Fuel {
        Fuel::named(name).unwrap().unwrap()
    }

    /// 6995 W of bottled gas at 95 %: 0.58 kg, which gives 0.95 m3 of carbon dioxide and 0.93 kg of water (derived).
    #[test]
    fn gas_of_a_cool_night() {
        let fire = Fuel { useful_mj: 46.0 * 0.95, ..named("lpg") }.fire(6.995);
        assert!((fire.fuel_per_h - 0.58).abs() < 0.005);
        assert!((fire.co2_m3_h - 0.95).abs() < 0.01);
        assert!((fire.water_kg_h - 0.93).abs() < 0.01);
    }

    /// Chemistry: propane takes 5 of oxygen for 3 of carbon dioxide, carbon one for one.
    #[test]
    fn fires_breathe_by_what_they_are() {
        let ratio = |name| {
            let fire = named(name).fire(5.0);
            fire.oxygen_m3_h / fire.co2_m3_h
        };
        assert!((ratio("lpg") - 5.0 / 3.0).abs() < 0.001 && (ratio("charcoal") - 1.0).abs() < 1e-12);
    }

    /// Two fires side by side leave what each would leave for its share of the heat.
    #[test]
    fn two_fires_leave_what_both_leave() {
        let parts = |fire: &Fire| {
            [fire.fuel_per_h, fire.co2_m3_h, fire.oxygen_m3_h, fire.water_kg_h, fire.carbon_monoxide_g_h]
        };
        for (one, other) in [("lpg", "charcoal"), ("firewood", "kerosene"), ("electricity", "lpg")] {
            for share in [0.0, 0.3, 1.0] {
                let both = named(one).beside(named(other), share).fire(8.0);
                let (first, second) = (named(one).fire(8.0 * (1.0 - share)), named(other).fire(8.0 * share));
                for (both, (first, second)) in
                    parts(&both).iter().zip(parts(&first).iter().zip(parts(&second).iter()))
                {
                    assert!((both - first - second).abs() < 1e-9, "{one} and {other}, {share}");
                }
            }
        }
    }

    #[test]
    fn a_flue_and_a_wire_leave_nothing_behind() {
        for name in ["firewood", "rice-husk", "electricity"] {
            let fire = named(name).fire(5.0);
            assert_eq!((fire.co2_m3_h, fire.water_kg_h, fire.carbon_monoxide_g_h), (0.0, 0.0, 0.0), "{name}");
            assert!(fire.fuel_per_h > 0.0);
        }
        assert_eq!(Fuel::ELECTRICITY.fire(5.0).fuel_per_h, 5.0);
        assert_eq!(named("electricity"), Fuel::ELECTRICITY);
        assert_eq!(Fuel::named("paper").unwrap(), None);
    }
}
