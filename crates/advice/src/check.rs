//! Answers that are possible alone but not together.

use quantity::{Answers, Asked, Fault, Problem, Unit};

use crate::air::months;
use crate::buying::prices;
use crate::families::{burning, medicine, performance, weighing};

/// A rule of fitting together: the value of `key` must lie between limits that hang on `other`.
struct Together {
    /// Names a message.
    rule: &'static str,
    key: &'static str,
    other: &'static str,
    unit: Unit,
    /// Least and greatest value of `key`, given `other`; all in `unit`.
    limits: fn(f64) -> (f64, f64),
}

const NO_LIMIT: f64 = f64::INFINITY;

/// The shortest piece a strip must add to a ring beyond its overlap, metres: our judgement.
const LEAST_NET_M: f64 = 0.05;

const RULES: &[Together] = &[
    Together {
        rule: "hottest-below-mean",
        key: "weather.hottest_day_c",
        other: "weather.mean_c",
        unit: Unit::Celsius,
        limits: |mean| (mean, NO_LIMIT),
    },
    Together {
        rule: "coldest-above-mean",
        key: "weather.coldest_night_c",
        other: "weather.mean_c",
        unit: Unit::Celsius,
        limits: |mean| (-NO_LIMIT, mean),
    },
    Together {
        rule: "warmest-below-coldest",
        key: "air_day.warmest_c",
        other: "air_day.coldest_c",
        unit: Unit::Celsius,
        limits: |coldest| (coldest, NO_LIMIT),
    },
    Together {
        rule: "sale-ends-before-it-begins",
        key: "sale.last_age_d",
        other: "sale.first_age_d",
        unit: Unit::Day,
        limits: |first| (first, NO_LIMIT),
    },
    Together {
        rule: "bird-most-below-least",
        key: "sale.bird_most_kg",
        other: "sale.bird_least_kg",
        unit: Unit::Kilogram,
        limits: |least| (least, NO_LIMIT),
    },
    Together {
        rule: "grower-before-starter",
        key: "feed.grower_until_d",
        other: "feed.starter_until_d",
        unit: Unit::Day,
        limits: |starter| (starter + 1.0, NO_LIMIT),
    },
    Together {
        rule: "finisher-before-grower",
        key: "feed.finisher_until_d",
        other: "feed.grower_until_d",
        unit: Unit::Day,
        limits: |grower| (grower + 1.0, NO_LIMIT),
    },
    Together {
        rule: "overlap-longer-than-sheet",
        key: "guard.overlap_m",
        other: "guard.sheet_length_m",
        unit: Unit::Metre,
        limits: |length| (0.0, length - LEAST_NET_M),
    },
    Together {
        rule: "half-wall-above-eave",
        key: "house.half_wall_m",
        other: "house.eave_height_m",
        unit: Unit::Metre,
        limits: |eave| (0.0, eave),
    },
    Together {
        rule: "ridge-below-eave",
        key: "house.ridge_height_m",
        other: "house.eave_height_m",
        unit: Unit::Metre,
        limits: |eave| (eave, NO_LIMIT),
    },
    Together {
        rule: "heated-longer-than-house",
        key: "brooding.heated_length_m",
        other: "house.length_m",
        unit: Unit::Metre,
        limits: |length| (0.0, length),
    },
    Together {
        rule: "poured-more-than-tank",
        key: "disinfectant.poured_ml",
        other: "disinfectant.sprayer_l",
        unit: Unit::Millilitre,
        limits: |tank_l| (0.0, tank_l * 1000.0),
    },
    Together {
        rule: "weighed-more-than-flock",
        key: "weighing.weighed",
        other: "weighing.birds",
        unit: Unit::Birds,
        limits: |flock| (2.0, flock),
    },
    Together {
        rule: "chicks-heavier-than-sold",
        key: performance::CHICKS_WEIGHT,
        other: performance::LIVE,
        unit: Unit::Kilogram,
        limits: |live| (0.0, live * (1.0 - f64::EPSILON)),
    },
    Together {
        rule: "joined-more-than-full",
        key: burning::JOINED,
        other: burning::CYLINDERS,
        unit: Unit::Pieces,
        limits: |full| (1.0, full),
    },
    Together {
        rule: "sold-more-than-placed",
        key: performance::SOLD,
        other: performance::PLACED,
        unit: Unit::Birds,
        limits: |placed| (1.0, placed),
    },
];

