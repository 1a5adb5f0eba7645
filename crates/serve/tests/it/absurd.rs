use axum::body::Body;
use axum::http::{StatusCode, header};
use quantity::Kind;

use crate::rig::{Browser, at, form, mango_ridge_with, memory};

#[tokio::test]
async fn more_than_a_form_can_hold_is_refused() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let mut body = b"batch.name=".to_vec();
    body.resize(10 * 1024 * 1024, b'a');
    let page = browser.send(form(&address, body)).await;
    assert_eq!(page.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert!(page.text().contains("more than a form can hold"));
    assert_eq!(browser.get(&address).await.status, StatusCode::OK);
}

#[tokio::test]
async fn an_endless_answer_is_a_fault_and_its_beginning_is_kept() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let endless = "9".repeat(100_000);
    for key in ["batch.name", "batch.chicks", "house.length_m", "disinfectant.ratio", "farm.currency"] {
        let page = browser.post(&address, &mango_ridge_with(&[(key, &endless)])).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{key}");
        assert!(page.text().contains("value=\"99999") && page.bytes.len() < 200_000, "{key}");
    }
}

/// No answer to a field of this kind.
fn absurd(kind: Kind) -> &'static str {
    match kind {
        Kind::Text(_) => {
            "a name that is far longer than any name of a farm, a house or a batch ever was, and then some more"
        }
        Kind::Curve => "day,grams\n0,42",
        _ => "as many as fit",
    }
}

#[tokio::test]
async fn each_absurd_answer_gets_its_fault_beside_its_box_and_is_not_lost() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let fields: Vec<_> =
        advice::families::plan_fields().into_iter().filter(|asked| asked.key != "batch.house").collect();
    let pair = |asked: &quantity::Asked| (asked.key.to_owned(), absurd(asked.field.kind).to_owned());
    let page = browser.post(&address, &fields.iter().map(pair).collect::<Vec<_>>()).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    for text in [page.text(), browser.answers(&address).await.text()] {
        let kept = crate::rig::filled(&text);
        for asked in &fields {
            let id = format!("field-{}", asked.key.replace(['.', '_'], "-"));
            assert!(
                text.contains(&format!("<p class=\"fault\" id=\"{id}-fault\">")),
                "{} has no fault",
                asked.key
            );
            let ticks = matches!(asked.field.kind, Kind::Choices(_) | Kind::Months);
            assert!(
                ticks || kept[asked.key] == [absurd(asked.field.kind)],
                "{}: {:?}",
                asked.key,
                kept.get(asked.key)
            );
        }
    }
    assert_eq!(browser.get(&address).await.status, StatusCode::OK);
    let mended = browser.post(&address, &crate::rig::told_to_the_end()).await;
    assert_eq!(mended.status, StatusCode::SEE_OTHER, "everything can be put right again");
}

#[tokio::test]
async fn bytes_that_are_no_text_break_nothing() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    for body in [&b"batch.name=\xff\xfe"[..], b"batch.name=%FF%FE%00", b"%FF=%FF", b"&&==&=&", b"\0\0\0"] {
        let page = browser.send(form(&address, body.to_vec())).await;
        assert!(
            page.status == StatusCode::SEE_OTHER || page.status == StatusCode::BAD_REQUEST,
            "{body:?}: {}",
            page.status
        );
        assert_eq!(browser.get(&address).await.status, StatusCode::OK);
    }
}

#[tokio::test]
async fn a_form_of_another_sort_is_refused() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let request = at(&address)
        .method("POST")
        .header(header::CONTENT_TYPE, "application/json")
        .body(Body::from("{\"batch.chicks\": 1600}"))
        .unwrap();
    assert_eq!(browser.send(request).await.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn hostile_names_are_shown_as_they_were_typed() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let hostile = "</title><script>alert(1)</script>\"'><img src=x>";
    let changed = [("batch.name", hostile), ("farm.name", hostile), ("house.name", hostile)];
    browser.post(&address, &mango_ridge_with(&changed)).await;
    let faulty = mango_ridge_with(&[("batch.chicks", hostile), ("batch.name", hostile)]);
    assert_eq!(browser.post(&address, &faulty).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    for path in ["/", &address, &format!("/sums/ring?chicks={}", "%3Cscript%3E")] {
        let text = browser.get(path).await.text();
        assert!(!text.contains("<script>") && !text.contains("<img"), "{path}");
        assert!(text.contains("&lt;script&gt;"), "{path}");
    }
}

#[tokio::test]
async fn unknown_and_repeated_keys_are_borne() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let pair = |key: &str, text: &str| (key.to_owned(), text.to_owned());
    let mut pairs = mango_ridge_with(&[("house.length_ft", "59")]);
    pairs.extend((0..2_000).map(|at| pair(&format!("no.such_{at}"), "1")));
    pairs.push(pair("seen-house", "nonsense"));
    let page = browser.post(&address, &pairs).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "a length in metres and one in feet");
    let page = browser.get(&address).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(!page.text().contains("no.such"));
}
