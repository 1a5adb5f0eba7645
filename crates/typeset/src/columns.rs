//! How wide the columns of a table are and how large its text, so that it fits the page with few broken lines.
//!
//! Planned here and not in the template: measuring every cell there took most of the time of a render.

use serde::Serialize;

use crate::world;

/// Steps down from the size wished for, tried in turn: share of the size, and space beside a cell in points.
const STEPS: [(f64, f64); 5] = [(1.0, 5.0), (0.9, 5.0), (0.8, 4.0), (0.7, 3.0), (0.6, 2.0)];

/// A point a column, so that neither kerning nor rounding breaks a word that just fits.
const SPARE: f64 = 1.0;

/// Figures of up to so many letters, such as "1 083 kg", are not broken at their spaces.
const UNBROKEN_LETTERS: usize = 14;

/// A table no wider than this many times its need: columns far apart are hard to read across.
const WIDEST_SPREAD: f64 = 1.5;

/// A row of more lines than this may be split, since it could be taller than a page. A landscape page holds about
/// twice as many.
const MOST_LINES: f64 = 15.0;

/// A column as it is to be fitted.
#[derive(Debug)]
pub(crate) struct Column<'a> {
    /// Its heading, empty where the table has none.
    pub(crate) head: &'a str,
    pub(crate) cells: Vec<&'a str>,
    /// Whether it holds figures, which are read whole.
    pub(crate) figures: bool,
}

/// Columns that fit.
#[derive(Debug, Serialize)]
pub(crate) struct Plan {
    /// Size of the text, in points.
    size: f64,
    /// Space at either side of a cell, in points.
    gap: f64,
    /// Whether even at the least size some words are wider than their column and must be broken.
    tight: bool,
    /// Widths with the space, in points.
    widths: Vec<f64>,
    /// Rows so tall that they may go on over the page; all others stay whole.
    tall: Vec<usize>,
}

impl Plan {
    /// Fits columns into the width that is there, with text of `size` if that can be (all in points).
    pub(crate) fn new(columns: &[Column], available: f64, size: f64) -> Self {
        let wishes: Vec<_> = columns.iter().map(Wish::of).collect();
        let at = |step| Self::step(&wishes, available, size, step);
        let [larger @ .., least] = STEPS;
        let mut plan = larger.map(at).into_iter().find(|plan| !plan.tight).unwrap_or_else(|| at(least));
        plan.tall = plan.tall_rows(columns);
        plan
    }

    fn step(wishes: &[Wish], available: f64, size: f64, (share, gap): (f64, f64)) -> Self {
        let size = size * share;
        let spaces = wishes.len() as f64 * 2.0 * gap;
        let scaled: Vec<_> = wishes.iter().map(|wish| wish.at(size)).collect();
        let (widths, tight) = divide(&scaled, available - spaces);
        Self {
            size,
            gap,
            tight,
            widths: widths.iter().map(|width| width + 2.0 * gap).collect(),
            tall: Vec::new(),
        }
    }

    fn tall_rows(&self, columns: &[Column]) -> Vec<usize> {
        let lines =
            |cell: &str, column: usize| width(cell) * self.size / (self.widths[column] - 2.0 * self.gap);
        let tall = |row: &usize| {
            columns.iter().enumerate().any(|(index, column)| lines(column.cells[*row], index) > MOST_LINES)
        };
        let rows = columns.iter().map(|column| column.cells.len()).min().unwrap_or_default();
        (0..rows).filter(tall).collect()
    }

    /// The same columns drawn apart evenly towards the width that is there.
    pub(crate) fn spread(mut self, available: f64) -> Self {
        let needed: f64 = self.widths.iter().sum();
        let extra = (available.min(needed * WIDEST_SPREAD) - needed).max(0.0) / self.widths.len() as f64;
        self.widths.iter_mut().for_each(|width| *width += extra);
        self
    }
}

/// Widths a column would like.
#[derive(Debug, Clone, Copy)]
struct Wish {
    /// Everything on one line.
    open: f64,
    /// The heading folded into two lines.
    folded: f64,
    /// The longest word on a line of its own.
    least: f64,
}

impl Wish {
    /// For text of one point.
    fn of(column: &Column) -> Self {
        let cells = widest(column.cells.iter().copied());
        let whole = |cell: &&str| column.figures && cell.chars().count() <= UNBROKEN_LETTERS;
        let (figures, texts): (Vec<&str>, Vec<&str>) = column.cells.iter().partition(|cell| whole(cell));
        let words = texts.into_iter().chain([column.head]).flat_map(|text| text.split(' '));
        Self {
            open: cells.max(width(column.head)),
            folded: cells.max(folded(column.head)),
            least: widest(figures.into_iter().chain(words)),
        }
    }

    fn at(self, size: f64) -> Self {
        let scale = |width: f64| width * size + SPARE;
        Self { open: scale(self.open), folded: scale(self.folded), least: scale(self.least) }
    }
}

/// Widths that fill at most `available`, and whether words must be broken for it: all on one line if that fits,
/// else headings folded, else cells wrapped too.
fn divide(wishes: &[Wish], available: f64) -> (Vec<f64>, bool) {
    let all = |pick: fn(&Wish) -> f64| wishes.iter().map(pick).collect::<Vec<_>>();
    let (open, folded, least) = (all(|wish| wish.open), all(|wish| wish.folded), all(|wish| wish.least));
    let fits = |widths: &[f64]| widths.iter().sum::<f64>() <= available;
    if fits(&open) {
        (open, false)
    } else if fits(&folded) {
        (folded, false)
    } else if fits(&least) {
        (cut(&folded, &least, available), false)
    } else {
        (cut(&folded, &vec![0.0; wishes.len()], available), true)
    }
}

