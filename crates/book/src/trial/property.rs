//! The promise of the fold, on generated books: the same entries give the same state, in every order and by every way,
//! and it is the state that the definitions ask for.

use std::ops::Range;

use super::generate::{self, Book, Sort};
use super::luck::Luck;
use super::make::FARM;
use super::oracle::View;
use super::shares::Shares;
use crate::entry::StoredEntry;
use crate::finding::Cause;
use crate::fold::{BookState, Outcome, Rules, ask_and_take_the_last};

/// The many small books of two phones, in `sums`, are beside these.
const BOOKS: u64 = 1_000;

/// Why a book breaks the promise.
type Broken = &'static str;

fn folded(rules: Rules, entries: &[StoredEntry]) -> BookState {
    BookState::folded(FARM, rules, entries.iter().cloned())
}

fn appended(mut state: BookState, entries: &[StoredEntry]) -> BookState {
    for stored in entries {
        state.append(stored.clone());
    }
    state
}

/// Every order, and every way of splitting a book into what was folded and what came later, gives one state.
fn order_does_not_matter(
    whole: &BookState,
    rules: Rules,
    entries: &[StoredEntry],
    luck: &mut Luck,
) -> Result<(), Broken> {
    let empty = || BookState::with_rules(FARM, rules);
    if appended(empty(), entries) != *whole {
        return Err("one by one, as written");
    }
    let mut shuffled = entries.to_vec();
    luck.shuffle(&mut shuffled);
    if folded(rules, &shuffled) != *whole {
        return Err("whole, shuffled");
    }
    if appended(empty(), &shuffled) != *whole {
        return Err("one by one, shuffled");
    }
    let (early, late) = shuffled.split_at(luck.below(shuffled.len() + 1));
    let mut in_two = appended(empty(), early);
    in_two.append_all(late.iter().cloned());
    if in_two != *whole {
        return Err("some one by one, the rest at once");
    }
    luck.shuffle(&mut shuffled);
    let (first, rest) = shuffled.split_at(luck.below(shuffled.len() + 1));
    if appended(folded(rules, first), rest) != *whole {
        return Err("a fold, and the rest one by one");
    }
    Ok(())
}

/// What is exported is read back as the same book.
fn export_comes_back(whole: &BookState, rules: Rules, entries: &[StoredEntry]) -> Result<(), Broken> {
    let lines: Vec<Vec<u8>> = whole.all_records().map(|record| record.stored().bytes.clone()).collect();
    let read: Vec<StoredEntry> = lines.into_iter().map(|line| StoredEntry::decode(line).unwrap()).collect();
    if !read.iter().all(|stored| entries.contains(stored)) {
        return Err("an entry changed on its way out and back");
    }
    let foreign = entries.iter().filter(|stored| stored.entry.farm != FARM).cloned();
    if BookState::folded(FARM, rules, read.into_iter().chain(foreign)) != *whole {
        return Err("the export makes another book");
    }
    Ok(())
}

/// All that is promised of a book; gives its state.
fn promise(rules: Rules, entries: &[StoredEntry], seed: u64) -> Result<BookState, Broken> {
    let whole = folded(rules, entries);
    order_does_not_matter(&whole, rules, entries, &mut Luck::new(!seed))?;
    export_comes_back(&whole, rules, entries)?;
    if View::of(&whole) != View::expected(FARM, rules.kinds, entries) {
        return Err("the oracle disagrees");
    }
    Ok(whole)
}

/// Leaves entries out, one after the other, as long as the promise stays broken.
fn smallest_broken(rules: Rules, mut entries: Vec<StoredEntry>, seed: u64) -> Vec<StoredEntry> {
    let mut at = 0;
    while at < entries.len() {
        let mut fewer = entries.clone();
        fewer.remove(at);
        if promise(rules, &fewer, seed).is_err() {
            entries = fewer;
        } else {
            at += 1;
        }
    }
    entries
}

fn fail(rules: Rules, book: Book, seed: u64, broken: Broken) -> ! {
    let small = smallest_broken(rules, book.entries, seed);
    let lines: Vec<_> = small.iter().map(|stored| String::from_utf8_lossy(&stored.bytes)).collect();
    let (state, expected) = (View::of(&folded(rules, &small)), View::expected(FARM, rules.kinds, &small));
    panic!("book {seed}: {broken}\n{}\nfold: {state:#?}\noracle: {expected:#?}", lines.join("\n"));
}

