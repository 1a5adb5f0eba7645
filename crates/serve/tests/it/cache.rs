use axum::body::Body;
use axum::http::StatusCode;

use crate::rig::{Browser, at, mango_ridge_with, memory, told_to_the_end};

async fn tag(browser: &Browser, path: &str) -> String {
    let page = browser.get(path).await;
    assert_eq!(page.status, StatusCode::OK);
    page.header("etag").to_owned()
}

async fn asked_again(browser: &Browser, path: &str, tag: &str) -> StatusCode {
    browser.send(at(path).header("if-none-match", tag).body(Body::empty()).unwrap()).await.status
}

#[tokio::test]
async fn a_page_that_did_not_change_is_not_sent_again() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let (data, calendar) = (format!("{address}/plan.json"), format!("{address}/calendar.ics"));
    for path in ["/", &address, "/sums", "/sums/litter", "/style.css", &data, &calendar] {
        let known = tag(&browser, path).await;
        assert_eq!(asked_again(&browser, path, &known).await, StatusCode::NOT_MODIFIED, "{path}");
        assert_eq!(asked_again(&browser, path, "W/\"other\"").await, StatusCode::OK, "{path}");
    }
}

#[tokio::test]
async fn any_change_makes_another_page() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let mut tags = vec![tag(&browser, &address).await];
    for changed in [("batch.chicks", "1500"), ("house.length_m", "20"), ("settings.units", "customary")] {
        browser.post(&address, &mango_ridge_with(&[changed])).await;
        tags.push(tag(&browser, &address).await);
    }
    browser.post(&format!("{address}/adopt"), &[]).await;
    tags.push(tag(&browser, &address).await);
    let all = tags.len();
    tags.sort();
    tags.dedup();
    assert_eq!(tags.len(), all);
}

#[tokio::test]
async fn the_first_load_is_under_40_kilobytes() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let packed = async |path: &str| {
        let request = at(path).header("accept-encoding", "gzip").body(Body::empty()).unwrap();
        let page = browser.send(request).await;
        assert_eq!(page.header("content-encoding"), "gzip", "{path}");
        page.bytes.len()
    };
    let home = browser.get("/").await.text();
    let style = home.split("rel=\"stylesheet\" href=\"").nth(1).unwrap().split('"').next().unwrap();
    assert!(browser.get(style).await.header("cache-control").contains("immutable"));
    let style = packed(style).await;
    let full = browser.new_plan().await;
    assert_eq!(browser.post(&full, &told_to_the_end()).await.status, StatusCode::SEE_OTHER);
    let form = format!("{full}/answers");
    let days = format!("{full}/part/days");
    for path in ["/", "/before/new-one", &address, &full, &form, &days, "/sums", "/sums/ring"] {
        let path = if path == "/before/new-one" { browser.new_plan().await } else { path.to_owned() };
        let all = style + packed(&path).await;
        println!("{path}: {all} bytes with the style");
        assert!(all < 40 * 1024, "{path} takes {all} bytes");
    }
}