/// A live bird at sale weighs between these, kg: outside, heads and kilograms were mistaken for each other.
const LIGHTEST_KG: f64 = 0.1;
const HEAVIEST_KG: f64 = 10.0;

/// Faults of answers that do not fit together, under the keys as asked.
pub fn together(answers: &Answers, asked: &[Asked]) -> Vec<Problem> {
    let mut problems: Vec<Problem> = RULES.iter().filter_map(|rule| rule.broken(answers, asked)).collect();
    problems.extend(sale_around_its_age(answers, asked));
    problems.extend(standard_too_short(answers, asked));
    problems.extend(house_narrower_than_ring(answers, asked));
    problems.extend(cv_beside_weights(answers, asked));
    problems.extend(dose_told_twice(answers, asked));
    problems.extend(birds_do_not_fit_weight(answers, asked));
    problems.extend(feed_costs_more_than_all(answers, asked));
    problems.extend(feed_falls_to_nothing(answers, asked));
    problems.extend(months_upside_down(answers, asked));
    problems
}

/// A month whose days are warmest below their coldest.
fn months_upside_down(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    let (coldest, warmest) = (answers.numbers(months::COLDEST), answers.numbers(months::WARMEST));
    let (cold, _) = coldest.iter().zip(warmest).find(|(cold, warm)| warm < cold)?;
    let (rule, other, unit) = ("month-upside-down", months::COLDEST, Unit::Celsius);
    let fault = Fault::Against { rule, other, other_value: *cold, low: *cold, high: NO_LIMIT, unit };
    Some(problem(answers, asked, months::WARMEST, fault))
}

impl Together {
    fn broken(&self, answers: &Answers, asked: &[Asked]) -> Option<Problem> {
        let (value, other) = (answers.number(self.key)?, answers.number(self.other)?);
        let (low, high) = (self.limits)(other);
        if (low..=high).contains(&value) {
            return None;
        }
        let other_unit = crate::families::field(self.other)?.unit()?;
        let other_value = other_unit.convert(other, self.unit)?;
        let fault =
            Fault::Against { rule: self.rule, other: self.other, other_value, low, high, unit: self.unit };
        Some(problem(answers, asked, self.key, fault))
    }
}

fn problem(answers: &Answers, asked: &[Asked], key: &str, fault: Fault) -> Problem {
    let given = answers.get(key);
    Problem {
        key: asked_as(asked, key).to_owned(),
        typed: given.map(|given| given.typed.clone()).unwrap_or_default(),
        line: given.and_then(|given| given.line),
        fault,
    }
}

/// One end of the sale alone goes with the age of sale.
fn sale_around_its_age(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    let (first, last) = (answers.number("sale.first_age_d"), answers.number("sale.last_age_d"));
    let age = answers.number("batch.sale_age_d")?;
    let (key, low, high) = match (first, last) {
        (Some(first), None) if first > age => ("sale.first_age_d", 0.0, age),
        (None, Some(last)) if last < age => ("sale.last_age_d", age, NO_LIMIT),
        _ => return None,
    };
    let fault = Fault::Against {
        rule: "sale-beside-its-age",
        other: "batch.sale_age_d",
        other_value: age,
        low,
        high,
        unit: Unit::Day,
    };
    Some(problem(answers, asked, key, fault))
}

/// A curve is never stretched: the sale must lie on it, unless the weight is typed.
fn standard_too_short(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    if answers.number("batch.sale_weight_kg").is_some() {
        return None;
    }
    let last_sale =
        answers.schedule("sale.days").and_then(quantity::Schedule::span).map(|span| f64::from(span.1));
    let ages = [
        ("batch.sale_age_d", answers.number("batch.sale_age_d")),
        ("sale.last_age_d", answers.number("sale.last_age_d")),
        ("sale.days", last_sale),
    ];
    let told = ages.into_iter().filter_map(|(key, age)| Some((key, age?)));
    let (key, age) = told.max_by(|one, other| one.1.total_cmp(&other.1))?;
    let (first, last) = crate::families::growth::curve(answers)?.span()?;
    let (low, high) = (f64::from(first.0), f64::from(last.0));
    if (low..=high).contains(&age) {
        return None;
    }
    let fault = Fault::Against {
        rule: "standard-too-short",
        other: "batch.standard",
        other_value: high,
        low,
        high,
        unit: Unit::Day,
    };
    Some(problem(answers, asked, key, fault))
}

