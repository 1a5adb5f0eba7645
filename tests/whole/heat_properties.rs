//! What must hold for the heat of any plan: a change moves it by just what the printed balance says.

use advice::families;
use advice::plan::{self, Plan};
use quantity::{Answers, Given, Value};

use crate::sample::{self, number};

fn with(answers: &Answers, changes: &[(&str, f64)]) -> Plan {
    let mut moved = answers.clone();
    for (key, value) in changes {
        let given = Given { typed: String::new(), value: Value::Number(*value), line: None, usual: None };
        moved.set(families::field(key).expect(key), given);
    }
    plan::work_out(moved)
}

/// A heated end without covers, so that the walls count.
fn base() -> Plan {
    sample::plan(&sample::with_charcoal())
}

/// The same where hours cannot be followed: one night stands in for them.
fn one_night() -> Plan {
    sample::plan(&sample::with_charcoal().replace("hottest_day_c = 35\n", ""))
}

fn near(got: f64, want: f64) {
    assert!((got - want).abs() <= 1e-9 * want.abs().max(1.0), "{got}, wanted {want}");
}

/// The parts on the page add up to the loss, and the loss, the degrees and the chicks to the heat.
#[test]
fn the_balance_closes() {
    for text in [sample::covered(), sample::with_charcoal()] {
        let plan = sample::plan(&text);
        let get = |id: &str| number(&plan, &format!("brooding.{id}"));
        let parts = if plan.answers.choice("brooding.cover") == Some("yes") {
            ["ua_cover", "ua_guard", "ua_ground", "air_change_loss"].as_slice()
        } else {
            &["ua_walls", "ua_curtain", "ua_ends", "ua_roof", "ua_floor", "air_change_loss"]
        };
        let out: f64 = parts.iter().map(|part| get(part)).sum();
        let warmer = get("target_temperature") - plan.answers.number("weather.coldest_night_c").unwrap();
        near(get("heat_steady") + get("chick_heat"), out * warmer / 1000.0);
    }
}

#[test]
fn ten_degrees_colder_asks_what_the_loss_says() {
    let plan = base();
    let colder = with(&plan.answers, &[("weather.coldest_night_c", 1.0)]);
    let get = |plan: &Plan, id| number(plan, id);
    // Colder air is heavier too, so the air's part is taken from the colder balance.
    let air = get(&colder, "brooding.air_change_loss") - get(&plan, "brooding.air_change_loss");
    let warmer = get(&plan, "brooding.target_temperature") - 11.0;
    let more = (get(&colder, "brooding.loss") * 10.0 + air * warmer) / 1000.0;
    near(get(&colder, "brooding.heat_steady") - get(&plan, "brooding.heat_steady"), more);
    assert!(get(&colder, "brooding.heat") > get(&plan, "brooding.heat"));
}

#[test]
fn half_the_chicks_leave_half_their_warmth_to_the_brooders() {
    let plan = base();
    let half = with(&plan.answers, &[("batch.chicks", 800.0)]);
    let warmth = number(&plan, "brooding.chick_heat");
    near(number(&half, "brooding.chick_heat"), warmth / 2.0);
    near(number(&half, "brooding.heat_steady") - number(&plan, "brooding.heat_steady"), warmth / 2.0);
}

/// The solid wall made twice as high and everything above it lifted by as much: only wall and air change.
#[test]
fn twice_the_wall_asks_twice_what_the_wall_lets_out() {
    let plan = base();
    let taller = with(
        &plan.answers,
        &[("house.half_wall_m", 1.2), ("house.eave_height_m", 3.0), ("house.ridge_height_m", 4.2)],
    );
    let change = |id: &str| number(&taller, id) - number(&plan, id);
    near(number(&taller, "brooding.ua_walls"), 2.0 * number(&plan, "brooding.ua_walls"));
    near(change("brooding.ua_curtain"), 0.0);
    near(change("brooding.ua_roof"), 0.0);
    let warmer = number(&plan, "brooding.target_temperature") - 11.0;
    let more: f64 = ["ua_walls", "ua_ends", "air_change_loss"]
        .iter()
        .map(|part| change(&format!("brooding.{part}")) * warmer / 1000.0)
        .sum();
    near(change("brooding.heat_steady"), more);
    assert!(change("brooding.heat") > 0.0);
}

/// The parts of the hardest hour on the page add up to the heat asked for.
#[test]
fn the_hardest_hour_adds_up() {
    for text in [sample::complete(), sample::with_charcoal(), sample::with_two_kinds()] {
        let plan = sample::plan(&text);
        let hour = plan.outcome.drawn().heat().and_then(advice::air::HeatNeeded::hardest).copied().unwrap();
        let flows = hour.heat;
        let out = flows.ventilation + flows.roof + flows.sun + flows.walls + flows.curtain + flows.floor;
        let left = flows.stored - out - flows.evaporation - flows.birds;
        assert!((left / 1000.0 - number(&plan, "brooding.heat")).abs() < 1e-6, "{left} {hour:?}");
        let document = present::plan::Shown::new(&plan, &present::Viewer::plain()).document();
        let shown = present::text::write(&document, &present::Viewer::plain(), false);
        assert!(shown.contains("Where the heat goes in the hardest hour"), "{shown}");
    }
}

