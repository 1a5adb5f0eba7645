//! What a way of buying costs, whoever thought of it.

use super::{Buying, Part};

/// What a way of buying costs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cost {
    /// The bags.
    pub bags: f64,
    /// The deliveries.
    pub fees: f64,
    /// Bags left over in the evenings.
    pub holding: f64,
    /// Interest that would not be owed without feed.
    pub interest: f64,
}

impl Cost {
    /// All of it.
    pub fn total(&self) -> f64 {
        self.bags + self.fees + self.holding + self.interest
    }
}

/// What some deliveries cost; `None` where they break a condition: feed too late, too old, a bag too many or too few, no
/// delivery on that day, or no room.
pub fn cost(buying: &Buying, parts: &[Part]) -> Option<Cost> {
    let comes = comes(buying, parts)?;
    fits(buying, &comes, parts).then(|| known(buying, &comes, parts))
}

/// The period in which each measure of each feed comes; `None` where the parts do not bring all of them, or a bag of which
/// nothing is needed.
fn comes(buying: &Buying, parts: &[Part]) -> Option<Vec<Vec<usize>>> {
    let mut parts: Vec<Part> = parts.to_vec();
    parts.sort();
    let mut comes: Vec<Vec<usize>> = vec![Vec::new(); buying.feeds.len()];
    for (feed, (comes, one)) in comes.iter_mut().zip(&buying.feeds).enumerate() {
        let mut least_in_last = (0, usize::MAX);
        for part in parts.iter().filter(|part| part.feed == feed && part.bags > 0) {
            let measures = one.sizes.get(part.size)?.measures;
            let least = if least_in_last.0 == part.period { least_in_last.1 } else { usize::MAX };
            least_in_last = (part.period, least.min(measures));
            comes.extend(std::iter::repeat_n(part.period, part.bags * measures));
        }
        let over = comes.len().checked_sub(one.measures.len())?;
        if over > 0 && over >= least_in_last.1 {
            return None;
        }
        comes.truncate(one.measures.len());
    }
    parts.iter().all(|part| part.feed < buying.feeds.len()).then_some(comes)
}

fn fits(buying: &Buying, comes: &[Vec<usize>], parts: &[Part]) -> bool {
    let all = || comes.iter().zip(&buying.feeds).flat_map(|(comes, feed)| comes.iter().zip(&feed.measures));
    let in_time = |(comes, measure): (&usize, &super::Measure)| {
        *comes <= measure.needed && measure.finished < comes + buying.keeps && buying.fee[*comes].is_finite()
    };
    let stand = |period: usize| {
        let bought = all().filter(|(comes, measure)| **comes <= period && measure.finished > period).count();
        (bought, bought + buying.in_hand(period))
    };
    let lent = || within_limit(buying, parts);
    let has_room =
        |room: usize| (0..buying.periods()).map(stand).all(|(bought, all)| bought == 0 || all <= room);
    all().all(in_time) && buying.room.is_none_or(has_room) && lent()
}

/// Whether no evening on which feed was paid by then owes more than is lent.
fn within_limit(buying: &Buying, parts: &[Part]) -> bool {
    let Some((credit, limit)) = buying.credit.as_ref().and_then(|credit| Some((credit, credit.limit?)))
    else {
        return true;
    };
    let mut so_far = 0.0;
    let spent = spent(buying, parts);
    let all: f64 = spent.iter().map(|(bags, fee)| bags + fee).sum();
    spent.iter().zip(&credit.money).all(|((bags, fee), money)| {
        so_far += bags + fee;
        so_far <= (money + limit).max(0.0) + 1e-9 * all
    })
}

/// The cost of feed that is known to come when it may.
fn known(buying: &Buying, comes: &[Vec<usize>], parts: &[Part]) -> Cost {
    let spent = spent(buying, parts);
    let waits = |(comes, feed): (&Vec<usize>, &super::Feed)| {
        comes.iter().zip(&feed.measures).map(|(comes, measure)| measure.finished - comes).sum::<usize>()
    };
    let evenings =
        comes.iter().zip(&buying.feeds).map(waits).sum::<usize>() + buying.stock.iter().sum::<usize>();
    Cost {
        bags: spent.iter().map(|(bags, _)| bags).sum(),
        fees: spent.iter().map(|(_, fee)| fee).sum(),
        holding: buying.holding * evenings as f64,
        interest: interest(buying, &spent),
    }
}

/// What is paid for bags and for the delivery in each period.
fn spent(buying: &Buying, parts: &[Part]) -> Vec<(f64, f64)> {
    let mut spent = vec![(0.0, 0.0); buying.periods()];
    for part in parts.iter().filter(|part| part.bags > 0) {
        let price = &buying.feeds[part.feed].sizes[part.size].price;
        spent[part.period].0 += price[part.period] * part.bags as f64;
        spent[part.period].1 = buying.fee[part.period];
    }
    spent
}

fn interest(buying: &Buying, spent: &[(f64, f64)]) -> f64 {
    let Some(credit) = &buying.credit else { return 0.0 };
    let mut so_far = 0.0;
    let mut owed = 0.0;
    for ((bags, fee), money) in spent.iter().zip(&credit.money) {
        so_far += bags + fee;
        owed += (so_far - money).max(0.0) - (-money).max(0.0);
    }
    credit.rate * owed
}

/// What is paid until the evening of each period.
pub(super) fn paid_by(buying: &Buying, parts: &[Part]) -> Vec<f64> {
    let mut so_far = 0.0;
    let running = spent(buying, parts).into_iter().map(|(bags, fee)| {
        so_far += bags + fee;
        so_far
    });
    running.collect()
}

/// The standard deviation of a sum of amounts paid at times, of which each strays with a standard deviation of its own size by
/// time 1, and by the square root of the time before (a random walk: the error of a time stays in all later ones).
pub fn spread(paid: &[(f64, f64)]) -> f64 {
    let with = |(time, amount): &(f64, f64)| -> f64 {
        paid.iter().map(|(other, more)| amount * more * time.min(*other).max(0.0)).sum()
    };
    paid.iter().map(with).sum::<f64>().max(0.0).sqrt()
}
