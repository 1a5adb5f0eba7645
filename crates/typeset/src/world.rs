//! What typst may see: the templates, the data of one job, the fonts. No file, no clock, no network.

use std::sync::LazyLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::layout::Abs;
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook, FontInstance, FontVariations};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

/// The templates by the path they import each other by, the one that sets the document first.
const TEMPLATES: [(&str, &str); 5] = [
    ("document.typ", include_str!("../templates/document.typ")),
    ("blocks.typ", include_str!("../templates/blocks.typ")),
    ("grid.typ", include_str!("../templates/grid.typ")),
    ("table.typ", include_str!("../templates/table.typ")),
    ("sheet.typ", include_str!("../templates/sheet.typ")),
];

/// Where the templates find the data. Data is a file, not source text, so nothing in it is ever run.
const JOB: &str = "job.json";

/// The faces of Noto Sans, one font each.
const FACES: [&[u8]; 4] =
    [notosans::REGULAR_TTF, notosans::BOLD_TTF, notosans::ITALIC_TTF, notosans::BOLD_ITALIC_TTF];

/// Which of the faces is the bold one.
const BOLD: usize = 1;

/// What stays the same from one job to the next; parsing the fonts is most of the first render.
static STOCK: LazyLock<Stock> = LazyLock::new(Stock::new);

struct Stock {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
    bold: FontInstance,
    sources: Vec<Source>,
    job: FileId,
}

impl Stock {
    fn new() -> Self {
        let fonts: Vec<Font> = FACES.into_iter().flat_map(|face| Font::iter(Bytes::new(face))).collect();
        let sources =
            TEMPLATES.iter().map(|(path, text)| Source::new(id(path), (*text).to_owned())).collect();
        Self {
            library: LazyHash::new(Library::default()),
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            bold: instance(&fonts[BOLD]),
            fonts,
            sources,
            job: id(JOB),
        }
    }
}

/// The id of a path. Only the few paths above get one: typst keeps every id for the life of the process.
#[allow(clippy::expect_used, reason = "the paths are constants of this file, and a test loads each")]
fn id(path: &str) -> FileId {
    let path = VirtualPath::new(path).expect("a plain file name is a path");
    RootedPath::new(VirtualRoot::Project, path).intern()
}

/// A font ready to be measured. Noto Sans as shipped has no size or weight to vary.
fn instance(font: &Font) -> FontInstance {
    font.clone().instantiate(font.info().variant, Abs::pt(1.0), &FontVariations::default())
}

/// Advance of a letter in Noto Sans Bold at one point, in points.
pub(crate) fn advance_bold(letter: char) -> f64 {
    let bold = &STOCK.bold;
    // Glyph 0 is the box shown for a letter the font does not have.
    let glyph = bold.ttf().glyph_index(letter).map_or(0, |glyph| glyph.0);
    bold.x_advance(glyph).unwrap_or_default().get()
}

/// One job as typst sees it.
pub(crate) struct JobWorld {
    data: Bytes,
    created: Option<Datetime>,
}

impl JobWorld {
    /// A world of the given data (JSON) on the given day.
    pub(crate) fn new(data: Vec<u8>, created: Option<Datetime>) -> Self {
        Self { data: Bytes::new(data), created }
    }
}

impl World for JobWorld {
    fn library(&self) -> &LazyHash<Library> {
        &STOCK.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &STOCK.book
    }

    fn main(&self) -> FileId {
        STOCK.sources[0].id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let found = STOCK.sources.iter().find(|source| source.id() == id);
        found.cloned().ok_or_else(|| absent(id))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        if id == STOCK.job { Ok(self.data.clone()) } else { Err(absent(id)) }
    }

    fn font(&self, index: usize) -> Option<Font> {
        STOCK.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        self.created
    }
}

fn absent(id: FileId) -> FileError {
    FileError::NotFound(id.get().vpath().get_without_slash().into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_template_is_there_and_nothing_else() {
        let world = JobWorld::new(Vec::new(), None);
        for (path, text) in TEMPLATES {
            assert_eq!(world.source(id(path)).unwrap().text(), text);
        }
        assert!(world.file(id(JOB)).is_ok());
        assert!(world.source(id("etc/passwd")).is_err());
        assert!(world.file(id("etc/passwd")).is_err());
    }

    #[test]
    fn the_four_faces_of_one_family_are_the_only_fonts() {
        let families: Vec<_> = STOCK.book.families().map(|(name, faces)| (name, faces.count())).collect();
        assert_eq!(families, [("Noto Sans", 4)]);
    }

    #[test]
    fn signs_of_formulas_and_units_have_a_shape() {
        let signs = "×÷−±·≤≥≠≈√∑∆Ωπμ°²³½¼¾‰→←↑↓…–—•€£₦‚„“”○◊▲\u{a0}\u{202f}";
        for face in &STOCK.fonts {
            let shapeless = |sign: &char| instance(face).ttf().glyph_index(*sign).is_none();
            let absent: String = signs.chars().filter(shapeless).collect();
            assert_eq!(absent, "", "in {:?}", face.info().variant);
        }
    }
}
