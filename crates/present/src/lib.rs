//! Advice as documents: words, drawings, tables, and the writers that turn them into HTML, text and print data.
//!
//! Figures and findings come in typed and leave worded. Every sentence is a Fluent message; nothing here computes.

pub mod air_day;
pub mod batch;
pub mod buying;
mod by_day;
pub mod calendar;
pub mod closing;
pub mod document;
pub mod entry;
pub mod example;
pub mod fault;
pub mod finding;
pub mod fitted;
pub mod form;
pub mod health;
pub mod history;
pub mod html;
pub mod manual;
pub mod many_houses;
pub mod oddity;
mod ordering;
pub mod outlook;
pub mod plan;
pub mod print;
pub mod programme;
pub mod sale;
pub mod scene;
pub mod show;
pub mod sum;
pub mod summary;
pub mod text;
pub mod uneven;
pub mod view;
pub mod viewer;
pub mod walk;
pub mod watch;
pub mod weighing;
pub mod words;
pub mod working;

pub use document::{Block, Document};
pub use viewer::{Locale, Units, Viewer};
pub use words::Words;
