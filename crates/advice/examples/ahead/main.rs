//! Prints how often the bands of losses, feed and water hold the truth, on invented batches whose deaths and hunger follow laws of their
//! own, read from a book as the program reads one: of houses without earlier batches, and of houses with five. Build it for
//! speed; it takes some minutes.

#[path = "../../../model/examples/outlook/houses.rs"]
mod houses;

use advice::diary::Diary;
use advice::past::Past;
use advice::plan::{self, Plan};
use advice::walk::Walk;
use advice::{adoption, plan_file, record};
use book::{
    Access, BatchId, DeviceId, Draft, EntryId, FarmId, PersonId, Role, SeriesEnd, Sight, StoredEntry,
    Subject, compose, fold,
};
use houses::{FORECAST, HOUSES, LAST, TEACHING, scenario};
use invented::{Life, Line, Scenario, live, write_down};
use model::chance::Draw;
use model::outlook::futures::{Future, Now};
use model::quantile;
use model::scores::crps_of_draws;
use quantity::{CivilDay, Source};
use uuid::Uuid;

/// Tables of other houses were seen each time before how the outlook takes appetite and losses was changed: these are of houses that
/// were not looked at then.
const FIRST_HOUSE: u32 = 2_000;

/// The days it is forecast from.
const FROM: [i32; 2] = [14, 28];

/// Futures that a score is counted from: all pairs of them are held against each other.
const DRAWS: usize = 400;

/// Tables drawn anew for the ranges.
const TABLES: u32 = 2_000;

const ONE: Uuid = Uuid::from_u128(1);

/// What is forecast.
const ASKED: [&str; 4] = [
    "birds alive at the end of day 40",
    "feed eaten up to day 40, kg",
    "day on which the feed on hand is eaten",
    "water drunk on day 40, L",
];

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let first = CivilDay::new(2031, 1, 1).ok_or("a first day")?;
    println!("## Losses, feed and water on {} invented batches\n", HOUSES * FORECAST);
    for (from, taught) in FROM.into_iter().flat_map(|from| [(from, false), (from, true)]) {
        let mut scored: [Vec<Vec<Scored>>; 4] = Default::default();
        for house in FIRST_HOUSE..FIRST_HOUSE + HOUSES {
            let past = if taught { past(house, first)? } else { Past::default() };
            let mut of_house: [Vec<Scored>; 4] = Default::default();
            for number in TEACHING..TEACHING + FORECAST {
                let all = forecast(&scenario(house, number, first), from, &past)?;
                for (kept, one) in of_house.iter_mut().zip(all) {
                    kept.extend(one);
                }
            }
            for (kept, one) in scored.iter_mut().zip(of_house) {
                kept.push(one);
            }
        }
        println!("### From day {from}, after {} earlier batches\n", if taught { TEACHING } else { 0 });
        println!("| forecast | n | 50 % band, % | 90 % band, % | below the middle, % | CRPS | off |");
        println!("|---|---|---|---|---|---|---|");
        for (asked, groups) in ASKED.iter().zip(&scored) {
            println!("{}", line(asked, groups));
        }
        println!();
    }
    Ok(())
}

/// A forecast held against the truth.
#[derive(Clone, Copy)]
struct Scored {
    /// The share of futures below the truth; of those equal to it, a part that is drawn.
    below: f64,
    crps: f64,
    off: f64,
}

