//! What brings heat into a house and what takes it, as two piles of one height.

use super::axis::drawable;
use super::lettering::{LINE, SMALL, widest, wrap};
use super::texture::Texture;
use super::{Anchor, Canvas, WIDTH};

/// How tall the piles are.
const TALL: f64 = 220.0;
/// How wide each is, and the gap between them.
const PILE: f64 = 40.0;
const GAP: f64 = 26.0;
const MARGIN: f64 = 4.0;
/// From a pile to its words.
const REACH: f64 = 14.0;
/// Between the words of one part and of the next.
const BETWEEN: f64 = 3.0;
/// A part with less than this share of the pile stands with the little ones.
const LITTLE: f64 = 0.02;
/// Less than this share of it would read as nothing, and is left out.
const NOTHING: f64 = 0.001;

/// One way of heat.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// What it is.
    pub label: String,
    /// How much, above 0, in whatever all are told in.
    pub amount: f64,
    /// The amount with its unit.
    pub said: String,
}

/// What is drawn. Both sides amount to the same.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HeatBalance {
    /// What brings heat, the greatest first.
    pub brings: Vec<Way>,
    /// What takes it, the greatest first.
    pub takes: Vec<Way>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatBalanceWords {
    /// Over what brings heat, with the sum.
    pub brings: String,
    /// Over what takes it, with the sum.
    pub takes: String,
    /// The scale: what the height of the piles stands for.
    pub scale: String,
    /// What it shows.
    pub alternative: String,
}

/// A part of a pile with its words.
struct Part {
    texture: Texture,
    top: f64,
    bottom: f64,
    lines: Vec<String>,
    /// Where its words begin.
    at: f64,
}

/// A side of the drawing.
#[derive(Clone, Copy)]
enum Side {
    Left,
    Right,
}

impl HeatBalance {
    /// Puts together what is too small to be seen, under one name for each side, given the words for an amount.
    pub fn of(
        mut brings: Vec<Way>,
        mut takes: Vec<Way>,
        little: &str,
        said: impl Fn(f64) -> String,
    ) -> HeatBalance {
        for side in [&mut brings, &mut takes] {
            side.retain(|way| drawable(way.amount) && way.amount > 0.0);
            let total: f64 = side.iter().map(|way| way.amount).sum();
            side.retain(|way| way.amount >= NOTHING * total);
            let is_little = |way: &Way| way.amount < LITTLE * total;
            let rest: f64 = side.iter().filter(|way| is_little(way)).map(|way| way.amount).sum();
            if side.iter().filter(|way| is_little(way)).count() > 1 {
                side.retain(|way| !is_little(way));
                side.push(Way { label: little.to_owned(), amount: rest, said: said(rest) });
            }
            side.sort_by(|one, other| other.amount.total_cmp(&one.amount));
        }
        HeatBalance { brings, takes }
    }

    /// The drawing.
    pub fn draw(&self, words: &HeatBalanceWords) -> String {
        let total = self.brings.iter().map(|way| way.amount).sum::<f64>();
        let total = total.max(self.takes.iter().map(|way| way.amount).sum()).max(f64::MIN_POSITIVE);
        let left = (WIDTH - GAP) / 2.0 - PILE;
        let right = (WIDTH + GAP) / 2.0;
        let room = left - REACH - MARGIN;
        let heads = [&words.brings, &words.takes].map(|head| wrap(head, WIDTH / 2.0 - 2.0 * MARGIN));
        let top = 4.0 + LINE * heads.iter().map(Vec::len).max().unwrap_or(0) as f64 + 8.0;
        let bottom = top + TALL;
        let sides = [(&self.brings, 0), (&self.takes, 3)];
        let sides = sides.map(|(ways, first)| parts(ways, first, top, total, room));
        let words_end = sides.iter().flatten().map(|part| part.at + LINE * part.lines.len() as f64);
        let end = words_end.fold(bottom, f64::max);
        let scale = wrap(&words.scale, WIDTH - 2.0 * MARGIN);
        let mut canvas = Canvas::new(end + 12.0 + LINE * scale.len() as f64 + 6.0);
        for (head, (x, anchor)) in heads.iter().zip([(MARGIN, Anchor::Start), (WIDTH - MARGIN, Anchor::End)])
        {
            for (at, line) in head.iter().enumerate() {
                canvas.letters([x, 4.0 + 11.0 + LINE * at as f64], line, anchor, SMALL);
            }
        }
        for (parts, (x, side)) in sides.iter().zip([(left, Side::Left), (right, Side::Right)]) {
            for part in parts {
                part.draw(&mut canvas, x, side);
            }
        }
        // One height: what comes in goes out.
        canvas.guide([left, top], [right + PILE, top]);
        canvas.line([left - 4.0, bottom], [right + PILE + 4.0, bottom], 1.5, None);
        let middle = WIDTH / 2.0;
        for tier in [0.25, 0.5, 0.75] {
            arrow(&mut canvas, middle, top + tier * TALL);
        }
        for (at, line) in scale.iter().enumerate() {
            canvas.letters([middle, end + 12.0 + 11.0 + LINE * at as f64], line, Anchor::Middle, SMALL);
        }
        canvas.finish(&words.alternative)
    }
}

