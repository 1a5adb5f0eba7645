//! Filing entries.

use std::sync::Arc;

use book::{EntryHash, Role, StoredEntry};
use store::{AppendReport, Clash, ENTRY_BYTES_MAX, StoreError};
use uuid::Uuid;

use crate::phone::{FARM, OTHER_FARM, access, cloned, entry, in_order, owner, series, stored};
use crate::rig::Any;

fn report(added: usize, already_there: usize) -> AppendReport {
    AppendReport { added, already_there, ..AppendReport::default() }
}

fn clash(of: &StoredEntry, other: &StoredEntry) -> Clash {
    Clash {
        entry: of.entry.id,
        hash: of.hash,
        device: of.entry.device,
        sequence: of.entry.sequence,
        others: vec![other.hash],
    }
}

pub async fn entries_come_back_as_written(store: Any) {
    let plain = stored(1, 1);
    // What a newer program wrote: an unknown kind, unknown keys, other spacing.
    let line = String::from_utf8(stored(1, 2).bytes).unwrap();
    let newer = line.replace(r#""kind":"deaths""#, r#""kind":"hatchery", "mood" : [1,  2]"#);
    let newer = StoredEntry::decode(newer.into_bytes()).unwrap();
    let sent = vec![plain, newer];
    assert_eq!(store.append(&owner(), sent.clone()).await.unwrap(), report(2, 0));
    assert_eq!(store.all(&owner()).await.unwrap(), sent);
}

pub async fn nothing_is_a_legal_append(store: Any) {
    assert_eq!(store.append(&owner(), Vec::new()).await.unwrap(), report(0, 0));
    assert!(store.all(&owner()).await.unwrap().is_empty());
}

pub async fn sending_twice_is_harmless(store: Any) {
    store.append(&owner(), series(1, 1..=3)).await.unwrap();
    assert_eq!(store.append(&owner(), series(1, 2..=5)).await.unwrap(), report(2, 2));
    assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=5));
    assert_eq!(store.reach(&owner()).await.unwrap().entries, 5);
}

pub async fn the_same_id_with_other_bytes_keeps_both(store: Any) {
    let first = stored(1, 1);
    let mut changed = entry(2, 8);
    changed.id = first.entry.id;
    let changed = changed.encode().unwrap();
    store.append(&owner(), vec![first.clone()]).await.unwrap();
    let told = store.append(&owner(), vec![changed.clone()]).await.unwrap();
    assert_eq!(told, AppendReport { same_id: vec![clash(&changed, &first)], ..report(1, 0) });
    assert_eq!(store.all(&owner()).await.unwrap(), vec![first, changed]);
}

pub async fn the_same_place_with_another_hash_keeps_both(store: Any) {
    let (first, twin) = (stored(1, 1), cloned(1, 1));
    store.append(&owner(), vec![first.clone()]).await.unwrap();
    let told = store.append(&owner(), vec![twin.clone()]).await.unwrap();
    assert_eq!(told, AppendReport { same_place: vec![clash(&twin, &first)], ..report(1, 0) });
    assert_eq!(store.all(&owner()).await.unwrap(), in_order(vec![first, twin]));
}

pub async fn a_clash_is_told_again_when_the_answer_was_lost(store: Any) {
    let (first, twin) = (stored(1, 1), cloned(1, 1));
    store.append(&owner(), vec![first.clone()]).await.unwrap();
    let lost = store.append(&owner(), vec![twin.clone()]).await.unwrap();
    let again = store.append(&owner(), vec![twin.clone()]).await.unwrap();
    assert_eq!(again, AppendReport { same_place: vec![clash(&twin, &first)], ..report(0, 1) });
    assert_eq!(again.same_place, lost.same_place);
}

pub async fn two_of_one_call_that_clash_are_both_told(store: Any) {
    let (first, twin) = (stored(1, 1), cloned(1, 1));
    let told = store.append(&owner(), vec![first.clone(), twin.clone()]).await.unwrap();
    assert_eq!(told.same_place, vec![clash(&first, &twin), clash(&twin, &first)]);
}

pub async fn an_entry_twice_in_one_call_is_kept_once(store: Any) {
    let twice = vec![stored(1, 1), stored(1, 1)];
    assert_eq!(store.append(&owner(), twice).await.unwrap(), report(1, 1));
    assert_eq!(store.reach(&owner()).await.unwrap().entries, 1);
}

pub async fn a_viewer_writes_nothing(store: Any) {
    let viewer = access(FARM, 1, Role::Viewer);
    let refused = store.append(&viewer, series(1, 1..=1)).await;
    assert!(matches!(refused, Err(StoreError::Forbidden { role: Role::Viewer })));
    let helper = access(FARM, 1, Role::Helper);
    store.append(&helper, series(1, 1..=1)).await.unwrap();
    assert_eq!(store.all(&viewer).await.unwrap(), series(1, 1..=1));
}

pub async fn an_entry_of_another_farm_is_refused_with_all_beside_it(store: Any) {
    let mut foreign = entry(1, 2);
    foreign.farm = OTHER_FARM;
    let sent = vec![stored(1, 1), foreign.encode().unwrap()];
    let refused = store.append(&owner(), sent).await;
    assert!(matches!(refused, Err(StoreError::OtherFarm { found: OTHER_FARM, expected: FARM, .. })));
    assert!(store.all(&owner()).await.unwrap().is_empty());
}

