//! What was typed into a form, as raw answers.

use quantity::{Asked, Field, Kind, Raw, field};

/// The most characters kept of one answer. The longest answer that is allowed has 80; what is longer than this is no
/// answer, and a fault is told of its beginning.
const CHARACTERS_KEPT: usize = 400;

/// The same for each of several numbers, with what sets them apart.
const CHARACTERS_A_NUMBER: usize = 12;

/// The pairs of a form or an address that answer what is asked, in the order of first mention. Blank ones are left out:
/// nothing was said.
pub(crate) fn raws(asked: &[Asked], pairs: &[(String, String)]) -> Vec<Raw> {
    let mut raws: Vec<Raw> = Vec::new();
    for (key, text) in pairs {
        let Some((field, _)) = field::find(asked, key) else { continue };
        let text = readable(text, characters_kept(field));
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

fn characters_kept(field: &Field) -> usize {
    match field.kind {
        Kind::Numbers { at_most, .. } => (at_most + 1) * CHARACTERS_A_NUMBER,
        _ => CHARACTERS_KEPT,
    }
}

/// On one line, without what no keyboard types, and not endless.
fn readable(text: &str, most: usize) -> String {
    let on_one_line = text.trim().chars().map(|c| if c == '\n' { ' ' } else { c });
    on_one_line.filter(|c| !c.is_control()).take(most).collect()
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
