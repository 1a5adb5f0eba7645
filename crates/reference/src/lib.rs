//! Published tables shipped with the program (CSV with a source header), and how far each can be trusted.
//!
//! The tables are compiled into the program. Reading one cannot fail at run time once the tests have passed;
//! it still answers with an error, because a grower's own table takes the same way.

pub mod bibliography;
pub mod brooder;
pub mod chicks;
pub mod crop;
pub mod equipment;
pub mod fuel;
pub mod growth;
pub mod heat;
pub mod heat_loss;
pub mod light;
pub mod litter;
pub mod losses;
pub mod ring;
pub mod stocking;
pub mod table;
pub mod temperature;

pub use table::{Table, TableError};
