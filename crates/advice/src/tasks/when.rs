//! On which days a task falls: rules over the days that a batch is counted from.

use quantity::Unit;

use super::frame::{Frame, Sold, Widened};
use super::{RunDetail, birds_to_weigh};

/// A day that tasks are counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The house is empty: the figure `house.empty_from`.
    Empty,
    /// Litter comes in: the figure `litter.spread_date`.
    Litter,
    /// The feed for the first weeks is in the store.
    Feed,
    /// The chicks are booked, and a deposit is paid where one is asked.
    Booked,
    /// Warming begins.
    Warming,
    /// The chicks come; day 0.
    Placement,
    /// The last day under heat.
    LastHeat,
    /// The first birds are sold.
    Sale,
    /// The last birds are sold.
    LastSale,
    /// The next chicks can come: the figure `batch.next_placement`.
    Next,
}

use Anchor::{Litter, Placement};

/// The rule that gives a task its days. Numbers are days after an anchor; before it where negative.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum When {
    /// One day.
    On(Anchor, i32),
    /// From one day to another; no day at all where the other comes first.
    Between((Anchor, i32), (Anchor, i32)),
    /// One day before the chicks, or as soon as litter is in where that is later.
    OnLitter(i32),
    /// Every seventh day of age until the sale, with the birds to weigh.
    Weekly,
    /// Each day on which the rings are widened, with the chicks a square metre, the rings joined into one and the overlap.
    Widening,
    /// The days on which the guards go.
    GuardsOut,
    /// The days on which one feed is mixed into the next.
    FeedMixing,
    /// The days on which more feed comes.
    FeedDelivered,
    /// The last days on which the feed of each delivery can be ordered.
    FeedOrdered,
    /// The days on which birds are sold: each by itself where every day has its own number, else from the first to the last,
    /// with the birds a day.
    Sales,
    /// So many days after those on which birds are sold, days that follow each other together.
    SaleDays(i32),
}

/// Some days in a row, as days of age; `last` is `first` for one day.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Run {
    pub(super) first: i32,
    pub(super) last: i32,
    /// The numbers that this run's sentence says.
    pub(super) details: Vec<RunDetail>,
}

impl Run {
    fn new(first: i32, last: i32) -> Run {
        Run { first, last, details: Vec::new() }
    }

    fn on(day: i32) -> Run {
        Run::new(day, day)
    }
}

impl When {
    /// The days by a batch's frame; none where a day they are counted from is not known.
    pub(super) fn runs(self, frame: &Frame) -> Vec<Run> {
        match self {
            When::On(anchor, days) => frame.age(anchor).map(|age| Run::on(age + days)).into_iter().collect(),
            When::Between(first, last) => between(frame, first, last).into_iter().collect(),
            When::OnLitter(days) => {
                let litter = frame.age(Litter);
                let before = frame.age(Placement).map(|age| age + days);
                before.map(|day| Run::on(litter.map_or(day, |litter| litter.max(day)))).into_iter().collect()
            }
            When::Weekly => weekly(frame),
            When::Widening => widening(frame),
            When::GuardsOut => vec![guards_out(frame)],
            When::FeedDelivered => delivered(frame),
            When::FeedOrdered => frame.feed_orders.iter().map(|day| Run::on(*day)).collect(),
            When::Sales => frame.sold.iter().map(sale).collect(),
            When::SaleDays(days) => sale_days(frame, days),
            When::FeedMixing => frame.feed_changes.iter().map(|day| mixing(*day)).collect(),
        }
    }
}

fn between(frame: &Frame, first: (Anchor, i32), last: (Anchor, i32)) -> Option<Run> {
    let (first, last) = (frame.age(first.0)? + first.1, frame.age(last.0)? + last.1);
    (first <= last).then_some(Run::new(first, last))
}

const WEEK_D: i32 = 7;

fn weekly(frame: &Frame) -> Vec<Run> {
    let Some(sale) = frame.age(Anchor::Sale) else { return Vec::new() };
    let details: Vec<RunDetail> =
        frame.chicks.map(|chicks| (birds_to_weigh(chicks), Unit::Birds)).into_iter().collect();
    let weeks = (1..).map(|week| week * WEEK_D).take_while(|day| *day < sale);
    weeks.map(|day| Run { details: details.clone(), ..Run::on(day) }).collect()
}

