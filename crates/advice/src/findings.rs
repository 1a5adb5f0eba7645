//! What the figures have to say about themselves, in a plan or in a quick sum.

use quantity::{Answers, Unit};

use crate::families::space::{sold_in_hottest_quarter, standard};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// All findings that the answers and figures at hand give rise to, the weightiest first.
pub fn all(answers: &Answers, outcome: &Outcome) -> Vec<Finding> {
    let checks: [fn(&Answers, &Outcome) -> Option<Finding>; 18] = [
        does_not_fit,
        fits_by_own_limit_only,
        limit_above_advice,
        limit_of_hot_season,
        season_not_known,
        curve_is_an_objective,
        rings_do_not_fit,
        brooder_caps_ring,
        ring_without_brooder,
        brooder_not_told,
        sheet_hardly_bends,
        sheet_stands_straight,
        ratio_meaning_not_told,
        ceiling_without_ceiling,
        stronger_than_label,
        weaker_than_label,
        earth_floor,
        husk_is_eaten,
    ];
    let mut findings: Vec<Finding> = checks.iter().filter_map(|check| check(answers, outcome)).collect();
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    findings
}

fn number(value: f64, unit: Unit, decimals: u8) -> Detail {
    Detail::Number { value, unit, decimals }
}

fn does_not_fit(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (birds, allowed) = (outcome.number("space.birds_at_sale")?, outcome.number("space.birds_allowed")?);
    if birds <= allowed {
        return None;
    }
    let finding = Finding::new("does-not-fit", Weight::Problem)
        .at("batch.chicks")
        .with("birds", Detail::Figure("space.birds_at_sale"))
        .with("allowed", Detail::Figure("space.birds_allowed"))
        .with("density", Detail::Figure("space.density_at_sale"))
        .with("limit", Detail::Figure("space.limit"))
        .with("order", Detail::Figure("space.chicks_to_order"))
        .with("early", Detail::Figure("space.birds_to_sell_early"))
        .with("boxes", number(boxes(outcome), Unit::Pieces, 0))
        .out("fewer-chicks");
    // Without a growth curve there is no day to name: the weight was typed. And nobody buys the very young.
    match outcome.number("space.last_day_that_fits") {
        Some(day) if day < YOUNGEST_SALE_D => Some(finding),
        Some(_) => Some(
            finding
                .with("day", Detail::Figure("space.last_day_that_fits"))
                .out("sell-all-earlier")
                .out("sell-part-by-day"),
        ),
        None => Some(finding.out("sell-lighter").out("sell-part")),
    }
}

/// Younger birds have no buyers (common practice).
const YOUNGEST_SALE_D: f64 = 21.0;

/// Whole boxes of 100 within the chicks to order; boxes of 100 are common practice.
fn boxes(outcome: &Outcome) -> f64 {
    (outcome.number("space.chicks_to_order").unwrap_or_default() / 100.0).floor()
}

/// A typed limit above what is advised must not turn "does not fit" into "fits" without a word.
fn fits_by_own_limit_only(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2")?;
    let advised = advised_limit(answers)?.high;
    let (birds, allowed) = (outcome.number("space.birds_at_sale")?, outcome.number("space.birds_allowed")?);
    let by_advice = (allowed * advised / typed).floor();
    (birds <= allowed && birds > by_advice).then(|| {
        Finding::new("fits-by-own-limit-only", Weight::Problem)
            .at("space.limit_kg_m2")
            .with("typed", number(typed, Unit::KilogramPerSquareMetre, 1))
            .with("high", number(advised, Unit::KilogramPerSquareMetre, 0))
            .with("advised", number(by_advice, Unit::Birds, 0))
    })
}

fn advised_limit(answers: &Answers) -> Option<reference::stocking::StockingLimit> {
    let hot = sold_in_hottest_quarter(answers) == Some(true);
    let fans = answers.choice("house.fans") == Some("yes");
    let house = match (hot, fans) {
        (true, _) => reference::stocking::House::HottestQuarter,
        (false, true) => reference::stocking::House::OpenSidedWithFans,
        (false, false) => reference::stocking::House::OpenSided,
    };
    reference::stocking::limit(house).ok()
}

