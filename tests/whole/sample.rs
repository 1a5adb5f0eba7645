//! Plan files the tests start from.

use advice::plan::{self, Plan};
use quantity::{Answers, Source};

/// Mango Ridge, the invented farm: the plan of its larger house.
pub const MANGO_RIDGE: &str = r#"
[farm]
name = "Mango Ridge"
latitude_deg = -13.6
longitude_deg = 32.6
altitude_m = 1100
currency = "XTS"

[house]
length_m = 18.0
width_m = 9.0
eave_height_m = 2.4
ridge_height_m = 3.6
half_wall_m = 0.6

[batch]
placement = 2027-09-14
chicks = 1600
sale_age_d = 42
standard = "fast"

[guard]
sheet_length_m = 2.44
sheet_width_m = 1.22
strips_per_sheet = 2
overlap_m = 0.10
chicks_per_m2 = 50
chicks_per_ring = 400

[disinfectant]
ratio = "1:400"
ratio_means = "parts-water"
coverage_ml_per_m2 = 300
sprayer_l = 10
surfaces = ["floor", "walls", "ceiling"]

[space]
limit_kg_m2 = 20

[litter]
depth_cm = 7
bag_l = 120

[feed]
bag_kg = 50
"#;

/// Every field answered, so that every figure can be worked out.
pub fn complete() -> String {
    MANGO_RIDGE
        .replace("altitude_m = 1100", "altitude_m = 1100\nhottest_months = [9, 10, 11]")
        .replace("half_wall_m = 0.6", "half_wall_m = 0.6\nusable_floor_percent = 95\nfans = \"no\"\nfloor = \"concrete\"\nceiling = \"mat\"\ndowntime_d = 14")
        .replace("standard = \"fast\"", "standard = \"fast\"\nexpected_losses_percent = 5")
        .replace("chicks_per_ring = 400", "chicks_per_ring = 400\nsheet_thickness_mm = 4\nsaw_cut_mm = 3\nwalkway_m = 0.5\n[brooding]\nbrooder_chicks = 360\nbrooders = 3")
        .replace(
            "surfaces = [\"floor\", \"walls\", \"ceiling\"]",
            "surfaces = [\"floor\", \"walls\", \"gables\", \"ceiling\", \"roof\", \"curtains\", \"equipment\"]\nequipment_percent = 15\nmeasure_ml = 25\npoured_ml = 40\nsoak_l = 60\ncontact_min = 20",
        )
        .replace("bag_l = 120", "bag_l = 120\nkind = \"wood-shavings\"\nspread_days_before_d = 3")
        + "\n[sale]\nkind = \"live\"\n[prices]\ndisinfectant_per_l = 95.5\nsheet_each = 180\nlitter_bag_each = 22.75\n"
}

/// Reads a plan file that must hold.
pub fn answers(text: &str) -> Answers {
    let raws = advice::plan_file::read(text).expect("a plan file");
    let checked = plan::read(&raws, Source::File, true);
    assert!(checked.problems.is_empty(), "{:#?}", checked.problems);
    checked.answers
}

/// Works a plan file out.
pub fn plan(text: &str) -> Plan {
    plan::work_out(answers(text))
}

/// A figure's number, which must be there.
pub fn number(plan: &Plan, id: &str) -> f64 {
    plan.outcome.number(id).unwrap_or_else(|| panic!("{id} could not be worked out"))
}
