//! The history of what was written: every entry, when and on which device, what was put right, and why.

use std::collections::{BTreeMap, BTreeSet};

use book::{Body, BookState, DeviceId, EntryHash, EntryId, PersonId, Record, Subject};
use quantity::CivilDay;
use schemars::JsonSchema;
use serde::Serialize;

use crate::entry::{kind_name, lines};
use crate::oddity::{self, Oddity};
use crate::viewer::Viewer;
use crate::{say, show};

/// One answer of an entry, as JSON.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AnswerJson {
    /// What was typed; absent where the program worked it out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub typed: Option<String>,
    /// What it was taken for, in the unit of the field.
    pub value: serde_json::Value,
}

/// What has become of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// It counts.
    Counts,
    /// It counts for now: another claims the same place.
    CountsForNow,
    /// Another entry put it right or took it back.
    Superseded,
    /// It takes another back.
    TakesBack,
    /// Another entry counts in its place.
    SetAside,
}

/// An entry, as JSON.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct EntryJson {
    /// Its id.
    pub id: String,
    /// Its kind.
    pub kind: String,
    /// The day it is about, YYYY-MM-DD.
    pub day: String,
    /// When it was written, milliseconds since 1970 UTC.
    pub written_millis: i64,
    /// The device it was written on.
    pub device: String,
    /// Its place among the entries of the device.
    pub sequence: u64,
    /// Who wrote it.
    pub person: String,
    /// What has become of it.
    pub standing: Standing,
    /// The entries it puts right or takes back.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub supersedes: Vec<String>,
    /// The entries that put it right or take it back.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub superseded_by: Vec<String>,
    /// Why it puts right or takes back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
    /// What was written, by key.
    pub answers: BTreeMap<String, AnswerJson>,
}

/// Something odd, as JSON.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OddityJson {
    /// Which.
    pub name: &'static str,
    /// The entry it is about.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub entry: Option<String>,
    /// What it is and what to do.
    pub text: String,
}

/// The history of a batch, or of one entry, as JSON.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HistoryView {
    /// The entries, in the order of days and of writing.
    pub entries: Vec<EntryJson>,
    /// The questions that somebody has to answer.
    pub conflicts: Vec<OddityJson>,
    /// What is to be looked at.
    pub findings: Vec<OddityJson>,
}

/// What a history is told from.
pub struct History<'a> {
    /// The book.
    pub state: &'a BookState,
    /// The entries, in order.
    pub records: Vec<&'a Record>,
    /// Names of persons.
    pub names: BTreeMap<PersonId, String>,
    /// The device that asks, to be called so.
    pub own_device: Option<DeviceId>,
    /// Milliseconds since 1970 UTC to day and time at the farm.
    pub local: &'a dyn Fn(i64) -> (CivilDay, String),
}

/// All that was written and is asked about, whatever became of it: by day, and of a day in the order of writing.
pub fn records(state: &BookState, is_asked: impl Fn(&Record) -> bool) -> Vec<&Record> {
    let mut records: Vec<&Record> = state.all_records().filter(|record| is_asked(record)).collect();
    records.sort_by_key(|record| {
        let entry = record.entry();
        (entry.day, entry.clock, entry.device, entry.sequence, record.hash())
    });
    records
}

/// What stands beside the entries.
struct Beside {
    counting: BTreeSet<EntryHash>,
    claimed: BTreeSet<EntryId>,
    superseders: BTreeMap<EntryId, Vec<EntryId>>,
    conflicts: Vec<Oddity>,
    findings: Vec<Oddity>,
}

