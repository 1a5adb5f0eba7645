//! Input fields: what a person typed is a [`Raw`], what the program trusts is a [`Given`], and one table of
//! [`Field`]s stands between. Code, forms, the schema and the manual all read that table.

use std::collections::BTreeMap;

use crate::curve::{self, CurveFault, CurvePoint};
use crate::day::CivilDay;
use crate::list;
use crate::money::Currency;
use crate::number::{self, NotANumber};
use crate::ratio;
use crate::schedule::{self, Schedule, ScheduleFault};
use crate::status::Status;
use crate::unit::Unit;

/// What kind of answer a field takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A number in `unit`, from `low` to `high`, both allowed.
    Number {
        /// The unit it is kept in, which is the last word of the key.
        unit: Unit,
        /// Least possible value.
        low: f64,
        /// Greatest possible value.
        high: f64,
        /// Whether only whole numbers make sense.
        whole: bool,
        /// Values outside this range can be true but are asked about.
        usual: Option<(f64, f64)>,
    },
    /// A dilution 1:N; the value is N, from `low` to `high`.
    Ratio {
        /// Least N.
        low: f64,
        /// Greatest N.
        high: f64,
        /// N outside this range can be true but is asked about.
        usual: (f64, f64),
    },
    /// Several numbers in `unit`, each from `low` to `high`, such as the weights of birds.
    Numbers {
        /// The unit they are kept in.
        unit: Unit,
        /// Least possible value of each.
        low: f64,
        /// Greatest possible value of each.
        high: f64,
        /// The fewest that make sense.
        at_least: usize,
        /// The most that are taken.
        at_most: usize,
    },
    /// One word of a list.
    Choice(&'static [&'static str]),
    /// Some words of a list.
    Choices(&'static [&'static str]),
    /// Months of the year, 1 to 12.
    Months,
    /// A civil day.
    Day,
    /// Things by day of age, typed as `42: 400, 45: 600, 49: rest`; days from `first` to `last`.
    Schedule {
        /// Least day of age.
        first: i32,
        /// Greatest day of age.
        last: i32,
    },
    /// A whole number that holds from a day of age on until the next, typed as `0: 60, 21: 40`; days from `first` to
    /// `last`, numbers from `low` to `high`.
    Steps {
        /// Least day of age.
        first: i32,
        /// Greatest day of age.
        last: i32,
        /// Least number.
        low: u32,
        /// Greatest number.
        high: u32,
    },
    /// A growth curve as CSV text with a header.
    Curve,
    /// Short words, one beside each of several numbers, such as the spots where birds were weighed.
    Words {
        /// The most that are taken.
        at_most: usize,
        /// Greatest number of characters of each.
        characters: usize,
    },
    /// Numbers by day of age, read from the book and never typed.
    ByDay {
        /// The unit they are kept in.
        unit: Unit,
    },
    /// A currency code of three capital letters.
    Currency,
    /// Free text of at most so many characters.
    Text(usize),
}

/// Whether a field must be answered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Need {
    /// A plan cannot do without it; "not known" is still an answer.
    Required,
    /// May be left out.
    Optional,
    /// When left out this is taken, and shown as taken.
    Usual(&'static str, Status),
}

/// One line of the table of fields.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Section and name, the unit as its last word: `house.length_m`.
    pub key: &'static str,
    /// What it takes.
    pub kind: Kind,
    /// Whether it must be answered.
    pub need: Need,
    /// Why moving it moves no figure, for the few fields of which that is true.
    pub inert: Option<&'static str>,
}

impl Field {
    /// The part before the point: the table of a plan file, the section of a form.
    pub fn section(&self) -> &'static str {
        self.key.split_once('.').map_or("", |(section, _)| section)
    }

    /// The part behind the point.
    pub fn name(&self) -> &'static str {
        self.key.split_once('.').map_or(self.key, |(_, name)| name)
    }

    /// The unit, of number fields.
    pub fn unit(&self) -> Option<Unit> {
        match self.kind {
            Kind::Number { unit, .. } | Kind::Numbers { unit, .. } | Kind::ByDay { unit } => Some(unit),
            _ => None,
        }
    }

    /// The field asked under its own key.
    pub fn asked(&'static self) -> Asked {
        Asked { key: self.key, field: self, need: self.need }
    }
}

/// A field as one form, file or command asks for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// The key it is asked under: the field's own in a plan, a short one in a quick sum.
    pub key: &'static str,
    /// The field.
    pub field: &'static Field,
    /// Whether it must be answered here.
    pub need: Need,
}

