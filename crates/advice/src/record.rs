//! Writing something down: what a kind of entry asks, what is wrong with an answer, and what is so unlikely that it is
//! asked about before it is kept.

use book::{BatchId, Body, Draft, EntryId, KINDS, Kind, Slot, Subject};
use model::medicine::Clear;
use quantity::{Answers, Asked, Checked, CivilDay, Raw, Source, Unit, Value, field, records};

use crate::body::{canonical, of_answers};
use crate::diary::Diary;
use crate::families::growing;
use crate::health::Health;

/// The kinds that a person writes down about a batch, in the order of the table of kinds. Plans are adopted and what stays
/// with the farm is kept by the plan's form.
pub fn kinds() -> impl Iterator<Item = &'static Kind> {
    KINDS.iter().filter(|kind| !asked(kind).is_empty())
}

/// The kind of a name that a person writes down.
pub fn kind(name: &str) -> Option<&'static Kind> {
    kinds().find(|kind| kind.name == name)
}

/// What a kind asks.
pub fn asked(kind: &Kind) -> Vec<Asked> {
    kind.section.map(records::of_section).unwrap_or_default()
}

/// The same, under keys without their section: `dead=3` as typed on a command line.
pub fn asked_short(kind: &Kind) -> Vec<Asked> {
    asked(kind).into_iter().map(|one| Asked { key: one.field.name(), ..one }).collect()
}

/// Checks what was typed for a kind, under whole or short keys.
pub fn check(kind: &Kind, raws: &[Raw], source: Source) -> Checked {
    let short = raws.iter().any(|raw| !raw.key.contains('.'));
    let asked = if short { asked_short(kind) } else { asked(kind) };
    let mut checked = field::check(&asked, raws, source, true);
    if checked.problems.is_empty() {
        checked.problems.extend(together(kind, &asked, &checked.answers));
        checked.problems.extend(side_by_side(kind, &asked, &checked.answers));
    }
    checked
}

/// Of a weighing: lists that go side by side must be as long as each other, and something must have been weighed.
fn side_by_side(kind: &Kind, asked: &[Asked], answers: &Answers) -> Vec<field::Problem> {
    if kind.name != "weighing" {
        return Vec::new();
    }
    let (birds, groups) = ("weighed.weights_g", "weighed.group_weights_g");
    let [singles, crates] = [birds, groups].map(|key| answers.numbers(key).len());
    let fault = |key: &'static str, fault: field::Fault| {
        let typed = answers.get(key).map(|given| given.typed.clone()).unwrap_or_default();
        let key = asked.iter().find(|one| one.field.key == key).map_or(key, |one| one.key);
        field::Problem { key: key.to_owned(), typed, line: None, fault }
    };
    if singles + crates == 0 {
        return vec![fault(birds, field::Fault::Missing)];
    }
    let lengths = [
        ("weighed.group_birds", answers.numbers("weighed.group_birds").len(), groups, crates),
        ("weighed.sexes", answers.words("weighed.sexes").len(), birds, singles),
        ("weighed.spots", answers.words("weighed.spots").len(), birds, singles + crates),
    ];
    // Birds of a crate must be told; words may be left out altogether.
    let wrong = lengths
        .into_iter()
        .filter(|(key, found, _, wanted)| found != wanted && (*found > 0 || *key == "weighed.group_birds"));
    wrong.map(|(key, _, other, wanted)| fault(key, as_many(other, wanted as f64))).collect()
}

/// One is wanted for each of another field's.
fn as_many(other: &'static str, wanted: f64) -> field::Fault {
    let unit = Unit::Pieces;
    field::Fault::Against { rule: "as-many", other, other_value: wanted, low: wanted, high: wanted, unit }
}

