//! Units: their names in JSON and in keys, and how each converts.

/// What kind of thing a unit measures. Units of one dimension convert into each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Dimension {
    Length,
    Area,
    Volume,
    Mass,
    Temperature,
    MassPerArea,
    VolumePerArea,
    CountPerArea,
    AreaPerCount,
    Count,
    Share,
    Angle,
    Time,
    Concentration,
    MassPerCount,
    VolumePerCount,
    VolumePerMass,
    MassPerVolumeShare,
    MassPerVolume,
    Power,
    Energy,
    HeatLoss,
    Transmittance,
    EdgeLoss,
    Resistance,
    AirHeat,
    Flow,
    Rate,
    MassFlow,
    HeatingValue,
    MassShare,
    VolumeShare,
    Pressure,
    HeatPerMass,
    Speed,
    Drying,
    Money,
    MoneyPerMass,
    Date,
    None,
}

/// A unit that numbers are typed, kept or shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Unit {
    One,
    Metre,
    Centimetre,
    Millimetre,
    Foot,
    Inch,
    SquareMetre,
    SquareCentimetre,
    SquareFoot,
    CubicMetre,
    CubicFoot,
    Litre,
    Millilitre,
    UsGallon,
    UsFluidOunce,
    Kilogram,
    Gram,
    Pound,
    Celsius,
    Fahrenheit,
    KilogramPerSquareMetre,
    PoundPerSquareFoot,
    MillilitrePerSquareMetre,
    UsGallonPerHundredSquareFeet,
    PerSquareMetre,
    PerSquareFoot,
    SquareCentimetrePerBird,
    MillilitrePerLitre,
    GramPerBird,
    MillilitrePerBird,
    MilligramPerLitre,
    KilogramPerCubicMetre,
    Birds,
    Chicks,
    Pieces,
    Percent,
    Degree,
    Day,
    Hour,
    Minute,
    Watt,
    Kilowatt,
    KilowattHour,
    WattPerKelvin,
    WattPerSquareMetreKelvin,
    WattPerMetreKelvin,
    SquareMetreKelvinPerWatt,
    WattHourPerCubicMetreKelvin,
    CubicMetrePerHour,
    PerHour,
    KilogramPerHour,
    MegajoulePerKilogram,
    GramPerKilogram,
    MilligramPerKilogram,
    MilligramPerGram,
    MilligramPerMillilitre,
    GramPerLitre,
    MillilitrePerKilogram,
    MillilitrePerDay,
    GramPerDay,
    PartsPerMillion,
    Kilopascal,
    KilojoulePerKilogram,
    MetrePerSecond,
    GramPerSquareMetreHour,
    /// Whole money in the farm's currency, shown with the currency's decimals.
    Money,
    /// The price of a kilogram in the farm's currency; not rounded, since it is multiplied before an amount is.
    MoneyPerKilogram,
    /// A civil day, written as YYYY-MM-DD.
    Date,
}

use Unit as U;

