//! Reading old bodies. A stored body is never rewritten: each time it is read, pure steps carry it from the version it
//! was written in to the version this program speaks.

use crate::entry::{Body, Entry};
use crate::kind::Kind;

/// One step, from the body of one version to the body of the next.
pub type Upcaster = fn(Body) -> Body;

/// What this program makes of a body.
#[derive(Clone, Debug, PartialEq)]
pub enum Reading {
    /// It is of the current version and stands in the entry.
    AsWritten,
    /// It was carried here from an older version.
    CarriedOver(Body),
    /// No step leads here: a newer version than this program knows (or version 0, which nobody writes).
    UnknownVersion,
    /// The kind is not known.
    UnknownKind,
}

impl Reading {
    /// Reads the body of an entry of the given kind.
    pub fn of(entry: &Entry, kind: Option<&Kind>) -> Self {
        let Some(kind) = kind else { return Self::UnknownKind };
        let version = usize::from(entry.body_version);
        if version == 0 || version > kind.upcasters.len() + 1 {
            return Self::UnknownVersion;
        }
        match &kind.upcasters[version - 1..] {
            [] => Self::AsWritten,
            steps => Self::CarriedOver(steps.iter().fold(entry.body.clone(), |body, step| step(body))),
        }
    }
}

/// House, version 1 to 2. Version 1, of the first drafts of the program, asked for "the height" of the house and meant
/// the eaves, but some gave the ridge. Version 2 asks for both by name, so the old answer gets the name it was asked for.
pub fn house_height_is_the_eave_height(mut body: Body) -> Body {
    if let Some(height) = body.remove("height_m") {
        body.entry("eave_height_m".to_owned()).or_insert(height);
    }
    body
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use serde_json::json;

    use super::*;
    use crate::entry::Answer;
    use crate::kind::KINDS;
    use crate::trial::make;

    fn answer(value: f64) -> Answer {
        Answer { typed: None, value: json!(value) }
    }

    fn house_of_version(body_version: u16) -> Entry {
        let body =
            BTreeMap::from([("height_m".to_owned(), answer(2.4)), ("length_m".to_owned(), answer(18.0))]);
        Entry { kind: "house".to_owned(), body_version, body, ..make::entry(1) }
    }

    fn reading(body_version: u16) -> Reading {
        Reading::of(&house_of_version(body_version), Kind::named("house", KINDS))
    }

    #[test]
    fn a_house_of_version_1_has_its_eave_height() {
        let expected = BTreeMap::from([
            ("eave_height_m".to_owned(), answer(2.4)),
            ("length_m".to_owned(), answer(18.0)),
        ]);
        assert_eq!(reading(1), Reading::CarriedOver(expected));
    }

    #[test]
    fn the_current_version_is_left_alone() {
        assert_eq!(reading(2), Reading::AsWritten);
    }

    #[test]
    fn a_newer_version_and_version_0_are_not_guessed_at() {
        assert_eq!(reading(3), Reading::UnknownVersion);
        assert_eq!(reading(0), Reading::UnknownVersion);
    }

    #[test]
    fn several_steps_run_in_order() {
        fn add_b(mut body: Body) -> Body {
            body.insert("b".to_owned(), answer(body.len() as f64));
            body
        }
        fn add_c(mut body: Body) -> Body {
            body.insert("c".to_owned(), answer(body.len() as f64));
            body
        }
        static MADE_UP: Kind = Kind {
            name: "made-up",
            rank: 0,
            counting: crate::kind::Counting::Additive,
            about: &[],
            upcasters: &[add_b, add_c],
            section: None,
            limit: None,
        };
        let of_version = |body_version| {
            Reading::of(&Entry { body_version, body: Body::new(), ..make::entry(1) }, Some(&MADE_UP))
        };
        let from_1 = BTreeMap::from([("b".to_owned(), answer(0.0)), ("c".to_owned(), answer(1.0))]);
        assert_eq!(of_version(1), Reading::CarriedOver(from_1));
        assert_eq!(of_version(2), Reading::CarriedOver(BTreeMap::from([("c".to_owned(), answer(0.0))])));
        assert_eq!(of_version(3), Reading::AsWritten);
    }
}
