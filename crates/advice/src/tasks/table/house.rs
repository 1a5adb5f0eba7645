//! The house: emptied, cleaned, dried, left alone.

use super::Anchor::{Empty, Litter};
use super::Stage::{Clean, Empty as Emptying, Rest};
use super::When::{Between, On};
use super::{MORNING, TaskSpec, Told, task};
use quantity::Answers;

use crate::families::turnaround::CLEANING_DAYS;
use crate::outcome::Outcome;

pub(super) static TASKS: &[TaskSpec] = &[
    task("birds-out", Emptying, On(Empty, 0)).calls(MORNING),
    task("pests", Emptying, On(Empty, 0)),
    task("feed-out", Emptying, On(Empty, 0)),
    task("equipment-soak", Emptying, On(Empty, 0)),
    task("litter-out", Emptying, On(Empty, 1)).calls(MORNING),
    task("brush-down", Clean, On(Empty, 1)),
    task("wash", Clean, On(Empty, 2)).calls(MORNING),
    task("dry-and-mend", Clean, On(Empty, 3)),
    // What dripped on it goes with it; new soil comes when nothing is wetted any more, or it would be mud.
    task("earth-floor", Clean, On(Empty, 3)).only(|answers, _| is_earth(answers)),
    task("flush-lines", Clean, On(Empty, 3)),
    task("line-clean", Clean, On(Empty, 3))
        .only(has_lines)
        .says(&[("product", Told::Figure("water.line_product")), ("mix", Told::Figure("water.line_mix"))]),
    task("line-rinse", Clean, On(Empty, 4)).only(has_lines),
    task("disinfect-first", Clean, On(Empty, 4))
        .calls(MORNING)
        .says(&[("contact", Told::Field("disinfectant.contact_min"))]),
    task("dry-day", Rest, On(Empty, 5)),
    task("equipment-in", Rest, On(Empty, 6)),
    task("disinfect-second", Rest, On(Empty, 6))
        .calls(MORNING)
        .says(&[("contact", Told::Field("disinfectant.contact_min"))]),
    task("air", Rest, Between((Empty, 7), (Empty, CLEANING_DAYS - 1))),
    task("foot-bath", Rest, On(Empty, 7)),
    task("earth-limed", Rest, On(Empty, CLEANING_DAYS - 1)).only(|answers, _| is_earth(answers)),
    task("rest", Rest, Between((Empty, CLEANING_DAYS), (Litter, -1))),
];

fn is_earth(answers: &Answers) -> bool {
    answers.choice("house.floor") == Some("earth")
}

/// Whether water runs to the birds through pipes.
fn has_lines(answers: &Answers, _: &Outcome) -> bool {
    let by_pipe = ["bell", "nipple"];
    answers.number("water.line_length_m").is_some()
        || answers.choice("equipment.drinker_kind").is_some_and(|kind| by_pipe.contains(&kind))
}
