//! Every sentence is a message, every message is used, and no word is left in code.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use advice::families;
use advice::rule::Origin;
use advice::series::{DayOrigin, Way};
use present::plan::{SHEETS, Shown};
use present::words::key_part;
use present::{Locale, Viewer, Words, html, text};
use quantity::{BandKind, Kind, Status, Unit};

use crate::sample;

fn source_of(path: &str) -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(path);
    let mut text = String::new();
    let mut folders = vec![root];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).unwrap().flatten() {
            let path = entry.path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                text.push_str(fs::read_to_string(&path).unwrap().split("#[cfg(test)]").next().unwrap());
            }
        }
    }
    text
}

/// Keys that are put together from names, all of which are known.
fn composed() -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    for spec in families::figures() {
        keys.insert(format!("figure-{}", key_part(spec.id)));
        for rule in spec.rules {
            keys.insert(format!("rule-{}", rule.name));
            for input in rule.inputs {
                if let Origin::Table { table, point, .. }
                | Origin::TableAt { table, point, .. }
                | Origin::TableBy { table, point, .. } = input.origin
                {
                    keys.insert(format!("table-{}-{}", key_part(table), key_part(&point.to_lowercase())));
                }
                if let Origin::Listed { list, .. } = input.origin {
                    keys.insert(format!("list-{list}"));
                }
            }
        }
    }
    for spec in families::series() {
        keys.insert(format!("figure-{}", key_part(spec.id)));
        let Way::Rules(rules) = &spec.way else { continue };
        for rule in *rules {
            keys.insert(format!("rule-{}", rule.name));
            for input in rule.inputs {
                match input.origin {
                    DayOrigin::Table { table, point, .. } => {
                        keys.insert(format!("table-{}-{}", key_part(table), key_part(point)));
                    }
                    DayOrigin::Listed { list, .. } => {
                        keys.insert(format!("list-{list}"));
                    }
                    _ => {}
                }
            }
        }
    }
    for field in families::fields() {
        let part = key_part(field.key);
        keys.insert(format!("field-{part}"));
        keys.insert(format!("section-{}", field.section()));
        if let Kind::Choice(allowed) | Kind::Choices(allowed) = field.kind {
            keys.extend(allowed.iter().map(|word| format!("choice-{part}-{word}")));
        }
    }
    keys.extend(present::oddity::composed_keys());
    keys.extend(
        advice::watch::names()
            .flat_map(|name| ["signal", "check"].map(|part| format!("watch-{part}-{name}"))),
    );
    keys.extend(
        advice::uneven::Cause::ALL
            .iter()
            .flat_map(|cause| ["cause", "check"].map(|part| format!("uneven-{part}-{}", cause.name()))),
    );
    keys.extend(model::triggers::TRIGGERS.iter().map(|rule| format!("watch-rule-{}", rule.name)));
    for unit in Unit::ALL {
        let part = present::show::unit_key(*unit);
        if !matches!(unit, Unit::Money | Unit::Date) {
            keys.insert(format!("unit-{part}"));
        }
        keys.insert(format!("unit-label-{part}"));
    }
    let simulations = families::SIMULATIONS.iter().chain(families::INSTEAD);
    keys.extend(simulations.map(|one| format!("procedure-{}", one.procedure.name)));
    keys.extend(advice::tasks::table::all().map(|task| format!("task-{}", task.name)));
    keys.extend(families::sums().map(|sum| format!("sum-{}", sum.name)));
    keys.extend(Status::ALL.iter().map(|status| format!("status-{}", status.name())));
    keys.extend((1..=12).map(|month| format!("month-{month}")));
    for kind in [
        BandKind::Confidence95,
        BandKind::Prediction50,
        BandKind::Prediction90,
        BandKind::RangeOfSources,
        BandKind::AsGood,
    ] {
        keys.insert(format!("band-{}", kind.name()));
    }
    keys
}

/// Of two messages under one key the later would win without a word.
#[test]
fn no_message_stands_twice() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/present/messages/en");
    let mut seen = BTreeSet::new();
    for file in fs::read_dir(folder).unwrap() {
        let text = fs::read_to_string(file.unwrap().path()).unwrap();
        for line in text.lines().filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase())) {
            let key = line.split(" =").next().unwrap().to_owned();
            assert!(seen.insert(key), "{line}");
        }
    }
}

