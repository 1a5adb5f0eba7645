//! What a fold has to say about a book besides its contents, in words: faults, findings, conflicts, doubts about what is
//! being written.

use advice::record::Ask;
use book::{Cause, Conflict, EntryId, Fault, Finding};

use crate::entry::kind_name;
use crate::viewer::Viewer;
use crate::words::{Argument, key_part};
use crate::{say, show};

/// Something odd about a book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Oddity {
    /// Which, for programs.
    pub name: &'static str,
    /// The entry it is about, where it is about one.
    pub entry: Option<EntryId>,
    /// A sentence that says what it is and what to do.
    pub text: String,
}

/// A doubt about what is being written, as a question.
pub fn ask(ask: &Ask, viewer: &Viewer) -> String {
    let number = |(name, value, unit): &(&'static str, f64, quantity::Unit)| {
        (*name, Argument::from(show::quantity_short(*value, *unit, viewer)))
    };
    let arguments: Vec<(&str, Argument)> = ask.numbers.iter().map(number).collect();
    viewer.words().say(&format!("ask-{}", ask.name), &arguments)
}

/// A finding, its entry called by its id.
pub fn finding(finding: &Finding, viewer: &Viewer) -> Oddity {
    finding_called(finding, &|entry| entry.0.to_string(), viewer)
}

/// A finding.
///
/// - `called`: how an entry is called
pub fn finding_called(finding: &Finding, called: &dyn Fn(EntryId) -> String, viewer: &Viewer) -> Oddity {
    let (name, entry) = name_of(finding);
    let arguments: Vec<(&str, Argument)> = match finding {
        Finding::ClonedDevice { device, sequence, .. } => {
            vec![("device", device.0.to_string().into()), ("sequence", sequence.to_string().into())]
        }
        Finding::MissingSequence { device, first, last } => vec![
            ("device", device.0.to_string().into()),
            ("first", first.to_string().into()),
            ("last", last.to_string().into()),
        ],
        Finding::BrokenChain { device, sequence, entry } => vec![
            ("device", device.0.to_string().into()),
            ("sequence", sequence.to_string().into()),
            ("entry", called(*entry).into()),
        ],
        Finding::UnreadableVersion { entry, kind, version } => vec![
            ("entry", called(*entry).into()),
            ("kind", kind_name(kind, viewer).into()),
            ("version", version.to_string().into()),
        ],
        Finding::PlanForUnknownHouse { entry, house } => {
            vec![("entry", called(*entry).into()), ("house", house.into())]
        }
        Finding::MoreGoneThanAlive { entry, birds } => {
            vec![("entry", called(*entry).into()), ("birds", birds.to_string().into())]
        }
        Finding::MoreFeedThanDelivered { entry, phase, kilograms } => vec![
            ("entry", called(*entry).into()),
            ("feed", viewer.words().plain(&format!("choice-feed-given-phase-{phase}")).into()),
            ("kilograms", kilograms.to_string().into()),
        ],
        Finding::MoreFullThanFelt { entry } => vec![("entry", called(*entry).into())],
        Finding::PlacedFarFromPlan { entry, days } => {
            vec![("entry", called(*entry).into()), ("days", days.to_string().into())]
        }
    };
    let text = viewer.words().say(&format!("book-{name}"), &arguments);
    Oddity { name, entry, text }
}

fn name_of(finding: &Finding) -> (&'static str, Option<EntryId>) {
    match finding {
        Finding::ClonedDevice { .. } => ("cloned-device", None),
        Finding::MissingSequence { .. } => ("missing-sequence", None),
        Finding::BrokenChain { entry, .. } => ("broken-chain", Some(*entry)),
        Finding::UnreadableVersion { entry, .. } => ("unreadable-version", Some(*entry)),
        Finding::PlanForUnknownHouse { entry, .. } => ("plan-for-unknown-house", Some(*entry)),
        Finding::MoreGoneThanAlive { entry, .. } => ("more-gone-than-alive", Some(*entry)),
        Finding::MoreFeedThanDelivered { entry, .. } => ("more-feed-than-delivered", Some(*entry)),
        Finding::MoreFullThanFelt { entry } => ("more-full-than-felt", Some(*entry)),
        Finding::PlacedFarFromPlan { entry, .. } => ("placed-far-from-plan", Some(*entry)),
    }
}

/// A fault.
pub fn fault(fault: &Fault, viewer: &Viewer) -> Oddity {
    let words = viewer.words();
    match fault {
        Fault::SameIdOtherBytes { id, hashes } => Oddity {
            name: "same-id",
            entry: Some(*id),
            text: say!(words, "book-same-id", entry = id.0.to_string(), count = hashes.len().to_string()),
        },
        Fault::Cycle { entries } => {
            let listed: Vec<String> = entries.iter().map(|entry| entry.0.to_string()).collect();
            Oddity {
                name: "cycle",
                entry: entries.first().copied(),
                text: say!(words, "book-cycle", entries = listed.join(", ")),
            }
        }
        Fault::OtherFarm { id, farm } => Oddity {
            name: "other-farm",
            entry: Some(*id),
            text: say!(words, "book-other-farm", entry = id.0.to_string(), farm = farm.0.to_string()),
        },
    }
}

/// A question that somebody has to answer.
pub fn conflict(conflict: &Conflict, viewer: &Viewer) -> Oddity {
    let winner = conflict.winner.entry();
    let (name, key) = match conflict.cause {
        Cause::Fork => ("put-right-twice", "book-put-right-twice"),
        Cause::WrittenApart => ("written-apart", "book-written-apart"),
    };
    let others: Vec<String> = conflict
        .heads
        .iter()
        .map(|head| head.entry().id)
        .filter(|id| *id != winner.id)
        .map(|id| id.0.to_string())
        .collect();
    let text = say!(
        viewer.words(),
        key,
        kind = kind_name(&winner.kind, viewer),
        day = show::day(winner.day, viewer),
        winner = winner.id.0.to_string(),
        others = others.join(", "),
    );
    Oddity { name, entry: Some(winner.id), text }
}

/// Every key that a name here makes, for the test that each has a message.
pub fn composed_keys() -> impl Iterator<Item = String> {
    let findings = [
        "cloned-device",
        "missing-sequence",
        "broken-chain",
        "unreadable-version",
        "plan-for-unknown-house",
        "more-gone-than-alive",
        "more-feed-than-delivered",
        "more-full-than-felt",
        "placed-far-from-plan",
    ];
    let kinds = book::KINDS.iter().map(|kind| format!("kind-{}", key_part(kind.name)));
    findings.into_iter().map(|name| format!("book-{name}")).chain(kinds)
}
