//! The batch as a line of days from the top down: what is due when, and what goes on.

use super::lettering::{LINE, SMALL, width, wrap};
use super::{Anchor, Canvas, INK, PAPER, WIDTH};

/// Something due on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Due {
    /// The day of age; before the chicks come, below zero.
    pub day: i32,
    /// What is due, in few words.
    pub label: String,
    /// Whether it must not slip: marked with a filled dot.
    pub firm: bool,
}

/// Something that goes on for some days.
#[derive(Clone, Debug, PartialEq)]
pub struct Phase {
    /// Its first day.
    pub from: i32,
    /// Its last day.
    pub to: i32,
    /// What goes on.
    pub label: String,
}

/// A day written beside the line.
#[derive(Clone, Debug, PartialEq)]
pub struct Tick {
    /// The day of age.
    pub day: i32,
    /// How it is written; a date or a day of age.
    pub label: String,
}

/// What is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Timeline {
    /// Days written beside the line, a week apart.
    pub ticks: Vec<Tick>,
    /// What is due.
    pub due: Vec<Due>,
    /// What goes on.
    pub phases: Vec<Phase>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct TimelineWords {
    /// What it shows.
    pub alternative: String,
}

const TOP: f64 = 12.0;
/// From one day to the next, where there is room to choose.
const DAY: f64 = 7.0;
/// The most for all days: beyond it they move closer.
const TALLEST: f64 = 900.0;
const MARGIN: f64 = 4.0;
/// Room for the labels of phases.
const PHASE: f64 = 92.0;
/// From one bracket to the next, where phases run at the same time.
const BRACKET: f64 = 8.0;
/// From the line of days to the labels.
const LEADER: f64 = 16.0;
/// A wider label of a tick is left out.
const WIDEST_TICK: f64 = 84.0;

/// A label in lines, with the place it belongs to and the place it got.
struct Placed {
    belongs: f64,
    top: f64,
    lines: Vec<String>,
}

impl Placed {
    /// Where the letters of its first line stand.
    fn first_line(&self) -> f64 {
        self.top + 11.0
    }

    fn bottom(&self) -> f64 {
        self.top + LINE * self.lines.len() as f64
    }
}

/// Pushes labels down until none lies on the one above it. Those given come in the order of their places.
fn push_down(labels: impl Iterator<Item = (f64, Vec<String>)>) -> Vec<Placed> {
    let mut free_from: f64 = 0.0;
    let place = |(belongs, lines): (f64, Vec<String>)| {
        let top = free_from.max(belongs - LINE / 2.0);
        free_from = top + LINE * lines.len() as f64 + 1.0;
        Placed { belongs, top, lines }
    };
    labels.map(place).collect()
}

/// Where the parts stand, from the left.
struct Across {
    /// The line of days.
    line: f64,
    /// Where labels of what is due begin.
    due: f64,
    /// The first bracket.
    bracket: f64,
    /// Where labels of phases begin.
    phase: f64,
}

/// Where the days stand, from the top.
struct Down {
    first: i32,
    last: i32,
    per_day: f64,
}

impl Down {
    fn y(&self, day: i32) -> f64 {
        TOP + (f64::from(day) - f64::from(self.first)) * self.per_day
    }

    fn middle(&self, phase: &Phase) -> f64 {
        (self.y(phase.from) + self.y(phase.to)) / 2.0
    }
}

impl Timeline {
    /// The drawing.
    pub fn draw(&self, words: &TimelineWords) -> String {
        let down = self.down();
        let mut phases = brackets(&self.phases);
        phases.sort_by(|(a, _), (b, _)| down.middle(a).total_cmp(&down.middle(b)));
        let across = self.across(&phases);
        let mut due: Vec<&Due> = self.due.iter().collect();
        due.sort_by_key(|due| due.day);
        let room = across.bracket - 8.0 - across.due;
        let labels = push_down(due.iter().map(|due| (down.y(due.day), wrap(&due.label, room))));
        let room = WIDTH - MARGIN - across.phase;
        let names = push_down(phases.iter().map(|(phase, _)| (down.middle(phase), wrap(&phase.label, room))));
        let ends = labels.iter().chain(&names).map(Placed::bottom);
        let mut canvas = Canvas::new(ends.fold(down.y(down.last), f64::max) + TOP);
        canvas.line([across.line, down.y(down.first)], [across.line, down.y(down.last)], 2.0, None);
        self.draw_ticks(&mut canvas, &across, &down);
        for (due, label) in due.iter().zip(&labels) {
            draw_due(&mut canvas, &across, due, label);
        }
        for ((phase, lane), name) in phases.iter().zip(&names) {
            let x = across.bracket + BRACKET * *lane as f64;
            draw_bracket(&mut canvas, x, down.y(phase.from), down.y(phase.to));
            canvas.line([x, name.belongs], [across.phase - 3.0, name.first_line() - 4.0], 0.75, None);
            draw_lines(&mut canvas, across.phase, name);
        }
        canvas.finish(&words.alternative)
    }

    fn down(&self) -> Down {
        let days = self.ticks.iter().map(|tick| tick.day).chain(self.due.iter().map(|due| due.day));
        let days = days.chain(self.phases.iter().flat_map(|phase| [phase.from, phase.to]));
        let ends = days.fold(None, |ends: Option<(i32, i32)>, day| {
            let (first, last) = ends.unwrap_or((day, day));
            Some((first.min(day), last.max(day)))
        });
        let (first, last) = ends.unwrap_or((0, 0));
        let span = (f64::from(last) - f64::from(first)).max(1.0);
        Down { first, last, per_day: DAY.min(TALLEST / span) }
    }

