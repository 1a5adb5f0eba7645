//! The one table of input fields, with units and ranges. Code, forms, the schema and the manual read it.
//!
//! Ranges are impossible limits ("no chicken house is 2 km long"), usual ranges are asked about. Both are our
//! judgement unless a source stands beside the line. Usual values carry their own status.

use crate::field::{Asked, Field, Kind, Need};
use crate::status::Status;
use crate::unit::Unit;

/// A number from `low` to `high`.
pub const fn number(unit: Unit, low: f64, high: f64) -> Kind {
    Kind::Number { unit, low, high, whole: false, usual: None }
}

/// A whole number from `low` to `high`.
pub const fn count(unit: Unit, low: f64, high: f64) -> Kind {
    Kind::Number { unit, low, high, whole: true, usual: None }
}

/// The same, asked about outside a usual range.
pub const fn asked_outside(kind: Kind, usual_low: f64, usual_high: f64) -> Kind {
    match kind {
        Kind::Number { unit, low, high, whole, .. } => {
            Kind::Number { unit, low, high, whole, usual: Some((usual_low, usual_high)) }
        }
        other => other,
    }
}

/// A field that moves figures.
pub const fn field(key: &'static str, kind: Kind, need: Need) -> Field {
    Field { key, kind, need, inert: None }
}

/// A field that moves none, and why.
pub const fn inert(key: &'static str, kind: Kind, need: Need, why: &'static str) -> Field {
    Field { key, kind, need, inert: Some(why) }
}

use Need::{Optional, Required, Usual};
use Status::{Assumed, CommonPractice};

/// Surfaces a disinfectant can be put on.
pub const SURFACES: &[&str] = &["floor", "walls", "gables", "ceiling", "roof", "curtains", "equipment"];

/// Solid walls that the table of heat losses knows.
pub const WALLS: &[&str] =
    &["hollow-block", "solid-concrete", "brick", "earth", "plywood", "plywood-double", "boards"];

/// Roofs that the table of heat losses knows.
pub const ROOFS: &[&str] = &["iron", "iron-foam", "iron-insulated", "thatch", "tile"];

/// Fuels that the table of fuels knows.
pub const FUELS: &[&str] = &["lpg", "charcoal", "kerosene", "firewood", "rice-husk", "electricity"];

/// Why it moves no figure of a plan.
const OF_BIRDS: &str = "what a buyer takes is counted of birds on their way, and a plan has none";

const YES_OR_NO: Kind = Kind::Choice(&["no", "yes"]);

/// A number for each month from January on.
const fn a_year_of(unit: Unit, low: f64, high: f64) -> Kind {
    Kind::Numbers { unit, low, high, at_least: 12, at_most: 12 }
}

/// Birds that one feeder or drinker serves, by age.
const SERVES: Kind = Kind::Steps { first: 0, last: 84, low: 1, high: 500 };

