//! The floor from above, with the rings where they can stand, step by step as they widen.

use super::legend::{Legend, Sample};
use super::lettering::{LINE, SMALL, wrap};
use super::outfit::{Onto, Outfit, OutfitWords};
use super::{Anchor, Canvas, PAPER, SHADE, WIDTH};

/// What is drawn; lengths in metres.
pub struct Floor {
    /// Along the ridge.
    pub length: f64,
    /// Across.
    pub width: f64,
    /// Free between rings and to the walls, at least.
    pub walkway: f64,
    /// Where a partition closes off the heated end, from the left wall.
    pub partition: Option<f64>,
    /// The rings at each step: the first is drawn large, the others small below it.
    pub steps: Vec<FloorStep>,
}

/// The rings at one step; lengths in metres.
pub struct FloorStep {
    /// Rings to place.
    pub rings: usize,
    /// Across a ring.
    pub diameter: f64,
    /// The length of floor, from the left wall, in which they are to stand where that holds them.
    pub part: f64,
    /// What stands in each ring, places from its middle; without it, a dot marks the brooder.
    pub outfit: Option<Outfit>,
    /// What stands above the floor; longer lines are broken.
    pub lines: Vec<String>,
}

/// The words on the drawing.
pub struct FloorWords {
    /// The length with its unit.
    pub length: String,
    /// The width with its unit.
    pub width: String,
    /// What the pieces in the rings are.
    pub outfit: OutfitWords,
    /// The line between the heated end and the rest.
    pub partition: String,
    /// What it shows.
    pub alternative: String,
}

/// A step with the centres of its rings.
struct Placed<'a> {
    step: &'a FloorStep,
    centres: Vec<[f64; 2]>,
}

/// How the partition is drawn.
const PARTITION: (f64, Option<&str>) = (2.5, Some("7 4"));
/// Small floors side by side.
const IN_ROW: usize = 2;
/// Room around drawings and between them.
const MARGIN: f64 = 8.0;

impl Floor {
    /// Centres of the rings of a step, in metres from the left and upper corner: straight rows spread evenly over the part
    /// they are to stand in, or over the whole floor where that part is too small; none overlapping, none nearer to another
    /// or to a wall than the walkway. `None` where so many do not fit.
    pub fn centres(&self, step: &FloorStep) -> Option<Vec<[f64; 2]>> {
        self.rows(step, step.part.min(self.length)).or_else(|| self.rows(step, self.length))
    }

    fn rows(&self, step: &FloorStep, length: f64) -> Option<Vec<[f64; 2]>> {
        let fit = |row: f64| {
            ((row - self.walkway) / (step.diameter + self.walkway) + 1e-9).floor().max(0.0) as usize
        };
        let (along, across) = (fit(length), fit(self.width));
        if along * across < step.rings || step.rings == 0 {
            return None;
        }
        // As few rows as hold them, then as even as possible.
        let rows = step.rings.div_ceil(along);
        let mut centres = Vec::new();
        let mut left = step.rings;
        for row in 0..rows {
            let in_row = left.div_ceil(rows - row);
            left -= in_row;
            let y = step.centre(self.width, row, rows);
            centres.extend((0..in_row).map(|at| [step.centre(length, at, in_row), y]));
        }
        Some(centres)
    }

    /// The drawing; `None` where the rings of no step fit.
    pub fn draw(&self, words: &FloorWords) -> Option<String> {
        let placed = self.steps.iter().filter_map(|step| Some(Placed { step, centres: self.centres(step)? }));
        let placed: Vec<Placed> = placed.collect();
        let (first, later) = placed.split_first()?;
        let pieces = placed.iter().filter_map(|placed| placed.step.outfit.as_ref());
        let pieces = pieces.map(|outfit| outfit.legend(&words.outfit)).max_by_key(Vec::len);
        let line = self.partition.map(|_| (Sample::Line(PARTITION.0, PARTITION.1), words.partition.as_str()));
        let legend = Legend::of(pieces.into_iter().flatten().chain(line));
        let ground = Ground::of(self.length, self.width, legend);
        let title = first.step.title(WIDTH - 2.0 * MARGIN);
        let top = ground.top() + LINE * title.len() as f64;
        let below = top + self.width * ground.scale() + MEASURE;
        let rows: Vec<&[Placed]> = later.chunks(IN_ROW).collect();
        let height = below + rows.iter().map(|row| self.height(row)).sum::<f64>();
        let mut canvas = Canvas::new(height);
        ground.begin_on(&mut canvas, top, &words.length, &words.width);
        write(&mut canvas, [ground.left(), ground.top()], &title);
        self.place(&mut canvas, "floor-ring", first, [ground.left(), top], ground.scale());
        let mut top = below;
        for (number, row) in rows.into_iter().enumerate() {
            let lines = most_lines(row);
            for (at, placed) in row.iter().enumerate() {
                let left = MARGIN + at as f64 * (SMALL_FLOOR + MARGIN);
                write(&mut canvas, [left, top], &placed.step.title(SMALL_FLOOR));
                let floor = [left, top + LINE * lines as f64];
                let scale = self.small_scale();
                let sides = [self.length * scale, self.width * scale];
                let metres = [0.0, 0.0, self.length, self.width];
                canvas.rect([floor[0], floor[1], sides[0], sides[1]], PAPER, Some(metres));
                let name = format!("floor-ring-{number}-{at}");
                self.place(&mut canvas, &name, placed, floor, scale);
            }
            top += self.height(row);
        }
        Some(canvas.finish(&words.alternative))
    }

