//! How far a number or a rule can be trusted, in one word.

/// Where a value, a table row or a rule comes from. Shown beside every number that has one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Status {
    /// Mathematics: cannot be wrong, only misapplied.
    Exact,
    /// Read in the named source.
    Published,
    /// Printed by the named source, read in somebody else's copy of it.
    PublishedSecondHand,
    /// Our arithmetic on published numbers or a published rule.
    Derived,
    /// Our curve between or beyond known points.
    Interpolated,
    /// Our estimate under stated assumptions.
    Modelled,
    /// Recalled from a named source that was not opened again.
    FromMemory,
    /// A rule of the trade without a source.
    CommonPractice,
    /// Chosen by this project; the reason stands beside it.
    OurJudgement,
    /// Taken because the grower did not say.
    Assumed,
    /// Said by the grower.
    Told,
}

impl Status {
    /// Every status, in order of trust.
    pub const ALL: [Status; 11] = [
        Status::Exact,
        Status::Published,
        Status::PublishedSecondHand,
        Status::Derived,
        Status::Interpolated,
        Status::Modelled,
        Status::FromMemory,
        Status::CommonPractice,
        Status::OurJudgement,
        Status::Assumed,
        Status::Told,
    ];

    /// The stable name used in JSON and in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Status::Exact => "exact",
            Status::Published => "published",
            Status::PublishedSecondHand => "published-second-hand",
            Status::Derived => "derived",
            Status::Interpolated => "interpolated",
            Status::Modelled => "modelled",
            Status::FromMemory => "from-memory",
            Status::CommonPractice => "common-practice",
            Status::OurJudgement => "our-judgement",
            Status::Assumed => "assumed",
            Status::Told => "told",
        }
    }
}
