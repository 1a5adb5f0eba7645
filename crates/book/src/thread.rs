//! Threads: entries tied together by what supersedes what, and the heads that are left.
//!
//! A thread is all that hangs together through `supersedes`, entries that have not arrived included. Its heads are the
//! entries that nothing supersedes, whatever the order of arrival. A ring of entries that supersede each other is a
//! fault; inside it nothing supersedes anything, so that all its members stay heads, and visible, until an entry from
//! outside supersedes them.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::entry::EntryId;
use crate::record::{Record, Written};

/// All threads of a book.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Threads {
    nodes: BTreeMap<EntryId, Node>,
    /// The threads with ties. An id without ties is a thread by itself, and is not in here.
    tied: BTreeMap<ThreadKey, Thread>,
}

/// Names a thread: the least id in it. It changes when threads grow together.
pub(crate) type ThreadKey = EntryId;

/// What stands under one id.
#[derive(Clone, Debug, PartialEq)]
struct Node {
    /// One record; none when the id is known from others' `supersedes` only; several when the id was used twice. By hash.
    records: Vec<Arc<Record>>,
    /// The entries that supersede it, ascending.
    superseders: Vec<EntryId>,
    /// The thread it is tied into; none while it is one by itself, as most entries are for ever.
    thread: Option<ThreadKey>,
}

/// Ids that are tied together.
#[derive(Clone, Debug, Default, PartialEq)]
struct Thread {
    /// All ids in it, missing ones included, ascending.
    members: Vec<EntryId>,
    verdict: Verdict,
}

/// What the ties of a thread come to.
#[derive(Clone, Debug, Default, PartialEq)]
struct Verdict {
    /// The present entries that nothing outside their own ring supersedes, ascending.
    heads: Vec<EntryId>,
    /// The present entries that supersede nothing present outside their own ring, ascending.
    beginnings: Vec<EntryId>,
    /// The rings, each ascending.
    rings: Vec<Vec<EntryId>>,
}

/// A record that found its thread.
pub(crate) struct Joined {
    /// The thread it is in now.
    pub(crate) thread: ThreadKey,
    /// Whether nobody had named the record's id before, so that nothing supersedes it and no ring closes.
    pub(crate) unheard_of: bool,
    /// Whether other records stand under its id.
    pub(crate) doubles: bool,
}

impl Threads {
    /// The threads that a record will tie together, ascending.
    pub(crate) fn touched_by(&self, record: &Record) -> Vec<ThreadKey> {
        sorted(ties(record).filter_map(|id| self.thread_of(id)).collect())
    }

    /// Puts a record into its thread; `None` when these very bytes are there already. Heads and beginnings are as before
    /// until [`Threads::extend`] or [`Threads::judge`].
    pub(crate) fn join(&mut self, record: &Arc<Record>) -> Option<Joined> {
        let entry = record.entry();
        let known = self.nodes.get(&entry.id);
        if known.is_some_and(|node| node.records.contains(record)) {
            return None;
        }
        let unheard_of = known.is_none() && !entry.supersedes.contains(&entry.id);
        let thread = if entry.supersedes.is_empty() {
            known.and_then(|node| node.thread)
        } else {
            Some(self.tie_together(record))
        };
        let node = self.node(entry.id, thread);
        let at = node.records.partition_point(|other| other.hash() < record.hash());
        node.records.insert(at, Arc::clone(record));
        let doubles = node.records.len() > 1;
        Some(Joined { thread: thread.unwrap_or(entry.id), unheard_of, doubles })
    }

    /// Makes one thread of all that the record ties together, and names it.
    fn tie_together(&mut self, record: &Record) -> ThreadKey {
        let ids = sorted(ties(record).collect());
        let old_keys = self.touched_by(record);
        let key = old_keys.iter().chain(&ids).min().copied().unwrap_or(record.entry().id);
        let mut whole = Thread::default();
        for old in old_keys {
            let part = self.tied.remove(&old).unwrap_or_else(|| Thread::of_one(old));
            self.rename(&part, key);
            whole.absorb(part);
        }
        for id in ids {
            insert_sorted(&mut whole.members, id);
        }
        self.tied.insert(key, whole);
        for superseded in &record.entry().supersedes {
            insert_sorted(&mut self.node(*superseded, Some(key)).superseders, record.entry().id);
        }
        key
    }

