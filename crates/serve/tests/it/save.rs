use axum::http::StatusCode;

use crate::rig::{Browser, encoded, file, filled, form, mango_ridge, mango_ridge_with, memory, visible};

#[tokio::test]
async fn what_was_saved_is_found_again_after_a_restart() {
    let folder = std::env::temp_dir().join(format!("broodwright-serve-{}", std::process::id()));
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let path = folder.join("farm.book");
    let before = Browser::new(&file(&path)).await;
    let address = before.mango_ridge().await;
    let shown = before.answers(&address).await.text();
    drop(before);

    let after = Browser::new(&file(&path)).await;
    let again = after.answers(&address).await.text();
    assert_eq!(filled(&again), filled(&shown));
    let answers = filled(&again);
    for (key, text) in mango_ridge() {
        assert!(answers[&key].contains(&text), "{key} is {:?}, was {text}", answers[&key]);
    }
    assert!(after.get("/").await.text().contains("September 2027"));
    std::fs::remove_dir_all(&folder).unwrap();
}

#[tokio::test]
async fn a_new_plan_starts_from_what_stays_with_the_farm() {
    let browser = Browser::new(&memory()).await;
    let first = browser.mango_ridge().await;
    let second = browser.new_plan().await;
    assert_ne!(first, second);
    let answers = filled(&browser.answers(&second).await.text());
    for kept in ["farm.latitude_deg", "house.length_m", "guard.sheet_length_m", "prices.sheet_each"] {
        assert!(answers.contains_key(kept), "{kept}");
    }
    for own in ["batch.chicks", "batch.placement", "guard.overlap_m", "litter.depth_cm"] {
        assert!(!answers.contains_key(own), "{own}");
    }
    assert_eq!(browser.new_plan().await, second, "a plan that says nothing yet is gone on with");
}

#[tokio::test]
async fn the_form_comes_first_while_nothing_is_told_and_the_answers_after() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let blank = browser.get(&address).await.text();
    assert!(!blank.contains("id=\"question-fit\"") && blank.contains("id=\"field-batch-chicks\""));
    browser.post(&address, &mango_ridge()).await;
    let told = browser.get(&address).await.text();
    assert!(told.contains("id=\"question-fit\"") && !told.contains("id=\"field-batch-chicks\""));
    assert!(told.contains(&format!("href=\"{address}/answers\"")));
}

#[tokio::test]
async fn faults_keep_what_was_typed_and_are_tied_to_their_fields() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let changed = [("house.length_m", "3500"), ("batch.chicks", "many"), ("litter.depth_cm", "8")];
    let page = browser.post(&address, &mango_ridge_with(&changed)).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    // Told again when the page is opened later: nothing of it was lost.
    for text in [page.text(), browser.answers(&address).await.text()] {
        let answers = filled(&text);
        assert_eq!(answers["house.length_m"], ["3500"]);
        assert_eq!(answers["batch.chicks"], ["many"]);
        assert_eq!(answers["litter.depth_cm"], ["8"]);
        assert_eq!(answers["house.width_m"], ["9.0"], "what holds stays");
        for key in ["house-length-m", "batch-chicks"] {
            let input = tag_of(&text, &format!("id=\"field-{key}\""));
            assert!(input.contains("aria-invalid=\"true\""), "{input}");
            assert!(input.contains(&format!("field-{key}-fault\"")), "{input}");
            assert!(text.contains(&format!("<p class=\"fault\" id=\"field-{key}-fault\">")));
            assert!(text.contains(&format!("<a href=\"#field-{key}\">")), "the summary links to {key}");
        }
        assert!(text.contains("id=\"faults\"") && text.contains("role=\"alert\""));
        assert!(!visible(&text).contains("house.length_m"), "a fault names the label, not the key");
    }
    let plan = browser.get(&address).await.text();
    assert!(
        plan.contains(&format!("href=\"{address}/answers#field-batch-chicks\"")),
        "the plan leads to what does not hold"
    );
    let mended = browser.post(&address, &mango_ridge()).await;
    assert_eq!(mended.status, StatusCode::SEE_OTHER);
    assert!(!browser.get(&address).await.text().contains("id=\"faults\""));
}

fn tag_of<'a>(page: &'a str, part: &str) -> &'a str {
    page.split('<').find(|tag| tag.contains(part)).unwrap_or_else(|| panic!("{part} is not there"))
}

