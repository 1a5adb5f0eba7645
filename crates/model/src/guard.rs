//! The brooder guard: rings of strips cut from sheets and joined with an overlap.
//!
//! Geometry throughout. A ring of n strips has circumference n × (length − overlap). Thin sheet bends to a circle;
//! stiff sheet stands as a polygon with its joints as corners, and holds less.

use std::f64::consts::PI;

use quantity::physical::{round_down, round_up};
use quantity::{Area, Length};

/// How a joined ring stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// The strips bend evenly.
    Circle,
    /// The strips stay straight; at least three of them.
    Polygon,
}

/// Sheets of this thickness and more stand straight between their joints (common practice: 9 mm gives a polygon).
pub const STIFF_FROM_MM: f64 = 9.0;

/// Thin sheet bends to a radius of about so many times its thickness: 6 mm to 1.5 m (from memory).
pub const BEND_RADIUS_PER_THICKNESS: f64 = 250.0;

/// The more cautious figure met: 4 mm to 1.5 m (common practice).
pub const BEND_RADIUS_PER_THICKNESS_CAUTIOUS: f64 = 375.0;

impl Shape {
    /// The shape of a ring of sheet this thick; sheet of unknown thickness is taken to bend.
    pub fn of_sheet(thickness: Option<Length>) -> Shape {
        match thickness {
            Some(thickness) if thickness.in_millimetres() >= STIFF_FROM_MM => Shape::Polygon,
            _ => Shape::Circle,
        }
    }

    fn least_strips(self) -> f64 {
        match self {
            Shape::Circle => 1.0,
            Shape::Polygon => 3.0,
        }
    }
}

/// What one strip adds to the ring: its length less one overlap.
pub fn net_length(sheet_length: Length, overlap: Length) -> Length {
    sheet_length - overlap
}

/// Rings needed so that none holds more than `per_ring` chicks.
pub fn rings(chicks: f64, per_ring: f64) -> f64 {
    round_up(chicks / per_ring)
}

/// Chicks in the fullest ring.
pub fn chicks_in_ring(chicks: f64, rings: f64) -> f64 {
    round_up(chicks / rings)
}

/// Floor that `chicks` need at `chicks_per_m2`.
pub fn asked_area(chicks: f64, chicks_per_m2: f64) -> Area {
    Area::square_metres(chicks / chicks_per_m2)
}

/// The circumference of a circle of that area.
pub fn circumference(area: Area) -> Length {
    Length::metres((4.0 * PI * area.in_square_metres()).sqrt())
}

/// The area inside a ring of `strips` strips.
pub fn ring_area(strips: f64, net: Length, shape: Shape) -> Area {
    let net_m = net.in_metres();
    Area::square_metres(match shape {
        Shape::Circle => (strips * net_m).powi(2) / (4.0 * PI),
        Shape::Polygon => strips * net_m.powi(2) / (4.0 * (PI / strips).tan()),
    })
}

/// Across the ring: the diameter of a circle, or from corner to corner of a polygon (the circle around it).
pub fn ring_diameter(strips: f64, net: Length, shape: Shape) -> Length {
    match shape {
        Shape::Circle => net * strips / PI,
        Shape::Polygon => net / (PI / strips).sin(),
    }
}

/// The least whole number of strips whose ring holds the area. `None` when the strip adds nothing (`net` not positive).
pub fn strips_for(area: Area, net: Length, shape: Shape) -> Option<f64> {
    if net.in_metres() <= 0.0 {
        return None;
    }
    let around = round_up(circumference(area) / net).max(shape.least_strips());
    // A polygon holds less than the circle of its circumference, so the circle's count is where the search begins.
    let mut strips = around;
    while shape == Shape::Polygon && ring_area(strips, net, shape) < area * (1.0 - 1e-9) {
        strips += 1.0;
    }
    Some(strips)
}

/// The overlap at which a ring of `strips` strips holds just the asked area; negative when it cannot.
pub fn overlap_for(area: Area, strips: f64, sheet_length: Length, shape: Shape) -> Length {
    let net_m = match shape {
        Shape::Circle => circumference(area).in_metres() / strips,
        Shape::Polygon => (4.0 * area.in_square_metres() * (PI / strips).tan() / strips).sqrt(),
    };
    sheet_length - Length::metres(net_m)
}

