//! Everything that is bought for a batch: what, how much, on which day, for how much.

use quantity::{Answers, Money, Unit};

use crate::buying::prices;
use crate::families::equipment::has_nipples;
use crate::outcome::Outcome;
use crate::series::Listed;
use crate::store_room::{self, Phase};

/// One thing bought or paid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Purchase {
    /// What; names a message.
    pub what: &'static str,
    /// The day of age it is paid on; negative before placement.
    pub day: i32,
    /// How much, in `unit`; `None` for a lump sum.
    pub quantity: Option<f64>,
    /// The unit of the quantity.
    pub unit: Unit,
    /// What each bag of feed holds, kg, where it is to be had in several sizes.
    pub size_kg: Option<f64>,
    /// What it costs; `None` while its price is not known.
    pub cost: Option<f64>,
}

/// What is paid in one week, counted from the day of placement.
#[derive(Clone, Debug, PartialEq)]
pub struct Week {
    /// Which: 0 from the day of placement on, -1 the week before.
    pub number: i32,
    /// What is paid in it, by day.
    pub purchases: Vec<Purchase>,
    /// What that costs, as far as prices are known.
    pub cost: f64,
    /// What all weeks so far cost, as far as prices are known.
    pub until_then: f64,
}

impl Week {
    /// Its first day of age.
    pub fn first_day(&self) -> i32 {
        7 * self.number
    }
}

/// Purchases, ordered by day, put together by week.
pub fn by_week(purchases: &[Purchase]) -> Vec<Week> {
    let mut weeks: Vec<Week> = Vec::new();
    let mut until_then = 0.0;
    for week in purchases.chunk_by(|one, other| one.day.div_euclid(7) == other.day.div_euclid(7)) {
        let cost: f64 = week.iter().filter_map(|purchase| purchase.cost).sum();
        until_then += cost;
        let number = week.first().map_or(0, |purchase| purchase.day.div_euclid(7));
        weeks.push(Week { number, purchases: week.to_vec(), cost, until_then });
    }
    weeks
}

/// The first day that money can be spent on: the longest deposit ahead.
pub(crate) const FIRST_DAY: i32 = -60;

/// The figures that purchases are made from.
pub(crate) const NEEDS: &[&str] = &[
    "money.chicks",
    "money.deposit",
    "feed.bags_cost",
    "feed.grower_price",
    "feed.last_price",
    "feed.bags_last",
    "feed.store_room",
    "feed.finisher",
    "litter.cost",
    "litter.bags",
    "disinfectant.cost",
    "disinfectant.to_buy",
    "guard.cost",
    "guard.sheets_to_buy",
    "brooding.fuel_cost",
    "brooding.spare_cost",
    "brooding.second_fuel_cost",
    "brooding.second_spare_cost",
    "sale.first_age",
    "sale.last_age",
    "space.large_from",
    "space.chick_feeders",
    "space.box_lids",
    "space.chick_feeders_short",
    "space.chick_drinkers_short",
    "space.feeders_short",
    "space.drinkers_short",
    "guard.rings_without_brooder",
    "space.chick_feeders_cost",
    "space.chick_drinkers_cost",
    "space.feeders_cost",
    "space.drinkers_cost",
    "guard.brooders_cost",
];

/// A kind of equipment that a plan can find too little of.
pub struct Short {
    /// What it is; names a message.
    pub what: &'static str,
    /// The figure that says how many are missing.
    pub figure: &'static str,
    /// The figure of what those cost.
    pub cost: &'static str,
    /// The field of the price of one.
    pub price: &'static str,
}

