//! Several houses in one plan: the batch stands in one of them, the others are held beside it.

use quantity::{Answers, Asked, Checked, Fault, Problem, Raw, Source};

use crate::families::space::Fit;
use crate::outcome::Outcome;

/// The section that may stand several times in a plan file, as `[[house]]`.
pub(crate) const SECTION: &str = "house";

/// The field that tells houses apart.
const NAME: &str = "house.name";

/// What each of several houses would carry of the same batch.
#[derive(Clone, Debug, PartialEq)]
pub struct HouseChoice {
    /// Its name; empty where it has none.
    pub name: String,
    /// Whether it is the one the plan is for.
    pub chosen: bool,
    /// Floor the birds can use, m².
    pub floor_m2: f64,
    /// Birds it carries on the fullest day of the sale.
    pub birds_allowed: f64,
    /// Chicks to order for it.
    pub chicks_to_order: f64,
    /// Whether the batch as planned fits.
    pub fits: bool,
}

/// Rows by house: raws of the chosen house under plain keys, the rows of the others apart.
pub(crate) struct Split {
    /// The raws with the chosen house's own under `house.…`.
    pub(crate) raws: Vec<Raw>,
    /// The other houses' raws under plain keys, with the row they stand in.
    pub(crate) others: Vec<(usize, Vec<Raw>)>,
    /// Two houses have one name, or the house asked for is none of them.
    pub(crate) problem: Option<Problem>,
}

/// Takes `house[2].length_m` apart: row and plain key.
fn row_of(key: &str) -> Option<(usize, String)> {
    let rest = key.strip_prefix(SECTION)?.strip_prefix('[')?;
    let (row, name) = rest.split_once("].")?;
    Some((row.parse().ok()?, format!("{SECTION}.{name}")))
}

/// The key of a row, as it is written in a fault.
fn key_in_row(row: usize, key: &str) -> String {
    key.replacen(SECTION, &format!("{SECTION}[{row}]"), 1)
}

/// Chooses the house that `batch.house` names, the first where it names none.
pub(crate) fn split(raws: &[Raw]) -> Split {
    let mut rows: Vec<(usize, Vec<Raw>)> = Vec::new();
    let mut plain = Vec::new();
    for raw in raws {
        match row_of(&raw.key) {
            None => plain.push(raw.clone()),
            Some((row, key)) => {
                let raw = Raw { key, ..raw.clone() };
                match rows.iter_mut().find(|(at, _)| *at == row) {
                    Some((_, raws)) => raws.push(raw),
                    None => rows.push((row, vec![raw])),
                }
            }
        }
    }
    let wanted = plain.iter().find(|raw| raw.key == "batch.house");
    let named = |raws: &[Raw]| raws.iter().find(|raw| raw.key == NAME).map(|raw| raw.text.join(" "));
    let twice = rows.iter().enumerate().find_map(|(at, (row, raws))| {
        let raw = raws.iter().find(|raw| raw.key == NAME)?;
        let (first, _) = rows[..at].iter().find(|(_, other)| named(other) == Some(raw.text.join(" ")))?;
        Some(Problem {
            key: key_in_row(*row, NAME),
            typed: raw.text.join(" "),
            line: raw.line,
            fault: Fault::SameName { other: key_in_row(*first, NAME) },
        })
    });
    let at = match wanted {
        Some(wanted) => rows.iter().position(|(_, raws)| named(raws) == Some(wanted.text.join(" "))),
        None => Some(0),
    };
    let problem = wanted.filter(|_| at.is_none() && !rows.is_empty()).map(|wanted| Problem {
        key: wanted.key.clone(),
        typed: wanted.text.join(" "),
        line: wanted.line,
        fault: Fault::NotARow {
            section: SECTION,
            names: rows.iter().filter_map(|(_, raws)| named(raws)).collect(),
        },
    });
    if let Some(at) = at.or(Some(0)).filter(|at| *at < rows.len()) {
        plain.extend(rows.remove(at).1);
    }
    Split { raws: plain, others: rows, problem: twice.or(problem) }
}

/// Checks the other houses; faults speak of their row.
pub(crate) fn check_others(
    others: &[(usize, Vec<Raw>)],
    asked: &[Asked],
    source: Source,
    checked: &mut Checked,
) {
    let of_house: Vec<Asked> =
        asked.iter().filter(|asked| asked.field.section() == SECTION).copied().collect();
    let mut rows = Vec::new();
    for (row, raws) in others {
        let one = quantity::field::check(&of_house, raws, source, source == Source::File);
        checked.problems.extend(one.problems.into_iter().map(|problem| {
            let key = if problem.key == SECTION {
                format!("{SECTION}[{row}]")
            } else {
                key_in_row(*row, &problem.key)
            };
            Problem { key, ..problem }
        }));
        rows.push(one.answers);
    }
    checked.answers.set_rows(SECTION, rows);
}

/// What each house would carry; empty unless there are several.
pub(crate) fn compare(answers: &Answers, outcome: &Outcome) -> Vec<HouseChoice> {
    let others = answers.rows(SECTION);
    if others.is_empty() {
        return Vec::new();
    }
    let own = choice(answers, outcome, true);
    let other = |house: &Answers| {
        let moved = answers.with_section(SECTION, house);
        choice(&moved, &Outcome::of(&moved, FIGURES), false)
    };
    own.into_iter().chain(others.iter().filter_map(other)).collect()
}

const FIGURES: [&str; 7] = [
    "space.floor_area",
    "space.limit",
    "space.birds_allowed",
    "space.chicks_to_order",
    "space.birds_at_sale",
    "space.fullest_density",
    "space.fullest_birds",
];

fn choice(answers: &Answers, outcome: &Outcome, chosen: bool) -> Option<HouseChoice> {
    let fit = Fit::of(answers, outcome)?;
    Some(HouseChoice {
        name: answers.text("house.name").unwrap_or_default().to_owned(),
        chosen,
        floor_m2: outcome.number("space.floor_area")?,
        birds_allowed: fit.allowed,
        chicks_to_order: fit.chicks_to_order,
        fits: fit.holds(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn raw(key: &str, text: &str) -> Raw {
        Raw { key: key.into(), text: vec![text.into()], line: None }
    }

    #[test]
    fn the_named_house_is_taken() {
        let raws = [
            raw("batch.house", "Lower"),
            raw("house[1].name", "Upper"),
            raw("house[1].length_m", "18"),
            raw("house[2].name", "Lower"),
            raw("house[2].length_m", "12"),
        ];
        let split = split(&raws);
        assert!(split.raws.contains(&raw("house.length_m", "12")));
        assert_eq!(split.others[0].0, 1);
        assert!(split.problem.is_none());
        let first = super::split(&raws[1..]);
        assert!(first.raws.contains(&raw("house.length_m", "18")));
    }

    #[test]
    fn a_house_that_is_not_there_is_named_with_those_that_are() {
        let raws =
            [raw("batch.house", "Barn"), raw("house[1].name", "Upper"), raw("house[1].length_m", "18")];
        let problem = split(&raws).problem.unwrap();
        assert_eq!(problem.fault, Fault::NotARow { section: "house", names: vec!["Upper".into()] });
    }
}
