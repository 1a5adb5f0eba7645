//! Fixed rules of authorities and of the trade: when deaths, water or feed of a batch mean "call the veterinarian", and which
//! heat is dangerous whatever a house is used to.
//!
//! They know nothing of chance and of clumping. They stand beside the limits of [`crate::counts`] and [`crate::cusum`], and
//! are obeyed even where those stay still.

/// A day of a batch, as far as it was written down. What was not written is none, never 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BatchDay {
    /// Day of age; the day of arrival is 0.
    pub age_d: u32,
    /// Birds alive in the morning.
    pub birds: u32,
    /// Birds found dead.
    pub dead: Option<u32>,
    /// Of these, birds that died suddenly, without a sign before.
    pub sudden: Option<u32>,
    /// Deaths that are normal for this flock and age.
    pub normal_dead: Option<f64>,
    /// Water drunk, L.
    pub water_l: Option<f64>,
    /// Feed eaten, kg.
    pub feed_kg: Option<f64>,
    /// Hottest air of the day, °C.
    pub hottest_c: Option<f64>,
}

/// How much a rule asks.
///
/// What the text of a rule asks is lowered where the example `deaths_watch` shows that steady days of a flock of a few
/// hundred to a few thousand birds break it by chance (our judgement).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Call {
    /// Say it beside the day. By itself it asks nothing: most steady batches break it.
    Note,
    /// Look closer today.
    Look,
    /// Call the veterinarian or the authority.
    Act,
}

/// A fixed rule.
pub struct Trigger {
    /// Its stable name.
    pub name: &'static str,
    /// The bibliography key.
    pub source: &'static str,
    /// What it asks.
    pub call: Call,
    /// Whether it holds on the last of some days without a gap.
    pub holds: fn(&[BatchDay]) -> bool,
}

/// All fixed rules. The first seven days have targets of their own in place of the rules on deaths by day and week.
pub static TRIGGERS: &[Trigger] = &[
    Trigger {
        name: "deaths-above-0-17-percent",
        source: "gonzales-hpai",
        call: Call::Note,
        holds: |days| today(days).is_some_and(|day| ordinary(day, |share| share > 0.0017)),
    },
    Trigger {
        name: "deaths-half-percent-two-days",
        source: "elbers-2007",
        call: Call::Act,
        holds: |days| {
            last::<2>(days).is_some_and(|two| two.iter().all(|day| ordinary(day, |share| share >= 0.005)))
        },
    },
    Trigger {
        name: "deaths-three-percent-week",
        source: "netherlands-2003",
        call: Call::Act,
        holds: three_percent_in_a_week,
    },
    Trigger { name: "deaths-tripled", source: "france-2023", call: Call::Note, holds: tripled },
    Trigger {
        name: "deaths-above-one-percent",
        source: "common-practice",
        call: Call::Act,
        holds: |days| today(days).is_some_and(|day| ordinary(day, |share| share > 0.01)),
    },
    Trigger {
        name: "deaths-doubled-two-days",
        source: "common-practice",
        call: Call::Look,
        holds: doubled_two_days,
    },
    Trigger { name: "deaths-creeping", source: "eu-2007-43", call: Call::Note, holds: creeping },
    Trigger {
        name: "deaths-sudden",
        source: "common-practice",
        call: Call::Act,
        holds: |days| today(days).is_some_and(|day| is_small(day) && many_sudden(day)),
    },
    Trigger {
        name: "first-week-two-percent",
        source: "first-week-loss",
        call: Call::Look,
        holds: |days| first_week_loss(days).is_some_and(|share| (0.02..0.03).contains(&share)),
    },
    Trigger {
        name: "first-week-three-percent",
        source: "first-week-loss",
        call: Call::Act,
        holds: |days| first_week_loss(days).is_some_and(|share| share >= 0.03),
    },
    Trigger {
        name: "water-or-feed-fell-quarter",
        source: "france-2023",
        call: Call::Act,
        holds: |days| {
            last::<2>(days).is_some_and(|two| water_fall(two) > Some(0.25) || feed_fall(two) > Some(0.25))
        },
    },
    Trigger {
        name: "water-and-feed-fell-fifth",
        source: "catalonia-notice",
        call: Call::Act,
        holds: |days| {
            last::<2>(days).is_some_and(|two| water_fall(two) > Some(0.2) && feed_fall(two) > Some(0.2))
        },
    },
    Trigger {
        name: "water-fell-fifth-same-heat",
        source: "common-practice",
        call: Call::Look,
        holds: |days| last::<2>(days).is_some_and(|two| water_fall(two) >= Some(0.2) && same_heat(two)),
    },
    Trigger { name: "heat-sudden", source: "common-practice", call: Call::Look, holds: suddenly_hot },
    Trigger {
        name: "heat-near-body",
        source: "common-practice",
        call: Call::Act,
        holds: |days| {
            today(days).is_some_and(|day| day.age_d >= FEATHERED_D && day.hottest_c >= Some(NEAR_BODY_C))
        },
    },
];

