use super::Farm;

const BIRDS: &str = "weight_g,spot\n1820,door\n1950,door\n2010,door\n2080,middle\n1760,middle\n2150,middle\n1990,end\n1900,end\n2240,end\n";

#[test]
fn a_file_of_weights_is_told_with_its_ranges() {
    let farm = Farm::new("weigh");
    farm.write("weights.csv", BIRDS);
    let told = farm.good("weigh weights.csv --day 42 --birds 1500");
    for said in ["1\u{a0}989 g", "19 times in 20", "Weigh about", "expected", "3 spots"] {
        assert!(told.contains(said), "{said}: {told}");
    }
    let json = farm.json("weigh weights.csv --json --expected 2050");
    for name in ["weighing.mean", "weighing.cv", "weighing.uniformity"] {
        let figure = &json["figures"][name];
        assert!(figure["low"].as_f64() < figure["high"].as_f64(), "{figure}");
    }
    assert_eq!(json["figures"]["weighing.n"]["value"], 9.0);
    assert_eq!(json["figures"]["weighing.target"]["value"], 2050.0);
    farm.good("weigh weights.csv --pdf slip.pdf");
}

#[test]
fn bad_lines_are_told_with_line_and_column() {
    let farm = Farm::new("weigh-bad");
    farm.write("weights.csv", "weight_g\n1820\nheavy\n19800\n");
    let told = farm.bad("weigh weights.csv");
    assert!(
        told.contains("line 3: weight_g is “heavy”") && told.contains("line 4: weight_g is 19800"),
        "{told}"
    );
    assert!(told.contains("Did you mean"), "{told}");
    farm.write("weights.csv", BIRDS);
    assert!(farm.bad("weigh weights.csv --expected heavy").contains("expected is “heavy”"));
    farm.write("more.csv", &format!("{BIRDS}2010,end\n1930,end\n"));
    let told = farm.bad("weigh more.csv --birds 10");
    assert!(told.contains("11 birds were weighed") && told.contains("10 birds are alive"), "{told}");
    assert!(farm.bad("weigh nowhere.csv").contains("cannot be read"));
}
