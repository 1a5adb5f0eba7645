use axum::http::StatusCode;

use crate::rig::{Browser, filled, mango_ridge, mango_ridge_with, memory, visible};

fn pair(key: &str, text: &str) -> (String, String) {
    (key.to_owned(), text.to_owned())
}

/// The form as a browser that opened the page some time ago would send it: with what it had seen.
async fn opened(browser: &Browser, address: &str) -> Vec<(String, String)> {
    let answers = filled(&browser.answers(address).await.text());
    let seen = |(key, values): (&String, &Vec<String>)| (key.clone(), values[0].clone());
    answers.iter().filter(|(key, _)| key.starts_with("seen-")).map(seen).collect()
}

/// Two people open the form, both make the house longer, neither sees the other.
async fn written_apart(browser: &Browser) -> String {
    let address = browser.mango_ridge().await;
    let seen = opened(browser, &address).await;
    assert_eq!(seen.len(), 5, "farm, prices, house, equipment, and which house: {seen:?}");
    for length in ["20", "22"] {
        let mut form = mango_ridge_with(&[("house.length_m", length)]);
        form.extend(seen.clone());
        browser.post(&address, &form).await;
    }
    address
}

#[tokio::test]
async fn what_was_written_apart_is_asked_about_and_settled() {
    let browser = Browser::new(&memory()).await;
    let address = written_apart(&browser).await;
    let page = browser.get(&address).await.text();
    let text = visible(&page);
    assert!(text.contains("written twice"), "{text}");
    assert!(text.contains("Length of the house: 20 m") && text.contains("Length of the house: 22 m"));
    assert!(!text.contains("Width of the house: 9 m"), "only what differs is shown");

    let versions: Vec<&str> = page.split("<div class=\"version\">").skip(1).collect();
    let first = versions.iter().find(|version| version.contains("20 m")).unwrap();
    let id = crate::rig::attribute(first.split("<input").nth(1).unwrap(), "value").unwrap();
    let settled = browser.post(&format!("{address}/settle"), &[pair("choose", &id)]).await;
    assert_eq!(settled.status, StatusCode::SEE_OTHER);
    let after = browser.get(&address).await.text();
    assert!(!visible(&after).contains("written twice"));
    assert_eq!(filled(&browser.answers(&address).await.text())["house.length_m"], ["20"]);
    let again = browser.post(&format!("{address}/settle"), &[pair("choose", &id)]).await;
    assert_eq!(again.status, StatusCode::NOT_FOUND, "there is nothing left to settle");
}

#[tokio::test]
async fn a_form_opened_before_the_change_undoes_nothing_it_did_not_touch() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let seen = opened(&browser, &address).await;
    browser.post(&address, &mango_ridge_with(&[("house.length_m", "20")])).await;
    let mut old = mango_ridge();
    old.extend(seen);
    browser.post(&address, &old).await;
    let page = browser.answers(&address).await.text();
    assert_eq!(filled(&page)["house.length_m"], ["20"]);
    assert!(!visible(&page).contains("written twice"));
}

#[tokio::test]
async fn nonsense_settles_nothing() {
    let browser = Browser::new(&memory()).await;
    let address = written_apart(&browser).await;
    let settle = format!("{address}/settle");
    assert_eq!(browser.post(&settle, &[]).await.status, StatusCode::BAD_REQUEST);
    let nobody = pair("choose", &uuid::Uuid::nil().to_string());
    assert_eq!(browser.post(&settle, &[nobody]).await.status, StatusCode::NOT_FOUND);
    assert!(visible(&browser.get(&address).await.text()).contains("written twice"));
}
