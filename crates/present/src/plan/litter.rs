//! How much litter, and when?

use super::*;

impl Shown<'_> {
    pub(super) fn litter(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-litter")];
        let Some(bags) = self.value("litter.bags") else {
            blocks.push(self.waiting("waiting-litter", &waiting::LITTER));
            return blocks;
        };
        let volume = self.value("litter.volume").unwrap_or_default();
        let note = match self.value("litter.spread_date") {
            Some(day) => say!(self.words, "litter-lead-note", volume = volume, day = day),
            None => volume,
        };
        blocks.push(Block::Lead {
            label: working::label("litter.bags", self.viewer),
            value: say!(
                self.words,
                "litter-lead",
                count = self.number("litter.bags").unwrap_or_default(),
                bags = bags,
            ),
            note,
        });
        blocks.extend(self.findings(&["litter"]));
        blocks.extend(self.rows(&[
            "litter.bags",
            "litter.volume",
            "litter.mass",
            "litter.spread_date",
            "litter.cost",
        ]));
        blocks.push(Block::Caution(self.caution("litter", Level::Care, 4)));
        blocks
    }
}
