//! Pages that only show what the book makes of a batch: whether something is off, how it grows, what is in the store room, how
//! the chicks are brooded, what was given and from when birds may be sold, when to sell, whether it paid.

use advice::closing::Closing;
use advice::health::Health;
use advice::past::Past;
use advice::sale::Sale;
use advice::walk::Walk;
use advice::weighing::Weighing;
use axum::response::Response;
use maud::{Markup, html};
use present::entry::kind_name;
use present::html::{blocks, blocks_of_plan, day_address};
use present::{Document, batch as shown, closing, health, sale};

use crate::batch::Batch;
use crate::call::Call;
use crate::pages::frame;
use crate::trouble::Trouble;

/// A page of a batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sight {
    Watch,
    Growing,
    Store,
    Brooding,
    Health,
    Sale,
    Closing,
}

impl Sight {
    /// All, in the order in which they are offered.
    pub(crate) const ALL: [Sight; 7] = [
        Sight::Watch,
        Sight::Growing,
        Sight::Store,
        Sight::Brooding,
        Sight::Health,
        Sight::Sale,
        Sight::Closing,
    ];

    /// The last word of its address, and part of its message key.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Sight::Watch => "watch",
            Sight::Growing => "growing",
            Sight::Store => "store",
            Sight::Brooding => "brooding",
            Sight::Health => "health",
            Sight::Sale => "sale",
            Sight::Closing => "closing",
        }
    }

    /// The kinds that are written down for it.
    fn written_by(self) -> &'static [&'static str] {
        match self {
            Sight::Watch => &["litter-check", "note"],
            Sight::Growing => &[],
            Sight::Store => &["feed-delivered", "feed-opened", "feed-spoiled", "purchase"],
            Sight::Brooding => &["crop-fill", "chick-check"],
            Sight::Health => &["vaccine-programme", "vaccine-given", "medicine-given"],
            Sight::Sale => &["sale", "order", "price-seen"],
            Sight::Closing => &["sale", "cost", "payment", "batch-closed"],
        }
    }

    /// What it shows of a batch on the day that is looked at.
    pub(crate) fn document(self, batch: &Batch) -> Document {
        let viewer = &batch.viewer;
        match self {
            Sight::Growing => {
                let past = batch.past();
                shown::growing(&batch.walk_ahead(&past), &past, viewer)
            }
            Sight::Watch => shown::watch(&batch.walk(), viewer),
            Sight::Store => shown::store(&batch.walk(), viewer),
            Sight::Brooding => shown::brooding(&batch.walk(), viewer),
            Sight::Health => health::document(&Health::of(&batch.diary()), viewer),
            Sight::Sale => sale::document(&batch.sale(), viewer),
            Sight::Closing => {
                closing::document(&Closing::read(&batch.open.state, batch.id, batch.on), viewer)
            }
        }
    }
}

impl Batch {
    /// The earlier batches of its house.
    pub(crate) fn past(&self) -> Past {
        Past::read(&self.open.state, self.id, self.on)
    }

    /// When to sell, as the book has it on the day.
    pub(crate) fn sale(&self) -> Sale {
        Sale::of(self.diary(), &self.past())
    }

    /// The walk of the day beside the house's earlier batches, with what is likely from here.
    pub(crate) fn walk_ahead(&self, past: &Past) -> Walk {
        Walk::ahead_of(self.diary(), past)
    }
}

/// The ways to write down what the page tells of.
fn to_write(batch: &Batch, sight: Sight) -> Markup {
    let words = batch.viewer.words();
    html! {
        nav class="jump" aria-label=(words.plain("write-something-else")) {
            @if sight == Sight::Growing { a href=(batch.page("/weigh")) { (words.plain("page-weigh")) } }
            @for kind in sight.written_by() {
                a class="capital" href=(batch.page(&format!("/write/{kind}"))) { (kind_name(kind, &batch.viewer)) }
            }
        }
    }
}

/// *Is something off?*
pub(crate) async fn watch(call: Call) -> Result<Response, Trouble> {
    show(call, Sight::Watch).await
}

/// What the birds weighed on a day say of the flock, with every working.
pub(crate) async fn weighed(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let document = shown::weighed(&batch.diary(), &batch.viewer).ok_or(Trouble::NotFound)?;
    let words = batch.viewer.words();
    let content = html! {
        @if call.asked("saved").is_some() { p class="done" role="status" { (words.plain("written-in-the-book")) } }
        p class="subtitle" { (document.subtitle) }
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        nav class="jump" aria-label=(words.plain("weighed-more-of-it")) {
            a href=(batch.page("/growing")) { (words.plain("page-growing")) }
            a href=(batch.page("/print/weighing")) { (words.plain("weighed-print")) }
            a href=(day_address(&batch.address(), batch.on)) { (words.plain("all-of-the-day")) }
        }
        (blocks(&document, &batch.viewer))
    };
    Ok(call.page(&stamp, frame::page(&call.site, &batch.viewer, &document.title, &content)))
}

/// *How are they growing?*
pub(crate) async fn growing(call: Call) -> Result<Response, Trouble> {
    show(call, Sight::Growing).await
}

/// *What is in the store room?*
pub(crate) async fn store(call: Call) -> Result<Response, Trouble> {
    show(call, Sight::Store).await
}

/// *Are the chicks warm and fed?*
pub(crate) async fn brooding(call: Call) -> Result<Response, Trouble> {
    show(call, Sight::Brooding).await
}

/// *Vaccines and medicines.*
pub(crate) async fn of_health(call: Call) -> Result<Response, Trouble> {
    show(call, Sight::Health).await
}

/// *When do I sell?*
pub(crate) async fn of_sale(call: Call) -> Result<Response, Trouble> {
    show(call, Sight::Sale).await
}

/// *Did it pay?*
pub(crate) async fn of_closing(call: Call) -> Result<Response, Trouble> {
    show(call, Sight::Closing).await
}

async fn show(call: Call, sight: Sight) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let document = sight.document(&batch);
    let words = batch.viewer.words();
    let last_weighed = (sight == Sight::Growing).then(|| Weighing::last_day(&batch.diary())).flatten();
    let content = html! {
        p class="subtitle" { (document.subtitle) }
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        @if call.access.may_write() { (to_write(&batch, sight)) }
        @if let Some(day) = last_weighed {
            p { a href=(batch.page_of("/weighed", day)) { (words.plain("weighed-last")) } }
        }
        @if sight == Sight::Sale { (sale_links(&batch)) }
        (blocks_of_plan(&document, &batch.viewer, &batch.address()))
    };
    Ok(call.page(&stamp, frame::page(&call.site, &batch.viewer, &document.title, &content)))
}

/// What the sale gives to print and to keep.
fn sale_links(batch: &Batch) -> Markup {
    let words = batch.viewer.words();
    html! {
        nav class="jump" aria-label=(words.plain("to-print")) {
            a href=(batch.page("/print/catching")) { (words.plain("print-catching")) }
            a href=(batch.page("/print/delivery")) { (words.plain("print-delivery")) }
            a href=(batch.page("/calendar.ics")) { (words.plain("sale-calendar")) }
        }
    }
}
