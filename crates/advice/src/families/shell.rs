//! The heated part of a house (all of it, one end behind a partition, or covered rings) and what it lets out.

use model::disinfectant::Room;
use model::heat::{self, HeatedPart};
use quantity::{Answers, Length, Status, Unit};

use super::Family;
use crate::rule::{FigureSpec, Input, Origin, Rule, exact, field, figure};

/// The family. Its quick sum is that of the heat.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: &[], series: &[], shapes: &[] };

pub(super) const LENGTH: &str = "house.length_m";
pub(super) const WIDTH: &str = "house.width_m";
pub(super) const EAVE: &str = "house.eave_height_m";
pub(super) const RIDGE: &str = "house.ridge_height_m";
pub(super) const HALF_WALL: &str = "house.half_wall_m";
const HEATED: &str = "brooding.heated_length_m";

/// Heat through the edge of a slab for each metre of outer wall, W/mK: ASHRAE, uninsulated, from memory.
const EDGE_W_PER_MK: f64 = 1.26;
/// How far a heat loss worked out from a table of walls can lie off, as a share: our judgement.
const UA_SPREAD: f64 = 0.2;
static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "brooding.heated_length",
        unit: Unit::Metre,
        decimals: 1,
        rules: &[
            exact("heated-end", "min(l, L)", &[field("l", HEATED), field("L", LENGTH)], |x| {
                Some(x[0].min(x[1]))
            })
            .when(heats_an_end),
            exact("heated-whole", "L", &[field("L", LENGTH)], |x| Some(x[0])),
        ],
    },
    FigureSpec {
        id: "brooding.way_round",
        unit: Unit::Metre,
        decimals: 1,
        rules: &[
            exact("way-round-end", "2 * l + W", ROUND, |x| Some(flat(x, true).way_round().in_metres()))
                .when(heats_an_end),
            exact("way-round-whole", "2 * (l + W)", ROUND, |x| Some(flat(x, false).way_round().in_metres())),
        ],
    },
    FigureSpec {
        id: "brooding.wall_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact(
            "heated-walls",
            "o * m",
            &[figure("o", "brooding.way_round"), field("m", HALF_WALL)],
            |x| Some(x[0] * x[1]),
        )],
    },
    FigureSpec {
        id: "brooding.curtain_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact(
            "heated-curtain",
            "o * (h - m)",
            &[figure("o", "brooding.way_round"), field("h", EAVE), field("m", HALF_WALL)],
            |x| Some(x[0] * (x[1] - x[2])),
        )],
    },
    FigureSpec {
        id: "brooding.end_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[
            exact("ends-with-partition", "W * (r - h) / 2 + W * (h + r) / 2", RISE, |x| {
                Some(across(x, true).ends().in_square_metres())
            })
            .when(heats_an_end),
            exact("ends-gables", "W * (r - h)", RISE, |x| Some(across(x, false).ends().in_square_metres())),
        ],
    },
    FigureSpec {
        id: "brooding.roof_area",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact("heated-roof", "l * W * sqrt(1 + ((r - h) / (W / 2)) ^ 2)", PART, |x| {
            Some(part(x).room.roof().in_square_metres())
        })],
    },
    FigureSpec {
        id: "brooding.air_volume",
        unit: Unit::CubicMetre,
        decimals: 0,
        rules: &[exact("heated-air", "l * W * (h + r) / 2", PART, |x| Some(part(x).air().in_cubic_metres()))],
    },
    FigureSpec {
        id: "brooding.roof_with_ceiling",
        unit: Unit::WattPerSquareMetreKelvin,
        decimals: 2,
        rules: &[
            exact(
                "roof-under-ceiling",
                "1 / (1 / u + R)",
                &[let_through("u", "roof", "house.roof", roof), ceiling("R")],
                |x| Some(heat::under_ceiling(x[0], x[1])),
            )
            .when(|answers| answers.choice("house.ceiling").is_some())
            .from("heat-loss", Status::Derived),
            exact("roof-bare", "u", &[let_through("u", "roof", "house.roof", roof)], |x| Some(x[0]))
                .from("heat-loss", Status::Derived),
        ],
    },
    loss(
        "brooding.ua_walls",
        &[through("through-walls", &[figure("A", "brooding.wall_area"), let_through("u", "wall", "house.wall", wall)])],
    ),
    loss(
        "brooding.ua_curtain",
        &[through(
            "through-curtain",
            &[figure("A", "brooding.curtain_area"), let_through("u", "curtain", "house.curtain", curtain)],
        )],
    ),
    loss(
        "brooding.ua_ends",
        &[through("through-ends", &[figure("A", "brooding.end_area"), fixed("u", "curtain-single", || curtain("single"))])],
    ),
    loss(
        "brooding.ua_roof",
        &[through("through-roof", &[figure("A", "brooding.roof_area"), figure("u", "brooding.roof_with_ceiling")])],
    ),
    loss(
        "brooding.ua_floor",
        &[exact("through-floor-edge", "1.26 * o", &[figure("o", "brooding.way_round")], |x| {
            Some(EDGE_W_PER_MK * x[0])
        })
        .from("ashrae-2017", Status::FromMemory)],
    ),
    loss(
        "brooding.ua",
        &[exact(
            "through-whole-house",
            "2 * (L + W) * (m * u1 + (h - m) * u2 + 1.26) + W * (r - h) * u3 + L * W * sqrt(1 + ((r - h) / (W / 2)) ^ 2) * u4",
            &[
                field("L", LENGTH),
                field("W", WIDTH),
                field("h", EAVE),
                field("r", RIDGE),
                field("m", HALF_WALL),
                let_through("u1", "wall", "house.wall", wall),
                let_through("u2", "curtain", "house.curtain", curtain),
                fixed("u3", "curtain-single", || curtain("single")),
                figure("u4", "brooding.roof_with_ceiling"),
            ],
            |x| Some(whole_house_ua(x)),
        )
        .from("heat-loss", Status::Derived)
        .between(|x| spread(whole_house_ua(x)))],
    ),
    loss(
        "brooding.ua_cover",
        &[exact(
            "through-cover",
            "r * A * u",
            &[
                figure("r", "guard.rings"),
                figure("A", "guard.ring_area"),
                fixed("u", "curtain-single", || curtain("single")),
            ],
            |x| Some(x[0] * x[1] * x[2]),
        )
        .when(is_covered)
        .from("heat-loss", Status::Derived)],
    ),
    loss(
        "brooding.ua_guard",
        &[exact(
            "through-guard",
            "n * s * b * u",
            &[
                figure("n", "guard.strips"),
                figure("s", "guard.strip_net"),
                figure("b", "guard.strip_height"),
                fixed("u", "wall-plywood", || wall("plywood")),
            ],
            |x| Some(x.iter().product()),
        )
        .when(is_covered)
        .from("heat-loss", Status::Derived)],
    ),
    loss(
        "brooding.ua_ground",
        &[exact(
            "through-ground",
            "r * A * u",
            &[
                figure("r", "guard.rings"),
                figure("A", "guard.ring_area"),
                fixed("u", "floor-middle", || transmittance("floor", "middle")),
            ],
            |x| Some(x[0] * x[1] * x[2]),
        )
        .when(is_covered)
        .from("heat-loss", Status::FromMemory)],
    ),
    loss(
        "brooding.ua_heated",
        &[
            exact(
                "through-covered-rings",
                "c + g + f",
                &[
                    figure("c", "brooding.ua_cover"),
                    figure("g", "brooding.ua_guard"),
                    figure("f", "brooding.ua_ground"),
                ],
                |x| Some(x.iter().sum()),
            )
            .when(is_covered)
            .from("our-judgement", Status::OurJudgement)
            .between(|x| spread(x.iter().sum())),
            exact(
                "through-heated-part",
                "w + c + e + r + f",
                &[
                    figure("w", "brooding.ua_walls"),
                    figure("c", "brooding.ua_curtain"),
                    figure("e", "brooding.ua_ends"),
                    figure("r", "brooding.ua_roof"),
                    figure("f", "brooding.ua_floor"),
                ],
                |x| Some(x.iter().sum()),
            )
            .between(|x| spread(x.iter().sum())),
        ],
    ),
];

