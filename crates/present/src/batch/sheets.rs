//! The sheets of a batch that can be printed: those of its days here, those of its sale and its closing from their own modules.

use advice::closing::Closing;
use advice::diary::{Diary, Noted};
use advice::health::Health;
use advice::past::Past;
use advice::record::alive_before;
use advice::sale::Sale;
use advice::tasks::birds_to_weigh;
use advice::walk::Walk;
use advice::weighing::Aim;
use book::{BatchId, BookState};
use quantity::CivilDay;

use super::{Page, weighed};
use crate::document::{Align, Blank, Block, Document, Table};
use crate::entry::{Line, kind_name, lines};
use crate::plan::figure_row;
use crate::viewer::Viewer;
use crate::weighing::{self, Slip};
use crate::words::key_part;
use crate::{air_day, closing, health, sale, say, show};

/// The names of the sheets, in the order in which they are offered: the last word of an address and part of a message key.
pub const BATCH_SHEETS: [&str; 14] = [
    "week", "curtain", "adviser", "watch", "weighing", "growing", "store", "health", "sale", "catching",
    "delivery", "closing", "lender", "result",
];

/// Spots of a slip: the fewest that tell how sure a mean is.
const SPOTS: usize = 3;
/// Birds of a slip while nobody knows how many are alive (common practice).
const FEWEST_WEIGHED: f64 = 50.0;
/// Vaccines and medicines that an adviser is shown, the latest.
const GIVEN: usize = 3;
/// What of a vaccine or medicine an adviser is not shown: it stands in the book.
const NOT_SAID: [&str; 6] = [
    "vaccinated.doses",
    "vaccinated.water_l",
    "vaccinated.expires",
    "vaccinated.hour_h",
    "medicated.hour_h",
    "medicated.ordered_by",
];
/// Kinds of entries whose lines say what they are.
const SPEAKS_FOR_ITSELF: [&str; 2] = ["vaccine-given", "look"];
/// Days of looks that an adviser is shown.
const LOOKS: i32 = 2;

/// The figures that an adviser is shown.
const ADVISED: [&str; 5] =
    ["growing.alive", "growing.losses", "growing.weight", "walk.weight_expected", "growing.water_to_feed"];

/// How deaths were told apart: the keys of an entry of deaths.
const CAUSES: [&str; 7] = ["small_weak", "smothered", "legs", "sudden", "sick", "predator", "transport"];

/// The documents of a sheet of a batch's book on a day; `None` for a name that is no sheet's.
pub fn batch_sheet(
    name: &str,
    state: &BookState,
    batch: BatchId,
    on: CivilDay,
    viewer: &Viewer,
) -> Option<Vec<Document>> {
    let sale = || Sale::read(state, batch, on);
    let closing = || Closing::read(state, batch, on);
    match name {
        "sale" => return Some(vec![sale::document(&sale(), viewer)]),
        "catching" => return Some(vec![sale::catching(&sale(), viewer)]),
        "delivery" => return Some(sale::delivery(&sale(), viewer)),
        "closing" => return Some(vec![closing::document(&closing(), viewer)]),
        "lender" => return Some(vec![closing::lender(&closing(), viewer)]),
        "result" => return Some(vec![closing::wall(&closing(), viewer)]),
        _ => {}
    }
    let past = Past::read(state, batch, on);
    of_walk(name, &Walk::ahead_of(Diary::read(state, batch, on), &past), &past, viewer)
}

/// The sheets of a walk.
fn of_walk(name: &str, walk: &Walk, past: &Past, viewer: &Viewer) -> Option<Vec<Document>> {
    let page = Page::new(walk, viewer);
    let one = match name {
        "week" => page.document("sheet-week", page.week()),
        "curtain" => match air_day::tonight(walk) {
            Some(answered) => air_day::sheet(&answered, page.subtitle(), viewer),
            None => page.document("sheet-curtain", vec![page.note("air-day-no-birds")]),
        },
        "adviser" => page.document("sheet-adviser", page.adviser()),
        "weighing" => {
            return Some(std::iter::once(page.slip()).chain(weighed(&walk.diary, viewer)).collect());
        }
        "growing" => super::growing(walk, past, viewer),
        "watch" => super::watch(walk, viewer),
        "store" => super::store(walk, viewer),
        "health" => {
            Document { subtitle: page.subtitle(), ..health::document(&Health::of(&walk.diary), viewer) }
        }
        _ => return None,
    };
    Some(vec![one])
}

