//! The chain of calculation: each figure from its inputs, and theirs from theirs.

use std::collections::BTreeMap;

use quantity::{Answers, Band, BandKind, CivilDay, Field, Figure, FigureValue, Money, Unit, Value};

use crate::families;
use crate::rule::{FigureSpec, Input, Origin, Rule};

/// A figure with the rule that gave it.
#[derive(Clone, Copy)]
pub struct Worked {
    /// The figure.
    pub figure: Figure,
    /// Its declaration.
    pub spec: &'static FigureSpec,
    /// The rule taken.
    pub rule: &'static Rule,
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

    fn work_out(&mut self, answers: &Answers, id: &'static str) -> Option<Worked> {
        if let Some(known) = self.worked.get(id) {
            return *known;
        }
        let worked = families::figure(id).and_then(|spec| self.apply(answers, spec));
        self.worked.insert(id, worked);
        worked
    }

    fn apply(&mut self, answers: &Answers, spec: &'static FigureSpec) -> Option<Worked> {
        let rule = spec.rules.iter().find(|rule| (rule.applies)(answers))?;
        let inputs = rule
            .inputs
            .iter()
            .map(|input| self.resolve(answers, input))
            .collect::<Option<Vec<Resolved>>>()?;
        let numbers: Vec<f64> = inputs.iter().map(|input| input.value).collect();
        let number = (rule.compute)(&numbers).filter(|number| number.is_finite())?;
        let value = as_value(spec.unit, number, answers)?;
        let band = band(rule, &inputs, &numbers);
        Some(Worked { figure: Figure { id: spec.id, value, band }, spec, rule })
    }

    pub(crate) fn resolve(&mut self, answers: &Answers, input: &Input) -> Option<Resolved> {
        match input.origin {
            Origin::Field(key) => field_value(answers, key),
            Origin::Chosen(key, word) => {
                let known = answers.get(key).is_some();
                let value = f64::from(u8::from(answers.choices(key).contains(&word)));
                known.then_some(Resolved { value, unit: Unit::One, band: None })
            }
            Origin::Figure(id) => self.work_out(answers, id).map(|worked| Resolved {
                value: worked.figure.value.number(),
                unit: worked.spec.unit,
                band: worked.figure.band,
            }),
            Origin::Table { unit, read, .. } => read().map(|value| Resolved { value, unit, band: None }),
        }
    }
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
            let exponent = match answers.get("farm.currency").map(|given| &given.value) {
                Some(Value::Currency(currency)) => currency.exponent(),
                _ => 2,
            };
            Money::round_to(number, exponent).map(FigureValue::Number)
        }
        _ => Some(FigureValue::Number(number)),
    }
}

/// The rule's own range, or the range that its inputs' ranges carry through: all corners are tried, which is exact for
/// rules that only ever rise or fall with each input, as ours do.
fn band(rule: &Rule, inputs: &[Resolved], numbers: &[f64]) -> Option<Band> {
    if let Some(own) = &rule.band {
        let (low, high) = (own.ends)(numbers)?;
        return (low < high).then_some(Band { low, high, kind: own.kind });
    }
    let ranged: Vec<(usize, Band)> =
        inputs.iter().enumerate().filter_map(|(at, input)| input.band.map(|band| (at, band))).collect();
    let kind = ranged.iter().map(|(_, band)| band.kind).reduce(widest)?;
    let mut ends: Option<(f64, f64)> = None;
    for corner in 0..1u32 << ranged.len().min(8) {
        let mut moved = numbers.to_vec();
        for (bit, (at, band)) in ranged.iter().take(8).enumerate() {
            moved[*at] = if corner >> bit & 1 == 0 { band.low } else { band.high };
        }
        let value = (rule.compute)(&moved)?;
        ends = Some(ends.map_or((value, value), |(low, high)| (low.min(value), high.max(value))));
    }
    ends.filter(|(low, high)| low < high).map(|(low, high)| Band { low, high, kind })
}

/// When ranges of several kinds meet, the result is no better understood than a range of sources.
fn widest(one: BandKind, other: BandKind) -> BandKind {
    if one == other { one } else { BandKind::RangeOfSources }
}
