//! Forms as HTML: labels tied to their fields, faults beside them and in a summary on top.

use maud::{Markup, PreEscaped, html};

use quantity::field::NOT_KNOWN;

use crate::form::{Control, Input};
use crate::say;
use crate::scene::spread::Spread;
use crate::words::Words;

/// The element id of an input.
pub fn field_anchor(key: &str) -> String {
    format!("field-{}", crate::words::key_part(key))
}

/// One input of a form.
pub fn input(input: &Input, words: &Words) -> Markup {
    let id = field_anchor(&input.key);
    let (hint_id, fault_id) = (format!("{id}-hint"), format!("{id}-fault"));
    let has_hint = !input.hint.is_empty();
    let described: Vec<&str> = [(has_hint, &hint_id), (input.fault.is_some(), &fault_id)]
        .into_iter()
        .filter(|(there, _)| *there)
        .map(|(_, id)| id.as_str())
        .collect();
    let describes = (!described.is_empty()).then(|| described.join(" "));
    let invalid = input.fault.is_some().then_some("true");
    let notes = html! {
        @if has_hint { p class="hint" id=(hint_id) { (input.hint) } }
        @if let Some(fault) = &input.fault { p class="fault" id=(fault_id) { (fault) } }
    };
    match &input.control {
        Control::Text { typed, numeric, unit } => html! {
            div class="input" {
                label for=(id) { (input.label) }
                (notes)
                span class="box" {
                    input id=(id) name=(input.key) type="text" inputmode=[numeric.then_some("decimal")] value=(typed)
                        autocomplete="off" aria-describedby=[describes] aria-invalid=[invalid];
                    @if !unit.is_empty() { span class="unit" { (unit) } }
                }
            }
        },
        Control::Lines { typed, unit } => html! {
            div class="input" {
                label for=(id) { (input.label) @if !unit.is_empty() { " (" (unit) ")" } }
                (notes)
                textarea id=(id) name=(input.key) rows="4" inputmode="text" spellcheck="false" autocomplete="off"
                    aria-describedby=[describes] aria-invalid=[invalid] { (typed) }
            }
        },
        Control::Day { typed } => html! {
            div class="input" {
                label for=(id) { (input.label) }
                (notes)
                input id=(id) name=(input.key) type="date" value=(typed) aria-describedby=[describes] aria-invalid=[invalid];
            }
        },
        Control::One { options } if are_drawn(options) => html! {
            fieldset class="input" id=(id) aria-describedby=[describes] {
                legend { (input.label) }
                (notes)
                (drawn_choices(&input.key, options, words))
            }
        },
        Control::One { options } => html! {
            div class="input" {
                label for=(id) { (input.label) }
                (notes)
                select id=(id) name=(input.key) aria-describedby=[describes] aria-invalid=[invalid] {
                    option value="" { (words.plain("not-said")) }
                    @for (value, label, chosen) in options { option value=(value) selected[*chosen] { (label) } }
                }
            }
        },
        Control::Some { options } => html! {
            fieldset class="input" id=(id) aria-describedby=[describes] {
                legend { (input.label) }
                (notes)
                @for (value, label, chosen) in options {
                    label class="tick" {
                        input type="checkbox" name=(input.key) value=(value) checked[*chosen];
                        " " (label)
                    }
                }
            }
        },
    }
}

/// Value, label and whether chosen.
type Choice = (String, String, bool);

/// Whether each answer has a drawing: how chicks lie is sooner seen than read.
fn are_drawn(options: &[Choice]) -> bool {
    let mut known = options.iter().filter(|(value, ..)| value != NOT_KNOWN).peekable();
    known.peek().is_some() && known.all(|(value, ..)| Spread::from_word(value).is_some())
}

/// Answers to choose by their drawing, with the words below it.
fn drawn_choices(key: &str, options: &[Choice], words: &Words) -> Markup {
    let said = options.iter().any(|(.., chosen)| *chosen);
    html! {
        div class="drawn-choices" {
            @for (value, label, chosen) in options {
                label class="drawn" {
                    @if let Some(spread) = Spread::from_word(value) { (PreEscaped(spread.draw(""))) }
                    span { input type="radio" name=(key) value=(value) checked[*chosen]; " " (label) }
                }
            }
            label class="drawn" {
                span { input type="radio" name=(key) value="" checked[!said]; " " (words.plain("not-said")) }
            }
        }
    }
}

/// The summary of faults on top of a form: takes the focus, links to each field of the form, which stands at `form`; on
/// the same page where that is empty.
pub fn fault_summary(inputs: &[&Input], words: &Words, form: &str) -> Markup {
    let faulty: Vec<(&Input, &String)> =
        inputs.iter().filter_map(|input| Some((*input, input.fault.as_ref()?))).collect();
    html! {
        @if !faulty.is_empty() {
            div class="faults" role="alert" tabindex="-1" id="faults" {
                h2 { (say!(words, "faults-title", count = faulty.len() as f64)) }
                ul { @for (input, fault) in faulty {
                    li { a href=(format!("{form}#{}", field_anchor(&input.key))) { (fault) } }
                } }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::viewer::Locale;

    fn one(values: &[&str], chosen: &str) -> String {
        let option = |value: &&str| ((*value).to_owned(), format!("label of {value}"), *value == chosen);
        let options = values.iter().map(option).collect();
        let asked = Input {
            key: "look.spread".into(),
            label: "How they lie".into(),
            hint: String::new(),
            control: Control::One { options },
            fault: None,
        };
        input(&asked, Words::of(Locale::English)).into_string()
    }

    #[test]
    fn how_chicks_lie_is_chosen_by_its_drawing() {
        let page = one(quantity::records::SPREADS, "panting");
        assert_eq!((page.matches("<svg").count(), page.matches("type=\"radio\"").count()), (5, 6));
        assert!(page.contains("value=\"panting\" checked"), "{page}");
        assert_eq!(page.matches(" checked").count(), 1);
        assert!(one(quantity::records::SPREADS, "").contains("value=\"\" checked"));
    }

    #[test]
    fn other_choices_stay_a_list() {
        assert!(one(quantity::records::SMELLS, "").contains("<select"));
    }
}
