//! The whole floor from above, with feeders and drinkers hanging over it.

use super::floor::Ground;
use super::legend::Legend;
use super::outfit::{Onto, Outfit, OutfitWords};

/// What is drawn; lengths in metres.
#[derive(Clone, Debug, PartialEq)]
pub struct Hall {
    /// Along the ridge.
    pub length: f64,
    /// Across.
    pub width: f64,
    /// What hangs over it, places from the left and upper corner.
    pub outfit: Outfit,
}

/// The words on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct HallWords {
    /// The length with its unit.
    pub length: String,
    /// The width with its unit.
    pub width: String,
    /// What the pieces are.
    pub outfit: OutfitWords,
    /// What it shows.
    pub alternative: String,
}

impl Hall {
    /// The drawing.
    pub fn draw(&self, words: &HallWords) -> String {
        let legend = Legend::of(self.outfit.legend(&words.outfit).into_iter());
        let ground = Ground::of(self.length, self.width, legend);
        let mut canvas = ground.begin(&words.length, &words.width);
        let onto = Onto { zero: [ground.left(), ground.top()], metres: [0.0, 0.0], scale: ground.scale() };
        self.outfit.draw(&mut canvas, onto);
        canvas.finish(&words.alternative)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    #[test]
    fn a_hall_keeps_its_words_apart() {
        let outfit = Outfit {
            feeders: vec![[1.0, 1.0], [17.0, 8.0]],
            drinkers: vec![[9.0, 4.5]],
            feeder: 0.38,
            drinker: 0.4,
            ..Outfit::default()
        };
        let words = HallWords {
            length: "18.00 m".into(),
            width: "9.00 m".into(),
            outfit: OutfitWords {
                brooder: String::new(),
                feeder: "Feeder, 0.38 m across, hanging".into(),
                drinker: "Bell drinker, 0.40 m across".into(),
            },
            alternative: "The house".into(),
        };
        let svg = Hall { length: 18.0, width: 9.0, outfit }.draw(&words);
        check(&svg);
        assert!(svg.contains("data-metres=\"17.000 8.000 0.190\""), "{svg}");
    }
}
