//! The brooder guard: rings, strips, sheets, overlap.

use model::guard::{self, Shape};
use quantity::{Answers, Area, Length, Series, Status, Unit};

use super::Family;
use crate::outcome::Outcome;
use crate::rule::{FigureSpec, Input, Origin, exact, field, figure, if_told};
use crate::series::{SeriesSpec, Until, Way};
use crate::sums::{Sum, asks, may_ask};

/// The family.
pub static FAMILY: Family = Family { figures: FIGURES, fields: &[], sums: SUMS, series: SERIES, shapes: &[] };

static SUMS: &[Sum] = &[Sum {
    name: "ring",
    inputs: &[
        asks("chicks", "batch.chicks"),
        asks("chicks_per_m2", "guard.chicks_per_m2"),
        asks("sheet_length_m", "guard.sheet_length_m"),
        asks("overlap_m", "guard.overlap_m"),
        asks("chicks_per_ring", "guard.chicks_per_ring"),
        may_ask("brooder", "brooding.brooder"),
        may_ask("strips_per_sheet", "guard.strips_per_sheet"),
        may_ask("sheet_thickness_mm", "guard.sheet_thickness_mm"),
    ],
    figures: &[
        "guard.rings",
        "guard.strips_per_ring",
        "guard.ring_diameter",
        "guard.ring_area",
        "guard.asked_area",
        "guard.true_density",
        "guard.overlap_asked",
        "guard.sheets",
    ],
    caution: Some("caution-guard-1"),
}];

static SERIES: &[SeriesSpec] = &[SeriesSpec {
    id: "guard.density_by_day",
    unit: Unit::PerSquareMetre,
    decimals: 1,
    first_day: 0,
    until: Until::Sale,
    way: Way::Procedure {
        made_from: &[
            "guard.chicks_in_ring",
            "guard.rings",
            "guard.overlap_asked",
            "guard.true_density",
            "space.floor_area",
        ],
        source: "ring-density",
        status: Status::CommonPractice,
        work_out: density_by_day,
    },
}];

/// Days of age that the series covers: three weeks, after which no guard stands.
const BROODING_DAYS: i32 = 21;

/// Chicks a square metre of ring on each day, by the steps of widening.
fn density_by_day(answers: &Answers, outcome: &Outcome) -> Option<Series> {
    let steps = crate::plan::widening(answers, outcome);
    let on = |day: i32| steps.iter().rev().find(|step| step.from_day <= day);
    let values = (0..=BROODING_DAYS).map(|day| Some(on(day)?.standing.chicks_per_m2()));
    Some(Series {
        id: "guard.density_by_day",
        index: (0..=BROODING_DAYS).map(f64::from).collect(),
        values: values.collect::<Option<Vec<f64>>>()?,
        low: Vec::new(),
        high: Vec::new(),
        kind: None,
    })
}

const RATED: &str = "brooding.brooder_chicks";

