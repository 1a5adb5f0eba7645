//! The table of fields of what is written down while a batch runs: one section a kind of entry, named by it.
//!
//! Ranges are impossible limits, usual ranges are asked about and the answer kept. Both are our judgement unless a
//! source stands beside the line.

use crate::field::{Asked, Field, Kind, Need};
use crate::fields::{FUELS, asked_outside, count, field, number};
use crate::unit::Unit;

use Need::{Optional, Required};

/// The feeds a batch goes through, in the order they are eaten.
pub const PHASES: &[&str] = &["starter", "grower", "finisher", "last"];

/// How a bird found dead looked, as growers tell them apart.
pub const CAUSES: &[&str] =
    &["small-weak", "smothered", "legs", "sudden", "sick", "predator", "transport", "unknown"];

/// How chicks lie, as the grower sees it.
pub const SPREADS: &[&str] = &["even", "under-the-heat", "away-from-the-heat", "to-one-side", "panting"];

/// How strongly the air bites.
pub const SMELLS: &[&str] = &["none", "slight", "strong", "stings-the-eyes"];

/// What litter does in a closed hand.
pub const HANDFULS: &[&str] = &["falls-apart", "holds-together", "cakes", "dust"];

/// What the house sounds like.
pub const SOUNDS: &[&str] = &["content", "loud-cheeping", "very-quiet", "sneezing"];

/// Ways a vaccine is given.
pub const ROUTES: &[&str] = &["drinking-water", "eye-drop", "spray", "injection", "wing-web"];

/// Why birds left the house that were neither sold nor died.
pub const BIRDS_OUT: &[&str] = &["home", "given", "workers", "added-to-a-sale", "stolen"];

/// What money goes on beside feed.
pub const BOUGHT: &[&str] =
    &["chicks", "litter", "fuel", "medicine", "vaccine", "disinfectant", "equipment", "other"];

/// What else costs money.
pub const COSTS: &[&str] = &[
    "labour",
    "own-labour",
    "transport",
    "power",
    "water",
    "rent",
    "market-fee",
    "airtime",
    "interest",
    "other",
];

/// What somebody watches the price of.
pub const PRICED: &[&str] = &[
    "starter",
    "grower",
    "finisher",
    "last",
    "chick",
    "live-bird",
    "dressed-bird",
    "litter",
    "fuel",
    "other",
];

const YES_OR_NO: Kind = Kind::Choice(&["no", "yes"]);
const MONEY: Kind = number(Unit::Money, 0.0, 1e12);
const HOUR: Kind = count(Unit::Hour, 0.0, 23.0);
const PAID: Kind = Kind::Choice(&["now", "on-credit", "part"]);
const LINE: Kind = Kind::Text(200);
const NAME: Kind = Kind::Text(80);

