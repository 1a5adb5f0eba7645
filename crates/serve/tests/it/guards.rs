use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use book::Role;

use crate::rig::{Browser, at, encoded, form, mango_ridge, memory};

#[tokio::test]
async fn only_this_machines_names_are_answered() {
    let browser = Browser::new(&memory()).await;
    for (host, status) in [
        ("localhost:8080", StatusCode::OK),
        ("127.0.0.1", StatusCode::OK),
        ("[::1]:9", StatusCode::OK),
        ("evil.example", StatusCode::MISDIRECTED_REQUEST),
        ("localhost.evil.example:8080", StatusCode::MISDIRECTED_REQUEST),
    ] {
        let request = Request::builder().uri("/").header(header::HOST, host).body(Body::empty()).unwrap();
        assert_eq!(browser.send(request).await.status, status, "{host}");
    }
    let nameless = Request::builder().uri("/").body(Body::empty()).unwrap();
    assert_eq!(browser.send(nameless).await.status, StatusCode::MISDIRECTED_REQUEST);
}

#[tokio::test]
async fn a_form_from_somebody_elses_page_writes_nothing() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let body = || Body::from(encoded(&mango_ridge()));
    let sent = |name: &str, value: &str| {
        at(&address)
            .method("POST")
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .header(name, value)
            .body(body())
            .unwrap()
    };
    for (name, value) in [
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
        ("origin", "http://evil.example"),
        ("origin", "http://127.0.0.1:9999"),
        ("origin", "null"),
    ] {
        let page = browser.send(sent(name, value)).await;
        assert_eq!(page.status, StatusCode::FORBIDDEN, "{name}: {value}");
        assert!(page.text().contains("That form was not ours"));
    }
    assert!(!browser.get("/").await.text().contains("September 2027"));
    let old_browser = browser.send(sent("origin", "http://127.0.0.1:8080")).await;
    assert_eq!(
        old_browser.status,
        StatusCode::SEE_OTHER,
        "our own form, from a browser without fetch metadata"
    );
}

#[tokio::test]
async fn every_answer_keeps_the_browser_careful() {
    let browser = Browser::new(&memory()).await;
    for path in ["/", "/sums", "/style.css", "/no-such-page"] {
        let page = browser.get(path).await;
        let policy = page.header("content-security-policy");
        for part in ["default-src 'none'", "style-src 'self'", "form-action 'self'", "frame-ancestors 'none'"]
        {
            assert!(policy.contains(part), "{path}: {policy}");
        }
        assert!(policy.contains("script-src 'self';") && policy.contains("connect-src 'self';"), "{policy}");
        assert!(!policy.contains("unsafe") && !policy.contains("http") && !policy.contains('*'), "{policy}");
        assert_eq!(page.header("x-content-type-options"), "nosniff");
        assert!(!page.header("cache-control").is_empty());
        assert_eq!(page.header("referrer-policy"), "same-origin");
    }
}

#[tokio::test]
async fn pages_hold_no_script_of_their_own_no_inline_style_and_nothing_of_others() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    for path in ["/", &address, "/sums", "/sums/ring"] {
        let text = browser.get(path).await.text();
        for unwanted in
            ["<script>", " style=", " onclick=", "src=\"http", "href=\"http", "javascript:", "@import"]
        {
            assert!(!text.contains(unwanted), "{path} holds {unwanted}");
        }
        let scripts: Vec<&str> = text.split("<script ").skip(1).collect();
        assert_eq!(scripts.len(), 2, "{path}");
        for script in scripts {
            let ours = ["src=\"/queue.js?", "src=\"/script.js?"].iter().any(|src| script.starts_with(src));
            assert!(ours && script.contains("></script>"), "{path}: only files, and only ours");
        }
    }
}

#[tokio::test]
async fn who_may_only_look_sees_the_plan_and_changes_nothing() {
    let store = memory();
    let address = Browser::new(&store).await.mango_ridge().await;
    let looking = Browser::as_a(Role::Viewer, &store).await;
    let page = looking.get(&address).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text().contains("id=\"question-fit\"") && !page.text().contains("<form"));
    assert!(!looking.get("/").await.text().contains("<form"));
    for path in ["/before/new", &address, &format!("{address}/adopt"), &format!("{address}/settle")] {
        let page = looking.post(path, &mango_ridge()).await;
        assert_eq!(page.status, StatusCode::FORBIDDEN, "{path}");
        assert!(page.text().contains("You may look, but not write"));
    }
}

#[tokio::test]
async fn what_is_not_there_says_so_in_our_words() {
    let browser = Browser::new(&memory()).await;
    let nobodys = format!("/before/{}", uuid::Uuid::from_u128(5));
    for path in ["/nothing", "/before/1", "/before/%FF", &nobodys, "/sums/none", "/before//print/plan"] {
        let page = browser.get(path).await;
        assert_eq!(page.status, StatusCode::NOT_FOUND, "{path}");
        assert!(page.text().contains("There is no such page"), "{path}");
    }
    assert_eq!(browser.post(&nobodys, &mango_ridge()).await.status, StatusCode::NOT_FOUND);
    let page = browser.get("/before/new").await;
    assert_eq!(page.status, StatusCode::METHOD_NOT_ALLOWED);
    assert!(page.header("allow").contains("POST") && page.text().contains("does not work that way"));
    let deleting = at("/").method("DELETE").header("sec-fetch-site", "same-origin").body(Body::empty());
    assert_eq!(browser.send(deleting.unwrap()).await.status, StatusCode::METHOD_NOT_ALLOWED);
    let head = browser.send(at("/nothing").method("HEAD").body(Body::empty()).unwrap()).await;
    assert!(head.status == StatusCode::NOT_FOUND && head.bytes.is_empty());
}

#[tokio::test]
async fn the_plan_of_another_farm_is_not_there() {
    let store = memory();
    let address = Browser::new(&store).await.mango_ridge().await;
    let farm = book::FarmId(uuid::Uuid::from_u128(99));
    store.create_farm(store::Farm { id: farm, created_millis: 1 }).await.unwrap();
    let id = uuid::Uuid::from_u128(100);
    let loopback =
        serve::Loopback { farm, person: book::PersonId(id), device: book::DeviceId(id), role: Role::Owner };
    let options = serve::SiteOptions {
        loopback,
        demo: true,
        version: String::new(),
        now: || 1,
        new_id: uuid::Uuid::nil,
    };
    let router = serve::router(serve::Site::new(std::sync::Arc::clone(&store), options));
    let ask = |path: &str| {
        tower::ServiceExt::oneshot(router.clone(), form(path, encoded(&mango_ridge()).into_bytes()))
    };
    assert_eq!(ask(&address).await.unwrap().status(), StatusCode::NOT_FOUND);
    assert_eq!(ask(&format!("{address}/adopt")).await.unwrap().status(), StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn other_machines_are_refused_in_words() {
    let store = memory();
    let loopback = serve::sole_farm(&*store, 1, || uuid::Uuid::from_u128(3)).await.unwrap();
    let options = serve::SiteOptions {
        loopback,
        demo: false,
        version: String::new(),
        now: || 1,
        new_id: uuid::Uuid::nil,
    };
    let site = serve::Site::new(store, options);
    let refused = serve::serve(site, "0.0.0.0:0".parse().unwrap(), async {}).await.unwrap_err();
    let words = refused.in_words(present::Words::of(present::Locale::English));
    assert!(words.contains("0.0.0.0:0") && words.contains("127.0.0.1"), "{words}");
}
