//! Buying what is eaten over time: on which days, how many bags of which feed, so that all of it costs least.
//!
//! Whole bags are eaten in a known order, the oldest of a feed first. A bag must be there when it is needed and be eaten
//! before it is too old. Every delivery costs a fee, whatever it brings; a bag costs what the day asks; bags in the store cost
//! room and perhaps money; what is not in the purse is borrowed.
//!
//! The least cost is found exactly. With the oldest eaten first, how many bags of each feed have come so far says all that the
//! days to come need to know: bag *k* may come on day *t* if it is needed no earlier and eaten no later than *t* and the days
//! it keeps, both of which only grow with *k*. So the state is one count a feed, and the least cost of a state is a running
//! minimum over the states before (Wagner and Whitin, Management Science 5, 1958, with a shelf life, a store of so many bags
//! and several feeds that share deliveries; our derivation, held against trying every plan). See `search` for the counts
//! that are tried, `sizes` for feed sold in bags of several sizes, `credit` for money that is borrowed only on some days, and
//! `limit` for money that is not lent.

mod common;
mod cost;
mod credit;
mod fault;
mod flip;
mod limit;
mod lines;
mod search;
mod simple;
mod sizes;

pub use cost::{Cost, cost, spread};
pub use fault::BuyingFault;
pub use flip::{Flip, flips};
pub use simple::{as_much_as_possible, just_in_time};

/// What must be bought and is eaten as one: a bag, or of feed that is sold in bags of several sizes, a measure of which each
/// size holds a whole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Measure {
    /// The last period in which it may come.
    pub needed: usize,
    /// The last period in which it is eaten.
    pub finished: usize,
}

/// A size of bags that a feed is sold in.
#[derive(Clone, Debug, PartialEq)]
pub struct Size {
    /// Measures that a bag holds, 1 or more.
    pub measures: usize,
    /// What a bag costs in each period.
    pub price: Vec<f64>,
}

/// A feed and the bags it is sold in.
#[derive(Clone, Debug, PartialEq)]
pub struct Feed {
    /// The measures to buy, in the order in which they are eaten; neither `needed` nor `finished` ever falls.
    pub measures: Vec<Measure>,
    /// The sizes of its bags, at least one. A last bag may hold more than is still needed: the rest of it is paid, and takes no
    /// room.
    pub sizes: Vec<Size>,
}

impl Feed {
    /// A feed in bags of one size, of which each is a measure.
    pub fn in_bags(measures: Vec<Measure>, price: Vec<f64>) -> Feed {
        Feed { measures, sizes: vec![Size { measures: 1, price }] }
    }
}

/// Money that is borrowed while the purse is empty.
#[derive(Clone, Debug, PartialEq)]
pub struct Credit {
    /// Interest a period, as a share of what is owed in its evening.
    pub rate: f64,
    /// Money in the evening of each period if no feed were bought; below zero is owed anyway.
    pub money: Vec<f64>,
    /// The most that may be owed in an evening; `None` without limit. Feed is not bought on an evening that owes more anyway.
    pub limit: Option<f64>,
}

/// What is to be bought, and under which conditions.
#[derive(Clone, Debug, PartialEq)]
pub struct Buying {
    /// The feeds.
    pub feeds: Vec<Feed>,
    /// What a delivery costs in each period, whatever it brings; infinite where none can come. As long as the periods.
    pub fee: Vec<f64>,
    /// What a measure costs for each period that it is left over in the evening.
    pub holding: f64,
    /// Periods that feed keeps: what comes in *t* is eaten in *t* to *t* + keeps − 1.
    pub keeps: usize,
    /// Measures that may stand in the store in the evening; `None` where there is room for all.
    pub room: Option<usize>,
    /// The last period in which each measure in hand is eaten. They take room and are paid.
    pub stock: Vec<usize>,
    /// What is borrowed; `None` where money costs nothing.
    pub credit: Option<Credit>,
}

/// Bags of one feed and size that come in one period.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Part {
    /// The period.
    pub period: usize,
    /// Which feed, from 0.
    pub feed: usize,
    /// Which of its sizes, from 0.
    pub size: usize,
    /// How many.
    pub bags: usize,
}

/// The cheapest way that was found, and how much cheaper another could be.
#[derive(Clone, Debug, PartialEq)]
pub struct Bought {
    /// What comes when, by period and feed.
    pub parts: Vec<Part>,
    /// What it costs.
    pub cost: Cost,
    /// No way costs less than this. Equal to the cost where the way found is proven best.
    pub lower_bound: f64,
}

impl Bought {
    /// Whether no way can be cheaper.
    pub fn is_proven(&self) -> bool {
        self.cost.total() - self.lower_bound <= 1e-9 * self.cost.total().abs()
    }
}

impl Buying {
    /// Periods there are.
    pub fn periods(&self) -> usize {
        self.fee.len()
    }

    /// The cheapest way. Of several that cost the same, the one of fewest deliveries, and of these the freshest.
    ///
    /// # Errors
    /// [`BuyingFault`] where no way exists, or where the conditions make no sense.
    pub fn best(&self) -> Result<Bought, BuyingFault> {
        fault::check(self)?;
        credit::best_within(self, search::MOST_STATES)
    }

    /// Whether any feed is sold in several sizes, or in bags of several measures.
    fn has_sizes(&self) -> bool {
        self.feeds.iter().any(|feed| feed.sizes.len() > 1 || feed.sizes.iter().any(|size| size.measures > 1))
    }

    /// The same where it is asked for many times: with money that is borrowed, which takes long to search, only by ways that need
    /// few states.
    ///
    /// # Errors
    /// As [`Buying::best`].
    fn nearly_best(&self) -> Result<Bought, BuyingFault> {
        fault::check(self)?;
        credit::best_within(self, if self.credit.is_some() { 0 } else { search::MOST_STATES })
    }
}

#[cfg(test)]
mod tests;
