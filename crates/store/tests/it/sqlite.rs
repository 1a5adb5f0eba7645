//! Bad days of the one file: full, locked, damaged, too new, or no book at all.

use std::fs;
use std::path::Path;
use std::sync::{Arc, Barrier};
use std::thread;
use std::time::Duration;

use book::{PersonId, StoredEntry};
use rusqlite::Connection;
use store::sqlite::Opening;
use store::{Damage, SqliteStore, Store, StoreError};
use uuid::Uuid;

use crate::phone::{entry, owner, series, stored};
use crate::rig::{Any, Folder, open, with_farms};

async fn book_of(path: &Path, entries: Vec<StoredEntry>) {
    with_farms(open(path)).await.append(&owner(), entries).await.unwrap();
}

fn refusal(path: &Path) -> StoreError {
    match SqliteStore::open(path, Opening::default()) {
        Ok(_) => panic!("{path:?} was taken for a book"),
        Err(error) => error,
    }
}

/// Changes one byte of the file at the n-th place where the text stands.
fn flip(path: &Path, text: &str, nth: usize) {
    let mut bytes = fs::read(path).unwrap();
    let starts: Vec<_> =
        (0..bytes.len() - text.len()).filter(|at| bytes[*at..].starts_with(text.as_bytes())).collect();
    bytes[starts[nth]] ^= 1;
    fs::write(path, bytes).unwrap();
}

#[tokio::test]
async fn what_was_acknowledged_is_there_after_reopening_in_one_file() {
    let folder = Folder::new("reopening");
    book_of(&folder.book(), series(1, 1..=50)).await;
    assert_eq!(folder.names(), ["farm.book"]);
    assert_eq!(open(&folder.book()).all(&owner()).await.unwrap(), series(1, 1..=50));
}

/// Whatever write it is that no longer fits, the call it belongs to is kept whole or not at all.
#[tokio::test]
async fn a_full_disk_keeps_whole_calls_only() {
    let folder = Folder::new("full");
    book_of(&folder.book(), Vec::new()).await;
    let pages = u32::try_from(fs::metadata(folder.book()).unwrap().len() / 4096).unwrap();
    for spare in 0..8 {
        let path = folder.path(&format!("{spare}.book"));
        fs::copy(folder.book(), &path).unwrap();
        let acknowledged = fill_up(&path, pages + spare).await;
        let store = open(&path);
        let check = store.check(&owner()).await.unwrap();
        assert!(check.is_clean(), "{:?}", check.engine);
        assert_eq!(store.all(&owner()).await.unwrap(), acknowledged, "with {spare} pages to spare");
        // With room again, the phone sends the rest once more.
        store.append(&owner(), series(1, 1..=300)).await.unwrap();
        assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=300));
    }
}

/// Sends calls of seven until the disk is full; gives what was acknowledged.
async fn fill_up(path: &Path, pages: u32) -> Vec<StoredEntry> {
    let opening = Opening { pages_max: Some(pages), ..Opening::default() };
    let store = SqliteStore::open(path, opening).unwrap();
    let mut acknowledged = Vec::new();
    for call in series(1, 1..=300).chunks(7) {
        match store.append(&owner(), call.to_vec()).await {
            Ok(_) => acknowledged.extend_from_slice(call),
            Err(StoreError::DiskFull) => return acknowledged,
            Err(other) => panic!("{other}"),
        }
    }
    panic!("{pages} pages were never full");
}

/// Many calls commit together; one of them fails at its n-th write.
#[tokio::test(flavor = "multi_thread")]
async fn one_failing_call_does_not_sink_those_beside_it() {
    let folder = Folder::new("failing");
    let store = with_farms(open(&folder.book())).await;
    fail_at(&folder.book(), 5);
    let senders: Vec<_> = (1..=40_u128)
        .map(|device| {
            let store = Arc::clone(&store);
            // Only the calls of device 3 reach the fifth entry.
            let last = if device == 3 { 9 } else { 4 };
            tokio::spawn(async move { (device, store.append(&owner(), series(device, 1..=last)).await) })
        })
        .collect();
    for sender in senders {
        let (device, outcome) = sender.await.unwrap();
        assert_eq!(outcome.is_err(), device == 3, "{device}: {outcome:?}");
    }
    let kept: Vec<_> = (1..=40).filter(|device| *device != 3).flat_map(|it| series(it, 1..=4)).collect();
    assert_eq!(store.all(&owner()).await.unwrap(), kept);
    assert_eq!(store.reach(&owner()).await.unwrap().entries, 39 * 4);
}

