//! What every day has: the dead, feed, water, the air, a look around, fuel.

use super::{Pen, Typed, stepped, text};
use crate::house;
use crate::life::Day;
use crate::scenario::Heat;
use crate::store_room::{BAG_KG, PHASES};

/// Keys of the looks of the dead, as the deaths of a day count them.
const LOOKED: [&str; 5] = ["small_weak", "smothered", "legs", "sudden", "sick"];

/// Chances that the thermometer, and the water, are forgotten, and that the water is written next morning.
const NO_AIR: f64 = 0.04;
const NO_WATER: f64 = 0.02;
const LATE_WATER: f64 = 0.06;

impl Pen<'_> {
    pub(super) fn daily(&mut self, day: &Day) {
        self.deaths(day);
        self.feed(day);
        self.water(day);
        self.air(day);
        self.look(day);
        self.fuel(day);
        if day.age % 3 == 0 {
            self.write(day.age, round(day.age), "foot-bath", vec![("state", text("fresh"))]);
        }
    }

    fn deaths(&mut self, day: &Day) {
        let mut typed = vec![("dead", day.deaths.dead.to_string())];
        if day.deaths.culled > 0 {
            typed.push(("culled", day.deaths.culled.to_string()));
        }
        let looked = LOOKED.iter().zip(day.deaths.looked).filter(|(_, birds)| *birds > 0);
        typed.extend(looked.map(|(key, birds)| (*key, birds.to_string())));
        self.write(day.age, round(day.age), "deaths", typed);
    }

    fn feed(&mut self, day: &Day) {
        for (phase, kg) in PHASES.iter().zip(day.feed_kg).filter(|(_, kg)| *kg > 0.0) {
            let typed = vec![("phase", text(phase)), ("feed_kg", stepped(kg, 0.5))];
            self.write(day.age, 17, "feed-given", typed);
        }
        for (at, phase) in PHASES.iter().enumerate() {
            let bags = self.bags_opened(day.age, at) - self.bags_opened(day.age - 1, at);
            if bags > 0.0 {
                let typed = vec![("phase", text(phase)), ("bags", stepped(bags, 1.0))];
                self.write(day.age, 17, "feed-opened", typed);
            }
        }
    }

    /// Bags of a feed that were opened up to a day.
    fn bags_opened(&self, age: i32, phase: usize) -> f64 {
        let days = self.life.days.iter().take_while(|day| day.age <= age);
        (days.map(|day| day.feed_kg[phase]).sum::<f64>() / BAG_KG).ceil()
    }

    fn water(&mut self, day: &Day) {
        let (forgotten, late) = (self.luck.happens(NO_WATER), self.luck.happens(LATE_WATER));
        let typed = vec![("water_l", stepped(day.water_l, if day.water_l < 100.0 { 1.0 } else { 5.0 }))];
        if late {
            self.write_late(day.age, "water", typed);
        } else if !forgotten {
            self.write(day.age, 17, "water", typed);
        }
    }

    fn air(&mut self, day: &Day) {
        if self.luck.happens(NO_AIR) {
            return;
        }
        let inside = &day.inside;
        let typed: Vec<Typed> = vec![
            ("coldest_c", stepped(inside.coldest_c, 0.5)),
            ("warmest_c", stepped(inside.warmest_c, 0.5)),
            ("driest_percent", stepped(inside.driest_percent, 1.0)),
            ("dampest_percent", stepped(inside.dampest_percent, 1.0)),
        ];
        self.write(day.age, 16, "house-air", typed);
    }

    fn look(&mut self, day: &Day) {
        let typed = vec![
            ("spread", text(self.spread(day))),
            ("smell_entering", text(self.smell(day, 0.0))),
            ("smell_low", text(self.smell(day, 8.0))),
            ("handful", text(handful(day))),
            ("sound", text(sound(day))),
        ];
        self.write(day.age, round(day.age), "look", typed);
    }

    /// How the birds lie.
    pub(super) fn spread(&mut self, day: &Day) -> &'static str {
        if day.too_hot_c > 2.5 {
            "panting"
        } else if day.age < 12 && day.inside.coldest_c < house::wanted_c(day.age) - 2.5 {
            "under-the-heat"
        } else if self.luck.happens(0.05) {
            "to-one-side"
        } else {
            "even"
        }
    }

    /// How strongly it smells: with the age of the litter and the damp of the air, and some days more than others.
    fn smell(&mut self, day: &Day, lower_down: f64) -> &'static str {
        let strength = f64::from(day.age) + 0.3 * (day.inside.dampest_percent - 70.0) + lower_down;
        match strength + 5.0 * self.luck.normal() {
            strong if strong > 50.0 => "strong",
            slight if slight > 25.0 => "slight",
            _ => "none",
        }
    }

    fn fuel(&mut self, day: &Day) {
        if day.inside.fuel_kg < 0.25 {
            return;
        }
        let fuel = match self.scenario.house.heat {
            Heat::Charcoal => "charcoal",
            Heat::Gas => "lpg",
        };
        let typed = vec![("fuel", text(fuel)), ("amount_kg", stepped(day.inside.fuel_kg, 0.5))];
        self.write(day.age, round(day.age), "fuel-burnt", typed);
    }
}

/// The hour of the first round through the house: on the day they come the chicks are left alone until the evening.
fn round(age: i32) -> i32 {
    if age == 0 { 20 } else { 7 }
}

/// What litter does in the hand.
fn handful(day: &Day) -> &'static str {
    match (day.inside.driest_percent, day.age) {
        (driest, 0..=12) if driest < 28.0 => "dust",
        (driest, age) if driest > 62.0 && age > 24 => "holds-together",
        _ => "falls-apart",
    }
}

/// What the house sounds like.
fn sound(day: &Day) -> &'static str {
    if day.sickness > 0.3 {
        "sneezing"
    } else if day.is_dry {
        "loud-cheeping"
    } else if day.too_hot_c > 4.0 {
        "very-quiet"
    } else {
        "content"
    }
}
