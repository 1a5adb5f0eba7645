//! What is to say about a medicine and its withdrawal.

use model::medicine;
use quantity::{Answers, Unit};

use super::{Check, number};
use crate::families::medicine::{
    DOSE, DRUNK, Form, HOUR, LAST, LIQUID, POWDER, TOMORROW, WITHDRAWAL, YESTERDAY,
};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    liquid_lines_disagree,
    powder_lines_disagree,
    one_line_only,
    label_wanted,
    water_wanted,
    hotter_day,
    part_of_a_sachet,
    withdrawal_unknown,
    hour_not_told,
];

/// Both forms, of which a sum asks one.
const FORMS: [&Form; 2] = [&LIQUID, &POWDER];

fn liquid_lines_disagree(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    lines_disagree(&LIQUID, answers, outcome)
}

fn powder_lines_disagree(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    lines_disagree(&POWDER, answers, outcome)
}

/// The two lines of a label that lead to different amounts: neither is told, since nobody here knows which is wrong.
fn lines_disagree(form: &Form, answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get(form.agreement)?;
    let (by_weight, by_water) = form.ways(answers);
    let (by_weight, by_water) = (by_weight?, by_water?);
    if medicine::agree(by_weight, by_water) {
        return None;
    }
    let found = if by_water > by_weight {
        Finding::new("medicine-water-gives-more", Weight::Problem)
    } else {
        Finding::new("medicine-water-gives-less", Weight::Problem)
    };
    Some(
        found
            .at(form.by_litre)
            .with("times", number(medicine::times_apart(by_weight, by_water), Unit::One, 1))
            .with("live", Detail::Figure("medicine.live_weight"))
            .out("medicine-weigh")
            .out("medicine-measure-water")
            .out("medicine-ask-units"),
    )
}

fn one_line_only(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let form = FORMS.into_iter().find(|form| outcome.get(form.product).is_some())?;
    let (by_weight, by_water) = form.ways(answers);
    (by_weight.is_none() || by_water.is_none())
        .then(|| Finding::new("medicine-one-line-only", Weight::Look).at(form.by_litre))
}

/// Birds and kilograms alone are no dose.
fn label_wanted(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("medicine.live_weight")?;
    let told = FORMS.into_iter().any(|form| form.ways(answers) != (None, None));
    (!told).then(|| Finding::new("medicine-label-wanted", Weight::Problem).at(DOSE))
}

fn water_wanted(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    FORMS.into_iter().find(|form| outcome.get(form.product).is_some())?;
    answers.number(DRUNK).is_none().then(|| Finding::new("medicine-water-wanted", Weight::Look).at(DRUNK))
}

fn hotter_day(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("medicine.live_weight")?;
    let hotter = answers.number(TOMORROW)? - answers.number(YESTERDAY)?;
    // The slack keeps 33.1 - 30.1 on this side whatever the arithmetic's last digit.
    (hotter >= medicine::HOTTER_C - 1e-9).then(|| {
        Finding::new("medicine-hotter-day", Weight::Look)
            .at(DRUNK)
            .with("degrees", number(hotter, Unit::One, 0))
    })
}

fn part_of_a_sachet(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let sachets = outcome.number(POWDER.product)? / answers.number(POWDER.pack)?;
    ((sachets - sachets.round()).abs() > 0.01).then(|| {
        Finding::new("medicine-part-of-a-sachet", Weight::Look).with("sachets", number(sachets, Unit::One, 2))
    })
}

/// No label figure is never 0 days, and never a number of days that some law grants elsewhere.
fn withdrawal_unknown(answers: &Answers, _: &Outcome) -> Option<Finding> {
    answers.day(LAST)?;
    answers
        .number(WITHDRAWAL)
        .is_none()
        .then(|| Finding::new("withdrawal-unknown", Weight::Problem).at(WITHDRAWAL))
}

fn hour_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("withdrawal.earliest_day")?;
    let assumed = answers.get(HOUR).is_some_and(|given| given.usual.is_some());
    assumed.then(|| Finding::new("withdrawal-hour-not-told", Weight::Note).at(HOUR))
}
