//! Feed: ordered when it runs low, carted to the farm, given bag by bag.

use crate::scenario::{Event, Scenario};

/// The feeds, in the order they are eaten.
pub const PHASES: [&str; 3] = ["starter", "grower", "finisher"];

/// A bag, kg.
pub(crate) const BAG_KG: f64 = 50.0;

/// Days that an order takes.
const CARTED_IN: i32 = 1;

/// Days of feed that are left when the grower orders, and that an order lasts.
const ORDERED_AT: f64 = 2.5;
const LASTS: f64 = 8.0;

/// A cart of one feed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Delivery {
    /// Day of age.
    pub age: i32,
    /// Which of [`PHASES`].
    pub phase: usize,
    /// Bags of 50 kg.
    pub bags: u32,
    /// Days later than it was promised.
    pub late: i32,
}

/// What is in store and on its way.
#[derive(Clone, Debug, Default)]
pub(crate) struct StoreRoom {
    kg: [f64; 3],
    /// All that came and will come.
    pub(crate) deliveries: Vec<Delivery>,
}

impl StoreRoom {
    /// A store with the first starter in it, brought two days before the chicks.
    pub(crate) fn with_starter(chicks: u32) -> StoreRoom {
        // Starter for the first week, 150 g a chick, and a bag to spare.
        let bags = (0.15 * f64::from(chicks) / BAG_KG).ceil() as u32 + 1;
        let first = Delivery { age: -2, phase: 0, bags, late: 0 };
        StoreRoom { kg: [f64::from(bags) * BAG_KG, 0.0, 0.0], deliveries: vec![first] }
    }

    /// Takes in what comes on a day.
    pub(crate) fn take_in(&mut self, age: i32) {
        for cart in self.deliveries.iter().filter(|cart| cart.age == age) {
            self.kg[cart.phase] += f64::from(cart.bags) * BAG_KG;
        }
    }

    /// Gives up to so much on a day: what is left of an earlier feed first, then the day's own; by feed, in half kilograms.
    /// Stretches what is there when the next cart is late.
    pub(crate) fn give(&mut self, wanted_kg: f64, phase: usize) -> [f64; 3] {
        let there_kg: f64 = self.kg.iter().take(phase + 1).sum();
        let is_short = there_kg < SHORT_DAYS * wanted_kg;
        let allowed_kg = if is_short { wanted_kg.min(RATIONED * there_kg) } else { wanted_kg };
        let mut left_kg = (2.0 * allowed_kg).round() / 2.0;
        let mut given = [0.0; 3];
        for (given, store) in given.iter_mut().zip(self.kg.iter_mut()).take(phase + 1) {
            *given = left_kg.min(*store);
            *store -= *given;
            left_kg -= *given;
        }
        given
    }

    /// Orders in the evening, if what is there and on its way of the next days' feed is short.
    pub(crate) fn order(&mut self, scenario: &Scenario, age: i32, day_kg: f64) {
        let phase = phase_of(scenario, age + CARTED_IN + 1);
        let coming = |cart: &&Delivery| cart.phase <= phase && cart.age > age;
        let carts_kg: f64 =
            self.deliveries.iter().filter(coming).map(|cart| f64::from(cart.bags) * BAG_KG).sum();
        let there_kg = self.kg.iter().take(phase + 1).sum::<f64>() + carts_kg;
        let days = days_left(scenario, age).min(LASTS);
        if there_kg > ORDERED_AT * day_kg || days <= 1.0 {
            return;
        }
        let bags = ((days * GROWS * day_kg - there_kg) / BAG_KG).ceil().max(1.0) as u32;
        let due = age + CARTED_IN;
        let late = self.late(&scenario.events, due);
        self.deliveries.push(Delivery { age: due + late, phase, bags, late });
    }

    /// How late the cart is that is due on a day: only the first after the event is.
    fn late(&self, events: &[Event], due: i32) -> i32 {
        let is_first = |day: i32| self.deliveries.iter().all(|cart| cart.age - cart.late < day);
        let of = |event: &Event| match *event {
            Event::LateFeed { day, late } if day <= due && is_first(day) => late,
            _ => 0,
        };
        events.iter().map(of).max().unwrap_or_default()
    }
}

/// Who has less than so many days of feed gives no more than this share of it.
const SHORT_DAYS: f64 = 1.3;
const RATIONED: f64 = 0.6;

/// How much more than today's is eaten a day until the next cart.
const GROWS: f64 = 1.12;

/// Days until the last birds go that feed has to last.
fn days_left(scenario: &Scenario, age: i32) -> f64 {
    f64::from(scenario.sale_age + 2 - age)
}

/// Which feed a day has.
pub(crate) fn phase_of(scenario: &Scenario, age: i32) -> usize {
    scenario.phases_until.iter().filter(|last| age > **last).count()
}

#[cfg(test)]
mod tests {
    use quantity::CivilDay;

    use super::*;

    fn scenario() -> Scenario {
        Scenario::quiet(1, CivilDay::new(2027, 3, 1).unwrap(), 600)
    }

    #[test]
    fn old_feed_goes_first_and_no_more_is_given_than_there_is() {
        let mut store = StoreRoom { kg: [3.0, 10.0, 50.0], deliveries: Vec::new() };
        assert_eq!(store.give(8.2, 1), [3.0, 5.0, 0.0]);
        assert_eq!(store.give(8.0, 1), [0.0, 3.0, 0.0], "stretched, since the next cart is not there");
        assert_eq!(store.give(8.0, 1), [0.0, 1.0, 0.0]);
    }

    #[test]
    fn only_the_first_cart_after_a_mishap_is_late() {
        let late = scenario().with(Event::LateFeed { day: 10, late: 3 });
        let mut store = StoreRoom::default();
        for age in [5, 12, 13, 20] {
            store.order(&late, age, 50.0);
            store.kg = [0.0; 3];
            store.deliveries.iter_mut().for_each(|cart| cart.bags = 0);
        }
        let days: Vec<_> = store.deliveries.iter().map(|cart| (cart.age, cart.late)).collect();
        assert_eq!(days, [(6, 0), (16, 3), (14, 0), (21, 0)]);
    }
}
