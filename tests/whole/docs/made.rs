//! What stands between `<!-- made: … -->` and `<!-- end -->` in a chapter: made by the program from the line that asks.

use advice::sums::{self, Sum, SumResult};
use advice::{families, plan, plan_file, record, verify, weather_file};
use book::{About, Kind};
use present::document::{Block, Caution, Document, Level};
use present::plan::Shown;
use present::view::{self, VerifyView};
use present::{Viewer, Words, entry, fault, say, text};
use quantity::{Asked, Need, Raw, Source, Status};
use serde_json::Value;

use super::{kept, pictures};
use crate::sample;

/// The plan file all chapters work with.
const EXAMPLE: &str = "example.toml";

/// Makes what one line asks for.
pub fn make(asked: &str) -> String {
    let (kind, rest) = asked.split_once(' ').unwrap_or((asked, ""));
    match kind {
        "sum" => console(&format!("sums {rest}"), &sum_text(rest, false)),
        "sum-working" => console(&format!("sums {rest} --working"), &sum_text(rest, true)),
        "sum-json" => console(&format!("sums {rest} --json"), &sum_json(rest)),
        "sums" => sums_table(),
        "kinds" => kinds_table(),
        "rows" => rows(rest),
        "weather" => weather(rest),
        "weather-faults" => weather_faults(rest),
        "plan" => part(rest),
        "curtain" => curtain(rest, "air-day-curtain"),
        "curtain-heat" => curtain(rest, "air-day-heat"),
        "file" => fenced("toml", &sections(&kept(EXAMPLE), rest)),
        "working" => fenced("text", &working(rest)),
        "caution" => caution(rest),
        "picture" => picture(rest),
        "fault" => fenced("text", &faults(&changed(&kept(EXAMPLE), rest)).join("\n")),
        "curve" => curve(rest),
        "statuses" => statuses(),
        "json" => json(rest),
        "schemas" => schemas(),
        "verify" => verified(rest),
        _ => panic!("a chapter asks for “{asked}”, which nothing makes"),
    }
}

fn fenced(language: &str, text: &str) -> String {
    format!("```{language}\n{}\n```\n", text.trim_matches('\n'))
}

/// A part of what a night and a day of the example's house says.
fn curtain(asked: &str, heading: &str) -> String {
    let pair = |pair: &str| {
        let (key, text) = pair.split_once('=').expect(pair);
        Raw { key: key.to_owned(), text: vec![text.to_owned()], line: None }
    };
    let answers = sample::answers(&kept(EXAMPLE));
    let answered = advice::air::day::answer(&answers, None, asked.split(' ').map(pair).collect());
    let viewer = Viewer::plain();
    let mut told = under(&present::air_day::document(&answered, String::new(), &viewer), heading);
    told.retain(|block| ["lead", "table", "steps"].iter().any(|kind| is(block, kind)));
    fenced("text", &written(told, &viewer, false))
}

fn console(command: &str, output: &str) -> String {
    fenced("console", &format!("$ broodwright {command}\n{output}"))
}

fn written(blocks: Vec<Block>, viewer: &Viewer, with_workings: bool) -> String {
    let document = Document { blocks, ..Document::default() };
    text::write(&document, viewer, with_workings).trim_start_matches('\n').to_owned()
}

/// A quick sum as the command line takes it.
fn sum_of(typed: &str) -> (&'static Sum, SumResult) {
    let mut words = arguments(typed).into_iter();
    let name = words.next().unwrap();
    let sum = sums::by_name(&name).unwrap_or_else(|| panic!("no sum is called {name}"));
    let raw = |typed: String| {
        let (key, text) = typed.split_once('=').unwrap_or_else(|| panic!("{typed} is not key=value"));
        Raw { key: key.to_owned(), text: vec![text.to_owned()], line: None }
    };
    (sum, sum.work_out(&words.map(raw).collect::<Vec<_>>(), true))
}

