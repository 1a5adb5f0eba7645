//! What to buy when: a table, a drawing of how long feed keeps, what it costs and what the answer hangs on.

use std::collections::BTreeMap;

use advice::buying::{CannotBuy, Cheapest, Hang, Hanging, Purchase};
use quantity::{CivilDay, DayOfAge, Unit};
use schemars::JsonSchema;
use serde::Serialize;

use crate::document::{Align, Block, Document, Drawing, Table};
use crate::scene::shelf::{Kept, Shelf, ShelfWords};
use crate::view::{FigureView, ValueView};
use crate::viewer::Viewer;
use crate::words::key_part;
use crate::{say, show};

/// A change of prices, percent a month, that is none when it is rounded.
const LEAST_RISE: f64 = 0.05;

/// What was found, or why nothing was.
pub type Found = Result<Cheapest, CannotBuy>;

/// What is shown of it.
struct Shown<'a> {
    found: &'a Found,
    placement: Option<CivilDay>,
    viewer: &'a Viewer,
}

/// The document of a command.
pub fn document(found: &Found, placement: Option<CivilDay>, subtitle: String, viewer: &Viewer) -> Document {
    Document { title: viewer.words().plain("buying"), subtitle, blocks: blocks(found, placement, viewer) }
}

/// The blocks of a page.
pub(crate) fn blocks(found: &Found, placement: Option<CivilDay>, viewer: &Viewer) -> Vec<Block> {
    let shown = Shown { found, placement, viewer };
    match found {
        Err(why) => vec![Block::Note(shown.why_not(*why))],
        Ok(cheapest) => shown.cheapest(cheapest),
    }
}