    fn small_scale(&self) -> f64 {
        SMALL_FLOOR / self.length
    }

    /// How far a row of small floors reaches down, with the words above them.
    fn height(&self, row: &[Placed]) -> f64 {
        LINE * most_lines(row) as f64 + self.width * self.small_scale() + MARGIN
    }

    /// Rings and partition on a floor whose left and upper corner is there; what stands in a ring goes by a name of its own.
    fn place(
        &self,
        canvas: &mut Canvas,
        name: &str,
        Placed { step, centres }: &Placed,
        [left, top]: [f64; 2],
        scale: f64,
    ) {
        let radius = step.diameter / 2.0;
        let on_drawing = |[x, y]: [f64; 2]| [left + x * scale, top + y * scale];
        let fill = if step.outfit.is_some() { PAPER } else { SHADE };
        for centre @ [x, y] in centres {
            let at = on_drawing(*centre);
            canvas.circle([at[0], at[1], radius * scale], fill, 2.0, Some([*x, *y, radius]));
        }
        let Some((&first, others)) = centres.split_first() else { return };
        let zero = on_drawing(first);
        // All rings of a step hold the same: drawn once and shown again, the page is lighter by it.
        canvas.named(name, |canvas| match &step.outfit {
            Some(outfit) => outfit.draw(canvas, Onto { zero, metres: first, scale }),
            None => canvas.circle([zero[0], zero[1], 3.0], "#111", 1.0, None),
        });
        for centre in others {
            let at = on_drawing(*centre);
            canvas.again(name, [at[0] - zero[0], at[1] - zero[1]]);
        }
        if let Some(partition) = self.partition.filter(|_| step.part < self.length) {
            let x = left + partition * scale;
            canvas.line([x, top], [x, top + self.width * scale], PARTITION.0, PARTITION.1);
        }
    }
}

impl FloorStep {
    /// The centre of one of so many rings in a row, with equal gaps between rings and to the walls.
    fn centre(&self, row: f64, at: usize, of: usize) -> f64 {
        let gap = (row - self.diameter * of as f64) / (of as f64 + 1.0);
        gap + self.diameter / 2.0 + (self.diameter + gap) * at as f64
    }

    fn title(&self, room: f64) -> Vec<String> {
        self.lines.iter().flat_map(|line| wrap(line, room)).collect()
    }
}

/// How long a small floor is drawn.
const SMALL_FLOOR: f64 = (WIDTH - (IN_ROW as f64 + 1.0) * MARGIN) / IN_ROW as f64;

fn most_lines(row: &[Placed]) -> usize {
    row.iter().map(|placed| placed.step.title(SMALL_FLOOR).len()).max().unwrap_or(0)
}

fn write(canvas: &mut Canvas, [x, top]: [f64; 2], lines: &[String]) {
    for (at, line) in lines.iter().enumerate() {
        canvas.letters([x, top + 10.0 + LINE * at as f64], line, Anchor::Start, SMALL);
    }
}

/// Below a floor, for its length.
const MEASURE: f64 = 32.0;

/// A floor with its measures, and a legend above it.
pub(super) struct Ground {
    length: f64,
    width: f64,
    legend: Legend,
}

impl Ground {
    pub(super) fn of(length: f64, width: f64, legend: Legend) -> Ground {
        Ground { length, width, legend }
    }

