//! The chapters of the manual hold what the program says, and name nothing that is not there.

use std::collections::BTreeSet;
use std::path::Path;

use advice::families;

use super::{folder, hold, kept, made};

const BEGIN: &str = "<!-- made: ";
const END: &str = "<!-- end -->\n";

/// The chapters, as the summary lists them.
pub fn names() -> Vec<String> {
    links(&kept("SUMMARY.md")).into_iter().filter(|link| link.starts_with("chapter-")).collect()
}

/// Where the links of a page lead.
fn links(page: &str) -> Vec<String> {
    let behind = page.split("](").skip(1);
    behind.filter_map(|rest| rest.split(')').next()).map(str::to_owned).collect()
}

/// A chapter, cut up at what is made.
struct Chapter {
    /// What stands before the first made piece.
    opening: String,
    pieces: Vec<Piece>,
}

struct Piece {
    /// The line that asks for it.
    asked: String,
    /// What was made when it was last written.
    kept: String,
    /// What somebody wrote behind it.
    behind: String,
}

impl Chapter {
    fn of(text: &str) -> Chapter {
        let mut parts = text.split(BEGIN);
        let opening = parts.next().unwrap_or_default().to_owned();
        let piece = |part: &str| {
            let (asked, rest) = part.split_once(" -->\n").expect("the line that asks ends in -->");
            let (kept, behind) = rest.split_once(END).unwrap_or_else(|| panic!("“{asked}” has no end"));
            Piece { asked: asked.to_owned(), kept: kept.to_owned(), behind: behind.to_owned() }
        };
        Chapter { opening, pieces: parts.map(piece).collect() }
    }

    /// The chapter with all that is made, made anew.
    fn anew(&self) -> String {
        let piece = |Piece { asked, behind, .. }: &Piece| {
            format!("{BEGIN}{asked} -->\n{}{END}{behind}", made::make(asked))
        };
        self.opening.clone() + &self.pieces.iter().map(piece).collect::<String>()
    }

    /// Only what somebody wrote.
    fn prose(&self) -> String {
        self.opening.clone() + &self.pieces.iter().map(|piece| piece.behind.as_str()).collect::<String>()
    }
}

#[test]
fn chapters_are_up_to_date() {
    assert!(names().len() >= 8);
    for name in names() {
        hold(&name, &Chapter::of(&kept(&name)).anew());
    }
}

/// Nothing that looks like the program's answer is typed by hand.
#[test]
fn docs_have_no_answer_typed_by_hand() {
    for name in names() {
        let prose = Chapter::of(&kept(&name)).prose();
        for line in prose.lines().filter(|line| line.starts_with("```") && line.len() > 3) {
            assert_eq!(line, "```sh", "docs/{name}: only commands may stand in a box typed by hand");
        }
    }
}

/// Every quick sum has a line in a chapter, and the answer it leads with is the one most wanted.
#[test]
fn docs_show_every_sum() {
    let text: String = names().iter().map(|name| kept(name)).collect();
    for sum in families::sums() {
        let line = text.split("$ broodwright sums ").find(|line| line.split(' ').next() == Some(sum.name));
        let answer = line.unwrap_or_else(|| panic!("no chapter shows the sum {}", sum.name));
        let lead = present::working::label(sum.figures[0], &present::Viewer::plain());
        assert!(answer.contains(&format!("\n> {lead}: ")), "{} does not answer “{lead}”", sum.name);
    }
}

/// The numbers of a text: digits with points, spaces of thousands taken out.
fn numbers(text: &str) -> BTreeSet<String> {
    let joined = text.replace('\u{a0}', "");
    let number = |part: &str| part.trim_matches('.').to_owned();
    joined
        .split(|letter: char| !letter.is_ascii_digit() && letter != '.')
        .map(number)
        .filter(|number| number.chars().any(|letter| letter.is_ascii_digit()))
        .collect()
}

/// Prose without what counts chapters: titles and where links lead.
fn told(prose: &str) -> String {
    let lines: Vec<&str> = prose.lines().filter(|line| !line.starts_with("# ")).collect();
    let text = lines.join("\n");
    let mut parts = text.split("](");
    let opening = parts.next().unwrap_or_default().to_owned();
    opening + &parts.filter_map(|part| Some(part.split_once(')')?.1)).collect::<String>()
}