fn limit_above_advice(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2")?;
    let hot = sold_in_hottest_quarter(answers) == Some(true);
    let advised = advised_limit(answers)?;
    if typed <= advised.high {
        return None;
    }
    let finding = if hot {
        Finding::new("limit-above-hot-advice", Weight::Look)
    } else {
        Finding::new("limit-above-advice", Weight::Look)
    };
    Some(
        finding
            .at("space.limit_kg_m2")
            .with("typed", number(typed, Unit::KilogramPerSquareMetre, 1))
            .with("low", number(advised.low, Unit::KilogramPerSquareMetre, 0))
            .with("high", number(advised.high, Unit::KilogramPerSquareMetre, 0)),
    )
}

fn limit_of_hot_season(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2").is_some();
    let advised = reference::stocking::limit(reference::stocking::House::HottestQuarter).ok()?;
    let usual = reference::stocking::limit(reference::stocking::House::OpenSided).ok()?;
    (!typed && sold_in_hottest_quarter(answers) == Some(true)).then(|| {
        let limit = |kg_m2| number(kg_m2, Unit::KilogramPerSquareMetre, 0);
        Finding::new("limit-of-hot-season", Weight::Look)
            .at("space.limit_kg_m2")
            .with("low", limit(advised.low))
            .with("high", limit(advised.high))
            .with("usual", limit(usual.kg_m2))
    })
}

fn season_not_known(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2").is_some();
    let months_typed = answers.get("farm.hottest_months").is_some();
    outcome.get("space.limit").filter(|_| !typed)?;
    match sold_in_hottest_quarter(answers) {
        None => Some(Finding::new("season-not-known", Weight::Look).at("batch.placement")),
        Some(_) if !months_typed => {
            Some(Finding::new("hottest-months-assumed", Weight::Note).at("farm.hottest_months"))
        }
        Some(_) => None,
    }
}

fn curve_is_an_objective(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let fast = standard(answers) == reference::growth::Standard::Fast;
    let typed = answers.number("batch.sale_weight_kg").is_some();
    outcome.get("space.weight_at_sale")?;
    (fast && !typed).then(|| {
        Finding::new("curve-is-an-objective", Weight::Look)
            .at("batch.standard")
            .with("weight", Detail::Figure("space.weight_at_sale"))
            .with("open", Detail::Figure("space.weight_open_house"))
            .with("open_birds", Detail::Figure("space.birds_allowed_open_house"))
    })
}

fn rings_do_not_fit(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (rings, fit) = (outcome.number("guard.rings")?, outcome.number("guard.rings_that_fit")?);
    (rings > fit).then(|| {
        Finding::new("rings-do-not-fit", Weight::Problem)
            .at("guard.chicks_per_ring")
            .with("rings", Detail::Figure("guard.rings"))
            .with("fit", Detail::Figure("guard.rings_that_fit"))
            .with("diameter", Detail::Figure("guard.ring_diameter"))
            .out("other-ring-count")
            .out("narrower-walkway")
    })
}

fn brooder_caps_ring(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let asked = answers.number("guard.chicks_per_ring")?;
    let taken = outcome.number("guard.chicks_per_ring")?;
    (taken < asked).then(|| {
        Finding::new("brooder-caps-ring", Weight::Look)
            .at("guard.chicks_per_ring")
            .with("asked", number(asked, Unit::Chicks, 0))
            .with("taken", Detail::Figure("guard.chicks_per_ring"))
            .with("rings", Detail::Figure("guard.rings"))
    })
}

fn ring_without_brooder(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let brooders = answers.number("brooding.brooders")?;
    (outcome.number("guard.rings_without_brooder")? > 0.0).then(|| {
        Finding::new("ring-without-brooder", Weight::Problem)
            .at("brooding.brooders")
            .with("brooders", number(brooders, Unit::Pieces, 0))
            .with("rings", Detail::Figure("guard.rings"))
            .with("missing", Detail::Figure("guard.rings_without_brooder"))
    })
}

fn brooder_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let told = answers.get("brooding.brooder").is_some() || answers.get("brooding.brooder_chicks").is_some();
    let in_ring = outcome.number("guard.chicks_in_ring")?;
    let rating = |kind| reference::brooder::rating(kind).ok().flatten();
    let (pot, gas) = (rating("charcoal-pot")?, rating("gas-hover")?);
    (!told && in_ring > pot.low.min(gas.low)).then(|| {
        Finding::new("brooder-not-told", Weight::Look)
            .at("brooding.brooder")
            .with("in_ring", Detail::Figure("guard.chicks_in_ring"))
            .with("pot", number(pot.low, Unit::Chicks, 0))
            .with("gas_low", number(gas.low, Unit::Chicks, 0))
            .with("gas_high", number(gas.high, Unit::Chicks, 0))
    })
}

