//! In how many of the generated books a thing occurs: a book that holds nothing odd proves nothing.

use std::collections::BTreeMap;
use std::ops::Range;

/// In how many books each thing occurs.
#[derive(Default)]
pub(super) struct Shares(BTreeMap<&'static str, u64>);

impl Shares {
    /// Counts things of the books of some seeds, half of them on a thread of its own.
    pub(super) fn of(books: u64, look: impl Fn(Range<u64>, &mut Shares) + Sync) -> Shares {
        let halves = std::thread::scope(|scope| {
            let halves = [0..books / 2, books / 2..books].map(|seeds| {
                scope.spawn(|| {
                    let mut shares = Shares::default();
                    look(seeds, &mut shares);
                    shares
                })
            });
            halves.map(|half| half.join().expect("a book does not hold"))
        });
        let mut shares = Shares::default();
        for (thing, books) in halves.into_iter().flat_map(|half| half.0) {
            shares.add(thing, books);
        }
        shares
    }

    /// One more book, if the thing occurs in it.
    pub(super) fn count(&mut self, thing: &'static str, occurs: bool) {
        self.add(thing, u64::from(occurs));
    }

    /// So many more.
    pub(super) fn add(&mut self, thing: &'static str, many: u64) {
        *self.0.entry(thing).or_default() += many;
    }

    /// Prints them, and asks for the least share of each thing, in percent of the books.
    pub(super) fn ask_for(&self, least: &[(&str, u64)], books: u64) {
        for (thing, found) in &self.0 {
            println!("{:5.1} per 100 books: {thing}", *found as f64 * 100.0 / books as f64);
        }
        for (thing, least) in least {
            let found = self.0.get(thing).copied().unwrap_or_default();
            assert!(found * 100 >= least * books, "{thing} occurs in {found} of {books} books, too few");
        }
    }
}
