//! Odd weights, asked about and never dropped.

use advice::weighing::Odd;
use quantity::Unit;

use super::Said;
use crate::document::{Block, Steps};
use crate::{say, show};

/// So many are listed; more are no slips of a pen.
const LISTED: usize = 8;

impl Said<'_> {
    /// Every odd weight with what it may be a slip of; nothing where none is odd.
    pub(super) fn odd(&self) -> Vec<Block> {
        let odd = self.weighing.odd();
        if odd.is_empty() {
            return Vec::new();
        }
        let text = self.words.plain("odd-weights-heading");
        let items = odd.iter().take(LISTED).map(|one| self.one_odd(one)).collect();
        vec![
            Block::Heading { level: 3, text, anchor: "odd-weights" },
            Block::Steps(Steps { ordered: false, ticks: false, items }),
        ]
    }

    fn one_odd(&self, odd: &Odd) -> (String, String) {
        let grams = |weight| show::quantity_short(weight, Unit::Gram, self.viewer);
        let which = (odd.at + 1).to_string();
        let said = say!(self.words, "odd-weight", which = which, weight = grams(odd.weight));
        let slips = odd.slips.iter().map(|(slip, meant)| {
            let key = format!("odd-slip-{}", slip.name());
            self.words.say(&key, &[("meant", grams(meant.round()).into())])
        });
        let why = slips.collect::<Vec<_>>().join(" ");
        (said, if why.is_empty() { self.words.plain("odd-no-slip") } else { why })
    }
}
