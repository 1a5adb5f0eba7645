//! Quick sums: good, bad and absurd input, and the words of their answers.

use advice::sums::{Sum, SumResult, by_name};
use present::{Locale, Viewer, fault, html, sum as shown, text};
use quantity::Raw;

use crate::words::{visible, words_in};

/// Sums with all that they ask, in numbers of our own.
const FULL: &[(&str, &[(&str, &str)])] = &[
    (
        "space",
        &[
            ("length_m", "18"),
            ("width_m", "9"),
            ("weight_kg", "2.1"),
            ("limit_kg_m2", "20"),
            ("chicks", "1600"),
        ],
    ),
    (
        "litter",
        &[("length_m", "18"), ("width_m", "9"), ("depth_cm", "7"), ("bag_l", "120"), ("bag_price", "22.75")],
    ),
    ("dilution", &[("ratio", "1:20"), ("tank_l", "10"), ("poured_ml", "800")]),
    ("sample-size", &[("cv_percent", "9.5"), ("error_percent", "2.5"), ("birds", "1540"), ("weighed", "60")]),
    ("uniformity", &[("weights", "1810 1955 2015 2085 1745 2155; 1985, 1905\n2235 2065 2100 1990 205 1940")]),
    ("uniformity", &[("cv_percent", "13.5")]),
    (
        "index",
        &[
            ("livability", "94.2"),
            ("weight_kg", "1.93"),
            ("age_d", "41.5"),
            ("fcr", "1.79"),
            ("chick_g", "41"),
        ],
    ),
    (
        "feed-conversion",
        &[
            ("feed_kg", "5230"),
            ("live_kg", "2895"),
            ("dead_kg", "61"),
            ("chick_kg", "65"),
            ("weight_g", "1640"),
        ],
    ),
    (
        "break-even",
        &[
            ("cost_total", "46200"),
            ("live_kg", "2895"),
            ("price_per_kg", "15.5"),
            ("birds_sold", "1490"),
            ("chicks", "1600"),
            ("feed_kg", "5230"),
            ("feed_price_per_kg", "5.1"),
        ],
    ),
    (
        "vaccine-water",
        &[("birds", "1560"), ("age_d", "14"), ("measured_2h_l", "33"), ("doses_per_vial", "500")],
    ),
    (
        "dose",
        &[
            ("birds", "1545"),
            ("weight_kg", "1.1"),
            ("drunk_l", "310"),
            ("dose_mg_per_kg", "9"),
            ("strength_mg_per_ml", "120"),
            ("label_ml_per_l", "0.4"),
            ("days_d", "5"),
            ("pack_ml", "250"),
            ("yesterday_c", "30.1"),
            ("tomorrow_c", "33.1"),
        ],
    ),
    ("dose", &[("birds", "1545"), ("weight_kg", "1.1"), ("product_ml_per_kg", "0.08")]),
    ("dose", &[("birds", "1545"), ("weight_kg", "1.1"), ("drunk_l", "310"), ("label_ml_per_l", "0.4")]),
    ("dose", &[("birds", "1545"), ("weight_kg", "1.1")]),
    (
        "dose-powder",
        &[
            ("birds", "1545"),
            ("weight_kg", "1.1"),
            ("drunk_l", "310"),
            ("dose_mg_per_kg", "9"),
            ("strength_mg_per_g", "50"),
            ("label_g_per_l", "3"),
            ("days_d", "5"),
            ("pack_g", "100"),
        ],
    ),
    (
        "dose-powder",
        &[("birds", "1545"), ("weight_kg", "1.1"), ("product_g_per_kg", "0.2"), ("pack_g", "90")],
    ),
    ("withdrawal", &[("last", "2027-10-12"), ("hour_h", "17"), ("days_d", "5")]),
    ("daylength", &[("latitude_deg", "-13.6"), ("date", "2027-09-14")]),
    ("moist-air", &[("dry_bulb_c", "31.5"), ("humidity_percent", "62"), ("altitude_m", "1050")]),
    (
        "heat-index",
        &[
            ("dry_bulb_c", "32"),
            ("humidity_percent", "90"),
            ("age_d", "38"),
            ("speed_m_per_s", "0.4"),
            ("altitude_m", "480"),
        ],
    ),
    (
        "ring-heat",
        &[
            ("chicks", "380"),
            ("diameter_m", "3.4"),
            ("top", "open"),
            ("house_c", "19"),
            ("height_m", "0.5"),
            ("age_d", "2"),
            ("humidity_percent", "55"),
            ("brooder_kw", "2.2"),
        ],
    ),
    ("ring-heat", &[("chicks", "380"), ("diameter_m", "3.4"), ("top", "covered"), ("house_c", "19")]),
    (
        "fuel",
        &[("heat_kw", "5.5"), ("hours_h", "210"), ("fuel", "lpg"), ("cylinder_kg", "13"), ("sack_kg", "45")],
    ),
    ("fuel", &[("heat_kw", "5.5"), ("hours_h", "210"), ("fuel", "charcoal"), ("sack_kg", "45")]),
    ("fuel", &[("heat_kw", "5.5"), ("hours_h", "210"), ("fuel", "electricity")]),
    (
        "cylinder-life",
        &[
            ("cylinder_kg", "13"),
            ("burner_kw", "2.9"),
            ("burners", "3"),
            ("cylinders", "4"),
            ("joined", "2"),
            ("hours_per_day_h", "13"),
            ("coldest_night_c", "11"),
            ("gas", "mixed"),
        ],
    ),
    (
        "drying",
        &[
            ("dry_bulb_c", "26"),
            ("humidity_percent", "58"),
            ("water_ml_per_m2", "320"),
            ("speed_m_per_s", "0.6"),
            ("altitude_m", "1050"),
            ("depth_cm", "7"),
            ("kind", "wood-shavings"),
            ("litter_from_percent", "24"),
            ("litter_to_percent", "14"),
        ],
    ),
];