/// The forecasts of a batch from a day; one that cannot be asked is missing.
fn forecast(
    scenario: &Scenario,
    from: i32,
    past: &Past,
) -> Result<[Option<Scored>; 4], Box<dyn std::error::Error>> {
    let life = live(scenario);
    let walk = walk(scenario, &life, from, past)?;
    let (now, futures) = walk.plan.outcome.drawn().futures().ok_or("futures")?;
    let alive = walk.plan.outcome.number("growing.alive").ok_or("birds alive")?;
    let ahead = || life.days.iter().filter(|day| day.age > from && day.age <= LAST);
    let lost: f64 = ahead().map(|day| f64::from(day.deaths.all())).sum();
    let eaten: f64 = ahead().flat_map(|day| day.feed_kg).sum();
    let days = usize::try_from(LAST - from)?;
    let birds = |future: &Future| future.days.get(days - 1).map(|point| point.birds);
    let feed = |future: &Future| Some(future.days.get(..days)?.iter().map(|point| point.eaten_kg).sum());
    let seed = scenario.seed as u32;
    let scored = |stream: u32, read: &dyn Fn(&Future) -> Option<f64>, truth: f64| {
        let column: Vec<f64> = futures.iter().filter_map(read).collect();
        Scored::of(&column, truth, Draw { seed: 11, scenario: seed, stream, day: from as u32, n: 0 })
    };
    let drunk = life.days.iter().find(|day| day.age == LAST).map(|day| day.water_l);
    let water = |future: &Future| future.water_l(now, days - 1);
    let day = day_of_empty_store(now, &life, from);
    Ok([
        Some(scored(0, &birds, alive - lost)),
        Some(scored(1, &feed, eaten)),
        day.map(|day| scored(2, &|future| Some(first_empty(now, future)), day)),
        drunk.map(|drunk| scored(3, &water, drunk)),
    ])
}

/// The first day at whose end more was eaten than stood in the store; `None` where it is not within the batch.
fn day_of_empty_store(now: &Now, life: &Life, from: i32) -> Option<f64> {
    let mut left: f64 = now.store_kg.iter().sum();
    let mut days = life.days.iter().filter(|day| day.age > from);
    days.find_map(|day| {
        left -= day.feed_kg.iter().sum::<f64>();
        (left < 0.0).then(|| f64::from(day.age))
    })
}

fn first_empty(now: &Now, future: &Future) -> f64 {
    model::outlook::futures::first_day(now.first_day, future, |point| point.all_left_kg() < 0.0)
}

impl Scored {
    fn of(column: &[f64], truth: f64, draw: Draw) -> Scored {
        let count = |holds: &dyn Fn(&f64) -> bool| column.iter().filter(|one| holds(one)).count() as f64;
        let share = quantile::normal_share_below(draw.normal());
        let below = count(&|one| *one < truth) + share * count(&|one| *one == truth);
        let sorted = model::risk::sorted(column);
        let middle = model::risk::quantile(&sorted, 0.5).unwrap_or(f64::NAN);
        Scored {
            below: below / column.len() as f64,
            crps: crps_of_draws(&column[..column.len().min(DRAWS)], truth, true).unwrap_or(f64::NAN),
            off: (middle - truth).abs(),
        }
    }
}

/// What is written of a batch by the evening of a day.
fn write(
    written: &mut Vec<StoredEntry>,
    batch: BatchId,
    scenario: &Scenario,
    life: &Life,
    until: CivilDay,
) -> Result<(), Box<dyn std::error::Error>> {
    let plan = planned(scenario)?;
    let id = |written: &Vec<StoredEntry>| EntryId(Uuid::from_u128(1_000 + written.len() as u128));
    let adopted = Draft::new(
        id(written),
        "plan-adopted",
        Subject::Batch(batch),
        scenario.placement.plus_days(-28),
        adoption::body(&plan, batch, None),
    );
    put(written, adopted)?;
    let lines =
        write_down(scenario, life).into_iter().filter(|line| line.day <= until && line.written <= until);
    for line in lines {
        let draft = draft(&line, batch, id(written))?;
        put(written, draft)?;
    }
    Ok(())
}

/// The earlier batches of a house, as its book tells them.
fn past(house: u32, first: CivilDay) -> Result<Past, Box<dyn std::error::Error>> {
    let mut written = Vec::new();
    for number in 0..TEACHING {
        let scenario = scenario(house, number, first);
        let until = scenario.placement.plus_days(60);
        let batch = BatchId(Uuid::from_u128(10 + u128::from(number)));
        write(&mut written, batch, &scenario, &live(&scenario), until)?;
    }
    let next = scenario(house, TEACHING, first);
    let batch = BatchId(Uuid::from_u128(2));
    write(&mut written, batch, &next, &live(&next), next.placement)?;
    Ok(Past::read(&fold(FarmId(ONE), written), batch, next.placement))
}

/// What the book of a batch says on the evening of a day.
fn walk(
    scenario: &Scenario,
    life: &Life,
    from: i32,
    past: &Past,
) -> Result<Walk, Box<dyn std::error::Error>> {
    let batch = BatchId(Uuid::from_u128(2));
    let until = scenario.placement.plus_days(from);
    let mut written = Vec::new();
    write(&mut written, batch, scenario, life, until)?;
    let state = fold(FarmId(ONE), written);
    Ok(Walk::ahead_of(Diary::read(&state, batch, until), past))
}