pub async fn an_unknown_farm_is_refused(store: Any) {
    let nowhere = book::FarmId(Uuid::from_u128(0xdead));
    let mut lost = entry(1, 1);
    lost.farm = nowhere;
    let refused = store.append(&access(nowhere, 1, Role::Owner), vec![lost.encode().unwrap()]).await;
    assert!(matches!(refused, Err(StoreError::UnknownFarm { farm }) if farm == nowhere));
}

pub async fn what_cannot_be_filed_is_refused(store: Any) {
    let bent = |bend: fn(&mut book::Entry)| {
        let mut it = entry(1, 1);
        bend(&mut it);
        it.encode().unwrap()
    };
    let mut forged = stored(1, 1);
    forged.hash = EntryHash::of(b"another");
    for (sent, expected) in [
        (bent(|it| it.sequence = 0), "sequence"),
        (bent(|it| it.sequence = u64::MAX), "sequence"),
        (bent(|it| it.kind = "a\0b".to_owned()), "kind"),
        (bent(|it| it.kind = "k".repeat(101)), "kind"),
        (forged, "hash"),
    ] {
        let refused = store.append(&owner(), vec![stored(1, 5), sent]).await;
        assert!(
            matches!(refused, Err(StoreError::Unfileable { field, .. }) if field == expected),
            "{expected}: {refused:?}"
        );
    }
    assert!(store.all(&owner()).await.unwrap().is_empty());
}

pub async fn an_entry_over_the_bound_is_refused(store: Any) {
    let mut long = entry(1, 1);
    let room = ENTRY_BYTES_MAX - entry_with_reason("").bytes.len();
    long.reason = Some("x".repeat(room + 1));
    let refused = store.append(&owner(), vec![long.encode().unwrap()]).await;
    assert!(matches!(refused, Err(StoreError::EntryTooLarge { bytes, .. }) if bytes == ENTRY_BYTES_MAX + 1));
    store.append(&owner(), vec![entry_with_reason(&"x".repeat(room))]).await.unwrap();
}

fn entry_with_reason(reason: &str) -> StoredEntry {
    let mut it = entry(1, 1);
    it.reason = Some(reason.to_owned());
    it.encode().unwrap()
}

/// Each entry is sent by two of the sixteen, in calls of one and of several, as phones on a bad line do.
pub async fn sixteen_senders_at_once_land_each_entry_once(store: Any) {
    let senders: Vec<_> = (0..16_u128)
        .map(|sender| {
            let store = Arc::clone(&store);
            tokio::spawn(async move {
                let mut added = 0;
                for call in series(sender / 2, 1..=40).chunks(1 + 3 * (sender as usize % 2)) {
                    added += store.append(&owner(), call.to_vec()).await.unwrap().added;
                }
                added
            })
        })
        .collect();
    let mut added = 0;
    for sender in senders {
        added += sender.await.unwrap();
    }
    let expected: Vec<_> = (0..8).flat_map(|device| series(device, 1..=40)).collect();
    assert_eq!(added, expected.len());
    assert_eq!(store.all(&owner()).await.unwrap(), expected);
    let reach = store.reach(&owner()).await.unwrap();
    assert_eq!(reach.entries, 320);
    assert!(reach.seen.values().all(|seen| *seen == 40), "{:?}", reach.seen);
}

/// However two calls fall in time, the later one is told: of a cloned device, and of a changed entry.
pub async fn two_that_clash_at_once_are_told_apart(store: Any) {
    for sequence in 1..=20 {
        let (one, two) = at_once(&store, vec![stored(1, sequence)], vec![cloned(1, sequence)]).await;
        assert_eq!(one.same_place.len() + two.same_place.len(), 1, "at {sequence}");
        let mut changed = entry(2, sequence);
        changed.id = entry(3, sequence).id;
        let changed = changed.encode().unwrap();
        let (one, two) = at_once(&store, vec![stored(3, sequence)], vec![changed]).await;
        assert_eq!(one.same_id.len() + two.same_id.len(), 1, "at {sequence}");
    }
    assert_eq!(store.reach(&owner()).await.unwrap().entries, 80);
}

/// Two books that meet at a server may send the same entries from opposite ends.
pub async fn the_same_entries_in_opposite_order_at_once_are_kept_once(store: Any) {
    for round in 0..5 {
        let forth = series(1, round * 200 + 1..=round * 200 + 200);
        let back: Vec<_> = forth.iter().rev().cloned().collect();
        let (one, two) = at_once(&store, forth, back).await;
        assert_eq!((one.added + two.added, one.already_there + two.already_there), (200, 200));
    }
    assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=1_000));
}

async fn at_once(store: &Any, one: Vec<StoredEntry>, two: Vec<StoredEntry>) -> (AppendReport, AppendReport) {
    let send = |entries| {
        let store = Arc::clone(store);
        tokio::spawn(async move { store.append(&owner(), entries).await.unwrap() })
    };
    let (one, two) = (send(one), send(two));
    (one.await.unwrap(), two.await.unwrap())
}
