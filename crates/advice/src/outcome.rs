//! The chain of calculation: each figure from its inputs, and theirs from theirs.

use std::collections::{BTreeMap, HashMap};

use quantity::{
    Answers, Band, BandKind, CivilDay, Count, Field, Figure, FigureValue, Money, Series, Unit, Value,
};

use crate::buying;
use crate::families;
use crate::procedure::{By, Drawn, ProcedureRun, Simulation};
use crate::rule::{End, FigureSpec, Input, Origin, Over, Rule, RuleBand};
use crate::series::{DayOrigin, DayRule, First, Listed, SeriesSpec, Until, Way};
use crate::store_room::Delivery;

/// A figure with the rule that gave it and what went in.
#[derive(Clone)]
pub struct Worked {
    /// The figure.
    pub figure: Figure,
    /// Its declaration.
    pub spec: &'static FigureSpec,
    /// What it came about by.
    pub by: By,
    /// What went in, in the order of the rule's inputs; a list is told by how many numbers it has.
    pub inputs: Vec<Resolved>,
    /// The numbers of the lists that the rule takes, in the order of its inputs.
    pub lists: Vec<Vec<f64>>,
}

/// All that could be worked out from some answers.
#[derive(Clone, Default)]
pub struct Outcome {
    order: Vec<&'static str>,
    worked: BTreeMap<&'static str, Option<Worked>>,
    days: HashMap<&'static str, Vec<Option<Cell>>>,
    lists: HashMap<&'static str, Option<Listed>>,
    /// What simulations left.
    drawn: Drawn,
}

