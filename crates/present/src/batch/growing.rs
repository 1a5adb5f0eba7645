//! How are they growing?

use advice::growing::{RECENT_DAYS, first_week_losses, first_week_weight};
use advice::past::{Past, PastBatch};
use advice::weighing::{Aim, Weighing};
use quantity::Unit;

use super::Page;
use super::lines::{Columns, Lines};
use crate::document::{Block, Level};
use crate::scene::chart::Stroke;
use crate::{say, show, weighing};

const WEIGHT: Lines = Lines {
    name: "grown-weight",
    lines: &[
        ("growing.weight_by_day", Stroke::Dots),
        ("past.weight_by_day", Stroke::Dashed),
        ("expected.weight_by_day", Stroke::Solid),
        ("growth.curve", Stroke::Dotted),
    ],
    from_zero: true,
};

const GAIN: Lines = Lines {
    name: "grown-gain",
    lines: &[("growing.gain_by_day", Stroke::Dots), ("expected.gain_by_day", Stroke::Solid)],
    from_zero: true,
};

const LOSSES_OF_DAY: Lines = Lines {
    name: "grown-losses-of-day",
    lines: &[("growing.lost_share_by_day", Stroke::Dots), ("expected.lost_share_by_day", Stroke::Solid)],
    from_zero: true,
};

const LOSSES: Lines = Lines {
    name: "grown-losses",
    lines: &[
        ("growing.losses_by_day", Stroke::Solid),
        ("past.losses_by_day", Stroke::Dashed),
        ("expected.losses_by_day", Stroke::Dotted),
    ],
    from_zero: true,
};

const FEED: Lines = Lines {
    name: "grown-feed",
    lines: &[
        ("growing.feed_a_bird_by_day", Stroke::Dots),
        ("past.feed_a_bird_by_day", Stroke::Dashed),
        ("expected.feed_a_bird_by_day", Stroke::Solid),
    ],
    from_zero: true,
};

const WATER: Lines = Lines {
    name: "grown-water",
    lines: &[
        ("growing.water_a_bird_by_day", Stroke::Dots),
        ("past.water_a_bird_by_day", Stroke::Dashed),
        ("expected.water_a_bird_by_day", Stroke::Solid),
    ],
    from_zero: true,
};

const WATER_TO_FEED: Lines = Lines {
    name: "grown-water-to-feed",
    lines: &[("growing.water_to_feed_by_day", Stroke::Dots)],
    from_zero: true,
};

const FCR: Lines = Lines {
    name: "grown-fcr",
    lines: &[("growing.fcr_by_day", Stroke::Dots), ("expected.fcr_by_day", Stroke::Solid)],
    from_zero: true,
};

