//! The book on disk: what a durable entry costs when many are sent together, and what reading costs.

#![allow(clippy::unwrap_used, reason = "a benchmark that cannot go on has nothing to measure")]

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{Seek, Write};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::{Duration, Instant};

use book::{
    Access, Answer, BatchId, DeviceId, Entry, EntryId, FarmId, HybridClock, PersonId, Role, StoredEntry,
    Subject,
};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use quantity::CivilDay;
use store::sqlite::Opening;
use store::{Farm, FrameLimit, SqliteStore, Store};
use tokio::runtime::{Builder, Runtime};
use uuid::Uuid;

const FARM: FarmId = FarmId(Uuid::from_u128(1));

/// Entries sent together.
const TOGETHER: u64 = 1_000;

fn access() -> Access {
    Access::granted(FARM, PersonId(Uuid::from_u128(2)), DeviceId(Uuid::from_u128(3)), Role::Owner)
}

/// An entry of the size that a day's deaths have, some 500 bytes; 50 of them make a batch.
fn entry(sequence: u64) -> StoredEntry {
    let answer = |value: u32| Answer { typed: Some(value.to_string()), value: value.into() };
    let fields = ["dead_count", "culled_count", "weak_legs_count", "unknown_count"];
    let entry = Entry {
        id: EntryId(Uuid::from_u128(
            0x0190_0000_0000_7000_8000_0000_0000_0000 + (u128::from(sequence) << 80),
        )),
        farm: FARM,
        subject: Subject::Batch(BatchId(Uuid::from_u128(u128::from(sequence / 50)))),
        day: CivilDay::from_number(20_000 + (sequence / 10 % 2_000) as i32),
        device: access().device(),
        sequence,
        previous: None,
        clock: HybridClock { millis: 1_800_000_000_000 + sequence as i64, counter: 0 },
        person: access().person(),
        kind: "deaths".to_owned(),
        body_version: 1,
        body: fields.iter().map(|field| ((*field).to_owned(), answer(3))).collect(),
        supersedes: Vec::new(),
        withdrawn: false,
        reason: None,
        seen: Default::default(),
    };
    entry.encode().unwrap()
}

fn series(first: u64, count: u64) -> Vec<StoredEntry> {
    (first..first + count).map(entry).collect()
}

/// A book in a folder under the target folder, so that the disk is the one that is built on, and no memory disk.
struct Bench {
    runtime: Runtime,
    store: Arc<SqliteStore>,
    folder: PathBuf,
    next: u64,
}

impl Bench {
    fn new(name: &str) -> Self {
        let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        let runtime = Builder::new_multi_thread().worker_threads(2).build().unwrap();
        let store = Arc::new(SqliteStore::open(&folder.join("farm.book"), Opening::default()).unwrap());
        runtime.block_on(store.create_farm(Farm { id: FARM, created_millis: 0 })).unwrap();
        Self { runtime, store, folder, next: 1 }
    }

    /// Sends a thousand new entries in as many calls as there are chunks of the size, all at once, and waits for the
    /// last answer.
    fn send(&mut self, size: usize) -> Duration {
        let calls: Vec<_> = series(self.next, TOGETHER).chunks(size).map(<[_]>::to_vec).collect();
        self.next += TOGETHER;
        let start = Instant::now();
        self.runtime.block_on(async {
            let sent: Vec<_> = calls
                .into_iter()
                .map(|call| {
                    let store = Arc::clone(&self.store);
                    tokio::spawn(async move { store.append(&access(), call).await.unwrap().added })
                })
                .collect();
            for call in sent {
                call.await.unwrap();
            }
        });
        start.elapsed()
    }
}

impl Drop for Bench {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.folder);
    }
}

/// What the disk itself takes, to read the other figures by: a page written over, as in a log that is used again.
fn disk(c: &mut Criterion) {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("fsync");
    let mut file = File::create(&path).unwrap();
    file.write_all(&[7; 4096]).unwrap();
    file.sync_all().unwrap();
    c.bench_function("store/fsync_4096_bytes", |b| {
        b.iter(|| {
            file.rewind().unwrap();
            file.write_all(&[7; 4096]).unwrap();
            file.sync_data().unwrap();
        });
    });
    fs::remove_file(path).unwrap();
}

fn append(c: &mut Criterion) {
    let mut group = c.benchmark_group("store/append_1000_together");
    group.throughput(Throughput::Elements(TOGETHER)).sample_size(20);
    for size in [1, 20] {
        let mut bench = Bench::new("append");
        group.bench_function(format!("calls_of_{size}"), |b| {
            b.iter_custom(|rounds| (0..rounds).map(|_| bench.send(size)).sum());
        });
    }
    group.finish();
    let mut bench = Bench::new("alone");
    c.bench_function("store/append_1_alone", |b| {
        b.iter_custom(|rounds| {
            let entries = series(bench.next, rounds);
            bench.next += rounds;
            let start = Instant::now();
            bench.runtime.block_on(async {
                for entry in entries {
                    bench.store.append(&access(), vec![entry]).await.unwrap();
                }
            });
            start.elapsed()
        });
    });
}

/// A book of 500 batches: what a page asks first, what it reads, and what opening costs.
fn read(c: &mut Criterion) {
    let mut bench = Bench::new("read");
    for _ in 0..25 {
        bench.send(1_000);
    }
    let (runtime, store) = (&bench.runtime, &bench.store);
    c.bench_function("store/reach_of_25000", |b| {
        b.iter(|| runtime.block_on(store.reach(&access())).unwrap());
    });
    let seen = BTreeMap::from([(access().device(), 24_950)]);
    let limit = FrameLimit { entries: 500, bytes: 1_000_000 };
    c.bench_function("store/since_50_of_25000", |b| {
        b.iter(|| assert_eq!(runtime.block_on(store.since(&access(), &seen, limit)).unwrap().len(), 50));
    });
    let mut group = c.benchmark_group("store");
    group.sample_size(20).throughput(Throughput::Elements(25_000));
    group.bench_function("all_of_25000", |b| {
        b.iter(|| assert_eq!(runtime.block_on(store.all(&access())).unwrap().len(), 25_000));
    });
    group.finish();
    c.bench_function("store/open_book_of_25000", |b| {
        b.iter(|| SqliteStore::open(&bench.folder.join("farm.book"), Opening::default()).unwrap());
    });
}

criterion_group!(benches, disk, append, read);
criterion_main!(benches);
