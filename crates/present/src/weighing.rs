//! A weighing in words: what it says of the flock and how sure that is, how the weights lie, and whether it is enough.

mod odd;
mod slip;

use advice::outcome::Worked;
use advice::sums::SumResult;
use advice::weigh_file::{self, WeighFileFault};
use advice::weighing::Weighing;
use quantity::Unit;

use crate::document::{Align, Block, Document, Drawing, FindingView, Table};
use crate::plan::figure_row;
use crate::scene::histogram::{Histogram, HistogramWords};
use crate::viewer::Viewer;
use crate::words::Words;
use crate::{fault, finding, say, show};

pub use slip::{Slip, slip};

/// Fewer weights are read faster than drawn.
const DRAWN_FROM: usize = 5;

/// A weighing as a document: the mean, what can be said of the flock in plain words, odd weights to be asked about, a drawing
/// of the weights, and every figure with its working.
///
/// - `result`: what the weights say, by [`Weighing::held_against`]; `whose`: of whom and when, may be empty
pub fn document(weighing: &Weighing, result: &SumResult, whose: &str, viewer: &Viewer) -> Document {
    let said = Said { weighing, result, viewer, words: viewer.words() };
    let blocks = said.lead().into_iter().chain(said.of_the_flock()).chain(said.figures()).collect();
    Document { title: viewer.words().plain("weighed-title"), subtitle: whose.to_owned(), blocks }
}

/// The same without the mean and the figures, for a page that leads with the mean itself.
pub fn of_the_flock(weighing: &Weighing, result: &SumResult, viewer: &Viewer) -> Vec<Block> {
    Said { weighing, result, viewer, words: viewer.words() }.of_the_flock()
}

/// A weighing that is still going on, as short as a phone in the hand of who weighs: the mean with how many birds it is of,
/// the CV, and whether it is enough. Nothing before the first bird.
///
/// It may be looked at after every bird: the rule for "enough" allows for that.
pub fn running(weighing: &Weighing, result: &SumResult, viewer: &Viewer) -> Vec<Block> {
    let said = Said { weighing, result, viewer, words: viewer.words() };
    let Some(lead) = said.lead() else { return Vec::new() };
    let sentences = [said.enough(), said.cv(), said.evenness()];
    std::iter::once(lead)
        .chain(sentences.into_iter().flatten().map(Block::Paragraph))
        .chain(said.odd())
        .collect()
}

/// What is wrong with a file of weights, a sentence a fault, each with its line and column and the way out.
pub fn file_fault(wrong: &WeighFileFault, viewer: &Viewer) -> Vec<String> {
    let words = viewer.words();
    let known = || weigh_file::columns().collect::<Vec<_>>().join(", ");
    match wrong {
        WeighFileFault::Nothing => vec![words.plain("weigh-file-nothing")],
        WeighFileFault::NoWeights { line } => {
            vec![say!(words, "weigh-file-no-weights", line = line.to_string(), known = known())]
        }
        WeighFileFault::Column { line, typed, nearest } => {
            let line = line.to_string();
            vec![say!(words, "weigh-file-column", line = line, typed = typed, nearest = *nearest)]
        }
        WeighFileFault::Cells(problems) => {
            problems.iter().map(|problem| fault::with_place(problem, viewer)).collect()
        }
    }
}

/// A weighing while it is put into words.
struct Said<'a> {
    weighing: &'a Weighing,
    result: &'a SumResult,
    viewer: &'a Viewer,
    words: &'static Words,
}

