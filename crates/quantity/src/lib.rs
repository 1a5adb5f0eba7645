//! Quantities, units, money, civil days, ages, input fields, figures and bands.
//!
//! Everything else in the workspace speaks in these types. A unit appears only where a number enters
//! ([`field`], [`number`]) or leaves ([`mod@unit`]); inside, lengths are metres, masses kilograms and so on.
//! This crate knows no phenomenon, no words for people, no file, no clock.

pub mod curve;
pub mod day;
pub mod field;
pub mod fields;
pub mod figure;
mod list;
pub mod money;
pub mod number;
pub mod physical;
pub mod ratio;
pub mod records;
pub mod schedule;
pub mod status;
pub mod unit;

pub use curve::{CurveFault, CurvePoint};
pub use day::{CivilDay, DayOfAge};
pub use field::{
    Answers, Asked, Checked, Fault, Field, Given, Kind, Need, Problem, Question, Raw, Source, Value,
};
pub use figure::{Band, BandKind, Figure, FigureValue, Series};
pub use money::{Currency, Money};
pub use physical::{Area, Coverage, Length, Mass, StockingDensity, Temperature, Volume};
pub use ratio::{Dilution, RatioMeaning};
pub use schedule::{Count, Schedule, ScheduleFault};
pub use status::Status;
pub use unit::Unit;
