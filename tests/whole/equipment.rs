//! Feeders, drinkers, brooders and sheets: what is needed, what is owned, what is short.

use proptest::prelude::*;

use crate::sample::{self, number};

fn told(keys: &str) -> advice::plan::Plan {
    sample::plan(&sample::complete().replace("[equipment]\n", &format!("[equipment]\n{keys}\n")))
}

/// The shipped table: a lid as a tray (common practice, no source), a trough of 60 cm at 2.5 cm a bird from both sides
/// (Ross handbook, from memory).
#[test]
fn chicks_share_the_feeders_of_their_kind() {
    for (kind, serves) in [("tray", 50.0), ("box-lid", 50.0), ("small-trough", 2.0 * 60.0 / 2.5)] {
        let plan = told(&format!("chick_feeder_kind = \"{kind}\""));
        let chicks = plan.answers.number("batch.chicks").unwrap();
        assert_eq!(number(&plan, "space.chick_feeders"), f64::ceil(chicks / serves), "{kind}");
    }
}

#[test]
fn one_number_holds_at_every_age() {
    let plan = told("feeder_serves = 45\nchick_feeder_serves = \"60\"");
    let chicks = plan.answers.number("batch.chicks").unwrap();
    assert_eq!(number(&plan, "space.chick_feeders"), f64::ceil(chicks / 60.0));
    let hung = number(&plan, "space.change_over") as i32;
    let birds = plan.outcome.on_day("batch.birds_alive", hung).unwrap();
    assert_eq!(number(&plan, "space.feeders"), f64::ceil(birds / 45.0));
    assert_eq!(plan.outcome.on_day("space.feeders_by_day", hung - 1), Some(0.0));
}

/// What runs short only when birds grow is short from that day on.
#[test]
fn the_day_of_shortage_is_the_day_that_needs_more() {
    let plan = told("feeder_serves = \"0: 60, 21: 30\"");
    let short = plan.findings.iter().find(|finding| finding.name == "feeders-short").unwrap();
    let day = format!("{:?}", short.details.iter().find(|detail| detail.0 == "day").unwrap());
    assert!(day.contains("21"), "{day}");
}

/// Only what lacks is bought, and nothing is bought of what is there.
#[test]
fn sheets_owned_are_not_bought_again() {
    let with = |owned: u32| {
        let text = sample::complete().replace("sheets_owned = 2", &format!("sheets_owned = {owned}"));
        sample::plan(&text)
    };
    let bare = with(0);
    let (needed, cost) = (number(&bare, "guard.sheets"), number(&bare, "guard.cost"));
    let total = number(&bare, "money.cost_total");
    for owned in [0, 3, needed as u32, needed as u32 + 2] {
        let plan = with(owned);
        let buy = (needed - f64::from(owned)).max(0.0);
        assert_eq!(number(&plan, "guard.sheets"), needed);
        assert_eq!(number(&plan, "guard.sheets_to_buy"), buy);
        assert!((number(&plan, "guard.cost") - cost * buy / needed).abs() < 0.01);
        let bought = plan.purchases.iter().find(|one| one.what == "guard").map(|one| one.quantity);
        assert_eq!(bought, (buy > 0.0).then_some(Some(buy)), "{owned}");
        let saved = cost - number(&plan, "guard.cost");
        // Interest falls with what is paid, so that a little more than the sheets is saved.
        assert!(total - number(&plan, "money.cost_total") >= saved - 0.01, "{owned}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// On no day too few, and on the day that needs most one fewer would be too few.
    #[test]
    fn as_many_as_the_hardest_day_needs(young in 20u32..200, old in 20u32..200, day in 8i32..40) {
        let plan = told(&format!("drinker_serves = \"0: {young}, {day}: {old}\""));
        let needed = number(&plan, "space.drinkers");
        let more = number(&plan, "space.more_drinkers");
        let hung = number(&plan, "space.change_over") as i32;
        let serves = |age: i32| f64::from(if age < day { young } else { old });
        let wanted = |age: i32| plan.outcome.on_day("batch.birds_alive", age).unwrap() * more / serves(age);
        let most = (hung..=plan.outcome.last_day().unwrap()).map(wanted).fold(0.0, f64::max);
        prop_assert!(needed >= most - 1e-9 && needed - 1.0 < most, "{needed} for {most}");
    }
}
