//! Limits that depend on the rest of the book. At a merge they refuse nothing: they are findings of the fold.

use quantity::CivilDay;
use uuid::Uuid;

use crate::entry::HouseId;
use crate::finding::Finding;
use crate::fold::BookState;
use crate::kind::Slot;
use crate::record::Record;
use crate::tally::{PHASES, phase_of};

/// No more birds go than are there. Told of the last day on which it is so, by the entry of that day that takes birds
/// away.
pub(crate) fn not_more_than_alive(state: &BookState, record: &Record) -> Option<Finding> {
    let entry = record.entry();
    let alive = state.checkpoint(entry.subject, entry.day).tally.alive()?;
    let short = (-alive).max(0.0);
    (short > 0.0).then_some(Finding::MoreGoneThanAlive { entry: entry.id, birds: short as u64 })
}

/// No more feed is given than came. Deliveries are often written down late, so this is something to look at.
pub(crate) fn feed_was_delivered(state: &BookState, record: &Record) -> Option<Finding> {
    let entry = record.entry();
    let phase = phase_of(record)?;
    let left = state.checkpoint(entry.subject, entry.day).tally.left_kg(phase);
    // Half a kilogram is what a scale and a memory of bags are off by.
    (left < -0.5).then(|| Finding::MoreFeedThanDelivered {
        entry: entry.id,
        phase: PHASES[phase],
        kilograms: (-left).round() as u64,
    })
}

/// No more crops are full than were felt.
pub(crate) fn no_more_full_than_felt(_: &BookState, record: &Record) -> Option<Finding> {
    let (full, felt) = (record.number("full")?, record.number("felt")?);
    (full > felt).then_some(Finding::MoreFullThanFelt { entry: record.entry().id })
}

/// Chicks come on the day of the plan or some days beside it. Further off, one of the two is a slip.
pub(crate) fn placed_near_the_plan(state: &BookState, record: &Record) -> Option<Finding> {
    let entry = record.entry();
    let planned = state.current(&Slot::of("plan-adopted", entry.subject))?.word("batch.placement")?;
    let days = entry.day.days_since(CivilDay::parse(&planned)?);
    (days.abs() > PLACED_OFF_BY_DAYS).then_some(Finding::PlacedFarFromPlan { entry: entry.id, days })
}

/// Hatcheries slip by a week (common practice); two weeks off is a wrong month. Our judgement.
const PLACED_OFF_BY_DAYS: i32 = 14;

/// The answer of an adopted plan that names its house, by id.
pub const HOUSE_OF_PLAN: &str = "house";

