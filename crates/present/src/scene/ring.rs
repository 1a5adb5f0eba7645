//! One ring from above: its strips, its joins, its overlap.

use std::f64::consts::PI;

use super::{Anchor, Canvas, PAPER, WIDTH};

/// What is drawn; lengths in metres.
pub struct Ring {
    /// Strips in the ring.
    pub strips: usize,
    /// What each adds to the ring.
    pub net: f64,
    /// Overlap at each join.
    pub overlap: f64,
    /// Across the ring.
    pub diameter: f64,
    /// Whether the strips stay straight.
    pub straight: bool,
}

/// The words on the drawing.
pub struct RingWords {
    /// "Strip 1" and so on, one a strip.
    pub strips: Vec<String>,
    /// The overlap with its unit.
    pub overlap: String,
    /// The diameter with its unit.
    pub diameter: String,
    /// What it shows.
    pub alternative: String,
}

const TOP: f64 = 26.0;
const RADIUS: f64 = 118.0;

impl Ring {
    /// The drawing.
    pub fn draw(&self, words: &RingWords) -> String {
        let centre = [WIDTH / 2.0, TOP + RADIUS];
        let mut canvas = Canvas::new(TOP + 2.0 * RADIUS + 40.0);
        let turn = 2.0 * PI / self.strips as f64;
        // How far round a strip reaches over its neighbour, as an angle.
        let over = turn * self.overlap / self.net;
        self.outline(&mut canvas, centre);
        for strip in 0..self.strips {
            let start = turn * strip as f64 - PI / 2.0;
            self.join(&mut canvas, centre, start, over);
            let middle = start + turn / 2.0;
            let inside = [centre[0] + 0.74 * RADIUS * middle.cos(), centre[1] + 0.74 * RADIUS * middle.sin()];
            if let Some(label) = words.strips.get(strip) {
                canvas.text([inside[0], inside[1] + 4.0], label, Anchor::Middle);
            }
        }
        canvas.text([centre[0], 14.0], &words.overlap, Anchor::Middle);
        let across = [centre[0] - RADIUS, centre[0] + RADIUS];
        canvas.measure_across(across[0], across[1], TOP + 2.0 * RADIUS + 14.0, &words.diameter);
        canvas.finish(&words.alternative)
    }

    fn outline(&self, canvas: &mut Canvas, centre: [f64; 2]) {
        let metres = Some([0.0, 0.0, self.diameter / 2.0]);
        if self.straight {
            let corners: Vec<[f64; 2]> =
                (0..self.strips).map(|at| corner(centre, RADIUS, at, self.strips)).collect();
            canvas.path(&corners, 2.5, true, PAPER);
        } else {
            canvas.circle([centre[0], centre[1], RADIUS], PAPER, 2.5, metres);
        }
    }

    /// A join: a second, thicker line just outside the first over the length of the overlap, and a tick.
    fn join(&self, canvas: &mut Canvas, centre: [f64; 2], start: f64, over: f64) {
        let outside = RADIUS + 5.0;
        let steps = 12;
        let arc: Vec<[f64; 2]> = (0..=steps)
            .map(|at| point(centre, outside, start + over * f64::from(at) / f64::from(steps)))
            .collect();
        canvas.path(&arc, 7.0, false, "none");
        canvas.line(point(centre, RADIUS - 8.0, start), point(centre, RADIUS + 8.0, start), 1.5, None);
    }
}

/// A corner of a ring whose strips stay straight; the first is at the top.
pub(super) fn corner(centre: [f64; 2], radius: f64, at: usize, of: usize) -> [f64; 2] {
    point(centre, radius, 2.0 * PI * at as f64 / of as f64 - PI / 2.0)
}

fn point(centre: [f64; 2], radius: f64, angle: f64) -> [f64; 2] {
    [centre[0] + radius * angle.cos(), centre[1] + radius * angle.sin()]
}
