//! Plans and quick sums: which figures there are, how each is worked out, and what a plan has to say about itself.
//!
//! Pure functions of answers (and, as it grows, of the book). A figure is declared once, in [`families`]; its formula,
//! inputs, source and kernel stand together there, so that the working shown is by construction the working done.

pub mod body;
pub mod check;
pub mod diary;
pub mod door_sheet;
pub mod exercise;
pub mod families;
pub mod finding;
pub mod findings;
pub mod futures_table;
pub mod houses;
pub mod outcome;
pub mod outfit;
pub mod plan;
pub mod plan_file;
pub mod procedure;
pub mod purchases;
pub mod record;
pub mod rule;
pub mod series;
pub mod store_room;
pub mod sums;
pub mod tasks;
pub mod verify;
pub mod walk;
pub mod working;

/// The version of the rules. It changes whenever a rule gives another number for the same answers, so that a plan
/// adopted under older rules can say so.
pub const RULES_VERSION: u32 = 1;
