//! What waited on phones: written once, in order, asked about where it stands apart, and never lost.

use axum::body::Body;
use axum::http::{Request, StatusCode};
use book::Role;
use serde_json::{Value, json};
use uuid::Uuid;

use crate::batch::Batch;
use crate::rig::{Browser, Page, at, memory, visible};

/// The rig's clock, to some minutes.
const NOW: i64 = 1_810_000_000_000;
const MINUTE: i64 = 60_000;
const DAY: i64 = 1440 * MINUTE;
const TODAY: &str = "2027-05-11";

fn id(number: u128) -> String {
    Uuid::from_u128(number).to_string()
}

fn request() -> axum::http::request::Builder {
    at("/queue")
        .method("POST")
        .header("content-type", "application/json")
        .header("sec-fetch-site", "same-origin")
}

fn sent(queue: &Value) -> Request<Body> {
    request().body(Body::from(queue.to_string())).unwrap()
}

/// A phone whose clock goes wrong by so much.
struct Phone<'a> {
    batch: &'a Batch,
    key: u128,
    ahead: i64,
}

impl Phone<'_> {
    /// A draft: a form of boxes of one day, filled some time ago.
    fn draft(&self, number: u128, day: &str, boxes: &[(&str, &str)], ago: i64) -> Value {
        let mut form = vec![json!(["on", day])];
        let mut groups: Vec<&str> = boxes.iter().map(|(name, _)| name.rsplit_once('.').unwrap().0).collect();
        groups.dedup();
        for (at, group) in groups.iter().enumerate() {
            form.push(json!([format!("{day}.{group}.seen-entry"), ""]));
            form.push(json!([format!("{day}.{group}.entry-id"), id(number * 100 + at as u128)]));
        }
        form.extend(boxes.iter().map(|(name, text)| json!([format!("{day}.{name}"), text])));
        json!({
            "id": id(number), "to": format!("{}/day", self.batch.address), "form": form, "seen": {},
            "written": NOW + self.ahead - ago,
        })
    }

    async fn send(&self, drafts: &[Value]) -> Value {
        let page = self.answer(drafts).await;
        assert_eq!(page.status, StatusCode::OK, "{}", page.text());
        serde_json::from_str(&page.text()).unwrap()
    }

    async fn answer(&self, drafts: &[Value]) -> Page {
        let queue = json!({ "phone": id(self.key), "sent": NOW + self.ahead, "drafts": drafts });
        self.batch.browser.send(sent(&queue)).await
    }

    async fn words(&self, drafts: &[Value]) -> Vec<String> {
        let told = self.send(drafts).await;
        let word = |fate: &Value| fate["word"].as_str().unwrap().to_owned();
        told["drafts"].as_array().unwrap().iter().map(word).collect()
    }
}

fn phone(batch: &Batch, key: u128) -> Phone<'_> {
    Phone { batch, key, ahead: 0 }
}

const DEAD_2: &[(&str, &str)] = &[("deaths..dead", "2"), ("water..water_l", "180")];

#[tokio::test]
async fn what_waited_is_written_once_and_in_order() {
    let batch = Batch::begun(&memory()).await;
    let phone = phone(&batch, 7);
    let first = phone.draft(1, TODAY, DEAD_2, 4 * MINUTE);
    let mut second = phone.draft(2, TODAY, &[("deaths..dead", "2+1")], 2 * MINUTE);
    second["form"][1][1] = json!(id(100));
    assert_eq!(phone.words(std::slice::from_ref(&first)).await, ["written"]);
    assert_eq!(phone.words(&[first.clone(), second.clone()]).await, ["known", "written"]);
    assert_eq!(phone.words(&[first, second]).await, ["known", "known"], "both answers were lost");
    let page = batch.page("").await;
    assert!(page.contains("value=\"2+1\"") && page.contains("value=\"180\""), "the later one counts");
    let all = visible(&batch.page(&format!("/day/{TODAY}")).await);
    assert_eq!(all.matches("180 L").count(), 1, "{all}");
    assert!(!page.contains("written twice"));
}

#[tokio::test]
async fn what_is_doubtful_or_wrong_is_told_and_holds_up_nothing() {
    let batch = Batch::begun(&memory()).await;
    let phone = phone(&batch, 7);
    let wrong = phone.draft(1, TODAY, &[("deaths..dead", "many")], 0);
    let rare = phone.draft(2, TODAY, &[("feed-given.starter.feed_kg", "900")], 0);
    let good = phone.draft(3, TODAY, &[("water..water_l", "180")], 0);
    let told = phone.send(&[wrong, rare.clone(), good]).await;
    let fates = &told["drafts"];
    assert_eq!([&fates[0]["word"], &fates[1]["word"], &fates[2]["word"]], ["refused", "doubted", "written"]);
    assert!(fates[0]["says"][0].as_str().unwrap().contains("many"), "{told}");
    assert!(fates[1]["says"][0].as_str().unwrap().contains("bags"), "{told}");
    let mut sure = rare;
    sure["form"].as_array_mut().unwrap().push(json!(["sure", "yes"]));
    assert_eq!(phone.words(&[sure]).await, ["written"]);
}