/// A figure by day on one day.
#[derive(Clone, Debug)]
struct Cell {
    value: Resolved,
    /// What went in, in the order of the rule's inputs.
    inputs: Vec<Resolved>,
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
        Outcome::default().with(answers, ids)
    }

    /// The same on top of what is worked out of the same answers already.
    pub(crate) fn with(mut self, answers: &Answers, ids: impl IntoIterator<Item = &'static str>) -> Outcome {
        for id in ids {
            self.work_out(answers, id);
            if self.get(id).is_some() {
                self.order.push(id);
            }
        }
        self
    }

    /// Works out the figures by day named, and all that they rest on.
    pub fn days_of(&mut self, answers: &Answers, specs: impl IntoIterator<Item = &'static SeriesSpec>) {
        for spec in specs {
            self.known_days(answers, spec);
        }
    }

    /// A figure by day; `None` unless it was worked out for every day, or for any day where gaps are allowed.
    pub fn series(&self, spec: &SeriesSpec) -> Option<Series> {
        let cells = self.days.get(spec.id)?.iter().map(|cell| cell.as_ref().map(|cell| cell.value));
        let days = with_days(spec, cells)?;
        let kind = days.iter().find_map(|(_, cell)| Some(cell.band?.kind));
        let ends = |end: fn(Band) -> f64| match kind {
            None => Vec::new(),
            Some(_) => days.iter().map(|(_, cell)| cell.band.map_or(cell.value, end)).collect(),
        };
        (!days.is_empty()).then(|| Series {
            id: spec.id,
            index: days.iter().map(|(day, _)| f64::from(*day)).collect(),
            values: days.iter().map(|(_, cell)| cell.value).collect(),
            low: ends(|band| band.low),
            high: ends(|band| band.high),
            kind,
        })
    }

    /// A figure by day on one day, if it was worked out.
    pub fn on_day(&self, id: &str, day: i32) -> Option<f64> {
        let spec = families::series_named(id)?;
        self.known(spec, day).map(|cell| cell.value.value)
    }

    /// The cheapest deliveries of feed, looked for once; `None` where there are none. They rest on answers alone: what they
    /// need of other figures is worked out for them.
    pub(crate) fn cheapest_deliveries(&self, answers: &Answers) -> Option<Vec<Delivery>> {
        let look = || Some(buying::of_plan_known(answers, self.as_ground()).ok()?.deliveries());
        self.drawn.deliveries(look).map(<[Delivery]>::to_vec)
    }

    /// What is worked out already, as a ground for more of the same answers.
    fn as_ground(&self) -> Outcome {
        Outcome { order: Vec::new(), ..self.clone() }
    }

    /// What simulations left of what they drew.
    pub fn drawn(&self) -> &Drawn {
        &self.drawn
    }

    /// The last day of age of all figures by day.
    pub fn last_day(&self) -> Option<i32> {
        self.number(LAST_DAY).map(|day| day as i32)
    }

    /// The rule of a figure by day and what went in on one day.
    pub fn day_inputs(
        &self,
        answers: &Answers,
        spec: &'static SeriesSpec,
        day: i32,
    ) -> Option<(&'static DayRule, Vec<Resolved>)> {
        Some((rule_of(answers, spec)?, self.known(spec, day)?.inputs.clone()))
    }

    /// Whether it can be told how a figure came about, or a figure by day on any day.
    pub fn explains(&self, id: &str) -> bool {
        let by_day = families::series_named(id).filter(|spec| matches!(spec.way, Way::Rules(_)));
        let days = by_day.and_then(|spec| self.days.get(spec.id));
        self.get(id).is_some() || days.is_some_and(|days| days.iter().any(Option::is_some))
    }

    /// A figure by day on one day, where it was worked out.
    fn known(&self, spec: &SeriesSpec, day: i32) -> Option<&Cell> {
        let at = usize::try_from(day - spec.first_day).ok()?;
        self.days.get(spec.id)?.get(at)?.as_ref()
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
            match families::simulation_of(id, answers) {
                Some(simulation) => self.simulate(answers, simulation),
                None => {
                    let worked = families::figure(id).and_then(|spec| self.apply(answers, spec));
                    self.worked.insert(id, worked);
                }
            }
        }
        self.get(id).map(|worked| Resolved {
            value: worked.figure.value.number(),
            unit: worked.spec.unit,
            band: worked.figure.band,
        })
    }

    /// Runs a simulation once and keeps all its figures.
    fn simulate(&mut self, answers: &Answers, simulation: &'static Simulation) {
        let inputs: Option<Vec<Resolved>> =
            simulation.inputs.iter().map(|input| self.resolve(answers, input)).collect();
        let numbers = |inputs: &[Resolved]| inputs.iter().map(|input| input.value).collect::<Vec<f64>>();
        let ran = inputs
            .and_then(|inputs| Some(((simulation.run)(answers, &numbers(&inputs), &self.drawn)?, inputs)));
        for (at, spec) in simulation.figures.iter().enumerate() {
            let worked = ran.as_ref().and_then(|(figures, inputs)| {
                let (value, band, accuracy) = figures.get(at).copied().flatten()?;
                let by = By::Procedure(ProcedureRun::of(simulation, inputs, accuracy));
                let figure = Figure { id: spec.id, value: as_value(spec.unit, value, answers)?, band };
                Some(Worked { figure, spec, by, inputs: inputs.clone(), lists: Vec::new() })
            });
            let worked = worked.or_else(|| self.apply(answers, spec));
            self.worked.insert(spec.id, worked);
        }
    }

    fn apply(&mut self, answers: &Answers, spec: &'static FigureSpec) -> Option<Worked> {
        let rule = spec.rules.iter().find(|rule| (rule.applies)(answers))?;
        let inputs = rule
            .inputs
            .iter()
            .map(|input| self.resolve(answers, input))
            .collect::<Option<Vec<Resolved>>>()?;
        let lists = lists(answers, rule)?;
        let scalars = rule.inputs.iter().zip(&inputs).filter(|(input, _)| !is_list(input));
        let numbers: Vec<f64> =
            scalars.map(|(_, input)| input.value).chain(lists.iter().flatten().copied()).collect();
        let number = (rule.compute)(&numbers).filter(|number| number.is_finite())?;
        let value = as_value(spec.unit, number, answers)?;
        let band = if rule.together {
            band_together(rule.compute, &inputs, &numbers)
        } else {
            band(rule.compute, rule.band.as_ref(), &inputs, &numbers)
        };
        Some(Worked { figure: Figure { id: spec.id, value, band }, spec, by: By::Rule(rule), inputs, lists })
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
            Origin::IfKnown(id) => {
                let unit = families::figure(id)?.unit;
                Some(self.work_out(answers, id).unwrap_or(Resolved { value: 0.0, unit, band: None }))
            }
            Origin::IfTold(key) => {
                let unit = unit_of(key);
                Some(field_value(answers, key).unwrap_or(Resolved { value: 0.0, unit, band: None }))
            }
            Origin::EndOf(key, end) => {
                let (first, last) = answers.schedule(key)?.span()?;
                let day = if end == End::First { first } else { last };
                Some(Resolved { value: f64::from(day), unit: Unit::Day, band: None })
            }
            Origin::OnDay { series, day } => {
                let day = match families::figure(day) {
                    Some(_) => self.work_out(answers, day)?.value,
                    None => answers.number(day)?,
                };
                self.cell(answers, families::series_named(series)?, day as i32)
            }
            Origin::OfDays(over, series) => {
                let days = self.all_days(answers, families::series_named(series)?)?;
                one_of(over, &days, families::series_named(series)?.unit)
            }
            Origin::OfKnownDays(over, series) => {
                let days = self.known_days(answers, families::series_named(series)?)?;
                one_of(over, &days, families::series_named(series)?.unit)
            }
            Origin::SumOfDays { series, after, until } => {
                let spec = families::series_named(series)?;
                let first = match after {
                    Some(id) => self.work_out(answers, id)?.value as i32 + 1,
                    None => spec.first_day,
                };
                let last = self.work_out(answers, until)?.value as i32;
                let days: Vec<(i32, Resolved)> = (first..=last)
                    .map(|day| Some((day, self.cell(answers, spec, day)?)))
                    .collect::<Option<_>>()?;
                Some(sum(&days, spec.unit))
            }
            Origin::FirstDayOver { series, limit } => {
                let limit = match limit {
                    Some(id) => self.work_out(answers, id)?.value,
                    None => 0.0,
                };
                let days = self.all_days(answers, families::series_named(series)?)?;
                let (day, _) = days.into_iter().find(|(_, cell)| cell.value > limit * (1.0 + 1e-9))?;
                Some(Resolved { value: f64::from(day), unit: Unit::Day, band: None })
            }
            Origin::Listed { unit, needs, read, .. } => {
                for id in needs {
                    self.work_out(answers, id);
                }
                read(answers, self).map(|value| Resolved { value, unit, band: None })
            }
            Origin::TableAt { unit, at, read, .. } => {
                let at = self.work_out(answers, at)?.value;
                read(answers, at).map(|value| Resolved { value, unit, band: None })
            }
            Origin::Table { unit, read, .. } => read().map(|value| Resolved { value, unit, band: None }),
            Origin::TableBy { unit, field, read, .. } => {
                read(answers.choice(field)?).map(|value| Resolved { value, unit, band: None })
            }
        }
    }
}

