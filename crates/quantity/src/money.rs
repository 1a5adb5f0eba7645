//! Money in whole minor units. Unit prices are decimal; a line is rounded once.

use rust_decimal::prelude::*;

/// A currency of ISO 4217, with the number of its decimals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Currency {
    code: [u8; 3],
    exponent: u8,
}

/// Currencies of ISO 4217 whose exponent is not 2 (from memory of the standard's list one).
/// XTS, the code for tests, has no exponent there; 2 is our choice.
const OTHER_EXPONENTS: &[(&str, u8)] = &[
    ("BIF", 0),
    ("CLP", 0),
    ("DJF", 0),
    ("GNF", 0),
    ("ISK", 0),
    ("JPY", 0),
    ("KMF", 0),
    ("KRW", 0),
    ("PYG", 0),
    ("RWF", 0),
    ("UGX", 0),
    ("VND", 0),
    ("VUV", 0),
    ("XAF", 0),
    ("XOF", 0),
    ("XPF", 0),
    ("BHD", 3),
    ("IQD", 3),
    ("JOD", 3),
    ("KWD", 3),
    ("LYD", 3),
    ("OMR", 3),
    ("TND", 3),
];

impl Currency {
    /// Two decimals and the code for "no currency" (ISO 4217): for amounts of a farm that has not said its own.
    pub const UNKNOWN: Currency = Currency { code: *b"XXX", exponent: 2 };

    /// From a code of three capital letters; `None` for anything else.
    /// A code that ISO 4217 may not hold is taken too, with two decimals: growers' own money has come and gone before.
    pub fn from_code(code: &str) -> Option<Self> {
        let bytes: [u8; 3] = code.as_bytes().try_into().ok()?;
        if !bytes.iter().all(u8::is_ascii_uppercase) {
            return None;
        }
        let exponent = OTHER_EXPONENTS.iter().find(|(other, _)| *other == code).map_or(2, |&(_, e)| e);
        Some(Self { code: bytes, exponent })
    }

    /// The three letters.
    pub fn code(&self) -> &str {
        std::str::from_utf8(&self.code).unwrap_or("XXX")
    }

    /// The number of decimals of the main unit.
    pub fn exponent(&self) -> u8 {
        self.exponent
    }
}

/// An amount of money in whole minor units of a currency; negative is owed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Money {
    minor: i64,
    currency: Currency,
}

impl Money {
    /// From whole minor units (cents).
    pub fn from_minor(minor: i64, currency: Currency) -> Self {
        Self { minor, currency }
    }

    /// Quantity times unit price, rounded once, half away from zero; `None` where it overflows.
    pub fn line(quantity: Decimal, unit_price: Decimal, currency: Currency) -> Option<Self> {
        let minor = quantity
            .checked_mul(unit_price)?
            .checked_mul(Decimal::from(10i64.pow(currency.exponent.into())))?
            .round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero)
            .to_i64()?;
        Some(Self { minor, currency })
    }

    /// The amount nearest to a number of main units, half away from zero; `None` where it cannot be held.
    pub fn nearest(amount: f64, currency: Currency) -> Option<Self> {
        Self::line(Decimal::from_f64(amount)?, Decimal::ONE, currency)
    }

    /// The whole minor units.
    pub fn minor(self) -> i64 {
        self.minor
    }

    /// The currency.
    pub fn currency(self) -> Currency {
        self.currency
    }

    /// In main units, exactly.
    pub fn major(self) -> Decimal {
        Decimal::new(self.minor, self.currency.exponent.into())
    }

    /// In main units as a number to show or to send; never to count on with.
    pub fn to_number(self) -> f64 {
        self.minor as f64 / 10f64.powi(self.currency.exponent.into())
    }

    /// The sum, or `None` where the currencies differ or it overflows.
    pub fn checked_add(self, other: Money) -> Option<Money> {
        if self.currency != other.currency {
            return None;
        }
        Some(Self { minor: self.minor.checked_add(other.minor)?, currency: self.currency })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_rounded_once() {
        let xts = Currency::from_code("XTS").unwrap();
        let price = Decimal::new(1005, 3);
        assert_eq!(Money::line(Decimal::ONE, price, xts).unwrap().minor(), 101);
        assert_eq!(Money::line(Decimal::from(3), price, xts).unwrap().minor(), 302);
    }

    #[test]
    fn shillings_without_cents() {
        let ugx = Currency::from_code("UGX").unwrap();
        assert_eq!(ugx.exponent(), 0);
        assert_eq!(
            Money::line(Decimal::new(25, 1), Decimal::from(3), ugx).unwrap().minor(),
            8,
            "7.5 rounds away from zero"
        );
    }

    #[test]
    fn two_currencies_do_not_add() {
        let a = Money::from_minor(1, Currency::from_code("XTS").unwrap());
        let b = Money::from_minor(1, Currency::from_code("UGX").unwrap());
        assert_eq!(a.checked_add(b), None);
        assert!(Currency::from_code("xts").is_none());
    }
}