/// What people and programs type that is no answer, or none that can be.
const ABSURD: &[&str] = &[
    "0",
    "-1",
    "1e9",
    "1000000000",
    "99999999999999999999",
    "many",
    "NaN",
    "inf",
    "-",
    ",",
    ";;",
    "1,600",
    "1.2.3",
    "½",
    "0.0000001",
    "12 kg",
    "3 bananas",
    "2027-02-30",
    "1 2 3",
    "1,2,3,4,5",
    "💩",
];

fn work_out(sum: &Sum, typed: &[(&str, &str)]) -> SumResult {
    let raw = |(key, text): &(&str, &str)| Raw {
        key: (*key).to_owned(),
        text: vec![(*text).to_owned()],
        line: None,
    };
    sum.work_out(&typed.iter().map(raw).collect::<Vec<_>>(), true)
}

fn faults(name: &str, typed: &[(&str, &str)]) -> Vec<String> {
    let result = work_out(by_name(name).expect(name), typed);
    result.checked.problems.iter().map(|problem| fault::with_place(problem, &Viewer::plain())).collect()
}

#[test]
fn a_full_sum_answers_every_figure_it_can() {
    for (name, typed) in FULL {
        let result = work_out(by_name(name).expect(name), typed);
        assert!(result.checked.problems.is_empty(), "{name}: {:?}", result.checked.problems);
        assert!(result.outcome.figures().next().is_some(), "{name} answers nothing");
    }
}

/// Whatever is typed into one box, there is a fault that names it or every figure is a number; never a panic.
#[test]
fn absurd_input_gets_a_fault_or_a_number() {
    for (name, typed) in FULL {
        let sum = by_name(name).expect(name);
        for at in 0..typed.len() {
            for absurd in ABSURD {
                let mut moved = typed.to_vec();
                moved[at].1 = absurd;
                let result = work_out(sum, &moved);
                let figures: Vec<f64> =
                    result.outcome.figures().map(|worked| worked.figure.value.number()).collect();
                assert!(figures.iter().all(|figure| figure.is_finite()), "{name} {moved:?}: {figures:?}");
                assert!(
                    result.checked.problems.is_empty() != figures.is_empty(),
                    "{name} {moved:?}: {figures:?} beside {:?}",
                    result.checked.problems
                );
                for problem in &result.checked.problems {
                    let sentence = fault::with_place(problem, &Viewer::plain());
                    assert!(sentence.contains(&problem.key) && !sentence.contains("{$"), "{sentence}");
                }
                text::write(&shown::document(sum, &result, &Viewer::plain()), &Viewer::plain(), true);
            }
        }
    }
}