fn sheet_hardly_bends(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let bend = outcome.get("guard.least_bend_radius")?.figure.band?;
    let radius = outcome.number("guard.ring_diameter")? / 2.0;
    let bends = crate::families::guard::shape(answers) == model::guard::Shape::Circle;
    let finding = if radius < bend.low {
        Finding::new("sheet-does-not-bend", Weight::Problem)
    } else {
        Finding::new("sheet-hardly-bends", Weight::Look)
    };
    (bends && radius < bend.high).then(|| {
        finding
            .at("guard.sheet_thickness_mm")
            .with("radius", number(radius, Unit::Metre, 1))
            .with("low", number(bend.low, Unit::Metre, 1))
            .with("high", number(bend.high, Unit::Metre, 1))
    })
}

fn sheet_stands_straight(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let straight = crate::families::guard::shape(answers) == model::guard::Shape::Polygon;
    let corners = outcome.number("guard.strips_per_ring")?;
    straight.then(|| {
        Finding::new("sheet-stands-straight", Weight::Note)
            .at("guard.sheet_thickness_mm")
            .with("corners", Detail::Figure("guard.strips_per_ring"))
            .with("angle", number(180.0 - 360.0 / corners, Unit::Degree, 0))
    })
}

/// Asked only where it changes the dose by over 2 %: below that the question only worries people.
fn ratio_meaning_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let parts = answers.number("disinfectant.ratio")?;
    let told = answers.get("disinfectant.ratio_means").is_some_and(|given| given.usual.is_none());
    let gap = model::disinfectant::meaning_gap(parts);
    (!told && gap > 0.02 && outcome.get("disinfectant.product_per_load").is_some()).then(|| {
        Finding::new("ratio-meaning-not-told", Weight::Look)
            .at("disinfectant.ratio_means")
            .with("parts", number(parts, Unit::One, 0))
            .with("water", Detail::Figure("disinfectant.product_per_load"))
            .with("total", Detail::Figure("disinfectant.product_other_meaning"))
            .with("percent", number(gap * 100.0, Unit::Percent, 0))
    })
}

fn ceiling_without_ceiling(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let surfaces = answers.choices("disinfectant.surfaces");
    let none = answers.choice("house.ceiling") == Some("none");
    (none && surfaces.contains(&"ceiling"))
        .then(|| Finding::new("ceiling-without-ceiling", Weight::Look).at("disinfectant.surfaces"))
}

fn stronger_than_label(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let times = outcome.number("disinfectant.times_label")?;
    (times > 1.05).then(|| {
        let finding = Finding::new("stronger-than-label", Weight::Problem)
            .at("disinfectant.poured_ml")
            .with("times", Detail::Figure("disinfectant.times_label"))
            .with("ratio", Detail::Figure("disinfectant.true_ratio"));
        match outcome.get("disinfectant.extra_cost") {
            Some(_) => finding.with("cost", Detail::Figure("disinfectant.extra_cost")).out("extra-cost"),
            None => finding,
        }
    })
}

fn weaker_than_label(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let poured = answers.number("disinfectant.poured_ml")?;
    let times = outcome.number("disinfectant.times_label")?;
    (times < 0.95).then(|| {
        Finding::new("weaker-than-label", Weight::Problem)
            .at("disinfectant.poured_ml")
            .with("poured", number(poured, Unit::Millilitre, 0))
            .with("times", Detail::Figure("disinfectant.times_label"))
    })
}

fn earth_floor(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let sprayed = answers.choices("disinfectant.surfaces").contains(&"floor");
    (answers.choice("house.floor") == Some("earth") && sprayed)
        .then(|| Finding::new("earth-floor", Weight::Look).at("house.floor"))
}

fn husk_is_eaten(answers: &Answers, _: &Outcome) -> Option<Finding> {
    (answers.choice("litter.kind") == Some("rice-husk"))
        .then(|| Finding::new("husk-is-eaten", Weight::Note).at("litter.kind"))
}
