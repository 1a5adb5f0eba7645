use axum::http::StatusCode;

use crate::rig::{Browser, filled, memory, visible};

#[tokio::test]
async fn every_sum_is_listed_and_opens() {
    let browser = Browser::new(&memory()).await;
    let list = browser.get("/sums").await.text();
    for sum in advice::families::sums() {
        let path = format!("/sums/{}", sum.name);
        assert!(list.contains(&format!("href=\"{path}\"")), "{path}");
        let page = browser.get(&path).await;
        assert_eq!(page.status, StatusCode::OK);
        assert!(!page.text().contains("class=\"fault"), "nothing was asked yet");
    }
}

#[tokio::test]
async fn a_sum_can_be_kept_as_an_address() {
    let browser = Browser::new(&memory()).await;
    let values = [("length_m", "18"), ("width_m", "9"), ("depth_cm", "7"), ("bag_l", "120")];
    let pairs: Vec<String> = values.iter().map(|(key, value)| format!("{key}={value}")).collect();
    let page = browser.get(&format!("/sums/litter?{}", pairs.join("&"))).await;
    assert_eq!(page.status, StatusCode::OK, "{}", visible(&page.text()));
    // 18 × 9 × 0.07 m³ is 11.34 m³, in bags of 120 L: 94.5, so 95.
    assert!(page.text().contains("class=\"lead\"") && visible(&page.text()).contains("95"));
    for (key, value) in values {
        assert_eq!(filled(&page.text())[key], [value]);
    }
}

#[tokio::test]
async fn weights_are_typed_a_line_a_bird() {
    let browser = Browser::new(&memory()).await;
    let page = browser.get("/sums/uniformity?weights=1900%0D%0A2000%0D%0A2100").await;
    assert_eq!(page.status, StatusCode::OK, "{}", visible(&page.text()));
    let text = page.text();
    assert!(text.contains(">1900 2000 2100</textarea>"), "{text}");
    assert!(visible(&text).contains("2 000 g") && visible(&text).contains("5.0 %"));
}

#[tokio::test]
async fn a_sums_faults_are_tied_to_its_fields() {
    let browser = Browser::new(&memory()).await;
    let sum = advice::sums::by_name("litter").unwrap();
    let first = sum.asked()[0].key;
    let page = browser.get(&format!("/sums/litter?{first}=long")).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    let text = page.text();
    let id = format!("field-{}", first.replace(['.', '_'], "-"));
    assert!(text.contains(&format!("id=\"{id}-fault\"")) && text.contains(&format!("href=\"#{id}\"")));
    assert_eq!(filled(&text)[first], ["long"]);
    assert!(!text.contains("class=\"lead\""));
}
