//! The commands of the book as a person types them: good, bad and absurd input, and what comes out.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod airing;
mod closing;
mod moving;
mod printing;
mod recording;
mod rows;
mod weighing;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use book::{Access, DeviceId, FarmId, PersonId, Role};
use serde_json::Value;

/// The plan of the tests: the demo's, with chicks on a day that is past whenever the tests run.
const PLAN: &str = include_str!("../../../../demo/mango-ridge.toml");

/// A folder with a book in it.
pub struct Farm {
    folder: PathBuf,
}

/// What a command answered.
pub struct Answer {
    /// Its exit code.
    pub code: i32,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

impl Farm {
    /// An empty folder with the plan file in it.
    pub fn new(name: &str) -> Farm {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        let farm = Farm { folder };
        let plan = PLAN.replace("2027-09-14", "2025-09-14").replace("September 2027", "September 2025");
        farm.write("plan.toml", &plan.replace("milled = 2027", "milled = 2025"));
        farm
    }

    /// The same with the plan adopted and the chicks come.
    pub fn begun(name: &str) -> Farm {
        let farm = Farm::new(name);
        farm.good("record plan plan.toml");
        farm.good("record chicks-placed --day 2025-09-14 counted=1632 dead_on_arrival=4");
        farm
    }

    /// Writes a file of the folder.
    pub fn write(&self, name: &str, text: &str) {
        fs::write(self.folder.join(name), text).unwrap();
    }

    /// Where a file of the folder lies.
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.join(name)
    }

    /// Reads a file of the folder.
    pub fn read(&self, name: &str) -> String {
        fs::read_to_string(self.folder.join(name)).unwrap()
    }

    /// Runs a line, its words parted at spaces but not within quotes.
    pub fn run(&self, line: &str) -> Answer {
        let mut words = vec![String::new()];
        let mut quoted = false;
        for letter in line.chars() {
            match letter {
                '"' => quoted = !quoted,
                ' ' if !quoted => words.push(String::new()),
                letter => words.last_mut().unwrap().push(letter),
            }
        }
        let output = Command::new(env!("CARGO_BIN_EXE_broodwright"))
            .args(&words)
            .current_dir(&self.folder)
            .output()
            .unwrap();
        Answer {
            code: output.status.code().unwrap(),
            out: String::from_utf8(output.stdout).unwrap(),
            err: String::from_utf8(output.stderr).unwrap(),
        }
    }

    /// Runs a line that must do what it says.
    pub fn good(&self, line: &str) -> String {
        let answer = self.run(line);
        assert_eq!(answer.code, 0, "{line}: {}{}", answer.out, answer.err);
        assert!(!answer.out.contains("[record-") && !answer.out.contains("{$"), "{}", answer.out);
        answer.out
    }

    /// Runs a line that must be refused as bad input, and gives what it says.
    pub fn bad(&self, line: &str) -> String {
        let before = self.entries();
        let answer = self.run(line);
        assert_eq!(answer.code, 2, "{line}: {}{}", answer.out, answer.err);
        assert!(!answer.err.contains("[record-") && !answer.err.contains("panicked"), "{}", answer.err);
        assert_eq!(self.entries(), before, "{line} was refused and wrote");
        answer.err
    }

    /// How many entries the book holds.
    fn entries(&self) -> usize {
        if !self.folder.join("farm.book").exists() {
            return 0;
        }
        self.run("export").out.lines().count()
    }

    /// What a command prints as JSON.
    pub fn json(&self, line: &str) -> Value {
        serde_json::from_str(&self.good(line)).unwrap()
    }
}

/// The invented farm's book, on its last day in the middle of a batch.
pub fn with_the_demo(name: &str) -> Farm {
    let demo = demo::Farm::mango_ridge().unwrap();
    let one = uuid::Uuid::from_u128(1);
    let farm = FarmId(one);
    let access = Access::granted(farm, PersonId(one), DeviceId(one), Role::Owner);
    let lines = demo.entries(&access).unwrap();
    let lines: Vec<String> =
        lines.into_iter().map(|stored| String::from_utf8(stored.bytes).unwrap() + "\n").collect();
    let farm = Farm::new(name);
    farm.write("demo.jsonl", &lines.concat());
    farm.good("import demo.jsonl");
    farm
}
