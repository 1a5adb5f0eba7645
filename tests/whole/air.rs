//! The air of a planned house by the hour, through the plan file.

use advice::air::{CannotRun, Guess, PlannedAir};
use advice::plan::{self, Plan};
use advice::procedure::By;
use model::air::stress::Band;
use quantity::{Answers, Source};

use crate::sample;

fn answers(plan: &str) -> Answers {
    sample::plan(plan).answers
}

fn air(plan: &str) -> PlannedAir {
    PlannedAir::of(&answers(plan), Guess::AS_TOLD, None).unwrap()
}

/// A line of it with another value.
fn with(key: &str, value: &str) -> String {
    let plan = sample::complete();
    let line =
        plan.lines().find(|line| line.starts_with(&format!("{key} ="))).unwrap_or_else(|| panic!("{key}"));
    plan.replace(line, &format!("{key} = {value}"))
}

#[test]
fn every_hour_from_the_chick_day_to_sale_closes() {
    let air = air(&sample::complete());
    assert_eq!(air.hours.len(), 24 * (air.last_day().unwrap() as usize + 1));
    assert!(air.residual < 1e-9, "{}", air.residual);
    assert!(air.needed.peak_kw() > 5.0 && air.needed.peak_kw() < 60.0, "{}", air.needed.peak_kw());
}

/// Twice the bare curtain, 10 K colder outside: each takes more heat; heaters that are too few say how much they lack.
#[test]
fn what_takes_heat_must_be_given() {
    let usual = air(&sample::complete()).needed.peak_kw();
    assert!(air(&with("coldest_night_c", "3")).needed.peak_kw() > usual * 1.4);
    let few = air(&with("brooders", "1"));
    assert!(few.heat_short_kw() > 5.0);
    let many = air(&with("brooders", "60"));
    assert!(many.heat_short_kw() < 1e-9);
    assert!(
        (few.needed.peak_kw() / many.needed.peak_kw() - 1.0).abs() < 1e-9,
        "what it takes hangs on no heater"
    );
    assert!((few.heat_short_kw() - (few.needed.peak_kw() - 2.6)).abs() < 1e-9);
    let brooding =
        |air: &PlannedAir| air.hours.iter().filter(|hour| hour.is_brooding).cloned().collect::<Vec<_>>();
    let short =
        |air: &PlannedAir| brooding(air).iter().map(|hour| hour.house.shortfall_kw).fold(0.0, f64::max);
    assert!(short(&many) == 0.0 && short(&few) > 2.0);
    assert!(few.hours[5].house.inside_c < few.hours[5].house.target_c.unwrap() - 2.0, "and it is cold");
}

/// A cool season burns more fuel and has fewer hot hours than a hot one.
#[test]
fn seasons_differ_as_a_grower_expects() {
    let cool = |key: &str, value: &str, plan: String| {
        let line = plan.lines().find(|line| line.starts_with(&format!("{key} ="))).unwrap().to_owned();
        plan.replace(&line, &format!("{key} = {value}"))
    };
    let hot = air(&sample::complete());
    let june = cool("mean_c", "17", cool("hottest_day_c", "24", with("coldest_night_c", "6")));
    let june = air(&june);
    assert!(
        june.in_all().heat_kwh > 1.3 * hot.in_all().heat_kwh,
        "{} {}",
        june.in_all().heat_kwh,
        hot.in_all().heat_kwh
    );
    let last = hot.last_day().unwrap();
    assert!(june.hours_at_least(last, Band::Alert) < hot.hours_at_least(last, Band::Alert));
    assert_eq!(june.hours_at_least(last, Band::Danger), 0.0);
}

#[test]
fn a_tight_house_needs_less_and_the_figures_say_between() {
    let answers = answers(&sample::complete());
    let [tight, leaky] =
        Guess::ENDS.map(|guess| PlannedAir::of(&answers, guess, None).unwrap().needed.peak_kw());
    let plan = sample::plan(&sample::complete());
    let worked = plan.outcome.get("brooding.heat").unwrap();
    let band = worked.figure.band.unwrap();
    assert!((band.low - tight).abs() < 1e-9 && (band.high - leaky).abs() < 1e-9);
    assert!(band.low < worked.figure.value.number() && worked.figure.value.number() < band.high);
    let By::Procedure(run) = &worked.by else { panic!("a formula") };
    assert!(run.seed.is_none() && run.accuracy.size() < 1e-6);
}

