//! A running batch through its pages: the day written, put right, taken back; what is doubtful asked; what was written apart
//! shown; a week and a table typed in; a weighing.

use std::sync::Arc;

use axum::http::StatusCode;
use book::Role;
use store::Store;

use crate::rig::{Browser, Page, mango_ridge_with, memory};

/// The rig's clock stands on this day, to a day.
const PLACED: &str = "2027-05-01";

pub struct Batch {
    pub browser: Browser,
    pub address: String,
}

impl Batch {
    /// A batch whose chicks came on [`PLACED`].
    pub async fn begun(store: &Arc<dyn Store>) -> Batch {
        let browser = Browser::new(store).await;
        let plan = browser.new_plan().await;
        let page = browser.post(&plan, &mango_ridge_with(&[("batch.placement", PLACED)])).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
        let page = browser.post(&format!("{plan}/adopt"), &[]).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
        let batch = Batch { browser, address: plan.replace("/before/", "/batch/") };
        batch.write("chicks-placed", PLACED, &[("counted", "1600"), ("dead_on_arrival", "4")]).await;
        batch
    }

    pub async fn send(&self, path: &str, on: &str, pairs: &[(&str, &str)]) -> Page {
        let mut form = vec![("on".to_owned(), on.to_owned())];
        form.extend(pairs.iter().map(|(key, text)| ((*key).to_owned(), (*text).to_owned())));
        self.browser.post(&format!("{}{path}", self.address), &form).await
    }

    pub async fn write(&self, kind: &str, day: &str, fields: &[(&str, &str)]) {
        let names: Vec<String> = fields.iter().map(|(field, _)| format!("{day}.{kind}..{field}")).collect();
        let pairs: Vec<(&str, &str)> =
            names.iter().zip(fields).map(|(name, (_, text))| (name.as_str(), *text)).collect();
        let page = self.send(&format!("/write/{kind}"), day, &pairs).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    }

    pub async fn page(&self, path: &str) -> String {
        let page = self.browser.get(&format!("{}{path}", self.address)).await;
        assert_eq!(page.status, StatusCode::OK, "{path}: {}", page.text());
        page.text()
    }

    /// The address of the first entry listed about a day.
    pub async fn first_entry(&self, day: &str) -> String {
        let page = self.page(&format!("/day/{day}")).await;
        let at = page.find("/entry/").unwrap();
        page[at..].split('"').next().unwrap().to_owned()
    }
}

#[tokio::test]
async fn a_day_is_written_down_and_stands_in_its_boxes() {
    let batch = Batch::begun(&memory()).await;
    let day = "2027-05-03";
    let page = batch
        .send(
            "/day",
            day,
            &[
                ("2027-05-03.deaths..dead", "2+1"),
                ("2027-05-03.feed-given.starter.feed_kg", "24,5"),
                ("2027-05-03.water..water_l", "50"),
            ],
        )
        .await;
    assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    let page = batch.page(&format!("?on={day}")).await;
    assert!(page.contains("value=\"2+1\"") && page.contains("value=\"24,5\""), "{page}");
    let all = batch.page(&format!("/day/{day}")).await;
    assert!(all.contains("3 birds") && all.contains("24.5"), "{all}");
    let next = batch.page("?on=2027-05-04").await;
    assert!(!next.contains("3 May: deaths"), "a written day is not offered: {next}");
    assert!(next.contains("2 May: deaths and culls, feed given, water drunk"), "{next}");
}

#[tokio::test]
async fn what_is_expected_stands_beside_the_boxes_with_its_working() {
    let batch = Batch::begun(&memory()).await;
    let page = batch.page("?on=2027-05-08").await;
    for figure in
        ["walk.feed_expected", "walk.water_expected", "walk.deaths_expected", "walk.temperature_target"]
    {
        let way = format!("/working/{figure}?on=2027-05-08");
        assert!(page.contains(&way), "{figure} is not expected");
        assert!(batch.page(&way).await.contains("class=\"formula\""));
    }
}

#[tokio::test]
async fn a_slip_is_told_and_nothing_is_written() {
    let batch = Batch::begun(&memory()).await;
    let sent = [("2027-05-03.deaths..dead", "many"), ("2027-05-03.water..water_l", "50")];
    let page = batch.send("/day", "2027-05-03", &sent).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    let text = page.text();
    assert!(text.contains("many") && text.contains("value=\"50\""), "what was typed is kept: {text}");
    assert!(batch.page("/day/2027-05-03").await.contains("Nothing is written about this day"));
}

