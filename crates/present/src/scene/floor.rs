//! The floor from above, with the rings where they can stand.

use super::legend::Legend;
use super::outfit::{Onto, Outfit, OutfitWords};
use super::{Canvas, PAPER, SHADE, WIDTH};

/// What is drawn; lengths in metres.
pub struct Floor {
    /// Along the ridge.
    pub length: f64,
    /// Across.
    pub width: f64,
    /// Rings to place.
    pub rings: usize,
    /// Across a ring.
    pub diameter: f64,
    /// Free between rings and to the walls, at least.
    pub walkway: f64,
    /// What stands in each ring, places from its middle; without it, a dot marks the brooder.
    pub outfit: Option<Outfit>,
}

/// The words on the drawing.
pub struct FloorWords {
    /// The length with its unit.
    pub length: String,
    /// The width with its unit.
    pub width: String,
    /// What the pieces in the rings are.
    pub outfit: OutfitWords,
    /// What it shows.
    pub alternative: String,
}

impl Floor {
    /// Centres of the rings, in metres from the left and upper corner: straight rows spread evenly over the floor, none
    /// overlapping, none nearer to another or to a wall than the walkway. `None` where so many do not fit.
    pub fn centres(&self) -> Option<Vec<[f64; 2]>> {
        let fit = |row: f64| {
            ((row - self.walkway) / (self.diameter + self.walkway) + 1e-9).floor().max(0.0) as usize
        };
        let (along, across) = (fit(self.length), fit(self.width));
        if along * across < self.rings || self.rings == 0 {
            return None;
        }
        // As few rows as hold them, then as even as possible.
        let rows = self.rings.div_ceil(along);
        let mut centres = Vec::new();
        let mut left = self.rings;
        for row in 0..rows {
            let in_row = left.div_ceil(rows - row);
            left -= in_row;
            let y = self.centre(self.width, row, rows);
            centres.extend((0..in_row).map(|at| [self.centre(self.length, at, in_row), y]));
        }
        Some(centres)
    }

    /// The centre of one of so many rings in a row, with equal gaps between rings and to the walls.
    fn centre(&self, row: f64, at: usize, of: usize) -> f64 {
        let gap = (row - self.diameter * of as f64) / (of as f64 + 1.0);
        gap + self.diameter / 2.0 + (self.diameter + gap) * at as f64
    }

    /// The drawing; `None` where the rings do not fit.
    pub fn draw(&self, words: &FloorWords) -> Option<String> {
        let centres = self.centres()?;
        let entries = self.outfit.iter().flat_map(|outfit| outfit.legend(&words.outfit));
        let ground = Ground::of(self.length, self.width, Legend::of(entries));
        let mut canvas = ground.begin(&words.length, &words.width);
        let scale = ground.scale();
        for [x, y] in centres {
            let radius = self.diameter / 2.0;
            let at = [ground.left() + x * scale, ground.top() + y * scale];
            let fill = if self.outfit.is_some() { PAPER } else { SHADE };
            canvas.circle([at[0], at[1], radius * scale], fill, 2.0, Some([x, y, radius]));
            match &self.outfit {
                Some(outfit) => outfit.draw(&mut canvas, Onto { zero: at, metres: [x, y], scale }),
                None => canvas.circle([at[0], at[1], 3.0], "#111", 1.0, None),
            }
        }
        Some(canvas.finish(&words.alternative))
    }
}

/// A floor with its measures, and a legend above it.
pub(super) struct Ground {
    length: f64,
    width: f64,
    legend: Legend,
}

impl Ground {
    pub(super) fn of(length: f64, width: f64, legend: Legend) -> Ground {
        Ground { length, width, legend }
    }

    pub(super) fn left(&self) -> f64 {
        8.0
    }

    pub(super) fn top(&self) -> f64 {
        self.legend.height + 6.0
    }

    /// Units of drawing to the metre.
    pub(super) fn scale(&self) -> f64 {
        const RIGHT: f64 = 64.0;
        (WIDTH - self.left() - RIGHT) / self.length
    }

    /// A new canvas with the bare floor.
    pub(super) fn begin(&self, length_text: &str, width_text: &str) -> Canvas {
        let (left, top) = (self.left(), self.top());
        let (w, h) = (self.length * self.scale(), self.width * self.scale());
        let mut canvas = Canvas::new(top + h + 32.0);
        self.legend.draw(&mut canvas);
        canvas.rect([left, top, w, h], PAPER, Some([0.0, 0.0, self.length, self.width]));
        canvas.measure_across(left, left + w, top + h + 10.0, length_text);
        canvas.measure_down(left + w + 8.0, top, top + h, width_text);
        canvas
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rings_keep_their_distance() {
        for (length, width, rings, diameter) in [
            (18.0, 9.0, 4, 3.72),
            (18.0, 9.0, 8, 3.72),
            (12.0, 7.0, 3, 2.8),
            (30.0, 4.5, 5, 3.4),
            (18.0, 9.0, 7, 3.0),
        ] {
            let floor = Floor { length, width, rings, diameter, walkway: 0.5, outfit: None };
            let centres = floor.centres().unwrap();
            assert_eq!(centres.len(), rings);
            let radius = diameter / 2.0;
            for (at, a) in centres.iter().enumerate() {
                assert!(a[0] - radius >= 0.5 - 1e-9 && a[0] + radius <= length - 0.5 + 1e-9, "{a:?}");
                assert!(a[1] - radius >= 0.5 - 1e-9 && a[1] + radius <= width - 0.5 + 1e-9, "{a:?}");
                for b in &centres[at + 1..] {
                    let apart = ((a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2)).sqrt();
                    assert!(apart >= diameter + 0.5 - 1e-9, "{a:?} {b:?}");
                }
            }
        }
    }

    #[test]
    fn too_many_rings_are_not_drawn() {
        assert!(
            Floor { length: 18.0, width: 9.0, rings: 9, diameter: 3.72, walkway: 0.5, outfit: None }
                .centres()
                .is_none()
        );
    }
}
