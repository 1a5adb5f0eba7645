//! Rings of a plan on its floor: in the heat, apart from each other, away from their fire, under their brooders.

use advice::finding::{Detail, Finding, Weight};
use advice::plan::Plan;
use advice::standing::Kind;
use present::{Block, Viewer, plan::Shown};

use crate::sample::{self, number};

/// The demo's plan: six rings of 2.98 m, and a heated end of 9 by 9 m.
const DEMO: &str = include_str!("../../demo/mango-ridge.toml");

/// A plan without its futures, and with one still night instead of hours: what rings hang on is the same, and it is quick.
fn quick(file: &str) -> Plan {
    let one_night: Vec<&str> = file
        .lines()
        .filter(|line| !["hottest_day_c", "months_"].iter().any(|key| line.starts_with(key)))
        .collect();
    advice::plan::of_book(sample::answers(&one_night.join("\n")))
}

fn found<'a>(plan: &'a Plan, name: &str) -> Option<&'a Finding> {
    plan.findings.iter().find(|finding| finding.name == name)
}

/// A number of a finding's sentence.
fn detail(plan: &Plan, finding: &Finding, argument: &str) -> f64 {
    let (_, detail) = finding.details.iter().find(|(name, _)| *name == argument).expect(argument);
    match *detail {
        Detail::Number { value, .. } => value,
        Detail::Figure(id) => number(plan, id),
        _ => panic!("{argument} is no number"),
    }
}

/// floor((9 - 0.5) / 3.48) = 2 rows of 2 stand in the end, however much floor is left between them; 3 rows of 3.48 m and a path
/// are 10.94 m.
#[test]
fn rings_are_held_against_the_heated_end_row_by_row() {
    let plan = quick(DEMO);
    assert_eq!((number(&plan, "guard.rings"), number(&plan, "guard.rings_that_fit")), (6.0, 4.0));
    assert_eq!(number(&plan, "guard.length_for_rings"), 11.0);
    let outside = found(&plan, "rings-outside-heat").expect("six rings do not stand there");
    assert_eq!(outside.weight, Weight::Problem);
    for (argument, want) in [("day", 0.0), ("rings", 6.0), ("fit", 4.0), ("heated", 9.0), ("length", 11.0)] {
        assert_eq!(detail(&plan, outside, argument), want, "{argument}");
    }
    assert_eq!(outside.ways_out, ["longer-heated-end", "ring-count-in-heat", "no-partition"]);
    // The partition at 11 m is the way out that it says.
    let moved = quick(&DEMO.replace("heated_length_m = 9", "heated_length_m = 11"));
    assert!(found(&moved, "rings-outside-heat").is_none());
    assert_eq!(number(&moved, "guard.rings_that_fit"), 6.0);
    let whole = quick(&DEMO.replace("partition = \"yes\"", "partition = \"no\""));
    assert!(found(&whole, "rings-outside-heat").is_none() && number(&whole, "guard.rings_that_fit") == 10.0);
}

/// Rings that fit one by one need more floor once they are joined, and chicks still want heat on that day.
#[test]
fn joined_rings_are_held_against_the_heated_end_too() {
    let plan = quick(&DEMO.replace("heated_length_m = 9", "heated_length_m = 11"));
    let joined = found(&plan, "joined-rings-outside-heat").expect("joined rings do not stand in 11 m");
    let get = |argument| detail(&plan, joined, argument);
    let step = plan.on_floor().into_iter().find(|step| step.joined > 1.0).unwrap();
    assert_eq!((get("day"), get("rings")), (f64::from(step.from_day), step.rings));
    let pitch = step.diameter.in_metres() + 0.5;
    let fit = (10.5 / pitch).floor() * (8.5 / pitch).floor();
    assert_eq!(get("fit"), fit);
    assert!(get("fit") < get("rings") && get("day") < 14.0);
    // Once the heat is off, they may stand anywhere.
    let warm = quick(&DEMO.replace("heated_length_m = 9", "heated_length_m = 11\ndays_d = 3"));
    assert!(found(&warm, "joined-rings-outside-heat").is_none());
}

