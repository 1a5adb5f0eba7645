//! Several numbers typed in a row, such as the weights of birds: "1820 1950; 2010, 2.08 kg".

use crate::field::Fault;
use crate::number;
use crate::unit::Unit;

/// Reads numbers set apart by blanks, commas, semicolons or new lines, each perhaps with a unit behind, in `unit`.
///
/// A comma between two numbers that are each possible sets them apart; any other comma is a decimal mark.
///
/// # Errors
/// [`Fault::InList`] for the first that is no number or outside `range`.
pub(crate) fn read(texts: &[String], unit: Unit, range: (f64, f64)) -> Result<Vec<f64>, Fault> {
    let words = texts.iter().flat_map(|text| text.split(|c: char| c.is_whitespace() || c == ';'));
    let words = words.map(|word| word.trim_matches(',')).filter(|word| !word.is_empty());
    let mut items: Vec<String> = Vec::new();
    for word in words {
        match items.last_mut() {
            // "2.08 kg": the unit belongs to the number before it.
            Some(last) if is_unit(word) && last.ends_with(|c: char| c.is_ascii_digit()) => {
                last.push_str(word)
            }
            _ => items.extend(apart(word, unit, range)),
        }
    }
    let numbers = items.iter().enumerate().map(|(at, item)| {
        possible(item, unit, range).ok_or_else(|| Fault::InList {
            at: at + 1,
            item: item.clone(),
            low: range.0,
            high: range.1,
            unit,
        })
    });
    numbers.collect()
}

/// "1820,1950" is two weights; "42,5" is one with a decimal comma.
fn apart(word: &str, unit: Unit, range: (f64, f64)) -> Vec<String> {
    let parts: Vec<&str> = word.split(',').filter(|part| !part.is_empty()).collect();
    if parts.iter().all(|part| possible(part, unit, range).is_some()) {
        return parts.into_iter().map(str::to_owned).collect();
    }
    vec![word.to_owned()]
}

fn possible(text: &str, unit: Unit, range: (f64, f64)) -> Option<f64> {
    let number = number::parse_in(text, unit).ok()?;
    (range.0..=range.1).contains(&number).then_some(number)
}

fn is_unit(word: &str) -> bool {
    Unit::ALL.iter().any(|unit| unit.spellings().contains(&word.to_lowercase().as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grams(text: &str) -> Result<Vec<f64>, Fault> {
        read(&[text.to_owned()], Unit::Gram, (20.0, 10_000.0))
    }

    #[test]
    fn any_mark_sets_numbers_apart() {
        for text in [
            "1820 1950 2010",
            "1820,1950,2010",
            "1820, 1950, 2010",
            "1820;1950;2010",
            "1820\n1950\r\n\n2010\n",
            "1820g 1.95 kg, 2010 g",
        ] {
            assert_eq!(grams(text), Ok(vec![1820.0, 1950.0, 2010.0]), "{text:?}");
        }
        assert_eq!(grams(" ,; \n"), Ok(Vec::new()));
    }

    #[test]
    fn a_comma_that_cannot_set_apart_is_a_decimal_mark() {
        assert_eq!(grams("42,5 43,0"), Ok(vec![42.5, 43.0]));
        assert_eq!(grams("1820,5"), Ok(vec![1820.5]));
    }

    #[test]
    fn the_first_bad_one_is_named() {
        for (text, at, item) in [
            ("1820 1.95 2010", 2, "1.95"),
            ("1820 heavy", 2, "heavy"),
            ("0 1820", 1, "0"),
            ("-1820", 1, "-1820"),
            ("1,820", 1, "1,820"),
            ("1820 1e9", 2, "1e9"),
            ("1820 99999", 2, "99999"),
            ("1820 kg 5", 1, "1820kg"),
            ("kg", 1, "kg"),
        ] {
            let fault = grams(text).unwrap_err();
            let wanted =
                Fault::InList { at, item: item.to_owned(), low: 20.0, high: 10_000.0, unit: Unit::Gram };
            assert_eq!(fault, wanted, "{text}");
        }
    }
}