/// Weather of one's own in place of the plan's: a still night of 25 °C asks for next to no heat.
#[test]
fn weather_by_the_hour_is_followed() {
    use model::air::Hour;
    let mild = |_| {
        Some(
            [Hour { outside_c: 29.0, humidity: 0.5, wind_m_s: 1.0, sun_w_per_m2: 0.0, pressure_pa: None };
                24],
        )
    };
    let mild = PlannedAir::of(&answers(&sample::complete()), Guess::AS_TOLD, Some(&mild)).unwrap();
    assert!(mild.needed.peak_kw() < 0.3 * air(&sample::complete()).needed.peak_kw());
    let none = PlannedAir::of(&answers(&sample::complete()), Guess::AS_TOLD, Some(&|_| None)).unwrap();
    assert!(none.hours.is_empty(), "days without weather are not made up");
}

#[test]
fn what_is_not_told_is_named() {
    let plan = sample::complete();
    let line = plan.lines().find(|line| line.starts_with("hottest_day_c")).unwrap().to_owned();
    let fault = PlannedAir::of(&answers(&plan.replace(&line, "")), Guess::AS_TOLD, None).unwrap_err();
    assert_eq!(fault, CannotRun::NotTold("weather.hottest_day_c"));
}

/// Days of a file stand for the same days of any year; days it lacks are not made up.
#[test]
fn a_file_of_weather_is_found_by_its_days() {
    use advice::weather_file::{self, Fill};
    use quantity::CivilDay;
    let hours = (0..24).map(|hour| format!("2019-09-14T{hour:02}:00+02:00,{}.5,60,1.5", 10 + hour));
    let lines: Vec<String> =
        std::iter::once("time,temperature_c,humidity_pct,wind_m_s".to_owned()).chain(hours).collect();
    let weather = weather_file::read(&lines.join("\n")).unwrap();
    let fill = Fill { latitude_deg: -13.6, wind_m_per_s: 1.5 };
    let day = CivilDay::new(2027, 9, 14).unwrap();
    let at = |day, hour: usize| weather.hours(day, -8, &fill).map(|hours| hours[hour]);
    assert_eq!(at(day, 13).unwrap().outside_c, 23.5);
    assert!(at(day, 12).unwrap().sun_w_per_m2 > 800.0 && at(day, 0).unwrap().sun_w_per_m2 == 0.0);
    assert_eq!(at(day.plus_days(1), 13), None);
    assert_eq!(weather.years(day, day), [-8]);
}

/// A house whose walls reach the eave has nothing to open: that it needs little heat is no comfort.
#[test]
fn a_house_that_cannot_breathe_says_so_first() {
    use present::plan::Shown;
    use present::{Viewer, text};
    // As high as the eave.
    let shut = with("half_wall_m", "2.4");
    let planned = air(&shut);
    assert!(planned.stale_ppm().is_some_and(|ppm| ppm > 5_000.0), "{:?}", planned.stale_ppm());
    let plan = sample::plan(&shut);
    let said =
        text::write(&Shown::new(&plan, &Viewer::plain()).air_document(&planned), &Viewer::plain(), false);
    assert!(said.contains("cannot breathe") && !said.contains("Those you have can."), "{said}");
    assert_eq!(air(&sample::complete()).stale_ppm(), None);
}

/// A cover keeps the warmth at the chicks, and the house around them stays cooler; when it is taken off it is one house again.
#[test]
fn covered_rings_are_a_room_of_their_own() {
    let open = sample::covered().replace("cover = \"yes\"", "cover = \"no\"");
    let (open, covered) = (air(&open), air(&sample::covered()));
    assert!(covered.residual < 1e-9, "{}", covered.residual);
    assert!(covered.needed.peak_kw() < 0.6 * open.needed.peak_kw(), "{}", covered.needed.peak_kw());
    let (of_open, of_covered) = (open.hours[4].house, covered.hours[4].house);
    assert!((of_open.inside_c - of_open.house_c).abs() < 1e-9);
    assert!(of_covered.inside_c > of_covered.house_c + 3.0, "{of_covered:?}");
    let grown = covered.hours.iter().find(|hour| !hour.is_brooding).unwrap().house;
    assert!((grown.inside_c - grown.house_c).abs() < 1e-9);
}

