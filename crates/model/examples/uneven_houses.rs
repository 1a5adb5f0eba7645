//! How often the book points at the true cause of unevenness, in houses with one planted cause and in houses with none. Each
//! number is followed by its standard error; the same draws every time.
//!
//! Run: `cargo run --example uneven_houses -p model`.

use model::uneven::{Cause, Evenness};
use model::uneven_houses::{Found, House};

const SEED: u64 = 5;
/// Houses with a planted cause, and houses with none.
const PLANTED: u32 = 200;
const NONE: u32 = 2_000;

fn share(found: &[Found], holds: impl Fn(&Found) -> bool) -> String {
    let (hits, n) = (found.iter().filter(|one| holds(one)).count() as f64, found.len() as f64);
    let share = hits / n;
    format!("{share:.3} ±{:.3}", (share * (1.0 - share) / n).sqrt())
}

fn houses(planted: Option<Cause>, count: u32, from: u32) -> Vec<Found> {
    (from..from + count).filter_map(|number| House { seed: SEED, number, planted }.found()).collect()
}

fn main() {
    println!("planted         ranked first    named first     any other named  not enough weighed");
    let mut all = Vec::new();
    for cause in Cause::ALL {
        let found = houses(Some(cause), PLANTED, 0);
        let is = |one: Option<&model::uneven::Ranked>| one.map(|one| one.cause) == Some(cause);
        println!(
            "{:<15} {}   {}   {}     {}",
            cause.name(),
            share(&found, |one| is(one.ranked.first())),
            share(&found, |one| is(one.named.first())),
            share(&found, |one| one.named.iter().any(|named| named.cause != cause)),
            share(&found, |one| one.evenness == Evenness::NotEnoughWeighed),
        );
        all.extend(found.into_iter().map(|one| (is(one.ranked.first()), is(one.named.first()))));
    }
    let of = |hits: usize| hits as f64 / all.len() as f64;
    println!(
        "all {} houses    ranked first {:.3}, named first {:.3}",
        all.len(),
        of(all.iter().filter(|one| one.0).count()),
        of(all.iter().filter(|one| one.1).count())
    );
    let none = houses(None, NONE, PLANTED);
    println!("none planted    a cause named {}", share(&none, |one| !one.named.is_empty()));
}
