//! Bars side by side, each as long as what it stands for.

use super::{Anchor, Canvas, PAPER, SHADE, WIDTH};

/// One bar with the words on it.
pub struct Bar {
    /// What it is.
    pub label: String,
    /// How much, for its length; never below 0.
    pub amount: f64,
    /// How much, in words.
    pub value: String,
}

const ROW: f64 = 38.0;
const THICK: f64 = 14.0;

/// The bars from top to bottom; the longest runs the whole way.
pub fn draw(bars: &[Bar], alternative: &str) -> String {
    let mut canvas = Canvas::new(ROW * bars.len() as f64 + 6.0);
    let longest = bars.iter().map(|bar| bar.amount).fold(0.0, f64::max);
    for (row, bar) in bars.iter().enumerate() {
        let top = ROW * row as f64 + 4.0;
        canvas.text([2.0, top + 11.0], &bar.label, Anchor::Start);
        canvas.text([WIDTH - 2.0, top + 11.0], &bar.value, Anchor::End);
        canvas.rect([1.0, top + 16.0, WIDTH - 2.0, THICK], PAPER, None);
        if longest > 0.0 {
            canvas.rect([1.0, top + 16.0, (WIDTH - 2.0) * bar.amount / longest, THICK], SHADE, None);
        }
    }
    canvas.finish(alternative)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_of_half_is_half_as_long() {
        let bar = |amount| Bar { label: String::new(), amount, value: String::new() };
        let svg = draw(&[bar(4.0), bar(2.0), bar(0.0)], "");
        let shaded: Vec<f64> = svg
            .split("<rect")
            .filter(|rect| rect.contains(SHADE))
            .filter_map(|rect| rect.split("width=\"").nth(1)?.split('"').next()?.parse().ok())
            .collect();
        assert_eq!(shaded, [338.0, 169.0, 0.0]);
    }
}
