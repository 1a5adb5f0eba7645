//! One sheet with its saw lines.

use super::{Anchor, Canvas, PAPER, WIDTH};

/// What is drawn; lengths in metres.
pub struct Cutting {
    /// Along the sheet.
    pub length: f64,
    /// Across the sheet.
    pub width: f64,
    /// Strips out of it.
    pub strips: usize,
}

/// The words on the drawing.
pub struct CuttingWords {
    /// The length with its unit.
    pub length: String,
    /// The height of a strip with its unit.
    pub strip_height: String,
    /// What it shows.
    pub alternative: String,
}

impl Cutting {
    /// The drawing.
    pub fn draw(&self, words: &CuttingWords) -> String {
        const LEFT: f64 = 8.0;
        const RIGHT: f64 = 76.0;
        const TOP: f64 = 8.0;
        let scale = (WIDTH - LEFT - RIGHT) / self.length;
        let (w, h) = (self.length * scale, (self.width * scale).clamp(20.0, 400.0));
        let mut canvas = Canvas::new(TOP + h + 32.0);
        canvas.rect([LEFT, TOP, w, h], PAPER, Some([0.0, 0.0, self.length, self.width]));
        let strip = h / self.strips as f64;
        for cut in 1..self.strips {
            let y = TOP + strip * cut as f64;
            canvas.line([LEFT, y], [LEFT + w, y], 2.0, Some("7 4"));
        }
        if strip >= 12.0 {
            for at in 0..self.strips {
                let y = TOP + strip * (at as f64 + 0.5) + 4.0;
                canvas.text([LEFT + w / 2.0, y], &(at + 1).to_string(), Anchor::Middle);
            }
        }
        canvas.measure_across(LEFT, LEFT + w, TOP + h + 10.0, &words.length);
        canvas.measure_down(LEFT + w + 8.0, TOP, TOP + strip, &words.strip_height);
        canvas.finish(&words.alternative)
    }
}