/// A ring wider than the house cannot stand in it, however the rings are placed.
fn house_narrower_than_ring(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    let across = answers.number("house.width_m")?.min(answers.number("house.length_m")?);
    let outcome = crate::outcome::Outcome::of(answers, ["guard.ring_diameter"]);
    let diameter = outcome.number("guard.ring_diameter")?;
    if diameter <= across {
        return None;
    }
    let fault = Fault::Against {
        rule: "house-narrower-than-ring",
        other: "guard.chicks_per_ring",
        other_value: diameter,
        low: diameter,
        high: NO_LIMIT,
        unit: Unit::Metre,
    };
    Some(problem(answers, asked, "house.width_m", fault))
}

/// The key under which a field is asked here.
fn asked_as<'a>(asked: &'a [Asked], key: &'a str) -> &'a str {
    asked.iter().find(|one| one.field.key == key).map_or(key, |one| one.key)
}

/// The weights tell the variation themselves.
fn cv_beside_weights(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    answers.number(weighing::CV).filter(|_| !answers.numbers(weighing::WEIGHTS).is_empty())?;
    let other = asked_as(asked, weighing::WEIGHTS).to_owned();
    Some(problem(answers, asked, weighing::CV, Fault::GivenTwice { other }))
}

/// A dose by weight is told in active or in product. Which of two is meant is the veterinarian's to say.
fn dose_told_twice(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    answers.number(medicine::DOSE)?;
    let product = [medicine::LIQUID.by_kg, medicine::POWDER.by_kg];
    let key = product.into_iter().find(|key| answers.number(key).is_some())?;
    let other = asked_as(asked, medicine::DOSE).to_owned();
    Some(problem(answers, asked, key, Fault::GivenTwice { other }))
}

/// Heads and kilograms sold must make birds that can be.
fn birds_do_not_fit_weight(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    let (birds, live) = (answers.number(performance::SOLD)?, answers.number(performance::LIVE)?);
    if (LIGHTEST_KG..=HEAVIEST_KG).contains(&(live / birds)) {
        return None;
    }
    let fault = Fault::Against {
        rule: "birds-do-not-fit-weight",
        other: performance::LIVE,
        other_value: birds,
        low: (live / HEAVIEST_KG).ceil(),
        high: (live / LIGHTEST_KG).floor(),
        unit: Unit::Birds,
    };
    Some(problem(answers, asked, performance::SOLD, fault))
}

/// A price that falls month by month is nothing some day: that day must lie behind the last that feed is bought on.
fn feed_falls_to_nothing(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    let last = answers.number("sale.last_age_d").or(answers.number("batch.sale_age_d"))?;
    let first = (-last as i32..=last as i32).find(|day| prices::factor(answers, *day) <= 0.0)?;
    let fault = Fault::Against {
        rule: "feed-price-below-zero",
        other: "batch.sale_age_d",
        other_value: f64::from(first),
        low: prices::least_rise(answers, last as i32),
        high: NO_LIMIT,
        unit: Unit::Percent,
    };
    Some(problem(answers, asked, "prices.feed_rise_percent", fault))
}

/// Feed is part of all costs.
fn feed_costs_more_than_all(answers: &Answers, asked: &[Asked]) -> Option<Problem> {
    let (feed, price) = (answers.number(performance::FEED)?, answers.number(performance::FEED_PRICE)?);
    let all = answers.number(performance::COST)?;
    if feed * price <= all {
        return None;
    }
    let fault = Fault::Against {
        rule: "feed-costs-more-than-all",
        other: performance::COST,
        other_value: feed * price,
        low: 0.0,
        high: all / feed,
        unit: Unit::Money,
    };
    Some(problem(answers, asked, performance::FEED_PRICE, fault))
}
