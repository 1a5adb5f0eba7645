//! What the answer hangs on.

use model::buying::{Bought, Flip, flips};
use quantity::Answers;

use super::Wanted;

/// What may move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hanging {
    /// The rise of prices, percent a month beyond what was told.
    PriceRise,
    /// What a delivery costs.
    DeliveryFee,
    /// Interest, percent a year.
    Interest,
    /// How long feed keeps, days.
    Keeping,
}

impl Hanging {
    /// The stable name used in JSON and in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Hanging::PriceRise => "price-rise",
            Hanging::DeliveryFee => "delivery-fee",
            Hanging::Interest => "interest",
            Hanging::Keeping => "keeping",
        }
    }
}

/// Where other days or amounts become the cheapest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hang {
    /// What moves.
    pub what: Hanging,
    /// What it is now.
    pub told: f64,
    /// Where the answer flips.
    pub at: f64,
    /// Whether it flips as what moves rises, and not as it falls.
    pub rises: bool,
    /// Deliveries now.
    pub trips: usize,
    /// Deliveries beyond.
    pub trips_then: usize,
    /// What all costs there.
    pub cost_then: f64,
}

/// Price rises that are tried, percent a month either way.
const RISE: f64 = 30.0;
/// Interest that is tried, percent a year.
const INTEREST: f64 = 100.0;

/// All of them, as far as anything flips.
pub(super) fn all(answers: &Answers, wanted: &Wanted, bought: &Bought) -> Vec<Hang> {
    let prices = wanted.feeds.iter().flat_map(|eaten| &eaten.sizes).map(|(_, price)| *price);
    let dearest = prices.fold(0.0, f64::max);
    let told_interest = 100.0 * wanted.interest;
    let rise = |far: f64| flip(answers, wanted, bought, Hanging::PriceRise, (0.0, far));
    let fee = |far: f64| flip(answers, wanted, bought, Hanging::DeliveryFee, (wanted.fee, far));
    let interest = |far: f64| flip(answers, wanted, bought, Hanging::Interest, (told_interest, far));
    let rises = [rise(-lowest(answers, wanted).min(RISE)), rise(RISE)];
    let fees = [fee(0.0), fee(wanted.fee.max(dearest) * 4.0)];
    let interests = [interest(0.0), interest(INTEREST)].into_iter().filter(|_| wanted.interest > 0.0);
    let all = rises.into_iter().chain(fees).chain(interests).flatten();
    all.chain(by_label(answers, wanted, bought)).collect()
}

/// The fall a month that leaves every price above nothing.
fn lowest(answers: &Answers, wanted: &Wanted) -> f64 {
    let days = f64::from(wanted.last - wanted.first).max(1.0);
    let days_of = wanted.first..=wanted.last;
    let least = days_of.map(|day| super::prices::factor(answers, day)).fold(f64::INFINITY, f64::min);
    0.99 * 100.0 * least * 30.0 / days
}

fn flip(
    answers: &Answers,
    wanted: &Wanted,
    bought: &Bought,
    what: Hanging,
    (told, far): (f64, f64),
) -> Option<Hang> {
    let with = |value: f64| {
        let mut moved = wanted.clone();
        match what {
            Hanging::PriceRise => moved.more_rise = value,
            Hanging::DeliveryFee => moved.fee = value,
            Hanging::Interest => moved.interest = value / 100.0,
            Hanging::Keeping => moved.keeps = value as i32,
        }
        moved.model(answers)
    };
    let Flip { at, then } = flips(bought, told, far, with).ok()??;
    Some(hang(what, (told, at), far > told, bought, &then))
}

fn hang(what: Hanging, (told, at): (f64, f64), rises: bool, now: &Bought, then: &Bought) -> Hang {
    let trips = |bought: &Bought| bought.parts.chunk_by(|one, other| one.period == other.period).count();
    Hang { what, told, at, rises, trips: trips(now), trips_then: trips(then), cost_then: then.cost.total() }
}

/// What the date on the bag alone would allow, where a hot store keeps feed less long than that.
fn by_label(answers: &Answers, wanted: &Wanted, bought: &Bought) -> Option<Hang> {
    let label = answers.number("feed.label_keeps_d").filter(|label| *label > f64::from(wanted.keeps))?;
    let longer = Wanted { keeps: label as i32, ..wanted.clone() };
    let then = longer.model(answers).best().ok()?;
    (then.parts != bought.parts)
        .then(|| hang(Hanging::Keeping, (f64::from(wanted.keeps), label), true, bought, &then))
}
