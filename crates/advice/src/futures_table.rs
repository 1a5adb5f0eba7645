//! The futures of a batch as a table for a spreadsheet: what the figures of risk are counted from.

use std::fmt::Write;

use model::scenarios::{Scenario, SoldBy};
use quantity::Currency;

/// Comma-separated values, a line a future in the order of their numbers, units last in each name.
///
/// Numbers have a decimal point and the fewest digits that read back to the same number, so figures counted from the table
/// equal ours. `fcr` is empty where nothing is sold.
pub fn csv(scenarios: &[Scenario], sold_by: SoldBy, currency: Currency) -> String {
    let mut table = header(sold_by, currency);
    for (number, scenario) in scenarios.iter().enumerate() {
        row(&mut table, number, scenario);
    }
    table
}

fn header(sold_by: SoldBy, currency: Currency) -> String {
    let money = currency.code().to_lowercase();
    let sold = match sold_by {
        SoldBy::Kilogram => "kg",
        SoldBy::Head => "bird",
    };
    format!(
        "scenario,losses_share,birds_sold,weight_kg,sold_kg,feed_kg,fcr,feed_price_{money}_per_kg,\
         sale_price_{money}_per_{sold},cost_{money},income_{money},profit_{money}\n"
    )
}

fn row(table: &mut String, number: usize, scenario: &Scenario) {
    let fcr = scenario.fcr().map_or_else(String::new, |fcr| fcr.to_string());
    let Scenario { losses, birds_sold, weight_kg, kg_sold, feed_kg, .. } = scenario;
    let Scenario { feed_price, sale_price, cost, income, profit, .. } = scenario;
    // Writing to a string does not fail.
    let _ = writeln!(
        table,
        "{number},{losses},{birds_sold},{weight_kg},{kg_sold},{feed_kg},{fcr},{feed_price},{sale_price},\
         {cost},{income},{profit}"
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    const FUTURE: Scenario = Scenario {
        losses: 0.044,
        birds_sold: 478.0,
        weight_kg: 2.05,
        kg_sold: 979.9,
        feed_kg: 1959.8,
        feed_price: 5.2,
        sale_price: 17.0,
        cost: 15_810.0,
        income: 16_658.3,
        profit: 848.3,
    };

    #[test]
    fn a_line_a_future() {
        let none = Scenario { losses: 1.0, birds_sold: 0.0, kg_sold: 0.0, feed_kg: 0.1 + 0.2, ..FUTURE };
        let table = csv(&[FUTURE, none], SoldBy::Kilogram, Currency::from_code("XTS").unwrap());
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(
            lines,
            [
                "scenario,losses_share,birds_sold,weight_kg,sold_kg,feed_kg,fcr,feed_price_xts_per_kg,\
                 sale_price_xts_per_kg,cost_xts,income_xts,profit_xts",
                "0,0.044,478,2.05,979.9,1959.8,2,5.2,17,15810,16658.3,848.3",
                "1,1,0,2.05,0,0.30000000000000004,,5.2,17,15810,16658.3,848.3",
            ]
        );
        assert!(header(SoldBy::Head, Currency::UNKNOWN).contains(",sale_price_xxx_per_bird,"));
    }
}
