//! Money of one batch: cash by day, costs, and the prices at which it just pays.
//!
//! Amounts are plain numbers in one currency's main unit, all in the same one; they are rounded only where they become
//! figures. Every amount is proportional to the prices that go in: prices in another currency give the same answers in it.
//! A quotient over nothing (no bird sold, no kilogram sold) is `None`: it is undefined, not zero.

use std::collections::BTreeMap;

/// Days of a year in every rate here.
const DAYS_A_YEAR: f64 = 365.0;

/// Cash this little under nothing is the noise of binary fractions: half the smallest coin of a currency with three
/// decimals.
const LESS_THAN_A_COIN: f64 = 0.0005;

/// Money that changes hands on one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CashItem {
    /// The day of age on which it is paid, negative before the chicks come. What is bought on credit carries the day on
    /// which it is paid, not the day on which it came.
    pub day: i32,
    /// Positive comes in, negative goes out.
    pub amount: f64,
}

/// Cash in hand at the close of a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CashDay {
    /// The day of age.
    pub day: i32,
    /// Cash in hand when it closes; negative is owed.
    pub balance: f64,
}

/// Cash in hand over a batch: the day before the first item with the starting cash, then each day on which money changes
/// hands. Between two of its days the balance stays.
#[derive(Clone, Debug, PartialEq)]
pub struct Cash {
    days: Vec<CashDay>,
}

impl Cash {
    /// Adds dated items, in any order, to the starting cash.
    ///
    /// The items of one day are one step: what is sold in the morning pays for feed in the afternoon.
    pub fn of(start: f64, items: &[CashItem]) -> Cash {
        let mut by_day: BTreeMap<i32, f64> = BTreeMap::new();
        for item in items {
            *by_day.entry(item.day).or_default() += item.amount;
        }
        let opening = by_day.keys().next().map(|first| CashDay { day: first - 1, balance: start });
        let mut balance = start;
        let closings = by_day.into_iter().map(|(day, moved)| {
            balance += moved;
            CashDay { day, balance }
        });
        Cash { days: opening.into_iter().chain(closings).collect() }
    }

    /// The days, ascending; empty without items.
    pub fn days(&self) -> &[CashDay] {
        &self.days
    }

    /// The first day on which cash is lowest; `None` without items.
    pub fn low_point(&self) -> Option<CashDay> {
        self.days
            .iter()
            .copied()
            .reduce(|lowest, day| if day.balance < lowest.balance { day } else { lowest })
    }

    /// The first day that closes with less than nothing; `None` while cash carries the batch.
    pub fn first_shortage(&self) -> Option<CashDay> {
        self.days.iter().copied().find(|day| day.balance < -LESS_THAN_A_COIN)
    }

    /// Cash in hand at the end; `None` without items.
    pub fn end(&self) -> Option<f64> {
        self.days.last().map(|day| day.balance)
    }

    /// Money owed times the days it is owed, up to the close of day `until`: what simple interest is counted on.
    ///
    /// Each day's closing debt is owed until the next closing.
    pub fn debt_days(&self, until: i32) -> f64 {
        let ends = self.days.iter().skip(1).map(|day| day.day).chain([until]);
        let owed = |(from, to): (&CashDay, i32)| {
            (-from.balance).max(0.0) * f64::from((to.min(until) - from.day).max(0))
        };
        self.days.iter().zip(ends).map(owed).sum()
    }
}

/// Simple interest on money owed: debt × days × yearly rate / 365.
///
/// - `debt_days`: from [`Cash::debt_days`], or a debt times its days
/// - `rate_per_year`: share a year, 0.24 for 24 %
///
/// Interest bears no interest here; over the two months of a batch at 60 % a year that leaves out 5 % of the interest.
pub fn simple_interest(debt_days: f64, rate_per_year: f64) -> f64 {
    debt_days * rate_per_year / DAYS_A_YEAR
}

/// Batches a year from one house: 365 / (days of growing + days between batches).
pub fn batches_a_year(grow_days: f64, downtime_days: f64) -> Option<f64> {
    per(DAYS_A_YEAR, grow_days + downtime_days)
}

/// What one batch wears off a house or a tool: (cost - scrap) / years of life / batches a year.
pub fn depreciation_per_batch(cost: f64, scrap: f64, life_years: f64, batches_a_year: f64) -> Option<f64> {
    per(cost - scrap, life_years * batches_a_year)
}