impl Asked {
    /// The part of the key before the point; empty where there is none.
    fn section(&self) -> &'static str {
        self.key.split_once('.').map_or("", |(section, _)| section)
    }

    /// The unit in which `key` gives this field: `house.length_ft` gives `house.length_m` in feet.
    /// `None` when the key is not one of this field's.
    pub fn unit_of_key(&self, key: &str) -> Option<Unit> {
        let own = self.field.unit()?;
        let stem = self.key.strip_suffix(own.suffix()?)?;
        let suffix = key.strip_prefix(stem)?;
        Unit::ALL
            .iter()
            .copied()
            .find(|unit| unit.dimension() == own.dimension() && unit.suffix() == Some(suffix))
    }
}

/// Something typed, before anybody looked at it.
#[derive(Clone, Debug, PartialEq)]
pub struct Raw {
    /// The key as written.
    pub key: String,
    /// The text as typed; lists keep their items apart.
    pub text: Vec<String>,
    /// The line of the file, counted from 1; absent for a form or a command line.
    pub line: Option<usize>,
}

/// A checked value.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A number in the field's unit, or N of a ratio.
    Number(f64),
    /// Numbers in the field's unit, in the order typed.
    Numbers(Vec<f64>),
    /// A word of the field's list.
    Choice(&'static str),
    /// Words of the field's list, in the list's order, none twice.
    Choices(Vec<&'static str>),
    /// Months 1 to 12, ascending.
    Months(Vec<i8>),
    /// A day.
    Day(CivilDay),
    /// What happens on which day of age.
    Schedule(Schedule),
    /// A growth curve.
    Curve(Vec<CurvePoint>),
    /// Words, in the order typed.
    Words(Vec<String>),
    /// Numbers by day of age, for the days that were written.
    ByDay(BTreeMap<i32, f64>),
    /// A currency.
    Currency(Currency),
    /// Text.
    Text(String),
}

/// A checked answer with what was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// The characters as typed, lists joined by commas.
    pub typed: String,
    /// What they were taken for.
    pub value: Value,
    /// Where it stood.
    pub line: Option<usize>,
    /// Set when nobody typed it: how the usual value taken instead is backed.
    pub usual: Option<Status>,
}

/// What is wrong with one answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// A required field has no answer.
    Missing,
    /// None of a section's required fields has an answer.
    MissingTable {
        /// The keys it must hold.
        needs: Vec<&'static str>,
    },
    /// No such key; perhaps this one was meant.
    UnknownKey {
        /// The nearest known key.
        nearest: Option<String>,
    },
    /// The text is no number.
    NotANumber,
    /// A decimal comma in a file, where a point is wanted.
    CommaDecimal {
        /// The same with a point.
        suggestion: String,
    },
    /// A comma that can be a decimal mark or a mark of thousands.
    TwoWays {
        /// The number with a decimal point.
        decimal: String,
        /// The number in thousands.
        thousands: String,
    },
    /// A unit that does not fit this field.
    WrongUnit {
        /// The field's own unit.
        wanted: Unit,
    },
    /// A number outside what is possible.
    OutOfRange {
        /// Least possible.
        low: f64,
        /// Greatest possible.
        high: f64,
        /// The unit of both.
        unit: Unit,
        /// A slip of the decimal mark that would fit, if there is one.
        suggestion: Option<f64>,
    },
    /// A fraction where whole things are counted.
    NotWhole {
        /// What was perhaps meant.
        suggestion: Option<f64>,
    },
    /// One of several numbers is none, or outside what is possible.
    InList {
        /// Which of them, from 1.
        at: usize,
        /// Its text.
        item: String,
        /// Least possible.
        low: f64,
        /// Greatest possible.
        high: f64,
        /// The unit of both.
        unit: Unit,
    },
    /// Fewer numbers than make sense.
    TooFew {
        /// How many were typed.
        found: usize,
        /// How many are needed.
        at_least: usize,
    },
    /// More numbers than are taken.
    TooMany {
        /// How many were typed.
        found: usize,
        /// How many are taken.
        at_most: usize,
    },
    /// Not of the form 1:N.
    NotARatio,
    /// No day of the form YYYY-MM-DD.
    NotADay,
    /// Not a word of the list.
    NotAChoice {
        /// The list.
        allowed: &'static [&'static str],
        /// The nearest word of it.
        nearest: Option<&'static str>,
    },
    /// Not a list of months 1 to 12.
    NotMonths,
    /// No list of `day: number`.
    NotASchedule {
        /// The part that cannot be read.
        part: String,
        /// Why.
        why: ScheduleFault,
    },
    /// No list of `day: number` in which each number holds until the next.
    NotSteps {
        /// The part that cannot be read.
        part: String,
        /// Why.
        why: ScheduleFault,
    },
    /// No growth curve.
    NotACurve(CurveFault),
    /// No currency code.
    NotACurrency,
    /// Two rows have the same name, by which they are told apart.
    SameName {
        /// The key of the other.
        other: String,
    },
    /// No row of a section that stands several times has this name.
    NotARow {
        /// The section.
        section: &'static str,
        /// The names there are.
        names: Vec<String>,
    },
    /// The field was given twice, perhaps in two units.
    GivenTwice {
        /// The other key.
        other: String,
    },
    /// Longer than can be kept.
    TooLong {
        /// Greatest number of characters.
        limit: usize,
    },
    /// Numbers that are read from the book and cannot be typed.
    ReadFromTheBook,
    /// A value that is possible alone but not beside another one.
    Against {
        /// Which rule of fitting together; names a message.
        rule: &'static str,
        /// The key it clashes with.
        other: &'static str,
        /// The other's value, in `unit`.
        other_value: f64,
        /// Least value that would fit.
        low: f64,
        /// Greatest value that would fit.
        high: f64,
        /// The unit of all three.
        unit: Unit,
    },
}

