//! What it costs, what it brings, when the money is there, and how sure that is.

use advice::findings::money::money_told;
use advice::plan::by_head;
use advice::purchases::{self, Purchase};
use quantity::{DayOfAge, Unit};

use super::{Shown, waiting};
use crate::document::{Align, Block, Table};
use crate::{say, show, working};

impl Shown<'_> {
    /// Money; nothing for a viewer who does not see amounts.
    pub(super) fn money(&self) -> Vec<Block> {
        if !self.viewer.money_shown {
            return Vec::new();
        }
        let mut blocks = vec![self.heading("question-money")];
        blocks.extend(self.purchases_table().map(Block::Table));
        blocks.extend(self.money_answers());
        // What the grower is paid by stands first.
        let first: &[&str] = if self.sold_by_the_bird() { BY_THE_BIRD } else { &[] };
        let rest = ROWS.iter().filter(|id| !first.contains(id));
        let rows = self.rows(&first.iter().chain(rest).copied().collect::<Vec<_>>());
        blocks.extend(self.fold("all-figures", rows.into_iter().collect()));
        blocks.push(Block::Note(self.words.plain("money-note")));
        blocks
    }

    /// What it costs and brings, how sure that is, where it goes and when it is there.
    pub(super) fn money_answers(&self) -> Vec<Block> {
        if !self.viewer.money_shown {
            return Vec::new();
        }
        let mut blocks =
            vec![self.money_lead().unwrap_or_else(|| self.waiting("waiting-money", &waiting::MONEY))];
        if let Some(lead) = self.risk_lead() {
            blocks.extend([lead, Block::Note(self.words.plain("risk-leaves-out"))]);
        }
        blocks.extend(self.findings(&["prices", "costs", "cash"]));
        if let Some((table, parts)) = self.where_it_goes() {
            blocks.extend(self.draw_costs(&table, &parts));
        }
        blocks.extend(self.equipment_lasts());
        blocks.extend(self.draw_cash());
        blocks
    }

    /// That this batch pays for what serves many, and what a kilogram or a bird costs without it; nothing where none is bought.
    fn equipment_lasts(&self) -> Option<Block> {
        let equipment = self.number("money.equipment").filter(|cost| *cost > 0.0)?;
        let (sold, key) = match self.sold_by_the_bird() {
            true => (self.number("sale.birds")?, "equipment-lasts-bird"),
            false => (self.number("sale.live_kg")?, "equipment-lasts-kg"),
        };
        let without = (self.number("money.cost_total")? - equipment) / sold.max(1.0);
        let (equipment, without) = (self.value("money.equipment")?, show::money(without, self.viewer));
        Some(Block::Note(say!(self.words, key, equipment = equipment, without = without)))
    }

    /// Whether birds are sold at a price each, whatever they weigh.
    fn sold_by_the_bird(&self) -> bool {
        by_head(&self.plan.answers)
    }

    fn money_lead(&self) -> Option<Block> {
        let by_bird = self.sold_by_the_bird();
        let [each, other] = match by_bird {
            true => ["money.cost_per_bird", "money.cost_per_kg"],
            false => ["money.cost_per_kg", "money.cost_per_bird"],
        };
        let even = if by_bird { "money.break_even_price_bird" } else { "money.break_even_price" };
        let (even, other) = (self.value(even)?, self.value(other)?);
        let named = |key: &str| if by_bird { format!("{key}-by-the-bird") } else { key.to_owned() };
        let day = show::short(self.number("money.cash_low_day")?, 0);
        let note = match self.money_to_have() {
            Some(short) => {
                say!(
                    self.words,
                    &named("money-lead-note-not-told"),
                    short = short,
                    day = day,
                    other = other,
                    even = even
                )
            }
            None => {
                say!(
                    self.words,
                    &named("money-lead-note"),
                    low = self.value("money.cash_low_point")?,
                    day = day,
                    other = other,
                    even = even
                )
            }
        };
        Some(Block::Lead {
            label: self.words.plain("money-lead-label"),
            value: say!(
                self.words,
                &named("money-lead"),
                total = self.value("money.cost_total")?,
                each = self.value(each)?,
            ),
            note,
        })
    }

    /// The money that the batch wants, where the grower did not say what there is.
    fn money_to_have(&self) -> Option<String> {
        let wanted = self.number("money.cash_short").filter(|short| *short > 0.0);
        wanted.filter(|_| !money_told(&self.plan.answers))?;
        self.value("money.cash_short")
    }

    /// That money and the day by which all of it is wanted, in one sentence; `None` where it was told or none is wanted, and for
    /// a viewer who sees no amounts.
    pub fn holds_with_money(&self) -> Option<String> {
        let short = self.money_to_have().filter(|_| self.viewer.money_shown)?;
        let day = DayOfAge(self.number("money.cash_low_day")? as i32)
            .date(self.plan.answers.day("batch.placement")?);
        Some(say!(self.words, "plan-holds-with-money", short = short, day = show::day(day, self.viewer)))
    }

    /// Profit with its likely range, and how many batches of ten lose.
    fn risk_lead(&self) -> Option<Block> {
        let chance = self.number("risk.loss_probability")?;
        let profit = self.plan.outcome.get("risk.profit")?;
        let band = profit.figure.band?;
        let money = |amount: f64| show::money(amount, self.viewer);
        Some(Block::Lead {
            label: self.words.plain("risk-lead-label"),
            value: say!(self.words, "risk-lead", low = money(band.low), high = money(band.high)),
            note: say!(
                self.words,
                "risk-lead-note",
                of_hundred = show::number(100.0 * chance, 0),
                middle = self.value("risk.profit")?,
                worst = self.value("risk.expected_shortfall")?,
                planned = self.value("money.profit")?,
            ),
        })
    }

    /// How much of something is bought, in the things it is counted in.
    pub(super) fn amount(&self, one: &Purchase, quantity: f64) -> String {
        let n = show::number(quantity, 0);
        match one.what {
            "guard" => say!(self.words, "n-sheets", n = n, count = quantity),
            what if purchases::is_equipment(what) => n,
            _ if one.size_kg.is_some() => show::bags(quantity, one.size_kg, self.viewer),
            _ if one.unit == Unit::Pieces => say!(self.words, "n-bags", n = n, count = quantity),
            _ => self.amount_of(one, quantity),
        }
    }

    /// How much of something that is not counted in packs: half a kilogram of a small amount is said.
    pub(super) fn amount_of(&self, one: &Purchase, quantity: f64) -> String {
        const LARGE_KG: f64 = 100.0;
        let is_half = one.unit == Unit::Kilogram && quantity < LARGE_KG && quantity.fract() != 0.0;
        show::quantity(quantity, one.unit, u8::from(is_half), self.viewer)
    }

    /// What is bought, by the day it is paid.
    pub(super) fn purchases_table(&self) -> Option<Table> {
        let placement = self.plan.answers.day("batch.placement")?;
        let row = |one: &Purchase| {
            let date = show::day_short(DayOfAge(one.day).date(placement), self.viewer);
            let quantity = one.quantity.map_or_else(String::new, |quantity| self.amount(one, quantity));
            let amount = |cost| show::number(cost, self.viewer.currency_exponent);
            let cost = one.cost.map_or_else(|| self.words.plain("not-priced"), amount);
            vec![date, self.words.plain(&format!("purchase-{}", one.what)), quantity, cost]
        };
        let columns = [
            ("column-pay-on", Align::Start),
            ("column-what", Align::Start),
            ("column-how-much", Align::End),
            ("column-costs-in", Align::End),
        ];
        let currency = show::unit_label(Unit::Money, self.viewer);
        let title = |key: &str| self.words.say(key, &[("currency", (&currency).into())]);
        (!self.plan.purchases.is_empty()).then(|| Table {
            caption: self.words.plain("purchases-caption"),
            columns: columns.iter().map(|(key, align)| (title(key), *align)).collect(),
            rows: self.plan.purchases.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: vec!["money.cost_total"],
        })
    }

    /// Each part of the cost and its share, the largest first.
    fn where_it_goes(&self) -> Option<(Table, Vec<(String, f64)>)> {
        let total = self.number("money.cost_total").filter(|total| *total > 0.0)?;
        let figures = COST_PARTS.iter().map(|id| (working::label(id, self.viewer), self.number(id)));
        let own = self.plan.answers.number("costs.own_labour");
        let mut parts: Vec<(String, f64)> = figures
            .chain([(self.words.plain("field-costs-own-labour"), own)])
            .filter_map(|(label, part)| Some((label, part.filter(|part| *part > 0.0)?)))
            .collect();
        parts.sort_by(|one, other| other.1.total_cmp(&one.1));
        let row = |(label, part): &(String, f64)| {
            let share = show::quantity(100.0 * *part / total, Unit::Percent, 0, self.viewer);
            vec![label.clone(), show::money(*part, self.viewer), share]
        };
        let table = Table {
            caption: self.words.plain("where-it-goes-caption"),
            columns: self.columns(&["column-what", "column-price", "column-share"]),
            rows: parts.iter().map(row).collect(),
            emphasis: Vec::new(),
            explained_by: vec!["money.cost_total"],
        };
        Some((table, parts))
    }
}

