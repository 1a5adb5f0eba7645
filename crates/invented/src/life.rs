//! One batch day by day.

use crate::birds::{Brood, Mood, SPOTS, Spot};
use crate::deaths::{self, Danger, Deaths};
use crate::house::{self, Inside};
use crate::luck::Luck;
use crate::market::{self, SALE_DAYS, Sale};
use crate::scenario::{Event, Scenario};
use crate::store_room::{Delivery, StoreRoom, phase_of};
use crate::weather;

/// The matters that have a stream of luck each.
pub(crate) mod matter {
    pub(crate) const WEATHER: u64 = 1;
    pub(crate) const BROOD: u64 = 2;
    pub(crate) const AIR: u64 = 3;
    pub(crate) const DEATHS: u64 = 4;
    pub(crate) const APPETITE: u64 = 5;
    pub(crate) const MARKET: u64 = 6;
    pub(crate) const PEN: u64 = 7;
}

/// What a batch lived through.
#[derive(Clone, Debug, PartialEq)]
pub struct Life {
    /// The chicks as they came.
    pub arrival: Arrival,
    /// Every day, from the day they came on.
    pub days: Vec<Day>,
    /// Feed as it came.
    pub deliveries: Vec<Delivery>,
    pub(crate) brood: Brood,
}

/// The chicks as they came.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arrival {
    /// Counted at the farm, the dead among them.
    pub counted: u32,
    /// Dead on arrival.
    pub dead: u32,
    /// Too weak to keep.
    pub weak: u32,
    /// Age of their parents, weeks.
    pub parent_weeks: f64,
}

/// A day.
#[derive(Clone, Debug, PartialEq)]
pub struct Day {
    /// Day of age.
    pub age: i32,
    /// Birds alive in the morning.
    pub alive: u32,
    /// Who died.
    pub deaths: Deaths,
    /// Who left alive.
    pub sales: Vec<Sale>,
    /// Feed given, kg, by phase.
    pub feed_kg: [f64; 3],
    /// Water drunk, L.
    pub water_l: f64,
    /// Mean weight in the morning, g.
    pub weight_g: f64,
    /// Degrees by which it was too hot.
    pub too_hot_c: f64,
    pub(crate) inside: Inside,
    /// The clocks of the spots, days.
    pub(crate) clocks: [f64; SPOTS.len()],
    pub(crate) sickness: f64,
    /// Whether a drinker line failed.
    pub(crate) is_dry: bool,
}

/// Lives a batch.
pub fn live(scenario: &Scenario) -> Life {
    let mut flock = Flock::arrive(scenario);
    let last = scenario.sale_age + SALE_DAYS;
    let weather = weather::days(
        scenario.placement,
        last + 1,
        &scenario.events,
        &mut Luck::of(scenario.seed, matter::WEATHER),
    );
    let mut days = Vec::new();
    for (age, outside) in (0..=last).zip(&weather) {
        if flock.alive > 0 {
            days.push(flock.day(age, outside));
        }
    }
    Life { arrival: flock.arrival, days, deliveries: flock.store.deliveries, brood: flock.brood }
}

/// How well each spot does: a draught at the door, stale air at the far end.
const BETTER: [f64; SPOTS.len()] = [0.985, 1.02, 0.965];

struct Flock<'a> {
    scenario: &'a Scenario,
    arrival: Arrival,
    brood: Brood,
    spots: [Spot; SPOTS.len()],
    alive: u32,
    store: StoreRoom,
    hardy: f64,
    air: Luck,
    danger: Luck,
    appetite: Luck,
    market: Luck,
}