/// Where hours cannot be run, the balance of one cold night stands in, and says so.
#[test]
fn a_plan_without_a_place_falls_back_on_one_night() {
    let plan = sample::complete();
    let line = plan.lines().find(|line| line.starts_with("hottest_day_c")).unwrap().to_owned();
    let plan = sample::plan(&plan.replace(&line, ""));
    let (heat, steady) = ("brooding.heat", "brooding.heat_steady");
    assert_eq!(plan.outcome.number(heat), plan.outcome.number(steady));
    assert_eq!(plan.outcome.get(heat).unwrap().by.name(), "heat-of-steady-night");
    assert_eq!(plan.outcome.get("brooding.preheat_hours").map(|worked| worked.figure.id), None);
    let by_the_hour = sample::plan(&sample::complete());
    assert_eq!(by_the_hour.outcome.get(heat).unwrap().by.name(), "hours-of-heat");
    assert!(
        by_the_hour.outcome.number(heat) > by_the_hour.outcome.number(steady),
        "fire and chicks want air"
    );
}

/// The usual weather of the months is milder than the plan's own days; June burns more than September and has no hot hour.
#[test]
fn months_differ_as_a_grower_expects() {
    let of = |placement: &str| {
        let months = "[weather]\nmonths_coldest_c = [18, 18, 17, 15, 12, 9, 9, 11, 15, 18, 19, 18]\nmonths_warmest_c = [28, 28, 28, 28, 27, 25, 25, 28, 32, 34, 31, 29]\nmonths_humidity_percent = [75, 76, 72, 62, 52, 48, 45, 40, 36, 40, 58, 72]\nmonths_wind_m_per_s = [1, 1, 1, 1, 1, 1, 1, 2, 2, 2, 1, 1]\n";
        let text = sample::complete().replace("[weather]\n", months);
        sample::plan(&text.replace("placement = 2027-09-14", &format!("placement = {placement}")))
    };
    let figure = |plan: &Plan, id: &str| sample::number(plan, id);
    let (september, june) = (of("2027-09-14"), of("2027-06-07"));
    assert!(figure(&september, "air.usual_fuel") < 0.8 * figure(&september, "brooding.fuel_total"));
    assert!(figure(&june, "air.usual_fuel") > 1.2 * figure(&september, "air.usual_fuel"));
    assert!(figure(&september, "air.usual_hot_hours") > 50.0);
    assert!(figure(&june, "air.usual_hot_hours") < 0.2 * figure(&september, "air.usual_hot_hours"));
    let usual = june.outcome.drawn().usual_air().unwrap();
    assert!(usual.residual < 1e-9, "{}", usual.residual);
    assert_eq!(usual.hours.len(), june.outcome.drawn().air().unwrap().hours.len());
    // A plan that tells no months has none of it.
    assert!(sample::plan(&sample::complete()).outcome.get("air.usual_fuel").is_none());
}

/// Eleven months, or a month upside down, are refused with what is wanted.
#[test]
fn months_that_cannot_be_are_refused() {
    let wrong = |line: &str| {
        let text = sample::complete().replace("[weather]\n", &format!("[weather]\n{line}\n"));
        let raws = advice::plan_file::read(&text).unwrap();
        let problems = plan::read(&raws, Source::File, true).problems;
        let viewer = present::Viewer::plain();
        problems
            .iter()
            .map(|problem| present::fault::sentence(problem, &viewer))
            .collect::<Vec<_>>()
            .join(" ")
    };
    let eleven = wrong("months_coldest_c = [18, 18, 17, 15, 12, 9, 9, 11, 15, 18, 19]");
    assert!(eleven.contains("12"), "{eleven}");
    let upside = wrong(
        "months_coldest_c = [18, 18, 17, 15, 12, 9, 9, 11, 15, 18, 19, 18]\nmonths_warmest_c = [28, 28, 28, 28, 27, 8, 25, 28, 32, 34, 31, 29]",
    );
    assert!(upside.contains("warmest below their coldest"), "{upside}");
}

