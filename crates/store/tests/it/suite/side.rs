//! Drafts, names and farms.

use std::collections::BTreeMap;
use std::sync::Arc;

use book::{FarmId, PersonId, Role};
use serde_json::json;
use store::{DRAFT_BYTES_MAX, DRAFT_KEY_BYTES_MAX, Draft, Farm, NAME_BYTES_MAX, Store, StoreError};
use uuid::Uuid;

use crate::phone::{FARM, OTHER_FARM, PERSON, access, owner};
use crate::rig::Any;

const MARY: PersonId = PersonId(Uuid::from_u128(0xa1));

pub async fn a_draft_is_kept_listed_and_thrown_away(store: Any) {
    // Keys in an order of their own, and characters that an engine might stumble over.
    let body = json!({"width_m": "9", "length_m": "59 ft", "note": "Zażółć \u{0} 🐥"});
    assert!(store.put_draft(&owner(), "plan/b", &body, 5).await.unwrap());
    assert!(store.put_draft(&owner(), "plan/B", &json!([1]), 6).await.unwrap());
    let draft = Draft { key: "plan/b".to_owned(), body, person: PERSON, updated_millis: 5 };
    let kept = store.draft(&owner(), "plan/b").await.unwrap().unwrap();
    assert_eq!((&kept, kept.body.to_string()), (&draft, draft.body.to_string()));
    let keys = |drafts: Vec<Draft>| drafts.into_iter().map(|draft| draft.key).collect::<Vec<_>>();
    assert_eq!(keys(store.drafts(&owner()).await.unwrap()), ["plan/B", "plan/b"]);
    assert!(store.drafts(&access(OTHER_FARM, 1, Role::Owner)).await.unwrap().is_empty());
    assert!(!store.delete_draft(&access(OTHER_FARM, 1, Role::Owner), "plan/b").await.unwrap());
    assert!(store.delete_draft(&owner(), "plan/b").await.unwrap());
    assert!(!store.delete_draft(&owner(), "plan/b").await.unwrap());
    assert_eq!(store.draft(&owner(), "plan/b").await.unwrap(), None);
}

pub async fn an_older_draft_does_not_win(store: Any) {
    for (body, updated_millis, kept, stands) in
        [(json!(1), 10, true, 1), (json!(2), 9, false, 1), (json!(3), 10, true, 3), (json!(4), 11, true, 4)]
    {
        assert_eq!(store.put_draft(&owner(), "plan", &body, updated_millis).await.unwrap(), kept);
        assert_eq!(store.draft(&owner(), "plan").await.unwrap().unwrap().body, json!(stands));
    }
}

pub async fn a_draft_over_the_bound_is_refused(store: Any) {
    // Two quotation marks stand around the text.
    let fits = json!("x".repeat(DRAFT_BYTES_MAX - 2));
    let too_long = json!("x".repeat(DRAFT_BYTES_MAX - 1));
    store.put_draft(&owner(), "plan", &fits, 1).await.unwrap();
    let refused = store.put_draft(&owner(), "plan", &too_long, 2).await;
    assert!(
        matches!(refused, Err(StoreError::DraftTooLarge { bytes, limit, .. }) if bytes == limit + 1),
        "{refused:?}"
    );
    assert_eq!(store.draft(&owner(), "plan").await.unwrap().unwrap().body, fits);
}

pub async fn a_draft_needs_a_key_that_can_be_filed(store: Any) {
    for key in ["", "a\0b", "a\nb", &"k".repeat(DRAFT_KEY_BYTES_MAX + 1)] {
        let is_refused = |refused| matches!(refused, Some(StoreError::DraftKey { .. }));
        assert!(is_refused(store.put_draft(&owner(), key, &json!(1), 1).await.err()), "{key:?}");
        assert!(is_refused(store.draft(&owner(), key).await.err()), "{key:?}");
        assert!(is_refused(store.delete_draft(&owner(), key).await.err()), "{key:?}");
    }
    store.put_draft(&owner(), &"k".repeat(DRAFT_KEY_BYTES_MAX), &json!(1), 1).await.unwrap();
}

pub async fn a_viewer_drafts_nothing(store: Any) {
    let viewer = access(FARM, 1, Role::Viewer);
    store.put_draft(&owner(), "plan", &json!(1), 1).await.unwrap();
    let put = store.put_draft(&viewer, "plan", &json!(2), 2).await;
    assert!(matches!(put, Err(StoreError::Forbidden { role: Role::Viewer })));
    let deleted = store.delete_draft(&viewer, "plan").await;
    assert!(matches!(deleted, Err(StoreError::Forbidden { role: Role::Viewer })));
    assert_eq!(store.draft(&viewer, "plan").await.unwrap().unwrap().body, json!(1));
}

