//! Statistics: no figures of its own, but the table of check values behind those of others.

use model::counts::{self, Law};
use model::cusum::{self, Score};
use model::quantile;
use model::variance;
use model::weighing::{self, Interval, Wanted};

use super::Family;
use crate::verify::{Cell, CellFault, RowOutputs, Shape, each};

/// The family.
pub static FAMILY: Family = Family { figures: &[], fields: &[], sums: &[], series: &[], shapes: SHAPES };

/// `statistics` has one output a row: its kind, the inputs as `name=value;name=value` with lists joined by blanks, and the
/// name of the output. Kinds that no model here works out stay empty.
static SHAPES: &[Shape] = &[
    Shape {
        name: "statistics",
        inputs: &["kind", "inputs", "output"],
        outputs: &["value"],
        work_out: |rows| each(rows, value),
    },
    Shape {
        name: "cusum",
        inputs: &["law", "size", "k", "h", "start", "mean_true"],
        outputs: &["average_run_length", "signal_probability_42", "median_run_length"],
        work_out: |rows| each(rows, run_lengths),
    },
    Shape {
        name: "clumping",
        inputs: &["cases", "expected"],
        outputs: &["clumping", "clumping_low", "clumping_high"],
        work_out: |rows| each(rows, clumping),
    },
    Shape {
        name: "spots",
        inputs: &["spots"],
        outputs: &[
            "mean",
            "anova_between",
            "anova_within",
            "reml_between",
            "reml_within",
            "between_low",
            "between_high",
            "within_low",
            "within_high",
        ],
        work_out: |rows| each(rows, spots),
    },
];

/// A plain running sum of day counts. `k`, `h` and `start` are quarters, so that the sum is exact in four points a case.
fn run_lengths(cells: &[Cell]) -> RowOutputs {
    const POINTS: u32 = 4;
    let size = cells[1].number(0.0, 1e9)?;
    let mean = cells[5].number(0.0, 500.0)?;
    let law = match cells[0].text {
        "poisson" => Law::Poisson { mean },
        "negative_binomial" => Law::NegativeBinomial { mean, size },
        _ => return Err(fault(&cells[0], "poisson, negative_binomial".to_owned())),
    };
    let points = |cell: &Cell| {
        let points = cell.number(0.0, 250.0)? * f64::from(POINTS);
        if points.fract() == 0.0 { Ok(points) } else { Err(fault(cell, "n × 0.25".to_owned())) }
    };
    let (reference, threshold, start) =
        (points(&cells[2])?, points(&cells[3])? as u32, points(&cells[4])? as u32);
    let day = cusum::Day { score: Score::plain(reference / f64::from(POINTS), POINTS), law };
    let run = cusum::run_length(day, threshold, start);
    Ok(vec![
        run.map(|run| run.average),
        cusum::signal_chance(&[day; 42], threshold, start),
        run.map(|run| run.median as f64),
    ])
}

/// Day counts and what was expected of each, both joined by blanks.
fn clumping(cells: &[Cell]) -> RowOutputs {
    let (cases, expected) = (numbers_of(&cells[0], " ")?, numbers_of(&cells[1], " ")?);
    if cases.len() != expected.len() {
        return Err(fault(&cells[1], format!("{} × 0.5", cases.len())));
    }
    let days: Vec<counts::Counted> = cases
        .iter()
        .zip(expected)
        .map(|(&cases, expected)| counts::Counted { cases: cases as u32, expected })
        .collect();
    Ok(match counts::clumping(&days) {
        counts::Clumping::Told { best, interval: (low, high) } => vec![Some(best), Some(low), Some(high)],
        counts::Clumping::NotEnoughToTell => vec![None; 3],
    })
}

/// Weights by spot: birds joined by blanks, spots by semicolons. Variances are in the weight's unit squared.
fn spots(cells: &[Cell]) -> RowOutputs {
    let spots: Vec<Vec<f64>> = cells[0]
        .text
        .split(';')
        .map(|spot| numbers_of(&Cell { column: cells[0].column, text: spot }, " "))
        .collect::<Result<_, _>>()?;
    let Some(parts) = variance::components(&spots) else { return Ok(vec![None; 9]) };
    let ((between_low, between_high), (within_low, within_high)) =
        (parts.between_interval, parts.within_interval);
    Ok([
        parts.mean,
        parts.anova.between,
        parts.anova.within,
        parts.reml.between,
        parts.reml.within,
        between_low,
        between_high,
        within_low,
        within_high,
    ]
    .map(Some)
    .to_vec())
}

fn numbers_of(cell: &Cell, joined_by: &str) -> Result<Vec<f64>, CellFault> {
    let number = |text: &str| text.parse::<f64>().ok().filter(|number| number.is_finite() && *number >= 0.0);
    cell.text
        .split(joined_by)
        .map(|text| number(text).ok_or_else(|| fault(cell, "0.5 1 2.5".to_owned())))
        .collect()
}

