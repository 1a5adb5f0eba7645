//! How chicks lie round the heat, from above: what a grower sees on opening the door, drawn to choose from.

use std::f64::consts::PI;

use super::{Canvas, PAPER, SHADE};

/// How wide and tall a drawing is.
pub const SIDE: f64 = 110.0;

const MIDDLE: f64 = SIDE / 2.0;
/// The guard.
const GUARD: f64 = 51.0;
/// The brooder.
const HEAT: f64 = 11.0;
/// A chick's body.
const CHICK: f64 = 3.2;
/// Turns from one chick to the next so that no rows show.
const GOLDEN: f64 = 2.399_963;

/// How chicks lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spread {
    /// Evenly spread.
    Even,
    /// Huddled under the heat.
    UnderTheHeat,
    /// Pushed to the guard.
    AwayFromTheHeat,
    /// To one side, from a draught, a light or a noise.
    ToOneSide,
    /// Apart, beaks open, wings off the body.
    Panting,
}

/// A chick: where its body is, and which way it looks.
struct Chick {
    at: [f64; 2],
    looks: f64,
}

impl Spread {
    /// All of them, in the order of the table of fields.
    pub const ALL: [Spread; 5] =
        [Spread::Even, Spread::UnderTheHeat, Spread::AwayFromTheHeat, Spread::ToOneSide, Spread::Panting];

    /// The word of the book.
    pub fn word(self) -> &'static str {
        match self {
            Spread::Even => "even",
            Spread::UnderTheHeat => "under-the-heat",
            Spread::AwayFromTheHeat => "away-from-the-heat",
            Spread::ToOneSide => "to-one-side",
            Spread::Panting => "panting",
        }
    }

    /// From that word.
    pub fn from_word(word: &str) -> Option<Spread> {
        Spread::ALL.into_iter().find(|spread| spread.word() == word)
    }

    /// The drawing; without an `alternative` it is left to the words beside it, and not read out.
    pub fn draw(self, alternative: &str) -> String {
        let mut canvas = Canvas::new(SIDE);
        canvas.circle([MIDDLE, MIDDLE, GUARD], PAPER, 2.0, None);
        canvas.circle([MIDDLE, MIDDLE, HEAT], SHADE, 1.2, None);
        for angle in [0.25, 0.75, 1.25, 1.75] {
            let spoke = |radius: f64| round([MIDDLE, MIDDLE], radius, angle * PI);
            canvas.line(spoke(3.0), spoke(HEAT - 2.0), 1.0, None);
        }
        if self == Spread::ToOneSide {
            draught(&mut canvas);
        }
        for chick in self.chicks() {
            chick.draw(&mut canvas, self == Spread::Panting);
        }
        canvas.finish_tile(SIDE, alternative)
    }

    fn chicks(self) -> Vec<Chick> {
        let places = |count: i32, centre: [f64; 2], from: f64, to: f64| {
            (0..count)
                .map(|at| {
                    let share = (f64::from(at) + 0.5) / f64::from(count);
                    let radius = (from * from + share * (to * to - from * from)).sqrt();
                    let angle = GOLDEN * f64::from(at);
                    Chick { at: round(centre, radius, angle), looks: angle * 1.7 }
                })
                .collect::<Vec<Chick>>()
        };
        let centre = [MIDDLE, MIDDLE];
        match self {
            Spread::Even => places(24, centre, HEAT + 5.0, GUARD - 7.0),
            Spread::UnderTheHeat => places(24, centre, 0.0, HEAT + 9.0),
            Spread::AwayFromTheHeat => at_the_guard(centre),
            Spread::ToOneSide => places(24, [MIDDLE + 25.0, MIDDLE], 0.0, GUARD - 32.0),
            Spread::Panting => places(14, centre, HEAT + 10.0, GUARD - 8.0),
        }
    }
}

fn at_the_guard(centre: [f64; 2]) -> Vec<Chick> {
    let count = 24;
    let chick = |at: i32| {
        let angle = 2.0 * PI * f64::from(at) / f64::from(count);
        Chick { at: round(centre, GUARD - 7.0 - f64::from(at % 2) * 5.0, angle), looks: angle }
    };
    (0..count).map(chick).collect()
}

impl Chick {
    fn draw(&self, canvas: &mut Canvas, pants: bool) {
        let [x, y] = self.at;
        canvas.circle([x, y, CHICK], "#fff", 1.0, None);
        let beak = |turn: f64, length: f64| round(self.at, length, self.looks + turn);
        if pants {
            // An open beak, and wings off the body.
            let wide = [(0.35, CHICK + 3.0), (-0.35, CHICK + 3.0), (1.9, CHICK + 2.5), (-1.9, CHICK + 2.5)];
            for (turn, length) in wide {
                canvas.line(beak(turn, CHICK), beak(turn, length), 1.1, None);
            }
        } else {
            canvas.line(beak(0.0, CHICK), beak(0.0, CHICK + 2.0), 1.3, None);
        }
    }
}

/// Three arrows of air from the left.
fn draught(canvas: &mut Canvas) {
    for y in [MIDDLE - 18.0, MIDDLE, MIDDLE + 18.0] {
        let (from, to) = (MIDDLE - 40.0, MIDDLE - 18.0);
        canvas.line([from, y], [to, y], 1.4, Some("4 2"));
        canvas.path(&[[to - 4.0, y - 3.0], [to, y], [to - 4.0, y + 3.0]], 1.4, false, "none");
    }
}

fn round([x, y]: [f64; 2], radius: f64, angle: f64) -> [f64; 2] {
    [x + radius * angle.cos(), y + radius * angle.sin()]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn distances(spread: Spread) -> Vec<f64> {
        let far = |chick: &Chick| (chick.at[0] - MIDDLE).hypot(chick.at[1] - MIDDLE);
        spread.chicks().iter().map(far).collect()
    }

    #[test]
    fn each_word_of_the_book_has_a_drawing_that_stays_inside() {
        for word in quantity::records::SPREADS {
            check(&Spread::from_word(word).unwrap().draw(word));
        }
        assert_eq!(quantity::records::SPREADS.len(), Spread::ALL.len());
    }

    #[test]
    fn chicks_lie_where_their_words_say() {
        assert!(distances(Spread::UnderTheHeat).iter().all(|far| *far < HEAT + 10.0));
        assert!(distances(Spread::AwayFromTheHeat).iter().all(|far| *far > 0.7 * GUARD));
        assert!(Spread::ToOneSide.chicks().iter().all(|chick| chick.at[0] > MIDDLE));
        let even = distances(Spread::Even);
        let near = even.iter().filter(|far| **far < 30.0).count();
        assert!((5..=15).contains(&near), "{near} of {} near the heat", even.len());
        for spread in Spread::ALL {
            assert!(distances(spread).iter().all(|far| *far + CHICK < GUARD), "{spread:?}");
        }
    }

    #[test]
    fn beside_its_words_it_is_not_read_out() {
        let tile = Spread::Even.draw("");
        assert!(tile.contains("aria-hidden=\"true\"") && !tile.contains("<title>"), "{tile}");
    }
}
