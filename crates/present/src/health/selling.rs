//! From when may birds be sold?

use advice::health::{Cause, Clear, Health, SaleDay, SaleOf, Wait};
use advice::store_room::Phase;
use quantity::{CivilDay, Unit};

use crate::document::{Align, Block, Caution, Document, Level, Table};
use crate::viewer::Viewer;
use crate::{say, show, sum, working};

/// From when birds may be sold by what is written, why, and which days of sale are held back.
pub fn selling(health: &Health, viewer: &Viewer) -> Document {
    let words = viewer.words();
    let title = words.plain("health-selling");
    let mut blocks = vec![lead(health, viewer)];
    blocks.extend(unknown(health, viewer).map(Block::Caution));
    blocks.extend(sale_days(health, viewer).map(Block::Table));
    blocks.extend(waits(health, viewer).map(Block::Table));
    blocks.extend(worked_out(health, viewer));
    blocks.push(Block::Caution(Caution {
        level: Level::Danger,
        title: words.plain("health-selling-caution"),
        items: sum::cautions("sum-withdrawal-caution", words),
    }));
    Document { title, subtitle: String::new(), blocks }
}

/// From when birds may be sold, large; on a sheet with little room it can be said in a line.
pub(crate) fn lead(health: &Health, viewer: &Viewer) -> Block {
    let words = viewer.words();
    let label = words.plain("health-earliest");
    let (value, note) = match (health.clear(), health.ruling()) {
        (Some(Clear::Unknown), Some(wait)) => {
            (words.plain("health-blocked"), say!(words, "health-blocked-by", product = product(wait, viewer)))
        }
        (Some(clear @ Clear::On { day, hour }), Some(wait)) => {
            let earliest = clear.earliest_day().unwrap_or(day);
            let note = if earliest <= health.on { "health-over-since" } else { "health-wait-for" };
            let hour = show::number(f64::from(hour), 0);
            let ends = show::day(day, viewer);
            let note = say!(words, note, product = product(wait, viewer), day = ends, hour = hour);
            (show::day(earliest, viewer), note)
        }
        _ => (words.plain("health-nothing-holds"), words.plain("health-nothing-holds-note")),
    };
    Block::Lead { label, value, note }
}

/// What of which nobody knows how long to wait, and how to find out.
fn unknown(health: &Health, viewer: &Viewer) -> Option<Caution> {
    let words = viewer.words();
    let unknown = health.waits.iter().filter(|wait| wait.withdrawal.clear() == Clear::Unknown);
    let items: Vec<String> = unknown
        .map(|wait| {
            let key = format!("health-unknown-{}", wait.cause.name());
            let day = show::day(wait.withdrawal.last, viewer);
            say!(words, &key, product = product(wait, viewer), day = day)
        })
        .collect();
    (!items.is_empty()).then(|| Caution { level: Level::Danger, title: words.plain("health-unknown"), items })
}

fn sale_days(health: &Health, viewer: &Viewer) -> Option<Table> {
    let row = |sale: &SaleDay| {
        vec![show::day(sale.day, viewer), reason(&sale.of, viewer), verdict(health, sale.day, viewer)]
    };
    let held = |sale: &SaleDay| !health.holding(sale.day).is_empty();
    let sales = &health.sale_days;
    table(
        "health-sale-days",
        [
            ("column-date", Align::Start),
            ("column-what", Align::Start),
            ("health-column-verdict", Align::Start),
        ],
        sales.iter().map(row).collect(),
        (0..sales.len()).filter(|at| held(&sales[*at])).collect(),
        viewer,
    )
}

fn reason(of: &SaleOf, viewer: &Viewer) -> String {
    let words = viewer.words();
    match of {
        SaleOf::PlanFirst => words.plain("health-sale-first"),
        SaleOf::PlanLast => words.plain("health-sale-last"),
        SaleOf::Order { buyer } => say!(words, "health-sale-order", buyer = buyer),
    }
}

/// Whether birds may be sold on a day, and what holds them back.
fn verdict(health: &Health, day: CivilDay, viewer: &Viewer) -> String {
    let words = viewer.words();
    let holding: Vec<String> = health.holding(day).into_iter().map(|wait| product(wait, viewer)).collect();
    if holding.is_empty() {
        return words.plain("health-day-free");
    }
    say!(words, "health-day-held", products = holding.join(", "))
}

