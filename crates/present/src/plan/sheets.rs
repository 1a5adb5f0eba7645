//! The sheets that can be printed from a plan, by name.

use super::Shown;
use crate::document::Document;

/// A kind of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SheetKind {
    /// Its stable name: the last word of its address, a choice on the command line, and part of its message key.
    pub name: &'static str,
    /// Whether it is among the sheets printed when nobody says which.
    pub usual: bool,
}

/// All sheets, in the order in which they are offered and printed.
pub const SHEETS: &[SheetKind] = &[
    SheetKind { name: "booklet", usual: true },
    SheetKind { name: "shopping", usual: true },
    SheetKind { name: "cutting", usual: true },
    SheetKind { name: "mixing", usual: true },
    SheetKind { name: "countdown", usual: true },
    SheetKind { name: "wall", usual: false },
    SheetKind { name: "handout", usual: false },
    SheetKind { name: "plan", usual: false },
    SheetKind { name: "workings", usual: false },
];

impl Shown<'_> {
    /// The documents of a sheet; `None` for a name that is no sheet's.
    ///
    /// - `figure`: the one a handout works through; without it one that makes a good lesson. `None` comes back too
    ///   where the plan has no such figure
    pub fn sheet(&self, name: &str, figure: Option<&str>) -> Option<Vec<Document>> {
        Some(match name {
            "booklet" => vec![self.booklet()],
            "shopping" => vec![self.shopping_list()],
            "handout" => match figure {
                Some(id) => vec![self.handout(id)?],
                None => vec![self.usual_handout()],
            },
            "countdown" => vec![self.countdown_checklist()],
            "plan" => vec![self.document()],
            "wall" => self.wall_sheets(),
            "cutting" => vec![self.cutting_sheet()],
            "mixing" => vec![self.mixing_card()],
            "workings" => vec![self.workings()],
            _ => return None,
        })
    }
}
