//! What is not known yet: each part and sheet names the questions it waits for, and no others.

use advice::unanswered;

use super::Shown;
use crate::document::{Block, Steps};
use crate::say;
use crate::words::key_part;

/// A part of a plan: the key of its name, and what has to be known for it.
pub(super) struct Part {
    pub(super) name: &'static str,
    pub(super) needs: &'static [&'static str],
}

pub(super) const SPACE: Part =
    Part { name: "question-fit", needs: &["space.birds_allowed", "space.birds_at_sale"] };
/// The same where birds leave over several days.
pub(super) const SPACE_IN_PARTS: Part =
    Part { name: "question-fit", needs: &["space.fullest_density", "space.limit"] };
pub(super) const DAYS: Part =
    Part { name: "question-days", needs: &["batch.placement", "batch.birds_alive", "growth.weight"] };
pub(super) const EQUIPMENT: Part = Part { name: "question-equipment", needs: &["space.drinkers"] };
pub(super) const GUARD: Part = Part {
    name: "question-guard",
    needs: &["guard.rings", "guard.strips_per_ring", "guard.sheets", "guard.overlap_asked"],
};
pub(super) const MIX: Part = Part { name: "question-mix", needs: &["disinfectant.product_per_load"] };
pub(super) const LITTER: Part = Part { name: "question-litter", needs: &["litter.bags"] };
pub(super) const FEED: Part = Part { name: "question-feed", needs: &["feed.bags"] };
pub(super) const WATER: Part = Part { name: "question-water", needs: &["water.peak_day"] };
pub(super) const HEAT: Part = Part { name: "question-heat", needs: &["brooding.heat"] };
pub(super) const MONEY: Part =
    Part { name: "question-money", needs: &["money.chicks", "feed.cost", "money.cost_per_bird"] };
pub(super) const COUNTDOWN: Part =
    Part { name: "question-countdown", needs: &["batch.placement", "sale.first_age"] };

/// What is bought for a batch, and what it costs.
pub(super) const BOUGHT: &[&Part] = &[
    &Part { name: "purchase-chicks", needs: &["batch.chicks", "batch.placement"] },
    &Part { name: "shopping-feed", needs: &["feed.bags"] },
    &Part { name: "purchase-litter", needs: &["litter.bags"] },
    &Part { name: "purchase-disinfectant", needs: &["disinfectant.to_buy"] },
    &Part { name: "purchase-guard", needs: &["guard.sheets_to_buy"] },
    &Part { name: "purchase-fuel", needs: &["brooding.fuel_total"] },
    &Part { name: "shopping-prices", needs: &["money.chicks", "feed.cost"] },
];

/// More questions than this in one sentence are only counted.
const IN_A_SENTENCE: usize = 8;

impl Shown<'_> {
    /// The questions that a part waits for, as they are asked.
    pub(super) fn unanswered(&self, part: &Part) -> Vec<String> {
        let keys = unanswered::questions(&self.plan.answers, &self.plan.outcome, part.needs);
        keys.into_iter().map(|key| self.question(key)).collect()
    }

    /// A question as it is asked; what it costs is asked for under the name of the thing alone.
    fn question(&self, key: &str) -> String {
        let label = self.words.plain(&format!("field-{}", key_part(key)));
        match key.split_once('.') {
            Some(("prices", _)) => say!(self.words, "price-of", what = label),
            _ => label,
        }
    }

    /// What still has to be answered before a part can be worked out, and what comes then.
    pub(super) fn waiting(&self, key: &str, part: &Part) -> Block {
        let questions = self.unanswered(part);
        let more = questions.len().saturating_sub(IN_A_SENTENCE);
        Block::Note(say!(
            self.words,
            "answer-first",
            count = questions.len() as f64,
            questions = questions[..questions.len() - more].join("; "),
            more_count = more as f64,
            more = more.to_string(),
            then = self.words.plain(key),
        ))
    }

    /// What a sheet that rests on a part says in its place.
    pub(super) fn lacking(&self, key: &str, part: &Part) -> Vec<Block> {
        let questions = self.to_answer("to-answer", &[part]);
        if questions.is_empty() { vec![self.waiting(key, part)] } else { questions }
    }

    /// Every question of some parts, each once, below the name of the first part that asks it; nothing while all of them are
    /// answered.
    pub(super) fn to_answer(&self, heading: &'static str, parts: &[&Part]) -> Vec<Block> {
        let mut asked = Vec::new();
        let mut items = Vec::new();
        for part in parts {
            let questions = self.unanswered(part);
            if questions.is_empty() {
                continue;
            }
            let new: Vec<String> = questions.into_iter().filter(|one| !asked.contains(one)).collect();
            let why = match new.is_empty() {
                true => self.words.plain("to-answer-above"),
                false => new.join("; "),
            };
            items.push((self.words.plain(part.name), why));
            asked.extend(new);
        }
        if items.is_empty() {
            return Vec::new();
        }
        vec![self.heading(heading), Block::Steps(Steps { ordered: false, ticks: false, items })]
    }
}
