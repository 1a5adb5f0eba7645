//! Why do they grow unevenly?

use advice::uneven::{Ranked, Uneven};
use quantity::Unit;

use super::Page;
use crate::document::{Block, Steps};
use crate::uneven::evenness_name;
use crate::{say, show};

/// A cause that the book hardly speaks of is not listed.
const LISTED_FROM: f64 = 0.25;

impl Page<'_> {
    pub(super) fn uneven(&self) -> Vec<Block> {
        let heading = self.heading("uneven-heading");
        let Some(uneven) = Uneven::of(self.walk) else { return vec![heading, self.note("uneven-waiting")] };
        let mut blocks = vec![heading];
        let name = evenness_name(uneven.evenness);
        blocks.push(Block::Paragraph(say!(
            self.words,
            &format!("uneven-{name}"),
            day = show::day(uneven.weighed_on, self.viewer)
        )));
        blocks.extend(self.uneven_parts(&uneven).map(Block::Paragraph));
        blocks.extend(self.uneven_causes(&uneven));
        blocks.push(self.note("uneven-note"));
        blocks
    }

    fn uneven_parts(&self, uneven: &Uneven) -> Option<String> {
        let parts = uneven.parts.as_ref()?;
        let (between, between_ends) = parts.between_variation()?;
        let (within, within_ends) = parts.within_variation()?;
        let percent = |share: f64| show::quantity(100.0 * share, Unit::Percent, 1, self.viewer);
        Some(say!(
            self.words,
            "uneven-parts",
            between = percent(between),
            between_low = percent(between_ends.0),
            between_high = percent(between_ends.1),
            within = percent(within),
            within_low = percent(within_ends.0),
            within_high = percent(within_ends.1),
        ))
    }

    /// The likely causes, else those that the book speaks of at all, each with what to check.
    fn uneven_causes(&self, uneven: &Uneven) -> Vec<Block> {
        let item = |one: &Ranked| {
            let name = one.cause.name();
            (
                self.words.plain(&format!("uneven-cause-{name}")),
                self.words.plain(&format!("uneven-check-{name}")),
            )
        };
        let steps = |causes: &[Ranked]| {
            Block::Steps(Steps { ordered: true, ticks: false, items: causes.iter().map(item).collect() })
        };
        let speaks = |one: &&Ranked| one.strength >= LISTED_FROM && !uneven.named.contains(one);
        let others: Vec<Ranked> = uneven.ranked.iter().filter(speaks).copied().collect();
        let mut blocks = Vec::new();
        if !uneven.named.is_empty() {
            blocks.extend([Block::Paragraph(self.words.plain("uneven-likely")), steps(&uneven.named)]);
        } else {
            blocks.push(Block::Paragraph(self.words.plain("uneven-no-cause")));
        }
        if !others.is_empty() {
            let title = self.words.plain("uneven-others");
            blocks.push(Block::Fold { title, blocks: vec![steps(&others)] });
        }
        blocks
    }
}
