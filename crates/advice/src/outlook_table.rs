//! The futures of a batch on its way as a table for a spreadsheet: what the figures of the outlook are counted from.

use std::fmt::Write;

use model::outlook::futures::{Future, Now};
use quantity::Currency;

/// Comma-separated values, a line a future and day, units last in each name.
///
/// Numbers have a decimal point and the fewest digits that read back to the same number, so figures counted from the table equal
/// ours: the middle of all futures, and nine of ten. Feed left is what is on hand today less what is eaten, below 0 for what
/// must be bought. Prices are empty where they are not known.
pub fn csv(now: &Now, futures: &[Future], currency: Currency) -> String {
    let money = currency.code().to_lowercase();
    let mut table = format!(
        "scenario,day,mean_weight_g,birds,eaten_kg,starter_left_kg,grower_left_kg,finisher_left_kg,last_left_kg,\
         feed_left_kg,feed_price_{money}_per_kg,sale_price_{money}_per_kg,worth_{money}\n"
    );
    for (number, future) in futures.iter().enumerate() {
        rows(&mut table, number, now.first_day, future);
    }
    table
}

fn rows(table: &mut String, number: usize, first_day: i32, future: &Future) {
    for (day, point) in (first_day..).zip(&future.days) {
        let [starter, grower, finisher, last] = point.left_kg;
        let (weight, birds, eaten, left) = (point.weight_g, point.birds, point.eaten_kg, point.all_left_kg());
        // Writing to a string does not fail.
        let _ = write!(
            table,
            "{number},{day},{weight},{birds},{eaten},{starter},{grower},{finisher},{last},{left},"
        );
        let _ = match &future.prices {
            Some(prices) => {
                let worth = birds * weight / 1000.0 * prices.live_kg;
                writeln!(table, "{},{},{worth}", prices.feed_kg, prices.live_kg)
            }
            None => writeln!(table, ",,"),
        };
    }
}

#[cfg(test)]
mod tests {
    use model::outlook::filter::{Law, State};
    use model::outlook::futures::{Point, Prices};
    use model::outlook::hazard::Hazard;

    use super::*;

    #[test]
    fn a_line_a_future_and_day() {
        let now = Now {
            state: State {
                level: 0.0,
                slope: 0.0,
                level_variance: 0.0,
                covariance: 0.0,
                slope_variance: 0.0,
            },
            law: Law { damping: 1.0, level_noise: 0.0, slope_noise: 0.0 },
            alive: 10.0,
            hazard: Hazard::before(),
            appetite: (0.0, 0.0),
            too_hot_c: 0.0,
            store_kg: [0.0; 4],
            unfed: None,
            first_day: 22,
            days: Vec::new(),
            prices: None,
        };
        let point = Point { weight_g: 812.5, birds: 10.0, eaten_kg: 1.1, left_kg: [0.0, 5.5, -1.25, 0.0] };
        let priced = Some(Prices { feed_kg: 12.0, live_kg: 64.0 });
        let futures =
            [Future { days: vec![point; 2], prices: priced }, Future { days: vec![point], prices: None }];
        let table = csv(&now, &futures, Currency::from_code("XTS").unwrap());
        let lines: Vec<&str> = table.lines().skip(1).collect();
        assert_eq!(
            lines,
            [
                "0,22,812.5,10,1.1,0,5.5,-1.25,0,4.25,12,64,520",
                "0,23,812.5,10,1.1,0,5.5,-1.25,0,4.25,12,64,520",
                "1,22,812.5,10,1.1,0,5.5,-1.25,0,4.25,,,",
            ]
        );
        assert!(table.starts_with("scenario,day,") && table.contains("worth_xts\n"));
    }
}
