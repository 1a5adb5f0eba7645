//! The vaccine programme of a batch against what was written as given.

use quantity::{CivilDay, DayOfAge};

use crate::diary::{Diary, Noted};
use crate::programme::{self, ArrivalDay, Flock, ProgrammeFault, VaccineDay};
use crate::record;

/// The programme, what was done of it, and what was given beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct Vaccinations {
    /// The programme.
    pub programme: Programme,
    /// Who wrote it.
    pub from: Option<String>,
    /// What was given and stands under that name in no line of the programme.
    pub beside: Vec<VaccineGiven>,
}

/// A vaccine that was given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct VaccineGiven {
    /// Its name as written.
    pub vaccine: String,
    /// The day.
    pub day: CivilDay,
}

/// The programme as far as it could be laid on the calendar.
#[derive(Clone, Debug, PartialEq)]
pub enum Programme {
    /// Nobody typed one in.
    NotWritten,
    /// It is typed in a way that cannot be read.
    Unreadable(Vec<ProgrammeFault>),
    /// Nobody said when the chicks come.
    NoChickDay,
    /// Its lines, by day.
    Laid(Vec<Line>),
}

/// One vaccination of the programme.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What the programme says.
    pub planned: VaccineDay,
    /// What became of it.
    pub standing: Standing,
}

/// What became of a vaccination.
#[derive(Clone, Debug, PartialEq)]
pub enum Standing {
    /// Given.
    Done {
        /// The day it was given.
        day: CivilDay,
        /// Days after its day; before it where negative.
        off_d: i32,
    },
    /// Given before the chicks came: it stands in the entry of their coming.
    AtHatchery,
    /// Its day is past and nothing is written.
    Late {
        /// Days since.
        days_d: i32,
    },
    /// Its day is today.
    Today,
    /// Its day comes, or the chicks have not come yet.
    Coming,
}

impl VaccineGiven {
    fn of(note: &Noted) -> VaccineGiven {
        VaccineGiven { vaccine: name(note).to_owned(), day: note.day }
    }
}

impl Vaccinations {
    /// Reads the programme and what was given out of a batch's book.
    pub fn of(diary: &Diary) -> Vaccinations {
        let written = diary.of_kind("vaccine-programme").next_back();
        let from = written.and_then(|note| note.text("from")).map(str::to_owned);
        let given: Vec<&Noted> = diary.of_kind("vaccine-given").collect();
        let days = match laid(diary, written) {
            Ok(days) => days,
            Err(programme) => {
                return Vaccinations {
                    programme,
                    from,
                    beside: given.into_iter().map(VaccineGiven::of).collect(),
                };
            }
        };
        let done = matched(&days, &given);
        let beside = (0..given.len()).filter(|note| !done.contains(&Some(*note)));
        let beside = beside.map(|note| VaccineGiven::of(given[note])).collect();
        let line = |(planned, note): (VaccineDay, Option<usize>)| {
            let standing = standing(diary, &planned, note.map(|note| given[note]));
            Line { planned, standing }
        };
        let lines = days.into_iter().zip(done).map(line).collect();
        Vaccinations { programme: Programme::Laid(lines), from, beside }
    }

    /// The lines of a programme that could be laid on the calendar.
    pub fn lines(&self) -> &[Line] {
        match &self.programme {
            Programme::Laid(lines) => lines,
            _ => &[],
        }
    }

    /// The vaccination to see to first: one of today, else the one that is latest, else the next.
    pub fn next(&self) -> Option<&Line> {
        let first = |wanted: fn(&Standing) -> bool| self.lines().iter().find(|line| wanted(&line.standing));
        first(|standing| *standing == Standing::Today)
            .or_else(|| first(|standing| matches!(standing, Standing::Late { .. })))
            .or_else(|| first(|standing| *standing == Standing::Coming))
    }
}

/// The programme on the calendar of the batch.
fn laid(diary: &Diary, written: Option<&Noted>) -> Result<Vec<VaccineDay>, Programme> {
    let written = written.ok_or(Programme::NotWritten)?;
    let arrival = written.text("arrival_day").and_then(ArrivalDay::answered);
    let (Some(lines), Some(arrival)) = (written.text("lines"), arrival) else {
        return Err(Programme::NotWritten);
    };
    let rows = programme::read(lines, arrival).map_err(Programme::Unreadable)?;
    let placement = diary.placement.ok_or(Programme::NoChickDay)?;
    Ok(programme::days(&rows, &Flock { placement, arrival, birds: birds(diary) }))
}

/// Birds to vaccinate: those alive by the book tonight, those of the plan before they came.
fn birds(diary: &Diary) -> u32 {
    let alive = record::alive_before(diary, diary.on.plus_days(1));
    let birds = alive.or_else(|| diary.answers.number("batch.chicks")).unwrap_or_default();
    birds.max(0.0).ceil() as u32
}

/// Which of the notes is each vaccination, every note at most once: a note belongs to the line of its vaccine whose day
/// lies nearest, so that the second of two doses is not taken for the first.
fn matched(days: &[VaccineDay], given: &[&Noted]) -> Vec<Option<usize>> {
    let mut done = vec![None; days.len()];
    for (note, written) in given.iter().enumerate() {
        let is_it =
            |line: &usize| done[*line].is_none() && plain(&days[*line].vaccine) == plain(name(written));
        let nearest = (0..days.len()).filter(is_it).min_by_key(|line| off(&days[*line], written).abs());
        if let Some(line) = nearest {
            done[line] = Some(note);
        }
    }
    done
}

fn off(planned: &VaccineDay, written: &Noted) -> i32 {
    written.day.days_since(planned.date)
}

