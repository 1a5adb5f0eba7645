//! Invented batches, whose birds grow on a clock that heat, thirst and sickness slow down, weighed as a grower weighs them.

use invented::{Life, Scenario, live, write_down};
use model::outlook::filter::{Seen, Weight, follow};
use model::outlook::learn::{Learnt, OPEN_HOUSE, learn};
use model::weighing::{mean, standard_deviation};
use quantity::{CivilDay, DayOfAge};
use reference::growth::{GrowthCurve, Standard};

use crate::houses::{FORECAST, HOUSES, LAST, TEACHING, scenario};
use crate::score::{HEAD, Law, Scored, better, line};

/// Earlier batches of a house that are known.
const TAUGHT: [u32; 3] = [0, 2, 5];
/// The days it is forecast from.
const FROM: [i32; 3] = [14, 21, 28];
/// What the buyer wants, g.
const WANTED_G: f64 = 1_800.0;

/// A batch as it was, and as it was weighed.
struct Batch {
    life: Life,
    seen: Vec<Seen>,
}

pub fn print() {
    let Some((curve, first)) = Standard::OpenHouse.curve().ok().zip(CivilDay::new(2031, 1, 1)) else {
        return;
    };
    let houses: Vec<Vec<Batch>> = (0..HOUSES).map(|house| batches(house, first, curve)).collect();
    println!("## {} invented batches, day {LAST} forecast against the open-house curve\n", HOUSES * FORECAST);
    for taught in TAUGHT {
        let known: Vec<Learnt> =
            houses.iter().map(|house| learn(&OPEN_HOUSE, &earlier(house, taught))).collect();
        for from in FROM {
            println!("### {taught} earlier batches, from day {from}\n\n{HEAD}");
            let forecasts: Vec<[Vec<Scored>; 2]> =
                houses.iter().zip(&known).map(|(house, known)| of_house(house, known, curve, from)).collect();
            let of = |at: usize| forecasts.iter().map(|all| all[at].clone()).collect::<Vec<_>>();
            println!("{}\n{}", line("filter", &of(0)), line("scaled standard", &of(1)));
            let (less, low, high) = better(&of(0), &of(1));
            println!(
                "\nCRPS of the filter less that of the scaled standard: {less:.1} g ({low:.1} … {high:.1})"
            );
            println!("\n{}\n", regret(&houses, &known, curve, from));
        }
    }
}

fn batches(house: u32, first: CivilDay, curve: &GrowthCurve) -> Vec<Batch> {
    (0..TEACHING + FORECAST).map(|number| batch(house, number, first, curve)).collect()
}

fn earlier(house: &[Batch], taught: u32) -> Vec<Vec<Seen>> {
    house[(5 - taught) as usize..5].iter().map(|batch| batch.seen.clone()).collect()
}

fn batch(house: u32, number: u32, first: CivilDay, curve: &GrowthCurve) -> Batch {
    let scenario = scenario(house, number, first);
    let life = live(&scenario);
    let seen = weighings(&scenario, &life, curve);
    Batch { life, seen }
}

/// The weighings as they were written down: ln of their mean against the curve, with the variance of a mean.
fn weighings(scenario: &Scenario, life: &Life, curve: &GrowthCurve) -> Vec<Seen> {
    let lines = write_down(scenario, life);
    let weighing = |line: &invented::Line| {
        let typed = &line.raws.iter().find(|raw| raw.key.ends_with("weights_g"))?.text;
        let weights: Vec<f64> = typed.iter().filter_map(|word| word.parse().ok()).collect();
        let day = line.day.days_since(scenario.placement);
        let middle = mean(&weights)?;
        let error = standard_deviation(&weights)? / middle;
        Some(Seen {
            day,
            log_ratio: (middle / standard(curve, day)?).ln(),
            variance: error * error / weights.len() as f64,
        })
    };
    lines.iter().filter(|line| line.kind == "weighing").filter_map(weighing).collect()
}

fn standard(curve: &GrowthCurve, day: i32) -> Option<f64> {
    Some(curve.weight(DayOfAge(day))?.in_grams())
}

/// What the filter makes of a batch on a day, by what it knows beforehand.
fn state(batch: &Batch, known: &Learnt, from: i32) -> model::outlook::filter::State {
    let more = |seen: &Seen| Seen { variance: seen.variance + known.scale_variance, ..*seen };
    let seen: Vec<Seen> = batch.seen.iter().map(more).collect();
    follow(known.first, &known.law, &seen, 0, from).state
}

fn of_house(house: &[Batch], known: &Learnt, curve: &GrowthCurve, from: i32) -> [Vec<Scored>; 2] {
    let mut scored = [Vec::new(), Vec::new()];
    for batch in &house[5..] {
        let truth = batch.life.days.iter().find(|day| day.age == LAST).map(|day| day.weight_g);
        let now = batch.seen.iter().find(|seen| seen.day == from);
        let (Some(truth), Some(now), Some(standard)) = (truth, now, standard(curve, LAST)) else { continue };
        let weight = Weight::of(&state(batch, known, from).ahead(&known.law, (LAST - from) as u32), standard);
        scored[0].push(Scored::of(Law::OfLogarithm(weight.median_g.ln(), weight.variance.sqrt()), truth));
        // The plain way: as far off the curve then as now, within the 13 % that the curve itself is unsure by.
        let scaled = Law::OfLogarithm(standard.ln() + now.log_ratio, 0.13 / 1.645);
        scored[1].push(Scored::of(scaled, truth));
    }
    scored
}

/// Days that a sale booked by the forecast is off the first day on which the birds weigh what is wanted.
fn regret(houses: &[Vec<Batch>], known: &[Learnt], curve: &GrowthCurve, from: i32) -> String {
    let (mut off, mut batches) = ([0.0; 3], 0.0);
    for (batch, known) in
        houses.iter().zip(known).flat_map(|(house, known)| house[5..].iter().map(move |batch| (batch, known)))
    {
        let first = |weight: &dyn Fn(i32) -> Option<f64>| {
            (from..=LAST + 8)
                .find(|day| weight(*day).is_some_and(|weight| weight >= WANTED_G))
                .unwrap_or(LAST + 9)
        };
        let lived = |day: i32| batch.life.days.iter().find(|one| one.age == day).map(|day| day.weight_g);
        let Some(now) = batch.seen.iter().find(|seen| seen.day == from) else { continue };
        let state = state(batch, known, from);
        let filter =
            |day: i32| Some(standard(curve, day)? * state.ahead(&known.law, (day - from) as u32).level.exp());
        let scaled = |day: i32| Some(standard(curve, day)? * now.log_ratio.exp());
        let truth = first(&lived);
        let booked = [first(&filter), first(&scaled), first(&|day| standard(curve, day))];
        for (off, booked) in off.iter_mut().zip(booked) {
            *off += f64::from((booked - truth).abs());
        }
        batches += 1.0;
    }
    let [filter, scaled, curve] = off.map(|off| off / batches);
    format!(
        "Days that a sale at {WANTED_G} g, booked on day {from}, is off the best day: filter {filter:.2}, scaled standard \
         {scaled:.2}, curve {curve:.2}"
    )
}