/// A fault with its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// The key as written, or the field's key.
    pub key: String,
    /// What was typed.
    pub typed: String,
    /// Where.
    pub line: Option<usize>,
    /// What is wrong.
    pub fault: Fault,
}

/// A value that can be true but is rare; asked about, never refused.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The field.
    pub key: &'static str,
    /// Its value, in `unit`.
    pub value: f64,
    /// The usual range.
    pub usual: (f64, f64),
    /// The unit.
    pub unit: Unit,
}

/// How strictly texts are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// A file: decimal point only, since a comma separates things there.
    File,
    /// Typed by hand on a page or a command line: comma or point.
    Hand,
}

/// The words that say a field is not known. What hangs on it is then left out of the answer.
pub const NOT_KNOWN: &str = "not known";

/// All answers, checked.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answers {
    given: BTreeMap<&'static str, Given>,
    not_known: Vec<&'static str>,
    rows: BTreeMap<&'static str, Vec<Answers>>,
}

impl Answers {
    /// The answer to a field, if there is one.
    pub fn get(&self, key: &str) -> Option<&Given> {
        self.given.get(key)
    }

    /// The farm's money; without a name and with cents where nobody told.
    pub fn currency(&self) -> Currency {
        match self.get("farm.currency").map(|given| &given.value) {
            Some(Value::Currency(currency)) => *currency,
            _ => Currency::UNKNOWN,
        }
    }

    /// A number, in the field's unit.
    pub fn number(&self, key: &str) -> Option<f64> {
        match self.get(key)?.value {
            Value::Number(number) => Some(number),
            _ => None,
        }
    }

    /// Several numbers, in the field's unit; empty where the field is unanswered.
    pub fn numbers(&self, key: &str) -> &[f64] {
        match self.get(key).map(|given| &given.value) {
            Some(Value::Numbers(numbers)) => numbers,
            _ => &[],
        }
    }

    /// A chosen word.
    pub fn choice(&self, key: &str) -> Option<&'static str> {
        match self.get(key)?.value {
            Value::Choice(word) => Some(word),
            _ => None,
        }
    }

    /// Chosen words; empty where the field is unanswered.
    pub fn choices(&self, key: &str) -> &[&'static str] {
        match self.get(key).map(|given| &given.value) {
            Some(Value::Choices(words)) => words,
            _ => &[],
        }
    }

    /// A day.
    pub fn day(&self, key: &str) -> Option<CivilDay> {
        match self.get(key)?.value {
            Value::Day(day) => Some(day),
            _ => None,
        }
    }

    /// Text.
    pub fn text(&self, key: &str) -> Option<&str> {
        match &self.get(key)?.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// Puts an answer in place of another one. For tests and for "what if".
    pub fn set(&mut self, field: &Field, given: Given) {
        self.given.insert(field.key, given);
    }

    /// What happens on which day of age.
    pub fn schedule(&self, key: &str) -> Option<&Schedule> {
        match &self.get(key)?.value {
            Value::Schedule(schedule) => Some(schedule),
            _ => None,
        }
    }

    /// A growth curve.
    pub fn curve(&self, key: &str) -> Option<&[CurvePoint]> {
        match &self.get(key)?.value {
            Value::Curve(points) => Some(points),
            _ => None,
        }
    }

    /// Words beside numbers; empty where the field is unanswered.
    pub fn words(&self, key: &str) -> &[String] {
        match self.get(key).map(|given| &given.value) {
            Some(Value::Words(words)) => words,
            _ => &[],
        }
    }

    /// Numbers by day of age; `None` where nothing was written on any day.
    pub fn by_day(&self, key: &str) -> Option<&BTreeMap<i32, f64>> {
        match &self.get(key)?.value {
            Value::ByDay(days) => Some(days),
            _ => None,
        }
    }

    /// The other rows of a section that stands several times.
    pub fn rows(&self, section: &str) -> &[Answers] {
        self.rows.get(section).map_or(&[], Vec::as_slice)
    }

    /// Sets the other rows of a section that stands several times.
    pub fn set_rows(&mut self, section: &'static str, rows: Vec<Answers>) {
        self.rows.insert(section, rows);
    }

    /// The same answers with those of one section taken from elsewhere.
    pub fn with_section(&self, section: &str, from: &Answers) -> Answers {
        let of_section = |key: &str| key.split_once('.').is_some_and(|(own, _)| own == section);
        let mut mixed = self.clone();
        mixed.given.retain(|key, _| !of_section(key));
        mixed.given.extend(
            from.given.iter().filter(|(key, _)| of_section(key)).map(|(key, given)| (*key, given.clone())),
        );
        mixed
    }

    /// All answers in the order of their keys.
    pub fn iter(&self) -> impl Iterator<Item = (&'static str, &Given)> {
        self.given.iter().map(|(key, given)| (*key, given))
    }

    /// The fields said to be not known.
    pub fn not_known(&self) -> &[&'static str] {
        &self.not_known
    }
}

