//! Orders filled from the flock as it is likely to be: who gets which birds on which day, and what cannot be met and why.

use model::orders::{self, Order};
use model::quantile;
use quantity::CivilDay;

use crate::diary::{Diary, Noted};
use crate::families::selling::{SaleDay, Selling};
use crate::sale::Sale;
use crate::weighing::Weighing;

/// Classes of weight that the flock is told apart in, each of as many birds.
const CLASSES: usize = 200;
/// How far birds of a flock differ in weight while no weighing tells: coefficient of variation, a share (common practice).
const USUAL_CV: f64 = 0.10;
/// The least and the most that a weighing is believed to tell of it.
const CV_BELIEVED: (f64, f64) = (0.04, 0.30);
/// Kilograms dressed of a kilogram alive, without feet, head and giblets: 68 to 72 % (from memory).
pub const DRESSED: f64 = 0.70;

/// What an order is paid by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The bird.
    Bird,
    /// A kilogram alive.
    LiveKilogram,
    /// A kilogram dressed.
    DressedKilogram,
}

impl Basis {
    /// The stable name, as the book has it.
    pub fn name(self) -> &'static str {
        match self {
            Basis::Bird => "bird",
            Basis::LiveKilogram => "live-kg",
            Basis::DressedKilogram => "dressed-kg",
        }
    }

    fn of(word: Option<&str>, usual: Basis) -> Basis {
        match word {
            Some("bird") => Basis::Bird,
            Some("live-kg") => Basis::LiveKilogram,
            Some("dressed-kg") => Basis::DressedKilogram,
            _ => usual,
        }
    }
}

/// An order that stands in the book.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// Who.
    pub buyer: String,
    /// Birds still to be delivered.
    pub birds: u32,
    /// The lightest bird that is taken, kg.
    pub least_kg: Option<f64>,
    /// The heaviest.
    pub most_kg: Option<f64>,
    /// The last day.
    pub latest: Option<CivilDay>,
    /// What the price is for.
    pub basis: Basis,
    /// The price; `None` where none was agreed, and today's is taken.
    pub price: Option<f64>,
}

/// Why an order gets fewer birds than it asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Short {
    /// Its last day is over.
    Over,
    /// On every day up to its last a wait holds the birds back.
    Held,
    /// No bird weighs what it asks on any day up to its last.
    NoBird,
    /// Some birds do, but not so many, or others have them.
    TooFew,
}

impl Short {
    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Short::Over => "over",
            Short::Held => "held",
            Short::NoBird => "no-bird",
            Short::TooFew => "too-few",
        }
    }
}

/// An order and what it gets.
#[derive(Clone, Debug, PartialEq)]
pub struct Filled {
    /// The order.
    pub wanted: Wanted,
    /// The day of age it is delivered on; `None` where it gets none.
    pub day: Option<i32>,
    /// Birds it gets.
    pub birds: u32,
    /// Their mean weight, kg; 0 without any.
    pub mean_kg: f64,
    /// What it pays.
    pub pays: f64,
    /// Why it gets fewer than it asks; `None` where it gets all.
    pub short: Option<Short>,
    /// The share of futures in which so many birds weigh what it asks on its day, were it the only order; `None` without a day.
    pub chance: Option<f64>,
}

/// All orders of a batch.
pub struct Orders {
    /// In the order of the book.
    pub orders: Vec<Filled>,
    /// Birds that no order has.
    pub left: u32,
    /// What they weigh on average on the day of sale, kg; 0 without any.
    pub left_kg: f64,
    /// What the whole flock would, kg.
    pub flock_kg: f64,
    /// How far birds differ, a share.
    pub cv: f64,
    /// Whether a weighing tells so.
    pub cv_is_weighed: bool,
    /// Weights of the classes on the day of sale, kg, and birds of each.
    pub classes: Vec<(f64, u32)>,
    /// The day of age on which the others go.
    pub day: i32,
}

impl Orders {
    /// Fills the orders of a batch; `None` without any, and while no day of sale may be advised.
    pub fn of(sale: &Sale) -> Option<Orders> {
        let diary = &sale.walk.diary;
        let selling = sale.may_be_advised()?;
        let wanted = wanted(diary, selling);
        if wanted.is_empty() {
            return None;
        }
        let end = selling.best_for_house().or_else(|| selling.best())?;
        let (cv, cv_is_weighed) = cv(diary);
        let flock = Flock::new(selling, end, cv);
        let chosen: Vec<Result<Offer, Short>> =
            wanted.iter().map(|wanted| flock.best_day(diary, wanted)).collect();
        let offers: Vec<Order> = chosen
            .iter()
            .zip(&wanted)
            .map(|(offer, wanted)| match offer {
                Ok(offer) => offer.order.clone(),
                Err(_) => Order { birds: wanted.birds, pays: vec![None; flock.birds.len()] },
            })
            .collect();
        let filled = orders::fill(&flock.birds, &flock.elsewhere, &offers)?;
        let told = wanted.into_iter().zip(&chosen).zip(&filled.given);
        let left_kg = flock.mean_kg(&filled.left, end);
        Some(Orders {
            orders: told.map(|((wanted, offer), given)| flock.told(sale, wanted, offer, given)).collect(),
            left: filled.left.iter().sum(),
            left_kg,
            flock_kg: flock.mean_kg(&flock.birds, end),
            cv,
            cv_is_weighed,
            classes: flock
                .factors
                .iter()
                .map(|factor| flock.kg(*factor, end))
                .zip(flock.birds.clone())
                .collect(),
            day: end.day,
        })
    }
}

