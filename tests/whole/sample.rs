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
        .replace("half_wall_m = 0.6", "half_wall_m = 0.6\nusable_floor_percent = 95\nfans = \"no\"\nfloor = \"concrete\"\nceiling = \"mat\"\nwall = \"brick\"\nroof = \"iron\"\ncurtain = \"single\"\nair_changes_per_h = 1.5\ndowntime_d = 14")
        .replace("standard = \"fast\"", "standard = \"fast\"\nexpected_losses_percent = 5\ndeposit_percent = 40\ndeposit_before_d = 21")
        .replace("chicks_per_ring = 400", "chicks_per_ring = 400\nsheets_owned = 2\nsheet_thickness_mm = 4\nsaw_cut_mm = 3\nwalkway_m = 0.5\n[weather]\ncoldest_night_c = 11\nmean_c = 26\nhottest_day_c = 35\nhumidity_percent = 60\n[brooding]\nbrooder_chicks = 360\nbrooders = 3\nbrooder_kw = 2.6\nheated_length_m = 9\npartition = \"yes\"\ncover = \"no\"\nfuel = \"lpg\"\ndays_d = 15\nhours_per_day_h = 13\ncylinder_kg = 13")
        .replace(
            "surfaces = [\"floor\", \"walls\", \"ceiling\"]",
            "surfaces = [\"floor\", \"walls\", \"gables\", \"ceiling\", \"roof\", \"curtains\", \"equipment\"]\nequipment_percent = 15\nmeasure_ml = 25\npoured_ml = 40\nsoak_l = 60\ncontact_min = 20",
        )
        .replace("bag_l = 120", "bag_l = 120\nkind = \"wood-shavings\"\nspread_days_before_d = 3")
        .replace("bag_kg = 50", FEED_AND_AFTER)
}

/// The same with electric brooders and covers over the rings: nothing burns under them.
pub fn covered() -> String {
    complete()
        .replace("cover = \"no\"", "cover = \"yes\"")
        .replace("fuel = \"lpg\"", "fuel = \"electricity\"")
}

/// The same with charcoal pots in place of gas: what hangs on sacks shows.
pub fn with_charcoal() -> String {
    complete().replace("fuel = \"lpg\"", "fuel = \"charcoal\"").replace("cylinder_kg = 13", "sack_kg = 45")
}

/// The same with a gas brooder beside the pots.
pub fn with_two_kinds() -> String {
    with_charcoal().replace(
        "fuel = \"charcoal\"",
        "fuel = \"charcoal\"\nsecond_brooder = \"gas-hover\"\nsecond_brooders = 1\nsecond_brooder_kw = 2.4\nsecond_brooder_chicks = 300\nsecond_fuel = \"lpg\"\ncylinder_kg = 13",
    )
}

/// The complete plan with pots beside its gas brooders.
pub fn with_pots_beside() -> String {
    complete().replace(
        "cylinder_kg = 13",
        "cylinder_kg = 13\nsack_kg = 45\nsecond_brooder = \"charcoal-pot\"\nsecond_brooders = 2",
    )
}

/// The rest of a complete plan.
const FEED_AND_AFTER: &str = r#"bag_kg = 50
phases = "four"
starter_until_d = 11
grower_until_d = 25
finisher_until_d = 36
on_hand_before_d = 12
on_hand_days_d = 15
buying = "by-phase"
ahead_d = 6
lead_d = 3
milled = 2027-08-20
label_keeps_d = 90
hot_store_keeps_d = 40
store_m2 = 9
tin_kg = 1.6

[sale]
kind = "live"
first_age_d = 40
last_age_d = 44
bird_least_kg = 1.8
bird_most_kg = 2.6

[equipment]
chick_feeders = 30
chick_drinkers = 35
feeder_kind = "hanging-tube"
feeders = 40
drinker_kind = "bell"
drinkers = 20

[water]
to_feed = 1.8
storage_l = 1000
off_hours_h = 8
can_l = 20
sanitiser_ppm = 3
sanitiser_percent = 3.5
line_length_m = 40
line_diameter_mm = 22
line_ppm = 38

[prices]
disinfectant_per_l = 95.5
sheet_each = 180
litter_bag_each = 22.75
chick_feeder_each = 35
chick_drinker_each = 48
feeder_each = 130
drinker_each = 210
brooder_each = 950
gas_cylinder_each = 410
charcoal_sack_each = 260
starter_bag_each = 612
grower_bag_each = 588
finisher_bag_each = 575
last_bag_each = 570
chick_each = 27
sale_per_kg = 34
litter_sold = 900
feed_rise_percent = 1.5
feed_weeks_percent = [100, 100, 102, 103]

[costs]
vaccines = 1100
medicine = 450
labour = 3600
own_labour = 5000
transport = 2400
power = 800
other = 1500
house = 4200
feed_delivery_each = 190

[cash]
at_start = 60000
credit_limit = 1000000
interest_percent = 30

[settings]
seed = 1
futures = 2000
"#;

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

/// The complete plan without its hottest afternoon, so that the air cannot be followed by the hour.
pub fn without_hours() -> String {
    complete().replace("hottest_day_c = 35\n", "")
}
