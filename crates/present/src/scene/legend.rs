//! What the lines and fills of a drawing stand for.

use super::lettering::{LINE, SMALL, widest, wrap};
use super::outfit::Piece;
use super::texture::Texture;
use super::{Anchor, Canvas, WIDTH};

const SAMPLE: f64 = 26.0;
const MARGIN: f64 = 4.0;

/// What stands before a label.
#[derive(Clone, Copy)]
pub(super) enum Sample {
    /// A line of a width, dashed or not.
    Line(f64, Option<&'static str>),
    /// A dot.
    Dot,
    /// A filled patch.
    Fill(Texture),
    /// A shaded patch between two thin lines.
    Band,
    /// An upright stroke with ends.
    Span,
    /// A brooder, a feeder or a drinker.
    Piece(Piece),
}

/// An entry with its place.
struct Placed {
    sample: Sample,
    at: [f64; 2],
    lines: Vec<String>,
}

/// Entries side by side as far as they go, then below.
pub(super) struct Legend {
    placed: Vec<Placed>,
    /// How far it reaches down.
    pub(super) height: f64,
}

impl Legend {
    /// Places the entries; those without a label are left out.
    pub(super) fn of<'a>(entries: impl Iterator<Item = (Sample, &'a str)>) -> Legend {
        let mut placed = Vec::new();
        let (mut x, mut y, mut row) = (MARGIN, 2.0, 0.0);
        for (sample, label) in entries.filter(|(_, label)| !label.is_empty()) {
            let lines = wrap(label, WIDTH - 2.0 * MARGIN - SAMPLE - 5.0);
            let wide = SAMPLE + 5.0 + widest(&lines, SMALL);
            if x > MARGIN && x + wide > WIDTH - MARGIN {
                (x, y, row) = (MARGIN, y + row, 0.0);
            }
            row = f64::max(row, LINE * lines.len() as f64 + 2.0);
            placed.push(Placed { sample, at: [x, y], lines });
            x += wide + 12.0;
        }
        Legend { placed, height: y + row }
    }

    /// Draws it from the top.
    pub(super) fn draw(&self, canvas: &mut Canvas) {
        for entry in &self.placed {
            let [x, y] = entry.at;
            draw_sample(canvas, entry.sample, [x, y + 1.0, SAMPLE, 12.0]);
            for (at, line) in entry.lines.iter().enumerate() {
                let y = y + 11.0 + LINE * at as f64;
                canvas.letters([x + SAMPLE + 5.0, y], line, Anchor::Start, SMALL);
            }
        }
    }
}

fn draw_sample(canvas: &mut Canvas, sample: Sample, [x, y, w, h]: [f64; 4]) {
    let middle = y + h / 2.0;
    match sample {
        Sample::Line(width, dashes) => canvas.polyline(&[[x, middle], [x + w, middle]], width, dashes),
        Sample::Dot => canvas.circle([x + w / 2.0, middle, 2.6], super::INK, 0.0, None),
        Sample::Fill(texture) => {
            texture.fill(canvas, [x, y, w, h]);
            canvas.path(&[[x, y], [x + w, y], [x + w, y + h], [x, y + h]], 0.75, true, "none");
        }
        Sample::Piece(piece) => piece.draw(canvas, [x + w / 2.0, middle, 5.0], None),
        Sample::Span => super::chart::draw_span(canvas, x + w / 2.0, y + h, y),
        Sample::Band => super::chart::draw_band(canvas, &[[x, y + h, y], [x + w, y + h, y]]),
    }
}
