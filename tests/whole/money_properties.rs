//! What must hold of a batch's money whatever the numbers.

use advice::futures_table;
use model::budget::{
    Cash, CashItem, break_even_bag_price, break_even_fcr, break_even_livability, break_even_price,
    break_even_weight_kg, dressed_price, per,
};
use model::risk;
use model::scenarios::{self, Batch, SoldBy};
use proptest::prelude::*;
use quantity::Currency;

const FUTURES: u32 = 500;

fn any_items() -> impl Strategy<Value = Vec<CashItem>> {
    let item = (-60..90i32, -5000.0..5000.0f64).prop_map(|(day, amount)| CashItem { day, amount });
    prop::collection::vec(item, 1..40)
}

fn any_batch() -> impl Strategy<Value = Batch> {
    let prices = (0.1..50.0f64, 0.0..5000.0f64, 0.05..10.0f64, 0.5..60.0f64, any::<bool>());
    let birds = (50.0..3000.0f64, 0.0..0.5f64, 0.5..3.5f64, 1.2..3.0f64);
    let spreads = (0.0..1.2f64, 0.0..0.3f64, 0.0..0.2f64, 0.0..0.3f64, -1.0..1.0f64);
    (prices, birds, spreads).prop_map(|(prices, birds, spreads)| Batch {
        chicks: birds.0.round(),
        chick_cost: prices.0,
        fixed_cost: prices.1,
        feed_price: prices.2,
        feed_price_cv: spreads.3,
        sale_price: prices.3,
        sale_price_cv: spreads.3,
        sold_by: if prices.4 { SoldBy::Head } else { SoldBy::Kilogram },
        losses: birds.1,
        losses_spread: spreads.0,
        weight_kg: birds.2,
        weight_cv: spreads.1,
        fcr: birds.3,
        fcr_cv: spreads.2,
        weight_fcr_correlation: spreads.4,
        lost_bird_feed: 0.3,
    })
}

fn close(a: f64, b: f64, scale: f64) -> bool {
    (a - b).abs() <= 1e-9 * (1.0 + scale.abs())
}

proptest! {
    #[test]
    fn cash_closes(start in -1000.0..20_000.0f64, items in any_items()) {
        let cash = Cash::of(start, &items);
        let moved: f64 = items.iter().map(|item| item.amount).sum();
        prop_assert!(close(cash.end().unwrap() - start, moved, 1e5));
        let low = cash.low_point().unwrap();
        prop_assert!(cash.days().iter().all(|day| day.balance >= low.balance));
        prop_assert_eq!(cash.first_shortage().is_some(), low.balance < -0.0005);
    }

    /// Money in hand that covers the low point leaves no shortage, and a coin less leaves one.
    #[test]
    fn the_low_point_is_what_must_be_in_hand(items in any_items()) {
        let needed = -Cash::of(0.0, &items).low_point().unwrap().balance;
        prop_assert!(Cash::of(needed, &items).first_shortage().is_none());
        prop_assert!(Cash::of(needed - 0.01, &items).first_shortage().is_some());
    }

    /// Owed money times days, against a count day by day.
    #[test]
    fn debt_is_counted_by_the_day(start in -500.0..5000.0f64, items in any_items(), until in -70..120i32) {
        let cash = Cash::of(start, &items);
        let first = cash.days()[0].day;
        let owed_on = |day: i32| {
            let closed = cash.days().iter().rev().find(|closing| closing.day <= day);
            closed.map_or(0.0, |closing| (-closing.balance).max(0.0))
        };
        let by_the_day: f64 = (first..until).map(owed_on).sum();
        prop_assert!(close(cash.debt_days(until), by_the_day, by_the_day));
    }

    /// In another currency at k to one, every cost and price is k times, every weight and share the same.
    #[test]
    fn prices_times_k_are_costs_times_k(
        (total, income) in (1.0..1e6f64, 1.0..1e6f64), price in 0.5..100.0f64, kg in 1.0..1e4f64, k in 0.001..1000.0f64,
    ) {
        let same = |a: Option<f64>, b: Option<f64>| close(a.unwrap(), b.unwrap(), a.unwrap());
        let times = |a: Option<f64>, b: Option<f64>| close(k * a.unwrap(), b.unwrap(), b.unwrap());
        prop_assert!(times(per(total, kg), per(k * total, kg)));
        prop_assert!(times(break_even_price(total, kg, 0.1), break_even_price(k * total, kg, 0.1)));
        prop_assert!(times(break_even_bag_price(income, total, 36.0), break_even_bag_price(k * income, k * total, 36.0)));
        prop_assert!(times(dressed_price(price, total, 0.7), dressed_price(k * price, k * total, 0.7)));
        prop_assert!(same(break_even_weight_kg(total, price, kg), break_even_weight_kg(k * total, k * price, kg)));
        prop_assert!(same(
            break_even_livability(total, price, 2.0, kg),
            break_even_livability(k * total, k * price, 2.0, kg),
        ));
        prop_assert!(same(
            break_even_fcr(2.0 * price, price, 0.5 * price),
            break_even_fcr(k * 2.0 * price, k * price, k * 0.5 * price),
        ));
    }

    #[test]
    fn prices_times_k_are_profits_times_k(batch in any_batch(), k in 0.01..100.0f64) {
        let dearer = Batch {
            chick_cost: k * batch.chick_cost,
            fixed_cost: k * batch.fixed_cost,
            feed_price: k * batch.feed_price,
            sale_price: k * batch.sale_price,
            ..batch
        };
        let futures = scenarios::run(9, FUTURES, &batch).unwrap();
        for (one, k_times) in futures.iter().zip(scenarios::run(9, FUTURES, &dearer).unwrap()) {
            prop_assert!(close(k * one.cost, k_times.cost, k_times.cost));
            prop_assert!(close(k * one.profit, k_times.profit, k_times.cost + k_times.income));
            prop_assert_eq!(one.kg_sold, k_times.kg_sold);
        }
    }

    /// Money and birds close in every future.
    #[test]
    fn every_future_adds_up(batch in any_batch(), seed in any::<u64>()) {
        for future in scenarios::run(seed, FUTURES, &batch).unwrap() {
            let spent = batch.chicks * batch.chick_cost + batch.fixed_cost + future.feed_kg * future.feed_price;
            prop_assert!(close(spent, future.cost, spent));
            prop_assert!(close(future.income - future.cost, future.profit, future.income));
            prop_assert!((0.0..=batch.chicks).contains(&future.birds_sold));
            prop_assert!((0.0..=1.0).contains(&future.losses));
            prop_assert!((future.birds_sold - batch.chicks * (1.0 - future.losses)).abs() <= 0.5);
            prop_assert!(future.weight_kg > 0.0 && future.feed_price > 0.0 && future.sale_price > 0.0);
        }
    }
}

