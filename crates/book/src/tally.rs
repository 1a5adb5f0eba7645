//! What a batch's entries add up to: birds that came and went, feed that came and was eaten.

use crate::record::Record;

/// The feeds that are told apart, in the order they are eaten.
pub const PHASES: [&str; 4] = ["starter", "grower", "finisher", "last"];

/// The sums of a subject's entries up to the end of a day. Only what was written counts: a day without an entry adds
/// nothing, which is not the same as a day on which nothing happened.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Tally {
    /// Live chicks placed: counted, less dead on arrival, less culled as weak. `None` until somebody wrote it.
    pub placed: Option<f64>,
    /// Birds found dead and birds culled.
    pub lost: f64,
    /// Birds that left in another way: eaten at home, given, stolen.
    pub out: f64,
    /// Birds sold.
    pub sold: f64,
    /// Feed delivered, kg, by phase.
    pub delivered_kg: [f64; 4],
    /// Feed given, kg, by phase.
    pub given_kg: [f64; 4],
    /// Feed spoiled, kg, by phase.
    pub spoiled_kg: [f64; 4],
}

impl Tally {
    /// Birds left alive, as far as entries tell; `None` until chicks were placed. Negative where more went than came.
    pub fn alive(&self) -> Option<f64> {
        self.placed.map(|placed| placed - self.lost - self.out - self.sold)
    }

    /// Feed left of a phase, kg; negative where more went than came.
    pub fn left_kg(&self, phase: usize) -> f64 {
        let at = |amounts: &[f64; 4]| amounts.get(phase).copied().unwrap_or_default();
        at(&self.delivered_kg) - at(&self.given_kg) - at(&self.spoiled_kg)
    }

    /// Adds what an entry says.
    pub(crate) fn take(&mut self, record: &Record) {
        let number = |key: &str| record.number(key).unwrap_or_default();
        match record.entry().kind.as_str() {
            "chicks-placed" => {
                // Written by a newer program it says nothing here, which is not that no chick came.
                let counted = record.number("counted");
                self.placed =
                    counted.map(|counted| counted - number("dead_on_arrival") - number("weak_culled"));
            }
            "deaths" => self.lost += number("dead") + number("culled"),
            "birds-out" => self.out += number("birds"),
            "sale" => self.sold += number("birds"),
            "feed-delivered" => {
                self.feed(record, number("bags") * number("bag_kg"), |tally| &mut tally.delivered_kg)
            }
            "feed-given" => self.feed(record, number("feed_kg"), |tally| &mut tally.given_kg),
            "feed-spoiled" => self.feed(record, number("feed_kg"), |tally| &mut tally.spoiled_kg),
            _ => {}
        }
    }

    fn feed(&mut self, record: &Record, amount_kg: f64, which: fn(&mut Tally) -> &mut [f64; 4]) {
        if let Some(phase) = phase_of(record)
            && let Some(sum) = which(self).get_mut(phase)
        {
            *sum += amount_kg;
        }
    }
}

/// Which feed an entry is about, as its place among [`PHASES`].
pub fn phase_of(record: &Record) -> Option<usize> {
    let phase = record.word("phase")?;
    PHASES.iter().position(|known| *known == phase)
}
