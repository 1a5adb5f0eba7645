use super::Farm;

#[test]
fn without_a_book_the_way_to_one_is_told() {
    let farm = Farm::new("no-book");
    for line in ["walk", "history", "export", "check", "record deaths dead=3"] {
        assert!(farm.bad(line).contains("record plan FILE"), "{line}");
    }
}

#[test]
fn the_help_shows_lines_that_work() {
    let farm = Farm::begun("help");
    for command in ["record", "walk", "purchases", "history", "export", "import", "check"] {
        let help = farm.good(&format!("{command} --help"));
        assert!(help.contains("broodwright ") && !help.contains("[option"), "{help}");
    }
    farm.good("record deaths --day 2025-09-15 dead=3 culled=1");
    farm.good("record feed-given --day 2025-09-15 phase=starter feed_kg=42,5");
    farm.good("record weighing --day 2025-09-21 weights_g=\"150 165 148 162\"");
}

#[test]
fn what_a_kind_asks_is_told_without_a_book() {
    let farm = Farm::new("asks");
    let kinds = farm.good("record");
    assert!(kinds.contains("deaths") && kinds.contains("plan"), "{kinds}");
    let asks = farm.good("record water");
    assert!(asks.contains("water_l") && asks.contains("(needed)"), "{asks}");
}

#[test]
fn a_plan_is_adopted_once_and_changed_with_a_reason() {
    let farm = Farm::new("plan");
    let first = farm.good("record plan plan.toml");
    assert!(first.contains("House") && first.contains("Adopted plan"), "{first}");
    assert!(farm.good("record plan plan.toml").contains("says the same already"));
    let plan = farm.read("plan.toml");
    farm.write("more.toml", &plan.replace("chicks = 1600", "chicks = 1500"));
    // On the day of writing a change explains itself.
    farm.good("record plan more.toml --reason \"fewer booked\"");
    assert_eq!(farm.json("history plan-adopted --json")["entries"].as_array().unwrap().len(), 2);
}

/// A file may tell several houses, and its batch stands in one of them: a plan for the other house leaves the first one alone.
#[test]
fn a_plan_for_another_house_leaves_the_first_alone() {
    let farm = Farm::new("two-houses");
    let plan = farm.read("plan.toml");
    let at = plan.find("[house]").expect("the plan has a house");
    let both = |batch: &str, house: &str| {
        let second = "[[house]]\nname = \"Lower\"\nlength_m = 12\nwidth_m = 7\neave_height_m = 2.2\nridge_height_m = 3\nhalf_wall_m = 0.6\n";
        let rest = plan[at..].replacen("[house]\n", "[[house]]\nname = \"Upper\"\n", 1);
        let rest = rest.replacen("name = \"Long house\"\n", "", 1);
        let named = rest.replacen("[batch]\n", &format!("{second}[batch]\nhouse = \"{house}\"\n"), 1);
        format!("{}{}", &plan[..at], named.replace("September 2025", batch))
    };
    farm.write("upper.toml", &both("First", "Upper"));
    farm.write("lower.toml", &both("Second", "Lower").replace("chicks = 1600", "chicks = 400"));
    farm.good("record plan upper.toml");
    farm.good("record plan lower.toml");
    let house_of = |batch: &str| {
        let plans = farm.json(&format!("history plan-adopted --batch {batch} --json"));
        let of = &plans["entries"][0];
        (of["answers"]["house"]["value"].clone(), of["answers"]["house.length_m"]["value"].clone())
    };
    let (first, second) = (house_of("First"), house_of("Second"));
    assert!(first.0 != second.0 && first.1 == 18.0 && second.1 == 12.0, "{first:?} {second:?}");
    // The book keeps both, and neither was written over.
    let kept = farm.json("history house --batch First --json");
    let entries = kept["entries"].as_array().unwrap();
    let mut names: Vec<&str> =
        entries.iter().filter_map(|entry| entry["answers"]["house.name"]["value"].as_str()).collect();
    names.sort_unstable();
    assert_eq!(names, ["Lower", "Upper"]);
    // What stays with the farm is not made that of another without a word.
    farm.write(
        "other.toml",
        &both("Third", "Upper").replace("name = \"Mango Ridge\"", "name = \"Elsewhere\""),
    );
    let told = farm.bad("record plan other.toml");
    assert!(told.contains("Elsewhere") && told.contains("--sure"), "{told}");
}

#[test]
fn a_faulty_plan_is_told_by_field_with_the_way_out() {
    let farm = Farm::new("faulty-plan");
    let plan = farm.read("plan.toml");
    farm.write("bad.toml", &plan.replace("length_m = 18.0", "length_m = 1800").replace("chicks = 1600", ""));
    let told = farm.bad("record plan bad.toml");
    assert!(told.contains("house.length_m is 1800") && told.contains("Did you mean 18"), "{told}");
    assert!(told.contains("batch.chicks"), "{told}");
    farm.write("no.toml", "what is this");
    farm.bad("record plan no.toml");
    assert!(farm.bad("record plan nowhere.toml").contains("cannot be read"));
}

