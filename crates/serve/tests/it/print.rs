use axum::body::Body;
use axum::http::StatusCode;
use present::plan::SHEETS;
use present::{Viewer, view};
use quantity::Source;

use crate::rig::{Browser, at, mango_ridge, memory};

#[tokio::test]
async fn every_sheet_prints_on_both_papers() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    for sheet in SHEETS.iter().map(|sheet| sheet.name) {
        for paper in ["a4", "us-letter"] {
            let page = browser.get(&format!("{address}/print/{sheet}?paper={paper}")).await;
            assert_eq!(page.status, StatusCode::OK, "{sheet} {paper}");
            assert_eq!(page.header("content-type"), "application/pdf");
            assert!(page.bytes.starts_with(b"%PDF") && page.bytes.len() > 5_000, "{sheet} {paper}");
        }
    }
    for missing in ["other", "plan?paper=papyrus", "handout?figure=guard.nonsense"] {
        let page = browser.get(&format!("{address}/print/{missing}")).await;
        assert_eq!(page.status, StatusCode::NOT_FOUND, "{missing}");
    }
}

/// What hangs at the door is one page a week, or half of it stays in the drawer; the guard is cut from one leaf, both sides.
#[tokio::test]
async fn sheets_for_the_wall_and_the_workbench_take_no_page_more() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let upright = ["595.276 x 841.89", "612 x 792"];
    let lying = ["841.89 x 595.276", "792 x 612"];
    for (sheet, pages, sizes) in [("wall", "7", lying), ("cutting", "2", upright)] {
        for (paper, size) in ["a4", "us-letter"].into_iter().zip(sizes) {
            let page = browser.get(&format!("{address}/print/{sheet}?paper={paper}")).await;
            let file =
                std::path::PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("{sheet}-{paper}.pdf"));
            std::fs::write(&file, &page.bytes).unwrap();
            let told = std::process::Command::new("pdfinfo").arg(&file).output().unwrap();
            let told = String::from_utf8(told.stdout).unwrap();
            let field = |name: &str| told.lines().find_map(|line| line.strip_prefix(name)).unwrap().trim();
            assert_eq!(field("Pages:"), pages, "{sheet} {paper}");
            assert!(field("Page size:").starts_with(size), "{told}");
        }
    }
}

#[tokio::test]
async fn a_plan_that_says_nothing_still_prints() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let page = browser.get(&format!("{address}/print/plan")).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.bytes.starts_with(b"%PDF"));
}

#[tokio::test]
async fn a_sheet_that_did_not_change_is_not_set_again() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let path = format!("{address}/print/cutting");
    let tag = browser.get(&path).await.header("etag").to_owned();
    let request = at(&path).header("if-none-match", tag).body(Body::empty()).unwrap();
    assert_eq!(browser.send(request).await.status, StatusCode::NOT_MODIFIED);
}

#[tokio::test]
async fn the_data_is_what_present_makes_of_the_same_answers() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let raws: Vec<quantity::Raw> = crate::rig::filled(&browser.answers(&address).await.text())
        .into_iter()
        .filter(|(key, _)| mango_ridge().iter().any(|(other, _)| other == key))
        .map(|(key, text)| quantity::Raw { key, text, line: None })
        .collect();
    let plan = advice::plan::work_out(advice::plan::read(&raws, Source::Hand, true).answers);
    for (query, working) in [("", false), ("?working=1", true)] {
        let page = browser.get(&format!("{address}/plan.json{query}")).await;
        assert_eq!(page.header("content-type"), "application/json");
        let viewer = Viewer::of(&plan.answers);
        let expected = serde_json::to_value(view::plan(&plan, &viewer, working)).unwrap();
        let sent: serde_json::Value = serde_json::from_slice(&page.bytes).unwrap();
        assert_eq!(sent, expected);
    }
}
