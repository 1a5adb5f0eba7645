//! Where feeders and drinkers stand: in circles round the brooder of a ring, and hanging in rows over a whole floor.
//!
//! Geometry throughout. Every piece is taken as round, and all as wide as the widest, so that they can change places.
//! So a count that finds no place here might still be squeezed in by hand; one that does find it, stands.

use std::f64::consts::PI;

use quantity::Length;

/// A chick tray (common practice, no source: 0.35 to 0.45 m).
pub const CHICK_TRAY: Length = Length::from_base(0.40);
/// A lid of a box for a hundred chicks, corner to corner (0.60 by 0.45 m, from memory).
pub const BOX_LID: Length = Length::from_base(0.75);
/// A small trough, along (common practice, no source).
pub const SMALL_TROUGH: Length = Length::from_base(0.60);
/// A chick fount (common practice, no source).
pub const CHICK_FOUNT: Length = Length::from_base(0.25);
/// A hanging tube feeder (common practice, no source: 0.36 to 0.42 m).
pub const HANGING_FEEDER: Length = Length::from_base(0.38);
/// A feeder pan (common practice, no source: 0.33 to 0.36 m).
pub const FEEDER_PAN: Length = Length::from_base(0.35);
/// A bell drinker (common practice, no source).
pub const BELL_DRINKER: Length = Length::from_base(0.40);
/// A large fount (common practice, no source: 0.30 to 0.40 m).
pub const LARGE_FOUNT: Length = Length::from_base(0.35);
/// A brooder as it stands on the floor (our judgement: charcoal pots are narrower, gas canopies hang and are wider).
pub const BROODER: Length = Length::from_base(0.80);
/// Free between pieces, for a chick to pass (our judgement).
pub const BETWEEN: Length = Length::from_base(0.10);
/// Free along the guard, so that chicks walk behind the trays and nobody steps on them (our judgement).
pub const FROM_GUARD: Length = Length::from_base(0.20);
/// Free along the walls for whoever fills the feeders (our judgement).
pub const FROM_WALL: Length = Length::from_base(0.50);

/// Brooders that share a ring stand so far out of its middle, as a share of the way to the guard (our judgement).
const BROODERS_OUT: f64 = 0.3;

/// Things of a kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pieces {
    /// How many.
    pub count: usize,
    /// Across one.
    pub across: Length,
}

/// The middle of a piece: from the middle of a ring, or from the left and upper corner of a floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Along the ridge.
    pub x: Length,
    /// Across.
    pub y: Length,
}

/// The floor of a ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RingFloor {
    /// From the middle to where the guard stands nearest.
    pub radius: Length,
    /// One stands in the middle; several stand round it.
    pub brooders: Pieces,
    /// Free along the guard.
    pub from_guard: Length,
    /// Free between pieces.
    pub between: Length,
}

/// The floor of a house.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HouseFloor {
    /// Along the ridge.
    pub length: Length,
    /// Across.
    pub width: Length,
    /// Free along the walls.
    pub from_wall: Length,
    /// Free between pieces.
    pub between: Length,
}

/// What found a place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Placed {
    /// The brooders; all of them.
    pub brooders: Vec<Place>,
    /// Feeders that stand.
    pub feeders: Vec<Place>,
    /// Drinkers that stand.
    pub drinkers: Vec<Place>,
    /// Feeders left over.
    pub feeders_left: usize,
    /// Drinkers left over.
    pub drinkers_left: usize,
}

impl Placed {
    /// Pieces that found no place.
    pub fn left(&self) -> usize {
        self.feeders_left + self.drinkers_left
    }
}

/// A circle of places.
#[derive(Clone, Copy)]
struct Circle {
    radius: f64,
    places: usize,
}

/// Feeders and drinkers in turn on circles round the brooders of a ring: on one halfway between brooder and guard where
/// that holds them, else from the guard inwards, on as few circles as hold them.
pub fn in_ring(ring: RingFloor, feeders: Pieces, drinkers: Pieces) -> Placed {
    let brooders = brooder_places(ring);
    let wanted = feeders.count + drinkers.count;
    let circles = shared_out(&circles(ring, widest(feeders, drinkers), wanted), wanted);
    let standing: usize = circles.iter().map(|circle| circle.places).sum();
    let mut placed = Placed { brooders, ..Placed::default() };
    let mut feeders_to_place = feeders_among(feeders.count, drinkers.count, standing);
    let mut places_to_fill = standing;
    for (at, circle) in circles.iter().enumerate() {
        let here = (feeders_to_place * circle.places + places_to_fill / 2) / places_to_fill.max(1);
        feeders_to_place -= here;
        places_to_fill -= circle.places;
        // Circles are turned against each other, so that pieces do not stand in rays.
        fill_circle(&mut placed, *circle, here, 0.5 * (at % 2) as f64);
    }
    placed.feeders_left = feeders.count - placed.feeders.len();
    placed.drinkers_left = drinkers.count - placed.drinkers.len();
    placed
}

