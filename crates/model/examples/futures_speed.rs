//! Plays a batch through over and over, and prints how often, and what the futures say, as JSON: `benches/peers/futures.py`
//! runs it beside a peer, counts the processor's time of both, and prints the ratio. Build it for speed.

use model::outlook::filter::{Law, State};
use model::outlook::futures::{Day, Future, Now, Prices, run};
use model::outlook::hazard::Hazard;
use model::outlook::spread::Spread;
use model::risk;

const COUNT: u32 = 10_000;
const DAYS: i32 = 28;
const RUNS: u32 = 50;

/// The batch that the peer plays through too.
fn now() -> Now {
    let day = |ahead: i32| Day {
        standard_g: 500.0 + 62.0 * f64::from(ahead),
        feed_g: 75.0 + 4.0 * f64::from(ahead),
        lost_share: 0.0008,
        feed: 0,
        water_l_a_kg: Some(1.8),
    };
    Now {
        state: State {
            level: -0.03,
            slope: -0.000_5,
            level_variance: 4e-4,
            covariance: 0.0,
            slope_variance: 1e-6,
        },
        law: Law { damping: 0.95, level_noise: 1e-4, slope_noise: 1e-8 },
        alive: 1_600.0,
        hazard: Hazard { shape: 12.0, rate: 12.0 },
        appetite: (0.0, 0.04),
        appetite_ahead: 0.08,
        thirst: (0.0, 0.1),
        spread: Spread::before(),
        too_hot_c: 2.0,
        store_kg: [6_000.0, 0.0, 0.0, 0.0],
        unfed: None,
        first_day: 15,
        days: (1..=DAYS).map(day).collect(),
        prices: Some(Prices { feed_kg: 12.0, live_kg: 60.0 }),
    }
}

fn main() {
    let now = now();
    let mut futures: Vec<Future> = Vec::new();
    for _ in 0..RUNS {
        futures = run(1, COUNT, &now);
    }
    let said = |read: fn(&Future) -> f64| {
        let column: Vec<f64> = futures.iter().map(read).collect();
        risk::summary(&column).map_or([f64::NAN; 3], |all| [all.p50, all.p05, all.p95])
    };
    println!(
        "{{\"runs\": {RUNS}, \"weight_g\": {:?}, \"birds\": {:?}, \"left_kg\": {:?}, \"worth\": {:?}}}",
        said(|future| future.days[DAYS as usize - 1].weight_g),
        said(|future| future.days[DAYS as usize - 1].birds),
        said(|future| future.days[DAYS as usize - 1].all_left_kg()),
        said(worth),
    );
}

/// What the birds are worth on the last day.
fn worth(future: &Future) -> f64 {
    let (Some(last), Some(prices)) = (future.days.last(), future.prices) else { return f64::NAN };
    last.birds * last.weight_g / 1000.0 * prices.live_kg
}
