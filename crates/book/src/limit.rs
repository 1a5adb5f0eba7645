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
}