impl Shown<'_> {
    fn cheapest(&self, cheapest: &Cheapest) -> Vec<Block> {
        let words = self.viewer.words();
        let mut blocks = self.warnings(cheapest);
        if cheapest.purchases.is_empty() {
            blocks.push(Block::Note(words.plain("buying-nothing")));
            return blocks;
        }
        blocks.push(self.lead(cheapest));
        blocks.push(Block::Table(self.table(cheapest)));
        blocks.push(Block::Drawing(self.drawing(cheapest)));
        blocks.extend(self.compared(cheapest).map(Block::Note));
        let hangs: Vec<String> = cheapest.hangs().iter().map(|hang| self.hang(hang)).collect();
        let hangs = if hangs.is_empty() { vec![words.plain("buying-hangs-on-nothing")] } else { hangs };
        let items = hangs.into_iter().map(Block::Paragraph);
        blocks.push(Block::Fold { title: words.plain("buying-hangs"), blocks: items.collect() });
        blocks.push(Block::Note(words.plain("buying-note")));
        blocks
    }

    /// A day of age as a date, or as it is while nobody knows when the chicks come.
    fn day(&self, day: i32) -> String {
        let age = || say!(self.viewer.words(), "buying-day-of-age", day = day.to_string());
        self.placement
            .map_or_else(age, |placement| show::day_short(DayOfAge(day).date(placement), self.viewer))
    }

    fn warnings(&self, cheapest: &Cheapest) -> Vec<Block> {
        let words = self.viewer.words();
        let of = |key: &'static str, phases: &[advice::store_room::Phase]| {
            let say = |phase: &advice::store_room::Phase| {
                let feed = words.plain(&format!("phase-{}", phase.name()));
                Block::Note(say!(words, key, feed = feed))
            };
            phases.iter().map(say).collect::<Vec<_>>()
        };
        [of("buying-never-bought", &cheapest.never_bought), of("buying-runs-out", &cheapest.runs_out)]
            .concat()
    }

    fn lead(&self, cheapest: &Cheapest) -> Block {
        let words = self.viewer.words();
        let bags: f64 = cheapest.purchases.iter().map(|one| one.delivery.bags).sum();
        let trips = cheapest.days().len();
        let next = cheapest.days().first().map_or_else(String::new, |day| self.day(day - cheapest.lead_d));
        let value = say!(
            words,
            "buying-lead",
            bags = show::number(bags, 0),
            trips = trips.to_string(),
            count = trips as f64
        );
        let mut note = vec![say!(words, "buying-next", day = next)];
        if self.viewer.money_shown {
            note.push(self.money(cheapest));
        }
        Block::Lead { label: words.plain("buying-label"), value, note: note.join(" ") }
    }

    /// What it costs, how far that may stray, and whether it is proven best.
    fn money(&self, cheapest: &Cheapest) -> String {
        let (words, money) = (self.viewer.words(), |amount: f64| show::money(amount, self.viewer));
        let total = cheapest.cost.total();
        let range = cheapest.band.map(|band| {
            say!(words, "buying-range", low = money(band.low.round()), high = money(band.high.round()))
        });
        let parts = say!(
            words,
            "buying-cost",
            total = money(total),
            bags = money(cheapest.cost.bags),
            fees = money(cheapest.cost.fees),
            interest = money(cheapest.cost.interest),
        );
        let proof = match cheapest.is_proven() {
            true => words.plain("buying-proven"),
            false => say!(words, "buying-gap", gap = money(total - cheapest.lower_bound)),
        };
        [Some(parts), range, Some(proof), self.limit(cheapest)]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(" ")
    }

    /// What a limit of credit makes dearer.
    fn limit(&self, cheapest: &Cheapest) -> Option<String> {
        let (limit, free) = (cheapest.limit?, cheapest.without_limit?);
        let more = cheapest.cost.total() - free;
        let limit = show::money(limit, self.viewer);
        Some(if more < 0.01 {
            say!(self.viewer.words(), "buying-limit-free", limit = limit)
        } else {
            say!(self.viewer.words(), "buying-limit", limit = limit, more = show::money(more, self.viewer))
        })
    }

    fn table(&self, cheapest: &Cheapest) -> Table {
        let words = self.viewer.words();
        let row = |one: &Purchase| {
            let delivery = one.delivery;
            let mut cells = vec![
                self.day(delivery.day - cheapest.lead_d),
                self.day(delivery.day),
                words.plain(&format!("phase-{}", delivery.phase.name())),
                show::bags(delivery.bags, delivery.size_kg, self.viewer),
                say!(
                    words,
                    "eaten-from-to",
                    from = delivery.eaten_from.to_string(),
                    to = delivery.eaten_until.to_string(),
                ),
                self.day(one.good_until),
            ];
            if self.viewer.money_shown {
                cells.push(show::money(one.cost, self.viewer));
            }
            cells
        };
        let start = |key: &str| (words.plain(key), Align::Start);
        let mut columns = vec![
            start("column-order-by"),
            start("column-comes"),
            start("column-feed-kind"),
            (words.plain("column-bags"), Align::End),
            start("column-eaten"),
            start("column-good-until"),
        ];
        if self.viewer.money_shown {
            columns.push((words.plain("column-costs"), Align::End));
        }
        Table {
            caption: words.plain("buying-caption"),
            columns,
            rows: cheapest.purchases.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        }
    }

    fn drawing(&self, cheapest: &Cheapest) -> Drawing {
        let words = self.viewer.words();
        let kept = |one: &Purchase| {
            let delivery = one.delivery;
            let feed = words.plain(&format!("phase-{}", delivery.phase.name()));
            let bags = show::bags(delivery.bags, delivery.size_kg, self.viewer);
            let day = self.day(delivery.day);
            Kept {
                label: say!(words, "buying-drawn", bags = bags, feed = feed, day = day),
                comes: f64::from(delivery.day),
                eaten_from: f64::from(delivery.eaten_from),
                eaten_until: f64::from(delivery.eaten_until),
                good_until: f64::from(one.good_until),
            }
        };
        let shelf = Shelf { kept: cheapest.purchases.iter().map(kept).collect() };
        let labels: Vec<&str> = shelf.kept.iter().map(|one| one.label.as_str()).collect();
        let alternative = say!(words, "buying-alternative", deliveries = labels.join("; "));
        let drawn = ShelfWords {
            key: words.plain("buying-drawing-key"),
            across: words.plain("drawing-days"),
            alternative: alternative.clone(),
        };
        Drawing {
            name: "shelf",
            svg: shelf.draw(&drawn),
            caption: words.plain("buying-drawing-caption"),
            alternative,
            data: self.table(cheapest),
            width_percent: 70,
        }
    }

    /// What the ways cost that need no search.
    fn compared(&self, cheapest: &Cheapest) -> Option<String> {
        let (words, total) = (self.viewer.words(), cheapest.cost.total());
        let more = |key: &str, cost: Option<f64>| {
            let more = cost? - total;
            Some(match more < 0.005 {
                true => words.plain(&format!("{key}-same")),
                false => say!(words, key, more = show::money(more, self.viewer)),
            })
        };
        let said: Vec<String> = [
            more("buying-much-at-once", cheapest.much_at_once),
            more("buying-little-by-little", cheapest.little_by_little),
        ]
        .into_iter()
        .flatten()
        .collect();
        (self.viewer.money_shown && !said.is_empty()).then(|| said.join(" "))
    }

    fn hang(&self, hang: &Hang) -> String {
        let value = |value: f64| match hang.what {
            Hanging::PriceRise | Hanging::Interest => show::quantity(value, Unit::Percent, 1, self.viewer),
            Hanging::DeliveryFee => show::money(value, self.viewer),
            Hanging::Keeping => show::quantity(value, Unit::Day, 0, self.viewer),
        };
        let otherwise = if hang.trips == hang.trips_then {
            self.viewer.words().plain("buying-then-amounts")
        } else {
            let (trips, then) = (hang.trips.to_string(), hang.trips_then.to_string());
            say!(self.viewer.words(), "buying-then-trips", trips = trips, then = then)
        };
        let side = if hang.rises { "more" } else { "less" };
        if hang.what == Hanging::PriceRise && hang.at.abs() < LEAST_RISE {
            let key = format!("buying-hang-price-rise-{side}-at-all");
            return say!(self.viewer.words(), &key, otherwise = otherwise);
        }
        say!(
            self.viewer.words(),
            &format!("buying-hang-{}-{side}", hang.what.name()),
            told = value(hang.told),
            at = value(hang.at.abs()),
            otherwise = otherwise,
        )
    }

    fn why_not(&self, why: CannotBuy) -> String {
        let words = self.viewer.words();
        let phase = |phase: advice::store_room::Phase| words.plain(&format!("phase-{}", phase.name()));
        match why {
            CannotBuy::NotKnown { key } => {
                let kind = if advice::families::field(key).is_some() { "field" } else { "figure" };
                let name = match advice::families::series_named(key) {
                    Some(_) => words.plain("buying-feed-by-day"),
                    None => words.plain(&format!("{kind}-{}", key_part(key))),
                };
                say!(words, "buying-not-known", name = name, key = key)
            }
            CannotBuy::NothingEaten => words.plain("buying-nothing"),
            CannotBuy::PriceBelowZero { phase: feed, day } => {
                say!(words, "buying-price-below-zero", feed = phase(feed), day = self.day(day))
            }
            CannotBuy::CannotKeep { phase: feed, until } => {
                say!(words, "buying-cannot-keep", feed = phase(feed), day = self.day(until))
            }
            CannotBuy::RoomTooSmall { day, bags, room } => say!(
                words,
                "buying-room-too-small",
                day = self.day(day),
                bags = bags.to_string(),
                room = room.to_string(),
            ),
            CannotBuy::SizesApart { kg, other_kg } => say!(
                words,
                "buying-sizes-apart",
                kg = show::quantity(kg, Unit::Kilogram, 2, self.viewer),
                other = show::quantity(other_kg, Unit::Kilogram, 2, self.viewer),
            ),
            CannotBuy::CreditTooSmall { day, .. } if !self.viewer.money_shown => {
                say!(words, "buying-credit-too-small-hidden", day = self.day(day))
            }
            CannotBuy::CreditTooSmall { day, limit, needed } => say!(
                words,
                "buying-credit-too-small",
                day = self.day(day),
                limit = show::money(limit, self.viewer),
                needed = show::money(needed.ceil(), self.viewer),
                short = show::money((needed - limit).ceil(), self.viewer),
            ),
            CannotBuy::NoWay => words.plain("buying-no-way"),
        }
    }
}

