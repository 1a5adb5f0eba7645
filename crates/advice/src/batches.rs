//! The batches of a book, and which of them somebody means.

use book::{BatchId, BookState, Slot, Subject};
use quantity::CivilDay;

/// A batch of the book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// The batch.
    pub id: BatchId,
    /// Its name, where its plan gives it one.
    pub name: Option<String>,
    /// The day of the plan on which chicks come.
    pub planned: Option<CivilDay>,
    /// Whether it was closed.
    pub is_closed: bool,
}

/// Which batch is meant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Meant {
    /// This one.
    One(Listed),
    /// None of them; all there are.
    None(Vec<Listed>),
    /// It could be any of these.
    Several(Vec<Listed>),
}

/// The fewest characters of an id that stand for the whole.
const ID_CHARACTERS: usize = 8;

/// All batches about which something counts, in the order of their ids.
pub fn all(state: &BookState) -> Vec<Listed> {
    state.batches().into_iter().map(|id| listed(state, id)).collect()
}

fn listed(state: &BookState, id: BatchId) -> Listed {
    let subject = Subject::Batch(id);
    let plan = state.answers(&Slot::of("plan-adopted", subject));
    let text = |key: &str| plan?.get(key)?.value.as_str().map(str::to_owned);
    Listed {
        id,
        name: text("batch.name").filter(|name| !name.is_empty()),
        planned: text("batch.placement").and_then(|day| CivilDay::parse(&day)),
        is_closed: is_closed(state, id),
    }
}

/// Whether a batch was closed.
pub fn is_closed(state: &BookState, id: BatchId) -> bool {
    state.current(&Slot::of("batch-closed", Subject::Batch(id))).is_some()
}

/// The batch that a name, an id, or the beginning or end of an id means; of an unsaid one the only batch that is not
/// closed, or the only batch there is.
pub fn meant(state: &BookState, said: Option<&str>) -> Meant {
    let all = all(state);
    let fits = |keep: &dyn Fn(&Listed) -> bool| -> Vec<Listed> {
        all.iter().filter(|listed| keep(listed)).cloned().collect()
    };
    let found = match said {
        None => {
            [fits(&|listed| !listed.is_closed), fits(&|_| true)].into_iter().find(|some| !some.is_empty())
        }
        Some(said) => [fits(&|listed| is_named(listed, said)), fits(&|listed| is_id(listed, said))]
            .into_iter()
            .find(|some| !some.is_empty()),
    };
    match found.as_deref() {
        None => Meant::None(all),
        Some([one]) => Meant::One(one.clone()),
        Some(several) => Meant::Several(several.to_vec()),
    }
}

fn is_named(listed: &Listed, said: &str) -> bool {
    listed.name.as_ref().is_some_and(|name| name.to_lowercase() == said.trim().to_lowercase())
}

fn is_id(listed: &Listed, said: &str) -> bool {
    means_id(&listed.id.0.to_string(), said)
}

/// Whether somebody means an id by its beginning or its end. Ids made within a minute begin alike, so that the end is what
/// people copy.
pub fn means_id(id: &str, said: &str) -> bool {
    let said = said.trim().to_lowercase();
    said.len() >= ID_CHARACTERS && (id.starts_with(&said) || id.ends_with(&said))
}
