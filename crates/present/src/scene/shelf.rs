//! When feed comes, when it is eaten, and until when it keeps: a line a delivery.

use super::axis::{Axis, drawable};
use super::lettering::{LINE, SMALL, width, wrap};
use super::{Anchor, Canvas, INK, PAPER, WIDTH};

/// A delivery of one feed. Days are days of age.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// What comes.
    pub label: String,
    /// The day it comes.
    pub comes: f64,
    /// The first day it is eaten.
    pub eaten_from: f64,
    /// The last.
    pub eaten_until: f64,
    /// The last day it is good.
    pub good_until: f64,
}

/// What is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shelf {
    /// The deliveries, from the top.
    pub kept: Vec<Kept>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct ShelfWords {
    /// What the bars stand for.
    pub key: String,
    /// The title of the axis below.
    pub across: String,
    /// What it shows.
    pub alternative: String,
}

const LEFT: f64 = 12.0;
const RIGHT: f64 = WIDTH - 14.0;
const THICK: f64 = 12.0;

impl Shelf {
    /// The drawing.
    pub fn draw(&self, words: &ShelfWords) -> String {
        let kept: Vec<&Kept> = self.kept.iter().filter(|one| one.is_drawable()).collect();
        let ends = kept.iter().flat_map(|one| [one.comes, one.eaten_until + 1.0, one.good_until + 1.0]);
        let axis = Axis::of_days(ends, 8.0);
        let x = |day: f64| LEFT + axis.share(day) * (RIGHT - LEFT);
        let key = wrap(&words.key, RIGHT - LEFT);
        let labels: Vec<Vec<String>> = kept.iter().map(|one| wrap(&one.label, RIGHT - LEFT)).collect();
        let top = LINE * key.len() as f64 + 8.0;
        let rows: f64 = labels.iter().map(|label| row_height(label)).sum();
        let mut canvas = Canvas::new(top + rows + 40.0);
        lines(&mut canvas, &key, LEFT, 12.0);
        let mut y = top;
        for (one, label) in kept.iter().zip(&labels) {
            lines(&mut canvas, label, LEFT, y + 12.0);
            one.draw(&mut canvas, y + LINE * label.len() as f64 + 4.0, x);
            y += row_height(label);
        }
        below(&mut canvas, &axis, y, x);
        canvas.text([(LEFT + RIGHT) / 2.0, y + 32.0], &words.across, Anchor::Middle);
        canvas.finish(&words.alternative)
    }
}

fn row_height(label: &[String]) -> f64 {
    LINE * label.len() as f64 + THICK + 12.0
}

fn lines(canvas: &mut Canvas, lines: &[String], x: f64, first: f64) {
    for (at, line) in lines.iter().enumerate() {
        canvas.letters([x, first + LINE * at as f64], line, Anchor::Start, SMALL);
    }
}

/// Ticks with their days, as many as find room.
fn below(canvas: &mut Canvas, axis: &Axis, y: f64, x: impl Fn(f64) -> f64) {
    canvas.line([LEFT, y], [RIGHT, y], 0.9, None);
    let mut free = 0.0;
    for (day, label) in axis.labelled() {
        canvas.line([x(day), y], [x(day), y + 4.0], 0.9, None);
        let half = width(&label, SMALL) / 2.0;
        if x(day) - half >= free && x(day) + half <= WIDTH {
            canvas.letters([x(day), y + 17.0], &label, Anchor::Middle, SMALL);
            free = x(day) + half + 4.0;
        }
    }
}

impl Kept {
    fn is_drawable(&self) -> bool {
        [self.comes, self.eaten_from, self.eaten_until, self.good_until].into_iter().all(drawable)
    }

    /// A frame from the day it comes to the last it is good, filled where it is eaten.
    fn draw(&self, canvas: &mut Canvas, y: f64, x: impl Fn(f64) -> f64) {
        let bar = |from: f64, to: f64| {
            let (from, to) = (x(from), x(to));
            [[from, y], [to, y], [to, y + THICK], [from, y + THICK]]
        };
        canvas.path(&bar(self.comes, self.good_until + 1.0), 1.2, true, PAPER);
        canvas.patch(&bar(self.eaten_from, self.eaten_until + 1.0), INK);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    #[test]
    fn any_shelf_can_be_drawn() {
        let words = ShelfWords {
            key: "Black: eaten. Frame: good.".into(),
            across: "Day of age".into(),
            alternative: "Feed in the store".into(),
        };
        for (count, from, step) in
            [(0, 0.0, 0.0), (1, -14.0, 3.0), (9, -14.0, 7.0), (40, 0.0, 1e9), (2, f64::NAN, 1.0)]
        {
            let one = |at: i32| Kept {
                label: format!("{at} bags & more of a feed with a long name"),
                comes: from + step * f64::from(at),
                eaten_from: from + step * f64::from(at + 1),
                eaten_until: from + step * f64::from(at + 2),
                good_until: from + step * f64::from(at + 6),
            };
            check(&Shelf { kept: (0..count).map(one).collect() }.draw(&words));
        }
    }
}