#[tokio::test]
async fn a_faulty_answer_leaves_the_books_earlier_one_to_other_plans() {
    let browser = Browser::new(&memory()).await;
    let first = browser.mango_ridge().await;
    browser.post(&first, &mango_ridge_with(&[("house.length_m", "3500"), ("house.width_m", "8")])).await;
    let other = filled(&browser.answers(&browser.new_plan().await).await.text());
    assert_eq!(other["house.length_m"], ["18.0"]);
    assert_eq!(other["house.width_m"], ["8"]);
}

#[tokio::test]
async fn an_answer_taken_out_is_gone_and_one_not_known_says_so() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let changed = [("farm.altitude_m", ""), ("house.eave_height_m", "not known")];
    let page = browser.post(&address, &mango_ridge_with(&changed)).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER);
    let answers = filled(&browser.answers(&address).await.text());
    assert!(!answers.contains_key("farm.altitude_m"));
    assert_eq!(answers["house.eave_height_m"], ["not known"]);
}

#[tokio::test]
async fn saving_the_same_again_writes_nothing_into_the_book() {
    let store = memory();
    let browser = Browser::new(&store).await;
    let address = browser.mango_ridge().await;
    let farm = store.farms().await.unwrap()[0].id;
    let id = uuid::Uuid::from_u128(7);
    let access = book::Access::granted(farm, book::PersonId(id), book::DeviceId(id), book::Role::Viewer);
    let written = store.reach(&access).await.unwrap().entries;
    assert_eq!(written, 4, "farm, prices, house, equipment");
    browser.post(&address, &mango_ridge_with(&[("house.length_m", "18")])).await;
    assert_eq!(store.reach(&access).await.unwrap().entries, written, "18 is 18.0");
    browser.post(&address, &mango_ridge_with(&[("house.length_m", "20")])).await;
    assert_eq!(store.reach(&access).await.unwrap().entries, written + 1);
}

#[tokio::test]
async fn with_several_houses_one_is_chosen() {
    let browser = Browser::new(&memory()).await;
    let first = browser.mango_ridge().await;
    let second = browser.new_plan().await;
    let pair = |key: &str, text: &str| (key.to_owned(), text.to_owned());
    browser.post(&format!("{second}/house"), &[pair("house", "new")]).await;
    assert!(!filled(&browser.answers(&second).await.text()).contains_key("house.length_m"));
    let short = [("house.name", "Short house"), ("house.length_m", "12"), ("house.width_m", "7")];
    browser.post(&second, &mango_ridge_with(&short)).await;
    let page = browser.answers(&first).await.text();
    assert_eq!(filled(&page)["house.length_m"], ["18.0"], "the other plan keeps its house");
    assert!(page.contains("Short house"));
    let chosen = filled(&browser.answers(&second).await.text())["house"].clone();
    browser.post(&format!("{first}/house"), &[pair("house", &chosen[0])]).await;
    assert_eq!(filled(&browser.answers(&first).await.text())["house.length_m"], ["12"]);
    let unknown = [pair("house", &uuid::Uuid::nil().to_string())];
    let page = browser.post(&format!("{first}/house"), &unknown).await;
    assert_eq!(page.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn all_houses_of_the_book_are_compared() {
    let browser = Browser::new(&memory()).await;
    let first = browser.mango_ridge().await;
    assert!(!visible(&browser.get(&first).await.text()).contains("The same batch in each house"));
    let second = browser.post("/before/new", &[("house".to_owned(), "new".to_owned())]).await;
    let second = second.header("location").to_owned();
    let short = [("house.name", "Short house"), ("house.length_m", "12"), ("house.width_m", "7")];
    browser.post(&second, &mango_ridge_with(&short)).await;
    for (plan, own) in [(&first, "Long house (this plan)"), (&second, "Short house (this plan)")] {
        let text = visible(&browser.get(plan).await.text());
        assert!(text.contains("The same batch in each house") && text.contains(own), "{own}");
    }
    let home = browser.get("/").await.text();
    assert!(home.contains("Short house") && home.contains("name=\"house\""), "a new plan can choose");
}

#[tokio::test]
async fn moving_to_another_house_loses_nothing_that_was_typed() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let seen = filled(&browser.answers(&address).await.text());
    let long = seen["house"][0].clone();
    let sent = |house: &str, changed: &[(&str, &str)]| {
        let mut pairs = mango_ridge_with(changed);
        pairs.push(("house".to_owned(), house.to_owned()));
        pairs.push(("seen-of-house".to_owned(), long.clone()));
        pairs
    };
    let typed = [("house.length_m", "eighteen"), ("batch.chicks", "1450")];
    browser.post(&address, &sent("new", &typed)).await;
    let moved = filled(&browser.answers(&address).await.text());
    assert_eq!(moved["batch.chicks"], ["1450"], "what was typed with the choice is kept");
    assert!(!moved.contains_key("house.length_m"), "the new house is not described yet");
    browser.post(&format!("{address}/house"), &[("house".to_owned(), long.clone())]).await;
    let back = filled(&browser.answers(&address).await.text());
    assert_eq!(back["house.length_m"], ["eighteen"]);
    assert_eq!(back["batch.chicks"], ["1450"]);
}

#[tokio::test]
async fn an_older_page_speaks_of_the_house_that_stood_on_it() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let long = filled(&browser.answers(&address).await.text())["house"][0].clone();
    browser.post(&format!("{address}/house"), &[("house".to_owned(), "new".to_owned())]).await;
    let mut old = mango_ridge_with(&[("house.length_m", "19")]);
    old.push(("seen-of-house".to_owned(), long.clone()));
    browser.post(&address, &old).await;
    let after = filled(&browser.answers(&address).await.text());
    assert_eq!((after["house"][0].as_str(), after["house.length_m"][0].as_str()), (long.as_str(), "19"));
}

