use axum::http::StatusCode;

use crate::rig::{Browser, mango_ridge_with, memory};

fn uids(calendar: &str) -> Vec<String> {
    let lines = calendar.replace("\r\n ", "");
    lines.lines().filter(|line| line.starts_with("UID:")).map(str::to_owned).collect()
}

#[tokio::test]
async fn a_batch_that_slips_keeps_its_jobs_in_the_phone() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let path = format!("{address}/calendar.ics");
    let page = browser.get(&path).await;
    assert_eq!(page.status, StatusCode::OK);
    assert_eq!(page.header("content-type"), "text/calendar; charset=utf-8");
    let first = page.text();
    assert!(first.starts_with("BEGIN:VCALENDAR\r\n") && first.ends_with("END:VCALENDAR\r\n"));
    assert!(browser.get(&address).await.text().contains(&format!("href=\"{path}\"")));
    browser.post(&address, &mango_ridge_with(&[("batch.placement", "2027-09-17")])).await;
    let moved = browser.get(&path).await.text();
    assert_eq!(uids(&first), uids(&moved));
    assert!(first.contains("DTSTART;VALUE=DATE:20270914") && moved.contains("DTSTART;VALUE=DATE:20270917"));
}

#[tokio::test]
async fn a_plan_without_a_chick_day_has_no_calendar() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let page = browser.get(&format!("{address}/calendar.ics")).await;
    assert_eq!(page.status, StatusCode::NOT_FOUND);
    assert!(!browser.get(&address).await.text().contains("calendar.ics"));
}
