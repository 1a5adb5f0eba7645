//! Brooders, feeders and drinkers from above, to scale: told apart by outline and fill.

use super::legend::Sample;
use super::{Canvas, INK, SHADE};

/// What stands on a floor; lengths in metres, places from the middle of a ring or the corner of a floor.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outfit {
    /// Middles of brooders.
    pub brooders: Vec<[f64; 2]>,
    /// Middles of feeders.
    pub feeders: Vec<[f64; 2]>,
    /// Middles of drinkers.
    pub drinkers: Vec<[f64; 2]>,
    /// Across a brooder.
    pub brooder: f64,
    /// Across a feeder.
    pub feeder: f64,
    /// Across a drinker.
    pub drinker: f64,
}

/// What the pieces are called below or beside a drawing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OutfitWords {
    /// A brooder, with its size.
    pub brooder: String,
    /// A feeder, with its size.
    pub feeder: String,
    /// A drinker, with its size.
    pub drinker: String,
}

/// How a piece looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Piece {
    /// Shaded, with a smaller ring in it.
    Brooder,
    /// An open ring.
    Feeder,
    /// Black.
    Drinker,
}

/// Where metres of a floor lie on a drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Onto {
    /// The floor's own zero on the drawing.
    pub(super) zero: [f64; 2],
    /// The metres at that zero, as the `data-` attributes tell them.
    pub(super) metres: [f64; 2],
    /// Units of drawing to the metre.
    pub(super) scale: f64,
}

impl Piece {
    /// Draws one, given as x, y and radius.
    pub(super) fn draw(self, canvas: &mut Canvas, [x, y, r]: [f64; 3], metres: Option<[f64; 3]>) {
        match self {
            Piece::Brooder => {
                canvas.circle([x, y, r], SHADE, 1.4, metres);
                canvas.circle([x, y, r * 0.45], "none", 1.0, None);
            }
            Piece::Feeder => canvas.circle([x, y, r], "#fff", 1.0, metres),
            Piece::Drinker => canvas.circle([x, y, r], INK, 0.5, metres),
        }
    }
}

impl Outfit {
    /// Draws every piece.
    pub(super) fn draw(&self, canvas: &mut Canvas, onto: Onto) {
        for (piece, places, across) in [
            (Piece::Brooder, &self.brooders, self.brooder),
            (Piece::Feeder, &self.feeders, self.feeder),
            (Piece::Drinker, &self.drinkers, self.drinker),
        ] {
            let radius = across / 2.0;
            for [x, y] in places {
                let at = [onto.zero[0] + x * onto.scale, onto.zero[1] + y * onto.scale, radius * onto.scale];
                piece.draw(canvas, at, Some([onto.metres[0] + x, onto.metres[1] + y, radius]));
            }
        }
    }

    /// What its kinds look like; those that are not there are left out.
    pub(super) fn legend<'a>(&self, words: &'a OutfitWords) -> Vec<(Sample, &'a str)> {
        [
            (Piece::Brooder, &self.brooders, &words.brooder),
            (Piece::Feeder, &self.feeders, &words.feeder),
            (Piece::Drinker, &self.drinkers, &words.drinker),
        ]
        .into_iter()
        .filter(|(_, places, _)| !places.is_empty())
        .map(|(piece, _, label)| (Sample::Piece(piece), label.as_str()))
        .collect()
    }
}