fn widening(frame: &Frame) -> Vec<Run> {
    let widened = |ring: &Widened| Run {
        details: vec![
            (ring.density, Unit::PerSquareMetre),
            (ring.joined, Unit::Pieces),
            (ring.overlap_cm, Unit::Centimetre),
        ],
        ..Run::on(ring.day)
    };
    frame.widened.iter().map(widened).collect()
}

fn delivered(frame: &Frame) -> Vec<Run> {
    frame.deliveries.iter().map(|day| Run::on(*day)).collect()
}

fn sale(sold: &Sold) -> Run {
    let days = f64::from(sold.last - sold.first + 1);
    let details = sold.birds_a_day.map(|birds| vec![(birds, Unit::Birds), (days, Unit::Day)]);
    Run { details: details.unwrap_or_default(), ..Run::new(sold.first, sold.last) }
}

fn sale_days(frame: &Frame, after: i32) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    for sold in &frame.sold {
        let (first, last) = (sold.first + after, sold.last + after);
        match runs.last_mut().filter(|run| run.last + 1 >= first) {
            Some(run) => run.last = run.last.max(last),
            None => runs.push(Run::new(first, last)),
        }
    }
    runs
}

/// Guards go between day 7 and day 10 (breeders' handbooks, from memory); where the plan widens to the whole house on a
/// day of its own, on that day.
fn guards_out(frame: &Frame) -> Run {
    frame.guards_out.map_or(Run::new(7, 10), Run::on)
}

/// Mixed over four days, three parts of the old to one of the new, then half and half, then one to three (common
/// practice); the new feed alone on the last.
fn mixing(first: i32) -> Run {
    Run::new(first, first + 3)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn frame() -> Frame {
        Frame {
            empty: Some(-14),
            litter: Some(-3),
            feed: -14,
            warming: Some(-1),
            last_heat: 14,
            sale: Some(42),
            last_sale: Some(44),
            next: Some(58),
            chicks: Some(1_600.0),
            widened: [(3, 37.0), (6, 30.0)]
                .map(|(day, density)| Widened { day, density, joined: 1.0, overlap_cm: 10.0 })
                .to_vec(),
            sold: vec![
                Sold { first: 42, last: 42, birds_a_day: Some(400.0) },
                Sold { first: 43, last: 43, birds_a_day: Some(300.0) },
                Sold { first: 46, last: 46, birds_a_day: Some(800.0) },
            ],
            guards_out: None,
            feed_changes: vec![21],
            deliveries: vec![10],
            feed_orders: vec![-16, 8],
            booked: -28,
        }
    }

    fn days(when: When, frame: &Frame) -> Vec<(i32, i32)> {
        when.runs(frame).into_iter().map(|run| (run.first, run.last)).collect()
    }

    #[test]
    fn days_are_counted_from_their_anchor() {
        let frame = frame();
        assert_eq!(days(When::On(Anchor::Empty, 1), &frame), [(-13, -13)]);
        assert_eq!(days(When::Between((Anchor::Sale, 0), (Anchor::LastSale, 0)), &frame), [(42, 44)]);
        assert_eq!(days(When::Sales, &frame), [(42, 42), (43, 43), (46, 46)]);
        assert_eq!(days(When::SaleDays(-1), &frame), [(41, 42), (45, 45)], "the evening before each sale");
        assert_eq!(days(When::FeedOrdered, &frame), [(-16, -16), (8, 8)]);
        assert_eq!(days(When::Weekly, &frame), [7, 14, 21, 28, 35].map(|day| (day, day)));
        assert_eq!(days(When::Widening, &frame), [(3, 3), (6, 6)]);
        assert_eq!(days(When::GuardsOut, &frame), [(7, 10)]);
        assert_eq!(days(When::FeedMixing, &frame), [(21, 24)]);
    }

    #[test]
    fn nothing_stands_on_litter_that_is_not_in() {
        let late = Frame { litter: Some(0), ..frame() };
        assert_eq!(days(When::OnLitter(-2), &late), [(0, 0)]);
        assert_eq!(days(When::OnLitter(-2), &frame()), [(-2, -2)]);
        let unknown = Frame { litter: None, ..frame() };
        assert_eq!(days(When::OnLitter(-2), &unknown), [(-2, -2)]);
    }

    #[test]
    fn what_hangs_on_an_unknown_day_has_none() {
        let unknown = Frame { sale: None, ..frame() };
        assert!(days(When::Weekly, &unknown).is_empty());
        assert!(days(When::On(Anchor::Sale, -7), &unknown).is_empty());
        assert!(days(When::Between((Anchor::Litter, 3), (Anchor::Litter, 2)), &frame()).is_empty());
    }
}