impl Unit {
    /// Every unit, for tables and tests.
    pub const ALL: &'static [Unit] = &[
        U::One,
        U::Metre,
        U::Centimetre,
        U::Millimetre,
        U::Foot,
        U::Inch,
        U::SquareMetre,
        U::SquareCentimetre,
        U::SquareFoot,
        U::CubicMetre,
        U::CubicFoot,
        U::Litre,
        U::Millilitre,
        U::UsGallon,
        U::UsFluidOunce,
        U::Kilogram,
        U::Gram,
        U::Pound,
        U::Celsius,
        U::Fahrenheit,
        U::KilogramPerSquareMetre,
        U::PoundPerSquareFoot,
        U::MillilitrePerSquareMetre,
        U::UsGallonPerHundredSquareFeet,
        U::PerSquareMetre,
        U::PerSquareFoot,
        U::SquareCentimetrePerBird,
        U::MillilitrePerLitre,
        U::GramPerBird,
        U::MillilitrePerBird,
        U::MilligramPerLitre,
        U::KilogramPerCubicMetre,
        U::Birds,
        U::Chicks,
        U::Pieces,
        U::Percent,
        U::Degree,
        U::Day,
        U::Hour,
        U::Minute,
        U::Watt,
        U::Kilowatt,
        U::KilowattHour,
        U::WattPerKelvin,
        U::WattPerSquareMetreKelvin,
        U::WattPerMetreKelvin,
        U::SquareMetreKelvinPerWatt,
        U::WattHourPerCubicMetreKelvin,
        U::CubicMetrePerHour,
        U::PerHour,
        U::KilogramPerHour,
        U::MegajoulePerKilogram,
        U::GramPerKilogram,
        U::MilligramPerKilogram,
        U::MilligramPerGram,
        U::MilligramPerMillilitre,
        U::GramPerLitre,
        U::MillilitrePerKilogram,
        U::MillilitrePerDay,
        U::GramPerDay,
        U::PartsPerMillion,
        U::Kilopascal,
        U::KilojoulePerKilogram,
        U::MetrePerSecond,
        U::GramPerSquareMetreHour,
        U::Money,
        U::MoneyPerKilogram,
        U::Date,
    ];

    /// The name in JSON: fixed, never by locale.
    pub fn name(self) -> &'static str {
        match self {
            U::One => "1",
            U::Metre => "m",
            U::Centimetre => "cm",
            U::Millimetre => "mm",
            U::Foot => "ft",
            U::Inch => "in",
            U::SquareMetre => "m2",
            U::SquareCentimetre => "cm2",
            U::SquareFoot => "ft2",
            U::CubicMetre => "m3",
            U::CubicFoot => "ft3",
            U::Litre => "L",
            U::Millilitre => "mL",
            U::UsGallon => "US gal",
            U::UsFluidOunce => "US fl oz",
            U::Kilogram => "kg",
            U::Gram => "g",
            U::Pound => "lb",
            U::Celsius => "C",
            U::Fahrenheit => "F",
            U::KilogramPerSquareMetre => "kg/m2",
            U::PoundPerSquareFoot => "lb/ft2",
            U::MillilitrePerSquareMetre => "mL/m2",
            U::UsGallonPerHundredSquareFeet => "US gal/100 ft2",
            U::PerSquareMetre => "1/m2",
            U::PerSquareFoot => "1/ft2",
            U::SquareCentimetrePerBird => "cm2/bird",
            U::MillilitrePerLitre => "mL/L",
            U::GramPerBird => "g/bird",
            U::MillilitrePerBird => "mL/bird",
            U::MilligramPerLitre => "mg/L",
            U::KilogramPerCubicMetre => "kg/m3",
            U::Birds => "birds",
            U::Chicks => "chicks",
            U::Pieces => "pieces",
            U::Percent => "%",
            U::Degree => "deg",
            U::Day => "d",
            U::Hour => "h",
            U::Minute => "min",
            U::Watt => "W",
            U::Kilowatt => "kW",
            U::KilowattHour => "kWh",
            U::WattPerKelvin => "W/K",
            U::WattPerSquareMetreKelvin => "W/m2K",
            U::WattPerMetreKelvin => "W/mK",
            U::SquareMetreKelvinPerWatt => "m2K/W",
            U::WattHourPerCubicMetreKelvin => "Wh/m3K",
            U::CubicMetrePerHour => "m3/h",
            U::PerHour => "1/h",
            U::KilogramPerHour => "kg/h",
            U::MegajoulePerKilogram => "MJ/kg",
            U::GramPerKilogram => "g/kg",
            U::MilligramPerKilogram => "mg/kg",
            U::MilligramPerGram => "mg/g",
            U::MilligramPerMillilitre => "mg/mL",
            U::GramPerLitre => "g/L",
            U::MillilitrePerKilogram => "mL/kg",
            U::MillilitrePerDay => "mL/day",
            U::GramPerDay => "g/day",
            U::PartsPerMillion => "ppm",
            U::Kilopascal => "kPa",
            U::KilojoulePerKilogram => "kJ/kg",
            U::MetrePerSecond => "m/s",
            U::GramPerSquareMetreHour => "g/m2h",
            U::Money => "money",
            U::MoneyPerKilogram => "money/kg",
            U::Date => "date",
        }
    }

    /// The last word of a key that is typed in this unit: `length_m`, `limit_kg_m2`. `None` where a key names no unit.
    pub fn suffix(self) -> Option<&'static str> {
        Some(match self {
            U::Metre => "m",
            U::Centimetre => "cm",
            U::Millimetre => "mm",
            U::Foot => "ft",
            U::Inch => "in",
            U::SquareMetre => "m2",
            U::SquareFoot => "ft2",
            U::Litre => "l",
            U::Millilitre => "ml",
            U::UsGallon => "us_gal",
            U::UsFluidOunce => "us_fl_oz",
            U::Kilogram => "kg",
            U::Gram => "g",
            U::Pound => "lb",
            U::Celsius => "c",
            U::Fahrenheit => "f",
            U::KilogramPerSquareMetre => "kg_m2",
            U::PoundPerSquareFoot => "lb_ft2",
            U::MillilitrePerSquareMetre => "ml_per_m2",
            U::UsGallonPerHundredSquareFeet => "us_gal_per_100_ft2",
            U::PerSquareMetre => "per_m2",
            U::PerSquareFoot => "per_ft2",
            U::Percent => "percent",
            U::Degree => "deg",
            U::Day => "d",
            U::Hour => "h",
            U::Minute => "min",
            U::MilligramPerLitre => "ppm",
            U::Kilowatt => "kw",
            U::PerHour => "per_h",
            U::MetrePerSecond => "m_per_s",
            U::MillilitrePerLitre => "ml_per_l",
            U::GramPerKilogram => "g_per_kg",
            U::MilligramPerKilogram => "mg_per_kg",
            U::MilligramPerGram => "mg_per_g",
            U::MilligramPerMillilitre => "mg_per_ml",
            U::GramPerLitre => "g_per_l",
            U::MillilitrePerKilogram => "ml_per_kg",
            _ => return None,
        })
    }

    /// Words a person may type behind a number for this unit, lower case.
    pub fn spellings(self) -> &'static [&'static str] {
        match self {
            U::Metre => &["m", "metre", "metres", "meter", "meters"],
            U::Centimetre => &["cm"],
            U::Millimetre => &["mm"],
            U::Foot => &["ft", "foot", "feet", "'", "′"],
            U::Inch => &["in", "inch", "inches", "\"", "″"],
            U::SquareMetre => &["m2", "m²"],
            U::SquareFoot => &["ft2", "ft²", "sq ft"],
            U::CubicMetre => &["m3", "m³"],
            U::Litre => &["l", "litre", "litres", "liter", "liters"],
            U::Millilitre => &["ml"],
            U::UsGallon => &["us gal", "us gallon", "us gallons"],
            U::UsFluidOunce => &["us fl oz"],
            U::Kilogram => &["kg"],
            U::Gram => &["g"],
            U::Pound => &["lb", "lbs", "pound", "pounds"],
            U::Celsius => &["c", "°c"],
            U::Fahrenheit => &["f", "°f"],
            U::KilogramPerSquareMetre => &["kg/m2", "kg/m²"],
            U::PoundPerSquareFoot => &["lb/ft2", "lb/ft²"],
            U::MillilitrePerSquareMetre => &["ml/m2", "ml/m²"],
            U::UsGallonPerHundredSquareFeet => &["us gal/100 ft2"],
            U::PerSquareMetre => &["/m2", "/m²"],
            U::PerSquareFoot => &["/ft2", "/ft²"],
            U::Percent => &["%"],
            U::Degree => &["deg", "°"],
            U::Day => &["d", "day", "days"],
            U::Hour => &["h"],
            U::MilligramPerLitre => &["ppm", "mg/l"],
            U::Minute => &["min"],
            U::Kilowatt => &["kw"],
            U::KilowattHour => &["kwh"],
            U::CubicMetrePerHour => &["m3/h", "m³/h"],
            U::PerHour => &["/h", "1/h"],
            U::MetrePerSecond => &["m/s"],
            U::MillilitrePerLitre => &["ml/l"],
            U::GramPerKilogram => &["g/kg"],
            U::MilligramPerKilogram => &["mg/kg"],
            U::MilligramPerGram => &["mg/g"],
            U::MilligramPerMillilitre => &["mg/ml"],
            U::GramPerLitre => &["g/l"],
            U::MillilitrePerKilogram => &["ml/kg"],
            _ => &[],
        }
    }

    /// Whether numbers in it tell of money, which not everybody may see.
    pub fn is_money(self) -> bool {
        matches!(self.dimension(), Dimension::Money | Dimension::MoneyPerMass)
    }

    /// What this unit measures.
    pub fn dimension(self) -> Dimension {
        match self {
            U::Metre | U::Centimetre | U::Millimetre | U::Foot | U::Inch => Dimension::Length,
            U::SquareMetre | U::SquareCentimetre | U::SquareFoot => Dimension::Area,
            U::CubicMetre | U::CubicFoot | U::Litre | U::Millilitre | U::UsGallon | U::UsFluidOunce => {
                Dimension::Volume
            }
            U::Kilogram | U::Gram | U::Pound => Dimension::Mass,
            U::Celsius | U::Fahrenheit => Dimension::Temperature,
            U::KilogramPerSquareMetre | U::PoundPerSquareFoot => Dimension::MassPerArea,
            U::MillilitrePerSquareMetre | U::UsGallonPerHundredSquareFeet => Dimension::VolumePerArea,
            U::PerSquareMetre | U::PerSquareFoot => Dimension::CountPerArea,
            U::SquareCentimetrePerBird => Dimension::AreaPerCount,
            U::Birds | U::Chicks | U::Pieces => Dimension::Count,
            U::Percent => Dimension::Share,
            U::Degree => Dimension::Angle,
            U::Day | U::Hour | U::Minute => Dimension::Time,
            U::MillilitrePerLitre => Dimension::Concentration,
            U::GramPerBird => Dimension::MassPerCount,
            U::MillilitrePerBird => Dimension::VolumePerCount,
            U::MilligramPerLitre | U::MilligramPerMillilitre | U::GramPerLitre => {
                Dimension::MassPerVolumeShare
            }
            U::KilogramPerCubicMetre => Dimension::MassPerVolume,
            U::Watt | U::Kilowatt => Dimension::Power,
            U::KilowattHour => Dimension::Energy,
            U::WattPerKelvin => Dimension::HeatLoss,
            U::WattPerSquareMetreKelvin => Dimension::Transmittance,
            U::WattPerMetreKelvin => Dimension::EdgeLoss,
            U::SquareMetreKelvinPerWatt => Dimension::Resistance,
            U::WattHourPerCubicMetreKelvin => Dimension::AirHeat,
            U::CubicMetrePerHour | U::MillilitrePerDay => Dimension::Flow,
            U::PerHour => Dimension::Rate,
            U::KilogramPerHour | U::GramPerDay => Dimension::MassFlow,
            U::MegajoulePerKilogram => Dimension::HeatingValue,
            U::GramPerKilogram | U::MilligramPerKilogram | U::MilligramPerGram => Dimension::MassShare,
            U::MillilitrePerKilogram => Dimension::VolumePerMass,
            U::PartsPerMillion => Dimension::VolumeShare,
            U::Kilopascal => Dimension::Pressure,
            U::KilojoulePerKilogram => Dimension::HeatPerMass,
            U::MetrePerSecond => Dimension::Speed,
            U::GramPerSquareMetreHour => Dimension::Drying,
            U::Money => Dimension::Money,
            U::MoneyPerKilogram => Dimension::MoneyPerMass,
            U::Date => Dimension::Date,
            U::One => Dimension::None,
        }
    }

    /// How many base units one of this unit is. The base of a dimension is the unit with scale 1:
    /// metre, square metre, litre, kilogram, degree Celsius, hour and so on.
    /// Customary factors are exact by definition (international foot and pound, US liquid gallon of 231 cubic inches).
    fn scale(self) -> f64 {
        const FOOT: f64 = 0.3048;
        const POUND: f64 = 0.453_592_37;
        const US_GALLON: f64 = 3.785_411_784;
        match self {
            U::Centimetre => 0.01,
            U::Millimetre => 0.001,
            U::Foot => FOOT,
            U::Inch => FOOT / 12.0,
            U::SquareCentimetre => 1e-4,
            U::SquareFoot => FOOT * FOOT,
            U::CubicMetre => 1000.0,
            U::CubicFoot => 1000.0 * FOOT * FOOT * FOOT,
            U::Millilitre => 0.001,
            U::UsGallon => US_GALLON,
            U::UsFluidOunce => US_GALLON / 128.0,
            U::Gram => 0.001,
            U::Pound => POUND,
            U::Fahrenheit => 5.0 / 9.0,
            U::PoundPerSquareFoot => POUND / (FOOT * FOOT),
            U::UsGallonPerHundredSquareFeet => US_GALLON * 1000.0 / (100.0 * FOOT * FOOT),
            U::PerSquareFoot => 1.0 / (FOOT * FOOT),
            U::Day => 24.0,
            U::Kilowatt => 1000.0,
            U::Minute => 1.0 / 60.0,
            U::MilligramPerMillilitre | U::GramPerLitre => 1000.0,
            U::MilligramPerKilogram => 0.001,
            U::MillilitrePerDay => 1e-6 / 24.0,
            U::GramPerDay => 0.001 / 24.0,
            _ => 1.0,
        }
    }

    /// A number in this unit, in the base unit of its dimension.
    pub fn to_base(self, value: f64) -> f64 {
        match self {
            U::Fahrenheit => (value - 32.0) * 5.0 / 9.0,
            // Dividing keeps decimal numbers as the person wrote them: 7 cm is 0.07 m, not 0.07000000000000001.
            U::Centimetre => value / 100.0,
            U::Millimetre | U::Millilitre | U::Gram => value / 1000.0,
            _ => value * self.scale(),
        }
    }

    /// The inverse of [`Unit::to_base`].
    pub fn from_base(self, base: f64) -> f64 {
        match self {
            U::Fahrenheit => base * 9.0 / 5.0 + 32.0,
            U::Centimetre => base * 100.0,
            U::Millimetre | U::Millilitre | U::Gram => base * 1000.0,
            _ => base / self.scale(),
        }
    }

    /// The number in another unit, or `None` where the two measure different things.
    pub fn convert(self, value: f64, to: Unit) -> Option<f64> {
        if self == to {
            return Some(value);
        }
        (self.dimension() == to.dimension()).then(|| to.from_base(self.to_base(value)))
    }

    /// The unit a grower who thinks in feet and pounds is shown for this one; itself where there is none.
    pub fn customary(self) -> Unit {
        match self {
            U::Metre => U::Foot,
            U::Centimetre | U::Millimetre => U::Inch,
            U::SquareMetre => U::SquareFoot,
            U::CubicMetre => U::CubicFoot,
            U::Litre => U::UsGallon,
            U::Millilitre => U::UsFluidOunce,
            U::Kilogram | U::Gram => U::Pound,
            U::Celsius => U::Fahrenheit,
            U::KilogramPerSquareMetre => U::PoundPerSquareFoot,
            U::MillilitrePerSquareMetre => U::UsGallonPerHundredSquareFeet,
            U::PerSquareMetre => U::PerSquareFoot,
            other => other,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_converts_there_and_back() {
        for &unit in Unit::ALL {
            let back = unit.from_base(unit.to_base(12.5));
            assert!((back - 12.5).abs() < 1e-12, "{}: {back}", unit.name());
        }
    }

    /// Arithmetic on the definitions of pound and foot: 6 lb/ft2 is 29.29 kg/m2, within 0.01.
    #[test]
    fn six_pounds_a_square_foot() {
        let metric = U::PoundPerSquareFoot.convert(6.0, U::KilogramPerSquareMetre);
        assert!(metric.is_some_and(|value| (value - 29.29).abs() < 0.01));
    }

    #[test]
    fn a_length_is_no_mass() {
        assert_eq!(U::Metre.convert(1.0, U::Kilogram), None);
    }

    #[test]
    fn names_are_unique() {
        let mut names: Vec<_> = Unit::ALL.iter().map(|unit| unit.name()).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Unit::ALL.len());
    }
}