const ROUND: &[Input] = &[figure("l", "brooding.heated_length"), field("W", WIDTH)];
const RISE: &[Input] = &[field("W", WIDTH), field("h", EAVE), field("r", RIDGE)];
const PART: &[Input] =
    &[figure("l", "brooding.heated_length"), field("W", WIDTH), field("h", EAVE), field("r", RIDGE)];

/// Whether one end is closed off: its length is told, it is less than the house, and nobody said there is no partition.
pub(crate) fn heats_an_end(answers: &Answers) -> bool {
    let shorter = answers.number(HEATED).zip(answers.number(LENGTH)).is_some_and(|(end, house)| end < house);
    shorter && answers.choice("brooding.partition") != Some("no")
}

/// Whether covers over the rings are wished for.
pub(crate) fn wants_covers(answers: &Answers) -> bool {
    answers.choice("brooding.cover") == Some("yes")
}

/// Whether the rings are covered: covers are wished for, and it is told that nothing burns under them. Over a fire the plan
/// forbids them, so nothing is counted with them.
pub(crate) fn is_covered(answers: &Answers) -> bool {
    wants_covers(answers) && super::fuel::nothing_burns(answers)
}

/// A figure of heat let out for each degree.
pub(super) const fn loss(id: &'static str, rules: &'static [Rule]) -> FigureSpec {
    FigureSpec { id, unit: Unit::WattPerKelvin, decimals: 0, rules }
}

