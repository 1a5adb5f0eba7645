//! What a batch's book says about vaccines and medicines: which vaccination is due, from when birds may be sold, and
//! whether a day on which somebody wants to sell or catch them is held back.
//!
//! It knows what was written and nothing else: a medicine that nobody wrote down holds nothing back.

use model::medicine::clear_of_all;
use quantity::{CivilDay, FigureValue};

use crate::diary::Diary;
use crate::outcome::Outcome;

pub use model::medicine::{Clear, Withdrawal};

pub mod vaccinations;
pub mod waits;

pub use vaccinations::{Line, Programme, Standing, Vaccinations, VaccineGiven};
pub use waits::{Cause, Wait};

/// Vaccines and medicines of a batch, by its book up to a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Health {
    /// The day it is asked about.
    pub on: CivilDay,
    /// The programme and what was done of it.
    pub vaccinations: Vaccinations,
    /// What keeps birds from being eaten for a while, in the order it was given; those that are over too.
    pub waits: Vec<Wait>,
    /// The days from today on which birds are to be sold, in their order.
    pub sale_days: Vec<SaleDay>,
}

/// A day on which birds are to be sold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SaleDay {
    /// The day.
    pub day: CivilDay,
    /// Why that day.
    pub of: SaleOf,
}

/// Why birds are to be sold on a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaleOf {
    /// The first day of sale by the adopted plan.
    PlanFirst,
    /// Its last day of sale.
    PlanLast,
    /// The latest day of an order.
    Order {
        /// Who ordered.
        buyer: String,
    },
}

impl Health {
    /// Reads vaccines and medicines out of a batch's book.
    pub fn of(diary: &Diary) -> Health {
        Health {
            on: diary.on,
            vaccinations: Vaccinations::of(diary),
            waits: waits::all(diary),
            sale_days: sale_days(diary),
        }
    }

    /// When all that was given is cleared; `None` where nothing was given that is written down.
    pub fn clear(&self) -> Option<Clear> {
        let withdrawals: Vec<Withdrawal> = self.waits.iter().map(|wait| wait.withdrawal.clone()).collect();
        clear_of_all(&withdrawals)
    }

    /// What decides [`Health::clear`]: the first of which nobody knows how long to wait, else the one that ends last.
    pub fn ruling(&self) -> Option<&Wait> {
        let clear = self.clear()?;
        self.waits.iter().find(|wait| wait.withdrawal.clear() == clear)
    }

    /// What holds birds back on a day, so that none may be sold, eaten, given away or culled for food; empty where
    /// nothing that is written does.
    pub fn holding(&self, day: CivilDay) -> Vec<&Wait> {
        self.waits.iter().filter(|wait| wait.holds_on(day)).collect()
    }
}

fn sale_days(diary: &Diary) -> Vec<SaleDay> {
    let ids = [("sale.first_date", SaleOf::PlanFirst), ("sale.last_date", SaleOf::PlanLast)];
    let outcome = Outcome::of(&diary.answers, ids.iter().map(|(id, _)| *id));
    let planned = ids.into_iter().filter_map(|(id, of)| match outcome.get(id)?.figure.value {
        FigureValue::Day(day) => Some(SaleDay { day, of }),
        FigureValue::Number(_) => None,
    });
    let orders = diary.of_kind("order").filter_map(|note| {
        let buyer = note.text("buyer").unwrap_or_default().to_owned();
        Some(SaleDay { day: CivilDay::parse(note.text("latest")?)?, of: SaleOf::Order { buyer } })
    });
    let mut days: Vec<SaleDay> = planned.chain(orders).filter(|sale| sale.day >= diary.on).collect();
    days.sort_by_key(|sale| sale.day);
    // A plan that sells on one day names it once.
    days.dedup_by(|later, earlier| {
        later.day == earlier.day && later.of == SaleOf::PlanLast && earlier.of == SaleOf::PlanFirst
    });
    days
}

/// Diaries to test with.
#[cfg(test)]
pub(crate) mod make {
    use book::{Answer, BatchId, Body, EntryId, HybridClock, PersonId};
    use quantity::Answers;
    use uuid::Uuid;

