//! Physical quantities as types: a unit is named only when a number goes in or comes out.

use crate::unit::Unit;

/// Makes a newtype over `f64` held in one base unit, with named ways in and out.
macro_rules! physical {
    ($(#[$doc:meta])* $name:ident in $base:ident; $($(#[$mdoc:meta])* $make:ident / $take:ident : $unit:ident),+ $(,)?) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("From ", stringify!($base), ", the unit it is held in; usable in constants.")]
            pub const fn from_base(base: f64) -> Self {
                Self(base)
            }
            $(
                $(#[$mdoc])*
                pub fn $make(value: f64) -> Self {
                    Self(Unit::$unit.to_base(value))
                }
                #[doc = concat!("The same quantity out again; see [`", stringify!($name), "::", stringify!($make), "`].")]
                pub fn $take(self) -> f64 {
                    Unit::$unit.from_base(self.0)
                }
            )+
        }

        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self(self.0 + other.0) }
        }
        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self(self.0 - other.0) }
        }
        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, by: f64) -> Self { Self(self.0 * by) }
        }
        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, by: f64) -> Self { Self(self.0 / by) }
        }
        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, by: Self) -> f64 { self.0 / by.0 }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(parts: I) -> Self { Self(parts.map(|part| part.0).sum()) }
        }
    };
}

physical! {
    /// A length, held in metres.
    Length in Metre;
    /// From metres.
    metres / in_metres: Metre,
    /// From centimetres.
    centimetres / in_centimetres: Centimetre,
    /// From millimetres.
    millimetres / in_millimetres: Millimetre,
    /// From international feet, 0.3048 m exactly.
    feet / in_feet: Foot,
}
physical! {
    /// A surface, held in square metres.
    Area in SquareMetre;
    /// From square metres.
    square_metres / in_square_metres: SquareMetre,
    /// From square feet.
    square_feet / in_square_feet: SquareFoot,
}
physical! {
    /// A volume, held in litres.
    Volume in Litre;
    /// From litres.
    litres / in_litres: Litre,
    /// From millilitres.
    millilitres / in_millilitres: Millilitre,
    /// From cubic metres.
    cubic_metres / in_cubic_metres: CubicMetre,
    /// From US liquid gallons, 3.785 411 784 L exactly.
    us_gallons / in_us_gallons: UsGallon,
}
physical! {
    /// A mass, held in kilograms.
    Mass in Kilogram;
    /// From kilograms.
    kilograms / in_kilograms: Kilogram,
    /// From grams.
    grams / in_grams: Gram,
    /// From avoirdupois pounds, 0.453 592 37 kg exactly.
    pounds / in_pounds: Pound,
}
physical! {
    /// A temperature, held in degrees Celsius. Adding two makes sense only for differences.
    Temperature in Celsius;
    /// From degrees Celsius.
    celsius / in_celsius: Celsius,
    /// From degrees Fahrenheit.
    fahrenheit / in_fahrenheit: Fahrenheit,
}
physical! {
    /// Live weight on a floor, held in kilograms a square metre.
    StockingDensity in KilogramPerSquareMetre;
    /// From kilograms a square metre.
    kilograms_per_square_metre / in_kilograms_per_square_metre: KilogramPerSquareMetre,
    /// From pounds a square foot.
    pounds_per_square_foot / in_pounds_per_square_foot: PoundPerSquareFoot,
}
physical! {
    /// Liquid put on a surface, held in millilitres a square metre.
    Coverage in MillilitrePerSquareMetre;
    /// From millilitres a square metre.
    millilitres_per_square_metre / in_millilitres_per_square_metre: MillilitrePerSquareMetre,
}

impl std::ops::Mul for Length {
    type Output = Area;
    fn mul(self, other: Length) -> Area {
        Area(self.0 * other.0)
    }
}

impl std::ops::Mul<Length> for Area {
    type Output = Volume;
    fn mul(self, depth: Length) -> Volume {
        Volume::cubic_metres(self.0 * depth.0)
    }
}

impl std::ops::Mul<Coverage> for Area {
    type Output = Volume;
    fn mul(self, coverage: Coverage) -> Volume {
        Volume::millilitres(self.0 * coverage.0)
    }
}

impl std::ops::Mul<Area> for StockingDensity {
    type Output = Mass;
    fn mul(self, floor: Area) -> Mass {
        Mass(self.0 * floor.0)
    }
}

impl std::ops::Div<Area> for Mass {
    type Output = StockingDensity;
    fn div(self, floor: Area) -> StockingDensity {
        StockingDensity(self.0 / floor.0)
    }
}

/// A number of whole things taken as whole although arithmetic left it a hair off: 1499.999 999 999 8 birds are 1500.
///
/// Differences up to one part in 10⁹ count as rounding of the arithmetic, not as a missing bird.
pub fn round_down(value: f64) -> f64 {
    nearest_if_whole(value).unwrap_or_else(|| value.floor())
}

/// As [`round_down`], upwards: strips, sheets, bags that must not fall short.
pub fn round_up(value: f64) -> f64 {
    nearest_if_whole(value).unwrap_or_else(|| value.ceil())
}

fn nearest_if_whole(value: f64) -> Option<f64> {
    let nearest = value.round();
    ((value - nearest).abs() <= 1e-9 * nearest.abs().max(1.0)).then_some(nearest)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Exact by definition: NIST SP 811 (2008), appendix B.8; from memory.
    #[test]
    fn customary_units_are_exact() {
        assert_eq!(Length::feet(8.0).in_metres(), 2.4384);
        assert_eq!(Mass::pounds(1.0).in_kilograms(), 0.453_592_37);
        assert!((Temperature::fahrenheit(95.0).in_celsius() - 35.0).abs() < 1e-12);
        assert_eq!(Volume::us_gallons(1.0).in_litres(), 3.785_411_784);
    }

    #[test]
    fn whole_things_survive_the_arithmetic() {
        assert_eq!(round_down(3300.0 / 2.2), 1500.0);
        assert_eq!(round_down(1083.6), 1083.0);
        assert_eq!(round_up(5.000_000_000_1), 5.0);
        assert_eq!(round_up(4.285), 5.0);
    }

    #[test]
    fn lengths_multiply_to_areas_and_volumes() {
        let floor = Length::metres(18.0) * Length::metres(9.0);
        assert_eq!(floor.in_square_metres(), 162.0);
        assert!(((floor * Length::centimetres(7.0)).in_cubic_metres() - 11.34).abs() < 1e-9);
    }
}
