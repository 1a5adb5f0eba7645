//! The knobs of an invented batch.

use quantity::CivilDay;

/// Everything that an invented batch hangs on. The same scenario gives the same batch, to the last bird.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    /// Names the luck.
    pub seed: u64,
    /// The day the chicks come: day of age 0.
    pub placement: CivilDay,
    /// Chicks ordered and paid for, 20 at least.
    pub chicks: u32,
    /// The house.
    pub house: House,
    /// Last day of age on which starter is fed, and grower.
    pub phases_until: [i32; 2],
    /// Age of the first sale to a trader.
    pub sale_age: i32,
    /// What goes wrong.
    pub events: Vec<Event>,
    /// What things cost.
    pub prices: Prices,
    /// Work that is ticked off when it is done.
    pub jobs: Vec<Job>,
}

impl Scenario {
    /// A batch in which nothing particular goes wrong.
    pub fn quiet(seed: u64, placement: CivilDay, chicks: u32) -> Scenario {
        Scenario {
            seed,
            placement,
            chicks,
            house: House::LONG,
            phases_until: [14, 28],
            sale_age: 40,
            events: Vec::new(),
            prices: Prices::MANGO_RIDGE,
            jobs: Vec::new(),
        }
    }

    /// The same with something that goes wrong.
    pub fn with(mut self, event: Event) -> Scenario {
        self.events.push(event);
        self
    }
}

/// Work that a plan asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// How it is called where it is ticked off.
    pub key: String,
    /// Its first day of age; below 0 before the chicks come.
    pub first: i32,
    /// Its last; ticked each day from the first on.
    pub last: i32,
    /// Whether it is done whatever the luck: nobody forgets to order feed.
    pub is_never_forgotten: bool,
}

/// What goes wrong, by day of age.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Event {
    /// The line at the far end gives no water for most of a day.
    DrinkerLineFails {
        /// The day.
        day: i32,
    },
    /// Days hotter by 4 °C.
    HotSpell {
        /// The first of them.
        first: i32,
        /// How many.
        days: i32,
    },
    /// The first feed that is due on that day or later comes late.
    LateFeed {
        /// The day.
        day: i32,
        /// By how many days.
        late: i32,
    },
    /// Some days of sickness, at their worst in the middle.
    SickSpell {
        /// The first of them.
        first: i32,
        /// How many.
        days: i32,
    },
}

/// What an invented house does to its air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct House {
    /// Floor, m².
    pub floor_m2: f64,
    /// How much warmer than outside it gets under its roof on a hot afternoon, °C.
    pub roof_c: f64,
    /// What the chicks are kept warm with.
    pub heat: Heat,
}

impl House {
    /// The larger house of Mango Ridge, with a ceiling of reed mats.
    pub const LONG: House = House { floor_m2: 162.0, roof_c: 0.6, heat: Heat::Charcoal };
    /// The smaller one, without a ceiling.
    pub const LOWER: House = House { floor_m2: 84.0, roof_c: 1.8, heat: Heat::Gas };
}

/// What chicks are kept warm with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heat {
    /// Charcoal by the sack of 45 kg.
    Charcoal,
    /// Gas by the cylinder of 13 kg.
    Gas,
}

/// What things cost, in whole units of the farm's money.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// A chick.
    pub chick: f64,
    /// A bag of 50 kg of starter, grower, finisher.
    pub bags: [f64; 3],
    /// A kilogram alive to the trader.
    pub trader_kg: f64,
    /// A kilogram alive to the school kitchen.
    pub school_kg: f64,
    /// A bird at the farm gate.
    pub gate_bird: f64,
    /// A sack of charcoal or a cylinder of gas.
    pub fuel: f64,
    /// All litter of the house, sold.
    pub litter_sold: f64,
}

impl Prices {
    /// The prices of Mango Ridge.
    pub const MANGO_RIDGE: Prices = Prices {
        chick: 27.0,
        bags: [612.0, 588.0, 575.0],
        trader_kg: 60.0,
        school_kg: 66.0,
        gate_bird: 140.0,
        fuel: 240.0,
        litter_sold: 900.0,
    };
}
