//! What a reader of a PDF sees, told by poppler.

use std::fs;
use std::path::PathBuf;
use std::process::Command;
use std::sync::atomic::{AtomicU32, Ordering};

/// A rendered document, written to a file of its own for the tools.
pub struct Shown {
    path: PathBuf,
}

/// Where a word stands on its page, in points from the left and the top.
#[derive(Debug)]
pub struct Word {
    pub text: String,
    pub page: usize,
    pub page_width: f64,
    pub left: f64,
    pub right: f64,
    pub baseline: f64,
}

impl Word {
    /// Whether it shares a line with another and runs into it.
    pub fn covers(&self, other: &Word) -> bool {
        let line = self.page == other.page && (self.baseline - other.baseline).abs() < 1.0;
        line && self.left < other.right - 0.5 && other.left < self.right - 0.5
    }
}

impl Shown {
    pub fn new(pdf: &[u8]) -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let name = format!("{}-{}.pdf", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
        let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
        fs::write(&path, pdf).unwrap();
        Self { path }
    }

    fn tool(&self, name: &str, options: &[&str], to: &[&str]) -> String {
        let output = Command::new(name).args(options).arg(&self.path).args(to).output().unwrap();
        assert!(output.status.success(), "{name}: {}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    }

    /// The text of the pages, without the layout.
    pub fn text(&self) -> String {
        self.tool("pdftotext", &["-enc", "UTF-8"], &["-"])
    }

    /// The text of each page.
    pub fn pages(&self) -> Vec<String> {
        self.text().split_terminator('\u{c}').map(str::to_owned).collect()
    }

    /// The text as it stands on the lines, columns side by side.
    pub fn lines(&self) -> String {
        self.tool("pdftotext", &["-enc", "UTF-8", "-layout"], &["-"])
    }

    /// One field of the description of the file.
    pub fn info(&self, field: &str) -> Option<String> {
        let info = self.tool("pdfinfo", &[], &[]);
        let value = |line: &str| Some(line.strip_prefix(field)?.strip_prefix(':')?.trim().to_owned());
        info.lines().find_map(value)
    }

    /// The tree of tags, with the texts they stand for.
    pub fn tags(&self) -> String {
        self.tool("pdfinfo", &["-struct-text"], &[])
    }

    /// Names of the fonts, without the mark of a subset.
    pub fn fonts(&self) -> Vec<String> {
        let list = self.tool("pdffonts", &[], &[]);
        let name =
            |line: &str| line.split_whitespace().next().unwrap().split('+').next_back().unwrap().to_owned();
        list.lines().skip(2).map(name).collect()
    }

    /// Every word and where it stands.
    pub fn words(&self) -> Vec<Word> {
        let boxes = self.tool("pdftotext", &["-bbox", "-enc", "UTF-8"], &["-"]);
        let (mut page, mut page_width) = (0, 0.0);
        let mut words = Vec::new();
        for line in boxes.lines().map(str::trim) {
            if line.starts_with("<page ") {
                page += 1;
                page_width = number(line, "width");
            } else if line.starts_with("<word ") {
                words.push(Word {
                    text: line.split(['>', '<']).nth(2).unwrap().to_owned(),
                    page,
                    page_width,
                    left: number(line, "xMin"),
                    right: number(line, "xMax"),
                    baseline: number(line, "yMax"),
                });
            }
        }
        words
    }
}

impl Drop for Shown {
    fn drop(&mut self) {
        // A file left behind does no harm, so a failure to remove it is no failure of the test.
        let _ = fs::remove_file(&self.path);
    }
}

fn number(line: &str, attribute: &str) -> f64 {
    let (_, rest) = line.split_once(&format!(" {attribute}=\"")).unwrap();
    rest.split_once('"').unwrap().0.parse().unwrap()
}
