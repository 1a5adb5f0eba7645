//! Bars lying below their labels: where the money goes, where the heat goes.

use super::axis::drawable;
use super::lettering::{LINE, SMALL, width, wrap};
use super::texture::Texture;
use super::{Anchor, Canvas, WIDTH};

/// One bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// What it is.
    pub label: String,
    /// How long it is; below zero it lies on the other side and is hatched.
    pub value: f64,
    /// Where it begins: at nothing, but for a step on the way from one sum to another.
    pub start: f64,
    /// The value with its unit, as it is read.
    pub shown: String,
    /// Whether it is the sum of the others, or what is left: drawn dark.
    pub total: bool,
}

/// What is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bars {
    /// The bars from the top.
    pub bars: Vec<Bar>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct BarsWords {
    /// A line above the bars: what is measured, per what. May be empty.
    pub title: String,
    /// What it shows.
    pub alternative: String,
}

const LEFT: f64 = 6.0;
const RIGHT: f64 = WIDTH - 6.0;
const THICK: f64 = 12.0;

/// A bar with its lines of text.
struct Laid<'a> {
    bar: &'a Bar,
    label: Vec<String>,
    shown: Vec<String>,
}

impl<'a> Laid<'a> {
    /// The value stands at the right end of the label's lines; a very long one goes below it.
    fn of(bar: &'a Bar) -> Laid<'a> {
        let room = RIGHT - LEFT;
        let beside = width(&bar.shown, SMALL);
        if beside <= 0.6 * room {
            Laid { bar, label: wrap(&bar.label, room - beside - 10.0), shown: vec![bar.shown.clone()] }
        } else {
            let label = wrap(&bar.label, room);
            let above = vec![String::new(); label.len()];
            Laid { bar, label, shown: [above, wrap(&bar.shown, room)].concat() }
        }
    }

    fn lines(&self) -> f64 {
        self.label.len().max(self.shown.len()) as f64
    }

    fn height(&self) -> f64 {
        LINE * self.lines() + THICK + 10.0
    }

    fn draw(&self, canvas: &mut Canvas, top: f64, x: impl Fn(f64) -> f64) {
        let row = |at: usize| top + 11.0 + LINE * at as f64;
        for (at, line) in self.label.iter().enumerate() {
            canvas.letters([LEFT, row(at)], line, Anchor::Start, SMALL);
        }
        for (at, line) in self.shown.iter().enumerate().filter(|(_, line)| !line.is_empty()) {
            canvas.letters([RIGHT, row(at)], line, Anchor::End, SMALL);
        }
        let y = top + LINE * self.lines() + 2.0;
        let (start, end) = self.bar.ends();
        let (zero, start, end) = (x(0.0), x(start), x(end));
        let (left, right) = (start.min(end), start.max(end));
        let texture = match self.bar {
            Bar { total: true, .. } => Texture::Dark,
            Bar { value, .. } if *value < 0.0 => Texture::Rising,
            _ => Texture::Blank,
        };
        texture.fill(canvas, [left, y, right - left, THICK]);
        canvas.path(&[[left, y], [right, y], [right, y + THICK], [left, y + THICK]], 1.2, true, "none");
        canvas.line([zero, y - 2.0], [zero, y + THICK + 2.0], 2.0, None);
    }
}

impl Bar {
    fn ends(&self) -> (f64, f64) {
        let start = drawn(self.start);
        (start, start + drawn(self.value))
    }
}

/// What of a value can be drawn.
fn drawn(value: f64) -> f64 {
    if drawable(value) { value } else { 0.0 }
}

impl Bars {
    /// The drawing.
    pub fn draw(&self, words: &BarsWords) -> String {
        let values = || self.bars.iter().map(Bar::ends).flat_map(|(start, end)| [start, end]);
        let (low, high) = (values().fold(0.0, f64::min), values().fold(0.0, f64::max));
        let per = if high > low { (RIGHT - LEFT) / (high - low) } else { 0.0 };
        let x = |value: f64| LEFT + (value - low) * per;
        let title = wrap(&words.title, RIGHT - LEFT);
        let laid: Vec<Laid> = self.bars.iter().map(Laid::of).collect();
        let mut top = 4.0 + LINE * title.len() as f64 + if title.is_empty() { 0.0 } else { 4.0 };
        let mut canvas = Canvas::new(top + laid.iter().map(Laid::height).sum::<f64>());
        for (at, line) in title.iter().enumerate() {
            canvas.letters([LEFT, 13.0 + LINE * at as f64], line, Anchor::Start, SMALL);
        }
        for bar in laid {
            bar.draw(&mut canvas, top, x);
            top += bar.height();
        }
        canvas.finish(&words.alternative)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn bars(values: &[f64], label: &str, shown: &str) -> Bars {
        let bar = |value: &f64| Bar {
            label: label.into(),
            value: *value,
            start: 0.0,
            shown: shown.into(),
            total: *value == 7.0,
        };
        Bars { bars: values.iter().map(bar).collect() }
    }

    #[test]
    fn any_bars_can_be_drawn() {
        let words = BarsWords { title: "Watts <out>".into(), alternative: "Heat".into() };
        let long = "Through the curtains of the open side that nobody closes at night ".repeat(2);
        for values in [
            vec![],
            vec![0.0],
            vec![5.0, 5.0],
            vec![7.0, -3.0, 2.0],
            vec![-1.0, -2.0],
            vec![1e15, -1e15, f64::NAN, f64::NEG_INFINITY],
        ] {
            for (label, shown) in
                [("Walls", "12 W"), (&long, "12 W"), (&long, &long), ("", ""), ("Walls", &long)]
            {
                check(&bars(&values, label, shown).draw(&words));
            }
        }
    }

    #[test]
    fn a_step_begins_where_the_one_before_ended() {
        let words = BarsWords { title: String::new(), alternative: "Money".into() };
        let mut drawn = bars(&[100.0, -25.0], "a", "b");
        drawn.bars[1].start = 100.0;
        let svg = drawn.draw(&words);
        let three_quarters = LEFT + 0.75 * (RIGHT - LEFT);
        assert!(svg.contains(&format!("M{three_quarters} ")) && svg.contains(&format!("L{RIGHT} ")), "{svg}");
    }

    #[test]
    fn a_loss_lies_on_the_other_side_of_zero() {
        let words = BarsWords { title: String::new(), alternative: "Money".into() };
        let svg = bars(&[30.0, -10.0], "a", "b").draw(&words);
        // A quarter of the width lies left of zero.
        let zero = LEFT + (RIGHT - LEFT) / 4.0;
        assert!(svg.contains(&format!("M{zero} ")) && svg.contains(&format!("L{zero} ")), "{svg}");
    }
}