/// What checking gives: the answers that hold, what is wrong with the others, and what is asked about.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Checked {
    /// The answers that hold.
    pub answers: Answers,
    /// What is wrong, in the order of the lines.
    pub problems: Vec<Problem>,
    /// What is rare.
    pub questions: Vec<Question>,
}

/// Checks everything typed against what is asked, all faults at once.
///
/// `strict` says whether a required field without an answer is a fault (a file, a sum) or simply not known yet
/// (a form half filled). Answers are kept under the fields' own keys, faults under the keys as typed.
pub fn check(asked: &[Asked], raws: &[Raw], source: Source, strict: bool) -> Checked {
    let mut checked = Checked::default();
    let mut seen: BTreeMap<&'static str, &str> = BTreeMap::new();
    for raw in raws {
        if let Err(fault) = check_one(asked, raw, source, &mut seen, &mut checked) {
            let typed = raw.text.join(", ");
            checked.problems.push(Problem { key: raw.key.clone(), typed, line: raw.line, fault });
        }
    }
    fill(asked, &seen, strict, &mut checked);
    forgive_misspelt(&mut checked.problems);
    checked
}

/// A key that is missing because it was misspelt is one fault, not two.
fn forgive_misspelt(problems: &mut Vec<Problem>) {
    let meant: Vec<String> = problems
        .iter()
        .filter_map(|problem| match &problem.fault {
            Fault::UnknownKey { nearest } => nearest.clone(),
            _ => None,
        })
        .collect();
    problems.retain(|problem| problem.fault != Fault::Missing || !meant.contains(&problem.key));
}

fn check_one<'raw>(
    asked: &[Asked],
    raw: &'raw Raw,
    source: Source,
    seen: &mut BTreeMap<&'static str, &'raw str>,
    checked: &mut Checked,
) -> Result<(), Fault> {
    let (field, unit) = find(asked, &raw.key).ok_or_else(|| Fault::UnknownKey {
        nearest: nearest(&raw.key, asked.iter().map(|asked| asked.key)).map(str::to_owned),
    })?;
    if let Some(other) = seen.insert(field.key, &raw.key) {
        return Err(Fault::GivenTwice { other: other.to_owned() });
    }
    if raw.text.iter().all(|text| text.trim().is_empty()) && source == Source::Hand {
        seen.remove(field.key);
        return Ok(());
    }
    if raw.text.len() == 1 && raw.text[0].trim().eq_ignore_ascii_case(NOT_KNOWN) {
        checked.answers.not_known.push(field.key);
        return Ok(());
    }
    let value = read(field, unit, raw, source)?;
    checked.questions.extend(question(field, &value));
    let given = Given { typed: typed(field, unit, raw), value, line: raw.line, usual: None };
    checked.answers.given.insert(field.key, given);
    Ok(())
}