/// One brooder in the middle, or several round it with room between them.
fn brooder_places(ring: RingFloor) -> Vec<Place> {
    let count = ring.brooders.count;
    let out = brooders_out(ring);
    (0..count).map(|at| on_circle(out, at as f64 / count as f64)).collect()
}

/// How far out of the middle brooders stand, metres.
fn brooders_out(ring: RingFloor) -> f64 {
    if ring.brooders.count < 2 {
        return 0.0;
    }
    let apart = (ring.brooders.across + ring.between).in_metres();
    let touching = apart / (2.0 * (PI / ring.brooders.count as f64).sin());
    touching.max(BROODERS_OUT * ring.radius.in_metres())
}

/// The circles to use, with all places each has room for.
fn circles(ring: RingFloor, piece: Length, wanted: usize) -> Vec<Circle> {
    let (half, between) = (piece.in_metres() / 2.0, ring.between.in_metres());
    let heated = match ring.brooders.count {
        0 => 0.0,
        _ => brooders_out(ring) + ring.brooders.across.in_metres() / 2.0,
    };
    let inner = heated + between + half;
    let outer = (ring.radius - ring.from_guard).in_metres() - half;
    let pitch = 2.0 * half + between;
    let circle = |radius: f64| Circle { radius, places: places_on(radius, pitch).min(wanted) };
    let halfway = circle((inner + outer) / 2.0);
    if inner <= outer && halfway.places >= wanted {
        return vec![halfway];
    }
    let mut circles = Vec::new();
    let mut radius = outer;
    let mut held = 0;
    while radius >= inner && held < wanted {
        circles.push(circle(radius));
        held += circle(radius).places;
        radius -= pitch;
    }
    circles
}

/// How many pieces stand on a circle when their middles keep the pitch in a straight line.
fn places_on(radius: f64, pitch: f64) -> usize {
    if 2.0 * radius < pitch {
        return 1;
    }
    (PI / (pitch / (2.0 * radius)).asin() + 1e-9).floor() as usize
}

/// Takes only as many places as are wanted, the same share of each circle.
fn shared_out(circles: &[Circle], wanted: usize) -> Vec<Circle> {
    let mut room: usize = circles.iter().map(|circle| circle.places).sum();
    let mut wanted = wanted.min(room);
    let mut shared = Vec::new();
    for circle in circles {
        let places = (wanted * circle.places).div_ceil(room.max(1)).min(wanted);
        room -= circle.places;
        wanted -= places;
        shared.push(Circle { places, ..*circle });
    }
    shared
}

/// How many of the places go to feeders, in the ratio of what is wanted.
fn feeders_among(feeders: usize, drinkers: usize, places: usize) -> usize {
    let all = feeders + drinkers;
    ((feeders * places + all / 2) / all.max(1)).min(feeders)
}

/// Spreads `feeders` evenly among the places of a circle; the others are drinkers. `turned` by that share of a place.
fn fill_circle(placed: &mut Placed, circle: Circle, feeders: usize, turned: f64) {
    let of = circle.places;
    for at in 0..of {
        let place = on_circle(circle.radius, (at as f64 + turned) / of as f64);
        let is_feeder = (at + 1) * feeders / of > at * feeders / of;
        if is_feeder { placed.feeders.push(place) } else { placed.drinkers.push(place) }
    }
}

/// A place on a circle, by the share of a full turn.
fn on_circle(radius: f64, turn: f64) -> Place {
    let angle = 2.0 * PI * turn;
    Place { x: Length::metres(radius * angle.cos()), y: Length::metres(radius * angle.sin()) }
}

fn widest(feeders: Pieces, drinkers: Pieces) -> Length {
    let across = |pieces: Pieces| if pieces.count > 0 { pieces.across } else { Length::metres(0.0) };
    Length::metres(across(feeders).in_metres().max(across(drinkers).in_metres()))
}