/// One number out of some days.
fn one_of(over: Over, days: &[(i32, Resolved)], unit: Unit) -> Option<Resolved> {
    let by_value = |one: &&(i32, Resolved), other: &&(i32, Resolved)| one.1.value.total_cmp(&other.1.value);
    let day_of = |day: i32| Resolved { value: f64::from(day), unit: Unit::Day, band: None };
    match over {
        Over::Sum => Some(sum(days, unit)),
        // Of equal days the first counts: `max_by` would give the last.
        Over::Most => days.iter().rev().max_by(by_value).map(|day| day.1),
        Over::Least => days.iter().min_by(by_value).map(|day| day.1),
        Over::DayOfMost => days.iter().rev().max_by(by_value).map(|day| day_of(day.0)),
        Over::DayOfLeast => days.iter().min_by(by_value).map(|day| day_of(day.0)),
        Over::Last => days.last().map(|day| day.1),
        Over::DayOfLast => days.last().map(|day| day_of(day.0)),
    }
}

/// The days of a figure by day. What was written down may have gaps; what is planned may not.
fn with_days(
    spec: &SeriesSpec,
    cells: impl Iterator<Item = Option<Resolved>>,
) -> Option<Vec<(i32, Resolved)>> {
    let days = (spec.first_day..).zip(cells).map(|(day, cell)| Some((day, cell?)));
    match spec.until {
        Until::Sale => days.collect(),
        Until::Today => Some(days.flatten().collect()),
    }
}

/// The field that says the day of age the book is asked about.
const TODAY: &str = "book.today_d";

/// The figure that says how long the days go on.
const LAST_DAY: &str = "sale.last_age";

/// Figures by day.
impl Outcome {
    /// Every day of a figure, youngest first; `None` unless all are known.
    fn all_days(&mut self, answers: &Answers, spec: &'static SeriesSpec) -> Option<Vec<(i32, Resolved)>> {
        let last = self.last_day_of(answers, spec)?;
        (spec.first_day..=last).map(|day| Some((day, self.cell(answers, spec, day)?))).collect()
    }

    /// The days of a figure that are known, youngest first; `None` where it has no days at all.
    fn known_days(&mut self, answers: &Answers, spec: &'static SeriesSpec) -> Option<Vec<(i32, Resolved)>> {
        let last = self.last_day_of(answers, spec)?;
        Some((spec.first_day..=last).filter_map(|day| Some((day, self.cell(answers, spec, day)?))).collect())
    }

