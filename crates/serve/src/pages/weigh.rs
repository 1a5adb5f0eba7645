//! Weighing bird after bird: a keypad, what they weigh so far, and whether it is enough.

use advice::record::{self, Ask};
use advice::weighing::{Aim, Reading, is_cock, sex_name};
use axum::response::Response;
use maud::{Markup, html};
use present::html::field_anchor;
use present::{Document, fault, oddity, say, show as shown, weighing};
use quantity::{Raw, Source, Unit};

use crate::batch::{Batch, ON};
use crate::boxes::Boxes;
use crate::call::{Call, see_other};
use crate::pages::boxes::{day_and_age, made_id};
use crate::pages::{frame, kept};
use crate::sheet::SURE;
use crate::trouble::Trouble;
use crate::weighing::{BIRDS_MAX, READINGS_MAX, Readings, sex_word, spot_name};

/// The parameter that carries the readings so far.
const DONE: &str = "done";
/// The parameter of the next reading.
const NEXT: &str = "next";
/// The parameters that go with it.
const TOGETHER: &str = "together";
const SPOT: &str = "spot";
const SEX: &str = "sex";
/// What may be said of a bird, whether it is a cock, in the order in which it is offered.
const SEXES: [Option<bool>; 3] = [None, Some(true), Some(false)];
/// Readings listed as the last ones.
const LAST: usize = 5;

/// What keeps the next reading from being taken.
enum Hindrance {
    Fault(String),
    Doubt(String),
}

/// The keypad; with a next reading, that reading taken.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let readings = Readings::of(call.asked(DONE).unwrap_or_default());
    let next = call.asked(NEXT).map(str::trim).filter(|next| !next.is_empty());
    let Some(next) = next else { return Ok(frame::fresh(page(&call, &batch, &readings, None))) };
    match taken(&call, &batch, &readings, next) {
        Ok(readings) => Ok(see_other(&address(&call, &batch, &readings))),
        Err(hindrance) => Ok(frame::unwritten(page(&call, &batch, &readings, Some(&hindrance)))),
    }
}

/// The readings with the next one.
fn taken(call: &Call, batch: &Batch, readings: &Readings, next: &str) -> Result<Readings, Hindrance> {
    let words = batch.viewer.words();
    if readings.0.len() >= READINGS_MAX {
        return Err(Hindrance::Fault(say!(words, "weigh-too-many", most = READINGS_MAX.to_string())));
    }
    let together = call.asked(TOGETHER).map(str::trim).filter(|text| !text.is_empty()).unwrap_or("1");
    let birds = together.parse().ok().filter(|birds| (1..=BIRDS_MAX).contains(birds));
    let birds: u32 = birds.ok_or_else(|| {
        Hindrance::Fault(say!(words, "weigh-birds-together", typed = together, most = BIRDS_MAX.to_string()))
    })?;
    let grams = grams(next, birds, batch)?;
    let doubt = doubt(batch, grams, birds).filter(|_| call.asked(SURE).is_none());
    if let Some(ask) = doubt {
        return Err(Hindrance::Doubt(oddity::ask(&ask, &batch.viewer)));
    }
    let spot = spot_name(call.asked(SPOT).unwrap_or_default());
    let is_cock = call.asked(SEX).and_then(is_cock).filter(|_| birds == 1);
    let mut all = readings.clone();
    all.0.push(Reading { grams, birds, spot, is_cock });
    Ok(all)
}

/// A reading in grams, within what a bird or a crate of birds can weigh.
fn grams(typed: &str, birds: u32, batch: &Batch) -> Result<f64, Hindrance> {
    let key = if birds > 1 { "weighed.group_weights_g" } else { "weighed.weights_g" };
    let asked: Vec<_> =
        quantity::records::of_section("weighed").into_iter().filter(|one| one.field.key == key).collect();
    let raws = [Raw { key: key.to_owned(), text: vec![typed.to_owned()], line: None }];
    let checked = quantity::field::check(&asked, &raws, Source::Hand, false);
    if let Some(problem) = checked.problems.first() {
        return Err(Hindrance::Fault(fault::labelled(problem, key, &batch.viewer)));
    }
    match checked.answers.numbers(key) {
        [one] => Ok(*one),
        _ => Err(Hindrance::Fault(batch.viewer.words().plain("weigh-one-at-a-time"))),
    }
}

/// Whether it is far from what birds of this age weigh.
fn doubt(batch: &Batch, grams: f64, birds: u32) -> Option<Ask> {
    let kind = record::kind("weighing")?;
    let each = grams / f64::from(birds);
    let raws = [Raw { key: "weighed.weights_g".to_owned(), text: vec![each.to_string()], line: None }];
    let answers = record::check(kind, &raws, Source::Hand).answers;
    record::asks(&batch.diary(), kind, batch.on, &answers).into_iter().next()
}

/// Where the keypad stands with some readings; the spot and the like stay as they were.
fn address(call: &Call, batch: &Batch, readings: &Readings) -> String {
    let mut pairs = vec![(DONE, readings.text())];
    let kept =
        [SPOT, SEX, TOGETHER].into_iter().filter_map(|name| Some((name, call.asked(name)?.to_owned())));
    pairs.extend(kept.filter(|(_, text)| !text.is_empty()));
    if batch.on != batch.today {
        pairs.push((ON, batch.on.to_string()));
    }
    let query: Vec<String> =
        pairs.iter().map(|(name, text)| format!("{name}={}", percent_encoded(text))).collect();
    format!("{}/weigh?{}#next", batch.address(), query.join("&"))
}

