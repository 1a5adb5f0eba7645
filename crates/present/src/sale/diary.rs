//! The jobs of a running batch, its deliveries, the feed to order, the day they are likely to be heavy enough and the days from
//! which birds are clear, as a calendar file that follows the sale.

use std::collections::BTreeSet;

use advice::buying;
use advice::orders::{Filled, Orders};
use advice::sale::Sale;
use advice::tasks::FEED_ORDER;
use quantity::{DayOfAge, Unit};

use crate::batch::Page;
use crate::calendar::{self, Event, When, Written};
use crate::health::selling::product;
use crate::ordering as feed;
use crate::plan::Shown;
use crate::viewer::Viewer;
use crate::{say, show};

/// An hour in the morning, at which the phone calls on a day of delivery.
const MORNING_MIN: i32 = 6 * 60;

/// The calendar of a batch: its jobs, those of the sale moved to the day that is best; a delivery for each order; from when birds
/// are clear of what was given; by when feed must be ordered; the day on which they likely weigh enough. Events keep their names whatever day they move to. `None` where there is nothing.
pub fn calendar(sale: &Sale, viewer: &Viewer, written: Written) -> Option<String> {
    let batch = sale.walk.diary.batch.0.to_string();
    let plan = sale.moved_plan();
    let shown = Shown::new(&plan, viewer);
    let mut events = shown.all_events(&batch, |task| task.name != FEED_ORDER);
    // What to order follows what came and what is left, not the plan.
    events.extend(deliveries(sale, viewer, &batch));
    events.extend(clear_days(sale, viewer, &batch));
    events.extend(feed_to_order(sale, viewer, &batch, &shown.subtitle()));
    events.extend(heavy_enough(sale, viewer, &batch));
    (!events.is_empty()).then(|| calendar::write(&events, written))
}

fn deliveries(sale: &Sale, viewer: &Viewer, batch: &str) -> Vec<Event> {
    let Some((orders, placement)) = Orders::of(sale).zip(sale.walk.diary.placement) else {
        return Vec::new();
    };
    let event = |(number, order): (usize, &Filled)| {
        let day = DayOfAge(order.day.filter(|_| order.birds > 0)?).date(placement);
        let birds = show::quantity(f64::from(order.birds), Unit::Birds, 0, viewer);
        Some(Event {
            uid: format!("delivery-{number}.{batch}"),
            when: When::Days { first: day, last: day },
            summary: say!(viewer.words(), "calendar-delivery", buyer = &order.wanted.buyer, birds = birds),
            description: String::new(),
            alarm_min: Some(MORNING_MIN),
        })
    };
    orders.orders.iter().enumerate().filter_map(event).collect()
}

/// What the store room still lacks, each delivery on the last day on which it can be ordered.
fn feed_to_order(sale: &Sale, viewer: &Viewer, batch: &str, whose: &str) -> Vec<Event> {
    let diary = &sale.walk.diary;
    let (Some(placement), Ok(cheapest)) = (diary.placement, buying::of_book(&sale.walk)) else {
        return Vec::new();
    };
    let came: BTreeSet<_> = diary.of_kind("feed-delivered").map(|note| note.day).collect();
    let orders = feed::Orders { batch, whose, placement, lead_d: cheapest.lead_d, came: came.len() };
    orders.events(cheapest.purchases.iter().map(|one| one.delivery), viewer)
}

/// The day on which they likely weigh what they are sold at, with how sure that is.
fn heavy_enough(sale: &Sale, viewer: &Viewer, batch: &str) -> Option<Event> {
    let page = Page::new(&sale.walk, viewer);
    let age = page.number("outlook.day_of_target")?;
    let day = DayOfAge(age as i32).date(sale.walk.diary.placement?);
    let sure = page.between_days("outlook.day_of_target").unwrap_or_default();
    let weight = page.value("space.weight_at_sale")?;
    Some(Event {
        uid: format!("heavy-enough.{batch}"),
        when: When::Days { first: day, last: day },
        summary: say!(viewer.words(), "calendar-heavy-enough", weight = weight),
        description: say!(viewer.words(), "calendar-heavy-enough-how-sure", between = sure),
        alarm_min: None,
    })
}

fn clear_days(sale: &Sale, viewer: &Viewer, batch: &str) -> Vec<Event> {
    let holding = sale.health.holding(sale.walk.diary.on.plus_days(1));
    let event = |(number, wait): (usize, &advice::health::Wait)| {
        let day = wait.withdrawal.clear().earliest_day()?;
        Some(Event {
            uid: format!("clear-{number}.{batch}"),
            when: When::Days { first: day, last: day },
            summary: say!(viewer.words(), "calendar-clear", product = product(wait, viewer)),
            description: String::new(),
            alarm_min: None,
        })
    };
    holding.into_iter().enumerate().filter_map(event).collect()
}
