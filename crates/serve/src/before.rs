//! A plan as it stands: what the book keeps, what was typed on top of it, and what comes of both.

use std::collections::HashMap;
use std::sync::{Arc, OnceLock};

pub(crate) use advice::keep::{kept, slot_of};
use advice::past::Past;
use advice::plan::{self, Plan};
use advice::record::says_the_same;
use advice::side_by_side::losses_to_expect;
use advice::{batches, families};
use book::{BatchId, BookState, HouseId, Record, Slot, Subject};
use present::plan::Shown;
use present::{Document, Viewer};
use quantity::{Answers, Asked, Problem, Question, Raw, Source, field};
use uuid::Uuid;

use crate::adopt;
use crate::call::Call;
use crate::desk::Open;
use crate::draft::{self, PlanDraft};
use crate::trouble::Trouble;
use advice::body::{self, KEPT_KINDS, kept_in, raws_of};

/// A plan as it stands.
pub(crate) struct Before {
    /// Its id, which is that of its batch too.
    pub(crate) id: Uuid,
    /// What was typed.
    pub(crate) draft: PlanDraft,
    /// The book it rests on.
    pub(crate) open: Arc<Open>,
    /// All answers, as typed.
    pub(crate) raws: Vec<Raw>,
    /// What does not hold.
    pub(crate) problems: Vec<Problem>,
    /// What is rare.
    pub(crate) questions: Vec<Question>,
    /// What holds.
    pub(crate) answers: Answers,
    /// What comes of it, worked out when it is first asked for: an unchanged page never asks.
    worked: OnceLock<Plan>,
    /// Who looks.
    pub(crate) viewer: Viewer,
}

/// How a plan stands towards the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Adopted {
    /// It was not adopted.
    Never,
    /// It was, and nothing has changed since.
    AsItStands,
    /// It was, and would say something else now.
    ChangedSince,
}

impl Before {
    /// The plan of a call's id.
    pub(crate) async fn load(call: &Call) -> Result<Before, Trouble> {
        let id = call.id()?;
        let open = call.site.open(&call.access).await?;
        let draft = match draft::find(&*call.site.store, &call.access, id).await? {
            Some(found) => found.draft,
            None => adopt::draft_of(&open.state, id).ok_or(Trouble::NotFound)?,
        };
        Ok(Before::of(id, draft, open))
    }

    /// Works a plan out from what was typed and from the book.
    pub(crate) fn of(id: Uuid, draft: PlanDraft, open: Arc<Open>) -> Before {
        let raws = all_raws(id, &draft, &open.state);
        let mut checked = plan::read(&raws, Source::Hand, false);
        checked.answers.set_rows("house", other_houses(&open.state, draft.house));
        let viewer = Viewer::of(&checked.answers);
        let (problems, questions) = (checked.problems, checked.questions);
        let answers = checked.answers;
        Before { id, draft, open, raws, problems, questions, answers, worked: OnceLock::new(), viewer }
    }

    /// What comes of what holds.
    pub(crate) fn plan(&self) -> &Plan {
        self.worked.get_or_init(|| plan::work_out(self.answers.clone()))
    }

    /// The batches that were in the house before the chicks of this plan.
    pub(crate) fn past(&self) -> Past {
        let placement = self.answers.day("batch.placement");
        placement.map_or_else(Past::default, |day| {
            Past::of_house(&self.open.state, &self.draft.house.0.to_string(), day)
        })
    }

    /// The same plan, were this typed.
    pub(crate) fn with(self, draft: PlanDraft) -> Before {
        Before::of(self.id, draft, self.open)
    }

    /// What was typed, as it is stamped.
    pub(crate) fn typed_text(&self) -> String {
        format!("{:?}", self.draft)
    }

    /// Its address.
    pub(crate) fn address(&self) -> String {
        address(self.id)
    }

    /// Whether nothing of this batch was said yet, whatever is known of the farm.
    pub(crate) fn is_blank(&self) -> bool {
        self.draft.typed.is_empty()
    }

    /// Where an adopted plan of this batch stands in the book.
    pub(crate) fn slot(&self) -> Slot {
        slot_of_plan(self.id)
    }

    /// The entry that adopted it.
    pub(crate) fn adoption(&self) -> Option<&Record> {
        self.open.state.current(&self.slot())
    }

