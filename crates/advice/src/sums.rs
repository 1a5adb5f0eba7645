//! Quick sums: small calculators that need no batch. A sum is some fields under short keys and some figures.

use quantity::{Asked, Checked, Fault, Field, Need, Problem, Raw, Source};

use crate::check;
use crate::families::{self, growth};
use crate::finding::Finding;
use crate::findings;
use crate::outcome::Outcome;

/// A quick sum.
pub struct Sum {
    /// Its name on the command line and in page addresses.
    pub name: &'static str,
    /// What it asks.
    pub inputs: &'static [SumInput],
    /// What it answers, the most wanted figure first.
    pub figures: &'static [&'static str],
    /// The message of a caution to show with the answer, where the work can hurt somebody.
    pub caution: Option<&'static str>,
}

/// One thing a sum asks.
pub struct SumInput {
    /// The short key, its unit the last word.
    pub key: &'static str,
    /// The field whose kind and range it has.
    pub field: &'static str,
    /// Whether the sum cannot do without it.
    pub required: bool,
}

/// Asks for a field.
pub const fn asks(key: &'static str, field: &'static str) -> SumInput {
    SumInput { key, field, required: true }
}

/// Takes a field if it is given.
pub const fn may_ask(key: &'static str, field: &'static str) -> SumInput {
    SumInput { key, field, required: false }
}

/// The sum of that name.
pub fn by_name(name: &str) -> Option<&'static Sum> {
    families::sums().find(|sum| sum.name == name)
}

/// What a sum gives: the answers taken, the faults, and where there are none the figures and what they have to say.
pub struct SumResult {
    /// Answers, faults and questions.
    pub checked: Checked,
    /// The figures; none when there is a fault.
    pub outcome: Outcome,
    /// What the answer has to say about itself.
    pub findings: Vec<Finding>,
}

impl Sum {
    /// The fields as this sum asks them.
    pub fn asked(&self) -> Vec<Asked> {
        self.inputs.iter().filter_map(SumInput::asked).collect()
    }

    /// Works the sum out. `strict` makes a missing required input a fault; a page just opened is not strict.
    pub fn work_out(&self, raws: &[Raw], strict: bool) -> SumResult {
        let asked = self.asked();
        let mut checked = quantity::field::check(&asked, raws, Source::Hand, strict);
        checked.problems.extend(check::together(&checked.answers, &asked));
        checked.problems.extend(nothing_to_go_by(&asked, &checked, strict));
        checked.problems.extend(own_curve_missing(&asked, &checked, strict));
        let mut required = self.inputs.iter().filter(|input| input.required);
        // A page just opened has nothing to say yet, not even what needs no answer.
        let waits = !strict && required.any(|input| checked.answers.get(input.field).is_none());
        let ids = if checked.problems.is_empty() && !waits { self.figures } else { &[] };
        let outcome = Outcome::of(&checked.answers, ids.iter().copied());
        let findings = findings::all(&checked.answers, &outcome);
        SumResult { checked, outcome, findings }
    }
}

/// A sum that can go by one thing or by another needs one of them: the first is asked for.
fn nothing_to_go_by(asked: &[Asked], checked: &Checked, strict: bool) -> Option<Problem> {
    let said = |one: &Asked| checked.answers.get(one.field.key).is_some_and(|given| given.usual.is_none());
    let silent = strict && checked.problems.is_empty() && checked.answers.not_known().is_empty();
    let first = asked.first().filter(|_| silent && !asked.iter().any(said))?;
    Some(Problem { key: first.key.to_owned(), typed: String::new(), line: None, fault: Fault::Missing })
}

/// Who chooses an own curve has to give it.
fn own_curve_missing(asked: &[Asked], checked: &Checked, strict: bool) -> Option<Problem> {
    let one = asked.iter().find(|one| one.field.key == growth::OWN_CURVE)?;
    let lacks = checked.problems.is_empty()
        && growth::has_own(&checked.answers)
        && checked.answers.curve(growth::OWN_CURVE).is_none();
    (strict && lacks).then(|| Problem {
        key: one.key.to_owned(),
        typed: String::new(),
        line: None,
        fault: Fault::Missing,
    })
}

impl SumInput {
    fn asked(&self) -> Option<Asked> {
        let field: &'static Field = families::field(self.field)?;
        let need = match (self.required, field.need) {
            (true, _) => Need::Required,
            (false, usual @ Need::Usual(..)) => usual,
            (false, _) => Need::Optional,
        };
        Some(Asked { key: self.key, field, need })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A page just opened answers nothing while something needed is not typed; "not known" leaves out what hangs on it.
    #[test]
    fn a_sum_waits_for_what_it_needs() {
        let water = by_name("water").unwrap();
        let raw = |key: &str, text: &str| Raw { key: key.into(), text: vec![text.into()], line: None };
        let known = |raws: &[Raw], strict| water.work_out(raws, strict).outcome.figures().count();
        assert_eq!(known(&[], false), 0);
        assert_eq!(known(&[raw("mean_c", "30")], false), 0);
        assert!(known(&[raw("chicks", "800"), raw("sale_age_d", "42")], false) > 2);
        assert!(known(&[raw("chicks", "not known"), raw("sale_age_d", "42"), raw("mean_c", "30")], true) > 0);
    }

    #[test]
    fn sums_point_at_fields_and_figures_that_exist() {
        for sum in families::sums() {
            assert_eq!(sum.asked().len(), sum.inputs.len(), "{} asks for an unknown field", sum.name);
            for id in sum.figures {
                assert!(families::figure(id).is_some(), "{} answers unknown {id}", sum.name);
            }
        }
    }
}
