//! Upright columns of stacked parts: feed by phase, week by week.

use super::axis::{Axis, drawable};
use super::frame::{Frame, Parts};
use super::legend::Sample;
use super::texture::Texture;

/// One column.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// What stands below it: "1" for the first week.
    pub label: String,
    /// What its parts amount to, lowest first, in the order of the words' `parts`; below zero counts as nothing.
    pub parts: Vec<f64>,
}

/// What is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Columns {
    /// The columns from left to right.
    pub columns: Vec<Column>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct ColumnsWords {
    /// The title of the upright axis, with its unit.
    pub up: String,
    /// The title of the axis below.
    pub across: String,
    /// What each part is, lowest first.
    pub parts: Vec<String>,
    /// What it shows.
    pub alternative: String,
}

/// An amount that can be stacked.
pub(super) fn amount(value: f64) -> f64 {
    if drawable(value) { value.max(0.0) } else { 0.0 }
}

/// The parts of a pile as part, from and to, those that amount to something.
pub(super) fn piled(parts: &[f64]) -> impl Iterator<Item = (usize, f64, f64)> {
    let piles = parts.iter().enumerate().scan(0.0, |height, (part, value)| {
        let from = *height;
        *height += amount(*value);
        Some((part, from, *height))
    });
    piles.filter(|(_, from, to)| to > from)
}

/// Which fill is which part; those that nowhere amount to anything are left out.
pub(super) fn legend<'a>(labels: &'a [String], piles: &[&[f64]]) -> Vec<(Sample, &'a str)> {
    let is_there =
        |part: usize| piles.iter().any(|pile| pile.get(part).is_some_and(|value| amount(*value) > 0.0));
    let parts = labels.iter().enumerate().filter(|(part, _)| is_there(*part));
    parts.map(|(part, label)| (Sample::Fill(Texture::of(part)), label.as_str())).collect()
}

impl Columns {
    /// The drawing.
    pub fn draw(&self, words: &ColumnsWords) -> String {
        let piles: Vec<&[f64]> = self.columns.iter().map(|column| column.parts.as_slice()).collect();
        let heights = piles.iter().map(|parts| parts.iter().copied().map(amount).sum());
        let columns = Axis::of_places(self.columns.len());
        let labels = self.columns.iter().map(|column| column.label.clone());
        let (mut canvas, frame) = Frame::begin(&Parts {
            legend: legend(&words.parts, &piles),
            up: &words.up,
            across: &words.across,
            rows: Axis::of_values(heights.chain([0.0]), 5.0),
            columns,
            ticks: labels.enumerate().map(|(at, label)| (at as f64 + 0.5, label)).collect(),
            marks: &[],
        });
        for (at, parts) in piles.iter().enumerate() {
            let (left, right) = (frame.x(at as f64 + 0.14), frame.x(at as f64 + 0.86));
            for (part, from, to) in piled(parts) {
                let (bottom, top) = (frame.y(from), frame.y(to));
                Texture::of(part).fill(&mut canvas, [left, top, right - left, bottom - top]);
                let corners = [[left, bottom], [left, top], [right, top], [right, bottom]];
                canvas.path(&corners, 1.0, true, "none");
            }
        }
        canvas.finish(&words.alternative)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn words() -> ColumnsWords {
        ColumnsWords {
            up: "Feed, kg".into(),
            across: "Week".into(),
            parts: ["Starter", "Grower", "Finisher & withdrawal"].map(str::to_owned).into(),
            alternative: "Feed by phase".into(),
        }
    }

    #[test]
    fn parts_stand_on_one_another() {
        assert_eq!(piled(&[2.0, 0.0, 3.0]).collect::<Vec<_>>(), [(0, 0.0, 2.0), (2, 2.0, 5.0)]);
        assert_eq!(piled(&[-2.0, f64::NAN, 3.0]).collect::<Vec<_>>(), [(2, 0.0, 3.0)]);
    }

    #[test]
    fn any_columns_can_be_drawn() {
        for (count, value) in
            [(0, 1.0), (1, 0.0), (1, 1e15), (6, 312.5), (60, 0.001), (6, f64::NAN), (5, -4.0)]
        {
            let columns = (0..count)
                .map(|at| Column {
                    label: (at + 1).to_string(),
                    parts: vec![value * f64::from(at), value, value],
                })
                .collect();
            check(&Columns { columns }.draw(&words()));
        }
    }
}