#[test]
fn every_composed_key_has_a_message() {
    let words = Words::of(Locale::English);
    let missing: Vec<String> = composed().into_iter().filter(|key| !words.knows(key)).collect();
    assert!(missing.is_empty(), "no message for {missing:#?}");
}

/// Keys written out in code, and the names of findings, ways out, formula functions and faults.
#[test]
fn every_literal_key_has_a_message() {
    let words = Words::of(Locale::English);
    let code = ["crates/present/src", "crates/serve/src", "crates/broodwright/src"].map(source_of).join("\n");
    // However the formatter breaks the lines.
    let code = code.split_whitespace().collect::<Vec<_>>().join(" ").replace("( ", "(");
    let mut missing = BTreeSet::new();
    for marker in
        [".plain(\"", "say!(words, \"", "say!(self.words, \"", "say!(viewer.words(), \"", "unit_title(\""]
    {
        for rest in code.split(marker).skip(1) {
            let key = rest.split('"').next().unwrap_or_default();
            if !words.knows(key) {
                missing.insert(key.to_owned());
            }
        }
    }
    let findings = source_of("crates/advice/src").split_whitespace().collect::<Vec<_>>().join(" ");
    let findings = findings.replace("( ", "(");
    // An `ask` of its own, and not the end of `task` or `may_ask`.
    let markers =
        [("Finding::new(\"", "finding-"), (".out(\"", "way-out-"), (" ask(\"", "ask-"), ("(ask(\"", "ask-")];
    for (marker, prefix) in markers {
        for rest in findings.split(marker).skip(1) {
            let key = format!("{prefix}{}", rest.split('"').next().unwrap_or_default());
            if !words.knows(&key) {
                missing.insert(key);
            }
        }
    }
    for spec in families::figures() {
        for rule in spec.rules {
            // A rule can word its formula whole.
            if words.attribute(&format!("rule-{}", rule.name), "formula", &[]).is_some() {
                continue;
            }
            for (at, _) in rule.formula.match_indices('(') {
                let before = &rule.formula[..at];
                let name = before
                    .rsplit(|c: char| !c.is_ascii_alphanumeric() && c != '_')
                    .next()
                    .unwrap_or_default();
                if !name.is_empty() && name != "sqrt" && !words.knows(&format!("formula-{}", key_part(name)))
                {
                    missing.insert(format!("formula-{}", key_part(name)));
                }
            }
        }
    }
    for rest in source_of("crates/advice/src").split("rule: \"").skip(1) {
        let key = format!("against-{}", rest.split('"').next().unwrap_or_default());
        if !words.knows(&key) {
            missing.insert(key);
        }
    }
    assert!(missing.is_empty(), "no message for {missing:#?}");
}

/// No sentence of a plan comes out as a key in brackets, in any finding the demo and a broken plan can raise.
#[test]
fn no_key_shows_through() {
    for file in [
        sample::MANGO_RIDGE.to_owned(),
        sample::complete(),
        sample::covered(),
        sample::with_charcoal(),
        troubled(),
        cold(),
    ] {
        let plan = sample::plan(&file);
        let viewer = plan_viewer(Locale::English);
        let shown = Shown::new(&plan, &viewer);
        for document in every_sheet(&shown) {
            let text = text::write(&document, &Viewer::plain(), true);
            let keys: Vec<&str> = text.split('[').skip(1).filter_map(|rest| rest.split(']').next()).collect();
            assert!(keys.is_empty(), "{keys:?}");
            assert!(!text.contains("{$"), "an argument is missing: {text}");
        }
    }
}

fn every_sheet(shown: &Shown) -> Vec<present::Document> {
    SHEETS.iter().flat_map(|sheet| shown.sheet(sheet.name, None).unwrap()).collect()
}

/// A plan with much to say about itself.
fn troubled() -> String {
    sample::complete()
        .replace("\"mat\"", "\"none\"")
        .replace("\"concrete\"", "\"earth\"")
        .replace("sheet_thickness_mm = 4", "sheet_thickness_mm = 12")
        .replace("ratio = \"1:400\"", "ratio = \"1:20\"")
        .replace("ratio_means = \"parts-water\"", "")
        .replace("poured_ml = 40", "poured_ml = 4000")
        .replace("kind = \"wood-shavings\"", "kind = \"rice-husk\"")
        .replace("width_m = 9.0", "width_m = 5.0")
        .replace("first_age_d = 40\nlast_age_d = 44", "")
        .replace("milled = 2027-08-20", "milled = 2027-06-01")
        .replace("store_m2 = 9", "store_m2 = 1")
        .replace("spread_days_before_d = 3", "spread_days_before_d = 1")
        .replace("downtime_d = 14", "downtime_d = 5")
}

