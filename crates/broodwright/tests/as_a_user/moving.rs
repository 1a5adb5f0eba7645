use super::Farm;

/// A book with corrections, a withdrawal and much of what can be written.
fn filled(name: &str) -> Farm {
    let farm = Farm::begun(name);
    farm.good("record feed-delivered --day 2025-09-12 phase=starter bags=30 bag_kg=50");
    farm.good("record deaths --day 2025-09-15 dead=3 culled=1");
    farm.good("record deaths --day 2025-09-15 dead=5 --reason \"counted again\"");
    farm.good("record feed-given --day 2025-09-15 phase=starter feed_kg=20");
    farm.good("record water --day 2025-09-16 water_l=60");
    farm.good("record weighing --day 2025-09-16 weights_g=\"60 58 63\"");
    let note = farm.json("record note --day 2025-09-16 text=wrong --json");
    let note = note["written"][0]["entry"].as_str().unwrap().to_owned();
    farm.good(&format!("record --withdraw {note} --reason \"another house\""));
    farm
}

/// The lines in another order, some of them twice.
fn shuffled(lines: &str) -> String {
    let mut lines: Vec<&str> = lines.lines().collect();
    lines.sort_by_key(|line| line.bytes().map(u64::from).fold(7, |sum, byte| (sum * 31 + byte) % 1009));
    let doubled: Vec<&str> = lines.iter().step_by(2).chain(&lines).copied().collect();
    doubled.join("\n") + "\n"
}

#[test]
fn an_export_shuffled_doubled_and_taken_in_again_gives_the_same_day() {
    let farm = filled("export");
    farm.good("export all.jsonl");
    assert_eq!(farm.read("all.jsonl"), farm.good("export"), "a file and standard output say the same");
    let other = shuffled(&farm.read("all.jsonl"));
    assert_ne!(other, farm.read("all.jsonl"));
    farm.write("other.jsonl", &other);
    farm.good("import other.jsonl --book new.book");
    assert!(farm.good("import other.jsonl --book new.book").contains("Taken in: 0"));
    for line in ["walk --on 2025-09-16 --json", "walk --on 2025-09-15", "history --json", "export"] {
        assert_eq!(farm.good(line), farm.good(&format!("{line} --book new.book")), "{line}");
    }
    // The new book goes on under a device of its own.
    farm.good("record deaths --day 2025-09-16 dead=1 --book new.book");
    farm.good("export more.jsonl --book new.book");
    assert!(farm.good("import more.jsonl").contains("Taken in: 1"));
    assert_eq!(
        farm.good("walk --on 2025-09-16 --json"),
        farm.good("walk --on 2025-09-16 --json --book new.book")
    );
}

#[test]
fn damage_is_told_and_the_good_lines_can_be_taken() {
    let farm = filled("damage");
    assert!(farm.good("check").contains("To look at: 0"));
    farm.good("export all.jsonl");
    assert!(farm.good("check all.jsonl").contains("To look at: 0"));
    assert!(farm.good("check farm.book").contains("To look at: 0"));
    let all = farm.read("all.jsonl");
    farm.write("half.jsonl", &all[..all.len() - 100]);
    let half = farm.run("check half.jsonl");
    assert_eq!(half.code, 1, "{}", half.out);
    assert!(half.out.contains("is no entry of a book"), "{}", half.out);
    assert!(farm.bad("import half.jsonl --book half.book").contains("Nothing was taken in"));
    farm.good("import half.jsonl --book half.book --good-only");
    // A digit changed by hand breaks the chain of the series.
    farm.write("forged.jsonl", &all.replace("\"typed\":\"5\",\"value\":5", "\"typed\":\"4\",\"value\":4"));
    let forged = farm.run("check forged.jsonl");
    assert_eq!(forged.code, 1);
    assert!(forged.out.contains("does not follow from the one before it"), "{}", forged.out);
    let clash = farm.run("import forged.jsonl");
    assert_eq!(clash.code, 1, "{}", clash.out);
    assert!(clash.err.contains("broodwright check"), "{}", clash.err);
    assert_eq!(farm.run("check").code, 1, "both are kept and told");
}

#[test]
fn a_book_takes_in_no_other_farm_and_no_other_file() {
    let farm = filled("other-farm");
    farm.good("record plan plan.toml --book second.book");
    farm.good("export second.jsonl --book second.book");
    assert!(farm.bad("import second.jsonl").contains("another farm"));
    assert!(farm.bad("import plan.toml").contains("Line 1 is no entry"));
    farm.write("empty", "");
    assert!(farm.bad("import empty").contains("no entry"));
    assert!(farm.bad("walk --book plan.toml").contains("is no book"));
    assert_eq!(farm.run("export nowhere/all.jsonl").code, 1);
}

#[test]
fn what_does_not_hold_together_is_told() {
    let farm = Farm::begun("unheld");
    farm.good("record sale --day 2025-10-24 birds=1700 income=100 --sure");
    let told = farm.run("check");
    assert_eq!(told.code, 1);
    assert!(told.out.contains("72 too many"), "{}", told.out);
}

#[test]
fn a_history_of_nothing_and_of_no_such_thing() {
    let farm = filled("history");
    assert!(farm.good("history sale").contains("Nothing was written"));
    assert!(farm.bad("history growing.moon").contains("no entry, kind, key or figure"));
    assert!(farm.bad("history 0123456789").contains("no entry"));
    let house = farm.good("history house.length_m");
    assert!(house.contains("18 m") || house.contains("18.0 m"), "{house}");
    assert!(farm.good("history walk.feed_expected").contains("Adopted plan"));
}
