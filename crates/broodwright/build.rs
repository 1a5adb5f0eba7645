//! Tells the program which commit it was built from.

use std::process::Command;

fn main() {
    let git = |arguments: &[&str]| {
        let output =
            Command::new("git").args(arguments).output().ok().filter(|output| output.status.success())?;
        String::from_utf8(output.stdout).ok().map(|text| text.trim().to_owned())
    };
    let commit = git(&["rev-parse", "--short=12", "HEAD"]).unwrap_or_else(|| "unknown".to_owned());
    println!("cargo::rustc-env=BROODWRIGHT_COMMIT={commit}");
    // A commit moves HEAD's log; without one (an unpacked archive) nothing moves.
    if let Some(log) = git(&["rev-parse", "--git-path", "logs/HEAD"]) {
        println!("cargo::rerun-if-changed={log}");
    }
    println!("cargo::rerun-if-changed=build.rs");
}
