//! What is done once a week or on its own day: weighing, the litter, a count, what others ask and pay.

use super::{Pen, stepped, text};
use crate::birds::SPOTS;
use crate::life::Day;

/// Days on which birds are weighed.
const WEIGHED_ON: [i32; 6] = [7, 14, 21, 28, 35, 40];

/// From this day on cocks and hens are told apart, with a slip now and then.
const SEXED_FROM: i32 = 28;
const SLIP: f64 = 0.04;

/// How often the first bird caught at a spot is the slower, that is the heavier, of two.
const SLOWER: f64 = 0.15;

impl Pen<'_> {
    pub(super) fn weekly(&mut self, day: &Day) {
        if WEIGHED_ON.contains(&day.age) {
            self.weighing(day);
        }
        if day.age >= 14 && day.age % 7 == 0 {
            self.litter(day);
        }
        if day.age % 7 == 4 {
            self.price_seen(day);
        }
        if day.age == 21 {
            // Counted while they were driven from one half to the other.
            let alive = day.alive - day.deaths.all();
            self.write(day.age, 15, "count-found", vec![("birds", alive.to_string())]);
        }
    }

    fn weighing(&mut self, day: &Day) {
        let step_g = if day.age < 14 { 2.0 } else { 10.0 };
        let (mut weights, mut spots, mut sexes) = (Vec::new(), Vec::new(), Vec::new());
        for (spot, clock) in SPOTS.iter().zip(day.clocks) {
            for _ in 0..self.luck.whole(14, 19) {
                let (weight_g, is_hen) = self.caught(clock);
                weights.push(stepped(weight_g, step_g));
                spots.push(text(spot));
                sexes.push(text(if is_hen != self.luck.happens(SLIP) { "hen" } else { "cock" }));
            }
        }
        let mut typed = vec![("weights_g", weights), ("spots", spots)];
        if day.age >= SEXED_FROM {
            typed.push(("sexes", sexes));
        }
        typed.push(("scale_step_g", vec![stepped(step_g, 1.0)]));
        typed.push(("hour_h", vec![text("8")]));
        self.write_lists(day.age, 8, "weighing", typed);
    }

    /// A bird on the scale: its weight, g, and whether it is a hen.
    fn caught(&mut self, clock: f64) -> (f64, bool) {
        let mut any = || {
            let (bird, is_hen) = self.life.brood.any(&mut self.luck);
            (bird.weight_g(clock), is_hen)
        };
        let (one, other) = (any(), any());
        if self.luck.happens(SLOWER) && other.0 > one.0 { other } else { one }
    }

    fn litter(&mut self, day: &Day) {
        for (at, spot) in SPOTS.iter().enumerate() {
            let is_damp = day.inside.driest_percent + 6.0 * self.luck.normal() + 4.0 * at as f64 > 66.0;
            let handful = if is_damp { "holds-together" } else { "falls-apart" };
            let depth_cm = 7.0 - 0.03 * f64::from(day.age) + 0.4 * self.luck.normal();
            let typed =
                vec![("spot", text(spot)), ("handful", text(handful)), ("depth_cm", stepped(depth_cm, 0.5))];
            self.write(day.age, 9, "litter-check", typed);
        }
    }

    fn price_seen(&mut self, day: &Day) {
        let price = self.scenario.prices.trader_kg * self.luck.factor(0.03);
        let typed = vec![
            ("what", text("live-bird")),
            ("price", stepped(price, 0.5)),
            ("per", text("kg")),
            ("where", text("Town market")),
        ];
        self.write(day.age, 13, "price-seen", typed);
    }
}
