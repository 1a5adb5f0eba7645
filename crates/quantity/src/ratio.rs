//! A dilution "1:N" and the two things a label can mean by it.

use crate::number::{self, NotANumber};

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

/// Reads "1:400", "1 : 400" or "400" as N = 400.
///
/// # Errors
/// [`NotANumber::TwoWays`] where three digits stand behind a comma or a point: 1:1.000 is a thousand to whoever writes it,
/// and nobody means a thousandth part of water. [`NotANumber::Unreadable`] for anything else that is no ratio.
pub fn parse_parts(text: &str) -> Result<f64, NotANumber> {
    let parts = match text.split_once(':') {
        Some((one, parts)) if one.trim() == "1" => parts,
        Some(_) => return Err(NotANumber::Unreadable),
        None => text,
    };
    if number::looks_like_thousands(&parts.replace('.', ",")) {
        return Err(NotANumber::TwoWays);
    }
    number::parse(parts)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ratios_are_read() {
        assert_eq!(parse_parts("1:400"), Ok(400.0));
        assert_eq!(parse_parts(" 1 : 12,5 "), Ok(12.5));
        assert_eq!(parse_parts("400"), Ok(400.0));
        for bad in ["2:400", "1:many", "", "1:", ":400"] {
            assert!(parse_parts(bad).is_err(), "{bad}");
        }
        for thousand in ["1:1,000", "1:1.000", "1,000"] {
            assert_eq!(parse_parts(thousand), Err(NotANumber::TwoWays), "{thousand}");
        }
    }

    #[test]
    fn no_water_is_no_dilution() {
        assert!(Dilution::new(0.0, RatioMeaning::PartsWater).is_none());
        assert!(Dilution::new(f64::NAN, RatioMeaning::PartsTotal).is_none());
    }
}