/// The rules that hold on the last of some days.
///
/// - `days`: whole days in order without a gap, from the arrival where all that is known goes in
pub fn holding(days: &[BatchDay]) -> impl Iterator<Item = &'static Trigger> {
    TRIGGERS.iter().filter(|trigger| (trigger.holds)(days))
}

/// Days of the first week, 0 to 6, in which first-week targets hold instead of the rules on deaths.
pub const FIRST_WEEK_D: u32 = 7;
/// With fewer birds one dead bird is above 0.17 %.
pub const SMALL_FLOCK_BIRDS: u32 = 590;
/// The rule on tripled deaths is for flocks above so many.
const TRIPLED_ABOVE_BIRDS: u32 = 250;
/// Hottest air of two days that still is the same heat, K (our judgement).
const SAME_HEAT_K: f64 = 2.0;

/// From this day of age on birds are hot in air that chicks need (common practice).
const FEATHERED_D: u32 = 14;
/// Air of which wind no longer takes heat from a bird, °C (common practice).
const NEAR_BODY_C: f64 = 38.0;
/// Air from which on birds pant, °C (common practice).
const PANTING_C: f64 = 32.0;
/// So much hotter than the hottest air of the days before: birds that are not used to it die of it first, K (our judgement).
const SUDDEN_K: f64 = 3.0;
/// The days before that tell what birds are used to.
const USED_TO_D: usize = 5;

fn today(days: &[BatchDay]) -> Option<&BatchDay> {
    days.last()
}

/// The last days, where there are so many.
fn last<const COUNT: usize>(days: &[BatchDay]) -> Option<&[BatchDay; COUNT]> {
    days.last_chunk()
}

/// Dead over birds alive in the morning.
fn share(day: &BatchDay) -> Option<f64> {
    crate::budget::per(f64::from(day.dead?), f64::from(day.birds))
}

/// Whether a day's share of deaths is over a limit, after the first week and past the guard of small flocks.
fn ordinary(day: &BatchDay, over: impl Fn(f64) -> bool) -> bool {
    counts(day) && share(day).is_some_and(over)
}

/// Whether a day's deaths count for the rules: not in the first week, and in a small flock only from 2 dead and above
/// 0.5 %, or 3 that died suddenly. One dead bird of 150 is no epidemic.
fn counts(day: &BatchDay) -> bool {
    let enough = |day: &BatchDay| day.dead >= Some(2) && share(day) > Some(0.005);
    day.age_d >= FIRST_WEEK_D && (!is_small(day) || enough(day) || many_sudden(day))
}

fn is_small(day: &BatchDay) -> bool {
    day.birds < SMALL_FLOCK_BIRDS
}

fn many_sudden(day: &BatchDay) -> bool {
    day.sudden >= Some(3)
}

/// More than 3 % of the birds of a week's first morning, within seven days that were all written down.
fn three_percent_in_a_week(days: &[BatchDay]) -> bool {
    last::<7>(days).is_some_and(|week| {
        let over = loss_of(week).is_some_and(|loss| loss > 0.03);
        week[0].age_d >= FIRST_WEEK_D && counts_over(week) && over
    })
}

/// The guard of small flocks over several days: at least 2 dead.
fn counts_over(days: &[BatchDay]) -> bool {
    days.iter().filter_map(|day| day.dead).sum::<u32>() >= 2
}

/// Deaths of some days over the birds of their first morning; none where a day was not written down.
fn loss_of(days: &[BatchDay]) -> Option<f64> {
    let dead = days.iter().map(|day| day.dead).sum::<Option<u32>>()?;
    crate::budget::per(f64::from(dead), f64::from(days.first()?.birds))
}

/// Three times the deaths that are normal, in a flock above 250 birds.
///
/// The text knows no least number and no clumping: of steady batches of 1000 birds that lose one a day nearly all triple it
/// on some day. [`crate::cusum`] is the way to find deaths that truly tripled.
fn tripled(days: &[BatchDay]) -> bool {
    today(days).is_some_and(|day| {
        let normal = day.normal_dead.filter(|normal| *normal > 0.0);
        let over = normal.zip(day.dead).is_some_and(|(normal, dead)| f64::from(dead) >= 3.0 * normal);
        day.birds > TRIPLED_ABOVE_BIRDS && over && counts(day)
    })
}

