//! Rings on the floor: how many of them stand in the part that is heated, at each step of their widening; and which stand
//! under which kind of brooder.

use model::guard::{self, Layout, Shape};
use quantity::{Answers, Length};

use crate::families::{fuel, guard as guard_family, shell};
use crate::outcome::Outcome;
use crate::plan::{Plan, Standing, Widening, sheets, widening};

/// The rings of one step of widening, and the floor they are to stand on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnFloor {
    /// The first day of age it holds on.
    pub from_day: i32,
    /// Rings joined into one (1 is a ring by itself).
    pub joined: f64,
    /// Rings as they then stand.
    pub rings: f64,
    /// Across one.
    pub diameter: Length,
    /// Length of house they are to stand in: the heated end while chicks are brooded in one, else all of it.
    pub part: Length,
    /// How many stand in that part, in straight rows with a path around each.
    pub fit: f64,
    /// How many stand in the whole house.
    pub fit_house: f64,
    /// The length of house that would hold them, to the next half metre; `None` where none stands across it.
    pub length_wanted: Option<Length>,
}

impl OnFloor {
    /// Whether some of them stand without heat, though the house would hold them.
    pub fn is_outside_the_heat(&self) -> bool {
        self.rings > self.fit && self.rings <= self.fit_house
    }
}

impl Plan {
    /// The rings on the floor at each step of widening, until the guards are gone.
    pub fn on_floor(&self) -> Vec<OnFloor> {
        steps(&self.answers, &self.outcome, &self.widening)
    }

    /// Rings by the kind of brooder over them, where there are two kinds whose ratings are known.
    pub fn rings_by_kind(&self) -> Vec<RingsOfKind> {
        rings_by_kind(&self.answers, &self.outcome).unwrap_or_default()
    }

    /// What speaks against another number of rings.
    pub fn against(&self, layout: &Layout) -> Against {
        against(&self.answers, &self.outcome, layout).unwrap_or_default()
    }
}

/// Rings joined into one, opened to an overlap.
pub(crate) struct JoinedRing {
    /// How many of them there then are.
    pub(crate) rings: f64,
    /// Strips in one.
    pub(crate) strips: f64,
    /// How its strips stand.
    pub(crate) shape: Shape,
    /// Across one; of a ring with corners, from corner to corner.
    pub(crate) diameter: Length,
}

impl JoinedRing {
    /// `None` while the guard is not described.
    pub(crate) fn of(
        answers: &Answers,
        outcome: &Outcome,
        joined: f64,
        overlap: Length,
    ) -> Option<JoinedRing> {
        let sheets = sheets(answers)?;
        let strips = outcome.number("guard.strips_per_ring")? * joined;
        let net = guard::net_length(sheets.length, overlap);
        Some(JoinedRing {
            rings: outcome.number("guard.rings")? / joined,
            strips,
            shape: sheets.shape,
            diameter: guard::ring_diameter(strips, net, sheets.shape),
        })
    }
}

/// The steps of a plan on its floor.
pub(crate) fn on_floor(answers: &Answers, outcome: &Outcome) -> Vec<OnFloor> {
    steps(answers, outcome, &widening(answers, outcome))
}

fn steps(answers: &Answers, outcome: &Outcome, widening: &[Widening]) -> Vec<OnFloor> {
    widening.iter().filter_map(|step| of_step(answers, outcome, step)).collect()
}

fn of_step(answers: &Answers, outcome: &Outcome, step: &Widening) -> Option<OnFloor> {
    let Standing::Rings { joined, overlap, .. } = step.standing else { return None };
    let JoinedRing { rings, diameter, .. } = JoinedRing::of(answers, outcome, joined, overlap)?;
    let house = Rows::of(answers)?;
    let brooded = answers.number("brooding.days_d").is_none_or(|days| f64::from(step.from_day) < days);
    let part = if brooded { heated(answers, outcome)? } else { house.length };
    Some(OnFloor {
        from_day: step.from_day,
        joined,
        rings,
        diameter,
        part,
        fit: house.fit(part, diameter),
        fit_house: house.fit(house.length, diameter),
        length_wanted: guard::length_for(rings, diameter, house.width, house.walkway),
    })
}

/// The length of house that is heated for chicks.
fn heated(answers: &Answers, outcome: &Outcome) -> Option<Length> {
    let whole = answers.number("house.length_m")?;
    let length = match shell::heats_an_end(answers) {
        true => outcome.number("brooding.heated_length").unwrap_or(whole),
        false => whole,
    };
    Some(Length::metres(length))
}

