//! The common frame of drawings over days: legend, marks, axes with ticks, titles.

use super::axis::Axis;
use super::lanes::{Lanes, Mark};
use super::legend::{Legend, Sample};
use super::lettering::{LINE, SMALL, width, wrap};
use super::{Anchor, Canvas, WIDTH};

/// How tall the field with the lines is.
const TALL: f64 = 180.0;
const RIGHT: f64 = WIDTH - 14.0;
const MARGIN: f64 = 4.0;

/// What a frame is made of.
pub(super) struct Parts<'a> {
    /// What lines and fills stand for.
    pub(super) legend: Vec<(Sample, &'a str)>,
    /// The title of the upright axis, with unit.
    pub(super) up: &'a str,
    /// The title of the axis below.
    pub(super) across: &'a str,
    /// The upright axis.
    pub(super) rows: Axis,
    /// The axis below.
    pub(super) columns: Axis,
    /// The ticks below, with labels.
    pub(super) ticks: Vec<(f64, String)>,
    /// Marked days.
    pub(super) marks: &'a [Mark],
}

/// The field that values are drawn in.
pub(super) struct Frame {
    left: f64,
    top: f64,
    rows: Axis,
    columns: Axis,
}

impl Frame {
    /// Lays a frame out and draws it on a new canvas.
    pub(super) fn begin(parts: &Parts) -> (Canvas, Frame) {
        let legend = Legend::of(parts.legend.iter().copied());
        let up = wrap(parts.up, WIDTH - 2.0 * MARGIN);
        let rows = parts.rows.labelled();
        let left = MARGIN + 6.0 + rows.iter().map(|(_, text)| width(text, SMALL)).fold(14.0, f64::max);
        let mut frame = Frame { left, top: 0.0, rows: parts.rows, columns: parts.columns };
        let lanes = Lanes::of(parts.marks, left, RIGHT, |day| frame.x(day));
        let up_top = legend.height + 4.0;
        frame.top = up_top + LINE * up.len() as f64 + lanes.height() + 8.0;
        let across = wrap(parts.across, WIDTH - 2.0 * MARGIN);
        let below = frame.bottom() + 18.0;
        let mut canvas = Canvas::new(below + LINE * across.len() as f64 + 4.0);
        legend.draw(&mut canvas);
        lines(&mut canvas, &up, [MARGIN, up_top + 11.0], Anchor::Start);
        frame.draw_rows(&mut canvas, &rows);
        frame.draw_columns(&mut canvas, &parts.ticks);
        lanes.draw(&mut canvas, frame.top - 4.0, frame.bottom());
        lines(&mut canvas, &across, [(left + RIGHT) / 2.0, below + 11.0], Anchor::Middle);
        (canvas, frame)
    }

    /// The place of a number along the axis below.
    pub(super) fn x(&self, value: f64) -> f64 {
        self.left + self.columns.share(value) * (RIGHT - self.left)
    }

    /// The place of a number along the upright axis.
    pub(super) fn y(&self, value: f64) -> f64 {
        self.bottom() - self.rows.share(value) * TALL
    }

    /// A line all the way across.
    pub(super) fn across(&self, canvas: &mut Canvas, value: f64, width: f64, dashes: Option<&str>) {
        let y = self.y(value);
        canvas.lined_polyline(&[[self.left, y], [RIGHT, y]], width, dashes);
    }

    /// A line all the way up.
    pub(super) fn down(&self, canvas: &mut Canvas, value: f64, width: f64, dashes: Option<&str>) {
        let x = self.x(value);
        canvas.lined_polyline(&[[x, self.top], [x, self.bottom()]], width, dashes);
    }

    fn bottom(&self) -> f64 {
        self.top + TALL
    }

    fn draw_rows(&self, canvas: &mut Canvas, ticks: &[(f64, String)]) {
        for (value, text) in ticks {
            let y = self.y(*value);
            canvas.guide([self.left, y], [RIGHT, y]);
            canvas.letters([self.left - 6.0, y + 4.0], text, Anchor::End, SMALL);
        }
        canvas.line([self.left, self.top], [self.left, self.bottom()], 1.0, None);
        let base = self.y(0.0);
        canvas.line([self.left, base], [RIGHT, base], 1.0, None);
    }

    /// Ticks below; a label that would touch the one before it, or the edge, is left out.
    fn draw_columns(&self, canvas: &mut Canvas, ticks: &[(f64, String)]) {
        let y = self.bottom();
        canvas.line([self.left, y], [RIGHT, y], 1.0, None);
        let mut free_from = 0.0;
        for (value, text) in ticks {
            let (x, half) = (self.x(*value), width(text, SMALL) / 2.0);
            canvas.line([x, y], [x, y + 4.0], 1.0, None);
            if x - half >= free_from && x + half <= WIDTH {
                canvas.letters([x, y + 15.0], text, Anchor::Middle, SMALL);
                free_from = x + half + 4.0;
            }
        }
    }
}

fn lines(canvas: &mut Canvas, lines: &[String], [x, y]: [f64; 2], anchor: Anchor) {
    for (at, line) in lines.iter().enumerate() {
        canvas.letters([x, y + LINE * at as f64], line, anchor, SMALL);
    }
}
