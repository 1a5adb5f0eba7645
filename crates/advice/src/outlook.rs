//! What the book says of the days to come: how the flock stands beside its standard, what it tells of losses and appetite, and
//! what the plan expects of each day ahead, as answers that the outlook is worked out from.

mod appetite;
mod birds;

use std::collections::BTreeMap;

use model::outlook::filter::{Followed, Seen, State, Weight, follow};
use model::outlook::futures::{FEED_WITH_WEIGHT, thirst_in_heat};
use model::outlook::hazard::Hazard;
use model::outlook::learn::{Learnt, OPEN_HOUSE, learn};
use model::scenarios::SIGMAS_IN_90;
use quantity::{Answers, DayOfAge};

use appetite::Usual;

use crate::diary::{Diary, set_days, set_number};
use crate::families::outlook as keys;
use crate::families::{growing, growth};
use crate::outcome::Outcome;
use crate::past::Past;

/// So many days past the last planned day of sale are looked at: birds that are late are sold late.
const PAST_SALE_D: i32 = 14;

/// Half of a range of 95 %, in standard deviations.
const SIGMAS_IN_95: f64 = 1.96;

/// The deviation of a weighing of an earlier batch, a share: 50 birds of a CV of 10 % (our judgement).
const PAST_WEIGHING: f64 = 0.015;

/// How far thirst beside feed strays from batch to batch, in one day, and what another week adds: line and founts leak, spill and are read off by eye; shares (our judgement).
const THIRST: f64 = 0.15;
const THIRST_OF_A_DAY: f64 = 0.10;
const THIRST_OF_A_WEEK: f64 = 0.04;
const THIRST_MOST: f64 = 0.5;

/// Days back that tell the appetite and the heat of late.
const APPETITE_DAYS: i32 = 10;
const HEAT_DAYS: i32 = 3;

impl Diary {
    /// The same with what the outlook goes by. Nothing is added before the chicks come, after the batch is closed, and without
    /// an adopted plan.
    pub fn looking_ahead(mut self, past: &Past) -> Diary {
        let Some(today) = self
            .age_today()
            .filter(|today| (0..=growing::OLDEST_D).contains(today) && self.is_placed && !self.is_closed)
        else {
            return self;
        };
        let Some(standard) = Standard::of(&self.answers) else { return self };
        let known = learn(&OPEN_HOUSE, &earlier(past, &standard));
        let seen = seen(&self, &known, &standard);
        let followed = follow(known.first, &known.law, &seen, 0, today);
        write_said(&mut self, &known, &seen, &standard, today);
        write_growth(&mut self, &known, &followed);
        write_losses(&mut self, today);
        let usual = Usual::of(past, &self.answers, &standard);
        appetite::write(&mut self, &usual, &followed.state, today);
        write_thirst(&mut self, today);
        birds::write_spread(&mut self, today);
        write_days(&mut self, &standard, &usual, today);
        self
    }
}

/// What a day is held against: the adopted plan, and past its last day the curve that it follows, moved to meet it.
struct Standard {
    planned: BTreeMap<i32, f64>,
    beyond: BTreeMap<i32, f64>,
}

impl Standard {
    fn of(answers: &Answers) -> Option<Standard> {
        let planned = answers.by_day(growing::EXPECTED_WEIGHT)?.clone();
        let (&last, &weight) = planned.last_key_value()?;
        let curve = growth::curve(answers);
        let on = |day: i32| Some(curve.as_ref()?.weight(DayOfAge(day))?.in_grams());
        let ahead =
            (last + 1..=last + PAST_SALE_D).map_while(|day| Some((day, weight * on(day)? / on(last)?)));
        Some(Standard { beyond: ahead.collect(), planned })
    }

    fn on(&self, day: i32) -> Option<f64> {
        self.planned.get(&day).or_else(|| self.beyond.get(&day)).copied()
    }

    /// A weighing against it.
    fn seen(&self, day: i32, weight_g: f64, deviation: f64) -> Option<Seen> {
        let log_ratio = (weight_g / self.on(day)?).ln();
        log_ratio.is_finite().then_some(Seen { day, log_ratio, variance: deviation * deviation })
    }
}

fn earlier(past: &Past, standard: &Standard) -> Vec<Vec<Seen>> {
    let weighings = |weights: &[(i32, f64)]| {
        weights.iter().filter_map(|(day, weight)| standard.seen(*day, *weight, PAST_WEIGHING)).collect()
    };
    past.batches.iter().map(|batch| weighings(&batch.weight_g)).collect()
}

