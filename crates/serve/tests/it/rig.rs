//! A site, a browser without a screen, and the invented farm's answers.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

use advice::plan_file;
use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode, header};
use book::{FarmId, Role};
use serve::{Loopback, Site, SiteOptions, router, sole_farm_like};
use store::sqlite::Opening;
use store::{SqliteStore, Store};
use tower::ServiceExt;
use uuid::Uuid;

/// Some day in May 2027.
const NOW: i64 = 1_810_000_000_000;

/// Time goes on by a second at each look, for all tests together; none depends on how far.
fn now() -> i64 {
    static LOOKS: AtomicU64 = AtomicU64::new(0);
    NOW + 1000 * i64::try_from(LOOKS.fetch_add(1, Ordering::Relaxed)).unwrap()
}

/// Ids in the order they are made.
fn new_id() -> Uuid {
    static MADE: AtomicU64 = AtomicU64::new(0);
    let made = u128::from(MADE.fetch_add(1, Ordering::Relaxed));
    Uuid::from_u128((0x0196_0000_0000_7000_u128 << 64 | 0x8000_u128 << 48) + (made << 72) + made)
}

pub fn memory() -> Arc<dyn Store> {
    Arc::new(SqliteStore::in_memory().unwrap())
}

pub fn file(path: &Path) -> Arc<dyn Store> {
    Arc::new(SqliteStore::open(path, Opening::default()).unwrap())
}

pub struct Browser {
    router: Router,
}

pub struct Page {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub bytes: Vec<u8>,
}

impl Page {
    pub fn text(&self) -> String {
        String::from_utf8(self.bytes.clone()).unwrap()
    }

    pub fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().unwrap())
    }
}

impl Browser {
    /// The owner, at a site over a book.
    pub async fn new(store: &Arc<dyn Store>) -> Browser {
        Browser::as_a(Role::Owner, store).await
    }

    /// Somebody with a role.
    pub async fn as_a(role: Role, store: &Arc<dyn Store>) -> Browser {
        let loopback = owner_of(store, None).await;
        Browser::of(Loopback { role, ..loopback }, store)
    }

    /// Whoever that is.
    pub fn of(loopback: Loopback, store: &Arc<dyn Store>) -> Browser {
        let version = "0.1.0".to_owned();
        let options = SiteOptions { loopback, demo: false, version, now, new_id };
        Browser { router: router(Site::new(Arc::clone(store), options)) }
    }

    pub async fn send(&self, request: Request<Body>) -> Page {
        let response = self.router.clone().oneshot(request).await.unwrap();
        let (status, headers) = (response.status(), response.headers().clone());
        let bytes = to_bytes(response.into_body(), usize::MAX).await.unwrap().to_vec();
        Page { status, headers, bytes }
    }

    pub async fn get(&self, path: &str) -> Page {
        self.send(at(path).body(Body::empty()).unwrap()).await
    }

    /// The form of a plan.
    pub async fn answers(&self, plan: &str) -> Page {
        let page = self.get(&format!("{plan}/answers")).await;
        assert_eq!(page.status, StatusCode::OK, "{}", page.text());
        page
    }

    pub async fn post(&self, path: &str, pairs: &[(String, String)]) -> Page {
        self.send(form(path, encoded(pairs).into_bytes())).await
    }

    /// Begins a plan and gives its address.
    pub async fn new_plan(&self) -> String {
        let page = self.post("/before/new", &[]).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER);
        page.header("location").to_owned()
    }

    /// A plan with all of the invented farm's answers saved.
    pub async fn mango_ridge(&self) -> String {
        let address = self.new_plan().await;
        let page = self.post(&address, &mango_ridge()).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{}", page.text());
        address
    }
}

/// The owner of a book, which is made of a farm where one is named.
pub async fn owner_of(store: &Arc<dyn Store>, farm: Option<FarmId>) -> Loopback {
    let farm = farm.unwrap_or_else(|| FarmId(new_id()));
    sole_farm_like(&**store, farm, now(), new_id).await.unwrap()
}

pub fn at(path: &str) -> axum::http::request::Builder {
    Request::builder().uri(path).header(header::HOST, "127.0.0.1:8080")
}

pub fn form(path: &str, body: Vec<u8>) -> Request<Body> {
    at(path)
        .method("POST")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .header("sec-fetch-site", "same-origin")
        .body(Body::from(body))
        .unwrap()
}

pub fn encoded(pairs: &[(String, String)]) -> String {
    let byte = |byte: u8| match byte {
        b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' => char::from(byte).to_string(),
        _ => format!("%{byte:02X}"),
    };
    let text = |text: &str| text.bytes().map(byte).collect::<String>();
    let pair = |(key, value): &(String, String)| format!("{}={}", text(key), text(value));
    pairs.iter().map(pair).collect::<Vec<_>>().join("&")
}

/// The invented farm's plan as a form would send it.
pub fn mango_ridge() -> Vec<(String, String)> {
    let raws = plan_file::read(include_str!("../../../../demo/mango-ridge.toml")).unwrap();
    let is_numbers = |key: &str| {
        let field = advice::families::field(key);
        field.is_some_and(|field| matches!(field.kind, quantity::Kind::Numbers { .. }))
    };
    let pairs = raws.into_iter().flat_map(|raw| {
        // Several numbers stand in one box.
        let text = if is_numbers(&raw.key) { vec![raw.text.join(", ")] } else { raw.text };
        text.into_iter().map(move |text| (raw.key.clone(), text)).collect::<Vec<_>>()
    });
    pairs.collect()
}

