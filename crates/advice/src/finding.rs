//! Findings: what a plan has to say about itself beyond its figures. Typed here, worded in `present`.

use quantity::Unit;

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// Good to know.
    Note,
    /// Worth a second look.
    Look,
    /// The plan does not hold as it is.
    Problem,
}

impl Weight {
    /// The stable name used in JSON and message keys.
    pub fn name(self) -> &'static str {
        match self {
            Weight::Note => "note",
            Weight::Look => "look",
            Weight::Problem => "problem",
        }
    }
}

/// A number or a name in the sentence of a finding.
#[derive(Clone, Debug, PartialEq)]
pub enum Detail {
    /// A figure of the plan, shown as that figure is.
    Figure(&'static str),
    /// A number of the finding's own.
    Number {
        /// Its value.
        value: f64,
        /// Its unit.
        unit: Unit,
        /// Decimals shown.
        decimals: u8,
    },
    /// Things on the list of what is bought, by their names there.
    Bought(Vec<&'static str>),
    /// Bags: how many, and what each holds, kg, where feed comes in two sizes.
    Bags(Vec<(f64, Option<f64>)>),
    /// Which of its sentences a message says.
    Case(&'static str),
}

/// Something the plan has to say about itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Its stable name, which is that of its message too.
    pub name: &'static str,
    /// How much it weighs.
    pub weight: Weight,
    /// The numbers of its sentence, by the message's argument.
    pub details: Vec<(&'static str, Detail)>,
    /// Ways out, each a sentence with the same numbers.
    pub ways_out: Vec<&'static str>,
    /// The field to change, where there is one.
    pub field: Option<&'static str>,
}

impl Finding {
    /// A finding with nothing but its name.
    pub(crate) fn new(name: &'static str, weight: Weight) -> Finding {
        Finding { name, weight, details: Vec::new(), ways_out: Vec::new(), field: None }
    }

    pub(crate) fn with(mut self, argument: &'static str, detail: Detail) -> Finding {
        self.details.push((argument, detail));
        self
    }

    pub(crate) fn at(mut self, field: &'static str) -> Finding {
        self.field = Some(field);
        self
    }

    pub(crate) fn out(mut self, way: &'static str) -> Finding {
        self.ways_out.push(way);
        self
    }
}
