//! Statistics: no figures of its own, but the table of check values behind those of others.

use model::quantile;
use model::weighing::{self, Interval, Wanted};

use super::Family;
use crate::verify::{Cell, CellFault, RowOutputs, Shape, each};

/// The family.
pub static FAMILY: Family = Family { figures: &[], fields: &[], sums: &[], series: &[], shapes: SHAPES };

/// One output a row: its kind, the inputs as `name=value;name=value` with lists joined by blanks, and the name of the
/// output. Kinds that no model here works out stay empty.
static SHAPES: &[Shape] = &[Shape {
    name: "statistics",
    inputs: &["kind", "inputs", "output"],
    outputs: &["value"],
    work_out: |rows| each(rows, value),
}];

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
        "sample_size" => sample_size(&inputs)?,
        "uniformity_normal" => {
            weighing::uniformity_of_bell_curve(inputs.number("cv")?, inputs.number("band")?)
        }
        "robust" => of_weights(&inputs.numbers("values")?, output),
        _ => None,
    };
    Ok(vec![number])
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
        CellFault { column: self.0.column.to_owned(), typed: self.0.text.to_owned(), allowed }
    }
}
