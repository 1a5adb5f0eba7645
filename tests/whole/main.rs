//! Whole-program tests: rules against their own formulae, models against published values, properties of plans.

mod batch_properties;
mod buying;
mod calendar;
mod closing;
mod directions;
mod docs;
mod evaluator;
mod faults;
mod functions;
mod growing;
mod heat_properties;
mod medicine_properties;
mod money_properties;
mod outfit;
mod placing;
mod plan_properties;
mod prints;
mod published;
mod rules;
mod running;
mod sample;
mod sums;
mod tasks;
mod tidy;
mod weighing;
mod words;
