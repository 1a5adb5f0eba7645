//! Reading entries.

use std::collections::BTreeMap;

use book::{DeviceId, Role, SeriesEnd, StoredEntry, fold};
use store::{FrameLimit, Reach};
use uuid::Uuid;

use crate::phone::{FARM, OTHER_FARM, access, cloned, entry, in_order, owner, series, stored};
use crate::rig::Any;

const WIDE: FrameLimit = FrameLimit { entries: 1_000, bytes: 1_000_000 };

fn device(number: u128) -> DeviceId {
    DeviceId(Uuid::from_u128(number))
}

/// Goes on as the trait says, until nothing is missing; gives the frames.
async fn frames(store: &Any, mut seen: BTreeMap<DeviceId, u64>, limit: FrameLimit) -> Vec<Vec<StoredEntry>> {
    let mut frames = Vec::new();
    loop {
        let frame = store.since(&owner(), &seen, limit).await.unwrap();
        if frame.is_empty() {
            return frames;
        }
        for stored in &frame {
            let seen = seen.entry(stored.entry.device).or_default();
            *seen = (*seen).max(stored.entry.sequence);
        }
        frames.push(frame);
        assert!(frames.len() < 1_000, "the frames never end");
    }
}

pub async fn farms_do_not_see_each_other(store: Any) {
    let neighbour = access(OTHER_FARM, 1, Role::Owner);
    let mut theirs = entry(1, 9);
    theirs.farm = OTHER_FARM;
    let theirs = theirs.encode().unwrap();
    store.append(&owner(), series(1, 1..=2)).await.unwrap();
    store.append(&neighbour, vec![theirs.clone()]).await.unwrap();
    assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=2));
    assert_eq!(store.all(&neighbour).await.unwrap(), vec![theirs.clone()]);
    assert_eq!(store.since(&neighbour, &BTreeMap::new(), WIDE).await.unwrap(), vec![theirs]);
    assert_eq!(store.device_tip(&owner()).await.unwrap().unwrap().sequence, 2);
    assert_eq!(store.device_tip(&neighbour).await.unwrap().unwrap().sequence, 9);
    assert_eq!(store.reach(&neighbour).await.unwrap().entries, 1);
    assert_eq!(store.check(&neighbour).await.unwrap().sound.len(), 1);
}

pub async fn the_tip_is_the_devices_last(store: Any) {
    assert_eq!(store.device_tip(&owner()).await.unwrap(), None);
    store.append(&owner(), series(2, 1..=9)).await.unwrap();
    assert_eq!(store.device_tip(&owner()).await.unwrap(), None);
    let last = stored(1, 3);
    store.append(&owner(), vec![last.clone(), stored(1, 1), stored(1, 2)]).await.unwrap();
    let tip = SeriesEnd { sequence: 3, hash: last.hash, clock: last.entry.clock };
    assert_eq!(store.device_tip(&owner()).await.unwrap(), Some(tip));
    store.append(&owner(), vec![cloned(1, 3)]).await.unwrap();
    let least = last.hash.min(cloned(1, 3).hash);
    assert_eq!(store.device_tip(&owner()).await.unwrap().unwrap().hash, least);
}

pub async fn the_reach_stops_at_a_gap_and_goes_on_when_it_closes(store: Any) {
    assert_eq!(store.reach(&owner()).await.unwrap(), Reach::default());
    store.append(&owner(), series(1, 1..=3)).await.unwrap();
    store.append(&owner(), series(1, 5..=8)).await.unwrap();
    store.append(&owner(), series(2, 2..=2)).await.unwrap();
    let seen = store.reach(&owner()).await.unwrap().seen;
    assert_eq!(seen, BTreeMap::from([(device(1), 3)]));
    assert_eq!(seen, fold(FARM, store.all(&owner()).await.unwrap()).seen());
    store.append(&owner(), vec![stored(1, 4), stored(2, 1)]).await.unwrap();
    let seen = store.reach(&owner()).await.unwrap().seen;
    assert_eq!(seen, BTreeMap::from([(device(1), 8), (device(2), 2)]));
}

pub async fn what_is_missing_comes_in_frames(store: Any) {
    for number in 1..=3 {
        store.append(&owner(), series(number, 1..=10)).await.unwrap();
    }
    let seen = BTreeMap::from([(device(1), 4), (device(3), 10), (device(99), 5), (device(2), 0)]);
    let frames = frames(&store, seen, FrameLimit { entries: 4, ..WIDE }).await;
    let sizes: Vec<_> = frames.iter().map(Vec::len).collect();
    assert_eq!(sizes, [4, 4, 4, 4]);
    assert_eq!(frames.concat(), [series(1, 5..=10), series(2, 1..=10)].concat());
    let none = BTreeMap::from([(device(1), u64::MAX), (device(2), 10), (device(3), 10)]);
    assert!(store.since(&owner(), &none, WIDE).await.unwrap().is_empty());
}

pub async fn a_frame_is_bounded_in_bytes_but_never_empty(store: Any) {
    store.append(&owner(), series(1, 1..=5)).await.unwrap();
    let one = stored(1, 1).bytes.len();
    let sizes = |frames: Vec<Vec<StoredEntry>>| frames.iter().map(Vec::len).collect::<Vec<_>>();
    let two_fit = FrameLimit { bytes: 2 * one, ..WIDE };
    assert_eq!(sizes(frames(&store, BTreeMap::new(), two_fit).await), [2, 2, 1]);
    let just_short = FrameLimit { bytes: 2 * one - 1, ..WIDE };
    assert_eq!(sizes(frames(&store, BTreeMap::new(), just_short).await), [1; 5]);
    let nothing_fits = FrameLimit { entries: 0, bytes: 0 };
    assert_eq!(sizes(frames(&store, BTreeMap::new(), nothing_fits).await), [1; 5]);
}

pub async fn a_frame_never_parts_two_at_one_place(store: Any) {
    let sent = in_order(vec![stored(1, 1), stored(1, 2), cloned(1, 2), stored(1, 3), stored(2, 1)]);
    store.append(&owner(), sent.clone()).await.unwrap();
    for limit in [FrameLimit { entries: 2, ..WIDE }, FrameLimit { bytes: 2 * sent[0].bytes.len(), ..WIDE }] {
        let frames = frames(&store, BTreeMap::new(), limit).await;
        assert_eq!(frames[0], sent[..3]);
        assert_eq!(frames.concat(), sent);
    }
}

pub async fn what_lies_beyond_a_gap_is_sent(store: Any) {
    let sent = [series(1, 1..=2), series(1, 5..=9)].concat();
    store.append(&owner(), sent.clone()).await.unwrap();
    let limit = FrameLimit { entries: 3, ..WIDE };
    assert_eq!(frames(&store, BTreeMap::new(), limit).await.concat(), sent);
    let frames = frames(&store, BTreeMap::from([(device(1), 2)]), limit).await;
    assert_eq!(frames.concat(), series(1, 5..=9));
}

pub async fn a_sound_book_checks_clean(store: Any) {
    let sent = [series(1, 1..=3), vec![cloned(1, 3)], series(2, 7..=8)].concat();
    store.append(&owner(), sent.clone()).await.unwrap();
    let check = store.check(&owner()).await.unwrap();
    assert!(check.is_clean(), "{:?} {:?}", check.damaged, check.engine);
    assert_eq!(in_order(check.sound), in_order(sent));
}
