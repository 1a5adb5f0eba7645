//! Many houses that might be this one: what is likely of heat, fuel and hot hours, in a table.

use advice::air::many::{Member, point};
use quantity::Unit;
use schemars::JsonSchema;
use serde::Serialize;

use crate::document::{Align, Block, Document, Table};
use crate::viewer::Viewer;
use crate::{say, show};

/// What is likely of one thing.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct LikelyJson {
    /// Its unit.
    pub unit: &'static str,
    /// As often below as above.
    pub middle: f64,
    /// One in twenty lies below.
    pub low: f64,
    /// One in twenty lies above.
    pub high: f64,
}

/// What many houses that might be this one say.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ManyHousesView {
    /// How many.
    pub members: usize,
    /// What their luck hangs on.
    pub seed: u64,
    /// Each thing that is told, by name.
    pub likely: std::collections::BTreeMap<&'static str, LikelyJson>,
}

/// A thing that is told of them.
struct Asked {
    name: &'static str,
    unit: Unit,
    decimals: u8,
    of: fn(&Member) -> Option<f64>,
}

static ASKED: [Asked; 5] = [
    Asked { name: "heat-peak", unit: Unit::Kilowatt, decimals: 1, of: |member| Some(member.heat_peak_kw) },
    Asked { name: "heat", unit: Unit::KilowattHour, decimals: 0, of: |member| Some(member.heat_kwh) },
    Asked { name: "fuel", unit: Unit::Kilogram, decimals: 0, of: |member| member.fuel_kg },
    Asked { name: "hot-hours", unit: Unit::Hour, decimals: 0, of: |member| Some(member.alert_hours) },
    Asked { name: "dangerous-hours", unit: Unit::Hour, decimals: 0, of: |member| Some(member.danger_hours) },
];

fn likely(members: &[Member], asked: &Asked) -> Option<[f64; 3]> {
    let point = |share: f64| point(members, share, asked.of);
    Some([point(0.05)?, point(0.5)?, point(0.95)?])
}

/// The same as JSON.
pub fn view(members: &[Member], seed: u64) -> ManyHousesView {
    let told = ASKED.iter().filter_map(|asked| {
        let [low, middle, high] = likely(members, asked)?;
        Some((asked.name, LikelyJson { unit: asked.unit.name(), middle, low, high }))
    });
    ManyHousesView { members: members.len(), seed, likely: told.collect() }
}

/// The same as a document.
///
/// - `subtitle`: whose house
pub fn document(members: &[Member], seed: u64, subtitle: String, viewer: &Viewer) -> Document {
    let words = viewer.words();
    let row = |asked: &Asked| {
        let ends = likely(members, asked)?;
        let [low, middle, high] = ends.map(|value| show::bare(value, asked.unit, asked.decimals, viewer));
        let unit = show::viewers_unit_label(asked.unit, viewer);
        let name = say!(words, &format!("many-houses-{}", asked.name), unit = unit);
        Some(vec![name, middle, say!(words, "air-day-from-to", low = low, high = high)])
    };
    let table = Table {
        caption: say!(words, "many-houses-caption", count = members.len() as f64, seed = seed.to_string()),
        columns: vec![
            (words.plain("many-houses-column-what"), Align::Start),
            (words.plain("many-houses-column-middle"), Align::End),
            (words.plain("many-houses-column-range"), Align::End),
        ],
        rows: ASKED.iter().filter_map(row).collect(),
        emphasis: Vec::new(),
        explained_by: Vec::new(),
    };
    let blocks = vec![Block::Table(table), Block::Note(words.plain("many-houses-note"))];
    Document { title: words.plain("many-houses-title"), subtitle, blocks }
}