fn name(written: &Noted) -> &str {
    written.text("vaccine").unwrap_or_default()
}

/// A name without what differs from one hand to the next: capitals, commas, spaces.
fn plain(name: &str) -> String {
    name.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

fn standing(diary: &Diary, planned: &VaccineDay, written: Option<&Noted>) -> Standing {
    if let Some(given) = written {
        return Standing::Done { day: given.day, off_d: off(planned, given) };
    }
    let days_d = diary.on.days_since(planned.date);
    match days_d {
        _ if !diary.is_placed => Standing::Coming,
        _ if planned.age == DayOfAge(0) && at_hatchery(diary, planned) => Standing::AtHatchery,
        ..0 => Standing::Coming,
        0 => Standing::Today,
        _ => Standing::Late { days_d },
    }
}

/// Whether the entry of the chicks' coming names the vaccine.
fn at_hatchery(diary: &Diary, planned: &VaccineDay) -> bool {
    let had = diary.of_kind("chicks-placed").filter_map(|note| note.text("vaccinated"));
    had.flat_map(|names| names.split([',', ';', '+', '/'])).any(|had| plain(had) == plain(&planned.vaccine))
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::super::make::{day, diary, noted};
    use super::*;

    const PAPER: &str = "Marek; 1; injection; 1000\nNewcastle; 8; eye-drop; 1000\n\
                         Gumboro, mild; 15; drinking water; 1000\nGumboro, mild; 22; drinking water; 1000";

    fn programme_of(lines: &str) -> Noted {
        noted("vaccine-programme", 1, &[("arrival_day", json!("1")), ("lines", json!(lines))])
    }

    fn given(on: i32, vaccine: &str) -> Noted {
        noted("vaccine-given", on, &[("vaccine", json!(vaccine))])
    }

    fn standings(on: i32, mut notes: Vec<Noted>) -> Vec<&'static str> {
        notes.insert(0, programme_of(PAPER));
        let read = Vaccinations::of(&diary(on, notes));
        let word = |line: &Line| match line.standing {
            Standing::Done { .. } => "done",
            Standing::AtHatchery => "hatchery",
            Standing::Late { .. } => "late",
            Standing::Today => "today",
            Standing::Coming => "coming",
        };
        read.lines().iter().map(word).collect()
    }

    #[test]
    fn each_line_is_due_done_or_late() {
        let hatchery = noted("chicks-placed", 1, &[("vaccinated", json!("ND, Marek"))]);
        assert_eq!(standings(7, vec![hatchery.clone()]), ["hatchery", "coming", "coming", "coming"]);
        assert_eq!(standings(8, vec![hatchery.clone()]), ["hatchery", "today", "coming", "coming"]);
        assert_eq!(
            standings(9, vec![hatchery, given(8, "newcastle")]),
            ["hatchery", "done", "coming", "coming"]
        );
        assert_eq!(standings(16, Vec::new()), ["late", "late", "late", "coming"]);
    }

    #[test]
    fn the_second_dose_is_not_taken_for_the_first() {
        assert_eq!(standings(22, vec![given(22, "GUMBORO MILD")])[2..], ["late", "done"]);
        assert_eq!(standings(16, vec![given(16, "Gumboro, mild")])[2..], ["done", "coming"]);
    }

    #[test]
    fn a_dose_given_twice_stands_beside_the_programme() {
        let notes = vec![programme_of(PAPER), given(8, "Newcastle"), given(9, "Newcastle"), given(9, "Pox")];
        let read = Vaccinations::of(&diary(10, notes));
        let beside: Vec<&str> = read.beside.iter().map(|given| given.vaccine.as_str()).collect();
        assert_eq!(beside, ["Newcastle", "Pox"]);
        assert_eq!(read.lines()[1].standing, Standing::Done { day: day(8), off_d: 0 });
    }

    #[test]
    fn what_is_due_goes_before_what_is_late_and_what_comes() {
        let next = |on: i32, notes: &[Noted]| {
            let mut all = vec![programme_of(PAPER)];
            all.extend(notes.iter().cloned());
            let read = Vaccinations::of(&diary(on, all));
            read.next().map(|line| line.planned.date)
        };
        assert_eq!(next(15, &[]), Some(day(15)));
        assert_eq!(next(16, &[]), Some(day(1)));
        assert_eq!(next(9, &[given(1, "Marek"), given(8, "Newcastle")]), Some(day(15)));
    }

    #[test]
    fn a_programme_that_cannot_be_laid_says_why() {
        let read = |notes: Vec<Noted>| Vaccinations::of(&diary(10, notes)).programme;
        assert_eq!(read(Vec::new()), Programme::NotWritten);
        assert!(
            matches!(read(vec![programme_of("Newcastle; 8")]), Programme::Unreadable(faults) if faults.len() == 1)
        );
        let mut unplaced = diary(10, vec![programme_of(PAPER)]);
        unplaced.placement = None;
        assert_eq!(Vaccinations::of(&unplaced).programme, Programme::NoChickDay);
    }

    #[test]
    fn doses_are_for_the_birds_that_are_alive() {
        let mut book = diary(8, vec![programme_of(PAPER)]);
        assert_eq!(Vaccinations::of(&book).lines()[1].planned.vials, 1);
        let more = quantity::Given {
            typed: String::new(),
            value: quantity::Value::Number(1_001.0),
            line: None,
            usual: None,
        };
        book.answers.set(crate::families::field(crate::families::growing::PLACED).unwrap(), more);
        assert_eq!(Vaccinations::of(&book).lines()[1].planned.vials, 2);
    }
}