/// A purchase.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct BuyJson {
    /// The day it comes, YYYY-MM-DD; absent while nobody knows when the chicks come.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// The same as day of age.
    pub age_d: i32,
    /// The day it is ordered.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub order_by: Option<String>,
    /// Which feed.
    pub phase: &'static str,
    /// How many bags.
    pub bags: f64,
    /// What a bag holds, kg, where feed is to be had in several sizes; else it is the plan's own bag.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bag_kg: Option<f64>,
    /// What they cost, without the delivery; absent for a viewer who does not see amounts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
    /// The day of age the first of them is opened.
    pub eaten_from_age_d: i32,
    /// The last day of age they are eaten.
    pub eaten_until_age_d: i32,
    /// The last day of age they are good.
    pub good_until_age_d: i32,
}

/// Where other days or amounts become the cheapest.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HangJson {
    /// What moves: price-rise (percent a month beyond what was told), delivery-fee, interest (percent a year), keeping (days).
    pub what: &'static str,
    /// What it is now.
    pub told: f64,
    /// Where the answer flips.
    pub at: f64,
    /// Whether it flips as what moves rises, and not as it falls.
    pub rises: bool,
    /// Deliveries now.
    pub deliveries: usize,
    /// Deliveries beyond.
    pub deliveries_then: usize,
}

/// Something that is not as it should be.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct DoubtJson {
    /// Its stable name.
    pub name: &'static str,
    /// The feed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub phase: Option<&'static str>,
    /// What it says, in the viewer's language.
    pub text: String,
}