/// Deaths twice those of the day before, two days running, from at least one: 1, 2, 4 is enough, which steady batches of
/// 2000 birds have once in three.
fn doubled_two_days(days: &[BatchDay]) -> bool {
    let doubled = |before: &BatchDay, after: &BatchDay| {
        before.dead.zip(after.dead).is_some_and(|(before, after)| before > 0 && after >= 2 * before)
    };
    last::<3>(days).is_some_and(|[first, second, third]| {
        doubled(first, second) && doubled(second, third) && first.age_d >= FIRST_WEEK_D && counts(third)
    })
}

/// All deaths since the arrival above 1 % + 0.06 % for each day of age: no alarm of a day but where the batch stands. A flock
/// that loses one in a thousand a day is above from its fifth week on.
fn creeping(days: &[BatchDay]) -> bool {
    let whole = days.first().is_some_and(|day| day.age_d == 0);
    let over = |day: &BatchDay| {
        counts_over(days) && loss_of(days).is_some_and(|loss| loss > creeping_limit(f64::from(day.age_d)))
    };
    today(days).is_some_and(|day| whole && day.age_d >= FIRST_WEEK_D && over(day))
}

/// The share of all birds that may have died by a day of age: 1 % + 0.06 % a day.
///
/// Source: [eu-2007-43], Annex V, from memory.
pub fn creeping_limit(age_d: f64) -> f64 {
    0.01 + 0.0006 * age_d
}

/// All deaths since the arrival, over the birds that arrived, within the first week.
fn first_week_loss(days: &[BatchDay]) -> Option<f64> {
    let within = days.first()?.age_d == 0 && today(days)?.age_d < FIRST_WEEK_D && counts_over(days);
    loss_of(days).filter(|_| within)
}

/// By what share a number fell.
fn fall(before: Option<f64>, after: Option<f64>) -> Option<f64> {
    Some(1.0 - crate::budget::per(after?, before?)?)
}

fn water_fall([before, after]: &[BatchDay; 2]) -> Option<f64> {
    fall(before.water_l, after.water_l)
}

fn feed_fall([before, after]: &[BatchDay; 2]) -> Option<f64> {
    fall(before.feed_kg, after.feed_kg)
}

/// Far hotter at its hottest than the mean of the days before, of which at least three were written.
fn suddenly_hot(days: &[BatchDay]) -> bool {
    let Some((day, before)) = days.split_last() else { return false };
    let before = &before[before.len().saturating_sub(USED_TO_D)..];
    let hottest: Vec<f64> = before.iter().filter_map(|day| day.hottest_c).collect();
    let used_to = (hottest.len() >= 3).then(|| crate::weighing::mean(&hottest)).flatten();
    let over = |hottest: f64| hottest >= PANTING_C && used_to.is_some_and(|mean| hottest >= mean + SUDDEN_K);
    day.age_d >= FEATHERED_D && day.hottest_c.is_some_and(over)
}