/// Members worked out apart are the same as those worked out together; another seed gives others; the likely is near the plan's
/// own run, and the range is as wide as what is not known.
#[test]
fn many_houses_say_what_is_likely() {
    use advice::air::many::{part, point};
    let answers = answers(&sample::complete());
    let all = part(&answers, 7, 0..60).unwrap();
    let apart: Vec<_> =
        [0..13, 13..14, 14..60].into_iter().flat_map(|numbers| part(&answers, 7, numbers).unwrap()).collect();
    assert_eq!(all, apart);
    assert_ne!(all, part(&answers, 8, 0..60).unwrap());
    let peak = |share: f64| point(&all, share, |member| Some(member.heat_peak_kw)).unwrap();
    let told = air(&sample::complete()).needed.peak_kw();
    assert!((peak(0.5) / told - 1.0).abs() < 0.2, "{} beside {told}", peak(0.5));
    assert!(peak(0.05) < 0.85 * told && peak(0.95) > 1.15 * told, "{} to {}", peak(0.05), peak(0.95));
    assert!(point(&all[..0], 0.5, |member| Some(member.heat_kwh)).is_none());
}

/// What brings heat and what takes it are one sum, in the drawing of each hour as in its numbers.
#[test]
fn drawn_heat_balances() {
    use present::Viewer;
    use present::document::{Block, Document};
    use present::plan::Shown;
    let plan = sample::plan(&sample::complete());
    let planned = air(&sample::complete());
    let Document { blocks, .. } = Shown::new(&plan, &Viewer::plain()).air_document(&planned);
    let drawings = blocks.iter().filter_map(|block| match block {
        Block::Drawing(drawing) if drawing.name.ends_with("-flows") => Some(drawing),
        _ => None,
    });
    let mut seen = 0;
    for drawing in drawings {
        let kilowatts = |side: &str| -> f64 {
            let rows = drawing.data.rows.iter().filter(|row| row[0] == side);
            rows.map(|row| row[2].trim_end_matches(" kW").parse::<f64>().unwrap()).sum()
        };
        let (brings, takes) = (kilowatts("brings"), kilowatts("takes"));
        // Each row is rounded to 0.1 kW, and what reads as nothing is left out.
        let rounding = 0.05 * drawing.data.rows.len() as f64 + 0.002 * brings;
        assert!((brings - takes).abs() <= rounding && brings > 5.0, "{}: {brings} {takes}", drawing.name);
        seen += 1;
    }
    assert_eq!(seen, 2);
    // In watts nothing is left over.
    for hour in &planned.hours {
        let flows = hour.house.heat;
        let ways =
            [flows.birds, flows.heater, flows.sun, flows.walls, flows.curtain, flows.roof, flows.floor];
        let others = [flows.ventilation, flows.evaporation, -flows.stored];
        let most = ways.iter().chain(&others).fold(1.0_f64, |most, way| most.max(way.abs()));
        let left = ways.iter().chain(&others).sum::<f64>();
        assert!(left.abs() < 1e-9 * most, "{left} W of {most}");
    }
}

/// More birds on the same floor wet it more and earlier; the range of what they drink stands around the figure.
#[test]
fn crowded_litter_gets_wet_first() {
    let planned = air(&sample::complete());
    let crowded = air(&with("chicks", "3200"));
    let end = |air: &PlannedAir| air.litter_by_day().last().unwrap().1;
    assert!(end(&crowded) > end(&planned) + 0.02, "{} {}", end(&crowded), end(&planned));
    let (wet, plan) = (crowded.litter_at_least(0.3), planned.litter_at_least(0.3));
    assert!(wet.is_some_and(|wet| plan.is_none_or(|plan| wet < plan)), "{wet:?} {plan:?}");
    // What was dropped while they were brooded stays in the litter when they are let out.
    let by_day = planned.litter_by_day();
    let step = by_day.windows(2).map(|pair| (pair[1].1 - pair[0].1).abs()).fold(0.0, f64::max);
    assert!(step < 0.06, "no day changes the whole of the litter: {step}");
    let plan = sample::plan(&sample::complete());
    let figure = &plan.outcome.get("air.litter_at_sale").unwrap().figure;
    let band = figure.band.unwrap();
    assert!(band.low < figure.value.number() && figure.value.number() < band.high, "{band:?}");
    assert!((figure.value.number() / 100.0 - end(&planned)).abs() < 1e-9);
}