fn waits(health: &Health, viewer: &Viewer) -> Option<Table> {
    let words = viewer.words();
    let row = |wait: &Wait| {
        let withdrawal = &wait.withdrawal;
        let days = withdrawal.days.map(|days| show::quantity(f64::from(days), Unit::Day, 0, viewer));
        let earliest = withdrawal.clear().earliest_day().map(|day| show::day(day, viewer));
        vec![
            product(wait, viewer),
            last(wait, viewer),
            days.unwrap_or_else(|| words.plain("health-days-unknown")),
            earliest.unwrap_or_else(|| words.plain("health-blocked")),
        ]
    };
    let held = |at: &usize| health.waits[*at].holds_on(health.on);
    table(
        "health-waits",
        [
            ("health-column-product", Align::Start),
            ("health-column-last", Align::Start),
            ("health-column-days", Align::End),
            ("health-column-earliest", Align::Start),
        ],
        health.waits.iter().map(row).collect(),
        (0..health.waits.len()).filter(held).collect(),
        viewer,
    )
}

/// A table with titles from messages; none without rows.
pub(super) fn table<const N: usize>(
    caption: &str,
    columns: [(&str, Align); N],
    rows: Vec<Vec<String>>,
    emphasis: Vec<usize>,
    viewer: &Viewer,
) -> Option<Table> {
    let words = viewer.words();
    let columns = columns.map(|(key, align)| (words.plain(key), align)).into();
    let caption = words.plain(caption);
    (!rows.is_empty()).then_some(Table { caption, columns, rows, emphasis, explained_by: Vec::new() })
}

fn last(wait: &Wait, viewer: &Viewer) -> String {
    let day = show::day(wait.withdrawal.last, viewer);
    match wait.withdrawal.hour {
        Some(hour) => {
            say!(viewer.words(), "health-last-at", day = day, hour = show::number(f64::from(hour), 0))
        }
        None => say!(viewer.words(), "health-last-day", day = day),
    }
}

/// What was given, as the grower calls it; a feed by its phase.
pub(crate) fn product(wait: &Wait, viewer: &Viewer) -> String {
    let words = viewer.words();
    let name = &wait.withdrawal.product;
    match wait.cause {
        Cause::Medicine | Cause::Vaccine => name.clone(),
        Cause::Feed if Phase::ALL.iter().any(|phase| phase.name() == name) => {
            let phase = words.plain(&format!("choice-feed-given-phase-{name}"));
            say!(words, "health-feed", phase = phase)
        }
        Cause::Feed => say!(words, "health-feed", phase = name),
    }
}

/// How the waits still running were worked out.
fn worked_out(health: &Health, viewer: &Viewer) -> Option<Block> {
    let running = health.waits.iter().filter(|wait| wait.holds_on(health.on));
    let views = running.filter_map(|wait| {
        let result = wait.worked_out()?;
        let (answers, outcome) = (&result.checked.answers, &result.outcome);
        let view = working::view(answers, outcome, "withdrawal.earliest_day", viewer)?;
        Some([Block::Paragraph(product(wait, viewer)), Block::Working(view)])
    });
    let blocks: Vec<Block> = views.flatten().collect();
    let title = viewer.words().plain("health-worked-out");
    (!blocks.is_empty()).then_some(Block::Fold { title, blocks })
}

#[cfg(test)]
mod tests {
    use super::super::make::{day, health, said, wait};
    use super::*;

    fn with_sales(on: i32, waits: Vec<Wait>) -> String {
        let mut health = health(on, waits);
        health.sale_days = vec![
            SaleDay { day: day(20), of: SaleOf::PlanFirst },
            SaleDay { day: day(30), of: SaleOf::Order { buyer: "Zuri".to_owned() } },
        ];
        said(&selling(&health, &Viewer::plain()))
    }

    #[test]
    fn the_earliest_day_leads_and_a_planned_day_before_it_is_held() {
        let page = with_sales(16, vec![wait("syrup", 15, Some(18), Some(7))]);
        assert!(page.contains("23 September 2027"), "{page}");
        assert!(page.contains("22 September 2027 at 18:00"), "{page}");
        assert!(page.contains("20 September 2027 first day of sale by your plan no: syrup"), "{page}");
        assert!(page.contains("30 September 2027 order of Zuri yes, by what is written"), "{page}");
        assert!(page.contains("15 September 2027 + 7 + round up"), "the working is there: {page}");
    }

    #[test]
    fn unknown_days_block_every_day() {
        let page = with_sales(16, vec![wait("syrup", 2, None, Some(1)), wait("drops", 3, None, None)]);
        assert!(page.contains("Blocked"), "{page}");
        assert_eq!(page.matches("no: drops").count(), 2, "{page}");
        assert!(page.contains("Ask your veterinarian"), "{page}");
    }

    #[test]
    fn an_empty_book_does_not_say_that_all_is_well() {
        let page = with_sales(16, Vec::new());
        assert!(page.contains("Nothing that is written"), "{page}");
        assert!(page.contains("a medicine that was given and not written"), "{page}");
        let over = with_sales(16, vec![wait("syrup", 2, None, Some(1))]);
        assert!(over.contains("The wait after syrup"), "{over}");
    }
}
