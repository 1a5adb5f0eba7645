//! A plan: all figures from the answers, what they have to say, and the tables that compare choices.

use quantity::{Answers, Area, Checked, Length, Raw, Series, Source};

use model::guard::{self, Floor, Shape, Sheets};
pub use model::guard::{Layout, Standing};

use crate::check;
pub use crate::families::money::by_head;
pub use crate::families::space::{Fit, sold_in_parts};
use crate::families::{self, guard as guard_family};
use crate::finding::Finding;
use crate::findings;
use crate::houses::{self, HouseChoice};
use crate::outcome::Outcome;
use crate::procedure::Simulation;
use crate::purchases::{self, Purchase};
use crate::series::{SeriesSpec, Way};
use crate::store_room::{self, Delivery};
use crate::tasks::{self, Task};

/// A plan worked out.
pub struct Plan {
    /// What was answered.
    pub answers: Answers,
    /// Every figure that could be worked out.
    pub outcome: Outcome,
    /// What the plan has to say about itself, the weightiest first.
    pub findings: Vec<Finding>,
    /// Several houses side by side; empty where there is one.
    pub houses: Vec<HouseChoice>,
    /// Ring counts side by side; empty while the guard is not described.
    pub layouts: Vec<Layout>,
    /// How the rings widen as chicks grow; empty while the guard or the floor is not described.
    pub widening: Vec<Widening>,
    /// The figures by day that could be worked out.
    pub series: Vec<Series>,
    /// Feed by delivery, in the order in which it is eaten; empty while bags are not known.
    pub deliveries: Vec<Delivery>,
    /// Everything bought, by the day it is paid; what has no price yet is without a cost.
    pub purchases: Vec<Purchase>,
    /// What a little more disinfectant in a tankful would really be; empty while the label is not described.
    pub overdoses: Vec<Overdose>,
    /// What is done on which day; empty while the chick day is not known.
    pub tasks: Vec<Task>,
}

/// One step of widening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Widening {
    /// The first day of age it holds on; the day of placement is day 0.
    pub from_day: i32,
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
    let split = houses::split(raws);
    let mut checked = quantity::field::check(&asked, &split.raws, source, strict);
    checked.problems.extend(split.problem);
    houses::check_others(&split.others, &asked, source, &mut checked);
    checked.problems.extend(check::together(&checked.answers, &asked));
    checked.problems.sort_by_key(|problem| problem.line.unwrap_or(usize::MAX));
    checked
}

/// Works a plan out from answers that hold.
pub fn work_out(answers: Answers) -> Plan {
    let ids = families::figures().map(|spec| spec.id);
    with_figures(answers, ids)
}

/// Works a plan out without its simulated futures: what a day of a running batch asks of it.
pub fn of_book(answers: Answers) -> Plan {
    let ids = families::figures().map(|spec| spec.id).filter(|id| !families::is_simulated(id));
    with_figures(answers, ids)
}

/// The same with what is likely from here, which costs some milliseconds.
pub fn of_book_ahead(answers: Answers) -> Plan {
    with_simulations(answers, &[&families::outlook::SIMULATION])
}

/// The same with what the batch earns by the day of sale, out of the same futures.
pub fn of_book_selling(answers: Answers) -> Plan {
    let simulations =
        [&families::outlook::SIMULATION, &families::selling::SIMULATION, &families::selling::RISK];
    with_simulations(answers, &simulations)
}

fn with_simulations(answers: Answers, simulations: &[&Simulation]) -> Plan {
    let is_asked = |id: &str| simulations.iter().any(|one| one.figures.iter().any(|spec| spec.id == id));
    let ids = families::figures().map(|spec| spec.id);
    with_figures(answers, ids.filter(|id| !families::is_simulated(id) || is_asked(id)))
}

