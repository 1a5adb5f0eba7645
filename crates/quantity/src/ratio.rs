//! A dilution "1:N" and the two things a label can mean by it.

/// What a label means by 1:N.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RatioMeaning {
    /// One part of disinfectant and N parts of water: N + 1 parts of mix.
    PartsWater,
    /// One part of disinfectant made up to N parts of mix.
    PartsTotal,
}

/// A dilution of one part in N, with its meaning. N is at least 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dilution {
    parts: f64,
    meaning: RatioMeaning,
}

impl Dilution {
    /// `parts` is N of 1:N. `None` when N is below 1 or not finite: 1:0 would be no water at all.
    pub fn new(parts: f64, meaning: RatioMeaning) -> Option<Self> {
        (parts.is_finite() && parts >= 1.0).then_some(Self { parts, meaning })
    }

    /// N of 1:N.
    pub fn parts(self) -> f64 {
        self.parts
    }

    /// What the label means.
    pub fn meaning(self) -> RatioMeaning {
        self.meaning
    }

    /// The parts of mix that hold one part of disinfectant.
    pub fn parts_of_mix(self) -> f64 {
        match self.meaning {
            RatioMeaning::PartsWater => self.parts + 1.0,
            RatioMeaning::PartsTotal => self.parts,
        }
    }
}

/// Reads "1:400", "1 : 400" or "400" as N = 400. `None` for anything else.
pub fn parse_parts(text: &str) -> Option<f64> {
    let parts = match text.split_once(':') {
        Some((one, parts)) if one.trim() == "1" => parts,
        Some(_) => return None,
        None => text,
    };
    crate::number::parse(parts).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ratios_are_read() {
        assert_eq!(parse_parts("1:400"), Some(400.0));
        assert_eq!(parse_parts(" 1 : 12,5 "), Some(12.5));
        assert_eq!(parse_parts("400"), Some(400.0));
        assert_eq!(parse_parts("2:400"), None);
        assert_eq!(parse_parts("1:many"), None);
    }

    #[test]
    fn no_water_is_no_dilution() {
        assert!(Dilution::new(0.0, RatioMeaning::PartsWater).is_none());
        assert!(Dilution::new(f64::NAN, RatioMeaning::PartsTotal).is_none());
    }
}
