//! A curtain set by hand: a few settings for a day that come as near as can be to what every hour asks.
//!
//! An exact dynamic programme over the hours at which somebody is awake. A setting too narrow by some share is as bad as one too
//! wide by the same share; where birds are too warm it is worse by [`TOO_WARM`].

/// Hours of a day.
pub const HOURS: usize = 24;

/// What an hour asks of the curtain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// How far open, in steps of the curtain (widths of a hand, marks); 0 or more.
    pub steps: f64,
    /// Whether it is for warmth that must go: then too narrow is worse than too wide.
    pub too_warm: bool,
    /// Whether somebody is awake to move it at the beginning of this hour.
    pub can_move: bool,
}

/// A setting that holds until the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// Hours after the first.
    pub from: usize,
    /// How far open, in steps.
    pub steps: f64,
}

/// How much worse too narrow is in heat than too wide in the cold (our judgement).
pub const TOO_WARM: f64 = 4.0;
/// What a move must better: about one hour at twice or half of what is asked (our judgement).
const WORTH_MOVING: f64 = 0.5;
/// A quarter of a step: what no hand can tell from nothing.
const UNSEEN: f64 = 0.25;

/// How far off a setting is in an hour: the square of the logarithm of one opening over the other.
fn off(steps: f64, wanted: Wanted) -> f64 {
    let apart = ((steps + UNSEEN) / (wanted.steps + UNSEEN)).ln();
    let worse = if wanted.too_warm && apart < 0.0 { TOO_WARM } else { 1.0 };
    worse * apart * apart
}

/// The settings for the hours from the first on, at most `most` of them, each one of `levels`. The first is made at the first
/// hour, whoever is awake. None without hours, levels or moves.
///
/// Proven best: no other choice of hours and levels is nearer by the measure above.
pub fn settings(wanted: &[Wanted], levels: &[f64], most: usize) -> Vec<Setting> {
    let hours = wanted.len();
    if hours == 0 || levels.is_empty() || most == 0 {
        return Vec::new();
    }
    // The nearest level for the hours from one to another, and how far off it is in all.
    let nearest = |from: usize, until: usize| {
        let all = |level: f64| wanted[from..until].iter().map(|&hour| off(level, hour)).sum::<f64>();
        let apart = levels.iter().map(|&level| (all(level), level));
        apart.min_by(|one, other| one.0.total_cmp(&other.0)).unwrap_or((f64::INFINITY, 0.0))
    };
    // By number of settings and hour that they reach: how far off at best, where the last begins, and its level.
    let mut best = vec![vec![(f64::INFINITY, 0, 0.0); hours + 1]; most + 1];
    best[0][0].0 = 0.0;
    for from in 0..hours {
        if from > 0 && !wanted[from].can_move {
            continue;
        }
        for until in from + 1..=hours {
            let (apart, level) = nearest(from, until);
            for count in 1..=most {
                let so_far = best[count - 1][from].0 + apart + if from > 0 { WORTH_MOVING } else { 0.0 };
                if so_far < best[count][until].0 {
                    best[count][until] = (so_far, from, level);
                }
            }
        }
    }
    let counts = (1..=most).min_by(|&one, &other| best[one][hours].0.total_cmp(&best[other][hours].0));
    let mut settings = Vec::new();
    let (mut count, mut until) = (counts.unwrap_or(0), hours);
    while count > 0 && until > 0 {
        let (_, from, steps) = best[count][until];
        settings.push(Setting { from, steps });
        (count, until) = (count - 1, from);
    }
    settings.reverse();
    // The same level twice is one setting.
    settings.dedup_by(|next, before| next.steps.to_bits() == before.steps.to_bits());
    settings
}

/// What settings come to hour by hour.
pub fn hour_by_hour(settings: &[Setting], hours: usize) -> Vec<f64> {
    let at =
        |hour: usize| settings.iter().rev().find(|setting| setting.from <= hour).map_or(0.0, |now| now.steps);
    (0..hours).map(at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const LEVELS: [f64; 5] = [0.5, 1.0, 2.0, 4.0, 8.0];

    fn day(steps: impl Fn(usize) -> f64, awake: impl Fn(usize) -> bool) -> Vec<Wanted> {
        (0..HOURS)
            .map(|hour| Wanted { steps: steps(hour), too_warm: steps(hour) > 3.0, can_move: awake(hour) })
            .collect()
    }

    fn cost(wanted: &[Wanted], settings: &[Setting]) -> f64 {
        let levels = hour_by_hour(settings, wanted.len());
        let apart: f64 = levels.iter().zip(wanted).map(|(&level, &hour)| off(level, hour)).sum();
        apart + WORTH_MOVING * (settings.len() - 1) as f64
    }

    #[test]
    fn a_day_of_three_parts_is_three_settings() {
        let wanted = day(
            |hour| {
                if hour < 8 {
                    1.0
                } else if hour < 15 {
                    8.0
                } else {
                    2.0
                }
            },
            |_| true,
        );
        let set = settings(&wanted, &LEVELS, 4);
        let told: Vec<(usize, f64)> = set.iter().map(|setting| (setting.from, setting.steps)).collect();
        assert_eq!(told, [(0, 1.0), (8, 8.0), (15, 2.0)]);
    }

    #[test]
    fn nobody_is_woken() {
        let wanted = day(|hour| if hour < 8 { 1.0 } else { 8.0 }, |hour| hour % 5 == 0);
        let set = settings(&wanted, &LEVELS, 4);
        assert!(set.iter().all(|setting| setting.from % 5 == 0), "{set:?}");
        // In warm hours rather too wide and early than too narrow and late.
        assert_eq!(set[1].from, 5, "{set:?}");
    }

    #[test]
    fn nothing_is_set_without_need() {
        assert_eq!(settings(&day(|_| 2.0, |_| true), &LEVELS, 4), [Setting { from: 0, steps: 2.0 }]);
        assert!(settings(&[], &LEVELS, 4).is_empty() && settings(&day(|_| 1.0, |_| true), &[], 4).is_empty());
    }

    /// Every choice of two moves and three levels of a short day, by brute force.
    #[test]
    fn no_other_choice_is_nearer() {
        let mut state = 9_u64;
        let mut draw = |most: u64| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) % most
        };
        for _ in 0..200 {
            let wanted: Vec<Wanted> = (0..9)
                .map(|_| Wanted {
                    steps: draw(90) as f64 / 10.0,
                    too_warm: draw(2) == 0,
                    can_move: draw(3) > 0,
                })
                .collect();
            let mut least = f64::INFINITY;
            for first in 1..=9 {
                for second in first..=9 {
                    if [first, second].iter().any(|&at| at < 9 && !wanted[at].can_move) {
                        continue;
                    }
                    for levels in 0..LEVELS.len().pow(3) {
                        let level = |place: u32| LEVELS[levels / LEVELS.len().pow(place) % LEVELS.len()];
                        let mut tried = vec![Setting { from: 0, steps: level(0) }];
                        if first < 9 {
                            tried.push(Setting { from: first, steps: level(1) });
                        }
                        if second < 9 && second > first {
                            tried.push(Setting { from: second, steps: level(2) });
                        }
                        least = least.min(cost(&wanted, &tried));
                    }
                }
            }
            let found = cost(&wanted, &settings(&wanted, &LEVELS, 3));
            assert!(found <= least + 1e-9, "{found}, {least} by trying all");
        }
    }
}