/// The weighings of the batch, in the order of days.
fn seen(diary: &Diary, known: &Learnt, standard: &Standard) -> Vec<Seen> {
    let days = |key: &str| diary.answers.by_day(key).cloned().unwrap_or_default();
    let (low, high) = (days(growing::WEIGHT_LOW), days(growing::WEIGHT_HIGH));
    let weighing = |(day, weight): (&i32, &f64)| {
        let half = (high.get(day)? - low.get(day)?) / 2.0 / weight / SIGMAS_IN_95;
        standard.seen(*day, *weight, half.hypot(known.scale_variance.sqrt()))
    };
    days(growing::WEIGHT).iter().filter_map(weighing).collect()
}

/// What was foretold of each day so far by the weighings before it: where nine of ten weighings would lie.
fn write_said(diary: &mut Diary, known: &Learnt, seen: &[Seen], standard: &Standard, today: i32) {
    let on = |day: i32| {
        let before: Vec<Seen> = seen.iter().filter(|one| one.day < day).copied().collect();
        let state = follow(known.first, &known.law, &before, 0, day).state;
        let weight = Weight::of(&state, standard.on(day)?);
        let weighed =
            Weight { variance: weight.variance + PAST_WEIGHING.powi(2) + known.scale_variance, ..weight };
        let ends = [0.0, -SIGMAS_IN_90, SIGMAS_IN_90].map(|z| weighed.at(z));
        Some((day, ends))
    };
    let said: Vec<(i32, [f64; 3])> = (1..=today).filter_map(on).collect();
    for (at, key) in [keys::SAID, keys::SAID_LOW, keys::SAID_HIGH].into_iter().enumerate() {
        set_days(&mut diary.answers, key, said.iter().map(|(day, ends)| (*day, ends[at])).collect());
    }
}

fn write_growth(diary: &mut Diary, known: &Learnt, followed: &Followed) {
    let State { level, slope, level_variance, covariance, slope_variance } = followed.state;
    let (level_off, slope_off) = (level_variance.sqrt(), slope_variance.sqrt());
    let numbers = [
        (keys::LEVEL, 100.0 * level),
        (keys::LEVEL_OFF, 100.0 * level_off),
        (keys::SLOPE, 100.0 * slope),
        (keys::SLOPE_OFF, 100.0 * slope_off),
        (keys::TOGETHER, covariance / (level_off * slope_off)),
        (keys::DAMPING, known.law.damping),
        (keys::LEVEL_NOISE, 100.0 * known.law.level_noise.sqrt()),
        (keys::SLOPE_NOISE, 100.0 * known.law.slope_noise.sqrt()),
        (keys::TAUGHT, known.batches as f64),
    ];
    for (key, number) in numbers {
        set_number(&mut diary.answers, key, number);
    }
    let believed = followed.updates.iter().map(|(seen, update)| (seen.day, 100.0 * update.believed));
    let expected = followed.updates.iter().map(|(seen, update)| (seen.day, update.surprise));
    let (believed, expected) = (believed.collect(), expected.collect());
    set_days(&mut diary.answers, keys::BELIEVED, believed);
    set_days(&mut diary.answers, keys::SURPRISE, expected);
}

/// The share of the birds alive that the plan expects to lose, by day.
fn lost_shares(answers: &Answers) -> BTreeMap<i32, f64> {
    let alive = answers.by_day(growing::EXPECTED_ALIVE);
    let (Some(lost), Some(alive)) = (answers.by_day(growing::EXPECTED_LOST), alive) else {
        return BTreeMap::new();
    };
    let share = |(day, lost): (&i32, &f64)| {
        let alive = *alive.get(day)?;
        (alive > 0.0).then(|| (*day, (lost / alive).clamp(0.0, 1.0)))
    };
    lost.iter().filter_map(share).collect()
}

/// What the batch tells of its losses, and how many are left. Birds that left alive were alive on their day.
fn write_losses(diary: &mut Diary, today: i32) {
    let shares = lost_shares(&diary.answers);
    let Some(placed) = diary.answers.number(growing::PLACED) else { return };
    let days = |key: &str| diary.answers.by_day(key).cloned().unwrap_or_default();
    let (lost, left) = (days(growing::LOST), days(growing::LEFT));
    let (mut alive, mut hazard) = (placed, Hazard::before());
    for day in 0..=today {
        let expected = shares.get(&day).map(|share| share * alive).filter(|expected| *expected > 0.0);
        hazard = match (lost.get(&day), expected) {
            (Some(lost), Some(expected)) => hazard.see(*lost, expected),
            _ => hazard.forget(),
        };
        alive -= lost.get(&day).unwrap_or(&0.0) + left.get(&day).unwrap_or(&0.0);
    }
    set_number(&mut diary.answers, keys::HAZARD_SHAPE, hazard.shape);
    set_number(&mut diary.answers, keys::HAZARD_RATE, hazard.rate);
}