#[test]
fn a_fault_says_what_to_do() {
    let flock = [("cv_percent", "10"), ("error_percent", "2")];
    let sold = [("cost_total", "15810"), ("live_kg", "980")];
    for (name, typed, wanted) in [
        (
            "uniformity",
            vec![("weights", "1950")],
            "weights holds 1 number; at least 2 are needed. One alone cannot tell",
        ),
        (
            "uniformity",
            vec![("weights", "1950 1.98 2010")],
            "weights: number 2 is “1.98”. Each must be a number from 20 g to 10\u{a0}000 g.",
        ),
        ("uniformity", vec![("weights", "1950 heavy")], "weights: number 2 is “heavy”."),
        (
            "uniformity",
            vec![("weights", "1950 2010"), ("cv_percent", "9")],
            "cv_percent says the same as weights. Keep one",
        ),
        ("uniformity", vec![("weights", " ")], "weights is missing."),
        ("uniformity", vec![("cv_percent", "0")], "cv_percent is 0, outside 0.5 % to 60 %."),
        (
            "sample-size",
            [&flock[..], &[("birds", "50"), ("weighed", "60")]].concat(),
            "weighed is 60, but the flock has 50 birds. It can be 2 birds to 50 birds.",
        ),
        (
            "index",
            vec![("livability", "95"), ("weight_kg", "2"), ("age_d", "0"), ("fcr", "1.8")],
            "age_d is 0, outside 1 day to 120 days.",
        ),
        (
            "feed-conversion",
            vec![("feed_kg", "100"), ("live_kg", "0")],
            "live_kg is 0, outside 0.1 kg to 1\u{a0}000\u{a0}000 kg.",
        ),
        (
            "feed-conversion",
            vec![("feed_kg", "100"), ("live_kg", "60"), ("dead_kg", "1"), ("chick_kg", "65")],
            "chick_kg is 65, but only 60 kg was sold.",
        ),
        (
            "break-even",
            [&sold[..], &[("price_per_kg", "0")]].concat(),
            "price_per_kg is 0, outside 0.01 to 1\u{a0}000\u{a0}000\u{a0}000.",
        ),
        (
            "break-even",
            [&sold[..], &[("birds_sold", "0")]].concat(),
            "birds_sold is 0, outside 1 bird to 100\u{a0}000 birds.",
        ),
        (
            "break-even",
            [&sold[..], &[("birds_sold", "20000")]].concat(),
            "birds_sold is 20000, but then a bird would be too light or too heavy to be true. For the weight sold it can be 98 birds to 9\u{a0}800 birds.",
        ),
        (
            "break-even",
            [&sold[..], &[("birds_sold", "500"), ("chicks", "400")]].concat(),
            "birds_sold is 500, but only 400 birds were placed.",
        ),
        (
            "break-even",
            [&sold[..], &[("feed_kg", "1800"), ("feed_price_per_kg", "260")]].concat(),
            "feed_price_per_kg is 260; at that price the feed alone costs 468\u{a0}000, more than all costs together. It can be at most 8.78",
        ),
        ("vaccine-water", vec![("birds", "1000"), ("age_d", "0")], "age_d is 0, outside 1 day to 84 days."),
        ("dose", vec![("birds", "1000"), ("weight_kg", "0")], "weight_kg is 0, outside 0.03 kg to 8 kg."),
        (
            "dose",
            treated(&[("dose_mg_per_kg", "20"), ("product_ml_per_kg", "0.1")]),
            "product_ml_per_kg says the same as dose_mg_per_kg. Keep one",
        ),
        ("dose", treated(&[("strength_mg_per_ml", "40 kg")]), "strength_mg_per_ml is “40 kg”"),
        ("withdrawal", vec![("days_d", "7")], "last is missing."),
        ("withdrawal", vec![("last", "2027-10-12"), ("hour_h", "25")], "hour_h is 25, outside 0 h to 24 h."),
        (
            "withdrawal",
            vec![("last", "2027-10-12"), ("days_d", "-1")],
            "days_d is -1, outside 0 days to 365 days.",
        ),
        (
            "moist-air",
            vec![("dry_bulb_c", "25"), ("humidity_percent", "0.65")],
            "humidity_percent is 0.65, outside 1 % to 100 %.",
        ),
        (
            "moist-air",
            vec![("dry_bulb_c", "25"), ("humidity_percent", "104")],
            "humidity_percent is 104, outside",
        ),
        ("moist-air", vec![("humidity_percent", "60")], "dry_bulb_c is missing."),
        (
            "heat-index",
            vec![("dry_bulb_c", "95"), ("humidity_percent", "60"), ("age_d", "30")],
            "dry_bulb_c is 95, outside −40 °C to 60 °C.",
        ),
        ("heat-index", vec![("dry_bulb_c", "30"), ("age_d", "30")], "humidity_percent is missing."),
        (
            "ring-heat",
            vec![("chicks", "300"), ("diameter_m", "0"), ("top", "open"), ("house_c", "18")],
            "diameter_m is 0, outside 0.3 m to 20 m.",
        ),
        (
            "ring-heat",
            vec![("chicks", "300"), ("diameter_m", "3"), ("top", "lid"), ("house_c", "18")],
            "top is “lid”",
        ),
        ("fuel", vec![("heat_kw", "5"), ("hours_h", "10"), ("fuel", "dung")], "fuel is “dung”"),
        (
            "cylinder-life",
            vec![("cylinder_kg", "13"), ("burner_kw", "0")],
            "burner_kw is 0, outside 0.05 kW to 100 kW.",
        ),
        (
            "cylinder-life",
            vec![("cylinder_kg", "13"), ("burner_kw", "2"), ("cylinders", "2"), ("joined", "3")],
            "joined is 3, but only 2 are full.",
        ),
        (
            "drying",
            vec![("dry_bulb_c", "25"), ("humidity_percent", "60"), ("water_ml_per_m2", "-5")],
            "water_ml_per_m2 is -5, outside",
        ),
        (
            "daylength",
            vec![("latitude_deg", "-13.6"), ("date", "14/09/2027")],
            "date is “14/09/2027”. Write the day as year-month-day",
        ),
    ] {
        let said = faults(name, &typed);
        assert_eq!(said.len(), 1, "{name}: {said:?}");
        assert!(said[0].starts_with(wanted), "{name}:\n  {}\n  {wanted}", said[0]);
    }
}

