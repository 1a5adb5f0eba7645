//! Bringing a database to the newest schema.

use deadpool_postgres::GenericClient;

use crate::error::StoreError;

/// Steps forward, in order; a step is never edited once it is released.
const MIGRATIONS: &[&str] = &[include_str!("../../migrations/postgres/0001_book.sql")];

/// The advisory lock under which schema and farms are made: "BRDW".
const LOCK: i64 = 0x4252_4457;

/// Takes the steps that are missing, all in one transaction. Of processes that start at once, one does it.
///
/// # Errors
/// `NewerSchema`, with nothing touched.
pub(super) async fn migrate(client: &mut deadpool_postgres::Client) -> Result<(), StoreError> {
    let transaction = client.transaction().await?;
    lock(&transaction).await?;
    let taken = version(&transaction).await?;
    let known = MIGRATIONS.len() as i64;
    if taken > known {
        return Err(StoreError::NewerSchema { found: taken, known });
    }
    for (step, sql) in (1_i64..).zip(MIGRATIONS).skip_while(|(step, _)| *step <= taken) {
        transaction.batch_execute(sql).await?;
        transaction.execute("INSERT INTO migration (version) VALUES ($1)", &[&step]).await?;
    }
    Ok(transaction.commit().await?)
}

/// Keeps all other holders of the lock waiting until the transaction ends.
pub(super) async fn lock(client: &impl GenericClient) -> Result<(), StoreError> {
    client.execute("SELECT pg_advisory_xact_lock($1)", &[&LOCK]).await?;
    Ok(())
}

async fn version(client: &impl GenericClient) -> Result<i64, StoreError> {
    client
        .batch_execute("CREATE TABLE IF NOT EXISTS migration (version BIGINT NOT NULL PRIMARY KEY)")
        .await?;
    let row = client.query_one("SELECT coalesce(max(version), 0) FROM migration", &[]).await?;
    Ok(row.try_get(0)?)
}
