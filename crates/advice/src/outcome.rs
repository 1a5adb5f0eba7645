//! The chain of calculation: each figure from its inputs, and theirs from theirs.

use std::collections::BTreeMap;

use quantity::{Answers, Band, BandKind, CivilDay, Currency, Field, Figure, FigureValue, Money, Unit, Value};

use crate::families;
use crate::rule::{FigureSpec, Input, Origin, Rule};

/// A figure with the rule that gave it and what went in.
#[derive(Clone)]
pub struct Worked {
    /// The figure.
    pub figure: Figure,
    /// Its declaration.
    pub spec: &'static FigureSpec,
    /// The rule taken.
    pub rule: &'static Rule,
    /// What went in, in the order of the rule's inputs; a list is told by how many numbers it has.
    pub inputs: Vec<Resolved>,
    /// The numbers of the list, where the rule takes one.
    pub list: Vec<f64>,
}

/// All that could be worked out from some answers.
#[derive(Default)]
pub struct Outcome {
    order: Vec<&'static str>,
    worked: BTreeMap<&'static str, Option<Worked>>,
}

/// An input resolved to a number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Resolved {
    /// Its value, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
    /// Its range, where it has one.
    pub band: Option<Band>,
}

impl Outcome {
    /// Works out the figures named, and all that they rest on.
    pub fn of(answers: &Answers, ids: impl IntoIterator<Item = &'static str>) -> Outcome {
        let mut outcome = Outcome::default();
        for id in ids {
            outcome.work_out(answers, id);
            if outcome.get(id).is_some() {
                outcome.order.push(id);
            }
        }
        outcome
    }

    /// A figure, if its inputs were known.
    pub fn get(&self, id: &str) -> Option<&Worked> {
        self.worked.get(id)?.as_ref()
    }

    /// The number of a figure.
    pub fn number(&self, id: &str) -> Option<f64> {
        self.get(id).map(|worked| worked.figure.value.number())
    }

    /// The day of a figure.
    pub fn day(&self, id: &str) -> Option<CivilDay> {
        match self.get(id)?.figure.value {
            FigureValue::Day(day) => Some(day),
            FigureValue::Number(_) => None,
        }
    }

    /// The figures asked for that could be worked out, in the order asked.
    pub fn figures(&self) -> impl Iterator<Item = &Worked> {
        self.order.iter().filter_map(|id| self.get(id))
    }

    /// Works a figure out unless it is known, and gives it as an input of others.
    fn work_out(&mut self, answers: &Answers, id: &'static str) -> Option<Resolved> {
        if !self.worked.contains_key(id) {
            let worked = families::figure(id).and_then(|spec| self.apply(answers, spec));
            self.worked.insert(id, worked);
        }
        self.get(id).map(|worked| Resolved {
            value: worked.figure.value.number(),
            unit: worked.spec.unit,
            band: worked.figure.band,
        })
    }

    fn apply(&mut self, answers: &Answers, spec: &'static FigureSpec) -> Option<Worked> {
        let rule = spec.rules.iter().find(|rule| (rule.applies)(answers))?;
        let inputs = rule
            .inputs
            .iter()
            .map(|input| self.resolve(answers, input))
            .collect::<Option<Vec<Resolved>>>()?;
        let list = list(answers, rule);
        let scalars = rule.inputs.iter().zip(&inputs).filter(|(input, _)| !is_list(input));
        let numbers: Vec<f64> = scalars.map(|(_, input)| input.value).chain(list.iter().copied()).collect();
        let number = (rule.compute)(&numbers).filter(|number| number.is_finite())?;
        let value = as_value(spec.unit, number, answers)?;
        let band = band(rule, &inputs, &numbers);
        Some(Worked { figure: Figure { id: spec.id, value, band }, spec, rule, inputs, list })
    }

    fn resolve(&mut self, answers: &Answers, input: &Input) -> Option<Resolved> {
        match input.origin {
            Origin::Field(key) => field_value(answers, key),
            Origin::List(key) => count(answers, key),
            Origin::Chosen(key, word) => {
                let known = answers.get(key).is_some();
                let value = f64::from(u8::from(answers.choices(key).contains(&word)));
                known.then_some(Resolved { value, unit: Unit::One, band: None })
            }
            Origin::Figure(id) => self.work_out(answers, id),
            Origin::IfChosen { field, word, figure } => {
                answers.get(field)?;
                if answers.choices(field).contains(&word) {
                    return self.work_out(answers, figure);
                }
                let unit = families::figure(figure)?.unit;
                Some(Resolved { value: 0.0, unit, band: None })
            }
            Origin::Table { unit, read, .. } => read().map(|value| Resolved { value, unit, band: None }),
        }
    }
}

fn is_list(input: &Input) -> bool {
    matches!(input.origin, Origin::List(_))
}

/// The numbers of the list that a rule takes; none where it takes none.
fn list(answers: &Answers, rule: &Rule) -> Vec<f64> {
    match rule.inputs.last().map(|last| last.origin) {
        Some(Origin::List(key)) => answers.numbers(key).to_vec(),
        _ => Vec::new(),
    }
}

