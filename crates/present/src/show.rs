//! Numbers, days and amounts as people read them.

use quantity::{Band, CivilDay, Figure, FigureValue, Unit};

use advice::rule::FigureSpec;

use crate::say;
use crate::viewer::{Units, Viewer};
use crate::words::key_part;

/// A number with so many decimals, thousands set apart by a space that does not break: 1 083.
pub fn number(value: f64, decimals: u8) -> String {
    let rounded = format!("{:.*}", usize::from(decimals), value);
    let (sign, digits) = rounded.strip_prefix('-').map_or(("", rounded.as_str()), |digits| ("−", digits));
    let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
    let mut grouped = String::new();
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at) % 3 == 0 {
            grouped.push('\u{a0}');
        }
        grouped.push(digit);
    }
    let zero = digits.chars().all(|c| matches!(c, '0' | '.'));
    let sign = if zero { "" } else { sign };
    if fraction.is_empty() { format!("{sign}{grouped}") } else { format!("{sign}{grouped}.{fraction}") }
}

/// A number with as many decimals as it needs, at most `most`.
pub fn short(value: f64, most: u8) -> String {
    let text = number(value, most);
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// A number of bags, with what each holds where feed is to be had in several sizes.
pub fn bags(count: f64, size_kg: Option<f64>, viewer: &Viewer) -> String {
    let n = number(count, 0);
    match size_kg {
        None => n,
        Some(size) => {
            let decimals = u8::from(size.fract() != 0.0);
            say!(viewer.words(), "bags-of", n = n, size = quantity(size, Unit::Kilogram, decimals, viewer))
        }
    }
}

/// A number to so many significant figures, for a blackboard.
pub fn round_to_figures(value: f64, figures: i32) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let scale = 10f64.powi(figures - 1 - value.abs().log10().floor() as i32);
    (value * scale).round() / scale
}

/// A day: 26 Oct 2027. The month is a word, so that nobody reads 03/04 two ways.
pub fn day(day: CivilDay, viewer: &Viewer) -> String {
    let words = viewer.words();
    let month = words.plain(&format!("month-{}", day.month()));
    say!(words, "civil-day", day = day.day().to_string(), month = month, year = day.year().to_string())
}

/// A day without its year, for tables whose year is plain: 26 Oct.
pub fn day_short(day: CivilDay, viewer: &Viewer) -> String {
    let words = viewer.words();
    let month = words.plain(&format!("month-short-{}", day.month()));
    say!(words, "civil-day-short", day = day.day().to_string(), month = month)
}

/// A quantity with its unit, in the viewer's units.
pub fn quantity(value: f64, unit: Unit, decimals: u8, viewer: &Viewer) -> String {
    with_unit(
        value,
        unit,
        viewer,
        |value| number(value, decimals),
        |value| number(value, decimals.clamp(1, 2)),
    )
}

/// A quantity with its unit and as many decimals as it needs.
pub fn quantity_short(value: f64, unit: Unit, viewer: &Viewer) -> String {
    with_unit(value, unit, viewer, |value| short(value, 4), |value| short(value, 2))
}

/// Several numbers with their unit behind the last; of many only the first.
pub fn several(numbers: &[f64], unit: Unit, viewer: &Viewer) -> String {
    const SHOWN: usize = 30;
    let words = viewer.words();
    let shown = &numbers[..numbers.len().min(SHOWN)];
    let Some((last, before)) = shown.split_last() else { return String::new() };
    let bare = |number: &f64| short(in_viewers_unit(*number, unit, viewer).0, 2);
    let mut texts: Vec<String> = before.iter().map(bare).collect();
    texts.push(quantity_short(*last, unit, viewer));
    let text = texts.join(", ");
    match numbers.len() - shown.len() {
        0 => text,
        more => say!(words, "list-and-more", list = text, more = more.to_string()),
    }
}

/// `own` writes the number in its own unit, `other` in one it was converted to.
fn with_unit(
    value: f64,
    unit: Unit,
    viewer: &Viewer,
    own: impl Fn(f64) -> String,
    other: impl Fn(f64) -> String,
) -> String {
    let words = viewer.words();
    match unit {
        Unit::Date => return day(CivilDay::from_number(value as i32), viewer),
        Unit::Money => return money(value, viewer),
        Unit::MoneyPerKilogram => return say!(words, "unit-money-kg", n = money(value, viewer)),
        _ => {}
    }
    let (value, shown_in) = in_viewers_unit(value, unit, viewer);
    let text = if shown_in == unit { own(value) } else { other(value) };
    say!(words, &format!("unit-{}", unit_key(shown_in)), n = text, count = value)
}

/// A quantity without its unit, in the viewer's units, for a column whose title says the unit.
pub fn bare(value: f64, unit: Unit, decimals: u8, viewer: &Viewer) -> String {
    let (value, shown_in) = in_viewers_unit(value, unit, viewer);
    number(value, if shown_in == unit { decimals } else { decimals.clamp(1, 2) })
}

