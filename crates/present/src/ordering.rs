//! Feed to order, as events of a calendar: the latest day for each delivery.

use std::collections::BTreeMap;

use advice::store_room::Delivery;
use quantity::{CivilDay, DayOfAge};

use crate::calendar::{Event, When};
use crate::viewer::Viewer;
use crate::{say, show};

/// The hour at which the phone calls: shops and mills are open.
const OFFICE_MIN: i32 = 8 * 60;

/// Whose orders they are.
pub(crate) struct Orders<'a> {
    /// Names the batch for ever.
    pub(crate) batch: &'a str,
    /// Names the batch for a reader; may be empty.
    pub(crate) whose: &'a str,
    /// The day the chicks come.
    pub(crate) placement: CivilDay,
    /// Days from the order to the delivery.
    pub(crate) lead_d: i32,
    /// Deliveries that came already: the next one is named after them, so that an order that was filled keeps its event.
    pub(crate) came: usize,
}

impl Orders<'_> {
    /// An event for each day on which something comes, on the last day on which it can be ordered.
    pub(crate) fn events(
        &self,
        deliveries: impl IntoIterator<Item = Delivery>,
        viewer: &Viewer,
    ) -> Vec<Event> {
        let mut by_day: BTreeMap<i32, Vec<Delivery>> = BTreeMap::new();
        for one in deliveries {
            by_day.entry(one.day).or_default().push(one);
        }
        let numbered = by_day.into_iter().zip(self.came..);
        numbered.map(|((day, feeds), number)| self.event(number, day, &feeds, viewer)).collect()
    }

    fn event(&self, number: usize, day: i32, feeds: &[Delivery], viewer: &Viewer) -> Event {
        let comes = DayOfAge(day).date(self.placement);
        let by = comes.plus_days(-self.lead_d);
        let why = why(comes, self.lead_d, viewer);
        Event {
            uid: format!("feed-order-{number}.{}", self.batch),
            when: When::Days { first: by, last: by },
            summary: summary(feeds, viewer),
            description: [why.as_str(), self.whose].join("\n").trim_end().to_owned(),
            alarm_min: Some(OFFICE_MIN),
        }
    }
}

/// What is ordered on a day.
pub(crate) fn summary(feeds: &[Delivery], viewer: &Viewer) -> String {
    let words = viewer.words();
    let feed = |one: &Delivery| {
        let name = words.plain(&format!("phase-{}", one.phase.name()));
        let bags = show::bags(one.bags, one.size_kg, viewer);
        say!(words, "calendar-order-feed", bags = bags, count = one.bags, feed = name)
    };
    say!(words, "calendar-order", feeds = feeds.iter().map(feed).collect::<Vec<_>>().join(", "))
}

/// When it comes, and how long that takes.
pub(crate) fn why(comes: CivilDay, lead_d: i32, viewer: &Viewer) -> String {
    say!(
        viewer.words(),
        "calendar-order-why",
        comes = show::day(comes, viewer),
        days = show::number(f64::from(lead_d), 0),
        count = f64::from(lead_d),
    )
}
