//! Weighings of 45 to 50 real chicks on twelve days (published data, uneven and lopsided as real birds are), worked out by
//! scipy and statsmodels. Source and licence stand on top of tables/chickweight.csv, the peer on top of
//! tables/chick_weighings.csv.

use advice::sums::SumResult;
use advice::weighing::{Aim, Reading, Weighing};
use model::chance::Draw;
use reference::Table;

use super::near;

const CHICKS: &str = include_str!("../tables/chickweight.csv");
const WEIGHINGS: &str = include_str!("../tables/chick_weighings.csv");

/// The chicks of a day; each diet is taken for a spot where that is asked.
fn chicks(day: &str, diet_is_spot: bool) -> Weighing {
    let table = Table::read("chickweight", CHICKS).unwrap();
    let of_day = table.rows.iter().filter(|row| row[1] == day);
    let bird = |row: &Vec<String>| Reading {
        spot: if diet_is_spot { row[3].clone() } else { String::new() },
        ..Reading::of_bird(row[0].parse().unwrap())
    };
    Weighing { readings: of_day.map(bird).collect(), ..Weighing::default() }
}

fn ends(result: &SumResult, id: &str) -> [f64; 3] {
    let figure = result.outcome.get(id).unwrap().figure;
    let band = figure.band.unwrap();
    [figure.value.number(), band.low, band.high]
}

/// Tolerance: the nine digits printed; for the range of a CV, whose short form is not the exact one, 0.3 % of it. Measured:
/// 0.21 % off at a CV of 33 %, to which it is said to be good, and under 0.05 % below a CV of 25 %.
#[test]
fn every_day_agrees() {
    let table = Table::read("chick_weighings", WEIGHINGS).unwrap();
    for row in &table.rows {
        let want = |column: &str| table.number(row, column).unwrap().unwrap();
        let result = chicks(&row[0], false).held_against(&Aim::default());
        near(result.outcome.number("weighing.n").unwrap(), want("n"), 0.0);
        for (id, columns, times) in [
            ("weighing.mean", ["mean", "low", "high"], 1.0),
            ("weighing.cv", ["cv", "cv_low", "cv_high"], 100.0),
            ("weighing.uniformity", ["uniform", "uniform_low", "uniform_high"], 100.0),
        ] {
            for (got, column) in ends(&result, id).into_iter().zip(columns) {
                let wanted = times * want(column);
                let tolerance = if column.starts_with("cv_") { 3e-3 } else { 1e-8 };
                near(got, wanted, tolerance * wanted);
            }
        }
        let by_spots = ends(&chicks(&row[0], true).held_against(&Aim::default()), "weighing.mean");
        let wanted = [want("mean"), want("spots_low"), want("spots_high")];
        by_spots.into_iter().zip(wanted).for_each(|(got, wanted)| near(got, wanted, 1e-8 * wanted));
    }
    assert_eq!(table.rows.len(), 12);
}

/// Samples of real birds drawn by chance: the range holds the mean of all of them about 19 times in 20, though they follow no
/// bell curve. Measured, of 15 and of 30 birds: 92.9 and 93.2 % on day 2 (a single light chick drags the mean), 94.1 to
/// 95.6 % on the others. 2 000 samples a day stray by half a percent.
#[test]
fn the_range_of_a_sample_holds_the_mean_of_all() {
    for day in ["2", "8", "14", "21"] {
        let all = chicks(day, false).weights();
        let truth = model::weighing::mean(&all).unwrap();
        let flock = Some(all.len() as f64);
        let samples = 2_000;
        for birds in [15, 30] {
            let held = |scenario: &u32| {
                let sample = drawn(&all, birds, *scenario);
                let weighing = Weighing { flock, ..Weighing::of_weights(&sample) };
                let [low, _, high] = weighing.mean_and_range().unwrap();
                (low..=high).contains(&truth)
            };
            let share = (0..samples).filter(held).count() as f64 / f64::from(samples);
            assert!((0.92..=0.98).contains(&share), "day {day}, {birds} birds: {share}");
        }
    }
}

/// So many of the weights, by the order of numbers drawn for them.
fn drawn(all: &[f64], birds: usize, scenario: u32) -> Vec<f64> {
    let lot = |n: usize| Draw { seed: 4, scenario, stream: 0, day: 0, n: n as u32 }.normal();
    let mut lots: Vec<(f64, f64)> = all.iter().enumerate().map(|(n, weight)| (lot(n), *weight)).collect();
    lots.sort_by(|one, other| one.0.total_cmp(&other.0));
    lots.into_iter().take(birds).map(|(_, weight)| weight).collect()
}