/// What was typed, with the unit that only the key named: the answer is kept under the field's own key.
fn typed(field: &Field, unit: Option<Unit>, raw: &Raw) -> String {
    let text = raw.text.join(", ");
    let is_bare = !text.contains(char::is_alphabetic);
    let spelt = unit.filter(|unit| Some(*unit) != field.unit()).and_then(|unit| unit.spellings().first());
    match (field.kind, spelt) {
        (Kind::Number { .. }, Some(spelt)) if is_bare => {
            let parts: Vec<String> = text.split('+').map(|part| format!("{part} {spelt}")).collect();
            parts.join("+")
        }
        _ => text,
    }
}

/// Takes usual values where nothing was said, and finds what is missing.
fn fill(asked: &[Asked], seen: &BTreeMap<&'static str, &str>, strict: bool, checked: &mut Checked) {
    let mut missing: Vec<Asked> = Vec::new();
    for &one in asked {
        let field = one.field;
        let answered =
            checked.answers.given.contains_key(field.key) || checked.answers.not_known.contains(&field.key);
        match one.need {
            Need::Required if strict && !seen.contains_key(field.key) => missing.push(one),
            Need::Usual(text, status) if !answered => {
                if let Some(given) = usual(field, text, status) {
                    checked.answers.given.insert(field.key, given);
                }
            }
            _ => {}
        }
    }
    checked.problems.extend(say_missing(asked, &missing));
}

/// One problem a missing field, or one a section of which nothing required is there.
fn say_missing(asked: &[Asked], missing: &[Asked]) -> Vec<Problem> {
    let nowhere = |key: &str, fault| Problem { key: key.to_owned(), typed: String::new(), line: None, fault };
    let mut problems: Vec<Problem> = Vec::new();
    for one in missing {
        let section = one.section();
        let required = |one: &&Asked| one.section() == section && one.need == Need::Required;
        let all = asked.iter().filter(required).count();
        let absent: Vec<_> = missing.iter().filter(required).map(|one| one.key).collect();
        if !section.is_empty() && all > 1 && absent.len() == all {
            if absent[0] == one.key {
                problems.push(nowhere(section, Fault::MissingTable { needs: absent }));
            }
        } else {
            problems.push(nowhere(one.key, Fault::Missing));
        }
    }
    problems
}

fn usual(field: &Field, text: &str, status: Status) -> Option<Given> {
    let raw = Raw { key: field.key.to_owned(), text: vec![text.to_owned()], line: None };
    let value = read(field, field.unit(), &raw, Source::Hand).ok()?;
    Some(Given { typed: String::new(), value, line: None, usual: Some(status) })
}

/// The field a key stands for, with the unit the key names.
pub fn find(asked: &[Asked], key: &str) -> Option<(&'static Field, Option<Unit>)> {
    if let Some(one) = asked.iter().find(|one| one.key == key) {
        return Some((one.field, one.field.unit()));
    }
    asked.iter().find_map(|one| one.unit_of_key(key).map(|unit| (one.field, Some(unit))))
}

/// The word most like `word`, if any is alike enough to be worth naming.
pub fn nearest<'a>(word: &str, among: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    among
        .map(|candidate| (candidate, strsim::jaro_winkler(&word.to_lowercase(), candidate)))
        .filter(|&(_, likeness)| likeness > 0.75)
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(candidate, _)| candidate)
}

