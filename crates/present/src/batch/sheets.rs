//! The sheets of a running batch that can be printed: the owner's week, an adviser's page, the slip to weigh with.

use advice::diary::Noted;
use advice::health::Health;
use advice::past::Past;
use advice::walk::Walk;
use quantity::{CivilDay, Unit};

use super::Page;
use crate::document::{Align, Blank, Block, Document, Drawing, Steps, Table};
use crate::entry::{kind_name, lines};
use crate::plan::{Shown, figure_row};
use crate::viewer::Viewer;
use crate::{health, say, show};

/// The names of the sheets, in the order in which they are offered: the last word of an address and part of a message key.
pub const BATCH_SHEETS: [&str; 7] = ["week", "adviser", "watch", "weighing", "growing", "store", "health"];

/// Days of a week's summary.
const DAYS: i32 = 7;
/// Lines of a slip, its spots, and the columns of each: room for the birds that are penned at once.
const LINES: usize = 12;
const SPOTS: usize = 3;
const COLUMNS_A_SPOT: usize = 2;
/// Vaccines and medicines that an adviser is shown, the latest.
const GIVEN: usize = 3;
/// Days of looks that an adviser is shown.
const LOOKS: i32 = 2;

/// The drawings of an adviser's page.
const DRAWN: [&str; 1] = ["grown-weight"];

/// How deaths were told apart: the keys of an entry of deaths.
const CAUSES: [&str; 7] = ["small_weak", "smothered", "legs", "sudden", "sick", "predator", "transport"];

/// The documents of a sheet; `None` for a name that is no sheet's.
pub fn batch_sheet(name: &str, walk: &Walk, past: &Past, viewer: &Viewer) -> Option<Vec<Document>> {
    let page = Page::new(walk, viewer);
    Some(vec![match name {
        "week" => page.document("sheet-week", page.week()),
        "adviser" => page.document("sheet-adviser", page.adviser(past)),
        "weighing" => page.document("sheet-weighing", page.slip()),
        "growing" => super::growing(walk, past, viewer),
        "watch" => super::watch(walk, viewer),
        "store" => super::store(walk, viewer),
        "health" => {
            Document { subtitle: page.subtitle(), ..health::document(&Health::of(&walk.diary), viewer) }
        }
        _ => return None,
    }])
}