/// The same with some answers changed or added; an empty one is left blank.
pub fn mango_ridge_with(changed: &[(&str, &str)]) -> Vec<(String, String)> {
    let mut pairs = mango_ridge();
    pairs.retain(|(key, _)| changed.iter().all(|(other, _)| other != key));
    pairs.extend(changed.iter().map(|(key, text)| ((*key).to_owned(), (*text).to_owned())));
    pairs
}

/// The farm's answers and every other one there is, invented too, so that everything a plan can show is shown.
pub fn told_to_the_end() -> Vec<(String, String)> {
    mango_ridge_with(TOLD_BESIDES)
}

pub const OWN_CURVE: &str =
    "age_d,body_weight_g,cum_feed_g\n0,42,0\n14,330,420\n28,1050,1650\n42,2050,3700\n49,2500,4800";

const TOLD_BESIDES: &[(&str, &str)] = &[
    ("house.usable_floor_percent", "95"),
    ("house.curtain", "single"),
    ("house.air_changes_per_h", "1.5"),
    ("batch.standard", "own"),
    ("batch.own_curve", OWN_CURVE),
    ("batch.deposit_percent", "40"),
    ("batch.deposit_before_d", "21"),
    ("sale.days", "40: 400, 42: 600, 45: rest"),
    ("weather.mean_c", "25"),
    ("weather.hottest_day_c", "34"),
    ("weather.humidity_percent", "60"),
    ("space.limit_kg_m2", "18"),
    ("equipment.chick_feeders", "30"),
    ("equipment.chick_drinkers", "35"),
    ("equipment.feeder_kind", "pan"),
    ("equipment.feeders", "40"),
    ("equipment.drinker_kind", "bell"),
    ("equipment.drinkers", "20"),
    ("guard.saw_cut_mm", "3"),
    ("guard.walkway_m", "0.5"),
    ("brooding.brooder_chicks", "360"),
    ("brooding.brooder_kw", "2.6"),
    ("brooding.cover", "no"),
    ("brooding.fuel", "charcoal"),
    ("brooding.days_d", "15"),
    ("brooding.hours_per_day_h", "13"),
    ("disinfectant.equipment_percent", "15"),
    ("disinfectant.poured_ml", "40"),
    ("litter.spread_days_before_d", "3"),
    ("feed.phases", "four"),
    ("feed.starter_until_d", "11"),
    ("feed.grower_until_d", "25"),
    ("feed.finisher_until_d", "36"),
    ("feed.on_hand_before_d", "12"),
    ("feed.on_hand_days_d", "15"),
    ("feed.buying", "by-phase"),
    ("feed.ahead_d", "6"),
    ("feed.milled", "2027-08-20"),
    ("feed.label_keeps_d", "90"),
    ("feed.hot_store_keeps_d", "40"),
    ("feed.store_m2", "9"),
    ("feed.tin_kg", "1.6"),
    ("water.to_feed", "1.8"),
    ("water.storage_l", "1000"),
    ("water.source", "borehole"),
    ("water.off_hours_h", "8"),
    ("water.can_l", "20"),
    ("water.sanitiser_ppm", "3"),
    ("water.sanitiser_percent", "3.5"),
    ("costs.vaccines", "1100"),
    ("costs.medicine", "450"),
    ("costs.labour", "3600"),
    ("costs.own_labour", "5000"),
    ("costs.transport", "2400"),
    ("costs.power", "800"),
    ("costs.other", "1500"),
    ("costs.house", "4200"),
    ("cash.at_start", "60000"),
    ("cash.interest_percent", "30"),
    ("prices.chick_each", "27"),
    ("prices.sale_per_kg", "34"),
    ("prices.litter_sold", "900"),
    ("prices.starter_bag_each", "612"),
    ("prices.grower_bag_each", "588"),
    ("prices.finisher_bag_each", "575"),
    ("prices.last_bag_each", "570"),
    ("settings.seed", "3"),
    ("settings.futures", "500"),
];

/// What stands in the form of a page: every input's value, every chosen option, by name.
pub fn filled(page: &str) -> BTreeMap<String, Vec<String>> {
    let mut filled: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut select = String::new();
    for (tag, behind) in page.split('<').filter_map(|rest| rest.split_once('>')) {
        let value = |name: &str| attribute(tag, name);
        if tag.starts_with("select") {
            select = value("name").unwrap_or_default();
        } else if tag.starts_with("option") && has(tag, "selected") {
            filled.entry(select.clone()).or_default().extend(value("value"));
        } else if tag.starts_with("textarea") {
            filled.entry(value("name").unwrap()).or_default().push(behind.to_owned());
        } else if tag.starts_with("input") {
            let ticks = matches!(value("type").as_deref(), Some("checkbox" | "radio"));
            if (!ticks || has(tag, "checked")) && value("value").is_some_and(|value| !value.is_empty()) {
                filled.entry(value("name").unwrap()).or_default().extend(value("value"));
            }
        }
    }
    filled.retain(|_, values| values.iter().any(|value| !value.is_empty()));
    filled
}

fn has(tag: &str, name: &str) -> bool {
    tag.split(' ').any(|part| part == name)
}

/// An attribute of a tag, with what was escaped in it.
pub fn attribute(tag: &str, name: &str) -> Option<String> {
    let value = tag.split_once(&format!(" {name}=\""))?.1.split('"').next()?;
    let plain = value.replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">");
    Some(plain.replace("&amp;", "&"))
}

/// The text that is seen, without tags; what is only for machines is left out.
pub fn visible(page: &str) -> String {
    let body = page.split_once("<body").map_or(page, |(_, body)| body);
    let text = body.split('<').filter_map(|rest| rest.split_once('>')).map(|(_, text)| text);
    let joined = text.collect::<Vec<_>>().join(" ").replace('\u{a0}', " ");
    joined.replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
}