/// Sheets to buy for all strips.
pub fn sheets(strips: f64, strips_per_sheet: f64) -> f64 {
    round_up(strips / strips_per_sheet)
}

/// The height of a strip, when a sheet is sawn lengthwise into `strips_per_sheet` and each cut eats `saw_cut`.
pub fn strip_height(sheet_width: Length, strips_per_sheet: f64, saw_cut: Length) -> Length {
    (sheet_width - saw_cut * (strips_per_sheet - 1.0)) / strips_per_sheet
}

/// How many things of a width stand in a row of a length, with a walkway before, between and behind them.
pub fn fit_in_row(row: Length, width: Length, walkway: Length) -> f64 {
    round_down(((row - walkway) / (width + walkway)).max(0.0))
}

/// The length of house, to the next half metre, in which so many rings stand in straight rows with a walkway around each:
/// as many across its width as go. `None` where not even one stands across it.
pub fn length_for(rings: f64, diameter: Length, width: Length, walkway: Length) -> Option<Length> {
    let across = fit_in_row(width, diameter, walkway);
    let pitch = diameter + walkway;
    let length = |along: f64| pitch * along + walkway;
    (across > 0.0).then(|| Length::metres(round_up(2.0 * length(round_up(rings / across)).in_metres()) / 2.0))
}

/// From the middle of a ring of just the area to where its guard stands nearest.
pub fn nearest_guard(area: Area, strips: f64, shape: Shape) -> Length {
    Length::metres(match shape {
        Shape::Circle => (area.in_square_metres() / PI).sqrt(),
        Shape::Polygon => (area.in_square_metres() / (strips * (PI / strips).tan())).sqrt(),
    })
}

/// The area of a ring whose guard stands so far from its middle where it is nearest: [`nearest_guard`] the other way round.
pub fn area_around(nearest: Length, strips: f64, shape: Shape) -> Area {
    let square = nearest.in_metres().powi(2);
    Area::square_metres(match shape {
        Shape::Circle => PI * square,
        Shape::Polygon => strips * (PI / strips).tan() * square,
    })
}

/// A charcoal pot on its bricks or tray of sand, across (common practice, no source: 0.4 to 0.6 m).
pub const POT: Length = Length::from_base(0.5);

/// Free between an open fire and plywood, curtain or cover (common practice, no source).
pub const FROM_FIRE: Length = Length::from_base(1.0);

/// What a ring bent out of round or a pot set out of the middle can take of it (our judgement).
pub const FROM_FIRE_SPARE: Length = Length::from_base(0.1);

/// One way to place the rings: what a count of rings costs and gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layout {
    /// Rings.
    pub rings: f64,
    /// Chicks in the fullest ring.
    pub chicks_in_ring: f64,
    /// Strips in a ring.
    pub strips_per_ring: f64,
    /// Sheets in all.
    pub sheets: f64,
    /// Across a ring.
    pub diameter: Length,
    /// Chicks a square metre of ring.
    pub true_density: f64,
}

/// The sheets a guard is made from, and how they are joined.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheets {
    /// Length of a sheet, and of a strip.
    pub length: Length,
    /// Overlap at each join.
    pub overlap: Length,
    /// Strips out of one sheet.
    pub strips_per_sheet: f64,
    /// How a ring of them stands.
    pub shape: Shape,
}

/// The layout for a count of rings; `None` when strips add nothing.
pub fn layout(chicks: f64, rings: f64, chicks_per_m2: f64, sheet: Sheets) -> Option<Layout> {
    let chicks_in_ring = chicks_in_ring(chicks, rings);
    let net = net_length(sheet.length, sheet.overlap);
    let strips_per_ring = strips_for(asked_area(chicks_in_ring, chicks_per_m2), net, sheet.shape)?;
    let area = ring_area(strips_per_ring, net, sheet.shape);
    Some(Layout {
        rings,
        chicks_in_ring,
        strips_per_ring,
        sheets: sheets(rings * strips_per_ring, sheet.strips_per_sheet),
        diameter: ring_diameter(strips_per_ring, net, sheet.shape),
        true_density: chicks_in_ring / area.in_square_metres(),
    })
}

