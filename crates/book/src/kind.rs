//! The one table of kinds. A new kind of entry is a new row here and nothing else.

use quantity::CivilDay;

use crate::entry::Subject;
use crate::finding::Finding;
use crate::fold::BookState;
use crate::limit;
use crate::record::Record;
use crate::upcast::{self, Upcaster};

/// One row of the table of kinds.
#[derive(Clone, Copy, Debug)]
pub struct Kind {
    /// The name in the stored bytes. Never reused for another thing.
    pub name: &'static str,
    /// Where it stands among the entries of one day: what others rest on comes first. The ranks have gaps, so that a
    /// later kind finds room.
    pub rank: u8,
    /// How several entries of the kind stand beside each other.
    pub counting: Counting,
    /// What an entry of the kind can be about.
    pub about: &'static [About],
    /// The steps that read old bodies: the first makes a body of version 1 into one of version 2, and so on.
    pub upcasters: &'static [Upcaster],
    /// The section of the table of fields that a body of the current version is checked against; none where the body is
    /// not typed into a form of its own.
    pub section: Option<&'static str>,
    /// A limit that depends on the rest of the book. It refuses nothing at a merge: it is a finding of the fold.
    pub limit: Option<Limit>,
}

/// Looks at an entry that counts and says what is odd about it, given everything else that counts.
pub type Limit = fn(&BookState, &Record) -> Option<Finding>;

/// How several entries of one kind stand beside each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counting {
    /// Each thread counts: two notes are two notes.
    Additive,
    /// One entry counts in each slot. Two that were written apart are a conflict; one whose author had seen the other
    /// takes its place.
    OneASlot(Span),
}

/// What tells the slots of one kind apart, besides the subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    /// Whether each day has a slot of its own.
    pub each_day: bool,
    /// The key of the answer that names a part, such as the channel of a sensor; each part has a slot of its own.
    pub part: Option<&'static str>,
}

/// One slot a subject, whatever the day: what holds until it is changed.
const STANDING: Counting = Counting::OneASlot(Span { each_day: false, part: None });

/// The sorts of [`Subject`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// The farm as a whole.
    Farm,
    /// One house.
    House,
    /// One batch.
    Batch,
}

impl About {
    /// The sort of a subject.
    pub fn of(subject: Subject) -> Self {
        match subject {
            Subject::Farm => Self::Farm,
            Subject::House(_) => Self::House,
            Subject::Batch(_) => Self::Batch,
        }
    }
}

/// A slot each day.
const A_DAY: Counting = Counting::OneASlot(Span { each_day: true, part: None });

/// A slot each day for each part.
const fn a_day_for_each(part: &'static str) -> Counting {
    Counting::OneASlot(Span { each_day: true, part: Some(part) })
}

/// A slot for each part, whatever the day.
const fn one_for_each(part: &'static str) -> Counting {
    Counting::OneASlot(Span { each_day: false, part: Some(part) })
}

const FARM: &[About] = &[About::Farm];
const BATCH: &[About] = &[About::Batch];
const ANY: &[About] = &[About::Farm, About::House, About::Batch];

/// A row whose bodies were never of another shape and that has no limit.
const fn row(
    name: &'static str,
    rank: u8,
    counting: Counting,
    about: &'static [About],
    section: &'static str,
) -> Kind {
    Kind { name, rank, counting, about, upcasters: &[], section: Some(section), limit: None }
}

impl Kind {
    /// The same row with a limit.
    const fn within(mut self, limit: Limit) -> Kind {
        self.limit = Some(limit);
        self
    }
}

