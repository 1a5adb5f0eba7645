//! House rules that a compiler does not see.

use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// All files below a folder with an ending.
fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() && !path.ends_with("target") {
            found.extend(files(&path, ending));
        } else if path.extension().is_some_and(|extension| extension == ending) {
            found.push(path);
        }
    }
    found
}

fn sources() -> Vec<(PathBuf, String)> {
    let read = |path: PathBuf| (path.clone(), fs::read_to_string(path).unwrap());
    files(&root().join("crates"), "rs").into_iter().map(read).collect()
}

/// Access is handed out in one place: whoever may make one may read any farm.
#[test]
fn access_is_granted_in_one_file() {
    for (path, text) in sources() {
        let granting = text.split("#[cfg(test)]").next().unwrap_or_default().contains("Access::granted(");
        let allowed = path.ends_with("serve/src/session.rs")
            || path.components().any(|part| part.as_os_str() == "tests" || part.as_os_str() == "trial")
            || path.ends_with("book/src/access.rs");
        assert!(allowed || !granting, "{} grants access", path.display());
    }
}

/// The core takes days, ids and seeds as arguments.
#[test]
fn the_core_reads_no_clock_and_draws_no_chance() {
    for (path, text) in sources() {
        let core = ["quantity", "reference", "model", "book", "advice", "present", "invented", "demo"];
        let in_core = core.iter().any(|name| path.starts_with(root().join("crates").join(name).join("src")));
        let for_tests = path.components().any(|part| part.as_os_str() == "trial");
        if !in_core || for_tests {
            continue;
        }
        for outside in [
            "SystemTime",
            "Instant::now",
            "Uuid::now_v7",
            "Zoned::now",
            "std::fs",
            "std::net",
            "std::env",
            "println!",
        ] {
            assert!(!text.contains(outside), "{} uses {outside}", path.display());
        }
    }
}

/// Doc links and README files: a crate's front page is there.
#[test]
fn every_crate_has_a_front_page() {
    for entry in fs::read_dir(root().join("crates")).unwrap().flatten() {
        assert!(entry.path().join("README.md").exists(), "{} has no README.md", entry.path().display());
    }
}
