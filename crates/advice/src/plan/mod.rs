//! A plan: all figures from the answers, what they have to say, and the tables that compare choices.

use quantity::{Answers, Area, Checked, Length, Raw, Source};

use model::guard::{self, Shape, Sheets};
pub use model::guard::{Layout, Standing};

use crate::check;
use crate::families::{self, guard as guard_family};
use crate::finding::Finding;
use crate::outcome::Outcome;

mod findings;

/// A plan worked out.
pub struct Plan {
    /// What was answered.
    pub answers: Answers,
    /// Every figure that could be worked out.
    pub outcome: Outcome,
    /// What the plan has to say about itself, the weightiest first.
    pub findings: Vec<Finding>,
    /// Ring counts side by side; empty while the guard is not described.
    pub layouts: Vec<Layout>,
    /// How the rings widen as chicks grow; empty while the guard or the floor is not described.
    pub widening: Vec<Widening>,
    /// What a little more disinfectant in a tankful would really be; empty while the label is not described.
    pub overdoses: Vec<Overdose>,
}

/// One step of widening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Widening {
    /// The first day of age it holds on; the day of placement is day 0.
    pub from_day: i32,
    /// Chicks a square metre that the usual schedule asks; `None` for the whole house.
    pub asked_per_m2: Option<f64>,
    /// How the rings then stand.
    pub standing: Standing,
}

/// What pouring more than the label's dose means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overdose {
    /// Poured into one tankful, mL.
    pub poured_ml: f64,
    /// How many times the label.
    pub times_label: f64,
    /// N of the 1:N that was truly mixed.
    pub true_ratio: f64,
    /// Money wasted over all tankfuls; `None` while the price is not known.
    pub extra_cost: Option<f64>,
}

/// Checks raw answers as a plan. `strict` makes a missing required answer a fault (a file); a form is not strict.
pub fn read(raws: &[Raw], source: Source, strict: bool) -> Checked {
    let asked = families::plan_fields();
    let mut checked = quantity::field::check(&asked, raws, source, strict);
    checked.problems.extend(check::together(&checked.answers, &asked));
    checked.problems.sort_by_key(|problem| problem.line.unwrap_or(usize::MAX));
    checked
}

/// Works a plan out from answers that hold.
pub fn work_out(answers: Answers) -> Plan {
    let outcome = Outcome::of(&answers, families::figures().map(|spec| spec.id));
    let layouts = layouts(&answers);
    let widening = widening(&answers, &outcome);
    let overdoses = overdoses(&answers, &outcome);
    let mut findings = findings::all(&answers, &outcome);
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    Plan { answers, outcome, findings, layouts, widening, overdoses }
}

impl Plan {
    /// Whether the sheets stay straight between their joints, so that rings have corners.
    pub fn rings_have_corners(&self) -> bool {
        guard_family::shape(&self.answers) == Shape::Polygon
    }
}

fn sheets(answers: &Answers) -> Option<Sheets> {
    Some(Sheets {
        length: Length::metres(answers.number("guard.sheet_length_m")?),
        overlap: Length::metres(answers.number("guard.overlap_m")?),
        strips_per_sheet: answers.number("guard.strips_per_sheet")?,
        shape: guard_family::shape(answers),
    })
}

/// Ring counts from 2 to 8, or from 1 for small batches.
fn layouts(answers: &Answers) -> Vec<Layout> {
    let count = || {
        let sheets = sheets(answers)?;
        let (chicks, density) = (answers.number("batch.chicks")?, answers.number("guard.chicks_per_m2")?);
        let first = if chicks < 400.0 { 1 } else { 2 };
        Some((first..=8).filter_map(|rings| guard::layout(chicks, rings.into(), density, sheets)).collect())
    };
    count().unwrap_or_default()
}

/// The day of age on which rings are opened as wide as their strips go; common practice is to start on day 3.
const OPENED_ON_DAY: i32 = 3;

fn widening(answers: &Answers, outcome: &Outcome) -> Vec<Widening> {
    let steps = || {
        let sheets = sheets(answers)?;
        let floor = Area::square_metres(outcome.number("space.floor_area")?);
        let chicks = answers.number("batch.chicks")?;
        let asked = answers.number("guard.chicks_per_m2")?;
        let start = guard::layout(chicks, outcome.number("guard.rings")?, asked, sheets)?;
        let mut steps = vec![Widening {
            from_day: 0,
            asked_per_m2: Some(asked),
            standing: guard::widen(start, sheets, asked, floor)?,
        }];
        // Opened wide as it stands, which costs nothing but a hand at each join.
        if start.true_density < asked * (1.0 - 1e-9) {
            let standing =
                Standing::Rings { joined: 1.0, overlap: sheets.overlap, chicks_per_m2: start.true_density };
            steps.push(Widening { from_day: OPENED_ON_DAY, asked_per_m2: Some(asked), standing });
        }
        // The grower's own density holds until the usual schedule asks for more room than that.
        for step in reference::ring::usual_schedule().ok()?.into_iter().filter(|step| step.from_day > 0) {
            let wanted = step.chicks_per_m2.unwrap_or(0.0);
            if wanted < asked {
                let standing = guard::widen(start, sheets, wanted.max(f64::MIN_POSITIVE), floor)?;
                steps.push(Widening { from_day: step.from_day, asked_per_m2: step.chicks_per_m2, standing });
            }
        }
        Some(steps)
    };
    steps().unwrap_or_default()
}

/// A quarter more, half more, double and triple, as someone at the tank might pour.
const POURS: [f64; 4] = [1.25, 1.5, 2.0, 3.0];

fn overdoses(answers: &Answers, outcome: &Outcome) -> Vec<Overdose> {
    let pours = || {
        let dose = outcome.number("disinfectant.product_per_load")?;
        let poured: Vec<f64> = POURS.iter().map(|times| dose * times).collect();
        Some(poured.into_iter().filter_map(|poured_ml| overdose(answers, poured_ml)).collect())
    };
    pours().unwrap_or_default()
}

/// Asks the same rules what this pour would be, so that the table and the figures cannot differ.
fn overdose(answers: &Answers, poured_ml: f64) -> Option<Overdose> {
    let field = families::field("disinfectant.poured_ml")?;
    let mut answers = answers.clone();
    let given = quantity::Given {
        typed: String::new(),
        value: quantity::Value::Number(poured_ml),
        line: None,
        usual: None,
    };
    answers.set(field, given);
    let ids = ["disinfectant.true_ratio", "disinfectant.times_label", "disinfectant.extra_cost"];
    let outcome = Outcome::of(&answers, ids);
    Some(Overdose {
        poured_ml,
        times_label: outcome.number(ids[1])?,
        true_ratio: outcome.number(ids[0])?,
        extra_cost: outcome.number(ids[2]),
    })
}
