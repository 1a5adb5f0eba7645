//! Catching day: how many crates for the birds that are likely, and when feed goes away.

use model::catching::FEED_OFF_H;
use quantity::Raw;

use crate::families::selling::SaleDay;
use crate::families::space::sold_in_hottest_quarter;
use crate::sale::Sale;
use crate::sums::{self, SumResult};

/// Birds left out of a crate in hot months, percent: 10 to 25 (common practice).
const FEWER_IN_HEAT: &str = "20";

/// Hours between which feed may go away for slaughter at an hour: from so long before to so long before, each 0 to 23 with whether
/// it is the day before.
pub fn feed_off(slaughter_h: i32) -> [(i32, bool); 2] {
    let (least, most) = FEED_OFF_H;
    [most, least].map(|before| {
        let hour = slaughter_h - before;
        (hour.rem_euclid(24), hour < 0)
    })
}

/// Crates for all birds of the day that is best: the quick sum `catching` over what is likely.
pub fn crates(sale: &Sale, day: &SaleDay) -> Option<SumResult> {
    let hot = sold_in_hottest_quarter(&sale.walk.plan.answers) == Some(true);
    let raw = |key: &str, text: String| Raw { key: key.to_owned(), text: vec![text], line: None };
    let mut raws = vec![
        raw("birds", format!("{:.0}", day.birds.round().max(1.0))),
        raw("weight_kg", format!("{:.3}", day.weight_g / 1000.0)),
    ];
    raws.extend(hot.then(|| raw("fewer_percent", FEWER_IN_HEAT.to_owned())));
    Some(sums::by_name("catching")?.work_out(&raws, true))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Slaughter at 06:00 after 8 to 12 hours: feed off from 18:00 to 22:00 of the day before; 10 hours is 20:00, between them.
    #[test]
    fn feed_goes_the_evening_before() {
        assert_eq!(feed_off(6), [(18, true), (22, true)]);
        assert_eq!(feed_off(10), [(22, true), (2, false)]);
        assert_eq!(feed_off(14), [(2, false), (6, false)]);
    }
}