/// What is possible alone and not together.
fn together(kind: &Kind, asked: &[Asked], answers: &Answers) -> Vec<field::Problem> {
    let pairs: &[(&str, &'static str, &'static str)] = &[
        ("at-most", "deaths.small_weak", "deaths.dead"),
        ("at-most", "deaths.smothered", "deaths.dead"),
        ("at-most", "deaths.legs", "deaths.dead"),
        ("at-most", "deaths.sudden", "deaths.dead"),
        ("at-most", "deaths.sick", "deaths.dead"),
        ("at-most", "deaths.predator", "deaths.dead"),
        ("at-most", "deaths.transport", "deaths.dead"),
        ("at-most", "placed.dead_on_arrival", "placed.counted"),
        ("at-most", "placed.weak_culled", "placed.counted"),
        ("at-most", "crop_fill.full", "crop_fill.felt"),
        ("at-most", "house_air.coldest_c", "house_air.warmest_c"),
        ("at-most", "house_air.driest_percent", "house_air.dampest_percent"),
        ("at-most", "sensor_day.least", "sensor_day.most"),
        ("at-most", "order.least_kg", "order.most_kg"),
    ];
    let mine =
        pairs.iter().filter(|(_, key, _)| kind.section == key.split_once('.').map(|(section, _)| section));
    mine.filter_map(|(rule, key, other)| {
        let (value, other_value) = (answers.number(key)?, answers.number(other)?);
        let one = asked.iter().find(|one| one.field.key == *key)?;
        (value > other_value).then(|| field::Problem {
            key: one.key.to_owned(),
            typed: answers.get(key).map(|given| given.typed.clone()).unwrap_or_default(),
            line: answers.get(key).and_then(|given| given.line),
            fault: field::Fault::Against {
                rule,
                other,
                other_value,
                low: f64::NEG_INFINITY,
                high: other_value,
                unit: one.field.unit().unwrap_or(Unit::One),
            },
        })
    })
    .collect()
}

/// Something that can be true and most likely is not; it is asked about and, when confirmed, kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// Which doubt; names a message.
    pub name: &'static str,
    /// The field it is about.
    pub key: &'static str,
    /// What was typed, and what it is held against, in the order the message names them.
    pub numbers: Vec<(&'static str, f64, Unit)>,
}

/// What is unlikely about an entry, given what the batch's book says so far: the slips that growers make.
///
/// Ranges of single answers are asked about by the check already; this is what only the book can tell.
pub fn asks(diary: &Diary, kind: &Kind, day: CivilDay, answers: &Answers) -> Vec<Ask> {
    let context = Context { diary, day, answers, alive: alive_before(diary, day) };
    match kind.name {
        "deaths" => [context.more_dead_than_alive(), context.running_total()].into_iter().flatten().collect(),
        "feed-given" => context.feed_too_much().into_iter().collect(),
        "water" => context.water_too_little().into_iter().collect(),
        "weighing" => context.weight_far_off().into_iter().collect(),
        "sale" | "birds-out" => {
            let doubts =
                [context.more_gone_than_alive(kind), context.wait_not_over(kind), context.sold_for_nothing()];
            doubts.into_iter().flatten().collect()
        }
        "batch-closed" => context.birds_not_accounted().into_iter().collect(),
        _ => Vec::new(),
    }
}

/// Grams of feed a bird and day that no broiler eats: practice takes 300 for kilograms typed as bags (common practice).
const FEED_A_BIRD_MOST_G: f64 = 300.0;

/// Water is drunk at 1.5 times the feed at least; less is a leak the other way, a block, or a tank that was not counted
/// (common practice).
const WATER_TO_FEED_LEAST: f64 = 1.5;

/// A mean weight below or above so many times the standard of the day is a slip of the unit more often than a bird.
const WEIGHT_OFF: (f64, f64) = (0.4, 1.8);

struct Context<'a> {
    diary: &'a Diary,
    day: CivilDay,
    answers: &'a Answers,
    /// Birds alive before this day, as written.
    alive: Option<f64>,
}

