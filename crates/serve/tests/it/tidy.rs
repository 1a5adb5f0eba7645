//! Housekeeping of the source itself.

use std::fs;
use std::path::{Path, PathBuf};

fn sources() -> Vec<(String, String)> {
    let mut open = vec![PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/src"))];
    let mut sources = Vec::new();
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                open.push(path);
            } else {
                sources.push((name(&path), fs::read_to_string(&path).unwrap()));
            }
        }
    }
    assert!(sources.len() > 10);
    sources
}

fn name(path: &Path) -> String {
    path.file_name().unwrap().to_string_lossy().into_owned()
}

fn files_with(text: &str) -> Vec<String> {
    sources().into_iter().filter(|(_, source)| source.contains(text)).map(|(name, _)| name).collect()
}

#[test]
fn access_is_granted_in_one_file() {
    assert_eq!(files_with("Access::granted"), ["session.rs"]);
}

#[test]
fn no_route_stands_outside_the_table() {
    for call in [".route(", ".nest(", ".merge(", ".route_service(", ".nest_service("] {
        let allowed: &[&str] = if call == ".route(" { &["route.rs"] } else { &[] };
        assert_eq!(files_with(call), allowed, "{call}");
    }
    let table = sources().into_iter().find(|(name, _)| name == "route.rs").unwrap().1;
    assert_eq!(table.matches(".route(").count(), 1, "the loop over the table");
}

#[test]
fn neither_clock_nor_luck_is_hidden_in_handlers() {
    for source in ["SystemTime", "Instant::now", "now_v7", "new_v4"] {
        assert!(files_with(source).is_empty(), "{source}");
    }
}
