//! Rules of authorities on what to report: Elbers et al. 2007 (0.5 % two days running), Gonzales et al. (0.17 % in a day),
//! France 2023 (water or feed down by more than a quarter), Directive 2007/43/EC (ceiling of all losses, from memory).
//! Status: published as quoted, but for the ceiling.

use model::triggers::{self, BatchDay, Call, TRIGGERS};

use super::near;

fn of_thousand(dead: u32, water_l: Option<f64>) -> BatchDay {
    BatchDay {
        age_d: 25,
        birds: 1000,
        dead: Some(dead),
        sudden: None,
        normal_dead: None,
        water_l,
        feed_kg: None,
        hottest_c: None,
    }
}

fn sources(days: &[BatchDay]) -> Vec<(&'static str, Call)> {
    triggers::holding(days).map(|trigger| (trigger.source, trigger.call)).collect()
}

#[test]
fn five_dead_of_a_thousand_on_two_days_are_to_report() {
    let days = [of_thousand(5, None); 2];
    assert_eq!(sources(&days), [("gonzales-hpai", Call::Note), ("elbers-2007", Call::Act)]);
    assert_eq!(sources(&days[1..]), [("gonzales-hpai", Call::Note)], "one day alone");
}

#[test]
fn two_dead_of_a_thousand_are_to_watch() {
    assert_eq!(sources(&[of_thousand(2, None)]), [("gonzales-hpai", Call::Note)]);
    assert_eq!(sources(&[of_thousand(1, None)]), []);
}

#[test]
fn water_down_by_26_percent_is_to_report() {
    assert_eq!(
        sources(&[of_thousand(0, Some(200.0)), of_thousand(0, Some(148.0))]),
        [("france-2023", Call::Act)]
    );
    assert_eq!(sources(&[of_thousand(0, Some(200.0)), of_thousand(0, Some(151.0))]), []);
}

#[test]
fn the_ceiling_of_all_losses_at_42_days_is_3_52_percent() {
    near(triggers::creeping_limit(42.0), 0.0352, 1e-12);
}

#[test]
fn every_rule_has_its_source() {
    for trigger in TRIGGERS {
        assert!(reference::bibliography::work(trigger.source).is_ok(), "{}", trigger.source);
    }
}