/// What a plan finds too few of.
pub const SHORT: &[Short] = &[
    Short {
        what: "chick-trays",
        figure: "space.chick_feeders_short",
        cost: "space.chick_feeders_cost",
        price: "prices.chick_feeder_each",
    },
    Short {
        what: "small-drinkers",
        figure: "space.chick_drinkers_short",
        cost: "space.chick_drinkers_cost",
        price: "prices.chick_drinker_each",
    },
    Short {
        what: "brooders",
        figure: "guard.rings_without_brooder",
        cost: "guard.brooders_cost",
        price: "prices.brooder_each",
    },
    Short {
        what: "large-feeders",
        figure: "space.feeders_short",
        cost: "space.feeders_cost",
        price: "prices.feeder_each",
    },
    Short {
        what: LARGE_DRINKERS,
        figure: "space.drinkers_short",
        cost: "space.drinkers_cost",
        price: "prices.drinker_each",
    },
];

const LARGE_DRINKERS: &str = "large-drinkers";
const NIPPLES: &str = "nipples";

/// The lids of the boxes that chicks come in.
pub const LIDS: &str = "box-lids";

impl Short {
    /// What it is called on the list: who has nipples buys nipples.
    pub fn named(&self, answers: &Answers) -> &'static str {
        if self.what == LARGE_DRINKERS && has_nipples(answers) { NIPPLES } else { self.what }
    }
}

/// The equipment that a name on the list stands for; `None` for all else.
fn short_named(what: &str) -> Option<&'static Short> {
    SHORT.iter().find(|short| short.what == what || (short.what == LARGE_DRINKERS && what == NIPPLES))
}

/// Whether a name on the list is a piece of equipment, which is counted and lasts for many batches.
pub fn is_equipment(what: &str) -> bool {
    what == LIDS || short_named(what).is_some()
}

/// The field to fill so that something on the list has a cost; `None` where no field can give it one.
pub fn price_key(answers: &Answers, what: &str) -> Option<&'static str> {
    let of_fuel = |fuel: &str| {
        let (price, pack) = match answers.choice(fuel)? {
            "lpg" => ("prices.gas_cylinder_each", "brooding.cylinder_kg"),
            "charcoal" => ("prices.charcoal_sack_each", "brooding.sack_kg"),
            _ => return None,
        };
        Some(if answers.number(price).is_some() { pack } else { price })
    };
    match what {
        "litter" => Some("prices.litter_bag_each"),
        "disinfectant" => Some("prices.disinfectant_per_l"),
        "guard" => Some("prices.sheet_each"),
        "fuel" | "spare-fuel" => of_fuel("brooding.fuel"),
        "second-fuel" | "second-spare-fuel" => of_fuel("brooding.second_fuel"),
        _ => short_named(what).map(|short| short.price),
    }
}

/// Days before placement that disinfectant, sheets and vaccines are bought, and fuel: two weeks for what readying needs,
/// one for what brooding needs (our judgement).
const FOR_READYING: i32 = -14;
const FOR_BROODING: i32 = -7;

/// Everything bought, by day; what has no price yet is on the list without a cost.
pub fn list(answers: &Answers, outcome: &Outcome) -> Vec<Purchase> {
    let mut list = without_feed(answers, outcome);
    list.extend(feed(answers, outcome));
    list.sort_by_key(|purchase| purchase.day);
    list
}

/// A deposit when they are booked, the rest on the day they come.
fn chicks(answers: &Answers, outcome: &Outcome) -> Vec<Purchase> {
    let Some(count) = answers.number("batch.chicks") else { return Vec::new() };
    let whole = outcome.number("money.chicks");
    let deposit = outcome.number("money.deposit").filter(|deposit| *deposit > 0.0);
    let booked = answers.number("batch.deposit_before_d").map_or(FOR_READYING, |days| -(days as i32));
    let paid =
        |what, day, quantity, cost| Purchase { what, day, quantity, unit: Unit::Chicks, size_kg: None, cost };
    let first = deposit.map(|deposit| paid("chick-deposit", booked, None, Some(deposit)));
    let rest =
        whole.map(|whole| whole - deposit.unwrap_or(0.0)).filter(|rest| *rest > 0.0 || deposit.is_none());
    let second = (whole.is_none() || rest.is_some()).then(|| paid("chicks", 0, Some(count), rest));
    first.into_iter().chain(second).collect()
}

