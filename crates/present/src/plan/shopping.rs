//! What is bought, by the week it is paid, with a box to tick and room for what it really cost.

use advice::purchases::{self, Purchase, Short, Week};
use quantity::{DayOfAge, Unit};

use super::{Shown, waiting};
use crate::document::{Align, Block, Document, Table};
use crate::words::Argument;
use crate::{say, show, working};

impl Shown<'_> {
    /// The shopping list.
    pub fn shopping_list(&self) -> Document {
        let weeks = purchases::by_week(&self.plan.purchases);
        let mut blocks: Vec<Block> = self.shopping_total(&weeks).into_iter().collect();
        blocks.extend(self.shopping_table(&weeks).map(Block::Table));
        // Without a chick day nothing has a day to be bought by.
        if let Some(short) = self.short_table().filter(|_| weeks.is_empty()) {
            blocks.extend([self.heading("question-short"), Block::Table(short)]);
        }
        if self.plan.purchases.iter().any(|one| purchases::is_equipment(one.what) && one.cost != Some(0.0)) {
            blocks.push(Block::Note(self.words.plain("shopping-equipment-note")));
        }
        blocks.extend(self.to_answer("shopping-lacks", waiting::BOUGHT));
        blocks.push(Block::Note(self.words.plain("shopping-note")));
        Document { title: self.words.plain("sheet-shopping"), subtitle: self.subtitle(), blocks }
    }

    fn shopping_total(&self, weeks: &[Week]) -> Option<Block> {
        // A sum of nothing would read as if all were paid.
        self.plan.purchases.iter().find(|one| one.cost.is_some())?;
        let total = weeks.last()?.until_then;
        let low = self.value("money.cash_low_day").zip(self.value("money.cash_low_point"));
        let low = low.map(|(day, low)| say!(self.words, "shopping-total-note", day = day, low = low));
        let besides = self.number("money.cost_total").filter(|all| all - total > 0.005);
        let besides = besides.map(|all| {
            let money = |amount: f64| show::money(amount, self.viewer);
            say!(self.words, "shopping-total-besides", all = money(all), besides = money(all - total))
        });
        self.viewer.money_shown.then(|| Block::Lead {
            label: self.words.plain("shopping-total-label"),
            value: show::money(total, self.viewer),
            note: low.into_iter().chain(besides).collect::<Vec<_>>().join(" "),
        })
    }

    fn shopping_table(&self, weeks: &[Week]) -> Option<Table> {
        let placement = self.plan.answers.day("batch.placement").filter(|_| !weeks.is_empty())?;
        let date = |day: i32| self.weekday(DayOfAge(day).date(placement));
        let amount = |amount: f64| show::number(amount, self.viewer.currency_exponent);
        let mut rows = Vec::new();
        let mut emphasis = Vec::new();
        for week in weeks {
            emphasis.push(rows.len());
            rows.push(self.shopping_row(
                [self.bought_title(week, &date), String::new(), String::new()],
                match week.purchases.iter().any(|one| one.cost.is_some()) {
                    true => [amount(week.cost), amount(week.until_then)],
                    false => [String::new(), String::new()],
                },
            ));
            rows.extend(week.purchases.iter().map(|one| {
                let cost = one.cost.map(amount);
                let cost = cost.unwrap_or_else(|| self.words.plain("not-priced"));
                let what = self.words.plain(&format!("purchase-{}", one.what));
                let what = match self.order_by(one) {
                    Some(day) => say!(self.words, "shopping-order-by", what = what, day = date(day)),
                    None => what,
                };
                self.shopping_row([date(one.day), what, self.how_many(one)], [cost, String::new()])
            }));
        }
        let money = [("column-costs-in", Align::End), ("column-until-then", Align::End)];
        let columns =
            [("column-pay-on", Align::Start), ("column-what", Align::Start), ("column-how-much", Align::End)];
        let shown = columns.into_iter().chain(money.into_iter().filter(|_| self.viewer.money_shown));
        let currency = show::unit_label(Unit::Money, self.viewer);
        let titles =
            shown.map(|(key, align)| (self.words.say(key, &[("currency", (&currency).into())]), align));
        let blank = (self.words.plain("column-bought-at"), Align::Line);
        Some(Table {
            caption: self.words.plain("shopping-caption"),
            columns: [(String::new(), Align::Tick)].into_iter().chain(titles).chain([blank]).collect(),
            rows,
            emphasis,
            explained_by: Vec::new(),
        })
    }

    /// The last day of age on which feed can be ordered.
    fn order_by(&self, one: &Purchase) -> Option<i32> {
        let is_feed = self.plan.deliveries.iter().any(|delivery| delivery.day == one.day);
        let lead_d = self.plan.answers.number("feed.lead_d").filter(|days| *days > 0.0)? as i32;
        (is_feed && one.what.starts_with("feed-") && one.quantity.is_some()).then_some(one.day - lead_d)
    }

    /// A row between a box to tick and a line to write on; amounts only for those who see money.
    fn shopping_row(&self, words: [String; 3], money: [String; 2]) -> Vec<String> {
        let money = money.into_iter().filter(|_| self.viewer.money_shown);
        [String::new()].into_iter().chain(words).chain(money).chain([String::new()]).collect()
    }

    fn bought_title(&self, week: &Week, date: &dyn Fn(i32) -> String) -> String {
        if week.number >= 0 {
            let n = (week.number + 1).to_string();
            return say!(self.words, "shopping-week", n = n, first = date(week.first_day()));
        }
        say!(
            self.words,
            "shopping-weeks-before",
            count = f64::from(-week.number),
            n = (-week.number).to_string(),
            last = date(week.first_day() + 6),
        )
    }

    /// How many in the packs they are bought in, where those are known.
    fn how_many(&self, one: &Purchase) -> String {
        let Some(quantity) = one.quantity else { return String::new() };
        let amount = match one.unit {
            Unit::Millilitre if quantity >= 1000.0 => {
                show::quantity(quantity / 1000.0, Unit::Litre, 1, self.viewer)
            }
            _ => self.amount_of(one, quantity),
        };
        let counted = |key: &str, n: f64| {
            let arguments: [(&str, Argument); 3] =
                [("amount", amount.as_str().into()), ("n", show::number(n, 0).into()), ("count", n.into())];
            self.words.say(key, &arguments)
        };
        let packs = |key: &str, id: &str| self.number(id).map(|n| counted(key, n));
        match one.what {
            "litter" => counted("n-bags", quantity),
            "guard" => counted("shopping-sheets", quantity),
            "fuel" => packs("shopping-cylinders", "brooding.cylinders")
                .or_else(|| packs("shopping-sacks", "brooding.sacks"))
                .unwrap_or(amount),
            "second-fuel" => packs("shopping-cylinders", "brooding.second_cylinders")
                .or_else(|| packs("shopping-sacks", "brooding.second_sacks"))
                .unwrap_or(amount),
            "second-spare-fuel" => {
                let key = match self.number("brooding.second_cylinders") {
                    Some(_) => "shopping-cylinders",
                    None => "shopping-sacks",
                };
                packs(key, "brooding.second_spare_packs").unwrap_or(amount)
            }
            "spare-fuel" => {
                let key = match self.number("brooding.cylinders") {
                    Some(_) => "shopping-cylinders",
                    None => "shopping-sacks",
                };
                packs(key, "brooding.spare_packs").unwrap_or(amount)
            }
            what if purchases::is_equipment(what) => show::number(quantity, 0),
            what if what.starts_with("feed-") => match one.size_kg {
                None => counted("n-bags", quantity),
                size => show::bags(quantity, size, self.viewer),
            },
            _ => amount,
        }
    }

    /// Equipment of which there is too little.
    fn short_table(&self) -> Option<Table> {
        let row = |short: &Short| {
            let id = short.figure;
            self.number(id).filter(|short| *short > 0.0)?;
            let words = [working::label(id, self.viewer), self.value(id)?];
            Some([String::new()].into_iter().chain(words).chain([String::new()]).collect::<Vec<String>>())
        };
        let rows: Vec<Vec<String>> = purchases::SHORT.iter().filter_map(row).collect();
        (!rows.is_empty()).then(|| Table {
            caption: self.words.plain("short-caption"),
            columns: vec![
                (String::new(), Align::Tick),
                (self.words.plain("column-what"), Align::Start),
                (self.words.plain("column-how-much"), Align::End),
                (self.words.plain("column-bought-at"), Align::Line),
            ],
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        })
    }
}
