//! How is the guard cut, joined and widened?

use advice::outfit::{Counts, StandingRing};
use advice::standing::{Against, Kind, OnFloor};

use super::*;

impl Shown<'_> {
    pub(super) fn guard(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("question-guard")];
        let lead = self.guard_lead();
        if lead.is_empty() {
            blocks.push(self.waiting("waiting-guard", &waiting::GUARD));
            return blocks;
        }
        blocks.extend(lead);
        blocks.extend(self.findings(&[
            "guard",
            "brooding.brooder",
            "brooding.brooders",
            "brooding.second_brooder",
            "brooding.second_brooders",
        ]));
        blocks.extend(self.guard_drawings());
        let rows = self.rows(&[
            "guard.rings",
            "guard.chicks_in_ring",
            "guard.strips_per_ring",
            "guard.strips",
            "guard.sheets",
            "guard.sheets_to_buy",
            "guard.ring_diameter",
            "guard.ring_area",
            "guard.asked_area",
            "guard.true_density",
            "guard.overlap_asked",
            "guard.strip_net",
            "guard.strip_height",
            "guard.chicks_per_ring",
            "guard.first_rating",
            "guard.second_rating",
            "guard.brooders_carry",
            "guard.rings_without_brooder",
            "guard.rings_that_fit",
            "guard.length_for_rings",
            "guard.floor_taken",
            "guard.first_day_radius",
            "guard.fire_to_guard",
            "guard.least_bend_radius",
            "guard.cost",
            "guard.brooders_cost",
        ]);
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
        blocks.extend(self.rings_by_kind().map(Block::Table));
        blocks.extend(self.layouts().map(Block::Table));
        blocks.extend(self.widening().map(Block::Table));
        blocks.push(Block::Caution(self.caution("guard", Level::Danger, 4)));
        blocks
    }

    /// Sheets owned and still to buy; nothing where none is owned.
    fn sheets_owned(&self) -> Option<String> {
        let owned = self.plan.answers.number("guard.sheets_owned").filter(|owned| *owned > 0.0)?;
        let buy = self.number("guard.sheets_to_buy")?;
        let key = if buy > 0.0 { "guard-sheets-lacking" } else { "guard-sheets-enough" };
        let (owned, buy) = (show::number(owned, 0), show::number(buy, 0));
        Some(say!(self.words, key, owned = owned, buy = buy))
    }

    pub(super) fn guard_lead(&self) -> Vec<Block> {
        let Some(rings) = self.value("guard.rings") else { return Vec::new() };
        let (Some(strips), Some(sheets)) = (self.value("guard.strips_per_ring"), self.value("guard.sheets"))
        else {
            return Vec::new();
        };
        if self.number("guard.overlap_asked").is_none() || self.number("guard.strip_height").is_none() {
            return Vec::new();
        }
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
            value: say!(
                self.words,
                "guard-lead",
                rings_count = self.number("guard.rings").unwrap_or_default(),
                strips_count = self.number("guard.strips_per_ring").unwrap_or_default(),
                sheets_count = self.number("guard.sheets").unwrap_or_default(),
                rings = rings,
                strips = strips,
                sheets = sheets,
            ),
            note: [Some(note), self.sheets_owned()].into_iter().flatten().collect::<Vec<_>>().join(" "),
        }]
    }

    /// The overlap for the asked density, rounded down to the centimetre: rounded up it would crowd the chicks.
    pub(super) fn overlap_to_set(&self) -> String {
        self.number("guard.overlap_asked").map_or_else(String::new, |metres| {
            show::quantity((metres * 100.0 + 1e-6).floor(), Unit::Centimetre, 0, self.viewer)
        })
    }

    pub(super) fn open_overlap(&self) -> String {
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
        [
            self.draw_cutting(),
            self.draw_ring(),
            self.draw_floor(self.chick_counts()),
            self.draw_widening(self.chick_counts()),
            self.draw_hall(self.hung_counts()),
        ]
        .into_iter()
        .flatten()
        .map(Block::Drawing)
        .collect()
    }

    pub(super) fn draw_cutting(&self) -> Option<Drawing> {
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
            strips_count = strips,
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

    pub(super) fn draw_ring(&self) -> Option<Drawing> {
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
            strips_count = strips,
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

    /// The floor with its rings at each step of widening; `None` where the rings of no step stand on it.
    pub(super) fn draw_floor(&self, counts: Counts) -> Option<Drawing> {
        let answer = |key| self.plan.answers.number(key);
        let (length, width) = (answer("house.length_m")?, answer("house.width_m")?);
        let on_floor = self.plan.on_floor();
        let rings = on_floor.iter().filter_map(|on| Some((on, self.ring_on(on, counts)?)));
        let rings: Vec<(&OnFloor, StandingRing)> = rings.collect();
        let partition = on_floor.iter().map(|on| on.part.in_metres()).find(|part| *part < length);
        let floor = Floor {
            length,
            width,
            walkway: answer("guard.walkway_m")?,
            partition,
            steps: rings.iter().map(|(on, ring)| self.floor_step(on, ring, counts)).collect(),
        };
        let in_words = rings.iter().map(|(on, ring)| {
            let what = self.floor_in_words(on, ring, counts);
            say!(self.words, "step-and-what", day = self.starting(on.from_day), what = what)
        });
        let in_words: Vec<String> = in_words.collect();
        let alternative = say!(
            self.words,
            "drawing-floor",
            length = self.metres(length),
            width = self.metres(width),
            steps = in_words.join(" "),
        );
        let words = FloorWords {
            length: self.metres(length),
            width: self.metres(width),
            outfit: rings.first().map(|(_, ring)| self.ring_pieces(&ring.outfit)).unwrap_or_default(),
            partition: partition.map_or_else(String::new, |partition| {
                say!(self.words, "drawing-floor-partition", length = self.metres(partition))
            }),
            alternative: alternative.clone(),
        };
        let svg = floor.draw(&words)?;
        let mut data = self.drawing_data(&["guard.rings_that_fit", "guard.length_for_rings"]);
        for (step, (on, ring)) in floor.steps.iter().zip(&rings) {
            let day = self.starting(on.from_day);
            data.rows.push(vec![day.clone(), self.floor_in_words(on, ring, counts)]);
            for (at, [x, y]) in floor.centres(step).into_iter().flatten().enumerate() {
                let label = say!(self.words, "ring-number", number = (at + 1).to_string());
                let place = say!(self.words, "ring-place", x = self.metres(x), y = self.metres(y));
                data.rows.push(vec![say!(self.words, "step-and-ring", day = &day, ring = label), place]);
            }
        }
        Some(Drawing {
            name: "floor",
            svg,
            caption: self.words.plain("drawing-floor-caption"),
            alternative,
            data,
            width_percent: 48,
        })
    }

    /// The ring of a step on the floor.
    fn ring_on(&self, on: &OnFloor, counts: Counts) -> Option<StandingRing> {
        let step = self.plan.widening.iter().find(|step| step.from_day == on.from_day)?;
        self.plan.widened_ring(step, counts)
    }

    fn floor_step(&self, on: &OnFloor, ring: &StandingRing, counts: Counts) -> FloorStep {
        let rings = say!(
            self.words,
            "floor-rings",
            day = self.starting(on.from_day),
            n = show::number(on.rings, 0),
            count = on.rings,
            diameter = self.metres(on.diameter.in_metres()),
        );
        FloorStep {
            rings: on.rings as usize,
            diameter: on.diameter.in_metres(),
            part: on.part.in_metres(),
            outfit: counts.any().then(|| outfit::drawn(&ring.outfit)),
            lines: [rings].into_iter().chain(self.in_heat(on)).collect(),
        }
    }

    /// How many stand in the heated end, where that is not all.
    fn in_heat(&self, on: &OnFloor) -> Option<String> {
        let fit = show::number(on.fit, 0);
        on.is_outside_the_heat().then(|| say!(self.words, "floor-rings-in-heat", fit = fit, count = on.fit))
    }

    /// A step on the floor in a sentence or two.
    fn floor_in_words(&self, on: &OnFloor, ring: &StandingRing, counts: Counts) -> String {
        let placed = &ring.outfit.placed;
        let rings = say!(
            self.words,
            "drawing-floor-step",
            n = show::number(on.rings, 0),
            count = on.rings,
            diameter = self.metres(on.diameter.in_metres()),
            brooders = placed.brooders.len().to_string(),
            brooders_count = placed.brooders.len() as f64,
            outfit = if counts.any() { "yes" } else { "no" },
            feeders = placed.feeders.len().to_string(),
            tray = self.across(ring.outfit.feeder.across),
            drinkers = placed.drinkers.len().to_string(),
            fount = self.across(ring.outfit.drinker.across),
            left = placed.left().to_string(),
            left_count = placed.left() as f64,
        );
        let without = (on.rings > on.fit_house).then(|| self.words.plain("floor-rings-too-many"));
        [Some(rings), self.in_heat(on), without].into_iter().flatten().collect::<Vec<_>>().join(" ")
    }

    pub(super) fn layouts(&self) -> Option<Table> {
        let chosen = self.number("guard.rings");
        let layouts = &self.plan.layouts;
        let notes: Vec<String> =
            layouts.iter().map(|layout| self.against(&self.plan.against(layout))).collect();
        let noted = notes.iter().any(|note| !note.is_empty());
        let rows = layouts
            .iter()
            .zip(notes)
            .map(|(layout, note)| {
                let cells = [
                    show::number(layout.rings, 0),
                    show::number(layout.chicks_in_ring, 0),
                    show::number(layout.strips_per_ring, 0),
                    show::number(layout.sheets, 0),
                    self.metres(layout.diameter.in_metres()),
                    show::bare(layout.true_density, Unit::PerSquareMetre, 1, self.viewer),
                ];
                cells.into_iter().chain(noted.then_some(note)).collect()
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
                .chain(noted.then(|| (self.words.plain("column-against"), Align::Start)))
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

    /// What speaks against a number of rings, in a few words.
    fn against(&self, against: &Against) -> String {
        let said = |speaks: bool, key| speaks.then(|| self.words.plain(key));
        let fit =
            against.fit.map(|fit| say!(self.words, "against-fit", fit = show::number(fit, 0), count = fit));
        let notes = [
            said(against.too_narrow_for_fire, "against-fire"),
            said(against.too_narrow_for_sheet, "against-sheet"),
            fit,
        ];
        notes.into_iter().flatten().collect::<Vec<_>>().join(self.words.plain("list-comma").as_str())
    }

    /// Which rings stand under which kind of brooder, where there are two.
    fn rings_by_kind(&self) -> Option<Table> {
        let rings = self.plan.rings_by_kind();
        let kind = |kind| match kind {
            Some(Kind::First) => self.kind_of_brooder("brooding.brooder", "brooder-first-kind"),
            Some(Kind::Second) => self.kind_of_brooder("brooding.second_brooder", "brooder-second-kind"),
            None => self.words.plain("brooder-none"),
        };
        let rows: Vec<Vec<String>> = rings
            .iter()
            .map(|under| vec![kind(under.kind), show::number(under.rings, 0), show::number(under.chicks, 0)])
            .collect();
        (!rows.is_empty()).then(|| Table {
            caption: self.words.plain("rings-by-kind-caption"),
            columns: self.columns(&["column-brooder", "column-rings", "column-chicks-each"]),
            rows,
            emphasis: Vec::new(),
            explained_by: vec!["guard.brooders_carry", "guard.chicks_per_ring"],
        })
    }

    fn kind_of_brooder(&self, field: &str, else_said: &str) -> String {
        let named = self.plan.answers.choice(field).filter(|kind| *kind != "other");
        named.map_or_else(
            || self.words.plain(else_said),
            |kind| self.words.plain(&format!("choice-{}-{kind}", key_part(field))),
        )
    }

    /// How the guard stands at a step, in words.
    pub(super) fn standing(&self, standing: &Standing) -> String {
        let Standing::Rings { joined, overlap, .. } = standing else {
            return self.words.plain("whole-house");
        };
        let centimetres = (overlap.in_centimetres() + 1e-6).floor();
        let overlap = show::quantity(centimetres, Unit::Centimetre, 0, self.viewer);
        let key = if *joined > 1.0 { "rings-joined" } else { "rings-single" };
        say!(self.words, key, joined = show::number(*joined, 0), overlap = overlap)
    }

    pub(super) fn widening(&self) -> Option<Table> {
        let steps = &self.plan.widening;
        let rows = steps
            .iter()
            .map(|step| {
                let density = step.standing.chicks_per_m2();
                let day = say!(self.words, "day-of-age", day = step.from_day.to_string());
                vec![
                    day,
                    self.standing(&step.standing),
                    show::bare(density, Unit::PerSquareMetre, 0, self.viewer),
                    show::bare(10_000.0 / density, Unit::SquareCentimetre, 0, self.viewer),
                ]
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
