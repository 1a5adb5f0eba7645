//! Whole-program tests: rules against their own formulae, models against published values, properties of plans.

mod calendar;
mod directions;
mod docs;
mod evaluator;
mod faults;
mod plan_properties;
mod published;
mod rules;
mod sample;
mod tasks;
mod tidy;
mod words;
