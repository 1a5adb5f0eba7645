//! What may be lost, and what matters most.

use advice::families::selling::Selling;
use quantity::Unit;

use super::RISK;
use crate::batch::Page;
use crate::document::{Align, Block, Drawing, Table};
use crate::scene::bars::{Bar, Bars, BarsWords};
use crate::{say, show};

impl Page<'_> {
    /// The chance of a loss and how bad it may get, in words and figures, and what matters most.
    pub(super) fn may_be_lost(&self, selling: &Selling) -> Vec<Block> {
        if selling.best().is_none() || !self.viewer.money_shown {
            return Vec::new();
        }
        let mut blocks = vec![self.heading("sale-risk")];
        blocks.extend(self.in_a_hundred());
        blocks.push(self.figures(RISK));
        blocks.extend(self.what_matters(selling));
        blocks
    }

    fn in_a_hundred(&self) -> Option<Block> {
        let share = self.number("risk.loss_probability")?;
        let times = (100.0 * share).round();
        let key = match times {
            0.0 => "sale-loss-hardly",
            100.0 => "sale-loss-surely",
            _ => "sale-loss-times",
        };
        let about = |id: &str| Some(show::about_money(self.number(id)?, self.viewer));
        Some(Block::Paragraph(say!(
            self.words,
            key,
            count = times,
            times = show::number(times, 0),
            tenth = about("risk.profit_tenth")?,
            worst = about("risk.expected_shortfall")?
        )))
    }

    fn what_matters(&self, selling: &Selling) -> Vec<Block> {
        let (Some((most, _)), Some(day)) = (selling.matters.first(), selling.best()) else {
            return Vec::new();
        };
        let name = |name: &str| self.words.plain(&format!("sale-luck-{name}"));
        let percent =
            |share: f64| show::quantity(100.0 * share.clamp(0.0, 1.0), Unit::Percent, 0, self.viewer);
        let bars = selling.matters.iter().map(|(luck, share)| Bar {
            label: name(luck.name()),
            value: share.with_others.max(0.0),
            start: 0.0,
            shown: say!(
                self.words,
                "sale-matters-shown",
                share = percent(share.with_others),
                error = percent(1.96 * share.with_others_error)
            ),
            total: false,
        });
        let rows = selling.matters.iter().map(|(luck, share)| {
            vec![
                name(luck.name()),
                percent(share.alone),
                percent(1.96 * share.alone_error),
                percent(share.with_others),
                percent(1.96 * share.with_others_error),
            ]
        });
        let caption = say!(self.words, "sale-matters-caption", day = self.sale_day(day.day));
        let columns = [
            ("sale-luck", Align::Start),
            ("sale-matters-alone", Align::End),
            ("sale-matters-error", Align::End),
            ("sale-matters-with", Align::End),
            ("sale-matters-error", Align::End),
        ];
        let data = Table {
            caption: caption.clone(),
            columns: columns.iter().map(|(key, align)| (self.words.plain(key), *align)).collect(),
            rows: rows.collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        };
        let alternative = say!(self.words, "sale-matters-most", what = name(most.name()));
        let words = BarsWords { title: String::new(), alternative: alternative.clone() };
        vec![
            self.heading("sale-matters"),
            Block::Paragraph(alternative.clone()),
            Block::Drawing(Drawing {
                name: "sale-matters",
                svg: Bars { bars: bars.collect() }.draw(&words),
                caption,
                alternative,
                data,
                width_percent: 60,
            }),
            self.note("sale-matters-note"),
        ]
    }
}
