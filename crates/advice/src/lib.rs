//! Plans and quick sums: which figures there are, how each is worked out, and what a plan has to say about itself.
//!
//! Pure functions of answers (and, as it grows, of the book). A figure is declared once, in [`families`]; its formula,
//! inputs, source and kernel stand together there, so that the working shown is by construction the working done.

pub mod account;
pub mod adoption;
pub mod air;
pub mod batches;
pub mod behind;
pub mod body;
pub mod buying;
pub mod catching;
pub mod check;
pub mod chicks;
pub mod closing;
pub mod day_rows;
pub mod diary;
pub mod door_sheet;
pub mod exercise;
pub mod families;
pub mod finding;
pub mod findings;
pub mod futures_table;
pub mod growing;
mod halving;
pub mod health;
pub mod houses;
pub mod keep;
pub mod orders;
pub mod outcome;
pub mod outfit;
pub mod outlook;
pub mod outlook_table;
pub mod past;
pub mod plan;
pub mod plan_file;
pub mod procedure;
pub mod programme;
pub mod purchases;
mod purse;
pub mod record;
pub mod rule;
pub mod sale;
pub mod series;
pub mod side_by_side;
pub mod standing;
pub mod stock;
pub mod store_room;
pub mod sums;
pub mod tasks;
pub mod unanswered;
pub mod uneven;
pub mod verify;
pub mod walk;
pub mod watch;
pub mod weather_file;
pub mod weigh_file;
pub mod weighing;
pub mod working;
pub mod writing;
pub mod years_of_air;

/// The version of the rules. It changes whenever a rule gives another number for the same answers, so that a plan
/// adopted under older rules can say so.
pub const RULES_VERSION: u32 = 1;