/// Its answer or its faults, as the command line prints them.
fn sum_text(typed: &str, with_workings: bool) -> String {
    let (sum, result) = sum_of(typed);
    let plain = Viewer::plain();
    if !result.checked.problems.is_empty() {
        let said = result.checked.problems.iter().map(|problem| fault::with_place(problem, &plain));
        return said.collect::<Vec<_>>().join("\n");
    }
    let viewer = Viewer::of(&result.checked.answers);
    let asked = result.checked.questions.iter().map(|question| fault::question(question, &viewer) + "\n");
    let document = present::sum::document(sum, &result, &viewer);
    asked.collect::<String>() + &text::write(&document, &viewer, with_workings)
}

fn sum_json(typed: &str) -> String {
    let (_, result) = sum_of(typed);
    serde_json::to_string_pretty(&view::sum(&result, &Viewer::plain(), false)).unwrap()
}

/// Words as a shell parts them: at spaces, but not within quotes.
fn arguments(line: &str) -> Vec<String> {
    let mut all = vec![String::new()];
    let mut quoted = false;
    for letter in line.chars() {
        match letter {
            '"' => quoted = !quoted,
            ' ' if !quoted => all.push(String::new()),
            letter => all.last_mut().unwrap().push(letter),
        }
    }
    all
}

fn sums_table() -> String {
    let viewer = Viewer::plain();
    let row = |sum: &'static Sum| format!("| `{}` | {} |\n", sum.name, present::sum::title(sum, &viewer));
    format!("| Name | What it answers |\n|---|---|\n{}", families::sums().map(row).collect::<String>())
}

/// What can be written down about a batch, and what each kind asks.
fn kinds_table() -> String {
    let viewer = Viewer::plain();
    let key = |asked: &Asked| match asked.need {
        Need::Required => format!("**`{}`**", asked.key),
        _ => format!("`{}`", asked.key),
    };
    let row = |kind: &Kind| {
        let keys: Vec<String> = record::asked_short(kind).iter().map(key).collect();
        format!("| `{}` | {} | {} |\n", kind.name, entry::kind_name(kind.name, &viewer), keys.join(" "))
    };
    let kinds = record::kinds().filter(|kind| kind.about.contains(&About::Batch));
    format!("| Kind | What it is | What it asks |\n|---|---|---|\n{}", kinds.map(row).collect::<String>())
}

/// A file of rows, each of a kind that can be written down.
fn rows(name: &str) -> String {
    let rows = kept(name);
    for row in rows.lines() {
        let kind = row.split(',').next().unwrap_or_default();
        assert!(record::kind(kind).is_some(), "docs/{name}: {row}");
    }
    fenced("csv", &rows)
}

/// The first lines of a file of weather that can be read.
fn weather(name: &str) -> String {
    let file = kept(name);
    assert!(weather_file::read(&file).is_ok(), "docs/{name}");
    fenced("csv", &file.lines().take(4).collect::<Vec<_>>().join("\n"))
}

/// What is said of that file when one thing in it is changed, a line for each: `NAME OLD => NEW; …`.
fn weather_faults(asked: &str) -> String {
    let (name, changes) = asked.split_once(' ').unwrap_or_else(|| panic!("{asked} names no change"));
    let fault = |change: &str| {
        let wrong = weather_file::read(&changed(&kept(name), change)).unwrap_err();
        present::plan::weather::fault(&wrong, &Viewer::plain())
    };
    fenced("text", &changes.split("; ").map(fault).collect::<Vec<_>>().join("\n"))
}

