#![doc = include_str!("../README.md")]

mod birds;
mod deaths;
mod house;
mod life;
mod luck;
mod market;
mod pen;
mod scenario;
mod store_room;
mod weather;

pub use deaths::Deaths;
pub use life::{Arrival, Day, Life, live};
pub use market::{BUYERS, Buyer, Sale};
pub use pen::{Line, write_down};
pub use scenario::{Event, Heat, House, Job, Prices, Scenario};
pub use store_room::{Delivery, PHASES};
pub use weather::Outside;