/// The parts that the cost is added up from, as its bars and its table show them.
pub const COST_PARTS: &[&str] = &[
    "feed.cost",
    "money.chicks",
    "money.other",
    "litter.cost",
    "disinfectant.cost",
    "guard.cost",
    "money.equipment",
    "brooding.fuel_cost",
    "brooding.spare_cost",
    "brooding.second_fuel_cost",
    "brooding.second_spare_cost",
    "money.interest",
];

/// What stands before the rest where birds are sold by the bird.
const BY_THE_BIRD: &[&str] = &["money.cost_total", "money.break_even_price_bird", "money.cost_per_bird"];

/// Every figure of money, in the order shown.
const ROWS: &[&str] = &[
    "money.cost_total",
    "money.cost_per_kg",
    "money.cost_per_bird",
    "money.cost_per_chick",
    "money.break_even_price",
    "money.break_even_price_bird",
    "money.break_even_price_cash",
    "money.break_even_weight",
    "money.break_even_fcr",
    "money.price_per_kg",
    "money.sales",
    "money.income",
    "money.profit",
    "money.profit_with_own_work",
    "money.profit_per_m2",
    "money.bird_a_day",
    "money.cash_low_point",
    "money.cash_low_day",
    "money.cash_short",
    "money.first_day_short",
    "money.credit",
    "money.beyond_credit",
    "money.first_day_beyond_credit",
    "money.cash_at_end",
    "money.interest",
    "money.deposit",
    "money.chicks",
    "money.other",
    "money.equipment",
    "money.feed_share",
    "money.chick_share",
    "risk.loss_probability",
    "risk.profit",
    "risk.profit_tenth",
    "risk.expected_shortfall",
];