/// Orders that are not delivered yet: what was sold to a buyer since comes off what the buyer asked for.
fn wanted(diary: &Diary, selling: &Selling) -> Vec<Wanted> {
    let usual = match selling.terms.sold_by {
        model::scenarios::SoldBy::Head => Basis::Bird,
        model::scenarios::SoldBy::Kilogram => Basis::LiveKilogram,
    };
    let buyer_of = |note: &Noted| note.text("buyer").unwrap_or_default().trim().to_lowercase();
    let sold = |order: &Noted| -> f64 {
        let sales =
            diary.of_kind("sale").filter(|sale| sale.day >= order.day && buyer_of(sale) == buyer_of(order));
        sales.filter_map(|sale| sale.number("birds")).sum()
    };
    let one = |note: &Noted| Wanted {
        buyer: note.text("buyer").unwrap_or_default().to_owned(),
        birds: (note.number("birds").unwrap_or_default() - sold(note)).max(0.0) as u32,
        least_kg: note.number("least_kg"),
        most_kg: note.number("most_kg"),
        latest: note.text("latest").and_then(CivilDay::parse),
        basis: Basis::of(note.text("basis"), usual),
        price: note.number("price"),
    };
    diary.of_kind("order").map(one).filter(|wanted| wanted.birds > 0).collect()
}

/// How far birds differ, and whether the last weighing tells it.
fn cv(diary: &Diary) -> (f64, bool) {
    let weighed = || {
        let weighing = Weighing::on(diary, Weighing::last_day(diary)?);
        weighing.worked_out()?.outcome.number("weighing.cv")
    };
    match weighed() {
        Some(percent) => ((percent / 100.0).clamp(CV_BELIEVED.0, CV_BELIEVED.1), true),
        None => (USUAL_CV, false),
    }
}

/// A day for an order, and what it then pays.
struct Offer {
    day: SaleDay,
    order: Order,
}

/// The flock by classes of weight. A bird that is heavy stays heavy.
struct Flock<'a> {
    selling: &'a Selling,
    end: SaleDay,
    /// So many times the mean each class weighs.
    factors: Vec<f64>,
    birds: Vec<u32>,
    /// What a bird of each class brings on the day of sale.
    elsewhere: Vec<f64>,
    /// Standard deviation of the logarithm of weight.
    deviation: f64,
}

