//! One figure worked through for a class: the question, the working, the figures behind it, two exercises.

use advice::exercise::{self, Exercise, Weeks, WeeksAsked};
use advice::families;
use advice::rule::FigureSpec;
use quantity::{CivilDay, Figure, FigureValue, Kind, Unit};

use super::Shown;
use crate::document::{Align, Block, Document, Table, WorkingView};
use crate::words::key_part;
use crate::{say, show, working};

/// Figures that make a good lesson, the first known one taken when nobody says which.
const LESSONS: &[&str] = &["guard.true_density", "feed.bags", "space.birds_allowed"];

impl Shown<'_> {
    /// The handout on a figure; `None` when it is none of the plan's or could not be worked out.
    pub fn handout(&self, id: &str) -> Option<Document> {
        let spec = families::figure(id)?;
        let working = self.lesson(spec.id, "handout-below")?;
        let mut blocks = vec![self.heading("handout-question")];
        blocks.extend(self.lesson_drawing(spec.id));
        blocks.push(Block::Working(working));
        let exercises = exercise::exercises(&self.plan.answers, &self.plan.outcome, spec.id);
        blocks.extend(self.chain(spec.id, &exercises));
        match Weeks::of(&self.plan.outcome, spec.id) {
            Some(weeks) => blocks.extend(self.weeks_lesson(spec, &weeks)),
            None => blocks.extend(self.exercises(spec, &exercises)),
        }
        let title = say!(self.words, "sheet-handout", figure = working::label(spec.id, self.viewer));
        Some(Document { title, subtitle: self.subtitle(), blocks })
    }

    /// The handout on a figure that makes a good lesson; before anything is known, a page that says so.
    pub(super) fn usual_handout(&self) -> Document {
        LESSONS.iter().find_map(|id| self.handout(id)).unwrap_or_else(|| Document {
            title: self.words.plain("print-handout"),
            subtitle: self.subtitle(),
            blocks: vec![Block::Note(self.words.plain("handout-waiting"))],
        })
    }

    fn lesson_drawing(&self, id: &str) -> Option<Block> {
        match id.split('.').next().unwrap_or_default() {
            "guard" => self.draw_ring().map(Block::Drawing),
            "feed" => self.draw_feed(),
            "space" => self.draw_density(),
            "growth" => self.draw_weight(),
            "money" => self.draw_cash(),
            _ => None,
        }
    }

    /// A working that says where on this sheet, or that not here, the figures that went in are worked out.
    fn lesson(&self, id: &str, place: &str) -> Option<WorkingView> {
        let mut view = self.working(id)?;
        let above = self.words.plain("origin-figure");
        for input in view.inputs.iter_mut().filter(|input| input.origin == above) {
            input.origin = self.words.plain(place);
        }
        Some(view)
    }

    /// The workings of the figures that went in, one level down, and of every other figure that changes in an exercise.
    fn chain(&self, id: &str, exercises: &[Exercise]) -> Vec<Block> {
        let mut behind = exercise::figures_in(&self.plan.outcome, id);
        for on_the_way in exercises.iter().flat_map(|one| one.by_way_of.iter().copied()) {
            if !behind.contains(&on_the_way) {
                behind.push(on_the_way);
            }
        }
        let workings = behind.iter().filter_map(|id| self.lesson(id, "handout-in-plan"));
        let workings: Vec<Block> = workings.map(Block::Working).collect();
        if workings.is_empty() {
            return workings;
        }
        std::iter::once(self.heading("handout-chain")).chain(workings).collect()
    }

    fn exercises(&self, spec: &'static FigureSpec, exercises: &[Exercise]) -> Vec<Block> {
        if exercises.is_empty() || (spec.unit.is_money() && !self.viewer.money_shown) {
            return Vec::new();
        }
        let mut blocks = vec![self.heading("handout-exercises")];
        blocks.push(Block::Note(self.words.plain("handout-check")));
        let numbered = || exercises.iter().enumerate().map(|(at, one)| ((at + 1).to_string(), one));
        for (number, one) in numbered() {
            blocks.push(self.with_room(self.exercise(&number, one, spec), &[("handout-formula", 100)]));
        }
        let answer = |(number, one): (String, &Exercise)| {
            let answer = show::figure(&asked_again(one, spec), spec, self.viewer);
            say!(self.words, "handout-answer", number = number, answer = answer)
        };
        blocks.push(Block::Answers(numbered().map(answer).collect()));
        blocks
    }

    /// A figure that is added up over days: its weeks, one day worked out, and questions that the weeks answer.
    fn weeks_lesson(&self, spec: &'static FigureSpec, weeks: &Weeks) -> Vec<Block> {
        if spec.unit.is_money() && !self.viewer.money_shown {
            return Vec::new();
        }
        let label = working::label(weeks.series, self.viewer);
        let row = |(first, last, total): &(i32, i32, f64)| {
            vec![
                first.to_string(),
                last.to_string(),
                show::bare(*total, spec.unit, weeks.decimals, self.viewer),
            ]
        };
        let last_day = weeks.weeks.last().map(|week| week.1);
        let mut blocks = vec![self.heading("handout-chain")];
        blocks.extend(last_day.and_then(|day| self.day_working(weeks.series, day)).map(Block::Working));
        blocks.push(Block::Table(Table {
            caption: say!(self.words, "handout-weeks", what = label),
            columns: vec![
                (self.words.plain("handout-first-day"), Align::End),
                (self.words.plain("handout-last-day"), Align::End),
                (self.unit_title("handout-of-week", spec.unit), Align::End),
            ],
            rows: weeks.weeks.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }));
        blocks.push(self.heading("handout-exercises"));
        blocks.push(Block::Note(self.words.plain("handout-check")));
        let mut answers = Vec::new();
        for (at, asked) in weeks.asked().into_iter().enumerate() {
            let number = (at + 1).to_string();
            let (key, day) = match asked {
                WeeksAsked::Until(day) => ("handout-until", day),
                WeeksAsked::From(day) => ("handout-from", day),
            };
            let figure = working::label(spec.id, self.viewer);
            let question =
                say!(self.words, key, number = number.as_str(), day = day.to_string(), figure = figure,);
            blocks.push(self.with_room(question, &[]));
            let answer = show::quantity(weeks.answer(asked), spec.unit, weeks.decimals, self.viewer);
            answers.push(say!(self.words, "handout-answer", number = number, answer = answer));
        }
        blocks.push(Block::Answers(answers));
        blocks
    }

    /// A question with the lines to work it out on, never torn from each other by the end of a page.
    fn with_room(&self, question: String, first: &[(&str, u8)]) -> Block {
        let lines =
            [("handout-work", 100), ("wall-no-label", 100), ("wall-no-label", 55), ("handout-result", 45)];
        let blanks = self.blanks(&first.iter().copied().chain(lines).collect::<Vec<_>>());
        Block::Beside(vec![(100, vec![Block::Paragraph(question), Block::Blanks(blanks)])])
    }

    fn exercise(&self, number: &str, one: &Exercise, spec: &FigureSpec) -> String {
        let field = families::field(one.key);
        let unit = field.and_then(quantity::Field::unit).unwrap_or(Unit::One);
        let is_ratio = field.is_some_and(|field| matches!(field.kind, Kind::Ratio { .. }));
        let worded = |value: f64| match is_ratio {
            true => format!("1:{}", show::short(value, 0)),
            false => show::quantity_short(value, unit, self.viewer),
        };
        say!(
            self.words,
            "handout-exercise",
            number = number,
            field = self.words.plain(&format!("field-{}", key_part(one.key))),
            to = worded(one.to),
            from = worded(one.from),
            figure = working::label(spec.id, self.viewer),
        )
    }
}

/// The figure of an exercise, to be shown as that of the plan is.
fn asked_again(one: &Exercise, spec: &FigureSpec) -> Figure {
    let value = match spec.unit {
        Unit::Date => FigureValue::Day(CivilDay::from_number(one.answer as i32)),
        _ => FigureValue::Number(one.answer),
    };
    Figure { id: spec.id, value, band: None }
}
