//! What was bought and sold, and who still owed whom.

use super::{Pen, money, stepped, text};
use crate::life::Day;
use crate::market::{BUYERS, Sale};
use crate::scenario::Heat;
use crate::store_room::{BAG_KG, Delivery, PHASES};

/// Who sells feed, and after how many days they are paid.
const FEED_SELLER: &str = "Plateau Feeds";
const FEED_CREDIT: i32 = 14;

/// A bag of litter, and disinfectant for a house.
const LITTER_BAG: f64 = 22.5;
const DISINFECTANT_L: f64 = 96.0;

/// Days after the last bird on which the litter is sold and the batch is closed.
const LITTER_AFTER: i32 = 4;
const CLOSED_AFTER: i32 = 8;

impl Pen<'_> {
    /// What is bought before the chicks come.
    pub(super) fn before(&mut self) {
        self.programme();
        let bags = (self.scenario.house.floor_m2 * 0.07 / 0.12).ceil();
        self.purchase(-6, ["litter", "Rice husk", "bag"], bags, bags * LITTER_BAG);
        self.purchase(-12, ["disinfectant", "Disinfectant", "l"], 2.0, 2.0 * DISINFECTANT_L);
        let first = self.life.deliveries.iter().filter(|cart| cart.age < 0).copied().collect::<Vec<_>>();
        for cart in first {
            self.delivery(&cart);
        }
        let kg: f64 = self.life.days.iter().map(|day| day.inside.fuel_kg).sum();
        let (name, unit, each_kg) = match self.scenario.house.heat {
            Heat::Charcoal => ("Charcoal", "sack", 45.0),
            Heat::Gas => ("Gas", "cylinder", 13.0),
        };
        let pieces = (kg / each_kg).ceil().max(2.0);
        let first = (pieces / 2.0).ceil();
        for (age, some) in [(-3, first), (6, pieces - first)] {
            self.purchase(age, ["fuel", name, unit], some, some * self.scenario.prices.fuel);
        }
    }

    pub(super) fn money(&mut self, day: &Day) {
        let carts = self.life.deliveries.iter().filter(|cart| cart.age == day.age);
        for cart in carts.copied().collect::<Vec<_>>() {
            self.delivery(&cart);
        }
        for sale in &day.sales {
            self.sale(day.age, sale);
        }
        self.regular(day.age);
        if day.age == 20 {
            self.school_orders(day);
        }
    }

    /// What comes round: vaccines, wages, power.
    fn regular(&mut self, age: i32) {
        let share = self.share();
        match age {
            5 => {
                let cost = 1100.0 * share.sqrt();
                self.purchase(age, ["vaccine", "Newcastle and Gumboro", "vial"], 4.0, cost);
            }
            14 | 28 | 41 => self.cost(age, "labour", 1200.0, "Two helpers, two weeks"),
            10 | 24 | 38 => self.cost(age, "power", 260.0 * share.sqrt(), "Pump and lamps"),
            16 => self.cost(age, "airtime", 60.0, ""),
            _ => {}
        }
    }

    fn purchase(&mut self, age: i32, [what, name, unit]: [&str; 3], amount: f64, cost: f64) {
        let typed = vec![
            ("what", text(what)),
            ("name", text(name)),
            ("amount", stepped(amount, 1.0)),
            ("unit", text(unit)),
            ("cost", money(cost)),
            ("payment", text("now")),
        ];
        self.write(age, 12, "purchase", typed);
    }

    fn cost(&mut self, age: i32, what: &str, cost: f64, remark: &str) {
        let mut typed = vec![("what", text(what)), ("cost", money(cost))];
        if !remark.is_empty() {
            typed.push(("remark", text(remark)));
        }
        self.write(age, 18, "cost", typed);
    }

    fn delivery(&mut self, cart: &Delivery) {
        let price = self.scenario.prices.bags[cart.phase];
        let milled = self.luck.whole(3, 12);
        let typed = vec![
            ("phase", text(PHASES[cart.phase])),
            ("bags", cart.bags.to_string()),
            ("bag_kg", stepped(BAG_KG, 1.0)),
            ("price_each", money(price)),
            ("milled", self.day(cart.age - milled).to_string()),
            ("seller", text(FEED_SELLER)),
            ("payment", text("on-credit")),
            ("due", self.day(cart.age + FEED_CREDIT).to_string()),
        ];
        // Carted in the morning, before the day's feed is given.
        self.write(cart.age, 8, "feed-delivered", typed);
        let cost = f64::from(cart.bags) * price;
        self.payment(cart.age + FEED_CREDIT, "paid-out", cost, FEED_SELLER);
    }

    fn payment(&mut self, age: i32, way: &str, amount: f64, who: &str) {
        // What is due after the batch is settled on the day it is closed.
        let age = age.min(self.last_age() + CLOSED_AFTER);
        let typed = vec![("way", text(way)), ("amount", money(amount)), ("who", text(who))];
        self.write(age, 14, "payment", typed);
    }

    fn sale(&mut self, age: i32, sale: &Sale) {
        let Some(buyer) = sale.buyer.and_then(|at| BUYERS.get(at)) else {
            let typed = vec![("birds", sale.birds.to_string()), ("why", text("home"))];
            return self.write(age, 16, "birds-out", typed);
        };
        let mut typed = vec![
            ("birds", sale.birds.to_string()),
            ("live_kg", stepped(sale.live_kg, 0.5)),
            ("income", money(sale.income)),
            ("buyer", text(buyer.name)),
            ("basis", text(buyer.basis)),
        ];
        match buyer.credit_days {
            None => typed.push(("payment", text("now"))),
            Some(days) => {
                let now = (sale.income / 2.0).floor();
                typed.extend([("payment", text("part")), ("paid_now", money(now))]);
                typed.push(("due", self.day(age + days).to_string()));
                self.payment(age + days, "received", sale.income - now, buyer.name);
            }
        }
        self.write(age, 9, "sale", typed);
        if buyer.basis == "live-kg" {
            self.cost(age, "transport", 400.0, "Pickup to town");
        }
    }

    fn school_orders(&mut self, day: &Day) {
        let birds = day.alive / 50 * 10;
        let typed = vec![
            ("buyer", text(BUYERS[1].name)),
            ("birds", birds.max(10).to_string()),
            ("least_kg", text("1.7")),
            ("most_kg", text("2.4")),
            ("latest", self.day(self.scenario.sale_age + 3).to_string()),
            ("basis", text("live-kg")),
            ("price", money(self.scenario.prices.school_kg)),
        ];
        self.write(day.age, 12, "order", typed);
    }

    /// What comes after the last bird.
    pub(super) fn closing(&mut self) {
        let last = self.last_age();
        let income = self.scenario.prices.litter_sold * self.share();
        let bags = (self.scenario.house.floor_m2 * 0.8).round();
        let typed = vec![
            ("income", money(income.round())),
            ("bags", stepped(bags, 1.0)),
            ("buyer", text("Vegetable growers")),
        ];
        self.write(last + LITTER_AFTER, 10, "litter-sold", typed);
        self.cost(last + 1, "own-labour", 5000.0 * self.share().sqrt(), "");
        self.write(last + CLOSED_AFTER, 18, "batch-closed", vec![("birds_left", text("0"))]);
    }
}
