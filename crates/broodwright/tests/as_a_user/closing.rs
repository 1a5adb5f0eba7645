use serde_json::Value;

use super::{Farm, with_the_demo};

/// Cents an entry moves, by its bare lines: no code of the program reads them here.
fn cents(entry: &Value) -> i64 {
    let number = |key: &str| entry["body"][key]["value"].as_f64();
    let amount = match entry["kind"].as_str().unwrap() {
        "sale" | "litter-sold" => number("income").unwrap(),
        "chicks-placed" | "purchase" | "cost" => -number("cost").unwrap(),
        "feed-delivered" => -number("bags").unwrap() * number("price_each").unwrap(),
        _ => 0.0,
    };
    (amount * 100.0).round() as i64
}

/// The four batches that are over close to the cent: profit is what their entries add up to, and the causes make up the
/// whole difference from the adopted plan.
#[test]
fn the_past_batches_of_the_demo_close_to_the_cent() {
    let farm = with_the_demo("closing-demo");
    let entries: Vec<Value> =
        farm.read("demo.jsonl").lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    for name in ["November 2026", "January 2027", "March 2027", "June 2027"] {
        let closed = farm.json(&format!("closing --batch \"{name}\" --on 2027-10-08 --json"));
        let batch = closed["batch"].as_str().unwrap();
        let own = entries.iter().filter(|entry| entry["subject"]["batch"] == batch);
        let of_entries: i64 = own.map(cents).sum();
        let figure = |id: &str| (closed["figures"][id]["value"].as_f64().unwrap() * 100.0).round() as i64;
        assert_eq!(figure("closing.profit"), of_entries, "{name}");
        assert_eq!((figure("closing.owed"), figure("closing.owing")), (0, 0), "{name}");
        let causes = closed["causes"].as_array().unwrap();
        let of_causes: f64 = causes.iter().map(|cause| cause["amount"].as_f64().unwrap()).sum();
        let text = farm.good(&format!("closing --batch \"{name}\" --on 2027-10-08"));
        let way = if of_causes < 0.0 { "less than planned" } else { "more than planned" };
        assert!(causes.len() > 10 && text.contains(way), "{of_causes}: {text}");
    }
}

#[test]
fn a_batch_on_its_way_has_no_profit_yet_and_says_why() {
    let farm = Farm::begun("closing-early");
    let text = farm.good("closing");
    assert!(text.contains("not known yet") && text.contains("once a sale"), "{text}");
    assert_eq!(farm.json("closing --json")["causes"].as_array().unwrap().len(), 0);
    farm.bad("closing --batch nonsense");
    farm.bad("closing --on yesterday-or-so");
}

/// Whoever looks from years away, or slips by a digit, gets an answer as fast as any.
#[test]
fn a_day_far_away_is_answered() {
    let farm = with_the_demo("closing-far");
    for command in ["walk", "watch", "closing", "outlook", "purchases"] {
        for day in ["9999-12-31", "1700-01-01"] {
            farm.good(&format!("{command} --batch \"September 2027\" --on {day}"));
        }
    }
    let over = farm.good("purchases --batch \"June 2027\" --on 2027-10-08");
    assert!(over.contains("Nothing more needs to be bought"), "{over}");
}
