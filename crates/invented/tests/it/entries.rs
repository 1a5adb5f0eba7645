use std::collections::{BTreeMap, BTreeSet};

use advice::record;
use invented::{House, Line, Scenario, live, write_down};
use quantity::Source;

use crate::{first_of, unlucky};

fn written(scenario: &Scenario) -> Vec<Line> {
    write_down(scenario, &live(scenario))
}

/// Batches large and small, in every season, with and without mishaps.
fn scenarios() -> impl Iterator<Item = Scenario> {
    let chicks = [25, 100, 600, 1_600, 4_000];
    let quiet = (1..=12).map(move |month| {
        let scenario = Scenario::quiet(month as u64, first_of(month), chicks[month as usize % chicks.len()]);
        if month % 2 == 0 { Scenario { house: House::LOWER, ..scenario } } else { scenario }
    });
    quiet.chain((0..8).map(unlucky))
}

#[test]
fn everything_written_passes_the_checks_of_a_page() {
    let (mut lines, mut questions) = (0, Vec::new());
    for scenario in scenarios() {
        for line in written(&scenario) {
            let kind = record::kind(line.kind).unwrap_or_else(|| panic!("{} is a kind", line.kind));
            let checked = record::check(kind, &line.raws, Source::Hand);
            assert_eq!(checked.problems, [], "{line:?}");
            lines += 1;
            questions.extend(checked.questions.into_iter().map(|question| (question.key, question.value)));
        }
    }
    assert!(questions.len() * 500 < lines, "{lines} lines, {questions:?}");
}

#[test]
fn most_kinds_are_written() {
    let kinds: BTreeSet<&str> = written(&unlucky(1)).iter().map(|line| line.kind).collect();
    assert!(kinds.len() >= 26, "{kinds:?}");
}

#[test]
fn all_birds_are_accounted_for() {
    for scenario in scenarios() {
        let mut sums: BTreeMap<String, i64> = BTreeMap::new();
        for line in written(&scenario) {
            for raw in &line.raws {
                let number = raw.text[0].parse::<i64>().unwrap_or_default();
                *sums.entry(format!("{} {}", line.kind, raw.key)).or_default() += number;
            }
        }
        let of = |key: &str| sums.get(key).copied().unwrap_or_default();
        let came = of("chicks-placed counted") - of("chicks-placed dead_on_arrival");
        let gone = of("chicks-placed weak_culled") + of("deaths dead") + of("deaths culled");
        assert_eq!(came - gone - of("sale birds") - of("birds-out birds"), 0, "{sums:?}");
    }
}

#[test]
fn a_chick_is_placed_before_it_is_felt_and_nothing_is_written_before_it_happens() {
    for scenario in scenarios() {
        let lines = written(&scenario);
        assert!(lines.iter().all(|line| line.written >= line.day));
        assert!(lines.is_sorted_by_key(|line| (line.written, line.hour)));
        let at = |kind| lines.iter().position(|line| line.kind == kind).unwrap();
        assert!(at("chicks-placed") < at("deaths").min(at("crop-fill")) && at("sale") < at("batch-closed"));
    }
}