#[tokio::test]
async fn what_two_phones_wrote_apart_is_asked_and_neither_is_lost() {
    let batch = Batch::begun(&memory()).await;
    let (one, other) = (phone(&batch, 7), phone(&batch, 8));
    assert_eq!(one.words(&[one.draft(1, TODAY, &[("deaths..dead", "2")], 4 * MINUTE)]).await, ["written"]);
    let unseen = other.draft(2, TODAY, &[("deaths..dead", "5")], 2 * MINUTE);
    for _ in 0..2 {
        let told = other.send(std::slice::from_ref(&unseen)).await;
        assert_eq!(told["drafts"][0]["word"], "asked");
        assert_eq!(told["drafts"][0]["at"], json!(batch.address));
    }
    let page = batch.page("").await;
    assert!(
        visible(&page).contains("written twice") && page.contains("2 birds") && page.contains("5 birds"),
        "{page}"
    );
    let sum = page.split("value=\"sum:").nth(1).unwrap().split('"').next().unwrap();
    let settled = batch.send("/settle", TODAY, &[("choose", &format!("sum:{sum}"))]).await;
    assert_eq!(settled.status, StatusCode::SEE_OTHER, "{}", settled.text());
    let page = batch.page("").await;
    assert!(!visible(&page).contains("written twice") && page.contains("value=\"7\""), "{page}");
    let same = other.draft(3, TODAY, &[("water..water_l", "180")], 0);
    assert_eq!(one.words(&[one.draft(4, TODAY, &[("water..water_l", "180")], 0)]).await, ["written"]);
    assert_eq!(other.words(&[same]).await, ["known"], "both wrote the same");
}

#[tokio::test]
async fn of_two_notes_put_right_apart_both_can_be_kept() {
    let batch = Batch::begun(&memory()).await;
    let (one, other) = (phone(&batch, 7), phone(&batch, 8));
    let note = |phone: &Phone, number, text| {
        let mut draft = phone.draft(number, TODAY, &[("note..text", text)], 0);
        draft["form"][1][1] = json!(id(100));
        draft
    };
    let mut first = note(&one, 1, "a fan broke");
    first["form"][1][1] = json!("");
    assert_eq!(one.words(&[first]).await, ["written"]);
    assert_eq!(one.words(&[note(&one, 2, "the left fan broke")]).await, ["written"]);
    assert_eq!(other.words(&[note(&other, 3, "the right fan broke")]).await, ["asked"]);
    let page = batch.page("").await;
    let both = page.split("value=\"both:").nth(1).unwrap().split('"').next().unwrap();
    let settled = batch.send("/settle", TODAY, &[("choose", &format!("both:{both}"))]).await;
    assert_eq!(settled.status, StatusCode::SEE_OTHER, "{}", settled.text());
    assert!(!visible(&batch.page("").await).contains("written twice"));
    let day = batch.page(&format!("/day/{TODAY}")).await;
    assert!(day.contains("the left fan broke") && day.contains("the right fan broke"), "{day}");
}

#[tokio::test]
async fn what_was_put_right_on_its_day_wants_no_reason_when_it_comes_days_later() {
    let batch = Batch::begun(&memory()).await;
    let phone = phone(&batch, 7);
    let day = "2027-05-09";
    let first = phone.draft(1, day, DEAD_2, 2 * DAY + 4 * MINUTE);
    let mut second = phone.draft(2, day, &[("deaths..dead", "4")], 2 * DAY);
    second["form"][1][1] = json!(id(100));
    assert_eq!(phone.words(&[first, second.clone()]).await, ["written", "written"]);
    let mut late = phone.draft(3, day, &[("deaths..dead", "6")], 0);
    late["form"][1][1] = json!(id(200));
    let told = phone.send(&[late]).await;
    assert_eq!(told["drafts"][0]["word"], "doubted", "a change on another day says why");
}

#[tokio::test]
async fn a_clock_wrong_by_a_day_is_told_and_dates_nothing() {
    let batch = Batch::begun(&memory()).await;
    for (key, ahead, word) in [(7, DAY, "24 hours ahead"), (8, -DAY, "24 hours behind")] {
        let phone = Phone { ahead, ..phone(&batch, key) };
        let told = phone.send(&[phone.draft(key, TODAY, &[("water..water_l", "180")], 0)]).await;
        assert!(told["clock"].as_str().unwrap().contains(word), "{told}");
        assert!(["written", "known"].contains(&told["drafts"][0]["word"].as_str().unwrap()));
    }
    let right = phone(&batch, 9).send(&[]).await;
    assert_eq!(right["clock"], Value::Null);
    let entry = batch.first_entry(TODAY).await;
    let page = visible(&batch.page(&entry).await);
    assert!(page.contains("11 May 2027") && !page.contains("12 May 2027"), "{page}");
}