#[test]
fn feet_in_a_plan_file_stay_feet() {
    let farm = Farm::new("feet");
    let plan = farm.read("plan.toml");
    farm.write("feet.toml", &plan.replace("length_m = 18.0", "length_ft = 59"));
    farm.good("record plan feet.toml");
    farm.good("record chicks-placed --day 2025-09-14 counted=100");
    let entry = &farm.json("history house --json")["entries"][0]["answers"]["house.length_m"];
    assert_eq!((entry["typed"].as_str(), entry["value"].as_f64()), (Some("59 ft"), Some(17.9832)));
}

#[test]
fn a_unit_of_the_key_and_a_unit_behind_the_number_count() {
    let farm = Farm::begun("units");
    farm.good("record feed-delivered --day 2025-09-13 phase=starter bags=40 bag_kg=50");
    let told = farm.good("record feed-given --day 2025-09-15 phase=starter feed_lb=50");
    assert!(told.contains("22.6796 kg"), "{told}");
    assert!(told.contains("50 lb"), "{told}");
    farm.good("record feed-given --day 2025-09-16 phase=starter feed_kg=\"50 lb\"");
    let walk = farm.json("walk --on 2025-09-16 --json");
    assert_eq!(walk["written"][0]["answers"]["feed_kg"]["value"].as_f64(), Some(22.6796185));
}

#[test]
fn bad_and_absurd_answers_are_told_and_not_written() {
    let farm = Farm::begun("bad");
    let day = "--day 2025-09-15";
    assert!(farm.bad(&format!("record deaths {day} ded=3")).contains("Did you mean dead"));
    assert!(farm.bad(&format!("record deaths {day} dead=-1")).contains("outside 0 birds"));
    assert!(farm.bad(&format!("record deaths {day} dead=many")).contains("no number"));
    assert!(farm.bad(&format!("record deaths {day} dead=1 culled=1 small_weak=2")).contains("small_weak"));
    assert!(farm.bad(&format!("record deaths {day} dead")).contains("key=value"));
    assert!(farm.bad(&format!("record deaths {day} culled=1")).contains("needs dead"));
    assert!(farm.bad(&format!("record water {day} water_l=\"not known\"")).contains("without a word"));
    assert!(farm.bad(&format!("record look {day} spread=")).contains("without a word"));
    assert!(farm.bad(&format!("record deth {day} dead=1")).contains("Did you mean deaths"));
    assert!(farm.bad("record deaths --day 15.9.2025 dead=1").contains("YYYY-MM-DD"));
    assert!(farm.bad(&format!("record deaths {day} --batch October dead=1")).contains("September 2025"));
    farm.bad(&format!("record deaths {day} dead=3 dead=4"));
    farm.bad(&format!("record note {day} text=\"{}\"", "x".repeat(3000)));
}

#[test]
fn what_is_unlikely_is_asked_and_kept_when_it_is_sure() {
    let farm = Farm::begun("asks-first");
    let far = farm.bad("record deaths --day 2199-01-01 dead=1");
    assert!(far.contains("Is the date right?") && far.contains("--sure"), "{far}");
    assert!(farm.bad("record deaths --day 2025-09-01 dead=1").contains("before the chicks came"));
    assert!(farm.bad("record deaths --day 2025-09-15 dead=5000").contains("more than were alive"));
    assert!(
        farm.bad("record feed-given --day 2025-09-15 phase=starter feed_kg=900").contains("for each bird")
    );
    let hot = "record house-air --day 2025-09-15 warmest_c=45";
    assert!(farm.bad(hot).contains("--sure"));
    farm.good(&format!("{hot} --sure"));
    farm.good("record note --day 2025-09-15 text=rain");
    assert!(farm.bad("record note --day 2025-09-15 text=rain").contains("Did it happen twice?"));
    farm.good("record note --day 2025-09-15 text=rain --sure");
}

