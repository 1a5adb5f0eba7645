//! Who buys, on which days, and birds eaten at home.

use crate::luck::Luck;
use crate::scenario::{Prices, Scenario};

/// Somebody who buys.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Buyer {
    /// What they are called.
    pub name: &'static str,
    /// By what they pay, as the table of fields calls it.
    pub basis: &'static str,
    /// Days after which they pay the half they leave open; `None` where they pay at once.
    pub credit_days: Option<i32>,
}

/// The trader, the school kitchen, whoever comes to the gate.
pub const BUYERS: [Buyer; 3] = [
    Buyer { name: "Market trader Lungu", basis: "live-kg", credit_days: None },
    Buyer { name: "School kitchen", basis: "live-kg", credit_days: Some(7) },
    Buyer { name: "Farm gate", basis: "bird", credit_days: None },
];

/// Birds that left alive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sale {
    /// Which of [`BUYERS`]; `None` for birds eaten at home.
    pub buyer: Option<usize>,
    /// How many.
    pub birds: u32,
    /// Their weight alive, kg.
    pub live_kg: f64,
    /// What they brought.
    pub income: f64,
}

/// Days from the first sale to the last.
pub(crate) const SALE_DAYS: i32 = 4;

/// Who takes birds on a day, and how many of those alive: the trader comes twice, the last ones are eaten at home.
pub(crate) fn taken(scenario: &Scenario, age: i32, alive: u32, luck: &mut Luck) -> Vec<(Option<usize>, u32)> {
    let share = |share: f64| (share * f64::from(alive)) as u32;
    let gate = luck.whole(3, 12) as u32;
    let mut taken = match age - scenario.sale_age {
        -2 | -1 => vec![(Some(2), gate)],
        0 => vec![(Some(0), share(0.45)), (Some(2), gate)],
        1 => vec![(Some(1), share(0.25)), (Some(2), gate)],
        2 => vec![(Some(2), 2 * gate)],
        3 => vec![(Some(0), share(0.85))],
        SALE_DAYS => vec![(Some(2), alive.saturating_sub(3)), (None, alive.min(3))],
        _ => Vec::new(),
    };
    let mut left = alive;
    for (_, birds) in &mut taken {
        *birds = (*birds).min(left);
        left -= *birds;
    }
    taken.retain(|(_, birds)| *birds > 0);
    taken
}

/// What birds of a mean weight bring; whole money, as people pay.
pub(crate) fn sale(buyer: Option<usize>, birds: u32, mean_g: f64, prices: &Prices, luck: &mut Luck) -> Sale {
    let mean_g = mean_g * (1.0 + 0.09 * luck.normal() / f64::from(birds.max(1)).sqrt());
    // The scale of the market shows half kilograms.
    let live_kg = (2.0 * f64::from(birds) * mean_g / 1000.0).round() / 2.0;
    let income = match buyer {
        Some(0) => live_kg * prices.trader_kg,
        Some(1) => live_kg * prices.school_kg,
        Some(_) => f64::from(birds) * prices.gate_bird,
        None => 0.0,
    };
    Sale { buyer, birds, live_kg, income: income.round() }
}