/// A thousand kilograms of birds, and what else was typed.
fn treated<'a>(also: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    [&[("birds", "1000"), ("weight_kg", "1")], also].concat()
}

/// Air, dampness and age.
fn hot<'a>(air: &'a str, damp: &'a str, age: &'a str) -> Vec<(&'a str, &'a str)> {
    vec![("dry_bulb_c", air), ("humidity_percent", damp), ("age_d", age)]
}

#[test]
fn a_sum_says_what_its_numbers_are_worth() {
    for (name, typed, finding) in [
        ("sample-size", vec![("cv_percent", "6"), ("error_percent", "5")], "sample-below-thirty"),
        ("sample-size", vec![("cv_percent", "10"), ("error_percent", "2")], "weigh-all-penned"),
        ("uniformity", vec![("weights", "1900 1950 2000 2050 2100")], "few-weighed"),
        ("uniformity", vec![("weights", "1900 1950 2000 2050 2100 9000")], "odd-weights"),
        ("uniformity", vec![("weights", "1900 1950 2000 2050 2100 1980 2020 5000 5200")], "many-odd-weights"),
        ("uniformity", vec![("cv_percent", "14")], "uneven"),
        ("uniformity", vec![("cv_percent", "9")], "cv-scale"),
        ("feed-conversion", vec![("feed_kg", "36"), ("live_kg", "980")], "fcr-hardly-possible"),
        (
            "feed-conversion",
            vec![("feed_kg", "1788"), ("live_kg", "980"), ("dead_kg", "12")],
            "gain-needs-both",
        ),
        (
            "feed-conversion",
            vec![("feed_kg", "1788"), ("live_kg", "980"), ("weight_g", "2050")],
            "correction-misleads",
        ),
        ("vaccine-water", vec![("birds", "1000"), ("age_d", "14")], "vaccine-measure-two-hours"),
        ("vaccine-water", vec![("birds", "1000"), ("age_d", "14")], "vaccine-day-count"),
        ("dose", treated(&[]), "medicine-label-wanted"),
        ("dose", treated(&[("product_ml_per_kg", "0.1")]), "medicine-one-line-only"),
        ("dose", treated(&[("product_ml_per_kg", "0.1")]), "medicine-water-wanted"),
        (
            "dose",
            treated(&[("product_ml_per_kg", "0.1"), ("drunk_l", "100"), ("label_ml_per_l", "1.3")]),
            "medicine-water-gives-more",
        ),
        (
            "dose",
            treated(&[("product_ml_per_kg", "0.1"), ("drunk_l", "100"), ("label_ml_per_l", "0.8")]),
            "medicine-water-gives-less",
        ),
        (
            "dose",
            treated(&[("product_ml_per_kg", "0.1"), ("yesterday_c", "30.1"), ("tomorrow_c", "33.1")]),
            "medicine-hotter-day",
        ),
        (
            "dose-powder",
            treated(&[("product_g_per_kg", "0.1"), ("pack_g", "80")]),
            "medicine-part-of-a-sachet",
        ),
        // 32 °C and 90 %: by the index alone "act"; the wet bulb, 30.6 °C, is an emergency.
        ("heat-index", hot("32", "90", "40"), "heat-step-4"),
        ("heat-index", hot("22", "50", "40"), "heat-step-0"),
        ("heat-index", hot("33", "55", "0"), "heat-step-0"),
        ("heat-index", hot("33", "55", "0"), "index-of-other-birds"),
        ("heat-index", hot("39", "20", "40"), "fan-blows-hot-air"),
        (
            "heat-index",
            [&hot("33", "55", "40")[..], &[("speed_m_per_s", "3")]].concat(),
            "speed-not-measured",
        ),
        (
            "cylinder-life",
            vec![("cylinder_kg", "13"), ("burner_kw", "8"), ("coldest_night_c", "8")],
            "cylinder-freezes",
        ),
        (
            "cylinder-life",
            vec![("cylinder_kg", "13"), ("burner_kw", "2"), ("coldest_night_c", "0"), ("gas", "butane")],
            "butane-in-the-cold",
        ),
        (
            "ring-heat",
            vec![("chicks", "300"), ("diameter_m", "3"), ("top", "open"), ("house_c", "18")],
            "cover-saves",
        ),
        (
            "drying",
            vec![("dry_bulb_c", "22"), ("humidity_percent", "98"), ("water_ml_per_m2", "300")],
            "air-too-damp-to-dry",
        ),
        ("withdrawal", vec![("last", "2027-10-12"), ("hour_h", "9")], "withdrawal-unknown"),
        ("withdrawal", vec![("last", "2027-10-12"), ("days_d", "not known")], "withdrawal-unknown"),
        ("withdrawal", vec![("last", "2027-10-12"), ("days_d", "4")], "withdrawal-hour-not-told"),
        (
            "break-even",
            vec![
                ("cost_total", "9000"),
                ("live_kg", "100"),
                ("price_per_kg", "17"),
                ("feed_kg", "200"),
                ("feed_price_per_kg", "5"),
            ],
            "nothing-left-for-feed",
        ),
    ] {
        let result = work_out(by_name(name).expect(name), &typed);
        let names: Vec<&str> = result.findings.iter().map(|finding| finding.name).collect();
        assert!(names.contains(&finding), "{name}: {finding} is not among {names:?}");
    }
    // Without reason, silence.
    for (weights, silent) in
        [("1900 1950 2000 2050 2100", "odd-weights"), ("1900 1950 2000 2050 2100 205", "uneven")]
    {
        let result = work_out(by_name("uniformity").unwrap(), &[("weights", weights)]);
        assert!(result.findings.iter().all(|finding| finding.name != silent), "{silent} at {weights}");
    }
}