fn with_figures(answers: Answers, ids: impl Iterator<Item = &'static str>) -> Plan {
    let mut outcome = Outcome::of(&answers, ids);
    outcome.days_of(&answers, families::series());
    let houses = houses::compare(&answers, &outcome);
    let layouts = layouts(&answers);
    let widening = widening(&answers, &outcome);
    let overdoses = overdoses(&answers, &outcome);
    let series = families::series().filter_map(|spec| days(spec, &answers, &outcome)).collect();
    let findings = findings::all(&answers, &outcome);
    let tasks = tasks::tasks(&answers, &outcome);
    let deliveries = store_room::deliveries(&answers, &outcome);
    let purchases = purchases::list(&answers, &outcome);
    Plan {
        answers,
        outcome,
        findings,
        houses,
        layouts,
        widening,
        series,
        deliveries,
        purchases,
        overdoses,
        tasks,
    }
}

fn days(spec: &'static SeriesSpec, answers: &Answers, outcome: &Outcome) -> Option<Series> {
    match spec.way {
        Way::Rules(_) => outcome.series(spec),
        Way::Procedure { work_out, .. } => work_out(answers, outcome),
    }
}

impl Plan {
    /// A figure by day.
    pub fn series(&self, id: &str) -> Option<&Series> {
        self.series.iter().find(|series| series.id == id)
    }

    /// Whether the sheets stay straight between their joints, so that rings have corners.
    pub fn rings_have_corners(&self) -> bool {
        guard_family::shape(&self.answers) == Shape::Polygon
    }
}

pub(crate) fn sheets(answers: &Answers) -> Option<Sheets> {
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

pub(crate) fn widening(answers: &Answers, outcome: &Outcome) -> Vec<Widening> {
    let steps = || {
        let sheets = sheets(answers)?;
        let floor = Floor {
            length: Length::metres(answers.number("house.length_m")?),
            width: Length::metres(answers.number("house.width_m")?),
            usable: Area::square_metres(outcome.number("space.floor_area")?),
            walkway: Length::metres(answers.number("guard.walkway_m")?),
        };
        let (chicks, asked) = (answers.number("batch.chicks")?, answers.number("guard.chicks_per_m2")?);
        let start = guard::layout(chicks, outcome.number("guard.rings")?, asked, sheets)?;
        let opened =
            Standing::Rings { joined: 1.0, overlap: sheets.overlap, chicks_per_m2: start.true_density };
        let mut steps =
            vec![Widening { from_day: 0, standing: guard::widen(start, sheets, Some(asked), floor) }];
        steps.push(Widening { from_day: OPENED_ON_DAY, standing: opened });
        // Day 0 is the grower's own density, whatever the usual schedule starts with.
        let later = reference::ring::usual_schedule().ok()?.into_iter().filter(|step| step.from_day > 0);
        steps.extend(later.map(|step| Widening {
            from_day: step.from_day,
            standing: guard::widen(start, sheets, step.chicks_per_m2, floor),
        }));
        steps.retain(|step| step.from_day >= GUARDS_STAY_UNTIL_DAY || !step.is_whole_house());
        Some(ever_wider(steps))
    };
    steps().unwrap_or_default()
}

/// Before this day of age chicks are not turned out of their guards for want of room: they would lose the heat (guards go
/// between day 7 and day 10; breeders' handbooks, from memory).
const GUARDS_STAY_UNTIL_DAY: i32 = 7;

impl Widening {
    /// Whether the guards are gone.
    pub(crate) fn is_whole_house(&self) -> bool {
        matches!(self.standing, Standing::WholeHouse { .. })
    }
}

/// Chicks are never crowded again: a step that gives no more room than the one before is left out.
fn ever_wider(steps: Vec<Widening>) -> Vec<Widening> {
    let mut kept: Vec<Widening> = Vec::new();
    for step in steps {
        let wider =
            |last: &Widening| step.standing.chicks_per_m2() < last.standing.chicks_per_m2() * (1.0 - 1e-9);
        if kept.last().is_none_or(wider) {
            kept.push(step);
        }
    }
    kept
}

/// A quarter more, half more, double and triple, as someone at the tank might pour.
const POURS: [f64; 4] = [1.25, 1.5, 2.0, 3.0];

fn overdoses(answers: &Answers, outcome: &Outcome) -> Vec<Overdose> {
    let pours = || {
        let dose = outcome.number("disinfectant.product_per_load")?;
        let tank_ml = answers.number("disinfectant.sprayer_l")? * 1000.0;
        let poured: Vec<f64> =
            POURS.iter().map(|times| dose * times).filter(|poured| *poured < tank_ml).collect();
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