/// A cold night, a whole house, and charcoal with too few pots, with and without a brooder told.
fn cold() -> String {
    sample::with_charcoal()
        .replace("coldest_night_c = 11", "coldest_night_c = 4")
        .replace("heated_length_m = 9", "")
        .replace("partition = \"yes\"", "partition = \"no\"")
}

#[test]
fn cold_chicks_are_spoken_of() {
    let names = |text: &str| {
        sample::plan(text)
            .findings
            .iter()
            .map(|finding| (finding.name, finding.ways_out.len()))
            .collect::<Vec<_>>()
    };
    let weak = names(&cold());
    assert!(weak.contains(&("brooders-too-weak", 4)), "{weak:?}");
    // More charcoal fires are more of the gas that kills: they come last.
    let plan = sample::plan(&cold());
    let finding = plan.findings.iter().find(|finding| finding.name == "brooders-too-weak").unwrap();
    assert_eq!(finding.ways_out.last(), Some(&"more-fires-last"));
    assert!(weak.contains(&("charcoal-gas-estimated", 0)), "{weak:?}");
    assert!(weak.contains(&("spare-nights", 0)), "{weak:?}");
    let untold = names(&cold().replace("brooder_kw = 2.6", "").replace("brooders = 3", ""));
    for found in
        [("brooder-power-not-told", 0), ("heat-for-nobody", 1), ("charcoal-inside", 0), ("fire-has-air", 0)]
    {
        assert!(untold.contains(&found), "{found:?}: {untold:?}");
    }
    // By the hour the heat of the fire's air is counted; of one still night it is not.
    let one_night = names(&cold().replace("hottest_day_c = 35\n", ""));
    assert!(one_night.contains(&("fire-needs-air", 0)), "{one_night:?}");
    let gas = names(&sample::complete());
    assert!(gas.contains(&("spare-cylinder", 0)), "{gas:?}");
    // A tenth more than the coldest hour asks of three brooders.
    let need = sample::number(&sample::plan(&sample::complete()), "brooding.heat");
    let each = format!("brooder_kw = {:.2}", 1.1 * need / 3.0);
    let just = names(&sample::complete().replace("brooder_kw = 2.6", &each));
    assert!(just.contains(&("brooders-just-enough", 3)), "{just:?}");
    let over_gas = names(&sample::complete().replace("cover = \"no\"", "cover = \"yes\""));
    assert!(over_gas.contains(&("cover-over-fire", 0)), "{over_gas:?}");
    let plates = names(&cold().replace("fuel = \"charcoal\"", "fuel = \"electricity\""));
    assert!(plates.contains(&("brooders-too-weak", 3)), "covers are offered where nothing burns: {plates:?}");
    assert!(
        plates.iter().all(|(name, _)| !name.contains("fire") && !name.contains("charcoal")),
        "{plates:?}"
    );
}

/// What is declared is shown: a figure left off every page would be worked out for nobody.
#[test]
fn every_figure_of_a_plan_is_shown() {
    let strong = sample::complete().replace("1:400", "1:20");
    for file in [strong, sample::covered(), sample::with_charcoal()] {
        every_figure_is_shown(&sample::plan(&file));
    }
}

fn every_figure_is_shown(plan: &advice::plan::Plan) {
    let viewer = plan_viewer(Locale::English);
    let shown: BTreeSet<&str> = Shown::new(plan, &viewer)
        .document()
        .every_block()
        .iter()
        .flat_map(|block| match block {
            present::Block::Figures(rows) => rows.iter().map(|row| row.id).collect(),
            _ => Vec::new(),
        })
        .collect();
    let hidden: Vec<&str> =
        plan.outcome.figures().map(|worked| worked.figure.id).filter(|id| !shown.contains(id)).collect();
    assert!(hidden.is_empty(), "{hidden:?} are shown nowhere");
}

