//! Pages of the manual that the program makes are up to date. `BROODWRIGHT_WRITE_DOCS=1` writes them anew.

use std::fs;
use std::path::Path;

use present::{Viewer, manual};

#[test]
fn generated_pages_are_up_to_date() {
    let docs = Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs");
    let viewer = Viewer::plain();
    for (name, text) in
        [("plan-file.md", manual::plan_file(&viewer)), ("figures.md", manual::figures(&viewer))]
    {
        let path = docs.join(name);
        if std::env::var_os("BROODWRIGHT_WRITE_DOCS").is_some() {
            fs::write(&path, &text).unwrap();
        }
        let kept = fs::read_to_string(&path).unwrap_or_default();
        assert!(kept == text, "docs/{name} is behind the program; BROODWRIGHT_WRITE_DOCS=1 writes it anew");
    }
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
