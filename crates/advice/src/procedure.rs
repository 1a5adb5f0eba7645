//! Figures that come from a procedure instead of a formula: a simulation, or the best of many choices.
//!
//! A rule shows its formula, and a test works it out again from the text. A procedure cannot be redone by hand, so it says
//! what makes it repeatable (name, seed, count, inputs) and how far its answer may be off. [`By`] is what a figure worked out
//! either way carries, so that one page can show the working of both.

use std::sync::{Arc, OnceLock};

use model::outlook::futures::{Future, Now};
use quantity::{Answers, Band, Status};

use crate::air::day::AirDay;
use crate::air::{HeatNeeded, PlannedAir};
use crate::families::selling::Selling;
use crate::outcome::Resolved;
use crate::rule::{FigureSpec, Input, Rule};
use crate::store_room::Delivery;

/// What a figure came about by.
#[derive(Clone)]
pub enum By {
    /// A formula.
    Rule(&'static Rule),
    /// A procedure that was run.
    Procedure(ProcedureRun),
}

impl By {
    /// The name of the rule or of the procedure; names a message that says in words what it does.
    pub fn name(&self) -> &'static str {
        match self {
            By::Rule(rule) => rule.name,
            By::Procedure(run) => run.procedure.name,
        }
    }

    /// The bibliography key.
    pub fn source(&self) -> &'static str {
        match self {
            By::Rule(rule) => rule.source,
            By::Procedure(run) => run.procedure.source,
        }
    }

    /// How far it can be trusted.
    pub fn status(&self) -> Status {
        match self {
            By::Rule(rule) => rule.status,
            By::Procedure(run) => run.procedure.status,
        }
    }
}

/// A simulation: one procedure that gives several figures from the same futures.
pub struct Simulation {
    /// What it is.
    pub procedure: Procedure,
    /// What goes in, in the order `run` takes it; seed and count are among them, under the symbols `z` and `m`.
    pub inputs: &'static [Input],
    /// The figures it gives; their rules are empty.
    pub figures: &'static [FigureSpec],
    /// Runs it over the inputs in their units: value, range and accuracy of each figure, in their order. `None` where it
    /// has no answer, for one figure or for all.
    pub run: fn(&Answers, &[f64], &Drawn) -> AllSimulated,
    /// Whether it is what gives its figures, for these answers: the futures of a plan end where a batch on its way has its own.
    pub applies: fn(&Answers) -> bool,
}

/// What simulations of the same answers leave for each other and for the pages, so that each is worked out once.
#[derive(Clone, Default)]
pub struct Drawn {
    /// The futures of a batch on its way, and what they began with.
    futures: OnceLock<Arc<(Now, Vec<Future>)>>,
    /// Every day of them as a day of sale.
    selling: OnceLock<Arc<Selling>>,
    /// The cheapest deliveries of feed.
    deliveries: OnceLock<Option<Arc<Vec<Delivery>>>>,
    /// The air of a planned house by the hour.
    air: OnceLock<Arc<PlannedAir>>,
    /// The same through the usual weather of its months.
    usual_air: OnceLock<Arc<PlannedAir>>,
    /// The heat of its brooding days by the hour.
    heat: OnceLock<Arc<HeatNeeded>>,
    /// A night and a day of a house.
    air_day: OnceLock<Arc<AirDay>>,
}

impl Drawn {
    /// The futures of a batch on its way, once they were drawn.
    pub fn futures(&self) -> Option<&(Now, Vec<Future>)> {
        self.futures.get().map(Arc::as_ref)
    }

    /// Every day of them as a day of sale, once that was worked out.
    pub fn selling(&self) -> Option<&Selling> {
        self.selling.get().map(Arc::as_ref)
    }

    /// The air of a planned house by the hour, once it was worked out.
    pub fn air(&self) -> Option<&PlannedAir> {
        self.air.get().map(Arc::as_ref)
    }

    /// The heat of the brooding days by the hour, once it was worked out.
    pub fn heat(&self) -> Option<&HeatNeeded> {
        self.heat.get().map(Arc::as_ref)
    }

    /// A night and a day of a house, once it was worked out.
    pub fn air_day(&self) -> Option<&AirDay> {
        self.air_day.get().map(Arc::as_ref)
    }

    /// Keeps a night and a day.
    pub(crate) fn keep_air_day(&self, day: AirDay) -> &AirDay {
        self.air_day.get_or_init(|| Arc::new(day))
    }

    /// The air of a planned house through the usual weather of its months, once it was worked out.
    pub fn usual_air(&self) -> Option<&PlannedAir> {
        self.usual_air.get().map(Arc::as_ref)
    }

    /// Keeps that.
    pub(crate) fn keep_usual_air(&self, air: PlannedAir) -> &PlannedAir {
        self.usual_air.get_or_init(|| Arc::new(air))
    }

    /// Keeps the heat of the brooding days.
    pub(crate) fn keep_heat(&self, heat: HeatNeeded) -> &HeatNeeded {
        self.heat.get_or_init(|| Arc::new(heat))
    }

