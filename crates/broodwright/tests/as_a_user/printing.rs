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
