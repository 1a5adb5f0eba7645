//! What was typed into a form, as raw answers.

use quantity::{Asked, Field, Kind, Raw, field};

/// The most characters kept of one answer. The longest answer that is allowed has 80; what is longer than this is no
/// answer, and a fault is told of its beginning.
const CHARACTERS_KEPT: usize = 400;

/// The same for each of several numbers, with what sets them apart.
const CHARACTERS_A_NUMBER: usize = 12;

/// The same for a growth curve: more rows than any bird lives days, and a header.
const CHARACTERS_A_CURVE: usize = 12_000;

/// The pairs of a form or an address that answer what is asked, in the order of first mention. Blank ones are left out:
/// nothing was said.
pub(crate) fn raws(asked: &[Asked], pairs: &[(String, String)]) -> Vec<Raw> {
    let mut raws: Vec<Raw> = Vec::new();
    for (key, text) in pairs {
        let Some((field, _)) = field::find(asked, key) else { continue };
        let text = of_field(field, text);
        if text.is_empty() {
            continue;
        }
        match raws.iter_mut().find(|raw| raw.key == *key) {
            Some(raw) => raw.text.push(text),
            None => raws.push(Raw { key: key.clone(), text: vec![text], line: None }),
        }
    }
    raws
}

/// What was typed for a field, as far as any answer to it goes.
pub(crate) fn of_field(field: &Field, text: &str) -> String {
    readable(text, characters_kept(field), has_lines(field))
}

/// Whether lines are what an answer is made of.
fn has_lines(field: &Field) -> bool {
    match field.kind {
        Kind::Curve => true,
        Kind::Text(characters) => characters > CHARACTERS_KEPT,
        _ => false,
    }
}

fn characters_kept(field: &Field) -> usize {
    match field.kind {
        Kind::Numbers { at_most, .. } => (at_most + 1) * CHARACTERS_A_NUMBER,
        Kind::Curve => CHARACTERS_A_CURVE,
        Kind::Words { at_most, characters } => (at_most + 1) * (characters + 2),
        Kind::Text(characters) => CHARACTERS_KEPT.max(characters + 1),
        Kind::Schedule { first, last } | Kind::Steps { first, last, .. } => {
            CHARACTERS_KEPT.max(usize::try_from(last - first + 1).unwrap_or_default() * CHARACTERS_A_NUMBER)
        }
        _ => CHARACTERS_KEPT,
    }
}

/// Without what no keyboard types, and not endless; on one line, unless lines are what it is made of.
fn readable(text: &str, most: usize, keeps_lines: bool) -> String {
    let is_of_lines = |c: char| keeps_lines && matches!(c, '\n' | '\t');
    let on_one_line = |c: char| if c == '\n' && !keeps_lines { ' ' } else { c };
    let text = text.trim().chars().map(on_one_line);
    text.filter(|c| !c.is_control() || is_of_lines(*c)).take(most).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pairs_become_answers() {
        let asked = advice::families::plan_fields();
        let pair = |key: &str, text: &str| (key.to_owned(), text.to_owned());
        let pairs = [
            pair("disinfectant.surfaces", "floor"),
            pair("house.length_ft", "59"),
            pair("house.width_m", "  "),
            pair("no.such.key", "1"),
            pair("disinfectant.surfaces", "walls"),
            pair("house.name", "North\r\nhouse"),
            pair("farm.name", &format!("\0Ridge{}", "e".repeat(100_000))),
        ];
        let raws = raws(&asked, &pairs);
        assert_eq!(raws.len(), 4);
        assert_eq!(raws[0].text, ["floor", "walls"]);
        assert_eq!(raws[1].key, "house.length_ft");
        assert_eq!(raws[2].text, ["North house"]);
        assert!(raws[3].text[0].starts_with("Ridge") && raws[3].text[0].len() == CHARACTERS_KEPT);
    }
}
