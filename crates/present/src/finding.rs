//! Findings in words.

use advice::finding::{Detail, Finding};
use advice::outcome::Outcome;

use crate::document::FindingView;
use crate::viewer::Viewer;
use crate::words::Argument;
use crate::{say, show};

/// A finding in words, with its ways out.
pub fn view(finding: &Finding, outcome: &Outcome, viewer: &Viewer) -> FindingView {
    let words = viewer.words();
    let arguments = arguments(&finding.details, outcome, viewer);
    let arguments = borrowed(&arguments);
    FindingView {
        name: finding.name,
        weight: finding.weight,
        weight_word: words.plain(&format!("weight-{}", finding.weight.name())),
        text: words.say(&format!("finding-{}", finding.name), &arguments),
        ways_out: finding
            .ways_out
            .iter()
            .map(|way| words.say(&format!("way-out-{way}"), &arguments))
            .collect(),
        field: finding.field,
    }
}

/// Numbers of a sentence as its message takes them; behind each, under its name and `_count`, the bare number that chooses
/// between one and many.
pub(crate) fn arguments(
    details: &[(&'static str, Detail)],
    outcome: &Outcome,
    viewer: &Viewer,
) -> Vec<(String, Argument)> {
    let both = |(name, detail): &(&'static str, Detail)| {
        let text = Argument::Text(worded(detail, outcome, viewer));
        let bare = match *detail {
            Detail::Number { value, .. } => Some(value),
            Detail::Figure(id) => outcome.number(id),
            Detail::Bought(_) | Detail::Bags(_) | Detail::Case(_) => None,
        };
        let count = bare.map(|value| (format!("{name}_count"), Argument::Count(value)));
        std::iter::once(((*name).to_owned(), text)).chain(count)
    };
    details.iter().flat_map(both).collect()
}

/// The same as a message is given them.
pub(crate) fn borrowed(arguments: &[(String, Argument)]) -> Vec<(&str, Argument)> {
    arguments.iter().map(|(name, argument)| (name.as_str(), argument.clone())).collect()
}

fn worded(detail: &Detail, outcome: &Outcome, viewer: &Viewer) -> String {
    match detail {
        Detail::Number { value, unit, decimals } => show::quantity(*value, *unit, *decimals, viewer),
        Detail::Bought(names) => {
            let name = |what: &&str| viewer.words().plain(&format!("purchase-{what}"));
            names.iter().map(name).collect::<Vec<_>>().join("; ")
        }
        Detail::Bags(sizes) => {
            let bags = |(count, size): &(f64, Option<f64>)| match size {
                Some(_) => show::bags(*count, *size, viewer),
                None => say!(viewer.words(), "n-bags", count = *count, n = show::number(*count, 0)),
            };
            sizes.iter().map(bags).collect::<Vec<_>>().join(", ")
        }
        Detail::Case(case) => (*case).to_owned(),
        Detail::Figure(id) => outcome
            .get(id)
            .map_or_else(String::new, |worked| show::figure(&worked.figure, worked.spec, viewer)),
    }
}