/// The table.
pub static FIELDS: &[Field] = &[
    inert("farm.name", Kind::Text(80), Optional, "a name"),
    field("farm.latitude_deg", number(Unit::Degree, -90.0, 90.0), Required),
    inert(
        "farm.longitude_deg",
        number(Unit::Degree, -180.0, 180.0),
        Optional,
        "only tells the assumed time zone",
    ),
    field("farm.altitude_m", number(Unit::Metre, -430.0, 5500.0), Optional),
    inert("farm.currency", Kind::Currency, Optional, "a label of amounts"),
    inert(TIME_ZONE, Kind::Text(60), Optional, "no longer asked; files that hold it are still read"),
    field("farm.hottest_months", Kind::Months, Optional),
    inert("house.name", Kind::Text(80), Optional, "a name"),
    field("house.length_m", asked_outside(number(Unit::Metre, 1.0, 300.0), 3.0, 150.0), Required),
    field("house.width_m", asked_outside(number(Unit::Metre, 1.0, 60.0), 2.0, 14.0), Required),
    field("house.eave_height_m", asked_outside(number(Unit::Metre, 0.5, 12.0), 1.5, 4.5), Required),
    field("house.ridge_height_m", asked_outside(number(Unit::Metre, 0.5, 20.0), 1.8, 8.0), Required),
    field("house.half_wall_m", number(Unit::Metre, 0.0, 6.0), Required),
    field("house.usable_floor_percent", number(Unit::Percent, 20.0, 100.0), Usual("100", Assumed)),
    field("house.fans", Kind::Choice(&["no", "yes"]), Usual("no", Assumed)),
    field("house.floor", Kind::Choice(&["concrete", "earth"]), Optional),
    field("house.ceiling", Kind::Choice(&["none", "mat", "board"]), Optional),
    field("house.wall", Kind::Choice(WALLS), Usual("hollow-block", Assumed)),
    field("house.roof", Kind::Choice(ROOFS), Usual("iron", Assumed)),
    field("house.curtain", Kind::Choice(&["single", "double"]), Usual("single", Assumed)),
    inert(
        "house.curtain_opens",
        Kind::Choice(&["from-the-top", "from-the-bottom"]),
        Usual("from-the-top", Assumed),
        "only how the settings of a curtain are said",
    ),
    // The width of a hand: common practice.
    inert(
        "house.curtain_mark_cm",
        asked_outside(number(Unit::Centimetre, 1.0, 100.0), 5.0, 30.0),
        Usual("10", CommonPractice),
        "only what the settings of a curtain are counted in",
    ),
    // 0.5 to 3 with curtains up in a small farm house, up to 10 in wind: our judgement.
    field(
        "house.air_changes_per_h",
        asked_outside(number(Unit::PerHour, 0.1, 30.0), 0.5, 3.0),
        Usual("1", Status::OurJudgement),
    ),
    // 14 days from the last bird out to the first chick in: PoultryMed, Downtime Between Poultry Flocks, 2025.
    field(
        "house.downtime_d",
        asked_outside(count(Unit::Day, 0.0, 180.0), 7.0, 60.0),
        Usual("14", Status::Published),
    ),
    inert("batch.name", Kind::Text(80), Optional, "a name"),
    inert(
        "batch.house",
        Kind::Text(80),
        Optional,
        "chooses among several houses; its measures are what counts",
    ),
    field("batch.placement", Kind::Day, Required),
    field("batch.chicks", count(Unit::Chicks, 10.0, 50_000.0), Required),
    field("batch.sale_age_d", asked_outside(count(Unit::Day, 14.0, 84.0), 28.0, 63.0), Required),
    field("batch.sale_weight_kg", asked_outside(number(Unit::Kilogram, 0.2, 8.0), 1.0, 3.5), Optional),
    field(
        "batch.standard",
        Kind::Choice(&["fast", "open-house", "slow", "own"]),
        Usual("open-house", Status::OurJudgement),
    ),
    field(
        "batch.expected_losses_percent",
        asked_outside(number(Unit::Percent, 0.0, 60.0), 0.0, 15.0),
        Usual("4", CommonPractice),
    ),
    field("batch.own_curve", Kind::Curve, Optional),
    field("sale.first_age_d", count(Unit::Day, 14.0, 84.0), Optional),
    field("sale.last_age_d", count(Unit::Day, 14.0, 84.0), Optional),
    field("sale.days", Kind::Schedule { first: 14, last: 84 }, Optional),
    inert(
        "sale.bird_least_kg",
        asked_outside(number(Unit::Kilogram, 0.1, 10.0), 0.5, 4.0),
        Optional,
        OF_BIRDS,
    ),
    inert(
        "sale.bird_most_kg",
        asked_outside(number(Unit::Kilogram, 0.1, 10.0), 0.5, 4.0),
        Optional,
        OF_BIRDS,
    ),
    field("weather.mean_c", asked_outside(number(Unit::Celsius, -20.0, 45.0), 5.0, 35.0), Optional),
    field("weather.months_coldest_c", a_year_of(Unit::Celsius, -30.0, 35.0), Optional),
    field("weather.months_warmest_c", a_year_of(Unit::Celsius, -20.0, 50.0), Optional),
    field("weather.months_humidity_percent", a_year_of(Unit::Percent, 5.0, 100.0), Optional),
    field("weather.months_wind_m_per_s", a_year_of(Unit::MetrePerSecond, 0.0, 15.0), Optional),
    field("weather.hottest_day_c", asked_outside(number(Unit::Celsius, -10.0, 55.0), 10.0, 45.0), Optional),
    field(
        "equipment.chick_feeder_kind",
        Kind::Choice(&["tray", "box-lid", "small-trough"]),
        Usual("tray", Assumed),
    ),
    field("equipment.chick_feeder_serves", SERVES, Optional),
    field("equipment.chick_drinker_serves", SERVES, Optional),
    field("equipment.feeder_serves", SERVES, Optional),
    field("equipment.drinker_serves", SERVES, Optional),
    field("equipment.chick_feeders", count(Unit::Pieces, 0.0, 2_000.0), Optional),
    field("equipment.chick_drinkers", count(Unit::Pieces, 0.0, 2_000.0), Optional),
    field("equipment.feeder_kind", Kind::Choice(&["hanging-tube", "pan"]), Usual("hanging-tube", Assumed)),
    field("equipment.feeders", count(Unit::Pieces, 0.0, 5_000.0), Optional),
    field("equipment.drinker_kind", Kind::Choice(&["bell", "nipple", "large-fount"]), Usual("bell", Assumed)),
    field("equipment.drinkers", count(Unit::Pieces, 0.0, 10_000.0), Optional),
    field("weather.coldest_night_c", asked_outside(number(Unit::Celsius, -30.0, 35.0), -5.0, 28.0), Optional),
    field(
        "weather.humidity_percent",
        asked_outside(number(Unit::Percent, 5.0, 100.0), 30.0, 90.0),
        Usual("65", Status::FromMemory),
    ),
    field("guard.sheet_length_m", asked_outside(number(Unit::Metre, 0.3, 10.0), 1.0, 4.0), Required),
    field("guard.sheet_width_m", asked_outside(number(Unit::Metre, 0.2, 4.0), 0.4, 2.0), Required),
    field("guard.strips_per_sheet", count(Unit::Pieces, 1.0, 20.0), Required),
    field("guard.sheets_owned", count(Unit::Pieces, 0.0, 2_000.0), Optional),
    field("guard.overlap_m", number(Unit::Metre, 0.0, 5.0), Required),
    field(
        "guard.chicks_per_m2",
        asked_outside(number(Unit::PerSquareMetre, 5.0, 120.0), 20.0, 60.0),
        Required,
    ),
    field(
        "guard.chicks_per_ring",
        asked_outside(count(Unit::Chicks, 10.0, 2_000.0), 50.0, 1_000.0),
        Required,
    ),
    field("guard.sheet_thickness_mm", number(Unit::Millimetre, 0.5, 40.0), Optional),
    field("guard.saw_cut_mm", number(Unit::Millimetre, 0.0, 10.0), Usual("3", CommonPractice)),
    field("guard.walkway_m", number(Unit::Metre, 0.0, 3.0), Usual("0.5", Status::OurJudgement)),
    field("brooding.brooder", Kind::Choice(&["charcoal-pot", "gas-hover", "other"]), Optional),
    field("brooding.brooder_chicks", count(Unit::Chicks, 20.0, 3_000.0), Optional),
    field("brooding.brooders", count(Unit::Pieces, 0.0, 100.0), Optional),
    field("brooding.brooder_kw", asked_outside(number(Unit::Kilowatt, 0.05, 100.0), 0.2, 15.0), Optional),
    field("brooding.second_brooder", Kind::Choice(&["charcoal-pot", "gas-hover", "other"]), Optional),
    field("brooding.second_brooders", count(Unit::Pieces, 0.0, 100.0), Optional),
    field("brooding.second_brooder_chicks", count(Unit::Chicks, 20.0, 3_000.0), Optional),
    field(
        "brooding.second_brooder_kw",
        asked_outside(number(Unit::Kilowatt, 0.05, 100.0), 0.2, 15.0),
        Optional,
    ),
    field("brooding.second_fuel", Kind::Choice(FUELS), Optional),
    field("brooding.heated_length_m", asked_outside(number(Unit::Metre, 0.5, 300.0), 2.0, 60.0), Optional),
    field("brooding.partition", YES_OR_NO, Optional),
    field("brooding.cover", YES_OR_NO, Optional),
    field("brooding.fuel", Kind::Choice(FUELS), Optional),
    field(
        "brooding.days_d",
        asked_outside(count(Unit::Day, 1.0, 42.0), 7.0, 28.0),
        Usual("14", CommonPractice),
    ),
    // The cold hours, from 17:00 to 07:00, at the need of the coldest night, stand for night and day together.
    field("brooding.hours_per_day_h", number(Unit::Hour, 1.0, 24.0), Usual("14", Status::OurJudgement)),
    field("brooding.cylinder_kg", asked_outside(number(Unit::Kilogram, 0.4, 1_000.0), 3.0, 50.0), Optional),
    field("brooding.sack_kg", asked_outside(number(Unit::Kilogram, 1.0, 200.0), 20.0, 100.0), Optional),
    field("disinfectant.ratio", Kind::Ratio { low: 1.0, high: 10_000.0, usual: (10.0, 2_000.0) }, Required),
    field(
        "disinfectant.ratio_means",
        Kind::Choice(&["parts-water", "parts-total"]),
        Usual("parts-water", Status::OurJudgement),
    ),
    field(
        "disinfectant.coverage_ml_per_m2",
        asked_outside(number(Unit::MillilitrePerSquareMetre, 20.0, 3_000.0), 100.0, 600.0),
        Required,
    ),
    field("disinfectant.sprayer_l", asked_outside(number(Unit::Litre, 0.5, 2_000.0), 5.0, 25.0), Required),
    field("disinfectant.surfaces", Kind::Choices(SURFACES), Required),
    field("disinfectant.equipment_percent", number(Unit::Percent, 0.0, 100.0), Usual("15", CommonPractice)),
    field("disinfectant.measure_ml", number(Unit::Millilitre, 0.5, 5_000.0), Optional),
    inert("disinfectant.measure_name", Kind::Text(30), Optional, "a name"),
    field("disinfectant.poured_ml", number(Unit::Millilitre, 0.0, 100_000.0), Optional),
    inert(
        "disinfectant.contact_min",
        number(Unit::Minute, 1.0, 1_440.0),
        Optional,
        "repeated in the order of work, from the label",
    ),
    field("disinfectant.soak_l", number(Unit::Litre, 1.0, 5_000.0), Optional),
    field(
        "space.limit_kg_m2",
        asked_outside(number(Unit::KilogramPerSquareMetre, 2.0, 60.0), 10.0, 33.0),
        Optional,
    ),
    field("litter.depth_cm", asked_outside(number(Unit::Centimetre, 0.5, 50.0), 2.5, 12.0), Required),
    field("litter.bag_l", asked_outside(number(Unit::Litre, 2.0, 5_000.0), 20.0, 500.0), Required),
    field("litter.kind", Kind::Choice(&["wood-shavings", "rice-husk", "other"]), Optional),
    field("litter.spread_days_before_d", count(Unit::Day, 0.0, 30.0), Usual("3", CommonPractice)),
    field("feed.bag_kg", asked_outside(number(Unit::Kilogram, 1.0, 1_000.0), 20.0, 60.0), Optional),
    field("feed.other_bag_kg", asked_outside(number(Unit::Kilogram, 1.0, 1_000.0), 5.0, 60.0), Optional),
    field(
        "feed.phases",
        Kind::Choice(&["starter-finisher", "starter-grower-finisher", "four"]),
        Usual("starter-grower-finisher", Assumed),
    ),
    field("feed.starter_until_d", count(Unit::Day, 3.0, 84.0), Optional),
    field("feed.grower_until_d", count(Unit::Day, 4.0, 84.0), Optional),
    field("feed.finisher_until_d", count(Unit::Day, 5.0, 84.0), Optional),
    field("feed.on_hand_before_d", count(Unit::Day, 0.0, 60.0), Usual("14", CommonPractice)),
    field("feed.on_hand_days_d", count(Unit::Day, 1.0, 84.0), Usual("14", CommonPractice)),
    field(
        "feed.buying",
        Kind::Choice(&["by-phase", "all-at-once", "cheapest"]),
        Usual("by-phase", Status::OurJudgement),
    ),
    field("feed.ahead_d", count(Unit::Day, 0.0, 42.0), Usual("7", Status::OurJudgement)),
    field("feed.lead_d", count(Unit::Day, 0.0, 60.0), Usual("2", Status::OurJudgement)),
    field("feed.milled", Kind::Day, Optional),
    field("feed.label_keeps_d", count(Unit::Day, 7.0, 730.0), Optional),
    field("feed.hot_store_keeps_d", count(Unit::Day, 7.0, 365.0), Usual("42", CommonPractice)),
    field("feed.store_bags", count(Unit::Pieces, 1.0, 100_000.0), Optional),
    field("feed.store_m2", number(Unit::SquareMetre, 0.5, 1_000.0), Optional),
    field("feed.tin_kg", number(Unit::Kilogram, 0.05, 30.0), Optional),
    field(
        "water.to_feed",
        asked_outside(number(Unit::One, 1.0, 5.0), 1.5, 2.2),
        Usual("1.77", Status::Published),
    ),
    field("water.storage_l", number(Unit::Litre, 1.0, 1_000_000.0), Optional),
    inert(
        "water.source",
        Kind::Choice(&["mains", "borehole", "well", "stream", "roof", "carried"]),
        Optional,
        "told on the sheets; no figure rests on it",
    ),
    field("water.off_hours_h", number(Unit::Hour, 0.0, 24.0), Optional),
    field(
        "water.can_l",
        asked_outside(number(Unit::Litre, 1.0, 250.0), 5.0, 30.0),
        Usual("20", CommonPractice),
    ),
    field(
        "water.sanitiser_ppm",
        asked_outside(number(Unit::MilligramPerLitre, 0.1, 200.0), 1.0, 50.0),
        Optional,
    ),
    field("water.sanitiser_percent", number(Unit::Percent, 0.1, 100.0), Optional),
    field("water.line_length_m", asked_outside(number(Unit::Metre, 0.5, 5_000.0), 3.0, 500.0), Optional),
    field(
        "water.line_diameter_mm",
        asked_outside(number(Unit::Millimetre, 3.0, 200.0), 10.0, 60.0),
        Optional,
    ),
    field(
        "water.line_ppm",
        asked_outside(number(Unit::MilligramPerLitre, 0.1, 50_000.0), 1.0, 500.0),
        Optional,
    ),
    field("sale.kind", Kind::Choice(&["slaughter", "live"]), Optional),
    field("prices.disinfectant_per_l", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.sheet_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.litter_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.chick_feeder_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.chick_drinker_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.feeder_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.drinker_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.brooder_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("batch.deposit_percent", number(Unit::Percent, 0.0, 100.0), Optional),
    field("batch.deposit_before_d", count(Unit::Day, 1.0, 60.0), Usual("28", CommonPractice)),
    field("prices.chick_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.sale_per_kg", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.sale_per_bird", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.litter_sold", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.vaccines", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.medicine", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.labour", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.own_labour", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.transport", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.power", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.other", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.house", number(Unit::Money, 0.0, 1e12), Optional),
    field("costs.feed_delivery_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("cash.at_start", number(Unit::Money, -1e12, 1e12), Usual("0", Assumed)),
    field("cash.credit_limit", number(Unit::Money, 0.0, 1e12), Optional),
    field("cash.interest_percent", number(Unit::Percent, 0.0, 500.0), Optional),
    field("prices.starter_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.grower_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.finisher_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.last_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.starter_other_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.grower_other_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.finisher_other_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.last_other_bag_each", number(Unit::Money, 0.0, 1e9), Optional),
    field(
        "prices.feed_rise_percent",
        asked_outside(number(Unit::Percent, -100.0, 300.0), -10.0, 10.0),
        Optional,
    ),
    field(
        "prices.feed_weeks_percent",
        Kind::Numbers { unit: Unit::Percent, low: 1.0, high: 1_000.0, at_least: 1, at_most: 30 },
        Optional,
    ),
    field("settings.seed", count(Unit::One, 0.0, 9_007_199_254_740_991.0), Usual("1", Status::OurJudgement)),
    field("settings.futures", count(Unit::One, 100.0, 200_000.0), Usual("10000", Status::OurJudgement)),
    field("prices.gas_cylinder_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("prices.charcoal_sack_each", number(Unit::Money, 0.0, 1e9), Optional),
    inert("settings.units", Kind::Choice(&["metric", "customary"]), Optional, "only how figures are shown"),
    inert("settings.language", Kind::Choice(&["en", "en-XA", "ar-XB"]), Optional, "only how words are shown"),
    inert("settings.money", Kind::Choice(&["shown", "hidden"]), Optional, "only whether amounts are shown"),
];

/// The fields of some sections, in the order of the table, asked under their own keys.
pub fn of_sections(sections: &[&str]) -> Vec<Asked> {
    FIELDS.iter().filter(|field| sections.contains(&field.section())).map(Field::asked).collect()
}

/// What stays with the farm from batch to batch although a batch's plan asks for it.
const EQUIPMENT: &[&str] = &[
    "guard.sheet_length_m",
    "guard.sheet_width_m",
    "guard.sheet_thickness_mm",
    "guard.strips_per_sheet",
    "guard.sheets_owned",
    "guard.saw_cut_mm",
    "brooding.brooder",
    "brooding.brooder_chicks",
    "brooding.brooders",
    "brooding.brooder_kw",
    "brooding.fuel",
    "brooding.second_brooder",
    "brooding.second_brooders",
    "brooding.second_brooder_chicks",
    "brooding.second_brooder_kw",
    "brooding.second_fuel",
    "brooding.cylinder_kg",
    "brooding.sack_kg",
    "disinfectant.sprayer_l",
    "disinfectant.measure_ml",
    "disinfectant.measure_name",
    "disinfectant.soak_l",
    "feed.store_bags",
    "feed.store_m2",
    "feed.tin_kg",
    "water.storage_l",
    "water.source",
    "water.can_l",
    "water.line_length_m",
    "water.line_diameter_mm",
];

/// The kind of entry that keeps a field in the book from batch to batch: farm, house, equipment, prices or settings.
/// `None` for what belongs to one batch alone, which its plan keeps.
pub fn kept_in(field: &Field) -> Option<&'static str> {
    match field.section() {
        kept @ ("farm" | "house" | "prices" | "settings") => Some(kept),
        "equipment" => Some("equipment"),
        _ if EQUIPMENT.contains(&field.key) => Some("equipment"),
        _ => None,
    }
}

/// Whether a field is no longer asked. Files and books that hold it are still read, and whoever typed it is told.
pub fn is_retired(key: &str) -> bool {
    key == TIME_ZONE
}

/// Nothing rests on it: the calendar goes by the clock on the wall, the sun by latitude, an hour of weather by its own file.
pub const TIME_ZONE: &str = "farm.time_zone";

/// The field of a key; `None` for a key that no field has.
pub fn by_key(key: &str) -> Option<&'static Field> {
    FIELDS.iter().find(|field| field.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equipment_names_fields_that_exist() {
        for key in EQUIPMENT {
            assert!(by_key(key).is_some(), "{key}");
        }
        assert_eq!(by_key("house.length_m").and_then(kept_in), Some("house"));
        assert_eq!(by_key("batch.chicks").and_then(kept_in), None);
    }
}
