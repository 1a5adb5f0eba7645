//! What the watch tells the grower of the invented farm: the three things that go wrong, and nothing else.

use std::ops::RangeInclusive;

use advice::uneven::{Cause, Uneven};
use advice::walk::Walk;
use advice::watch::{Level, Told, Watch};

use super::{batches, running, state, today};

fn watch_on_day(age: i32) -> Watch {
    let placed = Walk::read(state(), running(), today()).diary.placement.unwrap();
    Watch::of(&Walk::read(state(), running(), placed.plus_days(age))).unwrap()
}

/// The feed that was due on day 9 came late: the pans were nearly empty on day 12, and birds that do not eat do not drink.
const LATE_FEED: RangeInclusive<i32> = 12..=14;
/// The drinker line failed on day 16.
const DRY_LINE: RangeInclusive<i32> = 16..=16;
/// Four hot days from day 19 on.
const HOT_SPELL: RangeInclusive<i32> = 19..=22;

#[test]
fn the_running_batch_is_told_of_late_feed_dry_drinkers_and_heat_and_of_nothing_else() {
    let told = watch_on_day(24).told();
    let of = |days: &RangeInclusive<i32>| {
        told.iter().filter(|told| days.contains(&told.day)).copied().collect::<Vec<Told>>()
    };
    let (feed, water, heat) = (of(&LATE_FEED), of(&DRY_LINE), of(&HOT_SPELL));
    assert_eq!(feed.len() + water.len() + heat.len(), told.len(), "{told:?}");
    let says =
        |told: &[Told], name: &str, level| told.iter().any(|told| told.name == name && told.level == level);
    assert!(says(&feed, "water-or-feed-fell-quarter", Level::Act), "{feed:?}");
    assert!(says(&feed, "feed", Level::Look), "{feed:?}");
    assert!(says(&water, "water-or-feed-fell-quarter", Level::Act), "{water:?}");
    assert!(says(&water, "water-fell-fifth-same-heat", Level::Look), "{water:?}");
    assert!(says(&heat, "heat-sudden", Level::Look) && says(&heat, "warm", Level::Look), "{heat:?}");
    let watched = ["deaths", "losses", "weight", "gain", "unevenness", "litter", "humidity", "cold", "swing"];
    assert!(told.iter().all(|told| !watched.contains(&told.name)), "{told:?}");
}

#[test]
fn it_is_told_on_the_day_and_is_over_today() {
    let now = |age: i32| {
        let watch = watch_on_day(age);
        let rules = watch.rules.iter().filter(|rule| rule.holds).map(|rule| rule.name).collect::<Vec<_>>();
        (watch.state(), rules)
    };
    let (state, rules) = now(16);
    assert_eq!(state, Some(Level::Act));
    assert!(rules.contains(&"water-or-feed-fell-quarter"), "{rules:?}");
    assert_eq!(now(10).0, Some(Level::Steady));
    assert_eq!(now(24).0, Some(Level::Steady));
}

/// A day's advice does not change when later days are written.
#[test]
fn an_earlier_watch_says_what_the_later_one_says_of_its_days() {
    let (early, late) = (watch_on_day(16), watch_on_day(24));
    let until: Vec<Told> = late.told().into_iter().filter(|told| told.day <= 16).collect();
    assert_eq!(early.told(), until);
    let deaths = |watch: &Watch| watch.signal("deaths").map(|signal| (signal.look, signal.act)).unwrap();
    assert_eq!(deaths(&early), deaths(&late), "lines stay where they are while a batch runs");
}

/// The sick spell of the first batch, from its day 24 on, is seen by its deaths within four days.
#[test]
fn the_sick_spell_of_an_earlier_batch_is_acted_on() {
    let batch = batches()[0];
    let placed = Walk::read(state(), batch, today()).diary.placement.unwrap();
    let watch = Watch::of(&Walk::read(state(), batch, placed.plus_days(40))).unwrap();
    let told = watch.told();
    let day =
        |level| told.iter().find(|told| told.name == "deaths" && told.level == level).map(|told| told.day);
    assert!(day(Level::Look).is_some_and(|day| (24..=27).contains(&day)), "{told:?}");
    assert!(day(Level::Act).is_some_and(|day| (24..=28).contains(&day)), "{told:?}");
}

#[test]
fn a_day_that_was_not_written_is_no_day_without_deaths() {
    let mut walk = Walk::read(state(), running(), today());
    walk.diary.notes.retain(|note| note.kind != "deaths");
    walk.plan.outcome = advice::outcome::Outcome::default();
    let watch = Watch::of(&walk).unwrap();
    assert_eq!(watch.signal("deaths").unwrap().state, None);
    assert!(watch.signal("deaths").unwrap().days.is_empty());
    assert_eq!(watch.state(), None, "nothing is known, which is not steady");
}

/// Nothing is planted in any batch of the farm; but its plans lack trays and founts for chicks, and that stands in the book.
#[test]
fn only_a_lack_that_stands_in_the_book_is_named_as_a_cause() {
    let mut evenly = 0;
    for batch in batches() {
        let placed = Walk::read(state(), batch, today()).diary.placement.unwrap();
        for age in [9, 16, 24] {
            let walk = Walk::read(state(), batch, placed.plus_days(age));
            let uneven = Uneven::of(&walk).unwrap();
            let lacks = |short: [&str; 2]| {
                short.iter().any(|id| walk.plan.outcome.number(id).is_some_and(|short| short > 0.0))
            };
            let is_known = |cause| match cause {
                Cause::FeederSpace => lacks(["space.chick_feeders_short", "space.feeders_short"]),
                Cause::DrinkerSpace => lacks(["space.chick_drinkers_short", "space.drinkers_short"]),
                _ => false,
            };
            assert!(uneven.named.iter().all(|one| is_known(one.cause)), "{age} {uneven:?}");
            evenly += u32::from(uneven.named.is_empty());
        }
    }
    assert!(evenly >= 8, "{evenly} of 15 weighings name no cause");
}
