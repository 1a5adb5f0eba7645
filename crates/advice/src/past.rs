//! This house's own earlier batches: what a batch is fairest held against.
//!
//! A house that never reaches a breeder's curve still tells whether this batch does better than the last ones.

use std::collections::BTreeMap;

use book::limit::HOUSE_OF_PLAN;
use book::{BatchId, BookState, Slot, Subject};
use quantity::{CivilDay, Series};

use crate::diary::{Diary, set_days, set_number};
use crate::families::{self, course, growing};
use crate::outcome::Outcome;

/// So many of the latest earlier batches are looked at: older ones had other chicks and other feed, and a book must not grow
/// slower with age.
const LATEST: usize = 5;

/// Earlier batches of a house.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Past {
    /// The latest first.
    pub batches: Vec<PastBatch>,
}

/// An earlier batch, by day of age. What was not written on a day is not there.
#[derive(Clone, Debug, PartialEq)]
pub struct PastBatch {
    /// The batch.
    pub batch: BatchId,
    /// Its name, where it has one.
    pub name: Option<String>,
    /// The day its chicks came.
    pub placement: CivilDay,
    /// Mean weight on days of weighing, g.
    pub weight_g: Vec<(i32, f64)>,
    /// Dead and culled up to the day, of the live chicks placed, percent.
    pub losses_percent: Vec<(i32, f64)>,
    /// Feed of a bird and day, g.
    pub feed_g: Vec<(i32, f64)>,
    /// Water of a bird and day, mL.
    pub water_ml: Vec<(i32, f64)>,
}

impl Past {
    /// The batches placed before this one, in its house where both plans name one, by what is written about days up to `on`.
    pub fn read(state: &BookState, batch: BatchId, on: CivilDay) -> Past {
        let earlier = earlier(state, batch, on).into_iter().take(LATEST);
        Past { batches: earlier.filter_map(|other| PastBatch::read(state, other, on)).collect() }
    }

    /// The batches placed before a day in a house, as plans name it, by what is written about days before that day.
    pub fn of_house(state: &BookState, house: &str, before: CivilDay) -> Past {
        let earlier = of_house(state, house, before).into_iter().take(LATEST);
        let on = before.plus_days(-1);
        Past { batches: earlier.filter_map(|other| PastBatch::read(state, other, on)).collect() }
    }

    /// The mean of the batches that have a day, by day. Between two weighings a weight is taken on a straight line.
    fn mean(&self, of: fn(&PastBatch) -> &[(i32, f64)], fills: bool) -> BTreeMap<i32, f64> {
        let last = self.batches.iter().filter_map(|one| of(one).last()).map(|(day, _)| *day).max();
        let on = |one: &PastBatch, day: i32| match fills {
            true => model::growth::between(of(one), day),
            false => of(one).iter().find(|(at, _)| *at == day).map(|(_, value)| *value),
        };
        let mean = |day: i32| {
            let values: Vec<f64> = self.batches.iter().filter_map(|one| on(one, day)).collect();
            Some((day, model::weighing::mean(&values)?))
        };
        (0..=last.unwrap_or(-1)).filter_map(mean).collect()
    }
}

/// The batches placed before this one, in its house where both plans name one, the latest first.
pub(crate) fn earlier(state: &BookState, batch: BatchId, on: CivilDay) -> Vec<BatchId> {
    let Some(placed) = placed_on(state, batch).filter(|placed| *placed <= on) else { return Vec::new() };
    let house = house_of(state, batch);
    latest_first(state, placed, |other| {
        other != batch
            && match (&house, house_of(state, other)) {
                (Some(house), Some(other)) => *house == other,
                _ => true,
            }
    })
}

/// The batches whose chicks came to a house before a day, the latest first.
pub(crate) fn of_house(state: &BookState, house: &str, before: CivilDay) -> Vec<BatchId> {
    latest_first(state, before, |batch| house_of(state, batch).is_some_and(|name| name == house))
}

fn latest_first(state: &BookState, before: CivilDay, is_wanted: impl Fn(BatchId) -> bool) -> Vec<BatchId> {
    let wanted = state.batches().into_iter().filter(|batch| is_wanted(*batch));
    let mut placed: Vec<(CivilDay, BatchId)> = wanted
        .filter_map(|batch| Some((placed_on(state, batch)?, batch)))
        .filter(|(day, _)| *day < before)
        .collect();
    placed.sort_unstable_by(|one, other| other.cmp(one));
    placed.into_iter().map(|(_, batch)| batch).collect()
}

impl PastBatch {
    fn read(state: &BookState, batch: BatchId, on: CivilDay) -> Option<PastBatch> {
        let mut diary = Diary::read(state, batch, on);
        let placement = diary.placement.filter(|_| diary.is_placed)?;
        // The days end with the last that was written, not on the day it is looked back from.
        let last = diary.notes.last().and_then(|note| diary.age(note.day))?;
        set_number(&mut diary.answers, growing::TODAY, f64::from(last));
        let mut outcome = Outcome::default();
        let days = |outcome: &mut Outcome, id: &str| {
            let spec = families::series_named(id)?;
            outcome.days_of(&diary.answers, [spec]);
            outcome.series(spec)
        };
        let mut of = |id| days(&mut outcome, id).map_or_else(Vec::new, pairs);
        Some(PastBatch {
            batch,
            name: diary.answers.text("batch.name").map(str::to_owned),
            placement,
            weight_g: of("growing.weight_by_day"),
            losses_percent: of("growing.losses_by_day"),
            feed_g: of("growing.feed_a_bird_by_day"),
            water_ml: of("growing.water_a_bird_by_day"),
        })
    }
}

fn pairs(series: Series) -> Vec<(i32, f64)> {
    series.index.iter().map(|day| *day as i32).zip(series.values).collect()
}

/// The day chicks came; what was only planned is no batch to look back on.
fn placed_on(state: &BookState, batch: BatchId) -> Option<CivilDay> {
    let slot = Slot::of("chicks-placed", Subject::Batch(batch));
    state.current(&slot).map(|record| record.entry().day)
}

/// The house that the adopted plan names.
fn house_of(state: &BookState, batch: BatchId) -> Option<String> {
    let body = state.answers(&Slot::of("plan-adopted", Subject::Batch(batch)))?;
    body.get(HOUSE_OF_PLAN)?.value.as_str().map(str::to_owned)
}

impl Diary {
    /// The same with what this house's earlier batches had on each day, to hold the batch against.
    pub fn beside(mut self, past: &Past) -> Diary {
        set_number(&mut self.answers, course::PAST_BATCHES, past.batches.len() as f64);
        set_days(&mut self.answers, course::PAST_WEIGHT, past.mean(|one| &one.weight_g, true));
        set_days(&mut self.answers, course::PAST_LOSSES, past.mean(|one| &one.losses_percent, false));
        set_days(&mut self.answers, course::PAST_FEED, past.mean(|one| &one.feed_g, false));
        set_days(&mut self.answers, course::PAST_WATER, past.mean(|one| &one.water_ml, false));
        self
    }
}
