//! The futures of a batch on its way as a table for a spreadsheet: what the figures of the outlook are counted from.

use std::fmt::Write;

use model::outlook::futures::{Future, Now};
use quantity::Currency;

/// Comma-separated values, a line a future and day, units last in each name.
///
/// Numbers have a decimal point and the fewest digits that read back to the same number, so figures counted from the table equal
/// ours: the middle of all futures, and nine of ten. How far birds differ stands as their coefficient of variation; water is
/// empty where the plan has none. Feed left is what is on hand today less what is eaten, below 0 for what
/// must be bought. Prices are empty where they are not known.
pub fn csv(now: &Now, futures: &[Future], currency: Currency) -> String {
    let money = currency.code().to_lowercase();
    let mut table = format!(
        "scenario,day,mean_weight_g,birds,eaten_kg,starter_left_kg,grower_left_kg,finisher_left_kg,last_left_kg,\
         feed_left_kg,feed_price_{money}_per_kg,sale_price_{money}_per_kg,worth_{money},cv_percent,water_l\n"
    );
    for (number, future) in futures.iter().enumerate() {
        rows(&mut table, number, now, future);
    }
    table
}

fn rows(table: &mut String, number: usize, now: &Now, future: &Future) {
    for (at, (day, point)) in (now.first_day..).zip(&future.days).enumerate() {
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
                write!(table, "{},{},{worth}", prices.feed_kg, prices.live_kg)
            }
            None => write!(table, ",,"),
        };
        let water = future.water_l(now, at).map_or_else(String::new, |litres| litres.to_string());
        let _ = writeln!(table, ",{},{water}", 100.0 * future.cv);
    }
}

#[cfg(test)]
mod tests {
    use model::outlook::filter::{Law, State};
    use model::outlook::futures::{Day, Point, Prices};
    use model::outlook::hazard::Hazard;
    use model::outlook::spread::Spread;

    use super::*;

    #[test]
    fn a_line_a_future_and_day() {
        let wet = Day { standard_g: 800.0, feed_g: 100.0, lost_share: 0.0, feed: 0, water_l_a_kg: Some(2.0) };
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
            appetite_ahead: 0.0,
            thirst: (0.0, 0.0),
            spread: Spread::before(),
            too_hot_c: 0.0,
            store_kg: [0.0; 4],
            unfed: None,
            first_day: 22,
            days: vec![wet, Day { water_l_a_kg: None, ..wet }],
            prices: None,
        };
        let point = Point { weight_g: 812.5, birds: 10.0, eaten_kg: 1.1, left_kg: [0.0, 5.5, -1.25, 0.0] };
        let priced = Some(Prices { feed_kg: 12.0, live_kg: 64.0 });
        let future =
            |days: usize, prices| Future { days: vec![point; days], prices, cv: 0.125, thirst: 1.25 };
        let futures = [future(2, priced), future(1, None)];
        let table = csv(&now, &futures, Currency::from_code("XTS").unwrap());
        let lines: Vec<&str> = table.lines().skip(1).collect();
        assert_eq!(
            lines,
            [
                "0,22,812.5,10,1.1,0,5.5,-1.25,0,4.25,12,64,520,12.5,2.75",
                "0,23,812.5,10,1.1,0,5.5,-1.25,0,4.25,12,64,520,12.5,",
                "1,22,812.5,10,1.1,0,5.5,-1.25,0,4.25,,,,12.5,2.75",
            ]
        );
        assert!(table.starts_with("scenario,day,") && table.contains("worth_xts,cv_percent,water_l\n"));
    }
}
