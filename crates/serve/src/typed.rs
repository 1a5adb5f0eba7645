//! What was typed into a form, as raw answers.

use quantity::{Asked, Raw, field};

/// The most characters kept of one answer. The longest answer that is allowed has 80; what is longer than this is no
/// answer, and a fault is told of its beginning.
const CHARACTERS_KEPT: usize = 400;

/// The pairs of a form or an address that answer what is asked, in the order of first mention. Blank ones are left out:
/// nothing was said.
pub(crate) fn raws(asked: &[Asked], pairs: &[(String, String)]) -> Vec<Raw> {
    let mut raws: Vec<Raw> = Vec::new();
    for (key, text) in pairs {
        let text = readable(text);
        if text.is_empty() || field::find(asked, key).is_none() {
            continue;
        }
        match raws.iter_mut().find(|raw| raw.key == *key) {
            Some(raw) => raw.text.push(text),
            None => raws.push(Raw { key: key.clone(), text: vec![text], line: None }),
        }
    }
    raws
}

/// Without what no keyboard types, and not endless.
fn readable(text: &str) -> String {
    text.trim().chars().filter(|c| !c.is_control()).take(CHARACTERS_KEPT).collect()
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
            pair("farm.name", &format!("\0Ridge{}", "e".repeat(100_000))),
        ];
        let raws = raws(&asked, &pairs);
        assert_eq!(raws.len(), 3);
        assert_eq!(raws[0].text, ["floor", "walls"]);
        assert_eq!(raws[1].key, "house.length_ft");
        assert!(raws[2].text[0].starts_with("Ridge") && raws[2].text[0].len() == CHARACTERS_KEPT);
    }
}
