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
mod site;
mod stamp;
mod trouble;
mod typed;

pub use listen::{ServeError, bind, serve, serve_on};
pub use route::router;
pub use session::{Loopback, sole_farm};
pub use site::{Site, SiteOptions};