impl Flock<'_> {
    fn arrive(scenario: &Scenario) -> Flock<'_> {
        let luck = |matter| Luck::of(scenario.seed, matter);
        let (mut hatchery, mut danger) = (luck(matter::BROOD), luck(matter::DEATHS));
        let parent_weeks = f64::from(hatchery.whole(28, 56));
        let brood = Brood::of(parent_weeks, &mut hatchery);
        // Boxes hold about two in a hundred more than is paid for.
        let counted = scenario.chicks + (f64::from(scenario.chicks) * hatchery.between(0.012, 0.022)) as u32;
        let (dead, weak) = deaths::on_arrival(counted, &mut danger);
        let hardy = deaths::batch(&mut danger) * deaths::of_small_chicks(&brood);
        Flock {
            scenario,
            arrival: Arrival { counted, dead, weak, parent_weeks },
            spots: BETTER.map(|better| Spot { clock: 0.0, better }),
            alive: counted - dead - weak,
            store: StoreRoom::with_starter(scenario.chicks),
            brood,
            hardy,
            air: luck(matter::AIR),
            danger,
            appetite: luck(matter::APPETITE),
            market: luck(matter::MARKET),
        }
    }

    fn day(&mut self, age: i32, outside: &weather::Outside) -> Day {
        let alive = self.alive;
        let clocks = self.spots.map(|spot| spot.clock);
        let weight_g = self.mean_g();
        let flock_kg = f64::from(alive) * weight_g / 1000.0;
        let inside = house::air(&self.scenario.house, outside, age, flock_kg, &mut self.air);
        let too_hot_c = house::too_hot_c(&inside, age);
        let sickness = deaths::sickness(&self.scenario.events, age);
        let is_dry = is_dry(&self.scenario.events, age);
        let danger = Danger { age, alive, weight_g, inside: &inside, sickness, batch: self.hardy };
        let deaths = deaths::of_day(&danger, &mut self.danger);
        self.alive -= deaths.all();
        let (feed_kg, wanted_kg) = self.eat(age, Mood { too_hot_c, appetite: 1.0 - 0.35 * sickness }, is_dry);
        let water_l = self.drink(feed_kg.iter().sum(), wanted_kg, too_hot_c, is_dry);
        let sales = self.sell(age);
        Day {
            age,
            alive,
            deaths,
            sales,
            feed_kg,
            water_l,
            weight_g,
            too_hot_c,
            inside,
            clocks,
            sickness,
            is_dry,
        }
    }

    fn mean_g(&self) -> f64 {
        self.spots.iter().map(|spot| self.brood.mean_g(spot.clock)).sum::<f64>() / SPOTS.len() as f64
    }

    /// Feeds the flock, which grows by it, and orders for the days to come; says what was given and what was wanted.
    fn eat(&mut self, age: i32, mood: Mood, is_dry: bool) -> ([f64; 3], f64) {
        self.store.take_in(age);
        let whim = self.appetite.factor(0.03);
        let hungers: [_; SPOTS.len()] = std::array::from_fn(|at| {
            // Who does not drink does not eat.
            let thirst = if is_dry && at == FAR_END { 0.35 } else { 1.0 };
            let mood = Mood { appetite: mood.appetite * whim * thirst, ..mood };
            self.spots[at].hunger(&self.brood, mood)
        });
        let heads = f64::from(self.alive) / SPOTS.len() as f64;
        let wanted_kg: f64 = hungers.iter().map(|hunger| heads * hunger.wants_kg).sum();
        let given = self.store.give(wanted_kg, phase_of(self.scenario, age));
        let share = given.iter().sum::<f64>() / wanted_kg.max(1e-9);
        for (spot, hunger) in self.spots.iter_mut().zip(&hungers) {
            spot.live_on(hunger, hunger.wants_kg * share);
        }
        self.store.order(self.scenario, age, wanted_kg);
        (given, wanted_kg)
    }

    /// Litres by the feed eaten, more by the degrees it is too hot. Birds at a dry line walk to another one late and drink less.
    fn drink(&mut self, feed_kg: f64, wanted_kg: f64, too_hot_c: f64, is_dry: bool) -> f64 {
        let a_kg = 1.72 * (1.0 + 0.06 * too_hot_c.min(12.0));
        let reached = if is_dry { 0.8 } else { 1.0 };
        // Who goes hungry still drinks.
        let for_kg = 0.6 * feed_kg + 0.4 * wanted_kg;
        for_kg * a_kg * reached * self.appetite.factor(0.035)
    }

    fn sell(&mut self, age: i32) -> Vec<Sale> {
        let mean_g = self.mean_g();
        let taken = market::taken(self.scenario, age, self.alive, &mut self.market);
        self.alive -= taken.iter().map(|(_, birds)| birds).sum::<u32>();
        let prices = &self.scenario.prices;
        taken
            .into_iter()
            .map(|(buyer, birds)| market::sale(buyer, birds, mean_g, prices, &mut self.market))
            .collect()
    }
}

/// The spot whose line can fail.
const FAR_END: usize = SPOTS.len() - 1;

fn is_dry(events: &[Event], age: i32) -> bool {
    events.iter().any(|event| matches!(*event, Event::DrinkerLineFails { day } if day == age))
}