/// A text as the query of an address carries it.
fn percent_encoded(text: &str) -> String {
    let plain =
        |byte: u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_' | b';' | b'@' | b'*');
    let each = text
        .bytes()
        .map(|byte| if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") });
    each.collect()
}

fn page(call: &Call, batch: &Batch, readings: &Readings, hindrance: Option<&Hindrance>) -> Markup {
    let words = batch.viewer.words();
    let content = html! {
        p class="subtitle" { (batch.name()) ", " (day_and_age(batch, batch.on, batch.diary().age_today())) }
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        @if readings.0.is_empty() { p { (words.plain("weigh-how")) } }
        @else { (so_far(batch, readings)) }
        (keypad(call, batch, readings, hindrance))
        @if !readings.0.is_empty() {
            (last(call, batch, readings))
            (to_the_book(call, batch, readings))
        }
        p { a href=(batch.page("/write/weighing")) { (words.plain("weigh-type-all")) } }
    };
    frame::page(&call.site, &batch.viewer, &words.plain("page-weigh"), &content)
}

/// What they weigh so far, and whether it is enough.
fn so_far(batch: &Batch, readings: &Readings) -> Markup {
    let diary = batch.diary();
    let weighing = readings.weighing(record::alive_before(&diary, batch.on));
    let result = weighing.held_against(&Aim::on(&diary, batch.on));
    let blocks = weighing::running(&weighing, &result, &batch.viewer);
    let shown = Document { blocks, ..Document::default() };
    html! { div class="so-far" role="status" { (present::html::blocks(&shown, &batch.viewer)) } }
}

fn keypad(call: &Call, batch: &Batch, readings: &Readings, hindrance: Option<&Hindrance>) -> Markup {
    let words = batch.viewer.words();
    let kept = |name: &str| call.asked(name).unwrap_or_default().to_owned();
    let typed = if hindrance.is_some() { kept(NEXT) } else { String::new() };
    let sex = is_cock(&kept(SEX));
    let has_more = !kept(TOGETHER).is_empty() || !kept(SPOT).is_empty() || sex.is_some();
    html! {
        form method="get" action=(format!("{}/weigh", batch.address())) class="keypad" {
            input type="hidden" name=(DONE) value=(readings.text());
            @if batch.on != batch.today { input type="hidden" name=(ON) value=(batch.on); }
            @match hindrance {
                Some(Hindrance::Fault(text)) => { p class="fault" role="alert" id="next-fault" { (text) } }
                Some(Hindrance::Doubt(text)) => {
                    div class="faults" role="alert" {
                        p { (text) }
                        label class="tick" { input type="checkbox" name=(SURE) value="yes"; " " (words.plain("it-is-so")) }
                    }
                }
                None => {}
            }
            div class="input" {
                label for=(NEXT) { (words.plain("weigh-next")) }
                span class="box" {
                    input id=(NEXT) name=(NEXT) type="text" inputmode="decimal" autocomplete="off" value=(typed) autofocus
                        aria-invalid=[hindrance.is_some().then_some("true")];
                    span class="unit" { "g" }
                }
            }
            button { (words.plain("weigh-add")) }
            details class="more" open[has_more] {
                summary { (words.plain("weigh-where-and-which")) }
                (text_box(SPOT, &words.plain("weigh-spot"), &kept(SPOT), "text"))
                (text_box(TOGETHER, &words.plain("weigh-together"), &kept(TOGETHER), "numeric"))
                fieldset class="input" {
                    legend { (words.plain("weigh-sex")) }
                    @for one in SEXES {
                        label class="tick" {
                            input type="radio" name=(SEX) value=(sex_word(one)) checked[one == sex];
                            " " (words.plain(&format!("weigh-sex-{}", one.map_or("not-said", sex_name))))
                        }
                    }
                }
            }
        }
    }
}

fn text_box(name: &str, label: &str, typed: &str, mode: &str) -> Markup {
    html! {
        div class="input" {
            label for=(name) { (label) }
            input id=(name) name=(name) type="text" inputmode=(mode) autocomplete="off" value=(typed);
        }
    }
}

/// The last readings, and the way to take the last one off.
fn last(call: &Call, batch: &Batch, readings: &Readings) -> Markup {
    let words = batch.viewer.words();
    let said = |one: &Reading| {
        let grams = shown::quantity_short(one.grams, Unit::Gram, &batch.viewer);
        let together =
            (one.birds > 1).then(|| shown::quantity(f64::from(one.birds), Unit::Birds, 0, &batch.viewer));
        [Some(grams), together, Some(one.spot.clone()).filter(|spot| !spot.is_empty())]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(", ")
    };
    html! {
        h2 { (words.plain("weigh-last")) }
        ol class="entries" reversed start=(readings.0.len()) {
            @for one in readings.0.iter().rev().take(LAST) { li { (said(one)) } }
        }
        p { a href=(address(call, batch, &readings.without_last())) { (words.plain("weigh-take-off")) } }
    }
}

/// The form that writes the weighing into the book.
fn to_the_book(call: &Call, batch: &Batch, readings: &Readings) -> Markup {
    let words = batch.viewer.words();
    let Some(boxes) = Boxes::of("weighing", batch.on) else { return html! {} };
    let step = boxes.name("scale_step_g");
    html! {
        form method="post" action=(format!("{}/write/weighing", batch.address())) class="part"
            data-kept data-seen=(kept::seen(batch)) data-day=(shown::day_short(batch.on, &batch.viewer)) {
            input type="hidden" name=(ON) value=(batch.on);
            @for (field, text) in readings.fields() { input type="hidden" name=(boxes.name(field)) value=(text); }
            (made_id(call, &boxes))
            div class="input" {
                label for=(field_anchor(&step)) { (words.plain("field-weighed-scale-step-g")) " (g)" }
                input id=(field_anchor(&step)) name=(step) type="text" inputmode="decimal" autocomplete="off";
            }
            button { (words.plain("weigh-write")) }
        }
    }
}