#[tokio::test]
async fn a_job_is_ticked_off_once() {
    let batch = Batch::begun(&memory()).await;
    let phone = phone(&batch, 7);
    let page = batch.page("").await;
    let job = page.split("name=\"task\" value=\"").nth(1).unwrap().split('"').next().unwrap();
    let mut draft = phone.draft(1, TODAY, &[], 0);
    draft["to"] = json!(format!("{}/tick", batch.address));
    draft["form"] = json!([["on", TODAY], ["task", job]]);
    assert_eq!(phone.words(&[draft.clone(), draft]).await, ["written", "known"]);
    assert!(batch.page("").await.matches("tick-box ticked").count() == 1);
}

#[tokio::test]
async fn what_cannot_be_is_refused_in_words() {
    let batch = Batch::begun(&memory()).await;
    let phone = phone(&batch, 7);
    let unknown_box = phone.draft(1, TODAY, &[("deaths..ghosts", "2")], 0);
    let unknown_feed = phone.draft(2, TODAY, &[("feed-given.cake.feed_kg", "2")], 0);
    let mut no_batch = phone.draft(3, TODAY, DEAD_2, 0);
    no_batch["to"] = json!(format!("/batch/{}/day", id(5)));
    let mut elsewhere = phone.draft(4, TODAY, DEAD_2, 0);
    elsewhere["to"] = json!("/before/new");
    let empty = phone.draft(5, TODAY, &[], 0);
    let drafts = [unknown_box, unknown_feed, no_batch, elsewhere, empty, json!({ "id": id(6) }), json!(3)];
    let told = phone.send(&drafts).await;
    for fate in told["drafts"].as_array().unwrap() {
        assert_eq!(fate["word"], "refused");
        assert!(fate["says"][0].as_str().unwrap().len() > 10, "{fate}");
    }
    let many: Vec<Value> = (0..300).map(|number| phone.draft(1000 + number, TODAY, &[], 0)).collect();
    let words = phone.words(&many).await;
    assert_eq!((words[255].as_str(), words[256].as_str()), ("refused", "not-yet"));
}

#[tokio::test]
async fn an_id_that_stands_for_something_else_is_told() {
    let batch = Batch::begun(&memory()).await;
    let (one, other) = (phone(&batch, 7), phone(&batch, 8));
    let note = |text: &'static str| [("note..text", text)];
    assert_eq!(one.words(&[one.draft(1, TODAY, &note("fan broken"), 0)]).await, ["written"]);
    let changed = one.draft(1, TODAY, &note("fan mended"), 0);
    assert_eq!(one.words(std::slice::from_ref(&changed)).await, ["taken-otherwise"]);
    assert_eq!(other.words(&[changed]).await, ["id-in-use"]);
}

#[tokio::test]
async fn a_form_sent_about_another_day_is_written_about_that_day() {
    let batch = Batch::begun(&memory()).await;
    let phone = phone(&batch, 7);
    let mut draft = phone.draft(1, TODAY, &[("note..text", "fan broken")], 0);
    draft["to"] = json!(format!("{}/write/note", batch.address));
    draft["form"][0][1] = json!("2027-05-08");
    assert_eq!(phone.words(&[draft]).await, ["written"]);
    assert!(batch.page("/day/2027-05-08").await.contains("fan broken"));
}

#[tokio::test]
async fn only_our_own_pages_send_a_queue() {
    let store = memory();
    let batch = Batch::begun(&store).await;
    let queue = json!({ "phone": id(7), "sent": NOW, "drafts": [] });
    let body = || Body::from(queue.to_string());
    for (name, value) in
        [("sec-fetch-site", "cross-site"), ("origin", "http://evil.example"), ("origin", "null")]
    {
        let foreign =
            at("/queue").method("POST").header("content-type", "application/json").header(name, value);
        let page = batch.browser.send(foreign.body(body()).unwrap()).await;
        assert_eq!(page.status, StatusCode::FORBIDDEN, "{name}: {value}");
    }
    let as_form = at("/queue")
        .method("POST")
        .header("content-type", "text/plain")
        .header("sec-fetch-site", "same-origin");
    assert_eq!(batch.browser.send(as_form.body(body()).unwrap()).await.status, StatusCode::BAD_REQUEST);
    let large = request().body(Body::from(vec![b' '; 1024 * 1024 + 1])).unwrap();
    assert!(batch.browser.send(large).await.status.is_client_error());
    let garbled = request().body(Body::from("{")).unwrap();
    assert_eq!(batch.browser.send(garbled).await.status, StatusCode::BAD_REQUEST);
    let looking = Browser::as_a(Role::Viewer, &store).await;
    assert_eq!(looking.send(sent(&queue)).await.status, StatusCode::FORBIDDEN);
}