#[tokio::test]
async fn what_is_unlikely_is_asked_and_kept_when_it_is_so() {
    let batch = Batch::begun(&memory()).await;
    let box_ = "2027-05-03.feed-given.starter.feed_kg";
    let asked = batch.send("/day", "2027-05-03", &[(box_, "900")]).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(asked.text().contains("Are these bags and not kilograms"), "{}", asked.text());
    let kept = batch.send("/day", "2027-05-03", &[(box_, "900"), ("sure", "yes")]).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER);
}

/// A grower types feed and water of a day together: the one is held against the other before either is in the book.
#[tokio::test]
async fn what_stands_on_one_form_is_judged_together() {
    let batch = Batch::begun(&memory()).await;
    let day = [("2027-05-03.feed-given.starter.feed_kg", "24,5"), ("2027-05-03.water..water_l", "5")];
    let asked = batch.send("/day", "2027-05-03", &day).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(asked.text().contains("Was a tank not counted"), "{}", asked.text());
    let rows = [("rows", "day;feed_kg;phase;water_l\n2027-05-03;24.5;starter;5")];
    let asked = batch.send("/paste", "2027-05-03", &rows).await;
    assert!(asked.text().contains("Was a tank not counted"), "{}", asked.text());
    let kept = batch.send("/day", "2027-05-03", &[day[0], day[1], ("sure", "yes")]).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_change_of_another_day_wants_its_reason_and_keeps_it() {
    let batch = Batch::begun(&memory()).await;
    batch.write("deaths", "2027-05-03", &[("dead", "2")]).await;
    let dead = ("2027-05-03.deaths..dead", "4");
    let page = batch.send("/day", "2027-05-03", &[dead]).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.text().contains("Why is it changed?"), "{}", page.text());
    let page = batch.send("/day", "2027-05-03", &[dead, ("reason", "two lay under the litter")]).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    let entry = batch.first_entry("2027-05-03").await;
    let history = batch.page(&entry).await;
    assert!(history.contains("two lay under the litter") && history.contains("2 birds"), "{history}");
}

#[tokio::test]
async fn an_entry_is_taken_back_with_a_reason_and_stays_in_the_history() {
    let batch = Batch::begun(&memory()).await;
    batch.write("note", "2027-05-03", &[("text", "fan broken")]).await;
    let entry = batch.first_entry("2027-05-03").await;
    let page = batch.send(&entry, "", &[]).await;
    assert!(page.header("location").contains("lacks=reason"), "{}", page.header("location"));
    let page = batch.send(&entry, "", &[("reason", "wrong house")]).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER);
    assert!(batch.page("/day/2027-05-03").await.contains("Nothing is written about this day"));
    let history = batch.page(&entry).await;
    assert!(history.contains("counts no more") && history.contains("wrong house"), "{history}");
}

#[tokio::test]
async fn a_form_sent_twice_is_one_entry() {
    let batch = Batch::begun(&memory()).await;
    let form = batch.page("/write/note?on=2027-05-03").await;
    let at = form.find("entry-id\" value=\"").unwrap() + "entry-id\" value=\"".len();
    let id = &form[at..at + 36];
    for _ in 0..2 {
        let pairs = [
            ("2027-05-03.note..text", "once"),
            ("2027-05-03.note..entry-id", id),
            ("2027-05-03.note..seen-entry", ""),
        ];
        let page = batch.send("/write/note", "2027-05-03", &pairs).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    }
    assert_eq!(batch.page("/day/2027-05-03").await.matches("/entry/").count(), 1);
}

#[tokio::test]
async fn what_somebody_else_wrote_meanwhile_is_not_overwritten_unasked() {
    let batch = Batch::begun(&memory()).await;
    let mine = [("2027-05-03.deaths..dead", "3"), ("2027-05-03.deaths..seen-entry", "")];
    batch.write("deaths", "2027-05-03", &[("dead", "2")]).await;
    let page = batch.send("/day", "2027-05-03", &mine).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.text().contains("Somebody wrote this meanwhile"), "{}", page.text());
}