    /// Tells the members of a thread its name, where it is a new one.
    fn rename(&mut self, thread: &Thread, key: ThreadKey) {
        let is_new = |id| self.nodes.get(id).is_some_and(|node| node.thread != Some(key));
        if !thread.members.first().is_some_and(is_new) {
            return;
        }
        for member in &thread.members {
            if let Some(node) = self.nodes.get_mut(member) {
                node.thread = Some(key);
            }
        }
    }

    fn node(&mut self, id: EntryId, thread: Option<ThreadKey>) -> &mut Node {
        self.nodes.entry(id).or_insert(Node { records: Vec::new(), superseders: Vec::new(), thread })
    }

    /// Takes an unheard-of record into heads and beginnings: what [`Threads::judge`] would find, at the cost of one entry.
    pub(crate) fn extend(&mut self, key: ThreadKey, record: &Record) {
        let entry = record.entry();
        let begins = !entry.supersedes.iter().any(|id| self.is_present(*id));
        let Some(Thread { verdict, .. }) = self.tied.get_mut(&key) else { return };
        verdict.heads.retain(|head| !entry.supersedes.contains(head));
        insert_sorted(&mut verdict.heads, entry.id);
        if begins {
            insert_sorted(&mut verdict.beginnings, entry.id);
        }
    }

    /// Finds heads, beginnings and rings of a thread from its ties alone.
    pub(crate) fn judge(&mut self, key: ThreadKey) {
        let Some(thread) = self.tied.get(&key) else { return };
        let verdict = self.verdict(&thread.members);
        if let Some(thread) = self.tied.get_mut(&key) {
            thread.verdict = verdict;
        }
    }

    fn verdict(&self, members: &[EntryId]) -> Verdict {
        let mut verdict = Verdict { rings: self.rings(members), ..Verdict::default() };
        for id in members {
            let Some(node) = self.nodes.get(id).filter(|node| node.is_present()) else { continue };
            let ring = verdict.rings.iter().find(|ring| ring.contains(id));
            let outside = |other: &EntryId| !ring.is_some_and(|ring| ring.contains(other));
            let is_head = !node.superseders.iter().any(outside);
            let begins = !node.superseded().any(|other| outside(other) && self.is_present(*other));
            verdict.heads.extend(is_head.then_some(*id));
            verdict.beginnings.extend(begins.then_some(*id));
        }
        verdict
    }

    /// The rings among some ids, ascending.
    fn rings(&self, members: &[EntryId]) -> Vec<Vec<EntryId>> {
        let newer = |id| self.superseders(id).to_vec();
        let older = |id| self.superseded_by(id);
        // Ids are made in the order of time, so this is nearly always all there is to see: where every tie leads to a
        // greater id, none leads back.
        if members.iter().all(|id| self.superseders(*id).iter().all(|other| other > id)) {
            return Vec::new();
        }
        let mut tangle = peel(peel(members.iter().copied().collect(), &newer, &older), &older, &newer);
        let mut rings = Vec::new();
        while let Some(id) = tangle.first().copied() {
            let ring: Vec<EntryId> =
                reach(id, &tangle, &newer).intersection(&reach(id, &tangle, &older)).copied().collect();
            tangle.remove(&id);
            tangle.retain(|other| !ring.contains(other));
            if !ring.is_empty() {
                rings.push(ring);
            }
        }
        rings
    }

    fn is_present(&self, id: EntryId) -> bool {
        self.nodes.get(&id).is_some_and(Node::is_present)
    }

    /// The ids of the entries that supersede this one, ascending.
    fn superseders(&self, id: EntryId) -> &[EntryId] {
        self.nodes.get(&id).map_or(&[], |node| &node.superseders)
    }

    /// The ids that this one supersedes, ascending.
    fn superseded_by(&self, id: EntryId) -> Vec<EntryId> {
        sorted(self.nodes.get(&id).into_iter().flat_map(Node::superseded).copied().collect())
    }

    /// What stands under an id: usually one record.
    pub(crate) fn records(&self, id: EntryId) -> &[Arc<Record>] {
        self.nodes.get(&id).map_or(&[], |node| &node.records)
    }

    /// All records, by id.
    pub(crate) fn all_records(&self) -> impl Iterator<Item = &Arc<Record>> {
        self.nodes.values().flat_map(|node| &node.records)
    }

    /// The name of the thread an id is in.
    pub(crate) fn thread_of(&self, id: EntryId) -> Option<ThreadKey> {
        self.nodes.get(&id).map(|node| node.thread.unwrap_or(id))
    }

