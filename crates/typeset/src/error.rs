//! What can go wrong between data and PDF.

/// Why a document could not be set.
///
/// The texts are for logs; block numbers count from 0.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum TypesetError {
    /// The document around the blocks lacks a field, has one too many or one of the wrong type.
    #[error("document is not of the shape that can be set: {reason}")]
    BadDocument {
        /// What the reader of the data says.
        reason: String,
    },
    /// A block of a kind this crate does not know, most likely newer than the crate.
    #[error("block {index} is of the unknown kind {kind:?}")]
    UnknownKind {
        /// Which block.
        index: usize,
        /// The kind it claims.
        kind: String,
    },
    /// A block of a known kind whose fields are missing, unknown or contradict each other.
    #[error("block {index} of kind {kind:?} cannot be set: {reason}")]
    BadBlock {
        /// Which block.
        index: usize,
        /// Its kind, empty when it has none.
        kind: String,
        /// What is wrong with it.
        reason: String,
    },
    /// A block calls for a drawing that was not handed over.
    #[error("block {index} calls for the drawing {name:?}, which is not there")]
    MissingDrawing {
        /// Which block.
        index: usize,
        /// The name it calls.
        name: String,
    },
    /// A drawing is not SVG that can be read.
    #[error("drawing {name:?} cannot be read: {reason}")]
    BadDrawing {
        /// The name of the drawing.
        name: String,
        /// What the reader of the SVG says.
        reason: String,
    },
    /// The day of creation is not in the calendar.
    #[error("{year}-{month}-{day} is not a day of the calendar")]
    BadDate {
        /// Year as given.
        year: i32,
        /// Month as given.
        month: u8,
        /// Day as given.
        day: u8,
    },
    /// The data could not be written for the template, a fault of this crate.
    #[error("data for the template cannot be written: {reason}")]
    Data {
        /// What the writer says.
        reason: String,
    },
    /// The template failed on checked data, a fault of this crate or a drawing that reaches outside itself.
    #[error("template failed: {reason}")]
    Template {
        /// What the typesetter says, one message a line.
        reason: String,
    },
    /// The laid-out pages could not be written as a PDF.
    #[error("pages cannot be written as PDF: {reason}")]
    Pdf {
        /// What the writer says, one message a line.
        reason: String,
    },
}
