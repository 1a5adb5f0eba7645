//! Numbers as people type them: comma or point, with or without a unit behind.

use crate::unit::Unit;

/// Why a text is no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotANumber {
    /// Nothing was typed.
    Empty,
    /// There are letters or signs that make no number.
    Unreadable,
    /// A unit stands behind it that measures something else, or that is not known.
    WrongUnit,
    /// It can be read two ways: "1,200" is one and a fifth to some and twelve hundred to others.
    TwoWays,
}

/// Whether a comma can be a mark of thousands: groups of three digits behind it and a number that does not begin with 0.
pub fn looks_like_thousands(text: &str) -> bool {
    let compact = text.trim();
    let mut groups = compact.split(',');
    let first = groups.next().unwrap_or_default().trim_start_matches(['-', '+', '−']);
    let digits = |group: &str| !group.is_empty() && group.chars().all(|c| c.is_ascii_digit());
    let rest: Vec<&str> = groups.collect();
    let leads = digits(first) && first.len() <= 3 && !first.starts_with('0');
    leads && !rest.is_empty() && rest.iter().all(|group| group.len() == 3 && digits(group))
}

/// Reads a plain number: digits with at most one comma or point, a sign, and spaces between thousands.
///
/// A comma is a decimal mark. Where it could be a mark of thousands the number is refused as [`NotANumber::TwoWays`]: a
/// factor of a thousand is not guessed.
pub fn parse(text: &str) -> Result<f64, NotANumber> {
    if looks_like_thousands(text) {
        return Err(NotANumber::TwoWays);
    }
    let compact: String = text.trim().chars().filter(|c| !matches!(c, ' ' | '\u{a0}' | '\u{202f}')).collect();
    if compact.is_empty() {
        return Err(NotANumber::Empty);
    }
    let mut marks = 0;
    let mut digits = 0;
    let plain: String = compact
        .chars()
        .enumerate()
        .map(|(at, c)| match c {
            ',' | '.' => {
                marks += 1;
                Ok('.')
            }
            '-' | '+' | '−' if at == 0 => Ok(if c == '+' { '+' } else { '-' }),
            '0'..='9' => {
                digits += 1;
                Ok(c)
            }
            _ => Err(NotANumber::Unreadable),
        })
        .collect::<Result<_, _>>()?;
    if marks > 1 || digits == 0 || digits > 40 {
        return Err(NotANumber::Unreadable);
    }
    plain.parse().map_err(|_| NotANumber::Unreadable)
}

/// Reads a number typed for a field in `unit`: bare ("18"), or with a unit of the same kind behind it
/// ("59 ft", "7 ft 6 in", "95 °F"), and gives it in `unit`.
pub fn parse_in(text: &str, unit: Unit) -> Result<f64, NotANumber> {
    let mut rest = text.trim();
    if rest.is_empty() {
        return Err(NotANumber::Empty);
    }
    let mut sum: Option<f64> = None;
    let mut feet_before = false;
    while !rest.is_empty() {
        let end =
            rest.char_indices().find(|&(at, c)| !is_number_part(c, at)).map_or(rest.len(), |(at, _)| at);
        let (number, behind) = rest.split_at(end);
        let value = match parse(number) {
            Err(NotANumber::TwoWays) => return Err(NotANumber::TwoWays),
            other => other.map_err(|_| NotANumber::Unreadable)?,
        };
        let behind = behind.trim_start();
        let word_end =
            behind.char_indices().find(|&(_, c)| is_number_start(c)).map_or(behind.len(), |(at, _)| at);
        // A unit such as "us gal/100 ft2" or "m2" holds digits itself, so the longest spelling wins.
        let (word, after) = longest_spelling(behind).unwrap_or_else(|| {
            let (word, after) = behind.split_at(word_end);
            (word.trim(), after)
        });
        let converted = if word.is_empty() {
            value
        } else {
            find(word, unit).and_then(|from| from.convert(value, unit)).ok_or(NotANumber::WrongUnit)?
        };
        sum = Some(match sum {
            None => converted,
            Some(feet) if feet_before => {
                feet + inches_behind(value, word, unit).ok_or(NotANumber::Unreadable)?
            }
            Some(_) => return Err(NotANumber::Unreadable),
        });
        feet_before = find(word, unit) == Some(Unit::Foot);
        rest = after.trim_start();
    }
    sum.ok_or(NotANumber::Empty)
}