impl Page<'_> {
    /// The last seven days for the owner, and what comes in the next.
    fn week(&self) -> Vec<Block> {
        let mut blocks = vec![Block::Table(self.days_of_the_week())];
        blocks.push(self.figures(&[
            "growing.alive",
            "growing.lost",
            "growing.losses",
            "growing.weight",
            "walk.weight_expected",
        ]));
        let next = self.next_jobs();
        if !next.items.is_empty() {
            blocks.extend([self.title("week-next"), Block::Steps(next)]);
        }
        blocks.push(self.blanks(&[("week-remarks", 100), ("week-who", 50), ("week-date", 50)]));
        blocks
    }

    fn days_of_the_week(&self) -> Table {
        let columns = ["week-day", "week-lost", "week-alive", "week-feed", "week-water", "week-air"];
        let today = self.walk.diary.on;
        let rows = (0..DAYS).rev().map(|back| self.day_row(today.plus_days(-back))).collect();
        let align = |at: usize| if at == 0 { Align::Start } else { Align::End };
        Table {
            caption: self.words.plain("week-caption"),
            columns: columns.iter().enumerate().map(|(at, key)| (self.words.plain(key), align(at))).collect(),
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    /// A day as it was written; what was not written says so and is no nothing.
    fn day_row(&self, day: CivilDay) -> Vec<String> {
        let age = self.walk.diary.age(day);
        let gap = || self.words.plain("week-gap");
        let of = |series: &str| age.and_then(|age| self.walk.plan.outcome.on_day(series, age));
        let told = |series: &str, unit: Unit| {
            of(series).map_or_else(gap, |value| show::quantity_short(value, unit, self.viewer))
        };
        let air = match (of("growing.coldest_by_day"), of("growing.warmest_by_day")) {
            (None, None) => gap(),
            (low, high) => {
                let end = |value: Option<f64>| value.map_or_else(gap, |value| show::short(value, 1));
                say!(self.words, "week-from-to", low = end(low), high = end(high))
            }
        };
        vec![
            show::day_short(day, self.viewer),
            told("growing.lost_by_day", Unit::Birds),
            told("growing.alive_by_day", Unit::Birds),
            told("growing.feed_by_day", Unit::Kilogram),
            told("growing.water_by_day", Unit::Litre),
            air,
        ]
    }

    fn next_jobs(&self) -> Steps {
        let (today, plan) = (self.walk.diary.on, Shown::new(&self.walk.plan, self.viewer));
        let next = |day: CivilDay| day > today && day <= today.plus_days(DAYS);
        let job = |task: &advice::tasks::Task| {
            let (text, why) = plan.job(task);
            (say!(self.words, "week-job", day = show::day_short(task.day, self.viewer), text = text), why)
        };
        let tasks = self.walk.plan.tasks.iter().filter(|task| next(task.day));
        Steps { ordered: false, ticks: true, items: tasks.map(job).collect() }
    }

    /// What somebody who has not seen the house wants to know first.
    fn adviser(&self, past: &Past) -> Vec<Block> {
        let mut blocks = vec![
            Block::Note(self.words.plain("adviser-note")),
            self.figures(&[
                "growing.alive",
                "growing.losses",
                "growing.weight",
                "walk.weight_expected",
                "growing.fcr",
                "growing.water_to_feed",
            ]),
        ];
        blocks.extend(self.watch_for_adviser());
        blocks.extend(self.small_drawings(past));
        blocks.extend(self.causes().map(Block::Table));
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

    /// The weight, small.
    fn small_drawings(&self, past: &Past) -> Vec<Block> {
        let drawings = self.growing(past).into_iter().filter_map(|block| match block {
            Block::Drawing(drawing) if DRAWN.contains(&drawing.name) => {
                Some(Block::Drawing(Drawing { width_percent: 40, ..drawing }))
            }
            _ => None,
        });
        drawings.collect()
    }

    /// The dead by what they looked like; `None` while nobody told them apart.
    fn causes(&self) -> Option<Table> {
        let sum = |key: &str| -> f64 {
            self.walk.diary.of_kind("deaths").filter_map(|note| note.number(key)).sum()
        };
        let rows: Vec<Vec<String>> = CAUSES
            .iter()
            .map(|key| (key, sum(key)))
            .filter(|(_, birds)| *birds > 0.0)
            .map(|(key, birds)| {
                let label = self.words.plain(&format!("field-deaths-{}", key.replace('_', "-")));
                vec![label, show::quantity(birds, Unit::Birds, 0, self.viewer)]
            })
            .collect();
        (!rows.is_empty()).then(|| Table {
            caption: self.words.plain("adviser-causes"),
            columns: vec![
                (self.words.plain("column-what"), Align::Start),
                (self.words.plain("column-value"), Align::End),
            ],
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        })
    }

    /// Entries as they were written, a line each.
    fn entries(&self, caption: &str, notes: &[&Noted]) -> Option<Block> {
        let row = |note: &&Noted| {
            let said = lines(note.kind, &note.body, self.viewer);
            let text = said.iter().map(|line| line.text.as_str()).collect::<Vec<_>>().join(", ");
            vec![show::day_short(note.day, self.viewer), kind_name(note.kind, self.viewer), text]
        };
        (!notes.is_empty()).then(|| {
            Block::Table(Table {
                caption: self.words.plain(caption),
                columns: vec![
                    (self.words.plain("week-day"), Align::Start),
                    (self.words.plain("column-what"), Align::Start),
                    (self.words.plain("column-value"), Align::Start),
                ],
                rows: notes.iter().map(row).collect(),
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            })
        })
    }

    /// The slip to take into the house, with room for every bird that is penned.
    fn slip(&self) -> Vec<Block> {
        let spot = |at: usize| (say!(self.words, "slip-spot", n = at.to_string()), Align::Line);
        let mut columns = vec![(self.words.plain("slip-bird"), Align::End)];
        columns.extend((1..=SPOTS).flat_map(|at| [spot(at), spot(at)]));
        let row = |at: usize| {
            let mut cells = vec![at.to_string()];
            cells.resize(1 + SPOTS * COLUMNS_A_SPOT, String::new());
            cells
        };
        vec![
            Block::Paragraph(self.words.plain("weigh-how")),
            self.blanks(&[("slip-scale-true", 33), ("slip-scale-shown", 33), ("slip-step", 33)]),
            Block::Table(Table {
                caption: self.words.plain("slip-caption"),
                columns,
                rows: (1..=LINES).map(row).collect(),
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            }),
            self.figures(&["growing.weight", "walk.weight_expected"]),
            self.blanks(&[("week-who", 50), ("week-date", 50)]),
        ]
    }

    /// The figures that are known among some.
    fn figures(&self, ids: &[&str]) -> Block {
        let (answers, outcome) = (&self.walk.plan.answers, &self.walk.plan.outcome);
        let known = ids.iter().filter_map(|id| outcome.get(id));
        Block::Figures(known.map(|worked| figure_row(answers, outcome, worked, self.viewer)).collect())
    }

    fn title(&self, key: &'static str) -> Block {
        Block::Heading { level: 2, text: self.words.plain(key), anchor: key }
    }

    fn blanks(&self, blanks: &[(&str, u8)]) -> Block {
        let blank = |(key, width_percent): &(&str, u8)| Blank {
            label: self.words.plain(key),
            width_percent: *width_percent,
        };
        Block::Blanks(blanks.iter().map(blank).collect())
    }
}