/// A plan that knows the curve of open houses, the number of chicks and the feeds, and nothing of the luck.
fn planned(scenario: &Scenario) -> Result<Plan, Box<dyn std::error::Error>> {
    let [starter, grower] = scenario.phases_until;
    let text = format!(
        "[house]\nlength_m = 30\nwidth_m = 9\n[batch]\nplacement = {}\nchicks = {}\nsale_age_d = {LAST}\n\
         standard = \"open-house\"\n[feed]\nbag_kg = 50\nphases = \"starter-grower-finisher\"\nstarter_until_d = {starter}\n\
         grower_until_d = {grower}\n",
        scenario.placement, scenario.chicks
    );
    let checked = plan::read(&plan_file::read(&text)?, Source::File, false);
    if !checked.problems.is_empty() {
        return Err(format!("{:?}", checked.problems).into());
    }
    Ok(plan::work_out(checked.answers))
}

fn draft(line: &Line, batch: BatchId, id: EntryId) -> Result<Draft, Box<dyn std::error::Error>> {
    let kind = record::kind(line.kind).ok_or("a kind of entry")?;
    let checked = record::check(kind, &line.raws, Source::Hand);
    if !checked.problems.is_empty() {
        return Err(format!("{}: {:?}", line.kind, checked.problems).into());
    }
    Ok(record::draft(id, kind, batch, line.day, &checked.answers))
}

fn put(written: &mut Vec<StoredEntry>, draft: Draft) -> Result<(), Box<dyn std::error::Error>> {
    let access = Access::granted(FarmId(ONE), PersonId(ONE), DeviceId(ONE), Role::Owner);
    let end = written.last().map(SeriesEnd::at);
    let now = 1_800_000_000_000 + 1_000 * written.len() as i64;
    written.push(compose(&access, end, draft, &Sight::default(), now)?);
    Ok(())
}

/// A line of the table: batches of a house are drawn together.
fn line(name: &str, groups: &[Vec<Scored>]) -> String {
    let within = |half: f64| move |one: &Scored| f64::from(u8::from((one.below - 0.5).abs() <= half));
    let percent = |(mean, low, high): (f64, f64, f64)| {
        format!("{:.0} ({:.0} … {:.0})", 100.0 * mean, 100.0 * low, 100.0 * high)
    };
    let count: usize = groups.iter().map(Vec::len).sum();
    let score = resampled(groups, |one| one.crps);
    format!(
        "| {name} | {count} | {} | {} | {} | {:.2} ({:.2} … {:.2}) | {:.2} |",
        percent(resampled(groups, within(0.25))),
        percent(resampled(groups, within(0.45))),
        percent(resampled(groups, |one| f64::from(u8::from(one.below < 0.5)))),
        score.0,
        score.1,
        score.2,
        resampled(groups, |one| one.off).0,
    )
}

/// Mean, and the 2.5 % and 97.5 % points of the means of tables drawn from the groups with replacement.
fn resampled(groups: &[Vec<Scored>], read: impl Fn(&Scored) -> f64) -> (f64, f64, f64) {
    let sums: Vec<(f64, f64)> =
        groups.iter().map(|group| (group.iter().map(&read).sum(), group.len() as f64)).collect();
    let of_all = |picks: &mut dyn Iterator<Item = usize>| {
        let (sum, count) = picks.fold((0.0, 0.0), |(sum, count), at| (sum + sums[at].0, count + sums[at].1));
        sum / count
    };
    let drawn = |table: u32| {
        let pick = |n: u32| {
            let normal = Draw { seed: 7, scenario: table, stream: 0, day: 0, n }.normal();
            (quantile::normal_share_below(normal) * sums.len() as f64) as usize % sums.len()
        };
        of_all(&mut (0..sums.len() as u32).map(pick))
    };
    let tables = model::risk::sorted(&(0..TABLES).map(drawn).collect::<Vec<f64>>());
    let point = |share| model::risk::quantile(&tables, share).unwrap_or(f64::NAN);
    (of_all(&mut (0..sums.len())), point(0.025), point(0.975))
}
