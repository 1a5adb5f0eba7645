//! Bad days of the server: cut connections, failing writes, damaged rows, a newer schema, no server at all.

use std::time::Duration;

use store::{Damage, PostgresStore, Store, StoreError};

use crate::phone::{owner, series, stored};
use crate::rig::{Database, with_farms};

#[tokio::test(flavor = "multi_thread")]
async fn an_append_cut_off_is_sent_again() {
    let Some(database) = Database::new("cut_off").await else { return };
    let store = with_farms(database.store().await).await;
    // The server ends the connection while the second entry is filed.
    database
        .meddle(
            "CREATE FUNCTION cut() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
                 PERFORM pg_terminate_backend(pg_backend_pid()); RETURN new; END $$;
             CREATE TRIGGER cut BEFORE INSERT ON entry FOR EACH ROW WHEN (new.sequence = 2) EXECUTE FUNCTION cut()",
        )
        .await;
    store.append(&owner(), series(1, 1..=3)).await.unwrap_err();
    database.meddle("DROP TRIGGER cut ON entry").await;
    assert!(store.all(&owner()).await.unwrap().is_empty());
    let report = store.append(&owner(), series(1, 1..=3)).await.unwrap();
    assert_eq!((report.added, report.already_there), (3, 0));
    database.drop_if_there().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_server_that_was_restarted_is_reached_again() {
    let Some(database) = Database::new("restarted").await else { return };
    let store = with_farms(database.store().await).await;
    store.append(&owner(), series(1, 1..=3)).await.unwrap();
    database.cut_connections().await;
    store.append(&owner(), series(1, 4..=4)).await.unwrap();
    assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=4));
    database.drop_if_there().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_failing_write_keeps_nothing_of_its_call() {
    let Some(database) = Database::new("failing").await else { return };
    let store = with_farms(database.store().await).await;
    store.append(&owner(), series(1, 1..=2)).await.unwrap();
    database.meddle("ALTER TABLE entry ADD CONSTRAINT disk_says_no CHECK (sequence <> 7)").await;
    store.append(&owner(), series(1, 3..=9)).await.unwrap_err();
    assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=2));
    assert_eq!(store.reach(&owner()).await.unwrap().entries, 2);
    database.meddle("ALTER TABLE entry DROP CONSTRAINT disk_says_no").await;
    store.append(&owner(), series(1, 3..=9)).await.unwrap();
    assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=9));
    database.drop_if_there().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_changed_entry_is_named_and_the_others_are_read() {
    let Some(database) = Database::new("changed").await else { return };
    let store = with_farms(database.store().await).await;
    store.append(&owner(), series(1, 1..=4)).await.unwrap();
    for (damage, change) in [
        (Damage::OtherColumns, "day = '2030-01-01'"),
        (
            Damage::OtherHash,
            "bytes = convert_to(replace(convert_from(bytes, 'UTF8'), '\"3\"', '\"2\"'), 'UTF8')",
        ),
        (Damage::Unreadable, "bytes = substr(bytes, 1, 50)"),
    ] {
        database.meddle(&format!("UPDATE entry SET {change} WHERE sequence = 2")).await;
        let check = store.check(&owner()).await.unwrap();
        assert_eq!(check.damaged.len(), 1);
        assert_eq!((check.damaged[0].entry, check.damaged[0].damage), (stored(1, 2).entry.id, damage));
        assert_eq!(check.sound.len(), 3);
    }
    let all = store.all(&owner()).await;
    assert!(
        matches!(all, Err(StoreError::Damaged { entry, .. }) if entry == stored(1, 2).entry.id),
        "{all:?}"
    );
    database.drop_if_there().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_newer_schema_is_refused_and_left_alone() {
    let Some(database) = Database::new("newer").await else { return };
    drop(database.store().await);
    database.meddle("INSERT INTO migration VALUES (2); ALTER TABLE entry ADD COLUMN weather TEXT").await;
    let refused = PostgresStore::connect(&database.address(), 1).await.err();
    assert!(matches!(refused, Some(StoreError::NewerSchema { found: 2, known: 1 })), "{refused:?}");
    assert_eq!(database.ask("SELECT max(version)::text FROM migration").await, "2");
    database.drop_if_there().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn processes_that_start_at_once_make_one_schema() {
    let Some(database) = Database::new("at_once").await else { return };
    let starting: Vec<_> = (0..6)
        .map(|_| {
            let address = database.address();
            tokio::spawn(async move { PostgresStore::connect(&address, 1).await.map(drop) })
        })
        .collect();
    for start in starting {
        start.await.unwrap().unwrap();
    }
    assert_eq!(database.ask("SELECT count(*)::text FROM migration").await, "1");
    database.drop_if_there().await;
}

/// The server of the tests answers before it has written, for speed; the store must not.
#[tokio::test(flavor = "multi_thread")]
async fn a_commit_waits_for_the_disk_whatever_the_server_says() {
    let Some(database) = Database::new("waits").await else { return };
    for (server_says, expected) in [("off", "on"), ("remote_apply", "remote_apply")] {
        database
            .meddle(&format!(
                "DO $$ BEGIN EXECUTE format(
                     'ALTER DATABASE %I SET synchronous_commit = {server_says}', current_database()); END $$"
            ))
            .await;
        let store = with_farms(database.store().await).await;
        database
            .meddle(
                "CREATE TABLE setting (value TEXT);
                 CREATE FUNCTION note() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
                     INSERT INTO setting VALUES (current_setting('synchronous_commit')); RETURN new; END $$;
                 CREATE TRIGGER note BEFORE INSERT ON entry FOR EACH ROW EXECUTE FUNCTION note()",
            )
            .await;
        store.append(&owner(), series(1, 1..=1)).await.unwrap();
        assert_eq!(database.ask("SELECT value FROM setting").await, expected);
        database.meddle("DROP TABLE setting; DROP FUNCTION note CASCADE; DELETE FROM entry").await;
    }
    database.drop_if_there().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn no_server_is_said_so() {
    let nobody_listens = "postgresql://postgres@127.0.0.1:1/nowhere";
    let refused = PostgresStore::connect(nobody_listens, 1).await.err();
    assert!(matches!(refused, Some(StoreError::Unreachable { .. })), "{refused:?}");
    let refused = PostgresStore::connect("a farm by the river", 1).await.err();
    assert!(matches!(refused, Some(StoreError::Postgres { .. })), "{refused:?}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_call_without_a_free_connection_is_not_lost() {
    let Some(database) = Database::new("pool").await else { return };
    let store = with_farms(PostgresStore::connect(&database.address(), 1).await.unwrap()).await;
    let calls: Vec<_> = (1..=30)
        .map(|device| {
            let store = std::sync::Arc::clone(&store);
            tokio::spawn(async move { store.append(&owner(), series(device, 1..=2)).await })
        })
        .collect();
    for call in calls {
        tokio::time::timeout(Duration::from_secs(60), call).await.unwrap().unwrap().unwrap();
    }
    assert_eq!(store.all(&owner()).await.unwrap().len(), 60);
    database.drop_if_there().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn backup_is_the_engines_own_business() {
    let Some(database) = Database::new("backup").await else { return };
    let refused = database.store().await.backup("farm.backup".as_ref()).await;
    assert!(matches!(refused, Err(StoreError::BackupElsewhere { tool: "pg_dump" })));
    database.drop_if_there().await;
}