/// A part of the plan by its anchor, only blocks of the kinds named; `with OLD => NEW; …` changes the file first.
fn part(asked: &str) -> String {
    let (asked, changes) = asked.split_once(" with ").unwrap_or((asked, ""));
    let (anchor, kinds) = asked.split_once(' ').unwrap_or_else(|| panic!("{asked} names no kinds"));
    let plan = sample::plan(&changed(&kept(EXAMPLE), changes));
    let viewer = Viewer::of(&plan.answers);
    let blocks = under(&Shown::new(&plan, &viewer).document(), anchor);
    let kept = blocks.into_iter().filter(|block| kinds.split(',').any(|kind| is(block, kind))).collect();
    let text = written(kept, &viewer, false);
    assert!(!text.trim().is_empty(), "{anchor} has no {kinds}");
    fenced("text", &text)
}

/// The blocks below a heading up to the next question, unfolded.
fn under(document: &Document, anchor: &str) -> Vec<Block> {
    let heading = |block: &Block| match block {
        Block::Heading { anchor, .. } => Some(*anchor),
        _ => None,
    };
    let all = document.every_block();
    let behind = all.iter().skip_while(|block| heading(block) != Some(anchor)).skip(1);
    let here: Vec<Block> =
        behind.take_while(|block| heading(block).is_none()).map(|block| (*block).clone()).collect();
    assert!(!here.is_empty(), "the plan has no part {anchor}");
    here
}

/// Whether a block is of a kind; `note:WORD`, `finding:WORD` and `table:WORD` only with that word.
fn is(block: &Block, kind: &str) -> bool {
    let (kind, word) = kind.split_once(':').unwrap_or((kind, ""));
    match (kind, block) {
        ("lead", Block::Lead { .. }) | ("figures", Block::Figures(_)) | ("steps", Block::Steps(_)) => true,
        ("note", Block::Note(text) | Block::Paragraph(text)) => text.contains(word),
        ("finding", Block::Finding(finding)) => finding.text.contains(word),
        ("table", Block::Table(table)) => table.caption.starts_with(word),
        _ => false,
    }
}

/// The file with some lines changed: `OLD => NEW; OLD => NEW`.
fn changed(file: &str, changes: &str) -> String {
    changes.split("; ").filter(|change| !change.is_empty()).fold(file.to_owned(), |file, change| {
        let (old, new) = change.split_once(" => ").unwrap_or_else(|| panic!("{change} is no change"));
        assert!(file.contains(old), "{old} is not in the file of docs");
        file.replacen(old, new, 1)
    })
}

/// Sections of the file by name, as they stand there.
fn sections(file: &str, names: &str) -> String {
    let wanted =
        |block: &&str| names.split(' ').any(|name| block.trim_matches('[').starts_with(&format!("{name}]")));
    let found: Vec<&str> = file.split("\n\n").filter(wanted).collect();
    assert!(!found.is_empty(), "docs/{EXAMPLE} has no {names}");
    found.join("\n\n")
}

/// How a figure is worked out; `FIGURE DAY` for a figure by day.
fn working(asked: &str) -> String {
    let plan = sample::plan(&kept(EXAMPLE));
    let viewer = Viewer::of(&plan.answers);
    let view = match asked.split_once(' ') {
        Some((id, day)) => Shown::new(&plan, &viewer).day_working(id, day.parse().unwrap()),
        None => present::working::view(&plan.answers, &plan.outcome, asked, &viewer),
    };
    written(vec![Block::Working(view.unwrap_or_else(|| panic!("{asked} has no working")))], &viewer, true)
}

/// A caution in full, as the pages have it.
fn caution(anchor: &str) -> String {
    let plan = sample::plan(&kept(EXAMPLE));
    let document = Shown::new(&plan, &Viewer::plain()).document();
    let found = under(&document, anchor).into_iter().find_map(|block| match block {
        Block::Caution(caution) => Some(caution),
        _ => None,
    });
    let Caution { level, title, items } = found.unwrap_or_else(|| panic!("{anchor} has no caution"));
    let mark = if level == Level::Danger { "⚠ " } else { "" };
    let items: String = items.iter().map(|item| format!("> - {item}\n")).collect();
    format!("> **{mark}{title}**\n>\n{items}")
}

