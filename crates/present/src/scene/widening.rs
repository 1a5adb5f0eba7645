//! One ring as it widens, step by step, all to the same scale.

use super::legend::Legend;
use super::lettering::{LINE, SMALL, wrap};
use super::outfit::{Onto, Outfit, OutfitWords};
use super::{Anchor, Canvas, PAPER, WIDTH};

/// The ring at one step; lengths in metres.
#[derive(Clone, Debug, PartialEq)]
pub struct WidenedRing {
    /// Across.
    pub diameter: f64,
    /// Corners, where it has any: the strips stay straight.
    pub corners: Option<usize>,
    /// What stands in it, places from the middle.
    pub outfit: Outfit,
    /// What stands below it: the day, how wide, how much room. One line each, longer ones are broken.
    pub lines: Vec<String>,
}

/// What is drawn: steps in their order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WideningRings {
    /// The steps.
    pub steps: Vec<WidenedRing>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct WideningWords {
    /// What the pieces are.
    pub outfit: OutfitWords,
    /// What it shows.
    pub alternative: String,
}

const MARGIN: f64 = 5.0;
/// Rings side by side.
const IN_ROW: usize = 2;
/// Room for one.
const PANEL: f64 = (WIDTH - 2.0 * MARGIN) / IN_ROW as f64;
/// The widest ring as a share of its room: the drawing stands beside another on paper, and what is saved in height goes into
/// a width at which its words can be read.
const WIDEST: f64 = 0.55;

impl WideningRings {
    /// The drawing; `None` where there is no ring to draw.
    pub fn draw(&self, words: &WideningWords) -> Option<String> {
        let widest = self.steps.iter().map(|step| step.diameter).fold(0.0, f64::max);
        if !(widest > 0.0 && widest.is_finite()) {
            return None;
        }
        let scale = WIDEST * PANEL / widest;
        let entries = self.steps.iter().map(|step| step.outfit.legend(&words.outfit));
        let legend = Legend::of(entries.max_by_key(Vec::len).into_iter().flatten());
        let rows: Vec<&[WidenedRing]> = self.steps.chunks(IN_ROW).collect();
        let mut top = legend.height + 4.0;
        let mut canvas = Canvas::new(top + rows.iter().map(|row| height(row, scale)).sum::<f64>());
        legend.draw(&mut canvas);
        for row in rows {
            let ring = tallest(row, scale);
            for (at, step) in row.iter().enumerate() {
                let x = MARGIN + PANEL * (at as f64 + 0.5);
                step.draw(&mut canvas, [x, top + ring / 2.0], scale);
                let words = match row.len() {
                    1 => [x + PANEL, top + ((ring - step.letters()) / 2.0).max(0.0)],
                    _ => [x, top + ring + 4.0],
                };
                step.write(&mut canvas, words);
            }
            top += height(row, scale);
        }
        Some(canvas.finish(&words.alternative))
    }
}

/// How tall the rings of a row are, with their outlines.
fn tallest(row: &[WidenedRing], scale: f64) -> f64 {
    row.iter().map(|step| step.diameter * scale).fold(0.0, f64::max) + 4.0
}

/// How far a row reaches down: words stand below its rings, beside one that has the row to itself.
fn height(row: &[WidenedRing], scale: f64) -> f64 {
    let words = row.iter().map(WidenedRing::letters).fold(0.0, f64::max);
    match row.len() {
        1 => tallest(row, scale).max(words) + 10.0,
        _ => tallest(row, scale) + words + 10.0,
    }
}

impl WidenedRing {
    fn wrapped(&self) -> Vec<String> {
        self.lines.iter().flat_map(|line| wrap(line, PANEL - 6.0)).collect()
    }

    /// How tall its words are.
    fn letters(&self) -> f64 {
        LINE * self.wrapped().len() as f64
    }

    fn draw(&self, canvas: &mut Canvas, middle: [f64; 2], scale: f64) {
        let radius = self.diameter / 2.0;
        match self.corners {
            Some(corners) => {
                let corner = |at: usize| super::ring::corner(middle, radius * scale, at, corners);
                canvas.path(&(0..corners).map(corner).collect::<Vec<_>>(), 2.0, true, PAPER);
            }
            None => {
                canvas.circle([middle[0], middle[1], radius * scale], PAPER, 2.0, Some([0.0, 0.0, radius]))
            }
        }
        self.outfit.draw(canvas, Onto { zero: middle, metres: [0.0, 0.0], scale });
    }

    fn write(&self, canvas: &mut Canvas, [x, top]: [f64; 2]) {
        for (at, line) in self.wrapped().iter().enumerate() {
            canvas.letters([x, top + 11.0 + LINE * at as f64], line, Anchor::Middle, SMALL);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn step(diameter: f64, corners: Option<usize>) -> WidenedRing {
        let outfit = Outfit {
            brooders: vec![[0.0, 0.0]],
            feeders: vec![[1.0, 0.0]],
            drinkers: vec![[-1.0, 0.0]],
            brooder: 0.8,
            feeder: 0.4,
            drinker: 0.25,
        };
        let lines =
            ["From day 3", "2 rings joined, overlap 45 cm, and more words than fit"].map(str::to_owned);
        WidenedRing { diameter, corners, outfit, lines: lines.into() }
    }

    fn words() -> WideningWords {
        let outfit =
            OutfitWords { brooder: "Brooder".into(), feeder: "Tray".into(), drinker: "Fount & stand".into() };
        WideningWords { outfit, alternative: "Rings widen".into() }
    }

    #[test]
    fn steps_stand_side_by_side_to_one_scale() {
        for count in 1..6 {
            let steps = (0..count).map(|at| step(2.8 + f64::from(at), (at % 2 == 1).then_some(5))).collect();
            check(&WideningRings { steps }.draw(&words()).unwrap());
        }
    }

    #[test]
    fn no_ring_is_no_drawing() {
        assert_eq!(WideningRings::default().draw(&words()), None);
        for diameter in [0.0, f64::NAN, f64::INFINITY] {
            assert_eq!(WideningRings { steps: vec![step(diameter, None)] }.draw(&words()), None);
        }
    }
}