/// Widths cut to one limit, but never below `floors`, so that they fill `available`: wide columns give way first.
fn cut(widths: &[f64], floors: &[f64], available: f64) -> Vec<f64> {
    let at = |limit: f64| -> Vec<f64> {
        widths.iter().zip(floors).map(|(width, floor)| width.min(limit).max(*floor)).collect()
    };
    let (mut low, mut high) = (0.0, widths.iter().copied().fold(0.0, f64::max));
    // Halving forty times leaves far less than a hair of any page.
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        if at(middle).iter().sum::<f64>() <= available { low = middle } else { high = middle }
    }
    at(low)
}

/// Width of a heading folded where its two lines come out most alike.
fn folded(head: &str) -> f64 {
    let space = width(" ");
    let words: Vec<f64> = head.split(' ').map(width).collect();
    let line = |words: &[f64]| words.iter().sum::<f64>() + space * (words.len() - 1) as f64;
    let folds = (1..words.len()).map(|at| line(&words[..at]).max(line(&words[at..])));
    folds.fold(line(&words), f64::min)
}

fn widest<'a>(texts: impl Iterator<Item = &'a str>) -> f64 {
    texts.map(width).fold(0.0, f64::max)
}

/// Width of a text of one point in bold, the widest a cell can be.
fn width(text: &str) -> f64 {
    text.chars().map(world::advance_bold).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn column<'a>(head: &'a str, cells: &[&'a str], figures: bool) -> Column<'a> {
        Column { head, cells: cells.to_vec(), figures }
    }

    fn close(left: f64, right: f64) -> bool {
        (left - right).abs() < 1e-6
    }

    #[test]
    fn columns_that_fit_get_what_they_ask_for() {
        let plan =
            Plan::new(&[column("Day", &["1", "21"], true), column("Remark", &["none"], false)], 400.0, 10.0);
        assert!(!plan.tight && close(plan.size, 10.0));
        assert!(close(plan.widths[0], width("Day") * 10.0 + SPARE + 2.0 * plan.gap));
        assert!(close(plan.widths[1], width("Remark") * 10.0 + SPARE + 2.0 * plan.gap));
    }

    #[test]
    fn a_heading_folds_before_a_cell_wraps() {
        let remark = "a remark of some words";
        let open = |columns: &[Column]| Plan::new(columns, 1000.0, 10.0).widths.iter().sum::<f64>();
        let columns = [column("Feed for the batch", &["12"], true), column("Remark", &[remark], false)];
        let plan = Plan::new(&columns, open(&columns) - 5.0, 10.0);
        assert!(close(
            plan.widths[0],
            width("Feed for").max(width("the batch")) * 10.0 + SPARE + 2.0 * plan.gap
        ));
        assert!(close(plan.widths[1], width(remark) * 10.0 + SPARE + 2.0 * plan.gap));
    }

    #[test]
    fn the_widest_column_gives_way_and_the_page_is_filled() {
        let long = "a remark of so many words that it cannot stand on a single line of any page we know";
        let plan =
            Plan::new(&[column("Day", &["1\u{a0}083 kg"], true), column("", &[long], false)], 200.0, 10.0);
        assert!(!plan.tight && close(plan.size, 10.0));
        assert!(close(plan.widths[0], width("1\u{a0}083 kg") * 10.0 + SPARE + 2.0 * plan.gap));
        assert!((plan.widths.iter().sum::<f64>() - 200.0).abs() < 1e-3);
    }

    #[test]
    fn text_shrinks_before_a_word_is_broken() {
        let columns =
            |count| -> Vec<Column> { (0..count).map(|_| column("Temperature", &["1"], true)).collect() };
        let fitting = Plan::new(&columns(7), 450.0, 10.0);
        assert!(!fitting.tight && fitting.size < 10.0 && fitting.size >= 6.0, "{fitting:?}");
        let crowded = Plan::new(&columns(20), 450.0, 10.0);
        assert!(crowded.tight && close(crowded.size, 6.0), "{crowded:?}");
        for plan in [fitting, crowded] {
            assert!(plan.widths.iter().sum::<f64>() <= 450.0 + 1e-6);
        }
    }

    #[test]
    fn only_a_row_of_many_lines_may_be_split() {
        let long = "word ".repeat(300);
        let plan = Plan::new(&[column("", &["short", &long, "two words"], false)], 300.0, 10.0);
        assert_eq!(plan.tall, [1]);
    }

    #[test]
    fn spreading_stops_at_the_width_there_is() {
        let plan = || Plan::new(&[column("a", &["b"], false), column("c", &["d"], false)], 400.0, 10.0);
        let needed: f64 = plan().widths.iter().sum();
        let total = |plan: Plan| plan.widths.iter().sum::<f64>();
        assert!(close(total(plan().spread(400.0)), needed * WIDEST_SPREAD));
        assert!(close(total(plan().spread(needed + 1.0)), needed + 1.0));
    }

    #[test]
    fn a_width_is_the_sum_of_its_letters() {
        assert!(width("il") < width("WM"));
        assert!(close(width("ab") * 2.0, width("abab")));
        assert!(close(width(""), 0.0));
    }
}