fn fail_at(path: &Path, sequence: u64) {
    let hook = format!(
        "CREATE TRIGGER fail BEFORE INSERT ON entry WHEN new.sequence = {sequence}
         BEGIN SELECT raise(ABORT, 'the disk says no'); END"
    );
    Connection::open(path).unwrap().execute_batch(&hook).unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn two_stores_on_one_file_write_in_turn_and_see_each_other() {
    let folder = Folder::new("two");
    let one = with_farms(open(&folder.book())).await;
    let two: Any = Arc::new(open(&folder.book()));
    let send = |store: &Any, device| {
        let store = Arc::clone(store);
        tokio::spawn(async move {
            for call in series(device, 1..=60).chunks(3) {
                store.append(&owner(), call.to_vec()).await.unwrap();
            }
        })
    };
    let (first, second) = (send(&one, 1), send(&two, 2));
    first.await.unwrap();
    second.await.unwrap();
    let both = [series(1, 1..=60), series(2, 1..=60)].concat();
    assert_eq!(one.all(&owner()).await.unwrap(), both);
    assert_eq!(two.all(&owner()).await.unwrap(), both);
    assert_eq!(one.reach(&owner()).await.unwrap(), two.reach(&owner()).await.unwrap());
}

#[test]
fn many_that_open_a_new_book_at_once_make_one() {
    let folder = Folder::new("at-once");
    for round in 0..10 {
        let path = folder.path(&format!("{round}.book"));
        let together = Barrier::new(4);
        thread::scope(|scope| {
            for _ in 0..4 {
                scope.spawn(|| {
                    together.wait();
                    open(&path);
                });
            }
        });
        let db = Connection::open(&path).unwrap();
        let steps: i64 = db.query_row("SELECT count(*) FROM migration", [], |row| row.get(0)).unwrap();
        assert_eq!(steps, 1);
    }
}

#[tokio::test]
async fn a_book_held_by_another_process_is_busy_and_then_is_not() {
    let folder = Folder::new("busy");
    book_of(&folder.book(), Vec::new()).await;
    let opening = Opening { busy_wait: Duration::from_millis(1), ..Opening::default() };
    let store = SqliteStore::open(&folder.book(), opening).unwrap();
    let other = Connection::open(folder.book()).unwrap();
    other.execute_batch("BEGIN IMMEDIATE").unwrap();
    let refused = store.append(&owner(), series(1, 1..=1)).await;
    assert!(matches!(refused, Err(StoreError::Busy)), "{refused:?}");
    assert!(store.all(&owner()).await.unwrap().is_empty());
    other.execute_batch("COMMIT").unwrap();
    store.append(&owner(), series(1, 1..=1)).await.unwrap();
}

#[test]
fn no_book_is_made_where_one_was_to_be_found() {
    let folder = Folder::new("none");
    let opening = Opening { create: false, ..Opening::default() };
    let refused = SqliteStore::open(&folder.book(), opening).err();
    assert!(matches!(refused, Some(StoreError::NoBook { path }) if path == folder.book()));
    assert!(folder.names().is_empty());
}

#[test]
fn an_empty_file_becomes_a_book() {
    let folder = Folder::new("empty");
    fs::write(folder.book(), "").unwrap();
    open(&folder.book());
    assert!(fs::metadata(folder.book()).unwrap().len() > 0);
}

#[test]
fn a_file_of_another_kind_is_refused_and_left_alone() {
    let folder = Folder::new("other-kind");
    let text = folder.path("letter.txt");
    fs::write(&text, "Dear Sir, ".repeat(1_000)).unwrap();
    assert!(matches!(refusal(&text), StoreError::NotABook { .. }));
    assert_eq!(fs::read_to_string(&text).unwrap(), "Dear Sir, ".repeat(1_000));

    let database = folder.path("music.db");
    Connection::open(&database).unwrap().execute_batch("CREATE TABLE song (title TEXT)").unwrap();
    let before = fs::read(&database).unwrap();
    assert!(matches!(refusal(&database), StoreError::NotABook { .. }));
    assert_eq!(fs::read(&database).unwrap(), before);
    assert_eq!(folder.names(), ["letter.txt", "music.db"]);
}

#[tokio::test]
async fn a_newer_book_is_refused_and_left_alone() {
    let folder = Folder::new("newer");
    book_of(&folder.book(), series(1, 1..=3)).await;
    let db = Connection::open(folder.book()).unwrap();
    db.execute_batch("INSERT INTO migration VALUES (2); CREATE TABLE weather (day TEXT)").unwrap();
    drop(db);
    let before = fs::read(folder.book()).unwrap();
    let refused = refusal(&folder.book());
    assert!(matches!(refused, StoreError::NewerSchema { found: 2, known: 1 }), "{refused}");
    assert_eq!(fs::read(folder.book()).unwrap(), before);
}

#[tokio::test]
async fn a_changed_entry_is_named_and_the_others_are_read() {
    let folder = Folder::new("changed");
    let mut marked = entry(1, 2);
    marked.reason = Some("the cat ate them".to_owned());
    let marked = marked.encode().unwrap();
    let sent = vec![stored(1, 1), marked.clone(), stored(1, 3)];
    book_of(&folder.book(), sent.clone()).await;
    for (text, damage) in [("the cat ate", Damage::OtherHash), (r#","reason""#, Damage::Unreadable)] {
        flip(&folder.book(), text, 0);
        let store = open(&folder.book());
        let all = store.all(&owner()).await;
        assert!(
            matches!(all, Err(StoreError::Damaged { entry, damage: found }) if entry == marked.entry.id && found == damage),
            "{all:?}"
        );
        let check = store.check(&owner()).await.unwrap();
        assert_eq!(check.damaged.len(), 1);
        assert_eq!((check.damaged[0].entry, check.damaged[0].damage), (marked.entry.id, damage));
        assert_eq!(check.sound, [sent[0].clone(), sent[2].clone()]);
    }
}

#[tokio::test]
async fn columns_that_tell_another_story_are_found() {
    let folder = Folder::new("columns");
    book_of(&folder.book(), series(1, 1..=3)).await;
    let db = Connection::open(folder.book()).unwrap();
    db.execute_batch("UPDATE entry SET day = '2030-01-01' WHERE sequence = 2").unwrap();
    let store = open(&folder.book());
    let check = store.check(&owner()).await.unwrap();
    assert_eq!(
        (check.damaged[0].entry, check.damaged[0].damage),
        (stored(1, 2).entry.id, Damage::OtherColumns)
    );
    assert_eq!(check.sound.len(), 2);
}

/// Page after page is scrambled. Whatever is lost, it is said; what is given is as written.
#[tokio::test]
async fn scrambled_pages_are_errors_and_never_wrong_entries() {
    let folder = Folder::new("scrambled");
    let sent = series(1, 1..=60);
    book_of(&folder.book(), sent.clone()).await;
    let whole = fs::read(folder.book()).unwrap();
    for page in 0..whole.len() / 4096 {
        let path = folder.path("scrambled.book");
        let mut bytes = whole.clone();
        bytes[page * 4096..(page + 1) * 4096].iter_mut().for_each(|byte| *byte ^= 0x5a);
        fs::write(&path, bytes).unwrap();
        let Ok(store) = SqliteStore::open(&path, Opening::default()) else { continue };
        match store.check(&owner()).await {
            Ok(check) => {
                assert!(!check.is_clean(), "page {page} is scrambled, and nobody says so");
                assert!(check.sound.iter().all(|entry| sent.contains(entry)));
            }
            Err(error) => assert!(matches!(error, StoreError::Corrupt { .. }), "page {page}: {error}"),
        }
        if let Ok(all) = store.all(&owner()).await {
            assert!(all.iter().all(|entry| sent.contains(entry)));
        }
    }
}

/// Of many names on one page; the one that is blanked leaves a hole, and the hole must be empty.
#[tokio::test]
async fn a_blanked_name_is_not_left_in_the_file() {
    let folder = Folder::new("blanked");
    let store = with_farms(open(&folder.book())).await;
    let person = |number| PersonId(Uuid::from_u128(number));
    for number in 0..20 {
        store.put_person(&owner(), person(number), &format!("Person called {number:03}")).await.unwrap();
    }
    drop(store);
    let holds_name = |number: u32| {
        let name = format!("called {number:03}").into_bytes();
        fs::read(folder.book()).unwrap().windows(name.len()).any(|it| it == name)
    };
    assert!(holds_name(7) && holds_name(8));
    open(&folder.book()).blank_person(&owner(), person(7)).await.unwrap();
    assert!(!holds_name(7) && holds_name(8));
}