    fn last_day_of(&mut self, answers: &Answers, spec: &SeriesSpec) -> Option<i32> {
        match spec.until {
            Until::Sale => Some(self.work_out(answers, LAST_DAY)?.value as i32),
            Until::Today => Some(answers.number(TODAY)? as i32),
        }
    }

    /// A figure on a day. Days are worked out from the first on, so that a day finds the one before it done.
    fn cell(&mut self, answers: &Answers, spec: &'static SeriesSpec, day: i32) -> Option<Resolved> {
        if day < spec.first_day {
            return None;
        }
        let wanted = usize::try_from(day - spec.first_day).ok()?;
        loop {
            let done = self.days.get(spec.id).map_or(0, Vec::len);
            if done > wanted {
                return Some(self.days.get(spec.id)?.get(wanted)?.as_ref()?.value);
            }
            let next = spec.first_day + i32::try_from(done).ok()?;
            let cell = self.apply_day(answers, spec, next);
            self.days.entry(spec.id).or_default().push(cell);
        }
    }

    fn apply_day(&mut self, answers: &Answers, spec: &'static SeriesSpec, day: i32) -> Option<Cell> {
        let rule = rule_of(answers, spec)?;
        let inputs = rule
            .inputs
            .iter()
            .map(|input| self.resolve_day(answers, spec, input.origin, day))
            .collect::<Option<Vec<Resolved>>>()?;
        let numbers: Vec<f64> = inputs.iter().map(|input| input.value).collect();
        let value = (rule.compute)(&numbers).filter(|number| number.is_finite())?;
        let band = band(rule.compute, rule.band.as_ref(), &inputs, &numbers);
        Some(Cell { value: Resolved { value, unit: spec.unit, band }, inputs })
    }

    fn resolve_day(
        &mut self,
        answers: &Answers,
        spec: &'static SeriesSpec,
        origin: DayOrigin,
        day: i32,
    ) -> Option<Resolved> {
        let plain = |value: f64, unit: Unit| Some(Resolved { value, unit, band: None });
        match origin {
            DayOrigin::Age => plain(f64::from(day), Unit::Day),
            DayOrigin::Fixed(origin) => self.resolve(answers, &Input { symbol: "", origin }),
            DayOrigin::Same(series) => self.cell(answers, families::series_named(series)?, day),
            DayOrigin::SameIfAny(series) => {
                let other = families::series_named(series)?;
                if day < other.first_day {
                    return plain(0.0, other.unit);
                }
                self.cell(answers, other, day)
            }
            DayOrigin::Before { series, first } => {
                let other = families::series_named(series)?;
                if day > spec.first_day.max(other.first_day) {
                    return self.cell(answers, other, day - 1);
                }
                match first {
                    First::Number(value) => plain(value, other.unit),
                    First::Field(key) => field_value(answers, key),
                }
            }
            DayOrigin::Table { unit, read, .. } => plain(read(answers, f64::from(day))?, unit),
            DayOrigin::Recorded(key) => plain(*answers.by_day(key)?.get(&day)?, unit_of(key)),
            DayOrigin::RecordedIfAny(key) => {
                let written = answers.by_day(key).and_then(|days| days.get(&day));
                plain(written.copied().unwrap_or_default(), unit_of(key))
            }
            DayOrigin::Scheduled(key) => match answers.schedule(key)?.on(day) {
                None => plain(0.0, Unit::Birds),
                Some(Count::Number(value)) => plain(value, Unit::Birds),
                Some(Count::Rest) => plain(ALL_LEFT, Unit::Birds),
            },
            DayOrigin::Holding(key) => plain(answers.schedule(key)?.holding(day)?, Unit::Birds),
            DayOrigin::Listed { list, unit, needs, make } => {
                if !self.lists.contains_key(list) {
                    for id in needs {
                        self.work_out(answers, id);
                    }
                    let made = make(answers, self);
                    self.lists.insert(list, made);
                }
                let days = self.lists.get(list)?.as_ref()?;
                plain(days.iter().filter(|one| one.0 == day).map(|one| one.1).sum(), unit)
            }
        }
    }
}

/// What "the rest" counts as: more birds than any house holds.
const ALL_LEFT: f64 = 1e6;

