//! Bad input: each a clear error that names key, value, range and line.

use advice::{plan, plan_file};
use present::{Locale, Viewer, Words, fault};
use quantity::Source;

use crate::sample::{self, MANGO_RIDGE, complete};

fn faults(text: &str) -> Vec<String> {
    match plan_file::read(text) {
        Err(error) => vec![fault::file(&error, Words::of(Locale::English))],
        Ok(raws) => {
            let checked = plan::read(&raws, Source::File, true);
            checked.problems.iter().map(|problem| fault::with_place(problem, &Viewer::plain())).collect()
        }
    }
}

/// The one fault of the plan with a line changed, less the place, which must be that line (the last of several).
fn one(from: &str, to: &str) -> String {
    let at = MANGO_RIDGE.find(from).unwrap_or_else(|| panic!("{from}"));
    let text = MANGO_RIDGE.replacen(from, to, 1);
    let faulty = at + to.rfind(" = ").unwrap_or_default();
    let line = text[..faulty].matches('\n').count() + 1;
    let faults = faults(&text);
    assert_eq!(faults.len(), 1, "{faults:?}");
    let place = format!("line {line}: ");
    faults[0].strip_prefix(&place).unwrap_or_else(|| panic!("{} is not at {place}", faults[0])).to_owned()
}

#[test]
fn each_names_key_value_range_and_line() {
    for (from, to, wanted) in [
        ("ratio = \"1:400\"", "ratio = \"1:0\"", "disinfectant.ratio is 1:0, outside 1 to 10\u{a0}000."),
        (
            "overlap_m = 0.10",
            "overlap_m = 2.5",
            "guard.overlap_m is 2.5, but a sheet of 2.44 m leaves room for 0 m to 2.39 m.",
        ),
        (
            "width_m = 9.0",
            "width_m = 3.5",
            "house.width_m is 3.5, but one ring is 3.7242 m across. Put fewer chicks in a ring (guard.chicks_per_ring), or the house must be at least 3.7242 m.",
        ),
        (
            "latitude_deg = -13.6",
            "latitude_deg = 95",
            "farm.latitude_deg is 95, outside −90° to 90°. Did you mean 9.5?",
        ),
        (
            "[feed]",
            "[prices]\nsheet_each = -180\n[feed]",
            "prices.sheet_each is -180, outside 0 to 1\u{a0}000\u{a0}000\u{a0}000.",
        ),
        ("length_m = 18.0", "length_m = 18,0", "house.length_m is “18,0”. In a file, write a point: 18.0."),
        (
            "length_m = 18.0",
            "length_m = \"18,0\"",
            "house.length_m is “18,0”. In a file, write a point: 18.0.",
        ),
        (
            "ridge_height_m",
            "rigde_height_m",
            "house.rigde_height_m is not a key of a plan. Did you mean house.ridge_height_m?",
        ),
        (
            "standard = \"fast\"",
            "standard = \"quick\"",
            "batch.standard is “quick”. It can be: fast, open-house, slow, own.",
        ),
        (
            "placement = 2027-09-14",
            "placement = \"14/09/2027\"",
            "batch.placement is “14/09/2027”. Write the day as year-month-day, like 2027-09-14.",
        ),
        ("chicks = 1600", "chicks = 16.5", "batch.chicks is 16.5; only whole ones can be counted."),
        (
            "sale_age_d = 42",
            "sale_age_d = 70",
            "batch.sale_age_d is 70, but the weight curve goes from 0 days to 56 days. Sell within it, or type the weight at sale (batch.sale_weight_kg).",
        ),
        (
            "sprayer_l = 10",
            "sprayer_l = \"10 kg\"",
            "disinfectant.sprayer_l is “10 kg”, whose unit does not fit. Use L, or leave the unit out.",
        ),
        (
            "width_m = 9.0",
            "width_m = 9.0\nwidth_ft = 29.5",
            "house.width_ft says the same as house.width_m. Keep one of them.",
        ),
        (
            "half_wall_m = 0.6",
            "half_wall_m = 2.6",
            "house.half_wall_m is 2.6, but the eave is at 2.4 m. It can be 0 m to 2.4 m.",
        ),
        (
            "currency = \"XTS\"",
            "currency = \"dollars\"",
            "farm.currency is “dollars”. Write three capital letters.",
        ),
        (
            "chicks = 1600",
            "chicks = 1,600",
            "batch.chicks is “1,600”, which can be read two ways. Type 1.600 or 1600.",
        ),
        (
            "ratio = \"1:400\"",
            "ratio = \"1:1,000\"",
            "disinfectant.ratio is “1:1,000”, which can be read two ways. Type 1.000 or 1000.",
        ),
        (
            "length_m = 18.0",
            "length_ft = 5900",
            "house.length_ft is 5900, outside 3.2808 ft to 984.252 ft. Did you mean 590?",
        ),
        (
            "surfaces = [\"floor\", \"walls\", \"ceiling\"]",
            "surfaces = []",
            "disinfectant.surfaces is “”. It can be: floor,",
        ),
        ("chicks = 1600", "chicks = inf", "batch.chicks is “inf”, which is no number."),
        ("chicks = 1600", "chicks = true", "batch.chicks is “true”, which is no number."),
        ("bag_kg = 50", "bag_kg = = 50", "this is not TOML: "),
    ] {
        let said = one(from, to);
        assert!(said.starts_with(wanted), "{from} to {to}:\n  {said}\n  {wanted}");
    }
}