    /// The names of the threads with ties.
    pub(crate) fn tied(&self) -> Vec<ThreadKey> {
        self.tied.keys().copied().collect()
    }

    /// The threads without ties, with all there is in each: it is head and beginning in one.
    pub(crate) fn untied(&self) -> impl Iterator<Item = (ThreadKey, &[Arc<Record>])> {
        let untied = self.nodes.iter().filter(|(_, node)| node.thread.is_none());
        untied.map(|(id, node)| (*id, node.records.as_slice()))
    }

    /// The rings in a thread.
    pub(crate) fn rings_in(&self, key: ThreadKey) -> &[Vec<EntryId>] {
        self.tied.get(&key).map_or(&[], |thread| &thread.verdict.rings)
    }

    /// The records at the heads of a thread.
    pub(crate) fn heads(&self, key: ThreadKey) -> Cow<'_, [Arc<Record>]> {
        self.records_of(key, |thread| &thread.verdict.heads)
    }

    /// The records a thread begins with.
    pub(crate) fn beginnings(&self, key: ThreadKey) -> Cow<'_, [Arc<Record>]> {
        self.records_of(key, |thread| &thread.verdict.beginnings)
    }

    /// All records of a thread.
    pub(crate) fn members(&self, key: ThreadKey) -> Cow<'_, [Arc<Record>]> {
        self.records_of(key, |thread| &thread.members)
    }

    /// The records of some ids of a thread; of a thread without ties, all there is.
    fn records_of(&self, key: ThreadKey, ids: fn(&Thread) -> &[EntryId]) -> Cow<'_, [Arc<Record>]> {
        match self.tied.get(&key) {
            None => Cow::Borrowed(self.records(key)),
            Some(thread) => ids(thread).iter().flat_map(|id| self.records(*id)).cloned().collect(),
        }
    }
}

/// The ids that a record ties together: its own, and those it supersedes.
fn ties(record: &Record) -> impl Iterator<Item = EntryId> {
    let entry = record.entry();
    entry.supersedes.iter().copied().chain([entry.id])
}

impl Node {
    fn is_present(&self) -> bool {
        !self.records.is_empty()
    }

    /// The ids that it supersedes.
    fn superseded(&self) -> impl Iterator<Item = &EntryId> {
        self.records.iter().flat_map(|record| &record.entry().supersedes)
    }
}

impl Thread {
    /// What an id without ties is.
    fn of_one(id: EntryId) -> Self {
        let verdict = Verdict { heads: vec![id], beginnings: vec![id], rings: Vec::new() };
        Self { members: vec![id], verdict }
    }

    /// Takes another thread in. No id is in both.
    fn absorb(&mut self, other: Thread) {
        merge(&mut self.members, other.members);
        merge(&mut self.verdict.heads, other.verdict.heads);
        merge(&mut self.verdict.beginnings, other.verdict.beginnings);
        merge(&mut self.verdict.rings, other.verdict.rings);
    }
}

/// Takes away, again and again, each id that none of the remaining ones stands `before`. What is left lies on rings or
/// `after` them.
fn peel(
    ids: BTreeSet<EntryId>,
    before: &impl Fn(EntryId) -> Vec<EntryId>,
    after: &impl Fn(EntryId) -> Vec<EntryId>,
) -> BTreeSet<EntryId> {
    let mut waiting: BTreeMap<EntryId, usize> = BTreeMap::new();
    for id in &ids {
        waiting.insert(*id, before(*id).iter().filter(|other| ids.contains(other)).count());
    }
    let mut free: Vec<EntryId> =
        waiting.iter().filter(|(_, count)| **count == 0).map(|(id, _)| *id).collect();
    while let Some(id) = free.pop() {
        waiting.remove(&id);
        for next in after(id) {
            let Some(count) = waiting.get_mut(&next) else { continue };
            *count -= 1;
            if *count == 0 {
                free.push(next);
            }
        }
    }
    waiting.into_keys().collect()
}

/// All ids among `within` that can be reached from one in at least one step.
fn reach(
    from: EntryId,
    within: &BTreeSet<EntryId>,
    next: &impl Fn(EntryId) -> Vec<EntryId>,
) -> BTreeSet<EntryId> {
    let mut reached = BTreeSet::new();
    let mut open = vec![from];
    while let Some(id) = open.pop() {
        for other in next(id) {
            if within.contains(&other) && reached.insert(other) {
                open.push(other);
            }
        }
    }
    reached
}

fn insert_sorted(ids: &mut Vec<EntryId>, id: EntryId) {
    if let Err(at) = ids.binary_search(&id) {
        ids.insert(at, id);
    }
}

