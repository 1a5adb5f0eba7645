//! Vaccines and medicines of a batch in words: what is due, and from when birds may be sold.

pub(crate) mod selling;
mod vaccinations;

pub(crate) use selling::lead;
pub use selling::selling;
pub use vaccinations::vaccinations;

use advice::health::Health;

use crate::document::{Block, Document};
use crate::viewer::Viewer;

/// Both as one page: the wait before a sale first, since a slip there reaches people who eat.
pub fn document(health: &Health, viewer: &Viewer) -> Document {
    let mut page = Document { title: viewer.words().plain("page-health"), ..Document::default() };
    let parts =
        [("health-selling", selling(health, viewer)), ("health-vaccines", vaccinations(health, viewer))];
    for (anchor, part) in parts {
        page.blocks.push(Block::Heading { level: 2, text: part.title, anchor });
        page.blocks.extend(part.blocks);
    }
    page
}

#[cfg(test)]
mod tests {
    use super::make::{health, said, wait};
    use super::*;
    use crate::viewer::Locale;

    #[test]
    fn the_wait_stands_before_the_vaccines() {
        let page = said(&document(&health(16, vec![wait("syrup", 15, None, Some(7))]), &Viewer::plain()));
        let (sell, vaccines) = (page.find("May birds be sold?"), page.find("Which vaccination is due?"));
        assert!(sell.is_some() && sell < vaccines, "{page}");
    }

    /// In the long disguise each word of a message is accented; plain ones are the grower's own.
    #[test]
    fn every_word_is_a_message() {
        let viewer = Viewer { locale: Locale::PseudoLong, ..Viewer::plain() };
        let page = document(&health(16, vec![wait("Xyzzy", 15, None, None)]), &viewer);
        let text = crate::text::write(&page, &viewer, false).replace("Xyzzy", "");
        let plain = text.split(|c: char| !c.is_alphabetic()).filter(|word| word.len() > 3 && word.is_ascii());
        assert_eq!(plain.collect::<Vec<_>>(), [""; 0]);
    }
}

/// Health records to show in tests.
#[cfg(test)]
mod make {
    use advice::health::{Cause, Programme, Vaccinations, Wait, Withdrawal};
    use quantity::CivilDay;

    use super::*;

    /// A day of September 2027 or after.
    pub(super) fn day(number: i32) -> CivilDay {
        CivilDay::parse("2027-09-01").unwrap().plus_days(number - 1)
    }

    pub(super) fn wait(product: &str, last: i32, hour: Option<u8>, days: Option<u16>) -> Wait {
        let withdrawal = Withdrawal { product: product.to_owned(), last: day(last), hour, days };
        Wait { cause: Cause::Medicine, first: day(last), withdrawal }
    }

    pub(super) fn health(on: i32, waits: Vec<Wait>) -> Health {
        let vaccinations = Vaccinations { programme: Programme::NotWritten, from: None, beside: Vec::new() };
        Health { on: day(on), vaccinations, waits, sale_days: Vec::new() }
    }

    /// What a document says, in plain text.
    pub(super) fn said(document: &Document) -> String {
        let text = crate::text::write(document, &Viewer::plain(), true);
        let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(!joined.contains("[health") && !joined.contains("{$"), "{joined}");
        joined
    }
}