#[test]
fn a_missing_table_is_named_once() {
    for table in ["farm", "house", "batch", "guard", "disinfectant", "litter"] {
        let parts = MANGO_RIDGE.split("\n[").filter(|part| !part.starts_with(&format!("{table}]")));
        let said = faults(&parts.collect::<Vec<_>>().join("\n["));
        assert_eq!(said.len(), 1, "{table}: {said:?}");
        let wanted = if table == "farm" { "farm.latitude_deg is missing" } else { "] is missing. It needs" };
        assert!(said[0].contains(wanted), "{said:?}");
        assert!(said[0].contains(table), "{said:?}");
    }
}

#[test]
fn all_faults_come_at_once() {
    let text = MANGO_RIDGE.replace("= 42", "= 420").replace("= 95", "= 1").replace("= 18.0", "= 0.01");
    assert_eq!(faults(&text).len(), 2);
}

#[test]
fn not_known_leaves_out_what_hangs_on_it() {
    let plan =
        crate::sample::plan(&MANGO_RIDGE.replace("sheet_length_m = 2.44", "sheet_length_m = \"not known\""));
    assert!(plan.outcome.get("guard.sheets").is_none());
    assert!(plan.outcome.get("disinfectant.product_per_load").is_some());
}

/// Garbage of many kinds: always an answer, never a panic.
#[test]
fn absurd_files_never_panic() {
    let base = complete();
    for cut in (0..base.len()).step_by(7) {
        if base.is_char_boundary(cut) {
            faults(&base[..cut]);
        }
    }
    for line in base.lines().filter_map(|line| line.split_once(" = ")) {
        for value in [
            "0",
            "-1",
            "1e308",
            "nan",
            "\"\"",
            "[]",
            "[1]",
            "{}",
            "1979-05-27",
            "07:32:00",
            "\"1:1\"",
            "99999999999999999999",
            "0x10",
            "'''\n'''",
        ] {
            let text = base.replace(&format!("{} = {}", line.0, line.1), &format!("{} = {value}", line.0));
            if let Ok(raws) = plan_file::read(&text) {
                let checked = plan::read(&raws, Source::File, true);
                if checked.problems.is_empty() {
                    plan::work_out(checked.answers);
                }
            }
        }
    }
}

/// A key that is no longer asked is read from old files, changes nothing, and is kindly said.
#[test]
fn a_time_zone_in_an_old_file_is_read() {
    let bare = sample::plan(&sample::complete());
    let told = sample::complete().replace("[farm]\n", "[farm]\ntime_zone = \"Etc/GMT-3\"\n");
    let told = sample::plan(&told);
    let has = |plan: &advice::plan::Plan| {
        plan.findings.iter().any(|finding| finding.name == "time-zone-not-needed")
    };
    assert!(has(&told) && !has(&bare));
    let figures = |plan: &advice::plan::Plan| {
        plan.outcome.figures().map(|worked| format!("{:?}", worked.figure)).collect::<Vec<_>>()
    };
    assert_eq!(figures(&told), figures(&bare));
}