fn value(cells: &[Cell]) -> RowOutputs {
    let (inputs, output) = (Inputs(&cells[1]), cells[2].text);
    let number = match cells[0].text {
        "quantiles" => point(&inputs, output)?,
        "special_functions" if output == "normal_cdf" => {
            Some(quantile::normal_share_below(inputs.number("x")?))
        }
        "mean_interval" => {
            let (mean, sd) = (inputs.number("mean")?, inputs.number("sd")?);
            let flock = inputs.may_number("population")?;
            end(weighing::mean_interval(inputs.number("n")?, mean, sd, flock, inputs.confidence()?), output)
        }
        "sd_interval" => {
            let sd = inputs.number("sd")?;
            end(weighing::deviation_interval(inputs.number("n")?, sd, inputs.confidence()?), output)
        }
        "cv_interval" if inputs.number("shift")? == 2.0 => {
            let cv = inputs.number("cv")?;
            end(weighing::variation_interval(inputs.number("n")?, cv, inputs.confidence()?), output)
        }
        "proportion" => {
            let interval =
                weighing::share_interval(inputs.number("k")?, inputs.number("n")?, inputs.confidence()?);
            output.strip_prefix("wilson_").and_then(|which| end(interval, which))
        }
        "counts" => count_law(&inputs, output)?,
        "poisson_rate" => {
            let (cases, exposure) = (inputs.number("deaths")? as u32, inputs.number("bird_days")?);
            end(counts::rate_interval(cases, exposure, inputs.confidence()?), output)
        }
        "sample_size" => sample_size(&inputs)?,
        "uniformity_normal" => {
            weighing::uniformity_of_bell_curve(inputs.number("cv")?, inputs.number("band")?)
        }
        "robust" => of_weights(&inputs.numbers("values")?, output),
        _ => None,
    };
    Ok(vec![number])
}

fn count_law(inputs: &Inputs, output: &str) -> Result<Option<f64>, CellFault> {
    let law = match inputs.text("distribution")? {
        "poisson" => Law::Poisson { mean: inputs.number("mean")? },
        "negative_binomial" => {
            Law::NegativeBinomial { mean: inputs.number("mean")?, size: inputs.number("size")? }
        }
        _ => Law::BetaBinomial {
            birds: inputs.number("n")? as u32,
            alpha: inputs.number("alpha")?,
            beta: inputs.number("beta")?,
        },
    };
    let at = inputs.number("at")? as u32;
    Ok(match output {
        "mean" => Some(law.mean()),
        "variance" => Some(law.variance()),
        "pmf" => law.chance_of(at),
        "cdf" => law.at_most(at),
        "upper_tail_at_least" => law.at_least(at),
        _ => quantile_of(law, output),
    })
}

fn quantile_of(law: Law, output: &str) -> Option<f64> {
    let share = output.strip_prefix("quantile_")?.parse().ok()?;
    law.quantile(share).map(f64::from)
}

fn point(inputs: &Inputs, output: &str) -> Result<Option<f64>, CellFault> {
    let (share, freedom) = (inputs.number("p")?, inputs.number("df")?);
    Ok(match output {
        "normal" => quantile::normal(share),
        "student" => quantile::student(share, freedom),
        "chi_square" => quantile::chi_square(share, freedom),
        _ => None,
    })
}

fn end(interval: Option<Interval>, which: &str) -> Option<f64> {
    match which {
        "low" => interval.map(|(low, _)| low),
        "high" => interval.map(|(_, high)| high),
        _ => None,
    }
}

fn sample_size(inputs: &Inputs) -> Result<Option<f64>, CellFault> {
    let wanted = Wanted {
        variation: inputs.number("cv")?,
        error: inputs.number("error")?,
        flock: inputs.may_number("population")?,
        confidence: inputs.confidence()?,
    };
    let by_bell_curve = weighing::sample_size_by_bell_curve(wanted);
    Ok(match inputs.text("student")? {
        "True" => by_bell_curve.and_then(|from| weighing::sample_size(wanted, from)),
        _ => by_bell_curve,
    })
}

fn of_weights(weights: &[f64], output: &str) -> Option<f64> {
    match output {
        "mean" => weighing::mean(weights),
        "sd" => weighing::standard_deviation(weights),
        "cv" => weighing::variation(weights),
        "median" => weighing::median(weights),
        "mad_sd" => weighing::robust_deviation(weights),
        "count_beyond_3_5" => Some(weighing::odd_ones(weights).len() as f64),
        "share_within_10" => weighing::uniformity(weights),
        _ => None,
    }
}

/// The inputs of a row: `n=20;cv=0.0767`.
struct Inputs<'a>(&'a Cell<'a>);

impl Inputs<'_> {
    fn find(&self, name: &str) -> Option<&str> {
        let pairs = self.0.text.split(';').filter_map(|pair| pair.split_once('='));
        pairs.into_iter().find(|(key, _)| *key == name).map(|(_, text)| text)
    }

    fn text(&self, name: &str) -> Result<&str, CellFault> {
        self.find(name).ok_or_else(|| self.fault(format!("{name}=…")))
    }

    fn number(&self, name: &str) -> Result<f64, CellFault> {
        self.parsed(name, self.text(name)?)
    }

    fn may_number(&self, name: &str) -> Result<Option<f64>, CellFault> {
        self.find(name).map(|text| self.parsed(name, text)).transpose()
    }

    fn numbers(&self, name: &str) -> Result<Vec<f64>, CellFault> {
        self.text(name)?.split_whitespace().map(|text| self.parsed(name, text)).collect()
    }

    fn confidence(&self) -> Result<f64, CellFault> {
        let confidence = self.number("confidence")?;
        let inside = confidence > 0.0 && confidence < 1.0;
        if inside { Ok(confidence) } else { Err(self.fault("0 < confidence < 1".to_owned())) }
    }

    fn parsed(&self, name: &str, text: &str) -> Result<f64, CellFault> {
        let number = text.parse::<f64>().ok().filter(|number| number.is_finite());
        number.ok_or_else(|| self.fault(format!("{name}=0.5")))
    }

    fn fault(&self, allowed: String) -> CellFault {
        fault(self.0, allowed)
    }
}

fn fault(cell: &Cell, allowed: String) -> CellFault {
    CellFault { column: cell.column.to_owned(), typed: cell.text.to_owned(), allowed }
}
