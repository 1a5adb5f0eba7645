//! How is the guard cut, joined and widened?

use advice::outfit::{Counts, StandingRing};

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
            "guard.floor_taken",
            "guard.least_bend_radius",
            "guard.cost",
        ]);
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
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

    pub(super) fn draw_floor(&self, counts: Counts) -> Option<Drawing> {
        let answer = |key| self.plan.answers.number(key);
        let (length, width) = (answer("house.length_m")?, answer("house.width_m")?);
        let diameter = self.number("guard.ring_diameter")?;
        let rings = self.number("guard.rings")? as usize;
        let ring = self.plan.ring(counts).filter(|_| counts.any());
        let floor = Floor {
            length,
            width,
            rings,
            diameter,
            walkway: answer("guard.walkway_m")?,
            outfit: ring.as_ref().map(|ring| outfit::drawn(&ring.outfit)),
        };
        let alternative = self.floor_in_words(rings, length, width, ring.as_ref());
        let words = FloorWords {
            length: self.metres(length),
            width: self.metres(width),
            outfit: ring.as_ref().map(|ring| self.ring_pieces(&ring.outfit)).unwrap_or_default(),
            alternative: alternative.clone(),
        };
        let mut data = self.drawing_data(&["guard.ring_diameter", "guard.rings_that_fit"]);
        data.rows.extend(ring.iter().flat_map(|ring| self.placed_rows(&ring.outfit.placed)));
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

    fn floor_in_words(&self, rings: usize, length: f64, width: f64, ring: Option<&StandingRing>) -> String {
        let (length, width) = (self.metres(length), self.metres(width));
        let diameter =
            self.number("guard.ring_diameter").map_or_else(String::new, |across| self.metres(across));
        let (rings_count, rings) = (rings as f64, rings.to_string());
        let Some(StandingRing { outfit, .. }) = ring else {
            return say!(
                self.words,
                "drawing-floor",
                rings_count = rings_count,
                rings = rings,
                diameter = diameter,
                length = length,
                width = width,
            );
        };
        say!(
            self.words,
            "drawing-floor-outfit",
            rings_count = rings_count,
            rings = rings,
            diameter = diameter,
            length = length,
            width = width,
            feeders = outfit.placed.feeders.len().to_string(),
            tray = self.across(outfit.feeder.across),
            drinkers = outfit.placed.drinkers.len().to_string(),
            fount = self.across(outfit.drinker.across),
        )
    }

    pub(super) fn layouts(&self) -> Option<Table> {
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
