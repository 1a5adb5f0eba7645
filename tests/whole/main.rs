//! Whole-program tests: rules against their own formulae, models against published values, properties of plans.

mod directions;
mod docs;
mod evaluator;
mod faults;
mod functions;
mod heat_properties;
mod money_properties;
mod outfit;
mod placing;
mod plan_properties;
mod prints;
mod published;
mod rules;
mod sample;
mod sums;
mod tidy;
mod words;