/// How the rings stand during one step of the widening schedule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Standing {
    /// `joined` rings opened into one (1 is a ring by itself), with this overlap at every join.
    Rings {
        /// Rings joined into one.
        joined: f64,
        /// Overlap at each join.
        overlap: Length,
        /// Chicks a square metre inside.
        chicks_per_m2: f64,
    },
    /// The guards are gone: the whole floor.
    WholeHouse {
        /// Chicks a square metre of floor.
        chicks_per_m2: f64,
    },
}

/// A floor that rings stand on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Floor {
    /// Along the ridge.
    pub length: Length,
    /// Across.
    pub width: Length,
    /// What birds can use of it.
    pub usable: Area,
    /// Free between rings and to the walls.
    pub walkway: Length,
}

impl Floor {
    /// How many rings of a diameter stand on it in straight rows.
    pub fn rings_that_fit(&self, diameter: Length) -> f64 {
        fit_in_row(self.length, diameter, self.walkway) * fit_in_row(self.width, diameter, self.walkway)
    }
}

/// How to give chicks the room a step asks: slide the overlap, else join rings in equal groups, else the whole house.
///
/// Groups divide the rings evenly, so that no ring is left over, and a group is only proposed where all groups stand on
/// the floor. A joined ring uses all strips of its rings, so that joining two about doubles the room of each chick.
/// `None` for the room asked is the whole house.
pub fn widen(start: Layout, sheet: Sheets, chicks_per_m2: Option<f64>, floor: Floor) -> Standing {
    let rings = start.rings as u32;
    let groups = (1..=rings).filter(|joined| rings.is_multiple_of(*joined));
    chicks_per_m2
        .and_then(|asked| {
            groups.map(f64::from).find_map(|joined| joined_ring(start, sheet, asked, floor, joined))
        })
        .unwrap_or(Standing::WholeHouse {
            chicks_per_m2: start.chicks_in_ring * start.rings / floor.usable.in_square_metres(),
        })
}

/// Rings joined by so many, at the overlap that gives just the room asked; `None` where their strips do not reach round
/// it, or where it does not stand on the floor.
fn joined_ring(start: Layout, sheet: Sheets, asked: f64, floor: Floor, joined: f64) -> Option<Standing> {
    let (chicks, strips) = (start.chicks_in_ring * joined, start.strips_per_ring * joined);
    let area = asked_area(chicks, asked);
    let widest = ring_area(strips, net_length(sheet.length, sheet.overlap), sheet.shape);
    let overlap = overlap_for(area, strips, sheet.length, sheet.shape);
    let diameter = ring_diameter(strips, net_length(sheet.length, overlap), sheet.shape);
    let stands = floor.rings_that_fit(diameter) >= start.rings / joined;
    (area <= widest * (1.0 + 1e-9) && stands).then_some(Standing::Rings {
        joined,
        overlap,
        chicks_per_m2: asked,
    })
}