/// Hanging feeders and drinkers in rows along the house, a row of one kind beside a row of the other, spread evenly
/// over the floor: the count of rows that comes nearest to a square grid.
pub fn in_house(house: HouseFloor, feeders: Pieces, drinkers: Pieces) -> Placed {
    let piece = widest(feeders, drinkers);
    let all = feeders.count + drinkers.count;
    let (along, across) = (Line::of(house.length, house, piece), Line::of(house.width, house, piece));
    let most_in_row = along.most().min(all);
    let standing = |rows: &Rows| rows.feeders.iter().chain(&rows.drinkers).sum::<usize>();
    let best = (1..=across.most().min(all))
        .map(|rows| Rows::of(rows, most_in_row, feeders.count, drinkers.count))
        .min_by(|a, b| {
            let fuller = standing(b).cmp(&standing(a));
            fuller.then_with(|| a.out_of_square(along, across).total_cmp(&b.out_of_square(along, across)))
        });
    let mut placed = best.map_or_else(Placed::default, |rows| rows.places(along, across));
    placed.feeders_left = feeders.count - placed.feeders.len();
    placed.drinkers_left = drinkers.count - placed.drinkers.len();
    placed
}

/// A line from wall to wall that pieces stand on evenly.
#[derive(Clone, Copy)]
struct Line {
    length: f64,
    /// From the wall to the middle of the first, at least.
    edge: f64,
    /// From middle to middle, at least.
    pitch: f64,
}

impl Line {
    fn of(length: Length, house: HouseFloor, piece: Length) -> Line {
        Line {
            length: length.in_metres(),
            edge: (house.from_wall + piece / 2.0).in_metres(),
            pitch: (piece + house.between).in_metres(),
        }
    }

    /// How many stand on it.
    fn most(&self) -> usize {
        let free = self.length - 2.0 * self.edge;
        if free >= 0.0 { (free / self.pitch + 1e-9).floor() as usize + 1 } else { 0 }
    }

    /// How far apart so many stand: each in the middle of its share of the line, unless they then come too near one
    /// another or a wall.
    fn spacing(&self, of: usize) -> f64 {
        let share = self.length / of as f64;
        let from_wall_to_wall = (self.length - 2.0 * self.edge) / (of.max(2) - 1) as f64;
        if of < 2 { share } else { share.max(self.pitch).min(from_wall_to_wall) }
    }

    fn place(&self, at: usize, of: usize) -> Length {
        let from_middle = at as f64 - (of as f64 - 1.0) / 2.0;
        Length::metres(self.length / 2.0 + from_middle * self.spacing(of))
    }
}

/// Rows along the house by turns: how many stand in each row of a kind.
struct Rows {
    feeders_first: bool,
    feeders: Vec<usize>,
    drinkers: Vec<usize>,
}

impl Rows {
    fn of(rows: usize, most_in_row: usize, feeders: usize, drinkers: usize) -> Rows {
        let feeders_first = feeders >= drinkers;
        let feeder_rows = match (feeders, drinkers) {
            (0, _) => 0,
            (_, 0) => rows,
            _ if feeders_first => rows.div_ceil(2),
            _ => rows / 2,
        };
        let deal = |count: usize, among: usize| {
            let standing = count.min(among * most_in_row);
            (0..among).map(|row| standing * (row + 1) / among - standing * row / among).collect()
        };
        Rows {
            feeders_first,
            feeders: deal(feeders, feeder_rows),
            drinkers: deal(drinkers, rows - feeder_rows),
        }
    }

    fn count(&self) -> usize {
        self.feeders.len() + self.drinkers.len()
    }

    /// 0 where pieces are as far apart along the house as across it, more the less they are.
    fn out_of_square(&self, along: Line, across: Line) -> f64 {
        let fullest = self.feeders.iter().chain(&self.drinkers).copied().max().unwrap_or(0).max(1);
        (along.spacing(fullest) / across.spacing(self.count().max(1))).ln().abs()
    }