impl History<'_> {
    fn beside(&self, viewer: &Viewer) -> Beside {
        let ids: BTreeSet<EntryId> = self.records.iter().map(|record| record.entry().id).collect();
        let mut superseders: BTreeMap<EntryId, Vec<EntryId>> = BTreeMap::new();
        for record in self.state.all_records() {
            for old in &record.entry().supersedes {
                superseders.entry(*old).or_default().push(record.entry().id);
            }
        }
        let subjects: BTreeSet<Subject> = self.records.iter().map(|record| record.entry().subject).collect();
        let counting = subjects.iter().flat_map(|subject| self.state.counting_about(*subject));
        let conflicts = self.state.conflicts();
        let ours =
            |conflict: &&book::Conflict| conflict.heads.iter().any(|head| ids.contains(&head.entry().id));
        let claimed = conflicts.iter().flat_map(|conflict| &conflict.heads).map(|head| head.entry().id);
        let findings = subjects.iter().flat_map(|subject| self.state.findings_about(*subject));
        let found = findings.map(|finding| oddity::finding(&finding, viewer));
        Beside {
            counting: counting.map(Record::hash).collect(),
            claimed: claimed.collect(),
            superseders,
            conflicts: conflicts.iter().filter(ours).map(|one| oddity::conflict(one, viewer)).collect(),
            findings: found.filter(|odd| odd.entry.is_some_and(|entry| ids.contains(&entry))).collect(),
        }
    }

    /// As JSON.
    pub fn view(&self, viewer: &Viewer) -> HistoryView {
        let beside = self.beside(viewer);
        HistoryView {
            entries: self.records.iter().map(|record| entry_json(record, &beside)).collect(),
            conflicts: beside.conflicts.iter().map(oddity_json).collect(),
            findings: beside.findings.iter().map(oddity_json).collect(),
        }
    }

    /// As text.
    pub fn text(&self, viewer: &Viewer) -> String {
        let words = viewer.words();
        if self.records.is_empty() {
            return words.plain("history-empty") + "\n";
        }
        let beside = self.beside(viewer);
        let entries: String =
            self.records.iter().map(|record| self.entry_text(record, &beside, viewer)).collect();
        let odd = beside.conflicts.iter().chain(&beside.findings).map(|odd| format!("! {}\n", odd.text));
        entries + &odd.collect::<String>()
    }

    fn entry_text(&self, record: &Record, beside: &Beside, viewer: &Viewer) -> String {
        let (words, entry) = (viewer.words(), record.entry());
        let mut text = say!(
            words,
            "history-entry",
            day = show::day(entry.day, viewer),
            kind = kind_name(&entry.kind, viewer),
            standing = words.plain(&format!("history-{}", name_of(standing(record, beside)))),
        ) + "\n";
        for line in record.body().map(|body| lines(&entry.kind, body, viewer)).unwrap_or_default() {
            text += &format!("    {}: {}\n", line.label, line.text);
        }
        let mut told = vec![self.written(record, viewer)];
        let later = beside.superseders.get(&entry.id).into_iter().flatten();
        told.extend(later.map(|id| say!(words, "history-superseded-by", entry = id.0.to_string())));
        told.extend(entry.supersedes.iter().map(|id| {
            let key = if entry.withdrawn { "history-takes-back-what" } else { "history-puts-right" };
            say!(words, key, entry = id.0.to_string())
        }));
        told.extend(entry.reason.as_ref().map(|reason| say!(words, "history-reason", reason = reason)));
        text + &told.iter().map(|line| format!("    {line}\n")).collect::<String>()
    }

    fn written(&self, record: &Record, viewer: &Viewer) -> String {
        let (words, entry) = (viewer.words(), record.entry());
        let (day, time) = (self.local)(entry.clock.millis);
        let device = match self.own_device {
            Some(own) if own == entry.device => words.plain("history-own-device"),
            _ => entry.device.0.to_string(),
        };
        let id = entry.id.0.to_string();
        let day = show::day(day, viewer);
        match self.names.get(&entry.person) {
            Some(person) => {
                say!(
                    words,
                    "history-written-by",
                    day = day,
                    time = time,
                    device = device,
                    entry = id,
                    person = person
                )
            }
            None => say!(words, "history-written", day = day, time = time, device = device, entry = id),
        }
    }
}

fn standing(record: &Record, beside: &Beside) -> Standing {
    let id = record.entry().id;
    if beside.counting.contains(&record.hash()) {
        return if beside.claimed.contains(&id) { Standing::CountsForNow } else { Standing::Counts };
    }
    if beside.superseders.contains_key(&id) {
        return Standing::Superseded;
    }
    if record.entry().withdrawn { Standing::TakesBack } else { Standing::SetAside }
}

fn name_of(standing: Standing) -> &'static str {
    match standing {
        Standing::Counts => "counts",
        Standing::CountsForNow => "counts-for-now",
        Standing::Superseded => "superseded",
        Standing::TakesBack => "takes-back",
        Standing::SetAside => "set-aside",
    }
}

fn entry_json(record: &Record, beside: &Beside) -> EntryJson {
    let entry = record.entry();
    let ids = |ids: &[EntryId]| ids.iter().map(|id| id.0.to_string()).collect();
    EntryJson {
        id: entry.id.0.to_string(),
        kind: entry.kind.clone(),
        day: entry.day.to_string(),
        written_millis: entry.clock.millis,
        device: entry.device.0.to_string(),
        sequence: entry.sequence,
        person: entry.person.0.to_string(),
        standing: standing(record, beside),
        supersedes: ids(&entry.supersedes),
        superseded_by: beside.superseders.get(&entry.id).map(|by| ids(by)).unwrap_or_default(),
        reason: entry.reason.clone(),
        answers: answers_json(record.body().unwrap_or(&entry.body)),
    }
}

/// Answers of an entry as JSON.
pub(crate) fn answers_json(body: &Body) -> BTreeMap<String, AnswerJson> {
    let answer = |(key, answer): (&String, &book::Answer)| {
        (key.clone(), AnswerJson { typed: answer.typed.clone(), value: answer.value.clone() })
    };
    body.iter().map(answer).collect()
}

fn oddity_json(odd: &Oddity) -> OddityJson {
    let entry = odd.entry.map(|entry| entry.0.to_string());
    OddityJson { name: odd.name, entry, text: odd.text.clone() }
}