    pub(super) fn left(&self) -> f64 {
        MARGIN
    }

    pub(super) fn top(&self) -> f64 {
        self.legend.height + 6.0
    }

    /// Units of drawing to the metre.
    pub(super) fn scale(&self) -> f64 {
        const RIGHT: f64 = 64.0;
        (WIDTH - self.left() - RIGHT) / self.length
    }

    /// A new canvas with the bare floor.
    pub(super) fn begin(&self, length_text: &str, width_text: &str) -> Canvas {
        let mut canvas = Canvas::new(self.top() + self.width * self.scale() + MEASURE);
        self.begin_on(&mut canvas, self.top(), length_text, width_text);
        canvas
    }

    /// The legend, and the bare floor from `top` down.
    fn begin_on(&self, canvas: &mut Canvas, top: f64, length_text: &str, width_text: &str) {
        let left = self.left();
        let (w, h) = (self.length * self.scale(), self.width * self.scale());
        self.legend.draw(canvas);
        canvas.rect([left, top, w, h], PAPER, Some([0.0, 0.0, self.length, self.width]));
        canvas.measure_across(left, left + w, top + h + 10.0, length_text);
        canvas.measure_down(left + w + 8.0, top, top + h, width_text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn step(rings: usize, diameter: f64, part: f64) -> FloorStep {
        let lines = vec![format!("From day 3: {rings} rings, and more words than fit above a small floor")];
        FloorStep { rings, diameter, part, outfit: None, lines }
    }

    fn floor(length: f64, width: f64, steps: Vec<FloorStep>) -> Floor {
        let partition = steps.iter().map(|step| step.part).find(|part| *part < length);
        Floor { length, width, walkway: 0.5, partition, steps }
    }

    fn words() -> FloorWords {
        FloorWords {
            length: "18.00 m".into(),
            width: "9.00 m".into(),
            outfit: OutfitWords::default(),
            partition: "Partition".into(),
            alternative: "The floor".into(),
        }
    }

    #[test]
    fn rings_keep_their_distance() {
        for (length, width, rings, diameter, part) in [
            (18.0, 9.0, 4, 3.72, 18.0),
            (18.0, 9.0, 8, 3.72, 18.0),
            (12.0, 7.0, 3, 2.8, 12.0),
            (30.0, 4.5, 5, 3.4, 30.0),
            (18.0, 9.0, 7, 3.0, 18.0),
            (18.0, 9.0, 6, 2.98, 11.0),
            (18.0, 9.0, 4, 2.98, 9.0),
        ] {
            let floor = floor(length, width, vec![step(rings, diameter, part)]);
            let centres = floor.centres(&floor.steps[0]).unwrap();
            assert_eq!(centres.len(), rings);
            let radius = diameter / 2.0;
            for (at, a) in centres.iter().enumerate() {
                assert!(a[0] - radius >= 0.5 - 1e-9 && a[0] + radius <= part - 0.5 + 1e-9, "{a:?}");
                assert!(a[1] - radius >= 0.5 - 1e-9 && a[1] + radius <= width - 0.5 + 1e-9, "{a:?}");
                for b in &centres[at + 1..] {
                    let apart = ((a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2)).sqrt();
                    assert!(apart >= diameter + 0.5 - 1e-9, "{a:?} {b:?}");
                }
            }
        }
    }

    #[test]
    fn rings_too_many_for_the_heated_end_stand_over_the_whole_floor() {
        let floor = floor(18.0, 9.0, vec![step(6, 2.98, 9.0)]);
        let centres = floor.centres(&floor.steps[0]).unwrap();
        assert!(centres.iter().any(|centre| centre[0] > 9.0), "{centres:?}");
        assert!(floor.draw(&words()).unwrap().contains("stroke-dasharray"), "the partition is drawn");
    }

    #[test]
    fn too_many_rings_are_not_drawn() {
        let floor = floor(18.0, 9.0, vec![step(9, 3.72, 18.0)]);
        assert!(floor.centres(&floor.steps[0]).is_none() && floor.draw(&words()).is_none());
    }

    #[test]
    fn small_floors_keep_their_words_apart() {
        for count in 1..6 {
            for (length, width) in [(18.0, 9.0), (60.0, 8.0), (8.0, 7.0)] {
                let steps = (0..count).map(|at| step(2, 1.5 + 0.2 * f64::from(at), 6.0)).collect();
                check(&floor(length, width, steps).draw(&words()).unwrap());
            }
        }
    }
}
