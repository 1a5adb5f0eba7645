//! Batches of one house side by side, and what the next plan starts from.

use advice::side_by_side::{Beside, SideBySide, Start};
use quantity::Unit;

use crate::batch::Page;
use crate::document::{Align, Block, Drawing, Table};
use crate::scene::bars::{Bar, Bars, BarsWords};
use crate::{say, show};

impl Page<'_> {
    /// Empty while there is one batch alone.
    pub(super) fn side_by_side(&self, beside: &SideBySide) -> Vec<Block> {
        if beside.batches.len() < 2 {
            return Vec::new();
        }
        let mut blocks = vec![self.heading("closing-beside")];
        blocks.extend(self.beside_drawing(beside));
        blocks.push(Block::Table(self.beside_table(beside, self.viewer.money_shown)));
        blocks.push(self.note("closing-beside-note"));
        blocks.extend(self.starts(&beside.starts));
        blocks
    }

    fn beside_name(&self, one: &Beside) -> String {
        one.name.clone().unwrap_or_else(|| show::day_short(one.placement, self.viewer))
    }

    /// The index of each batch, which one number is for growth, survival and feed together.
    fn beside_drawing(&self, beside: &SideBySide) -> Option<Block> {
        let known: Vec<(&Beside, f64)> =
            beside.batches.iter().rev().filter_map(|one| Some((one, one.number("closing.epef")?))).collect();
        let first = known.first().filter(|_| known.len() > 1)?;
        let last = known.last()?;
        let alternative = say!(
            self.words,
            "closing-beside-drawing",
            first = self.beside_name(first.0),
            from = show::number(first.1, 0),
            last = self.beside_name(last.0),
            to = show::number(last.1, 0)
        );
        let this = beside.batches.first().map(|one| one.batch);
        let bars = known.iter().map(|(one, index)| Bar {
            label: self.beside_name(one),
            value: *index,
            start: 0.0,
            shown: show::number(*index, 0),
            total: Some(one.batch) == this,
        });
        let words = BarsWords { title: String::new(), alternative: alternative.clone() };
        Some(Block::Drawing(Drawing {
            name: "batches-beside",
            svg: Bars { bars: bars.collect() }.draw(&words),
            caption: self.words.plain("closing-beside-caption"),
            alternative,
            // The numbers stand in the table below.
            data: crate::batch::no_data(),
            width_percent: 60,
        }))
    }

    pub(super) fn beside_table(&self, beside: &SideBySide, with_money: bool) -> Table {
        let column = |one: &Beside, id: &str, decimals: u8| {
            one.number(id).map_or_else(String::new, |value| show::number(value, decimals))
        };
        type Row = (&'static str, &'static str, u8, bool);
        let rows: [Row; 7] = [
            ("closing-beside-survival", "closing.livability", 1, false),
            ("closing-beside-weight", "closing.mean_weight", 2, false),
            ("closing-beside-age", "closing.age", 0, false),
            ("closing-beside-feed", "closing.fcr", 2, false),
            ("closing-beside-index", "closing.epef", 0, false),
            ("closing-beside-cost", "closing.cost_per_kg", 2, true),
            ("closing-beside-profit", "closing.profit_per_bird", 2, true),
        ];
        let unit = show::unit_label(Unit::Money, self.viewer);
        let row = |(key, id, decimals, _): &Row| {
            let values = beside.batches.iter().map(|one| column(one, id, *decimals));
            [say!(self.words, key, unit = unit.clone())].into_iter().chain(values).collect::<Vec<String>>()
        };
        let shown = rows.iter().filter(|row| with_money || !row.3);
        let mut rows: Vec<Vec<String>> = shown.map(row).collect();
        let month = |one: &Beside| {
            let month = self.words.plain(&format!("month-{}", one.placement.month()));
            say!(self.words, "closing-beside-month", month = month, year = one.placement.year().to_string())
        };
        rows.insert(
            0,
            std::iter::once(self.words.plain("closing-beside-placed"))
                .chain(beside.batches.iter().map(month))
                .collect(),
        );
        let differs = |one: &Beside| {
            let all: Vec<String> = one
                .differs
                .iter()
                .map(|differs| self.words.plain(&format!("closing-differs-{}", differs.name())))
                .collect();
            all.join(", ")
        };
        rows.push(
            std::iter::once(self.words.plain("closing-beside-differs"))
                .chain(beside.batches.iter().map(differs))
                .collect(),
        );
        let title = |one: &Beside| (self.beside_name(one), Align::End);
        Table {
            caption: self.words.plain("closing-beside-table"),
            columns: std::iter::once((self.words.plain("column-what"), Align::Start))
                .chain(beside.batches.iter().map(title))
                .collect(),
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    fn starts(&self, starts: &[Start]) -> Vec<Block> {
        if starts.is_empty() {
            return Vec::new();
        }
        let percent = |value: f64| show::quantity(value, Unit::Percent, 1, self.viewer);
        let row = |start: &Start| {
            vec![
                self.words.plain(&format!("closing-start-{}", start.what)),
                percent(start.usual),
                percent(start.own),
                show::quantity(100.0 * start.expected.own_share, Unit::Percent, 0, self.viewer),
                percent(start.expected.value),
            ]
        };
        let end = |key: &str| (self.words.plain(key), Align::End);
        vec![
            self.heading("closing-starts"),
            Block::Table(Table {
                caption: self.words.plain("closing-starts-caption"),
                columns: vec![
                    (self.words.plain("column-what"), Align::Start),
                    end("closing-starts-usual"),
                    end("closing-starts-own"),
                    end("closing-starts-share"),
                    end("closing-starts-next"),
                ],
                rows: starts.iter().map(row).collect(),
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            }),
            self.note("closing-starts-note"),
        ]
    }
}
