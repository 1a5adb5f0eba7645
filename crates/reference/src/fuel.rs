//! What a kilogram of fuel gives, and what comes with it.

use crate::table::{Table, TableError};

/// A fuel as it is burnt in or beside a brooder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fuel {
    /// Net heat, MJ/kg; `None` for electricity.
    pub net_mj_per_kg: Option<f64>,
    /// Lowest and highest share of it that stays in the house.
    pub efficiency: (f64, f64),
    /// Lowest and highest carbon monoxide in the house, g for each kg; `None` where a flue or a wire takes the place of a
    /// flame in the house. That is no statement that there is none.
    pub co_g_per_kg: Option<(f64, f64)>,
    /// Carbon dioxide in the house, kg for each kg; `None` as for carbon monoxide.
    pub co2_kg_per_kg: Option<f64>,
    /// Water in the house, kg for each kg; `None` as for carbon monoxide.
    pub water_kg_per_kg: Option<f64>,
    /// Oxygen used for each volume of carbon dioxide; `None` as for carbon monoxide.
    pub oxygen_per_co2: Option<f64>,
}

/// A fuel named as in a plan file; `None` for one the table does not hold.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn fuel(name: &str) -> Result<Option<Fuel>, TableError> {
    let table = Table::shipped("fuels")?;
    let Ok(row) = table.row("fuel", name) else {
        return Ok(None);
    };
    let number = |column| table.number(row, column);
    let missing = || TableError::NoRow { name: table.name.clone(), row: name.to_owned() };
    Ok(Some(Fuel {
        net_mj_per_kg: number("net_mj_per_kg")?,
        efficiency: number("efficiency_low")?.zip(number("efficiency_high")?).ok_or_else(missing)?,
        co_g_per_kg: number("co_g_per_kg_low")?.zip(number("co_g_per_kg_high")?),
        co2_kg_per_kg: number("co2_kg_per_kg")?,
        water_kg_per_kg: number("water_kg_per_kg")?,
        oxygen_per_co2: number("oxygen_per_co2")?,
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pot_gives_its_heat_and_its_gas_inside() {
        let charcoal = fuel("charcoal").unwrap().unwrap();
        assert_eq!(charcoal.efficiency, (0.8, 0.95));
        assert_eq!(charcoal.co_g_per_kg, Some((150.0, 300.0)));
        assert_eq!(fuel("electricity").unwrap().unwrap().net_mj_per_kg, None);
        assert_eq!(fuel("paper").unwrap(), None);
    }

    #[test]
    fn every_fuel_holds_together() {
        for row in &Table::shipped("fuels").unwrap().rows {
            let fuel = fuel(&row[0]).unwrap().unwrap();
            let (low, high) = fuel.efficiency;
            assert!(0.0 < low && low <= high && high <= 1.0, "{}", row[0]);
            assert!(fuel.co_g_per_kg.is_none_or(|(low, high)| 0.0 < low && low < high), "{}", row[0]);
        }
    }
}
