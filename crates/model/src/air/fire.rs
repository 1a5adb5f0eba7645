//! What a brooder burns, and what its fire leaves in the air.

use crate::heat;

/// What a brooder runs on, and where its smoke goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fuel {
    /// Bottled gas, its smoke in the house.
    UnventedGas,
    /// Bottled gas with a flue.
    VentedGas,
    /// Charcoal in an open pot in the house.
    Charcoal,
    /// Charcoal in a stove with a flue.
    VentedCharcoal,
    /// No fire.
    Electric,
}

/// Net heat of bottled gas and charcoal, MJ/kg (from memory).
const GAS_MJ_PER_KG: f64 = 46.0;
const CHARCOAL_MJ_PER_KG: f64 = 28.5;
/// Mass of a cubic metre of carbon dioxide at 20 °C, kg.
const CO2_KG_PER_M3: f64 = 1.83;

impl Fuel {
    /// Heat of a kg that stays in the house, MJ: net heat times the usual efficiency (from memory; charcoal within a
    /// quarter of it). Electricity is counted in kWh, not kg: 3.6 MJ each.
    pub fn useful_mj(self) -> f64 {
        match self {
            Fuel::UnventedGas => GAS_MJ_PER_KG * 0.95,
            // A flue takes about a fifth with it (our judgement).
            Fuel::VentedGas => GAS_MJ_PER_KG * 0.80,
            Fuel::Charcoal => CHARCOAL_MJ_PER_KG * 0.875,
            Fuel::VentedCharcoal => CHARCOAL_MJ_PER_KG * 0.5,
            Fuel::Electric => 3.6,
        }
    }

    /// Whether anything burns.
    pub fn burns(self) -> bool {
        self != Fuel::Electric
    }

    /// Carbon dioxide, water and carbon monoxide left in the house by a kg: kg, kg, g. Propane's carbon dioxide and water
    /// are exact, the rest from memory. A flue that draws takes all of it; one that is blocked takes none.
    fn left_behind(self) -> (f64, f64, f64) {
        match self {
            Fuel::UnventedGas => (3.0, 1.6, 1.0),
            Fuel::Charcoal => (2.9, 0.3, 200.0),
            Fuel::VentedGas | Fuel::VentedCharcoal | Fuel::Electric => (0.0, 0.0, 0.0),
        }
    }

    /// Oxygen used for each volume of carbon dioxide: 5/3 for propane, 1 for carbon.
    fn oxygen_per_co2(self) -> f64 {
        if self == Fuel::UnventedGas { 5.0 / 3.0 } else { 1.0 }
    }

    /// The fire that gives a heat.
    pub fn fire(self, kw: f64) -> Fire {
        let per_h = heat::fuel(kw, self.useful_mj());
        let (co2_kg, water_kg, co_g) = self.left_behind();
        let co2 = per_h * co2_kg / CO2_KG_PER_M3;
        Fire {
            fuel_per_h: per_h,
            co2_m3_h: co2,
            oxygen_m3_h: co2 * self.oxygen_per_co2(),
            water_kg_h: per_h * water_kg,
            carbon_monoxide_g_h: per_h * co_g,
        }
    }
}

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
    /// Carbon monoxide, g/h: of a blue flame, or of charcoal well alight; a yellow flame gives twenty times as much.
    pub carbon_monoxide_g_h: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 6995 W of bottled gas at 95 %: 0.58 kg, which gives 0.95 m3 of carbon dioxide and 0.93 kg of water (derived).
    #[test]
    fn gas_of_a_cool_night() {
        let fire = Fuel::UnventedGas.fire(6.995);
        assert!((fire.fuel_per_h - 0.58).abs() < 0.005);
        assert!((fire.co2_m3_h - 0.95).abs() < 0.01);
        assert!((fire.water_kg_h - 0.93).abs() < 0.01);
    }

    #[test]
    fn a_flue_and_a_wire_leave_nothing_behind() {
        for fuel in [Fuel::VentedGas, Fuel::VentedCharcoal, Fuel::Electric] {
            let fire = fuel.fire(5.0);
            assert_eq!((fire.co2_m3_h, fire.water_kg_h, fire.carbon_monoxide_g_h), (0.0, 0.0, 0.0));
            assert!(fire.fuel_per_h > 0.0);
        }
        assert_eq!(Fuel::Electric.fire(5.0).fuel_per_h, 5.0);
    }
}