/// An amount for each of `count`: total cost for each chick placed, each bird sold or each kilogram sold; feed as a share
/// of all cost; income for each unit of money spent.
pub fn per(amount: f64, count: f64) -> Option<f64> {
    (count > 0.0).then(|| amount / count)
}

/// The price a kilogram live (or a bird, with birds for kilograms) below which the batch loses:
/// cost / (kg sold × (1 - charges)).
///
/// - `sale_charges`: tax, market fee and broker as a share of the price, 0 up to but not 1
pub fn break_even_price(total_cost: f64, kg_sold: f64, sale_charges: f64) -> Option<f64> {
    per(total_cost, kg_sold * (1.0 - sale_charges))
}

/// The price a kilogram that still brings back the cash of this batch:
/// (total cost - fixed cost - own labour) / kg sold.
///
/// In the short run to sell above it beats not to sell; in the long run it does not pay for house and hands.
pub fn cash_break_even_price(total_cost: f64, fixed_cost: f64, own_labour: f64, kg_sold: f64) -> Option<f64> {
    per(total_cost - fixed_cost - own_labour, kg_sold)
}

/// The mean weight in kilograms at which the birds sold just pay: cost / (price a kg × birds).
///
/// First order: the feed is held, as when birds turn out lighter than they ate for.
pub fn break_even_weight_kg(total_cost: f64, price_per_kg: f64, birds_sold: f64) -> Option<f64> {
    per(total_cost, price_per_kg * birds_sold)
}

/// The share of the chicks placed that must be sold for the batch just to pay: cost / (price a kg × kg a bird × placed).
///
/// First order: weight and feed are held. Above 1 no survival helps.
pub fn break_even_livability(
    total_cost: f64,
    price_per_kg: f64,
    weight_kg: f64,
    chicks_placed: f64,
) -> Option<f64> {
    per(total_cost, price_per_kg * weight_kg * chicks_placed)
}

/// The feed conversion at which the price just covers feed and the rest:
/// (price a kg - other cost a kg) / feed price a kg, in kg of feed for each kg sold.
///
/// The numerator is the share of the price that feed may take. At or below 0 no conversion helps.
pub fn break_even_fcr(price_per_kg: f64, other_cost_per_kg: f64, feed_price_per_kg: f64) -> Option<f64> {
    per(price_per_kg - other_cost_per_kg, feed_price_per_kg)
}

/// The dearest bag of feed that still leaves no loss: (income - all costs but feed) / bags.
pub fn break_even_bag_price(income: f64, other_cost: f64, bags: f64) -> Option<f64> {
    per(income - other_cost, bags)
}

/// Feed cost of a kilogram live: FCR × feed price a kg.
pub fn feed_cost_per_kg(fcr: f64, feed_price_per_kg: f64) -> f64 {
    fcr * feed_price_per_kg
}

/// What a better (lower) feed conversion saves on the kilograms sold: kg sold × difference × feed price a kg.
pub fn value_of_fcr(kg_sold: f64, fcr_difference: f64, feed_price_per_kg: f64) -> f64 {
    kg_sold * feed_cost_per_kg(fcr_difference, feed_price_per_kg)
}

/// The price a dressed kilogram must bring: (live cost a kg + dressing a live kg) / yield.
///
/// - `dressing_yield`: dressed weight as a share of live weight; say whether feet, head and giblets are in
pub fn dressed_price(live_cost_per_kg: f64, dressing_per_live_kg: f64, dressing_yield: f64) -> Option<f64> {
    per(live_cost_per_kg + dressing_per_live_kg, dressing_yield)
}

/// What one more day brings a bird, before its share of the day's other costs: gain × price - feed × feed price.
///
/// Keep the birds only while this is over the day's other costs and the expected deaths times their value (common practice,
/// no source).
pub fn day_margin(gain_kg: f64, price_per_kg: f64, feed_kg: f64, feed_price_per_kg: f64) -> f64 {
    gain_kg * price_per_kg - feed_kg * feed_price_per_kg
}

#[cfg(test)]
mod tests {
    use super::*;

    fn items(items: &[(i32, f64)]) -> Vec<CashItem> {
        items.iter().map(|&(day, amount)| CashItem { day, amount }).collect()
    }

