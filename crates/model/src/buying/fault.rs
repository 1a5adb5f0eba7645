//! Why nothing can be bought that way.

use super::Buying;

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum BuyingFault {
    /// A price that is no price.
    #[error("a bag of feed {feed} costs {price} in period {period}")]
    PriceBelowZero {
        /// Which feed, from 0.
        feed: usize,
        /// The period, from 0.
        period: usize,
        /// The price.
        price: f64,
    },
    /// Lists of another length than the periods, or bags that are not in the order in which they are eaten.
    #[error("feed {feed} does not fit {periods} periods")]
    Uneven {
        /// Which feed, from 0.
        feed: usize,
        /// Periods there are.
        periods: usize,
    },
    /// A bag that is too old before it is eaten even if it comes as late as it may, or that cannot come in time.
    #[error(
        "bag {bag} of feed {feed} cannot come in time and still be fresh when it is eaten in period {finished}"
    )]
    CannotKeep {
        /// Which feed, from 0.
        feed: usize,
        /// Which of its bags, from 0.
        bag: usize,
        /// The last period in which it is eaten.
        finished: usize,
    },
    /// More bags must stand in the store than it holds.
    #[error("{bags} bags must stand in the store in period {period}, which holds {room}")]
    RoomTooSmall {
        /// The period, from 0.
        period: usize,
        /// Bags that must stand there.
        bags: usize,
        /// Bags that can.
        room: usize,
    },
    /// More must be owed than is lent.
    #[error("{needed} must be owed in the evening of period {period}, and {limit} is lent")]
    CreditTooSmall {
        /// The period, from 0.
        period: usize,
        /// What is lent.
        limit: f64,
        /// What would have to be.
        needed: f64,
    },
    /// Every single bag could come, but not all of them together.
    #[error("no deliveries satisfy all conditions together")]
    NoWay,
}

/// What can be said before searching.
pub(super) fn check(buying: &Buying) -> Result<(), BuyingFault> {
    prices(buying)?;
    freshness(buying)?;
    room(buying)
}

fn prices(buying: &Buying) -> Result<(), BuyingFault> {
    let periods = buying.periods();
    for (feed, one) in buying.feeds.iter().enumerate() {
        let in_order = one
            .bags
            .windows(2)
            .all(|pair| pair[0].needed <= pair[1].needed && pair[0].finished <= pair[1].finished);
        let fits = one.bags.iter().all(|bag| bag.needed < periods && bag.needed <= bag.finished);
        if one.price.len() != periods || !in_order || !fits {
            return Err(BuyingFault::Uneven { feed, periods });
        }
        let wrong = one.price.iter().position(|price| !(0.0..f64::INFINITY).contains(price));
        if let Some(period) = wrong {
            return Err(BuyingFault::PriceBelowZero { feed, period, price: one.price[period] });
        }
    }
    Ok(())
}

fn freshness(buying: &Buying) -> Result<(), BuyingFault> {
    for (feed, one) in buying.feeds.iter().enumerate() {
        for (bag, due) in one.bags.iter().enumerate() {
            let first = (due.finished + 1).saturating_sub(buying.keeps);
            if !(first..=due.needed).any(|period| buying.fee[period].is_finite()) {
                return Err(BuyingFault::CannotKeep { feed, bag, finished: due.finished });
            }
        }
    }
    Ok(())
}

fn room(buying: &Buying) -> Result<(), BuyingFault> {
    let Some(room) = buying.room else { return Ok(()) };
    for period in 0..buying.periods() {
        let must = buying.feeds.iter().flat_map(|feed| &feed.bags);
        let must = must.filter(|bag| bag.needed <= period && bag.finished > period).count();
        let bags = must + buying.in_hand(period);
        if must > 0 && bags > room {
            return Err(BuyingFault::RoomTooSmall { period, bags, room });
        }
    }
    Ok(())
}

impl Buying {
    /// Bags now in hand that are still there in the evening of a period.
    pub(super) fn in_hand(&self, period: usize) -> usize {
        self.stock.iter().filter(|finished| **finished > period).count()
    }
}