/// The heat of the days adds up to what the fuel is counted from, and falls from day to day.
#[test]
fn the_days_add_up() {
    for text in
        [sample::complete(), sample::with_charcoal(), sample::complete().replace("\"fast\"", "\"slow\"")]
    {
        // Of one night without end.
        let plan = sample::plan(&text.replace("hottest_day_c = 35\n", ""));
        let series = plan.series.iter().find(|series| series.id == "brooding.heat_by_day").unwrap();
        assert_eq!(series.values.len(), 15);
        assert!(series.values.windows(2).all(|pair| pair[1] <= pair[0]), "{:?}", series.values);
        near(series.values.iter().sum::<f64>() * 13.0, number(&plan, "brooding.heat_over_days"));
        // By the hour: no day takes more than its hardest hour all day long.
        let plan = sample::plan(&text);
        let series = plan.series.iter().find(|series| series.id == "brooding.heat_by_day").unwrap();
        assert_eq!(series.values.len(), 15);
        assert!(series.values[14] < series.values[0], "{:?}", series.values);
        near(series.values.iter().copied().fold(0.0, f64::max), number(&plan, "brooding.heat"));
        let most = series.values.iter().sum::<f64>() * 24.0;
        let taken = number(&plan, "brooding.heat_over_days");
        assert!(0.2 * most < taken && taken < most, "{taken} of {most}");
    }
    // The fast curve starts with the chick of 44 g that the first night is counted with.
    let plan = one_night();
    let first = plan.series.iter().find(|series| series.id == "brooding.heat_by_day").unwrap().values[0];
    near(first, number(&plan, "brooding.heat"));
}

/// A partition at the far wall is none, and without a word the whole house is heated.
#[test]
fn the_whole_house_is_heated_unless_told() {
    let text = sample::with_charcoal();
    for whole in [
        text.replace("heated_length_m = 9", "heated_length_m = 18"),
        text.replace("heated_length_m = 9", ""),
        text.replace("partition = \"yes\"", "partition = \"no\""),
    ] {
        let plan = sample::plan(&whole);
        near(number(&plan, "brooding.heat"), number(&plan, "brooding.heat_whole_house"));
        near(number(&plan, "brooding.ua_heated"), number(&plan, "brooding.ua"));
        near(number(&plan, "brooding.saving"), 0.0);
    }
    let end = sample::plan(&text);
    assert!(number(&end, "brooding.heat") < 0.7 * number(&end, "brooding.heat_whole_house"));
    let open = sample::plan(&sample::covered().replace("cover = \"yes\"", "cover = \"no\""));
    let covered = sample::plan(&sample::covered());
    assert!(number(&covered, "brooding.heat") < 0.6 * number(&open, "brooding.heat"));
}

/// A cover over a flame is forbidden, so no heat, fuel, cost or purchase is counted with it: every figure is that of the plan
/// without covers.
#[test]
fn covers_over_a_fire_save_nothing() {
    let with_fire =
        [sample::complete(), sample::with_charcoal(), sample::with_two_kinds(), sample::with_pots_beside()];
    let electric_but_for_a_pot = sample::with_two_kinds()
        .replace("fuel = \"charcoal\"", "fuel = \"electricity\"")
        .replace("second_fuel = \"lpg\"", "second_fuel = \"charcoal\"");
    for text in with_fire.into_iter().chain([electric_but_for_a_pot]) {
        let text = text.replace("hottest_day_c = 35\n", "");
        let work_out = |text: &str| plan::of_book(sample::answers(text));
        let (open, covered) = (work_out(&text), work_out(&text.replace("cover = \"no\"", "cover = \"yes\"")));
        let figures = |plan: &Plan| {
            plan.outcome
                .figures()
                .map(|worked| (worked.figure.id, format!("{:?}", worked.figure)))
                .collect::<Vec<_>>()
        };
        assert_eq!(figures(&covered), figures(&open));
        assert_eq!(format!("{:?}", covered.purchases), format!("{:?}", open.purchases));
        let said = |plan: &Plan| plan.findings.iter().any(|finding| finding.name == "cover-over-fire");
        assert!(said(&covered) && !said(&open));
    }
    let electric = plan::of_book(sample::answers(&sample::covered()));
    assert!(electric.findings.iter().all(|finding| finding.name != "cover-over-fire"));
}

