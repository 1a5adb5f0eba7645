//! What a plan says in short, as HTML.

use advice::finding::Weight;
use maud::{Markup, html};

use super::{glued, weight_sign};
use crate::summary::{Short, Summary};
use crate::viewer::Viewer;
use crate::words::Words;

/// What does not hold, what to look at again, and each question's answer in a line, all linked to where they are explained.
pub fn summary(summary: &Summary, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    let looks = summary.of_weight(Weight::Look);
    html! {
        (list(words, "summary-problems", Weight::Problem, &summary.of_weight(Weight::Problem)))
        @if looks.len() > LOOKS_SHOWN {
            details class="fold" {
                summary { (words.say("summary-looks-more", &[("count", looks.len().to_string().into())])) }
                (items(Weight::Look, &looks))
            }
        } @else {
            (list(words, "summary-looks", Weight::Look, &looks))
        }
        ul class="answers" { @for answer in &summary.answers {
            li { a href=(format!("#{}", answer.anchor)) { (answer.heading) } " " strong { (glued(&answer.value)) } }
        } }
    }
}

/// As many remarks stand open on top; more are folded, so that the answers stay in sight.
const LOOKS_SHOWN: usize = 3;

fn list(words: &Words, title: &str, weight: Weight, shorts: &[&Short]) -> Markup {
    html! {
        @if !shorts.is_empty() {
            p class="summary-title" { (words.plain(title)) }
            (items(weight, shorts))
        }
    }
}

fn items(weight: Weight, shorts: &[&Short]) -> Markup {
    html! {
        ul class="shorts" { @for short in shorts {
            li { (weight_sign(weight)) a href=(format!("#{}", short.anchor)) { (glued(&short.text)) } }
        } }
    }
}
