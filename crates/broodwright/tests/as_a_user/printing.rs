use std::process::Command;

use super::{Farm, with_the_demo};

fn pages(farm: &Farm, file: &str) -> usize {
    let told = Command::new("pdfinfo").arg(farm.path(file)).output().unwrap();
    let told = String::from_utf8(told.stdout).unwrap();
    told.lines().find_map(|line| line.strip_prefix("Pages:")).unwrap().trim().parse().unwrap()
}

/// What is handed over or hung up is one sheet: a second one is lost on the way.
#[test]
fn the_week_the_advisers_page_and_the_slip_are_one_sheet_each() {
    let farm = with_the_demo("one-sheet");
    for sheet in ["week", "adviser", "weighing"] {
        for paper in ["a4", "us-letter"] {
            farm.good(&format!(
                "walk --batch \"September 2027\" --on 2027-10-08 --pdf {sheet}.pdf --sheet {sheet} --paper {paper}"
            ));
            assert_eq!(pages(&farm, &format!("{sheet}.pdf")), 1, "{sheet} on {paper}");
        }
    }
}

#[test]
fn sheets_that_cannot_be_written_are_told() {
    let farm = Farm::begun("no-sheet");
    farm.bad("walk --sheet week");
    farm.bad("walk --pdf week.pdf --sheet nonsense");
    assert_eq!(farm.run("walk --on 2025-09-20 --pdf nowhere/week.pdf").code, 1);
    farm.good("walk --on 2025-09-20 --pdf all.pdf --sheet all");
    assert!(pages(&farm, "all.pdf") >= 6);
}

fn text(farm: &Farm, file: &str) -> String {
    let told = Command::new("pdftotext").args(["-layout"]).arg(farm.path(file)).arg("-").output().unwrap();
    String::from_utf8(told.stdout).unwrap()
}

/// The sheets at the house door stand beside the last batch of the house where a book has one, and only there; a book that knows
/// no such house is told as such.
#[test]
fn door_sheets_show_the_last_batch_of_the_house() {
    let farm = with_the_demo("last-batch");
    let plan = include_str!("../../../../demo/mango-ridge.toml");
    farm.write("plan.toml", plan);
    let alone = "plan plan.toml --pdf wall.pdf --sheet wall";
    farm.good(alone);
    let (without, sheets) = (text(&farm, "wall.pdf"), pages(&farm, "wall.pdf"));
    farm.good(&format!("{alone} --book farm.book"));
    let with = text(&farm, "wall.pdf");
    assert_eq!(pages(&farm, "wall.pdf"), sheets, "one week is one sheet all the same");
    assert!(!without.contains("ast batch") && with.matches("ast batch").count() > 40, "{with}");
    farm.write("other.toml", &plan.replace("name = \"Long house\"", "name = \"Barn\""));
    let told = farm.bad("plan other.toml --pdf wall.pdf --sheet wall --book farm.book");
    assert!(told.contains("house"), "{told}");
}

/// The names of the jobs in a calendar file.
fn names(farm: &Farm, file: &str) -> Vec<String> {
    farm.read(file).lines().filter(|line| line.starts_with("UID:")).map(str::to_owned).collect()
}

/// The phone tells jobs apart by their names: with the book named, a calendar from the command has those that the page gives the
/// batch, which are its id; a batch that the book does not know keeps the names of its file.
#[test]
fn a_calendar_beside_a_book_names_jobs_as_the_page_of_its_batch_does() {
    let farm = Farm::new("calendar");
    farm.write("batch.toml", include_str!("../../../../demo/mango-ridge.toml"));
    farm.good("plan batch.toml --ics alone.ics");
    farm.good("record plan batch.toml");
    let history = farm.json("history --json");
    let adopted = history["entries"].as_array().unwrap();
    let adopted = adopted.iter().find(|entry| entry["kind"] == "plan-adopted").unwrap();
    let line: serde_json::Value = farm
        .good("export")
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .find(|line: &serde_json::Value| line["id"] == adopted["id"])
        .unwrap();
    let batch = line["subject"]["batch"].as_str().unwrap();
    farm.good("plan batch.toml --ics page.ics --book farm.book");
    let (alone, page) = (names(&farm, "alone.ics"), names(&farm, "page.ics"));
    assert_eq!(alone.len(), page.len());
    assert!(page.iter().all(|name| name.ends_with(batch)), "{batch}: {:?}", page.first());
    farm.write("other.toml", &farm.read("batch.toml").replace("September 2027", "Another"));
    farm.good("plan other.toml --ics other.ics --book farm.book");
    assert!(names(&farm, "other.ics").iter().all(|name| name.ends_with("Another")));
}