fn same_heat([before, after]: &[BatchDay; 2]) -> bool {
    before.hottest_c.zip(after.hottest_c).is_some_and(|(before, after)| (after - before).abs() <= SAME_HEAT_K)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(age_d: u32, birds: u32, dead: u32) -> BatchDay {
        BatchDay {
            age_d,
            birds,
            dead: Some(dead),
            sudden: None,
            normal_dead: None,
            water_l: None,
            feed_kg: None,
            hottest_c: None,
        }
    }

    fn names(days: &[BatchDay]) -> Vec<&'static str> {
        holding(days).map(|trigger| trigger.name).collect()
    }

    /// Days from `age` on with these deaths.
    fn run(age: u32, birds: u32, dead: &[u32]) -> Vec<BatchDay> {
        let mut alive = birds;
        let day_of = |(age, &dead): (u32, &u32)| {
            let this = day(age, alive, dead);
            alive -= dead;
            this
        };
        (age..).zip(dead).map(day_of).collect()
    }

    #[test]
    fn a_quiet_flock_rings_nothing() {
        assert!(names(&[]).is_empty());
        let every_other_day: Vec<u32> = (0..42).map(|age| age % 2).collect();
        assert!(names(&run(0, 1000, &every_other_day)).is_empty());
        let untold = BatchDay { dead: None, ..day(20, 1000, 0) };
        assert!(names(&[untold; 10]).is_empty());
    }

    #[test]
    fn limits_of_a_day_and_of_two() {
        assert_eq!(names(&run(20, 1000, &[1, 2])), ["deaths-above-0-17-percent"]);
        assert_eq!(
            names(&run(20, 1000, &[5, 5])),
            ["deaths-above-0-17-percent", "deaths-half-percent-two-days"]
        );
        assert!(!names(&run(20, 1000, &[4, 9])).contains(&"deaths-half-percent-two-days"));
        assert!(names(&run(20, 1000, &[0, 11])).contains(&"deaths-above-one-percent"));
        assert!(!names(&run(20, 1000, &[0, 10])).contains(&"deaths-above-one-percent"));
    }

    #[test]
    fn a_week_adds_up() {
        assert!(names(&run(20, 1000, &[4, 4, 4, 4, 5, 5, 5])).contains(&"deaths-three-percent-week"));
        assert!(!names(&run(20, 1000, &[4, 4, 4, 4, 4, 5, 5])).contains(&"deaths-three-percent-week"));
        let mut gap = run(20, 1000, &[4, 4, 4, 4, 5, 5, 9]);
        gap[3].dead = None;
        assert!(!names(&gap).contains(&"deaths-three-percent-week"));
    }

    #[test]
    fn one_dead_bird_of_a_small_flock_is_no_epidemic() {
        assert!(names(&run(20, 150, &[1, 1])).is_empty());
        assert!(names(&run(20, 150, &[2, 2])).contains(&"deaths-half-percent-two-days"));
        let sudden = BatchDay { sudden: Some(3), ..day(20, 150, 3) };
        assert!(names(&[sudden]).contains(&"deaths-sudden"));
        assert!(!names(&[BatchDay { birds: 1000, ..sudden }]).contains(&"deaths-sudden"));
    }

    #[test]
    fn the_first_week_has_its_own_targets() {
        assert!(names(&run(0, 1000, &[5, 5, 5])).is_empty());
        assert_eq!(names(&run(0, 1000, &[10, 5, 5])), ["first-week-two-percent"]);
        assert_eq!(names(&run(0, 1000, &[10, 10, 10])), ["first-week-three-percent"]);
        assert!(names(&run(1, 1000, &[10, 10, 10])).is_empty(), "the arrival was not told");
    }

    #[test]
    fn deaths_that_multiply() {
        let with_normal = |birds, dead| BatchDay { normal_dead: Some(2.0), ..day(20, birds, dead) };
        assert!(names(&[with_normal(1000, 6)]).contains(&"deaths-tripled"));
        assert!(!names(&[with_normal(1000, 5)]).contains(&"deaths-tripled"));
        assert!(!names(&[with_normal(250, 6)]).contains(&"deaths-tripled"));
        assert!(names(&run(20, 1000, &[1, 2, 4])).contains(&"deaths-doubled-two-days"));
        assert!(!names(&run(20, 1000, &[1, 2, 3])).contains(&"deaths-doubled-two-days"));
        assert!(!names(&run(20, 1000, &[0, 0, 4])).contains(&"deaths-doubled-two-days"));
    }

    #[test]
    fn slow_losses_creep_over_the_line() {
        let dead = |last| {
            let mut dead = [0; 43];
            (dead[10], dead[42]) = (30, last);
            run(0, 1000, &dead)
        };
        assert!(names(&dead(6)).contains(&"deaths-creeping"), "3.6 % of 3.52 %");
        assert!(!names(&dead(5)).contains(&"deaths-creeping"), "3.5 %");
    }

    #[test]
    fn heat_that_is_sudden_and_heat_near_that_of_a_body() {
        let hot = |age_d, hottest| BatchDay { hottest_c: Some(hottest), ..day(age_d, 1000, 0) };
        let before: Vec<BatchDay> = (15..20).map(|age| hot(age, 32.0)).collect();
        let after = |last: BatchDay| names(&before.iter().copied().chain([last]).collect::<Vec<_>>());
        assert_eq!(after(hot(20, 35.0)), ["heat-sudden"]);
        assert!(after(hot(20, 34.9)).is_empty());
        assert_eq!(after(hot(20, 38.0)), ["heat-sudden", "heat-near-body"]);
        assert!(names(&[hot(20, 37.9)]).is_empty(), "what the birds are used to was not written");
        assert!(names(&[hot(3, 38.0)]).is_empty(), "chicks need it");
    }

    #[test]
    fn water_and_feed_that_fall() {
        let drank = |water, feed, hottest| BatchDay {
            water_l: Some(water),
            feed_kg: Some(feed),
            hottest_c: Some(hottest),
            ..day(20, 1000, 0)
        };
        let before = drank(200.0, 100.0, 31.0);
        let named = |after| names(&[before, after]);
        assert_eq!(named(drank(148.0, 100.0, 25.0)), ["water-or-feed-fell-quarter"]);
        assert_eq!(named(drank(200.0, 70.0, 31.0)), ["water-or-feed-fell-quarter"]);
        assert_eq!(
            named(drank(155.0, 77.0, 31.0)),
            ["water-and-feed-fell-fifth", "water-fell-fifth-same-heat"]
        );
        assert!(named(drank(155.0, 100.0, 27.0)).is_empty());
        assert!(names(&[before, BatchDay { water_l: None, ..before }]).is_empty());
    }
}
