//! A plan that is being made: what was typed, kept beside the book until it holds and is adopted.

use std::collections::BTreeMap;

use book::{Access, HouseId};
use quantity::Raw;
use serde::{Deserialize, Serialize};
use store::{Store, StoreError};
use uuid::Uuid;

use advice::body::kept_in;

/// What stands in front of the id in the key of a plan's draft.
const KEY: &str = "plan/";

/// What was typed for a plan. What is kept with the farm from batch to batch stands in the book and not here, unless it
/// does not hold.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(crate) struct PlanDraft {
    /// The house the batch is to stand in; perhaps not described yet.
    pub(crate) house: HouseId,
    /// The texts as typed, by key.
    pub(crate) typed: BTreeMap<String, Vec<String>>,
    /// What was typed about other houses while the plan stood in them, and is not in the book: it waits there.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub(crate) waiting: BTreeMap<HouseId, BTreeMap<String, Vec<String>>>,
}

/// A draft as it was found.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Found {
    /// What was typed.
    pub(crate) draft: PlanDraft,
    /// When, by the clock of whoever wrote it.
    pub(crate) updated_millis: i64,
}

impl PlanDraft {
    /// Nothing typed yet.
    pub(crate) fn empty(house: HouseId) -> PlanDraft {
        PlanDraft { house, typed: BTreeMap::new(), waiting: BTreeMap::new() }
    }

    /// Of what was typed.
    pub(crate) fn of(house: HouseId, raws: &[Raw]) -> PlanDraft {
        let typed = raws.iter().map(|raw| (raw.key.clone(), raw.text.clone())).collect();
        PlanDraft { house, typed, waiting: BTreeMap::new() }
    }

    /// The same draft, were this typed instead.
    pub(crate) fn saying(&self, raws: &[Raw]) -> PlanDraft {
        PlanDraft { waiting: self.waiting.clone(), ..PlanDraft::of(self.house, raws) }
    }

    /// The same draft in another house: what was typed about the old one stays with it, what once was typed about the new
    /// one is there again.
    pub(crate) fn moved_to(&self, house: HouseId) -> PlanDraft {
        let mut moved = self.clone();
        let of_house = |key: &str| kept_in(key) == Some("house");
        let left: BTreeMap<_, _> = self.typed.iter().filter(|(key, _)| of_house(key)).map(owned).collect();
        moved.typed.retain(|key, _| !of_house(key));
        moved.typed.extend(moved.waiting.remove(&house).unwrap_or_default());
        if !left.is_empty() {
            moved.waiting.insert(self.house, left);
        }
        moved.house = house;
        moved
    }

    /// What was typed, as raw answers.
    pub(crate) fn raws(&self) -> Vec<Raw> {
        let raw =
            |(key, text): (&String, &Vec<String>)| Raw { key: key.clone(), text: text.clone(), line: None };
        self.typed.iter().map(raw).collect()
    }
}

fn owned((key, texts): (&String, &Vec<String>)) -> (String, Vec<String>) {
    (key.clone(), texts.clone())
}

/// The draft of a plan, if there is one.
pub(crate) async fn find(
    store: &dyn Store,
    access: &Access,
    plan: Uuid,
) -> Result<Option<Found>, StoreError> {
    Ok(store.draft(access, &key(plan)).await?.and_then(read).map(|(_, found)| found))
}

/// All plans being made at the farm.
pub(crate) async fn all(store: &dyn Store, access: &Access) -> Result<BTreeMap<Uuid, PlanDraft>, StoreError> {
    let found = store.drafts(access).await?.into_iter().filter_map(read);
    Ok(found.map(|(id, found)| (id, found.draft)).collect())
}

/// Keeps a draft in place of an earlier one, also when this machine's clock was set back in between.
pub(crate) async fn keep(
    store: &dyn Store,
    access: &Access,
    plan: Uuid,
    draft: &PlanDraft,
    now_millis: i64,
) -> Result<(), StoreError> {
    let earlier = find(store, access, plan).await?.map_or(i64::MIN, |found| found.updated_millis);
    let body = serde_json::to_value(draft).unwrap_or_default();
    store.put_draft(access, &key(plan), &body, now_millis.max(earlier.saturating_add(1))).await?;
    Ok(())
}

fn key(plan: Uuid) -> String {
    format!("{KEY}{plan}")
}

/// A draft of another form, or of a shape that is not known, is none of ours.
fn read(draft: store::Draft) -> Option<(Uuid, Found)> {
    let id = Uuid::try_parse(draft.key.strip_prefix(KEY)?).ok()?;
    let read = serde_json::from_value(draft.body).ok()?;
    Some((id, Found { draft: read, updated_millis: draft.updated_millis }))
}
