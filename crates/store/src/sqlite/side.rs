//! The tables beside the entries: farms, drafts, names.

use std::collections::BTreeMap;

use book::{FarmId, PersonId};
use rusqlite::{Connection, OptionalExtension, params};
use uuid::Uuid;

use crate::draft::{Draft, Text};
use crate::error::StoreError;
use crate::{Farm, farm};

const PUT_DRAFT: &str = "
    INSERT INTO draft (farm, key, body, person, updated_millis) VALUES (?1, ?2, ?3, ?4, ?5)
    ON CONFLICT (farm, key) DO UPDATE SET
        body = excluded.body, person = excluded.person, updated_millis = excluded.updated_millis
    WHERE excluded.updated_millis >= draft.updated_millis";

const PUT_PERSON: &str = "
    INSERT INTO person (farm, person, name) VALUES (?1, ?2, ?3)
    ON CONFLICT (farm, person) DO UPDATE SET name = excluded.name WHERE person.name IS NOT NULL";

const BLANK_PERSON: &str = "
    INSERT INTO person (farm, person, name) VALUES (?1, ?2, NULL)
    ON CONFLICT (farm, person) DO UPDATE SET name = NULL";

pub(crate) fn require_farm(db: &Connection, farm: FarmId) -> Result<(), StoreError> {
    let mut statement = db.prepare_cached("SELECT 1 FROM farm WHERE farm = ?1")?;
    if statement.exists(params![farm.0.as_bytes()])? {
        return Ok(());
    }
    Err(StoreError::UnknownFarm { farm })
}

pub(crate) fn farms(db: &Connection) -> Result<Vec<Farm>, StoreError> {
    let mut statement =
        db.prepare_cached("SELECT farm, created_millis FROM farm ORDER BY created_millis, farm")?;
    let rows = statement.query_map([], |row| {
        Ok(Farm { id: FarmId(Uuid::from_bytes(row.get(0)?)), created_millis: row.get(1)? })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

pub(crate) fn create_farm(db: &Connection, farm: Farm) -> Result<bool, StoreError> {
    let mut statement = db.prepare_cached(
        "INSERT INTO farm (farm, created_millis) VALUES (?1, ?2) ON CONFLICT (farm) DO NOTHING",
    )?;
    Ok(statement.execute(params![farm.id.0.as_bytes(), farm.created_millis])? == 1)
}

pub(crate) fn sole_farm(db: &Connection, candidate: Farm) -> Result<Farm, StoreError> {
    if let Some(found) = farm::sole(&farms(db)?)? {
        return Ok(found);
    }
    create_farm(db, candidate)?;
    Ok(candidate)
}

pub(crate) fn put_draft(db: &Connection, farm: FarmId, draft: &Text) -> Result<bool, StoreError> {
    require_farm(db, farm)?;
    let changed = db.prepare_cached(PUT_DRAFT)?.execute(params![
        farm.0.as_bytes(),
        draft.key,
        draft.body,
        draft.person.0.as_bytes(),
        draft.updated_millis,
    ])?;
    Ok(changed == 1)
}

pub(crate) fn draft(db: &Connection, farm: FarmId, key: &str) -> Result<Option<Draft>, StoreError> {
    let mut statement = db
        .prepare_cached("SELECT key, body, person, updated_millis FROM draft WHERE farm = ?1 AND key = ?2")?;
    statement
        .query_row(params![farm.0.as_bytes(), key], draft_columns)
        .optional()?
        .map(Text::read)
        .transpose()
}

pub(crate) fn drafts(db: &Connection, farm: FarmId) -> Result<Vec<Draft>, StoreError> {
    let mut statement = db
        .prepare_cached("SELECT key, body, person, updated_millis FROM draft WHERE farm = ?1 ORDER BY key")?;
    let rows = statement.query_map(params![farm.0.as_bytes()], draft_columns)?;
    rows.map(|row| row?.read()).collect()
}

pub(crate) fn delete_draft(db: &Connection, farm: FarmId, key: &str) -> Result<bool, StoreError> {
    let mut statement = db.prepare_cached("DELETE FROM draft WHERE farm = ?1 AND key = ?2")?;
    Ok(statement.execute(params![farm.0.as_bytes(), key])? == 1)
}

pub(crate) fn put_person(
    db: &Connection,
    farm: FarmId,
    person: PersonId,
    name: &str,
) -> Result<(), StoreError> {
    require_farm(db, farm)?;
    let key = (farm.0.as_bytes(), person.0.as_bytes());
    match db.prepare_cached(PUT_PERSON)?.execute(params![key.0, key.1, name])? {
        0 => Err(StoreError::Blanked { person }),
        _ => Ok(()),
    }
}

pub(crate) fn person_names(db: &Connection, farm: FarmId) -> Result<BTreeMap<PersonId, String>, StoreError> {
    let mut statement =
        db.prepare_cached("SELECT person, name FROM person WHERE farm = ?1 AND name IS NOT NULL")?;
    let rows = statement.query_map(params![farm.0.as_bytes()], |row| {
        Ok((PersonId(Uuid::from_bytes(row.get(0)?)), row.get(1)?))
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

pub(crate) fn blank_person(db: &Connection, farm: FarmId, person: PersonId) -> Result<(), StoreError> {
    require_farm(db, farm)?;
    db.prepare_cached(BLANK_PERSON)?.execute(params![farm.0.as_bytes(), person.0.as_bytes()])?;
    Ok(())
}

fn draft_columns(row: &rusqlite::Row<'_>) -> rusqlite::Result<Text> {
    Ok(Text {
        key: row.get(0)?,
        body: row.get(1)?,
        person: PersonId(Uuid::from_bytes(row.get(2)?)),
        updated_millis: row.get(3)?,
    })
}
