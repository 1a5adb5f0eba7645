//! Real chicks, one by one: the birds of three diets teach, those of the fourth are forecast.

use std::collections::{BTreeMap, BTreeSet};

use model::outlook::filter::{Seen, Weight, follow};
use model::outlook::gompertz;
use model::outlook::learn::{House, Prior, learn};
use model::weighing::mean;
use reference::chicks::Weighed;

use crate::score::{HEAD, Law, Scored, better, line};

/// The day that is forecast, and the days it is forecast from.
const LAST: i32 = 21;
const FROM: [i32; 3] = [6, 10, 14];

/// Before any chick is seen: single birds stray from a curve for longer than a flock's mean does. Our judgement, written down
/// before any score was seen, and not touched since.
const SINGLE_CHICK: Prior = Prior {
    house: House {
        damping: 0.95,
        level_noise: 0.003,
        slope_noise: 0.000_5,
        first_level: 0.08,
        first_slope: 0.001_8,
        scale: 0.007,
    },
    houses_level: 0.06,
    houses_slope: 0.002_4,
    known: 0.7,
};

/// A chick's weights by day, g.
type Chick = BTreeMap<i32, f64>;

pub fn print() {
    let weighed = reference::chicks::weighed().unwrap_or_default();
    println!("## Chicks of the diet left out, day {LAST} forecast\n");
    for from in FROM {
        println!("### From day {from}\n\n{HEAD}");
        let forecasts: Vec<[Vec<Scored>; 3]> =
            diets(weighed).iter().flat_map(|diet| left_out(weighed, *diet, from)).collect();
        let of = |at: usize| forecasts.iter().map(|all| all[at].clone()).collect::<Vec<_>>();
        for (at, name) in ["filter", "scaled standard", "Gompertz refit"].into_iter().enumerate() {
            println!("{}", line(name, &of(at)));
        }
        for (at, name) in [(1, "the scaled standard"), (2, "the Gompertz refit")] {
            let (less, low, high) = better(&of(0), &of(at));
            println!("\nCRPS of the filter less that of {name}: {less:.1} g ({low:.1} … {high:.1})");
        }
        println!();
    }
}

fn diets(weighed: &[Weighed]) -> BTreeSet<u32> {
    weighed.iter().map(|one| one.diet).collect()
}

fn chicks(weighed: &[Weighed], is_wanted: impl Fn(u32) -> bool) -> Vec<Chick> {
    let mut chicks: BTreeMap<u32, Chick> = BTreeMap::new();
    for one in weighed.iter().filter(|one| is_wanted(one.diet)) {
        chicks.entry(one.chick).or_default().insert(one.day, one.weight_g);
    }
    chicks.into_values().collect()
}

/// The forecasts of every chick of a diet that lived to the last day, three ways.
fn left_out(weighed: &[Weighed], diet: u32, from: i32) -> Vec<[Vec<Scored>; 3]> {
    let (taught, tried) = (chicks(weighed, |one| one != diet), chicks(weighed, |one| one == diet));
    let standard = standard(&taught);
    let known = learn(
        &SINGLE_CHICK,
        &taught.iter().map(|chick| seen(chick, &standard, LAST, 0.0)).collect::<Vec<_>>(),
    );
    let scaled = deviation_of_scaled(&taught, &standard, from);
    let forecasts = tried.iter().filter_map(|chick| {
        let (truth, now) = (*chick.get(&LAST)?, *chick.get(&from)?);
        let seen = seen(chick, &standard, from, known.scale_variance);
        let state = follow(known.first, &known.law, &seen, 0, from).state;
        let ahead = state.ahead(&known.law, (LAST - from) as u32);
        let weight = Weight::of(&ahead, standard[&LAST]);
        // A weighing is forecast, with what a weighing adds.
        let filter = Law::OfLogarithm(weight.median_g.ln(), (weight.variance + known.scale_variance).sqrt());
        let scaled = Law::OfLogarithm((now * standard[&LAST] / standard[&from]).ln(), scaled);
        let refit = refit(chick, from)?;
        Some([filter, scaled, refit].map(|law| vec![Scored::of(law, truth)]))
    });
    forecasts.collect()
}

/// The mean of the logarithms by day.
fn standard(taught: &[Chick]) -> BTreeMap<i32, f64> {
    let days: BTreeSet<i32> = taught.iter().flat_map(|chick| chick.keys().copied()).collect();
    let on = |day: i32| taught.iter().filter_map(|chick| Some(chick.get(&day)?.ln())).collect::<Vec<f64>>();
    days.into_iter().filter_map(|day| Some((day, mean(&on(day))?.exp()))).collect()
}

/// A chick's weighings up to a day; they were written to the gram, which is a deviation of 1 / sqrt(12) g.
fn seen(chick: &Chick, standard: &BTreeMap<i32, f64>, until: i32, more: f64) -> Vec<Seen> {
    let weighing = |(day, weight): (&i32, &f64)| Seen {
        day: *day,
        log_ratio: (weight / standard[day]).ln(),
        variance: 1.0 / 12.0 / (weight * weight) + more,
    };
    chick.range(..=until).map(weighing).collect()
}

/// How far chicks that taught ended from the standard scaled to them.
fn deviation_of_scaled(taught: &[Chick], standard: &BTreeMap<i32, f64>, from: i32) -> f64 {
    let off = |chick: &Chick| {
        let ratio = |day: i32| Some((chick.get(&day)? / standard[&day]).ln());
        Some((ratio(LAST)? - ratio(from)?).powi(2))
    };
    mean(&taught.iter().filter_map(off).collect::<Vec<f64>>()).unwrap_or_default().sqrt()
}

/// A Gompertz curve through the chick's own weights so far. Where they do not tell its doubt, it is taken at a quarter.
fn refit(chick: &Chick, from: i32) -> Option<Law> {
    let weights: Vec<(f64, f64)> =
        chick.range(..=from).map(|(day, weight)| (f64::from(*day), *weight)).collect();
    let (fit, last) = (gompertz::fit(&weights)?, f64::from(LAST));
    let middle = fit.curve.weight_g(last);
    let deviation = fit.deviation_g(last).filter(|deviation| *deviation > 0.0);
    Some(Law::OfWeight(middle, deviation.unwrap_or(0.25 * middle)))
}