impl Said<'_> {
    fn known(&self, id: &str) -> Option<&Worked> {
        self.result.outcome.get(id)
    }

    fn value(&self, id: &str) -> Option<String> {
        let worked = self.known(id)?;
        Some(show::figure(&worked.figure, worked.spec, self.viewer))
    }

    /// The ends of a figure's range.
    fn ends(&self, id: &str) -> Option<(String, String)> {
        let worked = self.known(id)?;
        let band = worked.figure.band?;
        let shown = |end| show::quantity(end, worked.spec.unit, worked.spec.decimals, self.viewer);
        Some((shown(band.low), shown(band.high)))
    }

    fn lead(&self) -> Option<Block> {
        let birds = self.value("weighing.n")?;
        Some(Block::Lead {
            label: say!(self.words, "weighed-mean-of", birds = birds),
            value: self.value("weighing.mean")?,
            note: self.mean(),
        })
    }

    /// What can be said of the flock, what to look at, odd weights, and how the weights lie.
    fn of_the_flock(&self) -> Vec<Block> {
        let mut blocks: Vec<Block> = self.sentences().into_iter().map(Block::Paragraph).collect();
        blocks.extend(self.result.findings.iter().map(|found| {
            // There is no form here to point a finding's field at.
            let view = finding::view(found, &self.result.outcome, self.viewer);
            Block::Finding(FindingView { field: None, ..view })
        }));
        blocks.extend(self.odd());
        blocks.extend(self.drawing());
        blocks
    }

    fn sentences(&self) -> Vec<String> {
        [self.enough(), self.against_expected(), self.cv(), self.evenness()].into_iter().flatten().collect()
    }

    fn mean(&self) -> String {
        match self.ends("weighing.mean") {
            Some((low, high)) => say!(self.words, "weighed-mean-range", low = low, high = high),
            None => self.words.plain("weighed-mean-alone"),
        }
    }

    fn cv(&self) -> Option<String> {
        let (cv, (low, high)) = (self.value("weighing.cv")?, self.ends("weighing.cv")?);
        Some(say!(self.words, "weighed-cv-range", cv = cv, low = low, high = high))
    }

    fn evenness(&self) -> Option<String> {
        let (share, (low, high)) = (self.value("weighing.uniformity")?, self.ends("weighing.uniformity")?);
        Some(say!(self.words, "weighed-even-range", share = share, low = low, high = high))
    }

    fn enough(&self) -> Option<String> {
        let more = self.known("weighing.more_birds")?.figure.value.number();
        let error = self.result.checked.answers.number("weighing.error_percent")?;
        let error = show::quantity_short(error, Unit::Percent, self.viewer);
        if more <= 0.0 {
            return Some(say!(self.words, "weighed-enough", error = error));
        }
        let birds = show::quantity(more, Unit::Birds, 0, self.viewer);
        let is_together = ["weighing.group_weights_g", "weighing.spot_weights_g"]
            .into_iter()
            .any(|key| !self.result.checked.answers.numbers(key).is_empty());
        let key = if is_together { "weighed-more-elsewhere" } else { "weighed-more" };
        Some(self.words.say(key, &[("birds", birds.into()), ("error", error.into())]))
    }

    /// Above or below what was expected only where the range says so.
    fn against_expected(&self) -> Option<String> {
        let figure = self.known("weighing.off_target")?.figure;
        let target = self.value("weighing.target")?;
        let off = show::quantity(figure.value.number().abs(), Unit::Percent, 1, self.viewer);
        let band = figure.band?;
        let key = match () {
            () if band.low > 0.0 => "weighed-above-expected",
            () if band.high < 0.0 => "weighed-below-expected",
            () => "weighed-as-expected",
        };
        Some(self.words.say(key, &[("off", off.into()), ("target", target.into())]))
    }

    fn figures(&self) -> Option<Block> {
        let (answers, outcome) = (&self.result.checked.answers, &self.result.outcome);
        let rows: Vec<_> =
            outcome.figures().map(|worked| figure_row(answers, outcome, worked, self.viewer)).collect();
        (!rows.is_empty()).then_some(Block::Figures(rows))
    }

    fn drawing(&self) -> Option<Block> {
        let values = self.weighing.weights();
        if values.len() < DRAWN_FROM {
            return None;
        }
        // The drawing is of the weights as the scale showed them, so their own mean stands in it.
        let mean = values.iter().sum::<f64>() / values.len() as f64;
        let expected = self.known("weighing.target").map(|target| target.figure.value.number());
        let drawn = Histogram { values, mean: Some(mean), near: Some([0.9 * mean, 1.1 * mean]), expected }
            .shown_to(self.viewer);
        Some(Block::Drawing(Drawing {
            name: "weights",
            svg: drawn.draw(&self.histogram_words(&drawn)),
            caption: self.words.plain("weights-caption"),
            alternative: self.alternative(&drawn),
            data: self.columns(&drawn),
            width_percent: 70,
        }))
    }

    fn histogram_words(&self, drawn: &Histogram) -> HistogramWords {
        let unit = show::viewers_unit_label(Unit::Gram, self.viewer);
        HistogramWords {
            up: self.words.plain("weights-up"),
            across: say!(self.words, "weights-across", unit = unit),
            mean: self.words.plain("weights-mean"),
            near: self.words.plain("weights-near"),
            expected: self.words.plain("weights-expected"),
            alternative: self.alternative(drawn),
        }
    }

    fn alternative(&self, drawn: &Histogram) -> String {
        let unit = show::viewers_unit_label(Unit::Gram, self.viewer);
        let fullest = drawn.columns().into_iter().rev().max_by_key(|(.., count)| *count);
        let (from, to, count) = fullest.unwrap_or_default();
        let least = drawn.values.iter().copied().fold(f64::INFINITY, f64::min);
        let most = drawn.values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let short = |value| show::short(value, 2);
        let said = say!(
            self.words,
            "weights-alternative",
            count = drawn.values.len().to_string(),
            least = short(least),
            most = short(most),
            from = short(from),
            to = short(to),
            fullest = count.to_string(),
            unit = &unit,
        );
        match drawn.expected {
            Some(expected) => {
                say!(
                    self.words,
                    "weights-alternative-expected",
                    said = said,
                    expected = short(expected),
                    unit = unit
                )
            }
            None => said,
        }
    }

    fn columns(&self, drawn: &Histogram) -> Table {
        let unit = show::viewers_unit_label(Unit::Gram, self.viewer);
        let row = |(from, to, count): (f64, f64, usize)| {
            vec![show::short(from, 2), show::short(to, 2), count.to_string()]
        };
        let title = |key: &str| self.words.say(key, &[("unit", unit.as_str().into())]);
        Table {
            caption: self.words.plain("weights-caption"),
            columns: ["weights-from", "weights-to", "weights-up"].map(|key| (title(key), Align::End)).into(),
            rows: drawn.columns().into_iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: vec!["weighing.n"],
        }
    }
}

impl Histogram {
    /// Grams in the unit that a viewer is shown.
    fn shown_to(self, viewer: &Viewer) -> Histogram {
        let shown = |grams: f64| show::in_viewers_unit(grams, Unit::Gram, viewer).0;
        Histogram {
            values: self.values.into_iter().map(shown).collect(),
            mean: self.mean.map(shown),
            near: self.near.map(|ends| ends.map(shown)),
            expected: self.expected.map(shown),
        }
    }
}
