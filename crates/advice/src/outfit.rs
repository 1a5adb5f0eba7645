//! What stands on a plan's own floors: brooders, feeders and drinkers, each with its place.
//!
//! How many there are is told by the caller; where they stand follows from the rings and the house of the plan.

use std::f64::consts::PI;

use model::guard::Shape;
use model::placing::{self, HouseFloor, Pieces, RingFloor};
pub use model::placing::{Place, Placed};
use quantity::{Answers, Length};

use crate::families::equipment::{DRINKER_KIND, has_nipples};
use crate::outcome::Outcome;
use crate::plan::{Plan, Standing, Widening, sheets, widening};
use crate::standing::JoinedRing;

/// Feeders and drinkers for the whole batch; `None` for what is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Counts {
    /// Feeders in all.
    pub feeders: Option<f64>,
    /// Drinkers in all.
    pub drinkers: Option<f64>,
}

/// What a feeder or a drinker is: its stable name, and how far it reaches across.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// The word by which a plan chooses it.
    pub name: &'static str,
    /// Across, at its widest.
    pub across: Length,
}

/// The kinds of each; where a plan does not choose, the first.
const CHICK_FEEDERS: [Piece; 3] = [
    Piece { name: "tray", across: placing::CHICK_TRAY },
    Piece { name: "box-lid", across: placing::BOX_LID },
    Piece { name: "small-trough", across: placing::SMALL_TROUGH },
];
const CHICK_DRINKER: Piece = Piece { name: "fount", across: placing::CHICK_FOUNT };
const FEEDERS: [Piece; 2] = [
    Piece { name: "hanging-tube", across: placing::HANGING_FEEDER },
    Piece { name: "pan", across: placing::FEEDER_PAN },
];
const DRINKERS: [Piece; 2] = [
    Piece { name: "bell", across: placing::BELL_DRINKER },
    Piece { name: "large-fount", across: placing::LARGE_FOUNT },
];

/// The kind that a field names.
fn chosen<const N: usize>(answers: &Answers, field: &str, kinds: [Piece; N]) -> Piece {
    let named = answers.choice(field).and_then(|name| kinds.into_iter().find(|kind| kind.name == name));
    named.unwrap_or(kinds[0])
}

/// Pieces with their places on a floor.
#[derive(Clone, Debug, PartialEq)]
pub struct Outfit {
    /// Where they stand.
    pub placed: Placed,
    /// Across a brooder.
    pub brooder: Length,
    /// What the feeders are.
    pub feeder: Piece,
    /// What the drinkers are.
    pub drinker: Piece,
}

/// A ring as it stands, seen from above.
#[derive(Clone, Debug, PartialEq)]
pub struct StandingRing {
    /// Across; of a ring with corners, from corner to corner.
    pub diameter: Length,
    /// Its corners, where its strips stay straight.
    pub corners: Option<usize>,
    /// What stands in it, its places from the middle of the ring.
    pub outfit: Outfit,
}

/// How a ring is put together.
#[derive(Clone, Copy)]
struct Built {
    joined: f64,
    overlap: Length,
}

impl Counts {
    /// What a batch needs in its first weeks.
    pub fn of_chicks(outcome: &Outcome) -> Counts {
        Counts {
            feeders: outcome.number("space.chick_feeders"),
            drinkers: outcome.number("space.chick_drinkers"),
        }
    }

    /// Whether any count is known.
    pub fn any(&self) -> bool {
        self.feeders.is_some() || self.drinkers.is_some()
    }

    /// The share of one of so many equal floors, rounded up so that none goes short.
    fn on_one_of(&self, floors: f64) -> [usize; 2] {
        [self.feeders, self.drinkers].map(|count| (count.unwrap_or(0.0) / floors).ceil().max(0.0) as usize)
    }
}

impl Plan {
    /// A ring as it stands opened wide, with its share of the chick feeders and drinkers; `None` while the guard is not
    /// described.
    pub fn ring(&self, counts: Counts) -> Option<StandingRing> {
        opened(&self.answers, &self.outcome, counts)
    }

    /// A ring at a step of widening; `None` where the guards are gone.
    pub fn widened_ring(&self, step: &Widening, counts: Counts) -> Option<StandingRing> {
        widened(&self.answers, &self.outcome, step, counts)
    }

