//! Who dies, and of what it looked.
//!
//! A hazard a bird and day: high for chicks, low then, and more with sickness and in an oven of a house. The luck of a batch
//! and of each day multiplies it, so that deaths are more spread than those of a fair coin.

use crate::birds::Brood;
use crate::house::Inside;
use crate::luck::Luck;
use crate::scenario::Event;

/// Birds lost on a day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Deaths {
    /// Found dead, of whatever cause.
    pub dead: u32,
    /// Culled by hand.
    pub culled: u32,
    /// Of the dead: small, smothered, with bad legs, sudden, sick. The rest looked of nothing.
    pub looked: [u32; 5],
}

impl Deaths {
    /// All that are gone.
    pub fn all(&self) -> u32 {
        self.dead + self.culled
    }
}

/// A day's hazard of a grown bird in a good house.
const HAZARD: f64 = 0.000_42;

/// Days of some birds.
pub(crate) struct Danger<'a> {
    pub(crate) age: i32,
    pub(crate) alive: u32,
    pub(crate) weight_g: f64,
    pub(crate) inside: &'a Inside,
    pub(crate) sickness: f64,
    /// The luck of the batch.
    pub(crate) batch: f64,
}

/// How sick a flock is on a day: 0 for well, up to 1 in the middle of a sick spell.
pub(crate) fn sickness(events: &[Event], age: i32) -> f64 {
    let of = |event: &Event| match *event {
        Event::SickSpell { first, days } if (first..first + days).contains(&age) => {
            let middle = f64::from(days - 1) / 2.0;
            1.0 - (f64::from(age - first) - middle).abs() / (middle + 1.0)
        }
        _ => 0.0,
    };
    events.iter().map(of).fold(0.0, f64::max)
}

/// The luck of a batch.
pub(crate) fn batch(luck: &mut Luck) -> f64 {
    luck.factor(0.35)
}

/// The dead of a day.
pub(crate) fn of_day(danger: &Danger, luck: &mut Luck) -> Deaths {
    let alive = f64::from(danger.alive);
    let of_chicks = 5.0 * (-f64::from(danger.age) / 3.0).exp();
    let of_heat = 0.000_5 * (danger.inside.warmest_c - 36.0).max(0.0) * danger.weight_g / 1000.0;
    let hazard = danger.batch * HAZARD * (1.0 + of_chicks + 9.0 * danger.sickness) + of_heat;
    let of_today = luck.factor(0.4);
    let dead = luck.times(alive * hazard * of_today).min(danger.alive);
    let culled = luck.times(alive * 0.000_12 * (1.0 + of_chicks)).min(danger.alive - dead);
    Deaths { dead, culled, looked: looked(danger, dead, luck) }
}

/// How the dead looked, each for itself.
fn looked(danger: &Danger, dead: u32, luck: &mut Luck) -> [u32; 5] {
    let mut looked = [0; 5];
    for _ in 0..dead {
        if let Some(at) = look(danger, luck) {
            looked[at] += 1;
        }
    }
    looked
}

/// How one looked; `None` for nothing in particular.
fn look(danger: &Danger, luck: &mut Luck) -> Option<usize> {
    let mut chances = if danger.age < 8 { [0.5, 0.15, 0.0, 0.05, 0.0] } else { [0.05, 0.0, 0.15, 0.45, 0.1] };
    if danger.sickness > 0.2 {
        chances = [0.05, 0.0, 0.05, 0.1, 0.65];
    }
    let mut left = luck.unit();
    chances.iter().position(|chance| {
        left -= chance;
        left < 0.0
    })
}

/// Chicks that came dead, and those too weak to keep.
pub(crate) fn on_arrival(counted: u32, luck: &mut Luck) -> (u32, u32) {
    let counted = f64::from(counted);
    (luck.times(0.002 * counted), luck.times(0.002 * counted))
}

/// Whether a brood is one of small chicks, which die more in their first days.
pub(crate) fn of_small_chicks(brood: &Brood) -> f64 {
    if brood.hatch_g() < 38.0 { 1.25 } else { 1.0 }
}
