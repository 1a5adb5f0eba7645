//! How many birds weigh how much: columns side by side over an axis of weight, with the mean, the span that counts as even,
//! and what a bird should weigh.

use super::axis::{Axis, drawable};
use super::frame::{Frame, Parts};
use super::legend::Sample;
use super::texture::Texture;
use super::{Anchor, Canvas};

/// What is drawn. Values that are not finite numbers are left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Histogram {
    /// The values that are counted.
    pub values: Vec<f64>,
    /// Their mean.
    pub mean: Option<f64>,
    /// From where to where a value counts as near the mean.
    pub near: Option<[f64; 2]>,
    /// What was expected.
    pub expected: Option<f64>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct HistogramWords {
    /// The title of the upright axis.
    pub up: String,
    /// The title of the axis below, with its unit.
    pub across: String,
    /// What the line at the mean is.
    pub mean: String,
    /// What the span about it is.
    pub near: String,
    /// What the line at the expected value is.
    pub expected: String,
    /// What it shows.
    pub alternative: String,
}

/// Columns at most: more say little and are thin on a phone.
const MOST_COLUMNS: f64 = 12.0;
const FEWEST_COLUMNS: f64 = 5.0;

const MEAN: (f64, Option<&str>) = (2.0, None);
const NEAR: (f64, Option<&str>) = (1.0, Some("2 3"));
const EXPECTED: (f64, Option<&str>) = (2.0, Some("7 4"));

impl Histogram {
    /// The columns: from, to and how many lie there, the upper end left out but in the last.
    pub fn columns(&self) -> Vec<(f64, f64, usize)> {
        let ticks = self.axis().ticks();
        let last = ticks.len().saturating_sub(2);
        let lies = |value: &f64, at: usize, from: f64, to: f64| {
            *value >= from && (*value < to || (at == last && *value <= to))
        };
        let counted = |(at, pair): (usize, &[f64])| {
            let (from, to) = (pair[0], pair[1]);
            (from, to, self.drawn().filter(|value| lies(value, at, from, to)).count())
        };
        ticks.windows(2).enumerate().map(counted).collect()
    }

    fn drawn(&self) -> impl Iterator<Item = f64> {
        self.values.iter().copied().filter(|value| drawable(*value))
    }

    /// About as many steps as the root of the number of values, for the values and whatever is marked.
    fn axis(&self) -> Axis {
        let steps = (self.values.len() as f64).sqrt().clamp(FEWEST_COLUMNS, MOST_COLUMNS);
        let marked = self.expected.into_iter().chain(self.near.into_iter().flatten());
        Axis::of_values(self.drawn().chain(marked), steps)
    }

    /// The drawing.
    pub fn draw(&self, words: &HistogramWords) -> String {
        let (columns, axis) = (self.columns(), self.axis());
        let most = columns.iter().map(|(.., count)| *count as f64);
        let (mut canvas, frame) = Frame::begin(&Parts {
            legend: self.legend(words),
            up: &words.up,
            across: &words.across,
            rows: Axis::of_counts(most),
            columns: axis,
            ticks: axis.labelled(),
            marks: &[],
        });
        for (from, to, count) in columns.into_iter().filter(|(.., count)| *count > 0) {
            draw_column(&mut canvas, &frame, [from, to], count as f64);
        }
        for (value, (width, dashes)) in self.lines() {
            frame.down(&mut canvas, value, width, dashes);
        }
        canvas.finish(&words.alternative)
    }

    fn lines(&self) -> Vec<(f64, (f64, Option<&'static str>))> {
        let near = self.near.into_iter().flatten().map(|value| (value, NEAR));
        let marks = [self.mean.map(|value| (value, MEAN)), self.expected.map(|value| (value, EXPECTED))];
        near.chain(marks.into_iter().flatten()).filter(|(value, _)| drawable(*value)).collect()
    }

    fn legend<'a>(&self, words: &'a HistogramWords) -> Vec<(Sample, &'a str)> {
        let line = |is_there: bool, (width, dashes), label: &'a str| {
            is_there.then_some((Sample::Line(width, dashes), label))
        };
        let entries = [
            line(self.mean.is_some(), MEAN, &words.mean),
            line(self.near.is_some(), NEAR, &words.near),
            line(self.expected.is_some(), EXPECTED, &words.expected),
        ];
        entries.into_iter().flatten().collect()
    }
}

/// A column with its count above it.
fn draw_column(canvas: &mut Canvas, frame: &Frame, [from, to]: [f64; 2], count: f64) {
    let (left, right, bottom, top) = (frame.x(from), frame.x(to), frame.y(0.0), frame.y(count));
    Texture::of(0).fill(canvas, [left, top, right - left, bottom - top]);
    canvas.path(&[[left, bottom], [left, top], [right, top], [right, bottom]], 1.0, true, "none");
    // Narrow columns have no room for their number; the upright axis tells it.
    const ROOM: f64 = 18.0;
    if right - left >= ROOM {
        canvas.letters([(left + right) / 2.0, top - 3.0], &format!("{count:.0}"), Anchor::Middle, 11.0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::{check, texts};

    fn words() -> HistogramWords {
        HistogramWords {
            up: "Birds".into(),
            across: "Weight, g".into(),
            mean: "Mean".into(),
            near: "A tenth below and above the mean".into(),
            expected: "Expected <on this day>".into(),
            alternative: "How many birds weigh how much".into(),
        }
    }

    fn weights() -> Vec<f64> {
        (0..60).map(|at| 1600.0 + 13.0 * f64::from(at)).collect()
    }

    #[test]
    fn every_bird_stands_in_one_column() {
        for values in [weights(), vec![1500.0, 2000.0, 2000.0], vec![2000.0; 7], vec![1.0, 1e6]] {
            let drawn = Histogram { values: values.clone(), ..Histogram::default() };
            let counted: usize = drawn.columns().iter().map(|(.., count)| count).sum();
            assert_eq!(counted, values.len(), "{values:?}");
        }
    }

    #[test]
    fn what_is_marked_is_inside_and_said() {
        let mean = Some(1983.5);
        let drawn =
            Histogram { values: weights(), mean, near: Some([1785.0, 2182.0]), expected: Some(2600.0) };
        let svg = drawn.draw(&words());
        check(&svg);
        let said: Vec<String> = texts(&svg).into_iter().map(|(text, _)| text).collect();
        for label in ["Mean", "Expected <on this day>", "Weight, g", "Birds"] {
            assert!(said.iter().any(|text| text == label), "{label}: {said:?}");
        }
        let columns = drawn.columns();
        assert!(columns.last().is_some_and(|(_, to, _)| *to >= 2600.0), "{columns:?}");
    }

    #[test]
    fn any_weights_can_be_drawn() {
        for values in
            [vec![], vec![f64::NAN], vec![7.0], vec![20.0, 10_000.0], (0..500).map(f64::from).collect()]
        {
            let drawn = Histogram { values, mean: Some(5.0), near: None, expected: Some(f64::INFINITY) };
            check(&drawn.draw(&words()));
        }
    }
}
