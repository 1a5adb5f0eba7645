//! Where a quick sum belongs, and invented numbers to try it with.

/// The questions quick sums are sorted under: the message of each.
pub const GROUPS: [&str; 3] = ["sums-before", "sums-growing", "sums-selling"];

/// The question that a sum belongs to; what is not named here is asked before the chicks come.
pub fn group(sum: &str) -> &'static str {
    match sum {
        "vaccine-water" | "dose" | "dose-powder" | "withdrawal" | "sample-size" | "uniformity"
        | "daylength" => "sums-growing",
        "index" | "feed-conversion" | "break-even" => "sums-selling",
        _ => "sums-before",
    }
}

/// Invented numbers for a sum, by the keys it asks under; empty for a sum that has none.
pub fn example(sum: &str) -> &'static [(&'static str, &'static str)] {
    EXAMPLES.iter().find(|(name, _)| *name == sum).map_or(&[], |(_, pairs)| pairs)
}

type Example = (&'static str, &'static [(&'static str, &'static str)]);

const EXAMPLES: &[Example] = &[
    (
        "space",
        &[
            ("length_m", "15"),
            ("width_m", "8"),
            ("weight_kg", "2.0"),
            ("limit_kg_m2", "17"),
            ("chicks", "1000"),
        ],
    ),
    (
        "ring",
        &[
            ("chicks", "1000"),
            ("chicks_per_m2", "40"),
            ("sheet_length_m", "2.44"),
            ("overlap_m", "0.1"),
            ("chicks_per_ring", "350"),
            ("brooder", "gas-hover"),
            ("strips_per_sheet", "2"),
        ],
    ),
    (
        "brooding",
        &[
            ("length_m", "15"),
            ("width_m", "8"),
            ("eave_height_m", "2.3"),
            ("ridge_height_m", "3.4"),
            ("half_wall_m", "0.6"),
            ("coldest_night_c", "14"),
            ("chicks", "1000"),
            ("heated_length_m", "7.5"),
            ("brooder", "gas-hover"),
            ("brooders", "3"),
            ("cylinder_kg", "13"),
        ],
    ),
    ("dilution", &[("ratio", "1:200"), ("tank_l", "16"), ("measure_ml", "20")]),
    (
        "litter",
        &[("length_m", "15"), ("width_m", "8"), ("depth_cm", "6"), ("bag_l", "100"), ("kind", "rice-husk")],
    ),
    ("feed", &[("chicks", "1000"), ("sale_age_d", "40"), ("bag_kg", "50")]),
    ("water", &[("chicks", "1000"), ("sale_age_d", "40"), ("hottest_day_c", "33"), ("storage_l", "1000")]),
    ("daylength", &[("latitude_deg", "-13.6"), ("date", "2027-09-14")]),
    ("vaccine-water", &[("birds", "980"), ("age_d", "14"), ("doses_per_vial", "500")]),
    (
        "dose",
        &[
            ("birds", "970"),
            ("weight_kg", "0.9"),
            ("drunk_l", "170"),
            ("dose_mg_per_kg", "12"),
            ("strength_mg_per_ml", "150"),
            ("label_ml_per_l", "0.4"),
            ("days_d", "4"),
            ("pack_ml", "100"),
        ],
    ),
    (
        "dose-powder",
        &[
            ("birds", "970"),
            ("weight_kg", "0.9"),
            ("drunk_l", "170"),
            ("dose_mg_per_kg", "12"),
            ("strength_mg_per_g", "60"),
            ("label_g_per_l", "1"),
            ("days_d", "4"),
            ("pack_g", "50"),
        ],
    ),
    ("withdrawal", &[("last", "2027-10-05"), ("hour_h", "17"), ("days_d", "6")]),
    ("sample-size", &[("cv_percent", "10"), ("error_percent", "3"), ("birds", "980")]),
    (
        "uniformity",
        &[(
            "weights",
            "1820 1950 2010 2080 1760 2150 1990 1900 2240 2060 1880 1970 2120 1690 2030 1940 2310 2000 1850 2050",
        )],
    ),
    ("index", &[("livability", "95"), ("weight_kg", "1.9"), ("age_d", "40"), ("fcr", "1.8")]),
    ("feed-conversion", &[("feed_kg", "3350"), ("live_kg", "1840"), ("dead_kg", "32")]),
    (
        "break-even",
        &[("cost_total", "31500"), ("live_kg", "1840"), ("price_per_kg", "19.5"), ("birds_sold", "960")],
    ),
];

#[cfg(test)]
mod tests {
    use advice::families;
    use quantity::Raw;

    use super::*;

    #[test]
    fn every_example_is_answered_without_a_fault() {
        for (name, pairs) in EXAMPLES {
            let sum = advice::sums::by_name(name).unwrap();
            let raw = |(key, text): &(&str, &str)| Raw {
                key: (*key).to_owned(),
                text: vec![(*text).to_owned()],
                line: None,
            };
            let result = sum.work_out(&pairs.iter().map(raw).collect::<Vec<_>>(), true);
            assert!(result.checked.problems.is_empty(), "{name}: {:?}", result.checked.problems);
            assert!(result.outcome.figures().next().is_some(), "{name} answers nothing");
            assert!(pairs.iter().all(|(key, _)| sum.inputs.iter().any(|input| input.key == *key)), "{name}");
        }
    }

    #[test]
    fn every_sum_has_a_place() {
        for sum in families::sums() {
            assert!(GROUPS.contains(&group(sum.name)), "{}", sum.name);
        }
    }
}
