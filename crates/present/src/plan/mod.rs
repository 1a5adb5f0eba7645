//! A plan as a document: the four questions of *Before the chicks*, each answered first and explained after.

use advice::finding::Weight;
use advice::outcome::{Outcome, Worked};
use advice::past::{Past, PastBatch};
use advice::plan::{Plan, Standing};
use quantity::{Answers, Status, Unit};

use crate::document::{
    Align, Block, Caution, Document, Drawing, FigureRow, FindingView, Level, Steps, Table, WorkingView,
};
use crate::scene::cutting::{Cutting, CuttingWords};
use crate::scene::floor::{Floor, FloorStep, FloorWords};
use crate::scene::ring::{Ring, RingWords};
use crate::scene::tankfuls::{TankfulWords, Tankfuls};
use crate::viewer::Viewer;
use crate::words::{Words, key_part};
use crate::{finding, say, show, working};

pub mod air;
mod air_drawn;
mod air_litter;
mod air_usual;
mod booklet;
mod countdown;
mod days;
mod disinfectant;
mod drawings;
mod feed;
mod guard;
mod handout;
mod heat;
mod litter;
mod money;
mod outfit;
mod sheets;
mod shopping;
mod since_adopted;
mod space;
mod waiting;
mod wall;
pub mod weather;

pub use money::COST_PARTS;
pub use sheets::{SHEETS, SheetKind};

/// A plan being shown to somebody.
pub struct Shown<'a> {
    plan: &'a Plan,
    viewer: &'a Viewer,
    words: &'static Words,
    /// The last batch of the house.
    past: Option<&'a PastBatch>,
}

