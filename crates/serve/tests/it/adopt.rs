use std::sync::Arc;

use axum::http::StatusCode;
use book::{Access, BatchId, BookState, DeviceId, PersonId, Role, Slot, Subject, fold};
use present::{Viewer, view};
use quantity::Source;
use serde_json::json;
use store::Store;
use uuid::Uuid;

use crate::batch::Batch;
use crate::rig::{Browser, mango_ridge_with, memory, told_to_the_end, visible};

async fn state(store: &Arc<dyn Store>) -> BookState {
    let farm = store.farms().await.unwrap()[0].id;
    let nobody = Uuid::nil();
    let access = Access::granted(farm, PersonId(nobody), DeviceId(nobody), Role::Viewer);
    fold(farm, store.all(&access).await.unwrap())
}

fn slot(address: &str) -> Slot {
    let id = Uuid::try_parse(address.rsplit('/').next().unwrap()).unwrap();
    Slot::of("plan-adopted", Subject::Batch(BatchId(id)))
}

#[tokio::test]
async fn an_adopted_plan_stands_whole_in_the_book() {
    let store = memory();
    let browser = Browser::new(&store).await;
    let address = browser.mango_ridge().await;
    let page = browser.post(&format!("{address}/adopt"), &[]).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER);

    let state = state(&store).await;
    let body = state.answers(&slot(&address)).unwrap();
    assert_eq!(body["batch.chicks"].typed.as_deref(), Some("1600"));
    assert_eq!(body["batch.chicks"].value, json!(1600));
    assert_eq!(body["batch.placement"].value, json!("2027-09-14"));
    assert_eq!(body["litter.spread_days_before_d"].typed, None, "nobody typed the usual value");
    assert_eq!(body["litter.spread_days_before_d"].value, json!(3));
    assert_eq!(body["rules_version"].value, json!(advice::RULES_VERSION));
    assert!(body["seed"].value.as_u64().unwrap() < 1 << 53);
    assert!(state.findings().is_empty(), "the house is known: {:?}", state.findings());

    let raws = advice::plan_file::read(include_str!("../../../../demo/mango-ridge.toml")).unwrap();
    let plan = advice::plan::work_out(advice::plan::read(&raws, Source::File, true).answers);
    let figures = body.keys().filter(|key| key.starts_with("figure.")).count();
    assert_eq!(figures, plan.outcome.figures().count());
    let shown = serde_json::to_value(view::plan(&plan, &Viewer::plain(), false)).unwrap();
    let shown = &shown["figures"]["space.birds_allowed"]["value"];
    assert_eq!(body["figure.space.birds_allowed"].value.as_f64(), shown.as_f64());
}

#[tokio::test]
async fn the_page_says_when_it_was_adopted_and_whether_it_changed_since() {
    let store = memory();
    let browser = Browser::new(&store).await;
    let address = browser.mango_ridge().await;
    let adopt = format!("{address}/adopt");
    assert!(browser.get(&address).await.text().contains(&adopt));
    browser.post(&adopt, &[]).await;
    let adopted = browser.get(&address).await.text();
    assert!(visible(&adopted).contains("Adopted on"), "{}", visible(&adopted));
    assert!(!adopted.contains(&adopt), "there is nothing to adopt again");
    assert!(visible(&browser.get("/").await.text()).contains("Adopted."));

    browser.post(&address, &mango_ridge_with(&[("batch.chicks", "1500")])).await;
    let changed = browser.get(&address).await.text();
    assert!(visible(&changed).contains("It has changed since it was adopted") && changed.contains(&adopt));
    let rows = rows_since_adopted(&changed);
    assert_eq!(rows[0], ["Chicks", "1 600 chicks", "1 500 chicks"], "{rows:?}");
    assert!(rows.iter().any(|row| row[0] == "Feed for the whole batch" && row[1] != row[2]), "{rows:?}");
    assert!(!visible(&changed).contains("None of its figures moved"));
    let of_table = changed.split("What is otherwise").last().unwrap();
    assert!(of_table.contains("/working/feed.total"), "its working opens");
    browser.post(&adopt, &[]).await;
    let state = state(&store).await;
    assert_eq!(state.answers(&slot(&address)).unwrap()["batch.chicks"].value, json!(1500));
    assert_eq!(state.history(&slot(&address)).len(), 2, "the first stays in the history");
    assert!(state.conflicts().is_empty());
}

/// The rows of the table that tells what is otherwise than when a plan was adopted.
fn rows_since_adopted(page: &str) -> Vec<Vec<String>> {
    let table = page
        .split("<caption class=\"hidden\">What is otherwise")
        .nth(1)
        .and_then(|rest| rest.split("</table>").next())
        .unwrap();
    let rows = table.split("<tr>").filter(|row| row.contains("<td"));
    let cells = |row: &str| -> Vec<String> {
        row.split("</t")
            .map(visible)
            .map(|cell| cell.trim().to_owned())
            .filter(|cell| !cell.is_empty())
            .collect()
    };
    rows.map(cells).collect()
}

