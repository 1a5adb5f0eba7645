//! Published trials, as growth_tropical.csv hands them down: Animals 2019 9(3):107 table 2 (27.8 against 20 C from day 21 to
//! 35: gain -18, feed -12, FCR +7 percent) and Front. Physiol. 2021 12:707757 table 4 (35 C for 8 h a day from day 29: weight at
//! 42 d -13, feed -8.5, FCR +5 percent).

use crate::sample::{self, number};
use advice::plan::Plan;

fn at(mean_c: f64) -> Plan {
    let text = sample::complete();
    assert!(text.contains("mean_c = 26"));
    sample::plan(&text.replace("mean_c = 26", &format!("mean_c = {mean_c}")))
}

/// What the trial measured lies within the range of the plan at the trial's temperature, and is its far end.
#[test]
fn the_trial_lies_within_the_range() {
    let plan = at(27.8);
    for (id, lost) in [("growth.heat_lost", 18.0), ("feed.heat_lost", 12.0)] {
        let figure = plan.outcome.get(id).unwrap().figure;
        let band = figure.band.unwrap();
        assert!((band.high - lost).abs() < 0.5, "{id}: {band:?}");
        assert!(band.low < figure.value.number() && figure.value.number() < band.high, "{id}: {band:?}");
    }
}

/// Both trials: heat takes weight, less feed than weight, and raises the feed for a kilogram by some percent.
#[test]
fn heat_makes_no_batch_cheaper() {
    let plans = [20.0, 26.0, 30.0, 33.0].map(at);
    let each = |id: &str| plans.iter().map(|plan| number(plan, id)).collect::<Vec<f64>>();
    for id in ["space.weight_at_sale", "feed.total", "money.profit"] {
        assert!(each(id).windows(2).all(|pair| pair[0] > pair[1]), "{id}: {:?}", each(id));
    }
    for id in ["feed.conversion", "money.cost_per_kg"] {
        assert!(each(id).windows(2).all(|pair| pair[0] < pair[1]), "{id}: {:?}", each(id));
    }
    let conversion = each("feed.conversion");
    assert!((1.01..1.07).contains(&(conversion[2] / conversion[0])), "{conversion:?}");
    let said = |plan: &Plan| plan.findings.iter().any(|finding| finding.name == "slower-in-heat");
    assert_eq!(plans.each_ref().map(said), [false, true, true, true]);
}

/// Chicks want it warm, and a curve of hot houses has the heat in it.
#[test]
fn heat_is_taken_off_once_and_from_grown_birds() {
    let (cool, hot) = (at(20.0), at(33.0));
    let weight = |plan: &Plan, day| plan.outcome.on_day("growth.weight", day).unwrap();
    assert_eq!(weight(&cool, 21), weight(&hot, 21));
    assert!(weight(&cool, 22) > weight(&hot, 22));
    let open = |mean: &str| {
        let text = sample::complete().replace("standard = \"fast\"", "standard = \"open-house\"");
        number(&sample::plan(&text.replace("mean_c = 26", mean)), "space.weight_at_sale")
    };
    assert_eq!(open("mean_c = 20"), open("mean_c = 33"));
}