/// The kinds this program knows, in the order in which they stand within a day: what others rest on comes first, birds
/// that come before birds that go.
pub static KINDS: &[Kind] = &[
    row("farm", 10, STANDING, FARM, "farm"),
    row("settings", 20, STANDING, FARM, "settings"),
    row("prices", 30, STANDING, FARM, "prices"),
    row("own-table", 35, one_for_each("name"), FARM, "own_table"),
    Kind {
        upcasters: &[upcast::house_height_is_the_eave_height],
        ..row("house", 40, STANDING, &[About::House], "house")
    },
    row("equipment", 50, STANDING, &[About::Farm, About::House], "equipment"),
    row("vaccine-programme", 55, STANDING, BATCH, "vaccine_programme"),
    Kind { section: None, ..row("plan-adopted", 60, STANDING, BATCH, "") }
        .within(limit::house_of_the_plan_is_known),
    row("task-done", 65, a_day_for_each("task"), BATCH, "task_done"),
    row("chicks-placed", 70, STANDING, BATCH, "placed").within(limit::placed_near_the_plan),
    row("feed-delivered", 75, Counting::Additive, BATCH, "feed_delivered"),
    row("feed-opened", 78, a_day_for_each("phase"), BATCH, "feed_opened"),
    row("feed-given", 80, a_day_for_each("phase"), BATCH, "feed_given").within(limit::feed_was_delivered),
    row("feed-spoiled", 82, Counting::Additive, BATCH, "feed_spoiled"),
    row("water", 85, A_DAY, BATCH, "water_drunk"),
    row("house-air", 88, A_DAY, BATCH, "house_air"),
    row("sensor-day", 90, a_day_for_each("channel"), &[About::House, About::Batch], "sensor_day"),
    row("power-cut", 92, Counting::Additive, BATCH, "power_cut"),
    row("look", 95, A_DAY, BATCH, "look"),
    row("chick-check", 97, a_day_for_each("hour_h"), BATCH, "chick_check"),
    row("crop-fill", 98, one_for_each("hours_h"), BATCH, "crop_fill").within(limit::no_more_full_than_felt),
    row("litter-check", 100, a_day_for_each("spot"), BATCH, "litter_check"),
    row("deaths", 110, A_DAY, BATCH, "deaths").within(limit::not_more_than_alive),
    row("birds-out", 112, Counting::Additive, BATCH, "birds_out").within(limit::not_more_than_alive),
    row("count-found", 114, A_DAY, BATCH, "count_found"),
    row("weighing", 120, Counting::Additive, BATCH, "weighed"),
    row("vaccine-given", 130, Counting::Additive, BATCH, "vaccinated"),
    row("medicine-given", 132, Counting::Additive, BATCH, "medicated"),
    row("visitor", 135, Counting::Additive, &[About::Farm, About::Batch], "visitor"),
    row("foot-bath", 137, A_DAY, BATCH, "foot_bath"),
    row("fuel-burnt", 140, a_day_for_each("fuel"), BATCH, "fuel_burnt"),
    row("purchase", 145, Counting::Additive, &[About::Farm, About::Batch], "purchase"),
    row("cost", 147, Counting::Additive, &[About::Farm, About::Batch], "cost"),
    row("order", 150, Counting::Additive, BATCH, "order"),
    row("sale", 155, Counting::Additive, BATCH, "sold").within(limit::not_more_than_alive),
    row("litter-sold", 157, Counting::Additive, BATCH, "litter_sold"),
    row("payment", 160, Counting::Additive, &[About::Farm, About::Batch], "payment"),
    row("price-seen", 165, Counting::Additive, &[About::Farm, About::Batch], "price_seen"),
    row("note", 200, Counting::Additive, ANY, "note"),
    row("batch-closed", 210, STANDING, BATCH, "batch_closed"),
];

impl Kind {
    /// The row of a name, in a table of kinds.
    pub fn named(name: &str, kinds: &'static [Kind]) -> Option<&'static Kind> {
        kinds.iter().find(|kind| kind.name == name)
    }

    /// The version of the body that this program writes: one more than there are steps from older ones.
    pub fn body_version(&self) -> u16 {
        u16::try_from(self.upcasters.len()).map_or(u16::MAX, |steps| steps.saturating_add(1))
    }
}

/// A place in the book that holds one answer at a time: the house, the prices, the water of day 12.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Slot {
    /// The name of the kind.
    pub kind: &'static str,
    /// What it is about.
    pub subject: Subject,
    /// The day, for kinds with a slot each day.
    pub day: Option<CivilDay>,
    /// The part, for kinds with a slot a part.
    pub part: Option<String>,
}

impl Slot {
    /// The slot of a kind that has one a subject: `Slot::of("house", Subject::House(id))`.
    pub fn of(kind: &'static str, subject: Subject) -> Self {
        Self { kind, subject, day: None, part: None }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn names_and_ranks_are_each_used_once() {
        let names: BTreeSet<_> = KINDS.iter().map(|kind| kind.name).collect();
        let ranks: BTreeSet<_> = KINDS.iter().map(|kind| kind.rank).collect();
        assert_eq!((names.len(), ranks.len()), (KINDS.len(), KINDS.len()));
    }

    #[test]
    fn a_house_comes_before_the_plan_that_names_it() {
        let rank = |name| Kind::named(name, KINDS).unwrap().rank;
        assert!(rank("house") < rank("plan-adopted"));
    }

    #[test]
    fn the_version_is_one_more_than_the_steps() {
        assert_eq!(Kind::named("house", KINDS).unwrap().body_version(), 2);
        assert_eq!(Kind::named("note", KINDS).unwrap().body_version(), 1);
    }
}