/// What is paid for feed: the bags at the price of their day, and each delivery.
fn feed(answers: &Answers, outcome: &Outcome) -> Vec<Purchase> {
    let what = |phase: Phase| match phase {
        Phase::Starter => "feed-starter",
        Phase::Grower => "feed-grower",
        Phase::Finisher => "feed-finisher",
        Phase::Last => "feed-last",
    };
    let deliveries = store_room::deliveries(answers, outcome);
    let mut days: Vec<i32> = deliveries.iter().map(|one| one.day).collect();
    days.sort_unstable();
    days.dedup();
    let fee = answers.number("costs.feed_delivery_each").filter(|fee| *fee > 0.0);
    let trips = days.into_iter().filter_map(|day| {
        Some(Purchase {
            what: "feed-delivery",
            day,
            quantity: None,
            unit: Unit::Money,
            size_kg: None,
            cost: Some(fee?),
        })
    });
    let bags = deliveries.iter().map(|one| {
        let price = prices::of_bag(answers, outcome, one.phase, one.size_kg);
        let cost =
            price.and_then(|price| rounded(answers, price * prices::factor(answers, one.day) * one.bags));
        Purchase {
            what: what(one.phase),
            day: one.day,
            quantity: Some(one.bags),
            unit: Unit::Pieces,
            size_kg: one.size_kg,
            cost,
        }
    });
    bags.chain(trips).collect()
}

/// What is paid for feed and its deliveries on which day; `None` while feed has no price.
pub(crate) fn paid_for_feed(answers: &Answers, outcome: &Outcome) -> Option<Listed> {
    outcome.number("feed.bags_cost")?;
    let list = feed(answers, outcome);
    // Without a delivery it is not that nothing is paid, but that nobody knows when.
    (!list.is_empty()).then(|| list.into_iter().filter_map(|one| Some((one.day, one.cost?))).collect())
}

/// Litter, disinfectant, guard and fuel.
fn readying(answers: &Answers, outcome: &Outcome) -> Vec<Purchase> {
    let spread = answers.number("litter.spread_days_before_d").map_or(FOR_BROODING, |days| -(days as i32));
    let rows = [
        ("litter", spread.max(FIRST_DAY), "litter.bags", Unit::Pieces, "litter.cost"),
        ("disinfectant", FOR_READYING, "disinfectant.to_buy", Unit::Millilitre, "disinfectant.cost"),
        ("guard", FOR_BROODING, "guard.sheets_to_buy", Unit::Pieces, "guard.cost"),
        ("fuel", FOR_BROODING, "brooding.fuel_total", Unit::Kilogram, "brooding.fuel_cost"),
        ("spare-fuel", FOR_BROODING, "brooding.spare", Unit::Kilogram, "brooding.spare_cost"),
        (
            "second-fuel",
            FOR_BROODING,
            "brooding.second_fuel_total",
            Unit::Kilogram,
            "brooding.second_fuel_cost",
        ),
        (
            "second-spare-fuel",
            FOR_BROODING,
            "brooding.second_spare",
            Unit::Kilogram,
            "brooding.second_spare_cost",
        ),
    ];
    // The last sack may hold enough for the two nights; the sheets may all be owned.
    let none = |figure: &str| outcome.number(figure) == Some(0.0);
    let bought = |what: &str| match what {
        "spare-fuel" => !none("brooding.spare_packs"),
        "second-fuel" => !none("brooding.second_fuel_total"),
        "second-spare-fuel" => !none("brooding.second_spare_packs"),
        "guard" => !none("guard.sheets_to_buy"),
        _ => true,
    };
    rows.into_iter()
        .filter(|(what, ..)| bought(what))
        .filter_map(|(what, day, quantity, unit, cost)| {
            let quantity = outcome.number(quantity);
            let cost = outcome.number(cost);
            (quantity.is_some_and(|quantity| quantity > 0.0) || cost.is_some()).then_some(Purchase {
                what,
                day,
                quantity,
                unit,
                size_kg: None,
                cost,
            })
        })
        .collect()
}