impl Context<'_> {
    fn more_dead_than_alive(&self) -> Option<Ask> {
        let gone =
            self.answers.number("deaths.dead")? + self.answers.number("deaths.culled").unwrap_or_default();
        let alive = self.alive.filter(|alive| gone > *alive)?;
        Some(ask(
            "more-dead-than-alive",
            "deaths.dead",
            vec![("typed", gone, Unit::Birds), ("alive", alive, Unit::Birds)],
        ))
    }

    /// Three days that only rise, slowly, and above what is expected of a day: a running total was typed.
    fn running_total(&self) -> Option<Ask> {
        let dead = self.answers.number("deaths.dead")?;
        let before = |days: i32| {
            let note = self.diary.on_day("deaths", self.day.plus_days(-days)).last()?;
            note.number("dead")
        };
        let (yesterday, earlier) = (before(1)?, before(2)?);
        let rises = earlier > 0.0 && earlier < yesterday && yesterday < dead;
        let slowly = dead - yesterday <= 0.5 * yesterday;
        let expected = self.diary.answers.by_day(growing::EXPECTED_LOST);
        let expected = expected.and_then(|days| days.get(&self.diary.age(self.day)?).copied());
        let many = expected.is_none_or(|expected| dead > 2.0 * expected.max(1.0));
        (rises && slowly && many).then(|| {
            ask(
                "running-total",
                "deaths.dead",
                vec![("typed", dead, Unit::Birds), ("yesterday", yesterday, Unit::Birds)],
            )
        })
    }

    fn feed_too_much(&self) -> Option<Ask> {
        let feed = self.answers.number("feed_given.feed_kg")?;
        let each = 1000.0 * feed / self.alive.filter(|alive| *alive > 0.0)?;
        (each > FEED_A_BIRD_MOST_G).then(|| {
            ask(
                "feed-too-much",
                "feed_given.feed_kg",
                vec![("typed", feed, Unit::Kilogram), ("each", each, Unit::Gram)],
            )
        })
    }

    fn water_too_little(&self) -> Option<Ask> {
        let water = self.answers.number("water_drunk.water_l")?;
        let feed: f64 =
            self.diary.on_day("feed-given", self.day).filter_map(|note| note.number("feed_kg")).sum();
        (feed > 0.0 && water < WATER_TO_FEED_LEAST * feed).then(|| {
            ask(
                "water-too-little",
                "water_drunk.water_l",
                vec![("typed", water, Unit::Litre), ("feed", feed, Unit::Kilogram)],
            )
        })
    }

    fn weight_far_off(&self) -> Option<Ask> {
        let age = self.diary.age(self.day)?;
        let curve = crate::families::growth::curve(&self.diary.answers)?;
        let standard = curve.weight(quantity::DayOfAge(age))?.in_grams();
        let mean = mean_weight(self.answers)?;
        let off = mean < WEIGHT_OFF.0 * standard || mean > WEIGHT_OFF.1 * standard;
        off.then(|| {
            ask(
                "weight-far-off",
                "weighed.weights_g",
                vec![("typed", mean, Unit::Gram), ("standard", standard, Unit::Gram)],
            )
        })
    }

    fn more_gone_than_alive(&self, kind: &Kind) -> Option<Ask> {
        let key = if kind.name == "sale" { "sold.birds" } else { "birds_out.birds" };
        let gone = self.answers.number(key)?;
        let alive = self.alive.filter(|alive| gone > *alive)?;
        Some(ask(
            "more-gone-than-alive",
            key,
            vec![("typed", gone, Unit::Birds), ("alive", alive, Unit::Birds)],
        ))
    }

    /// What brings nothing is no sale: birds that are given away or eaten at home are birds that left.
    fn sold_for_nothing(&self) -> Option<Ask> {
        let income = self.answers.number("sold.income").filter(|income| *income <= 0.0)?;
        Some(ask("sold-for-nothing", "sold.income", vec![("typed", income, Unit::Money)]))
    }

    /// A batch is closed with as many birds left as the book has alive.
    fn birds_not_accounted(&self) -> Option<Ask> {
        let typed = self.answers.number("batch_closed.birds_left")?;
        let alive = alive_before(self.diary, self.day.plus_days(1)).filter(|alive| *alive != typed)?;
        Some(ask(
            "birds-not-accounted",
            "batch_closed.birds_left",
            vec![("typed", typed, Unit::Birds), ("alive", alive, Unit::Birds)],
        ))
    }

    /// Birds that leave to be eaten before the wait after a medicine is over.
    fn wait_not_over(&self, kind: &Kind) -> Option<Ask> {
        let eaten = self.answers.choice("birds_out.why").is_none_or(|why| why != "stolen");
        let key = if kind.name == "sale" { "sold.birds" } else { "birds_out.birds" };
        let health = Health::of(self.diary);
        let holding = health.holding(self.day);
        let last = holding.iter().map(|wait| wait.withdrawal.clear()).max_by_key(|clear| match clear {
            Clear::On { day, hour } => (0, Some(*day), *hour),
            Clear::Unknown => (1, None, 0),
        });
        match last.filter(|_| eaten)? {
            Clear::On { day, hour } => Some(ask(
                "wait-not-over",
                key,
                vec![("day", f64::from(day.number()), Unit::Date), ("hour", f64::from(hour), Unit::Hour)],
            )),
            Clear::Unknown => Some(ask("wait-unknown", key, Vec::new())),
        }
    }
}

