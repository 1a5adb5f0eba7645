//! A night and a day of a house: the curtain, the heat, and what helps against it.

use advice::air::Band;
use advice::air::day::{Answered, Help, answer};
use quantity::Raw;

use crate::sample;

fn asked(plan: &str, pairs: &[(&str, &str)]) -> Answered {
    let raw = |(key, text): &(&str, &str)| Raw {
        key: (*key).to_owned(),
        text: vec![(*text).to_owned()],
        line: None,
    };
    answer(&sample::answers(plan), None, pairs.iter().map(raw).collect())
}

fn day(pairs: &[(&str, &str)]) -> advice::air::day::AirDay {
    let answered = asked(&sample::complete(), pairs);
    answered.outcome.drawn().air_day().unwrap_or_else(|| panic!("{:?}", answered.cannot)).clone()
}

/// Four settings at the most, none of them made in the night, and the house by them within a few degrees of the house whose
/// curtain is moved every hour.
#[test]
fn a_helper_sets_the_curtain_four_times_at_the_most() {
    for age in ["0", "10", "24", "40"] {
        let day = day(&[("age_d", age), ("coldest_c", "12"), ("warmest_c", "30")]);
        assert!((1..=4).contains(&day.settings.len()), "{:?}", day.settings);
        assert_eq!(day.settings[0].hour, 16);
        assert!(day.settings[1..].iter().all(|set| (5..=21).contains(&set.hour)), "{:?}", day.settings);
        assert!(day.settings.iter().all(|set| set.marks > 0.0 && set.marks <= day.most_marks));
        let by_hand = day.by_hand.as_ref().unwrap();
        assert_eq!(by_hand.hours.len(), 24);
        assert!(by_hand.residual < 1e-9, "{}", by_hand.residual);
        assert!(by_hand.warmest_c() < day.as_it_is.warmest_c() + 3.0, "day {age}: {}", by_hand.warmest_c());
        // What is set is what is held.
        for hour in &by_hand.hours {
            let held =
                day.settings.iter().rev().find(|set| (set.hour + 8) % 24 <= (hour.house.hour + 8) % 24);
            let held = held.unwrap().marks * day.mark_m2;
            assert!((hour.house.opening_m2 - held).abs() < 1e-6, "{held}: {:?}", hour.house);
        }
    }
}

/// A cold night is closed and a hot afternoon is open; both more so than a mild one.
#[test]
fn cold_closes_and_heat_opens() {
    let cold = day(&[("age_d", "30"), ("coldest_c", "4"), ("warmest_c", "16"), ("sky", "overcast")]);
    let hot = day(&[("age_d", "30"), ("coldest_c", "24"), ("warmest_c", "37"), ("wind", "still")]);
    let widest =
        |day: &advice::air::day::AirDay| day.settings.iter().map(|set| set.marks).fold(0.0, f64::max);
    assert!(widest(&cold) < 0.4 * cold.most_marks, "{:?}", cold.settings);
    assert_eq!(widest(&hot), hot.most_marks, "{:?}", hot.settings);
    assert_eq!(cold.likely().hours_at_least(Band::Alert), 0.0);
    assert!(hot.likely().hours_at_least(Band::Danger) > 3.0);
    let (low, high) = hot.likely().feed_left_percent().unwrap();
    assert!(1.0 < low && low < high && high < 60.0, "{low} to {high}");
}

/// Nothing that helps makes the day worse, and what is asked for together helps as its parts do.
#[test]
fn what_helps_helps() {
    let plan = sample::complete().replace("ceiling = \"mat\"", "ceiling = \"none\"");
    let weather = [("age_d", "38"), ("coldest_c", "23"), ("warmest_c", "33"), ("wind", "still")];
    let answered = asked(&plan, &weather);
    let day = answered.outcome.drawn().air_day().unwrap();
    let with = |help: Help| &day.helps.iter().find(|one| one.0 == help).unwrap().1;
    for help in Help::ALL {
        assert!(with(help).heat_index_c() <= day.as_it_is.heat_index_c() + 1e-9, "{help:?}");
    }
    assert!(with(Help::Shade).warmest_c() < day.as_it_is.warmest_c() - 0.1);
    assert!(with(Help::WetRoof).warmest_c() < with(Help::Shade).warmest_c());
    assert!(with(Help::Fan).heat_index_c() < day.as_it_is.heat_index_c() - 0.3);
    let all = [&weather[..], &[("roof", "wet"), ("fan", "yes"), ("fewer_birds_percent", "25")]].concat();
    let all = asked(&plan, &all);
    let all = all.outcome.drawn().air_day().unwrap();
    assert!(all.changed.as_ref().unwrap().heat_index_c() < with(Help::Fan).heat_index_c());
    assert_eq!(day.changed, None);
}

/// What cannot be is said with its field, its value and what may be; what is not told, by its name.
#[test]
fn what_cannot_be_is_said() {
    let why = |pairs: &[(&str, &str)]| {
        present::air_day::why_not(&asked(&sample::complete(), pairs), &present::Viewer::plain())
            .unwrap_or_default()
    };
    assert!(why(&[("coldest_c", "30"), ("warmest_c", "12")]).contains("cooler than the coldest"));
    assert!(why(&[("age_d", "400")]).contains("84"), "{}", why(&[("age_d", "400")]));
    assert!(why(&[("wind", "gale")]).contains("gale"));
    assert_eq!(why(&[]), "");
    let untold = sample::without_hours();
    let silent = asked(&untold, &[]);
    assert!(silent.outcome.figures().next().is_none());
    let why = present::air_day::why_not(&silent, &present::Viewer::plain()).unwrap();
    assert!(why.contains("hottest"), "{why}");
    // Unless it is typed.
    assert!(asked(&untold, &[("warmest_c", "33")]).outcome.drawn().air_day().is_some());
}

/// In whatever unit it is typed; and the plan's own coldest and hottest where nothing is.
#[test]
fn the_plans_own_days_stand_in() {
    let own = day(&[]);
    assert_eq!((own.weather.coldest_c, own.weather.warmest_c), (11.0, 35.0));
    let typed = day(&[("coldest_f", "53.6")]);
    assert!((typed.weather.coldest_c - 12.0).abs() < 1e-9);
}
