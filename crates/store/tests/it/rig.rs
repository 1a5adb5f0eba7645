//! A fresh store of each engine for each test.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;

use store::sqlite::Opening;
use store::{Farm, PostgresStore, SqliteStore, Store};
use tokio_postgres::NoTls;

use crate::phone::{FARM, OTHER_FARM};

/// A store of the suite.
pub type Any = Arc<dyn Store>;

/// Makes the two farms of the tests.
pub async fn with_farms(store: impl Store + 'static) -> Any {
    store.create_farm(Farm { id: FARM, created_millis: 1 }).await.unwrap();
    store.create_farm(Farm { id: OTHER_FARM, created_millis: 2 }).await.unwrap();
    Arc::new(store)
}

/// A folder of a test's own, gone when the test is well.
pub struct Folder(PathBuf);

impl Folder {
    pub fn new(test: &str) -> Self {
        let path = std::env::temp_dir().join(format!("broodwright-store-{}-{test}", std::process::id()));
        let _ = fs::remove_dir_all(&path);
        fs::create_dir_all(&path).unwrap();
        Self(path)
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }

    pub fn book(&self) -> PathBuf {
        self.path("farm.book")
    }

    /// The names of all files in it, in order.
    pub fn names(&self) -> Vec<String> {
        let name = |file: fs::DirEntry| file.file_name().into_string().unwrap();
        let mut names: Vec<_> = fs::read_dir(&self.0).unwrap().map(|file| name(file.unwrap())).collect();
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        if !thread::panicking() {
            let _ = fs::remove_dir_all(&self.0);
        }
    }
}

/// Opens a SQLite book as usual.
pub fn open(path: &Path) -> SqliteStore {
    SqliteStore::open(path, Opening::default()).unwrap()
}

/// A database of a test's own.
pub struct Database {
    server: String,
    name: String,
}

impl Database {
    /// Makes an empty one, or `None` where PostgreSQL is to be left out.
    pub async fn new(test: &str) -> Option<Self> {
        let server = std::env::var("BROODWRIGHT_TEST_POSTGRES").unwrap_or_else(|_| {
            panic!(
                "BROODWRIGHT_TEST_POSTGRES is not set. Give it a server, such as \"host=127.0.0.1 port=54321 \
                 user=postgres\", or `skip` to leave PostgreSQL untested."
            )
        });
        if server == "skip" {
            return None;
        }
        let database = Self { server, name: format!("store_{}_{test}", std::process::id()) };
        database.drop_if_there().await;
        database.on_server(&format!("CREATE DATABASE {}", database.name)).await;
        Some(database)
    }

    pub fn address(&self) -> String {
        format!("{} dbname={}", self.server, self.name)
    }

    pub async fn store(&self) -> PostgresStore {
        PostgresStore::connect(&self.address(), 8).await.unwrap()
    }

    /// Does something to the database behind the store's back.
    pub async fn meddle(&self, sql: &str) {
        run(&self.address(), sql).await;
    }

    /// The one text a query answers.
    pub async fn ask(&self, sql: &str) -> String {
        let (client, connection) = tokio_postgres::connect(&self.address(), NoTls).await.unwrap();
        let connection = tokio::spawn(connection);
        let answer = client.query_one(sql, &[]).await.unwrap().get(0);
        drop(client);
        connection.await.unwrap().unwrap();
        answer
    }

    /// Ends every connection to the database, as a server that is restarted does.
    pub async fn cut_connections(&self) {
        self.on_server(&format!(
            "SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity WHERE datname = '{}'",
            self.name
        ))
        .await;
    }

    pub async fn drop_if_there(&self) {
        self.on_server(&format!("DROP DATABASE IF EXISTS {} WITH (FORCE)", self.name)).await;
    }

    async fn on_server(&self, sql: &str) {
        run(&self.server, sql).await;
    }
}

async fn run(address: &str, sql: &str) {
    let (client, connection) = tokio_postgres::connect(address, NoTls).await.unwrap();
    let connection = tokio::spawn(connection);
    client.batch_execute(sql).await.unwrap();
    drop(client);
    connection.await.unwrap().unwrap();
}
