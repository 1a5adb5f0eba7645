//! A plan's rings and house, with feeders and drinkers standing in them.

use advice::outfit::Counts;
use advice::plan::Standing;

use crate::sample::{self, number};

const COUNTS: Counts = Counts { feeders: Some(32.0), drinkers: Some(24.0) };

#[test]
fn a_ring_holds_its_share() {
    let plan = sample::plan(&sample::complete());
    let ring = plan.ring(COUNTS).unwrap();
    let rings = number(&plan, "guard.rings");
    assert_eq!(ring.outfit.placed.feeders.len(), (32.0 / rings).ceil() as usize);
    assert_eq!(ring.outfit.placed.drinkers.len(), (24.0 / rings).ceil() as usize);
    assert!((ring.diameter.in_metres() - number(&plan, "guard.ring_diameter")).abs() < 1e-9);
}

/// The chicks and their trays are the same at every step; only the guard moves.
#[test]
fn nothing_is_lost_as_rings_widen() {
    for thickness in ["4", "12"] {
        let file = sample::complete()
            .replace("sheet_thickness_mm = 4", &format!("sheet_thickness_mm = {thickness}"));
        let plan = sample::plan(&file);
        let mut last = 0.0;
        for step in &plan.widening {
            let ring = plan.widened_ring(step, COUNTS);
            let Standing::Rings { joined, .. } = step.standing else {
                assert!(ring.is_none());
                continue;
            };
            let ring = ring.unwrap();
            let rings = number(&plan, "guard.rings") / joined;
            let placed = &ring.outfit.placed;
            assert_eq!(placed.brooders.len(), joined as usize);
            assert!((placed.feeders.len() + placed.feeders_left) as f64 * rings >= 32.0);
            assert!((placed.drinkers.len() + placed.drinkers_left) as f64 * rings >= 24.0);
            assert!(ring.diameter.in_metres() > last, "a later ring is wider");
            last = ring.diameter.in_metres();
        }
    }
}

#[test]
fn a_house_hangs_all_of_them() {
    let plan = sample::plan(sample::MANGO_RIDGE);
    let hung = plan.hung(COUNTS).unwrap();
    assert_eq!((hung.placed.feeders.len(), hung.placed.drinkers.len(), hung.placed.left()), (32, 24, 0));
    assert!(plan.hung(Counts::default()).unwrap().placed.feeders.is_empty());
}

/// What stands is what the plan chose, as wide as it is: lids of boxes take more room than trays, and as many still stand apart
/// from each other. Nipples hang in lines, so none is placed.
#[test]
fn each_kind_stands_as_wide_as_it_is() {
    let of = |kinds: &str| {
        let text = sample::complete()
            .replace("feeder_kind = \"hanging-tube\"", kinds)
            .replace("drinker_kind = \"bell\"\n", "");
        sample::plan(&text)
    };
    let lids = of("chick_feeder_kind = \"box-lid\"\nfeeder_kind = \"pan\"\ndrinker_kind = \"nipple\"");
    let ring = lids.ring(COUNTS).unwrap().outfit;
    assert_eq!((ring.feeder.name, ring.drinker.name), ("box-lid", "fount"));
    let places = &ring.placed.feeders;
    assert!(places.len() > 2);
    for (at, one) in places.iter().enumerate() {
        for other in &places[at + 1..] {
            let apart = (one.x - other.x).in_metres().hypot((one.y - other.y).in_metres());
            assert!(apart >= ring.feeder.across.in_metres() - 1e-9, "{apart}");
        }
    }
    let hung = lids.hung(COUNTS).unwrap();
    assert_eq!((hung.feeder.name, hung.placed.feeders.len(), hung.placed.drinkers.len()), ("pan", 32, 0));
    let founts = of("chick_feeder_kind = \"small-trough\"\ndrinker_kind = \"large-fount\"");
    assert_eq!(founts.ring(COUNTS).unwrap().outfit.feeder.name, "small-trough");
    let hung = founts.hung(COUNTS).unwrap();
    assert_eq!(
        (hung.feeder.name, hung.drinker.name, hung.placed.drinkers.len()),
        ("hanging-tube", "large-fount", 24)
    );
}
