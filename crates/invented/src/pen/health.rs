//! Vaccines, medicine, visitors, and what went wrong.

use super::{Pen, stepped, text};
use crate::life::Day;
use crate::scenario::Event;

/// The programme: day of age and vaccine.
const PROGRAMME: [(i32, &str); 4] = [(7, "Newcastle"), (12, "Gumboro"), (18, "Gumboro"), (21, "Newcastle")];

/// Days of a course of medicine, and days to wait after it.
const COURSE: i32 = 5;
const WAIT: i32 = 5;

impl Pen<'_> {
    /// The programme, written down before the chicks come.
    pub(super) fn programme(&mut self) {
        let line = |(age, vaccine): &(i32, &str)| format!("day {age}: {vaccine}, drinking water");
        let lines = PROGRAMME.iter().map(line).collect::<Vec<_>>().join("\n");
        let typed =
            vec![("arrival_day", text("0")), ("lines", lines), ("from", text("District veterinary office"))];
        self.write(-3, 15, "vaccine-programme", typed);
    }

    pub(super) fn health(&mut self, day: &Day) {
        if let Some((_, vaccine)) = PROGRAMME.iter().find(|(age, _)| *age == day.age) {
            self.vaccine(day, vaccine);
        }
        self.visitors(day);
        for event in self.scenario.events.clone() {
            self.mishap(day, event);
        }
        if self.luck.happens(0.04) {
            let hours = self.luck.between(0.5, 6.0);
            let typed = vec![("hours_h", stepped(hours, 0.5)), ("from_h", text("18"))];
            self.write(day.age, 21, "power-cut", typed);
        }
    }

    fn vaccine(&mut self, day: &Day, vaccine: &str) {
        // A bottle holds 500 or 1000 doses, and an opened one is used up.
        let doses = day.alive.div_ceil(500) * 500;
        let expires = self.scenario.placement.plus_days(200 + self.luck.whole(0, 90));
        let typed = vec![
            ("vaccine", text(vaccine)),
            ("route", text("drinking-water")),
            ("doses", doses.to_string()),
            ("water_l", stepped((day.water_l * 0.2).max(0.5), 0.5)),
            ("lot", format!("T{}", self.luck.whole(1_000, 9_999))),
            ("expires", expires.to_string()),
            ("hour_h", text("6")),
            // By the label of the invented bottle.
            ("withdrawal_d", text("0")),
        ];
        self.write(day.age, 8, "vaccine-given", typed);
    }

    fn visitors(&mut self, day: &Day) {
        let (name, from, other_birds) = match day.age {
            6 => ("Students of the second year", "College", "no"),
            19 => ("Veterinary assistant", "District veterinary office", "yes"),
            27 => ("Mrs Banda", "Next farm", "yes"),
            _ => return,
        };
        let typed = vec![
            ("name", text(name)),
            ("from", text(from)),
            ("boots", text("yes")),
            ("other_birds", text(other_birds)),
        ];
        self.write(day.age, 11, "visitor", typed);
    }

    fn mishap(&mut self, day: &Day, event: Event) {
        match event {
            Event::DrinkerLineFails { day: dry } if dry == day.age => {
                self.note(dry, "No water in the line at the far end since the night, mended at four.");
            }
            Event::HotSpell { first, .. } if first == day.age => {
                self.note(first, "Very hot. Curtains down on both sides, water changed at noon.");
            }
            Event::LateFeed { .. } => {
                if let Some(cart) = self.life.deliveries.iter().find(|cart| cart.late > 0)
                    && cart.age == day.age
                {
                    self.note(day.age, &format!("The feed came {} days late.", cart.late));
                }
            }
            Event::SickSpell { first, days } => self.sick_spell(day, first, days),
            _ => {}
        }
    }

    fn sick_spell(&mut self, day: &Day, first: i32, days: i32) {
        if day.age == first + 1 {
            self.note(
                day.age,
                "Sneezing at the far end, some sit with closed eyes. Called the veterinary office.",
            );
        }
        if day.age != first + days / 2 {
            return;
        }
        let typed = vec![
            ("medicine", text("Oxytetracycline in the water")),
            ("last_day", self.day(day.age + COURSE - 1).to_string()),
            ("hour_h", text("9")),
            ("withdrawal_d", WAIT.to_string()),
            ("amount", text("as on the label")),
            ("ordered_by", text("District veterinary office")),
            ("reason", text("Sneezing, closed eyes")),
        ];
        self.write(day.age, 10, "medicine-given", typed);
    }
}