/// A plan that names a house must name one that somebody has described, on whatever day: a house is often described, or
/// put right, after the plan was made. A plan that names none carries its house within, and is left alone.
pub(crate) fn house_of_the_plan_is_known(state: &BookState, plan: &Record) -> Option<Finding> {
    let house = plan.word(HOUSE_OF_PLAN)?;
    let is_known = Uuid::parse_str(&house).is_ok_and(|id| state.has_house(HouseId(id)));
    (!is_known).then(|| Finding::PlanForUnknownHouse { entry: plan.entry().id, house })
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;
    use crate::compose::Draft;
    use crate::entry::Subject;
    use crate::trial::make::{self, BATCH, HOUSE, Phone, body, house};

    fn plan(house: &str) -> Draft {
        Draft::new(make::id(10), "plan-adopted", BATCH, make::day(0), body(HOUSE_OF_PLAN, json!(house)))
    }

    fn house_id() -> String {
        let Subject::House(HouseId(id)) = HOUSE else { panic!("the house of the tests is a house") };
        id.to_string()
    }

    #[test]
    fn a_plan_for_a_house_that_nobody_described_is_found() {
        let mut phone = Phone::new(1);
        phone.write(plan(&house_id()));
        let finding = Finding::PlanForUnknownHouse { entry: make::id(10), house: house_id() };
        assert_eq!(phone.state.findings(), [finding]);
        let described = phone.write(Draft { day: make::day(9), ..house(1, 10.0) });
        assert_eq!(phone.state.findings(), [], "described later is described");
        phone.write(Draft::withdrawal(make::id(2), &described.entry));
        assert_eq!(phone.state.findings().len(), 1, "a house taken back is not known");
    }

    #[test]
    fn what_is_no_house_id_is_found_and_no_house_at_all_is_not() {
        let mut phone = Phone::new(1);
        phone.write(plan("the big one"));
        assert_eq!(phone.state.findings_about(BATCH).len(), 1);
        let mut phone = Phone::new(1);
        phone.write(Draft { body: body("chicks", json!(1600)), ..plan("") });
        assert_eq!(phone.state.findings(), []);
    }

    fn about(number: u128, kind: &str, on: i32, answers: &[(&str, serde_json::Value)]) -> Draft {
        let answers = answers.iter().flat_map(|(key, value)| body(key, value.clone()));
        Draft::new(make::id(number), kind, BATCH, make::day(on), answers.collect())
    }

    fn placed(number: u128, on: i32, counted: u32) -> Draft {
        let off = [("dead_on_arrival", json!(3)), ("weak_culled", json!(2))];
        about(number, "chicks-placed", on, &[&[("counted", json!(counted))], &off[..]].concat())
    }

    fn findings(drafts: impl IntoIterator<Item = Draft>) -> Vec<Finding> {
        let mut phone = Phone::new(1);
        drafts.into_iter().for_each(|draft| drop(phone.write(draft)));
        phone.state.findings_about(BATCH)
    }

    fn too_many(number: u128, birds: u64) -> Finding {
        Finding::MoreGoneThanAlive { entry: make::id(number), birds }
    }

    /// 100 counted less 3 dead in the boxes and 2 culled are 95: all of them may go, and not one more.
    #[test]
    fn no_more_birds_go_than_came_whichever_way_they_go() {
        let deaths = |dead: u32, culled: u32| {
            about(2, "deaths", 3, &[("dead", json!(dead)), ("culled", json!(culled))])
        };
        let out = |birds: u32| about(2, "birds-out", 3, &[("birds", json!(birds)), ("why", json!("home"))]);
        let sale = |birds: u32| about(2, "sale", 3, &[("birds", json!(birds)), ("income", json!(1))]);
        for last in [deaths(90, 5), out(95), sale(95)] {
            assert_eq!(findings([placed(1, 0, 100), last]), []);
        }
        for last in [deaths(90, 6), out(96), sale(96)] {
            assert_eq!(findings([placed(1, 0, 100), last]), [too_many(2, 1)]);
        }
    }

    #[test]
    fn birds_are_counted_over_days_and_only_up_to_the_day() {
        let dead = |number, on, dead: u32| about(number, "deaths", on, &[("dead", json!(dead))]);
        let sold = |number, on, birds: u32| about(number, "sale", on, &[("birds", json!(birds))]);
        let drafts = [placed(1, 0, 100), dead(2, 1, 40), sold(3, 2, 50), dead(4, 3, 15)];
        assert_eq!(findings(drafts), [too_many(4, 10)], "days before it were right");
        assert_eq!(findings([dead(2, 1, 40)]), [], "nobody said how many came");
        assert_eq!(findings([dead(2, 1, 1), placed(1, 2, 100), sold(3, 9, 96)]), [too_many(3, 2)]);
    }

    fn feed(number: u128, kind: &str, on: i32, phase: &str, kilograms: f64) -> Draft {
        let amount = match kind {
            "feed-delivered" => vec![("bags", json!(kilograms / 50.0)), ("bag_kg", json!(50))],
            _ => vec![("feed_kg", json!(kilograms))],
        };
        about(number, kind, on, &[vec![("phase", json!(phase))], amount].concat())
    }

    #[test]
    fn no_more_feed_is_given_than_came_and_is_left() {
        let with = |given: f64| {
            [
                feed(1, "feed-delivered", 0, "grower", 100.0),
                feed(2, "feed-spoiled", 0, "grower", 20.0),
                feed(3, "feed-given", 1, "grower", given),
            ]
        };
        let found =
            |kilograms| [Finding::MoreFeedThanDelivered { entry: make::id(3), phase: "grower", kilograms }];
        assert_eq!(findings(with(80.5)), [], "half a kilogram is the scale's");
        assert_eq!(findings(with(80.75)), found(1));
        assert_eq!(findings(with(92.0)), found(12));
    }

    #[test]
    fn a_feed_is_not_made_up_for_by_another_nor_by_a_later_delivery() {
        let given = feed(3, "feed-given", 1, "grower", 10.0);
        let found = [Finding::MoreFeedThanDelivered { entry: make::id(3), phase: "grower", kilograms: 10 }];
        let other = feed(1, "feed-delivered", 0, "finisher", 100.0);
        assert_eq!(findings([other, given.clone()]), found);
        let late = feed(1, "feed-delivered", 2, "grower", 100.0);
        assert_eq!(findings([late, given.clone()]), found);
        let in_time = feed(1, "feed-delivered", 1, "grower", 100.0);
        assert_eq!(findings([given, in_time]), [], "the day counts, not the hour of writing");
    }

    #[test]
    fn no_more_crops_are_full_than_were_felt() {
        let felt = |full: u32| {
            about(1, "crop-fill", 1, &[("hours_h", json!(24)), ("felt", json!(30)), ("full", json!(full))])
        };
        assert_eq!(findings([felt(30)]), []);
        assert_eq!(findings([felt(31)]), [Finding::MoreFullThanFelt { entry: make::id(1) }]);
    }

    #[test]
    fn chicks_come_within_two_weeks_of_the_plan() {
        let plan =
            |day: i32| about(1, "plan-adopted", 0, &[("batch.placement", json!(make::day(day).to_string()))]);
        for near in [6, 20, 34] {
            assert_eq!(findings([plan(near), placed(2, 20, 100)]), [], "planned for day {near}");
        }
        for (far, days) in [(5, 15), (35, -15)] {
            let found = Finding::PlacedFarFromPlan { entry: make::id(2), days };
            assert_eq!(findings([plan(far), placed(2, 20, 100)]), [found]);
        }
        assert_eq!(findings([placed(2, 20, 100)]), [], "no plan, nothing to be far from");
    }

    /// What a newer program wrote says nothing here, which is not that no chick came.
    #[test]
    fn chicks_of_an_unreadable_entry_are_not_none() {
        let mut phone = Phone::new(1);
        let mut newer = phone.write(placed(1, 0, 100)).entry;
        newer.body_version += 1;
        let mut state = BookState::new(make::FARM);
        state.append(newer.encode().unwrap());
        state.append(Phone::new(2).write(about(2, "deaths", 3, &[("dead", json!(4))])));
        assert_eq!(state.checkpoint(BATCH, make::day(9)).tally.placed, None);
        assert_eq!(state.findings_about(BATCH), []);
    }

    /// One test above for each limit of the table of kinds: a new one wants its own.
    #[test]
    fn every_limit_is_tried() {
        let limited: Vec<&str> =
            crate::kind::KINDS.iter().filter(|kind| kind.limit.is_some()).map(|kind| kind.name).collect();
        let tried =
            ["plan-adopted", "chicks-placed", "feed-given", "crop-fill", "deaths", "birds-out", "sale"];
        assert_eq!(limited, tried);
    }
}