impl Page<'_> {
    pub(super) fn growing(&self, past: &Past) -> Vec<Block> {
        if !self.walk.diary.is_placed {
            return vec![self.note("waiting-growing")];
        }
        let parts = [
            vec![self.held_against(past)],
            self.weight(),
            self.first_week(),
            self.losses(),
            self.feed_and_water(),
            self.conversion(),
        ];
        parts.into_iter().flatten().collect()
    }

    /// Which earlier batches the lines of the past are made of.
    fn held_against(&self, past: &Past) -> Block {
        if past.batches.is_empty() {
            return self.note("no-past-batch");
        }
        let name = |one: &PastBatch| {
            let day = show::day(one.placement, self.viewer);
            match &one.name {
                Some(name) => say!(self.words, "past-batch-named", name = name, day = day),
                None => say!(self.words, "past-batch", day = day),
            }
        };
        let names: Vec<String> = past.batches.iter().map(name).collect();
        let count = past.batches.len() as f64;
        Block::Note(say!(self.words, "held-against-past", count = count, names = names.join("; ")))
    }

    fn weight(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("growing-weight")];
        blocks.push(self.weight_lead().unwrap_or_else(|| self.note("waiting-weighing")));
        blocks.extend(self.weighed_long_ago());
        blocks.extend(self.last_weighing());
        blocks.extend(self.draw(&WEIGHT));
        blocks.extend(self.draw(&GAIN));
        blocks.extend(self.days_table(&Columns {
            caption: "table-weighings",
            columns: &[
                "growing.weight_by_day",
                "expected.weight_by_day",
                "growth.curve",
                "past.weight_by_day",
                "growing.gain_by_day",
                "expected.gain_by_day",
                "growing.fcr_by_day",
                "expected.fcr_by_day",
            ],
            every_day: false,
        }));
        blocks.extend(self.rows(&[
            "growing.weight",
            "growing.last_weighed",
            "growing.weighed_ago",
            "growing.against_plan",
            "growing.against_past",
            "growing.gain",
            "walk.weight_expected",
        ]));
        blocks
    }

    fn weight_lead(&self) -> Option<Block> {
        let against = [
            self.value("growing.against_past").map(|share| say!(self.words, "weight-of-past", share = share)),
            self.value("growing.against_plan").map(|share| say!(self.words, "weight-of-plan", share = share)),
            self.value("growing.gain").map(|gain| say!(self.words, "gain-a-day", gain = gain)),
        ];
        let range = Some(self.range("growing.weight")).filter(|range| !range.is_empty());
        let said = range.map(|range| say!(self.words, "weight-range", range = range));
        Some(Block::Lead {
            label: say!(
                self.words,
                "weight-lead-label",
                day = show::short(self.number("growing.last_weighed")?, 0)
            ),
            value: self.value("growing.weight")?,
            note: said.into_iter().chain(against.into_iter().flatten()).collect::<Vec<_>>().join(" "),
        })
    }

    /// How sure the last weighing is, how even the birds are, and how their weights lie about what was expected.
    fn last_weighing(&self) -> Vec<Block> {
        let diary = &self.walk.diary;
        let Some(day) = Weighing::last_day(diary) else { return Vec::new() };
        let weighing = Weighing::on(diary, day);
        weighing::of_the_flock(&weighing, &weighing.held_against(&Aim::on(diary, day)), self.viewer)
    }

    /// A weight that is not of these days is said to be old, before anybody goes by it.
    fn weighed_long_ago(&self) -> Option<Block> {
        let ago = self.number("growing.weighed_ago").filter(|ago| *ago > RECENT_DAYS)?;
        Some(Block::Note(say!(self.words, "weighed-long-ago", days = show::short(ago, 0), count = ago)))
    }

    pub(super) fn first_week(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("growing-first-week")];
        blocks.extend(self.first_week_lost());
        blocks.push(self.first_week_grown().unwrap_or_else(|| self.note("waiting-first-week-weight")));
        blocks.extend(self.rows(&[
            "growing.first_week_end",
            "growing.first_week_losses",
            "growing.arrival_weight",
            "growing.first_week_ratio",
        ]));
        blocks
    }

    fn first_week_lost(&self) -> Option<Block> {
        let percent = self.number("growing.first_week_losses")?;
        let key = format!("first-week-losses-{}", first_week_losses(percent).name());
        let losses = show::quantity(percent, Unit::Percent, 1, self.viewer);
        let end = show::short(self.number("growing.first_week_end")?, 0);
        Some(Block::Paragraph(say!(self.words, &key, losses = losses, day = end)))
    }

    fn first_week_grown(&self) -> Option<Block> {
        let times = self.number("growing.first_week_ratio")?;
        let key = format!("first-week-weight-{}", first_week_weight(times).name());
        let day = show::short(self.walk.diary.answers.number("book.week_weighed_d")?, 0);
        Some(Block::Paragraph(say!(self.words, &key, times = show::number(times, 1), day = day)))
    }

    fn losses(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("growing-losses")];
        blocks.extend(self.losses_lead());
        blocks.push(self.caution("losses", Level::Danger, 3));
        blocks.extend(self.draw(&LOSSES));
        blocks.extend(self.draw(&LOSSES_OF_DAY));
        blocks.extend(self.days_table(&Columns {
            caption: "table-losses",
            columns: &[
                "growing.lost_by_day",
                "growing.lost_share_by_day",
                "expected.lost_share_by_day",
                "growing.losses_by_day",
                "past.losses_by_day",
                "expected.losses_by_day",
                "growing.alive_by_day",
            ],
            every_day: true,
        }));
        blocks.extend(self.rows(&[
            "growing.lost",
            "growing.losses",
            "growing.alive",
            "walk.deaths_expected",
        ]));
        blocks
    }

    fn losses_lead(&self) -> Option<Block> {
        let placed = self.walk.diary.answers.number("book.placed")?;
        Some(Block::Lead {
            label: self.words.plain("losses-lead-label"),
            value: self.value("growing.losses")?,
            note: say!(
                self.words,
                "losses-lead",
                lost = self.value("growing.lost")?,
                placed = show::quantity(placed, Unit::Chicks, 0, self.viewer),
                alive = self.value("growing.alive")?,
            ),
        })
    }

    fn feed_and_water(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("growing-feed-water")];
        blocks.push(match self.value("growing.water_to_feed") {
            Some(ratio) => Block::Lead {
                label: self.words.plain("water-to-feed-lead-label"),
                value: say!(self.words, "water-to-feed-lead", ratio = ratio),
                note: self.words.plain("water-to-feed-note"),
            },
            None => self.note("waiting-water-to-feed"),
        });
        blocks.extend([FEED, WATER, WATER_TO_FEED].iter().filter_map(|lines| self.draw(lines)));
        blocks.extend(self.days_table(&Columns {
            caption: "table-feed-water",
            columns: &[
                "growing.feed_by_day",
                "growing.feed_a_bird_by_day",
                "expected.feed_a_bird_by_day",
                "past.feed_a_bird_by_day",
                "growing.water_by_day",
                "growing.water_a_bird_by_day",
                "expected.water_a_bird_by_day",
                "past.water_a_bird_by_day",
                "growing.water_to_feed_by_day",
            ],
            every_day: true,
        }));
        blocks.extend(self.rows(&["growing.water_to_feed", "walk.feed_expected", "walk.water_expected"]));
        blocks
    }

    /// Feed conversion so far, and what it does not say.
    fn conversion(&self) -> Vec<Block> {
        let mut blocks = vec![self.heading("growing-fcr")];
        blocks.push(self.conversion_lead().unwrap_or_else(|| self.note("waiting-fcr")));
        blocks.extend(self.weighed_long_ago().map(|_| self.note("fcr-is-old")));
        if let Some(days) = self.number("growing.feed_unwritten").filter(|days| *days > 0.0) {
            let shown = show::short(days, 0);
            blocks.push(Block::Note(say!(self.words, "feed-days-missing", days = shown, count = days)));
        }
        blocks.push(self.note("fcr-note"));
        blocks.extend(self.draw(&FCR));
        blocks.extend(self.rows(&["growing.fcr", "growing.feed", "growing.feed_unwritten"]));
        blocks
    }

    fn conversion_lead(&self) -> Option<Block> {
        let day = self.number("growing.last_weighed")?;
        let planned = self.walk.plan.outcome.on_day("expected.fcr_by_day", day as i32);
        let planned = planned.map(|fcr| say!(self.words, "fcr-of-plan", fcr = show::number(fcr, 2)));
        let range = Some(self.range("growing.fcr")).filter(|range| !range.is_empty());
        let range = range.map(|range| say!(self.words, "fcr-range", range = range));
        Some(Block::Lead {
            label: say!(self.words, "fcr-lead-label", day = show::short(day, 0)),
            value: say!(self.words, "fcr-lead", fcr = self.value("growing.fcr")?),
            note: range.into_iter().chain(planned).collect::<Vec<_>>().join(" "),
        })
    }
}
