//! The books of many farms in one PostgreSQL database, shared by any number of processes that hold nothing themselves.

mod append;
mod read;
mod row;
mod schema;
mod side;

use std::collections::BTreeMap;
use std::path::Path;
use std::time::Duration;

use async_trait::async_trait;
use book::{Access, DeviceId, PersonId, SeriesEnd, StoredEntry};
use deadpool_postgres::{
    Client, Hook, HookError, Manager, ManagerConfig, Pool, PoolError, RecyclingMethod, Runtime, Timeouts,
};
use serde_json::Value;
use tokio_postgres::{Config, NoTls};

use crate::check::Check;
use crate::draft::{self, Draft, Text};
use crate::error::StoreError;
use crate::farm::Farm;
use crate::frame::FrameLimit;
use crate::report::{AppendReport, Reach};
use crate::{Store, person, rules};

/// How long to wait for a connection, or for a sign of life on one.
const WAIT: Duration = Duration::from_secs(10);

/// Acknowledged means on disk, also where the server was set up to answer sooner. A stricter setting stays.
const WAIT_FOR_DISK: &str = "
    SELECT set_config('synchronous_commit', 'on', false) WHERE current_setting('synchronous_commit') = 'off'";

/// The books of many farms in a PostgreSQL database.
///
/// Without TLS: the database is reached over a Unix socket or over a network that is private.
pub struct PostgresStore {
    pool: Pool,
}

impl PostgresStore {
    /// Connects to the database named by a URL (`postgresql://…`) or by `key=value` pairs, with at most so many
    /// connections, and brings it to the newest schema.
    ///
    /// # Errors
    /// `Postgres` where the address cannot be read; `Unreachable`, `NewerSchema`.
    pub async fn connect(address: &str, connections: usize) -> Result<Self, StoreError> {
        let mut config: Config = address.parse()?;
        if config.get_connect_timeout().is_none() {
            config.connect_timeout(WAIT);
        }
        if config.get_tcp_user_timeout().is_none() {
            config.tcp_user_timeout(WAIT);
        }
        let store = Self { pool: pool(config, connections)? };
        schema::migrate(&mut store.client().await?).await?;
        Ok(store)
    }

    async fn client(&self) -> Result<Client, StoreError> {
        self.pool.get().await.map_err(unreachable)
    }
}

fn pool(config: Config, connections: usize) -> Result<Pool, StoreError> {
    // A connection that died with the server is noticed before it is used, for one more round trip.
    let recycling = ManagerConfig { recycling_method: RecyclingMethod::Verified };
    Pool::builder(Manager::from_config(config, NoTls, recycling))
        .max_size(connections.max(1))
        .runtime(Runtime::Tokio1)
        .timeouts(Timeouts { wait: Some(WAIT), create: Some(WAIT), recycle: Some(WAIT) })
        .post_create(Hook::async_fn(|client, _| {
            Box::pin(async move { client.batch_execute(WAIT_FOR_DISK).await.map_err(HookError::Backend) })
        }))
        .build()
        .map_err(|error| StoreError::Unreachable { detail: error.to_string() })
}

fn unreachable(error: PoolError) -> StoreError {
    match error {
        PoolError::Backend(source) if source.code().is_some() => source.into(),
        other => StoreError::Unreachable { detail: other.to_string() },
    }
}

#[async_trait]
impl Store for PostgresStore {
    async fn append(&self, access: &Access, entries: Vec<StoredEntry>) -> Result<AppendReport, StoreError> {
        let rows = rules::admit(access, entries)?;
        let mut client = self.client().await?;
        let transaction = client.transaction().await?;
        let report = append::append(&transaction, access.farm(), &rows).await?;
        transaction.commit().await?;
        Ok(report)
    }

    async fn all(&self, access: &Access) -> Result<Vec<StoredEntry>, StoreError> {
        read::all(&self.client().await?, access.farm()).await
    }

    async fn since(
        &self,
        access: &Access,
        seen: &BTreeMap<DeviceId, u64>,
        limit: FrameLimit,
    ) -> Result<Vec<StoredEntry>, StoreError> {
        read::since(&self.client().await?, access.farm(), seen, limit).await
    }

    async fn device_tip(&self, access: &Access) -> Result<Option<SeriesEnd>, StoreError> {
        read::device_tip(&self.client().await?, access).await
    }

    async fn reach(&self, access: &Access) -> Result<Reach, StoreError> {
        read::reach(&self.client().await?, access.farm()).await
    }

    async fn check(&self, access: &Access) -> Result<Check, StoreError> {
        read::check(&self.client().await?, access.farm()).await
    }

    async fn put_draft(
        &self,
        access: &Access,
        key: &str,
        body: &Value,
        updated_millis: i64,
    ) -> Result<bool, StoreError> {
        rules::may_write(access)?;
        let draft = Text::checked(key, body, access.person(), updated_millis)?;
        side::put_draft(&mut self.client().await?, access.farm(), &draft).await
    }

    async fn draft(&self, access: &Access, key: &str) -> Result<Option<Draft>, StoreError> {
        let key = draft::checked_key(key)?;
        side::draft(&self.client().await?, access.farm(), &key).await
    }

    async fn drafts(&self, access: &Access) -> Result<Vec<Draft>, StoreError> {
        side::drafts(&self.client().await?, access.farm()).await
    }

    async fn delete_draft(&self, access: &Access, key: &str) -> Result<bool, StoreError> {
        rules::may_write(access)?;
        let key = draft::checked_key(key)?;
        side::delete_draft(&self.client().await?, access.farm(), &key).await
    }

    async fn put_person(&self, access: &Access, person: PersonId, name: &str) -> Result<(), StoreError> {
        person::may_name(access, person)?;
        let name = person::checked(name)?;
        side::put_person(&mut self.client().await?, access.farm(), person, name).await
    }

    async fn person_names(&self, access: &Access) -> Result<BTreeMap<PersonId, String>, StoreError> {
        side::person_names(&self.client().await?, access.farm()).await
    }

    async fn blank_person(&self, access: &Access, person: PersonId) -> Result<(), StoreError> {
        person::may_name(access, person)?;
        side::blank_person(&mut self.client().await?, access.farm(), person).await
    }

    async fn farms(&self) -> Result<Vec<Farm>, StoreError> {
        side::farms(&self.client().await?).await
    }

    async fn create_farm(&self, farm: Farm) -> Result<bool, StoreError> {
        side::create_farm(&self.client().await?, farm).await
    }

    async fn sole_farm(&self, candidate: Farm) -> Result<Farm, StoreError> {
        side::sole_farm(&mut self.client().await?, candidate).await
    }

    async fn backup(&self, _to: &Path) -> Result<(), StoreError> {
        Err(StoreError::BackupElsewhere { tool: "pg_dump" })
    }
}