/// Brings sorted lists together. The sort finds the two runs, so its cost is that of walking through them.
fn merge<T: Ord>(into: &mut Vec<T>, more: Vec<T>) {
    if into.is_empty() {
        *into = more;
    } else {
        into.extend(more);
        into.sort();
    }
}

fn sorted(mut ids: Vec<EntryId>) -> Vec<EntryId> {
    ids.sort_unstable();
    ids.dedup();
    ids
}

/// Brings records into the order in which they came about: what supersedes comes after what it supersedes, and apart
/// from that the order of writing decides. A ring is opened at the record written first.
pub(crate) fn oldest_first(records: Vec<Arc<Record>>) -> Vec<Arc<Record>> {
    let present: BTreeSet<EntryId> = records.iter().map(|record| record.entry().id).collect();
    let mut superseders: BTreeMap<EntryId, Vec<Written>> = BTreeMap::new();
    let mut waiting: BTreeMap<Written, (Arc<Record>, usize)> = BTreeMap::new();
    for record in records {
        let older: BTreeSet<EntryId> =
            record.entry().supersedes.iter().copied().filter(|id| present.contains(id)).collect();
        for id in &older {
            superseders.entry(*id).or_default().push(record.written());
        }
        waiting.insert(record.written(), (record, older.len()));
    }
    let mut free: BTreeSet<Written> =
        waiting.iter().filter(|(_, (_, older))| *older == 0).map(|(written, _)| *written).collect();
    let mut ordered = Vec::with_capacity(waiting.len());
    while let Some(next) = free.pop_first().or_else(|| waiting.keys().next().copied()) {
        let Some((record, _)) = waiting.remove(&next) else { continue };
        // An id used twice frees what waits for it once, with the first of its records.
        for written in superseders.remove(&record.entry().id).unwrap_or_default() {
            let Some((_, older)) = waiting.get_mut(&written) else { continue };
            *older -= 1;
            if *older == 0 {
                free.insert(written);
            }
        }
        ordered.push(record);
    }
    ordered
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use crate::compose::Draft;
    use crate::entry::*;
    use crate::finding::{Cause, Fault};
    use crate::fold::{BookState, fold};
    use crate::trial::make::{self, FARM, Phone, answer, body, house, house_slot};

    /// A house described as 10 m long by `phone`, then put right twice, to 11 m and to 12 m.
    fn put_right_twice(phone: &mut Phone) -> [StoredEntry; 3] {
        let first = phone.write(house(1, 10.0));
        let second = phone.write(Draft::correction(make::id(2), &first.entry, body("length_m", 11.0)));
        let third = phone.write(Draft::correction(make::id(3), &second.entry, body("length_m", 12.0)));
        [first, second, third]
    }

    fn length(state: &BookState) -> Option<serde_json::Value> {
        answer(state, &house_slot(), "length_m")
    }

    #[test]
    fn the_last_correction_counts_whatever_arrives_first() {
        let entries = put_right_twice(&mut Phone::new(1));
        for order in [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]] {
            let mut state = BookState::new(FARM);
            for at in order {
                state.append(entries[at].clone());
            }
            assert_eq!(length(&state), Some(json!(12.0)), "{order:?}");
            assert_eq!(state.conflicts(), []);
            let history: Vec<_> =
                state.history(&house_slot()).iter().map(|record| record.entry().id).collect();
            assert_eq!(history, [make::id(1), make::id(2), make::id(3)], "{order:?}");
        }
    }

    #[test]
    fn a_correction_counts_before_what_it_corrects_has_arrived() {
        let [_, second, third] = put_right_twice(&mut Phone::new(1));
        assert_eq!(length(&fold(FARM, [second, third.clone()])), Some(json!(12.0)));
        assert_eq!(length(&fold(FARM, [third])), Some(json!(12.0)));
    }

    #[test]
    fn two_corrections_of_one_entry_are_asked_about() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        let [first, ..] = put_right_twice(&mut one);
        other.state.append(first.clone());
        let apart = other.write(Draft::correction(make::id(4), &first.entry, body("length_m", 20.0)));
        one.hear(&other);
        let conflicts = one.state.conflicts();
        assert_eq!(conflicts.len(), 1);
        assert_eq!((conflicts[0].cause, conflicts[0].slot.clone()), (Cause::Fork, Some(house_slot())));
        assert_eq!(conflicts[0].to_supersede(), [make::id(3), make::id(4)]);
        // The phone with the fewer entries behind it wrote earlier, by its clock, so it loses for now.
        assert!(apart.entry.clock < conflicts[0].winner.entry().clock);
        assert_eq!(length(&one.state), Some(json!(12.0)));
        // Still so when the entry both correct is not there.
        let orphans = one
            .state
            .all_records()
            .filter(|record| record.entry().id == make::id(4) || record.entry().id == make::id(2));
        assert_eq!(fold(FARM, orphans.map(|record| record.stored().clone())).conflicts().len(), 1);
    }

    #[test]
    fn settling_supersedes_all_heads() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        let [first, ..] = put_right_twice(&mut one);
        other.state.append(first.clone());
        other.write(Draft::correction(make::id(4), &first.entry, body("length_m", 20.0)));
        one.hear(&other);
        let draft = one.state.conflicts()[0].settle(make::id(5), body("length_m", 15.0));
        one.write(draft);
        assert_eq!(one.state.conflicts(), []);
        assert_eq!(length(&one.state), Some(json!(15.0)));
        assert_eq!(one.state.thread(make::id(1)).len(), 5);
    }

    #[test]
    fn a_withdrawal_counts_as_nothing_until_it_is_taken_back() {
        let mut phone = Phone::new(1);
        let first = phone.write(house(1, 10.0));
        let withdrawal = phone.write(Draft::withdrawal(make::id(2), &first.entry));
        assert_eq!(length(&phone.state), None);
        assert_eq!(phone.state.houses(), []);
        assert_eq!(phone.state.history(&house_slot()).len(), 2);
        phone.write(Draft::correction(make::id(3), &withdrawal.entry, body("length_m", 11.0)));
        assert_eq!(length(&phone.state), Some(json!(11.0)));
    }

    #[test]
    fn withdrawing_twice_is_nothing_to_ask_about() {
        let mut phone = Phone::new(1);
        let first = phone.write(house(1, 10.0));
        phone.write(Draft::withdrawal(make::id(2), &first.entry));
        phone.write(Draft::withdrawal(make::id(3), &first.entry));
        assert_eq!((length(&phone.state), phone.state.conflicts()), (None, vec![]));
        // A withdrawal against a correction is.
        phone.write(Draft::correction(make::id(4), &first.entry, body("length_m", 11.0)));
        assert_eq!(phone.state.conflicts().len(), 1);
    }

    #[test]
    fn a_ring_hides_nothing_and_can_be_settled() {
        let mut phone = Phone::new(1);
        let first = phone.write(Draft { supersedes: vec![make::id(3)], ..house(1, 10.0) });
        let second = phone.write(Draft::correction(make::id(2), &first.entry, body("length_m", 11.0)));
        phone.write(Draft::correction(make::id(3), &second.entry, body("length_m", 12.0)));
        let ring = vec![make::id(1), make::id(2), make::id(3)];
        assert_eq!(phone.state.faults(), [Fault::Cycle { entries: ring.clone() }]);
        let conflicts = phone.state.conflicts();
        assert_eq!(conflicts[0].to_supersede(), ring);
        assert_eq!(length(&phone.state), Some(json!(12.0)));
        phone.write(conflicts[0].settle(make::id(4), body("length_m", 13.0)));
        assert_eq!((length(&phone.state), phone.state.conflicts()), (Some(json!(13.0)), vec![]));
        assert_eq!(phone.state.faults().len(), 1, "the ring stays reported");
    }

    #[test]
    fn an_entry_that_supersedes_itself_still_counts() {
        let own = Entry { supersedes: vec![make::id(1)], ..make::entry(1) };
        let state = fold(FARM, [own.encode().unwrap()]);
        assert_eq!(state.faults(), [Fault::Cycle { entries: vec![make::id(1)] }]);
        assert_eq!(state.counting().len(), 1);
    }

    #[test]
    fn history_follows_corrections_and_not_clocks() {
        let mut phone = Phone::new(1);
        let first = phone.write(house(1, 10.0));
        let mut earlier = Phone::new(2);
        earlier.now_millis = 0;
        earlier.write(Draft::correction(make::id(2), &first.entry, body("length_m", 11.0)));
        phone.hear(&earlier);
        let history: Vec<_> =
            phone.state.history(&house_slot()).iter().map(|record| record.entry().id).collect();
        assert_eq!(history, [make::id(1), make::id(2)]);
        assert!(earlier.end.unwrap().clock < first.entry.clock);
    }
}
