//! Why there is no plan of buying.

use model::buying::BuyingFault;

use super::Wanted;
use crate::store_room::Phase;

/// Why there is no plan of buying. Days are days of age.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum CannotBuy {
    /// What is needed is not known.
    #[error("not known: {key}")]
    NotKnown {
        /// The field or the figure.
        key: &'static str,
    },
    /// Nothing more is eaten.
    #[error("nothing more is eaten")]
    NothingEaten,
    /// A price below zero.
    #[error("{phase:?} costs less than nothing on day {day}")]
    PriceBelowZero {
        /// The feed.
        phase: Phase,
        /// The day.
        day: i32,
    },
    /// Feed that is too old before it is eaten, whenever it comes.
    #[error("{phase:?} that is eaten until day {until} is too old by then, or comes too late")]
    CannotKeep {
        /// The feed.
        phase: Phase,
        /// The last day it is eaten.
        until: i32,
    },
    /// More must stand in the store than it holds.
    #[error("{bags} bags on day {day} in a store for {room}")]
    RoomTooSmall {
        /// The day.
        day: i32,
        /// Bags that must stand there.
        bags: usize,
        /// Bags that can.
        room: usize,
    },
    /// Bags of two sizes that have no weight in common.
    #[error("bags of {kg} kg and of {other_kg} kg are no whole numbers of kilograms in common")]
    SizesApart {
        /// What a bag holds.
        kg: f64,
        /// What a bag of the other size holds.
        other_kg: f64,
    },
    /// More must be owed than is lent.
    #[error("{needed} must be owed on day {day}, and {limit} is lent")]
    CreditTooSmall {
        /// The day on which most is owed.
        day: i32,
        /// What is lent.
        limit: f64,
        /// What would have to be.
        needed: f64,
    },
    /// Not all conditions can be kept together.
    #[error("no way keeps all conditions")]
    NoWay,
}

impl CannotBuy {
    /// In the words of feeds and days.
    pub(super) fn of(fault: BuyingFault, wanted: &Wanted) -> CannotBuy {
        let phase = |feed: usize| wanted.feeds.get(feed).map_or(Phase::Starter, |eaten| eaten.phase);
        let day = |period: usize| wanted.first + period as i32;
        match fault {
            BuyingFault::PriceBelowZero { feed, period, .. } => {
                CannotBuy::PriceBelowZero { phase: phase(feed), day: day(period) }
            }
            BuyingFault::CannotKeep { feed, finished, .. } => {
                CannotBuy::CannotKeep { phase: phase(feed), until: day(finished) }
            }
            BuyingFault::RoomTooSmall { period, measures, .. } => CannotBuy::RoomTooSmall {
                day: day(period),
                bags: wanted.in_bags(measures),
                room: wanted.room.unwrap_or_default(),
            },
            BuyingFault::CreditTooSmall { period, limit, needed } => {
                CannotBuy::CreditTooSmall { day: day(period), limit, needed }
            }
            BuyingFault::Uneven { .. } | BuyingFault::NoWay => CannotBuy::NoWay,
        }
    }
}
