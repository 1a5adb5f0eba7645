//! Copies of the one file: made while others write, refused where something stands, and brought back.

use std::fs;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use rusqlite::Connection;
use store::sqlite::restore;
use store::{SqliteStore, Store, StoreError};

use crate::phone::{owner, series, stored};
use crate::rig::{Folder, open, with_farms};

#[tokio::test(flavor = "multi_thread")]
async fn a_backup_made_during_writing_is_one_state_of_the_book() {
    let folder = Folder::new("backup");
    let store = with_farms(open(&folder.book())).await;
    store.append(&owner(), series(1, 1..=500)).await.unwrap();
    let enough = Arc::new(AtomicBool::new(false));
    let writer = {
        let (store, enough) = (Arc::clone(&store), Arc::clone(&enough));
        tokio::spawn(async move {
            let mut sequence = 500;
            while !enough.load(Ordering::Relaxed) {
                sequence += 1;
                store.append(&owner(), vec![stored(1, sequence)]).await.unwrap();
            }
            sequence
        })
    };
    let mut sizes = Vec::new();
    for number in 0..5 {
        let acknowledged = store.reach(&owner()).await.unwrap().entries;
        let copy = folder.path(&format!("{number}.backup"));
        store.backup(&copy).await.unwrap();
        let copied = open(&copy).reach(&owner()).await.unwrap();
        assert!(copied.entries >= acknowledged);
        assert_eq!(copied.seen[&owner().device()], copied.entries);
        assert_eq!(open(&copy).all(&owner()).await.unwrap(), series(1, 1..=copied.entries));
        sizes.push(copied.entries);
    }
    enough.store(true, Ordering::Relaxed);
    let last = writer.await.unwrap();
    assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=last));
    assert!(sizes[0] < last, "nothing was written meanwhile");
}

#[tokio::test]
async fn a_book_in_memory_can_be_copied_to_disk() {
    let folder = Folder::new("memory");
    let store = with_farms(SqliteStore::in_memory().unwrap()).await;
    store.append(&owner(), series(1, 1..=20)).await.unwrap();
    store.backup(&folder.book()).await.unwrap();
    assert_eq!(folder.names(), ["farm.book"]);
    assert_eq!(open(&folder.book()).all(&owner()).await.unwrap(), series(1, 1..=20));
}

#[tokio::test]
async fn a_backup_never_takes_the_place_of_another_file() {
    let folder = Folder::new("in-place");
    let store = with_farms(open(&folder.book())).await;
    let taken = folder.path("photo.jpg");
    fs::write(&taken, "a photo").unwrap();
    let refused = store.backup(&taken).await;
    assert!(matches!(refused, Err(StoreError::TargetExists { path }) if path == taken));
    assert_eq!(fs::read_to_string(&taken).unwrap(), "a photo");
}

#[tokio::test]
async fn a_backup_that_fails_leaves_nothing_behind() {
    let folder = Folder::new("fails");
    let store = with_farms(open(&folder.book())).await;
    store.append(&owner(), series(1, 1..=20)).await.unwrap();
    store.backup(&folder.path("missing/farm.backup")).await.unwrap_err();
    // A broken page in the book must not be carried into a backup that someone will trust.
    drop(store);
    scramble_last_page(&folder);
    let store = open(&folder.book());
    let refused = store.backup(&folder.path("farm.backup")).await;
    assert!(matches!(refused, Err(StoreError::Corrupt { .. })), "{refused:?}");
    drop(store);
    assert_eq!(folder.names(), ["farm.book"]);
}

fn scramble_last_page(folder: &Folder) {
    let mut bytes = fs::read(folder.book()).unwrap();
    let last = bytes.len() - 4096;
    bytes[last..].iter_mut().for_each(|byte| *byte ^= 0x5a);
    fs::write(folder.book(), bytes).unwrap();
}

#[tokio::test]
async fn a_backup_is_restored_to_an_equal_book() {
    let folder = Folder::new("restored");
    let store = with_farms(open(&folder.book())).await;
    store.append(&owner(), series(1, 1..=50)).await.unwrap();
    store.backup(&folder.path("farm.backup")).await.unwrap();
    restore(&folder.path("farm.backup"), &folder.path("new.book")).unwrap();
    let restored = open(&folder.path("new.book"));
    assert_eq!(restored.all(&owner()).await.unwrap(), series(1, 1..=50));
    assert_eq!(restored.reach(&owner()).await.unwrap(), store.reach(&owner()).await.unwrap());
    restored.append(&owner(), series(1, 51..=51)).await.unwrap();
    let again = restore(&folder.path("farm.backup"), &folder.path("new.book"));
    assert!(matches!(again, Err(StoreError::TargetExists { .. })));
}

#[tokio::test]
async fn half_a_backup_is_refused_and_makes_nothing() {
    let folder = Folder::new("half");
    let store = with_farms(open(&folder.book())).await;
    store.append(&owner(), series(1, 1..=200)).await.unwrap();
    drop(store);
    let whole = fs::read(folder.book()).unwrap();
    fs::remove_file(folder.book()).unwrap();
    let pages = whole.len() / 4096;
    for kept in [0, 1, 100, 4096, 3 * 4096, pages / 2 * 4096 + 7, whole.len() - 4096, whole.len() - 1] {
        fs::write(folder.path("half.backup"), &whole[..kept]).unwrap();
        let refused = restore(&folder.path("half.backup"), &folder.book());
        assert!(
            matches!(refused, Err(StoreError::NotABook { .. } | StoreError::Corrupt { .. })),
            "{kept} of {} bytes: {refused:?}",
            whole.len()
        );
        assert_eq!(folder.names(), ["half.backup"]);
    }
}

#[tokio::test]
async fn a_newer_backup_and_a_missing_one_are_refused() {
    let folder = Folder::new("newer-backup");
    drop(open(&folder.path("newer.backup")));
    let db = Connection::open(folder.path("newer.backup")).unwrap();
    db.execute_batch("INSERT INTO migration VALUES (2)").unwrap();
    drop(db);
    let newer = restore(&folder.path("newer.backup"), &folder.book());
    assert!(matches!(newer, Err(StoreError::NewerSchema { found: 2, known: 1 })), "{newer:?}");
    let missing = restore(&folder.path("missing.backup"), &folder.book());
    assert!(matches!(missing, Err(StoreError::NoBook { .. })), "{missing:?}");
    assert_eq!(folder.names(), ["newer.backup"]);
}
