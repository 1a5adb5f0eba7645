//! The form of a plan: one form in sections that fold away, in each what matters most first, and one button that stays in
//! sight.

use advice::families::PLAN_SECTIONS;
use maud::{Markup, html};
use present::form::{Control, Input, inputs};
use present::html::input;
use present::{say, show};
use quantity::fields::is_retired;
use quantity::{Asked, Need};

use crate::before::{Before, asked, house_name, is_shown};
use crate::house;
use crate::seen;
use advice::body::KEPT_KINDS;

/// What is asked first in its section beside what a plan cannot do without. In a section that has nothing of either kind
/// all is asked at once.
const ASKED_FIRST: &[&str] = &[
    "farm.name",
    "farm.altitude_m",
    "farm.currency",
    "house.name",
    "house.ceiling",
    "batch.name",
    "batch.standard",
    "batch.expected_losses_percent",
    "weather.coldest_night_c",
    "weather.hottest_day_c",
    "brooding.brooder",
    "brooding.brooders",
    "brooding.fuel",
    "litter.kind",
    "feed.bag_kg",
    "water.storage_l",
    "prices.chick_each",
    "prices.starter_bag_each",
    "prices.grower_bag_each",
    "prices.finisher_bag_each",
    "prices.sale_per_kg",
    "settings.units",
    "settings.language",
    "settings.money",
];

/// Everything there is to fill in.
pub(crate) struct PlanForm<'a> {
    before: &'a Before,
    asked: Vec<Asked>,
    inputs: Vec<Input>,
    pointed_at: Option<&'a str>,
}

/// A part of a section: what is asked with it.
type Part<'a> = Vec<(&'a Asked, &'a Input)>;

