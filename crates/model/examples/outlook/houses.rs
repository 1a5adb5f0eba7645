//! The invented houses on which forecasts are tried: each has its roof, each batch its season and its mishaps.

use invented::{Event, House, Scenario};
use model::chance::Draw;
use model::quantile;
use quantity::CivilDay;

/// Houses, the batches that teach in each at most, and those that are forecast after them.
pub const HOUSES: u32 = 400;
pub const TEACHING: u32 = 5;
pub const FORECAST: u32 = 5;

/// The last day that is forecast; birds are sold some days later.
pub const LAST: i32 = 40;

/// A batch of a house.
pub fn scenario(house: u32, number: u32, first: CivilDay) -> Scenario {
    let share = |stream: u32, number: u32| {
        let normal = Draw { seed: 3, scenario: house, stream, day: number, n: 0 }.normal();
        quantile::normal_share_below(normal)
    };
    let seed = u64::from(house) * 100 + u64::from(number);
    let placement = first.plus_days(70 * number as i32 + (365.0 * share(0, 0)) as i32);
    let mut scenario = Scenario::quiet(seed, placement, 300 + (1_300.0 * share(1, 0)) as u32);
    scenario.house = House { roof_c: 3.0 * share(2, 0), ..House::LONG };
    scenario.sale_age = LAST + 6;
    let day = |stream: u32| 8 + (30.0 * share(stream, number)) as i32;
    let mishaps = [
        Event::HotSpell { first: day(10), days: 6 },
        Event::SickSpell { first: day(11), days: 6 },
        Event::LateFeed { day: day(12), late: 2 },
        Event::DrinkerLineFails { day: day(13) },
    ];
    for (stream, mishap) in (20..).zip(mishaps) {
        if share(stream, number) < 0.25 {
            scenario = scenario.with(mishap);
        }
    }
    scenario
}
