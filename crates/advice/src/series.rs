//! Figures by day of age: declared once like single figures, with a rule that gives each day, or a procedure that gives all.

use quantity::{Answers, Series, Status, Unit};

use crate::outcome::Outcome;
use crate::rule::{Names, Origin, Rule};

/// A figure by day of age, declared once under a name that is never reused.
pub struct SeriesSpec {
    /// The stable dotted name.
    pub id: &'static str,
    /// The unit of its values, fixed, never by locale.
    pub unit: Unit,
    /// Decimals shown to people; JSON carries all.
    pub decimals: u8,
    /// The first day of age it has; negative before placement.
    pub first_day: i32,
    /// Its last day.
    pub until: Until,
    /// How its days come about.
    pub way: Way,
}

/// How long a figure by day goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Until {
    /// To the last day of sale: it is planned, and known on every day or on none.
    Sale,
    /// To the day that the book is asked about: it was written down, and has gaps where it was not.
    Today,
}

/// How the days of a figure come about.
pub enum Way {
    /// Each day by a rule; the first that applies is taken.
    Rules(&'static [DayRule]),
    /// All days at once, by a procedure.
    Procedure {
        /// The figures it is made from, for its working.
        made_from: &'static [&'static str],
        /// The bibliography key of the procedure.
        source: &'static str,
        /// How far the procedure can be trusted.
        status: Status,
        /// The procedure. `None` while what it needs is not known.
        work_out: fn(&Answers, &Outcome) -> Option<Series>,
    },
}

/// One way to work out a day.
pub type DayRule = Rule<DayInput>;

/// An input of a day's rule.
pub struct DayInput {
    /// Its symbol in the formula.
    pub symbol: &'static str,
    /// Where it comes from.
    pub origin: DayOrigin,
}

/// Where an input of a day comes from.
#[derive(Clone, Copy)]
pub enum DayOrigin {
    /// The day of age itself.
    Age,
    /// The same on every day.
    Fixed(Origin),
    /// Another figure by day, on the same day.
    Same(&'static str),
    /// Another figure by day, on the same day; 0 on days that it does not have.
    SameIfAny(&'static str),
    /// A figure by day on the day before; on its first day, what `first` says.
    Before {
        /// The figure by day; it may be this one.
        series: &'static str,
        /// What stands for the day before the first.
        first: First,
    },
    /// A point of a shipped table or of the grower's own curve, at this day of age.
    Table {
        /// The table.
        table: &'static str,
        /// Which point; names it for people too.
        point: &'static str,
        /// Its unit.
        unit: Unit,
        /// Reads it.
        read: fn(&Answers, f64) -> Option<f64>,
    },
    /// What a field of numbers by day says for this day; not known on a day that was not written.
    Recorded(&'static str),
    /// The same, 0 on a day that was not written: for sums that go by what was written so far.
    RecordedIfAny(&'static str),
    /// What a field that holds a schedule says for this day; 0 on other days, and without limit where it says the rest.
    Scheduled(&'static str),
    /// What a field of numbers, each of which holds from a day of age on until the next, says for this day.
    Holding(&'static str),
    /// What a list made from figures holds for this day, such as everything bought on it.
    Listed {
        /// The list; names it for people too.
        list: &'static str,
        /// Its unit.
        unit: Unit,
        /// The figures it is made from.
        needs: &'static [&'static str],
        /// Makes it, once for all days: days of age with what they hold; days may stand several times.
        make: fn(&Answers, &Outcome) -> Option<Listed>,
    },
}

impl DayOrigin {
    /// The names it comes from.
    pub fn names(self) -> Names {
        match self {
            DayOrigin::Fixed(origin) => origin.names(),
            DayOrigin::Same(name)
            | DayOrigin::SameIfAny(name)
            | DayOrigin::Scheduled(name)
            | DayOrigin::Holding(name) => Names::needed([name]),
            DayOrigin::Recorded(name) | DayOrigin::RecordedIfAny(name) => Names::wished(name),
            DayOrigin::Before { series, first: First::Field(field) } => Names::needed([series, field]),
            DayOrigin::Before { series, first: First::Number(_) } => Names::needed([series]),
            DayOrigin::Listed { needs, .. } => Names::needed(needs),
            DayOrigin::Age | DayOrigin::Table { .. } => Names::default(),
        }
    }
}

/// Days of age with what a list holds for them; a day may stand several times.
pub type Listed = Vec<(i32, f64)>;

/// What stands for the day before the first.
#[derive(Clone, Copy)]
pub enum First {
    /// A number.
    Number(f64),
    /// A field.
    Field(&'static str),
}

/// The day of age.
pub(crate) const fn age(symbol: &'static str) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Age }
}

/// What was written down for the day.
pub(crate) const fn recorded(symbol: &'static str, key: &'static str) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Recorded(key) }
}

/// What was written down for the day, nothing where nothing was.
pub(crate) const fn if_recorded(symbol: &'static str, key: &'static str) -> DayInput {
    DayInput { symbol, origin: DayOrigin::RecordedIfAny(key) }
}

/// A field, the same on every day.
pub(crate) const fn every_day(symbol: &'static str, key: &'static str) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Fixed(Origin::Field(key)) }
}

/// A figure, the same on every day.
pub(crate) const fn given(symbol: &'static str, id: &'static str) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Fixed(Origin::Figure(id)) }
}

/// Another figure by day, on the same day.
pub(crate) const fn same(symbol: &'static str, series: &'static str) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Same(series) }
}

/// A figure by day on the day before.
pub(crate) const fn before(symbol: &'static str, series: &'static str, first: f64) -> DayInput {
    DayInput { symbol, origin: DayOrigin::Before { series, first: First::Number(first) } }
}