/// The name of the unit a viewer is shown for a unit.
pub fn viewers_unit_label(unit: Unit, viewer: &Viewer) -> String {
    unit_label(in_viewers_unit(1.0, unit, viewer).1, viewer)
}

pub(crate) fn in_viewers_unit(value: f64, unit: Unit, viewer: &Viewer) -> (f64, Unit) {
    let wanted = match viewer.units {
        Units::Metric => unit,
        Units::Customary => unit.customary(),
    };
    unit.convert(value, wanted).map_or((value, unit), |converted| (converted, wanted))
}

/// An amount of money in the farm's currency, or a row of dots where the viewer does not see money.
pub fn money(amount: f64, viewer: &Viewer) -> String {
    money_to(amount, viewer.currency_exponent, viewer)
}

/// An amount that is not known to the cent, without cents.
pub fn about_money(amount: f64, viewer: &Viewer) -> String {
    money_to(amount, 0, viewer)
}

fn money_to(amount: f64, decimals: u8, viewer: &Viewer) -> String {
    let words = viewer.words();
    if !viewer.money_shown {
        return words.plain("money-hidden");
    }
    let n = number(amount, decimals);
    match &viewer.currency {
        Some(code) => say!(words, "money-with-code", n = n, code = code),
        None => n,
    }
}

/// A figure's value with its unit.
pub fn figure(figure: &Figure, spec: &FigureSpec, viewer: &Viewer) -> String {
    match figure.value {
        FigureValue::Day(civil) => day(civil, viewer),
        // A bare ratio or multiple says no more digits than it has.
        FigureValue::Number(value) if spec.unit == Unit::One => {
            short(round_to_figures(value, 3), spec.decimals)
        }
        FigureValue::Number(value) => quantity(value, spec.unit, spec.decimals, viewer),
    }
}

/// A figure's likely range in words; empty where it has none.
pub fn band(band: Option<Band>, spec: &FigureSpec, viewer: &Viewer) -> String {
    let Some(band) = band else { return String::new() };
    // The unit stands once, behind the upper end.
    let (low, shown_in) = in_viewers_unit(band.low, spec.unit, viewer);
    let decimals = if shown_in == spec.unit { spec.decimals } else { spec.decimals.clamp(1, 2) };
    let low = match spec.unit {
        unit if unit.is_money() => money(low, viewer),
        _ => number(low, decimals),
    };
    let high = quantity(band.high, spec.unit, spec.decimals, viewer);
    say!(viewer.words(), &format!("band-{}", band.kind.name()), low = low, high = high)
}

/// The name of a unit alone, as it stands beside an input box.
pub fn unit_label(unit: Unit, viewer: &Viewer) -> String {
    match unit {
        Unit::Money => viewer.currency.clone().unwrap_or_else(|| viewer.words().plain("unit-label-money")),
        Unit::MoneyPerKilogram => {
            say!(viewer.words(), "unit-label-money-kg", money = unit_label(Unit::Money, viewer))
        }
        _ => viewer.words().plain(&format!("unit-label-{}", unit_key(unit))),
    }
}

/// The part of a message key that stands for a unit.
pub fn unit_key(unit: Unit) -> String {
    let name = match unit {
        Unit::One => "one",
        Unit::Percent => "percent",
        other => other.name(),
    };
    key_part(&name.to_lowercase().replace([' ', '/'], "-"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_grouped_and_never_minus_nothing() {
        assert_eq!(number(1083.4, 0), "1\u{a0}083");
        assert_eq!(number(999.0, 0), "999");
        assert_eq!(number(1234567.891, 2), "1\u{a0}234\u{a0}567.89");
        assert_eq!(number(-0.001, 2), "0.00");
        assert_eq!(number(-1.5, 1), "−1.5");
        assert_eq!(short(2.34, 4), "2.34");
        assert_eq!(short(100.0, 4), "100");
    }

    #[test]
    fn blackboard_figures() {
        assert_eq!(round_to_figures(10.893, 2), 11.0);
        assert_eq!(round_to_figures(0.04347, 2), 0.043);
        assert_eq!(round_to_figures(0.0, 2), 0.0);
    }

    #[test]
    fn units_follow_the_viewer() {
        let mut viewer = Viewer::plain();
        assert_eq!(quantity(18.0, Unit::Metre, 1, &viewer), "18.0 m");
        assert_eq!(quantity(1.0, Unit::Birds, 0, &viewer), "1 bird");
        viewer.units = Units::Customary;
        assert_eq!(quantity(18.288, Unit::Metre, 1, &viewer), "60.0 ft");
        assert_eq!(quantity_short(18.288, Unit::Metre, &viewer), "60 ft");
        viewer.money_shown = false;
        assert!(!quantity(12.0, Unit::Money, 2, &viewer).contains('1'));
    }
}