/// Only feet and inches are said in two numbers: inches from 0 up to 12 behind feet, with or without their unit.
fn inches_behind(inches: f64, word: &str, unit: Unit) -> Option<f64> {
    let are_inches = word.is_empty() || find(word, unit) == Some(Unit::Inch);
    (are_inches && (0.0..12.0).contains(&inches)).then(|| Unit::Inch.convert(inches, unit)).flatten()
}

fn is_number_part(c: char, at: usize) -> bool {
    c.is_ascii_digit()
        || matches!(c, ',' | '.' | ' ' | '\u{a0}' | '\u{202f}')
        || (at == 0 && matches!(c, '-' | '+' | '−'))
}

fn is_number_start(c: char) -> bool {
    c.is_ascii_digit() || matches!(c, '-' | '+')
}

fn longest_spelling(text: &str) -> Option<(&str, &str)> {
    Unit::ALL
        .iter()
        .flat_map(|unit| unit.spellings())
        .filter_map(|spelling| {
            let head = text.get(..spelling.len())?;
            let after = &text[spelling.len()..];
            let ends = !after.starts_with(|c: char| c.is_alphanumeric() || c == '/');
            (head.to_lowercase() == **spelling && ends).then_some((head, after))
        })
        .max_by_key(|(head, _)| head.len())
}

fn find(word: &str, like: Unit) -> Option<Unit> {
    let word = word.to_lowercase();
    Unit::ALL
        .iter()
        .copied()
        .find(|unit| unit.dimension() == like.dimension() && unit.spellings().contains(&word.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comma_and_point_are_one() {
        assert_eq!(parse("18,5"), Ok(18.5));
        assert_eq!(parse(" 18.5 "), Ok(18.5));
        assert_eq!(parse("1 600"), Ok(1600.0));
        assert_eq!(parse("0,609"), Ok(0.609));
        assert_eq!(parse("1600,5"), Ok(1600.5));
        assert_eq!(parse("-13.6"), Ok(-13.6));
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for bad in ["", "  ", "abc", "1.2.3", "1,200.5", "--3", "1e9", "inf", "NaN", "٣", "."] {
            assert!(parse(bad).is_err(), "{bad:?}");
        }
    }

    #[test]
    fn a_thousand_is_not_guessed() {
        for text in ["1,200", "12,500", "1,200,000", " 1,600 ", "-1,000"] {
            assert_eq!(parse(text), Err(NotANumber::TwoWays), "{text}");
        }
        assert_eq!(parse_in("1,200 mL", Unit::Millilitre), Err(NotANumber::TwoWays));
    }

    #[test]
    fn feet_and_inches_become_metres() {
        let read = |text| parse_in(text, Unit::Metre).unwrap();
        assert!((read("7 ft 6 in") - 2.286).abs() < 1e-12);
        assert!((read("8'") - 2.4384).abs() < 1e-12);
        assert!((read("59' 6") - 18.1356).abs() < 1e-12);
        assert!((read("4' 6\"") - 1.3716).abs() < 1e-12);
        assert_eq!(read("18"), 18.0);
        assert_eq!(read("244 cm"), 2.44);
        assert!((parse_in("95 °F", Unit::Celsius).unwrap() - 35.0).abs() < 1e-12);
        assert_eq!(parse_in("2 US gal", Unit::Litre).unwrap(), 7.570_823_568);
        assert_eq!(parse_in("300 mL/m2", Unit::MillilitrePerSquareMetre).unwrap(), 300.0);
        assert_eq!(parse_in("12 %", Unit::Percent).unwrap(), 12.0);
    }

    #[test]
    fn a_wrong_unit_is_said() {
        assert_eq!(parse_in("18 kg", Unit::Metre), Err(NotANumber::WrongUnit));
        assert_eq!(parse_in("18 cubits", Unit::Metre), Err(NotANumber::WrongUnit));
        assert!(parse_in("18 m 3 m", Unit::Metre).is_err());
        assert!(parse_in("5 ft -6 in", Unit::Metre).is_err());
        assert!(parse_in("5 ft 12 in", Unit::Metre).is_err());
    }
}
