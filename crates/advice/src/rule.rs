//! What a figure is and how it is worked out: declarations, from which JSON, schema, labels, prints and workings derive.

use quantity::{Answers, BandKind, Status, Unit};

use crate::outcome::Outcome;

/// A figure, declared once under a name that is never reused.
pub struct FigureSpec {
    /// The stable dotted name.
    pub id: &'static str,
    /// The unit in JSON and in formulas, fixed, never by locale.
    pub unit: Unit,
    /// Decimals shown to people; JSON carries all.
    pub decimals: u8,
    /// The ways to work it out; the first that applies is taken.
    pub rules: &'static [Rule],
}

/// One way to work out a figure, or one day of a figure by day, whose inputs are [`crate::series::DayInput`]s.
pub struct Rule<I: 'static = Input> {
    /// Its name, unique among rules; names a message that says in words when and why.
    pub name: &'static str,
    /// The formula over the symbols of `inputs`, in the units of those inputs. A test works it out from the text alone.
    ///
    /// It has `+ - * / ^ ( )`, `pi`, `sqrt ceil floor round min max sin cos tan acos`, table functions such as
    /// `growth_fast(d)` and `brooding_temperature(d, r)`, `daylength(f, p)`, `at_least(a, b)` for 1 where a reaches b and
    /// else 0, `add(d, from, to, e)` for `e` added up over whole d, `declination(p)` for the sun's declination in radians on a day, `phi(x)` for the share of a bell
    /// curve below x, `t95(f)` for Student's t that leaves 2.5 % above it at f degrees of freedom,
    /// `saturation_pressure(t)` for that of water vapour in Pa at t °C, over ice below 0.01 °C, `root(x, low, high, e)` for the
    /// x between two at which a rising `e` passes zero,
    /// `least(n, from, e)` for the least whole n from `from` at which `e` is not negative, and `last(d, from, to, e)`
    /// for the last of an unbroken run of days at which `e` is not negative. Over a list w it has `count(w)`, `mean(w)`,
    /// `sum(e)` and `count_between(w, low, high)`, ends included; inside `sum` the symbol w is each number in turn; and
    /// `lasts(w, L)` for the days, the last in part, that L lasts when each w in turn is taken from it. Of several
    /// lists, which go side by side, inside `sum` each symbol is the number at the same place.
    pub formula: &'static str,
    /// What goes in, in the order `compute` takes it. Lists stand last and go in with all their numbers, one list after the
    /// other; several are equally long.
    pub inputs: &'static [I],
    /// The bibliography key.
    pub source: &'static str,
    /// How far the rule can be trusted.
    pub status: Status,
    /// Whether this rule is the one to take.
    pub applies: fn(&Answers) -> bool,
    /// The kernel, over the inputs in their units. `None` where it has no answer.
    pub compute: fn(&[f64]) -> Option<f64>,
    /// A range that the rule itself brings. Without one, the ranges of the inputs are carried through.
    pub band: Option<RuleBand>,
    /// Whether the ranges of the inputs come of one cause, so that they stray together: birds that grow better also eat
    /// more. Else each is taken to stray by itself.
    pub together: bool,
}

/// A range that a rule brings.
pub struct RuleBand {
    /// What it means.
    pub kind: BandKind,
    /// Its ends, over the inputs.
    pub ends: fn(&[f64]) -> Option<(f64, f64)>,
}

/// An input of a rule.
pub struct Input {
    /// Its symbol in the formula.
    pub symbol: &'static str,
    /// Where it comes from.
    pub origin: Origin,
}