/// Whatever length a way out says, the rings stand in it.
#[test]
fn an_end_that_is_offered_holds_the_rings() {
    let mut offered = 0;
    for chicks in [300, 1200, 2000] {
        for per_ring in [150, 400] {
            for width in ["6.0", "9.0"] {
                let file = sample::with_charcoal()
                    .replace("chicks = 1600", &format!("chicks = {chicks}"))
                    .replace("chicks_per_ring = 400", &format!("chicks_per_ring = {per_ring}"))
                    .replace("width_m = 9.0", &format!("width_m = {width}"))
                    .replace("length_m = 18.0", "length_m = 30.0")
                    .replace("coldest_night_c = 11", "coldest_night_c = 4");
                for heated in ["heated_length_m = 28", "partition_is = 1"] {
                    let file = match heated {
                        "partition_is = 1" => file
                            .replace("heated_length_m = 9\n", "")
                            .replace("partition = \"yes\"", "partition = \"no\""),
                        longer => file.replace("heated_length_m = 9", longer),
                    };
                    let plan = quick(&file);
                    let ends = plan.findings.iter().flat_map(|finding| {
                        finding
                            .details
                            .iter()
                            .filter(|(name, _)| ["shorter", "end"].contains(name))
                            .map(|(_, end)| end)
                    });
                    for end in ends {
                        let Detail::Number { value, .. } = end else { panic!("{end:?}") };
                        offered += 1;
                        let file = file
                            .replace("heated_length_m = 28", &format!("heated_length_m = {value}"))
                            .replace(
                                "partition = \"no\"",
                                &format!("partition = \"yes\"\nheated_length_m = {value}"),
                            );
                        let then = quick(&file);
                        assert!(
                            found(&then, "rings-outside-heat").is_none(),
                            "{chicks} {per_ring} {width} {value}"
                        );
                        let chicks_m2 = f64::from(chicks) / value / width.parse::<f64>().unwrap();
                        assert!(chicks_m2 <= 20.0 + 1e-9, "{chicks_m2}");
                    }
                }
            }
        }
    }
    assert!(offered > 8, "{offered}");
}

/// The numbers that a drawing tells of itself.
fn metres(tag: &str) -> Option<Vec<f64>> {
    let told = tag.split_once("data-metres=\"")?.1.split('"').next()?;
    Some(told.split(' ').map(|number| number.parse().unwrap()).collect())
}

/// At every step no ring lies on another, all are inside the walls and, where that holds them, inside the heated end; and
/// every piece is inside its ring.
#[test]
fn the_floor_is_drawn_at_every_step() {
    let counts = "chicks_per_m2 = 50";
    let plans = [
        DEMO.to_owned(),
        DEMO.replace("heated_length_m = 9", "heated_length_m = 11"),
        sample::MANGO_RIDGE.to_owned(),
        sample::MANGO_RIDGE.replace(counts, "chicks_per_m2 = 30"),
        sample::MANGO_RIDGE
            .replace("chicks = 1600", "chicks = 2400")
            .replace("length_m = 18.0", "length_m = 40.0"),
        sample::complete().replace("sheet_thickness_mm = 4", "sheet_thickness_mm = 12"),
    ];
    let mut steps = Vec::new();
    for file in plans {
        let plan = quick(&file);
        let viewer = Viewer::plain();
        let document = Shown::new(&plan, &viewer).document();
        let drawing = document
            .every_block()
            .into_iter()
            .find_map(|block| match block {
                Block::Drawing(drawing) if drawing.name == "floor" => Some(drawing.clone()),
                _ => None,
            })
            .expect("the floor is drawn");
        let on_floor = plan.on_floor();
        let floors: Vec<&str> = drawing.svg.split("<rect").skip(1).collect();
        let standing: Vec<_> = on_floor.iter().filter(|step| step.rings <= step.fit_house).collect();
        assert_eq!(floors.len(), standing.len());
        steps.push(floors.len());
        for (floor, step) in floors.iter().zip(standing) {
            let [_, _, length, width] = metres(floor).unwrap()[..] else { panic!("{floor}") };
            let circles: Vec<[f64; 3]> =
                floor.split("<circle").skip(1).filter_map(metres).map(|at| [at[0], at[1], at[2]]).collect();
            let radius = step.diameter.in_metres() / 2.0;
            let is_ring = |circle: &&[f64; 3]| (circle[2] - radius).abs() < 1e-3;
            let rings: Vec<&[f64; 3]> = circles.iter().filter(is_ring).collect();
            assert_eq!(rings.len(), step.rings as usize);
            let part = if step.rings <= step.fit { step.part.in_metres() } else { length };
            for (at, [x, y, r]) in rings.iter().enumerate() {
                assert!(x - r > 0.0 && x + r < part && y - r > 0.0 && y + r < width, "{x} {y} {r} in {part}");
                for [a, b, s] in &rings[at + 1..] {
                    assert!((x - a).hypot(y - b) > r + s, "a ring lies on another");
                }
            }
            for [x, y, r] in circles.iter().filter(|circle| !is_ring(circle)) {
                let inside = |ring: &&[f64; 3]| (x - ring[0]).hypot(y - ring[1]) + r < ring[2];
                assert!(rings.iter().any(inside), "{x} {y} {r} stands in no ring");
            }
            // Whoever does not see it reads it: the day, and where each ring stands.
            assert!(
                drawing.alternative.contains(&format!("day {}", step.from_day)),
                "{}",
                drawing.alternative
            );
        }
        let places =
            on_floor.iter().filter(|step| step.rings <= step.fit_house).map(|step| step.rings).sum::<f64>()
                as usize;
        assert!(drawing.data.rows.len() >= places, "{:?}", drawing.data.rows);
    }
    assert!(steps.iter().filter(|steps| **steps > 1).count() > 3, "drawn as rings widen too: {steps:?}");
}

