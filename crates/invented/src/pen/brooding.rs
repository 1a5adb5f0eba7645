//! The chicks as they came, and how they do under heat.

use super::{Pen, money, stepped, text};
use crate::house;
use crate::life::Day;

/// Hour the lorry comes.
const HOUR: i32 = 10;

/// Chicks of a box as it is sold, and an empty box, g.
const A_BOX: u32 = 100;
const EMPTY_G: f64 = 620.0;

/// Chicks whose crop is felt.
const FELT: u32 = 60;

/// The last day on which single chicks are looked at.
const CHECKED_UNTIL: i32 = 3;

impl Pen<'_> {
    pub(super) fn arrival(&mut self) {
        let (came, chicks) = (self.life.arrival, self.scenario.chicks);
        let boxes = chicks.div_ceil(A_BOX);
        let hatch_g = self.life.brood.hatch_g();
        let a_box_g = EMPTY_G + hatch_g * f64::from(came.counted) / f64::from(boxes);
        let weighed = boxes.min(5);
        let weights = (0..weighed).map(|_| stepped(a_box_g * self.luck.factor(0.012), 5.0)).collect();
        let one = |text: String| vec![text];
        let typed = vec![
            ("counted", one(came.counted.to_string())),
            ("dead_on_arrival", one(came.dead.to_string())),
            ("weak_culled", one(came.weak.to_string())),
            ("ordered", one(chicks.to_string())),
            ("paid_for", one(chicks.to_string())),
            ("boxes", one(boxes.to_string())),
            ("box_weights_g", weights),
            ("box_empty_g", one(stepped(EMPTY_G, 1.0))),
            ("chicks_per_box", one((came.counted / boxes).to_string())),
            ("hour_h", one(HOUR.to_string())),
            ("parent_weeks", one(stepped(came.parent_weeks, 1.0))),
            ("vaccinated", one(text("Marek, Newcastle"))),
            ("hatchery", one(text("Valley Hatchery"))),
            ("cost", one(money(f64::from(chicks) * self.scenario.prices.chick))),
        ];
        self.write_lists(0, HOUR, "chicks-placed", typed);
        for (hours, chance) in [(2, 0.76), (8, 0.85), (24, 0.965)] {
            let full = self.luck.of_many(FELT, chance);
            let typed =
                vec![("hours_h", hours.to_string()), ("felt", FELT.to_string()), ("full", full.to_string())];
            let after = HOUR + hours;
            self.write(after / 24, after % 24, "crop-fill", typed);
        }
    }

    pub(super) fn brooding(&mut self, day: &Day) {
        let hours: [i32; 2] = if day.age == 0 { [14, 21] } else { [6, 21] };
        for hour in hours.into_iter().filter(|_| day.age <= CHECKED_UNTIL) {
            let spread = self.spread(day);
            let at_chicks_c = house::wanted_c(day.age) + 0.8 * self.luck.normal();
            let typed = vec![
                ("hour_h", hour.to_string()),
                ("spread", text(spread)),
                ("vent_c", stepped(40.0 + 0.25 * self.luck.normal(), 0.1)),
                ("at_chicks_c", stepped(at_chicks_c, 0.5)),
            ];
            self.write(day.age, hour, "chick-check", typed);
        }
    }
}
