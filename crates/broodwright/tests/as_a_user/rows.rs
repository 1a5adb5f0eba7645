use super::Farm;

/// The week of the manual.
const WEEK: &str = include_str!("../../../../docs/week.csv");

/// The same in the year of the tests' plan, with a heading and a remark.
fn week() -> String {
    format!("kind,day\n# The first week\n{}", WEEK.replace("2027", "2025"))
}

#[test]
fn a_week_is_written_at_once_and_once_only() {
    let farm = Farm::begun("week");
    farm.write("week.csv", &week());
    let told = farm.good("record --from week.csv");
    assert_eq!(told.matches("Written:").count(), 4, "{told}");
    let again = farm.good("record --from week.csv");
    assert!(again.contains("Of 4 the book says the same already"), "{again}");
    assert_eq!(again.matches("Written:").count(), 0);
    assert_eq!(
        farm.json("walk --on 2025-09-16 --json")["figures"]["growing.lost"]["value"].as_f64(),
        Some(6.0)
    );
}

#[test]
fn bad_lines_are_shown_and_nothing_is_written_unless_the_good_ones_are_asked_for() {
    let farm = Farm::begun("bad-lines");
    let more = "deaths,2025-09-31,dead=1\nwater,2025-09-16,water_l=lots\nmoon,2025-09-16,full=1\nnote\n";
    farm.write("week.csv", &format!("{}{more}", week()));
    let told = farm.bad("record --from week.csv");
    for line in ["line 7:", "line 8:", "line 9:", "line 10:"] {
        assert!(told.contains(line), "{line} in {told}");
    }
    let answer = farm.run("record --from week.csv --good-only");
    assert_eq!((answer.code, answer.out.matches("Written:").count()), (0, 4), "{}", answer.err);
    assert!(answer.err.contains("line 9:"), "{}", answer.err);
}

#[test]
fn each_row_is_judged_by_the_days_before_it() {
    let farm = Farm::begun("judged");
    farm.write("week.csv", "deaths,2025-09-16,dead=700\ndeaths,2025-09-15,dead=1000\n");
    let told = farm.bad("record --from week.csv");
    assert!(told.contains("line 1: 700 birds") && !told.contains("line 2:"), "{told}");
    farm.good("record --from week.csv --sure");
    farm.write("week.csv", "deaths,2025-09-15,dead=10\n");
    assert!(farm.bad("record --from week.csv").contains("--reason"));
    farm.good("record --from week.csv --reason \"a slip\"");
}

#[test]
fn plain_rows_of_json_are_taken_too() {
    let farm = Farm::begun("json-rows");
    let rows = "{\"kind\":\"weighing\",\"day\":\"2025-09-21\",\"weights_g\":[150,160,\"170 g\"]}\n";
    farm.write("rows.jsonl", rows);
    farm.good("record --from rows.jsonl");
    let doubled = farm.bad("record --from rows.jsonl");
    assert!(doubled.contains("Did it happen twice?"), "{doubled}");
    farm.write("rows.jsonl", "{\"kind\":\"deaths\",\"day\":7,\"dead\":{}}\n{]\n");
    assert!(farm.bad("record --from rows.jsonl").contains("line 2:"));
}

#[test]
fn files_of_anything_are_refused() {
    let farm = Farm::begun("anything");
    farm.write("a", "\u{0}\u{1}\u{2}");
    farm.bad("record --from a");
    farm.bad("record --from nowhere.csv");
    farm.write("empty", "");
    farm.good("record --from empty");
}