/// The table.
pub static RECORD_FIELDS: &[Field] = &[
    // The chicks came. Boxes of 50 or 100 with about 2 % extra (common practice); four numbers are kept apart.
    field("placed.counted", count(Unit::Chicks, 1.0, 60_000.0), Required),
    field("placed.dead_on_arrival", count(Unit::Chicks, 0.0, 60_000.0), Optional),
    field("placed.weak_culled", count(Unit::Chicks, 0.0, 60_000.0), Optional),
    field("placed.ordered", count(Unit::Chicks, 1.0, 60_000.0), Optional),
    field("placed.paid_for", count(Unit::Chicks, 0.0, 60_000.0), Optional),
    field("placed.boxes", count(Unit::Pieces, 1.0, 2_000.0), Optional),
    field(
        "placed.box_weights_g",
        Kind::Numbers { unit: Unit::Gram, low: 100.0, high: 20_000.0, at_least: 1, at_most: 60 },
        Optional,
    ),
    field("placed.box_empty_g", number(Unit::Gram, 0.0, 5_000.0), Optional),
    field("placed.chicks_per_box", count(Unit::Chicks, 1.0, 250.0), Optional),
    field("placed.hour_h", HOUR, Optional),
    // In weeks: chicks of young parents are small (breeders' handbooks, from memory).
    field("placed.parent_weeks", asked_outside(count(Unit::One, 20.0, 100.0), 24.0, 70.0), Optional),
    field("placed.vaccinated", LINE, Optional),
    field("placed.hatchery", NAME, Optional),
    field("placed.cost", MONEY, Optional),
    // Deaths of a day. What was found dead, of them how they looked, and what was culled by hand.
    field("deaths.dead", count(Unit::Birds, 0.0, 50_000.0), Required),
    field("deaths.culled", count(Unit::Birds, 0.0, 50_000.0), Optional),
    field("deaths.small_weak", count(Unit::Birds, 0.0, 50_000.0), Optional),
    field("deaths.smothered", count(Unit::Birds, 0.0, 50_000.0), Optional),
    field("deaths.legs", count(Unit::Birds, 0.0, 50_000.0), Optional),
    field("deaths.sudden", count(Unit::Birds, 0.0, 50_000.0), Optional),
    field("deaths.sick", count(Unit::Birds, 0.0, 50_000.0), Optional),
    field("deaths.predator", count(Unit::Birds, 0.0, 50_000.0), Optional),
    field("deaths.transport", count(Unit::Birds, 0.0, 50_000.0), Optional),
    // Birds that left in another way, and a count by hand.
    field("birds_out.birds", count(Unit::Birds, 1.0, 50_000.0), Required),
    field("birds_out.why", Kind::Choice(BIRDS_OUT), Required),
    field("count_found.birds", count(Unit::Birds, 0.0, 60_000.0), Required),
    // Feed.
    field("feed_delivered.phase", Kind::Choice(PHASES), Required),
    field("feed_delivered.bags", number(Unit::Pieces, 0.1, 100_000.0), Required),
    field("feed_delivered.bag_kg", asked_outside(number(Unit::Kilogram, 1.0, 1_000.0), 20.0, 60.0), Required),
    field("feed_delivered.price_each", number(Unit::Money, 0.0, 1e9), Optional),
    field("feed_delivered.milled", Kind::Day, Optional),
    field("feed_delivered.withdrawal_d", count(Unit::Day, 0.0, 90.0), Optional),
    field("feed_delivered.seller", NAME, Optional),
    field("feed_delivered.payment", PAID, Optional),
    field("feed_delivered.paid_now", MONEY, Optional),
    field("feed_delivered.due", Kind::Day, Optional),
    field("feed_opened.phase", Kind::Choice(PHASES), Required),
    field("feed_opened.bags", number(Unit::Pieces, 0.0, 10_000.0), Required),
    field("feed_given.phase", Kind::Choice(PHASES), Required),
    field("feed_given.feed_kg", number(Unit::Kilogram, 0.0, 100_000.0), Required),
    field("feed_spoiled.phase", Kind::Choice(PHASES), Required),
    field("feed_spoiled.feed_kg", number(Unit::Kilogram, 0.01, 1_000_000.0), Required),
    field("feed_spoiled.why", LINE, Optional),
    // Water, air, litter.
    field("water_drunk.water_l", number(Unit::Litre, 0.0, 1_000_000.0), Required),
    field("house_air.coldest_c", asked_outside(number(Unit::Celsius, -30.0, 55.0), 5.0, 36.0), Optional),
    field("house_air.warmest_c", asked_outside(number(Unit::Celsius, -20.0, 60.0), 15.0, 40.0), Optional),
    field("house_air.driest_percent", number(Unit::Percent, 1.0, 100.0), Optional),
    field("house_air.dampest_percent", number(Unit::Percent, 1.0, 100.0), Optional),
    field("sensor_day.channel", NAME, Required),
    field("sensor_day.measures", Kind::Choice(&["temperature", "humidity", "water", "other"]), Required),
    field("sensor_day.mean", number(Unit::One, -1e9, 1e9), Required),
    field("sensor_day.least", number(Unit::One, -1e9, 1e9), Optional),
    field("sensor_day.most", number(Unit::One, -1e9, 1e9), Optional),
    field("sensor_day.readings", count(Unit::One, 1.0, 1e6), Optional),
    field("litter_check.spot", NAME, Required),
    field("litter_check.handful", Kind::Choice(HANDFULS), Required),
    field("litter_check.depth_cm", number(Unit::Centimetre, 0.0, 50.0), Optional),
    field("power_cut.hours_h", number(Unit::Hour, 0.05, 24.0), Required),
    field("power_cut.from_h", HOUR, Optional),
    // The four choices of the daily look.
    field("look.spread", Kind::Choice(SPREADS), Optional),
    field("look.smell_entering", Kind::Choice(SMELLS), Optional),
    field("look.smell_low", Kind::Choice(SMELLS), Optional),
    field("look.handful", Kind::Choice(HANDFULS), Optional),
    field("look.sound", Kind::Choice(SOUNDS), Optional),
    // Brooding.
    field("crop_fill.hours_h", count(Unit::Hour, 1.0, 72.0), Required),
    field("crop_fill.felt", count(Unit::Chicks, 1.0, 2_000.0), Required),
    field("crop_fill.full", count(Unit::Chicks, 0.0, 2_000.0), Required),
    field("chick_check.hour_h", HOUR, Required),
    field("chick_check.spread", Kind::Choice(SPREADS), Required),
    field("chick_check.vent_c", asked_outside(number(Unit::Celsius, 30.0, 45.0), 38.5, 41.5), Optional),
    field("chick_check.at_chicks_c", asked_outside(number(Unit::Celsius, 0.0, 60.0), 24.0, 38.0), Optional),
    // A weighing: bird by bird, or in groups.
    field(
        "weighed.weights_g",
        Kind::Numbers { unit: Unit::Gram, low: 20.0, high: 10_000.0, at_least: 1, at_most: 1_000 },
        Optional,
    ),
    field("weighed.spots", Kind::Words { at_most: 1_000, characters: 40 }, Optional),
    field("weighed.sexes", Kind::Words { at_most: 1_000, characters: 10 }, Optional),
    field(
        "weighed.group_weights_g",
        Kind::Numbers { unit: Unit::Gram, low: 20.0, high: 1_000_000.0, at_least: 1, at_most: 500 },
        Optional,
    ),
    field(
        "weighed.group_birds",
        Kind::Numbers { unit: Unit::Birds, low: 1.0, high: 500.0, at_least: 1, at_most: 500 },
        Optional,
    ),
    field("weighed.scale_step_g", number(Unit::Gram, 0.1, 1_000.0), Optional),
    field("weighed.hour_h", HOUR, Optional),
    // Vaccines and medicines, as a veterinarian ordered them.
    field("vaccine_programme.arrival_day", Kind::Choice(&["0", "1"]), Required),
    field("vaccine_programme.lines", Kind::Text(4_000), Required),
    field("vaccine_programme.from", NAME, Optional),
    field("vaccinated.vaccine", NAME, Required),
    field("vaccinated.route", Kind::Choice(ROUTES), Optional),
    field("vaccinated.doses", count(Unit::One, 1.0, 1e6), Optional),
    field("vaccinated.water_l", number(Unit::Litre, 0.1, 100_000.0), Optional),
    field("vaccinated.lot", NAME, Optional),
    field("vaccinated.expires", Kind::Day, Optional),
    field("vaccinated.hour_h", HOUR, Optional),
    field("vaccinated.withdrawal_d", count(Unit::Day, 0.0, 120.0), Optional),
    field("medicated.medicine", NAME, Required),
    field("medicated.last_day", Kind::Day, Optional),
    field("medicated.hour_h", HOUR, Optional),
    field("medicated.withdrawal_d", count(Unit::Day, 0.0, 120.0), Optional),
    field("medicated.amount", LINE, Optional),
    field("medicated.ordered_by", NAME, Optional),
    field("medicated.reason", LINE, Optional),
    // Work and visitors.
    field("task_done.task", NAME, Required),
    field("visitor.name", NAME, Required),
    field("visitor.from", NAME, Optional),
    field("visitor.boots", YES_OR_NO, Optional),
    field("visitor.other_birds", YES_OR_NO, Optional),
    field("foot_bath.state", Kind::Choice(&["fresh", "topped-up", "dirty"]), Required),
    // Fuel and money.
    field("fuel_burnt.fuel", Kind::Choice(FUELS), Required),
    field("fuel_burnt.amount_kg", number(Unit::Kilogram, 0.0, 100_000.0), Required),
    field("purchase.what", Kind::Choice(BOUGHT), Required),
    field("purchase.name", NAME, Optional),
    field("purchase.amount", number(Unit::One, 0.001, 1e9), Optional),
    field("purchase.unit", Kind::Choice(&["kg", "l", "bag", "piece", "cylinder", "sack", "vial"]), Optional),
    field("purchase.cost", MONEY, Required),
    field("purchase.seller", NAME, Optional),
    field("purchase.payment", PAID, Optional),
    field("purchase.paid_now", MONEY, Optional),
    field("purchase.due", Kind::Day, Optional),
    field("cost.what", Kind::Choice(COSTS), Required),
    field("cost.cost", MONEY, Required),
    field("cost.remark", LINE, Optional),
    field("payment.way", Kind::Choice(&["paid-out", "received"]), Required),
    field("payment.amount", number(Unit::Money, 0.01, 1e12), Required),
    field("payment.who", NAME, Required),
    field("sold.birds", count(Unit::Birds, 1.0, 60_000.0), Required),
    field("sold.live_kg", number(Unit::Kilogram, 0.1, 1e6), Optional),
    field("sold.income", MONEY, Required),
    field("sold.buyer", NAME, Optional),
    field("sold.basis", Kind::Choice(&["bird", "live-kg", "dressed-kg"]), Optional),
    field("sold.payment", PAID, Optional),
    field("sold.paid_now", MONEY, Optional),
    field("sold.due", Kind::Day, Optional),
    field("order.buyer", NAME, Required),
    field("order.birds", count(Unit::Birds, 1.0, 60_000.0), Required),
    field("order.least_kg", number(Unit::Kilogram, 0.1, 10.0), Optional),
    field("order.most_kg", number(Unit::Kilogram, 0.1, 10.0), Optional),
    field("order.latest", Kind::Day, Optional),
    field("order.basis", Kind::Choice(&["bird", "live-kg", "dressed-kg"]), Optional),
    field("order.price", number(Unit::Money, 0.01, 1e9), Optional),
    field("order.deposit", MONEY, Optional),
    field("price_seen.what", Kind::Choice(PRICED), Required),
    field("price_seen.price", number(Unit::Money, 0.01, 1e9), Required),
    field("price_seen.per", Kind::Choice(&["kg", "bag", "bird", "piece", "sack", "cylinder"]), Optional),
    field("price_seen.where", NAME, Optional),
    field("litter_sold.income", MONEY, Required),
    field("litter_sold.bags", number(Unit::Pieces, 0.1, 100_000.0), Optional),
    field("litter_sold.buyer", NAME, Optional),
    // Closing, notes, tables of one's own.
    field("batch_closed.birds_left", count(Unit::Birds, 0.0, 60_000.0), Required),
    field("batch_closed.remark", LINE, Optional),
    field("note.text", Kind::Text(2_000), Required),
    field("own_table.name", NAME, Required),
    field("own_table.curve", Kind::Curve, Required),
];

/// What a kind of entry asks, in the order of the table.
pub fn of_section(section: &str) -> Vec<Asked> {
    RECORD_FIELDS.iter().filter(|field| field.section() == section).map(Field::asked).collect()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn each_section_asks_for_something_first() {
        let sections: BTreeSet<&str> = RECORD_FIELDS.iter().map(Field::section).collect();
        let free = ["house_air", "look", "weighed"];
        for section in sections.into_iter().filter(|section| !free.contains(section)) {
            let required = of_section(section).iter().any(|asked| asked.need == Required);
            assert!(required, "{section} could be written down empty");
        }
    }

    #[test]
    fn keys_are_used_once_across_both_tables() {
        let keys: BTreeSet<&str> =
            RECORD_FIELDS.iter().chain(crate::fields::FIELDS).map(|field| field.key).collect();
        assert_eq!(keys.len(), RECORD_FIELDS.len() + crate::fields::FIELDS.len());
    }
}
