//! What lies in the store room, day by day: it sinks as the birds eat and jumps with each delivery.

use super::axis::{Axis, drawable};
use super::chart::{LIMIT, Limit};
use super::columns::{amount, legend};
use super::frame::{Frame, Parts};
pub use super::lanes::Mark;
use super::legend::Sample;
use super::texture::Texture;
use super::{Canvas, INK};

/// The store room on one day.
#[derive(Clone, Debug, PartialEq)]
pub struct StockDay {
    /// The day of age.
    pub day: f64,
    /// What lies there in the morning, after that day's delivery, lowest first, in the order of the words' `parts`.
    pub parts: Vec<f64>,
}

/// What is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stock {
    /// The days, one after the other.
    pub days: Vec<StockDay>,
    /// Days with a delivery, and what comes.
    pub deliveries: Vec<Mark>,
    /// What the room holds.
    pub capacity: Option<Limit>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct StockWords {
    /// The title of the upright axis, with its unit.
    pub up: String,
    /// The title of the axis below.
    pub across: String,
    /// What each part is, lowest first.
    pub parts: Vec<String>,
    /// What it shows.
    pub alternative: String,
}

impl StockDay {
    fn height(&self) -> f64 {
        self.parts.iter().copied().map(amount).sum()
    }
}

impl Stock {
    /// The drawing.
    pub fn draw(&self, words: &StockWords) -> String {
        let days: Vec<&StockDay> = self.days.iter().filter(|stock| drawable(stock.day)).collect();
        let piles: Vec<&[f64]> = days.iter().map(|stock| stock.parts.as_slice()).collect();
        let mut entries = legend(&words.parts, &piles);
        entries
            .extend(self.capacity.iter().map(|limit| (Sample::Line(LIMIT.0, LIMIT.1), limit.label.as_str())));
        let ends = days.iter().flat_map(|stock| [stock.day, stock.day + 1.0]);
        let columns = Axis::of_days(ends.chain(self.deliveries.iter().map(|mark| mark.day)), 8.0);
        let heights = days.iter().map(|stock| stock.height());
        let capacity = self.capacity.iter().map(|limit| limit.value);
        let (mut canvas, frame) = Frame::begin(&Parts {
            legend: entries,
            up: &words.up,
            across: &words.across,
            rows: Axis::of_values(heights.chain(capacity).chain([0.0]), 5.0),
            columns,
            ticks: columns.labelled(),
            marks: &self.deliveries,
        });
        fill(&mut canvas, &frame, &days);
        outline(&mut canvas, &frame, &days);
        self.arrows(&mut canvas, &frame, &days);
        if let Some(limit) = self.capacity.as_ref().filter(|limit| drawable(limit.value)) {
            frame.across(&mut canvas, limit.value, LIMIT.0, LIMIT.1);
        }
        canvas.finish(&words.alternative)
    }

    /// An arrow up the step of each delivery.
    fn arrows(&self, canvas: &mut Canvas, frame: &Frame, days: &[&StockDay]) {
        for delivery in self.deliveries.iter().filter(|delivery| drawable(delivery.day)) {
            let height =
                days.iter().find(|stock| stock.day == delivery.day).map_or(0.0, |stock| stock.height());
            let before =
                days.iter().find(|stock| stock.day == delivery.day - 1.0).map_or(0.0, |stock| stock.height());
            let (x, from, to) = (frame.x(delivery.day), frame.y(before.min(height)), frame.y(height));
            canvas.line([x, from], [x, to], 3.0, None);
            if from - to > 7.0 {
                canvas.patch(&[[x, to - 1.0], [x - 4.5, to + 8.0], [x + 4.5, to + 8.0]], INK);
            }
        }
    }
}

/// Where a day's stock begins and ends: it lies there until the next day that is told of.
fn spans(days: &[&StockDay]) -> Vec<[f64; 2]> {
    let next = days.iter().skip(1).map(|stock| stock.day);
    let last = days.last().map(|stock| stock.day + 1.0);
    days.iter().zip(next.chain(last)).map(|(stock, until)| [stock.day, until]).collect()
}

/// Each part as one shape, so that no seam shows between the days.
fn fill(canvas: &mut Canvas, frame: &Frame, days: &[&StockDay]) {
    let parts = days.iter().map(|stock| stock.parts.len()).max().unwrap_or(0);
    for part in 0..parts {
        let areas: Vec<[f64; 4]> = days
            .iter()
            .zip(spans(days))
            .map(|(stock, span)| {
                let below: f64 = stock.parts.iter().take(part).copied().map(amount).sum();
                let own = stock.parts.get(part).copied().map_or(0.0, amount);
                let (bottom, top) = (frame.y(below), frame.y(below + own));
                let [left, right] = span.map(|day| frame.x(day));
                [left, top, right - left, bottom - top]
            })
            .collect();
        let tops = areas.iter().flat_map(|[x, y, w, _]| [[*x, *y], [x + w, *y]]);
        let bottoms = areas.iter().rev().flat_map(|[x, y, w, h]| [[x + w, y + h], [*x, y + h]]);
        Texture::of(part).fill_shape(canvas, &tops.clone().chain(bottoms).collect::<Vec<_>>(), &areas);
        canvas.polyline(&tops.collect::<Vec<_>>(), 0.9, None);
    }
}

/// The saw-tooth itself.
fn outline(canvas: &mut Canvas, frame: &Frame, days: &[&StockDay]) {
    let steps = days.iter().zip(spans(days)).flat_map(|(stock, span)| {
        let y = frame.y(stock.height());
        span.map(|day| [frame.x(day), y])
    });
    canvas.polyline(&steps.collect::<Vec<_>>(), 1.6, None);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn words() -> StockWords {
        StockWords {
            up: "In the store room, bags of 50 kg".into(),
            across: "Day of age".into(),
            parts: ["Starter", "Grower", "Finisher"].map(str::to_owned).into(),
            alternative: "Store room by day".into(),
        }
    }

    #[test]
    fn any_stock_can_be_drawn() {
        for (last, scale) in
            [(-1, 1.0), (0, 3.0), (42, 2.0), (42, 0.0), (42, 1e13), (42, f64::NAN), (700, 1.0)]
        {
            let days: Vec<StockDay> = (0..=last)
                .map(|day| {
                    let left = |cycle: i32| scale * f64::from(cycle - day % cycle);
                    StockDay { day: f64::from(day), parts: vec![left(10), left(14)] }
                })
                .collect();
            let stock = Stock {
                days,
                deliveries: (0..=last.min(42))
                    .step_by(10)
                    .map(|day| Mark { day: f64::from(day), label: "20 bags & 3".into() })
                    .collect(),
                capacity: Some(Limit { label: "The room holds".into(), value: 30.0 }),
            };
            check(&stock.draw(&words()));
        }
    }
}