/// No amount leads an answer that is refused, and none stands in it.
#[test]
fn a_refused_dose_names_no_amount() {
    let typed = treated(&[("product_ml_per_kg", "0.1"), ("drunk_l", "190"), ("label_ml_per_l", "1.3")]);
    let sum = by_name("dose").unwrap();
    let result = work_out(sum, &[&typed[..], &[("days_d", "3"), ("pack_ml", "100")]].concat());
    let page = text::write(&shown::document(sum, &result, &Viewer::plain()), &Viewer::plain(), false);
    assert!(page.contains("No amount is given.") && page.contains("Ask your veterinarian"), "{page}");
    for amount in ["100.0", "247.0", " mL a day"] {
        assert!(!page.contains(amount), "{amount} shows: {page}");
    }
}

/// A withdrawal that nobody knows has no day to sell on.
#[test]
fn an_unknown_withdrawal_names_no_day() {
    let sum = by_name("withdrawal").unwrap();
    let result = work_out(sum, &[("last", "2027-10-12"), ("hour_h", "9")]);
    assert_eq!(result.outcome.figures().count(), 0);
    let page = text::write(&shown::document(sum, &result, &Viewer::plain()), &Viewer::plain(), false);
    assert!(page.contains("Blocked") && !page.contains("2027"), "{page}");
}