    /// The cheapest deliveries of feed, looked for once; `None` where there are none.
    pub(crate) fn deliveries(&self, look: impl FnOnce() -> Option<Vec<Delivery>>) -> Option<&[Delivery]> {
        self.deliveries.get_or_init(|| look().map(Arc::new)).as_ref().map(|deliveries| deliveries.as_slice())
    }

    /// Keeps the air of a planned house.
    pub(crate) fn keep_air(&self, air: PlannedAir) -> &PlannedAir {
        self.air.get_or_init(|| Arc::new(air))
    }

    /// Keeps the futures that were drawn first.
    pub(crate) fn keep_futures(&self, drawn: (Now, Vec<Future>)) -> &(Now, Vec<Future>) {
        self.futures.get_or_init(|| Arc::new(drawn))
    }

    /// Keeps the days of sale.
    pub(crate) fn keep_selling(&self, selling: Selling) -> &Selling {
        self.selling.get_or_init(|| Arc::new(selling))
    }
}

/// What a simulation gives for one figure: its value, its range and its accuracy.
pub type Simulated = (f64, Option<Band>, Accuracy);

/// What a simulation gives for all its figures; `None` where it has no answer, for one or for all.
pub type AllSimulated = Option<Vec<Option<Simulated>>>;

/// A procedure, declared once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Procedure {
    /// Its name, unique among rules and procedures; names a message that says in words what it does.
    pub name: &'static str,
    /// The bibliography key of the method.
    pub source: &'static str,
    /// How far the method can be trusted with these inputs; a procedure is as weak as its weakest spread.
    pub status: Status,
}

/// A procedure as it was run for one figure: with the same program it gives the same number again.
#[derive(Clone, Debug, PartialEq)]
pub struct ProcedureRun {
    /// Which.
    pub procedure: &'static Procedure,
    /// What its chance hung on; `None` where none came in.
    pub seed: Option<u64>,
    /// How many futures were drawn, or how many choices were weighed.
    pub count: u64,
    /// How far the figure may be off.
    pub accuracy: Accuracy,
}

impl ProcedureRun {
    /// A simulation's run over what went in.
    pub(crate) fn of(
        simulation: &'static Simulation,
        inputs: &[Resolved],
        accuracy: Accuracy,
    ) -> ProcedureRun {
        let named = |symbol: &str| {
            let at = simulation.inputs.iter().position(|input| input.symbol == symbol)?;
            Some(inputs.get(at)?.value as u64)
        };
        ProcedureRun {
            procedure: &simulation.procedure,
            seed: named("z"),
            count: named("m").unwrap_or(1),
            accuracy,
        }
    }
}

/// How far a figure from a procedure may be off by the procedure's own doing, in the figure's unit. How far its inputs may
/// be off is not in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Accuracy {
    /// A simulation: the standard error that the number of futures leaves.
    StandardError(f64),
    /// An equation solved by steps: what is left over when the answer is put back.
    Residual(f64),
    /// An optimum: no choice can beat the one found by more. 0 when it is proven best.
    Bound(f64),
}

impl Accuracy {
    /// The standard error, the residual or the bound.
    pub fn size(self) -> f64 {
        match self {
            Accuracy::StandardError(size) | Accuracy::Residual(size) | Accuracy::Bound(size) => size,
        }
    }

    /// The stable name used in JSON and in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Accuracy::StandardError(_) => "standard-error",
            Accuracy::Residual(_) => "residual",
            Accuracy::Bound(_) => "bound",
        }
    }

    /// Decimals worth showing of the figure, at most `most`: none finer than twice the accuracy.
    pub fn decimals(self, most: u8) -> u8 {
        let finest = 2.0 * self.size();
        (0..most).find(|&decimals| 10f64.powi(-i32::from(decimals) - 1) < finest).unwrap_or(most)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::families;

    const FUTURES: Procedure =
        Procedure { name: "futures", source: "our-judgement", status: Status::OurJudgement };

    #[test]
    fn a_figure_tells_its_origin_the_same_way_by_either() {
        let rule = &families::figure("litter.volume").unwrap().rules[0];
        let by = By::Rule(rule);
        assert_eq!((by.name(), by.source(), by.status()), (rule.name, rule.source, rule.status));
        let run = ProcedureRun {
            procedure: &FUTURES,
            seed: Some(1),
            count: 10_000,
            accuracy: Accuracy::StandardError(0.004),
        };
        let by = By::Procedure(run);
        assert_eq!((by.name(), by.source(), by.status()), ("futures", "our-judgement", Status::OurJudgement));
    }

    /// A chance of 0.3165 with a standard error of 0.0047 is shown as 0.32; a profit of 914.79 within 17.7 as 915.
    #[test]
    fn no_decimal_is_shown_that_another_seed_would_change() {
        assert_eq!(Accuracy::StandardError(0.0047).decimals(4), 2);
        assert_eq!(Accuracy::StandardError(17.7).decimals(2), 0);
        assert_eq!(Accuracy::Bound(0.0).decimals(2), 2);
        assert_eq!(Accuracy::Residual(1e-12).decimals(2), 2);
    }
}