    /// What it says otherwise than when it was adopted.
    pub(crate) fn since_adopted(&self) -> Document {
        let adopted = self.adoption().and_then(Record::body);
        let shown = Shown::new(self.plan(), &self.viewer);
        let blocks = adopted.map(|adopted| shown.since_adopted(adopted, &adopt::body(self)));
        Document { blocks: blocks.unwrap_or_default(), ..Document::default() }
    }

    /// Whether its batch was closed.
    pub(crate) fn is_closed(&self) -> bool {
        batches::is_closed(&self.open.state, BatchId(self.id))
    }

    /// How it stands towards the book.
    pub(crate) fn adopted(&self) -> Adopted {
        match self.adoption().and_then(Record::body) {
            None if self.adoption().is_none() => Adopted::Never,
            Some(body) if says_the_same(body, &adopt::body(self)) => Adopted::AsItStands,
            _ => Adopted::ChangedSince,
        }
    }
}

/// The address of a plan's page.
pub(crate) fn address(id: Uuid) -> String {
    format!("/before/{id}")
}

/// Where the adopted plan of a batch stands.
pub(crate) fn slot_of_plan(id: Uuid) -> Slot {
    Slot::of("plan-adopted", Subject::Batch(BatchId(id)))
}

/// What the book keeps, and in its place what was typed, in the order of the table of fields.
fn all_raws(id: Uuid, draft: &PlanDraft, state: &BookState) -> Vec<Raw> {
    let asked = families::plan_fields();
    let of_kind = |kind: &&'static str| {
        kept(state, kind, draft.house).map_or_else(Vec::new, |body| raws_of(&body, kind))
    };
    let mut by_field = grouped(&asked, KEPT_KINDS.iter().flat_map(of_kind));
    by_field.extend(grouped(&asked, learnt(id, draft, state).into_iter()));
    by_field.extend(grouped(&asked, draft.raws().into_iter()));
    asked.iter().flat_map(|one| by_field.remove(one.field.key).unwrap_or_default()).collect()
}

/// What the batches of the house teach a plan of which nothing was typed yet: it stands in its form, to be changed or sent along.
fn learnt(id: Uuid, draft: &PlanDraft, state: &BookState) -> Option<Raw> {
    if !draft.typed.is_empty() || state.current(&slot_of_plan(id)).is_some() {
        return None;
    }
    let losses = losses_to_expect(state, &draft.house.0.to_string())?;
    let text = vec![losses.to_string()];
    Some(Raw { key: "batch.expected_losses_percent".to_owned(), text, line: None })
}

/// The other houses of the book, to compare with.
fn other_houses(state: &BookState, house: HouseId) -> Vec<Answers> {
    let others = state.houses().into_iter().filter(|id| *id != house);
    let raws = |id| kept(state, "house", id).map(|body| raws_of(&body, "house"));
    others.filter_map(raws).map(|raws| plan::read(&raws, Source::Hand, false).answers).collect()
}

/// Raw answers by field; a field typed twice, in two units, has both.
fn grouped(asked: &[Asked], raws: impl Iterator<Item = Raw>) -> HashMap<&'static str, Vec<Raw>> {
    let mut by_field: HashMap<&'static str, Vec<Raw>> = HashMap::new();
    for raw in raws {
        if let Some((field, _)) = field::find(asked, &raw.key) {
            by_field.entry(field.key).or_default().push(raw);
        }
    }
    by_field
}

/// Whether a kind's answers may be seen and changed: prices are left alone while amounts are hidden.
pub(crate) fn is_shown(kind: Option<&str>, viewer: &Viewer) -> bool {
    viewer.money_shown || kind != Some("prices")
}

/// What a plan's form asks of this viewer.
pub(crate) fn asked(viewer: &Viewer) -> Vec<Asked> {
    // Files name their house; on a page it is chosen.
    let is_chosen = |asked: &Asked| asked.field.key == "batch.house";
    let shown = |asked: &Asked| is_shown(kept_in(asked.field.key), viewer) && !is_chosen(asked);
    families::plan_fields().into_iter().filter(shown).collect()
}

/// The name of a house, where it has one.
pub(crate) fn house_name(state: &BookState, house: HouseId) -> Option<String> {
    let body = kept(state, "house", house)?;
    let named = body::raws_of(&body, "house").into_iter().find(|raw| raw.key == "house.name")?;
    named.text.into_iter().next().filter(|name| !name.is_empty())
}