#[test]
fn pieces_that_find_no_place_are_said() {
    let wide = quick(&sample::MANGO_RIDGE.replace("chicks_per_m2 = 50", "chicks_per_m2 = 30"));
    assert!(found(&wide, "pieces-without-place").is_none());
    // Half as many again in the ring of the first day, and lids of boxes for trays.
    let crowded = sample::complete().replace("chicks_per_m2 = 50", "chicks_per_m2 = 100").replace(
        "feeder_kind = \"hanging-tube\"",
        "feeder_kind = \"hanging-tube\"\nchick_feeder_kind = \"box-lid\"",
    );
    let plan = quick(&crowded);
    let said = found(&plan, "pieces-without-place").expect("they do not stand in it");
    let get = |argument| detail(&plan, said, argument);
    assert_eq!(said.weight, Weight::Look);
    assert_eq!(get("day"), 0.0);
    assert_eq!(get("standing") + get("left"), get("feeders") + get("drinkers"));
    assert!(get("left") > 0.0);
    let rings = number(&plan, "guard.rings");
    assert_eq!(get("feeders"), (number(&plan, "space.chick_feeders") / rings).ceil());
    assert!(said.ways_out.contains(&"trays-for-room"), "{:?}", said.ways_out);
}

/// 200 chicks at 40 a square metre stand in a ring of 2.52 m: 1.26 m less half a pot of 0.5 m leave 1.01 m.
#[test]
fn plywood_is_kept_from_the_fire() {
    let with = |per_ring: u32, brooder: &str| {
        let file = DEMO
            .replace("chicks_per_ring = 400", &format!("chicks_per_ring = {per_ring}"))
            .replace("brooder = \"charcoal-pot\"", &format!("brooder = \"{brooder}\""));
        quick(&file)
    };
    let just = with(200, "charcoal-pot");
    assert!((number(&just, "guard.fire_to_guard") - 1.0116).abs() < 1e-3);
    assert!(found(&just, "fire-just-clear-of-guard").is_some_and(|finding| finding.weight == Weight::Look));
    let near = with(100, "charcoal-pot");
    let said = found(&near, "fire-too-near-guard").expect("a pot in a ring of 1.8 m");
    assert_eq!(said.weight, Weight::Problem);
    assert!((detail(&near, said, "clear") - ((2.5 / std::f64::consts::PI).sqrt() - 0.25)).abs() < 1e-9);
    // At the density it names there is room to spare.
    let density = detail(&near, said, "density");
    let wide = quick(
        &DEMO
            .replace("chicks_per_ring = 400", "chicks_per_ring = 100")
            .replace("chicks_per_m2 = 40", &format!("chicks_per_m2 = {density}")),
    );
    assert!(number(&wide, "guard.fire_to_guard") >= 1.1);
    assert!(
        found(&wide, "fire-too-near-guard").is_none() && found(&wide, "fire-just-clear-of-guard").is_none()
    );
    let gas = with(100, "gas-hover");
    assert!(gas.outcome.get("guard.fire_to_guard").is_none() && found(&gas, "fire-too-near-guard").is_none());
    assert!(found(&with(400, "charcoal-pot"), "fire-too-near-guard").is_none());
}

