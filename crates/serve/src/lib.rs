#![doc = include_str!("../README.md")]

mod adopt;
mod batch;
mod before;
mod boxes;
mod calendar;
mod call;
mod day;
mod desk;
mod draft;
mod exchange;
mod guard;
mod house;
mod keep;
mod listen;
mod pages;
mod print;
mod route;
mod seen;
mod session;
mod settle;
mod sheet;
mod site;
mod stamp;
mod sync;
mod tick;
mod trouble;
mod typed;
mod weighing;

pub use day::{local, offset_of};
pub use desk::{Desk, Open, WriteError, Written};
pub use exchange::{Exchange, ExchangeError, Heard};
pub use listen::{ServeError, bind, serve, serve_on};
pub use route::router;
pub use session::{Loopback, reader, sole_farm, sole_farm_like};
pub use site::{Site, SiteOptions};
pub use sync::TALK;