/// What to buy when.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct BuyingView {
    /// purchases.cost and purchases.lower_bound.
    pub figures: BTreeMap<&'static str, FigureView>,
    /// What comes, by day and feed.
    pub purchases: Vec<BuyJson>,
    /// What all deliveries cost.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fees: Option<f64>,
    /// Interest that would not be owed without feed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub interest: Option<f64>,
    /// Whether no way can be cheaper.
    pub proven: bool,
    /// What the answer hangs on.
    pub hangs_on: Vec<HangJson>,
    /// What is not as it should be, and why there is no answer.
    pub findings: Vec<DoubtJson>,
    /// The version of the rules that gave this.
    pub rules_version: u32,
}

/// What to buy when, as JSON.
pub fn view(found: &Found, placement: Option<CivilDay>, viewer: &Viewer) -> BuyingView {
    let shown = Shown { found, placement, viewer };
    let cheapest = found.as_ref().ok();
    let money = cheapest.filter(|_| viewer.money_shown);
    BuyingView {
        figures: money.map(figures).unwrap_or_default(),
        purchases: cheapest.map(|found| shown.purchases(found)).unwrap_or_default(),
        fees: money.map(|found| found.cost.fees),
        interest: money.map(|found| found.cost.interest),
        proven: cheapest.is_some_and(Cheapest::is_proven),
        hangs_on: money.map(|found| found.hangs().iter().map(hang_json).collect()).unwrap_or_default(),
        findings: shown.doubts(),
        rules_version: advice::RULES_VERSION,
    }
}

fn figures(cheapest: &Cheapest) -> BTreeMap<&'static str, FigureView> {
    let figure = |value: f64, band: Option<quantity::Band>| FigureView {
        value: ValueView::Number(value),
        unit: Unit::Money.name(),
        low: band.map(|band| band.low),
        high: band.map(|band| band.high),
        band: band.map(|band| band.kind.name()),
    };
    BTreeMap::from([
        ("purchases.cost", figure(cheapest.cost.total(), cheapest.band)),
        ("purchases.lower_bound", figure(cheapest.lower_bound, None)),
    ])
}

fn hang_json(hang: &Hang) -> HangJson {
    let (what, told, at) = (hang.what.name(), hang.told, hang.at);
    HangJson { what, told, at, rises: hang.rises, deliveries: hang.trips, deliveries_then: hang.trips_then }
}

impl Shown<'_> {
    fn purchases(&self, cheapest: &Cheapest) -> Vec<BuyJson> {
        let date = |day: i32| Some(DayOfAge(day).date(self.placement?).to_string());
        let purchase = |one: &Purchase| BuyJson {
            date: date(one.delivery.day),
            age_d: one.delivery.day,
            order_by: date(one.delivery.day - cheapest.lead_d),
            phase: one.delivery.phase.name(),
            bags: one.delivery.bags,
            bag_kg: one.delivery.size_kg,
            cost: self.viewer.money_shown.then_some(one.cost),
            eaten_from_age_d: one.delivery.eaten_from,
            eaten_until_age_d: one.delivery.eaten_until,
            good_until_age_d: one.good_until,
        };
        cheapest.purchases.iter().map(purchase).collect()
    }

    fn doubts(&self) -> Vec<DoubtJson> {
        let words = self.viewer.words();
        match self.found {
            Err(why) => vec![DoubtJson { name: why_name(*why), phase: None, text: self.why_not(*why) }],
            Ok(cheapest) => {
                let never = cheapest.never_bought.iter().map(|phase| ("never-bought", phase));
                let out = cheapest.runs_out.iter().map(|phase| ("runs-out", phase));
                let doubt = |(name, phase): (&'static str, &advice::store_room::Phase)| {
                    let feed = words.plain(&format!("phase-{}", phase.name()));
                    let text = say!(words, &format!("buying-{name}"), feed = feed);
                    DoubtJson { name, phase: Some(phase.name()), text }
                };
                never.chain(out).map(doubt).collect()
            }
        }
    }
}

/// The stable name of why there is no answer.
fn why_name(why: CannotBuy) -> &'static str {
    match why {
        CannotBuy::NotKnown { .. } => "not-known",
        CannotBuy::NothingEaten => "nothing-eaten",
        CannotBuy::PriceBelowZero { .. } => "price-below-zero",
        CannotBuy::CannotKeep { .. } => "cannot-keep",
        CannotBuy::RoomTooSmall { .. } => "room-too-small",
        CannotBuy::SizesApart { .. } => "sizes-apart",
        CannotBuy::CreditTooSmall { .. } => "credit-too-small",
        CannotBuy::NoWay => "no-way",
    }
}
