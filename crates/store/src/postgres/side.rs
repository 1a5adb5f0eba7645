//! The tables beside the entries: farms, drafts, names.

use std::collections::BTreeMap;

use book::{FarmId, PersonId};
use deadpool_postgres::{Client, GenericClient};
use tokio_postgres::Row as Answer;

use super::append::lock_farm;
use super::row::uuid;
use super::schema;
use crate::draft::{Draft, Text};
use crate::error::StoreError;
use crate::farm::{self, Farm};

const PUT_DRAFT: &str = "
    INSERT INTO draft (farm, key, body, person, updated_millis) VALUES ($1, $2, $3, $4, $5)
    ON CONFLICT (farm, key) DO UPDATE SET
        body = excluded.body, person = excluded.person, updated_millis = excluded.updated_millis
    WHERE excluded.updated_millis >= draft.updated_millis";

const DRAFT: &str = "SELECT key, body, person, updated_millis FROM draft WHERE farm = $1 AND key = $2";

const DRAFTS: &str = "SELECT key, body, person, updated_millis FROM draft WHERE farm = $1 ORDER BY key";

const PUT_PERSON: &str = "
    INSERT INTO person (farm, person, name) VALUES ($1, $2, $3)
    ON CONFLICT (farm, person) DO UPDATE SET name = excluded.name WHERE person.name IS NOT NULL";

const BLANK_PERSON: &str = "
    INSERT INTO person (farm, person, name) VALUES ($1, $2, NULL)
    ON CONFLICT (farm, person) DO UPDATE SET name = NULL";

pub(super) async fn farms(client: &impl GenericClient) -> Result<Vec<Farm>, StoreError> {
    let sql = "SELECT farm, created_millis FROM farm ORDER BY created_millis, farm";
    let rows = client.query(sql, &[]).await?;
    let read = |row: &Answer| Ok(Farm { id: FarmId(uuid(row, 0)?), created_millis: row.try_get(1)? });
    rows.iter().map(read).collect()
}

pub(super) async fn create_farm(client: &impl GenericClient, farm: Farm) -> Result<bool, StoreError> {
    let sql = "INSERT INTO farm (farm, created_millis) VALUES ($1, $2) ON CONFLICT (farm) DO NOTHING";
    Ok(client.execute(sql, &[&farm.id.0.as_bytes().as_slice(), &farm.created_millis]).await? == 1)
}

pub(super) async fn sole_farm(client: &mut Client, candidate: Farm) -> Result<Farm, StoreError> {
    let transaction = client.transaction().await?;
    schema::lock(&transaction).await?;
    if let Some(found) = farm::sole(&farms(&transaction).await?)? {
        return Ok(found);
    }
    create_farm(&transaction, candidate).await?;
    transaction.commit().await?;
    Ok(candidate)
}

pub(super) async fn put_draft(client: &mut Client, farm: FarmId, draft: &Text) -> Result<bool, StoreError> {
    let transaction = client.transaction().await?;
    lock_farm(&transaction, farm).await?;
    let (farm, person) = (farm.0.as_bytes().as_slice(), draft.person.0.as_bytes().as_slice());
    let changed = transaction
        .execute(PUT_DRAFT, &[&farm, &draft.key, &draft.body, &person, &draft.updated_millis])
        .await?;
    transaction.commit().await?;
    Ok(changed == 1)
}

pub(super) async fn draft(client: &Client, farm: FarmId, key: &str) -> Result<Option<Draft>, StoreError> {
    let row = client.query_opt(DRAFT, &[&farm.0.as_bytes().as_slice(), &key]).await?;
    row.as_ref().map(read_draft).transpose()
}

pub(super) async fn drafts(client: &Client, farm: FarmId) -> Result<Vec<Draft>, StoreError> {
    let rows = client.query(DRAFTS, &[&farm.0.as_bytes().as_slice()]).await?;
    rows.iter().map(read_draft).collect()
}

pub(super) async fn delete_draft(client: &Client, farm: FarmId, key: &str) -> Result<bool, StoreError> {
    let sql = "DELETE FROM draft WHERE farm = $1 AND key = $2";
    Ok(client.execute(sql, &[&farm.0.as_bytes().as_slice(), &key]).await? == 1)
}

pub(super) async fn put_person(
    client: &mut Client,
    farm: FarmId,
    person: PersonId,
    name: &str,
) -> Result<(), StoreError> {
    let transaction = client.transaction().await?;
    lock_farm(&transaction, farm).await?;
    let (farm, key) = (farm.0.as_bytes().as_slice(), person.0.as_bytes().as_slice());
    if transaction.execute(PUT_PERSON, &[&farm, &key, &name]).await? == 0 {
        return Err(StoreError::Blanked { person });
    }
    Ok(transaction.commit().await?)
}

pub(super) async fn person_names(
    client: &Client,
    farm: FarmId,
) -> Result<BTreeMap<PersonId, String>, StoreError> {
    let sql = "SELECT person, name FROM person WHERE farm = $1 AND name IS NOT NULL";
    let rows = client.query(sql, &[&farm.0.as_bytes().as_slice()]).await?;
    rows.iter().map(|row| Ok((PersonId(uuid(row, 0)?), row.try_get(1)?))).collect()
}

pub(super) async fn blank_person(
    client: &mut Client,
    farm: FarmId,
    person: PersonId,
) -> Result<(), StoreError> {
    let transaction = client.transaction().await?;
    lock_farm(&transaction, farm).await?;
    let (farm, person) = (farm.0.as_bytes().as_slice(), person.0.as_bytes().as_slice());
    transaction.execute(BLANK_PERSON, &[&farm, &person]).await?;
    Ok(transaction.commit().await?)
}

fn read_draft(row: &Answer) -> Result<Draft, StoreError> {
    let text = Text {
        key: row.try_get(0)?,
        body: row.try_get(1)?,
        person: PersonId(uuid(row, 2)?),
        updated_millis: row.try_get(3)?,
    };
    text.read()
}
