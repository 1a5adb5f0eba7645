//! Statistics: no figures of its own, but the table of check values behind those of others.

use model::counts::{Clumping, Counted, Law, clumping};
use model::cusum::{self, Score};
use model::weighing::sexes::{self, Part};
use model::weighing::{self, Interval, Wanted, groups};
use model::{quantile, scores, variance};

use super::Family;
use crate::verify::{Cell, CellFault, RowOutputs, Shape, each};

/// The family.
pub static FAMILY: Family = Family { figures: &[], fields: &[], sums: &[], series: &[], shapes: SHAPES };

/// One output a row: its kind, the inputs as `name=value;name=value` with lists joined by blanks, and the name of the
/// output. A kind or an output that nobody knows stays empty.
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
        work_out: |rows| each(rows, clumped),
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
fn clumped(cells: &[Cell]) -> RowOutputs {
    let (cases, expected) = (numbers_of(&cells[0], " ")?, numbers_of(&cells[1], " ")?);
    if cases.len() != expected.len() {
        return Err(fault(&cells[1], format!("{} × 0.5", cases.len())));
    }
    let days: Vec<Counted> = cases
        .iter()
        .zip(expected)
        .map(|(&cases, expected)| Counted { cases: cases as u32, expected })
        .collect();
    Ok(match clumping(&days) {
        Clumping::Told { best, interval: (low, high) } => vec![Some(best), Some(low), Some(high)],
        Clumping::NotEnoughToTell => vec![None; 3],
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
        "special_functions" => special_function(inputs.number("x")?, output),
        "mean_interval" | "sd_interval" | "cv_interval" | "cv_interval_exact" => {
            end(interval(cells[0].text, &inputs)?, output)
        }
        "proportion" => proportion(&inputs, output)?,
        "sample_size" => sample_size(&inputs)?,
        "uniformity_normal" => {
            weighing::uniformity_of_bell_curve(inputs.number("cv")?, inputs.number("band")?)
        }
        "uniformity_two_sexes" => two_sexes(&inputs, output)?,
        "range_factor" => weighing::range_factor(inputs.number("n")?),
        "group_weighing" => group_weighing(&inputs, output)?,
        "robust" => of_weights(&inputs.numbers("values")?, output),
        "counts" => counts(&inputs, output)?,
        "poisson_rate" => {
            let (deaths, days) = (inputs.number("deaths")?, inputs.number("bird_days")?);
            end(model::counts::rate_interval(deaths, days, inputs.confidence()?), output)
        }
        "quantile_ranks" => ranks(&inputs, output)?,
        "quantile_error" => quantile::standard_error(inputs.number("n")?, inputs.number("p")?),
        other => score(other, &inputs, output)?,
    };
    Ok(vec![number])
}

type Found = Result<Option<f64>, CellFault>;

fn point(inputs: &Inputs, output: &str) -> Found {
    let (share, freedom) = (inputs.number("p")?, inputs.number("df")?);
    Ok(match output {
        "normal" => quantile::normal(share),
        "student" => quantile::student(share, freedom),
        "chi_square" => quantile::chi_square(share, freedom),
        "gamma_shape_df_scale_1" => quantile::gamma(share, freedom),
        "beta_2_df" => quantile::beta(share, 2.0, freedom),
        _ => None,
    })
}

fn special_function(x: f64, output: &str) -> Option<f64> {
    match output {
        "erf" => Some(quantile::error_function(x)),
        "normal_cdf" => Some(quantile::normal_share_below(x)),
        // As the table's header says: at |x| + 1/2, where it is always known.
        "ln_gamma" => Some(quantile::ln_gamma(x.abs() + 0.5)),
        _ => None,
    }
}

fn end(interval: Option<Interval>, which: &str) -> Option<f64> {
    match which {
        "low" => interval.map(|(low, _)| low),
        "high" => interval.map(|(_, high)| high),
        _ => None,
    }
}

fn interval(kind: &str, inputs: &Inputs) -> Result<Option<Interval>, CellFault> {
    let (n, confidence) = (inputs.number("n")?, inputs.confidence()?);
    Ok(match kind {
        "mean_interval" => {
            let (mean, sd) = (inputs.number("mean")?, inputs.number("sd")?);
            weighing::mean_interval(n, mean, sd, inputs.may_number("population")?, confidence)
        }
        "sd_interval" => weighing::deviation_interval(n, inputs.number("sd")?, confidence),
        "cv_interval_exact" => weighing::variation_interval_exact(n, inputs.number("cv")?, confidence),
        _ if inputs.number("shift")? == 0.0 => {
            weighing::variation_interval_of_mckay(n, inputs.number("cv")?, confidence)
        }
        _ => weighing::variation_interval(n, inputs.number("cv")?, confidence),
    })
}

fn proportion(inputs: &Inputs, output: &str) -> Found {
    let (hits, n, confidence) = (inputs.number("k")?, inputs.number("n")?, inputs.confidence()?);
    Ok(match output.rsplit_once('_') {
        Some(("wilson", which)) => end(weighing::share_interval(hits, n, confidence), which),
        Some(("clopper_pearson", which)) => end(weighing::share_interval_exact(hits, n, confidence), which),
        _ => None,
    })
}

fn sample_size(inputs: &Inputs) -> Found {
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

fn two_sexes(inputs: &Inputs, output: &str) -> Found {
    let share = inputs.number("share_a")?;
    let part = |share: f64, which: &str| -> Result<Part, CellFault> {
        let (mean, variation) = (format!("mean_{which}"), format!("cv_{which}"));
        Ok(Part { share, mean: inputs.number(&mean)?, variation: inputs.number(&variation)? })
    };
    let parts = [part(share, "a")?, part(1.0 - share, "b")?];
    Ok(match output {
        "mean" => Some(sexes::mixed_mean(&parts)),
        "cv" => Some(sexes::mixed_variation(&parts)),
        "share" => Some(sexes::mixed_uniformity(&parts, inputs.number("band")?)),
        _ => None,
    })
}

fn group_weighing(inputs: &Inputs, output: &str) -> Found {
    let (totals, counts) = (inputs.numbers("totals")?, inputs.numbers("counts")?);
    let confidence = inputs.confidence()?;
    let Some(of) = groups::of_groups(&totals, &counts) else { return Ok(None) };
    Ok(match output {
        "mean" => Some(of.mean),
        "standard_error" => Some(of.standard_error),
        "bird_sd" => Some(of.bird_sd),
        "bird_sd_low" => end(of.sd_interval(confidence), "low"),
        "bird_sd_high" => end(of.sd_interval(confidence), "high"),
        which => end(of.mean_interval(confidence), which),
    })
}

fn counts(inputs: &Inputs, output: &str) -> Found {
    let law = match inputs.text("distribution")? {
        "poisson" => Law::Poisson { mean: inputs.number("mean")? },
        "negative_binomial" => {
            Law::NegativeBinomial { mean: inputs.number("mean")?, size: inputs.number("size")? }
        }
        "beta_binomial" => Law::BetaBinomial {
            n: inputs.number("n")?,
            alpha: inputs.number("alpha")?,
            beta: inputs.number("beta")?,
        },
        _ => return Ok(None),
    };
    let at = inputs.number("at")?.max(0.0) as u64;
    let Some(law) = law.checked() else { return Ok(None) };
    Ok(match output {
        "mean" => Some(law.mean()),
        "variance" => Some(law.variance()),
        "pmf" => Some(law.chance(at)),
        "cdf" => Some(law.at_most(at)),
        "upper_tail_at_least" => Some(law.at_least(at)),
        other => {
            let share = other.strip_prefix("quantile_").and_then(|share| share.parse().ok());
            share.and_then(|share| law.quantile(share)).map(|count| count as f64)
        }
    })
}

fn ranks(inputs: &Inputs, output: &str) -> Found {
    let (n, share) = (inputs.number("n")?.max(0.0) as u64, inputs.number("p")?);
    let ranks = quantile::ranks(n, share, inputs.confidence()?);
    Ok(ranks.and_then(|(low, high, coverage)| match output {
        "low_rank" => Some(low as f64),
        "high_rank" => Some(high as f64),
        "coverage" => Some(coverage),
        _ => None,
    }))
}

fn score(kind: &str, inputs: &Inputs, output: &str) -> Found {
    let seen = || inputs.number("seen");
    Ok(match (kind, output) {
        ("crps_normal", _) => {
            let (mean, sd, seen) = (inputs.number("mean")?, inputs.number("sd")?, seen()?);
            match output {
                "crps" => Some(scores::crps_normal(mean, sd, seen)),
                "pit" => Some(quantile::normal_share_below((seen - mean) / sd)),
                "log_score" => Some(scores::log_score_normal(mean, sd, seen)),
                _ => None,
            }
        }
        ("crps_lognormal", _) => {
            let (mu, sigma, seen) = (inputs.number("mu")?, inputs.number("sigma")?, seen()?);
            match output {
                "crps" => Some(scores::crps_lognormal(mu, sigma, seen)),
                "pit" => Some(quantile::normal_share_below((seen.ln() - mu) / sigma)),
                _ => None,
            }
        }
        ("crps_ensemble", "crps" | "crps_fair") => {
            scores::crps_of_draws(&inputs.numbers("members")?, seen()?, output == "crps_fair")
        }
        ("pinball", _) => Some(scores::pinball(inputs.number("level")?, inputs.number("quantile")?, seen()?)),
        ("interval_score", _) => {
            let (low, high) = (inputs.number("low")?, inputs.number("high")?);
            Some(scores::interval_score(low, high, inputs.confidence()?, seen()?))
        }
        _ => None,
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
        "trimmed_mean_10" => weighing::trimmed_mean(weights),
        "skewness_adjusted" => weighing::skewness(weights),
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