/// By how much it was too hot on a day: the middle of coldest and warmest over what the plan wants.
fn too_hot(answers: &Answers, day: i32) -> Option<f64> {
    let on = |key: &str| answers.by_day(key)?.get(&day).copied();
    let wanted = on(growing::EXPECTED_TEMPERATURE)?;
    Some(f64::midpoint(on(growing::COLDEST)?, on(growing::WARMEST)?) - wanted)
}

/// Litres planned for a kilogram of feed where it is not too hot, by day: the water of the plan without its heat, for its feed.
fn water_for_feed(answers: &Answers) -> BTreeMap<i32, f64> {
    let heat = Outcome::of(answers, ["water.heat_factor"]).number("water.heat_factor").unwrap_or(1.0);
    let table = |key: &str| answers.by_day(key).cloned().unwrap_or_default();
    let (feed, alive) = (table(growing::EXPECTED_FEED), table(growing::EXPECTED_ALIVE));
    let on = |(day, litres): (i32, f64)| {
        let kilograms = feed.get(&day)? * alive.get(&day)? / 1000.0;
        (kilograms > 0.0).then(|| (day, litres / heat / kilograms))
    };
    table(growing::EXPECTED_WATER).into_iter().filter_map(on).collect()
}

/// What they drank of late beside what their feed and the heat ask for.
fn write_thirst(diary: &mut Diary, today: i32) {
    let answers = &diary.answers;
    let asked = water_for_feed(answers);
    let on = |key: &str, day: i32| answers.by_day(key)?.get(&day).copied();
    let off = |day: i32| {
        let hot = too_hot(answers, day).unwrap_or_default().max(0.0);
        let litres = asked.get(&day)? * on(growing::FEED, day)? * thirst_in_heat(hot);
        let off = (on(growing::WATER, day)? / litres).ln();
        off.is_finite().then(|| off.clamp(-THIRST_MOST, THIRST_MOST))
    };
    let seen: Vec<f64> = ((today - APPETITE_DAYS).max(0)..=today).filter_map(off).collect();
    let of_days = THIRST_OF_A_DAY.powi(-2);
    let precision = THIRST.powi(-2) + of_days * seen.len() as f64;
    let thirst = of_days * seen.iter().sum::<f64>() / precision;
    // A day to come strays as a day that was written did.
    let away = precision.powf(-0.5).hypot(THIRST_OF_A_WEEK).hypot(THIRST_OF_A_DAY);
    set_number(&mut diary.answers, keys::THIRST, 100.0 * thirst);
    set_number(&mut diary.answers, keys::THIRST_OFF, 100.0 * away);
}

/// What each day ahead is held against, from today on.
fn write_days(diary: &mut Diary, standard: &Standard, usual: &Usual, today: i32) {
    let days = |of: &dyn Fn(i32) -> Option<f64>| {
        (today..).map_while(|day| Some((day, of(day)?))).collect::<BTreeMap<i32, f64>>()
    };
    let weights = days(&|day| standard.on(day));
    let feed = diary.answers.by_day(growing::EXPECTED_FEED).cloned().unwrap_or_default();
    let shares = lost_shares(&diary.answers);
    // Past the plan's last day birds eat by their weight, and die as on the last day.
    let fed = |day: i32| {
        let (last, grams) = feed.last_key_value()?;
        let on_last = standard.on(*last)?;
        let ratio = standard.on(day)? / on_last;
        feed.get(&day).copied().or_else(|| (day > *last).then(|| grams * ratio.powf(FEED_WITH_WEIGHT)))
    };
    let dying = |day: i32| {
        let (last, share) = shares.last_key_value()?;
        shares.get(&day).copied().or_else(|| (day > *last).then_some(*share))
    };
    let (feed, shares) = (
        days(&|day| standard.on(day).and_then(|_| Some(fed(day)? * usual.times(day)))),
        weights.keys().filter_map(|day| Some((*day, dying(*day)? * 100.0))).collect(),
    );
    set_days(&mut diary.answers, keys::STANDARD, weights);
    let dry = water_for_feed(&diary.answers);
    let (&last_planned, &last_litres) = dry.last_key_value().unwrap_or((&today, &0.0));
    let goes_on = (last_planned + 1..=today + feed.len() as i32).map(|day| (day, last_litres));
    let ahead = dry.range(today..).map(|(day, litres)| (*day, *litres)).chain(goes_on);
    let water = ahead.filter(|(day, litres)| feed.contains_key(day) && *litres > 0.0).collect();
    set_days(&mut diary.answers, keys::WATER_AHEAD, water);
    set_days(&mut diary.answers, keys::FEED_AHEAD, feed);
    set_days(&mut diary.answers, keys::LOST_AHEAD, shares);
    let is_fed = diary.on_day("feed-given", diary.on).next().is_some();
    set_number(&mut diary.answers, keys::UNFED, f64::from(u8::from(!is_fed)));
}
