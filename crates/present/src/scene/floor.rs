//! The floor from above, with the rings where they can stand.

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
}

/// The words on the drawing.
pub struct FloorWords {
    /// The length with its unit.
    pub length: String,
    /// The width with its unit.
    pub width: String,
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
        const LEFT: f64 = 8.0;
        const RIGHT: f64 = 64.0;
        let scale = (WIDTH - LEFT - RIGHT) / self.length;
        let top = 8.0;
        let (w, h) = (self.length * scale, self.width * scale);
        let mut canvas = Canvas::new(top + h + 32.0);
        canvas.rect([LEFT, top, w, h], PAPER, Some([0.0, 0.0, self.length, self.width]));
        for [x, y] in centres {
            let radius = self.diameter / 2.0;
            let at = [LEFT + x * scale, top + y * scale];
            canvas.circle([at[0], at[1], radius * scale], SHADE, 2.0, Some([x, y, radius]));
            canvas.circle([at[0], at[1], 3.0], "#111", 1.0, None);
        }
        canvas.measure_across(LEFT, LEFT + w, top + h + 10.0, &words.length);
        canvas.measure_down(LEFT + w + 8.0, top, top + h, &words.width);
        Some(canvas.finish(&words.alternative))
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
            let floor = Floor { length, width, rings, diameter, walkway: 0.5 };
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
            Floor { length: 18.0, width: 9.0, rings: 9, diameter: 3.72, walkway: 0.5 }.centres().is_none()
        );
    }
}
