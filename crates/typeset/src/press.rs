//! One job from checked data to the bytes of a PDF.

use std::collections::BTreeMap;

use serde::Serialize;
use typst::diag::{EcoVec, SourceDiagnostic, Warned};
use typst::foundations::{Bytes, Datetime};
use typst::visualize::SvgImage;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, Timestamp};

use crate::sheet::{Frame, Section, Sheet};
use crate::world::JobWorld;
use crate::{Day, TypesetError};

/// All that the template reads.
///
/// Drawings travel inside the data, not as files of their own: typst keeps every file name it meets for the
/// life of the process, and names come from outside.
#[derive(Debug, Serialize)]
pub(crate) struct Job<'a> {
    sheet: &'a Frame,
    sections: Vec<Section<'a>>,
    drawings: BTreeMap<&'a str, &'a str>,
}

impl<'a> Job<'a> {
    /// A job for a sheet and the drawings it calls for.
    pub(crate) fn new(sheet: &'a Sheet, drawings: BTreeMap<&'a str, &'a str>) -> Self {
        Self { sheet: sheet.frame(), sections: sheet.sections(), drawings }
    }

    /// Lays the job out and writes it as PDF.
    pub(crate) fn press(&self, created: Option<Datetime>) -> Result<Vec<u8>, TypesetError> {
        let pages = self.lay_out(created)?.output.map_err(|errors| self.blame(&errors))?;
        let options = PdfOptions { timestamp: created.map(Timestamp::new_utc), ..PdfOptions::default() };
        typst_pdf::pdf(&pages, &options).map_err(|errors| TypesetError::Pdf { reason: reasons(&errors) })
    }

    fn lay_out(
        &self,
        created: Option<Datetime>,
    ) -> Result<Warned<Result<PagedDocument, EcoVec<SourceDiagnostic>>>, TypesetError> {
        let data =
            serde_json::to_vec(self).map_err(|error| TypesetError::Data { reason: error.to_string() })?;
        Ok(typst::compile::<PagedDocument>(&JobWorld::new(data, created)))
    }

    /// Names the drawing behind a failure. Only then is each read once more: most jobs succeed.
    fn blame(&self, errors: &[SourceDiagnostic]) -> TypesetError {
        let reason = reasons(errors);
        let unreadable = |svg: &str| SvgImage::new(Bytes::from_string(svg.to_owned())).is_err();
        match self.drawings.iter().find(|(_, svg)| unreadable(svg)) {
            Some((name, _)) => TypesetError::BadDrawing { name: (*name).to_owned(), reason },
            None => TypesetError::Template { reason },
        }
    }
}

/// A day as typst holds it.
pub(crate) fn date((year, month, day): Day) -> Result<Datetime, TypesetError> {
    // A PDF date needs a time of day; midnight says the least.
    Datetime::from_ymd_hms(year, month, day, 0, 0, 0).ok_or(TypesetError::BadDate { year, month, day })
}

fn reasons(errors: &[SourceDiagnostic]) -> String {
    errors.iter().map(|error| error.message.as_str()).collect::<Vec<_>>().join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_templates_give_no_warning() {
        let document = serde_json::from_str(include_str!("../tests/sample/document.json")).unwrap();
        let sheet = Sheet::read(&document).unwrap();
        let drawings = BTreeMap::from([("guard.svg", include_str!("../tests/sample/guard.svg"))]);
        let pages = Job::new(&sheet, drawings).lay_out(None).unwrap();
        let warnings: Vec<_> = pages.warnings.iter().map(|warning| warning.message.as_str()).collect();
        assert!(warnings.is_empty(), "{warnings:?}");
    }
}
