//! The form of a plan: one form in sections that fold away, each with its own button to save all of it.

use advice::families::PLAN_SECTIONS;
use maud::{Markup, html};
use present::form::{Input, inputs};
use present::html::input;
use present::{say, show};
use quantity::{Asked, Need};

use crate::before::{Before, asked, house_name, is_shown};
use crate::body::KEPT_KINDS;
use crate::house;
use crate::seen;

/// Everything there is to fill in.
pub(crate) struct PlanForm<'a> {
    before: &'a Before,
    asked: Vec<Asked>,
    inputs: Vec<Input>,
}

impl<'a> PlanForm<'a> {
    /// The form of a plan, filled with what was typed.
    pub(crate) fn of(before: &'a Before) -> PlanForm<'a> {
        let asked = asked(&before.viewer);
        let inputs = inputs(&asked, &before.raws, &before.problems, &before.viewer);
        PlanForm { before, asked, inputs }
    }

    /// All inputs, for the summary of faults.
    pub(crate) fn inputs(&self) -> Vec<&Input> {
        self.inputs.iter().collect()
    }

    /// The form.
    pub(crate) fn markup(&self) -> Markup {
        let shown = |section: &&&str| self.of_section(section).next().is_some();
        html! {
            (self.which_house())
            form method="post" action=(self.before.address()) novalidate {
                (self.what_was_seen())
                @for section in PLAN_SECTIONS.iter().filter(shown) { (self.section(section)) }
            }
        }
    }

    /// Carries along which entries of the book the form shows.
    fn what_was_seen(&self) -> Markup {
        let (state, house) = (&self.before.open.state, self.before.draft.house);
        let shown = KEPT_KINDS.iter().filter(|kind| is_shown(Some(**kind), &self.before.viewer));
        html! {
            @for kind in shown {
                input type="hidden" name=(seen::field(kind)) value=(seen::shown(state, kind, house));
            }
        }
    }

    fn of_section(&self, section: &str) -> impl Iterator<Item = (&Asked, &Input)> {
        self.asked.iter().zip(&self.inputs).filter(move |(asked, _)| asked.field.section() == section)
    }

    fn section(&self, section: &str) -> Markup {
        let words = self.before.viewer.words();
        html! {
            details class="part" open[self.is_open(section)] {
                summary {
                    span class="part-title" { (words.plain(&format!("section-{section}"))) }
                    span class="part-state" { (self.state(section)) }
                }
                @if section == "house" { p class="note" { (words.plain("house-is-shared")) } }
                @for (_, one) in self.of_section(section) { (input(one, words)) }
                button { (words.plain("save")) }
            }
        }
    }

    /// How far a section is, in words.
    fn state(&self, section: &str) -> String {
        let words = self.before.viewer.words();
        let faults = self.of_section(section).filter(|(_, input)| input.fault.is_some()).count();
        if faults > 0 {
            return say!(words, "section-faults", count = faults as f64, n = faults.to_string());
        }
        let answered = self.answered(section);
        say!(words, "section-answered", count = answered as f64, n = show::number(answered as f64, 0))
    }

    fn answered(&self, section: &str) -> usize {
        let stem = format!("{section}.");
        self.before.raws.iter().filter(|raw| raw.key.starts_with(&stem)).count()
    }

    /// Open is what is to be put right, what was pointed at, and what must be told and was not. The farm's own section
    /// stays folded: whoever is asked for a latitude before any answer goes away.
    fn is_open(&self, section: &str) -> bool {
        let before = self.before;
        let mut mine = self.of_section(section);
        let faulty = mine.any(|(_, input)| input.fault.is_some());
        let found = before.plan.findings.iter().filter_map(|finding| finding.field);
        let asked = before.questions.iter().map(|question| question.key);
        let pointed_at = found.chain(asked).any(|key| key.split('.').next() == Some(section));
        let needed = self.of_section(section).any(|(asked, _)| asked.need == Need::Required);
        faulty || pointed_at || (needed && section != "farm" && self.answered(section) == 0)
    }

    /// Where the farm has houses already: which of them, or another one.
    fn which_house(&self) -> Markup {
        let before = self.before;
        let words = before.viewer.words();
        let state = &before.open.state;
        let houses: Vec<_> = state.houses().into_iter().filter(|id| state.has_house(*id)).collect();
        let name = |id| house_name(state, id).unwrap_or_else(|| words.plain("house-without-name"));
        html! {
            @if !houses.is_empty() {
                form method="post" action=(format!("{}/house", before.address())) {
                    details class="part" open[houses.len() > 1 && before.is_blank()] {
                        summary { span class="part-title" { (words.plain("which-house")) } }
                        @for id in &houses {
                            (radio("house", &id.0.to_string(), *id == before.draft.house, &name(*id)))
                        }
                        (radio("house", house::NEW, !houses.contains(&before.draft.house), &words.plain("another-house")))
                        button class="quiet" { (words.plain("take-this-house")) }
                    }
                }
            }
        }
    }
}

/// One of several to choose from.
pub(crate) fn radio(name: &str, value: &str, chosen: bool, label: &str) -> Markup {
    html! {
        label class="tick" { input type="radio" name=(name) value=(value) checked[chosen] required; " " (label) }
    }
}