    #[test]
    fn cash_falls_until_the_birds_go() {
        let cash =
            Cash::of(1000.0, &items(&[(42, 1500.0), (-7, -400.0), (21, -450.0), (21, -250.0), (0, -100.0)]));
        let closings: Vec<(i32, f64)> = cash.days().iter().map(|day| (day.day, day.balance)).collect();
        assert_eq!(closings, [(-8, 1000.0), (-7, 600.0), (0, 500.0), (21, -200.0), (42, 1300.0)]);
        assert_eq!(cash.low_point(), Some(CashDay { day: 21, balance: -200.0 }));
        assert_eq!(cash.first_shortage(), cash.low_point());
        assert_eq!(cash.end(), Some(1300.0));
    }

    #[test]
    fn money_that_only_comes_in_is_lowest_before_it_comes() {
        let cash = Cash::of(50.0, &items(&[(3, 10.0), (5, 10.0)]));
        assert_eq!(cash.low_point(), Some(CashDay { day: 2, balance: 50.0 }));
        assert_eq!(cash.first_shortage(), None);
    }

    #[test]
    fn without_items_nothing_is_dated() {
        let cash = Cash::of(50.0, &[]);
        assert_eq!((cash.low_point(), cash.first_shortage(), cash.end()), (None, None, None));
        assert_eq!(cash.debt_days(100), 0.0);
    }

    #[test]
    fn the_noise_of_fractions_is_no_shortage() {
        let cash = Cash::of(0.3, &items(&[(0, -0.1), (1, -0.1), (2, -0.1)]));
        assert!(cash.end().unwrap() < 0.0, "a shortage in binary fractions only");
        assert_eq!(cash.first_shortage(), None);
    }

    /// 200 owed from the close of day 21 to that of day 42: 21 days at 24 % a year.
    #[test]
    fn interest_counts_the_days_of_debt() {
        let cash = Cash::of(100.0, &items(&[(21, -300.0), (42, 500.0)]));
        assert_eq!(cash.debt_days(60), 200.0 * 21.0);
        assert_eq!(cash.debt_days(31), 200.0 * 10.0);
        assert_eq!(cash.debt_days(10), 0.0);
        assert!((simple_interest(cash.debt_days(60), 0.24) - 200.0 * 0.24 * 21.0 / 365.0).abs() < 1e-12);
    }

    #[test]
    fn a_debt_at_the_end_runs_on() {
        let cash = Cash::of(0.0, &items(&[(0, -10.0)]));
        assert_eq!(cash.debt_days(30), 300.0);
    }

    #[test]
    fn over_nothing_there_is_no_answer() {
        assert_eq!(per(10.0, 0.0), None);
        assert_eq!(break_even_price(10.0, 0.0, 0.0), None);
        assert_eq!(break_even_price(10.0, 5.0, 1.0), None, "all of the price goes in charges");
        assert_eq!(break_even_livability(10.0, 0.0, 2.0, 100.0), None);
    }

    /// Each break-even, put back, gives a profit of nothing.
    #[test]
    fn at_break_even_nothing_is_left() {
        let (total, other, kg, birds, placed) = (15_810.0, 6450.0, 979.9, 478.0, 500.0);
        let (price, feed_price, charges) = (17.0, 5.2, 0.05);
        let zero = |left: f64| assert!(left.abs() < 1e-9, "{left}");
        zero(break_even_price(total, kg, charges).unwrap() * kg * (1.0 - charges) - total);
        zero(break_even_weight_kg(total, price, birds).unwrap() * birds * price - total);
        zero(break_even_livability(total, price, 2.05, placed).unwrap() * placed * 2.05 * price - total);
        let fcr = break_even_fcr(price, other / kg, feed_price).unwrap();
        zero(kg * price - other - kg * feed_cost_per_kg(fcr, feed_price));
        zero(cash_break_even_price(total, 700.0, 1200.0, kg).unwrap() * kg - (total - 1900.0));
    }

    #[test]
    fn a_tool_is_worn_off_over_its_batches() {
        assert_eq!(depreciation_per_batch(700.0, 100.0, 5.0, 6.0), Some(20.0));
        assert_eq!(depreciation_per_batch(700.0, 100.0, 0.0, 6.0), None);
    }
}
