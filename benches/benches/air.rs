//! The air of a house: 56 days, and a thousand perturbed ones on all cores.

use std::hint::black_box;
use std::thread;

use criterion::{Criterion, criterion_group, criterion_main};
use model::air::ensemble::Perturbation;
use model::air::litter_water::Intake;
use model::air::{Flock, Fuel, Hour, House, Management, run};

const MEMBERS: usize = 1000;

fn house() -> House {
    House {
        length_m: 15.0,
        width_m: 8.0,
        mean_height_m: 2.8,
        walls_w_per_k: 179.8,
        curtain_w_per_k: 283.2,
        roof_w_per_k: 254.4,
        roof_absorptance: 0.7,
        roof_is_wet: false,
        roof_emittance: 0.9,
        perimeter_w_per_k: 57.96,
        ground_w_per_k: 48.0,
        ground_c: 20.0,
        opening_m2: 18.0,
        opening_height_m: 0.8,
        wind_effectiveness: 0.5,
        leakage_per_h: 1.5,
        mass_j_per_k: 15e6,
        mass_w_per_k: 720.0,
        litter_dry_kg: 600.0,
        litter_water_kg: 100.0,
        altitude_m: 1000.0,
        latitude_deg: -13.6,
        zone: None,
    }
}

fn weather() -> Vec<Hour> {
    let sun = |hour: usize| (std::f64::consts::PI * (hour as f64 - 6.0) / 12.0).sin().max(0.0);
    let hour = |at: usize| Hour {
        outside_c: 13.0 + 13.0 * sun(at % 24) + (at / 24 % 7) as f64 / 2.0,
        humidity: 0.75 - 0.35 * sun(at % 24),
        wind_m_s: 0.5 + 2.0 * sun(at % 24),
        sun_w_per_m2: 850.0 * sun(at % 24),
        pressure_pa: None,
    };
    (0..24 * 56).map(hour).collect()
}

fn benchmarks(criterion: &mut Criterion) {
    let (house, weather) = (house(), weather());
    let day = |age: usize| (age as f64, 0.042 + 0.0014 * (age as f64).powf(1.9));
    let flock = Flock {
        birds: 800.0,
        mass_kg: (0..57).map(|age| day(age).1).collect(),
        intake: (0..57)
            .map(|age| Intake {
                feed_kg: 0.01 + 0.003 * day(age).0,
                water_kg: 0.02 + 0.006 * day(age).0,
                gain_kg: 0.05,
            })
            .collect(),
        heat_factor: 1.1,
        to_litter: 0.3,
        activity: 0.08,
        stillest_h: 2.0,
    };
    let management = Management {
        first_day: 0,
        first_hour: 0,
        preheat_hours: 0.0,
        target_c: (0..57).map(|age| (33.0 - 0.4 * day(age).0).max(20.0)).collect(),
        band_k: 1.0,
        humidity_most: 0.7,
        co2_most_ppm: 3000.0,
        minimum_m3_h: 0.5,
        heater_kw: 15.0,
        fuel: Fuel::named("lpg").unwrap().unwrap(),
        opening_least_m2: 0.0,
        opening_most_m2: 18.0,
        held_m2: None,
    };
    let mut group = criterion.benchmark_group("air");
    group.sample_size(10);
    group.bench_function("56 days of a house", |bench| {
        bench.iter(|| black_box(run(&house, &flock, &management, &weather).unwrap()));
    });
    group.bench_function("1000 of them, perturbed, on all cores", |bench| {
        bench.iter(|| {
            let cores = thread::available_parallelism().map_or(1, usize::from);
            let member = |at: usize| {
                let spread = |by: usize| ((at * (2 * by + 3)) % 17) as f64 / 8.0 - 1.0;
                Perturbation::at([0, 1, 2, 3, 4, 5].map(spread))
                    .run(&house, &flock, &management, &weather)
                    .unwrap()
            };
            let member = &member;
            thread::scope(|scope| {
                for core in 0..cores {
                    scope.spawn(move || {
                        (core..MEMBERS).step_by(cores).for_each(|at| drop(black_box(member(at))))
                    });
                }
            });
        });
    });
    group.finish();
}

criterion_group!(benches, benchmarks);
criterion_main!(benches);