    fn places(&self, along: Line, across: Line) -> Placed {
        let every = if self.feeders.is_empty() || self.drinkers.is_empty() { 1 } else { 2 };
        let of_kind = |counts: &[usize], first: usize| -> Vec<Place> {
            let rows = counts.iter().enumerate().map(|(row, count)| (first + every * row, *count));
            let row = |(row, count)| {
                let y = across.place(row, self.count());
                (0..count).map(move |at| Place { x: along.place(at, count), y })
            };
            rows.flat_map(row).collect()
        };
        let second = every - 1;
        let (feeders_from, drinkers_from) = if self.feeders_first { (0, second) } else { (second, 0) };
        Placed {
            feeders: of_kind(&self.feeders, feeders_from),
            drinkers: of_kind(&self.drinkers, drinkers_from),
            ..Placed::default()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(radius: f64, brooders: usize) -> RingFloor {
        RingFloor {
            radius: Length::metres(radius),
            brooders: Pieces { count: brooders, across: BROODER },
            from_guard: FROM_GUARD,
            between: BETWEEN,
        }
    }

    fn trays(count: usize) -> Pieces {
        Pieces { count, across: CHICK_TRAY }
    }

    fn founts(count: usize) -> Pieces {
        Pieces { count, across: CHICK_FOUNT }
    }

    fn turn(place: &Place) -> f64 {
        place.y.in_metres().atan2(place.x.in_metres())
    }

    #[test]
    fn as_many_of_each_stand_by_turns() {
        let placed = in_ring(ring(1.86, 1), trays(5), founts(5));
        assert_eq!((placed.feeders.len(), placed.drinkers.len(), placed.left()), (5, 5, 0));
        let mut all: Vec<(f64, bool)> = placed.feeders.iter().map(|place| (turn(place), true)).collect();
        all.extend(placed.drinkers.iter().map(|place| (turn(place), false)));
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        assert!(all.windows(2).all(|pair| pair[0].1 != pair[1].1), "{all:?}");
    }

    #[test]
    fn a_full_ring_says_what_is_left() {
        let placed = in_ring(ring(1.0, 1), trays(20), founts(10));
        // Middles at most 1 - 0.2 - 0.2 = 0.6 m out, but the brooder wants them at 0.4 + 0.1 + 0.2.
        assert_eq!((placed.feeders.len(), placed.drinkers.len()), (0, 0));
        assert_eq!((placed.feeders_left, placed.drinkers_left), (20, 10));
        // At 1.86 m the outer circle is 1.46 m out: pi / asin(0.5 / 2.92) is 18 places; the next is 0.96 m out: 11.
        let placed = in_ring(ring(1.86, 1), trays(20), founts(10));
        assert_eq!((placed.feeders.len(), placed.drinkers.len()), (19, 10));
        assert_eq!((placed.feeders_left, placed.drinkers_left), (1, 0));
    }

    #[test]
    fn joined_rings_keep_their_brooders_apart() {
        let placed = in_ring(ring(2.6, 2), trays(10), founts(10));
        assert_eq!((placed.brooders.len(), placed.left()), (2, 0));
        assert_eq!(in_ring(ring(2.6, 0), trays(3), founts(0)).brooders, []);
    }

    #[test]
    fn a_house_hangs_them_in_rows_by_turns() {
        let house = HouseFloor {
            length: Length::metres(18.0),
            width: Length::metres(9.0),
            from_wall: FROM_WALL,
            between: BETWEEN,
        };
        let feeders = Pieces { count: 40, across: HANGING_FEEDER };
        let drinkers = Pieces { count: 20, across: BELL_DRINKER };
        let placed = in_house(house, feeders, drinkers);
        assert_eq!((placed.feeders.len(), placed.drinkers.len(), placed.left()), (40, 20, 0));
        for feeder in &placed.feeders {
            assert!(placed.drinkers.iter().all(|drinker| drinker.y != feeder.y), "a row holds one kind");
        }
        let tiny = HouseFloor { length: Length::metres(3.0), width: Length::metres(1.3), ..house };
        assert_eq!(in_house(tiny, feeders, drinkers).left(), 60);
    }

    #[test]
    fn what_is_no_floor_holds_nothing() {
        for radius in [0.0, -1.0, f64::NAN] {
            assert_eq!(in_ring(ring(radius, 1), trays(3), founts(3)).left(), 6);
        }
        let nothing = Pieces { count: 4, across: Length::metres(0.0) };
        let bare = RingFloor { between: Length::metres(0.0), ..ring(1.5, 0) };
        assert_eq!(in_ring(bare, nothing, nothing).left(), 0);
    }
}