pub async fn drafts_and_names_need_a_farm(store: Any) {
    let nowhere = access(FarmId(Uuid::from_u128(0xdead)), 1, Role::Owner);
    let is_refused = |refused| matches!(refused, Some(StoreError::UnknownFarm { .. }));
    assert!(is_refused(store.put_draft(&nowhere, "plan", &json!(1), 1).await.err()));
    assert!(is_refused(store.put_person(&nowhere, MARY, "Mary").await.err()));
    assert!(is_refused(store.blank_person(&nowhere, MARY).await.err()));
    assert!(store.drafts(&nowhere).await.unwrap().is_empty());
}

pub async fn a_name_is_given_changed_and_blanked_for_good(store: Any) {
    store.put_person(&owner(), MARY, "Mary").await.unwrap();
    store.put_person(&owner(), PERSON, " Grace Ngoma ").await.unwrap();
    store.put_person(&owner(), MARY, "Mary Banda").await.unwrap();
    let names = store.person_names(&owner()).await.unwrap();
    assert_eq!(names, BTreeMap::from([(MARY, "Mary Banda".to_owned()), (PERSON, "Grace Ngoma".to_owned())]));
    assert!(store.person_names(&access(OTHER_FARM, 1, Role::Owner)).await.unwrap().is_empty());
    store.blank_person(&owner(), MARY).await.unwrap();
    store.blank_person(&owner(), MARY).await.unwrap();
    let again = store.put_person(&owner(), MARY, "Mary Banda").await;
    assert!(matches!(again, Err(StoreError::Blanked { person: MARY })));
    let names = store.person_names(&owner()).await.unwrap();
    assert_eq!(names, BTreeMap::from([(PERSON, "Grace Ngoma".to_owned())]));
}

pub async fn only_the_owner_names_others(store: Any) {
    store.put_person(&owner(), MARY, "Mary").await.unwrap();
    for role in [Role::Helper, Role::Viewer] {
        let asker = access(FARM, 1, role);
        let put = store.put_person(&asker, MARY, "Maria").await;
        assert!(matches!(put, Err(StoreError::Forbidden { role: refused }) if refused == role));
        let blanked = store.blank_person(&asker, MARY).await;
        assert!(matches!(blanked, Err(StoreError::Forbidden { role: refused }) if refused == role));
        store.put_person(&asker, PERSON, "Grace").await.unwrap();
    }
    store.blank_person(&access(FARM, 1, Role::Viewer), PERSON).await.unwrap();
    let names = store.person_names(&owner()).await.unwrap();
    assert_eq!(names, BTreeMap::from([(MARY, "Mary".to_owned())]));
}

pub async fn a_name_must_be_one(store: Any) {
    for name in ["", "  ", "a\0b", &"n".repeat(NAME_BYTES_MAX + 1)] {
        let refused = store.put_person(&owner(), MARY, name).await;
        assert!(matches!(refused, Err(StoreError::Name { .. })), "{name:?}");
    }
    store.put_person(&owner(), MARY, &"n".repeat(NAME_BYTES_MAX)).await.unwrap();
}

pub async fn farms_are_listed_oldest_first(store: Any) {
    let oldest = Farm { id: FarmId(Uuid::from_u128(0xff)), created_millis: 0 };
    assert!(store.create_farm(oldest).await.unwrap());
    assert!(!store.create_farm(Farm { created_millis: 99, ..oldest }).await.unwrap());
    let expected =
        vec![oldest, Farm { id: FARM, created_millis: 1 }, Farm { id: OTHER_FARM, created_millis: 2 }];
    assert_eq!(store.farms().await.unwrap(), expected);
}

pub async fn a_book_of_several_has_no_sole_farm(store: Any) {
    let candidate = Farm { id: FarmId(Uuid::from_u128(0xff)), created_millis: 3 };
    let refused = store.sole_farm(candidate).await;
    assert!(matches!(refused, Err(StoreError::SeveralFarms { count: 2 })));
    assert_eq!(store.farms().await.unwrap().len(), 2);
}

/// Two stores on one empty book, asked by many at once.
pub async fn askers_at_once_get_one_farm<S: Store + 'static>(stores: [S; 2]) {
    let stores = stores.map(Arc::new);
    let askers: Vec<_> = (0..10_u128)
        .map(|asker| {
            let store = Arc::clone(&stores[asker as usize % 2]);
            let candidate = Farm { id: FarmId(Uuid::from_u128(asker)), created_millis: 1 };
            tokio::spawn(async move { store.sole_farm(candidate).await.unwrap() })
        })
        .collect();
    let mut answers = Vec::new();
    for asker in askers {
        answers.push(asker.await.unwrap());
    }
    let farms = stores[0].farms().await.unwrap();
    assert_eq!(farms.len(), 1);
    assert!(answers.iter().all(|farm| *farm == farms[0]));
}