fn read(field: &Field, unit: Option<Unit>, raw: &Raw, source: Source) -> Result<Value, Fault> {
    let whole_text = raw.text.join(", ");
    match field.kind {
        Kind::Number { unit: own, low, high, whole, .. } => {
            let typed_in = unit.unwrap_or(own);
            let number = read_number(&whole_text, own, typed_in, source)?;
            // A fraction of a chick is no slip of the decimal mark, however few it would be.
            if whole && number.fract() != 0.0 {
                return Err(Fault::NotWhole { suggestion: thousands_meant(&whole_text, low, high) });
            }
            in_range(number, (low, high), whole, (own, typed_in))?;
            Ok(Value::Number(number))
        }
        Kind::Ratio { low, high, .. } => {
            let parts = ratio::parse_parts(&whole_text).map_err(|why| match why {
                NotANumber::TwoWays => two_ways(whole_text.rsplit(':').next().unwrap_or_default()),
                _ => Fault::NotARatio,
            })?;
            if source == Source::File && whole_text.contains(',') {
                return Err(Fault::CommaDecimal { suggestion: whole_text.trim().replace(',', ".") });
            }
            in_range(parts, (low, high), false, (Unit::One, Unit::One))?;
            Ok(Value::Number(parts))
        }
        Kind::Numbers { unit, low, high, at_least, at_most } => {
            let numbers = list::read(&raw.text, unit, (low, high))?;
            match numbers.len() {
                found if found < at_least => Err(Fault::TooFew { found, at_least }),
                found if found > at_most => Err(Fault::TooMany { found, at_most }),
                _ => Ok(Value::Numbers(numbers)),
            }
        }
        Kind::Choice(allowed) => read_choice(whole_text.trim(), allowed).map(Value::Choice),
        Kind::Choices(allowed) => read_choices(&raw.text, allowed).map(Value::Choices),
        Kind::Months => read_months(&raw.text).map(Value::Months),
        // Nobody plans chicks outside these years; a slip of a digit does.
        Kind::Day => CivilDay::parse(&whole_text)
            .filter(|day| (1980..=2199).contains(&day.year()))
            .map(Value::Day)
            .ok_or(Fault::NotADay),
        Kind::Schedule { first, last } => schedule::parse(&whole_text, first, last)
            .map(Value::Schedule)
            .map_err(|(part, why)| Fault::NotASchedule { part, why }),
        Kind::Steps { first, last, low, high } => {
            schedule::parse_steps(&whole_text, (first, last), (low, high))
                .map(Value::Schedule)
                .map_err(|(part, why)| Fault::NotSteps { part, why })
        }
        Kind::Curve => curve::parse(&raw.text.join("\n")).map(Value::Curve).map_err(Fault::NotACurve),
        Kind::Words { at_most, characters } => read_words(&raw.text, at_most, characters),
        Kind::ByDay { .. } => Err(Fault::ReadFromTheBook),
        Kind::Currency => {
            Currency::from_code(whole_text.trim()).map(Value::Currency).ok_or(Fault::NotACurrency)
        }
        Kind::Text(limit) => {
            if whole_text.chars().count() > limit {
                return Err(Fault::TooLong { limit });
            }
            Ok(Value::Text(whole_text.trim().to_owned()))
        }
    }
}

fn read_words(texts: &[String], at_most: usize, characters: usize) -> Result<Value, Fault> {
    let split = |c: char| matches!(c, ',' | ';' | '\n');
    let words: Vec<String> =
        texts.iter().flat_map(|text| text.split(split)).map(|word| word.trim().to_owned()).collect();
    if words.len() > at_most {
        return Err(Fault::TooMany { found: words.len(), at_most });
    }
    if words.iter().any(|word| word.chars().count() > characters) {
        return Err(Fault::TooLong { limit: characters });
    }
    Ok(Value::Words(words))
}

/// A number, or numbers to be added: 3 found in the morning and 2 in the evening are typed "3+2".
fn read_number(text: &str, own: Unit, typed_in: Unit, source: Source) -> Result<f64, Fault> {
    match text.trim().char_indices().skip(1).find(|(_, c)| *c == '+') {
        Some((at, _)) if source == Source::Hand => {
            let (first, rest) = text.trim().split_at(at);
            Ok(read_one_number(first, own, typed_in, source)?
                + read_number(&rest[1..], own, typed_in, source)?)
        }
        _ => read_one_number(text, own, typed_in, source),
    }
}

fn read_one_number(text: &str, own: Unit, typed_in: Unit, source: Source) -> Result<f64, Fault> {
    if source == Source::File && text.contains(',') && number::parse(text).is_ok() {
        return Err(Fault::CommaDecimal { suggestion: text.trim().replace(',', ".") });
    }
    // The key names the unit of a bare number; a unit behind the number overrides it.
    let read = match number::parse(text) {
        Ok(bare) => return typed_in.convert(bare, own).ok_or(Fault::WrongUnit { wanted: own }),
        Err(NotANumber::TwoWays) => Err(NotANumber::TwoWays),
        Err(_) => number::parse_in(text, own),
    };
    read.map_err(|why| match why {
        NotANumber::WrongUnit => Fault::WrongUnit { wanted: own },
        NotANumber::TwoWays => two_ways(text),
        NotANumber::Empty | NotANumber::Unreadable => Fault::NotANumber,
    })
}

fn two_ways(text: &str) -> Fault {
    let text = text.trim();
    let mark = |with: &str| text.replace([',', '.'], with);
    Fault::TwoWays { decimal: mark("."), thousands: mark("") }
}

