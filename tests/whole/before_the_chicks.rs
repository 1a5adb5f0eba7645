//! What a plan says before the chicks come, held to what it says elsewhere.

use crate::sample;
use advice::finding::Weight;
use advice::plan::Plan;

fn named<'a>(plan: &'a Plan, name: &str) -> Option<&'a advice::finding::Finding> {
    plan.findings.iter().find(|finding| finding.name == name)
}

/// Without a word about money at hand the plan counts from nothing: it says what is wanted, and does not keep still.
#[test]
fn money_not_told_is_asked_for() {
    let told = sample::complete();
    let at = told.find("at_start").expect("the sample tells its money");
    let line = told[at..].lines().next().unwrap();
    let silent = sample::plan(&told.replace(line, ""));
    assert!(named(&silent, "cash-short").is_none());
    assert_eq!(named(&silent, "cash-not-told").unwrap().weight, Weight::Look);
    let poor = sample::plan(&told.replace(line, "at_start = 1"));
    assert_eq!(named(&poor, "cash-short").unwrap().weight, Weight::Problem);
    let rich = sample::plan(&told.replace(line, "at_start = 100000000"));
    assert!(named(&rich, "cash-short").is_none() && named(&rich, "cash-not-told").is_none());
}