/// The floor that rings stand on in straight rows.
struct Rows {
    length: Length,
    width: Length,
    walkway: Length,
}

impl Rows {
    fn of(answers: &Answers) -> Option<Rows> {
        let metres = |key| answers.number(key).map(Length::metres);
        Some(Rows {
            length: metres("house.length_m")?,
            width: metres("house.width_m")?,
            walkway: metres("guard.walkway_m")?,
        })
    }

    fn fit(&self, length: Length, diameter: Length) -> f64 {
        let row = |row| guard::fit_in_row(row, diameter, self.walkway);
        row(length) * row(self.width)
    }
}

/// How many of a plan's rings, opened wide, stand in the whole house.
pub(crate) fn fit_in_house(answers: &Answers, outcome: &Outcome) -> Option<f64> {
    let house = Rows::of(answers)?;
    Some(house.fit(house.length, Length::metres(outcome.number("guard.ring_diameter")?)))
}

/// Which of two kinds of brooder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The first.
    First,
    /// The second.
    Second,
}

/// Rings under one kind of brooder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RingsOfKind {
    /// The kind; `None` where no brooder is left for them.
    pub kind: Option<Kind>,
    /// Rings under it.
    pub rings: f64,
    /// Chicks in each, at most; all chicks that are left, where no brooder is.
    pub chicks: f64,
}

/// Rings by kind: the stronger brooders first, each with no more than it and a ring carry, shared out so that all are equally
/// far from that.
pub(crate) fn rings_by_kind(answers: &Answers, outcome: &Outcome) -> Option<Vec<RingsOfKind>> {
    let (rings, chicks) = (outcome.number("guard.rings")?, answers.number("batch.chicks")?);
    let most = answers.number("guard.chicks_per_ring")?;
    let count = |key| answers.number(key).filter(|count| *count > 0.0);
    let kinds = [
        (Kind::First, count("brooding.brooders")?, outcome.number("guard.first_rating")?.min(most)),
        (Kind::Second, count("brooding.second_brooders")?, outcome.number("guard.second_rating")?.min(most)),
    ];
    let stronger_first = if kinds[1].2 > kinds[0].2 { [kinds[1], kinds[0]] } else { kinds };
    let mut left = rings;
    let under: Vec<(Kind, f64, f64)> = stronger_first
        .into_iter()
        .map(|(kind, brooders, carries)| {
            let rings = brooders.min(left);
            left -= rings;
            (kind, rings, carries)
        })
        .collect();
    let carry: f64 = under.iter().map(|(_, rings, carries)| rings * carries).sum();
    let share = (chicks / carry).min(1.0);
    let mut table: Vec<RingsOfKind> = under
        .into_iter()
        .filter(|(_, rings, _)| *rings > 0.0)
        .map(|(kind, rings, carries)| RingsOfKind {
            kind: Some(kind),
            rings,
            chicks: (carries * share - 1e-9).ceil(),
        })
        .collect();
    if chicks > carry {
        table.push(RingsOfKind { kind: None, rings: left, chicks: chicks - carry });
    }
    Some(table)
}

/// What speaks against a number of rings.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Against {
    /// An open fire in the middle stands too near the guard on the first day.
    pub too_narrow_for_fire: bool,
    /// The sheet does not bend to the ring of the first day, even by the bold figure.
    pub too_narrow_for_sheet: bool,
    /// How many of them stand in the part that is heated, where that is not all.
    pub fit: Option<f64>,
}

fn against(answers: &Answers, outcome: &Outcome, layout: &Layout) -> Option<Against> {
    let density = answers.number("guard.chicks_per_m2")?;
    let shape = guard_family::shape(answers);
    let area = guard::asked_area(layout.chicks_in_ring, density);
    let radius = guard::nearest_guard(area, layout.strips_per_ring, shape);
    let bends = outcome.get("guard.least_bend_radius").and_then(|worked| worked.figure.band);
    let fit = || Some(Rows::of(answers)?.fit(heated(answers, outcome)?, layout.diameter));
    Some(Against {
        too_narrow_for_fire: fuel::any_charcoal(answers) && radius - guard::POT / 2.0 < guard::FROM_FIRE,
        too_narrow_for_sheet: shape == Shape::Circle
            && bends.is_some_and(|least| radius.in_metres() < least.low),
        fit: fit().filter(|fit| *fit < layout.rings),
    })
}
