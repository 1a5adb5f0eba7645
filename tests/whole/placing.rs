//! Feeders and drinkers as a tape measure would find them: apart, clear of brooder and guard, none lost.

use model::placing::{self, HouseFloor, Pieces, Place, Placed, RingFloor};
use proptest::prelude::*;
use quantity::Length;

/// A piece: its middle and its width, metres.
type Piece = ([f64; 2], f64);

fn pieces(places: &[Place], across: f64) -> impl Iterator<Item = Piece> + '_ {
    places.iter().map(move |place| ([place.x.in_metres(), place.y.in_metres()], across))
}

fn apart(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

fn kind(count: usize, across: f64) -> Pieces {
    Pieces { count, across: Length::metres(across) }
}

fn none_lies_on_another(all: &[Piece], between: f64) {
    for (at, (a, a_across)) in all.iter().enumerate() {
        for (b, b_across) in &all[at + 1..] {
            let free = apart(*a, *b) - (a_across + b_across) / 2.0;
            assert!(free >= between - 1e-9, "{free} m between {a:?} and {b:?}");
        }
    }
}

fn none_is_lost(placed: &Placed, feeders: usize, drinkers: usize) {
    assert_eq!(placed.feeders.len() + placed.feeders_left, feeders);
    assert_eq!(placed.drinkers.len() + placed.drinkers_left, drinkers);
}

proptest! {
    #[test]
    fn in_any_ring(
        radius in 0.2..8.0_f64,
        (brooders, brooder) in (0..5_usize, 0.3..1.5_f64),
        (from_guard, between) in (0.0..0.6_f64, 0.02..0.4_f64),
        (feeders, feeder) in (0..60_usize, 0.2..0.6_f64),
        (drinkers, drinker) in (0..60_usize, 0.1..0.6_f64),
    ) {
        let ring = RingFloor {
            radius: Length::metres(radius),
            brooders: kind(brooders, brooder),
            from_guard: Length::metres(from_guard),
            between: Length::metres(between),
        };
        let placed = placing::in_ring(ring, kind(feeders, feeder), kind(drinkers, drinker));
        none_is_lost(&placed, feeders, drinkers);
        prop_assert_eq!(placed.brooders.len(), brooders);
        let mut all: Vec<Piece> = pieces(&placed.feeders, feeder).collect();
        all.extend(pieces(&placed.drinkers, drinker));
        for (middle, across) in &all {
            let free = radius - apart(*middle, [0.0, 0.0]) - across / 2.0;
            prop_assert!(free >= from_guard - 1e-9, "{free} m from the guard");
        }
        all.extend(pieces(&placed.brooders, brooder));
        none_lies_on_another(&all, between);
    }

    #[test]
    fn in_any_house(
        (length, width) in (0.5..60.0_f64, 0.5..14.0_f64),
        (from_wall, between) in (0.0..1.0_f64, 0.0..0.4_f64),
        (feeders, feeder) in (0..90_usize, 0.2..0.6_f64),
        (drinkers, drinker) in (0..90_usize, 0.2..0.6_f64),
    ) {
        let house = HouseFloor {
            length: Length::metres(length),
            width: Length::metres(width),
            from_wall: Length::metres(from_wall),
            between: Length::metres(between),
        };
        let placed = placing::in_house(house, kind(feeders, feeder), kind(drinkers, drinker));
        none_is_lost(&placed, feeders, drinkers);
        let mut all: Vec<Piece> = pieces(&placed.feeders, feeder).collect();
        all.extend(pieces(&placed.drinkers, drinker));
        for ([x, y], across) in &all {
            let free = x.min(length - x).min(*y).min(width - y) - across / 2.0;
            prop_assert!(free >= from_wall - 1e-9, "{free} m from the wall");
        }
        none_lies_on_another(&all, between);
    }
}
