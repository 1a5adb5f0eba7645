//! Are the chicks comfortable, and do they eat?

use advice::chicks::{CropTarget, VENT_C, Warmth, crop_standing, crop_targets};
use advice::diary::Noted;
use quantity::{CivilDay, Unit};

use super::Page;
use super::lines::Columns;
use crate::document::{Align, Block, Drawing, Level, Table};
use crate::scene::spread::Spread;
use crate::{say, show};

impl Page<'_> {
    pub(super) fn brooding(&self) -> Vec<Block> {
        if !self.walk.diary.is_placed {
            return vec![self.note("waiting-growing")];
        }
        // What can kill people stands right behind the first answer.
        let gas = vec![self.caution("heat", Level::Danger, 7)];
        let parts = [self.lying(), gas, self.crops(), self.warmth(), self.first_week()];
        parts.into_iter().flatten().collect()
    }

    /// How they lay when last looked at, and what each way of lying means.
    fn lying(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("brooding-lying")];
        let looks: Vec<&Noted> = self.looks();
        let last =
            looks.iter().rev().find_map(|note| Some((*note, Spread::from_word(note.text("spread")?)?)));
        match last {
            Some((note, spread)) => {
                blocks.push(Block::Paragraph(say!(
                    self.words,
                    "chicks-lay",
                    when = self.when(note),
                    how = self.lies(spread)
                )));
                blocks.push(self.drawn(spread));
            }
            None => blocks.push(self.note("waiting-chick-check")),
        }
        blocks.extend(self.looks_table(&looks));
        blocks.push(self.note("behaviour-first"));
        blocks.push(Block::Fold {
            title: self.words.plain("ways-of-lying"),
            blocks: Spread::ALL.into_iter().map(|spread| self.drawn(spread)).collect(),
        });
        blocks
    }

    /// Looks at the chicks and looks round the house that say how they lie, by day and hour.
    fn looks(&self) -> Vec<&Noted> {
        let says =
            |note: &&Noted| ["chick-check", "look"].contains(&note.kind) && note.text("spread").is_some();
        let mut looks: Vec<&Noted> = self.walk.diary.notes.iter().filter(says).collect();
        // A look round the house has no hour: it stands behind those of its day that have one.
        let hour = |note: &Noted| note.number("hour_h").unwrap_or(24.0);
        looks.sort_by(|one, other| {
            (one.day, hour(one)).partial_cmp(&(other.day, hour(other))).unwrap_or(std::cmp::Ordering::Equal)
        });
        looks
    }

    fn when(&self, note: &Noted) -> String {
        let day = show::day_short(note.day, self.viewer);
        match note.number("hour_h") {
            Some(hour) => say!(self.words, "day-and-hour", day = day, hour = show::short(hour, 0)),
            None => day,
        }
    }

    fn lies(&self, spread: Spread) -> String {
        self.words.plain(&format!("choice-chick-check-spread-{}", spread.word()))
    }

    fn drawn(&self, spread: Spread) -> Block {
        let alternative = self.words.plain(&format!("drawing-chicks-{}", spread.word()));
        let caption = self.words.plain(&format!("chicks-lie-{}", spread.word()));
        Block::Drawing(Drawing {
            name: match spread {
                Spread::Even => "chicks-even",
                Spread::UnderTheHeat => "chicks-under-the-heat",
                Spread::AwayFromTheHeat => "chicks-away-from-the-heat",
                Spread::ToOneSide => "chicks-to-one-side",
                Spread::Panting => "chicks-panting",
            },
            svg: spread.draw(&alternative),
            caption,
            alternative,
            data: super::lines::empty(),
            width_percent: 25,
        })
    }

    fn looks_table(&self, looks: &[&Noted]) -> Option<Block> {
        let row = |note: &&Noted| {
            let celsius = |key: &str| {
                let value = note.number(key);
                value.map_or_else(String::new, |value| show::bare(value, Unit::Celsius, 1, self.viewer))
            };
            let spread = note.text("spread").and_then(Spread::from_word);
            let lies = spread.map_or_else(String::new, |spread| self.lies(spread));
            vec![self.when(note), lies, celsius("vent_c"), celsius("at_chicks_c")]
        };
        let columns = vec![
            (self.words.plain("column-when"), Align::Start),
            (self.words.plain("column-lying"), Align::Start),
            (self.unit_title("column-vent", Unit::Celsius), Align::End),
            (self.unit_title("column-at-chicks", Unit::Celsius), Align::End),
        ];
        self.checks("looks-caption", columns, looks.iter().map(row).collect(), days_of(looks))
    }

    fn checks(
        &self,
        caption: &str,
        columns: Vec<(String, Align)>,
        rows: Vec<Vec<String>>,
        days: Vec<Option<CivilDay>>,
    ) -> Option<Block> {
        let explained_by = Vec::new();
        let caption = self.words.plain(caption);
        let table = Table { caption, columns, rows, emphasis: Vec::new(), explained_by };
        (!table.rows.is_empty()).then_some(Block::DayTable { table, days })
    }

    /// Crops against their targets, with what so few chicks can say about all.
    fn crops(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("brooding-crops")];
        let felt: Vec<CropTarget> =
            crop_targets().filter(|target| self.number(target.figure).is_some()).collect();
        match felt.last() {
            Some(last) => blocks.extend(self.crop_verdict(last)),
            None => blocks.push(self.note("waiting-crops")),
        }
        blocks.extend(self.crop_table());
        blocks.push(self.note("crops-how"));
        blocks.extend(self.rows(&[
            "chicks.crop_2h",
            "chicks.crop_4h",
            "chicks.crop_8h",
            "chicks.crop_12h",
            "chicks.crop_24h",
            "chicks.crop_48h",
        ]));
        blocks
    }

    fn crop_verdict(&self, target: &CropTarget) -> Option<Block> {
        let worked = self.walk.plan.outcome.get(target.figure)?;
        let (share, band) = (worked.figure.value.number(), worked.figure.band);
        let key = format!("crops-{}", crop_standing(share, band, target.wanted_percent).name());
        Some(Block::Paragraph(say!(
            self.words,
            &key,
            hours = show::short(target.hours, 0),
            share = self.value(target.figure)?,
            wanted = show::quantity(target.wanted_percent, Unit::Percent, 0, self.viewer),
            range = self.range(target.figure),
        )))
    }

    fn crop_table(&self) -> Option<Block> {
        let row = |target: CropTarget| {
            let felt = self.walk.diary.answers.number(target.felt);
            let text = |value: Option<String>| value.unwrap_or_else(|| self.words.plain("cell-not-written"));
            vec![
                show::quantity(target.hours, Unit::Hour, 0, self.viewer),
                show::quantity(target.wanted_percent, Unit::Percent, 0, self.viewer),
                text(felt.map(|felt| show::short(felt, 0))),
                text(self.value(target.figure)),
                self.range(target.figure),
            ]
        };
        let keys =
            ["column-hours-after", "column-crops-wanted", "column-felt", "column-full", "column-of-all"];
        let columns = keys.map(|key| (self.words.plain(key), Align::Start)).to_vec();
        self.checks("crops-caption", columns, crop_targets().map(row).collect(), Vec::new())
    }

    fn warmth(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("brooding-vent")];
        let celsius = |value| show::quantity(value, Unit::Celsius, 1, self.viewer);
        match self.number("chicks.vent") {
            Some(vent) => {
                let key = format!("vent-{}", Warmth::of(vent).name());
                let (low, high) = (celsius(VENT_C.0), celsius(VENT_C.1));
                let said = say!(self.words, &key, vent = celsius(vent), low = low, high = high);
                blocks.push(Block::Paragraph(said));
            }
            None => blocks.push(self.note("waiting-vent")),
        }
        blocks.push(self.note("vent-how"));
        blocks.extend(self.days_table(&Columns {
            caption: "table-vent",
            columns: &["chicks.vent_by_day"],
            every_day: false,
        }));
        blocks.extend(self.rows(&["chicks.vent"]));
        blocks
    }
}

fn days_of(notes: &[&Noted]) -> Vec<Option<CivilDay>> {
    notes.iter().map(|note| Some(note.day)).collect()
}
