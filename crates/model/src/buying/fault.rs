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
    /// Lists of another length than the periods, bags of no size, or what is not in the order in which it is eaten.
    #[error("feed {feed} does not fit {periods} periods")]
    Uneven {
        /// Which feed, from 0.
        feed: usize,
        /// Periods there are.
        periods: usize,
    },
    /// Feed that is too old before it is eaten even if it comes as late as it may, or that cannot come in time.
    #[error(
        "measure {measure} of feed {feed} cannot come in time and still be fresh when it is eaten in period {finished}"
    )]
    CannotKeep {
        /// Which feed, from 0.
        feed: usize,
        /// Which of its measures, from 0.
        measure: usize,
        /// The last period in which it is eaten.
        finished: usize,
    },
    /// More must stand in the store than it holds.
    #[error("{measures} measures must stand in the store in period {period}, which holds {room}")]
    RoomTooSmall {
        /// The period, from 0.
        period: usize,
        /// Measures that must stand there.
        measures: usize,
        /// Measures that can.
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
            .measures
            .windows(2)
            .all(|pair| pair[0].needed <= pair[1].needed && pair[0].finished <= pair[1].finished);
        let fits =
            one.measures.iter().all(|measure| measure.needed < periods && measure.needed <= measure.finished);
        let sized = one.sizes.iter().all(|size| size.measures > 0 && size.price.len() == periods);
        if one.sizes.is_empty() || !sized || !in_order || !fits {
            return Err(BuyingFault::Uneven { feed, periods });
        }
        for size in &one.sizes {
            let wrong = size.price.iter().position(|price| !(0.0..f64::INFINITY).contains(price));
            if let Some(period) = wrong {
                return Err(BuyingFault::PriceBelowZero { feed, period, price: size.price[period] });
            }
        }
    }
    Ok(())
}

fn freshness(buying: &Buying) -> Result<(), BuyingFault> {
    for (feed, one) in buying.feeds.iter().enumerate() {
        for (measure, due) in one.measures.iter().enumerate() {
            let first = (due.finished + 1).saturating_sub(buying.keeps);
            if !(first..=due.needed).any(|period| buying.fee[period].is_finite()) {
                return Err(BuyingFault::CannotKeep { feed, measure, finished: due.finished });
            }
        }
    }
    Ok(())
}

fn room(buying: &Buying) -> Result<(), BuyingFault> {
    let Some(room) = buying.room else { return Ok(()) };
    for period in 0..buying.periods() {
        let must = buying.feeds.iter().flat_map(|feed| &feed.measures);
        let must = must.filter(|measure| measure.needed <= period && measure.finished > period).count();
        let measures = must + buying.in_hand(period);
        if must > 0 && measures > room {
            return Err(BuyingFault::RoomTooSmall { period, measures, room });
        }
    }
    Ok(())
}

impl Buying {
    /// Measures now in hand that are still there in the evening of a period.
    pub(super) fn in_hand(&self, period: usize) -> usize {
        self.stock.iter().filter(|finished| **finished > period).count()
    }
}