/// A number in the prose is one that the program says: in the same chapter, or in its messages.
#[test]
fn docs_quote_the_programs_numbers() {
    let messages = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/present/messages/en");
    let mut said = String::new();
    for entry in std::fs::read_dir(messages).unwrap().flatten() {
        said.push_str(&std::fs::read_to_string(entry.path()).unwrap());
    }
    let said = numbers(&said);
    for name in names() {
        let chapter = Chapter::of(&kept(&name));
        let here: BTreeSet<String> = chapter
            .pieces
            .iter()
            .flat_map(|piece| numbers(&format!("{} {}", piece.asked, piece.kept)))
            .collect();
        let stray: Vec<String> = numbers(&told(&chapter.prose()))
            .into_iter()
            .filter(|number| !said.contains(number) && !here.contains(number))
            .collect();
        assert!(stray.is_empty(), "docs/{name}: the program does not say {stray:?}");
    }
}

/// What is set in backquotes outside boxes.
fn quoted(prose: &str) -> Vec<String> {
    let open = prose.split("```").step_by(2).collect::<String>();
    open.split('`').skip(1).step_by(2).map(str::to_owned).collect()
}

/// Commands in the prose and in boxes.
fn commands(text: &str) -> Vec<String> {
    let lines = text.lines().map(|line| line.trim_start_matches("$ "));
    let lines = lines.filter(|line| line.starts_with("broodwright ")).map(str::to_owned);
    lines.chain(quoted(text).into_iter().filter(|code| code.starts_with("broodwright "))).collect()
}

/// Subcommands and options as the command line declares them.
#[test]
fn docs_name_commands_that_exist() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/broodwright/src/arguments.rs");
    let declared = std::fs::read_to_string(path).unwrap();
    let mut seen = 0;
    for name in names() {
        for command in commands(&kept(&name)) {
            let subcommand = command.split(' ').nth(1).unwrap_or_default();
            assert!(declared.contains(&format!("Command::new(\"{subcommand}\")")), "docs/{name}: {command}");
            for option in command.split(' ').filter_map(|word| word.strip_prefix("--")) {
                assert!(declared.contains(&format!("\"{option}\"")), "docs/{name}: {command}");
            }
            seen += 1;
        }
    }
    assert!(seen > 10, "{seen} commands");
}

/// A dotted name in the prose is a key or a figure.
#[test]
fn docs_name_keys_that_exist() {
    let known: BTreeSet<&str> = families::fields()
        .map(|field| field.key)
        .chain(families::figures().map(|spec| spec.id))
        .chain(families::series().map(|spec| spec.id))
        .collect();
    let letters = |part: &str| {
        part.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_')
    };
    for name in names() {
        for code in quoted(&Chapter::of(&kept(&name)).prose()) {
            let Some((section, key)) = code.split_once('.') else { continue };
            if letters(section)
                && letters(key)
                && !["toml", "csv", "json", "pdf", "md", "svg", "book"].contains(&key)
            {
                assert!(known.contains(code.as_str()), "docs/{name}: {code} is neither a key nor a figure");
            }
        }
    }
}

#[test]
fn links_of_docs_lead_somewhere() {
    let pages = names().into_iter().chain(["README.md".to_owned(), "SUMMARY.md".to_owned()]);
    for page in pages {
        for link in links(&kept(&page)).iter().filter(|link| !link.starts_with("http")) {
            let file = link.split('#').next().unwrap_or_default();
            assert!(file.is_empty() || folder().join(file).exists(), "docs/{page} leads to {link}");
        }
    }
}

/// Both tables of contents hold every page.
#[test]
fn docs_are_listed() {
    let (summary, readme) = (links(&kept("SUMMARY.md")), links(&kept("README.md")));
    for entry in std::fs::read_dir(folder()).unwrap().flatten() {
        let name = entry.file_name().into_string().unwrap();
        if name.ends_with(".md") && !["SUMMARY.md", "README.md"].contains(&name.as_str()) {
            assert!(summary.contains(&name), "SUMMARY.md leaves out {name}");
            assert!(readme.contains(&name), "README.md leaves out {name}");
        }
    }
}