/// Where an input comes from.
#[derive(Clone, Copy)]
pub enum Origin {
    /// An answer of the grower, or the usual value taken instead.
    Field(&'static str),
    /// All numbers of a field of several numbers; behind all inputs of other kinds.
    List(&'static str),
    /// 1 where a word was chosen in a field of words, else 0.
    Chosen(&'static str, &'static str),
    /// Another figure.
    Figure(&'static str),
    /// Another figure where a word was chosen in a field of words, else 0: what was not chosen need not be known.
    IfChosen {
        /// The field.
        field: &'static str,
        /// The word.
        word: &'static str,
        /// The figure.
        figure: &'static str,
    },
    /// Another figure where it can be worked out, else 0: what is not priced or not planned adds nothing.
    IfKnown(&'static str),
    /// An answer of the grower, else 0: what is not told adds nothing.
    IfTold(&'static str),
    /// The first or the last day of age of a field that holds a schedule.
    EndOf(&'static str, End),
    /// A figure by day, on the day of age that a figure says.
    OnDay {
        /// The figure by day.
        series: &'static str,
        /// The figure or field that says which day.
        day: &'static str,
    },
    /// One number out of all the days of a figure by day; not known while one of the days is not.
    OfDays(Over, &'static str),
    /// One number out of those days of a figure by day that are known.
    OfKnownDays(Over, &'static str),
    /// A figure by day added up over the days after one figure's day, from the first where there is none, to another's.
    SumOfDays {
        /// The figure by day.
        series: &'static str,
        /// The figure that says the day before the first; none for the first day of all.
        after: Option<&'static str>,
        /// The figure that says the last day.
        until: &'static str,
    },
    /// The first day of age on which a figure by day is above a figure, or above nothing.
    FirstDayOver {
        /// The figure by day.
        series: &'static str,
        /// The figure that is the limit; none for nothing.
        limit: Option<&'static str>,
    },
    /// One number out of a list made from figures, such as of every delivery.
    Listed {
        /// The list, and what is read of it; names it for people too.
        list: &'static str,
        /// Its unit.
        unit: Unit,
        /// The figures that the list is made from.
        needs: &'static [&'static str],
        /// Reads it; `None` while the list is not known.
        read: fn(&Answers, &Outcome) -> Option<f64>,
    },
    /// A point of a shipped table or curve, at the value of a figure.
    TableAt {
        /// The table.
        table: &'static str,
        /// Which point; names it for people too.
        point: &'static str,
        /// Its unit.
        unit: Unit,
        /// The figure.
        at: &'static str,
        /// Reads it.
        read: fn(&Answers, f64) -> Option<f64>,
    },
    /// A point of a shipped table.
    Table {
        /// The table.
        table: &'static str,
        /// Which point; names it for people too.
        point: &'static str,
        /// Its unit.
        unit: Unit,
        /// Reads it.
        read: fn() -> Option<f64>,
    },
    /// A point of a shipped table that hangs on the word chosen in a field of one word.
    TableBy {
        /// The table.
        table: &'static str,
        /// What is read; names it for people too, with the word chosen as `choice`.
        point: &'static str,
        /// Its unit.
        unit: Unit,
        /// The field.
        field: &'static str,
        /// Reads it for a word of the field; `None` where the table has none for that word.
        read: fn(&str) -> Option<f64>,
    },
}

/// The names that an input comes from: figures, figures by day and fields.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Names {
    /// What it cannot do without.
    pub needed: Vec<&'static str>,
    /// What it takes where that is there.
    pub wished: Vec<&'static str>,
}

impl Names {
    pub(crate) fn needed(names: impl Into<Vec<&'static str>>) -> Names {
        Names { needed: names.into(), ..Names::default() }
    }

    pub(crate) fn wished(name: &'static str) -> Names {
        Names { wished: vec![name], ..Names::default() }
    }

    /// All of them.
    pub fn all(self) -> impl Iterator<Item = &'static str> {
        self.needed.into_iter().chain(self.wished)
    }
}

impl Origin {
    /// The names it comes from.
    pub fn names(self) -> Names {
        match self {
            Origin::Field(name)
            | Origin::List(name)
            | Origin::Chosen(name, _)
            | Origin::Figure(name)
            | Origin::EndOf(name, _)
            | Origin::OfDays(_, name)
            | Origin::OfKnownDays(_, name)
            | Origin::TableAt { at: name, .. }
            | Origin::TableBy { field: name, .. } => Names::needed([name]),
            Origin::IfKnown(name) | Origin::IfTold(name) => Names::wished(name),
            Origin::IfChosen { field, figure, .. } => Names { needed: vec![field], wished: vec![figure] },
            Origin::OnDay { series, day } => Names::needed([series, day]),
            Origin::SumOfDays { series, after, until } => {
                Names::needed([Some(series), after, Some(until)].into_iter().flatten().collect::<Vec<_>>())
            }
            Origin::FirstDayOver { series, limit } => {
                Names::needed([Some(series), limit].into_iter().flatten().collect::<Vec<_>>())
            }
            Origin::Listed { needs, .. } => Names::needed(needs),
            Origin::Table { .. } => Names::default(),
        }
    }
}

/// Which end of a schedule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Its first day.
    First,
    /// Its last day.
    Last,
}

/// How many days become one number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// All days added up.
    Sum,
    /// The greatest day.
    Most,
    /// The least day.
    Least,
    /// The day of age of the greatest.
    DayOfMost,
    /// The day of age of the least.
    DayOfLeast,
    /// The last day.
    Last,
    /// The day of age of the last.
    DayOfLast,
}

impl Over {
    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Over::Sum => "sum",
            Over::Most => "most",
            Over::Least => "least",
            Over::DayOfMost => "day-of-most",
            Over::DayOfLeast => "day-of-least",
            Over::Last => "last",
            Over::DayOfLast => "day-of-last",
        }
    }
}

/// Applies always: for figures with one rule, and for the last of several.
pub fn always(_: &Answers) -> bool {
    true
}

/// A short way to write inputs that come from fields.
pub(crate) const fn field(symbol: &'static str, key: &'static str) -> Input {
    Input { symbol, origin: Origin::Field(key) }
}

/// A short way to write inputs that come from figures.
pub(crate) const fn figure(symbol: &'static str, id: &'static str) -> Input {
    Input { symbol, origin: Origin::Figure(id) }
}

/// A short way to write inputs that are one number out of all days of a figure by day.
pub(crate) const fn of_days(symbol: &'static str, over: Over, series: &'static str) -> Input {
    Input { symbol, origin: Origin::OfDays(over, series) }
}

/// A short way to write inputs that are one number out of the known days of a figure by day.
pub(crate) const fn of_known_days(symbol: &'static str, over: Over, series: &'static str) -> Input {
    Input { symbol, origin: Origin::OfKnownDays(over, series) }
}

/// A short way to write inputs that a figure by day has on the day that a figure says.
pub(crate) const fn on_day(symbol: &'static str, series: &'static str, day: &'static str) -> Input {
    Input { symbol, origin: Origin::OnDay { series, day } }
}

/// A short way to write inputs that are added up over some days.
pub(crate) const fn sum_of_days(
    symbol: &'static str,
    series: &'static str,
    after: Option<&'static str>,
    until: &'static str,
) -> Input {
    Input { symbol, origin: Origin::SumOfDays { series, after, until } }
}

/// A short way to write answers that count nothing where they are not told.
pub(crate) const fn if_told(symbol: &'static str, key: &'static str) -> Input {
    Input { symbol, origin: Origin::IfTold(key) }
}

/// A short way to write inputs that count nothing where they are not known.
pub(crate) const fn if_known(symbol: &'static str, id: &'static str) -> Input {
    Input { symbol, origin: Origin::IfKnown(id) }
}

/// A short way to write a list that a rule takes.
pub(crate) const fn list(symbol: &'static str, key: &'static str) -> Input {
    Input { symbol, origin: Origin::List(key) }
}

/// An exact rule of geometry or arithmetic that always applies; the others are written out or changed from this one.
pub(crate) const fn exact<I>(
    name: &'static str,
    formula: &'static str,
    inputs: &'static [I],
    compute: fn(&[f64]) -> Option<f64>,
) -> Rule<I> {
    Rule {
        name,
        formula,
        inputs,
        source: "arithmetic",
        status: Status::Exact,
        applies: always,
        compute,
        band: None,
        together: false,
    }
}

impl<I> Rule<I> {
    /// The same rule, taken only where `applies`.
    pub(crate) const fn when(mut self, applies: fn(&Answers) -> bool) -> Rule<I> {
        self.applies = applies;
        self
    }

    /// The same rule with its source.
    pub(crate) const fn from(mut self, source: &'static str, status: Status) -> Rule<I> {
        self.source = source;
        self.status = status;
        self
    }

    /// The same rule with a confidence interval of 95 %.
    pub(crate) const fn confident(mut self, ends: fn(&[f64]) -> Option<(f64, f64)>) -> Rule<I> {
        self.band = Some(RuleBand { kind: BandKind::Confidence95, ends });
        self
    }

    /// The same rule with a range that nine of ten new values lie in.
    pub(crate) const fn foretelling(mut self, ends: fn(&[f64]) -> Option<(f64, f64)>) -> Rule<I> {
        self.band = Some(RuleBand { kind: BandKind::Prediction90, ends });
        self
    }

    /// The same rule with inputs that stray together.
    pub(crate) const fn together(mut self) -> Rule<I> {
        self.together = true;
        self
    }

    /// The same rule with a range of sources.
    pub(crate) const fn between(mut self, ends: fn(&[f64]) -> Option<(f64, f64)>) -> Rule<I> {
        self.band = Some(RuleBand { kind: BandKind::RangeOfSources, ends });
        self
    }
}
