//! What a document says in short: its findings, the weightiest first, and the answer to each heading's question.

use advice::finding::{Finding, Weight};

use crate::document::{Block, Document};

/// A document in short.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Summary {
    /// The findings, in the order of the document.
    pub findings: Vec<Short>,
    /// The first answer below each heading that has one.
    pub answers: Vec<ShortAnswer>,
}

/// A finding in short.
#[derive(Clone, Debug, PartialEq)]
pub struct Short {
    /// Its stable name.
    pub name: &'static str,
    /// note, look or problem.
    pub weight: Weight,
    /// Its first sentences.
    pub text: String,
    /// The heading it stands under.
    pub anchor: &'static str,
}

/// An answer in short.
#[derive(Clone, Debug, PartialEq)]
pub struct ShortAnswer {
    /// The question.
    pub heading: String,
    /// The answer.
    pub value: String,
    /// The heading's anchor.
    pub anchor: &'static str,
}

impl Summary {
    /// Of a document.
    pub fn of(document: &Document) -> Summary {
        let mut summary = Summary::default();
        let mut heading: Option<(&'static str, &str)> = None;
        let mut answered = false;
        for block in document.blocks_in_place() {
            match (block, heading) {
                (Block::Heading { level: 2, text, anchor }, _) => {
                    heading = Some((anchor, text));
                    answered = false;
                }
                (Block::Lead { value, .. }, Some((anchor, text))) if !answered => {
                    let (heading, value) = (text.to_owned(), value.clone());
                    summary.answers.push(ShortAnswer { heading, value, anchor });
                    answered = true;
                }
                (Block::Finding(found), Some((anchor, _))) => {
                    let text = first_sentences(&found.text).to_owned();
                    summary.findings.push(Short { name: found.name, weight: found.weight, text, anchor });
                }
                _ => {}
            }
        }
        summary
    }

    /// The same with the findings in the order in which a plan says them: what stands most against it first.
    pub fn in_order_of(mut self, findings: &[Finding]) -> Summary {
        let place = |short: &Short| findings.iter().position(|finding| finding.name == short.name);
        self.findings.sort_by_key(|short| place(short).unwrap_or(findings.len()));
        self
    }

    /// The findings of one weight.
    pub fn of_weight(&self, weight: Weight) -> Vec<&Short> {
        self.findings.iter().filter(|short| short.weight == weight).collect()
    }
}

/// As many letters tell a finding.
const ENOUGH: usize = 60;

/// The first sentences, as many as it takes to say something. A full stop ends one where a blank and a capital letter
/// follow: a point within a number ends none.
fn first_sentences(text: &str) -> &str {
    let ends = |at: &usize| {
        let mut behind = text[at + 1..].chars();
        behind.next() == Some(' ') && behind.next().is_some_and(char::is_uppercase)
    };
    let mut stops = text.match_indices('.').map(|(at, _)| at).filter(ends);
    stops.find(|at| *at >= ENOUGH).map_or(text, |end| &text[..=end])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::FindingView;

    fn heading(anchor: &'static str) -> Block {
        Block::Heading { level: 2, text: anchor.to_uppercase(), anchor }
    }

    fn lead(value: &str) -> Block {
        Block::Lead { label: String::new(), value: value.to_owned(), note: String::new() }
    }

    fn finding(weight: Weight, text: &str) -> Block {
        Block::Finding(FindingView {
            name: "one",
            weight,
            weight_word: String::new(),
            text: text.to_owned(),
            ways_out: Vec::new(),
            field: None,
        })
    }

    #[test]
    fn each_heading_gives_its_first_answer_and_all_its_findings() {
        let blocks = vec![
            heading("fit"),
            lead("No"),
            lead("Later"),
            finding(
                Weight::Problem,
                "Too many. On the floor of this house fit 1 353 birds at 17.0 kg. Order fewer.",
            ),
            heading("mix"),
            finding(Weight::Look, "Say what 1:20 means"),
        ];
        let summary = Summary::of(&Document { blocks, ..Document::default() });
        assert_eq!(summary.answers.len(), 1);
        assert_eq!((summary.answers[0].anchor, summary.answers[0].value.as_str()), ("fit", "No"));
        let problems = summary.of_weight(Weight::Problem);
        assert_eq!(
            (problems[0].anchor, problems[0].text.as_str()),
            ("fit", "Too many. On the floor of this house fit 1 353 birds at 17.0 kg.")
        );
        assert_eq!(summary.of_weight(Weight::Look)[0].anchor, "mix");
    }
}