#[test]
fn what_stands_changes_with_a_reason_and_the_history_keeps_both() {
    let farm = Farm::begun("change");
    farm.good("record deaths --day 2025-09-15 dead=3 culled=1");
    assert!(farm.bad("record deaths --day 2025-09-15 dead=5").contains("--reason"));
    assert!(farm.bad("record deaths --day 2025-09-15 dead=5 --reason \"  \"").contains("--reason"));
    let written = farm.good("record deaths --day 2025-09-15 dead=5 --reason \"counted again\"");
    assert!(written.contains("Culled by hand: 1 bird"), "what is not said again stays: {written}");
    assert!(farm.good("record deaths --day 2025-09-15 dead=5").contains("says the same already"));
    let history = farm.good("history growing.lost");
    assert!(history.contains("because: counted again"), "{history}");
    let entries = farm.json("history deaths --day 2025-09-15 --json")["entries"].clone();
    let standing: Vec<&str> =
        entries.as_array().unwrap().iter().map(|entry| entry["standing"].as_str().unwrap()).collect();
    assert_eq!(standing, ["superseded", "counts"]);
    // A key with nothing behind it takes its answer away.
    farm.good("record deaths --day 2025-09-15 culled= --reason \"none was\"");
    let walk = farm.json("walk --on 2025-09-15 --json");
    assert_eq!(walk["figures"]["growing.lost"]["value"].as_f64(), Some(5.0));
}

#[test]
fn an_entry_is_put_right_and_taken_back_by_the_end_of_its_id() {
    let farm = Farm::begun("undo");
    let sale = "record sale --day 2025-10-24 birds=10 income=1500";
    let id = farm.json(&format!("{sale} --json"))["written"][0]["entry"].as_str().unwrap().to_owned();
    let end = &id[id.len() - 10..];
    assert!(farm.bad(&format!("record --correct {end} birds=12")).contains("--reason"));
    let right = farm.json(&format!("record --correct {end} birds=12 --reason recount --json"));
    let right = right["written"][0]["entry"].as_str().unwrap().to_owned();
    assert!(farm.bad(&format!("record --correct {end} birds=13 --reason x")).contains(&right));
    assert!(farm.bad(&format!("record deaths --correct {right} dead=1 --reason x")).contains("sale"));
    assert!(farm.bad(&format!("record --withdraw {right}")).contains("--reason"));
    assert!(farm.bad("record --withdraw 00000000 --reason x").contains("no entry"));
    let alive =
        |farm: &Farm| farm.json("walk --on 2025-10-24 --json")["figures"]["growing.alive"]["value"].as_f64();
    assert_eq!(alive(&farm), Some(1616.0));
    farm.good(&format!("record --withdraw {right} --reason \"another batch\""));
    assert_eq!(alive(&farm), Some(1628.0));
    assert_eq!(farm.json(&format!("history {end} --json"))["entries"].as_array().unwrap().len(), 3);
    assert!(farm.bad(&format!("record --withdraw {right} --reason again")).contains("already"));
}

#[test]
fn a_day_is_told_with_its_jobs_and_what_is_missing() {
    let farm = Farm::begun("walk");
    farm.good("record task-done --day 2025-09-14 task=feed-on-paper/0");
    farm.good("record deaths --day 2025-09-15 dead=3");
    let walk = farm.json("walk --on 2025-09-16 --json");
    let keys: Vec<&str> = walk.as_object().unwrap().keys().map(String::as_str).collect();
    let order = [
        "batch",
        "name",
        "day",
        "age_d",
        "is_placed",
        "is_closed",
        "jobs",
        "feeds",
        "call_at_deaths",
        "expected",
        "figures",
        "written",
        "unwritten",
        "rules_version",
    ];
    assert_eq!(keys, order);
    assert_eq!(walk["age_d"], 2);
    assert_eq!(walk["unwritten"][0]["kinds"], serde_json::json!(["feed-given", "water"]));
    let jobs = walk["jobs"].as_array().unwrap();
    assert!(jobs.iter().all(|job| !job["why"].as_str().unwrap().is_empty()));
    let first = farm.json("walk --on 2025-09-14 --json");
    let ticked =
        first["jobs"].as_array().unwrap().iter().find(|job| job["key"] == "feed-on-paper/0").unwrap();
    assert_eq!(ticked["done"]["day"], "2025-09-14");
    let figure = &walk["expected"]["walk.feed_expected"];
    assert_eq!((&figure["unit"], &figure["working"]), (&"kg".into(), &"walk.feed_expected".into()));
    assert!(farm.good("walk --on 2025-09-16").contains("Not written yet"));
    assert!(farm.bad("walk --on yesterday").contains("YYYY-MM-DD"));
    assert!(farm.bad("walk --batch Nobody").contains("September 2025"));
}

#[test]
fn what_to_buy_is_told_by_plan_and_by_batch() {
    let farm = Farm::begun("purchases");
    let by_plan = farm.json("purchases plan.toml --json");
    for key in ["figures", "purchases", "proven", "hangs_on", "findings"] {
        assert!(by_plan.get(key).is_some(), "{key}: {by_plan}");
    }
    assert!(farm.good("purchases plan.toml").contains("What to buy when"));
    let by_book = farm.json("purchases --on 2025-09-16 --json");
    let answered = !by_book["purchases"].as_array().unwrap().is_empty();
    assert!(answered || by_book["findings"][0]["name"].is_string(), "{by_book}");
    farm.bad("purchases plan.toml --on 2025-09-16");
}