impl<'a> Flock<'a> {
    fn new(selling: &'a Selling, end: &SaleDay, cv: f64) -> Flock<'a> {
        let deviation = (cv * cv).ln_1p().sqrt();
        let share = |at: usize| (at as f64 + 0.5) / CLASSES as f64;
        let factor = |at: usize| (deviation * quantile::normal(share(at)).unwrap_or_default()).exp();
        let factors: Vec<f64> = (0..CLASSES).map(factor).collect();
        let mean = factors.iter().sum::<f64>() / CLASSES as f64;
        let factors: Vec<f64> = factors.into_iter().map(|factor| factor / mean).collect();
        let whole = |at: usize| (end.birds * at as f64 / CLASSES as f64).floor() as u32;
        let birds = (0..CLASSES).map(|at| whole(at + 1) - whole(at)).collect();
        let mut flock = Flock { selling, end: *end, factors, birds, elsewhere: Vec::new(), deviation };
        flock.elsewhere = flock.factors.iter().map(|factor| flock.market(*factor)).collect();
        flock
    }

    fn kg(&self, factor: f64, day: &SaleDay) -> f64 {
        factor * day.weight_g / 1000.0
    }

    fn market(&self, factor: f64) -> f64 {
        match self.selling.terms.sold_by {
            model::scenarios::SoldBy::Head => self.selling.terms.price,
            model::scenarios::SoldBy::Kilogram => self.selling.terms.price * self.kg(factor, &self.end),
        }
    }

    /// The day on which an order by itself would get the most birds, and among such days the one that brings most.
    fn best_day(&self, diary: &Diary, wanted: &Wanted) -> Result<Offer, Short> {
        let latest = wanted.latest.and_then(|day| diary.age(day)).unwrap_or(self.end.day).min(self.end.day);
        let days: Vec<&SaleDay> = self.selling.sales.days.iter().filter(|day| day.day <= latest).collect();
        let Some(_) = days.first() else { return Err(Short::Over) };
        let free: Vec<&SaleDay> = days.into_iter().filter(|day| !self.selling.is_blocked(day.day)).collect();
        let Some(_) = free.first() else { return Err(Short::Held) };
        let offers = free.into_iter().filter_map(|day| {
            let order = Order { birds: wanted.birds, pays: self.pays(wanted, day) };
            let alone = orders::fill(&self.birds, &self.elsewhere, std::slice::from_ref(&order))?;
            let birds: u32 = alone.given.iter().flatten().sum();
            Some((birds, alone.brings, Offer { day: *day, order }))
        });
        let is_better =
            |one: &(u32, f64, Offer), other: &(u32, f64, Offer)| (one.0, one.1) > (other.0, other.1);
        let best = offers.reduce(|best, one| if is_better(&one, &best) { one } else { best });
        best.filter(|best| best.0 > 0).map(|best| best.2).ok_or(Short::NoBird)
    }

    /// What an order pays for a bird of each class on a day, with what the bird then no longer eats until the day of sale.
    fn pays(&self, wanted: &Wanted, day: &SaleDay) -> Vec<Option<f64>> {
        let after = |one: &&SaleDay| one.day > day.day && one.day <= self.end.day;
        let days = self.selling.sales.days.iter().filter(after);
        let saved: f64 = days.filter_map(|one| self.selling.cost_of_waiting(one)).sum();
        let takes = |kg: f64| {
            wanted.least_kg.is_none_or(|least| kg >= least) && wanted.most_kg.is_none_or(|most| kg <= most)
        };
        let weights = self.factors.iter().map(|factor| self.kg(*factor, day));
        weights.map(|kg| takes(kg).then(|| self.price(wanted, kg) + saved)).collect()
    }

    /// What an order pays for a bird.
    fn price(&self, wanted: &Wanted, kg: f64) -> f64 {
        let Some(price) = wanted.price else {
            return match self.selling.terms.sold_by {
                model::scenarios::SoldBy::Head => self.selling.terms.price,
                model::scenarios::SoldBy::Kilogram => self.selling.terms.price * kg,
            };
        };
        match wanted.basis {
            Basis::Bird => price,
            Basis::LiveKilogram => price * kg,
            Basis::DressedKilogram => price * kg * DRESSED,
        }
    }

    /// The mean weight of some birds on a day; 0 without any.
    fn mean_kg(&self, birds: &[u32], day: &SaleDay) -> f64 {
        let all: f64 = birds.iter().map(|birds| f64::from(*birds)).sum();
        let kilograms: f64 = birds
            .iter()
            .zip(&self.factors)
            .map(|(birds, factor)| f64::from(*birds) * self.kg(*factor, day))
            .sum();
        model::budget::per(kilograms, all).unwrap_or_default()
    }

    fn told(&self, sale: &Sale, wanted: Wanted, offer: &Result<Offer, Short>, given: &[u32]) -> Filled {
        let birds: u32 = given.iter().sum();
        let (day, short) = match offer {
            Ok(offer) => (Some(offer.day), (birds < wanted.birds).then_some(Short::TooFew)),
            Err(short) => (None, Some(*short)),
        };
        let price_of = |day: &SaleDay| -> f64 {
            let each = given.iter().zip(&self.factors);
            each.map(|(birds, factor)| f64::from(*birds) * self.price(&wanted, self.kg(*factor, day))).sum()
        };
        Filled {
            day: day.map(|day| day.day),
            birds,
            mean_kg: day.map_or(0.0, |day| self.mean_kg(given, &day)),
            pays: day.as_ref().map_or(0.0, price_of),
            short,
            chance: day.and_then(|day| self.chance(sale, &wanted, day.day)),
            wanted,
        }
    }

    /// The share of futures in which so many birds weigh what is asked on a day.
    fn chance(&self, sale: &Sale, wanted: &Wanted, day: i32) -> Option<f64> {
        let (now, futures) = sale.walk.plan.outcome.drawn().futures()?;
        let at = usize::try_from(day - now.first_day).ok()?;
        let below = |kg: Option<f64>, weight_g: f64, none: f64| {
            let Some(kg) = kg else { return none };
            // The mean of a lognormal law lies half its variance above its middle.
            let middle = weight_g / 1000.0 * (-self.deviation * self.deviation / 2.0).exp();
            quantile::normal_share_below((kg / middle).ln() / self.deviation)
        };
        let meets = |future: &&model::outlook::futures::Future| {
            future.days.get(at).is_some_and(|point| {
                let share =
                    below(wanted.most_kg, point.weight_g, 1.0) - below(wanted.least_kg, point.weight_g, 0.0);
                share * point.birds >= f64::from(wanted.birds)
            })
        };
        model::budget::per(futures.iter().filter(meets).count() as f64, futures.len() as f64)
    }
}