/// `number` and its `range` are in the field's `own` unit; the fault speaks in the unit that was typed. What can only be `whole` is
/// guessed whole.
fn in_range(number: f64, range: (f64, f64), whole: bool, (own, typed_in): (Unit, Unit)) -> Result<(), Fault> {
    let fits = |value: f64| (range.0..=range.1).contains(&value);
    if fits(number) {
        return Ok(());
    }
    let typed = |value: f64| own.convert(value, typed_in).unwrap_or(value);
    let kept = |value: f64| typed_in.convert(value, own).unwrap_or(value);
    // Kilograms in a box for grams, litres in one for millilitres, are likelier than a digit too few.
    let is_large_unit = matches!(typed_in, Unit::Gram | Unit::Millilitre) && number < range.0;
    // A share typed for percent is a hundred times too little; more than all of it was no slip of the decimal mark.
    let is_percent = typed_in == Unit::Percent;
    let likelier = [is_large_unit.then_some(1000.0), (is_percent && number < range.0).then_some(100.0)];
    let slips = likelier.into_iter().flatten().chain([0.1, 10.0, 0.01, 100.0, 0.001, 1000.0]);
    let can_be_slip = number != 0.0 && !(is_percent && number > range.1);
    // What is multiplied is rounded to the digits typed: 0.955 is 95.5 percent, without a tail of binary fractions.
    let moved = |slip: f64| (typed(number) * slip * 1e9).round() / 1e9;
    let suggestion = slips
        .map(moved)
        .find(|&moved| can_be_slip && fits(kept(moved)) && (!whole || kept(moved).fract() == 0.0));
    Err(Fault::OutOfRange { low: typed(range.0), high: typed(range.1), unit: typed_in, suggestion })
}

/// "1,600" chicks is one and three fifths to the reader of numbers; sixteen hundred was meant.
fn thousands_meant(text: &str, low: f64, high: f64) -> Option<f64> {
    if !number::looks_like_thousands(text.trim()) {
        return None;
    }
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    digits.parse().ok().filter(|meant| (low..=high).contains(meant))
}

fn read_choice(text: &str, allowed: &'static [&'static str]) -> Result<&'static str, Fault> {
    allowed
        .iter()
        .copied()
        .find(|word| word.eq_ignore_ascii_case(text))
        .ok_or_else(|| Fault::NotAChoice { allowed, nearest: nearest(text, allowed.iter().copied()) })
}

fn split_items(texts: &[String]) -> impl Iterator<Item = &str> {
    texts.iter().flat_map(|text| text.split(',')).map(str::trim).filter(|item| !item.is_empty())
}

fn read_choices(texts: &[String], allowed: &'static [&'static str]) -> Result<Vec<&'static str>, Fault> {
    let chosen = split_items(texts).map(|item| read_choice(item, allowed)).collect::<Result<Vec<_>, _>>()?;
    if chosen.is_empty() {
        return Err(Fault::NotAChoice { allowed, nearest: None });
    }
    Ok(allowed.iter().copied().filter(|word| chosen.contains(word)).collect())
}

fn read_months(texts: &[String]) -> Result<Vec<i8>, Fault> {
    let mut months = split_items(texts)
        .map(|item| item.parse().ok().filter(|month| (1..=12).contains(month)).ok_or(Fault::NotMonths))
        .collect::<Result<Vec<i8>, _>>()?;
    if months.is_empty() {
        return Err(Fault::NotMonths);
    }
    months.sort_unstable();
    months.dedup();
    Ok(months)
}