/// Equipment of which there is too little, by the day it is wanted at the latest: what chicks need with the other things for
/// readying, what is hung later by the day before. The batch that buys it pays all of it, however many it serves.
fn equipment(answers: &Answers, outcome: &Outcome) -> Vec<Purchase> {
    if answers.day("batch.placement").is_none() {
        return Vec::new();
    }
    let later = outcome.number("space.large_from").map_or(FOR_READYING, |day| day as i32 - 1);
    let bought = |short: &Short| {
        let quantity = outcome.number(short.figure).filter(|short| *short > 0.0)?;
        let day = if short.what.starts_with("large-") { later } else { FOR_READYING };
        let cost = outcome.number(short.cost);
        let what = short.named(answers);
        Some(Purchase { what, day, quantity: Some(quantity), unit: Unit::Pieces, size_kg: None, cost })
    };
    SHORT.iter().filter_map(bought).chain(lids(answers, outcome)).collect()
}

/// The lids that serve as feeders: they come with the chicks and cost nothing.
fn lids(answers: &Answers, outcome: &Outcome) -> Option<Purchase> {
    let owned = answers.number("equipment.chick_feeders").unwrap_or_default();
    let wanted = outcome.number("space.chick_feeders")? - owned;
    let quantity = wanted.min(outcome.number("space.box_lids")?);
    let (unit, size_kg, cost) = (Unit::Pieces, None, Some(0.0));
    (quantity > 0.0).then_some(Purchase { what: LIDS, day: 0, quantity: Some(quantity), unit, size_kg, cost })
}

/// Costs told as one amount, on the day they usually fall due.
fn lump_sums(answers: &Answers, outcome: &Outcome) -> Vec<Purchase> {
    let sale = outcome.number("sale.first_age").map_or(0, |day| day as i32);
    let last = outcome.last_day().unwrap_or(0);
    let sums = [
        ("vaccines", FOR_BROODING, "costs.vaccines"),
        ("medicine", 7, "costs.medicine"),
        ("other", 0, "costs.other"),
        ("transport", sale, "costs.transport"),
        ("labour", last, "costs.labour"),
        ("power", last, "costs.power"),
        ("house", last, "costs.house"),
    ];
    sums.into_iter()
        .filter_map(|(what, day, key)| {
            let cost = answers.number(key).filter(|cost| *cost > 0.0)?;
            Some(Purchase {
                what,
                day: day.min(last),
                quantity: None,
                unit: Unit::Money,
                size_kg: None,
                cost: Some(cost),
            })
        })
        .collect()
}

/// Whole money, rounded once a line.
pub(crate) fn rounded(answers: &Answers, amount: f64) -> Option<f64> {
    Some(Money::nearest(amount, answers.currency())?.to_number())
}

/// Everything but feed, by day: what the purse has paid whatever feed is bought when.
pub(crate) fn without_feed(answers: &Answers, outcome: &Outcome) -> Vec<Purchase> {
    let mut list = chicks(answers, outcome);
    list.extend(readying(answers, outcome));
    list.extend(equipment(answers, outcome));
    list.extend(lump_sums(answers, outcome));
    list
}

/// What is spent on which day; `None` while chicks or feed have no price: a sum without them would only mislead.
pub(crate) fn spent(answers: &Answers, outcome: &Outcome) -> Option<Listed> {
    outcome.number("money.chicks")?;
    outcome.number("feed.bags_cost")?;
    let list = list(answers, outcome);
    Some(list.into_iter().filter_map(|purchase| Some((purchase.day, purchase.cost?))).collect())
}
