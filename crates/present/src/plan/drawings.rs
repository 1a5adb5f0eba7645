//! The batch by day, drawn: warmth and light, weight, feed by the week, the store room, money.

use advice::store_room::Phase;
use quantity::{DayOfAge, Series as Days, Unit};

use super::Shown;
use crate::document::{Align, Block, Drawing, Table};
use crate::scene::bars::{Bar, Bars, BarsWords};
use crate::scene::chart::{Band, Chart, ChartWords, Limit, Series, Stroke};
use crate::scene::columns::{Column, Columns, ColumnsWords};
use crate::scene::stock::{Mark, Stock, StockDay, StockWords};
use crate::{by_day, say, show, working};

/// A drawing of one or two figures by day.
struct ByDay<'a> {
    name: &'static str,
    lines: &'a [(&'static str, Stroke, bool)],
    unit: Unit,
    limit: Option<&'static str>,
    from_zero: bool,
}

impl Shown<'_> {
    /// Weight by day, with the range of houses and what breeders hope for.
    pub(super) fn draw_weight(&self) -> Option<Block> {
        self.draw_days(&ByDay {
            name: "weight",
            lines: &[("growth.weight", Stroke::Solid, false)],
            unit: Unit::Gram,
            limit: None,
            from_zero: true,
        })
    }

    /// Live weight on the floor, and its limit.
    pub(super) fn draw_density(&self) -> Option<Block> {
        self.draw_days(&ByDay {
            name: "density",
            lines: &[("space.density_by_day", Stroke::Solid, false)],
            unit: Unit::KilogramPerSquareMetre,
            limit: Some("space.limit"),
            from_zero: true,
        })
    }

    /// Warmth by age.
    pub(super) fn draw_warmth(&self) -> Option<Block> {
        self.draw_days(&ByDay {
            name: "warmth",
            lines: &[("brooding.temperature_by_day", Stroke::Solid, false)],
            unit: Unit::Celsius,
            limit: None,
            from_zero: false,
        })
    }

    /// Light by age beside the sun.
    pub(super) fn draw_light(&self) -> Option<Block> {
        self.draw_days(&ByDay {
            name: "light",
            lines: &[
                ("light.hours_by_day", Stroke::Solid, true),
                ("light.sun_by_day", Stroke::Dashed, false),
            ],
            unit: Unit::Hour,
            limit: None,
            from_zero: true,
        })
    }

    /// Money on hand by day.
    pub(super) fn draw_cash(&self) -> Option<Block> {
        self.draw_days(&ByDay {
            name: "cash",
            lines: &[("cash.by_day", Stroke::Solid, true)],
            unit: Unit::Money,
            limit: None,
            from_zero: true,
        })
    }

    fn draw_days(&self, drawn: &ByDay) -> Option<Block> {
        let found: Option<Vec<(&Days, Stroke, bool)>> = drawn
            .lines
            .iter()
            .map(|(id, stroke, stepped)| Some((self.plan.series(id)?, *stroke, *stepped)))
            .collect();
        let found = found?;
        let label = |series: &Days| working::label(series.id, self.viewer);
        let first = found.first()?.0;
        let alternative = by_day::in_words(first, drawn.unit, 0, self.viewer)?;
        let limit = drawn
            .limit
            .and_then(|id| Some(Limit { label: working::label(id, self.viewer), value: self.number(id)? }));
        let chart = Chart {
            series: found
                .iter()
                .map(|(series, stroke, stepped)| Series {
                    label: label(series),
                    stroke: *stroke,
                    stepped: *stepped,
                    points: by_day::points(series),
                })
                .collect(),
            // A range goes with a line from day to day, not with steps.
            band: by_day::ends(first)
                .filter(|_| found.iter().all(|line| !line.2))
                .map(|points| Band { label: self.words.plain("drawing-band"), points }),
            marks: self.marks(drawn.name),
            limit,
            from_zero: drawn.from_zero,
        };
        let words = ChartWords {
            up: by_day::axis(&label(first), drawn.unit, self.viewer),
            across: self.words.plain("drawing-days"),
            alternative: alternative.clone(),
        };
        Some(Block::Drawing(Drawing {
            name: drawn.name,
            svg: chart.draw(&words),
            caption: self.words.plain(&format!("drawing-{}-caption", drawn.name)),
            alternative,
            data: self.days_data(&found.iter().map(|(series, ..)| *series).collect::<Vec<_>>(), drawn.unit),
            width_percent: 70,
        }))
    }

    /// Days on which something changes, where a drawing has room for them.
    fn marks(&self, name: &str) -> Vec<Mark> {
        let day = |id: &str| self.number(id);
        match name {
            "cash" => [("mark-chicks", Some(0.0)), ("mark-first-sale", day("sale.first_age"))]
                .into_iter()
                .filter_map(|(key, day)| Some(Mark { day: day?, label: self.words.plain(key) }))
                .collect(),
            _ => Vec::new(),
        }
    }

    fn days_data(&self, series: &[&Days], unit: Unit) -> Table {
        let first = series.first().copied();
        let rows = first.map_or_else(Vec::new, |first| {
            let row = |at: usize| {
                let day = first.index[at];
                let value = |one: &&Days| {
                    one.index
                        .iter()
                        .position(|other| *other == day)
                        .map_or_else(String::new, |at| show::quantity(one.values[at], unit, 1, self.viewer))
                };
                [show::short(day, 0)].into_iter().chain(series.iter().map(value)).collect()
            };
            (0..first.index.len()).map(row).collect()
        });
        let titles = series.iter().map(|one| (working::label(one.id, self.viewer), Align::End));
        Table {
            caption: String::new(),
            columns: [(self.words.plain("column-day"), Align::End)].into_iter().chain(titles).collect(),
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    /// The phases that are eaten at all, with the last day of each.
    fn phases(&self) -> Vec<(Phase, i32)> {
        let until = |phase| match phase {
            Phase::Starter => "feed.starter_until",
            Phase::Grower => "feed.grower_until",
            Phase::Finisher => "feed.finisher_until",
            Phase::Last => "sale.last_age",
        };
        let mut from = 0;
        let mut phases = Vec::new();
        for phase in Phase::ALL {
            let Some(last) = self.number(until(phase)).map(|day| day as i32) else { continue };
            if last >= from {
                phases.push((phase, last));
                from = last + 1;
            }
        }
        phases
    }

    fn phase_names(&self, phases: &[(Phase, i32)]) -> Vec<String> {
        phases.iter().map(|(phase, _)| self.words.plain(&format!("phase-{}", phase.name()))).collect()
    }

    /// Feed of each week, by phase.
    pub(super) fn draw_feed(&self) -> Option<Block> {
        let last = self.plan.outcome.last_day()?;
        self.plan.series("feed.by_day")?;
        let phases = self.phases();
        let eaten = |day: i32| self.plan.outcome.on_day("feed.by_day", day).unwrap_or(0.0);
        let of_phase = |day: i32| phases.iter().position(|(_, until)| day <= *until);
        let week = |week: i32| {
            let days = (7 * week..=(7 * week + 6).min(last)).collect::<Vec<i32>>();
            let part = |at: usize| -> f64 {
                days.iter().filter(|day| of_phase(**day) == Some(at)).map(|day| eaten(*day)).sum()
            };
            Column {
                label: say!(self.words, "drawing-week", week = (week + 1).to_string()),
                parts: (0..phases.len()).map(part).collect(),
            }
        };
        let columns: Vec<Column> = (0..=last / 7).map(week).collect();
        let kilograms = |kg: f64| show::quantity(kg, Unit::Kilogram, 0, self.viewer);
        let totals =
            columns.iter().map(|column| format!("{} {}", column.label, kilograms(column.parts.iter().sum())));
        let alternative = say!(self.words, "drawing-feed", weeks = totals.collect::<Vec<_>>().join(", "));
        let rows = columns.iter().map(|column| {
            let parts = column.parts.iter().map(|kg| kilograms(*kg));
            [column.label.clone()].into_iter().chain(parts).collect()
        });
        let names = self.phase_names(&phases);
        let data = Table {
            caption: String::new(),
            columns: [(self.words.plain("column-week"), Align::Start)]
                .into_iter()
                .chain(names.iter().map(|name| (name.clone(), Align::End)))
                .collect(),
            rows: rows.collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        };
        let words = ColumnsWords {
            up: by_day::axis(&self.words.plain("drawing-feed-up"), Unit::Kilogram, self.viewer),
            across: self.words.plain("drawing-weeks"),
            parts: names,
            alternative: alternative.clone(),
        };
        Some(Block::Drawing(Drawing {
            name: "feed",
            svg: Columns { columns }.draw(&words),
            caption: self.words.plain("drawing-feed-caption"),
            alternative,
            data,
            width_percent: 70,
        }))
    }

    /// The store room emptying and filling, by phase.
    pub(super) fn draw_store(&self) -> Option<Block> {
        let bag = self.plan.answers.number("feed.bag_kg")?;
        let last = self.plan.outcome.last_day()?;
        let deliveries = &self.plan.deliveries;
        let first = deliveries.iter().map(|one| one.day).min()?;
        let phases = self.phases();
        let mut left = vec![0.0; phases.len()];
        let mut days = Vec::new();
        for day in first..=last {
            for one in deliveries.iter().filter(|one| one.day == day) {
                if let Some(at) = phases.iter().position(|(phase, _)| *phase == one.phase) {
                    left[at] += one.in_bags_of(bag);
                }
            }
            days.push(StockDay { day: f64::from(day), parts: left.clone() });
            let eaten = self.plan.outcome.on_day("feed.by_day", day).unwrap_or(0.0) / bag;
            if let Some(at) = phases.iter().position(|(_, until)| day <= *until).filter(|_| day >= 0) {
                left[at] = f64::max(left[at] - eaten, 0.0);
            }
        }
        let capacity = self
            .number("feed.store_room")
            .map(|value| Limit { label: working::label("feed.store_room", self.viewer), value });
        let bags = |bags: f64| show::quantity(bags, Unit::Pieces, 0, self.viewer);
        let peak = self.value("feed.store_peak")?;
        let alternative = say!(
            self.words,
            "drawing-store",
            count = trips(deliveries) as f64,
            peak_count = self.number("feed.store_peak")?,
            left_count = left.iter().sum::<f64>().round(),
            deliveries = trips(deliveries).to_string(),
            peak = peak,
            left = bags(left.iter().sum()),
        );
        let words = StockWords {
            up: self.words.plain("drawing-store-up"),
            across: self.words.plain("drawing-days"),
            parts: self.phase_names(&phases),
            alternative: alternative.clone(),
        };
        let marks = deliveries.iter().map(|one| Mark {
            day: f64::from(one.day),
            label: say!(self.words, "mark-bags", n = show::number(one.in_bags_of(bag), 0)),
        });
        let stock = Stock { days, deliveries: marks.collect(), capacity };
        Some(Block::Drawing(Drawing {
            name: "store",
            svg: stock.draw(&words),
            caption: self.words.plain("drawing-store-caption"),
            alternative,
            data: self.store_data(&stock),
            width_percent: 70,
        }))
    }

    fn store_data(&self, stock: &Stock) -> Table {
        let placement = self.plan.answers.day("batch.placement");
        let weekly = stock.days.iter().filter(|day| day.day as i32 % 7 == 0);
        let row = |day: &StockDay| {
            let date = placement.map_or_else(String::new, |placement| {
                show::day(DayOfAge(day.day as i32).date(placement), self.viewer)
            });
            vec![show::short(day.day, 0), date, show::short(day.parts.iter().sum(), 1)]
        };
        Table {
            caption: String::new(),
            columns: self.columns(&["column-day", "column-date", "column-bags"]),
            rows: weekly.map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    /// Where the money goes, the largest first.
    pub(super) fn draw_costs(&self, table: &Table, parts: &[(String, f64)]) -> Option<Block> {
        let bars: Vec<Bar> = parts
            .iter()
            .map(|(label, part)| Bar {
                label: label.clone(),
                value: *part,
                start: 0.0,
                shown: show::money(*part, self.viewer),
                total: false,
            })
            .collect();
        let (label, _) = parts.first()?;
        let alternative = say!(
            self.words,
            "drawing-costs",
            most = label,
            parts = parts.len().to_string(),
            total = self.value("money.cost_total")?,
        );
        let words = BarsWords { title: String::new(), alternative: alternative.clone() };
        Some(Block::Drawing(Drawing {
            name: "costs",
            svg: Bars { bars }.draw(&words),
            caption: table.caption.clone(),
            alternative,
            data: table.clone(),
            width_percent: 60,
        }))
    }
}

/// Days on which feed comes.
fn trips(deliveries: &[advice::store_room::Delivery]) -> usize {
    deliveries.iter().map(|one| one.day).collect::<std::collections::BTreeSet<i32>>().len()
}
