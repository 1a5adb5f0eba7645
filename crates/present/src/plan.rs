//! A plan as a document: the four questions of *Before the chicks*, each answered first and explained after.

use advice::finding::Weight;
use advice::outcome::{Outcome, Worked};
use advice::plan::{Plan, Standing};
use quantity::{Answers, Status, Unit};

use crate::document::{
    Align, Block, Caution, Document, Drawing, FigureRow, FindingView, Level, Steps, Table, WorkingView,
};
use crate::scene::cutting::{Cutting, CuttingWords};
use crate::scene::floor::{Floor, FloorWords};
use crate::scene::ring::{Ring, RingWords};
use crate::scene::tankfuls::{TankfulWords, Tankfuls};
use crate::viewer::Viewer;
use crate::words::{Words, key_part};
use crate::{finding, say, show, working};

/// A plan being shown to somebody.
pub struct Shown<'a> {
    plan: &'a Plan,
    viewer: &'a Viewer,
    words: &'static Words,
}

impl<'a> Shown<'a> {
    /// A plan for a viewer.
    pub fn new(plan: &'a Plan, viewer: &'a Viewer) -> Shown<'a> {
        Shown { plan, viewer, words: viewer.words() }
    }

    /// The whole plan.
    pub fn document(&self) -> Document {
        let parts = [self.space(), self.guard(), self.disinfectant(), self.litter(), self.assumed()];
        Document {
            title: self.words.plain("page-before"),
            subtitle: self.subtitle(),
            blocks: parts.into_iter().flatten().collect(),
        }
    }

    /// The sheet for whoever saws and joins the guard.
    pub fn cutting_sheet(&self) -> Document {
        let mut blocks = self.guard_lead();
        blocks.push(Block::Caution(self.caution("guard", Level::Danger, 4)));
        blocks.extend(self.draw_cutting().map(Block::Drawing));
        blocks.push(Block::Steps(self.steps("cutting", 6, true)));
        blocks.push(Block::PageBreak);
        blocks.extend([self.draw_ring(), self.draw_floor()].into_iter().flatten().map(Block::Drawing));
        blocks.extend(self.widening().map(Block::Table));
        blocks.extend(self.layouts().map(Block::Table));
        Document { title: self.words.plain("sheet-cutting"), subtitle: self.subtitle(), blocks }
    }

    /// The card that hangs beside the tank.
    pub fn mixing_card(&self) -> Document {
        let mut blocks = self.mix_lead();
        blocks.extend(meaning(&self.plan.answers, self.viewer).map(Block::Paragraph));
        blocks.push(Block::Caution(self.caution("disinfectant", Level::Danger, 7)));
        blocks.extend(self.mix_drawing());
        blocks.push(Block::Steps(self.steps("mixing", 5, false)));
        blocks.push(Block::PageBreak);
        blocks.extend(self.overdoses().map(Block::Table));
        blocks.push(Block::Heading {
            level: 2,
            text: self.words.plain("order-of-work"),
            anchor: "order-of-work",
        });
        blocks.push(Block::Steps(self.steps("readying", 14, true)));
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

    fn subtitle(&self) -> String {
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

    /// Findings whose field lies in one of the sections.
    fn findings(&self, sections: &[&str]) -> Vec<Block> {
        let in_sections = |field: Option<&str>| {
            let section = field.and_then(|field| field.split('.').next()).unwrap_or_default();
            sections.contains(&section)
        };
        self.plan
            .findings
            .iter()
            .filter(|finding| in_sections(finding.field))
            .map(|finding| Block::Finding(finding::view(finding, &self.plan.outcome, self.viewer)))
            .collect()
    }

    /// Every finding in words, for JSON and summaries.
    pub fn finding_views(&self) -> Vec<FindingView> {
        let view = |found| finding::view(found, &self.plan.outcome, self.viewer);
        self.plan.findings.iter().map(view).collect()
    }

    /// What still has to be answered before a part can be worked out.
    fn waiting(&self, key: &str) -> Block {
        Block::Note(self.words.plain(key))
    }

    fn steps(&self, list: &str, count: usize, ticks: bool) -> Steps {
        let items = (1..=count)
            .map(|at| {
                let key = format!("step-{list}-{at}");
                let text = self.step_text(&key);
                (text, self.words.attribute(&key, "why", &[]).unwrap_or_default())
            })
            .collect();
        Steps { ordered: true, ticks, items }
    }

    /// Steps name the amounts of this plan, or say where to find them.
    fn step_text(&self, key: &str) -> String {
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
            strips = or_label("guard.strips"),
            each = or_label("guard.strips_per_ring"),
            height = or_label("guard.strip_height"),
            overlap = self.overlap_to_set(),
            open = self.open_overlap(),
            spread = or_label("litter.spread_date"),
        )
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

/// Space.
impl Shown<'_> {
    fn space(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-fit")];
        blocks.push(self.space_lead().unwrap_or_else(|| self.waiting("waiting-space")));
        blocks.extend(self.findings(&["farm", "batch", "space"]));
        blocks.extend(self.rows(&[
            "space.birds_allowed",
            "space.chicks_to_order",
            "space.density_at_sale",
            "space.limit",
            "space.birds_at_sale",
            "space.weight_at_sale",
            "batch.sale_date",
            "space.last_day_that_fits",
            "space.birds_to_sell_early",
            "space.floor_area",
            "space.weight_open_house",
            "space.birds_allowed_open_house",
        ]));
        blocks
    }

    /// The verdict first, in words; the number of birds alone while the batch is not told.
    fn space_lead(&self) -> Option<Block> {
        let allowed = self.number("space.birds_allowed")?;
        let label = working::label("space.birds_allowed", self.viewer);
        let value = self.value("space.birds_allowed")?;
        let Some(birds) = self.number("space.birds_at_sale") else {
            return Some(Block::Lead { label, value, note: String::new() });
        };
        let (verdict, key) = if birds <= allowed {
            ("verdict-fits", "space-fits")
        } else {
            ("verdict-does-not-fit", "space-does-not-fit")
        };
        let note = say!(
            self.words,
            key,
            birds = self.value("space.birds_at_sale").unwrap_or_default(),
            density = self.value("space.density_at_sale").unwrap_or_default(),
            limit = self.value("space.limit").unwrap_or_default(),
            allowed = value,
        );
        let label = self.words.plain("verdict-label");
        Some(Block::Lead { label, value: self.words.plain(verdict), note })
    }
}

/// Guard.
impl Shown<'_> {
    fn guard(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-guard")];
        let lead = self.guard_lead();
        if lead.is_empty() {
            blocks.push(self.waiting("waiting-guard"));
            return blocks;
        }
        blocks.extend(lead);
        blocks.extend(self.findings(&["guard", "brooding"]));
        blocks.extend(self.guard_drawings());
        blocks.extend(self.rows(&[
            "guard.rings",
            "guard.chicks_in_ring",
            "guard.strips_per_ring",
            "guard.strips",
            "guard.sheets",
            "guard.ring_diameter",
            "guard.ring_area",
            "guard.asked_area",
            "guard.true_density",
            "guard.overlap_asked",
            "guard.strip_net",
            "guard.strip_height",
            "guard.chicks_per_ring",
            "guard.rings_without_brooder",
            "guard.rings_that_fit",
            "guard.floor_taken",
            "guard.least_bend_radius",
            "guard.cost",
        ]));
        blocks.extend(self.layouts().map(Block::Table));
        blocks.extend(self.widening().map(Block::Table));
        blocks.push(Block::Caution(self.caution("guard", Level::Danger, 4)));
        blocks
    }

    fn guard_lead(&self) -> Vec<Block> {
        let Some(rings) = self.value("guard.rings") else { return Vec::new() };
        let (Some(strips), Some(sheets)) = (self.value("guard.strips_per_ring"), self.value("guard.sheets"))
        else {
            return Vec::new();
        };
        let note = say!(
            self.words,
            "guard-lead-note",
            overlap = self.overlap_to_set(),
            asked = self.asked_density(),
            open = self.open_overlap(),
            density = self.value("guard.true_density").unwrap_or_default(),
        );
        vec![Block::Lead {
            label: self.words.plain("guard-lead-label"),
            value: say!(self.words, "guard-lead", rings = rings, strips = strips, sheets = sheets),
            note,
        }]
    }

    /// The overlap for the asked density, rounded down to the centimetre: rounded up it would crowd the chicks.
    fn overlap_to_set(&self) -> String {
        self.number("guard.overlap_asked").map_or_else(String::new, |metres| {
            show::quantity((metres * 100.0 + 1e-6).floor(), Unit::Centimetre, 0, self.viewer)
        })
    }

    fn open_overlap(&self) -> String {
        self.plan.answers.number("guard.overlap_m").map_or_else(String::new, |metres| {
            show::quantity_short(metres * 100.0, Unit::Centimetre, self.viewer)
        })
    }

    fn asked_density(&self) -> String {
        self.plan.answers.number("guard.chicks_per_m2").map_or_else(String::new, |density| {
            show::quantity_short(density, Unit::PerSquareMetre, self.viewer)
        })
    }

    fn metres(&self, value: f64) -> String {
        show::quantity(value, Unit::Metre, 2, self.viewer)
    }

    fn guard_drawings(&self) -> Vec<Block> {
        [self.draw_cutting(), self.draw_ring(), self.draw_floor()]
            .into_iter()
            .flatten()
            .map(Block::Drawing)
            .collect()
    }

    fn draw_cutting(&self) -> Option<Drawing> {
        let answer = |key| self.plan.answers.number(key);
        let (length, width) = (answer("guard.sheet_length_m")?, answer("guard.sheet_width_m")?);
        let strips = answer("guard.strips_per_sheet")?;
        let height = self.value("guard.strip_height")?;
        let (length_text, width_text) = (self.metres(length), self.metres(width));
        let alternative = say!(
            self.words,
            "drawing-cutting",
            length = &length_text,
            width = &width_text,
            strips = show::number(strips, 0),
            height = &height,
        );
        let words =
            CuttingWords { length: length_text, strip_height: height, alternative: alternative.clone() };
        Some(Drawing {
            name: "cutting",
            svg: Cutting { length, width, strips: strips as usize }.draw(&words),
            caption: self.words.plain("drawing-cutting-caption"),
            alternative,
            data: self.drawing_data(&["guard.strips_per_sheet", "guard.strip_height"]),
            width_percent: 48,
        })
    }

    fn draw_ring(&self) -> Option<Drawing> {
        let strips = self.number("guard.strips_per_ring")?;
        // Beyond some thirty strips the joins run together; the words still tell it.
        if strips > 30.0 {
            return None;
        }
        let diameter = self.number("guard.ring_diameter")?;
        let overlap = self.plan.answers.number("guard.overlap_m")?;
        let straight = self.plan.rings_have_corners();
        let alternative = say!(
            self.words,
            "drawing-ring",
            strips = show::number(strips, 0),
            overlap = self.open_overlap(),
            diameter = self.metres(diameter),
        );
        let words = RingWords {
            strips: (1..=strips as usize)
                .map(|strip| say!(self.words, "strip-number", number = strip.to_string()))
                .collect(),
            overlap: say!(self.words, "overlap-of", overlap = self.open_overlap()),
            diameter: say!(self.words, "across", diameter = self.metres(diameter)),
            alternative: alternative.clone(),
        };
        let ring = Ring {
            strips: strips as usize,
            net: self.number("guard.strip_net")?,
            overlap,
            diameter,
            straight,
        };
        Some(Drawing {
            name: "ring",
            svg: ring.draw(&words),
            caption: self.words.plain("drawing-ring-caption"),
            alternative,
            data: self.drawing_data(&["guard.strips_per_ring", "guard.ring_diameter", "guard.strip_net"]),
            width_percent: 40,
        })
    }

    fn draw_floor(&self) -> Option<Drawing> {
        let answer = |key| self.plan.answers.number(key);
        let (length, width) = (answer("house.length_m")?, answer("house.width_m")?);
        let diameter = self.number("guard.ring_diameter")?;
        let rings = self.number("guard.rings")? as usize;
        let floor = Floor { length, width, rings, diameter, walkway: answer("guard.walkway_m")? };
        let alternative = say!(
            self.words,
            "drawing-floor",
            rings = rings.to_string(),
            diameter = self.metres(diameter),
            length = self.metres(length),
            width = self.metres(width),
        );
        let words = FloorWords {
            length: self.metres(length),
            width: self.metres(width),
            alternative: alternative.clone(),
        };
        let mut data = self.drawing_data(&["guard.ring_diameter", "guard.rings_that_fit"]);
        for (at, [x, y]) in floor.centres()?.into_iter().enumerate() {
            let label = say!(self.words, "ring-number", number = (at + 1).to_string());
            let place = say!(self.words, "ring-place", x = self.metres(x), y = self.metres(y));
            data.rows.push(vec![label, place]);
        }
        Some(Drawing {
            name: "floor",
            svg: floor.draw(&words)?,
            caption: self.words.plain("drawing-floor-caption"),
            alternative,
            data,
            width_percent: 48,
        })
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

    fn layouts(&self) -> Option<Table> {
        let chosen = self.number("guard.rings");
        let layouts = &self.plan.layouts;
        let rows = layouts
            .iter()
            .map(|layout| {
                vec![
                    show::number(layout.rings, 0),
                    show::number(layout.chicks_in_ring, 0),
                    show::number(layout.strips_per_ring, 0),
                    show::number(layout.sheets, 0),
                    self.metres(layout.diameter.in_metres()),
                    show::bare(layout.true_density, Unit::PerSquareMetre, 1, self.viewer),
                ]
            })
            .collect();
        (!layouts.is_empty()).then(|| Table {
            caption: self.words.plain("layouts-caption"),
            columns: self
                .columns(&["column-rings", "column-brooder-for", "column-strips-each", "column-sheets"])
                .into_iter()
                .chain([
                    (self.words.plain("column-across"), Align::End),
                    (self.unit_title("column-true-density", Unit::PerSquareMetre), Align::End),
                ])
                .collect(),
            rows,
            emphasis: layouts
                .iter()
                .enumerate()
                .filter(|(_, layout)| Some(layout.rings) == chosen)
                .map(|(at, _)| at)
                .collect(),
            explained_by: vec![
                "guard.chicks_in_ring",
                "guard.strips_per_ring",
                "guard.sheets",
                "guard.ring_diameter",
                "guard.true_density",
            ],
        })
    }

    fn widening(&self) -> Option<Table> {
        let steps = &self.plan.widening;
        let rows = steps
            .iter()
            .map(|step| {
                let per_m2 = |density| show::bare(density, Unit::PerSquareMetre, 0, self.viewer);
                let (how, room) = match step.standing {
                    Standing::Rings { joined, overlap, chicks_per_m2 } => {
                        let centimetres = (overlap.in_centimetres() + 1e-6).floor();
                        let overlap = show::quantity(centimetres, Unit::Centimetre, 0, self.viewer);
                        let key = if joined > 1.0 { "rings-joined" } else { "rings-single" };
                        let how = say!(self.words, key, joined = show::number(joined, 0), overlap = overlap);
                        (how, per_m2(chicks_per_m2))
                    }
                    Standing::WholeHouse { chicks_per_m2 } => {
                        (self.words.plain("whole-house"), per_m2(chicks_per_m2))
                    }
                };
                let room_cm2 = 10_000.0 / step.standing.chicks_per_m2();
                let day = say!(self.words, "day-of-age", day = step.from_day.to_string());
                vec![day, how, room, show::bare(room_cm2, Unit::SquareCentimetre, 0, self.viewer)]
            })
            .collect();
        (!steps.is_empty()).then(|| Table {
            caption: self.words.plain("widening-caption"),
            columns: vec![
                (self.words.plain("column-from-day"), Align::Start),
                (self.words.plain("column-how"), Align::Start),
                (self.unit_title("column-density", Unit::PerSquareMetre), Align::End),
                (self.unit_title("column-room", Unit::SquareCentimetre), Align::End),
            ],
            rows,
            emphasis: Vec::new(),
            explained_by: vec!["guard.overlap_asked"],
        })
    }
}

/// Disinfectant.
impl Shown<'_> {
    fn disinfectant(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-mix")];
        let lead = self.mix_lead();
        if lead.is_empty() {
            blocks.push(self.waiting("waiting-mix"));
            return blocks;
        }
        blocks.extend(lead);
        blocks.push(Block::Caution(self.caution("disinfectant", Level::Danger, 7)));
        blocks.extend(self.findings(&["disinfectant", "house"]));
        blocks.extend(self.mix_drawing());
        blocks.extend(meaning(&self.plan.answers, self.viewer).map(Block::Note));
        blocks.extend(self.rows(&[
            "disinfectant.product_per_load",
            "disinfectant.product_other_meaning",
            "disinfectant.measures_per_load",
            "disinfectant.loads",
            "disinfectant.full_loads",
            "disinfectant.last_load",
            "disinfectant.product_last_load",
            "disinfectant.solution",
            "disinfectant.product",
            "disinfectant.to_buy",
            "disinfectant.strength",
            "disinfectant.true_ratio",
            "disinfectant.times_label",
            "disinfectant.extra_cost",
            "disinfectant.cost",
            "disinfectant.soak_product",
            "disinfectant.area",
            "disinfectant.floor_area",
            "disinfectant.wall_area",
            "disinfectant.half_wall_area",
            "disinfectant.curtain_area",
            "disinfectant.gable_area",
            "disinfectant.roof_area",
        ]));
        blocks.push(Block::Note(self.words.plain("areas-convention")));
        blocks.extend(self.overdoses().map(Block::Table));
        blocks.push(Block::Heading {
            level: 3,
            text: self.words.plain("order-of-work"),
            anchor: "order-of-work",
        });
        blocks.push(Block::Steps(self.steps("readying", 14, true)));
        blocks
    }

    fn mix_lead(&self) -> Vec<Block> {
        let Some(dose) = self.value("disinfectant.product_per_load") else { return Vec::new() };
        let Some(tank) = self.plan.answers.number("disinfectant.sprayer_l") else { return Vec::new() };
        let tank = show::quantity_short(tank, Unit::Litre, self.viewer);
        let mut lead = vec![Block::Lead {
            label: self.words.plain("mix-lead-label"),
            value: say!(self.words, "mix-lead", dose = dose, tank = tank),
            note: self.in_own_measure().unwrap_or_default(),
        }];
        let (loads, solution) = (self.value("disinfectant.loads"), self.value("disinfectant.solution"));
        if let Some((loads, solution)) = loads.zip(solution) {
            let to_buy = self.value("disinfectant.to_buy").unwrap_or_default();
            let text = say!(self.words, "mix-lead-note", loads = loads, solution = solution, buy = to_buy);
            lead.push(Block::Paragraph(text));
        }
        lead
    }

    /// The dose of a full tank and of half a tank in the grower's own measure.
    fn in_own_measure(&self) -> Option<String> {
        let full = self.number("disinfectant.measures_per_load")?;
        let holds = self.plan.answers.number("disinfectant.measure_ml")?;
        let name = self.plan.answers.text("disinfectant.measure_name").filter(|name| !name.is_empty());
        let name = name.map_or_else(|| self.words.plain("own-measure"), str::to_owned);
        Some(say!(
            self.words,
            "in-own-measure",
            full = show::short(full, 1),
            half = show::short(full / 2.0, 1),
            name = name,
            holds = show::quantity_short(holds, Unit::Millilitre, self.viewer),
        ))
    }

    fn mix_drawing(&self) -> Option<Block> {
        let tank_l = self.plan.answers.number("disinfectant.sprayer_l")?;
        let (full, last_l) =
            (self.number("disinfectant.full_loads")?, self.number("disinfectant.last_load")?);
        let litres = |litres| show::quantity(litres, Unit::Litre, 1, self.viewer);
        let dose = self.value("disinfectant.product_per_load")?;
        let last_dose = self.value("disinfectant.product_last_load")?;
        let alternative = say!(
            self.words,
            "drawing-tankfuls",
            full = show::number(full, 0),
            tank = litres(tank_l),
            dose = &dose,
            last = litres(last_l),
            last_dose = &last_dose,
        );
        let words = TankfulWords {
            full: [
                say!(self.words, "tanks-full", count = full, n = show::number(full, 0)),
                litres(tank_l),
                dose,
            ],
            last: [self.words.plain("tank-last"), litres(last_l), last_dose],
            alternative: alternative.clone(),
        };
        let drawing = Tankfuls { tank_l, last_l, any_full: full > 0.0 }.draw(&words);
        Some(Block::Drawing(Drawing {
            name: "tankfuls",
            svg: drawing,
            caption: self.words.plain("drawing-tankfuls-caption"),
            alternative,
            data: self.drawing_data(&[
                "disinfectant.full_loads",
                "disinfectant.product_per_load",
                "disinfectant.last_load",
                "disinfectant.product_last_load",
            ]),
            width_percent: 55,
        }))
    }

    fn overdoses(&self) -> Option<Table> {
        let pours = &self.plan.overdoses;
        let with_cost = pours.iter().all(|pour| pour.extra_cost.is_some());
        let mut columns = vec!["column-poured", "column-truly", "column-times"];
        if with_cost {
            columns.push("column-wasted");
        }
        let rows = pours
            .iter()
            .map(|pour| {
                let mut row = vec![
                    show::quantity(pour.poured_ml, Unit::Millilitre, 0, self.viewer),
                    say!(self.words, "ratio-of", parts = show::number(pour.true_ratio, 0)),
                    say!(self.words, "times-label", times = show::short(pour.times_label, 2)),
                ];
                row.extend(pour.extra_cost.filter(|_| with_cost).map(|cost| show::money(cost, self.viewer)));
                row
            })
            .collect();
        (!pours.is_empty()).then(|| Table {
            caption: self.words.plain("overdose-caption"),
            columns: self.columns(&columns),
            rows,
            emphasis: Vec::new(),
            explained_by: vec![
                "disinfectant.true_ratio",
                "disinfectant.times_label",
                "disinfectant.extra_cost",
            ],
        })
    }
}

/// Litter, and what was assumed.
impl Shown<'_> {
    fn litter(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-litter")];
        let Some(bags) = self.value("litter.bags") else {
            blocks.push(self.waiting("waiting-litter"));
            return blocks;
        };
        let volume = self.value("litter.volume").unwrap_or_default();
        let note = match self.value("litter.spread_date") {
            Some(day) => say!(self.words, "litter-lead-note", volume = volume, day = day),
            None => volume,
        };
        blocks.push(Block::Lead {
            label: working::label("litter.bags", self.viewer),
            value: say!(self.words, "litter-lead", bags = bags),
            note,
        });
        blocks.extend(self.findings(&["litter"]));
        blocks.extend(self.rows(&[
            "litter.bags",
            "litter.volume",
            "litter.mass",
            "litter.spread_date",
            "litter.cost",
        ]));
        blocks.push(Block::Caution(self.caution("litter", Level::Care, 4)));
        blocks
    }

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
