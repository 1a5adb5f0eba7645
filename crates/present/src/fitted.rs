//! A house fitted to temperatures read in it: what was taken for it before, and what the readings say.

use advice::air::CannotRun;
use advice::air::fitted::{CannotFit, FittedHouse};
use quantity::Unit;
use schemars::JsonSchema;
use serde::Serialize;

use crate::document::{Align, Block, Document, Table};
use crate::plan::weather::no_years;
use crate::viewer::Viewer;
use crate::{say, show};
use advice::years_of_air::NoYears;

/// Readings that leave more of the prior than this said little (our judgement).
const SAID_LITTLE: f64 = 0.8;

/// A factor on what the house was taken for: 1 before.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FactorJson {
    /// The likeliest.
    pub best: f64,
    /// Nine times of ten it lies between.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// Width of what is left to guess over that before: near 1, the readings said little.
    pub left_of_prior: f64,
}

/// What readings say of a house.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FittedView {
    /// On the leaks.
    pub leaks: FactorJson,
    /// On the sun that the roof takes up.
    pub sun: FactorJson,
    /// On what walls, curtains and roof let through.
    pub walls: FactorJson,
    /// How far off the house as told was, root mean square, K.
    pub before_k: f64,
    /// The same of the house as fitted.
    pub after_k: f64,
    /// Days that were read.
    pub days: usize,
    /// Whether they are days of brooding.
    pub is_of_brooding: bool,
    /// The most that heaters must give in an hour by the house as told, kW.
    pub heat_peak_before_kw: f64,
    /// The same by the house as fitted.
    pub heat_peak_after_kw: f64,
}

/// What readings say as JSON.
pub fn view(fitted: &FittedHouse) -> FittedView {
    let factor = |factor: advice::air::fitted::Factor| FactorJson {
        best: factor.best,
        low: factor.low,
        high: factor.high,
        left_of_prior: factor.left_of_prior,
    };
    FittedView {
        leaks: factor(fitted.fit.leakage),
        sun: factor(fitted.fit.sun),
        walls: factor(fitted.fit.through),
        before_k: fitted.fit.before_k,
        after_k: fitted.fit.after_k,
        days: fitted.days.len(),
        is_of_brooding: fitted.is_of_brooding,
        heat_peak_before_kw: fitted.heat_peak_kw.0,
        heat_peak_after_kw: fitted.heat_peak_kw.1,
    }
}

/// Why a house cannot be fitted.
pub fn cannot_fit(cannot: &CannotFit, viewer: &Viewer) -> String {
    match cannot {
        CannotFit::CannotRun(cannot) => no_years(&NoYears::CannotRun(CannotRun::clone(cannot)), viewer),
        CannotFit::NoDays => viewer.words().plain("fitted-no-days"),
    }
}

/// What readings say as a document.
///
/// - `subtitle`: whose house
pub fn document(fitted: &FittedHouse, subtitle: String, viewer: &Viewer) -> Document {
    let words = viewer.words();
    let kelvin = |kelvin: f64| show::number(kelvin, 1);
    let kilowatts = |kw: f64| show::quantity(kw, Unit::Kilowatt, 1, viewer);
    let (before, after) = fitted.heat_peak_kw;
    let factors = [
        ("fitted-leaks", fitted.fit.leakage),
        ("fitted-sun", fitted.fit.sun),
        ("fitted-walls", fitted.fit.through),
    ];
    let row = |(name, factor): &(&str, advice::air::fitted::Factor)| {
        let times = |factor: f64| show::number(factor, 2);
        vec![
            words.plain(name),
            times(factor.best),
            say!(words, "air-day-from-to", low = times(factor.low), high = times(factor.high)),
            words.plain(if factor.left_of_prior > SAID_LITTLE { "fitted-little" } else { "fitted-much" }),
        ]
    };
    let mut blocks = vec![
        Block::Lead {
            label: words.plain("fitted-label"),
            value: say!(
                words,
                "fitted-off",
                before = kelvin(fitted.fit.before_k),
                after = kelvin(fitted.fit.after_k)
            ),
            note: say!(words, "fitted-days", days = fitted.days.len() as f64),
        },
        Block::Table(Table {
            caption: words.plain("fitted-caption"),
            columns: vec![
                (words.plain("column-part"), Align::Start),
                (words.plain("fitted-column-times"), Align::End),
                (words.plain("fitted-column-range"), Align::End),
                (words.plain("fitted-column-said"), Align::Start),
            ],
            rows: factors.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }),
        Block::Paragraph(say!(words, "fitted-heat", before = kilowatts(before), after = kilowatts(after))),
    ];
    if factors.iter().all(|(_, factor)| factor.left_of_prior > SAID_LITTLE) {
        blocks.push(Block::Note(words.plain("fitted-too-few")));
    }
    blocks.push(Block::Note(words.plain("fitted-how")));
    Document { title: words.plain("fitted-title"), subtitle, blocks }
}
