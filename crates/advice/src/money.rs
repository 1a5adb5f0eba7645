//! What was spent and what came in over some days, as the book of one batch has it.

use quantity::CivilDay;

use crate::diary::{Diary, Noted};

/// What the entries of one kind come to in money.
#[derive(Clone, Debug, PartialEq)]
pub struct Sum {
    /// The kind of entry.
    pub kind: &'static str,
    /// In all, of those that say it, in the farm's money.
    pub amount: f64,
    /// What of it was not paid on the day: bought or sold on credit.
    pub owed: f64,
    /// Entries that do not say what they cost.
    pub unpriced: usize,
}

/// The kinds that spend money, and those that bring it.
const SPENT: [&str; 4] = ["chicks-placed", "feed-delivered", "purchase", "cost"];
const RECEIVED: [&str; 2] = ["sale", "litter-sold"];

/// What was spent from one day to another, both with, by kind.
pub fn spent(diary: &Diary, from: CivilDay, to: CivilDay) -> Vec<Sum> {
    sums(&SPENT, diary, from, to)
}

/// What was sold from one day to another, both with, by kind.
pub fn received(diary: &Diary, from: CivilDay, to: CivilDay) -> Vec<Sum> {
    sums(&RECEIVED, diary, from, to)
}

fn sums(kinds: &[&'static str], diary: &Diary, from: CivilDay, to: CivilDay) -> Vec<Sum> {
    let sum = |kind: &&'static str| {
        let mut sum = Sum { kind, amount: 0.0, owed: 0.0, unpriced: 0 };
        let entries: Vec<&Noted> =
            diary.of_kind(kind).filter(|note| (from..=to).contains(&note.day)).collect();
        for note in &entries {
            match amount(note) {
                Some(amount) => {
                    sum.amount += amount;
                    sum.owed += owed(note, amount);
                }
                None => sum.unpriced += 1,
            }
        }
        (!entries.is_empty()).then_some(sum)
    };
    kinds.iter().filter_map(sum).collect()
}

fn amount(note: &Noted) -> Option<f64> {
    match note.kind {
        "feed-delivered" => Some(note.number("bags")? * note.number("price_each")?),
        "sale" | "litter-sold" => note.number("income"),
        _ => note.number("cost"),
    }
}

/// What of an amount was not paid: nothing, unless the entry says that it was on credit or in part.
fn owed(note: &Noted, amount: f64) -> f64 {
    match note.text("payment") {
        Some("on-credit" | "part") => (amount - note.number("paid_now").unwrap_or_default()).max(0.0),
        _ => 0.0,
    }
}