fn count_outcomes(shares: &mut Shares, state: &BookState) {
    use crate::finding::{Fault, Finding};
    let (conflicts, faults, findings) = (state.conflicts(), state.faults(), state.findings());
    shares.count("=> fork", conflicts.iter().any(|conflict| conflict.cause == Cause::Fork));
    shares.count("=> written apart", conflicts.iter().any(|conflict| conflict.cause == Cause::WrittenApart));
    shares.count("=> no conflict", conflicts.is_empty());
    shares.count("=> ring", faults.iter().any(|fault| matches!(fault, Fault::Cycle { .. })));
    shares.count("=> other farm", faults.iter().any(|fault| matches!(fault, Fault::OtherFarm { .. })));
    let finds = |wanted: fn(&Finding) -> bool| findings.iter().any(wanted);
    shares.count("=> cloned device", finds(|finding| matches!(finding, Finding::ClonedDevice { .. })));
    shares.count("=> missing sequence", finds(|finding| matches!(finding, Finding::MissingSequence { .. })));
    shares.count("=> broken chain", finds(|finding| matches!(finding, Finding::BrokenChain { .. })));
    shares.count("=> unreadable", finds(|finding| matches!(finding, Finding::UnreadableVersion { .. })));
    shares.count("=> unknown house", finds(|finding| matches!(finding, Finding::PlanForUnknownHouse { .. })));
    let missing_parent = state
        .all_records()
        .any(|record| record.entry().supersedes.iter().any(|id| state.records(*id).is_empty()));
    shares.count("=> missing parent", missing_parent);
    let several_threads = state.slots().any(|(slot, current)| {
        state.history(slot).len() > state.thread(current.entry().id).len() && conflicts.is_empty()
    });
    shares.count("=> followed in its slot", several_threads);
}

/// Each feature, with the least share of the books, in percent, in which it has to occur.
const LEAST_SHARES: &[(&str, u64)] = &[
    ("=> broken chain", 5),
    ("=> cloned device", 15),
    ("=> followed in its slot", 8),
    ("=> fork", 25),
    ("=> missing parent", 30),
    ("=> missing sequence", 20),
    ("=> no conflict", 15),
    ("=> other farm", 2),
    ("=> ring", 4),
    ("=> unknown house", 12),
    ("=> unreadable", 25),
    ("=> written apart", 35),
    ("clock jump", 40),
    ("correction", 60),
    ("correction of a correction", 50),
    ("entry twice", 30),
    ("forged entry", 10),
    ("lost entry", 20),
    ("moved to another day", 30),
    ("newer version", 30),
    ("older version", 6),
    ("same id, other bytes", 8),
    ("settled conflict", 12),
    ("two put right in one", 20),
    ("unknown kind", 30),
    ("withdrawal", 45),
];

/// Checks the books of some seeds, and counts in how many of them each feature occurs.
fn keep_the_promise(seeds: Range<u64>, shares: &mut Shares) {
    let rules = generate::rules();
    for seed in seeds {
        let book = generate::book(Sort::Wild, seed);
        let state = match promise(rules, &book.entries, seed) {
            Ok(state) => state,
            Err(broken) => fail(rules, book, seed, broken),
        };
        shares.add("entries", book.entries.len() as u64);
        book.features.iter().for_each(|feature| shares.count(feature, true));
        count_outcomes(shares, &state);
    }
}

#[test]
fn the_same_entries_give_the_same_state() {
    Shares::of(BOOKS, keep_the_promise).ask_for(LEAST_SHARES, BOOKS);
}

/// In how many of some books the promise is broken under the rules.
fn broken_promises(rules: Rules, books: u64) -> u64 {
    let is_broken = |seed: &u64| promise(rules, &generate::book(Sort::Wild, *seed).entries, *seed).is_err();
    (0..books).filter(is_broken).count() as u64
}

#[test]
fn a_fold_that_does_not_ask_is_told_apart() {
    let silent = Rules {
        contest: |claimants| Some(Outcome { asked: false, ..ask_and_take_the_last(claimants)? }),
        ..generate::rules()
    };
    let broken = broken_promises(silent, 200);
    assert!(broken > 40, "only {broken} of 200 books tell");
}

#[test]
fn a_fold_that_lets_the_first_win_is_told_apart() {
    let first = Rules {
        contest: |claimants| {
            let winner = claimants.iter().min_by_key(|record| record.written())?.clone();
            Some(Outcome { winner, ..ask_and_take_the_last(claimants)? })
        },
        ..generate::rules()
    };
    let broken = broken_promises(first, 200);
    assert!(broken > 40, "only {broken} of 200 books tell");
}