static FIGURES: &[FigureSpec] = &[
    FigureSpec {
        id: "guard.chicks_per_ring",
        unit: Unit::Chicks,
        decimals: 0,
        rules: &[
            exact(
                "ring-by-two-kinds",
                "min(m, floor(k / (b + e)))",
                &[
                    field("m", PER_RING),
                    figure("k", "guard.brooders_carry"),
                    field("b", "brooding.brooders"),
                    field("e", "brooding.second_brooders"),
                ],
                |x| Some(x[0].min((x[1] / (x[2] + x[3])).floor())),
            )
            .when(two_kinds_are_rated)
            .from("brooder-ratings", Status::Derived),
            exact("ring-by-rated-brooder", "min(m, r)", &[field("m", PER_RING), field("r", RATED)], |x| {
                Some(x[0].min(x[1]))
            })
            .when(|answers| answers.number(RATED).is_some())
            .from("label", Status::Derived),
            exact(
                "ring-by-charcoal-pot",
                "min(m, r)",
                &[field("m", PER_RING), rating("charcoal-pot", || rated("charcoal-pot"))],
                |x| Some(x[0].min(x[1])),
            )
            .when(|answers| answers.choice("brooding.brooder") == Some("charcoal-pot"))
            .from("brooder-ratings", Status::Published),
            exact(
                "ring-by-gas-hover",
                "min(m, r)",
                &[field("m", PER_RING), rating("gas-hover", || rated("gas-hover"))],
                |x| Some(x[0].min(x[1])),
            )
            .when(|answers| answers.choice("brooding.brooder") == Some("gas-hover"))
            .from("brooder-ratings", Status::FromMemory),
            exact("ring-as-asked", "m", &[field("m", PER_RING)], |x| Some(x[0])).from("grower", Status::Told),
        ],
    },
    FigureSpec {
        id: "guard.first_rating",
        unit: Unit::Chicks,
        decimals: 0,
        rules: &[
            exact("first-rating-told", "r", &[field("r", RATED)], |x| Some(x[0]))
                .when(|answers| answers.number(RATED).is_some())
                .from("label", Status::Told),
            exact(
                "first-rating-charcoal-pot",
                "r",
                &[rating("charcoal-pot", || rated("charcoal-pot"))],
                |x| Some(x[0]),
            )
            .when(|answers| answers.choice("brooding.brooder") == Some("charcoal-pot"))
            .from("brooder-ratings", Status::Published),
            exact("first-rating-gas-hover", "r", &[rating("gas-hover", || rated("gas-hover"))], |x| {
                Some(x[0])
            })
            .when(|answers| answers.choice("brooding.brooder") == Some("gas-hover"))
            .from("brooder-ratings", Status::FromMemory),
        ],
    },
    FigureSpec {
        id: "guard.brooders_carry",
        unit: Unit::Chicks,
        decimals: 0,
        rules: &[exact(
            "brooders-carry",
            "b * min(r, m) + e * min(z, m)",
            &[
                field("b", "brooding.brooders"),
                figure("r", "guard.first_rating"),
                field("e", "brooding.second_brooders"),
                figure("z", "guard.second_rating"),
                field("m", PER_RING),
            ],
            |x| Some(x[0] * x[1].min(x[4]) + x[2] * x[3].min(x[4])),
        )],
    },
    FigureSpec {
        id: "guard.rings",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "rings",
            "ceil(c / m)",
            &[field("c", "batch.chicks"), figure("m", "guard.chicks_per_ring")],
            |x| Some(guard::rings(x[0], x[1])),
        )],
    },
    FigureSpec {
        id: "guard.rings_without_brooder",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "rings-without-brooder",
            "max(0, r - b - e)",
            &[
                figure("r", "guard.rings"),
                field("b", "brooding.brooders"),
                if_told("e", "brooding.second_brooders"),
            ],
            |x| Some((x[0] - x[1] - x[2]).max(0.0)),
        )],
    },
    FigureSpec {
        id: "guard.chicks_in_ring",
        unit: Unit::Chicks,
        decimals: 0,
        rules: &[exact(
            "chicks-in-ring",
            "ceil(c / r)",
            &[field("c", "batch.chicks"), figure("r", "guard.rings")],
            |x| Some(guard::chicks_in_ring(x[0], x[1])),
        )],
    },
    FigureSpec {
        id: "guard.asked_area",
        unit: Unit::SquareMetre,
        decimals: 2,
        rules: &[exact(
            "asked-area",
            "n / d",
            &[figure("n", "guard.chicks_in_ring"), field("d", "guard.chicks_per_m2")],
            |x| Some(guard::asked_area(x[0], x[1]).in_square_metres()),
        )],
    },
    FigureSpec {
        id: "guard.strip_net",
        unit: Unit::Metre,
        decimals: 2,
        rules: &[exact(
            "strip-net",
            "l - o",
            &[field("l", "guard.sheet_length_m"), field("o", "guard.overlap_m")],
            |x| Some(guard::net_length(Length::metres(x[0]), Length::metres(x[1])).in_metres()),
        )],
    },
    FigureSpec {
        id: "guard.strips_per_ring",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[
            exact(
                "strips-polygon",
                "least(n, 3, n * s ^ 2 / (4 * tan(pi / n)) - A)",
                &[figure("A", "guard.asked_area"), figure("s", "guard.strip_net")],
                |x| guard::strips_for(Area::square_metres(x[0]), Length::metres(x[1]), Shape::Polygon),
            )
            .when(stands_straight)
            .from("geometry", Status::Exact),
            exact(
                "strips-circle",
                "max(1, ceil(sqrt(4 * pi * A) / s))",
                &[figure("A", "guard.asked_area"), figure("s", "guard.strip_net")],
                |x| guard::strips_for(Area::square_metres(x[0]), Length::metres(x[1]), Shape::Circle),
            )
            .from("geometry", Status::Exact),
        ],
    },
    FigureSpec {
        id: "guard.ring_diameter",
        unit: Unit::Metre,
        decimals: 2,
        rules: &[
            exact("diameter-polygon", "s / sin(pi / n)", RING, |x| {
                Some(guard::ring_diameter(x[0], Length::metres(x[1]), Shape::Polygon).in_metres())
            })
            .when(stands_straight)
            .from("geometry", Status::Exact),
            exact("diameter-circle", "n * s / pi", RING, |x| {
                Some(guard::ring_diameter(x[0], Length::metres(x[1]), Shape::Circle).in_metres())
            })
            .from("geometry", Status::Exact),
        ],
    },
    FigureSpec {
        id: "guard.ring_area",
        unit: Unit::SquareMetre,
        decimals: 2,
        rules: &[
            exact("area-polygon", "n * s ^ 2 / (4 * tan(pi / n))", RING, |x| {
                Some(guard::ring_area(x[0], Length::metres(x[1]), Shape::Polygon).in_square_metres())
            })
            .when(stands_straight)
            .from("geometry", Status::Exact),
            exact("area-circle", "(n * s) ^ 2 / (4 * pi)", RING, |x| {
                Some(guard::ring_area(x[0], Length::metres(x[1]), Shape::Circle).in_square_metres())
            })
            .from("geometry", Status::Exact),
        ],
    },
    FigureSpec {
        id: "guard.true_density",
        unit: Unit::PerSquareMetre,
        decimals: 1,
        rules: &[exact(
            "true-density",
            "n / A",
            &[figure("n", "guard.chicks_in_ring"), figure("A", "guard.ring_area")],
            |x| Some(x[0] / x[1]),
        )],
    },
    FigureSpec {
        id: "guard.overlap_asked",
        unit: Unit::Metre,
        decimals: 3,
        rules: &[
            exact("overlap-polygon", "l - sqrt(4 * A * tan(pi / n) / n)", OVERLAP, |x| {
                overlap(Shape::Polygon, x)
            })
            .when(stands_straight)
            .from("geometry", Status::Exact),
            exact("overlap-circle", "l - sqrt(4 * pi * A) / n", OVERLAP, |x| overlap(Shape::Circle, x))
                .from("geometry", Status::Exact),
        ],
    },
    FigureSpec {
        id: "guard.strips",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "strips",
            "r * n",
            &[figure("r", "guard.rings"), figure("n", "guard.strips_per_ring")],
            |x| Some(x[0] * x[1]),
        )],
    },
    FigureSpec {
        id: "guard.sheets",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "sheets",
            "ceil(t / k)",
            &[figure("t", "guard.strips"), field("k", "guard.strips_per_sheet")],
            |x| Some(guard::sheets(x[0], x[1])),
        )],
    },
    FigureSpec {
        id: "guard.sheets_to_buy",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "sheets-to-buy",
            "max(0, h - w)",
            &[figure("h", "guard.sheets"), if_told("w", "guard.sheets_owned")],
            |x| Some((x[0] - x[1]).max(0.0)),
        )],
    },
    FigureSpec {
        id: "guard.strip_height",
        unit: Unit::Metre,
        decimals: 3,
        rules: &[exact(
            "strip-height",
            "(b - (k - 1) * z / 1000) / k",
            &[
                field("b", "guard.sheet_width_m"),
                field("k", "guard.strips_per_sheet"),
                field("z", "guard.saw_cut_mm"),
            ],
            |x| Some(guard::strip_height(Length::metres(x[0]), x[1], Length::millimetres(x[2])).in_metres()),
        )],
    },
    FigureSpec {
        id: "guard.rings_that_fit",
        unit: Unit::Pieces,
        decimals: 0,
        rules: &[exact(
            "rings-that-fit",
            "floor(max(0, (l - g) / (D + g))) * floor(max(0, (W - g) / (D + g)))",
            &[
                figure("l", "brooding.heated_length"),
                field("W", "house.width_m"),
                figure("D", "guard.ring_diameter"),
                field("g", "guard.walkway_m"),
            ],
            |x| {
                let (ring, walkway) = (Length::metres(x[2]), Length::metres(x[3]));
                let along = |row| guard::fit_in_row(Length::metres(row), ring, walkway);
                Some(along(x[0]) * along(x[1]))
            },
        )
        .from("geometry", Status::Exact)],
    },
    FigureSpec {
        id: "guard.length_for_rings",
        unit: Unit::Metre,
        decimals: 1,
        rules: &[exact(
            "length-for-rings",
            "ceil(2 * (ceil(r / floor(max(0, (W - g) / (D + g)))) * (D + g) + g)) / 2",
            &[
                figure("r", "guard.rings"),
                field("W", "house.width_m"),
                figure("D", "guard.ring_diameter"),
                field("g", "guard.walkway_m"),
            ],
            |x| {
                let metres = Length::metres;
                guard::length_for(x[0], metres(x[2]), metres(x[1]), metres(x[3])).map(Length::in_metres)
            },
        )
        .from("geometry", Status::Exact)],
    },
    FigureSpec {
        id: "guard.first_day_radius",
        unit: Unit::Metre,
        decimals: 2,
        rules: &[
            exact("first-day-radius-polygon", "sqrt(A / (n * tan(pi / n)))", FIRST_DAY, |x| {
                Some(guard::nearest_guard(Area::square_metres(x[0]), x[1], Shape::Polygon).in_metres())
            })
            .when(stands_straight)
            .from("geometry", Status::Exact),
            exact("first-day-radius-circle", "sqrt(A / pi)", &[figure("A", "guard.asked_area")], |x| {
                Some(guard::nearest_guard(Area::square_metres(x[0]), 1.0, Shape::Circle).in_metres())
            })
            .from("geometry", Status::Exact),
        ],
    },
    FigureSpec {
        id: "guard.fire_to_guard",
        unit: Unit::Metre,
        decimals: 2,
        rules: &[exact("fire-to-guard", "R - 0.5 / 2", &[figure("R", "guard.first_day_radius")], |x| {
            Some(x[0] - guard::POT.in_metres() / 2.0)
        })
        .when(super::fuel::any_charcoal)
        .from("common-practice", Status::CommonPractice)],
    },
    FigureSpec {
        id: "guard.floor_taken",
        unit: Unit::SquareMetre,
        decimals: 1,
        rules: &[exact(
            "floor-taken",
            "r * (D + g) ^ 2",
            &[figure("r", "guard.rings"), figure("D", "guard.ring_diameter"), field("g", "guard.walkway_m")],
            |x| Some(x[0] * (x[1] + x[2]).powi(2)),
        )],
    },
    FigureSpec {
        id: "guard.least_bend_radius",
        unit: Unit::Metre,
        decimals: 1,
        rules: &[exact("bend-radius", "250 * t / 1000", &[field("t", "guard.sheet_thickness_mm")], |x| {
            Some(guard::BEND_RADIUS_PER_THICKNESS * x[0] / 1000.0)
        })
        .from("common-practice", Status::CommonPractice)
        .between(|x| {
            let at = |times: f64| times * x[0] / 1000.0;
            Some((at(guard::BEND_RADIUS_PER_THICKNESS), at(guard::BEND_RADIUS_PER_THICKNESS_CAUTIOUS)))
        })],
    },
    FigureSpec {
        id: "guard.cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "guard-cost",
            "h * p",
            &[figure("h", "guard.sheets_to_buy"), field("p", "prices.sheet_each")],
            |x| Some(x[0] * x[1]),
        )],
    },
    FigureSpec {
        id: "guard.brooders_cost",
        unit: Unit::Money,
        decimals: 2,
        rules: &[exact(
            "brooders-cost",
            "n * p",
            &[figure("n", "guard.rings_without_brooder"), field("p", "prices.brooder_each")],
            |x| Some(x[0] * x[1]),
        )],
    },
];