fn ask(name: &'static str, key: &'static str, numbers: Vec<(&'static str, f64, Unit)>) -> Ask {
    Ask { name, key, numbers }
}

/// Mean weight of the birds of a weighing as typed, bird by bird or in groups.
fn mean_weight(answers: &Answers) -> Option<f64> {
    let birds = answers.numbers("weighed.weights_g");
    if !birds.is_empty() {
        return model::weighing::mean(birds);
    }
    let (weights, counts) =
        (answers.numbers("weighed.group_weights_g"), answers.numbers("weighed.group_birds"));
    let count: f64 = counts.iter().sum();
    (count > 0.0).then(|| weights.iter().sum::<f64>() / count)
}

/// Birds alive when a day begins, by what is written of the days before.
pub fn alive_before(diary: &Diary, day: CivilDay) -> Option<f64> {
    let placed = diary.answers.number(growing::PLACED)?;
    let age = diary.age(day)?;
    let gone = |key: &str| -> f64 {
        let days = diary.answers.by_day(key);
        days.map_or(0.0, |days| days.range(..age).map(|(_, birds)| birds).sum())
    };
    Some(placed - gone(growing::LOST) - gone(growing::LEFT))
}

/// The draft of an entry about a batch, from answers that hold.
pub fn draft(id: EntryId, kind: &Kind, batch: BatchId, day: CivilDay, answers: &Answers) -> Draft {
    Draft::new(id, kind.name, Subject::Batch(batch), day, of_answers(answers))
}

/// The slot that an entry of a kind about a day fills; `None` for kinds of which each entry counts.
pub fn slot(kind: &Kind, batch: BatchId, day: CivilDay, body: &Body) -> Option<Slot> {
    let book::Counting::OneASlot(span) = kind.counting else { return None };
    let part = span.part.and_then(|key| body.get(key)).map(|answer| match answer.value.as_str() {
        Some(word) => word.to_owned(),
        None => answer.value.to_string(),
    });
    Some(Slot { kind: kind.name, subject: Subject::Batch(batch), day: span.each_day.then_some(day), part })
}

/// Whether two bodies say the same, however it was typed.
pub fn says_the_same(one: &Body, other: &Body) -> bool {
    one.len() == other.len()
        && one.iter().all(|(key, answer)| other.get(key).is_some_and(|known| known.value == answer.value))
}

/// Kinds of one entry a day whose numbers are amounts: what two people wrote of one day can be the halves of it.
const AMOUNTS: [&str; 4] = ["deaths", "feed-given", "water", "fuel-burnt"];

/// What several people wrote of one thing taken together: the numbers added, the rest as the first said it. `None` for kinds
/// whose numbers are no amounts.
pub fn sum(kind: &Kind, bodies: &[&Body]) -> Option<Body> {
    if !AMOUNTS.contains(&kind.name) || bodies.len() < 2 {
        return None;
    }
    let mut sum = Body::new();
    for (key, answer) in bodies.iter().flat_map(|body| body.iter()) {
        match sum.get_mut(key) {
            None => {
                sum.insert(key.clone(), answer.clone());
            }
            Some(known) => {
                if let Some((one, other)) = known.value.as_f64().zip(answer.value.as_f64()) {
                    let sum = one + other;
                    *known =
                        book::Answer { typed: Some(sum.to_string()), value: canonical(&Value::Number(sum)) };
                }
            }
        }
    }
    Some(sum)
}

/// Answers of an entry as they were typed, under whole keys.
pub fn raws_of(kind: &Kind, body: &Body) -> Vec<Raw> {
    crate::body::raws_of(body, kind.section.unwrap_or_default())
}

/// A value that a kind's answer holds, for lists and histories.
pub fn value<'a>(answers: &'a Answers, key: &str) -> Option<&'a Value> {
    answers.get(key).map(|given| &given.value)
}
