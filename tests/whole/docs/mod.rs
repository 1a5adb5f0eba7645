//! Pages of the manual that the program makes are up to date. `BROODWRIGHT_WRITE_DOCS=1` writes them anew; a second run
//! then holds all of them, since the tests that read a page may run before the one that writes it.

mod chapters;
mod made;
mod pictures;

use std::fs;
use std::path::{Path, PathBuf};

use advice::finding::Weight;
use present::{Viewer, manual};

/// The folder of the manual.
fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs")
}

/// The text of a file of the manual; empty where there is none.
fn kept(name: &str) -> String {
    fs::read_to_string(folder().join(name)).unwrap_or_default()
}

/// Holds a file of the manual against what the program makes of it, or writes it anew where that is asked for.
fn hold(name: &str, made: &str) {
    if std::env::var_os("BROODWRIGHT_WRITE_DOCS").is_some() && kept(name) != made {
        fs::write(folder().join(name), made).unwrap();
    }
    assert!(kept(name) == made, "docs/{name} is behind the program; BROODWRIGHT_WRITE_DOCS=1 writes it anew");
}

#[test]
fn generated_pages_are_up_to_date() {
    let viewer = Viewer::plain();
    hold("plan-file.md", &manual::plan_file(&viewer));
    hold("figures.md", &manual::figures(&viewer));
}

/// The schema takes what the checker takes: the demo holds against every range it names.
#[test]
fn the_schema_names_every_key() {
    let schema = manual::plan_file_schema();
    for asked in advice::families::plan_fields() {
        let field = asked.field;
        let property = &schema["properties"][field.section()]["properties"][field.name()];
        assert!(property.is_object(), "{} is not in the schema", field.key);
    }
}

/// A reader who copies the example starts from a plan that holds.
#[test]
fn the_example_holds() {
    let plan = crate::sample::plan(&kept("example.toml"));
    let problems: Vec<_> = plan.findings.iter().filter(|finding| finding.weight == Weight::Problem).collect();
    assert!(problems.is_empty(), "{problems:#?}");
}