impl<'a> PlanForm<'a> {
    /// The form of a plan, filled with what was typed. What is pointed at is in sight.
    pub(crate) fn of(before: &'a Before, pointed_at: Option<&'a str>) -> PlanForm<'a> {
        let asked = asked(&before.viewer);
        let mut inputs = inputs(&asked, &before.raws, &before.problems, &before.viewer);
        inputs.iter_mut().for_each(without_languages_for_tests);
        PlanForm { before, asked, inputs, pointed_at }
    }

    /// All inputs, for the summary of faults.
    pub(crate) fn inputs(&self) -> Vec<&Input> {
        self.inputs.iter().collect()
    }

    /// The form.
    pub(crate) fn markup(&self) -> Markup {
        let words = self.before.viewer.words();
        let shown = |section: &&&str| !self.of_section(section).is_empty();
        html! {
            form class="answers-form" method="post" action=(self.before.address()) novalidate {
                (self.what_was_seen())
                (self.which_house())
                @for section in PLAN_SECTIONS.iter().filter(shown) { (self.section(section)) }
                div class="save-bar" { button { (words.plain("save")) } }
            }
        }
    }

    /// Carries along which entries of the book the form shows, and of which house.
    fn what_was_seen(&self) -> Markup {
        let (state, house) = (&self.before.open.state, self.before.draft.house);
        let shown = KEPT_KINDS.iter().filter(|kind| is_shown(Some(**kind), &self.before.viewer));
        html! {
            input type="hidden" name=(seen::HOUSE) value=(house.0);
            @for kind in shown {
                input type="hidden" name=(seen::field(kind)) value=(seen::shown(state, kind, house));
            }
        }
    }

    fn of_section(&self, section: &str) -> Part<'_> {
        let typed = |key: &str| self.before.raws.iter().any(|raw| raw.key == key);
        let is_asked = |asked: &Asked| !is_retired(asked.field.key) || typed(asked.field.key);
        let of_section = |asked: &Asked| asked.field.section() == section && is_asked(asked);
        self.asked.iter().zip(&self.inputs).filter(|(asked, _)| of_section(asked)).collect()
    }

    fn section(&self, section: &str) -> Markup {
        let words = self.before.viewer.words();
        let all = self.of_section(section);
        let (mut first, mut more): (Part, Part) = all.iter().partition(|(asked, _)| is_first(asked));
        if first.is_empty() {
            std::mem::swap(&mut first, &mut more);
        }
        html! {
            details class="part" id=(format!("section-{section}")) open[self.is_open(section, &all)] {
                summary {
                    span class="part-title" { (words.plain(&format!("section-{section}"))) }
                    span class="part-state" { (self.state(&all)) }
                }
                @if section == "house" { p class="note" { (words.plain("house-is-shared")) } }
                @for (_, one) in first { (input(one, words)) }
                @if !more.is_empty() { (self.more(&more)) }
            }
        }
    }

    /// What is asked besides, folded away unless there is reason to look at it.
    fn more(&self, more: &Part) -> Markup {
        let words = self.before.viewer.words();
        html! {
            details class="more" open[self.has_reason_to_look(more)] {
                summary {
                    span { (words.plain("more-if-known")) }
                    span class="part-state" { (self.state(more)) }
                }
                @for (_, one) in more { (input(one, words)) }
            }
        }
    }

    /// How far a part is, in words.
    fn state(&self, part: &Part) -> String {
        let words = self.before.viewer.words();
        let faults = part.iter().filter(|(_, input)| input.fault.is_some()).count();
        if faults > 0 {
            return say!(words, "section-faults", count = faults as f64, n = faults.to_string());
        }
        let answered = self.answered(part);
        let n = show::number(answered as f64, 0);
        say!(words, "section-answered", count = answered as f64, n = n, all = part.len().to_string())
    }

    fn answered(&self, part: &Part) -> usize {
        part.iter().filter(|(asked, _)| self.is_said(asked)).count()
    }

    fn is_said(&self, asked: &Asked) -> bool {
        let mine = |key: &str| key == asked.key || asked.unit_of_key(key).is_some();
        self.before.raws.iter().any(|raw| mine(&raw.key))
    }

    /// Open is what is to be put right, what was pointed at, and what must be told and was not. The farm's own section
    /// stays folded: whoever is asked for a latitude before any answer goes away.
    fn is_open(&self, section: &str, all: &Part) -> bool {
        let untold = |asked: &Asked| asked.need == Need::Required && !self.is_said(asked);
        let is_needed = section != "farm" && all.iter().any(|(asked, _)| untold(asked));
        is_needed || self.has_reason_to_look(all)
    }

    /// Something in it does not hold, or it was pointed at.
    fn has_reason_to_look(&self, part: &Part) -> bool {
        let questions = self.before.questions.iter().map(|question| question.key);
        let pointed: Vec<&str> = self.pointed_at.into_iter().chain(questions).collect();
        part.iter().any(|(asked, input)| input.fault.is_some() || pointed.contains(&asked.field.key))
    }

    /// Where the farm has houses already: which of them, or another one.
    fn which_house(&self) -> Markup {
        let before = self.before;
        let words = before.viewer.words();
        let houses = houses(before);
        let (own, is_described) =
            (before.draft.house, houses.iter().any(|(id, _)| *id == before.draft.house));
        let other = if is_described { house::NEW.to_owned() } else { own.0.to_string() };
        html! {
            @if !houses.is_empty() {
                details class="part" open[houses.len() > 1 && before.is_blank()] {
                    summary { span class="part-title" { (words.plain("which-house")) } }
                    fieldset class="input stack" {
                        legend class="hidden" { (words.plain("which-house")) }
                        @for (id, name) in &houses {
                            (radio(house::FIELD, &id.0.to_string(), *id == own, name))
                        }
                        (radio(house::FIELD, &other, !is_described, &words.plain("another-house")))
                    }
                    p class="note" { (words.plain("house-keeps-answers")) }
                    button class="quiet" { (words.plain("take-this-house")) }
                }
            }
        }
    }
}

fn is_first(asked: &Asked) -> bool {
    asked.need == Need::Required || ASKED_FIRST.contains(&asked.field.key)
}

/// The houses of the book with their names.
pub(crate) fn houses(before: &Before) -> Vec<(book::HouseId, String)> {
    named_houses(&before.open.state, &before.viewer)
}

/// The houses that a book describes, with their names.
pub(crate) fn named_houses(
    state: &book::BookState,
    viewer: &present::Viewer,
) -> Vec<(book::HouseId, String)> {
    let described = state.houses().into_iter().filter(|id| state.has_house(*id));
    let name = |id| house_name(state, id).unwrap_or_else(|| viewer.words().plain("house-without-name"));
    described.map(|id| (id, name(id))).collect()
}

/// The disguised languages are for tests of the program. A file or a form may name them; nobody is offered them.
fn without_languages_for_tests(input: &mut Input) {
    if input.key == "settings.language"
        && let Control::One { options } = &mut input.control
    {
        options.retain(|(tag, _, chosen)| *chosen || !present::Locale::is_disguise(tag));
    }
}

/// One of several to choose from.
pub(crate) fn radio(name: &str, value: &str, chosen: bool, label: &str) -> Markup {
    html! {
        label class="tick" { input type="radio" name=(name) value=(value) checked[chosen] required; " " (label) }
    }
}
