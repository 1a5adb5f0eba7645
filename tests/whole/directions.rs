//! The directions of the crates: what each must not know, read off `cargo tree`.

use std::collections::HashSet;
use std::process::Command;

/// Every package under a crate in the build of the program (no tests, no benches).
fn under(package: &str) -> HashSet<String> {
    let output = Command::new(env!("CARGO"))
        .args([
            "tree",
            "--offline",
            "--locked",
            "--edges",
            "normal",
            "--prefix",
            "none",
            "--format",
            "{lib}",
            "-p",
            package,
        ])
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
        .output()
        .expect("cargo tree runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = String::from_utf8(output.stdout).expect("names are text");
    text.lines().map(|line| line.trim().to_owned()).filter(|name| name != package).collect()
}

const OURS: &[&str] = &[
    "quantity",
    "reference",
    "model",
    "book",
    "advice",
    "present",
    "store",
    "typeset",
    "serve",
    "invented",
    "demo",
    "broodwright",
];

/// What each crate may know of ours.
const MAY_KNOW: &[(&str, &[&str])] = &[
    ("quantity", &[]),
    ("reference", &["quantity"]),
    ("model", &["quantity", "reference"]),
    ("book", &["quantity"]),
    ("advice", &["quantity", "reference", "model", "book"]),
    ("present", &["quantity", "reference", "model", "book", "advice"]),
    ("store", &["quantity", "book"]),
    ("typeset", &[]),
    // What judges a batch is not tried on batches made by its own formulas.
    ("invented", &["quantity"]),
    ("demo", &["quantity", "reference", "model", "book", "advice", "invented"]),
];

#[test]
fn the_crates_know_only_what_they_may() {
    for (package, may_know) in MAY_KNOW {
        let known = under(package);
        for ours in OURS.iter().filter(|ours| known.contains(**ours)) {
            assert!(may_know.contains(ours), "{package} must not know {ours}");
        }
    }
}

/// The core sees no database, no socket, no typesetter, no runtime, no clock and no random source.
#[test]
fn nothing_of_the_world_is_under_present() {
    for package in ["present", "book", "demo"] {
        let known = under(package);
        for outside in
            ["rusqlite", "tokio", "tokio_postgres", "typst", "axum", "hyper", "rand", "getrandom", "reqwest"]
        {
            assert!(!known.contains(outside), "{package} must not rest on {outside}");
        }
    }
}