/// With brooders for just the heat needed the air holds the target; with fewer it falls, and with none it is near the night.
#[test]
fn too_few_brooders_leave_chicks_cold() {
    let air_in = |plan: &Plan, brooders: f64, kw: f64| {
        let plan = with(&plan.answers, &[("brooding.brooders", brooders), ("brooding.brooder_kw", kw)]);
        number(&plan, "brooding.coldest_air")
    };
    let ends = |plan: &Plan| (number(plan, "brooding.heat"), number(plan, "brooding.target_temperature"));
    // Of one night without end.
    let plan = one_night();
    let (need, target) = ends(&plan);
    near(air_in(&plan, 10.0, need / 10.0), target);
    assert!(air_in(&plan, 10.0, need / 20.0) < target - 5.0);
    assert!((air_in(&plan, 0.0, 1.0) - 11.5).abs() < 1.0, "the chicks alone warm it by a degree");
    // By the hour: brooders that can just do the hardest hour have had a cold floor to warm before it.
    let plan = base();
    let (need, target) = ends(&plan);
    assert!((target - 1.5..=target).contains(&air_in(&plan, 10.0, need / 10.0)));
    near(air_in(&plan, 10.0, need / 5.0), target);
    assert!(air_in(&plan, 10.0, need / 20.0) < target - 5.0);
    // Chicks warm it by a degree, and a floor that was warm by day by some more.
    assert!((11.0..16.0).contains(&air_in(&plan, 0.0, 1.0)), "{}", air_in(&plan, 0.0, 1.0));
}

/// The gas is never said to be below people's guide, whatever the burner, the house and the wind.
#[test]
fn no_gas_reads_as_little() {
    for (fuel, air) in [("lpg", 30.0), ("charcoal", 30.0), ("kerosene", 3.0), ("lpg", 0.5)] {
        let text = sample::with_charcoal().replace("fuel = \"charcoal\"", &format!("fuel = \"{fuel}\""));
        let plan =
            with(&sample::answers(&text), &[("house.air_changes_per_h", air), ("brooding.brooders", 1.0)]);
        let figure = plan.outcome.get("brooding.carbon_monoxide").unwrap().figure;
        assert!(
            figure.value.number() >= 9.0 && figure.band.is_none_or(|band| band.low >= 9.0),
            "{fuel} {air}"
        );
    }
    for fuel in ["firewood", "rice-husk", "electricity"] {
        let text = sample::with_charcoal().replace("fuel = \"charcoal\"", &format!("fuel = \"{fuel}\""));
        assert!(sample::plan(&text).outcome.get("brooding.carbon_monoxide").is_none(), "{fuel}");
    }
}

/// No word of a plan calls air, gas or a house safe.
#[test]
fn nothing_is_called_safe() {
    let viewer = present::Viewer::plain();
    for file in [sample::complete(), sample::with_charcoal()] {
        let plan = sample::plan(&file);
        let document = present::plan::Shown::new(&plan, &viewer).document();
        let text = present::text::write(&document, &viewer, true).to_lowercase();
        assert!(text.contains("nobody sleeps here") && text.contains("people’s guide"));
        assert!(!text.contains("safe"), "{text}");
    }
}

/// A night as warm as the chicks want asks for nothing and frightens nobody with fuel; by the hour, litter that dries in it takes
/// some heat too, and the night must be warmer by so much.
#[test]
fn a_warm_night_asks_for_nothing() {
    for (plan, celsius) in [(one_night(), 31.0), (base(), 33.0)] {
        let plan = with(&plan.answers, &[("weather.coldest_night_c", celsius)]);
        for id in ["heat", "design", "fuel_day", "saving"] {
            near(number(&plan, &format!("brooding.{id}")), 0.0);
        }
        // One a ring all the same: nights differ.
        near(number(&plan, "brooding.brooders_needed"), number(&plan, "guard.rings"));
        let names: Vec<&str> = plan.findings.iter().map(|finding| finding.name).collect();
        for name in ["spare-nights", "fire-needs-air", "fire-has-air", "brooders-too-weak", "heat-for-nobody"]
        {
            assert!(!names.contains(&name), "{names:?}");
        }
        let viewer = present::Viewer::plain();
        let document = present::plan::Shown::new(&plan, &viewer).document();
        let text = present::text::write(&document, &viewer, false);
        assert!(text.contains("No heat"), "{text}");
    }
}

/// A brooder says its fuel where nobody else does, and what is told goes before it.
#[test]
fn a_brooder_says_its_fuel() {
    let untold = sample::with_charcoal().replace("fuel = \"charcoal\"", "");
    let useful = |text: &str| sample::plan(text).outcome.number("brooding.fuel_useful");
    let with_brooder =
        |kind: &str| untold.replace("brooders = 3", &format!("brooders = 3\nbrooder = \"{kind}\""));
    assert_eq!(useful(&untold), None);
    assert_eq!(useful(&with_brooder("other")), None);
    assert_eq!(useful(&with_brooder("charcoal-pot")), useful(&sample::with_charcoal()));
    assert_eq!(useful(&with_brooder("gas-hover")), useful(&sample::complete()));
    let told = with_brooder("gas-hover").replace("sack_kg", "fuel = \"charcoal\"\nsack_kg");
    assert_eq!(useful(&told), useful(&sample::with_charcoal()));
    let slip =
        |text: &str| sample::plan(text).findings.iter().any(|found| found.name == "fuel-not-of-brooder");
    assert!(slip(&told) && !slip(&with_brooder("charcoal-pot")) && !slip(&sample::with_charcoal()));
}