impl<'a> Shown<'a> {
    /// A plan for a viewer.
    pub fn new(plan: &'a Plan, viewer: &'a Viewer) -> Shown<'a> {
        Shown { plan, viewer, words: viewer.words(), past: None }
    }

    /// The same beside the earlier batches of the house, of which the last is held beside what is expected.
    pub fn beside(self, past: &'a Past) -> Shown<'a> {
        Shown { past: past.batches.first(), ..self }
    }

    /// The whole plan.
    pub fn document(&self) -> Document {
        let parts = [
            self.space(),
            self.days(),
            self.guard(),
            self.heat(),
            self.equipment(),
            self.disinfectant(),
            self.litter(),
            self.feed(),
            self.water(),
            self.light(),
            self.money(),
            self.countdown(),
            self.assumed(),
        ];
        let mut blocks: Vec<Block> = parts.into_iter().flatten().collect();
        self.keep_known_workings(&mut blocks);
        Document { title: self.words.plain("page-before"), subtitle: self.subtitle(), blocks }
    }

    /// A table names the figures that explain it; those that this plan could not work out explain nothing.
    fn keep_known_workings(&self, blocks: &mut [Block]) {
        let is_known = |id: &str| self.plan.outcome.get(id).is_some() || self.plan.series(id).is_some();
        for block in blocks {
            match block {
                Block::Table(table) => table.explained_by.retain(|id| is_known(id)),
                Block::Fold { blocks, .. } | Block::Apart { blocks, .. } => self.keep_known_workings(blocks),
                _ => {}
            }
        }
    }

    /// The sheet for whoever saws and joins the guard.
    pub fn cutting_sheet(&self) -> Document {
        let lead = self.guard_lead();
        let is_known = !lead.is_empty();
        let mut blocks = if is_known { lead } else { self.lacking("waiting-guard", &waiting::GUARD) };
        blocks.push(Block::Caution(self.caution("guard", Level::Danger, 4)));
        if is_known {
            blocks.extend(self.cutting_blocks());
        }
        Document { title: self.words.plain("sheet-cutting"), subtitle: self.subtitle(), blocks }
    }

    /// How the strips are sawn and set up, and on another page where the rings stand and how they widen.
    fn cutting_blocks(&self) -> Vec<Block> {
        let whole = |drawing| Block::Drawing(Drawing { width_percent: 100, ..drawing });
        let first: Vec<Block> =
            [self.draw_cutting(), self.draw_ring()].into_iter().flatten().map(whole).collect();
        let steps = vec![Block::Steps(self.steps("cutting", 6, true))];
        let mut blocks = vec![Block::Beside(vec![(64, steps), (36, first)]), Block::PageBreak];
        let counts = self.chick_counts();
        // A little narrower, the tables below them stay on the same side of the leaf.
        let narrower = |drawing| Block::Drawing(Drawing { width_percent: 90, ..drawing });
        let floor: Vec<Block> = self.draw_floor(counts).into_iter().map(narrower).collect();
        let widening: Vec<Block> = self.draw_widening(counts).into_iter().map(narrower).collect();
        blocks.push(Block::Beside(vec![(50, floor), (50, widening)]));
        blocks.extend(self.widening().map(Block::Table));
        blocks.extend(self.layouts().map(Block::Table));
        blocks
    }

    /// The card that hangs beside the tank.
    pub fn mixing_card(&self) -> Document {
        let lead = self.mix_lead();
        let is_known = !lead.is_empty();
        let mut blocks = if is_known { lead } else { self.lacking("waiting-mix", &waiting::MIX) };
        blocks.extend(meaning(&self.plan.answers, self.viewer).map(Block::Paragraph));
        blocks.push(Block::Caution(self.caution("disinfectant", Level::Danger, 7)));
        blocks.extend(self.mix_drawing());
        if is_known {
            blocks.push(Block::Steps(self.steps("mixing", 5, false)));
        }
        blocks.extend(self.line_lead());
        if is_known {
            blocks.push(Block::PageBreak);
        }
        blocks.extend(self.overdoses().map(Block::Table));
        blocks.extend(self.order_of_work(2));
        Document { title: self.words.plain("sheet-mixing"), subtitle: self.subtitle(), blocks }
    }

    /// Every figure worked out in full, to hand to a class.
    pub fn workings(&self) -> Document {
        let views = self.plan.outcome.figures().filter_map(|worked| self.working(worked.figure.id));
        Document {
            title: self.words.plain("sheet-workings"),
            subtitle: self.subtitle(),
            blocks: views.map(Block::Working).collect(),
        }
    }

    /// Farm, house and batch.
    pub fn subtitle(&self) -> String {
        let text = |key| self.plan.answers.text(key).filter(|text| !text.is_empty());
        let names = [text("farm.name"), text("house.name"), text("batch.name")];
        let mut parts: Vec<String> = names.into_iter().flatten().map(str::to_owned).collect();
        if let (Some(chicks), Some(day)) =
            (self.plan.answers.number("batch.chicks"), self.plan.answers.day("batch.placement"))
        {
            let chicks = show::quantity(chicks, Unit::Chicks, 0, self.viewer);
            parts.push(say!(self.words, "chicks-on-day", chicks = chicks, day = show::day(day, self.viewer)));
        }
        parts.join(" · ")
    }

    fn heading(&self, key: &'static str) -> Block {
        Block::Heading { level: 2, text: self.words.plain(key), anchor: key }
    }

    fn value(&self, id: &str) -> Option<String> {
        self.plan.outcome.get(id).map(|worked| show::figure(&worked.figure, worked.spec, self.viewer))
    }

    fn number(&self, id: &str) -> Option<f64> {
        self.plan.outcome.number(id)
    }

    fn working(&self, id: &str) -> Option<WorkingView> {
        working::view(&self.plan.answers, &self.plan.outcome, id, self.viewer)
    }

    /// Those of the figures that could be worked out.
    fn rows(&self, ids: &[&'static str]) -> Option<Block> {
        let rows: Vec<FigureRow> = ids
            .iter()
            .filter_map(|id| self.plan.outcome.get(id))
            .map(|worked| figure_row(&self.plan.answers, &self.plan.outcome, worked, self.viewer))
            .collect();
        (!rows.is_empty()).then_some(Block::Figures(rows))
    }

    /// Findings whose field lies in one of the sections, or is named itself.
    fn findings(&self, places: &[&str]) -> Vec<Block> {
        let in_places = |field: Option<&str>| {
            let field = field.unwrap_or_default();
            let section = field.split('.').next().unwrap_or_default();
            places.contains(&section) || places.contains(&field)
        };
        self.plan
            .findings
            .iter()
            .filter(|finding| in_places(finding.field))
            .map(|finding| Block::Finding(finding::view(finding, &self.plan.outcome, self.viewer)))
            .collect()
    }

    /// Every finding in words, for JSON and summaries.
    pub fn finding_views(&self) -> Vec<FindingView> {
        let view = |found| finding::view(found, &self.plan.outcome, self.viewer);
        self.plan.findings.iter().map(view).collect()
    }

    fn steps(&self, list: &str, count: usize, ticks: bool) -> Steps {
        let keys = (1..=count).flat_map(|at| self.keys_of_step(format!("step-{list}-{at}")));
        let why = |key: &str| self.words.attribute(key, "why", &[]).unwrap_or_default();
        let items = keys.map(|key| (self.step_text(&key), why(&key))).collect();
        Steps { ordered: true, ticks, items }
    }

    /// A step as the floor asks for it: earth has other words for some, and more to do behind some.
    fn keys_of_step(&self, key: String) -> Vec<String> {
        if !self.is_on_earth() {
            return vec![key];
        }
        let (instead, then) = (format!("{key}-earth"), format!("{key}-earth-then"));
        let first = if self.words.knows(&instead) { instead } else { key };
        [Some(first), Some(then).filter(|key| self.words.knows(key))].into_iter().flatten().collect()
    }

    fn is_on_earth(&self) -> bool {
        self.plan.answers.choice("house.floor") == Some("earth")
    }

    /// How the house is made ready.
    fn order_of_work(&self, level: u8) -> [Block; 2] {
        let text = self.words.plain("order-of-work");
        [
            Block::Heading { level, text, anchor: "order-of-work" },
            Block::Steps(self.steps("readying", 14, true)),
        ]
    }

    /// Steps name the amounts of this plan, or say where to find them.
    fn step_text(&self, key: &str) -> String {
        let amount = match key {
            "step-readying-2" => self.value("disinfectant.soak_product"),
            "step-readying-12" => self.value("litter.spread_date"),
            _ => Some(String::new()),
        };
        if let Some(text) = self.words.attribute(key, "unknown", &[]).filter(|_| amount.is_none()) {
            return text;
        }
        let or_label = |id: &str| self.value(id).unwrap_or_else(|| self.words.plain("as-the-label-says"));
        let contact = self.plan.answers.number("disinfectant.contact_min").map_or_else(
            || self.words.plain("as-the-label-says"),
            |minutes| show::quantity(minutes, Unit::Minute, 0, self.viewer),
        );
        let tank = self
            .plan
            .answers
            .number("disinfectant.sprayer_l")
            .map_or_else(String::new, |litres| show::quantity_short(litres, Unit::Litre, self.viewer));
        say!(
            self.words,
            key,
            contact = contact,
            tank = tank,
            dose = or_label("disinfectant.product_per_load"),
            soak = or_label("disinfectant.soak_product"),
            tub = self.plan.answers.number("disinfectant.soak_l").map_or_else(
                || self.words.plain("the-tub"),
                |litres| show::quantity_short(litres, Unit::Litre, self.viewer),
            ),
            strips_count = self.number("guard.strips").unwrap_or_default(),
            each_count = self.number("guard.strips_per_ring").unwrap_or_default(),
            strips = or_label("guard.strips"),
            each = or_label("guard.strips_per_ring"),
            height = or_label("guard.strip_height"),
            overlap = self.overlap_to_set(),
            open = self.open_overlap(),
            spread = or_label("litter.spread_date"),
        )
    }

    fn drawing_data(&self, ids: &[&'static str]) -> Table {
        let rows = ids
            .iter()
            .filter_map(|id| match advice::families::figure(id) {
                Some(_) => Some(vec![working::label(id, self.viewer), self.value(id)?]),
                None => {
                    let label = self.words.plain(&format!("field-{}", key_part(id)));
                    Some(vec![label, show::short(self.plan.answers.number(id)?, 2)])
                }
            })
            .collect();
        Table {
            caption: String::new(),
            columns: vec![
                (self.words.plain("column-what"), Align::Start),
                (self.words.plain("column-value"), Align::End),
            ],
            rows,
            emphasis: Vec::new(),
            explained_by: ids.to_vec(),
        }
    }

    /// A column title that says the unit of the numbers below it.
    fn unit_title(&self, key: &str, unit: Unit) -> String {
        self.words.say(key, &[("unit", show::viewers_unit_label(unit, self.viewer).into())])
    }

    fn columns(&self, keys: &[&str]) -> Vec<(String, Align)> {
        let align = |at| if at == 0 { Align::Start } else { Align::End };
        keys.iter().enumerate().map(|(at, key)| (self.words.plain(key), align(at))).collect()
    }

    fn caution(&self, about: &str, level: Level, count: usize) -> Caution {
        let items = (1..=count).map(|at| self.words.plain(&format!("caution-{about}-{at}"))).collect();
        Caution { level, title: self.words.plain(&format!("caution-{about}")), items }
    }
}

/// A figure as a row with its working.
pub(crate) fn figure_row(
    answers: &Answers,
    outcome: &Outcome,
    worked: &Worked,
    viewer: &Viewer,
) -> FigureRow {
    let id = worked.figure.id;
    FigureRow {
        id,
        label: working::label(id, viewer),
        value: show::figure(&worked.figure, worked.spec, viewer),
        note: show::band(worked.figure.band, worked.spec, viewer),
        working: working::view(answers, outcome, id, viewer),
    }
}

/// What 1:N was taken to mean, said as cups; `None` while there is no ratio.
pub(crate) fn meaning(answers: &Answers, viewer: &Viewer) -> Option<String> {
    let parts = answers.number("disinfectant.ratio")?;
    let total = answers.choice("disinfectant.ratio_means") == Some("parts-total");
    let key = if total { "meaning-parts-total" } else { "meaning-parts-water" };
    Some(say!(viewer.words(), key, parts = show::short(parts, 1)))
}

/// What was assumed.
impl Shown<'_> {
    /// Usual values taken because nothing was said.
    fn assumed(&self) -> Vec<Block> {
        let rows: Vec<Vec<String>> =
            self.assumptions().into_iter().map(|(label, value, why)| vec![label, value, why]).collect();
        if rows.is_empty() {
            return Vec::new();
        }
        let keys = ["column-what", "column-taken", "column-why"];
        vec![
            self.heading("question-assumed"),
            Block::Table(Table {
                caption: self.words.plain("assumed-caption"),
                columns: keys.iter().map(|key| (self.words.plain(key), Align::Start)).collect(),
                rows,
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            }),
        ]
    }

    fn assumptions(&self) -> Vec<(String, String, String)> {
        let usual = self.plan.answers.iter().filter_map(|(key, given)| Some((key, given, given.usual?)));
        let mut rows: Vec<(String, String, String)> = usual
            .map(|(key, given, status)| {
                let label = self.words.plain(&format!("field-{}", key_part(key)));
                let why = self.words.plain(&format!("status-{}", Status::name(status)));
                (label, crate::form::answer_text(key, &given.value, self.viewer), why)
            })
            .collect();
        if let Some(zone) = self.assumed_zone() {
            rows.push(zone);
        }
        rows
    }

    /// Days are counted by an offset from longitude: the sun's own time, to the hour.
    fn assumed_zone(&self) -> Option<(String, String, String)> {
        let hours = (self.plan.answers.number("farm.longitude_deg")? / 15.0).round();
        let sign = if hours < 0.0 { "−" } else { "+" };
        Some((
            self.words.plain("field-farm-time-zone"),
            say!(self.words, "utc-offset", hours = format!("{sign}{}", hours.abs())),
            self.words.plain("zone-from-longitude"),
        ))
    }

    /// The weightiest finding's weight, for a headline; `Note` when there is none.
    pub fn weight(&self) -> Weight {
        self.plan.findings.first().map_or(Weight::Note, |finding| finding.weight)
    }
}
