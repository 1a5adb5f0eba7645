//! Marked days: a thin line down the drawing, and a short label above it.

use super::axis::drawable;
use super::lettering::{LINE, SMALL, widest, wrap};
use super::{Anchor, Canvas};

/// A day that something happens on.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// The day.
    pub day: f64,
    /// What happens, in few words.
    pub label: String,
}

/// A label with its place: `lane` 0 is the lowest.
struct Placed {
    x: f64,
    from: f64,
    to: f64,
    lane: usize,
    lines: Vec<String>,
}

/// The labels of marks in as few lanes as keep them apart.
pub(super) struct Lanes {
    placed: Vec<Placed>,
    heights: Vec<f64>,
}

impl Lanes {
    /// Places labels over a plot that reaches from `left` to `right`; `x` turns a day into a place.
    pub(super) fn of(marks: &[Mark], left: f64, right: f64, x: impl Fn(f64) -> f64) -> Lanes {
        let mut marks: Vec<&Mark> = marks.iter().filter(|mark| drawable(mark.day)).collect();
        // From the right: a label reaches rightwards, so those to the left of it then go above it, not through it.
        marks.sort_by(|a, b| b.day.total_cmp(&a.day));
        let mut placed: Vec<Placed> = Vec::new();
        for mark in marks {
            let next = place(&placed, x(mark.day), &mark.label, left, right);
            placed.push(next);
        }
        let mut heights = vec![0.0; placed.iter().map(|label| label.lane + 1).max().unwrap_or(0)];
        for label in &placed {
            heights[label.lane] = f64::max(heights[label.lane], LINE * label.lines.len() as f64);
        }
        Lanes { placed, heights }
    }

    /// How tall all lanes are.
    pub(super) fn height(&self) -> f64 {
        self.heights.iter().sum()
    }

    /// Draws the labels above `top`, and the lines from them down to `bottom`.
    pub(super) fn draw(&self, canvas: &mut Canvas, top: f64, bottom: f64) {
        for label in &self.placed {
            let floor = top - self.heights[..label.lane].iter().sum::<f64>();
            let ceiling = floor - LINE * label.lines.len() as f64;
            canvas.line([label.x, ceiling + 2.0], [label.x, bottom], 1.0, Some("1.5 2.5"));
            let (x, anchor) =
                if label.to > label.x { (label.from, Anchor::Start) } else { (label.to, Anchor::End) };
            for (at, line) in label.lines.iter().enumerate() {
                canvas.letters([x, ceiling + 11.0 + LINE * at as f64], line, anchor, SMALL);
            }
        }
    }
}

/// The lowest lane in which a label neither covers another nor is crossed by a line: to the right of its own line,
/// unless the left gives it fewer lines or keeps it clear.
fn place(placed: &[Placed], x: f64, label: &str, left: f64, right: f64) -> Placed {
    const BESIDE: f64 = 4.0;
    let above = placed.iter().map(|other| other.lane + 1).max().unwrap_or(0);
    let side = |to_right: bool| {
        let room = if to_right { right - x } else { x - left } - BESIDE;
        let lines = wrap(label, room.min(0.6 * (right - left)));
        let wide = widest(&lines, SMALL);
        let from = if to_right { x + BESIDE } else { x - BESIDE - wide };
        let free = (0..=above).find(|lane| is_free(placed, *lane, x, from, from + wide));
        // Nowhere free: above all others it covers none, and at worst its own line crosses one.
        let lane = free.unwrap_or(above);
        (free.is_none(), Placed { x, from, to: from + wide, lane, lines })
    };
    let (after, before) = (side(true), side(false));
    let worth = |side: &(bool, Placed)| (side.1.lines.len(), side.0);
    if worth(&before) < worth(&after) { before.1 } else { after.1 }
}

fn is_free(placed: &[Placed], lane: usize, x: f64, from: f64, to: f64) -> bool {
    placed.iter().all(|other| match other.lane.cmp(&lane) {
        std::cmp::Ordering::Equal => other.from > to + 4.0 || other.to < from - 4.0,
        std::cmp::Ordering::Less => x < other.from || x > other.to,
        std::cmp::Ordering::Greater => other.x < from || other.x > to,
    })
}
