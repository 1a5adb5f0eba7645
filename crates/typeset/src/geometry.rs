//! Measures of the page and sizes of text, in points (1/72 inch).

use serde::Serialize;

use crate::sheet::{Page, Paper};

const MM: f64 = 72.0 / 25.4;
const INCH: f64 = 72.0;

/// Margins wide enough for the rim that office printers leave blank, and for two pins or a file.
const SIDE: f64 = 18.0 * MM;
const TOP: f64 = 16.0 * MM;
const BOTTOM: f64 = 20.0 * MM;

/// Margins of a sheet that is one form from edge to edge: as narrow as office printers still reach.
const BARE: f64 = 10.0 * MM;

/// Spaces between the blocks of such a sheet, of the usual ones.
const BARE_AIR: f64 = 0.45;

/// The longest line of running text that is still easy to follow back to its start (our judgement).
const LONGEST_LINE: f64 = 215.0 * MM;

/// From the outer edge of a thin frame to the text within.
const FRAME: f64 = 10.5;

/// The measures everything on the page follows from.
#[derive(Debug, Clone, Copy, Serialize)]
pub(crate) struct Geometry {
    width: f64,
    height: f64,
    side: f64,
    top: f64,
    bottom: f64,
    /// Between the side margins.
    pub(crate) full: f64,
    /// Within a thin frame of full width.
    pub(crate) framed: f64,
    /// Between the margins at top and bottom.
    room: f64,
    /// Width of running text.
    pub(crate) line: f64,
    /// Size of running text.
    pub(crate) base: f64,
    /// Spaces between blocks, of the usual ones.
    air: f64,
}

impl Geometry {
    /// The measures of a page. A landscape sheet hangs on a wall, so its text is larger; a bare one is full.
    pub(crate) fn new(page: Page) -> Self {
        let (short, long) = match page.paper {
            Paper::A4 => (210.0 * MM, 297.0 * MM),
            Paper::UsLetter => (8.5 * INCH, 11.0 * INCH),
        };
        let (width, height, base) = if page.landscape { (long, short, 12.0) } else { (short, long, 11.0) };
        let (side, top, bottom, base, air) = match page.bare {
            true => (BARE, BARE, BARE, 10.0, BARE_AIR),
            false => (SIDE, TOP, BOTTOM, base, 1.0),
        };
        let full = width - 2.0 * side;
        Self {
            width,
            height,
            side,
            top,
            bottom,
            full,
            framed: full - 2.0 * FRAME,
            room: height - top - bottom,
            line: full.min(LONGEST_LINE),
            base,
            air,
        }
    }
}