const PER_RING: &str = "guard.chicks_per_ring";

const RING: &[Input] = &[figure("n", "guard.strips_per_ring"), figure("s", "guard.strip_net")];

const FIRST_DAY: &[Input] = &[figure("A", "guard.asked_area"), figure("n", "guard.strips_per_ring")];

const OVERLAP: &[Input] = &[
    field("l", "guard.sheet_length_m"),
    figure("A", "guard.asked_area"),
    figure("n", "guard.strips_per_ring"),
];

fn overlap(shape: Shape, x: &[f64]) -> Option<f64> {
    Some(guard::overlap_for(Area::square_metres(x[1]), x[2], Length::metres(x[0]), shape).in_metres())
}

/// How the rings of these answers stand.
pub(crate) fn shape(answers: &Answers) -> Shape {
    Shape::of_sheet(answers.number("guard.sheet_thickness_mm").map(Length::millimetres))
}

/// Whether what a brooder keeps warm is known of both kinds, and some of the second stand.
fn two_kinds_are_rated(answers: &Answers) -> bool {
    let is_rated = |kind: &str, own: &str| {
        answers.number(own).is_some() || answers.choice(kind).is_some_and(|kind| rated(kind).is_some())
    };
    let first = is_rated("brooding.brooder", RATED) && answers.number("brooding.brooders").is_some();
    let second = is_rated("brooding.second_brooder", "brooding.second_brooder_chicks");
    first && second && super::second_brooder::any(answers)
}

fn stands_straight(answers: &Answers) -> bool {
    shape(answers) == Shape::Polygon
}

pub(super) const fn rating(brooder: &'static str, read: fn() -> Option<f64>) -> Input {
    Input {
        symbol: "r",
        origin: Origin::Table { table: "brooder_chicks", point: brooder, unit: Unit::Chicks, read },
    }
}

pub(super) fn rated(brooder: &str) -> Option<f64> {
    reference::brooder::rating(brooder).ok()?.map(|rating| rating.low)
}