#[tokio::test]
async fn two_who_put_the_same_entry_right_are_asked_which_counts() {
    let batch = Batch::begun(&memory()).await;
    batch.write("deaths", "2027-05-03", &[("dead", "2")]).await;
    let entry = batch.first_entry("2027-05-03").await.replace("/entry/", "");
    for dead in ["4", "5"] {
        let pairs = [
            ("2027-05-03.deaths..dead", dead),
            ("2027-05-03.deaths..seen-entry", entry.as_str()),
            ("reason", "counted again"),
        ];
        let page = batch.send("/day", "2027-05-03", &pairs).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    }
    let page = batch.page("?on=2027-05-03").await;
    assert!(page.contains("Keep this one") && page.contains("4 birds") && page.contains("5 birds"), "{page}");
    let at = page.find("name=\"choose\" value=\"").unwrap() + "name=\"choose\" value=\"".len();
    let chosen = page[at..at + 36].to_owned();
    let settled = batch.send("/settle", "2027-05-03", &[("choose", &chosen)]).await;
    assert_eq!(settled.status, StatusCode::SEE_OTHER);
    assert!(!batch.page("?on=2027-05-03").await.contains("Keep this one"));
}

#[tokio::test]
async fn a_job_is_ticked_off() {
    let batch = Batch::begun(&memory()).await;
    let page = batch.page("?on=2027-05-03").await;
    let at = page.find("name=\"task\" value=\"").unwrap() + "name=\"task\" value=\"".len();
    let task = page[at..].split('"').next().unwrap().to_owned();
    let ticked = batch.send("/tick", "2027-05-03", &[("task", &task)]).await;
    assert_eq!(ticked.status, StatusCode::SEE_OTHER);
    let page = batch.page("?on=2027-05-03").await;
    assert!(page.contains("✓") && !page.contains(&format!("value=\"{task}\"")), "{page}");
    let unknown = batch.send("/tick", "2027-05-03", &[("task", "no-such-job/0")]).await;
    assert_eq!(unknown.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_week_of_paper_is_written_at_once() {
    let batch = Batch::begun(&memory()).await;
    // What a sheet has no box for is not lost by typing it in.
    let more = [("2027-05-02.deaths..dead", "1"), ("2027-05-02.deaths..sudden", "1")];
    assert_eq!(batch.send("/day", "2027-05-02", &more).await.status, StatusCode::SEE_OTHER);
    let form = batch.page("/week?on=2027-05-05").await;
    assert!(form.contains("name=\"2027-05-02.deaths..sudden\" value=\"1\""), "{form}");
    let days: Vec<String> = (1..=7).map(|day| format!("2027-05-{day:02}.water..water_l")).collect();
    let pairs: Vec<(&str, &str)> = days.iter().map(|name| (name.as_str(), "60")).collect();
    let page = batch.send("/week", "2027-05-05", &pairs).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    assert!(batch.page("/day/2027-05-07").await.contains("60"));
}

#[tokio::test]
async fn bad_rows_of_a_table_are_shown_and_good_ones_kept_only_when_asked() {
    let batch = Batch::begun(&memory()).await;
    let rows = "day;dead;water_l\n2027-05-03;1;60\n2027-05-04;one;61\n2027-05-04;1";
    let page = batch.send("/paste", "", &[("rows", rows)]).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    let text = page.text();
    assert!(text.contains("Line 3:") && text.contains("one"), "{text}");
    assert!(text.contains("“Found dead” is"), "a page names fields by their labels: {text}");
    assert!(batch.page("/day/2027-05-03").await.contains("Nothing is written"), "nothing unasked");
    let page = batch.send("/paste", "", &[("rows", rows), ("good-only", "yes")]).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    assert!(batch.page("/day/2027-05-03").await.contains("60 L"));
    assert!(batch.page("/day/2027-05-04").await.contains("1 bird"), "a good line of a day with a bad one");
}

#[tokio::test]
async fn birds_are_weighed_one_after_the_other() {
    let batch = Batch::begun(&memory()).await;
    let weigh = format!("{}/weigh?on=2027-05-08", batch.address);
    let page = batch.browser.get(&format!("{weigh}&done=170;182@door&next=191&spot=door")).await;
    assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
    let next = page.header("location").split('#').next().unwrap().to_owned();
    assert!(next.contains("done=170;182@door;191@door"), "{next}");
    let page = batch.browser.get(&next).await.text();
    assert!(
        page.contains("Mean weight of 3 birds weighed") && page.contains("more to know the mean to 3"),
        "{page}"
    );
    assert!(page.contains("name=\"2027-05-08.weighing..weights_g\" value=\"170 182 191\""), "{page}");
    let asked = batch.browser.get(&format!("{weigh}&next=1820")).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY, "ten times a chick's weight is asked about");
    let sure = batch.browser.get(&format!("{weigh}&next=1820&sure=yes")).await;
    assert_eq!(sure.status, StatusCode::SEE_OTHER);
    let bad = batch.browser.get(&format!("{weigh}&next=heavy")).await;
    assert_eq!(bad.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(bad.text().contains("“Weights, bird by bird”: number 1 is “heavy”"), "{}", bad.text());
}

/// Mean, spread and evenness with their ranges, whether it is enough, and the weights drawn beside what was expected: where
/// the weighing was written down, and where growth is looked at.
#[tokio::test]
async fn a_weighing_says_what_it_tells_of_the_flock() {
    let batch = Batch::begun(&memory()).await;
    let none = batch.browser.get(&format!("{}/weighed?on=2027-05-08", batch.address)).await;
    assert_eq!(none.status, StatusCode::NOT_FOUND, "nothing was weighed");
    let weights = "170 182 191 177 166 188 173 181 179 185 168 176";
    let sent = [("2027-05-08.weighing..weights_g", weights)];
    let saved = batch.send("/write/weighing", "2027-05-08", &sent).await;
    let next = saved.header("location").to_owned();
    assert!(next.contains("/weighed?on=2027-05-08&saved=1"), "{next}");
    let page = batch.browser.get(&next).await.text();
    let growing = batch.page("/growing?on=2027-05-10").await;
    assert!(
        page.contains("Mean weight of 12 birds weighed") && page.contains("Written in the book."),
        "{page}"
    );
    assert!(growing.contains("/weighed?on=2027-05-08"), "{growing}");
    for (name, page) in [("weighed", &page), ("growing", &growing)] {
        for said in [
            "Birds differ by",
            "of the birds weighed are within a tenth",
            "more to know the mean to 3",
            "expected",
            "How the weights lie",
            ">Expected<",
        ] {
            assert!(page.contains(said), "{name} lacks {said}: {page}");
        }
    }
}

#[tokio::test]
async fn every_page_of_a_batch_opens() {
    let batch = Batch::begun(&memory()).await;
    for path in ["", "/growing", "/store", "/brooding", "/health", "/week", "/paste", "/weigh", "/write/sale"]
    {
        assert!(batch.page(path).await.contains("<h1>"), "{path}");
    }
    for path in ["/write/plan-adopted", "/write/nothing", "/day/tomorrow", "/entry/1", "/working/nothing"] {
        let page = batch.browser.get(&format!("{}{path}", batch.address)).await;
        assert_eq!(page.status, StatusCode::NOT_FOUND, "{path}");
    }
}

#[tokio::test]
async fn who_may_only_look_sees_what_is_expected_and_no_form() {
    let store = memory();
    let batch = Batch::begun(&store).await;
    let viewer = Browser::as_a(Role::Viewer, &store).await;
    let page = viewer.get(&format!("{}?on=2027-05-08", batch.address)).await.text();
    assert!(page.contains("Feed expected today") && !page.contains("<form"), "{page}");
    let form = viewer.get(&format!("{}/write/note", batch.address)).await;
    assert_eq!(form.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn every_sheet_of_a_batch_is_set() {
    let batch = Batch::begun(&memory()).await;
    batch.write("weighing", "2027-05-08", &[("weights_g", "170 182 191 177 166")]).await;
    for sheet in present::batch::BATCH_SHEETS {
        let page = batch.browser.get(&format!("{}/print/{sheet}?on=2027-05-09", batch.address)).await;
        assert_eq!(page.status, StatusCode::OK, "{sheet}");
        assert!(page.bytes.starts_with(b"%PDF"), "{sheet}");
    }
    let none = batch.browser.get(&format!("{}/print/nothing", batch.address)).await;
    assert_eq!(none.status, StatusCode::NOT_FOUND);
}
