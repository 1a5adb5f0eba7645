//! One suite of behaviour that every engine must show, and each engine's own bad days.
//!
//! The PostgreSQL half needs a server: `BROODWRIGHT_TEST_POSTGRES="host=127.0.0.1 port=54321 user=postgres"`. Without one it
//! fails, unless the variable says `skip`.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test ends where something is not as it should be")]

mod engines;
mod kill;
mod phone;
mod postgres;
mod rig;
mod sqlite;
mod sqlite_copy;
mod suite;