fn count(answers: &Answers, key: &str) -> Option<Resolved> {
    let numbers = answers.numbers(key).len();
    let unit = families::field(key).and_then(Field::unit).unwrap_or(Unit::One);
    (numbers > 0).then_some(Resolved { value: numbers as f64, unit, band: None })
}

fn field_value(answers: &Answers, key: &str) -> Option<Resolved> {
    let unit = families::field(key).and_then(Field::unit).unwrap_or(Unit::One);
    match answers.get(key)?.value {
        Value::Number(value) => Some(Resolved { value, unit, band: None }),
        Value::Day(day) => Some(Resolved { value: f64::from(day.number()), unit: Unit::Date, band: None }),
        _ => None,
    }
}

/// Turns the number into what the unit says: a day for dates, whole minor units for money (rounded once, here).
fn as_value(unit: Unit, number: f64, answers: &Answers) -> Option<FigureValue> {
    match unit {
        Unit::Date => Some(FigureValue::Day(CivilDay::from_number(number as i32))),
        Unit::Money => {
            let currency = match answers.get("farm.currency").map(|given| &given.value) {
                Some(Value::Currency(currency)) => *currency,
                _ => Currency::UNKNOWN,
            };
            Some(FigureValue::Number(Money::nearest(number, currency)?.to_number()))
        }
        _ => Some(FigureValue::Number(number)),
    }
}

/// The rule's own range, or the range that its inputs' ranges carry through.
///
/// Each ranged input is first moved alone, to see which way it pushes; the ends are where all push the same way. That is
/// exact for rules that only ever rise or fall with each input, which a test holds every rule to.
fn band(rule: &Rule, inputs: &[Resolved], numbers: &[f64]) -> Option<Band> {
    if let Some(own) = &rule.band {
        let (low, high) = (own.ends)(numbers)?;
        return (low < high).then_some(Band { low, high, kind: own.kind });
    }
    let kind = inputs.iter().filter_map(|input| Some(input.band?.kind)).reduce(widest)?;
    let (mut least, mut most) = (numbers.to_vec(), numbers.to_vec());
    for (at, band) in inputs.iter().enumerate().filter_map(|(at, input)| Some((at, input.band?))) {
        let alone = |end: f64| {
            let mut moved = numbers.to_vec();
            moved[at] = end;
            (rule.compute)(&moved)
        };
        let rises = alone(band.low)? <= alone(band.high)?;
        (least[at], most[at]) = if rises { (band.low, band.high) } else { (band.high, band.low) };
    }
    let (low, high) = ((rule.compute)(&least)?, (rule.compute)(&most)?);
    (low < high && low.is_finite() && high.is_finite()).then_some(Band { low, high, kind })
}

/// When ranges of several kinds meet, the result is no better understood than a range of sources.
fn widest(one: BandKind, other: BandKind) -> BandKind {
    if one == other { one } else { BandKind::RangeOfSources }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::{Raw, Source};

    fn outcome(typed: &[(&str, &str)], id: &'static str) -> Outcome {
        let raw = |(key, text): &(&str, &str)| Raw {
            key: (*key).to_owned(),
            text: vec![(*text).to_owned()],
            line: None,
        };
        let raws: Vec<Raw> = typed.iter().map(raw).collect();
        let checked = quantity::field::check(&families::plan_fields(), &raws, Source::Hand, false);
        Outcome::of(&checked.answers, [id])
    }

    #[test]
    fn what_was_not_chosen_need_not_be_known() {
        let typed = [("house.length_m", "18"), ("house.width_m", "9"), ("disinfectant.surfaces", "floor")];
        assert_eq!(outcome(&typed, "disinfectant.area").number("disinfectant.area"), Some(162.0));
        let walls = [typed[0], typed[1], ("disinfectant.surfaces", "floor, walls")];
        assert!(
            outcome(&walls, "disinfectant.area").get("disinfectant.area").is_none(),
            "the eave is not known"
        );
    }

    #[test]
    fn a_range_is_carried_to_what_rests_on_it() {
        let typed = [
            ("house.length_m", "10"),
            ("house.width_m", "10"),
            ("batch.sale_age_d", "42"),
            ("space.limit_kg_m2", "20"),
        ];
        let outcome = outcome(&typed, "space.birds_allowed");
        let band = outcome.get("space.birds_allowed").unwrap().figure.band.unwrap();
        // The open-house curve at 42 days is 2.035 kg, houses 13 % either way.
        assert_eq!(
            (band.low, band.high),
            ((2000.0f64 / (2.035 * 1.13)).floor(), (2000.0f64 / (2.035 * 0.87)).floor())
        );
    }

    #[test]
    fn money_is_rounded_once_to_the_currency() {
        let typed = [
            ("house.length_m", "10"),
            ("house.width_m", "10"),
            ("litter.depth_cm", "5"),
            ("litter.bag_l", "150"),
            ("prices.litter_bag_each", "1.005"),
        ];
        let cost = |currency: &str| {
            let mut typed = typed.to_vec();
            typed.push(("farm.currency", currency));
            outcome(&typed, "litter.cost").number("litter.cost")
        };
        assert_eq!(cost("XTS"), Some(34.17));
        assert_eq!(cost("UGX"), Some(34.0));
    }
}