    use super::*;
    use crate::diary::Noted;

    /// A day of September 2027 or after.
    pub(crate) fn day(number: i32) -> CivilDay {
        CivilDay::new(2027, 9, 1).unwrap().plus_days(number - 1)
    }

    /// Something written about a day.
    pub(crate) fn noted(kind: &'static str, on: i32, answers: &[(&str, serde_json::Value)]) -> Noted {
        let answer = |value: &serde_json::Value| Answer { typed: None, value: value.clone() };
        let body: Body = answers.iter().map(|(key, value)| ((*key).to_owned(), answer(value))).collect();
        Noted {
            id: EntryId(Uuid::nil()),
            kind,
            day: day(on),
            clock: HybridClock { millis: 0, counter: 0 },
            person: PersonId(Uuid::nil()),
            body,
        }
    }

    /// The book on a day of a batch of 1 000 chicks that came on 1 September.
    pub(crate) fn diary(on: i32, notes: Vec<Noted>) -> Diary {
        let mut answers = Answers::default();
        let mut set = |key: &str, value: quantity::Value| {
            let given = quantity::Given { typed: String::new(), value, line: None, usual: None };
            answers.set(crate::families::field(key).unwrap(), given);
        };
        set("batch.placement", quantity::Value::Day(day(1)));
        set("batch.sale_age_d", quantity::Value::Number(40.0));
        set(crate::families::growing::PLACED, quantity::Value::Number(1_000.0));
        Diary {
            batch: BatchId(Uuid::nil()),
            on: day(on),
            placement: Some(day(1)),
            is_placed: true,
            is_closed: false,
            answers,
            notes,
        }
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::make::{day, diary, noted};
    use super::*;

    #[test]
    fn days_of_sale_come_from_the_plan_and_the_orders() {
        let order = |buyer: &str, latest: i32| {
            noted(
                "order",
                1,
                &[("buyer", json!(buyer)), ("birds", json!(50)), ("latest", json!(day(latest).to_string()))],
            )
        };
        let health = Health::of(&diary(20, vec![order("school", 38), order("market", 19)]));
        let days: Vec<(CivilDay, SaleOf)> =
            health.sale_days.into_iter().map(|sale| (sale.day, sale.of)).collect();
        let school = SaleOf::Order { buyer: "school".to_owned() };
        assert_eq!(days, [(day(38), school), (day(41), SaleOf::PlanFirst)]);
    }

    #[test]
    fn the_latest_wait_rules_and_an_unknown_one_rules_all() {
        let given = |on: i32, name: &str, days: Option<i32>| {
            let mut body = vec![("medicine", json!(name)), ("hour_h", json!(18))];
            body.extend(days.map(|days| ("withdrawal_d", json!(days))));
            noted("medicine-given", on, &body)
        };
        let mut notes = vec![given(20, "powder", Some(14)), given(25, "syrup", Some(2))];
        let health = Health::of(&diary(26, notes.clone()));
        assert_eq!(health.clear(), Some(Clear::On { day: day(34), hour: 18 }));
        assert_eq!(health.ruling().unwrap().withdrawal.product, "powder");
        let held = |health: &Health, on: i32| -> Vec<String> {
            health.holding(day(on)).iter().map(|wait| wait.withdrawal.product.clone()).collect()
        };
        assert_eq!(held(&health, 27), ["powder", "syrup"]);
        assert_eq!(held(&health, 34), ["powder"]);
        assert!(held(&health, 35).is_empty());
        notes.push(given(3, "drops", None));
        let health = Health::of(&diary(26, notes));
        assert_eq!(health.clear(), Some(Clear::Unknown));
        assert_eq!(health.ruling().unwrap().withdrawal.product, "drops");
        assert_eq!(held(&health, 60), ["drops"]);
    }

    #[test]
    fn an_empty_book_holds_nothing_back() {
        let health = Health::of(&diary(26, Vec::new()));
        assert_eq!((health.clear(), health.ruling()), (None, None));
        assert!(health.holding(day(26)).is_empty());
    }
}