#[test]
fn the_working_of_a_list_shows_the_birds() {
    let sum = by_name("uniformity").unwrap();
    let many = "1900 2100 ".repeat(20);
    let result = work_out(sum, &[("weights", &many)]);
    let page = text::write(&shown::document(sum, &result, &Viewer::plain()), &Viewer::plain(), true);
    assert!(page.contains("40 weights") && page.contains("and 10 more"), "{page}");
    let json = present::view::sum(&result, &Viewer::plain(), true);
    assert_eq!(json.workings["weighing.cv"].inputs[0].list.len(), 40);
}

/// No key in brackets, no word that no message said.
#[test]
fn every_word_of_an_answer_is_a_message() {
    let works = reference::bibliography::works().unwrap();
    let titles: Vec<String> = works
        .iter()
        .flat_map(|work| [&work.authors, &work.title, &work.published].map(|text| words_in(text)))
        .flatten()
        .collect();
    for (name, typed) in FULL {
        let sum = by_name(name).expect(name);
        let result = work_out(sum, typed);
        let plain = text::write(&shown::document(sum, &result, &Viewer::plain()), &Viewer::plain(), true);
        assert!(!plain.contains('[') && !plain.contains("{$"), "{name}: {plain}");
        let viewer = Viewer { locale: Locale::PseudoLong, ..Viewer::plain() };
        let page = html::blocks(&shown::document(sum, &result, &viewer), &viewer).into_string();
        let left: Vec<String> =
            words_in(&visible(&page)).into_iter().filter(|word| !titles.contains(word)).collect();
        assert!(left.is_empty(), "{name}: words that are no message: {left:?}");
    }
}

#[test]
fn money_can_be_hidden_in_a_sum() {
    let (name, typed) = FULL.iter().find(|(name, _)| *name == "break-even").unwrap();
    let sum = by_name(name).unwrap();
    let result = work_out(sum, typed);
    let viewer = Viewer { money_shown: false, ..Viewer::plain() };
    let page = text::write(&shown::document(sum, &result, &viewer), &viewer, true);
    for amount in ["46\u{a0}200", "46200", "15.5", "15.96", "1\u{a0}327.5", "5.1 "] {
        assert!(!page.contains(amount), "{amount} shows: {page}");
    }
    assert!(
        !present::view::sum(&result, &viewer, false).figures.contains_key("performance.break_even_price")
    );
}