/// The table of other numbers of rings does not offer rings in silence that a fire or the sheet forbids.
#[test]
fn other_numbers_of_rings_say_what_speaks_against_them() {
    let small = quick(&DEMO.replace("chicks = 1600", "chicks = 450"));
    let of = |rings: f64| {
        let layout = small.layouts.iter().find(|layout| layout.rings == rings).unwrap();
        (layout, small.against(layout))
    };
    for rings in [3.0, 5.0, 8.0] {
        let (layout, against) = of(rings);
        let radius = (layout.chicks_in_ring / 40.0 / std::f64::consts::PI).sqrt();
        assert_eq!(against.too_narrow_for_fire, radius < 1.25, "{rings} rings");
        assert_eq!(against.too_narrow_for_sheet, radius < 1.0, "{rings} rings");
    }
    assert!(of(8.0).1.too_narrow_for_sheet && of(3.0).1.too_narrow_for_fire);
    let demo = quick(DEMO);
    let six = demo.layouts.iter().find(|layout| layout.rings == 6.0).unwrap();
    assert_eq!(demo.against(six).fit, Some(4.0));
    let viewer = Viewer::plain();
    let text = present::text::write(&Shown::new(&small, &viewer).document(), &viewer, false);
    for said in ["too narrow for a pot", "the sheet does not bend so far"] {
        assert!(text.contains(said), "{said}");
    }
}

/// Three hovers for 400 and a pot for 300, but no more than 375 in a ring: 3 * 375 + 300 = 1425, and 75 of 1500 have no place.
#[test]
fn each_brooder_carries_no_more_than_its_ring() {
    let with = |per_ring: u32, chicks: u32| {
        let file = sample::with_two_kinds()
            .replace("chicks = 1600", &format!("chicks = {chicks}"))
            .replace("chicks_per_ring = 400", &format!("chicks_per_ring = {per_ring}"))
            .replace("brooder_chicks = 360", "brooder_chicks = 400");
        quick(&file)
    };
    let plan = with(375, 1500);
    assert_eq!(number(&plan, "guard.brooders_carry"), 1425.0);
    let few = found(&plan, "brooders-carry-too-few").expect("75 chicks have no place");
    for (argument, want) in [("left", 75.0), ("first", 375.0), ("second", 300.0), ("most", 375.0)] {
        assert_eq!(detail(&plan, few, argument), want, "{argument}");
    }
    let table: Vec<_> =
        plan.rings_by_kind().iter().map(|under| (under.kind, under.rings, under.chicks)).collect();
    assert_eq!(table, [(Some(Kind::First), 3.0, 375.0), (Some(Kind::Second), 1.0, 300.0), (None, 1.0, 75.0)]);
    // With room for 400 in a ring all have a place, and what the table gives each ring adds up to all of them.
    for (per_ring, chicks) in [(400, 1500), (400, 1400), (390, 1303), (400, 1000), (375, 1425)] {
        let plan = with(per_ring, chicks);
        assert!(found(&plan, "brooders-carry-too-few").is_none(), "{per_ring} {chicks}");
        let table = plan.rings_by_kind();
        let sum: f64 = table.iter().map(|under| under.rings * under.chicks).sum();
        assert!(sum >= f64::from(chicks) && sum < f64::from(chicks) + 4.0, "{per_ring} {chicks}: {table:?}");
        for under in &table {
            let rated = if under.kind == Some(Kind::First) { 400.0 } else { 300.0 };
            assert!(under.chicks <= f64::min(rated, f64::from(per_ring)), "{table:?}");
        }
    }
}