fn question(field: &Field, value: &Value) -> Option<Question> {
    let (unit, usual) = match field.kind {
        Kind::Number { unit, usual: Some(usual), .. } => (unit, usual),
        Kind::Ratio { usual, .. } => (Unit::One, usual),
        _ => return None,
    };
    match *value {
        Value::Number(value) if value < usual.0 || value > usual.1 => {
            Some(Question { key: field.key, value, usual, unit })
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fields::FIELDS;

    fn raw(key: &str, text: &str) -> Raw {
        Raw { key: key.to_owned(), text: vec![text.to_owned()], line: Some(7) }
    }

    fn one(key: &str, text: &str, source: Source) -> Checked {
        let fields: Vec<Asked> = FIELDS.iter().map(Field::asked).collect();
        check(&fields, &[raw(key, text)], source, false)
    }

    fn fault(key: &str, text: &str, source: Source) -> Fault {
        one(key, text, source).problems.remove(0).fault
    }

    #[test]
    fn a_key_in_feet_gives_the_same_field() {
        let checked = one("house.length_ft", "59", Source::File);
        assert!((checked.answers.number("house.length_m").unwrap() - 17.9832).abs() < 1e-9);
        let checked = one("house.length_m", "59 ft", Source::Hand);
        assert!((checked.answers.number("house.length_m").unwrap() - 17.9832).abs() < 1e-9);
    }

    #[test]
    fn a_slip_of_the_decimal_mark_is_guessed() {
        let Fault::OutOfRange { suggestion, high, .. } = fault("farm.latitude_deg", "95", Source::File)
        else {
            panic!("out of range");
        };
        assert_eq!((suggestion, high), (Some(9.5), 90.0));
    }

    #[test]
    fn a_share_is_not_taken_for_a_slip_of_one_digit() {
        let guess = |key, text| match fault(key, text, Source::File) {
            Fault::OutOfRange { suggestion, .. } | Fault::NotWhole { suggestion } => suggestion,
            other => panic!("{other:?}"),
        };
        assert_eq!(guess("house.usable_floor_percent", "0.955"), Some(95.5));
        assert_eq!(guess("house.usable_floor_percent", "150"), None);
        assert_eq!(guess("batch.chicks", "1600.5"), None);
        assert_eq!(guess("batch.chicks", "1.6"), None);
        assert_eq!(guess("batch.chicks", "99999"), None);
        assert_eq!(guess("batch.chicks", "160000"), Some(16_000.0));
    }

    #[test]
    fn commas_count_by_hand_and_not_in_a_file() {
        assert_eq!(one("house.width_m", "9,5", Source::Hand).answers.number("house.width_m"), Some(9.5));
        assert_eq!(
            fault("house.width_m", "9,5", Source::File),
            Fault::CommaDecimal { suggestion: "9.5".to_owned() }
        );
    }

    #[test]
    fn a_comma_that_can_be_thousands_is_asked_about() {
        let two_ways = |decimal: &str, thousands: &str| Fault::TwoWays {
            decimal: decimal.to_owned(),
            thousands: thousands.to_owned(),
        };
        for source in [Source::Hand, Source::File] {
            assert_eq!(fault("batch.chicks", "1,600", source), two_ways("1.600", "1600"));
            assert_eq!(fault("prices.litter_bag_each", "12,500", source), two_ways("12.500", "12500"));
            assert_eq!(fault("disinfectant.ratio", "1:1,000", source), two_ways("1.000", "1000"));
            assert_eq!(fault("disinfectant.ratio", "1:1.000", source), two_ways("1.000", "1000"));
        }
        assert_eq!(fault("batch.chicks", "16,5", Source::Hand), Fault::NotWhole { suggestion: None });
    }

    #[test]
    fn a_suggestion_speaks_the_unit_that_was_typed() {
        let Fault::OutOfRange { suggestion, unit, high, .. } = fault("house.length_ft", "5900", Source::File)
        else {
            panic!("out of range");
        };
        assert_eq!((suggestion, unit), (Some(590.0), Unit::Foot));
        assert!((high - 984.25).abs() < 0.01);
    }

    #[test]
    fn nothing_ticked_is_no_choice() {
        let raw = Raw { key: "disinfectant.surfaces".to_owned(), text: Vec::new(), line: Some(3) };
        let asked = crate::fields::of_sections(&["disinfectant"]);
        let checked = check(&asked, &[raw], Source::File, false);
        assert!(matches!(checked.problems[0].fault, Fault::NotAChoice { .. }));
    }

    #[test]
    fn unknown_keys_name_the_nearest() {
        assert_eq!(
            fault("house.lenght_m", "18", Source::File),
            Fault::UnknownKey { nearest: Some("house.length_m".to_owned()) }
        );
    }

    #[test]
    fn one_field_in_two_units_is_refused() {
        let fields: Vec<Asked> = FIELDS.iter().map(Field::asked).collect();
        let both = [raw("house.length_m", "18"), raw("house.length_ft", "59")];
        let checked = check(&fields, &both, Source::File, false);
        assert_eq!(checked.problems[0].fault, Fault::GivenTwice { other: "house.length_m".to_owned() });
    }

    #[test]
    fn not_known_is_an_answer() {
        let fields = [crate::fields::by_key("house.length_m").unwrap().asked()];
        assert_eq!(check(&fields, &[], Source::File, true).problems[0].fault, Fault::Missing);
        let checked = check(&fields, &[raw("house.length_m", "not known")], Source::File, true);
        assert!(checked.problems.is_empty());
        assert_eq!(checked.answers.not_known(), ["house.length_m"]);
    }

    /// Every usual value and every end of a range must itself be allowed, or the table is wrong.
    #[test]
    fn the_table_holds_together() {
        for field in FIELDS {
            if let Need::Usual(text, status) = field.need {
                assert!(usual(field, text, status).is_some(), "{}", field.key);
            }
            if let Kind::Number { unit, low, high, .. } = field.kind {
                assert!(low < high, "{}", field.key);
                let named = unit.suffix().is_none_or(|suffix| field.key.ends_with(suffix));
                assert!(named, "{} does not end in its unit", field.key);
            }
        }
        let mut keys: Vec<_> = FIELDS.iter().map(|field| field.key).collect();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), FIELDS.len(), "a key stands twice");
    }
}