    /// The whole floor with hanging feeders and drinkers; `None` while the house is not described.
    pub fn hung(&self, counts: Counts) -> Option<Outfit> {
        let length = |key| self.answers.number(key).map(Length::metres);
        let house = HouseFloor {
            length: length("house.length_m")?,
            width: length("house.width_m")?,
            from_wall: placing::FROM_WALL,
            between: placing::BETWEEN,
        };
        let feeder = chosen(&self.answers, "equipment.feeder_kind", FEEDERS);
        let drinker = chosen(&self.answers, DRINKER_KIND, DRINKERS);
        // Nipples hang in lines and have no places of their own.
        let drinkers = counts.drinkers.filter(|_| !self.has_nipples());
        let [feeders, drinkers] = Counts { drinkers, ..counts }.on_one_of(1.0);
        let placed = placing::in_house(
            house,
            Pieces { count: feeders, across: feeder.across },
            Pieces { count: drinkers, across: drinker.across },
        );
        Some(Outfit { placed, brooder: placing::BROODER, feeder, drinker })
    }

    /// Whether grown birds drink from nipples, which no drawing places.
    pub fn has_nipples(&self) -> bool {
        has_nipples(&self.answers)
    }
}

/// Feeders and drinkers that do not find room in a ring.
pub(crate) struct Crowded {
    /// The first day of age of the step.
    pub(crate) from_day: i32,
    /// The ring, with what stands in it and what does not.
    pub(crate) ring: StandingRing,
    /// How wide the ring opens, where all of them stand in it then.
    pub(crate) opened: Option<Length>,
}

/// The first step of widening at which some of the feeders and drinkers of a plan find no place.
pub(crate) fn crowded(answers: &Answers, outcome: &Outcome) -> Option<Crowded> {
    let counts = Counts::of_chicks(outcome);
    let steps = widening(answers, outcome);
    let rings =
        steps.iter().filter_map(|step| Some((step.from_day, widened(answers, outcome, step, counts)?)));
    let (from_day, ring) = rings.into_iter().find(|(_, ring)| ring.outfit.placed.left() > 0)?;
    let opened = opened(answers, outcome, counts)
        .filter(|opened| opened.outfit.placed.left() == 0 && opened.diameter > ring.diameter)
        .map(|opened| opened.diameter);
    Some(Crowded { from_day, ring, opened })
}

fn opened(answers: &Answers, outcome: &Outcome, counts: Counts) -> Option<StandingRing> {
    let overlap = sheets(answers)?.overlap;
    built(answers, outcome, Built { joined: 1.0, overlap }, counts)
}

fn widened(answers: &Answers, outcome: &Outcome, step: &Widening, counts: Counts) -> Option<StandingRing> {
    match step.standing {
        Standing::Rings { joined, overlap, .. } => built(answers, outcome, Built { joined, overlap }, counts),
        Standing::WholeHouse { .. } => None,
    }
}

fn built(answers: &Answers, outcome: &Outcome, built: Built, counts: Counts) -> Option<StandingRing> {
    let ring = JoinedRing::of(answers, outcome, built.joined, built.overlap)?;
    let JoinedRing { rings, strips, shape, diameter } = ring;
    let feeder = chosen(answers, "equipment.chick_feeder_kind", CHICK_FEEDERS);
    let radius = nearest(diameter, strips, shape);
    let outfit = in_ring(radius, built.joined, feeder, counts.on_one_of(rings));
    let corners = (shape == Shape::Polygon).then_some(strips as usize);
    Some(StandingRing { diameter, corners, outfit })
}

/// From the middle of a ring to where its guard stands nearest: the middle of a straight strip.
fn nearest(diameter: Length, strips: f64, shape: Shape) -> Length {
    match shape {
        Shape::Circle => diameter / 2.0,
        Shape::Polygon => diameter * (PI / strips).cos() / 2.0,
    }
}

/// A ring with a brooder from each of the rings joined in it.
fn in_ring(radius: Length, brooders: f64, feeder: Piece, [feeders, drinkers]: [usize; 2]) -> Outfit {
    let (brooder, drinker) = (placing::BROODER, CHICK_DRINKER);
    let floor = RingFloor {
        radius,
        brooders: Pieces { count: brooders as usize, across: brooder },
        from_guard: placing::FROM_GUARD,
        between: placing::BETWEEN,
    };
    let placed = placing::in_ring(
        floor,
        Pieces { count: feeders, across: feeder.across },
        Pieces { count: drinkers, across: drinker.across },
    );
    Outfit { placed, brooder, feeder, drinker }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_ring_goes_short() {
        let counts = Counts { feeders: Some(17.0), drinkers: None };
        assert_eq!(counts.on_one_of(4.0), [5, 0]);
    }

    #[test]
    fn corners_do_not_count_as_floor() {
        let (diameter, strips) = (Length::metres(4.0), 4.0);
        assert_eq!(nearest(diameter, strips, Shape::Circle).in_metres(), 2.0);
        let square = nearest(diameter, strips, Shape::Polygon).in_metres();
        assert!((square - 2.0_f64.sqrt()).abs() < 1e-12, "{square}");
    }
}