/// Whoever opens the table gets the same chance of loss, quantiles and means, to the last bit.
#[test]
fn figures_counted_from_the_table_are_ours() {
    let batch = Batch {
        chicks: 1600.0,
        chick_cost: 7.0,
        fixed_cost: 9000.0,
        feed_price: 5.2,
        feed_price_cv: scenarios::FEED_PRICE_SPREAD.value,
        sale_price: 17.0,
        sale_price_cv: scenarios::SALE_PRICE_SPREAD.value,
        sold_by: SoldBy::Kilogram,
        losses: 0.04,
        losses_spread: scenarios::LOSSES_SPREAD.value,
        weight_kg: 2.035,
        weight_cv: scenarios::WEIGHT_SPREAD.value,
        fcr: 1.8,
        fcr_cv: scenarios::FCR_SPREAD.value,
        weight_fcr_correlation: scenarios::WEIGHT_WITH_FCR.value,
        lost_bird_feed: scenarios::LOST_BIRD_FEED.value,
    };
    let futures = scenarios::run(4, 1000, &batch).unwrap();
    let table = futures_table::csv(&futures, batch.sold_by, Currency::from_code("XTS").unwrap());
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let place = reader.headers().unwrap().iter().position(|name| name == "profit_xts").unwrap();
    let read: Vec<f64> = reader.records().map(|row| row.unwrap()[place].parse().unwrap()).collect();
    let ours: Vec<f64> = futures.iter().map(|future| future.profit).collect();
    assert_eq!(read, ours);

    let summary = risk::summary(&ours).unwrap();
    assert!(summary.loss.share > 0.05 && summary.loss.share < 0.95, "the batch is a fair test of both");
    let mut ascending = read.clone();
    ascending.sort_by(f64::total_cmp);
    assert_eq!(summary.loss.share, read.iter().filter(|profit| **profit < 0.0).count() as f64 / 1000.0);
    // Place 0.5 x 999 is half-way between the 500th and the 501st.
    assert!(close(summary.p50, (ascending[499] + ascending[500]) / 2.0, summary.p50));
    assert!(close(summary.p05, ascending[49] + 0.95 * (ascending[50] - ascending[49]), summary.p05));
    assert!(close(summary.worst_tenth_mean, ascending[..100].iter().sum::<f64>() / 100.0, summary.mean));
}
