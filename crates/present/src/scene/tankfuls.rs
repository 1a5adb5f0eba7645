//! The tankfuls to mix: full ones and the last, filled to scale.

use super::{Anchor, Canvas, PAPER, SHADE, WIDTH};

/// What is drawn.
pub struct Tankfuls {
    /// What a full tank holds, litres.
    pub tank_l: f64,
    /// What the last tank holds, litres; 0 when the mix comes out even.
    pub last_l: f64,
    /// Whether there is any full tank.
    pub any_full: bool,
}

/// The words on the drawing: three lines below each tank.
pub struct TankfulWords {
    /// Below the full tank: how many, litres, disinfectant.
    pub full: [String; 3],
    /// Below the last tank.
    pub last: [String; 3],
    /// What it shows.
    pub alternative: String,
}

const TANK: [f64; 2] = [86.0, 110.0];

impl Tankfuls {
    /// The drawing.
    pub fn draw(&self, words: &TankfulWords) -> String {
        let mut canvas = Canvas::new(TANK[1] + 74.0);
        let (full, last) = (self.any_full, self.last_l > 0.0);
        let middles = if full && last { [WIDTH * 0.27, WIDTH * 0.73] } else { [WIDTH / 2.0, WIDTH / 2.0] };
        if full {
            tank(&mut canvas, middles[0], 1.0, &words.full);
        }
        if last {
            tank(&mut canvas, middles[1], (self.last_l / self.tank_l).clamp(0.0, 1.0), &words.last);
        }
        canvas.finish(&words.alternative)
    }
}

fn tank(canvas: &mut Canvas, middle: f64, share: f64, words: &[String; 3]) {
    let [w, h] = TANK;
    let (left, top) = (middle - w / 2.0, 12.0);
    canvas.rect([left, top, w, h], PAPER, None);
    let filled = h * share;
    canvas.rect([left, top + h - filled, w, filled], SHADE, None);
    canvas.rect([middle - 14.0, top - 8.0, 28.0, 8.0], PAPER, None);
    for (line, text) in words.iter().enumerate() {
        let size = if line == 2 { 15.0 } else { 12.0 };
        canvas.letters([middle, top + h + 18.0 + 17.0 * line as f64], text, Anchor::Middle, size);
    }
}