#[test]
fn a_troubled_plan_says_so() {
    let plan = sample::plan(&troubled().replace("storage_l = 1000", "storage_l = 900"));
    let names: Vec<&str> = plan.findings.iter().map(|finding| finding.name).collect();
    for name in [
        "does-not-fit",
        "limit-above-hot-advice",
        "curve-is-an-objective",
        "rings-do-not-fit",
        "brooder-caps-ring",
        "ring-without-brooder",
        "sheet-stands-straight",
        "ratio-meaning-not-told",
        "ceiling-without-ceiling",
        "stronger-than-label",
        "earth-floor",
        "husk-is-eaten",
        "chick-feeders-short",
        "drinkers-short",
        "feed-too-old",
        "store-too-small",
        "tank-under-a-day",
        "downtime-short",
        "litter-late",
    ] {
        assert!(names.contains(&name), "{name} is not among {names:?}");
    }
}

fn plan_viewer(locale: Locale) -> Viewer {
    Viewer { locale, ..Viewer::plain() }
}

/// In the long pseudo-locale every word of a message is accented, so a plain word is one that no message said.
#[test]
fn no_word_is_left_in_code() {
    let plan = sample::plan(&troubled());
    let viewer = plan_viewer(Locale::PseudoLong);
    let shown = Shown::new(&plan, &viewer);
    // Names the grower typed, and titles in the bibliography, are nobody's to translate.
    let mut allowed: BTreeSet<String> = ["Mango", "Ridge"].map(str::to_owned).into();
    for work in reference::bibliography::works().unwrap() {
        let texts = [work.authors, work.title, work.published];
        allowed.extend(texts.iter().flat_map(|text| words_in(text)));
    }
    for document in every_sheet(&shown) {
        let page = html::blocks(&document, &viewer).into_string();
        let visible = visible(&page);
        let left: BTreeSet<String> =
            words_in(&visible).into_iter().filter(|word| !allowed.contains(word)).collect();
        assert!(left.is_empty(), "words that are no message: {left:?}");
        assert!(visible.chars().filter(|c| *c == 'á').count() > 50, "the page is not in the pseudo-locale");
    }
}

/// Runs of four and more plain letters.
pub fn words_in(text: &str) -> Vec<String> {
    let letters = |c: char| c.is_ascii_alphabetic();
    text.split(|c: char| !c.is_alphabetic())
        .filter(|word| word.chars().count() >= 4 && word.chars().all(letters))
        .map(str::to_owned)
        .collect()
}

/// The text of a page and the attributes that are read aloud.
pub fn visible(page: &str) -> String {
    let mut text = String::new();
    for (at, part) in page.split('<').enumerate() {
        let (tag, behind) = if at == 0 { ("", part) } else { part.split_once('>').unwrap_or((part, "")) };
        for attribute in ["aria-label=\"", "alt=\"", "title=\""] {
            text.extend(tag.split(attribute).skip(1).filter_map(|rest| rest.split('"').next()));
            text.push(' ');
        }
        text.push_str(behind);
        text.push(' ');
    }
    text
}

/// A finding of a quick sum points at a box that is on its page.
#[test]
fn a_sum_points_at_its_own_boxes() {
    let typed = [("ratio", "1:10"), ("tank_l", "10"), ("poured_ml", "2000")];
    let raw =
        |(key, text): (&str, &str)| quantity::Raw { key: key.into(), text: vec![text.into()], line: None };
    let sum = advice::sums::by_name("dilution").unwrap();
    let result = sum.work_out(&typed.map(raw), true);
    let fields: Vec<Option<&str>> = present::sum::document(sum, &result, &Viewer::plain())
        .blocks
        .iter()
        .filter_map(|block| match block {
            present::Block::Finding(finding) => Some(finding.field),
            _ => None,
        })
        .collect();
    assert_eq!(fields, [Some("poured_ml"), Some("means")]);
}

#[test]
fn the_mirrored_locale_says_its_direction() {
    assert_eq!(Locale::PseudoMirrored.direction(), "rtl");
    let plan = sample::plan(sample::MANGO_RIDGE);
    let viewer = plan_viewer(Locale::PseudoMirrored);
    let print = present::print::write(
        &[Shown::new(&plan, &viewer).mixing_card()],
        present::print::Paper::A4,
        &viewer,
    );
    assert_eq!(print.data["direction"], "rtl");
}