#[tokio::test]
async fn a_change_that_moves_no_figure_is_said_as_such() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    browser.post(&format!("{address}/adopt"), &[]).await;
    browser.post(&address, &mango_ridge_with(&[("batch.name", "Another name")])).await;
    let changed = browser.get(&address).await.text();
    let rows = rows_since_adopted(&changed);
    assert_eq!(rows.len(), 1, "{rows:?}");
    assert_eq!(rows[0].last().map(String::as_str), Some("Another name"));
    assert!(visible(&changed).contains("None of its figures moved"));
}

#[tokio::test]
async fn what_was_meant_by_a_closed_batch_stays_as_it_was_adopted() {
    let batch = Batch::begun(&memory()).await;
    let plan = batch.address.replace("/batch/", "/before/");
    let left = [("2027-05-01.batch-closed..birds_left", "1596"), ("sure", "yes")];
    let closed = batch.send("/write/batch-closed", "2027-05-01", &left).await;
    assert_eq!(closed.status, StatusCode::SEE_OTHER, "{}", visible(&closed.text()));
    let changed = mango_ridge_with(&[("batch.placement", "2027-05-01"), ("batch.chicks", "1500")]);
    batch.browser.post(&plan, &changed).await;
    let page = batch.browser.get(&plan).await.text();
    assert_eq!(rows_since_adopted(&page)[0][1..], ["1 600 chicks", "1 500 chicks"]);
    assert!(visible(&page).contains("This batch is closed") && !page.contains(&format!("{plan}/adopt")));
    batch.browser.post(&format!("{plan}/adopt"), &[]).await;
    let again = batch.browser.get(&plan).await.text();
    assert_eq!(rows_since_adopted(&again), rows_since_adopted(&page), "an old page's button changes nothing");
}

#[tokio::test]
async fn a_plan_with_a_fault_or_without_chicks_is_not_adopted() {
    let store = memory();
    let browser = Browser::new(&store).await;
    let address = browser.mango_ridge().await;
    for (key, text) in [("house.width_m", "wide"), ("batch.chicks", ""), ("batch.placement", "")] {
        browser.post(&address, &mango_ridge_with(&[(key, text)])).await;
        let page = browser.post(&format!("{address}/adopt"), &[]).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{key}");
        let id = key.replace(['.', '_'], "-");
        assert!(page.text().contains(&format!("<a href=\"#field-{id}\">")), "{key} is named");
    }
    assert!(state(&store).await.answers(&slot(&address)).is_none());
}

#[tokio::test]
async fn everything_told_is_read_back_equal_from_the_book() {
    let store = memory();
    let browser = Browser::new(&store).await;
    let address = browser.new_plan().await;
    assert_eq!(browser.post(&address, &told_to_the_end()).await.status, StatusCode::SEE_OTHER);
    let adopted = browser.post(&format!("{address}/adopt"), &[]).await;
    assert_eq!(adopted.status, StatusCode::SEE_OTHER, "{}", visible(&adopted.text()));
    let body = state(&store).await.answers(&slot(&address)).unwrap().clone();
    assert_eq!(body["sale.days"].value, json!(["40: 400", "42: 600", "45: rest"]));
    assert_eq!(
        body["batch.own_curve"].value[4],
        json!("42,2050,3700"),
        "a list of plain rows under its header"
    );
    let whole = async |browser: &Browser| {
        let form = crate::rig::filled(&browser.answers(&address).await.text());
        let told = |(key, _): &(&String, &Vec<String>)| key.contains('.');
        let form: Vec<_> = form.iter().filter(told).map(|(key, text)| (key.clone(), text.clone())).collect();
        (form, browser.get(&format!("{address}/plan.json")).await.text())
    };
    let before = whole(&browser).await;
    for (key, text) in told_to_the_end() {
        assert!(before.0.iter().any(|(other, texts)| *other == key && texts.contains(&text)), "{key} {text}");
    }
    let farm = store.farms().await.unwrap()[0].id;
    let nobody = Uuid::nil();
    let access = Access::granted(farm, PersonId(nobody), DeviceId(nobody), Role::Owner);
    let key = format!("plan/{}", address.rsplit('/').next().unwrap());
    assert!(store.delete_draft(&access, &key).await.unwrap());
    assert!(whole(&browser).await == before, "another device reads the same");
    assert!(!visible(&browser.get(&address).await.text()).contains("It has changed since it was adopted"));
}

#[tokio::test]
async fn an_adopted_plan_is_found_without_its_draft() {
    let store = memory();
    let browser = Browser::new(&store).await;
    let address = browser.mango_ridge().await;
    browser.post(&format!("{address}/adopt"), &[]).await;
    let shown = crate::rig::filled(&browser.answers(&address).await.text());
    let farm = store.farms().await.unwrap()[0].id;
    let nobody = Uuid::nil();
    let access = Access::granted(farm, PersonId(nobody), DeviceId(nobody), Role::Owner);
    let key = format!("plan/{}", address.rsplit('/').next().unwrap());
    assert!(store.delete_draft(&access, &key).await.unwrap());
    let page = browser.get(&address).await;
    assert_eq!(page.status, StatusCode::OK);
    let again = crate::rig::filled(&browser.answers(&address).await.text());
    assert_eq!(again["batch.chicks"], shown["batch.chicks"]);
    assert_eq!(again["disinfectant.surfaces"], shown["disinfectant.surfaces"]);
    assert!(!visible(&page.text()).contains("It has changed since it was adopted"));
    assert!(browser.get("/").await.text().contains("September 2027"));
}
