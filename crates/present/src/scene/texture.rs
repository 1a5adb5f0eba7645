//! Fills that stay apart without colour: blank, hatched four ways, and dark.

use super::{Canvas, PAPER, SHADE};

/// Between the strokes of a hatching.
const GAP: f64 = 6.0;

/// How a part of a drawing is filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Texture {
    Blank,
    Rising,
    Dark,
    Level,
    Falling,
    Crossed,
}

impl Texture {
    /// The fill of the so-manieth part; they come round again after six.
    pub(super) fn of(part: usize) -> Texture {
        const ALL: [Texture; 6] = [
            Texture::Blank,
            Texture::Rising,
            Texture::Dark,
            Texture::Level,
            Texture::Falling,
            Texture::Crossed,
        ];
        ALL[part % ALL.len()]
    }

    /// Fills a rectangle, given as x, y, width and height.
    pub(super) fn fill(self, canvas: &mut Canvas, [x, y, w, h]: [f64; 4]) {
        self.fill_shape(canvas, &[[x, y], [x + w, y], [x + w, y + h], [x, y + h]], &[[x, y, w, h]]);
    }

    /// Fills a shape, given by its corners and by the rectangles it is made of; strokes run on from one to the next.
    pub(super) fn fill_shape(self, canvas: &mut Canvas, corners: &[[f64; 2]], made_of: &[[f64; 4]]) {
        let ground = match self {
            Texture::Blank | Texture::Level => PAPER,
            Texture::Rising | Texture::Falling | Texture::Crossed => SHADE,
            Texture::Dark => "#5a5140",
        };
        canvas.patch(corners, ground);
        let strokes: Vec<[f64; 4]> = made_of.iter().flat_map(|area| self.hatch(*area)).collect();
        canvas.strokes(&strokes, 0.9);
    }

    fn hatch(self, area: [f64; 4]) -> Vec<[f64; 4]> {
        match self {
            Texture::Blank | Texture::Dark => Vec::new(),
            Texture::Rising => rising(area),
            Texture::Falling => falling(area),
            Texture::Level => level(area),
            Texture::Crossed => [rising(area), falling(area)].concat(),
        }
    }
}

/// Multiples of the gap between two numbers.
fn multiples(from: f64, to: f64) -> impl Iterator<Item = f64> {
    let first = (from / GAP).ceil() as i64;
    let last = (to / GAP).floor() as i64;
    (first..=last).map(|at| at as f64 * GAP)
}

/// Strokes on which x and y add up to a multiple of the gap.
fn rising([x, y, w, h]: [f64; 4]) -> Vec<[f64; 4]> {
    multiples(x + y, x + y + w + h)
        .map(|sum| {
            let (from, to) = (x.max(sum - y - h), (x + w).min(sum - y));
            [from, sum - from, to, sum - to]
        })
        .collect()
}

/// Strokes on which y less x is a multiple of the gap.
fn falling([x, y, w, h]: [f64; 4]) -> Vec<[f64; 4]> {
    multiples(y - x - w, y + h - x)
        .map(|less| {
            let (from, to) = (x.max(y - less), (x + w).min(y + h - less));
            [from, from + less, to, to + less]
        })
        .collect()
}

fn level([x, y, w, h]: [f64; 4]) -> Vec<[f64; 4]> {
    multiples(y, y + h).map(|at| [x, at, x + w, at]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strokes_stay_inside() {
        for area in [[10.0, 20.0, 33.0, 8.0], [0.0, 0.0, 3.0, 100.0], [5.5, 7.3, 0.0, 0.0]] {
            let [x, y, w, h] = area;
            for part in 0..6 {
                for [x1, y1, x2, y2] in Texture::of(part).hatch(area) {
                    for (at, from, to) in [(x1, x, x + w), (x2, x, x + w), (y1, y, y + h), (y2, y, y + h)] {
                        assert!(at >= from - 1e-9 && at <= to + 1e-9, "{part} {area:?}");
                    }
                }
            }
        }
    }
}
