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

/// The kinds this program knows.
pub static KINDS: &[Kind] = &[
    Kind {
        name: "farm",
        rank: 10,
        counting: STANDING,
        about: &[About::Farm],
        upcasters: &[],
        section: Some("farm"),
        limit: None,
    },
    Kind {
        name: "settings",
        rank: 20,
        counting: STANDING,
        about: &[About::Farm],
        upcasters: &[],
        section: Some("settings"),
        limit: None,
    },
    Kind {
        name: "prices",
        rank: 30,
        counting: STANDING,
        about: &[About::Farm],
        upcasters: &[],
        section: Some("prices"),
        limit: None,
    },
    Kind {
        name: "house",
        rank: 40,
        counting: STANDING,
        about: &[About::House],
        upcasters: &[upcast::house_height_is_the_eave_height],
        section: Some("house"),
        limit: None,
    },
    Kind {
        name: "equipment",
        rank: 50,
        counting: STANDING,
        about: &[About::Farm, About::House],
        upcasters: &[],
        section: Some("equipment"),
        limit: None,
    },
    Kind {
        name: "plan-adopted",
        rank: 60,
        counting: STANDING,
        about: &[About::Batch],
        upcasters: &[],
        section: None,
        limit: Some(limit::house_of_the_plan_is_known),
    },
    Kind {
        name: "note",
        rank: 200,
        counting: Counting::Additive,
        about: &[About::Farm, About::House, About::Batch],
        upcasters: &[],
        section: None,
        limit: None,
    },
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