#[tokio::test]
async fn every_figure_leads_to_its_working() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let plan = browser.get(&address).await.text();
    let days = browser.get(&format!("{address}/part/days")).await.text();
    let mut seen = std::collections::BTreeSet::new();
    for rest in [plan, days].join("").split(&format!("href=\"{address}/working/")).skip(1) {
        seen.insert(rest.split('"').next().unwrap().to_owned());
    }
    assert!(seen.len() > 100, "{}", seen.len());
    for figure in seen {
        let page = browser.get(&format!("{address}/working/{figure}")).await;
        assert_eq!(page.status, StatusCode::OK, "{figure}");
        assert!(page.text().contains("class=\"formula\""), "{figure}");
    }
    assert_eq!(browser.get(&format!("{address}/working/no.such")).await.status, StatusCode::NOT_FOUND);
    let day = browser.get(&format!("{address}/working/growth.weight?day=21")).await.text();
    assert!(visible(&day).contains("day 21"));
}

#[tokio::test]
async fn languages_for_tests_are_not_offered() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    assert!(!browser.answers(&address).await.text().contains("value=\"en-XA\""));
    browser.post(&address, &mango_ridge_with(&[("settings.language", "ar-XB")])).await;
    assert_eq!(filled(&browser.answers(&address).await.text())["settings.language"], ["ar-XB"]);
}

#[tokio::test]
async fn hidden_prices_are_neither_shown_nor_lost() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    browser.post(&address, &mango_ridge_with(&[("settings.money", "hidden")])).await;
    let page = browser.get(&address).await.text();
    assert!(!page.contains("185.00") && !page.contains("prices.sheet_each"));
    let without: Vec<_> = mango_ridge_with(&[("settings.money", "shown")])
        .into_iter()
        .filter(|(key, _)| !key.starts_with("prices."))
        .collect();
    browser.post(&address, &without).await;
    assert_eq!(filled(&browser.answers(&address).await.text())["prices.sheet_each"], ["185.00"]);
}

#[tokio::test]
async fn a_rare_answer_is_asked_about_and_kept() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    let page = browser.post(&address, &mango_ridge_with(&[("house.length_m", "160")])).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER);
    let text = browser.get(&address).await.text();
    assert!(visible(&text).contains("160 m. That can be"), "{}", visible(&text));
    assert_eq!(filled(&browser.answers(&address).await.text())["house.length_m"], ["160"]);
}

#[tokio::test]
async fn the_same_form_sent_twice_is_harmless() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    let before = filled(&browser.answers(&address).await.text());
    browser.send(form(&address, encoded(&mango_ridge()).into_bytes())).await;
    assert_eq!(filled(&browser.answers(&address).await.text()), before);
}

#[tokio::test]
async fn what_another_process_wrote_is_seen_at_once() {
    let store = memory();
    let (one, other) = (Browser::new(&store).await, Browser::new(&store).await);
    let address = one.mango_ridge().await;
    assert_eq!(filled(&other.answers(&address).await.text())["house.length_m"], ["18.0"]);
    other.post(&address, &mango_ridge_with(&[("house.length_m", "20")])).await;
    assert_eq!(filled(&one.answers(&address).await.text())["house.length_m"], ["20"]);
    one.post(&address, &mango_ridge_with(&[("house.length_m", "22")])).await;
    let page = other.answers(&address).await.text();
    assert_eq!(filled(&page)["house.length_m"], ["22"]);
    assert!(!visible(&page).contains("written twice"), "each had seen the other");
}