fn picture(name: &str) -> String {
    let drawings = pictures::drawings(&kept(EXAMPLE));
    let drawing = drawings.iter().find(|drawing| drawing.name == name);
    let drawing = drawing.unwrap_or_else(|| panic!("the example draws no {name}"));
    format!("![{}](pictures/{name}.svg)\n\n*{}*\n", drawing.alternative, drawing.caption)
}

/// What the program says about a plan file that does not hold.
fn faults(file: &str) -> Vec<String> {
    let words = Words::of(present::Locale::English);
    let in_file = |fault: String| say!(words, "command-in-file", file = "my-plan.toml", fault = fault);
    let raws = match plan_file::read(file) {
        Err(error) => return vec![in_file(fault::file(&error, words))],
        Ok(raws) => raws,
    };
    let problems = plan::read(&raws, Source::File, true).problems;
    assert!(!problems.is_empty(), "the file holds");
    problems.iter().map(|problem| in_file(fault::with_place(problem, &Viewer::plain()))).collect()
}

/// A table of target weights, its lines parted by `|`, and what is wrong with it.
fn curve(lines: &str) -> String {
    let csv = lines.replace('|', "\n");
    let own = format!("standard = \"own\"\nown_curve = \"\"\"\n{csv}\n\"\"\"");
    let file = kept(EXAMPLE).replace("standard = \"open-house\"", &own);
    format!("{}\n{}", fenced("text", &csv), fenced("text", &faults(&file).join("\n")))
}

fn statuses() -> String {
    let words = Words::of(present::Locale::English);
    let row = |status: Status| {
        format!("| {} | `{}` |\n", words.plain(&format!("status-{}", status.name())), status.name())
    };
    format!("| In words | In JSON |\n|---|---|\n{}", Status::ALL.into_iter().map(row).collect::<String>())
}

/// Numbers cut to six digits: the last digits of a machine's number differ from machine to machine.
fn short(value: Value) -> Value {
    match value {
        Value::Number(number) if number.is_f64() => {
            Value::from(format!("{:.5e}", number.as_f64().unwrap()).parse::<f64>().unwrap())
        }
        Value::Array(values) => values.into_iter().map(short).collect(),
        Value::Object(map) => map.into_iter().map(|(key, value)| (key, short(value))).collect(),
        other => other,
    }
}

/// Parts of `plan --json` by JSON pointer, each under its path.
fn json(pointers: &str) -> String {
    let plan = sample::plan(&kept(EXAMPLE));
    let whole = short(serde_json::to_value(view::plan(&plan, &Viewer::of(&plan.answers), true)).unwrap());
    let one = |pointer: &str| {
        let value = whole.pointer(pointer).unwrap_or_else(|| panic!("plan --json has no {pointer}"));
        let path = pointer.trim_start_matches('/').replace('/', " → ");
        format!("{path}\n\n{}", fenced("json", &serde_json::to_string_pretty(value).unwrap()))
    };
    pointers.split(' ').map(one).collect::<Vec<_>>().join("\n")
}

fn schemas() -> String {
    let row = |(name, schema): (&&str, &Value)| {
        let properties = schema["properties"].as_object().into_iter().flat_map(|all| all.keys());
        let names: Vec<String> = properties.map(|key| format!("`{key}`")).collect();
        format!("| `{name}` | {} |\n", names.join(", "))
    };
    let rows: String = view::schemas().iter().map(row).collect();
    format!("| Name | What stands at its top |\n|---|---|\n{rows}")
}

/// A table of check values, its lines parted by `|`, and the answer.
fn verified(lines: &str) -> String {
    let csv = lines.replace('|', "\n");
    let rows = verify::verify(&csv).unwrap();
    let whole = short(serde_json::to_value(VerifyView { rows }).unwrap());
    let answer = serde_json::to_string_pretty(&whole).unwrap();
    format!("{}\n{}", fenced("text", &csv), console("verify table.csv --json", &answer))
}