    fn across(&self, phases: &[(&Phase, usize)]) -> Across {
        let ticks = self.ticks.iter().map(|tick| width(&tick.label, SMALL)).fold(0.0, f64::max);
        let line = MARGIN + ticks.min(WIDEST_TICK) + 8.0;
        let lanes = phases.iter().map(|(_, lane)| lane + 1).max().unwrap_or(0);
        let (phase, bracket) = match lanes {
            0 => (WIDTH, WIDTH),
            _ => (WIDTH - PHASE, WIDTH - PHASE - BRACKET * lanes as f64 - 4.0),
        };
        Across { line, due: line + LEADER, bracket, phase }
    }

    /// Days beside the line; one that would touch the one above it keeps its tick and loses its label.
    fn draw_ticks(&self, canvas: &mut Canvas, across: &Across, down: &Down) {
        let mut ticks: Vec<&Tick> = self.ticks.iter().collect();
        ticks.sort_by_key(|tick| tick.day);
        let mut free_from = f64::MIN;
        for tick in ticks {
            let y = down.y(tick.day);
            canvas.line([across.line - 5.0, y], [across.line, y], 1.0, None);
            let label = wrap(&tick.label, WIDEST_TICK);
            if y >= free_from && label.len() == 1 {
                canvas.letters([across.line - 8.0, y + 4.0], &tick.label, Anchor::End, SMALL);
                free_from = y + LINE;
            }
        }
    }
}

/// Phases with the lane of their brackets: the nearest to the labels that is free.
fn brackets(phases: &[Phase]) -> Vec<(&Phase, usize)> {
    let mut phases: Vec<&Phase> = phases.iter().collect();
    phases.sort_by_key(|phase| (phase.from, phase.to));
    let mut taken_to: Vec<i32> = Vec::new();
    let mut placed = Vec::new();
    for phase in phases {
        let last = phase.to.max(phase.from);
        let free = taken_to.iter().position(|to| *to <= phase.from);
        let lane = free.unwrap_or(taken_to.len());
        match taken_to.get_mut(lane) {
            Some(to) => *to = last,
            None => taken_to.push(last),
        }
        placed.push((phase, lane));
    }
    placed
}

/// The dot on its day, the label, and a line between them.
fn draw_due(canvas: &mut Canvas, across: &Across, due: &Due, label: &Placed) {
    let fill = if due.firm { INK } else { PAPER };
    let text = [across.due - 3.0, label.first_line() - 4.0];
    canvas.line([across.line, label.belongs], text, 0.75, None);
    canvas.circle([across.line, label.belongs, 3.5], fill, 1.2, None);
    draw_lines(canvas, across.due, label);
}

fn draw_bracket(canvas: &mut Canvas, x: f64, from: f64, to: f64) {
    // Phases that follow one another leave a gap between their brackets.
    let (from, to) = if to - from > 4.0 { (from + 1.0, to - 1.0) } else { (from, to) };
    canvas.polyline(&[[x - 5.0, from], [x, from], [x, to], [x - 5.0, to]], 1.8, None);
}

fn draw_lines(canvas: &mut Canvas, x: f64, label: &Placed) {
    for (at, line) in label.lines.iter().enumerate() {
        canvas.letters([x, label.first_line() + LINE * at as f64], line, Anchor::Start, SMALL);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn due(day: i32, label: &str) -> Due {
        Due { day, label: label.into(), firm: day == 0 }
    }

    fn phase(from: i32, to: i32, label: &str) -> Phase {
        Phase { from, to, label: label.into() }
    }

    fn words() -> TimelineWords {
        TimelineWords { alternative: "The batch, day by day".into() }
    }

    fn weeks() -> Vec<Tick> {
        (-3..=7).map(|week| Tick { day: 7 * week, label: format!("Day {}", 7 * week) }).collect()
    }

    #[test]
    fn labels_of_the_same_days_are_pushed_apart() {
        let labels = (0..30).map(|at| due(at / 6, "Order the feed and say when it has to be there & paid"));
        let phases = vec![
            phase(-21, -1, "House cleaned & ready"),
            phase(-2, 14, "Brooding"),
            phase(14, 40, "Growing"),
            phase(40, 42, "Sale"),
            phase(42, 50, "Downtime <empty>"),
        ];
        let timeline = Timeline { ticks: weeks(), due: labels.collect(), phases };
        check(&timeline.draw(&words()));
    }

    #[test]
    fn any_line_of_days_can_be_drawn() {
        for timeline in [
            Timeline::default(),
            Timeline { due: vec![due(3, "Weigh")], ..Timeline::default() },
            Timeline { phases: vec![phase(5, 2, "Backwards")], ..Timeline::default() },
            Timeline { ticks: weeks(), due: vec![due(i32::MIN, ""), due(i32::MAX, "far")], phases: vec![] },
            Timeline {
                phases: (0..5).map(|at| phase(at, 30 - at, "Within one another")).collect(),
                ..Timeline::default()
            },
        ] {
            check(&timeline.draw(&words()));
        }
    }

    #[test]
    fn brackets_at_the_same_time_stand_side_by_side() {
        let phases = [phase(0, 14, "a"), phase(10, 20, "b"), phase(14, 30, "c"), phase(12, 13, "d")];
        let lanes: Vec<(&str, usize)> =
            brackets(&phases).into_iter().map(|(phase, lane)| (phase.label.as_str(), lane)).collect();
        assert_eq!(lanes, [("a", 0), ("b", 1), ("d", 2), ("c", 0)]);
    }
}