impl Standing {
    /// Chicks a square metre of ring, or of the whole floor.
    pub fn chicks_per_m2(&self) -> f64 {
        match *self {
            Standing::Rings { chicks_per_m2, .. } | Standing::WholeHouse { chicks_per_m2 } => chicks_per_m2,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: Sheets = Sheets {
        length: Length::from_base(2.44),
        overlap: Length::from_base(0.10),
        strips_per_sheet: 2.0,
        shape: Shape::Circle,
    };

    #[test]
    fn the_overlap_slides_between_asked_and_open() {
        let start = layout(1600.0, 4.0, 50.0, SHEET).unwrap();
        assert_eq!((start.strips_per_ring, start.sheets), (5.0, 10.0));
        let overlap = overlap_for(Area::square_metres(8.0), 5.0, SHEET.length, Shape::Circle);
        let area = ring_area(5.0, net_length(SHEET.length, overlap), Shape::Circle);
        assert!((area.in_square_metres() - 8.0).abs() < 1e-9);
    }

    #[test]
    fn stiff_sheet_needs_more_strips_for_the_same_area() {
        for area in [2.0, 5.0, 8.0, 9.42, 13.0, 40.0] {
            let area = Area::square_metres(area);
            let net = Length::metres(2.34);
            for shape in [Shape::Circle, Shape::Polygon] {
                let strips = strips_for(area, net, shape).unwrap();
                assert!(ring_area(strips, net, shape) >= area * (1.0 - 1e-9));
                if strips > shape.least_strips() {
                    assert!(ring_area(strips - 1.0, net, shape) < area, "one strip fewer would do");
                }
            }
        }
    }

    #[test]
    fn the_length_for_some_rings_holds_them_and_half_a_metre_less_does_not() {
        let metres = Length::metres;
        for rings in 1..=9 {
            for (diameter, width, walkway) in
                [(2.98, 9.0, 0.5), (3.72, 9.0, 0.5), (1.5, 6.0, 0.0), (4.0, 7.0, 1.0)]
            {
                let (diameter, width, walkway) = (metres(diameter), metres(width), metres(walkway));
                let length = length_for(f64::from(rings), diameter, width, walkway).unwrap();
                let holds = |length| {
                    fit_in_row(length, diameter, walkway) * fit_in_row(width, diameter, walkway)
                        >= f64::from(rings)
                };
                assert!(holds(length) && !holds(length - metres(0.5)), "{rings} of {diameter:?}");
            }
        }
        assert_eq!(length_for(6.0, metres(2.98), metres(9.0), metres(0.5)), Some(metres(11.0)));
        assert_eq!(length_for(1.0, metres(9.0), metres(9.0), metres(0.5)), None);
    }

    #[test]
    fn a_straight_strip_stands_nearer_than_a_bent_one() {
        let area = Area::square_metres(PI);
        assert_eq!(nearest_guard(area, 4.0, Shape::Circle).in_metres(), 1.0);
        let square = nearest_guard(Area::square_metres(4.0), 4.0, Shape::Polygon).in_metres();
        assert!((square - 1.0).abs() < 1e-12, "{square}");
        for shape in [Shape::Circle, Shape::Polygon] {
            let area = area_around(nearest_guard(area, 5.0, shape), 5.0, shape);
            assert!((area.in_square_metres() - PI).abs() < 1e-12, "{area:?}");
        }
    }

    #[test]
    fn a_strip_shorter_than_its_overlap_makes_no_ring() {
        assert_eq!(strips_for(Area::square_metres(8.0), Length::metres(0.0), Shape::Circle), None);
        assert_eq!(strips_for(Area::square_metres(8.0), Length::metres(-0.2), Shape::Polygon), None);
    }

    fn floor(length: f64, width: f64) -> Floor {
        let (length, width) = (Length::metres(length), Length::metres(width));
        Floor { length, width, usable: length * width, walkway: Length::metres(0.5) }
    }

    #[test]
    fn rings_widen_then_join_then_go() {
        let start = layout(1600.0, 4.0, 50.0, SHEET).unwrap();
        let at = |density| widen(start, SHEET, Some(density), floor(18.0, 9.0));
        assert!(matches!(at(40.0), Standing::Rings { joined: 1.0, .. }));
        assert!(matches!(at(30.0), Standing::Rings { joined: 2.0, .. }));
        // Two joined for 20 a square metre would be 7.1 m across: two of them stand in 18 m, not four in a ring of 9 m.
        assert!(matches!(at(20.0), Standing::Rings { joined: 2.0, .. }));
        assert!(matches!(at(12.0), Standing::WholeHouse { .. }));
    }

    #[test]
    fn no_ring_is_left_over_and_none_is_wider_than_the_house() {
        for rings in 1..=9 {
            for width in [5.0, 7.0, 9.0, 12.0] {
                let start = layout(1600.0, f64::from(rings), 40.0, SHEET).unwrap();
                for density in [38.0, 30.0, 25.0, 20.0, 14.0] {
                    let standing = widen(start, SHEET, Some(density), floor(18.0, width));
                    if let Standing::Rings { joined, overlap, .. } = standing {
                        assert_eq!(f64::from(rings) % joined, 0.0);
                        let net = net_length(SHEET.length, overlap);
                        let across = ring_diameter(start.strips_per_ring * joined, net, Shape::Circle);
                        assert!(across.in_metres() + 1.0 <= width, "{rings} rings, {width} m, {density}");
                    }
                }
            }
        }
    }
}