fn rule_of(answers: &Answers, spec: &'static SeriesSpec) -> Option<&'static DayRule> {
    match &spec.way {
        Way::Rules(rules) => rules.iter().find(|rule| (rule.applies)(answers)),
        Way::Procedure { .. } => None,
    }
}

/// All days added up, ranges with them: a house that eats more eats more on every day.
fn sum(days: &[(i32, Resolved)], unit: Unit) -> Resolved {
    // No days at all are 0, not the -0 that an empty sum is.
    let total = |value: fn(&Resolved) -> f64| days.iter().map(|(_, cell)| value(cell)).sum::<f64>() + 0.0;
    let kind = days.iter().find_map(|(_, cell)| Some(cell.band?.kind));
    Resolved {
        value: total(|cell| cell.value),
        unit,
        band: kind.map(|kind| Band {
            low: total(|cell| cell.band.map_or(cell.value, |band| band.low)),
            high: total(|cell| cell.band.map_or(cell.value, |band| band.high)),
            kind,
        }),
    }
}

fn is_list(input: &Input) -> bool {
    matches!(input.origin, Origin::List(_))
}

/// The numbers of the lists that a rule takes; none where it takes none. Lists of one rule go side by side: of different
/// lengths there is no answer.
fn lists(answers: &Answers, rule: &Rule) -> Option<Vec<Vec<f64>>> {
    let lists = rule.inputs.iter().filter_map(|input| match input.origin {
        Origin::List(key) => Some(answers.numbers(key).to_vec()),
        _ => None,
    });
    let lists: Vec<Vec<f64>> = lists.collect();
    lists.windows(2).all(|pair| pair[0].len() == pair[1].len()).then_some(lists)
}

fn count(answers: &Answers, key: &str) -> Option<Resolved> {
    let numbers = answers.numbers(key).len();
    let unit = unit_of(key);
    (numbers > 0).then_some(Resolved { value: numbers as f64, unit, band: None })
}

fn unit_of(key: &str) -> Unit {
    families::field(key).and_then(Field::unit).unwrap_or(Unit::One)
}

fn field_value(answers: &Answers, key: &str) -> Option<Resolved> {
    let unit = unit_of(key);
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
        Unit::Money => Some(FigureValue::Number(Money::nearest(number, answers.currency())?.to_number())),
        _ => Some(FigureValue::Number(number)),
    }
}

/// The rule's own range, or the range that its inputs' ranges carry through.
///
/// Each ranged input is first moved alone, to see which way it pushes; the ends are where all push the same way. That is
/// exact for rules that only ever rise or fall with each input, which a test holds every rule to.
fn band(
    compute: fn(&[f64]) -> Option<f64>,
    own: Option<&RuleBand>,
    inputs: &[Resolved],
    numbers: &[f64],
) -> Option<Band> {
    if let Some(own) = own {
        let (low, high) = (own.ends)(numbers)?;
        return is_range(low, high).then_some(Band { low, high, kind: own.kind });
    }
    let kind = inputs.iter().filter_map(|input| Some(input.band?.kind)).reduce(widest)?;
    let (mut least, mut most) = (numbers.to_vec(), numbers.to_vec());
    for (at, band) in inputs.iter().enumerate().filter_map(|(at, input)| Some((at, input.band?))) {
        let alone = |end: f64| {
            let mut moved = numbers.to_vec();
            moved[at] = end;
            compute(&moved)
        };
        let rises = alone(band.low)? <= alone(band.high)?;
        (least[at], most[at]) = if rises { (band.low, band.high) } else { (band.high, band.low) };
    }
    let (low, high) = (compute(&least)?, compute(&most)?);
    is_range(low, high).then_some(Band { low, high, kind })
}

/// The range where all inputs stray together: all at their lower ends, then all at their upper ends.
fn band_together(compute: fn(&[f64]) -> Option<f64>, inputs: &[Resolved], numbers: &[f64]) -> Option<Band> {
    let kind = inputs.iter().filter_map(|input| Some(input.band?.kind)).reduce(widest)?;
    let at = |end: fn(Band) -> f64| {
        let moved = inputs.iter().zip(numbers).map(|(input, number)| input.band.map_or(*number, end));
        compute(&moved.collect::<Vec<f64>>())
    };
    let (one, other) = (at(|band| band.low)?, at(|band| band.high)?);
    let (low, high) = (one.min(other), one.max(other));
    is_range(low, high).then_some(Band { low, high, kind })
}

/// Whether two ends are apart by more than a hair of arithmetic.
fn is_range(low: f64, high: f64) -> bool {
    high - low > 1e-9 * low.abs().max(high.abs()) && low.is_finite() && high.is_finite()
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
