//! Whole-program tests: rules against their own formulae, models against published values, properties of plans.

mod evaluator;
mod plan_properties;
mod published;
mod rules;
mod sample;
