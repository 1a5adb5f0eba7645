//! Tables of check values: a filter followed day by day, and Gompertz curves through the weights of chicks.

use model::outlook::filter::{Law, State};
use model::outlook::gompertz;
use serde_json::{Number, Value};

use crate::verify::{Cell, CellFault, Row, Shape, TableOutputs, VerifyFault};

/// The tables that the outlook's models can work out.
pub(super) static SHAPES: &[Shape] = &[
    Shape {
        name: "kalman",
        inputs: &["case", "day", "observed_log_ratio", "observation_variance"],
        outputs: &[
            "level",
            "slope",
            "level_variance",
            "level_slope_covariance",
            "slope_variance",
            "predicted_level_before",
            "predicted_variance_before",
            "log_likelihood_so_far",
        ],
        work_out: follow_days,
    },
    Shape {
        name: "gompertz_fits",
        inputs: &["scope", "id"],
        outputs: &[
            "n",
            "asymptote_g",
            "rate_per_day",
            "inflection_day",
            "rss_g2",
            "se_asymptote_g",
            "se_rate_per_day",
            "se_inflection_day",
            "at_bound",
            "well_determined",
        ],
        work_out: |rows| rows.iter().map(|row| fit(row).map_err(|fault| in_row(row, fault))).collect(),
    },
];

fn in_row(row: &Row, fault: CellFault) -> VerifyFault {
    VerifyFault::Cell { row: row.number, fault }
}

fn number(number: f64) -> Value {
    Number::from_f64(number).map_or(Value::Null, Value::Number)
}

/// A case on its way.
struct Case {
    name: String,
    law: Law,
    state: State,
    day: i32,
    log_likelihood: f64,
}

impl Case {
    /// What the comment above the table says of a case: `case NAME: damping D, level noise L, slope noise S, first state
    /// LEVEL SLOPE, first covariance LEVEL CROSS SLOPE`.
    fn of(name: &Cell, day: i32, notes: &[String]) -> Result<Case, CellFault> {
        let said = |note: &String| {
            let rest = note.trim().strip_prefix("case ")?.strip_prefix(name.text)?.strip_prefix(':')?;
            let words = rest.split([' ', ',', '(', ')']).filter_map(|word| word.parse::<f64>().ok());
            <[f64; 8]>::try_from(words.collect::<Vec<f64>>()).ok()
        };
        let numbers = notes.iter().find_map(said);
        let [damping, level_noise, slope_noise, level, slope, level_variance, covariance, slope_variance] =
            numbers.ok_or_else(|| name.fault("# case …: 8 numbers".to_owned()))?;
        Ok(Case {
            name: name.text.to_owned(),
            law: Law { damping, level_noise, slope_noise },
            state: State { level, slope, level_variance, covariance, slope_variance },
            day,
            log_likelihood: 0.0,
        })
    }

    /// The outputs of a day.
    fn day(&mut self, day: i32, seen: Option<(f64, f64)>) -> Vec<Value> {
        let before = self.state.ahead(&self.law, u32::try_from(day - self.day).unwrap_or_default());
        (self.state, self.day) = (before, day);
        if let Some((log_ratio, variance)) = seen {
            let update = before.see(log_ratio, variance);
            self.state = update.state;
            self.log_likelihood += update.log_likelihood;
        }
        let State { level, slope, level_variance, covariance, slope_variance } = self.state;
        let now = [level, slope, level_variance, covariance, slope_variance];
        let so_far = [before.level, before.level_variance, self.log_likelihood];
        now.into_iter().chain(so_far).map(number).collect()
    }
}

/// The first row of a case is its first day, before whose weighing the case's first state holds.
fn follow_days(rows: &[Row]) -> TableOutputs {
    let mut case: Option<Case> = None;
    let mut outputs = Vec::new();
    for row in rows {
        let mut of_row = || {
            let day = row.cells[1].number(-1e3, 1e3)? as i32;
            let seen = match row.cells[2].text {
                "" => None,
                _ => Some((row.cells[2].number(-10.0, 10.0)?, row.cells[3].number(1e-12, 100.0)?)),
            };
            let going = case.take().filter(|case| case.name == row.cells[0].text && case.day < day);
            let going = going.map_or_else(|| Case::of(&row.cells[0], day, row.notes), Ok)?;
            Ok(case.insert(going).day(day, seen))
        };
        outputs.push(of_row().map_err(|fault| in_row(row, fault))?);
    }
    Ok(outputs)
}

/// A curve through the weights of one chick, or of all chicks of a diet, of the open data that come with the program.
fn fit(row: &Row) -> Result<Vec<Value>, CellFault> {
    let (scope, id) = (&row.cells[0], &row.cells[1]);
    let is_asked = |weighed: &&reference::chicks::Weighed| match scope.text {
        "chick" => id.text == weighed.chick.to_string(),
        _ => id.text == weighed.diet.to_string(),
    };
    if !["chick", "diet"].contains(&scope.text) {
        return Err(scope.fault("chick, diet".to_owned()));
    }
    let weighed = reference::chicks::weighed().map_err(|_| id.fault("chickweight".to_owned()))?;
    let weights: Vec<(f64, f64)> =
        weighed.iter().filter(is_asked).map(|one| (f64::from(one.day), one.weight_g)).collect();
    let fit = gompertz::fit(&weights).ok_or_else(|| id.fault("1 … 50".to_owned()))?;
    let errors = fit.standard_errors().map_or([Value::Null, Value::Null, Value::Null], |all| all.map(number));
    let curve = fit.curve;
    let numbers = [fit.count as f64, curve.asymptote_g, curve.rate, curve.inflection_d, fit.rss].map(number);
    let judged = [fit.at_bound, fit.is_well_determined()].map(Value::Bool);
    Ok(numbers.into_iter().chain(errors).chain(judged).collect())
}