const fn through(name: &'static str, inputs: &'static [Input]) -> Rule {
    exact(name, "A * u", inputs, |x| Some(x[0] * x[1])).from("heat-loss", Status::Derived)
}

const fn let_through(
    symbol: &'static str,
    point: &'static str,
    field: &'static str,
    read: fn(&str) -> Option<f64>,
) -> Input {
    let unit = Unit::WattPerSquareMetreKelvin;
    Input { symbol, origin: Origin::TableBy { table: "heat_loss", point, unit, field, read } }
}

const fn fixed(symbol: &'static str, point: &'static str, read: fn() -> Option<f64>) -> Input {
    let unit = Unit::WattPerSquareMetreKelvin;
    Input { symbol, origin: Origin::Table { table: "heat_loss", point, unit, read } }
}

const fn ceiling(symbol: &'static str) -> Input {
    let (table, point, unit) = ("heat_loss", "ceiling", Unit::SquareMetreKelvinPerWatt);
    Input { symbol, origin: Origin::TableBy { table, point, unit, field: "house.ceiling", read: resistance } }
}

fn transmittance(element: &str, name: &str) -> Option<f64> {
    reference::heat_loss::transmittance(element, name).ok()?
}

fn resistance(ceiling: &str) -> Option<f64> {
    reference::heat_loss::resistance_of_ceiling(ceiling).ok()?
}

fn wall(name: &str) -> Option<f64> {
    transmittance("wall", name)
}

fn roof(name: &str) -> Option<f64> {
    transmittance("roof", name)
}

fn curtain(name: &str) -> Option<f64> {
    transmittance("curtain", name)
}

/// Length and width alone, for what hangs on the plan of the house only.
fn flat(x: &[f64], partitioned: bool) -> HeatedPart {
    HeatedPart { partitioned, ..part(&[x[0], x[1], 0.0, 0.0]) }
}

/// Width, eave and ridge alone, for what hangs on the cross-section only.
fn across(x: &[f64], partitioned: bool) -> HeatedPart {
    HeatedPart { partitioned, ..part(&[0.0, x[0], x[1], x[2]]) }
}

/// Length, width, eave, ridge.
pub(super) fn part(x: &[f64]) -> HeatedPart {
    let metres = Length::metres;
    let room = Room {
        length: metres(x[0]),
        width: metres(x[1]),
        eave: metres(x[2]),
        ridge: metres(x[3]),
        half_wall: metres(0.0),
    };
    HeatedPart { room, partitioned: false }
}

/// Length, width, eave, ridge, half-wall; then what wall, curtain, gable and roof let through.
fn whole_house_ua(x: &[f64]) -> f64 {
    let room = Room { half_wall: Length::metres(x[4]), ..part(x).room };
    let faces = [room.half_walls(), room.curtain_face(), room.gables(), room.roof()];
    let through: f64 = faces.iter().zip(&x[5..]).map(|(face, u)| face.in_square_metres() * u).sum();
    through + EDGE_W_PER_MK * part(x).way_round().in_metres()
}

fn spread(ua: f64) -> Option<(f64, f64)> {
    Some((ua * (1.0 - UA_SPREAD), ua * (1.0 + UA_SPREAD)))
}