impl Part {
    fn draw(&self, canvas: &mut Canvas, x: f64, side: Side) {
        let tall = self.bottom - self.top;
        self.texture.fill(canvas, [x, self.top, PILE, tall]);
        let corners = [[x, self.top], [x + PILE, self.top], [x + PILE, self.bottom], [x, self.bottom]];
        canvas.path(&corners, 1.0, true, "none");
        let middle = f64::midpoint(self.top, self.bottom);
        let words = self.at + LINE * self.lines.len() as f64 / 2.0;
        let (edge, out, anchor) = match side {
            Side::Left => (x, x - REACH, Anchor::End),
            Side::Right => (x + PILE, x + PILE + REACH, Anchor::Start),
        };
        let bend = f64::midpoint(edge, out);
        canvas.polyline(&[[edge, middle], [bend, words], [f64::midpoint(bend, out), words]], 0.75, None);
        for (at, line) in self.lines.iter().enumerate() {
            canvas.letters([out, self.at + 11.0 + LINE * at as f64], line, anchor, SMALL);
        }
    }
}

/// Parts from the top of a pile down, their words beside them and apart from each other.
fn parts(ways: &[Way], first_texture: usize, top: f64, total: f64, room: f64) -> Vec<Part> {
    let (mut down, mut free_from) = (top, top);
    let mut parts = Vec::new();
    for (at, way) in ways.iter().enumerate() {
        let tall = way.amount / total * TALL;
        let lines: Vec<String> = wrap(&way.label, room).into_iter().chain(wrap(&way.said, room)).collect();
        let words = LINE * lines.len() as f64;
        let begin = (down + tall / 2.0 - words / 2.0).max(free_from);
        free_from = begin + words + BETWEEN;
        let texture = Texture::of(first_texture + at);
        parts.push(Part { texture, top: down, bottom: down + tall, lines, at: begin });
        down += tall;
    }
    // Words that were pushed below the pile move up again as far as there is room.
    let mut free_to = down.max(top + TALL);
    for part in parts.iter_mut().rev() {
        let words = LINE * part.lines.len() as f64;
        part.at = part.at.min(free_to - words).max(top);
        free_to = part.at - BETWEEN;
    }
    // Where there is none, they run on below.
    let mut free_from = top;
    for part in &mut parts {
        part.at = part.at.max(free_from);
        free_from = part.at + LINE * part.lines.len() as f64 + BETWEEN;
    }
    debug_assert!(parts.iter().all(|part| widest(&part.lines, SMALL) <= room + 1e-9));
    parts
}

fn arrow(canvas: &mut Canvas, x: f64, y: f64) {
    canvas.line([x - 8.0, y], [x + 8.0, y], 1.5, None);
    canvas.polyline(&[[x + 3.0, y - 4.0], [x + 8.0, y], [x + 3.0, y + 4.0]], 1.5, None);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn way(label: &str, amount: f64) -> Way {
        Way { label: label.into(), amount, said: format!("{amount:.2} kW") }
    }

    fn words() -> HeatBalanceWords {
        HeatBalanceWords {
            brings: "Brings heat: 10.00 kW".into(),
            takes: "Takes heat: 10.00 kW".into(),
            scale: "Each pile is 10.00 kW high".into(),
            alternative: "What brings <heat> and what takes it".into(),
        }
    }

    #[test]
    fn parts_are_as_tall_as_they_are_great() {
        let parts = parts(&[way("Birds", 6.0), way("Heaters", 3.0), way("Sun", 1.0)], 0, 50.0, 10.0, 100.0);
        let tall: Vec<f64> = parts.iter().map(|part| (part.bottom - part.top) / TALL).collect();
        for (got, want) in tall.iter().zip([0.6, 0.3, 0.1]) {
            assert!((got - want).abs() < 1e-12);
        }
        assert_eq!(parts[0].top, 50.0);
        assert!((parts[2].bottom - 50.0 - TALL).abs() < 1e-9);
    }

    #[test]
    fn little_ones_stand_together_and_nothing_is_lost() {
        let takes = vec![way("Walls", 9.7), way("Floor", 0.1), way("Litter", 0.2), way("None", 0.0)];
        let balance =
            HeatBalance::of(vec![way("Birds", 10.0)], takes, "little ones", |amount| amount.to_string());
        assert_eq!(balance.takes.len(), 3, "one little part keeps its name: {:?}", balance.takes);
        let takes = vec![way("Walls", 9.8), way("Floor", 0.1), way("Litter", 0.1)];
        let balance =
            HeatBalance::of(vec![way("Birds", 10.0)], takes, "little ones", |amount| amount.to_string());
        assert_eq!(balance.takes[1].label, "little ones");
        let sum: f64 = balance.takes.iter().map(|way| way.amount).sum();
        assert!((sum - 10.0).abs() < 1e-9);
        check(&balance.draw(&words()));
    }

    #[test]
    fn any_balance_can_be_drawn() {
        for count in 0..9 {
            for amount in [0.0, 1e-9, 0.3, 1e14, f64::NAN, -3.0, f64::INFINITY] {
                let ways: Vec<Way> = (0..count)
                    .map(|at| {
                        way("What the fresh air that comes through takes along", amount / f64::from(at + 1))
                    })
                    .collect();
                let balance = HeatBalance::of(ways.clone(), ways, "little", |amount| format!("{amount:.1e}"));
                check(&balance.draw(&words()));
            }
        }
    }
}