impl Page<'_> {
    /// What somebody who has not seen the house wants to know first.
    fn adviser(&self) -> Vec<Block> {
        let mut blocks = vec![Block::Note(self.words.plain("adviser-note")), self.figures(&ADVISED)];
        blocks.extend(self.watch_for_adviser());
        blocks.extend(self.causes());
        blocks.extend(self.withdrawal());
        let given: Vec<&Noted> = self
            .walk
            .diary
            .notes
            .iter()
            .filter(|note| matches!(note.kind, "medicine-given" | "vaccine-given"))
            .collect();
        let latest = &given[given.len().saturating_sub(GIVEN)..];
        blocks.extend(self.entries("adviser-given", latest));
        let since = self.walk.diary.on.plus_days(1 - LOOKS);
        let is_look = |note: &&Noted| {
            matches!(note.kind, "look" | "litter-check" | "power-cut" | "note") && note.day >= since
        };
        let looks: Vec<&Noted> = self.walk.diary.notes.iter().filter(is_look).collect();
        blocks.extend(self.entries("adviser-looks", &looks));
        blocks.push(self.blanks(&[("adviser-questions", 100)]));
        blocks
    }

    /// The dead by what they looked like, in a line; `None` while nobody told them apart.
    fn causes(&self) -> Option<Block> {
        let sum = |key: &str| -> f64 {
            self.walk.diary.of_kind("deaths").filter_map(|note| note.number(key)).sum()
        };
        let told: Vec<String> = CAUSES
            .iter()
            .map(|key| (key, sum(key)))
            .filter(|(_, birds)| *birds > 0.0)
            .map(|(key, birds)| {
                let key = format!("adviser-cause-{}", key_part(key));
                say!(self.words, &key, birds = show::number(birds, 0))
            })
            .collect();
        (!told.is_empty())
            .then(|| Block::Paragraph(say!(self.words, "adviser-causes", causes = told.join(", "))))
    }

    /// Whether something in them holds their sale back, in a line.
    fn withdrawal(&self) -> Option<Block> {
        match health::lead(&Health::of(&self.walk.diary), self.viewer) {
            Block::Lead { label, value, note } => Some(Block::Paragraph(say!(
                self.words,
                "adviser-withdrawal",
                label = label,
                value = value,
                note = note
            ))),
            _ => None,
        }
    }

    /// Entries as they were written, a line each.
    fn entries(&self, caption: &str, notes: &[&Noted]) -> Option<Block> {
        let row = |note: &&Noted| {
            let said = lines(note.kind, &note.body, self.viewer);
            let said = said.iter().filter(|line| !NOT_SAID.contains(&line.key));
            let text = said.map(|line| self.in_short(line)).collect::<Vec<_>>().join(", ");
            let text = if SPEAKS_FOR_ITSELF.contains(&note.kind) {
                text
            } else {
                say!(self.words, "adviser-said", kind = kind_name(note.kind, self.viewer), text = text)
            };
            vec![show::day_short(note.day, self.viewer), text]
        };
        (!notes.is_empty()).then(|| {
            Block::Table(Table {
                caption: self.words.plain(caption),
                columns: vec![
                    (self.words.plain("week-day"), Align::Start),
                    (self.words.plain("column-what"), Align::Start),
                ],
                rows: notes.iter().map(row).collect(),
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            })
        })
    }

    /// A line of an entry with as few words as it is understood by: a name or a remark speaks for itself.
    fn in_short(&self, line: &Line) -> String {
        let key = format!("adviser-{}", key_part(line.key));
        if self.words.knows(&key) {
            self.words.say(&key, &[("text", line.text.as_str().into())])
        } else {
            line.text.clone()
        }
    }

    /// The slip to take into the house, with room for every bird that is penned.
    fn slip(&self) -> Document {
        let (diary, day) = (&self.walk.diary, self.walk.diary.on);
        let alive = alive_before(diary, day);
        let slip = Slip {
            whose: &self.subtitle(),
            age_d: None,
            expected_g: Aim::on(diary, day).expected_g,
            birds: alive.map_or(FEWEST_WEIGHED, birds_to_weigh),
            spots: SPOTS,
        };
        weighing::slip(&slip, self.viewer)
    }

    /// The figures that are known among some.
    pub(crate) fn figures(&self, ids: &[&str]) -> Block {
        let (answers, outcome) = (&self.walk.plan.answers, &self.walk.plan.outcome);
        let known = ids.iter().filter_map(|id| outcome.get(id));
        Block::Figures(known.map(|worked| figure_row(answers, outcome, worked, self.viewer)).collect())
    }

    pub(super) fn title(&self, key: &'static str) -> Block {
        Block::Heading { level: 2, text: self.words.plain(key), anchor: key }
    }

    pub(super) fn blanks(&self, blanks: &[(&str, u8)]) -> Block {
        let blank = |(key, width_percent): &(&str, u8)| Blank {
            label: self.words.plain(key),
            width_percent: *width_percent,
        };
        Block::Blanks(blanks.iter().map(blank).collect())
    }
}
